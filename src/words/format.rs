//! The one door for numbers, measures, sums, lists and dates, in the reader's language and measures.
//!
//! Words and their order come from messages (`i18n/<language>/format.ftl`), digits from here.

mod dates;
mod measures;

use rust_decimal::Decimal;

use super::{Args, Reader, Words};
use crate::measure::{Money, System};

pub use dates::{date, date_time, date_time_with_offset, duration_minutes, month, time};
pub use measures::{Places, measure_key, quantity, quantity_args, quantity_number};

/// A number with the decimals it has: `2,819`, `0.125`.
#[must_use]
pub fn number(words: &Words, reader: &Reader, number: Decimal) -> String {
    let marks = words.marks(&reader.lang);
    let sign = if number.is_sign_negative() && !number.is_zero() { marks.minus.as_str() } else { "" };
    let plain = number.abs().to_string();
    let (whole, decimals) =
        plain.split_once('.').map_or((plain.as_str(), None), |(whole, part)| (whole, Some(part)));
    let mut text = String::from(sign);
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at).is_multiple_of(3) {
            text.push_str(&marks.group);
        }
        text.push(digit);
    }
    if let Some(decimals) = decimals {
        text.push_str(&marks.decimal);
        text.push_str(decimals);
    }
    text
}

/// A sum with its currency (ISO 4217 code): `$426.32`, `CHF 426.32`.
#[must_use]
pub fn money(words: &Words, reader: &Reader, sum: &Money, currency: &str) -> String {
    let amount = sum.amount();
    let sign = if amount.is_sign_negative() && !amount.is_zero() {
        words.marks(&reader.lang).minus.clone()
    } else {
        String::new()
    };
    let args = Args::new()
        .text("sign", sign)
        .text("amount", number(words, reader, amount.abs()))
        .text("currency", currency);
    let own = format!("money-{}", currency.to_ascii_lowercase());
    let known = words.try_say(reader, &own, &args).is_ok() || words.has(super::SOURCE_LANGUAGE, &own);
    words.say(reader, if known { own.as_str() } else { "money-other" }, &args)
}

/// Names one after the other by the rule of the language: `a`, `a and b`, `a, b, and c`.
#[must_use]
pub fn list(words: &Words, reader: &Reader, items: &[String]) -> String {
    let join = |key: &str, first: String, last: &str| {
        words.say(reader, key, &Args::new().text("first", first).text("last", last))
    };
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first, last] => join("list-two", first.clone(), last),
        [first, middle @ .., last] => {
            let before = middle.iter().fold(first.clone(), |before, item| join("list-middle", before, item));
            join("list-end", before, last)
        }
    }
}

/// The reader's measures as a word that messages select by: `us`, `uk`, `metric`.
#[must_use]
pub const fn system_word(system: System) -> &'static str {
    match system {
        System::Us => "us",
        System::Uk => "uk",
        System::Metric => "metric",
    }
}
