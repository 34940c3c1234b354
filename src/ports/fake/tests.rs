use super::*;
use crate::ports::Access::{Owner, Usual};

fn disk() -> (MemoryDisk, PathBuf) {
    let disk = MemoryDisk::new();
    disk.make_dir(Path::new("/d/e")).unwrap();
    (disk, PathBuf::from("/d/x"))
}

fn content(disk: &MemoryDisk, path: &Path) -> Option<Vec<u8>> {
    disk.read(path, 1000).ok()
}

#[test]
fn behaves_as_a_disk_does() {
    let (disk, x) = disk();
    disk.put_new(&x, b"1", Owner).unwrap();
    assert_eq!(disk.access(&x), Some(Owner));
    assert!(matches!(disk.put_new(&x, b"2", Usual), Err(DiskFault::Exists { .. })));
    assert!(matches!(disk.read(&x, 0), Err(DiskFault::TooLarge { len: 1, cap: 0, .. })));
    disk.replace(&x, b"2", Usual).unwrap();
    assert_eq!(disk.list(Path::new("/d")).unwrap(), ["e", "x"]);
    assert!(disk.list(Path::new("/none")).unwrap().is_empty());
    assert!(disk.put_new(Path::new("/none/x"), b"", Usual).unwrap_err().is_missing());
    assert!(disk.append(Path::new("/none/x")).is_err());
    assert!(disk.make_dir(Path::new("/d/x/y")).is_err());
    assert!(disk.replace(Path::new("/d/e"), b"", Usual).is_err());
    disk.put_new(Path::new("/d/e/y"), b"3", Usual).unwrap();
    disk.rename(Path::new("/d/e"), Path::new("/f")).unwrap();
    assert_eq!(content(&disk.after_worst_power_cut(), Path::new("/f/y")), Some(b"3".to_vec()));
    assert!(disk.is_dir(Path::new("/f")) && !disk.is_dir(Path::new("/d/e")));
    assert!(matches!(disk.rename(&x, Path::new("/f/y")), Err(DiskFault::Exists { .. })));
    assert!(disk.rename(Path::new("/d/none"), &x).is_err());
    disk.remove(&x).unwrap();
    disk.remove(&x).unwrap();
    assert_eq!(content(&disk.after_worst_power_cut(), &x), None);
}

#[test]
fn what_is_not_synced_may_go() {
    let (disk, x) = disk();
    let mut file = disk.append(&x).unwrap();
    file.append(b"safe").unwrap();
    file.sync().unwrap();
    file.append(b" not yet").unwrap();
    assert_eq!(content(&disk, &x), Some(b"safe not yet".to_vec()));
    assert_eq!(content(&disk.after_worst_power_cut(), &x), Some(b"safe".to_vec()));
    assert_eq!(content(&disk.after_power_cut_keeping(2), &x), Some(b"safe n".to_vec()));
    let lengths: std::collections::BTreeSet<usize> =
        (0..100).map(|seed| content(&disk.after_power_cut(seed), &x).unwrap().len()).collect();
    assert_eq!(lengths, (4..=12).collect());
    file.cut(2).unwrap();
    assert_eq!(content(&disk.after_worst_power_cut(), &x), Some(b"sa".to_vec()));
}

/// As Linux behaves since a failed `fsync` marks the pages clean: later ones succeed and do not bring them back.
#[test]
fn a_failed_sync_loses_for_good() {
    let (disk, x) = disk();
    let mut file = disk.append(&x).unwrap();
    disk.fail(Operation::Sync, 1);
    file.append(b"abc").unwrap();
    assert!(file.sync().is_err());
    assert_eq!(content(&disk, &x), Some(b"abc".to_vec()), "a running system still sees it");
    file.append(b"def").unwrap();
    file.sync().unwrap();
    assert_eq!(content(&disk.after_worst_power_cut(), &x), Some(b"\0\0\0def".to_vec()));
}

#[test]
fn faults_come_when_they_are_asked_for() {
    let (disk, x) = disk();
    let mut file = disk.append(&x).unwrap();
    disk.fail(Operation::Write, 2);
    file.append(b"1111").unwrap();
    assert!(file.append(b"2222").unwrap_err().to_string().contains("asked for"));
    file.append(b"3333").unwrap();
    assert_eq!(content(&disk, &x), Some(b"1111223333".to_vec()), "a failing write leaves half");
    assert_eq!(disk.count(Operation::Write), 3);
    disk.fail_from(Operation::Name, 1);
    let y = Path::new("/d/y");
    for _ in 0..3 {
        assert!(disk.put_new(y, b"y", Usual).is_err());
        assert_eq!(content(&disk, y), None, "no half file");
    }
    disk.heal();
    // The folder's sync fails: the file is there, but may be gone after a power cut.
    disk.fail(Operation::SyncFolder, 1);
    assert!(disk.put_new(y, b"y", Usual).is_err());
    assert_eq!(content(&disk, y), Some(b"y".to_vec()));
    assert_eq!(content(&disk.after_worst_power_cut(), y), None);
    assert_eq!(content(&disk.after_power_cut_keeping(0), y), Some(b"y".to_vec()));
}

#[test]
fn clocks_do_as_told() {
    let start: Timestamp = "2026-07-03T16:00:00Z".parse().unwrap();
    assert_eq!(FixedClock(start).now(), start);
    let clock = StepClock::new(start, SignedDuration::from_secs(60));
    let seen: Vec<String> = (0..3).map(|_| clock.now().to_string()).collect();
    assert_eq!(seen, ["2026-07-03T16:00:00Z", "2026-07-03T16:01:00Z", "2026-07-03T16:02:00Z"]);
    assert_eq!(FixedEntropy([7; 32]).seed().unwrap(), [7; 32]);
}
