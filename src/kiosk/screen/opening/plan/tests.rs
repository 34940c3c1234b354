//! Which questions a unit is asked, where presses lead, and that no press leads out of bounds.

use std::sync::{Arc, OnceLock};

use proptest::prelude::*;

use super::ask::To;
use super::*;
use crate::figures::Person;
use crate::measure::Quantity;
use crate::script::{Bundle, Scripts};

const ALL: [Ask; 13] = [
    Ask::Bags,
    Ask::Coldest,
    Ask::Highest,
    Ask::Hottest,
    Ask::Sun,
    Ask::Generator,
    Ask::Driving,
    Ask::TowBags,
    Ask::Fresh,
    Ask::Grey,
    Ask::Toilet,
    Ask::Propane,
    Ask::Fuel,
];
const SYSTEMS: [System; 3] = [System::Us, System::Uk, System::Metric];

/// The demo lot.
fn lot() -> &'static Scripts {
    static LOT: OnceLock<Arc<Scripts>> = OnceLock::new();
    LOT.get_or_init(|| crate::kiosk::scripts(Bundle::demo()).unwrap())
}

fn wren() -> Facts {
    lot().facts("wren").unwrap()
}

fn asked(facts: &Facts) -> Vec<Ask> {
    ALL.into_iter().filter(|ask| ask.suits(facts)).collect()
}

/// By the data sheets: Wren has a generator and no solar panels, Heron neither, and it is towed.
#[test]
fn a_unit_is_asked_what_its_equipment_makes_sensible() {
    use Ask::{Bags, Coldest, Driving, Fresh, Fuel, Generator, Grey, Highest, Propane, Sun, Toilet, TowBags};
    let lot = lot();
    let wren = asked(&wren());
    assert_eq!(wren, [Bags, Coldest, Highest, Generator, Fresh, Grey, Toilet, Propane, Fuel]);
    let heron = asked(&lot.facts("heron").unwrap());
    assert_eq!(heron, [Bags, Coldest, TowBags, Fresh, Grey, Toilet, Propane]);
    let plover = asked(&lot.facts("plover").unwrap());
    assert!(plover.contains(&Sun) && plover.contains(&Driving), "{plover:?}");
    assert!(!plover.contains(&TowBags) && !plover.contains(&Generator), "{plover:?}");
}

#[test]
fn presses_step_on_the_grid_of_the_reader() {
    let facts = wren();
    let after = |ask: Ask, told: &str, system, more| {
        let mut trip = Trip::default();
        let told = if told.is_empty() { None } else { Some(Quantity::parse(told).unwrap()) };
        match (ask, told) {
            (Ask::Coldest, told) => trip.coldest = ask::typed(told),
            (Ask::Highest, told) => trip.highest = ask::typed(told),
            (Ask::Bags, told) => trip.bags = ask::typed(told),
            (Ask::Fresh, told) => trip.start.fresh = ask::typed(told),
            (Ask::Fuel, told) => trip.start.fuel = ask::typed(told),
            (_, told) => assert_eq!(told, None),
        }
        let to = ask.pressed(&trip, &facts, system, more)?;
        ask.put(&mut trip, to, system);
        Some(ask.told(&trip).map(|q| q.to_string()).unwrap_or_default())
    };
    let is = |text: &str| Some(text.to_owned());
    // The lot lies at 5,200 ft.
    assert_eq!(after(Ask::Highest, "", System::Us, true), is("5500 ft"));
    assert_eq!(after(Ask::Highest, "", System::Us, false), is("5000 ft"));
    assert_eq!(after(Ask::Highest, "", System::Metric, true), is("1600 m"));
    // Told in other measures: the next step of the own grid. 8,900 ft are 2,712.7 m.
    assert_eq!(after(Ask::Highest, "8900 ft", System::Uk, true), is("2800 m"));
    assert_eq!(after(Ask::Highest, "8900 ft", System::Uk, false), is("2700 m"));
    assert_eq!(after(Ask::Coldest, "", System::Us, true), is("40 °F"));
    assert_eq!(after(Ask::Coldest, "0 °F", System::Us, false), is("-5 °F"));
    assert_eq!(after(Ask::Coldest, "-40 °F", System::Us, false), None);
    assert_eq!(after(Ask::Coldest, "-60 °F", System::Us, true), is("-40 °F"), "back within bounds");
    assert_eq!(after(Ask::Bags, "", System::Us, true), is("50 lb"));
    assert_eq!(after(Ask::Bags, "", System::Us, false), None);
    assert_eq!(after(Ask::Bags, "50 lb", System::Us, false), is(""), "none is told as nothing");
    assert_eq!(after(Ask::Bags, "3000 lb", System::Us, true), None);
    // The lot says that the fresh tank is full, and nothing of fuel.
    assert_eq!(after(Ask::Fresh, "", System::Us, true), None);
    assert_eq!(after(Ask::Fresh, "", System::Us, false), is("7/8"));
    assert_eq!(after(Ask::Fresh, "35 %", System::Us, true), is("3/8"));
    assert_eq!(after(Ask::Fuel, "", System::Us, true), is("1"));
}

