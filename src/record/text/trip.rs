//! The trip: what was planned, in the reader's words and measures.
//!
//! A value of the plan is named by `record-trip-<name>`, else as figures name it, by `input-trip-<name>`.

use serde_json::{Map, Value};

use super::page::Page;
use crate::measure::{Measure, Quantity};
use crate::record::form::{Handoff, Plan};
use crate::unit::rounding_of;
use crate::words::Args;
use crate::words::format::{self, Places};

/// Days on which something is done.
const DAYS: [&str; 4] = ["fill", "empty", "refill", "refuel"];

pub(super) fn trip(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-trip");
    let trip = record.trip.as_ref();
    let text = match trip.and_then(|trip| trip.planned.as_ref()) {
        Some(planned) => {
            page.say_with("record-trip-planned", &Args::new().text("time", page.time(&planned.at)))
        }
        None => page.say("record-trip-not-planned"),
    };
    page.para(2, &text);
    let Some(counted) = trip.and_then(|trip| trip.counted.as_ref()) else {
        let text = page.say("record-trip-not-counted");
        page.para(2, &text);
        return;
    };
    let text = page.say("record-trip-counted");
    page.para(2, &text);
    page.blank();
    plan(page, counted);
}

fn plan(page: &mut Page<'_>, Plan(plan): &Plan) {
    // What everybody asks first stands first; the rest by its name.
    const FIRST: [&str; 5] = ["leaves", "nights", "people", "hook_up", "use"];
    let nights =
        plan.get("nights").and_then(Value::as_u64).and_then(|n| usize::try_from(n).ok()).unwrap_or(0);
    let first = FIRST.iter().filter_map(|name| plan.get_key_value(*name));
    let rest = plan.iter().filter(|(name, _)| !FIRST.contains(&name.as_str()));
    for (name, value) in first.chain(rest) {
        entry(page, name, value, nights);
    }
}

/// An entry of the plan with words of its own; any other by what it holds.
fn entry(page: &mut Page<'_>, name: &str, value: &Value, nights: usize) {
    match (name, value) {
        (name, Value::Array(all)) if all.is_empty() && name != "hook_up" => {}
        ("people", Value::Array(all)) => people(page, all),
        ("hook_up", Value::Array(all)) => hook_up(page, all, nights),
        ("leaves", Value::String(day)) => {
            let text =
                day.parse().map_or_else(|_| day.clone(), |day| format::date(page.words, &page.reader, day));
            row(page, name, &text);
        }
        (name, Value::Array(all)) if DAYS.contains(&name) => {
            let days: Vec<String> = all.iter().map(|day| plain(page, name, day)).collect();
            let days = format::list(page.words, &page.reader, &days);
            row(page, name, &days);
        }
        ("on", Value::Array(all)) => {
            let loads: Vec<String> = all.iter().map(|on| load(page, on)).collect();
            let loads = format::list(page.words, &page.reader, &loads);
            row(page, name, &loads);
        }
        _ => leaves(page, name, value),
    }
}

/// Every value below a name, with the whole name of each.
fn leaves(page: &mut Page<'_>, name: &str, value: &Value) {
    match value {
        Value::Object(all) => {
            for (below, one) in all {
                // `Post`, `Says`: a word that holds a value.
                if below.starts_with(|c: char| c.is_ascii_uppercase()) {
                    let args = Args::new().text("value", plain(page, name, one));
                    let text =
                        page.say_with(&format!("record-trip-{}-{}", key(name), below.to_lowercase()), &args);
                    row(page, name, &text);
                } else {
                    leaves(page, &format!("{name}.{below}"), one);
                }
            }
        }
        Value::Array(all) => {
            let texts: Vec<String> = all.iter().map(|one| plain(page, name, one)).collect();
            let list = format::list(page.words, &page.reader, &texts);
            row(page, name, &list);
        }
        Value::Null | Value::Bool(false) => {}
        Value::Bool(true) | Value::Number(_) | Value::String(_) => {
            let text = plain(page, name, value);
            row(page, name, &text);
        }
    }
}

/// Hook-ups night by night; where the list ends before the trip, there are none.
fn hook_up(page: &mut Page<'_>, all: &[Value], nights: usize) {
    let mut texts: Vec<String> = all.iter().map(|one| plain(page, "hook_up", one)).collect();
    if texts.is_empty() {
        texts.push(page.say("record-trip-hook-up-none"));
    } else if texts.len() < nights {
        texts.push(page.say("record-trip-hook-up-rest"));
    }
    let list = format::list(page.words, &page.reader, &texts);
    row(page, "hook_up", &list);
}

fn people(page: &mut Page<'_>, people: &[Value]) {
    row(page, "people", &page.count(people.len()));
    let weights = people.iter().filter_map(|person| person.get("weight"));
    let weights: Vec<String> = weights.map(|weight| plain(page, "people.weight", weight)).collect();
    if !weights.is_empty() {
        let list = format::list(page.words, &page.reader, &weights);
        row(page, "people.weight", &list);
    }
}

/// A load that is on, and whether it has settled.
fn load(page: &Page<'_>, on: &Value) -> String {
    let empty = Map::new();
    let on = on.as_object().unwrap_or(&empty);
    let id = on.get("load").and_then(Value::as_str).unwrap_or_default();
    let name = page.say_or(&format!("load-{id}"), id);
    if on.get("settled") == Some(&Value::Bool(true)) {
        page.say_with("record-trip-settled", &Args::new().text("load", name))
    } else {
        name
    }
}

fn row(page: &mut Page<'_>, name: &str, value: &str) {
    let name = key(name);
    let known = page.say_or(&format!("input-trip-{name}"), &name);
    let label = page.say_or(&format!("record-trip-{name}"), &known);
    let mut letters = label.chars();
    let label: String = letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect();
    page.row(2, &label, value);
}

/// A name as keys of messages spell it.
fn key(name: &str) -> String {
    name.replace(['.', '_'], "-")
}

/// A single value: a quantity in the reader's measures, a count, or a word.
fn plain(page: &Page<'_>, name: &str, value: &Value) -> String {
    match value {
        Value::Number(n) => n.as_u64().map_or_else(|| n.to_string(), |n| page.count(n)),
        Value::Bool(yes) => page.say(if *yes { "record-trip-yes" } else { "record-trip-no" }),
        Value::String(text) => match Quantity::parse(text) {
            Ok(q) if q.measure() == Measure::Fraction => text.clone(),
            Ok(q) => {
                let rounding = rounding_of(&format!("trip.{name}"));
                format::quantity(page.words, &page.reader, &q, rounding, Places::AsWritten)
            }
            Err(_) => page.say_or(&format!("record-trip-{}-{}", key(name), text.to_lowercase()), text),
        },
        Value::Null | Value::Array(_) | Value::Object(_) => value.to_string(),
    }
}
