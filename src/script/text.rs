//! Says the words of a script for one unit and one reader.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::fmt::Write as _;

use sha2::{Digest as _, Sha256};

use crate::figures::Trip;
use crate::source::nearest;
use crate::unit::{Facts, Sheet};
use crate::words::{Args, Reader, SOURCE_LANGUAGE, SayFault};

use super::Scripts;
use super::values::Values;

/// Fills messages with the facts, places and figures of one unit, for one reader.
///
/// Figures that need a trip are there once [`Speaker::with_trip`] gave it one. What people confirm is said without
/// ([`Speaker::say_steady`]), since a plan that changes later must not change what was confirmed.
#[derive(Debug, Clone)]
pub struct Speaker<'a> {
    scripts: &'a Scripts,
    reader: Reader,
    sheet: &'a Sheet,
    facts: Cow<'a, Facts>,
    trip: Option<Trip>,
    /// Whether a figure that cannot be computed is a hole, as `check` wants it; else the text says why.
    strict: bool,
}

/// A caution as it stands on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CautionText {
    /// Short title.
    pub title: String,
    /// Signal word.
    pub signal: String,
    /// What is dangerous.
    pub hazard: String,
    /// What it does.
    pub harm: String,
    /// What to do.
    pub avoid: String,
}

impl CautionText {
    /// SHA-256 over the parts that a renter confirms, each ended by a line feed; 64 hex digits.
    #[must_use]
    pub fn digest(&self) -> String {
        digest(&[&self.signal, &self.hazard, &self.harm, &self.avoid])
    }
}

/// SHA-256 over texts, each ended by a line feed; 64 hex digits.
pub(super) fn digest(parts: &[&str]) -> String {
    let mut hash = Sha256::new();
    for part in parts {
        hash.update(part);
        hash.update("\n");
    }
    hash.finalize().iter().fold(String::new(), |mut hex, b| {
        let _ = write!(hex, "{b:02x}");
        hex
    })
}

/// A step as it stands on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepText {
    /// Title.
    pub title: String,
    /// What staff show.
    pub show: Vec<String>,
    /// What the renter should know.
    pub know: Vec<String>,
    /// What is special about this unit.
    pub notes: Vec<String>,
}

impl<'a> Speaker<'a> {
    /// A speaker for a unit of the lot; `None` when the lot has no such unit.
    #[must_use]
    pub fn new(scripts: &'a Scripts, unit: &str, reader: Reader) -> Option<Self> {
        let sheet = &scripts.units.get(unit)?.value;
        let facts = Cow::Owned(scripts.facts(unit)?);
        Some(Self { scripts, reader, sheet, facts, trip: None, strict: false })
    }

    /// A speaker that knows the trip, so that its figures can be said.
    #[must_use]
    pub fn with_trip(mut self, trip: Option<Trip>) -> Self {
        self.trip = trip;
        self
    }

    /// A speaker for `check`, for a unit whose facts are known already.
    pub(crate) fn of(scripts: &'a Scripts, sheet: &'a Sheet, facts: &'a Facts, reader: Reader) -> Self {
        Self { scripts, reader, sheet, facts: Cow::Borrowed(facts), trip: None, strict: true }
    }

    /// Who reads.
    #[must_use]
    pub fn reader(&self) -> &Reader {
        &self.reader
    }

    fn values<'s>(&'s self, trip: Option<&'s Trip>) -> Values<'s> {
        Values {
            scripts: self.scripts,
            reader: &self.reader,
            sheet: self.sheet,
            facts: &self.facts,
            trip,
            strict: self.strict,
        }
    }

    /// The values that a message asks for, in the reader's language or one that stands in for it.
    fn args(&self, key: &str, trip: Option<&Trip>) -> Args {
        let words = &self.scripts.words;
        let lang = self.reader.lang.as_str();
        let mut wanted: BTreeSet<String> = words.variables(lang, key);
        if lang != SOURCE_LANGUAGE {
            let base = lang.split_once('-').map_or(lang, |(base, _)| base);
            wanted.extend(words.variables(base, key));
            wanted.extend(words.variables(SOURCE_LANGUAGE, key));
        }
        self.values(trip).of(&wanted)
    }

    /// A message, filled.
    #[must_use]
    pub fn say(&self, key: &str) -> String {
        self.scripts.words.say(&self.reader, key, &self.args(key, self.trip.as_ref()))
    }

    /// A message that people confirm, filled without the trip: it reads the same whatever is planned.
    #[must_use]
    pub fn say_steady(&self, key: &str) -> String {
        self.scripts.words.say(&self.reader, key, &self.args(key, None))
    }

    /// As [`Speaker::say_steady`], filled with more values as well.
    #[must_use]
    pub fn say_steady_with(&self, key: &str, more: Args) -> String {
        let mut args = self.args(key, None);
        args.extend(more);
        self.scripts.words.say(&self.reader, key, &args)
    }

    /// As [`Speaker::say_steady_with`], or everything it lacks.
    pub(super) fn try_say_steady_with(&self, key: &str, more: Args) -> Result<String, Vec<SayFault>> {
        let mut args = self.args(key, None);
        args.extend(more);
        self.scripts.words.try_say(&self.reader, key, &args)
    }

    /// The words of the lot.
    pub(super) fn words(&self) -> &crate::words::Words {
        &self.scripts.words
    }

    /// A message, filled with more values as well.
    #[must_use]
    pub fn say_with(&self, key: &str, more: Args) -> String {
        let mut args = self.args(key, self.trip.as_ref());
        args.extend(more);
        self.scripts.words.say(&self.reader, key, &args)
    }

    /// A message, filled, or everything it lacks.
    ///
    /// # Errors
    /// The message is not there, or wants values that this unit does not have.
    pub fn try_say(&self, key: &str) -> Result<String, Vec<SayFault>> {
        self.scripts.words.try_say(&self.reader, key, &self.args(key, self.trip.as_ref()))
    }

    /// Whether the unit has a value for a variable.
    pub(crate) fn has_value(&self, variable: &str) -> bool {
        self.values(self.trip.as_ref()).has(variable)
    }

    /// The value whose name is nearest to a wrong one.
    #[must_use]
    pub fn nearest_value(&self, name: &str) -> Option<String> {
        let names = self.values(None).names();
        nearest(name, names.iter().map(String::as_str)).map(ToOwned::to_owned)
    }
}
