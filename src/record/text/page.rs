//! The sheet that `record.txt` is written on.

use std::collections::BTreeMap;

use jiff::tz::Offset;
use rust_decimal::Decimal;

use super::width::{self, COLUMNS, wrap};
use crate::measure::{Money, Quantity};
use crate::record::build;
use crate::record::form::{self, AgentOn, Head, Time, Who};
use crate::words::{Args, Reader, Words, format};

/// Column in which the value of a labelled line begins.
const VALUE: usize = 24;
/// Least room for the left part of a row.
const LEFT: usize = 24;

/// What is written so far, and who reads it.
pub(super) struct Page<'a> {
    pub(super) words: &'a Words,
    pub(super) reader: Reader,
    offset: i16,
    names: BTreeMap<u8, String>,
    agents: Vec<AgentOn>,
    currency: String,
    notices: Vec<&'static str>,
    out: String,
}

impl<'a> Page<'a> {
    /// A page whose times are local to `offset` minutes from UTC; others tell their offset.
    pub(super) fn new(
        words: &'a Words,
        reader: &form::Reader,
        offset: i16,
        names: BTreeMap<u8, String>,
    ) -> Self {
        let reader = build::reader(reader);
        let (agents, currency, notices, out) = (Vec::new(), String::new(), Vec::new(), String::new());
        Self { words, reader, offset, names, agents, currency, notices, out }
    }

    /// Takes over what every section needs.
    pub(super) fn head(&mut self, head: &Head, currency: &str, agents: &[AgentOn]) {
        currency.clone_into(&mut self.currency);
        self.agents = agents.to_vec();
        if head.demo {
            self.notices.push("notice-demo");
        }
        if head.rehearsal {
            self.notices.push("notice-rehearsal");
        }
    }

    /// The text, without blanks that do not break: they were for the wrapping only.
    pub(super) fn finish(self) -> String {
        self.out.replace('\u{A0}', " ")
    }

    /// A message.
    pub(super) fn say(&self, key: &str) -> String {
        self.words.say(&self.reader, key, &Args::new())
    }

    /// A message with values.
    pub(super) fn say_with(&self, key: &str, args: &Args) -> String {
        self.words.say(&self.reader, key, args)
    }

    /// A message if there is one, otherwise the word it is about.
    pub(super) fn say_or(&self, key: &str, word: &str) -> String {
        let known = [self.reader.lang.as_str(), self.words.source_language()];
        if known.iter().any(|lang| self.words.has(lang, key)) { self.say(key) } else { word.to_owned() }
    }

    /// A line as it is.
    pub(super) fn line(&mut self, text: &str) {
        self.out.push_str(text.trim_end());
        self.out.push('\n');
    }

    /// An empty line.
    pub(super) fn blank(&mut self) {
        self.out.push('\n');
    }

    /// A line of one character across the page.
    pub(super) fn rule(&mut self, c: char) {
        let rule: String = std::iter::repeat_n(c, COLUMNS).collect();
        self.line(&rule);
    }

    /// The notices of a demo or rehearsal, if it is one.
    pub(super) fn notice(&mut self) {
        for key in self.notices.clone() {
            let text = self.say(key);
            self.para(0, &text);
        }
    }

    /// The head of a section, with what must stand on every page.
    pub(super) fn section(&mut self, key: &str) {
        self.blank();
        self.rule('-');
        let text = self.say(key);
        self.para(0, &text);
        self.notice();
        self.rule('-');
    }

    /// A paragraph.
    pub(super) fn para(&mut self, indent: usize, text: &str) {
        self.hang(indent, "", text);
    }

    /// A paragraph whose further lines stand under its first word after `mark`.
    pub(super) fn hang(&mut self, indent: usize, mark: &str, text: &str) {
        let inner = indent + width::of(mark);
        let pad = " ".repeat(inner);
        for (index, line) in wrap(&clean(text), COLUMNS.saturating_sub(inner)).iter().enumerate() {
            if index == 0 {
                self.line(&format!("{}{mark}{line}", " ".repeat(indent)));
            } else {
                self.line(&format!("{pad}{line}"));
            }
        }
    }

    /// A labelled value: beside its label where both fit, else below it.
    pub(super) fn field(&mut self, key: &str, value: &str) {
        let label = self.say(key);
        let longest = clean(value).split([' ', '\n']).map(width::of).max().unwrap_or(0);
        let room = COLUMNS - VALUE;
        if 2 + width::of(&label) < VALUE && longest <= room {
            let pad = " ".repeat(VALUE - 2 - width::of(&label));
            self.hang(2, &format!("{label}{pad}"), value);
        } else {
            self.para(2, &label);
            self.para(4, value);
        }
    }

