//! The door for numbers, measures, sums and dates.

use jiff::civil;
use jiff::tz::Offset;
use rust_decimal::Decimal;

use super::super::format::{self, Places};
use super::super::{Args, Reader, Value, Words};
use super::{FORMAT, sound};
use crate::measure::{Gallon, Measure, Money, Quantity, Rounding, System};

fn english() -> Words {
    sound(&[("i18n/en-US/format.ftl", FORMAT)])
}

fn reader(system: System) -> Reader {
    Reader::new("en-US", system)
}

fn us(text: &str) -> Quantity {
    Quantity::parse(text).unwrap_or_else(|fault| panic!("{text}: {fault}")).resolve(Gallon::Us)
}

/// With plain blanks, to be read in a table.
fn shown(system: System, text: &str, rounding: Rounding) -> String {
    format::quantity(&english(), &reader(system), &us(text), rounding, Places::AsWritten)
        .replace('\u{A0}', " ")
}

use Rounding::{Down, Exact, Nearest, Up};

/// Handbook F.4.
#[test]
fn rows_of_the_display_table_read_as_in_the_handbook() {
    for (text, rounding, american, british, metric) in [
        ("11 ft 3 in", Up, "11 ft 3 in (3.43 m)", "3.43 m (11 ft 3 in)", "3.43 m"),
        ("135 in", Up, "11 ft 3 in (3.43 m)", "3.43 m (11 ft 3 in)", "3.43 m"),
        ("2819 lb", Down, "2,819 lb (1,278 kg)", "1,278 kg", "1,278 kg"),
        ("40 gal", Nearest, "40 gal (151 L)", "151 L (33 imperial gal)", "151 L"),
        ("65 mph", Down, "65 mph (104 km/h)", "65 mph", "104 km/h"),
        ("75 psi", Nearest, "75 psi (517 kPa)", "75 psi (5.2 bar)", "517 kPa"),
        ("32 °F", Up, "32 °F (0 °C)", "0 °C", "0 °C"),
        ("30000 BTU/h", Nearest, "30,000 BTU/h (8.8 kW)", "8.8 kW", "8.8 kW"),
        ("9 mpg", Nearest, "9 mpg (26.1 L/100 km)", "10.8 mpg", "26.1 L/100 km"),
        ("3/4", Exact, "3/4", "3/4", "3/4"),
    ] {
        assert_eq!(shown(System::Us, text, rounding), american);
        assert_eq!(shown(System::Uk, text, rounding), british);
        assert_eq!(shown(System::Metric, text, rounding), metric);
    }
}

