//! What a page offers to the walk, and what is wrong on it. The walk decides; here its reasons find their field.

use super::plan::Field;
use crate::kiosk::context::Ctx;
use crate::walk::{Entry, Event, PersonId, Refused, Walk};
use crate::words::{Args, format};

/// Where on a page something is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Spot {
    Agent,
    Reader,
    Reference,
    Nights,
    Due,
    Person(PersonId),
    Party,
    Class(PersonId),
    Country(PersonId),
    Expiry(PersonId),
    Present,
    Plan,
    Tow(Field),
    Reason,
    Driver,
}

/// Why it is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Why {
    /// Something is not filled in or cannot be read: the key of the words.
    Says(&'static str),
    /// The same, in words already.
    Told(String),
    /// The walk will not have it.
    Refused(Refused),
}

/// Everything that is wrong on a page.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Faults(Vec<(Spot, Why)>);

impl Faults {
    pub(super) const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub(super) const fn count(&self) -> usize {
        self.0.len()
    }

    pub(super) fn add(&mut self, spot: Spot, why: Why) {
        self.0.push((spot, why));
    }

    /// Keeps what is still wrong where something was wrong before.
    pub(super) fn keep_those_of(&mut self, now: &Self) {
        let before = std::mem::take(&mut self.0);
        self.0 = now.0.iter().filter(|(spot, _)| before.iter().any(|(b, _)| b == spot)).cloned().collect();
    }

    /// What is wrong at a spot, in words.
    pub(super) fn at(&self, ctx: &Ctx<'_>, spot: Spot) -> Option<String> {
        self.0.iter().find(|(s, _)| *s == spot).map(|(_, why)| in_words(ctx, why))
    }
}

/// Events to propose, and what stands in the way.
#[derive(Debug, Default)]
pub(super) struct Offer {
    pub events: Vec<Event>,
    pub faults: Faults,
}

impl Offer {
    /// Offers an event if it is news; what the walk refuses is wrong at the spot.
    pub(super) fn put(&mut self, walk: &Walk, ctx: &Ctx<'_>, event: Event, spot: impl Fn(&Refused) -> Spot) {
        let entry = Entry { at: ctx.now, offset_minutes: ctx.scripts.offset_minutes(ctx.now), event };
        match walk.accepts(&entry) {
            Ok(()) => self.events.push(entry.event),
            Err(refused) if refused.already() => {}
            Err(refused) => self.faults.add(spot(&refused), Why::Refused(refused)),
        }
    }

    pub(super) fn wrong(&mut self, spot: Spot, key: &'static str) {
        self.faults.add(spot, Why::Says(key));
    }
}

fn in_words(ctx: &Ctx<'_>, why: &Why) -> String {
    let refused = match why {
        Why::Says(key) => {
            let youngest = u64::from(ctx.scripts.lot.value.youngest_driver);
            return ctx.say_with(key, &Args::new().number("age", youngest));
        }
        Why::Told(words) => return words.clone(),
        Why::Refused(refused) => refused,
    };
    let day = |date| format::date(&ctx.scripts.words, &ctx.settings.staff, date);
    let count = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
    let youngest = u64::from(ctx.scripts.lot.value.youngest_driver);
    match refused {
        Refused::NoDriver => ctx.say_with("opening-fault-no-driver", &Args::new().number("age", youngest)),
        Refused::NoAdult => ctx.say("opening-fault-no-adult"),
        Refused::LicenceExpired { expiry, .. } => {
            ctx.say_with("opening-fault-expired", &Args::new().text("expiry", day(*expiry)))
        }
        Refused::LicenceTooShort { expiry, until, .. } => {
            let args = Args::new().text("expiry", day(*expiry)).text("until", day(*until));
            ctx.say_with("opening-fault-too-short", &args)
        }
        Refused::DueBackPast { due, .. } => {
            ctx.say_with("opening-fault-due-past", &Args::new().text("due", day(*due)))
        }
        Refused::Exchanged { name, .. } => {
            ctx.say_with("opening-fault-exchanged", &Args::new().text("name", name.clone()))
        }
        Refused::TooLong { max, .. } => {
            ctx.say_with("opening-fault-long", &Args::new().number("max", count(*max)))
        }
        Refused::Empty { .. } => ctx.say("opening-fault-empty"),
        other => ctx.say_with("opening-fault-other", &Args::new().text("why", other.to_string())),
    }
}
