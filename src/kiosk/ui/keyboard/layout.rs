//! Which letters lie where, by language: data alone.

use super::Layer;

/// An arrangement of letters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Layout {
    /// English of the United States.
    #[default]
    EnUs,
    /// Spanish.
    Es,
    /// French of Canada.
    FrCa,
    /// German: z and y change places.
    De,
}

/// The letters and marks of one arrangement.
struct Letters {
    small: [&'static str; 4],
    marks: [&'static str; 4],
    /// Which variants come first when a key is held.
    first: &'static str,
}

const EN_US: Letters = Letters {
    small: ["1234567890", "qwertyuiop", "asdfghjkl'", "zxcvbnm,.-"],
    marks: ["1234567890", "@#$%&*()+=", "/:;?!\"_<>~", "áéíóúñüöäß"],
    first: "áéíóúñ",
};
const ES: Letters = Letters {
    small: ["1234567890", "qwertyuiop", "asdfghjklñ", "zxcvbnm,.-"],
    marks: ["1234567890", "@#$%&*()+=", "/:;?¿!¡\"_'", "áéíóúüñçºª"],
    first: "áéíóúñ",
};
const FR_CA: Letters = Letters {
    small: ["1234567890-", "qwertyuiopè", "asdfghjkléà", "zxcvbnmç',."],
    marks: ["1234567890-", "@#$%&*()+=/", ":;?!\"_<>«»~", "âêîôûëïüùœæ"],
    first: "éèàçêâîôûëïüù",
};
const DE: Letters = Letters {
    small: ["1234567890ß", "qwertzuiopü", "asdfghjklöä", "yxcvbnm,.-'"],
    marks: ["1234567890€", "@#$%&*()+=/", ":;?!\"_<>„“~", "áàéèêçñóøåæ"],
    first: "äöüß",
};

/// What a held key offers, small letters first.
const VARIANTS: [(char, &str); 19] = [
    ('a', "áàâäãåæ"),
    ('c', "çćč"),
    ('d', "ďđ"),
    ('e', "éèêëęě"),
    ('g', "ğ"),
    ('i', "íìîïı"),
    ('l', "łľ"),
    ('n', "ñńň"),
    ('o', "óòôöõøœ"),
    ('r', "řŕ"),
    ('s', "ßśšş"),
    ('t', "ťþ"),
    ('u', "úùûüůű"),
    ('y', "ýÿ"),
    ('z', "žźż"),
    ('\'', "’\"“”"),
    ('-', "–_/"),
    ('.', ":;…?!"),
    (',', ";:"),
];

impl Layout {
    /// All of them, in the order in which the key goes through them.
    pub const ALL: [Self; 4] = [Self::EnUs, Self::Es, Self::FrCa, Self::De];

    /// The arrangement that people of a language know, by its tag.
    #[must_use]
    pub fn of(language: &str) -> Self {
        match language.split(['-', '_']).next().unwrap_or_default() {
            "es" => Self::Es,
            "fr" => Self::FrCa,
            "de" => Self::De,
            _ => Self::EnUs,
        }
    }

    /// Its name, as settings hold it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::EnUs => "en-US",
            Self::Es => "es",
            Self::FrCa => "fr-CA",
            Self::De => "de",
        }
    }

    /// The arrangement of this name.
    #[must_use]
    pub fn parse(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|layout| layout.word() == word)
    }

    /// What its key shows.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::EnUs => "EN",
            Self::Es => "ES",
            Self::FrCa => "FR",
            Self::De => "DE",
        }
    }

    /// The next one; after the last comes the first again.
    #[must_use]
    pub const fn next(self) -> Self {
        match self {
            Self::EnUs => Self::Es,
            Self::Es => Self::FrCa,
            Self::FrCa => Self::De,
            Self::De => Self::EnUs,
        }
    }

    const fn letters(self) -> &'static Letters {
        match self {
            Self::EnUs => &EN_US,
            Self::Es => &ES,
            Self::FrCa => &FR_CA,
            Self::De => &DE,
        }
    }

    /// Four rows of letters or marks.
    #[must_use]
    pub fn rows(self, layer: Layer) -> [Vec<char>; 4] {
        let letters = self.letters();
        match layer {
            Layer::Small => letters.small.map(|row| row.chars().collect()),
            Layer::Capital | Layer::Lock => letters.small.map(|row| row.chars().map(capital).collect()),
            Layer::Marks => letters.marks.map(|row| row.chars().collect()),
        }
    }

    /// What is offered while a key is held: its relatives that have no key of their own, those of the language
    /// first.
    #[must_use]
    pub fn variants(self, letter: char) -> Vec<char> {
        let small = small(letter);
        let all = VARIANTS.iter().find(|(of, _)| *of == small).map_or("", |(_, all)| *all);
        let rows = self.letters().small;
        let own = |c: &char| self.letters().first.contains(*c);
        let mut found: Vec<char> = all.chars().filter(|c| !rows.iter().any(|row| row.contains(*c))).collect();
        found.sort_by_key(|c| !own(c));
        if small == letter { found } else { found.into_iter().map(capital).collect() }
    }
}

