//! Signal words in their safety colors (ANSI Z535.4): nothing else on the screen wears these.

use iced::widget::{column, container, row};
use iced::{Alignment, Border, Length, border};

use super::{Element, drawing, hazard, tap, words};
use crate::kiosk::theme::palette::{Pair, safety};
use crate::kiosk::theme::{Gap, Look, Type, style};

/// Side of the sign on a badge, in pixels as written.
const ALERT: f32 = 40.0;

/// How grave a caution is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Signal {
    /// Things, not people: no alert triangle.
    Notice,
    /// Minor or moderate injury.
    Caution,
    /// Could kill or seriously injure.
    Warning,
    /// Will kill or seriously injure.
    Danger,
}

impl Signal {
    /// Its ground and the color upon it.
    #[must_use]
    pub const fn pair(self) -> Pair {
        match self {
            Self::Danger => safety::RED,
            Self::Warning => safety::ORANGE,
            Self::Caution => safety::YELLOW,
            Self::Notice => safety::BLUE,
        }
    }

    /// Whether the alert triangle stands before the word. A notice is not about injury and has none.
    #[must_use]
    pub const fn has_alert(self) -> bool {
        !matches!(self, Self::Notice)
    }
}

/// The alert triangle for a ground. On orange its inside is yellow, as on the labels of the trade; elsewhere it
/// is cut out of the color of the word.
fn alert<'a, M: 'a>(look: &Look, signal: Signal, side: f32) -> Element<'a, M> {
    let pair = signal.pair();
    let (width, height) = (look.px(side), look.px(side * 0.9));
    drawing(width, height, move |frame| match signal {
        Signal::Warning => hazard::alert(frame, pair.on, safety::YELLOW.ground, pair.on),
        _ => hazard::alert(frame, pair.on, pair.on, pair.ground),
    })
}

/// The word on its color, for lists: at least as large as what counts as large text.
pub fn signal_badge<'a, M: 'a>(look: &Look, signal: Signal, word: impl Into<String>) -> Element<'a, M> {
    let pair = signal.pair();
    let ground = super::panel::colored(look, pair.ground, pair.on);
    badge_face(look, signal, word.into()).style(move |_| ground).into()
}

/// The band across the top of a caution page, with what belongs at its right end.
pub fn signal_header<'a, M: 'a>(
    look: &Look,
    signal: Signal,
    word: impl Into<String>,
    end: impl Into<Element<'a, M>>,
) -> Element<'a, M> {
    let pair = signal.pair();
    let word = words::text(look, Type::Signal, word.into()).color(pair.on).width(Length::Fill);
    let line = row![]
        .push(signal.has_alert().then(|| alert(look, signal, 78.0)))
        .push(word)
        .push(end.into())
        .spacing(look.gap(Gap::Wide))
        .align_y(Alignment::Center);
    container(line)
        .padding([look.gap(Gap::Large), look.gap(Gap::Huge)])
        .width(Length::Fill)
        .height(look.px(120.0))
        .align_y(Alignment::Center)
        .style(move |_| style::flat(pair.ground, pair.on))
        .into()
}

/// Text in the band of a header, as in '2 of 3': large and bold, since white on red needs it.
pub fn on_signal<'a>(look: &Look, signal: Signal, text: impl Into<String>) -> words::Text<'a> {
    words::section(look, text.into()).color(signal.pair().on)
}

/// A caution in a list: its signal, its title, how it is answered, and what has come of that at the end.
pub fn caution_card<'a, M: Clone + 'a>(
    look: &Look,
    (signal, word): (Signal, String),
    (title, line): (String, String),
    end: impl Into<Element<'a, M>>,
    message: Option<M>,
) -> Element<'a, M> {
    let (pair, colors) = (signal.pair(), look.colors());
    // A width that is known lets the badge take the height of the card.
    let wide = badge_width(look, &word);
    let badge = badge_face(look, signal, word);
    // The title has the whole width: beside the end, its words would be torn in a narrow card.
    let below = row![words::small(look, line), end.into()]
        .spacing(look.gap(Gap::Small))
        .align_y(Alignment::Center)
        .wrap()
        .vertical_spacing(look.gap(Gap::Tiny));
    let text = column![words::strong(look, title), below].width(Length::Fill);
    let rest = container(text).padding([look.gap(Gap::Medium), look.gap(Gap::Large)]);
    let rest = super::at_least(badge_height(look), rest.into());
    let edge = if message.is_some() { colors.edge } else { colors.line };
    let ground = style::ground(look, colors.leaf, edge);
    let left = look.radius() - look.line();
    let badge =
        container(badge).width(wide).height(Length::Fill).align_y(Alignment::Center).style(move |_| {
            container::Style {
                background: Some(pair.ground.into()),
                border: Border { radius: border::left(left), ..Border::default() },
                ..container::Style::default()
            }
        });
    let card = container(row![badge, rest].align_y(Alignment::Center).height(Length::Shrink))
        .padding(look.line())
        .width(Length::Fill)
        .height(Length::Shrink)
        .style(move |_| ground);
    match message {
        Some(message) => tap(look, card, message).into(),
        None => card.into(),
    }
}

/// Wide enough for the word in one line, and the same for the four words of English.
fn badge_width(look: &Look, word: &str) -> f32 {
    let letters = word.chars().count() as f32;
    look.size(Type::Label) * (letters * 0.74).max(5.7) + 2.0 * look.gap(Gap::Small)
}

/// High enough for the sign above the word.
fn badge_height(look: &Look) -> f32 {
    let (sign, word) = (look.px(ALERT * 0.9), look.size(Type::Label) * 1.3);
    sign + look.gap(Gap::Tiny) + word + 2.0 * look.gap(Gap::Medium)
}

fn badge_face<'a, M: 'a>(look: &Look, signal: Signal, word: String) -> container::Container<'a, M> {
    let wide = badge_width(look, &word);
    let word = words::label(look, word).color(signal.pair().on);
    let line = column![]
        .push(signal.has_alert().then(|| alert(look, signal, ALERT)))
        .push(word)
        .spacing(look.gap(Gap::Tiny))
        .align_x(Alignment::Center);
    container(line)
        .padding([look.gap(Gap::Medium), look.gap(Gap::Small)])
        .center_x(wide)
        .align_y(Alignment::Center)
}
