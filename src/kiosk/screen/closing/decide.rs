//! What needs a reason: somebody will not sign, something is to be corrected, the unit is not handed over.

use iced::widget::column;

use super::{AskMessage, Message, Show, State};
use crate::kiosk::hall::Hall;
use crate::kiosk::screen::Action;
use crate::kiosk::screen::caution::AGENT_HOLD;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, HoldEvent};
use crate::walk::{Decision, Event, PersonId, Who};
use crate::words::Args;

/// What is open over the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Asked {
    /// Somebody will not sign.
    Refusal { by: PersonId, reason: String, decide: bool, decision: Option<Decision> },
    /// Something is to be corrected.
    Reopen { reason: String },
    /// The unit is to stay.
    Stop { reason: String, by: Who },
}

impl Asked {
    fn reason(&mut self) -> &mut String {
        match self {
            Self::Refusal { reason, .. } | Self::Reopen { reason } | Self::Stop { reason, .. } => reason,
        }
    }
}

impl State {
    pub(super) fn ask(&mut self, message: AskMessage, _hall: &Hall) -> Action {
        let empty = String::new();
        match (message, &mut self.asked) {
            (AskMessage::RefusePressed(by), _) => {
                self.asked = Some(Asked::Refusal { by, reason: empty, decide: false, decision: None });
            }
            (AskMessage::ReopenPressed, _) => self.asked = Some(Asked::Reopen { reason: empty }),
            (AskMessage::StopPressed, _) => self.asked = Some(Asked::Stop { reason: empty, by: Who::Agent }),
            (AskMessage::Closed, _) => self.asked = None,
            (AskMessage::ReasonTyped(words), Some(asked)) => *asked.reason() = words,
            (AskMessage::StopBy(who), Some(Asked::Stop { by, .. })) => *by = who,
            (AskMessage::AgentCalled, Some(Asked::Refusal { reason, decide, .. })) => {
                *decide = !reason.trim().is_empty();
            }
            (AskMessage::DecisionChosen(chosen), Some(Asked::Refusal { decide: true, decision, .. })) => {
                *decision = Some(chosen);
            }
            (
                AskMessage::Decided(HoldEvent::Done),
                Some(Asked::Refusal { by, reason, decide: true, decision: Some(decision) }),
            ) => {
                let (reason, decision) = (reason.trim().to_owned(), *decision);
                let event = Event::SignatureRefused { by: *by, reason, decision };
                // Whoever held on is the agent, and has the tablet from now on.
                self.holds = Who::Agent;
                return self.propose(vec![event]);
            }
            (AskMessage::Done, Some(asked)) => {
                let event = match asked {
                    Asked::Reopen { reason } => Event::ClosingReopened { reason: reason.trim().to_owned() },
                    Asked::Stop { reason, by } => {
                        Event::HandoverStopped { reason: reason.trim().to_owned(), by: *by }
                    }
                    Asked::Refusal { .. } => return Action::None,
                };
                return self.propose(vec![event]);
            }
            _ => {}
        }
        Action::None
    }
}

pub(super) fn view<'a>(show: &Show<'_, 'a>, asked: &'a Asked) -> Element<'a, Message> {
    match asked {
        Asked::Refusal { by, reason, decide: false, .. } => refusal(show, *by, reason),
        Asked::Refusal { by, reason, decide: true, decision } => decide(show, *by, reason, *decision),
        Asked::Reopen { reason } => reopen(show, reason),
        Asked::Stop { reason, by } => stop(show, reason, *by),
    }
}

fn reason_field<'a>(show: &Show<'_, 'a>, reason: &'a str, label: String) -> Element<'a, Message> {
    let typed = |words| Message::Ask(AskMessage::ReasonTyped(words));
    ui::field(&show.look, "closing-reason", reason, typed).label(label).into()
}

/// The button that does it, once there is a reason.
fn done<'a>(show: &Show<'_, 'a>, reason: &str, label: String, message: AskMessage) -> Element<'a, Message> {
    let look = &show.look;
    if show.hall.saving {
        return ui::saving(look, show.staff("saving")).into();
    }
    if reason.trim().is_empty() {
        // A renter's reason is asked for in the renter's language.
        let key = "reason-lacks";
        let own = matches!(message, AskMessage::AgentCalled);
        return show.lacks(if own { show.say(key) } else { show.staff(key) });
    }
    ui::primary(look, label, Message::Ask(message)).into()
}

