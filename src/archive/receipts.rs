//! The receipts: a line for each record that the office took in, and when. What stands here decides at which
//! time the validity of a tablet is judged.
//!
//! A line is `<time> <digest> <record id> <where it came from>`. It counts when it is on the disk to its line end;
//! what a crash left of a line does not count, and is gone when the log is next written to.

pub(super) mod marked;

use std::collections::{BTreeMap, BTreeSet};

use jiff::Timestamp;

use super::{RECEIPTS, Store};
use crate::ports::{Appender, DiskFault};
use crate::record::receipt::whole_second;
use crate::record::seal::{Digest, RecordId};

/// A month of half a million records.
pub(super) const LOG_CAP: u64 = 256 << 20;
/// The longest account of where a record came from, in characters.
const SOURCE_MAX: usize = 200;

/// What is wrong with a log.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LogFault {
    /// A line that is none.
    #[error("{log}, line {line} is not that of a receipt")]
    Line {
        /// The log.
        log: String,
        /// The line, from 1.
        line: usize,
    },
    /// Two lines about one record.
    #[error("{log}, line {line}: there is another receipt for record {id}")]
    Twice {
        /// The log.
        log: String,
        /// The line, from 1.
        line: usize,
        /// The record.
        id: RecordId,
    },
    /// The end of a line that a crash cut off.
    #[error("{log} ends in the middle of a line; it was being written when the power went")]
    Torn {
        /// The log.
        log: String,
    },
    /// A name that no log has.
    #[error("{log} is no log of receipts")]
    Stray {
        /// The file.
        log: String,
    },
}

/// When the office received a record.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Receipt {
    /// When, to the second.
    pub at: Timestamp,
    /// The record's digest.
    pub digest: Digest,
}

/// All receipts of an archive.
#[derive(Debug, Clone, Default)]
pub struct Receipts {
    /// By id as text, which takes less room than its parts.
    by_id: BTreeMap<Box<str>, Receipt>,
    faults: Vec<LogFault>,
}

impl Receipts {
    /// Reads all logs.
    ///
    /// # Errors
    /// The store refuses.
    pub(super) fn load(store: &dyn Store) -> Result<Self, DiskFault> {
        let mut all = Self::default();
        for name in store.list(RECEIPTS)? {
            let log = format!("{RECEIPTS}/{name}");
            match month_of(&name) {
                Some(_) => all.add_log(&log, &store.read(&log, LOG_CAP)?),
                // Beside a log lies its mark; in a stand-alone copy, its signature.
                None if name.ends_with(".log.sig") || name.ends_with(marked::END) => {}
                None => all.faults.push(LogFault::Stray { log }),
            }
        }
        Ok(all)
    }

    pub(super) fn add_log(&mut self, log: &str, bytes: &[u8]) {
        for (at, line) in bytes.split_inclusive(|b| *b == b'\n').enumerate() {
            let log = || log.to_owned();
            let Some(whole) = line.strip_suffix(b"\n") else {
                self.faults.push(LogFault::Torn { log: log() });
                continue;
            };
            match std::str::from_utf8(whole).ok().and_then(parse) {
                None => self.faults.push(LogFault::Line { log: log(), line: at + 1 }),
                Some((id, receipt)) => {
                    let before = self.by_id.get(id.to_string().as_str());
                    if before.is_some() {
                        self.faults.push(LogFault::Twice { log: log(), line: at + 1, id });
                    } else {
                        self.insert(&id, receipt);
                    }
                }
            }
        }
    }

    pub(super) fn insert(&mut self, id: &RecordId, receipt: Receipt) {
        self.by_id.insert(id.to_string().into_boxed_str(), receipt);
    }

    /// The receipt of a record.
    #[must_use]
    pub fn of(&self, id: &RecordId) -> Option<Receipt> {
        self.by_id.get(id.to_string().as_str()).copied()
    }

    /// What is wrong with the logs.
    #[must_use]
    pub fn faults(&self) -> &[LogFault] {
        &self.faults
    }

