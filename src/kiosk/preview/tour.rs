//! The way through the pages.

use std::collections::BTreeSet;

use jiff::SignedDuration;

use super::party::{ROBIN, SAM};
use super::{Kiosk, TourClock, TourFault, party};
use crate::kiosk::headless::Driver;
use crate::kiosk::screen::{self, Action, Screen, caution, closing, opening, settings, walk, yard};
use crate::kiosk::{App, Hall, Message, gate};
use crate::route::{Ask, Step};
use crate::walk::{CopyChoice, Event, Who};

/// First number of the pages that go round the unit.
const ROUND: u32 = 10;
/// More pages than an opening can have.
const OPENING_PAGES: usize = 12;
/// More answers than one page of cautions can ask for.
const ANSWERS: usize = 12;

/// A page of a unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::kiosk) struct Page {
    /// Place in walking order.
    pub number: u32,
    /// The step it belongs to, or the part of the walk.
    pub step: String,
    /// What it shows of that; empty for the page of the step itself.
    pub part: String,
}

impl Page {
    /// Its name, as of a file.
    pub fn name(&self) -> String {
        let Self { number, step, part } = self;
        if part.is_empty() { format!("{number:03}-{step}") } else { format!("{number:03}-{step}-{part}") }
    }
}

/// What is done with each page.
pub(in crate::kiosk) trait Visit {
    /// Takes the page that is open.
    ///
    /// # Errors
    /// The page cannot be taken; the rest is not shown.
    fn page<P: Kiosk>(&mut self, page: &Page, driver: &mut Driver<'_, P>) -> Result<(), TourFault>;
}

/// A kiosk that is led from page to page.
pub(in crate::kiosk) struct Tour<'t, 'p, P: Kiosk, V> {
    driver: &'t mut Driver<'p, P>,
    clock: TourClock,
    /// Whether pages of the renter are shown as they are once read to their end.
    seen_first: bool,
    visit: &'t mut V,
    number: u32,
    /// Step or part of the walk that is open.
    step: String,
    /// Whether the page was shown on which the agent helps with a demonstration.
    pub(super) helped: bool,
}

impl<'t, 'p, P: Kiosk, V: Visit> Tour<'t, 'p, P, V> {
    pub fn new(driver: &'t mut Driver<'p, P>, clock: TourClock, seen_first: bool, visit: &'t mut V) -> Self {
        Self { driver, clock, seen_first, visit, number: 0, step: String::new(), helped: false }
    }

    /// Shows every page of a unit.
    pub fn lead(&mut self, unit: &str) -> Result<(), TourFault> {
        self.part("yard");
        self.page("")?;
        self.opening(unit)?;
        self.number = self.number.max(ROUND);
        let stops = self.hall()?.walk.route().stops.clone();
        for (index, stop) in stops.iter().enumerate() {
            for at in stop.steps.clone() {
                self.step(at)?;
            }
            self.cautions(index)?;
        }
        self.closing()?;
        self.reread(unit)?;
        self.office()
    }

    /// The Office screen, past the gate.
    pub(super) fn open_office(&mut self) -> Result<(), TourFault> {
        self.act(Action::ToYard)?;
        let app = self.driver.state_mut();
        let effects = app.open_office();
        let _ = app.run(effects);
        Ok(())
    }

    pub(super) fn part(&mut self, name: &str) {
        name.clone_into(&mut self.step);
    }

    pub(super) fn stuck(&self, why: impl Into<String>) -> TourFault {
        TourFault::Stuck { step: self.step.clone(), why: why.into() }
    }

    pub(super) fn app(&self) -> &App {
        self.driver.state()
    }

    pub(super) fn hall(&self) -> Result<Hall, TourFault> {
        self.app().hall().cloned().ok_or_else(|| {
            let notice = self.app().notice().map(|n| n.text.clone());
            self.stuck(notice.unwrap_or_else(|| "no walk is open".to_owned()))
        })
    }

    /// Shows the page that is open.
    pub(super) fn page(&mut self, part: &str) -> Result<(), TourFault> {
        if let Some(notice) = self.app().notice() {
            return Err(self.stuck(notice.text.clone()));
        }
        let page = Page { number: self.number, step: self.step.clone(), part: part.to_owned() };
        self.number += 1;
        self.driver.forget();
        self.visit.page(&page, self.driver)
    }

    /// Sends what no screen would.
    pub(super) fn driver_tell(&mut self, message: Message) -> Result<(), TourFault> {
        self.driver.tell(message)?;
        Ok(())
    }

    pub(super) fn send(&mut self, message: screen::Message) -> Result<(), TourFault> {
        self.driver.tell(Message::Screen(message))?;
        Ok(())
    }

