//! The outside world as values that are passed in: disk, clock, randomness.
//!
//! Nothing outside this module opens a file, reads a clock or draws a random number.
//! [`system`] holds the real ones, [`fake`] the ones that tests and fault injection use.

pub mod fake;
pub mod system;

use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

/// What can go wrong on a disk. Cloneable, since it travels in messages of the screens.
#[derive(Debug, Clone, thiserror::Error)]
pub enum DiskFault {
    /// The operating system refused.
    #[error("cannot {action} {}: {source}", path.display())]
    Io {
        /// What was tried, as in 'read', 'sync', 'append to'.
        action: &'static str,
        /// The file or folder it was tried on.
        path: PathBuf,
        /// The system's own words.
        source: Arc<std::io::Error>,
    },
    /// The file is larger than the caller allows.
    #[error("{} holds {len} bytes, more than the {cap} bytes allowed", path.display())]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// Its length in bytes.
        len: u64,
        /// The most that was allowed, in bytes.
        cap: u64,
    },
    /// `put_new` found that the name is taken: nothing was changed.
    #[error("{} exists already; it was left as it is", path.display())]
    Exists {
        /// The name that is taken.
        path: PathBuf,
    },
}

impl DiskFault {
    /// Whether the fault says that the file or folder is not there.
    #[must_use]
    pub fn is_missing(&self) -> bool {
        matches!(self, Self::Io { source, .. } if source.kind() == std::io::ErrorKind::NotFound)
    }

    /// Whether the fault says that there is no room left on the disk.
    #[must_use]
    pub fn is_full(&self) -> bool {
        use std::io::ErrorKind::{QuotaExceeded, StorageFull};
        matches!(self, Self::Io { source, .. } if matches!(source.kind(), StorageFull | QuotaExceeded))
    }
}

/// Who may read a file that is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Access {
    /// The usual mode of the system.
    Usual,
    /// The owner alone (mode 0600): keys.
    Owner,
}

/// What lies at a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lies {
    /// A file of so many bytes.
    File(u64),
    /// A folder.
    Folder,
    /// A link, whatever it leads to.
    Link,
    /// A pipe, a device or the like.
    Other,
}

/// Files and folders. Every write is whole or absent after a crash, except appends, whose reader must cope
/// with a torn tail.
pub trait Disk: Send + Sync + std::fmt::Debug {
    /// Reads a whole file of at most `cap` bytes.
    ///
    /// # Errors
    /// The file is missing, cannot be read or is larger than `cap`.
    fn read(&self, path: &Path, cap: u64) -> Result<Vec<u8>, DiskFault>;

    /// Names of the entries of a folder, sorted bytewise. A missing folder is empty.
    ///
    /// # Errors
    /// The folder cannot be read.
    fn list(&self, dir: &Path) -> Result<Vec<String>, DiskFault>;

    /// Whether `path` is a folder.
    fn is_dir(&self, path: &Path) -> bool;

    /// What lies at a path; a link is not followed.
    ///
    /// # Errors
    /// Nothing lies there, or it cannot be looked at.
    fn look(&self, path: &Path) -> Result<Lies, DiskFault> {
        if self.is_dir(path) {
            return Ok(Lies::Folder);
        }
        self.read(path, u64::MAX).map(|bytes| Lies::File(u64::try_from(bytes.len()).unwrap_or(u64::MAX)))
    }

    /// The path without links in it.
    ///
    /// # Errors
    /// Nothing lies there, or a link leads nowhere.
    fn real(&self, path: &Path) -> Result<PathBuf, DiskFault> {
        Ok(path.to_owned())
    }

    /// Hands on the bytes of a part of a file, piece by piece; fewer where the file ends before.
    ///
    /// # Errors
    /// The file is missing or cannot be read.
    fn stream(&self, path: &Path, part: Range<u64>, each: &mut dyn FnMut(&[u8])) -> Result<(), DiskFault> {
        let bytes = self.read(path, u64::MAX)?;
        let at = |at: u64| usize::try_from(at).unwrap_or(usize::MAX).min(bytes.len());
        each(bytes.get(at(part.start)..at(part.end)).unwrap_or_default());
        Ok(())
    }

    /// Folders of the media that are plugged in now, such as sticks, sorted.
    fn volumes(&self) -> Vec<PathBuf> {
        Vec::new()
    }

    /// What changes when a file is written: its length and when it was last changed, in nanoseconds. `None`
    /// where that is not known; then only its content tells.
    fn stamp(&self, _path: &Path) -> Option<(u64, u128)> {
        None
    }

    /// Makes a folder and its parents; one that exists is fine.
    ///
    /// # Errors
    /// The folder cannot be made.
    fn make_dir(&self, dir: &Path) -> Result<(), DiskFault>;

