//! A quantity as it was authored: the number with its measure.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{Dimension, Gallon, Measure, ParseFault};

/// A number as it was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Number {
    /// `40`, `7.0`, `-6`. Trailing zeros are kept.
    Decimal(Decimal),
    /// `1/4`, `2 5/16`.
    Mixed {
        /// Below zero.
        negative: bool,
        /// The whole part; 0 when only a fraction was written.
        whole: u32,
        /// Above the stroke.
        over: u32,
        /// Below the stroke; never 0.
        under: u32,
    },
}

impl Number {
    /// The nearest double.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        match self {
            Self::Decimal(decimal) => decimal_to_f64(decimal),
            Self::Mixed { negative, whole, over, under } => {
                let over = f64::from(whole) * f64::from(under) + f64::from(over);
                let value = over / f64::from(under);
                if negative { -value } else { value }
            }
        }
    }

    /// The number as a decimal; thirds are cut after 28 digits.
    #[must_use]
    pub fn to_decimal(self) -> Decimal {
        match self {
            Self::Decimal(decimal) => decimal,
            Self::Mixed { negative, whole, over, under } => {
                let part = Decimal::from(over).checked_div(Decimal::from(under)).unwrap_or_default();
                let value = Decimal::from(whole) + part;
                if negative { -value } else { value }
            }
        }
    }

    /// Below zero.
    #[must_use]
    pub fn is_negative(self) -> bool {
        match self {
            Self::Decimal(decimal) => decimal.is_sign_negative() && !decimal.is_zero(),
            Self::Mixed { negative, .. } => negative,
        }
    }

    /// Without its sign.
    #[must_use]
    pub fn abs(self) -> Self {
        match self {
            Self::Decimal(decimal) => Self::Decimal(decimal.abs()),
            Self::Mixed { whole, over, under, .. } => Self::Mixed { negative: false, whole, over, under },
        }
    }

    /// Feet and the inches left over, for a number of inches that is not negative.
    #[must_use]
    pub fn feet_and_inches(self) -> (u32, Self) {
        let twelve = Decimal::from(12);
        match self {
            Self::Decimal(decimal) => {
                let inches = decimal.checked_rem(twelve).unwrap_or_default();
                let feet = ((decimal - inches) / twelve).trunc().to_string().parse().unwrap_or(u32::MAX);
                (feet, Self::Decimal(inches))
            }
            Self::Mixed { negative, whole, over, under } => {
                (whole / 12, Self::Mixed { negative, whole: whole % 12, over, under })
            }
        }
    }
}

impl From<Decimal> for Number {
    fn from(decimal: Decimal) -> Self {
        Self::Decimal(decimal)
    }
}

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Decimal(decimal) => write!(f, "{decimal}"),
            Self::Mixed { negative, whole, over, under } => {
                if negative {
                    f.write_str("-")?;
                }
                if whole != 0 {
                    write!(f, "{whole} ")?;
                }
                write!(f, "{over}/{under}")
            }
        }
    }
}

/// Powers of ten that a double holds exactly.
const TENS: [f64; 16] =
    [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

/// The double nearest to a decimal: one division of two exact doubles where that is possible.
pub(crate) fn decimal_to_f64(decimal: Decimal) -> f64 {
    const EXACT: i128 = 1 << 53;
    let mantissa = decimal.mantissa();
    let below = usize::try_from(decimal.scale()).ok().and_then(|scale| TENS.get(scale));
    if let Some(below) = below.filter(|_| mantissa.abs() <= EXACT) {
        #[allow(clippy::cast_precision_loss, reason = "the mantissa is below 2^53")]
        let above = mantissa as f64;
        return above / below;
    }
    // A decimal is always a number that a double can be read from.
    decimal.to_string().parse().unwrap_or(f64::NAN)
}

/// A number with its measure, as authored. Two quantities are equal when number and measure are: `12 in` is
/// not `1 ft`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Quantity {
    number: Number,
    measure: Measure,
}

impl Quantity {
    /// A quantity of a number and a measure. Feet and inches are counted in inches.
    #[must_use]
    pub fn new(number: impl Into<Number>, measure: Measure) -> Self {
        Self { number: number.into(), measure }
    }

    /// Reads `40 gal`, `11 ft 3 in`, `1/4`, `35 %`, `-6 °C`.
    ///
    /// # Errors
    /// What cannot be a quantity, where, and what to write instead.
    pub fn parse(text: &str) -> Result<Self, ParseFault> {
        super::parse::quantity(text)
    }

    /// The number as written; of feet and inches the inches in all.
    #[must_use]
    pub const fn number(&self) -> Number {
        self.number
    }

    /// The number as a decimal.
    #[must_use]
    pub fn amount(&self) -> Decimal {
        self.number.to_decimal()
    }

    /// The measure as written.
    #[must_use]
    pub const fn measure(&self) -> Measure {
        self.measure
    }

    /// What it measures.
    #[must_use]
    pub const fn dimension(&self) -> Dimension {
        self.measure.dimension()
    }

    /// The same quantity once it is known which gallon the lot means by `gal`.
    #[must_use]
    pub const fn resolve(self, gallon: Gallon) -> Self {
        Self { measure: self.measure.resolve(gallon), number: self.number }
    }

    /// False while it speaks of `gal` without saying which; it then converts to nothing.
    #[must_use]
    pub const fn is_resolved(&self) -> bool {
        self.measure.is_resolved()
    }

    /// The value in the SI unit of its dimension (temperature in kelvin). Not a number while a gallon of the
    /// lot is not resolved: better no figure than one that is a fifth off.
    #[must_use]
    pub fn si(&self) -> f64 {
        self.measure.to_si(self.number.to_f64())
    }

    /// The number of another measure; none when the dimension differs or a gallon is not resolved.
    #[must_use]
    pub fn to(&self, measure: Measure) -> Option<f64> {
        self.measure.convert(self.number.to_f64(), measure)
    }
}

impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.measure {
            Measure::FootInch => {
                if self.number.is_negative() {
                    f.write_str("-")?;
                }
                let (feet, inches) = self.number.abs().feet_and_inches();
                write!(f, "{feet} ft {inches} in")
            }
            Measure::Fraction => write!(f, "{}", self.number),
            measure => write!(f, "{} {}", self.number, measure.symbol()),
        }
    }
}

impl FromStr for Quantity {
    type Err = ParseFault;

    fn from_str(text: &str) -> Result<Self, ParseFault> {
        Self::parse(text)
    }
}

impl Serialize for Quantity {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Quantity {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(QuantityText)
    }
}

struct QuantityText;

impl serde::de::Visitor<'_> for QuantityText {
    type Value = Quantity;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a text with a number and its measure, such as \"40 gal\"")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Quantity, E> {
        Quantity::parse(text).map_err(E::custom)
    }
}
