//! The files of a lot folder as a whole: embedded, from disk, or kept for an open walk.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use sha2::{Digest as _, Sha256};

use crate::ports::{Access, Disk, DiskFault};
use crate::source::{FILE_CAP, Fault, Place, SourceFile, too_large};

include!(concat!(env!("OUT_DIR"), "/embedded.rs"));

/// Folders of a lot that hold scripts, words and pictures.
const FOLDERS: [&str; 3] = ["walkthroughs", "i18n", "assets/pictures"];
/// Words of the program itself, not of a lot.
const PROGRAM_WORDS: [&str; 4] =
    ["i18n/en-US/kiosk", "i18n/en-US/record", "i18n/en-US/format", "i18n/en-US/figures"];
/// Largest picture, in bytes.
const PICTURE_CAP: u64 = 16 * 1024 * 1024;
/// Most files and folders of a lot folder.
const FILES_CAP: usize = 5_000;
/// All files of a lot folder together, in bytes.
const LOT_CAP: u64 = 256 * 1024 * 1024;
/// Deepest folder that is looked into.
const DEPTH_CAP: usize = 6;

/// Why the files of a lot could not be gathered.
#[derive(Debug, Clone, thiserror::Error)]
pub enum BundleFault {
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// There is no lot in the folder.
    #[error("{} holds no `walkthroughs` folder; name the folder that holds `walkthroughs` and `i18n`", .0.display())]
    NoLot(PathBuf),
    /// More files than a lot can have.
    #[error("{} holds more than {FILES_CAP} files; name the lot folder itself", .0.display())]
    TooMany(PathBuf),
    /// Files that are too large together.
    #[error("the files below {} hold more than {LOT_CAP} bytes together; make the pictures smaller", .0.display())]
    TooLarge(PathBuf),
    /// A folder that lies too deep, or one that leads back to itself.
    #[error("{} lies too deep in the lot folder; a lot has no such folders", .0.display())]
    TooDeep(PathBuf),
    /// Kept scripts are not what the walk began with.
    #[error("the scripts kept in {} are not those the walk began with; they were changed on disk", .0.display())]
    Changed(PathBuf),
}

/// The files of a lot by name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bundle {
    files: BTreeMap<String, Arc<[u8]>>,
    digest: String,
    demo: bool,
}

impl Bundle {
    /// A bundle of the given files.
    #[must_use]
    pub fn new(files: BTreeMap<String, Arc<[u8]>>, demo: bool) -> Self {
        let mut hash = Sha256::new();
        for (name, bytes) in &files {
            hash.update(format!("{} {}\n", bytes.len(), name));
            hash.update(bytes);
        }
        let digest = hash.finalize().iter().fold(String::new(), |mut hex, b| {
            let _ = write!(hex, "{b:02x}");
            hex
        });
        Self { files, digest, demo }
    }

    /// The demo lot, which is part of the program.
    #[must_use]
    pub fn demo() -> Self {
        let files = EMBEDDED.iter().map(|(name, bytes)| ((*name).to_owned(), Arc::from(*bytes))).collect();
        Self::new(files, true)
    }

    /// Reads a lot folder. Words of the program itself that the folder lacks are the program's own, so that a
    /// lot written for an older program still speaks on every page.
    ///
    /// # Errors
    /// The folder holds no lot, holds too many files, or cannot be read.
    pub fn read(disk: &dyn Disk, dir: &Path) -> Result<Self, BundleFault> {
        let mut files = Self::gathered(disk, dir)?;
        let own =
            EMBEDDED.iter().filter(|(name, _)| PROGRAM_WORDS.iter().any(|start| name.starts_with(start)));
        for (name, bytes) in own {
            let _ = files.entry((*name).to_owned()).or_insert_with(|| Arc::from(*bytes));
        }
        Ok(Self::new(files, false))
    }

    fn gathered(disk: &dyn Disk, dir: &Path) -> Result<BTreeMap<String, Arc<[u8]>>, BundleFault> {
        if !disk.is_dir(&dir.join("walkthroughs")) {
            return Err(BundleFault::NoLot(dir.to_owned()));
        }
        let mut gather = Gather { disk, dir, files: BTreeMap::new(), seen: 0, bytes: 0 };
        for folder in FOLDERS {
            gather.folder(folder, 0)?;
        }
        Ok(gather.files)
    }

    /// Keeps the files under `scripts/<digest>/` of the data folder until no walk needs them.
    ///
    /// # Errors
    /// The disk refused.
    pub fn keep(&self, disk: &dyn Disk, data: &Path) -> Result<(), DiskFault> {
        let root = data.join("scripts").join(&self.digest);
        for (name, bytes) in &self.files {
            let path = root.join(name);
            if let Some(parent) = path.parent() {
                disk.make_dir(parent)?;
            }
            match disk.put_new(&path, bytes, Access::Usual) {
                Ok(()) | Err(DiskFault::Exists { .. }) => {}
                Err(fault) => return Err(fault),
            }
        }
        Ok(())
    }

