//! Bags in ZIP files that other programs write, and ZIP files that mean harm.

use std::io::Write as _;
use std::path::Path;

use flate2::Compression;
use flate2::write::DeflateEncoder;
use proptest::prelude::*;
use sendoff::ports::fake::MemoryDisk;
use sendoff::ports::system::SystemDisk;
use sendoff::record::bag::{BagFault, judge_path};

use super::{Bag, HELLO};
use crate::seal::{has, run, words};

/// An entry as it is to be written: right, unless a field says otherwise.
#[derive(Debug, Clone)]
struct Entry {
    name: String,
    content: Vec<u8>,
    deflated: bool,
    /// Sizes behind the content instead of before it (APPNOTE 4.3.9).
    descriptor: bool,
    /// Sizes and place in the extra field of ZIP64.
    large: bool,
    /// The name in the local header, if it is another.
    local_name: Option<String>,
    flags: u16,
    method: Option<u16>,
    crc: Option<u32>,
    size: Option<u32>,
    mode: u32,
    /// Bytes behind it that belong to no entry.
    gap: usize,
}

fn entry(name: &str, content: &[u8]) -> Entry {
    Entry {
        name: name.to_owned(),
        content: content.to_vec(),
        deflated: true,
        descriptor: false,
        large: false,
        local_name: None,
        flags: 0,
        method: None,
        crc: None,
        size: None,
        mode: 0o100_644,
        gap: 0,
    }
}

/// A whole ZIP file.
#[derive(Debug, Clone, Default)]
struct Zip {
    entries: Vec<Entry>,
    before: Vec<u8>,
    comment: Vec<u8>,
    /// The end record of ZIP64 too.
    large: bool,
    /// The second entry has the place of the first.
    shared: bool,
}

fn deflate(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = DeflateEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(bytes).unwrap();
    encoder.finish().unwrap()
}

fn put(out: &mut Vec<u8>, parts: &[&[u8]]) {
    parts.iter().for_each(|part| out.extend_from_slice(part));
}

impl Zip {
    fn of(bag: &Bag, root: &str) -> Self {
        let entries = bag.0.iter().map(|(name, bytes)| entry(&format!("{root}{name}"), bytes));
        Self { entries: entries.collect(), ..Self::default() }
    }

    fn change(mut self, change: impl FnOnce(&mut Entry)) -> Self {
        // The payload, so that what is read first is right.
        change(self.entries.iter_mut().find(|entry| entry.name.ends_with("hello.txt")).unwrap());
        self
    }

    fn and(mut self, entry: Entry) -> Self {
        self.entries.push(entry);
        self
    }

    fn bytes(&self) -> Vec<u8> {
        let (mut out, mut directory) = (self.before.clone(), Vec::new());
        let mut first = None;
        for entry in &self.entries {
            let at = out.len();
            let packed = if entry.deflated { deflate(&entry.content) } else { entry.content.clone() };
            let crc = entry.crc.unwrap_or_else(|| crc32fast::hash(&entry.content)).to_le_bytes();
            let size = entry.size.unwrap_or_else(|| u32::try_from(entry.content.len()).unwrap());
            let packed_size = u32::try_from(packed.len()).unwrap();
            let method = entry.method.unwrap_or(if entry.deflated { 8 } else { 0 }).to_le_bytes();
            let flags = (entry.flags | if entry.descriptor { 8 } else { 0 }).to_le_bytes();
            let local_name = entry.local_name.as_ref().unwrap_or(&entry.name).as_bytes();
            let sizes = [packed_size.to_le_bytes(), size.to_le_bytes()].concat();
            let local_sizes = if entry.descriptor { [0; 12].to_vec() } else { [&crc[..], &sizes].concat() };
            let name_len = |name: &[u8]| u16::try_from(name.len()).unwrap().to_le_bytes();
            put(&mut out, &[&LOCAL, &20_u16.to_le_bytes(), &flags, &method, &[0; 4], &local_sizes]);
            put(&mut out, &[&name_len(local_name), &9_u16.to_le_bytes(), local_name, UNIX_EXTRA, &packed]);
            if entry.descriptor {
                put(&mut out, &[b"PK\x07\x08", &crc, &sizes]);
            }
            out.extend(std::iter::repeat_n(0, entry.gap));
            let at = if self.shared { *first.get_or_insert(at) } else { at };
            let (at, large) = (u32::try_from(at).unwrap(), u32::MAX.to_le_bytes());
            let extra = if entry.large {
                let long = [size, packed_size, at].map(|n| u64::from(n).to_le_bytes()).concat();
                [UNIX_EXTRA, b"\x01\x00\x18\x00", &long].concat()
            } else {
                UNIX_EXTRA.to_vec()
            };
            let (sizes, at) = if entry.large { (large.repeat(2), large) } else { (sizes, at.to_le_bytes()) };
            put(&mut directory, &[CENTRAL, &[20, 3, 20, 0], &flags, &method, &[0; 4], &crc, &sizes]);
            put(&mut directory, &[&name_len(entry.name.as_bytes()), &name_len(&extra), &[0; 6]]);
            put(&mut directory, &[&(entry.mode << 16).to_le_bytes(), &at, entry.name.as_bytes(), &extra]);
        }
        self.end(&mut out, &directory);
        out
    }

