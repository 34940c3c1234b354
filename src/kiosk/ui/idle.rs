//! Tells when nobody has touched a page for a while.
//!
//! Time comes with the redraws, as for a hold: one redraw is asked for when the time would be over, and none between.

use std::time::Duration;

use iced::advanced::Shell;
use iced::time::Instant;
use iced::{Event, keyboard, mouse, touch, window};

use super::Element;
use super::around::{Around, Behavior, Input};

/// Sends `message` when no finger, mouse or key has touched the window for so long; then again after as long.
pub fn when_idle<'a, M: Clone + 'a>(
    content: impl Into<Element<'a, M>>,
    after: Duration,
    message: M,
) -> Element<'a, M> {
    Element::new(Around { content: content.into(), margin: 0.0, behavior: Idle { after, message } })
}

struct Idle<M> {
    after: Duration,
    message: M,
}

#[derive(Default)]
struct State {
    /// When it was last touched, as far as a redraw has told the time.
    last: Option<Instant>,
    touched: bool,
}

impl<M: Clone> Behavior<M> for Idle<M> {
    type State = State;

    fn handle(&self, state: &mut State, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        match input.event {
            Event::Window(window::Event::RedrawRequested(now)) => {
                let last = if state.touched { *now } else { state.last.unwrap_or(*now) };
                (state.last, state.touched) = (Some(last), false);
                if now.saturating_duration_since(last) >= self.after {
                    state.last = Some(*now);
                    shell.publish(self.message.clone());
                } else {
                    shell.request_redraw_at(last + self.after);
                }
            }
            Event::Mouse(mouse::Event::CursorMoved { .. }) => state.touched = true,
            Event::Mouse(mouse::Event::ButtonPressed(_) | mouse::Event::WheelScrolled { .. })
            | Event::Touch(touch::Event::FingerPressed { .. } | touch::Event::FingerMoved { .. })
            | Event::Keyboard(keyboard::Event::KeyPressed { .. }) => {
                state.touched = true;
                shell.request_redraw();
            }
            _ => {}
        }
    }
}
