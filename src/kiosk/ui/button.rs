//! Buttons. Labels wrap; nothing is cut off.

use iced::widget::{container, row, stack};
use iced::{Alignment, Background, Border, Color, Length};

use super::symbol::{Symbol, symbol_in};
use super::{Among, Element, tap, words};
use crate::kiosk::theme::{Gap, Look, Type};

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Primary,
    Secondary,
    Quiet,
    Chip,
}

/// A button that is being put together.
#[derive(Debug, Clone)]
pub struct Button<M> {
    look: Look,
    kind: Kind,
    label: String,
    message: Option<M>,
    width: Length,
    bold: bool,
    chosen: bool,
    before: Option<Symbol>,
    after: Option<Symbol>,
    id: Option<&'static str>,
    height: f32,
    among: Among,
}

fn button<M>(look: &Look, kind: Kind, label: impl Into<String>, message: Option<M>) -> Button<M> {
    let height = match kind {
        Kind::Primary | Kind::Secondary => 64.0,
        Kind::Quiet | Kind::Chip => 44.0,
    };
    Button {
        look: *look,
        kind,
        label: label.into(),
        message,
        width: Length::Shrink,
        bold: kind == Kind::Primary,
        chosen: false,
        before: None,
        after: None,
        id: None,
        height,
        among: Among::Alone,
    }
}

/// What the page is for: one a page, on the accent.
pub fn primary<M>(look: &Look, label: impl Into<String>, message: M) -> Button<M> {
    button(look, Kind::Primary, label, Some(message))
}

/// Something else that can be done here.
pub fn secondary<M>(look: &Look, label: impl Into<String>, message: M) -> Button<M> {
    button(look, Kind::Secondary, label, Some(message))
}

/// Text alone, underlined, for what is seldom wanted.
pub fn quiet<M>(look: &Look, label: impl Into<String>, message: M) -> Button<M> {
    button(look, Kind::Quiet, label, Some(message))
}

/// A small round-ended button, 44 px high.
pub fn chip<M>(look: &Look, label: impl Into<String>, message: M) -> Button<M> {
    button(look, Kind::Chip, label, Some(message))
}

/// A chip in bold with an edge in ink: the way to the emergency card.
pub fn strong_chip<M>(look: &Look, label: impl Into<String>, message: M) -> Button<M> {
    button(look, Kind::Chip, label, Some(message)).bold()
}

/// What the primary button becomes while its work is done: nothing can be pressed, nothing else freezes.
pub fn saving<M>(look: &Look, label: impl Into<String>) -> Button<M> {
    button(look, Kind::Primary, label, None).before(Symbol::Open)
}

impl<M> Button<M> {
    /// As wide as the space it is given.
    #[must_use]
    pub fn fill(self) -> Self {
        self.width(Length::Fill)
    }

    /// As wide as told.
    #[must_use]
    pub fn width(mut self, width: impl Into<Length>) -> Self {
        self.width = width.into();
        self
    }

    /// At least this high, in pixels as written.
    #[must_use]
    pub fn height(mut self, height: f32) -> Self {
        self.height = height;
        self
    }

    /// In bold letters.
    #[must_use]
    pub fn bold(mut self) -> Self {
        self.bold = true;
        self
    }

    /// Shown as the one that is chosen.
    #[must_use]
    pub fn chosen(mut self, chosen: bool) -> Self {
        self.chosen = chosen;
        self
    }

    /// One of several to choose from.
    #[must_use]
    pub fn among(mut self, among: Among) -> Self {
        self.among = among;
        self
    }

    /// With a sign before the label.
    #[must_use]
    pub fn before(mut self, sign: Symbol) -> Self {
        self.before = Some(sign);
        self
    }

    /// With a sign after the label.
    #[must_use]
    pub fn after(mut self, sign: Symbol) -> Self {
        self.after = Some(sign);
        self
    }

    /// A name to focus it by.
    #[must_use]
    pub fn id(mut self, id: &'static str) -> Self {
        self.id = Some(id);
        self
    }

