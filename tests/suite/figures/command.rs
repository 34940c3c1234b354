//! `sendoff figures` as it is called.

use std::io::{self, Write};
use std::path::Path;
use std::sync::Mutex;

use clap::Parser as _;
use sendoff::commands::{self, Cli, Console, Task};
use sendoff::ports::system;
use serde_json::Value;

use super::*;

/// Keeps what is written.
#[derive(Clone, Default)]
struct Kept(Arc<Mutex<Vec<u8>>>);

impl Write for Kept {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.lock().expect("not poisoned").write(bytes)
    }
    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Kept {
    fn text(&self) -> String {
        String::from_utf8(self.0.lock().expect("not poisoned").clone()).expect("UTF-8")
    }
}

fn run(args: &[&str]) -> (u8, String, String) {
    let cli = Cli::try_parse_from(["sendoff", "figures"].iter().chain(args)).expect("arguments");
    let Task::Command(command) = cli.task() else { panic!("no command") };
    let (out, err) = (Kept::default(), Kept::default());
    let mut console = Console::new(Box::new(out.clone()), Box::new(err.clone()));
    let code = commands::run(&command, &system::ports(), &[], &mut console);
    (code, out.text(), err.text())
}

fn json(args: &[&str]) -> Value {
    let (code, out, err) = run(args);
    assert_eq!((code, err.as_str()), (commands::GOOD, ""));
    serde_json::from_str(&out).expect("JSON")
}

fn by_id<'a>(printed: &'a Value, id: &str) -> &'a Value {
    let all = printed["figures"].as_array().expect("figures");
    all.iter().find(|figure| figure["id"] == id).unwrap_or_else(|| panic!("no {id}"))
}

fn trip_file(dir: &Path, fields: &str) -> String {
    let path = dir.join("trip.ron");
    fs::write(&path, format!("({fields})")).expect("a file");
    path.display().to_string()
}

/// The trip that the design gives as an example.
const TRIP: &str = "nights: 5, people: [(age: 41), (age: 5, weight: \"40 lb\")], hook_up: [Full, None, None, Full, Full], \
    use: Careful, highest: \"8900 ft\", coldest: \"28 °F\", sun: \"5 h\", bags: \"200 lb\", \
    start: (fresh: \"1\", propane: \"3/4\", fuel: \"7/8\")";

#[test]
fn json_has_the_agreed_form() {
    let dir = tempfile::tempdir().expect("a folder");
    let file = trip_file(dir.path(), TRIP);
    let printed = json(&["--unit", "wren", "--trip", &file, "--format", "json"]);
    assert_eq!((printed["unit"].as_str(), printed["trip"].as_str()), (Some("wren"), Some(file.as_str())));
    // 2,819 − 170 − 40 − 383.64 − 168 − 200 lb.
    let left = by_id(&printed, "payload_left");
    assert_eq!(
        (left["value"].as_str(), left["measure"].as_str(), left["state"].as_str()),
        (Some("1857"), Some("lb"), Some("ok"))
    );
    assert_eq!(left["rounding"], "down");
    assert_eq!(left["source"], "49 CFR 575.6(a)(5)(i) and 571.110 S9.3");
    for key in ["formula", "caveat", "caution"] {
        assert!(
            left[key].as_str().is_some_and(|text| !text.is_empty() && !text.contains('⟨')),
            "{key}: {}",
            left[key]
        );
    }
    let inputs = left["inputs"].as_array().expect("inputs");
    let input = |name: &str| inputs.iter().find(|i| i["name"] == name).unwrap_or_else(|| panic!("no {name}"));
    assert_eq!(input("weight.occc")["from"], "plate");
    assert_eq!(input("water.fresh")["from"], "sheet");
    assert_eq!(input("trip.start.fresh")["from"], "reading");
    assert_eq!(input("trip.bags")["from"], "trip");
    assert_eq!(input("people.weight")["from"], "lot");
    assert_eq!(input("assumed.water")["from"], "assumed");
    assert_eq!(by_id(&printed, "clearance_min_sign")["value"], "141");
    assert_eq!(by_id(&printed, "clearance_min_sign")["measure"], "in");
    assert_eq!(by_id(&printed, "tire_flat")["value"], serde_json::json!(["60", "64"]));
    assert_eq!(by_id(&printed, "generator_watts")["value"], "2824");
    assert_eq!(by_id(&printed, "battery_nights")["measure"], "nights");
    assert_eq!(by_id(&printed, "solar_ah")["state"], "not-fitted");
    assert_eq!(by_id(&printed, "trip_projection")["state"], "ok");
    let ids: Vec<&str> =
        printed["figures"].as_array().expect("figures").iter().filter_map(|f| f["id"].as_str()).collect();
    assert_eq!(ids, figures::ids().collect::<Vec<_>>());
}

