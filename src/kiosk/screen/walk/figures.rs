//! The figures of a step: which of them show, and the cards they show on.
//!
//! What shows, for each figure that the script names at a step, three at most:
//! - One that is computed shows its value.
//! - One about equipment that the unit does not have never shows.
//! - One that lacks something shows only where that can still be learned at the handoff, and then says what lacks
//!   and what to do. That is so for a reading of this walk that nobody has settled yet: the card leads to where it
//!   is taken. It is so for what the plan of the trip can tell beforehand, which [`PLANNED`] lists.
//! - Several figures that lack the same thing share one card.
//! - The verdict on the awning shows only where the plan tells a wind: without one it could but say 'in'.
//! - All else that may lack shows nothing: what a gauge does not tell (it was said to be broken), what is known only
//!   on the road (wind, slope, a sign, a cord that nobody plans to use), what is learned at the return, and a gap in
//!   the data sheet, which `check` tells the lot.

mod cards;
mod how;
mod loads;
mod room;

pub(in crate::kiosk) use cards::numbers;

use crate::figures::{self, Figure, Given, State};
use crate::kiosk::hall::Hall;
use crate::route::Step;
use crate::walk::Walk;

/// Most figures of a step: more would push its words away.
const MOST: usize = 3;

/// Facts that a plan of the trip can tell before anyone leaves.
const PLANNED: [&str; 8] = [
    "trip",
    "trip.nights",
    "trip.people",
    "trip.leaves",
    "trip.highest",
    "trip.coldest",
    "trip.hottest",
    "trip.house_charge",
];

/// The figure that judges the wind of a moment.
const OF_WIND: &str = "awning_verdict";

/// Facts of the trip that a gauge tells, and the reading that takes each.
const READ: [(&str, &str); 6] = [
    ("trip.start.fresh", "fresh"),
    ("trip.start.grey", "grey"),
    ("trip.start.black", "black"),
    ("trip.start.propane", "propane-tank"),
    ("trip.start.fuel", "fuel"),
    ("trip.house_volts", "house-volts"),
];

/// A figure that shows.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Card {
    /// It, computed or not.
    pub figure: Figure,
    /// What to do where it is not.
    pub lack: Option<Lack>,
}

/// What to do about a figure that cannot be computed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Lack {
    /// Take this reading, at the step of this position.
    Reading {
        /// The reading.
        reading: String,
        /// Position of its step on the route.
        step: usize,
    },
    /// Tell it in the plan of the trip.
    Plan,
}

/// The figures of a step as they show now.
pub(super) fn of_step(hall: &Hall, step: &Step) -> Vec<Card> {
    if step.figures.is_empty() {
        return Vec::new();
    }
    let walk = &hall.walk;
    let Some(facts) = hall.scripts.facts(&walk.route().unit) else { return Vec::new() };
    let trip = walk.trip();
    let given = Given { facts: &facts, trip: trip.as_ref() };
    // What is said of the moment means nothing before it: without a wind there is nothing to say of an awning.
    let windless = trip.as_ref().is_none_or(|trip| trip.wind.is_none());
    let named = step.figures.iter().filter(|id| !(windless && *id == OF_WIND));
    let all = named.filter_map(|id| figures::one(id, given));
    all.filter_map(|figure| card(walk, figure)).take(MOST).collect()
}

/// The card of a figure; none where it does not show.
fn card(walk: &Walk, figure: Figure) -> Option<Card> {
    let lack = match &figure.state {
        State::Ok => None,
        State::NotFitted => return None,
        State::Missing(fact) => Some(lack(walk, fact)?),
    };
    Some(Card { figure, lack })
}

/// What to do about a fact that lacks; none where nothing can be done before the unit leaves.
fn lack(walk: &Walk, fact: &str) -> Option<Lack> {
    if let Some((_, reading)) = READ.iter().find(|(read, _)| *read == fact) {
        // Taken, and still of no use: or said to be out of reach. Either way it is settled.
        if walk.reading(reading).is_some() {
            return None;
        }
        let has = |step: &Step| step.readings.iter().any(|r| r.id == *reading);
        let step = walk.route().steps.iter().position(has)?;
        return Some(Lack::Reading { reading: (*reading).to_owned(), step });
    }
    PLANNED.contains(&fact).then_some(Lack::Plan)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fact_is_read_or_planned_never_both() {
        assert!(READ.iter().all(|(fact, _)| !PLANNED.contains(fact)));
    }
}
