//! Says how a figure was worked out, in the reader's words and measures.
//!
//! Messages: `figure-<id>` is the title; its attributes `.formula`, `.caveat`, `.caution`. Inputs are named by
//! `input-<fact>`, parts by `part-<part>`, remarks by `figure-note-<key>`. A formula may use every input and step
//! of the figure by name, with `_` for `.` and `-`, and `$result`, the numbers of the figure.

use crate::measure::{Quantity, Rounding};
use crate::unit::rounding_of;
use crate::words::format::{self, Places};
use crate::words::{Args, Reader, Value, Words};

use super::{COMMON_PRACTICE, Detail, Figure, Outcome, State, Step};

/// A figure in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Explained {
    /// What it is.
    pub title: String,
    /// Its value, or why there is none.
    pub value: String,
    /// What it came from.
    pub inputs: Vec<ExplainedInput>,
    /// The formula in words with the numbers in it; empty when nothing was computed.
    pub formula: String,
    /// Direction it was rounded in.
    pub rounding: String,
    /// Source of the formula.
    pub source: String,
    /// What it does not know.
    pub caveat: String,
    /// What to do about it.
    pub caution: String,
}

/// An input in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ExplainedInput {
    /// What it is.
    pub name: String,
    /// Its value.
    pub value: String,
    /// Where it came from.
    pub from: String,
}

/// Explains a figure.
#[must_use]
pub fn explain(words: &Words, reader: &Reader, figure: &Figure) -> Explained {
    let key = format!("figure-{}", figure.id);
    let args = args(words, reader, figure);
    let computed = figure.state == State::Ok;
    let optional = |key: &str| words.try_say(reader, key, &args).unwrap_or_default();
    let formula =
        if computed { super::formula::formula(words, reader, figure, &args) } else { String::new() };
    let mut caveats = vec![optional(&format!("{key}.caveat"))];
    caveats.extend(
        figure.notes.iter().map(|note| words.say(reader, &format!("figure-note-{}", note.key), &args)),
    );
    let source = if figure.source == COMMON_PRACTICE {
        words.say(reader, "figure-common-practice", &Args::new())
    } else {
        figure.source.to_owned()
    };
    Explained {
        title: words.say(reader, &key, &args),
        value: value_text(words, reader, figure),
        inputs: figure
            .inputs
            .iter()
            .map(|input| ExplainedInput {
                name: input_name(words, reader, &input.name),
                value: input.quantity.map_or_else(
                    || input.value.clone(),
                    |q| exact(words, reader, &q, rounding_of(&input.name)),
                ),
                from: words.say(reader, &format!("from-{}", input.from), &Args::new()),
            })
            .collect(),
        formula,
        rounding: words.say(reader, rounding_key(figure.rounding), &Args::new()),
        source,
        caveat: caveats.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" "),
        caution: optional(&format!("{key}.caution")),
    }
}

const fn rounding_key(rounding: Rounding) -> &'static str {
    match rounding {
        Rounding::Down => "rounding-down",
        Rounding::Up => "rounding-up",
        Rounding::Nearest => "rounding-nearest",
        Rounding::Exact => "rounding-exact",
    }
}

pub(super) fn exact(words: &Words, reader: &Reader, q: &Quantity, rounding: Rounding) -> String {
    format::quantity(words, reader, q, rounding, Places::AsWritten)
}

/// In which direction a step is shown in another measure: what there is down, what is needed up.
fn step_rounding(name: &str) -> Rounding {
    match name {
        "capacity" | "there" | "gain" | "part_there" | "start" | "end" | "limit" | "most" | "most_long"
        | "left" | "outlet" | "longest" => Rounding::Down,
        "people" | "water" | "daily" | "need" | "loaded" | "tongue" | "strongest" | "rolling" | "braking" => {
            Rounding::Up
        }
        _ => Rounding::Nearest,
    }
}

/// The name of a fact; a load, item or night load is named by its own message.
pub(super) fn input_name(words: &Words, reader: &Reader, name: &str) -> String {
    let key = format!("input-{}", name.replace(['.', '_'], "-"));
    if let Ok(text) = words.try_say(reader, &key, &Args::new()) {
        return text;
    }
    let (family, id) = name.split_once('.').unwrap_or((name, ""));
    if matches!(family, "loads" | "night" | "day")
        && let Ok(text) = words.try_say(reader, &format!("load-{id}"), &Args::new())
    {
        return text;
    }
    if family == "loads" { id.replace('-', " ") } else { name.to_owned() }
}

