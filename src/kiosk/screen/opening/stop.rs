//! *Not handed over*: refusing is sometimes the right answer. It asks why and who decided.

use iced::widget::{Column, column};

use super::offer::{Faults, Offer, Spot};
use super::{Page, parts, party};
use crate::kiosk::context::Ctx;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element};
use crate::unit::UnitKind;
use crate::walk::{ADULT, Event, Missing, Person, PersonId, Walk, Who};

/// What is typed and chosen.
#[derive(Debug)]
pub(super) struct Draft {
    from: Page,
    reason: String,
    by: Who,
    driver: Option<PersonId>,
}

/// What happened on the page.
#[derive(Debug, Clone)]
pub enum Message {
    /// The reason was typed.
    ReasonTyped(String),
    /// One of the usual reasons was chosen.
    ReasonChosen(&'static str),
    /// Who decided.
    Decided(Who),
    /// Who was to drive.
    WasToDrive(PersonId),
}

impl Draft {
    pub(super) const fn new() -> Self {
        Self { from: Page::Trip, reason: String::new(), by: Who::Agent, driver: None }
    }

    /// Whether a reason is given; until then the button says only what is still to be said.
    pub(super) fn has_reason(&self) -> bool {
        !self.reason.trim().is_empty()
    }

    /// Where back leads to.
    pub(super) const fn from(&self) -> Page {
        self.from
    }

    pub(super) fn come_from(&mut self, page: Page) {
        if page != Page::Stop {
            self.from = page;
        }
    }

    pub(super) fn update(&mut self, message: Message, ctx: &Ctx<'_>) {
        match message {
            Message::ReasonTyped(reason) => self.reason = reason,
            Message::ReasonChosen(key) => self.reason = ctx.say(key),
            Message::Decided(by) => self.by = by,
            Message::WasToDrive(person) => self.driver = Some(person),
        }
    }

    pub(super) fn offer(&self, walk: &Walk, party: &party::Draft, ctx: &Ctx<'_>, offer: &mut Offer) {
        let reason = self.reason.trim().to_owned();
        if reason.is_empty() {
            offer.wrong(Spot::Reason, "opening-fault-reason");
        }
        let event = Event::HandoverStopped { reason, by: self.by };
        if !walk.people().is_empty() {
            if offer.faults.is_empty() {
                offer.put(walk, ctx, event, |_| Spot::Reason);
            }
            return;
        }
        // The party never had a driver the lot could take: whoever was to drive is kept as the one who asked to.
        let mut people = candidates(party);
        match self.driver.filter(|id| people.iter().any(|p| p.id == *id)) {
            Some(driver) => {
                for person in &mut people {
                    person.driver = person.id == driver;
                }
                offer.put(walk, ctx, Event::PartySet { people }, |_| Spot::Driver);
                offer.events.push(event);
            }
            None => offer.wrong(Spot::Driver, "opening-fault-who-drove"),
        }
    }

    pub(super) fn view<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        walk: &'a Walk,
        party: &party::Draft,
        faults: &Faults,
    ) -> Element<'a, super::Message> {
        let look = &ctx.look;
        let mut page = column![ui::lead(look, ctx.say("opening-stop-why"))].spacing(look.gap(Gap::Wide));
        let missing = missing(walk, party);
        if !missing.is_empty() {
            let lines = Column::with_children(parts::missing_lines(ctx, walk, &missing))
                .spacing(look.gap(Gap::Medium));
            return page.push(parts::labeled(look, ctx.say("opening-stop-first"), lines)).into();
        }
        let trailer =
            ctx.scripts.units.get(&walk.route().unit).is_some_and(|u| u.value.kind == UnitKind::Trailer);
        let usual = REASONS.iter().filter(|(_, towed)| trailer || !towed);
        let usual = usual.map(|(key, _)| {
            let words = ctx.say(key);
            let chosen = self.reason == words;
            Choice::new(words, chosen, Message::ReasonChosen(key))
        });
        let reason = ui::field(look, "opening-reason", &self.reason, Message::ReasonTyped)
            .placeholder(ctx.say("opening-reason-example"))
            .error(faults.at(ctx, Spot::Reason));
        let unsaved = if walk.people().is_empty() { candidates(party) } else { Vec::new() };
        let adults: Vec<&Person> = walk.people().iter().chain(&unsaved).filter(|p| p.age >= ADULT).collect();
        let agent =
            Choice::new(ctx.say("opening-by-agent"), self.by == Who::Agent, Message::Decided(Who::Agent));
        let people = adults.iter().map(|p| {
            let who = Who::Person(p.id);
            Choice::new(parts::name_of(ctx, p), self.by == who, Message::Decided(who))
        });
        let by = ui::choices(look, std::iter::once(agent).chain(people));
        let mut asked: Column<'a, Message, iced::Theme, iced::Renderer> = column![parts::labeled(
            look,
            ctx.say("opening-reason"),
            column![ui::choices(look, usual), Element::from(reason)].spacing(look.gap(Gap::Medium)),
        ),]
        .spacing(look.gap(Gap::Wide));
        if !unsaved.is_empty() {
            let drivers = adults.iter().map(|p| {
                Choice::new(parts::name_of(ctx, p), self.driver == Some(p.id), Message::WasToDrive(p.id))
            });
            let drivers = parts::labeled(look, ctx.say("opening-was-to-drive"), ui::choices(look, drivers));
            asked = asked.push(drivers).push(parts::wrong(look, faults.at(ctx, Spot::Driver)));
        }
        asked = asked.push(parts::labeled(look, ctx.say("opening-by"), by));
        page = page.push(Element::from(asked).map(super::Message::Stop));
        page.into()
    }
}

/// Usual reasons, and whether they are for towed units alone.
const REASONS: [(&str, bool); 6] = [
    ("opening-reason-license", false),
    ("opening-reason-young", false),
    ("opening-reason-belts", false),
    ("opening-reason-tow", true),
    ("opening-reason-fit", false),
    ("opening-reason-renter", false),
];

/// The people on the page of the party, where they make one but for a driver.
fn candidates(party: &party::Draft) -> Vec<Person> {
    let people = party.people(ADULT).unwrap_or_default();
    if people.iter().any(|p| p.age >= ADULT) { people } else { Vec::new() }
}

/// What is missing before the handover can be stopped: somebody who stops it, and somebody it is not handed to.
pub(super) fn missing(walk: &Walk, party: &party::Draft) -> Vec<Missing> {
    let mut missing = walk.missing_to_open();
    missing.retain(|m| match m {
        Missing::Agent => true,
        Missing::Party => candidates(party).is_empty(),
        _ => false,
    });
    missing
}
