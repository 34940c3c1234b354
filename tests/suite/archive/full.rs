//! A disk that is full, or dies, while records are taken in, the index is made, or the archive is copied. Afterwards,
//! with room again, everything is there.

use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

use sendoff::archive::Archive;
use sendoff::archive::index::keep::{self, Kept};
use sendoff::archive::index::{Index, Query};
use sendoff::ports::fake::{MemoryDisk, OPERATIONS};
use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Access, Appender, Disk, DiskFault, Held, Ports};

use super::export::{copy, scene, taken_in};
use super::interrupted::{LATER, attempt, check};
use super::killed::{Office, tree};
use super::support::{NOON, chain, inside, stick, with_disk};
use crate::seal::{key, t2};

fn used(disk: &MemoryDisk) -> u64 {
    disk.files().iter().map(|(_, bytes)| bytes.len() as u64).sum()
}

#[test]
fn an_import_onto_a_full_disk_is_completed_when_there_is_room() {
    let mut records = chain(&t2(), 3);
    records.extend(chain(&key(3, "t3"), 2));
    let fresh = || stick(&records, &[&t2(), &key(3, "t3")]);
    let whole = fresh();
    attempt(&whole, NOON).unwrap();
    let needed = used(&whole) - used(&fresh());
    let mut refused = 0;
    for room in (0..needed).step_by(173) {
        let disk = fresh();
        disk.leave_room(room);
        refused += u32::from(attempt(&disk, NOON).is_err_and(|fault| fault.to_string().contains("no space")));
        disk.heal();
        for (left, how) in [(disk.after_worst_power_cut(), "cut"), (disk, "running")] {
            let moment = format!("room for {room} bytes, {how}");
            attempt(&left, LATER).unwrap_or_else(|fault| panic!("{moment}: {fault}"));
            check(&left, &records, &moment);
        }
    }
    assert!(refused > 20, "{refused}");
}

#[test]
fn a_copy_onto_a_full_or_dead_disk_is_gone_on_with() {
    let whole = scene();
    let (begun, counts) = (used(&whole), OPERATIONS.map(|operation| whole.count(operation)));
    copy(&whole).unwrap();
    let needed = used(&whole) - begun;
    let check = |disk: &MemoryDisk, moment: &str| {
        disk.heal();
        let left = disk.after_worst_power_cut();
        copy(&left).unwrap_or_else(|fault| panic!("{moment}: {fault}"));
        assert_eq!(inside(&taken_in(&left), "records/"), inside(&whole, "records/"), "{moment}");
    };
    for room in (0..needed).step_by(311) {
        let disk = scene();
        disk.leave_room(room);
        copy(&disk).unwrap_err();
        check(&disk, &format!("room for {room} bytes"));
    }
    for (operation, before) in OPERATIONS.into_iter().zip(counts) {
        for nth in 1..=whole.count(operation).saturating_sub(before) {
            let disk = scene();
            disk.fail_from(operation, nth);
            let _ = copy(&disk);
            check(&disk, &format!("{operation:?} from {nth} on"));
        }
    }
}

/// The real disk, which refuses one of the things it is asked, or everything from there on.
#[derive(Debug)]
struct Refusing {
    asked: AtomicU64,
    nth: u64,
    for_good: bool,
}

type Answer<T> = Result<T, DiskFault>;

impl Refusing {
    fn ask(&self, path: &Path) -> Answer<&'static SystemDisk> {
        let asked = self.asked.fetch_add(1, Ordering::Relaxed) + 1;
        if asked == self.nth || self.for_good && asked > self.nth {
            let source = Arc::new(std::io::Error::from(std::io::ErrorKind::StorageFull));
            return Err(DiskFault::Io { action: "use", path: path.to_owned(), source });
        }
        Ok(&SystemDisk)
    }
}

