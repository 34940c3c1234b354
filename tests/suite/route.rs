//! The route: always the same, in the order of the walk, with stops that are near each other.

use std::collections::BTreeMap;
use std::sync::Arc;

use proptest::prelude::*;

use sendoff::route::{Route, Step, Zone, build};
use sendoff::script::{Bundle, Scripts};
use sendoff::unit::Station;

use crate::check::{Files, KITE, LOT, WREN, changed, found, lot, text_of};

/// A stop reaches this far from its first step, in inches: 1.5 m at 0.0254 m (NIST SP 811).
const NEAR: f64 = 1.5 / 0.0254;

fn scripts(files: Files) -> Scripts {
    let (scripts, faults) = Scripts::load(Arc::new(Bundle::new(files, false)));
    assert!(faults.is_empty(), "{faults:#?}");
    scripts.expect("a lot")
}

fn wren(files: Files) -> Route {
    build(&scripts(files), "wren").expect("the unit")
}

/// The lot with texts swapped.
fn with(changes: &[(&str, &str, &str)]) -> Files {
    let mut files = lot();
    for (name, swap, by) in changes {
        let old = text_of(&files, name);
        assert!(old.contains(swap), "{name} has no `{swap}`");
        let _ = files.insert((*name).into(), Arc::from(old.replacen(swap, by, 1).into_bytes()));
    }
    files
}

fn zone_of(route: &Route, step: usize) -> Zone {
    route.stops[route.stop_of(step).expect("a stop")].zone
}

fn ids(route: &Route) -> Vec<&str> {
    route.steps.iter().map(|s| s.id.as_str()).collect()
}

fn position(route: &Route, id: &str) -> usize {
    route.steps.iter().position(|s| s.id == id).unwrap_or_else(|| panic!("no step {id}"))
}

fn distance(a: &Step, b: &Step) -> Option<f64> {
    let ((ax, ay), (bx, by)) = (a.at?, b.at?);
    Some((ax - bx).hypot(ay - by))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    /// The order in which a disk names its files is nobody's business.
    #[test]
    fn the_order_of_files_does_not_matter(files in Just(lot().into_iter().collect::<Vec<_>>()).prop_shuffle()) {
        let usual = Bundle::new(lot(), false);
        let shuffled: BTreeMap<_, _> = files.into_iter().collect();
        let bundle = Bundle::new(shuffled.clone(), false);
        prop_assert_eq!(bundle.digest(), usual.digest());
        prop_assert_eq!(wren(shuffled), wren(lot()));
    }

    /// The order of places, kit and leaving lines in a file gives no other order of steps.
    #[test]
    fn the_order_of_places_does_not_matter(places in Just(lines_of_places()).prop_shuffle()) {
        let sheet = text_of(&lot(), WREN);
        let (before, rest) = sheet.split_once("    places: {\n").expect("places");
        let (_, after) = rest.split_once("\n    },").expect("their end");
        let mut files = lot();
        let text = format!("{before}    places: {{\n{}\n    }},{after}", places.join("\n"));
        let _ = files.insert(WREN.into(), Arc::from(text.into_bytes()));
        prop_assert_eq!(wren(files).steps, wren(lot()).steps);
    }
}

fn lines_of_places() -> Vec<String> {
    let sheet = text_of(&lot(), WREN);
    let (_, rest) = sheet.split_once("    places: {\n").expect("places");
    let (places, _) = rest.split_once("\n    },").expect("their end");
    places.lines().map(ToOwned::to_owned).collect()
}

