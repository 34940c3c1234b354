//! Limits on what may be said: lengths, forms, ranges. Refuses, never shortens.

use rust_decimal::Decimal;

use super::Refused;
use super::event::{Ink, Shown};
use crate::figures::Trip;
use crate::route::{Reading, Scale};

/// Most characters of a note, reason, remark or question.
pub const NOTE_MAX: usize = 500;
/// Most characters of a name.
pub const NAME_MAX: usize = 80;
/// Most people of a party.
pub const PEOPLE_MAX: usize = 12;
/// Most nights of a trip.
pub const NIGHTS_MAX: usize = 365;
/// Most strokes of a signature.
pub const STROKES_MAX: usize = 400;
/// Most points of a signature.
pub const POINTS_MAX: usize = 20_000;
/// Most events of a walk, closing events aside.
pub const EVENTS_MAX: usize = 20_000;
/// Ink that spans less than this in both directions is a dot; the field is 1000 wide.
const DOT: i32 = 20;

/// A text that may be empty.
pub(super) fn text(field: &'static str, value: &str, max: usize) -> Result<(), Refused> {
    if value.chars().count() > max {
        return Err(Refused::TooLong { field, max });
    }
    if value.chars().any(unprintable) { Err(Refused::Unprintable { field }) } else { Ok(()) }
}

/// Controls, and what would turn a printed line round or break it: bidi overrides and isolates, line separators.
fn unprintable(c: char) -> bool {
    let turns = matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    let breaks = matches!(c, '\u{2028}' | '\u{2029}' | '\u{feff}');
    turns || breaks || (c.is_control() && c != '\n')
}

/// A text that must say something.
pub(super) fn words(field: &'static str, value: &str, max: usize) -> Result<(), Refused> {
    if value.trim().is_empty() {
        return Err(Refused::Empty { field });
    }
    text(field, value, max)
}

/// A name or code on one line.
pub(super) fn name(field: &'static str, value: &str, max: usize) -> Result<(), Refused> {
    words(field, value, max)?;
    if value.contains('\n') { Err(Refused::Unprintable { field }) } else { Ok(()) }
}

/// An id that is safe as the name of a file.
pub(super) fn id(field: &'static str, value: &str) -> Result<(), Refused> {
    let fits = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    if value.is_empty() || value.len() > 64 || value.starts_with('-') || !value.chars().all(fits) {
        return Err(Refused::Form { field, form: "1 to 64 of a-z, 0-9 and -, not starting with -" });
    }
    Ok(())
}

/// A SHA-256 in hex.
pub(super) fn digest(field: &'static str, value: &str) -> Result<(), Refused> {
    let hex = |c: char| c.is_ascii_digit() || matches!(c, 'a'..='f');
    if value.len() == 64 && value.chars().all(hex) {
        Ok(())
    } else {
        Err(Refused::Form { field, form: "64 hex digits in small letters" })
    }
}

/// A language tag, as `en-US`.
pub(super) fn language(value: &str) -> Result<(), Refused> {
    let fits = |part: &str| (1..=8).contains(&part.len()) && part.chars().all(|c| c.is_ascii_alphanumeric());
    if value.len() <= 35 && value.split('-').all(fits) {
        Ok(())
    } else {
        Err(Refused::Form { field: "language", form: "a language tag, as en-US" })
    }
}

/// The words that were on the page.
pub(super) fn shown(shown: &Shown) -> Result<(), Refused> {
    digest("digest of the page", &shown.text)?;
    language(&shown.language)
}

/// A plan of a trip: lists no longer than the longest trip.
pub(super) fn trip(trip: &Trip) -> Result<(), Refused> {
    let longest = NIGHTS_MAX.max(PEOPLE_MAX);
    let lists = [
        trip.people.len(),
        trip.hook_up.len(),
        trip.on.len(),
        trip.fill.len(),
        trip.empty.len(),
        trip.refill.len(),
        trip.refuel.len(),
        trip.returned.as_ref().map_or(0, |r| r.missing.len()),
    ];
    let count = lists.iter().max().copied().unwrap_or(0);
    let (count, max) = (i64::try_from(count).unwrap_or(i64::MAX), i64::try_from(longest).unwrap_or(i64::MAX));
    range("length of a list of the trip", count, 0, max)?;
    let loads = trip.on.iter().map(|on| on.load.as_str());
    let words = loads.chain(trip.leaves.as_deref()).chain(trip.cord.as_ref().map(|c| c.gauge.as_str()));
    words.into_iter().try_for_each(|word| text("word of the trip", word, NAME_MAX))
}

