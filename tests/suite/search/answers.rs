//! What is found, and in which order.

use jiff::civil::date;
use sendoff::archive::index::{Answered, Count, Index, Query, Sort};
use sendoff::record::seal::Kind;

use super::lot::{BASE, NAMES, cautions, index, the_index};

const NONE: [u32; 0] = [];

/// Numbers of the records on all pages of a query, from 0.
pub fn all(index: &Index, query: &Query, page: usize) -> Vec<u32> {
    let mut found = Vec::new();
    let mut after = None;
    loop {
        let page = index.search(query, after.as_ref(), page).unwrap();
        found.extend(page.hits.iter().map(|hit| hit.id[10..].parse::<u32>().unwrap() - 1));
        after = page.next;
        if after.is_none() {
            break found;
        }
    }
}

fn found(words: &str) -> Vec<u32> {
    all(&the_index(), &Query::words(words), 7)
}

fn filtered(query: &Query) -> Vec<u32> {
    all(&the_index(), query, 50)
}

/// Those whose content was read, newest first.
fn rest() -> Vec<u32> {
    (0..40).rev().filter(|n| ![37, 38].contains(n)).collect()
}

#[test]
fn an_empty_query_lists_everything_newest_first() {
    // The one that did not verify has no time of sealing that counts; it stands at its receipt.
    let mut expected: Vec<u32> = (0..40).rev().filter(|n| *n != 37).collect();
    expected.insert(0, 37);
    for words in ["", "  ", "\"", "-- *", "\u{0}"] {
        assert_eq!(found(words), expected, "{words:?}");
    }
}

