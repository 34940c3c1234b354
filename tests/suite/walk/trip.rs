//! The plan of a trip in a walk, and the trip that figures are computed from.

use std::sync::Arc;

use serde_json::Value;

use sendoff::figures::{HookUp, On, Person as Traveler, Start, Trip};
use sendoff::script::{Bundle, Scripts};
use sendoff::source::{SourceFile, read};
use sendoff::walk::{Entry, Event, NotRead, Phase, Refused, Walk, Who};

use super::support::*;

/// Everything a trip file can say.
pub const EVERYTHING: &str = r#"(
    nights: 9,
    people: [(age: 41, weight: "180 lb"), (age: 39, weight: "63.5 kg"), (age: 9, weight: "60 lb")],
    hook_up: [Full, Water, Power, None], use: Careful, use_each: "5 gal", leaves: "2026-07-24",
    highest: "8900 ft", coldest: "-2.5 °C", hottest: "95 °F", humid: "35 %", sun: "5 h", bags: "250 lb",
    start: (fresh: "1/2", grey: "0", black: "1/8", propane: "3/4", fuel: "1/4"),
    roof: "11 in", sign: Says("12 ft 6 in"),
    wind: (speed: "12 mph", gust: "18 mph", force: 4, watched: true, rain: true, night: true),
    slope: (length: "-2 °", side: "1 °"), speed: "55 mph", grade: "-6 %", inlet: "55 °F",
    tap: "3 US gal/min", bucket: "20 s", shower: "1.5 US gal/min", supply: Post("30 A"),
    on: [(load: "fridge", settled: true), (load: "air-front")],
    cord: (length: "50 ft", gauge: "10", current: "12 A", volts: "120 V"),
    tow: (payload: "1500 lb", rating: "7500 lb", length: "19 ft", ball_mount: "10 in", bags: "100 lb"),
    tires: (set_at: "70 °F", read_at: "30 °F", height: "5000 ft"),
    house_volts: "12.6 V", house_charge: "80 %", inverter_on: true, generator_run: "2 h", driving: "1 h",
    fill: [2, 5], empty: [4], refill: [5], refuel: [6],
    returned: (
        odometer: (out: "48213.4", back: "48890.1"), generator: (out: "612.0", back: "618.5"),
        fuel: (out: "7/8", back: "1/2"), propane: (out: "3/4", back: "1/4"), empty_cylinders: 1,
        black_full: true, cassette_full: true, grey_full: 2, late: "90 min", missing: ["W12", "W12"],
        dirty: true, smoked: true, pet: true, pet_hidden: true,
    ),
)"#;

pub fn trip(text: &str) -> Trip {
    let (trip, faults) = read::<Trip>(&SourceFile::new("trip.ron", text));
    assert!(faults.is_empty(), "{faults:?}");
    trip.unwrap()
}

pub fn plan(trip: &Trip) -> Event {
    Event::TripPlanned { trip: Box::new(trip.clone()) }
}

/// Bags alone, so that plans differ.
fn bags(text: &str) -> Trip {
    Trip { bags: Some(text.parse().unwrap()), ..Trip::default() }
}

#[test]
fn a_trip_may_be_planned_until_somebody_has_signed() {
    let mut walk = after([]);
    assert_eq!((walk.planned(), walk.trip()), (None, None));
    all(&mut walk, [plan(&bags("1 lb"))]);
    assert_eq!(walk.phase(), Phase::Opening);
    assert_eq!(why_not(&mut walk, plan(&bags("1 lb"))), Refused::AlreadySo);
    all(&mut walk, [plan(&bags("2 lb"))]);
    all(&mut walk, opening());
    assert_eq!(walk.phase(), Phase::Walking);
    all(&mut walk, [plan(&bags("3 lb"))]);
    assert_eq!(why_not(&mut walk, plan(&bags("3 lb"))), Refused::AlreadySo);
    let planned = walk.planned().unwrap();
    assert_eq!((planned.value.clone(), planned.at), (bags("3 lb"), walk.last_at()));
    all(&mut walk, round());
    assert_eq!(walk.missing_to_sign(), [], "a plan is nothing that must be there");
    all(&mut walk, [signed(Who::Person(ANN))]);
    let refused = why_not(&mut walk, plan(&bags("4 lb")));
    assert_eq!(refused, Refused::SigningBegun(Who::Person(ANN)));
    all(&mut walk, [reopen(), plan(&bags("4 lb")), stop()]);
    assert_eq!(why_not(&mut walk, plan(&bags("5 lb"))), Refused::Stopped);
    all(&mut walk, [signed(Who::Agent), Event::CopyOffered]);
    all(&mut walk, [Event::CopyChosen { choice: sendoff::walk::CopyChoice::Declined }, seal()]);
    assert_eq!(why_not(&mut walk, plan(&bags("5 lb"))), Refused::SealBegun);
}

/// Makes a list of a trip so long.
type Longer = fn(&mut Trip, usize);

