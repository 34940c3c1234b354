//! Figures: numbers of one unit and one trip, each with what it came from.
//!
//! Pure functions of [`Facts`] and [`Trip`]. A missing or impossible fact gives [`State::Missing`] with its name,
//! equipment that is not there [`State::NotFitted`]; neither is ever a zero or a guess. [`explain()`] says in the
//! reader's words and measures how a figure was worked out.

mod battery;
mod battery_day;
pub mod bill;
mod explain;
pub mod form;
mod formula;
mod gas;
mod generator;
mod heat;
mod load_figure;
pub mod loads;
pub mod plot;
pub mod projection;
mod projection_help;
mod projection_said;
mod road;
mod size;
mod tires;
mod tow;
mod trip;
mod water;
mod weight;
mod wind;
mod wire;
mod work;

use rust_decimal::Decimal;

use crate::measure::rounding::settled;
use crate::measure::{Measure, Quantity, Rounding, System, rounded, shown_with_places};
use crate::unit::Facts;

pub use explain::{Explained, ExplainedInput, explain, value_text};
pub use formula::bill_line;
pub use gas::most_fill;
pub use load_figure::{Bench, bench};
pub use projection_help::{Action, Help};
pub use projection_said::{Said, said as say_projection, say_help};
pub use size::{Passage, limit_on_sign, may_pass};
pub use tires::air_pressure;
pub use trip::{
    Cord, HookUp, Joined, On, Person, Returned, Sign, Slope, Start, SupplyAt, TireSet, Tow, Trip, Use,
    WaterUse, Wind,
};
pub use wind::{Beaufort, beaufort, beaufort_of};
pub use wire::resistance;

/// Source of a rule that nobody has written down.
pub const COMMON_PRACTICE: &str = "common practice, no source";

/// Whether a figure could be computed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum State {
    /// It was.
    Ok,
    /// This fact is missing, or cannot be what it says.
    Missing(String),
    /// The unit does not have what it is about.
    NotFitted,
}

/// One value a figure was computed from.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// Name of the fact, as `size.height` or `trip.people`.
    pub name: String,
    /// Value as text with its measure.
    pub value: String,
    /// The value, when it is one quantity.
    pub quantity: Option<Quantity>,
    /// Where it came from: `plate`, `sheet`, `reading`, `trip`, `lot`, or `assumed` for what the lot assumes.
    pub from: &'static str,
}

/// One number of a figure, before it is rounded.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// What it is of, where there are several: `front`, `half-load`.
    pub of: Option<String>,
    /// The number in `measure`.
    pub exact: f64,
    /// Measure it was computed in.
    pub measure: Measure,
    /// Decimals it is rounded to in that measure.
    pub places: u32,
    /// Direction it is rounded in.
    pub rounding: Rounding,
    /// What is counted where there is no measure: `nights`.
    pub counted: Option<&'static str>,
}

impl Outcome {
    /// The number rounded in the measure that a reader sees first; none when it is no number.
    #[must_use]
    pub fn shown(&self, system: System) -> Option<Quantity> {
        let raw = Quantity::new(settled(self.exact)?, self.measure);
        let first = shown_with_places(&raw, system).into_iter().next()?;
        let same = first.measure == self.measure
            || (self.measure == Measure::Inch && first.measure == Measure::FootInch);
        if same {
            return Some(Quantity::new(rounded(self.exact, self.places, self.rounding)?, first.measure));
        }
        let turned = self.measure.is_inverse() != first.measure.is_inverse();
        let rounding = if turned { self.rounding.flipped() } else { self.rounding };
        let number = self.measure.convert(self.exact, first.measure)?;
        Some(Quantity::new(rounded(number, first.places, rounding)?, first.measure))
    }

    /// The number rounded in the measure it was computed in.
    #[must_use]
    pub fn own(&self) -> Option<Quantity> {
        Some(Quantity::new(rounded(self.exact, self.places, self.rounding)?, self.measure))
    }
}

/// A number on the way to a figure, for its formula.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// Its name in the formula.
    pub name: &'static str,
    /// The number in `measure`.
    pub exact: f64,
    /// Its measure.
    pub measure: Measure,
}

impl Step {
    /// The number with the decimals a reader can use, at most three; none when it is no number.
    #[must_use]
    pub fn quantity(&self) -> Option<Quantity> {
        let places = match self.exact.abs() {
            size if size >= 100.0 => 1,
            size if size >= 1.0 => 2,
            _ => 3,
        };
        Some(Quantity::new(rounded(self.exact, places, Rounding::Nearest)?.normalize(), self.measure))
    }
}

/// A sentence of the formula: its words are `figure-<id>.<key>`.
#[derive(Debug, Clone, PartialEq)]
pub struct Sentence {
    /// Key.
    pub key: &'static str,
    /// The part it is of, where there are several: `$part` in its words.
    pub of: Option<&'static str>,
    /// Numbers its words use, beside the inputs and steps of the figure.
    pub with: Vec<Step>,
}

/// A remark that holds for these facts only: its words are `figure-note-<key>`.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// Key.
    pub key: &'static str,
    /// Quantities its words use.
    pub with: Vec<Step>,
}

/// What a figure holds beyond numbers.
#[derive(Debug, Clone, PartialEq)]
pub enum Detail {
    /// Nothing.
    None,
    /// What runs together.
    Loads(Box<loads::Fit>),
    /// Day by day.
    Projection(Box<projection::Projection>),
    /// A return bill.
    Bill(Box<bill::Bill>),
}

