//! What a unit does not have never shows on its walk; what it has does. Which topic is whose, and which reading:
//! handbook B and E.4.

use std::collections::BTreeSet;
use std::sync::{Arc, OnceLock};

use sendoff::route::{Route, build};
use sendoff::script::{Bundle, Guarded, Scripts, When};
use sendoff::unit::Facts;
use sendoff::words::SOURCE_LANGUAGE;

const UNITS: [&str; 3] = ["wren", "plover", "heron"];

/// Topics that are not for all three units, and the units that have them (handbook B, 'Units').
const SOME: [(&str, &str); 28] = [
    ("outside-outlets-tv", "W H"),
    ("outdoor-kitchen", "H"),
    ("lp-supply", "W H"),
    ("lp-detector", "W H"),
    ("generator-run", "W"),
    ("generator-care", "W"),
    ("generator-fuel-pickup", "W"),
    ("aux-start", "W P"),
    ("inverter", "P"),
    ("solar", "P"),
    ("water-heater-tank", "W P"),
    ("water-heater-on-demand", "H"),
    ("grey-black-dump", "W H"),
    ("grey-dump", "P"),
    ("tank-rinse", "W H"),
    ("cassette-toilet", "P"),
    ("fridge-absorption", "W H"),
    ("fridge-compressor", "P"),
    ("furnace-lp", "W H"),
    ("diesel-heater", "P"),
    ("roof-air", "W H"),
    ("slide-out", "H"),
    ("beds-bunks", "W H"),
    ("seat-belts", "W P"),
    ("hitch-coupling", "H"),
    ("brake-controller-breakaway", "H"),
    ("nobody-in-trailer", "H"),
    ("fuel-type-cap", "W P"),
];

/// Readings of each unit (handbook E.4).
const READINGS: [(&str, &[&str]); 3] = [
    (
        "wren",
        &[
            "black",
            "chassis-volts",
            "fresh",
            "fuel",
            "gen-hours",
            "grey",
            "house-volts",
            "odometer",
            "propane-tank",
            "tire-front",
            "tire-rear-inner",
            "tire-rear-outer",
        ],
    ),
    (
        "plover",
        &[
            "cassette",
            "chassis-volts",
            "exhaust-fluid",
            "fresh",
            "fuel",
            "grey",
            "house-charge",
            "house-volts",
            "odometer",
            "tire-front",
            "tire-rear",
        ],
    ),
    (
        "heron",
        &[
            "black",
            "cylinder-a",
            "cylinder-b",
            "fresh",
            "grey",
            "grey-galley",
            "house-volts",
            "tire-first",
            "tire-second",
        ],
    ),
];

fn scripts() -> &'static Scripts {
    static SCRIPTS: OnceLock<Scripts> = OnceLock::new();
    SCRIPTS.get_or_init(|| Scripts::load(Arc::new(Bundle::demo())).0.expect("the demo lot can be used"))
}

fn route(unit: &str) -> Route {
    build(scripts(), unit).expect("a unit of the demo lot")
}

fn facts(unit: &str) -> Facts {
    scripts().facts(unit).expect("a unit of the demo lot")
}

/// Equipment without which a condition cannot hold.
fn needed(when: Option<&When>) -> BTreeSet<String> {
    let all = |parts: &[When]| parts.iter().map(|w| needed(Some(w))).collect::<Vec<_>>();
    match when {
        None | Some(When::Not(_)) => BTreeSet::new(),
        Some(When::Fitted(name)) => BTreeSet::from([name.value.clone()]),
        Some(When::Is(name, _) | When::Over(name, _)) => {
            BTreeSet::from([name.value.split('.').next().unwrap_or_default().to_owned()])
        }
        Some(When::All(parts)) => all(parts).into_iter().flatten().collect(),
        Some(When::Any(parts)) => {
            all(parts).into_iter().reduce(|a, b| a.intersection(&b).cloned().collect()).unwrap_or_default()
        }
    }
}

