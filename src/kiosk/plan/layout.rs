//! Where everything on the plan goes: pure, and the same for the same input.

use iced::{Point, Rectangle, Size};

use super::line::Loop;
use super::{Floor, Orientation, Part, Peg, PegState, PlanShape, Side, Zoom, inside, outside, spread};

/// The diameter of a peg as drawn, in pixels as written.
pub(super) const DRAWN: f32 = 40.0;
/// The diameter of the disc in which a peg is hit, and the least distance of two pegs.
pub(super) const HIT: f32 = 56.0;
/// From the body to the middle of the line walked.
pub(super) const OFF: f32 = 50.0;
/// From the middle of the line walked to the edge of the view.
pub(super) const MARGIN: f32 = 30.0;
/// From the walls to the middles of the pegs beside them when the inside is shown.
pub(super) const ASIDE: f32 = 42.0;
/// From the walls to the edge of the view where there are no pegs.
const BARE_MARGIN: f32 = 14.0;
/// From the cloth of the awning to the edge of the view.
const CLOTH_MARGIN: f32 = 4.0;

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
    /// The ways inside: along the aisle, and from it to each stop.
    pub ways: Vec<Vec<Point>>,
    /// The parts of the line that were walked.
    pub walked: Vec<Vec<Point>>,
    /// Where the two people stand.
    pub people: Option<[Point; 2]>,
    /// From how near it is seen.
    pub zoom: Zoom,
    /// The ground around the unit that may come into the middle of the view, in inches.
    pub(super) extent: ((f64, f64), (f64, f64)),
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

/// Lays the whole plan out in `size`; see [`layout_zoomed`].
#[must_use]
pub fn layout(
    shape: &PlanShape,
    pegs: &[Peg],
    size: Size,
    orientation: Orientation,
    floor: Floor,
    unit: f32,
) -> PlanLayout {
    layout_zoomed(shape, pegs, (size, orientation, floor), unit, Zoom::default())
}

/// Lays the plan out in a view: its size, how the unit lies, and which stops are shown. `unit` is how many pixels of
/// the screen make one as written.
///
/// Outside, pegs keep at least 56 px (as written) from each other as long as each side of the line walked holds no
/// more than `1 + length of the side / 56 px` of them; on a fuller side they share its length evenly. Inside, they
/// stand in two columns beside the unit, and the same holds for each. From nearer by, only what is in view has a peg.
#[must_use]
pub fn layout_zoomed(
    shape: &PlanShape,
    pegs: &[Peg],
    (size, orientation, floor): (Size, Orientation, Floor),
    unit: f32,
    zoom: Zoom,
) -> PlanLayout {
    let upright = match orientation {
        Orientation::NoseUp => size,
        Orientation::NoseLeft | Orientation::NoseRight => Size::new(size.height, size.width),
    };
    let mut pegs: Vec<Peg> =
        pegs.iter().copied().filter(|peg| peg.inside == (floor == Floor::Inside)).collect();
    pegs.sort_by_key(|peg| peg.number);
    let body = Extent::of(shape);
    let (scale, origin) = fitted(shape, &body, (upright, floor), unit, !pegs.is_empty());
    let (scale, origin) = if zoom.is_whole() {
        (scale, origin)
    } else {
        let scale = scale * zoom.times();
        let (x, y) = zoom.about();
        (scale, Point::new(upright.width / 2.0 - x as f32 * scale, upright.height / 2.0 - y as f32 * scale))
    };
    let frame = Frame { body, origin, scale, unit, view: upright, whole: zoom.is_whole() };
    let laid = match floor {
        Floor::Outside => outside::lay(shape, &pegs, &frame),
        Floor::Inside => inside::lay(shape, &pegs, &frame),
    };
    let turned = |points: Vec<Point>| -> Vec<Point> {
        points.into_iter().map(|point| turn(orientation, upright, point)).collect()
    };
    let seen = |peg: &PegPlace| zoom.is_whole() || Rectangle::with_size(upright).contains(peg.center);
    PlanLayout {
        size,
        orientation,
        floor,
        scale,
        unit,
        pegs: laid
            .pegs
            .into_iter()
            .filter(seen)
            .map(|peg| PegPlace {
                center: turn(orientation, upright, peg.center),
                point: turn(orientation, upright, peg.point),
                ..peg
            })
            .collect(),
        loop_line: laid.line.map(|line| turned(line.whole())).unwrap_or_default(),
        ways: laid.ways.into_iter().map(turned).collect(),
        walked: laid.walked.into_iter().map(turned).collect(),
        people: laid.people.map(|two| two.map(|point| turn(orientation, upright, point))),
        zoom,
        extent: ((body.left, body.top), (body.right, body.bottom)),
        origin,
        upright,
    }
}

