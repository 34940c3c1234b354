//! Appending an event to the journal against writing and syncing the same bytes to a bare file, in one run.
//!
//! Both lie in the same folder and are written in turn, so that whatever else the disk does falls on both. Prints
//! the ratio of the medians; the bar is 1.1.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a bench measures the bare system calls and prints"
)]

use std::fs::{File, OpenOptions};
use std::io::Write as _;
use std::path::Path;
use std::time::{Duration, Instant};

use sendoff::journal::{Journal, line};
use sendoff::ports::system::SystemDisk;
use sendoff::walk::{Answer, Entry, Event, PersonId, Shown};

const EVENTS: u32 = 2000;

/// An answer to a caution: the most frequent event, and of a usual length.
fn entry(number: u32) -> Entry {
    let shown = Shown { text: "ab".repeat(32), language: "en-US".into() };
    let event = Event::CautionAnswered {
        caution: format!("grey-black-dump-{number}"),
        version: 1,
        by: PersonId(1),
        how: Answer::Hold,
        shown,
        looked_ms: 2400 + number,
    };
    Entry { at: "2026-07-03T16:00:00Z".parse().unwrap(), offset_minutes: -240, event }
}

fn bare(path: &Path) -> File {
    OpenOptions::new().append(true).create(true).open(path).unwrap()
}

fn timed(work: impl FnOnce()) -> Duration {
    let start = Instant::now();
    work();
    start.elapsed()
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap()
}

fn main() {
    // On the disk of the build, since the temporary folder may lie in memory, where a sync costs nothing.
    let dir = tempfile::tempdir_in(env!("CARGO_MANIFEST_DIR")).unwrap();
    let began = Event::AgentOn { code: "K4".into() };
    let first = Entry { event: began, ..entry(0) };
    let mut journal = Journal::create(&SystemDisk, &dir.path().join("walk.journal"), &first).unwrap();
    let mut file = bare(&dir.path().join("bare"));
    let (mut ours, mut floor) = (Vec::new(), Vec::new());
    for number in 0..EVENTS {
        let entry = entry(number);
        let bytes = line::encode(&entry).unwrap();
        ours.push(timed(|| assert_eq!(journal.append(&entry).unwrap(), u64::from(number) + 2)));
        floor.push(timed(|| {
            file.write_all(&bytes).unwrap();
            file.sync_data().unwrap();
        }));
    }
    let (ours, floor) = (median(ours), median(floor));
    let ratio = ours.as_secs_f64() / floor.as_secs_f64();
    println!("journal append {ours:?}, write + fdatasync {floor:?}, ratio {ratio:.3} (bar 1.1)");
}
