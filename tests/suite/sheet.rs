//! The data sheet: missing, not fitted and zero are three things; weights, gallons and points are what they say.

use std::collections::BTreeMap;
use std::sync::Arc;

use sendoff::measure::Measure;
use sendoff::script::{Bundle, Scripts};
use sendoff::source::{SourceFile, read};
use sendoff::unit::{Facts, Fitted, Lot, Sheet, Value};

use crate::check::{LOT, WREN, found};

fn text(name: &str) -> String {
    let demo = Bundle::demo();
    String::from_utf8(demo.get(name).expect("a file of the demo lot").to_vec()).expect("a text")
}

/// The sheet with one text swapped for another.
fn sheet(swap: &str, by: &str) -> (Option<Sheet>, Vec<String>) {
    let old = text(WREN);
    assert!(old.contains(swap), "no `{swap}`");
    let (sheet, faults) = read(&SourceFile::new(WREN, &old.replacen(swap, by, 1)));
    (sheet, faults.into_iter().map(|f| format!("{}: {}", f.code, f.what)).collect())
}

fn facts(sheet: &Sheet) -> Facts {
    let lot: Lot = read(&SourceFile::new(LOT, &text(LOT))).0.expect("the demo lot");
    Facts::new(sheet, &lot)
}

#[test]
fn missing_not_fitted_and_zero_are_three_things() {
    let solar = |by: &str| sheet("solar: NotFitted", by);
    let (absent, faults) = sheet("solar: NotFitted,", "");
    assert!(absent.is_none());
    assert_eq!(faults, ["form.missing-field: `solar` is missing"]);

    let (without, faults) = solar("solar: NotFitted");
    let without = without.expect("a sheet");
    assert!(faults.is_empty() && without.solar.value == Fitted::NotFitted);
    let facts_without = facts(&without);
    assert_eq!(facts_without.is_fitted("solar"), Some(false));
    assert_eq!(facts_without.is_fitted("solar.power"), Some(false));
    assert_eq!(facts_without.get("solar.power"), None, "nothing is guessed");

    let (zero, faults) = solar("solar: (power: \"0 W\")");
    let zero = zero.expect("a sheet");
    assert!(faults.is_empty());
    let facts_zero = facts(&zero);
    assert_eq!(facts_zero.is_fitted("solar"), Some(true));
    assert_eq!(facts_zero.quantity("solar.power").and_then(|q| q.to(Measure::Watt)), Some(0.0));
}

#[test]
fn the_same_holds_for_a_value() {
    let (absent, faults) = sheet("black: \"30 gal\", ", "");
    assert!(absent.is_none());
    assert_eq!(faults, ["form.missing-field: `black` is missing"]);
    let (without, _) = sheet("black: \"30 gal\"", "black: NotFitted");
    let without = facts(&without.expect("a sheet"));
    assert_eq!(without.is_fitted("waste.black"), Some(false));
    assert_eq!(without.get("waste.black").map(|f| f.value.clone()), Some(Value::NotFitted));
    let (zero, _) = sheet("black: \"30 gal\"", "black: \"0 gal\"");
    assert_eq!(facts(&zero.expect("a sheet")).is_fitted("waste.black"), Some(true));
    let (none, faults) = sheet("gvwr: \"14500 lb\"", "gvwr: NotFitted");
    assert!(none.is_none());
    assert_eq!(faults.len(), 1, "{faults:?}");
    assert!(faults[0].starts_with("form.not-fitted"), "{faults:?}");
}

/// The parts of a RON text between its commas, where no bracket or quote is open, with their byte ranges.
fn parts(text: &str, from: usize) -> Vec<(usize, usize)> {
    let (mut depth, mut quoted, mut start, mut all) = (0_i32, false, from, Vec::new());
    let bytes = text.as_bytes();
    let mut at = from;
    while at < bytes.len() {
        match bytes[at] {
            b'"' => quoted = !quoted,
            b'/' if !quoted && bytes[at + 1] == b'/' => {
                at += text[at..].find('\n').expect("a line");
                continue;
            }
            b'(' | b'[' | b'{' if !quoted => depth += 1,
            b')' | b']' | b'}' if !quoted && depth == 0 => {
                if !text[start..at].trim().is_empty() {
                    all.push((start, at));
                }
                return all;
            }
            b')' | b']' | b'}' if !quoted => depth -= 1,
            b',' if !quoted && depth == 0 => {
                all.push((start, at + 1));
                start = at + 1;
            }
            _ => {}
        }
        at += 1;
    }
    panic!("an open bracket")
}

