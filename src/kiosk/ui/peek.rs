//! A page part that scrolls, and says at its lower edge that there is more.

use iced::advanced::Shell;
use iced::advanced::renderer::{self, Renderer as _};
use iced::advanced::widget::Operation;
use iced::advanced::widget::operation::Scrollable;
use iced::widget::canvas;
use iced::{Length, Point, Rectangle, Size, Vector};

use super::Element;
use super::around::{Around, Behavior, Input};
use super::symbol::{self, Symbol};
use crate::kiosk::theme::Look;

/// Height of the ledge at the lower edge, in pixels as written.
const LEDGE: f32 = 30.0;

/// Scrolls `content` in the whole height of its space. While part of it lies below, a ledge with an arrow covers the
/// lower edge, so that nobody takes a card that is cut for the last one.
pub fn peek_scroll<'a, M: 'a>(look: &Look, content: impl Into<Element<'a, M>>) -> Element<'a, M> {
    let content = super::scroll(look, content).height(Length::Fill).into();
    Element::new(Around { content, margin: 0.0, behavior: Peek(*look) })
}

struct Peek(Look);

/// How wide what scrolls is, while part of it lies below.
#[derive(Default)]
struct Below(Option<f32>);

impl<M> Behavior<M> for Peek {
    type State = Below;

    fn handle(&self, _state: &mut Below, _input: &Input<'_>, _shell: &mut Shell<'_, M>) {}

    fn inside(&self, below: &mut Below, operate: &mut dyn FnMut(&mut dyn Operation)) {
        *below = Below::default();
        operate(below);
    }

    fn draw(&self, below: &Below, renderer: &mut iced::Renderer, bounds: Rectangle) {
        let Some(width) = below.0 else { return };
        let (look, colors) = (&self.0, self.0.colors());
        let high = look.px(LEDGE);
        // On whole pixels, and so that nothing looks out below.
        let bottom = (bounds.y + bounds.height).ceil();
        let top = (bottom - high).floor();
        let (left, right) = (bounds.x.floor(), (bounds.x + width).ceil());
        let ledge = Rectangle { x: left, y: top, width: right - left, height: bottom - top };
        let side = high * 0.7;
        let mut frame = canvas::Frame::new(renderer, Size::new(side, side));
        let face = Rectangle::new(Point::ORIGIN, Size::new(side, side));
        symbol::draw(&mut frame, Symbol::Down, face, colors.ink, colors.paper);
        let arrow = frame.into_geometry();
        renderer.with_layer(ledge.expand(2.0), |renderer| {
            let quad = |bounds| renderer::Quad { bounds, ..renderer::Quad::default() };
            renderer.fill_quad(quad(ledge), colors.paper);
            let line = Rectangle { height: look.line(), ..ledge };
            renderer.fill_quad(quad(line), colors.edge);
            let at = Vector::new(
                ledge.x + (ledge.width - side) / 2.0,
                ledge.y + (ledge.height - side) / 2.0 + look.line() / 2.0,
            );
            renderer.with_translation(at, |renderer| {
                use iced::advanced::graphics::geometry::Renderer as _;
                renderer.draw_geometry(arrow);
            });
        });
    }
}

impl Operation for Below {
    fn traverse(&mut self, _operate: &mut dyn FnMut(&mut dyn Operation)) {}

    fn scrollable(
        &mut self,
        _id: Option<&iced::advanced::widget::Id>,
        bounds: Rectangle,
        content: Rectangle,
        translation: Vector,
        _state: &mut dyn Scrollable,
    ) {
        // The bar beside it is moved, and so stays in sight.
        self.0 = (content.height - bounds.height - translation.y > 2.0).then_some(content.width);
    }
}
