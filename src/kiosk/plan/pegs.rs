//! Drawing the line walked and its pegs. States differ in shape, never in color alone.

use iced::widget::canvas::{Frame, LineCap, LineDash, LineJoin, Path, Stroke, path::Arc};
use iced::{Point, Radians, Rectangle, Size, Vector};

use super::layout::DRAWN;
use super::{PegPlace, PegState, PlanLayout, PlanMark};
use crate::kiosk::theme::Look;
use crate::kiosk::ui::symbol::{self, Symbol, centered};

/// The line walked: dots, and solid where one has been.
pub(super) fn line(frame: &mut Frame, look: &Look, plan: &PlanLayout) {
    let (colors, unit) = (look.colors(), plan.unit);
    // Inside, where the line crosses furniture, it steps back.
    let weight = if plan.loop_line.is_empty() { 0.75 } else { 1.0 };
    let dots = [0.1 * unit, 8.0 * unit];
    let dotted = Stroke {
        line_cap: LineCap::Round,
        line_dash: LineDash { segments: &dots, offset: 0 },
        ..Stroke::default().with_color(colors.accent).with_width(3.5 * weight * unit)
    };
    for way in std::iter::once(&plan.loop_line).chain(&plan.ways) {
        frame.stroke(&open(way), dotted);
    }
    for walked in &plan.walked {
        let solid = Stroke {
            line_cap: LineCap::Round,
            line_join: LineJoin::Round,
            ..Stroke::default().with_color(colors.accent).with_width(4.0 * weight * unit)
        };
        frame.stroke(&open(walked), solid);
    }
}

