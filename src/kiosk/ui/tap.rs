//! The press target.
//!
//! It does not take the press, so that a touch scroll may start on it; it lets go when the finger moves
//! further than a slip; it follows one finger by its id, so that a second one does no harm.

use iced::advanced::widget::{Id, Operation, operation::Focusable};
use iced::advanced::{Renderer as _, Shell, mouse, renderer};
use iced::{Border, Color, Event, Point, Rectangle, keyboard, touch, window};

use super::Element;
use super::around::{Around, Behavior, Input};
use crate::kiosk::theme::Look;

/// How far a finger may slip before it is no tap any more, in pixels as written.
pub const SLIP: f32 = 14.0;

/// The place of a target among things of which one is chosen: arrow keys go from one to the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Among {
    /// It is no such thing.
    #[default]
    Alone,
    /// The first of some.
    First,
    /// It goes with the one before it.
    Next,
}

impl Among {
    /// The place of the one at this position.
    #[must_use]
    pub const fn at(position: usize) -> Self {
        if position == 0 { Self::First } else { Self::Next }
    }
}

/// What a part that can be pressed shows of itself to an operation, besides what can have the focus.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pressable {
    /// How long its shorter side must be, in pixels of the screen.
    pub least: f32,
    /// Whether only the disc within its bounds counts.
    pub round: bool,
    /// Whether it is one of several to choose from.
    pub among: Among,
}

impl Pressable {
    /// Something that stands alone and is pressed anywhere in its bounds.
    #[must_use]
    pub const fn new(least: f32) -> Self {
        Self { least, round: false, among: Among::Alone }
    }
}

/// A press target that is being put together.
pub struct Tap<'a, M> {
    content: Element<'a, M>,
    press: Press<M>,
}

struct Press<M> {
    look: Look,
    id: Option<Id>,
    message: M,
    radius: f32,
    round: bool,
    least: f32,
    among: Among,
}

impl<M> Press<M> {
    fn is_over(&self, input: &Input<'_>) -> bool {
        let Some(at) = input.cursor.position_over(input.bounds) else { return false };
        !self.round || at.distance(input.bounds.center()) <= input.bounds.width.min(input.bounds.height) / 2.0
    }
}

/// Makes `content` a press target that sends `message`.
pub fn tap<'a, M: Clone + 'a>(look: &Look, content: impl Into<Element<'a, M>>, message: M) -> Tap<'a, M> {
    Tap {
        content: content.into(),
        press: Press {
            look: *look,
            id: None,
            message,
            radius: look.radius(),
            round: false,
            least: look.small_target(),
            among: Among::Alone,
        },
    }
}

impl<M> Tap<'_, M> {
    /// A name to focus it by.
    #[must_use]
    pub fn id(mut self, id: impl Into<Id>) -> Self {
        self.press.id = Some(id.into());
        self
    }

    /// Only the disc within its bounds counts, so that neighbors may stand at any angle.
    #[must_use]
    pub fn round(mut self) -> Self {
        self.press.round = true;
        self
    }

    /// How long its shorter side must be, in pixels of the screen.
    #[must_use]
    pub fn least(mut self, least: f32) -> Self {
        self.press.least = least;
        self
    }

    /// One of several to choose from.
    #[must_use]
    pub fn among(mut self, among: Among) -> Self {
        self.press.among = among;
        self
    }

    /// The radius of its corners, for the shade of the press and the ring of the focus.
    #[must_use]
    pub fn radius(mut self, radius: f32) -> Self {
        self.press.radius = radius;
        self
    }
}

impl<'a, M: Clone + 'a> From<Tap<'a, M>> for Element<'a, M> {
    fn from(tap: Tap<'a, M>) -> Self {
        Self::new(Around { content: tap.content, margin: 0.0, behavior: tap.press })
    }
}

/// By what a press is held down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum By {
    Mouse,
    Finger(touch::Finger),
}

#[derive(Default)]
struct State {
    press: Option<(By, Point)>,
    focused: bool,
    drawn: (bool, bool),
}

impl Focusable for State {
    fn is_focused(&self) -> bool {
        self.focused
    }

    fn focus(&mut self) {
        self.focused = true;
    }

    fn unfocus(&mut self) {
        self.focused = false;
    }
}

impl State {
    fn held_by(&self, finger: touch::Finger) -> Option<Point> {
        self.press.filter(|(by, _)| *by == By::Finger(finger)).map(|(_, at)| at)
    }
}

impl<M: Clone> Behavior<M> for Press<M> {
    type State = State;

    fn operate(&self, state: &mut State, bounds: Rectangle, operation: &mut dyn Operation) {
        let mut pressable = Pressable { least: self.least, round: self.round, among: self.among };
        operation.custom(self.id.as_ref(), bounds, &mut pressable);
        operation.focusable(self.id.as_ref(), bounds, state);
    }

