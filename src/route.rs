//! The route: the ordered steps for one unit, after conditions and ordering.
//!
//! Built by [`build()`] from script and data sheet; the walk, the screens and the record read it.

mod build;
pub mod find;
mod said;
mod stops;

use std::collections::BTreeMap;

pub use build::build;
pub(crate) use build::build_with;

use crate::script::Demonstration;
pub use crate::script::{
    Answers, Ask, Bounds, Caution, Harm, Hazard, Key, Off, Reading, Scale, Signal, Step,
};

/// Where a stop lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Zone {
    /// At the desk, before the walk.
    Desk,
    /// Outside.
    Outside,
    /// Inside.
    Inside,
    /// In the cab or on the road, at the end.
    Leaving,
}

/// What a peg on the plan marks: steps that follow each other within about 1.5 m.
#[derive(Debug, Clone, PartialEq)]
pub struct Stop {
    /// Number in walking order, counted anew inside.
    pub number: u16,
    /// Where it lies.
    pub zone: Zone,
    /// Mean point of its places in inches, if they have one.
    pub at: Option<(f64, f64)>,
    /// Positions in [`Route::steps`].
    pub steps: std::ops::Range<usize>,
}

/// A loaned item of the unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Tag, as `W01`.
    pub tag: String,
    /// Key of its words.
    pub words: Key,
    /// How many are lent.
    pub count: u16,
    /// Replacement price of each.
    pub price: crate::measure::Money,
}

/// The ordered steps for one unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Route {
    /// Unit id.
    pub unit: String,
    /// Steps in order.
    pub steps: Vec<Step>,
    /// Stops in order.
    pub stops: Vec<Stop>,
    /// Loaned items in the order of the sheet.
    pub items: Vec<Item>,
    /// Demonstrations that its cautions ask for, by id.
    pub demonstrations: BTreeMap<String, Demonstration>,
    /// Length of the way in meters, rounded up.
    pub meters: u32,
    /// Minutes of all steps.
    pub minutes: u32,
    /// Ways walked twice: step id and meters, for `check`.
    pub doublings: Vec<(String, f64)>,
}

impl Route {
    /// The step with this id.
    #[must_use]
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.steps.iter().find(|s| s.id == id)
    }

    /// The caution with this id, and its step.
    #[must_use]
    pub fn caution(&self, id: &str) -> Option<(&Step, &Caution)> {
        self.steps.iter().find_map(|s| s.cautions.iter().find(|c| c.id == id).map(|c| (s, c)))
    }

    /// The reading with this id.
    #[must_use]
    pub fn reading(&self, id: &str) -> Option<&Reading> {
        self.steps.iter().flat_map(|s| &s.readings).find(|r| r.id == id)
    }

    /// Position of the stop that holds the step at `index`.
    #[must_use]
    pub fn stop_of(&self, index: usize) -> Option<usize> {
        self.stops.iter().position(|s| s.steps.contains(&index))
    }
}