impl Disk for Refusing {
    fn read(&self, path: &Path, cap: u64) -> Answer<Vec<u8>> {
        self.ask(path)?.read(path, cap)
    }
    fn list(&self, dir: &Path) -> Answer<Vec<String>> {
        self.ask(dir)?.list(dir)
    }
    fn is_dir(&self, path: &Path) -> bool {
        SystemDisk.is_dir(path)
    }
    fn stamp(&self, path: &Path) -> Option<(u64, u128)> {
        SystemDisk.stamp(path)
    }
    fn make_dir(&self, dir: &Path) -> Answer<()> {
        self.ask(dir)?.make_dir(dir)
    }
    fn put_new(&self, path: &Path, bytes: &[u8], access: Access) -> Answer<()> {
        self.ask(path)?.put_new(path, bytes, access)
    }
    fn replace(&self, path: &Path, bytes: &[u8], access: Access) -> Answer<()> {
        self.ask(path)?.replace(path, bytes, access)
    }
    fn settle(&self, dir: &Path) -> Answer<()> {
        self.ask(dir)?.settle(dir)
    }
    fn append(&self, path: &Path) -> Answer<Box<dyn Appender>> {
        self.ask(path)?.append(path)
    }
    fn rename(&self, from: &Path, to: &Path) -> Answer<()> {
        self.ask(from)?.rename(from, to)
    }
    fn supplant(&self, from: &Path, to: &Path) -> Answer<()> {
        self.ask(from)?.supplant(from, to)
    }
    fn checksum(&self, path: &Path, except: &[(u64, u64)]) -> Answer<u32> {
        self.ask(path)?.checksum(path, except)
    }
    fn lock(&self, path: &Path) -> Answer<Option<Box<dyn Held>>> {
        self.ask(path)?.lock(path)
    }
    fn remove(&self, path: &Path) -> Answer<()> {
        self.ask(path)?.remove(path)
    }
    fn remove_dir(&self, dir: &Path) -> Answer<()> {
        self.ask(dir)?.remove_dir(dir)
    }
}

fn said(index: &Index) -> String {
    ["", "müller", "k1"]
        .map(|w| format!("{:?}\n", index.search(&Query::words(w), None, 100).unwrap()))
        .concat()
}

/// Makes the index on a disk that refuses; `None` if nothing came of it. How often the disk was asked.
fn remade(dir: &Path, nth: u64, for_good: bool) -> (Option<(Index, Kept)>, u64) {
    let disk = Arc::new(Refusing { asked: AtomicU64::new(0), nth, for_good });
    let ports = Ports { disk: Arc::clone(&disk) as Arc<dyn Disk>, ..with_disk(Arc::new(SystemDisk), LATER) };
    let archive = Archive::open(Arc::clone(&ports.disk), dir);
    let made = archive.ok().and_then(|archive| keep::rebuild(&archive, &ports, &mut |_, _| {}).ok());
    (made, disk.asked.load(Ordering::Relaxed))
}

#[test]
fn an_index_whose_disk_refuses_anything_is_whole_or_made_later() {
    let office = Office::new(8);
    assert_eq!(office.import("office").code, 0);
    let dir = office.path("office");
    let (made, asked) = remade(&dir, u64::MAX, false);
    let (index, _) = made.unwrap();
    let wanted = said(&index);
    drop(index);
    assert!(asked > 20, "{asked}");
    for for_good in [false, true] {
        for nth in 1..=asked {
            let moment = format!("{nth} of {asked}, for good: {for_good}");
            // Whether it stands in a file or in memory alone, it answers as it should or is not there.
            if let (Some((index, kept)), _) = remade(&dir, nth, for_good)
                && matches!(kept, Kept::InMemory { .. } | Kept::Remade { records: 8, .. })
            {
                let bad = index.search(&Query { good: Some(false), ..Query::default() }, None, 9).unwrap();
                assert!(said(&index) == wanted || !bad.hits.is_empty(), "{moment}");
            }
            let archive = Archive::open(Arc::new(SystemDisk), &dir).unwrap();
            let ports = with_disk(Arc::new(SystemDisk), LATER);
            let (index, _) = keep::rebuild(&archive, &ports, &mut |_, _| {}).unwrap();
            assert_eq!(said(&index), wanted, "{moment}");
        }
    }
}

/// Runs lines of shell in a folder; each says what its program said.
fn shell(wrap: &[&str], dir: &Path, script: &str) -> String {
    let program = env!("CARGO_BIN_EXE_sendoff");
    let mut command = Command::new(wrap[0]);
    command.args(&wrap[1..]).args(["sh", "-c", script, "sh", program]).current_dir(dir).stdin(Stdio::null());
    let out = command.output().unwrap();
    format!("{}{}", String::from_utf8_lossy(&out.stdout), String::from_utf8_lossy(&out.stderr))
}

