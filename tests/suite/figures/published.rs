//! Published tables and worked examples; each source stands beside its check.

use super::*;
use sendoff::figures::{Passage, may_pass, most_fill};
use sendoff::measure::{Quantity, System};

/// A wren without water and kit, so that the plate's number is all there is.
fn bare(occc: &str) -> Facts {
    let plate = format!("occc: \"{occc}\"");
    facts_with(
        "wren",
        &[
            ("occc: \"2819 lb\"", &plate),
            ("kit: \"168 lb\"", "kit: \"0 lb\""),
            ("fresh: \"40 gal\"", "fresh: \"0 gal\""),
            ("tank: \"6 gal\"", "tank: \"0 gal\""),
        ],
        &[],
    )
}

fn people(count: usize, weight: &str) -> Trip {
    let one = format!("(age: 30, weight: \"{weight}\")");
    trip(&format!("people: [{}]", vec![one; count].join(", ")))
}

/// 49 CFR 575.6(a)(5)(i): 1,400 lb and five passengers of 150 lb leave 650 lb. A maker's tire pages: 1,000 lb less
/// two or five of 150, and five of 200 lb.
#[test]
fn load_limit_steps() {
    for (plate, count, weight, left) in [
        ("1400 lb", 5, "150 lb", "650 lb"),
        ("1000 lb", 2, "150 lb", "700 lb"),
        ("1000 lb", 5, "150 lb", "250 lb"),
        ("1000 lb", 5, "200 lb", "0 lb"),
    ] {
        assert_eq!(value(&figure(&bare(plate), "payload_left", Some(&people(count, weight)))), left);
    }
}

/// 49 CFR 571.110 S9.3.2: the label is rounded to the nearest kilogram, but loading to it must not exceed GVWR.
/// 14,500 − 11,840 = 2,660 lb is 1206.56 kg: 1207 kg would exceed it.
#[test]
fn payload_in_kilograms_is_floored() {
    let nobody = people(0, "0 lb");
    let left = figure(&bare("2660 lb"), "payload_left", Some(&nobody));
    assert_eq!(left.shown(System::Metric).first().map(ToString::to_string), Some("1206 kg".into()));
}

/// 49 CFR 571.110 S4.3: propane is inside the unloaded weight. A fuller tank changes nothing.
#[test]
fn propane_is_counted_once() {
    let more = facts_with("wren", &[("full: \"41 lb\"", "full: \"80 lb\"")], &[]);
    let trip = trip("start: (propane: \"1\")");
    assert_eq!(
        value(&figure(&more, "payload_left", Some(&trip))),
        value(&figure(&facts("wren"), "payload_left", Some(&trip)))
    );
}

/// 49 CFR 571.110 S9.3.4(e) prints 8.3 lb/gal and 1 kg/L for one weight: 332 and 333.8 lb for 40 gal.
#[test]
fn the_two_weights_of_water_differ() {
    let with = |water: &str| {
        let lot = format!("water: \"{water}\"");
        let facts = facts_with(
            "wren",
            &[("tank: \"6 gal\"", "tank: \"0 gal\"")],
            &[("water: \"8.34 lb/US gal\"", &lot)],
        );
        value(&figure(&facts, "water_weight", None))
    };
    assert_eq!(with("8.3 lb/US gal"), "332 lb");
    assert_eq!(with("1 kg/L"), "334 lb", "333.82 lb, up");
}

/// 29 CFR 1910.110 Table H-27 and a dispensing course: 47.6 lb of water times 42 % are 19.99 lb.
#[test]
fn cylinders_hold_what_the_table_allows() {
    for (gravity, percent) in
        [(0.496, 41.0), (0.503, 41.0), (0.504, 42.0), (0.510, 42.0), (0.511, 43.0), (0.527, 44.0)]
    {
        assert_eq!(most_fill(100.0, gravity), Some(percent), "{gravity}");
    }
    assert_eq!(most_fill(100.0, 0.49), None);
    let each = most_fill(47.6, 0.504).expect("a row");
    assert!((each - 19.992).abs() < 1e-9);
    // 49 CFR 173.315 note 1: 8.32828 lb of water a gallon; the 80 % mark lies below the filling density.
    assert!(most_fill(8.32828, 0.504).expect("a row") > 0.8 * 4.24);
    let over = facts_with("heron", &[("full: \"40 lb\"", "full: \"41 lb\"")], &[]);
    assert_eq!(missing(&figure(&over, "propane_hours", None)), "propane.full");
}

