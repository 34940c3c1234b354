//! A lot of one's own: `lot new`, `lot add-unit`, and what a newcomer does next.

mod known;
mod newcomer;
mod readme;

use std::cell::RefCell;
use std::fmt::Write as _;
use std::io::Write;
use std::path::Path;
use std::rc::Rc;
use std::sync::Arc;

use clap::Parser as _;
use proptest::prelude::*;
use proptest::strategy::ValueTree as _;
use proptest::test_runner::{RngAlgorithm, TestRng, TestRunner};
use sendoff::check;
use sendoff::commands::{self, Cli, Console, Task};
use sendoff::ports::Ports;
use sendoff::ports::fake::{FixedClock, FixedEntropy};
use sendoff::ports::system::SystemDisk;
use sendoff::script::Bundle;
use sendoff::source::{Fault, Severity};

#[derive(Clone, Default)]
struct Paper(Rc<RefCell<Vec<u8>>>);

impl Write for Paper {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.borrow_mut().write(bytes)
    }
    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

impl Paper {
    fn text(&self) -> String {
        String::from_utf8(self.0.borrow().clone()).unwrap()
    }
}

/// Exit code, result, complaints.
pub(super) fn run(args: &[&str]) -> (u8, String, String) {
    let ports = Ports {
        disk: Arc::new(SystemDisk),
        clock: Arc::new(FixedClock("2026-11-25T12:00:00Z".parse().unwrap())),
        entropy: Arc::new(FixedEntropy([9; 32])),
    };
    let cli = match Cli::try_parse_from(["sendoff"].iter().chain(args)) {
        Ok(cli) => cli,
        Err(help) => return (2, String::new(), help.to_string()),
    };
    let Task::Command(command) = cli.task() else { panic!("{args:?} is no command") };
    let (out, err) = (Paper::default(), Paper::default());
    let mut console = Console::new(Box::new(out.clone()), Box::new(err.clone()));
    let code = commands::run(&command, &ports, &[], &mut console);
    (code, out.text(), err.text())
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

/// A new lot in a folder that goes away with it.
pub(super) fn new_lot() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    let (code, _, err) = run(&["lot", "new", text(dir.path()), "--name", "Marsh Road Motorhomes"]);
    assert_eq!((code, err.as_str()), (0, ""));
    dir
}

/// Adds a unit; what it answered.
pub(super) fn add(lot: &Path, args: &[&str]) -> (u8, String, String) {
    run(&[&["lot", "add-unit", "--lot", text(lot)], args].concat())
}

pub(super) const CLASS_C: [&str; 10] = [
    "--kind",
    "class-c",
    "--fuel",
    "gasoline",
    "--length",
    "28 ft",
    "--width",
    "99 in",
    "--height",
    "11 ft 3 in",
];

pub(super) fn found(lot: &Path) -> Vec<Fault> {
    check::lot(Arc::new(Bundle::read(&SystemDisk, lot).unwrap())).faults
}

/// Faults, each in a line.
fn faults(lot: &Path) -> Vec<String> {
    let bad = found(lot).into_iter().filter(|f| f.severity == Severity::Fault);
    bad.map(|f| format!("{} {} {}", f.code, f.place, f.what)).collect()
}

#[test]
fn a_new_lot_lacks_only_a_unit() {
    let lot = new_lot();
    let all = found(lot.path());
    assert_eq!(all.len(), 1, "{all:#?}");
    assert_eq!(all[0].code, "lot.no-unit");
    assert!(all[0].hint.contains("sendoff lot add-unit"), "{}", all[0].hint);
    let words = std::fs::read_to_string(lot.path().join("i18n/en-US/units.ftl")).unwrap();
    assert!(words.contains("lot-name = Marsh Road Motorhomes\n"));
    for name in ["i18n/en-US/unit-wren.ftl", "walkthroughs/units/wren.ron", "i18n/en-US/kiosk.ftl"] {
        assert!(!lot.path().join(name).exists(), "{name}");
    }
    let bundle = Bundle::read(&SystemDisk, lot.path()).unwrap();
    assert!(bundle.names().all(|name| !name.contains("wren") && !name.contains("heron")));
}

