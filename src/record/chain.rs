//! The head of a tablet's chain: which number comes next, and what it follows.
//!
//! Two things know it: the file `chain` and the newest sealed record. A crash can fall between writing the one
//! and the other, so the newer of the two counts; no number is used twice and none is skipped.
//! The head is written before a record may leave the tablet.

use std::path::{Path, PathBuf};

use super::keys::TabletKey;
use super::seal::{Digest, MAX_NUMBER, RecordId, Sealed};
use super::verify::{self, Failure};
use super::zip;
use crate::ports::{Access, Disk, DiskFault};

/// Name of the head file in a data folder.
pub const HEAD_FILE: &str = "chain";
/// Name of the folder of sealed records in a data folder.
pub const RECORDS: &str = "records";
const HEAD_CAP: u64 = 1024;

/// The last record of a chain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Head {
    /// Its id, in which tablet, key and number stand.
    pub id: RecordId,
    /// Its digest.
    pub digest: Digest,
}

/// What the next record is to carry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Next {
    /// Its number.
    pub number: u32,
    /// Digest of the record that it follows.
    pub previous: Option<Digest>,
}

/// Why the next number cannot be told.
#[derive(Debug, Clone, thiserror::Error)]
pub enum ChainFault {
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// The head file does not read as one.
    #[error("{} cannot be read as the head of a chain: restore it, or start anew with a new key", path.display())]
    Form {
        /// The file.
        path: PathBuf,
    },
    /// The newest record is needed to know the head, and it fails.
    #[error("{} is the newest record, and it fails: {failure}. Move it to quarantine and tell the office", path.display())]
    Newest {
        /// The record.
        path: PathBuf,
        /// Why it fails.
        failure: Box<Failure>,
    },
    /// Head file and record of the same number differ.
    #[error("{} is not the record that {HEAD_FILE} speaks of: two tablets may share one key; tell the office", path.display())]
    Differs {
        /// The record.
        path: PathBuf,
    },
    /// All numbers are used.
    #[error("this key has sealed {MAX_NUMBER} records and can seal no more: start anew with a new key")]
    Full,
    /// The head would go back.
    #[error("record {id} is not newer than {head}, the last of the chain")]
    Back {
        /// The record.
        id: RecordId,
        /// The head.
        head: RecordId,
    },
}

/// What the next record of this key is to carry: one more than the newer of head file and newest record.
///
/// # Errors
/// See [`ChainFault`].
pub fn next(disk: &dyn Disk, data: &Path, key: &TabletKey) -> Result<Next, ChainFault> {
    match head(disk, data, key)? {
        None => Ok(Next { number: 1, previous: None }),
        Some(head) if head.id.number() >= MAX_NUMBER => Err(ChainFault::Full),
        Some(head) => Ok(Next { number: head.id.number() + 1, previous: Some(head.digest) }),
    }
}

/// The last record of this key, from head file and records.
///
/// # Errors
/// See [`ChainFault`].
pub fn head(disk: &dyn Disk, data: &Path, key: &TabletKey) -> Result<Option<Head>, ChainFault> {
    let short = key.public().short();
    let said = read_head(disk, data)?.filter(|head| head.id.key() == short);
    let Some(newest) = newest(disk, data, &short)? else {
        return Ok(said);
    };
    let path = data.join(RECORDS).join(format!("{newest}.zip"));
    match said {
        Some(head) if head.id.number() > newest.number() => Ok(Some(head)),
        said => {
            let bytes = disk.read(&path, zip::MAX_BYTES)?;
            let found = verify::own(&bytes, key.public(), newest.tablet());
            match (said, found) {
                (Some(head), Ok(seen))
                    if head.id.number() == newest.number() && head.digest != seen.digest =>
                {
                    Err(ChainFault::Differs { path })
                }
                (_, Ok(seen)) if seen.id == newest => Ok(Some(Head { id: seen.id, digest: seen.digest })),
                (Some(head), _) if head.id.number() == newest.number() => Ok(Some(head)),
                (_, Ok(_)) => Err(ChainFault::Differs { path }),
                (_, Err(failure)) => Err(ChainFault::Newest { path, failure: Box::new(failure) }),
            }
        }
    }
}

/// When the newest record of this key was sealed, by the tablet's own clock; none before the first, or where it
/// cannot be read.
#[must_use]
pub fn last_sealed(disk: &dyn Disk, data: &Path, key: &TabletKey) -> Option<jiff::Timestamp> {
    let newest = newest(disk, data, &key.public().short()).ok()??;
    let bytes = disk.read(&data.join(RECORDS).join(format!("{newest}.zip")), zip::MAX_BYTES).ok()?;
    Some(verify::own(&bytes, key.public(), newest.tablet()).ok()?.sealed)
}

/// Makes a stored record the head. It must be newer than the head, or the head itself.
///
/// # Errors
/// [`ChainFault::Back`], or the disk refuses.
pub fn advance(disk: &dyn Disk, data: &Path, sealed: &Sealed) -> Result<(), ChainFault> {
    if let Some(head) = read_head(disk, data)?.filter(|head| head.id.key() == sealed.id.key()) {
        let same = head.id == sealed.id && head.digest == sealed.digest;
        if !same && head.id.number() >= sealed.id.number() {
            return Err(ChainFault::Back { id: sealed.id.clone(), head: head.id });
        }
    }
    let text = format!("{} {}\n", sealed.id, sealed.digest);
    disk.replace(&data.join(HEAD_FILE), text.as_bytes(), Access::Usual)?;
    Ok(())
}

fn read_head(disk: &dyn Disk, data: &Path) -> Result<Option<Head>, ChainFault> {
    let path = data.join(HEAD_FILE);
    let bytes = match disk.read(&path, HEAD_CAP) {
        Err(fault) if fault.is_missing() => return Ok(None),
        other => other?,
    };
    let parse = || {
        let text = std::str::from_utf8(&bytes).ok()?.strip_suffix('\n')?;
        let (id, digest) = text.split_once(' ')?;
        Some(Head { id: id.parse().ok()?, digest: digest.parse().ok()? })
    };
    parse().map(Some).ok_or(ChainFault::Form { path })
}

fn newest(disk: &dyn Disk, data: &Path, short: &str) -> Result<Option<RecordId>, ChainFault> {
    let names = disk.list(&data.join(RECORDS))?;
    let ids = names.iter().filter_map(|name| name.strip_suffix(".zip")?.parse::<RecordId>().ok());
    Ok(ids.filter(|id| id.key() == short).max_by_key(RecordId::number))
}
