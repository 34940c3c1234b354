//! Small signs, drawn: the bundled letters have none of them.

use iced::alignment::Vertical;
use iced::widget::canvas::{Fill, Frame, LineCap, LineJoin, Path, Stroke, Text};
use iced::widget::text::Alignment;
use iced::{Color, Point, Rectangle, Size, Vector};

use super::{Element, drawing};
use crate::kiosk::theme::{Look, fonts};

/// What can be drawn small.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Symbol {
    /// Done, yes.
    Tick,
    /// A tick in a filled disc.
    TickDisc,
    /// No, wrong, close.
    Cross,
    /// Onward, a page deeper.
    Right,
    /// Back.
    Left,
    /// More above.
    Up,
    /// More below.
    Down,
    /// One more.
    Plus,
    /// One less.
    Minus,
    /// Find.
    Search,
    /// A seal that holds.
    Shield,
    /// A seal that does not hold.
    ShieldBroken,
    /// A triangle with an exclamation mark, in the color of the text around it.
    Alert,
    /// Take the last letter back.
    Backspace,
    /// Capital letters.
    Shift,
    /// A walk that is open.
    Open,
    /// A ring: not chosen yet.
    Ring,
    /// A question.
    Question,
    /// A picture that is missing.
    NoPicture,
}

/// A sign of this side in the color of text.
#[must_use]
pub fn symbol<'a, M: 'a>(look: &Look, which: Symbol, side: f32) -> Element<'a, M> {
    symbol_in(look, which, side, look.colors().ink, look.colors().leaf)
}

/// A sign in a color of its own; `on` is drawn upon its filled parts.
#[must_use]
pub fn symbol_in<'a, M: 'a>(
    look: &Look,
    which: Symbol,
    side: f32,
    color: Color,
    on: Color,
) -> Element<'a, M> {
    let side = look.px(side);
    drawing(side, side, move |frame| {
        let bounds = Rectangle::new(Point::ORIGIN, frame.size());
        draw(frame, which, bounds, color, on);
    })
}

/// A number in a disc or in a ring, as on the plan.
#[must_use]
pub fn circle_number<'a, M: 'a>(look: &Look, number: u16, filled: bool, side: f32) -> Element<'a, M> {
    let (side, line) = (look.px(side), look.line());
    let colors = look.colors();
    drawing(side, side, move |frame| {
        let center = frame.center();
        let disc = Path::circle(center, side / 2.0 - line);
        if filled {
            frame.fill(&disc, colors.ink);
        } else {
            frame.fill(&disc, colors.leaf);
            frame.stroke(&disc, Stroke::default().with_color(colors.ink).with_width(line));
        }
        let color = if filled { colors.leaf } else { colors.ink };
        frame.fill_text(centered(number.to_string(), center, side * 0.5, color));
    })
}

/// Bold text around a point.
#[must_use]
pub fn centered(content: String, position: Point, size: f32, color: Color) -> Text {
    Text {
        content,
        position,
        color,
        size: size.into(),
        font: fonts::BOLD,
        align_x: Alignment::Center,
        align_y: Vertical::Center,
        ..Text::default()
    }
}

/// Draws a sign into `bounds`.
pub fn draw(frame: &mut Frame, which: Symbol, bounds: Rectangle, color: Color, on: Color) {
    let pen = Pen { bounds, color, on };
    match which {
        Symbol::Tick => pen.line(frame, &[(0.14, 0.54), (0.4, 0.8), (0.88, 0.24)], 0.13),
        Symbol::TickDisc => {
            frame.fill(&Path::circle(bounds.center(), bounds.width / 2.0), color);
            Pen { color: on, ..pen }.line(frame, &[(0.28, 0.53), (0.44, 0.69), (0.73, 0.35)], 0.1);
        }
        Symbol::Cross => {
            pen.line(frame, &[(0.2, 0.2), (0.8, 0.8)], 0.12);
            pen.line(frame, &[(0.8, 0.2), (0.2, 0.8)], 0.12);
        }
        Symbol::Right => pen.line(frame, &[(0.36, 0.18), (0.68, 0.5), (0.36, 0.82)], 0.11),
        Symbol::Left => pen.line(frame, &[(0.64, 0.18), (0.32, 0.5), (0.64, 0.82)], 0.11),
        Symbol::Up => pen.line(frame, &[(0.18, 0.64), (0.5, 0.32), (0.82, 0.64)], 0.11),
        Symbol::Down => pen.line(frame, &[(0.18, 0.36), (0.5, 0.68), (0.82, 0.36)], 0.11),
        Symbol::Plus => {
            pen.line(frame, &[(0.5, 0.16), (0.5, 0.84)], 0.12);
            pen.line(frame, &[(0.16, 0.5), (0.84, 0.5)], 0.12);
        }
        Symbol::Minus => pen.line(frame, &[(0.16, 0.5), (0.84, 0.5)], 0.12),
        Symbol::Search => {
            pen.ring(frame, (0.42, 0.42), 0.28, 0.1);
            pen.line(frame, &[(0.64, 0.64), (0.9, 0.9)], 0.14);
        }
        Symbol::Shield | Symbol::ShieldBroken => pen.shield(frame, which == Symbol::Shield),
        Symbol::Alert => pen.alert(frame),
        Symbol::Backspace => {
            pen.shape(frame, &[(0.34, 0.2), (0.94, 0.2), (0.94, 0.8), (0.34, 0.8), (0.06, 0.5)], 0.08);
            pen.line(frame, &[(0.48, 0.37), (0.76, 0.63)], 0.09);
            pen.line(frame, &[(0.76, 0.37), (0.48, 0.63)], 0.09);
        }
        Symbol::Shift => {
            let outline = [
                (0.5, 0.1),
                (0.9, 0.52),
                (0.68, 0.52),
                (0.68, 0.88),
                (0.32, 0.88),
                (0.32, 0.52),
                (0.1, 0.52),
            ];
            pen.shape(frame, &outline, 0.08);
        }
        Symbol::Open => pen.broken_ring(frame),
        Symbol::Ring => pen.ring(frame, (0.5, 0.5), 0.42, 0.1),
        Symbol::Question => {
            pen.ring(frame, (0.5, 0.5), 0.44, 0.09);
            let at = bounds.center();
            frame.fill_text(centered("?".into(), at, bounds.height * 0.62, color));
        }
        Symbol::NoPicture => {
            pen.shape(frame, &[(0.08, 0.16), (0.92, 0.16), (0.92, 0.84), (0.08, 0.84)], 0.05);
            pen.line(frame, &[(0.08, 0.72), (0.34, 0.48), (0.52, 0.66), (0.7, 0.44), (0.92, 0.66)], 0.05);
            pen.line(frame, &[(0.14, 0.92), (0.86, 0.08)], 0.06);
        }
    }
}

