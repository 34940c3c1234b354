//! The audit: each kind of damage is found, named rightly, and nothing else is found.

use std::path::{Path, PathBuf};

use sendoff::archive::audit::{Report, audit};
use sendoff::archive::import::{Plan, import};
use sendoff::archive::{Archive, place_of};
use sendoff::commands::{COULD_NOT_RUN, FINDINGS, GOOD};
use sendoff::ports::Disk;
use sendoff::ports::fake::MemoryDisk;
use sendoff::record::keys::TabletKey;
use sendoff::record::seal::{Kind, Sealed};
use sendoff::record::zip::{self, Entry};
use sendoff::words::{Reader, Words};

use super::support::{NOON, OFFICE, STICK, chain, inside, office, on_stick, ports, record, stick, take};
use crate::commands::run_with;
use crate::seal::{key, t2, time};

const LATER: &str = "2026-08-01T12:00:00Z";

fn words() -> Words {
    let files = sendoff::script::EMBEDDED.iter().filter(|(name, _)| name.ends_with(".ftl"));
    let files: Vec<sendoff::source::SourceFile> = files
        .map(|(name, bytes)| sendoff::source::SourceFile::new(name, std::str::from_utf8(bytes).unwrap()))
        .collect();
    Words::load(&files).0
}

fn report(disk: &MemoryDisk) -> Report {
    let archive = Archive::open(ports(disk, LATER).disk, Path::new(OFFICE)).unwrap();
    let before = disk.files();
    let report = audit(&archive, time(LATER), &mut |_, _| {}).unwrap();
    assert_eq!(disk.files(), before, "an audit changes nothing");
    report
}

/// Code and place of all that was found; every finding has words.
fn found(disk: &MemoryDisk) -> Vec<(String, String)> {
    let (report, words) = (report(disk), words());
    for finding in &report.findings {
        let said = finding.say(&words, &Reader::default());
        assert!(!said.contains("archive-") && !said.contains('{') && said.ends_with('.'), "{said}");
    }
    report.findings.into_iter().map(|f| (f.problem.code().to_owned(), f.place)).collect()
}

/// The same where a receipt was taken out by hand: that its log is not what the office signed is told as well.
fn found_beside_log(disk: &MemoryDisk) -> Vec<(String, String)> {
    let log = ("receipt-log".to_owned(), "receipts/2026-06.log".to_owned());
    let (logs, others): (Vec<_>, Vec<_>) = found(disk).into_iter().partition(|found| *found == log);
    assert_eq!(logs, [log]);
    others
}

/// An archive with five records of t2 and two of t3.
fn scene() -> (MemoryDisk, Vec<Sealed>) {
    let mut records = chain(&t2(), 5);
    records.extend(chain(&key(3, "t3"), 2));
    let disk = stick(&records, &[&t2(), &key(3, "t3")]);
    take(&disk, NOON);
    (disk, records)
}

fn at(record: &Sealed) -> PathBuf {
    Path::new(OFFICE).join(place(record))
}

fn place(record: &Sealed) -> String {
    format!("records/2026/06/{}.zip", record.id)
}

fn chain_name(key: &TabletKey) -> String {
    format!("{}-{}", key.comment(), key.public().short())
}

fn remove(disk: &MemoryDisk, path: &Path) {
    disk.remove(path).unwrap();
}

/// Takes a line out of the receipts.
fn forget(disk: &MemoryDisk, record: &Sealed) {
    let log = Path::new("/office/receipts/2026-06.log");
    let text = String::from_utf8(disk.read(log, 1 << 20).unwrap()).unwrap();
    let left: String = text
        .lines()
        .filter(|line| !line.contains(&record.id.to_string()))
        .map(|line| format!("{line}\n"))
        .collect();
    disk.plant(log, left.as_bytes());
}

fn one(code: &str, place: impl Into<String>) -> Vec<(String, String)> {
    vec![(code.to_owned(), place.into())]
}

#[test]
fn a_whole_archive_holds() {
    let (disk, records) = scene();
    let report = report(&disk);
    assert!(report.holds() && report.findings.is_empty(), "{:?}", report.findings);
    assert_eq!((report.files, report.good), (records.len(), records.len()));
}

#[test]
fn a_flipped_byte_anywhere_in_a_record_is_found_there_alone() {
    let (disk, records) = scene();
    let whole = &records[2].zip;
    for at_byte in (0..whole.len()).step_by(97) {
        let mut bytes = whole.clone();
        bytes[at_byte] ^= 0x10;
        disk.plant(&at(&records[2]), &bytes);
        let found = found(&disk);
        assert_eq!(
            (found.len(), found[0].1.as_str()),
            (1, place(&records[2]).as_str()),
            "{at_byte}: {found:?}"
        );
    }
    for bytes in [&b""[..], &whole[..whole.len() / 2], &[&whole[..], b"x"].concat()] {
        disk.plant(&at(&records[2]), bytes);
        assert_eq!(found(&disk), one("not-a-record", place(&records[2])));
    }
}

