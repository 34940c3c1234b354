//! The layout of the plan, over units as they might be.

use iced::{Rectangle, Size};
use proptest::prelude::*;

use super::layout::{DRAWN, HIT};
use super::*;

mod hands;
mod sheets;

const UNIT: f32 = 1.0;

fn side() -> impl Strategy<Value = Side> {
    prop_oneof![Just(Side::Left), Just(Side::Right)]
}

fn kind() -> impl Strategy<Value = BodyKind> {
    prop_oneof![
        Just(BodyKind::ClassA),
        Just(BodyKind::ClassC),
        Just(BodyKind::ClassB),
        Just(BodyKind::Trailer)
    ]
}

fn slide(length: f64) -> impl Strategy<Value = Slide> {
    (side(), 0.1..0.5f64, 12.0..42.0f64).prop_map(move |(side, from, reach)| Slide {
        side,
        from_y: from * length,
        to_y: (from + 0.3) * length,
        reach,
    })
}

prop_compose! {
    /// Units of 15 to 40 ft with up to three slide-outs.
    fn shape()(length in 180.0..480.0f64)
        (kind in kind(), curb in side(), width in 75.0..102.0f64, tandem in any::<bool>(),
         base in 0.45..0.65f64, overhang in 0.2..0.32f64, tongue in 30.0..50.0f64,
         slides in prop::collection::vec(slide(length), 0..=3), length in Just(length))
        -> PlanShape {
        let trailer = kind == BodyKind::Trailer;
        PlanShape {
            kind, length, width, curb,
            tongue: if trailer { tongue } else { 0.0 },
            wheelbase: (!trailer).then_some(base * length),
            rear_overhang: overhang * length,
            dual_rear: false, tandem, doors: vec![], windows: vec![], cord: None, cylinders: false,
            burners: 3,
            awning: None, slides, rooms: vec![], seats: vec![],
        }
    }
}

/// Stops anywhere on the outline or inside, in parts of the unit.
fn stops() -> impl Strategy<Value = Vec<(u8, f64, bool)>> {
    prop::collection::vec((0..4u8, 0.0..1.0f64, any::<bool>()), 0..=14)
}

fn pegs(shape: &PlanShape, stops: &[(u8, f64, bool)]) -> Vec<Peg> {
    let (half, length) = (shape.width / 2.0, shape.length);
    stops
        .iter()
        .zip(1..)
        .map(|((wall, part, inside), number)| {
            let at = match wall {
                0 => (half, part * length),
                1 => (half - part * shape.width, length),
                2 => (-half, part * length),
                _ => (half - part * shape.width, -shape.tongue),
            };
            Peg { number, at, inside: *inside, state: PegState::Open }
        })
        .collect()
}

fn orientation() -> impl Strategy<Value = Orientation> {
    prop_oneof![Just(Orientation::NoseUp), Just(Orientation::NoseLeft), Just(Orientation::NoseRight)]
}

fn size() -> impl Strategy<Value = Size> {
    (320.0..1400.0f32, 320.0..1400.0f32).prop_map(|(width, height)| Size::new(width, height))
}

fn body(shape: &PlanShape) -> Part {
    shape.parts().into_iter().find(|part| part.kind == PartKind::Body).unwrap()
}

/// The least gap that the documentation of `layout` promises between two pegs of one edge.
fn promised(plan: &PlanLayout, edge: Edge) -> f32 {
    let first = match edge {
        Edge::Right => 0,
        Edge::Rear => 2,
        Edge::Left => 4,
        Edge::Front => 6,
    };
    let length = plan.loop_line[first].distance(plan.loop_line[first + 1]);
    let count = plan.pegs.iter().filter(|peg| peg.edge == Some(edge)).count();
    if count < 2 { HIT } else { HIT.min(length / (count - 1) as f32) }
}

