//! Text in its roles. Everything wraps, long words too: nothing is ever cut off.

use iced::widget::text::{IntoFragment, LineHeight, Text as Plain, Wrapping};

use crate::kiosk::theme::{Look, Type};

/// A text that is being put together: the toolkit's own, for color, width and alignment.
pub type Text<'a> = Plain<'a, iced::Theme, iced::Renderer>;

/// Text in a role.
pub fn text<'a>(look: &Look, role: Type, content: impl IntoFragment<'a>) -> Text<'a> {
    let colors = look.colors();
    let color = match role {
        Type::Small | Type::Label => colors.soft,
        _ => colors.ink,
    };
    Text::new(content)
        .size(look.size(role))
        .font(Look::font(role))
        .color(color)
        .line_height(LineHeight::Relative(line_height(role)))
        .wrapping(Wrapping::WordOrGlyph)
}

const fn line_height(role: Type) -> f32 {
    match role {
        Type::Signal => 1.0,
        Type::Title | Type::Hazard | Type::Figure => 1.15,
        _ => 1.3,
    }
}

/// The title of a page.
pub fn title<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Title, content)
}

/// The title of a part.
pub fn section<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Section, content)
}

/// Running text.
pub fn body<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Body, content)
}

/// Running text that stands out.
pub fn strong<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Strong, content)
}

/// A side remark.
pub fn small<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Small, content)
}

/// The label above a part.
pub fn label<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Label, content)
}

/// A computed number with its measure.
pub fn figure<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Figure, content)
}

/// What is dangerous, on a caution page.
pub fn hazard_line<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Hazard, content)
}

/// What it does and what to do, on a caution page.
pub fn lead<'a>(look: &Look, content: impl IntoFragment<'a>) -> Text<'a> {
    text(look, Type::Lead, content)
}