    fn ink(&self) -> Color {
        let colors = self.look.colors();
        match (self.kind, self.message.is_some()) {
            (Kind::Primary, true) => colors.on_accent,
            _ => colors.ink,
        }
    }

    fn role(&self) -> Type {
        match (self.kind, self.bold) {
            (Kind::Chip, false) | (Kind::Quiet, false) => Type::Small,
            (Kind::Chip | Kind::Quiet, true) => Type::Label,
            (_, true) => Type::Strong,
            (_, false) => Type::Body,
        }
    }

    fn radius(&self) -> f32 {
        match self.kind {
            Kind::Chip => self.look.px(self.height / 2.0),
            _ => self.look.radius(),
        }
    }

    fn style(&self) -> container::Style {
        let (look, colors) = (&self.look, self.look.colors());
        let (fill, edge, width) = match self.kind {
            Kind::Primary if self.message.is_some() => (Some(colors.accent), colors.accent, 0.0),
            Kind::Primary => (Some(colors.tint), colors.accent, look.line()),
            Kind::Quiet => (None, Color::TRANSPARENT, 0.0),
            _ if self.chosen => (Some(colors.tint), colors.accent, look.line() * 1.5),
            Kind::Chip if self.bold => (Some(colors.leaf), colors.ink, look.line()),
            Kind::Secondary | Kind::Chip => (Some(colors.leaf), colors.edge, look.line()),
        };
        container::Style {
            text_color: Some(self.ink()),
            background: fill.map(Background::Color),
            border: Border { color: edge, width, radius: self.radius().into() },
            ..container::Style::default()
        }
    }
}

impl<'a, M: Clone + 'a> From<Button<M>> for Element<'a, M> {
    fn from(button: Button<M>) -> Self {
        let look = button.look;
        let (ink, style, radius, role) = (button.ink(), button.style(), button.radius(), button.role());
        let sign = |which| symbol_in(&look, which, 22.0, ink, look.colors().leaf);
        let mut text = words::text(&look, role, button.label).color(ink).align_x(Alignment::Center);
        if button.width == Length::Fill && button.before.is_none() && button.after.is_none() {
            text = text.width(Length::Fill);
        }
        let text: Element<'a, M> = match (button.kind, button.chosen) {
            (Kind::Quiet, _) => underlined(&look, text, look.line() * 0.75),
            // Not by color alone: a bar below the words of what is chosen.
            (_, true) => underlined(&look, text, look.px(4.0)),
            _ => text.into(),
        };
        let mut line = row![].spacing(look.gap(Gap::Small)).align_y(Alignment::Center);
        line = line.push(button.before.map(sign)).push(text).push(button.after.map(sign));
        let side = match button.kind {
            Kind::Primary | Kind::Secondary => look.gap(Gap::Wide),
            Kind::Chip => look.gap(Gap::Large),
            Kind::Quiet => look.gap(Gap::Tiny),
        };
        let face = container(line)
            .padding([look.gap(Gap::Small), side])
            .width(button.width)
            .align_x(Alignment::Center)
            .align_y(Alignment::Center)
            .style(move |_| style);
        let face = super::pinned::at_least(look.px(button.height), face.into());
        let Some(message) = button.message else { return face };
        let least = match button.kind {
            Kind::Primary | Kind::Secondary => look.target(),
            Kind::Quiet | Kind::Chip => look.small_target(),
        };
        let press = tap(&look, face, message).radius(radius).least(least).among(button.among);
        match button.id {
            Some(id) => press.id(id).into(),
            None => press.into(),
        }
    }
}

fn underlined<'a, M: 'a>(look: &Look, text: words::Text<'a>, line: f32) -> Element<'a, M> {
    let ink = look.colors().ink;
    let rule = container(iced::widget::Space::new().width(Length::Fill).height(line))
        .style(move |_| crate::kiosk::theme::style::flat(ink, ink));
    let below = container(rule).width(Length::Fill).height(Length::Fill).align_y(Alignment::End);
    stack![text, below].into()
}