    fn end(&self, out: &mut Vec<u8>, directory: &[u8]) {
        let (start, size, count) = (out.len(), directory.len(), self.entries.len());
        out.extend_from_slice(directory);
        let at = out.len();
        let long = |n: usize| u64::try_from(n).unwrap().to_le_bytes();
        let short = |n: usize| u32::try_from(n).unwrap().to_le_bytes();
        if self.large {
            put(out, &[b"PK\x06\x06", &44_u64.to_le_bytes(), &[45, 0, 45, 0], &[0; 8]]);
            put(out, &[&long(count), &long(count), &long(size), &long(start)]);
            put(out, &[b"PK\x06\x07", &[0; 4], &long(at), &1_u32.to_le_bytes()]);
        }
        let number = u16::try_from(count).unwrap().to_le_bytes();
        let [number, whole] = if self.large { [[0xff; 2]; 2] } else { [number; 2] };
        let [size, start] = if self.large { [[0xff; 4]; 2] } else { [short(size), short(start)] };
        let comment = u16::try_from(self.comment.len()).unwrap().to_le_bytes();
        put(out, &[b"PK\x05\x06", &[0; 4], &number, &whole, &size, &start, &comment, &self.comment]);
    }
}

const LOCAL: [u8; 4] = *b"PK\x03\x04";
const CENTRAL: &[u8] = b"PK\x01\x02";
/// The time of change as Info-ZIP notes it (its `proginfo/extrafld.txt`).
const UNIX_EXTRA: &[u8] = b"UT\x05\x00\x03\x00\x00\x00\x00";

fn verdict(bytes: &[u8]) -> Result<Vec<String>, BagFault> {
    let disk = MemoryDisk::new();
    disk.plant(Path::new("/in/bag.zip"), bytes);
    judge_path(&disk, Path::new("/in/bag.zip"))
}

fn bag() -> Zip {
    Zip::of(&Bag::of("1.0").tagged(""), "bag/")
}

#[test]
fn what_zip_files_usually_have_is_taken() {
    let all = |change: fn(&mut Entry)| {
        let mut zip = bag();
        zip.entries.iter_mut().for_each(change);
        zip
    };
    let cases = [
        ("deflated", bag()),
        ("stored", all(|entry| entry.deflated = false)),
        ("descriptors", all(|entry| entry.descriptor = true)),
        ("ZIP64 sizes", all(|entry| entry.large = true)),
        ("ZIP64 end", Zip { large: true, ..bag() }),
        ("a comment", Zip { comment: b"packed by hand".to_vec(), ..bag() }),
        (
            "a comment that looks like an end",
            Zip { comment: b"PK\x05\x06 and more than an end record".to_vec(), ..bag() },
        ),
        ("entries of folders", bag().and(Entry { deflated: false, ..entry("bag/data/", b"") })),
        ("UTF-8 told", all(|entry| entry.flags = 0x800)),
    ];
    for (name, zip) in cases {
        assert_eq!(verdict(&zip.bytes()), Ok(Vec::new()), "{name}");
    }
    let beside = bag().and(entry("__MACOSX/bag/._x", b"x"));
    assert!(verdict(&beside.bytes()).unwrap().concat().contains("beside the bag"));
    let bare = Zip::of(&Bag::of("1.0"), "");
    assert!(verdict(&bare.bytes()).unwrap().concat().contains("no folder"));
}

