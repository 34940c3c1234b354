//! Press and hold: a ring that closes in 1.2 s, or in the time it is told.
//!
//! Time comes with the redraws themselves, so no subscription is needed; while it is held, a redraw is asked
//! for every 33 ms; where nothing may move, the ring closes in four steps and its middle counts
//! them. The whole target and a margin of 24 px around it count. By keyboard: Space or Enter, held.

use std::time::Duration;

use iced::advanced::widget::{Id, Operation, operation::Focusable};
use iced::advanced::{Renderer as _, Shell, mouse};
use iced::time::Instant;
use iced::widget::canvas::{self, LineCap, Path, path::Arc};
use iced::widget::{Space, column, row};
use iced::{Alignment, Event, Point, Radians, Rectangle, Size, Vector, keyboard, touch, window};

use super::around::{Around, Behavior, Input};
use super::symbol::centered;
use super::tap::{Pressable, focus_ring, is_press};
use super::{Element, words};
use crate::kiosk::theme::{Gap, Look};

/// How long it must be held.
pub const HOLD: Duration = Duration::from_millis(1200);

/// The margin around the target that still counts, in pixels as written.
pub const MARGIN: f32 = 24.0;

const STEP: Duration = Duration::from_millis(33);
/// In how many steps the ring closes where nothing may move.
const STEPS: u16 = 4;
const RING: f32 = 112.0;

/// What came of a hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HoldEvent {
    /// The ring has closed.
    Done,
    /// It was let go before that, or the finger left the target.
    TooShort,
}

/// A hold that is being put together.
pub struct Hold<'a, M> {
    content: Element<'a, M>,
    target: Target<'a, M>,
}

struct Target<'a, M> {
    look: Look,
    id: Option<Id>,
    page: u64,
    live_after: Duration,
    lasts: Duration,
    answer: Box<dyn Fn(HoldEvent) -> M + 'a>,
}

/// A ring with a title and a line beside it. The title says what to do, the line what happens.
pub fn hold<'a, M: 'a>(
    look: &Look,
    title: impl Into<String>,
    line: impl Into<String>,
    answer: impl Fn(HoldEvent) -> M + 'a,
) -> Hold<'a, M> {
    let ring = look.px(RING);
    let text = column![words::section(look, title.into()), words::small(look, line.into())]
        .spacing(look.gap(Gap::Tiny));
    let content = row![Space::new().width(ring).height(ring), text]
        .spacing(look.gap(Gap::Large))
        .align_y(Alignment::Center);
    let target = Target {
        look: *look,
        id: None,
        page: 0,
        live_after: Duration::ZERO,
        lasts: HOLD,
        answer: Box::new(answer),
    };
    Hold { content: content.into(), target }
}

impl<M> Hold<'_, M> {
    /// A name to focus it by.
    #[must_use]
    pub fn id(mut self, id: impl Into<Id>) -> Self {
        self.target.id = Some(id.into());
        self
    }

    /// Which page it stands on. A new page starts afresh, even if the hold lies in the same place.
    #[must_use]
    pub fn page(mut self, page: u64) -> Self {
        self.target.page = page;
        self
    }

    /// How long it must be held, where that is not the usual time.
    #[must_use]
    pub fn lasting(mut self, time: Duration) -> Self {
        self.target.lasts = time;
        self
    }

    /// Not live until this long after its page was first drawn.
    #[must_use]
    pub fn live_after(mut self, wait: Duration) -> Self {
        self.target.live_after = wait;
        self
    }
}

impl<'a, M: 'a> From<Hold<'a, M>> for Element<'a, M> {
    fn from(hold: Hold<'a, M>) -> Self {
        let margin = hold.target.look.px(MARGIN);
        Self::new(Around { content: hold.content, margin, behavior: hold.target })
    }
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum By {
    Mouse,
    Key,
    Finger(touch::Finger),
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Stage {
    Idle,
    /// Down since a moment that the next redraw will tell.
    Pressed(By),
    Closing {
        by: By,
        since: Instant,
        part: f32,
    },
    /// Closed, but not yet let go.
    Closed(By),
}

struct State {
    page: u64,
    shown: Option<Instant>,
    live: bool,
    stage: Stage,
    focused: bool,
}

impl Default for State {
    fn default() -> Self {
        Self { page: 0, shown: None, live: false, stage: Stage::Idle, focused: false }
    }
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
    fn by(&self) -> Option<By> {
        match self.stage {
            Stage::Idle => None,
            Stage::Pressed(by) | Stage::Closing { by, .. } | Stage::Closed(by) => Some(by),
        }
    }
}

impl<M> Target<'_, M> {
    fn press(&self, state: &mut State, by: By, shell: &mut Shell<'_, M>) {
        if state.live && state.stage == Stage::Idle {
            state.stage = Stage::Pressed(by);
            shell.capture_event();
            shell.request_redraw();
        }
    }

    fn release(&self, state: &mut State, by: By, shell: &mut Shell<'_, M>) {
        if state.by() != Some(by) {
            return;
        }
        if !matches!(state.stage, Stage::Closed(_)) {
            shell.publish((self.answer)(HoldEvent::TooShort));
        }
        state.stage = Stage::Idle;
        shell.request_redraw();
    }

    /// What a redraw at `now` changes.
    fn tick(&self, state: &mut State, now: Instant, shell: &mut Shell<'_, M>) {
        if state.page != self.page {
            *state = State { page: self.page, focused: state.focused, ..State::default() };
        }
        let live_at = *state.shown.get_or_insert(now) + self.live_after;
        state.live = now >= live_at;
        if !state.live {
            shell.request_redraw_at(live_at);
        }
        let (by, since) = match state.stage {
            Stage::Pressed(by) => (by, now),
            Stage::Closing { by, since, .. } => (by, since),
            Stage::Idle | Stage::Closed(_) => return,
        };
        let held = now.saturating_duration_since(since);
        if held >= self.lasts {
            state.stage = Stage::Closed(by);
            shell.publish((self.answer)(HoldEvent::Done));
        } else {
            let part = held.as_secs_f32() / self.lasts.as_secs_f32();
            if self.look.still {
                let step = self.lasts / u32::from(STEPS);
                let done = (0..STEPS).filter(|n| held >= step * u32::from(*n)).count();
                let done = u16::try_from(done).unwrap_or(STEPS);
                let part = f32::from(done) / f32::from(STEPS);
                state.stage = Stage::Closing { by, since, part };
                shell.request_redraw_at(since + step * u32::from(done));
            } else {
                state.stage = Stage::Closing { by, since, part };
                shell.request_redraw_at(now + STEP);
            }
        }
    }
}

impl<M> Behavior<M> for Target<'_, M> {
    type State = State;

