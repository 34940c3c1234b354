//! Makes the payload of a record from a walk. Same events, scripts and head: same bytes.
//!
//! Every text that somebody answered to is said again, in the language of the answer, and held against the digest
//! that the answer is bound to: what was not on the page never gets into a record.

mod closing;
mod demo;
mod facts;
mod opening;
mod pages;
mod round;
mod trip;

use std::collections::BTreeMap;

use jiff::Timestamp;

use super::form::{self, Handoff, Head, OtherWalk, Program, Record, Time, WalkRef};
use super::seal::{Digest, Kind, RecordId};
use super::{bag, ink, text};
use crate::script::Scripts;
use crate::walk::{Outcome, Signature, Walk};

pub(super) use closing::signatures;
pub(super) use opening::{member, reader_of_lot};
pub(super) use pages::{Pages, reader};
pub(super) use round::{Answer, caution_form};

/// Name of the payload file for people.
pub const TEXT_FILE: &str = "data/record.txt";

/// What a record carries on its outside.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SealingHead {
    /// Id of the record.
    pub id: String,
    /// Name of the tablet.
    pub tablet: String,
    /// Running number of the tablet's key.
    pub number: u32,
    /// Digest of the record before it.
    pub previous: Option<Digest>,
    /// When it is sealed, in UTC by the tablet's clock.
    pub sealed: Timestamp,
    /// What kind of record it is.
    pub kind: Kind,
}

impl SealingHead {
    /// The head of `record.json`.
    ///
    /// # Errors
    /// The id is none, or says another tablet or number.
    pub(super) fn head(&self, demo: bool) -> Result<Head, BuildFault> {
        let id: RecordId = self.id.parse().map_err(|_| BuildFault::Id { id: self.id.clone() })?;
        if id.tablet() != self.tablet || id.number() != self.number {
            return Err(BuildFault::Id { id: self.id.clone() });
        }
        Ok(Head {
            schema: form::VERSION,
            format: form::FORMAT.to_owned(),
            id,
            kind: self.kind,
            tablet: self.tablet.clone(),
            number: self.number,
            previous: self.previous,
            sealed: self.sealed,
            demo,
            rehearsal: self.kind == Kind::Rehearsal,
        })
    }
}

/// The payload of a record, ready to be sealed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Contents {
    /// Files by name, each below `data/`.
    pub payload: BTreeMap<String, Vec<u8>>,
}

/// Why the payload of a record cannot be made. Nothing was sealed.
#[derive(Debug, thiserror::Error)]
pub enum BuildFault {
    /// The scripts at hand are others.
    #[error(
        "the walk was led from scripts {walk:.12}, these are {given:.12}: seal it with the scripts it began with"
    )]
    OtherScripts {
        /// Digest of the scripts of the walk.
        walk: String,
        /// Digest of the scripts given.
        given: String,
    },
    /// The lot has no such unit.
    #[error("the scripts have no unit `{unit}`: seal the walk with the scripts it began with")]
    NoUnit {
        /// The unit.
        unit: String,
    },
    /// Nothing is decided yet.
    #[error("it is not decided whether the unit goes out: finish the closing first")]
    NotDecided,
    /// The kind of the record does not fit the walk.
    #[error("this walk cannot be sealed as {kind}: its end, or that it is a rehearsal, says otherwise")]
    Kind {
        /// The kind asked for.
        kind: Kind,
    },
    /// The id of the record does not fit tablet and number.
    #[error(
        "`{id}` is not the id of this tablet's record of that number: this is a mistake in the program, report it"
    )]
    Id {
        /// The id.
        id: String,
    },
    /// The walk has another number or follows another record.
    #[error(
        "the walk was given another place in the chain than the record: seal it with the place it was given"
    )]
    Place,
    /// The text of a caution is no longer what was shown.
    #[error(
        "caution {caution} reads otherwise than person {by} saw it in {language}: seal the walk with the scripts it began with"
    )]
    CautionChanged {
        /// The caution.
        caution: String,
        /// Who answered.
        by: u8,
        /// In which language.
        language: String,
    },
    /// The text of the consent is no longer what was shown.
    #[error(
        "the consent reads otherwise than person {by} saw it in {language}: seal the walk with the scripts it began with"
    )]
    ConsentChanged {
        /// Who answered.
        by: u8,
        /// In which language.
        language: String,
    },
    /// An amendment speaks of something that the unit does not have.
    #[error("the unit has no {what} `{id}`: amend what the record speaks of")]
    Unknown {
        /// What it is.
        what: &'static str,
        /// Its id.
        id: String,
    },
    /// A digest that is none.
    #[error("`{text}` is no digest: this is a mistake in the program, report it")]
    Digest {
        /// The text.
        text: String,
    },
    /// An amendment says nothing.
    #[error("the amendment says nothing: write what is corrected, and why")]
    Empty,
    /// It cannot be written as JSON.
    #[error("the record cannot be written ({0}): this is a mistake in the program, report it")]
    Encode(#[from] serde_json::Error),
}

