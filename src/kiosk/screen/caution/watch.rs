//! Sees where a finger or the mouse comes down, and lets everything through.

use iced::advanced::mouse;
use iced::widget::canvas::{self, Action, Canvas};
use iced::{Event, Length, Point, Rectangle, touch};

use super::Message;
use crate::kiosk::ui::Element;

struct Watch;

/// A layer over the whole page that tells in which half it was touched.
pub(super) fn watch<'a>() -> Element<'a, Message> {
    Canvas::new(Watch).width(Length::Fill).height(Length::Fill).into()
}

impl canvas::Program<Message> for Watch {
    type State = ();

    fn update(
        &self,
        (): &mut (),
        event: &Event,
        bounds: Rectangle,
        cursor: mouse::Cursor,
    ) -> Option<Action<Message>> {
        let at: Point = match event {
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) => cursor.position()?,
            Event::Touch(touch::Event::FingerPressed { position, .. }) => *position,
            _ => return None,
        };
        Some(Action::publish(Message::Touched { right: at.x > bounds.center_x() }))
    }

    fn draw(
        &self,
        (): &(),
        _renderer: &iced::Renderer,
        _theme: &iced::Theme,
        _bounds: Rectangle,
        _cursor: mouse::Cursor,
    ) -> Vec<canvas::Geometry> {
        Vec::new()
    }
}
