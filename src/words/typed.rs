//! A measured value or a sum that was typed into a message instead of the data sheet.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use fluent_syntax::ast::{Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::unicode::unescape_unicode_to_string;

use super::tree::offset_in;
use crate::measure::Measure;

/// Stands for a value that is filled in later.
const FILLED: char = '\u{FFFC}';

/// Measures with more names than the table has, and their names in Spanish, the second language of most lots.
const MORE_NAMES: &[&str] = &[
    "degree",
    "degrees",
    "percent",
    "volt",
    "watt",
    "amp",
    "btu",
    "gallon",
    "quart",
    "liter",
    "litre",
    "foot",
    "feet",
    "inch",
    "second",
    "minute",
    "hour",
    "day",
    "mile",
    "pound",
    "pulgada",
    "pulgadas",
    "pie",
    "pies",
    "milla",
    "millas",
    "libra",
    "libras",
    "galón",
    "galones",
    "litro",
    "litros",
    "metro",
    "metros",
    "kilómetros",
    "kilos",
    "grado",
    "grados",
    "minuto",
    "minutos",
    "segundo",
    "segundos",
    "hora",
    "horas",
    "día",
    "días",
    "voltios",
    "amperios",
    "vatios",
];
/// Signs that need no blank between.
const MARKS: [char; 3] = ['%', '°', '‰'];
const CURRENCY_MARKS: [char; 4] = ['$', '€', '£', '¥'];
const CURRENCY_WORDS: &[&str] = &[
    "USD", "EUR", "GBP", "CAD", "AUD", "NZD", "MXN", "CHF", "dollar", "dollars", "cent", "cents", "euro",
    "euros", "dólares", "pesos",
];
/// After these `in` is the little word, not the inch: 'line 2 in the list'.
const NOT_INCHES: &[&str] = &[
    "the", "a", "an", "this", "that", "these", "your", "our", "its", "each", "every", "all", "any", "one",
    "case", "order", "total",
];

static NAMES: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
    let table = Measure::ALL.iter().flat_map(|measure| {
        let short = std::iter::once(measure.symbol()).chain(measure.accepted().iter().copied());
        // One letter alone is too little to tell 'f' from a footnote.
        short.chain(measure.hinted().iter().copied().filter(|name| name.len() > 1))
    });
    table.chain(MORE_NAMES.iter().copied()).filter(|name| !name.is_empty()).map(str::to_owned).collect()
});

/// The byte offsets in `source` of the numbers that stand with a measure or a currency, and what was found.
pub(super) fn typed_measures(source: &str, pattern: &Pattern<&str>, found: &mut dyn FnMut(usize, String)) {
    // Most texts have no digit at all.
    if pattern.elements.iter().all(has_no_number) {
        return;
    }
    let mut flat = Vec::new();
    flatten(source, pattern, &mut flat, found);
    scan(&flat, found);
}

fn has_no_number(element: &PatternElement<&str>) -> bool {
    match element {
        PatternElement::TextElement { value } => {
            !value.bytes().any(|byte| byte.is_ascii_digit())
                && (value.is_ascii() || !value.chars().any(char::is_numeric))
        }
        PatternElement::Placeable { expression } => matches!(
            expression,
            Expression::Inline(
                InlineExpression::VariableReference { .. }
                    | InlineExpression::MessageReference { .. }
                    | InlineExpression::TermReference { .. }
            )
        ),
    }
}

/// The characters of a pattern with their offsets; literals stand where they will be printed, and every variant
/// is a text of its own.
fn flatten(
    source: &str,
    pattern: &Pattern<&str>,
    flat: &mut Vec<(char, usize)>,
    found: &mut dyn FnMut(usize, String),
) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => {
                let start = offset_in(source, value);
                flat.extend(value.char_indices().map(|(at, c)| (c, start + at)));
            }
            PatternElement::Placeable { expression } => placeable(source, expression, flat, found),
        }
    }
}

