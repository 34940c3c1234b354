//! Published tables in full, and disagreements between published pages; each source stands beside its check.

use super::*;
use sendoff::figures::{Beaufort, Passage, beaufort, may_pass, resistance};
use sendoff::measure::{Measure, Quantity};

/// NEC chapter 9 table 8 (2011), uncoated stranded copper at 75 °C. A page labels the solid wire's 3.07, 1.93, 1.21 and
/// 0.764 as stranded: they must not be found here.
#[test]
fn wire_sizes() {
    let milliohms = [
        ("18", 7950.0),
        ("16", 4990.0),
        ("14", 3140.0),
        ("12", 1980.0),
        ("10", 1240.0),
        ("8", 778.0),
        ("6", 491.0),
        ("4", 308.0),
        ("3", 245.0),
        ("2", 194.0),
        ("1", 154.0),
        ("1/0", 122.0),
        ("2/0", 96.7),
        ("3/0", 76.6),
        ("4/0", 60.8),
    ];
    for (size, milliohms) in milliohms {
        let ohms = milliohms / 1000.0;
        let got = resistance(size).expect("a size of the table");
        assert!((got - ohms).abs() < 1e-12, "{size}");
        assert!(
            [3_070.0, 1_930.0, 1_210.0, 764.0].iter().all(|solid| (got - solid / 1000.0).abs() > 1e-9),
            "{size} is solid"
        );
    }
}

/// Computed from the same table: 10 A at 12 V over 10 ft one way.
#[test]
fn twelve_volt_runs() {
    for (size, volts, share) in [
        ("14", 0.628, 5.23),
        ("12", 0.396, 3.30),
        ("10", 0.248, 2.07),
        ("8", 0.156, 1.30),
        ("6", 0.098, 0.82),
    ] {
        let cord =
            format!("cord: (length: \"10 ft\", gauge: \"{size}\", current: \"10 A\", volts: \"12 V\")");
        let drop = of("wren", "voltage_drop", &cord);
        assert!((drop.outcomes[0].exact - volts).abs() < 0.0005, "{size}: {}", drop.outcomes[0].exact);
        assert!((drop.outcomes[1].exact - share).abs() < 0.005, "{size}: {}", drop.outcomes[1].exact);
    }
}

/// A cord that loses too much says how long one of its wire may be, and warns of heat at a household outlet. At that
/// length it will do.
#[test]
fn a_long_thin_cord_is_refused_with_a_way_out() {
    let long = of("wren", "voltage_drop", "cord: (length: \"100 ft\", gauge: \"16\")");
    let keys: Vec<&str> = long.notes.iter().map(|note| note.key).collect();
    assert_eq!((long.verdict, keys), (Some("no"), vec!["cord-too-thin", "long-thin-cord"]));
    let longest = long.notes[0].with[0].exact;
    // 3 % of 120 V over 2 × 4.99 Ω/1000 ft × 12 A (80 % of 15 A, NEC 210.20).
    assert!((longest - 3.6 / (2.0 * 4.99e-3 * 12.0)).abs() < 1e-9, "{longest}");
    for (length, verdict) in [("30 ft", "yes"), ("31 ft", "no")] {
        let cord = format!("cord: (length: \"{length}\", gauge: \"16\")");
        assert_eq!(of("wren", "voltage_drop", &cord).verdict, Some(verdict), "{length}");
    }
    // A 30 A unit draws no more than its own cord takes, whatever the post gives.
    let current = |post: &str| {
        let post = of(
            "wren",
            "voltage_drop",
            &format!("supply: Post(\"{post}\"), cord: (length: \"25 ft\", gauge: \"10\")"),
        );
        post.steps.iter().find(|step| step.name == "current").expect("the current").exact
    };
    assert!((current("50 A") - 24.0).abs() < 1e-9 && (current("20 A") - 16.0).abs() < 1e-9);
}

