//! A ZIP file of which exactly one layout is written and exactly that layout is read.
//!
//! Two ZIP readers can see two different contents in one file: with a name given twice, or a gap that hides a
//! second directory, one tool reads the forged file and another the honest one. A sealed record allows none of
//! it: STORE only (so nothing can swell), local headers back to back from the first byte, a central directory
//! equal to them, no comment, no extra field, no descriptor, no ZIP64, no name twice. For a list of entries
//! there is one sequence of bytes, and [`read`] accepts that sequence and nothing else.
//! Nothing is ever extracted to a disk: the entries that [`read`] returns borrow from the buffer.
//!
//! Layout: PKWARE APPNOTE 6.3, sections 4.3.7 (local header), 4.3.12 (central directory), 4.3.16 (end).

use std::collections::BTreeSet;

/// The most entries one file may hold.
pub const MAX_ENTRIES: usize = 512;
/// The most bytes one file may have: 64 MiB.
pub const MAX_BYTES: u64 = 64 << 20;
/// The longest name of an entry, in bytes.
pub const MAX_NAME: usize = 200;

const LOCAL: u32 = 0x0403_4b50;
const CENTRAL: u32 = 0x0201_4b50;
const END: u32 = 0x0605_4b50;
const END_LEN: usize = 22;
/// Version 2.0: what STORE with folders in names needs.
const VERSION: u16 = 20;
/// 1980-01-01, the first date that ZIP can say: a record's time stands in the record.
const DOS_DATE: u16 = (1 << 5) | 1;

/// One file of the ZIP, borrowed from its bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Entry<'a> {
    /// Its path, with `/` between the parts.
    pub name: &'a str,
    /// Its content.
    pub bytes: &'a [u8],
}

/// Why bytes are not the one accepted layout, or entries cannot be written in it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ZipFault {
    /// More bytes than a record may have.
    #[error("it holds {len} bytes; a record has at most {MAX_BYTES}")]
    TooLarge {
        /// How many there are.
        len: u64,
    },
    /// More entries than a record may have.
    #[error("it lists {count} entries; a record has at most {MAX_ENTRIES}")]
    TooMany {
        /// How many there are.
        count: usize,
    },
    /// The file stops in the middle of something, or is no ZIP at all.
    #[error("it is cut off: {what} is not all there")]
    Short {
        /// What should have stood there.
        what: &'static str,
    },
    /// A fixed mark of the format is missing.
    #[error("{what} was expected at byte {at} and is not there")]
    Mark {
        /// What should have stood there.
        what: &'static str,
        /// Where, counted from 0.
        at: usize,
    },
    /// A field has another value than the one accepted.
    #[error("entry {entry}: {what}")]
    Field {
        /// Which entry, counted from 1.
        entry: usize,
        /// What is wrong.
        what: &'static str,
    },
    /// Something stands where nothing may stand.
    #[error("{what}: bytes that belong to no entry")]
    Gap {
        /// Where.
        what: &'static str,
    },
    /// A name that is not allowed.
    #[error("the name {name:?} is not allowed: {why}")]
    Name {
        /// The name.
        name: String,
        /// What is wrong with it.
        why: &'static str,
    },
    /// A name given twice.
    #[error("the name {name:?} stands there twice")]
    Twice {
        /// The name.
        name: String,
    },
    /// The content does not fit its check sum.
    #[error("{name}: the check sum does not fit the content")]
    CheckSum {
        /// The entry.
        name: String,
    },
}

/// Whether a path may stand in a record: `A-Z a-z 0-9 . _ -` in parts joined by `/`, no empty part, no `.`, no `..`.
///
/// # Errors
/// [`ZipFault::Name`] with the reason.
pub fn check_name(name: &str) -> Result<(), ZipFault> {
    let fault = |why| Err(ZipFault::Name { name: name.chars().take(MAX_NAME).collect(), why });
    if name.is_empty() {
        return fault("it is empty");
    }
    if name.len() > MAX_NAME {
        return fault("it is longer than 200 bytes");
    }
    if !name.bytes().all(|b| b.is_ascii_alphanumeric() || b"/._-".contains(&b)) {
        return fault("only A-Z, a-z, 0-9 and . _ - / may stand in it");
    }
    if name.split('/').any(|part| matches!(part, "" | "." | "..")) {
        return fault("a part of it is empty, '.' or '..'");
    }
    Ok(())
}

