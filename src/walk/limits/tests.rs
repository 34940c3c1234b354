use super::*;
use crate::route::Bounds;

fn number(step: &str, min: &str, max: &str) -> Reading {
    let of = |s: &str| Decimal::from_str_exact(s).unwrap();
    let scale = Scale::Number {
        measure: "V".into(),
        step: of(step),
        min: of(min),
        max: of(max),
        least: None,
        most: None,
    };
    Reading { id: "house-v".into(), scale, bounds: Bounds::default() }
}

/// Ranges and steps: handbook E.4, `house_v` 10.0 to 14.8 in 0.1.
#[test]
fn a_number_keeps_to_range_and_step() {
    let volts = number("0.1", "10.0", "14.8");
    for good in ["10", "10.0", "12.7", "14.8", "12.70"] {
        assert_eq!(reading(&volts, good, "V"), Ok(()), "{good}");
    }
    for bad in [
        "9.9", "14.9", "12.75", "127", "", "1e1", "+12", " 12", "12.", ".5", "1_2", "1.2.3", "٣", "NaN",
        "-12",
    ] {
        assert!(matches!(reading(&volts, bad, "V"), Err(Refused::Reading { .. })), "{bad}");
    }
    let told = reading(&volts, "9.9", "V").unwrap_err().to_string();
    assert!(told.contains("from 10.0 to 14.8 V in steps of 0.1"), "{told}");
    assert!(matches!(reading(&volts, "12", "mV"), Err(Refused::OtherMeasure { .. })));
}

/// Eighths of fuel: handbook E.4, `fuel` 0 to 8.
#[test]
fn a_gauge_keeps_to_its_parts() {
    let fuel = Reading { id: "fuel".into(), scale: Scale::Parts(8), bounds: Bounds::default() };
    for good in ["0/8", "7/8", "8/8"] {
        assert_eq!(reading(&fuel, good, ""), Ok(()), "{good}");
    }
    for bad in ["9/8", "1/4", "7", "07/8", "-1/8", "7/8/8", "", "300/8"] {
        assert!(matches!(reading(&fuel, bad, ""), Err(Refused::Reading { .. })), "{bad}");
    }
    assert!(matches!(reading(&fuel, "7/8", "gal"), Err(Refused::OtherMeasure { .. })));
}

/// Cylinders: handbook E.4, `lp_cyl_a` full, part or empty.
#[test]
fn a_choice_is_one_of_its_words() {
    let scale = Scale::Choice(vec!["full".into(), "part".into(), "empty".into()]);
    let cylinder = Reading { id: "lp-cyl-a".into(), scale, bounds: Bounds::default() };
    assert_eq!(reading(&cylinder, "part", ""), Ok(()));
    assert!(reading(&cylinder, "Part", "").unwrap_err().to_string().contains("full, part, empty"));
}

#[test]
fn texts_are_refused_not_shortened() {
    assert_eq!(text("note", "", 3), Ok(()));
    assert_eq!(text("note", "äöü", 3), Ok(()));
    assert_eq!(text("note", "abcd", 3), Err(Refused::TooLong { field: "note", max: 3 }));
    assert_eq!(text("note", "a\u{7}", 3), Err(Refused::Unprintable { field: "note" }));
    assert_eq!(text("note", "a\nb", 3), Ok(()));
    assert_eq!(text("note", "a\u{202e}b", 3), Err(Refused::Unprintable { field: "note" }));
    assert_eq!(text("note", "a\u{200c}b", 3), Ok(()), "joiners belong to names");
    assert_eq!(name("name", "a\nb", 3), Err(Refused::Unprintable { field: "name" }));
    assert_eq!(words("name", " \n ", 9), Err(Refused::Empty { field: "name" }));
    for good in ["en", "en-US", "zh-Hant-TW"] {
        assert_eq!(language(good), Ok(()), "{good}");
    }
    for bad in ["", "-", "en_US", "en-", "../x", "ninechars"] {
        assert!(language(bad).is_err(), "{bad}");
    }
    for bad in ["", "-a", "A", "a/b", "..", "a.b"] {
        assert!(id("id", bad).is_err(), "{bad}");
    }
    assert_eq!(id("id", "t2-000001"), Ok(()));
    assert_eq!(digest("digest", &"0a".repeat(32)), Ok(()));
    assert!(digest("digest", &"0A".repeat(32)).is_err());
    assert!(digest("digest", &"0a".repeat(31)).is_err());
}

#[test]
fn ink_is_more_than_a_dot_and_less_than_a_novel() {
    let of = |strokes: Vec<Vec<(i16, i16)>>| Ink { height: 300, strokes };
    assert_eq!(ink(&of(vec![vec![(10, 10), (200, 90)]])), Ok(()));
    assert_eq!(ink(&of(vec![vec![(10, 10)], vec![(10, 40)]])), Ok(()));
    for dot in [vec![vec![(10, 10)]], vec![vec![(10, 10), (20, 20)]], vec![vec![(0, 0), (99, 9)], vec![]]] {
        assert_eq!(ink(&of(dot)), Err(Refused::Dot));
    }
    assert!(matches!(ink(&of(vec![])), Err(Refused::Range { min: 1, max: 400, .. })));
    assert!(matches!(ink(&of(vec![vec![(0, 0), (99, 0)]; 401])), Err(Refused::Range { .. })));
    assert_eq!(ink(&of(vec![vec![(i16::MIN, 0), (i16::MAX, 0)]])), Ok(()));
    let mut long = vec![(0, 0); 20_000];
    long[0] = (500, 0);
    assert_eq!(ink(&of(vec![long.clone()])), Ok(()));
    long.push((1, 1));
    assert!(matches!(ink(&of(vec![long])), Err(Refused::Range { max: 20_000, .. })));
    assert!(matches!(
        ink(&Ink { height: 0, strokes: vec![vec![(0, 0), (99, 0)]] }),
        Err(Refused::Range { .. })
    ));
}
