//! A data sheet as the plan view draws it.

use std::collections::BTreeMap;

use super::plan::{self, BodyKind, PlanShape};
use crate::measure::{Length, Measure};
use crate::script::Scripts;
use crate::unit::{self, Fitted, Sheet, UnitKind};

/// Places that are doors, whether they are ways out or not.
const DOORS: [&str; 3] = ["entry-door", "driver-door", "passenger-door"];

fn inches(length: &Length) -> f64 {
    length.quantity().to(Measure::Inch).unwrap_or(0.0)
}

fn point((x, y): &(Length, Length)) -> (f64, f64) {
    (inches(x), inches(y))
}

fn side(side: unit::Side) -> plan::Side {
    match side {
        unit::Side::Left => plan::Side::Left,
        unit::Side::Right => plan::Side::Right,
    }
}

/// The units of a lot as the plan draws them.
#[must_use]
pub fn all(lot: &Scripts) -> BTreeMap<String, PlanShape> {
    lot.units.iter().map(|(id, sheet)| (id.clone(), of(&sheet.value))).collect()
}

/// The unit as seen from above, in inches.
#[must_use]
pub fn of(sheet: &Sheet) -> PlanShape {
    let size = &sheet.size.value;
    let curb = side(sheet.curb);
    let length = inches(&size.body_length);
    let (doors, windows) = openings(sheet);
    PlanShape {
        kind: match sheet.kind {
            UnitKind::ClassA => BodyKind::ClassA,
            UnitKind::ClassC => BodyKind::ClassC,
            UnitKind::ClassB => BodyKind::ClassB,
            UnitKind::Trailer => BodyKind::Trailer,
        },
        length,
        width: inches(&size.width),
        tongue: if sheet.kind == UnitKind::Trailer { inches(&size.length) - length } else { 0.0 },
        curb,
        wheelbase: size.wheelbase.get().map(inches),
        rear_overhang: inches(&size.rear_overhang),
        dual_rear: sheet.axles.iter().any(|a| a.wheels > 2),
        tandem: sheet.kind == UnitKind::Trailer && sheet.axles.len() > 1,
        doors,
        windows,
        cord: cord(sheet, curb, length),
        burners: match &sheet.cook.value {
            Fitted::Is(cook) => cook.burners,
            Fitted::NotFitted => 0,
        },
        cylinders: matches!(&sheet.propane.value, Fitted::Is(p) if p.kind == unit::PropaneKind::Cylinders),
        awning: awning(sheet, curb, length),
        slides: sheet
            .slides
            .iter()
            .map(|s| plan::Slide {
                side: side(s.side),
                from_y: inches(&s.from),
                to_y: inches(&s.to),
                reach: inches(&s.reach),
            })
            .collect(),
        rooms: sheet.rooms.iter().map(|r| room(sheet, r)).collect(),
        seats: sheet.seats.iter().filter_map(|s| Some((s.id.clone(), point(s.at.as_ref()?)))).collect(),
    }
}

/// The awning lies around its place, as far as the body reaches.
fn awning(sheet: &Sheet, curb: plan::Side, length: f64) -> Option<plan::Awning> {
    let Fitted::Is(fitted) = &sheet.awning.value else { return None };
    let along = inches(&fitted.length).min(length);
    let middle =
        sheet.places.get("awning").and_then(|p| p.value.at.as_ref()).map_or(length / 2.0, |at| point(at).1);
    let from_y = (middle - along / 2.0).clamp(0.0, length - along);
    Some(plan::Awning { side: curb, from_y, to_y: from_y + along, reach: inches(&fitted.reach) })
}

/// A piece of furniture; what stands in a slide-out has moved out with it.
fn room(sheet: &Sheet, room: &unit::Room) -> plan::Room {
    let kind = match room.kind {
        unit::RoomKind::Bed => plan::RoomKind::Bed,
        unit::RoomKind::Bunk => plan::RoomKind::Bunk,
        unit::RoomKind::Dinette => plan::RoomKind::Dinette,
        unit::RoomKind::Sofa => plan::RoomKind::Sofa,
        unit::RoomKind::Galley => plan::RoomKind::Galley,
        unit::RoomKind::Bath => plan::RoomKind::Bath,
        unit::RoomKind::Wardrobe => plan::RoomKind::Wardrobe,
        unit::RoomKind::Cab => plan::RoomKind::Cab,
    };
    let (from, to) = (point(&room.from), point(&room.to));
    let out = moved_out(sheet, from, to);
    plan::Room { kind, from: (from.0 + out, from.1), to: (to.0 + out, to.1) }
}

/// How far to the right furniture moves as the slide-out that it stands in goes out: what lies within its ends, on its
/// side of the middle, and near its wall.
fn moved_out(sheet: &Sheet, from: (f64, f64), to: (f64, f64)) -> f64 {
    let half = inches(&sheet.size.value.width) / 2.0;
    let (left, right) = (from.0.min(to.0), from.0.max(to.0));
    let (front, rear) = (from.1.min(to.1), from.1.max(to.1));
    let moves = |slide: &&unit::Slide| {
        let sign = side(slide.side).sign();
        let (near, far) = if sign < 0.0 { (-left, -right) } else { (right, left) };
        let within = inches(&slide.from) - 1.0 <= front && rear <= inches(&slide.to) + 1.0;
        within && far > 0.0 && near > half - 8.0 && near <= half + 1.0
    };
    let slide = sheet.slides.iter().find(moves);
    slide.map_or(0.0, |slide| side(slide.side).sign() * inches(&slide.reach))
}

/// Doors, and windows that are ways out. An exit in a wall outside is a door, one by a bed is a window.
fn openings(sheet: &Sheet) -> (Vec<plan::Door>, Vec<plan::Door>) {
    let at = |id: &str| sheet.places.get(id).map(|place| &place.value);
    let mut doors: Vec<plan::Door> = Vec::new();
    let mut windows: Vec<plan::Door> = Vec::new();
    let exits = sheet.exits.iter().map(|exit| exit.place.value.as_str());
    let others = exits.filter(|id| !DOORS.contains(id));
    for id in DOORS.into_iter().chain(others) {
        let Some((place, at)) = at(id).and_then(|p| Some((p, point(p.at.as_ref()?)))) else { continue };
        let sliding = id == "entry-door" && sheet.door.value.kind == unit::DoorKind::Sliding;
        if place.station.is_inside() {
            windows.push(plan::Door { at, width: 22.0 });
        } else {
            doors.push(plan::Door { at, width: if sliding { 44.0 } else { 26.0 } });
        }
    }
    (doors, windows)
}

/// Where the cord comes out: at its hatch, else at the rear of the street side.
fn cord(sheet: &Sheet, curb: plan::Side, length: f64) -> Option<(f64, f64)> {
    let Fitted::Is(_) = &sheet.shore.value else { return None };
    let place = sheet.places.get("cord-hatch").and_then(|place| place.value.at.as_ref()).map(point);
    place.or(Some((-curb.sign() * inches(&sheet.size.value.width) / 2.0, length * 5.0 / 6.0)))
}
