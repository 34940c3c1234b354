//! The whole walk as a list: how every step stands, the way to each, and the ways out.

use iced::widget::{Column, Row, Space, column, container, row};
use iced::{Alignment, Length};

use super::{Message, Page, SheetKind, side};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element, Symbol};
use crate::route::{Step, Zone};
use crate::walk::{Missing, StepState};

impl<'a> Page<'a> {
    /// All steps, by zone and stop.
    pub(super) fn overview(&self) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let ways = Row::new()
            .push(ui::primary(look, ctx.say("walk-overview-back"), Message::SheetClosed))
            .push(ui::secondary(look, ctx.say("walk-to-closing"), Message::ClosingAsked))
            .push(ui::secondary(look, ctx.say("walk-to-yard"), Message::YardAsked))
            .spacing(look.gap(Gap::Medium))
            .wrap()
            .vertical_spacing(look.gap(Gap::Medium));
        let others = ctx.shapes.keys().any(|unit| *unit != self.walk().route().unit);
        let changes = Row::new()
            .push(ui::secondary(look, ctx.say("walk-to-opening"), Message::OpeningAsked))
            .push(
                ctx.crew
                    .signs_on()
                    .then(|| ui::secondary(look, ctx.say("walk-take-over"), Message::TakeOverAsked)),
            )
            .push(
                others
                    .then(|| ui::secondary(look, ctx.say("walk-swap"), Message::SheetAsked(SheetKind::Swap))),
            )
            .spacing(look.gap(Gap::Medium))
            .wrap()
            .vertical_spacing(look.gap(Gap::Medium));
        let stop = ui::quiet(look, ctx.say("walk-stop"), Message::SheetAsked(SheetKind::Stop));
        let mut all = column![
            ui::title(look, ctx.say("walk-overview")),
            ways,
            ui::small(look, ctx.say("walk-to-yard-what")),
            ui::label(look, ctx.say("walk-changes")),
            changes,
            Element::from(stop),
        ]
        .spacing(look.gap(Gap::Medium))
        .width(Length::Fill);
        for zone in [Zone::Desk, Zone::Outside, Zone::Inside, Zone::Leaving] {
            all = all.push(self.steps_of(zone));
        }
        all.into()
    }

    fn steps_of(&self, zone: Zone) -> Option<Element<'a, Message>> {
        let look = &self.ctx.look;
        let route = self.walk().route();
        let mut rows: Vec<Element<'a, Message>> = Vec::new();
        for stop in route.stops.iter().filter(|s| s.zone == zone) {
            for index in stop.steps.clone() {
                let number = (index == stop.steps.start && matches!(zone, Zone::Outside | Zone::Inside))
                    .then_some(stop.number);
                rows.extend(route.steps.get(index).map(|step| self.step_row(index, step, number)));
            }
        }
        let head = ui::section(look, self.ctx.say(side::zone_key(zone)));
        (!rows.is_empty())
            .then(|| column![head, Column::with_children(rows)].spacing(look.gap(Gap::Tiny)).into())
    }

    fn step_row(&self, index: usize, step: &'a Step, number: Option<u16>) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let colors = look.colors();
        let here = index == self.state.step;
        let badge: Element<'a, Message> = match number {
            Some(number) => ui::symbol::circle_number(look, number, here, 40.0),
            None => Space::new().width(look.px(40.0)).height(look.px(40.0)).into(),
        };
        let missing = self.walk().missing_at(index);
        let answers = missing.iter().all(|m| matches!(m, Missing::Answer { .. }));
        let (sign, words) = match self.walk().step_state(&step.id) {
            StepState::Open => (Symbol::Ring, self.minutes(u32::from(step.minutes))),
            StepState::NotShown { reason, .. } => (Symbol::Cross, ctx.say(super::sheet::reason_key(*reason))),
            StepState::Shown { .. } if missing.is_empty() => {
                (Symbol::TickDisc, ctx.say("walk-overview-shown"))
            }
            StepState::Shown { .. } if answers => (Symbol::Alert, ctx.say("walk-overview-answers")),
            StepState::Shown { .. } => (Symbol::Alert, ctx.say("walk-overview-missing")),
        };
        let title = self.say_unit(&format!("step-{}", step.id));
        let title = if here { ui::strong(look, title) } else { ui::body(look, title) };
        let line = row![
            badge,
            title.width(Length::FillPortion(3)),
            ui::small(look, words).width(Length::FillPortion(2)).align_x(Alignment::End),
            ui::symbol::symbol_in(look, sign, 26.0, colors.accent, colors.leaf),
        ]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center);
        let face = container(line).padding([look.gap(Gap::Tiny), look.gap(Gap::Small)]).width(Length::Fill);
        ui::tap(look, ui::at_least(look.px(56.0), face.into()), Message::StepChosen(index)).into()
    }
}
