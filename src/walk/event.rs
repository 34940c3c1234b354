//! The events of a walk: the only way it changes, and what the journal keeps.
//!
//! Each is a fact in the past tense. Texts shown are bound by [`Shown`]: the digest and language of the very
//! words on the page. No event holds a float.

mod clock;
mod demo;
mod swap;

use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

use crate::figures::Trip;

pub use clock::LocalTime;
pub use demo::{Helped, Tried};
pub use swap::{AnswerOf, Carried, Follow, Lapse, Swap};

/// A person of the party, numbered from 1 in the order they were entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PersonId(pub u8);

/// One of the people who travel with the unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// Number within the party.
    pub id: PersonId,
    /// Name as they give it; may be empty for a child.
    pub name: String,
    /// Age in whole years.
    pub age: u8,
    /// Whether they will drive or tow the unit.
    pub driver: bool,
}

/// What was seen of a driving licence. Never its number, never a picture.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Licence {
    /// Class as printed.
    pub class: String,
    /// Country that issued it.
    pub country: String,
    /// Last day it is valid.
    pub expiry: Date,
}

/// The words that were on the page when something was answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shown {
    /// SHA-256 of the text as shown, 64 hex digits.
    pub text: String,
    /// Language tag of the text.
    pub language: String,
}

/// How a caution was answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Answer {
    /// One tap after reading.
    #[serde(alias = "Read")]
    Read,
    /// Press and hold until the ring closed.
    #[serde(alias = "Hold")]
    Hold,
    /// Two taps on two places, after two holds that were too short.
    #[serde(alias = "TwoTaps")]
    TwoTaps,
    /// A demonstration was passed.
    #[serde(alias = "Demonstrate")]
    Demonstrate,
}

/// What the agent decided after a refusal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Decision {
    /// The unit goes out all the same.
    #[serde(alias = "HandOver")]
    HandOver,
    /// The unit stays on the lot.
    #[serde(alias = "KeepUnit")]
    KeepUnit,
}

/// Why a step was not shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotShown {
    /// Wind, rain, ice, darkness.
    #[serde(alias = "Weather")]
    Weather,
    /// The renter did not want to see it.
    #[serde(alias = "Declined")]
    Declined,
    /// The renter knows it from an earlier rental.
    #[serde(alias = "Known")]
    Known,
    /// Out of order today.
    #[serde(alias = "OutOfOrder")]
    OutOfOrder,
    /// No time; to be explained in the note.
    #[serde(alias = "NoTime")]
    NoTime,
}

/// Why a reading was not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotRead {
    /// The dial, gauge or sensor does not work.
    #[serde(alias = "Broken")]
    Broken,
    /// It could not be seen or reached.
    #[serde(alias = "Unreachable")]
    Unreachable,
    /// It would have been wrong: charging, hot, on a slope.
    #[serde(alias = "WrongMoment")]
    WrongMoment,
}

/// Kind of a condition mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkKind {
    /// Scratch.
    #[serde(alias = "Scratch")]
    Scratch,
    /// Dent.
    #[serde(alias = "Dent")]
    Dent,
    /// Chip.
    #[serde(alias = "Chip")]
    Chip,
    /// Crack.
    #[serde(alias = "Crack")]
    Crack,
    /// Stain.
    #[serde(alias = "Stain")]
    Stain,
    /// Tear.
    #[serde(alias = "Tear")]
    Tear,
    /// Something is missing.
    #[serde(alias = "Missing")]
    Missing,
    /// Works, but badly.
    #[serde(alias = "WorksBadly")]
    WorksBadly,
}

/// Size of a condition mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkSize {
    /// Up to a coin.
    #[serde(alias = "Coin")]
    Coin,
    /// Up to a hand.
    #[serde(alias = "Hand")]
    Hand,
    /// Up to an arm.
    #[serde(alias = "Arm")]
    Arm,
    /// Larger.
    #[serde(alias = "Larger")]
    Larger,
}

