//! What makes a trip's supplies last longer. Each is tried on the trip itself and says what it gains; one that
//! gains nothing is not shown.

use crate::measure::Time;
use crate::unit::Facts;

use super::projection::{Course, Resource, course_of};
use super::trip::{HookUp, Use};
use super::{Given, Trip};

/// Hours of generator that are tried, a day.
const HOURS: [u8; 6] = [1, 2, 3, 4, 6, 8];

/// Something that can be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Action {
    /// Use water with care from the start.
    Careful,
    /// Fill the fresh tank at the start of this day.
    Fill(u16),
    /// Empty the waste tanks at the start of this day.
    Empty(u16),
    /// Take a pitch with power for the night of this day.
    Power(u16),
    /// Run the generator so many hours a day.
    Generator(u8),
    /// Drive two hours a day.
    Drive,
    /// Switch the inverter off at night.
    InverterOff,
    /// Refill propane at the start of this day.
    Refill(u16),
    /// Fill the fuel tank at the start of this day.
    Refuel(u16),
}

impl Action {
    /// The action as keys and JSON spell it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Careful => "careful",
            Self::Fill(_) => "fill",
            Self::Empty(_) => "empty",
            Self::Power(_) => "power",
            Self::Generator(_) => "generator",
            Self::Drive => "drive",
            Self::InverterOff => "inverter-off",
            Self::Refill(_) => "refill",
            Self::Refuel(_) => "refuel",
        }
    }

    /// The day it is done on, counted from 1, if it has one.
    #[must_use]
    pub const fn day(self) -> Option<u16> {
        match self {
            Self::Fill(day) | Self::Empty(day) | Self::Power(day) | Self::Refill(day) | Self::Refuel(day) => {
                Some(day)
            }
            _ => None,
        }
    }

    /// Hours a day, if it has any.
    #[must_use]
    pub const fn hours(self) -> Option<u8> {
        match self {
            Self::Generator(hours) => Some(hours),
            Self::Drive => Some(2),
            _ => None,
        }
    }

    /// The trip with this done.
    fn on(self, trip: &Trip) -> Option<Trip> {
        let mut trip = trip.clone();
        match self {
            Self::Careful => trip.water = Use::Careful,
            Self::Fill(day) => trip.fill.push(day),
            Self::Empty(day) => trip.empty.push(day),
            Self::Refill(day) => trip.refill.push(day),
            Self::Refuel(day) => trip.refuel.push(day),
            Self::InverterOff => trip.inverter_on = false,
            Self::Drive => trip.driving = Some("2 h".parse().ok()?),
            Self::Generator(hours) => {
                let hours: Time = format!("{hours} h").parse().ok()?;
                trip.generator_run = Some(hours);
            }
            Self::Power(day) => {
                let at = usize::from(day).checked_sub(1)?;
                while trip.hook_up.len() <= at {
                    trip.hook_up.push(HookUp::None);
                }
                let place = trip.hook_up.get_mut(at)?;
                if place.has_power() {
                    return None;
                }
                *place = HookUp::Power;
            }
        }
        Some(trip)
    }
}

/// What an action gains.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Help {
    /// What to do.
    pub action: Action,
    /// What lasts longer.
    pub resource: Resource,
    /// When it runs out without, in days.
    pub before: f64,
    /// When it runs out with it; none when it then lasts.
    pub after: Option<f64>,
}

/// What helps each resource that does not last, the greatest gain of each first.
pub(super) fn helps(facts: &Facts, trip: &Trip, now: &[Course]) -> Vec<Help> {
    let mut all = Vec::new();
    for course in now {
        let Some(before) = course.ends else { continue };
        let mut own: Vec<Help> = candidates(course.resource, before, trip)
            .into_iter()
            .filter_map(|action| try_one(facts, trip, course.resource, before, action))
            .collect();
        keep_shortest_run(&mut own);
        own.sort_by(|a, b| b.after.unwrap_or(f64::MAX).total_cmp(&a.after.unwrap_or(f64::MAX)));
        all.extend(own);
    }
    all
}

fn candidates(resource: Resource, end: f64, trip: &Trip) -> Vec<Action> {
    // The last morning on which there still is some.
    let mut day: u16 = 1;
    while f64::from(day) <= end && day < trip.nights {
        day += 1;
    }
    let careful = (trip.water == Use::Normal && trip.use_each.is_none()).then_some(Action::Careful);
    let runs = HOURS.iter().filter(|_| trip.generator_run.is_none()).map(|h| Action::Generator(*h));
    match resource {
        Resource::Fresh => careful.into_iter().chain([Action::Fill(day)]).collect(),
        Resource::Grey | Resource::Toilet => careful.into_iter().chain([Action::Empty(day)]).collect(),
        Resource::Battery => [Action::InverterOff, Action::Power(day)]
            .into_iter()
            .filter(|action| *action != Action::InverterOff || trip.inverter_on)
            .chain(trip.driving.is_none().then_some(Action::Drive))
            .chain(runs)
            .collect(),
        Resource::Propane => vec![Action::Refill(day), Action::Power(day)],
        Resource::Generator => vec![Action::Refuel(day), Action::Power(day)],
    }
}

fn try_one(facts: &Facts, trip: &Trip, resource: Resource, before: f64, action: Action) -> Option<Help> {
    let changed = action.on(trip)?;
    let after = course_of(Given { facts, trip: Some(&changed) }, resource)?.ends;
    let gains = after.is_none_or(|after| after > before + 1e-9);
    gains.then_some(Help { action, resource, before, after })
}

/// Of several hours of generator the fewest that make it last, else the most.
fn keep_shortest_run(helps: &mut Vec<Help>) {
    let runs = helps.iter().filter(|h| matches!(h.action, Action::Generator(_)));
    let enough = runs.clone().find(|h| h.after.is_none()).map(|h| h.action);
    let keep = enough.or_else(|| runs.map(|h| h.action).max());
    helps.retain(|h| !matches!(h.action, Action::Generator(_)) || Some(h.action) == keep);
}
