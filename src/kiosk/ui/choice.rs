//! Choosing: boxes to tick, rows and chips of which one holds, a number with less and more.

use iced::widget::canvas::{Path, Stroke};
use iced::widget::{Row, column, container, row};
use iced::{Alignment, Length, Point, Rectangle, Size};

use super::panel::{Edge, press_face};
use super::symbol::{self, Symbol};
use super::{Among, Element, chip, drawing, tap, words};
use crate::kiosk::theme::{Gap, Look, Type, style};

/// One of several things to choose from.
#[derive(Debug, Clone)]
pub struct Choice<M> {
    /// What it says.
    pub label: String,
    /// A second line, where one is needed.
    pub line: Option<String>,
    /// Whether it is the one that holds.
    pub chosen: bool,
    /// What choosing it sends.
    pub message: M,
}

impl<M> Choice<M> {
    /// A choice without a second line.
    pub fn new(label: impl Into<String>, chosen: bool, message: M) -> Self {
        Self { label: label.into(), line: None, chosen, message }
    }
}

/// A box to tick, with its words as part of the target.
pub fn checkbox<'a, M: Clone + 'a>(
    look: &Look,
    ticked: bool,
    label: impl Into<Element<'a, M>>,
    message: M,
) -> Element<'a, M> {
    let mark = tick_box(look, ticked);
    let line = row![mark, label.into()].spacing(look.gap(Gap::Large)).align_y(Alignment::Center);
    let face = container(line).padding(look.gap(Gap::Small)).width(Length::Fill).align_y(Alignment::Center);
    tap(look, super::pinned::at_least(look.target(), face.into()), message).into()
}

fn tick_box<'a, M: 'a>(look: &Look, ticked: bool) -> Element<'a, M> {
    let (side, line, radius, colors) = (look.px(36.0), look.line(), look.radius(), look.colors());
    drawing(side, side, move |frame| {
        let at = Point::new(line / 2.0, line / 2.0);
        let size = Size::new(side - line, side - line);
        let outline = Path::rounded_rectangle(at, size, radius.into());
        if ticked {
            frame.fill(&outline, colors.accent);
            let bounds = Rectangle::new(at, size).shrink(size.width * 0.12);
            symbol::draw(frame, Symbol::Tick, bounds, colors.on_accent, colors.accent);
        } else {
            frame.fill(&outline, colors.leaf);
            frame.stroke(&outline, Stroke::default().with_color(colors.edge).with_width(line));
        }
    })
}

/// A row as wide as its space, with a ring that fills when it is chosen.
pub fn radio_row<'a, M: Clone + 'a>(look: &Look, choice: Choice<M>) -> Element<'a, M> {
    let (side, colors, chosen) = (look.px(32.0), look.colors(), choice.chosen);
    let line = look.line();
    let ring = drawing(side, side, move |frame| {
        let center = frame.center();
        let edge = if chosen { colors.accent } else { colors.edge };
        let circle = Path::circle(center, side / 2.0 - line);
        frame.fill(&circle, colors.leaf);
        frame.stroke(&circle, Stroke::default().with_color(edge).with_width(line * 1.25));
        if chosen {
            frame.fill(&Path::circle(center, side * 0.27), colors.accent);
        }
    });
    let text =
        column![if chosen { words::strong(look, choice.label) } else { words::body(look, choice.label) }]
            .push(choice.line.map(|line| words::small(look, line)))
            .width(Length::Fill);
    let content = row![ring, text].spacing(look.gap(Gap::Large)).align_y(Alignment::Center);
    let edge = if chosen { Edge::Chosen } else { Edge::Press };
    press_face(look, edge, content.into(), choice.message).among(Among::Next).into()
}

/// Chips of which one or more hold; they wrap to further lines.
pub fn choices<'a, M: Clone + 'a>(look: &Look, all: impl IntoIterator<Item = Choice<M>>) -> Element<'a, M> {
    let chips = all.into_iter().enumerate().map(|(at, choice)| {
        let chip = chip(look, choice.label, choice.message).chosen(choice.chosen);
        chip.height(52.0).among(Among::at(at)).into()
    });
    Row::with_children(chips)
        .spacing(look.gap(Gap::Medium))
        .wrap()
        .vertical_spacing(look.gap(Gap::Medium))
        .into()
}

/// A number with one less and one more. A step that would leave the bounds is absent, its place stays.
pub fn stepper<'a, M: Clone + 'a>(
    look: &Look,
    value: impl Into<String>,
    less: Option<M>,
    more: Option<M>,
) -> Element<'a, M> {
    let side = look.target();
    let step = |which, message: Option<M>| -> Element<'a, M> {
        let Some(message) = message else {
            return iced::widget::Space::new().width(side).height(side).into();
        };
        let colors = look.colors();
        let ground = style::ground(look, colors.leaf, colors.edge);
        let face = container(symbol::symbol(look, which, 28.0)).center(side).style(move |_| ground);
        tap(look, face, message).into()
    };
    let middle = container(words::figure(look, value.into()).align_x(Alignment::Center))
        // As wide for every value, so that the steps stay under the finger.
        .center_x((look.size(Type::Figure) * 5.5).max(look.px(190.0)))
        .padding([0.0, look.gap(Gap::Small)]);
    row![step(Symbol::Minus, less), middle, step(Symbol::Plus, more)].align_y(Alignment::Center).into()
}
