//! What happens in a demonstration.

use serde::{Deserialize, Serialize};

use super::{PersonId, Shown};
use crate::script::demo::Try;

/// Somebody tried a part of a demonstration.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tried {
    /// Caution that asks for it.
    pub caution: String,
    /// Demonstration id.
    pub demonstration: String,
    /// Part of it.
    pub part: String,
    /// Who tried.
    pub by: PersonId,
    /// Ids of cards, choices, loads or spots in the order in which they stood on the page; first those that were kept
    /// from the try before.
    pub order: Vec<String>,
    /// What was answered.
    pub answer: Try,
    /// Whether it was right.
    pub right: bool,
    /// What was on the page.
    pub shown: Shown,
    /// What was said after it: a correction, or a remark to an answer that is right as well.
    pub reply: Option<Shown>,
    /// How long the page had been whole, in milliseconds.
    pub looked_ms: u32,
}

/// After two wrong tries the agent showed the real thing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Helped {
    /// Caution that asks for the demonstration.
    pub caution: String,
    /// Demonstration id.
    pub demonstration: String,
    /// Part of it.
    pub part: String,
    /// To whom it was shown.
    pub person: PersonId,
}
