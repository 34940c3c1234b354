//! The real window under Xvfb: whole handoffs by pointer and keys, lying and upright, with kills and turns on the way.
//!
//! A kiosk in memory runs beside it and gets the same clicks: it says where things are, and how many events the
//! journal of the window must hold before the next click.

use std::process::Command;

use jiff::Timestamp;
use sendoff::kiosk::screen::Screen;

use crate::deeds;
use crate::display::{Display, Window, can_open_windows};
use crate::handoff::{Hands as _, lead, mark};
use crate::kiosk_support::{SIZES, Setup};
use crate::pair::Pair;
use crate::random::scene;
use crate::tools::has;

/// Leads a handoff in a window that begins in this size, is turned on the way and comes back, and is killed behind so
/// many pages: first where staff lead on, at last where the renter reads. What is sealed must be good, and tell what
/// was done.
fn handoff(size: (f32, f32), kills: &[usize]) {
    let began = Timestamp::now();
    let mut pair = Pair::open(&Setup::new().size(size));
    let mut marked: Vec<String> = Vec::new();
    let mut kills = kills.to_vec();
    let done = lead(&mut pair, |pair, pages| {
        let turned = if pages % 12 >= 8 { (size.1, size.0) } else { size };
        if pair.mirror.setup.size != turned {
            pair.turn(turned);
        }
        let staff = matches!(pair.mirror.screen(), Screen::Walk(_));
        if kills.first().is_some_and(|kill| pages >= *kill && staff == (kills.len() > 1)) {
            kills.remove(0);
            pair.kill_and_go_on();
        }
        if !matches!(pair.mirror.screen(), Screen::Walk(_)) {
            return;
        }
        if marked.is_empty() && turned.0 > turned.1 {
            marked.push(mark(pair));
        }
    });
    assert!(kills.is_empty(), "it was killed as often as it was to be");
    let record = pair.record();
    let root = pair.data().to_owned();
    let signers = root.join("allowed_signers");
    let public = pair.sendoff(&["keys", "public"]);
    std::fs::write(&signers, public).unwrap();
    let verdict = pair.sendoff(&["verify", record.to_str().unwrap(), "--signers", signers.to_str().unwrap()]);
    assert!(verdict.starts_with("good"), "{verdict}");
    by_stock_tools(&root, &record);
    let told = deeds::record(&std::fs::read(&record).unwrap());
    deeds::agree(&told, &done, &marked, (began, Timestamp::now()));
}

#[test]
fn a_handoff_by_pointer_that_begins_lying_is_sealed_as_it_was_done() {
    if can_open_windows() {
        handoff(SIZES[0], &[0, 31, 60]);
    }
}

#[test]
fn a_handoff_by_pointer_that_begins_upright_is_sealed_as_it_was_done() {
    if can_open_windows() {
        handoff(SIZES[2], &[0, 17, 90]);
    }
}

#[test]
fn the_window_closes_for_a_pin_and_for_nothing_else() {
    if !can_open_windows() {
        return;
    }
    let mut pair = Pair::open(&scene::setup("yard", &mut scene::Dice::new(1)));
    pair.ask_to_close();
    let (end, question) = (pair.mirror.say("gate-end"), pair.mirror.say("gate-close"));
    assert!(pair.mirror.shows(&question));
    pair.press_last("JM");
    for wrong in ["1", "2", "3", "4"] {
        pair.press_last(wrong);
    }
    pair.press_last(&end);
    assert!(pair.mirror.shows(&pair.mirror.say("gate-wrong")));
    pair.ask_to_close();
    for digit in scene::PIN.chars() {
        pair.press_last(&digit.to_string());
    }
    pair.press_at_the_end(&end);
    assert!(pair.mirror.app.exits());
    assert!(pair.window.ended_well(), "{}", pair.window.complaints());
    assert_eq!(pair.window.complaints(), "");
}

/// Starts the kiosk where it cannot come to stand: its code, and what it complains of.
fn cannot_stand(display: &Display, more: &[&str], data: &std::path::Path) -> (Option<i32>, String) {
    let mut kiosk = display.command(env!("CARGO_BIN_EXE_sendoff"));
    let out = kiosk.args(["--windowed", "--data"]).arg(data).args(more).output().unwrap();
    (out.status.code(), String::from_utf8(out.stderr).unwrap())
}

#[test]
fn a_lot_that_cannot_be_used_and_a_folder_in_use_end_the_program_with_their_reason() {
    if !can_open_windows() {
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let (lot, data) = (folder.path().join("lot"), folder.path().join("data"));
    let made = Command::new(env!("CARGO_BIN_EXE_sendoff")).args(["lot", "new"]).arg(&lot).output().unwrap();
    assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
    let display = Display::start();
    let mut first = Window::open(&display, &data);
    let (code, said) = cannot_stand(&display, &[], &data);
    assert_eq!(code, Some(2), "{said}");
    assert!(said.contains("data") && said.lines().count() == 1, "{said}");
    assert!(first.lives());
    first.kill();
    std::fs::write(lot.join("walkthroughs/hazards.ron"), "[").unwrap();
    let (code, said) = cannot_stand(&display, &["--lot", lot.to_str().unwrap()], &data);
    assert_eq!(code, Some(2), "{said}");
    assert!(said.contains("walkthroughs/hazards.ron:1:"), "{said}");
}

/// Unpacks the record and lets stock tools judge it.
fn by_stock_tools(root: &std::path::Path, record: &std::path::Path) {
    let id = record.file_stem().unwrap().to_str().unwrap().to_owned();
    let unpack = "import sys, zipfile; zipfile.ZipFile(sys.argv[1]).extractall(sys.argv[2])";
    let done = Command::new("python3").args(["-c", unpack]).arg(record).arg(root).status().unwrap();
    assert!(done.success());
    let bag = root.join(id);
    if has("ssh-keygen", &[]) {
        let list = std::fs::File::open(bag.join("tagmanifest-sha256.txt")).unwrap();
        let seal = Command::new("ssh-keygen")
            .args(["-Y", "verify", "-I", "t2", "-n", "record@sendoff", "-s"])
            .arg(bag.join("seal.sshsig"))
            .arg("-f")
            .arg(root.join("allowed_signers"))
            .stdin(list)
            .output()
            .unwrap();
        assert!(seal.status.success(), "{}", String::from_utf8_lossy(&seal.stderr));
    }
    if has("python3", &["-c", "import bagit"]) {
        let judged = Command::new("python3").args(["-m", "bagit", "--validate"]).arg(&bag).output().unwrap();
        assert!(judged.status.success(), "{}", String::from_utf8_lossy(&judged.stderr));
    }
}