/// Writes entries in the order given. Same entries, same bytes.
///
/// # Errors
/// Too many entries, too many bytes, a name that is not allowed or stands there twice.
pub fn write(entries: &[Entry<'_>]) -> Result<Vec<u8>, ZipFault> {
    if entries.len() > MAX_ENTRIES {
        return Err(ZipFault::TooMany { count: entries.len() });
    }
    let len = entries.iter().fold(END_LEN as u64, |sum, e| {
        sum.saturating_add(76).saturating_add(e.bytes.len() as u64).saturating_add(2 * e.name.len() as u64)
    });
    if len > MAX_BYTES {
        return Err(ZipFault::TooLarge { len });
    }
    let mut names = BTreeSet::new();
    let mut files = Vec::with_capacity(usize::try_from(len).unwrap_or_default());
    let mut directory = Vec::new();
    for entry in entries {
        check_name(entry.name)?;
        if !names.insert(entry.name) {
            return Err(ZipFault::Twice { name: entry.name.to_owned() });
        }
        let at = small(files.len())?;
        let shared = shared_fields(entry, crc32fast::hash(entry.bytes))?;
        put(&mut files, &[&LOCAL.to_le_bytes(), &shared, entry.name.as_bytes(), entry.bytes]);
        put(&mut directory, &[&CENTRAL.to_le_bytes(), &VERSION.to_le_bytes(), &shared]);
        // Comment length, disk, two kinds of attributes: all nothing.
        put(&mut directory, &[&[0; 10], &at.to_le_bytes(), entry.name.as_bytes()]);
    }
    let (start, size) = (small(files.len())?, small(directory.len())?);
    let count = u16::try_from(entries.len()).unwrap_or(u16::MAX).to_le_bytes();
    put(&mut files, &[&directory, &END.to_le_bytes(), &[0; 4], &count, &count]);
    put(&mut files, &[&size.to_le_bytes(), &start.to_le_bytes(), &[0; 2]]);
    Ok(files)
}

fn put(out: &mut Vec<u8>, parts: &[&[u8]]) {
    for part in parts {
        out.extend_from_slice(part);
    }
}

fn small(len: usize) -> Result<u32, ZipFault> {
    u32::try_from(len).map_err(|_| ZipFault::TooLarge { len: len as u64 })
}

/// The 26 bytes that local header and central directory have in common.
fn shared_fields(entry: &Entry<'_>, crc: u32) -> Result<[u8; 26], ZipFault> {
    let size = small(entry.bytes.len())?.to_le_bytes();
    let name = u16::try_from(entry.name.len()).unwrap_or(u16::MAX).to_le_bytes();
    let mut out = Vec::with_capacity(26);
    // Flags, method STORE and time of day are nothing; so is the length of the extra field at the end.
    put(&mut out, &[&VERSION.to_le_bytes(), &[0; 6], &DOS_DATE.to_le_bytes(), &crc.to_le_bytes()]);
    put(&mut out, &[&size, &size, &name, &[0; 2]]);
    out.try_into().map_err(|_| ZipFault::Short { what: "a header" })
}

/// Reads the entries of a file in the one accepted layout.
///
/// # Errors
/// The first thing that differs from that layout.
pub fn read(bytes: &[u8]) -> Result<Vec<Entry<'_>>, ZipFault> {
    if bytes.len() as u64 > MAX_BYTES {
        return Err(ZipFault::TooLarge { len: bytes.len() as u64 });
    }
    let end = bytes.len().checked_sub(END_LEN).ok_or(ZipFault::Short { what: "the end record" })?;
    let mut tail = Cursor { bytes, at: end };
    tail.mark(END, "the end record")?;
    if tail.u32("the end record")? != 0 {
        return Err(ZipFault::Gap { what: "more than one disk" });
    }
    let (here, count) = (tail.u16("the end record")?, usize::from(tail.u16("the end record")?));
    let (size, start) = (tail.len("the end record")?, tail.len("the end record")?);
    if usize::from(here) != count || start.checked_add(size) != Some(end) {
        return Err(ZipFault::Gap { what: "around the directory" });
    }
    if tail.u16("the end record")? != 0 {
        return Err(ZipFault::Gap { what: "a comment at the end" });
    }
    if count > MAX_ENTRIES {
        return Err(ZipFault::TooMany { count });
    }
    let mut local = Cursor { bytes, at: 0 };
    let mut central = Cursor { bytes, at: start };
    let mut names = BTreeSet::new();
    let mut entries = Vec::with_capacity(count);
    for number in 1..=count {
        let entry = read_entry(&mut local, &mut central, number)?;
        if !names.insert(entry.name) {
            return Err(ZipFault::Twice { name: entry.name.to_owned() });
        }
        entries.push(entry);
    }
    if local.at != start || central.at != end {
        return Err(ZipFault::Gap { what: "between the last entry and the directory" });
    }
    Ok(entries)
}

