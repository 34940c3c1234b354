//! The form of `record.json`: everything a record says, in a form that outlives this program.
//!
//! Enums are tagged inside and have an `Unknown` variant, unknown fields are passed over, and fields that come
//! later have a default: a record of a newer minor version can be read, one of a newer major version is refused
//! politely. Numbers are whole; whatever has decimals is text. [`SCHEMA`] says the same as a JSON Schema.

mod amendment;
mod closing;
mod demo;
mod figure;
mod people;
mod round;
mod trip;
mod unit;
mod word;

use jiff::Timestamp;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

pub use amendment::{Amended, AmendedTopic, Amendment};
pub use closing::{
    Consent, ConsentText, Copied, CopyTaken, Item, ItemCounted, LeavingChecked, LeavingLine, Mark, Outcome,
    Question, Reading, ReadingOutcome, Refusal, Reopened, Scale, Signature, SignatureDone, UndoneStop,
    Withdrawn,
};
pub use demo::{Attempt, Demonstrated, Did, Try};
pub use figure::{Figure, FigureInput, FigureSays, FigureState, FigureValue};
pub use people::{
    AgentOn, Booking, DueBack, EarlierParty, Licence, Member, Opening, Party, Person, Present, Reader, Told,
    Who,
};
pub use round::{
    AnswerState, Caution, CautionText, MustAnswer, Response, Route, Said, Step, StepOutcome, StepText,
    StopRef,
};
pub use trip::{Plan, Planned, Trip};
pub use unit::{
    Axle, Change, Derate, DerateRow, Fact, FactValue, HeatLoss, Limits, Load, Lot, NightLoad, Place, Room,
    Seat, Slide, Unit,
};
pub use word::{
    Asks, CopyChoice, Decision, Gallon, Harm, Hazard, How, MarkKind, MarkSize, MoneyRounding, Origin,
    Rounding, Signal, WhyNotRead, WhyNotShown, Zone,
};

use super::seal::{Digest, Kind, RecordId};
use crate::walk::Timed;

/// What `format` of every record says.
pub const FORMAT: &str = "sendoff-record";
/// The version of the schema that is written here.
pub const VERSION: Version = Version { major: 1, minor: 2 };
/// JSON Schema (draft 2020-12) of what is written here; strict, so that nothing unplanned gets into a record.
pub const SCHEMA: &str = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/assets/record.schema.json"));

/// A version of the schema, as text `1.0`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Version {
    /// Changes when an old program can no longer read the record.
    pub major: u32,
    /// Changes when something is added.
    pub minor: u32,
}

impl std::fmt::Display for Version {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}.{}", self.major, self.minor)
    }
}

impl Serialize for Version {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Version {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let parts =
            text.split_once('.').and_then(|(major, minor)| Some((major.parse().ok()?, minor.parse().ok()?)));
        let (major, minor) = parts
            .ok_or_else(|| serde::de::Error::custom("a version of the schema is two numbers, as 1.0"))?;
        Ok(Self { major, minor })
    }
}

/// A moment: UTC by the tablet's clock, and what the clock on the wall showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Time {
    /// In UTC.
    pub utc: Timestamp,
    /// Offset of local time from UTC in minutes, east positive.
    pub offset_minutes: i16,
}

impl<T> From<&Timed<T>> for Time {
    fn from(timed: &Timed<T>) -> Self {
        Self { utc: timed.at, offset_minutes: timed.offset_minutes }
    }
}

/// The head of a record: which it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Head {
    /// Version of the schema.
    pub schema: Version,
    /// Always [`FORMAT`].
    pub format: String,
    /// Id of the record.
    pub id: RecordId,
    /// Kind.
    pub kind: Kind,
    /// Tablet that sealed it.
    pub tablet: String,
    /// Running number of the tablet's key.
    pub number: u32,
    /// Digest of the record before it.
    pub previous: Option<Digest>,
    /// When it was sealed, in UTC by the tablet's clock.
    pub sealed: Timestamp,
    /// Whether the scripts are those of the demo lot that comes with the program.
    pub demo: bool,
    /// Whether it was made for practice.
    pub rehearsal: bool,
}

/// The program that wrote the record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Program {
    /// Name.
    pub name: String,
    /// Version.
    pub version: String,
}

impl Program {
    /// This program.
    #[must_use]
    pub fn this() -> Self {
        Self { name: env!("CARGO_PKG_NAME").to_owned(), version: env!("CARGO_PKG_VERSION").to_owned() }
    }
}

/// The walk that the record was made from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WalkRef {
    /// Its id.
    pub id: String,
    /// When it began.
    pub began: Time,
    /// How many events it holds.
    pub events: u32,
    /// How often the tablet's clock stepped back between two of them.
    pub clock_steps_back: u32,
    /// Jumps of the tablet's clock, oldest first; since version 1.2.
    #[serde(default)]
    pub clock_jumps: Vec<ClockJump>,
    /// Where the time went; none in records before version 1.2.
    #[serde(default)]
    pub durations: Option<Durations>,
}

/// A jump of the tablet's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClockJump {
    /// When it was found, by the clock after it.
    pub at: Time,
    /// What the clock would have said, or at least this.
    pub from: Timestamp,
    /// What it said.
    pub to: Timestamp,
}

/// Where the time of a walk went, in seconds, without what jumps of the clock add or take.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Durations {
    /// All of it, pauses aside.
    pub worked_s: u32,
    /// The opening.
    pub opening_s: u32,
    /// The closing.
    pub closing_s: u32,
    /// Pauses: a quarter of an hour or more in which nothing happened.
    pub paused_s: u32,
    /// What the tablet lay in the renter's hands.
    pub with_renter_s: u32,
    /// How often it was handed to the renter.
    pub hand_overs: u32,
}

