//! The pad to write on by finger, pen or mouse.
//!
//! Keep it out of anything that scrolls: there the position of a finger and the pad would not agree. The pad
//! gives shape only; time and pressure never leave it.

use iced::advanced::mouse;
use iced::widget::canvas::{self, Action, LineCap, LineJoin, Path};
use iced::{Event, Length, Point, Rectangle, Size, touch};

use super::{Element, drawing, symbol};
use crate::kiosk::theme::Look;

/// The width of the pad in its own units; heights are counted in the same unit, so that shapes keep.
pub const WIDTH: f32 = 1000.0;

/// More points than any stroke of a hand has; what comes after is dropped.
const MOST_POINTS: usize = 4096;

/// A place on the pad: `x` from 0 at the left to 1000 at the right, `y` from 0 at the top in the same unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct InkPoint {
    /// Across.
    pub x: u16,
    /// Down.
    pub y: u16,
}

/// What is written from touching the pad to leaving it.
pub type Stroke = Vec<InkPoint>;

/// What happens on the pad.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum InkEvent {
    /// A stroke has been finished; it has at least one point.
    StrokeDone(Stroke),
}

/// A pad that shows `strokes` and tells of new ones. It fills the space it is given.
pub fn ink<'a, M: 'a>(
    look: &Look,
    strokes: &'a [Stroke],
    answer: impl Fn(InkEvent) -> M + 'a,
) -> Element<'a, M> {
    canvas::Canvas::new(Pad { look: *look, strokes, answer: Box::new(answer) })
        .width(Length::Fill)
        .height(Length::Fill)
        .into()
}

/// Written strokes to look at, as large as the space allows.
pub fn ink_view<'a, M: 'a>(look: &Look, strokes: &'a [Stroke]) -> Element<'a, M> {
    let look = *look;
    drawing(Length::Fill, Length::Fill, move |frame| {
        for stroke in strokes {
            draw_stroke(&look, frame, stroke);
        }
    })
}

struct Pad<'a, M> {
    look: Look,
    strokes: &'a [Stroke],
    answer: Box<dyn Fn(InkEvent) -> M + 'a>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Pen {
    Mouse,
    Finger(touch::Finger),
}

#[derive(Default)]
struct State {
    pen: Option<Pen>,
    stroke: Stroke,
}

impl<M> Pad<'_, M> {
    fn begin(state: &mut State, pen: Pen, at: InkPoint) -> Option<Action<M>> {
        if state.pen.is_some() {
            return Some(Action::capture());
        }
        state.pen = Some(pen);
        state.stroke = vec![at];
        Some(Action::request_redraw().and_capture())
    }

    fn go_on(state: &mut State, pen: Pen, at: InkPoint) -> Option<Action<M>> {
        if state.pen != Some(pen) {
            return None;
        }
        if state.stroke.last() != Some(&at) && state.stroke.len() < MOST_POINTS {
            state.stroke.push(at);
        }
        Some(Action::request_redraw().and_capture())
    }

    fn end(&self, state: &mut State, pen: Pen) -> Option<Action<M>> {
        if state.pen != Some(pen) {
            return None;
        }
        state.pen = None;
        let stroke = std::mem::take(&mut state.stroke);
        Some(Action::publish((self.answer)(InkEvent::StrokeDone(stroke))).and_capture())
    }
}

/// A place in the window as a place on the pad, kept within it.
fn on_pad(at: Point, bounds: Rectangle) -> InkPoint {
    let unit = WIDTH / bounds.width.max(1.0);
    let x = ((at.x - bounds.x) * unit).round().clamp(0.0, WIDTH);
    let y = ((at.y - bounds.y) * unit).round().clamp(0.0, bounds.height.max(1.0) * unit);
    InkPoint { x: x as u16, y: y as u16 }
}

impl<M> canvas::Program<M> for Pad<'_, M> {
    type State = State;

    fn update(
        &self,
        state: &mut State,
        event: &Event,
        bounds: Rectangle,
        cursor: mouse::Cursor,
    ) -> Option<Action<M>> {
        match event {
            Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)) => {
                let at = cursor.position_over(bounds)?;
                Self::begin(state, Pen::Mouse, on_pad(at, bounds))
            }
            Event::Mouse(mouse::Event::CursorMoved { position }) => {
                Self::go_on(state, Pen::Mouse, on_pad(*position, bounds))
            }
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)) => self.end(state, Pen::Mouse),
            Event::Touch(touch::Event::FingerPressed { id, position }) if bounds.contains(*position) => {
                Self::begin(state, Pen::Finger(*id), on_pad(*position, bounds))
            }
            Event::Touch(touch::Event::FingerMoved { id, position }) => {
                Self::go_on(state, Pen::Finger(*id), on_pad(*position, bounds))
            }
            Event::Touch(touch::Event::FingerLifted { id, .. } | touch::Event::FingerLost { id, .. }) => {
                self.end(state, Pen::Finger(*id))
            }
            _ => None,
        }
    }

    fn draw(
        &self,
        state: &State,
        renderer: &iced::Renderer,
        _theme: &iced::Theme,
        bounds: Rectangle,
        _cursor: mouse::Cursor,
    ) -> Vec<canvas::Geometry> {
        let mut frame = canvas::Frame::new(renderer, bounds.size());
        self.draw_line(&mut frame);
        for stroke in self.strokes.iter().chain([&state.stroke]) {
            draw_stroke(&self.look, &mut frame, stroke);
        }
        vec![frame.into_geometry()]
    }

    fn mouse_interaction(&self, _: &State, bounds: Rectangle, cursor: mouse::Cursor) -> mouse::Interaction {
        if cursor.is_over(bounds) { mouse::Interaction::Crosshair } else { mouse::Interaction::None }
    }
}

impl<M> Pad<'_, M> {
    /// The line to sign on, with a cross at its start.
    fn draw_line(&self, frame: &mut canvas::Frame) {
        let (look, colors) = (&self.look, self.look.colors());
        let (y, inset) = (frame.height() * 0.72, frame.width() * 0.08);
        let line = Path::line(Point::new(inset, y), Point::new(frame.width() - inset, y));
        frame.stroke(&line, canvas::Stroke::default().with_color(colors.edge).with_width(look.line()));
        let side = look.px(18.0);
        let corner = Point::new(inset + look.px(2.0), y - side - look.px(8.0));
        symbol::cross_mark(frame, Rectangle::new(corner, Size::new(side, side)), colors.edge, look.px(3.0));
    }
}

fn draw_stroke(look: &Look, frame: &mut canvas::Frame, stroke: &[InkPoint]) {
    let unit = frame.width() / WIDTH;
    let at = |p: &InkPoint| Point::new(f32::from(p.x) * unit, f32::from(p.y) * unit);
    let ink = look.ink();
    let width = look.px(4.0);
    let Some((first, rest)) = stroke.split_first() else { return };
    if rest.is_empty() {
        frame.fill(&Path::circle(at(first), width * 0.6), ink);
        return;
    }
    // Curves through the middles of neighboring points: smooth, and never far from what was drawn.
    let path = Path::new(|path| {
        path.move_to(at(first));
        let mut last = at(first);
        for point in rest {
            let next = at(point);
            path.quadratic_curve_to(last, Point::new((last.x + next.x) / 2.0, (last.y + next.y) / 2.0));
            last = next;
        }
        path.line_to(last);
    });
    let pen = canvas::Stroke {
        line_cap: LineCap::Round,
        line_join: LineJoin::Round,
        ..canvas::Stroke::default().with_color(ink).with_width(width)
    };
    frame.stroke(&path, pen);
}
