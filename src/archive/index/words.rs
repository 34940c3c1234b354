//! Words as the index knows them: what is searched for and what is searched in go through the same door.

/// The most words of a query that count.
const MAX_WORDS: usize = 12;
/// The most characters of a word that count.
const MAX_CHARS: usize = 60;
/// What the marks of the index itself begin with: nothing that anyone typed does.
pub(super) const MARK: char = '\u{E000}';

/// Text with plain letters: marks of private use and control characters become blanks, accents that stand alone are
/// dropped, and letters whose accents the tables do not know become those they are written as on another keyboard.
pub(super) fn folded(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            'ß' | 'ẞ' => plain.push_str("ss"),
            'æ' | 'Æ' => plain.push_str("ae"),
            'œ' | 'Œ' => plain.push_str("oe"),
            'ø' | 'Ø' => plain.push('o'),
            'đ' | 'Đ' | 'ð' | 'Ð' => plain.push('d'),
            'þ' | 'Þ' => plain.push_str("th"),
            'ł' | 'Ł' => plain.push('l'),
            'ħ' | 'Ħ' => plain.push('h'),
            'ı' | 'İ' => plain.push('i'),
            'ά' | 'Ά' => plain.push('α'),
            'έ' | 'Έ' => plain.push('ε'),
            'ή' | 'Ή' => plain.push('η'),
            'ί' | 'Ί' | 'ϊ' | 'Ϊ' | 'ΐ' => plain.push('ι'),
            'ό' | 'Ό' => plain.push('ο'),
            'ύ' | 'Ύ' | 'ϋ' | 'Ϋ' | 'ΰ' => plain.push('υ'),
            'ώ' | 'Ώ' => plain.push('ω'),
            'ς' => plain.push('σ'),
            'й' | 'Й' => plain.push('и'),
            'ё' | 'Ё' => plain.push('е'),
            '\u{300}'..='\u{36F}' => {}
            c if c.is_control() || private(c) => plain.push(' '),
            c => plain.push(c),
        }
    }
    plain
}

/// Text as its words are indexed: folded, and the characters of scripts without blanks between words stand alone.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in folded(text).chars() {
        if unspaced(c) {
            plain.extend([' ', c, ' ']);
        } else {
            plain.push(c);
        }
    }
    plain
}

const fn private(c: char) -> bool {
    matches!(c, '\u{E000}'..='\u{F8FF}' | '\u{F0000}'..='\u{10FFFF}')
}

/// Whether a character belongs to a script that sets no blanks between words.
const fn unspaced(c: char) -> bool {
    matches!(c, '\u{3040}'..='\u{30FF}' | '\u{31F0}'..='\u{31FF}' | '\u{3400}'..='\u{4DBF}' | '\u{4E00}'..='\u{9FFF}'
        | '\u{F900}'..='\u{FAFF}' | '\u{20000}'..='\u{3FFFF}')
}

/// Text without its numbers.
pub(super) fn without_numbers(text: &str) -> String {
    text.chars().filter(|c| !c.is_numeric()).collect()
}

/// Texts as their words are indexed, so that no phrase reaches from one into the next.
pub(super) fn apart<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    join(texts.into_iter().map(plain))
}

/// Texts as parts of their words are indexed.
pub(super) fn apart_folded<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    join(texts.into_iter().map(folded))
}

/// Two texts that are indexed already, so that no phrase reaches from one into the other.
pub(super) fn together(one: &str, two: &str) -> String {
    join([one.to_owned(), two.to_owned()].into_iter())
}

fn join(texts: impl Iterator<Item = String>) -> String {
    let mut all = String::new();
    for text in texts {
        if !all.is_empty() {
            all.extend([' ', MARK, ' ']);
        }
        all.push_str(&text);
    }
    all
}

/// A text by which names are sorted: without accents and case.
pub(super) fn sort_key(text: &str) -> String {
    folded(text).chars().flat_map(char::to_lowercase).filter_map(bare).collect()
}

/// A small Latin letter without its accent; none for an accent that stands alone.
const fn bare(c: char) -> Option<char> {
    Some(match c {
        '\u{300}'..='\u{36F}' => return None,
        'à'..='å' | 'ā' | 'ă' | 'ą' | 'ǎ' => 'a',
        'ç' | 'ć' | 'ĉ' | 'ċ' | 'č' => 'c',
        'ď' => 'd',
        'è'..='ë' | 'ē' | 'ĕ' | 'ė' | 'ę' | 'ě' => 'e',
        'ĝ' | 'ğ' | 'ġ' | 'ģ' => 'g',
        'ĥ' => 'h',
        'ì'..='ï' | 'ĩ' | 'ī' | 'ĭ' | 'į' => 'i',
        'ĵ' => 'j',
        'ķ' => 'k',
        'ĺ' | 'ļ' | 'ľ' => 'l',
        'ñ' | 'ń' | 'ņ' | 'ň' => 'n',
        'ò'..='ö' | 'ō' | 'ŏ' | 'ő' => 'o',
        'ŕ' | 'ŗ' | 'ř' => 'r',
        'ś' | 'ŝ' | 'ş' | 'š' | 'ș' => 's',
        'ţ' | 'ť' | 'ț' => 't',
        'ù'..='ü' | 'ũ' | 'ū' | 'ŭ' | 'ů' | 'ű' | 'ų' => 'u',
        'ŵ' => 'w',
        'ý' | 'ÿ' | 'ŷ' => 'y',
        'ź' | 'ż' | 'ž' => 'z',
        other => other,
    })
}

