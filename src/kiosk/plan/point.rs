//! Where on the unit something is that the sheet gives a station and perhaps no point for.

use super::{PlanShape, RoomKind, Side};
use crate::unit::Station;

impl PlanShape {
    /// The point of a place: its own, else the middle of its station's third, else of the furniture that the
    /// station is about. What is not on the unit has none.
    #[must_use]
    pub fn point(&self, station: Station, at: Option<(f64, f64)>) -> Option<(f64, f64)> {
        at.or_else(|| self.middle_of(station))
    }

    fn middle_of(&self, station: Station) -> Option<(f64, f64)> {
        let (half, length) = (self.width / 2.0, self.length);
        let curb = self.curb.sign() * half;
        let third = |index: f64| (index + 0.5) / 3.0 * length;
        Some(match station {
            Station::CurbFront => (curb, third(0.0)),
            Station::CurbMid | Station::Any | Station::Roof | Station::Under => (curb, third(1.0)),
            Station::CurbRear => (curb, third(2.0)),
            Station::StreetFront => (-curb, third(0.0)),
            Station::StreetMid => (-curb, third(1.0)),
            Station::StreetRear => (-curb, third(2.0)),
            Station::Front => (0.0, 0.0),
            Station::Rear => (0.0, length),
            Station::Entry => self.behind_the_door(),
            Station::Galley => self.room(&[RoomKind::Galley]).unwrap_or((0.0, third(1.0))),
            Station::Living => self.room(&[RoomKind::Sofa, RoomKind::Dinette]).unwrap_or((0.0, third(1.0))),
            Station::Bath => {
                let kinds = [RoomKind::Bath, RoomKind::Toilet, RoomKind::Shower];
                self.room(&kinds).unwrap_or((0.0, third(2.0)))
            }
            Station::Bed => self.room(&[RoomKind::Bed]).unwrap_or((0.0, third(2.0))),
            Station::Bunk => self.room(&[RoomKind::Bunk]).unwrap_or((0.0, third(0.0))),
            Station::Cab => self.room(&[RoomKind::Cab]).unwrap_or((0.0, third(0.0))),
            Station::Hall => (0.0, third(1.0)),
            Station::Tongue if self.tongue > 0.0 => (0.0, -self.tongue / 2.0),
            Station::Tongue | Station::Desk | Station::TowVehicle | Station::Road | Station::Card => {
                return None;
            }
        })
    }

    fn behind_the_door(&self) -> (f64, f64) {
        let (half, curb) = (self.width / 2.0, self.curb.sign());
        let y = self.doors.first().map_or(self.length / 2.0, |door| door.at.1);
        (curb * (half - 12.0), y.clamp(12.0, (self.length - 12.0).max(12.0)))
    }

    fn room(&self, kinds: &[RoomKind]) -> Option<(f64, f64)> {
        let found = kinds.iter().find_map(|kind| self.rooms.iter().find(|room| room.kind == *kind))?;
        Some((f64::midpoint(found.from.0, found.to.0), f64::midpoint(found.from.1, found.to.1)))
    }

    /// The station nearest to a point of the outline.
    #[must_use]
    pub fn station_at(&self, (x, y): (f64, f64)) -> Station {
        let half = self.width / 2.0;
        if self.tongue > 0.0 && y < 0.0 {
            return Station::Tongue;
        }
        let side = half - x.abs();
        if y < side && y < self.length / 3.0 {
            return Station::Front;
        }
        if self.length - y < side {
            return Station::Rear;
        }
        let curb = (x < 0.0) == (self.curb == Side::Left);
        let third = (y / (self.length / 3.0).max(1.0)) as i64;
        match (curb, third) {
            (true, ..=0) => Station::CurbFront,
            (true, 1) => Station::CurbMid,
            (true, _) => Station::CurbRear,
            (false, ..=0) => Station::StreetFront,
            (false, 1) => Station::StreetMid,
            (false, _) => Station::StreetRear,
        }
    }
}
