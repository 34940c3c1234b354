//! Opening: who, which trip.
//!
//! Five pages: the trip, the party, licenses and who is here, the plan, ready. A page proposes what is new on it when it
//! is left, so that whatever was shown as done is on disk. What was typed and is wrong holds the way onward;
//! the way back, to the Yard and to *not handed over* stays open.

mod licences;
mod offer;
mod parts;
mod party;
mod plan;
mod ready;
mod stop;
mod trip;

use iced::Length;
use iced::widget::{column, container, responsive};

use super::{Action, Screen};
use crate::kiosk::context::Ctx;
use crate::kiosk::gate::Purpose;
use crate::kiosk::hall::Hall;
use crate::kiosk::lapse;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::walk::{Event, Missing, Phase, Walk};

use offer::{Faults, Offer};
pub(in crate::kiosk) use trip::{measures_name, own_name};

/// A page of the Opening.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Page {
    /// Agent, language, booking, nights, due back.
    Trip,
    /// Who travels and who drives.
    Party,
    /// Licenses seen, and who is here.
    Licences,
    /// Where the nights are spent, and how far supplies go; nobody must say.
    Plan,
    /// Summary, what is missing, start.
    Ready,
    /// The unit is not handed over.
    Stop,
}

impl Page {
    /// The pages in their order; *not handed over* lies beside them.
    const STEPS: [Self; 5] = [Self::Trip, Self::Party, Self::Licences, Self::Plan, Self::Ready];

    const fn title(self) -> &'static str {
        match self {
            Self::Trip => "opening-trip-title",
            Self::Party => "opening-party-title",
            Self::Licences => "opening-licenses-title",
            Self::Plan => "opening-plan-title",
            Self::Ready => "opening-ready-title",
            Self::Stop => "opening-stop-title",
        }
    }

    fn place(self) -> usize {
        Self::STEPS.iter().position(|p| *p == self).unwrap_or(Self::STEPS.len())
    }

    fn beside(self, next: bool) -> Option<Self> {
        let place = self.place();
        let to = if next { place.checked_add(1) } else { place.checked_sub(1) };
        to.and_then(|to| Self::STEPS.get(to)).copied()
    }

    /// Where something that is missing can be made good.
    const fn of(missing: &Missing) -> Self {
        match missing {
            Missing::Party => Self::Party,
            Missing::Licence { .. } | Missing::LicenceTooShort { .. } | Missing::Present => Self::Licences,
            Missing::Experience => Self::Ready,
            _ => Self::Trip,
        }
    }
}

/// Whether the walk round the unit has begun, so that this screen changes what was said before.
fn begun(walk: &Walk) -> bool {
    walk.phase() != Phase::Opening
}

/// Where to, once what was proposed is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Then {
    Page(Page),
    Yard,
    /// To the screen where the walk then stands.
    Onward,
}

/// State of the screen: what is typed, and not yet said.
#[derive(Debug)]
pub struct State {
    page: Page,
    trip: trip::Draft,
    party: party::Draft,
    licences: licences::Draft,
    plan: plan::Draft,
    ready: ready::Draft,
    stop: stop::Draft,
    faults: Faults,
    then: Option<Then>,
    /// Whether it is asked if what is wrong on the page may be left behind.
    leaving: bool,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// On the page of the trip.
    Trip(trip::Message),
    /// On the page of the party.
    Party(party::Message),
    /// On the page of licenses.
    Licences(licences::Message),
    /// On the page of the plan.
    Plan(plan::Message),
    /// On the last page.
    Ready(ready::Message),
    /// On the page of *not handed over*.
    Stop(stop::Message),
    /// A page was chosen.
    PageChosen(Page),
    /// The next page was asked for.
    NextPressed,
    /// The page before was asked for.
    BackPressed,
    /// To the Yard; the walk stays open.
    YardAsked,
    /// To the Yard, without what is wrong on the page.
    YardConfirmed,
    /// Not to the Yard after all.
    YardDropped,
    /// The walk round the unit is to start.
    StartPressed,
    /// The handover is to be stopped.
    StopPressed,
}

impl State {
    /// The screen as it opens, filled from the walk.
    #[must_use]
    pub fn new(hall: &Hall) -> Self {
        let walk = &hall.walk;
        let missing = walk.missing_to_open();
        let page = Page::STEPS.into_iter().find(|page| missing.iter().any(|m| Page::of(m) == *page));
        Self {
            page: page.unwrap_or(Page::Ready),
            trip: trip::Draft::new(hall),
            party: party::Draft::new(walk),
            licences: licences::Draft::new(walk),
            plan: plan::Draft::new(hall),
            ready: ready::Draft::new(walk),
            stop: stop::Draft::new(),
            faults: Faults::default(),
            then: None,
            leaving: false,
        }
    }

    /// The screen in the middle of a walk, for something to be changed: at the summary.
    #[must_use]
    pub fn again(hall: &Hall) -> Self {
        Self { page: Page::Ready, ..Self::new(hall) }
    }

