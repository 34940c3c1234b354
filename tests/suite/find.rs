//! The search of Reread: what a renter types leads to the right topic or guide.

use proptest::prelude::*;
use sendoff::route::find::{Found, Index, Where};
use sendoff::route::{Route, build};
use sendoff::script::Scripts;
use sendoff::words::Reader;

use crate::guides::scripts;

const UNITS: [&str; 3] = ["wren", "plover", "heron"];

fn index(scripts: &Scripts, unit: &str) -> (Route, Index) {
    let route = build(scripts, unit).expect("a unit");
    let index = Index::new(scripts, &route, &Reader::default()).expect("a unit");
    (route, index)
}

/// A hit by its name: `!` for the card, the id of a guide, the topic of a step.
fn name(route: &Route, found: &Found) -> String {
    match found {
        Found::Emergency => "!".into(),
        Found::Guide(id) => id.clone(),
        Found::Step(at) => route.steps[*at].topic.clone(),
    }
}

fn names(route: &Route, index: &Index, query: &str) -> Vec<String> {
    index.find(query).iter().map(|hit| name(route, &hit.what)).collect()
}

/// What people type, and what must be among the first three: `|` between what suits different units. The pairs are
/// our own reading of what a first-timer wants; no source.
const QUERIES: [(&str, &str); 62] = [
    ("gas", "trouble-lp-smell|!"),
    ("smell of gas", "trouble-lp-smell|!"),
    ("rotten egg", "trouble-lp-smell|trouble-toilet-tank"),
    ("propane", "trouble-lp-smell|lp-supply|ferry-tunnel-lp"),
    ("turn off the gas", "lp-supply|trouble-lp-smell"),
    ("alarm is beeping", "trouble-co-alarm|trouble-lp-smell"),
    ("chirp", "trouble-co-alarm"),
    ("carbon monoxide", "trouble-co-alarm"),
    ("CO", "trouble-co-alarm"),
    ("dizzy", "trouble-co-alarm"),
    ("headache", "trouble-co-alarm"),
    ("fire", "!"),
    ("smoke", "!"),
    ("accident", "!"),
    ("how do I use the toilet", "toilet-use"),
    ("toilet", "toilet-use|cassette-toilet|trouble-toilet-tank"),
    ("toilet smells", "trouble-toilet-tank"),
    ("stink", "trouble-toilet-tank"),
    ("empty the toilet", "grey-black-dump|cassette-toilet"),
    ("dump", "grey-black-dump|grey-dump"),
    ("black tank", "grey-black-dump|tank-rinse|trouble-toilet-tank|grey-dump"),
    ("breaker", "breaker-panel-gfci"),
    ("tripped", "trouble-no-120v|breaker-panel-gfci"),
    ("no power", "trouble-no-120v"),
    ("electricity is out", "trouble-no-120v|trouble-generator"),
    ("outlet dead", "trouble-no-120v"),
    ("lights dont work", "trouble-no-12v"),
    ("lights", "trouble-no-12v"),
    ("no hot water", "trouble-no-hot-water"),
    ("cold shower", "trouble-no-hot-water"),
    ("water pump", "water-pump"),
    ("no water", "trouble-pump"),
    ("fill water", "fresh-tank-fill"),
    ("hose", "city-water-regulator|fresh-tank-fill|sewer-hose-stow"),
    ("fridge", "trouble-fridge-warm|fridge-absorption|fridge-compressor"),
    ("fridge not cold", "trouble-fridge-warm"),
    ("heater", "trouble-heat"),
    ("it is cold", "trouble-heat|furnace-lp|diesel-heater|winter-freeze"),
    ("awning", "awning|trouble-awning"),
    ("awning stuck", "trouble-awning"),
    ("wind", "wind-driving|awning|trouble-awning"),
    ("flat tire", "trouble-tire-wheel"),
    ("tyre pressure", "tires-pressure"),
    ("tires", "tires-pressure"),
    ("psi", "tires-pressure"),
    ("low bridge", "height-clearance"),
    ("how tall is it", "height-clearance"),
    ("seat belt", "seat-belts|nobody-in-trailer"),
    ("kids", "seat-belts|beds-bunks|nobody-in-trailer"),
    ("dog", "pets-smoking|nobody-in-trailer"),
    ("smoking", "pets-smoking|!"),
    ("stove", "cooktop-oven"),
    ("keys", "keys"),
    ("locked out", "keys"),
    ("return", "return-rules"),
    ("late fee", "return-rules"),
    ("plug in", "shore-cord-adapters"),
    ("leveling blocks", "leveling-chocks|loaned-kit"),
    ("freezing", "winter-freeze|trouble-heat"),
    ("ferry", "ferry-tunnel-lp"),
    ("exit window", "emergency-exit"),
    ("extinguisher", "extinguisher"),
];

