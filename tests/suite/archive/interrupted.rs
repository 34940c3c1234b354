//! A full disk, a failing write, a power cut at every moment of an import: run again, and each record is there
//! exactly once.

use std::path::{Path, PathBuf};

use sendoff::archive::Archive;
use sendoff::archive::ArchiveFault;
use sendoff::archive::import::{Plan, Summary, import};
use sendoff::ports::fake::{MemoryDisk, OPERATIONS};
use sendoff::record::seal::Sealed;

use super::support::{NOON, OFFICE, SIGNERS, STICK, chain, inside, ports, stick};
use crate::seal::{key, t2};

pub const LATER: &str = "2026-07-01T12:00:00Z";

pub fn attempt(disk: &MemoryDisk, at: &str) -> Result<Summary, ArchiveFault> {
    let ports = ports(disk, at);
    let mut archive = Archive::open_or_create(&ports, Path::new(OFFICE))?;
    archive.adopt(disk, Path::new(SIGNERS))?;
    let paths = [PathBuf::from(STICK)];
    import(&archive, Plan { paths: &paths, rehearsals: false }, &ports, &mut |_| {})
}

pub fn check(disk: &MemoryDisk, records: &[Sealed], moment: &str) {
    let filed = inside(disk, "records/");
    assert_eq!(filed.len(), records.len(), "{moment}");
    for (name, bytes) in filed {
        let record = records.iter().find(|r| name.ends_with(&format!("/{}.zip", r.id)));
        assert!(record.is_some_and(|r| r.zip == bytes), "{moment}: {name}");
    }
    // What a power cut left of a line does not count.
    let log =
        |(name, bytes): (String, Vec<u8>)| name.ends_with(".log").then(|| String::from_utf8(bytes).unwrap());
    let logs = inside(disk, "receipts/").into_iter().filter_map(log);
    let logs: String =
        logs.flat_map(|log| log.rsplit_once('\n').map(|(whole, _)| format!("{whole}\n"))).collect();
    for record in records {
        let lines = logs.lines().filter(|line| line.contains(&record.digest.to_string()));
        assert_eq!(lines.count(), 1, "{moment}: {logs}");
    }
}

#[test]
fn whatever_fails_the_next_import_completes_it() {
    let mut records = chain(&t2(), 3);
    records.extend(chain(&key(3, "t3"), 2));
    let whole = stick(&records, &[&t2(), &key(3, "t3")]);
    attempt(&whole, NOON).unwrap();
    check(&whole, &records, "undisturbed");
    for operation in OPERATIONS {
        for nth in 1..=whole.count(operation) {
            for dead in [false, true] {
                let disk = stick(&records, &[&t2(), &key(3, "t3")]);
                if dead {
                    disk.fail_from(operation, nth);
                } else {
                    disk.fail(operation, nth);
                }
                let _ = attempt(&disk, NOON);
                disk.heal();
                let moment = format!("{operation:?} {nth} {dead}");
                // The program goes on on the same running system; or the power went.
                for (left, how) in [
                    (disk.after_worst_power_cut(), "worst"),
                    (disk.after_power_cut(nth), "torn"),
                    (disk.after_power_cut_keeping(40), "tail"),
                    (disk, "running"),
                ] {
                    let moment = format!("{moment} {how}");
                    attempt(&left, LATER).unwrap_or_else(|fault| panic!("{moment}: {fault}"));
                    check(&left, &records, &moment);
                    // What the second import said to be filed survives the next power cut.
                    check(&left.after_worst_power_cut(), &records, &format!("{moment}, cut again"));
                }
            }
        }
    }
}
