//! Closing: what you take and what it can cost; sign; your copy. Or, when the unit stays: the reason, the agent's
//! signature, the copy.

mod account;
mod copy;
mod costs;
mod decide;
mod jump;
mod pad;
mod pass;
mod sign;
mod take;

use iced::Length;
use iced::widget::{Column, column, container};

use super::Action;
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::Hall;
use crate::kiosk::theme::{Gap, Look};
use crate::kiosk::ui::{self, Element, HoldEvent, InkEvent, Stroke};
use crate::record::text::consent_text;
use crate::script::Speaker;
use crate::walk::{CopyChoice, Decision, Event, Missing, PersonId, Phase, Shown, Who};
use crate::words::Args;

use decide::Asked;

/// The pages of the closing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Page {
    /// What you take and what it can cost.
    Take,
    /// Consent and signatures.
    Sign,
    /// The copy, and the seal.
    Copy,
}

/// State of the screen: only what is not yet said.
#[derive(Debug)]
pub struct State {
    page: Page,
    consent: Option<bool>,
    consent_by: Option<PersonId>,
    consent_again: bool,
    signer: Option<Who>,
    strokes: Vec<Stroke>,
    /// Height of the pad when its width is 1000.
    height: u16,
    asked: Option<Asked>,
    /// Who has the tablet in hand, as they said themselves.
    holds: Who,
    /// Whether the renter gives it to the agent, who could go another way.
    asked_back: bool,
    /// Whether events of this page are on their way to the journal.
    saving: bool,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// Another page was asked for.
    PageAsked(Page),
    /// What is missing is to be made good.
    Jumped(Missing),
    /// The walk is to go on.
    BackPressed,
    /// An electronic record, or paper.
    ConsentChosen(bool),
    /// Who says so.
    ConsentBy(PersonId),
    /// It is said.
    ConsentDone,
    /// It is to be said anew.
    ConsentAgain,
    /// Who signs next.
    SignerChosen(Who),
    /// A stroke on the pad, and the height of the pad when its width is 1000.
    Inked(InkEvent, u16),
    /// The last stroke is taken back.
    UndoPressed,
    /// All strokes are taken back.
    ClearPressed,
    /// The signature is finished.
    SignPressed,
    /// Somebody of the party has the tablet.
    TakenBy(PersonId),
    /// The renter gives the tablet to the agent.
    AgentAsked,
    /// The agent has the tablet, and held on to say so.
    TakenBack(HoldEvent),
    /// The tablet stays where it is.
    StayPressed,
    /// Somebody has come.
    HereNow(PersonId),
    /// How the copy is taken.
    CopyChosen(CopyChoice),
    /// The record is to be sealed.
    SealPressed,
    /// Something in a decision.
    Ask(AskMessage),
}

/// What happened in a decision.
#[derive(Debug, Clone)]
pub enum AskMessage {
    /// Somebody will not sign.
    RefusePressed(PersonId),
    /// Something is to be corrected.
    ReopenPressed,
    /// The unit is not to be handed over.
    StopPressed,
    /// The reason changed.
    ReasonTyped(String),
    /// Who decided that the unit stays.
    StopBy(Who),
    /// The agent decides now.
    AgentCalled,
    /// What the agent would decide about a refusal.
    DecisionChosen(Decision),
    /// The agent held on to say so.
    Decided(HoldEvent),
    /// The reason is given; do it.
    Done,
    /// Back to the page.
    Closed,
}

impl State {
    /// The closing on the page where the walk stands.
    #[must_use]
    pub fn new(hall: &Hall) -> Self {
        let mut state = Self {
            page: Page::Take,
            consent: None,
            consent_by: None,
            consent_again: false,
            signer: None,
            strokes: Vec::new(),
            height: 1,
            asked: None,
            holds: Who::Agent,
            asked_back: false,
            saving: false,
        };
        state.page = state.stands_at(hall);
        state
    }