proptest! {
    #[test]
    fn pegs_outside_keep_apart_and_in_view(
        shape in shape(), stops in stops(), size in size(), orientation in orientation()
    ) {
        let plan = layout(&shape, &pegs(&shape, &stops), size, orientation, Floor::Outside, UNIT);
        for (index, a) in plan.pegs.iter().enumerate() {
            let (edge_a, hit) = (a.edge.unwrap(), plan.hit(a));
            prop_assert!(hit.x >= -0.01 && hit.y >= -0.01, "{hit:?} leaves the view");
            prop_assert!(hit.x + hit.width <= size.width + 0.01, "{hit:?} leaves {size:?}");
            prop_assert!(hit.y + hit.height <= size.height + 0.01, "{hit:?} leaves {size:?}");
            for b in &plan.pegs[index + 1..] {
                // Round a corner of a very small view the hit areas may touch; what is drawn, 40 px, never does.
                let long = match orientation {
                    Orientation::NoseUp => size.height,
                    Orientation::NoseLeft | Orientation::NoseRight => size.width,
                };
                let around = if long >= 560.0 { HIT } else { 40.0 };
                let wanted = if a.edge == b.edge { promised(&plan, edge_a) } else { around };
                let gap = a.center.distance(b.center);
                prop_assert!(gap >= wanted - 0.05, "{} and {} are {gap} apart, not {wanted}", a.number, b.number);
            }
        }
    }

    #[test]
    fn pegs_inside_keep_apart_beside_the_walls(
        shape in shape(), stops in stops(), size in size(), orientation in orientation()
    ) {
        let plan = layout(&shape, &pegs(&shape, &stops), size, orientation, Floor::Inside, UNIT);
        let walls = plan.bounds(&body(&shape));
        for peg in &plan.pegs {
            prop_assert!(!walls.contains(peg.center), "{peg:?} stands on the floor");
            prop_assert!(Rectangle::with_size(size).expand(0.01).contains(peg.center));
        }
        let long = if orientation == Orientation::NoseUp { size.height } else { size.width };
        // Corners at the nose are kept free; each column has room for so many.
        let column = ((long - 78.0 - 30.0) / HIT).floor().max(0.0) as usize + 1;
        if plan.pegs.len() <= 2 * column {
            prop_assert!(plan.smallest_gap() >= HIT - 0.05, "{}", plan.smallest_gap());
        }
    }

    #[test]
    fn the_way_inside_goes_along_and_across_and_never_aslant(shape in shape(), stops in stops(), size in size()) {
        let mut pegs = pegs(&shape, &stops);
        for peg in &mut pegs {
            peg.state = PegState::Done;
        }
        let plan = layout(&shape, &pegs, size, Orientation::NoseUp, Floor::Inside, UNIT);
        let aisles: Vec<f32> = plan.ways.iter().filter_map(|way| way.first()).map(|from| from.x).collect();
        prop_assert!(aisles.windows(2).all(|two| (two[0] - two[1]).abs() < 0.01), "one aisle: {aisles:?}");
        for way in plan.ways.iter().chain(&plan.walked) {
            for leg in way.windows(2) {
                let aslant = (leg[0].x - leg[1].x).abs().min((leg[0].y - leg[1].y).abs());
                prop_assert!(aslant < 0.01, "{leg:?}");
            }
        }
    }

    #[test]
    fn no_peg_lies_over_the_end_of_a_leader(
        shape in shape(), stops in stops(), size in size(), orientation in orientation(), inside in any::<bool>()
    ) {
        let floor = if inside { Floor::Inside } else { Floor::Outside };
        let plan = layout(&shape, &pegs(&shape, &stops), size, orientation, floor, UNIT);
        for peg in &plan.pegs {
            for other in &plan.pegs {
                // A leader ends in a dot of 8 px.
                let free = peg.center.distance(other.point);
                prop_assert!(free >= DRAWN / 2.0 + 4.0, "{} covers the place of {}", peg.number, other.number);
            }
        }
    }

    #[test]
    fn a_leader_leads_to_the_true_point(
        shape in shape(), stops in stops(), size in size(), orientation in orientation(), inside in any::<bool>()
    ) {
        let floor = if inside { Floor::Inside } else { Floor::Outside };
        let pegs = pegs(&shape, &stops);
        let plan = layout(&shape, &pegs, size, orientation, floor, UNIT);
        prop_assert_eq!(plan.pegs.len(), pegs.iter().filter(|peg| peg.inside == inside).count());
        for placed in &plan.pegs {
            let peg = pegs.iter().find(|peg| peg.number == placed.number).unwrap();
            let (x, y) = plan.on_unit(placed.point);
            prop_assert!((x - peg.at.0).abs() < 0.05 && (y - peg.at.1).abs() < 0.05);
        }
    }

    #[test]
    fn what_lies_under_the_finger_stays_there(
        shape in shape(), size in size(), orientation in orientation(), factor in 1.1..3.0f32,
        x in 0.2..0.8f32, y in 0.2..0.8f32
    ) {
        let seen = (size, orientation, Floor::Inside);
        let plan = layout_zoomed(&shape, &[], seen, UNIT, Zoom::default());
        let finger = plan.middle() + iced::Vector::new(size.width * (x - 0.5), size.height * (y - 0.5)) * 0.2;
        let place = plan.on_unit(finger);
        let zoom = plan.larger(factor, finger);
        let nearer = layout_zoomed(&shape, &[], seen, UNIT, zoom);
        prop_assert!((nearer.scale / plan.scale - factor).abs() < 0.01);
        // Unless that place lies off the unit, where the view does not follow.
        let about = zoom.about();
        if about.0.abs() < shape.width / 2.0 && about.1 > 0.0 && about.1 < shape.length {
            let now = nearer.place(place);
            prop_assert!(now.distance(finger) < 0.5, "{now:?} is not {finger:?}");
        }
        let moved = layout_zoomed(&shape, &[], seen, UNIT, nearer.moved(iced::Vector::new(0.0, 0.0)));
        prop_assert!((moved.scale - nearer.scale).abs() < 1e-3);
    }

    #[test]
    fn from_nearer_by_only_what_is_in_view_has_a_peg(
        shape in shape(), stops in stops(), size in size(), times in 1.5..5.0f32, part in 0.0..1.0f64
    ) {
        for floor in [Floor::Inside, Floor::Outside] {
            let zoom = Zoom::new(times, (0.0, part * shape.length));
            let seen = (size, Orientation::NoseUp, floor);
            let plan = layout_zoomed(&shape, &pegs(&shape, &stops), seen, UNIT, zoom);
            for peg in &plan.pegs {
                prop_assert!(Rectangle::with_size(size).expand(0.01).contains(peg.center), "{peg:?}");
            }
        }
    }

    #[test]
    fn both_axes_have_one_scale_and_axles_are_where_the_sheet_says(
        shape in shape(), size in size(), orientation in orientation()
    ) {
        let plan = layout(&shape, &[], size, orientation, Floor::Outside, UNIT);
        let nose = plan.place((0.0, 0.0));
        let across = nose.distance(plan.place((shape.width, 0.0))) / shape.width as f32;
        let along = nose.distance(plan.place((0.0, shape.length))) / shape.length as f32;
        prop_assert!((across - along).abs() <= 1e-3 * along, "{across} and {along}");
        let body = nose.distance(plan.place((0.0, shape.length)));
        let rear = shape.length - shape.rear_overhang;
        let known = match shape.wheelbase {
            Some(base) => vec![rear - base, rear],
            None if shape.tandem => vec![rear - 17.0, rear + 17.0],
            None => vec![rear],
        };
        prop_assert_eq!(shape.axles().len(), known.len());
        for (axle, known) in shape.axles().into_iter().zip(known) {
            let drawn = f64::from(nose.distance(plan.place((0.0, axle))) / body) * shape.length;
            prop_assert!((drawn - known).abs() <= 0.01 * shape.length, "{drawn} is not {known}");
        }
    }

    #[test]
    fn a_place_in_the_view_leads_back_to_the_place_on_the_unit(
        shape in shape(), size in size(), orientation in orientation(), x in -50.0..50.0f64, y in 0.0..480.0f64
    ) {
        let plan = layout(&shape, &[], size, orientation, Floor::Inside, UNIT);
        let (back_x, back_y) = plan.on_unit(plan.place((x, y)));
        prop_assert!((back_x - x).abs() < 0.05 && (back_y - y).abs() < 0.05, "{back_x}, {back_y}");
    }

    #[test]
    fn the_same_input_gives_the_same_layout(shape in shape(), stops in stops(), size in size()) {
        let pegs = pegs(&shape, &stops);
        let mut turned = pegs.clone();
        turned.reverse();
        for floor in [Floor::Outside, Floor::Inside] {
            let first = layout(&shape, &pegs, size, Orientation::NoseUp, floor, UNIT);
            prop_assert_eq!(&first, &layout(&shape, &turned, size, Orientation::NoseUp, floor, UNIT));
        }
    }
}