/// Name and value of a part such as `size: (...)`, without comments before it.
fn field(part: &str) -> (String, usize) {
    let skipped: usize = part
        .lines()
        .take_while(|l| l.trim().is_empty() || l.trim().starts_with("//"))
        .map(|l| l.len() + 1)
        .sum();
    let colon = skipped + part[skipped..].find(':').expect("a field");
    (part[skipped..colon].trim().to_owned(), colon + 1)
}

#[test]
fn each_field_that_is_taken_out_is_one_fault_with_its_name() {
    let whole = text(WREN);
    let open = whole.find("\n(").expect("the sheet") + 2;
    let mut lists = vec![("".to_owned(), parts(&whole, open))];
    for (start, end) in lists[0].1.clone() {
        let (name, value) = field(&whole[start..end]);
        let inner = whole[start + value..end].trim_start();
        if inner.starts_with('(') {
            let at = start + value + (end - start - value - inner.len()) + 1;
            lists.push((name, parts(&whole, at)));
        }
    }
    let (mut required, mut optional) = (0, Vec::new());
    for (section, fields) in &lists {
        for (start, end) in fields {
            let (name, _) = field(&whole[*start..*end]);
            let cut = format!("{}{}", &whole[..*start], &whole[*end..]);
            let (sheet, faults) = read::<Sheet>(&SourceFile::new(WREN, &cut));
            if sheet.is_some() && faults.is_empty() {
                optional.push(format!("{section}.{name}"));
                continue;
            }
            let told: Vec<String> = faults.iter().map(|f| format!("{} {}", f.code, f.what)).collect();
            assert_eq!(told, [format!("form.missing-field `{name}` is missing")], "in `{section}`");
            required += 1;
        }
    }
    assert!(required > 120, "{required} fields");
    // What may be absent is little, and none of it is equipment.
    assert!(
        optional.len() < 20
            && !optional.iter().any(|o| o.matches('.').count() == 1 && o.starts_with('.') && o != ".day"),
        "{optional:?}"
    );
}

/// Plate against GVWR less UVW, which agree within one pound (49 CFR 571.110 S4.3, S9.3; 575.6). The demo unit:
/// 14,500 lb less 11,681 lb is 2,819 lb.
#[test]
fn the_plate_agrees_within_one_pound() {
    let with = |plate: &str| found(&[(WREN, "occc: \"2819 lb\"", &format!("occc: \"{plate}\""))]);
    for good in ["2819 lb", "2818 lb", "2820 lb", "2818.5 lb"] {
        assert_eq!(with(good), Vec::<&str>::new(), "{good}");
    }
    for wrong in ["2817.99 lb", "2820.01 lb", "2817 lb", "2821 lb", "0 lb"] {
        let codes = with(wrong);
        assert!(codes.contains(&"unit.capacity"), "{wrong}: {codes:?}");
    }
}

/// A label is floored to whole kilograms so that GVWR is not passed (49 CFR 571.110 S9.3.2): of 14,500 lb less
/// 11,840 lb, 2,660 lb, remain 1,206 kg. Such a plate is right, one of 1,204 kg is not.
#[test]
fn a_plate_in_kilograms_agrees_within_one_kilogram() {
    let with = |plate: &str| {
        found(&[(
            WREN,
            "uvw: \"11681 lb\", occc: \"2819 lb\"",
            &format!("uvw: \"11840 lb\", occc: \"{plate}\""),
        )])
    };
    assert_eq!(with("1206 kg"), Vec::<&str>::new());
    assert_eq!(with("2660 lb"), Vec::<&str>::new());
    assert_eq!(with("1204 kg"), ["unit.capacity"]);
}

/// Both axles carry at least GVWR (49 CFR 571.110 S9.1), belts of 150 lb are within the plate (567.4(g)(3)).
#[test]
fn axles_and_belts_are_held_against_the_plate() {
    let axles = |rear: &str| found(&[(WREN, "gawr_rear: \"9600 lb\"", &format!("gawr_rear: \"{rear}\""))]);
    assert_eq!(axles("9500 lb"), Vec::<&str>::new(), "5,000 and 9,500 lb are 14,500 lb");
    assert_eq!(axles("9499 lb"), ["unit.axles"]);
    let belts = |uvw: &str, plate: &str| {
        let by = format!("uvw: \"{uvw}\", occc: \"{plate}\"");
        found(&[(WREN, "uvw: \"11681 lb\", occc: \"2819 lb\"", &by)])
    };
    assert_eq!(belts("13600 lb", "900 lb"), Vec::<&str>::new(), "six of 150 lb are 900 lb");
    assert_eq!(belts("13601 lb", "899 lb"), ["unit.occupants"]);
}

