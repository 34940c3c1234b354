//! Routes: each unit's walk as it will be led, every text said with this unit's values.

use std::collections::BTreeMap;

use crate::measure::Measure;
use crate::route::{Ask, Route, Step};
use crate::script::{Speaker, StepForm};
use crate::source::Place;
use crate::words::{Reader, SOURCE_LANGUAGE, SayFault};

use super::{Check, WalkLength};

/// Words a renter reads in a minute.
const WORDS_A_MINUTE: u32 = 180;
/// Seconds a hold takes.
const HOLD_SECONDS: u32 = 2;
/// Seconds a demonstration takes.
const DEMONSTRATION_SECONDS: u32 = 60;
/// Doubling back further than this is a warning, in meters.
const DOUBLING_METERS: f64 = 10.0;

impl Check<'_> {
    pub(super) fn routes(&mut self) -> Vec<WalkLength> {
        let scripts = self.scripts;
        let mut lengths = Vec::new();
        for unit in scripts.units.keys() {
            self.step_places(unit);
            let Some(route) = crate::route::build(scripts, unit) else { continue };
            let Some(speaker) = Speaker::new(scripts, unit, Reader::default()) else { continue };
            for step in &route.steps {
                self.say_step(&speaker, step, unit);
            }
            self.line_counts(&route);
            self.doublings(&route);
            let length = length(&route, &speaker);
            self.limits(&length);
            lengths.push(length);
        }
        lengths
    }

    /// Every step that applies to the unit stands at a place the unit has.
    fn step_places(&mut self, unit: &str) {
        let Some(sheet) = self.scripts.units.get(unit) else { return };
        let Some(facts) = self.scripts.facts(unit) else { return };
        for topic in self.scripts.topics.values() {
            let applies = |w: Option<&crate::script::When>| w.is_none_or(|w| w.holds(&facts));
            if !applies(topic.value.when.as_ref()) {
                continue;
            }
            for step in topic.value.steps.iter().map(|s| &s.value).filter(|s| applies(s.when.as_ref())) {
                if !sheet.value.places.contains_key(&step.place.value) {
                    let what = format!("`{unit}` has no place `{}`", step.place.value);
                    let hint = format!("add it to the data sheet of `{unit}`, or give the step a condition");
                    self.fault("place.unknown", topic.place(&step.place), what, hint);
                }
            }
        }
    }

    fn form_of(&self, step: &Step) -> Option<(Place, &StepForm)> {
        let topic = self.scripts.topics.get(&step.topic)?;
        let form = topic.value.steps.iter().map(|s| &s.value).find(|s| s.id.value == step.id)?;
        Some((topic.place(&form.id), form))
    }

    /// Every text of the step can be said for this unit without a hole.
    fn say_step(&mut self, speaker: &Speaker<'_>, step: &Step, unit: &str) {
        let mut keys = vec![format!("step-{}", step.id)];
        keys.extend(step.show.iter().chain(&step.know).chain(&step.notes).cloned());
        for caution in &step.cautions {
            keys.extend(["", ".title", ".harm", ".avoid"].map(|part| format!("caution-{}{part}", caution.id)));
        }
        for key in keys {
            let Err(faults) = speaker.try_say(&key) else { continue };
            let place = self
                .scripts
                .words
                .place_of(SOURCE_LANGUAGE, &key)
                .or_else(|| self.form_of(step).map(|(place, _)| place))
                .unwrap_or_else(|| Place::start(&self.scripts.lot.file.name));
            for fault in faults {
                let (what, hint) = match &fault {
                    // Said once already where the script names it.
                    SayFault::NoMessage { .. } => continue,
                    SayFault::NoVariable { variable, .. } => (
                        format!("`{key}` needs ${variable}, which `{unit}` does not have"),
                        speaker.nearest_value(variable).map_or_else(
                            || "give the line a condition on the equipment, or use a fact of the sheet".to_owned(),
                            |near| format!("did you mean ${near}? Or give the line a condition on the equipment"),
                        ),
                    ),
                    SayFault::NoReference { .. } | SayFault::Cyclic { .. } | SayFault::Other { .. } => {
                        (fault.to_string(), "correct the message".to_owned())
                    }
                };
                self.fault("message.hole", place.clone(), what, hint);
            }
        }
    }

    /// A topic shows 2 to 5 things and says 2 to 4 (handbook H.2).
    fn line_counts(&mut self, route: &Route) {
        let mut counts: BTreeMap<&str, (usize, usize, &Step)> = BTreeMap::new();
        for step in &route.steps {
            let entry = counts.entry(&step.topic).or_insert((0, 0, step));
            entry.0 += step.show.len();
            entry.1 += step.know.len();
        }
        for (topic, (show, know, step)) in counts {
            if (2..=6).contains(&show) && (2..=5).contains(&know) {
                continue;
            }
            if let Some((place, _)) = self.form_of(step) {
                let what = format!("`{topic}` shows {show} things and says {know} on `{}`", route.unit);
                self.note("topic.lines", place, what, "show 2 to 5 things and say 2 to 4; split what is longer");
            }
        }
    }

    fn doublings(&mut self, route: &Route) {
        for (id, meters) in &route.doublings {
            let Some((place, _)) = route.step(id).and_then(|s| self.form_of(s)) else { continue };
            let what = format!("the walk of `{}` goes back {meters:.1} m for `{id}`", route.unit);
            if *meters > DOUBLING_METERS {
                self.fault("route.doubling", place, what, "let another step wait, or move the place");
            } else {
                self.note("route.doubling", place, what, "let another step wait, or move the place");
            }
        }
    }

    /// Nobody has time for more: a record of cautions nobody could read loses its dispute.
    fn limits(&mut self, length: &WalkLength) {
        let limits = &self.scripts.lot.value.limits;
        let place = self.scripts.lot.place(limits);
        let allowed = limits.value.reading.quantity().to(Measure::Second).unwrap_or(0.0);
        if f64::from(length.reading_seconds) > allowed {
            let what = format!("`{}` takes {} minutes to read", length.unit, length.reading_seconds.div_ceil(60));
            self.fault("route.reading-time", place.clone(), what, "drop or shorten cautions, or allow more in lot.ron");
        }
        if length.hand_overs > usize::from(limits.value.hand_overs) {
            let what = format!("`{}` changes hands {} times", length.unit, length.hand_overs);
            self.fault("route.hand-overs", place, what, "bring places of a stop together, or allow more in lot.ron");
        }
    }
}