/// A limit on the size of files stands for a full volume: no rights are needed to set it.
#[cfg(unix)]
#[test]
fn files_that_may_not_grow_are_refused_in_words_and_nothing_is_lost() {
    let office = Office::new(20);
    let limited = |blocks: u32, line: &str| {
        let script =
            format!("trap '' XFSZ; ulimit -f {blocks}; \"$1\" archive {line} 2>&1; echo \"code $?\"");
        shell(&["env"], office.dir(), &script)
    };
    let said = limited(20, "import stick --archive office --signers list");
    assert!(said.ends_with("code 2\n") && said.to_lowercase().contains("too large"), "{said}");
    assert!(tree(&office.path("office/records")).is_empty());
    assert_eq!(office.import("office").code, 0);
    // The index does not fit: it is made for this time alone, and the next time for good.
    let said = limited(60, "search --limit 100 --archive office");
    assert!(said.contains("could not be kept") && said.ends_with("20 records\ncode 0\n"), "{said}");
    let said = limited(60, "rebuild --archive office");
    assert!(said.ends_with("code 2\n"), "{said}");
    let said = limited(20, "export copy --archive office");
    assert!(said.ends_with("code 2\n") && said.to_lowercase().contains("too large"), "{said}");
    office.check("office");
    assert_eq!(office.run(&["export", "copy", "--archive", "office"]).code, 0);
    assert_eq!(tree(&office.path("copy/records")), tree(&office.path("office/records")));
}

/// A way to mount a volume that is gone with the process; none where the system does not allow it.
#[cfg(unix)]
fn namespace(dir: &Path) -> Option<&'static [&'static str]> {
    let ways: [&[&str]; 2] = [&["unshare", "-m"], &["unshare", "-r", "-m"]];
    let works = |way: &&&[&str]| {
        let mut probe = Command::new(way[0]);
        probe.args(&way[1..]).args(["sh", "-c", "mkdir -p probe && mount -t tmpfs -o size=1m none probe"]);
        probe.current_dir(dir).output().is_ok_and(|out| out.status.success())
    };
    let way = ways.iter().find(works).copied();
    if way.is_none() {
        eprintln!("skipped: needs mount");
    }
    way
}

#[cfg(unix)]
#[test]
fn a_volume_that_is_full_is_said_and_with_room_again_everything_is_there() {
    let office = Office::new(40);
    let Some(way) = namespace(office.dir()) else { return };
    let script = r#"
        mkdir volume && mount -t tmpfs -o size=1200k none volume
        say() { echo "$1:"; shift; "$@" 2>&1; echo "code $?"; }
        say full "$1" archive import stick --archive volume/office --signers list
        mount -o remount,size=64m volume
        say import "$1" archive import stick --archive volume/office --signers list
        say again "$1" archive import stick --archive volume/office
        head -c 60000000 /dev/zero > volume/filler 2>/dev/null; cat /dev/zero >> volume/filler 2>/dev/null
        say rebuild "$1" archive rebuild --archive volume/office
        say search "$1" archive search --limit 100 --archive volume/office
        say export "$1" archive export volume/copy --archive volume/office
        rm volume/filler
        say export "$1" archive export volume/copy --archive volume/office
        say rebuild "$1" archive rebuild --archive volume/office
        say audit "$1" archive audit --archive volume/office
        cp -r volume/office office && cp -r volume/copy copy
    "#;
    let said = shell(way, office.dir(), script);
    let parts: Vec<&str> = said.split("code ").collect();
    let codes: Vec<&str> = parts[1..].iter().map(|part| part.lines().next().unwrap()).collect();
    assert_eq!(codes, ["2", "0", "0", "2", "0", "2", "0", "0", "0"], "{said}");
    let full: Vec<&&str> =
        parts.iter().filter(|part| part.to_lowercase().contains("no space left")).collect();
    assert!(full.len() >= 2, "{said}");
    assert!(
        said.contains("0 new, 40 known, 0 bad") && said.contains("40 good records, 0 findings"),
        "{said}"
    );
    office.check("office");
    assert_eq!(tree(&office.path("copy/records")), tree(&office.path("office/records")));
}