fn back<'a>(show: &Show<'_, 'a>, label: String) -> Element<'a, Message> {
    ui::quiet(&show.look, label, Message::Ask(AskMessage::Closed)).into()
}

/// The renter's part of a refusal to sign.
fn refusal<'a>(show: &Show<'_, 'a>, by: PersonId, reason: &'a str) -> Element<'a, Message> {
    let look = &show.look;
    let label = show.say_with("refuse-field", Args::new().text("name", show.name(by)));
    column![
        ui::title(look, show.say("refuse-title")),
        ui::body(look, show.say("refuse-why")),
        reason_field(show, reason, label),
    ]
    .push(done(show, reason, show.say("refuse-give"), AskMessage::AgentCalled))
    .push(back(show, show.say("back")))
    .spacing(look.gap(Gap::Large))
    .into()
}

/// The agent's part: a choice, and a hold, so that nobody else decides.
fn decide<'a>(
    show: &Show<'_, 'a>,
    by: PersonId,
    reason: &str,
    decision: Option<Decision>,
) -> Element<'a, Message> {
    let look = &show.look;
    let args = Args::new().text("name", show.name(by)).text("reason", reason);
    let page = column![
        ui::title(look, show.staff("decide-title")),
        ui::strong(look, show.staff_with("decide-what", &args)),
    ]
    .spacing(look.gap(Gap::Large));
    if show.hall.saving {
        return page.push(ui::saving(look, show.staff("saving"))).into();
    }
    let option = |key: &str, which: Decision| {
        let message = Message::Ask(AskMessage::DecisionChosen(which));
        let choice = Choice::new(show.staff(key), decision == Some(which), message);
        ui::radio_row(look, Choice { line: Some(show.staff(&format!("{key}-line"))), ..choice })
    };
    let hold = decision.map(|_| {
        let say = |key: &str| show.ctx.say(&format!("caution-page-{key}"));
        let held = |event| Message::Ask(AskMessage::Decided(event));
        let hold = ui::hold(look, say("decide-hold"), say("decide-hold-line"), held);
        Element::from(hold.id("closing-decide").lasting(AGENT_HOLD))
    });
    page.push(option("decide-hand-over", Decision::HandOver))
        .push(option("decide-keep", Decision::KeepUnit))
        .push(hold)
        .push(back(show, show.staff("back")))
        .into()
}

fn reopen<'a>(show: &Show<'_, 'a>, reason: &'a str) -> Element<'a, Message> {
    let look = &show.look;
    let stopped = show.is_stopped().then(|| ui::body(look, show.staff("reopen-line-stopped")));
    column![ui::title(look, show.staff("reopen-title"))]
        .push(stopped)
        .push(ui::body(look, show.staff("reopen-line")))
        .push(reason_field(show, reason, show.staff("reopen-field")))
        .push(done(show, reason, show.staff("reopen-done"), AskMessage::Done))
        .push(back(show, show.staff("back")))
        .spacing(look.gap(Gap::Large))
        .into()
}

fn stop<'a>(show: &Show<'_, 'a>, reason: &'a str, by: Who) -> Element<'a, Message> {
    let look = &show.look;
    let choice = |who: Who| {
        let name = match who {
            Who::Agent => show.staff("sign-chip-agent"),
            Who::Person(id) => show.name(id),
        };
        Choice::new(name, who == by, Message::Ask(AskMessage::StopBy(who)))
    };
    let people = show.hall.walk.adults().map(|p| Who::Person(p.id));
    let who = ui::choices(look, [Who::Agent].into_iter().chain(people).map(choice));
    column![
        ui::title(look, show.staff("stop-title")),
        ui::body(look, show.staff("stop-line")),
        reason_field(show, reason, show.staff("stop-field")),
        column![ui::label(look, show.staff("stop-who")), who].spacing(look.gap(Gap::Small)),
    ]
    .push(done(show, reason, show.staff("stop-done"), AskMessage::Done))
    .push(back(show, show.staff("back")))
    .spacing(look.gap(Gap::Large))
    .into()
}
