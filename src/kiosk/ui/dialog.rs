//! A layer over a page that must be answered first.

use iced::advanced::layout::{self, Layout};
use iced::advanced::widget::Tree;
use iced::advanced::{Shell, Widget, mouse, renderer};
use iced::keyboard::{self, Key, key::Named};
use iced::widget::{container, stack};
use iced::{Background, Event, Length, Rectangle, Size};

use super::Element;
use super::around::{Around, Behavior, Input};
use crate::kiosk::theme::{Gap, Look, style};

/// Shows `content` over `base`. Nothing of the base can be pressed, focused or found meanwhile; Escape sends
/// `close` where there is one.
pub fn dialog<'a, M: Clone + 'a>(
    look: &Look,
    base: impl Into<Element<'a, M>>,
    content: impl Into<Element<'a, M>>,
    close: Option<M>,
) -> Element<'a, M> {
    let colors = look.colors();
    let ground = style::ground(look, colors.leaf, colors.ink);
    let card = container(super::scroll(look, content).width(Length::Shrink))
        .padding(look.gap(Gap::Wide))
        .max_width(look.px(760.0))
        .style(move |_| ground);
    let shade = colors.shade;
    let over = container(card).center(Length::Fill).padding(look.gap(Gap::Wide)).style(move |_| {
        container::Style { background: Some(Background::Color(shade)), ..container::Style::default() }
    });
    let over: Element<'a, M> = match close {
        Some(message) => on_escape(over, message),
        None => over.into(),
    };
    stack![Element::new(Inert(base.into())), over].into()
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

/// Draws what lies below and lets nothing through to it.
struct Inert<'a, M>(Element<'a, M>);

impl<M> Widget<M, iced::Theme, iced::Renderer> for Inert<'_, M> {
    fn size(&self) -> Size<Length> {
        self.0.as_widget().size()
    }

    fn children(&self) -> Vec<Tree> {
        vec![Tree::new(&self.0)]
    }

    fn diff(&self, tree: &mut Tree) {
        tree.diff_children(std::slice::from_ref(&self.0));
    }

    fn layout(
        &mut self,
        tree: &mut Tree,
        renderer: &iced::Renderer,
        limits: &layout::Limits,
    ) -> layout::Node {
        let Some(inner) = tree.children.first_mut() else { return layout::Node::new(Size::ZERO) };
        let node = self.0.as_widget_mut().layout(inner, renderer, limits);
        layout::Node::with_children(node.size(), vec![node])
    }

    fn draw(
        &self,
        tree: &Tree,
        renderer: &mut iced::Renderer,
        theme: &iced::Theme,
        style: &renderer::Style,
        layout: Layout<'_>,
        _cursor: mouse::Cursor,
        viewport: &Rectangle,
    ) {
        if let (Some(inner), Some(place)) = (tree.children.first(), layout.children().next()) {
            let cursor = mouse::Cursor::Unavailable;
            self.0.as_widget().draw(inner, renderer, theme, style, place, cursor, viewport);
        }
    }
}
