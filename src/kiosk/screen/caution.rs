//! Caution: the renter's pages of one stop, one after the other; then the tablet goes back to the agent.

mod answer;
mod ask;
mod demo;
mod foot;
mod give_back;
pub(in crate::kiosk) mod grave;
mod pages;
mod shared;
mod watch;

use std::collections::BTreeSet;

use iced::Length;
use iced::widget::{container, stack};
use jiff::Timestamp;

use super::{Action, Screen, walk};
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::Hall;
use crate::kiosk::lapse;
use crate::kiosk::theme::{Look, TextSize};
use crate::kiosk::ui::{self, Element, HoldEvent};
use crate::route::{Caution, Step};
use crate::script::Speaker;
use crate::walk::{Answer, Decision, Event, PersonId};
use crate::words::Args;

use ask::Asked;
use pages::Page;

pub use demo::Message as DemoMessage;

/// Holds that were too short before two taps do instead.
const TRIES: u8 = 2;

/// Where the target of an answer lies. It is decided when a page opens and stays there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Side {
    Left,
    Right,
}

impl Side {
    const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// What is being saved, and so what follows.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Saving {
    /// An answer, or a refusal over which the unit goes out: the next page may come.
    Answer,
    /// A refusal of this caution, over which the unit is to stay.
    Kept(String),
    /// A question: the page stays.
    Question,
    /// A try at a demonstration, or the help of the agent: the page of the demonstration stays.
    Demonstration,
    /// Another language: the page opens anew.
    Language,
}

/// State of the screen: only what is not yet said.
#[derive(Debug)]
pub struct State {
    stop: usize,
    pages: Vec<Page>,
    at: usize,
    /// Counts the times a page was opened for somebody; a new number makes its target start afresh.
    turn: u64,
    /// Since when the end of the page has been in sight.
    whole: Option<Timestamp>,
    /// Who answers; kept from page to page.
    person: Option<PersonId>,
    short: u8,
    first_tap: bool,
    touched: Option<Side>,
    side: Side,
    asked: Option<Asked>,
    /// Cautions over which the agent decided just now to keep the unit: they are not asked again on this visit.
    kept: Vec<String>,
    saving: Option<Saving>,
    text: Option<TextSize>,
    /// The demonstration that is open.
    demo: Option<demo::State>,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// The end of the page came into sight.
    SeenWhole(u64),
    /// A finger or the mouse came down in the right half of the window, or in the left one.
    Touched {
        /// Right half.
        right: bool,
    },
    /// Somebody said that they answer.
    PersonChosen(PersonId),
    /// Something came of a hold.
    Held(HoldEvent),
    /// The first of two taps.
    FirstTapped,
    /// The second of two taps.
    SecondTapped,
    /// The page with the milder cautions was read.
    ReadPressed,
    /// The next language was asked for.
    LanguageAsked(String),
    /// Larger text was asked for, or smaller after the largest.
    TextAsked(TextSize),
    /// Something in the question or the refusal.
    Ask(AskMessage),
    /// Something in the demonstration.
    Demo(demo::Message),
    /// The agent has the tablet.
    GivenBack,
}

/// What happened in the question or the refusal.
#[derive(Debug, Clone)]
pub enum AskMessage {
    /// There is a question.
    QuestionPressed,
    /// Its words changed.
    QuestionTyped(String),
    /// It is to be noted.
    QuestionDone {
        /// Answered on the spot.
        answered: bool,
    },
    /// Somebody will not confirm.
    RefusePressed,
    /// Which caution, by its id.
    RefuseChosen(String),
    /// The reason changed.
    ReasonTyped(String),
    /// The agent decides now.
    AgentCalled,
    /// The agent has decided.
    Decided(Decision),
    /// Back to the page.
    Closed,
}

impl State {
    /// The pages that wait at a stop.
    #[must_use]
    pub fn new_at(hall: &Hall, stop: usize) -> Self {
        let mut state = Self {
            stop,
            pages: pages::waiting_at(&hall.walk, stop),
            at: 0,
            turn: 0,
            whole: None,
            person: None,
            short: 0,
            first_tap: false,
            touched: None,
            side: Side::Left,
            asked: None,
            kept: Vec::new(),
            saving: None,
            text: None,
            demo: None,
        };
        state.open(hall);
        state
    }

    /// How many pages wait, and which of them is open, from 0. At the end it goes back to the agent.
    #[must_use]
    pub fn position(&self) -> (usize, usize) {
        (self.at, self.pages.len())
    }

    /// Who answers, if that is clear.
    #[must_use]
    pub fn person(&self) -> Option<PersonId> {
        self.person
    }

    /// The first page from here on that still waits for somebody who is here, opened for them.
    fn open(&mut self, hall: &Hall) {
        while self.at < self.pages.len() {
            let may = self.who_may(hall);
            if may.is_empty() {
                self.at += 1;
                continue;
            }
            // One who was chosen answers on; the choice is never made for several.
            let stays = self.person.filter(|p| may.contains(p));
            let only = if may.len() == 1 { may.first().copied() } else { None };
            self.person = stays.or(only);
            break;
        }
        self.turn += 1;
        self.whole = None;
        self.short = 0;
        self.first_tap = false;
        self.asked = None;
        self.demo = None;
        self.side = self.touched.map_or(Side::Left, Side::other);
    }

    /// What the end of the page says when it comes into sight.
    #[must_use]
    pub fn seen(&self) -> Message {
        Message::SeenWhole(self.turn)
    }