#[test]
fn every_setting_is_explained() {
    let lot = new_lot();
    let text = std::fs::read_to_string(lot.path().join("walkthroughs/lot.ron")).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    let field = |line: &str| {
        let rest = line.strip_prefix("    ")?;
        let name = rest.split_once(':')?.0;
        (!name.is_empty() && name.chars().all(|c| c.is_ascii_lowercase() || c == '_'))
            .then(|| name.to_owned())
    };
    let mut seen = 0;
    for pair in lines.windows(2) {
        if let Some(name) = field(pair[1]) {
            assert!(pair[0].starts_with("    // "), "{name} is not explained");
            seen += 1;
        }
    }
    let rows = include_str!("../../assets/lot/settings.txt").lines().count();
    assert_eq!(seen, rows, "a row of settings.txt belongs to each setting");
}

#[test]
fn a_folder_that_holds_something_is_left_as_it_is() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("letter.txt"), "dear").unwrap();
    let (code, _, err) = run(&["lot", "new", text(dir.path())]);
    assert_eq!(code, 2);
    assert!(
        err.contains("is not empty") && err.contains("letter.txt") && err.contains("Nothing was written"),
        "{err}"
    );
    assert_eq!(std::fs::read_dir(dir.path()).unwrap().count(), 1);
    for name in ["", "two\nlines", "{ $x }", &"long ".repeat(30)] {
        let (code, _, err) = run(&["lot", "new", text(&dir.path().join("new")), "--name", name]);
        assert!(code == 2 && err.contains("For example"), "{name:?}: {err}");
    }
}

/// Equipment as it is asked for, with what it needs.
const EQUIPMENT: [&[&str]; 24] = [
    &["--generator", "8000 W"],
    &["--cord", "30 A"],
    &["--cord", "50 A"],
    &["--cord", "15 A"],
    &["--inverter", "2000 W"],
    &["--solar", "400 W"],
    &["--slide-outs", "2"],
    &["--slide-outs", "4"],
    &["--propane", "frame"],
    &["--propane", "cylinders"],
    &["--fridge", "absorption", "--propane", "frame"],
    &["--fridge", "compressor"],
    &["--fridge", "residential", "--inverter", "2000 W"],
    &["--water-heater", "tank", "--cord", "30 A"],
    &["--water-heater", "on-demand", "--propane", "cylinders"],
    &["--heat", "furnace", "--propane", "frame"],
    &["--heat", "diesel"],
    &["--cook", "propane", "--propane", "frame"],
    &["--cook", "induction", "--cord", "30 A"],
    &["--toilet", "black"],
    &["--toilet", "cassette"],
    &["--roof-air", "2", "--cord", "50 A"],
    &["--awning", "electric"],
    &["--awning", "crank"],
];
const KINDS: [(&str, &str, &str, &str); 4] = [
    ("class-a", "34 ft", "101 in", "12 ft 4 in"),
    ("class-b", "19 ft", "80 in", "9 ft 4 in"),
    ("class-c", "26 ft", "99 in", "135 in"),
    ("trailer", "8.4 m", "2.44 m", "3.35 m"),
];

