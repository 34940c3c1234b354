//! How far a reading may go before staff are told of it.

use rust_decimal::Decimal;
use serde::Deserialize;

use super::kinds::Scale;
use super::step::Reading;
use crate::figures::{self, Given};
use crate::measure::{Quantity, Rounding, rounded};
use crate::unit::{AxleAt, Facts};

/// Where a bound of a reading comes from.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Bound {
    /// The same for every unit, as `12.2 V`.
    Value(String),
    /// A fact of the unit or the lot, as `house.low`.
    Fact(String),
    /// What a figure gives for one axle, as `tire_add_air`.
    Figure(String, AxleAt),
}

impl Bound {
    /// The bound for a unit; none where the unit does not have it or nobody has read it yet.
    #[must_use]
    pub fn of(&self, facts: &Facts) -> Option<Quantity> {
        match self {
            Self::Value(text) => Quantity::parse(text).ok(),
            Self::Fact(name) => facts.quantity(name).copied(),
            Self::Figure(id, axle) => {
                let at = facts.lists().axles.iter().position(|a| a.at == *axle)?;
                figures::one(id, Given { facts, trip: None })?.values.get(at).copied()
            }
        }
    }
}

/// The bounds of a reading on one unit, in the measure it is read in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Bounds {
    /// Least that is right.
    pub least: Option<Decimal>,
    /// Most that is right.
    pub most: Option<Decimal>,
}

impl Bounds {
    /// The bounds of a scale on a unit. One of another measure is rounded to the safe side, to a step of the scale.
    #[must_use]
    pub fn of(scale: &Scale, facts: &Facts) -> Self {
        let Scale::Number { measure, step, least, most, .. } = scale else { return Self::default() };
        let Ok(read_in) = Quantity::parse(&format!("1 {measure}")).map(|one| one.measure()) else {
            return Self::default();
        };
        let amount = |bound: &Bound, rounding: Rounding| {
            let bound = bound.of(facts)?;
            if bound.measure() == read_in {
                return Some(bound.amount().normalize());
            }
            rounded(bound.to(read_in)?, step.normalize().scale(), rounding)
        };
        Self {
            least: least.as_ref().and_then(|bound| amount(bound, Rounding::Up)),
            most: most.as_ref().and_then(|bound| amount(bound, Rounding::Down)),
        }
    }
}

/// On which side of its bounds a value lies, and the bound it passes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Off {
    /// Below the least.
    Below(Decimal),
    /// Above the most.
    Above(Decimal),
}

impl Reading {
    /// Whether a value, in the measure it is read in, lies out of the bounds. Nothing is said of what is no number.
    #[must_use]
    pub fn off(&self, value: &str) -> Option<Off> {
        let value = Decimal::from_str_exact(value).ok()?;
        let below = self.bounds.least.filter(|least| value < *least).map(Off::Below);
        below.or_else(|| self.bounds.most.filter(|most| value > *most).map(Off::Above))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(least: Option<i64>, most: Option<i64>) -> Reading {
        let of = |tenths: i64| Decimal::new(tenths, 1);
        let scale = Scale::Choice(Vec::new());
        Reading { id: "volts".into(), scale, bounds: Bounds { least: least.map(of), most: most.map(of) } }
    }

    #[test]
    fn a_bound_itself_is_right() {
        let volts = reading(Some(122), Some(148));
        for right in ["12.2", "12.20", "13", "14.8"] {
            assert_eq!(volts.off(right), None, "{right}");
        }
        assert_eq!(volts.off("12.1"), Some(Off::Below(Decimal::new(122, 1))));
        assert_eq!(volts.off("14.9"), Some(Off::Above(Decimal::new(148, 1))));
    }

    #[test]
    fn without_bounds_and_without_a_number_nothing_is_said() {
        assert_eq!(reading(None, None).off("0"), None);
        let volts = reading(Some(122), None);
        for word in ["", "7/8", "lamp-on", "99999999999999999999999999999999"] {
            assert_eq!(volts.off(word), None, "{word}");
        }
    }
}
