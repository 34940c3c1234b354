//! Gathers the inputs of one figure and puts its values down.

use crate::measure::rounding::settled;
use crate::measure::{Dim, Dimension, Measure, Of, Quantity, Rounding, rounded};
use crate::unit::{Fact, Origin, Value};

use super::{Detail, Figure, Given, Input, Note, Outcome, State, Step, Trip};

/// Facts that are read from a plate or placard on the unit.
const ON_A_PLATE: [&str; 6] =
    ["weight.occc", "weight.ccc", "weight.gvwr", "weight.gawr_front", "weight.gawr_rear", "tires.cold"];
/// Lengths that may lie below the sea.
const HEIGHTS: [&str; 2] = ["site.elevation", "trip.highest"];

/// One figure in the making.
pub(super) struct Work<'a> {
    pub(super) given: Given<'a>,
    pub(super) figure: Figure,
    /// Whether only the numbers are wanted: nothing is noted for an explanation.
    quiet: bool,
}

/// The quantity of a typed value that may be absent.
pub(super) fn quantity<D: Dim>(value: Option<Of<D>>) -> Option<Quantity> {
    value.map(|value| *value.quantity())
}

/// A number for a formula: 12 digits, at most three decimals, no trailing zeros.
pub(super) fn plain(value: f64) -> String {
    rounded(value, 3, Rounding::Nearest).map_or_else(|| "?".into(), |n| n.normalize().to_string())
}

impl<'a> Work<'a> {
    fn new(
        given: Given<'a>,
        id: &'static str,
        rounding: Rounding,
        source: &'static str,
        quiet: bool,
    ) -> Self {
        let figure = Figure {
            id,
            state: State::Ok,
            values: Vec::new(),
            outcomes: Vec::new(),
            verdict: None,
            rounding,
            inputs: Vec::new(),
            steps: Vec::new(),
            formula: String::new(),
            source,
            notes: Vec::new(),
            detail: Detail::None,
        };
        Self { given, figure, quiet }
    }

    /// Computes a figure: `with` takes inputs and puts values; what is missing ends it.
    pub(super) fn run(
        given: Given<'a>,
        id: &'static str,
        rounding: Rounding,
        source: &'static str,
        with: impl FnOnce(&mut Self) -> Option<()>,
    ) -> Figure {
        let mut work = Self::new(given, id, rounding, source, false);
        if with(&mut work).is_none() && work.figure.state == State::Ok {
            work.figure.state = State::Missing(id.into());
        }
        if work.figure.state != State::Ok {
            work.figure.values.clear();
            work.figure.outcomes.clear();
            work.figure.verdict = None;
            work.figure.detail = Detail::None;
        }
        work.figure
    }

    /// Computes numbers alone, as a suggestion is tried.
    pub(super) fn quietly<T>(given: Given<'a>, with: impl FnOnce(&mut Self) -> Option<T>) -> Option<T> {
        with(&mut Self::new(given, "", Rounding::Exact, "", true))
    }

    /// Ends the figure: this fact is missing, or cannot be what it says. The first one found is told.
    pub(super) fn missing<T>(&mut self, name: &str) -> Option<T> {
        if self.figure.state == State::Ok {
            self.figure.state = State::Missing(name.into());
        }
        None
    }

    /// Ends the figure: the unit does not have it.
    pub(super) fn not_fitted<T>(&mut self) -> Option<T> {
        self.figure.state = State::NotFitted;
        None
    }

    /// Ends the figure unless the section or field is fitted.
    pub(super) fn fitted(&mut self, name: &str) -> Option<()> {
        match self.given.facts.is_fitted(name) {
            Some(true) => Some(()),
            Some(false) => self.not_fitted(),
            None => self.missing(name),
        }
    }

    /// Whether a section or field is fitted; unknown counts as not.
    pub(super) fn has(&self, name: &str) -> bool {
        self.given.facts.is_fitted(name) == Some(true)
    }

