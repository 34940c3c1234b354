//! What was found, in words for a clerk.

use super::{Finding, Problem};
use crate::archive::chains;
use crate::words::{Args, Reader, Words, format};

impl Finding {
    /// What it is and what to do, in a sentence or two.
    #[must_use]
    pub fn say(&self, words: &Words, reader: &Reader) -> String {
        words.say(reader, &format!("archive-{}", self.key()), &self.args(words, reader))
    }

    /// The message that says it.
    #[must_use]
    pub fn key(&self) -> String {
        match &self.problem {
            Problem::Record(_) => "record-bad".to_owned(),
            Problem::LogChanged => "receipt-changed".to_owned(),
            other => other.code().to_owned(),
        }
    }

    fn args(&self, words: &Words, reader: &Reader) -> Args {
        let time = |at: jiff::Timestamp| {
            let utc = jiff::tz::Offset::UTC.to_datetime(at);
            format::date_time(words, reader, utc)
        };
        let args = Args::new().text("place", self.place.clone());
        let args = match &self.chain {
            Some(chain) => args.text("tablet", chain.tablet.clone()).text("key", chain.key.clone()),
            None => args,
        };
        match &self.problem {
            Problem::Record(failure) => args.text("why", failure.to_string()),
            Problem::Unreadable(why) | Problem::Mark(why) => args.text("why", why.clone()),
            Problem::WrongPlace { right } => args.text("right", right.clone()),
            Problem::NotReceived { here } => args.text("here", if *here { "yes" } else { "no" }),
            Problem::Duplicate { of } => args.text("of", of.clone()),
            Problem::Missing { at } => args.text("when", time(*at)),
            Problem::Log(fault) => args.text("why", fault.to_string()),
            Problem::Chain(problem) => chain_args(args, problem, time),
            Problem::Stray
            | Problem::LogChanged
            | Problem::LogUnsigned
            | Problem::NoReceipt
            | Problem::NoMark
            | Problem::Quarantined => args,
        }
    }
}

fn chain_args(args: Args, problem: &chains::Problem, time: impl Fn(jiff::Timestamp) -> String) -> Args {
    match problem {
        chains::Problem::Gap { from, to } => {
            args.number("from", *from).number("to", *to).number("count", to.saturating_sub(*from) + 1)
        }
        chains::Problem::Fork { number }
        | chains::Problem::Reused { number }
        | chains::Problem::Swapped { number } => args.number("number", *number),
        chains::Problem::Twin { number } => {
            args.number("number", *number).number("before", number.saturating_sub(1))
        }
        chains::Problem::Order { number, follows } => args
            .number("number", *number)
            .number("follows", *follows)
            .number("before", number.saturating_sub(1)),
        chains::Problem::Cut { last, seen } => args.number("last", *last).number("seen", *seen),
        chains::Problem::NewKey { before } => args.text("before", before.clone()),
        chains::Problem::Clock { number, sealed, before } => {
            args.number("number", *number).text("sealed", time(*sealed)).text("before", time(*before))
        }
    }
}
