//! Drawing the unit itself: ground, walls, cab, wheels, doors, awning.

use iced::widget::canvas::{Frame, LineCap, LineDash, LineJoin, Path, Stroke};
use iced::{Color, Point, Rectangle, Size};

use super::{BodyKind, Floor, PlanLayout, PlanShape, Side, furniture};
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

/// A part of an outline.
pub(super) enum Part {
    To(Inches),
    Bend(Inches, Inches),
}

use Part::{Bend, To};

/// How long the cab of a house on a truck is: to a step behind the front axle.
fn cab_end(shape: &PlanShape) -> f64 {
    let front = shape.axles().first().copied().unwrap_or(30.0);
    (front + 34.0).min(shape.length * 0.4)
}

/// Draws the unit with everything in it.
pub(super) fn unit(sheet: &mut Sheet<'_>, shape: &PlanShape, detailed: bool) {
    let shade = !sheet.plan.loop_line.is_empty();
    awning(sheet, shape, shade);
    wheels(sheet, shape);
    slides(sheet, shape);
    match shape.kind {
        BodyKind::ClassA => class_a(sheet, shape),
        BodyKind::ClassC => class_c(sheet, shape),
        BodyKind::ClassB => class_b(sheet, shape),
        BodyKind::Trailer => trailer(sheet, shape),
    }
    if detailed {
        let strong = sheet.plan.floor == Floor::Inside;
        for room in &shape.rooms {
            furniture::draw(sheet, shape, room, strong);
        }
    }
    doors(sheet, shape);
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
    let (half, end) = (shape.width / 2.0, cab_end(shape));
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
    let hood = end * 0.5;
    let glass = sheet.outline(
        (-half * 0.72, hood + 8.0),
        &[Bend((0.0, hood - 10.0), (half * 0.72, hood + 8.0))],
        false,
    );
    sheet.stroke(&glass, colors.ink, 2.0);
    let body = sheet.rounded((-half, end - 8.0), (half, shape.length), 7.0);
    walls(sheet, &body);
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
    for side in [-1.0, 1.0] {
        let cylinder = Path::circle(sheet.at((side * 8.0, -tongue * 0.3)), sheet.length(6.5));
        sheet.fill(&cylinder, colors.leaf);
        sheet.stroke(&cylinder, colors.ink, 2.0);
    }
    let coupler = Path::circle(sheet.at((0.0, -tongue)), sheet.length(4.5).max(3.0 * sheet.plan.unit));
    sheet.fill(&coupler, colors.ink);
    let body = sheet.rounded((-half, 0.0), (half, shape.length), 9.0);
    walls(sheet, &body);
}

fn wheels(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let ink = sheet.look.colors().ink;
    let (half, axles) = (shape.width / 2.0, shape.axles());
    for (index, y) in axles.iter().enumerate() {
        let rear = index > 0;
        for side in [-1.0, 1.0] {
            // A truck's cab is narrower than its house.
            let narrow = shape.kind == BodyKind::ClassC && !rear;
            let outer = if narrow { half * 0.8 + 4.0 } else { half + 3.5 };
            let tire = sheet.rounded((side * (outer - 10.0), y - 14.0), (side * outer, y + 14.0), 3.0);
            sheet.fill(&tire, ink);
            if rear && shape.dual_rear {
                let inner =
                    sheet.rounded((side * (outer - 22.0), y - 14.0), (side * (outer - 12.0), y + 14.0), 3.0);
                sheet.fill(&inner, ink);
            }
        }
    }
}

fn slides(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let colors = sheet.look.colors();
    for slide in &shape.slides {
        let sign = slide.side.sign();
        let half = shape.width / 2.0;
        let room = sheet.rounded(
            (sign * (half - 4.0), slide.from_y),
            (sign * (half + slide.reach), slide.to_y),
            3.0,
        );
        sheet.fill(&room, colors.leaf);
        sheet.dashed(&room, colors.ink, 2.0, &[6.0, 6.0]);
    }
}

/// The case of the awning on the wall and, with `shade`, the cloth as it reaches out.
fn awning(sheet: &mut Sheet<'_>, shape: &PlanShape, shade: bool) {
    let Some(awning) = &shape.awning else { return };
    let colors = sheet.look.colors();
    let sign = awning.side.sign();
    let wall = sign * (shape.width / 2.0 + 1.0);
    let edge = wall + sign * awning.reach;
    if shade {
        let cloth = sheet.rounded((wall, awning.from_y), (edge, awning.to_y), 2.0);
        sheet.fill(&cloth, Color { a: 0.6, ..colors.wash });
        // Stripes of the cloth, and the arms.
        let stripes = ((awning.to_y - awning.from_y) / 16.0).clamp(0.0, 60.0) as u8;
        for stripe in 0..stripes {
            let y = awning.from_y + 16.0 * f64::from(stripe);
            let stripe = Path::line(sheet.at((wall, y)), sheet.at((edge, y)));
            sheet.stroke(&stripe, Color { a: 0.6, ..colors.line }, 1.5);
        }
        for y in [awning.from_y, awning.to_y] {
            let arm = Path::line(sheet.at((wall, y)), sheet.at((edge, y)));
            sheet.stroke(&arm, colors.edge, 2.0);
        }
    }
    let case = sheet.rounded((wall, awning.from_y - 2.0), (wall + sign * 5.0, awning.to_y + 2.0), 2.5);
    sheet.fill(&case, colors.edge);
}

fn doors(sheet: &mut Sheet<'_>, shape: &PlanShape) {
    let colors = sheet.look.colors();
    for door in &shape.doors {
        let (x, y) = door.at;
        let half = door.width / 2.0;
        let depth = 4.5;
        let at_side = (x.abs() - shape.width / 2.0).abs() < 14.0;
        let leaf = if at_side {
            let wall = if x < 0.0 { Side::Left.sign() } else { Side::Right.sign() } * shape.width / 2.0;
            sheet.rounded((wall - depth, y - half), (wall + depth, y + half), 1.5)
        } else {
            sheet.rounded((x - half, shape.length - depth), (x + half, shape.length + depth), 1.5)
        };
        sheet.fill(&leaf, colors.accent);
    }
}
