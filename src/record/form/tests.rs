use super::*;

#[test]
fn a_version_is_two_numbers() {
    let read = |text: &str| serde_json::from_str::<Version>(&format!("{text:?}")).ok();
    assert_eq!(read("1.2"), Some(VERSION));
    assert_eq!(read("2.13"), Some(Version { major: 2, minor: 13 }));
    for text in ["", "1", "1.", "one.two", "1.0.0", "-1.0"] {
        assert_eq!(read(text), None, "{text}");
    }
}

#[test]
fn a_word_of_tomorrow_reads_as_unknown() {
    let read = |text: &str| serde_json::from_str::<MarkKind>(&format!("{text:?}")).unwrap();
    assert_eq!(read("works-badly"), MarkKind::WorksBadly);
    assert_eq!(read("moss"), MarkKind::Unknown);
}

#[test]
fn a_tag_of_tomorrow_reads_as_unknown_whatever_it_holds() {
    let said: Said = serde_json::from_str(r#"{"said": "sung", "notes": [1, {"a": 2.5}]}"#).unwrap();
    assert_eq!(said, Said::Unknown);
}
