//! Makes of a form what one unit asks.

use crate::figures::loads::fits;
use crate::figures::{self, Bench, State, Trip};
use crate::measure::{Measure, Rounding, rounded};
use crate::source::At;
use crate::unit::{Facts, Sheet, Value, When};

use super::super::form::{Guarded, fitting};
use super::form::{
    ChooseForm, DemoForm, PartForm, PlacingForm, PointForm, SetForm, SetRight, Surface, TaskForm,
    TogetherForm, TogetherWrong, Truth,
};
use super::given::Given;
use super::loads::{sums, watts};
use super::{
    Card, Carried, Choice, Choosing, Demonstration, Part, Placed, Placing, Pointing, Said, Setting, Spot,
    Task, Together,
};

/// What a part is made from on one unit.
pub(super) struct Unit<'a> {
    demo: &'a str,
    pub(super) sheet: &'a Sheet,
    pub(super) facts: &'a Facts,
    /// What the part takes as given, for its words.
    values: Vec<(String, Carried)>,
}

impl Demonstration {
    /// What a unit asks; none where it lacks the equipment, or where no part has a right answer on it. A part without
    /// a right answer is left out: its facts are not known, or it is about something that the unit does not have.
    #[must_use]
    pub fn on(form: &DemoForm, sheet: &Sheet, facts: &Facts) -> Option<Self> {
        let holds = |when: &Option<When>| when.as_ref().is_none_or(|w| w.holds(facts));
        if !holds(&form.when) {
            return None;
        }
        let asked = form.parts.iter().map(|p| &p.value).filter(|p| holds(&p.when));
        let parts = asked.filter_map(|part| Part::on(form, part, sheet, facts));
        let parts: Vec<Part> = parts.filter(|part| part.model_answer().is_some()).collect();
        (!parts.is_empty()).then(|| Self { id: form.id.value.clone(), parts })
    }
}

impl Part {
    /// The part on a unit, whether or not it has a right answer there; none where a figure that it asks for cannot be
    /// computed.
    #[must_use]
    pub fn on(demo: &DemoForm, form: &PartForm, sheet: &Sheet, facts: &Facts) -> Option<Self> {
        let mut unit = Unit { demo: &demo.id.value, sheet, facts, values: form.given.values() };
        let on: Vec<String> = form.given.on.iter().map(|load| load.value.clone()).collect();
        if !on.is_empty() {
            let sums = unit.sums(&form.given, &on)?;
            unit.values.extend(sums);
        }
        let task = match &form.task {
            TaskForm::Order(order) => Task::Order(order.on(&unit)),
            TaskForm::Sort(placing) => Task::Sort(placing.on(&unit)),
            TaskForm::Match(placing) => Task::Match(placing.on(&unit)),
            TaskForm::Seats(seats) => Task::Seats(seats.on(&unit)),
            TaskForm::Choose(choose) => Task::Choose(choose.on(&unit, &form.given)?),
            TaskForm::Together(together) => Task::Together(together.on(&unit, &form.given)?),
            TaskForm::Set(set) => Task::Set(set.on(&unit, form)?),
            TaskForm::Point(point) => Task::Point(point.on(&unit, &form.given)?),
            TaskForm::Show => Task::Show,
        };
        let prompt = Said::new(format!("demo-{}-{}", unit.demo, form.id.value), unit.values.clone());
        Some(Self {
            id: form.id.value.clone(),
            prompt,
            picture: fitting(&form.instead, form.picture.as_ref(), facts),
            task,
        })
    }
}

