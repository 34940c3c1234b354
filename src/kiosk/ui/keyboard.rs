//! Our own keys, since a kiosk has none: letters by language, and pads of digits.
//!
//! A key held for a moment offers its variants in a row above it: the finger slides onto one, or is lifted and
//! taps one.

pub mod key;
pub mod layout;
mod pads;

use iced::widget::{Column, Row, Space, container, stack};
use iced::{Alignment, Border, Length, Padding};

use super::symbol::{self, Symbol};
use super::{Element, words};
use crate::kiosk::theme::{Gap, Look, Type, style};

pub use layout::Layout;
pub use pads::number_pad;

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
    /// The letters of the next language.
    Layout,
    /// Offer the variants of this letter.
    Held(char),
    /// Finished with this field.
    Done,
}

/// Which letters the keys show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Layer {
    /// Small letters.
    #[default]
    Small,
    /// One capital letter, then small ones.
    Capital,
    /// Capital letters until told otherwise.
    Lock,
    /// Digits and marks.
    Marks,
}

impl Layer {
    /// The layer after a press: Shift and Layer change it, a capital letter falls back to small ones. `twice`
    /// says that Shift was pressed just before: then capitals stay.
    #[must_use]
    pub const fn after(self, press: KeyPress, twice: bool) -> Self {
        match (self, press) {
            (Self::Small, KeyPress::Shift) => Self::Capital,
            (Self::Capital, KeyPress::Shift) if twice => Self::Lock,
            (Self::Capital, KeyPress::Shift | KeyPress::Char(_))
            | (Self::Lock, KeyPress::Shift)
            | (Self::Marks, KeyPress::Layer) => Self::Small,
            (Self::Small | Self::Capital | Self::Lock, KeyPress::Layer) => Self::Marks,
            (layer, _) => layer,
        }
    }
}

/// What the keys show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Board {
    /// Whose letters.
    pub layout: Layout,
    /// Small, capital, marks.
    pub layer: Layer,
    /// The key whose variants are offered.
    pub held: Option<char>,
}

/// The height of a key in pixels as written.
const KEY: f32 = 58.0;
/// The space between keys.
const GAP: f32 = 6.0;

/// The layer of letters. `done` is the word on the key that ends.
pub fn keyboard<'a, M: Clone + 'a>(
    look: &Look,
    board: Board,
    done: &str,
    on_key: impl Fn(KeyPress) -> M + Copy + 'a,
) -> Element<'a, M> {
    let gap = look.px(GAP);
    let rows = board.layout.rows(board.layer);
    let letters = rows.iter().map(|line| {
        let keys = line.iter().map(|&letter| {
            let variants = board.layout.variants(letter);
            let held = (!variants.is_empty()).then(|| on_key(KeyPress::Held(letter)));
            letter_key(look, letter, 1, on_key(KeyPress::Char(letter)), held)
        });
        Row::with_children(keys).spacing(gap).into()
    });
    let keys = Column::with_children(letters).push(last_row(look, board, done, on_key)).spacing(gap).into();
    let offered: Element<'a, M> = board
        .held
        .and_then(|letter| variants(look, board, &rows, letter, on_key))
        .unwrap_or_else(|| Space::new().into());
    stack![ground(look, keys), offered].into()
}

fn last_row<'a, M: Clone + 'a>(
    look: &Look,
    board: Board,
    done: &str,
    on_key: impl Fn(KeyPress) -> M + Copy + 'a,
) -> Element<'a, M> {
    let (height, ink) = (look.px(KEY), look.ink());
    let capital = matches!(board.layer, Layer::Capital | Layer::Lock);
    // Locked capitals differ from a single one by a line below the arrow.
    let arrow = if board.layer == Layer::Lock {
        let bar = container(Space::new().width(look.px(26.0)).height(look.px(4.0)))
            .style(move |_| style::flat(ink, ink));
        let arrow = Column::new().push(symbol::symbol(look, Symbol::Shift, 26.0)).push(bar);
        arrow.spacing(look.px(3.0)).align_x(Alignment::Center).into()
    } else {
        sign(look, Symbol::Shift)
    };
    let other = if board.layer == Layer::Marks { "abc" } else { "?#é" };
    let space = face(look, Space::new().into(), false, height);
    Row::new()
        .push(plain(look, face(look, arrow, capital, height), 3, on_key(KeyPress::Shift)))
        .push(word_key(look, other, 3, height, on_key(KeyPress::Layer)))
        .push(word_key(look, board.layout.sign(), 2, height, on_key(KeyPress::Layout)))
        .push(plain(look, space, 8, on_key(KeyPress::Char(' '))))
        .push(plain(
            look,
            face(look, sign(look, Symbol::Backspace), false, height),
            3,
            on_key(KeyPress::Backspace),
        ))
        .push(word_key(look, done, 4, height, on_key(KeyPress::Done)))
        .spacing(look.px(GAP))
        .into()
}

