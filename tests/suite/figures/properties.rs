//! What holds over the whole range of facts.

use proptest::prelude::*;
use rust_decimal::Decimal;

use super::*;
use sendoff::measure::{Measure, Rounding, System, rounded};

/// The facts of the wren, read once.
fn wren() -> &'static Facts {
    static WREN: OnceLock<Facts> = OnceLock::new();
    WREN.get_or_init(|| facts("wren"))
}

fn amount(id: &str, fields: &str) -> Decimal {
    figure(wren(), id, Some(&trip(fields))).amount().unwrap_or_else(|| panic!("{id} of {fields}"))
}

fn party(count: usize) -> String {
    format!("people: [{}]", vec!["(age: 30)"; count].join(", "))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn more_people_fewer_days(people in 1_usize..12, use_each in 1_u32..20) {
        for id in ["fresh_days", "grey_days", "toilet_days"] {
            let days = |count: usize| amount(id, &format!("{}, use_each: \"{use_each} gal\"", party(count)));
            prop_assert!(days(people + 1) <= days(people), "{id}");
        }
    }

    #[test]
    fn more_in_the_tank_more_days(eighths in 0_u32..8) {
        let days = |level: u32| amount("fresh_days", &format!("start: (fresh: \"{level}/8\")"));
        prop_assert!(days(eighths + 1) >= days(eighths));
        let miles = |level: u32| amount("fuel_range", &format!("start: (fuel: \"{level}/8\")"));
        prop_assert!(miles(eighths + 1) >= miles(eighths) && miles(eighths) >= Decimal::ZERO);
        let hours = |level: u32| amount("generator_hours", &format!("start: (fuel: \"{level}/8\")"));
        prop_assert!(hours(eighths + 1) >= hours(eighths));
    }

    #[test]
    fn higher_up_less_power(feet in 0_u32..30_000) {
        let watts = |feet: u32| amount("generator_watts", &format!("highest: \"{feet} ft\""));
        prop_assert!(watts(feet + 100) <= watts(feet) && watts(feet) >= Decimal::ZERO);
    }

    #[test]
    fn faster_and_steeper_needs_more_road(mph in 1_u32..90, down in 0_u32..30) {
        let road = |mph: u32, down: u32| amount("stopping_distance", &format!("speed: \"{mph} mph\", grade: \"-{down} %\""));
        prop_assert!(road(mph + 1, down) >= road(mph, down) && road(mph, down + 1) >= road(mph, down));
    }

    /// Whole pounds that are loaded and unloaded again never lose one.
    #[test]
    fn whole_pounds_come_back(pounds in 0_u32..2_000, people in 0_usize..8) {
        let left = |bags: u32| amount("payload_left", &format!("{}, bags: \"{bags} lb\"", party(people)));
        prop_assert_eq!(left(0) - left(pounds), Decimal::from(pounds));
    }

    /// The same load told in kilograms and back never loses a pound, and never gains more than rounding.
    #[test]
    fn pounds_through_kilograms(pounds in 1_u32..5_000) {
        let kilograms = Measure::Pound.convert(f64::from(pounds), Measure::Kilogram).expect("a mass");
        let back = Measure::Kilogram.convert(kilograms, Measure::Pound).expect("a mass");
        prop_assert_eq!(rounded(back, 0, Rounding::Down), Some(Decimal::from(pounds)));
        prop_assert_eq!(rounded(back, 0, Rounding::Up), Some(Decimal::from(pounds)));
    }

    /// Inches of the roof add up to whole inches, whatever they are told in.
    #[test]
    fn whole_inches_add_up(inches in 0_u32..60) {
        let plain = amount("clearance_min_sign", &format!("roof: \"{inches} in\""));
        prop_assert_eq!(plain, Decimal::from(141 + inches));
        let centimeters = Decimal::from(inches) * Decimal::new(254, 2);
        prop_assert_eq!(amount("clearance_min_sign", &format!("roof: \"{centimeters} cm\"")), plain);
    }

    /// Whatever is shown in a reader's measures stays on the safe side of what it is.
    #[test]
    fn every_reader_is_on_the_safe_side(bags in 0_u32..1_500, roof in 0_u32..600) {
        let left = figure(wren(), "payload_left", Some(&trip(&format!("bags: \"{bags} lb\""))));
        let high = figure(wren(), "clearance_min_sign", Some(&trip(&format!("roof: \"{roof} mm\""))));
        for system in [System::Us, System::Uk, System::Metric] {
            let shown = left.shown(system)[0].to(Measure::Pound).expect("a mass");
            prop_assert!(shown <= left.outcomes[0].exact + 1e-6);
            let shown = high.shown(system)[0].to(Measure::Inch).expect("a length");
            prop_assert!(shown >= high.outcomes[0].exact - 1e-6);
        }
    }

    /// Twice the water for twice the people lasts as long.
    #[test]
    fn days_scale(people in 1_usize..6, use_each in 1_u32..9) {
        let exact = |people: usize, tank: u32| {
            let tank = format!("fresh: \"{tank} gal\"");
            let facts = facts_with("wren", &[("fresh: \"40 gal\"", &tank)], &[]);
            let trip = trip(&format!("{}, use_each: \"{use_each} gal\"", party(people)));
            figure(&facts, "fresh_days", Some(&trip)).outcomes[0].exact
        };
        prop_assert!((exact(people, 40) - exact(people * 2, 80)).abs() < 1e-9);
    }

    /// Nothing panics, nothing wraps, nothing is not a number, however strange the sheet.
    #[test]
    fn strange_sheets_are_survived(
        capacity in "(0|-1|0\\.000000001|999999999|160) Ah",
        tank in "(0|-40|0\\.000000001|999999999|55) gal",
        height in "(0|-135|999999999|135) in",
        people in 0_usize..40,
        nights in prop_oneof![Just(0_u16), Just(1), Just(30)],
        level in "(0|1|2|-1|1/3)",
    ) {
        let (capacity, tank, height) =
            (format!("capacity: \"{capacity}\""), format!("tank: \"{tank}\""), format!("height: \"{height}\""));
        let facts = facts_with(
            "wren",
            &[("capacity: \"160 Ah\"", &capacity), ("tank: \"55 gal\"", &tank), ("height: \"135 in\"", &height)],
            &[],
        );
        let fields = format!(
            "nights: {nights}, {}, start: (fresh: \"{level}\", fuel: \"{level}\", propane: \"{level}\"), \
             highest: \"999999 ft\", coldest: \"-400 °F\", generator_run: \"24 h\"",
            party(people)
        );
        for figure in figures::of_trip(&facts, &trip(&fields)) {
            if figure.state == State::Ok {
                prop_assert!(figure.outcomes.iter().all(|o| o.exact.is_finite()), "{}", figure.id);
                prop_assert_eq!(figure.outcomes.len(), figure.values.len().min(figure.outcomes.len()));
            } else {
                prop_assert!(figure.values.is_empty() && figure.outcomes.is_empty(), "{}", figure.id);
            }
        }
    }
}

