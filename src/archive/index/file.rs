//! The file of the index: made beside the old one, checked, and given its name in one step.
//!
//! A file is never changed once it has its name. What is added goes into a small file of its own, which is written anew
//! each time and names the large one it belongs to; so whoever reads sees the old index or the new one, a crash leaves
//! the old one, and no log lies beside it. The check sum of a file stands in the field of its header that is free for
//! the program's own use.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags, params};

use super::row::{Group, RecordRow};
use super::words::{self, MARK};
use super::{Index, IndexFault};
use crate::ports::{Disk, Held};
use crate::record::seal::{Digest, RecordId};

/// Changes with anything that is kept otherwise than before.
const VERSION: u32 = 3;
/// What the check sum leaves out of the header, by the file format of SQLite, section 1.3: the change counter,
/// the program's own number, which holds the sum, and the counter and the version that go with the change.
const LEFT_OUT: [(u64, u64); 3] = [(24, 28), (68, 72), (92, 100)];
/// Rows that are sorted and added at a time.
const BATCH: usize = 2_000;

const SCHEMA: &str = "
CREATE TABLE tags(id INTEGER PRIMARY KEY, key TEXT NOT NULL UNIQUE);
CREATE TABLE records(
    key INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, path TEXT NOT NULL, digest BLOB, fault TEXT, kind TEXT,
    sealed INTEGER, offset_minutes INTEGER NOT NULL, received INTEGER NOT NULL, unit TEXT NOT NULL,
    unit_name TEXT NOT NULL, booking TEXT NOT NULL, renter TEXT NOT NULL, renter_key TEXT NOT NULL,
    agents TEXT NOT NULL, language TEXT NOT NULL, refused INTEGER NOT NULL, not_shown INTEGER NOT NULL
);
CREATE INDEX by_received ON records(received, key);
CREATE INDEX by_renter ON records(renter_key, key);
CREATE INDEX by_unit ON records(unit, key);
CREATE TABLE grouped(member INTEGER NOT NULL, grp INTEGER NOT NULL, PRIMARY KEY(member, grp)) WITHOUT ROWID;
CREATE TABLE shown(record INTEGER PRIMARY KEY, groups BLOB NOT NULL);
CREATE TABLE folders(path TEXT PRIMARY KEY, stamp TEXT NOT NULL);
CREATE TABLE base(sum INTEGER NOT NULL);
CREATE VIRTUAL TABLE found USING fts5(
    names, which, other, notes, tags, content = '', columnsize = 0, prefix = '1 2 3',
    tokenize = \"unicode61 remove_diacritics 2\"
);
CREATE VIRTUAL TABLE head USING fts5(
    words, content = '', columnsize = 0, prefix = '1 2 3', tokenize = \"unicode61 remove_diacritics 2\"
);
CREATE VIRTUAL TABLE inside USING fts5(
    names, content = '', columnsize = 0, tokenize = \"trigram remove_diacritics 1\"
);
CREATE VIRTUAL TABLE texts USING fts5(
    words, content = '', columnsize = 0, prefix = '3', tokenize = \"unicode61 remove_diacritics 2\"
);
INSERT INTO found(found, rank) VALUES('hashsize', 16777216);
";

/// The sum over a file of an index.
fn sum(disk: &dyn Disk, path: &Path) -> Result<u32, IndexFault> {
    disk.checksum(path, &LEFT_OUT)
        .map_err(|fault| if fault.is_missing() { IndexFault::Missing } else { IndexFault::Disk(fault) })
}

/// Opens the file of an index and makes sure that it is whole.
pub(super) fn open(disk: &dyn Disk, path: &Path) -> Result<Connection, IndexFault> {
    let sum = sum(disk, path)?;
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(path, flags)?;
    if number(&connection, "user_version")? != i64::from(VERSION) {
        return Err(IndexFault::Version);
    }
    // The field is signed for SQLite; its bits are those of the sum.
    if number(&connection, "application_id")? != i64::from(sum.cast_signed()) {
        return Err(IndexFault::Damaged);
    }
    settle(&connection)?;
    Ok(connection)
}

fn number(connection: &Connection, name: &str) -> Result<i64, rusqlite::Error> {
    connection.pragma_query_value(None, name, |row| row.get(0))
}

/// Opens the file of what was added to this one since, if there is one that belongs to it and is whole.
pub(super) fn open_added(
    disk: &dyn Disk,
    path: &Path,
    whole: &Connection,
) -> Result<Option<Connection>, IndexFault> {
    let added = match open(disk, &added(path)) {
        Ok(added) => added,
        Err(fault) if fault.can_be_remade() => return Ok(None),
        Err(fault) => return Err(fault),
    };
    let base = added.query_row("SELECT sum FROM base", [], |row| row.get::<_, i64>(0)).ok();
    Ok(Some(added).filter(|_| base == number(whole, "application_id").ok()))
}

