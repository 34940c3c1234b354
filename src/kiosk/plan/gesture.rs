//! What fingers, mouse and keys do on the plan beside its pegs: a tap, a finger held down, two fingers drawn apart,
//! a drag, the wheel.
//!
//! Time comes with the redraws themselves, as everywhere.

use std::rc::Rc;
use std::time::Duration;

use iced::advanced::widget::{Operation, operation::Focusable};
use iced::advanced::{Renderer as _, Shell, mouse, renderer};
use iced::time::Instant;
use iced::{Border, Color, Event, Point, Rectangle, Size, Vector, keyboard, touch, window};

use super::view::{PlanView, STEP};
use super::{PlanLayout, Zoom};
use crate::kiosk::ui::around::{Behavior, Input};
use crate::kiosk::ui::tap::{Pressable, SLIP, focus_ring, whole_pixels};

/// How long a finger is held down to set a mark.
pub(super) const HOLD: Duration = Duration::from_millis(600);
/// Within which time a second tap belongs to the first.
const TWICE: Duration = Duration::from_millis(350);
/// How far from the first the second may be, in pixels as written.
const NEAR: f32 = 40.0;
/// From one redraw to the next while a finger is held down.
const TICK: Duration = Duration::from_millis(40);
/// How far an arrow key moves the plan, in pixels as written.
const ARROW: f32 = 60.0;
/// How many times larger one line of the wheel makes the plan.
const LINE: f32 = 1.2;

/// What is done beside the pegs.
pub(super) struct Gestures<'a, M> {
    pub view: Rc<PlanView<'a, M>>,
    pub plan: PlanLayout,
    /// Pegs and controls, which have presses of their own.
    pub taken: Vec<Rectangle>,
}

/// Something that is down: the mouse, or a finger.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Down {
    finger: Option<touch::Finger>,
    /// Where it went down, within the plan.
    from: Point,
    /// The same in the window's own places, and where it is now.
    began: Point,
    now: Point,
}

impl Down {
    fn moved(&self) -> Vector {
        self.now - self.began
    }

    fn at(&self) -> Point {
        self.from + self.moved()
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Default)]
enum Wait {
    #[default]
    None,
    /// From the next redraw on.
    Begun,
    /// Since then.
    Since(Instant, f32),
}

#[derive(Default)]
pub(super) struct State {
    down: Vec<Down>,
    /// The view as it was when the number of fingers last changed.
    start: Option<PlanLayout>,
    /// Whether this is no tap and no hold any more.
    spent: bool,
    hold: Wait,
    /// A first tap that waits for a second.
    tapped: Option<(Point, Option<Instant>)>,
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

impl<M> Gestures<'_, M> {
    fn slip(&self) -> f32 {
        self.view.look.px(SLIP)
    }

    fn press(&self, state: &mut State, down: Down, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let within = Point::new(down.from.x - input.bounds.x, down.from.y - input.bounds.y);
        let on_peg = self.taken.iter().any(|place| place.contains(within));
        state.down.push(Down { from: within, ..down });
        // Each finger more begins anew from the view as it is.
        state.start = Some(self.plan.clone());
        for other in &mut state.down {
            other.from = other.at();
            other.began = other.now;
        }
        state.spent = on_peg || input.captured || state.down.len() > 1;
        let holds = self.view.on_hold.is_some() && !state.spent;
        state.hold = if holds { Wait::Begun } else { Wait::None };
        shell.request_redraw();
    }

    fn drag(&self, state: &mut State, shell: &mut Shell<'_, M>) {
        let slip = self.slip();
        if state.down.iter().any(|down| down.moved().x.hypot(down.moved().y) > slip) && !state.spent {
            state.spent = true;
            state.hold = Wait::None;
            shell.request_redraw();
        }
        let (Some(on_zoom), Some(start)) = (&self.view.on_zoom, &state.start) else { return };
        let zoom = match state.down.as_slice() {
            [one] if state.spent && !start.zoom.is_whole() => {
                let moved = one.moved();
                if moved.x.hypot(moved.y) <= slip {
                    return;
                }
                start.moved(moved)
            }
            [a, b, ..] => pinched(start, (a.from, b.from), (a.at(), b.at())),
            _ => return,
        };
        if zoom != self.plan.zoom {
            shell.publish(on_zoom(zoom));
        }
    }

