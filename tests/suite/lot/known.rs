//! What a sheet gives only a stand-in for: never reckoned with, never printed, told by `check`.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use sendoff::check;
use sendoff::figures::{self, Detail, Figure, State, Trip};
use sendoff::script::{Bundle, Scripts, Speaker, When};
use sendoff::source::{At, Fault, Severity, SourceFile, place_of, read};
use sendoff::unit::{Facts, Origin, Sheet, Value};
use sendoff::words::{Reader, SOURCE_LANGUAGE};

const UNITS: [&str; 3] = ["wren", "plover", "heron"];

fn name_of(unit: &str) -> String {
    format!("walkthroughs/units/{unit}.ron")
}

fn demo() -> Scripts {
    Scripts::load(Arc::new(Bundle::demo())).0.unwrap()
}

fn text_of(name: &str) -> String {
    String::from_utf8(Bundle::demo().get(name).unwrap().to_vec()).unwrap()
}

fn sheet(text: &str) -> Option<Sheet> {
    read::<Sheet>(&SourceFile::new("sheet.ron", text)).0
}

/// The sheet with this on its list of what is not known.
fn left_open(text: &str, names: &[&str]) -> String {
    let end = text.rfind(')').unwrap();
    let list: Vec<String> = names.iter().map(|name| format!("\"{name}\"")).collect();
    format!("{}    not_known: [{}],\n)\n", &text[..end], list.join(", "))
}

/// Byte of the value of a fact in its sheet.
fn at_of(text: &str, name: &str) -> Option<usize> {
    let file = SourceFile::new("sheet.ron", text);
    let path: Vec<&str> = name.split('.').collect();
    let place = place_of(&file, &path);
    let section = place_of(&file, &path[..1]);
    if place == section {
        return None;
    }
    let line: usize = text.lines().take(place.line as usize - 1).map(|line| line.len() + 1).sum();
    let column = text[line..].chars().take(place.col as usize - 1).map(char::len_utf8).sum::<usize>();
    Some(line + column)
}

/// The sheet with another number where a fact stands: digits before its first digit.
fn swollen(text: &str, name: &str, digits: &str) -> Option<String> {
    let at = at_of(text, name)?;
    let digit = text[at..].find(|c: char| c.is_ascii_digit())?;
    // The value itself, and not what comes after it.
    if text[at..at + digit].contains([',', ')']) {
        return None;
    }
    let (before, after) = text.split_at(at + digit);
    Some(format!("{before}{digits}{after}"))
}

/// Facts of the sheet with a value that is no word: what can be left open.
fn open_facts(facts: &Facts) -> Vec<String> {
    let own = facts.iter().filter(|(_, fact)| fact.from == Origin::Sheet);
    let can = own.filter(|(_, fact)| !matches!(fact.value, Value::NotFitted | Value::Word(_)));
    can.map(|(name, _)| name.to_owned()).collect()
}

fn trip() -> Trip {
    let text = "(nights: 5, people: [(age: 41), (age: 39), (age: 5, weight: \"40 lb\")], use: Careful, highest: \"8900 ft\", \
        coldest: \"28 °F\", sun: \"5 h\", bags: \"200 lb\", start: (fresh: \"1\", propane: \"3/4\", fuel: \"7/8\"), \
        driving: \"2 h\", generator_run: \"1 h\", inverter_on: true)";
    read::<Trip>(&SourceFile::new("trip.ron", text)).0.unwrap()
}

fn all_figures(facts: &Facts) -> Vec<Figure> {
    [figures::of_unit(facts), figures::of_trip(facts, &trip())].concat()
}

/// For every fact of every unit: a figure that was computed from it is missing it by name, and no figure differs
/// between one stand-in and another.
#[test]
fn no_figure_is_reckoned_with_a_stand_in() {
    let lot = demo().lot.value;
    let mut tried = 0;
    for unit in UNITS {
        let text = text_of(&name_of(unit));
        let known = Facts::new(&sheet(&text).unwrap(), &lot);
        let base = all_figures(&known);
        for name in open_facts(&known).iter().map(String::as_str).chain(["loads", "night", "day"]) {
            let open = left_open(&text, &[name]);
            let facts = Facts::new(&sheet(&open).unwrap(), &lot);
            assert!(facts.is_not_known(name) && facts.get(name).is_none(), "{unit} {name}");
            let figures = all_figures(&facts);
            for (before, after) in base.iter().zip(&figures) {
                let used =
                    before.inputs.iter().any(|i| i.name == name || i.name.starts_with(&format!("{name}.")));
                if let Detail::Projection(days) = &after.detail {
                    // What is missing for one resource does not hide the others.
                    let told = days.unknown.iter().any(|(_, missing)| missing == name);
                    assert!(!used || told, "{unit}: {} without {name}", before.id);
                } else if before.state == State::Ok && used {
                    assert_eq!(
                        after.state,
                        State::Missing(name.to_owned()),
                        "{unit}: {} without {name}",
                        before.id
                    );
                    assert!(
                        after.values.is_empty() && after.verdict.is_none(),
                        "{unit}: {} without {name}",
                        before.id
                    );
                }
            }
            for digits in ["7", "10"] {
                let Some(other) = swollen(&open, name, digits).and_then(|text| sheet(&text)) else {
                    continue;
                };
                assert_eq!(
                    all_figures(&Facts::new(&other, &lot)),
                    figures,
                    "{unit}: a stand-in of {name} leaks"
                );
                tried += 1;
            }
        }
    }
    assert!(tried > 400, "only {tried} stand-ins were tried");
}