/// The file of what was added since.
fn added(path: &Path) -> PathBuf {
    let name = path.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
    path.with_file_name(format!("{name}-added"))
}

fn settle(connection: &Connection) -> Result<(), rusqlite::Error> {
    connection.set_prepared_statement_cache_capacity(64);
    connection.execute_batch("PRAGMA cache_size = -32768; PRAGMA temp_store = MEMORY;")
}

/// The index as it will be.
#[derive(Debug)]
pub struct Draft {
    connection: Connection,
    /// Where it is made; none in memory.
    part: Option<PathBuf>,
    /// The large file to which it adds; none when it is that itself.
    base: Option<Connection>,
    /// Held against another that would make it at the same time.
    _held: Option<Box<dyn Held>>,
    tags: BTreeMap<String, i64>,
    waiting: Vec<RecordRow>,
    /// Whether it is made from nothing, so that it pays to put it in order at the end.
    whole: bool,
}

impl Draft {
    /// An empty index that will get the name `path`.
    ///
    /// # Errors
    /// The file cannot be made.
    pub fn new(disk: &dyn Disk, path: &Path) -> Result<Self, IndexFault> {
        let (part, held) = part(disk, path)?;
        Self::begin(empty(&part)?, Some((part, held)), true)
    }

    /// An empty index in memory.
    ///
    /// # Errors
    /// There is no room for it.
    pub fn in_memory() -> Result<Self, IndexFault> {
        Self::begin(Connection::open_in_memory()?, None, true)
    }

    fn begin(
        connection: Connection,
        part: Option<(PathBuf, Box<dyn Held>)>,
        whole: bool,
    ) -> Result<Self, IndexFault> {
        settle(&connection)?;
        connection.execute_batch("BEGIN")?;
        connection.execute_batch(SCHEMA)?;
        Ok(Self::over(connection, part, whole))
    }

    fn over(connection: Connection, part: Option<(PathBuf, Box<dyn Held>)>, whole: bool) -> Self {
        let (part, held) = part.unzip();
        Self { connection, part, base: None, _held: held, tags: BTreeMap::new(), waiting: Vec::new(), whole }
    }

    /// What will be added to an index under the name `path`: the little that was added before, and more.
    ///
    /// # Errors
    /// The file cannot be made; [`IndexFault::Busy`] if another process has made the index anew meanwhile.
    pub fn of(index: &Index, disk: &dyn Disk, path: &Path) -> Result<Self, IndexFault> {
        let (part, held) = part(disk, path)?;
        let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let base = Connection::open_with_flags(path, flags)?;
        let sum = number(&base, "application_id")?;
        if index.whole().and_then(|whole| number(whole.connection(), "application_id").ok()) != Some(sum) {
            return Err(IndexFault::Busy);
        }
        settle(&base)?;
        let draft = match index.added() {
            Some(added) => Self::over(copy(added.connection(), &part)?, Some((part, held)), false),
            None => {
                let draft = Self::begin(empty(&part)?, Some((part, held)), false)?;
                draft.connection.execute("INSERT INTO base(sum) VALUES(?1)", [sum])?;
                draft
            }
        };
        Ok(Self { base: Some(base), ..draft })
    }

    /// A copy of the large file of an index, which will take the place of both under the name `path`. What was added
    /// since has to be added again.
    ///
    /// # Errors
    /// The file cannot be made.
    pub fn together(index: &Index, disk: &dyn Disk, path: &Path) -> Result<Self, IndexFault> {
        let (part, held) = part(disk, path)?;
        let whole = index.whole().ok_or(IndexFault::Missing)?;
        Ok(Self::over(copy(whole.connection(), &part)?, Some((part, held)), false))
    }

    /// Adds a record. One whose id is there already is passed over.
    ///
    /// # Errors
    /// There is no room for it.
    pub fn add(&mut self, row: RecordRow) -> Result<(), IndexFault> {
        self.waiting.push(row);
        if self.waiting.len() >= BATCH { self.flush() } else { Ok(()) }
    }

    /// Adds what waits, newest first: that is the order of the keys, which is the order the tables want.
    fn flush(&mut self) -> Result<(), IndexFault> {
        let mut rows: Vec<(i64, RecordRow)> = std::mem::take(&mut self.waiting)
            .into_iter()
            .map(|row| (key(row.wall_seconds(), row.id()), row))
            .collect();
        rows.sort_by(|(a, x), (b, y)| (a, x.id()).cmp(&(b, y.id())));
        for (key, row) in &rows {
            self.insert(*key, row)?;
        }
        Ok(())
    }