    fn lift(&self, state: &mut State, finger: Option<touch::Finger>, lost: bool, shell: &mut Shell<'_, M>) {
        let Some(index) = state.down.iter().position(|down| down.finger == finger) else { return };
        let down = state.down.remove(index);
        state.hold = Wait::None;
        state.start = Some(self.plan.clone());
        for other in &mut state.down {
            other.from = other.at();
            other.began = other.now;
        }
        shell.request_redraw();
        if state.spent || lost || !state.down.is_empty() {
            return;
        }
        if let Some(on_point) = &self.view.on_point {
            shell.publish(on_point(self.plan.on_unit(down.at())));
            shell.capture_event();
            return;
        }
        let near = self.view.look.px(NEAR);
        match (state.tapped.take(), &self.view.on_zoom) {
            (Some((first, _)), Some(on_zoom)) if first.distance(down.at()) <= near => {
                let zoom = if self.plan.zoom.is_whole() {
                    self.plan.larger(STEP * STEP, down.at())
                } else {
                    Zoom::default()
                };
                shell.publish(on_zoom(zoom));
                shell.capture_event();
            }
            _ => state.tapped = Some((down.at(), None)),
        }
    }

    fn tick(&self, state: &mut State, now: Instant, shell: &mut Shell<'_, M>) {
        if let Some((at, when)) = state.tapped {
            let since = when.unwrap_or(now);
            if now.saturating_duration_since(since) >= TWICE {
                state.tapped = None;
            } else {
                state.tapped = Some((at, Some(since)));
                shell.request_redraw_at(since + TWICE);
            }
        }
        let since = match state.hold {
            Wait::None => return,
            Wait::Begun => now,
            Wait::Since(since, _) => since,
        };
        let held = now.saturating_duration_since(since);
        if held < HOLD {
            state.hold = Wait::Since(since, held.as_secs_f32() / HOLD.as_secs_f32());
            shell.request_redraw_at(now + TICK);
            return;
        }
        state.hold = Wait::None;
        state.spent = true;
        if let (Some(on_hold), Some(down)) = (&self.view.on_hold, state.down.first()) {
            shell.publish(on_hold(self.plan.on_unit(down.at())));
        }
    }

    /// What a key asks for while the plan has the focus.
    fn key(&self, key: &keyboard::Key) -> Option<Zoom> {
        use keyboard::Key;
        use keyboard::key::Named;
        let middle = self.plan.middle();
        let by = self.view.look.px(ARROW);
        let arrow = |x: f32, y: f32| {
            (!self.plan.zoom.is_whole()).then(|| self.plan.moved(Vector::new(x * by, y * by)))
        };
        match key.as_ref() {
            Key::Character("+" | "=") => Some(self.plan.larger(STEP, middle)),
            Key::Character("-" | "_") => Some(self.plan.larger(1.0 / STEP, middle)),
            Key::Character("0") => Some(Zoom::default()),
            Key::Named(Named::ArrowLeft) => arrow(1.0, 0.0),
            Key::Named(Named::ArrowRight) => arrow(-1.0, 0.0),
            Key::Named(Named::ArrowUp) => arrow(0.0, 1.0),
            Key::Named(Named::ArrowDown) => arrow(0.0, -1.0),
            _ => None,
        }
    }

    fn wheel(&self, delta: mouse::ScrollDelta, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let (Some(on_zoom), Some(at)) = (&self.view.on_zoom, input.cursor.position_in(input.bounds)) else {
            return;
        };
        let lines = match delta {
            mouse::ScrollDelta::Lines { y, .. } => y,
            mouse::ScrollDelta::Pixels { y, .. } => y / 40.0,
        };
        let zoom = self.plan.larger(LINE.powf(lines.clamp(-8.0, 8.0)), at);
        if zoom != self.plan.zoom {
            shell.publish(on_zoom(zoom));
        }
        shell.capture_event();
    }
}