/// What a condition needs and the unit lacks.
fn lacks(facts: &Facts, when: Option<&When>) -> Option<String> {
    needed(when).into_iter().find(|name| facts.is_fitted(name) == Some(false))
}

/// Walks all conditions of all topics: what needs equipment that the unit lacks is not on its route.
#[test]
fn a_topic_for_equipment_that_a_unit_lacks_never_shows_on_it() {
    let mut left_out = 0;
    for unit in UNITS {
        let (route, facts) = (route(unit), facts(unit));
        for topic in scripts().topics.values().map(|t| &t.value) {
            for form in topic.steps.iter().map(|s| &s.value) {
                let step = route.step(&form.id.value);
                let missing =
                    lacks(&facts, topic.when.as_ref()).or_else(|| lacks(&facts, form.when.as_ref()));
                if let Some(name) = missing {
                    assert!(step.is_none(), "{unit} has no {name}, yet shows {}", form.id.value);
                    left_out += 1;
                }
                let Some(step) = step else { continue };
                let absent = |line: &&Guarded| lacks(&facts, line.when.as_ref()).is_some();
                for (kind, lines, keys) in
                    [("show", &form.show, &step.show), ("know", &form.know, &step.know)]
                {
                    for line in lines.iter().filter(absent) {
                        let key = format!("{kind}-{}-{}", form.id.value, line.name.value);
                        assert!(!keys.contains(&key), "{unit}: {key}");
                        left_out += 1;
                    }
                }
                for reading in form.readings.iter().filter(absent) {
                    assert!(step.readings.iter().all(|r| r.id != reading.name.value), "{unit}: {reading:?}");
                    left_out += 1;
                }
                for caution in form.cautions.iter().map(|c| &c.value) {
                    if lacks(&facts, caution.when.as_ref()).is_some() {
                        assert!(
                            step.cautions.iter().all(|c| c.id != caution.id.value),
                            "{unit}: {caution:?}"
                        );
                        left_out += 1;
                    }
                }
            }
        }
    }
    assert!(left_out > 100, "the three units differ in more than {left_out} places");
}

/// No text that is shown asks for a value of equipment that the unit lacks.
#[test]
fn no_text_speaks_of_the_values_of_absent_equipment() {
    let words = &scripts().words;
    for unit in UNITS {
        let facts = facts(unit);
        for step in &route(unit).steps {
            let cautions = step.cautions.iter().flat_map(|c| {
                ["", ".title", ".harm", ".avoid"].map(|part| format!("caution-{}{part}", c.id))
            });
            let keys: Vec<String> =
                step.show.iter().chain(&step.know).chain(&step.notes).cloned().chain(cautions).collect();
            for key in keys {
                for variable in words.variables(SOURCE_LANGUAGE, &key) {
                    let section = variable.match_indices('_').map(|(at, _)| &variable[..at]);
                    let absent = section.filter(|s| facts.is_fitted(s) == Some(false)).collect::<Vec<_>>();
                    assert!(absent.is_empty(), "{unit}: {key} asks for ${variable}");
                }
            }
        }
    }
}

#[test]
fn each_unit_has_the_topics_of_the_handbook() {
    for (topic, _) in SOME {
        assert!(scripts().topics.contains_key(topic), "no topic {topic}");
    }
    for (unit, letter) in [("wren", 'W'), ("plover", 'P'), ("heron", 'H')] {
        let shown: BTreeSet<String> = route(unit).steps.iter().map(|s| s.topic.clone()).collect();
        for topic in scripts().topics.keys() {
            let whose = SOME.iter().find(|(some, _)| some == topic).map_or("W P H", |(_, whose)| whose);
            assert_eq!(shown.contains(topic), whose.contains(letter), "{topic} on {unit}");
        }
    }
}

#[test]
fn each_unit_has_the_readings_of_the_handbook() {
    for (unit, expected) in READINGS {
        let route = route(unit);
        let mut read: Vec<&str> =
            route.steps.iter().flat_map(|s| &s.readings).map(|r| r.id.as_str()).collect();
        read.sort_unstable();
        assert_eq!(read, expected, "{unit}");
    }
}