    /// The page that is open.
    #[must_use]
    pub const fn page(&self) -> Page {
        self.page
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        if hall.saving {
            return Action::None;
        }
        match message {
            Message::Trip(trip::Message::AgentAsked) => return Action::Gate(Purpose::TakeOver),
            Message::Trip(message) => self.trip.update(message, ctx),
            Message::Party(message) => self.party.update(message, &hall.walk),
            Message::Licences(message) => self.licences.update(message, &hall.walk),
            Message::Plan(message) => self.plan.update(message),
            Message::Ready(message) => self.ready.update(message),
            Message::Stop(message) => self.stop.update(message, ctx),
            Message::PageChosen(page) => return self.leave(page, ctx),
            Message::NextPressed => return self.beside(true, ctx),
            Message::BackPressed => return self.beside(false, ctx),
            Message::YardAsked => return self.leave_for_yard(ctx),
            Message::YardConfirmed => {
                self.leaving = false;
                let events = self.offer(self.page, ctx).events;
                return self.propose(events, Then::Yard, ctx);
            }
            Message::YardDropped => self.leaving = false,
            Message::StartPressed => return self.start(ctx),
            Message::StopPressed => return self.stopped(ctx),
        }
        // What was corrected is no longer told of; what is only begun is not told of yet.
        if !self.faults.is_empty() {
            let now = self.offer(self.page, ctx).faults;
            self.faults.keep_those_of(&now);
        }
        Action::None
    }

    /// What was proposed is kept.
    pub fn saved(&mut self, ctx: &Ctx<'_>) -> Action {
        self.then.take().map_or(Action::None, |then| self.arrive(then, ctx))
    }

    /// What is new on a page, and what is wrong there.
    fn offer(&self, page: Page, ctx: &Ctx<'_>) -> Offer {
        let mut offer = Offer::default();
        let Some(hall) = ctx.hall else { return offer };
        match page {
            Page::Trip => self.trip.offer(&hall.walk, ctx, &mut offer),
            Page::Party => self.party.offer(&hall.walk, ctx, &mut offer),
            Page::Licences => self.licences.offer(&hall.walk, ctx, &mut offer),
            Page::Plan => self.plan.offer(&hall.walk, ctx, &mut offer),
            Page::Ready => self.ready.offer(&hall.walk, ctx, &mut offer),
            Page::Stop => {}
        }
        offer
    }

    fn beside(&mut self, next: bool, ctx: &Ctx<'_>) -> Action {
        let to = if self.page == Page::Stop { Some(self.stop.from()) } else { self.page.beside(next) };
        to.map_or(Action::None, |to| self.leave(to, ctx))
    }

    /// Goes to another page, with what is new on this one.
    fn leave(&mut self, to: Page, ctx: &Ctx<'_>) -> Action {
        let offer = self.offer(self.page, ctx);
        if to == Page::Stop {
            self.stop.come_from(self.page);
        } else if to.place() > self.page.place() && !offer.faults.is_empty() {
            self.faults = offer.faults;
            return Action::None;
        }
        self.propose(offer.events, Then::Page(to), ctx)
    }

    fn leave_for_yard(&mut self, ctx: &Ctx<'_>) -> Action {
        let offer = self.offer(self.page, ctx);
        if offer.faults.is_empty() {
            return self.propose(offer.events, Then::Yard, ctx);
        }
        self.faults = offer.faults;
        self.leaving = true;
        Action::None
    }

    /// Starts the walk round the unit; first whatever is new on any page.
    fn start(&mut self, ctx: &Ctx<'_>) -> Action {
        let mut events = Vec::new();
        for page in Page::STEPS {
            let offer = self.offer(page, ctx);
            if !offer.faults.is_empty() {
                (self.page, self.faults) = (page, offer.faults);
                return Action::None;
            }
            events.extend(offer.events);
        }
        if ctx.hall.is_some_and(|hall| !begun(&hall.walk)) {
            events.push(Event::Opened);
        }
        self.propose(events, Then::Onward, ctx)
    }

    fn stopped(&mut self, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        let mut offer = Offer::default();
        self.stop.offer(&hall.walk, &self.party, ctx, &mut offer);
        if offer.faults.is_empty() {
            return self.propose(offer.events, Then::Onward, ctx);
        }
        self.faults = offer.faults;
        Action::None
    }

    fn propose(&mut self, events: Vec<Event>, then: Then, ctx: &Ctx<'_>) -> Action {
        if events.is_empty() {
            return self.arrive(then, ctx);
        }
        self.then = Some(then);
        // Answers whose words read otherwise from now on are asked for again; first that, so that none is left
        // standing whatever happens in between.
        let lapse = ctx.hall.and_then(|hall| lapse::before(hall, &events, None));
        Action::Propose(lapse.into_iter().chain(events).collect())
    }