    /// Reads the kept files of a walk and holds them against the digest it began with.
    ///
    /// # Errors
    /// They are gone, unreadable or changed.
    pub fn kept(disk: &dyn Disk, data: &Path, digest: &str, demo: bool) -> Result<Self, BundleFault> {
        let root = data.join("scripts").join(digest);
        let found = Self::new(Self::gathered(disk, &root)?, demo);
        if found.digest == digest { Ok(found) } else { Err(BundleFault::Changed(root)) }
    }

    /// SHA-256 over names and contents, 64 hex digits.
    #[must_use]
    pub fn digest(&self) -> &str {
        &self.digest
    }

    /// Whether it is the demo lot of the program.
    #[must_use]
    pub fn is_demo(&self) -> bool {
        self.demo
    }

    /// Whether there is a file of this name.
    #[must_use]
    pub fn has(&self, name: &str) -> bool {
        self.files.contains_key(name)
    }

    /// Content of a file.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Arc<[u8]>> {
        self.files.get(name)
    }

    /// Names of all files, sorted.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.files.keys().map(String::as_str)
    }

    /// The `.ron` and `.ftl` files as text. Files that are too large or no UTF-8 become faults.
    pub(super) fn texts(&self, faults: &mut Vec<Fault>) -> Vec<SourceFile> {
        let mut texts = Vec::new();
        for (name, bytes) in self.files.iter().filter(|(n, _)| n.ends_with(".ron") || n.ends_with(".ftl")) {
            let start = Place { file: Arc::from(name.as_str()), line: 1, col: 1 };
            if u64::try_from(bytes.len()).unwrap_or(u64::MAX) > FILE_CAP {
                faults.push(too_large(start));
                continue;
            }
            match std::str::from_utf8(bytes) {
                Ok(text) => texts.push(SourceFile::new(name, text)),
                Err(e) => {
                    let good = bytes.get(..e.valid_up_to()).unwrap_or_default();
                    let file = SourceFile::new(name, &String::from_utf8_lossy(good));
                    let wide = bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]);
                    faults.push(Fault::new(
                        "form.not-utf8",
                        file.place_at(file.text.len()),
                        if wide { "the file is UTF-16 text" } else { "this byte is no UTF-8 text" },
                        "save the file as UTF-8: the editor's `Save as` lets you choose the encoding",
                    ));
                }
            }
        }
        texts
    }
}

/// Reads the files of a lot folder, named relative to it.
struct Gather<'a> {
    disk: &'a dyn Disk,
    dir: &'a Path,
    files: BTreeMap<String, Arc<[u8]>>,
    seen: usize,
    bytes: u64,
}

impl Gather<'_> {
    fn folder(&mut self, folder: &str, depth: usize) -> Result<(), BundleFault> {
        for name in self.disk.list(&self.dir.join(folder))? {
            if name.starts_with('.') {
                continue;
            }
            self.seen += 1;
            if self.seen > FILES_CAP {
                return Err(BundleFault::TooMany(self.dir.to_owned()));
            }
            let inner = format!("{folder}/{name}");
            let path = self.dir.join(&inner);
            if !self.disk.is_dir(&path) {
                self.file(inner, &path)?;
            } else if depth < DEPTH_CAP {
                self.folder(&inner, depth + 1)?;
            } else {
                return Err(BundleFault::TooDeep(path));
            }
        }
        Ok(())
    }

    fn file(&mut self, name: String, path: &Path) -> Result<(), BundleFault> {
        let is_text = name.ends_with(".ron") || name.ends_with(".ftl");
        let cap = if is_text { FILE_CAP } else { PICTURE_CAP };
        let bytes: Arc<[u8]> = match self.disk.read(path, cap) {
            Ok(bytes) => Arc::from(bytes),
            // Stands for the file, so that the loader reports it with all other faults.
            Err(DiskFault::TooLarge { .. }) if is_text => {
                Arc::from(vec![b' '; usize::try_from(FILE_CAP).unwrap_or(0) + 1])
            }
            Err(fault) => return Err(fault.into()),
        };
        self.bytes = self.bytes.saturating_add(u64::try_from(bytes.len()).unwrap_or(u64::MAX));
        if self.bytes > LOT_CAP {
            return Err(BundleFault::TooLarge(self.dir.to_owned()));
        }
        let _ = self.files.insert(name, bytes);
        Ok(())
    }
}
