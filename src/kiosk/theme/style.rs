//! Styles for the few widgets of the toolkit that are used as they are.

use iced::widget::{container, scrollable, text_input};
use iced::{Background, Border, Color, Shadow, theme};

use super::{Look, Theme};

/// The toolkit's theme for a palette of ours.
#[must_use]
pub fn toolkit(theme: Theme) -> iced::Theme {
    let colors = theme.palette();
    let name = match theme {
        Theme::Paper => "Paper",
        Theme::Daylight => "Daylight",
        Theme::Dusk => "Dusk",
    };
    let palette = theme::Palette {
        background: colors.paper,
        text: colors.ink,
        primary: colors.accent,
        success: colors.accent,
        warning: super::palette::safety::ORANGE.ground,
        danger: super::palette::safety::RED.ground,
    };
    iced::Theme::custom(name, palette)
}

/// A plain ground with an edge.
#[must_use]
pub fn ground(look: &Look, fill: Color, edge: Color) -> container::Style {
    container::Style {
        text_color: Some(look.colors().ink),
        background: Some(Background::Color(fill)),
        border: Border { color: edge, width: look.line(), radius: look.radius().into() },
        shadow: Shadow::default(),
        snap: true,
    }
}

/// A plain ground without an edge or round corners.
#[must_use]
pub fn flat(fill: Color, text: Color) -> container::Style {
    container::Style {
        text_color: Some(text),
        background: Some(Background::Color(fill)),
        border: Border::default(),
        shadow: Shadow::default(),
        snap: true,
    }
}

/// A text field. The edge is thick while it is written in, and in ink where something is wrong.
pub fn field(look: Look, wrong: bool) -> impl Fn(&iced::Theme, text_input::Status) -> text_input::Style {
    move |_, status| {
        let colors = look.colors();
        let focused = matches!(status, text_input::Status::Focused { .. });
        let (color, width) = match (focused, wrong) {
            (true, _) => (colors.accent, look.px(4.0)),
            (false, true) => (colors.ink, look.px(4.0)),
            (false, false) => (colors.edge, look.line()),
        };
        text_input::Style {
            background: Background::Color(colors.leaf),
            border: Border { color, width, radius: look.radius().into() },
            icon: colors.ink,
            placeholder: colors.soft,
            value: colors.ink,
            selection: Color { a: 0.35, ..colors.accent },
        }
    }
}

/// A scroll bar that can be seen, on no ground of its own.
pub fn scroll_bar(look: Look) -> impl Fn(&iced::Theme, scrollable::Status) -> scrollable::Style {
    move |theme, status| {
        let colors = look.colors();
        let rail = scrollable::Rail {
            background: None,
            border: Border::default(),
            scroller: scrollable::Scroller {
                background: Background::Color(colors.edge),
                border: Border { radius: look.radius().into(), ..Border::default() },
            },
        };
        scrollable::Style {
            container: container::Style::default(),
            vertical_rail: rail,
            horizontal_rail: rail,
            gap: None,
            ..scrollable::default(theme, status)
        }
    }
}
