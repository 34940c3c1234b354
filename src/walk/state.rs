//! The pieces a walk is made of, each with the time it was said.

use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::Offset;

use super::event::{
    Answer, CopyChoice, Decision, Entry, Ink, LocalTime, NotRead, NotShown, PersonId, Shown, Who,
};

/// A value and when it was said.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Timed<T> {
    /// When, in UTC by the tablet's clock.
    pub at: Timestamp,
    /// Offset of local time from UTC in minutes, east positive.
    pub offset_minutes: i16,
    /// What was said.
    pub value: T,
}

impl<T> Timed<T> {
    /// The value at the time of an entry.
    pub(super) fn at(entry: &Entry, value: T) -> Self {
        Self { at: entry.at, offset_minutes: entry.offset_minutes, value }
    }
}

/// The date on the wall when an entry was made.
pub(super) fn local_date(entry: &Entry) -> Date {
    let offset = Offset::from_seconds(i32::from(entry.offset_minutes) * 60).unwrap_or(Offset::UTC);
    offset.to_datetime(entry.at).date()
}

/// How a walk began.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Began {
    /// Id of the walk.
    pub walk: String,
    /// Id of the unit.
    pub unit: String,
    /// SHA-256 of the scripts, 64 hex digits.
    pub scripts: String,
    /// Name of the tablet.
    pub tablet: String,
    /// Whether it is a rehearsal.
    pub rehearsal: bool,
    /// Whether the scripts are those of the built-in demo lot.
    pub demo: bool,
}

/// What the renter reads in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reader {
    /// Language tag.
    pub language: String,
    /// `us`, `uk` or `metric`.
    pub measures: String,
}

/// Booking and trip.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Booking {
    /// Booking reference; empty when there is none.
    pub reference: String,
    /// Nights.
    pub nights: u16,
    /// When the unit is due back.
    pub due_back: LocalTime,
}

/// What became of a step so far.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StepState {
    /// Neither shown nor left out.
    Open,
    /// Shown, in this language and these measures.
    Shown {
        /// Language tag of the page.
        language: String,
        /// Measures the renter read in then: `us`, `uk` or `metric`; empty when nobody had said.
        measures: String,
    },
    /// Left not shown.
    NotShown {
        /// Why.
        reason: NotShown,
        /// More words; may be empty.
        note: String,
    },
}

/// A question that was noted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Question {
    /// Step it belongs to.
    pub step: String,
    /// Caution it belongs to, when it was asked on a caution page.
    pub caution: Option<String>,
    /// The question in a few words; may be empty.
    pub text: String,
    /// Whether it was answered on the spot.
    pub answered: bool,
}

/// What a person said to a caution.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Response {
    /// They confirmed it.
    Answered {
        /// How.
        how: Answer,
        /// What was on the page.
        shown: Shown,
        /// How long the page had been whole, in milliseconds.
        looked_ms: u32,
    },
    /// They would not confirm it.
    Refused {
        /// Their reason.
        reason: String,
        /// What the agent decided.
        decision: Decision,
        /// What was on the page.
        shown: Shown,
    },
}

/// What became of a reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ReadingState {
    /// Taken.
    Taken {
        /// The value as read.
        value: String,
        /// Symbol of the measure; empty for choices and fractions.
        measure: String,
    },
    /// Not taken.
    NotTaken {
        /// Why.
        reason: NotRead,
        /// More words; may be empty.
        note: String,
    },
}

/// How many of a loaned item go with the unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Count {
    /// How many.
    pub count: u16,
    /// Remark; may be empty.
    pub note: String,
}

/// A person's answer about an electronic record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Consent {
    /// Given, or paper asked for.
    pub given: bool,
    /// What was on the page.
    pub shown: Shown,
}

/// A signature or its refusal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Signature {
    /// Signed.
    Signed {
        /// The finished signature.
        ink: Ink,
    },
    /// Would not sign.
    Refused {
        /// The renter's reason.
        reason: String,
        /// What the agent decided.
        decision: Decision,
    },
}

/// Why the unit is not handed over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stopped {
    /// Why.
    pub reason: String,
    /// Who decided.
    pub by: Who,
}

/// Place of the record in the tablet's chain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Seal {
    /// Running number of the tablet.
    pub number: u32,
    /// Digest of the record before it, 64 hex digits, or none.
    pub previous: Option<String>,
}

/// A signature that no longer counts, since the closing was reopened or the handover stopped.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Withdrawn {
    /// Who had signed or refused to.
    pub by: Who,
    /// What was given, and when.
    pub signature: Timed<Signature>,
    /// When it was withdrawn.
    pub withdrawn: Timestamp,
    /// Why: the reason of the reopening, or of the stop.
    pub reason: String,
}

/// A jump of the tablet's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ClockJump {
    /// What it would have said, or at least this.
    pub from: Timestamp,
    /// What it said.
    pub to: Timestamp,
}

/// A closing that was taken back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reopened {
    /// Why.
    pub reason: String,
    /// The stop of the handover that it took back, if there was one.
    pub stopped: Option<Timed<Stopped>>,
}

/// Signatures and copy: what [`super::Event::ClosingReopened`] throws away.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Closing {
    /// In the order they were given; one for each `Who`.
    pub signatures: Vec<(Who, Timed<Signature>)>,
    pub copy_offered: Option<Timed<()>>,
    pub copy: Option<Timed<CopyChoice>>,
    pub stopped: Option<Timed<Stopped>>,
}

/// Whether the unit goes out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome {
    /// Nothing is decided yet.
    Open,
    /// The unit is handed over.
    HandedOver,
    /// The unit is not handed over.
    NotHandedOver(Timed<Stopped>),
}

/// Where a walk stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    /// Who, which unit, which trip.
    Opening,
    /// The walk round the unit, up to the first signature.
    Walking,
    /// Somebody has signed or refused to: nothing but signatures, copy, stop and seal may follow.
    Signing,
    /// The unit is not handed over; agent's signature, copy and seal may follow.
    Stopped,
    /// The walk is over; its record is being sealed.
    SealBegun,
}

/// How a peg on the plan stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Peg {
    /// Nothing of the stop is done.
    Open,
    /// A part of it is done, or a reading, item or leaving line of it is still due.
    PartDone,
    /// All is done; at least one of its steps was shown.
    Done,
    /// None of its steps was shown.
    Skipped,
    /// Every step is settled, but a caution still needs an answer.
    Unanswered,
}

/// Whether a caution has the answers it needs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AnswerState {
    /// No answer is needed: its step was not shown and it is no DANGER.
    NotDue,
    /// Somebody still has to answer.
    Waiting(MustAnswer),
    /// All who must have confirmed it.
    Answered,
    /// All who must have answered; these refused, and the agent decided to hand over.
    Refused(Vec<PersonId>),
    /// These refused, and the agent decided to keep the unit.
    Kept(Vec<PersonId>),
}

/// Who still has to answer a caution.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MustAnswer {
    /// Any adult of the party.
    OneAdult,
    /// Each of these drivers.
    Drivers(Vec<PersonId>),
}

/// How many of something are settled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// Settled.
    pub done: usize,
    /// All there are.
    pub all: usize,
}