#[test]
fn moved_copied_and_strange_files_are_told_apart() {
    let (disk, records) = scene();
    let (right, wrong) = (at(&records[0]), Path::new(OFFICE).join("records/2026/07/x.zip"));
    disk.plant(&wrong, &records[0].zip);
    assert_eq!(found(&disk), one("duplicate", "records/2026/07/x.zip"));
    remove(&disk, &right);
    assert_eq!(found(&disk), one("wrong-place", "records/2026/07/x.zip"));
    // Two records that were given each other's name.
    let (disk, records) = scene();
    disk.plant(&at(&records[0]), &records[1].zip);
    disk.plant(&at(&records[1]), &records[0].zip);
    let codes =
        [("wrong-place".to_owned(), place(&records[0])), ("wrong-place".to_owned(), place(&records[1]))];
    assert_eq!(found(&disk), codes);
    let (disk, _) = scene();
    disk.plant(&Path::new(OFFICE).join("records/2026/06/letter.txt"), b"dear office");
    assert_eq!(found(&disk), one("stray-file", "records/2026/06/letter.txt"));
}

#[test]
fn what_is_gone_is_told_by_receipts_links_and_marks() {
    let (disk, records) = scene();
    remove(&disk, &at(&records[2]));
    assert_eq!(found(&disk), one("record-missing", records[2].id.to_string()));
    // Without its receipt as well: the numbers tell.
    forget(&disk, &records[2]);
    assert_eq!(found_beside_log(&disk), one("chain-gap", chain_name(&t2())));
    // The end of a chain: the mark tells.
    let (disk, records) = scene();
    for record in &records[3..5] {
        remove(&disk, &at(record));
        forget(&disk, record);
    }
    assert_eq!(found_beside_log(&disk), one("chain-cut", chain_name(&t2())));
    // A whole chain.
    for record in &records[..3] {
        remove(&disk, &at(record));
        forget(&disk, record);
    }
    assert_eq!(found_beside_log(&disk), one("chain-cut", chain_name(&t2())));
    // A receipt alone.
    let (disk, records) = scene();
    forget(&disk, &records[1]);
    assert_eq!(found_beside_log(&disk), one("no-receipt", place(&records[1])));
}

#[test]
fn forks_reused_numbers_and_other_orders_are_told_apart() {
    let previous = |records: &[Sealed], at: usize| Some(records[at].digest);
    let (disk, records) = scene();
    let late = "2026-06-13T09:00:00Z";
    let quarantined = |disk: &MemoryDisk, extra: &Sealed| {
        disk.plant(&on_stick(extra), &extra.zip);
        let summary = take(disk, NOON);
        assert_eq!(summary.bad[0].1.code, "number-used-twice");
        let found = found(disk);
        assert_eq!(found.len(), 2, "{found:?}");
        assert_eq!(found[0].0, "quarantined");
        found[1].clone()
    };
    let fork = record(&t2(), 3, previous(&records, 1), Kind::Handoff, late);
    assert_eq!(quarantined(&disk, &fork), ("chain-fork".to_owned(), chain_name(&t2())));
    let (disk, records) = scene();
    let reused = record(&t2(), 3, previous(&records, 3), Kind::Handoff, late);
    disk.plant(&on_stick(&reused), &reused.zip);
    take(&disk, NOON);
    let codes: Vec<String> = found(&disk).into_iter().map(|(code, _)| code).collect();
    assert_eq!(codes, ["quarantined", "chain-number-reused", "chain-order"]);
    // A record that goes on from another sixth record than any that is here, and one from the first.
    let (disk, records) = scene();
    let strange = record(&t2(), 6, Some(fork.digest), Kind::Handoff, late);
    disk.plant(&on_stick(&strange), &strange.zip);
    take(&disk, NOON);
    assert_eq!(found(&disk), one("chain-twin", chain_name(&t2())));
    let (disk, _) = (stick(&records[..5], &[&t2()]), ());
    let order = record(&t2(), 6, previous(&records, 0), Kind::Handoff, late);
    disk.plant(&on_stick(&order), &order.zip);
    take(&disk, NOON);
    assert_eq!(found(&disk), one("chain-order", chain_name(&t2())));
}