/// Handbook 0.2: at the desk, once round outside from the entry door to the rear, round to the street side, forward
/// to the nose and back; then in; the road last.
#[test]
fn the_walk_goes_round_once() {
    use Station::{
        Bath, Bed, Bunk, Cab, CurbFront, CurbMid, CurbRear, Entry, Front, Galley, Hall, Living, Rear,
        StreetFront, StreetMid, StreetRear,
    };
    let route = wren(lot());
    let zones: Vec<Zone> = (0..route.steps.len()).map(|i| zone_of(&route, i)).collect();
    assert!(zones.is_sorted(), "desk, outside, inside, leaving: {zones:?}");
    assert_eq!((zones.first(), zones.last()), (Some(&Zone::Desk), Some(&Zone::Leaving)));

    let round = [CurbMid, CurbRear, Rear, StreetRear, StreetMid, StreetFront, Front, CurbFront];
    let outside: Vec<usize> = route
        .steps
        .iter()
        .enumerate()
        .filter(|(i, _)| zones[*i] == Zone::Outside)
        .map(|(_, s)| {
            round.iter().position(|r| *r == s.station).unwrap_or_else(|| panic!("{} is outside", s.id))
        })
        .collect();
    assert!(outside.len() > 15 && outside.is_sorted(), "{outside:?}");
    assert!(route.steps.iter().find(|s| s.at.is_some()).is_some_and(|s| s.place == "entry-door"));

    let rooms = [Entry, Galley, Living, Hall, Bath, Bed, Bunk, Cab];
    let inside: Vec<&Step> =
        route.steps.iter().enumerate().filter(|(i, _)| zones[*i] == Zone::Inside).map(|(_, s)| s).collect();
    // Exits and alarms come first once inside (design 4).
    let first = ["extinguisher", "lp-detector", "smoke-alarm", "co-detector", "emergency-exit"];
    let led: Vec<&str> = inside.iter().take(first.len()).map(|s| s.topic.as_str()).collect();
    assert_eq!(led, first);
    let after: Vec<usize> = inside
        .iter()
        .skip(first.len())
        .map(|s| rooms.iter().position(|r| *r == s.station).unwrap_or_else(|| panic!("{} is inside", s.id)))
        .collect();
    assert!(after.len() > 10 && after.is_sorted(), "{after:?}");
}

/// All is looked at before the wheels turn: the loop of the yard ends the walk (handbook A.15).
#[test]
fn the_leaving_check_is_last_but_for_the_loop_of_the_yard() {
    let end = ["leaving-check", "leaving-check-loop"];
    let route = wren(lot());
    assert_eq!(ids(&route)[route.steps.len() - 2..], end);
    let checks: Vec<&Step> = route.steps.iter().filter(|s| !s.leaving.is_empty()).collect();
    assert_eq!(checks.iter().map(|s| s.id.as_str()).collect::<Vec<_>>(), ["leaving-check"]);
    // It begins a stop: the tablet was handed over before.
    let stop = route.stops.last().expect("stops");
    assert_eq!(stop.steps, route.steps.len() - 2..route.steps.len());
    assert!(route.steps[stop.steps.clone()].iter().all(|s| s.cautions.is_empty()));
    // Also where another step on the road stands behind it in its file and by its name.
    let kite =
        [(KITE, "place: \"awning\"", "place: \"road\""), (KITE, "place: \"awning\"", "place: \"road\"")];
    let route = wren(with(&kite));
    assert_eq!(ids(&route)[route.steps.len() - 2..], end);
}

#[test]
fn a_step_waits_for_those_it_names() {
    let usual = wren(lot());
    assert!(position(&usual, "kite") < position(&usual, "kite-stow"));
    let late = wren(with(&[(KITE, "after: [\"kite\"]", "after: [\"tank-rinse\", \"kite\"]")]));
    assert_eq!(
        position(&late, "kite-stow"),
        position(&late, "tank-rinse") + 1,
        "just behind what it waits for"
    );
    // The others keep their order.
    let others = |route: &Route| {
        ids(route).into_iter().filter(|id| *id != "kite-stow").map(str::to_owned).collect::<Vec<_>>()
    };
    assert_eq!(others(&late), others(&usual));
    // What waits for a step that the unit does not have waits for nothing.
    let dropped =
        ("walkthroughs/topics/tank-rinse.ron", "when: Fitted(\"waste.rinse\")", "when: Fitted(\"solar\")");
    let text = text_of(&lot(), dropped.0);
    if text.contains(dropped.1) {
        let route = wren(with(&[dropped, (KITE, "after: [\"kite\"]", "after: [\"tank-rinse\"]")]));
        assert_eq!(ids(&route).len(), ids(&usual).len() - 1);
    } else {
        panic!("the topic has another condition");
    }
}

