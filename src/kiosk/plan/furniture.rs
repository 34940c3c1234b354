//! Furniture in plan, each piece in a frame of its own: along the wall it stands at, and away from it.

use iced::widget::canvas::Path;
use iced::{Color, Point};

use super::draw::{Inches, Part, Sheet};
use super::{PlanShape, Room, RoomKind};

/// A piece as seen from its wall: `along` runs 0 to 1 with the wall, `away` 0 to 1 from it.
struct Piece {
    corner: Inches,
    along: Inches,
    away: Inches,
    /// Inches along and away from the wall.
    size: (f64, f64),
}

impl Piece {
    /// The wall is the one of the unit's that the piece touches, or comes nearest to; a bed has its head there.
    fn of(shape: &PlanShape, room: &Room) -> Self {
        let (left, right) = (room.from.0.min(room.to.0), room.from.0.max(room.to.0));
        let (top, bottom) = (room.from.1.min(room.to.1), room.from.1.max(room.to.1));
        let half = shape.width / 2.0;
        let (width, height) = (right - left, bottom - top);
        let rear =
            Self { corner: (left, bottom), along: (width, 0.0), away: (0.0, -height), size: (width, height) };
        let front =
            Self { corner: (left, top), along: (width, 0.0), away: (0.0, height), size: (width, height) };
        let at_left =
            Self { corner: (left, top), along: (0.0, height), away: (width, 0.0), size: (height, width) };
        let at_right =
            Self { corner: (right, top), along: (0.0, height), away: (-width, 0.0), size: (height, width) };
        let long_way = matches!(room.kind, RoomKind::Bed | RoomKind::Bunk);
        let side = if left + half <= half - right { at_left } else { at_right };
        let end = if shape.length - bottom <= top { rear } else { front };
        let end_gap = (shape.length - bottom).min(top);
        let side_gap = (left + half).min(half - right);
        // One lies along the longer way of a bed; everything else stands with its back to the side wall.
        let to_end = if long_way { height > width } else { end_gap + 8.0 < side_gap };
        if matches!(room.kind, RoomKind::Cab) {
            return Self {
                corner: (left, top),
                along: (width, 0.0),
                away: (0.0, height),
                size: (width, height),
            };
        }
        if to_end { end } else { side }
    }

    fn at(&self, along: f64, away: f64) -> Inches {
        (
            self.corner.0 + self.along.0 * along + self.away.0 * away,
            self.corner.1 + self.along.1 * along + self.away.1 * away,
        )
    }
}

/// Draws pieces with the lines of one piece.
struct Pencil<'p, 'f> {
    sheet: &'p mut Sheet<'f>,
    piece: Piece,
    line: Color,
    fill: Color,
    width: f32,
}

impl Pencil<'_, '_> {
    /// A box from one corner to the other, in parts of the piece, with corners rounded by inches.
    fn boxed(&mut self, from: (f64, f64), to: (f64, f64), radius: f64, fill: Option<Color>) {
        let (a, b) = (self.piece.at(from.0, from.1), self.piece.at(to.0, to.1));
        let path = self.sheet.rounded(a, b, radius);
        if let Some(fill) = fill {
            self.sheet.fill(&path, fill);
        }
        self.sheet.stroke(&path, self.line, self.width);
    }

    fn dashed_box(&mut self) {
        let path = self.sheet.rounded(self.piece.at(0.0, 0.0), self.piece.at(1.0, 1.0), 4.0);
        self.sheet.dashed(&path, self.line, self.width, &[5.0, 6.0]);
    }

    fn disc(&mut self, along: f64, away: f64, inches: f64, fill: Option<Color>) {
        let path = Path::circle(self.sheet.at(self.piece.at(along, away)), self.sheet.length(inches));
        if let Some(fill) = fill {
            self.sheet.fill(&path, fill);
        }
        self.sheet.stroke(&path, self.line, self.width);
    }

    fn line(&mut self, from: (f64, f64), to: (f64, f64)) {
        let at = |(along, away)| self.sheet.at(self.piece.at(along, away));
        let path = Path::line(at(from), at(to));
        self.sheet.stroke(&path, self.line, self.width);
    }

    fn bend(&mut self, from: (f64, f64), control: (f64, f64), to: (f64, f64)) {
        let at = |(along, away)| self.piece.at(along, away);
        let path = self.sheet.outline(at(from), &[Part::Bend(at(control), at(to))], false);
        self.sheet.stroke(&path, self.line, self.width);
    }