impl Unit<'_> {
    pub(super) fn has(&self, when: Option<&When>) -> bool {
        when.is_none_or(|w| w.holds(self.facts))
    }

    fn named(&self, kind: &str, name: &str) -> Said {
        Said::new(format!("demo-{}-{kind}-{name}", self.demo), self.values.clone())
    }

    pub(super) fn card(&self, id: &str) -> Card {
        Card { id: id.to_owned(), name: self.named("card", id) }
    }

    pub(super) fn say(&self, name: &At<String>) -> Said {
        self.named("say", &name.value)
    }

    /// Those of a list that the unit has.
    fn there<'g>(&self, all: &'g [Guarded]) -> impl Iterator<Item = &'g String> {
        let there: Vec<&String> =
            all.iter().filter(|g| self.has(g.when.as_ref())).map(|g| &g.name.value).collect();
        there.into_iter()
    }

    /// What a supply gives, and the loads of the unit on it.
    fn bench(&self, given: &Given) -> Option<Bench> {
        let trip = given.trip(&[]);
        figures::bench(figures::Given { facts: self.facts, trip: Some(&trip) })
    }

    /// Sums of loads with those that run in any case; none where the unit lacks one of them.
    fn sums(&self, given: &Given, on: &[String]) -> Option<Vec<(String, Carried)>> {
        let bench = self.bench(given)?;
        Some(sums(bench.with(on)?.into_iter(), &bench.limits))
    }

    /// Whether something holds; none where it cannot be told.
    fn truth(&self, truth: &Truth, given: &Given) -> Option<bool> {
        Some(match truth {
            Truth::No => false,
            Truth::Yes => true,
            Truth::If(when) => when.holds(self.facts),
            Truth::Fits(loads) => {
                let bench = self.bench(given)?;
                let ids: Vec<String> = loads.iter().map(|l| l.value.clone()).collect();
                fits(bench.with(&ids)?, &bench.limits)
            }
        })
    }

    /// Values of what is said about a truth.
    fn values_of(&self, truth: &Truth, given: &Given) -> Vec<(String, Carried)> {
        let Truth::Fits(loads) = truth else { return Vec::new() };
        let ids: Vec<String> = loads.iter().map(|l| l.value.clone()).collect();
        self.sums(given, &ids).unwrap_or_default()
    }

    /// Verdict of a figure on a given day.
    fn verdict(&self, figure: &str, trip: &Trip) -> Option<&'static str> {
        figures::one(figure, figures::Given { facts: self.facts, trip: Some(trip) })?.verdict
    }
}

impl PlacingForm {
    fn on(&self, unit: &Unit<'_>) -> Placing {
        let into: Vec<&String> = unit.there(&self.into).collect();
        let cards = self.cards.iter().map(|c| &c.value).filter(|c| unit.has(c.when.as_ref()));
        let placed = cards.filter_map(|card| {
            let trip = card.given.trip(&[]);
            let right = match &self.judge {
                Some(figure) => unit.verdict(&figure.value, &trip)?.to_owned(),
                None => unit.there(&card.to).next()?.clone(),
            };
            let mut values = card.given.values();
            values.extend(unit.limit_on(&card.given));
            let say = |name: &At<String>| unit.say(name).and(values.clone());
            let also = self.also_right.iter().filter(|(place, _)| place.value != right);
            let Card { id, name } = unit.card(&card.id.value);
            Some(Placed {
                card: Card { id, name: name.and(values.clone()) },
                also: also.map(|(place, note)| (place.value.clone(), say(note))).collect(),
                wrong: card.say.iter().map(|(place, name)| (place.clone(), say(name))).collect(),
                otherwise: say(&self.otherwise),
                right: into.contains(&&right).then_some(right).into_iter().collect(),
            })
        });
        Placing {
            cards: placed.collect(),
            into: into.iter().map(|id| Card { id: (*id).clone(), name: unit.named("into", id) }).collect(),
            once: None,
        }
    }
}

impl Unit<'_> {
    /// What a sign would have to say at least, in its own measure: `$limit`.
    fn limit_on(&self, given: &Given) -> Vec<(String, Carried)> {
        let Some(sign) = given.sign.map(|s| *s.quantity()) else { return Vec::new() };
        let limit = figures::one("clearance_min_sign", figures::Given { facts: self.facts, trip: None });
        let limit = limit.and_then(|l| figures::limit_on_sign(&l, &sign));
        limit.map(|limit| ("limit".to_owned(), Carried::Written(limit))).into_iter().collect()
    }
}

impl ChooseForm {
    fn on(&self, unit: &Unit<'_>, given: &Given) -> Option<Choosing> {
        let choices = self.choices.iter().map(|c| &c.value).filter(|c| unit.has(c.when.as_ref()));
        let choices = choices.filter_map(|choice| {
            let values = unit.values_of(&choice.right, given);
            let Card { id, name } = unit.card(&choice.id.value);
            Some(Choice {
                card: Card { id, name: name.and(values.clone()) },
                right: unit.truth(&choice.right, given)?,
                wrong: unit.say(choice.say.as_ref().unwrap_or(&self.otherwise)).and(values),
            })
        });
        let choices: Vec<Choice> = choices.collect();
        (choices.len() > 1).then(|| Choosing { choices, all: self.all, otherwise: unit.say(&self.otherwise) })
    }
}