#[test]
fn a_new_key_and_a_clock_set_back_are_remarks() {
    let (disk, _) = scene();
    let anew = key(8, "t3");
    let records = [record(&anew, 1, None, Kind::Handoff, "2026-06-14T09:00:00Z")];
    let second = record(&anew, 2, Some(records[0].digest), Kind::Handoff, "2026-06-14T08:00:00Z");
    disk.plant(&on_stick(&records[0]), &records[0].zip);
    disk.plant(&on_stick(&second), &second.zip);
    let mut archive = Archive::open(ports(&disk, NOON).disk, Path::new(OFFICE)).unwrap();
    archive.trust(super::support::signers(&[&anew]).trim()).unwrap();
    let paths = [PathBuf::from(STICK)];
    let plan = Plan { paths: &paths, rehearsals: false };
    import(&archive, plan, &ports(&disk, "2026-06-15T12:00:00Z"), &mut |_| {}).unwrap();
    let name = chain_name(&anew);
    assert_eq!(found(&disk), [("chain-new-key".to_owned(), name.clone()), ("chain-clock".to_owned(), name)]);
    assert!(report(&disk).holds());
}

#[test]
fn logs_marks_and_foreign_records_are_found() {
    let (disk, records) = scene();
    let mark = format!("/office/marks/{}", chain_name(&t2()));
    let text = disk.read(Path::new(&mark), 1 << 16).unwrap();
    let lower = String::from_utf8(text).unwrap().replace("-000005", "-000004");
    disk.plant(Path::new(&mark), lower.as_bytes());
    assert_eq!(found(&disk), one("mark-bad", format!("marks/{}", chain_name(&t2()))));
    remove(&disk, Path::new(&mark));
    assert_eq!(found(&disk), one("mark-missing", chain_name(&t2())));
    let (disk, _) = scene();
    let log = Path::new("/office/receipts/2026-06.log");
    let text = disk.read(log, 1 << 20).unwrap();
    disk.plant(log, &[&text[..], b"2026-06-13T12:00"].concat());
    assert_eq!(found(&disk), one("receipt-torn", "receipts/2026-06.log"));
    assert!(report(&disk).holds());
    disk.plant(log, &[b"good morning\n", &text[..]].concat());
    assert_eq!(found(&disk), one("receipt-log", "receipts/2026-06.log"));
    // A record of a tablet that nobody knows, put there by hand.
    let (disk, _) = scene();
    let stranger = record(&key(9, "t9"), 1, None, Kind::Handoff, "2026-06-12T09:00:00Z");
    disk.plant(&at(&stranger), &stranger.zip);
    assert_eq!(found(&disk), one("unknown-tablet", place(&stranger)));
    // Packed anew, with its files in another order.
    let (disk, _) = scene();
    let mut entries = zip::read(&records[0].zip).unwrap();
    entries.swap(0, 1);
    let entries: Vec<Entry<'_>> = entries.clone();
    disk.plant(&at(&records[0]), &zip::write(&entries).unwrap());
    assert_eq!(found(&disk), one("not-a-record", place(&records[0])));
    assert_eq!(place_of(&records[0].id, time("2026-06-30T23:59:59Z")), place(&records[0]));
}

#[test]
fn retired_and_distrusted_tablets_are_judged_at_receipt() {
    let (disk, records) = scene();
    let mut archive = office(&disk, NOON);
    archive.retire("t2", time("2026-06-13T12:00:00Z")).unwrap();
    assert_eq!(found(&disk), []);
    archive.retire("t2", time("2026-06-13T11:59:59Z")).unwrap();
    let all: Vec<(String, String)> =
        records[..5].iter().map(|r| ("not-valid-at-that-time".to_owned(), place(r))).collect();
    assert_eq!(found(&disk), all);
    archive.distrust("t3").unwrap();
    let distrusted = found(&disk).into_iter().filter(|(code, _)| code == "distrusted").count();
    assert_eq!(distrusted, 2);
}

#[test]
fn the_command_says_what_was_found_and_its_code_whether_all_holds() {
    let (disk, records) = scene();
    let world = ports(&disk, LATER);
    let args = ["archive", "audit", "--archive", OFFICE];
    let whole = run_with(&world, &args);
    assert_eq!(
        (whole.code, whole.out.as_str()),
        (GOOD, "7 files read, 7 good records, 0 findings, 0 remarks\n")
    );
    remove(&disk, &at(&records[0]));
    let ran = run_with(&world, &[&args[..], &["--format", "json"]].concat());
    assert_eq!(ran.code, FINDINGS);
    let said: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!((&said["holds"], &said["good"]), (&false.into(), &6.into()));
    assert_eq!(said["findings"][0]["code"], "record-missing");
    assert!(said["findings"][0]["message"].as_str().unwrap().contains("is no longer here"));
    assert_eq!(run_with(&world, &["archive", "audit", "--archive", "/nowhere"]).code, COULD_NOT_RUN);
    assert!(!inside(&disk, "records/").is_empty());
}