/// Supplier tables: 91,502 BTU a gallon and 21,548 BTU a pound after vaporising; a 20 lb cylinder holds 430,960
/// BTU and burns 14.37 h at 30,000 BTU/h.
#[test]
fn a_cylinder_burns_as_published() {
    let twenty = facts_with("wren", &[("full: \"41 lb\"", "full: \"20 lb\"")], &[]);
    let hours = figure(&twenty, "propane_hours", None);
    let heat = hours.steps.iter().find(|s| s.name == "heat").expect("the heat");
    assert_eq!(heat.quantity().expect("a number").to_string(), "430960 BTU");
    assert_eq!(shown(&hours).first().map(String::as_str), Some("14.3 h"));
}

/// A motor-home manual (rule A): 5,500 W at 5,000 ft, 3 % for each 1,000 ft above the sea: 4,675 W. Rule B, 3.5 %
/// above 500 ft: 4,633.75 W. Rule C, 3 % for each 500 m above 1,000 m: its table says 0.97 at 1,524 m. Rule C2,
/// an inverter set: 3.5 % for each 300 m above 1,500 m, at 2,100 m 0.93. A maker's grid (rule D): 2.6 kVA at
/// 1,000 m, 35 °C and 80 % humidity: 2.6 × (0.82 − 0.02) = 2.08 kVA.
#[test]
fn each_manual_has_its_own_rule_for_height() {
    let table = "Table(rows: [(at: \"1500 m\", part: \"0.97\"), (at: \"2000 m\", part: \"0.94\"), \
                 (at: \"2500 m\", part: \"0.91\")])";
    let grid = "Grid(heights: [\"0 m\", \"1000 m\"], temperatures: [\"25 °C\", \"35 °C\"], \
                parts: [[\"1\", \"0.94\"], [\"0.88\", \"0.82\"]], \
                humid: [(\"60 %\", \"0.01\"), (\"80 %\", \"0.02\"), (\"90 %\", \"0.03\"), (\"100 %\", \"0.04\")])";
    let hot = "Step(above: \"1000 m\", loss: \"3 %\", per: \"500 m\", \
               heat: (above: \"40 °C\", loss: \"3 %\", per: \"5 °C\"))";
    for (rated, rule, there, watts) in [
        (
            "5500 W",
            "Linear(above: \"0 ft\", loss: \"3 %\", per: \"1000 ft\")",
            "highest: \"5000 ft\"",
            "4675 W",
        ),
        (
            "5500 W",
            "Linear(above: \"500 ft\", loss: \"3.5 %\", per: \"1000 ft\")",
            "highest: \"5000 ft\"",
            "4633 W",
        ),
        (
            "5500 W",
            "Step(above: \"1000 m\", loss: \"3 %\", per: \"500 m\")",
            "highest: \"5000 ft\"",
            "5335 W",
        ),
        ("5500 W", table, "highest: \"1524 m\"", "5335 W"),
        (
            "1000 W",
            "Step(above: \"1500 m\", loss: \"3.5 %\", per: \"300 m\")",
            "highest: \"2100 m\"",
            "930 W",
        ),
        ("2600 W", grid, "highest: \"1000 m\", hottest: \"35 °C\", humid: \"80 %\"", "2080 W"),
        ("1000 W", hot, "highest: \"2000 m\", hottest: \"45 °C\"", "911 W"), // 0.94 × 0.97
    ] {
        let rated = format!("rated: \"{rated}\"");
        let rule = format!("derate: {rule}");
        let facts = facts_with(
            "wren",
            &[
                ("rated: \"4000 W\"", &rated),
                ("derate: Linear(above: \"500 ft\", loss: \"3.5 %\", per: \"1000 ft\")", &rule),
            ],
            &[],
        );
        assert_eq!(value(&figure(&facts, "generator_watts", Some(&trip(there)))), watts, "{rule}");
    }
}