#[test]
fn a_plan_keeps_to_its_limits() {
    let mut walk = opened();
    let lists: [(&str, Longer); 8] = [
        ("people", |t, n| t.people = vec![Traveler { age: 30, weight: None }; n]),
        ("hook_up", |t, n| t.hook_up = vec![HookUp::Power; n]),
        ("on", |t, n| t.on = vec![On { load: "tv".into(), settled: false }; n]),
        ("fill", |t, n| t.fill = vec![1; n]),
        ("empty", |t, n| t.empty = vec![1; n]),
        ("refill", |t, n| t.refill = vec![1; n]),
        ("refuel", |t, n| t.refuel = vec![1; n]),
        ("missing", |t, n| t.returned.get_or_insert_default().missing = vec!["W01".into(); n]),
    ];
    for (name, longer) in lists {
        let of = |n| {
            let mut trip = Trip::default();
            longer(&mut trip, n);
            plan(&trip)
        };
        assert!(matches!(why_not(&mut walk, of(366)), Refused::Range { max: 365, .. }), "{name}");
        all(&mut walk, [of(365)]);
    }
    let load =
        |load: &str| plan(&Trip { on: vec![On { load: load.into(), settled: false }], ..Trip::default() });
    assert!(matches!(why_not(&mut walk, load(&"x".repeat(81))), Refused::TooLong { max: 80, .. }));
    assert!(matches!(why_not(&mut walk, load("t\u{7}v")), Refused::Unprintable { .. }));
    let leaves = Trip { leaves: Some("x".repeat(81)), ..Trip::default() };
    assert!(matches!(why_not(&mut walk, plan(&leaves)), Refused::TooLong { max: 80, .. }));
    let mut cord = trip(EVERYTHING);
    cord.cord.as_mut().unwrap().gauge = "9".repeat(81);
    assert!(matches!(why_not(&mut walk, plan(&cord)), Refused::TooLong { max: 80, .. }));
    all(&mut walk, [load(&"x".repeat(80))]);
}

/// What a text says at every end of its branches: nothing is left empty, and no number has decimals.
fn whole_and_told(value: &Value, path: &str) {
    match value {
        Value::Null => panic!("{path} is not told: add it to the trip with everything"),
        Value::Number(n) => assert!(n.is_u64() || n.is_i64(), "{path}: {n} is a float"),
        Value::Array(all) => {
            assert!(!all.is_empty(), "{path} is empty: add to the trip with everything");
            all.iter().for_each(|one| whole_and_told(one, path));
        }
        Value::Object(all) => {
            all.iter().for_each(|(name, one)| whole_and_told(one, &format!("{path}.{name}")));
        }
        Value::Bool(_) | Value::String(_) => {}
    }
}

#[test]
fn a_plan_survives_the_journal_with_every_field() {
    let trip = trip(EVERYTHING);
    let line = sendoff::journal::line::encode(&entry(1, plan(&trip))).unwrap();
    let text = std::str::from_utf8(&line).unwrap().trim_end();
    let json: Value = serde_json::from_str(&text[text.find('{').unwrap()..]).unwrap();
    whole_and_told(&json["event"]["trip"], "trip");
    let back = sendoff::journal::line::decode(text.as_bytes()).unwrap();
    assert_eq!(back, entry(1, plan(&trip)));
    // As written, not as computed with.
    for wanted in
        ["\"63.5 kg\"", "\"-2.5 °C\"", "\"12 ft 6 in\"", "\"7/8\"", "\"48213.4\"", "\"612.0\"", "\"35 %\""]
    {
        assert!(text.contains(wanted), "{wanted} in {text}");
    }
    let entries: Vec<Entry> = entries([began()].into_iter().chain(opening()).chain([plan(&trip)]));
    let through: Vec<Entry> = entries
        .iter()
        .map(|e| {
            let line = sendoff::journal::line::encode(e).unwrap();
            sendoff::journal::line::decode(line.strip_suffix(b"\n").unwrap()).unwrap()
        })
        .collect();
    let walk = Walk::replay(route(), &through).unwrap();
    assert_eq!(walk.planned().unwrap().value, trip);
}

#[test]
fn figures_are_computed_for_party_booking_and_gauges() {
    let start =
        Start { fresh: Some("1/2".parse().unwrap()), fuel: Some("1/4".parse().unwrap()), ..Start::default() };
    let planned = Trip {
        nights: 9,
        people: vec![Traveler { age: 1, weight: None }],
        leaves: Some("1999-01-01".into()),
        start,
        ..bags("250 lb")
    };
    // Neither party nor booking alone make a trip.
    let mut walk = after(opening().into_iter().take(3).chain([plan(&planned)]));
    assert_eq!(walk.trip(), None);
    assert_eq!(after([booking(), plan(&planned)]).trip(), None);
    all(&mut walk, opening().into_iter().skip(3));
    let trip = walk.trip().unwrap();
    let ages: Vec<u8> = trip.people.iter().map(|p| p.age).collect();
    assert_eq!((ages, trip.nights), (vec![41, 39, 9], 5));
    // The walk began on the third at noon, four hours west of Greenwich.
    assert_eq!(trip.leaves.as_deref(), Some("2026-07-03"));
    assert_eq!((trip.bags, trip.start), (planned.bags, start));
    // What the gauge says wins over the plan; what was not read does not.
    all(&mut walk, [reading("fuel", "7/8"), reading("house-v", "12.7")]);
    let read = walk.trip().unwrap().start;
    assert_eq!(read, Start { fuel: Some("7/8".parse().unwrap()), ..start });
    let unread =
        Event::ReadingNotTaken { reading: "fuel".into(), reason: NotRead::Broken, note: String::new() };
    all(&mut walk, [unread]);
    assert_eq!(walk.trip().unwrap().start, start);
    // Without a plan the trip is that of party and booking.
    let bare = opened().trip().unwrap();
    assert_eq!(bare, Trip { bags: None, start: Start::default(), ..trip });
}

