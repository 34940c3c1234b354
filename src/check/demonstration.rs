//! Demonstrations: asked for, with words, and with a right and a wrong answer on each unit.

use std::collections::BTreeSet;

use crate::figures;
use crate::script::demo::{
    DemoForm, Demonstration, OrderForm, Part, PartForm, PlacingForm, SetForm, SetRight, Surface, Task,
    TaskForm, Truth,
};
use crate::script::{Ask, CautionForm, From, Speaker, When};
use crate::source::{At, Place, Severity};
use crate::unit::{Facts, Sheet};
use crate::words::{SOURCE_LANGUAGE, SayFault};

use super::Check;

/// What a task names.
#[derive(Default)]
struct Named<'a> {
    cards: Vec<&'a At<String>>,
    into: Vec<&'a At<String>>,
    says: Vec<&'a At<String>>,
    figures: Vec<&'a At<String>>,
    whens: Vec<&'a When>,
}

impl<'a> Named<'a> {
    fn truth(&mut self, truth: &'a Truth) {
        if let Truth::If(when) = truth {
            self.whens.push(when);
        }
    }

    fn of(task: &'a TaskForm) -> Self {
        let mut all = Self::default();
        match task {
            TaskForm::Order(order) => all.order(order),
            TaskForm::Sort(placing) | TaskForm::Match(placing) => all.placing(placing),
            TaskForm::Seats(seats) => {
                all.cards.extend(seats.people.iter().map(|p| &p.value.id));
                all.says.extend([
                    &seats.no_belt,
                    &seats.airbag,
                    &seats.not_marked,
                    &seats.driver,
                    &seats.no_room,
                ]);
            }
            TaskForm::Choose(choose) => {
                for choice in choose.choices.iter().map(|c| &c.value) {
                    all.cards.push(&choice.id);
                    all.says.extend(&choice.say);
                    all.whens.extend(&choice.when);
                    all.truth(&choice.right);
                }
                all.says.push(&choose.otherwise);
            }
            TaskForm::Together(together) => {
                all.whens.extend(together.loads.iter().filter_map(|l| l.when.as_ref()));
                all.says.extend(together.wrong.iter().map(|w| &w.say));
                all.whens.extend(together.wrong.iter().filter_map(|w| w.when.as_ref()));
                all.says.extend([&together.none, &together.otherwise]);
            }
            TaskForm::Set(set) => {
                all.says.extend([&set.over, &set.under]);
                if let SetRight::Figure(id) | SetRight::Part(id, _) = &set.right {
                    all.figures.push(id);
                }
            }
            TaskForm::Point(point) => {
                for spot in point.spots.iter().map(|s| &s.value) {
                    all.cards.extend((point.on == Surface::Picture).then_some(&spot.id));
                    all.says.extend(&spot.say);
                    all.whens.extend(&spot.when);
                    all.truth(&spot.right);
                }
                all.says.push(&point.otherwise);
            }
            TaskForm::Show => {}
        }
        all
    }

    fn order(&mut self, order: &'a OrderForm) {
        self.cards.extend(order.cards.iter().map(|c| &c.name));
        self.whens.extend(order.cards.iter().filter_map(|c| c.when.as_ref()));
        self.cards.extend(order.out.iter().map(|o| &o.card));
        self.whens.extend(order.out.iter().filter_map(|o| o.when.as_ref()));
        self.says.extend(order.out.iter().map(|o| &o.say));
        self.says.extend(order.early.iter().map(|e| &e.say));
        self.says.extend(order.missing.iter().map(|m| &m.say));
        self.says.push(&order.otherwise);
    }

    fn placing(&mut self, placing: &'a PlacingForm) {
        self.into.extend(placing.into.iter().map(|i| &i.name));
        self.whens.extend(placing.into.iter().filter_map(|i| i.when.as_ref()));
        for card in placing.cards.iter().map(|c| &c.value) {
            self.cards.push(&card.id);
            self.whens.extend(&card.when);
            self.whens.extend(card.to.iter().filter_map(|t| t.when.as_ref()));
            self.says.extend(card.say.values());
        }
        self.figures.extend(&placing.judge);
        self.says.extend(placing.also_right.iter().map(|(_, note)| note));
        self.says.push(&placing.otherwise);
    }
}