    fn operate(&self, state: &mut State, bounds: Rectangle, operation: &mut dyn Operation) {
        let mut pressable = Pressable::new(self.look.px(RING));
        operation.custom(self.id.as_ref(), bounds, &mut pressable);
        operation.focusable(self.id.as_ref(), bounds, state);
    }

    fn handle(&self, state: &mut State, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let over = input.cursor.is_over(input.bounds);
        match input.event {
            Event::Window(window::Event::RedrawRequested(now)) => self.tick(state, *now, shell),
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) => {
                state.focused = false;
                if over && !input.captured {
                    self.press(state, By::Mouse, shell);
                }
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) => {
                self.release(state, By::Mouse, shell);
            }
            Event::Mouse(mouse::Event::CursorMoved { .. }) if !over => self.release(state, By::Mouse, shell),
            Event::Touch(touch::Event::FingerPressed { id, .. }) => {
                state.focused = false;
                if over && !input.captured {
                    self.press(state, By::Finger(*id), shell);
                }
            }
            Event::Touch(touch::Event::FingerMoved { id, .. }) if !over => {
                self.release(state, By::Finger(*id), shell);
            }
            Event::Touch(touch::Event::FingerLifted { id, .. } | touch::Event::FingerLost { id, .. }) => {
                self.release(state, By::Finger(*id), shell);
            }
            Event::Keyboard(keyboard::Event::KeyPressed { key, repeat: false, .. })
                if state.focused && is_press(key) =>
            {
                self.press(state, By::Key, shell);
            }
            Event::Keyboard(keyboard::Event::KeyReleased { key, .. }) if is_press(key) => {
                self.release(state, By::Key, shell);
            }
            _ => {}
        }
    }

    fn draw(&self, state: &State, renderer: &mut iced::Renderer, bounds: Rectangle) {
        let side = self.look.px(RING);
        let inner = bounds.shrink(self.look.px(MARGIN));
        let top_left = Vector::new(inner.x, inner.y + (inner.height - side) / 2.0);
        let mut frame = canvas::Frame::new(renderer, Size::new(side, side));
        self.draw_ring(&mut frame, state);
        let ring = frame.into_geometry();
        renderer.with_translation(top_left, |renderer| {
            use iced::advanced::graphics::geometry::Renderer as _;
            renderer.draw_geometry(ring);
        });
        if state.focused {
            focus_ring(&self.look, renderer, inner.expand(self.look.px(10.0)), self.look.radius());
        }
    }

    fn pointer(&self, state: &State) -> mouse::Interaction {
        if state.live { mouse::Interaction::Pointer } else { mouse::Interaction::None }
    }
}

impl<M> Target<'_, M> {
    fn draw_ring(&self, frame: &mut canvas::Frame, state: &State) {
        let (look, colors) = (&self.look, self.look.colors());
        let center = Point::new(frame.width() / 2.0, frame.height() / 2.0);
        let width = look.px(11.0);
        let radius = frame.width() / 2.0 - width / 2.0 - look.px(1.0);
        let part = match state.stage {
            Stage::Idle | Stage::Pressed(_) => 0.0,
            Stage::Closing { part, .. } => part,
            Stage::Closed(_) => 1.0,
        };
        let track = canvas::Stroke::default().with_color(colors.edge).with_width(look.line());
        frame.stroke(&Path::circle(center, radius + width / 2.0), track);
        frame.stroke(&Path::circle(center, radius - width / 2.0), track);
        let disc = Path::circle(center, radius - width);
        if state.live {
            frame.fill(&disc, colors.accent);
        } else {
            frame.stroke(&disc, track);
        }
        if part > 0.0 {
            let top = Radians(-std::f32::consts::FRAC_PI_2);
            let arc = Path::new(|path| {
                path.arc(Arc {
                    center,
                    radius,
                    start_angle: top,
                    end_angle: top + Radians(std::f32::consts::TAU * part.max(0.01)),
                });
            });
            let stroke = canvas::Stroke::default()
                .with_color(colors.accent)
                .with_width(width)
                .with_line_cap(LineCap::Round);
            frame.stroke(&arc, stroke);
            if self.look.still {
                let left = (f32::from(STEPS) * (1.0 - part)).round() as u16;
                let size = look.px(34.0);
                frame.fill_text(centered(left.to_string(), center, size, colors.on_accent));
            }
        }
    }
}
