//! Gathers the inputs of one figure and puts its values down.

use crate::measure::{Dim, Dimension, Measure, Of, Quantity, Rounding, rounded};
use crate::unit::{Fact, Origin, Value};

use super::{Asked, Detail, Figure, Given, Input, Note, Outcome, Sentence, State, Step, Trip};

/// Facts that are read from a plate or placard on the unit.
const ON_A_PLATE: [&str; 6] =
    ["weight.occc", "weight.ccc", "weight.gvwr", "weight.gawr_front", "weight.gawr_rear", "tires.cold"];
/// Heights that may lie below the sea, and grades that go down.
const HEIGHTS: [&str; 3] = ["site.elevation", "highest", "grade"];

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
            sentences: Vec::new(),
            source,
            notes: Vec::new(),
            detail: Detail::None,
        };
        Self { given, figure, quiet }
    }

    /// Computes a figure: `with` takes inputs and puts values; what is missing ends it.
    pub(super) fn run(
        asked: Asked<'a>,
        id: &'static str,
        rounding: Rounding,
        source: &'static str,
        with: impl FnOnce(&mut Self) -> Option<()>,
    ) -> Figure {
        let mut work = Self::new(asked.given, id, rounding, source, asked.quiet);
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

    /// What this figure was asked for, for a figure within it.
    pub(super) const fn asked_for(&self) -> Asked<'a> {
        Asked { given: self.given, quiet: self.quiet }
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
        let section = name.split_once('.').map_or(name, |(section, _)| section);
        if self.given.facts.is_fitted(section) == Some(false) {
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
        let Some(q) = value else { return self.missing(&format!("trip.{name}")) };
        let q = q.resolve(self.given.facts.lists().gallon);
        if !self.quiet {
            self.input(&format!("trip.{name}"), q, if is_reading(name) { "reading" } else { "trip" });
        }
        match usable(name, q, measure) {
            Some(number) => Some(number),
            None => self.missing(&format!("trip.{name}")),
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
    pub(super) fn input_text(&mut self, name: &str, value: impl FnOnce() -> String, from: &'static str) {
        if !self.quiet {
            self.figure.inputs.push(Input { name: name.into(), value: value(), quantity: None, from });
        }
    }

    fn number(&mut self, name: &str, q: Quantity, measure: Measure) -> Option<f64> {
        match usable(name, q, measure) {
            Some(number) => Some(number),
            None => self.missing(name),
        }
    }

    /// A number on the way, for the formula.
    pub(super) fn step(&mut self, name: &'static str, value: f64, measure: Measure) {
        if !self.quiet {
            self.figure.steps.push(Step { name, exact: value, measure });
        }
    }

    /// The formula in signs; one after the other. Built only where somebody wants to read it.
    pub(super) fn say(&mut self, formula: impl FnOnce() -> String) {
        if self.quiet {
            return;
        }
        if !self.figure.formula.is_empty() {
            self.figure.formula.push_str("; ");
        }
        self.figure.formula.push_str(&formula());
    }

    /// More of the formula in signs.
    pub(super) fn add(&mut self, more: impl FnOnce() -> String) {
        if !self.quiet {
            self.figure.formula.push_str(&more());
        }
    }

    /// A sentence of the formula.
    pub(super) fn tell(&mut self, key: &'static str, with: &[(&'static str, f64, Measure)]) {
        self.tell_of(key, None, with);
    }

    /// A sentence of the formula about a part.
    pub(super) fn tell_of(
        &mut self,
        key: &'static str,
        of: Option<&'static str>,
        with: &[(&'static str, f64, Measure)],
    ) {
        if !self.quiet {
            let with =
                with.iter().map(|(name, exact, measure)| Step { name, exact: *exact, measure: *measure });
            self.figure.sentences.push(Sentence { key, of, with: with.collect() });
        }
    }

    /// A remark.
    pub(super) fn note(&mut self, key: &'static str) {
        self.figure.notes.push(Note { key, with: Vec::new() });
    }

    /// A remark with numbers in it.
    pub(super) fn note_with(&mut self, key: &'static str, with: &[(&'static str, f64, Measure)]) {
        let step = |(name, exact, measure): &(&'static str, f64, Measure)| Step {
            name,
            exact: *exact,
            measure: *measure,
        };
        self.figure.notes.push(Note { key, with: with.iter().map(step).collect() });
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

fn from_word(name: &str, from: Origin) -> &'static str {
    if ON_A_PLATE.contains(&name) {
        "plate"
    } else if name.starts_with("assumed.") {
        "assumed"
    } else {
        from.word()
    }
}

/// A quantity as a number of a measure; none for what is no number, or below zero where that cannot be.
fn usable(name: &str, q: Quantity, measure: Measure) -> Option<f64> {
    let number = q.to(measure).filter(|n| n.is_finite())?;
    let below = number < 0.0
        && !matches!(q.dimension(), Dimension::Temperature | Dimension::Angle)
        && !HEIGHTS.contains(&name);
    (!below).then_some(number)
}

/// What is read from a gauge at the handoff.
fn is_reading(name: &str) -> bool {
    name.starts_with("start.") || name == "house_volts" || name == "house_charge"
}
