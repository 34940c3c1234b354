//! Grounds and what stands on them: panels, figures, notes, rules, scrolls.

use iced::widget::{Space, column, container, row, scrollable};
use iced::{Alignment, Background, Border, Color, Length, border};

use super::symbol::{Symbol, symbol};
use super::{Element, Tap, tap, words};
use crate::kiosk::theme::{Gap, Look, style};

/// Why a panel has the edge it has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edge {
    /// Decoration: nothing to press.
    Still,
    /// It can be pressed.
    Press,
    /// It is the one that is chosen, or what matters most here.
    Chosen,
}

fn face<'a, M: 'a>(look: &Look, edge: Edge, content: Element<'a, M>) -> container::Container<'a, M> {
    let colors = look.colors();
    let (fill, color) = match edge {
        Edge::Still => (colors.leaf, colors.line),
        Edge::Press => (colors.leaf, colors.edge),
        Edge::Chosen => (colors.tint, colors.accent),
    };
    let ground = style::ground(look, fill, color);
    container(content).padding(look.gap(Gap::Large)).style(move |_| ground)
}

/// A panel as wide as its space.
pub fn panel<'a, M: 'a>(look: &Look, content: impl Into<Element<'a, M>>) -> container::Container<'a, M> {
    face(look, Edge::Still, content.into()).width(Length::Fill)
}

/// A panel that can be pressed as a whole.
pub fn press_panel<'a, M: Clone + 'a>(
    look: &Look,
    edge: Edge,
    content: impl Into<Element<'a, M>>,
    message: M,
) -> Element<'a, M> {
    press_face(look, edge, content.into(), message).into()
}

pub(super) fn press_face<'a, M: Clone + 'a>(
    look: &Look,
    edge: Edge,
    content: Element<'a, M>,
    message: M,
) -> Tap<'a, M> {
    let inside = face(look, edge, content).width(Length::Fill).align_y(Alignment::Center);
    tap(look, super::pinned::at_least(look.target(), inside.into()), message)
}

/// A figure: its name, its value with the measure, and the way to how it is known.
pub fn figure_card<'a, M: Clone + 'a>(
    look: &Look,
    label: impl Into<String>,
    value: impl Into<String>,
    how: Option<(String, M)>,
) -> Element<'a, M> {
    let text = column![words::small(look, label.into()), words::figure(look, value.into())]
        .spacing(look.gap(Gap::Tiny));
    let Some((how, message)) = how else { return panel(look, text).into() };
    let more = row![words::small(look, how), symbol(look, Symbol::Right, 16.0)]
        .spacing(look.gap(Gap::Tiny))
        .align_y(Alignment::Center);
    press_panel(look, Edge::Press, text.push(more), message)
}

/// A remark with a bar at its side. The bar is in ink: a remark never borrows a safety color.
pub fn note<'a, M: 'a>(look: &Look, title: impl Into<String>, line: Option<String>) -> Element<'a, M> {
    remark(look, words::strong(look, title.into()).into(), line)
}

/// A remark whose title has a sign.
pub fn signed_note<'a, M: 'a>(
    look: &Look,
    sign: Symbol,
    title: impl Into<String>,
    line: String,
) -> Element<'a, M> {
    let title = row![symbol(look, sign, 28.0), words::strong(look, title.into())]
        .spacing(look.gap(Gap::Small))
        .align_y(Alignment::Center);
    remark(look, title.into(), Some(line))
}

fn remark<'a, M: 'a>(look: &Look, title: Element<'a, M>, line: Option<String>) -> Element<'a, M> {
    let (colors, radius) = (look.colors(), look.radius());
    let bar =
        container(Space::new().width(look.px(8.0)).height(Length::Fill)).style(move |_| container::Style {
            background: Some(Background::Color(colors.ink)),
            border: Border { radius: border::left(radius), ..Border::default() },
            ..container::Style::default()
        });
    let text = column![title]
        .push(line.map(|line| words::body(look, line)))
        .spacing(look.gap(Gap::Tiny))
        .padding(look.gap(Gap::Large))
        // What fills comes last: long words leave the bar its width.
        .width(Length::Fill);
    let ground = style::ground(look, colors.leaf, colors.line);
    container(row![bar, text].height(Length::Shrink)).width(Length::Fill).style(move |_| ground).into()
}

/// How far something is, from 0 to 1; out of bounds counts as the end.
#[must_use]
pub fn progress<'a, M: 'a>(look: &Look, part: f32) -> Element<'a, M> {
    let colors = look.colors();
    let part = if part.is_finite() { part.clamp(0.0, 1.0) } else { 0.0 };
    let (height, line) = (look.px(14.0), look.line());
    super::drawing(Length::Fill, height, move |frame| {
        use iced::widget::canvas::{Path, Stroke};
        use iced::{Point, Size};
        let inset = line / 2.0;
        let whole = Size::new(frame.width() - line, frame.height() - line);
        let at = Point::new(inset, inset);
        let done = Size::new(whole.width * part, whole.height);
        frame.fill(&Path::rounded_rectangle(at, whole, (whole.height / 2.0).into()), colors.leaf);
        if done.width >= done.height {
            frame.fill(&Path::rounded_rectangle(at, done, (whole.height / 2.0).into()), colors.accent);
        }
        let edge = Stroke::default().with_color(colors.edge).with_width(line);
        frame.stroke(&Path::rounded_rectangle(at, whole, (whole.height / 2.0).into()), edge);
    })
}

/// A line between parts.
#[must_use]
pub fn rule<'a, M: 'a>(look: &Look) -> Element<'a, M> {
    let line = look.colors().line;
    container(Space::new().width(Length::Fill).height(look.px(2.0)))
        .style(move |_| container::Style {
            background: Some(Background::Color(line)),
            ..container::Style::default()
        })
        .into()
}

/// A page part that scrolls where it must; its bar takes no room from the content until then.
pub fn scroll<'a, M: 'a>(look: &Look, content: impl Into<Element<'a, M>>) -> scrollable::Scrollable<'a, M> {
    let bar = scrollable::Scrollbar::new()
        .width(look.px(10.0))
        .scroller_width(look.px(10.0))
        .spacing(look.gap(Gap::Small));
    scrollable(content)
        .direction(scrollable::Direction::Vertical(bar))
        .width(Length::Fill)
        .style(style::scroll_bar(*look))
}

/// A plain ground of one color around something, with the corners of a panel.
pub(super) fn colored(look: &Look, fill: Color, text: Color) -> container::Style {
    container::Style {
        text_color: Some(text),
        background: Some(Background::Color(fill)),
        border: Border { radius: look.radius().into(), ..Border::default() },
        ..container::Style::default()
    }
}

/// A panel that stands out as the one that matters most; nothing to press.
#[must_use]
pub fn chosen_panel<'a, M: 'a>(
    look: &Look,
    content: impl Into<Element<'a, M>>,
) -> container::Container<'a, M> {
    face(look, Edge::Chosen, content.into()).width(Length::Fill)
}