/// Handbook A.15: cord off, step up, awning locked, vents shut, propane closed, doors locked, antenna down, chocks
/// stowed, and the brake test of the trailer. Hoses off, blocks picked up, front seats turned forward and locked: B53,
/// B44, and common practice, no source.
#[test]
fn the_leaving_check_follows_the_equipment() {
    let lines = |unit: &str| route(unit).step("leaving-check").map(|s| s.leaving.clone()).unwrap_or_default();
    let has = |unit: &str, line: &str| lines(unit).iter().any(|l| l == line);
    assert!(
        [
            "cord",
            "water-hose",
            "step",
            "awning",
            "vents",
            "gas",
            "valves",
            "doors",
            "antenna",
            "seats",
            "chocks"
        ]
        .iter()
        .all(|l| has("wren", l))
    );
    assert!(!["slide", "coupling", "brakes", "heater"].iter().any(|l| has("wren", l)));
    assert!(!["step", "gas", "antenna", "chocks", "coupling"].iter().any(|l| has("plover", l)));
    assert!(["heater", "water-hose", "grey-valve", "seats", "blocks"].iter().all(|l| has("plover", l)));
    assert!(!["seats", "grey-valve", "blocks"].iter().any(|l| has("heron", l)));
    assert!(["step", "gas", "slide", "jacks", "coupling", "empty", "brakes"].iter().all(|l| has("heron", l)));
}

/// Handbook E.1.4: six tires on the Wren, of which the rear ones are pairs; four on the others. E.1.2: a slide-out of
/// 36 in on the Heron alone.
#[test]
fn lists_of_a_sheet_give_facts() {
    let shown = |unit: &str, name: &str| facts(unit).get(name).map(|f| format!("{:?}", f.value));
    let both = |unit| (shown(unit, "tires.count"), shown(unit, "tires.twins"));
    let pair = |count: &str, twins: &str| (Some(count.to_owned()), Some(twins.to_owned()));
    assert_eq!(both("wren"), pair("Count(6)", "Flag(true)"));
    assert_eq!(both("plover"), pair("Count(4)", "Flag(false)"));
    assert_eq!(both("heron"), pair("Count(4)", "Flag(false)"));
    let slides = UNITS.map(|unit| facts(unit).is_fitted("slide_out"));
    assert_eq!(slides, [Some(false), Some(false), Some(true)]);
    assert_eq!(facts("heron").quantity("slide_out.reach").map(ToString::to_string).as_deref(), Some("36 in"));
    assert_eq!(UNITS.map(|unit| shown(unit, "unit.code").is_some()), [true; 3]);
}

/// The tongue and the vehicle that pulls come last, from the body of the trailer out (handbook 0.2, E.6).
#[test]
fn the_walk_of_the_trailer_ends_at_the_vehicle_that_pulls() {
    let route = route("heron");
    let at = |id: &str| route.steps.iter().position(|s| s.id == id).unwrap_or_else(|| panic!("no step {id}"));
    let tongue: Vec<usize> = ["house-battery-box", "lp-supply", "hitch-coupling-latch"].map(at).into();
    assert!(tongue.is_sorted(), "{tongue:?}");
    assert!(at("beds-bunks") < tongue[0] && tongue[2] < at("driving-basics"));
    assert!(at("furnace-lp-exhaust") > at("storage-bays"), "ahead of the door: on the way back to it");
    // Once all is looked at one drives: the brakes are set at speed, then comes the loop of the yard.
    let driven = ["leaving-check", "brake-controller-breakaway-gain", "leaving-check-loop"].map(at);
    assert_eq!(driven, [3, 2, 1].map(|back| route.steps.len() - back));
}