#[test]
fn a_folder_without_files_needs_an_entry() {
    let empty = || Zip::of(&Bag::of("1.0").without("data/hello.txt").manifest(""), "bag/");
    assert_eq!(verdict(&empty().bytes()), Err(BagFault::NoPayload));
    let folder = Entry { deflated: false, ..entry("bag/data/", b"") };
    assert_eq!(verdict(&empty().and(folder).bytes()), Ok(Vec::new()));
}

/// What would let two readers see two bags, or no reader the whole of one.
#[test]
fn zip_files_that_leave_doubt_are_refused() {
    let cases: Vec<(&str, Zip)> = vec![
        ("a name twice", bag().and(entry("bag/data/hello.txt", b"other"))),
        ("bytes shared", Zip { shared: true, ..bag() }),
        (
            "another name in the local header",
            bag().change(|e| e.local_name = Some("bag/data/jello.txt".to_owned())),
        ),
        ("a wrong check sum", bag().change(|e| e.crc = Some(1))),
        ("a size too small", bag().change(|e| e.size = Some(5))),
        ("a size too large", bag().change(|e| e.size = Some(7))),
        ("stored, sizes apart", bag().change(|e| (e.deflated, e.size) = (false, Some(7)))),
        ("deflated in name only", bag().change(|e| (e.deflated, e.method) = (false, Some(8)))),
        ("bytes before it", Zip { before: b"#!/bin/sh\n".to_vec(), ..bag() }),
        ("bytes between", bag().change(|e| e.gap = 40)),
        ("bytes like a descriptor that is not told of", bag().change(|e| e.gap = 16)),
        ("leads out", bag().and(entry("../x", b"x"))),
        ("leads out by dots in the middle", bag().and(entry("bag/data/../../x", b"x"))),
        ("absolute", bag().and(entry("/x", b"x"))),
        ("no name", bag().and(entry("", b"x"))),
        ("two slashes", bag().and(entry("bag//x", b"x"))),
        ("file and folder", bag().and(entry("bag/data/hello.txt/x", b"x"))),
        ("a folder with content", bag().and(entry("bag/notes/", b"x"))),
        (
            "two bags",
            Zip { entries: [bag().entries, Zip::of(&Bag::of("1.0"), "other/").entries].concat(), ..bag() },
        ),
    ];
    for (name, zip) in cases {
        let said = verdict(&zip.bytes());
        assert!(matches!(said, Err(BagFault::Zip { .. })), "{name}: {said:?}");
    }
    let link = bag().and(Entry { mode: 0o120_777, ..entry("bag/data/link", b"hello.txt") });
    assert!(matches!(verdict(&link.bytes()), Err(BagFault::NoFile { .. })));
    // Bags in such files are judged like any other.
    let more = bag().and(entry("bag/data/more", b""));
    assert!(matches!(verdict(&more.bytes()), Err(BagFault::NotListed { .. })));
    let nested = Zip::of(&Bag::of("1.0").without("bagit.txt"), "bag/");
    assert!(matches!(verdict(&nested.bytes()), Err(BagFault::Declaration { .. })));
}