impl PointForm {
    fn on(&self, unit: &Unit<'_>, given: &Given) -> Option<Pointing> {
        let spots = self.spots.iter().map(|s| &s.value).filter(|s| unit.has(s.when.as_ref()));
        let spots = spots.filter_map(|spot| {
            let id = &spot.id.value;
            let (at, name) = match self.on {
                Surface::Plan => {
                    let place = &unit.sheet.places.get(id)?.value;
                    let (x, y) = place.at.as_ref()?;
                    let at = (x.quantity().to(Measure::Inch)?, y.quantity().to(Measure::Inch)?);
                    let own = place.words.as_ref().map(|w| w.value.clone());
                    (at, Said::new(own.unwrap_or_else(|| format!("place-{id}")), Vec::new()))
                }
                Surface::Picture => {
                    let (x, y) = spot.at?;
                    ((f64::from(x), f64::from(y)), unit.card(id).name)
                }
            };
            let right = unit.truth(&spot.right, given)?;
            let wrong = unit.say(spot.say.as_ref().unwrap_or(&self.otherwise));
            Some(Spot { choice: Choice { card: Card { id: id.clone(), name }, right, wrong }, at })
        });
        let spots: Vec<Spot> = spots.collect();
        (!spots.is_empty()).then(|| Pointing {
            on: self.on,
            spots,
            all: self.all,
            otherwise: unit.say(&self.otherwise),
        })
    }
}

impl TogetherForm {
    fn on(&self, unit: &Unit<'_>, given: &Given) -> Option<Together> {
        let bench = unit.bench(given)?;
        let loads = unit.there(&self.loads).filter_map(|id| {
            let item = bench.items.iter().find(|item| item.id == *id)?.clone();
            let power = watts(item.watts).map(|power| ("power".to_owned(), power));
            let name = Said::new(format!("load-{id}"), power.into_iter().collect());
            Some((Card { id: id.clone(), name }, item))
        });
        let loads: Vec<_> = loads.collect();
        let has = |id: &At<String>| loads.iter().any(|(card, _)| card.id == id.value);
        let told = |w: &&TogetherWrong| unit.has(w.when.as_ref()) && w.on.iter().all(has);
        let wrong = self.wrong.iter().filter(told);
        let wrong = wrong.map(|w| (w.on.iter().map(|id| id.value.clone()).collect(), unit.say(&w.say)));
        let wrong = wrong.collect();
        Some(Together {
            loads,
            always: bench.always,
            limits: bench.limits,
            wrong,
            none: unit.say(&self.none),
            otherwise: unit.say(&self.otherwise),
        })
    }
}

impl SetForm {
    fn on(&self, unit: &Unit<'_>, part: &PartForm) -> Option<Setting> {
        let trip = part.given.trip(&[]);
        let figure = |id: &At<String>| {
            let figure = figures::one(&id.value, figures::Given { facts: unit.facts, trip: Some(&trip) })?;
            (figure.state == State::Ok).then_some(figure)
        };
        let (right, exact) = match &self.right {
            SetRight::Figure(id) => {
                let figure = figure(id)?;
                (figure.amount()?, figure.outcomes.first()?.exact)
            }
            SetRight::Part(id, of) => {
                let figure = figure(id)?;
                let outcome = figure.outcomes.iter().find(|o| o.of.as_deref() == Some(of.value.as_str()))?;
                (outcome.own()?.amount(), outcome.exact)
            }
            SetRight::Fact(name) => match &unit.facts.get(&name.value)?.value {
                Value::Count(count) => ((*count).into(), f64::from(*count)),
                _ => return None,
            },
        };
        let whole = |number: f64| i32::try_from(rounded(number, 0, Rounding::Up)?).ok();
        let step = self.step.max(1);
        let right = i32::try_from(right.floor()).ok()?;
        let right = right.saturating_sub(right.saturating_sub(self.from).rem_euclid(step));
        let part_less = self.less.and_then(|less| less.quantity().to(Measure::Fraction)).unwrap_or(0.0);
        let mut least = whole(f64::from(right) * (1.0 - part_less))?.min(right);
        if self.down {
            least = least.min(i32::try_from(rounded(exact, 0, Rounding::Down)?).ok()?);
        }
        let number = |n| vec![("number".to_owned(), Carried::Count(n))];
        Some(Setting {
            from: self.from,
            to: self.to,
            step: self.step,
            right,
            least,
            value: format!("demo-{}-{}.value", unit.demo, part.id.value),
            over: unit.say(&self.over).and(number(right)),
            under: unit.say(&self.under).and(number(right)),
        })
    }
}
