//! The actions a rehearsal can play, as people write them.

use serde::Deserialize;

use crate::figures::Trip;
use crate::measure::{Length, Time};
use crate::walk::{Answer, CopyChoice, Decision, MarkKind, MarkSize, NotRead, NotShown};

/// Somebody of the party.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Traveler {
    /// Name.
    pub name: String,
    /// Age in years.
    pub age: u8,
    /// Whether they drive.
    #[serde(default)]
    pub driver: bool,
}

/// Who does something: the agent, or a person by number from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum By {
    /// The agent.
    Agent,
    /// A person of the party.
    Person(u8),
}

/// One thing that is done.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Action {
    /// An agent takes the walk on.
    Agent(String),
    /// Language and measures.
    Reader {
        /// Language tag.
        language: String,
        /// `us`, `uk` or `metric`.
        measures: String,
    },
    /// The party.
    Party(Vec<Traveler>),
    /// A licence is seen.
    Licence {
        /// Driver, from 1.
        person: u8,
        /// Class.
        class: String,
        /// Country.
        country: String,
        /// Last day, as `2030-05-01`.
        expiry: String,
    },
    /// Who is present, by number.
    Present(Vec<u8>),
    /// First time or not.
    FirstTime(bool),
    /// Who translates, by role; empty for nobody.
    Translator(String),
    /// Booking and trip.
    Booking {
        /// Reference.
        reference: String,
        /// Nights.
        nights: u16,
        /// Due back, local, as `2026-07-29T10:00`.
        due_back: String,
    },
    /// The trip is planned: the same as in a trip file. People, nights and day of leaving are those of party and
    /// booking.
    Trip(Box<Trip>),
    /// The opening is complete.
    Open,
    /// A step is shown.
    Show(String),
    /// A step is left not shown.
    NotShown {
        /// Step.
        step: String,
        /// Why.
        reason: NotShown,
        /// More words.
        #[serde(default)]
        note: String,
    },
    /// A question is noted.
    Question {
        /// Step.
        step: String,
        /// Caution it was asked on.
        #[serde(default)]
        caution: Option<String>,
        /// The question.
        text: String,
        /// Whether it was answered.
        answered: bool,
    },
    /// A caution is answered.
    Answer {
        /// Caution.
        caution: String,
        /// Person.
        by: u8,
        /// How.
        how: Answer,
    },
    /// A caution is refused.
    Refuse {
        /// Caution.
        caution: String,
        /// Person.
        by: u8,
        /// The renter's reason.
        reason: String,
        /// The agent's decision.
        decision: Decision,
    },
    /// A reading is taken, in the measure of its scale.
    Read {
        /// Reading.
        reading: String,
        /// Value as read.
        value: String,
    },
    /// A reading cannot be taken.
    NotRead {
        /// Reading.
        reading: String,
        /// Why.
        reason: NotRead,
        /// More words.
        #[serde(default)]
        note: String,
    },
    /// A loaned item is counted.
    Count {
        /// Tag.
        tag: String,
        /// How many.
        count: u16,
        /// Remark.
        #[serde(default)]
        note: String,
    },
    /// A mark is placed.
    Mark {
        /// Right of the middle line, nose up.
        x: Length,
        /// Back from the nose.
        y: Length,
        /// Kind.
        kind: MarkKind,
        /// Size.
        size: MarkSize,
        /// Remark.
        #[serde(default)]
        note: String,
        /// Who placed it.
        by: By,
    },
    /// A line of the leaving check is looked at.
    Leaving {
        /// Line.
        item: String,
        /// Whether it is as it must be.
        good: bool,
    },
    /// Consent is answered.
    Consent {
        /// Person.
        by: u8,
        /// Given, or paper asked for.
        given: bool,
    },
    /// Somebody signs.
    Sign(By),
    /// Somebody will not sign.
    RefuseToSign {
        /// Person.
        by: u8,
        /// The renter's reason.
        reason: String,
        /// The agent's decision.
        decision: Decision,
    },
    /// A copy is offered.
    OfferCopy,
    /// The renter chooses a copy.
    Copy(CopyChoice),
    /// The unit is not handed over.
    Stop(String),
    /// Time passes.
    Wait(Time),
    /// Everything that is still missing for handing over is done, plausibly.
    Rest,
    /// The record is sealed.
    Seal,
}
