//! Drawing the unit itself: ground, walls, cab, wheels, doors, awning.

use iced::widget::canvas::{Frame, LineCap, LineDash, LineJoin, Path, Stroke};
use iced::{Color, Point, Rectangle, Size};

use super::{BodyKind, Floor, PartKind, PlanLayout, PlanShape, furniture, ground};
use crate::kiosk::theme::Look;

/// A place on the unit in inches.
pub(super) type Inches = (f64, f64);

/// A frame to draw on in inches.
pub(super) struct Sheet<'f> {
    pub frame: &'f mut Frame,
    pub plan: &'f PlanLayout,
    pub look: Look,
}

impl Sheet<'_> {
    pub fn at(&self, place: Inches) -> Point {
        self.plan.place(place)
    }

    /// Inches in pixels.
    pub fn length(&self, inches: f64) -> f32 {
        inches as f32 * self.plan.scale
    }

    pub fn rectangle(&self, from: Inches, to: Inches) -> Rectangle {
        let (a, b) = (self.at(from), self.at(to));
        let corner = Point::new(a.x.min(b.x), a.y.min(b.y));
        Rectangle::new(corner, Size::new((a.x - b.x).abs(), (a.y - b.y).abs()))
    }

    /// A rectangle with corners of a radius in inches.
    pub fn rounded(&self, from: Inches, to: Inches, radius: f64) -> Path {
        let r = self.rectangle(from, to);
        let radius = self.length(radius).min(r.width / 2.0).min(r.height / 2.0);
        Path::rounded_rectangle(r.position(), r.size(), radius.into())
    }

    /// A line through places; `bend` gives quadratic curves: each control, then its end.
    pub fn outline(&self, start: Inches, parts: &[Part], closed: bool) -> Path {
        Path::new(|path| {
            path.move_to(self.at(start));
            for part in parts {
                match part {
                    To(end) => path.line_to(self.at(*end)),
                    Bend(control, end) => path.quadratic_curve_to(self.at(*control), self.at(*end)),
                }
            }
            if closed {
                path.close();
            }
        })
    }

    pub fn fill(&mut self, path: &Path, color: Color) {
        self.frame.fill(path, color);
    }

    /// A line of a width in pixels as written.
    pub fn stroke(&mut self, path: &Path, color: Color, width: f32) {
        let stroke = Stroke {
            line_cap: LineCap::Round,
            line_join: LineJoin::Round,
            ..Stroke::default().with_color(color).with_width(width * self.plan.unit)
        };
        self.frame.stroke(path, stroke);
    }

    pub fn dashed(&mut self, path: &Path, color: Color, width: f32, dash: &[f32]) {
        let dash: Vec<f32> = dash.iter().map(|part| part * self.plan.unit).collect();
        let stroke = Stroke {
            line_cap: LineCap::Round,
            line_dash: LineDash { segments: &dash, offset: 0 },
            ..Stroke::default().with_color(color).with_width(width * self.plan.unit)
        };
        self.frame.stroke(path, stroke);
    }
}

/// A stretch of an outline.
pub(super) enum Part {
    To(Inches),
    Bend(Inches, Inches),
}

use Part::{Bend, To};

/// Draws the unit with everything in it.
pub(super) fn unit(sheet: &mut Sheet<'_>, shape: &PlanShape, detailed: bool) {
    let outside = !sheet.plan.loop_line.is_empty();
    let parts = shape.parts();
    if outside {
        shade(sheet, &parts);
        ground::cord(sheet, shape);
        tow_tail(sheet, shape);
    }
    for wheel in parts.iter().filter(|part| part.kind == PartKind::Wheel) {
        let tire = sheet.rounded(wheel.from, wheel.to, 3.0);
        sheet.fill(&tire, sheet.look.colors().ink);
    }
    match shape.kind {
        BodyKind::ClassA => class_a(sheet, shape),
        BodyKind::ClassC => class_c(sheet, shape),
        BodyKind::ClassB => class_b(sheet, shape),
        BodyKind::Trailer => trailer(sheet, shape),
    }
    slides(sheet, &parts);
    // What stands below the floor shows in dashes, as behind an awning or a slide-out.
    for wheel in parts.iter().filter(|part| part.kind == PartKind::Wheel) {
        let tire = sheet.rounded(wheel.from, wheel.to, 3.0);
        sheet.dashed(&tire, sheet.look.colors().edge, 1.0, &[3.0, 4.0]);
    }
    if detailed {
        let strong = sheet.plan.floor == Floor::Inside;
        for room in &shape.rooms {
            furniture::draw(sheet, shape, room, strong);
        }
    }
    awning_case(sheet, shape);
    openings(sheet, &parts);
}

