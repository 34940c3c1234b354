//! A layer over a page. The page keeps what it remembers, where it is scrolled to, say, when a layer comes and goes.

use iced::advanced::layout::{self, Layout};
use iced::advanced::widget::{Operation, Tree, tree};
use iced::advanced::{Clipboard, Shell, Widget, mouse, overlay, renderer};
use iced::{Event, Length, Rectangle, Size, Vector};

use super::Element;

/// What lies over a page.
pub enum Over<'a, M> {
    /// Nothing: the page can be used.
    Nothing,
    /// Something; the page shows below, and nothing of it can be pressed, focused or found.
    Shows(Element<'a, M>),
    /// The same, and the page is not drawn.
    Hides(Element<'a, M>),
}

/// A page with a layer over it. Call it with [`Over::Nothing`] where there may be one later.
pub fn layered<'a, M: 'a>(page: impl Into<Element<'a, M>>, over: Over<'a, M>) -> Element<'a, M> {
    Element::new(Layered { page: page.into(), over })
}

struct Layered<'a, M> {
    page: Element<'a, M>,
    over: Over<'a, M>,
}

/// Marks the tree of this widget.
struct Mark;

impl<'a, M> Layered<'a, M> {
    const fn over(&self) -> Option<&Element<'a, M>> {
        match &self.over {
            Over::Nothing => None,
            Over::Shows(over) | Over::Hides(over) => Some(over),
        }
    }

    /// What can be used: the layer, else the page. With its tree and place.
    fn live<'s, 't, 'l>(
        &'s mut self,
        tree: &'t mut Tree,
        layout: Layout<'l>,
    ) -> Option<(&'s mut Element<'a, M>, &'t mut Tree, Layout<'l>)> {
        let tree = tree.children.last_mut()?;
        let place = layout.children().last()?;
        match &mut self.over {
            Over::Nothing => Some((&mut self.page, tree, place)),
            Over::Shows(over) | Over::Hides(over) => Some((over, tree, place)),
        }
    }
}

impl<M> Widget<M, iced::Theme, iced::Renderer> for Layered<'_, M> {
    fn size(&self) -> Size<Length> {
        self.page.as_widget().size()
    }

    fn tag(&self) -> tree::Tag {
        tree::Tag::of::<Mark>()
    }

    fn children(&self) -> Vec<Tree> {
        [Some(&self.page), self.over()].into_iter().flatten().map(Tree::new).collect()
    }

    fn diff(&self, tree: &mut Tree) {
        let parts: Vec<&Element<'_, M>> = [Some(&self.page), self.over()].into_iter().flatten().collect();
        tree.diff_children(&parts);
    }

    fn layout(
        &mut self,
        tree: &mut Tree,
        renderer: &iced::Renderer,
        limits: &layout::Limits,
    ) -> layout::Node {
        let mut trees = tree.children.iter_mut();
        let Some(first) = trees.next() else { return layout::Node::new(Size::ZERO) };
        let page = self.page.as_widget_mut().layout(first, renderer, limits);
        let size = page.size();
        let over = match (&mut self.over, trees.next()) {
            (Over::Shows(over) | Over::Hides(over), Some(tree)) => {
                let limits = layout::Limits::new(Size::ZERO, size);
                Some(over.as_widget_mut().layout(tree, renderer, &limits))
            }
            _ => None,
        };
        layout::Node::with_children(size, [Some(page), over].into_iter().flatten().collect())
    }

    fn operate(
        &mut self,
        tree: &mut Tree,
        layout: Layout<'_>,
        renderer: &iced::Renderer,
        operation: &mut dyn Operation,
    ) {
        operation.container(None, layout.bounds());
        operation.traverse(&mut |operation| {
            if let Some((part, tree, place)) = self.live(tree, layout) {
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
        if let Some((part, tree, place)) = self.live(tree, layout) {
            let part = part.as_widget_mut();
            part.update(tree, event, place, cursor, renderer, clipboard, shell, viewport);
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
        use iced::advanced::Renderer as _;
        let mut parts = tree.children.iter().zip(layout.children());
        if let Some((tree, place)) = parts.next()
            && !matches!(self.over, Over::Hides(_))
        {
            let cursor = if self.over().is_some() { mouse::Cursor::Unavailable } else { cursor };
            self.page.as_widget().draw(tree, renderer, theme, style, place, cursor, viewport);
        }
        if let (Some((tree, place)), Some(over)) = (parts.next(), self.over()) {
            renderer.with_layer(layout.bounds(), |renderer| {
                over.as_widget().draw(tree, renderer, theme, style, place, cursor, viewport);
            });
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
        let part = self.over().unwrap_or(&self.page).as_widget();
        match (tree.children.last(), layout.children().last()) {
            (Some(tree), Some(place)) => part.mouse_interaction(tree, place, cursor, viewport, renderer),
            _ => mouse::Interaction::None,
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
        let (part, tree, place) = self.live(tree, layout)?;
        part.as_widget_mut().overlay(tree, place, renderer, viewport, translation)
    }
}
