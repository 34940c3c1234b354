//! One key under a finger: pressed as it is lifted, or held for its variants.

use std::time::Duration;

use iced::advanced::widget::Operation;
use iced::advanced::{Renderer as _, Shell, mouse, renderer};
use iced::time::Instant;
use iced::{Border, Color, Event, Point, Rectangle, touch, window};

use super::super::Element;
use super::super::around::{Around, Behavior, Input};
use super::super::tap::{By, Pressable};
use crate::kiosk::theme::Look;

/// How long a key is held before it offers its variants.
pub const LONG: Duration = Duration::from_millis(450);
/// How far beside its key a finger may be lifted, in pixels as written: who types fast slides.
const BESIDE: f32 = 20.0;

/// A key that sends `press`, and `held` once it was held for [`LONG`].
pub(super) fn key<'a, M: Clone + 'a>(
    look: &Look,
    face: Element<'a, M>,
    press: M,
    held: Option<M>,
) -> Element<'a, M> {
    Element::new(Around { content: face, margin: 0.0, behavior: Key { look: *look, press, held } })
}

/// A variant: it counts where a finger is lifted, wherever it was put down.
pub(super) fn variant<'a, M: Clone + 'a>(look: &Look, face: Element<'a, M>, press: M) -> Element<'a, M> {
    Element::new(Around { content: face, margin: 0.0, behavior: Variant { look: *look, press } })
}

struct Key<M> {
    look: Look,
    press: M,
    held: Option<M>,
}

#[derive(Default)]
struct State {
    press: Option<By>,
    since: Option<Instant>,
    /// It has offered its variants: lifting the finger here sends nothing.
    told: bool,
    drawn: bool,
}

impl State {
    fn begin(&mut self, by: By) {
        *self = Self { press: Some(by), drawn: self.drawn, ..Self::default() };
    }

    /// Ends what `by` began; says whether it is a press of the key.
    fn end(&mut self, by: By, inside: bool) -> bool {
        if self.press != Some(by) {
            return false;
        }
        self.press = None;
        inside && !self.told
    }
}

impl<M: Clone> Behavior<M> for Key<M> {
    type State = State;

    fn operate(&self, _state: &mut State, bounds: Rectangle, operation: &mut dyn Operation) {
        operation.custom(None, bounds, &mut Pressable::new(self.look.small_target()));
    }

    fn handle(&self, state: &mut State, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let over = input.cursor.is_over(input.bounds) && !input.captured;
        let near = |at: Point| input.bounds.expand(self.look.px(BESIDE)).contains(at);
        let pressed = match input.event {
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) if over => {
                state.begin(By::Mouse);
                false
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) => {
                state.end(By::Mouse, input.cursor.position().is_some_and(near))
            }
            Event::Touch(touch::Event::FingerPressed { id, .. }) if over => {
                state.begin(By::Finger(*id));
                false
            }
            Event::Touch(touch::Event::FingerLifted { id, position }) => {
                state.end(By::Finger(*id), near(*position))
            }
            Event::Touch(touch::Event::FingerLost { id, .. }) => state.end(By::Finger(*id), false),
            Event::Window(window::Event::RedrawRequested(now)) => {
                self.tick(state, *now, shell);
                state.drawn = state.press.is_some();
                return;
            }
            _ => return,
        };
        if pressed {
            shell.publish(self.press.clone());
        }
        if state.drawn != state.press.is_some() {
            shell.request_redraw();
        }
    }

    fn draw(&self, state: &State, renderer: &mut iced::Renderer, bounds: Rectangle) {
        if state.press.is_some() {
            shade(&self.look, renderer, bounds);
        }
    }

    fn pointer(&self, _state: &State) -> mouse::Interaction {
        mouse::Interaction::Pointer
    }
}

impl<M: Clone> Key<M> {
    fn tick(&self, state: &mut State, now: Instant, shell: &mut Shell<'_, M>) {
        let Some(held) = self.held.as_ref().filter(|_| state.press.is_some() && !state.told) else { return };
        let due = *state.since.get_or_insert(now) + LONG;
        if now >= due {
            state.told = true;
            shell.publish(held.clone());
        } else {
            shell.request_redraw_at(due);
        }
    }
}

struct Variant<M> {
    look: Look,
    press: M,
}

#[derive(Default)]
struct Over {
    now: bool,
    drawn: bool,
}

impl<M: Clone> Behavior<M> for Variant<M> {
    type State = Over;

    fn operate(&self, _state: &mut Over, bounds: Rectangle, operation: &mut dyn Operation) {
        operation.custom(None, bounds, &mut Pressable::new(self.look.small_target()));
    }

    fn handle(&self, state: &mut Over, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let over = input.cursor.is_over(input.bounds);
        match input.event {
            // The key below must not begin a press of its own.
            Event::Mouse(mouse::Event::ButtonPressed(_))
            | Event::Touch(touch::Event::FingerPressed { .. })
                if over =>
            {
                state.now = true;
                shell.capture_event();
            }
            Event::Mouse(mouse::Event::CursorMoved { position })
            | Event::Touch(touch::Event::FingerMoved { position, .. }) => {
                state.now = input.bounds.contains(*position);
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) if over => {
                shell.publish(self.press.clone());
            }
            Event::Touch(touch::Event::FingerLifted { position, .. }) if input.bounds.contains(*position) => {
                shell.publish(self.press.clone());
            }
            Event::Window(window::Event::RedrawRequested(_)) => state.drawn = state.now,
            _ => {}
        }
        if state.now != state.drawn {
            shell.request_redraw();
        }
    }

    fn draw(&self, state: &Over, renderer: &mut iced::Renderer, bounds: Rectangle) {
        if state.now {
            shade(&self.look, renderer, bounds);
        }
    }

    fn pointer(&self, _state: &Over) -> mouse::Interaction {
        mouse::Interaction::Pointer
    }
}

fn shade(look: &Look, renderer: &mut iced::Renderer, bounds: Rectangle) {
    let color = Color { a: 0.16, ..look.colors().ink };
    renderer.with_layer(bounds, |renderer| {
        let border = Border { radius: look.radius().into(), ..Border::default() };
        renderer.fill_quad(renderer::Quad { bounds, border, ..renderer::Quad::default() }, color);
    });
}
