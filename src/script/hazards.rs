//! Which equipment brings which hazards: what must be warned of on the route of a unit that has it.

use serde::Deserialize;

use crate::source::At;

use super::kinds::{Hazard, Signal};
use crate::unit::When;

/// A hazard that equipment brings.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HazardRule {
    /// Equipment that brings it; every unit when absent.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// The hazard.
    pub hazard: At<Hazard>,
    /// The mildest signal word that will do.
    pub least: Signal,
    /// Topics of which one must warn of it.
    pub topics: Vec<At<String>>,
}
