//! A question of the renter, and a refusal: the renter's reason, then the agent's decision.

use iced::widget::{column, row};

use super::{AskMessage, Message, Saving, Show, State, answer, grave};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::Action;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Edge, Element};
use crate::route::Caution;
use crate::walk::{Decision, Event};
use crate::words::Args;

/// What is open over the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Asked {
    /// A question with its words so far.
    Question(String),
    /// A refusal so far.
    Refusal {
        /// The caution, by its id.
        caution: Option<String>,
        /// The renter's reason.
        reason: String,
        /// Whether the agent decides now.
        decide: bool,
    },
}

impl State {
    pub(super) fn ask(&mut self, message: AskMessage, ctx: &Ctx<'_>) -> Action {
        match message {
            AskMessage::QuestionPressed => self.asked = Some(Asked::Question(String::new())),
            AskMessage::RefusePressed => return self.refuse_pressed(ctx),
            AskMessage::Closed => self.asked = None,
            AskMessage::QuestionDone { answered } => return self.note_question(ctx, answered),
            AskMessage::Decided(decision) => return self.decided(ctx, decision),
            AskMessage::QuestionTyped(words) => {
                if let Some(Asked::Question(text)) = &mut self.asked {
                    *text = words;
                }
            }
            AskMessage::RefuseChosen(_) | AskMessage::ReasonTyped(_) | AskMessage::AgentCalled => {
                self.refusal_changed(message);
            }
        }
        Action::None
    }

    fn refusal_changed(&mut self, message: AskMessage) {
        let Some(Asked::Refusal { caution, reason, decide }) = &mut self.asked else { return };
        match message {
            AskMessage::RefuseChosen(id) => *caution = Some(id),
            AskMessage::ReasonTyped(words) => *reason = words,
            AskMessage::AgentCalled => *decide = caution.is_some() && !reason.trim().is_empty(),
            _ => {}
        }
    }

    /// Of a page with one caution it is clear which is refused.
    fn refuse_pressed(&mut self, ctx: &Ctx<'_>) -> Action {
        let only = match ctx.hall.and_then(|hall| self.page(hall)) {
            Some((_, cautions)) => match cautions.as_slice() {
                [only] => Some(only.id.clone()),
                _ => None,
            },
            None => return Action::None,
        };
        if self.person.is_some() {
            self.asked = Some(Asked::Refusal { caution: only, reason: String::new(), decide: false });
        }
        Action::None
    }

    /// A question belongs to the caution it was asked on; on a shared page, to the step.
    fn note_question(&mut self, ctx: &Ctx<'_>, answered: bool) -> Action {
        let Some((step, cautions)) = ctx.hall.and_then(|hall| self.page(hall)) else { return Action::None };
        let Some(Asked::Question(text)) = &self.asked else { return Action::None };
        let caution = match cautions.as_slice() {
            [only] => Some(only.id.clone()),
            _ => None,
        };
        let text = text.trim().to_owned();
        let event = Event::QuestionNoted { step: step.id.clone(), caution, text, answered };
        self.propose(Saving::Question, vec![event])
    }

    fn decided(&mut self, ctx: &Ctx<'_>, decision: Decision) -> Action {
        let Some((hall, speaker)) = ctx.hall.zip(ctx.renter()) else { return Action::None };
        let Some((_, cautions)) = self.page(hall) else { return Action::None };
        let Some(Asked::Refusal { caution: Some(id), reason, decide: true }) = &self.asked else {
            return Action::None;
        };
        let Some((caution, by)) = cautions.into_iter().find(|c| c.id == *id).zip(self.person) else {
            return Action::None;
        };
        let event = Event::CautionRefused {
            caution: caution.id.clone(),
            version: caution.version,
            by,
            reason: reason.trim().to_owned(),
            decision,
            shown: answer::shown(&speaker, caution),
        };
        let saving = match decision {
            Decision::KeepUnit => Saving::Kept(caution.id.clone()),
            Decision::HandOver => Saving::Answer,
        };
        self.propose(saving, vec![event])
    }
}

pub(super) fn view<'a>(show: &Show<'_, 'a>, asked: &'a Asked, cautions: &[&Caution]) -> Element<'a, Message> {
    match asked {
        Asked::Question(text) => question(show, text),
        Asked::Refusal { decide: true, caution, reason } => {
            decide(show, caution.as_deref(), reason, cautions)
        }
        Asked::Refusal { caution, reason, .. } => refusal(show, caution.as_deref(), reason, cautions),
    }
}