/// Handbook E.1: the second value of every cell that has one.
#[test]
fn double_values_of_the_data_sheets_come_out_the_same() {
    for (text, rounding, wanted) in [
        ("312 in", Up, "26 ft 0 in (7.93 m)"),
        ("228 in", Up, "19 ft 0 in (5.80 m)"),
        ("332 in", Up, "27 ft 8 in (8.44 m)"),
        ("288 in", Up, "24 ft 0 in (7.32 m)"),
        ("99 in", Up, "8 ft 3 in (2.52 m)"),
        ("80 in", Up, "6 ft 8 in (2.04 m)"),
        ("96 in", Up, "8 ft 0 in (2.44 m)"),
        ("116 in", Up, "9 ft 8 in (2.95 m)"),
        ("98 in", Up, "8 ft 2 in (2.49 m)"),
        ("112 in", Up, "9 ft 4 in (2.85 m)"),
        ("132 in", Up, "11 ft 0 in (3.36 m)"),
        ("118 in", Up, "9 ft 10 in (3.00 m)"),
        ("138 in", Up, "11 ft 6 in (3.51 m)"),
        ("141 in", Up, "11 ft 9 in (3.59 m)"),
        ("16 in", Up, "16 in (41 cm)"),
        ("8 in", Up, "8 in (21 cm)"),
        ("26 in", Up, "26 in (67 cm)"),
        ("20 ft", Nearest, "20 ft (6.1 m)"),
        ("26 ft", Nearest, "26 ft (7.9 m)"),
        ("5200 ft", Nearest, "5,200 ft (1,585 m)"),
        ("14500 lb", Down, "14,500 lb (6,577 kg)"),
        ("9350 lb", Down, "9,350 lb (4,241 kg)"),
        ("7800 lb", Down, "7,800 lb (3,538 kg)"),
        ("11681 lb", Up, "11,681 lb (5,299 kg)"),
        ("7980 lb", Up, "7,980 lb (3,620 kg)"),
        ("6090 lb", Up, "6,090 lb (2,763 kg)"),
        ("1370 lb", Down, "1,370 lb (621 kg)"),
        ("1710 lb", Down, "1,710 lb (775 kg)"),
        ("1587 lb", Down, "1,587 lb (719 kg)"),
        ("384 lb", Up, "384 lb (175 kg)"),
        ("170 lb", Up, "170 lb (78 kg)"),
        ("80 psi", Nearest, "80 psi (552 kPa)"),
        ("65 psi", Nearest, "65 psi (448 kPa)"),
        ("45 psi", Nearest, "45 psi (310 kPa)"),
        ("140 lb-ft", Nearest, "140 lb-ft (190 N·m)"),
        ("133 lb-ft", Nearest, "133 lb-ft (180 N·m)"),
        ("100 lb-ft", Nearest, "100 lb-ft (136 N·m)"),
        ("50 mi", Nearest, "50 miles (80 km)"),
        ("371 mi", Down, "371 miles (597 km)"),
        ("55 gal", Nearest, "55 gal (208 L)"),
        ("24 gal", Nearest, "24 gal (91 L)"),
        ("5 gal", Nearest, "5 gal (19 L)"),
        ("4.7 gal", Nearest, "4.7 gal (18 L)"),
        ("35 gal", Nearest, "35 gal (132 L)"),
        ("1.6 qt", Nearest, "1.6 qt (1.5 L)"),
        ("18 mpg", Nearest, "18 mpg (13.1 L/100 km)"),
        ("0.5 gal/h", Nearest, "0.5 gal/h (1.9 L/h)"),
        ("0.7 gal/h", Nearest, "0.7 gal/h (2.6 L/h)"),
        ("0.6 gpm", Nearest, "0.6 gal/min (2.3 L/min)"),
        ("7500 BTU/h", Nearest, "7,500 BTU/h (2.2 kW)"),
        ("20 °F", Up, "20 °F (−6 °C)"),
        ("25 °F", Up, "25 °F (−3 °C)"),
        ("140 °F", Nearest, "140 °F (60 °C)"),
        ("15 mph", Down, "15 mph (24 km/h)"),
        ("70 mph", Down, "70 mph (112 km/h)"),
        ("60 mph", Down, "60 mph (96 km/h)"),
        ("35 mph", Down, "35 mph (56 km/h)"),
        ("7.0 A", Exact, "7.0 A"),
        ("35 %", Exact, "35 %"),
        ("2 5/16 in", Exact, "2 5/16 in (5.9 cm)"),
        ("-6 °C", Down, "21 °F (−6 °C)"),
        ("1 mi", Nearest, "1 mile (1.6 km)"),
    ] {
        assert_eq!(shown(System::Us, text, rounding), wanted, "{text}");
    }
}

/// Handbook F.4 rule 5: clearances up, payloads down. In L/100 km more is worse, so a safe mpg turns over.
#[test]
fn conversions_round_in_the_safe_direction() {
    assert_eq!(shown(System::Metric, "135 in", Up), "3.43 m");
    assert_eq!(shown(System::Metric, "135 in", Down), "3.42 m");
    assert_eq!(shown(System::Metric, "2819 lb", Down), "1,278 kg");
    assert_eq!(shown(System::Metric, "9 mpg", Down), "26.2 L/100 km");
    assert_eq!(shown(System::Us, "26.1 L/100 km", Down), "9.1 mpg (26.1 L/100 km)");
    assert_eq!(shown(System::Us, "26.2 L/100 km", Up), "8.9 mpg (26.2 L/100 km)");
    assert_eq!(shown(System::Us, "3.43 m", Up), "11 ft 4 in (3.43 m)");
    assert_eq!(shown(System::Us, "100 kg", Down), "220 lb (100 kg)");
}