    /// Inches along the wall as a part of the piece.
    fn along(&self, inches: f64) -> f64 {
        inches / self.piece.size.0.max(1.0)
    }

    /// Inches away from the wall as a part of the piece.
    fn away(&self, inches: f64) -> f64 {
        inches / self.piece.size.1.max(1.0)
    }
}

/// Draws one piece; `strong` where it is what is looked at.
pub(super) fn draw(sheet: &mut Sheet<'_>, shape: &PlanShape, room: &Room, strong: bool) {
    let colors = sheet.look.colors();
    let line = if strong { colors.soft } else { colors.edge };
    let piece = Piece::of(shape, room);
    let mut pencil = Pencil { sheet, piece, line, fill: colors.wash, width: if strong { 2.0 } else { 1.5 } };
    match room.kind {
        RoomKind::Bed => bed(&mut pencil, colors.leaf),
        RoomKind::Bunk => {
            pencil.dashed_box();
            pillows(&mut pencil, colors.leaf);
        }
        RoomKind::Dinette => dinette(&mut pencil, colors.leaf),
        RoomKind::Sofa => sofa(&mut pencil),
        RoomKind::Galley => galley(&mut pencil, colors.leaf, shape.burners),
        RoomKind::Bath => bath(&mut pencil, colors.leaf),
        RoomKind::Toilet => toilet(&mut pencil, 0.5, colors.leaf),
        RoomKind::Shower => shower(&mut pencil, (0.0, 1.0)),
        RoomKind::Wardrobe => wardrobe(&mut pencil),
        RoomKind::Fridge => fridge(&mut pencil),
        RoomKind::Cab => cab(&mut pencil),
        RoomKind::Seat => seat(&mut pencil, (0.05, 0.95)),
        RoomKind::Storage => {
            pencil.boxed((0.0, 0.0), (1.0, 1.0), 2.0, None);
            pencil.line((0.0, 0.0), (1.0, 1.0));
        }
        RoomKind::Table => {
            let fill = Some(pencil.fill);
            pencil.boxed((0.0, 0.0), (1.0, 1.0), 4.0, fill);
        }
    }
}

fn bed(pencil: &mut Pencil<'_, '_>, pillow: Color) {
    let fill = Some(pencil.fill);
    pencil.boxed((0.0, 0.0), (1.0, 1.0), 4.0, fill);
    pillows(pencil, pillow);
    // The blanket, turned down.
    let fold = pencil.away(24.0).min(0.45);
    pencil.line((0.0, fold), (1.0, fold));
    pencil.bend((0.0, fold + 0.1), (0.5, fold + 0.02), (1.0, fold + 0.1));
}

fn pillows(pencil: &mut Pencil<'_, '_>, pillow: Color) {
    let (near, far) = (pencil.away(3.0), pencil.away(17.0).min(0.4));
    let two = pencil.piece.size.0 > 40.0;
    let places: &[(f64, f64)] = if two { &[(0.06, 0.47), (0.53, 0.94)] } else { &[(0.14, 0.86)] };
    for (from, to) in places {
        pencil.boxed((*from, near), (*to, far), 4.0, Some(pillow));
    }
}

fn dinette(pencil: &mut Pencil<'_, '_>, table: Color) {
    // Benches face each other along the wall, the table between them.
    let fill = Some(pencil.fill);
    for (from, to, back) in [(0.0, 0.3, 0.07), (0.7, 1.0, 0.93)] {
        pencil.boxed((from, 0.0), (to, 1.0), 3.0, fill);
        pencil.line((back, 0.08), (back, 0.92));
    }
    pencil.boxed((0.36, 0.04), (0.64, 0.92), 3.0, Some(table));
}

fn sofa(pencil: &mut Pencil<'_, '_>) {
    let fill = Some(pencil.fill);
    pencil.boxed((0.0, 0.0), (1.0, 1.0), 4.0, fill);
    let back = pencil.away(7.0).min(0.4);
    pencil.line((0.0, back), (1.0, back));
    let (arm, far) = (pencil.along(6.0).min(0.2), 1.0 - pencil.along(6.0).min(0.2));
    pencil.line((arm, back), (arm, 1.0));
    pencil.line((far, back), (far, 1.0));
    if pencil.piece.size.0 > 48.0 {
        pencil.line((0.5, back), (0.5, 1.0));
    }
}

