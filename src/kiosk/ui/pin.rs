//! Keys for a PIN: digits, back and an end, and dots for what was typed. The keys of a keyboard do as well.

use iced::keyboard::{self, Key, key::Named};
use iced::widget::{Column, Row, Space, column, container};
use iced::{Alignment, Border, Event, Length};

use super::around::{Around, Behavior, Input};
use super::symbol::{Symbol, symbol};
use super::{Element, tap, words};
use crate::kiosk::theme::{Gap, Look, Type, style};
use iced::advanced::Shell;

/// What was pressed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PinKey {
    /// A digit.
    Digit(char),
    /// The last digit back.
    Back,
    /// That was all.
    End,
}

/// The height of a key in pixels as written.
const KEY: f32 = 68.0;
/// Width of the pad in pixels as written.
const WIDTH: f32 = 330.0;

/// Dots for `typed` digits, keys below. The key that ends, called `end`, is there when there are enough digits.
pub fn pin_pad<'a, M: Clone + 'a>(
    look: &Look,
    typed: usize,
    end: Option<String>,
    on_key: impl Fn(PinKey) -> M + Copy + 'a,
) -> Element<'a, M> {
    let gap = look.gap(Gap::Small);
    let digit = |letter: char| {
        let face = words::text(look, Type::Section, letter.to_string()).size(look.px(30.0));
        key(look, face.into(), on_key(PinKey::Digit(letter)))
    };
    let lines = ["123", "456", "789"]
        .iter()
        .map(|line| Row::with_children(line.chars().map(digit)).spacing(gap).into());
    let none = || -> Element<'a, M> {
        container(Space::new()).width(Length::FillPortion(1)).height(look.px(KEY)).into()
    };
    let back = if typed > 0 {
        key(look, symbol(look, Symbol::Backspace, 30.0), on_key(PinKey::Back))
    } else {
        none()
    };
    let last = Row::new().push(none()).push(digit('0')).push(back).spacing(gap);
    let keys = Column::with_children(lines).push(last).spacing(gap);
    let ends = end.is_some();
    let end: Element<'a, M> = match end {
        Some(end) => super::primary(look, end, on_key(PinKey::End)).fill().into(),
        None => Space::new().height(look.target()).into(),
    };
    let pad = column![dots(look, typed), keys, end].spacing(look.gap(Gap::Medium)).width(look.px(WIDTH));
    Element::new(Around { content: pad.into(), margin: 0.0, behavior: Keys { ends, on_key } })
}

fn dots<'a, M: 'a>(look: &Look, typed: usize) -> Element<'a, M> {
    let (side, ink) = (look.px(16.0), look.ink());
    let dot = move || {
        let face = container::Style {
            background: Some(ink.into()),
            border: Border { radius: (side / 2.0).into(), ..Border::default() },
            ..container::Style::default()
        };
        container(Space::new()).width(side).height(side).style(move |_| face).into()
    };
    let row = Row::with_children((0..typed).map(|_| dot())).spacing(look.px(9.0));
    let ground = style::ground(look, look.colors().leaf, look.colors().line);
    container(row)
        .height(look.px(52.0))
        .center_x(Length::Fill)
        .align_y(Alignment::Center)
        .style(move |_| ground)
        .into()
}

fn key<'a, M: Clone + 'a>(look: &Look, face: Element<'a, M>, message: M) -> Element<'a, M> {
    let ground = style::ground(look, look.colors().leaf, look.colors().edge);
    let face = container(face)
        .width(Length::Fill)
        .height(look.px(KEY))
        .align_x(Alignment::Center)
        .align_y(Alignment::Center)
        .style(move |_| ground);
    container(tap(look, face, message)).width(Length::FillPortion(1)).into()
}

/// The keys of a keyboard, wherever the focus is: nothing else on a page with a pad takes digits.
struct Keys<F> {
    ends: bool,
    on_key: F,
}

impl<M, F: Fn(PinKey) -> M> Behavior<M> for Keys<F> {
    type State = ();

    fn handle(&self, (): &mut (), input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let Event::Keyboard(keyboard::Event::KeyPressed { key, text, .. }) = input.event else { return };
        if input.captured {
            return;
        }
        let digit = |text: &str| text.chars().next().filter(char::is_ascii_digit);
        let pressed = match key {
            Key::Named(Named::Backspace) => Some(PinKey::Back),
            Key::Named(Named::Enter) if self.ends => Some(PinKey::End),
            _ => text.as_deref().and_then(digit).map(PinKey::Digit),
        };
        if let Some(pressed) = pressed {
            shell.publish((self.on_key)(pressed));
            shell.capture_event();
        }
    }
}
