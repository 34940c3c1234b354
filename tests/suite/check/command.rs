//! `sendoff check`: exit codes, what people read, what programs read.

use std::sync::Arc;

use super::{KITE, KITE_WORDS, lot, text_of};

/// A stream that is kept.
#[derive(Clone, Default)]
struct Kept(Arc<std::sync::Mutex<Vec<u8>>>);

impl Kept {
    fn text(&self) -> String {
        String::from_utf8(self.0.lock().expect("a lock").clone()).expect("a text")
    }
}

impl std::io::Write for Kept {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.lock().expect("a lock").extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

/// Exit code and both streams of a command line.
fn run(line: &[&str]) -> (u8, String, String) {
    use clap::Parser as _;
    use sendoff::commands::{Cli, Console, Task};
    let cli =
        Cli::try_parse_from(std::iter::once("sendoff").chain(line.iter().copied())).expect("a command line");
    let Task::Command(command) = cli.task() else { panic!("no command") };
    let (out, err) = (Kept::default(), Kept::default());
    let mut console = Console::new(Box::new(out.clone()), Box::new(err.clone()));
    let code = sendoff::commands::run(&command, &sendoff::ports::system::ports(), &[], &mut console);
    (code, out.text(), err.text())
}

/// The lot in a folder on the disk, with texts swapped.
fn on_disk(changes: &[(&str, &str, &str)]) -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    let mut files = lot();
    for (name, swap, by) in changes {
        let new = text_of(&files, name).replacen(swap, by, 1);
        let _ = files.insert((*name).into(), Arc::from(new.into_bytes()));
    }
    for (name, content) in files {
        let path = dir.path().join(name);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(path, content).expect("a file");
    }
    dir
}

#[test]
fn a_clean_lot_exits_with_0() {
    let (code, out, err) = run(&["check"]);
    assert_eq!((code, err.as_str()), (0, ""), "{out}");
    assert!(out.lines().any(|l| l.starts_with("wren: ")), "{out}");
    let last = out.lines().last().unwrap_or_default();
    assert!(last.starts_with("no faults, "), "{last}");
    // Notes are no findings.
    let dir = on_disk(&[(KITE, "minutes: 2,", "minutes: 2, picture: \"kyte\",")]);
    let (code, out, _) = run(&["check", "--lot", &dir.path().display().to_string()]);
    assert_eq!(code, 0, "{out}");
    assert!(out.contains("note [picture.missing] there is no picture `kyte`"), "{out}");
}

#[test]
fn pages_are_measured_when_asked() {
    let word = "w".repeat(900);
    let dir = on_disk(&[(KITE_WORDS, "Show the string.", &word), (KITE, "readings: [\"fuel\"],", "")]);
    let at = dir.path().display().to_string();
    let (code, out, err) = run(&["check", "--lot", &at]);
    assert_eq!((code, err.as_str()), (0, ""), "nobody measures without being asked: {out}");
    let (code, out, err) = run(&["check", "--lot", &at, "--fit"]);
    assert_eq!((code, err.as_str()), (1, ""), "{out}");
    let mut told = out.lines().filter(|l| l.contains("[page.overflow]")).peekable();
    assert!(told.peek().is_some(), "{out}");
    assert!(told.all(|l| l.starts_with("fault [page.overflow] `kite` on `wren`: ")), "{out}");
    assert!(out.contains(KITE), "the step's place: {out}");
    // What cannot be read cannot be measured, and that is said.
    let dir = on_disk(&[("walkthroughs/lot.ron", "gallon: Us", "gallon: Uz")]);
    let (code, out, err) = run(&["check", "--lot", &dir.path().display().to_string(), "--fit"]);
    assert_eq!(code, 1, "{out}");
    assert!(err.contains("the pages were not measured"), "{err}");
}

#[test]
fn units_topics_and_guides_are_counted() {
    let (_, out, _) = run(&["check"]);
    let line = out.lines().rev().nth(1).unwrap_or_default();
    let numbers: Vec<usize> = line.split(' ').filter_map(|word| word.parse().ok()).collect();
    let demo = sendoff::script::Bundle::demo();
    let count = |folder: &str| demo.names().filter(|name| name.starts_with(folder)).count();
    let folders = ["walkthroughs/units/", "walkthroughs/topics/", "walkthroughs/guides/"];
    assert_eq!(numbers, folders.map(count), "{line}");
}

#[test]
fn findings_exit_with_1_and_show_the_place() {
    let dir = on_disk(&[(KITE, "minutes: 2,", "\tminuts: 2,"), (KITE, "who: Party", "who: \u{1b}[31mParty")]);
    let (code, out, err) = run(&["check", "--lot", &dir.path().display().to_string()]);
    assert_eq!((code, err.as_str()), (1, ""), "{out}");
    assert!(!out.contains('\u{1b}'), "nothing of a file moves the cursor: {out:?}");

    let dir = on_disk(&[(KITE, "            minutes: 2,", "\t\tminuts: 2,")]);
    let (code, out, _) = run(&["check", "--lot", &dir.path().display().to_string()]);
    assert_eq!(code, 1);
    let wanted = "\
fault [form.unknown-field] there is no field `minuts` here
  at walkthroughs/topics/kite.ron:10:3
  10 |   minuts: 2,
     |   ^^^^^^
  help: did you mean `minutes`?
";
    assert!(out.contains(wanted), "{out}");
    assert!(out.lines().last().unwrap_or_default().starts_with("1 fault, "), "{out}");
}

#[test]
fn what_is_no_lot_exits_with_2() {
    let dir = tempfile::tempdir().expect("a folder");
    let (code, out, err) = run(&["check", "--lot", &dir.path().display().to_string()]);
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(err.starts_with("sendoff: ") && err.contains("walkthroughs"), "{err}");
}

/// Programs read this: names and kinds of values do not change.
#[test]
fn json_has_the_same_form_always() {
    let dir = on_disk(&[(KITE, "minutes: 2,", "minuts: 2,")]);
    let (code, out, _) = run(&["check", "--format", "json", "--lot", &dir.path().display().to_string()]);
    assert_eq!(code, 1);
    let json: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let fault = json["faults"].as_array().expect("a list").iter().find(|f| f["code"] == "form.unknown-field");
    let wanted = serde_json::json!({
        "severity": "fault",
        "code": "form.unknown-field",
        "file": "walkthroughs/topics/kite.ron",
        "line": 10,
        "col": 13,
        "what": "there is no field `minuts` here",
        "hint": "did you mean `minutes`?",
    });
    assert_eq!(fault, Some(&wanted));
    assert_eq!(json["clean"], false);

    let (code, out, _) = run(&["check", "--format", "json"]);
    let json: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!((code, &json["clean"]), (0, &serde_json::json!(true)));
    let names: Vec<&str> = json.as_object().expect("fields").keys().map(String::as_str).collect();
    assert_eq!(names, ["clean", "faults", "walks"]);
    let walk = json["walks"][0].as_object().expect("a walk");
    let names: Vec<&str> = walk.keys().map(String::as_str).collect();
    let wanted = ["cautions", "hand_overs", "meters", "minutes", "reading_seconds", "steps", "stops", "unit"];
    assert_eq!(names, wanted);
    assert!(walk["minutes"].is_u64() && walk["unit"].is_string());
}
