//! The real window under Xvfb: a whole handoff by pointer and keys, with a kill on the way.
//!
//! A kiosk in memory runs beside it and gets the same clicks: it says where things are, and how many events the
//! journal of the window must hold before the next click.

mod pair;

use std::process::Command;

use sendoff::kiosk::screen::Screen;
use sendoff::route::{Scale, Step};
use sendoff::script::Speaker;
use sendoff::words::Reader;

use crate::kiosk_support::{Press, lot};
use crate::seal::has;
use pair::Pair;

/// Tools that the test cannot do without, and how to ask for them.
const TOOLS: [(&str, &[&str]); 3] = [("Xvfb", &["-help"]), ("xdotool", &[]), ("import", &["-version"])];

#[test]
fn a_whole_handoff_by_pointer_ends_in_a_record_that_stock_tools_verify() {
    if !TOOLS.iter().all(|(tool, probe)| has(tool, probe)) {
        return;
    }
    let mut pair = Pair::open();
    pair.click("Start the walk");
    opening(&mut pair);
    pair.kill_and_go_on();
    walk(&mut pair);
    closing(&mut pair);
    let record = pair.record();
    let root = pair.data().to_owned();
    let signers = root.join("allowed_signers");
    let public = pair.sendoff(&["keys", "public"]);
    std::fs::write(&signers, public).unwrap();
    let verdict = pair.sendoff(&["verify", record.to_str().unwrap(), "--signers", signers.to_str().unwrap()]);
    assert!(verdict.starts_with("good"), "{verdict}");
    by_stock_tools(&root, &record);
    pair.close();
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

fn opening(pair: &mut Pair) {
    pair.fill("opening-agent", "JM");
    pair.click("Miles and gallons");
    pair.fill("opening-booking", "Q-1183");
    pair.click("5");
    pair.click("Next");
    pair.fill("opening-name-1", "Ann Marlow");
    pair.fill("opening-age-1", "41");
    pair.click("Drives");
    pair.click("Next");
    for (field, text) in
        [("class", "B"), ("country", "Norway"), ("year", "2031"), ("month", "5"), ("day", "31")]
    {
        pair.fill(&format!("opening-{field}-1"), text);
    }
    // The first is the title of the license.
    pair.click_nth("Ann Marlow", 1);
    pair.click("Next");
    // Nobody must plan a trip.
    pair.click("Next");
    pair.click("First time");
    pair.click("Nobody");
    pair.click("Start the walk");
}

fn walk(pair: &mut Pair) {
    for _ in 0..400 {
        match pair.mirror.screen() {
            Screen::Walk(_) => step(pair),
            Screen::Caution(_) => page(pair),
            Screen::Closing(_) => return,
            other => panic!("not on the way: {other:?}"),
        }
    }
    panic!("the walk does not end");
}

/// Does what the step that is open asks for, and goes on.
fn step(pair: &mut Pair) {
    let lot = lot();
    let speaker = Speaker::new(&lot, "heron", Reader::default()).unwrap();
    let route = pair.mirror.walk().route().clone();
    let Screen::Walk(open) = pair.mirror.screen() else { panic!("no step is open") };
    let step = &route.steps[open.position()];
    if step.kit && pair.mirror.walk().item(&route.items[0].tag).is_none() {
        pair.click(&format!("All {} as listed", route.items.len()));
    }
    if step.readings.iter().any(|r| pair.mirror.walk().reading(&r.id).is_none()) {
        readings(pair, step, &speaker);
    }
    for line in step.leaving.iter().filter(|l| pair.mirror.walk().leaving(l).is_none()).collect::<Vec<_>>() {
        pair.click_id(&format!("leaving-{line}-good"));
    }
    let seen: Vec<String> = pair.mirror.look().words().into_iter().map(str::to_owned).collect();
    let onward = seen.iter().find(|w| {
        ["Shown. Next: ", "Hand over: ", "Next: ", "To the closing"].iter().any(|start| w.starts_with(start))
    });
    let onward = onward.unwrap_or_else(|| panic!("nothing leads on: {seen:#?}")).clone();
    pair.click(&onward);
}

fn readings(pair: &mut Pair, step: &Step, speaker: &Speaker<'_>) {
    pair.click(&speaker.say(&format!("reading-{}", step.readings[0].id)));
    let mut gauges = 0;
    for (index, reading) in step.readings.iter().enumerate() {
        match &reading.scale {
            Scale::Parts(parts) => {
                pair.click_nth(&format!("{}/{parts}", parts - 1), gauges);
                gauges += 1;
            }
            Scale::Number { measure, .. } => {
                let value = match measure.as_str() {
                    "mi" => "48213.4",
                    "h" => "612.4",
                    "psi" => "75",
                    _ => "12.6",
                };
                pair.fill(&format!("walk-reading-{}", index + 1), value);
            }
            Scale::Choice(words) => {
                // Two cylinders offer the same words.
                let before = step.readings[..index].iter().filter(|r| r.scale == reading.scale).count();
                pair.click_nth(&speaker.say(&format!("choice-{}", words[0])), before);
            }
        }
    }
    let keep = match step.readings.len() {
        1 => "Keep the reading".to_owned(),
        n => format!("Keep {n} readings"),
    };
    pair.click(&keep);
}

/// Answers the renter's page that is open.
fn page(pair: &mut Pair) {
    if pair.mirror.shows("I am the agent. Go on") {
        return pair.click("I am the agent. Go on");
    }
    pair.read_to_the_end();
    for read in ["I have read this", "I have read all of this"] {
        if pair.mirror.shows(read) {
            return pair.click(read);
        }
    }
    if !pair.mirror.presses(false).is_empty() {
        return demonstration(pair);
    }
    pair.hold("Press and hold");
}

/// Does the demonstrations of the page that is open; the first part once wrongly.
fn demonstration(pair: &mut Pair) {
    let asked = pair.mirror.asked();
    for _ in 0..200 {
        let tried = pair.mirror.walk().attempts(&asked.as_ref().unwrap().0.id).len();
        for press in pair.mirror.presses(tried == 0) {
            match press {
                Press::Words(words, nth) => pair.click_nth(&words, nth),
                Press::Id(id) => pair.click_id(id),
            }
        }
        if pair.mirror.asked() != asked {
            return;
        }
    }
    panic!("the demonstration does not end: {:#?}", pair.mirror.look().words());
}

fn closing(pair: &mut Pair) {
    pair.click("Go on to sign");
    pair.click("On a screen");
    pair.click("Go on to sign");
    for _ in 0..2 {
        pair.sign("Write with a finger or a pen. Then press Done.");
        pair.click("Done");
    }
    pair.click("A picture of the screen");
    pair.click_last("Seal the record");
    assert!(matches!(pair.mirror.screen(), Screen::Sealed(_)), "{:?}", pair.mirror.app.notice());
}
