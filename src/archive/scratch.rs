//! What an audit sets down while it reads, so that its memory does not grow with the archive: receipts by record, and of
//! each file what its chain needs. It is put in order by what SQLite does with tables larger than its cache.
//!
//! The database has no name. What outgrows a small cache goes to the system's folder for temporary files, and is gone
//! when the database is closed, however that comes about. Nothing of it lies in the archive.

use std::collections::BTreeMap;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension as _, Row, Rows, params};

use super::chains::{Chain, Link, Said};
use super::{ArchiveFault, Receipt};
use crate::record::seal::{Digest, RecordId};

/// Room for the numbers of a chain in a key.
const NUMBERS: i64 = 1 << 20;
const SCHEMA: &str = "
PRAGMA page_size = 8192;
PRAGMA cache_size = -2048;
PRAGMA temp_store = FILE;
PRAGMA journal_mode = OFF;
PRAGMA synchronous = OFF;
CREATE TABLE receipts(key INTEGER PRIMARY KEY, at INTEGER NOT NULL, digest BLOB NOT NULL);
CREATE TABLE seen(
    key INTEGER NOT NULL, what INTEGER NOT NULL, path TEXT, digest BLOB, previous BLOB, second INTEGER, nano INTEGER
);
CREATE TABLE lost(key INTEGER PRIMARY KEY, digest BLOB NOT NULL);
BEGIN;
";
/// Finds a record by its digest; made when the first one is looked for that way.
const BY_DIGEST: &str = "CREATE INDEX IF NOT EXISTS by_digest ON seen(digest) WHERE digest IS NOT NULL";

const GOOD: i64 = 0;
const DAMAGED: i64 = 1;
const WAITING: i64 = 2;

impl From<rusqlite::Error> for ArchiveFault {
    fn from(fault: rusqlite::Error) -> Self {
        Self::Scratch(fault.to_string())
    }
}

/// What was read of a file.
#[derive(Debug)]
pub(super) enum Noted {
    /// A good record. Its path only where it is not the one that it should have.
    Good { path: Option<String>, link: Link },
    /// A file with the name of a record that is not good.
    Damaged,
    /// A good record that waits in quarantine.
    Waiting { link: Link },
}

/// All that is known of one number of a chain.
#[derive(Debug)]
pub(super) struct Group {
    pub(super) id: RecordId,
    pub(super) receipt: Option<Receipt>,
    pub(super) noted: Vec<Noted>,
}

/// The tables.
#[derive(Debug)]
pub(super) struct Scratch {
    connection: Connection,
    chains: Vec<Chain>,
    places: BTreeMap<Chain, usize>,
}

impl Scratch {
    /// Empty tables.
    pub(super) fn new() -> Result<Self, ArchiveFault> {
        let connection = Connection::open("")?;
        connection.execute_batch(SCHEMA)?;
        Ok(Self { connection, chains: Vec::new(), places: BTreeMap::new() })
    }

    /// The chains that were told of so far.
    pub(super) fn chains(&self) -> &[Chain] {
        &self.chains
    }

    fn first_of(&self, chain: &Chain) -> Option<i64> {
        let place = i64::try_from(*self.places.get(chain)?).ok()?;
        place.checked_mul(NUMBERS)
    }

    fn key(&mut self, id: &RecordId) -> i64 {
        let chain = Chain::of(id);
        let first = self.first_of(&chain).unwrap_or_else(|| {
            self.places.insert(chain.clone(), self.chains.len());
            self.chains.push(chain.clone());
            self.first_of(&chain).unwrap_or(i64::MAX - NUMBERS)
        });
        first.saturating_add(i64::from(id.number()))
    }

    /// Notes a receipt; whether it is the first for its record.
    pub(super) fn receive(&mut self, id: &RecordId, receipt: Receipt) -> Result<bool, ArchiveFault> {
        let key = self.key(id);
        let mut insert = self
            .connection
            .prepare_cached("INSERT OR IGNORE INTO receipts(key, at, digest) VALUES(?1, ?2, ?3)")?;
        Ok(insert.execute(params![key, receipt.at.as_second(), receipt.digest.as_bytes()])? > 0)
    }

    /// The receipt of a record.
    pub(super) fn receipt(&self, id: &RecordId) -> Result<Option<Receipt>, ArchiveFault> {
        let Some(first) = self.first_of(&Chain::of(id)) else { return Ok(None) };
        let mut find = self.connection.prepare_cached("SELECT at, digest FROM receipts WHERE key = ?1")?;
        let key = first.saturating_add(i64::from(id.number()));
        Ok(find.query_row([key], |row| receipt_in(row, 0)).optional()?)
    }

