//! Where a walk goes from a step: the next one, the renter's pages, or the end.

use crate::route::{Step, Zone};
use crate::walk::{Entry, Event, NotShown, Refused, StepState, Walk};

/// What comes after a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Onward {
    /// The step at this position.
    Step(usize),
    /// The tablet changes hands: cautions of a stop wait for the renter.
    HandOver {
        /// Position of the stop.
        stop: usize,
        /// How many cautions wait.
        cautions: usize,
    },
    /// All steps are settled.
    Closing,
}

/// What comes once the step at `here` is settled: the rest of its stop, then its cautions, then the next stop.
pub(super) fn onward(walk: &Walk, here: usize) -> Onward {
    let route = walk.route();
    let open = |i: &usize| {
        *i != here && route.steps.get(*i).is_some_and(|s| *walk.step_state(&s.id) == StepState::Open)
    };
    if let Some(index) = route.stop_of(here)
        && let Some(stop) = route.stops.get(index)
    {
        let rest = (here + 1..stop.steps.end).find(open).or_else(|| stop.steps.clone().find(open));
        if let Some(next) = rest {
            return Onward::Step(next);
        }
        let cautions = waiting(walk, stop.steps.clone());
        if cautions > 0 {
            return Onward::HandOver { stop: index, cautions };
        }
    }
    walk.next_step_after(here + 1).filter(|next| *next != here).map_or(Onward::Closing, Onward::Step)
}

/// Cautions of these steps that wait for an answer.
fn waiting(walk: &Walk, steps: std::ops::Range<usize>) -> usize {
    walk.route().steps.get(steps).unwrap_or_default().iter().map(|s| walk.waiting_at(s).len()).sum()
}

/// Where a step lies.
pub(super) fn zone(walk: &Walk, step: usize) -> Zone {
    let route = walk.route();
    route.stop_of(step).and_then(|i| route.stops.get(i)).map_or(Zone::Leaving, |s| s.zone)
}

/// Number of the stop of a step, and how many its zone has.
pub(super) fn numbered(walk: &Walk, step: usize) -> (u16, usize) {
    let route = walk.route();
    let zone = zone(walk, step);
    let number = route.stop_of(step).and_then(|i| route.stops.get(i)).map_or(1, |s| s.number);
    (number, route.stops.iter().filter(|s| s.zone == zone).count())
}

/// Whether a step may still be left out: not once somebody has answered a caution of it.
pub(super) fn may_be_left_out(walk: &Walk, step: &Step) -> bool {
    let event = Event::StepNotShown { step: step.id.clone(), reason: NotShown::Weather, note: String::new() };
    !matches!(probe(walk, event), Err(Refused::CautionsAnswered { .. }))
}

/// Asks the walk whether something may happen now, without doing it.
pub(super) fn probe(walk: &Walk, event: Event) -> Result<(), Refused> {
    walk.accepts(&Entry { at: walk.last_at(), offset_minutes: 0, event })
}
