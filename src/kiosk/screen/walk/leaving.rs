//! The leaving check: each line is as it must be, or not.

use iced::widget::{Column, Space, column, container, row};
use iced::{Alignment, Length, Padding};

use super::{Message, Page, Pressed};
use crate::kiosk::theme::{Gap, style};
use crate::kiosk::ui::{self, Element, Symbol};

impl<'a> Page<'a> {
    /// The lines: in a space of their own they scroll, below other things they follow.
    pub(super) fn leaving_lines(&self, own_space: bool) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let rows = self.step.leaving.iter().map(|line| self.leaving_line(line));
        let rows = Column::with_children(rows).spacing(look.gap(Gap::Tiny));
        if !own_space {
            return rows.into();
        }
        let rows = container(rows).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        ui::scroll(look, rows).height(Length::Fill).into()
    }

    fn leaving_line(&self, line: &'a str) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let colors = look.colors();
        let good = self.walk().leaving(line).map(|t| t.value);
        let words = self.say_unit(&format!("leaving-{line}"));
        let (fill, edge) = match good {
            Some(true) => (colors.tint, colors.accent),
            Some(false) => (colors.leaf, colors.ink),
            None => (colors.leaf, colors.line),
        };
        let text = match good {
            Some(false) => {
                column![ui::strong(look, words), ui::small(look, ctx.say("walk-leaving-not-good"))]
            }
            Some(true) | None => column![ui::body(look, words)],
        };
        let (tick, cross): (Element<'a, Message>, Element<'a, Message>) = if self
            .saving(&Pressed::Line(line.to_owned()))
        {
            (container(ui::symbol(look, Symbol::Open, 30.0)).center(look.target()).into(), self.no_button())
        } else {
            (self.verdict(line, true, good), self.verdict(line, false, good))
        };
        let ground = style::ground(look, fill, edge);
        let content = row![text.width(Length::Fill), tick, cross]
            .spacing(look.gap(Gap::Small))
            .align_y(Alignment::Center)
            .padding(Padding::from([look.gap(Gap::Tiny), look.gap(Gap::Small)]).left(look.gap(Gap::Large)));
        container(content).width(Length::Fill).style(move |_| ground).into()
    }

    fn no_button(&self) -> Element<'a, Message> {
        let side = self.ctx.look.target();
        Space::new().width(side).height(side).into()
    }

    /// Good or not good: the one that holds is filled and nothing to press.
    fn verdict(&self, line: &str, verdict: bool, is: Option<bool>) -> Element<'a, Message> {
        let (look, colors) = (&self.ctx.look, self.ctx.look.colors());
        let which = if verdict { Symbol::Tick } else { Symbol::Cross };
        let holds = is == Some(verdict);
        let (fill, ink, edge) = match (holds, verdict) {
            (true, true) => (colors.accent, colors.on_accent, colors.accent),
            (true, false) => (colors.ink, colors.leaf, colors.ink),
            (false, _) => (colors.leaf, colors.ink, colors.edge),
        };
        let ground = style::ground(look, fill, edge);
        let face = container(ui::symbol::symbol_in(look, which, 30.0, ink, fill))
            .center(look.target())
            .style(move |_| ground);
        if holds {
            return face.into();
        }
        let name = format!("leaving-{line}-{}", if verdict { "good" } else { "not-good" });
        let message = Message::LeavingTicked { item: line.to_owned(), good: verdict };
        ui::tap(look, face, message).id(iced::widget::Id::from(name)).into()
    }
}
