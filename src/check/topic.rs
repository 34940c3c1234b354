//! Topics: ids, conditions, readings, signal words.

use crate::script::{Ask, CautionForm, From, Harm, Hazard, Signal, StepForm, Topic, When};
use crate::source::{At, Place, nearest};
use crate::unit::{FactKind, catalogue};

use super::{Check, twice};

/// Hazards that kill without warning: never below WARNING.
const GRAVE: [Hazard; 4] = [Hazard::CarbonMonoxide, Hazard::Fire, Hazard::Explosion, Hazard::Shock];

impl Check<'_> {
    pub(super) fn topics(&mut self) {
        let scripts = self.scripts;
        self.ids_once();
        for topic in scripts.topics.values() {
            let at = topic.place(&topic.value.id);
            self.message(&format!("topic-{}", topic.value.id.value), &at);
            self.condition(topic, topic.value.when.as_ref());
            for step in &topic.value.steps {
                self.step(topic, &step.value);
            }
        }
    }

    /// Step and caution ids stand once in the whole lot.
    fn ids_once(&mut self) {
        let topics = || self.scripts.topics.values();
        let steps = topics().flat_map(|t| t.value.steps.iter().map(|s| (&s.value.id.value, t.place(&s.value.id))));
        let cautions = topics().flat_map(|t| {
            let all = t.value.steps.iter().flat_map(|s| &s.value.cautions);
            all.map(|c| (&c.value.id.value, t.place(&c.value.id)))
        });
        let mut found = twice(steps);
        found.extend(twice(cautions));
        for (id, first, place) in found {
            self.fault(
                "id.duplicate",
                place,
                format!("the id `{id}` is given twice; the other stands at {first}"),
                "give each its own id; an id is never used again",
            );
        }
    }

    fn step(&mut self, topic: &From<Topic>, step: &StepForm) {
        let at = topic.place(&step.id);
        let id = &topic.value.id.value;
        if step.id.value != *id && !step.id.value.starts_with(&format!("{id}-")) {
            let hint = format!("name it `{id}` or `{id}-...`");
            self.fault("id.foreign", at.clone(), format!("the step `{}` is not named after its topic", step.id.value), hint);
        }
        self.message(&format!("step-{}", step.id.value), &at);
        self.condition(topic, step.when.as_ref());
        for (kind, lines) in [("show", &step.show), ("know", &step.know)] {
            for line in lines {
                self.message(&format!("{kind}-{}-{}", step.id.value, line.name.value), &topic.place(&line.name));
                self.condition(topic, line.when.as_ref());
            }
        }
        for reading in &step.readings {
            self.condition(topic, reading.when.as_ref());
            if !self.scripts.readings.contains_key(&reading.name.value) {
                let known = self.scripts.readings.keys().map(String::as_str);
                let hint = nearest(&reading.name.value, known)
                    .map_or_else(|| "add it to readings.ron".into(), |near| format!("did you mean `{near}`?"));
                let what = format!("there is no reading `{}`", reading.name.value);
                self.fault("reading.unknown", topic.place(&reading.name), what, hint);
            }
        }
        self.waits(topic, step);
        self.picture(topic, step);
        for caution in &step.cautions {
            self.caution(topic, &caution.value);
        }
    }

    /// `after` names steps of the lot, and not the step itself.
    fn waits(&mut self, topic: &From<Topic>, step: &StepForm) {
        for other in &step.after {
            let known =
                self.scripts.topics.values().flat_map(|t| &t.value.steps).any(|s| s.value.id.value == other.value);
            if !known || other.value == step.id.value {
                self.fault(
                    "step.after",
                    topic.place(other),
                    format!("`{}` is no other step of this lot", other.value),
                    "name the step that must be shown before",
                );
            }
        }
    }

    fn picture(&mut self, topic: &From<Topic>, step: &StepForm) {
        let Some(picture) = &step.picture else { return };
        let found = ["svg", "jpg", "jpeg", "png"]
            .iter()
            .any(|e| self.scripts.bundle.has(&format!("assets/pictures/{}.{e}", picture.value)));
        if !found {
            let what = format!("there is no picture `{}`", picture.value);
            let hint = format!("put `{}.svg`, `.jpg` or `.png` in assets/pictures", picture.value);
            self.note("picture.missing", topic.place(picture), what, hint);
        }
    }

    fn caution(&mut self, topic: &From<Topic>, caution: &CautionForm) {
        let at = topic.place(&caution.id);
        let id = &caution.id.value;
        for part in ["", ".title", ".harm", ".avoid"] {
            self.message(&format!("caution-{id}{part}"), &at);
        }
        self.condition(topic, caution.when.as_ref());
        let fits = match caution.signal {
            Signal::Danger => caution.harm == Harm::Death,
            Signal::Warning => matches!(caution.harm, Harm::Death | Harm::Injury),
            Signal::Caution => caution.harm == Harm::Minor,
            Signal::Notice => caution.harm == Harm::Property,
        };
        if !fits {
            self.fault(
                "caution.signal",
                at.clone(),
                format!("{:?} does not fit the harm {:?} of `{id}`", caution.signal, caution.harm),
                "Danger: Death; Warning: Death or Injury; Caution: Minor; Notice: Property",
            );
        }
        if GRAVE.contains(&caution.hazard) && caution.signal < Signal::Warning && caution.harm != Harm::Property {
            let what = format!("{:?} is never below Warning", caution.hazard);
            self.fault("caution.grave", at.clone(), what, "make it Warning or Danger");
        }
        if caution.signal >= Signal::Warning && caution.answer == Ask::Read {
            let what = format!("`{id}` is answered by a tap, too little for {:?}", caution.signal);
            self.fault("caution.answer", at.clone(), what, "use Hold or Demonstrate");
        }
        if caution.version == 0 {
            self.fault("caution.version", at, "versions count from 1", "write `version: 1`");
        }
    }

    /// Facts named in a condition exist, and are held against what they can be.
    fn condition(&mut self, topic: &From<Topic>, when: Option<&When>) {
        let (facts, sections) = catalogue();
        for part in when.map(When::flat).unwrap_or_default() {
            match part {
                When::Fitted(name) if !sections.contains(&name.value.as_str()) && !facts.contains_key(&name.value) => {
                    self.unknown_fact(topic.place(name), name, facts.keys().map(String::as_str).chain(sections.iter().copied()));
                }
                When::Is(name, word) => match facts.get(&name.value) {
                    None => self.unknown_fact(topic.place(name), name, facts.keys().map(String::as_str)),
                    Some(kind) => self.word_fits(topic.place(word), name, word, *kind),
                },
                When::Over(name, limit) => {
                    let dimension = limit.value.dimension();
                    match facts.get(&name.value) {
                        None => self.unknown_fact(topic.place(name), name, facts.keys().map(String::as_str)),
                        Some(FactKind::Quantity(d)) if *d == dimension => {}
                        Some(_) => self.fault(
                            "fact.dimension",
                            topic.place(limit),
                            format!("`{}` is no {}", name.value, dimension.name()),
                            "hold a fact against a quantity of its own dimension",
                        ),
                    }
                }
                When::Fitted(_) | When::Not(_) | When::All(_) | When::Any(_) => {}
            }
        }
    }

    fn unknown_fact<'k>(&mut self, place: Place, name: &At<String>, known: impl Iterator<Item = &'k str>) {
        let hint = nearest(&name.value, known)
            .map_or_else(|| "facts are `section.field` of the data sheet".into(), |near| format!("did you mean `{near}`?"));
        self.fault("fact.unknown", place, format!("there is no fact `{}`", name.value), hint);
    }

    fn word_fits(&mut self, place: Place, name: &At<String>, word: &At<String>, kind: FactKind) {
        let fits = match kind {
            FactKind::Word(words) => words.contains(&word.value.as_str()),
            FactKind::Flag => matches!(word.value.as_str(), "true" | "false"),
            FactKind::Count => word.value.parse::<u16>().is_ok(),
            FactKind::Code => true,
            FactKind::Quantity(_) | FactKind::Money | FactKind::List => false,
        };
        if !fits {
            let hint = match kind {
                FactKind::Word(words) => format!("it can be {}", words.join(", ")),
                FactKind::Flag => "it is true or false".into(),
                FactKind::Count => "it is a whole number".into(),
                FactKind::Code | FactKind::Quantity(_) | FactKind::Money | FactKind::List => {
                    "use `Over` for quantities".into()
                }
            };
            self.fault("fact.word", place, format!("`{}` is never `{}`", name.value, word.value), hint);
        }
    }
}
