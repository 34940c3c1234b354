//! Says the words of a script for one unit and one reader.

use std::fmt::Write as _;

use sha2::{Digest as _, Sha256};

use crate::figures::{self, Figure, State};
use crate::route::{Caution, Step};
use crate::source::nearest;
use crate::unit::{Facts, Sheet, Value, rounding_of};
use crate::words::format::{self, Places};
use crate::words::{self, Args, Reader, SayFault};

use super::{Scripts, Signal};

/// Fills messages with the facts, places and figures of one unit, for one reader.
#[derive(Debug, Clone)]
pub struct Speaker<'a> {
    scripts: &'a Scripts,
    reader: Reader,
    args: Args,
}

/// A caution as it stands on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CautionText {
    /// Short title.
    pub title: String,
    /// Signal word.
    pub signal: String,
    /// What is dangerous.
    pub hazard: String,
    /// What it does.
    pub harm: String,
    /// What to do.
    pub avoid: String,
}

impl CautionText {
    /// SHA-256 over the parts that a renter confirms, each ended by a line feed; 64 hex digits.
    #[must_use]
    pub fn digest(&self) -> String {
        digest(&[&self.signal, &self.hazard, &self.harm, &self.avoid])
    }
}

/// SHA-256 over texts, each ended by a line feed; 64 hex digits.
fn digest(parts: &[&str]) -> String {
    let mut hash = Sha256::new();
    for part in parts {
        hash.update(part);
        hash.update("\n");
    }
    hash.finalize().iter().fold(String::new(), |mut hex, b| {
        let _ = write!(hex, "{b:02x}");
        hex
    })
}

/// A step as it stands on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepText {
    /// Title.
    pub title: String,
    /// What staff show.
    pub show: Vec<String>,
    /// What the renter should know.
    pub know: Vec<String>,
    /// What is special about this unit.
    pub notes: Vec<String>,
}

impl<'a> Speaker<'a> {
    /// A speaker for a unit of the lot; `None` when the lot has no such unit.
    #[must_use]
    pub fn new(scripts: &'a Scripts, unit: &str, reader: Reader) -> Option<Self> {
        let sheet = &scripts.units.get(unit)?.value;
        let facts = scripts.facts(unit)?;
        let args = Filler { scripts, reader: &reader, sheet, facts: &facts }.args();
        Some(Self { scripts, reader, args })
    }

    /// Who reads.
    #[must_use]
    pub fn reader(&self) -> &Reader {
        &self.reader
    }

    /// A message, filled.
    #[must_use]
    pub fn say(&self, key: &str) -> String {
        self.scripts.words.say(&self.reader, key, &self.args)
    }

    /// A message, filled with more values as well.
    #[must_use]
    pub fn say_with(&self, key: &str, more: Args) -> String {
        let mut args = self.args.clone();
        args.extend(more);
        self.scripts.words.say(&self.reader, key, &args)
    }

    /// A message, filled, or everything it lacks.
    ///
    /// # Errors
    /// The message is not there, or wants values that this unit does not have.
    pub fn try_say(&self, key: &str) -> Result<String, Vec<SayFault>> {
        self.scripts.words.try_say(&self.reader, key, &self.args)
    }

    /// The value whose name is nearest to a wrong one.
    #[must_use]
    pub fn nearest_value(&self, name: &str) -> Option<&str> {
        nearest(name, self.args.names())
    }

    /// A caution as it stands on the page.
    #[must_use]
    pub fn caution(&self, caution: &Caution) -> CautionText {
        let part = |part: &str| self.say(&format!("caution-{}{part}", caution.id));
        CautionText {
            title: part(".title"),
            signal: self.say(signal_key(caution.signal)),
            hazard: part(""),
            harm: part(".harm"),
            avoid: part(".avoid"),
        }
    }

    /// A step as it stands on the page.
    #[must_use]
    pub fn step(&self, step: &Step) -> StepText {
        let all = |keys: &[String]| keys.iter().map(|k| self.say(k)).collect();
        StepText {
            title: self.say(&format!("step-{}", step.id)),
            show: all(&step.show),
            know: all(&step.know),
            notes: all(&step.notes),
        }
    }
}

/// Message of a signal word.
fn signal_key(signal: Signal) -> &'static str {
    match signal {
        Signal::Danger => "signal-danger",
        Signal::Warning => "signal-warning",
        Signal::Caution => "signal-caution",
        Signal::Notice => "signal-notice",
    }
}

