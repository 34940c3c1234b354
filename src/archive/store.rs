//! What an archive is kept in: names with `/` between their parts, and bytes behind them. A local folder is one
//! such store; anything that can create without replacing, append and make durable could be another.

use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::ports::{Access, Appender, Disk, DiskFault, Held};

/// Files by name. No file of a record is ever replaced or removed: there is no way to.
pub trait Store: Send + Sync + std::fmt::Debug {
    /// Names in a folder, sorted, hidden ones left out. A missing folder is empty.
    ///
    /// # Errors
    /// The store refuses.
    fn list(&self, folder: &str) -> Result<Vec<String>, DiskFault>;

    /// Whether a name is that of a folder.
    fn is_folder(&self, name: &str) -> bool;

    /// Reads a whole file of at most `cap` bytes.
    ///
    /// # Errors
    /// It is missing or larger, or the store refuses.
    fn read(&self, name: &str, cap: u64) -> Result<Vec<u8>, DiskFault>;

    /// Hands on the bytes of a part of a file, piece by piece; fewer where the file ends before.
    ///
    /// # Errors
    /// It is missing, or the store refuses.
    fn stream(&self, name: &str, part: Range<u64>, each: &mut dyn FnMut(&[u8])) -> Result<(), DiskFault>;

    /// Writes a file that must not exist, and its folders: whole and durable, or not at all.
    ///
    /// # Errors
    /// [`DiskFault::Exists`], or the store refuses.
    fn create(&self, name: &str, bytes: &[u8], access: Access) -> Result<(), DiskFault>;

    /// Writes many files that must not exist, and their folders: each whole and durable, or not at all. Some may stand
    /// when it fails.
    ///
    /// # Errors
    /// [`DiskFault::Exists`], or the store refuses.
    fn create_all(&self, files: &[(&str, &[u8])]) -> Result<(), DiskFault>;

    /// Writes a list, log or mark anew as a whole. Not for records.
    ///
    /// # Errors
    /// The store refuses; the old file then still stands.
    fn replace(&self, name: &str, bytes: &[u8]) -> Result<(), DiskFault>;

    /// Opens a file that only grows; each append counts once it is synced.
    ///
    /// # Errors
    /// The store refuses.
    fn append(&self, name: &str) -> Result<Box<dyn Appender>, DiskFault>;

    /// Makes the names in a folder durable, whoever gave them.
    ///
    /// # Errors
    /// The store refuses.
    fn settle(&self, folder: &str) -> Result<(), DiskFault>;

    /// Holds off other writers. `None` when another process holds it.
    ///
    /// # Errors
    /// The store refuses.
    fn lock(&self) -> Result<Option<Box<dyn Held>>, DiskFault>;
}

/// A local folder.
#[derive(Debug, Clone)]
pub struct Folder {
    disk: Arc<dyn Disk>,
    root: PathBuf,
}

impl Folder {
    /// A store in this folder.
    #[must_use]
    pub fn new(disk: Arc<dyn Disk>, root: &Path) -> Self {
        Self { disk, root: root.to_owned() }
    }

    fn path(&self, name: &str) -> PathBuf {
        name.split('/').filter(|part| !part.is_empty()).fold(self.root.clone(), |path, part| path.join(part))
    }

    fn path_in_folder(&self, name: &str) -> Result<PathBuf, DiskFault> {
        let path = self.path(name);
        if let Some(folder) = path.parent() {
            self.disk.make_dir(folder)?;
        }
        Ok(path)
    }
}

impl Store for Folder {
    fn list(&self, folder: &str) -> Result<Vec<String>, DiskFault> {
        let path = self.path(folder);
        if !self.disk.is_dir(&path) {
            return Ok(Vec::new());
        }
        let mut names = self.disk.list(&path)?;
        names.retain(|name| !name.starts_with('.'));
        Ok(names)
    }

    fn is_folder(&self, name: &str) -> bool {
        self.disk.is_dir(&self.path(name))
    }

    fn read(&self, name: &str, cap: u64) -> Result<Vec<u8>, DiskFault> {
        self.disk.read(&self.path(name), cap)
    }

    fn stream(&self, name: &str, part: Range<u64>, each: &mut dyn FnMut(&[u8])) -> Result<(), DiskFault> {
        self.disk.stream(&self.path(name), part, each)
    }

    fn create(&self, name: &str, bytes: &[u8], access: Access) -> Result<(), DiskFault> {
        self.disk.put_new(&self.path_in_folder(name)?, bytes, access)
    }

    fn create_all(&self, files: &[(&str, &[u8])]) -> Result<(), DiskFault> {
        let placed = files.iter().map(|(name, bytes)| Ok((self.path_in_folder(name)?, *bytes)));
        self.disk.put_all_new(&placed.collect::<Result<Vec<_>, DiskFault>>()?, Access::Usual)
    }

    fn replace(&self, name: &str, bytes: &[u8]) -> Result<(), DiskFault> {
        self.disk.replace(&self.path_in_folder(name)?, bytes, Access::Usual)
    }

    fn append(&self, name: &str) -> Result<Box<dyn Appender>, DiskFault> {
        self.disk.append(&self.path_in_folder(name)?)
    }

    fn settle(&self, folder: &str) -> Result<(), DiskFault> {
        self.disk.settle(&self.path(folder))
    }

    fn lock(&self) -> Result<Option<Box<dyn Held>>, DiskFault> {
        self.disk.lock(&self.path("lock"))
    }
}
