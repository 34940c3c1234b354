//! Reading quantities, and what is told when they cannot be read.

use proptest::prelude::*;
use rust_decimal::Decimal;

use super::super::{Dimension, Length, Measure, Number, Power, Quantity, Ratio, Temperature, Volume};

fn read(text: &str) -> Quantity {
    Quantity::parse(text).unwrap_or_else(|fault| panic!("{text}: {fault}"))
}

/// Every kind of value in the data sheets of the handbook (E.1) and in a trip file.
#[test]
fn values_of_the_sheets_are_read_and_written_as_authored() {
    use Dimension as D;
    for (text, dimension, si) in [
        ("312 in", D::Length, 7.9248),
        ("11 ft 3 in", D::Length, 3.429),
        ("11 ft 0 in", D::Length, 3.3528),
        ("-45 in", D::Length, -1.143),
        ("2 5/16 in", D::Length, 0.058_737_5),
        ("16 ft", D::Length, 4.8768),
        ("50 mi", D::Length, 80_467.2),
        ("14500 lb", D::Mass, 6_577.089_365),
        ("40 US gal", D::Volume, 0.151_416_471_36),
        ("4.7 imp gal", D::Volume, 0.021_366_623),
        ("1.6 qt", D::Volume, 0.001_514_164_713_6),
        ("6 cu ft", D::Volume, 0.169_901_079_552),
        ("75 psi", D::Pressure, 517_106.796_987_627_1),
        ("65 mph", D::Speed, 29.0576),
        ("4000 W", D::Power, 4000.0),
        ("30000 BTU/h", D::Power, 8_792.132_105_166_7),
        ("7.0 A", D::Current, 7.0),
        ("12.7 V", D::Voltage, 12.7),
        ("160 Ah", D::Charge, 576_000.0),
        ("5120 Wh", D::Energy, 18_432_000.0),
        ("28 °F", D::Temperature, 270.927_777_777_777_8),
        ("-6 °C", D::Temperature, 267.15),
        ("15 s", D::Time, 15.0),
        ("10 h", D::Time, 36_000.0),
        ("1/4", D::Ratio, 0.25),
        ("7/8", D::Ratio, 0.875),
        ("8/8", D::Ratio, 1.0),
        ("1", D::Ratio, 1.0),
        ("35 %", D::Ratio, 0.35),
        ("3.5 %", D::Ratio, 0.035),
        ("0.5 US gal/h", D::VolumeRate, 0.5 * 3.785_411_784e-3 / 3600.0),
        ("5 US gal/d", D::VolumeRate, 5.0 * 3.785_411_784e-3 / 86_400.0),
        ("140 lb-ft", D::Torque, 189.814_512_766_396),
        ("3 °", D::Angle, 3.0_f64.to_radians()),
        ("21548 BTU/lb", D::SpecificEnergy, 50_120_648.0),
        ("11.2 ft/s2", D::Acceleration, 3.413_76),
    ] {
        let quantity = read(text);
        assert_eq!(quantity.dimension(), dimension, "{text}");
        assert_eq!(quantity.to_string(), text);
        assert!((quantity.si() - si).abs() <= si.abs() * 1e-9, "{text}: {}", quantity.si());
    }
    for text in ["40 gal", "0.6 gal/min", "0.5 gal/h", "9 mpg", "8.34 lb/gal"] {
        assert_eq!(read(text).to_string(), text);
        assert!(!read(text).is_resolved());
    }
}

#[test]
fn other_spellings_mean_the_same() {
    for (text, same) in [
        ("0.6 gpm", "0.6 gal/min"),
        ("0.5 gph", "0.5 gal/h"),
        ("100 miles", "100 mi"),
        ("3 deg", "3 °"),
        ("35%", "35 %"),
        ("11ft3in", "11 ft 3 in"),
        ("  40   gal ", "40 gal"),
        ("40\u{A0}gal", "40 gal"),
        ("\u{2212}6 °C", "-6 °C"),
        ("140 lb·ft", "140 lb-ft"),
        ("190 Nm", "190 N·m"),
        ("26.1 L/100km", "26.1 L/100 km"),
    ] {
        assert_eq!(read(text), read(same), "{text}");
        assert_eq!(read(text).to_string(), same);
    }
    assert_eq!(read("11 ft 3 in").number(), Number::Decimal(Decimal::from(135)));
    assert_eq!(read("11 ft 3 1/2 in").to_string(), "11 ft 3 1/2 in");
    assert_eq!(read("11 ft 3 1/2 in").to(Measure::Inch), Some(135.5));
    assert_eq!(read("-3 ft 4 in").to(Measure::Inch), Some(-40.0));
    assert_eq!(read("-3 ft 4 in").to_string(), "-3 ft 4 in");
}