/// Who did or said something: the agent on duty or a person of the party.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Who {
    /// The lot agent.
    Agent,
    /// A person of the party.
    Person(PersonId),
}

/// A point on the plan, in tenths of an inch: `x` from the middle line toward the right with the nose up,
/// `y` from the nose to the rear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlanPoint {
    /// Tenths of an inch from the middle line.
    pub x: i32,
    /// Tenths of an inch from the nose.
    pub y: i32,
}

/// A condition mark.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mark {
    /// Number within the walk, from 1.
    pub number: u16,
    /// Where on the plan.
    pub at: PlanPoint,
    /// Kind.
    pub kind: MarkKind,
    /// Size.
    pub size: MarkSize,
    /// Words of whoever placed it; may be empty.
    pub note: String,
    /// Who placed it.
    pub by: Who,
}

/// Handwriting as vectors: strokes of points in a field 1000 wide and `height` high. Shape only.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ink {
    /// Height of the field when its width is 1000.
    pub height: u16,
    /// Strokes in the order they were drawn.
    pub strokes: Vec<Vec<(i16, i16)>>,
}

/// How the renter takes the copy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CopyChoice {
    /// The slip with id, digest and code, photographed from the screen.
    #[serde(alias = "Slip")]
    Slip,
    /// A file on a stick.
    #[serde(alias = "Stick")]
    Stick,
    /// The renter wants none now.
    #[serde(alias = "Declined")]
    Declined,
}

