//! What is asked of a trip in numbers: which questions suit a unit, and where a press leads.
//!
//! A value is kept as it was told, `8500 ft`; one that nobody has told stays away, so that a figure uses what the
//! lot assumes, or says what is missing.

use rust_decimal::Decimal;

use crate::figures::{Tow, Trip};
use crate::measure::{Dim, Measure, Of, Quantity, Rounding, System, rounded};
use crate::unit::{Derate, Facts};
use crate::words::format::{self, Places};
use crate::words::{Args, Reader, Words};

/// Parts of full that a gauge is read in.
const EIGHTHS: [&str; 9] = ["0", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8", "1"];

/// Something that is asked with less and more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ask {
    /// Weight of bags and food.
    Bags,
    /// Coldest night.
    Coldest,
    /// Highest place.
    Highest,
    /// Hottest day.
    Hottest,
    /// Hours of sun a day.
    Sun,
    /// Hours of generator a day.
    Generator,
    /// Hours of driving a day.
    Driving,
    /// Weight of bags in the tow vehicle.
    TowBags,
    /// Fresh water at the start.
    Fresh,
    /// Grey tanks at the start.
    Grey,
    /// Toilet tank at the start.
    Toilet,
    /// Propane at the start.
    Propane,
    /// Fuel at the start.
    Fuel,
}

/// The steps of a question in the reader's measures, all in whole numbers of `measure`; levels in eighths.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Scale {
    pub(super) measure: Measure,
    pub(super) step: i32,
    pub(super) low: i32,
    pub(super) high: i32,
}

const fn scale(measure: Measure, step: i32, low: i32, high: i32) -> Scale {
    Scale { measure, step, low, high }
}

/// Where a press leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum To {
    /// To this number of the scale.
    Number(i32),
    /// To nothing told.
    Nothing,
}

impl Ask {
    /// About the trip, in the order they are asked.
    pub(super) const TRIP: [Self; 7] =
        [Self::Bags, Self::Coldest, Self::Highest, Self::Hottest, Self::Sun, Self::Generator, Self::Driving];
    /// About levels at the start.
    pub(super) const LEVELS: [Self; 5] = [Self::Fresh, Self::Grey, Self::Toilet, Self::Propane, Self::Fuel];

    /// Whether the equipment of a unit makes the question sensible.
    pub(super) fn suits(self, facts: &Facts) -> bool {
        let has = |name: &str| facts.is_fitted(name) == Some(true);
        match self {
            Self::Bags | Self::Coldest => true,
            Self::Highest | Self::Generator => has("generator"),
            Self::Hottest => has("generator") && facts.lists().derate.as_ref().is_some_and(minds_heat),
            Self::Sun => has("solar"),
            Self::Driving => has("engine_charger"),
            Self::TowBags => has("hitch"),
            Self::Fresh => has("water.fresh"),
            Self::Grey => has("waste.grey"),
            Self::Toilet => has("waste.black") || has("waste.cassette"),
            Self::Propane => has("propane"),
            Self::Fuel => has("engine.tank"),
        }
    }