/// Where everything goes, nose up.
pub(super) struct Laid {
    pub pegs: Vec<PegPlace>,
    pub line: Option<Loop>,
    pub ways: Vec<Vec<Point>>,
    pub walked: Vec<Vec<Point>>,
    pub people: Option<[Point; 2]>,
}

/// The largest scale at which the unit with its pegs fits, and where the middle of its nose then is.
fn fitted(
    shape: &PlanShape,
    body: &Extent,
    (view, floor): (Size, Floor),
    unit: f32,
    pegged: bool,
) -> (f32, Point) {
    let (across, along) = match (floor, pegged) {
        (Floor::Outside, _) => (OFF + MARGIN, OFF + MARGIN),
        (Floor::Inside, true) => (ASIDE + MARGIN, BARE_MARGIN),
        (Floor::Inside, false) => (BARE_MARGIN, BARE_MARGIN),
    };
    let (across, along) = (across * unit, along * unit);
    // What either side needs: a margin in pixels and a reach in inches. The awning needs no room for pegs.
    let side = |side: Side, reach: f64| {
        let mut needs = vec![(across, reach as f32)];
        let awning = shape.awning.as_ref().filter(|a| a.side == side && floor == Floor::Outside);
        needs.extend(awning.map(|a| (CLOTH_MARGIN * unit, (shape.width / 2.0 + a.reach) as f32)));
        needs
    };
    let (left, right) = (side(Side::Left, -body.left), side(Side::Right, body.right));
    let mut scale = (view.height - 2.0 * along).max(1.0) / (body.height().max(1.0) as f32);
    for (margin_left, reach_left) in &left {
        for (margin_right, reach_right) in &right {
            let room = (view.width - margin_left - margin_right).max(1.0);
            scale = scale.min(room / (reach_left + reach_right).max(1.0));
        }
    }
    let taken =
        |needs: &[(f32, f32)]| needs.iter().map(|(margin, reach)| margin + reach * scale).fold(0.0, f32::max);
    let (from, to) = (taken(&left), view.width - taken(&right));
    // The unit in the middle, as far as its sides allow.
    let middle = view.width / 2.0 - ((body.left + body.right) / 2.0) as f32 * scale;
    // Where there is no play, rounding may turn the two around.
    let x = if from < to { middle.clamp(from, to) } else { f32::midpoint(from, to) };
    let y = view.height / 2.0 - ((body.top + body.bottom) / 2.0) as f32 * scale;
    (scale, Point::new(x, y))
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
pub(super) struct Extent {
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
pub(super) struct Frame {
    body: Extent,
    origin: Point,
    scale: f32,
    pub unit: f32,
    pub view: Size,
    /// Whether the whole unit is seen.
    pub whole: bool,
}

impl Frame {
    pub fn place(&self, (x, y): (f64, f64)) -> Point {
        Point::new(self.origin.x + x as f32 * self.scale, self.origin.y + y as f32 * self.scale)
    }

    /// The body with slide-outs and tongue.
    pub fn body(&self) -> Rectangle {
        let corner = self.place((self.body.left, self.body.top));
        let size = Size::new(self.body.width() as f32 * self.scale, self.body.height() as f32 * self.scale);
        Rectangle::new(corner, size)
    }
}

impl PlanLayout {
    /// The same view, larger, with one place in its middle.
    pub(super) fn zoomed(self, scale: f32, (x, y): (f64, f64)) -> Self {
        let (middle, height) = (self.upright.width / 2.0, self.upright.height / 2.0);
        let origin = Point::new(middle - x as f32 * scale, height - y as f32 * scale);
        Self { scale, origin, ..self }
    }

    /// A part of the unit as it lies in the view.
    #[must_use]
    pub fn bounds(&self, part: &Part) -> Rectangle {
        let (a, b) = (self.place(part.from), self.place(part.to));
        let corner = Point::new(a.x.min(b.x), a.y.min(b.y));
        Rectangle::new(corner, Size::new((a.x - b.x).abs(), (a.y - b.y).abs()))
    }

    /// The corners of the view at the nose, where nothing else is: the left and the right one, nose up, as squares
    /// of a side in pixels.
    pub(super) fn nose_corners(&self, side: f32, inset: f32) -> [Rectangle; 2] {
        let far = (self.upright.width - inset - side).max(0.0);
        [inset, far].map(|x| {
            let a = turn(self.orientation, self.upright, Point::new(x, inset));
            let b = turn(self.orientation, self.upright, Point::new(x + side, inset + side));
            Rectangle::new(Point::new(a.x.min(b.x), a.y.min(b.y)), Size::new(side, side))
        })
    }
}