#[test]
fn faults_say_where_what_and_what_instead() {
    for (text, at, what, hint) in [
        ("", 0, "empty", "40 gal"),
        ("   ", 0, "empty", "40 gal"),
        ("gal", 0, "not a number", "begin with a number"),
        ("NaN W", 0, "`NaN` is not a number", "begin with a number"),
        ("inf", 0, "`inf` is not a number", "begin with a number"),
        ("-inf V", 0, "not a number", "begin with a number"),
        (".5 A", 0, "not a number", "write a 0"),
        ("3,600 W", 1, "comma", "3600 W"),
        ("3,5 kW", 1, "comma", "3.5 kW"),
        ("1.2.3 V", 3, "second point", "keep only"),
        ("5. A", 2, "no digits", "leave out the point"),
        ("40 gallons", 3, "`gallons`", "did you mean `gal`?"),
        ("40 gla", 3, "`gla`", "did you mean `gal`?"),
        ("10 MPH", 3, "`MPH`", "did you mean `mph`?"),
        ("28 F", 3, "`F`", "did you mean `°F`?"),
        ("30 amps", 3, "`amps`", "did you mean `A`?"),
        ("2819 lbs", 5, "`lbs`", "did you mean `lb`?"),
        ("1e3 W", 1, "`e3`", "known measure"),
        ("7 furlongs", 2, "`furlongs`", "known measure"),
        ("11' 3\"", 2, "`'`", "11 ft 3 in"),
        ("40 gal gal", 7, "`gal` follows", "leave it out"),
        ("40 lb 3 oz", 6, "`3 oz` follows", "leave it out"),
        ("1 h 30 min", 4, "follows", "only feet and inches"),
        ("11 ft 12 in", 6, "12 inches are a foot", "fewer than 12"),
        ("11 ft 3", 7, "only inches can follow", "end with `in`"),
        ("11 ft 3 lb", 8, "only inches can follow", "end with `in`"),
        ("11 ft 3 in 1", 11, "`1` follows", "leave it out"),
        ("11.5 ft 3 in", 0, "point", "whole feet"),
        ("1/2 ft 3 in", 0, "fraction", "whole feet"),
        ("1/0", 0, "divided by 0", "1/4"),
        ("9/8", 0, "more than a whole", "2 5/16"),
        ("1/", 0, "not a fraction", "1/4"),
        ("1/99999999999999999999", 0, "not a fraction", "1/4"),
        ("99999999999 W", 0, "larger than anything", "digits"),
        ("9999999999999999999999999999999999 W", 0, "larger than anything", "digits"),
        ("0.1234567891 W", 0, "too many digits", "round"),
        ("-500 °F", 5, "absolute zero", "°C"),
        ("-300 °C", 5, "absolute zero", "°C"),
        ("٤٠ gal", 0, "not a number", "begin with a number"),
        ("11111111111111111111111111111111111111111", 40, "too long", "one number"),
    ] {
        let fault = Quantity::parse(text).expect_err(text);
        assert_eq!(fault.at, at, "{text}: {fault}");
        assert!(fault.what.contains(what), "{text}: {fault}");
        assert!(fault.hint.contains(hint), "{text}: {fault}");
    }
}

#[test]
fn typed_quantities_name_both_dimensions() {
    let fault = "40 gal".parse::<Length>().unwrap_err();
    assert_eq!(fault.to_string(), "`40 gal` is a volume, but a length is wanted; write it like `11 ft 3 in`");
    let fault = "40".parse::<Volume>().unwrap_err();
    assert_eq!(fault.to_string(), "`40` has no measure, but a volume is wanted; write it like `40 gal`");
    assert!("160 Ah".parse::<super::super::Current>().is_err());
    assert!("1/4".parse::<Ratio>().is_ok());
    assert!("30000 BTU/h".parse::<Power>().is_ok());
}

#[test]
fn typed_quantities_travel_as_the_authored_text() {
    let height: Length = ron::from_str("\"11 ft 3 in\"").unwrap();
    assert_eq!(serde_json::to_string(&height).unwrap(), "\"11 ft 3 in\"");
    let seven: Quantity = serde_json::from_str("\"7.0 A\"").unwrap();
    assert_eq!(serde_json::to_string(&seven).unwrap(), "\"7.0 A\"");
    let fault = ron::from_str::<Length>("\"40 gla\"").unwrap_err().to_string();
    assert!(fault.contains("did you mean `gal`?"), "{fault}");
    let fault = ron::from_str::<Temperature>("\"40 lb\"").unwrap_err().to_string();
    assert!(fault.contains("is a weight, but a temperature is wanted"), "{fault}");
    let fault = serde_json::from_str::<Length>("12.5").unwrap_err().to_string();
    assert!(fault.contains("a length as a text, such as"), "{fault}");
}

proptest! {
    #[test]
    fn nothing_makes_the_reader_stumble(text in "\\PC{0,50}") {
        if let Ok(quantity) = Quantity::parse(&text) {
            prop_assert_eq!(Quantity::parse(&quantity.to_string()).unwrap(), quantity);
        }
    }

    #[test]
    fn near_misses_do_not_make_it_stumble(text in "[-−+]?[0-9]{1,3}[., /]{0,2}[0-9]{0,3} ?(ft|in|gal|US gal|°F|%|/|mph)? ?[0-9]{0,2}[/ ]?(in|[0-9]{0,2})") {
        match Quantity::parse(&text) {
            Ok(quantity) => prop_assert_eq!(Quantity::parse(&quantity.to_string()).unwrap(), quantity),
            Err(fault) => prop_assert!(fault.at <= text.chars().count() && !fault.hint.is_empty()),
        }
    }

    #[test]
    fn authored_numbers_come_back_digit_for_digit(mantissa in 0_i64..1_000_000, scale in 0_u32..6, measure in 0..Measure::ALL.len()) {
        let measure = Measure::ALL[measure];
        prop_assume!(measure != Measure::FootInch);
        let text = Quantity::new(Decimal::new(mantissa, scale), measure).to_string();
        prop_assert_eq!(read(&text).to_string(), text);
    }
}
