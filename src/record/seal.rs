//! Sealing: payload and key in, one ZIP file and its digest out. Same input, same bytes.
//!
//! What is sealed is verified before it is handed out, by the same code that the office uses: no record leaves
//! that would be refused there.

mod digest;
mod id;

pub(in crate::record) use digest::hex;
pub use digest::{Digest, DigestFault, Running};
pub use id::{MAX_NUMBER, RecordId, RecordIdFault, record_id};

use std::collections::BTreeMap;
use std::fmt;
use std::path::{Path, PathBuf};
use std::str::FromStr;

use jiff::Timestamp;

use super::bag::{self, Info, TagFault};
use super::keys::{KeyFault, NAMESPACE, TabletKey, check_tablet_name};
use super::verify::{self, Failure};
use super::zip::{self, Entry, ZipFault};
use crate::ports::{Access, Disk, DiskFault};

/// What kind of record it is. As text: `handoff`, `not-handed-over`, `check-in`, `amendment`, `rehearsal`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// The unit was handed over.
    Handoff,
    /// It was not, with the reason.
    NotHandedOver,
    /// The unit was taken back.
    CheckIn,
    /// A correction that refers to an earlier record.
    Amendment,
    /// Made for practice, with its own key; never evidence.
    Rehearsal,
}

impl Kind {
    /// All kinds.
    pub const ALL: [Self; 5] =
        [Self::Handoff, Self::NotHandedOver, Self::CheckIn, Self::Amendment, Self::Rehearsal];

    /// Its text form.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Handoff => "handoff",
            Self::NotHandedOver => "not-handed-over",
            Self::CheckIn => "check-in",
            Self::Amendment => "amendment",
            Self::Rehearsal => "rehearsal",
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// A text that is no kind of record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("a record is a handoff, not-handed-over, check-in, amendment or rehearsal")]
pub struct KindFault;

impl FromStr for Kind {
    type Err = KindFault;

    fn from_str(text: &str) -> Result<Self, KindFault> {
        Self::ALL.into_iter().find(|kind| kind.as_str() == text).ok_or(KindFault)
    }
}

/// What stands on the outside of a record.
#[derive(Debug, Clone, Copy)]
pub struct Sealing<'a> {
    /// The tablet's name.
    pub tablet: &'a str,
    /// Running number of this key, from 1.
    pub number: u32,
    /// Digest of record `number - 1`; none for the first.
    pub previous: Option<Digest>,
    /// What kind of record it is.
    pub kind: Kind,
    /// Who hands the unit over.
    pub organization: &'a str,
    /// When it is sealed, by the tablet's clock.
    pub sealed: Timestamp,
}

/// A sealed record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sealed {
    /// Its id, which names file and folder.
    pub id: RecordId,
    /// The ZIP file.
    pub zip: Vec<u8>,
    /// SHA-256 of the tag manifest: link of the chain, and what the slip shows.
    pub digest: Digest,
}

