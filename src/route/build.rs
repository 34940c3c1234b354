//! Orders the steps of a unit: desk, once round outside from the entry door, inside, the rest, leaving check.

use std::collections::{BTreeMap, BTreeSet};

use crate::measure::Measure;
use crate::script::{Demonstration, Guarded, Priority, Scripts, StepForm, Topic, fitting};
use crate::unit::{Change, Facts, Sheet, Side, Station};

use super::stops::{distance, stops, zone};
use super::{Bounds, Caution, Item, Reading, Route, Step, Zone};

/// Meters in an inch.
const METERS: f64 = 0.0254;

/// A step with what orders it.
struct Placed<'a> {
    step: Step,
    form: &'a StepForm,
    topic: &'a str,
}

/// The route of a unit; `None` when the lot has no such unit. Same scripts and sheet: same route.
#[must_use]
pub fn build(scripts: &Scripts, unit: &str) -> Option<Route> {
    let sheet = &scripts.units.get(unit)?.value;
    Some(build_with(scripts, unit, sheet, &scripts.facts(unit)?))
}

/// The route of a unit whose facts are known already.
pub(crate) fn build_with(scripts: &Scripts, unit: &str, sheet: &Sheet, facts: &Facts) -> Route {
    let mut placed: Vec<Placed<'_>> = Vec::new();
    let mut demonstrations = demonstrations(scripts, sheet, facts);
    for topic in scripts.topics.values().map(|t| &t.value) {
        if topic.when.as_ref().is_some_and(|w| !w.holds(facts)) {
            continue;
        }
        for form in &topic.steps {
            if let Some(step) = place_step(scripts, topic, &form.value, (sheet, facts, &demonstrations)) {
                placed.push(Placed { step, form: &form.value, topic: &topic.id.value });
            }
        }
    }
    let loop_ = Loop::of(sheet);
    placed
        .sort_by(|a, b| order(a, &loop_).partial_cmp(&order(b, &loop_)).unwrap_or(std::cmp::Ordering::Equal));
    let steps = wait_for_others(placed);
    let (inches, doublings) = way(&steps, &loop_);
    let asked = |id: &String| steps.iter().flat_map(|s| &s.cautions).any(|c| c.demonstrations.contains(id));
    demonstrations.retain(|id, _| asked(id));
    let minutes = steps.iter().map(|s| u32::from(s.minutes)).sum();
    Route {
        unit: unit.to_owned(),
        stops: stops(&steps),
        steps,
        demonstrations,
        items: sheet.kit.iter().map(item).collect(),
        meters: whole_meters(inches),
        minutes,
        doublings,
    }
}

fn whole_meters(inches: f64) -> u32 {
    crate::measure::rounded(inches * METERS, 0, crate::measure::Rounding::Up)
        .and_then(|m| u32::try_from(m).ok())
        .unwrap_or(0)
}

fn item(line: &crate::unit::KitLine) -> Item {
    Item {
        tag: line.tag.value.clone(),
        words: format!("item-{}", line.item.value),
        count: line.count,
        price: line.price,
    }
}

/// The lines of a step whose conditions hold, as keys of messages.
fn lines(kind: &str, step: &str, all: &[Guarded], facts: &Facts) -> Vec<String> {
    all.iter()
        .filter(|l| l.when.as_ref().is_none_or(|w| w.holds(facts)))
        .map(|l| format!("{kind}-{step}-{}", l.name.value))
        .collect()
}