/// A lot of one's own, in metric measures.
#[test]
fn any_lot_and_unit_can_be_asked() {
    let dir = tempfile::tempdir().expect("a folder");
    for (name, bytes) in EMBEDDED {
        let path = dir.path().join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("made");
        fs::write(path, bytes).expect("written");
    }
    let lot = dir.path().display().to_string();
    let printed = json(&["--lot", &lot, "--unit", "heron", "--measures", "metric", "--format", "json"]);
    assert_eq!(by_id(&printed, "payload_left")["value"], "515");
    assert_eq!(by_id(&printed, "payload_left")["measure"], "kg");
    assert_eq!(by_id(&printed, "clearance_min_sign")["value"], "3.51");
    // Without figures' words of its own a lot is told in the demo lot's.
    fs::remove_file(dir.path().join("i18n/en-US/figures.ftl")).expect("removed");
    let printed = json(&["--lot", &lot, "--unit", "heron", "--format", "json"]);
    assert_eq!(by_id(&printed, "payload_left")["title"], "What you may still load");
}

#[test]
fn what_is_missing_is_named_with_its_place() {
    let dir = tempfile::tempdir().expect("a folder");
    let file = trip_file(dir.path(), "nights: 2, people: [(age: 30)]");
    let printed = json(&["--unit", "wren", "--trip", &file, "--format", "json"]);
    let range = by_id(&printed, "fuel_range");
    assert_eq!((&range["value"], range["state"].as_str()), (&Value::Null, Some("missing")));
    assert_eq!(range["missing"]["fact"], "trip.start.fuel");
    assert_eq!(range["missing"]["place"], format!("{file}:1:1"));
    assert_eq!(range["text"], "cannot be computed: fuel at the start is missing");
}

#[test]
fn slips_are_told() {
    let (code, _, err) = run(&["--unit", "wran"]);
    assert!(code == commands::COULD_NOT_RUN && err.contains("did you mean `wren`?"), "{err}");
    let dir = tempfile::tempdir().expect("a folder");
    let file = trip_file(dir.path(), "nights: 2, people: [], higest: \"3 ft\"");
    let (code, _, err) = run(&["--unit", "wren", "--trip", &file]);
    assert!(code == commands::COULD_NOT_RUN && err.contains(":1:25"), "{err}");
}

/// Every figure of every unit is told in words, in all measures, with and without a trip: no message is missing,
/// and no variable has no value.
#[test]
fn every_figure_has_words() {
    let trip = trip(&format!(
        "nights: 5, people: [(age: 41), (age: 5, weight: \"40 lb\")], {}, roof: \"4 in\", sign: NoSign, \
         wind: (speed: \"12 mph\", watched: false, rain: true, night: true), slope: (length: \"4 °\", side: \"1 °\"), \
         cord: (length: \"100 ft\", gauge: \"16\"), on: [(load: \"tv\"), (load: \"laptop\")], house_volts: \"13.3 V\", \
         tires: (set_at: \"70 °F\"), tow: (payload: \"900 lb\", rating: \"8000 lb\", length: \"19 ft\", \
         ball_mount: \"10 in\"), generator_run: \"1 h\", driving: \"1 h\", inverter_on: true, \
         returned: (odometer: (out: \"1.0\", back: \"900.0\"), late: \"2 h\")",
        "hook_up: [Full], coldest: \"28 °F\", bags: \"2000 lb\", start: (fresh: \"1\", propane: \"3/4\", fuel: \"1/8\")"
    ));
    let words = &scripts().words;
    for unit in ["wren", "plover", "heron"] {
        let facts = facts(unit);
        let all = figures::of_trip(&facts, &trip).into_iter().chain(figures::of_unit(&facts));
        for figure in all {
            for system in [sendoff::measure::System::Us, sendoff::measure::System::Metric] {
                let reader = sendoff::words::Reader::new("en-US", system);
                let told = figures::explain(words, &reader, &figure);
                let texts =
                    [&told.title, &told.value, &told.formula, &told.source, &told.caveat, &told.caution];
                assert!(
                    texts.iter().all(|t| !t.contains('⟨') && !t.contains("{$")),
                    "{unit} {}: {told:#?}",
                    figure.id
                );
                if figure.state == State::Ok {
                    assert!(!told.formula.is_empty() && !told.inputs.is_empty(), "{unit} {}", figure.id);
                    // A reader is told in words, never in signs alone.
                    assert!(told.formula != figure.formula, "{unit} {}: {}", figure.id, told.formula);
                    let digits = |text: &str| text.chars().any(|c| c.is_ascii_digit());
                    assert!(digits(&told.formula), "{unit} {}: {}", figure.id, told.formula);
                }
            }
        }
    }
}

/// A lot folder of the demo lot with texts of a file replaced.
fn lot_with(dir: &Path, name: &str, changes: &[(&str, &str)]) -> String {
    for (known, bytes) in EMBEDDED {
        let path = dir.join(known);
        fs::create_dir_all(path.parent().expect("a folder")).expect("made");
        fs::write(path, bytes).expect("written");
    }
    fs::write(dir.join(name), edited(&embedded(name), changes)).expect("written");
    dir.display().to_string()
}