fn walls(sheet: &mut Sheet<'_>, outline: &Path) {
    let colors = sheet.look.colors();
    sheet.fill(outline, colors.leaf);
    sheet.stroke(outline, colors.ink, 3.0);
}

/// One box from nose to rear, the windshield across the whole nose.
fn class_a(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let colors = sheet.look.colors();
    let half = shape.width / 2.0;
    for side in [-1.0, 1.0] {
        let arm = sheet.rounded((side * half * 0.92, 4.0), (side * (half + 8.0), 10.0), 2.0);
        sheet.fill(&arm, colors.ink);
    }
    let body = sheet.rounded((-half, 0.0), (half, shape.length), 6.0);
    walls(sheet, &body);
    let glass = sheet.outline((-half * 0.88, 9.0), &[Bend((0.0, 3.0), (half * 0.88, 9.0))], false);
    sheet.stroke(&glass, colors.ink, 2.0);
}

fn class_c(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let colors = sheet.look.colors();
    let (half, end) = (shape.width / 2.0, shape.cab_end());
    // Mirrors, then the hood and the cab.
    for side in [-1.0, 1.0] {
        let arm = sheet.rounded((side * half * 0.78, end - 20.0), (side * (half + 5.0), end - 15.0), 2.0);
        sheet.fill(&arm, colors.ink);
    }
    let cab = sheet.outline(
        (-half * 0.82, end),
        &[
            To((-half * 0.78, 14.0)),
            Bend((-half * 0.74, 3.0), (-half * 0.5, 1.5)),
            Bend((0.0, -1.5), (half * 0.5, 1.5)),
            Bend((half * 0.74, 3.0), (half * 0.78, 14.0)),
            To((half * 0.82, end)),
        ],
        true,
    );
    sheet.fill(&cab, colors.wash);
    sheet.stroke(&cab, colors.ink, 3.0);
    let hood = end * 0.42;
    let glass = sheet.outline(
        (-half * 0.72, hood + 8.0),
        &[Bend((0.0, hood - 10.0), (half * 0.72, hood + 8.0))],
        false,
    );
    sheet.stroke(&glass, colors.ink, 2.0);
    let body = sheet.rounded((-half, end - 8.0), (half, shape.length), 7.0);
    walls(sheet, &body);
    if let Some(from) = shape.bed_over_cab() {
        let over = sheet.outline(
            (-half, end - 8.0),
            &[
                To((-half, from + 12.0)),
                Bend((-half, from), (-half + 12.0, from)),
                To((half - 12.0, from)),
                Bend((half, from), (half, from + 12.0)),
                To((half, end - 8.0)),
            ],
            false,
        );
        sheet.dashed(&over, colors.edge, 2.0, &[6.0, 6.0]);
    }
}

fn class_b(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let colors = sheet.look.colors();
    let (half, end) = (shape.width / 2.0, shape.length);
    for side in [-1.0, 1.0] {
        let arm = sheet.rounded((side * half * 0.9, 46.0), (side * (half + 8.0), 53.0), 3.0);
        sheet.fill(&arm, colors.ink);
    }
    let body = sheet.outline(
        (-half + 4.0, end),
        &[
            Bend((-half, end), (-half, end - 4.0)),
            To((-half, 40.0)),
            Bend((-half * 0.98, 12.0), (-half * 0.66, 4.0)),
            Bend((0.0, -4.0), (half * 0.66, 4.0)),
            Bend((half * 0.98, 12.0), (half, 40.0)),
            To((half, end - 4.0)),
            Bend((half, end), (half - 4.0, end)),
        ],
        true,
    );
    walls(sheet, &body);
    let hood = sheet.outline(
        (-half * 0.88, 42.0),
        &[
            Bend((0.0, 24.0), (half * 0.88, 42.0)),
            To((half * 0.8, 24.0)),
            Bend((half * 0.66, 8.0), (half * 0.5, 7.0)),
            Bend((0.0, 1.0), (-half * 0.5, 7.0)),
            Bend((-half * 0.66, 8.0), (-half * 0.8, 24.0)),
        ],
        true,
    );
    sheet.fill(&hood, colors.wash);
    let glass = sheet.outline((-half * 0.88, 42.0), &[Bend((0.0, 24.0), (half * 0.88, 42.0))], false);
    sheet.stroke(&glass, colors.ink, 2.0);
}

