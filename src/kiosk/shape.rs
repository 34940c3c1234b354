//! A data sheet as the plan view draws it.

use super::plan::{self, BodyKind, PlanShape};
use crate::measure::{Length, Measure};
use crate::unit::{self, Fitted, Sheet, UnitKind};

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

/// The unit as seen from above, in inches.
#[must_use]
pub fn of(sheet: &Sheet) -> PlanShape {
    let size = &sheet.size.value;
    let curb = side(sheet.curb);
    let length = inches(&size.body_length);
    let door = sheet.places.get("entry-door").and_then(|p| p.value.at.as_ref()).map(point);
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
        doors: door.map(|at| plan::Door { at, width: 26.0 }).into_iter().collect(),
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
        rooms: sheet.rooms.iter().map(room).collect(),
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

fn room(room: &unit::Room) -> plan::Room {
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
    plan::Room { kind, from: point(&room.from), to: point(&room.to) }
}