/// A gallon of the lot that nobody resolved is shown as written, never converted.
#[test]
fn an_unresolved_gallon_is_not_converted() {
    let tank = Quantity::parse("40 gal").unwrap();
    for system in [System::Us, System::Uk, System::Metric] {
        assert_eq!(
            format::quantity(&english(), &reader(system), &tank, Nearest, Places::AsWritten),
            "40\u{A0}gal"
        );
    }
    let imperial = tank.resolve(Gallon::Imperial);
    assert_eq!(
        format::quantity(&english(), &reader(System::Us), &imperial, Nearest, Places::AsWritten),
        "48\u{A0}gal (182\u{A0}L)"
    );
}

#[test]
fn computed_values_get_the_decimals_asked_for() {
    let text = |text: &str, rounding, places| {
        format::quantity(&english(), &reader(System::Us), &us(text), rounding, Places::Of(places))
            .replace('\u{A0}', " ")
    };
    assert_eq!(text("383.64 lb", Up, 0), "384 lb (175 kg)");
    assert_eq!(text("29.448 h", Down, 1), "29.4 h");
    assert_eq!(text("2 h", Down, 1), "2.0 h");
}

#[test]
fn numbers_for_selectors_are_those_shown() {
    for (system, text, rounding, wanted) in [
        (System::Us, "15 mph", Down, "15"),
        (System::Metric, "15 mph", Down, "24"),
        (System::Us, "11 ft 3 in", Up, "135"),
        (System::Metric, "11 ft 3 in", Up, "3.43"),
        (System::Us, "1/4", Exact, "0.25"),
        (System::Metric, "20 °F", Up, "-6"),
    ] {
        assert_eq!(
            format::quantity_number(&reader(system), &us(text), rounding),
            wanted.parse().unwrap(),
            "{text}"
        );
    }
    let args =
        format::quantity_args(&english(), &reader(System::Us), "awning_wind_limit", &us("15 mph"), Down);
    assert_eq!(args.get("awning_wind_limit"), Some(&Value::Text("15\u{A0}mph (24\u{A0}km/h)".into())));
    assert_eq!(args.get("awning_wind_limit_n"), Some(&Value::Number(Decimal::from(15))));
    assert_eq!(args.names().count(), 2);
}

#[test]
fn every_measure_has_a_name_in_the_source_language() {
    let words = english();
    for measure in Measure::ALL.iter().filter(|measure| **measure != Measure::Fraction) {
        let key = format::measure_key(*measure);
        let args = Args::new().text("amount", "5").number("n", 5).text("feet", "5").text("inches", "5");
        let text = words
            .try_say(&Reader::default(), &key, &args)
            .unwrap_or_else(|faults| panic!("{key}: {faults:?}"));
        assert!(text.starts_with('5') && !text.contains(' '), "{text}: a number stays with its measure");
    }
    assert_eq!(format::measure_key(Measure::LiterPer100Km), "measure-liter-per100-km");
}

#[test]
fn another_language_brings_its_own_marks() {
    // Handbook F.4: 3,43 m; 1 278 kg with a thin space; 426,32.
    let german = "number-decimal = ,\nnumber-group = { \"\\u2009\" }\nmoney-eur = { $sign }{ $amount } €\n";
    let words = sound(&[("i18n/en-US/format.ftl", FORMAT), ("i18n/de/format.ftl", german)]);
    let reader = Reader::new("de", System::Metric);
    let show =
        |text: &str, rounding| format::quantity(&words, &reader, &us(text), rounding, Places::AsWritten);
    assert_eq!(show("135 in", Up), "3,43\u{A0}m");
    assert_eq!(show("2819 lb", Down), "1\u{2009}278\u{A0}kg");
    assert_eq!(show("30000 BTU/h", Nearest), "8,8\u{A0}kW");
    let sum: Money = "1426.32".parse().unwrap();
    assert_eq!(format::money(&words, &reader, &sum, "EUR"), "1\u{2009}426,32 €");
    assert_eq!(
        format::money(&words, &reader, &sum, "USD"),
        "$1\u{2009}426,32",
        "its name of the dollar comes from the source"
    );
}

#[test]
fn numbers_are_grouped_and_keep_their_decimals() {
    let words = english();
    for (number, wanted) in [
        ("0", "0"),
        ("999", "999"),
        ("1000", "1,000"),
        ("1234567.80", "1,234,567.80"),
        ("-2819", "−2,819"),
        ("-0.00", "0.00"),
        ("100000", "100,000"),
    ] {
        assert_eq!(format::number(&words, &Reader::default(), number.parse().unwrap()), wanted);
    }
}

