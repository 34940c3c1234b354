//! The cautions of a step, as rows: what they are about, how they are answered, and what has come of that.

use iced::widget::Column;

use super::{Message, Page};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element, Symbol};
use crate::route::{Answers, Ask, Caution, Signal};
use crate::walk::{AnswerState, MustAnswer, PersonId};
use crate::words::{Args, format};

impl<'a> Page<'a> {
    /// All cautions of the step; nothing when it has none.
    pub(super) fn cautions(&self) -> Option<Element<'a, Message>> {
        if self.step.cautions.is_empty() {
            return None;
        }
        let rows = self.step.cautions.iter().map(|c| self.caution(c));
        Some(Column::with_children(rows).spacing(self.ctx.look.gap(Gap::Medium)).into())
    }

    fn caution(&self, caution: &'a Caution) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let text = self.staff.as_ref().map(|s| s.caution(caution));
        let (title, word) = text.map_or_else(|| (caution.id.clone(), String::new()), |t| (t.title, t.signal));
        let state = self.walk().answer_state_of(self.step, caution);
        let (line, end) = self.answers(caution, &state);
        ui::caution_card(look, (signal(caution.signal), word), (title, line), end, None)
    }

    /// What has come of a caution, in words, and its sign.
    fn answers(&self, caution: &Caution, state: &AnswerState) -> (String, Element<'a, Message>) {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let who = |people: &[PersonId]| {
            let names: Vec<String> = people.iter().map(|id| self.name(*id)).collect();
            Args::new().text("who", format::list(&ctx.scripts.words, &ctx.settings.staff, &names))
        };
        let word = |key: &str| -> Element<'a, Message> { ui::strong(look, ctx.say(key)).into() };
        let sign = |which| ui::symbol::symbol_in(look, which, 32.0, look.colors().accent, look.colors().leaf);
        match state {
            AnswerState::NotDue => (ctx.say("walk-answer-not-due"), iced::widget::Space::new().into()),
            AnswerState::Waiting(MustAnswer::Drivers(left))
                if self.walk().responses(&caution.id).next().is_some() =>
            {
                (ctx.say_with("walk-answer-still", &who(left)), word("walk-answer-open"))
            }
            AnswerState::Waiting(_) => (ctx.say(asks(caution)), word("walk-answer-open")),
            AnswerState::Answered => {
                let people: Vec<PersonId> = self
                    .walk()
                    .responses(&caution.id)
                    .map(|(id, _)| id)
                    .filter(|id| self.walk().person(*id).is_some())
                    .collect();
                (ctx.say_with("walk-answer-by", &who(&people)), sign(Symbol::TickDisc))
            }
            AnswerState::Refused(people) => {
                (ctx.say_with("walk-answer-refused", &who(people)), ui::symbol(look, Symbol::Cross, 28.0))
            }
            AnswerState::Kept(people) => {
                (ctx.say_with("walk-answer-kept", &who(people)), ui::symbol(look, Symbol::Alert, 30.0))
            }
        }
    }
}

/// How a caution is answered, and by whom.
pub(super) const fn asks(caution: &Caution) -> &'static str {
    let held = caution.demonstrations.is_empty();
    match (caution.ask, caution.who) {
        // What this unit has nothing to demonstrate of is held.
        (Ask::Demonstrate, Answers::Party) if held => "walk-ask-hold",
        (Ask::Demonstrate, Answers::EachDriver) if held => "walk-ask-hold-drivers",
        (Ask::Read, Answers::Party) => "walk-ask-read",
        (Ask::Hold, Answers::Party) => "walk-ask-hold",
        (Ask::Demonstrate, Answers::Party) => "walk-ask-demonstrate",
        (Ask::Read, Answers::EachDriver) => "walk-ask-read-drivers",
        (Ask::Hold, Answers::EachDriver) => "walk-ask-hold-drivers",
        (Ask::Demonstrate, Answers::EachDriver) => "walk-ask-demonstrate-drivers",
    }
}

const fn signal(signal: Signal) -> ui::Signal {
    match signal {
        Signal::Danger => ui::Signal::Danger,
        Signal::Warning => ui::Signal::Warning,
        Signal::Caution => ui::Signal::Caution,
        Signal::Notice => ui::Signal::Notice,
    }
}
