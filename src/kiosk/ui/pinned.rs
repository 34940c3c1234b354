//! Two small layouts the toolkit lacks: parts at given places, and a part of at least some height.

use iced::advanced::layout::{self, Layout};
use iced::advanced::widget::{Operation, Tree};
use iced::advanced::{Clipboard, Shell, Widget, mouse, renderer};
use iced::{Event, Length, Rectangle, Size};

use super::Element;

/// Puts parts at given places over a ground. All share one layer, so this is cheaper than a stack.
pub fn pinned<'a, M: 'a>(size: Size, parts: Vec<(Rectangle, Element<'a, M>)>) -> Element<'a, M> {
    let (places, parts) = parts.into_iter().unzip();
    Element::new(Placed { how: How::Pinned { size, places }, parts })
}

/// A part in the middle of at least this height, and higher where it needs to be.
pub fn at_least<'a, M: 'a>(height: f32, part: Element<'a, M>) -> Element<'a, M> {
    Element::new(Placed { how: How::AtLeast(height), parts: vec![part] })
}

enum How {
    Pinned { size: Size, places: Vec<Rectangle> },
    AtLeast(f32),
}

struct Placed<'a, M> {
    how: How,
    parts: Vec<Element<'a, M>>,
}

impl<M> Widget<M, iced::Theme, iced::Renderer> for Placed<'_, M> {
    fn size(&self) -> Size<Length> {
        match &self.how {
            How::Pinned { size, .. } => Size::new(Length::Fixed(size.width), Length::Fixed(size.height)),
            How::AtLeast(_) => {
                let width = self.parts.first().map_or(Length::Shrink, |part| part.as_widget().size().width);
                Size::new(width, Length::Shrink)
            }
        }
    }

    fn children(&self) -> Vec<Tree> {
        self.parts.iter().map(Tree::new).collect()
    }

    fn diff(&self, tree: &mut Tree) {
        tree.diff_children(&self.parts);
    }

    fn layout(
        &mut self,
        tree: &mut Tree,
        renderer: &iced::Renderer,
        limits: &layout::Limits,
    ) -> layout::Node {
        let parts = self.parts.iter_mut().zip(&mut tree.children);
        match &self.how {
            How::Pinned { size, places } => {
                let nodes = parts.zip(places).map(|((part, tree), place)| {
                    let limits = layout::Limits::new(place.size(), place.size());
                    part.as_widget_mut().layout(tree, renderer, &limits).move_to(place.position())
                });
                layout::Node::with_children(*size, nodes.collect())
            }
            How::AtLeast(height) => {
                let limits = limits.min_height(height.min(limits.max().height));
                let nodes: Vec<_> =
                    parts.map(|(part, tree)| part.as_widget_mut().layout(tree, renderer, &limits)).collect();
                let size = nodes.first().map_or(Size::ZERO, layout::Node::size);
                layout::Node::with_children(size, nodes)
            }
        }
    }

    fn operate(
        &mut self,
        tree: &mut Tree,
        layout: Layout<'_>,
        renderer: &iced::Renderer,
        operation: &mut dyn Operation,
    ) {
        operation.container(None, layout.bounds());
        let parts = &mut self.parts;
        operation.traverse(&mut |operation| {
            for ((part, tree), place) in parts.iter_mut().zip(&mut tree.children).zip(layout.children()) {
                part.as_widget_mut().operate(tree, place, renderer, operation);
            }
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
        // What was drawn last lies on top and is asked first.
        let places: Vec<_> = layout.children().collect();
        for ((part, tree), place) in self.parts.iter_mut().zip(&mut tree.children).zip(places).rev() {
            part.as_widget_mut().update(tree, event, place, cursor, renderer, clipboard, shell, viewport);
        }
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
        for ((part, tree), place) in self.parts.iter().zip(&tree.children).zip(layout.children()) {
            part.as_widget().draw(tree, renderer, theme, style, place, cursor, viewport);
        }
    }

    fn mouse_interaction(
        &self,
        tree: &Tree,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        viewport: &Rectangle,
        renderer: &iced::Renderer,
    ) -> mouse::Interaction {
        self.parts
            .iter()
            .zip(&tree.children)
            .zip(layout.children())
            .map(|((part, tree), place)| {
                part.as_widget().mouse_interaction(tree, place, cursor, viewport, renderer)
            })
            .max()
            .unwrap_or_default()
    }
}