    fn insert(&mut self, key: i64, row: &RecordRow) -> Result<(), IndexFault> {
        let Some(key) = self.insert_record(key, row)? else { return Ok(()) };
        let mut groups = Vec::with_capacity(row.groups.len());
        for group in &row.groups {
            groups.push(self.group(group)?);
        }
        groups.sort_unstable();
        groups.dedup();
        let blob: Vec<u8> = groups.iter().flat_map(|id| id.to_le_bytes()).collect();
        let mut marks = String::new();
        groups.iter().for_each(|id| mark(&mut marks, i64::from(*id)));
        let c = &self.connection;
        c.prepare_cached("INSERT INTO shown(record, groups) VALUES(?1, ?2)")?.execute(params![key, blob])?;
        c.prepare_cached(
            "INSERT INTO found(rowid, names, which, other, notes, tags) VALUES(?1, ?2, ?3, ?4, ?5, ?6)",
        )?
        .execute(params![key, row.who(), row.which(), row.other(), row.noted(), marks])?;
        c.prepare_cached("INSERT INTO head(rowid, words) VALUES(?1, ?2)")?
            .execute(params![key, row.head()])?;
        c.prepare_cached("INSERT INTO inside(rowid, names) VALUES(?1, ?2)")?
            .execute(params![key, row.parts()])?;
        Ok(())
    }

    /// Gives the record its line; none if its id has one.
    fn insert_record(&self, mut key: i64, row: &RecordRow) -> Result<Option<i64>, IndexFault> {
        let c = &self.connection;
        let all = || [Some(c), self.base.as_ref()].into_iter().flatten();
        let (id, mut taken) = (row.id().to_string(), false);
        for c in all() {
            taken |= c.prepare_cached("SELECT 1 FROM records WHERE id = ?1")?.exists([&id])?;
        }
        if taken {
            return Ok(None);
        }
        // Two records of one second whose ids fall together: about one pair in a thousand million.
        loop {
            for c in all() {
                taken |= c.prepare_cached("SELECT 1 FROM records WHERE key = ?1")?.exists([key])?;
            }
            if !std::mem::take(&mut taken) {
                break;
            }
            key = key.saturating_sub(1);
        }
        let verified = row.verified.as_ref();
        let renter = row.names.first().map_or("", String::as_str);
        c.prepare_cached(
            "INSERT INTO records VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)",
        )?
        .execute(params![
            key,
            row.id().to_string(),
            row.source.path,
            verified.ok().map(|v| v.digest.as_bytes().to_vec()),
            verified.err(),
            verified.ok().map(|v| v.kind.as_str()),
            verified.ok().map(|v| v.sealed.as_second()),
            row.offset_minutes,
            // Newest first, as the keys are.
            row.source.received.map_or(0, |at| at.as_second().saturating_neg()),
            row.unit,
            row.unit_name,
            row.booking,
            renter,
            words::sort_key(renter),
            row.agents.join(", "),
            row.language,
            i64::try_from(row.refused).unwrap_or(i64::MAX),
            i64::try_from(row.not_shown).unwrap_or(i64::MAX),
        ])?;
        Ok(Some(key))
    }

    /// The number of a tag, text or group by its name, and whether it is new.
    fn tag(&mut self, name: &str) -> Result<(i64, bool), IndexFault> {
        if let Some(id) = self.tags.get(name) {
            return Ok((*id, false));
        }
        let c = &self.connection;
        let known =
            c.prepare_cached("SELECT id FROM tags WHERE key = ?1")?.query_row([name], |row| row.get(0));
        let (id, new) = match known {
            Ok(id) => (id, false),
            Err(rusqlite::Error::QueryReturnedNoRows) => {
                c.prepare_cached("INSERT INTO tags(key) VALUES(?1)")?.execute([name])?;
                (c.last_insert_rowid(), true)
            }
            Err(fault) => return Err(fault.into()),
        };
        if self.tags.len() < 200_000 {
            self.tags.insert(name.to_owned(), id);
        }
        Ok((id, new))
    }

    /// The number of a group, which is stored once.
    fn group(&mut self, group: &Group) -> Result<u32, IndexFault> {
        let members: String =
            group.tags.iter().chain(&group.texts).flat_map(|one| [one.as_str(), "\n"]).collect();
        let (id, new) = self.tag(&format!("group:{}", Digest::of(members.as_bytes())))?;
        if new {
            for tag in &group.tags {
                let (member, _) = self.tag(tag)?;
                self.put_in(member, id)?;
            }
            for text in &group.texts {
                let member = self.text(text)?;
                self.put_in(member, id)?;
            }
        }
        u32::try_from(id).map_err(|_| IndexFault::Damaged)
    }