/// A picture shows what the unit has: doors or windows to get out by, one wheel or two, a flame or none, and the body
/// of this kind of unit wherever it is drawn whole.
#[test]
fn pictures_follow_the_equipment() {
    let steps = [
        ("emergency-exit", ["emergency-exit", "emergency-exit-doors", "emergency-exit"]),
        ("tires-pressure", ["tires-pressure", "tires-pressure-single", "tires-pressure-single"]),
        ("roof-ladder", ["roof-ladder", "roof-no-ladder", "roof-no-ladder-trailer"]),
        ("ferry-tunnel-lp", ["ferry-tunnel-lp", "ferry-tunnel-heater", "ferry-tunnel-lp-trailer"]),
        ("pets-smoking", ["pets-smoking", "pets-none", "pets-smoking"]),
        ("seat-belts-seats", ["seat-belts-seats", "seat-belts-seats-van", ""]),
        ("cooktop-oven", ["cooktop-oven", "cooktop-oven-induction", "cooktop-oven"]),
        ("awning", ["awning", "awning-van", "awning-trailer"]),
        ("fridge-absorption", ["fridge-absorption", "", "fridge-absorption-trailer"]),
        (
            "mirrors-tail-swing-corner",
            ["mirrors-tail-swing-corner", "mirrors-tail-swing-corner", "mirrors-tail-swing-corner-rig"],
        ),
        ("fresh-tank-fill", ["fresh-tank-fill", "fresh-tank-fill-fuel", "fresh-tank-fill-rinse"]),
        (
            "city-water-regulator",
            ["city-water-regulator", "city-water-regulator-one", "city-water-regulator"],
        ),
        ("toilet-use", ["toilet-use", "toilet-use-cassette", "toilet-use"]),
        ("house-battery-box", ["house-battery-box", "house-battery-box-lithium", "house-battery-box"]),
        ("leveling-chocks", ["leveling-chocks", "leveling-chocks-none", "leveling-chocks-trailer"]),
        ("return-rules-fees", ["return-rules-fees", "return-rules-fees-van", "return-rules-fees-trailer"]),
        ("keys", ["keys", "keys-van", "keys-trailer"]),
        ("keys-door", ["keys-door", "keys-door-van", "keys-door"]),
        (
            "weight-payload-load",
            ["weight-payload-load", "weight-payload-load", "weight-payload-load-trailer"],
        ),
        ("entry-door-steps", ["entry-door-steps", "entry-door-steps-sliding", "entry-door-steps"]),
        ("grey-black-dump", ["grey-black-dump-hose", "", "grey-black-dump-hose-two-grey"]),
        ("grey-black-dump-open", ["grey-black-dump", "", "grey-black-dump-two-grey"]),
        ("leaving-check-loop", ["leaving-check-loop", "leaving-check-loop", "leaving-check-loop-rig"]),
    ];
    for (step, pictures) in steps {
        assert_eq!(pictures_of(step), pictures, "{step} on {UNITS:?}");
    }
    for step in [
        "breakdown-call",
        "campsite-manners",
        "driving-basics",
        "height-clearance",
        "leaving-check",
        "mountain-grades",
        "return-rules",
        "roof-vents",
        "wind-driving",
    ] {
        assert_eq!(
            pictures_of(step),
            [step.to_owned(), format!("{step}-van"), format!("{step}-rig")],
            "{step}"
        );
    }
    let picture = |unit: &str, step: &str| route(unit).step(step).and_then(|s| s.picture.clone());
    assert_eq!(picture("plover", "water-heater-tank-place").as_deref(), Some("water-heater-tank-inside"));
    assert_eq!(picture("wren", "water-heater-tank-place").as_deref(), Some("water-heater-tank-place"));
    assert_eq!(picture("heron", "lp-supply").as_deref(), Some("lp-supply-cylinders"));
}

/// What each unit shows at a step; nothing where it has no such step.
fn pictures_of(step: &str) -> [String; 3] {
    UNITS.map(|unit| route(unit).step(step).and_then(|s| s.picture.clone()).unwrap_or_default())
}