fn trailer(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let colors = sheet.look.colors();
    let (half, tongue) = (shape.width / 2.0, shape.tongue);
    let frame = sheet.outline((-half * 0.62, 4.0), &[To((0.0, -tongue)), To((half * 0.62, 4.0))], false);
    sheet.stroke(&frame, colors.ink, 4.0);
    // The cylinders stand in the A of the tongue.
    let sides: &[f64] = if shape.cylinders { &[-1.0, 1.0] } else { &[] };
    for side in sides {
        let cylinder = Path::circle(sheet.at((side * 8.0, -tongue * 0.3)), sheet.length(6.5));
        sheet.fill(&cylinder, colors.leaf);
        sheet.stroke(&cylinder, colors.ink, 2.0);
    }
    let coupler = Path::circle(sheet.at((0.0, -tongue)), sheet.length(4.5).max(3.0 * sheet.plan.unit));
    sheet.fill(&coupler, colors.ink);
    let body = sheet.rounded((-half, 0.0), (half, shape.length), 9.0);
    walls(sheet, &body);
}

/// A slide-out as it is out, and in dashes the room that it takes inside when it is in.
fn slides(sheet: &mut Sheet<'_>, parts: &[super::Part]) {
    let colors = sheet.look.colors();
    for part in parts {
        match part.kind {
            PartKind::SlideOut => {
                let room = sheet.rounded(part.from, part.to, 3.0);
                sheet.fill(&room, colors.leaf);
                sheet.stroke(&room, colors.ink, 3.0);
                // Its floor goes on inside: no wall between.
                let inner = if part.middle().0 < 0.0 { part.to.0 } else { part.from.0 };
                let open = sheet.outline((inner, part.from.1 + 3.0), &[To((inner, part.to.1 - 3.0))], false);
                sheet.stroke(&open, colors.leaf, 4.5);
            }
            PartKind::SlideIn => {
                let room = sheet.rounded(part.from, part.to, 3.0);
                sheet.dashed(&room, colors.edge, 1.5, &[5.0, 6.0]);
            }
            _ => {}
        }
    }
}

/// The cloth of the awning as it reaches out, its arms, and the shade below it.
fn shade(sheet: &mut Sheet<'_>, parts: &[super::Part]) {
    let colors = sheet.look.colors();
    for part in parts.iter().filter(|part| part.kind == PartKind::Awning) {
        let (from, to) = (part.from, part.to);
        let drop = 5.0;
        let below = sheet.rounded((from.0, from.1 + drop), (to.0, to.1 + drop), 2.0);
        sheet.fill(&below, Color { a: 0.12, ..colors.ink });
        let cloth = sheet.rounded(from, to, 2.0);
        sheet.fill(&cloth, Color { a: 0.75, ..colors.wash });
        // Every second strip of the cloth is darker.
        let strips = ((to.1 - from.1) / 24.0).clamp(1.0, 40.0).round();
        let wide = (to.1 - from.1) / strips;
        for strip in (0..strips as u32).filter(|strip| strip % 2 == 1) {
            let y = from.1 + wide * f64::from(strip);
            let strip = sheet.rounded((from.0, y), (to.0, y + wide), 0.0);
            sheet.fill(&strip, Color { a: 0.45, ..colors.line });
        }
        sheet.stroke(&cloth, colors.edge, 2.0);
    }
}

/// The case of the awning on the wall.
fn awning_case(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let Some(awning) = &shape.awning else { return };
    let sign = awning.side.sign();
    let wall = sign * (shape.width / 2.0 + 1.0);
    let case = sheet.rounded((wall, awning.from_y), (wall + sign * 5.0, awning.to_y), 2.5);
    sheet.fill(&case, sheet.look.colors().edge);
}

/// What pulls a trailer: its tail, hinted at.
fn tow_tail(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    if shape.kind != BodyKind::Trailer {
        return;
    }
    let colors = sheet.look.colors();
    let (ball, half) = (-shape.tongue, shape.width * 0.4);
    let bumper = ball - 12.0;
    let tail = sheet.outline(
        (-half, bumper - 40.0),
        &[
            To((-half, bumper - 10.0)),
            Bend((-half, bumper), (-half + 10.0, bumper)),
            To((half - 10.0, bumper)),
            Bend((half, bumper), (half, bumper - 10.0)),
            To((half, bumper - 40.0)),
        ],
        false,
    );
    sheet.fill(&tail, Color { a: 0.6, ..colors.wash });
    sheet.dashed(&tail, colors.edge, 2.5, &[7.0, 7.0]);
    let mount = sheet.outline((0.0, ball), &[To((0.0, bumper))], false);
    sheet.stroke(&mount, colors.edge, 5.0);
}

fn openings(sheet: &mut Sheet<'_>, parts: &[super::Part]) {
    let colors = sheet.look.colors();
    for part in parts {
        match part.kind {
            PartKind::Door => {
                let leaf = sheet.rounded(part.from, part.to, 1.5);
                sheet.fill(&leaf, colors.accent);
            }
            PartKind::Window => {
                let glass = sheet.rounded(part.from, part.to, 1.0);
                sheet.fill(&glass, colors.leaf);
                sheet.stroke(&glass, colors.ink, 1.5);
            }
            _ => {}
        }
    }
}