/// Values that a formula can use: inputs, steps and the result.
fn args(words: &Words, reader: &Reader, figure: &Figure) -> Args {
    let mut args = Args::new();
    let named =
        figure.inputs.iter().filter_map(|i| Some((i.name.as_str(), i.quantity?, rounding_of(&i.name))));
    for (name, q, rounding) in named {
        let name = name.replace(['.', '-'], "_");
        args.extend(Args::new().measured(&name, exact(words, reader, &q, rounding), q.amount()));
    }
    for step in figure.steps.iter().chain(figure.notes.iter().flat_map(|n| &n.with)) {
        put_step(words, reader, &mut args, step);
    }
    for input in figure.inputs.iter().filter(|i| i.quantity.is_none()) {
        args.set(&input.name.replace(['.', '-'], "_"), Value::Text(input.value.clone()));
    }
    args.set("result", Value::Text(numbers(words, reader, figure)));
    args.set("signs", Value::Text(figure.formula.clone()));
    args.set("verdict", Value::Text(figure.verdict.unwrap_or("none").to_owned()));
    args
}

/// A number on the way as a value of a message.
pub(super) fn put_step(words: &Words, reader: &Reader, args: &mut Args, step: &Step) {
    if let Some(q) = step.quantity() {
        let text = exact(words, reader, &q, step_rounding(step.name));
        args.extend(Args::new().measured(step.name, text, q.amount()));
    }
}

/// The value in the reader's measures: `1,587 lb (719 kg)`, several joined by the language's rule, a verdict as a
/// word; without a value, why there is none.
#[must_use]
pub fn value_text(words: &Words, reader: &Reader, figure: &Figure) -> String {
    match &figure.state {
        State::NotFitted => return words.say(reader, "figure-not-fitted", &Args::new()),
        State::Missing(name) => {
            let args = Args::new().text("fact", input_name(words, reader, name));
            return words.say(reader, "figure-missing", &args);
        }
        State::Ok => {}
    }
    if let Detail::Bill(bill) = &figure.detail {
        return super::formula::money(words, reader, figure, bill.total);
    }
    let numbers = numbers(words, reader, figure);
    match figure.verdict {
        None => numbers,
        Some(verdict) => {
            let args = Args::new().text("value", numbers);
            words.say(reader, &format!("verdict-{}-{verdict}", figure.id), &args)
        }
    }
}

/// The numbers of a figure without what they mean.
fn numbers(words: &Words, reader: &Reader, figure: &Figure) -> String {
    let texts: Vec<String> = figure.outcomes.iter().filter_map(|o| outcome(words, reader, o)).collect();
    format::list(words, reader, &texts)
}

/// The name of a part of a figure.
pub(super) fn part_name(words: &Words, reader: &Reader, of: &str) -> String {
    words.try_say(reader, &format!("part-{of}"), &Args::new()).unwrap_or_else(|_| of.to_owned())
}

/// The number of a part with its measure.
pub(super) fn number_text(words: &Words, reader: &Reader, outcome: &Outcome) -> Option<String> {
    let shown = outcome.shown(reader.system)?;
    Some(match outcome.counted {
        Some(counted) => {
            // What is counted is said whole, in the safe direction.
            let whole = crate::measure::rounded_decimal(shown.amount(), 0, outcome.rounding);
            let args = Args::new().text("amount", format::number(words, reader, whole)).number("n", whole);
            words.say(reader, &format!("counted-{counted}"), &args)
        }
        // The measure in brackets is converted from the number before it, in the same direction.
        None => format::quantity(words, reader, &shown, outcome.rounding, Places::AsWritten),
    })
}

fn outcome(words: &Words, reader: &Reader, outcome: &Outcome) -> Option<String> {
    let text = number_text(words, reader, outcome)?;
    Some(match &outcome.of {
        None => text,
        Some(of) => {
            let of = part_name(words, reader, of);
            words.say(reader, "figure-part", &Args::new().text("part", of).text("value", text))
        }
    })
}

impl Figure {
    /// The values of messages that name this figure: `$<id>` for printing and `$<id>_n` for selectors; none when
    /// it could not be computed.
    #[must_use]
    pub fn args(&self, words: &Words, reader: &Reader) -> Args {
        if self.state != State::Ok {
            return Args::new();
        }
        let text = value_text(words, reader, self);
        match self.outcomes.first().and_then(|o| o.shown(reader.system)) {
            Some(first) => Args::new().measured(self.id, text, first.amount()),
            None => Args::new().text(self.id, text),
        }
    }
}
