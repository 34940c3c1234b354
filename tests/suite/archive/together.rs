//! Several paths in one import, and records that are filed a few at a time: in order, each once, one receipt a folder.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use sendoff::archive::Archive;
use sendoff::archive::import::{Outcome, Plan, Summary, import};
use sendoff::ports::Disk;
use sendoff::ports::fake::MemoryDisk;
use sendoff::record::seal::Kind;

use super::export::{copy, scene};
use super::support::{NOON, OFFICE, chain, inside, office, on_stick, ports, record, stick, text};
use crate::seal::{key, t2};

const YEARS_LATER: &str = "2031-01-01T12:00:00Z";

fn take(disk: &MemoryDisk, archive: &str, list: &str, paths: &[&str], at: &str) -> Summary {
    let world = ports(disk, at);
    let mut archive = Archive::open_or_create(&world, Path::new(archive)).unwrap();
    archive.adopt(disk, Path::new(list)).unwrap();
    let paths: Vec<PathBuf> = paths.iter().map(PathBuf::from).collect();
    import(&archive, Plan { paths: &paths, rehearsals: false }, &world, &mut |_| {}).unwrap()
}

/// The tablet of the stick is retired; with the copy came the times at which its records were received.
#[test]
fn what_one_path_tells_counts_for_the_next() {
    let disk = scene();
    copy(&disk).unwrap();
    let first = &chain(&t2(), 3)[0];
    disk.plant(&Path::new("/given").join(format!("{}.zip", first.id)), &first.zip);
    let list = "/copy/trust/allowed_signers";
    let after = take(&disk, "/one", list, &["/copy", "/given"], YEARS_LATER);
    assert_eq!((after.new.len(), after.known, after.bad.len()), (5, 1, 0), "{after:?}");
    // The receipt beside it says when it was received first.
    let receipt = text(&disk, after.receipts[0].to_str().unwrap());
    assert!(receipt.contains(NOON), "{receipt}");
    let before = take(&disk, "/two", list, &["/given", "/copy"], YEARS_LATER);
    let codes: Vec<&str> = before.bad.iter().map(|(_, bad)| bad.code).collect();
    assert_eq!((before.new.len(), codes), (5, vec!["not-valid-at-that-time"]));
}

#[test]
fn many_are_told_in_order_whatever_lies_between_them() {
    let records = chain(&t2(), 80);
    let disk = stick(&records, &[&t2()]);
    disk.plant(&on_stick(&records[40]), b"nothing of the kind");
    disk.plant(Path::new("/stick/zz/again.zip"), &records[79].zip);
    disk.plant(Path::new("/stick/zz/once more.zip"), &records[3].zip);
    let fork = record(&t2(), 60, Some(records[58].digest), Kind::Handoff, "2026-06-13T09:00:00Z");
    disk.plant(Path::new("/stick/zz/other.zip"), &fork.zip);
    let archive = office(&disk, NOON);
    let paths = [PathBuf::from("/stick")];
    let mut told: Vec<(usize, usize, String, char)> = Vec::new();
    let summary =
        import(&archive, Plan { paths: &paths, rehearsals: false }, &ports(&disk, NOON), &mut |now| {
            let what = match now.outcome {
                Outcome::New(filed) => {
                    // What is told is there.
                    assert!(disk.read(&Path::new(OFFICE).join(&filed.path), 1 << 20).is_ok());
                    'n'
                }
                Outcome::Known(_) => 'k',
                Outcome::Rehearsal => 'r',
                Outcome::Bad(_) => 'b',
            };
            told.push((now.done, now.of, now.path.display().to_string(), what));
        })
        .unwrap();
    assert!(told.iter().enumerate().all(|(at, (done, of, ..))| (*done, *of) == (at + 1, 83)));
    assert!(told.is_sorted_by_key(|(_, _, path, _)| path.clone()));
    let what: String = told.iter().map(|(.., what)| what).collect();
    assert_eq!(what, format!("{}b{}kkb", "n".repeat(40), "n".repeat(39)));
    assert_eq!((summary.new.len(), summary.known, summary.bad.len()), (79, 2, 2));
    assert_eq!(summary.bad[1].1.code, "number-used-twice");
    assert_eq!(inside(&disk, "records/").len(), 79);
    let lines = text(&disk, "/office/receipts/2026-06.log");
    assert!(lines.lines().map(|line| line.split(' ').nth(2).unwrap()).is_sorted());
    assert_eq!(lines.lines().count(), 79);
}

#[test]
fn files_that_are_named_one_by_one_get_one_receipt_for_their_folder() {
    let mut records = chain(&t2(), 3);
    records.extend(chain(&key(3, "t3"), 2));
    let disk = stick(&records, &[&t2(), &key(3, "t3")]);
    let other = Path::new("/other").join(format!("{}.zip", records[4].id));
    disk.plant(&other, &records[4].zip);
    let paths: Vec<PathBuf> = records[..4].iter().map(on_stick).chain([other]).collect();
    let archive = office(&disk, NOON);
    let world = ports(&disk, NOON);
    let plan = Plan { paths: &paths, rehearsals: false };
    let summary = import(&archive, plan, &world, &mut |_| {}).unwrap();
    let folders: Vec<&Path> = summary.receipts.iter().map(|path| path.parent().unwrap()).collect();
    assert_eq!(folders, [Path::new("/other"), Path::new("/stick")]);
    let lines = text(&disk, summary.receipts[1].to_str().unwrap());
    assert!(records[..4].iter().all(|record| lines.contains(&record.id.to_string())), "{lines}");
    assert!(!lines.contains(&records[4].id.to_string()));
}

/// The disk is read-only behind the records: what was read ahead is dropped, and nothing hangs.
#[test]
fn a_fault_in_the_middle_ends_it_at_once() {
    let records = chain(&t2(), 200);
    let disk = stick(&records, &[&t2()]);
    let archive = office(&disk, NOON);
    let told = std::cell::Cell::new(0);
    let paths = [PathBuf::from("/stick")];
    let plan = Plan { paths: &paths, rehearsals: false };
    let world = super::support::with_disk(Arc::new(disk.clone()), NOON);
    let fault = import(&archive, plan, &world, &mut |now| {
        told.set(now.done);
        if now.done == 40 {
            disk.make_read_only();
        }
    });
    assert!(fault.is_err());
    assert!((40..100).contains(&told.get()), "{}", told.get());
    disk.heal();
    let summary = import(&archive, plan, &world, &mut |_| {}).unwrap();
    assert_eq!(summary.new.len() + summary.known, 200);
}
