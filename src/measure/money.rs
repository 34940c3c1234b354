//! Sums of money: decimals with two places, never floats.

use std::fmt;
use std::str::FromStr;

use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Why a text is not a sum of money, or a sum cannot be worked out.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum MoneyFault {
    /// Not digits, a point and two digits.
    #[error(
        "`{0}` is not a sum of money; write it like \"45.00\", without a currency sign or thousands comma"
    )]
    NotMoney(String),
    /// One digit after the point, or more than two.
    #[error("`{0}` has not two digits after the point; write whole cents, like \"45.50\"")]
    Places(String),
    /// Far beyond any bill of a lot.
    #[error("a sum is beyond 999,999,999.99; check the prices and counts that it came from")]
    TooLarge,
}

/// A sum in the currency of the lot, to the cent.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Money(Decimal);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(Decimal::ZERO);

    /// The sum as a decimal with two places.
    #[must_use]
    pub fn amount(self) -> Decimal {
        let mut amount = self.0;
        amount.rescale(2);
        amount
    }

    /// A sum to the cent, halves away from zero, as bills round.
    ///
    /// # Errors
    /// When the sum is beyond any bill.
    pub fn round_half_up(sum: Decimal) -> Result<Self, MoneyFault> {
        Self::bounded(sum.round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero))
    }

    /// The sum of two.
    ///
    /// # Errors
    /// When the sum is beyond any bill.
    pub fn plus(self, other: Self) -> Result<Self, MoneyFault> {
        Self::bounded(self.0 + other.0)
    }

    /// What is left.
    ///
    /// # Errors
    /// When the difference is beyond any bill.
    pub fn minus(self, other: Self) -> Result<Self, MoneyFault> {
        Self::bounded(self.0 - other.0)
    }

    /// So many times the sum, to the cent, half up.
    ///
    /// # Errors
    /// When the product is beyond any bill.
    pub fn times(self, factor: Decimal) -> Result<Self, MoneyFault> {
        self.0.checked_mul(factor).ok_or(MoneyFault::TooLarge).and_then(Self::round_half_up)
    }

    fn bounded(sum: Decimal) -> Result<Self, MoneyFault> {
        if sum.abs() >= Decimal::from(1_000_000_000) {
            return Err(MoneyFault::TooLarge);
        }
        let mut sum = sum;
        sum.rescale(2);
        if sum.is_zero() {
            sum.set_sign_positive(true);
        }
        Ok(Self(sum))
    }
}

impl FromStr for Money {
    type Err = MoneyFault;

    fn from_str(text: &str) -> Result<Self, MoneyFault> {
        let not_money = || MoneyFault::NotMoney(text.chars().take(20).collect());
        let digits = text.strip_prefix('-').unwrap_or(text);
        let (whole, cents) =
            digits.split_once('.').map_or((digits, None), |(whole, cents)| (whole, Some(cents)));
        let all_digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        if !all_digits(whole) || cents.is_some_and(|cents| !all_digits(cents)) {
            return Err(not_money());
        }
        if cents.is_some_and(|cents| cents.len() != 2) {
            return Err(MoneyFault::Places(text.chars().take(20).collect()));
        }
        if whole.len() > 9 {
            return Err(MoneyFault::TooLarge);
        }
        text.parse::<Decimal>().map_err(|_| not_money()).and_then(Self::bounded)
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.amount().fmt(f)
    }
}

impl Serialize for Money {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Money {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(MoneyText)
    }
}

struct MoneyText;

impl serde::de::Visitor<'_> for MoneyText {
    type Value = Money;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a sum of money as a text, such as \"45.00\"")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Money, E> {
        text.parse().map_err(E::custom)
    }
}