/// The cross of the line to sign on.
pub(super) fn cross_mark(frame: &mut Frame, bounds: Rectangle, color: Color, width: f32) {
    let stroke = Stroke { line_cap: LineCap::Round, ..Stroke::default().with_color(color).with_width(width) };
    let (a, b) = (bounds.position(), Point::new(bounds.x + bounds.width, bounds.y + bounds.height));
    frame.stroke(&Path::line(a, b), stroke);
    frame.stroke(&Path::line(Point::new(b.x, a.y), Point::new(a.x, b.y)), stroke);
}

/// Draws in parts of a square.
#[derive(Clone, Copy)]
pub(super) struct Pen {
    pub bounds: Rectangle,
    pub color: Color,
    pub on: Color,
}

impl Pen {
    pub fn at(&self, (x, y): (f32, f32)) -> Point {
        self.bounds.position() + Vector::new(x * self.bounds.width, y * self.bounds.height)
    }

    pub fn stroke(&self, width: f32) -> Stroke<'static> {
        Stroke {
            line_cap: LineCap::Round,
            line_join: LineJoin::Round,
            ..Stroke::default().with_color(self.color).with_width(width * self.bounds.width)
        }
    }

    pub fn path(&self, points: &[(f32, f32)], closed: bool) -> Path {
        Path::new(|path| {
            for (index, point) in points.iter().enumerate() {
                if index == 0 {
                    path.move_to(self.at(*point));
                } else {
                    path.line_to(self.at(*point));
                }
            }
            if closed {
                path.close();
            }
        })
    }

    pub fn line(&self, frame: &mut Frame, points: &[(f32, f32)], width: f32) {
        frame.stroke(&self.path(points, false), self.stroke(width));
    }

    fn shape(&self, frame: &mut Frame, points: &[(f32, f32)], width: f32) {
        frame.stroke(&self.path(points, true), self.stroke(width));
    }

    pub fn ring(&self, frame: &mut Frame, center: (f32, f32), radius: f32, width: f32) {
        frame.stroke(&Path::circle(self.at(center), radius * self.bounds.width), self.stroke(width));
    }

    fn broken_ring(&self, frame: &mut Frame) {
        use iced::Radians;
        use iced::widget::canvas::path::Arc;
        for quarter in 0..4u8 {
            let start = f32::from(quarter) * std::f32::consts::FRAC_PI_2 - 0.5;
            let arc = Path::new(|path| {
                path.arc(Arc {
                    center: self.at((0.5, 0.5)),
                    radius: 0.42 * self.bounds.width,
                    start_angle: Radians(start),
                    end_angle: Radians(start + 1.0),
                });
            });
            frame.stroke(&arc, self.stroke(0.1));
        }
    }

    fn shield(&self, frame: &mut Frame, holds: bool) {
        let outline = Path::new(|path| {
            path.move_to(self.at((0.5, 0.04)));
            path.quadratic_curve_to(self.at((0.7, 0.18)), self.at((0.9, 0.18)));
            path.line_to(self.at((0.9, 0.5)));
            path.quadratic_curve_to(self.at((0.88, 0.82)), self.at((0.5, 0.97)));
            path.quadratic_curve_to(self.at((0.12, 0.82)), self.at((0.1, 0.5)));
            path.line_to(self.at((0.1, 0.18)));
            path.quadratic_curve_to(self.at((0.3, 0.18)), self.at((0.5, 0.04)));
            path.close();
        });
        if holds {
            frame.fill(&outline, Fill::from(self.color));
            let mark = Self { bounds: self.bounds, color: self.on, on: self.color };
            mark.line(frame, &[(0.29, 0.52), (0.45, 0.68), (0.72, 0.34)], 0.1);
        } else {
            frame.stroke(&outline, self.stroke(0.08));
            self.line(frame, &[(0.56, 0.16), (0.42, 0.42), (0.58, 0.56), (0.46, 0.86)], 0.07);
        }
    }

    fn alert(&self, frame: &mut Frame) {
        let size = Size::new(self.bounds.width, self.bounds.height);
        self.shape(frame, &[(0.5, 0.1), (0.94, 0.88), (0.06, 0.88)], 0.08);
        self.line(frame, &[(0.5, 0.4), (0.5, 0.62)], 0.09);
        frame.fill(&Path::circle(self.at((0.5, 0.76)), size.width * 0.055), self.color);
    }
}
