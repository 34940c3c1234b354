//! Drawing the line walked and its pegs. States differ in shape, never in color alone.

use iced::widget::canvas::{Frame, LineCap, LineDash, LineJoin, Path, Stroke, path::Arc};
use iced::{Point, Radians, Rectangle, Size, Vector};

use super::layout::{DRAWN, Edge};
use super::{PegPlace, PegState, PlanLayout, PlanMark};
use crate::kiosk::theme::Look;
use crate::kiosk::ui::symbol::{self, Symbol, centered};

/// The ground inside the line, with the side one stands on in the tint.
pub(super) fn ground(frame: &mut Frame, look: &Look, plan: &PlanLayout) {
    let colors = look.colors();
    if plan.loop_line.is_empty() {
        return;
    }
    frame.fill(&polygon(&plan.loop_line), colors.paper);
    let Some(edge) = plan.standing() else { return };
    // The corners of the line run clockwise nose up, two to each side.
    let first = match edge {
        Edge::Right => 0,
        Edge::Rear => 2,
        Edge::Left => 4,
        Edge::Front => 6,
    };
    if let (Some(a), Some(b)) = (plan.loop_line.get(first), plan.loop_line.get(first + 1)) {
        let band = Path::line(*a, *b);
        let stroke = Stroke {
            line_cap: LineCap::Round,
            ..Stroke::default().with_color(colors.tint).with_width(56.0 * plan.unit)
        };
        frame.stroke(&band, stroke);
    }
}

/// The line walked: dots, and solid where one has been.
pub(super) fn line(frame: &mut Frame, look: &Look, plan: &PlanLayout) {
    let (colors, unit) = (look.colors(), plan.unit);
    // Inside, where the line crosses furniture, it steps back.
    let weight = if plan.loop_line.is_empty() { 0.65 } else { 1.0 };
    let dots = [0.1 * unit, 8.0 * unit];
    let dotted = Stroke {
        line_cap: LineCap::Round,
        line_dash: LineDash { segments: &dots, offset: 0 },
        ..Stroke::default().with_color(colors.accent).with_width(3.5 * weight * unit)
    };
    frame.stroke(&open(&plan.loop_line), dotted);
    if plan.loop_line.is_empty() {
        let centers: Vec<_> = plan.pegs.iter().map(|peg| peg.center).collect();
        frame.stroke(&open(&centers), dotted);
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
        PegState::Here => {
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
    let at = peg.center + Vector::new(17.0 * unit, -16.0 * unit);
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
        PegState::Open | PegState::Here | PegState::PartDone | PegState::Skipped => {}
    }
}

/// Condition marks: a small numbered square standing on its corner.
pub(super) fn marks(frame: &mut Frame, look: &Look, plan: &PlanLayout, marks: &[PlanMark]) {
    let (colors, unit) = (look.colors(), plan.unit);
    for mark in marks {
        let at = plan.place(mark.at);
        let half = 17.0 * unit;
        let diamond = polygon(&[
            at + Vector::new(0.0, -half),
            at + Vector::new(half, 0.0),
            at + Vector::new(0.0, half),
            at + Vector::new(-half, 0.0),
        ]);
        frame.fill(&diamond, colors.leaf);
        frame.stroke(&diamond, Stroke::default().with_color(colors.ink).with_width(2.5 * unit));
        frame.fill_text(centered(mark.number.to_string(), at, 16.0 * unit, colors.ink));
    }
}