    /// Key of the words that ask.
    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::Bags => "opening-plan-bags",
            Self::Coldest => "opening-plan-coldest",
            Self::Highest => "opening-plan-highest",
            Self::Hottest => "opening-plan-hottest",
            Self::Sun => "opening-plan-sun",
            Self::Generator => "opening-plan-generator",
            Self::Driving => "opening-plan-driving",
            Self::TowBags => "opening-plan-tow-bags",
            Self::Fresh => "opening-plan-fresh",
            Self::Grey => "opening-plan-grey",
            Self::Toilet => "opening-plan-toilet",
            Self::Propane => "opening-plan-propane",
            Self::Fuel => "opening-plan-fuel",
        }
    }

    /// Whether it is a part of a tank.
    pub(super) const fn is_level(self) -> bool {
        matches!(self, Self::Fresh | Self::Grey | Self::Toilet | Self::Propane | Self::Fuel)
    }

    /// Whether nothing told is the same as none: one step below the least.
    pub(super) const fn starts_at_zero(self) -> bool {
        matches!(self, Self::Bags | Self::TowBags | Self::Generator | Self::Driving)
    }

    /// Steps and bounds in a reader's measures.
    pub(super) const fn scale(self, system: System) -> Scale {
        let us = matches!(system, System::Us);
        match self {
            Self::Bags | Self::TowBags if us => scale(Measure::Pound, 50, 50, 3000),
            Self::Bags | Self::TowBags => scale(Measure::Kilogram, 20, 20, 1400),
            Self::Coldest if us => scale(Measure::Fahrenheit, 5, -40, 90),
            Self::Coldest => scale(Measure::Celsius, 2, -40, 32),
            Self::Highest if us => scale(Measure::Foot, 500, -500, 14_500),
            Self::Highest => scale(Measure::Meter, 100, -100, 4400),
            Self::Hottest if us => scale(Measure::Fahrenheit, 5, 30, 130),
            Self::Hottest => scale(Measure::Celsius, 2, 0, 54),
            Self::Sun => scale(Measure::Hour, 1, 0, 14),
            Self::Generator | Self::Driving => scale(Measure::Hour, 1, 1, 24),
            Self::Fresh | Self::Grey | Self::Toilet | Self::Propane | Self::Fuel => {
                scale(Measure::Fraction, 1, 0, 8)
            }
        }
    }

    /// The fact that stands in where nothing is told.
    const fn stands_in(self) -> Option<&'static str> {
        match self {
            Self::Highest => Some("site.elevation"),
            Self::Sun => Some("assumed.sun"),
            Self::Fresh => Some("assumed.start_fresh"),
            Self::Grey | Self::Toilet => Some("assumed.start_waste"),
            Self::Propane => Some("assumed.start_propane"),
            _ => None,
        }
    }

    /// What a figure takes where nothing is told.
    pub(super) fn assumed(self, facts: &Facts) -> Option<Quantity> {
        self.stands_in().and_then(|name| facts.quantity(name)).copied()
    }

    /// The number that the first press sets where nothing stands in.
    const fn usual(self, system: System) -> i32 {
        match (self, system) {
            (Self::Coldest, System::Us) => 40,
            (Self::Coldest, _) => 4,
            (Self::Hottest, System::Us) => 85,
            (Self::Hottest, _) => 30,
            _ if self.is_level() => 8,
            _ => self.scale(system).low,
        }
    }

    /// What the trip says.
    pub(super) fn told(self, trip: &Trip) -> Option<Quantity> {
        match self {
            Self::Bags => plain(trip.bags),
            Self::Coldest => plain(trip.coldest),
            Self::Highest => plain(trip.highest),
            Self::Hottest => plain(trip.hottest),
            Self::Sun => plain(trip.sun),
            Self::Generator => plain(trip.generator_run),
            Self::Driving => plain(trip.driving),
            Self::TowBags => plain(trip.tow.and_then(|tow| tow.bags)),
            Self::Fresh => plain(trip.start.fresh),
            Self::Grey => plain(trip.start.grey),
            Self::Toilet => plain(trip.start.black),
            Self::Propane => plain(trip.start.propane),
            Self::Fuel => plain(trip.start.fuel),
        }
    }

    /// Where one less or one more leads; none where it would leave the bounds.
    pub(super) fn pressed(self, trip: &Trip, facts: &Facts, system: System, more: bool) -> Option<To> {
        let scale = self.scale(system);
        let number = |q: Quantity| self.number(&q, scale);
        if let Some(told) = self.told(trip).and_then(number) {
            let next = scale.next(told, more).map(To::Number);
            return next.or((!more && self.starts_at_zero()).then_some(To::Nothing));
        }
        if let Some(assumed) = self.assumed(facts).and_then(number) {
            return scale.next(assumed, more).map(To::Number);
        }
        let usual = self.usual(system);
        match (more, self.starts_at_zero()) {
            (true, _) => Some(To::Number(usual)),
            (false, true) => None,
            (false, false) => scale.next(f64::from(usual), false).map(To::Number),
        }
    }

    /// A quantity as a number of the scale.
    fn number(self, q: &Quantity, scale: Scale) -> Option<f64> {
        let number = q.to(scale.measure).filter(|n| n.is_finite())?;
        Some(if self.is_level() { number * 8.0 } else { number })
    }

    /// Puts what was pressed into the trip.
    pub(super) fn put(self, trip: &mut Trip, to: To, system: System) {
        let quantity = match to {
            To::Nothing => None,
            To::Number(n) if self.is_level() => {
                usize::try_from(n).ok().and_then(|n| EIGHTHS.get(n)).and_then(|text| text.parse().ok())
            }
            To::Number(n) => Some(Quantity::new(Decimal::from(n), self.scale(system).measure)),
        };
        match self {
            Self::Bags => trip.bags = typed(quantity),
            Self::Coldest => trip.coldest = typed(quantity),
            Self::Highest => trip.highest = typed(quantity),
            Self::Hottest => trip.hottest = typed(quantity),
            Self::Sun => trip.sun = typed(quantity),
            Self::Generator => trip.generator_run = typed(quantity),
            Self::Driving => trip.driving = typed(quantity),
            Self::TowBags => set_tow(trip, |tow| tow.bags = typed(quantity)),
            Self::Fresh => trip.start.fresh = typed(quantity),
            Self::Grey => trip.start.grey = typed(quantity),
            Self::Toilet => trip.start.black = typed(quantity),
            Self::Propane => trip.start.propane = typed(quantity),
            Self::Fuel => trip.start.fuel = typed(quantity),
        }
    }

    /// A value as the page shows it, in the measure of its steps alone.
    pub(super) fn says(self, words: &Words, reader: &Reader, q: &Quantity) -> String {
        let scale = self.scale(reader.system);
        let number = self.number(q, scale).and_then(|n| rounded(n, 0, Rounding::Nearest));
        let Some(number) = number else { return q.to_string() };
        if self.is_level() {
            return match i32::try_from(number) {
                Ok(0) => words.say(reader, "opening-plan-empty", &Args::new()),
                Ok(8) => words.say(reader, "opening-plan-full", &Args::new()),
                _ => format::quantity(words, reader, q, Rounding::Nearest, Places::AsWritten),
            };
        }
        let args = Args::new().text("amount", format::number(words, reader, number)).number("n", number);
        words.say(reader, &format::measure_key(scale.measure), &args)
    }
}

