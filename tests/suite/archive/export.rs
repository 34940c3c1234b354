//! The stand-alone copy: stock tools verify it, and an empty archive that takes it in becomes the same.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use sendoff::archive::Archive;
use sendoff::archive::export::export;
use sendoff::archive::import::{Plan, import};
use sendoff::ports::Disk;
use sendoff::ports::fake::{MemoryDisk, OPERATIONS};
use sendoff::ports::system::SystemDisk;

use super::support::{NOON, OFFICE, chain, inside, office, ports, signers, stick, take, text, with_disk};
use crate::commands::run_with;
use crate::seal::{has, key, run, t2, time, words};

const COPY: &str = "/copy";
const YEARS_LATER: &str = "2031-01-01T12:00:00Z";

/// Two tablets, one of them retired since, received on two days.
pub fn scene() -> MemoryDisk {
    let records = chain(&t2(), 3);
    let disk = stick(&records, &[&t2(), &key(3, "t3")]);
    take(&disk, NOON);
    for record in chain(&key(3, "t3"), 2) {
        disk.plant(&super::support::on_stick(&record), &record.zip);
    }
    take(&disk, "2026-07-02T09:00:00Z");
    office(&disk, NOON).retire("t2", time("2026-06-20T00:00:00Z")).unwrap();
    disk
}

pub fn copy(disk: &MemoryDisk) -> Result<sendoff::archive::export::Exported, sendoff::archive::ArchiveFault> {
    let archive = Archive::open(Arc::new(disk.clone()), Path::new(OFFICE))?;
    export(&archive, Arc::new(disk.clone()), Path::new(COPY), time(YEARS_LATER), &mut |_| {})
}

/// Takes the copy into an empty archive on a disk of its own.
pub fn taken_in(from: &MemoryDisk) -> MemoryDisk {
    let disk = MemoryDisk::new();
    for (path, bytes) in from.files().into_iter().filter(|(path, _)| path.starts_with(COPY)) {
        disk.plant(&path, &bytes);
    }
    let world = ports(&disk, YEARS_LATER);
    let mut archive = Archive::open_or_create(&world, Path::new(OFFICE)).unwrap();
    archive.adopt(&disk, &Path::new(COPY).join("trust/allowed_signers")).unwrap();
    let paths = [PathBuf::from(COPY)];
    let summary = import(&archive, Plan { paths: &paths, rehearsals: false }, &world, &mut |_| {}).unwrap();
    assert_eq!((summary.new.len(), summary.bad.len(), summary.receipts.len()), (5, 0, 0), "{summary:?}");
    disk
}

fn lines(disk: &MemoryDisk, log: &str) -> BTreeSet<String> {
    text(disk, log).lines().map(str::to_owned).collect()
}

#[test]
fn an_empty_archive_that_takes_it_in_is_the_same() {
    let disk = scene();
    assert_eq!(copy(&disk).unwrap().new, 5);
    let again = taken_in(&disk);
    assert_eq!(inside(&disk, "records/"), inside(&again, "records/"));
    for log in ["/office/receipts/2026-06.log", "/office/receipts/2026-07.log"] {
        assert_eq!(lines(&disk, log), lines(&again, log));
    }
    let marks = |disk: &MemoryDisk| -> Vec<String> {
        let said =
            |bytes: Vec<u8>| String::from_utf8(bytes).unwrap().split("-----BEGIN").next().unwrap().to_owned();
        inside(disk, "marks/").into_iter().map(|(_, bytes)| said(bytes)).collect()
    };
    assert_eq!(marks(&disk), marks(&again));
    let audited = run_with(&ports(&again, YEARS_LATER), &["archive", "audit", "--archive", OFFICE]);
    assert_eq!(audited.out, "5 files read, 5 good records, 0 findings, 0 remarks\n");
    // A copy that grows.
    assert_eq!((copy(&disk).unwrap().new, copy(&disk).unwrap().known), (0, 5));
}