/// The capital of a letter; a letter whose capital is two letters, as ß, stays.
fn capital(letter: char) -> char {
    only(letter.to_uppercase(), letter)
}

fn small(letter: char) -> char {
    only(letter.to_lowercase(), letter)
}

fn only(mut of: impl Iterator<Item = char>, letter: char) -> char {
    match (of.next(), of.next()) {
        (Some(one), None) => one,
        _ => letter,
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    const LAYERS: [Layer; 4] = [Layer::Small, Layer::Capital, Layer::Lock, Layer::Marks];

    #[test]
    fn every_row_of_a_layout_is_as_long_as_the_others_and_no_letter_stands_twice() {
        for layout in Layout::ALL {
            for layer in LAYERS {
                let rows = layout.rows(layer);
                let lengths: BTreeSet<usize> = rows.iter().map(Vec::len).collect();
                assert_eq!(lengths.len(), 1, "{layout:?} {layer:?}: {rows:?}");
                let all: Vec<char> = rows.concat();
                let once: BTreeSet<char> = all.iter().copied().collect();
                assert_eq!(once.len(), all.len(), "{layout:?} {layer:?}: {rows:?}");
            }
        }
    }

    /// The letters a name needs in each language: by key, by holding one, or among the marks. The sets are the
    /// `main` exemplar characters of Unicode CLDR 46 for en, es, fr-CA and de.
    #[test]
    fn every_letter_of_a_language_can_be_written_with_its_layout() {
        for (layout, alphabet) in [
            (Layout::EnUs, "abcdefghijklmnopqrstuvwxyz"),
            (Layout::Es, "aábcdeéfghiíjklmnñoópqrstuúüvwxyz"),
            (Layout::FrCa, "aàâæbcçdeéèêëfghiîïjklmnoôœpqrstuùûüvwxyÿz"),
            (Layout::De, "aäbcdefghijklmnoöpqrsßtuüvwxyz"),
        ] {
            let mut written: BTreeSet<char> = layout.rows(Layer::Small).concat().into_iter().collect();
            for letter in written.clone() {
                written.extend(layout.variants(letter));
            }
            let missing: Vec<char> = alphabet.chars().filter(|c| !written.contains(c)).collect();
            assert_eq!(missing, [], "{layout:?}");
        }
    }

    #[test]
    fn capitals_are_the_capitals_of_the_small_letters() {
        assert_eq!(Layout::De.rows(Layer::Capital)[1].iter().collect::<String>(), "QWERTZUIOPÜ");
        assert_eq!(Layout::De.rows(Layer::Capital)[0].last(), Some(&'ß'));
        assert_eq!(Layout::EnUs.variants('E').iter().collect::<String>(), "ÉÈÊËĘĚ");
    }

    #[test]
    fn the_language_comes_first_and_what_has_a_key_is_not_offered() {
        assert_eq!(Layout::De.variants('a').first(), Some(&'á'), "ä has a key of its own");
        assert_eq!(Layout::FrCa.variants('e').first(), Some(&'ê'));
        assert!(!Layout::Es.variants('n').contains(&'ñ'));
    }

    #[test]
    fn layouts_are_known_by_language_and_by_name() {
        for (language, layout) in [
            ("en-US", Layout::EnUs),
            ("es-MX", Layout::Es),
            ("fr-CA", Layout::FrCa),
            ("de-CH", Layout::De),
            ("en-XA", Layout::EnUs),
            ("", Layout::EnUs),
        ] {
            assert_eq!(Layout::of(language), layout, "{language}");
        }
        for layout in Layout::ALL {
            assert_eq!(Layout::parse(layout.word()), Some(layout));
        }
        assert_eq!(Layout::parse("xx"), None);
    }
}
