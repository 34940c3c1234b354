//! A quantity whose dimension is known to the compiler.

use std::fmt;
use std::marker::PhantomData;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{Dimension, Gallon, Measure, ParseFault, Quantity};

/// A dimension as a type; see [`super::dims`].
pub trait Dim: fmt::Debug + Copy + Eq + 'static {
    /// The same as a value.
    const DIMENSION: Dimension;
    /// The type of `uom` that computes with it.
    type Si: fmt::Debug + Copy + PartialEq + PartialOrd;
    /// A value of so many SI units.
    fn of_base(value: f64) -> Self::Si;
    /// How many SI units a value has.
    fn base(value: Self::Si) -> f64;
}

/// A quantity of the dimension `D`, kept as authored.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Of<D: Dim>(Quantity, PhantomData<D>);

impl<D: Dim> Of<D> {
    /// Takes a quantity of the right dimension.
    ///
    /// # Errors
    /// Which dimension was wanted and which was given.
    pub fn new(quantity: Quantity) -> Result<Self, ParseFault> {
        if quantity.dimension() == D::DIMENSION {
            return Ok(Self(quantity, PhantomData));
        }
        let wanted = D::DIMENSION.name();
        let what = match quantity.measure().symbol() {
            "" => format!("`{quantity}` has no measure, but {wanted} is wanted"),
            _ => format!("`{quantity}` is {}, but {wanted} is wanted", quantity.dimension().name()),
        };
        Err(ParseFault::new(0, what, format!("write it like `{}`", D::DIMENSION.example())))
    }

    /// The quantity as authored.
    #[must_use]
    pub const fn quantity(&self) -> &Quantity {
        &self.0
    }

    /// The value to compute with. Not a number while `gal` has not been resolved.
    #[must_use]
    pub fn si(&self) -> D::Si {
        D::of_base(self.0.si())
    }

    /// A computed value as a number of a measure; none when it is not a measure of this dimension. The
    /// customary units of `uom` itself are cut to seven digits and would lose whole pounds.
    #[must_use]
    pub fn number_of(si: D::Si, measure: Measure) -> Option<f64> {
        fits::<D>(measure).then(|| measure.of_si(D::base(si)))
    }

    /// A number of a measure as a value to compute with; none when it is not a measure of this dimension.
    #[must_use]
    pub fn si_of(number: f64, measure: Measure) -> Option<D::Si> {
        fits::<D>(measure).then(|| D::of_base(measure.to_si(number)))
    }

    /// The same quantity once it is known which gallon the lot means by `gal`.
    #[must_use]
    pub const fn resolve(self, gallon: Gallon) -> Self {
        Self(self.0.resolve(gallon), PhantomData)
    }
}

fn fits<D: Dim>(measure: Measure) -> bool {
    measure.dimension() == D::DIMENSION && measure.is_resolved()
}

impl<D: Dim> fmt::Display for Of<D> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl<D: Dim> FromStr for Of<D> {
    type Err = ParseFault;

    fn from_str(text: &str) -> Result<Self, ParseFault> {
        Self::new(Quantity::parse(text)?)
    }
}

impl<D: Dim> Serialize for Of<D> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(serializer)
    }
}

impl<'de, D: Dim> Deserialize<'de> for Of<D> {
    fn deserialize<R: Deserializer<'de>>(deserializer: R) -> Result<Self, R::Error> {
        deserializer.deserialize_str(Text(PhantomData))
    }
}

struct Text<D>(PhantomData<D>);

impl<D: Dim> serde::de::Visitor<'_> for Text<D> {
    type Value = Of<D>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} as a text, such as \"{}\"", D::DIMENSION.name(), D::DIMENSION.example())
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Of<D>, E> {
        text.parse().map_err(E::custom)
    }
}