/// A computed number, or a list of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Id.
    pub id: &'static str,
    /// Whether it could be computed.
    pub state: State,
    /// Values, each rounded in the measure it was computed in.
    pub values: Vec<Quantity>,
    /// The same before rounding.
    pub outcomes: Vec<Outcome>,
    /// A word where the figure answers yes or no: `in`, `out`, `yes`, `no`, `unknown`.
    pub verdict: Option<&'static str>,
    /// Direction the first value was rounded in.
    pub rounding: Rounding,
    /// What it came from.
    pub inputs: Vec<Input>,
    /// Numbers on the way.
    pub steps: Vec<Step>,
    /// The formula with its numbers, in signs.
    pub formula: String,
    /// The formula in sentences; its words are `figure-<id>.formula` alone where there are none.
    pub sentences: Vec<Sentence>,
    /// Source of the formula.
    pub source: &'static str,
    /// Remarks that hold for these facts.
    pub notes: Vec<Note>,
    /// What it holds beyond numbers.
    pub detail: Detail,
}

impl Figure {
    /// The values in the measures that a reader sees first.
    #[must_use]
    pub fn shown(&self, system: System) -> Vec<Quantity> {
        self.outcomes.iter().filter_map(|outcome| outcome.shown(system)).collect()
    }

    /// The value of this part, rounded in its own measure.
    #[must_use]
    pub fn part(&self, of: &str) -> Option<Quantity> {
        self.outcomes.iter().find(|outcome| outcome.of.as_deref() == Some(of)).and_then(Outcome::own)
    }

    /// The first value as a decimal, if it could be computed.
    #[must_use]
    pub fn amount(&self) -> Option<Decimal> {
        (self.state == State::Ok).then(|| self.values.first().map(Quantity::amount)).flatten()
    }
}

/// What a figure is computed from.
#[derive(Debug, Clone, Copy)]
pub struct Given<'a> {
    /// Facts of unit and lot.
    pub facts: &'a Facts,
    /// The trip, when one is planned.
    pub trip: Option<&'a Trip>,
}

/// What a figure is asked for: with all that explains it, or its numbers alone.
#[derive(Debug, Clone, Copy)]
struct Asked<'a> {
    given: Given<'a>,
    /// Whether only the numbers are wanted: no inputs, no formula.
    quiet: bool,
}

/// Computes one figure.
type Compute = fn(Asked<'_>) -> Figure;

/// All figures, in the order they are shown.
const ALL: &[(&str, Compute)] = &[
    ("clearance_min_sign", size::clearance_min_sign),
    ("payload_left", weight::payload_left),
    ("water_weight", weight::water_weight),
    ("fresh_days", water::fresh_days),
    ("grey_days", water::grey_days),
    ("toilet_days", water::toilet_days),
    ("fill_minutes", water::fill_minutes),
    ("battery_nights", battery::battery_nights),
    ("battery_days", battery_day::battery_days),
    ("state_of_charge", battery::state_of_charge),
    ("voltage_drop", wire::voltage_drop),
    ("solar_ah", battery_day::solar_ah),
    ("battery_cost", battery_day::battery_cost),
    ("propane_hours", gas::propane_hours),
    ("propane_days", gas::propane_days),
    ("generator_hours", generator::generator_hours),
    ("generator_watts", generator::generator_watts),
    ("generator_dial", generator::generator_dial),
    ("loads_fit", load_figure::loads_fit),
    ("tail_swing", size::tail_swing),
    ("following_gap", road::following_gap),
    ("stopping_distance", road::stopping_distance),
    ("heat_up_minutes", heat::heat_up_minutes),
    ("outlet_temperature", heat::outlet_temperature),
    ("tow_check", tow::tow_check),
    ("rig_length", tow::rig_length),
    ("tire_add_air", tires::tire_add_air),
    ("tire_flat", tires::tire_flat),
    ("tire_pressure_at", tires::tire_pressure_at),
    ("fuel_range", road::fuel_range),
    ("heater_hours", road::heater_hours),
    ("awning_verdict", wind::awning_verdict),
    ("level_blocks", size::level_blocks),
    ("trip_projection", projection::trip_projection),
    ("return_total", bill::return_total),
];

/// Ids of all figures, in the order they are shown.
pub fn ids() -> impl Iterator<Item = &'static str> {
    ALL.iter().map(|(id, _)| *id)
}

/// The day of a trip, counted from 1, on which a number of days since the handoff falls. A supply that ends with
/// a day lasts to that day.
#[must_use]
pub fn day_of(days: f64) -> u16 {
    let mut day = 1;
    while f64::from(day) < days - 1e-9 && day < u16::MAX {
        day += 1;
    }
    day
}

/// All figures of a unit without a trip; those that need one are [`State::Missing`].
#[must_use]
pub fn of_unit(facts: &Facts) -> Vec<Figure> {
    all(Given { facts, trip: None })
}

/// All figures of a unit for a trip.
#[must_use]
pub fn of_trip(facts: &Facts, trip: &Trip) -> Vec<Figure> {
    all(Given { facts, trip: Some(trip) })
}

/// The numbers of all figures without what explains them: no inputs, no steps, no formula. For what is computed
/// again with every touch.
#[must_use]
pub fn numbers(given: Given<'_>) -> Vec<Figure> {
    ALL.iter().map(|(_, compute)| compute(Asked { given, quiet: true })).collect()
}

fn all(given: Given<'_>) -> Vec<Figure> {
    ALL.iter().map(|(_, compute)| compute(Asked { given, quiet: false })).collect()
}

/// One figure; none when there is no such id.
#[must_use]
pub fn one(id: &str, given: Given<'_>) -> Option<Figure> {
    ALL.iter().find(|(known, _)| *known == id).map(|(_, compute)| compute(Asked { given, quiet: false }))
}
