//! The plan of any data sheet: measures, thirds, and that all of it stays in its box.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use proptest::prelude::*;

use super::super::*;
use super::{UNIT, orientation};
use crate::kiosk::shape;
use crate::measure::Length;
use crate::script::{Bundle, Scripts};
use crate::unit::{self, Fitted, PlaceEntry, Sheet, Station, UnitKind};
use iced::{Rectangle, Size};

fn lot() -> &'static Scripts {
    static LOT: OnceLock<std::sync::Arc<Scripts>> = OnceLock::new();
    LOT.get_or_init(|| crate::kiosk::scripts(Bundle::demo()).unwrap())
}

fn inches(value: f64) -> Length {
    format!("{value:.1} in").parse().unwrap()
}

/// What is known of a generated sheet, beside the sheet itself.
#[derive(Clone)]
struct Known {
    sheet: Sheet,
    length: f64,
    width: f64,
    tongue: f64,
    axles: Vec<f64>,
    /// Sign of the side, ends, reach.
    slides: Vec<(f64, f64, f64, f64)>,
    /// Length and reach.
    awning: Option<(f64, f64)>,
    door: (f64, f64),
    /// 1 where the curb is on the right.
    curb: f64,
}

impl std::fmt::Debug for Known {
    /// Without the sheet, which is long and says nothing more.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let body = (self.sheet.kind, self.length, self.width, self.tongue, self.curb);
        write!(f, "{body:?} axles {:?} slides {:?}", self.axles, self.slides)?;
        write!(f, " awning {:?} door {:?}", self.awning, self.door)
    }
}

/// One tenth of an inch is as fine as a sheet is written here.
fn tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

const OUTSIDE: [Station; 8] = [
    Station::CurbFront,
    Station::CurbMid,
    Station::CurbRear,
    Station::StreetFront,
    Station::StreetMid,
    Station::StreetRear,
    Station::Front,
    Station::Rear,
];

prop_compose! {
    /// Sheets of 15 to 40 ft, of every kind, with none to three slide-outs.
    fn known()(length in 180.0..480.0f64)
        (kind in 0..4usize, right in any::<bool>(), width in 75.0..102.0f64, axles in 1..=2usize,
         base in 0.45..0.6f64, overhang in 0.2..0.3f64, tongue in 30.0..55.0f64,
         slides in prop::collection::vec((any::<bool>(), 0.05..0.6f64, 0.1..0.3f64, 12.0..42.0f64), 0..=3),
         awning in prop::option::of((0.3..0.8f64, 60.0..110.0f64)), door in 0.36..0.64f64,
         length in Just(tenth(length))) -> Known
    {
        let (width, overhang, base) = (tenth(width), tenth(overhang * length), tenth(base * length));
        let kinds = [UnitKind::ClassA, UnitKind::ClassB, UnitKind::ClassC, UnitKind::Trailer];
        let trailer = kinds[kind] == UnitKind::Trailer;
        let tongue = if trailer { tenth(tongue) } else { 0.0 };
        let mut sheet = lot().units[if trailer { "heron" } else { "wren" }].value.clone();
        sheet.kind = kinds[kind];
        sheet.curb = if right { unit::Side::Right } else { unit::Side::Left };
        let curb = if right { 1.0 } else { -1.0 };
        let size = &mut sheet.size.value;
        (size.length, size.body_length) = (inches(length + tongue), inches(length));
        (size.width, size.rear_overhang) = (inches(width), inches(overhang));
        size.wheelbase = if trailer { Fitted::NotFitted } else { Fitted::Is(inches(base)) };
        sheet.axles.truncate(if trailer { axles } else { 2 });
        let rear = length - overhang;
        let axles = match (trailer, axles) {
            // Heron's tires, ST225/75R15, are 28.3 in high; two axles stand 34 in apart.
            (true, 2) => vec![rear - 17.0, rear + 17.0],
            (true, _) => vec![rear],
            (false, _) => vec![rear - base, rear],
        };
        let slides: Vec<_> = slides.into_iter().map(|(right, from, long, reach)| {
            let sign = if right { 1.0 } else { -1.0 };
            (sign, tenth(from * length), tenth((from + long) * length), tenth(reach))
        }).collect();
        sheet.slides = slides.iter().map(|(sign, from, to, reach)| unit::Slide {
            side: if *sign > 0.0 { unit::Side::Right } else { unit::Side::Left },
            from: inches(*from), to: inches(*to), reach: inches(*reach),
        }).collect();
        let awning = awning.map(|(part, reach)| (tenth(part * length), tenth(reach)));
        sheet.awning.value = match (awning, &lot().units["wren"].value.awning.value) {
            (Some((along, reach)), Fitted::Is(fitted)) => {
                let mut fitted = fitted.clone();
                (fitted.length, fitted.reach) = (inches(along), inches(reach));
                Fitted::Is(fitted)
            }
            _ => Fitted::NotFitted,
        };
        let door = (curb * tenth(width / 2.0), tenth(door * length));
        let mut places = BTreeMap::new();
        let entry = sheet.places["entry-door"].clone();
        let mut place = |id: &str, station, at: Option<(f64, f64)>| {
            let mut placed = entry.clone();
            placed.value = PlaceEntry { station, at: at.map(|(x, y)| (inches(x), inches(y))), words: None };
            places.insert(id.to_owned(), placed);
        };
        place("entry-door", Station::CurbMid, Some(door));
        for (index, station) in OUTSIDE.into_iter().enumerate() {
            place(&format!("at-{index}"), station, None);
        }
        sheet.places = places;
        sheet.exits.clear();
        sheet.rooms.clear();
        Known { sheet, length, width, tongue, axles, slides, awning, door, curb }
    }
}

