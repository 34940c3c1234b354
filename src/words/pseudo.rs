//! The pseudo-language: every letter still readable, every text longer, nothing translated.
//!
//! Translations of English run up to a third longer; 40 % more shows what will not fit before a translator does.

use std::borrow::Cow;

/// A text with accents and at least 40 % more characters, counted over the whole text. Text without letters
/// (a comma between two values) stays as it is.
pub(super) fn stretched(text: &str) -> Cow<'_, str> {
    let letters = text.chars().filter(|c| c.is_alphabetic()).count();
    if letters == 0 {
        return Cow::Borrowed(text);
    }
    let extra = (text.chars().count() * 2).div_ceil(5);
    let mut longer = String::with_capacity(text.len() * 2);
    let mut seen = 0;
    let mut added = 0;
    for c in text.chars() {
        let c = accented(c);
        longer.push(c);
        if !c.is_alphabetic() {
            continue;
        }
        // Spread over the letters, so that words grow where they stand and lines still break between them.
        seen += 1;
        while added * letters < extra * seen {
            longer.push(c);
            added += 1;
        }
    }
    Cow::Owned(longer)
}

/// Only letters of Latin-1 and Latin Extended-A, which any text face has.
const fn accented(c: char) -> char {
    match c {
        'A' => 'Å',
        'a' => 'å',
        'C' => 'Ç',
        'c' => 'ç',
        'D' => 'Ď',
        'd' => 'ď',
        'E' => 'É',
        'e' => 'é',
        'G' => 'Ĝ',
        'g' => 'ĝ',
        'H' => 'Ĥ',
        'h' => 'ĥ',
        'I' => 'Î',
        'i' => 'î',
        'J' => 'Ĵ',
        'j' => 'ĵ',
        'K' => 'Ķ',
        'k' => 'ķ',
        'L' => 'Ļ',
        'l' => 'ļ',
        'N' => 'Ñ',
        'n' => 'ñ',
        'O' => 'Ö',
        'o' => 'ö',
        'R' => 'Ŕ',
        'r' => 'ŕ',
        'S' => 'Š',
        's' => 'š',
        'T' => 'Ţ',
        't' => 'ţ',
        'U' => 'Û',
        'u' => 'û',
        'W' => 'Ŵ',
        'w' => 'ŵ',
        'Y' => 'Ý',
        'y' => 'ý',
        'Z' => 'Ž',
        'z' => 'ž',
        same => same,
    }
}
