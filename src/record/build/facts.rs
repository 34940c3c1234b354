//! The unit and the lot as they were.

use super::Pages;
use crate::measure::{Length, Measure};
use crate::record::form::{
    Axle, Change, Derate, DerateRow, Fact, FactValue, HeatLoss, Limits, Load, Lot, NightLoad, Place, Room,
    Seat, Slide, Unit,
};
use crate::script::Scripts;
use crate::unit::{self, Facts, Sheet, Value, catalogue};

pub(super) fn lot(scripts: &Scripts, pages: &Pages<'_>) -> Lot {
    let lot = &scripts.lot.value;
    Lot {
        name: pages.say_plain(&lot.name.value),
        place: pages.say_plain(&lot.place.value),
        zone: lot.zone.value.clone(),
        gallon: lot.gallon.into(),
        currency: lot.currency.clone(),
        rounding: lot.rounding.into(),
        measures: lot.measures.clone(),
        languages: lot.languages.clone(),
        youngest_driver: lot.youngest_driver,
        limits: Limits {
            reading: lot.limits.value.reading.to_string(),
            hand_overs: lot.limits.value.hand_overs,
        },
    }
}

fn point((x, y): &(Length, Length)) -> [String; 2] {
    [x.to_string(), y.to_string()]
}

pub(super) fn unit(sheet: &Sheet, pages: &Pages<'_>) -> Unit {
    let place = |id: &String, entry: &unit::PlaceEntry| Place {
        id: id.clone(),
        station: entry.station.word().to_owned(),
        at: entry.at.as_ref().map(point),
        says: pages
            .say_plain(&entry.words.as_ref().map_or_else(|| format!("place-{id}"), |w| w.value.clone())),
    };
    Unit {
        id: sheet.id.value.clone(),
        code: sheet.code.clone(),
        name: pages.say(&format!("unit-{}", sheet.id.value)),
        kind: sheet.kind.word().to_owned(),
        year: sheet.year,
        curb: sheet.curb.word().to_owned(),
        places: sheet.places.iter().map(|(id, entry)| place(id, &entry.value)).collect(),
        exits: sheet.exits.iter().map(|exit| exit.place.value.clone()).collect(),
        axles: sheet
            .axles
            .iter()
            .map(|a| Axle { at: a.at.word().to_owned(), cold: a.cold.to_string(), wheels: a.wheels })
            .collect(),
        rooms: sheet
            .rooms
            .iter()
            .map(|r| Room { kind: r.kind.word().to_owned(), from: point(&r.from), to: point(&r.to) })
            .collect(),
        slides: sheet.slides.iter().map(slide).collect(),
        seats: sheet.seats.iter().map(seat).collect(),
        loads: sheet.loads.iter().map(load).collect(),
        night: sheet.night.iter().map(night).collect(),
        day: sheet.day.as_ref().map(|day| day.iter().map(night).collect()),
        derate: sheet.generator.value.get().map(|generator| derate(&generator.derate)),
        changes: sheet.changes.iter().map(|c| change(&c.value, pages)).collect(),
        not_known: sheet.not_known.iter().map(|name| name.value.clone()).collect(),
    }
}

fn slide(slide: &unit::Slide) -> Slide {
    Slide {
        side: slide.side.word().to_owned(),
        from: slide.from.to_string(),
        to: slide.to.to_string(),
        reach: slide.reach.to_string(),
    }
}

fn seat(seat: &unit::Seat) -> Seat {
    Seat {
        id: seat.id.clone(),
        belt: seat.belt,
        faces: seat.faces.word().to_owned(),
        tether: seat.tether,
        airbag: seat.airbag,
    }
}

fn load(load: &unit::Load) -> Load {
    Load {
        id: load.id.value.clone(),
        draw: load.draw.to_string(),
        settled: load.settled.as_ref().map(ToString::to_string),
        long: load.long,
        leg: load.leg.map(|leg| leg.word().to_owned()),
        branch: load.branch,
        start: load.start.as_ref().map(ToString::to_string),
        from: load.from.as_ref().map(|from| from.iter().map(|supply| supply.word().to_owned()).collect()),
        instead: load.instead.map(|instead| instead.word().to_owned()),
    }
}

fn texts<T: ToString>(all: &[T]) -> Vec<String> {
    all.iter().map(ToString::to_string).collect()
}

