//! Reading a quantity, with a fault that says where, what, and what to write instead.

use rust_decimal::Decimal;

use super::spelling::measure;
use super::{Measure, Number, Quantity};

/// Longest text that can be a quantity, in characters.
const LONGEST: usize = 40;
/// Most digits of a number, before and after the point together.
const DIGITS: usize = 15;
/// Most digits after the point.
const DECIMALS: usize = 9;
/// Largest number; the rest is a slip of the finger.
const LARGEST: i64 = 1_000_000_000;
/// Largest number below or above a stroke.
const LARGEST_PART: u32 = 1_000;

/// Why a text is not a quantity, or not the quantity that was wanted.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{what}; {hint}")]
pub struct ParseFault {
    /// Where in the text, in characters from 0.
    pub at: usize,
    /// What is wrong.
    pub what: String,
    /// What to do about it.
    pub hint: String,
}

impl ParseFault {
    pub(crate) fn new(at: usize, what: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { at, what: what.into(), hint: hint.into() }
    }
}

/// The characters of the text and how far it has been read.
pub(super) struct Cursor {
    chars: Vec<char>,
    pub(super) at: usize,
}

impl Cursor {
    fn peek(&self) -> Option<char> {
        self.chars.get(self.at).copied()
    }

    fn skip_blank(&mut self) {
        while self.peek().is_some_and(char::is_whitespace) {
            self.at += 1;
        }
    }

    fn digits(&mut self) -> String {
        let mut found = String::new();
        while let Some(digit) = self.peek().filter(char::is_ascii_digit) {
            found.push(digit);
            self.at += 1;
        }
        found
    }

    pub(super) fn rest(&self) -> String {
        self.chars.get(self.at..).unwrap_or_default().iter().collect()
    }

    pub(super) fn word(&self) -> String {
        self.chars.get(self.at..).unwrap_or_default().iter().take_while(|c| !c.is_whitespace()).collect()
    }
}

pub(super) fn quantity(text: &str) -> Result<Quantity, ParseFault> {
    let chars: Vec<char> = text.chars().take(LONGEST + 1).collect();
    if chars.len() > LONGEST {
        return Err(ParseFault::new(
            LONGEST,
            "this is too long to be one quantity",
            "write one number and its measure, as in `40 gal`",
        ));
    }
    let mut cursor = Cursor { chars, at: 0 };
    cursor.skip_blank();
    if cursor.peek().is_none() {
        return Err(ParseFault::new(
            0,
            "the quantity is empty",
            "write a number and its measure, as in `40 gal`",
        ));
    }
    let number = number(&mut cursor)?;
    cursor.skip_blank();
    if cursor.peek().is_none() {
        return Ok(Quantity::new(number, Measure::Fraction));
    }
    let measure_at = cursor.at;
    let measure = measure(&mut cursor)?;
    cursor.skip_blank();
    if measure == Measure::Foot && cursor.peek().is_some_and(|c| c.is_ascii_digit()) {
        return feet_and_inches(&mut cursor, number);
    }
    if cursor.peek().is_some() {
        let extra = cursor.rest();
        return Err(ParseFault::new(
            cursor.at,
            format!("`{}` follows a quantity that is already whole", extra.trim_end()),
            "leave it out; only feet and inches may be written together",
        ));
    }
    checked(Quantity::new(number, measure), measure_at)
}

/// Colder than the absolute zero there is nothing.
fn checked(quantity: Quantity, at: usize) -> Result<Quantity, ParseFault> {
    if quantity.dimension() == super::Dimension::Temperature && quantity.si() < 0.0 {
        return Err(ParseFault::new(
            at,
            format!("{quantity} is below the absolute zero"),
            "check the number and whether °F or °C was meant",
        ));
    }
    Ok(quantity)
}

fn feet_and_inches(cursor: &mut Cursor, feet: Number) -> Result<Quantity, ParseFault> {
    let inches_at = cursor.at;
    let Number::Decimal(feet) = feet else {
        return Err(ParseFault::new(
            0,
            "feet with a fraction and inches cannot stand together",
            "write whole feet before the inches, as in `11 ft 3 in`",
        ));
    };
    if !feet.fract().is_zero() {
        return Err(ParseFault::new(
            0,
            "feet with a point and inches cannot stand together",
            "write whole feet before the inches, as in `11 ft 3 in`",
        ));
    }
    let inches = number(cursor)?;
    cursor.skip_blank();
    let measure_at = cursor.at;
    if cursor.peek().is_none() || measure(cursor)? != Measure::Inch {
        return Err(ParseFault::new(
            measure_at,
            "after feet only inches can follow",
            "end with `in`, as in `11 ft 3 in`",
        ));
    }
    cursor.skip_blank();
    if cursor.peek().is_some() {
        let extra = cursor.rest();
        return Err(ParseFault::new(
            cursor.at,
            format!("`{}` follows the inches", extra.trim_end()),
            "leave it out",
        ));
    }
    if inches.to_decimal() >= Decimal::from(12) {
        return Err(ParseFault::new(
            inches_at,
            format!("{inches} inches are a foot or more"),
            "write fewer than 12 inches after the feet, or inches alone",
        ));
    }
    Ok(Quantity::new(sum_of_inches(feet, inches), Measure::FootInch))
}

