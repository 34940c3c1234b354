//! The page of licenses and of who is here. A license is seen, not copied: class, country, last day.

use std::collections::{BTreeMap, BTreeSet};

use iced::Length;
use iced::widget::{Column, column, container, row};
use jiff::civil::Date;

use super::offer::{Faults, Offer, Spot};
use super::{Page, parts};
use crate::kiosk::context::Ctx;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::measure::System;
use crate::walk::limits::PEOPLE_MAX;
use crate::walk::{Event, Licence, Person, PersonId, Refused, Walk};
use crate::words::clean_name;

const CLASSES: [&str; PEOPLE_MAX] = parts::ids!("opening-class");
const COUNTRIES: [&str; PEOPLE_MAX] = parts::ids!("opening-country");
const YEARS: [&str; PEOPLE_MAX] = parts::ids!("opening-year");
const MONTHS: [&str; PEOPLE_MAX] = parts::ids!("opening-month");
const DAYS: [&str; PEOPLE_MAX] = parts::ids!("opening-day");

/// A field of a license.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Field {
    /// Class.
    Class,
    /// Country that issued it.
    Country,
    /// Year of its last day.
    Year,
    /// Month of its last day.
    Month,
    /// Its last day.
    Day,
}

/// A license as typed.
#[derive(Debug, Clone, Default)]
struct Card {
    class: String,
    country: String,
    year: String,
    month: String,
    day: String,
}

impl Card {
    fn new(licence: &Licence) -> Self {
        let last = licence.expiry;
        Self {
            class: licence.class.clone(),
            country: licence.country.clone(),
            year: last.year().to_string(),
            month: last.month().to_string(),
            day: last.day().to_string(),
        }
    }

    fn field(&self, field: Field) -> &str {
        match field {
            Field::Class => &self.class,
            Field::Country => &self.country,
            Field::Year => &self.year,
            Field::Month => &self.month,
            Field::Day => &self.day,
        }
    }

    fn field_mut(&mut self, field: Field) -> &mut String {
        match field {
            Field::Class => &mut self.class,
            Field::Country => &mut self.country,
            Field::Year => &mut self.year,
            Field::Month => &mut self.month,
            Field::Day => &mut self.day,
        }
    }

    fn is_empty(&self) -> bool {
        [Field::Class, Field::Country, Field::Year, Field::Month, Field::Day]
            .iter()
            .all(|field| self.field(*field).trim().is_empty())
    }

    /// The last day, or what is wrong with it.
    fn expiry(&self) -> Result<Date, &'static str> {
        let parts = [self.year.trim(), self.month.trim(), self.day.trim()];
        if parts.iter().any(|part| part.is_empty()) {
            return Err("opening-fault-expiry-missing");
        }
        let [year, month, day] = parts;
        let (Ok(year), Ok(month), Ok(day)) = (year.parse::<i16>(), month.parse(), day.parse()) else {
            return Err("opening-fault-expiry");
        };
        // Two digits are the short way to write a year of this century.
        let year = if (0..100).contains(&year) { year.saturating_add(2000) } else { year };
        Date::new(year, month, day).map_err(|_| "opening-fault-expiry")
    }
}

/// What is typed and ticked.
#[derive(Debug)]
pub(super) struct Draft {
    cards: BTreeMap<PersonId, Card>,
    present: BTreeSet<PersonId>,
}

/// What happened on the page.
#[derive(Debug, Clone)]
pub enum Message {
    /// A field of a license was typed.
    Typed(PersonId, Field, String),
    /// Somebody is here, or is not.
    PresentPressed(PersonId),
    /// Everybody is here.
    AllPresent,
}

impl Draft {
    pub(super) fn new(walk: &Walk) -> Self {
        let cards = walk.people().iter().filter_map(|p| Some((p.id, Card::new(&walk.licence(p.id)?.value))));
        let present = walk.present().map(|p| p.value.iter().copied().collect());
        Self { cards: cards.collect(), present: present.unwrap_or_default() }
    }

    pub(super) fn update(&mut self, message: Message, walk: &Walk) {
        match message {
            Message::Typed(id, field, text) => *self.cards.entry(id).or_default().field_mut(field) = text,
            Message::PresentPressed(id) => {
                if !self.present.remove(&id) {
                    self.present.insert(id);
                }
            }
            Message::AllPresent => self.present = walk.people().iter().map(|p| p.id).collect(),
        }
    }