#[test]
fn no_step_is_lost_in_a_circle() {
    let files = with(&[(KITE, "minutes: 2,", "minutes: 2, after: [\"kite-stow\"],")]);
    let (scripts, _) = Scripts::load(Arc::new(Bundle::new(files, false)));
    let route = build(&scripts.expect("a lot"), "wren").expect("the unit");
    assert_eq!(route.steps.len(), wren(lot()).steps.len());
}

#[test]
fn stops_hold_what_lies_within_one_and_a_half_meters() {
    let route = wren(lot());
    let mut next = 0;
    for (at, stop) in route.stops.iter().enumerate() {
        assert_eq!(stop.steps.start, next, "stops follow each other");
        next = stop.steps.end;
        let steps = &route.steps[stop.steps.clone()];
        for step in steps {
            let far = distance(&steps[0], step).unwrap_or(0.0);
            assert!(far <= NEAR, "{} lies {far:.1} in from {}", step.id, steps[0].id);
        }
        // A new stop begins for a reason.
        if let Some(before) = at.checked_sub(1).map(|b| &route.stops[b]).filter(|b| b.zone == stop.zone) {
            let far = distance(&route.steps[before.steps.start], &steps[0]).unwrap_or(f64::INFINITY);
            assert!(far > NEAR, "{} could belong to the stop before", steps[0].id);
            assert_eq!(stop.number, before.number + 1);
        } else {
            assert_eq!(stop.number, 1, "numbered anew");
        }
    }
    assert_eq!(next, route.steps.len());
}

#[test]
fn the_limit_of_a_stop_is_exact() {
    // 59 in are 1.4986 m, 60 in are 1.524 m.
    let stop_of = |y: &str| {
        let point = format!("\"outside-outlet\": (station: CurbMid, at: (\"49 in\", \"{y} in\"))");
        let route = wren(with(&[(
            WREN,
            "\"outside-outlet\": (station: CurbMid, at: (\"49 in\", \"182 in\"))",
            &point,
        )]));
        let first = route.stop_of(position(&route, "entry-door-steps"));
        first == route.stop_of(position(&route, "outside-outlets-tv"))
    };
    assert!(stop_of("177"), "59 in behind the door at 118 in");
    assert!(!stop_of("178"));
}

/// A way back is a note, and a fault above 10 m (design 4). From the generator at y = 112 in back to the awning at
/// 150 in: the way round the rear is (312 - 118) + 99 + (312 - 112) = 493 in, that to the awning 32 in.
#[test]
fn ways_walked_twice_are_measured() {
    let route = wren(lot());
    assert_eq!(route.doublings, Vec::new(), "the demo walk goes back nowhere");
    let route = wren(with(&[(KITE, "after: [\"kite\"]", "after: [\"generator-care\"]")]));
    let back: Vec<&(String, f64)> = route.doublings.iter().collect();
    assert_eq!(back.len(), 1, "{back:?}");
    assert_eq!(back[0].0, "kite-stow");
    let wanted = (493.0 - 32.0) * 0.0254;
    assert!((back[0].1 - wanted).abs() < 1e-6, "{} m, not {wanted}", back[0].1);
    assert!(route.meters > wren(lot()).meters + 20, "there and back is walked");

    let severity = |after: &str| {
        let report = changed(&[(KITE, "after: [\"kite\"]", &format!("after: [\"{after}\"]"))]);
        report.faults.iter().find(|f| f.code == "route.doubling").map(|f| f.severity)
    };
    assert_eq!(severity("generator-care"), Some(sendoff::source::Severity::Fault));
    // (312 - 118) - 32 = 162 in plus half the width less 10 in are 5.1 m.
    assert_eq!(severity("sewer-hose-stow"), Some(sendoff::source::Severity::Note));
}

/// A unit with its curb side on the left, all points mirrored, is walked in the same order.
#[test]
fn the_walk_is_the_same_from_the_other_side() {
    let sheet = text_of(&lot(), WREN).replace("curb: Right", "curb: Left");
    let mirrored: String = sheet
        .lines()
        .map(|line| match line.split_once("at: (\"") {
            Some((before, rest)) if line.contains("station: ") => match rest.strip_prefix('-') {
                Some(rest) => format!("{before}at: (\"{rest}\n"),
                None => format!("{before}at: (\"-{rest}\n"),
            },
            _ => format!("{line}\n"),
        })
        .collect();
    let mut files = lot();
    let _ = files.insert(WREN.into(), Arc::from(mirrored.replace("\"-0 in\"", "\"0 in\"").into_bytes()));
    let (usual, other) = (wren(lot()), wren(files));
    assert_eq!(ids(&other), ids(&usual));
    assert_eq!(other.meters, usual.meters);
}

