//! What a data sheet gives a stand-in for: told at each entry, and never held against other facts.

use crate::script::From;
use crate::source::At;
use crate::unit::{Facts, NOT_KNOWN_LISTS, Origin, Sheet, Value};

use super::Check;

/// Where a value is read, by the beginning of its name; the first that fits. Labels of 49 CFR 567.4 and 571.110.
const READ_AT: [(&str, &str); 20] = [
    ("weight.occc", "read it from the label inside the entry door"),
    ("weight.ccc", "read it from the label beside the entry door"),
    ("weight.uvw", "weigh the empty unit with full fuel and propane, or read its weighing slip"),
    ("weight.kit", "weigh the loaned items"),
    ("weight.", "read it from the certification label"),
    ("tires.", "read it from the tire placard"),
    ("wheels.", "read it from the tire, the tire placard or the manual of the chassis"),
    ("size.", "measure it"),
    ("slide_out.", "measure it with the slide-out fully out"),
    ("safety.", "read it from the device"),
    ("generator.", "read it from the plate of the generator or its manual"),
    ("engine.", "read it from the manual of the chassis"),
    ("house.", "read it from the label of the battery or its manual"),
    ("hitch.", "read it from the label of the hitch or its manual"),
    ("places", "measure each place from the middle of the nose: right with the nose up, then back"),
    ("rooms", "measure each piece of furniture from the middle of the nose"),
    ("loads", "read the watts of each thing from its plate: amperes times volts"),
    ("night", "read the amperes of each thing from its plate"),
    ("day", "read the amperes of each thing from its plate"),
    ("", "read it from the plate or the manual"),
];

/// Facts that a rule holds against the one it is told at.
const HELD_AGAINST: [(&str, &[&str]); 35] = [
    ("size.body_length", &["size.length"]),
    ("size.mirrors", &["size.width"]),
    ("size.track", &["size.width"]),
    ("size.wheelbase", &["size.rear_overhang", "size.body_length"]),
    ("size.rear_overhang", &["size.body_length"]),
    ("size.turn_radius", &["size.rear_overhang"]),
    ("size.cut_in", &["size.turn_radius"]),
    ("safety.sill", &["size.height"]),
    ("awning.length", &["size.body_length"]),
    ("slides", &["size.length"]),
    ("driving.speed", &["wheels.speed"]),
    ("driving.gust", &["driving.wind"]),
    ("driving.follow", &["size.length"]),
    ("hitch.trailer_most", &["weight.gvwr"]),
    ("hitch.tongue_most", &["hitch.tongue_dry"]),
    ("hitch.rating", &["weight.gvwr"]),
    ("weight.kit", &["weight.occc", "weight.ccc"]),
    ("weight.gcwr", &["weight.gvwr"]),
    ("weight.occc", &["weight.gvwr", "weight.uvw"]),
    ("weight.ccc", &["weight.gvwr", "weight.uvw"]),
    ("weight.gawr_front", &["weight.gawr_rear", "weight.gvwr"]),
    ("propane.full", &["propane.water_capacity"]),
    ("propane.kind", &["propane.cylinders"]),
    ("diesel_heater.burn", &["diesel_heater.burn_low", "diesel_heater.burn_high"]),
    ("generator.burn_full", &["generator.burn_half"]),
    ("generator.peak", &["generator.rated"]),
    ("house.low", &["house.full"]),
    ("house.stop", &["house.low"]),
    ("charger.settled", &["charger.bulk"]),
    ("inverter.peak", &["inverter.power"]),
    ("shore.power", &["shore.cord", "shore.legs"]),
    ("shore.branch", &["shore.cord"]),
    ("water.regulator", &["water.most"]),
    ("waste.cassette_lamp", &["waste.cassette"]),
    ("loads", &["shore.branch", "shore.cord", "shore.legs"]),
];

/// Where a value of a data sheet is read or measured.
#[must_use]
pub fn where_to_read(name: &str) -> &'static str {
    READ_AT.iter().find(|(start, _)| name.starts_with(start)).map_or("", |(_, read)| read)
}

/// Whether the sheet gives only a stand-in for a fact or a list.
pub(super) fn is_stand_in(sheet: &Sheet, name: &str) -> bool {
    sheet.not_known.iter().any(|given| given.value == name)
}

/// Whether a rule that is told at `path` of the sheet holds a stand-in against something.
pub(super) fn leans_on_stand_in(sheet: &Sheet, path: &[&str]) -> bool {
    let Some(first) = path.first() else { return false };
    let fact = path.get(1).map_or_else(|| (*first).to_owned(), |field| format!("{first}.{field}"));
    let stands_in = |name: &str| is_stand_in(sheet, name);
    let rows = HELD_AGAINST.iter().filter(|(at, _)| *at == fact || at == first);
    stands_in(first) || stands_in(&fact) || rows.flat_map(|(_, others)| *others).any(|name| stands_in(name))
}

impl Check<'_> {
    /// Each stand-in is told, and names a fact or a list that the sheet gives.
    pub(super) fn not_known(&mut self, sheet: &From<Sheet>) {
        let plain = Sheet { not_known: Vec::new(), ..sheet.value.clone() };
        let facts = Facts::new(&plain, &self.scripts.lot.value);
        for name in &sheet.value.not_known {
            self.stand_in(sheet, name, &facts);
        }
        let all = sheet.value.not_known.iter().map(|name| name.value.as_str());
        let place = |at: usize| {
            let entry = sheet.value.not_known.get(at);
            entry.map_or_else(|| sheet.place(&sheet.value.id), |entry| sheet.place(entry))
        };
        self.once(all, place, "take one of them out");
    }

    fn stand_in(&mut self, sheet: &From<Sheet>, name: &At<String>, facts: &Facts) {
        let place = sheet.place(name);
        let key = name.value.as_str();
        let fact = facts.get(key).filter(|fact| fact.from == Origin::Sheet);
        let is_list =
            NOT_KNOWN_LISTS.contains(&key) || (key == "generator.derate" && facts.lists().derate.is_some());
        if let Some(fact) = fact {
            if fact.value == Value::NotFitted {
                let what = format!("`{key}` is `NotFitted`, and so it is known");
                let hint = "take it off the list, or give it a stand-in";
                self.fault("unit.not-known-fact", place, what, hint);
                return;
            }
            if matches!(fact.value, Value::Word(_)) {
                let what = format!("`{key}` decides what is shown: it cannot be left open");
                self.fault("unit.not-known-fact", place, what, "find it out, then take it off the list");
                return;
            }
        } else if !is_list {
            let known: Vec<String> = facts
                .iter()
                .filter(|(_, fact)| fact.from == Origin::Sheet && fact.value != Value::NotFitted)
                .map(|(name, _)| name.to_owned())
                .chain(NOT_KNOWN_LISTS.map(str::to_owned))
                .collect();
            let other =
                "write `section.field` of this sheet, as weight.uvw, or loads, night, day, places, rooms";
            let hint = if self.known.0.contains_key(key) {
                "this unit does not have it, or the lot gives it; take it off the list".to_owned()
            } else {
                self.hint(key, known.iter().map(String::as_str), other)
            };
            self.fault("unit.not-known-fact", place, format!("the sheet gives no `{key}`"), hint);
            return;
        }
        let read = where_to_read(key);
        let what = format!("`{key}` is not known: the sheet gives only a stand-in");
        self.open += 1;
        self.note("unit.not-known", place, what, format!("{read}; then take it off the list"));
    }
}