/// Length of a walk as a renter reads it.
fn length(route: &Route, speaker: &Speaker<'_>) -> WalkLength {
    let mut words = 0_usize;
    let mut seconds = 0_u32;
    for step in &route.steps {
        words += step.know.iter().map(|k| speaker.say(k).split_whitespace().count()).sum::<usize>();
        for caution in &step.cautions {
            let text = speaker.caution(caution);
            words += [&text.hazard, &text.harm, &text.avoid].iter().map(|t| t.split_whitespace().count()).sum::<usize>();
            seconds += match caution.ask {
                Ask::Read => 0,
                Ask::Hold => HOLD_SECONDS,
                Ask::Demonstrate => DEMONSTRATION_SECONDS,
            };
        }
    }
    let reading = u32::try_from(words).unwrap_or(u32::MAX).saturating_mul(60) / WORDS_A_MINUTE;
    WalkLength {
        unit: route.unit.clone(),
        steps: route.steps.len(),
        stops: route.stops.len(),
        cautions: route.steps.iter().map(|s| s.cautions.len()).sum(),
        minutes: route.minutes,
        meters: route.meters,
        reading_seconds: reading.saturating_add(seconds),
        hand_overs: route
            .stops
            .iter()
            .filter(|s| route.steps.get(s.steps.clone()).unwrap_or_default().iter().any(|x| !x.cautions.is_empty()))
            .count(),
    }
}