#[test]
fn what_is_typed_of_the_tow_vehicle_is_read_or_told_wrong() {
    let read = |field: Field, text: &str, system| field.read(text, system).map(|q| q.map(|q| q.to_string()));
    assert_eq!(read(Field::Payload, " 1 437 ", System::Us), Ok(Some("1437 lb".into())));
    assert_eq!(read(Field::Length, "19.5", System::Us), Err(Wrong::Beyond { low: 90, high: 400 }));
    assert_eq!(read(Field::Length, "589", System::Metric), Ok(Some("589 cm".into())));
    assert_eq!(read(Field::Mount, "", System::Uk), Ok(None));
    for text in ["-5", "1e3", "1.2.3", ".", "seven", "123456789"] {
        assert_eq!(read(Field::Rating, text, System::Us), Err(Wrong::NoNumber), "{text}");
    }
    // Told in pounds, read in kilograms: a payload is never told higher. 1,437 lb are 651.8 kg.
    let mut trip = Trip::default();
    Field::Payload.put(&mut trip, "1437", System::Us);
    Field::Length.put(&mut trip, "232", System::Us);
    assert_eq!(Field::Payload.text(&trip, System::Metric), "651");
    assert_eq!(Field::Length.text(&trip, System::Metric), "590", "589.28 cm, and never shorter");
    assert_eq!(Field::Payload.text(&trip, System::Us), "1437");
    Field::Payload.put(&mut trip, "", System::Us);
    Field::Length.put(&mut trip, "x", System::Us);
    assert_eq!(trip.tow, None);
}

fn message() -> impl Strategy<Value = Message> {
    let ask = || proptest::sample::select(&ALL[..]);
    let kind = proptest::sample::select(&[HookUp::Full, HookUp::Water, HookUp::Power, HookUp::None][..]);
    prop_oneof![
        8 => (ask(), any::<bool>()).prop_map(|(ask, more)| Message::Stepped(ask, more)),
        1 => ask().prop_map(Message::Cleared),
        2 => (any::<u16>(), any::<u16>(), kind)
            .prop_map(|(from, to, kind)| Message::HookUpChosen(Nights(from % 400, to % 400), kind)),
        1 => any::<bool>()
            .prop_map(|care| Message::WaterChosen(if care { Use::Careful } else { Use::Normal })),
        1 => (proptest::sample::select(&Field::ALL[..]), "[0-9 .x]{0,9}")
            .prop_map(|(field, text)| Message::TowTyped(field, text)),
        1 => (0_usize..60).prop_map(Message::WeekPressed),
    ]
}

fn within(ask: Ask, trip: &Trip) -> bool {
    let Some(told) = ask.told(trip) else { return true };
    SYSTEMS.iter().any(|system| {
        let scale = ask.scale(*system);
        let number = told.to(scale.measure).unwrap() * if ask.is_level() { 8.0 } else { 1.0 };
        told.measure() == scale.measure && (f64::from(scale.low)..=f64::from(scale.high)).contains(&number)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Any presses in any measures: every value stays within its bounds, the plan can be kept and read again.
    #[test]
    fn no_press_leads_out_of_bounds(
        unit in proptest::sample::select(&["wren", "heron", "plover"][..]),
        nights in 1_u16..=365,
        all in proptest::collection::vec((message(), 0_usize..3), 0..60),
    ) {
        let facts = lot().facts(unit).unwrap();
        let people = vec![Person { age: 41, weight: None }];
        let mut draft = Draft::of(facts, Trip { nights, people, ..Trip::default() }, System::Us);
        for (message, system) in all {
            draft.system = SYSTEMS[system];
            draft.update(message);
            for ask in ALL {
                prop_assert!(within(ask, &draft.plan), "{ask:?}: {:?}", ask.told(&draft.plan));
            }
            prop_assert!(draft.plan.hook_up.len() <= usize::from(nights));
            prop_assert!(draft.answer.is_some());
        }
        let kept = serde_json::to_string(&draft.plan).unwrap();
        prop_assert_eq!(&serde_json::from_str::<Trip>(&kept).unwrap(), &draft.plan);
        let (with, without) = nights::counts(&draft.plan);
        prop_assert_eq!(with + without, usize::from(nights));
    }

    /// Pressed often enough, one way ends: the last press that is offered reaches the bound.
    #[test]
    fn one_way_ends_at_its_bound(at in 0_usize..ALL.len(), more in any::<bool>(), system in 0_usize..3) {
        let (ask, system, facts) = (ALL[at], SYSTEMS[system], wren());
        let (mut trip, mut presses) = (Trip::default(), 0);
        while let Some(to) = ask.pressed(&trip, &facts, system, more) {
            ask.put(&mut trip, to, system);
            presses += 1;
            prop_assert!(presses < 200);
            prop_assert!(to != To::Nothing || !more);
        }
        let scale = ask.scale(system);
        // Where nothing could be pressed, the lot's own word is at the bound already.
        let end = ask.told(&trip).or(ask.assumed(&facts)).map(|q| q.to(scale.measure).unwrap());
        let part = if ask.is_level() { 8.0 } else { 1.0 };
        match (more, ask.starts_at_zero()) {
            (false, true) => prop_assert_eq!(end, None),
            (true, _) => prop_assert_eq!(end, Some(f64::from(scale.high) / part)),
            (false, false) => prop_assert_eq!(end, Some(f64::from(scale.low) / part)),
        }
    }
}
