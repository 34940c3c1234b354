//! Where everything on the plan goes: pure, and the same for the same input.

use iced::{Point, Rectangle, Size};

use super::line::Loop;
use super::{Floor, Orientation, Peg, PegState, PlanShape, Side, spread};

/// The diameter of a peg as drawn, in pixels as written.
pub(super) const DRAWN: f32 = 40.0;
/// The diameter of the disc in which a peg is hit, and the least distance of two pegs.
pub(super) const HIT: f32 = 56.0;
/// From the body to the middle of the line walked.
const OFF: f32 = 40.0;
/// From the middle of the line walked to the edge of the view.
const MARGIN: f32 = 32.0;
/// How far pegs keep from the corners of the line: two of them across a corner are then further than `HIT` apart.
const CUT: f32 = 40.0;
/// From the walls to the edge of the view when the inside is shown.
const INSIDE_MARGIN: f32 = 14.0;

/// A side of the line walked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Edge {
    /// The right side.
    Right,
    /// Behind the unit.
    Rear,
    /// The left side.
    Left,
    /// Before the unit.
    Front,
}

/// A peg and its place in the view.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PegPlace {
    /// Its number.
    pub number: u16,
    /// How it stands.
    pub state: PegState,
    /// The middle of the peg.
    pub center: Point,
    /// The true point it marks; a leader goes there.
    pub point: Point,
    /// On which side of the unit it stands; `None` inside.
    pub edge: Option<Edge>,
}

/// Where everything on the plan goes.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanLayout {
    /// The size of the view.
    pub size: Size,
    /// How it lies.
    pub orientation: Orientation,
    /// Which stops it shows.
    pub floor: Floor,
    /// Pixels an inch, the same in both axes.
    pub scale: f32,
    /// Pixels on the screen for one as written.
    pub unit: f32,
    /// The pegs, by number.
    pub pegs: Vec<PegPlace>,
    /// The line around the unit; empty inside.
    pub loop_line: Vec<Point>,
    /// The parts of the line that were walked.
    pub walked: Vec<Vec<Point>>,
    /// Where the middle of the nose is, in the view as if it lay nose up.
    origin: Point,
    upright: Size,
}

impl PlanLayout {
    /// A place on the unit, in inches, as a place in the view.
    #[must_use]
    pub fn place(&self, (x, y): (f64, f64)) -> Point {
        let upright =
            Point::new(self.origin.x + x as f32 * self.scale, self.origin.y + y as f32 * self.scale);
        turn(self.orientation, self.upright, upright)
    }

    /// A place in the view as a place on the unit, in inches.
    #[must_use]
    pub fn on_unit(&self, place: Point) -> (f64, f64) {
        let upright = match self.orientation {
            Orientation::NoseUp => place,
            Orientation::NoseLeft => Point::new(self.upright.width - place.y, place.x),
            Orientation::NoseRight => Point::new(place.y, self.upright.height - place.x),
        };
        let scale = f64::from(self.scale.max(f32::EPSILON));
        (f64::from(upright.x - self.origin.x) / scale, f64::from(upright.y - self.origin.y) / scale)
    }

    /// The square around the disc in which a peg is hit.
    #[must_use]
    pub fn hit(&self, peg: &PegPlace) -> Rectangle {
        let side = HIT * self.unit;
        let corner = Point::new(peg.center.x - side / 2.0, peg.center.y - side / 2.0);
        Rectangle::new(corner, Size::new(side, side))
    }

    /// The side of the unit on which the walk stands.
    #[must_use]
    pub fn standing(&self) -> Option<Edge> {
        self.pegs.iter().find(|peg| peg.state == PegState::Here).and_then(|peg| peg.edge)
    }

    /// The smallest distance between two pegs, in pixels; infinite for fewer than two.
    #[must_use]
    pub fn smallest_gap(&self) -> f32 {
        let centers: Vec<_> = self.pegs.iter().map(|peg| peg.center).collect();
        spread::smallest_gap(&centers)
    }
}

