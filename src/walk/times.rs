//! Where the time of a walk went.
//!
//! The time before an event belongs to what the event speaks of: a step, the opening, the closing. Time is counted from
//! event to event; what a jump of the clock adds or takes is left out, a step back counts as nothing, and so no duration
//! is ever below zero. Nothing for longer than a quarter of an hour is a pause, not work.

use std::collections::BTreeMap;

use jiff::Timestamp;

use super::event::{Entry, Event, Helped, Tried, Who};
use crate::route::Route;

/// From here on nothing having happened counts as a pause, in milliseconds.
pub const PAUSE_MS: u64 = 15 * 60 * 1000;

/// Durations of a walk so far, in milliseconds.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Times {
    /// The opening.
    pub opening: u64,
    /// The closing.
    pub closing: u64,
    /// Pauses.
    pub paused: u64,
    /// What the tablet lay in the renter's hands: cautions, consent and signatures of the party.
    pub with_renter: u64,
    /// How often the tablet was handed to the renter.
    pub hand_overs: u32,
    /// Each step, by id.
    steps: BTreeMap<String, u64>,
    /// Time since the last event that speaks of a step: it belongs to the next one.
    carried: u64,
    renter_has_it: bool,
}

enum Part<'e> {
    Opening,
    Step(&'e str),
    Closing,
    /// The next step that is spoken of.
    Next,
}

impl Times {
    /// Time spent on a step.
    #[must_use]
    pub fn step(&self, id: &str) -> u64 {
        self.steps.get(id).copied().unwrap_or(0)
    }

    /// All that was work.
    #[must_use]
    pub fn worked(&self) -> u64 {
        let steps = self.steps.values().fold(0, |sum: u64, step| sum.saturating_add(*step));
        steps.saturating_add(self.opening).saturating_add(self.closing).saturating_add(self.carried)
    }

    /// Takes in the time that led to an event.
    pub(super) fn take(&mut self, route: &Route, opened: bool, last: Timestamp, entry: &Entry) {
        let passed = passed(last, entry);
        let by_renter = is_by_renter(&entry.event);
        if by_renter && !self.renter_has_it {
            self.hand_overs = self.hand_overs.saturating_add(1);
        }
        if !matches!(entry.event, Event::ClockJumped { .. }) {
            self.renter_has_it = by_renter;
        }
        if passed > PAUSE_MS {
            self.paused = self.paused.saturating_add(passed);
            return;
        }
        if by_renter {
            self.with_renter = self.with_renter.saturating_add(passed);
        }
        match part(route, opened, &entry.event) {
            Part::Opening => self.opening = self.opening.saturating_add(passed),
            Part::Closing => {
                self.closing = self.closing.saturating_add(passed).saturating_add(self.carried);
                self.carried = 0;
            }
            Part::Next => self.carried = self.carried.saturating_add(passed),
            Part::Step(id) => {
                let spent = passed.saturating_add(std::mem::take(&mut self.carried));
                let step = self.steps.entry(id.to_owned()).or_default();
                *step = step.saturating_add(spent);
            }
        }
    }
}

/// Milliseconds between two events; none when the clock stepped back.
fn passed(last: Timestamp, entry: &Entry) -> u64 {
    let until = match entry.event {
        Event::ClockJumped { from, .. } => from,
        _ => entry.at,
    };
    u64::try_from(until.duration_since(last).as_millis()).unwrap_or(0)
}

fn is_by_renter(event: &Event) -> bool {
    matches!(
        event,
        Event::CautionAnswered { .. }
            | Event::CautionRefused { .. }
            | Event::DemonstrationTried(_)
            | Event::DemonstrationHelped(_)
            | Event::QuestionNoted { caution: Some(_), .. }
            | Event::ConsentAnswered { .. }
            | Event::Signed { by: Who::Person(_), .. }
    )
}

fn part<'e>(route: &'e Route, opened: bool, event: &'e Event) -> Part<'e> {
    if !opened {
        return Part::Opening;
    }
    let step = |found: Option<&'e crate::route::Step>| found.map_or(Part::Next, |s| Part::Step(&s.id));
    let mut steps = route.steps.iter();
    match event {
        Event::StepShown { step, .. }
        | Event::StepNotShown { step, .. }
        | Event::QuestionNoted { step, .. } => Part::Step(step),
        Event::CautionAnswered { caution, .. } | Event::CautionRefused { caution, .. } => {
            step(route.caution(caution).map(|(step, _)| step))
        }
        Event::DemonstrationTried(Tried { caution, .. })
        | Event::DemonstrationHelped(Helped { caution, .. }) => {
            step(route.caution(caution).map(|(step, _)| step))
        }
        Event::ReadingTaken { reading, .. } | Event::ReadingNotTaken { reading, .. } => {
            step(steps.find(|s| s.readings.iter().any(|r| r.id == *reading)))
        }
        Event::ItemCounted { .. } => step(steps.find(|s| s.kit)),
        Event::LeavingChecked { item, .. } => step(steps.find(|s| s.leaving.contains(item))),
        Event::ConsentAnswered { .. }
        | Event::Signed { .. }
        | Event::SignatureRefused { .. }
        | Event::ClosingReopened { .. }
        | Event::CopyOffered
        | Event::CopyChosen { .. }
        | Event::HandoverStopped { .. }
        | Event::SealBegun { .. } => Part::Closing,
        _ => Part::Next,
    }
}
