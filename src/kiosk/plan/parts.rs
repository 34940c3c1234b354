//! What the unit is made of, as rectangles in inches: what is drawn, and what is measured.

use super::{BodyKind, Door, PlanShape, RoomKind};

/// From the middle of a wheel to its tread, in inches.
const WHEEL: f64 = 14.0;
/// How deep a door, and a window, is drawn on either side of its wall, in inches.
const DOOR: f64 = 4.5;
const GLASS: f64 = 2.0;
/// How far a door may lie from a side wall and still be in it, in inches.
const AT_WALL: f64 = 14.0;
/// From one wheel of a pair to the other, in inches.
const PAIR: f64 = 12.0;

/// What a part of the unit is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PartKind {
    /// All of the body.
    Body,
    /// The cab before the house of a class C.
    Cab,
    /// The house behind the cab of a class C, or the body itself.
    House,
    /// The frame before a trailer, from its nose to the coupler.
    Frame,
    /// The coupler at the end of the frame: its middle.
    Coupler,
    /// One wheel; its middle is on the axle.
    Wheel,
    /// A slide-out as it is out.
    SlideOut,
    /// The same as it is in: the room that it takes inside.
    SlideIn,
    /// The cloth of the awning.
    Awning,
    /// A door.
    Door,
    /// A window.
    Window,
}

/// A part of the unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// What it is.
    pub kind: PartKind,
    /// Its corner at the lesser `x` and `y`.
    pub from: (f64, f64),
    /// The corner across.
    pub to: (f64, f64),
}

impl Part {
    fn new(kind: PartKind, (ax, ay): (f64, f64), (bx, by): (f64, f64)) -> Self {
        Self { kind, from: (ax.min(bx), ay.min(by)), to: (ax.max(bx), ay.max(by)) }
    }

    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> (f64, f64) {
        (f64::midpoint(self.from.0, self.to.0), f64::midpoint(self.from.1, self.to.1))
    }
}

impl PlanShape {
    /// Everything of which the sheet gives the place.
    #[must_use]
    pub fn parts(&self) -> Vec<Part> {
        let half = self.width / 2.0;
        let mut parts = vec![Part::new(PartKind::Body, (-half, 0.0), (half, self.length))];
        let house = if self.kind == BodyKind::ClassC { self.cab_end() - 8.0 } else { 0.0 };
        if self.kind == BodyKind::ClassC {
            parts.push(Part::new(PartKind::Cab, (-half * 0.82, 0.0), (half * 0.82, self.cab_end())));
        }
        parts.push(Part::new(PartKind::House, (-half, house), (half, self.length)));
        if self.kind == BodyKind::Trailer {
            parts.push(Part::new(PartKind::Frame, (-half * 0.62, -self.tongue), (half * 0.62, 4.0)));
            parts.push(Part::new(PartKind::Coupler, (0.0, -self.tongue), (0.0, -self.tongue)));
        }
        self.wheels(&mut parts);
        for slide in &self.slides {
            let wall = slide.side.sign() * half;
            let out = wall + slide.side.sign() * slide.reach;
            let inward = wall - slide.side.sign() * slide.reach;
            parts.push(Part::new(PartKind::SlideOut, (wall, slide.from_y), (out, slide.to_y)));
            parts.push(Part::new(PartKind::SlideIn, (wall, slide.from_y), (inward, slide.to_y)));
        }
        if let Some(awning) = self.awning.as_ref().filter(|awning| awning.reach > 0.0) {
            let wall = awning.side.sign() * half;
            let edge = wall + awning.side.sign() * awning.reach;
            parts.push(Part::new(PartKind::Awning, (wall, awning.from_y), (edge, awning.to_y)));
        }
        parts.extend(self.doors.iter().map(|door| self.in_wall(PartKind::Door, door)));
        parts.extend(self.windows.iter().map(|window| self.in_wall(PartKind::Window, window)));
        parts
    }

    /// How long the cab of a house on a truck is: to behind its seats, and to a step behind the front axle.
    pub(super) fn cab_end(&self) -> f64 {
        let front = self.axles().first().copied().unwrap_or(30.0);
        let seats = self.rooms.iter().filter(|room| room.kind == RoomKind::Cab);
        let seats = seats.map(|room| room.from.1.max(room.to.1)).fold(0.0, f64::max);
        (front + 34.0).max(seats + 6.0).min(self.length * 0.4)
    }

    /// How far over the cab a bed reaches: to before its window, where the sheet has one there.
    pub(super) fn bed_over_cab(&self) -> Option<f64> {
        let over = |window: &&Door| self.kind == BodyKind::ClassC && window.at.1 < self.cab_end() - 8.0;
        self.windows.iter().find(over).map(|window| (window.at.1 - window.width).max(6.0))
    }

    fn wheels(&self, parts: &mut Vec<Part>) {
        let half = self.width / 2.0;
        for (index, y) in self.axles().into_iter().enumerate() {
            let rear = index > 0;
            // A truck's cab is narrower than its house.
            let narrow = self.kind == BodyKind::ClassC && !rear;
            let outer = if narrow { half * 0.8 + 4.0 } else { half + 3.5 };
            for side in [-1.0, 1.0] {
                let mut wheel = |outer: f64| {
                    let (near, far) = (side * (outer - 10.0), side * outer);
                    parts.push(Part::new(PartKind::Wheel, (near, y - WHEEL), (far, y + WHEEL)));
                };
                wheel(outer);
                if rear && self.dual_rear {
                    wheel(outer - PAIR);
                }
            }
        }
    }

    fn in_wall(&self, kind: PartKind, door: &Door) -> Part {
        let (x, y) = door.at;
        let in_cab = self.kind == BodyKind::ClassC && kind == PartKind::Door && y < self.cab_end() - 8.0;
        let half = if in_cab { self.width * 0.4 } else { self.width / 2.0 };
        let wide = door.width / 2.0;
        let depth = if kind == PartKind::Door { DOOR } else { GLASS };
        if (x.abs() - half).abs() < AT_WALL && y < self.length - 1.0 && y > 1.0 {
            let wall = if x < 0.0 { -half } else { half };
            Part::new(kind, (wall - depth, y - wide), (wall + depth, y + wide))
        } else {
            let wall = if y < self.length / 2.0 { 0.0 } else { self.length };
            Part::new(kind, (x - wide, wall - depth), (x + wide, wall + depth))
        }
    }
}
