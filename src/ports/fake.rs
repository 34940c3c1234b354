//! A disk in memory that can lose power or fail at a chosen moment, a clock and randomness that are told what
//! to say. For tests and rehearsed faults.
//!
//! [`MemoryDisk`] keeps what a running system sees apart from what would be left after a power cut: content is
//! durable after its file was synced, a name after its folder was. A sync that fails loses what it should have
//! written for good, while the running system goes on seeing it, as Linux does.

mod memory;

use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use jiff::{SignedDuration, Timestamp};

use super::{Access, Appender, Clock, Disk, DiskFault, Entropy};
use memory::Memory;

/// A clock that stands still.
#[derive(Debug, Clone, Copy)]
pub struct FixedClock(pub Timestamp);

impl Clock for FixedClock {
    fn now(&self) -> Timestamp {
        self.0
    }
}

/// A clock that goes on, and is set, when it is told to. Clones are the same clock.
#[derive(Debug, Clone)]
pub struct SetClock(Arc<Mutex<Told>>);

#[derive(Debug)]
struct Told {
    now: Timestamp,
    running: Duration,
    zone: Option<String>,
}

impl SetClock {
    /// A clock that says `now`, on a machine that was just started.
    #[must_use]
    pub fn new(now: Timestamp) -> Self {
        Self(Arc::new(Mutex::new(Told { now, running: Duration::ZERO, zone: None })))
    }

    fn told(&self) -> MutexGuard<'_, Told> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Lets time pass.
    pub fn pass(&self, time: Duration) {
        let mut told = self.told();
        told.running = told.running.saturating_add(time);
        told.now = told.now.checked_add(time).unwrap_or(Timestamp::MAX);
    }

    /// Sets the time of day, as somebody with their hands on the machine does.
    pub fn set(&self, now: Timestamp) {
        self.told().now = now;
    }

    /// Moves the machine to another time zone.
    pub fn set_zone(&self, zone: &str) {
        self.told().zone = Some(zone.to_owned());
    }
}

impl Clock for SetClock {
    fn now(&self) -> Timestamp {
        self.told().now
    }

    fn running(&self) -> Option<Duration> {
        Some(self.told().running)
    }

    fn zone(&self) -> Option<String> {
        self.told().zone.clone()
    }
}

/// A clock that goes on by a step with each look.
#[derive(Debug)]
pub struct StepClock {
    start: Timestamp,
    step: SignedDuration,
    looks: AtomicI64,
}

impl StepClock {
    /// A clock that first says `start`.
    #[must_use]
    pub fn new(start: Timestamp, step: SignedDuration) -> Self {
        Self { start, step, looks: AtomicI64::new(0) }
    }
}

impl Clock for StepClock {
    fn now(&self) -> Timestamp {
        let looks = self.looks.fetch_add(1, Ordering::Relaxed);
        let ahead = i32::try_from(looks).ok().and_then(|n| self.step.checked_mul(n));
        ahead.and_then(|d| self.start.checked_add(d).ok()).unwrap_or(Timestamp::MAX)
    }
}

/// Randomness that is always the same.
#[derive(Debug, Clone, Copy)]
pub struct FixedEntropy(pub [u8; 32]);

impl Entropy for FixedEntropy {
    fn seed(&self) -> Result<[u8; 32], io::Error> {
        Ok(self.0)
    }
}

/// Something a disk does that can fail.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Operation {
    /// Reads a file.
    Read,
    /// Writes bytes; a failing write leaves half of them.
    Write,
    /// Syncs the content of a file.
    Sync,
    /// Gives a file or folder a name, or another one.
    Name,
    /// Makes names of a folder durable.
    SyncFolder,
    /// Takes a name away.
    Remove,
}

/// All operations there are.
pub const OPERATIONS: [Operation; 6] = [
    Operation::Read,
    Operation::Write,
    Operation::Sync,
    Operation::Name,
    Operation::SyncFolder,
    Operation::Remove,
];

/// A disk in memory. Clones are the same disk.
#[derive(Debug, Clone, Default)]
pub struct MemoryDisk {
    memory: Arc<Mutex<Memory>>,
}

impl MemoryDisk {
    /// An empty disk.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn memory(&self) -> MutexGuard<'_, Memory> {
        self.memory.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Lets the `nth` operation of a kind from now on fail, counted from 1; those after it succeed again.
    pub fn fail(&self, operation: Operation, nth: u64) {
        let mut memory = self.memory();
        let at = memory.count(operation).saturating_add(nth);
        memory.faults.insert((operation, at));
    }

    /// Lets every operation of a kind fail from the `nth` on, counted from 1: a full or dead disk.
    pub fn fail_from(&self, operation: Operation, nth: u64) {
        let mut memory = self.memory();
        let at = memory.count(operation).saturating_add(nth);
        memory.dead.insert(operation, at);
    }

    /// From now on files may take so many bytes more than they do; what does not fit is refused as on a full disk.
    pub fn leave_room(&self, bytes: u64) {
        let mut memory = self.memory();
        let used = memory.used();
        memory.room = Some(used.saturating_add(bytes));
    }

