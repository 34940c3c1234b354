use std::path::{Path, PathBuf};

use sendoff::journal::line::{self, LineFault};
use sendoff::journal::{
    FILE_CAP, Journal, JournalFault, Keeper, ResumeFault, journal_path, open_walks, recover, set_aside,
};
use sendoff::ports::fake::MemoryDisk;
use sendoff::ports::{Disk, DiskFault};
use sendoff::walk::{Event, Refused};

use crate::walk::support::{STEPS, began, entries, entry, opening, route, step_shown, whole};

fn path() -> PathBuf {
    journal_path(Path::new("/data"), "t2-000001")
}

/// The bytes of a journal, and where each line ends.
fn written(count: usize) -> (Vec<u8>, Vec<usize>) {
    let (mut bytes, mut ends) = (Vec::new(), Vec::new());
    for entry in whole().iter().take(count) {
        bytes.extend(line::encode(entry).unwrap());
        ends.push(bytes.len());
    }
    (bytes, ends)
}

fn disk_with(bytes: &[u8]) -> MemoryDisk {
    let disk = MemoryDisk::new();
    disk.plant(&path(), bytes);
    disk
}

/// The checksum is the one of Python's `zlib.crc32`, which wrote this line.
#[test]
fn a_line_looks_like_this_for_ever() {
    let golden = concat!(
        "j1 0000092 bfe11007 ",
        r#"{"at":"2026-07-03T16:00:00Z","offset_minutes":-240,"event":{"event":"agent-on","code":"K4"}}"#
    );
    let said = entry(0, Event::AgentOn { code: "K4".into() });
    assert_eq!(line::encode(&said).unwrap(), format!("{golden}\n").into_bytes());
    assert_eq!(line::decode(golden.as_bytes()), Ok(said));
}

#[test]
fn what_is_no_line_is_told_apart() {
    let good = String::from_utf8(line::encode(&entry(0, began())).unwrap()).unwrap();
    let good = good.trim_end();
    let head = |bad: &str| assert_eq!(line::decode(bad.as_bytes()), Err(LineFault::Head), "{bad}");
    for bad in ["", "j1", "j1 ", "j2 0000000 00000000 ", "j1 +000001 00000000 x", "j1 0000001 0000000A x"] {
        head(bad);
    }
    head(&good.replacen(' ', "", 1));
    let short = good.strip_suffix('}').unwrap();
    assert!(matches!(line::decode(short.as_bytes()), Err(LineFault::Length { .. })));
    let other = good.replace("wren", "wram");
    assert!(matches!(line::decode(other.as_bytes()), Err(LineFault::Checksum { .. })));
    // Whole, but from a version that knows more.
    let json = r#"{"at":"2026-07-03T16:00:00Z","offset_minutes":0,"event":{"event":"sung"}}"#;
    let newer = format!("j1 {:07} {:08x} {json}", json.len(), crc32fast::hash(json.as_bytes()));
    let fault = line::decode(newer.as_bytes()).unwrap_err();
    assert!(fault.is_whole() && matches!(fault, LineFault::Event(_)), "{fault}");
    assert_eq!(line::decode(&vec![b'x'; line::LINE_CAP]), Err(LineFault::TooLong));
}

#[test]
fn a_journal_holds_the_whole_walk() {
    let disk = disk_with(&written(whole().len()).0);
    let read = recover(&disk, &path()).unwrap();
    assert_eq!((read.entries, read.cut, read.damage), (whole(), None, None));
}

#[test]
fn every_torn_length_of_the_last_line_is_cut() {
    let count = 12;
    let (bytes, ends) = written(count);
    let (last, full) = (ends[count - 2], bytes.len());
    for length in last..full {
        // As a file system leaves it: short, or at full length with zeros or old bytes where nothing was written.
        let mut tails = vec![bytes[..length].to_vec()];
        for filler in [0_u8, b'7'] {
            let mut tail = bytes[..length].to_vec();
            tail.resize(full, filler);
            tails.push(tail);
        }
        for tail in tails {
            let disk = disk_with(&tail);
            let read = recover(&disk, &path()).unwrap();
            assert_eq!(read.entries, whole()[..count - 1], "torn at {length}");
            let torn = (tail.len() > last).then_some(tail.len() - last);
            assert_eq!(read.cut.as_ref().map(|c| c.bytes), torn);
            assert_eq!(read.damage, None);
            let resumed = Keeper::resume(&disk, &path(), route()).unwrap();
            assert_eq!((resumed.cut, resumed.kept), (read.cut, None));
            assert_eq!(disk.read(&path(), FILE_CAP).unwrap(), bytes[..last]);
        }
    }
}

