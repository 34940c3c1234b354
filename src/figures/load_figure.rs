//! The figure `loads_fit`: which 120 V loads of the unit run together on a supply.

use crate::measure::{Measure, Rounding};
use crate::unit::{Instead, Leg, Load, Supply};

use super::generator::{part_there, watts_there};
use super::loads::{Fit, Item, Limits, fits, judge, largest_sets, remedies};
use super::trip::{On, SupplyAt};
use super::work::{Work, plain};
use super::{Asked, Detail, Figure, Given, Outcome};

/// The supply that the trip names, else the unit's own cord on a post that fits it, else what it has.
fn supply(w: &Work<'_>) -> SupplyKind {
    match w.given.trip.and_then(|t| t.supply) {
        Some(SupplyAt::Post(_)) => SupplyKind::Post,
        Some(SupplyAt::Generator) => SupplyKind::Generator,
        Some(SupplyAt::Inverter) => SupplyKind::Inverter,
        Some(SupplyAt::Nothing) => SupplyKind::Nothing,
        None if w.has("shore") => SupplyKind::Post,
        None if w.has("generator") => SupplyKind::Generator,
        None if w.has("inverter") => SupplyKind::Inverter,
        None => SupplyKind::Nothing,
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum SupplyKind {
    Post,
    Generator,
    Inverter,
    Nothing,
}

impl SupplyKind {
    const fn word(self) -> &'static str {
        match self {
            Self::Post => "post",
            Self::Generator => "generator",
            Self::Inverter => "inverter",
            Self::Nothing => "nothing",
        }
    }

    const fn as_supply(self) -> Option<Supply> {
        match self {
            Self::Post => Some(Supply::Shore),
            Self::Generator => Some(Supply::Generator),
            Self::Inverter => Some(Supply::Inverter),
            Self::Nothing => None,
        }
    }
}

/// What the supply gives.
fn limits(w: &mut Work<'_>, kind: SupplyKind) -> Option<Limits> {
    let mains = w.take("limit.mains", Measure::Volt)?;
    let long_part = w.take("assumed.long_part", Measure::Fraction)?;
    let branch = if w.has("shore") {
        let branch = w.take("shore.branch", Measure::Ampere)? * mains;
        Some((branch, branch * long_part))
    } else {
        None
    };
    let limits = match kind {
        SupplyKind::Nothing => {
            Limits { legs: 1, each: 0.0, long: Some(0.0), branch: None, surge: None, post: false }
        }
        SupplyKind::Post => {
            w.fitted("shore")?;
            let cord = w.take("shore.cord", Measure::Ampere)?;
            let unit_legs = w.take("shore.legs", Measure::Fraction)?;
            let post = match w.given.trip.and_then(|t| t.supply) {
                Some(SupplyAt::Post(post)) => w.asked("supply", Some(*post.quantity()), Measure::Ampere)?,
                _ => cord,
            };
            // An adapter gives no more than the cord takes, and joins both legs where the post is smaller.
            let legs = if unit_legs > 1.5 && post >= cord - 1e-9 { 2 } else { 1 };
            let each = post.min(cord) * mains;
            Limits { legs, each, long: Some(each * long_part), branch, surge: None, post: true }
        }
        SupplyKind::Generator => {
            let there = watts_there(w)?;
            let breaker = w.take("generator.breaker", Measure::Ampere)? * mains;
            let surge = if w.has("generator.peak") {
                w.take("generator.peak", Measure::Watt)? * part_there(w)?
            } else {
                there
            };
            let each = there.min(breaker);
            let long = (breaker * long_part).min(each);
            Limits { legs: 1, each, long: Some(long), branch, surge: Some(surge), post: false }
        }
        SupplyKind::Inverter => {
            w.fitted("inverter")?;
            let power = w.take("inverter.power", Measure::Watt)?;
            let part = w.take("assumed.inverter_part", Measure::Fraction)?;
            let surge = if w.has("inverter.peak") { w.take("inverter.peak", Measure::Watt)? } else { power };
            Limits { legs: 1, each: power * part, long: None, branch, surge: Some(surge), post: false }
        }
    };
    Some(limits)
}

/// A load as it is judged; what the sheet says of it becomes an input.
fn item(w: &mut Work<'_>, load: &Load, settled: bool, kind: SupplyKind) -> Option<Item> {
    let name = format!("loads.{}", load.id.value);
    let draw = match (settled, load.settled) {
        (true, Some(settled)) => settled,
        _ => load.draw,
    };
    let watts = draw.quantity().to(Measure::Watt).filter(|watts| *watts >= 0.0 && watts.is_finite());
    let Some(watts) = watts else { return w.missing(&name) };
    w.input(&name, *draw.quantity(), "sheet");
    Some(Item {
        id: load.id.value.clone(),
        watts,
        long: load.long,
        leg: load.leg.map(|leg| match leg {
            Leg::One => 0,
            Leg::Two => 1,
        }),
        branch: load.branch,
        start: load.start.and_then(|start| start.quantity().to(Measure::Watt)),
        allowed: kind
            .as_supply()
            .is_some_and(|own| load.from.as_ref().is_none_or(|from| from.contains(&own))),
        propane: load.instead == Some(Instead::Propane) && w.has("propane"),
    })
}

/// The loads of the trip.
fn asked_loads(w: &mut Work<'_>, on: &[On], kind: SupplyKind) -> Option<Vec<Item>> {
    let loads = &w.given.facts.lists().loads;
    let mut items: Vec<Item> = Vec::new();
    for on in on {
        let Some(load) = loads.iter().find(|l| l.id.value == on.load) else {
            return w.missing(&format!("loads.{}", on.load));
        };
        if items.iter().any(|item| item.id == on.load) {
            return w.missing(&format!("trip.on.{}", on.load));
        }
        items.push(item(w, load, on.settled, kind)?);
    }
    Some(items)
}

/// The loads of a unit on one supply.
#[derive(Debug, Clone, PartialEq)]
pub struct Bench {
    /// What the supply gives.
    pub limits: Limits,
    /// Loads that come on by themselves, settled.
    pub always: Vec<Item>,
    /// All others.
    pub items: Vec<Item>,
}

impl Bench {
    /// Loads of these ids with those that come on by themselves; none where the unit does not have one of them.
    #[must_use]
    pub fn with(&self, ids: &[String]) -> Option<Vec<&Item>> {
        let others = ids.iter().filter(|id| !self.always.iter().any(|item| item.id == **id));
        let others = others.map(|id| self.items.iter().find(|item| item.id == *id));
        self.always.iter().map(Some).chain(others).collect()
    }
}

/// What the supply of the trip gives, and the loads of the unit on it; none where that is not known.
#[must_use]
pub fn bench(given: Given<'_>) -> Option<Bench> {
    Work::quietly(given, |w| {
        let kind = supply(w);
        let limits = limits(w, kind)?;
        let (always, items) = sets_of(w, kind)?;
        (!items.is_empty()).then_some(Bench { limits, always, items })
    })
}

/// Whether the loads of the trip run together, which rules they break, what to switch off, and which sets fit.
/// Values: sum and long loads of what is on, and what the supply gives.
pub(super) fn loads_fit(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "loads_fit",
        Rounding::Exact,
        "NEC 210.20 (80 % of a breaker for three hours or more), 551.73",
        |w| {
            if w.given.facts.is_not_known("loads") {
                return w.missing("loads");
            }
            if w.given.facts.lists().loads.is_empty() {
                return w.not_fitted();
            }
            let kind = supply(w);
            let limits = limits(w, kind)?;
            let on = w.given.trip.map_or(&[][..], |t| &t.on);
            let asked = asked_loads(w, on, kind)?;
            let sum: f64 = asked.iter().map(|item| item.watts).sum();
            let long: f64 = asked.iter().filter(|item| item.long).map(|item| item.watts).sum();
            let breaks = judge(&asked, &limits);
            // What is asked about stands among the inputs; the rest of the sheet is told by its sets.
            let inputs = w.figure.inputs.len();
            let (always, others) = sets_of(w, kind)?;
            w.figure.inputs.truncate(inputs);
            let always_ids = always.iter().map(|item| item.id.clone()).collect();
            let remedies = if breaks.is_empty() { Vec::new() } else { remedies(&asked, &limits) };
            let sets = largest_sets(&others, &always, &limits);
            values(w, sum, long, &limits)?;
            if !asked.is_empty() {
                w.figure.verdict = Some(if fits(&asked, &limits) { "yes" } else { "no" });
                if limits.surge.is_some() && asked.iter().any(|item| item.start.is_none()) {
                    w.note("start-not-known");
                }
            }
            if kind == SupplyKind::Nothing {
                w.note("no-supply");
            }
            w.figure.detail = Detail::Loads(Box::new(Fit {
                supply: kind.word(),
                on: asked.into_iter().map(|item| item.id).collect(),
                breaks,
                remedies,
                sets,
                always: always_ids,
            }));
            Some(())
        },
    )
}