impl Check<'_> {
    /// What can be told without a unit.
    pub(super) fn demonstrations(&mut self) {
        let scripts = self.scripts;
        let cautions =
            scripts.topics.values().flat_map(|t| t.value.steps.iter().flat_map(|s| &s.value.cautions));
        let asked: BTreeSet<&str> =
            cautions.flat_map(|c| &c.value.demonstrate).map(|d| d.name.value.as_str()).collect();
        for demo in scripts.demonstrations.values() {
            if self.is_full() {
                return;
            }
            let id = &demo.value.id;
            self.shape(&id.value, || demo.place(id));
            self.condition(demo, demo.value.when.as_ref());
            if !asked.contains(id.value.as_str()) && !self.lost.any_form() {
                let what = format!("no caution asks for the demonstration `{}`", id.value);
                let hint = format!("write `demonstrate: [\"{}\"]` in the caution that it is about", id.value);
                self.fault("demo.unasked", demo.place(id), what, hint);
            }
            let parts: Vec<&At<String>> = demo.value.parts.iter().map(|p| &p.value.id).collect();
            let place = |at: usize| parts.get(at).map_or_else(|| demo.place(id), |part| demo.place(part));
            self.once(parts.iter().map(|p| p.value.as_str()), place, "give each part its own id");
            for part in &demo.value.parts {
                self.demo_part(demo, &part.value);
            }
        }
    }

    fn demo_part(&mut self, demo: &From<DemoForm>, part: &PartForm) {
        let id = &demo.value.id.value;
        let named = Named::of(&part.task);
        self.shape(&part.id.value, || demo.place(&part.id));
        self.message(format!("demo-{id}-{}", part.id.value), || demo.place(&part.id));
        self.condition(demo, part.when.as_ref());
        if let Some(picture) = &part.picture {
            self.picture(demo, picture);
        }
        for other in &part.instead {
            self.condition(demo, other.when.as_ref());
            self.picture(demo, &other.name);
        }
        for (kind, names) in [("card", &named.cards), ("into", &named.into), ("say", &named.says)] {
            for name in names {
                self.message(format!("demo-{id}-{kind}-{}", name.value), || demo.place(name));
            }
        }
        for names in [&named.cards, &named.into] {
            let place =
                |at: usize| names.get(at).map_or_else(|| demo.place(&part.id), |name| demo.place(name));
            self.once(names.iter().map(|n| n.value.as_str()), place, "give each its own id");
        }
        for when in &named.whens {
            self.condition(demo, Some(when));
        }
        for figure in &named.figures {
            if !figures::ids().any(|known| known == figure.value) {
                let hint = self.hint(&figure.value, figures::ids(), "see `sendoff figures`");
                let what = format!("there is no figure `{}`", figure.value);
                self.fault("figure.unknown", demo.place(figure), what, hint);
            }
        }
        match &part.task {
            TaskForm::Order(order) => self.demo_order(demo, order),
            TaskForm::Sort(placing) | TaskForm::Match(placing) => self.demo_placing(demo, placing),
            TaskForm::Set(set) => self.demo_set(demo, part, set),
            TaskForm::Point(point) if point.on == Surface::Plan => {
                // Where no unit of the lot is asked, nobody can tell.
                let asked = self.scripts.units.values().any(|unit| {
                    let facts = Facts::new(&unit.value, &self.scripts.lot.value);
                    demo.value.when.as_ref().is_none_or(|when| when.holds(&facts))
                });
                let came = !asked || self.came_as_it_is(&demo.file.name);
                for spot in point.spots.iter().filter(|_| !came).map(|s| &s.value.id) {
                    let mut sheets = self.scripts.units.values().map(|s| &s.value);
                    if !sheets.any(|s| s.places.contains_key(&spot.value)) && !self.lost.any_form() {
                        let what = format!("no unit has a place `{}`", spot.value);
                        self.fault("place.unknown", demo.place(spot), what, "name a place of a data sheet");
                    }
                }
            }
            _ => {}
        }
    }

    fn demo_order(&mut self, demo: &From<DemoForm>, order: &OrderForm) {
        let cards: Vec<&At<String>> = order.cards.iter().map(|c| &c.name).collect();
        let rules = order.before.iter().flatten();
        let early = order.early.iter().flat_map(|e| [&e.card, &e.before]);
        for name in rules.chain(early).chain(order.missing.iter().map(|m| &m.card)) {
            self.demo_name(demo, name, &cards, "card");
        }
        // Each list is walked as pairs; whoever waits for nobody that is left goes, again and again.
        let pairs: Vec<(&At<String>, &At<String>)> = order
            .before
            .iter()
            .flat_map(|list| list.windows(2))
            .filter_map(|pair| if let [first, then] = pair { Some((first, then)) } else { None })
            .collect();
        let mut left: Vec<&str> = cards.iter().map(|c| c.value.as_str()).collect();
        while let Some(at) = left
            .iter()
            .position(|id| !pairs.iter().any(|(a, b)| b.value == *id && left.contains(&a.value.as_str())))
        {
            let _ = left.remove(at);
        }
        let circled =
            pairs.iter().find(|(a, b)| left.contains(&a.value.as_str()) && left.contains(&b.value.as_str()));
        if let Some((first, then)) = circled {
            let what = format!("`{}` comes before `{}`, and the other way round", first.value, then.value);
            self.fault("demo.circle", demo.place(first), what, "let one of them go first");
        }
    }

    fn demo_placing(&mut self, demo: &From<DemoForm>, placing: &PlacingForm) {
        let into: Vec<&At<String>> = placing.into.iter().map(|i| &i.name).collect();
        for card in placing.cards.iter().map(|c| &c.value) {
            for to in &card.to {
                self.demo_name(demo, &to.name, &into, "place");
            }
            for (place, say) in &card.say {
                let name = At { at: say.at, value: place.clone() };
                self.demo_name(demo, &name, &into, "place");
            }
        }
        if let Some((place, _)) = &placing.also_right {
            self.demo_name(demo, place, &into, "place");
        }
    }

    fn demo_name(&mut self, demo: &From<DemoForm>, name: &At<String>, known: &[&At<String>], kind: &str) {
        if known.iter().any(|k| k.value == name.value) {
            return;
        }
        let hint = self.hint(&name.value, known.iter().map(|k| k.value.as_str()), "name one of this part");
        self.fault(
            "demo.unknown-name",
            demo.place(name),
            format!("there is no {kind} `{}`", name.value),
            hint,
        );
    }

    fn demo_set(&mut self, demo: &From<DemoForm>, part: &PartForm, set: &SetForm) {
        let id = &demo.value.id.value;
        self.message(format!("demo-{id}-{}.value", part.id.value), || demo.place(&part.id));
        if set.from >= set.to || set.step < 1 {
            let what = format!("the numbers of `{}` cannot be set", part.id.value);
            let hint = "give a range from low to high, and a step of at least 1";
            self.fault("demo.scale", demo.place(&part.id), what, hint);
        }
        if let SetRight::Fact(name) = &set.right
            && !self.known.0.contains_key(&name.value)
        {
            let known: Vec<String> = self.known.0.keys().cloned().collect();
            let hint =
                self.hint(&name.value, known.iter().map(String::as_str), "name a fact that counts something");
            self.fault("fact.unknown", demo.place(name), format!("there is no fact `{}`", name.value), hint);
        }
    }

    /// A caution that asks to be demonstrated says how, and no other does.
    pub(super) fn asks_for<T>(&mut self, file: &From<T>, caution: &CautionForm) {
        let id = &caution.id;
        match (caution.answer, caution.demonstrate.first()) {
            (Ask::Demonstrate, None) => {
                let what = format!("`{}` asks to be demonstrated, and names no demonstration", id.value);
                self.fault("demo.none", file.place(id), what, "write `demonstrate: [\"...\"]`, or use Hold");
            }
            (Ask::Read | Ask::Hold, Some(first)) => {
                let what = format!("`{}` names a demonstration, and is answered without", id.value);
                self.fault("demo.answer", file.place(&first.name), what, "write `answer: Demonstrate`");
            }
            _ => {}
        }
        for demo in &caution.demonstrate {
            self.condition(file, demo.when.as_ref());
            let name = &demo.name;
            if !self.scripts.demonstrations.contains_key(&name.value) && !self.lost.may_hold(&name.value) {
                let known = self.scripts.demonstrations.keys().map(String::as_str);
                let hint = self.hint(&name.value, known, "name a file of walkthroughs/demonstrations");
                let what = format!("there is no demonstration `{}`", name.value);
                self.fault("demo.unknown", file.place(name), what, hint);
            }
        }
    }

    /// The demonstrations of one unit: each part has a right and a wrong answer, and can be said.
    pub(super) fn demonstrations_on(&mut self, file: &From<Sheet>, facts: &Facts, speaker: &Speaker<'_>) {
        let scripts = self.scripts;
        let sheet = &file.value;
        let unit = &sheet.id.value;
        // What hangs on a fact that nobody has read yet is left out of the walk, and no fault.
        let sources = [&file.file.name, &scripts.lot.file.name];
        let told =
            self.faults.iter().any(|f| f.severity == Severity::Fault && sources.contains(&&f.place.file));
        let known = !told && facts.not_known().next().is_none();
        let holds = |when: &Option<When>| when.as_ref().is_none_or(|w| w.holds(facts));
        for demo in scripts.demonstrations.values().filter(|d| holds(&d.value.when)) {
            for form in demo.value.parts.iter().map(|p| &p.value).filter(|p| holds(&p.when)) {
                if self.is_broken(demo) {
                    break;
                }
                let place = || demo.place(&form.id);
                let part = Part::on(&demo.value, form, sheet, facts).filter(|p| p.model_answer().is_some());
                let Some(part) = part else {
                    if known {
                        let what = format!("`{}` has no right answer on `{unit}`", form.id.value);
                        let hint = "correct what judges it, or give the part a condition on the equipment";
                        self.fault_once("demo.no-right", place(), what, hint);
                    }
                    continue;
                };
                if part.wrong_answer().is_none() && known {
                    let what = format!("every answer to `{}` is right on `{unit}`", form.id.value);
                    let hint = "add something that is wrong, or give the part a condition on the equipment";
                    self.fault_once("demo.no-wrong", place(), what, hint);
                }
                self.demo_said(speaker, &part, unit, &place);
            }
        }
        self.demonstrated_here(sheet, facts, known);
    }

    /// Whether a fault of the file was told: what follows from it is not.
    fn is_broken(&self, demo: &From<DemoForm>) -> bool {
        self.faults.iter().any(|f| f.place.file == demo.file.name && f.severity == Severity::Fault)
    }

    /// A caution that asks to be demonstrated on a unit has a demonstration for it.
    fn demonstrated_here(&mut self, sheet: &Sheet, facts: &Facts, known: bool) {
        let scripts = self.scripts;
        let unit = &sheet.id.value;
        let holds = |when: Option<&When>| when.is_none_or(|w| w.holds(facts));
        for topic in scripts.topics.values().filter(|t| known && holds(t.value.when.as_ref())) {
            let steps = topic.value.steps.iter().map(|s| &s.value).filter(|s| holds(s.when.as_ref()));
            for caution in steps.flat_map(|s| &s.cautions).map(|c| &c.value) {
                let named = caution.demonstrate.iter().filter(|d| holds(d.when.as_ref()));
                let forms: Vec<&From<DemoForm>> =
                    named.filter_map(|d| scripts.demonstrations.get(&d.name.value)).collect();
                let asks = holds(caution.when.as_ref()) && !forms.is_empty();
                if forms.iter().any(|f| self.is_broken(f)) {
                    continue;
                }
                if asks && !forms.iter().any(|f| Demonstration::on(&f.value, sheet, facts).is_some()) {
                    let what = format!("`{}` has no demonstration that is for `{unit}`", caution.id.value);
                    let hint = "add one for such equipment, or correct the conditions";
                    self.fault_once("demo.not-here", topic.place(&caution.id), what, hint);
                }
            }
        }
    }

    /// Everything that stands on the page of a part, and all replies, can be said for this unit.
    fn demo_said(&mut self, speaker: &Speaker<'_>, part: &Part, unit: &str, place: &dyn Fn() -> Place) {
        for said in part.all_said() {
            if said.key.starts_with("seat-") {
                self.message(said.key.clone(), place);
            }
            let Err(faults) = speaker.try_said(said) else { continue };
            let words = &self.scripts.words;
            let at = words.place_of(SOURCE_LANGUAGE, &said.key).unwrap_or_else(place);
            for fault in faults {
                let SayFault::NoVariable { variable, .. } = &fault else { continue };
                let what = format!("`{}` needs ${variable}, which `{unit}` does not have", said.key);
                let hint = "give the part a condition on the equipment, or use a value that it has";
                self.fault_once("message.hole", at.clone(), what, hint);
            }
        }
        if let Task::Set(setting) = &part.task {
            let _ = speaker.setting(setting, setting.right);
        }
    }
}