#[test]
fn names_are_found_by_beginnings_parts_and_without_accents() {
    let cases: [(&str, &[u32]); 40] = [
        ("Müller", &[20, 0]),
        ("muller", &[20, 0]),
        ("MULLER", &[20, 0]),
        ("Mu\u{308}ller", &[20, 0]),
        ("mul", &[20, 0]),
        ("jurgen mul", &[20, 0]),
        ("mul jurgen", &[20, 0]),
        ("anna müller", &[20, 0]),
        // Whole words before beginnings, newest first in each.
        ("robin", &[21, 18, 1, 36, 22, 16, 2]),
        ("vale", &[21, 18, 1, 36, 22, 16, 2]),
        ("robin vale", &[21, 18, 1, 36, 22, 16, 2]),
        // No phrase reaches from one name into the next.
        ("\"robin vale\"", &[21, 1]),
        ("\"vale robin\"", &[]),
        ("王小明", &[23, 3]),
        ("王", &[23, 3]),
        ("小明", &[23, 3]),
        ("李娜", &[23, 3]),
        ("花子", &[27, 7]),
        ("佐藤花子", &[27, 7]),
        ("김", &[34, 14]),
        ("민준", &[]),
        ("soren", &[24, 4]),
        ("aero", &[24, 4]),
        ("Ærø", &[24, 4]),
        ("lukasz thorn", &[24, 4]),
        ("strasse", &[25, 5]),
        ("Straße", &[25, 5]),
        ("d'arb", &[25, 5]),
        ("novak", &[26, 6]),
        ("o'keel", &[28, 8]),
        ("mary-jane", &[28, 8]),
        ("ffmann", &[29, 9]),
        ("offma", &[29, 9]),
        ("nguyen van", &[31, 11]),
        ("αλεξ", &[32, 12]),
        ("γεωργιου", &[32, 12]),
        ("соколова", &[33, 13]),
        ("pena ines", &[35, 15]),
        ("yildiz", &[39, 19]),
        ("ipek", &[39, 19]),
    ];
    let wrong: Vec<String> = cases
        .iter()
        .map(|(words, expected)| (words, found(words), expected))
        .filter(|(_, found, expected)| found != *expected)
        .map(|(words, found, expected)| format!("{words:?}: {found:?}, expected {expected:?}"))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn whatever_else_is_known_is_found() {
    let day = |d: &str| found(d);
    assert_eq!(found("MW-1011"), [11]);
    assert_eq!(found("mw 1011"), [11]);
    assert_eq!(found("1011"), [11]);
    assert_eq!(found("MW-10"), rest());
    assert_eq!(found("t2-5f3a9c-000012"), [11]);
    assert_eq!(found("kingfisher"), [12]);
    // Its own words come before those of the steps that all were shown.
    assert_eq!(found("gas cap lost").first(), Some(&12));
    assert_eq!(found("\"a lost gas cap\""), [12]);
    assert_eq!(found("vale kingfisher"), NONE);
    assert_eq!(found("γεωργιου kingfisher"), [12]);
    assert_eq!(day("2026-05-04"), [3]);
    assert_eq!(day("2026-06"), [39, 38, 36, 35, 34, 33, 32, 31]);
    assert_eq!(found("rehearsal"), [39]);
    assert_eq!(found("check-in"), [38]);
    assert_eq!(found("plover"), [36, 31, 26, 21, 16, 11, 6, 1]);
    assert_eq!(found("48213.4").len(), 38);
    // A text that many share, by its words and by the id of its caution; together with a name.
    assert_eq!(found("awning").len(), 38);
    assert_eq!(found("vent gas").len(), 38);
    assert_eq!(found("\"too full can vent\" muller"), [20, 0]);
    assert_eq!(found("lp-supply-2 muller"), [20, 0]);
    assert_eq!(found("muller xyzzy"), NONE);
    assert_eq!(found("camp chairs müller"), [20, 0]);
    // Lines of steps, without the numbers in them.
    let steps = || BASE.route.steps.iter().flat_map(|step| &step.texts);
    let line = steps()
        .flat_map(|text| &text.know)
        .find(|line| line.len() > 30 && !line.contains(|c: char| c.is_numeric() || c == '"'));
    assert_eq!(found(&format!("\"{}\" müller", line.unwrap())), [20, 0]);
}

#[test]
fn words_of_one_record_do_not_help_another() {
    let mut names: Vec<&str> = NAMES.iter().map(|(first, _)| *first).collect();
    names.dedup();
    for (n, name) in names.iter().enumerate() {
        let expected: Vec<u32> = (0..37).rev().filter(|r| *r as usize % NAMES.len() == n).collect();
        let quoted = found(&format!("\"{}\"", name.replace('"', " ")));
        assert!(expected.iter().all(|r| quoted.contains(r)), "{name}: {quoted:?}");
    }
}

#[test]
fn filters_hold_alone_and_together() {
    let (refused, unseen) = cautions();
    let some = |text: &str| Some(text.to_owned());
    let tens: Vec<u32> = vec![34, 24, 14, 4];
    let with = |query: Query| filtered(&query);
    let q = Query::default;
    assert_eq!(with(Query { answer: Some(Answered::Refused), ..q() }), tens);
    assert_eq!(with(Query { caution: some(&refused), answer: Some(Answered::Refused), ..q() }), tens);
    assert_eq!(with(Query { caution: some(&refused), answer: Some(Answered::NotShown), ..q() }), NONE);
    assert_eq!(with(Query { caution: some(&refused), ..q() }).len(), 38);
    let unseen = Query { caution: some(&unseen), answer: Some(Answered::NotShown), ..q() };
    assert_eq!(with(unseen).len(), 38);
    assert_eq!(with(Query { caution: some("no-such-1"), ..q() }), NONE);
    assert_eq!(with(Query { unit: some("PLOVER"), ..q() }), [36, 31, 26, 21, 16, 11, 6, 1]);
    assert_eq!(with(Query { agent: some("b2"), ..q() }).len(), 18 + 1);
    assert_eq!(with(Query { language: some("de-DE"), ..q() }).len(), 10);
    assert_eq!(with(Query { kind: Some(Kind::Rehearsal), ..q() }), [39]);
    assert_eq!(with(Query { good: Some(false), ..q() }), [37]);
    assert_eq!(with(Query { item: some("W01"), ..q() }).len() + 1, 38);
    let days = |from, to| Query { from, to, ..q() };
    // Nine in the evening of the first is the second in UTC: the wall counts.
    assert_eq!(with(days(None, Some(date(2026, 5, 2)))), [1, 0]);
    assert_eq!(with(days(Some(date(2026, 5, 3)), Some(date(2026, 5, 4)))), [3, 2]);
    assert_eq!(with(days(Some(date(2026, 6, 5)), Some(date(2026, 6, 4)))), NONE);
    assert_eq!(with(days(Some(date(-9999, 1, 1)), Some(date(9999, 12, 31)))).len(), 40);
    let both = Query { words: "robin".into(), unit: some("plover"), ..q() };
    assert_eq!(with(both), [21, 1, 36, 16]);
    let part = Query { words: "offma".into(), agent: some("B2"), ..q() };
    assert_eq!(with(part), [29, 9]);
    let part = Query { words: "offma".into(), agent: some("A7"), ..q() };
    assert_eq!(with(part), NONE);
    let text = Query { words: "vent gas".into(), answer: Some(Answered::Refused), ..q() };
    assert_eq!(with(text), tens);
    assert_eq!(with(Query { words: "mw".into(), to: Some(date(2026, 12, 31)), ..q() }), rest());
}

#[test]
fn sorted_pages_follow_each_other_both_ways() {
    let index = the_index();
    for words in ["", "robin", "mann", "awning", "vale awning"] {
        let mut best = all(&index, &Query::words(words), 100);
        best.sort_unstable();
        for sort in [Sort::Sealed, Sort::Received, Sort::Renter, Sort::Unit] {
            for unit in [None, Some("wren".to_owned())] {
                let query = Query { sort, unit: unit.clone(), ..Query::words(words) };
                let whole = all(&index, &query, 100);
                for page in [1, 3, 39] {
                    assert_eq!(all(&index, &query, page), whole, "{words:?} {sort:?} {page}");
                }
                let mut back = all(&index, &Query { reversed: true, ..query }, 4);
                back.reverse();
                assert_eq!(back, whole, "{words:?} {sort:?}");
                if unit.is_none() {
                    back.sort_unstable();
                    assert_eq!(back, best, "{words:?} {sort:?}");
                }
            }
        }
    }
    let renters = Query { sort: Sort::Renter, unit: Some("plover".into()), ..Query::default() };
    // Hana, Nguyễn, Robin, Robina; the newer one of each first.
    assert_eq!(all(&index, &renters, 5), [26, 6, 31, 11, 21, 1, 36, 16]);
}

#[test]
fn counting_stops_where_it_is_told() {
    let index = the_index();
    let count = |words: &str, limit| index.count(&Query::words(words), limit).unwrap();
    assert_eq!(count("", 100), Count::Exactly(40));
    assert_eq!(count("", 40), Count::Exactly(40));
    assert_eq!(count("", 39), Count::MoreThan(39));
    assert_eq!(count("robin", 100), Count::Exactly(7));
    assert_eq!(count("ffmann", 100), Count::Exactly(2));
    assert_eq!(count("awning", 10), Count::MoreThan(10));
    assert_eq!(count("xyzzy", 10), Count::Exactly(0));
}

#[test]
fn a_hit_says_what_the_record_says() {
    let index = the_index();
    let page = index.search(&Query::words("MW-1004"), None, 10).unwrap();
    let [hit] = &page.hits[..] else { panic!("{page:?}") };
    let texts = [&hit.id, &hit.path, &hit.unit, &hit.unit_name, &hit.booking, &hit.renter, &hit.agents];
    assert_eq!(
        texts,
        [
            "t2-5f3a9c-000005",
            "records/2026/05/t2-5f3a9c-000005.zip",
            "wren",
            "Wren",
            "MW-1004",
            "Søren Ærø",
            "A7"
        ]
    );
    assert_eq!((hit.refused, hit.not_shown, hit.offset_minutes), (1, 1, -360));
    assert_eq!(hit.sealed, Some(super::lot::sealed(4)));
    assert_eq!(hit.received, super::lot::source(4).received);
    assert_eq!(hit.digest, Some(super::lot::verified(4, Kind::Handoff).digest));
    let bad = index.by_id("t2-5f3a9c-000038").unwrap().unwrap();
    assert_eq!((bad.fault.as_deref(), bad.kind, bad.renter.as_str()), (Some("file-changed"), None, ""));
    assert_eq!(index.by_id("t2-5f3a9c-000099").unwrap(), None);
}

#[test]
fn no_query_is_wrong() {
    let index = the_index();
    let hostile = [
        "\"",
        "\"\"",
        "'",
        "*",
        "^",
        "-",
        "NEAR(a b)",
        "a NEAR b",
        "a AND",
        "OR",
        "NOT",
        "a NOT b",
        "names:robin",
        "{names}: x",
        "(",
        ")",
        "((((",
        "a\"b\"c\"",
        "\u{0}",
        "a\u{0}b",
        "; DROP TABLE records; --",
        "%",
        "_",
        "\\",
        "\u{E000}1",
        "\u{FEFF}",
        "\u{202E}robin",
        "Ⓐ",
        "😀",
        "😀😀😀",
        "\u{300}",
        "\u{200D}",
        "+",
        "a+b",
        "\"a\" * \"b\"",
    ];
    for words in hostile {
        index.search(&Query::words(words), None, 10).unwrap_or_else(|e| panic!("{words:?}: {e}"));
        index.count(&Query::words(words), 10).unwrap_or_else(|e| panic!("{words:?}: {e}"));
        let sorted = Query { sort: Sort::Renter, ..Query::words(words) };
        index.search(&sorted, None, 10).unwrap_or_else(|e| panic!("{words:?}: {e}"));
    }
    // What is a mark in the index is none in a query.
    let count = |words: &str| index.count(&Query::words(words), 100).unwrap();
    assert_eq!(count("\u{E000}1 robin"), count("1 robin"));
    assert_eq!(count("\u{E000}"), count(""));
}

#[test]
fn the_order_of_adding_makes_no_difference() {
    let turned = index((0..40).rev().map(|n| n * 7 % 40));
    let index = the_index();
    for words in ["", "robin", "mann", "awning", "vale awning", "a", "m", "1"] {
        let query = Query::words(words);
        assert_eq!(all(&turned, &query, 5), all(&index, &query, 6), "{words}");
    }
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig { failure_persistence: None, ..proptest::prelude::ProptestConfig::default() })]

    #[test]
    fn any_text_can_be_asked_for(words in "\\PC{0,24}", raw in proptest::arbitrary::any::<String>()) {
        let index = the_index();
        for words in [words, raw] {
            index.search(&Query::words(&words), None, 3).unwrap();
        }
    }
}