    /// Notes what a file is.
    pub(super) fn note(&mut self, id: &RecordId, noted: &Noted) -> Result<(), ArchiveFault> {
        let key = self.key(id);
        let (what, path, link) = match noted {
            Noted::Good { path, link } => (GOOD, path.as_deref(), Some(link)),
            Noted::Damaged => (DAMAGED, None, None),
            Noted::Waiting { link } => (WAITING, None, Some(link)),
        };
        let said = link.and_then(|link| link.said);
        let sealed = said.map(|said| said.sealed);
        let mut insert = self.connection.prepare_cached(
            "INSERT INTO seen(key, what, path, digest, previous, second, nano) VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        )?;
        insert.execute(params![
            key,
            what,
            path,
            link.map(|link| *link.digest.as_bytes()),
            said.and_then(|said| said.previous).map(|previous| *previous.as_bytes()),
            sealed.map(Timestamp::as_second),
            sealed.map(Timestamp::subsec_nanosecond),
        ])?;
        Ok(())
    }

    /// Notes that a record was received which is not there as a good file: a link all the same.
    pub(super) fn lose(&self, id: &RecordId, digest: &Digest) -> Result<(), ArchiveFault> {
        let Some(first) = self.first_of(&Chain::of(id)) else { return Ok(()) };
        let mut insert =
            self.connection.prepare_cached("INSERT OR IGNORE INTO lost(key, digest) VALUES(?1, ?2)")?;
        insert.execute(params![first.saturating_add(i64::from(id.number())), digest.as_bytes()])?;
        Ok(())
    }

    /// Whether a good record of this digest was read.
    pub(super) fn has_good(&self, digest: &Digest) -> Result<bool, ArchiveFault> {
        self.connection.execute_batch(BY_DIGEST)?;
        let mut find =
            self.connection.prepare_cached("SELECT 1 FROM seen WHERE digest = ?1 AND what = ?2 LIMIT 1")?;
        Ok(find.exists(params![digest.as_bytes(), GOOD])?)
    }

    /// Which number a record of a chain has, be it a file or received only.
    pub(super) fn number_of(&self, chain: &Chain, digest: &Digest) -> Result<Option<u32>, ArchiveFault> {
        let Some(first) = self.first_of(chain) else { return Ok(None) };
        self.connection.execute_batch(BY_DIGEST)?;
        let mut find = self.connection.prepare_cached(
            "SELECT max(key) FROM (
                 SELECT key FROM seen WHERE digest = ?1 AND key BETWEEN ?2 AND ?3
                 UNION ALL SELECT key FROM lost WHERE digest = ?1 AND key BETWEEN ?2 AND ?3)",
        )?;
        let last = first.saturating_add(NUMBERS - 1);
        let key: Option<i64> = find.query_row(params![digest.as_bytes(), first, last], |row| row.get(0))?;
        Ok(key.and_then(|key| u32::try_from(key - first).ok()))
    }

    /// Goes through all that was noted, number by number and chain by chain.
    pub(super) fn each(
        &self,
        told: &mut dyn FnMut(Group) -> Result<(), ArchiveFault>,
    ) -> Result<(), ArchiveFault> {
        let mut receipts = self.connection.prepare("SELECT key, at, digest FROM receipts ORDER BY key")?;
        let mut receipts = Stream::of(receipts.query([])?, |row| receipt_in(row, 1))?;
        let mut seen = self.connection.prepare(
            "SELECT key, what, path, digest, previous, second, nano FROM seen ORDER BY key, rowid",
        )?;
        let mut seen = Stream::of(seen.query([])?, noted_in)?;
        while let Some(key) = [receipts.key(), seen.key()].into_iter().flatten().min() {
            let receipt = receipts.take(key)?;
            let mut noted = Vec::new();
            while let Some(one) = seen.take(key)? {
                noted.push(one);
            }
            let chain = usize::try_from(key / NUMBERS).ok().and_then(|place| self.chains.get(place));
            let id = chain.and_then(|chain| format!("{chain}-{:06}", key % NUMBERS).parse().ok());
            if let Some(id) = id {
                told(Group { id, receipt, noted })?;
            }
        }
        Ok(())
    }
}

/// Rows in the order of their keys, the next one read already.
struct Stream<'s, T> {
    rows: Rows<'s>,
    read: fn(&Row<'_>) -> Result<T, rusqlite::Error>,
    next: Option<(i64, T)>,
}

impl<'s, T> Stream<'s, T> {
    fn of(rows: Rows<'s>, read: fn(&Row<'_>) -> Result<T, rusqlite::Error>) -> Result<Self, ArchiveFault> {
        let mut stream = Self { rows, read, next: None };
        stream.step()?;
        Ok(stream)
    }

    fn key(&self) -> Option<i64> {
        self.next.as_ref().map(|(key, _)| *key)
    }

    /// The next row, if it has this key.
    fn take(&mut self, key: i64) -> Result<Option<T>, ArchiveFault> {
        if self.key() == Some(key) { self.step() } else { Ok(None) }
    }

    fn step(&mut self) -> Result<Option<T>, ArchiveFault> {
        let read = self.read;
        let next =
            self.rows.next()?.map(|row| Ok::<_, rusqlite::Error>((row.get(0)?, read(row)?))).transpose()?;
        Ok(std::mem::replace(&mut self.next, next).map(|(_, row)| row))
    }
}

fn receipt_in(row: &Row<'_>, at: usize) -> Result<Receipt, rusqlite::Error> {
    let second = Timestamp::from_second(row.get(at)?).unwrap_or_default();
    Ok(Receipt { at: second, digest: Digest::from_bytes(row.get(at + 1)?) })
}

fn noted_in(row: &Row<'_>) -> Result<Noted, rusqlite::Error> {
    let what: i64 = row.get(1)?;
    if what == DAMAGED {
        return Ok(Noted::Damaged);
    }
    let previous: Option<[u8; 32]> = row.get(4)?;
    let sealed = Timestamp::new(row.get(5)?, row.get(6)?).unwrap_or_default();
    let said = Said { previous: previous.map(Digest::from_bytes), sealed };
    let link = Link { digest: Digest::from_bytes(row.get(3)?), said: Some(said) };
    Ok(if what == WAITING { Noted::Waiting { link } } else { Noted::Good { path: row.get(2)?, link } })
}
