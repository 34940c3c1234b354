use super::*;
use crate::ports::Access::{Owner, Usual};

fn folder_names(dir: &Path) -> Vec<String> {
    let names = std::fs::read_dir(dir).unwrap().map(|e| e.unwrap().file_name());
    names.map(|n| n.into_string().unwrap()).collect()
}

#[test]
fn a_new_file_never_replaces() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("record.zip");
    SystemDisk.put_new(&path, b"first", Usual).unwrap();
    let again = SystemDisk.put_new(&path, b"second", Usual).unwrap_err();
    assert!(matches!(again, DiskFault::Exists { .. }));
    assert_eq!(SystemDisk.read(&path, 10).unwrap(), b"first");
    assert_eq!(folder_names(dir.path()), ["record.zip"], "no part is left lying about");
    SystemDisk.replace(&path, b"third", Usual).unwrap();
    assert_eq!(SystemDisk.read(&path, 5).unwrap(), b"third");
    assert_eq!(folder_names(dir.path()), ["record.zip"]);
    assert!(SystemDisk.put_new(&dir.path().join("no/where"), b"x", Usual).unwrap_err().is_missing());
    assert!(SystemDisk.replace(&dir.path().join("no/where"), b"x", Usual).unwrap_err().is_missing());
}

/// Two names are given at once by many threads: one wins, whole.
#[test]
fn of_many_new_files_one_wins() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("x");
    let won: usize = thread::scope(|scope| {
        let put = |n: u8| {
            let path = &path;
            scope.spawn(move || usize::from(SystemDisk.put_new(path, &[n; 5000], Usual).is_ok()))
        };
        (0..8).map(put).collect::<Vec<_>>().into_iter().map(|t| t.join().unwrap()).sum()
    });
    assert_eq!(won, 1);
    let bytes = SystemDisk.read(&path, 5000).unwrap();
    assert!(bytes.len() == 5000 && bytes.iter().all(|b| *b == bytes[0]));
    assert_eq!(folder_names(dir.path()), ["x"]);
}

#[test]
fn many_new_files_are_written_together_and_replace_none() {
    let dir = tempfile::tempdir().unwrap();
    let contents: Vec<Vec<u8>> = (0..40).map(|n| vec![n; 3000 + usize::from(n)]).collect();
    let file = |n: usize| dir.path().join(format!("{n:02}"));
    let files: Vec<(PathBuf, &[u8])> = (0..40).map(|n| (file(n), contents[n].as_slice())).collect();
    SystemDisk.put_all_new(&files[..30], Usual).unwrap();
    SystemDisk.put_all_new(&[], Usual).unwrap();
    let again = SystemDisk.put_all_new(&files[25..], Usual).unwrap_err();
    assert!(matches!(again, DiskFault::Exists { .. }));
    SystemDisk.put_all_new(&[(dir.path().join("no/where"), b"x")], Usual).unwrap_err();
    let mut names = folder_names(dir.path());
    names.sort();
    assert_eq!(names, (0..30).map(|n| format!("{n:02}")).collect::<Vec<_>>(), "no part is left lying about");
    assert!((0..30).all(|n| SystemDisk.read(&file(n), 1 << 16).unwrap() == contents[n]));
}

#[cfg(unix)]
#[test]
fn a_key_is_for_its_owner() {
    use std::os::unix::fs::PermissionsExt as _;
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("key");
    let mode = || std::fs::metadata(&path).unwrap().permissions().mode() & 0o777;
    SystemDisk.put_new(&path, b"secret", Owner).unwrap();
    assert_eq!(mode(), 0o600);
    SystemDisk.replace(&path, b"secret", Owner).unwrap();
    assert_eq!(mode(), 0o600);
}

