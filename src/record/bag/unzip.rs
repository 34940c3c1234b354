//! A bag in any ZIP file, as other programs write them: deflated, with extra fields, data descriptors, ZIP64.
//! Records have a layout of their own, which is judged elsewhere and stricter ([`zip`](crate::record::zip)).
//!
//! Nothing is unpacked to a disk. The directory is read first and must leave no doubt: a name stands there once, no
//! two entries share bytes, none stand between them, each local header says the same name. Contents are inflated piece by piece, never beyond
//! the size that the directory tells, so that a file that swells costs no memory.
//!
//! Layout: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.14 to 4.3.16, 4.5.3.

mod directory;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use flate2::{Decompress, FlushDecompress, Status};

use super::contents::{Contents, Each, Source, size_of};
use super::fault::BagFault;
use crate::ports::Disk;
use directory::{Entry, Method};

/// What is unpacked at most: so many bytes, or so many times the size of the file.
const MAX_UNPACKED: u64 = 4 << 30;
const MAX_TIMES: u64 = 100;
const PIECE: usize = 64 << 10;

fn fault(what: impl Into<String>) -> BagFault {
    BagFault::Zip { what: what.into() }
}

fn unreadable(fault: &crate::ports::DiskFault) -> BagFault {
    BagFault::Unreadable { what: fault.to_string() }
}

/// The bag in a ZIP file of so many bytes.
pub(super) fn open<'a>(disk: &'a dyn Disk, path: &'a Path, len: u64) -> Result<Contents<'a>, BagFault> {
    let all = directory::read(disk, path, len)?;
    let unpacked = all.iter().fold(0_u64, |sum, entry| sum.saturating_add(entry.size));
    if unpacked > MAX_UNPACKED && unpacked / MAX_TIMES > len {
        let what =
            format!("a ZIP file of {len} bytes that unpacks to {unpacked} (unpack it and give the folder)");
        return Err(BagFault::CannotJudge { what });
    }
    let root = root(&all)?;
    let (mut files, mut folders, mut entries) = (BTreeMap::new(), BTreeSet::new(), BTreeMap::new());
    let mut beside = BTreeSet::new();
    for entry in all {
        let Some(name) = entry.name.strip_prefix(&root) else {
            beside.insert(entry.name.split('/').next().unwrap_or_default().to_owned());
            continue;
        };
        if let Some(folder) = name.strip_suffix('/') {
            folders.insert(folder.to_owned());
        } else if !name.is_empty() {
            files.insert(name.to_owned(), entry.size);
            entries.insert(name.to_owned(), entry);
        }
    }
    let mut contents = Contents::new(files, folders, Box::new(Packed { disk, path, entries }));
    if let Some(both) = contents.files.keys().find(|path| contents.folders.contains(*path)) {
        return Err(fault(format!("{both:?} is a file and a folder in it")));
    }
    contents
        .remarks
        .extend(beside.into_iter().map(|name| format!("{name} lies beside the bag in the ZIP file")));
    if root.is_empty() {
        contents.remarks.push("the ZIP file has no folder of the bag around its files".to_owned());
    }
    Ok(contents)
}

/// The folder of the bag in the ZIP file, with a slash; empty where its files stand without one.
fn root(all: &[Entry]) -> Result<String, BagFault> {
    let roots: Vec<&str> = all
        .iter()
        .filter_map(|entry| entry.name.strip_suffix("bagit.txt"))
        .filter(|root| root.is_empty() || root.find('/') == Some(root.len().saturating_sub(1)))
        .collect();
    if roots.contains(&"") {
        return Ok(String::new());
    }
    match roots.as_slice() {
        [root] => Ok((*root).to_owned()),
        [] => {
            // A bag without its declaration is still looked at as one.
            let tops: BTreeSet<&str> =
                all.iter().filter_map(|entry| entry.name.split_once('/')).map(|(top, _)| top).collect();
            let tops: Vec<&str> = tops.into_iter().filter(|top| *top != "__MACOSX").collect();
            Ok(if let [top] = tops.as_slice() { format!("{top}/") } else { String::new() })
        }
        _ => Err(fault("it holds more than one bag")),
    }
}

struct Packed<'a> {
    disk: &'a dyn Disk,
    path: &'a Path,
    entries: BTreeMap<String, Entry>,
}

impl Source for Packed<'_> {
    fn stream(&self, path: &str, each: Each<'_>) -> Result<(), BagFault> {
        let Some(entry) = self.entries.get(path) else { return Ok(()) };
        let broken = |what: &str| fault(format!("{path}: {what}"));
        let mut sum = crc32fast::Hasher::new();
        let mut made = 0_u64;
        let mut take = |bytes: &[u8]| {
            sum.update(bytes);
            made = made.saturating_add(size_of(bytes));
            each(bytes);
        };
        let (start, end) = entry.place;
        let mut wrong = None;
        match entry.method {
            Method::Stored => {
                self.disk.stream(self.path, start..end, &mut take).map_err(|f| unreadable(&f))?;
            }
            Method::Deflated => {
                let mut inflater = Inflater::new(entry.size);
                let mut inflate = |bytes: &[u8]| {
                    if wrong.is_none() {
                        wrong = inflater.push(bytes, &mut take).err();
                    }
                };
                self.disk.stream(self.path, start..end, &mut inflate).map_err(|f| unreadable(&f))?;
                if wrong.is_none() && !inflater.ended {
                    wrong = Some("its packed bytes are cut off");
                }
            }
        }
        if let Some(what) = wrong {
            return Err(broken(what));
        }
        if made != entry.size {
            return Err(broken("it has not the size that the directory tells"));
        }
        if sum.finalize() != entry.crc {
            Err(broken("the check sum does not fit the content"))
        } else {
            Ok(())
        }
    }
}

/// Unpacks a raw deflate stream (RFC 1951) that comes in pieces.
struct Inflater {
    state: Decompress,
    out: Vec<u8>,
    room: u64,
    ended: bool,
}

impl Inflater {
    fn new(size: u64) -> Self {
        Self { state: Decompress::new(false), out: vec![0; PIECE], room: size, ended: false }
    }

    fn push(&mut self, mut bytes: &[u8], take: Each<'_>) -> Result<(), &'static str> {
        loop {
            if self.ended {
                return if bytes.is_empty() { Ok(()) } else { Err("bytes stand behind its end") };
            }
            let before = (self.state.total_in(), self.state.total_out());
            let status = self.state.decompress(bytes, &mut self.out, FlushDecompress::None);
            let status = status.map_err(|_| "its packed bytes make no sense")?;
            let used = usize::try_from(self.state.total_in() - before.0).unwrap_or(usize::MAX);
            let made = self.state.total_out() - before.1;
            self.room = self.room.checked_sub(made).ok_or("it is larger than the directory tells")?;
            let made = usize::try_from(made).unwrap_or(usize::MAX);
            take(self.out.get(..made).unwrap_or_default());
            bytes = bytes.get(used..).unwrap_or_default();
            self.ended = status == Status::StreamEnd;
            if !self.ended && used == 0 && made == 0 {
                return if bytes.is_empty() { Ok(()) } else { Err("its packed bytes make no sense") };
            }
        }
    }
}