#[test]
fn changes_of_a_unit_act_on_its_route() {
    let change = |text: &str| wren(with(&[(WREN, "changes: [", &format!("changes: [{text},"))]));
    let usual = wren(lot());
    let dropped = change("Drop(step: \"kite\", reason: \"lot-name\")");
    assert_eq!(dropped.steps.len(), usual.steps.len() - 1);
    assert!(dropped.step("kite").is_none());
    let noted = change("Note(step: \"kite\", words: \"lot-name\")");
    assert_eq!(noted.step("kite").map(|s| s.notes.clone()), Some(vec!["lot-name".to_owned()]));
    let faulty = change("Fault(topic: \"kite\", words: \"lot-name\")");
    for step in faulty.steps.iter().filter(|s| s.topic == "kite") {
        assert_eq!(step.show, ["lot-name"], "out of order: nothing is shown but that");
        assert_eq!(step.cautions, usual.step(&step.id).expect("the step").cautions);
    }
}

#[test]
fn a_unit_can_show_more_and_say_it_otherwise() {
    let change = |text: &str| wren(with(&[(WREN, "changes: [", &format!("changes: [{text},"))]));
    let usual = wren(lot());
    let step = |route: &Route| route.step("awning").expect("the step").clone();
    let added = step(&change("Add(step: \"awning\", words: \"lot-name\")"));
    let mut show = step(&usual).show;
    show.push("lot-name".into());
    assert_eq!(added.show, show, "behind what all units show");
    let replaced = step(&change("Replace(line: \"know-awning-tilt\", words: \"lot-name\")"));
    assert_eq!(
        (replaced.show.len(), replaced.know.len()),
        (step(&usual).show.len(), step(&usual).know.len())
    );
    assert!(
        replaced.know.contains(&"lot-name".into()) && !replaced.know.contains(&"know-awning-tilt".into())
    );
    assert!(replaced.show.contains(&"show-awning-tilt".into()), "a line of the same name beside it stays");
    let drawn = step(&change("Picture(step: \"awning\", picture: \"keys\")"));
    assert_eq!(drawn.picture.as_deref(), Some("keys"));
    let unknown = |text: &str| found(&[(WREN, "changes: [", &format!("changes: [{text},"))]);
    assert_eq!(unknown("Replace(line: \"know-awning-tit\", words: \"lot-name\")"), ["change.unknown"]);
    assert_eq!(unknown("Replace(line: \"show-awning-tilt\", words: \"lot-nam\")"), ["message.unknown"]);
    assert_eq!(unknown("Add(step: \"awnin\", words: \"lot-name\")"), ["change.unknown"]);
    assert_eq!(unknown("Picture(step: \"awning\", picture: \"keyss\")"), ["picture.missing"]);
}

/// Handbook A: a first-timer's handoff of the Wren takes 75 to 90 minutes with all 67 topics.
#[test]
fn the_walk_has_a_plausible_length() {
    let minutes =
        wren(lot()).steps.iter().filter(|s| s.topic != "kite").map(|s| u32::from(s.minutes)).sum::<u32>();
    assert!((75..=90).contains(&minutes), "{minutes} minutes");
}

#[test]
fn leaving_lines_follow_the_equipment() {
    let lines = |route: &Route| route.step("leaving-check").map(|s| s.leaving.clone()).unwrap_or_default();
    assert!(lines(&wren(lot())).contains(&"awning".to_owned()));
    let line = "(id: \"awning\", when: Fitted(\"awning\"))";
    let without = with(&[(LOT, line, "(id: \"awning\", when: Fitted(\"solar\"))")]);
    assert!(!lines(&wren(without)).contains(&"awning".to_owned()));
    assert_eq!(found(&[(LOT, line, "(id: \"awning\", when: Fitted(\"awming\"))")]), ["fact.unknown"]);
}
