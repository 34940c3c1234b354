//! Everything the screens can ask of the world, and what comes back: data, so that it can be compared.

use std::path::PathBuf;
use std::sync::Arc;

use super::guard::picture::{Picture, PictureFault};
use crate::script::{Bundle, Scripts};
use crate::tablet::Finished;
use crate::tablet::clock::{Jump, News};
use crate::tablet::room::Room;
use crate::tablet::staff::{Change, Credential, Staff, Tried};
use crate::walk::{Event, Pace, Walk};

/// Something to be done outside the screens.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Name the tablet and make its key.
    FirstStart(String),
    /// List units and open walks; seal what was being sealed.
    ListWalks,
    /// Begin a walk for a unit.
    Begin(String),
    /// Go on with a walk.
    Resume(String),
    /// Keep events, in order.
    Propose(Vec<Event>),
    /// Look whether somebody has set the clock; an open walk tells it.
    LookAtClock,
    /// Look whether the lot folder has changed, and read it if it has.
    ReadLot {
        /// The folder.
        dir: PathBuf,
        /// What it looked like when it was last read.
        seen: Option<u32>,
    },
    /// Decode a photo of the scripts.
    Decode {
        /// The files it is in.
        bundle: Arc<Bundle>,
        /// Its id.
        photo: String,
    },
    /// Keep the settings of this kiosk.
    KeepSettings {
        /// As [`super::preferences`] writes them.
        text: String,
        /// Later ones have a larger number; an earlier one never replaces a later one.
        serial: u64,
    },
    /// End the open walk, and begin one for another unit that follows it.
    Swap {
        /// The open walk.
        walk: Arc<Walk>,
        /// The other unit.
        unit: String,
        /// Why this one is not handed over.
        reason: String,
    },
    /// Seal the open walk.
    Seal,
    /// Copy a sealed record to a folder.
    SaveCopy {
        /// The sealed file.
        record: PathBuf,
        /// Where to.
        to: PathBuf,
    },
    /// Hand records in to the office.
    HandIn(super::hand_in::Ask),
    /// Ask the office's archive.
    Office(super::office::Ask),
    /// Check a PIN. It takes a good part of a second.
    TryPin(Credential),
    /// Change who works here.
    Staff(Change),
}

/// What an effect brought.
#[derive(Debug, Clone)]
pub enum Done {
    /// The tablet has a key with this fingerprint.
    Started(Result<String, String>),
    /// Open walks.
    Listed(Result<YardList, String>),
    /// A photo is decoded, or cannot be shown.
    Decoded {
        /// Its id.
        photo: String,
        /// The picture.
        picture: Result<Picture, PictureFault>,
    },
    /// What the lot folder holds now; nothing when it has not changed.
    LotRead(Option<super::edit::Found>),
    /// A walk to lead.
    Taken(Result<TakenWalk, String>),
    /// No new walk begins, since there is no room for one.
    NoRoom(Room),
    /// The walk that follows a swap of units.
    Swapped(Result<TakenWalk, String>),
    /// Events were kept, or not.
    Proposed(Proposed),
    /// What a look at the clock brought, and the walk after it.
    Looked(Proposed),
    /// The record is sealed.
    Sealed(Result<Finished, String>),
    /// The settings were kept, or why not.
    SettingsKept(Result<(), String>),
    /// A copy was written to this file.
    Copied(Result<PathBuf, String>),
    /// What came of handing records in.
    HandIn(super::hand_in::Answer),
    /// What the office's archive says.
    Office(Box<super::office::Answer>),
    /// A PIN was checked.
    PinTried {
        /// Whose.
        code: String,
        /// What came of it.
        tried: Tried,
        /// Everybody, with what is left to wait.
        staff: Result<Staff, String>,
    },
    /// Who works here was changed, or not.
    StaffChanged {
        /// Why not.
        result: Result<(), String>,
        /// Everybody.
        staff: Result<Staff, String>,
    },
}

/// What the Yard shows.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct YardList {
    /// Open walks.
    pub walks: Vec<OpenSummary>,
    /// How many sealed records wait for the office.
    pub waiting: usize,
    /// Name of the tablet.
    pub tablet: String,
    /// Room on its disk.
    pub room: Room,
    /// The clock says less than it did when something was last kept.
    pub behind: Option<Jump>,
    /// What a look at the clock brought.
    pub news: News,
    /// What steps took on this tablet.
    pub pace: Pace,
}

/// An open walk in a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenSummary {
    /// Id.
    pub id: String,
    /// Unit, if the journal says so.
    pub unit: Option<String>,
    /// Staff code of who led it last, if somebody has taken it on.
    pub agent: Option<String>,
    /// Name of the first driver, if entered.
    pub renter: Option<String>,
    /// Digest of the scripts it is led from, if the journal says so.
    pub scripts: Option<String>,
    /// Whether the unit is not handed over, so that nothing but the end is left to do.
    pub ended: bool,
    /// Events that are safe.
    pub events: usize,
    /// When something last happened.
    pub last: Option<jiff::Timestamp>,
    /// Why it cannot go on, or what was lost at its end.
    pub trouble: Option<String>,
}

/// A walk to lead.
#[derive(Debug, Clone)]
pub struct TakenWalk {
    /// The walk.
    pub walk: Arc<Walk>,
    /// Its scripts.
    pub scripts: Arc<Scripts>,
    /// What steps take on this tablet.
    pub pace: Arc<Pace>,
    /// What staff must know about its journal.
    pub notice: Option<String>,
}

/// Outcome of proposed events.
#[derive(Debug, Clone, Default)]
pub struct Proposed {
    /// The walk after the last event that was kept.
    pub walk: Option<Arc<Walk>>,
    /// Why the rest was not.
    pub fault: Option<ProposedFault>,
    /// What a look at the clock brought before.
    pub news: News,
    /// Whether the reserve was given back, since the disk was full.
    pub freed: bool,
}

/// Why an event was not kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProposedFault {
    /// Words for staff.
    pub text: String,
    /// Whether nothing more can be kept before a new start.
    pub stops: bool,
}
