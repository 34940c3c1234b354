//! Says a projection in sentences: what runs out first and when, how long each supply lasts, and what each
//! suggestion gains.
//!
//! Messages: `first-<resource>` and `course-<resource>` with `.to` (a day), `.later` (later on the same day) and
//! `.whole` (the whole trip); `help-<action>`.

use crate::words::format;
use crate::words::{Args, Reader, Words};

use super::explain::input_name;
use super::projection::{Projection, Resource};
use super::{Help, day_of};

/// A projection in the reader's words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// What runs out first, and on which day; or that all lasts.
    pub first: String,
    /// How long each supply lasts.
    pub courses: Vec<(Resource, String)>,
    /// What can be done, and what it gains; each thing once.
    pub helps: Vec<String>,
    /// What could not be worked out, and why.
    pub unknown: Vec<String>,
}

/// Says a projection.
#[must_use]
pub fn said(words: &Words, reader: &Reader, projection: &Projection) -> Said {
    let saying = Saying { words, reader, projection };
    let courses = projection.courses.iter();
    Said {
        first: saying.first(),
        courses: courses
            .map(|course| {
                (course.resource, saying.sentence(&saying.lasts(course.resource, course.ends, None)))
            })
            .collect(),
        helps: saying.helps(),
        unknown: projection.unknown.iter().map(|(resource, fact)| saying.unknown(*resource, fact)).collect(),
    }
}

/// Says one suggestion for one supply.
#[must_use]
pub fn say_help(words: &Words, reader: &Reader, projection: &Projection, help: &Help) -> String {
    Saying { words, reader, projection }.help(&[help])
}

struct Saying<'a> {
    words: &'a Words,
    reader: &'a Reader,
    projection: &'a Projection,
}

impl Saying<'_> {
    fn say(&self, key: &str, args: &Args) -> String {
        self.words.say(self.reader, key, args)
    }

    fn sentence(&self, clause: &str) -> String {
        let mut letters = clause.chars();
        let clause = letters
            .next()
            .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect::<String>());
        self.say("projection-sentence", &Args::new().text("clause", clause))
    }

    /// A day of the trip by its day of the week where the trip says when it leaves; with its number where the
    /// week comes round again.
    fn day(&self, day: u16) -> String {
        let args = Args::new().text("n", day.to_string());
        let Some(first) = self.projection.weekday else { return self.say("trip-day", &args) };
        let at = (u32::from(first) + 5 + u32::from(day)) % 7 + 1;
        let weekday = self.say(&format!("weekday-{at}"), &Args::new());
        if self.projection.nights < 7 {
            return weekday;
        }
        self.say("trip-weekday", &args.text("weekday", weekday))
    }

    fn first(&self) -> String {
        match (self.projection.first(), self.projection.unknown.is_empty()) {
            (Some((resource, end)), _) => {
                let args = Args::new().text("day", self.day(day_of(end)));
                self.say(&format!("first-{}", resource.word()), &args)
            }
            (None, true) => self.say("first-none", &Args::new()),
            (None, false) => self.say("first-unknown", &Args::new()),
        }
    }

    /// How long a supply lasts, against when it ended before.
    fn lasts(&self, resource: Resource, ends: Option<f64>, before: Option<f64>) -> String {
        let key = format!("course-{}", resource.word());
        let Some(end) = ends else { return self.say(&format!("{key}.whole"), &Args::new()) };
        let day = day_of(end);
        let same = before.is_some_and(|before| day_of(before) == day);
        let args = Args::new().text("day", self.day(day));
        self.say(&format!("{key}.{}", if same { "later" } else { "to" }), &args)
    }

    /// The suggestions, each action once with all that it gains.
    fn helps(&self) -> Vec<String> {
        let all = &self.projection.helps;
        let is_first = |at: usize, help: &Help| !all.iter().take(at).any(|h| h.action == help.action);
        all.iter()
            .enumerate()
            .filter(|(at, help)| is_first(*at, help))
            .map(|(_, help)| {
                self.help(&all.iter().filter(|other| other.action == help.action).collect::<Vec<_>>())
            })
            .collect()
    }

    /// One action and what it gains.
    fn help(&self, gains: &[&Help]) -> String {
        let Some(help) = gains.first() else { return String::new() };
        let gained: Vec<String> =
            gains.iter().map(|help| self.lasts(help.resource, help.after, Some(help.before))).collect();
        let mut args = Args::new().text("gain", format::list(self.words, self.reader, &gained));
        if let Some(day) = help.action.day() {
            args = args.text("day", self.day(day));
        }
        if let Some(hours) = help.action.hours() {
            args = args.text("hours", super::formula::hours(self.words, self.reader, hours));
        }
        self.say(&format!("help-{}", help.action.word()), &args)
    }

    fn unknown(&self, resource: Resource, fact: &str) -> String {
        let args = Args::new()
            .text("resource", self.say(&format!("part-{}", resource.word()), &Args::new()))
            .text("fact", input_name(self.words, self.reader, fact));
        self.say("projection-unknown", &args)
    }
}
