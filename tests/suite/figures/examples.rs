//! Every worked example of handbook E.3, from the data sheets of all three units.

use super::*;

#[test]
fn clearance() {
    for (unit, told_as) in
        [("wren", "11 ft 9 in (3.59 m)"), ("plover", "9 ft 10 in (3.00 m)"), ("heron", "11 ft 6 in (3.51 m)")]
    {
        assert_eq!(told(&figure(&facts(unit), "clearance_min_sign", None)), told_as, "{unit}");
    }
    // Old Tollhouse is signed 11 ft 4 in.
    for (unit, word) in [("wren", "no"), ("plover", "yes"), ("heron", "no")] {
        let judged = of(unit, "clearance_min_sign", "sign: Says(\"11 ft 4 in\")");
        assert_eq!(judged.verdict, Some(word), "{unit}");
    }
}

#[test]
fn water_and_payload() {
    for (unit, water, left) in [
        ("wren", "384 lb (175 kg)", "1,587 lb (719 kg)"),
        ("plover", "238 lb (108 kg)", "330 lb (149 kg)"),
        ("heron", "367 lb (167 kg)", "1,137 lb (515 kg)"),
    ] {
        assert_eq!(told(&figure(&facts(unit), "water_weight", None)), water, "{unit}");
        assert_eq!(told(&of(unit, "payload_left", "")), left, "{unit}");
    }
}

#[test]
fn days_of_water_and_waste() {
    for (unit, people, water, fresh, grey, toilet) in [
        ("wren", 4, "Normal", "2.0 d", "2.5 d", "4.1 d"),
        ("wren", 4, "Careful", "3.3 d", "4.1 d", "6.2 d"),
        ("plover", 4, "Normal", "1.3 d", "1.1 d", "1.4 d"),
        ("plover", 2, "Normal", "2.6 d", "2.3 d", "2.9 d"),
        ("heron", 4, "Normal", "2.2 d", "4.4 d", "4.4 d"),
        ("heron", 4, "Careful", "3.6 d", "7.3 d", "6.6 d"),
    ] {
        let people = vec!["(age: 30)"; people].join(", ");
        let fields = format!("people: [{people}], use: {water}");
        assert_eq!(value(&of(unit, "fresh_days", &fields)), fresh, "{unit} {fields}");
        assert_eq!(value(&of(unit, "grey_days", &fields)), grey, "{unit} {fields}");
        assert_eq!(value(&of(unit, "toilet_days", &fields)), toilet, "{unit} {fields}");
    }
}

#[test]
fn battery() {
    for (unit, nights) in [("wren", "1.6"), ("plover", "6.6"), ("heron", "2.3")] {
        assert_eq!(value(&figure(&facts(unit), "battery_nights", None)), nights, "{unit}");
    }
    let frost = of("wren", "battery_nights", "coldest: \"28 °F\"");
    assert_eq!(value(&frost), "0.9");
    let night = frost.steps.iter().find(|s| s.name == "night").expect("the night");
    assert_eq!(night.quantity().expect("a number").to_string(), "66.2 Ah");
}

#[test]
fn a_day_off_grid() {
    let plover = facts("plover");
    let day = figure(&plover, "battery_days", None);
    assert_eq!(value(&day), "3.7 d");
    let step = |name: &str| {
        day.steps
            .iter()
            .rev()
            .find(|s| s.name == name)
            .expect("a step")
            .quantity()
            .expect("a number")
            .to_string()
    };
    assert_eq!((step("need"), step("short")), ("208.1 Ah".into(), "97.1 Ah".into()));
    assert_eq!(value(&of("plover", "battery_days", "driving: \"2 h\"")), "21.0 d");
    assert_eq!(shown(&figure(&plover, "battery_cost", None)), ["84.7 Ah", "34.5 Ah"]);
    assert_eq!(value(&of("plover", "solar_ah", "sun: \"5 h\"")), "111 Ah");
    assert_eq!(value(&of("plover", "solar_ah", "sun: \"2.5 h\"")), "55 Ah");
    assert_eq!(value(&of("plover", "battery_nights", "inverter_on: true")), "4.9", "360 over 72.5 Ah");
}

#[test]
fn propane() {
    assert_eq!(shown(&figure(&facts("wren"), "propane_hours", None)), ["29.4 h", "84.1 h"]);
    assert_eq!(value(&figure(&facts("wren"), "propane_days", None)), "5.4 d");
    let heron = figure(&facts("heron"), "propane_hours", None);
    assert_eq!(heron.part("flame-on").map(|q| q.to_string()), Some("34.4 h".into()));
    assert_eq!(heron.part("each-cylinder").map(|q| q.to_string()), Some("17.2 h".into()));
    assert_eq!(value(&figure(&facts("heron"), "propane_days", None)), "5.6 d");
    assert_eq!(figure(&facts("plover"), "propane_days", None).state, State::NotFitted);
}

