//! Rows that follow the hand.

use iced::widget::Row;

use super::Element;
use crate::kiosk::theme::{Hand, Look};

/// A row as the right hand wants it; for the left hand its parts stand the other way round.
pub fn hand_row<'a, M: 'a>(
    look: &Look,
    mut parts: Vec<Element<'a, M>>,
) -> Row<'a, M, iced::Theme, iced::Renderer> {
    if look.hand == Hand::Left {
        parts.reverse();
    }
    Row::with_children(parts)
}
