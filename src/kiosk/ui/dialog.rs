//! A layer over a page that must be answered first.

use iced::advanced::Shell;
use iced::keyboard::{self, Key, key::Named};
use iced::widget::{column, container};
use iced::{Background, Event, Length};

use super::Element;
use super::around::{Around, Behavior, Input};
use super::layered::{Over, layered};
use crate::kiosk::theme::{Gap, Look, style};

/// Shows `content` over `base`; where there is none for now, show `base` [`alone`], so that it keeps what it
/// remembers. Nothing of the base can be pressed, focused or found meanwhile; Escape sends
/// `close` where there is one.
pub fn dialog<'a, M: Clone + 'a>(
    look: &Look,
    base: impl Into<Element<'a, M>>,
    content: impl Into<Element<'a, M>>,
    close: Option<M>,
) -> Element<'a, M> {
    layer(look, base, super::scroll(look, content).width(Length::Shrink), close)
}

/// A [`dialog`](fn@dialog) with a head that stays in sight however far the rest is scrolled.
pub fn headed_dialog<'a, M: Clone + 'a>(
    look: &Look,
    base: impl Into<Element<'a, M>>,
    head: impl Into<Element<'a, M>>,
    content: impl Into<Element<'a, M>>,
    close: Option<M>,
) -> Element<'a, M> {
    let card = column![head.into(), super::scroll(look, content).width(Length::Shrink)];
    layer(look, base, card.spacing(look.gap(Gap::Large)), close)
}

fn layer<'a, M: Clone + 'a>(
    look: &Look,
    base: impl Into<Element<'a, M>>,
    card: impl Into<Element<'a, M>>,
    close: Option<M>,
) -> Element<'a, M> {
    let colors = look.colors();
    let ground = style::ground(look, colors.leaf, colors.ink);
    let card = container(card).padding(look.gap(Gap::Wide)).max_width(look.px(760.0)).style(move |_| ground);
    let shade = colors.shade;
    let over = container(card).center(Length::Fill).padding(look.gap(Gap::Wide)).style(move |_| {
        container::Style { background: Some(Background::Color(shade)), ..container::Style::default() }
    });
    let over: Element<'a, M> = match close {
        Some(message) => on_escape(over, message),
        None => over.into(),
    };
    layered(base, Over::Shows(over))
}

/// A page over which a [`dialog`](fn@dialog) may come.
pub fn alone<'a, M: 'a>(base: impl Into<Element<'a, M>>) -> Element<'a, M> {
    layered(base, Over::Nothing)
}

/// Sends `message` when Escape is pressed and nothing inside took it.
pub fn on_escape<'a, M: Clone + 'a>(content: impl Into<Element<'a, M>>, message: M) -> Element<'a, M> {
    Element::new(Around { content: content.into(), margin: 0.0, behavior: OnEscape(message) })
}

struct OnEscape<M>(M);

impl<M: Clone> Behavior<M> for OnEscape<M> {
    type State = ();

    fn handle(&self, (): &mut (), input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let escape = matches!(
            input.event,
            Event::Keyboard(keyboard::Event::KeyPressed { key: Key::Named(Named::Escape), .. })
        );
        if escape && !input.captured {
            shell.publish(self.0.clone());
            shell.capture_event();
        }
    }
}