    /// The trip; a figure that needs one ends without.
    pub(super) fn trip(&mut self) -> Option<&'a Trip> {
        match self.given.trip {
            Some(trip) => Some(trip),
            None => self.missing("trip"),
        }
    }

    /// A fact as a number of `measure`, noted as an input; otherwise why there is none.
    pub(super) fn take(&mut self, name: &str, measure: Measure) -> Option<f64> {
        if self.given.facts.is_fitted(name) == Some(false) {
            return self.not_fitted();
        }
        match self.given.facts.get(name) {
            Some(Fact { value: Value::Quantity(q), from }) => {
                let (q, from) = (*q, from_word(name, *from));
                self.input(name, q, from);
                self.number(name, q, measure)
            }
            Some(Fact { value: Value::Count(n), from }) => {
                let (n, from) = (*n, from_word(name, *from));
                let counted = Quantity::new(rust_decimal::Decimal::from(n), Measure::Fraction);
                self.input(name, counted, from);
                Some(f64::from(n))
            }
            Some(Fact { value: Value::NotFitted, .. }) => self.not_fitted(),
            _ => self.missing(name),
        }
    }

    /// A word of the sheet; never an input by itself.
    pub(super) fn word(&mut self, name: &str) -> Option<&'static str> {
        match self.given.facts.get(name).map(|fact| &fact.value) {
            Some(Value::Word(word)) => Some(word),
            _ => self.missing(name),
        }
    }

    /// A value of the trip, noted as an input; missing under `trip.<name>` when the trip does not say.
    pub(super) fn asked(&mut self, name: &str, value: Option<Quantity>, measure: Measure) -> Option<f64> {
        let name = format!("trip.{name}");
        match value {
            Some(q) => {
                let q = q.resolve(self.given.facts.lists().gallon);
                self.input(&name, q, if is_reading(&name) { "reading" } else { "trip" });
                self.number(&name, q, measure)
            }
            None => self.missing(&name),
        }
    }

    /// A value of the trip, else the fact of this name.
    pub(super) fn asked_or(
        &mut self,
        name: &str,
        value: Option<Quantity>,
        otherwise: &str,
        measure: Measure,
    ) -> Option<f64> {
        if value.is_some() { self.asked(name, value, measure) } else { self.take(otherwise, measure) }
    }

    /// A share of the whole between 0 and 1, from the trip, else from the fact of this name.
    pub(super) fn level(&mut self, name: &str, value: Option<Quantity>, otherwise: &str) -> Option<f64> {
        let level = self.asked_or(name, value, otherwise, Measure::Fraction)?;
        if (0.0..=1.0).contains(&level) { Some(level) } else { self.missing(&format!("trip.{name}")) }
    }

    /// Notes an input.
    pub(super) fn input(&mut self, name: &str, q: Quantity, from: &'static str) {
        if self.quiet {
            return;
        }
        self.figure.inputs.push(Input { name: name.into(), value: q.to_string(), quantity: Some(q), from });
    }

    /// Notes an input that is no single quantity.
    pub(super) fn input_text(&mut self, name: &str, value: String, from: &'static str) {
        self.figure.inputs.push(Input { name: name.into(), value, quantity: None, from });
    }

    fn number(&mut self, name: &str, q: Quantity, measure: Measure) -> Option<f64> {
        let number = q.to(measure).filter(|n| n.is_finite());
        let below = number.is_some_and(|n| n < 0.0)
            && !matches!(q.dimension(), Dimension::Temperature | Dimension::Angle)
            && !HEIGHTS.contains(&name)
            && name != "trip.grade";
        match number {
            Some(number) if !below => Some(number),
            _ => self.missing(name),
        }
    }

    /// A number on the way, for the formula.
    pub(super) fn step(&mut self, name: &'static str, value: f64, measure: Measure) {
        if !self.quiet
            && let Some(step) = step(name, value, measure)
        {
            self.figure.steps.push(step);
        }
    }

    /// The formula in signs.
    pub(super) fn say(&mut self, formula: impl Into<String>) {
        if !self.figure.formula.is_empty() {
            self.figure.formula.push_str("; ");
        }
        self.figure.formula.push_str(&formula.into());
    }

    /// A remark.
    pub(super) fn note(&mut self, key: &'static str) {
        self.figure.notes.push(Note { key, with: Vec::new() });
    }

    /// Puts the value down; one that is no number ends the figure.
    pub(super) fn put(&mut self, exact: f64, measure: Measure, places: u32) -> Option<()> {
        self.put_outcome(Outcome {
            of: None,
            exact,
            measure,
            places,
            rounding: self.figure.rounding,
            counted: None,
        })
    }

    /// Puts a value of a part down.
    pub(super) fn put_of(&mut self, of: &str, exact: f64, measure: Measure, places: u32) -> Option<()> {
        self.put_outcome(Outcome {
            of: Some(of.into()),
            exact,
            measure,
            places,
            rounding: self.figure.rounding,
            counted: None,
        })
    }

    /// Puts a value down as it is given.
    pub(super) fn put_outcome(&mut self, outcome: Outcome) -> Option<()> {
        let Some(value) = outcome.own() else {
            let id = self.figure.id;
            return self.missing(id);
        };
        self.figure.values.push(value);
        self.figure.outcomes.push(outcome);
        Some(())
    }
}

/// A named number with at most three decimals.
pub(super) fn step(name: &'static str, value: f64, measure: Measure) -> Option<Step> {
    let number = rounded(value, 3, Rounding::Nearest)?.normalize();
    let _ = settled(value)?;
    Some(Step { name, quantity: Quantity::new(number, measure) })
}

fn from_word(name: &str, from: Origin) -> &'static str {
    if ON_A_PLATE.contains(&name) {
        "plate"
    } else if name.starts_with("assumed.") {
        "assumed"
    } else {
        from.word()
    }
}

/// What is read from a gauge at the handoff.
fn is_reading(name: &str) -> bool {
    name.starts_with("trip.start.") || name == "trip.house_volts" || name == "trip.house_charge"
}