/// The longest trip that can be written.
#[test]
fn a_trip_of_years_is_survived() {
    let years = of("wren", "trip_projection", "nights: 65535, start: (fuel: \"1\"), hook_up: [Full]");
    assert_eq!((years.state, years.verdict), (State::Ok, Some("runs-out")));
}

/// Zero people is no number of days, and never an endless one.
#[test]
fn impossible_facts_give_no_number() {
    assert_eq!(missing(&of("wren", "fresh_days", "people: []")), "trip.people");
    assert_eq!(missing(&of("wren", "fresh_days", "start: (fresh: \"1 1/8\")")), "trip.start.fresh");
    assert_eq!(missing(&of("wren", "fuel_range", "")), "trip.start.fuel");
    let negative = facts_with("wren", &[("fresh: \"40 gal\"", "fresh: \"-40 gal\"")], &[]);
    assert_eq!(missing(&figure(&negative, "water_weight", None)), "water.fresh");
    let zero = facts_with("wren", &[("burn_half: \"0.5 gal/h\"", "burn_half: \"0 gal/h\"")], &[]);
    assert_eq!(
        missing(&figure(&zero, "generator_hours", Some(&trip("start: (fuel: \"1\")")))),
        "generator.burn_half"
    );
}

/// An imperial lot means its own gallon; what names its gallon stays as it is.
#[test]
fn the_lots_gallon_counts() {
    let imperial = facts_with("wren", &[], &[("gallon: Us", "gallon: Imperial")]);
    // (40 + 6) imperial gallons are 55.24 US gallons: 460.73 lb.
    assert_eq!(value(&figure(&imperial, "water_weight", None)), "461 lb");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// A longer cord and a steeper slope ask for more; thicker wire for less.
    #[test]
    fn longer_cords_and_steeper_slopes(feet in 1_u32..300, tenths in 0_u32..400) {
        let drop = |feet: u32, gauge: &str| {
            let cord = format!("cord: (length: \"{feet} ft\", gauge: \"{gauge}\")");
            figure(wren(), "voltage_drop", Some(&trip(&cord))).outcomes[0].exact
        };
        prop_assert!(drop(feet + 1, "16") > drop(feet, "16") && drop(feet, "12") < drop(feet, "14"));
        prop_assert!((drop(2 * feet, "12") - 2.0 * drop(feet, "12")).abs() < 1e-9, "twice the cord");
        let block = |tenths: u32, sign: &str| {
            let slope = format!("{sign}{}.{} °", tenths / 10, tenths % 10);
            let slope = format!("slope: (length: \"{slope}\", side: \"{slope}\")");
            figure(wren(), "level_blocks", Some(&trip(&slope))).amount().expect("a block")
        };
        prop_assert!(block(tenths + 1, "") >= block(tenths, ""));
        prop_assert_eq!(block(tenths, ""), block(tenths, "-"), "whichever side is low");
    }

    /// A wind that brings the awning in is never undone by more wind, in whatever it is told.
    #[test]
    fn more_wind_never_puts_it_out(tenths in 0_u32..600) {
        for unit in ["mph", "km/h", "m/s", "kn"] {
            let judge = |tenths: u32| {
                let wind = format!("wind: (speed: \"{}.{} {unit}\", watched: true)", tenths / 10, tenths % 10);
                figure(wren(), "awning_verdict", Some(&trip(&wind))).verdict
            };
            prop_assert!(judge(tenths) == Some("out") || judge(tenths + 1) == Some("in"), "{unit}");
        }
    }

    /// Whole psi stay whole: ten percent of a placard told in psi or in kilopascals.
    #[test]
    fn whole_psi_stay_whole(tens in 1_u32..15) {
        let psi = tens * 10;
        let add = |cold: &str| {
            let cold = format!("cold: \"{cold}\"");
            let facts = facts_with("wren", &[("cold: \"75 psi\"", &cold)], &[]);
            figure(&facts, "tire_add_air", None).amount().expect("a pressure")
        };
        prop_assert_eq!(add(&format!("{psi} psi")), Decimal::from(tens * 9));
        let kilopascals = Measure::Psi.convert(f64::from(psi), Measure::Kilopascal).expect("a pressure");
        prop_assert_eq!(add(&format!("{kilopascals:.9} kPa")), Decimal::from(tens * 9));
    }

    /// The numbers alone are the numbers of the whole figure.
    #[test]
    fn numbers_alone_are_the_same(people in 0_usize..6, feet in 0_u32..9_000, level in 0_u32..9) {
        let trip = trip(&format!(
            "nights: 5, {}, highest: \"{feet} ft\", start: (fuel: \"{level}/8\"), on: [(load: \"tv\")]",
            party(people)
        ));
        let whole = figures::of_trip(wren(), &trip);
        let alone = figures::numbers(Given { facts: wren(), trip: Some(&trip) });
        prop_assert_eq!(whole.len(), alone.len());
        for (whole, alone) in whole.iter().zip(&alone) {
            prop_assert_eq!(&whole.values, &alone.values, "{}", whole.id);
            prop_assert_eq!((&whole.state, whole.verdict), (&alone.state, alone.verdict));
            prop_assert_eq!(&whole.detail, &alone.detail);
            prop_assert!(alone.inputs.is_empty() && alone.formula.is_empty() && alone.sentences.is_empty());
        }
    }
}