/// The variants of a key in a row over it, kept within the keys.
fn variants<'a, M: Clone + 'a>(
    look: &Look,
    board: Board,
    rows: &[Vec<char>; 4],
    letter: char,
    on_key: impl Fn(KeyPress) -> M + Copy + 'a,
) -> Option<Element<'a, M>> {
    let (row, at) = rows
        .iter()
        .enumerate()
        .find_map(|(row, line)| line.iter().position(|c| *c == letter).map(|at| (row, at)))?;
    let all = board.layout.variants(letter);
    let (pad, gap, height) = (look.gap(Gap::Small), look.px(GAP), look.px(KEY));
    let count = |n: usize| f32::from(u16::try_from(n).unwrap_or(1));
    let keys = count(rows.first().map_or(1, Vec::len).max(1));
    let width = (look.window.width - 2.0 * pad - (keys - 1.0) * gap) / keys;
    let cell = width.max(look.small_target());
    let whole = count(all.len()) * (cell + gap) + gap;
    let middle = pad + count(at) * (width + gap) + width / 2.0;
    let left = (middle - whole / 2.0).clamp(0.0, (look.window.width - whole).max(0.0));
    let top = pad + count(row.saturating_sub(1)) * (height + gap) - gap;
    let cells = all.into_iter().map(|c| {
        let face = letter_face(look, c, true, height);
        container(key::variant(look, face, on_key(KeyPress::Char(c)))).width(cell).into()
    });
    let colors = look.colors();
    let ground = style::ground(look, colors.leaf, colors.ink);
    let bar = container(Row::with_children(cells).spacing(gap)).padding(gap).style(move |_| ground);
    Some(container(bar).padding(Padding { top: top.max(0.0), left, ..Padding::ZERO }).into())
}

fn ground<'a, M: 'a>(look: &Look, keys: Element<'a, M>) -> Element<'a, M> {
    let colors = look.colors();
    container(keys)
        .padding(look.gap(Gap::Small))
        .center_x(Length::Fill)
        .style(move |_| style::flat(colors.wash, colors.ink))
        .into()
}

fn sign<'a, M: 'a>(look: &Look, which: Symbol) -> Element<'a, M> {
    container(symbol::symbol(look, which, 28.0)).into()
}

/// How much larger the letters on keys are: half of what running text grows.
fn letter_size(look: &Look, written: f32) -> f32 {
    look.px(written * f32::midpoint(1.0, look.text.factor()))
}

fn letter_face<'a, M: 'a>(look: &Look, letter: char, chosen: bool, height: f32) -> Element<'a, M> {
    let text = words::text(look, Type::Section, letter.to_string()).size(letter_size(look, 26.0));
    face(look, text.into(), chosen, height)
}

fn letter_key<'a, M: Clone + 'a>(
    look: &Look,
    letter: char,
    portion: u16,
    message: M,
    held: Option<M>,
) -> Element<'a, M> {
    let face = letter_face(look, letter, false, look.px(KEY));
    container(key::key(look, face, message, held)).width(Length::FillPortion(portion)).into()
}

fn word_key<'a, M: Clone + 'a>(
    look: &Look,
    word: &str,
    portion: u16,
    height: f32,
    message: M,
) -> Element<'a, M> {
    let text = words::strong(look, word.to_owned()).size(letter_size(look, 20.0)).align_x(Alignment::Center);
    plain(look, face(look, text.into(), false, height), portion, message)
}

/// A key without variants.
fn plain<'a, M: Clone + 'a>(look: &Look, face: Element<'a, M>, portion: u16, message: M) -> Element<'a, M> {
    container(key::key(look, face, message, None)).width(Length::FillPortion(portion)).into()
}

fn face<'a, M: 'a>(look: &Look, on: Element<'a, M>, chosen: bool, height: f32) -> Element<'a, M> {
    let colors = look.colors();
    let (fill, edge) = if chosen { (colors.tint, colors.accent) } else { (colors.leaf, colors.edge) };
    let key_style = container::Style {
        background: Some(fill.into()),
        border: Border { color: edge, width: look.line(), radius: look.radius().into() },
        ..container::Style::default()
    };
    container(on)
        .width(Length::Fill)
        .height(height)
        .align_x(Alignment::Center)
        .align_y(Alignment::Center)
        .style(move |_| key_style)
        .into()
}