#[test]
fn a_weight_counts_while_the_party_is_as_large_as_the_plan() {
    let weights = |walk: &Walk| -> Vec<Option<String>> {
        walk.trip().unwrap().people.iter().map(|p| p.weight.map(|w| w.to_string())).collect()
    };
    let told = |texts: [&str; 3]| texts.map(|text| Some(text.to_owned())).to_vec();
    let mut walk = opened();
    all(&mut walk, [plan(&trip(EVERYTHING))]);
    assert_eq!(weights(&walk), told(["180 lb", "63.5 kg", "60 lb"]));
    all(&mut walk, [Event::PartySet { people: people().into_iter().take(2).collect() }]);
    assert_eq!(weights(&walk), vec![None; 2]);
    all(&mut walk, [Event::PartySet { people: people() }]);
    assert_eq!(weights(&walk), told(["180 lb", "63.5 kg", "60 lb"]));
}

/// 02:00 UTC on the fourth is still the third four hours west of Greenwich.
#[test]
fn the_day_of_leaving_is_the_date_on_the_wall() {
    let begin = |offset_minutes| {
        let first = Entry { at: "2026-07-04T02:00:00Z".parse().unwrap(), offset_minutes, event: began() };
        let mut walk = Walk::begin(route(), &first).unwrap();
        let mut seen = |event| walk.apply(&Entry { at: first.at, offset_minutes: 0, event }).unwrap();
        seen(Event::PartySet { people: people() });
        seen(booking());
        walk.trip().unwrap().leaves.unwrap()
    };
    assert_eq!((begin(-240), begin(0)), ("2026-07-03".to_owned(), "2026-07-04".to_owned()));
}

/// What was withdrawn says why, and so does what was reopened, with the stop that it took back.
#[test]
fn a_reopened_closing_says_why() {
    let mut walk = said();
    all(&mut walk, [signed(Who::Person(ANN)), reopen(), signed(Who::Person(BO)), stop(), reopen()]);
    let reasons: Vec<(Who, &str)> = walk.withdrawn().iter().map(|w| (w.by, w.reason.as_str())).collect();
    assert_eq!(reasons, [(Who::Person(ANN), "a mark was forgotten"), (Who::Person(BO), "brake lights out")]);
    let stops: Vec<Option<&str>> =
        walk.reopened().iter().map(|r| r.value.stopped.as_ref().map(|s| s.value.reason.as_str())).collect();
    assert_eq!(stops, [None, Some("brake lights out")]);
    assert!(walk.reopened().iter().all(|r| r.value.reason == "a mark was forgotten"));
}

/// What can be read of a unit of the demo lot: the gauges of two grey tanks, two cylinders, a battery in percent.
#[test]
fn gauges_of_every_kind_count() {
    let (lot, _) = Scripts::load(Arc::new(Bundle::demo()));
    let lot = lot.unwrap();
    let on = |name: &str| {
        let mut first = began();
        if let Event::Began { unit, .. } = &mut first {
            *unit = name.into();
        }
        let route = Arc::new(sendoff::route::build(&lot, name).unwrap());
        let mut walk = Walk::begin(route, &entry(0, first)).unwrap();
        all(&mut walk, opening().into_iter().filter(|event| !matches!(event, Event::Began { .. })));
        walk
    };
    let part = |text: &str| Some(text.parse().unwrap());
    let mut heron = on("heron");
    all(&mut heron, [reading("grey", "1/3"), reading("grey-galley", "2/3"), reading("cylinder-a", "full")]);
    // The fuller tank ends the use of both; one cylinder alone says nothing of the other.
    let start = heron.trip().unwrap().start;
    assert_eq!((start.grey, start.propane), (part("2/3"), None));
    all(&mut heron, [reading("cylinder-b", "part")]);
    assert_eq!(heron.trip().unwrap().start.propane, part("1/2"), "nobody can tell how much a part is");
    all(&mut heron, [reading("cylinder-b", "full")]);
    assert_eq!(heron.trip().unwrap().start.propane, part("2/2"));
    let mut plover = on("plover");
    let charge =
        Event::ReadingTaken { reading: "house-charge".into(), value: "85".into(), measure: "%".into() };
    all(&mut plover, [charge]);
    assert_eq!(plover.trip().unwrap().house_charge, part("85 %"));
}
