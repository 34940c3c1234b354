//! Hazard signs in the shapes of ISO 3864 (yellow triangle, black border), the pictures drawn by us after the
//! meanings that ISO 7010 gives to its W numbers.

use iced::widget::canvas::{Frame, LineJoin, Path, Stroke};
use iced::{Color, Point, Rectangle, Size};

use super::symbol::Pen;
use super::{Element, drawing};
use crate::kiosk::theme::palette::safety;
use crate::kiosk::theme::{Look, Theme};

/// What is dangerous.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hazard {
    /// Anything else: an exclamation mark (as W001).
    General,
    /// Explosion (as W002).
    Explosion,
    /// Fire (as W021).
    Fire,
    /// Electric shock (as W012).
    Electricity,
    /// Gas that poisons or takes the air: carbon monoxide, propane (as W041).
    Gas,
    /// A hot surface, steam, hot water (as W017).
    HotSurface,
    /// Crushing (as W019).
    Crush,
    /// A fall from a height, a trip (as W008).
    Fall,
    /// A slippery floor (as W011).
    Slip,
    /// Something above that one hits, or that comes down (as W035).
    Overhead,
    /// Germs (as W009).
    Germs,
    /// Frost (as W010).
    Cold,
    /// A crash on the road.
    Vehicle,
    /// Something sharp (as W022).
    Cut,
}

impl Hazard {
    /// All of them.
    pub const ALL: [Self; 14] = [
        Self::General,
        Self::Explosion,
        Self::Fire,
        Self::Electricity,
        Self::Gas,
        Self::HotSurface,
        Self::Crush,
        Self::Fall,
        Self::Slip,
        Self::Overhead,
        Self::Germs,
        Self::Cold,
        Self::Vehicle,
        Self::Cut,
    ];
}

/// The sign, this wide in pixels as written.
#[must_use]
pub fn hazard_symbol<'a, M: 'a>(look: &Look, hazard: Hazard, side: f32) -> Element<'a, M> {
    let (width, height) = (look.px(side), look.px(side * 0.9));
    // On a dark ground the black border alone would not show.
    let rim = look.theme == Theme::Dusk;
    drawing(width, height, move |frame| {
        if rim {
            triangle(frame, safety::YELLOW.ground, safety::YELLOW.ground, 0.073);
        }
        triangle(frame, safety::YELLOW.on, safety::YELLOW.ground, 0.043);
        let bounds = square(frame);
        let pen = Pen { bounds, color: safety::YELLOW.on, on: safety::YELLOW.ground };
        for mark in picture(hazard) {
            mark.draw(&pen, frame);
        }
    })
}

/// The alert triangle: border, inside, and the mark in it.
pub(super) fn alert(frame: &mut Frame, border: Color, inside: Color, mark: Color) {
    triangle(frame, border, inside, 0.065);
    let pen = Pen { bounds: square(frame), color: mark, on: inside };
    for part in picture(Hazard::General) {
        part.draw(&pen, frame);
    }
}

/// The square in which a triangle of the frame's width stands with its tip up.
fn square(frame: &Frame) -> Rectangle {
    let side = frame.width();
    Rectangle::new(Point::new(0.0, frame.height() - side * 0.94), Size::new(side, side))
}

fn triangle(frame: &mut Frame, border: Color, inside: Color, width: f32) {
    let bounds = square(frame);
    let pen = Pen { bounds, color: border, on: inside };
    let outline = pen.path(&[(0.5, 0.115), (0.945, 0.885), (0.055, 0.885)], true);
    frame.fill(&outline, inside);
    let stroke = Stroke {
        line_join: LineJoin::Round,
        ..Stroke::default().with_color(border).with_width(width * bounds.width)
    };
    frame.stroke(&outline, stroke);
}

type At = (f32, f32);

