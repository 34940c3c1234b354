//! The floor of the unit: stops stand in columns beside the walls, so that the floor stays to be seen, and the way
//! from one to the next goes along the aisle.

use iced::{Point, Vector};

use super::layout::{ASIDE, Frame, HIT, Laid, MARGIN};
use super::outside::{BESIDE, steps};
use super::{Peg, PegPlace, PegState, PlanShape, RoomKind, spread};

/// From the nose's edge of the view to the first peg of a column: corners hold the controls.
const CORNER: f32 = 78.0;
/// How far the aisle keeps from the side walls, in inches.
const WALL: f64 = 14.0;

/// Lays out the stops inside.
pub(super) fn lay(shape: &PlanShape, pegs: &[Peg], frame: &Frame) -> Laid {
    let unit = frame.unit;
    let aisle = aisle(shape);
    let all: Vec<PegPlace> = pegs
        .iter()
        .map(|peg| {
            let point = frame.place(peg.at);
            PegPlace { number: peg.number, state: peg.state, center: point, point, edge: None }
        })
        .collect();
    let foot = |peg: &PegPlace| Point::new(frame.place((aisle, 0.0)).x, peg.point.y);
    let walked = steps(&all).map(|(a, b)| vec![a.point, foot(a), foot(b), b.point]).collect();
    let people = all.iter().find(|peg| peg.state == PegState::Here).map(|peg| {
        let beside = Vector::new(0.0, BESIDE / 2.0 * unit);
        [foot(peg) - beside, foot(peg) + beside]
    });
    let mut ways: Vec<Vec<Point>> = all.iter().map(|peg| vec![foot(peg), peg.point]).collect();
    let ys = || all.iter().map(|peg| peg.point.y);
    if let (Some(from), Some(to)) = (ys().min_by(f32::total_cmp), ys().max_by(f32::total_cmp)) {
        let x = frame.place((aisle, 0.0)).x;
        ways.push(vec![Point::new(x, from), Point::new(x, to)]);
    }
    Laid { pegs: beside(all, frame), line: None, ways, walked, people }
}

/// Puts each peg beside the wall that its point is nearer to, at its height as far as there is room.
fn beside(pegs: Vec<PegPlace>, frame: &Frame) -> Vec<PegPlace> {
    let (unit, body) = (frame.unit, frame.body());
    let least = MARGIN * unit;
    let left = (body.x - ASIDE * unit).max(least);
    let right = (body.x + body.width + ASIDE * unit).min(frame.view.width - least).max(left);
    let (from, to) = (CORNER * unit, frame.view.height - least);
    let (from, to) = if from < to { (from, to) } else { (frame.view.height / 2.0, frame.view.height / 2.0) };
    // From nearer by, a column lies over the unit: what it covers has no peg until it is moved into view.
    let shown = |peg: &PegPlace| {
        frame.whole
            || ((left + least..=right - least).contains(&peg.point.x)
                && (0.0..=frame.view.height).contains(&peg.point.y))
    };
    let middle = body.center_x();
    let mut sides: [Vec<PegPlace>; 2] = [Vec::new(), Vec::new()];
    let [at_left, at_right] = &mut sides;
    for peg in pegs.into_iter().filter(shown) {
        if peg.point.x < middle { at_left.push(peg) } else { at_right.push(peg) }
    }
    let most = ((to - from) / (HIT * unit)).floor().max(0.0) as usize + 1;
    even_out(at_left, at_right, most, middle);
    even_out(at_right, at_left, most, middle);
    let mut all = Vec::new();
    for (column, x) in sides.into_iter().zip([left, right]) {
        all.extend(in_column(column, (x, from, to), HIT * unit));
    }
    all.sort_by_key(|peg| peg.number);
    all
}

/// Moves those nearest to the middle over to the other column while this one is too full and that one is not.
fn even_out(full: &mut Vec<PegPlace>, other: &mut Vec<PegPlace>, most: usize, middle: f32) {
    while full.len() > most && other.len() + 1 < full.len() {
        let off = |peg: &PegPlace| (peg.point.x - middle).abs();
        let nearest = full.iter().enumerate().min_by(|(_, a), (_, b)| off(a).total_cmp(&off(b)));
        let Some((index, _)) = nearest else { return };
        other.push(full.remove(index));
    }
}

fn in_column(mut column: Vec<PegPlace>, (x, from, to): (f32, f32, f32), gap: f32) -> Vec<PegPlace> {
    column.sort_by(|a, b| a.point.y.total_cmp(&b.point.y).then(a.number.cmp(&b.number)));
    let mut wanted: Vec<f32> = column.iter().map(|peg| peg.point.y).collect();
    spread::along(&mut wanted, gap, from, to);
    column.into_iter().zip(wanted).map(|(peg, y)| PegPlace { center: Point::new(x, y), ..peg }).collect()
}

/// Where one walks through: the line along the unit with the least furniture on it, the middle where it is all one.
fn aisle(shape: &PlanShape) -> f64 {
    let half = (shape.width / 2.0 - WALL).max(0.0);
    let in_the_way = |x: f64| {
        let over = |room: &&super::Room| {
            let lies_above = matches!(room.kind, RoomKind::Cab | RoomKind::Bunk);
            let (left, right) = (room.from.0.min(room.to.0), room.from.0.max(room.to.0));
            !lies_above && (left - 4.0..=right + 4.0).contains(&x)
        };
        let taken: f64 = shape.rooms.iter().filter(over).map(|room| (room.to.1 - room.from.1).abs()).sum();
        taken + x.abs() * 0.1
    };
    let places = (-24..=24).map(|step| half * f64::from(step) / 24.0);
    places.min_by(|a, b| in_the_way(*a).total_cmp(&in_the_way(*b))).unwrap_or(0.0)
}
