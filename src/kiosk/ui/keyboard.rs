//! Our own keys, since a kiosk has none: plain US letters, and digits alone.

use iced::widget::{Column, Row, container};
use iced::{Alignment, Border, Length};

use super::symbol::{self, Symbol};
use super::{Element, tap, words};
use crate::kiosk::theme::{Gap, Look, Type, style};

/// A key that was pressed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KeyPress {
    /// Put this letter in.
    Char(char),
    /// Take the last letter back.
    Backspace,
    /// Capital letters from here, or no longer.
    Shift,
    /// The other layer: letters or marks.
    Layer,
    /// Finished with this field.
    Done,
}

/// Which letters the keys show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Layer {
    /// Small letters.
    #[default]
    Small,
    /// Capital letters.
    Capital,
    /// Digits and marks.
    Marks,
}

impl Layer {
    /// The layer after a press: Shift and Layer change it, a capital letter falls back to small ones.
    #[must_use]
    pub const fn after(self, press: KeyPress) -> Self {
        match (self, press) {
            (Self::Small, KeyPress::Shift) => Self::Capital,
            (Self::Capital, KeyPress::Shift | KeyPress::Char(_)) | (Self::Marks, KeyPress::Layer) => {
                Self::Small
            }
            (Self::Small | Self::Capital, KeyPress::Layer) => Self::Marks,
            (layer, _) => layer,
        }
    }
}

/// The height of a key in pixels as written.
const KEY: f32 = 58.0;

const SMALL: [&str; 4] = ["1234567890", "qwertyuiop", "asdfghjkl'", "zxcvbnm,.-"];
const CAPITAL: [&str; 4] = ["1234567890", "QWERTYUIOP", "ASDFGHJKL'", "ZXCVBNM,.-"];
const MARKS: [&str; 4] = ["1234567890", "@#$%&*()+=", "/:;?!\"_<>~", "áéíóúñüöäß"];

/// The layer of letters. `layer` names the key to the marks and back, `done` the key that ends.
pub fn keyboard<'a, M: Clone + 'a>(
    look: &Look,
    layer: Layer,
    done: &str,
    on_key: impl Fn(KeyPress) -> M + Copy + 'a,
) -> Element<'a, M> {
    let lines = match layer {
        Layer::Small => SMALL,
        Layer::Capital => CAPITAL,
        Layer::Marks => MARKS,
    };
    let gap = look.px(6.0);
    let letters = lines.iter().map(|line| {
        let keys = line.chars().map(|letter| letter_key(look, letter, on_key(KeyPress::Char(letter))));
        Row::with_children(keys).spacing(gap).into()
    });
    let sign = |which, portion, chosen, press| {
        let face = container(symbol::symbol(look, which, 28.0));
        key(look, face.into(), portion, chosen, on_key(press))
    };
    let other = if layer == Layer::Marks { "abc" } else { "?#é" };
    let last = Row::new()
        .push(sign(Symbol::Shift, 2, layer == Layer::Capital, KeyPress::Shift))
        .push(word_key(look, other, 2, on_key(KeyPress::Layer)))
        .push(key(look, iced::widget::Space::new().into(), 8, false, on_key(KeyPress::Char(' '))))
        .push(sign(Symbol::Backspace, 3, false, KeyPress::Backspace))
        .push(word_key(look, done, 4, on_key(KeyPress::Done)))
        .spacing(gap);
    ground(look, Column::with_children(letters).push(last).spacing(gap).into())
}

/// Digits alone, with a point, for readings and PINs.
pub fn number_pad<'a, M: Clone + 'a>(
    look: &Look,
    done: &str,
    on_key: impl Fn(KeyPress) -> M + Copy + 'a,
) -> Element<'a, M> {
    let gap = look.px(6.0);
    let digits = ["123", "456", "789"].iter().map(|line| {
        let keys = line.chars().map(|digit| letter_key(look, digit, on_key(KeyPress::Char(digit))));
        Row::with_children(keys).spacing(gap).into()
    });
    let back = container(symbol::symbol(look, Symbol::Backspace, 30.0));
    let last = Row::new()
        .push(letter_key(look, '.', on_key(KeyPress::Char('.'))))
        .push(letter_key(look, '0', on_key(KeyPress::Char('0'))))
        .push(key(look, back.into(), 1, false, on_key(KeyPress::Backspace)))
        .spacing(gap);
    let done = word_key(look, done, 1, on_key(KeyPress::Done));
    let keys = Column::with_children(digits).push(last).push(done).spacing(gap);
    ground(look, container(keys).max_width(look.px(520.0)).into())
}

fn ground<'a, M: 'a>(look: &Look, keys: Element<'a, M>) -> Element<'a, M> {
    let colors = look.colors();
    container(keys)
        .padding(look.gap(Gap::Small))
        .center_x(Length::Fill)
        .style(move |_| style::flat(colors.wash, colors.ink))
        .into()
}

fn letter_key<'a, M: Clone + 'a>(look: &Look, letter: char, message: M) -> Element<'a, M> {
    let face = words::text(look, Type::Section, letter.to_string()).size(look.px(26.0));
    key(look, face.into(), 1, false, message)
}

fn word_key<'a, M: Clone + 'a>(look: &Look, word: &str, portion: u16, message: M) -> Element<'a, M> {
    key(look, words::strong(look, word.to_owned()).size(look.px(22.0)).into(), portion, false, message)
}

fn key<'a, M: Clone + 'a>(
    look: &Look,
    face: Element<'a, M>,
    portion: u16,
    chosen: bool,
    message: M,
) -> Element<'a, M> {
    let colors = look.colors();
    let (fill, edge) = if chosen { (colors.tint, colors.accent) } else { (colors.leaf, colors.edge) };
    let key_style = container::Style {
        background: Some(fill.into()),
        border: Border { color: edge, width: look.line(), radius: look.radius().into() },
        ..container::Style::default()
    };
    let face = container(face)
        .width(Length::Fill)
        .height(look.px(KEY))
        .align_x(Alignment::Center)
        .align_y(Alignment::Center)
        .style(move |_| key_style);
    container(tap(look, face, message)).width(Length::FillPortion(portion)).into()
}