    pub(super) fn offer(&self, walk: &Walk, ctx: &Ctx<'_>, offer: &mut Offer) {
        for driver in walk.drivers() {
            let (person, Some(card)) = (driver.id, self.cards.get(&driver.id)) else { continue };
            if card.is_empty() {
                continue;
            }
            let (class, country) = (clean_name(&card.class), clean_name(&card.country));
            let before = offer.faults.count();
            if class.is_empty() {
                offer.wrong(Spot::Class(person), "opening-fault-class");
            }
            if country.is_empty() {
                offer.wrong(Spot::Country(person), "opening-fault-country");
            }
            match card.expiry() {
                Err(key) => offer.wrong(Spot::Expiry(person), key),
                Ok(expiry) if before == offer.faults.count() => {
                    let licence = Licence { class, country, expiry };
                    offer.put(walk, ctx, Event::LicenceSeen { person, licence }, |refused| match refused {
                        Refused::TooLong { .. } | Refused::Unprintable { .. } => Spot::Class(person),
                        _ => Spot::Expiry(person),
                    });
                }
                Ok(_) => {}
            }
        }
        let people: Vec<PersonId> = self.here(walk).map(|p| p.id).collect();
        if !people.is_empty() || walk.present().is_some() {
            offer.put(walk, ctx, Event::PresentSet { people }, |_| Spot::Present);
        }
    }

    fn here<'w>(&self, walk: &'w Walk) -> impl Iterator<Item = &'w Person> {
        walk.people().iter().filter(|p| self.present.contains(&p.id))
    }

    pub(super) fn view<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        walk: &'a Walk,
        faults: &Faults,
    ) -> Element<'a, super::Message> {
        let look = &ctx.look;
        if walk.people().is_empty() {
            let to_party =
                ui::secondary(look, ctx.say("opening-to-party"), super::Message::PageChosen(Page::Party));
            return column![ui::lead(look, ctx.say("opening-no-party")), to_party]
                .spacing(look.gap(Gap::Large))
                .into();
        }
        let cards: Vec<Element<'a, Message>> =
            walk.drivers().take(PEOPLE_MAX).enumerate().map(|(i, p)| self.card(ctx, faults, i, p)).collect();
        let licences = column![
            ui::body(look, ctx.say("opening-license-why")),
            Column::with_children(cards).spacing(look.gap(Gap::Large)),
        ]
        .spacing(look.gap(Gap::Large));
        let both = (licences.into(), self.who_is_here(ctx, walk, faults));
        parts::two(look, both, (2, 1)).map(super::Message::Licences)
    }

    fn card<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        faults: &Faults,
        index: usize,
        person: &Person,
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let id = person.id;
        let field = |ids: [&'static str; PEOPLE_MAX], which: Field| {
            let value = self.cards.get(&id).map_or("", |card| card.field(which));
            let field = ids.get(index).copied().unwrap_or_default();
            ui::field(look, field, value, move |text| Message::Typed(id, which, text))
        };
        let class = field(CLASSES, Field::Class).names().label(ctx.say("opening-class"));
        let class = class.error(faults.at(ctx, Spot::Class(id)));
        let country = field(COUNTRIES, Field::Country).names().label(ctx.say("opening-country"));
        let country = country.error(faults.at(ctx, Spot::Country(id)));
        let year = field(YEARS, Field::Year).digits().placeholder(ctx.say("opening-year"));
        let month = field(MONTHS, Field::Month).digits().placeholder(ctx.say("opening-month"));
        let day = field(DAYS, Field::Day).digits().placeholder(ctx.say("opening-day-field"));
        // In the order in which the reader writes a date.
        let (date, last_day) = match ctx.settings.staff.system {
            System::Us => ([month, day, year], "opening-last-day-us"),
            System::Uk | System::Metric => ([day, month, year], "opening-last-day"),
        };
        let gap = look.gap(Gap::Medium);
        let what = row![
            container(Element::from(class)).width(Length::FillPortion(2)),
            container(Element::from(country)).width(Length::FillPortion(3)),
        ]
        .spacing(gap);
        let date = date.map(|field| container(Element::from(field)).width(Length::FillPortion(1)).into());
        let date =
            column![ui::label(look, ctx.say(last_day)), iced::widget::Row::with_children(date).spacing(gap)]
                .spacing(look.gap(Gap::Tiny))
                .width(Length::Fill);
        let fields = parts::two_close(look, what.into(), date.into());
        let content = column![ui::section(look, parts::name_of(ctx, person)), fields]
            .push(parts::wrong(look, faults.at(ctx, Spot::Expiry(id))))
            .spacing(look.gap(Gap::Medium));
        ui::panel(look, content).into()
    }

    fn who_is_here<'a>(&'a self, ctx: &Ctx<'a>, walk: &'a Walk, faults: &Faults) -> Element<'a, Message> {
        let look = &ctx.look;
        let person = |p: &'a Person| {
            let name = ui::body(look, parts::name_of(ctx, p));
            ui::checkbox(look, self.present.contains(&p.id), name, Message::PresentPressed(p.id))
        };
        let people: Vec<Element<'a, Message>> = walk.people().iter().map(person).collect();
        let all = self.here(walk).count() < walk.people().len() && walk.people().len() > 1;
        let all = all.then(|| ui::secondary(look, ctx.say("opening-all-here"), Message::AllPresent));
        column![
            ui::section(look, ctx.say("opening-here")),
            parts::in_rows(look, if look.portrait() { 2 } else { 1 }, people)
        ]
        .push(all)
        .push(parts::wrong(look, faults.at(ctx, Spot::Present)))
        .spacing(look.gap(Gap::Medium))
        .into()
    }
}
