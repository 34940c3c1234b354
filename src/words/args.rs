//! The values that a message is filled with.

use std::collections::BTreeMap;

use fluent_bundle::types::{FluentNumber, FluentNumberOptions};
use fluent_bundle::{FluentArgs, FluentValue};
use rust_decimal::{Decimal, RoundingStrategy};

use crate::measure::Rounding;
use crate::measure::rounding::rounded_decimal;

/// Decimals of a number that a selector can see; plural rules overflow far beyond.
const PLACES: u32 = 6;
/// Significant digits of it: those that a double keeps.
const DIGITS: u32 = 15;

/// One value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Value {
    /// To be printed, or to select by name.
    Text(String),
    /// To select by number or by plural.
    Number(Decimal),
}

/// Values by name, without the `$`.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Args(BTreeMap<String, Value>);

impl Args {
    /// None.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// With a text.
    #[must_use]
    pub fn text(mut self, name: &str, text: impl Into<String>) -> Self {
        self.set(name, Value::Text(text.into()));
        self
    }

    /// With a number.
    #[must_use]
    pub fn number(mut self, name: &str, number: impl Into<Decimal>) -> Self {
        self.set(name, Value::Number(number.into()));
        self
    }

    /// With both variables of a measured value: `$name` as text, `$name_n` as the number shown.
    #[must_use]
    pub fn measured(self, name: &str, text: impl Into<String>, number: Decimal) -> Self {
        self.text(name, text).number(&format!("{name}_n"), number)
    }

    /// Sets one value.
    pub fn set(&mut self, name: &str, value: Value) {
        self.0.insert(name.to_owned(), value);
    }

    /// Takes over the values of others; theirs win.
    pub fn extend(&mut self, others: Self) {
        self.0.extend(others.0);
    }

    /// One value.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Value> {
        self.0.get(name)
    }

    /// The names that have a value.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }

    pub(super) fn fluent(&self) -> FluentArgs<'_> {
        self.0.iter().map(|(name, value)| (name.as_str(), fluent(value))).collect()
    }
}

fn fluent(value: &Value) -> FluentValue<'_> {
    match value {
        Value::Text(text) => text.as_str().into(),
        Value::Number(number) => {
            let number = rounded_decimal(*number, PLACES, Rounding::Nearest);
            // What plural rules cannot take is printed, and selects the default.
            if number.abs() >= Decimal::from(1_000_000_000_000_i64) {
                return number.normalize().to_string().into();
            }
            let number = number
                .round_sf_with_strategy(DIGITS, RoundingStrategy::MidpointAwayFromZero)
                .unwrap_or(number);
            // Trailing zeros would keep `[2]` from matching 2.0.
            let number = number.normalize();
            let scale = usize::try_from(number.scale()).ok().filter(|scale| *scale > 0);
            let options =
                FluentNumberOptions { minimum_fraction_digits: scale, ..FluentNumberOptions::default() };
            FluentNumber::new(crate::measure::decimal_to_f64(number), options).into()
        }
    }
}