    /// Writes a file that must not exist: a temporary file in the same folder, sync, link to the name
    /// without replacing, sync of the folder.
    ///
    /// # Errors
    /// [`DiskFault::Exists`] when the name is taken; otherwise the system's refusal. Either way no half file
    /// stands under `path`.
    fn put_new(&self, path: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault>;

    /// As [`Disk::put_new`] for many files at once, which costs less than one by one. Some of them may stand when it
    /// fails.
    ///
    /// # Errors
    /// As [`Disk::put_new`].
    fn put_all_new(&self, files: &[(PathBuf, &[u8])], access: Access) -> Result<(), DiskFault> {
        files.iter().try_for_each(|(path, bytes)| self.put_new(path, bytes, access))
    }

    /// As [`Disk::put_new`], but an existing file is replaced as a whole.
    ///
    /// # Errors
    /// The system's refusal; the old file then still stands.
    fn replace(&self, path: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault>;

    /// Makes the names in a folder durable, whoever gave them; a missing folder is fine. For a folder in which
    /// an earlier write may have failed at its last sync.
    ///
    /// # Errors
    /// The system's refusal.
    fn settle(&self, dir: &Path) -> Result<(), DiskFault>;

    /// Opens a file for appending and makes it if it is missing.
    ///
    /// # Errors
    /// The system's refusal.
    fn append(&self, path: &Path) -> Result<Box<dyn Appender>, DiskFault>;

    /// Moves a file or folder to a name that must be free, and syncs both folders.
    ///
    /// # Errors
    /// [`DiskFault::Exists`] when the name is taken; otherwise the system's refusal.
    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskFault>;

    /// Makes a file durable that somebody else wrote, and gives it the name `to` in one step, replacing what had
    /// that name.
    ///
    /// # Errors
    /// The system's refusal; what had the name `to` then still has it.
    fn supplant(&self, from: &Path, to: &Path) -> Result<(), DiskFault> {
        self.replace(to, &self.read(from, u64::MAX)?, Access::Usual)?;
        self.remove(from)
    }

    /// CRC-32 over a file of any size, without the bytes of the ranges `except`, which are in order.
    ///
    /// # Errors
    /// The file is missing or cannot be read.
    fn checksum(&self, path: &Path, except: &[(u64, u64)]) -> Result<u32, DiskFault> {
        let mut sum = Sum::new(except);
        sum.add(&self.read(path, u64::MAX)?);
        Ok(sum.end())
    }

    /// Takes a lock file that one process can hold. It is held until the value is dropped, and freed by the
    /// system when the process dies. `None` when another process holds it.
    ///
    /// # Errors
    /// The file cannot be made.
    fn lock(&self, path: &Path) -> Result<Option<Box<dyn Held>>, DiskFault>;

    /// Removes a file and syncs its folder; a missing file is fine.
    ///
    /// # Errors
    /// The system's refusal.
    fn remove(&self, path: &Path) -> Result<(), DiskFault>;

    /// Removes an empty folder; a missing one is fine.
    ///
    /// # Errors
    /// It is not empty, or the system refuses.
    fn remove_dir(&self, dir: &Path) -> Result<(), DiskFault>;
}

/// A check sum over a stream of bytes, some of which do not count.
#[derive(Debug)]
struct Sum<'a> {
    hasher: crc32fast::Hasher,
    except: &'a [(u64, u64)],
    at: u64,
}

impl<'a> Sum<'a> {
    fn new(except: &'a [(u64, u64)]) -> Self {
        Self { hasher: crc32fast::Hasher::new(), except, at: 0 }
    }

    fn add(&mut self, mut bytes: &[u8]) {
        while !bytes.is_empty() {
            while self.except.first().is_some_and(|(_, end)| *end <= self.at) {
                self.except = self.except.get(1..).unwrap_or_default();
            }
            let (start, end) = self.except.first().copied().unwrap_or((u64::MAX, u64::MAX));
            let counts = self.at < start;
            let until = if counts { start } else { end };
            let room = usize::try_from(until.saturating_sub(self.at)).unwrap_or(usize::MAX);
            let (now, rest) = bytes.split_at(room.min(bytes.len()));
            if counts {
                self.hasher.update(now);
            }
            self.at = self.at.saturating_add(u64::try_from(now.len()).unwrap_or(u64::MAX));
            bytes = rest;
        }
    }

    fn end(self) -> u32 {
        self.hasher.finalize()
    }
}

/// Something that is held until it is dropped.
pub trait Held: Send + Sync + std::fmt::Debug {}

/// A file that only grows. After a failed call the handle must not be used again.
pub trait Appender: Send + std::fmt::Debug {
    /// Length of the file in bytes.
    fn len(&self) -> u64;

    /// Whether nothing has been written yet.
    fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Writes all bytes at the end.
    ///
    /// # Errors
    /// The system's refusal; part of the bytes may have been written.
    fn append(&mut self, bytes: &[u8]) -> Result<(), DiskFault>;

    /// Makes what was appended durable (`fdatasync`).
    ///
    /// # Errors
    /// The system's refusal. What is on the disk is then unknown: never retry on the same handle.
    fn sync(&mut self) -> Result<(), DiskFault>;

    /// Cuts the file to `len` bytes and makes that durable.
    ///
    /// # Errors
    /// The system's refusal.
    fn cut(&mut self, len: u64) -> Result<(), DiskFault>;
}

/// The time of day, and what tells whether somebody has set it.
pub trait Clock: Send + Sync + std::fmt::Debug {
    /// Now, in UTC. It can be set, and so can go back.
    fn now(&self) -> jiff::Timestamp;

    /// How long the machine has been up, sleep included. Nobody can set it and it never goes back; `None` where
    /// the machine does not say.
    fn running(&self) -> Option<Duration> {
        None
    }

    /// Name of the machine's time zone, where it has one.
    fn zone(&self) -> Option<String> {
        None
    }
}

/// Randomness, for keys only.
pub trait Entropy: Send + Sync + std::fmt::Debug {
    /// 32 bytes nobody can guess.
    ///
    /// # Errors
    /// The system has no randomness to give.
    fn seed(&self) -> Result<[u8; 32], std::io::Error>;
}

/// The outside world in one value.
#[derive(Debug, Clone)]
pub struct Ports {
    /// Files and folders.
    pub disk: Arc<dyn Disk>,
    /// Time of day.
    pub clock: Arc<dyn Clock>,
    /// Randomness.
    pub entropy: Arc<dyn Entropy>,
}
