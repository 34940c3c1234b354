//! Topics: ids, order, readings, figures, signal words.

use std::collections::{BTreeMap, BTreeSet};

use crate::figures;
use crate::script::{Ask, CautionForm, From, Harm, Hazard, READINGS, Scale, Signal, StepForm, Topic};
use crate::source::{At, place_of};

use super::{Check, file_of, twice};

/// Hazards that kill without warning: never below WARNING.
const GRAVE: [Hazard; 4] = [Hazard::CarbonMonoxide, Hazard::Fire, Hazard::Explosion, Hazard::Shock];

impl Check<'_> {
    /// Readings have words, and scales that can be read on.
    pub(super) fn readings(&mut self) {
        let scripts = self.scripts;
        let place = |path: &[&str]| place_of(&file_of(scripts, READINGS), path);
        let mut bounded = Vec::new();
        for (id, scale) in &scripts.readings {
            self.shape(id, || place(&[id]));
            self.message(format!("reading-{id}"), || place(&[id]));
            self.message(format!("reading-{id}.how"), || place(&[id]));
            let sound = match scale {
                Scale::Number { step, min, max, .. } => *step > rust_decimal::Decimal::ZERO && min < max,
                Scale::Parts(parts) => *parts > 0,
                Scale::Choice(words) => {
                    for word in words {
                        self.message(format!("choice-{word}"), || place(&[id]));
                    }
                    words.len() > 1
                }
            };
            if !sound {
                let what = format!("the scale of `{id}` has no values to read");
                self.fault(
                    "reading.scale",
                    place(&[id]),
                    what,
                    "give a step above zero and a range from low to high, at least one part, or two words",
                );
            }
            if let Scale::Number { measure, .. } = scale
                && crate::measure::Quantity::parse(&format!("1 {measure}")).is_err()
            {
                let what = format!("`{measure}` is no measure");
                let hint = "write it as in quantities: `mi`, `h`, `V`, `psi`";
                self.fault("reading.measure", place(&[id, "measure"]), what, hint);
            } else if sound && self.bounds(id, scale) {
                bounded.push(id.as_str());
            }
        }
        self.bounds_leave_room(&bounded);
    }

    pub(super) fn topics(&mut self) {
        let scripts = self.scripts;
        self.ids_once();
        self.circles();
        for topic in scripts.topics.values() {
            let id = &topic.value.id;
            self.shape(&id.value, || topic.place(id));
            self.message(format!("topic-{}", id.value), || topic.place(id));
            self.perhaps(format!("find-{}", id.value));
            self.condition(topic, topic.value.when.as_ref());
            for step in &topic.value.steps {
                if !self.is_full() {
                    self.step(topic, &step.value);
                }
            }
        }
    }

    /// Step and caution ids stand once in the whole lot.
    fn ids_once(&mut self) {
        let topics = || self.scripts.topics.values();
        let steps: Vec<_> =
            topics().flat_map(|t| t.value.steps.iter().map(move |s| (&t.file, &s.value.id))).collect();
        let cautions = topics().flat_map(|t| {
            t.value.steps.iter().flat_map(|s| &s.value.cautions).map(move |c| (&t.file, &c.value.id))
        });
        let hazards = self.scripts.guides.values();
        let hazards = hazards.flat_map(|g| g.value.hazards.iter().map(move |h| (&g.file, &h.value.id)));
        let cautions: Vec<_> = cautions.chain(hazards).collect();
        for ids in [steps, cautions] {
            for (id, first, second) in twice(ids.iter().map(|(_, id)| id.value.as_str())) {
                if self.is_full() {
                    return;
                }
                let place = |at: usize| ids.get(at).map(|(file, id)| file.place_at(id.at));
                let (Some(first), Some(second)) = (place(first), place(second)) else { continue };
                let what = format!("the id `{id}` is given twice; the other stands at {first}");
                self.fault("id.duplicate", second, what, "give each its own id; an id is never used again");
            }
        }
    }

    fn step(&mut self, topic: &From<Topic>, step: &StepForm) {
        let at = || topic.place(&step.id);
        let (id, name) = (&topic.value.id.value, &step.id.value);
        self.shape(name, at);
        if name.strip_prefix(id.as_str()).is_none_or(|rest| !rest.is_empty() && !rest.starts_with('-')) {
            let hint = format!("name it `{id}` or `{id}-...`");
            self.fault("id.foreign", at(), format!("the step `{name}` is not named after its topic"), hint);
        }
        self.message(format!("step-{name}"), at);
        self.condition(topic, step.when.as_ref());
        for (kind, lines) in [("show", &step.show), ("know", &step.know)] {
            for line in lines {
                if self.is_full() {
                    return;
                }
                self.message(format!("{kind}-{name}-{}", line.name.value), || topic.place(&line.name));
                self.condition(topic, line.when.as_ref());
            }
        }
        for reading in &step.readings {
            self.condition(topic, reading.when.as_ref());
            self.reading(topic, &reading.name);
        }
        for figure in &step.figures {
            if !figures::ids().any(|known| known == figure.value) {
                let hint = self.hint(&figure.value, figures::ids(), "see `sendoff figures`");
                let what = format!("there is no figure `{}`", figure.value);
                self.fault("figure.unknown", topic.place(figure), what, hint);
            }
        }
        self.waits(topic, step);
        if let Some(picture) = &step.picture {
            self.picture(topic, picture);
        }
        for other in &step.instead {
            self.condition(topic, other.when.as_ref());
            self.picture(topic, &other.name);
        }
        for caution in &step.cautions {
            if !self.is_full() {
                self.caution(topic, &caution.value);
                self.asks_for(topic, &caution.value);
            }
        }
    }

    fn reading(&mut self, topic: &From<Topic>, name: &At<String>) {
        if self.is_full() || self.lost.readings || self.scripts.readings.contains_key(&name.value) {
            return;
        }
        let known = self.scripts.readings.keys().map(String::as_str);
        let hint = self.hint(&name.value, known, "add it to readings.ron");
        self.fault(
            "reading.unknown",
            topic.place(name),
            format!("there is no reading `{}`", name.value),
            hint,
        );
    }

    /// `after` names steps of the lot, and not the step itself.
    fn waits(&mut self, topic: &From<Topic>, step: &StepForm) {
        for other in &step.after {
            if self.is_full() {
                return;
            }
            let known = self.steps.contains_key(other.value.as_str()) || self.lost.may_hold(&other.value);
            if !known || other.value == step.id.value {
                let what = format!("`{}` is no other step of this lot", other.value);
                self.fault("step.after", topic.place(other), what, "name the step that must be shown before");
            }
        }
    }

    /// No step waits for itself by way of others.
    fn circles(&mut self) {
        let scripts = self.scripts;
        let all = || scripts.topics.values().flat_map(|t| t.value.steps.iter().map(move |s| (t, &s.value)));
        let waits: BTreeMap<&str, Vec<&str>> = all()
            .map(|(_, s)| (s.id.value.as_str(), s.after.iter().map(|a| a.value.as_str()).collect()))
            .collect();
        let circled = circled(&waits);
        for (topic, step) in all().filter(|(_, step)| circled.contains(step.id.value.as_str())) {
            for other in step.after.iter().filter(|a| a.value != step.id.value) {
                if !self.is_full() && leads_to(&waits, &other.value, &step.id.value) {
                    let what = format!("`{}` waits for `{}`, which waits for it", step.id.value, other.value);
                    self.fault("step.circle", topic.place(other), what, "let one of them go first");
                }
            }
        }
    }

    /// The signal word fits the harm as ANSI Z535 defines it, and the answer fits the signal word.
    pub(super) fn caution<T>(&mut self, file: &From<T>, caution: &CautionForm) {
        let at = || file.place(&caution.id);
        let id = &caution.id.value;
        self.shape(id, at);
        for part in ["", ".title", ".harm", ".avoid"] {
            self.message(format!("caution-{id}{part}"), at);
        }
        self.condition(file, caution.when.as_ref());
        let fits = match caution.signal {
            Signal::Danger => caution.harm == Harm::Death,
            Signal::Warning => matches!(caution.harm, Harm::Death | Harm::Injury),
            Signal::Caution => caution.harm == Harm::Minor,
            Signal::Notice => caution.harm == Harm::Property,
        };
        if !fits {
            let what = format!("{:?} does not fit the harm {:?} of `{id}`", caution.signal, caution.harm);
            let hint = "Danger: Death; Warning: Death or Injury; Caution: Minor; Notice: Property";
            self.fault("caution.signal", at(), what, hint);
        }
        if GRAVE.contains(&caution.hazard) && caution.signal < Signal::Warning {
            let what = format!("{:?} is never below Warning", caution.hazard);
            self.fault(
                "caution.grave",
                at(),
                what,
                "make it Warning or Danger, or name the hazard that is left",
            );
        }
        if caution.signal >= Signal::Warning && caution.answer == Ask::Read {
            let what = format!("`{id}` is answered by a tap, too little for {:?}", caution.signal);
            self.fault("caution.answer", at(), what, "use Hold or Demonstrate");
        }
        if caution.version == 0 {
            self.fault("caution.version", at(), "versions count from 1", "write `version: 1`");
        }
    }
}

