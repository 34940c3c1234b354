//! Data sheets: words that are there, values that can be, changes of what is there.

use crate::measure::{Dimension, Length, Money, Quantity};
use crate::script::From;
use crate::source::{Place, place_of};
use crate::unit::{Change, Fact, Origin, Sheet, Value};

use super::Check;
use super::known::is_stand_in;

impl Check<'_> {
    pub(super) fn units(&mut self) {
        let scripts = self.scripts;
        for sheet in scripts.units.values() {
            self.shape(&sheet.value.id.value, || sheet.place(&sheet.value.id));
            self.capacity(sheet);
            self.belts(sheet);
            self.kit(sheet);
            self.sizes(sheet);
            self.contradictions(sheet);
            self.below_zero(sheet);
            self.months(sheet);
            self.places(sheet);
            self.unit_words(sheet);
            self.twice_in(sheet);
            self.not_known(sheet);
            self.changes(sheet);
        }
        let any = scripts.bundle.names().any(|n| n.starts_with("walkthroughs/units/") && n.ends_with(".ron"));
        if !any {
            let place = Place::start(&scripts.lot.file.name);
            self.fault(
                "lot.no-unit",
                place,
                "the lot has no unit",
                "write one: sendoff lot add-unit --lot DIR --id harrier --kind class-c --fuel gasoline \
                 --length '28 ft' --width '99 in' --height '11 ft 3 in'",
            );
        }
    }

    /// A body has a length, a width and a height.
    fn sizes(&mut self, sheet: &From<Sheet>) {
        let size = &sheet.value.size.value;
        let all: [(&str, &Length); 4] = [
            ("length", &size.length),
            ("body_length", &size.body_length),
            ("width", &size.width),
            ("height", &size.height),
        ];
        for (name, length) in all {
            if length.quantity().amount().is_zero() {
                let place = place_of(&sheet.file, &["size", name]);
                self.fault("unit.size", place, format!("`{name}` is zero"), "measure it");
            }
        }
    }

    /// Nothing but a temperature, or a point of the plan, is below zero.
    fn below_zero(&mut self, sheet: &From<Sheet>) {
        let Some(facts) = self.scripts.facts(&sheet.value.id.value) else { return };
        for (name, _) in facts.iter().filter(|(_, fact)| fact.from == Origin::Sheet && is_below_zero(fact)) {
            let path: Vec<&str> = name.split('.').collect();
            self.negative(name, place_of(&sheet.file, &path));
        }
        let mut rows: Vec<(&str, usize, &str, bool)> = Vec::new();
        for (i, line) in sheet.value.kit.iter().enumerate() {
            rows.push(("kit", i, "price", is_debt(&line.price)));
            rows.push(("kit", i, "weight", is_less(line.weight.quantity())));
        }
        for (i, load) in sheet.value.loads.iter().enumerate() {
            rows.push(("loads", i, "draw", is_less(load.draw.quantity())));
        }
        for (i, load) in sheet.value.night.iter().enumerate() {
            rows.push(("night", i, "draw", is_less(load.draw.quantity())));
            rows.push(("night", i, "hours", is_less(load.hours.quantity())));
        }
        for (list, i, field, _) in rows.into_iter().filter(|(.., below)| *below) {
            self.negative(field, place_of(&sheet.file, &[list, &i.to_string(), field]));
        }
    }

    pub(super) fn negative(&mut self, name: &str, place: Place) {
        self.fault("fact.negative", place, format!("`{name}` is below zero"), "write it without the minus");
    }

    /// Months are written as `2028-05`.
    fn months(&mut self, sheet: &From<Sheet>) {
        let safety = &sheet.value.safety.value;
        let all = [
            ("co_replace_by", Some(&safety.co_replace_by)),
            ("propane_replace_by", safety.propane_replace_by.get()),
            ("smoke_replace_by", Some(&safety.smoke_replace_by)),
        ];
        for (name, month) in all.into_iter().filter_map(|(name, month)| Some((name, month?))) {
            if !is_month(month) && !is_stand_in(&sheet.value, &format!("safety.{name}")) {
                let place = place_of(&sheet.file, &["safety", name]);
                self.fault(
                    "unit.month",
                    place,
                    format!("`{month}` is no month"),
                    "write year and month, as 2028-05",
                );
            }
        }
    }

    fn unit_words(&mut self, sheet: &From<Sheet>) {
        let at = || sheet.place(&sheet.value.id);
        let id = &sheet.value.id.value;
        self.message(format!("unit-{id}"), at);
        self.message(format!("unit-{id}.kind"), at);
        let s = &sheet.value;
        let battery = s.night.iter().chain(s.day.iter().flatten()).map(|l| &l.id);
        for id in s.loads.iter().map(|l| &l.id).chain(battery) {
            self.message(format!("load-{}", id.value), || sheet.place(id));
        }
        for (i, axle) in sheet.value.axles.iter().enumerate() {
            let place = || place_of(&sheet.file, &["axles", &i.to_string(), "at"]);
            self.message(format!("axle-{}", axle.at.word()), place);
        }
    }

    /// Nothing stands twice in a list of the sheet.
    fn twice_in(&mut self, sheet: &From<Sheet>) {
        let in_list = |list: &'static str, field: &'static str| {
            move |at: usize| place_of(&sheet.file, &[list, &at.to_string(), field])
        };
        let s = &sheet.value;
        let hint = "take one of them out";
        self.once(s.loads.iter().map(|l| l.id.value.as_str()), in_list("loads", "id"), hint);
        self.once(s.night.iter().map(|l| l.id.value.as_str()), in_list("night", "id"), hint);
        self.once(s.seats.iter().map(|l| l.id.as_str()), in_list("seats", "id"), hint);
        self.once(s.exits.iter().map(|l| l.place.value.as_str()), in_list("exits", "place"), hint);
        self.once(s.axles.iter().map(|a| a.at.word()), in_list("axles", "at"), hint);
    }

    /// Changes name steps, lines and topics of the lot.
    fn changes(&mut self, sheet: &From<Sheet>) {
        let topics = &self.scripts.topics;
        for change in &sheet.value.changes {
            let (id, words, known) = match &change.value {
                Change::Drop { step, reason: words }
                | Change::Add { step, words }
                | Change::Note { step, words } => {
                    (step, Some(words), self.steps.contains_key(step.value.as_str()))
                }
                Change::Replace { line, words } => (line, Some(words), self.is_line(&line.value)),
                Change::Picture { step, picture } => {
                    self.picture(sheet, picture);
                    (step, None, self.steps.contains_key(step.value.as_str()))
                }
                Change::Fault { topic, words } => (topic, Some(words), topics.contains_key(&topic.value)),
            };
            let of_step = id.value.strip_prefix("show-").or_else(|| id.value.strip_prefix("know-"));
            if !known && !self.lost.may_hold(of_step.unwrap_or(&id.value)) {
                let what = format!("the lot has no `{}`", id.value);
                let hint = self.near_change(&id.value);
                self.fault("change.unknown", sheet.place(id), what, hint);
            }
            if let Some(words) = words {
                self.message(words.value.clone(), || sheet.place(words));
            }
        }
    }
}

