//! The page of the plan: where the nights are spent, how water is used, how cold and how high it gets; beside it
//! what comes of that. Nobody must plan a trip: a page that is not touched says nothing.

mod answer;
mod ask;
mod nights;
#[cfg(test)]
mod tests;
mod tow;
mod view;

use jiff::civil::Date;

use super::offer::{Faults, Offer, Spot, Why};
use crate::figures::{HookUp, Trip, Use};
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::{Hall, system_of};
use crate::measure::System;
use crate::unit::Facts;
use crate::walk::{Event, Walk};
use crate::words::{Args, Reader, format};

use answer::Answer;
use ask::Ask;
use nights::Nights;
use tow::Wrong;

pub use tow::Field;

/// What is chosen and typed, and what comes of it.
#[derive(Debug)]
pub(super) struct Draft {
    facts: Facts,
    /// The measures that are asked in.
    system: System,
    /// The plan as it stands on the page; people, nights and day of leaving are those of the walk.
    plan: Trip,
    /// Day of leaving.
    leaves: Option<Date>,
    /// Fields of the tow vehicle as typed, in the order of [`Field::ALL`].
    tow: [String; 4],
    /// The week whose nights are shown one by one.
    week: Option<usize>,
    /// The figure whose working is shown.
    open: Option<&'static str>,
    /// What comes of the plan; none before party and booking are known.
    answer: Option<Answer>,
    /// The same for what the walk holds, where it holds a plan.
    kept: Option<(Trip, Answer)>,
}

/// What happened on the page.
#[derive(Debug, Clone)]
pub enum Message {
    /// What the places of some nights offer.
    HookUpChosen(Nights, HookUp),
    /// The nights of a week are to be shown one by one, or no longer.
    WeekPressed(usize),
    /// How water is used.
    WaterChosen(Use),
    /// One step more, or less.
    Stepped(Ask, bool),
    /// A value is no longer told.
    Cleared(Ask),
    /// A field of the tow vehicle was typed.
    TowTyped(Field, String),
    /// How a figure was worked out is to be shown, or no longer.
    HowPressed(&'static str),
}

impl Draft {
    pub(super) fn new(hall: &Hall) -> Self {
        let facts = hall.scripts.facts(&hall.walk.route().unit).unwrap_or_default();
        let plan = hall.walk.planned().map(|planned| planned.value.clone()).unwrap_or_default();
        let mut draft = Self::of(facts, plan, asked_in(hall));
        draft.refresh(hall);
        draft
    }

    /// A plan for a unit of these facts, asked in these measures.
    fn of(facts: Facts, plan: Trip, system: System) -> Self {
        let tow = Field::ALL.map(|field| field.text(&plan, system));
        Self { facts, system, plan, leaves: None, tow, week: None, open: None, answer: None, kept: None }
    }

    /// Takes in what the walk now says of party, booking, measures and the plan that is kept.
    pub(super) fn refresh(&mut self, hall: &Hall) {
        let system = asked_in(hall);
        if system != self.system {
            self.system = system;
            self.retype();
        }
        self.take_party(&hall.walk);
        let kept = hall.walk.planned().and_then(|_| hall.walk.trip());
        if self.kept.as_ref().map(|(trip, _)| trip) != kept.as_ref() {
            self.kept = kept.map(|trip| {
                let answer = Answer::of(&self.facts, &trip);
                (trip, answer)
            });
        }
        self.compute();
    }

    fn take_party(&mut self, walk: &Walk) {
        let trip = walk.trip().unwrap_or_default();
        self.leaves = trip.leaves.as_ref().and_then(|day| day.parse().ok());
        (self.plan.people, self.plan.nights, self.plan.leaves) = (trip.people, trip.nights, trip.leaves);
    }

    /// Fills the text fields from the plan.
    fn retype(&mut self) {
        self.tow = Field::ALL.map(|field| field.text(&self.plan, self.system));
    }

    fn compute(&mut self) {
        self.answer = (!self.plan.people.is_empty()).then(|| Answer::of(&self.facts, &self.plan));
    }

