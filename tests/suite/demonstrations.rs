//! Demonstrations, held against the worked cases of handbook part C (T-01 to T-20).
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests may fail loudly"
)]

use std::sync::{Arc, LazyLock};

use sendoff::route::{self, Route};
use sendoff::script::demo::{Part, Try, Verdict};
use sendoff::script::{Bundle, Scripts, Speaker};
use sendoff::words::Reader;

mod cases;
mod properties;
mod walking;

pub(crate) static DEMO: LazyLock<Scripts> =
    LazyLock::new(|| Scripts::load(Arc::new(Bundle::demo())).0.expect("the demo lot"));

pub(crate) const UNITS: [&str; 3] = ["wren", "plover", "heron"];

pub(crate) fn route(unit: &str) -> Route {
    route::build(&DEMO, unit).expect("a unit of the lot")
}

pub(crate) fn part(unit: &str, demo: &str, part: &str) -> Part {
    let route = route(unit);
    let demonstration = route.demonstrations.get(demo).unwrap_or_else(|| panic!("{unit} has no {demo}"));
    demonstration.part(part).unwrap_or_else(|| panic!("{unit} has no {demo}/{part}")).clone()
}

pub(crate) fn speaker(unit: &str) -> Speaker<'static> {
    Speaker::new(&DEMO, unit, Reader::default()).expect("a unit of the lot")
}

pub(crate) fn cards(ids: &[&str]) -> Try {
    Try::Cards(ids.iter().map(ToString::to_string).collect())
}

pub(crate) fn placed(pairs: &[(&str, &str)]) -> Try {
    Try::Placed(pairs.iter().map(|(card, place)| ((*card).to_owned(), (*place).to_owned())).collect())
}

/// What a try is told: `right`, `also <key>`, or the key of the correction without what all keys begin with.
pub(crate) fn told(part: &Part, given: &Try) -> String {
    assert!(part.takes(given), "{given:?} is no answer to {}", part.id);
    let short = |key: &str| key.rsplit_once("-say-").map_or(key, |(_, name)| name).to_owned();
    match part.judge(given) {
        Verdict::Right => "right".into(),
        Verdict::AlsoRight(note) => format!("also {}", short(&note.key)),
        Verdict::Wrong(wrong) => short(&wrong.say.key),
    }
}

/// What is said after a try, in words.
pub(crate) fn reply(unit: &str, part: &Part, given: &Try) -> String {
    let said = part.judge(given).reply().map(|said| speaker(unit).reply(said).0).unwrap_or_default();
    plain(&said)
}

/// With usual spaces between numbers and measures.
pub(crate) fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// Everything that the handbook marks `teach` is demonstrated on the units that have it (headings of part C).
#[test]
fn each_unit_has_the_demonstrations_of_its_equipment() {
    let ids = |unit: &str| route(unit).demonstrations.into_keys().collect::<Vec<_>>();
    assert_eq!(
        ids("wren"),
        [
            "altitude-dial",
            "awning-wind",
            "co-alarm",
            "dump-order",
            "gas-smell",
            "generator-stopped",
            "long-descent",
            "may-i-pass",
            "outlet-loads",
            "propane-shut-off",
            "which-inlet",
            "which-nozzle",
            "which-plug",
            "who-sits-where",
        ]
    );
    assert_eq!(
        ids("plover"),
        [
            "awning-wind",
            "co-alarm",
            "heater-off",
            "long-descent",
            "may-i-pass",
            "one-big-load",
            "outlet-loads",
            "which-nozzle",
            "which-plug",
            "who-sits-where",
        ]
    );
    assert_eq!(
        ids("heron"),
        [
            "awning-wind",
            "breakaway-cable",
            "co-alarm",
            "couple-trailer",
            "dump-order-two",
            "gas-smell",
            "long-descent",
            "may-i-pass",
            "outlet-loads",
            "propane-shut-off",
            "slide-in",
            "two-airs",
            "which-inlet",
            "which-plug",
        ]
    );
    assert_eq!(DEMO.demonstrations.len(), 21);
    for unit in UNITS {
        let route = route(unit);
        let asking = route.steps.iter().flat_map(|s| &s.cautions).filter(|c| !c.demonstrations.is_empty());
        let asked: Vec<&String> = asking.flat_map(|c| &c.demonstrations).collect();
        assert_eq!(asked.len(), route.demonstrations.len(), "{unit}: each is asked for once");
        for caution in route.steps.iter().flat_map(|s| &s.cautions) {
            let asks = caution.ask == route::Ask::Demonstrate;
            assert_eq!(asks, !caution.demonstrations.is_empty(), "{unit} {}", caution.id);
        }
    }
}
