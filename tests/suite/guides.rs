//! The trouble guides of the demo lot: every path walked on every unit, held against the printed tables.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use sendoff::script::{Ask, Bundle, End, Guide, GuideRow, Scripts, Signal, Speaker, Way};
use sendoff::unit::{Facts, Fitted, Sheet};
use sendoff::words::Reader;

mod printed;

use printed::{NUMBERS, TABLES, UNITS};

pub(super) fn scripts() -> Scripts {
    let (scripts, faults) = Scripts::load(Arc::new(Bundle::demo()));
    assert!(faults.is_empty(), "{faults:?}");
    scripts.expect("a lot")
}

/// The guide that the handbook numbers so, as `D01`.
pub(super) fn guide<'a>(scripts: &'a Scripts, number: &str) -> &'a Guide {
    let (_, id) = NUMBERS.iter().find(|(n, _)| *n == number).expect("a number");
    &scripts.guides.get(*id).unwrap_or_else(|| panic!("no guide {id}")).value
}

/// A way as the handbook writes it: `5`, `D03`, `FIXED`.
fn spelled(guide: &Guide, way: Way<'_>) -> String {
    match way {
        Way::Row(id) => guide.row(&id.value).expect("a row of the guide").0.to_string(),
        Way::Guide(id) => {
            let found = NUMBERS.iter().find(|(_, known)| *known == id.value);
            found.expect("a numbered guide").0.to_owned()
        }
        Way::End(end) => end.word().to_uppercase(),
    }
}

/// Walks by the answers, `y` and `n`: the numbers of the rows that are seen, and where it ends.
pub(super) fn walk(
    guide: &Guide,
    facts: &Facts,
    answers: impl IntoIterator<Item = bool>,
) -> (Vec<usize>, String) {
    let mut row: &GuideRow = guide.first(facts).expect("a first row");
    let mut seen = Vec::new();
    let mut answers = answers.into_iter();
    loop {
        let (number, _) = guide.row(&row.id.value).expect("its own row");
        let here = row.when.as_ref().is_none_or(|w| w.holds(facts));
        assert!(here, "{} comes to row {number}, for which the unit lacks the equipment", guide.id.value);
        seen.push(number);
        assert!(seen.len() <= guide.rows.len(), "{} does not end: {seen:?}", guide.id.value);
        let Some(answer) = answers.next() else { return (seen, "ASKS".into()) };
        let target = if answer { &row.yes } else { &row.no };
        let way = target.on(facts).unwrap_or_else(|| panic!("{} row {number} leads nowhere", guide.id.value));
        match way {
            Way::Row(id) => row = guide.row(&id.value).expect("a row of the guide").1,
            Way::Guide(_) | Way::End(_) => return (seen, spelled(guide, way)),
        }
    }
}

fn answers(text: &str) -> impl Iterator<Item = bool> {
    text.bytes().map(|b| b == b'y')
}

/// All paths: rows with the answer given there, and where each ends.
fn paths(guide: &Guide, facts: &Facts) -> Vec<(Vec<usize>, String)> {
    let mut done = Vec::new();
    let mut open: Vec<Vec<bool>> = vec![Vec::new()];
    while let Some(said) = open.pop() {
        match walk(guide, facts, said.iter().copied()) {
            (_, end) if end == "ASKS" => {
                for answer in [true, false] {
                    open.push(said.iter().copied().chain([answer]).collect());
                }
            }
            whole => done.push(whole),
        }
    }
    done
}

/// What a path may end in, if not in another guide.
const ENDS: [End; 4] = [End::Fixed, End::Call, End::Leave, End::Wait];

/// Handbook D and H.9: each path ends in FIXED, CALL, LEAVE, WAIT or another guide of the unit, and none is walked
/// without the unit's hazards before it.
#[test]
fn every_path_ends_on_every_unit() {
    let scripts = scripts();
    let ends: Vec<String> = ENDS.iter().map(|end| end.word().to_uppercase()).collect();
    for (unit, letter) in UNITS {
        let facts = scripts.facts(unit).expect("a unit");
        for (number, _) in NUMBERS {
            let form = guide(&scripts, number);
            if !form.fits(&facts) {
                continue;
            }
            assert!(form.hazards(&facts).next().is_some(), "{number} {letter} warns of nothing");
            let mut walked = BTreeSet::new();
            for (rows, end) in paths(form, &facts) {
                let other = NUMBERS.iter().any(|(n, _)| *n == end && guide(&scripts, n).fits(&facts));
                assert!(ends.contains(&end) || other, "{number} {letter} {rows:?} ends in {end}");
                walked.extend(rows);
            }
            let reached: BTreeSet<usize> =
                form.reached(&facts).iter().map(|id| form.row(id).expect("a row").0).collect();
            assert_eq!(walked, reached, "{number} {letter}");
        }
    }
}

