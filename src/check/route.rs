//! Routes: each unit's walk as it will be led, every text said with this unit's values.

use std::collections::BTreeMap;

use crate::figures::{HookUp, Person, Trip};
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
type Has = BTreeMap<String, bool>;

/// What kind of text is said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Text {
    /// A title, a line, a note: said for the trip.
    Line,
    /// A caution: said without, since it is confirmed.
    Caution,
}

/// Who says the words of one unit.
pub(super) struct Speakers<'a> {
    steady: Speaker<'a>,
    lines: Speaker<'a>,
    /// What [`Text::Line`] and [`Text::Caution`] have.
    has: [Has; 2],
}

impl Speakers<'_> {
    fn has(&mut self, text: Text, variable: String) -> bool {
        let [of_lines, of_cautions] = &mut self.has;
        let (speaker, has) = match text {
            Text::Line => (&self.lines, of_lines),
            Text::Caution => (&self.steady, of_cautions),
        };
        *has.entry(variable).or_insert_with_key(|variable| speaker.has_value(variable))
    }
}

/// The trip that lines are tried with: two adults, three nights, no hook-up, nothing else told.
fn sample_trip() -> Trip {
    let adult = Person { age: 30, weight: None };
    Trip { nights: 3, people: vec![adult; 2], hook_up: vec![HookUp::None; 3], ..Trip::default() }
}

impl Check<'_> {
    pub(super) fn routes(&mut self) -> Vec<WalkLength> {
        let scripts = self.scripts;
        let mut lengths = Vec::new();
        let mut reached = guide::Reached::new();
        for (unit, sheet) in &scripts.units {
            let facts = Facts::new(&sheet.value, &scripts.lot.value);
            self.step_places(sheet, &facts);
            let route = crate::route::build_with(scripts, unit, &sheet.value, &facts);
            let steady = Speaker::of(scripts, &sheet.value, &facts, Reader::default());
            let lines = steady.clone().with_trip(Some(sample_trip()));
            let mut speakers = Speakers { steady, lines, has: [Has::new(), Has::new()] };
            for step in &route.steps {
                self.say_step(&mut speakers, step, unit);
                self.line_counts(step, unit);
                self.graded(&step.know, || format!("what `{}` says", step.id));
            }
            self.doublings(&route);
            self.hazards(unit, &route, &facts);
            self.demonstrations_on(sheet, &facts, &speakers.steady);
            self.guides_on(unit, &facts, &mut speakers, &mut reached);
            let length = self.length(&route, &speakers.lines);
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

    /// Every text of the step can be said for this unit without a hole: its lines for a trip, its cautions for any.
    fn say_step(&mut self, speakers: &mut Speakers<'_>, step: &Step, unit: &str) {
        let own = [format!("step-{}", step.id)];
        for key in own.iter().chain(&step.show).chain(&step.know).chain(&step.notes) {
            self.say_key(speakers, Text::Line, |check| check.step_at(step), unit, key);
        }
        for caution in &step.cautions {
            for part in PARTS {
                let key = format!("caution-{}{part}", caution.id);
                self.say_key(speakers, Text::Caution, |check| check.step_at(step), unit, &key);
            }
        }
    }

    fn step_at(&self, step: &Step) -> Option<Place> {
        self.form_of(step).map(|(place, _)| place)
    }

    /// A message can be said for this unit without a hole.
    pub(super) fn say_key(
        &mut self,
        speakers: &mut Speakers<'_>,
        text: Text,
        otherwise: impl FnOnce(&Self) -> Option<Place>,
        unit: &str,
        key: &str,
    ) {
        let words = &self.scripts.words;
        let variables = words.variables(SOURCE_LANGUAGE, key);
        if variables.into_iter().all(|variable| speakers.has(text, variable)) {
            return;
        }
        let speaker = match text {
            Text::Line => &speakers.lines,
            Text::Caution => &speakers.steady,
        };
        let Err(faults) = speaker.try_say(key) else { return };
        let place = words
            .place_of(SOURCE_LANGUAGE, key)
            .or_else(|| otherwise(self))
            .unwrap_or_else(|| Place::start(&self.scripts.lot.file.name));
        for fault in faults {
            // A message that is not there is told where the script names it; what is wrong with the message in
            // itself is told by the words.
            let SayFault::NoVariable { variable, .. } = &fault else { continue };
            if text == Text::Caution && speakers.lines.has_value(variable) {
                let what = format!("`{key}` needs ${variable}, a figure of the trip");
                let hint = "a plan that changes must not change what was confirmed: say it in a `know-` line";
                self.fault("message.trip-figure-in-caution", place.clone(), what, hint);
                continue;
            }
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