/// Why a record cannot be sealed.
#[derive(Debug, Clone, thiserror::Error)]
pub enum SealFault {
    /// The tablet's name is not allowed, or the key does not sign.
    #[error(transparent)]
    Key(#[from] KeyFault),
    /// Numbers run from 1 to 999,999, and all but the first follow a record.
    #[error("a record numbered {number} {} cannot be sealed: the first is 1 and follows none, the last is {MAX_NUMBER}", if *.follows { "that follows another" } else { "that follows none" })]
    Number {
        /// The number.
        number: u32,
        /// Whether a digest before it was given.
        follows: bool,
    },
    /// A payload file outside `data/`.
    #[error("the payload file {name:?} does not lie in data/")]
    Outside {
        /// Its name.
        name: String,
    },
    /// The organization's name cannot be written.
    #[error(transparent)]
    Info(#[from] TagFault),
    /// A name, a count or a size that the ZIP cannot hold.
    #[error("the record cannot be packed: {0}")]
    Zip(#[from] ZipFault),
    /// It was packed and signed, and would be refused by whoever verifies it.
    #[error("the record was not sealed, since it would be refused: {0}")]
    Refused(Box<Failure>),
}

/// Seals a payload. Its names begin with `data/`; `data/record.json` must be among them.
///
/// # Errors
/// See [`SealFault`]. Nothing is written anywhere.
pub fn seal(
    what: &Sealing<'_>,
    payload: &BTreeMap<String, Vec<u8>>,
    key: &TabletKey,
) -> Result<Sealed, SealFault> {
    check_tablet_name(what.tablet)?;
    bag::check_organization(what.organization)?;
    let follows = what.previous.is_some();
    if !(1..=MAX_NUMBER).contains(&what.number) || (what.number == 1) == follows {
        return Err(SealFault::Number { number: what.number, follows });
    }
    if let Some(name) = payload.keys().find(|name| !name.starts_with("data/")) {
        return Err(SealFault::Outside { name: name.clone() });
    }
    let id = record_id(what.tablet, key.public(), what.number);
    let info = Info {
        organization: what.organization.to_owned(),
        id: id.clone(),
        octets: payload.values().map(|bytes| bytes.len() as u64).sum(),
        streams: payload.len() as u64,
        kind: what.kind,
        previous: what.previous,
        sealed: what.sealed,
    };
    let info = info.text();
    let manifest = bag::manifest(payload.iter().map(|(name, bytes)| (name.as_str(), Digest::of(bytes))));
    let tag_manifest = bag::manifest([
        (bag::INFO_FILE, Digest::of(info.as_bytes())),
        (bag::BAGIT_FILE, Digest::of(bag::BAGIT.as_bytes())),
        (bag::MANIFEST_FILE, Digest::of(manifest.as_bytes())),
    ]);
    let signature = key.sign(NAMESPACE, tag_manifest.as_bytes())?;
    let tag_files = [bag::BAGIT, &info, &manifest, &tag_manifest, &signature];
    let tags = bag::TAG_FILES.into_iter().zip(tag_files.map(str::as_bytes));
    let data = payload.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice()));
    let files: Vec<(String, &[u8])> =
        tags.chain(data).map(|(name, bytes)| (format!("{id}/{name}"), bytes)).collect();
    let entries: Vec<Entry<'_>> = files.iter().map(|(name, bytes)| Entry { name, bytes }).collect();
    let zip = zip::write(&entries)?;
    verify::own(&zip, key.public(), what.tablet).map_err(|failure| SealFault::Refused(Box::new(failure)))?;
    Ok(Sealed { id, zip, digest: Digest::of(tag_manifest.as_bytes()) })
}

/// Why a sealed record could not be stored.
#[derive(Debug, Clone, thiserror::Error)]
pub enum StoreFault {
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// The name is taken by something else.
    #[error("{} holds another record of the same number; both are kept as they are: tell the office", path.display())]
    Other {
        /// The file.
        path: PathBuf,
    },
    /// What the disk gives back is not what was written.
    #[error("{} reads back otherwise than it was written: the storage of this tablet is not to be trusted", path.display())]
    ReadBack {
        /// The file.
        path: PathBuf,
    },
}

/// Writes a record as `<id>.zip` into a folder: whole or not at all, then read back and compared.
/// The same record already there is fine: that is how it looks after a crash.
///
/// # Errors
/// See [`StoreFault`].
pub fn store(disk: &dyn Disk, dir: &Path, sealed: &Sealed) -> Result<PathBuf, StoreFault> {
    let path = dir.join(format!("{}.zip", sealed.id));
    disk.make_dir(dir)?;
    let fresh = match disk.put_new(&path, &sealed.zip, Access::Usual) {
        Ok(()) => true,
        Err(DiskFault::Exists { .. }) => false,
        Err(fault) => return Err(fault.into()),
    };
    let back = match disk.read(&path, zip::MAX_BYTES) {
        Ok(back) => back,
        Err(DiskFault::TooLarge { .. }) => Vec::new(),
        Err(fault) => return Err(fault.into()),
    };
    match (back == sealed.zip, fresh) {
        (true, _) => Ok(path),
        (false, true) => Err(StoreFault::ReadBack { path }),
        (false, false) => Err(StoreFault::Other { path }),
    }
}
