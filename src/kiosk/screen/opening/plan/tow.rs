//! The vehicle that pulls: what stands on its papers is typed, since it is read off to the pound.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::ask::{plain, set_tow, typed};
use crate::figures::Trip;
use crate::measure::{Measure, Quantity, Rounding, System, rounded};

/// A field of the tow vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Field {
    /// Payload on the door sticker.
    Payload,
    /// Most it may pull.
    Rating,
    /// Its length.
    Length,
    /// How far the ball stands behind the bumper.
    Mount,
}

/// Why what is typed cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Wrong {
    /// It is no number.
    NoNumber,
    /// It is beyond what any such vehicle has.
    Beyond {
        /// Least.
        low: u32,
        /// Most.
        high: u32,
    },
}

impl Field {
    /// All of them, in the order they are asked.
    pub(super) const ALL: [Self; 4] = [Self::Payload, Self::Rating, Self::Length, Self::Mount];

    /// Id of the text field.
    pub(super) const fn id(self) -> &'static str {
        match self {
            Self::Payload => "opening-tow-payload",
            Self::Rating => "opening-tow-rating",
            Self::Length => "opening-tow-length",
            Self::Mount => "opening-tow-mount",
        }
    }

    /// Key of the words that ask, with `$measure`.
    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::Payload => "opening-plan-tow-payload",
            Self::Rating => "opening-plan-tow-rating",
            Self::Length => "opening-plan-tow-length",
            Self::Mount => "opening-plan-tow-mount",
        }
    }

    /// The measure it is typed in.
    pub(super) const fn measure(self, system: System) -> Measure {
        match (self, system) {
            (Self::Payload | Self::Rating, System::Us) => Measure::Pound,
            (Self::Payload | Self::Rating, _) => Measure::Kilogram,
            (Self::Length | Self::Mount, System::Us) => Measure::Inch,
            (Self::Length | Self::Mount, _) => Measure::Centimeter,
        }
    }

    /// Least and most, from the smallest car to the largest truck that a lot will see.
    const fn bounds(self, system: System) -> (u32, u32) {
        match (self, system) {
            (Self::Payload, System::Us) => (200, 12_000),
            (Self::Payload, _) => (100, 5500),
            (Self::Rating, System::Us) => (500, 60_000),
            (Self::Rating, _) => (200, 27_000),
            (Self::Length, System::Us) => (90, 400),
            (Self::Length, _) => (230, 1000),
            (Self::Mount, System::Us) => (0, 60),
            (Self::Mount, _) => (0, 150),
        }
    }

    /// What is typed, as a quantity; none where nothing is.
    pub(super) fn read(self, text: &str, system: System) -> Result<Option<Quantity>, Wrong> {
        let text: String = text.chars().filter(|c| !c.is_whitespace()).collect();
        if text.is_empty() {
            return Ok(None);
        }
        let plain = text.len() <= 8 && text.chars().all(|c| c.is_ascii_digit() || c == '.');
        let number = if plain { Decimal::from_str_exact(&text).ok() } else { None };
        let number = number.ok_or(Wrong::NoNumber)?.normalize();
        let (low, high) = self.bounds(system);
        if number < Decimal::from(low) || number > Decimal::from(high) {
            return Err(Wrong::Beyond { low, high });
        }
        Ok(Some(Quantity::new(number, self.measure(system))))
    }

    /// What the trip says, as it would be typed in a reader's measures.
    pub(super) fn text(self, trip: &Trip, system: System) -> String {
        let Some(tow) = trip.tow else { return String::new() };
        let told = match self {
            Self::Payload => plain(tow.payload),
            Self::Rating => plain(tow.rating),
            Self::Length => plain(tow.length),
            Self::Mount => plain(tow.ball_mount),
        };
        let Some(told) = told else { return String::new() };
        let measure = self.measure(system);
        if told.measure() == measure {
            return told.amount().normalize().to_string();
        }
        // What it may carry is never told higher than it is, what it takes up never smaller.
        let rounding =
            if matches!(self, Self::Payload | Self::Rating) { Rounding::Down } else { Rounding::Up };
        let number = told.to(measure).and_then(|n| rounded(n, 0, rounding)).and_then(|n| n.to_i64());
        number.map_or_else(String::new, |n| n.to_string())
    }

    /// Puts what was typed into the trip; what is wrong is not told.
    pub(super) fn put(self, trip: &mut Trip, text: &str, system: System) {
        let quantity = self.read(text, system).ok().flatten();
        set_tow(trip, |tow| match self {
            Self::Payload => tow.payload = typed(quantity),
            Self::Rating => tow.rating = typed(quantity),
            Self::Length => tow.length = typed(quantity),
            Self::Mount => tow.ball_mount = typed(quantity),
        });
    }
}
