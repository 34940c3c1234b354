//! The page of the party: who travels, how old, who drives.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::offer::{Faults, Offer, Spot};
use super::parts;
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::counted;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element, Symbol};
use crate::walk::limits::PEOPLE_MAX;
use crate::walk::{ADULT, Event, Person, PersonId, Refused, Walk};
use crate::words::{Args, clean_name};

/// Nobody is older.
const OLDEST: u8 = 120;
const NAMES: [&str; PEOPLE_MAX] = parts::ids!("opening-name");
const AGES: [&str; PEOPLE_MAX] = parts::ids!("opening-age");

/// One person as typed.
#[derive(Debug, Clone)]
struct Row {
    id: PersonId,
    name: String,
    age: String,
    drives: bool,
}

impl Row {
    const fn empty(id: PersonId) -> Self {
        Self { id, name: String::new(), age: String::new(), drives: false }
    }

    fn is_empty(&self) -> bool {
        self.name.trim().is_empty() && self.age.trim().is_empty()
    }

    fn age(&self) -> Option<u8> {
        self.age.trim().parse().ok().filter(|age| *age <= OLDEST)
    }

    /// The person, or what is wrong.
    fn person(&self, youngest: u8) -> Result<Person, &'static str> {
        let name = clean_name(&self.name);
        if self.age.trim().is_empty() {
            return Err("opening-fault-age-missing");
        }
        let age = self.age().ok_or("opening-fault-age")?;
        if name.is_empty() && age >= ADULT {
            return Err("opening-fault-name");
        }
        Ok(Person { id: self.id, name, age, driver: self.drives && age >= youngest })
    }
}

/// Everybody as typed.
#[derive(Debug)]
pub(super) struct Draft {
    rows: Vec<Row>,
}

/// What happened on the page.
#[derive(Debug, Clone)]
pub enum Message {
    /// A name was typed.
    NameTyped(PersonId, String),
    /// An age was typed.
    AgeTyped(PersonId, String),
    /// Somebody drives, or does not.
    DrivesPressed(PersonId),
    /// Somebody does not travel.
    Removed(PersonId),
    /// One more travels.
    Added,
}

impl Draft {
    pub(super) fn new(walk: &Walk) -> Self {
        let row =
            |p: &Person| Row { id: p.id, name: p.name.clone(), age: p.age.to_string(), drives: p.driver };
        let mut draft = Self { rows: walk.people().iter().map(row).collect() };
        if draft.rows.is_empty() {
            draft.add(walk);
        }
        draft
    }

    pub(super) fn update(&mut self, message: Message, walk: &Walk) {
        match message {
            Message::NameTyped(id, name) => self.change(id, |row| row.name = name),
            Message::AgeTyped(id, age) => self.change(id, |row| row.age = age),
            Message::DrivesPressed(id) => self.change(id, |row| row.drives = !row.drives),
            Message::Removed(id) => self.rows.retain(|row| row.id != id),
            Message::Added => self.add(walk),
        }
    }

    fn change(&mut self, id: PersonId, change: impl FnOnce(&mut Row)) {
        if let Some(row) = self.rows.iter_mut().find(|row| row.id == id) {
            change(row);
        }
    }

    /// A number that nobody of the walk or of the page has had.
    fn add(&mut self, walk: &Walk) {
        let here = self.rows.iter().map(|row| row.id.0).max().unwrap_or(0).checked_add(1);
        let free = walk.next_person().map(|id| id.0).max(here);
        if let Some(free) = free.filter(|_| self.rows.len() < PEOPLE_MAX) {
            self.rows.push(Row::empty(PersonId(free)));
        }
    }

    /// Everybody, where nothing is wrong.
    pub(super) fn people(&self, youngest: u8) -> Option<Vec<Person>> {
        let rows = self.rows.iter().filter(|row| !row.is_empty());
        let people: Result<Vec<Person>, _> = rows.map(|row| row.person(youngest)).collect();
        people.ok().filter(|people| !people.is_empty())
    }