#[test]
fn times_of_receipt_that_no_known_office_signed_are_not_believed() {
    let disk = scene();
    copy(&disk).unwrap();
    let log = Path::new("/copy/receipts/2026-06.log");
    let earlier = text(&disk, "/copy/receipts/2026-06.log").replace("2026-06-13", "2026-06-12");
    disk.plant(log, earlier.as_bytes());
    let world = ports(&disk, YEARS_LATER);
    let mut archive = Archive::open_or_create(&world, Path::new("/new")).unwrap();
    archive.adopt(&disk, &Path::new(COPY).join("trust/allowed_signers")).unwrap();
    let paths = [PathBuf::from(COPY)];
    let summary = import(&archive, Plan { paths: &paths, rehearsals: false }, &world, &mut |_| {}).unwrap();
    // Those of t2 are judged now, when it is long retired.
    assert_eq!((summary.new.len(), summary.bad.len(), summary.refused.len()), (2, 3, 1));
    assert!(summary.bad.iter().all(|(_, bad)| bad.code == "not-valid-at-that-time"));
}

#[test]
fn what_does_not_hold_is_left_out_and_said() {
    let disk = scene();
    let (name, mut bytes) = inside(&disk, "records/").remove(0);
    bytes[100] ^= 1;
    disk.plant(&Path::new(OFFICE).join(&name), &bytes);
    let done = copy(&disk).unwrap();
    assert_eq!((done.new, done.left.len(), done.left[0].0.as_str()), (4, 1, name.as_str()));
}

#[test]
fn a_copy_that_was_interrupted_is_gone_on_with() {
    let whole = scene();
    copy(&whole).unwrap();
    for operation in OPERATIONS {
        let before = scene().count(operation);
        for nth in 1..=whole.count(operation).saturating_sub(before) {
            let disk = scene();
            disk.fail(operation, nth);
            let _ = copy(&disk);
            disk.heal();
            let left = disk.after_worst_power_cut();
            copy(&left).unwrap_or_else(|fault| panic!("{operation:?} {nth}: {fault}"));
            assert_eq!(
                inside(&taken_in(&left), "records/"),
                inside(&whole, "records/"),
                "{operation:?} {nth}"
            );
        }
    }
}

/// The commands of its README, run by a stock shell.
#[test]
fn the_readme_verifies_it_without_us() {
    if !has("ssh-keygen", &[]) || !has("sha256sum", &["--version"]) || !has("python3", &["--version"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let world = with_disk(Arc::new(SystemDisk), NOON);
    let (sticks, list) = (dir.path().join("stick"), dir.path().join("list"));
    std::fs::create_dir(&sticks).unwrap();
    for record in chain(&t2(), 3) {
        std::fs::write(sticks.join(format!("{}.zip", record.id)), record.zip).unwrap();
    }
    std::fs::write(&list, signers(&[&t2()])).unwrap();
    let office = dir.path().join("office");
    let path = |path: &Path| path.to_str().unwrap().to_owned();
    let import =
        ["archive", "import", &path(&sticks), "--archive", &path(&office), "--signers", &path(&list)];
    assert_eq!(run_with(&world, &import).code, 0);
    let retire = ["keys", "retire", "t2", "--at", "2026-06-20T00:00:00Z", "--archive", &path(&office)];
    assert_eq!(run_with(&world, &retire).code, 0);
    let copied = dir.path().join("copy");
    let ran = run_with(&world, &["archive", "export", &path(&copied), "--archive", &path(&office)]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let readme = std::fs::read_to_string(copied.join("README.txt")).unwrap();
    let script = readme.split("---- begin of the check ----\n").nth(1).unwrap();
    let script = script.split("---- end of the check ----").next().unwrap();
    let out = run(&copied, "sh", &["-c", script], b"");
    let said = words(&out);
    assert!(said.ends_with("0 failed\n") && said.matches("good t2-").count() == 3, "{said}");
    // It finds what was changed, be it a record or a time of receipt.
    let record = SystemDisk.list(&copied.join("records/2026/06")).unwrap().remove(0);
    let record = copied.join("records/2026/06").join(record);
    let mut bytes = std::fs::read(&record).unwrap();
    let at = bytes.len() / 2;
    bytes[at] ^= 1;
    std::fs::write(&record, bytes).unwrap();
    let log = copied.join("receipts/2026-06.log");
    let earlier = std::fs::read_to_string(&log).unwrap().replace("2026-06-13", "2026-06-12");
    std::fs::write(&log, earlier).unwrap();
    let said = words(&run(&copied, "sh", &["-c", script], b""));
    assert!(said.contains("BAD receipts/2026-06.log") && said.contains("\n2 failed\n"), "{said}");
    assert_eq!(said.matches("good t2-").count(), 2, "{said}");
}
