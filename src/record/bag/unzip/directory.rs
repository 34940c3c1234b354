//! The directory of a ZIP file, and whether it leaves no doubt of what the file holds.

use std::collections::BTreeSet;
use std::path::Path;

use super::{fault, unreadable};
use crate::ports::Disk;
use crate::record::bag::contents::MAX_FILES;
use crate::record::bag::fault::BagFault;

const LOCAL: u32 = 0x0403_4b50;
const CENTRAL: u32 = 0x0201_4b50;
const END: u32 = 0x0605_4b50;
const END_64: u32 = 0x0606_4b50;
const LOCATOR_64: u32 = 0x0706_4b50;
const END_LEN: usize = 22;
const LOCATOR_LEN: usize = 20;
const LOCAL_LEN: u64 = 30;
/// The end record, its comment, and the locator of ZIP64 before it.
const TAIL: u64 = 22 + 65_535 + 20;
/// The most bytes of a directory: names of a million files.
const MAX_DIRECTORY: u64 = 256 << 20;

/// How an entry is packed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Method {
    Stored,
    Deflated,
}

/// One entry.
#[derive(Debug, Clone)]
pub(super) struct Entry {
    /// Its path; that of a folder ends in a slash.
    pub(super) name: String,
    pub(super) method: Method,
    pub(super) crc: u32,
    /// Its size unpacked.
    pub(super) size: u64,
    /// Where its packed bytes stand: from and to.
    pub(super) place: (u64, u64),
}

/// Where the directory stands, and how many entries it has.
struct Where {
    start: u64,
    end: u64,
    count: u64,
}

fn part(disk: &dyn Disk, path: &Path, start: u64, end: u64) -> Result<Vec<u8>, BagFault> {
    let mut bytes = Vec::new();
    disk.stream(path, start..end, &mut |piece| bytes.extend_from_slice(piece)).map_err(|f| unreadable(&f))?;
    if end.checked_sub(start) == u64::try_from(bytes.len()).ok() {
        Ok(bytes)
    } else {
        Err(fault("it is cut off"))
    }
}

/// Reads the entries of a ZIP file of so many bytes.
pub(super) fn read(disk: &dyn Disk, path: &Path, len: u64) -> Result<Vec<Entry>, BagFault> {
    let at = find(disk, path, len)?;
    let size = at.end.checked_sub(at.start).ok_or_else(|| fault("its directory is cut off"))?;
    if at.count > u64::try_from(MAX_FILES).unwrap_or(u64::MAX) || size > MAX_DIRECTORY {
        return Err(BagFault::CannotJudge { what: format!("a ZIP file of {} entries", at.count) });
    }
    let bytes = part(disk, path, at.start, at.end)?;
    let mut cursor = Cursor { bytes: &bytes };
    let mut entries = Vec::new();
    let mut names = BTreeSet::new();
    for _ in 0..at.count {
        let entry = central(&mut cursor)?;
        if !names.insert(entry.name.clone()) {
            return Err(fault(format!("{:?} stands in it twice", entry.name)));
        }
        entries.push(entry);
    }
    if !cursor.bytes.is_empty() {
        return Err(fault("its directory holds more than it tells"));
    }
    places(disk, path, at.start, &mut entries)?;
    Ok(entries)
}

fn find(disk: &dyn Disk, path: &Path, len: u64) -> Result<Where, BagFault> {
    let from = len.saturating_sub(TAIL);
    let tail = part(disk, path, from, len)?;
    let end = (0..=tail.len().saturating_sub(END_LEN)).rev().find(|at| ends_here(&tail, *at));
    let at = end.ok_or_else(|| fault("it is none: its end record is missing"))?;
    let mut cursor = Cursor { bytes: tail.get(at..).unwrap_or_default() };
    let _ = cursor.u32()?;
    let (disks, here, count) = (cursor.u32()?, cursor.u16()?, cursor.u16()?);
    let (size, start) = (cursor.u32()?, cursor.u32()?);
    let place = from.saturating_add(u64::try_from(at).unwrap_or(u64::MAX));
    let locator = at.checked_sub(LOCATOR_LEN).and_then(|at| tail.get(at..));
    let mut locator = Cursor { bytes: locator.unwrap_or_default() };
    if locator.u32().is_ok_and(|mark| mark == LOCATOR_64) {
        let _ = locator.u32()?;
        return find_64(disk, path, locator.u64()?, place.saturating_sub(20));
    }
    if disks != 0 || here != count {
        return Err(fault("it is one of several parts"));
    }
    let (start, size) = (u64::from(start), u64::from(size));
    if start.checked_add(size) != Some(place) {
        return Err(fault("its directory does not end where it should"));
    }
    Ok(Where { start, end: place, count: u64::from(count) })
}

