//! Whose turn it is: one person answers all that waits for them, then the tablet goes on.

use std::collections::BTreeSet;

use iced::widget::{Column, column, container};
use iced::{Alignment, Length};

use super::{Message, Place, Show, Side, State, foot, pages};
use crate::kiosk::hall::Hall;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::route::{Caution, Step};
use crate::walk::{PersonId, Walk};
use crate::words::Args;

impl State {
    /// The step of a page, and its cautions that wait for somebody on this visit.
    pub(super) fn waiting<'a>(
        &self,
        hall: &'a Hall,
        at: usize,
        person: PersonId,
    ) -> Option<(&'a Step, Vec<&'a Caution>)> {
        let (step, mut cautions) = self.pages.get(at)?.of(hall.walk.route())?;
        cautions.retain(|c| !self.kept.contains(&c.id));
        cautions.retain(|c| pages::who_may(&hall.walk, step, c).contains(&person));
        Some((step, cautions))
    }

    /// Whether a page waits for somebody.
    fn waits_for(&self, hall: &Hall, at: usize, person: PersonId) -> bool {
        self.waiting(hall, at, person).is_some_and(|(_, cautions)| !cautions.is_empty())
    }

    /// The cautions that wait for somebody, by id.
    #[must_use]
    pub fn left_for(&self, hall: &Hall, person: PersonId) -> Vec<String> {
        let all = (0..self.pages.len()).filter_map(|at| self.waiting(hall, at, person));
        all.flat_map(|(_, cautions)| cautions).map(|c| c.id.clone()).collect()
    }

    /// Everybody for whom a page waits; whoever must answer something themselves comes first, so that the tablet
    /// changes hands seldom.
    fn all_waiting(&self, hall: &Hall) -> Vec<PersonId> {
        let mut people: Vec<PersonId> = hall.walk.people().iter().map(|p| p.id).collect();
        people.retain(|p| !self.left_for(hall, *p).is_empty());
        people.sort_by_key(|p| !hall.walk.drivers().any(|driver| driver.id == *p));
        people
    }

    /// The next page of whoever has the tablet; else it goes on to somebody else, or back to the agent.
    pub(super) fn open(&mut self, hall: &Hall) {
        let from = if let Place::Page(at) = self.place { at } else { 0 };
        let next = self.person.and_then(|person| {
            let mut all = (from..self.pages.len()).chain(0..from);
            all.find(|at| self.waits_for(hall, *at, person))
        });
        self.asked = None;
        match next {
            Some(at) => self.place = Place::Page(at),
            None => self.pass_on(hall),
        }
        self.afresh();
    }

    /// Everything about the page begins anew.
    fn afresh(&mut self) {
        self.turn += 1;
        self.whole = None;
        self.short = 0;
        self.first_tap = false;
        self.demo = None;
        self.side = self.touched.map_or(Side::Left, Side::other);
    }

    fn pass_on(&mut self, hall: &Hall) {
        self.before = self.person.take().or(self.before);
        let waiting = self.all_waiting(hall);
        self.place = match waiting.as_slice() {
            [] => Place::End,
            // Nobody else can have it.
            [only] if self.before.is_none() && is_alone(&hall.walk) => return self.begin(hall, *only),
            _ => Place::Turn(waiting),
        };
    }

    /// Who reads what is open: whoever has the tablet, or the only one who is to take it.
    pub(super) fn reading(&self) -> Option<PersonId> {
        self.person.or(if let [only] = self.turns() { Some(*only) } else { None })
    }

    fn begin(&mut self, hall: &Hall, person: PersonId) {
        self.person = Some(person);
        self.round = self.left_for(hall, person);
        let first = (0..self.pages.len()).find(|at| self.waits_for(hall, *at, person));
        self.place = first.map_or(Place::End, Place::Page);
    }

    /// Somebody says that they have the tablet.
    pub(super) fn take(&mut self, hall: &Hall, person: PersonId) {
        if self.turns().contains(&person) {
            self.begin(hall, person);
            self.afresh();
        }
    }

    /// Whoever has it is somebody else.
    pub(super) fn let_go(&mut self, hall: &Hall) {
        if self.others_wait(hall) {
            (self.person, self.before, self.asked) = (None, None, None);
            self.place = Place::Turn(self.all_waiting(hall));
            self.afresh();
        }
    }

    /// Whether somebody else than the one on the page could have the tablet.
    pub(super) fn others_wait(&self, hall: &Hall) -> bool {
        matches!(self.place, Place::Page(_))
            && self.all_waiting(hall).into_iter().any(|p| Some(p) != self.person)
    }

    /// Nobody who is to read on is here: the agent sees to it.
    pub(super) fn give_up(&mut self) {
        if matches!(self.place, Place::Turn(_)) {
            self.place = Place::End;
            self.afresh();
        }
    }

    /// The page says it in another language: it is looked at from now on, and what this person had answered in
    /// other words waits again.
    pub(super) fn reworded(&mut self, hall: &Hall) {
        let open = if let Place::Page(at) = self.place { self.pages.get(at).cloned() } else { None };
        self.pages = pages::waiting_at(&hall.walk, self.stop);
        let again = open.and_then(|open| self.pages.iter().position(|page| page.meets(&open)));
        if let Some((at, person)) = again.zip(self.person) {
            self.place = Place::Page(at);
            self.round = self.left_for(hall, person);
        }
        self.turn += 1;
        self.whole = None;
    }

    /// Whether whoever has the tablet has answered nothing yet.
    pub(super) fn is_first(&self, hall: &Hall) -> bool {
        self.person.is_some_and(|person| self.left_for(hall, person).len() == self.round.len())
    }

    /// Which of the cautions of their round are on the page, from 1, and how many there are; none where all of
    /// them are on it.
    pub(super) fn count(&self, hall: &Hall) -> Option<(usize, usize, usize)> {
        let here = self.page(hall)?.1.len();
        let left: BTreeSet<String> = self.left_for(hall, self.person?).into_iter().collect();
        let done = self.round.iter().filter(|id| !left.contains(*id)).count();
        let all = self.round.len();
        (all > here).then_some((done + 1, done + here, all))
    }
}

