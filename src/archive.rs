//! The office's archive: takes records in, keeps them, proves them years later.
//!
//! ```text
//! records/<yyyy>/<mm>/<record-id>.zip   the sealed records, by the time of their sealing (UTC)
//! receipts/<yyyy-mm>.log                when each was received: truth for judging whether its tablet was valid
//! receipts/<yyyy-mm>.log.mark           how that log was when the last import ended, signed by the office
//! trust/allowed_signers                 the tablets, and the office itself; trust/distrusted beside it
//! keys/office, keys/office.pub          the office's own key
//! marks/<tablet>-<key>                  the last record seen of each chain, signed by the office
//! quarantine/<name>.zip, <name>.txt     what was not taken, and why
//! index.sqlite, index.sqlite-added      a cache for finding, and what came in since; it can always be remade
//! lock                                  held while something is written
//! ```
//!
//! The truth is the sealed files and the receipts. A receipt is on the disk before its record is filed; a record
//! is filed whole or not at all; nothing here ever replaces or removes one.

pub mod audit;
pub mod chains;
mod cores;
pub mod export;
pub mod import;
pub mod index;
mod judge;
mod marks;
mod office;
mod quarantine;
mod receipts;
mod scratch;
mod search;
mod store;
mod trust;

pub use marks::Mark;
pub use office::{OFFICE, OFFICE_PUBLIC};
pub use quarantine::Kept;
pub use receipts::{LogFault, Receipt, Receipts};
pub use store::{Folder, Store};
pub use trust::{ALLOWED, DISTRUSTED, Known, OFFICE_NAME, Standing};

use std::path::{Path, PathBuf};
use std::sync::Arc;

use jiff::Timestamp;

use crate::ports::{Disk, DiskFault, Held, Ports};
use crate::record::keys::{KeyFault, TabletKey};
use crate::record::receipt::ReceiptFault;
use crate::record::seal::RecordId;
use crate::record::signers::{Signers, SignersFault};
use crate::record::verify::{Failure, JudgedAt, Seen};
use crate::record::zip;

/// The folder of the sealed records.
pub const RECORDS: &str = "records";
/// The folder of the receipts.
pub const RECEIPTS: &str = "receipts";
/// The folder of what was not taken.
pub const QUARANTINE: &str = "quarantine";
/// The folder of the high-water marks.
pub const MARKS: &str = "marks";
/// The folder of the list of tablets.
const ALLOWED_FOLDER: &str = "trust";
/// The index for finding, a cache.
pub const INDEX: &str = "index.sqlite";

