//! A widget around one other, for parts that differ only in how they answer to events.

use iced::advanced::layout::{self, Layout};
use iced::advanced::widget::{Operation, Tree, tree};
use iced::advanced::{Clipboard, Shell, Widget, mouse, overlay, renderer};
use iced::{Event, Length, Point, Rectangle, Size, Vector};

use super::Element;

/// One event as a part sees it.
pub(in crate::kiosk) struct Input<'e> {
    pub event: &'e Event,
    pub bounds: Rectangle,
    pub cursor: mouse::Cursor,
    /// Whether what lies inside has taken the event already.
    pub captured: bool,
}

/// How a part answers.
pub(in crate::kiosk) trait Behavior<M> {
    /// What it remembers between frames.
    type State: Default + 'static;

    /// Answers an event, after what lies inside has seen it.
    fn handle(&self, state: &mut Self::State, input: &Input<'_>, shell: &mut Shell<'_, M>);

    /// Looks at what lies inside, or changes it, before that sees an event or an operation.
    fn inside(&self, _state: &mut Self::State, _operate: &mut dyn FnMut(&mut dyn Operation)) {}

    /// Offers itself to an operation: as something focusable, say.
    fn operate(&self, _state: &mut Self::State, _bounds: Rectangle, _operation: &mut dyn Operation) {}

    /// Draws over what lies inside.
    fn draw(&self, _state: &Self::State, _renderer: &mut iced::Renderer, _bounds: Rectangle) {}

    /// The pointer to show over it.
    fn pointer(&self, _state: &Self::State) -> mouse::Interaction {
        mouse::Interaction::None
    }
}

/// What is remembered, in a type of its own: a plain `()` would pass for the tree of a widget without state.
struct Kept<S>(S);

/// The widget: content, a margin that belongs to it, and a behavior.
pub(in crate::kiosk) struct Around<'a, M, B> {
    pub content: Element<'a, M>,
    pub margin: f32,
    pub behavior: B,
}

impl<M, B: Behavior<M>> Widget<M, iced::Theme, iced::Renderer> for Around<'_, M, B> {
    fn size(&self) -> Size<Length> {
        self.content.as_widget().size()
    }

    fn tag(&self) -> tree::Tag {
        tree::Tag::of::<Kept<B::State>>()
    }

    fn state(&self) -> tree::State {
        tree::State::new(Kept(B::State::default()))
    }

    fn children(&self) -> Vec<Tree> {
        vec![Tree::new(&self.content)]
    }

    fn diff(&self, tree: &mut Tree) {
        tree.diff_children(std::slice::from_ref(&self.content));
    }

    fn layout(
        &mut self,
        tree: &mut Tree,
        renderer: &iced::Renderer,
        limits: &layout::Limits,
    ) -> layout::Node {
        let Some(inner) = tree.children.first_mut() else { return layout::Node::new(Size::ZERO) };
        let margin = self.margin;
        let limits = limits.shrink(Size::new(margin * 2.0, margin * 2.0));
        let node = self.content.as_widget_mut().layout(inner, renderer, &limits);
        let size = node.size().expand(Size::new(margin * 2.0, margin * 2.0));
        layout::Node::with_children(size, vec![node.move_to(Point::new(margin, margin))])
    }

    fn operate(
        &mut self,
        tree: &mut Tree,
        layout: Layout<'_>,
        renderer: &iced::Renderer,
        operation: &mut dyn Operation,
    ) {
        self.behavior.operate(&mut tree.state.downcast_mut::<Kept<B::State>>().0, layout.bounds(), operation);
        operation.container(None, layout.bounds());
        let (Some(inner), Some(place)) = (tree.children.first_mut(), layout.children().next()) else {
            return;
        };
        let content = &mut self.content;
        let kept = &mut tree.state.downcast_mut::<Kept<B::State>>().0;
        self.behavior.inside(kept, &mut |own| content.as_widget_mut().operate(inner, place, renderer, own));
        operation.traverse(&mut |operation| {
            content.as_widget_mut().operate(inner, place, renderer, operation);
        });
    }

    fn update(
        &mut self,
        tree: &mut Tree,
        event: &Event,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        renderer: &iced::Renderer,
        clipboard: &mut dyn Clipboard,
        shell: &mut Shell<'_, M>,
        viewport: &Rectangle,
    ) {
        if let (Some(inner), Some(place)) = (tree.children.first_mut(), layout.children().next()) {
            let content = self.content.as_widget_mut();
            let kept = &mut tree.state.downcast_mut::<Kept<B::State>>().0;
            self.behavior.inside(kept, &mut |operation| content.operate(inner, place, renderer, operation));
            content.update(inner, event, place, cursor, renderer, clipboard, shell, viewport);
        }
        let input = Input { event, bounds: layout.bounds(), cursor, captured: shell.is_event_captured() };
        self.behavior.handle(&mut tree.state.downcast_mut::<Kept<B::State>>().0, &input, shell);
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
        if let (Some(inner), Some(place)) = (tree.children.first(), layout.children().next()) {
            self.content.as_widget().draw(inner, renderer, theme, style, place, cursor, viewport);
        }
        self.behavior.draw(&tree.state.downcast_ref::<Kept<B::State>>().0, renderer, layout.bounds());
    }

    fn mouse_interaction(
        &self,
        tree: &Tree,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        viewport: &Rectangle,
        renderer: &iced::Renderer,
    ) -> mouse::Interaction {
        let inside = match (tree.children.first(), layout.children().next()) {
            (Some(inner), Some(place)) => {
                self.content.as_widget().mouse_interaction(inner, place, cursor, viewport, renderer)
            }
            _ => mouse::Interaction::None,
        };
        if inside == mouse::Interaction::None && cursor.is_over(layout.bounds()) {
            self.behavior.pointer(&tree.state.downcast_ref::<Kept<B::State>>().0)
        } else {
            inside
        }
    }

    fn overlay<'b>(
        &'b mut self,
        tree: &'b mut Tree,
        layout: Layout<'b>,
        renderer: &iced::Renderer,
        viewport: &Rectangle,
        translation: Vector,
    ) -> Option<overlay::Element<'b, M, iced::Theme, iced::Renderer>> {
        let (inner, place) = (tree.children.first_mut()?, layout.children().next()?);
        self.content.as_widget_mut().overlay(inner, place, renderer, viewport, translation)
    }
}