    /// What a screen would ask for.
    pub(super) fn act(&mut self, action: Action) -> Result<(), TourFault> {
        let app = self.driver.state_mut();
        let effects = app.act(action);
        let _ = app.run(effects);
        match self.app().notice() {
            Some(notice) => Err(self.stuck(notice.text.clone())),
            None => Ok(()),
        }
    }

    pub(super) fn pass(&self, seconds: i64) {
        self.clock.pass(SignedDuration::from_secs(seconds));
    }

    fn say(&mut self, events: Vec<Event>) -> Result<(), TourFault> {
        self.pass(20);
        if events.is_empty() { Ok(()) } else { self.act(Action::Propose(events)) }
    }

    fn open(&mut self, screen: Screen) -> Result<(), TourFault> {
        self.act(Action::open(screen))
    }

    fn opening(&mut self, unit: &str) -> Result<(), TourFault> {
        self.part("opening");
        self.send(screen::Message::Yard(yard::Message::UnitChosen(unit.to_owned())))?;
        let hall = self.hall()?;
        let (language, measures) = self.reader();
        let now = self.app().world.now();
        self.say(party::opening(&hall.scripts, now, &language, &measures))?;
        self.open(Screen::at(&self.hall()?))?;
        let go = |message| screen::Message::Opening(message);
        self.send(go(opening::Message::PageChosen(opening::Page::Trip)))?;
        for _ in 0..OPENING_PAGES {
            let before = self.opening_page();
            self.page(&before.map(|p| format!("{p:?}").to_lowercase()).unwrap_or_default())?;
            self.send(go(opening::Message::NextPressed))?;
            if self.opening_page() == before {
                break;
            }
        }
        self.send(go(opening::Message::PageChosen(opening::Page::Stop)))?;
        self.page("not-handed-over")?;
        self.say(vec![Event::Opened])
    }

    fn opening_page(&self) -> Option<opening::Page> {
        match self.app().screen() {
            Screen::Opening(state) => Some(state.page()),
            _ => None,
        }
    }

    /// Language and measures in which everything is read.
    fn reader(&self) -> (String, String) {
        let app = self.app();
        let measures = app.lot.lot.value.measures.first().cloned().unwrap_or_else(|| "us".to_owned());
        (app.settings.staff.lang.clone(), measures)
    }

    fn step(&mut self, at: usize) -> Result<(), TourFault> {
        let hall = self.hall()?;
        let Some(step) = hall.walk.route().steps.get(at).cloned() else { return Ok(()) };
        self.part(&step.id);
        self.open(Screen::Walk(walk::State::at_step(&hall, &step.id)))?;
        self.page("")?;
        self.sheets(at, &step)?;
        let (language, _) = self.reader();
        let minutes = i64::from(step.minutes);
        self.clock.pass(SignedDuration::from_mins(minutes));
        self.say(party::step(&hall.scripts, &hall.walk, &step, &language))
    }

    /// What lies over the page: once what every step has, and what this one asks for.
    fn sheets(&mut self, at: usize, step: &Step) -> Result<(), TourFault> {
        let mut kinds = Vec::new();
        if at == 0 {
            kinds = vec![
                (walk::SheetKind::Overview, "whole-walk"),
                (walk::SheetKind::Question, "question"),
                (walk::SheetKind::NotShown, "not-shown"),
                (walk::SheetKind::Stop, "stop"),
                (walk::SheetKind::Marks, "marks"),
            ];
        }
        if !step.readings.is_empty() {
            kinds.push((walk::SheetKind::Readings, "readings"));
        }
        let item = step.kit.then(|| self.hall().ok()?.walk.route().items.first().map(|i| i.tag.clone()));
        if let Some(tag) = item.flatten() {
            kinds.push((walk::SheetKind::Item(tag), "item"));
        }
        for (kind, name) in kinds {
            self.send(screen::Message::Walk(walk::Message::SheetAsked(kind)))?;
            self.page(name)?;
            self.send(screen::Message::Walk(walk::Message::SheetClosed))?;
        }
        Ok(())
    }

    /// The renter's pages of a stop, each once, and the page that asks for the tablet back.
    fn cautions(&mut self, stop: usize) -> Result<(), TourFault> {
        self.open(Screen::Caution(caution::State::new_at(&self.hall()?, stop)))?;
        let (mut shown, mut turn, mut answers) = (BTreeSet::new(), None, 0);
        while let Some(state) = self.caution() {
            let (over, next, opened) = (state.is_over(), state.turns().first().copied(), state.opened());
            if over && opened <= 1 {
                return Ok(());
            }
            if over {
                return self.page("give-back");
            }
            if let Some(next) = next {
                let name = if shown.is_empty() { "take" } else { "pass" };
                self.page(name)?;
                self.send(screen::Message::Caution(caution::Message::PersonChosen(next)))?;
                continue;
            }
            let name = self.caution_name()?;
            // What each driver answers is shown once.
            if shown.insert(name.clone()) {
                if self.seen_first {
                    self.read_on()?;
                }
                self.page(&name)?;
            }
            answers = if turn.replace(opened) == Some(opened) { answers + 1 } else { 0 };
            if answers > ANSWERS {
                return Err(self.stuck(format!("the answer to `{name}` leads nowhere")));
            }
            self.read_on()?;
            if !self.demonstrate()? {
                self.answer()?;
            }
        }
        Ok(())
    }