#[test]
fn reading_is_bounded_and_only_of_plain_files() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("x");
    SystemDisk.put_new(&path, b"12345", Usual).unwrap();
    assert_eq!(SystemDisk.read(&path, 5).unwrap(), b"12345");
    assert!(matches!(SystemDisk.read(&path, 4), Err(DiskFault::TooLarge { len: 5, cap: 4, .. })));
    assert!(SystemDisk.read(&dir.path().join("y"), 5).unwrap_err().is_missing());
    assert!(SystemDisk.read(dir.path(), 5).unwrap_err().to_string().contains("not a plain file"));
}

#[test]
fn lists_are_sorted_and_whole() {
    let dir = tempfile::tempdir().unwrap();
    assert!(SystemDisk.list(&dir.path().join("none")).unwrap().is_empty());
    for name in ["b", "a", "B", ".b.77-0.part"] {
        SystemDisk.put_new(&dir.path().join(name), b"", Usual).unwrap();
    }
    SystemDisk.make_dir(&dir.path().join("c/d")).unwrap();
    assert_eq!(SystemDisk.list(dir.path()).unwrap(), [".b.77-0.part", "B", "a", "b", "c"]);
    assert!(SystemDisk.is_dir(&dir.path().join("c/d")) && !SystemDisk.is_dir(&dir.path().join("a")));
    SystemDisk.make_dir(&dir.path().join("c/d")).unwrap();
    assert!(SystemDisk.make_dir(&dir.path().join("a/x")).is_err());
}

#[test]
fn appending_moving_cutting_removing() {
    let dir = tempfile::tempdir().unwrap();
    let (path, to) = (dir.path().join("x"), dir.path().join("y"));
    let mut file = SystemDisk.append(&path).unwrap();
    assert!(file.is_empty());
    file.append(b"hello").unwrap();
    file.append(b" lot").unwrap();
    file.sync().unwrap();
    file.cut(5).unwrap();
    file.append(b"!").unwrap();
    assert_eq!((file.len(), SystemDisk.append(&path).unwrap().len()), (6, 6));
    assert_eq!(SystemDisk.read(&path, 9).unwrap(), b"hello!");
    SystemDisk.rename(&path, &to).unwrap();
    SystemDisk.put_new(&path, b"", Usual).unwrap();
    assert!(matches!(SystemDisk.rename(&path, &to), Err(DiskFault::Exists { .. })));
    SystemDisk.remove(&to).unwrap();
    SystemDisk.remove(&to).unwrap();
    assert_eq!(SystemDisk.list(dir.path()).unwrap(), ["x"]);
    assert!(SystemDisk.append(dir.path()).is_err());
}

#[test]
fn seeds_differ() {
    assert_ne!(SystemEntropy.seed().unwrap(), SystemEntropy.seed().unwrap());
}

/// Lines as fstab(5) and proc(5) have them.
#[test]
fn sticks_are_read_from_the_table_of_mounts() {
    let table = "/dev/sda2 / ext4 rw 0 0\n/dev/sdb1 /media/lot/OFFICE\\040STICK vfat rw 0 0\nproc /proc proc rw 0 0\n\
                 /dev/sdc1 /run/media/lot/A exfat rw 0 0\n/dev/sdb1 /media/lot/OFFICE\\040STICK vfat rw 0 0\nbroken\n";
    let found = mounted(table);
    assert_eq!(found, [Path::new("/media/lot/OFFICE STICK"), Path::new("/run/media/lot/A")]);
}

#[test]
fn the_running_clock_never_goes_back() {
    let clock = SystemClock;
    let looks: Vec<_> = (0..50).map(|_| clock.running().unwrap()).collect();
    assert!(looks.is_sorted(), "{looks:?}");
}

#[test]
fn the_time_since_the_start_reads_as_linux_writes_it() {
    // proc(5): two numbers, in seconds.
    assert_eq!(read_uptime("350735.47 234388.90\n"), Some(Duration::from_millis(350_735_470)));
    for text in ["", "12", "12. 3", "x.12 1", "12.1 1", "-1.00 0"] {
        assert_eq!(read_uptime(text), None, "{text}");
    }
}
