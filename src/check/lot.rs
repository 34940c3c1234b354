//! Settings of the lot.

use crate::measure::{Measure, System, Time};
use crate::source::{At, place_of};
use crate::unit::Origin;
use crate::words::Words;

use super::Check;
use super::unit::{is_below_zero, is_less};

/// Measures that a lot can offer; see [`System`].
const MEASURES: [(&str, System); 3] = [("us", System::Us), ("metric", System::Metric), ("uk", System::Uk)];

/// Least time to dim, and most to lock, in seconds.
const DIM_LEAST: f64 = 15.0;
const LOCK_MOST: f64 = 8.0 * 3600.0;

impl Check<'_> {
    pub(super) fn lot(&mut self) {
        let lot = &self.scripts.lot;
        for name in [&lot.value.name, &lot.value.place] {
            self.message(name.value.clone(), || lot.place(name));
        }
        self.zone(&lot.value.zone);
        self.offered();
        self.clock();
        self.idle();
        self.leaving();
        let currency = &lot.value.currency;
        if currency.len() != 3 || !currency.bytes().all(|b| b.is_ascii_uppercase()) {
            let what = format!("`{currency}` is no code of a currency");
            let hint = "write its three letters, as USD (ISO 4217)";
            self.fault("lot.currency", place_of(&lot.file, &["currency"]), what, hint);
        }
        self.lot_below_zero();
    }

    /// The zone is one of POSIX, so that the time on records needs no data base of zones.
    fn zone(&mut self, zone: &At<String>) {
        if let Err(e) = jiff::tz::TimeZone::posix(&zone.value) {
            let what = format!("`{}` is no POSIX time zone: {e}", zone.value);
            let hint = "write offset and rule, as MST7MDT,M3.2.0,M11.1.0; without summer time, MST7";
            self.fault("lot.zone", self.scripts.lot.place(zone), what, hint);
        }
    }

    /// Languages that have words, measures that exist, at least one of each.
    fn offered(&mut self) {
        let lot = &self.scripts.lot;
        let spoken = self.scripts.words.languages();
        let languages: Vec<&str> = spoken.iter().map(String::as_str).collect();
        let measures: Vec<&str> = MEASURES.iter().map(|(word, _)| *word).collect();
        let lists = [
            ("languages", "lot.language", &lot.value.languages, languages),
            ("measures", "lot.measure", &lot.value.measures, measures),
        ];
        for (list, code, offered, known) in lists {
            if offered.is_empty() {
                let hint = format!("offer one of {}", known.join(", "));
                self.fault(code, place_of(&lot.file, &[list]), format!("no {list} are offered"), hint);
            }
            for (i, one) in offered.iter().enumerate() {
                let lost = list == "languages" && (Words::is_pseudo(one) || self.lost.any_words);
                if lost || known.contains(&one.as_str()) {
                    continue;
                }
                let hint =
                    self.hint(one, known.iter().copied(), format!("offer one of {}", known.join(", ")));
                let place = place_of(&lot.file, &[list, &i.to_string()]);
                self.fault(code, place, format!("the lot has no {list} `{one}`"), hint);
            }
        }
    }

    /// Night quiet is given in hours of the day.
    fn clock(&mut self) {
        let lot = &self.scripts.lot;
        let quiet = &lot.value.quiet.value;
        for (name, time) in [("from", &quiet.from), ("to", &quiet.to)] {
            if !is_time(time) {
                let place = place_of(&lot.file, &["quiet", name]);
                self.fault("lot.clock", place, format!("`{time}` is no time of day"), "write it as 22:00");
            }
        }
    }

    /// A tablet dims before it locks, neither so soon that it is in the way nor so late that it does not help.
    fn idle(&mut self) {
        let lot = &self.scripts.lot;
        let Some(idle) = &lot.value.idle else { return };
        let seconds = |time: &Time| time.quantity().to(Measure::Second).unwrap_or(0.0);
        let (dim, lock) = (seconds(&idle.value.dim), seconds(&idle.value.lock));
        let fits = (DIM_LEAST..LOCK_MOST).contains(&dim) && lock > dim && lock <= LOCK_MOST;
        if !fits {
            let what =
                format!("a tablet cannot dim after {} and lock after {}", idle.value.dim, idle.value.lock);
            let hint = "let it dim after 15 s or more, lock later than that, and lock within 8 h";
            self.fault("lot.idle", place_of(&lot.file, &["idle"]), what, hint);
        }
    }

    /// Lines of the leaving check have words, stand once, and ask for equipment that there can be.
    fn leaving(&mut self) {
        let lot = &self.scripts.lot;
        let lines = &lot.value.leaving;
        for line in lines {
            self.message(format!("leaving-{}", line.value.id.value), || lot.place(&line.value.id));
            self.condition(lot, line.value.when.as_ref());
        }
        let place = |at: usize| place_of(&lot.file, &["leaving", &at.to_string(), "id"]);
        self.once(lines.iter().map(|l| l.value.id.value.as_str()), place, "take one of them out");
    }

    fn lot_below_zero(&mut self) {
        let lot = &self.scripts.lot;
        for (name, quantity) in &lot.value.constants {
            if is_less(&quantity.value) {
                self.negative(name, lot.place(quantity));
            }
        }
        let Some(facts) = self.scripts.units.keys().next().and_then(|unit| self.scripts.facts(unit)) else {
            return;
        };
        let below = |(name, fact): &(&str, &crate::unit::Fact)| {
            fact.from == Origin::Lot && is_below_zero(fact) && !name.starts_with("limit.")
        };
        for (name, _) in facts.iter().filter(below) {
            let path: Vec<&str> = name.split('.').collect();
            self.negative(name, place_of(&lot.file, &path));
        }
    }
}

fn is_time(text: &str) -> bool {
    let Some((hour, minute)) = text.split_once(':') else { return false };
    let number = |part: &str| {
        part.parse::<u8>().ok().filter(|_| part.len() == 2 && part.bytes().all(|b| b.is_ascii_digit()))
    };
    number(hour).is_some_and(|h| h < 24) && number(minute).is_some_and(|m| m < 60)
}
