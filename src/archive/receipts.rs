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
/// More bytes than any line of a receipt has.
const LINE_MAX: usize = 16 << 10;

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

/// The receipts of one chain, by number.
type Numbers = BTreeMap<u32, Receipt>;

/// All receipts of an archive.
#[derive(Debug, Clone, Default)]
pub struct Receipts {
    /// By tablet and key.
    chains: BTreeMap<Box<str>, BTreeMap<Box<str>, Numbers>>,
    count: usize,
    faults: Vec<LogFault>,
}

impl Receipts {
    /// Reads all logs.
    ///
    /// # Errors
    /// The store refuses.
    pub(super) fn load(store: &dyn Store) -> Result<Self, DiskFault> {
        let mut all = Self::default();
        for log in logs(store)? {
            match log {
                Ok(log) => {
                    let mut lines = Lines::of(&log);
                    let mut each = |line: Line| all.add_line(&log, line);
                    store.stream(&log, 0..u64::MAX, &mut |piece| lines.add(piece, &mut each))?;
                    lines.end(&mut each);
                }
                Err(fault) => all.faults.push(fault),
            }
        }
        Ok(all)
    }

    pub(super) fn add_log(&mut self, log: &str, bytes: &[u8]) {
        let mut lines = Lines::of(log);
        let mut each = |line: Line| self.add_line(log, line);
        lines.add(bytes, &mut each);
        lines.end(&mut each);
    }

    fn add_line(&mut self, log: &str, line: Line) {
        match line.said {
            Ok((id, receipt)) if self.of(&id).is_none() => self.insert(&id, receipt),
            Ok((id, _)) => self.faults.push(LogFault::Twice { log: log.to_owned(), line: line.at, id }),
            Err(fault) => self.faults.push(fault),
        }
    }

    pub(super) fn insert(&mut self, id: &RecordId, receipt: Receipt) {
        // Ids of one chain come in a row: names are made into text once a chain.
        if !self.chains.contains_key(id.tablet()) {
            self.chains.insert(id.tablet().into(), BTreeMap::new());
        }
        let Some(keys) = self.chains.get_mut(id.tablet()) else { return };
        if !keys.contains_key(id.key()) {
            keys.insert(id.key().into(), BTreeMap::new());
        }
        let Some(numbers) = keys.get_mut(id.key()) else { return };
        self.count += usize::from(numbers.insert(id.number(), receipt).is_none());
    }

    /// The receipt of a record.
    #[must_use]
    pub fn of(&self, id: &RecordId) -> Option<Receipt> {
        self.chains.get(id.tablet())?.get(id.key())?.get(&id.number()).copied()
    }

    /// What is wrong with the logs.
    #[must_use]
    pub fn faults(&self) -> &[LogFault] {
        &self.faults
    }

    /// All of them, chain by chain and in the order of the numbers.
    pub fn all(&self) -> impl Iterator<Item = (RecordId, Receipt)> + '_ {
        self.chains().flat_map(|(tablet, key, numbers)| {
            numbers.iter().filter_map(move |(number, receipt)| {
                Some((format!("{tablet}-{key}-{number:06}").parse().ok()?, *receipt))
            })
        })
    }

    fn chains(&self) -> impl Iterator<Item = (&str, &str, &Numbers)> + '_ {
        self.chains.iter().flat_map(|(tablet, keys)| {
            keys.iter().map(move |(key, numbers)| (tablet.as_ref(), key.as_ref(), numbers))
        })
    }

    /// Those of a chain, in the order of their numbers.
    pub fn of_chain(&self, tablet: &str, key: &str) -> impl Iterator<Item = (u32, Receipt)> + '_ {
        let numbers = self.chains.get(tablet).and_then(|keys| keys.get(key));
        numbers.into_iter().flatten().map(|(number, receipt)| (*number, *receipt))
    }

    /// How many there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.count
    }

    /// Whether there are none.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.count == 0
    }
}

