use super::*;

/// Keys that stand in a source file between quotes.
fn keys_in(source: &str, start: &str) -> Vec<String> {
    let quoted = source.split('"').skip(1).step_by(2).filter(|s| s.starts_with(start));
    let mut keys: Vec<String> = quoted.map(String::from).collect();
    keys.sort_unstable();
    keys
}

/// The lists of keys, against which the words are checked, are those that are used, each once.
#[test]
fn the_lists_of_keys_are_whole() {
    for (source, start, listed) in [
        (include_str!("../refused.rs"), "refused-", Refused::KEYS),
        (include_str!("../missing.rs"), "missing-", Missing::KEYS),
    ] {
        let mut twice: Vec<String> = listed.iter().chain(listed).map(|k| (*k).to_owned()).collect();
        twice.sort_unstable();
        assert_eq!(keys_in(source, start), twice, "each once in the list and once where it is used");
    }
}

#[test]
fn values_are_named() {
    let two = PersonId(2);
    let refused = Refused::AlreadyAnswered { caution: "lp-supply-1".into(), person: two };
    assert_eq!(refused.args(), [("person", Arg::Person(two)), ("caution", text("lp-supply-1"))]);
    assert_eq!(Refused::AlreadySigned(Who::Agent).args(), [("person", Arg::Agent)]);
    assert_eq!(Refused::AlreadySo.args(), []);
    let missing = vec![Missing::Licence { person: two }];
    assert_eq!(missing[0].args(), [("person", Arg::Person(two))]);
    let refused = Refused::SealIncomplete(missing.clone());
    assert_eq!(refused.args(), [("missing", Arg::Missing(missing))]);
}
