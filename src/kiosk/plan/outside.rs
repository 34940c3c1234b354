//! The loop around the unit: its stops on the line walked, each on the side on which its place lies.

use iced::{Point, Vector};

use super::layout::{Frame, HIT, Laid, OFF};
use super::line::Loop;
use super::{Edge, Peg, PegPlace, PegState, PlanShape, spread};

/// How far pegs keep from the corners of the line: two of them across a corner are then further than `HIT` apart.
const CUT: f32 = 48.0;
/// From the walls to where people stand.
const STAND: f32 = 13.0;
/// From one of two people to the other.
pub(super) const BESIDE: f32 = 24.0;

/// Lays out the stops outside.
pub(super) fn lay(shape: &PlanShape, pegs: &[Peg], frame: &Frame) -> Laid {
    let unit = frame.unit;
    let bounds = frame.body().expand(OFF * unit);
    let cut = (CUT * unit).min(bounds.width / 3.0).min(bounds.height / 3.0);
    let line = Loop::around(bounds, cut);
    let mut places: Vec<PegPlace> = pegs
        .iter()
        .map(|peg| {
            let point = frame.place(peg.at);
            let edge = Some(edge_of(shape, peg.at));
            PegPlace { number: peg.number, state: peg.state, center: point, point, edge }
        })
        .collect();
    for edge in [Edge::Right, Edge::Rear, Edge::Left, Edge::Front] {
        let mut on_edge: Vec<&mut PegPlace> =
            places.iter_mut().filter(|peg| peg.edge == Some(edge)).collect();
        let vertical = matches!(edge, Edge::Right | Edge::Left);
        let clockwise = if matches!(edge, Edge::Right | Edge::Front) { 1.0 } else { -1.0 };
        // The walk goes from the door to the rear: clockwise where the door is on the right.
        let onward = clockwise * shape.curb.sign() as f32;
        let across = |peg: &PegPlace| if vertical { peg.point.y } else { peg.point.x };
        on_edge.sort_by(|a, b| {
            let by_place = across(a).total_cmp(&across(b));
            by_place.then(if onward > 0.0 { a.number.cmp(&b.number) } else { b.number.cmp(&a.number) })
        });
        let mut wanted: Vec<f32> = on_edge.iter().map(|peg| across(peg)).collect();
        let (from, to) =
            if vertical { (bounds.y, bounds.y + bounds.height) } else { (bounds.x, bounds.x + bounds.width) };
        spread::along(&mut wanted, HIT * unit, from + cut, to - cut);
        for (peg, at) in on_edge.into_iter().zip(wanted) {
            peg.center = match edge {
                Edge::Right => Point::new(bounds.x + bounds.width, at),
                Edge::Left => Point::new(bounds.x, at),
                Edge::Rear => Point::new(at, bounds.y + bounds.height),
                Edge::Front => Point::new(at, bounds.y),
            };
        }
    }
    let walked = steps(&places).map(|(a, b)| line.between(a.center, b.center)).collect();
    let people = places.iter().find(|peg| peg.state == PegState::Here).and_then(|peg| people(peg, unit));
    Laid { pegs: places, line: Some(line), ways: Vec::new(), walked, people }
}

/// Each two stops that follow each other and were both reached.
pub(super) fn steps(pegs: &[PegPlace]) -> impl Iterator<Item = (&PegPlace, &PegPlace)> {
    let reached = |peg: &PegPlace| !matches!(peg.state, PegState::Open | PegState::Chosen);
    pegs.iter().zip(pegs.iter().skip(1)).filter(move |(a, b)| reached(a) && reached(b))
}

/// On which side of the unit a point lies: the wall it is nearest to.
fn edge_of(shape: &PlanShape, (x, y): (f64, f64)) -> Edge {
    let half = shape.width / 2.0;
    let walls = [
        (Edge::Right, (half - x).abs()),
        (Edge::Left, (x + half).abs()),
        (Edge::Rear, (shape.length - y).abs()),
        (Edge::Front, if y <= 0.0 { 0.0 } else { y }),
    ];
    walls.into_iter().min_by(|a, b| a.1.total_cmp(&b.1)).map_or(Edge::Front, |(edge, _)| edge)
}

/// Two people side by side between the peg and the unit, facing it.
fn people(peg: &PegPlace, unit: f32) -> Option<[Point; 2]> {
    let inward = match peg.edge? {
        Edge::Right => Vector::new(-1.0, 0.0),
        Edge::Left => Vector::new(1.0, 0.0),
        Edge::Rear => Vector::new(0.0, -1.0),
        Edge::Front => Vector::new(0.0, 1.0),
    };
    let middle = peg.center + inward * ((OFF - STAND) * unit);
    let beside = Vector::new(inward.y, inward.x) * (BESIDE / 2.0 * unit);
    Some([middle - beside, middle + beside])
}