/// A walk of the same party for another unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OtherWalk {
    /// Its id.
    pub walk: String,
    /// Its unit.
    pub unit: String,
    /// When the unit was swapped.
    pub at: Time,
}

/// The record of a walk: handed over, not handed over, or a rehearsal of either.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Handoff {
    /// Which record it is.
    #[serde(flatten)]
    pub head: Head,
    /// What wrote it.
    pub program: Program,
    /// SHA-256 of the scripts that the walk was led from.
    pub scripts: Digest,
    /// The walk.
    pub walk: WalkRef,
    /// What came of it.
    pub outcome: Outcome,
    /// The walk for another unit that follows this one; since version 1.2.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub swapped: Option<OtherWalk>,
    /// The walk for another unit that this one follows; since version 1.2.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub follows: Option<OtherWalk>,
    /// Refusals that stand.
    pub refusals: Vec<Refusal>,
    /// Agents in the order in which they took the walk on.
    pub agents: Vec<AgentOn>,
    /// What the renter reads in.
    pub reader: Reader,
    /// Who travels.
    pub party: Party,
    /// What was said before the walk round the unit.
    pub opening: Opening,
    /// The lot's settings as they were.
    pub lot: Lot,
    /// The unit as it was.
    pub unit: Unit,
    /// Facts of unit and lot, by name.
    pub facts: Vec<Fact>,
    /// Sections of the data sheet that the unit does not have.
    pub not_fitted: Vec<String>,
    /// The trip; none while nothing of it is known, and in records before version 1.1.
    #[serde(default)]
    pub trip: Option<Trip>,
    /// All figures, for this trip, as of the closing.
    pub figures: Vec<Figure>,
    /// The way round the unit and what came of each step.
    pub route: Route,
    /// Questions in the order they were asked.
    pub questions: Vec<Question>,
    /// Readings in the order of the route.
    pub readings: Vec<Reading>,
    /// Loaned items in the order of the data sheet.
    pub items: Vec<Item>,
    /// Condition marks by number, those taken back included.
    pub marks: Vec<Mark>,
    /// The leaving check.
    pub leaving: Vec<LeavingLine>,
    /// Texts of the consent that were shown.
    pub consent_texts: Vec<ConsentText>,
    /// Answers about an electronic record.
    pub consents: Vec<Consent>,
    /// Signatures and refusals to sign, in the order they were given.
    pub signatures: Vec<Signature>,
    /// Signatures that no longer count, oldest first.
    pub withdrawn: Vec<Withdrawn>,
    /// Closings that were taken back, oldest first; since version 1.1.
    #[serde(default)]
    pub reopened: Vec<Reopened>,
    /// The renter's copy.
    pub copy: CopyTaken,
}

/// A record that was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Record {
    /// A handoff, handed over or not, or a rehearsal.
    Handoff(Box<Handoff>),
    /// An amendment.
    Amendment(Box<Amendment>),
    /// A kind whose body this program does not read.
    Other(Box<Head>),
}

impl Record {
    /// Its head.
    #[must_use]
    pub fn head(&self) -> &Head {
        match self {
            Self::Handoff(record) => &record.head,
            Self::Amendment(record) => &record.head,
            Self::Other(head) => head,
        }
    }
}

/// Why a `record.json` cannot be read.
#[derive(Debug, thiserror::Error)]
pub enum ReadFault {
    /// It is of a newer program.
    #[error(
        "the record follows version {found} of the schema; this program reads up to {}.x: use a newer one. Its seal can be verified all the same",
        VERSION.major
    )]
    Newer {
        /// Its version.
        found: Version,
    },
    /// It is something else.
    #[error("this is no record of Sendoff: its format is {format:?}, not {FORMAT:?}")]
    Other {
        /// What it says it is.
        format: String,
    },
    /// It does not follow the schema.
    #[error("the record cannot be read: {0}")]
    Form(#[from] serde_json::Error),
}

/// Reads a `record.json` of this or of a newer minor version.
///
/// # Errors
/// See [`ReadFault`].
pub fn read(bytes: &[u8]) -> Result<Record, ReadFault> {
    /// What tells whether the rest can be read at all.
    #[derive(Deserialize)]
    struct First {
        schema: Version,
        format: String,
    }
    let First { schema, format } = serde_json::from_slice(bytes)?;
    if format != FORMAT {
        return Err(ReadFault::Other { format: format.chars().take(40).collect() });
    }
    if schema.major > VERSION.major {
        return Err(ReadFault::Newer { found: schema });
    }
    let head: Head = serde_json::from_slice(bytes)?;
    Ok(match head.kind {
        Kind::Handoff | Kind::NotHandedOver | Kind::Rehearsal => {
            Record::Handoff(serde_json::from_slice(bytes)?)
        }
        Kind::Amendment => Record::Amendment(serde_json::from_slice(bytes)?),
        Kind::CheckIn => Record::Other(Box::new(head)),
    })
}

/// A record as the bytes of `record.json`: indented by two blanks, one line feed at the end.
///
/// # Errors
/// It cannot be written as JSON.
pub fn write<T: Serialize>(record: &T) -> Result<Vec<u8>, serde_json::Error> {
    let mut bytes = serde_json::to_vec_pretty(record)?;
    bytes.push(b'\n');
    Ok(bytes)
}

#[cfg(test)]
mod tests;
