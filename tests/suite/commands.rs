//! The commands through the public door: what they print, where, and their exit codes.

use std::cell::RefCell;
use std::io::Write;
use std::path::Path;
use std::rc::Rc;
use std::sync::Arc;

use clap::Parser as _;
use sendoff::commands::{self, COULD_NOT_RUN, Cli, Console, FINDINGS, GOOD, Task};
use sendoff::ports::fake::{FixedClock, FixedEntropy};
use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Clock, Ports};
use sendoff::record::form;

/// What a command left behind.
pub struct Ran {
    pub code: u8,
    pub out: String,
    pub err: String,
}

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

fn clock() -> Arc<dyn Clock> {
    Arc::new(FixedClock("2026-11-25T12:00:00Z".parse().unwrap()))
}

/// Runs a command with a fixed clock and fixed randomness on the real disk.
fn run(args: &[&str]) -> Ran {
    let ports =
        Ports { disk: Arc::new(SystemDisk), clock: clock(), entropy: Arc::new(FixedEntropy([9; 32])) };
    run_with(&ports, args)
}

/// Runs a command in a world of the caller's choice.
pub fn run_with(ports: &Ports, args: &[&str]) -> Ran {
    let line = ["sendoff"].iter().chain(args);
    let cli = Cli::try_parse_from(line).unwrap_or_else(|e| panic!("{args:?}: {e}"));
    let Task::Command(command) = cli.task() else { panic!("{args:?} is no command") };
    let (out, err) = (Paper::default(), Paper::default());
    let mut console = Console::new(Box::new(out.clone()), Box::new(err.clone()));
    let code = commands::run(&command, ports, &[], &mut console);
    Ran { code, out: out.text(), err: err.text() }
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

fn rehearse(dir: &Path, more: &[&str]) -> Ran {
    let args = ["rehearse", "--unit", "wren", "--at", "2026-07-24T15:00:00Z", "--out", text(dir)];
    run(&args.iter().chain(more).copied().collect::<Vec<_>>())
}

#[test]
fn a_rehearsal_ends_with_the_path_of_a_record_that_verifies() {
    let dir = tempfile::tempdir().unwrap();
    let played = rehearse(dir.path(), &[]);
    assert_eq!(played.code, GOOD, "{}", played.err);
    let record = played.out.lines().last().unwrap().to_owned();
    let signers = dir.path().join("allowed_signers");
    let judged = run(&["verify", &record, "--signers", text(&signers)]);
    assert_eq!(judged.code, GOOD, "{}", judged.out);
    assert!(judged.out.starts_with("good"), "{}", judged.out);
    let json = run(&["verify", &record, "--signers", text(&signers), "--format", "json"]);
    let verdicts: serde_json::Value = serde_json::from_str(&json.out).unwrap();
    assert_eq!(verdicts[0]["good"], true);
    assert_eq!(verdicts[0]["record"]["kind"], "rehearsal");
    let bag = run(&["verify", &record, "--bag-only"]);
    assert_eq!((bag.code, bag.out.starts_with("valid")), (GOOD, true), "{}", bag.out);
    assert!(std::fs::read_dir(dir.path().join("walks")).unwrap().next().is_none(), "the journal is gone");
}

#[test]
fn same_events_key_and_clock_give_the_same_bytes() {
    let (one, two) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let bytes = |dir: &Path| {
        let played = rehearse(dir, &[]);
        std::fs::read(played.out.lines().last().unwrap()).unwrap()
    };
    assert_eq!(bytes(one.path()), bytes(two.path()));
}

#[test]
fn a_second_rehearsal_follows_the_first_in_its_chain() {
    let dir = tempfile::tempdir().unwrap();
    let _ = rehearse(dir.path(), &[]);
    let second = rehearse(dir.path(), &[]);
    assert!(second.out.lines().last().unwrap().ends_with("-000002.zip"), "{}", second.out);
    let records = dir.path().join("records");
    let judged = run(&["verify", text(&records), "--signers", text(&dir.path().join("allowed_signers"))]);
    assert_eq!((judged.code, judged.out.matches("good").count()), (GOOD, 2), "{}", judged.out);
}

#[test]
fn a_list_of_actions_is_played_and_a_refusal_stands_in_the_record() {
    let dir = tempfile::tempdir().unwrap();
    let script = dir.path().join("walk.ron");
    let actions = r#"[
        Agent("B2"),
        Reader(language: "en-US", measures: "metric"),
        Party([(name: "Kim Aster", age: 70, driver: true)]),
        Licence(person: 1, class: "C", country: "US", expiry: "2031-05-01"),
        Present([1]), FirstTime(true), Translator(""),
        Booking(reference: "Q-7", nights: 3, due_back: "2026-07-27T10:00"),
        Trip((nights: 9, people: [], hook_up: [None, Power], highest: "2700 m", use: Careful)),
        Open, Show("keys"), Show("entry-door-steps"),
        Refuse(caution: "entry-door-steps-3", by: 1, reason: "I will not carry it", decision: HandOver),
        NotShown(step: "awning", reason: Weather, note: "wind"),
        Mark(x: "49 in", y: "200 in", kind: Scratch, size: Hand, by: Agent),
        Wait("30 s"), Rest, Seal,
    ]"#;
    std::fs::write(&script, actions).unwrap();
    let played = rehearse(dir.path(), &["--script", text(&script)]);
    assert_eq!(played.code, GOOD, "{}", played.err);
    let bytes = std::fs::read(played.out.lines().last().unwrap()).unwrap();
    let entries = sendoff::record::zip::read(&bytes).unwrap();
    let json = entries.iter().find(|e| e.name.ends_with("record.json")).unwrap().bytes;
    let Ok(form::Record::Handoff(record)) = form::read(json) else { panic!("no record of a handoff") };
    let trip = record.trip.expect("the trip was planned");
    let plan = trip.planned.expect("the trip was planned").plan.trip().expect("a trip");
    assert_eq!((plan.nights, plan.highest), (9, "2700 m".parse().ok()));
    // Nights and people are those of booking and party.
    let counted = trip.counted.and_then(|plan| plan.trip()).expect("the figures had a trip");
    assert_eq!((counted.nights, counted.people.len(), counted.highest), (3, 1, plan.highest));
    let said = entries.iter().find(|e| e.name.ends_with("record.txt")).unwrap().bytes;
    let said = String::from_utf8_lossy(said);
    let refused = said.find("I will not carry it").expect("the refusal stands in the text");
    let cautions = said.find("CAUTIONS AND ANSWERS").unwrap();
    assert!(refused < cautions, "refusals are printed first");
    assert!(said.contains("Kim Aster") && said.contains("kg"));
}