/// Whether an end record stands here whose comment reaches to the end of the file.
fn ends_here(tail: &[u8], at: usize) -> bool {
    let mut cursor = Cursor { bytes: tail.get(at..).unwrap_or_default() };
    cursor.u32().is_ok_and(|mark| mark == END)
        && cursor.take(16).is_ok()
        && cursor.u16().is_ok_and(|comment| usize::from(comment) == cursor.bytes.len())
}

/// The end record of ZIP64, which ends where its locator stands.
fn find_64(disk: &dyn Disk, path: &Path, at: u64, locator: u64) -> Result<Where, BagFault> {
    if locator.checked_sub(at) != Some(56) {
        return Err(fault("its end record of ZIP64 is not where it should be"));
    }
    let bytes = part(disk, path, at, locator)?;
    let mut cursor = Cursor { bytes: &bytes };
    if cursor.u32()? != END_64 {
        return Err(fault("its end record of ZIP64 is missing"));
    }
    let _ = (cursor.u64()?, cursor.u32()?);
    let (disks, here, count) = (cursor.u64()?, cursor.u64()?, cursor.u64()?);
    let (size, start) = (cursor.u64()?, cursor.u64()?);
    if disks != 0 || here != count || start.checked_add(size) != Some(at) {
        return Err(fault("its directory does not end where it should"));
    }
    Ok(Where { start, end: at, count })
}

/// An entry of the directory; its place is that of its local header until [`places`] finds the bytes.
fn central(cursor: &mut Cursor<'_>) -> Result<Entry, BagFault> {
    if cursor.u32()? != CENTRAL {
        return Err(fault("an entry of its directory is missing"));
    }
    let (made_by, _needs) = (cursor.u16()?, cursor.u16()?);
    let (flags, method, _time) = (cursor.u16()?, cursor.u16()?, cursor.u32()?);
    let crc = cursor.u32()?;
    let (packed, size) = (cursor.u32()?, cursor.u32()?);
    let (name_len, extra_len, comment_len) = (cursor.u16()?, cursor.u16()?, cursor.u16()?);
    let (part, _inner, outer, at) = (cursor.u16()?, cursor.u16()?, cursor.u32()?, cursor.u32()?);
    let name = name_of(cursor.take(name_len.into())?)?;
    let extra = cursor.take(extra_len.into())?;
    let _comment = cursor.take(comment_len.into())?;
    let of = |what: &str| fault(format!("{name}: {what}"));
    if flags & 1 != 0 {
        return Err(BagFault::CannotJudge { what: format!("the password of the ZIP file ({name})") });
    }
    // Made on Unix, with the mode of a link in the upper half.
    if made_by >> 8 == 3 && (outer >> 16) & 0o170_000 == 0o120_000 {
        return Err(BagFault::NoFile { path: name, what: "a link" });
    }
    let method = match method {
        0 => Method::Stored,
        8 => Method::Deflated,
        other => return Err(BagFault::CannotJudge { what: format!("the packing method {other} of {name}") }),
    };
    let mut large = large(extra);
    let mut whole = |short: u32| match short {
        u32::MAX => large.u64().map_err(|_| of("its size is missing")),
        short => Ok(u64::from(short)),
    };
    let (size, packed, at) = (whole(size)?, whole(packed)?, whole(at)?);
    if part != 0 && part != u16::MAX {
        return Err(of("it lies in another part"));
    }
    if (method == Method::Stored && packed != size) || (name.ends_with('/') && size != 0) {
        return Err(of("its sizes make no sense"));
    }
    let end = at.checked_add(packed).ok_or_else(|| of("its sizes make no sense"))?;
    Ok(Entry { name, method, crc, size, place: (at, end) })
}

