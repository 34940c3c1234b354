//! The plan view: a unit drawn from above, to scale, from plain data, with the stops of the walk as pegs.
//!
//! Inches, nose up as one looks down on it: `x` grows to the right, `y` from the nose of the body to the rear; a
//! trailer's tongue lies at negative `y`. [`layout()`] is pure and says where everything goes; the rest draws it.

mod close_up;
mod draw;
mod furniture;
mod gesture;
mod ground;
mod inside;
mod layout;
mod line;
mod outside;
mod parts;
mod pegs;
mod point;
mod seats;
mod spread;
#[cfg(test)]
mod tests;
mod view;
mod zoom;

pub use close_up::{close_up, thumbnail};
pub use layout::{Edge, PegPlace, PlanLayout, layout, layout_zoomed};
pub use parts::{Part, PartKind};
pub use seats::{PlanSeat, child_mark, seats};
pub use view::{PlanView, view};
pub use zoom::Zoom;

/// A side of the unit, as one sits in it facing the nose.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// At negative `x`.
    Left,
    /// At positive `x`.
    Right,
}

impl Side {
    /// -1 on the left, 1 on the right.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Self::Left => -1.0,
            Self::Right => 1.0,
        }
    }
}

/// What kind of body a unit has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BodyKind {
    /// A house with a flat nose.
    ClassA,
    /// A house behind a cab.
    ClassC,
    /// A van.
    ClassB,
    /// A house behind a tongue.
    Trailer,
}

/// A unit as seen from above.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanShape {
    /// What kind of body.
    pub kind: BodyKind,
    /// Length of the body in inches, without a tongue.
    pub length: f64,
    /// Width of the body in inches, without mirrors and slide-outs.
    pub width: f64,
    /// Length of the tongue ahead of the body in inches; 0 where there is none.
    pub tongue: f64,
    /// Which side faces the curb.
    pub curb: Side,
    /// From axle to axle in inches; trailers have none.
    pub wheelbase: Option<f64>,
    /// From the rear axle, or the middle of a trailer's axles, to the rear, in inches.
    pub rear_overhang: f64,
    /// Whether the rear axle has paired wheels.
    pub dual_rear: bool,
    /// Whether a trailer has two axles.
    pub tandem: bool,
    /// Doors in the outer wall.
    pub doors: Vec<Door>,
    /// Windows that open as ways out.
    pub windows: Vec<Door>,
    /// Where the shore cord comes out, if there is one.
    pub cord: Option<(f64, f64)>,
    /// Whether gas cylinders stand on the tongue.
    pub cylinders: bool,
    /// Burners or zones of the cooktop; 0 where there is none.
    pub burners: u16,
    /// The awning, if fitted.
    pub awning: Option<Awning>,
    /// Rooms that slide out.
    pub slides: Vec<Slide>,
    /// Furniture.
    pub rooms: Vec<Room>,
    /// Seats for driving whose place is known, by id.
    pub seats: Vec<(String, (f64, f64))>,
}

impl PlanShape {
    /// The unit ready to drive: awning rolled in, slide-outs in, cord put away.
    #[must_use]
    pub fn stowed(&self) -> Self {
        let awning = self.awning.map(|awning| Awning { reach: 0.0, ..awning });
        Self { awning, slides: Vec::new(), cord: None, ..self.clone() }
    }

    /// Where the axles are, in inches from the nose.
    #[must_use]
    pub fn axles(&self) -> Vec<f64> {
        let rear = self.length - self.rear_overhang;
        match self.wheelbase {
            Some(base) => vec![rear - base, rear],
            // Wheels of 27 in stand close behind each other.
            None if self.tandem => vec![rear - 17.0, rear + 17.0],
            None => vec![rear],
        }
    }

    /// How far slide-outs reach beyond the body on a side, in inches.
    #[must_use]
    pub fn reach(&self, side: Side) -> f64 {
        self.slides.iter().filter(|slide| slide.side == side).map(|slide| slide.reach).fold(0.0, f64::max)
    }
}

/// A door or a window in the outer wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Door {
    /// Its middle.
    pub at: (f64, f64),
    /// Its width in inches.
    pub width: f64,
}

/// An awning along a side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Awning {
    /// On which side.
    pub side: Side,
    /// Where it begins.
    pub from_y: f64,
    /// Where it ends.
    pub to_y: f64,
    /// How far it reaches out, in inches.
    pub reach: f64,
}

/// A room that slides out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slide {
    /// On which side.
    pub side: Side,
    /// Where it begins.
    pub from_y: f64,
    /// Where it ends.
    pub to_y: f64,
    /// How far it reaches out, in inches.
    pub reach: f64,
}

/// Furniture that is drawn in plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RoomKind {
    /// A bed, with pillows.
    Bed,
    /// A bunk: a bed drawn dashed, since it lies above something.
    Bunk,
    /// Two benches and a table.
    Dinette,
    /// A sofa.
    Sofa,
    /// Sink and burners.
    Galley,
    /// Shower, basin and toilet.
    Bath,
    /// A toilet alone.
    Toilet,
    /// A shower alone.
    Shower,
    /// A wardrobe with hangers.
    Wardrobe,
    /// A fridge.
    Fridge,
    /// The seats of the cab.
    Cab,
    /// A single seat with a belt.
    Seat,
    /// A place to put things.
    Storage,
    /// A table alone.
    Table,
}

/// A piece of furniture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// What it is.
    pub kind: RoomKind,
    /// One corner.
    pub from: (f64, f64),
    /// The corner across.
    pub to: (f64, f64),
}

/// How a stop stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PegState {
    /// Not yet reached.
    Open,
    /// Where the walk is.
    Here,
    /// Some of its steps are shown.
    PartDone,
    /// All shown and answered.
    Done,
    /// Passed over, with a reason.
    Skipped,
    /// Shown, but a caution waits for its answer.
    Unanswered,
    /// No stop, but a place that was pointed at.
    Chosen,
}

/// A stop of the walk.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Peg {
    /// Its number, which it keeps.
    pub number: u16,
    /// The true point.
    pub at: (f64, f64),
    /// Whether it lies inside the unit.
    pub inside: bool,
    /// How it stands.
    pub state: PegState,
}

/// A place to point at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanPlace {
    /// Where.
    pub at: (f64, f64),
    /// Whether it was pointed at.
    pub chosen: bool,
}

/// A condition mark on the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanMark {
    /// Where.
    pub at: (f64, f64),
    /// Its number.
    pub number: u16,
}

/// How the plan lies on the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Orientation {
    /// Nose up: beside the words, in landscape.
    NoseUp,
    /// Nose to the left: as the left side is seen when one stands before it. The left side is at the bottom.
    NoseLeft,
    /// Nose to the right: as the right side is seen when one stands before it. The right side is at the bottom.
    NoseRight,
}

impl Orientation {
    /// How the plan lies as a strip for one who stands before this side.
    #[must_use]
    pub const fn standing_at(side: Side) -> Self {
        match side {
            Side::Left => Self::NoseLeft,
            Side::Right => Self::NoseRight,
        }
    }
}

/// Which stops the plan shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Floor {
    /// Those outside, on the loop around the unit.
    Outside,
    /// Those inside, on a larger drawing of the unit.
    Inside,
}
