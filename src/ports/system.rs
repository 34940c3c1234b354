//! The real disk, clock and randomness.

use std::collections::BTreeSet;
use std::io::{self, Read as _, Seek as _, SeekFrom, Write as _};
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

use jiff::Timestamp;

use super::{Access, Appender, Clock, Disk, DiskFault, Entropy, Lies, Ports};

/// The outside world as it is.
#[must_use]
pub fn ports() -> Ports {
    Ports { disk: Arc::new(SystemDisk), clock: Arc::new(SystemClock), entropy: Arc::new(SystemEntropy) }
}

/// The clock of the tablet.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemClock;

impl Clock for SystemClock {
    fn now(&self) -> Timestamp {
        Timestamp::now()
    }

    /// Linux counts it from the start of the machine and goes on counting while it sleeps. Elsewhere it is
    /// counted from the first look, and sleep may be missing.
    fn running(&self) -> Option<Duration> {
        uptime().or_else(|| {
            static FIRST: OnceLock<Instant> = OnceLock::new();
            Some(FIRST.get_or_init(Instant::now).elapsed())
        })
    }

    fn zone(&self) -> Option<String> {
        let path = std::fs::read_link(LOCAL_ZONE).ok()?;
        let (_, name) = path.to_str()?.split_once("zoneinfo/")?;
        Some(name.to_owned())
    }
}

/// Where a machine keeps its time zone: a link to the file of the zone.
const LOCAL_ZONE: &str = "/etc/localtime";
/// Where Linux says how long it has been up: seconds with two decimals, a blank, and what it idled.
const UPTIME: &str = "/proc/uptime";

fn uptime() -> Option<Duration> {
    let mut text = String::new();
    let _ = File::open(UPTIME).ok()?.take(64).read_to_string(&mut text).ok()?;
    read_uptime(&text)
}

/// The first number of the text, in hundredths of a second.
fn read_uptime(text: &str) -> Option<Duration> {
    let (seconds, hundredths) = text.split_whitespace().next()?.split_once('.')?;
    let part: u64 = (hundredths.len() == 2).then(|| hundredths.parse().ok()).flatten()?;
    Some(Duration::from_secs(seconds.parse().ok()?) + Duration::from_millis(part * 10))
}

/// Randomness of the operating system.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemEntropy;

impl Entropy for SystemEntropy {
    fn seed(&self) -> Result<[u8; 32], io::Error> {
        let mut seed = [0; 32];
        ssh_key::getrandom::fill(&mut seed).map_err(io::Error::other)?;
        Ok(seed)
    }
}

/// Files of the operating system.
///
/// A whole write is a temporary file in the same folder, synced, linked or moved to its name, and a sync of the
/// folder. Names of temporary files start with `.` and end in `.part`; a crash may leave one, which
/// whoever lists the folder passes over. [`Disk::rename`], and [`Disk::put_new`] on file systems without hard links (the FAT of a
/// stick), look whether the name is free and then move: fine while one process owns the folder, as the lock of
/// the data folder sees to.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemDisk;

/// Where desktops and people mount media.
const MEDIA: [&str; 3] = ["/media/", "/run/media/", "/mnt/"];
const MOUNTS_CAP: u64 = 1 << 20;
/// Bytes that are read of a file at a time.
const STREAM_PIECE: u64 = 1 << 20;
/// How often a lock is tried, and how long is waited in between.
const LOCK_TRIES: u32 = 5;
const LOCK_WAIT: Duration = Duration::from_millis(20);
/// Files that are made durable at a time.
const SIDE_BY_SIDE: usize = 8;

#[expect(clippy::disallowed_types, reason = "this is the disk that everybody else is told to use")]
type File = std::fs::File;

fn io_fault<'a>(action: &'static str, path: &'a Path) -> impl FnOnce(io::Error) -> DiskFault + use<'a> {
    move |source| DiskFault::Io { action, path: path.to_owned(), source: Arc::new(source) }
}

fn io_error<T>(action: &'static str, path: &Path, kind: io::ErrorKind, words: &str) -> Result<T, DiskFault> {
    Err(io_fault(action, path)(io::Error::new(kind, words)))
}

#[expect(clippy::disallowed_types, reason = "this is the disk that everybody else is told to use")]
fn options() -> std::fs::OpenOptions {
    std::fs::OpenOptions::new()
}

#[expect(clippy::disallowed_methods, reason = "this is the disk that everybody else is told to use")]
fn unlink(path: &Path) -> io::Result<()> {
    std::fs::remove_file(path)
}

#[expect(clippy::disallowed_methods, reason = "this is the disk that everybody else is told to use")]
fn move_to(from: &Path, to: &Path) -> io::Result<()> {
    std::fs::rename(from, to)
}

