//! What a bag holds, in a folder, in a ZIP file or in memory. Names and sizes are known at once; bytes are handed on
//! piece by piece, so that a bag may be larger than the memory.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use unicode_normalization::{UnicodeNormalization as _, is_nfc};

use super::fault::BagFault;
use crate::ports::{Disk, Lies};

/// The files of a bag by their paths in it.
pub type Files<'a> = BTreeMap<&'a str, &'a [u8]>;

/// The most files and folders that are judged.
pub(super) const MAX_FILES: usize = 1_000_000;
/// The most bytes of a tag file that is read as text: lists of a million files.
const MAX_TEXT: u64 = 256 << 20;

/// Takes the bytes of a file, piece by piece.
pub(super) type Each<'a> = &'a mut dyn FnMut(&[u8]);

/// Where bytes come from.
pub(super) trait Source {
    /// Hands on all bytes of a file that is known to be there.
    fn stream(&self, path: &str, each: Each<'_>) -> Result<(), BagFault>;
}

/// What a bag holds.
pub(super) struct Contents<'a> {
    /// Sizes of the files.
    pub(super) files: BTreeMap<String, u64>,
    /// Folders, without a slash at their ends.
    pub(super) folders: BTreeSet<String>,
    /// What is allowed but does not travel well.
    pub(super) remarks: Vec<String>,
    source: Box<dyn Source + 'a>,
    /// Files whose names can be written in more than one way, by their composed form (NFC); none if two share it.
    composed: BTreeMap<String, Option<String>>,
}

impl<'a> Contents<'a> {
    pub(super) fn new(
        files: BTreeMap<String, u64>,
        mut folders: BTreeSet<String>,
        source: Box<dyn Source + 'a>,
    ) -> Self {
        let mut composed: BTreeMap<String, Option<String>> = BTreeMap::new();
        for path in files.keys() {
            folders.extend(path.match_indices('/').filter_map(|(at, _)| path.get(..at)).map(str::to_owned));
            if !path.is_ascii() {
                let one = composed.entry(path.nfc().collect());
                one.and_modify(|other| *other = None).or_insert_with(|| Some(path.clone()));
            }
        }
        Self { files, folders, remarks: Vec::new(), source, composed }
    }

    /// Files in memory.
    pub(super) fn of(files: &'a Files<'a>) -> Self {
        let sizes = files.iter().map(|(path, bytes)| ((*path).to_owned(), size_of(bytes))).collect();
        Self::new(sizes, BTreeSet::new(), Box::new(Memory(files)))
    }

    /// The files below a folder. No link is followed out of it.
    pub(super) fn of_folder(disk: &'a dyn Disk, dir: &Path) -> Result<Self, BagFault> {
        let unreadable = |fault: crate::ports::DiskFault| BagFault::Unreadable { what: fault.to_string() };
        let root = disk.real(dir).map_err(unreadable)?;
        let (mut files, mut folders) = (BTreeMap::new(), BTreeSet::new());
        let mut open = vec![(root.clone(), String::new())];
        while let Some((folder, prefix)) = open.pop() {
            for name in disk.list(&folder).map_err(unreadable)? {
                let (path, inside) = (folder.join(&name), format!("{prefix}{name}"));
                let no_file = |what| BagFault::NoFile { path: inside.clone(), what };
                let size = match disk.look(&path).map_err(unreadable)? {
                    Lies::File(size) => Some(size),
                    Lies::Folder => None,
                    Lies::Link => Some(behind(disk, &root, &path).map_err(no_file)?),
                    Lies::Other => return Err(no_file("a pipe, a device or the like")),
                };
                if files.len() + folders.len() >= MAX_FILES {
                    return Err(BagFault::CannotJudge {
                        what: format!("a bag of more than {MAX_FILES} files"),
                    });
                }
                if let Some(size) = size {
                    files.insert(inside, size);
                } else {
                    open.push((path, format!("{inside}/")));
                    folders.insert(inside);
                }
            }
        }
        Ok(Self::new(files, folders, Box::new(Folder { disk, root })))
    }

    /// The file that a list means by a path: the one of this name, or the only one whose name differs in the way
    /// it is composed alone (RFC 8493 §6.1.1.3).
    pub(super) fn find(&self, path: &str) -> Option<&str> {
        if let Some((found, _)) = self.files.get_key_value(path) {
            return Some(found);
        }
        if path.is_ascii() {
            return None;
        }
        self.composed.get(&path.nfc().collect::<String>())?.as_deref()
    }

    /// Groups of files whose names differ in the way they are composed alone.
    pub(super) fn alike(&self) -> impl Iterator<Item = &str> {
        self.composed.iter().filter(|(_, one)| one.is_none()).map(|(name, _)| name.as_str())
    }

    /// Whether a name is written otherwise than most systems would write it.
    pub(super) fn is_decomposed(path: &str) -> bool {
        !is_nfc(path)
    }

    /// The bytes of a tag file, if it is there.
    pub(super) fn read(&self, path: &str) -> Result<Option<Vec<u8>>, BagFault> {
        let Some(size) = self.files.get(path) else { return Ok(None) };
        let too_large = || BagFault::CannotJudge { what: format!("{path}, a tag file of {size} bytes,") };
        if *size > MAX_TEXT {
            return Err(too_large());
        }
        let mut bytes = Vec::new();
        let mut full = false;
        self.source.stream(path, &mut |piece| {
            // It may have grown since it was looked at.
            full |= size_of(&bytes).saturating_add(size_of(piece)) > MAX_TEXT;
            if !full {
                bytes.extend_from_slice(piece);
            }
        })?;
        if full { Err(too_large()) } else { Ok(Some(bytes)) }
    }

    pub(super) fn stream(&self, path: &str, each: Each<'_>) -> Result<(), BagFault> {
        self.source.stream(path, each)
    }
}

pub(super) fn size_of(bytes: &[u8]) -> u64 {
    u64::try_from(bytes.len()).unwrap_or(u64::MAX)
}

/// The size of the file that a link leads to.
fn behind(disk: &dyn Disk, root: &Path, path: &Path) -> Result<u64, &'static str> {
    let real = disk.real(path).map_err(|_| "a link that leads nowhere")?;
    if !real.starts_with(root) {
        return Err("a link that leads out of the bag");
    }
    match disk.look(&real) {
        Ok(Lies::File(size)) => Ok(size),
        _ => Err("a link to something other than a file"),
    }
}

struct Memory<'a>(&'a Files<'a>);

impl Source for Memory<'_> {
    fn stream(&self, path: &str, each: Each<'_>) -> Result<(), BagFault> {
        each(self.0.get(path).copied().unwrap_or_default());
        Ok(())
    }
}

struct Folder<'a> {
    disk: &'a dyn Disk,
    root: PathBuf,
}

impl Source for Folder<'_> {
    fn stream(&self, path: &str, each: Each<'_>) -> Result<(), BagFault> {
        let place = path.split('/').fold(self.root.clone(), |dir, part| dir.join(part));
        let read = self.disk.stream(&place, 0..u64::MAX, each);
        read.map_err(|fault| BagFault::Unreadable { what: fault.to_string() })
    }
}