#[test]
fn what_cannot_be_unpacked_here_is_said_to_be_so() {
    for zip in [bag().change(|e| e.flags = 1), bag().change(|e| e.method = Some(12))] {
        assert!(verdict(&zip.bytes()).unwrap_err().cannot_judge());
    }
    let mut bytes = bag().bytes();
    let at = bytes.windows(5).rposition(|five| five == b"hello").unwrap();
    bytes[at] = 0xff;
    assert!(verdict(&bytes).unwrap_err().cannot_judge());
}

/// A file that swells: 8 GiB of zeros are told of in the directory, and not one of them is made.
#[test]
fn a_zip_file_that_swells_is_not_unpacked() {
    let mut zip = bag();
    for n in 0..4 {
        zip = zip.and(Entry { size: Some(2 << 30), ..entry(&format!("bag/data/{n}"), b"0") });
    }
    let fault = verdict(&zip.bytes()).unwrap_err();
    assert!(fault.cannot_judge() && fault.to_string().contains("unpacks to"), "{fault}");
    // Less than the directory tells is cut off where it says so.
    let zeros = vec![0; 16 << 20];
    let small = bag().change(|e| (e.content, e.size) = (zeros, Some(6)));
    assert!(matches!(verdict(&small.bytes()), Err(BagFault::Zip { .. })));
}

/// As Python's own module writes it to a stream: descriptors, and ZIP64 where it cannot know.
#[test]
fn zip_files_of_python_are_taken() {
    if !has("python3", &["-c", "import zipfile"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    Bag::of("1.0").listing("data/größe", "data/größe").put(&dir.path().join("bag"));
    let script = "import sys, os, zipfile\n\
        class Pipe:\n\
        \x20   def __init__(self, f): self.f = f\n\
        \x20   def write(self, b): return self.f.write(b)\n\
        \x20   def flush(self): self.f.flush()\n\
        with open('piped.zip', 'wb') as f, zipfile.ZipFile(Pipe(f), 'w', zipfile.ZIP_DEFLATED) as z:\n\
        \x20   for top, _, names in os.walk('bag'):\n\
        \x20       for n in names:\n\
        \x20           p = os.path.join(top, n)\n\
        \x20           with z.open(p, 'w', force_zip64=True) as o: o.write(open(p, 'rb').read())\n";
    let out = run(dir.path(), "python3", &["-c", script], b"");
    assert!(out.status.success(), "{}", words(&out));
    assert_eq!(judge_path(&SystemDisk, &dir.path().join("piped.zip")), Ok(Vec::new()));
}

/// As stock `zip` writes it to a pipe, to which it cannot go back.
#[test]
fn zip_files_from_a_pipe_are_taken() {
    if !has("zip", &["-v"]) || !has("sh", &["-c", "true"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    Bag::of("1.0").and(HELLO, "data/b").with("data/b", "hello\n").put(&dir.path().join("bag"));
    let out = run(dir.path(), "sh", &["-c", "zip -q -r - bag | cat > piped.zip"], b"");
    assert!(out.status.success(), "{}", words(&out));
    assert_eq!(judge_path(&SystemDisk, &dir.path().join("piped.zip")), Ok(Vec::new()));
}

proptest! {
    /// Bytes changed anywhere: refused, or still the same bag, since the payload has its digests.
    #[test]
    fn changed_zip_files_never_panic(at in any::<prop::sample::Index>(), to in any::<u8>(), cut in any::<prop::sample::Index>()) {
        let mut bytes = bag().bytes();
        let at = at.index(bytes.len());
        bytes[at] = to;
        let _ = verdict(&bytes);
        bytes.truncate(cut.index(bytes.len()));
        prop_assert!(verdict(&bytes).is_err());
    }

    #[test]
    fn any_bytes_are_refused(bytes in prop::collection::vec(any::<u8>(), 0..2_000), tail in any::<bool>()) {
        let mut bytes = bytes;
        if tail {
            bytes.extend_from_slice(b"PK\x05\x06\0\0\0\0\x01\0\x01\0\x2e\0\0\0\0\0\0\0\0\0");
        }
        prop_assert!(verdict(&bytes).is_err());
    }
}
