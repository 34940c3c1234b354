//! What the program says, in each language, from Fluent files.
//!
//! [`Words::load`] reads every file and collects every fault with its place. [`Words::say`] always answers:
//! in the reader's language, else in the source language, else with the key in ⟨⟩. [`mod@format`] is the one door
//! for numbers, dates, measures and sums.

mod args;
pub mod format;
mod hygiene;
mod language;
mod load;
mod pseudo;
#[cfg(test)]
mod tests;
mod tree;
mod typed;

use std::collections::BTreeSet;
use std::fmt;
use std::sync::{Arc, OnceLock};

use fluent_bundle::{FluentError, resolver::ResolverError, resolver::errors::ReferenceKind};
use serde::{Deserialize, Serialize};

pub use args::{Args, Value};
pub use hygiene::{NAME_LENGTH, clean_name};
use language::Language;

use crate::measure::System;
use crate::source::{Fault, Place, SourceFile};

/// The language that every message is first written in.
pub const SOURCE_LANGUAGE: &str = "en-US";
/// A language made from the source language by the program: accents and 40 % more length, to see what breaks.
pub const PSEUDO_LANGUAGE: &str = "en-XA";

/// Who reads: in which language, in which measures.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Reader {
    /// Tag of the language, as `en-US`.
    pub lang: String,
    /// The measures.
    pub system: System,
}

impl Reader {
    /// A reader of a language and of measures.
    #[must_use]
    pub fn new(lang: &str, system: System) -> Self {
        Self { lang: lang.to_owned(), system }
    }
}

impl Default for Reader {
    fn default() -> Self {
        Self::new(SOURCE_LANGUAGE, System::Us)
    }
}

/// Why a message cannot be said as it stands.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SayFault {
    /// The language has no such message.
    #[error("{lang} has no message `{key}`; write it in i18n/{lang}")]
    NoMessage {
        /// The language.
        lang: String,
        /// The message wanted.
        key: String,
    },
    /// A variable was not given.
    #[error(
        "`{key}` wants a value for ${variable}, which is not given here; use one of the values of this message"
    )]
    NoVariable {
        /// The message.
        key: String,
        /// The variable.
        variable: String,
    },
    /// A message, term or function that is referred to does not exist.
    #[error("`{key}` refers to {reference}, which does not exist; write it or correct the name")]
    NoReference {
        /// The message.
        key: String,
        /// What it refers to.
        reference: String,
    },
    /// The message contains itself.
    #[error("`{key}` contains itself; take one of the references out")]
    Cyclic {
        /// The message.
        key: String,
    },
    /// Anything else that Fluent cannot do with it.
    #[error("`{key}` cannot be formatted: {reason}; make the message simpler")]
    Other {
        /// The message.
        key: String,
        /// In the words of the library.
        reason: String,
    },
}

/// Every message of every language. Cheap to clone, may be used from any thread.
#[derive(Clone)]
pub struct Words(Arc<Languages>);

struct Languages {
    /// The source language first, the rest by tag.
    all: Vec<Language>,
    /// Made when it is first asked for.
    pseudo: OnceLock<Language>,
}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Words").field(&self.languages()).finish()
    }
}

impl Words {
    /// Reads the Fluent files of a lot folder, `i18n/<language>/<name>.ftl`. Whatever can be used is used, and
    /// every fault is collected.
    #[must_use]
    pub fn load(files: &[SourceFile]) -> (Self, Vec<Fault>) {
        let (all, faults) = load::languages(files);
        (Self(Arc::new(Languages { all, pseudo: OnceLock::new() })), faults)
    }

    /// Tags of the languages, the source language first; without the pseudo-language.
    #[must_use]
    pub fn languages(&self) -> Vec<String> {
        self.0.all.iter().map(|language| language.tag.clone()).collect()
    }

