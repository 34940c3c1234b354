//! Conditions: facts that are there, held against what they can be.

use crate::script::{From, When};
use crate::source::{At, Place};
use crate::unit::FactKind;

use super::Check;

impl Check<'_> {
    /// Facts named in a condition exist, and are held against what they can be.
    pub(super) fn condition<T>(&mut self, file: &From<T>, when: Option<&When>) {
        for part in when.map(When::flat).unwrap_or_default() {
            if self.is_full() {
                return;
            }
            match part {
                When::Fitted(name) => self.section_or_fact(name, file.place(name)),
                When::Is(name, word) => match self.known.0.get(&name.value).copied() {
                    None => self.unknown_fact(file.place(name), name),
                    Some(kind) => self.word_fits(file, name, word, kind),
                },
                When::Over(name, limit) => match self.known.0.get(&name.value) {
                    None => self.unknown_fact(file.place(name), name),
                    Some(FactKind::Quantity(d)) if *d == limit.value.dimension() => {}
                    Some(_) => {
                        let what = format!("`{}` is no {}", name.value, limit.value.dimension().name());
                        let hint = "hold a fact against a quantity of its own dimension";
                        self.fault("fact.dimension", file.place(limit), what, hint);
                    }
                },
                When::Not(_) | When::All(_) | When::Any(_) => {}
            }
        }
    }

    /// A section, or a field of one, that a unit can do without.
    fn section_or_fact(&mut self, name: &At<String>, place: Place) {
        let (facts, sections) = &self.known;
        if !sections.contains(&name.value.as_str()) && !facts.contains_key(&name.value) {
            self.unknown_fact(place, name);
        }
    }

    fn unknown_fact(&mut self, place: Place, name: &At<String>) {
        let (facts, sections) = &self.known;
        let known: Vec<String> =
            facts.keys().cloned().chain(sections.iter().map(ToString::to_string)).collect();
        let other = "facts are `section.field` of the data sheet";
        let hint = self.hint(&name.value, known.iter().map(String::as_str), other);
        self.fault("fact.unknown", place, format!("there is no fact `{}`", name.value), hint);
    }

    fn word_fits<T>(&mut self, file: &From<T>, name: &At<String>, word: &At<String>, kind: FactKind) {
        let (fits, hint) = match kind {
            FactKind::Word(words) => {
                (words.contains(&word.value.as_str()), format!("it can be {}", words.join(", ")))
            }
            FactKind::Flag => (matches!(word.value.as_str(), "true" | "false"), "it is true or false".into()),
            FactKind::Count => (word.value.parse::<u16>().is_ok(), "it is a whole number".into()),
            FactKind::Code => (true, String::new()),
            FactKind::Quantity(_) => (false, "use `Over` for quantities".into()),
            FactKind::Money | FactKind::List => (false, "a condition can not be held against it".into()),
        };
        if !fits {
            let what = format!("`{}` is never `{}`", name.value, word.value);
            self.fault("fact.word", file.place(word), what, hint);
        }
    }
}
