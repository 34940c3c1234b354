//! Figures as they were computed at the closing.

use serde::{Deserialize, Serialize};

use super::Rounding;
use crate::figures::form::Details;

/// One value a figure was computed from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FigureInput {
    /// Name of the fact.
    pub name: String,
    /// Value with its measure.
    pub value: String,
    /// Symbol of the measure; empty for what has none, and in records before version 1.1.
    #[serde(default)]
    pub measure: String,
    /// Where it came from.
    pub from: String,
}

/// One value of a figure.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FigureValue {
    /// What it is of, where there are several.
    pub of: Option<String>,
    /// A decimal number.
    pub value: String,
    /// Symbol of its measure; empty for a plain number.
    pub measure: String,
    /// What is counted where there is no measure: `nights`.
    #[serde(default)]
    pub counted: Option<String>,
}

/// A figure in the reader's words and measures; empty in records before version 1.1.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct FigureSays {
    /// What it is.
    pub title: String,
    /// Its value, or why there is none.
    pub value: String,
    /// How it was worked out; empty when it was not.
    pub formula: String,
    /// In which direction it was rounded.
    pub rounding: String,
    /// Source of the formula.
    pub source: String,
    /// What it does not know; may be empty.
    pub caveat: String,
    /// What to do about it; may be empty.
    pub caution: String,
    /// Sentences about its details.
    pub lines: Vec<String>,
}

/// Whether a figure could be computed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum FigureState {
    /// It was.
    Ok,
    /// A fact was missing.
    Missing {
        /// Its name.
        fact: String,
    },
    /// The unit does not have what it is about.
    NotFitted,
    /// A state a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A figure.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Figure {
    /// Id.
    pub id: String,
    /// Whether it could be computed.
    pub state: FigureState,
    /// A word, where it answers yes or no.
    pub verdict: Option<String>,
    /// Its values.
    pub values: Vec<FigureValue>,
    /// Direction it was rounded in.
    pub rounding: Rounding,
    /// What it came from.
    pub inputs: Vec<FigureInput>,
    /// The formula with its numbers.
    pub formula: String,
    /// Source of the formula.
    pub source: String,
    /// Remarks that held for these facts.
    pub notes: Vec<String>,
    /// The same in words.
    #[serde(default)]
    pub says: FigureSays,
    /// What runs together, how supplies go, or a bill.
    #[serde(flatten)]
    pub details: Details,
}
