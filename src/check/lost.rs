//! What cannot be known since a file cannot be read.

use std::collections::BTreeSet;

use crate::script::Gathered;
use crate::source::Fault;

use super::messages::named;

/// What is lost with the files that cannot be read.
#[derive(Debug, Default)]
pub(super) struct Lost {
    /// The lot file is.
    pub(super) lot: bool,
    /// The readings are.
    pub(super) readings: bool,
    /// Names of topics and units whose files are.
    forms: Vec<String>,
    /// Words of some files are: these messages, if they can be told.
    words: BTreeSet<String>,
    /// Words are lost of which nobody can tell the names.
    pub(super) any_words: bool,
}

/// Faults of a file of words that cost a message.
const COSTLY: [&str; 4] = ["words.syntax", "words.number", "words.too-deep", "words.many-faults"];
/// Faults that cost a whole file of words before its messages are known.
const FATAL: [&str; 4] = ["words.too-large", "words.language", "form.too-large", "form.not-utf8"];

impl Lost {
    pub(super) fn of(gathered: &Gathered, faults: &[Fault]) -> Self {
        let (lot, readings) = gathered.has_lot_and_readings();
        let mut lost = Self { lot: !lot, readings: !readings, ..Self::default() };
        for fault in faults {
            let file = fault.place.file.as_ref();
            if let Some(stem) = file.strip_suffix(".ron") {
                if fault.code.starts_with("form.") && fault.code != "form.id-and-file" {
                    lost.forms.push(stem.rsplit('/').next().unwrap_or(stem).to_owned());
                }
            } else if FATAL.contains(&fault.code) || fault.code == "words.no-source-language" {
                lost.any_words = true;
            } else if COSTLY.contains(&fault.code) {
                lost.words.extend(gathered.text_of(file).lines().filter_map(named).map(ToOwned::to_owned));
            }
        }
        lost
    }

    /// Whether something that is named like this may stand in a form that cannot be read.
    pub(super) fn may_hold(&self, id: &str) -> bool {
        self.forms
            .iter()
            .any(|stem| id.strip_prefix(stem.as_str()).is_some_and(|r| r.is_empty() || r.starts_with('-')))
    }

    /// Whether a message may stand in a file of words that cannot be read as it is.
    pub(super) fn may_say(&self, key: &str) -> bool {
        self.any_words || self.words.contains(key.split_once('.').map_or(key, |(id, _)| id))
    }

    /// Whether any form cannot be read, so that nobody can tell which messages are used.
    pub(super) fn any_form(&self) -> bool {
        self.lot || self.readings || !self.forms.is_empty()
    }
}
