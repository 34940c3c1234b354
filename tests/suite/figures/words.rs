//! Figures in words: the formula with its numbers in it, in the reader's measures.

use super::*;
use sendoff::figures::projection::Resource;
use sendoff::figures::{Detail, explain, say_help, say_projection};
use sendoff::measure::System;
use sendoff::words::Reader;

fn said(figure: &Figure, system: System) -> String {
    assert_eq!(figure.state, State::Ok, "{}", figure.id);
    let reader = Reader::new("en-US", system);
    explain(&scripts().words, &reader, figure)
        .formula
        .replace('\u{A0}', " ")
        .replace(['\u{2068}', '\u{2069}'], "")
}

fn us(unit: &str, id: &str, fields: &str) -> String {
    said(&of(unit, id, fields), System::Us)
}

/// Unit, figure, fields of the trip, and words of the formula.
type Row = (&'static str, &'static str, &'static str, &'static str);

const FORMULAS: [Row; 20] = [
    (
        "wren",
        "state_of_charge",
        "house_volts: \"12.4 V\"",
        "the battery rested at 12.4 V; a lead-acid battery shows 12.65 V when full and 11.89 V when empty: 69 %",
    ),
    ("plover", "state_of_charge", "house_charge: \"63 %\"", "the battery's own panel shows 63 %: 63 %"),
    (
        "plover",
        "battery_cost",
        "",
        "cooking: 1,300 W for 45 min, through an inverter that passes on 90 %, from a battery of 12.8 V, cost 84.7 Ah",
    ),
    ("plover", "solar_ah", "sun: \"2.5 h\"", "380 W of panels in 2.5 h of full sun, of which 75 % arrives"),
    (
        "wren",
        "generator_dial",
        "highest: \"8900 ft\"",
        "8,900 ft (2,713 m) above the sea, one number for each 1,000 ft (305 m), from 0 up to 10: 9",
    ),
    (
        "wren",
        "loads_fit",
        "supply: Post(\"15 A\"), on: [(load: \"microwave\"), (load: \"tv\")]",
        "Microwave 1,500 W and TV 100 W make 1,600 W, of which 100 W run for hours; the outlet gives 1,800 W, and 1,440 W for hours",
    ),
    ("plover", "loads_fit", "supply: Inverter", "the inverter gives 1,800 W"),
    ("wren", "loads_fit", "supply: Nothing", "nothing gives power"),
    (
        "heron",
        "outlet_temperature",
        "shower: \"1.5 gal/min\"",
        "80 % of 42,000 BTU/h (12.3 kW) warms 1.5 gal/min (5.7 L/min) from 55 °F (13 °C) to 99.8 °F (37 °C); the heater stops at 115 °F (46 °C)",
    ),
    (
        "heron",
        "outlet_temperature",
        "shower: \"0.5 gal/min\"",
        "0.5 gal/min (1.9 L/min) is below the 0.6 gal/min (2.3 L/min) that lights it; the water stays at 55 °F (13 °C)",
    ),
    (
        "heron",
        "tow_check",
        "people: [(age: 30), (age: 30)], tow: (payload: \"1700 lb\", rating: \"9000 lb\")",
        "the tow vehicle's sticker 1,700 lb (771 kg), less people 340 lb (155 kg), the tongue 832.9 lb (378 kg)",
    ),
    (
        "wren",
        "tire_pressure_at",
        "tires: (set_at: \"70 °F\", read_at: \"30 °F\")",
        "front: 75 psi (517 kPa) set at 70 °F (21 °C) show 68 psi (469 kPa) at 30 °F",
    ),
    (
        "wren",
        "awning_verdict",
        "wind: (speed: \"12 mph\", gust: \"14 mph\", watched: true)",
        "the strongest wind told is 14 mph (23 km/h); the awning comes in at 15 mph (24 km/h)",
    ),
    (
        "wren",
        "awning_verdict",
        "wind: (force: 12)",
        "force 12 has no upper end; the awning comes in at 15 mph",
    ),
    ("wren", "awning_verdict", "wind: (watched: false)", "no wind was told; the awning comes in at 15 mph"),
    (
        "wren",
        "level_blocks",
        "slope: (length: \"4 °\", side: \"-1 °\")",
        "nose to tail: 15 ft 10 in (4.83 m) between the axles on a slope of 4° need 13.3 in (34 cm); the refrigerator allows 6° side to side and 3° nose to tail",
    ),
    (
        "wren",
        "trip_projection",
        "",
        "fresh water: 40 gal (151 L) at the start, 20 gal (76 L) on a day without a hook-up, gone after 2 days",
    ),
    (
        "wren",
        "return_total",
        "returned: (black_full: true, missing: [\"W03\"])",
        "black tank not emptied: 1 × $95.00 is $95.00; missing item W03: 1 × $24.00 is $24.00; tax of 7.5 % on $95.00 is $7.13; together $126.13; of the deposit $1,500.00 the renter gets $1,373.87 back",
    ),
    ("wren", "return_total", "returned: ()", "nothing is charged"),
    ("wren", "battery_nights", "coldest: \"28 °F\"", "in frost 0.8 of that is left: 64 Ah"),
];

