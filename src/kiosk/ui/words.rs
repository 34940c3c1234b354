//! Text in its roles. Everything wraps, long words too: nothing is ever cut off.

use iced::advanced::graphics::text::Paragraph;
use iced::advanced::layout::{self, Layout};
use iced::advanced::widget::text::State;
use iced::advanced::widget::{Operation, Tree, tree};
use iced::advanced::{Widget, mouse, renderer, text as letters};
use iced::widget::text::{IntoFragment, LineHeight, Text as Plain, Wrapping};
use iced::{Color, Length, Rectangle, Size, alignment};

use super::Element;
use crate::kiosk::theme::{Look, Type};

/// A text that is being put together: the toolkit's own, which also tells an operation how its letters lie.
pub struct Text<'a>(Plain<'a, iced::Theme, iced::Renderer>);

/// How the letters of a text lie; offered to operations just after the text itself.
#[derive(Debug)]
pub struct Laid(pub Paragraph);

impl std::fmt::Debug for Text<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Text")
    }
}

impl<'a> Text<'a> {
    /// How wide it is.
    #[must_use]
    pub fn width(self, width: impl Into<Length>) -> Self {
        Self(self.0.width(width))
    }

    /// How high it is.
    #[must_use]
    pub fn height(self, height: impl Into<Length>) -> Self {
        Self(self.0.height(height))
    }

    /// Its color.
    #[must_use]
    pub fn color(self, color: impl Into<Color>) -> Self {
        Self(self.0.color(color))
    }

    /// Its letters' size, in pixels.
    #[must_use]
    pub fn size(self, size: f32) -> Self {
        Self(self.0.size(size))
    }

    /// Where its lines stand in their width.
    #[must_use]
    pub fn align_x(self, side: impl Into<letters::Alignment>) -> Self {
        Self(self.0.align_x(side))
    }

    /// Where its lines stand in their height.
    #[must_use]
    pub fn align_y(self, side: impl Into<alignment::Vertical>) -> Self {
        Self(self.0.align_y(side))
    }

    /// In the middle both ways.
    #[must_use]
    pub fn center(self) -> Self {
        Self(self.0.center())
    }
}

impl<M> Widget<M, iced::Theme, iced::Renderer> for Text<'_> {
    fn size(&self) -> Size<Length> {
        Widget::<M, _, _>::size(&self.0)
    }

    fn tag(&self) -> tree::Tag {
        Widget::<M, _, _>::tag(&self.0)
    }

    fn state(&self) -> tree::State {
        Widget::<M, _, _>::state(&self.0)
    }

    fn layout(
        &mut self,
        tree: &mut Tree,
        renderer: &iced::Renderer,
        limits: &layout::Limits,
    ) -> layout::Node {
        Widget::<M, _, _>::layout(&mut self.0, tree, renderer, limits)
    }

    fn draw(
        &self,
        tree: &Tree,
        renderer: &mut iced::Renderer,
        theme: &iced::Theme,
        style: &renderer::Style,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        viewport: &Rectangle,
    ) {
        Widget::<M, _, _>::draw(&self.0, tree, renderer, theme, style, layout, cursor, viewport);
    }

    fn operate(
        &mut self,
        tree: &mut Tree,
        layout: Layout<'_>,
        renderer: &iced::Renderer,
        operation: &mut dyn Operation,
    ) {
        Widget::<M, _, _>::operate(&mut self.0, tree, layout, renderer, operation);
        let paragraph = tree.state.downcast_ref::<State<Paragraph>>().raw().clone();
        operation.custom(None, layout.bounds(), &mut Laid(paragraph));
    }
}

impl<'a, M: 'a> From<Text<'a>> for Element<'a, M> {
    fn from(text: Text<'a>) -> Self {
        Element::new(text)
    }
}

/// Text in a role.
pub fn text<'a>(look: &Look, role: Type, content: impl IntoFragment<'a>) -> Text<'a> {
    let colors = look.colors();
    let color = match role {
        Type::Small | Type::Label => colors.soft,
        _ => colors.ink,
    };
    Text(
        Plain::new(content)
            .size(look.size(role))
            .font(Look::font(role))
            .color(color)
            .line_height(LineHeight::Relative(line_height(role)))
            .wrapping(Wrapping::WordOrGlyph),
    )
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

/// A text on one line, cut with an ellipsis where it is wider than this: for cells of a table, whose whole text stands
/// elsewhere.
#[must_use]
pub fn cell<'a>(look: &Look, role: Type, content: &str, width: f32) -> Text<'a> {
    // What people typed may hold anything, line breaks too.
    let plain: String =
        content.chars().take(CELL_MAX).map(|c| if c.is_control() { ' ' } else { c }).collect();
    let fits = |text: &str| one_line(look, role, text) <= width;
    let mut shown = plain;
    if !fits(&shown) {
        let letters: Vec<char> = shown.chars().collect();
        let (mut least, mut most) = (0, letters.len());
        while least < most {
            let middle = (least + most).div_ceil(2);
            if fits(&cut(&letters, middle)) {
                least = middle;
            } else {
                most = middle - 1;
            }
        }
        shown = cut(&letters, least);
    }
    let Text(plain) = text(look, role, shown);
    Text(plain.wrapping(Wrapping::None))
}

/// Longest text that is looked at for a cell, in characters.
const CELL_MAX: usize = 200;

fn cut(letters: &[char], count: usize) -> String {
    let mut text: String = letters.iter().take(count).collect();
    text.truncate(text.trim_end().len());
    text.push('…');
    text
}

/// How wide a text is on one line.
fn one_line(look: &Look, role: Type, content: &str) -> f32 {
    use letters::Paragraph as _;
    let text = letters::Text {
        content,
        bounds: Size::INFINITE,
        size: look.size(role).into(),
        line_height: LineHeight::Relative(line_height(role)),
        font: Look::font(role),
        align_x: letters::Alignment::Default,
        align_y: alignment::Vertical::Top,
        shaping: letters::Shaping::default(),
        wrapping: Wrapping::None,
    };
    Paragraph::with_text(text).min_bounds().width
}
