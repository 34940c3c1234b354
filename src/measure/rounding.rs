//! The one door through which a computed value becomes a number that is shown.
//!
//! What you have is rounded down, what you need up, what you must not pass down, set points to the nearest.
//! The double is first rounded half-even to 12 significant digits (and to 9 decimals, so that the noise of a
//! difference is not taken for something), or a whole pound would now and then come out one short.

use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};

/// Most decimals of a number that is shown.
pub const MOST_PLACES: u32 = 9;

/// In which direction a number is rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Rounding {
    /// Toward the smaller number, also below zero: what you have, what you must not pass.
    Down,
    /// Toward the larger number, also below zero: what you need; frost limits in °C.
    Up,
    /// To the nearest, halves away from zero: set points, sizes, money.
    Nearest,
    /// Not at all, beyond the 12 digits that a computed value has.
    Exact,
}

impl Rounding {
    /// The direction for a measure that runs the other way.
    #[must_use]
    pub const fn flipped(self) -> Self {
        match self {
            Self::Down => Self::Up,
            Self::Up => Self::Down,
            same => same,
        }
    }

    const fn strategy(self) -> Option<RoundingStrategy> {
        match self {
            Self::Down => Some(RoundingStrategy::ToNegativeInfinity),
            Self::Up => Some(RoundingStrategy::ToPositiveInfinity),
            Self::Nearest => Some(RoundingStrategy::MidpointAwayFromZero),
            Self::Exact => None,
        }
    }
}

/// A double as the decimal it was meant to be: 12 significant digits, at most 9 decimals. None for what is not
/// a number, infinite, or beyond the reach of a decimal.
#[must_use]
pub fn settled(value: f64) -> Option<Decimal> {
    if !value.is_finite() {
        return None;
    }
    if value.abs() < 1e-10 {
        return Some(Decimal::ZERO);
    }
    let decimal = Decimal::from_scientific(&format!("{value:.11e}")).ok()?;
    Some(plain(
        decimal.round_dp_with_strategy(MOST_PLACES, RoundingStrategy::MidpointNearestEven).normalize(),
    ))
}

/// A computed value with so many decimals. None for what is not a number, infinite, or far out of reach.
#[must_use]
pub fn rounded(value: f64, places: u32, rounding: Rounding) -> Option<Decimal> {
    settled(value).map(|decimal| rounded_decimal(decimal, places, rounding))
}

/// A computed value in whole steps, as `0.125` for eighths. None for what is not a number, or for a step that
/// is not above zero.
#[must_use]
pub fn rounded_to_step(value: f64, step: Decimal, rounding: Rounding) -> Option<Decimal> {
    if step <= Decimal::ZERO {
        return None;
    }
    let Some(strategy) = rounding.strategy() else { return settled(value) };
    let steps = settled(value)?.checked_div(step)?.round_dp_with_strategy(0, strategy);
    steps.checked_mul(step).map(plain)
}

/// An exact decimal with so many decimals; [`Rounding::Exact`] leaves it as it is.
#[must_use]
pub fn rounded_decimal(value: Decimal, places: u32, rounding: Rounding) -> Decimal {
    let Some(strategy) = rounding.strategy() else { return plain(value) };
    let places = places.min(MOST_PLACES);
    let mut shown = value.round_dp_with_strategy(places, strategy);
    shown.rescale(places);
    plain(shown)
}

/// There is no minus before zero.
fn plain(mut value: Decimal) -> Decimal {
    if value.is_zero() {
        value.set_sign_positive(true);
    }
    value
}