    pub(super) fn offer(&self, walk: &Walk, ctx: &Ctx<'_>, offer: &mut Offer) {
        let youngest = ctx.scripts.lot.value.youngest_driver;
        for row in self.rows.iter().filter(|row| !row.is_empty()) {
            if let Err(key) = row.person(youngest) {
                offer.wrong(Spot::Person(row.id), key);
            }
        }
        if let Some(people) = self.people(youngest) {
            offer.put(walk, ctx, Event::PartySet { people }, |refused| match refused {
                Refused::Exchanged { person, .. } | Refused::NumberTaken { person, .. } => {
                    Spot::Person(*person)
                }
                _ => Spot::Party,
            });
        }
    }

    pub(super) fn view<'a>(&'a self, ctx: &Ctx<'a>, faults: &Faults) -> Element<'a, Message> {
        let look = &ctx.look;
        let fields = self.rows.iter().zip(NAMES.into_iter().zip(AGES)).enumerate();
        let rows: Vec<Element<'a, Message>> =
            fields.map(|(index, (row, ids))| self.row(ctx, faults, index, row, ids)).collect();
        let belts = belts(ctx);
        let why =
            if belts > 0 { counted(ctx, "opening-party-belts", belts) } else { ctx.say("opening-party-why") };
        let many = self.rows.iter().filter(|row| !row.is_empty()).count() > belts && belts > 0;
        let mut page =
            column![ui::body(look, why), Column::with_children(rows).spacing(look.gap(Gap::Medium))]
                .push(parts::wrong(look, many.then(|| counted(ctx, "opening-party-too-many", belts))))
                .push(parts::wrong(look, faults.at(ctx, Spot::Party)))
                .spacing(look.gap(Gap::Large));
        if self.rows.len() < PEOPLE_MAX {
            page = page
                .push(ui::secondary(look, ctx.say("opening-party-add"), Message::Added).before(Symbol::Plus));
        }
        page.into()
    }

    fn row<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        faults: &Faults,
        index: usize,
        person: &'a Row,
        (name_id, age_id): (&'static str, &'static str),
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let id = person.id;
        let mut name =
            ui::field(look, name_id, &person.name, move |name| Message::NameTyped(id, name)).names();
        let mut age = ui::field(look, age_id, &person.age, move |age| Message::AgeTyped(id, age)).digits();
        // Labels once, above the first: the rows below are read as a table.
        if index == 0 {
            name = name.label(ctx.say("opening-name"));
            age = age.label(ctx.say("opening-age"));
        }
        let grown = look.text.factor();
        let remove = (self.rows.len() > 1).then(|| parts::sign(look, Symbol::Cross, Message::Removed(id)));
        let line = row![
            container(Element::from(name)).width(Length::Fill),
            container(Element::from(age)).width(look.px(100.0 * grown)),
            container(driver_cell(ctx, person)).width(look.px(190.0 * grown)),
        ]
        .push(remove)
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::End);
        column![line]
            .push(parts::wrong(look, faults.at(ctx, Spot::Person(id))))
            .spacing(look.gap(Gap::Small))
            .into()
    }
}

/// Seats with a belt in the unit of the walk; a towed unit has none, and its people sit elsewhere.
fn belts(ctx: &Ctx<'_>) -> usize {
    let sheet = ctx.hall.and_then(|hall| ctx.scripts.units.get(&hall.walk.route().unit));
    sheet.map_or(0, |sheet| sheet.value.seats.iter().filter(|seat| seat.belt).count())
}

/// Whether they drive; for whom the lot holds too young, why they cannot.
fn driver_cell<'a>(ctx: &Ctx<'a>, person: &Row) -> Element<'a, Message> {
    let look = &ctx.look;
    let youngest = ctx.scripts.lot.value.youngest_driver;
    let cell: Element<'a, Message> = match person.age() {
        Some(age) if age >= youngest => {
            let words = ui::body(look, ctx.say("opening-drives"));
            return ui::checkbox(look, person.drives, words, Message::DrivesPressed(person.id));
        }
        Some(_) => {
            let args = Args::new().number("age", u64::from(youngest));
            ui::small(look, ctx.say_with("opening-too-young", &args)).into()
        }
        None => ui::small(look, ctx.say("opening-age-first")).into(),
    };
    ui::at_least(look.target(), container(cell).align_y(Alignment::Center).into())
}