/// The demo lot with other sheets.
fn lot_with(files: &[(String, String)]) -> Arc<Bundle> {
    let demo = Bundle::demo();
    let mut all: BTreeMap<String, Arc<[u8]>> =
        demo.names().map(|name| (name.to_owned(), Arc::clone(demo.get(name).unwrap()))).collect();
    for (name, text) in files {
        all.insert(name.clone(), Arc::from(text.clone().into_bytes()));
    }
    Arc::new(Bundle::new(all, false))
}

/// For every fact of every unit: each text that names it is the same whatever the stand-in, and says so in words.
#[test]
fn no_text_prints_a_stand_in() {
    let scripts = demo();
    let keys = scripts.words.all_keys(SOURCE_LANGUAGE);
    let mut by_variable: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
    for key in &keys {
        for variable in scripts.words.variables(SOURCE_LANGUAGE, key) {
            by_variable.entry(variable).or_default().insert(key);
        }
    }
    let phrase = |key: &str| scripts.words.say(&Reader::default(), key, &sendoff::words::Args::new());
    let phrases = ["fact-not-known", "fee-not-known"].map(phrase);
    let mut said = 0;
    for unit in UNITS {
        let text = text_of(&name_of(unit));
        let known = scripts.facts(unit).unwrap();
        for name in open_facts(&known) {
            let Some(keys) = by_variable.get(&name.replace('.', "_")) else { continue };
            let open = left_open(&text, &[&name]);
            let load = |text: String| Scripts::load(lot_with(&[(name_of(unit), text)])).0.unwrap();
            let one = load(open.clone());
            let other = swollen(&open, &name, "7").filter(|text| sheet(text).is_some()).map(load);
            for key in keys {
                let text = Speaker::new(&one, unit, Reader::default()).unwrap().say(key);
                // A value that only chooses between texts is held against another stand-in below.
                let chooses = other.is_some() || matches!(known.get(&name).unwrap().value, Value::Flag(_));
                let says = phrases.iter().any(|phrase| text.contains(phrase.as_str()));
                assert!(says || chooses, "{unit} {key} without {name}: {text}");
                if let Some(other) = &other {
                    let again = Speaker::new(other, unit, Reader::default()).unwrap().say(key);
                    assert_eq!(text, again, "{unit} {key}: a stand-in of {name} leaks");
                }
                said += 1;
            }
        }
    }
    assert!(said > 150, "only {said} texts were said");
}

/// The number alone is absent, and a selector takes its usual branch.
#[test]
fn the_number_of_what_is_not_known_is_absent() {
    let words = "test-number = { $berths_beds_n ->\n    [6] six\n   *[other] some\n}\n";
    let text = left_open(&text_of(&name_of("wren")), &["berths.beds"]);
    let all = lot_with(&[(name_of("wren"), text), ("i18n/en-US/test.ftl".into(), words.into())]);
    let scripts = Scripts::load(all).0.unwrap();
    assert_eq!(Speaker::new(&scripts, "wren", Reader::default()).unwrap().say("test-number"), "some");
}

/// A figure that cannot be computed stands in a text as words, and a place that nobody measured too.
#[test]
fn figures_and_places_are_words_as_well() {
    let words = "test-figure = Signs: { $clearance_min_sign }.\ntest-place = It is { $place_lp_valve }.\n";
    let text = left_open(&text_of(&name_of("wren")), &["size.height", "places"]);
    let all = lot_with(&[(name_of("wren"), text), ("i18n/en-US/test.ftl".into(), words.into())]);
    let scripts = Scripts::load(all).0.unwrap();
    let speaker = Speaker::new(&scripts, "wren", Reader::default()).unwrap();
    assert_eq!(speaker.say("test-figure"), "Signs: a number that staff still have to look up.");
    assert_eq!(speaker.say("test-place"), "It is where staff show you.");
}

