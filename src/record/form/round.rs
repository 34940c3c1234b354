//! The way round the unit: steps, what was shown, cautions and their answers.

use serde::{Deserialize, Serialize};

use super::{Asks, Decision, Demonstrated, Harm, Hazard, How, Signal, Time, WhyNotShown, Zone};
use crate::record::seal::Digest;

/// The way round the unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Route {
    /// Length of the way in meters, rounded up.
    pub meters: u32,
    /// Minutes of all steps.
    pub minutes: u32,
    /// Steps in order.
    pub steps: Vec<Step>,
}

/// The stop of a step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StopRef {
    /// Where it lies.
    pub zone: Zone,
    /// Number in it.
    pub number: u16,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Step {
    /// Id.
    pub id: String,
    /// Topic it belongs to.
    pub topic: String,
    /// Title in the reader's language.
    pub title: String,
    /// Stop it belongs to.
    pub stop: StopRef,
    /// Station.
    pub station: String,
    /// Place id.
    pub place: String,
    /// Minutes it takes.
    pub minutes: u16,
    /// Seconds it took, its cautions included; 0 in records before version 1.2.
    #[serde(default)]
    pub took_s: u32,
    /// Picture, if it has one.
    pub picture: Option<String>,
    /// What came of it.
    pub outcome: StepOutcome,
    /// What was said of it before, oldest first.
    pub earlier: Vec<StepOutcome>,
    /// Its page as shown, once for each language and measures; none when it was not shown. Figures in it are those
    /// of the closing.
    pub texts: Vec<StepText>,
    /// Figures on its page.
    pub figures: Vec<String>,
    /// Readings taken at it.
    pub readings: Vec<String>,
    /// Whether the loaned items are counted at it.
    pub kit: bool,
    /// Lines of the leaving check done at it.
    pub leaving: Vec<String>,
    /// Its cautions.
    pub cautions: Vec<Caution>,
}

/// What came of a step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum StepOutcome {
    /// Neither shown nor left out; only in a record *not handed over*.
    Open,
    /// It was shown.
    Shown {
        /// In this language.
        language: String,
        /// In these measures; empty in records before version 1.1.
        #[serde(default)]
        measures: String,
        /// When.
        at: Time,
    },
    /// It was left not shown.
    NotShown {
        /// Why.
        reason: WhyNotShown,
        /// More words; may be empty.
        note: String,
        /// When that was said.
        at: Time,
    },
    /// Something a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A step as it stood on the page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepText {
    /// Language tag.
    pub language: String,
    /// Measures it was said in.
    pub measures: String,
    /// Title.
    pub title: String,
    /// What staff show.
    pub show: Vec<String>,
    /// What the renter should know.
    pub know: Vec<String>,
    /// What is special about this unit.
    pub notes: Vec<String>,
}

/// A caution and its answers.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// Id.
    pub id: String,
    /// Version of its wording.
    pub version: u16,
    /// Title in the reader's language.
    pub title: String,
    /// Signal word.
    pub signal: Signal,
    /// Hazard.
    pub hazard: Hazard,
    /// Worst harm.
    pub harm: Harm,
    /// How it asks to be answered.
    pub asks: Asks,
    /// Who must answer.
    pub must: MustAnswer,
    /// Whether it has the answers it needs.
    pub state: AnswerState,
    /// Its texts as shown, one for each digest that an answer names.
    pub texts: Vec<CautionText>,
    /// How it was demonstrated, part by part; since version 1.2.
    #[serde(default)]
    pub demonstrations: Vec<Demonstrated>,
    /// Everything that was said to it, by time.
    pub responses: Vec<Response>,
}

/// Who must answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "who", rename_all = "kebab-case")]
pub enum MustAnswer {
    /// Any adult of the party.
    OneAdult,
    /// Each of these drivers.
    EachDriver {
        /// Their numbers.
        people: Vec<u8>,
    },
    /// A rule a newer program knows.
    #[serde(other)]
    Unknown,
}

/// Whether a caution has the answers it needs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum AnswerState {
    /// No answer was needed: its step was not shown and it is no DANGER.
    NotDue,
    /// Somebody had still to answer; only in a record *not handed over*.
    Waiting,
    /// All who must have confirmed it.
    Answered,
    /// These refused, and the agent decided to hand over.
    Refused {
        /// Their numbers.
        people: Vec<u8>,
    },
    /// These refused, and the agent decided to keep the unit.
    Kept {
        /// Their numbers.
        people: Vec<u8>,
    },
    /// A state a newer program knows.
    #[serde(other)]
    Unknown,
}

/// A caution as it stood on the page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CautionText {
    /// SHA-256 over signal word, hazard, harm and avoidance, each ended by a line feed.
    pub digest: Digest,
    /// Language tag.
    pub language: String,
    /// Measures it was said in.
    pub measures: String,
    /// Title.
    pub title: String,
    /// Signal word.
    pub signal: String,
    /// What is dangerous.
    pub hazard: String,
    /// What it does.
    pub harm: String,
    /// What to do.
    pub avoid: String,
    /// How long reading it takes at 180 words a minute, in milliseconds.
    pub reading_ms: u32,
}

/// What a person said to a caution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Response {
    /// Their number.
    pub by: u8,
    /// When.
    pub at: Time,
    /// Whether it is their last word.
    pub counts: bool,
    /// Since when it stands no longer, since the words read otherwise; since version 1.2.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lapsed: Option<Time>,
    /// Whether it was given in the walk that this one follows, to the same words; since version 1.2.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub carried: bool,
    /// Which text was on the page.
    pub text: Digest,
    /// What they said.
    #[serde(flatten)]
    pub said: Said,
}

/// What a person said to a caution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "said", rename_all = "kebab-case")]
pub enum Said {
    /// They confirmed it.
    Confirmed {
        /// How.
        how: How,
        /// How long the page had been whole, in milliseconds.
        looked_ms: u32,
        /// Whether that was less than its text takes to read. Noted, not punished.
        too_fast: bool,
    },
    /// They would not confirm it.
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