/// The content of the first entry of this name in any folder, found by going from local header to local header;
/// nothing is verified. For a first look at what a file means to be.
#[must_use]
pub fn peek<'a>(bytes: &'a [u8], name: &str) -> Option<&'a [u8]> {
    let mut local = Cursor { bytes, at: 0 };
    for _ in 0..MAX_ENTRIES {
        local.mark(LOCAL, "a local header").ok()?;
        let mut fields = Cursor { bytes: local.take(26, "a local header").ok()?, at: 18 };
        let size = fields.len("a header").ok()?;
        let name_len = usize::from(fields.u16("a header").ok()?);
        let found = local.take(name_len, "a name").ok()?;
        let content = local.take(size, "the content of an entry").ok()?;
        let file = found.rsplit(|b| *b == b'/').next();
        if file == Some(name.as_bytes()) {
            return Some(content);
        }
    }
    None
}

fn read_entry<'a>(
    local: &mut Cursor<'a>,
    central: &mut Cursor<'a>,
    entry: usize,
) -> Result<Entry<'a>, ZipFault> {
    let fault = |what| ZipFault::Field { entry, what };
    let at = local.at;
    local.mark(LOCAL, "a local header")?;
    central.mark(CENTRAL, "a directory entry")?;
    if central.u16("a directory entry")? != VERSION {
        return Err(fault("made by another version of the format"));
    }
    let shared = local.take(26, "a local header")?;
    if central.take(26, "a directory entry")? != shared {
        return Err(fault("directory and local header differ"));
    }
    let mut fields = Cursor { bytes: shared, at: 0 };
    if fields.u16("a header")? != VERSION {
        return Err(fault("needs another version of the format"));
    }
    if fields.u32("a header")? != 0 {
        return Err(fault("flags are set or it is compressed: only STORE is accepted"));
    }
    if fields.u32("a header")? != u32::from(DOS_DATE) << 16 {
        return Err(fault("its date is not the fixed one, 1980-01-01"));
    }
    let crc = fields.u32("a header")?;
    let (packed, size) = (fields.len("a header")?, fields.len("a header")?);
    let name_len = usize::from(fields.u16("a header")?);
    if packed != size {
        return Err(fault("its two sizes differ"));
    }
    if fields.u16("a header")? != 0 {
        return Err(fault("it has an extra field"));
    }
    if central.take(10, "a directory entry")?.iter().any(|b| *b != 0) {
        return Err(fault("it has a comment, another disk or attributes"));
    }
    if central.len("a directory entry")? != at {
        return Err(fault("its place is not right behind the entry before it"));
    }
    let name = local.take(name_len, "a name")?;
    if central.take(name_len, "a name")? != name {
        return Err(fault("directory and local header give it two names"));
    }
    let name = std::str::from_utf8(name).map_err(|_| fault("its name is not UTF-8"))?;
    check_name(name)?;
    let content = local.take(size, "the content of an entry")?;
    if crc32fast::hash(content) != crc {
        return Err(ZipFault::CheckSum { name: name.to_owned() });
    }
    Ok(Entry { name, bytes: content })
}

/// Reads little-endian numbers; whatever lies beyond the end is a fault and never a panic.
#[derive(Debug, Clone, Copy)]
struct Cursor<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Cursor<'a> {
    fn take(&mut self, len: usize, what: &'static str) -> Result<&'a [u8], ZipFault> {
        let end = self.at.checked_add(len).ok_or(ZipFault::Short { what })?;
        let part = self.bytes.get(self.at..end).ok_or(ZipFault::Short { what })?;
        self.at = end;
        Ok(part)
    }

    fn array<const N: usize>(&mut self, what: &'static str) -> Result<[u8; N], ZipFault> {
        self.take(N, what)?.try_into().map_err(|_| ZipFault::Short { what })
    }

    fn u16(&mut self, what: &'static str) -> Result<u16, ZipFault> {
        Ok(u16::from_le_bytes(self.array(what)?))
    }

    fn u32(&mut self, what: &'static str) -> Result<u32, ZipFault> {
        Ok(u32::from_le_bytes(self.array(what)?))
    }

    fn len(&mut self, what: &'static str) -> Result<usize, ZipFault> {
        usize::try_from(self.u32(what)?).map_err(|_| ZipFault::Short { what })
    }

    fn mark(&mut self, mark: u32, what: &'static str) -> Result<(), ZipFault> {
        let at = self.at;
        if self.u32(what)? == mark { Ok(()) } else { Err(ZipFault::Mark { what, at }) }
    }
}
