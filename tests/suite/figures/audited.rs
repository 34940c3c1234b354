//! Random sheets, lots and trips whose figures `tests/figures/audit.py` computed anew from the handbook, in exact
//! fractions. `cases.json` holds what it computed; running the script makes the cases again.

use rust_decimal::Decimal;
use serde::Deserialize;

use super::*;
use sendoff::measure::Rounding;

#[derive(Deserialize)]
struct Case {
    seed: u32,
    unit: String,
    sheet: Vec<[String; 3]>,
    lot: Vec<[String; 3]>,
    trip: String,
    figures: std::collections::BTreeMap<String, (String, Option<String>, serde_json::Value)>,
}

/// Where the value that starts here ends.
fn end_of(text: &str, from: usize) -> usize {
    let bytes = text.as_bytes();
    let (mut at, mut depth) = (from, 0);
    loop {
        match bytes[at] {
            b'"' => at = text[at + 1..].find('"').expect("a closed text") + at + 1,
            b'(' | b'[' | b'{' => depth += 1,
            b',' | b')' | b'\n' if depth == 0 => return at,
            b')' | b']' | b'}' => depth -= 1,
            _ => {}
        }
        at += 1;
    }
}

/// A section, or a field of it, given another value; a field that is not there is added.
fn set(text: &str, [section, field, value]: &[String; 3]) -> String {
    let start = text.find(&format!("\n    {section}: ")).unwrap_or_else(|| panic!("no {section}"))
        + section.len()
        + 7;
    let end = end_of(text, start);
    let mut body = text[start..end].to_owned();
    let key = format!("{field}: ");
    let whole = |at: &usize| !body[..*at].ends_with(|c: char| c.is_ascii_lowercase() || c == '_');
    if field.is_empty() {
        body.clone_from(value);
    } else if let Some(at) = body.match_indices(&key).map(|(at, _)| at).find(whole) {
        let from = at + key.len();
        body = format!("{}{value}{}", &body[..from], &body[end_of(&body, from)..]);
    } else {
        let kept =
            body.trim_end().strip_suffix(')').expect("a section").trim_end().trim_end_matches(',').to_owned();
        body = format!("{kept}, {field}: {value})");
    }
    format!("{}{body}{}", &text[..start], &text[end..])
}

/// Part and number of each value, by part.
fn values(figure: &Figure) -> Vec<(String, Decimal, Rounding)> {
    let of = |at: usize| figure.outcomes.get(at).and_then(|o| o.of.clone()).unwrap_or_default();
    let rounding = |at: usize| figure.outcomes.get(at).map_or(Rounding::Nearest, |o| o.rounding);
    let all = figure.values.iter().enumerate();
    let mut all: Vec<_> = all.map(|(at, value)| (of(at), value.amount(), rounding(at))).collect();
    all.sort_by(|a, b| a.0.cmp(&b.0));
    all
}

#[test]
fn every_figure_agrees_with_the_handbook_computed_anew() {
    let text = fs::read_to_string(folder().join("cases.json")).expect("the cases");
    let cases: Vec<Case> = serde_json::from_str(&text).expect("cases");
    assert!(cases.len() >= 60);
    let mut checked = 0;
    for case in &cases {
        let own = fs::read_to_string(folder().join(format!("{}.ron", case.unit)));
        let sheet = own.unwrap_or_else(|_| sheet_text(&case.unit));
        let sheet: Sheet = typed(&case.unit, &case.sheet.iter().fold(sheet, |text, edit| set(&text, edit)));
        let lot = case.lot.iter().fold(embedded("walkthroughs/lot.ron"), |text, edit| set(&text, edit));
        let facts = Facts::new(&sheet, &typed("lot.ron", &lot));
        for figure in figures::of_trip(&facts, &typed("trip.ron", &case.trip)) {
            let told = format!("case {}, {} of {}", case.seed, figure.id, case.unit);
            let (state, verdict, expected) = &case.figures[figure.id];
            let got = match figure.state {
                State::Ok => "ok",
                State::Missing(_) => "missing",
                State::NotFitted => "not-fitted",
            };
            assert_eq!(got, state, "{told}");
            if got != "ok" {
                continue;
            }
            assert_eq!(figure.verdict, verdict.as_deref(), "{told}");
            let mut expected: Vec<(&str, Decimal)> = expected
                .as_array()
                .expect("values")
                .iter()
                .map(|text| text.as_str().expect("a text"))
                .map(|text| text.rsplit_once(' ').unwrap_or(("", text)))
                .map(|(of, number)| (of, number.parse().expect("a number")))
                .collect();
            expected.sort_by(|a, b| a.0.cmp(b.0));
            let ours = values(&figure);
            assert_eq!(ours.len(), expected.len(), "{told}");
            for ((of, ours, rounding), (part, theirs)) in ours.iter().zip(&expected) {
                // What is not rounded may differ in the twelfth digit.
                let room = if *rounding == Rounding::Exact {
                    theirs.abs() * Decimal::new(1, 11)
                } else {
                    Decimal::ZERO
                };
                assert!(
                    of == part && (*ours - *theirs).abs() <= room,
                    "{told}: {of} {ours} against {part} {theirs}"
                );
                checked += 1;
            }
        }
    }
    assert!(checked > 2_000, "{checked}");
}
