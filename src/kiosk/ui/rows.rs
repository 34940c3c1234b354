//! Rows of a table of which one is chosen: by key, wheel, a finger that pulls, a press. The table is one target; it
//! shows as many rows as it is given, and asks for others by telling what was done.

use iced::advanced::widget::{Id, Operation, operation::Focusable};
use iced::advanced::{Shell, mouse};
use iced::widget::{Column, container};
use iced::{Event, Length, Point, Rectangle, keyboard, touch, window};

use super::Element;
use super::around::{Around, Behavior, Input};
use super::tap::{By, Pressable, SLIP, focus_ring, is_press};
use crate::kiosk::theme::{Look, style};

/// What was done on a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowsEvent {
    /// Another number of rows fits now.
    Laid,
    /// The row at this place was pressed, counted from the top one that is shown.
    Pressed(usize),
    /// The chosen row is to be opened.
    Opened,
    /// Another row is to be chosen.
    Step(RowStep),
    /// Rows are to move by so many: more is further down.
    Moved(i32),
}

/// Where to from the chosen row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowStep {
    /// The row above.
    Up,
    /// The row below.
    Down,
    /// As many rows up as are shown.
    PageUp,
    /// As many rows down as are shown.
    PageDown,
    /// The first row of all.
    First,
    /// The last row of all.
    Last,
}

/// Rows of one height below each other, as many as `fits` or fewer; `chosen` is the place of the chosen one among them.
pub fn rows<'a, M: 'a>(
    look: &Look,
    id: &'static str,
    (height, fits): (f32, usize),
    rows: Vec<Element<'a, M>>,
    chosen: Option<usize>,
    tell: impl Fn(RowsEvent) -> M + 'a,
) -> Element<'a, M> {
    let count = rows.len();
    let (line, edge, leaf) = (look.line(), look.colors().edge, look.colors().leaf);
    let ground = style::ground(look, leaf, edge);
    let content = container(Column::with_children(rows).width(Length::Fill)).padding(line);
    let content = content.width(Length::Fill).style(move |_| ground);
    let behavior = Rows { look: *look, id, height, fits, count, chosen, tell: Box::new(tell) };
    Element::new(Around { content: content.into(), margin: 0.0, behavior })
}

struct Rows<'a, M> {
    look: Look,
    id: &'static str,
    height: f32,
    fits: usize,
    count: usize,
    chosen: Option<usize>,
    tell: Box<dyn Fn(RowsEvent) -> M + 'a>,
}

#[derive(Default)]
struct State {
    focused: bool,
    drawn: bool,
    /// What presses, where it began, and whether it has begun to pull.
    press: Option<(By, Point, bool)>,
    /// How far a finger has pulled, or a wheel turned, since rows last moved, in pixels.
    pulled: f32,
    /// Where the finger was.
    last: f32,
    /// How many rows fitted when that was last told.
    laid: Option<usize>,
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

impl<M> Rows<'_, M> {
    /// Whole rows in what has been pulled; the rest stays.
    fn whole(&self, state: &mut State) -> Option<RowsEvent> {
        let rows = (state.pulled / self.height.max(1.0)).trunc();
        state.pulled -= rows * self.height;
        (rows != 0.0).then_some(RowsEvent::Moved(rows as i32))
    }

    fn place(&self, bounds: Rectangle, at: Point) -> Option<RowsEvent> {
        let row = ((at.y - bounds.y - self.look.line()) / self.height.max(1.0)).floor();
        (row >= 0.0 && (row as usize) < self.count).then_some(RowsEvent::Pressed(row as usize))
    }

    fn key(state: &State, key: &keyboard::Key) -> Option<RowsEvent> {
        use keyboard::key::Named;
        let keyboard::Key::Named(named) = key else { return None };
        Some(match named {
            Named::ArrowUp => RowsEvent::Step(RowStep::Up),
            Named::ArrowDown => RowsEvent::Step(RowStep::Down),
            Named::PageUp => RowsEvent::Step(RowStep::PageUp),
            Named::PageDown => RowsEvent::Step(RowStep::PageDown),
            Named::Home => RowsEvent::Step(RowStep::First),
            Named::End => RowsEvent::Step(RowStep::Last),
            _ if state.focused && is_press(key) => RowsEvent::Opened,
            _ => return None,
        })
    }

