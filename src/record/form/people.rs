//! People and what was said before the walk round the unit.

use jiff::civil::{Date, DateTime};
use serde::{Deserialize, Serialize};

use super::Time;
use crate::walk;

/// Who did or said something.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "role", rename_all = "kebab-case")]
pub enum Who {
    /// The agent on duty.
    Agent,
    /// Somebody of the party.
    Person {
        /// Their number.
        number: u8,
    },
    /// Somebody a newer program knows.
    #[serde(other)]
    Unknown,
}

impl From<walk::Who> for Who {
    fn from(who: walk::Who) -> Self {
        match who {
            walk::Who::Agent => Self::Agent,
            walk::Who::Person(id) => Self::Person { number: id.0 },
        }
    }
}

/// An agent took the walk on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AgentOn {
    /// Staff code.
    pub code: String,
    /// When.
    pub at: Time,
}

/// What the renter reads in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reader {
    /// Language tag.
    pub language: String,
    /// `us`, `uk` or `metric`.
    pub measures: String,
    /// When it was set; none when the lot's usual ones stand for it.
    pub at: Option<Time>,
}

/// What was seen of a driving licence.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Licence {
    /// Class as printed.
    pub class: String,
    /// Country that issued it.
    pub country: String,
    /// Last day it is valid.
    pub expiry: Date,
    /// When it was seen.
    pub at: Time,
}

/// Somebody who travels.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Person {
    /// Number within the party.
    pub number: u8,
    /// Name; may be empty for a child.
    pub name: String,
    /// Age in whole years.
    pub age: u8,
    /// Whether they drive or tow the unit.
    pub driver: bool,
    /// Whether they were present.
    pub present: bool,
    /// Their licence, if it was seen.
    pub licence: Option<Licence>,
}

/// Somebody of an earlier entry of the party.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Member {
    /// Number within the party.
    pub number: u8,
    /// Name.
    pub name: String,
    /// Age in whole years.
    pub age: u8,
    /// Whether they were to drive.
    pub driver: bool,
}

impl From<&walk::Person> for Member {
    fn from(person: &walk::Person) -> Self {
        Self { number: person.id.0, name: person.name.clone(), age: person.age, driver: person.driver }
    }
}

/// The party as it was entered before it was corrected.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EarlierParty {
    /// When.
    pub at: Time,
    /// Everybody of it.
    pub people: Vec<Member>,
}

/// Who travels.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Party {
    /// Everybody, as entered last.
    pub people: Vec<Person>,
    /// When they were entered.
    pub at: Option<Time>,
    /// Earlier entries, oldest first.
    pub earlier: Vec<EarlierParty>,
}

/// A yes or no, or a few words, with its time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Told<T> {
    /// What was said.
    pub value: T,
    /// When.
    pub at: Time,
}

/// Who was present.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Present {
    /// Their numbers.
    pub people: Vec<u8>,
    /// When it was said.
    pub at: Time,
}

/// When the unit is due back, as a clock on the wall shows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DueBack {
    /// Date and time of day.
    pub local: DateTime,
    /// Offset from UTC in minutes, east positive.
    pub offset_minutes: i16,
}

/// Booking and trip.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Booking {
    /// Booking reference; may be empty.
    pub reference: String,
    /// Nights.
    pub nights: u16,
    /// When the unit is due back.
    pub due_back: DueBack,
    /// When it was said.
    pub at: Time,
}

/// What was said before the walk round the unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Opening {
    /// Who was present.
    pub present: Option<Present>,
    /// Whether the renter uses a unit like this for the first time.
    pub first_time: Option<Told<bool>>,
    /// Who translated, by role; empty when nobody did.
    pub translator: Option<Told<String>>,
    /// Booking and trip.
    pub booking: Option<Booking>,
    /// When the walk round the unit began.
    pub opened: Option<Time>,
}