/// Makes the payload of a walk's record.
///
/// # Errors
/// See [`BuildFault`]: head, walk and scripts do not fit each other, or a text is not what was shown.
pub fn build(walk: &Walk, scripts: &Scripts, sealing: &SealingHead) -> Result<Contents, BuildFault> {
    let record = handoff(walk, scripts, sealing)?;
    let inks = walk.signatures().iter().filter_map(|(_, given)| match &given.value {
        Signature::Signed { ink } => Some(ink),
        Signature::Refused { .. } => None,
    });
    let mut payload: BTreeMap<String, Vec<u8>> =
        (1..).zip(inks).map(|(n, ink)| (ink_file(n), ink::svg(ink).into_bytes())).collect();
    payload.insert(bag::RECORD_FILE.to_owned(), form::write(&record)?);
    let page = text::render(&Record::Handoff(Box::new(record)), &scripts.words);
    payload.insert(TEXT_FILE.to_owned(), page.into_bytes());
    Ok(Contents { payload })
}

/// Name of the file of the `n`th signature, from 1.
pub(super) fn ink_file(n: usize) -> String {
    format!("data/ink-{n}.svg")
}

/// What `record.json` says about a walk.
///
/// # Errors
/// As [`build`].
pub fn handoff(walk: &Walk, scripts: &Scripts, sealing: &SealingHead) -> Result<Handoff, BuildFault> {
    let began = walk.began();
    check(walk, scripts, sealing)?;
    let unit = began.value.unit.as_str();
    let no_unit = || BuildFault::NoUnit { unit: unit.to_owned() };
    let sheet = &scripts.units.get(unit).ok_or_else(no_unit)?.value;
    let facts = scripts.facts(unit).ok_or_else(no_unit)?;
    let reader = opening::reader(walk, scripts);
    let mut pages = Pages::new(scripts, unit, &reader, walk.trip())?;
    let (consent_texts, consents) = closing::consents(walk, &mut pages)?;
    let route = round::route(walk, &mut pages)?;
    Ok(Handoff {
        head: sealing.head(began.value.demo)?,
        program: Program::this(),
        scripts: digest(&began.value.scripts)?,
        walk: WalkRef {
            id: began.value.walk.clone(),
            began: Time::from(began),
            events: count(walk.events()),
            clock_steps_back: count(walk.clock_steps_back()),
            clock_jumps: opening::clock_jumps(walk),
            durations: Some(opening::durations(walk)),
        },
        outcome: closing::outcome(walk)?,
        swapped: walk.swapped().map(|s| OtherWalk {
            walk: s.value.walk.clone(),
            unit: s.value.unit.clone(),
            at: Time::from(s),
        }),
        follows: walk.followed().map(|f| OtherWalk {
            walk: f.value.walk.clone(),
            unit: f.value.unit.clone(),
            at: Time::from(f),
        }),
        refusals: closing::refusals(walk),
        agents: opening::agents(walk),
        party: opening::party(walk),
        opening: opening::opening(walk),
        lot: facts::lot(scripts, &pages),
        unit: facts::unit(sheet, &pages),
        facts: facts::facts(&facts),
        not_fitted: facts::not_fitted(&facts),
        trip: trip::trip(walk)?,
        figures: trip::figures(walk, &facts, &pages),
        route,
        questions: closing::questions(walk),
        readings: closing::readings(walk, &pages),
        items: closing::items(walk, &pages),
        marks: closing::marks(walk),
        leaving: closing::leaving(walk, &pages),
        consent_texts,
        consents,
        signatures: signatures(walk.signatures()),
        withdrawn: closing::withdrawn(walk),
        reopened: closing::reopened(walk),
        copy: closing::copy(walk),
        reader,
    })
}

/// Whether walk, scripts and head belong together.
fn check(walk: &Walk, scripts: &Scripts, sealing: &SealingHead) -> Result<(), BuildFault> {
    let began = &walk.began().value;
    if began.scripts != scripts.bundle.digest() {
        let (walk, given) = (began.scripts.clone(), scripts.bundle.digest().to_owned());
        return Err(BuildFault::OtherScripts { walk, given });
    }
    let seal = walk.seal().ok_or(BuildFault::NotDecided)?;
    let previous = sealing.previous.map(|digest| digest.to_string());
    if seal.value.number != sealing.number || seal.value.previous != previous {
        return Err(BuildFault::Place);
    }
    let fits = match (began.rehearsal, walk.outcome()) {
        (_, Outcome::Open) => return Err(BuildFault::NotDecided),
        (true, _) => sealing.kind == Kind::Rehearsal,
        (false, Outcome::HandedOver) => sealing.kind == Kind::Handoff,
        (false, Outcome::NotHandedOver(_)) => sealing.kind == Kind::NotHandedOver,
    };
    if fits { Ok(()) } else { Err(BuildFault::Kind { kind: sealing.kind }) }
}

/// A digest that an event holds as text.
pub(super) fn digest(text: &str) -> Result<Digest, BuildFault> {
    text.parse().map_err(|_| BuildFault::Digest { text: text.to_owned() })
}

/// Milliseconds as records hold them: whole seconds.
fn seconds(milliseconds: u64) -> u32 {
    u32::try_from(milliseconds / 1000).unwrap_or(u32::MAX)
}

/// A count as records hold it.
fn count(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}