    fn told(&self, state: &mut State, input: &Input<'_>) -> Option<RowsEvent> {
        let slip = self.look.px(SLIP);
        let over = || input.cursor.position_over(input.bounds);
        match input.event {
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) => {
                state.press = over().filter(|_| state.press.is_none()).map(|at| (By::Mouse, at, false));
                None
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) => {
                let (By::Mouse, from, _) = state.press.take()? else { return None };
                over().filter(|at| at.distance(from) <= slip).and_then(|at| self.place(input.bounds, at))
            }
            Event::Mouse(mouse::Event::WheelScrolled { delta }) => {
                let _ = over()?;
                state.pulled += match delta {
                    mouse::ScrollDelta::Lines { y, .. } => -y * self.height,
                    mouse::ScrollDelta::Pixels { y, .. } => -y,
                };
                self.whole(state)
            }
            Event::Touch(touch::Event::FingerPressed { id, .. }) => {
                if let (None, Some(at)) = (state.press, over()) {
                    state.press = Some((By::Finger(*id), at, false));
                    (state.pulled, state.last) = (0.0, at.y);
                }
                None
            }
            Event::Touch(touch::Event::FingerMoved { id, position }) => {
                let (by, from, pulls) = state.press.as_mut()?;
                if *by != By::Finger(*id) {
                    return None;
                }
                *pulls |= from.distance(*position) > slip;
                let pulls = *pulls;
                if pulls {
                    state.pulled += state.last - position.y;
                    state.last = position.y;
                }
                self.whole(state)
            }
            Event::Touch(touch::Event::FingerLifted { id, position }) => {
                let (by, _, pulls) = state.press?;
                if by != By::Finger(*id) {
                    return None;
                }
                state.press = None;
                if pulls { None } else { self.place(input.bounds, *position) }
            }
            Event::Touch(touch::Event::FingerLost { id, .. }) => {
                state.press = state.press.filter(|(by, ..)| *by != By::Finger(*id));
                None
            }
            Event::Keyboard(keyboard::Event::KeyPressed { key, .. }) => Self::key(state, key),
            _ => None,
        }
    }
}

impl<M> Behavior<M> for Rows<'_, M> {
    type State = State;

    fn operate(&self, state: &mut State, bounds: Rectangle, operation: &mut dyn Operation) {
        let id = Id::new(self.id);
        operation.custom(Some(&id), bounds, &mut Pressable::new(self.height.min(self.look.target())));
        operation.focusable(Some(&id), bounds, state);
    }

    fn handle(&self, state: &mut State, input: &Input<'_>, shell: &mut Shell<'_, M>) {
        let begins = matches!(
            input.event,
            Event::Mouse(mouse::Event::ButtonPressed(_)) | Event::Touch(touch::Event::FingerPressed { .. })
        );
        if begins {
            // A press anywhere ends the way by keyboard.
            state.focused = false;
        }
        let told = if input.captured { None } else { self.told(state, input) };
        if let Some(event) = told {
            shell.publish((self.tell)(event));
            shell.capture_event();
        }
        if let Event::Window(window::Event::RedrawRequested(_)) = input.event {
            state.drawn = state.focused;
            if state.laid != Some(self.fits) {
                state.laid = Some(self.fits);
                shell.publish((self.tell)(RowsEvent::Laid));
            }
        } else if state.drawn != state.focused {
            shell.request_redraw();
        }
    }

    fn draw(&self, state: &State, renderer: &mut iced::Renderer, bounds: Rectangle) {
        if !state.focused {
            return;
        }
        // The ring lies around the row that Enter opens.
        let row = self.chosen.map_or(bounds, |chosen| Rectangle {
            y: bounds.y + self.look.line() + self.height * chosen as f32,
            height: self.height,
            ..bounds
        });
        focus_ring(&self.look, renderer, row, self.look.radius());
    }

    fn pointer(&self, _state: &State) -> mouse::Interaction {
        mouse::Interaction::Pointer
    }
}