#[test]
fn what_a_renter_types_is_among_the_first_three() {
    let scripts = scripts();
    let mut faults = Vec::new();
    for unit in UNITS {
        let (route, index) = index(&scripts, unit);
        for (query, wanted) in QUERIES {
            let found = names(&route, &index, query);
            let there: Vec<&str> = wanted
                .split('|')
                .filter(|w| {
                    *w == "!"
                        || route.steps.iter().any(|s| s.topic == **w)
                        || scripts
                            .guides
                            .get(*w)
                            .is_some_and(|g| g.value.fits(&scripts.facts(unit).expect("a unit")))
                })
                .collect();
            if there.is_empty() {
                continue;
            }
            if !found.iter().take(3).any(|f| there.contains(&f.as_str())) {
                faults.push(format!("{unit} `{query}`: {there:?} not in {found:?}"));
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

/// What is about danger stands before all else, on every unit that has it.
#[test]
fn danger_comes_first() {
    let scripts = scripts();
    for unit in UNITS {
        let (route, index) = index(&scripts, unit);
        let has_gas = scripts.guides["trouble-lp-smell"].value.fits(&scripts.facts(unit).expect("a unit"));
        let gas = if has_gas { "trouble-lp-smell" } else { "" };
        for (query, first) in [
            ("gas", gas),
            ("smell", gas),
            ("gas leak", gas),
            ("Propane", gas),
            ("alarm", "trouble-co-alarm"),
            ("sick", "trouble-co-alarm"),
            ("fire", "!"),
            ("on fire", "!"),
            ("ambulance", "!"),
        ] {
            if first.is_empty() {
                continue;
            }
            let hits = index.find(query);
            let grave = hits.iter().take_while(|h| h.grave).count();
            let found = names(&route, &index, query);
            assert!(found[..grave].iter().any(|f| f == first), "{unit} `{query}`: {found:?}");
            assert!(hits[grave..].iter().all(|h| !h.grave), "{unit} `{query}`");
        }
        // A topic that only speaks of danger in passing does not push it forward.
        let hits = index.find("toilet paper");
        assert!(!hits[0].grave, "{unit}: {hits:?}");
    }
}

#[test]
fn titles_come_before_words_and_words_before_texts() {
    let scripts = scripts();
    let (_, index) = index(&scripts, "wren");
    let hits = index.find("mirrors");
    assert_eq!((hits[0].place, hits[0].title.as_str()), (Where::Title, "Mirrors"), "{hits:?}");
    for query in ["pump", "battery", "hose", "toilet"] {
        let hits = index.find(query);
        let places: Vec<Where> = hits.iter().filter(|h| !h.grave).map(|h| h.place).collect();
        assert!(places.windows(2).all(|p| p[0] >= p[1]), "{query}: {hits:#?}");
        assert!(hits.iter().all(|h| !h.line.is_empty()), "{query}");
    }
    // What only begins a typed word is no title of it.
    let hits = index.find("window");
    let at = |title: &str| hits.iter().position(|h| h.title == title).expect("a hit");
    assert!(at("Emergency exits") < at("Wind on the road"), "{hits:#?}");
}

#[test]
fn accents_case_and_one_wrong_letter_do_not_matter() {
    let scripts = scripts();
    let (route, index) = index(&scripts, "wren");
    for (right, typed) in [
        ("toilet", "TOILET"),
        ("toilet", "tóilèt"),
        ("toilet", "tiolet"),
        ("awning", "awnign"),
        ("propane", "propan"),
        ("generator", "genarator"),
        ("fridge", "frigde"),
        ("extinguisher", "extingisher"),
    ] {
        let (right, typed) = (names(&route, &index, right), names(&route, &index, typed));
        assert!(typed.iter().take(3).any(|t| right.iter().take(2).any(|r| r == t)), "{right:?} {typed:?}");
    }
    // Two wrong letters are another word.
    assert!(index.find("xqzjw").is_empty());
    assert!(index.find("").is_empty() && index.find("  ,.!").is_empty());
}

#[test]
fn a_unit_without_the_equipment_does_not_find_it() {
    let scripts = scripts();
    let (route, index) = index(&scripts, "plover");
    let all = names(&route, &index, "gas");
    assert!(!all.iter().any(|n| n == "trouble-lp-smell" || n == "lp-supply"), "{all:?}");
    let (route, index) = self::index(&scripts, "heron");
    let all = names(&route, &index, "generator");
    assert!(!all.iter().any(|n| n.starts_with("generator")), "{all:?}");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is typed, the answer is finite and the same each time.
    #[test]
    fn nothing_that_is_typed_breaks_it(query in "\\PC{0,60}") {
        thread_local!(static LOT: (Route, Index) = { let s = scripts(); index(&s, "wren") });
        LOT.with(|(route, index)| {
            let hits = index.find(&query);
            assert!(hits.len() <= sendoff::route::find::MOST);
            assert_eq!(hits, index.find(&query));
            for hit in &hits {
                assert!(!name(route, &hit.what).is_empty() && !hit.title.is_empty());
            }
        });
    }

    /// As one types a word that we use, one letter more brings in nothing new.
    #[test]
    fn one_letter_more_brings_in_nothing_new(at in any::<prop::sample::Index>()) {
        thread_local!(static LOT: (Vec<String>, Index) = {
            let s = scripts();
            let (route, index) = index(&s, "wren");
            let speaker = sendoff::script::Speaker::new(&s, "wren", Reader::default()).expect("a unit");
            let titles = route.steps.iter().map(|step| speaker.step(step).title);
            let words = titles.flat_map(|t| {
                t.split(|c: char| !c.is_alphanumeric()).map(str::to_owned).collect::<Vec<_>>()
            });
            (words.filter(|w| w.len() > 2).collect(), index)
        });
        LOT.with(|(words, index)| {
            let word = at.get(words);
            let found = |typed: &str| -> Vec<Found> { index.find(typed).into_iter().map(|h| h.what).collect() };
            for end in 3..word.len() {
                let (less, more) = (found(&word[..end]), found(&word[..=end]));
                // What was cut off at the end of a long list may come up.
                if less.len() < sendoff::route::find::MOST {
                    assert!(more.iter().all(|h| less.contains(h)), "{} then {}", &word[..end], &word[..=end]);
                }
                assert!(!more.is_empty());
            }
        });
    }
}
