//! What changes in the middle of a walk: language or measures, and the unit.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use super::{Answer, PersonId, Shown};

/// Answers that stand no longer, since the words they were given to read otherwise now. Who gave them is asked
/// again.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lapse {
    /// Answers to cautions.
    pub answers: Vec<AnswerOf>,
    /// Whose answers about an electronic record.
    pub consents: Vec<PersonId>,
}

/// The answer of a person to a caution.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AnswerOf {
    /// Caution id.
    pub caution: String,
    /// Who answered.
    pub by: PersonId,
}

/// The party takes another unit: this walk ends, and another one follows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Swap {
    /// Id of the walk that follows.
    pub walk: String,
    /// Its unit.
    pub unit: String,
    /// Why this unit is not handed over, in words.
    pub reason: String,
}

/// The walk follows another one of the same party, for another unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Follow {
    /// Id of the walk before.
    pub walk: String,
    /// Its unit.
    pub unit: String,
    /// Answers given there to words that are the same here.
    pub answers: Vec<Carried>,
}

/// An answer to a caution, given in the walk before.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Carried {
    /// Caution id.
    pub caution: String,
    /// Its version.
    pub version: u16,
    /// Who answered.
    pub by: PersonId,
    /// How.
    pub how: Answer,
    /// What was on the page.
    pub shown: Shown,
    /// How long the page had been whole, in milliseconds.
    pub looked_ms: u32,
    /// When, in UTC by the tablet's clock.
    pub at: Timestamp,
    /// Offset of local time from UTC in minutes, east positive.
    pub offset_minutes: i16,
}
