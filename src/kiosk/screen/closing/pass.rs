//! Who has the tablet in hand, and the card between two pages that are not for the same hands.

use iced::widget::{Column, Row, column, container};
use iced::{Alignment, Length};

use super::{AskMessage, Message, Page, Show, State, sign};
use crate::kiosk::screen::caution::AGENT_HOLD;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::walk::{PersonId, Phase, Who};
use crate::words::Args;

/// A card on which the tablet changes hands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Card {
    /// One of these takes it.
    To(Vec<PersonId>),
    /// The agent takes it back.
    Back,
}

impl State {
    /// Whether the agent has the tablet in hand.
    pub(super) fn is_with_agent(&self) -> bool {
        self.holds == Who::Agent
    }

    /// The page is for other hands after all.
    pub(super) fn stay(&mut self) {
        (self.signer, self.consent_by, self.asked_back) = (None, None, false);
    }
}

impl Show<'_, '_> {
    /// The card that comes before the page; none where the page is for whoever has the tablet.
    pub(super) fn card(&self) -> Option<Card> {
        if self.state.asked_back {
            return Some(Card::Back);
        }
        match (self.state.holds, self.holder()) {
            (Who::Agent, None) => Some(Card::To(self.renters())),
            (holds, Some(wanted)) if holds != wanted => Some(match wanted {
                Who::Agent => Card::Back,
                Who::Person(id) => Card::To(vec![id]),
            }),
            _ => None,
        }
    }

    /// Who of the party can take the tablet: the adults who are here.
    fn renters(&self) -> Vec<PersonId> {
        let here = sign::adults_here(self.hall);
        if here.is_empty() { self.hall.walk.adults().map(|p| p.id).collect() } else { here }
    }

    fn turn(&self, key: &str) -> String {
        self.speaker.say(&format!("caution-page-{key}"))
    }
}

/// What lets the renter give the tablet to the agent, where only the agent can go another way.
pub(super) fn to_agent<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    ui::quiet(&show.look, show.turn("turn-agent"), Message::AgentAsked).id("closing-to-agent").into()
}

pub(super) fn view<'a>(show: &Show<'_, 'a>, card: &Card) -> Element<'a, Message> {
    match card {
        Card::To(people) => to(show, people),
        Card::Back => back(show),
    }
}

/// Somebody of the party takes it, and says so.
fn to<'a>(show: &Show<'_, 'a>, people: &[PersonId]) -> Element<'a, Message> {
    let look = &show.look;
    let named = |id: PersonId| Args::new().text("name", show.name(id));
    let mut words: Column<'a, Message, _, _> =
        column![].spacing(look.gap(Gap::Large)).align_x(Alignment::Center).width(Length::Fill);
    let line = |key: &str| ui::lead(look, show.say(key)).align_x(Alignment::Center);
    if let [only] = people {
        let pass = if show.state.is_with_agent() {
            show.say_with("pass-to", named(*only))
        } else {
            show.speaker.say_with("caution-page-turn-pass", named(*only))
        };
        words = words
            .push(ui::label(look, show.turn("turn-now")))
            .push(ui::title(look, show.name(*only)).align_x(Alignment::Center))
            .push(ui::lead(look, pass).align_x(Alignment::Center));
    } else {
        words = words
            .push(ui::title(look, show.say("pass-renter")).align_x(Alignment::Center))
            .push(ui::lead(look, show.turn("turn-first")).align_x(Alignment::Center));
    }
    words = words.push((show.state.page == Page::Take).then(|| line("pass-list")));
    let buttons = people.iter().map(|person| {
        let label = show.speaker.say_with("caution-page-turn-take", named(*person));
        let take = Message::TakenBy(*person);
        let button = if people.len() == 1 {
            ui::primary(look, label, take)
        } else {
            ui::secondary(look, label, take).bold()
        };
        button.fill().height(80.0).into()
    });
    let buttons = Column::with_children(buttons).spacing(look.gap(Gap::Medium)).max_width(look.px(520.0));
    framed(show, column![words, buttons], others(show))
}

/// Other ways from the card: the agent's own, while the agent has the tablet.
fn others<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let mut row = Row::new().spacing(look.gap(Gap::Wide)).align_y(Alignment::Center);
    if is_chosen(show) {
        row = row.push(ui::quiet(look, show.say("back"), Message::StayPressed));
    }
    if !show.state.is_with_agent() {
        return row.push(to_agent(show)).wrap().vertical_spacing(look.gap(Gap::Small)).into();
    }
    let phase = show.hall.walk.phase();
    if phase == Phase::Walking {
        row = row.push(ui::secondary(look, show.staff("take-back"), Message::BackPressed)).push(ui::quiet(
            look,
            show.staff("stop"),
            Message::Ask(AskMessage::StopPressed),
        ));
    } else {
        row = row.push(ui::quiet(look, show.staff("reopen"), Message::Ask(AskMessage::ReopenPressed)));
    }
    let signing = show.state.page == Page::Sign && phase != Phase::Walking;
    let chips = signing.then(|| sign::chips_of_all(show));
    column![ui::label(look, show.turn("for-agent"))]
        .push(chips)
        .push(row.wrap().vertical_spacing(look.gap(Gap::Small)))
        .spacing(look.gap(Gap::Medium))
        .align_x(Alignment::Center)
        .into()
}

/// Whether the card came because somebody was chosen, who need not be the one.
fn is_chosen(show: &Show<'_, '_>) -> bool {
    show.state.signer.is_some() || show.state.consent_by.is_some() || show.state.asked_back
}

/// The agent takes it back: a hold, longer than anybody taps.
fn back<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let mut words = column![].spacing(look.gap(Gap::Wide)).align_x(Alignment::Center).width(Length::Fill);
    if !is_chosen(show) {
        // Their part is done.
        words = words
            .push(ui::symbol(look, ui::Symbol::TickDisc, 112.0))
            .push(ui::title(look, show.turn("thanks")).align_x(Alignment::Center));
    }
    let words = words.push(ui::hazard_line(look, show.turn("give-back")).align_x(Alignment::Center));
    let staff = |key: &str| show.ctx.say(&format!("caution-page-{key}"));
    let hold = ui::hold(look, staff("go-on"), staff("go-on-line"), Message::TakenBack)
        .id("closing-agent")
        .lasting(AGENT_HOLD);
    let undo =
        is_chosen(show).then(|| Element::from(ui::quiet(look, show.say("back"), Message::StayPressed)));
    let foot = column![ui::label(look, staff("for-agent")), Element::from(hold)].push(undo);
    framed(show, column![words], foot.spacing(look.gap(Gap::Small)).align_x(Alignment::Center).into())
}

/// A card in the middle, what else can be done below it.
fn framed<'a>(
    show: &Show<'_, 'a>,
    words: Column<'a, Message>,
    foot: Element<'a, Message>,
) -> Element<'a, Message> {
    let look = &show.look;
    let words = words.spacing(look.gap(Gap::Wide)).align_x(Alignment::Center).width(Length::Fill);
    let card = ui::panel(look, container(words).padding(look.gap(Gap::Large)));
    let card = container(card).max_width(look.px(760.0));
    let middle = container(ui::scroll(look, container(card).center_x(Length::Fill)));
    let middle = middle.center_y(Length::Fill).padding(look.gap(Gap::Huge));
    let foot = container(foot).center_x(Length::Fill).padding(look.gap(Gap::Wide));
    column![middle, ui::rule(look), foot].height(Length::Fill).into()
}
