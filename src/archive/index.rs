//! Finding records: a file of SQLite with full-text tables beside the sealed files. It is a cache: the truth is the
//! sealed files and the receipts, and the index can be made anew from them at any time.
//!
//! The index is two files: one that holds nearly all, and a small one of what was added since. Neither is ever changed
//! once it has its name; adding writes the small one anew, and only when that has grown is all of it put together.
//! A question is asked of both, and the answers are merged.
//!
//! Everything by which a record is found stands in one full-text table, by the key of the record: words in columns, and
//! in a column of their own the marks of what records share. Tags (`unit:wren`, `caution:awning-2=refused`) and texts come
//! in groups, such as all of one step as it was shown and answered; each group and each text is stored once, and a
//! record bears the marks of its groups. So a word, a filter and a text are all lists of keys that are walked side by
//! side, newest first, and only as far as a page needs.

mod file;
mod find;
mod hit;
pub mod keep;
mod page;
mod query;
mod row;
mod words;

use std::collections::BTreeMap;
use std::path::Path;

use rusqlite::Connection;

pub use file::Draft;
pub use hit::Hit;
pub use page::{Count, Cursor, Page};
pub use query::{Query, Sort};
pub use row::{Answered, RecordRow, Source, Verified};

use crate::ports::{Disk, DiskFault};

/// Why an index cannot be used as it is.
#[derive(Debug, thiserror::Error)]
pub enum IndexFault {
    /// There is none.
    #[error("there is no index yet")]
    Missing,
    /// It is not as it was written.
    #[error("the index is damaged")]
    Damaged,
    /// It is of another version of the program.
    #[error("the index was made by another version of the program")]
    Version,
    /// It is just being made by another process.
    #[error("another Sendoff is just making the index; try again when it is done")]
    Busy,
    /// Its path cannot be said to the database.
    #[error("the path of the archive is not UTF-8 text, which the index needs")]
    Name,
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// The database refused.
    #[error("the index: {0}")]
    Database(#[from] rusqlite::Error),
}

impl IndexFault {
    /// Whether making the index anew is the way out.
    #[must_use]
    pub fn can_be_remade(&self) -> bool {
        use rusqlite::ErrorCode::{DatabaseCorrupt, NotADatabase, Unknown};
        match self {
            Self::Missing | Self::Damaged | Self::Version => true,
            Self::Busy | Self::Name | Self::Disk(_) => false,
            // What a query cannot make sense of was damaged, whatever it is called.
            Self::Database(fault) => {
                matches!(fault.sqlite_error_code(), None | Some(DatabaseCorrupt | NotADatabase | Unknown))
            }
        }
    }
}

/// An index that is whole. It is read only: what is added makes a new one, by way of a [`Draft`].
#[derive(Debug)]
pub struct Index {
    /// The part that holds nearly all, and what was added since.
    parts: Vec<Part>,
}

/// A file of the index.
#[derive(Debug)]
struct Part {
    connection: Connection,
}

impl Part {
    const fn connection(&self) -> &Connection {
        &self.connection
    }

    fn len(&self) -> Result<u64, IndexFault> {
        let count: i64 = self.connection.query_row("SELECT count(*) FROM records", [], |row| row.get(0))?;
        Ok(count.unsigned_abs())
    }
}

impl Index {
    /// Opens an index, and reads it once to make sure that it is as it was written. A file of what was added that
    /// does not hold is passed over: its records are then missing, as if they had never been added.
    ///
    /// # Errors
    /// It is missing, damaged or of another version, or the disk refuses.
    pub fn open(disk: &dyn Disk, path: &Path) -> Result<Self, IndexFault> {
        let whole = file::open(disk, path)?;
        let added = file::open_added(disk, path, &whole)?;
        Ok(Self::over([Some(whole), added]))
    }

    fn over(connections: impl IntoIterator<Item = Option<Connection>>) -> Self {
        Self { parts: connections.into_iter().flatten().map(|connection| Part { connection }).collect() }
    }

    /// The part that holds nearly all.
    fn whole(&self) -> Option<&Part> {
        self.parts.first()
    }

    /// The part of what was added since.
    fn added(&self) -> Option<&Part> {
        self.parts.get(1)
    }

    /// How many records it holds.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn len(&self) -> Result<u64, IndexFault> {
        self.parts.iter().try_fold(0_u64, |sum, part| Ok(sum.saturating_add(part.len()?)))
    }

    /// Whether it holds none.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn is_empty(&self) -> Result<bool, IndexFault> {
        self.len().map(|len| len == 0)
    }

    /// How many records its large file holds.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn whole_len(&self) -> Result<u64, IndexFault> {
        self.whole().map_or(Ok(0), Part::len)
    }

    /// Files of the records that were added since all was last put together.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn added_paths(&self) -> Result<Vec<String>, IndexFault> {
        let Some(part) = self.added() else { return Ok(Vec::new()) };
        let mut all = part.connection.prepare_cached("SELECT path FROM records ORDER BY path")?;
        let paths = all.query_map([], |row| row.get(0))?;
        Ok(paths.collect::<Result<_, _>>()?)
    }

    /// How the folders of the archive looked when their records were added: path and stamp.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn folders(&self) -> Result<Vec<(String, String)>, IndexFault> {
        let mut folders = BTreeMap::new();
        for part in &self.parts {
            let mut all = part.connection.prepare_cached("SELECT path, stamp FROM folders")?;
            for row in all.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))? {
                let (path, stamp): (String, String) = row?;
                folders.insert(path, stamp);
            }
        }
        Ok(folders.into_iter().collect())
    }

    /// Paths of the records in a folder, sorted.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn paths_in(&self, folder: &str) -> Result<Vec<String>, IndexFault> {
        let mut paths: Vec<String> = Vec::new();
        for part in &self.parts {
            let mut all = part
                .connection
                .prepare_cached("SELECT path FROM records WHERE path > ?1 || '/' AND path < ?1 || '0'")?;
            for path in all.query_map([folder], |row| row.get(0))? {
                paths.push(path?);
            }
        }
        paths.sort_unstable();
        Ok(paths)
    }

    /// The text of a record by its exact id, if it is there.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn by_id(&self, id: &str) -> Result<Option<Hit>, IndexFault> {
        for part in &self.parts {
            if let Some(hit) = hit::by_id(part, id)? {
                return Ok(Some(hit));
            }
        }
        Ok(None)
    }
}
