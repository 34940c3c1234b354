//! Figures through the public door: worked examples, published tables, properties.

mod audited;
mod bills;
mod command;
mod examples;
mod practice;
mod properties;
mod published;
mod reference;
mod tables;
mod together;
mod trips;
mod words;

use std::fs;
use std::path::PathBuf;
use std::sync::{Arc, OnceLock};

use sendoff::figures::{self, Figure, Given, State, Trip};
use sendoff::script::{Bundle, EMBEDDED, Scripts};
use sendoff::source::{SourceFile, read};
use sendoff::unit::{Facts, Lot, Sheet};

/// The demo lot's scripts.
fn scripts() -> &'static Scripts {
    static SCRIPTS: OnceLock<Scripts> = OnceLock::new();
    SCRIPTS.get_or_init(|| Scripts::load(Arc::new(Bundle::demo())).0.expect("the demo lot can be used"))
}

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/figures")
}

fn embedded(name: &str) -> String {
    let (_, bytes) = EMBEDDED.iter().find(|(known, _)| *known == name).expect("a file of the demo lot");
    String::from_utf8(bytes.to_vec()).expect("UTF-8")
}

/// The text of a unit's data sheet.
fn sheet_text(unit: &str) -> String {
    embedded(&format!("walkthroughs/units/{unit}.ron"))
}

fn typed<T: serde::de::DeserializeOwned>(name: &str, text: &str) -> T {
    let (value, faults) = read::<T>(&SourceFile::new(name, text));
    value.unwrap_or_else(|| panic!("{name}: {faults:#?}"))
}

/// A text with words replaced; each must be there.
fn edited(text: &str, changes: &[(&str, &str)]) -> String {
    changes.iter().fold(text.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "nothing to replace: {from}");
        text.replacen(from, to, 1)
    })
}

/// Facts of a unit whose sheet and lot are changed.
fn facts_with(unit: &str, sheet: &[(&str, &str)], lot: &[(&str, &str)]) -> Facts {
    let sheet: Sheet = typed(unit, &edited(&sheet_text(unit), sheet));
    if lot.is_empty() {
        return Facts::new(&sheet, &scripts().lot.value);
    }
    let lot: Lot = typed("lot.ron", &edited(&embedded("walkthroughs/lot.ron"), lot));
    Facts::new(&sheet, &lot)
}

fn facts(unit: &str) -> Facts {
    facts_with(unit, &[], &[])
}

/// A trip from RON fields; three nights and four people where they are not given.
fn trip(fields: &str) -> Trip {
    let nights = if fields.contains("nights:") { "" } else { "nights: 3, " };
    let people =
        if fields.contains("people:") { "" } else { "people: [(age: 41), (age: 39), (age: 12), (age: 9)], " };
    typed("trip.ron", &format!("({nights}{people}{fields})"))
}

fn figure(facts: &Facts, id: &str, trip: Option<&Trip>) -> Figure {
    figures::one(id, Given { facts, trip }).unwrap_or_else(|| panic!("no figure `{id}`"))
}

/// The figure of a unit for a trip of these fields.
fn of(unit: &str, id: &str, fields: &str) -> Figure {
    figure(&facts(unit), id, Some(&trip(fields)))
}

/// The values of a figure as they are shown in their own measures.
fn shown(figure: &Figure) -> Vec<String> {
    assert_eq!(figure.state, State::Ok, "{} could not be computed", figure.id);
    figure.values.iter().map(ToString::to_string).collect()
}

/// The only value of a figure.
fn value(figure: &Figure) -> String {
    let all = shown(figure);
    assert_eq!(all.len(), 1, "{} has {all:?}", figure.id);
    all.into_iter().next().expect("one value")
}

fn missing(figure: &Figure) -> String {
    match &figure.state {
        State::Missing(name) => name.clone(),
        other => panic!("{} is {other:?}", figure.id),
    }
}

/// What a reader in US measures sees.
fn told(figure: &Figure) -> String {
    let reader = sendoff::words::Reader::default();
    figures::value_text(&scripts().words, &reader, figure).replace('\u{A0}', " ")
}
