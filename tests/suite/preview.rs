//! `sendoff preview`: every page as a picture, in walking order, the same bytes each time.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::{Arc, Mutex};

use clap::Parser as _;
use sendoff::commands::{Cli, Console, Task};
use sendoff::ports::system;
use sendoff::script::Bundle;

/// A stream that is kept.
#[derive(Clone, Default)]
struct Kept(Arc<Mutex<Vec<u8>>>);

impl Kept {
    fn text(&self) -> String {
        String::from_utf8(self.0.lock().unwrap().clone()).unwrap()
    }
}

impl std::io::Write for Kept {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.lock().unwrap().extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

/// Exit code and both streams of a command line.
fn run(line: &[&str]) -> (u8, String, String) {
    let cli = Cli::try_parse_from(["sendoff", "preview"].iter().chain(line)).unwrap();
    let Task::Command(command) = cli.task() else { panic!("no command") };
    let (out, err) = (Kept::default(), Kept::default());
    let mut console = Console::new(Box::new(out.clone()), Box::new(err.clone()));
    let code = sendoff::commands::run(&command, &system::ports(), &[], &mut console);
    (code, out.text(), err.text())
}

/// The demo lot with two topics alone, so that its pages are few.
fn small_lot() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    let demo = Bundle::demo();
    for name in demo.names() {
        let topic = name.strip_prefix("walkthroughs/topics/");
        if topic.is_some_and(|t| t != "keys.ron" && t != "loaned-kit.ron") {
            continue;
        }
        let path = dir.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, demo.get(name).unwrap()).unwrap();
    }
    dir
}

/// Every file of a folder with its bytes.
fn files(dir: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries = std::fs::read_dir(dir).unwrap().flatten();
    entries.map(|e| (e.file_name().into_string().unwrap(), std::fs::read(e.path()).unwrap())).collect()
}

#[test]
fn every_page_is_drawn_in_walking_order_and_the_same_each_time() {
    let lot = small_lot();
    let outs = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    for out in &outs {
        let lot = lot.path().to_str().unwrap();
        let line = ["--lot", lot, "--unit", "wren", "--size", "640x400", "--out"];
        let (code, said, told) = run(&[&line[..], &[out.path().to_str().unwrap()]].concat());
        assert_eq!(code, 0, "{said}{told}");
        assert!(said.contains("pictures in") && told.contains("010-keys\n"), "{said}{told}");
    }
    let [one, two] = outs.map(|out| files(out.path()));
    assert!(one == two, "the same input gives the same bytes");
    let names: Vec<&str> = one.keys().map(String::as_str).collect();
    let at = |part: &str| {
        names.iter().position(|n| n.contains(part)).unwrap_or_else(|| panic!("{part}: {names:#?}"))
    };
    let order = [
        "000-yard",
        "001-opening-trip",
        "opening-ready",
        "010-keys.png",
        "keys-question",
        "loaned-kit.png",
        "keys-door-caution",
        "give-back",
        "closing-take",
        "closing-consent",
        "closing-sign",
        "closing-copy",
        "sealed",
    ];
    for pair in order.windows(2) {
        assert!(at(pair[0]) < at(pair[1]), "{pair:?} in {names:#?}");
    }
    assert!(names.iter().any(|n| n.starts_with("contact-sheet")), "{names:#?}");
    for (name, bytes) in one.iter().filter(|(n, _)| !n.starts_with("contact-sheet")) {
        let picture = image::load_from_memory(bytes).unwrap().into_rgba8();
        assert_eq!(picture.dimensions(), (640, 400), "{name}");
        let first = *picture.get_pixel(0, 0);
        assert!(picture.pixels().any(|p| *p != first), "{name} is of one color");
    }
}

#[test]
fn what_there_is_not_is_refused_with_what_is_near() {
    let out = tempfile::tempdir().unwrap();
    let out = out.path().to_str().unwrap();
    for (line, part) in [
        (["--unit", "wrem", "--size", "1280x800"], "did you mean `wren`?"),
        (["--unit", "wren", "--lang", "en-UK"], "did you mean `en-US`?"),
        (["--unit", "wren", "--size", "1280"], "as 1280x800"),
        (["--unit", "wren", "--size", "100x800"], "the nearest is 320x800"),
    ] {
        let (code, said, told) = run(&[&line[..], &["--out", out]].concat());
        assert_eq!((code, said.as_str()), (2, ""), "{line:?}");
        assert!(told.contains(part), "{line:?}: {told}");
    }
    assert!(files(Path::new(out)).is_empty(), "nothing was drawn");
    assert!(
        Cli::try_parse_from(["sendoff", "preview", "--unit", "wren", "--out", out, "--theme", "dark"])
            .is_err()
    );
    assert!(Cli::try_parse_from(["sendoff", "--edit"]).is_err(), "there must be a folder to edit");
}
