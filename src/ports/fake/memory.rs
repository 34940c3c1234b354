//! What a disk in memory holds: files apart from their names, and of both what would survive a power cut.

use std::collections::{BTreeMap, BTreeSet};
use std::io;
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::{Access, DiskFault, Operation};

/// The content of one file.
#[derive(Debug, Clone, Default)]
struct Content {
    /// What a running system sees.
    live: Vec<u8>,
    /// What is left after a power cut for certain.
    durable: Vec<u8>,
    /// Parts of `live` whose sync failed: never written, and never tried again.
    lost: Vec<Range<usize>>,
    access: Option<Access>,
}

impl Content {
    /// What is on the disk when all that can still be written has been.
    fn written(&self) -> Vec<u8> {
        let mut bytes = self.live.clone();
        for lost in &self.lost {
            bytes.iter_mut().take(lost.end).skip(lost.start).for_each(|byte| *byte = 0);
        }
        bytes
    }
}

#[derive(Debug, Clone, Default)]
pub(super) struct Memory {
    contents: Vec<Content>,
    names: BTreeMap<PathBuf, usize>,
    durable_names: BTreeMap<PathBuf, usize>,
    folders: BTreeSet<PathBuf>,
    counts: BTreeMap<Operation, u64>,
    /// Operations that are to fail: kind and count.
    pub(super) faults: BTreeSet<(Operation, u64)>,
    /// From which count on a kind fails.
    pub(super) dead: BTreeMap<Operation, u64>,
    /// Most bytes that all files may take together.
    pub(super) room: Option<u64>,
    /// Whether every change is refused.
    pub(super) read_only: bool,
}

fn refuse<T>(action: &'static str, path: &Path, kind: io::ErrorKind, words: &str) -> Result<T, DiskFault> {
    Err(DiskFault::Io { action, path: path.to_owned(), source: Arc::new(io::Error::new(kind, words)) })
}

fn missing<T>(action: &'static str, path: &Path) -> Result<T, DiskFault> {
    refuse(action, path, io::ErrorKind::NotFound, "no such file or folder")
}

fn length_of(bytes: &[u8]) -> u64 {
    u64::try_from(bytes.len()).unwrap_or(u64::MAX)
}

impl Memory {
    pub(super) fn count(&self, operation: Operation) -> u64 {
        self.counts.get(&operation).copied().unwrap_or(0)
    }

    /// Counts an operation and says whether it fails.
    fn fails(&mut self, operation: Operation) -> bool {
        let count = self.counts.entry(operation).or_default();
        *count = count.saturating_add(1);
        let count = *count;
        self.faults.contains(&(operation, count)) || self.dead.get(&operation).is_some_and(|n| count >= *n)
    }

    fn attempt(&mut self, operation: Operation, action: &'static str, path: &Path) -> Result<(), DiskFault> {
        if self.fails(operation) {
            return refuse(action, path, io::ErrorKind::StorageFull, "a fault that was asked for");
        }
        if self.read_only && !matches!(operation, Operation::Read) {
            return refuse(action, path, io::ErrorKind::ReadOnlyFilesystem, "the disk is read-only");
        }
        Ok(())
    }

    /// Bytes that files with a name take.
    pub(super) fn used(&self) -> u64 {
        let named: BTreeSet<usize> = self.names.values().copied().collect();
        named.into_iter().map(|file| self.length(file)).sum()
    }

    /// How many of these bytes still fit.
    fn fitting(&self, bytes: usize) -> usize {
        let left = self.room.map(|room| room.saturating_sub(self.used()));
        left.map_or(bytes, |left| usize::try_from(left).unwrap_or(usize::MAX).min(bytes))
    }

    fn content(&mut self, file: usize, path: &Path) -> Result<&mut Content, DiskFault> {
        match self.contents.get_mut(file) {
            Some(content) => Ok(content),
            None => missing("open", path),
        }
    }

    pub(super) fn taken(&self, path: &Path) -> bool {
        self.names.contains_key(path) || self.is_dir(path)
    }

    pub(super) fn is_dir(&self, path: &Path) -> bool {
        let root = path.as_os_str().is_empty() || path.parent().is_none();
        root || self.folders.contains(path)
    }