/// Views as they occur: beside the words, larger, the strip in portrait, the page of marks.
fn sizes() -> impl Strategy<Value = Size> {
    prop_oneof![
        Just(Size::new(312.0, 536.0)),
        Just(Size::new(312.0, 700.0)),
        Just(Size::new(746.0, 336.0)),
        Just(Size::new(820.0, 520.0)),
        (320.0..1200.0f32, 320.0..1200.0f32).prop_map(|(width, height)| Size::new(width, height)),
    ]
}

fn within_one_percent(drawn: f64, known: f64) -> bool {
    (drawn - known).abs() <= 0.01 * known.abs().max(1.0)
}

/// A part along and across the unit, measured on the screen in parts of the body and given back in inches: from the
/// nose, from the middle, and its size.
struct Measured {
    along: (f64, f64),
    across: (f64, f64),
}

fn measured(plan: &PlanLayout, part: &Part, known: &Known) -> Measured {
    let shape = shape::of(&known.sheet);
    let body = shape.parts().into_iter().find(|part| part.kind == PartKind::Body).unwrap();
    let (body, part) = (plan.bounds(&body), plan.bounds(part));
    // In the view, the nose is above, at the left, or at the right.
    let (along, across): ([f32; 2], [f32; 2]) = match plan.orientation {
        Orientation::NoseUp => ([part.y - body.y, part.height], [part.x - body.center_x(), part.width]),
        Orientation::NoseLeft => {
            ([part.x - body.x, part.width], [body.center_y() - part.y - part.height, part.height])
        }
        Orientation::NoseRight => {
            ([body.x + body.width - part.x - part.width, part.width], [part.y - body.center_y(), part.height])
        }
    };
    let pixels = if plan.orientation == Orientation::NoseUp { body.height } else { body.width };
    let inch = known.length / f64::from(pixels);
    let span = |[from, long]: [f32; 2]| (f64::from(from) * inch, f64::from(from + long) * inch);
    Measured { along: span(along), across: span(across) }
}