    fn put_in(&self, member: i64, group: i64) -> Result<(), IndexFault> {
        self.connection
            .prepare_cached("INSERT OR IGNORE INTO grouped(member, grp) VALUES(?1, ?2)")?
            .execute([member, group])?;
        Ok(())
    }

    /// The number of a text, which is stored once.
    fn text(&mut self, text: &str) -> Result<i64, IndexFault> {
        let (id, new) = self.tag(&format!("text:{}", Digest::of(text.as_bytes())))?;
        if new {
            self.connection
                .prepare_cached("INSERT INTO texts(rowid, words) VALUES(?1, ?2)")?
                .execute(params![id, text])?;
        }
        Ok(id)
    }

    /// Notes how a folder of the archive looked when its records were added.
    ///
    /// # Errors
    /// There is no room for it.
    pub fn folder(&self, path: &str, stamp: &str) -> Result<(), IndexFault> {
        self.connection
            .prepare_cached("INSERT OR REPLACE INTO folders(path, stamp) VALUES(?1, ?2)")?
            .execute([path, stamp])?;
        Ok(())
    }

    /// Ends the draft: checks in, makes it durable and gives it its name.
    ///
    /// # Errors
    /// There is no room for it, or the disk refuses; an index that stood there still does.
    pub fn finish(mut self, disk: &dyn Disk, path: &Path) -> Result<Index, IndexFault> {
        self.flush()?;
        if self.whole {
            for table in ["found", "head", "inside", "texts"] {
                self.connection.execute_batch(&format!("INSERT INTO {table}({table}) VALUES('optimize')"))?;
            }
        }
        self.connection.execute_batch(&format!("PRAGMA user_version = {VERSION}; COMMIT"))?;
        let Some(part) = self.part else { return Ok(Index::over([Some(self.connection)])) };
        self.connection.close().map_err(|(_, fault)| fault)?;
        let sum = sum(disk, &part)?;
        let connection = Connection::open(&part)?;
        connection.execute_batch("PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF;")?;
        connection.pragma_update(None, "application_id", sum.cast_signed())?;
        connection.close().map_err(|(_, fault)| fault)?;
        let added = added(path);
        if let Some(base) = self.base {
            disk.supplant(&part, &added)?;
            let added = open(disk, &added)?;
            return Ok(Index::over([Some(base), Some(added)]));
        }
        disk.supplant(&part, path)?;
        // It belongs to the file that was there before; if it stays, it is passed over.
        disk.remove(&added)?;
        Ok(Index::over([Some(open(disk, path)?)]))
    }
}

/// An empty file of a database that nobody else reads yet.
fn empty(part: &Path) -> Result<Connection, IndexFault> {
    let connection = Connection::open(part)?;
    connection.execute_batch(
        "PRAGMA page_size = 8192; PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA locking_mode = EXCLUSIVE;",
    )?;
    Ok(connection)
}

/// A copy of a database, with a change begun.
fn copy(from: &Connection, part: &Path) -> Result<Connection, IndexFault> {
    let name = part.to_str().ok_or(IndexFault::Name)?;
    from.execute("VACUUM INTO ?1", [name])?;
    let connection = Connection::open(part)?;
    settle(&connection)?;
    connection.execute_batch(
        "PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA locking_mode = EXCLUSIVE; BEGIN",
    )?;
    Ok(connection)
}

/// Adds the mark of a group to those of a record.
pub(super) fn mark(marks: &mut String, id: i64) {
    use std::fmt::Write as _;
    // Writing to a text cannot fail.
    let _ = write!(marks, " {MARK}{id}");
}

/// Where the next index is made, by one process at a time.
fn part(disk: &dyn Disk, path: &Path) -> Result<(PathBuf, Box<dyn Held>), IndexFault> {
    let name = path.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
    let held = disk.lock(&path.with_file_name(format!(".{name}.lock")))?.ok_or(IndexFault::Busy)?;
    let part = path.with_file_name(format!(".{name}.part"));
    disk.remove(&part)?;
    Ok((part, held))
}

/// The key of a record: keys of newer records are smaller, so that what is looked through in their order comes
/// newest first. Seconds are those of the clock on the wall; which of one second comes first is settled by the id.
pub(super) fn key(wall_seconds: i64, id: &RecordId) -> i64 {
    let within = i64::from(crc32fast::hash(id.to_string().as_bytes()) >> 2);
    first_key_after(wall_seconds).saturating_sub(within)
}

/// Keys of this second are this one at most; those of later seconds are smaller than all of them.
pub(super) fn first_key_after(wall_seconds: i64) -> i64 {
    i64::MAX - (wall_seconds.clamp(0, (1 << 33) - 1) << 30)
}
