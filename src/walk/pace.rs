//! How long steps take on this tablet, learned from walks that were sealed.
//!
//! A step's own minutes are what its author thinks; past walks tell what it takes here. The estimate is a mean of both:
//! the author's time counts as three walks, the median of the last nine walks as many as there are. The median is kept
//! between a quarter and four times the author's time, so that one odd day does not spoil it. (Common practice, no
//! source.) A step that no walk has shown for fifty walks is forgotten. Nothing here tells who did what.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{StepState, Walk};
use crate::route::{Route, Step};

/// Durations kept of each step.
const KEPT: usize = 9;
/// As how many walks the author's time counts.
const AUTHOR: u64 = 3;
/// Walks after which a step that none of them showed is forgotten.
const FORGOTTEN: u16 = 50;
/// The median is at most so many times the author's time, and at least so many parts of it.
const FAR: u64 = 4;
/// A step takes no longer than this, in seconds: what a pause is not.
const LONGEST: u32 = 4 * 60 * 60;

/// What past walks took, step by step.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pace {
    steps: BTreeMap<String, Past>,
}

/// What a step took.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Past {
    /// The last durations in seconds, oldest first.
    seconds: Vec<u32>,
    /// Walks since it was last shown.
    missed: u16,
}

impl Pace {
    /// Takes a walk in that was handed over.
    pub fn learn(&mut self, walk: &Walk) {
        for past in self.steps.values_mut() {
            past.missed = past.missed.saturating_add(1);
        }
        for step in &walk.route().steps {
            let seconds = walk.times().step(&step.id) / 1000;
            // What took no time at all was not shown to anybody.
            if !matches!(walk.step_state(&step.id), StepState::Shown { .. }) || seconds == 0 {
                continue;
            }
            let past = self.steps.entry(step.id.clone()).or_default();
            past.missed = 0;
            past.seconds.push(u32::try_from(seconds).unwrap_or(LONGEST).min(LONGEST));
            let over = past.seconds.len().saturating_sub(KEPT);
            drop(past.seconds.drain(..over));
        }
        self.steps.retain(|_, past| past.missed < FORGOTTEN);
    }

    /// Whether it is what learning can bring; anything else was not written by this program.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        self.steps.values().all(|past| {
            !past.seconds.is_empty()
                && past.seconds.len() <= KEPT
                && past.seconds.iter().all(|s| (1..=LONGEST).contains(s))
        })
    }

    /// How many steps it knows.
    #[must_use]
    pub fn known(&self) -> usize {
        self.steps.len()
    }

    /// Seconds that a step is thought to take.
    #[must_use]
    pub fn seconds(&self, step: &Step) -> u64 {
        let own = u64::from(step.minutes) * 60;
        let Some(past) = self.steps.get(&step.id) else { return own };
        let count = u64::try_from(past.seconds.len()).unwrap_or(0);
        let mut median = u64::from(median(&past.seconds));
        if own > 0 {
            median = median.clamp(own / FAR, own * FAR);
        }
        (AUTHOR * own + count * median) / (AUTHOR + count)
    }

    /// Minutes of a whole route, rounded up.
    #[must_use]
    pub fn minutes(&self, route: &Route) -> u32 {
        self.minutes_of(route.steps.iter())
    }

    fn minutes_of<'s>(&self, steps: impl Iterator<Item = &'s Step>) -> u32 {
        let seconds = steps.map(|s| self.seconds(s)).fold(0, u64::saturating_add);
        u32::try_from(seconds.div_ceil(60)).unwrap_or(u32::MAX)
    }
}

/// The middle one; of two, the longer.
fn median(seconds: &[u32]) -> u32 {
    let mut sorted = seconds.to_vec();
    sorted.sort_unstable();
    sorted.get(sorted.len() / 2).copied().unwrap_or(0)
}

impl Walk {
    /// Minutes of the steps that are neither shown nor left out, as this tablet takes them, rounded up.
    #[must_use]
    pub fn minutes_left(&self, pace: &Pace) -> u32 {
        let open = self.route.steps.iter().filter(|s| *self.step_state(&s.id) == StepState::Open);
        pace.minutes_of(open)
    }
}