/// What a table does not know is not guessed: above its last row, or without the heat it asks for.
#[test]
fn a_height_beyond_the_table_is_missing() {
    let linear = "derate: Linear(above: \"500 ft\", loss: \"3.5 %\", per: \"1000 ft\")";
    let table =
        facts_with("wren", &[(linear, "derate: Table(rows: [(at: \"1500 m\", part: \"0.97\")])")], &[]);
    let high = trip("highest: \"3000 m\"");
    assert_eq!(missing(&figure(&table, "generator_watts", Some(&high))), "generator.derate");
    let heat = "derate: Linear(above: \"500 ft\", loss: \"3.5 %\", per: \"1000 ft\", heat: (above: \"40 °C\", \
                loss: \"3 %\", per: \"5 °C\"))";
    let hot = facts_with("wren", &[(linear, heat)], &[]);
    assert_eq!(missing(&figure(&hot, "generator_watts", Some(&high))), "trip.hottest");
}

/// TxDOT Roadway Design Manual 4.11.1 (2.5 s, 11.2 ft/s²): 60 mph needs 566.0 ft, designed as 570 ft. The design
/// table of AASHTO (Highway Engineering Handbook table 2.2) is the same rule rounded up to five feet.
#[test]
fn stopping_sight_distance() {
    for (mph, table) in [
        (20, "115 ft"),
        (25, "155 ft"),
        (30, "200 ft"),
        (35, "250 ft"),
        (40, "305 ft"),
        (45, "360 ft"),
        (50, "425 ft"),
        (55, "495 ft"),
        (60, "570 ft"),
        (65, "645 ft"),
        (70, "730 ft"),
    ] {
        let stop = of("wren", "stopping_distance", &format!("speed: \"{mph} mph\""));
        let designed =
            stop.notes.iter().flat_map(|n| &n.with).find(|s| s.name == "table").expect("the table");
        assert_eq!(designed.quantity().expect("a number").to_string(), table, "{mph} mph");
    }
    let sixty = of("wren", "stopping_distance", "speed: \"60 mph\"");
    assert!((sixty.outcomes[0].exact - 566.0).abs() < 0.05, "220.5 + 345.5");
}

/// A textbook with a/g = 0.35: level 563.36 ft, 7 % down 649.07 ft; with f = 0.34782 (11.2 ft/s²) 5 % up 522.14 ft.
#[test]
fn a_grade_changes_the_braking() {
    let textbook = facts_with("wren", &[], &[("braking: \"11.2 ft/s2\"", "braking: \"11.27 ft/s2\"")]);
    let down = figure(&textbook, "stopping_distance", Some(&trip("speed: \"60 mph\", grade: \"-7 %\"")));
    assert!((down.outcomes[0].exact - 649.07).abs() < 0.01, "{}", down.outcomes[0].exact);
    let up = of("wren", "stopping_distance", "speed: \"60 mph\", grade: \"5 %\"");
    assert!((up.outcomes[0].exact - 522.14).abs() < 0.01, "{}", up.outcomes[0].exact);
    // Steeper than the brakes hold.
    assert_eq!(missing(&of("wren", "stopping_distance", "grade: \"-40 %\"")), "trip.grade");
}

/// MUTCD 2009 §2C.27: 13 ft 6.7 in are signed 13'-6"; a sign may be missing, which is not the same as high enough.
#[test]
fn no_sign_is_not_a_high_one() {
    let limit = |unit: &str| figure(&facts(unit), "clearance_min_sign", None);
    let sign = |text: &str| Quantity::parse(text).expect("a sign");
    // Handbook T-09.
    for (unit, text, passage) in [
        ("wren", "11 ft 4 in", Passage::No),
        ("wren", "11 ft 9 in", Passage::Go),
        ("wren", "3.55 m", Passage::No),
        ("wren", "3.58 m", Passage::No),
        ("wren", "3.59 m", Passage::Go),
        ("wren", "12 ft 6 in", Passage::Go),
        ("heron", "3.55 m", Passage::Go),
        ("heron", "11 ft 4 in", Passage::No),
        ("plover", "11 ft 4 in", Passage::Go),
    ] {
        assert_eq!(may_pass(&limit(unit), Some(&sign(text))), passage, "{unit} at {text}");
    }
    assert_eq!(may_pass(&limit("plover"), None), Passage::Unknown);
    assert_eq!(of("plover", "clearance_min_sign", "sign: NoSign").verdict, Some("unknown"));
    let lost = facts_with("wren", &[("height: \"135 in\"", "height: \"-135 in\"")], &[]);
    let lost = figure(&lost, "clearance_min_sign", None);
    assert_eq!(may_pass(&lost, Some(&sign("20 ft"))), Passage::Unknown);
    let box_on_roof = of("wren", "clearance_min_sign", "roof: \"18 in\", sign: Says(\"12 ft 6 in\")");
    assert_eq!((value(&box_on_roof).as_str(), box_on_roof.verdict), ("13 ft 3 in", Some("no")));
}