    /// The page that is open.
    #[must_use]
    pub fn page(&self) -> Page {
        self.page
    }

    fn stands_at(&self, hall: &Hall) -> Page {
        let walk = &hall.walk;
        let mut missing = walk.missing_to_seal();
        missing.retain(|m| !matches!(m, Missing::CopyOffered | Missing::CopyChoice));
        // The last of the renters chooses the copy before the tablet goes back to the agent, who signs last.
        let agent = missing.as_slice() == [Missing::Signature { by: Who::Agent }];
        match walk.phase() {
            Phase::Opening | Phase::Walking => Page::Take,
            Phase::Signing if agent && walk.copy().is_none() => Page::Copy,
            Phase::Signing | Phase::Stopped if !missing.is_empty() => Page::Sign,
            Phase::Signing | Phase::Stopped | Phase::SealBegun => Page::Copy,
        }
    }

    fn propose(&mut self, events: Vec<Event>) -> Action {
        self.saving = true;
        Action::Propose(events)
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        if hall.saving {
            return Action::None;
        }
        match message {
            Message::PageAsked(page) => self.page = page,
            Message::Jumped(missing) => return self.jump(hall, &missing),
            Message::BackPressed => return jump::back(hall),
            Message::ConsentChosen(given) => self.consent = Some(given),
            Message::ConsentBy(person) => self.consent_by = Some(person),
            Message::ConsentAgain => self.consent_again = true,
            Message::ConsentDone => return self.consent_done(ctx, hall),
            Message::SignerChosen(who) => {
                self.signer = Some(who);
                self.strokes.clear();
            }
            Message::Inked(InkEvent::StrokeDone(stroke), height) => {
                self.height = height;
                self.strokes.push(stroke);
            }
            Message::UndoPressed => {
                let _ = self.strokes.pop();
            }
            Message::ClearPressed => self.strokes.clear(),
            Message::SignPressed => return self.sign(hall),
            Message::TakenBy(person) => {
                (self.holds, self.asked_back) = (Who::Person(person), false);
                self.strokes.clear();
            }
            Message::AgentAsked => self.asked_back = true,
            Message::TakenBack(HoldEvent::Done) => {
                (self.holds, self.asked_back) = (Who::Agent, false);
                self.strokes.clear();
            }
            Message::TakenBack(HoldEvent::TooShort) => {}
            Message::StayPressed => self.stay(),
            Message::HereNow(person) => {
                let mut people = hall.walk.present().map(|p| p.value.clone()).unwrap_or_default();
                people.push(person);
                return self.propose(vec![Event::PresentSet { people }]);
            }
            Message::CopyChosen(choice) => {
                let offer = hall.walk.copy_offered().is_none().then_some(Event::CopyOffered);
                return self.propose(offer.into_iter().chain([Event::CopyChosen { choice }]).collect());
            }
            Message::SealPressed => {
                self.saving = false;
                return Action::Seal;
            }
            Message::Ask(message) => return self.ask(message, hall),
        }
        Action::None
    }

    fn consent_done(&mut self, ctx: &Ctx<'_>, hall: &Hall) -> Action {
        let by = sign::consenter(self, hall);
        let (Some(given), Some(by), Some(speaker)) = (self.consent, by, ctx.renter()) else {
            return Action::None;
        };
        let (_, text) = consent_text(&speaker);
        let shown = Shown { text, language: speaker.reader().lang.clone() };
        // The same answer again changes nothing and needs no event.
        let same =
            hall.walk.consents().any(|(p, c)| p == by && c.value.given == given && c.value.shown == shown);
        if same {
            self.consent_again = false;
            return Action::None;
        }
        self.propose(vec![Event::ConsentAnswered { by, given, shown }])
    }