impl Scale {
    /// The next step of the grid above or below a number, within the bounds.
    fn next(self, number: f64, more: bool) -> Option<i32> {
        let (step, low, high) = (f64::from(self.step), f64::from(self.low), f64::from(self.high));
        let next = if more {
            (libm::floor(number / step + 1e-9) + 1.0) * step
        } else {
            (libm::ceil(number / step - 1e-9) - 1.0) * step
        };
        // What was told elsewhere may lie outside: the way back in is open.
        let next = if more { next.max(low) } else { next.min(high) };
        #[allow(clippy::cast_possible_truncation, reason = "whole, and within the bounds, which are of i32")]
        (low..=high).contains(&next).then_some(next as i32)
    }
}

/// Whether a generator's rule asks how hot it gets.
const fn minds_heat(rule: &Derate) -> bool {
    match rule {
        Derate::Linear { heat, .. } | Derate::Step { heat, .. } | Derate::Table { heat, .. } => {
            heat.is_some()
        }
        Derate::Grid { .. } => true,
    }
}

/// A typed value as a quantity.
pub(super) fn plain<D: Dim>(value: Option<Of<D>>) -> Option<Quantity> {
    value.map(|value| *value.quantity())
}

/// A quantity with its dimension known.
pub(super) fn typed<D: Dim>(quantity: Option<Quantity>) -> Option<Of<D>> {
    quantity.and_then(|q| Of::new(q).ok())
}

/// Changes what is told of the tow vehicle; where nothing is left, none is told of.
pub(super) fn set_tow(trip: &mut Trip, change: impl FnOnce(&mut Tow)) {
    let mut tow = trip.tow.unwrap_or_default();
    change(&mut tow);
    trip.tow = (tow != Tow::default()).then_some(tow);
}
