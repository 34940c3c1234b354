//! The party takes another unit: which, and why.

use iced::Length;
use iced::widget::{Column, column, row};

use super::{Draft, Message, Page, Pressed};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::Action;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element};
use crate::words::Args;

/// What is chosen and typed.
#[derive(Debug, Clone, Default)]
pub(super) struct Swapping {
    unit: Option<String>,
    why: String,
}

impl Swapping {
    pub(super) fn change(&mut self, draft: Draft) {
        match draft {
            Draft::Unit(unit) => self.unit = Some(unit),
            Draft::Note(words) => self.why = words,
            _ => {}
        }
    }

    /// The swap, once a unit is chosen. The reason says of itself that it was one.
    pub(super) fn action(&self, ctx: &Ctx<'_>) -> Action {
        let Some(unit) = self.unit.clone() else { return Action::None };
        let args = Args::new()
            .text("unit", ctx.say(&format!("unit-{unit}")))
            .text("why", self.why.trim().to_owned());
        let key = if self.why.trim().is_empty() { "swap-reason" } else { "swap-reason-why" };
        Action::Swap { unit, reason: ctx.say_with(key, &args) }
    }
}

impl<'a> Page<'a> {
    /// The other units of the lot, and a word why.
    pub(super) fn swap_sheet(&self, swapping: &'a Swapping) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let here = &self.walk().route().unit;
        let units = ctx.shapes.keys().filter(|unit| *unit != here).map(|unit| {
            let chosen = swapping.unit.as_ref() == Some(unit);
            let message = Message::Draft(Draft::Unit(unit.clone()));
            let choice = Choice::new(ctx.say(&format!("unit-{unit}")), chosen, message);
            ui::radio_row(look, Choice { line: Some(ctx.say(&format!("unit-{unit}.kind"))), ..choice })
        });
        let away = ui::secondary(look, ctx.say("walk-sheet-away"), Message::SheetClosed);
        let with = |first: ui::Button<Message>, away: ui::Button<Message>| {
            let line = row![first, away].spacing(look.gap(Gap::Medium));
            Element::from(line.wrap().vertical_spacing(look.gap(Gap::Medium)))
        };
        let ends = if self.saving(&Pressed::Sheet) {
            with(ui::saving(look, ctx.say("walk-saving")), away)
        } else if let Some(unit) = &swapping.unit {
            let args = Args::new().text("unit", ctx.say(&format!("unit-{unit}")));
            with(ui::primary(look, ctx.say_with("swap-keep", &args), Message::SheetKept), away)
        } else {
            self.lacking(ctx.say("swap-lacks"), away.into())
        };
        column![
            ui::section(look, ctx.say("swap-title")),
            ui::body(look, ctx.say("swap-what")),
            Column::with_children(units).spacing(look.gap(Gap::Small)),
            self.note_field(&swapping.why, "swap-why", None),
            ends,
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
    }
}