#[test]
fn every_torn_length_of_a_whole_journal_gives_its_good_lines() {
    let (bytes, ends) = written(20);
    for length in 0..=bytes.len() {
        let disk = disk_with(&bytes[..length]);
        let read = recover(&disk, &path()).unwrap();
        let good = ends.iter().filter(|end| **end <= length).count();
        assert_eq!(read.entries, whole()[..good], "torn at {length}");
        assert_eq!(read.damage, None);
        if good == 0 {
            let nothing = Keeper::resume(&disk, &path(), route()).unwrap_err();
            assert!(matches!(nothing, ResumeFault::Journal(JournalFault::Nothing { .. })), "{nothing}");
        }
    }
}

/// Every byte of a journal is flipped in turn. Nothing false is taken for good, what is lost is told, and the
/// file is kept.
#[test]
fn every_flipped_byte_is_found() {
    let count = 12;
    let (bytes, ends) = written(count);
    for at in 0..bytes.len() {
        let mut flipped = bytes.clone();
        flipped[at] ^= 0x04;
        let disk = disk_with(&flipped);
        let read = recover(&disk, &path()).unwrap();
        let line = ends.iter().filter(|end| **end <= at).count();
        assert_eq!(read.entries, whole()[..line], "flipped {at}");
        let feed = ends.contains(&(at + 1));
        let good_after = (count - line - 1).saturating_sub(usize::from(feed));
        if good_after == 0 {
            assert!(read.cut.is_some() && read.damage.is_none(), "flipped {at}");
        } else {
            let damage = read.damage.unwrap();
            assert_eq!((damage.line, damage.good_after), (line + 1, good_after), "flipped {at}");
        }
        if line == 0 {
            continue;
        }
        let resumed = Keeper::resume(&disk, &path(), route()).unwrap();
        if line + 1 < count {
            let kept = resumed.kept.unwrap();
            assert_eq!(kept, Path::new("/data/walks/t2-000001.journal.damaged-1"));
            assert_eq!(disk.read(&kept, FILE_CAP).unwrap(), flipped);
        }
        assert_eq!(disk.read(&path(), FILE_CAP).unwrap(), bytes[..resumed_length(&ends, line)]);
    }
}

fn resumed_length(ends: &[usize], lines: usize) -> usize {
    lines.checked_sub(1).map_or(0, |last| ends[last])
}

#[test]
fn a_second_damage_gets_a_second_name() {
    let (mut bytes, ends) = written(12);
    bytes[ends[4] + 30] ^= 1;
    let disk = disk_with(&bytes);
    let first = Keeper::resume(&disk, &path(), route()).unwrap();
    let told = first.damage.unwrap().to_string();
    assert!(told.contains("line 6") && told.contains("5 before it and 6 after it"), "{told}");
    disk.plant(&path(), &bytes);
    let second = Keeper::resume(&disk, &path(), route()).unwrap();
    assert_eq!(second.kept.unwrap(), Path::new("/data/walks/t2-000001.journal.damaged-2"));
    assert_eq!(disk.read(&first.kept.unwrap(), FILE_CAP).unwrap(), bytes);
}

#[test]
fn a_line_of_a_newer_version_is_never_cut() {
    let (mut bytes, _) = written(5);
    let json = r#"{"at":"2026-07-03T16:00:00Z","offset_minutes":0,"event":{"event":"sung"}}"#;
    bytes.extend(format!("j1 {:07} {:08x} {json}\n", json.len(), crc32fast::hash(json.as_bytes())).bytes());
    let read = recover(&disk_with(&bytes), &path()).unwrap();
    assert_eq!((read.entries.len(), &read.cut), (5, &None));
    let damage = read.damage.unwrap();
    assert_eq!((damage.line, damage.good_after), (6, 0));
    assert!(damage.to_string().contains("no event this version of the program knows"));
}