fn question<'a>(show: &Show<'_, 'a>, text: &'a str) -> Element<'a, Message> {
    let look = &show.look;
    let typed = |words| Message::Ask(AskMessage::QuestionTyped(words));
    let field = ui::field(look, "caution-question-words", text, typed).label(show.say("question-field"));
    let done = |answered| Message::Ask(AskMessage::QuestionDone { answered });
    let buttons: Element<'a, Message> = if show.hall.saving {
        ui::saving(look, show.say("saving")).into()
    } else {
        row![
            ui::primary(look, show.say("question-answered"), done(true)),
            ui::secondary(look, show.say("question-open"), done(false)),
        ]
        .spacing(look.gap(Gap::Medium))
        .wrap()
        .vertical_spacing(look.gap(Gap::Medium))
        .into()
    };
    column![
        ui::title(look, show.say("question-title")),
        ui::body(look, show.say("question-why")),
        Element::from(field),
        buttons,
        Element::from(ui::quiet(look, show.say("question-back"), Message::Ask(AskMessage::Closed))),
    ]
    .spacing(look.gap(Gap::Large))
    .into()
}

fn refusal<'a>(
    show: &Show<'_, 'a>,
    caution: Option<&str>,
    reason: &'a str,
    cautions: &[&Caution],
) -> Element<'a, Message> {
    let look = &show.look;
    let mut page = column![ui::title(look, show.say("refuse-title"))].spacing(look.gap(Gap::Large));
    if cautions.len() > 1 {
        let all = cautions.iter().map(|c| {
            let message = Message::Ask(AskMessage::RefuseChosen(c.id.clone()));
            Choice::new(grave::title(show, c), caution == Some(c.id.as_str()), message)
        });
        page = page.push(ui::strong(look, show.say("refuse-which"))).push(ui::choices(look, all));
    }
    let typed = |words| Message::Ask(AskMessage::ReasonTyped(words));
    let label = show.say_with("refuse-field", grave::named(show));
    page = page
        .push(ui::body(look, show.say("refuse-why")))
        .push(ui::field(look, "caution-reason", reason, typed).label(label));
    if caution.is_some() && !reason.trim().is_empty() {
        page = page.push(ui::primary(look, show.say("refuse-give"), Message::Ask(AskMessage::AgentCalled)));
    }
    page.push(ui::quiet(look, show.say("refuse-back"), Message::Ask(AskMessage::Closed))).into()
}

/// The agent's part, in the agent's language.
fn decide<'a>(
    show: &Show<'_, 'a>,
    caution: Option<&str>,
    reason: &str,
    cautions: &[&Caution],
) -> Element<'a, Message> {
    let look = &show.ctx.look;
    let titled = cautions.iter().find(|c| Some(c.id.as_str()) == caution);
    let title = titled.map_or_else(String::new, |c| {
        let staff = show.ctx.staff(&show.hall.walk.route().unit);
        staff.map_or_else(|| grave::title(show, c), |s| s.caution(c).title)
    });
    let what = grave::named(show).text("title", title).text("reason", reason);
    let option = |key: &str, decision| -> Element<'a, Message> {
        let words = column![
            ui::strong(look, show.staff(key, &Args::new())),
            ui::body(look, show.staff(&format!("{key}-line"), &Args::new())),
        ]
        .spacing(look.gap(Gap::Tiny));
        ui::press_panel(look, Edge::Press, words, Message::Ask(AskMessage::Decided(decision)))
    };
    let mut page = column![
        ui::title(look, show.staff("decide", &Args::new())),
        ui::strong(look, show.staff("decide-what", &what)),
        ui::body(look, show.staff("decide-reason", &what)),
    ]
    .spacing(look.gap(Gap::Large));
    if show.hall.saving {
        page = page.push(ui::saving(look, show.staff("saving", &Args::new())));
    } else {
        page = page
            .push(option("hand-over", Decision::HandOver))
            .push(option("keep", Decision::KeepUnit))
            .push(ui::quiet(look, show.staff("refuse-back", &Args::new()), Message::Ask(AskMessage::Closed)));
    }
    page.into()
}