/// Line and column of a text, from 1.
fn line_and_column(text: &str, needle: &str) -> (usize, usize) {
    let at = text.find(needle).expect("it is there");
    let before = &text[..at];
    (before.lines().count().max(1), before.chars().rev().take_while(|c| *c != '\n').count() + 1)
}

/// What is missing or impossible is named with file, line and column: the value itself where it stands, else the
/// section it belongs to, in sheet, lot and trip, as JSON and as text.
#[test]
fn the_place_is_that_of_the_fact() {
    let dir = tempfile::tempdir().expect("a folder");
    let sheet = "walkthroughs/units/wren.ron";
    let lot = lot_with(dir.path(), sheet, &[("burn_half: \"0.5 gal/h\"", "burn_half: \"0 gal/h\"")]);
    let file = trip_file(
        dir.path(),
        "nights: 2, people: [(age: 30)],\n start: (fuel: \"1\", grey: \"1 1/2\"), on: []",
    );
    let args = ["--lot", &lot, "--unit", "wren", "--trip", &file];
    let printed = json(&[&args[..], &["--format", "json"]].concat());
    let text = fs::read_to_string(dir.path().join(sheet)).expect("the sheet");
    let (line, column) = line_and_column(&text, "\"0 gal/h\"");
    let hours = by_id(&printed, "generator_hours");
    assert_eq!(hours["missing"]["fact"], "generator.burn_half");
    assert_eq!(hours["missing"]["place"], format!("{sheet}:{line}:{column}"));
    assert_eq!((&hours["value"], &hours["formula"]), (&Value::Null, &Value::from("")));
    let grey = by_id(&printed, "grey_days");
    assert_eq!(grey["missing"]["place"], format!("{file}:2:27"));
    // An absent one stands where its section does, or its file.
    assert_eq!(by_id(&printed, "voltage_drop")["missing"]["place"], format!("{file}:1:1"));
    let unknown = &by_id(&printed, "trip_projection")["projection"]["unknown"];
    assert_eq!(unknown[0]["place"], format!("{file}:2:27"));
    let (code, out, _) = run(&args);
    assert_eq!(code, commands::GOOD);
    assert!(out.contains(&format!("at {sheet}:{line}:{column}")), "{out}");
}

/// The same for what the lot says.
#[test]
fn the_place_of_a_lots_fact_is_in_the_lot() {
    let dir = tempfile::tempdir().expect("a folder");
    let name = "walkthroughs/lot.ron";
    let changes =
        [("use_normal: \"5 gal\"", "use_normal: \"0 gal\""), ("\"mains\": \"120 V\"", "\"mains\": \"0 V\"")];
    let lot = lot_with(dir.path(), name, &changes);
    let file = trip_file(dir.path(), "nights: 2, people: [(age: 30)]");
    let printed = json(&["--lot", &lot, "--unit", "wren", "--trip", &file, "--format", "json"]);
    let text = fs::read_to_string(dir.path().join(name)).expect("the lot");
    for (id, needle) in [("fresh_days", "\"0 gal\""), ("generator_watts", "\"0 V\"")] {
        let (line, column) = line_and_column(&text, needle);
        assert_eq!(by_id(&printed, id)["missing"]["place"], format!("{name}:{line}:{column}"), "{id}");
    }
}

/// What JSON says in words: the formula, the supply's rules, what helps; all in the lot's first measures.
#[test]
fn json_says_formulas_in_words() {
    let dir = tempfile::tempdir().expect("a folder");
    let fields = format!("{TRIP}, supply: Post(\"15 A\"), on: [(load: \"microwave\"), (load: \"coffee\")]");
    let file = trip_file(dir.path(), &fields);
    let printed = json(&["--unit", "wren", "--trip", &file, "--format", "json"]);
    for figure in printed["figures"].as_array().expect("figures") {
        let (formula, working) = (figure["formula"].as_str(), figure["working"].as_str());
        let computed = figure["state"] == "ok";
        assert_eq!(formula.is_some_and(|text| text.contains(' ')), computed, "{}", figure["id"]);
        assert!(!computed || formula != working, "{}", figure["id"]);
    }
    let fits = &by_id(&printed, "loads_fit")["fits"];
    let text = fits["breaks"][0]["text"].as_str().expect("words").replace('\u{A0}', " ");
    assert_eq!(text, "all together are too much: 2,460 W of 1,800 W");
    assert!(
        fits["remedies"][0]["text"].as_str().is_some_and(|text| text.starts_with("switch off ")),
        "{fits}"
    );
    let projection = &by_id(&printed, "trip_projection")["projection"];
    assert!(projection["text"].as_str().is_some_and(|text| text.contains("runs out first")), "{projection}");
    assert!(
        projection["helps"][0]["text"].as_str().is_some_and(|text| text.contains(" last")),
        "{projection}"
    );
}
