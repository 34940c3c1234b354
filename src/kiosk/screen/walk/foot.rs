//! The foot: what the page is for, and what else can be done with the step. Always in sight.

use iced::Alignment;
use iced::widget::{Column, Row};

use super::{Message, Page, Pressed, SheetKind, fit, way};
use crate::kiosk::screen::counted;
use crate::kiosk::theme::{Gap, Type};
use crate::kiosk::ui::{self, Button, Element};
use crate::walk::{Missing, StepState};
use crate::words::Args;
use way::Onward;

/// Least width of the primary button beside others, as written.
const PRIMARY: f32 = 300.0;

impl<'a> Page<'a> {
    /// The foot, in one row where its words fit, else the primary button above the rest.
    pub(super) fn foot(&self, width: f32) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let gap = look.gap(Gap::Medium);
        let mut others = self.others();
        let padding = look.gap(Gap::Wide);
        let natural = |others: &[(String, Message)]| -> f32 {
            let one =
                |label: &str| fit::room(look, Type::Body, label, f32::INFINITY).width + 2.0 * padding + gap;
            others.iter().map(|(label, _)| one(label)).sum()
        };
        // The rows of the page open the same sheet: the foot keeps to one row before it repeats them.
        let one_row = |others: &[(String, Message)]| {
            let labels: Vec<String> = others.iter().map(|(label, _)| label.clone()).collect();
            fit::columns(look, &labels, width, padding) == labels.len()
        };
        let beside =
            |others: &[(String, Message)]| !look.portrait() && natural(others) + look.px(PRIMARY) <= width;
        if !beside(&others) && (!look.portrait() || !one_row(&others)) {
            others.retain(|(_, m)| !matches!(m, Message::SheetAsked(SheetKind::Readings)));
        }
        if beside(&others) {
            let others =
                others.into_iter().map(|(label, message)| ui::secondary(look, label, message).into());
            let all = others.chain([self.primary().fill().into()]).collect();
            return ui::hand_row(look, all).spacing(gap).align_y(Alignment::Center).into();
        }
        let labels: Vec<String> = others.iter().map(|(label, _)| label.clone()).collect();
        let columns = fit::columns(look, &labels, width, padding);
        let mut buttons =
            others.into_iter().map(|(label, message)| ui::secondary(look, label, message).fill()).peekable();
        let mut rows = Column::new().spacing(look.gap(Gap::Small)).push(self.primary().fill().height(72.0));
        while buttons.peek().is_some() {
            let cells = buttons.by_ref().take(columns).map(Element::from);
            rows = rows.push(Row::with_children(cells).spacing(gap));
        }
        rows.into()
    }

    /// What else can be done here; what cannot is absent.
    fn others(&self) -> Vec<(String, Message)> {
        let say = |key: &str| self.ctx.say(key);
        let mut others = Vec::new();
        if self.state.step > 0 {
            others.push((say("walk-back"), Message::BackAsked));
        }
        if way::may_be_left_out(self.walk(), self.step) {
            others.push((say("walk-not-shown"), Message::SheetAsked(SheetKind::NotShown)));
        }
        others.push((say("walk-question"), Message::SheetAsked(SheetKind::Question)));
        others.push((say("walk-mark"), Message::SheetAsked(SheetKind::Marks)));
        if !self.step.readings.is_empty() {
            others.push((say("walk-readings"), Message::SheetAsked(SheetKind::Readings)));
        }
        others
    }

    /// What the page is for: it follows the stop.
    fn primary(&self) -> Button<Message> {
        let (look, ctx, walk) = (&self.ctx.look, &self.ctx, self.walk());
        if self.saving(&Pressed::Foot) {
            return ui::saving(look, ctx.say("walk-saving"));
        }
        let open = *walk.step_state(&self.step.id) == StepState::Open;
        let (label, missing) = match way::onward(walk, self.state.step) {
            Onward::Step(next) => {
                let id = walk.route().steps.get(next).map(|s| s.id.as_str()).unwrap_or_default();
                let title = self.say_unit(&format!("step-{id}"));
                let key = if open { "walk-shown-next" } else { "walk-next" };
                (ctx.say_with(key, &Args::new().text("title", title)), self.open_here())
            }
            Onward::HandOver { cautions, .. } => {
                (counted(ctx, "walk-hand-over", cautions), self.open_at_stop())
            }
            Onward::Closing => {
                let label = ctx.say("walk-to-closing");
                let whole = walk.missing_to_sign().iter().all(|m| *m == Missing::Consent);
                let here = if whole { 0 } else { self.open_here() };
                return match (whole, open) {
                    _ if here > 0 => ui::secondary(look, self.with_open(label, here), Message::Onward).bold(),
                    (true, _) | (_, true) => ui::primary(look, label, Message::Onward),
                    (false, false) => ui::secondary(look, label, Message::Onward).bold(),
                };
            }
        };
        match missing {
            0 => ui::primary(look, label, Message::Onward),
            _ => ui::secondary(look, self.with_open(label, missing), Message::Onward).bold(),
        }
    }

    /// What a button does, with how much is missing before it should be done.
    fn with_open(&self, label: String, open: usize) -> String {
        let open = u64::try_from(open).unwrap_or(u64::MAX);
        self.ctx.say_with("walk-hand-over-open", &Args::new().text("label", label).number("count", open))
    }

    /// The line about a step that was left out, with the way to show it after all.
    pub(super) fn left_out(&self) -> Option<Element<'a, Message>> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let StepState::NotShown { reason, note } = self.walk().step_state(&self.step.id) else { return None };
        let why = ctx.say(super::sheet::reason_key(*reason));
        let line = if note.trim().is_empty() {
            why
        } else {
            ctx.say_with("crumb-two", &Args::new().text("first", why).text("second", note.clone()))
        };
        let again = ui::quiet(look, ctx.say("walk-show-after-all"), Message::ShownAfterAll);
        let words = iced::widget::column![
            ui::strong(look, ctx.say("walk-left-out")),
            ui::small(look, line),
            Element::from(again)
        ];
        Some(ui::panel(look, words.spacing(look.gap(Gap::Tiny))).into())
    }
}