/// A step for this unit, or none when a condition or change leaves it out.
fn place_step(
    scripts: &Scripts,
    topic: &Topic,
    form: &StepForm,
    (sheet, facts, demonstrations): (&Sheet, &Facts, &BTreeMap<String, Demonstration>),
) -> Option<Step> {
    if form.when.as_ref().is_some_and(|w| !w.holds(facts)) {
        return None;
    }
    let place = sheet.places.get(&form.place.value)?;
    let id = &topic.id.value;
    let mut step = Step {
        id: form.id.value.clone(),
        topic: id.clone(),
        place: form.place.value.clone(),
        station: place.value.station,
        at: place
            .value
            .at
            .as_ref()
            .and_then(|(x, y)| Some((x.quantity().to(Measure::Inch)?, y.quantity().to(Measure::Inch)?))),
        minutes: form.minutes,
        picture: fitting(&form.instead, form.picture.as_ref(), facts),
        show: lines("show", &form.id.value, &form.show, facts),
        know: lines("know", &form.id.value, &form.know, facts),
        figures: form.figures.iter().map(|f| f.value.clone()).collect(),
        readings: form
            .readings
            .iter()
            .filter(|r| r.when.as_ref().is_none_or(|w| w.holds(facts)))
            .filter_map(|r| {
                let scale = scripts.readings.get(&r.name.value)?.clone();
                let bounds = Bounds::of(&scale, facts);
                Some(Reading { id: r.name.value.clone(), scale, bounds })
            })
            .collect(),
        cautions: cautions(topic, form, facts, demonstrations),
        notes: Vec::new(),
        kit: form.kit,
        leaving: if form.leaving { leaving(scripts, facts) } else { Vec::new() },
    };
    sheet.changes.iter().all(|c| change(&mut step, &c.value)).then_some(step)
}

/// Makes a change of the unit's sheet in a step; false when the step is left out.
fn change(step: &mut Step, change: &Change) -> bool {
    match change {
        Change::Drop { step: dropped, .. } => return dropped.value != step.id,
        Change::Add { step: added, words } if added.value == step.id => {
            step.show.push(words.value.clone());
        }
        Change::Replace { line, words } => {
            for key in step.show.iter_mut().chain(&mut step.know).filter(|key| **key == line.value) {
                key.clone_from(&words.value);
            }
        }
        Change::Picture { step: drawn, picture } if drawn.value == step.id => {
            step.picture = Some(picture.value.clone());
        }
        Change::Note { step: noted, words } if noted.value == step.id => {
            step.notes.push(words.value.clone());
        }
        Change::Fault { topic, words } if topic.value == step.topic => {
            step.show = vec![words.value.clone()];
        }
        Change::Add { .. } | Change::Picture { .. } | Change::Note { .. } | Change::Fault { .. } => {}
    }
    true
}

/// The demonstrations of the lot that a unit asks for, by id.
fn demonstrations(scripts: &Scripts, sheet: &Sheet, facts: &Facts) -> BTreeMap<String, Demonstration> {
    let on = scripts.demonstrations.values().filter_map(|d| Demonstration::on(&d.value, sheet, facts));
    on.map(|demonstration| (demonstration.id.clone(), demonstration)).collect()
}

fn cautions(
    topic: &Topic,
    form: &StepForm,
    facts: &Facts,
    demonstrations: &BTreeMap<String, Demonstration>,
) -> Vec<Caution> {
    form.cautions
        .iter()
        .map(|c| &c.value)
        .filter(|c| c.when.as_ref().is_none_or(|w| w.holds(facts)))
        .map(|c| Caution {
            id: c.id.value.clone(),
            version: c.version,
            signal: c.signal,
            hazard: c.hazard,
            harm: c.harm,
            ask: c.answer,
            who: topic.who,
            demonstrations: c
                .demonstrate
                .iter()
                .filter(|d| d.when.as_ref().is_none_or(|w| w.holds(facts)))
                .filter(|d| demonstrations.contains_key(&d.name.value))
                .map(|d| d.name.value.clone())
                .collect(),
        })
        .collect()
}

fn leaving(scripts: &Scripts, facts: &Facts) -> Vec<String> {
    scripts
        .lot
        .value
        .leaving
        .iter()
        .filter(|l| l.value.when.as_ref().is_none_or(|w| w.holds(facts)))
        .map(|l| l.value.id.value.clone())
        .collect()
}

/// The way round the unit, from the entry door toward the rear.
struct Loop {
    curb: f64,
    half: f64,
    length: f64,
    door: f64,
}

impl Loop {
    fn of(sheet: &Sheet) -> Self {
        let inches = |l: &crate::measure::Length| l.quantity().to(Measure::Inch).unwrap_or(0.0);
        let door =
            sheet.places.get("entry-door").and_then(|p| p.value.at.as_ref()).map_or(0.0, |(_, y)| inches(y));
        Self {
            curb: if sheet.curb == Side::Right { 1.0 } else { -1.0 },
            half: inches(&sheet.size.value.width) / 2.0,
            length: inches(&sheet.size.value.body_length),
            door,
        }
    }