/// Lays the plan out in `size`. `unit` is how many pixels of the screen make one as written.
///
/// Pegs keep at least 56 px (as written) from each other as long as each side of the line walked holds no more
/// than `1 + length of the side / 56 px` of them; on a fuller side they share its length evenly. Inside, the same
/// holds as long as the room between the walls has that many cells of 56 px.
#[must_use]
pub fn layout(
    shape: &PlanShape,
    pegs: &[Peg],
    size: Size,
    orientation: Orientation,
    floor: Floor,
    unit: f32,
) -> PlanLayout {
    let upright = match orientation {
        Orientation::NoseUp => size,
        Orientation::NoseLeft | Orientation::NoseRight => Size::new(size.height, size.width),
    };
    let margin = match floor {
        Floor::Outside => (OFF + MARGIN) * unit,
        Floor::Inside => INSIDE_MARGIN * unit,
    };
    let body = Extent::of(shape);
    let fit = |room: f32, inches: f64| (room - 2.0 * margin).max(1.0) / (inches.max(1.0) as f32);
    let scale = fit(upright.width, body.width()).min(fit(upright.height, body.height()));
    let origin = Point::new(
        upright.width / 2.0 - ((body.left + body.right) / 2.0) as f32 * scale,
        upright.height / 2.0 - ((body.top + body.bottom) / 2.0) as f32 * scale,
    );
    let mut pegs: Vec<Peg> =
        pegs.iter().copied().filter(|peg| peg.inside == (floor == Floor::Inside)).collect();
    pegs.sort_by_key(|peg| peg.number);
    let frame = Frame { body, origin, scale, unit };
    let (places, line) = match floor {
        Floor::Outside => outside(shape, &pegs, &frame),
        Floor::Inside => (inside(shape, &pegs, &frame), None),
    };
    let walked = walked(&places, line.as_ref());
    let turned =
        |points: Vec<Point>| points.into_iter().map(|point| turn(orientation, upright, point)).collect();
    PlanLayout {
        size,
        orientation,
        floor,
        scale,
        unit,
        pegs: places
            .into_iter()
            .map(|peg| PegPlace {
                center: turn(orientation, upright, peg.center),
                point: turn(orientation, upright, peg.point),
                ..peg
            })
            .collect(),
        loop_line: line.map(|line| turned(line.whole())).unwrap_or_default(),
        walked: walked.into_iter().map(turned).collect(),
        origin,
        upright,
    }
}

fn turn(orientation: Orientation, upright: Size, point: Point) -> Point {
    match orientation {
        Orientation::NoseUp => point,
        Orientation::NoseLeft => Point::new(point.y, upright.width - point.x),
        Orientation::NoseRight => Point::new(upright.height - point.y, point.x),
    }
}

/// What must be seen of the unit, in inches.
#[derive(Debug, Clone, Copy)]
struct Extent {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Extent {
    fn of(shape: &PlanShape) -> Self {
        Self {
            left: -shape.width / 2.0 - shape.reach(Side::Left),
            right: shape.width / 2.0 + shape.reach(Side::Right),
            top: -shape.tongue,
            bottom: shape.length,
        }
    }

    fn width(&self) -> f64 {
        self.right - self.left
    }

    fn height(&self) -> f64 {
        self.bottom - self.top
    }
}

/// The unit in the view, nose up.
struct Frame {
    body: Extent,
    origin: Point,
    scale: f32,
    unit: f32,
}

impl Frame {
    fn place(&self, (x, y): (f64, f64)) -> Point {
        Point::new(self.origin.x + x as f32 * self.scale, self.origin.y + y as f32 * self.scale)
    }

    fn body(&self) -> Rectangle {
        let corner = self.place((self.body.left, self.body.top));
        let size = Size::new(self.body.width() as f32 * self.scale, self.body.height() as f32 * self.scale);
        Rectangle::new(corner, size)
    }
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

fn outside(shape: &PlanShape, pegs: &[Peg], frame: &Frame) -> (Vec<PegPlace>, Option<Loop>) {
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
    (places, Some(line))
}

fn inside(shape: &PlanShape, pegs: &[Peg], frame: &Frame) -> Vec<PegPlace> {
    let half = shape.width / 2.0;
    let (top_left, bottom_right) = (frame.place((-half, 0.0)), frame.place((half, shape.length)));
    let walls = Rectangle::new(top_left, Size::new(bottom_right.x - top_left.x, bottom_right.y - top_left.y));
    let room = walls.shrink((DRAWN / 2.0 + 8.0) * frame.unit);
    let mut centers: Vec<Point> = pegs.iter().map(|peg| frame.place(peg.at)).collect();
    spread::within(&mut centers, HIT * frame.unit, room);
    pegs.iter()
        .zip(centers)
        .map(|(peg, center)| PegPlace {
            number: peg.number,
            state: peg.state,
            center,
            point: frame.place(peg.at),
            edge: None,
        })
        .collect()
}

/// The way from each peg to the next, where both have been reached.
fn walked(pegs: &[PegPlace], line: Option<&Loop>) -> Vec<Vec<Point>> {
    pegs.iter()
        .zip(pegs.iter().skip(1))
        .filter(|(a, b)| a.state != PegState::Open && b.state != PegState::Open)
        .map(|(a, b)| match line {
            Some(line) => line.between(a.center, b.center),
            None => vec![a.center, b.center],
        })
        .collect()
}

impl PlanLayout {
    /// The same view, larger, with one place in its middle.
    pub(super) fn zoomed(self, scale: f32, (x, y): (f64, f64)) -> Self {
        let center = Point::new(self.size.width / 2.0, self.size.height / 2.0);
        let origin = Point::new(center.x - x as f32 * scale, center.y - y as f32 * scale);
        Self { scale, origin, ..self }
    }
}
