//! How a caution was demonstrated.

use serde::{Deserialize, Serialize};

use super::Time;
use crate::record::seal::Digest;

/// A part of a demonstration, with all that happened in it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Demonstrated {
    /// Demonstration id.
    pub demonstration: String,
    /// Part of it.
    pub part: String,
    /// The question in the reader's language.
    pub question: String,
    /// What happened, oldest first: the first and the last answer of everybody, and what lies between.
    pub attempts: Vec<Attempt>,
}

/// Something that happened in a demonstration.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Attempt {
    /// Who tried, or to whom it was shown.
    pub by: u8,
    /// When.
    pub at: Time,
    /// What happened.
    #[serde(flatten)]
    pub did: Did,
}

/// What happened in a demonstration.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "did", rename_all = "kebab-case")]
pub enum Did {
    /// A try. A wrong first one is evidence of teaching.
    Tried(Box<Try>),
    /// After two wrong tries the agent showed the real thing.
    Helped,
    /// Something a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A try.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Try {
    /// Whether it was right.
    pub right: bool,
    /// SHA-256 over question, cards in the order shown and places, each ended by a line feed.
    pub page: Digest,
    /// Language tag of the page.
    pub language: String,
    /// The question as shown.
    pub question: String,
    /// Cards in the order in which they stood on the page.
    pub order: Vec<String>,
    /// Where they could go, where there were places.
    pub places: Vec<String>,
    /// What was answered.
    pub answer: Vec<String>,
    /// What was said after it: a correction, or a remark.
    pub reply: Option<String>,
    /// How long the page had been whole, in milliseconds.
    pub looked_ms: u32,
}