proptest! {
    #[test]
    fn all_measures_are_those_of_the_sheet_within_one_percent(
        known in known(), size in sizes(), orientation in orientation(), inside in any::<bool>()
    ) {
        let floor = if inside { Floor::Inside } else { Floor::Outside };
        let shape = shape::of(&known.sheet);
        let plan = layout(&shape, &[], size, orientation, floor, UNIT);
        let of = |kind| -> Vec<Measured> {
            let parts = shape.parts().into_iter().filter(|part| part.kind == kind);
            parts.map(|part| measured(&plan, &part, &known)).collect()
        };
        let one = |drawn: f64, inches: f64| within_one_percent(drawn, inches);
        // Width and length have one scale.
        let body = &of(PartKind::Body)[0];
        prop_assert!(one(body.across.1 - body.across.0, known.width), "{:?}", body.across);
        prop_assert!(one(body.across.0 + body.across.1 + 100.0, 100.0), "not in the middle");
        // Wheels of both sides on each axle.
        let wheels = of(PartKind::Wheel);
        for axle in &known.axles {
            let on_it = wheels.iter().filter(|wheel| {
                let middle = f64::midpoint(wheel.along.0, wheel.along.1);
                (middle - axle).abs() <= 0.01 * known.length
            });
            prop_assert!(on_it.count() >= 2, "axle at {axle}");
        }
        let outs = of(PartKind::SlideOut);
        prop_assert_eq!(outs.len(), known.slides.len());
        for (slide, (sign, from, to, reach)) in outs.iter().zip(&known.slides) {
            prop_assert!(one(slide.along.0, *from) && one(slide.along.1, *to), "{:?}", slide.along);
            prop_assert!(one(slide.across.1 - slide.across.0, *reach), "{:?} is not {reach}", slide.across);
            let out = if *sign > 0.0 { slide.across.0 } else { -slide.across.1 };
            prop_assert!(one(out, known.width / 2.0), "it begins at its wall");
        }
        let cloth = of(PartKind::Awning);
        prop_assert_eq!(cloth.len(), usize::from(known.awning.is_some()));
        for (cloth, (along, reach)) in cloth.iter().zip(known.awning) {
            prop_assert!(one(cloth.along.1 - cloth.along.0, along), "{:?} is not {along}", cloth.along);
            prop_assert!(one(cloth.across.1 - cloth.across.0, reach));
            prop_assert!(f64::midpoint(cloth.across.0, cloth.across.1) * known.curb > 0.0, "on the curb side");
        }
        let door = &of(PartKind::Door)[0];
        prop_assert!(one(f64::midpoint(door.along.0, door.along.1), known.door.1));
        for coupler in of(PartKind::Coupler) {
            prop_assert!(one(-coupler.along.0, known.tongue), "{:?}", coupler.along);
        }
        prop_assert_eq!(of(PartKind::Coupler).len(), usize::from(known.tongue > 0.0));
    }

    #[test]
    fn what_has_no_point_is_drawn_inside_the_third_of_its_station(
        known in known(), size in sizes(), orientation in orientation()
    ) {
        let shape = shape::of(&known.sheet);
        let placed: Vec<(Station, Peg)> = known.sheet.places.values().zip(1..).map(|(place, number)| {
            let (station, at) = (place.value.station, place.value.at.as_ref());
            let at = at.map(|(x, y)| {
                let inch = |l: &Length| l.quantity().to(crate::measure::Measure::Inch).unwrap();
                (inch(x), inch(y))
            });
            let at = shape.point(station, at).unwrap();
            (station, Peg { number, at, inside: false, state: PegState::Open })
        }).collect();
        let pegs: Vec<Peg> = placed.iter().map(|(_, peg)| *peg).collect();
        let plan = layout(&shape, &pegs, size, orientation, Floor::Outside, UNIT);
        prop_assert_eq!(plan.pegs.len(), OUTSIDE.len() + 1);
        for (peg, (station, _)) in plan.pegs.iter().zip(&placed) {
            let (x, y) = plan.on_unit(peg.point);
            let third = known.length / 3.0;
            // Handbook 0.2: thirds of either side, the nose, and the back.
            let (from, to) = match station {
                Station::CurbFront | Station::StreetFront => (0.0, third),
                Station::CurbMid | Station::StreetMid => (third, 2.0 * third),
                Station::CurbRear | Station::StreetRear => (2.0 * third, known.length),
                Station::Front => (0.0, 0.0),
                _ => (known.length, known.length),
            };
            prop_assert!((from - 0.5..=to + 0.5).contains(&y), "{station:?} at {y}");
            let curb = x * known.curb;
            match station {
                Station::CurbFront | Station::CurbMid | Station::CurbRear => prop_assert!(curb > 1.0),
                Station::StreetFront | Station::StreetMid | Station::StreetRear => prop_assert!(curb < -1.0),
                _ => prop_assert!(curb.abs() < 1.0),
            }
        }
    }

    #[test]
    fn the_plan_stays_inside_its_box(
        known in known(), size in sizes(), orientation in orientation(), inside in any::<bool>()
    ) {
        let floor = if inside { Floor::Inside } else { Floor::Outside };
        let shape = shape::of(&known.sheet);
        let pegs: Vec<Peg> = OUTSIDE.into_iter().zip(1..).map(|(station, number)| {
            Peg { number, at: shape.point(station, None).unwrap(), inside, state: PegState::Here }
        }).collect();
        let plan = layout(&shape, &pegs, size, orientation, floor, UNIT);
        let view = Rectangle::with_size(size).expand(0.5);
        let holds = |r: Rectangle| r.is_within(&view);
        for part in shape.parts() {
            // Inside, the cloth is not drawn.
            if part.kind != PartKind::Awning || !inside {
                prop_assert!(holds(plan.bounds(&part)), "{part:?} leaves {size:?}: {:?}", plan.bounds(&part));
            }
        }
        for peg in &plan.pegs {
            prop_assert!(holds(plan.hit(peg)), "{peg:?} leaves {size:?}");
        }
        for point in plan.loop_line.iter().chain(plan.walked.iter().flatten()).chain(plan.people.iter().flatten()) {
            prop_assert!(view.contains(*point), "{point:?} leaves {size:?}");
        }
    }
}