    /// A text with a value at the right edge, dots between them.
    pub(super) fn row(&mut self, indent: usize, left: &str, right: &str) {
        let (left, right) = (clean(left), clean(right));
        let room = COLUMNS.saturating_sub(indent + width::of(&right) + 3);
        if room < LEFT || right.contains('\n') {
            self.para(indent, &left);
            self.para(indent + 4, &right);
            return;
        }
        let lines = wrap(&left, room);
        let last = lines.len().saturating_sub(1);
        for (index, line) in lines.iter().enumerate() {
            let deeper = if index == 0 { indent } else { indent + 2 };
            // The last line carries the value.
            if index == last {
                let used = deeper + width::of(line) + width::of(&right) + 2;
                let dots = ".".repeat(COLUMNS.saturating_sub(used));
                self.line(&format!("{}{line} {dots} {right}", " ".repeat(deeper)));
            } else {
                self.line(&format!("{}{line}", " ".repeat(deeper)));
            }
        }
    }

    /// Somebody of the party, by name and number.
    pub(super) fn person(&self, number: u8) -> String {
        let args = Args::new().number("number", i64::from(number));
        match self.names.get(&number).map(String::as_str) {
            Some("") | None => self.say_with("record-person-unnamed", &args),
            Some(name) => self.say_with("record-person", &args.text("name", name)),
        }
    }

    /// Whoever it is; of the agents the one who was on duty then.
    pub(super) fn who(&self, who: Who, at: &Time) -> String {
        match who {
            Who::Agent => {
                let on = self.agents.iter().rfind(|agent| agent.at.utc <= at.utc).or(self.agents.first());
                let code = on.map_or("", |agent| agent.code.as_str());
                self.say_with("record-agent-who", &Args::new().text("code", code)).trim_end().to_owned()
            }
            Who::Person { number } => self.person(number),
            Who::Unknown => self.say("record-unknown"),
        }
    }

    /// A moment on the clock of the lot.
    pub(super) fn time(&self, time: &Time) -> String {
        let offset = Offset::from_seconds(i32::from(time.offset_minutes) * 60).unwrap_or(Offset::UTC);
        let local = offset.to_datetime(time.utc);
        if time.offset_minutes == self.offset {
            format::date_time(self.words, &self.reader, local)
        } else {
            format::date_time_with_offset(self.words, &self.reader, local, offset)
        }
    }

    /// A duration in whole minutes.
    pub(super) fn minutes(&self, minutes: u32) -> String {
        format::duration_minutes(self.words, &self.reader, minutes)
    }

    /// A moment in UTC on the clock of the lot.
    pub(super) fn time_utc(&self, utc: jiff::Timestamp) -> String {
        self.time(&Time { utc, offset_minutes: self.offset })
    }

    /// A moment with the offset of its clock.
    pub(super) fn time_with_offset(&self, utc: jiff::Timestamp) -> String {
        let offset = Offset::from_seconds(i32::from(self.offset) * 60).unwrap_or(Offset::UTC);
        format::date_time_with_offset(self.words, &self.reader, offset.to_datetime(utc), offset)
    }

    /// A sum in the lot's currency.
    pub(super) fn money(&self, sum: &Money) -> String {
        format::money(self.words, &self.reader, sum, &self.currency)
    }

    /// A whole number.
    pub(super) fn count(&self, number: impl Into<Decimal>) -> String {
        format::number(self.words, &self.reader, number.into())
    }

    /// Seconds from milliseconds, to the tenth.
    pub(super) fn seconds(&self, milliseconds: u32) -> String {
        let seconds = Decimal::new(i64::from(milliseconds), 3).round_dp(1);
        self.measured(&seconds.to_string(), "s")
    }

    /// A value exactly as it was read, in the measure it was read in.
    pub(super) fn measured(&self, value: &str, measure: &str) -> String {
        let quantity = Quantity::parse(format!("{value} {measure}").trim_end());
        match (value.parse::<Decimal>(), quantity) {
            (Ok(number), Ok(_)) if measure.is_empty() => self.count(number),
            (Ok(number), Ok(quantity)) => {
                let args = Args::new().text("amount", self.count(number)).number("n", number);
                self.say_with(&format::measure_key(quantity.measure()), &args)
            }
            _ => format!("{value} {measure}").trim_end().to_owned(),
        }
    }
}

/// A text that cannot turn the direction of a line, move a cursor or hide: what people typed may hold anything.
fn clean(text: &str) -> String {
    let harmful = |c: char| {
        (c.is_control() && c != '\n')
            || matches!(c, '\u{61C}' | '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2028}' | '\u{2029}' | '\u{2066}'..='\u{2069}' | '\u{FEFF}')
    };
    text.chars().map(|c| if harmful(c) { '\u{FFFD}' } else { c }).collect()
}