#[test]
fn events_the_walk_refuses_are_not_passed_over() {
    let mut bytes = written(3).0;
    bytes.extend(line::encode(&entry(9, step_shown(STEPS[0]))).unwrap());
    let disk = disk_with(&bytes);
    let refused = Keeper::resume(&disk, &path(), route()).unwrap_err();
    assert!(matches!(refused, ResumeFault::Refused { event: 4, refused: Refused::NotOpened }), "{refused}");
    assert_eq!(disk.read(&path(), FILE_CAP).unwrap(), bytes, "left as it was");
    let aside = set_aside(&disk, &path()).unwrap();
    assert_eq!(disk.read(&aside, FILE_CAP).unwrap(), bytes);
    assert!(open_walks(&disk, Path::new("/data")).unwrap().is_empty());
}

#[test]
fn a_journal_is_bounded() {
    let disk = MemoryDisk::new();
    disk.make_dir(Path::new("/data/walks")).unwrap();
    let mut journal = Journal::create(&disk, &path(), &entry(0, began())).unwrap();
    // No walk accepts such a text; the journal does not rely on it.
    let code = |length| entry(1, Event::AgentOn { code: "x".repeat(length) });
    let too_long = journal.append(&code(line::LINE_CAP)).unwrap_err();
    assert!(matches!(too_long, JournalFault::TooLong { .. }) && !journal.is_poisoned());
    let big = code(line::LINE_CAP - 200);
    let full = (0..100).find_map(|_| journal.append(&big).err()).unwrap();
    assert!(matches!(full, JournalFault::Full) && !journal.is_poisoned());
    let length = disk.read(&path(), FILE_CAP).unwrap().len();
    assert!(length > 62 << 20 && length <= 64 << 20, "{length}");
    assert_eq!(recover(&disk, &path()).unwrap().entries.len(), usize::try_from(journal.events()).unwrap());
    let small = MemoryDisk::new();
    small.plant(&path(), &vec![b'x'; (64 << 20) + 1]);
    let fault = recover(&small, &path()).unwrap_err();
    assert!(matches!(fault, JournalFault::Access(DiskFault::TooLarge { .. })), "{fault}");
}

#[test]
fn a_walk_is_begun_once() {
    let disk = disk_with(&written(4).0);
    let again = Keeper::begin(&disk, &path(), route(), &entry(0, began())).unwrap_err();
    assert!(again.to_string().contains("exists already"), "{again}");
    assert_eq!(recover(&disk, &path()).unwrap().entries.len(), 4);
}

#[test]
fn open_walks_are_listed_with_what_can_be_read() {
    let data = Path::new("/data");
    let disk = MemoryDisk::new();
    assert!(open_walks(&disk, data).unwrap().is_empty());
    let bytes: Vec<u8> = entries([began()].into_iter().chain(opening()))
        .iter()
        .flat_map(|e| line::encode(e).unwrap())
        .collect();
    disk.plant(&journal_path(data, "b"), &bytes);
    disk.plant(&journal_path(data, "a"), b"rubbish");
    disk.plant(&data.join("walks/b.journal.damaged-1"), b"x");
    let open = open_walks(&disk, data).unwrap();
    assert_eq!(open.iter().map(|w| w.id.as_str()).collect::<Vec<_>>(), ["a", "b"]);
    assert_eq!((open[0].unit(), open[0].people().len(), open[0].began_at()), (None, 0, None));
    let b = &open[1];
    assert_eq!((b.unit(), b.agent(), b.people().len()), (Some("wren"), Some("K4"), 3));
    assert_eq!(b.scripts(), Some("5c".repeat(32).as_str()));
    assert!(b.began_at() < b.last_at() && !b.seal_begun());
    disk.plant(&journal_path(data, "b"), &written(whole().len()).0);
    assert!(open_walks(&disk, data).unwrap()[1].seal_begun());
}

#[test]
fn a_sealed_walk_retires_its_journal() {
    let disk = disk_with(&written(whole().len()).0);
    let (walk, journal) = Keeper::resume(&disk, &path(), route()).unwrap().keeper.into_parts();
    assert!(walk.seal().is_some());
    journal.retire(&disk).unwrap();
    assert!(open_walks(&disk.after_worst_power_cut(), Path::new("/data")).unwrap().is_empty());
}