fn open(points: &[Point]) -> Path {
    Path::new(|path| {
        for (index, point) in points.iter().enumerate() {
            if index == 0 {
                path.move_to(*point);
            } else {
                path.line_to(*point);
            }
        }
    })
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

/// The two who walk, from above: the agent filled, the renter not.
pub(super) fn people(frame: &mut Frame, look: &Look, plan: &PlanLayout) {
    let Some([agent, renter]) = plan.people else { return };
    let (colors, unit) = (look.colors(), plan.unit);
    let along = (agent.x - renter.x).abs() > (agent.y - renter.y).abs();
    for (at, fill) in [(agent, colors.ink), (renter, colors.leaf)] {
        let (long, short) = (11.0 * unit, 6.5 * unit);
        let (x, y) = if along { (long, short) } else { (short, long) };
        let shoulders = Path::rounded_rectangle(
            Point::new(at.x - x, at.y - y),
            Size::new(x * 2.0, y * 2.0),
            (short * 0.95).into(),
        );
        let head = Path::circle(at, 5.5 * unit);
        let edge = Stroke::default().with_color(colors.ink).with_width(2.0 * unit);
        let back = Stroke::default().with_color(colors.leaf).with_width(5.0 * unit);
        frame.stroke(&shoulders, back);
        frame.fill(&shoulders, fill);
        frame.stroke(&shoulders, edge);
        frame.fill(&head, colors.leaf);
        frame.stroke(&head, edge);
    }
}

/// All pegs with their leaders.
pub(super) fn pegs(frame: &mut Frame, look: &Look, plan: &PlanLayout) {
    for peg in &plan.pegs {
        leader(frame, look, plan, peg);
    }
    for peg in &plan.pegs {
        draw(frame, look, plan.unit, peg);
    }
}

/// A thin line to the true point, with a dot there, where the peg lies aside.
fn leader(frame: &mut Frame, look: &Look, plan: &PlanLayout, peg: &PegPlace) {
    let (colors, unit) = (look.colors(), plan.unit);
    if peg.center.distance(peg.point) < DRAWN / 2.0 * unit {
        return;
    }
    let line = Stroke::default().with_color(colors.ink).with_width(1.5 * unit);
    frame.stroke(&Path::line(peg.center, peg.point), line);
    frame.fill(&Path::circle(peg.point, 4.0 * unit), colors.ink);
}

fn draw(frame: &mut Frame, look: &Look, unit: f32, peg: &PegPlace) {
    let colors = look.colors();
    let (center, radius) = (peg.center, DRAWN / 2.0 * unit);
    let edge = Stroke::default().with_color(colors.ink).with_width(2.5 * unit);
    let disc = Path::circle(center, radius - unit);
    let number = match peg.state {
        PegState::Open => {
            frame.fill(&disc, colors.leaf);
            frame.stroke(&disc, edge);
            colors.ink
        }
        PegState::Here | PegState::Chosen => {
            let ring = Path::circle(center, radius + 6.0 * unit);
            frame.fill(&ring, colors.leaf);
            frame.stroke(&ring, Stroke::default().with_color(colors.accent).with_width(4.0 * unit));
            frame.fill(&Path::circle(center, radius), colors.ink);
            colors.leaf
        }
        PegState::PartDone => {
            frame.fill(&disc, colors.leaf);
            frame.fill(&lower_half(center, radius - unit), colors.half);
            frame.stroke(&disc, edge);
            colors.ink
        }
        PegState::Done => {
            frame.fill(&Path::circle(center, radius), colors.accent);
            colors.on_accent
        }
        PegState::Skipped => {
            let side = radius * 1.75;
            let square = Path::rectangle(
                Point::new(center.x - side / 2.0, center.y - side / 2.0),
                Size::new(side, side),
            );
            frame.fill(&square, colors.leaf);
            let dash = [4.0 * unit, 4.0 * unit];
            frame.stroke(&square, Stroke { line_dash: LineDash { segments: &dash, offset: 0 }, ..edge });
            colors.ink
        }
        PegState::Unanswered => {
            frame.fill(&disc, colors.leaf);
            frame.stroke(&disc, edge);
            colors.ink
        }
    };
    frame.fill_text(centered(peg.number.to_string(), center, 19.0 * unit, number));
    badge(frame, look, unit, peg);
}

fn lower_half(center: Point, radius: f32) -> Path {
    Path::new(|path| {
        path.move_to(Point::new(center.x + radius, center.y));
        path.arc(Arc { center, radius, start_angle: Radians(0.0), end_angle: Radians(std::f32::consts::PI) });
        path.close();
    })
}

/// What stands at the upper right of a peg: a tick when done, a triangle when a caution waits.
fn badge(frame: &mut Frame, look: &Look, unit: f32, peg: &PegPlace) {
    let colors = look.colors();
    let at = peg.center + Vector::new(18.0 * unit, -18.0 * unit);
    match peg.state {
        PegState::Done => {
            let disc = Path::circle(at, 10.0 * unit);
            frame.fill(&disc, colors.leaf);
            frame.stroke(&disc, Stroke::default().with_color(colors.accent).with_width(2.0 * unit));
            let half = 6.5 * unit;
            let bounds = Rectangle::new(at - Vector::new(half, half), Size::new(half * 2.0, half * 2.0));
            symbol::draw(frame, Symbol::Tick, bounds, colors.accent, colors.leaf);
        }
        PegState::Unanswered => {
            let half = 12.0 * unit;
            let bounds = Rectangle::new(at - Vector::new(half, half), Size::new(half * 2.0, half * 2.0));
            let back = polygon(&[
                bounds.position() + Vector::new(half, -unit),
                bounds.position() + Vector::new(half * 2.0 + unit, half * 2.0),
                bounds.position() + Vector::new(-unit, half * 2.0),
            ]);
            frame.fill(&back, colors.leaf);
            symbol::draw(frame, Symbol::Alert, bounds, colors.ink, colors.leaf);
        }
        PegState::Open | PegState::Here | PegState::Chosen | PegState::PartDone | PegState::Skipped => {}
    }
}

/// Condition marks: a small cross with its number; the one that is looked for in a ring.
pub(super) fn marks(
    frame: &mut Frame,
    look: &Look,
    plan: &PlanLayout,
    marks: &[PlanMark],
    highlighted: Option<u16>,
) {
    let (colors, unit) = (look.colors(), plan.unit);
    let view = Rectangle::with_size(plan.size).shrink(10.0 * unit);
    for mark in marks {
        let at = plan.place(mark.at);
        // What is written would show beyond the edge of the view.
        if !view.contains(at) {
            continue;
        }
        let arm = 6.5 * unit;
        let cross = Path::new(|path| {
            for side in [-1.0, 1.0] {
                path.move_to(at + Vector::new(-arm, -arm * side));
                path.line_to(at + Vector::new(arm, arm * side));
            }
        });
        let line = |color, width: f32| Stroke {
            line_cap: LineCap::Round,
            ..Stroke::default().with_color(color).with_width(width * unit)
        };
        if highlighted == Some(mark.number) {
            frame.stroke(&Path::circle(at, 24.0 * unit), line(colors.leaf, 8.0));
            frame.stroke(&Path::circle(at, 24.0 * unit), line(colors.accent, 4.5));
        }
        frame.stroke(&cross, line(colors.leaf, 7.5));
        frame.stroke(&cross, line(colors.ink, 3.0));
        // The number stands where the view has room for it.
        let side = if at.x + 26.0 * unit > plan.size.width { -1.0 } else { 1.0 };
        let beside = at + Vector::new(16.0 * side * unit, 0.0);
        frame.fill(&Path::circle(beside, 9.0 * unit), colors.leaf);
        frame.fill_text(centered(mark.number.to_string(), beside, 16.0 * unit, colors.ink));
    }
}