/// One thing that must be found: a word, or several that must follow each other.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Phrase {
    folded: String,
}

impl Phrase {
    /// As a string of FTS5: nothing in it means anything but itself.
    pub(super) fn quoted(&self) -> String {
        format!("\"{}\"", plain(&self.folded))
    }

    /// Whether it is long enough to be looked for in texts.
    pub(super) fn in_texts(&self) -> bool {
        self.letters() >= 3 || self.folded.chars().any(unspaced)
    }

    /// As a string for parts of words, if it is long enough to be one.
    pub(super) fn part(&self) -> Option<String> {
        let part = self.folded.trim();
        (part.chars().count() >= 3).then(|| format!("\"{part}\""))
    }

    fn letters(&self) -> usize {
        self.folded.chars().filter(|c| c.is_alphanumeric()).count()
    }
}

/// The words of a query. What stands between quotation marks must be found as it stands. Whatever holds no letter
/// and no digit is passed over, so that no query is ever wrong.
pub(super) fn phrases(query: &str) -> Vec<Phrase> {
    let mut all = Vec::new();
    let mut quoted = false;
    let mut now = String::new();
    for c in query.chars() {
        let mark = matches!(c, '"' | '\u{201C}' | '\u{201D}' | '\u{201E}' | '«' | '»');
        if mark || (c.is_whitespace() && !quoted) {
            take(&mut all, &mut now);
            quoted ^= mark;
        } else {
            now.push(c);
        }
    }
    take(&mut all, &mut now);
    all
}

fn take(all: &mut Vec<Phrase>, now: &mut String) {
    let cut: String = now.chars().take(MAX_CHARS).collect();
    let phrase = Phrase { folded: folded(&cut) };
    if all.len() < MAX_WORDS && phrase.letters() > 0 && !all.contains(&phrase) {
        all.push(phrase);
    }
    now.clear();
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(query: &str) -> Vec<String> {
        phrases(query).iter().map(Phrase::quoted).collect()
    }

    #[test]
    fn a_query_falls_into_words_and_phrases() {
        let cases: [(&str, &[&str]); 9] = [
            ("", &[]),
            ("  -- !! ", &[]),
            ("vale", &["\"vale\""]),
            (" robin  vale ", &["\"robin\"", "\"vale\""]),
            ("robin robin", &["\"robin\""]),
            ("\"hot water\" vale", &["\"hot water\"", "\"vale\""]),
            ("\"hot wat", &["\"hot wat\""]),
            ("a\"b OR c*", &["\"a\"", "\"b OR c*\""]),
            ("\u{201E}hot water\u{201C} x\u{0}y\u{E000}1", &["\"hot water\"", "\"x y 1\""]),
        ];
        for (query, expected) in cases {
            assert_eq!(words(query), expected, "{query:?}");
        }
        let long = words(&"x".repeat(10_000));
        assert_eq!(long, [format!("\"{}\"", "x".repeat(MAX_CHARS))]);
        let many: String = (0..100).map(|n| format!("w{n} ")).collect();
        assert_eq!(words(&many).len(), MAX_WORDS);
    }

    #[test]
    fn characters_without_blanks_between_words_stand_alone() {
        assert_eq!(plain("王小明 Vale"), " 王  小  明  Vale");
        let all = phrases("王小明");
        assert_eq!(all.iter().filter_map(Phrase::part).collect::<Vec<_>>(), ["\"王小明\""]);
        assert_eq!(phrases("王小").iter().filter_map(Phrase::part).count(), 0);
        assert!(phrases("水").iter().all(Phrase::in_texts));
        assert!(!phrases("wa").iter().any(Phrase::in_texts));
        assert_eq!(phrases("\"ro va\"")[0].part().as_deref(), Some("\"ro va\""));
    }

    #[test]
    fn names_sort_without_accents_and_case() {
        let mut names = ["Zoe", "Müller", "Muller", "Øst", "mueller", "Ærø", "Ota", "E\u{301}va", "Ewa"];
        names.sort_by_key(|n| sort_key(n));
        assert_eq!(names, ["Ærø", "E\u{301}va", "Ewa", "mueller", "Müller", "Muller", "Øst", "Ota", "Zoe"]);
    }
}