/// From guide to guide one comes to an end as well: none hands back to one that handed on to it.
#[test]
fn guides_do_not_send_people_in_circles() {
    let scripts = scripts();
    for (unit, _) in UNITS {
        let facts = scripts.facts(unit).expect("a unit");
        for (number, _) in NUMBERS.iter().filter(|(n, _)| guide(&scripts, n).fits(&facts)) {
            let mut front = vec![(*number).to_owned()];
            for step in 0..NUMBERS.len() {
                let next = front.iter().flat_map(|n| paths(guide(&scripts, n), &facts));
                let next: BTreeSet<String> =
                    next.map(|(_, end)| end).filter(|e| e.starts_with('D')).collect();
                front = next.into_iter().collect();
                if front.is_empty() {
                    break;
                }
                assert!(step + 1 < NUMBERS.len(), "{unit}: {number} comes back");
            }
        }
    }
}

/// Each row of each table of handbook D, on each unit: same number, same targets, reached or not as its mark says.
#[test]
fn the_rows_are_those_of_the_printed_tables() {
    let scripts = scripts();
    for table in &TABLES {
        let form = guide(&scripts, table.number);
        for (unit, letter) in UNITS {
            let facts = scripts.facts(unit).expect("a unit");
            assert_eq!(form.fits(&facts), table.units.contains(letter), "{} on {unit}", table.number);
            if !form.fits(&facts) {
                continue;
            }
            let expected = table.rows_on(letter);
            let reached = form.reached(&facts);
            let mut found = BTreeMap::new();
            for row in form.rows.iter().map(|r| &r.value).filter(|r| reached.contains(r.id.value.as_str())) {
                let to = |t: &sendoff::script::Target| spelled(form, t.on(&facts).expect("a way"));
                let _ = found.insert(form.row(&row.id.value).expect("a row").0, (to(&row.yes), to(&row.no)));
            }
            assert_eq!(found, expected, "{} on {unit}", table.number);
        }
    }
}

/// Handbook D: ids of hazards, signal word, `hold` or `read`, and which units have them.
#[test]
fn the_hazards_are_those_of_the_printed_tables() {
    let scripts = scripts();
    for table in &TABLES {
        let form = guide(&scripts, table.number);
        for (unit, letter) in UNITS.iter().filter(|(_, l)| table.units.contains(*l)) {
            let facts = scripts.facts(unit).expect("a unit");
            let found: Vec<(String, Signal, Ask)> =
                form.hazards(&facts).map(|h| (h.id.value.clone(), h.signal, h.answer)).collect();
            let expected: Vec<(String, Signal, Ask)> = table
                .hazards
                .iter()
                .enumerate()
                .filter(|(_, (units, _, _))| units.contains(*letter))
                .map(|(i, (_, signal, ask))| (format!("{}-h{}", form.id.value, i + 1), *signal, *ask))
                .collect();
            assert_eq!(found, expected, "{} on {unit}", table.number);
        }
    }
}

#[test]
fn worked_cases_end_as_printed() {
    let scripts = scripts();
    for (number, unit, said, rows, end) in printed::CASES {
        let facts = scripts.facts(unit).expect("a unit");
        let (seen, ended) = walk(guide(&scripts, number), &facts, answers(said));
        assert_eq!((seen.as_slice(), ended.as_str()), (rows, end), "{number} {unit} {said}");
    }
}

fn seconds(scripts: &Scripts, unit: &str, fact: &str) -> f64 {
    let facts = scripts.facts(unit).expect("a unit");
    let quantity = facts.quantity(fact).unwrap_or_else(|| panic!("no {fact}"));
    quantity.to(sendoff::measure::Measure::Second).expect("a time")
}