/// Turns facts, places and figures into values of messages.
struct Filler<'a> {
    scripts: &'a Scripts,
    reader: &'a Reader,
    sheet: &'a Sheet,
    facts: &'a Facts,
}

impl Filler<'_> {
    fn args(&self) -> Args {
        let mut args = Args::new();
        for (name, fact) in self.facts.iter() {
            self.put_fact(&mut args, name, &fact.value);
        }
        for figure in figures::of_unit(self.facts) {
            self.put_figure(&mut args, &figure);
        }
        self.put_places(&mut args);
        args
    }

    fn put_fact(&self, args: &mut Args, name: &str, value: &Value) {
        let variable = name.replace('.', "_");
        let words = &self.scripts.words;
        match value {
            Value::Quantity(q) => {
                args.extend(format::quantity_args(words, self.reader, &variable, q, rounding_of(name)));
            }
            Value::Count(n) => {
                let text = format::number(words, self.reader, (*n).into());
                args.extend(Args::new().measured(&variable, text, (*n).into()));
            }
            Value::Word(word) => args.set(&variable, words::Value::Text((*word).to_owned())),
            Value::Code(code) => args.set(&variable, words::Value::Text(code.clone())),
            Value::Flag(flag) => args.set(&variable, words::Value::Text(flag.to_string())),
            Value::Money(sum) => {
                let text = format::money(words, self.reader, sum, &self.scripts.lot.value.currency);
                args.set(&variable, words::Value::Text(text));
            }
            Value::List(_) if name == "tires.cold" => {
                let texts = self.by_axle(|i| self.sheet.axles.get(i).map(|a| *a.cold.quantity()), name);
                args.set(&variable, words::Value::Text(texts));
            }
            Value::List(items) => {
                let texts: Vec<String> = items.iter().filter_map(|v| self.list_item(name, v)).collect();
                args.set(&variable, words::Value::Text(format::list(words, self.reader, &texts)));
            }
            Value::NotFitted => {}
        }
    }

    fn list_item(&self, name: &str, value: &Value) -> Option<String> {
        match value {
            Value::Quantity(q) => {
                Some(format::quantity(&self.scripts.words, self.reader, q, rounding_of(name), Places::AsWritten))
            }
            Value::Count(n) => Some(n.to_string()),
            Value::Word(_) | Value::Code(_) | Value::Flag(_) | Value::Money(_) | Value::List(_) | Value::NotFitted => {
                None
            }
        }
    }

    /// One value an axle, joined: 'front 75 psi and rear 80 psi'.
    fn by_axle(&self, value: impl Fn(usize) -> Option<crate::measure::Quantity>, name: &str) -> String {
        let words = &self.scripts.words;
        let texts: Vec<String> = self
            .sheet
            .axles
            .iter()
            .enumerate()
            .filter_map(|(i, axle)| {
                let axle = words.say(self.reader, &format!("axle-{}", axle.at.word()), &Args::new());
                let pressure = format::quantity(words, self.reader, &value(i)?, rounding_of(name), Places::AsWritten);
                Some(words.say(self.reader, "axle-pressure", &Args::new().text("axle", axle).text("pressure", pressure)))
            })
            .collect();
        format::list(words, self.reader, &texts)
    }

    fn put_figure(&self, args: &mut Args, figure: &Figure) {
        if figure.state != State::Ok {
            return;
        }
        if figure.id.starts_with("tire_") {
            let text = self.by_axle(|i| figure.values.get(i).copied(), "tires.cold");
            args.set(figure.id, words::Value::Text(text));
        } else if let Some(value) = figure.values.first() {
            args.extend(format::quantity_args(&self.scripts.words, self.reader, figure.id, value, figure.rounding));
        }
    }

    fn put_places(&self, args: &mut Args) {
        let words = &self.scripts.words;
        for (id, entry) in &self.sheet.places {
            let key = entry.value.words.as_ref().map_or_else(|| format!("place-{id}"), |w| w.value.clone());
            let text = words.say(self.reader, &key, &Args::new());
            args.set(&format!("place_{}", id.replace('-', "_")), words::Value::Text(text));
        }
        let exits: Vec<String> = self
            .sheet
            .exits
            .iter()
            .map(|e| words.say(self.reader, &format!("exit-{}", e.place.value), &Args::new()))
            .collect();
        args.set("exits", words::Value::Text(format::list(words, self.reader, &exits)));
    }
}