/// Arguments without those that are given twice; the last one counts.
fn merged(all: &[&[&'static str]]) -> Vec<&'static str> {
    let mut pairs: Vec<(&str, &str)> = Vec::new();
    for pair in all.iter().flat_map(|args| args.chunks(2)) {
        pairs.retain(|(flag, _)| *flag != pair[0]);
        pairs.push((pair[0], pair[1]));
    }
    pairs.into_iter().flat_map(|(flag, value)| [flag, value]).collect()
}

/// A unit of a kind with this equipment; whether a trailer or an engine forbids it is left out.
fn arguments(kind: usize, fuel: &'static str, equipment: &[usize], left: bool) -> Vec<&'static str> {
    let (name, length, width, height) = KINDS[kind];
    let mut all: Vec<&[&'static str]> = Vec::new();
    let is_trailer = name == "trailer";
    for index in equipment {
        let args = EQUIPMENT[*index];
        let engine = args[0] == "--generator" || args == ["--heat", "diesel"];
        let diesel = args == ["--heat", "diesel"];
        if !(engine && is_trailer || diesel && fuel != "diesel") {
            all.push(args);
        }
    }
    let mut args = merged(&all);
    args.extend(["--kind", name, "--length", length, "--width", width, "--height", height]);
    if !is_trailer {
        args.extend(["--fuel", fuel]);
    }
    if left {
        args.extend(["--curb", "left"]);
    }
    args
}

/// Each kind with each piece of equipment alone, with none, and 64 mixtures: `check` finds no fault in any.
#[test]
fn whatever_is_fitted_the_sheet_is_right() {
    let lot = new_lot();
    let mut all: Vec<Vec<&str>> = Vec::new();
    for kind in 0..KINDS.len() {
        all.push(arguments(kind, "gasoline", &[], false));
        all.extend((0..EQUIPMENT.len()).map(|one| arguments(kind, "diesel", &[one], false)));
    }
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]);
    let mut runner = TestRunner::new_with_rng(ProptestConfig::default(), rng);
    let mixture =
        (0..4_usize, any::<bool>(), proptest::collection::vec(0..EQUIPMENT.len(), 3..14), any::<bool>());
    for _ in 0..64 {
        let (kind, gasoline, equipment, left) = mixture.new_tree(&mut runner).unwrap().current();
        all.push(arguments(kind, if gasoline { "gasoline" } else { "diesel" }, &equipment, left));
    }
    assert!(all.len() >= 160);
    for (number, args) in all.iter().enumerate() {
        let id = format!("u{number}");
        let (code, out, err) = add(lot.path(), &[&["--id", &id], args.as_slice()].concat());
        assert_eq!((code, err.as_str()), (0, ""), "{args:?}: {out}");
    }
    let bad = faults(lot.path());
    let told = bad.iter().take(12).fold(String::new(), |mut told, fault| {
        let unit = fault.split("units/u").nth(1).or_else(|| fault.split("`u").nth(1)).unwrap_or_default();
        let number: String = unit.chars().take_while(char::is_ascii_digit).collect();
        let args = number.parse::<usize>().ok().and_then(|n| all.get(n));
        let _ = writeln!(told, "{fault}\n    {args:?}");
        told
    });
    assert!(bad.is_empty(), "{} faults\n{told}", bad.len());
}

/// What a walk says about a unit with everything and one with nothing: no hole, nothing of equipment it lacks.
#[test]
fn a_walk_of_a_new_unit_is_sealed_without_a_hole_or_a_guess() {
    let everything: Vec<usize> = vec![0, 2, 4, 5, 6, 8, 12, 13, 15, 17, 19, 21, 22];
    let nothing: Vec<usize> = Vec::new();
    let lacks_everything =
        ["generator", "propane", "slide-out", "inverter", "awning", "shore cord", "roof air", "refrigerator"];
    let cases = [
        (0, everything, &[][..]),
        (1, nothing, &lacks_everything[..]),
        (3, vec![9, 10, 19], &["generator", "slide-out"][..]),
    ];
    for (kind, equipment, lacks) in cases {
        let lot = new_lot();
        let args = arguments(kind, "diesel", &equipment, false);
        let (code, _, err) = add(lot.path(), &[&["--id", "gull"], args.as_slice()].concat());
        assert_eq!(code, 0, "{err}");
        let play = tempfile::tempdir().unwrap();
        let (code, out, err) =
            run(&["rehearse", "--lot", text(lot.path()), "--unit", "gull", "--out", text(play.path())]);
        assert_eq!(code, 0, "{args:?}: {err}");
        let record = std::fs::read(out.lines().last().unwrap()).unwrap();
        // Entries are stored as they are, so that the text can be read from the file itself.
        let all = String::from_utf8_lossy(&record);
        let from = all.find("data/record.txt").unwrap();
        let page = &all[from..];
        let shown =
            &page[page.find("What staff showed").unwrap()..page.find("FIGURES AS OF THE CLOSING").unwrap()];
        assert!(!shown.contains('⟨') && !shown.contains("{ $") && !shown.contains("{$"), "a hole");
        for word in lacks {
            let line =
                shown.lines().find(|line| line.to_lowercase().contains(word) && !line.contains(" no "));
            assert_eq!(line, None, "{word}, which the unit lacks");
        }
        assert!(page.contains("weight.uvw = not-known (sheet)"), "the record tells what was not known");
        assert!(all.contains("\"not_known\""));
    }
}

#[test]
fn a_copy_has_what_is_its_own_left_open() {
    let lot = new_lot();
    for (id, from) in [("gull", "wren"), ("skua", "heron"), ("smew", "plover"), ("tern", "gull")] {
        let (code, _, err) = add(lot.path(), &["--id", id, "--copy", from]);
        assert_eq!((code, err.as_str()), (0, ""), "{id}");
    }
    assert_eq!(faults(lot.path()), Vec::<String>::new());
    let sheet =
        |id: &str| std::fs::read_to_string(lot.path().join(format!("walkthroughs/units/{id}.ron"))).unwrap();
    for id in ["gull", "tern"] {
        let text = sheet(id);
        assert!(text.contains(&format!("id: \"{id}\"")) && !text.contains("\"wren"), "{id}");
        assert_eq!(text.matches("\"weight.uvw\"").count(), 1, "{id}");
    }
}