    /// All of them, by the text of the id: the numbers of a chain follow each other.
    pub fn all(&self) -> impl Iterator<Item = (RecordId, Receipt)> + '_ {
        self.by_id.iter().filter_map(|(id, receipt)| Some((id.parse().ok()?, *receipt)))
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.by_id.len()
    }

    /// Whether there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.by_id.is_empty()
    }
}

/// `2026-06` of `2026-06.log`.
fn month_of(name: &str) -> Option<&str> {
    let month = name.strip_suffix(".log")?;
    let (year, number) = month.split_once('-')?;
    let digits = |text: &str, len| text.len() == len && text.bytes().all(|b| b.is_ascii_digit());
    (digits(year, 4) && digits(number, 2)).then_some(month)
}

fn parse(line: &str) -> Option<(RecordId, Receipt)> {
    let mut parts = line.splitn(4, ' ');
    let (at, digest, id, source) = (parts.next()?, parts.next()?, parts.next()?, parts.next()?);
    let fits = !source.is_empty() && !source.contains(char::is_control);
    let receipt = Receipt { at: whole_second(at)?, digest: digest.parse().ok()? };
    fits.then_some((id.parse().ok()?, receipt))
}

/// The log of the month in which a record was received.
pub(super) fn log_of(at: Timestamp) -> String {
    format!("{RECEIPTS}/{}.log", at.strftime("%Y-%m"))
}

/// The line of a receipt.
pub(super) fn line(id: &RecordId, receipt: Receipt, source: &str) -> String {
    let plain = |c: char| if c.is_control() { '?' } else { c };
    let source: String = source.chars().map(plain).take(SOURCE_MAX).collect();
    let source = if source.is_empty() { "-" } else { &source };
    format!("{} {} {id} {source}\n", receipt.at, receipt.digest)
}

/// Writes receipts. After a fault it is not to be used again.
#[derive(Debug)]
pub(super) struct Writer<'a> {
    store: &'a dyn Store,
    open: BTreeMap<String, Box<dyn Appender>>,
    renewed: BTreeSet<String>,
    /// Logs with lines that are not durable yet.
    waiting: BTreeSet<String>,
}

impl<'a> Writer<'a> {
    pub(super) const fn new(store: &'a dyn Store) -> Self {
        Self { store, open: BTreeMap::new(), renewed: BTreeSet::new(), waiting: BTreeSet::new() }
    }

    /// Appends a line to the log of its month; it counts once it is synced.
    pub(super) fn append(&mut self, id: &RecordId, receipt: Receipt, source: &str) -> Result<(), DiskFault> {
        let log = log_of(receipt.at);
        if !self.open.contains_key(&log) {
            self.renew(&log)?;
            let appender = self.store.append(&log)?;
            self.open.insert(log.clone(), appender);
        }
        if let Some(appender) = self.open.get_mut(&log) {
            appender.append(line(id, receipt, source).as_bytes())?;
            self.waiting.insert(log);
        }
        Ok(())
    }

    /// Makes all lines durable.
    pub(super) fn sync(&mut self) -> Result<(), DiskFault> {
        for log in std::mem::take(&mut self.waiting) {
            if let Some(appender) = self.open.get_mut(&log) {
                appender.sync()?;
            }
        }
        Ok(())
    }

    /// Makes a receipt that stands in a log durable: an earlier process may have failed at just that.
    pub(super) fn keep(&mut self, receipt: Receipt) -> Result<(), DiskFault> {
        self.renew(&log_of(receipt.at))
    }

    /// Writes a log anew, once a run and before it is appended to: it drops a torn end, and makes durable what an
    /// earlier process wrote without its sync having succeeded. A second sync of the same file would not do that.
    fn renew(&mut self, log: &str) -> Result<(), DiskFault> {
        if !self.renewed.insert(log.to_owned()) {
            return Ok(());
        }
        match self.store.read(log, LOG_CAP) {
            Ok(bytes) => {
                let whole = bytes.iter().rposition(|b| *b == b'\n').map_or(0, |at| at + 1);
                self.store.replace(log, bytes.get(..whole).unwrap_or_default())
            }
            Err(fault) if fault.is_missing() => Ok(()),
            Err(fault) => Err(fault),
        }
    }
}
