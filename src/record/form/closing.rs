//! Readings, items, marks, leaving check, consent, signatures, copy, outcome.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use super::people::Who;
use super::{CopyChoice, Decision, MarkKind, MarkSize, Time, WhyNotRead};
use crate::measure::Money;
use crate::record::seal::Digest;

/// What came of the walk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Outcome {
    /// The unit was handed over.
    HandedOver {
        /// When sealing began.
        at: Time,
    },
    /// It was not.
    NotHandedOver {
        /// Why.
        reason: String,
        /// Who decided.
        by: Who,
        /// When.
        at: Time,
    },
    /// An outcome a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A refusal that stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "of", rename_all = "kebab-case")]
pub enum Refusal {
    /// Somebody would not confirm a caution.
    Caution {
        /// The caution.
        caution: String,
        /// Its version.
        version: u16,
        /// Who.
        by: u8,
        /// Their reason.
        reason: String,
        /// What the agent decided.
        decision: Decision,
        /// When.
        at: Time,
    },
    /// Somebody would not sign.
    Signature {
        /// Who.
        by: u8,
        /// Their reason.
        reason: String,
        /// What the agent decided.
        decision: Decision,
        /// When.
        at: Time,
    },
    /// A refusal a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A question that was noted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Question {
    /// Step it belongs to.
    pub step: String,
    /// Caution it belongs to.
    pub caution: Option<String>,
    /// The question in a few words; may be empty.
    pub text: String,
    /// Whether it was answered on the spot.
    pub answered: bool,
    /// When.
    pub at: Time,
}

/// What a reading is read in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "in", rename_all = "kebab-case")]
pub enum Scale {
    /// A decimal number.
    Number {
        /// Symbol of the measure.
        measure: String,
        /// Smallest step.
        step: String,
        /// Smallest sane value.
        min: String,
        /// Largest sane value.
        max: String,
    },
    /// A gauge in so many parts.
    Parts {
        /// How many.
        parts: u8,
    },
    /// One of a few words.
    Choice {
        /// The words.
        choices: Vec<String>,
    },
    /// A scale a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A reading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reading {
    /// Id.
    pub id: String,
    /// Step it was taken at.
    pub step: String,
    /// Name in the reader's language.
    pub name: String,
    /// What it is read in.
    pub scale: Scale,
    /// Least that is right on this unit, in the measure of the scale; since version 1.2.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<String>,
    /// Most that is right on this unit, in the measure of the scale; since version 1.2.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<String>,
    /// What came of it.
    pub outcome: ReadingOutcome,
}

/// What came of a reading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum ReadingOutcome {
    /// Neither taken nor given a reason; only in a record *not handed over*.
    Open,
    /// It was taken.
    Taken {
        /// The value as read, never rounded.
        value: String,
        /// Symbol of the measure it was read in; empty for choices and fractions.
        measure: String,
        /// When.
        at: Time,
    },
    /// It could not be taken.
    NotTaken {
        /// Why.
        reason: WhyNotRead,
        /// More words; may be empty.
        note: String,
        /// When that was said.
        at: Time,
    },
    /// Something a newer program knows.
    #[serde(other)]
    Unknown,
}

/// How many of an item were counted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ItemCounted {
    /// How many.
    pub count: u16,
    /// Remark; may be empty.
    pub note: String,
    /// When.
    pub at: Time,
}

/// A loaned item.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Item {
    /// Tag.
    pub tag: String,
    /// Name in the reader's language.
    pub name: String,
    /// How many the unit has.
    pub lent: u16,
    /// Replacement price of each, in the lot's currency.
    pub price: Money,
    /// How many go with it; none when they were not counted.
    pub counted: Option<ItemCounted>,
}

/// A condition mark.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mark {
    /// Number.
    pub number: u16,
    /// Tenths of an inch from the middle line, right with the nose up.
    pub x: i32,
    /// Tenths of an inch from the nose to the rear.
    pub y: i32,
    /// Kind.
    pub kind: MarkKind,
    /// Size.
    pub size: MarkSize,
    /// Words of whoever placed it; may be empty.
    pub note: String,
    /// Who placed it.
    pub by: Who,
    /// When.
    pub at: Time,
    /// When it was taken back, in UTC, if it was.
    pub removed: Option<Timestamp>,
}

/// How a line of the leaving check was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LeavingChecked {
    /// As it must be.
    pub good: bool,
    /// When.
    pub at: Time,
}

/// A line of the leaving check.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LeavingLine {
    /// Id.
    pub id: String,
    /// Step it belongs to.
    pub step: String,
    /// The line in the reader's language.
    pub name: String,
    /// How it was found; none when it was not looked at.
    pub checked: Option<LeavingChecked>,
}

/// The consent as it stood on the page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ConsentText {
    /// SHA-256 over the lines, each ended by a line feed.
    pub digest: Digest,
    /// Language tag.
    pub language: String,
    /// Title, the points, the sentence that is agreed to.
    pub lines: Vec<String>,
}

/// A person's answer about an electronic record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Consent {
    /// Their number.
    pub by: u8,
    /// Given, or paper asked for.
    pub given: bool,
    /// Which text was on the page.
    pub text: Digest,
    /// When.
    pub at: Time,
}

/// A signature or its refusal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "did", rename_all = "kebab-case")]
pub enum SignatureDone {
    /// Signed.
    Signed {
        /// File of the handwriting in the record.
        ink: String,
    },
    /// Would not sign.
    Refused {
        /// Their reason.
        reason: String,
        /// What the agent decided.
        decision: Decision,
    },
    /// Something a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A signature or its refusal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Signature {
    /// Who.
    pub by: Who,
    /// When.
    pub at: Time,
    /// What they did.
    #[serde(flatten)]
    pub done: SignatureDone,
}

/// A signature that no longer counts, since the closing was reopened or the handover stopped. Its ink is not
/// kept: it signs nothing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Withdrawn {
    /// Who had signed or refused to.
    pub by: Who,
    /// Whether they had signed.
    pub signed: bool,
    /// When they did.
    pub at: Time,
    /// When it was withdrawn, in UTC.
    pub withdrawn: Timestamp,
    /// Why; empty in records before version 1.1.
    #[serde(default)]
    pub reason: String,
}

/// A closing that was taken back, so that something could be corrected.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reopened {
    /// When.
    pub at: Time,
    /// Why.
    pub reason: String,
    /// The stop of the handover that it took back, if there was one.
    pub stopped: Option<UndoneStop>,
}

/// A stop of the handover that did not last.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct UndoneStop {
    /// Why the unit was to stay.
    pub reason: String,
    /// Who decided.
    pub by: Who,
    /// When.
    pub at: Time,
}

/// How the renter took the copy.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Copied {
    /// The choice.
    pub choice: CopyChoice,
    /// When.
    pub at: Time,
}

/// The renter's copy.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CopyTaken {
    /// When it was offered.
    pub offered: Option<Time>,
    /// How it was taken.
    pub chosen: Option<Copied>,
}