/// Steps that wait for a circle or stand in one: whoever waits for nobody that is left goes, again and again.
fn circled<'n>(waits: &BTreeMap<&'n str, Vec<&'n str>>) -> BTreeSet<&'n str> {
    let mut left: BTreeMap<&str, usize> = BTreeMap::new();
    let mut behind: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for (step, others) in waits {
        let known = others.iter().filter(|other| waits.contains_key(*other));
        let _ = left.insert(step, known.clone().count());
        known.for_each(|other| behind.entry(other).or_default().push(step));
    }
    let mut open: Vec<&str> = left.iter().filter(|(_, count)| **count == 0).map(|(step, _)| *step).collect();
    while let Some(gone) = open.pop() {
        for step in behind.get(gone).into_iter().flatten() {
            let Some(count) = left.get_mut(step) else { continue };
            *count = count.saturating_sub(1);
            if *count == 0 {
                open.push(step);
            }
        }
    }
    waits.keys().copied().filter(|step| left.get(step).is_some_and(|count| *count > 0)).collect()
}

/// Whether waiting for `from` means to wait for `to`.
fn leads_to(waits: &BTreeMap<&str, Vec<&str>>, from: &str, to: &str) -> bool {
    let mut open = vec![from];
    let mut seen = BTreeSet::new();
    while let Some(step) = open.pop() {
        if step == to {
            return true;
        }
        if seen.insert(step) {
            open.extend(waits.get(step).into_iter().flatten().copied());
        }
    }
    false
}
