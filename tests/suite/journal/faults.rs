//! Every write and every sync of a whole walk fails once, and the power goes then or later.

use std::path::{Path, PathBuf};

use sendoff::journal::{JournalFault, Keeper, ProposeFault, journal_path, recover};
use sendoff::ports::Disk;
use sendoff::ports::fake::{MemoryDisk, OPERATIONS, Operation};
use sendoff::walk::{Entry, Phase};

use crate::walk::support::{route, whole};

fn path() -> PathBuf {
    journal_path(Path::new("/data"), "t2-000001")
}

fn empty() -> MemoryDisk {
    let disk = MemoryDisk::new();
    disk.make_dir(Path::new("/data/walks")).unwrap();
    disk
}

/// Runs the walk until the disk fails; how many events were acknowledged.
fn run(disk: &MemoryDisk) -> usize {
    let walk = whole();
    let Ok(mut keeper) = Keeper::begin(disk, &path(), route(), &walk[0]) else { return 0 };
    for (acknowledged, entry) in walk.iter().enumerate().skip(1) {
        match keeper.propose(entry) {
            Ok(()) => {}
            Err(ProposeFault::Journal(fault @ JournalFault::Disk { safe, .. })) => {
                assert_eq!(usize::try_from(safe).unwrap(), acknowledged);
                let told = fault.to_string();
                let safe_told = format!("event {} could not be saved", acknowledged + 1);
                assert!(told.starts_with(&safe_told) && told.contains("start the kiosk again"), "{told}");
                poisoned(disk, &mut keeper, entry, acknowledged);
                return acknowledged;
            }
            Err(other) => panic!("{other}"),
        }
    }
    walk.len()
}

/// After a fault nothing more is tried on this handle.
fn poisoned(disk: &MemoryDisk, keeper: &mut Keeper, entry: &Entry, acknowledged: usize) {
    let tried = disk.count(Operation::Write) + disk.count(Operation::Sync);
    let again = keeper.propose(entry).unwrap_err();
    assert!(matches!(again, ProposeFault::Journal(JournalFault::Poisoned { .. })), "{again}");
    assert_eq!(disk.count(Operation::Write) + disk.count(Operation::Sync), tried);
    assert_eq!(keeper.walk().events(), acknowledged, "not applied either");
}

/// The kiosk starts again on what is left: all that was acknowledged is there, and the walk goes on to its end,
/// which then outlasts the worst power cut.
fn go_on(left: &MemoryDisk, acknowledged: usize) {
    let walk = whole();
    let mut keeper = match recover(left, &path()) {
        Ok(read) => {
            assert!(read.entries.len() >= acknowledged, "{} of {acknowledged}", read.entries.len());
            assert_eq!(read.entries, walk[..read.entries.len()]);
            assert_eq!(read.damage, None);
            Keeper::resume_from(left, read, route()).unwrap().keeper
        }
        Err(_) => {
            assert_eq!(acknowledged, 0);
            Keeper::begin(left, &path(), route(), &walk[0]).unwrap()
        }
    };
    for entry in walk.iter().skip(keeper.walk().events()) {
        keeper.propose(entry).unwrap();
    }
    assert_eq!(keeper.walk().phase(), Phase::SealBegun);
    let after = recover(&left.after_worst_power_cut(), &path()).unwrap();
    assert_eq!((after.entries, after.cut, after.damage), (walk, None, None));
}

#[test]
fn no_acknowledged_event_is_lost_by_any_fault() {
    let good = empty();
    assert_eq!(run(&good), whole().len());
    let mut faults = 0;
    for operation in OPERATIONS {
        for nth in 1..=good.count(operation) {
            for forever in [false, true] {
                let disk = empty();
                if forever {
                    disk.fail_from(operation, nth);
                } else {
                    disk.fail(operation, nth);
                }
                let acknowledged = run(&disk);
                assert!(acknowledged < whole().len(), "{operation:?} {nth} went unnoticed");
                let seed = nth * 2 + u64::from(forever);
                let left = [
                    disk.after_power_cut(seed),
                    disk.after_worst_power_cut(),
                    disk.after_power_cut_keeping(40),
                ];
                for left in left {
                    go_on(&left, acknowledged);
                }
                // The process alone died: the system still shows what a failed sync never wrote.
                disk.heal();
                go_on(&disk, acknowledged);
                faults += 1;
            }
        }
    }
    // One write and one sync for each event at the least.
    assert!(faults >= 4 * whole().len(), "{faults}");
}

/// The power goes between any two operations, without any fault before.
#[test]
fn no_acknowledged_event_is_lost_by_a_power_cut() {
    let walk = whole();
    let disk = empty();
    let mut keeper = Keeper::begin(&disk, &path(), route(), &walk[0]).unwrap();
    for (acknowledged, entry) in (1..).zip(&walk[1..]) {
        go_on(&disk.after_worst_power_cut(), acknowledged);
        keeper.propose(entry).unwrap();
    }
    go_on(&disk.after_worst_power_cut(), walk.len());
}

/// The disk fails while the kiosk makes the journal ready again: the old journal still stands.
#[test]
fn a_fault_while_going_on_loses_nothing() {
    let disk = empty();
    disk.fail(Operation::Sync, 20);
    let acknowledged = run(&disk);
    disk.heal();
    let probe = disk.after_power_cut_keeping(usize::MAX);
    Keeper::resume(&probe, &path(), route()).unwrap();
    for operation in OPERATIONS {
        for nth in 1..=probe.count(operation) {
            let left = disk.after_power_cut_keeping(usize::MAX);
            left.fail(operation, nth);
            drop(Keeper::resume(&left, &path(), route()).unwrap_err());
            for again in [left.after_worst_power_cut(), left.after_power_cut(nth)] {
                go_on(&again, acknowledged);
            }
        }
    }
}
