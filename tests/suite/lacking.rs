//! What a unit lacks is not named on it: not in its steps, cautions and questions, not in its trouble guides. Which
//! unit lacks what: handbook 0.1 and E.1.

use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use sendoff::route::build;
use sendoff::script::{Bundle, Scripts, Speaker};
use sendoff::words::{Reader, SOURCE_LANGUAGE};

/// Units, and words of what each lacks.
const LACKS: [(&str, &[&str]); 3] = [
    (
        "plover",
        &[
            "propane",
            "generator",
            "burner",
            "furnace",
            "gas leak",
            "gas smell",
            "black tank",
            "black valve",
            "sewer",
            "grey tanks",
            "ladder",
            "chock",
            "trailer",
            "slide-out",
            "octane",
            "boost switch",
        ],
    ),
    (
        "wren",
        &[
            "trailer",
            "cylinder",
            "induction",
            "diesel",
            "cassette",
            "inverter",
            "solar",
            "slide-out",
            "jump pack",
            "outdoor kitchen",
        ],
    ),
    (
        "heron",
        &[
            "diesel",
            "cassette",
            "inverter",
            "solar",
            "jump pack",
            "boost switch",
            "induction",
            "odometer",
            "octane",
        ],
    ),
];

/// Messages that say of a thing that the unit has none.
const SAY_NONE: [&str; 3] =
    ["know-co-detector-no-propane", "know-ferry-tunnel-lp-heater", "question-ferry-tunnel-lp-1.answer"];

fn scripts() -> &'static Scripts {
    static SCRIPTS: OnceLock<Scripts> = OnceLock::new();
    SCRIPTS.get_or_init(|| Scripts::load(Arc::new(Bundle::demo())).0.expect("the demo lot can be used"))
}

/// Everything that is said of a unit, by the key of its message.
fn said(unit: &str) -> BTreeMap<String, String> {
    let scripts = scripts();
    let speaker = Speaker::new(scripts, unit, Reader::default()).expect("a unit");
    let facts = scripts.facts(unit).expect("a unit");
    let route = build(scripts, unit).expect("a unit");
    let parts = |id: &str| ["", ".title", ".harm", ".avoid"].map(|part| format!("caution-{id}{part}"));
    let mut keys: Vec<String> = Vec::new();
    for step in &route.steps {
        keys.push(format!("step-{}", step.id));
        keys.extend(step.show.iter().chain(&step.know).chain(&step.notes).cloned());
        keys.extend(step.leaving.iter().map(|line| format!("leaving-{line}")));
        keys.extend(step.cautions.iter().flat_map(|caution| parts(&caution.id)));
        for n in 1..=9 {
            let question = format!("question-{}-{n}", step.topic);
            // One that the unit has no use for says nothing, and its answer is never shown.
            if speaker.try_say(&question).is_ok_and(|text| !text.is_empty()) {
                keys.extend([format!("{question}.answer"), question]);
            }
        }
    }
    for (id, guide) in scripts.guides.iter().filter(|(_, guide)| guide.value.fits(&facts)) {
        keys.extend([".stop", ".note"].map(|part| format!("guide-{id}{part}")));
        keys.extend(guide.value.hazards(&facts).flat_map(|hazard| parts(&hazard.id.value)));
        for row in guide.value.reached(&facts) {
            keys.extend(["", ".ask", ".yes", ".no"].map(|part| format!("row-{id}-{row}{part}")));
        }
    }
    let there = keys.into_iter().filter(|key| scripts.words.has(SOURCE_LANGUAGE, key));
    there.map(|key| (key.clone(), speaker.try_say(&key).unwrap_or_else(|e| panic!("{key}: {e:?}")))).collect()
}

#[test]
fn nothing_is_named_that_the_unit_does_not_have() {
    for (unit, lacks) in LACKS {
        let said = said(unit);
        assert!(said.len() > 400, "{unit}: {}", said.len());
        let named: Vec<String> = said
            .iter()
            .filter(|(key, _)| !SAY_NONE.contains(&key.as_str()))
            .filter_map(|(key, text)| {
                let text = text.to_lowercase();
                let word = lacks.iter().find(|word| text.contains(**word))?;
                Some(format!("{key} speaks of `{word}`: {text}"))
            })
            .collect();
        assert!(named.is_empty(), "{unit}:\n{}", named.join("\n"));
    }
}

/// The same message reads by the equipment: what is fitted is named where it is.
#[test]
fn what_is_fitted_is_named() {
    let text = |unit: &str, key: &str| said(unit).remove(key).unwrap_or_else(|| panic!("no {key} on {unit}"));
    for (unit, has) in [("wren", true), ("plover", false), ("heron", true)] {
        assert_eq!(text(unit, "caution-accident-steps-1.avoid").contains("propane"), has, "{unit}");
    }
    for (unit, has) in [("wren", true), ("plover", false), ("heron", false)] {
        assert_eq!(text(unit, "caution-co-detector-2.avoid").contains("generator"), has, "{unit}");
    }
    // Handbook E.1.1, child seats: two rear seats on the Plover, two dinette seats that face forward on the Wren.
    let seats = |unit| text(unit, "know-seat-belts-front-child-rear");
    assert!(
        seats("plover").contains("Rear seat at the window and Rear seat at the aisle"),
        "{}",
        seats("plover")
    );
    assert_eq!(seats("wren").matches("Forward-facing dinette seat").count(), 2, "{}", seats("wren"));
}

/// Whoever reads a guide counts its questions from 1, without a gap, on each unit.
#[test]
fn questions_of_a_guide_are_numbered_without_a_gap() {
    let scripts = scripts();
    for (unit, _) in LACKS {
        let facts = scripts.facts(unit).expect("a unit");
        for guide in scripts.guides.values().map(|guide| &guide.value).filter(|guide| guide.fits(&facts)) {
            let reached = guide.reached(&facts);
            let mut numbers: Vec<usize> =
                reached.iter().map(|row| guide.number(row, &facts).expect("a number")).collect();
            numbers.sort_unstable();
            assert_eq!(numbers, (1..=reached.len()).collect::<Vec<_>>(), "{} on {unit}", guide.id.value);
            let first = guide.first(&facts).expect("a first row");
            assert_eq!(guide.number(&first.id.value, &facts), Some(1), "{} on {unit}", guide.id.value);
            assert_eq!(guide.number("no-such-row", &facts), None);
        }
    }
}