fn text(scripts: &Scripts, unit: &str, key: &str) -> String {
    let said = Speaker::new(scripts, unit, Reader::default()).expect("a unit").try_say(key).expect("a text");
    said.replace(['\u{a0}', '\u{202f}'], " ")
}

/// An on-demand heater gives hot water in about 20 s, and its reset trips now and then: the guide waits longer before
/// it asks, and asks for the reset before anything is taken apart. Common practice, no source.
#[test]
fn an_on_demand_heater_gets_its_time_and_its_reset() {
    let scripts = scripts();
    let key = "row-trouble-no-hot-water-on-demand";
    assert!(seconds(&scripts, "heron", "limit.hot_tap_wait") > 20.0);
    let row = text(&scripts, "heron", key);
    assert!(row.contains("30 s") && row.starts_with("Turn the heater off"), "{row}");
    let facts = scripts.facts("heron").expect("a unit");
    let form = guide(&scripts, "D04");
    let (reset, _) = form.row("on-demand").expect("the reset");
    let looks: BTreeSet<usize> =
        ["cold-tap", "shower", "one-tap", "burner"].map(|r| form.row(r).expect("a row").0).into();
    let quickest = paths(form, &facts).into_iter().map(|(rows, _)| rows).filter(|rows| rows.contains(&reset));
    let quickest = quickest.min_by_key(Vec::len).expect("a way to the reset");
    let before: BTreeSet<usize> = quickest.iter().copied().take_while(|n| *n != reset).collect();
    assert_eq!(before, looks, "only looks come before the reset");
}

/// A reset is asked early: the ground-fault outlet and the protector within six rows. Common practice, no source.
#[test]
fn the_reset_of_an_outlet_is_asked_early() {
    let scripts = scripts();
    let form = guide(&scripts, "D02");
    for (unit, letter) in UNITS {
        let facts = scripts.facts(unit).expect("a unit");
        for (row, most) in [("ground-fault", 3), ("protector", 6)] {
            let (number, _) = form.row(row).expect("a row");
            let ways = paths(form, &facts).into_iter().map(|(rows, _)| rows);
            let places: Vec<usize> = ways.filter_map(|rows| rows.iter().position(|n| *n == number)).collect();
            assert!(!places.is_empty() && places.iter().all(|at| at < &most), "{row} {letter}: {places:?}");
        }
    }
}

/// A failed boost means a low house battery: charge about 10 minutes, then try again. Common practice, no source.
#[test]
fn a_failed_boost_is_tried_again_after_charging() {
    let scripts = scripts();
    assert!((seconds(&scripts, "wren", "limit.aux_charge") - 600.0).abs() < 1e-9);
    let facts = scripts.facts("wren").expect("a unit");
    let form = guide(&scripts, "D05");
    let (rows, end) = walk(form, &facts, answers("nnnnnn"));
    assert_eq!((rows.last(), end.as_str()), (form.row("charge-first").map(|(n, _)| n).as_ref(), "CALL"));
    let said = text(&scripts, "wren", "row-trouble-engine-crank-charge-first");
    assert!(said.contains("10 min") && said.ends_with("try once more."), "{said}");
}

/// On the road, roof air needs the generator and the dash air runs off the engine; without a post or a generator the
/// outlets are dead, and lights and pump are not. Common practice, no source.
#[test]
fn guides_say_what_runs_from_what() {
    let scripts = scripts();
    let note = text(&scripts, "wren", "guide-trouble-generator.note");
    assert!(
        note.contains("roof air conditioner needs the generator")
            && note.contains("dash air runs off the engine")
    );
    let note = text(&scripts, "heron", "guide-trouble-no-120v.note");
    assert!(
        note.contains("Outlets need 120 V from a post") && note.contains("Lights and pump run on the 12 V"),
        "{note}"
    );
    // Heron without a post: nothing to repair.
    let facts = scripts.facts("heron").expect("a unit");
    assert_eq!(walk(guide(&scripts, "D02"), &facts, answers("nnn")).1, "WAIT");
}