    pub(super) fn caution(&self) -> Option<&caution::State> {
        match self.app().screen() {
            Screen::Caution(state) => Some(state),
            _ => None,
        }
    }

    /// `caution-keys-1`, or `cautions-keys-2` for several on one page.
    fn caution_name(&mut self) -> Result<String, TourFault> {
        let hall = self.hall()?;
        let found = self.caution().and_then(|state| state.page(&hall));
        let Some((step, cautions)) = found else { return Err(self.stuck("the page holds no caution")) };
        let id = step.id.clone();
        let first = cautions.first().map_or_else(String::new, |c| c.id.clone());
        let word = if cautions.len() == 1 { "caution" } else { "cautions" };
        self.part(&id);
        Ok(format!("{word}-{first}"))
    }

    /// The page is read to its end.
    fn read_on(&mut self) -> Result<(), TourFault> {
        let seen = self.caution().map(caution::State::seen);
        seen.map_or(Ok(()), |message| self.send(screen::Message::Caution(message)))?;
        self.pass(6);
        Ok(())
    }

    fn answer(&mut self) -> Result<(), TourFault> {
        let hall = self.hall()?;
        let found = self.caution().and_then(|state| state.page(&hall));
        let taps = found.is_some_and(|(_, cautions)| cautions.iter().all(|c| c.ask == Ask::Read));
        let message = if taps {
            caution::Message::ReadPressed
        } else {
            caution::Message::Held(crate::kiosk::ui::HoldEvent::Done)
        };
        self.send(screen::Message::Caution(message))
    }

    fn closing(&mut self) -> Result<(), TourFault> {
        self.part("closing");
        self.at_closing(closing::Page::Take)?;
        self.page("give")?;
        self.tell_closing(closing::Message::TakenBy(ROBIN))?;
        self.page("take")?;
        self.tell_closing(closing::Message::PageAsked(closing::Page::Sign))?;
        self.page("consent")?;
        let consent = {
            let hall = self.hall()?;
            let (language, measures) = self.reader();
            let reader = crate::words::Reader::new(&language, crate::kiosk::hall::system_of(&measures));
            let speaker = crate::script::Speaker::new(&hall.scripts, &hall.walk.route().unit, reader);
            speaker.map(|s| party::consent(&s)).into_iter().collect()
        };
        self.say(consent)?;
        self.at_closing(closing::Page::Sign)?;
        self.tell_closing(closing::Message::TakenBy(ROBIN))?;
        self.page("sign")?;
        self.tell_closing(closing::Message::SignerChosen(Who::Person(SAM)))?;
        self.page("pass")?;
        self.tell_closing(closing::Message::AgentAsked)?;
        self.page("back")?;
        self.say(party::signatures())?;
        self.at_closing(closing::Page::Copy)?;
        self.tell_closing(closing::Message::TakenBy(SAM))?;
        self.page("copy")?;
        self.say(vec![Event::CopyOffered, Event::CopyChosen { choice: CopyChoice::Slip }])?;
        self.at_closing(closing::Page::Copy)?;
        self.page("seal")?;
        self.act(Action::Seal)?;
        self.part("sealed");
        self.page("")?;
        self.act(Action::ToYard)?;
        self.open(Screen::Settings(settings::State))?;
        self.part("settings");
        self.page("")?;
        self.cards()
    }

    /// What may lie over any page of staff.
    fn cards(&mut self) -> Result<(), TourFault> {
        self.driver.tell(Message::EmergencyToggled)?;
        self.part("emergency");
        self.page("")?;
        self.driver.tell(Message::EmergencyToggled)?;
        self.driver.tell(Message::CloseAsked)?;
        self.part("gate");
        self.page("")?;
        self.driver.tell(Message::Gate(gate::Message::Left))?;
        Ok(())
    }

    fn at_closing(&mut self, page: closing::Page) -> Result<(), TourFault> {
        self.open(Screen::Closing(closing::State::new(&self.hall()?)))?;
        self.tell_closing(closing::Message::PageAsked(page))
    }

    fn tell_closing(&mut self, message: closing::Message) -> Result<(), TourFault> {
        self.send(screen::Message::Closing(message))
    }
}
