//! Regions of a unit. Never 'left' or 'right': the curb side differs by country.

use serde::{Deserialize, Serialize};

/// A station of the unit, in the order of the walk.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Station {
    /// Office or kiosk desk.
    Desk,
    /// Curb side, middle.
    CurbMid,
    /// Curb side, rear third.
    CurbRear,
    /// Back of the unit.
    Rear,
    /// Street side, rear third.
    StreetRear,
    /// Street side, middle.
    StreetMid,
    /// Street side, front third.
    StreetFront,
    /// Nose of the unit.
    Front,
    /// Curb side, front third.
    CurbFront,
    /// Roof, seen from the ground only.
    Roof,
    /// Seen by kneeling beside, never by crawling under.
    Under,
    /// Every side or the whole unit.
    Any,
    /// Just inside the entry door.
    Entry,
    /// Kitchen.
    Galley,
    /// Dinette and sofa.
    Living,
    /// Passage inside.
    Hall,
    /// Toilet and shower.
    Bath,
    /// Main bed.
    Bed,
    /// Over-cab or bunk bed.
    Bunk,
    /// Driver and passenger seats.
    Cab,
    /// Trailer A-frame and coupler.
    Tongue,
    /// The car or truck that pulls.
    TowVehicle,
    /// Spoken in the cab before leaving.
    Road,
    /// Emergency card; no position.
    Card,
}

impl Station {
    /// The station in kebab case, as keys of messages and records spell it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Desk => "desk",
            Self::CurbMid => "curb-mid",
            Self::CurbRear => "curb-rear",
            Self::Rear => "rear",
            Self::StreetRear => "street-rear",
            Self::StreetMid => "street-mid",
            Self::StreetFront => "street-front",
            Self::Front => "front",
            Self::CurbFront => "curb-front",
            Self::Roof => "roof",
            Self::Under => "under",
            Self::Any => "any",
            Self::Entry => "entry",
            Self::Galley => "galley",
            Self::Living => "living",
            Self::Hall => "hall",
            Self::Bath => "bath",
            Self::Bed => "bed",
            Self::Bunk => "bunk",
            Self::Cab => "cab",
            Self::Tongue => "tongue",
            Self::TowVehicle => "tow-vehicle",
            Self::Road => "road",
            Self::Card => "card",
        }
    }

    /// Whether it lies inside the unit, cab included.
    #[must_use]
    pub fn is_inside(self) -> bool {
        (Self::Entry..=Self::Cab).contains(&self)
    }
}
