//! The leaving check: each line is as it must be, or not.

use iced::widget::{Column, Space, column, container, row};
use iced::{Alignment, Length, Padding};

use super::{Message, Page, Pressed, fit};
use crate::kiosk::theme::{Gap, Type, style};
use crate::kiosk::ui::{self, Element, Symbol};

/// Side of the sign on a button, as written.
const SIGN: f32 = 26.0;

impl<'a> Page<'a> {
    /// The lines: in a space of their own they scroll, below other things they follow.
    pub(super) fn leaving_lines(&self, width: f32, own_space: bool) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let rows = self.step.leaving.iter().map(|line| self.leaving_line(line, width));
        let rows = Column::with_children(rows).spacing(look.gap(Gap::Tiny));
        if !own_space {
            return rows.into();
        }
        let rows = container(rows).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        ui::kept_scroll(look, &self.state.scrolled.1, rows)
    }

    fn leaving_line(&self, line: &'a str, width: f32) -> Element<'a, Message> {
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
        let (good_is, bad_is) = (Verdict { good: true, is: good }, Verdict { good: false, is: good });
        let wide = self.verdict_width();
        let (yes, no): (Element<'a, Message>, Element<'a, Message>) =
            if self.saving(&Pressed::Line(line.to_owned())) {
                let saving = container(ui::symbol(look, Symbol::Open, 30.0)).center_x(wide);
                (saving.center_y(look.target()).into(), Space::new().width(wide).height(look.target()).into())
            } else {
                (self.verdict(line, good_is, wide), self.verdict(line, bad_is, wide))
            };
        let ground = style::ground(look, fill, edge);
        let gap = look.gap(Gap::Small);
        let verdicts = row![yes, no].spacing(gap);
        let padding = Padding::from([look.gap(Gap::Tiny), gap]).left(look.gap(Gap::Large));
        // Where long words would be torn beside the two, the two stand below them.
        let beside = width - 2.0 * wide - 6.0 * gap - look.gap(Gap::Large) >= look.px(150.0);
        let content = if beside {
            let line = row![text.width(Length::Fill), verdicts].spacing(gap);
            container(line.align_y(Alignment::Center))
        } else {
            container(column![text.width(Length::Fill), verdicts].spacing(gap))
        };
        content.padding(padding).width(Length::Fill).style(move |_| ground).into()
    }

    /// Width of each of the two buttons of a line: that of the longer word.
    fn verdict_width(&self) -> f32 {
        let look = &self.ctx.look;
        let word = |good| {
            let word = self.ctx.say(Verdict { good, is: None }.key());
            fit::room(look, Type::Strong, &word, f32::INFINITY).width
        };
        word(true).max(word(false)) + look.px(SIGN) + look.gap(Gap::Small) + 2.0 * look.gap(Gap::Medium)
    }

    /// Good or not good, in a sign and a word: the one that holds is filled and nothing to press.
    fn verdict(&self, line: &str, verdict: Verdict, wide: f32) -> Element<'a, Message> {
        let (look, colors) = (&self.ctx.look, self.ctx.look.colors());
        let which = if verdict.good { Symbol::Tick } else { Symbol::Cross };
        let holds = verdict.is == Some(verdict.good);
        let (fill, ink, edge) = match (holds, verdict.good) {
            (true, true) => (colors.accent, colors.on_accent, colors.accent),
            (true, false) => (colors.ink, colors.leaf, colors.ink),
            (false, _) => (colors.leaf, colors.ink, colors.edge),
        };
        let ground = style::ground(look, fill, edge);
        let word = ui::strong(look, self.ctx.say(verdict.key())).color(ink);
        let face = row![ui::symbol::symbol_in(look, which, SIGN, ink, fill), word]
            .spacing(look.gap(Gap::Small))
            .align_y(Alignment::Center);
        let face = container(face).center_x(wide).center_y(look.target()).style(move |_| ground);
        if holds {
            return face.into();
        }
        let name = format!("leaving-{line}-{}", if verdict.good { "good" } else { "not-good" });
        let message = Message::LeavingTicked { item: line.to_owned(), good: verdict.good };
        ui::tap(look, face, message).id(iced::widget::Id::from(name)).into()
    }
}

/// One of the two answers to a line, and what was answered.
#[derive(Clone, Copy)]
struct Verdict {
    good: bool,
    is: Option<bool>,
}

impl Verdict {
    const fn key(self) -> &'static str {
        if self.good { "walk-leaving-yes" } else { "walk-leaving-no" }
    }
}
