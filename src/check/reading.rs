//! Texts for renters are easy to read, and a notice does not speak of injuries (handbook H.3, 0.3, 0.5).

use std::collections::BTreeSet;

use crate::script::{Guide, Signal};
use crate::source::Place;
use crate::words::{Args, Reader, SOURCE_LANGUAGE, Value};

use super::Check;
use super::grade::{Counts, syllables, words};

/// Grade above which a text is too hard, where the lot does not say.
const GRADE: u16 = 8;
/// Message with the words of which each speaks of an injury, separated by commas.
const INJURY_WORDS: &str = "check-injury-words";
/// Parts of a caution that a renter reads as one text.
const READ_PARTS: [&str; 3] = ["", ".harm", ".avoid"];
/// Parts of a caution in which an injury would be named.
const PARTS: [&str; 4] = ["", ".title", ".harm", ".avoid"];
/// What stands for a value that is filled in: one word.
const FILLED: &str = "it";

/// What was worked out of texts already.
#[derive(Default)]
pub(super) struct Texts {
    /// Texts that were held against the limit, as their keys.
    seen: BTreeSet<String>,
    /// Words that speak of an injury.
    injury: Vec<String>,
}

impl Check<'_> {
    /// Cautions of all topics, then hazards and rows of all guides; what a step says is graded on its route.
    pub(super) fn texts(&mut self) {
        let scripts = self.scripts;
        self.message(INJURY_WORDS.to_owned(), || Place::start(&scripts.lot.file.name));
        let list = self.plain(SOURCE_LANGUAGE, INJURY_WORDS).unwrap_or_default();
        self.texts.injury = list.split(',').map(spaced).filter(|word| word.len() > 2).collect();
        let steps = scripts.topics.values().flat_map(|t| &t.value.steps);
        let cautions = steps.flat_map(|s| &s.value.cautions);
        let hazards = scripts.guides.values().flat_map(|g| &g.value.hazards);
        for caution in cautions.chain(hazards).map(|c| &c.value) {
            let id = &caution.id.value;
            let keys = READ_PARTS.map(|part| format!("caution-{id}{part}"));
            self.graded(&keys, || format!("the caution `{id}`"));
            if caution.signal == Signal::Notice {
                self.no_injury(id);
            }
        }
        for guide in scripts.guides.values() {
            self.rows_graded(&guide.value);
        }
    }

    fn rows_graded(&mut self, guide: &Guide) {
        for row in guide.rows.iter().map(|r| &r.value.id.value) {
            let key = format!("row-{}-{row}", guide.id.value);
            let keys = [key.clone(), format!("{key}.ask")];
            self.graded(&keys, || format!("row `{row}` of `{}`", guide.id.value));
        }
    }

    /// A text of these messages, in every kind of English that the lot has, is not above the lot's grade.
    pub(super) fn graded(&mut self, keys: &[String], name: impl Fn() -> String) {
        if self.is_full() || !self.texts.seen.insert(keys.join(" ")) {
            return;
        }
        let scripts = self.scripts;
        let limit = f64::from(scripts.lot.value.limits.value.grade.unwrap_or(GRADE));
        for lang in self.english.clone() {
            let own = |key: &&String| scripts.words.has(&lang, key);
            let Some(first) = keys.iter().find(own) else { continue };
            let texts: Vec<String> = keys.iter().filter_map(|key| self.plain(&lang, key)).collect();
            let counts = texts.iter().map(|text| Counts::of(text)).fold(Counts::default(), |a, b| a + b);
            let Some(grade) = counts.grade().filter(|grade| *grade > limit) else { continue };
            let Some(place) = scripts.words.place_of(&lang, first) else { continue };
            let what = format!("{} reads at grade {grade:.1}, more than {limit}", name());
            self.fault("text.grade", place, what, way_out(&texts));
        }
    }

    /// A text with one word for each value that is filled in.
    fn plain(&self, lang: &str, key: &str) -> Option<String> {
        let all = &self.scripts.words;
        let there = all.has(lang, key) || all.has(SOURCE_LANGUAGE, key);
        let mut args = Args::new();
        for variable in all.variables(lang, key).into_iter().chain(all.variables(SOURCE_LANGUAGE, key)) {
            let number = variable.ends_with("_n");
            let value = if number { Value::Number(2.into()) } else { Value::Text(FILLED.to_owned()) };
            args.set(&variable, value);
        }
        let reader = Reader { lang: lang.to_owned(), ..Reader::default() };
        there.then(|| all.say(&reader, key, &args))
    }

    fn no_injury(&mut self, id: &str) {
        for key in PARTS.map(|part| format!("caution-{id}{part}")) {
            let Some(text) = self.plain(SOURCE_LANGUAGE, &key) else { continue };
            let text = spaced(&text);
            let Some(word) = self.texts.injury.iter().find(|word| text.contains(word.as_str())) else {
                continue;
            };
            let what = format!("the notice `{id}` speaks of an injury: `{}`", word.trim());
            let Some(place) = self.scripts.words.place_of(SOURCE_LANGUAGE, &key) else { continue };
            let hint = "where people can be hurt make it Caution or graver; else say what is lost";
            self.fault("caution.notice-injury", place, what, hint);
        }
    }
}

/// A text as its words in small letters, with a blank around each.
fn spaced(text: &str) -> String {
    let lower = text.to_lowercase();
    let mut all = String::from(" ");
    for word in lower.split(|c: char| !(c.is_alphanumeric() || c == '\'')).filter(|word| !word.is_empty()) {
        all.extend([word, " "]);
    }
    all
}

/// What makes a text hard: its longest words, its longest sentence.
fn way_out(texts: &[String]) -> String {
    let bare = |word: &str| word.trim_matches(|c: char| !c.is_alphanumeric()).to_lowercase();
    let mut long: Vec<(u32, String)> = texts
        .iter()
        .flat_map(|text| words(text))
        .map(|word| (syllables(word), bare(word)))
        .filter(|(count, _)| *count > 2)
        .collect();
    long.sort_by(|a, b| (b.0, &a.1).cmp(&(a.0, &b.1)));
    long.dedup();
    let long: Vec<String> = long.into_iter().take(4).map(|(_, word)| format!("`{word}`")).collect();
    let sentences = texts.iter().flat_map(|text| text.split_inclusive(['.', '!', '?']));
    let longest = sentences.map(|sentence| words(sentence).count()).max().unwrap_or(0);
    if long.is_empty() {
        return format!("make sentences shorter; the longest has {longest} words");
    }
    format!(
        "use shorter words for {} and shorter sentences; the longest has {longest} words",
        long.join(", ")
    )
}
