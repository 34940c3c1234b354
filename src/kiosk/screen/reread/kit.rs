//! What the pages share: the frame with the way back, rows that lead on, the panel of a caution.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length, Padding};

use super::{Message, Show};
use crate::kiosk::screen::caution::grave as caution;
use crate::kiosk::theme::{Gap, Look};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::route::{Hazard, Signal};

impl<'a> Show<'a> {
    /// A page: the way back and its title, what scrolls, and what stays at the foot.
    pub(super) fn paged(
        &self,
        title: Option<String>,
        content: Element<'a, Message>,
        foot: Option<Element<'a, Message>>,
    ) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let (gap, wide) = (look.gap(Gap::Large), look.gap(Gap::Wide));
        let back = ui::secondary(look, self.say("reread-back"), Message::BackPressed)
            .before(Symbol::Left)
            .id("reread-back");
        let head = row![Element::from(back)]
            .push(title.map(|t| ui::section(look, t).width(Length::Fill)))
            .spacing(look.gap(Gap::Large))
            .align_y(Alignment::Center);
        let content = container(content).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        let middle = ui::scroll(look, content).height(Length::Fill);
        let page = column![head, middle].push(foot).spacing(gap).height(Length::Fill);
        let padding = Padding { top: gap, left: wide, right: wide, bottom: wide };
        container(page).padding(padding).width(Length::Fill).height(Length::Fill).into()
    }

    /// A row that leads on: words and a sign.
    pub(super) fn way(
        &self,
        look: &Look,
        words: String,
        sign: Symbol,
        message: Message,
    ) -> Element<'a, Message> {
        let line = row![ui::strong(look, words).width(Length::Fill), ui::symbol(look, sign, 28.0)]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
        ui::press_panel(look, ui::panel::Edge::Press, line, message)
    }

    /// Rows in two columns where the page is wide, read across.
    pub(super) fn columns(&self, look: &Look, rows: Vec<Element<'a, Message>>) -> Element<'a, Message> {
        let gap = look.gap(Gap::Medium);
        if look.portrait() {
            return Column::with_children(rows).spacing(gap).into();
        }
        let mut lines = Column::new().spacing(gap);
        let mut rows = rows.into_iter();
        while let Some(first) = rows.next() {
            let part = |e: Element<'a, Message>| container(e).width(Length::FillPortion(1));
            let second = rows.next().unwrap_or_else(|| iced::widget::Space::new().into());
            lines = lines.push(Row::new().push(part(first)).push(part(second)).spacing(gap));
        }
        lines.into()
    }

    /// A caution with all its words: signal, sign, what is dangerous, what it does, what to do.
    pub(super) fn caution_panel(
        &self,
        look: &Look,
        id: &str,
        signal: Signal,
        hazard: Hazard,
        alone: bool,
    ) -> Element<'a, Message> {
        let say = |part: &str| self.speaker.say_steady(&format!("caution-{id}{part}"));
        let word = self.say(match signal {
            Signal::Danger => "signal-danger",
            Signal::Warning => "signal-warning",
            Signal::Caution => "signal-caution",
            Signal::Notice => "signal-notice",
        });
        let badge = ui::signal_badge(look, caution::signal(signal), word);
        // A notice is not about injury and has no sign.
        let sign = (signal != Signal::Notice).then(|| ui::hazard_symbol(look, caution::sign(hazard), 88.0));
        // Larger where it has the page for itself.
        let words = if alone {
            column![
                ui::hazard_line(look, say("")),
                ui::lead(look, say(".harm")),
                ui::lead(look, say(".avoid"))
            ]
            .spacing(look.gap(Gap::Large))
        } else {
            column![ui::section(look, say("")), ui::body(look, say(".harm")), ui::lead(look, say(".avoid"))]
                .spacing(look.gap(Gap::Small))
        };
        let words = words.width(Length::Fill);
        let marks = if look.portrait() {
            Element::from(row![badge].push(sign).spacing(look.gap(Gap::Medium)).align_y(Alignment::Center))
        } else {
            column![badge].push(sign).spacing(look.gap(Gap::Small)).align_x(Alignment::Center).into()
        };
        let content: Element<'a, Message> = if look.portrait() {
            column![marks, words].spacing(look.gap(Gap::Medium)).into()
        } else {
            row![marks, words].spacing(look.gap(Gap::Wide)).into()
        };
        ui::panel(look, content).into()
    }
}