    fn handle(&self, state: &mut State, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        // What was taken by something inside begins nothing here, but it may end what began here.
        let begins = matches!(
            input.event,
            Event::Mouse(mouse::Event::ButtonPressed(_)) | Event::Touch(touch::Event::FingerPressed { .. })
        );
        if begins {
            // A press anywhere ends the way by keyboard.
            state.focused = false;
        }
        let ignored = begins && input.captured;
        let fired = !ignored && self.fires(state, input);
        if fired && !input.captured {
            shell.publish(self.message.clone());
            shell.capture_event();
        }
        let now = (state.press.is_some(), state.focused);
        if let Event::Window(window::Event::RedrawRequested(_)) = input.event {
            state.drawn = now;
        } else if state.drawn != now {
            shell.request_redraw();
        }
    }

    fn draw(&self, state: &State, renderer: &mut iced::Renderer, bounds: Rectangle) {
        let colors = self.look.colors();
        if state.press.is_some() {
            let shade = Color { a: 0.16, ..colors.ink };
            let bounds = whole_pixels(bounds);
            renderer.with_layer(bounds.expand(2.0), |renderer| {
                let border = Border { radius: self.radius.into(), ..Border::default() };
                renderer.fill_quad(renderer::Quad { bounds, border, ..renderer::Quad::default() }, shade);
            });
        }
        if state.focused {
            focus_ring(&self.look, renderer, bounds, self.radius);
        }
    }

    fn pointer(&self, _state: &State) -> mouse::Interaction {
        mouse::Interaction::Pointer
    }
}

impl<M> Press<M> {
    /// Takes an event into the state; says whether it completes a tap.
    fn fires(&self, state: &mut State, input: &Input<'_>) -> bool {
        let slip = self.look.px(SLIP);
        match input.event {
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) => {
                if state.press.is_none() && self.is_over(input) {
                    state.press = input.cursor.position().map(|at| (By::Mouse, at));
                }
                false
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) => {
                let held = matches!(state.press, Some((By::Mouse, _)));
                if held {
                    state.press = None;
                }
                held && self.is_over(input)
            }
            Event::Touch(touch::Event::FingerPressed { id, position }) => {
                // The shared cursor is already moved by scrollables around, so it finds the target; the
                // finger's own position is in the window, and measures the slip.
                if state.press.is_none() && self.is_over(input) {
                    state.press = Some((By::Finger(*id), *position));
                }
                false
            }
            Event::Touch(touch::Event::FingerMoved { id, position }) => {
                if state.held_by(*id).is_some_and(|at| at.distance(*position) > slip) {
                    state.press = None;
                }
                false
            }
            Event::Touch(touch::Event::FingerLost { id, .. }) => {
                if state.held_by(*id).is_some() {
                    state.press = None;
                }
                false
            }
            Event::Touch(touch::Event::FingerLifted { id, position }) => {
                let Some(at) = state.held_by(*id) else { return false };
                state.press = None;
                at.distance(*position) <= slip
            }
            Event::Keyboard(keyboard::Event::KeyPressed { key, repeat: false, .. }) => {
                state.focused && is_press(key)
            }
            _ => false,
        }
    }
}

/// Whether a key presses what has the focus.
pub(super) fn is_press(key: &keyboard::Key) -> bool {
    use keyboard::key::Named;
    matches!(key, keyboard::Key::Named(Named::Enter | Named::Space))
}

/// The bounds on whole pixels, within the given ones. What comes and goes must not end between two pixels, nor
/// touch the edge of its layer: a redraw of the changed part alone would leave a seam.
pub(in crate::kiosk) fn whole_pixels(bounds: Rectangle) -> Rectangle {
    let (left, top) = (bounds.x.ceil(), bounds.y.ceil());
    let (right, bottom) = ((bounds.x + bounds.width).floor(), (bounds.y + bounds.height).floor());
    Rectangle { x: left, y: top, width: (right - left).max(0.0), height: (bottom - top).max(0.0) }
}

/// A ring of two colors inside the bounds, so that it shows on light and on dark.
pub(in crate::kiosk) fn focus_ring(
    look: &Look,
    renderer: &mut iced::Renderer,
    bounds: Rectangle,
    radius: f32,
) {
    let colors = look.colors();
    let width = look.px(4.0);
    let bounds = whole_pixels(bounds);
    renderer.with_layer(bounds.expand(2.0), |renderer| {
        for (inset, color) in [(0.0, colors.ink), (width, colors.leaf)] {
            let quad = renderer::Quad {
                bounds: bounds.shrink(inset),
                border: Border { color, width, radius: (radius - inset).max(0.0).into() },
                ..renderer::Quad::default()
            };
            renderer.fill_quad(quad, Color::TRANSPARENT);
        }
    });
}