impl Check<'_> {
    /// The topic or step that a wrong name is the beginning of, or is near to.
    fn near_change(&mut self, id: &str) -> String {
        let scripts = self.scripts;
        let mut known: Vec<&str> = scripts.topics.keys().map(String::as_str).collect();
        known.extend(scripts.topics.values().flat_map(|t| &t.value.steps).map(|s| s.value.id.value.as_str()));
        match known.iter().find(|name| name.strip_prefix(id).is_some_and(|rest| rest.starts_with('-'))) {
            Some(longer) => format!("did you mean `{longer}`?"),
            None => self.hint(id, known, "name a step, line or topic of the lot"),
        }
    }

    /// Whether a step of the lot has a line of this key.
    fn is_line(&self, key: &str) -> bool {
        let Some(rest) = key.strip_prefix("show-").or_else(|| key.strip_prefix("know-")) else {
            return false;
        };
        // A step may have dashes in its name, and a line too.
        rest.match_indices('-').any(|(at, _)| {
            let (Some(step), Some(name)) = (rest.get(..at), rest.get(at + 1..)) else { return false };
            let Some((_, step)) = self.steps.get(step) else { return false };
            let lines = if key.starts_with("show-") { &step.show } else { &step.know };
            lines.iter().any(|line| line.name.value == name)
        })
    }
}

/// Whether a quantity is below zero that cannot be.
pub(super) fn is_less(quantity: &Quantity) -> bool {
    quantity.dimension() != Dimension::Temperature && quantity.number().is_negative()
}

fn is_debt(sum: &Money) -> bool {
    sum.amount().is_sign_negative() && !sum.amount().is_zero()
}

/// Whether a fact is below zero that cannot be.
pub(super) fn is_below_zero(fact: &Fact) -> bool {
    match &fact.value {
        Value::Quantity(q) => is_less(q),
        Value::Money(sum) => is_debt(sum),
        _ => false,
    }
}

fn is_month(text: &str) -> bool {
    let Some((year, month)) = text.split_once('-') else { return false };
    let digits = |part: &str, len: usize| part.len() == len && part.bytes().all(|b| b.is_ascii_digit());
    digits(year, 4) && digits(month, 2) && month.parse::<u8>().is_ok_and(|m| (1..=12).contains(&m))
}
