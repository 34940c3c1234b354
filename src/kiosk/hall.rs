//! The open walk as screens see it.

use std::sync::Arc;

use super::plan::PlanShape;
use super::shape;
use crate::measure::System;
use crate::script::Scripts;
use crate::walk::{Pace, Walk};

/// An open walk: what has happened for good, and the scripts it is led from.
#[derive(Debug, Clone)]
pub struct Hall {
    /// The walk as it stands on disk.
    pub walk: Arc<Walk>,
    /// Its scripts.
    pub scripts: Arc<Scripts>,
    /// What its steps take on this tablet.
    pub pace: Arc<Pace>,
    /// The unit as the plan draws it.
    pub shape: PlanShape,
    /// The same, ready to drive.
    pub stowed: PlanShape,
    /// Whether something proposed is being saved; the control pressed shows it.
    pub saving: bool,
}

impl Hall {
    /// A walk as it was taken up; `None` when its scripts no longer have the unit.
    #[must_use]
    pub fn new(walk: Arc<Walk>, scripts: Arc<Scripts>) -> Option<Self> {
        let shape = shape::of(&scripts.units.get(&walk.route().unit)?.value);
        let stowed = shape.stowed();
        Some(Self { walk, scripts, pace: Arc::default(), shape, stowed, saving: false })
    }
}

/// Measures by the word events use: `us`, `uk`, `metric`.
#[must_use]
pub fn system_of(word: &str) -> System {
    match word {
        "metric" => System::Metric,
        "uk" => System::Uk,
        _ => System::Us,
    }
}
