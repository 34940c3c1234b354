//! The journal: what happened in a walk, on disk before anybody is told that it happened.
//!
//! One text line for each event (see [`mod@line`]). A line is written and synced before [`Journal::append`] returns;
//! a failed write or sync makes the journal unusable for good, since what is on the disk is then unknown. What is
//! safe is found again by [`recover()`]: the longest run of good lines from the start. [`Keeper`] holds the walk and
//! its journal together, [`Writer`] does the same on a thread of its own.
//!
//! It does not lock anything: one process owns a data folder.

mod keeper;
pub mod line;
mod open;
mod recover;
mod writer;

use std::path::{Path, PathBuf};

use crate::ports::{Access, Appender, Disk, DiskFault};
use crate::walk::Entry;

pub use keeper::{Keeper, ProposeFault, ResumeFault, Resumed};
pub use open::{OpenWalk, journal_path, open_walks};
pub use recover::{Cut, Damage, Recovered, recover, set_aside};
pub use writer::{Answered, Writer};

/// Most bytes of a journal.
pub const FILE_CAP: u64 = 64 << 20;

/// Why an event could not be kept.
#[derive(Debug, Clone, thiserror::Error)]
pub enum JournalFault {
    /// The disk refused. The journal must not be used again.
    #[error("event {} could not be saved ({source}). {}", safe + 1, safe_words(*safe))]
    Disk {
        /// How many events are safe, counted from the first.
        safe: u64,
        /// What the disk said.
        source: DiskFault,
    },
    /// An earlier write failed, so that the journal must not be used again.
    #[error("nothing more can be saved after the earlier disk fault. {}", safe_words(*safe))]
    Poisoned {
        /// How many events are safe, counted from the first.
        safe: u64,
    },
    /// An event that is longer than a line may be. The journal is as it was.
    #[error("an event of {len} bytes is longer than the {} allowed: shorten its words", line::LINE_CAP)]
    TooLong {
        /// Its length in bytes.
        len: usize,
    },
    /// The journal is as long as it may be. It is as it was.
    #[error("the journal of this walk is full: seal the walk, or stop the handover and begin another one")]
    Full,
    /// An event could not be written as text. The journal is as it was.
    #[error("an event cannot be written as text ({0}): this is a mistake in the program, report it")]
    Encode(String),
    /// A journal without a single whole event.
    #[error("{} holds no whole event: set it aside and begin the walk anew from the Yard", path.display())]
    Nothing {
        /// Where it lies.
        path: PathBuf,
    },
    /// The journal could not be made or read.
    #[error(transparent)]
    Access(#[from] DiskFault),
}

fn safe_words(safe: u64) -> String {
    let which = match safe {
        0 => "Nothing of this walk is saved".to_owned(),
        1 => "Event 1 is safe".to_owned(),
        n => format!("Events 1 to {n} are safe"),
    };
    format!("{which}: look at the tablet's disk, start the kiosk again, the walk goes on from there")
}

/// The journal of one walk, open for appending.
#[derive(Debug)]
pub struct Journal {
    path: PathBuf,
    events: u64,
    /// None once a write or sync has failed: the handle is dropped and never tried again.
    file: Option<Box<dyn Appender>>,
}

impl Journal {
    /// Begins a journal with its first event, which is durable when this returns. Its folder must be there.
    ///
    /// # Errors
    /// The name is taken, or the disk refused; then there is no journal.
    pub fn create(disk: &dyn Disk, path: &Path, first: &Entry) -> Result<Self, JournalFault> {
        let bytes = line::encode(first)?;
        disk.put_new(path, &bytes, Access::Owner)?;
        Ok(Self { path: path.to_owned(), events: 1, file: Some(disk.append(path)?) })
    }

    /// Goes on with a journal that was recovered.
    ///
    /// The good lines are written to a new file that takes the old one's name: after a failed sync the system may
    /// show lines that never reached the disk, and only writing them anew makes sure of them. A damaged file, and
    /// a cut tail of whole lines, are copied aside first.
    ///
    /// # Errors
    /// The disk refused; the old file then still stands. A journal without a single good line cannot go on.
    pub fn resume(disk: &dyn Disk, recovered: &Recovered) -> Result<(Self, Option<PathBuf>), JournalFault> {
        let path = recovered.path.as_path();
        if recovered.entries.is_empty() {
            return Err(JournalFault::Nothing { path: path.to_owned() });
        }
        let kept = if recovered.must_be_kept() { Some(recover::copy_aside(disk, path)?) } else { None };
        let mut bytes = Vec::new();
        for entry in &recovered.entries {
            bytes.extend(line::encode(entry)?);
        }
        disk.replace(path, &bytes, Access::Owner)?;
        let events = u64::try_from(recovered.entries.len()).unwrap_or(u64::MAX);
        Ok((Self { path: path.to_owned(), events, file: Some(disk.append(path)?) }, kept))
    }

    /// Appends an event. It is durable when this returns its number, counted from 1.
    ///
    /// # Errors
    /// [`JournalFault::Disk`] makes the journal unusable, and later calls return [`JournalFault::Poisoned`].
    /// Other faults leave it as it was.
    pub fn append(&mut self, entry: &Entry) -> Result<u64, JournalFault> {
        let safe = self.events;
        let Some(file) = self.file.as_mut() else { return Err(JournalFault::Poisoned { safe }) };
        let bytes = line::encode(entry)?;
        let grown = file.len().saturating_add(u64::try_from(bytes.len()).unwrap_or(u64::MAX));
        if grown > FILE_CAP {
            return Err(JournalFault::Full);
        }
        if let Err(source) = file.append(&bytes).and_then(|()| file.sync()) {
            self.file = None;
            return Err(JournalFault::Disk { safe, source });
        }
        self.events = safe.saturating_add(1);
        Ok(self.events)
    }

    /// How many events are safe.
    #[must_use]
    pub fn events(&self) -> u64 {
        self.events
    }

    /// Where it lies.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Whether a write has failed, so that nothing more can be kept.
    #[must_use]
    pub fn is_poisoned(&self) -> bool {
        self.file.is_none()
    }

    /// Removes the journal: its walk is sealed, and the record was read back.
    ///
    /// # Errors
    /// The disk refused; the journal then still stands.
    pub fn retire(self, disk: &dyn Disk) -> Result<(), DiskFault> {
        let Self { path, file, .. } = self;
        drop(file);
        disk.remove(&path)
    }
}
