//! Rules of thumb of the trade. Source of each: common practice, no source.

use super::*;

/// A patio awning comes in once wind passes about 10 mph, in hard rain, at night, and when nobody watches it.
#[test]
fn awnings_come_in() {
    let plain = facts_with("wren", &[], &[("wind_limit: \"15 mph\"", "")]);
    let judge = |facts: &Facts, wind: &str| {
        figure(facts, "awning_verdict", Some(&trip(&format!("wind: ({wind})")))).verdict
    };
    let verdict = figure(&plain, "awning_verdict", Some(&trip("wind: (speed: \"12 mph\", watched: true)")));
    assert_eq!(
        (verdict.verdict, value(&verdict).as_str(), verdict.source),
        (Some("in"), "10 mph", figures::COMMON_PRACTICE)
    );
    let lot = facts("wren");
    // Handbook T-05, with the lot's limit of 15 mph, in every measure a wind is told in.
    for (wind, word) in [
        ("speed: \"8 mph\", watched: true", "out"),
        ("speed: \"12 mph\", watched: false", "in"),
        ("speed: \"12 mph\"", "in"),
        ("gust: \"18 mph\", watched: true", "in"),
        ("speed: \"24 km/h\", watched: true", "out"),
        ("speed: \"25 km/h\", watched: true", "in"),
        ("speed: \"6.7 m/s\", watched: true", "out"),
        ("speed: \"6.8 m/s\", watched: true", "in"),
        ("speed: \"13 kn\", watched: true", "out"),
        ("speed: \"14 kn\", watched: true", "in"),
        ("force: 3, watched: true", "out"),
        ("force: 4, watched: true", "in"),
        ("force: 12, watched: true", "in"),
        ("speed: \"2 mph\", watched: true, rain: true", "in"),
        ("speed: \"2 mph\", watched: true, night: true", "in"),
        ("watched: false", "in"),
    ] {
        assert_eq!(judge(&lot, wind), Some(word), "{wind}");
    }
    assert_eq!(
        missing(&figure(&lot, "awning_verdict", Some(&trip("wind: (watched: true)")))),
        "trip.wind.speed"
    );
    assert_eq!(
        missing(&figure(&lot, "awning_verdict", Some(&trip("wind: (force: 13, watched: true)")))),
        "trip.wind.force"
    );
    // The sheet's own limit wins over the lot's, the class of the awning over a higher one.
    let own = facts_with("wren", &[("reach: \"8 ft\")", "reach: \"8 ft\", wind_limit: \"20 mph\")")], &[]);
    assert_eq!(judge(&own, "speed: \"18 mph\", watched: true"), Some("out"));
    let class = facts_with(
        "wren",
        &[("reach: \"8 ft\")", "reach: \"8 ft\", wind_limit: \"20 mph\", wind_class: 1)")],
        &[],
    );
    assert_eq!(judge(&class, "speed: \"18 mph\", watched: true"), Some("in"), "class 1 ends at 7.9 m/s");
}

/// A built-in generator stops drawing fuel at about a quarter tank.
#[test]
fn the_generator_stops_at_its_pickup() {
    for level in ["1/4", "1/8", "0"] {
        assert_eq!(
            shown(&of("wren", "generator_hours", &format!("start: (fuel: \"{level}\")"))),
            ["0.0 h", "0.0 h"]
        );
    }
}

/// The altitude dial goes back to 0 at sea level.
#[test]
fn the_dial_is_zero_at_the_sea() {
    for (height, dial) in [("0 ft", "0"), ("-200 ft", "0"), ("14000 ft", "10")] {
        assert_eq!(value(&of("wren", "generator_dial", &format!("highest: \"{height}\""))), dial);
    }
}

/// Usable depth: half of a lead-acid battery; 100 Ah at 10 A are 5 h, and 200 Ah 10 h.
#[test]
fn half_of_lead_acid_is_used() {
    let nights = figure(&facts("wren"), "battery_nights", None);
    let there = nights.steps.iter().find(|s| s.name == "there").expect("what is there");
    assert_eq!(there.quantity().expect("a number").to_string(), "80 Ah");
}

/// Outlets at 120 V are dead unless plugged in or the generator runs: a unit without inverter, generator and shore cord
/// has no 120 V loads that fit.
#[test]
fn without_cord_generator_and_inverter_no_load_fits() {
    let text = sheet_text("heron");
    let shore = text.lines().find(|line| line.trim_start().starts_with("shore:")).expect("a cord");
    let bare = facts_with("heron", &[(shore, "    shore: NotFitted,")], &[]);
    let alone = figure(&bare, "loads_fit", Some(&trip("on: [(load: \"tv\")]")));
    let figures::Detail::Loads(fit) = &alone.detail else { panic!("no loads") };
    assert_eq!((alone.verdict, fit.supply, fit.sets.len(), fit.always.len()), (Some("no"), "nothing", 0, 0));
    assert_eq!(alone.part("most").map(|q| q.to_string()), Some("0 W".into()));
    assert!(alone.notes.iter().any(|note| note.key == "no-supply"));
}

/// A mid-size motorhome carries about 40 gal of fresh water: 20 to 100 gal are plausible.
#[test]
fn an_unusual_tank_is_remarked() {
    for (tank, unusual) in [
        ("19 gal", true),
        ("20 gal", false),
        ("40 gal", false),
        ("100 gal", false),
        ("101 gal", true),
        ("400 L", true),
    ] {
        let tank = format!("fresh: \"{tank}\"");
        let facts = facts_with("wren", &[("fresh: \"40 gal\"", &tank)], &[]);
        let days = figure(&facts, "fresh_days", Some(&trip("")));
        assert_eq!(days.notes.iter().any(|note| note.key == "unusual-tank"), unusual, "{tank}");
    }
}

/// What nobody has written down says so, to the reader as well.
#[test]
fn rules_of_thumb_are_marked() {
    let reader = sendoff::words::Reader::default();
    for id in [
        "clearance_min_sign",
        "generator_hours",
        "generator_dial",
        "awning_verdict",
        "tire_flat",
        "fresh_days",
    ] {
        let figure = of("wren", id, "start: (fuel: \"1\"), wind: (watched: false)");
        assert_eq!(figure.source, figures::COMMON_PRACTICE, "{id}");
        assert_eq!(
            figures::explain(&scripts().words, &reader, &figure).source,
            "common practice, no source",
            "{id}"
        );
    }
}
