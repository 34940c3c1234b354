//! Figures: numbers computed from facts, each with what it came from.
//!
//! Pure functions. A missing fact gives [`State::Missing`], equipment that is not there [`State::NotFitted`];
//! neither is ever a zero or a guess.

use rust_decimal::Decimal;

use crate::measure::{Measure, Quantity, Rounding, rounded};
use crate::unit::{Fact, Facts, Value};

/// Whether a figure could be computed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum State {
    /// It was.
    Ok,
    /// This fact is missing.
    Missing(String),
    /// The unit does not have what it is about.
    NotFitted,
}

/// One value a figure was computed from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Input {
    /// Name of the fact.
    pub name: String,
    /// Value as text with its measure.
    pub value: String,
    /// Where it came from: `sheet`, `lot`.
    pub from: &'static str,
}

/// A computed number, or a list of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Id.
    pub id: &'static str,
    /// Whether it could be computed.
    pub state: State,
    /// Values in the measure they are rounded in.
    pub values: Vec<Quantity>,
    /// Direction it was rounded in.
    pub rounding: Rounding,
    /// What it came from.
    pub inputs: Vec<Input>,
    /// The formula with its numbers.
    pub formula: String,
    /// Source of the formula.
    pub source: &'static str,
}

/// All figures of a unit that need no trip.
#[must_use]
pub fn of_unit(facts: &Facts) -> Vec<Figure> {
    vec![
        clearance_min_sign(facts),
        tire_limit(facts, "tire_add_air", "tires.add_below"),
        tire_limit(facts, "tire_flat", "tires.flat_below"),
        generator_dial(facts),
    ]
}

/// Gathers the inputs of one figure.
struct Work<'a> {
    facts: &'a Facts,
    figure: Figure,
}

impl<'a> Work<'a> {
    fn new(facts: &'a Facts, id: &'static str, rounding: Rounding, source: &'static str) -> Self {
        let figure = Figure {
            id,
            state: State::Ok,
            values: Vec::new(),
            rounding,
            inputs: Vec::new(),
            formula: String::new(),
            source,
        };
        Self { facts, figure }
    }

    /// A fact as a number in `measure`; notes it as an input, or why there is none.
    fn take(&mut self, name: &str, measure: Measure) -> Option<f64> {
        match self.facts.get(name) {
            Some(Fact { value: Value::Quantity(q), from }) => {
                self.figure.inputs.push(Input { name: name.into(), value: q.to_string(), from: from.word() });
                q.to(measure)
            }
            Some(Fact { value: Value::Count(n), from }) => {
                self.figure.inputs.push(Input { name: name.into(), value: n.to_string(), from: from.word() });
                Some(f64::from(*n))
            }
            Some(Fact { value: Value::NotFitted, .. }) => self.without(State::NotFitted),
            _ if self.facts.is_fitted(name) == Some(false) => self.without(State::NotFitted),
            _ => self.without(State::Missing(name.into())),
        }
    }

    fn without(&mut self, state: State) -> Option<f64> {
        self.figure.state = state;
        None
    }

    /// Adds a rounded value; one that is no number makes the figure missing.
    fn put(&mut self, value: f64, measure: Measure) {
        match rounded(value, 0, self.figure.rounding) {
            Some(n) => self.figure.values.push(Quantity::new(n, measure)),
            None => self.figure.state = State::Missing(self.figure.id.into()),
        }
    }
}

/// Lowest sign to pass under: height and margin, rounded up to the inch (handbook FIG-01).
fn clearance_min_sign(facts: &Facts) -> Figure {
    let mut work =
        Work::new(facts, "clearance_min_sign", Rounding::Up, "handbook FIG-01; the margin is common practice, no source");
    let height = work.take("size.height", Measure::Inch);
    let margin = work.take("size.margin", Measure::Inch);
    if let (Some(height), Some(margin)) = (height, margin) {
        work.figure.formula = format!("{height} in + {margin} in");
        work.put(height + margin, Measure::Inch);
        work.figure.values = work.figure.values.iter().filter_map(in_feet_and_inches).collect();
    }
    work.figure
}

/// The same length written in feet and inches, as road signs are.
fn in_feet_and_inches(length: &Quantity) -> Option<Quantity> {
    let inches = length.amount();
    let twelve = Decimal::from(12);
    let feet = (inches / twelve).floor();
    Quantity::parse(&format!("{feet} ft {} in", inches - feet * twelve)).ok()
}

/// Pressure limits by axle, rounded up to the psi (handbook FIG-22).
fn tire_limit(facts: &Facts, id: &'static str, part: &str) -> Figure {
    let mut work = Work::new(facts, id, Rounding::Up, "handbook FIG-22; common practice, no source");
    let Some(below) = work.take(part, Measure::Percent) else { return work.figure };
    let Some(Fact { value: Value::List(cold), from }) = facts.get("tires.cold") else {
        let _ = work.without(State::Missing("tires.cold".into()));
        return work.figure;
    };
    let mut formulas = Vec::new();
    for value in cold {
        if let Value::Quantity(q) = value
            && let Some(psi) = q.to(Measure::Psi)
        {
            work.figure.inputs.push(Input { name: "tires.cold".into(), value: q.to_string(), from: from.word() });
            formulas.push(format!("{psi} psi × (100 − {below}) ÷ 100"));
            work.put(psi * (100.0 - below) / 100.0, Measure::Psi);
        }
    }
    work.figure.formula = formulas.join("; ");
    work.figure
}

/// Number of the altitude dial on the lot: thousands of feet, to the nearest step, within the dial
/// (handbook B17).
fn generator_dial(facts: &Facts) -> Figure {
    let mut work = Work::new(facts, "generator_dial", Rounding::Nearest, "handbook B17: the dial counts thousands of feet");
    let top = work.take("generator.dial_top", Measure::Fraction);
    let height = work.take("site.elevation", Measure::Foot);
    if let (Some(top), Some(height)) = (top, height) {
        work.figure.formula = format!("{height} ft ÷ 1000, not above {top}");
        work.put((height / 1000.0).clamp(0.0, top), Measure::Fraction);
    }
    work.figure
}