#[test]
fn a_formula_is_a_sentence_with_its_numbers() {
    for (unit, id, fields, words) in FORMULAS {
        let told = us(unit, id, fields);
        assert!(told.contains(words), "{unit} {id}: {told}");
    }
}

/// Metric and British readers get their own measures, and nothing of the formula stays behind in others.
#[test]
fn a_formula_is_told_in_the_readers_measures() {
    let blocks = of("wren", "level_blocks", "slope: (length: \"4 °\", side: \"1 °\")");
    let cold = of("wren", "tire_pressure_at", "tires: (set_at: \"70 °F\", read_at: \"30 °F\")");
    let road = of("wren", "stopping_distance", "grade: \"-6 %\"");
    let warm = of("heron", "outlet_temperature", "");
    for figure in [&blocks, &cold, &road, &warm] {
        let metric = said(figure, System::Metric);
        let parts: Vec<&str> = metric.split(' ').collect();
        let inches = parts.windows(2).any(|p| p[0].ends_with(|c: char| c.is_ascii_digit()) && p[1] == "in");
        assert!(!inches, "{}: {metric}", figure.id);
        for foreign in [" ft", "psi", "°F", "gal", "mph", "BTU"] {
            assert!(!metric.contains(foreign), "{}: {metric}", figure.id);
        }
    }
    assert!(said(&cold, System::Uk).contains("psi (5.2 bar)"), "{}", said(&cold, System::Uk));
    assert!(said(&road, System::Uk).contains("65 mph"), "{}", said(&road, System::Uk));
}

fn projection(fields: &str) -> Box<figures::projection::Projection> {
    match of("wren", "trip_projection", fields).detail {
        Detail::Projection(projection) => projection,
        other => panic!("{other:?}"),
    }
}

/// What runs out first comes first, with its day; each suggestion once, with all that it gains.
#[test]
fn a_projection_is_said_in_sentences() {
    let reader = Reader::default();
    let words = &scripts().words;
    // 24 July 2026 is a Friday; 2.0 days of fresh water end with Saturday.
    let fields = "nights: 5, hook_up: [Full], start: (fuel: \"7/8\"), leaves: \"2026-07-24\"";
    let told = projection(fields);
    let said = say_projection(words, &reader, &told);
    assert_eq!(said.first, "The house battery runs out first: on Sunday.");
    let course = |resource| &said.courses.iter().find(|(r, _)| *r == resource).expect("a course").1;
    assert_eq!(course(Resource::Fresh), "Fresh water lasts to Sunday.");
    assert_eq!(course(Resource::Propane), "Propane lasts the whole trip.");
    assert!(said.unknown.is_empty());
    let helps = &said.helps;
    assert!(helps.contains(&"Fill on Monday: fresh water lasts the whole trip.".to_owned()), "{helps:#?}");
    assert_eq!(helps.iter().filter(|text| text.starts_with("Use water with care")).count(), 1, "{helps:#?}");
    // Each suggestion is one of the sentences' parts, and every one says what it gains.
    for help in &told.helps {
        let alone = say_help(words, &reader, &told, help);
        let gains = alone.contains("last") || alone.contains("there is room");
        assert!(gains && alone.ends_with('.'), "{alone}");
    }
    // Without a date the days are counted; on a long trip the day of the week has its number too.
    let counted = say_projection(words, &reader, &projection("nights: 5, start: (fuel: \"7/8\")"));
    assert_eq!(counted.first, "The house battery runs out first: on day 2.");
    let long = projection("nights: 9, start: (fuel: \"7/8\"), leaves: \"2026-07-24\"");
    assert_eq!(
        say_projection(words, &reader, &long).first,
        "The house battery runs out first: on Saturday (day 2)."
    );
    // What is not known never reads as lasting.
    let unknown = say_projection(words, &reader, &projection("nights: 1, use: Careful"));
    assert_eq!(
        unknown.first,
        "Nothing that could be worked out runs out. Something could not be worked out."
    );
    assert_eq!(unknown.unknown, ["generator fuel: cannot be worked out, fuel at the start is missing."]);
}

/// A gain that stays on the same day is told as later on that day, never as nothing.
#[test]
fn a_gain_on_the_same_day_is_told() {
    let told =
        projection("nights: 6, start: (fuel: \"7/8\"), hook_up: [], coldest: \"28 °F\", driving: \"1 h\"");
    let reader = Reader::default();
    for help in &told.helps {
        let text = say_help(&scripts().words, &reader, &told, help);
        let same = help.after.is_some_and(|after| figures::day_of(after) == figures::day_of(help.before));
        assert_eq!(text.contains("until later on"), same, "{text}");
    }
    assert!(told.helps.iter().any(|help| help.resource == Resource::Battery));
}

/// Nights are said whole, never more than there are (handbook E.3: 1.6 and 6.6 nights, and 0.9 in frost).
#[test]
fn nights_are_said_whole_in_the_safe_direction() {
    let reader = Reader::new("en-US", System::Us);
    let said = |unit: &str, fields: &str| {
        let value = explain(&scripts().words, &reader, &of(unit, "battery_nights", fields)).value;
        value.replace(['\u{2068}', '\u{2069}'], "")
    };
    assert_eq!(said("plover", ""), "6 whole nights");
    assert_eq!(said("wren", ""), "1 whole night");
    assert_eq!(said("wren", "coldest: \"28 °F\""), "less than one night");
}