fn placeable(
    source: &str,
    expression: &Expression<&str>,
    flat: &mut Vec<(char, usize)>,
    found: &mut dyn FnMut(usize, String),
) {
    match expression {
        Expression::Inline(
            InlineExpression::StringLiteral { value } | InlineExpression::NumberLiteral { value },
        ) => {
            let start = offset_in(source, value);
            flat.extend(unescape_unicode_to_string(value).chars().map(|c| (c, start)));
        }
        Expression::Inline(InlineExpression::Placeable { expression }) => {
            placeable(source, expression, flat, found);
        }
        Expression::Inline(_) => flat.push((FILLED, 0)),
        Expression::Select { variants, .. } => {
            flat.push((FILLED, 0));
            for variant in variants {
                typed_measures(source, &variant.value, found);
            }
        }
    }
}

fn scan(flat: &[(char, usize)], found: &mut dyn FnMut(usize, String)) {
    let mut at = 0;
    while let Some(&(c, offset)) = flat.get(at) {
        let before = at.checked_sub(1).and_then(|before| flat.get(before)).map(|(c, _)| *c);
        if !c.is_numeric() {
            at += 1;
            continue;
        }
        let end = number_end(flat, at);
        // The number of a name, as in `B25`.
        if before.is_some_and(char::is_alphabetic) {
            at = end;
            continue;
        }
        let after = flat.get(end..).unwrap_or_default();
        if let Some(name) =
            measure_after(after).or_else(|| currency_before(flat.get(..at).unwrap_or_default()))
        {
            let number: String = flat.get(at..end).unwrap_or_default().iter().map(|(c, _)| *c).collect();
            found(offset, format!("{number} {name}"));
        }
        at = end;
    }
}

/// Past the digits, and past points, commas and strokes between digits.
fn number_end(flat: &[(char, usize)], start: usize) -> usize {
    let numeric = |at: usize| flat.get(at).is_some_and(|(c, _)| c.is_numeric());
    let mut end = start;
    while numeric(end)
        || (flat.get(end).is_some_and(|(c, _)| matches!(c, '.' | ',' | '/' | '⁄')) && numeric(end + 1))
    {
        end += 1;
    }
    end
}

fn is_blank(c: char) -> bool {
    c.is_whitespace() || c == '\u{202F}'
}

fn measure_after(after: &[(char, usize)]) -> Option<String> {
    let mut rest: Vec<char> = after.iter().take(40).map(|(c, _)| *c).collect();
    let blanks = rest.iter().take_while(|c| is_blank(**c)).count();
    rest.drain(..blanks);
    if rest.first().is_some_and(|c| matches!(c, '-' | '\u{2010}' | '\u{2011}')) {
        rest.remove(0);
    }
    let first = rest.first().copied()?;
    if MARKS.contains(&first) || CURRENCY_MARKS.contains(&first) {
        return Some(first.to_string());
    }
    let word: String =
        rest.iter().take_while(|c| c.is_alphanumeric() || matches!(c, '/' | '·' | '-')).collect();
    let plain: String = word.chars().take_while(|c| c.is_alphanumeric()).collect();
    if plain == "in" && !word.contains('/') {
        let next: String =
            rest.iter().skip(2).skip_while(|c| is_blank(**c)).take_while(|c| c.is_alphabetic()).collect();
        return (!NOT_INCHES.contains(&next.to_lowercase().as_str())).then_some(plain);
    }
    let known = |name: &str| {
        // A symbol is itself only in its own case; a name in any.
        NAMES.contains(name)
            || (name.chars().count() > 2 && NAMES.contains(&name.to_lowercase()))
            || CURRENCY_WORDS.contains(&name)
    };
    let two_words = || {
        let two: String = rest.iter().map(|c| if is_blank(*c) { ' ' } else { *c }).collect();
        ["US gal", "imp gal", "cu ft"].into_iter().find(|name| two.starts_with(name)).map(str::to_owned)
    };
    known(&word).then(|| word.clone()).or_else(|| known(&plain).then(|| plain.clone())).or_else(two_words)
}

fn currency_before(before: &[(char, usize)]) -> Option<String> {
    let mut back = before.iter().rev().map(|(c, _)| *c).skip_while(|c| is_blank(*c)).peekable();
    if let Some(mark) = back.next_if(|c| CURRENCY_MARKS.contains(c)) {
        return Some(mark.to_string());
    }
    let word: Vec<char> = back.take_while(|c| c.is_alphabetic()).take(8).collect();
    let word: String = word.into_iter().rev().collect();
    CURRENCY_WORDS
        .iter()
        .take_while(|name| name.chars().all(char::is_uppercase))
        .find(|name| **name == word)
        .map(|name| (*name).to_owned())
}
