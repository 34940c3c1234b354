//! How measures are spelled, and what was meant by a spelling that is none.

use super::parse::Cursor;
use super::{Measure, ParseFault};

/// The longest measure that the text goes on with.
pub(super) fn measure(cursor: &mut Cursor) -> Result<Measure, ParseFault> {
    let rest = cursor.rest();
    let first = rest.as_bytes().first();
    let fits = |spelling: &str| {
        // Most spellings fall out by their first byte.
        if spelling.as_bytes().first() != first {
            return None;
        }
        let after = rest.strip_prefix(spelling)?.chars().next();
        let ends = after.is_none_or(|c| c.is_whitespace() || c.is_ascii_digit());
        (!spelling.is_empty() && ends).then(|| spelling.chars().count())
    };
    let mut best: Option<(usize, Measure)> = None;
    for measure in authored() {
        for spelling in std::iter::once(measure.symbol()).chain(measure.accepted().iter().copied()) {
            if let Some(length) =
                fits(spelling).filter(|length| best.is_none_or(|(longest, _)| *length > longest))
            {
                best = Some((length, measure));
            }
        }
    }
    if let Some((length, measure)) = best {
        cursor.at += length;
        return Ok(measure);
    }
    Err(unknown(cursor, rest.trim_end()))
}

fn authored() -> impl Iterator<Item = Measure> {
    Measure::ALL.iter().copied().filter(|measure| *measure != Measure::FootInch)
}

fn unknown(cursor: &Cursor, rest: &str) -> ParseFault {
    let word = cursor.word();
    let hint = match word.chars().next() {
        Some('\'' | '"' | '′' | '″' | '’' | '”') => "write feet and inches as `11 ft 3 in`".to_owned(),
        _ => suggestion(rest).or_else(|| suggestion(&word)).map_or_else(
            || "write a known measure after the number, such as ft, in, lb, gal, psi, mph, W, A, V, h, % or °F".to_owned(),
            |symbol| format!("did you mean `{symbol}`?"),
        ),
    };
    ParseFault::new(cursor.at, format!("no measure is written `{word}`"), hint)
}

fn suggestion(word: &str) -> Option<&'static str> {
    let lower = word.to_lowercase();
    if lower.is_empty() {
        return None;
    }
    let spelled = |spelling: &str| spelling.to_lowercase() == lower;
    if let Some(measure) = authored().find(|measure| {
        spelled(measure.symbol())
            || measure.hinted().iter().any(|hinted| spelled(hinted))
            || measure.accepted().iter().any(|accepted| spelled(accepted))
    }) {
        return Some(measure.symbol());
    }
    authored()
        .filter(|measure| measure.symbol().chars().count() > 1)
        .map(|measure| (distance(&lower, &measure.symbol().to_lowercase()), measure.symbol()))
        .filter(|(distance, symbol)| *distance * 2 < symbol.chars().count().max(3))
        .min()
        .map(|(_, symbol)| symbol)
}

/// How many letters must be changed, added, left out or swapped with their neighbor.
fn distance(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let mut above: Vec<usize> = Vec::new();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    let mut last: Option<char> = None;
    let cell = |row: &[usize], at: usize| row.get(at).copied().unwrap_or(usize::MAX / 2);
    for (down, left) in one.chars().enumerate() {
        let mut next = vec![down + 1];
        for (at, right) in other.iter().enumerate() {
            let mut best = (cell(&row, at) + usize::from(left != *right))
                .min(cell(&row, at + 1) + 1)
                .min(cell(&next, at) + 1);
            let before = at.checked_sub(1).and_then(|before| other.get(before));
            if before == Some(&left) && last == Some(*right) {
                best = best.min(at.checked_sub(1).map_or(best, |before| cell(&above, before) + 1));
            }
            next.push(best);
        }
        above = std::mem::replace(&mut row, next);
        last = Some(left);
    }
    row.last().copied().unwrap_or_default()
}