/// NEC chapter 9 table 8 course page: 100 ft of 16 AWG, 4 A, 24 V: 3.992 V, 16.63 %. A 50 ft cord of 10 AWG at
/// 30 A and 120 V: 3.72 V, 3.10 %.
#[test]
fn cords_lose_voltage() {
    let course = of(
        "wren",
        "voltage_drop",
        "cord: (length: \"100 ft\", gauge: \"16\", current: \"4 A\", volts: \"24 V\")",
    );
    assert!((course.outcomes[0].exact - 3.992).abs() < 1e-9);
    assert_eq!(shown(&course), ["4.00 V", "16.7 %"]);
    let shore = of("wren", "voltage_drop", "cord: (length: \"50 ft\", gauge: \"10\", current: \"30 A\")");
    assert_eq!((shown(&shore), shore.verdict), (vec!["3.72 V".into(), "3.1 %".into()], Some("no")));
    // At a household outlet a long thin cord is refused, a short thick one is not.
    assert_eq!(of("wren", "voltage_drop", "cord: (length: \"100 ft\", gauge: \"16\")").verdict, Some("no"));
    assert_eq!(of("wren", "voltage_drop", "cord: (length: \"25 ft\", gauge: \"12\")").verdict, Some("yes"));
    assert_eq!(
        missing(&of("wren", "voltage_drop", "cord: (length: \"25 ft\", gauge: \"13\")")),
        "trip.cord.gauge"
    );
}

/// Battery Council International: 12.45 V is 75 %, 12.24 V is 50 %.
#[test]
fn rested_voltage() {
    for (volts, charge) in
        [("12.65 V", "100 %"), ("12.45 V", "75 %"), ("12.24 V", "50 %"), ("11.89 V", "0 %")]
    {
        assert_eq!(value(&of("wren", "state_of_charge", &format!("house_volts: \"{volts}\""))), charge);
    }
    assert_eq!(missing(&of("plover", "state_of_charge", "house_volts: \"13.2 V\"")), "trip.house_charge");
    assert_eq!(value(&of("plover", "state_of_charge", "house_charge: \"63 %\"")), "63 %");
}

/// Peukert with the time of the rating: 100 Ah over 20 h, exponent 1.2, 10 A give 87.06 Ah (8.7055 h). The form
/// for a 1 A rating would give half.
#[test]
fn a_rated_battery_follows_peukert() {
    let facts = facts_with(
        "wren",
        &[
            (
                "capacity: \"160 Ah\", usable: \"50 %\"",
                "capacity: \"100 Ah\", usable: \"100 %\", rated_over: \"20 h\", peukert: \"1.2\"",
            ),
            (
                "(id: \"heat-fan\", draw: \"7.0 A\", duty: \"35 %\", cold_duty: \"60 %\", hours: \"10 h\"),",
                "(id: \"heat-fan\", draw: \"10 A\", hours: \"10 h\"),",
            ),
            ("        (id: \"fridge-board\", draw: \"0.5 A\", hours: \"12 h\"),\n", ""),
            ("        (id: \"lights\", draw: \"2.0 A\", hours: \"4 h\"),\n", ""),
            ("        (id: \"detectors\", draw: \"0.2 A\", hours: \"12 h\"),\n", ""),
            ("        (id: \"pump\", draw: \"6 A\", hours: \"0.3 h\"),\n", ""),
            ("        (id: \"phones\", draw: \"2 A\", hours: \"3 h\"),\n", ""),
        ],
        &[],
    );
    let nights = figure(&facts, "battery_nights", None);
    assert!((nights.outcomes[0].exact - 0.870_55).abs() < 1e-5, "{}", nights.outcomes[0].exact);
}