/// The extra field of ZIP64, if there is one.
fn large(extra: &[u8]) -> Cursor<'_> {
    let mut rest = Cursor { bytes: extra };
    while let (Ok(kind), Ok(len)) = (rest.u16(), rest.u16()) {
        match rest.take(len.into()) {
            Ok(bytes) if kind == 1 => return Cursor { bytes },
            Ok(_) => {}
            Err(_) => break,
        }
    }
    Cursor { bytes: &[] }
}

fn name_of(bytes: &[u8]) -> Result<String, BagFault> {
    let Ok(name) = std::str::from_utf8(bytes) else {
        return Err(BagFault::CannotJudge { what: "a name in the ZIP file that is not UTF-8".to_owned() });
    };
    let path = name.strip_suffix('/').unwrap_or(name);
    if path.contains('\0') || path.split('/').any(|part| matches!(part, "" | "." | "..")) {
        return Err(fault(format!("the name {name:?} leads out of it, or to nothing")));
    }
    Ok(name.to_owned())
}

/// Lengths of what may stand behind an entry that was written to a stream: check sum and two sizes of four or eight
/// bytes, with or without a mark (APPNOTE 4.3.9).
const DESCRIPTORS: [u64; 4] = [12, 16, 20, 24];

/// Finds the bytes of each entry behind its local header. Entries share no bytes, and between them stands nothing,
/// for a reader that goes from header to header would find there what the directory does not tell.
fn places(disk: &dyn Disk, path: &Path, directory: u64, entries: &mut [Entry]) -> Result<(), BagFault> {
    entries.sort_by_key(|entry| entry.place.0);
    let mut free = 0;
    let mut streamed = false;
    for entry in entries {
        let of = |what: &str| fault(format!("{}: {what}", entry.name));
        let (at, packed) = (entry.place.0, entry.place.1.saturating_sub(entry.place.0));
        no_gap(free, at, streamed)?;
        let header = at.saturating_add(LOCAL_LEN);
        let bytes = part(disk, path, at, header.min(directory))?;
        let mut cursor = Cursor { bytes: &bytes };
        if cursor.u32()? != LOCAL {
            return Err(of("its local header is missing"));
        }
        let (_needs, flags, method) = (cursor.u16()?, cursor.u16()?, cursor.u16()?);
        let _ = cursor.take(16)?;
        let (name_len, extra_len) = (u64::from(cursor.u16()?), u64::from(cursor.u16()?));
        let name = part(disk, path, header, header.saturating_add(name_len).min(directory))?;
        let known = if entry.method == Method::Stored { 0 } else { 8 };
        if name != entry.name.as_bytes() || method != known || flags & 1 != 0 {
            return Err(of("its local header says otherwise than the directory"));
        }
        let start = header.saturating_add(name_len).saturating_add(extra_len);
        let end = start.checked_add(packed).filter(|end| *end <= directory);
        let end = end.ok_or_else(|| of("it is cut off"))?;
        entry.place = (start, end);
        free = end;
        streamed = flags & 8 != 0;
    }
    no_gap(free, directory, streamed)
}

/// Whether what stands next begins where it may.
fn no_gap(free: u64, at: u64, streamed: bool) -> Result<(), BagFault> {
    match at.checked_sub(free) {
        Some(0) => Ok(()),
        Some(gap) if streamed && DESCRIPTORS.contains(&gap) => Ok(()),
        Some(_) => Err(fault(format!("at byte {free} stand bytes that belong to no entry"))),
        None => Err(fault("two of its entries share bytes")),
    }
}

/// Reads little-endian numbers off the front.
#[derive(Debug, Clone, Copy)]
struct Cursor<'a> {
    bytes: &'a [u8],
}

impl<'a> Cursor<'a> {
    fn take(&mut self, len: usize) -> Result<&'a [u8], BagFault> {
        let (part, rest) = self.bytes.split_at_checked(len).ok_or_else(|| fault("it is cut off"))?;
        self.bytes = rest;
        Ok(part)
    }

    fn array<const N: usize>(&mut self) -> Result<[u8; N], BagFault> {
        self.take(N)?.try_into().map_err(|_| fault("it is cut off"))
    }

    fn u16(&mut self) -> Result<u16, BagFault> {
        self.array().map(u16::from_le_bytes)
    }

    fn u32(&mut self) -> Result<u32, BagFault> {
        self.array().map(u32::from_le_bytes)
    }

    fn u64(&mut self) -> Result<u64, BagFault> {
        self.array().map(u64::from_le_bytes)
    }
}
