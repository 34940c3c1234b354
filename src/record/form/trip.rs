//! The trip that figures were computed for.

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use super::Time;
use crate::figures;

/// The trip: what was planned, and what the figures were computed from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Trip {
    /// The plan as it was made last; none when nobody planned.
    pub planned: Option<Planned>,
    /// The plan with party, booking and readings as of the closing; none while party or booking is not known.
    pub counted: Option<Plan>,
}

/// A plan and when it was made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Planned {
    /// When.
    pub at: Time,
    /// The plan.
    pub plan: Plan,
}

/// A plan, with the names and words of a trip file, quantities as text; what nobody told is left out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Plan(pub Map<String, Value>);

impl Plan {
    /// The plan of a trip.
    ///
    /// # Errors
    /// It cannot be written as JSON.
    pub fn of(trip: &figures::Trip) -> Result<Self, serde_json::Error> {
        match told(serde_json::to_value(trip)?) {
            Some(Value::Object(plan)) => Ok(Self(plan)),
            _ => Ok(Self(Map::new())),
        }
    }

    /// The trip of the plan; none when it holds what only a newer program knows.
    #[must_use]
    pub fn trip(&self) -> Option<figures::Trip> {
        serde_json::from_value(Value::Object(self.0.clone())).ok()
    }
}

/// A value without what nobody told.
fn told(value: Value) -> Option<Value> {
    match value {
        Value::Null => None,
        Value::Array(all) => Some(Value::Array(all.into_iter().filter_map(told).collect())),
        Value::Object(all) => {
            Some(Value::Object(all.into_iter().filter_map(|(name, one)| Some((name, told(one)?))).collect()))
        }
        other => Some(other),
    }
}
