//! Taking records in and auditing them, against their floor in the same run: reading the same files, SHA-256 of their
//! bytes and one Ed25519 signature a record, on all cores. And the memory that an audit takes, which must not grow with
//! the bytes of an archive.
//!
//! Records are invented and sealed here, a chain of one tablet; how many: the arguments that are numbers.
#![allow(missing_docs, reason = "a bench is a program")]
#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    clippy::disallowed_methods,
    reason = "a bench prints, reads what it made, and may stop"
)]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use jiff::{SignedDuration, Timestamp};
use sendoff::archive::Archive;
use sendoff::archive::audit::audit;
use sendoff::archive::import::{Plan, import};
use sendoff::ports::Ports;
use sendoff::ports::system::{self, SystemDisk};
use sendoff::record::bag;
use sendoff::record::keys::{NAMESPACE, SealFile, TabletKey, allowed_signers_line};
use sendoff::record::seal::{self, Digest, Kind, Sealing};
use sendoff::record::zip;

/// Bytes of the payload of a record.
const PAYLOAD: usize = 100_000;
const COUNTS: [usize; 2] = [2_000, 10_000];
/// Asks for an audit alone.
const AUDIT: &str = "--audit-alone";
/// Rounds of which the fastest counts.
const ROUNDS: usize = 3;

/// Seals a chain of records onto a stick.
fn stick(dir: &Path, count: usize) -> u64 {
    let key = TabletKey::generate([7; 32], "t2").unwrap();
    let first: Timestamp = "2026-01-01T08:00:00Z".parse().unwrap();
    let line = allowed_signers_line(key.public(), "t2", first - SignedDuration::from_hours(24));
    std::fs::write(dir.join("signers"), line + "\n").unwrap();
    std::fs::create_dir(dir.join("stick")).unwrap();
    let (mut previous, mut bytes) = (None, 0);
    for n in 0..count {
        let number = u32::try_from(n + 1).unwrap();
        let id = seal::record_id("t2", key.public(), number);
        let head = format!(
            "{{\"schema\":\"1.0\",\"id\":\"{id}\",\"tablet\":\"t2\",\"number\":{number},\"filler\":\""
        );
        let record = format!("{head}{}\"}}", "x".repeat(PAYLOAD));
        let payload = BTreeMap::from([(bag::RECORD_FILE.to_owned(), record.into_bytes())]);
        let sealed = first + SignedDuration::from_mins(10 * i64::try_from(n).unwrap());
        let what =
            Sealing { tablet: "t2", number, previous, kind: Kind::Handoff, organization: "Bench", sealed };
        let sealed = seal::seal(&what, &payload, &key).unwrap();
        previous = Some(sealed.digest);
        bytes += u64::try_from(sealed.zip.len()).unwrap();
        std::fs::write(dir.join("stick").join(format!("{id}.zip")), sealed.zip).unwrap();
    }
    bytes
}

fn files(dir: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(dir).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() { files(&path, found) } else { found.push(path) }
    }
}

/// Reads the files on all cores, and does the least by which a record can be believed.
fn floor(files: &[PathBuf]) {
    let next = AtomicUsize::new(0);
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                while let Some(file) = files.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let bytes = std::fs::read(file).unwrap();
                    std::hint::black_box(Digest::of(&bytes));
                    let signature = zip::peek(&bytes, bag::SEAL_FILE).unwrap();
                    let list = zip::peek(&bytes, bag::TAG_MANIFEST_FILE).unwrap();
                    assert!(SealFile::parse(signature).unwrap().holds(NAMESPACE, list));
                }
            });
        }
    });
}

fn fastest(mut work: impl FnMut()) -> Duration {
    let time = |_| {
        let start = Instant::now();
        work();
        start.elapsed()
    };
    (0..ROUNDS).map(time).min().unwrap()
}

/// The most memory that was taken since [`forget`], in kB; none where the system does not say.
fn most() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?.split_whitespace().next()?.parse().ok()
}

/// Begins to count memory anew.
fn forget() {
    // Where the system does not do that, the numbers only grow.
    let _ = std::fs::write("/proc/self/clear_refs", "5");
}

/// The most memory that an audit takes in a process of its own: of this one, taking in has left its mark.
fn alone(archive: &Path) -> Option<u64> {
    let this = std::env::current_exe().unwrap();
    let said = std::process::Command::new(this).arg(AUDIT).arg(archive).output().unwrap();
    String::from_utf8(said.stdout).unwrap().trim().parse().ok()
}

/// What such a process does.
fn audit_alone(dir: &Path) {
    let archive = Archive::open(Arc::new(SystemDisk), dir).unwrap();
    let report = audit(&archive, system::ports().clock.now(), &mut |_, _| {}).unwrap();
    assert!(report.holds());
    most().iter().for_each(|most| println!("{most}"));
}

fn run(count: usize) -> Option<u64> {
    let dir = tempfile::tempdir().unwrap();
    let bytes = stick(dir.path(), count);
    let ports: Ports = system::ports();
    let mut archive = Archive::open_or_create(&ports, &dir.path().join("office")).unwrap();
    archive.adopt(&SystemDisk, &dir.path().join("signers")).unwrap();
    let paths = [dir.path().join("stick")];
    let each = |time: Duration| f64::from(u32::try_from(count).unwrap()) / time.as_secs_f64();
    forget();
    let start = Instant::now();
    let summary = import(&archive, Plan { paths: &paths, rehearsals: false }, &ports, &mut |_| {}).unwrap();
    let took = start.elapsed();
    assert!(summary.is_good() && summary.new.len() == count, "{:?}", summary.bad.first());
    println!(
        "{count} records, {} MB: taken in at {:.0}/s, {:?} kB at most",
        bytes / 1_000_000,
        each(took),
        most()
    );
    drop(summary);
    let archive = Archive::open(Arc::new(SystemDisk), archive.dir()).unwrap();
    let mut all = Vec::new();
    files(&archive.dir().join("records"), &mut all);
    assert_eq!(all.len(), count);
    let floor = fastest(|| floor(&all));
    drop(all);
    let audited = fastest(|| {
        let report = audit(&archive, ports.clock.now(), &mut |_, _| {}).unwrap();
        assert!(report.holds() && report.good == count, "{:?}", report.findings.first());
    });
    let memory = alone(archive.dir());
    let ratio = audited.as_secs_f64() / floor.as_secs_f64();
    println!(
        "audit {:.0}/s, floor {:.0}/s, ratio {ratio:.2} (bar 1.15), {memory:?} kB at most",
        each(audited),
        each(floor)
    );
    memory
}

fn main() {
    let mut args = std::env::args().skip(1);
    if args.next().as_deref() == Some(AUDIT) {
        audit_alone(Path::new(&args.next().unwrap()));
        return;
    }
    let given: Vec<usize> = std::env::args().filter_map(|arg| arg.parse().ok()).collect();
    let counts = if given.is_empty() { COUNTS.to_vec() } else { given };
    let memory: Vec<Option<u64>> = counts.iter().map(|count| run(*count)).collect();
    if let [Some(few), .., Some(many)] = memory.as_slice() {
        let more = many.saturating_sub(*few);
        let records = counts.last().unwrap().saturating_sub(*counts.first().unwrap());
        println!("memory grows by {more} kB over {records} records");
    }
}