/// Loads that come on by themselves, settled, and all others.
fn sets_of(w: &mut Work<'_>, kind: SupplyKind) -> Option<(Vec<Item>, Vec<Item>)> {
    let (mut always, mut others) = (Vec::new(), Vec::new());
    for load in &w.given.facts.lists().loads {
        let by_itself = load.settled.is_some();
        let judged = item(w, load, by_itself, kind)?;
        match (by_itself, kind) {
            // The battery does not charge itself.
            (true, SupplyKind::Inverter | SupplyKind::Nothing) => {}
            (true, _) => always.push(judged),
            (false, _) => others.push(judged),
        }
    }
    Some((always, others))
}

fn values(w: &mut Work<'_>, sum: f64, long: f64, limits: &Limits) -> Option<()> {
    let legs = if limits.legs == 2 { 2.0 } else { 1.0 };
    let most = limits.each * legs;
    let put = |w: &mut Work<'_>, of: &str, exact: f64| {
        w.put_outcome(Outcome {
            of: Some(of.into()),
            exact,
            measure: Measure::Watt,
            places: 0,
            rounding: Rounding::Exact,
            counted: None,
        })
    };
    put(w, "sum", sum)?;
    put(w, "long", long)?;
    put(w, "most", most)?;
    w.say(|| format!("{} W of {} W", plain(sum), plain(most)));
    for (name, value) in [("sum", sum), ("long", long), ("most", most)] {
        w.step(name, value, Measure::Watt);
    }
    if let Some(each) = limits.long {
        put(w, "most-long", each * legs)?;
        w.step("most_long", each * legs, Measure::Watt);
        w.say(|| format!("{} W of {} W", plain(long), plain(each * legs)));
    }
    Some(())
}
