//! What a journal holds after a crash.

use std::path::{Path, PathBuf};

use super::line::{self, LineFault};
use super::{FILE_CAP, JournalFault};
use crate::ports::{Access, Disk, DiskFault};
use crate::walk::Entry;

/// A torn tail: the last line was not written to its end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cut {
    /// Bytes of the tail.
    pub bytes: usize,
    /// Whether the tail holds a line feed, so that more than one unfinished line may be in it. It is then copied
    /// aside before the journal goes on.
    pub whole_lines: bool,
}

/// Damage before the end, or a line this version does not know.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "line {line} of the journal is damaged: {what}; {} before it and {good_after} after it are whole, \
     and the file is kept: call the office before this walk goes on",
    line - 1
)]
pub struct Damage {
    /// The line, counted from 1.
    pub line: usize,
    /// What is wrong with it.
    pub what: LineFault,
    /// Whole lines after it, which are not offered: they may build upon what is lost.
    pub good_after: usize,
}

/// What could be read of a journal. Reading changes nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recovered {
    /// Where it lies.
    pub path: PathBuf,
    /// The longest run of good entries from the start.
    pub entries: Vec<Entry>,
    /// What is cut off when the journal goes on.
    pub cut: Option<Cut>,
    /// Damage before the end.
    pub damage: Option<Damage>,
}

impl Recovered {
    /// Whether the file holds more than its good entries and one unfinished line.
    pub(super) fn must_be_kept(&self) -> bool {
        self.damage.is_some() || self.cut.as_ref().is_some_and(|c| c.whole_lines)
    }
}

/// Reads a journal as far as it is good.
///
/// # Errors
/// The file cannot be read, or is larger than a journal may be.
pub fn recover(disk: &dyn Disk, path: &Path) -> Result<Recovered, JournalFault> {
    let bytes = disk.read(path, FILE_CAP)?;
    let mut entries = Vec::new();
    let mut rest = bytes.as_slice();
    let mut fault = None;
    while !rest.is_empty() {
        let (line, after) = next_line(rest);
        match line.map_or(Err(LineFault::Head), line::decode) {
            Ok(entry) => entries.push(entry),
            Err(what) => {
                fault = Some(what);
                break;
            }
        }
        rest = after;
    }
    let (cut, damage) = fault.map_or((None, None), |what| judge(what, entries.len() + 1, rest));
    Ok(Recovered { path: path.to_owned(), entries, cut, damage })
}

/// The first line, without its line feed, and what follows; no line when its line feed is missing.
fn next_line(bytes: &[u8]) -> (Option<&[u8]>, &[u8]) {
    match bytes.iter().position(|b| *b == b'\n').and_then(|end| bytes.split_at_checked(end)) {
        Some((line, after)) => (Some(line), after.split_first().map_or(&[], |(_, rest)| rest)),
        None => (None, &[]),
    }
}

/// Whether what stands from the first bad line on is a torn tail or damage.
fn judge(what: LineFault, line: usize, tail: &[u8]) -> (Option<Cut>, Option<Damage>) {
    let mut good_after = 0;
    let (_, mut rest) = next_line(tail);
    while !rest.is_empty() {
        let (line, after) = next_line(rest);
        let whole = line.is_some_and(|l| line::decode(l).map_or_else(|f| f.is_whole(), |_| true));
        good_after += usize::from(whole);
        rest = after;
    }
    if good_after > 0 || what.is_whole() {
        return (None, Some(Damage { line, what, good_after }));
    }
    (Some(Cut { bytes: tail.len(), whole_lines: tail.contains(&b'\n') }), None)
}

/// A free name beside `path`: `<name>.<what>-<n>`.
fn free_name(disk: &dyn Disk, path: &Path, what: &str) -> Result<PathBuf, DiskFault> {
    let name = path.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
    let taken = disk.list(path.parent().unwrap_or(Path::new("")))?;
    let free = (1_u32..).map(|n| format!("{name}.{what}-{n}")).find(|n| !taken.contains(n));
    Ok(path.with_file_name(free.unwrap_or(name)))
}

/// Copies a damaged journal to a name beside it, byte for byte.
pub(super) fn copy_aside(disk: &dyn Disk, path: &Path) -> Result<PathBuf, DiskFault> {
    let bytes = disk.read(path, FILE_CAP)?;
    let aside = free_name(disk, path, "damaged")?;
    disk.put_new(&aside, &bytes, Access::Owner)?;
    Ok(aside)
}

/// Moves a journal that cannot go on to a name beside it, so that it is no longer offered and nothing is lost.
///
/// # Errors
/// The disk refused; the journal then still stands.
pub fn set_aside(disk: &dyn Disk, path: &Path) -> Result<PathBuf, DiskFault> {
    let aside = free_name(disk, path, "set-aside")?;
    disk.rename(path, &aside)?;
    Ok(aside)
}
