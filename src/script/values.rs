//! Values of messages, each worked out when a message asks for it.

use std::collections::BTreeSet;

use crate::figures::{self, Figure, Given, State, Trip};
use crate::unit::{Faces, Facts, Seat, Sheet, Value, rounding_of};
use crate::words::format::{self, Places};
use crate::words::{self, Args, Reader};

use super::Scripts;

/// Facts, places and figures of one unit, as one reader sees them.
///
/// A fact `step.limit` is `$step_limit`, a place `lp-valve` is `$place_lp_valve`, a figure has its own name; `_n`
/// at the end asks for the number alone. `$fitted_propane` and `$fitted_waste_black` are `yes` or `no`, so that one
/// message says what fits the unit.
pub(super) struct Values<'a> {
    pub(super) scripts: &'a Scripts,
    pub(super) reader: &'a Reader,
    pub(super) sheet: &'a Sheet,
    pub(super) facts: &'a Facts,
    pub(super) trip: Option<&'a Trip>,
    /// Whether a figure that cannot be computed has no value; else its value says why.
    pub(super) strict: bool,
}

impl Values<'_> {
    /// The values of these variables; without those that the unit does not have.
    pub(super) fn of(&self, variables: &BTreeSet<String>) -> Args {
        let mut args = Args::new();
        for variable in variables {
            if args.get(variable).is_none() {
                self.put(&mut args, variable);
            }
        }
        args
    }

    /// Whether the unit has a value for a variable.
    pub(super) fn has(&self, variable: &str) -> bool {
        if variable == "child_seats" {
            return !self.child_seats().is_empty();
        }
        if variable == "child_seats_n" || self.fitted(variable).is_some() {
            return true;
        }
        let stem = variable.strip_suffix("_n");
        let has_number = |value: &Value| matches!(value, Value::Quantity(_) | Value::Count(_));
        if let Some((_, value)) = self.fact(variable) {
            return *value != Value::NotFitted;
        }
        // The number of what is not known is never printed; a selector without it takes its usual branch.
        if self.is_not_known(variable) || stem.is_some_and(|stem| self.is_not_known(stem)) {
            return true;
        }
        if let Some((_, value)) = stem.and_then(|stem| self.fact(stem)) {
            return has_number(value);
        }
        if let Some(place) = variable.strip_prefix("place_") {
            return self.sheet.places.contains_key(&place.replace('_', "-"));
        }
        let mut args = Args::new();
        self.put(&mut args, variable);
        args.get(variable).is_some()
    }

    /// All names that a variable can have here.
    pub(super) fn names(&self) -> Vec<String> {
        let facts = self.facts.iter().map(|(name, _)| name.replace('.', "_"));
        let places = self.sheet.places.keys().map(|id| place_variable(id));
        let figures = figures::ids().map(ToOwned::to_owned);
        facts.chain(places).chain(figures).chain(["exits", "child_seats"].map(ToOwned::to_owned)).collect()
    }

    fn put(&self, args: &mut Args, variable: &str) {
        let stem = variable.strip_suffix("_n").unwrap_or(variable);
        if let Some(place) = variable.strip_prefix("place_") {
            self.put_place(args, variable, place);
        } else if variable == "exits" {
            args.set(variable, words::Value::Text(self.exits()));
        } else if stem == "child_seats" {
            self.put_child_seats(args);
        } else if let Some(fitted) = self.fitted(variable) {
            args.set(variable, words::Value::Text(if fitted { "yes" } else { "no" }.to_owned()));
        } else if let Some((name, value)) = self.fact(variable).or_else(|| self.fact(stem)) {
            self.put_fact(args, &name, value);
        } else if self.is_not_known(variable) {
            let fee = variable.starts_with("fees_");
            self.put_words(args, variable, if fee { "fee-not-known" } else { "fact-not-known" });
        } else if self.is_not_known(stem) {
            // Its number is as absent as it is.
        } else if let Some(figure) = figures::one(stem, Given { facts: self.facts, trip: self.trip }) {
            self.put_figure(args, &figure);
        }
    }

    /// The fact behind a variable.
    fn fact(&self, variable: &str) -> Option<(String, &Value)> {
        named(variable).find_map(|name| {
            let value = &self.facts.get(&name)?.value;
            Some((name, value))
        })
    }

    /// Whether the fact behind a variable is one that nobody has read yet.
    fn is_not_known(&self, variable: &str) -> bool {
        named(variable).any(|name| self.facts.is_not_known(&name))
    }

    /// Whether the section or fact behind `$fitted_...` is fitted; none where there is no such thing.
    fn fitted(&self, variable: &str) -> Option<bool> {
        let name = variable.strip_prefix("fitted_")?;
        let known = |name: &str| self.facts.is_fitted(name);
        known(name).or_else(|| named(name).find_map(|name| known(&name)))
    }

    fn put_words(&self, args: &mut Args, variable: &str, key: &str) {
        let text = self.scripts.words.say(self.reader, key, &Args::new());
        args.set(variable, words::Value::Text(text));
    }

    fn put_fact(&self, args: &mut Args, name: &str, value: &Value) {
        let variable = name.replace('.', "_");
        let words = &self.scripts.words;
        let text = match value {
            Value::Quantity(q) => {
                args.extend(format::quantity_args(words, self.reader, &variable, q, rounding_of(name)));
                return;
            }
            Value::Count(n) => {
                let text = format::number(words, self.reader, (*n).into());
                args.extend(Args::new().measured(&variable, text, (*n).into()));
                return;
            }
            Value::NotFitted => return,
            Value::Word(word) => (*word).to_owned(),
            Value::Code(code) if name.ends_with("_replace_by") => format::month(words, self.reader, code),
            Value::Code(code) => code.clone(),
            Value::Flag(flag) => flag.to_string(),
            Value::Money(sum) => format::money(words, self.reader, sum, &self.scripts.lot.value.currency),
            Value::List(_) if name == "tires.cold" => {
                self.by_axle(|i| self.sheet.axles.get(i).map(|a| *a.cold.quantity()), name)
            }
            Value::List(items) => {
                let texts: Vec<String> = items.iter().filter_map(|v| self.list_item(name, v)).collect();
                format::list(words, self.reader, &texts)
            }
        };
        args.set(&variable, words::Value::Text(text));
    }

    fn list_item(&self, name: &str, value: &Value) -> Option<String> {
        let words = &self.scripts.words;
        match value {
            Value::Quantity(q) => {
                Some(format::quantity(words, self.reader, q, rounding_of(name), Places::AsWritten))
            }
            Value::Count(n) => Some(n.to_string()),
            Value::Word(_)
            | Value::Code(_)
            | Value::Flag(_)
            | Value::Money(_)
            | Value::List(_)
            | Value::NotFitted => None,
        }
    }

    /// One value an axle, joined: 'front 75 psi and rear 80 psi'.
    fn by_axle(&self, value: impl Fn(usize) -> Option<crate::measure::Quantity>, name: &str) -> String {
        let words = &self.scripts.words;
        let axles = self.sheet.axles.iter().enumerate();
        let texts: Vec<String> = axles
            .filter_map(|(i, axle)| {
                let axle = words.say(self.reader, &format!("axle-{}", axle.at.word()), &Args::new());
                let pressure =
                    format::quantity(words, self.reader, &value(i)?, rounding_of(name), Places::AsWritten);
                let args = Args::new().text("axle", axle).text("pressure", pressure);
                Some(words.say(self.reader, "axle-pressure", &args))
            })
            .collect();
        format::list(words, self.reader, &texts)
    }

    fn put_figure(&self, args: &mut Args, figure: &Figure) {
        if let State::Missing(fact) = &figure.state
            && self.facts.is_not_known(fact)
        {
            self.put_words(args, figure.id, "figure-not-known");
        }
        if figure.state != State::Ok {
            // A plan may leave a gap that no one could see when the lot was checked.
            if !self.strict && self.trip.is_some() && matches!(figure.state, State::Missing(_)) {
                let text = figures::value_text(&self.scripts.words, self.reader, figure);
                args.set(figure.id, words::Value::Text(text));
            }
            return;
        }
        if figure.id.starts_with("tire_") {
            let text = self.by_axle(|i| figure.values.get(i).copied(), "tires.cold");
            args.set(figure.id, words::Value::Text(text));
        } else {
            args.extend(figure.args(&self.scripts.words, self.reader));
        }
    }

    /// Where a place is, in words. An id of the sheet has `-` where the variable has `_`.
    fn put_place(&self, args: &mut Args, variable: &str, place: &str) {
        let id = place.replace('_', "-");
        let Some(entry) = self.sheet.places.get(&id) else { return };
        if self.facts.is_not_known("places") {
            self.put_words(args, variable, "place-not-known");
            return;
        }
        let key = entry.value.words.as_ref().map_or_else(|| format!("place-{id}"), |w| w.value.clone());
        let text = self.scripts.words.say(self.reader, &key, &Args::new());
        args.set(variable, words::Value::Text(text));
    }

    /// Seats that may take a child seat: with a belt and a tether, facing forward, no airbag in front.
    fn child_seats(&self) -> Vec<String> {
        let marked = |s: &&Seat| s.belt && s.tether && s.faces == Faces::Forward && !s.airbag;
        let named = |s: &Seat| {
            let key = format!("seat-{}", s.id);
            self.scripts.words.say(self.reader, &key, &Args::new())
        };
        self.sheet.seats.iter().filter(marked).map(named).collect()
    }

    /// `$child_seats` where there is one, `$child_seats_n` always.
    fn put_child_seats(&self, args: &mut Args) {
        let seats = self.child_seats();
        let count = u16::try_from(seats.len()).unwrap_or(u16::MAX);
        args.set("child_seats_n", words::Value::Number(count.into()));
        if count > 0 {
            let list = format::list(&self.scripts.words, self.reader, &seats);
            args.set("child_seats", words::Value::Text(list));
        }
    }

    fn exits(&self) -> String {
        let words = &self.scripts.words;
        let exits = self.sheet.exits.iter();
        let texts: Vec<String> = exits.map(|e| words.say(self.reader, &e.key(), &Args::new())).collect();
        format::list(words, self.reader, &texts)
    }
}

/// The facts that a variable can mean: one of its `_` stands for the point between section and field.
fn named(variable: &str) -> impl Iterator<Item = String> + '_ {
    variable
        .match_indices('_')
        .filter_map(|(at, _)| Some(format!("{}.{}", variable.get(..at)?, variable.get(at + 1..)?)))
}

fn place_variable(id: &str) -> String {
    format!("place_{}", id.replace('-', "_"))
}