/// The logs of an archive by their names in it, and what has not the name of one.
pub(super) fn logs(store: &dyn Store) -> Result<Vec<Result<String, LogFault>>, DiskFault> {
    let mut logs = Vec::new();
    for name in store.list(RECEIPTS)? {
        let log = format!("{RECEIPTS}/{name}");
        match month_of(&name) {
            Some(_) => logs.push(Ok(log)),
            // Beside a log lies its mark; in a stand-alone copy, its signature.
            None if name.ends_with(".log.sig") || name.ends_with(marked::END) => {}
            None => logs.push(Err(LogFault::Stray { log })),
        }
    }
    Ok(logs)
}

/// A line of a log.
#[derive(Debug)]
pub(super) struct Line {
    /// Its number, from 1.
    pub(super) at: usize,
    /// What stands in it.
    pub(super) said: Result<(RecordId, Receipt), LogFault>,
}

/// Takes a log to lines, piece by piece.
#[derive(Debug)]
pub(super) struct Lines<'a> {
    log: &'a str,
    at: usize,
    /// The beginning of a line whose end has not come yet.
    begun: Vec<u8>,
}

impl<'a> Lines<'a> {
    pub(super) const fn of(log: &'a str) -> Self {
        Self { log, at: 0, begun: Vec::new() }
    }

    pub(super) fn add(&mut self, piece: &[u8], each: &mut dyn FnMut(Line)) {
        for part in piece.split_inclusive(|b| *b == b'\n') {
            match part.strip_suffix(b"\n") {
                Some(end) if self.begun.is_empty() => self.line(end, each),
                Some(end) => {
                    let mut whole = std::mem::take(&mut self.begun);
                    whole.extend_from_slice(end);
                    self.line(&whole, each);
                }
                // Of what is no line in any case, no more is kept than shows that.
                None => {
                    let room = LINE_MAX.saturating_sub(self.begun.len());
                    self.begun.extend(part.iter().take(room));
                }
            }
        }
    }

    fn line(&mut self, whole: &[u8], each: &mut dyn FnMut(Line)) {
        self.at += 1;
        let text = Some(whole).filter(|line| line.len() < LINE_MAX);
        let said = text.and_then(|line| std::str::from_utf8(line).ok()).and_then(parse);
        let fault = || LogFault::Line { log: self.log.to_owned(), line: self.at };
        each(Line { at: self.at, said: said.ok_or_else(fault) });
    }

    pub(super) fn end(self, each: &mut dyn FnMut(Line)) {
        if !self.begun.is_empty() {
            each(Line { at: self.at + 1, said: Err(LogFault::Torn { log: self.log.to_owned() }) });
        }
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

#[cfg(test)]
mod tests {
    use super::*;

    fn faults(pieces: &[&[u8]]) -> Vec<(usize, bool)> {
        let (mut lines, mut told) = (Lines::of("receipts/2026-06.log"), Vec::new());
        let mut each = |line: Line| told.push((line.at, line.said.is_ok()));
        pieces.iter().for_each(|piece| lines.add(piece, &mut each));
        lines.end(&mut each);
        told
    }

    #[test]
    fn lines_are_the_same_in_pieces_of_any_size() {
        let digest = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";
        let log = format!(
            "2026-06-12T18:00:00Z {digest} t2-5f3a9c-000001 a stick\nnone\n\n\
             2026-06-12T18:00:00Z {digest} t2-5f3a9c-000002 -\n2026-06"
        );
        let wanted = [(1, true), (2, false), (3, false), (4, true), (5, false)];
        for size in 1..=log.len() {
            let pieces: Vec<&[u8]> = log.as_bytes().chunks(size).collect();
            assert_eq!(faults(&pieces), wanted, "{size}");
        }
    }

    #[test]
    fn a_line_without_end_takes_no_room_and_those_behind_it_are_read() {
        let digest = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";
        let begin = format!("2026-06-12T18:00:00Z {digest} t2-5f3a9c-000001 ");
        let long = [b'x'; 1 << 10];
        let mut pieces = vec![begin.as_bytes()];
        pieces.extend([&long[..]; 64]);
        let next = format!("\n2026-06-12T18:00:00Z {digest} t2-5f3a9c-000002 -\n");
        pieces.push(next.as_bytes());
        assert_eq!(faults(&pieces), [(1, false), (2, true)]);
    }
}
