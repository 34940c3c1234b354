//! Letters as they are compared: without case, without accents; and words that are off by one letter.

/// Letters with accents, and what each is compared as.
const FOLDED: [(&str, &str); 24] = [
    ("a", "àáâãäåāăą"),
    ("c", "çćĉċč"),
    ("d", "ďđð"),
    ("e", "èéêëēĕėęě"),
    ("g", "ĝğġģ"),
    ("h", "ĥħ"),
    ("i", "ìíîïĩīĭįı"),
    ("j", "ĵ"),
    ("k", "ķ"),
    ("l", "ĺļľŀł"),
    ("n", "ñńņňŉ"),
    ("o", "òóôõöøōŏő"),
    ("r", "ŕŗř"),
    ("s", "śŝşšș"),
    ("t", "ţťŧț"),
    ("u", "ùúûüũūŭůűų"),
    ("w", "ŵ"),
    ("y", "ýÿŷ"),
    ("z", "źżž"),
    ("ae", "æ"),
    ("oe", "œ"),
    ("ss", "ß"),
    ("th", "þ"),
    // What stands inside words and is often left out.
    ("", "'’ʼ\u{ad}"),
];

/// A text without case and accents.
pub(super) fn fold(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars().flat_map(char::to_lowercase) {
        if ('\u{300}'..='\u{36f}').contains(&letter) {
            continue;
        }
        match FOLDED.iter().find(|(_, with)| with.contains(letter)) {
            Some((plain, _)) => out.push_str(plain),
            None => out.push(letter),
        }
    }
    out
}

/// The words of a text, folded.
pub(super) fn words_of(text: &str) -> Vec<String> {
    let folded = fold(text);
    let words = folded.split(|c: char| !c.is_alphanumeric());
    words.filter(|w| !w.is_empty()).map(ToOwned::to_owned).collect()
}

/// Whether two words differ by one letter: one more, one less, another one, or two neighbors that changed places.
pub(super) fn near(a: &str, b: &str) -> bool {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let same = a.iter().zip(&b).take_while(|(x, y)| x == y).count();
    let (a, b) = (a.get(same..).unwrap_or_default(), b.get(same..).unwrap_or_default());
    match (a, b) {
        ([], []) => true,
        ([_, a @ ..], b) if a == b => true,
        (a, [_, b @ ..]) if a == b => true,
        ([_, a @ ..], [_, b @ ..]) if a == b => true,
        ([w, x, a @ ..], [y, z, b @ ..]) => w == z && x == y && a == b,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn accents_and_case_do_not_count() {
        assert_eq!(fold("Élan ÅNGSTRÖM straße cœur"), "elan angstrom strasse coeur");
        assert_eq!(fold("e\u{301}te\u{301}"), "ete");
        assert_eq!(words_of("Won't start: 'click', half-way"), ["wont", "start", "click", "half", "way"]);
    }

    #[test]
    fn one_letter_off_is_near_two_are_not() {
        for (a, b) in [("toilet", "tiolet"), ("toilet", "toilt"), ("toilet", "toillet"), ("toilet", "toiler")]
        {
            assert!(near(a, b) && near(b, a), "{a} {b}");
        }
        for (a, b) in [("toilet", "tolit"), ("toilet", "boiler"), ("a", "bcd")] {
            assert!(!near(a, b) && !near(b, a), "{a} {b}");
        }
    }
}