    /// The step and the cautions of the page that is open.
    #[must_use]
    pub fn page<'a>(&self, hall: &'a Hall) -> Option<(&'a Step, Vec<&'a Caution>)> {
        let (step, mut cautions) = self.pages.get(self.at)?.of(hall.walk.route())?;
        cautions.retain(|c| !self.kept.contains(&c.id));
        Some((step, cautions))
    }

    /// Who may answer something of that page now.
    fn who_may(&self, hall: &Hall) -> Vec<PersonId> {
        let Some((step, cautions)) = self.page(hall) else { return Vec::new() };
        let all: BTreeSet<PersonId> =
            cautions.into_iter().flat_map(|c| pages::who_may(&hall.walk, step, c)).collect();
        all.into_iter().collect()
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        match message {
            Message::SeenWhole(turn) if turn == self.turn => self.whole = self.whole.or(Some(ctx.now)),
            Message::SeenWhole(_) => {}
            Message::Touched { right } => self.touched = Some(if right { Side::Right } else { Side::Left }),
            Message::TextAsked(size) => self.text = Some(size),
            Message::GivenBack => {
                return Action::open(Screen::Walk(walk::State::after_stop(hall, self.stop)));
            }
            _ if hall.saving => {}
            Message::PersonChosen(person) => {
                self.person = Some(person);
                self.demo = None;
            }
            Message::Demo(message) => return self.demo(message, ctx),
            Message::Held(HoldEvent::TooShort) => self.short = self.short.saturating_add(1),
            Message::Held(HoldEvent::Done) => return self.answer(ctx, Answer::Hold),
            Message::FirstTapped => self.first_tap = true,
            Message::SecondTapped if self.first_tap => return self.answer(ctx, Answer::TwoTaps),
            Message::SecondTapped => {}
            Message::ReadPressed => return self.answer(ctx, Answer::Read),
            Message::LanguageAsked(language) => return self.change_language(hall, language),
            Message::Ask(message) => return self.ask(message, ctx),
        }
        Action::None
    }

    fn change_language(&mut self, hall: &Hall, language: String) -> Action {
        let Some(reader) = hall.walk.reader() else { return Action::None };
        let measures = reader.value.measures.clone();
        let mut events = vec![Event::ReaderSet { language, measures }];
        // What this person answered in other words is asked again. What another one read in theirs stands.
        if let Some(person) = self.person {
            events.splice(0..0, lapse::before(hall, &events, Some(person)));
        }
        self.propose(Saving::Language, events)
    }

    fn propose(&mut self, saving: Saving, events: Vec<Event>) -> Action {
        if events.is_empty() {
            return Action::None;
        }
        self.saving = Some(saving);
        Action::Propose(events)
    }

    /// What was proposed is kept.
    pub fn saved(&mut self, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        match self.saving.take() {
            Some(Saving::Answer) => self.open(hall),
            Some(Saving::Kept(caution)) => {
                self.kept.push(caution);
                self.open(hall);
            }
            Some(Saving::Question) => self.asked = None,
            Some(Saving::Demonstration) => return self.demo_saved(ctx),
            // Other words on the page are looked at from now on.
            Some(Saving::Language) => {
                self.turn += 1;
                self.whole = None;
            }
            None => {}
        }
        Action::None
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let Some((hall, speaker)) = ctx.hall.zip(ctx.renter()) else {
            return iced::widget::Space::new().into();
        };
        let usual = ctx.look.larger();
        let look = Look { text: self.text.unwrap_or(usual.text), ..usual };
        let show = Show { state: self, ctx, hall, speaker: &speaker, look };
        let Some((step, cautions)) = self.page(hall) else { return give_back::view(&show) };
        let page = match cautions.as_slice() {
            [caution] if let Some(open) = &self.demo => demo::view(&show, caution, open),
            [caution] if pages::has_own_page(caution) => grave::view(&show, step, caution),
            _ => shared::view(&show, step, &cautions),
        };
        let page = match &self.asked {
            Some(asked) => {
                let content = ask::view(&show, asked, &cautions);
                ui::dialog(&look, page, content, Some(Message::Ask(AskMessage::Closed)))
            }
            None => ui::alone(page),
        };
        stack![container(page).width(Length::Fill).height(Length::Fill), watch::watch()].into()
    }
}

/// What the parts of a page are made from.
struct Show<'s, 'a> {
    state: &'a State,
    ctx: &'s Ctx<'a>,
    hall: &'a Hall,
    speaker: &'s Speaker<'a>,
    look: Look,
}

impl Show<'_, '_> {
    /// Words for the renter.
    fn say(&self, key: &str) -> String {
        self.speaker.say(&format!("caution-page-{key}"))
    }

    /// Words for the renter, filled.
    fn say_with(&self, key: &str, args: Args) -> String {
        self.speaker.say_with(&format!("caution-page-{key}"), args)
    }

    /// Words for the agent.
    fn staff(&self, key: &str, args: &Args) -> String {
        self.ctx.say_with(&format!("caution-page-{key}"), args)
    }

    /// Name of somebody of the party.
    fn name(&self, person: PersonId) -> String {
        self.hall.walk.person(person).map(|p| p.name.clone()).unwrap_or_default()
    }

    /// Whether the end of the page has been in sight.
    fn is_whole(&self) -> bool {
        self.state.whole.is_some()
    }
}