#[test]
fn generator() {
    assert_eq!(shown(&of("wren", "generator_hours", "start: (fuel: \"3/4\")")), ["55.0 h", "39.2 h"]);
    assert_eq!(shown(&of("wren", "generator_hours", "start: (fuel: \"1/4\")")), ["0.0 h", "0.0 h"]);
    assert_eq!(value(&of("wren", "fuel_range", "start: (fuel: \"1/4\")")), "61 mi");
    for (height, watts, amperes) in [
        ("0 ft", "4000 W", "33.3 A"),
        ("500 ft", "4000 W", "33.3 A"),
        ("3100 ft", "3636 W", "30.3 A"),
        ("5200 ft", "3342 W", "27.8 A"),
        ("8000 ft", "2950 W", "24.5 A"),
        ("8900 ft", "2824 W", "23.5 A"),
    ] {
        let there = of("wren", "generator_watts", &format!("highest: \"{height}\""));
        assert_eq!(value(&there), watts, "{height}");
        let current =
            there.notes.iter().flat_map(|n| &n.with).find(|s| s.name == "current").expect("amperes");
        assert_eq!(current.quantity().expect("a number").to_string(), amperes, "{height}");
    }
    assert_eq!(value(&figure(&facts("wren"), "generator_watts", None)), "3342 W", "on the lot");
    for (height, dial) in [("5200 ft", "5"), ("8900 ft", "9"), ("3100 ft", "3")] {
        assert_eq!(value(&of("wren", "generator_dial", &format!("highest: \"{height}\""))), dial, "{height}");
    }
}

#[test]
fn road() {
    for (unit, swing) in [("wren", "16 in (41 cm)"), ("plover", "8 in (21 cm)"), ("heron", "26 in (67 cm)")] {
        assert_eq!(told(&figure(&facts(unit), "tail_swing", None)), swing, "{unit}");
    }
    for (unit, gap) in [("wren", "4 s"), ("plover", "3 s"), ("heron", "6 s")] {
        assert_eq!(value(&figure(&facts(unit), "following_gap", None)), gap, "{unit}");
    }
    for (unit, add, flat) in [
        ("wren", ["68 psi", "72 psi"], ["60 psi", "64 psi"]),
        ("plover", ["59 psi", "68 psi"], ["52 psi", "60 psi"]),
        ("heron", ["59 psi", "59 psi"], ["52 psi", "52 psi"]),
    ] {
        assert_eq!(shown(&figure(&facts(unit), "tire_add_air", None)), add, "{unit}");
        assert_eq!(shown(&figure(&facts(unit), "tire_flat", None)), flat, "{unit}");
    }
    let level = "start: (fuel: \"7/8\")";
    assert_eq!(told(&of("wren", "fuel_range", level)), "371 miles (597 km)");
    assert_eq!(told(&of("plover", "fuel_range", level)), "324 miles (521 km)");
}

/// Figures whose rule the handbook gives (E.2) without a worked example; the results are plain arithmetic.
#[test]
fn rules_without_an_example() {
    // 24 gal × (0.875 − 0.25) ÷ 0.05 gal/h.
    assert_eq!(value(&of("plover", "heater_hours", "start: (fuel: \"7/8\")")), "300 h");
    // 6 gal × 8.34 × 85 °F = 4253.4 BTU over 6,864 and 4,777 BTU/h.
    assert_eq!(shown(&figure(&facts("wren"), "heat_up_minutes", None)), ["38 min", "54 min", "22 min"]);
    // 55 °F + 42,000 × 0.8 ÷ (500 × 1.5), and never above the 115 °F it is set to.
    assert_eq!(value(&figure(&facts("heron"), "outlet_temperature", None)), "99 °F");
    assert_eq!(value(&of("heron", "outlet_temperature", "shower: \"0.7 gal/min\"")), "115 °F");
    assert_eq!(
        value(&of("heron", "outlet_temperature", "shower: \"0.5 gal/min\"")),
        "55 °F",
        "does not light"
    );
    // 6,090 + 366.96 + 206 + 400 lb; an eighth of it on the tongue.
    let tow = "people: [(age: 30), (age: 30)], bags: \"400 lb\", tow: (payload: \"1700 lb\", rating: \"9000 lb\", \
               length: \"19 ft 6 in\", ball_mount: \"10 in\")";
    let check = of("heron", "tow_check", tow);
    assert_eq!(check.verdict, Some("yes"));
    let part = |of: &str| check.part(of).map(|q| q.to_string());
    assert_eq!(part("loaded"), Some("7063 lb".into()));
    assert_eq!(part("tongue"), Some("883 lb".into()));
    assert_eq!(part("tow-payload-left"), Some("378 lb".into()), "1,700 − 340 − 882.87 − 99");
    assert_eq!(value(&of("heron", "rig_length", tow)), "48 ft 0 in");
    assert_eq!(figure(&facts("wren"), "rig_length", None).state, State::NotFitted);
}