/// Why an archive cannot be used.
#[derive(Debug, Clone, thiserror::Error)]
pub enum ArchiveFault {
    /// There is none.
    #[error("{} holds no archive: check the path. `sendoff keys office --archive DIR` starts one, and so does `sendoff archive import` with --signers", .0.display())]
    None(PathBuf),
    /// There is none, and the folder holds something else.
    #[error("{} holds no archive but something else, such as {name}; check the path, or name an empty folder to start an archive in", path.display())]
    NotEmpty {
        /// The folder.
        path: PathBuf,
        /// The first thing in it.
        name: String,
    },
    /// Another process writes to it.
    #[error("another Sendoff writes to {}; wait until it is done", .0.display())]
    InUse(PathBuf),
    /// No tablet is trusted yet.
    #[error(
        "the archive trusts no tablet yet; name the list of tablets with --signers FILE, or add one with `sendoff keys trust`"
    )]
    NoTablets,
    /// The list given is not the archive's own.
    #[error(
        "the archive has its own list of tablets, and {} says otherwise about {tablet}: leave --signers away, or change the list with `sendoff keys`", path.display()
    )]
    OtherSigners {
        /// The list given.
        path: PathBuf,
        /// The tablet.
        tablet: String,
    },
    /// A path that is not there.
    #[error("{} is not there", .0.display())]
    NoSuchPath(PathBuf),
    /// The receipts cannot be relied on.
    #[error("{fault}. Nothing was taken in: restore this file from a copy first")]
    Receipts {
        /// What is wrong.
        fault: LogFault,
    },
    /// The list of tablets cannot be used.
    #[error(transparent)]
    Signers(#[from] SignersFault),
    /// The office's key cannot be used.
    #[error("the key of the office: {0}")]
    Key(#[from] KeyFault),
    /// A receipt or mark could not be made.
    #[error(transparent)]
    Receipt(#[from] ReceiptFault),
    /// What is set down while the archive is read cannot be kept.
    #[error("the system's folder for temporary files: {0}")]
    Scratch(String),
    /// A change of the list of tablets that is not possible.
    #[error("{0}")]
    Trust(String),
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
}

/// A record that lies in the archive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filed {
    /// Its id, from its name.
    pub id: RecordId,
    /// Where it lies, as `records/2026/06/t2-5f3a9c-000001.zip`.
    pub path: String,
}

impl Filed {
    /// The record that lies at a path, if that is the path of one.
    fn at(path: String) -> Option<Self> {
        let id = path.rsplit('/').next()?.strip_suffix(".zip")?.parse().ok()?;
        Some(Self { id, path })
    }
}

/// An archive, with the list of tablets as it was when it was opened.
#[derive(Debug, Clone)]
pub struct Archive {
    store: Arc<dyn Store>,
    dir: PathBuf,
    signers: Signers,
}

impl Archive {
    /// The archive in a folder.
    ///
    /// # Errors
    /// There is none, or its list of tablets cannot be used.
    pub fn open(disk: Arc<dyn Disk>, dir: &Path) -> Result<Self, ArchiveFault> {
        if !Self::is_at(disk.as_ref(), dir) {
            return Err(ArchiveFault::None(dir.to_owned()));
        }
        let store: Arc<dyn Store> = Arc::new(Folder::new(disk, dir));
        let signers = trust::load(store.as_ref())?;
        Ok(Self { store, dir: dir.to_owned(), signers })
    }

    /// Whether a folder holds an archive.
    #[must_use]
    pub fn is_at(disk: &dyn Disk, dir: &Path) -> bool {
        [ALLOWED_FOLDER, RECORDS].iter().any(|name| disk.is_dir(&dir.join(name)))
    }

    /// The archive in a folder; where there is none, an empty one with an office key of its own. It is made only
    /// where nothing else lies: a path that was mistyped is told.
    ///
    /// # Errors
    /// As [`Archive::open`], or it cannot be made.
    pub fn open_or_create(ports: &Ports, dir: &Path) -> Result<Self, ArchiveFault> {
        if !Self::is_at(ports.disk.as_ref(), dir) && ports.disk.is_dir(dir) {
            // What an attempt that was cut short leaves is no hindrance.
            let own = |name: &String| name.starts_with('.') || name == "lock" || name == "keys";
            if let Some(name) = ports.disk.list(dir)?.into_iter().find(|name| !own(name)) {
                return Err(ArchiveFault::NotEmpty { path: dir.to_owned(), name });
            }
        }
        ports.disk.make_dir(dir)?;
        let store: Arc<dyn Store> = Arc::new(Folder::new(Arc::clone(&ports.disk), dir));
        let _held = store.lock()?.ok_or_else(|| ArchiveFault::InUse(dir.to_owned()))?;
        office::ensure(ports, store.as_ref(), dir)?;
        let signers = trust::load(store.as_ref())?;
        Ok(Self { store, dir: dir.to_owned(), signers })
    }

    /// Its folder.
    #[must_use]
    pub fn dir(&self) -> &Path {
        &self.dir
    }

    /// What it is kept in.
    #[must_use]
    pub fn store(&self) -> &dyn Store {
        self.store.as_ref()
    }

    /// Whom it trusts.
    #[must_use]
    pub const fn signers(&self) -> &Signers {
        &self.signers
    }

    /// Holds off every other writer until the value is dropped.
    ///
    /// # Errors
    /// Another process writes to it.
    pub fn take_lock(&self) -> Result<Box<dyn Held>, ArchiveFault> {
        self.store.lock()?.ok_or_else(|| ArchiveFault::InUse(self.dir.clone()))
    }

    /// All receipts, with what is wrong with their logs.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn receipts(&self) -> Result<Receipts, DiskFault> {
        Receipts::load(self.store.as_ref())
    }

    /// Goes through the filed records, by month and then by id. Only names that are those of records are told.
    ///
    /// # Errors
    /// The disk refuses, or `each` does.
    pub fn records<E: From<DiskFault>>(&self, each: &mut dyn FnMut(Filed) -> Result<(), E>) -> Result<(), E> {
        for folder in self.folders()? {
            self.filed_in(&folder)?.into_iter().try_for_each(&mut *each)?;
        }
        Ok(())
    }

    /// Folders of records, as `records/2026/06`, sorted.
    fn folders(&self) -> Result<Vec<String>, DiskFault> {
        let mut all = Vec::new();
        for year in self.store.list(RECORDS)? {
            let folder = format!("{RECORDS}/{year}");
            all.extend(self.store.list(&folder)?.into_iter().map(|month| format!("{folder}/{month}")));
        }
        Ok(all)
    }

    /// Records in a folder, by their names.
    fn filed_in(&self, folder: &str) -> Result<Vec<Filed>, DiskFault> {
        let paths = self.store.list(folder)?.into_iter().map(|name| format!("{folder}/{name}"));
        Ok(paths.filter_map(Filed::at).collect())
    }

    /// Where a record lies, if it is filed.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn find(&self, id: &RecordId) -> Result<Option<Filed>, DiskFault> {
        let name = format!("{id}.zip");
        for year in self.store.list(RECORDS)? {
            for month in self.store.list(&format!("{RECORDS}/{year}"))? {
                let folder = format!("{RECORDS}/{year}/{month}");
                if self.store.list(&folder)?.binary_search(&name).is_ok() {
                    return Ok(Some(Filed { id: id.clone(), path: format!("{folder}/{name}") }));
                }
            }
        }
        Ok(None)
    }

    /// The bytes of a filed record.
    ///
    /// # Errors
    /// It is not there, too large, or the disk refuses.
    pub fn read(&self, path: &str) -> Result<Vec<u8>, DiskFault> {
        self.store.read(path, zip::MAX_BYTES)
    }

    /// Judges the bytes of a record at the time of its receipt; at `now` where none is known.
    pub fn verify(
        &self,
        bytes: &[u8],
        receipts: &Receipts,
        now: Timestamp,
    ) -> (JudgedAt, Result<Seen, Failure>) {
        judge::judge(bytes, None, &self.signers, &|id| receipts.of(id), now)
    }

    /// The office's key.
    ///
    /// # Errors
    /// It is missing or cannot be used.
    pub fn office_key(&self) -> Result<TabletKey, ArchiveFault> {
        office::load(self.store.as_ref())
    }
}

/// Where a record of this id, sealed at this time, is filed.
#[must_use]
pub fn place_of(id: &RecordId, sealed: Timestamp) -> String {
    let month = sealed.strftime("%Y/%m").to_string();
    format!("{RECORDS}/{month}/{id}.zip")
}
