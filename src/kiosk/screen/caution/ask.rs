//! What may lie over a page: a question of the renter, or a refusal.

use iced::widget::{column, row};

use super::refusal::{self, Refusal, Saved};
use super::{AskMessage, Message, Saving, Show, State};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::Action;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::route::Caution;
use crate::walk::Event;

/// What is open over the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Asked {
    /// A question with its words so far.
    Question(String),
    /// A refusal so far.
    Refusal(Refusal),
    /// A refusal that was saved.
    Saved(Saved),
}

impl State {
    pub(super) fn ask(&mut self, message: AskMessage, ctx: &Ctx<'_>) -> Action {
        match message {
            AskMessage::QuestionPressed if self.person.is_some() => {
                self.asked = Some(Asked::Question(String::new()));
            }
            AskMessage::RefusePressed => self.refuse_pressed(ctx),
            AskMessage::Closed => {
                if let (Some(Asked::Saved(_)), Some(hall)) = (self.asked.take(), ctx.hall) {
                    self.open(hall);
                }
            }
            AskMessage::QuestionDone { answered } => return self.note_question(ctx, answered),
            AskMessage::QuestionTyped(words) => {
                if let Some(Asked::Question(text)) = &mut self.asked {
                    *text = words;
                }
            }
            other => return self.refusal_changed(other, ctx),
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
}

pub(super) fn view<'a>(show: &Show<'_, 'a>, asked: &'a Asked, cautions: &[&Caution]) -> Element<'a, Message> {
    match asked {
        Asked::Question(text) => question(show, text),
        Asked::Refusal(refusal) => refusal::view(show, refusal, cautions),
        Asked::Saved(saved) => refusal::saved(show, saved),
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