/// What two fingers held stays under them.
fn pinched(start: &PlanLayout, from: (Point, Point), to: (Point, Point)) -> Zoom {
    let middle = |(a, b): (Point, Point)| Point::new(f32::midpoint(a.x, b.x), f32::midpoint(a.y, b.y));
    let apart = |(a, b): (Point, Point)| a.distance(b).max(8.0);
    let factor = apart(to) / apart(from);
    // Where the middle of the view came from, were both done at once.
    let grown = (start.zoom.times() * factor).clamp(1.0, Zoom::MOST) / start.zoom.times();
    let back = (start.middle() - middle(to)) * (1.0 / grown.max(f32::EPSILON));
    let at = middle(from) + back;
    start.larger(factor, start.middle()).around(start, at)
}

impl<M> Behavior<M> for Gestures<'_, M> {
    type State = State;

    fn operate(&self, state: &mut State, bounds: Rectangle, operation: &mut dyn Operation) {
        if self.view.on_zoom.is_some() {
            operation.custom(None, bounds, &mut Pressable::new(self.view.look.target()));
            operation.focusable(None, bounds, state);
        }
    }

    fn handle(&self, state: &mut State, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        match input.event {
            Event::Window(window::Event::RedrawRequested(now)) => self.tick(state, *now, shell),
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) => {
                state.focused = false;
                state.down.retain(|down| down.finger.is_some());
                if let Some(at) = input.cursor.position_over(input.bounds) {
                    let down = Down { finger: None, from: at, began: at, now: at };
                    self.press(state, down, input, shell);
                }
            }
            Event::Mouse(mouse::Event::CursorMoved { .. }) => {
                let mouse = state.down.iter_mut().find(|down| down.finger.is_none());
                if let (Some(mouse), Some(at)) = (mouse, input.cursor.position()) {
                    mouse.now = at;
                    self.drag(state, shell);
                }
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) => {
                self.lift(state, None, input.captured, shell);
            }
            Event::Mouse(mouse::Event::WheelScrolled { delta }) if !input.captured => {
                self.wheel(*delta, input, shell);
            }
            Event::Touch(touch::Event::FingerPressed { id, position }) => {
                state.focused = false;
                if let Some(at) = input.cursor.position_over(input.bounds) {
                    let down = Down { finger: Some(*id), from: at, began: *position, now: *position };
                    self.press(state, down, input, shell);
                }
            }
            Event::Touch(touch::Event::FingerMoved { id, position }) => {
                if let Some(finger) = state.down.iter_mut().find(|down| down.finger == Some(*id)) {
                    finger.now = *position;
                    self.drag(state, shell);
                }
            }
            Event::Touch(touch::Event::FingerLifted { id, .. }) => {
                self.lift(state, Some(*id), input.captured, shell);
            }
            Event::Touch(touch::Event::FingerLost { id, .. }) => self.lift(state, Some(*id), true, shell),
            Event::Keyboard(keyboard::Event::KeyPressed { key, .. }) if state.focused && !input.captured => {
                if let (Some(on_zoom), Some(zoom)) = (&self.view.on_zoom, self.key(key)) {
                    shell.publish(on_zoom(zoom));
                    shell.capture_event();
                }
            }
            _ => {}
        }
        let now = (state.focused, matches!(state.hold, Wait::Since(..)));
        if let Event::Window(window::Event::RedrawRequested(_)) = input.event {
            state.drawn = now;
        } else if state.drawn != now {
            shell.request_redraw();
        }
    }

    /// A ring that grows under the finger until it counts.
    fn draw(&self, state: &State, renderer: &mut iced::Renderer, bounds: Rectangle) {
        let look = &self.view.look;
        if let (Wait::Since(_, part), Some(down)) = (state.hold, state.down.first()) {
            let side = look.px(48.0 + 52.0 * part);
            let at = Point::new(bounds.x + down.at().x - side / 2.0, bounds.y + down.at().y - side / 2.0);
            let ring = whole_pixels(Rectangle::new(at, Size::new(side, side)));
            renderer.with_layer(ring.expand(2.0), |renderer| {
                let border =
                    Border { color: look.colors().accent, width: look.px(4.0), radius: (side / 2.0).into() };
                let quad = renderer::Quad { bounds: ring, border, ..renderer::Quad::default() };
                renderer.fill_quad(quad, Color::TRANSPARENT);
            });
        }
        if state.focused {
            focus_ring(look, renderer, bounds, look.radius());
        }
    }
}
