//! A step of one unit, after conditions and changes: structure, no words.

use super::bound::Bounds;
use super::kinds::{Answers, Ask, Harm, Hazard, Scale, Signal};

/// A caution as the walk needs it: structure, no words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caution {
    /// Id, never changed once used.
    pub id: String,
    /// Version of its wording.
    pub version: u16,
    /// Signal word.
    pub signal: Signal,
    /// Hazard.
    pub hazard: Hazard,
    /// Worst harm.
    pub harm: Harm,
    /// How it asks to be answered.
    pub ask: Ask,
    /// Who must answer.
    pub who: Answers,
    /// Ids of the demonstrations that it asks for on this unit.
    pub demonstrations: Vec<String>,
}

/// A reading that a step asks for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// Id.
    pub id: String,
    /// What it is read in.
    pub scale: Scale,
    /// Beyond which staff are told.
    pub bounds: Bounds,
}

/// A line of a step: the key of its words.
pub type Key = String;

/// One step on the route.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Step id.
    pub id: String,
    /// Topic it belongs to.
    pub topic: String,
    /// Place id.
    pub place: String,
    /// Station, as `curb-mid`.
    pub station: crate::unit::Station,
    /// Point on the plan in inches, if the place has one.
    pub at: Option<(f64, f64)>,
    /// Minutes it takes.
    pub minutes: u16,
    /// Picture id, if it names one.
    pub picture: Option<String>,
    /// Keys of the lines that staff show.
    pub show: Vec<Key>,
    /// Keys of what the renter should know.
    pub know: Vec<Key>,
    /// Ids of figures.
    pub figures: Vec<String>,
    /// Readings to take.
    pub readings: Vec<Reading>,
    /// Cautions to answer.
    pub cautions: Vec<Caution>,
    /// Keys of remarks for this unit alone.
    pub notes: Vec<Key>,
    /// Loaned items are counted here.
    pub kit: bool,
    /// The leaving check is done here: ids of its lines.
    pub leaving: Vec<String>,
}
