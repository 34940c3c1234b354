//! Units and writing for the gallery; sizes from the demo lot's data sheets, furniture invented.

use super::{InkPoint, STATES, Stroke};
use crate::kiosk::plan::{Awning, BodyKind, Door, Peg, PegState, PlanShape, Room, RoomKind, Side, Slide};

fn room(kind: RoomKind, from: (f64, f64), to: (f64, f64)) -> Room {
    Room { kind, from, to }
}

pub fn wren() -> PlanShape {
    PlanShape {
        kind: BodyKind::ClassC,
        length: 312.0,
        width: 99.0,
        tongue: 0.0,
        curb: Side::Right,
        wheelbase: Some(190.0),
        rear_overhang: 94.0,
        dual_rear: true,
        tandem: false,
        doors: vec![Door { at: (49.0, 160.0), width: 28.0 }],
        windows: vec![Door { at: (46.0, 286.0), width: 22.0 }],
        cord: Some((-49.0, 176.0)),
        cylinders: false,
        burners: 3,
        awning: Some(Awning { side: Side::Right, from_y: 106.0, to_y: 298.0, reach: 96.0 }),
        slides: vec![],
        seats: vec![],
        rooms: vec![
            room(RoomKind::Cab, (-30.0, 30.0), (30.0, 56.0)),
            room(RoomKind::Bunk, (-44.0, 62.0), (44.0, 92.0)),
            room(RoomKind::Dinette, (-46.0, 98.0), (-8.0, 168.0)),
            room(RoomKind::Sofa, (20.0, 98.0), (46.0, 142.0)),
            room(RoomKind::Galley, (-46.0, 174.0), (-22.0, 230.0)),
            room(RoomKind::Fridge, (22.0, 182.0), (46.0, 208.0)),
            room(RoomKind::Bed, (-45.0, 236.0), (20.0, 308.0)),
            room(RoomKind::Bath, (24.0, 214.0), (46.0, 308.0)),
        ],
    }
}

pub fn plover() -> PlanShape {
    PlanShape {
        kind: BodyKind::ClassB,
        length: 228.0,
        width: 80.0,
        tongue: 0.0,
        curb: Side::Right,
        wheelbase: Some(136.0),
        rear_overhang: 55.0,
        dual_rear: false,
        tandem: false,
        doors: vec![Door { at: (40.0, 104.0), width: 44.0 }, Door { at: (0.0, 228.0), width: 60.0 }],
        windows: vec![],
        cord: Some((-40.0, 212.0)),
        cylinders: false,
        burners: 1,
        awning: Some(Awning { side: Side::Right, from_y: 80.0, to_y: 200.0, reach: 84.0 }),
        slides: vec![],
        seats: vec![],
        rooms: vec![
            room(RoomKind::Cab, (-30.0, 48.0), (30.0, 76.0)),
            room(RoomKind::Galley, (-37.0, 88.0), (-15.0, 140.0)),
            room(RoomKind::Toilet, (13.0, 130.0), (37.0, 158.0)),
            room(RoomKind::Bed, (-37.0, 162.0), (37.0, 224.0)),
        ],
    }
}

pub fn heron() -> PlanShape {
    PlanShape {
        kind: BodyKind::Trailer,
        length: 288.0,
        width: 96.0,
        tongue: 44.0,
        curb: Side::Right,
        wheelbase: None,
        rear_overhang: 114.0,
        dual_rear: false,
        tandem: true,
        doors: vec![Door { at: (48.0, 170.0), width: 28.0 }],
        windows: vec![Door { at: (46.0, 28.0), width: 22.0 }],
        cord: Some((-48.0, 278.0)),
        cylinders: true,
        burners: 3,
        awning: Some(Awning { side: Side::Right, from_y: 30.0, to_y: 246.0, reach: 96.0 }),
        slides: vec![Slide { side: Side::Left, from_y: 110.0, to_y: 190.0, reach: 36.0 }],
        seats: vec![],
        rooms: vec![
            room(RoomKind::Bed, (-34.0, 4.0), (34.0, 80.0)),
            room(RoomKind::Dinette, (-84.0, 116.0), (-46.0, 184.0)),
            room(RoomKind::Galley, (22.0, 92.0), (45.0, 150.0)),
            room(RoomKind::Wardrobe, (-45.0, 84.0), (-22.0, 108.0)),
            room(RoomKind::Shower, (8.0, 244.0), (45.0, 284.0)),
            room(RoomKind::Toilet, (-22.0, 244.0), (6.0, 284.0)),
            room(RoomKind::Bunk, (-45.0, 200.0), (-24.0, 282.0)),
        ],
    }
}

pub fn pegs() -> Vec<Peg> {
    let outside = [
        ((49.0, 160.0), PegState::Done),
        ((49.0, 196.0), PegState::Done),
        ((49.0, 262.0), PegState::Unanswered),
        ((18.0, 312.0), PegState::Done),
        ((-18.0, 312.0), PegState::Skipped),
        ((-49.0, 275.0), PegState::Here),
        ((-49.0, 230.0), PegState::Open),
        ((-49.0, 190.0), PegState::PartDone),
        ((-49.0, 60.0), PegState::Open),
        ((0.0, 0.0), PegState::Open),
        ((49.0, 60.0), PegState::Open),
    ];
    let inside =
        [(40.0, 158.0), (-34.0, 200.0), (-30.0, 208.0), (-26.0, 130.0), (34.0, 250.0), (-10.0, 270.0)];
    let outside = outside.map(|(at, state)| Peg { number: 0, at, inside: false, state });
    let inside = inside.iter().zip(STATES).map(|(at, state)| Peg { number: 0, at: *at, inside: true, state });
    outside.into_iter().chain(inside).zip(1..).map(|(peg, number)| Peg { number, ..peg }).collect()
}

pub fn signature() -> Stroke {
    (0..90u16)
        .map(|step| {
            let t = f32::from(step) / 10.0;
            let x = 180.0 + t * 62.0 + 40.0 * (t * 1.7).sin();
            let y = 150.0 + 70.0 * (t * 2.1).cos() * (1.0 - t / 14.0);
            InkPoint { x: x as u16, y: y as u16 }
        })
        .collect()
}