    /// Refuses every change from now on, as a disk does that the system has made read-only after a fault.
    pub fn make_read_only(&self) {
        self.memory().read_only = true;
    }

    /// Lets everything succeed again.
    pub fn heal(&self) {
        let mut memory = self.memory();
        memory.room = None;
        memory.read_only = false;
        memory.faults.clear();
        memory.dead.clear();
    }

    /// How often a kind of operation was tried, failed ones included.
    #[must_use]
    pub fn count(&self, operation: Operation) -> u64 {
        self.memory().count(operation)
    }

    /// The disk after a power cut. What was not durable is kept, torn or lost as the seed will have it.
    #[must_use]
    pub fn after_power_cut(&self, seed: u64) -> Self {
        let mut random = seed;
        self.surviving(|tail| below(&mut random, tail.saturating_add(1)), seed.is_multiple_of(2))
    }

    /// The disk after a power cut of which each file keeps at most `tail` bytes that were not synced, and every
    /// name that was given.
    #[must_use]
    pub fn after_power_cut_keeping(&self, tail: usize) -> Self {
        self.surviving(|length| length.min(tail), true)
    }

    /// The disk after a power cut that leaves nothing but what was durable.
    #[must_use]
    pub fn after_worst_power_cut(&self) -> Self {
        self.surviving(|_| 0, false)
    }

    fn surviving(&self, keep: impl FnMut(usize) -> usize, names: bool) -> Self {
        Self { memory: Arc::new(Mutex::new(self.memory().surviving(keep, names))) }
    }

    /// Every file as a running system sees it, by path.
    #[must_use]
    pub fn files(&self) -> Vec<(PathBuf, Vec<u8>)> {
        self.memory().files()
    }

    /// Puts bytes under a name, durable and without counting as an operation: to set a scene or to damage a file.
    pub fn plant(&self, path: &Path, bytes: &[u8]) {
        self.memory().plant(path, bytes);
    }

    /// Mode under which a file was last written whole.
    #[must_use]
    pub fn access(&self, path: &Path) -> Option<Access> {
        self.memory().access(path)
    }
}

/// A number below `end` from a small generator (splitmix64), the same for the same seed.
fn below(state: &mut u64, end: usize) -> usize {
    *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    let end = u64::try_from(end).unwrap_or(u64::MAX).max(1);
    usize::try_from((z ^ (z >> 31)) % end).unwrap_or(0)
}

/// A lock in memory: one process is all there is.
#[derive(Debug)]
struct MemoryLock;

impl super::Held for MemoryLock {}

impl Disk for MemoryDisk {
    fn remove_dir(&self, _dir: &Path) -> Result<(), DiskFault> {
        // Folders of this disk are where files are.
        Ok(())
    }

    fn lock(&self, _path: &Path) -> Result<Option<Box<dyn super::Held>>, DiskFault> {
        Ok(Some(Box::new(MemoryLock)))
    }

    fn read(&self, path: &Path, cap: u64) -> Result<Vec<u8>, DiskFault> {
        self.memory().read(path, cap)
    }

    fn list(&self, dir: &Path) -> Result<Vec<String>, DiskFault> {
        self.memory().list(dir)
    }

    fn is_dir(&self, path: &Path) -> bool {
        self.memory().is_dir(path)
    }

    fn volumes(&self) -> Vec<PathBuf> {
        let media = Path::new("/media");
        self.list(media).unwrap_or_default().into_iter().map(|name| media.join(name)).collect()
    }

    fn make_dir(&self, dir: &Path) -> Result<(), DiskFault> {
        self.memory().make_dir(dir)
    }

    fn put_new(&self, path: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault> {
        let mut memory = self.memory();
        if memory.taken(path) {
            return Err(DiskFault::Exists { path: path.to_owned() });
        }
        memory.write_whole(path, bytes, access)
    }

    fn replace(&self, path: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault> {
        self.memory().write_whole(path, bytes, access)
    }

    fn settle(&self, dir: &Path) -> Result<(), DiskFault> {
        self.memory().settle(dir)
    }

    fn append(&self, path: &Path) -> Result<Box<dyn Appender>, DiskFault> {
        let file = self.memory().open(path)?;
        Ok(Box::new(MemoryAppender { disk: self.clone(), path: path.to_owned(), file }))
    }

    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskFault> {
        self.memory().rename(from, to)
    }

    fn remove(&self, path: &Path) -> Result<(), DiskFault> {
        self.memory().remove(path)
    }
}

/// A file in memory that only grows.
#[derive(Debug)]
struct MemoryAppender {
    disk: MemoryDisk,
    path: PathBuf,
    file: usize,
}

impl Appender for MemoryAppender {
    fn len(&self) -> u64 {
        self.disk.memory().length(self.file)
    }

    fn append(&mut self, bytes: &[u8]) -> Result<(), DiskFault> {
        self.disk.memory().write(self.file, &self.path, bytes)
    }

    fn sync(&mut self) -> Result<(), DiskFault> {
        self.disk.memory().sync(self.file, &self.path)
    }

    fn cut(&mut self, len: u64) -> Result<(), DiskFault> {
        self.disk.memory().cut(self.file, &self.path, len)
    }
}

#[cfg(test)]
mod tests;