/// What hangs on a fact that is not known does not hold, and its opposite does not either.
#[test]
fn a_condition_on_what_is_not_known_holds_neither_way() {
    let lot = demo().lot.value;
    let text = left_open(&text_of(&name_of("wren")), &["safety.sill", "berths.beds"]);
    let facts = Facts::new(&sheet(&text).unwrap(), &lot);
    let when = |text: &str| read::<At<When>>(&SourceFile::new("when.ron", text)).0.unwrap().value;
    for (text, holds) in [
        ("Over(\"safety.sill\", \"1 in\")", false),
        ("Not(Over(\"safety.sill\", \"1 in\"))", false),
        ("Is(\"berths.beds\", \"6\")", false),
        ("Not(Is(\"berths.beds\", \"6\"))", false),
        ("Fitted(\"safety.sill\")", true),
        ("Any([Over(\"safety.sill\", \"1 in\"), Fitted(\"propane\")])", true),
        ("All([Over(\"safety.sill\", \"1 in\"), Fitted(\"propane\")])", false),
        ("Not(All([Over(\"safety.sill\", \"1 in\"), Fitted(\"solar\")]))", true),
    ] {
        assert_eq!(when(text).holds(&facts), holds, "{text}");
    }
}

fn found(unit: &str, text: String) -> Vec<Fault> {
    check::lot(lot_with(&[(name_of(unit), text)])).faults
}

#[test]
fn each_stand_in_is_a_note_that_says_where_to_read_it() {
    let text = left_open(
        &text_of(&name_of("wren")),
        &["weight.uvw", "tires.cold", "loads", "places", "generator.derate"],
    );
    let all = found("wren", text.clone());
    let told: Vec<&str> = all.iter().map(|f| f.code).collect();
    assert_eq!(told, ["unit.not-known"; 5], "{all:#?}");
    for fault in &all {
        assert_eq!(fault.severity, Severity::Note);
        assert!(fault.hint.ends_with("then take it off the list"), "{}", fault.hint);
        let line = text.lines().nth(fault.place.line as usize - 1).unwrap();
        assert!(line.contains("not_known"), "{line}");
    }
    assert!(all[0].hint.contains("weigh"), "{}", all[0].hint);
}

#[test]
fn an_entry_that_stands_for_nothing_is_a_fault() {
    for (entry, hint) in [
        ("weight.uvv", "did you mean `weight.uvw`?"),
        ("weight.ccc", "take it off the list"),
        ("solar.power", "take it off the list"),
        ("phone.day", "take it off the list"),
        ("engine.fuel", "find it out"),
        ("kit", "section.field"),
    ] {
        let all = found("wren", left_open(&text_of(&name_of("wren")), &[entry]));
        assert_eq!(all.len(), 1, "{entry}: {all:#?}");
        assert_eq!((all[0].code, all[0].severity), ("unit.not-known-fact", Severity::Fault), "{entry}");
        assert!(all[0].hint.contains(hint), "{entry}: {}", all[0].hint);
    }
    let all = found("wren", left_open(&text_of(&name_of("wren")), &["weight.uvw", "weight.uvw"]));
    assert!(all.iter().any(|f| f.code == "id.duplicate"), "{all:#?}");
}

/// No rule holds a stand-in against another fact: whatever number it is, nothing worse than a note is told.
#[test]
fn no_rule_compares_a_stand_in() {
    let scripts = demo();
    let mut files: Vec<(String, String)> = Vec::new();
    let mut words = String::new();
    let mut tried: BTreeMap<String, String> = BTreeMap::new();
    for unit in UNITS {
        let text = text_of(&name_of(unit));
        for name in open_facts(&scripts.facts(unit).unwrap()) {
            // A month and a size that is drawn must look like one.
            let digits: &[&str] = if name.starts_with("safety.") && name.ends_with("_by") {
                &[]
            } else {
                &["7", "0.000", "9999"]
            };
            for digits in digits {
                let Some(other) = swollen(&left_open(&text, &[&name]), &name, digits) else { continue };
                let id = format!("x{}", files.len());
                let other = other.replacen(&format!("id: \"{unit}\""), &format!("id: \"{id}\""), 1);
                if sheet(&other).is_none() {
                    continue;
                }
                words.push_str(&format!("unit-{id} = {id}\n    .kind = unit\n"));
                tried.insert(id.clone(), format!("{unit} {name} {digits}"));
                files.push((name_of(&id), other));
            }
        }
    }
    assert!(tried.len() > 400, "only {} stand-ins were tried", tried.len());
    let mut wrong = Vec::new();
    for some in files.chunks(100) {
        let mut some = some.to_vec();
        some.push(("i18n/en-US/unit-x.ftl".into(), words.clone()));
        // The rules on sheets need no topics.
        let whole = lot_with(&some);
        let kept = whole.names().filter(|name| !name.contains("/topics/") && !name.contains("/guides/"));
        let kept = kept.map(|name| (name.to_owned(), Arc::clone(whole.get(name).unwrap()))).collect();
        for fault in check::lot(Arc::new(Bundle::new(kept, false))).faults {
            let of = fault
                .place
                .file
                .strip_prefix("walkthroughs/units/")
                .and_then(|name| name.strip_suffix(".ron"));
            let Some(case) = of.and_then(|id| tried.get(id)) else { continue };
            // Its changes name steps, which are left out here.
            if fault.severity == Severity::Fault && fault.code != "change.unknown" {
                wrong.push(format!("{case}: {} {}", fault.code, fault.what));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
