//! The words of a plot.

use super::{Line, Plot, Tick};
use crate::words::{Args, Reader, Words};

/// Days of a week: beyond it, the name of a weekday says too little.
const WEEK: u16 = 7;

/// The words of a plot, in the order of its parts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Texts {
    /// What it is.
    pub title: String,
    /// At the top of the upward axis.
    pub all: String,
    /// At its floor.
    pub none: String,
    /// One for each of [`Plot::ticks`].
    pub days: Vec<String>,
    /// Name of each of [`Plot::lines`].
    pub names: Vec<String>,
    /// How far each of [`Plot::lines`] lasts.
    pub ends: Vec<String>,
    /// When the line that ends first does.
    pub first: Option<String>,
}

impl Texts {
    /// The words of a plot for a reader.
    #[must_use]
    pub fn of(words: &Words, reader: &Reader, plot: &Plot) -> Self {
        let say = |key: &str| words.say(reader, key, &Args::new());
        let end = |line: &Line| match line.day {
            None => say("plot-lasts"),
            Some(day) => {
                let args = Args::new().text("day", day_name(words, reader, plot, day));
                words.say(reader, &format!("plot-ends-{}", line.resource.word()), &args)
            }
        };
        Self {
            title: say("figure-trip_projection"),
            all: say("plot-all"),
            none: say("plot-none"),
            days: plot.ticks.iter().map(|tick| tick_name(words, reader, plot, tick)).collect(),
            names: plot.lines.iter().map(|l| say(&format!("plot-name-{}", l.resource.word()))).collect(),
            ends: plot.lines.iter().map(end).collect(),
            first: plot.first().and_then(|l| l.day).map(|day| day_name(words, reader, plot, day)),
        }
    }
}

/// A day in full: `Monday`, with its number where weekdays come twice, or the number alone.
fn day_name(words: &Words, reader: &Reader, plot: &Plot, day: u16) -> String {
    let args = Args::new().text("n", day.to_string());
    let Some(weekday) = plot.weekday(day) else { return words.say(reader, "trip-day", &args) };
    let weekday = words.say(reader, &format!("weekday-{weekday}"), &Args::new());
    if plot.nights < WEEK {
        return weekday;
    }
    words.say(reader, "trip-weekday", &args.text("weekday", weekday))
}

/// A day on the axis: `Mon`, or `day 9`.
fn tick_name(words: &Words, reader: &Reader, plot: &Plot, tick: &Tick) -> String {
    match tick.weekday.filter(|_| plot.nights <= WEEK) {
        Some(weekday) => words.say(reader, &format!("plot-weekday-{weekday}"), &Args::new()),
        None => words.say(reader, "trip-day", &Args::new().text("n", tick.day.to_string())),
    }
}