    fn arrive(&mut self, then: Then, ctx: &Ctx<'_>) -> Action {
        match then {
            Then::Page(page) => {
                self.page = page;
                self.faults = Faults::default();
                if let Some(hall) = ctx.hall {
                    self.plan.refresh(hall);
                }
                Action::None
            }
            Then::Yard => Action::ToYard,
            Then::Onward => ctx.hall.map_or(Action::None, |hall| Action::open(Screen::at(hall))),
        }
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let Some(hall) = ctx.hall else { return iced::widget::Space::new().into() };
        let (ctx, walk) = (*ctx, &*hall.walk);
        let page: Element<'a, Message> = responsive(move |size| {
            // While our own keys are up, the fields need the room.
            let low = size.height < ctx.look.px(560.0);
            self.whole(&ctx, walk, low)
        })
        .into();
        if self.leaving {
            ui::dialog(&ctx.look, page, parts::leaving(&ctx), Some(Message::YardDropped))
        } else {
            ui::alone(page)
        }
    }

    fn whole<'a>(&'a self, ctx: &Ctx<'a>, walk: &'a Walk, low: bool) -> Element<'a, Message> {
        let look = &ctx.look;
        let nothing = || Element::from(iced::widget::Space::new());
        let steps = if low { nothing() } else { parts::steps(ctx, walk, self.page) };
        let title = if low { nothing() } else { ui::title(look, ctx.say(self.title(walk))).into() };
        let top = column![steps, title].spacing(look.gap(if low { Gap::Tiny } else { Gap::Wide }));
        let content: Element<'a, Message> = match self.page {
            Page::Trip => self.trip.view(ctx, &self.faults).map(Message::Trip),
            Page::Party => self.party.view(ctx, &self.faults).map(Message::Party),
            Page::Licences => self.licences.view(ctx, walk, &self.faults),
            Page::Plan => self.plan.view(ctx, walk, &self.faults),
            Page::Ready => self.ready.view(ctx, walk, self.plan.summary(ctx)),
            Page::Stop => self.stop.view(ctx, walk, &self.party, &self.faults),
        };
        // The page keeps its edge; the bar of a scroll lies in it.
        let (pad, edge) = (look.gap(Gap::Wide), look.gap(Gap::Large));
        let aside = |content: Element<'a, Message>, above, below| {
            container(content).padding(iced::Padding { top: above, bottom: below, left: pad, right: pad })
        };
        // The plan has two parts, and each scrolls by itself.
        let content = if self.page == Page::Plan {
            content
        } else {
            ui::scroll(look, aside(content, 0.0, edge)).height(Length::Fill).into()
        };
        column![
            aside(top.into(), edge, edge),
            content,
            aside(self.foot(ctx, walk), look.gap(Gap::Small), edge)
        ]
        .height(Length::Fill)
        .into()
    }

    /// In the middle of a walk the summary is no longer that of a beginning.
    fn title(&self, walk: &Walk) -> &'static str {
        if self.page == Page::Ready && begun(walk) { "opening-again-title" } else { self.page.title() }
    }

    /// What can be done here, the primary at the end.
    fn foot<'a>(&'a self, ctx: &Ctx<'a>, walk: &'a Walk) -> Element<'a, Message> {
        let look = &ctx.look;
        let begun = begun(walk);
        let primary = match self.page {
            Page::Ready if begun => {
                Some(ui::primary(look, ctx.say("opening-to-walk"), Message::StartPressed))
            }
            Page::Ready if self.ready.missing(walk).is_empty() => {
                Some(ui::primary(look, ctx.say("opening-start"), Message::StartPressed))
            }
            Page::Stop if stop::missing(walk, &self.party).is_empty() => {
                let stop = if self.stop.has_reason() { ui::primary } else { ui::secondary };
                Some(stop(look, ctx.say("opening-stop-now"), Message::StopPressed))
            }
            Page::Ready | Page::Stop => None,
            Page::Trip | Page::Party | Page::Licences | Page::Plan => Some(
                ui::primary(look, ctx.say("opening-next"), Message::NextPressed).after(ui::Symbol::Right),
            ),
        };
        let primary = if ctx.hall.is_some_and(|h| h.saving) {
            Some(ui::saving(look, ctx.say("opening-saving")))
        } else {
            primary
        };
        let back = (self.page != Page::Trip).then(|| {
            ui::secondary(look, ctx.say("opening-back"), Message::BackPressed).before(ui::Symbol::Left)
        });
        let stop = (self.page != Page::Stop)
            .then(|| ui::quiet(look, ctx.say("opening-stop"), Message::PageChosen(Page::Stop)));
        let yard = ui::quiet(look, ctx.say("opening-yard"), Message::YardAsked);
        let to_walk = (begun && self.page != Page::Ready)
            .then(|| ui::quiet(look, ctx.say("opening-to-walk"), Message::StartPressed));
        parts::foot(look, back, vec![to_walk, Some(yard), stop], primary)
    }
}
