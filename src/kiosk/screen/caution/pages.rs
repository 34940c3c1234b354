//! Which pages wait at a stop, and who may answer them.

use std::collections::BTreeSet;

use crate::route::{Ask, Caution, Route, Signal, Step};
use crate::walk::{AnswerState, MustAnswer, PersonId, Walk};

/// A page: a step, and the positions of its cautions that stand on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Page {
    step: usize,
    cautions: Vec<usize>,
}

/// Whether a caution has a page to itself: what can kill or badly hurt, and what asks for more than a tap.
pub(super) fn has_own_page(caution: &Caution) -> bool {
    caution.signal >= Signal::Warning || caution.ask != Ask::Read
}

/// Who may answer a caution now: they are here, they must or can, and they have not yet. One who would not
/// confirm it, so that the unit was to stay, may think better of it.
pub(super) fn who_may(walk: &Walk, step: &Step, caution: &Caution) -> Vec<PersonId> {
    let here = |id: &PersonId| walk.is_present(*id);
    match walk.answer_state_of(step, caution) {
        AnswerState::Waiting(MustAnswer::OneAdult) => walk.adults().map(|p| p.id).filter(here).collect(),
        AnswerState::Waiting(MustAnswer::Drivers(drivers)) => drivers.into_iter().filter(here).collect(),
        AnswerState::Kept(people) => people.into_iter().filter(here).collect(),
        AnswerState::NotDue | AnswerState::Answered | AnswerState::Refused(_) => Vec::new(),
    }
}

/// Who of the drivers still has to answer, be they here or not.
fn lacking(walk: &Walk, step: &Step, caution: &Caution) -> Vec<PersonId> {
    match walk.answer_state_of(step, caution) {
        AnswerState::Waiting(MustAnswer::Drivers(drivers)) => drivers,
        _ => Vec::new(),
    }
}

/// The steps of a stop that were shown or left out, with their positions.
fn steps_of(walk: &Walk, stop: usize) -> impl Iterator<Item = (usize, &Step)> {
    let route = walk.route();
    let range = route.stops.get(stop).map_or(0..0, |s| s.steps.clone());
    let steps = route.steps.iter().enumerate().skip(range.start).take(range.len());
    steps.filter(|(_, s)| *walk.step_state(&s.id) != crate::walk::StepState::Open)
}

/// The pages that wait at a stop, in the order of the route; of a step the gravest come first.
pub(super) fn waiting_at(walk: &Walk, stop: usize) -> Vec<Page> {
    let mut pages = Vec::new();
    for (index, step) in steps_of(walk, stop) {
        let waits = |c: &Caution| !who_may(walk, step, c).is_empty();
        let waiting: Vec<(usize, &Caution)> =
            step.cautions.iter().enumerate().filter(|(_, c)| waits(c)).collect();
        let (mut own, together): (Vec<_>, Vec<_>) = waiting.into_iter().partition(|(_, c)| has_own_page(c));
        own.sort_by_key(|(_, c)| std::cmp::Reverse(c.signal));
        pages.extend(own.into_iter().map(|(at, _)| Page { step: index, cautions: vec![at] }));
        if !together.is_empty() {
            pages.push(Page { step: index, cautions: together.into_iter().map(|(at, _)| at).collect() });
        }
    }
    pages
}

/// Who still has to answer something of a stop themselves.
pub(super) fn all_lacking(walk: &Walk, stop: usize) -> BTreeSet<PersonId> {
    steps_of(walk, stop).flat_map(|(_, s)| s.cautions.iter().flat_map(|c| lacking(walk, s, c))).collect()
}

/// Whether the unit was to be kept over a caution of this stop.
pub(super) fn is_kept(walk: &Walk, stop: usize) -> bool {
    steps_of(walk, stop)
        .flat_map(|(_, s)| s.cautions.iter().map(move |c| walk.answer_state_of(s, c)))
        .any(|state| matches!(state, AnswerState::Kept(_)))
}

impl Page {
    /// Whether some of its cautions stand on the other page as well.
    pub(super) fn meets(&self, other: &Self) -> bool {
        self.step == other.step && self.cautions.iter().any(|at| other.cautions.contains(at))
    }

    /// Its step and cautions.
    pub(super) fn of<'a>(&self, route: &'a Route) -> Option<(&'a Step, Vec<&'a Caution>)> {
        let step = route.steps.get(self.step)?;
        Some((step, self.cautions.iter().filter_map(|at| step.cautions.get(*at)).collect()))
    }
}