fn sum_of_inches(feet: Decimal, inches: Number) -> Number {
    let minus = feet.is_sign_negative();
    let whole = feet.abs() * Decimal::from(12);
    match inches {
        Number::Decimal(inches) => {
            let sum = whole + inches;
            Number::Decimal(if minus { -sum } else { sum })
        }
        Number::Mixed { whole: own, over, under, .. } => Number::Mixed {
            negative: minus,
            // Feet are held to LARGEST when they are read; what does not fit is held at the edge.
            whole: whole.to_string().parse::<u32>().unwrap_or(u32::MAX - 11).saturating_add(own),
            over,
            under,
        },
    }
}

fn number(cursor: &mut Cursor) -> Result<Number, ParseFault> {
    let start = cursor.at;
    let negative = matches!(cursor.peek(), Some('-' | '\u{2212}'));
    if negative || cursor.peek() == Some('+') {
        cursor.at += 1;
    }
    let whole = cursor.digits();
    if whole.is_empty() {
        let hint = if cursor.peek() == Some('.') {
            "write a 0 before the point"
        } else {
            "begin with a number, as in `40 gal`"
        };
        let word = cursor.word();
        return Err(ParseFault::new(start, format!("`{word}` is not a number"), hint));
    }
    if cursor.peek() == Some(',') {
        return Err(ParseFault::new(
            cursor.at,
            "a comma in a number can be misread by a thousand times",
            "leave out thousands commas and write a point before decimals: `3600 W`, `3.5 kW`",
        ));
    }
    if cursor.peek() == Some('/') {
        return fraction(cursor, negative, 0, &whole, start);
    }
    let before_blank = cursor.at;
    if let Some(mixed) = mixed(cursor, negative, &whole, start)? {
        return Ok(mixed);
    }
    cursor.at = before_blank;
    decimal(cursor, negative, whole, start)
}

fn decimal(cursor: &mut Cursor, negative: bool, whole: String, start: usize) -> Result<Number, ParseFault> {
    let mut text = whole;
    if cursor.peek() == Some('.') {
        cursor.at += 1;
        let decimals = cursor.digits();
        if decimals.is_empty() {
            return Err(ParseFault::new(
                cursor.at,
                "no digits follow the point",
                "write them, or leave out the point",
            ));
        }
        if matches!(cursor.peek(), Some('.' | ',')) {
            return Err(ParseFault::new(
                cursor.at,
                "a second point in one number",
                "keep only the one before the decimals",
            ));
        }
        if decimals.len() > DECIMALS {
            return Err(ParseFault::new(
                start,
                "too many digits after the point",
                "round it to what can be measured",
            ));
        }
        text = format!("{text}.{decimals}");
    }
    let too_large = || {
        ParseFault::new(
            start,
            format!("`{text}` is larger than anything on a lot"),
            "check the number of digits",
        )
    };
    if text.len() > DIGITS + 1 {
        return Err(too_large());
    }
    let value: Decimal = text.parse().map_err(|_| too_large())?;
    if value > Decimal::from(LARGEST) {
        return Err(too_large());
    }
    Ok(Number::Decimal(if negative && !value.is_zero() { -value } else { value }))
}

fn mixed(
    cursor: &mut Cursor,
    negative: bool,
    whole: &str,
    start: usize,
) -> Result<Option<Number>, ParseFault> {
    cursor.skip_blank();
    let over = cursor.digits();
    if over.is_empty() || cursor.peek() != Some('/') {
        return Ok(None);
    }
    let Some(whole) = whole.parse::<u32>().ok().filter(|whole| i64::from(*whole) <= LARGEST) else {
        return Err(ParseFault::new(
            start,
            "the number is larger than anything on a lot",
            "check the number of digits",
        ));
    };
    fraction(cursor, negative, whole, &over, start).map(Some)
}

fn fraction(
    cursor: &mut Cursor,
    negative: bool,
    whole: u32,
    over: &str,
    start: usize,
) -> Result<Number, ParseFault> {
    cursor.at += 1;
    let under = cursor.digits();
    let part = |text: &str| text.parse::<u32>().ok().filter(|value| *value <= LARGEST_PART);
    let (Some(over), Some(under)) = (part(over), part(&under)) else {
        return Err(ParseFault::new(
            start,
            "this is not a fraction that one can measure",
            "write two small whole numbers, as in `1/4`",
        ));
    };
    if under == 0 {
        return Err(ParseFault::new(
            start,
            "a fraction cannot be divided by 0",
            "write what the whole is cut into, as in `1/4`",
        ));
    }
    if over > under || (whole > 0 && over >= under) {
        return Err(ParseFault::new(
            start,
            format!("{over}/{under} is more than a whole"),
            "write the whole number before it, as in `2 5/16`",
        ));
    }
    Ok(Number::Mixed { negative, whole, over, under })
}
