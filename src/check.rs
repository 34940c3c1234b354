//! A compiler for scripts: finds everything that is wrong with a lot at once.
//!
//! [`lot`] loads a bundle and holds it against every rule; each finding has a code, a place and a way out.

mod messages;
mod route;
mod topic;
mod unit;

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::script::{Bundle, Scripts};
use crate::source::{Fault, Place, Severity};

/// What was found out about a lot.
#[derive(Debug)]
pub struct Report {
    /// The scripts, when they can be used.
    pub scripts: Option<Scripts>,
    /// Everything found, sorted by place.
    pub faults: Vec<Fault>,
    /// How long each unit's walk takes.
    pub walks: Vec<WalkLength>,
}

impl Report {
    /// Whether nothing worse than a note was found.
    #[must_use]
    pub fn is_clean(&self) -> bool {
        self.faults.iter().all(|f| f.severity == Severity::Note)
    }
}

/// Length of one unit's walk.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct WalkLength {
    /// Unit id.
    pub unit: String,
    /// Steps.
    pub steps: usize,
    /// Stops.
    pub stops: usize,
    /// Cautions.
    pub cautions: usize,
    /// Minutes of the steps.
    pub minutes: u32,
    /// Meters walked.
    pub meters: u32,
    /// Seconds to read the renter's words at 180 words a minute, 2 s a hold, 60 s a demonstration.
    pub reading_seconds: u32,
    /// How often the tablet changes hands.
    pub hand_overs: usize,
}

/// Checks a lot.
#[must_use]
pub fn lot(bundle: Arc<Bundle>) -> Report {
    let (scripts, mut faults) = Scripts::load(bundle);
    let mut walks = Vec::new();
    if let Some(scripts) = &scripts {
        let mut check = Check { scripts, used: messages::Used::default(), faults: Vec::new() };
        check.readings();
        check.topics();
        check.units();
        walks = check.routes();
        check.unused_messages();
        faults.append(&mut check.faults);
    }
    faults.sort_by(|a, b| (&a.place, a.code, &a.what).cmp(&(&b.place, b.code, &b.what)));
    faults.dedup();
    Report { scripts, faults, walks }
}

/// One run over loaded scripts.
struct Check<'a> {
    scripts: &'a Scripts,
    used: messages::Used,
    faults: Vec<Fault>,
}

impl Check<'_> {
    fn fault(&mut self, code: &'static str, place: Place, what: impl Into<String>, hint: impl Into<String>) {
        self.faults.push(Fault::new(code, place, what, hint));
    }

    fn note(&mut self, code: &'static str, place: Place, what: impl Into<String>, hint: impl Into<String>) {
        self.faults.push(Fault::note(code, place, what, hint));
    }

    /// Readings have words, and scales that can be read on.
    fn readings(&mut self) {
        for (id, scale) in &self.scripts.readings {
            let place = Place { file: Arc::from("walkthroughs/readings.ron"), line: 1, col: 1 };
            self.message(&format!("reading-{id}"), &place);
            self.message(&format!("reading-{id}.how"), &place);
            let sound = match scale {
                crate::script::Scale::Number { step, min, max, .. } => {
                    *step > rust_decimal::Decimal::ZERO && min < max
                }
                crate::script::Scale::Parts(parts) => *parts > 0,
                crate::script::Scale::Choice(words) => words.len() > 1,
            };
            if !sound {
                let what = format!("the scale of `{id}` has no values to read");
                self.fault("reading.scale", place, what, "give a step above zero and a range from low to high");
            }
        }
    }
}

/// Names that stand twice, with the place of the second.
fn twice<'a, T: Ord + ?Sized>(all: impl Iterator<Item = (&'a T, Place)>) -> Vec<(&'a T, Place, Place)> {
    let mut seen: BTreeMap<&T, Place> = BTreeMap::new();
    let mut found = Vec::new();
    for (name, place) in all {
        match seen.get(name) {
            Some(first) => found.push((name, first.clone(), place)),
            None => {
                let _ = seen.insert(name, place);
            }
        }
    }
    found
}