#[test]
fn a_wrong_action_is_named_with_its_place_or_its_number() {
    let dir = tempfile::tempdir().unwrap();
    let script = dir.path().join("walk.ron");
    std::fs::write(&script, "[\n    Agnet(\"B2\"),\n]").unwrap();
    let played = rehearse(dir.path(), &["--script", text(&script)]);
    assert_eq!(played.code, COULD_NOT_RUN);
    assert!(
        played.err.contains("walk.ron:2:5") && played.err.contains("did you mean `Agent`"),
        "{}",
        played.err
    );
    std::fs::write(&script, "[Agent(\"B2\"), Show(\"keys\"), Seal]").unwrap();
    let played = rehearse(dir.path(), &["--script", text(&script)]);
    assert_eq!(played.code, FINDINGS);
    assert!(played.err.contains("action 2"), "{}", played.err);
}

#[test]
fn nothing_is_sealed_without_what_must_be_there() {
    let dir = tempfile::tempdir().unwrap();
    let script = dir.path().join("walk.ron");
    std::fs::write(&script, "[Agent(\"B2\"), Seal]").unwrap();
    let played = rehearse(dir.path(), &["--script", text(&script)]);
    assert_ne!(played.code, GOOD);
    assert!(!dir.path().join("records").exists());
}

#[test]
fn verify_tells_what_failed_and_what_could_not_run() {
    let dir = tempfile::tempdir().unwrap();
    let record = rehearse(dir.path(), &[]).out.lines().last().unwrap().to_owned();
    let signers = dir.path().join("allowed_signers");
    let mut bytes = std::fs::read(&record).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    let bad = dir.path().join("bad.zip");
    std::fs::write(&bad, bytes).unwrap();
    let judged = run(&["verify", text(&bad), "--signers", text(&signers)]);
    assert_eq!(judged.code, FINDINGS, "{}", judged.out);
    assert!(judged.out.starts_with("FAILED"), "{}", judged.out);
    let none = run(&["verify", &record]);
    assert_eq!(none.code, COULD_NOT_RUN);
    assert!(none.err.contains("--signers"), "{}", none.err);
    let other = dir.path().join("none");
    assert_eq!(run(&["verify", &record, "--signers", text(&other)]).code, COULD_NOT_RUN);
    let early = run(&["verify", &record, "--signers", text(&signers), "--received", "2020-01-01T00:00:00Z"]);
    assert_eq!(early.code, FINDINGS);
    assert!(early.out.contains("not-valid-at-that-time"), "{}", early.out);
}