/// Whether only one adult is here.
fn is_alone(walk: &Walk) -> bool {
    walk.adults().filter(|p| walk.is_present(p.id)).count() <= 1
}

/// The card between two people: who reads on says so.
pub(super) fn view<'a>(show: &Show<'_, 'a>, people: &[PersonId]) -> Element<'a, Message> {
    let look = &show.look;
    let passed = show.state.before.is_some();
    let name = |person: PersonId| Args::new().text("name", show.name(person));
    let mut words: Column<'a, Message, _, _> =
        column![].spacing(look.gap(Gap::Large)).align_x(Alignment::Center).width(Length::Fill);
    if let [only] = people {
        let count = u64::try_from(show.state.left_for(show.hall, *only).len()).unwrap_or(u64::MAX);
        let line = if passed { "turn-pass" } else { "turn-for" };
        words = words
            .push(ui::label(look, show.say("turn-now")))
            .push(ui::title(look, show.name(*only)).align_x(Alignment::Center))
            .push(ui::lead(look, show.say_with(line, name(*only))).align_x(Alignment::Center))
            .push(ui::body(look, show.say_with("turn-count", name(*only).number("count", count))).center());
    } else {
        let each = pages::all_lacking(&show.hall.walk, show.state.stop).len() > 1;
        let (title, line) = match (passed, each) {
            (true, _) => ("turn-on", "turn-next"),
            (false, true) => ("turn-who", "turn-each"),
            (false, false) => ("turn-who", "turn-first"),
        };
        words = words
            .push(ui::title(look, show.say(title)).align_x(Alignment::Center))
            .push(ui::lead(look, show.say(line)).align_x(Alignment::Center));
    }
    let buttons = people.iter().map(|person| {
        let label = show.say_with("turn-take", name(*person));
        let take = Message::PersonChosen(*person);
        let button = if people.len() == 1 {
            ui::primary(look, label, take).id("caution-take")
        } else {
            ui::secondary(look, label, take).bold()
        };
        button.fill().height(80.0).into()
    });
    let buttons = Column::with_children(buttons).spacing(look.gap(Gap::Medium)).max_width(look.px(520.0));
    let back = ui::quiet(look, show.say("turn-agent"), Message::NobodyHere).id("caution-nobody");
    let card = column![words, buttons, Element::from(back)]
        .spacing(look.gap(Gap::Wide))
        .align_x(Alignment::Center)
        .width(Length::Fill);
    let card = ui::panel(look, container(card).padding(look.gap(Gap::Large)));
    let card = container(card).max_width(look.px(760.0));
    let card = container(ui::scroll(look, container(card).center_x(Length::Fill))).center_y(Length::Fill);
    let chips = container(foot::chips(show)).align_right(Length::Fill);
    column![chips, card].padding(look.gap(Gap::Huge)).height(Length::Fill).into()
}