    /// How far along the loop a point outside lies, in inches from the entry door.
    fn along(&self, station: Station, at: Option<(f64, f64)>) -> f64 {
        let (x, y) = at.unwrap_or_else(|| self.middle_of(station));
        let x = x * self.curb;
        let rear = self.length - self.door;
        match station {
            Station::Rear => rear + (self.half - x),
            Station::StreetRear | Station::StreetMid | Station::StreetFront => {
                rear + 2.0 * self.half + (self.length - y)
            }
            Station::Front => rear + 2.0 * self.half + self.length + (x + self.half),
            Station::CurbFront => rear + 4.0 * self.half + self.length + y,
            _ if y < self.door => rear + 4.0 * self.half + self.length + y,
            _ => (y - self.door).max(0.0),
        }
    }

    /// A point for a station whose place has none.
    fn middle_of(&self, station: Station) -> (f64, f64) {
        let side = if matches!(station, Station::StreetRear | Station::StreetMid | Station::StreetFront) {
            -self.curb
        } else {
            self.curb
        };
        let third = match station {
            Station::CurbFront | Station::StreetFront | Station::Front => 1.0 / 6.0,
            Station::CurbRear | Station::StreetRear | Station::Rear => 5.0 / 6.0,
            _ => 0.5,
        };
        (side * self.half, third * self.length)
    }
}

/// What orders a step. The leaving check is last of all.
type Order<'a> = (Zone, bool, Priority, f64, f64, &'a str, usize);

fn order<'a>(placed: &Placed<'a>, loop_: &Loop) -> Order<'a> {
    let step = &placed.step;
    let zone = zone(step.station);
    let is_last = !step.leaving.is_empty();
    let station_rank = |s: Station| f64::from(u32::try_from(s as usize).unwrap_or(0));
    let (first, second) = match zone {
        Zone::Outside => (loop_.along(step.station, step.at), 0.0),
        Zone::Desk | Zone::Inside => (station_rank(step.station), step.at.map_or(0.0, |(_, y)| y)),
        // One comes to the tongue from the body and goes on to the vehicle that pulls.
        Zone::Leaving => (station_rank(step.station), step.at.map_or(0.0, |(_, y)| -y)),
    };
    let priority = if zone == Zone::Inside { placed.form.priority } else { Priority::ByPlace };
    let index = usize::from(placed.form.id.value != placed.topic);
    (zone, is_last, priority, first, second, placed.topic, index)
}

/// Moves each step just behind the last of those it waits for.
fn wait_for_others(placed: Vec<Placed<'_>>) -> Vec<Step> {
    let mut open: Vec<Placed<'_>> = placed;
    let mut done: Vec<Step> = Vec::with_capacity(open.len());
    let mut known: BTreeSet<String> = BTreeSet::new();
    let all: BTreeSet<String> = open.iter().map(|p| p.step.id.clone()).collect();
    while !open.is_empty() {
        let ready = |p: &Placed<'_>, known: &BTreeSet<String>| {
            p.form.after.iter().all(|a| known.contains(&a.value) || !all.contains(&a.value))
        };
        // A ring of steps that wait for each other is a fault for `check`; here the first goes on.
        let next = open.iter().position(|p| ready(p, &known)).unwrap_or(0);
        let placed = open.remove(next);
        let _ = known.insert(placed.step.id.clone());
        done.push(placed.step);
    }
    done
}

/// Length of the way in inches, and the ways walked twice: step id and meters.
fn way(steps: &[Step], loop_: &Loop) -> (f64, Vec<(String, f64)>) {
    let mut inches = 0.0;
    let mut doublings = Vec::new();
    for pair in steps.windows(2) {
        let [a, b] = pair else { continue };
        let (from, to) = (zone(a.station), zone(b.station));
        let leg = if from == Zone::Outside && to == Zone::Outside {
            let forward = loop_.along(b.station, b.at) - loop_.along(a.station, a.at);
            if forward < -1.0 {
                doublings.push((b.id.clone(), -forward * METERS));
            }
            libm::fabs(forward)
        } else {
            match (a.at, b.at) {
                (Some(p), Some(q)) => distance(p, q),
                _ => 0.0,
            }
        };
        inches += leg;
    }
    (inches, doublings)
}