#[test]
fn a_key_is_never_overwritten_and_its_line_is_exact() {
    let dir = tempfile::tempdir().unwrap();
    let data = text(dir.path());
    assert_eq!(run(&["keys", "public", "--data", data]).code, FINDINGS, "no key yet");
    let made = run(&["keys", "new", "--name", "t2", "--data", data]);
    assert_eq!(made.code, GOOD, "{}", made.err);
    let line = run(&["keys", "public", "--data", data]).out;
    assert!(
        line.starts_with("t2 namespaces=\"record@sendoff\",valid-after=\"20261125120000Z\" ssh-ed25519 "),
        "{line}"
    );
    let again = run(&["keys", "new", "--name", "t3", "--data", data]);
    assert_eq!(again.code, FINDINGS);
    assert_eq!(run(&["keys", "public", "--data", data]).out, line);
    let bad = run(&["keys", "new", "--name", "T 2", "--data", text(&dir.path().join("other"))]);
    assert_ne!(bad.code, GOOD);
}

#[test]
fn the_demo_lot_is_clean() {
    let checked = run(&["check"]);
    assert_eq!(checked.code, GOOD, "{}", checked.out);
    let json: serde_json::Value = serde_json::from_str(&run(&["check", "--format", "json"]).out).unwrap();
    assert_eq!(json["clean"], true);
    let walks = json["walks"].as_array().expect("walks").iter().map(|w| w["unit"].as_str().unwrap());
    assert_eq!(walks.collect::<Vec<_>>(), ["heron", "plover", "wren"]);
}

#[test]
fn a_folder_that_holds_no_lot_is_named() {
    let dir = tempfile::tempdir().unwrap();
    let checked = run(&["check", "--lot", text(dir.path())]);
    assert_eq!(checked.code, COULD_NOT_RUN);
    assert!(checked.err.contains("walkthroughs"), "{}", checked.err);
}

#[test]
fn without_a_display_the_kiosk_says_what_works_instead() {
    let dir = tempfile::tempdir().unwrap();
    let out = std::process::Command::new(env!("CARGO_BIN_EXE_sendoff"))
        .args(["--data", text(dir.path())])
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .output()
        .unwrap();
    assert_eq!(out.status.code(), Some(i32::from(COULD_NOT_RUN)));
    let said = String::from_utf8_lossy(&out.stderr);
    assert!(said.contains("display") && said.contains("sendoff rehearse"), "{said}");
}

#[test]
fn help_comes_with_examples() {
    for args in
        [vec!["--help"], vec!["check", "--help"], vec!["rehearse", "--help"], vec!["verify", "--help"]]
    {
        let help = Cli::try_parse_from(["sendoff"].iter().chain(&args)).unwrap_err();
        assert!(help.to_string().contains("Examples:"), "{args:?}");
    }
}

/// Copies the demo lot's files whose names pass into a folder.
fn lot_folder(dir: &Path, keep: impl Fn(&str) -> bool) {
    for (name, bytes) in sendoff::script::EMBEDDED.iter().filter(|(name, _)| keep(name)) {
        let path = dir.join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, bytes).unwrap();
    }
}

#[test]
fn a_lot_without_the_words_of_the_program_speaks_with_the_programs_own() {
    let dir = tempfile::tempdir().unwrap();
    lot_folder(dir.path(), |name| {
        !name.starts_with("i18n/en-US/kiosk") && !name.starts_with("i18n/en-US/record")
    });
    let out = tempfile::tempdir().unwrap();
    let lot = text(dir.path());
    assert_eq!(run(&["check", "--lot", lot]).code, GOOD);
    let played = rehearse(out.path(), &["--lot", lot]);
    assert_eq!(played.code, GOOD, "{}", played.err);
    let bytes = std::fs::read(played.out.lines().last().unwrap()).unwrap();
    let entries = sendoff::record::zip::read(&bytes).unwrap();
    let said = entries.iter().find(|e| e.name.ends_with("record.txt")).unwrap().bytes;
    let said = String::from_utf8_lossy(said);
    assert!(!said.contains('⟨'), "a message is missing");
    assert!(!said.contains("DEMO:"), "a lot of one's own is no demo");
}