#[expect(clippy::disallowed_methods, reason = "it is the lock of another process that is waited for")]
fn pause(time: Duration) {
    thread::sleep(time);
}

/// Folder of a file; the working folder for a bare name.
fn folder(path: &Path) -> &Path {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    }
}

/// Makes names in a folder durable. Only Unix lets a folder be synced.
fn sync_folder(dir: &Path) -> Result<(), DiskFault> {
    if cfg!(unix) {
        let open = File::open(dir).and_then(|f| f.sync_all());
        return open.map_err(io_fault("sync", dir));
    }
    Ok(())
}

/// A name beside `path` that no other write of any process uses.
fn temporary(path: &Path) -> PathBuf {
    static NEXT: AtomicU64 = AtomicU64::new(0);
    let next = NEXT.fetch_add(1, Ordering::Relaxed);
    let name = path.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
    folder(path).join(format!(".{name}.{}-{next}.part", std::process::id()))
}

/// Writes and syncs a file that does not exist yet.
fn write_part(part: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault> {
    let mut options = options();
    options.write(true).create_new(true);
    #[cfg(unix)]
    if access == Access::Owner {
        use std::os::unix::fs::OpenOptionsExt as _;
        options.mode(0o600);
    }
    let mut file = options.open(part).map_err(io_fault("create", part))?;
    let written = file.write_all(bytes).map_err(io_fault("write", part));
    let done = written.and_then(|()| file.sync_all().map_err(io_fault("sync", part)));
    if done.is_err() {
        // The fault of the write is what matters; a part that stays is hidden and harmless.
        drop(unlink(part));
    }
    done
}

/// Writes and syncs files that do not exist yet, several at a time: a file system with a journal makes them durable
/// together.
fn write_parts(files: &[(PathBuf, &[u8])], parts: &[PathBuf], access: Access) -> Result<(), DiskFault> {
    let threads = SIDE_BY_SIDE.min(files.len()).max(1);
    let done = Mutex::new(Ok(()));
    let share = |first: usize| {
        let mut share = files.iter().zip(parts).skip(first).step_by(threads);
        if let Err(fault) = share.try_for_each(|((_, bytes), part)| write_part(part, bytes, access)) {
            *done.lock().unwrap_or_else(PoisonError::into_inner) = Err(fault);
        }
    };
    thread::scope(|scope| {
        for first in 1..threads {
            let share = &share;
            scope.spawn(move || share(first));
        }
        share(0);
    });
    done.into_inner().unwrap_or_else(PoisonError::into_inner)
}

/// Whether the name is taken, be it by a link that leads nowhere.
fn taken(path: &Path) -> bool {
    std::fs::symlink_metadata(path).is_ok()
}

/// Gives `part` the name `path`, which must be free.
fn name_new(part: &Path, path: &Path) -> Result<(), DiskFault> {
    let exists = || DiskFault::Exists { path: path.to_owned() };
    match std::fs::hard_link(part, path) {
        Ok(()) => unlink(part).map_err(io_fault("remove", part)),
        Err(e) if e.kind() == io::ErrorKind::AlreadyExists => Err(exists()),
        Err(_) if taken(path) => Err(exists()),
        Err(_) => move_to(part, path).map_err(io_fault("name", path)),
    }
}

/// What lies where media are mounted, from the system's table of mounts (`fstab(5)`: the second field is the
/// folder, with blanks and backslashes in it as octal escapes).
fn mounted(table: &str) -> Vec<PathBuf> {
    let folder = |line: &str| {
        let field = line.split(' ').nth(1)?;
        let plain = [("\\040", " "), ("\\011", "\t"), ("\\012", "\n"), ("\\134", "\\")];
        let plain = plain.iter().fold(field.to_owned(), |text, (escape, plain)| text.replace(escape, plain));
        MEDIA.iter().any(|media| plain.starts_with(media)).then(|| PathBuf::from(plain))
    };
    let mut folders: Vec<PathBuf> = table.lines().filter_map(folder).collect();
    folders.sort_unstable();
    folders.dedup();
    folders
}

/// A lock of the operating system, freed when the file is closed.
#[derive(Debug)]
struct FileLock(#[expect(dead_code, reason = "held for its lock alone")] File);

impl super::Held for FileLock {}

impl Disk for SystemDisk {
    fn remove_dir(&self, dir: &Path) -> Result<(), DiskFault> {
        match std::fs::remove_dir(dir) {
            Err(e) if e.kind() != io::ErrorKind::NotFound => Err(io_fault("remove", dir)(e)),
            _ => Ok(()),
        }
    }

    fn lock(&self, path: &Path) -> Result<Option<Box<dyn super::Held>>, DiskFault> {
        let file = options().create(true).append(true).open(path).map_err(io_fault("open", path))?;
        for _ in 0..LOCK_TRIES {
            match file.try_lock() {
                Ok(()) => return Ok(Some(Box::new(FileLock(file)))),
                // Where this process starts another one, that holds what was open until it becomes itself.
                Err(std::fs::TryLockError::WouldBlock) => pause(LOCK_WAIT),
                Err(std::fs::TryLockError::Error(e)) => return Err(io_fault("lock", path)(e)),
            }
        }
        Ok(None)
    }

    fn read(&self, path: &Path, cap: u64) -> Result<Vec<u8>, DiskFault> {
        // Looked at before it is opened: opening a pipe would wait for ever.
        let meta = std::fs::metadata(path).map_err(io_fault("read", path))?;
        if !meta.is_file() {
            return io_error("read", path, io::ErrorKind::InvalidInput, "not a plain file");
        }
        let too_large = |len| DiskFault::TooLarge { path: path.to_owned(), len, cap };
        if meta.len() > cap {
            return Err(too_large(meta.len()));
        }
        let file = File::open(path).map_err(io_fault("open", path))?;
        let mut bytes = Vec::with_capacity(usize::try_from(meta.len()).unwrap_or(0));
        file.take(cap.saturating_add(1)).read_to_end(&mut bytes).map_err(io_fault("read", path))?;
        let len = u64::try_from(bytes.len()).unwrap_or(u64::MAX);
        if len > cap { Err(too_large(len)) } else { Ok(bytes) }
    }

    fn supplant(&self, from: &Path, to: &Path) -> Result<(), DiskFault> {
        File::open(from).and_then(|file| file.sync_all()).map_err(io_fault("sync", from))?;
        move_to(from, to).map_err(io_fault("name", to))?;
        sync_folder(folder(to))
    }

    fn checksum(&self, path: &Path, except: &[(u64, u64)]) -> Result<u32, DiskFault> {
        let mut sum = super::Sum::new(except);
        self.stream(path, 0..u64::MAX, &mut |bytes| sum.add(bytes))?;
        Ok(sum.end())
    }

    fn stream(&self, path: &Path, part: Range<u64>, each: &mut dyn FnMut(&[u8])) -> Result<(), DiskFault> {
        let meta = std::fs::metadata(path).map_err(io_fault("read", path))?;
        if !meta.is_file() {
            return io_error("read", path, io::ErrorKind::InvalidInput, "not a plain file");
        }
        let mut file = File::open(path).map_err(io_fault("open", path))?;
        if part.start > 0 {
            file.seek(SeekFrom::Start(part.start)).map_err(io_fault("read", path))?;
        }
        let len = part.end.saturating_sub(part.start);
        let piece = len.min(meta.len()).clamp(1, STREAM_PIECE);
        let mut buffer = vec![0; usize::try_from(piece).unwrap_or(1)];
        let mut file = file.take(len);
        loop {
            match file.read(&mut buffer) {
                Ok(0) => return Ok(()),
                Ok(count) => each(buffer.get(..count).unwrap_or_default()),
                Err(e) if e.kind() == io::ErrorKind::Interrupted => {}
                Err(e) => return Err(io_fault("read", path)(e)),
            }
        }
    }

    fn look(&self, path: &Path) -> Result<Lies, DiskFault> {
        let meta = std::fs::symlink_metadata(path).map_err(io_fault("look at", path))?;
        let kind = meta.file_type();
        Ok(if kind.is_symlink() {
            Lies::Link
        } else if kind.is_dir() {
            Lies::Folder
        } else if kind.is_file() {
            Lies::File(meta.len())
        } else {
            Lies::Other
        })
    }

    fn real(&self, path: &Path) -> Result<PathBuf, DiskFault> {
        path.canonicalize().map_err(io_fault("find", path))
    }

    fn list(&self, dir: &Path) -> Result<Vec<String>, DiskFault> {
        let entries = match std::fs::read_dir(dir) {
            Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
            other => other.map_err(io_fault("list", dir))?,
        };
        let mut names = Vec::new();
        for entry in entries {
            let name = entry.map_err(io_fault("list", dir))?.file_name();
            // A name that is no text is listed with marks in it, so that reading it fails and is seen.
            names.push(name.to_string_lossy().into_owned());
        }
        names.sort_unstable();
        Ok(names)
    }

    fn is_dir(&self, path: &Path) -> bool {
        path.is_dir()
    }

    fn stamp(&self, path: &Path) -> Option<(u64, u128)> {
        let meta = std::fs::metadata(path).ok()?;
        let changed = meta.modified().ok()?.duration_since(std::time::UNIX_EPOCH).ok()?;
        Some((meta.len(), changed.as_nanos()))
    }

    fn volumes(&self) -> Vec<PathBuf> {
        let table = self.read(Path::new("/proc/self/mounts"), MOUNTS_CAP).unwrap_or_default();
        mounted(&String::from_utf8_lossy(&table))
    }

    fn make_dir(&self, dir: &Path) -> Result<(), DiskFault> {
        if dir.is_dir() || dir.as_os_str().is_empty() {
            return Ok(());
        }
        if let Some(parent) = dir.parent() {
            self.make_dir(parent)?;
        }
        match std::fs::create_dir(dir) {
            Err(e) if e.kind() == io::ErrorKind::AlreadyExists && dir.is_dir() => Ok(()),
            other => other.map_err(io_fault("make", dir)),
        }?;
        sync_folder(folder(dir))
    }

    fn put_new(&self, path: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault> {
        if taken(path) {
            return Err(DiskFault::Exists { path: path.to_owned() });
        }
        let part = temporary(path);
        write_part(&part, bytes, access)?;
        let named = name_new(&part, path);
        if named.is_err() {
            drop(unlink(&part));
        }
        named.and_then(|()| sync_folder(folder(path)))
    }

    fn put_all_new(&self, files: &[(PathBuf, &[u8])], access: Access) -> Result<(), DiskFault> {
        let parts: Vec<PathBuf> = files.iter().map(|(path, _)| temporary(path)).collect();
        let named = write_parts(files, &parts, access)
            .and_then(|()| files.iter().zip(&parts).try_for_each(|((path, _), part)| name_new(part, path)));
        if named.is_err() {
            parts.iter().for_each(|part| drop(unlink(part)));
        }
        let folders: BTreeSet<&Path> = files.iter().map(|(path, _)| folder(path)).collect();
        named.and_then(|()| folders.into_iter().try_for_each(sync_folder))
    }

    fn replace(&self, path: &Path, bytes: &[u8], access: Access) -> Result<(), DiskFault> {
        let part = temporary(path);
        write_part(&part, bytes, access)?;
        let moved = move_to(&part, path).map_err(io_fault("replace", path));
        if moved.is_err() {
            drop(unlink(&part));
        }
        moved.and_then(|()| sync_folder(folder(path)))
    }

    fn settle(&self, dir: &Path) -> Result<(), DiskFault> {
        if dir.is_dir() { sync_folder(dir) } else { Ok(()) }
    }

    fn append(&self, path: &Path) -> Result<Box<dyn Appender>, DiskFault> {
        let is_new = !taken(path);
        let file = options().append(true).create(true).open(path).map_err(io_fault("open", path))?;
        let meta = file.metadata().map_err(io_fault("open", path))?;
        if !meta.is_file() {
            return io_error("append to", path, io::ErrorKind::InvalidInput, "not a plain file");
        }
        if is_new {
            sync_folder(folder(path))?;
        }
        Ok(Box::new(SystemAppender { file, path: path.to_owned(), len: meta.len() }))
    }

    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskFault> {
        if taken(to) {
            return Err(DiskFault::Exists { path: to.to_owned() });
        }
        move_to(from, to).map_err(io_fault("move", from))?;
        sync_folder(folder(to))?;
        if folder(from) == folder(to) { Ok(()) } else { sync_folder(folder(from)) }
    }

    fn remove(&self, path: &Path) -> Result<(), DiskFault> {
        match unlink(path) {
            Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(()),
            other => other.map_err(io_fault("remove", path))?,
        }
        sync_folder(folder(path))
    }
}

/// A file of the operating system that only grows.
#[derive(Debug)]
struct SystemAppender {
    file: File,
    path: PathBuf,
    len: u64,
}

impl Appender for SystemAppender {
    fn len(&self) -> u64 {
        self.len
    }

    fn append(&mut self, bytes: &[u8]) -> Result<(), DiskFault> {
        self.file.write_all(bytes).map_err(io_fault("append to", &self.path))?;
        self.len = self.len.saturating_add(u64::try_from(bytes.len()).unwrap_or(u64::MAX));
        Ok(())
    }

    fn sync(&mut self) -> Result<(), DiskFault> {
        self.file.sync_data().map_err(io_fault("sync", &self.path))
    }

    fn cut(&mut self, len: u64) -> Result<(), DiskFault> {
        self.file.set_len(len).map_err(io_fault("cut", &self.path))?;
        self.len = len;
        self.file.sync_all().map_err(io_fault("sync", &self.path))
    }
}

#[cfg(test)]
mod tests;
