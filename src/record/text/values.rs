//! Readings, items, fees, marks.

use rust_decimal::Decimal;

use super::page::Page;
use crate::measure::{Measure, Money, Quantity, Rounding};
use crate::record::form::{FactValue, Handoff, Mark, Origin, Reading, ReadingOutcome, Scale};
use crate::words::Args;
use crate::words::format::{self, Places};

/// Fees in the order in which a renter meets them; whatever else the sheet gives comes behind.
const FEES: [&str; 19] = [
    "night",
    "deposit",
    "miles_night",
    "mile",
    "generator_night",
    "generator_hour",
    "fuel_gallon",
    "fuel_service",
    "propane_quarter",
    "propane_cylinder",
    "black",
    "cassette",
    "grey",
    "clean",
    "griddle",
    "smoke",
    "pet",
    "pet_hidden",
    "late_hour",
];

pub(super) fn readings(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-readings");
    for reading in &record.readings {
        match &reading.outcome {
            ReadingOutcome::Taken { value, measure, .. } => {
                let value = match &reading.scale {
                    Scale::Choice { .. } => page.say_or(&format!("choice-{value}"), value),
                    _ => page.measured(value, measure),
                };
                page.row(2, &reading.name, &value);
                if let Some(off) = off(page, reading) {
                    page.para(4, &off);
                }
            }
            ReadingOutcome::NotTaken { reason, note, .. } => {
                page.row(2, &reading.name, &page.say("record-not-read"));
                let text = page.say(&format!("record-why-not-{}", reason.as_str()));
                page.para(4, &if note.is_empty() { text } else { format!("{text} {note}") });
            }
            ReadingOutcome::Open => page.row(2, &reading.name, &page.say("record-not-read")),
            ReadingOutcome::Unknown => page.row(2, &reading.name, &page.say("record-unknown")),
        }
    }
    page.blank();
    let text = page.say("record-readings-as-read");
    page.para(2, &text);
}

/// That a value lies out of the bounds the unit has, in words.
fn off(page: &Page<'_>, reading: &Reading) -> Option<String> {
    let ReadingOutcome::Taken { value, measure, .. } = &reading.outcome else { return None };
    let read: Decimal = value.parse().ok()?;
    let passed = |bound: &Option<String>, wrong: fn(&Decimal, &Decimal) -> bool| {
        bound.clone().filter(|bound| bound.parse().is_ok_and(|bound| wrong(&read, &bound)))
    };
    let (key, bound) = match passed(&reading.least, Decimal::lt) {
        Some(least) => ("record-reading-below", least),
        None => ("record-reading-above", passed(&reading.most, Decimal::gt)?),
    };
    Some(page.say_with(key, &Args::new().text("bound", page.measured(&bound, measure))))
}

pub(super) fn items(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-items");
    let mut total = Some(Money::ZERO);
    for item in &record.items {
        let name = format!("{} {}", item.tag, item.name);
        let Some(counted) = &item.counted else {
            page.row(2, &name, &page.say("record-not-counted"));
            continue;
        };
        let args =
            Args::new().text("count", page.count(counted.count)).text("price", page.money(&item.price));
        page.row(2, &name, &page.say_with("record-count-price", &args));
        if counted.count != item.lent {
            let text = page.say_with("record-lent", &Args::new().text("count", page.count(item.lent)));
            page.para(6, &text);
        }
        if !counted.note.is_empty() {
            page.para(6, &counted.note);
        }
        total = total.and_then(|sum| {
            item.price.times(Decimal::from(counted.count)).and_then(|price| sum.plus(price)).ok()
        });
    }
    if let Some(total) = total.filter(|total| *total != Money::ZERO) {
        page.row(2, &page.say("record-items-total"), &page.money(&total));
    }
}

pub(super) fn fees(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-fees");
    let fact = |name: &str| record.facts.iter().find(|fact| fact.name == name).map(|fact| &fact.value);
    let more = record.facts.iter().filter_map(|fact| {
        fact.name.strip_prefix("fees.").filter(|field| fact.from == Origin::Sheet && !FEES.contains(field))
    });
    for field in FEES.into_iter().chain(more) {
        let Some(value) = fact(&format!("fees.{field}")).and_then(|value| plain(page, value)) else {
            continue;
        };
        page.row(2, &page.say_or(&format!("fee-{field}"), field), &value);
    }
    if let Some(tax) = fact("charges.tax").and_then(|value| plain(page, value)) {
        page.row(2, &page.say("record-tax"), &tax);
    }
    if let Some(FactValue::Word { value }) = fact("charges.tax_on") {
        let text = page.say_or(&format!("record-tax-on-{value}"), value);
        page.para(4, &text);
    }
    if let Some(grace) = fact("charges.late_grace").and_then(|value| plain(page, value)) {
        page.row(2, &page.say("record-late-grace"), &grace);
    }
    page.blank();
    let text = page.say(&format!("record-rounding-{}", record.lot.rounding.as_str()));
    page.para(2, &text);
}

/// A value as people read it; none when the unit does not have it.
fn plain(page: &Page<'_>, value: &FactValue) -> Option<String> {
    match value {
        FactValue::Quantity { value, .. } => Some(Quantity::parse(value).map_or_else(
            |_| value.clone(),
            |q| format::quantity(page.words, &page.reader, &q, Rounding::Exact, Places::AsWritten),
        )),
        FactValue::Count { value } => Some(page.count(*value)),
        FactValue::Word { value } | FactValue::Code { value } => Some(value.clone()),
        FactValue::Money { value } => Some(page.money(value)),
        FactValue::Flag { .. } | FactValue::List { .. } | FactValue::NotFitted | FactValue::Unknown => None,
    }
}

pub(super) fn marks(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-marks");
    if record.marks.is_empty() {
        let text = page.say("record-marks-none");
        page.para(2, &text);
    }
    for mark in &record.marks {
        let kind = page.say(&format!("record-mark-{}", mark.kind.as_str()));
        let size = page.say(&format!("record-size-{}", mark.size.as_str()));
        let number = page.count(mark.number);
        page.hang(2, &format!("{number} "), &format!("{kind}, {size}: {}", spot(page, record, mark)));
        if !mark.note.is_empty() {
            page.para(4, &mark.note);
        }
        let args = Args::new().text("who", page.who(mark.by, &mark.at)).text("time", page.time(&mark.at));
        let text = page.say_with("record-mark-by", &args);
        page.para(4, &text);
        if let Some(removed) = mark.removed {
            let text =
                page.say_with("record-mark-removed", &Args::new().text("time", page.time_utc(removed)));
            page.para(4, &text);
        }
    }
}

/// Where a mark lies, by sides of the unit: never left or right.
fn spot(page: &Page<'_>, record: &Handoff, mark: &Mark) -> String {
    let inches = |tenths: i32| {
        let quantity = Quantity::new(Decimal::new(i64::from(tenths), 1).normalize(), Measure::Inch);
        format::quantity(page.words, &page.reader, &quantity, Rounding::Nearest, Places::AsWritten)
    };
    let curb_is_right = record.unit.curb == "right";
    let key = match mark.x {
        0 => "record-spot-middle",
        x if (x > 0) == curb_is_right => "record-spot-curb",
        _ => "record-spot-street",
    };
    let args = Args::new().text("off", inches(mark.x.saturating_abs())).text("back", inches(mark.y));
    page.say_with(key, &args)
}