    fn in_folder(&self, path: &Path, action: &'static str) -> Result<(), DiskFault> {
        if path.parent().is_none_or(|p| self.is_dir(p)) { Ok(()) } else { missing(action, path) }
    }

    pub(super) fn make_dir(&mut self, dir: &Path) -> Result<(), DiskFault> {
        for part in dir.ancestors() {
            if self.names.contains_key(part) {
                return refuse("make", part, io::ErrorKind::AlreadyExists, "a file has this name");
            }
        }
        self.folders.extend(dir.ancestors().map(Path::to_owned));
        Ok(())
    }

    pub(super) fn read(&mut self, path: &Path, cap: u64) -> Result<Vec<u8>, DiskFault> {
        self.attempt(Operation::Read, "read", path)?;
        let Some(file) = self.names.get(path).copied() else { return missing("read", path) };
        let bytes = self.content(file, path)?.live.clone();
        let len = length_of(&bytes);
        if len > cap { Err(DiskFault::TooLarge { path: path.to_owned(), len, cap }) } else { Ok(bytes) }
    }

    pub(super) fn list(&mut self, dir: &Path) -> Result<Vec<String>, DiskFault> {
        self.attempt(Operation::Read, "list", dir)?;
        let paths = self.names.keys().chain(&self.folders);
        let inside = paths.filter(|p| p.parent() == Some(dir)).filter_map(|p| p.file_name()?.to_str());
        let names: BTreeSet<String> = inside.map(ToOwned::to_owned).collect();
        Ok(names.into_iter().collect())
    }

    /// A file that has all its content, and no name yet: what a temporary file is.
    fn new_content(&mut self, path: &Path, bytes: &[u8], access: Access) -> Result<usize, DiskFault> {
        self.attempt(Operation::Write, "write", path)?;
        if self.fitting(bytes.len()) < bytes.len() {
            return refuse("write", path, io::ErrorKind::StorageFull, "no space left on the disk");
        }
        self.attempt(Operation::Sync, "sync", path)?;
        let (live, durable) = (bytes.to_vec(), bytes.to_vec());
        self.contents.push(Content { live, durable, lost: Vec::new(), access: Some(access) });
        Ok(self.contents.len().saturating_sub(1))
    }

