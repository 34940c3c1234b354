//! A process that writes a walk is killed in the middle, again and again.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::print_stdout,
    reason = "helpers of tests may fail loudly"
)]

use std::ffi::OsString;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};

use sendoff::journal::{Keeper, Writer, journal_path, recover};
use sendoff::ports::Disk;
use sendoff::ports::system::SystemDisk;
use sendoff::walk::{Entry, Event, Phase};

use crate::walk::support::{began, entries, mark, opening, round, route, signing};

/// Set for the child, which is this test binary again: the data folder it writes in.
const CHILD: &str = "SENDOFF_CRASH_CHILD";
const KILLS: usize = 220;

fn child_folder() -> Option<OsString> {
    std::env::var_os(CHILD)
}

/// A long walk: many marks before the signatures.
fn long_walk() -> Vec<Entry> {
    let marks = (2..120).map(mark);
    let events = [began()].into_iter().chain(opening()).chain(round());
    entries(events.chain(marks).chain(signing()).collect::<Vec<Event>>())
}

fn path(data: &Path) -> PathBuf {
    journal_path(data, "t2-000001")
}

/// Not a test of its own: what the child of [`a_killed_writer_loses_nothing`] does. It begins the walk, or goes on
/// with it, and prints `acked N` when event N is safe.
#[test]
fn child_writes_a_walk() {
    let Some(data) = child_folder().map(PathBuf::from) else { return };
    let walk = long_walk();
    let mut out = std::io::stdout();
    let mut say = |number: usize| {
        out.write_all(format!("\nacked {number}\n").as_bytes()).unwrap();
        out.flush().unwrap();
    };
    let keeper = match Keeper::resume(&SystemDisk, &path(&data), route()) {
        Ok(resumed) => resumed.keeper,
        Err(_) => {
            let keeper = Keeper::begin(&SystemDisk, &path(&data), route(), &walk[0]).unwrap();
            say(1);
            keeper
        }
    };
    let done = keeper.walk().events();
    let writer = Writer::spawn(keeper).unwrap();
    for entry in &walk[done..] {
        let now = writer.ask(entry.clone()).recv().unwrap().unwrap();
        say(now.events());
    }
}

fn spawn(data: &Path) -> (Child, BufReader<ChildStdout>) {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "crash::child_writes_a_walk", "--nocapture", "--test-threads=1"])
        .env(CHILD, data)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let out = BufReader::new(child.stdout.take().unwrap());
    (child, out)
}

/// The next number the child says is safe; none when it has ended.
fn next_acked(out: &mut impl BufRead) -> Option<usize> {
    let mut line = String::new();
    loop {
        line.clear();
        if out.read_line(&mut line).unwrap() == 0 {
            return None;
        }
        if let Some(number) = line.strip_prefix("acked ").and_then(|n| n.trim_end().parse().ok()) {
            return line.ends_with('\n').then_some(number);
        }
    }
}

/// A small generator, so that the kills fall elsewhere each time but the same on each run as far as time lets them.
fn random(state: &mut u64, end: u64) -> u64 {
    *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    (*state >> 33) % end
}

/// Lets a child write until some events are safe, waits a little without a clock, and kills it. What it said is
/// safe last, and whether it was killed before its end.
fn write_and_kill(data: &Path, state: &mut u64) -> (usize, bool) {
    let (mut child, mut out) = spawn(data);
    let mut last = 0;
    for _ in 0..random(state, 12) {
        match next_acked(&mut out) {
            Some(number) => last = number,
            None => break,
        }
    }
    for spin in 0..random(state, 40_000) {
        std::hint::black_box(spin);
    }
    child.kill().unwrap();
    let status = child.wait().unwrap();
    while let Some(number) = next_acked(&mut out) {
        last = number;
    }
    assert!(status.success() || status.code().is_none(), "the child failed: {status}");
    (last, status.code().is_none())
}

#[test]
fn a_killed_writer_loses_nothing() {
    let walk = long_walk();
    let (mut state, mut kills, mut walks, mut torn) = (7, 0, 0, 0);
    while kills < KILLS {
        let data = tempfile::tempdir().unwrap();
        SystemDisk.make_dir(&data.path().join("walks")).unwrap();
        let mut safe = 0;
        while safe < walk.len() && kills < KILLS {
            let (said, killed) = write_and_kill(data.path(), &mut state);
            safe = safe.max(said);
            kills += usize::from(killed);
            let Ok(read) = recover(&SystemDisk, &path(data.path())) else {
                assert_eq!(safe, 0, "events were acknowledged and there is no journal");
                continue;
            };
            assert!(read.entries.len() >= safe, "{} of {safe} acknowledged events", read.entries.len());
            assert_eq!(read.entries, walk[..read.entries.len()]);
            assert_eq!(read.damage, None);
            torn += usize::from(read.cut.is_some());
            safe = read.entries.len();
        }
        // And the walk goes on from there to its end.
        if recover(&SystemDisk, &path(data.path())).is_ok() {
            let mut keeper = Keeper::resume(&SystemDisk, &path(data.path()), route()).unwrap().keeper;
            for entry in &walk[keeper.walk().events()..] {
                keeper.propose(entry).unwrap();
            }
            assert_eq!(keeper.walk().phase(), Phase::SealBegun);
            assert_eq!(recover(&SystemDisk, &path(data.path())).unwrap().entries, walk);
            walks += 1;
        }
    }
    println!("{kills} kills in {walks} walks, {torn} torn lines");
    assert!(walks >= 5, "{walks}");
}
