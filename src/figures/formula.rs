//! The formula of a figure in words with the numbers in it.
//!
//! `figure-<id>.formula` alone, or the sentences that the figure noted (`figure-<id>.<key>`), or a line for each
//! load or line of a bill; joined by `formula-next`.

use crate::measure::{Measure, Money, Quantity, Rounding};
use crate::words::format;
use crate::words::{Args, Reader, Words};

use super::bill::{Bill, Line};
use super::explain::{exact, input_name, part_name, put_step};
use super::loads::Fit;
use super::{Detail, Figure, Sentence};

/// Says the formula; `args` hold the figure's inputs and steps.
pub(super) fn formula(words: &Words, reader: &Reader, figure: &Figure, args: &Args) -> String {
    let saying = Saying { words, reader, figure, args };
    let lines = match &figure.detail {
        Detail::Bill(bill) => saying.bill(bill),
        Detail::Loads(fit) => vec![saying.loads(fit)],
        _ if figure.sentences.is_empty() => Vec::new(),
        _ => figure.sentences.iter().map(|sentence| saying.sentence(sentence)).collect(),
    };
    let joined = lines.into_iter().reduce(|before, next| {
        words.say(reader, "formula-next", &Args::new().text("before", before).text("next", next))
    });
    joined.unwrap_or_else(|| {
        let key = format!("figure-{}.formula", figure.id);
        words.try_say(reader, &key, args).unwrap_or_else(|_| figure.formula.clone())
    })
}

struct Saying<'a> {
    words: &'a Words,
    reader: &'a Reader,
    figure: &'a Figure,
    args: &'a Args,
}

impl Saying<'_> {
    fn own(&self, key: &str, args: &Args) -> String {
        self.words.say(self.reader, &format!("figure-{}.{key}", self.figure.id), args)
    }

    fn sentence(&self, sentence: &Sentence) -> String {
        let mut args = self.args.clone();
        for step in &sentence.with {
            put_step(self.words, self.reader, &mut args, step);
        }
        if let Some(of) = sentence.of {
            args = args.text("part", part_name(self.words, self.reader, of));
            let outcomes = self.figure.outcomes.iter();
            if let Some(value) = outcomes
                .filter(|outcome| outcome.of.as_deref() == Some(of))
                .find_map(|outcome| super::explain::number_text(self.words, self.reader, outcome))
            {
                args = args.text("value", value);
            }
        }
        self.own(sentence.key, &args)
    }

    /// What is on and what it draws, against what the supply gives.
    fn loads(&self, fit: &Fit) -> String {
        let draw = |id: &String| {
            let name = format!("loads.{id}");
            let quantity = self.figure.inputs.iter().find(|input| input.name == name)?.quantity?;
            let args = Args::new()
                .text("load", input_name(self.words, self.reader, &name))
                .text("draw", exact(self.words, self.reader, &quantity, Rounding::Up));
            Some(self.own("each", &args))
        };
        let loads: Vec<String> = fit.on.iter().filter_map(draw).collect();
        let supply = self.words.say(self.reader, &format!("supply-{}", fit.supply), &Args::new());
        let args = self
            .args
            .clone()
            .text("loads", format::list(self.words, self.reader, &loads))
            .text("supply", supply);
        let for_hours = self.figure.part("most-long").is_some();
        let key = match (loads.is_empty(), fit.supply == "nothing", for_hours) {
            (_, true, _) => "nothing",
            (true, _, true) => "supply",
            (true, _, false) => "supply-at-once",
            (false, _, true) => "formula",
            (false, _, false) => "at-once",
        };
        self.own(key, &args)
    }

    fn money(&self, sum: rust_decimal::Decimal) -> String {
        money(self.words, self.reader, self.figure, sum)
    }

    /// The lines of a bill, its tax and what goes back.
    fn bill(&self, bill: &Bill) -> Vec<String> {
        let line = |line: &Line| {
            let args = Args::new()
                .text("line", bill_line(self.words, self.reader, &line.id))
                .text("count", format::number(self.words, self.reader, line.count.normalize()))
                .text("price", self.money(line.price))
                .text("amount", self.money(line.amount));
            self.own("line", &args)
        };
        let mut lines: Vec<String> = bill.lines.iter().map(line).collect();
        let sums = self
            .args
            .clone()
            .text("taxed", self.money(bill.taxed))
            .text("tax", self.money(bill.tax))
            .text("total", self.money(bill.total));
        if lines.is_empty() {
            lines.push(self.own("no-lines", &sums));
        }
        lines.push(self.own("tax", &sums));
        lines.push(self.own("total", &sums));
        if let (Some(deposit), Some(back)) = (bill.deposit, bill.back) {
            let sums = sums.text("deposit", self.money(deposit)).text("back", self.money(back.abs()));
            lines.push(self.own(if back.is_sign_negative() { "owed" } else { "back" }, &sums));
        }
        lines
    }
}

/// A sum in the currency of the figure's lot.
pub(super) fn money(words: &Words, reader: &Reader, figure: &Figure, sum: rust_decimal::Decimal) -> String {
    let currency = figure.inputs.iter().find(|input| input.name == "lot.currency");
    match (currency, sum.to_string().parse::<Money>()) {
        (Some(currency), Ok(money)) => format::money(words, reader, &money, &currency.value),
        _ => sum.to_string(),
    }
}

/// What a line of a bill is for.
#[must_use]
pub fn bill_line(words: &Words, reader: &Reader, id: &str) -> String {
    match id.strip_prefix("missing-") {
        Some(tag) => words.say(reader, "bill-missing", &Args::new().text("tag", tag)),
        None => words.say(reader, &format!("bill-{id}"), &Args::new()),
    }
}

/// A number of hours, for sentences.
#[must_use]
pub(super) fn hours(words: &Words, reader: &Reader, hours: u8) -> String {
    let hours = Quantity::new(rust_decimal::Decimal::from(hours), Measure::Hour);
    exact(words, reader, &hours, Rounding::Exact)
}