/// Something that happened in a walk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "event", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Event {
    /// The walk began; always the first event.
    Began {
        /// Id of the walk.
        walk: String,
        /// Id of the unit.
        unit: String,
        /// SHA-256 of the scripts it began with, 64 hex digits.
        scripts: String,
        /// Name of the tablet.
        tablet: String,
        /// Whether it is a rehearsal.
        rehearsal: bool,
        /// Whether the scripts are those of the built-in demo lot.
        demo: bool,
    },
    /// An agent took the walk on, at its start or at a shift change.
    AgentOn {
        /// Staff code.
        code: String,
    },
    /// Language and measures of the renter were set.
    ReaderSet {
        /// Language tag.
        language: String,
        /// `us`, `uk` or `metric`.
        measures: String,
    },
    /// The party was entered or corrected; replaces the earlier one.
    PartySet {
        /// Everybody who travels.
        people: Vec<Person>,
    },
    /// A driver's licence was seen.
    LicenceSeen {
        /// The driver.
        person: PersonId,
        /// What was seen.
        licence: Licence,
    },
    /// Who of the party is present.
    PresentSet {
        /// Those present.
        people: Vec<PersonId>,
    },
    /// Whether the renter has used a unit like this before.
    ExperienceSet {
        /// First time.
        first_time: bool,
    },
    /// Who translated, by role.
    TranslatorSet {
        /// Role, as 'travel companion'; empty when nobody did.
        role: String,
    },
    /// Booking and trip.
    BookingSet {
        /// Booking reference; empty when there is none.
        reference: String,
        /// Nights.
        nights: u16,
        /// When the unit is due back.
        due_back: LocalTime,
    },
    /// The trip was planned, or planned anew: what the figures of the trip are computed from. People, nights and
    /// day of leaving are those of party and booking; see [`super::Walk::trip`].
    TripPlanned {
        /// The plan.
        trip: Box<Trip>,
    },
    /// The opening is complete; the walk round the unit begins.
    Opened,
    /// A step was shown.
    StepShown {
        /// Step id.
        step: String,
        /// Language the page was shown in.
        language: String,
    },
    /// A step was left not shown.
    StepNotShown {
        /// Step id.
        step: String,
        /// Why.
        reason: NotShown,
        /// More words; may be empty.
        note: String,
    },
    /// A question of the renter was noted.
    QuestionNoted {
        /// Step it belongs to.
        step: String,
        /// Caution it belongs to, when it was asked on a caution page.
        caution: Option<String>,
        /// The question in a few words; may be empty when only the fact is noted.
        text: String,
        /// Whether it was answered on the spot.
        answered: bool,
    },
    /// A caution was answered.
    CautionAnswered {
        /// Caution id.
        caution: String,
        /// Its version.
        version: u16,
        /// Who answered.
        by: PersonId,
        /// How.
        how: Answer,
        /// What was on the page.
        shown: Shown,
        /// How long the page had been whole, in milliseconds.
        looked_ms: u32,
    },
    /// A person would not confirm a caution.
    CautionRefused {
        /// Caution id.
        caution: String,
        /// Its version.
        version: u16,
        /// Who refused.
        by: PersonId,
        /// The renter's reason.
        reason: String,
        /// What the agent decided.
        decision: Decision,
        /// What was on the page.
        shown: Shown,
    },
    /// A part of a demonstration was tried.
    DemonstrationTried(Tried),
    /// After two wrong tries the agent showed the real thing.
    DemonstrationHelped(Helped),
    /// Words read otherwise now, for another language or other measures: answers to them stand no longer.
    AnswersLapsed(Lapse),
    /// The party takes another unit: this one is not handed over.
    UnitSwapped(Swap),
    /// The walk follows another one of the same party.
    UnitFollowed(Follow),
    /// A reading was taken.
    ReadingTaken {
        /// Reading id.
        reading: String,
        /// The value as read: a decimal, a fraction as `7/8`, or a choice of the reading.
        value: String,
        /// Symbol of the measure it was read in; empty for choices and fractions.
        measure: String,
    },
    /// A reading could not be taken.
    ReadingNotTaken {
        /// Reading id.
        reading: String,
        /// Why.
        reason: NotRead,
        /// More words; may be empty.
        note: String,
    },
    /// A loaned item was counted.
    ItemCounted {
        /// Its tag.
        tag: String,
        /// How many go with the unit.
        count: u16,
        /// Remark; may be empty.
        note: String,
    },
    /// A condition mark was placed.
    MarkPlaced {
        /// The mark.
        mark: Mark,
    },
    /// A condition mark was taken back before sealing.
    MarkRemoved {
        /// Its number.
        number: u16,
    },
    /// One line of the leaving check was looked at.
    LeavingChecked {
        /// Line id, as `cord`, `step`, `awning`.
        item: String,
        /// Whether it is as it must be.
        good: bool,
    },
    /// Consent to an electronic record was answered.
    ConsentAnswered {
        /// Who answered.
        by: PersonId,
        /// Given, or paper asked for.
        given: bool,
        /// What was on the page.
        shown: Shown,
    },
    /// Somebody signed.
    Signed {
        /// Who.
        by: Who,
        /// The finished signature.
        ink: Ink,
    },
    /// Somebody would not sign.
    SignatureRefused {
        /// Who.
        by: PersonId,
        /// The renter's reason.
        reason: String,
        /// What the agent decided.
        decision: Decision,
    },
    /// The closing was taken back, so that something can be corrected: signatures, copy and a stop of the
    /// handover so far count no more.
    ClosingReopened {
        /// Why.
        reason: String,
    },
    /// A copy was offered.
    CopyOffered,
    /// The renter chose how to take the copy.
    CopyChosen {
        /// The choice.
        choice: CopyChoice,
    },
    /// The unit is not handed over.
    HandoverStopped {
        /// Why.
        reason: String,
        /// Who decided.
        by: Who,
    },
    /// The tablet's clock was set while the walk was open, or says less than it did when something was last kept.
    ClockJumped {
        /// What it would have said, or at least this.
        from: Timestamp,
        /// What it said.
        to: Timestamp,
    },
    /// The walk ends: number and link of the record that is sealed from it.
    SealBegun {
        /// Running number of the tablet.
        number: u32,
        /// Digest of the record before it, 64 hex digits, or none.
        previous: Option<String>,
    },
}

/// An event with its time, as the journal keeps it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// When, in UTC by the tablet's clock.
    pub at: Timestamp,
    /// Offset of local time from UTC in minutes, east positive.
    pub offset_minutes: i16,
    /// What happened.
    pub event: Event,
}
