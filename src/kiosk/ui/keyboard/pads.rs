//! Pads of digits: whole numbers, numbers with a point, telephone numbers.

use iced::Length;
use iced::widget::{Column, Row, Space, container};

use super::super::symbol::Symbol;
use super::super::{Element, Keys};
use super::{GAP, KEY, KeyPress, face, ground, letter_key, plain, sign, word_key};
use crate::kiosk::theme::Look;

/// Digits, with what else the numbers of a field need: a point, or the signs of telephone numbers. `done` names
/// the key that ends.
pub fn number_pad<'a, M: Clone + 'a>(
    look: &Look,
    keys: Keys,
    done: &str,
    on_key: impl Fn(KeyPress) -> M + Copy + 'a,
) -> Element<'a, M> {
    let gap = look.px(GAP);
    let letter = |c: char, width: u16| letter_key(look, c, width, on_key(KeyPress::Char(c)), None);
    let line =
        |cells: Vec<Element<'a, M>>| -> Element<'a, M> { Row::with_children(cells).spacing(gap).into() };
    let mut digits: Vec<Element<'a, M>> =
        ["123", "456", "789"].iter().map(|row| line(row.chars().map(|c| letter(c, 1)).collect())).collect();
    digits.push(line(match keys {
        Keys::Phone => ['*', '0', '#'].map(|c| letter(c, 1)).into(),
        Keys::Decimal => vec![letter('0', 2), letter('.', 1)],
        Keys::Digits | Keys::Letters | Keys::Names => vec![letter('0', 1)],
    }));
    let digits = Column::with_children(digits).spacing(gap).width(Length::FillPortion(3));
    let tall = look.px(KEY * 2.0 + GAP);
    let back = |height: f32| {
        let back = face(look, sign(look, Symbol::Backspace), false, height);
        plain(look, back, 1, on_key(KeyPress::Backspace))
    };
    let side = Column::new().spacing(gap).width(Length::FillPortion(1));
    let side = if keys == Keys::Phone {
        let space = face(look, Space::new().into(), false, look.px(KEY));
        side.push(back(look.px(KEY)))
            .push(letter('+', 1))
            .push(plain(look, space, 1, on_key(KeyPress::Char(' '))))
            .push(word_key(look, done, 1, look.px(KEY), on_key(KeyPress::Done)))
    } else {
        side.push(back(tall)).push(word_key(look, done, 1, tall, on_key(KeyPress::Done)))
    };
    let pad = Row::new().push(digits).push(side).spacing(gap);
    ground(look, container(pad).max_width(look.px(640.0)).into())
}