    /// The language that every message is first written in.
    #[must_use]
    pub const fn source_language(&self) -> &'static str {
        SOURCE_LANGUAGE
    }

    /// Whether a tag names the language that the program makes itself.
    #[must_use]
    pub fn is_pseudo(lang: &str) -> bool {
        lang == PSEUDO_LANGUAGE
    }

    /// Whether a language itself has a message: `id`, `id.attribute`.
    #[must_use]
    pub fn has(&self, lang: &str, key: &str) -> bool {
        !key.starts_with('-') && self.language(lang).is_some_and(|language| language.pattern(key).is_some())
    }

    /// The variables that a message uses, its own and those of messages it refers to. A term has only the
    /// values that the reference hands it, so its variables are not among them.
    #[must_use]
    pub fn variables(&self, lang: &str, key: &str) -> BTreeSet<String> {
        self.language(lang).map(|language| language.uses(key).variables).unwrap_or_default()
    }

    /// The messages (`id`, `id.attribute`) and terms (`-id`) that a message refers to, directly or not.
    #[must_use]
    pub fn references(&self, lang: &str, key: &str) -> BTreeSet<String> {
        self.language(lang).map(|language| language.uses(key).references).unwrap_or_default()
    }

    /// Every message of a language, attributes as `id.attribute`; terms are not messages.
    #[must_use]
    pub fn all_keys(&self, lang: &str) -> BTreeSet<String> {
        self.language(lang).map(Language::keys).unwrap_or_default()
    }

    /// Where a message or one of its attributes is written.
    #[must_use]
    pub fn place_of(&self, lang: &str, key: &str) -> Option<Place> {
        self.language(lang)?.place_of(key)
    }

    /// What the reader sees. A message that their language lacks or that fails there comes from the source
    /// language; one that is nowhere comes back as its key in ⟨⟩.
    #[must_use]
    pub fn say(&self, reader: &Reader, key: &str, args: &Args) -> String {
        let mut spoiled = None;
        for language in self.chain(&reader.lang) {
            if let Some((text, faults)) = language.format(key, args) {
                if faults.is_empty() {
                    return text;
                }
                spoiled.get_or_insert(text);
            }
        }
        spoiled.unwrap_or_else(|| format!("⟨{key}⟩"))
    }

    /// What the reader's own language says, without falling back.
    ///
    /// # Errors
    /// Everything that is missing.
    pub fn try_say(&self, reader: &Reader, key: &str, args: &Args) -> Result<String, Vec<SayFault>> {
        let formatted = self.language(&reader.lang).and_then(|language| language.format(key, args));
        let Some((text, faults)) = formatted else {
            return Err(vec![SayFault::NoMessage { lang: reader.lang.clone(), key: key.to_owned() }]);
        };
        if faults.is_empty() {
            return Ok(text);
        }
        Err(faults.into_iter().map(|fault| say_fault(key, fault)).collect())
    }

    /// How a language writes numbers.
    pub(crate) fn marks(&self, lang: &str) -> &language::Marks {
        self.chain(lang).next().map_or_else(|| &self.pseudo().marks, |language| &language.marks)
    }

    fn pseudo(&self) -> &Language {
        self.0.pseudo.get_or_init(|| Language::pseudo(PSEUDO_LANGUAGE, self.0.all.first()))
    }

    fn language(&self, tag: &str) -> Option<&Language> {
        if Self::is_pseudo(tag) {
            return Some(self.pseudo());
        }
        self.0.all.iter().find(|language| language.tag == tag)
    }

    /// The languages to try in turn: the one asked for, the same without its region, the source language.
    fn chain(&self, tag: &str) -> impl Iterator<Item = &Language> {
        let base = tag.split_once('-').and_then(|(base, _)| self.language(base));
        let source = self.language(SOURCE_LANGUAGE).filter(|_| tag != SOURCE_LANGUAGE);
        [self.language(tag), base, source].into_iter().flatten()
    }
}

fn say_fault(key: &str, fault: FluentError) -> SayFault {
    let key = key.to_owned();
    let FluentError::ResolverError(fault) = fault else {
        return SayFault::Other { key, reason: fault.to_string() };
    };
    match fault {
        ResolverError::Reference(ReferenceKind::Variable { id }) => {
            SayFault::NoVariable { key, variable: id }
        }
        ResolverError::Reference(kind) => SayFault::NoReference { key, reference: reference_name(kind) },
        ResolverError::NoValue(id) => SayFault::NoReference { key, reference: format!("`{id}`") },
        ResolverError::Cyclic => SayFault::Cyclic { key },
        other => SayFault::Other { key, reason: other.to_string() },
    }
}

fn reference_name(kind: ReferenceKind) -> String {
    match kind {
        ReferenceKind::Function { id } => format!("{id}()"),
        ReferenceKind::Message { id, attribute: None } => format!("`{id}`"),
        ReferenceKind::Message { id, attribute: Some(attribute) } => format!("`{id}.{attribute}`"),
        ReferenceKind::Term { id, attribute: None } => format!("`-{id}`"),
        ReferenceKind::Term { id, attribute: Some(attribute) } => format!("`-{id}.{attribute}`"),
        ReferenceKind::Variable { id } => format!("${id}"),
    }
}
