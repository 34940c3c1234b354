//! Finding records: a file of SQLite with full-text tables beside the sealed files. It is a cache: the truth is the
//! sealed files and the receipts, and the index can be made anew from them at any time.
//!
//! Everything by which a record is found stands in one full-text table, by the key of the record: words in columns, and
//! in a column of their own the marks of what records share. Tags (`unit:wren`, `caution:awning-2=refused`) and texts come
//! in groups, such as all of one step as it was shown and answered; each group and each text is stored once, and a
//! record bears the marks of its groups. So a word, a filter and a text are all lists of keys that are walked side by
//! side, newest first, and only as far as a page needs.

mod file;
mod find;
pub mod keep;
mod query;
mod row;
mod words;

use std::path::Path;

use rusqlite::Connection;

pub use file::Draft;
pub use find::{Count, Cursor, Hit, Page};
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
    connection: Connection,
}

impl Index {
    /// Opens an index, and reads it once to make sure that it is as it was written.
    ///
    /// # Errors
    /// It is missing, damaged or of another version, or the disk refuses.
    pub fn open(disk: &dyn Disk, path: &Path) -> Result<Self, IndexFault> {
        file::open(disk, path).map(Self::over)
    }

    const fn over(connection: Connection) -> Self {
        Self { connection }
    }

    const fn connection(&self) -> &Connection {
        &self.connection
    }

    /// How many records it holds.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn len(&self) -> Result<u64, IndexFault> {
        let count: i64 = self.connection.query_row("SELECT count(*) FROM records", [], |row| row.get(0))?;
        Ok(count.unsigned_abs())
    }

    /// Whether it holds none.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn is_empty(&self) -> Result<bool, IndexFault> {
        self.len().map(|len| len == 0)
    }

    /// How the folders of the archive looked when their records were added: path and stamp.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn folders(&self) -> Result<Vec<(String, String)>, IndexFault> {
        let mut all = self.connection.prepare_cached("SELECT path, stamp FROM folders ORDER BY path")?;
        let folders = all.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(folders.collect::<Result<_, _>>()?)
    }

    /// Paths of the records in a folder, sorted.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn paths_in(&self, folder: &str) -> Result<Vec<String>, IndexFault> {
        let mut all = self.connection.prepare_cached(
            "SELECT path FROM records WHERE path > ?1 || '/' AND path < ?1 || '0' ORDER BY path",
        )?;
        let paths = all.query_map([folder], |row| row.get(0))?;
        Ok(paths.collect::<Result<_, _>>()?)
    }

    /// The text of a record by its exact id, if it is there.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn by_id(&self, id: &str) -> Result<Option<Hit>, IndexFault> {
        find::by_id(self, id)
    }
}