    /// What was proposed is kept.
    pub fn saved(&mut self, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        if !std::mem::take(&mut self.saving) {
            return Action::None;
        }
        self.consent_again = false;
        self.strokes.clear();
        (self.signer, self.consent_by) = (None, None);
        let was_signing = self.page != Page::Take;
        let reopened = matches!(self.asked, Some(Asked::Reopen { .. }));
        self.asked = None;
        let stands = self.stands_at(hall);
        // Consent alone does not move the walk on, but the page stays at signing.
        if stands != Page::Take || reopened || !was_signing {
            self.page = stands;
        }
        Action::None
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let Some((hall, speaker)) = ctx.hall.zip(ctx.renter()) else {
            return iced::widget::Space::new().into();
        };
        let show = Show { state: self, ctx, hall, speaker: &speaker, look: ctx.look };
        let page = match (show.card(), self.page) {
            (Some(card), _) => pass::view(&show, &card),
            (None, Page::Take) => take::view(&show),
            (None, Page::Sign) => sign::view(&show),
            (None, Page::Copy) => copy::view(&show),
        };
        let page = container(page).width(Length::Fill).height(Length::Fill);
        match &self.asked {
            Some(asked) => {
                let close = Some(Message::Ask(AskMessage::Closed));
                ui::dialog(&ctx.look, page, decide::view(&show, asked), close)
            }
            None => ui::alone(page),
        }
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

impl<'a> Show<'_, 'a> {
    /// Words for the renter.
    fn say(&self, key: &str) -> String {
        self.speaker.say(&format!("closing-{key}"))
    }

    /// Words for the renter, filled.
    fn say_with(&self, key: &str, args: Args) -> String {
        self.speaker.say_with(&format!("closing-{key}"), args)
    }

    /// Words for the agent.
    fn staff(&self, key: &str) -> String {
        self.ctx.say(&format!("closing-{key}"))
    }

    /// Words for the agent, filled.
    fn staff_with(&self, key: &str, args: &Args) -> String {
        self.ctx.say_with(&format!("closing-{key}"), args)
    }

    /// Name of somebody of the party.
    fn name(&self, person: PersonId) -> String {
        self.hall.walk.person_ever(person).map(|p| p.name.clone()).unwrap_or_default()
    }

    /// Whether the unit is to stay.
    fn is_stopped(&self) -> bool {
        self.hall.walk.stopped().is_some()
    }

    /// Who has the tablet in hand, in their own language.
    fn holds(&self) -> String {
        match self.state.holds {
            Who::Agent => self.staff("holds-agent"),
            Who::Person(id) => self.say_with("holds-person", Args::new().text("name", self.name(id))),
        }
    }

    /// For whose hands the page is: the agent, one of the party, or anybody of the party.
    fn holder(&self) -> Option<Who> {
        let walk = &self.hall.walk;
        let agent = |is: bool| is.then_some(Who::Agent);
        match self.state.page {
            Page::Take => agent(self.is_stopped() || !jump::before_signing(self.hall).is_empty()),
            Page::Sign => sign::holder(self),
            Page::Copy => agent(self.is_stopped() || walk.copy().is_some()),
        }
    }

    /// Where a button will be, once what these words say is done.
    fn lacks(&self, words: String) -> Element<'a, Message> {
        ui::body(&self.look, words).width(Length::Fill).into()
    }

    /// A page with its content above and its foot always in sight.
    fn page(
        &self,
        content: impl Into<Element<'a, Message>>,
        foot: Element<'a, Message>,
    ) -> Element<'a, Message> {
        let look = &self.look;
        let pad = look.gap(Gap::Wide);
        let content = column![ui::label(look, self.holds()), content.into()].spacing(look.gap(Gap::Small));
        let foot = container(foot).padding(iced::Padding::new(pad).top(0.0)).width(Length::Fill);
        let content = container(content).padding(iced::Padding::new(pad).bottom(0.0)).height(Length::Fill);
        let page: Column<'a, Message> = column![content, foot];
        page.spacing(look.gap(Gap::Large)).height(Length::Fill).into()
    }
}
