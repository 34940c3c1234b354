//! Caution: the renter's pages of one stop, one after the other; then the tablet goes back to the agent.

mod answer;
mod ask;
mod demo;
mod foot;
mod give_back;
pub(in crate::kiosk) mod grave;
mod pages;
mod refusal;
mod shared;
mod turn;
mod watch;

use iced::Length;
use iced::widget::{Space, container, stack};
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
pub(in crate::kiosk) use refusal::AGENT_HOLD;

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

/// What is open.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Place {
    /// One of these is to take the tablet.
    Turn(Vec<PersonId>),
    /// The page at this position, for whoever answers.
    Page(usize),
    /// It goes back to the agent.
    End,
}

/// What is being saved, and so what follows.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Saving {
    /// An answer: the next page may come.
    Answer,
    /// A refusal: it is said what was saved.
    Refusal,
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
    place: Place,
    /// Counts the times a page was opened for somebody; a new number makes its target start afresh.
    turn: u64,
    /// Since when the end of the page has been in sight.
    whole: Option<Timestamp>,
    /// Who has the tablet, until they have answered all that waits for them.
    person: Option<PersonId>,
    /// The cautions that waited for them when they took it, by id.
    round: Vec<String>,
    /// Who had it before.
    before: Option<PersonId>,
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
    /// Somebody said that they have the tablet.
    PersonChosen(PersonId),
    /// Whoever has it is not the one whose name is on the page.
    OtherAsked,
    /// Nobody who is to read on is here.
    NobodyHere,
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
    /// The agent has the tablet, and held on to say so.
    GivenBack(HoldEvent),
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
    /// One of the usual reasons.
    ReasonChosen(&'static str),
    /// The reason in their own words changed.
    ReasonTyped(String),
    /// The agent decides now.
    AgentCalled,
    /// What the agent would decide.
    DecisionChosen(Decision),
    /// The agent held on to say so.
    Decided(HoldEvent),
    /// Back to the page; after a refusal was saved, on.
    Closed,
}

impl State {
    /// The pages that wait at a stop.
    #[must_use]
    pub fn new_at(hall: &Hall, stop: usize) -> Self {
        let mut state = Self {
            stop,
            pages: pages::waiting_at(&hall.walk, stop),
            place: Place::End,
            turn: 0,
            whole: None,
            person: None,
            round: Vec::new(),
            before: None,
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

    /// Whether the tablet is to go back to the agent.
    #[must_use]
    pub fn is_over(&self) -> bool {
        self.place == Place::End
    }

    /// Who may take the tablet now; nobody while somebody has it.
    #[must_use]
    pub fn turns(&self) -> &[PersonId] {
        if let Place::Turn(people) = &self.place { people } else { &[] }
    }

    /// A number that changes with every page that opens.
    #[must_use]
    pub fn opened(&self) -> u64 {
        self.turn
    }

    /// Who has the tablet, if that is clear.
    #[must_use]
    pub fn person(&self) -> Option<PersonId> {
        self.person
    }

    /// What the end of the page says when it comes into sight.
    #[must_use]
    pub fn seen(&self) -> Message {
        Message::SeenWhole(self.turn)
    }

    /// The step of the page that is open, and its cautions that wait for whoever has the tablet.
    #[must_use]
    pub fn page<'a>(&self, hall: &'a Hall) -> Option<(&'a Step, Vec<&'a Caution>)> {
        let Place::Page(at) = self.place else { return None };
        let (step, cautions) = self.waiting(hall, at, self.person?)?;
        (!cautions.is_empty()).then_some((step, cautions))
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        match message {
            Message::SeenWhole(turn) if turn == self.turn => self.whole = self.whole.or(Some(ctx.now)),
            Message::SeenWhole(_) => {}
            Message::Touched { right } => self.touched = Some(if right { Side::Right } else { Side::Left }),
            Message::TextAsked(size) => self.text = Some(size),
            Message::GivenBack(HoldEvent::TooShort) => {}
            Message::GivenBack(HoldEvent::Done) if self.place == Place::End => {
                return Action::open(Screen::Walk(walk::State::after_stop(hall, self.stop)));
            }
            Message::GivenBack(HoldEvent::Done) => {}
            _ if hall.saving => {}
            Message::PersonChosen(person) => self.take(hall, person),
            Message::OtherAsked => self.let_go(hall),
            Message::NobodyHere => self.give_up(),
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
        if let Some(person) = self.reading() {
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
            Some(Saving::Refusal) => self.refusal_saved(),
            Some(Saving::Question) => self.asked = None,
            Some(Saving::Demonstration) => return self.demo_saved(ctx),
            Some(Saving::Language) => self.reworded(hall),
            None => {}
        }
        Action::None
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let Some((hall, speaker)) = ctx.hall.zip(ctx.renter()) else {
            return Space::new().into();
        };
        let usual = ctx.look.larger();
        let look = Look { text: self.text.unwrap_or(usual.text), ..usual };
        let show = Show { state: self, ctx, hall, speaker: &speaker, look };
        let found = self.page(hall);
        let page = match found.as_ref().map(|(step, cautions)| (*step, cautions.as_slice())) {
            None if matches!(self.asked, Some(Asked::Saved(_))) => {
                Space::new().width(Length::Fill).height(Length::Fill).into()
            }
            None => match &self.place {
                Place::Turn(people) => turn::view(&show, people),
                Place::Page(_) | Place::End => give_back::view(&show),
            },
            Some((_, [caution])) if let Some(open) = &self.demo => demo::view(&show, caution, open),
            Some((step, [caution])) if pages::has_own_page(caution) => grave::view(&show, step, caution),
            Some((step, cautions)) => shared::view(&show, step, cautions),
        };
        let cautions = found.map_or_else(Vec::new, |(_, cautions)| cautions);
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

    /// Name of whoever has the tablet.
    fn reader(&self) -> String {
        self.state.person.map(|person| self.name(person)).unwrap_or_default()
    }

    /// Words filled with that name.
    fn named(&self) -> Args {
        Args::new().text("name", self.reader())
    }

    /// Whether the end of the page has been in sight.
    fn is_whole(&self) -> bool {
        self.state.whole.is_some()
    }
}
