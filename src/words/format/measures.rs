//! Quantities with their measures.

use rust_decimal::Decimal;

use super::super::{Args, Reader, Words};
use super::number;
use crate::measure::{Measure, Number, Quantity, Rounding, Shown, rounded, shown_with_places};

/// Decimals of a number that stands in the measure it was authored or computed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Places {
    /// As it was written.
    AsWritten,
    /// Rounded to so many.
    Of(u32),
}

/// A quantity in the reader's measures: `11 ft 3 in (3.43 m)`, `15 mph (24 km/h)`, `1/4`.
///
/// `rounding` acts on numbers that are converted, and on the authored one when `places` says how many decimals
/// it gets. A conversion is never exact on paper: [`Rounding::Exact`] converts to the nearest.
#[must_use]
pub fn quantity(
    words: &Words,
    reader: &Reader,
    quantity: &Quantity,
    rounding: Rounding,
    places: Places,
) -> String {
    let mut texts = shown_with_places(quantity, reader.system).into_iter().map(|shown| {
        with_measure(words, reader, shown.measure, shown_number(quantity, shown, rounding, places))
    });
    let first = texts.next().unwrap_or_else(|| quantity.to_string());
    match texts.next() {
        None => first,
        Some(second) => {
            words.say(reader, "quantity-both", &Args::new().text("first", first).text("second", second))
        }
    }
}

/// The number as [`quantity`] shows it in the first measure, for selectors; of feet and inches the inches.
#[must_use]
pub fn quantity_number(reader: &Reader, quantity: &Quantity, rounding: Rounding) -> Decimal {
    let shown = shown_with_places(quantity, reader.system).into_iter().next();
    shown.map_or_else(
        || quantity.amount(),
        |shown| shown_number(quantity, shown, rounding, Places::AsWritten).to_decimal(),
    )
}

/// Both variables of a fact: `$name` for printing, `$name_n` for selectors.
#[must_use]
pub fn quantity_args(
    words: &Words,
    reader: &Reader,
    name: &str,
    value: &Quantity,
    rounding: Rounding,
) -> Args {
    let text = quantity(words, reader, value, rounding, Places::AsWritten);
    Args::new().measured(name, text, quantity_number(reader, value, rounding))
}

/// The message that names a measure: `measure-gallon-us`.
#[must_use]
pub fn measure_key(measure: Measure) -> String {
    let mut key = String::from("measure");
    for c in format!("{measure:?}").chars() {
        if c.is_ascii_uppercase() {
            key.push('-');
        }
        key.push(c.to_ascii_lowercase());
    }
    key
}

fn shown_number(quantity: &Quantity, shown: Shown, rounding: Rounding, places: Places) -> Number {
    let authored = quantity.measure();
    // Inches stay the same number when they are read as feet and inches.
    let same = authored == shown.measure || (authored == Measure::Inch && shown.measure == Measure::FootInch);
    if same {
        return match places {
            Places::AsWritten => quantity.number(),
            Places::Of(places) => rounded(quantity.number().to_f64(), places, rounding)
                .map_or_else(|| quantity.number(), Number::Decimal),
        };
    }
    let direction =
        if authored.is_inverse() == shown.measure.is_inverse() { rounding } else { rounding.flipped() };
    let direction = if direction == Rounding::Exact { Rounding::Nearest } else { direction };
    let converted = quantity.to(shown.measure).and_then(|value| rounded(value, shown.places, direction));
    converted.map_or_else(|| quantity.number(), Number::Decimal)
}

fn with_measure(words: &Words, reader: &Reader, measure: Measure, value: Number) -> String {
    if measure == Measure::Fraction {
        return written(words, reader, value);
    }
    if measure == Measure::FootInch {
        let (feet, inches) = value.abs().feet_and_inches();
        let sign = if value.is_negative() { words.marks(&reader.lang).minus.as_str() } else { "" };
        let feet = number(words, reader, Decimal::from(feet));
        let args =
            Args::new().text("feet", format!("{sign}{feet}")).text("inches", written(words, reader, inches));
        return words.say(reader, &measure_key(measure), &args);
    }
    let args = Args::new().text("amount", written(words, reader, value)).number("n", value.to_decimal());
    words.say(reader, &measure_key(measure), &args)
}

/// A number as it was written, in the marks of the language.
fn written(words: &Words, reader: &Reader, value: Number) -> String {
    match value {
        Number::Decimal(decimal) => number(words, reader, decimal),
        Number::Mixed { negative, whole, over, under } => {
            let sign = if negative { words.marks(&reader.lang).minus.as_str() } else { "" };
            if whole == 0 {
                return format!("{sign}{over}/{under}");
            }
            let whole = number(words, reader, Decimal::from(whole));
            format!("{sign}{whole}\u{A0}{over}/{under}")
        }
    }
}
