//! The seats of a unit from near by, each as a disc with its number.

use iced::widget::canvas::{Frame, Path, Stroke};
use iced::widget::{Space, responsive};
use iced::{Length, Point, Rectangle, Size};

use super::{Floor, Orientation, PlanLayout, PlanShape, draw, layout, spread};
use crate::kiosk::theme::Look;
use crate::kiosk::ui::symbol::centered;
use crate::kiosk::ui::{Element, drawing, pinned, tap};

/// What is shown around the outermost seats, in inches.
const AROUND: f64 = 26.0;
/// Largest disc, in pixels as written.
const DISC: f32 = 48.0;

/// A seat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanSeat {
    /// Its number.
    pub number: u16,
    /// Its middle, in inches.
    pub at: (f64, f64),
    /// Whether somebody has it.
    pub taken: bool,
    /// Whether it is marked for child seats.
    pub child: bool,
}

/// Draws what marks a seat for child seats: a small figure in a disc.
pub fn child_mark(frame: &mut Frame, look: &Look, center: Point, side: f32) {
    let colors = look.colors();
    let edge = Stroke::default().with_color(colors.ink).with_width(look.line());
    let disc = Path::circle(center, side / 2.0);
    frame.fill(&disc, colors.leaf);
    frame.stroke(&disc, edge);
    let at = |x: f32, y: f32| Point::new(center.x + x * side, center.y + y * side);
    frame.fill(&Path::circle(at(0.0, -0.16), side * 0.14), colors.ink);
    let body = Path::new(|path| {
        path.move_to(at(0.0, -0.02));
        path.line_to(at(0.2, 0.3));
        path.line_to(at(-0.2, 0.3));
        path.close();
    });
    frame.fill(&body, colors.ink);
}

/// The part of the unit with the seats, as large as its space allows. A seat sends what `press` says of its position
/// among them, where seats lie far enough apart for a finger.
pub fn seats<'a, M: Clone + 'a>(
    look: &Look,
    shape: &'a PlanShape,
    seats: Vec<PlanSeat>,
    press: impl Fn(usize) -> Option<M> + 'a,
) -> Element<'a, M> {
    let look = *look;
    responsive(move |size| placed(&look, shape, size, &seats, &press)).into()
}

fn placed<'a, M: Clone + 'a>(
    look: &Look,
    shape: &'a PlanShape,
    size: Size,
    seats: &[PlanSeat],
    press: &impl Fn(usize) -> Option<M>,
) -> Element<'a, M> {
    let look = *look;
    let plan = around(shape, seats, size, look.scale);
    let places: Vec<(Point, PlanSeat)> = seats.iter().map(|seat| (plan.place(seat.at), *seat)).collect();
    let centers: Vec<Point> = places.iter().map(|(center, _)| *center).collect();
    let side = spread::smallest_gap(&centers).min(look.target());
    let disc = (side - look.px(4.0)).clamp(1.0, look.px(DISC));
    let presses = places.iter().enumerate().filter_map(|(at, (center, _))| {
        let message = press(at).filter(|_| side >= look.small_target())?;
        let corner = Point::new(center.x - side / 2.0, center.y - side / 2.0);
        let target = Space::new().width(side).height(side);
        let target = tap(&look, target, message).radius(side / 2.0).round();
        Some((Rectangle::new(corner, Size::new(side, side)), target.into()))
    });
    let presses: Vec<_> = presses.collect();
    let drawn = drawing(Length::Fill, Length::Fill, move |frame| {
        let (colors, size) = (look.colors(), frame.size());
        frame.fill(&Path::rectangle(Point::ORIGIN, size), colors.paper);
        let mut sheet = draw::Sheet { frame, plan: &plan, look };
        draw::unit(&mut sheet, shape, true);
        for (center, seat) in &places {
            let circle = Path::circle(*center, disc / 2.0);
            let edge = Stroke::default().with_color(colors.ink).with_width(look.line());
            let (ground, ink) =
                if seat.taken { (colors.ink, colors.leaf) } else { (colors.leaf, colors.ink) };
            frame.fill(&circle, ground);
            frame.stroke(&circle, edge);
            frame.fill_text(centered(seat.number.to_string(), *center, disc * 0.5, ink));
            if seat.child {
                let corner = Point::new(center.x + disc * 0.42, center.y - disc * 0.42);
                child_mark(frame, &look, corner, disc * 0.5);
            }
        }
    });
    let mut parts = vec![(Rectangle::with_size(size), drawn)];
    parts.extend(presses);
    pinned(size, parts)
}

/// The window onto the unit that holds all seats; the unit lies as it shows them larger.
fn around(shape: &PlanShape, seats: &[PlanSeat], size: Size, unit: f32) -> PlanLayout {
    let bound = |of: fn(&PlanSeat) -> f64| {
        let all = || seats.iter().map(of);
        (all().fold(f64::INFINITY, f64::min), all().fold(f64::NEG_INFINITY, f64::max))
    };
    let ((left, right), (front, rear)) = (bound(|s| s.at.0), bound(|s| s.at.1));
    let (across, along) = (right - left + 2.0 * AROUND, rear - front + 2.0 * AROUND);
    let (width, height) = (f64::from(size.width), f64::from(size.height));
    let upright = (width / across).min(height / along);
    let lying = (width / along).min(height / across);
    let (orientation, scale) =
        if upright >= lying { (Orientation::NoseUp, upright) } else { (Orientation::NoseLeft, lying) };
    let whole = layout(shape, &[], size, orientation, Floor::Inside, unit);
    let scale = (scale as f32).max(0.01);
    whole.zoomed(scale, (f64::midpoint(left, right), f64::midpoint(front, rear)))
}