#[test]
fn sums_carry_their_currency() {
    let words = english();
    let sum = |text: &str, currency| {
        format::money(&words, &Reader::default(), &text.parse::<Money>().unwrap(), currency)
    };
    assert_eq!(sum("426.32", "USD"), "$426.32");
    assert_eq!(sum("1500.00", "usd"), "$1,500.00");
    assert_eq!(sum("-5.00", "USD"), "−$5.00");
    assert_eq!(sum("45.00", "CHF"), "CHF\u{A0}45.00");
}

#[test]
fn lists_are_joined_by_the_rule_of_the_language() {
    let spanish = "list-two = { $first } y { $last }\nlist-end = { $first } y { $last }\n";
    let words = sound(&[("i18n/en-US/format.ftl", FORMAT), ("i18n/es/format.ftl", spanish)]);
    let items: Vec<String> = ["front 75 psi", "rear 80 psi", "spare", "more"].map(String::from).to_vec();
    let list =
        |lang: &str, count: usize| format::list(&words, &Reader::new(lang, System::Us), &items[..count]);
    assert_eq!(list("en-US", 0), "");
    assert_eq!(list("en-US", 1), "front 75 psi");
    assert_eq!(list("en-US", 2), "front 75 psi and rear 80 psi");
    assert_eq!(list("en-US", 3), "front 75 psi, rear 80 psi, and spare");
    assert_eq!(list("en-US", 4), "front 75 psi, rear 80 psi, spare, and more");
    assert_eq!(list("es", 3), "front 75 psi, rear 80 psi y spare");
}

/// Handbook F.3 and F.4: month name or day first, 3:10 PM or 15:10.
#[test]
fn dates_and_times_follow_the_readers_habit() {
    let words = english();
    let at = civil::date(2026, 7, 24).at(15, 10, 59, 0);
    let plain = |text: String| text.replace('\u{A0}', " ");
    let american = reader(System::Us);
    assert_eq!(plain(format::date_time(&words, &american, at)), "Jul 24, 2026, 3:10 PM");
    assert_eq!(plain(format::date_time(&words, &reader(System::Metric), at)), "24 Jul 2026, 15:10");
    assert_eq!(plain(format::date_time(&words, &reader(System::Uk), at)), "24 Jul 2026, 15:10");
    let offset = Offset::from_seconds(-(6 * 3600 + 1800)).unwrap();
    assert_eq!(
        plain(format::date_time_with_offset(&words, &american, at, offset)),
        "Jul 24, 2026, 3:10 PM (UTC−06:30)"
    );
    assert_eq!(
        plain(format::date_time_with_offset(&words, &american, at, Offset::UTC)),
        "Jul 24, 2026, 3:10 PM (UTC+00:00)"
    );
    for (hour, twelve, full) in [
        (0, "12:05 AM", "00:05"),
        (11, "11:05 AM", "11:05"),
        (12, "12:05 PM", "12:05"),
        (23, "11:05 PM", "23:05"),
    ] {
        let time = civil::time(hour, 5, 0, 0);
        assert_eq!(plain(format::time(&words, &american, time)), twelve);
        assert_eq!(plain(format::time(&words, &reader(System::Metric), time)), full);
    }
    let months: Vec<String> =
        (1..=12).map(|month| format::date(&words, &american, civil::date(2026, month, 1))).collect();
    assert_eq!(
        plain(months.join("; ")),
        "Jan 1, 2026; Feb 1, 2026; Mar 1, 2026; Apr 1, 2026; May 1, 2026; Jun 1, 2026; \
        Jul 1, 2026; Aug 1, 2026; Sep 1, 2026; Oct 1, 2026; Nov 1, 2026; Dec 1, 2026"
    );
}

#[test]
fn minutes_read_as_hours_and_minutes() {
    let words = english();
    let text = |minutes| format::duration_minutes(&words, &Reader::default(), minutes).replace('\u{A0}', " ");
    assert_eq!(text(0), "0 min");
    assert_eq!(text(50), "50 min");
    assert_eq!(text(80), "1 h 20 min");
    assert_eq!(text(120), "2 h");
}