/// A maker's manual prints 12.6, 18.3, 25.3 and 32.2 mph beside 5.4, 7.9, 10.7 and 13.8 m/s (EN 13561): its miles are
/// wrong. An awning of a class comes in at the meters a second.
#[test]
fn awning_classes_in_miles_an_hour() {
    for (class, limit, misprint) in [(1, "17 mph", 18.3), (2, "23 mph", 25.3), (3, "30 mph", 32.2)] {
        let reach = format!("reach: \"8 ft\", wind_class: {class})");
        let classed = facts_with("wren", &[("reach: \"8 ft\")", &reach)], &[("wind_limit: \"15 mph\"", "")]);
        let judge = |wind: f64| {
            let wind = format!("wind: (speed: \"{wind:.1} mph\", watched: true)");
            figure(&classed, "awning_verdict", Some(&trip(&wind)))
        };
        let told = judge(misprint);
        assert_eq!((told.verdict, value(&told).as_str()), (Some("in"), limit), "class {class}");
        assert_eq!(judge(misprint - 2.0).verdict, Some("out"), "class {class}");
    }
    assert_eq!(Beaufort::new(13), None);
}

/// The Hong Kong Observatory prints 13 to 19 km/h for force 3 and 20 to 30 for force 4; WMO's column ends force 4 at
/// 28. Kilometers are read in WMO's own column, knots in theirs: 30 km/h is force 5, and 16 kn (29.6 km/h) still 4.
#[test]
fn kilometers_are_not_derived_from_knots() {
    let force = |text: &str| beaufort(&Quantity::parse(text).expect("a speed")).expect("a force").force();
    assert_eq!((force("28 km/h"), force("29 km/h"), force("30 km/h"), force("16 kn")), (4, 5, 5, 4));
}

/// FHWA prints 16 ft as 4.9 m and 14 ft as 4.3 m, rounded up; 16 ft are 4.8768 m. A unit that needs 4.88 m passes a
/// sign of 4.9 m by its own number, one that needs 4.91 m does not: one measure decides. Half an inch is never rounded
/// away: a sign is the nearest inch that does not exceed what is there (MUTCD 2009 §2C.27).
#[test]
fn signs_are_compared_in_one_measure() {
    let tall = |inches: &str| {
        let height = format!("height: \"{inches} in\"");
        figure(&facts_with("wren", &[("height: \"135 in\"", &height)], &[]), "clearance_min_sign", None)
    };
    let sign = |text: &str| Quantity::parse(text).expect("a sign");
    for (height, text, passage) in [
        ("186", "16 ft 0 in", Passage::Go),
        ("186", "4.87 m", Passage::No),
        ("186", "4.88 m", Passage::Go),
        ("187", "4.9 m", Passage::No),
        ("186.5", "16 ft 0 in", Passage::No),
        ("186.5", "16 ft 1 in", Passage::Go),
    ] {
        assert_eq!(may_pass(&tall(height), Some(&sign(text))), passage, "{height} in under {text}");
    }
}

/// Heat of propane is published as 91,333, 91,452, 91,502 and 91,547 BTU a gallon: 0.23 % apart. The lot names one, by
/// weight: 91,502 at 4.2465 lb.
#[test]
fn one_heat_of_propane_is_named() {
    let facts = facts("wren");
    let heat =
        facts.quantity("assumed.propane_heat").and_then(|q| q.to(Measure::BtuPerPound)).expect("a heat");
    assert!((heat * 4.2465 - 91_502.0).abs() < 5.0, "{heat}");
    assert!((91_547.0_f64 / 91_333.0 - 1.0 - 0.0023).abs() < 0.0001);
}

/// ICAO 1993: a tire keeps its gas; half a psi of gauge for each 1,000 ft is the difference of the two pressures of
/// the table (14.696 and 10.916 psia at the sea and at 8,000 ft).
#[test]
fn tires_climb_with_the_table() {
    let at_sea = facts_with("wren", &[], &[("elevation: \"5200 ft\"", "elevation: \"0 ft\"")]);
    let up = "tires: (set_at: \"60 °F\", read_at: \"60 °F\", height: \"8000 ft\")";
    let climbed = figure(&at_sea, "tire_pressure_at", Some(&trip(up)));
    assert!(
        (climbed.outcomes[0].exact - (75.0 + 14.696 - 10.916)).abs() < 0.001,
        "{}",
        climbed.outcomes[0].exact
    );
}