/// One part of a picture, in parts of the square around the triangle.
enum Mark {
    Line(&'static [At], f32),
    Shape(&'static [At]),
    Disc(At, f32),
    Ring(At, f32, f32),
    /// A curve through: start, then control and end, and so on.
    Curve(&'static [At], f32),
    CurvedShape(&'static [At]),
}

use Mark::{Curve, CurvedShape, Disc, Line, Ring, Shape};

impl Mark {
    fn draw(&self, pen: &Pen, frame: &mut Frame) {
        match self {
            Line(points, width) => pen.line(frame, points, *width),
            Shape(points) => frame.fill(&pen.path(points, true), pen.color),
            Disc(at, radius) => frame.fill(&Path::circle(pen.at(*at), radius * pen.bounds.width), pen.color),
            Ring(at, radius, width) => pen.ring(frame, *at, *radius, *width),
            Curve(points, width) => {
                let stroke = pen.stroke(*width);
                frame.stroke(&curve(pen, points), stroke);
            }
            CurvedShape(points) => frame.fill(&curve(pen, points), pen.color),
        }
    }
}

fn curve(pen: &Pen, points: &[At]) -> Path {
    Path::new(|path| {
        let Some((start, rest)) = points.split_first() else { return };
        path.move_to(pen.at(*start));
        for pair in rest.chunks_exact(2) {
            if let [control, end] = pair {
                path.quadratic_curve_to(pen.at(*control), pen.at(*end));
            }
        }
    })
}

const BODY: f32 = 0.058;

const fn picture(hazard: Hazard) -> &'static [Mark] {
    match hazard {
        Hazard::General => {
            &[Shape(&[(0.45, 0.36), (0.55, 0.36), (0.53, 0.66), (0.47, 0.66)]), Disc((0.5, 0.755), 0.045)]
        }
        Hazard::Explosion => EXPLOSION,
        Hazard::Fire => FIRE,
        Hazard::Electricity => &[Shape(&[
            (0.56, 0.32),
            (0.41, 0.6),
            (0.5, 0.585),
            (0.465, 0.7),
            (0.425, 0.685),
            (0.455, 0.82),
            (0.565, 0.74),
            (0.52, 0.722),
            (0.6, 0.53),
            (0.505, 0.545),
        ])],
        Hazard::Gas => GAS,
        Hazard::HotSurface => HOT,
        Hazard::Crush => CRUSH,
        Hazard::Fall => FALL,
        Hazard::Slip => SLIP,
        Hazard::Overhead => OVERHEAD,
        Hazard::Germs => GERMS,
        Hazard::Cold => COLD,
        Hazard::Vehicle => VEHICLE,
        Hazard::Cut => CUT,
    }
}

const EXPLOSION: &[Mark] = &[
    Shape(&[
        (0.500, 0.524),
        (0.530, 0.611),
        (0.612, 0.563),
        (0.577, 0.645),
        (0.672, 0.671),
        (0.586, 0.701),
        (0.625, 0.783),
        (0.539, 0.744),
        (0.500, 0.826),
        (0.461, 0.744),
        (0.375, 0.783),
        (0.414, 0.701),
        (0.328, 0.671),
        (0.423, 0.645),
        (0.388, 0.563),
        (0.470, 0.611),
    ]),
    Shape(&[(0.47, 0.34), (0.53, 0.32), (0.54, 0.4), (0.49, 0.42)]),
    Shape(&[(0.39, 0.44), (0.43, 0.41), (0.44, 0.48), (0.4, 0.5)]),
    Shape(&[(0.57, 0.43), (0.62, 0.45), (0.6, 0.5), (0.565, 0.485)]),
    Line(&[(0.27, 0.79), (0.29, 0.765)], 0.035),
    Line(&[(0.71, 0.77), (0.74, 0.79)], 0.035),
];

const FIRE: &[Mark] = &[
    CurvedShape(&[
        (0.500, 0.780),
        (0.357, 0.763),
        (0.382, 0.646),
        (0.399, 0.595),
        (0.450, 0.553),
        (0.441, 0.612),
        (0.466, 0.629),
        (0.450, 0.494),
        (0.534, 0.402),
        (0.525, 0.486),
        (0.576, 0.545),
        (0.584, 0.511),
        (0.576, 0.486),
        (0.643, 0.562),
        (0.626, 0.662),
        (0.609, 0.772),
        (0.500, 0.780),
    ]),
    Line(&[(0.3, 0.825), (0.7, 0.825)], 0.04),
];

const GAS: &[Mark] = &[
    Disc((0.5, 0.46), 0.075),
    Curve(&[(0.31, 0.64), (0.39, 0.56), (0.47, 0.63), (0.55, 0.71), (0.69, 0.62)], 0.05),
    Curve(&[(0.28, 0.77), (0.37, 0.69), (0.46, 0.76), (0.56, 0.84), (0.72, 0.75)], 0.05),
];

const HOT: &[Mark] = &[
    Line(&[(0.26, 0.8), (0.74, 0.8)], 0.05),
    Curve(&[(0.38, 0.72), (0.33, 0.65), (0.38, 0.6), (0.43, 0.54), (0.39, 0.48)], 0.045),
    Curve(&[(0.5, 0.72), (0.45, 0.64), (0.5, 0.57), (0.55, 0.49), (0.5, 0.4)], 0.045),
    Curve(&[(0.62, 0.72), (0.57, 0.65), (0.62, 0.6), (0.67, 0.54), (0.62, 0.48)], 0.045),
];

const CRUSH: &[Mark] = &[
    Line(&[(0.665, 0.58), (0.665, 0.81)], 0.05),
    Shape(&[
        (0.28, 0.63),
        (0.39, 0.63),
        (0.39, 0.585),
        (0.47, 0.7),
        (0.39, 0.815),
        (0.39, 0.77),
        (0.28, 0.77),
    ]),
    Disc((0.55, 0.5), 0.048),
    Line(&[(0.55, 0.59), (0.55, 0.69)], BODY),
    Line(&[(0.55, 0.69), (0.53, 0.81)], 0.042),
    Line(&[(0.55, 0.69), (0.58, 0.81)], 0.042),
    Line(&[(0.55, 0.59), (0.605, 0.655)], 0.034),
];

const FALL: &[Mark] = &[
    Shape(&[(0.27, 0.67), (0.44, 0.67), (0.44, 0.835), (0.2, 0.835)]),
    Disc((0.66, 0.62), 0.05),
    Line(&[(0.6, 0.585), (0.515, 0.53)], BODY),
    Line(&[(0.515, 0.53), (0.435, 0.585)], 0.042),
    Line(&[(0.515, 0.53), (0.455, 0.465)], 0.042),
    Line(&[(0.595, 0.585), (0.59, 0.68), (0.64, 0.73)], 0.036),
    Line(&[(0.585, 0.575), (0.625, 0.5)], 0.036),
];

const SLIP: &[Mark] = &[
    Line(&[(0.27, 0.83), (0.73, 0.83)], 0.03),
    Disc((0.455, 0.44), 0.05),
    Line(&[(0.465, 0.535), (0.505, 0.64)], BODY),
    Line(&[(0.505, 0.64), (0.6, 0.665), (0.675, 0.745)], 0.045),
    Line(&[(0.505, 0.64), (0.465, 0.73), (0.52, 0.795)], 0.045),
    Line(&[(0.475, 0.54), (0.575, 0.535)], 0.036),
    Line(&[(0.46, 0.54), (0.385, 0.63)], 0.036),
    Line(&[(0.6, 0.79), (0.65, 0.79)], 0.024),
];

const OVERHEAD: &[Mark] = &[
    Shape(&[(0.47, 0.31), (0.55, 0.33), (0.53, 0.41), (0.45, 0.39)]),
    Shape(&[(0.39, 0.46), (0.46, 0.43), (0.49, 0.5), (0.42, 0.53)]),
    Shape(&[(0.55, 0.45), (0.62, 0.48), (0.59, 0.55), (0.52, 0.52)]),
    Disc((0.5, 0.64), 0.062),
    CurvedShape(&[(0.34, 0.83), (0.36, 0.72), (0.5, 0.72), (0.64, 0.72), (0.66, 0.83)]),
];

const GERMS: &[Mark] = &[
    Curve(&[(0.42, 0.4), (0.36, 0.55), (0.5, 0.56), (0.64, 0.55), (0.58, 0.4)], 0.042),
    Curve(
        &[(0.33, 0.7), (0.32, 0.58), (0.42, 0.56), (0.5, 0.6), (0.5, 0.68), (0.49, 0.8), (0.38, 0.79)],
        0.042,
    ),
    Curve(
        &[(0.67, 0.7), (0.68, 0.58), (0.58, 0.56), (0.5, 0.6), (0.5, 0.68), (0.51, 0.8), (0.62, 0.79)],
        0.042,
    ),
    Ring((0.5, 0.635), 0.105, 0.03),
    Disc((0.5, 0.635), 0.035),
];

const COLD: &[Mark] = &[
    Line(&[(0.5, 0.45), (0.5, 0.83)], 0.034),
    Line(&[(0.335, 0.545), (0.665, 0.735)], 0.034),
    Line(&[(0.335, 0.735), (0.665, 0.545)], 0.034),
    Line(&[(0.455, 0.47), (0.5, 0.525), (0.545, 0.47)], 0.028),
    Line(&[(0.455, 0.81), (0.5, 0.755), (0.545, 0.81)], 0.028),
    Line(&[(0.33, 0.61), (0.4, 0.583), (0.387, 0.51)], 0.028),
    Line(&[(0.67, 0.67), (0.6, 0.697), (0.613, 0.77)], 0.028),
    Line(&[(0.33, 0.67), (0.4, 0.697), (0.387, 0.77)], 0.028),
    Line(&[(0.67, 0.61), (0.6, 0.583), (0.613, 0.51)], 0.028),
];

const VEHICLE: &[Mark] = &[
    Shape(&[
        (0.27, 0.765),
        (0.28, 0.68),
        (0.33, 0.66),
        (0.375, 0.575),
        (0.49, 0.575),
        (0.55, 0.66),
        (0.6, 0.68),
        (0.61, 0.765),
    ]),
    Disc((0.355, 0.78), 0.045),
    Disc((0.53, 0.78), 0.045),
    Shape(&[
        (0.62, 0.63),
        (0.655, 0.56),
        (0.67, 0.635),
        (0.725, 0.655),
        (0.68, 0.69),
        (0.7, 0.765),
        (0.65, 0.72),
        (0.625, 0.745),
    ]),
];

const CUT: &[Mark] = &[
    Shape(&[(0.36, 0.72), (0.6, 0.4), (0.65, 0.44), (0.6, 0.56), (0.42, 0.77)]),
    Line(&[(0.37, 0.76), (0.31, 0.82)], 0.06),
    CurvedShape(&[
        (0.63, 0.63),
        (0.7, 0.74),
        (0.66, 0.79),
        (0.63, 0.82),
        (0.6, 0.79),
        (0.56, 0.74),
        (0.63, 0.63),
    ]),
];
