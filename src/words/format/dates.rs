//! Dates and times of day.

use jiff::civil::{Date, DateTime, Time};
use jiff::tz::Offset;
use rust_decimal::Decimal;

use super::super::{Args, Reader, Words};
use super::{number, system_word};

/// A date: `Jul 24, 2026`, `24 Jul 2026`.
#[must_use]
pub fn date(words: &Words, reader: &Reader, date: Date) -> String {
    let args = system(reader)
        .number("month_n", i64::from(date.month()))
        .text("day", date.day().to_string())
        .text("year", date.year().to_string());
    words.say(reader, "date", &args)
}

/// A month of a year, written `2029-03`: `Mar 2029`; what is none stays as it is written.
#[must_use]
pub fn month(words: &Words, reader: &Reader, written: &str) -> String {
    let parts = written.split_once('-').and_then(|(year, month)| Some((year, month.parse::<u8>().ok()?)));
    let Some((year, month)) = parts.filter(|(_, month)| (1..=12).contains(month)) else {
        return written.to_owned();
    };
    words.say(reader, "date-year-month", &Args::new().number("month_n", i64::from(month)).text("year", year))
}

/// A time of day to the minute: `3:10 PM`, `15:10`.
#[must_use]
pub fn time(words: &Words, reader: &Reader, time: Time) -> String {
    let hour = time.hour();
    let twelve = match hour % 12 {
        0 => 12,
        hour => hour,
    };
    let args = system(reader)
        .text("hour", format!("{hour:02}"))
        .text("hour12", twelve.to_string())
        .text("minute", format!("{:02}", time.minute()))
        .text("half", if hour < 12 { "am" } else { "pm" });
    words.say(reader, "time", &args)
}

/// A date with its time of day: `Jul 24, 2026, 3:10 PM`.
#[must_use]
pub fn date_time(words: &Words, reader: &Reader, at: DateTime) -> String {
    let args =
        Args::new().text("date", date(words, reader, at.date())).text("time", time(words, reader, at.time()));
    words.say(reader, "date-time", &args)
}

/// The same with the distance from UTC that the clock had: `Jul 24, 2026, 3:10 PM (UTC−06:00)`. The date and
/// time are those of that clock.
#[must_use]
pub fn date_time_with_offset(words: &Words, reader: &Reader, at: DateTime, offset: Offset) -> String {
    let seconds = offset.seconds();
    let minutes = seconds.unsigned_abs() / 60;
    let sign = if seconds < 0 { words.marks(&reader.lang).minus.as_str() } else { "+" };
    let args = Args::new()
        .text("date", date(words, reader, at.date()))
        .text("time", time(words, reader, at.time()))
        .text("offset", format!("{sign}{:02}:{:02}", minutes / 60, minutes % 60));
    words.say(reader, "date-time-offset", &args)
}

/// A length of time in minutes: `50 min`, `1 h 20 min`, `2 h`.
#[must_use]
pub fn duration_minutes(words: &Words, reader: &Reader, minutes: u32) -> String {
    let part = |value: u32| number(words, reader, Decimal::from(value));
    let (hours, left) = (minutes / 60, minutes % 60);
    let args = Args::new().text("hours", part(hours)).text("minutes", part(left));
    let key = match (hours, left) {
        (0, _) => "duration-minutes",
        (_, 0) => "duration-hours",
        _ => "duration-hours-minutes",
    };
    words.say(reader, key, &args)
}

fn system(reader: &Reader) -> Args {
    Args::new().text("system", system_word(reader.system))
}