    pub(super) fn update(&mut self, message: Message) {
        match message {
            Message::HookUpChosen(which, kind) => {
                let nights = self.plan.nights;
                nights::put(&mut self.plan, nights, which, kind);
            }
            Message::WeekPressed(week) => self.week = (self.week != Some(week)).then_some(week),
            Message::WaterChosen(water) => self.plan.water = water,
            Message::Stepped(ask, more) => {
                if let Some(to) = ask.pressed(&self.plan, &self.facts, self.system, more) {
                    ask.put(&mut self.plan, to, self.system);
                }
            }
            Message::Cleared(ask) => ask.put(&mut self.plan, ask::To::Nothing, self.system),
            Message::TowTyped(field, text) => {
                field.put(&mut self.plan, &text, self.system);
                for (known, typed) in Field::ALL.into_iter().zip(&mut self.tow) {
                    if known == field {
                        typed.clone_from(&text);
                    }
                }
            }
            Message::HowPressed(id) => self.open = (self.open != Some(id)).then_some(id),
        }
        self.compute();
    }

    /// Offers the plan where it says something else than the one that is kept.
    pub(super) fn offer(&self, walk: &Walk, ctx: &Ctx<'_>, offer: &mut Offer) {
        for (field, text) in Field::ALL.into_iter().zip(&self.tow) {
            if let Err(wrong) = field.read(text, self.system) {
                offer.faults.add(Spot::Tow(field), self.why(ctx, field, wrong));
            }
        }
        let Some(trip) = walk.trip() else { return };
        let kept = walk.planned().map(|planned| planned.value.clone()).unwrap_or_default();
        if said(&kept) == said(&self.plan) {
            return;
        }
        let plan = Trip { people: trip.people, nights: trip.nights, leaves: trip.leaves, ..said(&self.plan) };
        offer.put(walk, ctx, Event::TripPlanned { trip: Box::new(plan) }, |_| Spot::Plan);
    }

    fn why(&self, ctx: &Ctx<'_>, field: Field, wrong: Wrong) -> Why {
        match wrong {
            Wrong::NoNumber => Why::Says("opening-fault-number"),
            Wrong::Beyond { low, high } => {
                let reader = self.reader(ctx);
                let number = |n: u32| format::number(&ctx.scripts.words, &reader, n.into());
                let measure = field.measure(self.system).symbol();
                let args =
                    Args::new().text("low", number(low)).text("high", number(high)).text("measure", measure);
                Why::Told(ctx.say_with("opening-fault-beyond", &args))
            }
        }
    }

    /// Staff read the page with the renter, who thinks in measures of their own.
    fn reader(&self, ctx: &Ctx<'_>) -> Reader {
        Reader::new(&ctx.settings.staff.lang, self.system)
    }

    /// The plan that is kept, in a sentence: nights with and without hook-ups, and what runs out first.
    pub(super) fn summary(&self, ctx: &Ctx<'_>) -> Option<String> {
        let (trip, answer) = self.kept.as_ref()?;
        let (with, without) = nights::counts(trip);
        let count = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
        let args = Args::new()
            .number("with", count(with))
            .number("without", count(without))
            .text("first", answer.first(ctx, &self.reader(ctx)));
        Some(ctx.say_with("opening-sum-plan", &args))
    }

    pub(super) fn view<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        walk: &Walk,
        faults: &Faults,
    ) -> super::Element<'a, super::Message> {
        view::page(self, ctx, walk, faults)
    }
}

/// The renter's measures; before they are chosen, those that the lot names first.
fn asked_in(hall: &Hall) -> System {
    let lot = hall.scripts.lot.value.measures.first().map(String::as_str);
    let chosen = hall.walk.reader().map(|reader| reader.value.measures.as_str());
    chosen.or(lot).map_or(System::Us, system_of)
}

/// What a plan says by itself, without what party and booking give.
fn said(trip: &Trip) -> Trip {
    Trip { people: Vec::new(), nights: 0, leaves: None, ..trip.clone() }
}
