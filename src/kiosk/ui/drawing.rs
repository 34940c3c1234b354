//! A picture drawn by a function.

use iced::advanced::mouse;
use iced::widget::canvas::{self, Canvas, Frame};
use iced::{Length, Rectangle};

use super::Element;

struct Drawing<F>(F);

impl<M, F: Fn(&mut Frame)> canvas::Program<M> for Drawing<F> {
    type State = ();

    fn draw(
        &self,
        (): &(),
        renderer: &iced::Renderer,
        _theme: &iced::Theme,
        bounds: Rectangle,
        _cursor: mouse::Cursor,
    ) -> Vec<canvas::Geometry> {
        let mut frame = Frame::new(renderer, bounds.size());
        (self.0)(&mut frame);
        vec![frame.into_geometry()]
    }
}

/// A space on which `draw` draws.
pub fn drawing<'a, M: 'a>(
    width: impl Into<Length>,
    height: impl Into<Length>,
    draw: impl Fn(&mut Frame) + 'a,
) -> Element<'a, M> {
    Canvas::new(Drawing(draw)).width(width).height(height).into()
}
