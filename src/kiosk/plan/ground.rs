//! The ground around the unit: grass, a gravel pitch, the side one stands on, and the post for the cord.

use iced::widget::canvas::{Frame, LineCap, LineJoin, Path, Stroke};
use iced::{Color, Point, Rectangle, Size};

use super::draw::{Inches, Part, Sheet};
use super::layout::{Edge, OFF};
use super::{PlanLayout, PlanShape};
use crate::kiosk::theme::Look;

/// From one tuft of grass to the next, and from one pebble to the next, in pixels as written.
const TUFTS: f32 = 30.0;
const PEBBLES: f32 = 21.0;
/// How far the gravel reaches beyond the line walked.
const BORDER: f32 = 22.0;
/// More of either than this is a plan without end: none is drawn.
const MOST: f32 = 120.0;

/// Draws the ground outside; inside there is none.
pub(super) fn draw(frame: &mut Frame, look: &Look, plan: &PlanLayout) {
    if plan.loop_line.is_empty() {
        return;
    }
    let (colors, unit) = (look.colors(), plan.unit);
    let whole = Rectangle::with_size(frame.size());
    frame.fill_rectangle(Point::ORIGIN, whole.size(), Color { a: 0.55, ..colors.tint });
    let border = BORDER * unit;
    let tufts = scattered(whole.size(), TUFTS * unit);
    let grass = Path::new(|path| {
        for at in tufts.into_iter().filter(|at| outside(&plan.loop_line, *at) > border + 6.0 * unit) {
            for (from, to) in
                [((-1.0, 0.0), (-4.5, -6.0)), ((0.0, 0.0), (0.0, -8.0)), ((1.0, 0.0), (4.5, -6.0))]
            {
                path.move_to(Point::new(at.x + from.0 * unit, at.y + from.1 * unit));
                path.line_to(Point::new(at.x + to.0 * unit, at.y + to.1 * unit));
            }
        }
    });
    stroke(frame, &grass, Color { a: 0.32, ..colors.accent }, 1.4 * unit);
    let pitch = polygon(&plan.loop_line);
    stroke(frame, &pitch, colors.paper, border * 2.0);
    frame.fill(&pitch, colors.paper);
    standing(frame, look, plan);
    let pebbles = scattered(whole.size(), PEBBLES * unit);
    let gravel = Path::new(|path| {
        for at in pebbles.into_iter().filter(|at| outside(&plan.loop_line, *at) < border - 3.0 * unit) {
            path.rectangle(at, Size::new(2.2 * unit, 2.2 * unit));
        }
    });
    frame.fill(&gravel, Color { a: 0.3, ..colors.edge });
}

/// The side one stands on.
fn standing(frame: &mut Frame, look: &Look, plan: &PlanLayout) {
    let Some(edge) = plan.standing() else { return };
    // The corners of the line run clockwise nose up, two to each side.
    let first = match edge {
        Edge::Right => 0,
        Edge::Rear => 2,
        Edge::Left => 4,
        Edge::Front => 6,
    };
    if let (Some(a), Some(b)) = (plan.loop_line.get(first), plan.loop_line.get(first + 1)) {
        stroke(frame, &Path::line(*a, *b), look.colors().tint, 56.0 * plan.unit);
    }
}

fn stroke(frame: &mut Frame, path: &Path, color: Color, width: f32) {
    let stroke = Stroke {
        line_cap: LineCap::Round,
        line_join: LineJoin::Round,
        ..Stroke::default().with_color(color).with_width(width)
    };
    frame.stroke(path, stroke);
}

/// Places without order, the same each time.
fn scattered(size: Size, step: f32) -> Vec<Point> {
    let count = |length: f32| (length / step.max(1.0)).min(MOST) as u32;
    let (columns, rows) = (count(size.width), count(size.height));
    let mut places = Vec::new();
    for row in 0..rows {
        for column in 0..columns {
            let seed =
                row.wrapping_mul(7919).wrapping_add(column.wrapping_mul(104_729)).wrapping_mul(2_654_435_761);
            let part = |shift: u32| f32::from((seed >> shift) as u8) / 255.0;
            // About half of the places stay bare.
            if part(8) < 0.5 {
                let (x, y) = (column as f32 + part(24), row as f32 + part(16));
                places.push(Point::new(x * step, y * step));
            }
        }
    }
    places
}

/// How far outside a line around, clockwise or not, a place lies; below zero within.
fn outside(line: &[Point], at: Point) -> f32 {
    let mut distance = f32::INFINITY;
    let mut within = false;
    for (a, b) in line.iter().zip(line.iter().skip(1)) {
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let length = (dx * dx + dy * dy).max(f32::EPSILON);
        let part = (((at.x - a.x) * dx + (at.y - a.y) * dy) / length).clamp(0.0, 1.0);
        distance = distance.min(at.distance(Point::new(a.x + dx * part, a.y + dy * part)));
        if (a.y > at.y) != (b.y > at.y) && at.x < a.x + (at.y - a.y) / (b.y - a.y) * dx {
            within = !within;
        }
    }
    if within { -distance } else { distance }
}

fn polygon(points: &[Point]) -> Path {
    Path::new(|path| {
        for (index, point) in points.iter().enumerate() {
            if index == 0 {
                path.move_to(*point);
            } else {
                path.line_to(*point);
            }
        }
        path.close();
    })
}

/// The cord from its hatch to the post at the rear corner of the pitch, between the wall and the line walked.
pub(super) fn cord(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let Some((x, y)) = shape.cord.filter(|_| !sheet.plan.loop_line.is_empty()) else { return };
    let (colors, unit) = (sheet.look.colors(), sheet.plan.unit);
    let off = f64::from(OFF * unit / sheet.plan.scale.max(f32::EPSILON));
    let sign = if x < 0.0 { -1.0 } else { 1.0 };
    let (from, to) = sheet.plan.extent;
    let wall = if x < 0.0 { from.0 } else { to.0 };
    let post: Inches = (wall + sign * off, to.1 + off);
    let lane = wall + sign * off * 0.53;
    let turn = to.1.max(y + off * 0.6);
    let line = sheet.outline(
        (x, y),
        &[
            Part::Bend((lane, y), (lane, (y + off * 0.5).min(turn))),
            Part::To((lane, turn)),
            Part::Bend((lane, post.1), post),
        ],
        false,
    );
    sheet.stroke(&line, colors.ink, 5.0);
    sheet.stroke(&line, colors.wash, 2.0);
    let (at, half) = (sheet.at(post), 11.0 * unit);
    let side = Size::new(half * 2.0, half * 2.0);
    let box_ = Path::rounded_rectangle(Point::new(at.x - half, at.y - half), side, (3.0 * unit).into());
    sheet.fill(&box_, colors.leaf);
    sheet.stroke(&box_, colors.ink, 2.5);
    // A spark.
    let spark = Path::new(|path| {
        path.move_to(Point::new(at.x + 2.0 * unit, at.y - 7.0 * unit));
        path.line_to(Point::new(at.x - 3.5 * unit, at.y + unit));
        path.line_to(Point::new(at.x + 3.0 * unit, at.y));
        path.line_to(Point::new(at.x - 2.0 * unit, at.y + 7.0 * unit));
    });
    sheet.stroke(&spark, colors.ink, 2.0);
}