/// Ideal gas: 65 psig from 75 to 30 °F is 58.29 psig; 80 psig from 20 to 50 °C is 89.69 psig (at sea level).
#[test]
fn cold_tires_show_less() {
    let at_sea = [("elevation: \"5200 ft\"", "elevation: \"0 ft\"")];
    let heron = facts_with("heron", &[], &at_sea);
    let cold =
        figure(&heron, "tire_pressure_at", Some(&trip("tires: (set_at: \"75 °F\", read_at: \"30 °F\")")));
    assert!((cold.outcomes[0].exact - 58.29).abs() < 0.005, "{}", cold.outcomes[0].exact);
    let wren = facts_with("wren", &[], &at_sea);
    let warm =
        figure(&wren, "tire_pressure_at", Some(&trip("tires: (set_at: \"20 °C\", read_at: \"50 °C\")")));
    assert!((warm.outcomes[1].exact - 89.69).abs() < 0.005, "{}", warm.outcomes[1].exact);
    // Handbook E.4: about half a psi for each 1,000 ft climbed.
    let climb = figure(
        &wren,
        "tire_pressure_at",
        Some(&trip("tires: (set_at: \"60 °F\", read_at: \"60 °F\", height: \"1000 ft\")")),
    );
    assert!((climb.outcomes[0].exact - 75.5).abs() < 0.05, "{}", climb.outcomes[0].exact);
}

/// EPA WaterSense: half a gallon in 15 s is 2.0 gal/min; a gallon in 24 s is 2.5 (state leaflet).
#[test]
fn a_bucket_tells_the_flow() {
    let fill = |fields: &str| value(&of("wren", "fill_minutes", fields));
    assert_eq!(fill("bucket: \"30 s\""), fill("tap: \"2.0 gal/min\""));
    assert_eq!(
        (fill("bucket: \"24 s\"").as_str(), fill("tap: \"2.5 gal/min\"").as_str()),
        ("16 min", "16 min")
    );
}

/// Slope times base: 176 in × tan 3° = 9.22 in, 78 in × tan 6° = 8.20 in; absorption refrigerators allow 3° and 6°.
#[test]
fn blocks_for_a_slope() {
    let facts = facts_with(
        "wren",
        &[("wheelbase: \"190 in\"", "wheelbase: \"176 in\""), ("track: \"77 in\"", "track: \"78 in\"")],
        &[],
    );
    let steep = figure(&facts, "level_blocks", Some(&trip("slope: (length: \"3 °\", side: \"6 °\")")));
    assert!((steep.outcomes[0].exact - 8.20).abs() < 0.005 && (steep.outcomes[1].exact - 9.22).abs() < 0.005);
    assert_eq!((shown(&steep), steep.verdict), (vec!["8.2 in".into(), "9.3 in".into()], Some("yes")));
    let more = figure(&facts, "level_blocks", Some(&trip("slope: (length: \"3.1 °\", side: \"0 °\")")));
    assert_eq!(more.verdict, Some("no"));
    assert_eq!(
        of("plover", "level_blocks", "slope: (length: \"5 °\", side: \"5 °\")").verdict,
        None,
        "no such limit"
    );
}

/// Commercial-driver handbook: 40 ft need 4 s, 5 s above 40 mph.
#[test]
fn a_second_for_ten_feet() {
    let forty = facts_with("wren", &[("follow: \"26 ft\"", "follow: \"40 ft\"")], &[]);
    for (speed, gap) in [("40 mph", "4 s"), ("41 mph", "5 s"), ("64 km/h", "4 s"), ("65 km/h", "5 s")] {
        assert_eq!(
            value(&figure(&forty, "following_gap", Some(&trip(&format!("speed: \"{speed}\""))))),
            gap,
            "{speed}"
        );
    }
}
