//! Words of a new unit: its own, and those of the embedded lot that a new lot does not have.

use super::Refusal;
use crate::script::{Bundle, EMBEDDED};

/// Folder of the words that are always there.
const FOLDER: &str = "i18n/en-US/";

/// The files of words of a lot.
fn texts(lot: &Bundle) -> impl Iterator<Item = &str> {
    lot.names()
        .filter(|name| name.starts_with(FOLDER) && name.ends_with(".ftl"))
        .filter_map(|name| std::str::from_utf8(lot.get(name)?).ok())
}

/// The message as it stands in a text, with its attributes.
fn message<'a>(text: &'a str, key: &str) -> Option<Vec<&'a str>> {
    let begins = |line: &str| line.strip_prefix(key).is_some_and(|rest| rest.trim_start().starts_with('='));
    let mut lines = text.lines().skip_while(|line| !begins(line));
    let first = lines.next()?;
    let rest = lines.take_while(|line| line.starts_with([' ', '}']));
    Some(std::iter::once(first).chain(rest).collect())
}

/// Whether the lot has a message.
pub(super) fn has(lot: &Bundle, key: &str) -> bool {
    texts(lot).any(|text| message(text, key).is_some())
}

/// The messages that the lot lacks, as the embedded lot says them.
pub(super) fn lacking<'k>(lot: &Bundle, keys: impl Iterator<Item = &'k str>) -> String {
    let mut out = String::new();
    for key in keys.filter(|key| !has(lot, key)) {
        let embedded = EMBEDDED.iter().filter(|(name, _)| name.starts_with(FOLDER));
        let found =
            embedded.filter_map(|(_, bytes)| std::str::from_utf8(bytes).ok()).find_map(|t| message(t, key));
        for line in found.unwrap_or_default() {
            out.push_str(line);
            out.push('\n');
        }
    }
    out
}

/// None of the messages of a new unit is there yet.
pub(super) fn are_free<'k>(lot: &Bundle, mut keys: impl Iterator<Item = &'k str>) -> Result<(), Refusal> {
    match keys.find(|key| has(lot, key)) {
        Some(key) => Err(format!("the lot has a message `{key}` already; choose another --id")),
        None => Ok(()),
    }
}

/// Keys that a data sheet names as `load-...` and `item-...`.
pub(super) fn keys_of(sheet: &crate::unit::Sheet) -> Vec<String> {
    let loads = sheet.loads.iter().map(|load| &load.id.value);
    let battery = sheet.night.iter().chain(sheet.day.iter().flatten()).map(|load| &load.id.value);
    let items = sheet.kit.iter().map(|line| format!("item-{}", line.item.value));
    let exits = sheet.exits.iter().map(crate::unit::Exit::key);
    let mut all: Vec<String> =
        loads.chain(battery).map(|id| format!("load-{id}")).chain(items).chain(exits).collect();
    all.sort_unstable();
    all.dedup();
    all
}