/// The demo lot's Wren: wheelbase 190 in, rear overhang 94 in, length 312 in (handbook, E.1.2).
#[test]
fn wren_has_its_axles_where_the_handbook_puts_them() {
    let wren = crate::kiosk::ui::gallery::wren();
    let known = [28.0, 218.0];
    for (axle, known) in wren.axles().into_iter().zip(known) {
        assert!((axle - known).abs() < 1e-9, "{axle}");
    }
}

#[test]
fn the_side_one_stands_at_is_at_the_bottom_of_a_strip() {
    let wren = crate::kiosk::ui::gallery::wren();
    for side in [Side::Left, Side::Right] {
        let strip = Orientation::standing_at(side);
        let plan = layout(&wren, &[], Size::new(752.0, 330.0), strip, Floor::Outside, UNIT);
        let near = plan.place((side.sign() * 40.0, 100.0));
        let far = plan.place((-side.sign() * 40.0, 100.0));
        assert!(near.y > far.y, "{side:?}");
    }
}

#[test]
fn the_line_turns_solid_only_between_stops_that_were_reached() {
    let wren = crate::kiosk::ui::gallery::wren();
    let pegs = crate::kiosk::ui::gallery::pegs();
    let plan = layout(&wren, &pegs, Size::new(336.0, 700.0), Orientation::NoseUp, Floor::Outside, UNIT);
    // Of eleven stops outside, 1 to 6 have been reached, and 8 by itself.
    assert_eq!(plan.walked.len(), 5);
    let around_the_rear = &plan.walked[2];
    assert!(around_the_rear.len() > 2, "the way from 3 to 4 goes round a corner: {around_the_rear:?}");
    assert_eq!(plan.standing(), Some(Edge::Left));
}