/// Every demo unit fills its strip and its panel: at least three fifths of one of their sides.
#[test]
fn units_are_drawn_as_large_as_their_box_allows() {
    for (id, sheet) in &lot().units {
        let shape = shape::of(&sheet.value);
        let orientations = [
            (Size::new(312.0, 536.0), Orientation::NoseUp),
            (Size::new(746.0, 336.0), Orientation::standing_at(Side::Left)),
            (Size::new(746.0, 336.0), Orientation::standing_at(Side::Right)),
        ];
        for (size, orientation) in orientations {
            let plan = layout(&shape, &[], size, orientation, Floor::Outside, UNIT);
            let body = shape.parts().into_iter().find(|part| part.kind == PartKind::Body).unwrap();
            let body = plan.bounds(&body);
            let share = (body.width / size.width).max(body.height / size.height);
            assert!(share >= 0.36, "{id} {orientation:?}: {share}");
        }
    }
}

/// Heron's sofa and dinette stand in its slide-out, which reaches 36 in to the left (handbook, E.1.2).
#[test]
fn furniture_moves_out_with_its_slide() {
    let heron = shape::of(&lot().units["heron"].value);
    let of = |kind| heron.rooms.iter().find(|room| room.kind == kind).unwrap();
    assert!((of(RoomKind::Sofa).from.0 - (-46.0 - 36.0)).abs() < 1e-9);
    assert!((of(RoomKind::Dinette).from.0 - (-46.0 - 36.0)).abs() < 1e-9);
    assert!((of(RoomKind::Bath).from.0 - -46.0).abs() < 1e-9, "it stands behind the slide-out");
    assert!((of(RoomKind::Galley).from.0 - 20.0).abs() < 1e-9, "it stands across from it");
}