    pub(super) fn write_whole(&mut self, path: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault> {
        self.in_folder(path, "create")?;
        if self.is_dir(path) {
            return refuse("replace", path, io::ErrorKind::IsADirectory, "a folder has this name");
        }
        let file = self.new_content(path, bytes, access)?;
        self.attempt(Operation::Name, "name", path)?;
        self.names.insert(path.to_owned(), file);
        self.sync_folder(path)
    }

    /// Makes the names beside `path` durable.
    fn sync_folder(&mut self, path: &Path) -> Result<(), DiskFault> {
        path.parent().map_or(Ok(()), |dir| self.settle(dir))
    }

    /// Makes the names in a folder durable.
    pub(super) fn settle(&mut self, dir: &Path) -> Result<(), DiskFault> {
        self.attempt(Operation::SyncFolder, "sync", dir)?;
        let parent = Some(dir);
        self.durable_names.retain(|p, _| p.parent() != parent);
        let here = self.names.iter().filter(|(p, _)| p.parent() == parent);
        self.durable_names.extend(here.map(|(p, file)| (p.clone(), *file)));
        Ok(())
    }

    pub(super) fn open(&mut self, path: &Path) -> Result<usize, DiskFault> {
        self.in_folder(path, "open")?;
        if let Some(file) = self.names.get(path) {
            return Ok(*file);
        }
        self.attempt(Operation::Name, "open", path)?;
        self.contents.push(Content::default());
        let file = self.contents.len().saturating_sub(1);
        self.names.insert(path.to_owned(), file);
        self.sync_folder(path)?;
        Ok(file)
    }

    pub(super) fn length(&self, file: usize) -> u64 {
        self.contents.get(file).map_or(0, |c| length_of(&c.live))
    }

    pub(super) fn write(&mut self, file: usize, path: &Path, bytes: &[u8]) -> Result<(), DiskFault> {
        let mut failed = self.attempt(Operation::Write, "append to", path);
        let fitting = self.fitting(bytes.len());
        if failed.is_ok() && fitting < bytes.len() {
            failed = refuse("append to", path, io::ErrorKind::StorageFull, "no space left on the disk");
        }
        let length = if failed.is_err() { fitting.min(bytes.len() / 2) } else { bytes.len() };
        self.content(file, path)?.live.extend(bytes.iter().take(length));
        failed
    }

    pub(super) fn sync(&mut self, file: usize, path: &Path) -> Result<(), DiskFault> {
        let failed = self.attempt(Operation::Sync, "sync", path);
        let content = self.content(file, path)?;
        if failed.is_err() {
            content.lost.push(content.durable.len()..content.live.len());
        } else {
            content.durable = content.written();
        }
        failed
    }

    pub(super) fn cut(&mut self, file: usize, path: &Path, len: u64) -> Result<(), DiskFault> {
        self.attempt(Operation::Write, "cut", path)?;
        let length = usize::try_from(len).unwrap_or(usize::MAX);
        self.content(file, path)?.live.truncate(length);
        self.sync(file, path)
    }

    pub(super) fn rename(&mut self, from: &Path, to: &Path) -> Result<(), DiskFault> {
        if self.taken(to) {
            return Err(DiskFault::Exists { path: to.to_owned() });
        }
        if !self.taken(from) {
            return missing("move", from);
        }
        self.in_folder(to, "move")?;
        self.attempt(Operation::Name, "move", from)?;
        let moved = |p: &Path| match p.strip_prefix(from) {
            Ok(rest) if rest.as_os_str().is_empty() => to.to_owned(),
            Ok(rest) => to.join(rest),
            Err(_) => p.to_owned(),
        };
        self.names = self.names.iter().map(|(p, file)| (moved(p), *file)).collect();
        if self.folders.contains(from) {
            // Names inside a folder go with it; modeled as durable at once, since only the folder's own name moves.
            self.folders = self.folders.iter().map(|p| moved(p)).collect();
            self.durable_names = self.durable_names.iter().map(|(p, file)| (moved(p), *file)).collect();
        }
        self.sync_folder(to)?;
        self.sync_folder(from)
    }

    pub(super) fn remove(&mut self, path: &Path) -> Result<(), DiskFault> {
        if !self.names.contains_key(path) {
            return Ok(());
        }
        self.attempt(Operation::Remove, "remove", path)?;
        self.names.remove(path);
        self.sync_folder(path)
    }

    /// What is left when the power goes: of each file so many bytes beyond what is durable as `keep` says,
    /// names given since the last sync of their folder only with `new_names`.
    pub(super) fn surviving(&self, mut keep: impl FnMut(usize) -> usize, new_names: bool) -> Self {
        let names = if new_names { &self.names } else { &self.durable_names };
        let contents = self.contents.iter().map(|content| {
            let written = content.written();
            let tail = written.len().saturating_sub(content.durable.len());
            let length = content.durable.len().saturating_add(keep(tail).min(tail));
            // A file that was cut but not synced still has its old end.
            let bytes = if written.len() < content.durable.len() { content.durable.clone() } else { written };
            let left: Vec<u8> = bytes.into_iter().take(length).collect();
            Content { durable: left.clone(), live: left, lost: Vec::new(), access: content.access }
        });
        Self {
            contents: contents.collect(),
            names: names.clone(),
            durable_names: names.clone(),
            folders: self.folders.clone(),
            ..Self::default()
        }
    }

    pub(super) fn files(&self) -> Vec<(PathBuf, Vec<u8>)> {
        let named = self.names.iter();
        named.filter_map(|(p, file)| Some((p.clone(), self.contents.get(*file)?.live.clone()))).collect()
    }

    pub(super) fn plant(&mut self, path: &Path, bytes: &[u8]) {
        self.folders.extend(path.ancestors().skip(1).map(Path::to_owned));
        let (live, durable) = (bytes.to_vec(), bytes.to_vec());
        let file = self.contents.len();
        self.contents.push(Content { live, durable, lost: Vec::new(), access: None });
        self.names.insert(path.to_owned(), file);
        self.durable_names.insert(path.to_owned(), file);
    }

    pub(super) fn access(&self, path: &Path) -> Option<Access> {
        let file = self.names.get(path)?;
        self.contents.get(*file)?.access
    }
}
