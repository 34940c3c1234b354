//! Routes: each unit's walk as it will be led, every text said with this unit's values.

use std::collections::BTreeMap;

use crate::measure::Measure;
use crate::route::{Ask, Route, Step};
use crate::script::{From, Speaker, StepForm};
use crate::source::Place;
use crate::unit::{Facts, Sheet};
use crate::words::{Reader, SOURCE_LANGUAGE, SayFault};

use super::{Check, WalkLength, guide};

/// Words a renter reads in a minute.
const WORDS_A_MINUTE: u32 = 180;
/// Seconds a hold takes.
const HOLD_SECONDS: u32 = 2;
/// Seconds a demonstration takes.
const DEMONSTRATION_SECONDS: u32 = 60;
/// Doubling back further than this is a fault, in meters.
const DOUBLING_METERS: f64 = 10.0;
/// Parts of a caution that can have a hole.
const PARTS: [&str; 4] = ["", ".title", ".harm", ".avoid"];
/// Parts of a caution that a renter reads before answering.
const READ_PARTS: [&str; 3] = ["", ".harm", ".avoid"];

/// Whether the unit has a value for a variable, as far as it was asked.
pub(super) type Has = BTreeMap<String, bool>;

impl Check<'_> {
    pub(super) fn routes(&mut self) -> Vec<WalkLength> {
        let scripts = self.scripts;
        let mut lengths = Vec::new();
        let mut reached = guide::Reached::new();
        for (unit, sheet) in &scripts.units {
            let facts = Facts::new(&sheet.value, &scripts.lot.value);
            self.step_places(sheet, &facts);
            let route = crate::route::build_with(scripts, unit, &sheet.value, &facts);
            let speaker = Speaker::of(scripts, &sheet.value, &facts, Reader::default());
            let mut has = Has::new();
            for step in &route.steps {
                self.say_step(&speaker, step, unit, &mut has);
                self.line_counts(step, unit);
                self.graded(&step.know, || format!("what `{}` says", step.id));
            }
            self.doublings(&route);
            self.hazards(unit, &route, &facts);
            self.guides_on(unit, &facts, &speaker, &mut has, &mut reached);
            let length = self.length(&route, &speaker);
            self.limits(&length);
            lengths.push(length);
        }
        self.unreached(&reached);
        self.uncovered();
        lengths
    }

    /// Every step that applies to the unit stands at a place the unit has.
    fn step_places(&mut self, sheet: &From<Sheet>, facts: &Facts) {
        let unit = &sheet.value.id.value;
        for topic in self.scripts.topics.values() {
            let applies = |w: Option<&crate::script::When>| w.is_none_or(|w| w.holds(facts));
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
        let (topic, form) = self.steps.get(step.id.as_str())?;
        Some((topic.place(&form.id), form))
    }

    /// Every text of the step can be said for this unit without a hole.
    fn say_step(&mut self, speaker: &Speaker<'_>, step: &Step, unit: &str, has: &mut Has) {
        let own = [format!("step-{}", step.id)];
        for key in own.iter().chain(&step.show).chain(&step.know).chain(&step.notes) {
            self.say_key(speaker, |check| check.step_at(step), unit, key, has);
        }
        for caution in &step.cautions {
            for part in PARTS {
                let key = format!("caution-{}{part}", caution.id);
                self.say_key(speaker, |check| check.step_at(step), unit, &key, has);
            }
        }
    }

    fn step_at(&self, step: &Step) -> Option<Place> {
        self.form_of(step).map(|(place, _)| place)
    }

    /// A message can be said for this unit without a hole.
    pub(super) fn say_key(
        &mut self,
        speaker: &Speaker<'_>,
        otherwise: impl FnOnce(&Self) -> Option<Place>,
        unit: &str,
        key: &str,
        has: &mut Has,
    ) {
        let words = &self.scripts.words;
        let variables = words.variables(SOURCE_LANGUAGE, key);
        let whole = variables.into_iter().all(|variable| match has.get(&variable) {
            Some(known) => *known,
            None => {
                let found = speaker.has_value(&variable);
                let _ = has.insert(variable, found);
                found
            }
        });
        if whole {
            return;
        }
        let Err(faults) = speaker.try_say(key) else { return };
        let place = words
            .place_of(SOURCE_LANGUAGE, key)
            .or_else(|| otherwise(self))
            .unwrap_or_else(|| Place::start(&self.scripts.lot.file.name));
        for fault in faults {
            // A message that is not there is told where the script names it; what is wrong with the message in
            // itself is told by the words.
            let SayFault::NoVariable { variable, .. } = &fault else { continue };
            let what = format!("`{key}` needs ${variable}, which `{unit}` does not have");
            let hint = speaker.nearest_value(variable).filter(|near| near != variable).map_or_else(
                || "give the line a condition on the equipment, or use a fact of the sheet".to_owned(),
                |near| format!("did you mean ${near}? Or give the line a condition on the equipment"),
            );
            self.fault("message.hole", place.clone(), what, hint);
        }
    }

    /// A step shows 2 to 5 things and says 2 to 4 (handbook H.2).
    fn line_counts(&mut self, step: &Step, unit: &str) {
        let (show, know) = (step.show.len(), step.know.len());
        if (2..=5).contains(&show) && (2..=4).contains(&know) {
            return;
        }
        if let Some((place, _)) = self.form_of(step) {
            let what = format!("`{}` shows {show} things and says {know} on `{unit}`", step.id);
            self.note("step.lines", place, what, "show 2 to 5 things and say 2 to 4; split what is longer");
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
        let scripts = self.scripts;
        let limits = &scripts.lot.value.limits;
        let place = |field: &str| crate::source::place_of(&scripts.lot.file, &["limits", field]);
        let allowed = limits.value.reading.quantity().to(Measure::Second).unwrap_or(0.0);
        if f64::from(length.reading_seconds) > allowed {
            let what =
                format!("`{}` takes {} minutes to read", length.unit, length.reading_seconds.div_ceil(60));
            let hint = "drop or shorten cautions, or allow more in lot.ron";
            self.fault("route.reading-time", place("reading"), what, hint);
        }
        if length.hand_overs > usize::from(limits.value.hand_overs) {
            let what = format!("`{}` changes hands {} times", length.unit, length.hand_overs);
            let hint = "bring places of a stop together, or allow more in lot.ron";
            self.fault("route.hand-overs", place("hand_overs"), what, hint);
        }
    }
}

impl Check<'_> {
    /// Words of a message; those without values are counted once for all units.
    fn count(&mut self, speaker: &Speaker<'_>, key: &str) -> usize {
        if let Some(count) = self.lengths.get(key) {
            return *count;
        }
        let count = speaker.say(key).split_whitespace().count();
        if self.scripts.words.variables(SOURCE_LANGUAGE, key).is_empty() {
            let _ = self.lengths.insert(key.to_owned(), count);
        }
        count
    }

    /// Length of a walk as a renter reads it.
    fn length(&mut self, route: &Route, speaker: &Speaker<'_>) -> WalkLength {
        let mut read = 0_usize;
        let mut seconds = 0_u32;
        for step in &route.steps {
            read += step.know.iter().map(|key| self.count(speaker, key)).sum::<usize>();
            for caution in &step.cautions {
                let keys = READ_PARTS.map(|part| format!("caution-{}{part}", caution.id));
                read += keys.iter().map(|key| self.count(speaker, key)).sum::<usize>();
                seconds += match caution.ask {
                    Ask::Read => 0,
                    Ask::Hold => HOLD_SECONDS,
                    Ask::Demonstrate => DEMONSTRATION_SECONDS,
                };
            }
        }
        let reading = u32::try_from(read).unwrap_or(u32::MAX).saturating_mul(60) / WORDS_A_MINUTE;
        let asks = |steps: &[Step]| steps.iter().any(|step| !step.cautions.is_empty());
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
                .filter(|stop| asks(route.steps.get(stop.steps.clone()).unwrap_or_default()))
                .count(),
        }
    }
}