fn galley(pencil: &mut Pencil<'_, '_>, basin: Color, burners: u16) {
    let fill = Some(pencil.fill);
    pencil.boxed((0.0, 0.0), (1.0, 1.0), 2.0, fill);
    // The sink with its drain and tap, then the burners.
    pencil.boxed((0.08, 0.22), (0.42, 0.82), 4.0, Some(basin));
    let (drain, burner) = (1.2, (pencil.piece.size.1 * 0.15).min(pencil.piece.size.0 * 0.1).min(4.4));
    pencil.disc(0.25, 0.52, drain, None);
    pencil.line((0.25, 0.06), (0.25, 0.36));
    let places: &[(f64, f64)] = match burners {
        0 => &[],
        1 => &[(0.72, 0.5)],
        2 => &[(0.6, 0.5), (0.84, 0.5)],
        3 => &[(0.6, 0.28), (0.6, 0.72), (0.84, 0.5)],
        _ => &[(0.6, 0.28), (0.6, 0.72), (0.84, 0.28), (0.84, 0.72)],
    };
    // One alone is a large one.
    let burner = if burners == 1 { burner * 1.4 } else { burner };
    for (along, away) in places {
        pencil.disc(*along, *away, burner, Some(basin));
        pencil.disc(*along, *away, burner * 0.35, None);
    }
}

fn bath(pencil: &mut Pencil<'_, '_>, basin: Color) {
    pencil.boxed((0.0, 0.0), (1.0, 1.0), 2.0, None);
    shower(pencil, (0.0, 0.46));
    toilet(pencil, 0.74, basin);
}

fn shower(pencil: &mut Pencil<'_, '_>, (from, to): (f64, f64)) {
    let fill = Some(pencil.fill);
    pencil.boxed((from, 0.0), (to, 1.0), 3.0, fill);
    pencil.line((from, 0.0), (to, 1.0));
    pencil.line((from, 1.0), (to, 0.0));
    let fill = Some(pencil.fill);
    pencil.disc(f64::midpoint(from, to), 0.5, 2.6, fill);
}

fn toilet(pencil: &mut Pencil<'_, '_>, middle: f64, basin: Color) {
    let fill = Some(pencil.fill);
    let half = pencil.along(8.5).min(0.22);
    let depth = pencil.away(6.0).min(0.25);
    pencil.boxed((middle - half, pencil.away(1.0)), (middle + half, depth), 1.5, fill);
    let bowl = pencil.away(7.2).min(0.3);
    pencil.disc(middle, depth + bowl, 7.2_f64.min(pencil.piece.size.1 * 0.3), Some(basin));
    pencil.disc(middle, depth + bowl, 4.2_f64.min(pencil.piece.size.1 * 0.17), None);
}

fn wardrobe(pencil: &mut Pencil<'_, '_>) {
    let fill = Some(pencil.fill);
    pencil.boxed((0.0, 0.0), (1.0, 1.0), 2.0, fill);
    pencil.line((0.08, 0.5), (0.92, 0.5));
    for along in [0.2, 0.4, 0.6, 0.8] {
        pencil.line((along - 0.03, 0.28), (along + 0.03, 0.72));
    }
}

fn fridge(pencil: &mut Pencil<'_, '_>) {
    let fill = Some(pencil.fill);
    pencil.boxed((0.0, 0.0), (1.0, 1.0), 2.0, fill);
    let door = 1.0 - pencil.away(3.0).min(0.2);
    pencil.line((0.0, door), (1.0, door));
    // A snowflake of three lines.
    let center = pencil.sheet.at(pencil.piece.at(0.5, 0.45));
    let reach = pencil.sheet.length(pencil.piece.size.0.min(pencil.piece.size.1) * 0.2);
    for turn in 0..3u8 {
        let angle = f32::from(turn) * std::f32::consts::FRAC_PI_3 + std::f32::consts::FRAC_PI_6;
        let (dx, dy) = (angle.cos() * reach, angle.sin() * reach);
        let path =
            Path::line(Point::new(center.x - dx, center.y - dy), Point::new(center.x + dx, center.y + dy));
        pencil.sheet.stroke(&path, pencil.line, pencil.width);
    }
}

fn cab(pencil: &mut Pencil<'_, '_>) {
    seat(pencil, (0.08, 0.42));
    seat(pencil, (0.58, 0.92));
}

/// A seat that faces the nose: cushion, then its back.
fn seat(pencil: &mut Pencil<'_, '_>, (from, to): (f64, f64)) {
    let fill = Some(pencil.fill);
    pencil.boxed((from, 0.1), (to, 0.8), 5.0, fill);
    pencil.boxed((from + 0.02, 0.72), (to - 0.02, 0.95), 3.0, fill);
}