fn heat(heat: Option<&unit::HeatLoss>) -> Option<HeatLoss> {
    heat.map(|heat| HeatLoss {
        above: heat.above.to_string(),
        loss: heat.loss.to_string(),
        per: heat.per.to_string(),
    })
}

fn derate(rule: &unit::Derate) -> Derate {
    match rule {
        unit::Derate::Linear { above, loss, per, heat: hot } => Derate::Linear {
            above: above.to_string(),
            loss: loss.to_string(),
            per: per.to_string(),
            heat: heat(hot.as_ref()),
        },
        unit::Derate::Step { above, loss, per, heat: hot } => Derate::Step {
            above: above.to_string(),
            loss: loss.to_string(),
            per: per.to_string(),
            heat: heat(hot.as_ref()),
        },
        unit::Derate::Table { rows, between, heat: hot } => Derate::Table {
            rows: rows.iter().map(|r| DerateRow { at: r.at.to_string(), part: r.part.to_string() }).collect(),
            between: match between {
                unit::Between::Reached => "reached",
                unit::Between::Next => "next",
                unit::Between::Straight => "straight",
            }
            .to_owned(),
            heat: heat(hot.as_ref()),
        },
        unit::Derate::Grid { heights, temperatures, parts, humid } => Derate::Grid {
            heights: texts(heights),
            temperatures: texts(temperatures),
            parts: parts.iter().map(|row| texts(row)).collect(),
            humid: humid.iter().map(|(humid, part)| [humid.to_string(), part.to_string()]).collect(),
        },
    }
}

fn night(load: &unit::NightLoad) -> NightLoad {
    NightLoad {
        id: load.id.value.clone(),
        draw: load.draw.to_string(),
        duty: load.duty.as_ref().map(ToString::to_string),
        cold_duty: load.cold_duty.as_ref().map(ToString::to_string),
        hours: load.hours.to_string(),
    }
}

fn change(change: &unit::Change, pages: &Pages<'_>) -> Change {
    match change {
        unit::Change::Drop { step, reason } => {
            Change::Drop { step: step.value.clone(), says: pages.say(&reason.value) }
        }
        unit::Change::Add { step, words } => {
            Change::Add { step: step.value.clone(), says: pages.say(&words.value) }
        }
        unit::Change::Replace { line, words } => {
            Change::Replace { line: line.value.clone(), says: pages.say(&words.value) }
        }
        unit::Change::Picture { step, picture } => {
            Change::Picture { step: step.value.clone(), picture: picture.value.clone() }
        }
        unit::Change::Note { step, words } => {
            Change::Note { step: step.value.clone(), says: pages.say(&words.value) }
        }
        unit::Change::Fault { topic, words } => {
            Change::Fault { topic: topic.value.clone(), says: pages.say(&words.value) }
        }
    }
}

/// Facts by name; what is not fitted within a fitted section stands among them.
pub(super) fn facts(facts: &Facts) -> Vec<Fact> {
    facts
        .iter()
        .map(|(name, fact)| Fact { name: name.to_owned(), from: fact.from.into(), value: value(&fact.value) })
        .collect()
}

fn symbol(measure: Measure) -> String {
    if measure == Measure::Fraction { String::new() } else { measure.symbol().to_owned() }
}

fn value(value_: &Value) -> FactValue {
    match value_ {
        Value::Quantity(q) => FactValue::Quantity { value: q.to_string(), measure: symbol(q.measure()) },
        Value::Count(n) => FactValue::Count { value: *n },
        Value::Word(word) => FactValue::Word { value: (*word).to_owned() },
        Value::Code(code) => FactValue::Code { value: code.clone() },
        Value::Flag(flag) => FactValue::Flag { value: *flag },
        Value::Money(sum) => FactValue::Money { value: *sum },
        Value::List(items) => FactValue::List { values: items.iter().map(value).collect() },
        Value::NotFitted => FactValue::NotFitted,
    }
}

/// Sections that the unit does not have.
pub(super) fn not_fitted(facts: &Facts) -> Vec<String> {
    let (_, sections) = catalogue();
    let mut missing: Vec<String> =
        sections.into_iter().filter(|s| facts.is_fitted(s) == Some(false)).map(str::to_owned).collect();
    missing.sort_unstable();
    missing
}