/// A whole number within a range.
pub(super) fn range(field: &'static str, value: i64, min: i64, max: i64) -> Result<(), Refused> {
    if (min..=max).contains(&value) { Ok(()) } else { Err(Refused::Range { field, min, max }) }
}

/// Offset from UTC in minutes, from UTC-12 to UTC+14.
pub(super) fn offset(minutes: i16) -> Result<(), Refused> {
    range("offset from UTC in minutes", i64::from(minutes), -12 * 60, 14 * 60)
}

/// A finished signature.
pub(super) fn ink(ink: &Ink) -> Result<(), Refused> {
    let count = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
    range("height of the field", i64::from(ink.height), 1, 4000)?;
    range("number of strokes", count(ink.strokes.len()), 1, count(STROKES_MAX))?;
    let points = || ink.strokes.iter().flatten();
    range("number of points", count(points().count()), 1, count(POINTS_MAX))?;
    if ink.strokes.iter().any(Vec::is_empty) {
        return Err(Refused::Dot);
    }
    let span = |of: fn(&(i16, i16)) -> i16| {
        let low = points().map(of).min().map_or(0, i32::from);
        points().map(of).max().map_or(0, i32::from) - low
    };
    if span(|p| p.0) < DOT && span(|p| p.1) < DOT { Err(Refused::Dot) } else { Ok(()) }
}

/// A value as it was read, against the scale of its reading.
pub(super) fn reading(reading: &Reading, value: &str, measure: &str) -> Result<(), Refused> {
    let expected = match &reading.scale {
        Scale::Number { measure, .. } => measure.as_str(),
        Scale::Parts(_) | Scale::Choice(_) => "",
    };
    if measure != expected {
        return Err(Refused::OtherMeasure {
            reading: reading.id.clone(),
            measure: measure.chars().take(20).collect(),
            expected: expected.to_owned(),
        });
    }
    let fits = match &reading.scale {
        Scale::Number { step, min, max, .. } => decimal(value).is_some_and(|v| {
            v >= *min && v <= *max && (step.is_zero() || v.checked_rem(*step).is_some_and(|r| r.is_zero()))
        }),
        Scale::Parts(parts) => fraction(value).is_some_and(|(n, m)| m == *parts && n <= m),
        Scale::Choice(choices) => choices.iter().any(|c| c == value),
    };
    if fits {
        return Ok(());
    }
    let sane = match &reading.scale {
        Scale::Number { measure, step, min, max, .. } => {
            format!("from {min} to {max} {measure} in steps of {step}")
        }
        Scale::Parts(parts) => format!("from 0/{parts} to {parts}/{parts}"),
        Scale::Choice(choices) => format!("one of {}", choices.join(", ")),
    };
    Err(Refused::Reading { reading: reading.id.clone(), value: value.chars().take(40).collect(), sane })
}

/// A plain decimal: digits, one point at most, no exponent.
fn decimal(value: &str) -> Option<Decimal> {
    let digits = value.strip_prefix('-').unwrap_or(value);
    let plain = digits.len() <= 20
        && digits.starts_with(|c: char| c.is_ascii_digit())
        && digits.ends_with(|c: char| c.is_ascii_digit())
        && digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    if plain { Decimal::from_str_exact(value).ok() } else { None }
}

/// A fraction as `7/8`, without signs or needless zeros.
fn fraction(value: &str) -> Option<(u8, u8)> {
    let (n, m) = value.split_once('/')?;
    let (n, m): (u8, u8) = (n.parse().ok()?, m.parse().ok()?);
    if format!("{n}/{m}") == value { Some((n, m)) } else { None }
}

#[cfg(test)]
mod tests;
