//! How much room words take, measured with the very letters they are set in.

use iced::advanced::text::{self, Paragraph as _, Wrapping};
use iced::alignment::Vertical;
use iced::{Pixels, Size};

use crate::kiosk::theme::{Gap, Look, Type};

type Paragraph = <iced::Renderer as text::Renderer>::Paragraph;

/// The room a text takes in a role, wrapped at a width.
pub(super) fn room(look: &Look, role: Type, content: &str, width: f32) -> Size {
    let paragraph = Paragraph::with_text(text::Text {
        content,
        bounds: Size::new(width, f32::INFINITY),
        size: Pixels(look.size(role)),
        // As components set running text.
        line_height: text::LineHeight::Relative(1.3),
        font: Look::font(role),
        align_x: text::Alignment::Default,
        align_y: Vertical::Top,
        shaping: text::Shaping::default(),
        wrapping: Wrapping::WordOrGlyph,
    });
    paragraph.min_bounds()
}

/// The width of the longest word of a label: below it, letters would be torn from each other.
pub(super) fn longest_word(look: &Look, role: Type, label: &str) -> f32 {
    label.split_whitespace().map(|word| room(look, role, word, f32::INFINITY).width).fold(0.0, f32::max)
}

/// How many buttons with these labels go into a row, each as wide as the others, without a torn word.
pub(super) fn columns(look: &Look, labels: &[String], width: f32, padding: f32) -> usize {
    let gap = look.gap(Gap::Medium);
    let widest =
        labels.iter().map(|l| longest_word(look, Type::Strong, l)).fold(0.0, f32::max) + 2.0 * padding + 1.0;
    let all = labels.len().max(1);
    let most = (1..=all).rev().find(|n| (width + gap) / (*n as f32) - gap >= widest).unwrap_or(1);
    // Rows of about the same length: two and two rather than three and one.
    all.div_ceil(all.div_ceil(most))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kiosk::theme::{TextSize, Theme};

    fn look(text: TextSize) -> Look {
        Look::new(Theme::Paper, text, Size::new(1280.0, 800.0), 1.0)
    }

    #[test]
    fn narrow_words_wrap_and_take_more_lines() {
        let look = look(TextSize::Usual);
        let wide = room(&look, Type::Body, "Open the door to the hold-back catch.", 2000.0);
        let narrow = room(&look, Type::Body, "Open the door to the hold-back catch.", 120.0);
        assert!(narrow.height >= 3.0 * wide.height);
        assert!(narrow.width <= 120.0);
    }

    #[test]
    fn larger_letters_leave_room_for_fewer_buttons() {
        let labels: Vec<String> =
            ["Back", "Not shown", "Question", "Mark", "Readings"].map(String::from).to_vec();
        let usual = columns(&look(TextSize::Usual), &labels, 900.0, 24.0);
        assert_eq!(usual, 5);
        assert_eq!(columns(&look(TextSize::Largest), &labels, 760.0, 24.0), 3);
        assert_eq!(columns(&look(TextSize::Usual), &labels, 1.0, 24.0), 1);
    }
}