/// What a renter searches by: every guide has words, none twice.
#[test]
fn guides_can_be_found() {
    let scripts = scripts();
    for (number, id) in NUMBERS {
        let found = text(&scripts, "wren", &format!("guide-{id}.find"));
        let words: Vec<&str> = found.split(", ").collect();
        assert!(words.len() >= 5, "{number}: {found}");
        assert_eq!(words.iter().collect::<BTreeSet<_>>().len(), words.len(), "{number}: {found}");
        assert!(words.iter().all(|w| !w.is_empty() && *w == w.trim()), "{number}: {found}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever a tired person answers, it ends within as many answers as the guide has rows.
    #[test]
    fn any_answers_end(said in proptest::collection::vec(any::<bool>(), 20)) {
        thread_local!(static SCRIPTS: Scripts = scripts());
        SCRIPTS.with(|scripts| {
            for (unit, _) in UNITS {
                let facts = scripts.facts(unit).expect("a unit");
                for (number, _) in NUMBERS {
                    let form = guide(scripts, number);
                    if form.fits(&facts) {
                        let (rows, end) = walk(form, &facts, said.iter().copied());
                        assert!(end != "ASKS" && rows.len() <= form.rows.len(), "{number} {unit}");
                    }
                }
            }
        });
    }
}

/// Gives a section of `to` what `from` has, or nothing.
macro_rules! mix {
    ($to:ident, $donors:ident, $picks:ident; $($perhaps:ident)*; always: $($always:ident)*) => {{
        let mut picks = $picks.iter().copied();
        $(match picks.next().and_then(|p| $donors.get(p)) {
            Some(from) => $to.$perhaps.clone_from(&from.$perhaps),
            None => $to.$perhaps.value = Fitted::NotFitted,
        })*
        $(if let Some(from) = picks.next().and_then(|p| $donors.get(p)) { $to.$always.clone_from(&from.$always); })*
    }};
}

/// A unit that nobody has seen: each section from one of the three units, or not fitted. It has all their places.
fn mixed(donors: &[Sheet], picks: &[usize]) -> Sheet {
    let mut sheet = donors[picks[0] % donors.len()].clone();
    mix!(sheet, donors, picks;
        awning engine generator engine_charger solar inverter shore roof_air propane furnace diesel_heater water_heater
        fridge cook hitch; always: house water waste safety wheels slides axles);
    for donor in donors {
        for (id, place) in &donor.places {
            let _ = sheet.places.entry(id.clone()).or_insert_with(|| place.clone());
        }
    }
    sheet
}

/// On any mixture of equipment every path ends, no row of equipment that it lacks is come to, no guide that is not
/// for it is led to, and every text on the way can be said.
#[test]
fn units_nobody_has_seen_are_led_through() {
    const UNSEEN: &str = "unseen";
    let scripts = RefCell::new(scripts());
    let donors: Vec<Sheet> = scripts.borrow().units.values().map(|u| u.value.clone()).collect();
    let file = scripts.borrow().units["wren"].clone();
    let config = ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() };
    let picks = proptest::collection::vec(0..=donors.len(), 22);
    let run = |picks: Vec<usize>| {
        let mut unit = file.clone();
        unit.value = mixed(&donors, &picks);
        let _ = scripts.borrow_mut().units.insert(UNSEEN.into(), unit);
        let scripts = scripts.borrow();
        let facts = scripts.facts(UNSEEN).expect("a unit");
        let speaker = Speaker::new(&scripts, UNSEEN, Reader::default()).expect("a unit");
        for (number, id) in NUMBERS {
            let form = guide(&scripts, number);
            if !form.fits(&facts) {
                continue;
            }
            assert!(form.hazards(&facts).next().is_some(), "{number} warns of nothing");
            for (rows, end) in paths(form, &facts) {
                let known = !end.starts_with('D') || guide(&scripts, &end).fits(&facts);
                assert!(known, "{number} {rows:?} leads to {end}, which is not for the unit");
            }
            for row in form.reached(&facts) {
                for part in ["", ".ask", ".yes", ".no"] {
                    let key = format!("row-{id}-{row}{part}");
                    if scripts.words.has("en-US", &key) {
                        let said = speaker.try_say(&key);
                        assert!(said.is_ok(), "{key}: {said:?}");
                    }
                }
            }
        }
        Ok(())
    };
    TestRunner::new(config).run(&picks, run).expect("every unit is led through");
}