/// The demo kit weighs 168 lb (handbook E.5, H.6).
#[test]
fn the_kit_weighs_what_its_items_weigh() {
    let (sheet, _) = sheet("code", "code");
    let sheet = sheet.expect("a sheet");
    let sum: f64 = sheet.kit.iter().filter_map(|line| line.weight.quantity().to(Measure::Pound)).sum();
    assert!((sum - 168.0).abs() < 1e-9, "{sum}");
    let with = |kit: &str| found(&[(WREN, "kit: \"168 lb\"", &format!("kit: \"{kit}\""))]);
    assert_eq!(with("168.5 lb"), ["unit.kit-weight"]);
    assert_eq!(with("76.203512 kg"), Vec::<&str>::new(), "1 lb is 0.45359237 kg (NIST SP 811)");
}

/// 1 US gal is 3.785411784 L, 1 imperial gal is 4.54609 L (NIST SP 811, appendix B).
#[test]
fn gal_means_what_the_lot_says() {
    let liters = |gallon: &str, fresh: &str| {
        let lot = text(LOT).replacen("gallon: Us", &format!("gallon: {gallon}"), 1);
        let lot: Lot = read(&SourceFile::new(LOT, &lot)).0.expect("a lot");
        let (sheet, _) = sheet("fresh: \"40 gal\"", &format!("fresh: \"{fresh}\""));
        let facts = Facts::new(&sheet.expect("a sheet"), &lot);
        facts.quantity("water.fresh").and_then(|q| q.to(Measure::Liter)).expect("a volume")
    };
    let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
    assert!(near(liters("Us", "40 gal"), 40.0 * 3.785_411_784));
    assert!(near(liters("Imperial", "40 gal"), 40.0 * 4.546_09));
    assert!(near(liters("Imperial", "40 US gal"), 40.0 * 3.785_411_784));
    assert!(near(liters("Us", "40 imp gal"), 40.0 * 4.546_09));
}

#[test]
fn a_quantity_has_the_dimension_of_its_field() {
    let cases = [
        ("gvwr: \"14500 lb\"", "gvwr: \"14500 psi\""),
        ("length: \"312 in\"", "length: \"312 lb\""),
        ("cold: \"75 psi\"", "cold: \"75 V\""),
        ("prime: \"15 s\"", "prime: \"15\""),
        ("economy: \"9 mpg\"", "economy: \"9 mph\""),
        ("usable: \"50 %\"", "usable: \"50 °F\""),
    ];
    for (swap, by) in cases {
        let (none, faults) = sheet(swap, by);
        assert!(none.is_none());
        assert!(faults.len() == 1 && faults[0].starts_with("form.value"), "{by}: {faults:?}");
    }
}

/// With the curb on the other side the same points lie at the wrong side, mirrored ones at the right one.
#[test]
fn sides_follow_the_curb() {
    let all = found(&[(WREN, "curb: Right", "curb: Left")]);
    let wrong = all.iter().filter(|code| **code == "place.station").count();
    assert!(wrong > 15, "{wrong} places");
    assert_eq!(found(&[(WREN, "curb: Right", "curb: Right")]), Vec::<&str>::new());
}

/// A lot has what its equipment needs: no fact of equipment that is not fitted, each section once.
#[test]
fn facts_name_their_origin() {
    let (scripts, faults) = Scripts::load(Arc::new(Bundle::demo()));
    assert!(faults.is_empty(), "{faults:?}");
    let scripts = scripts.expect("the demo lot");
    let facts = scripts.facts("wren").expect("the unit");
    let from: BTreeMap<&str, &str> = facts.iter().map(|(name, fact)| (name, fact.from.word())).collect();
    assert_eq!(from["size.length"], "sheet");
    assert_eq!(from["awning.wind_limit"], "lot", "the unit leaves it to the lot");
    assert!(!from.contains_key("solar.power"));
}
