//! What is said about a record, in words and as JSON.

use std::path::PathBuf;

use jiff::Timestamp;
use serde::ser::{Serialize, SerializeMap as _, Serializer};

use crate::record::keys::PublicKey;
use crate::record::seal::{Digest, Kind, RecordId};

/// The instant at which the validity of a tablet was judged, and where it came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JudgedAt {
    /// When the office received the record.
    Received(Timestamp),
    /// Now, since no time of receipt is known.
    Now(Timestamp),
}

impl JudgedAt {
    /// The instant.
    #[must_use]
    pub const fn time(self) -> Timestamp {
        match self {
            Self::Received(time) | Self::Now(time) => time,
        }
    }

    const fn word(self) -> &'static str {
        match self {
            Self::Received(_) => "received",
            Self::Now(_) => "now",
        }
    }
}

/// What stands on the outside of a record whose seal holds.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Seen {
    /// Its id.
    pub id: RecordId,
    /// The tablet that sealed it.
    pub tablet: String,
    /// Its number in the chain of this key.
    pub number: u32,
    /// Digest of the record before it.
    pub previous: Option<Digest>,
    /// Its own digest: SHA-256 of its tag manifest.
    pub digest: Digest,
    /// What kind of record it is.
    pub kind: Kind,
    /// Who handed the unit over.
    pub organization: String,
    /// When it was sealed, by the tablet's own clock.
    pub sealed: Timestamp,
    /// The key that sealed it.
    #[serde(rename = "fingerprint", serialize_with = "fingerprint")]
    pub key: PublicKey,
}

fn fingerprint<S: Serializer>(key: &PublicKey, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_str(key)
}

/// Why a record is not accepted.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Failure {
    /// A file is not what was sealed.
    #[error("{0} was changed after the record was sealed")]
    FileChanged(String),
    /// A file stands in it that was not sealed.
    #[error("{0} was added after the record was sealed")]
    FileAdded(String),
    /// A sealed file is gone, or has another name.
    #[error("{0} is missing: it was removed or renamed after the record was sealed")]
    FileMissing(String),
    /// The signature does not fit the tag manifest.
    #[error("the seal does not hold: {0}")]
    BadSeal(String),
    /// The seal holds, but nobody vouches for the key.
    #[error("the seal holds, but the office does not know tablet {tablet} with the key {fingerprint}: {why}")]
    UnknownTablet {
        /// The tablet that the record names.
        tablet: String,
        /// Its key.
        fingerprint: String,
        /// What the list of signers says.
        why: String,
    },
    /// The seal holds, but the tablet was not valid then.
    #[error("the seal holds, but tablet {tablet} {} {limit}, and this was judged at {at}", if *.early { "is valid only from" } else { "was valid only until" })]
    NotValidAtThatTime {
        /// The tablet.
        tablet: String,
        /// The instant at which it was judged.
        at: Timestamp,
        /// The limit that it lies beyond.
        limit: Timestamp,
        /// Whether `at` lies before the limit.
        early: bool,
    },
    /// The seal holds, but nothing by this key is to be trusted.
    #[error(
        "the seal holds, but the office distrusts everything sealed by the key {fingerprint} of tablet {tablet}"
    )]
    Distrusted {
        /// The tablet that the record names.
        tablet: String,
        /// Its key.
        fingerprint: String,
    },
    /// Records between this one and the one before it are not here.
    #[error("record {id} is good, but before it {} missing", gap(*.from, *.to))]
    ChainGap {
        /// The record behind the gap.
        id: RecordId,
        /// The first number that is missing.
        from: u32,
        /// The last number that is missing.
        to: u32,
    },
    /// Two records claim the same place, or one does not follow the one given as the one before it.
    #[error("record {id} is sealed, but the chain of its tablet splits here: {why}")]
    ChainFork {
        /// The record.
        id: RecordId,
        /// What does not fit.
        why: String,
    },
    /// Whole and trusted, but written by a newer program.
    #[error(
        "the seal holds and nothing was changed, but {what} {found} is newer than this program knows ({known}): use a newer one to read it"
    )]
    NewerFormat {
        /// What is newer, as in 'Sendoff-Format'.
        what: &'static str,
        /// The version found.
        found: u32,
        /// The newest that is known here.
        known: u32,
    },
    /// No record, or none that anything can be said about.
    #[error("this is not a sealed record: {0}")]
    NotARecord(String),
}

fn gap(from: u32, to: u32) -> String {
    if from == to { format!("number {from} is") } else { format!("numbers {from} to {to} are") }
}

impl Failure {
    /// The code of the failure, which stays the same in all versions.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::FileChanged(_) => "file-changed",
            Self::FileAdded(_) => "file-added",
            Self::FileMissing(_) => "file-missing",
            Self::BadSeal(_) => "bad-seal",
            Self::UnknownTablet { .. } => "unknown-tablet",
            Self::NotValidAtThatTime { .. } => "not-valid-at-that-time",
            Self::Distrusted { .. } => "distrusted",
            Self::ChainGap { .. } => "chain-gap",
            Self::ChainFork { .. } => "chain-fork",
            Self::NewerFormat { .. } => "newer-format",
            Self::NotARecord(_) => "not-a-record",
        }
    }

    /// The file of the record that the failure speaks of.
    #[must_use]
    pub fn file(&self) -> Option<&str> {
        match self {
            Self::FileChanged(name) | Self::FileAdded(name) | Self::FileMissing(name) => Some(name),
            _ => None,
        }
    }
}

/// What is said about one path.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verdict {
    /// The ZIP file or folder.
    pub path: PathBuf,
    /// The record, or why it is not accepted.
    pub outcome: Result<Seen, Failure>,
    /// The instant at which the tablet's validity was judged.
    pub judged_at: JudgedAt,
}

impl Verdict {
    /// Its JSON form: `path`, `good`, `judged_at`, `judged_by` (`received` or `now`), then `record`, or `code`,
    /// `file` (where it is about one) and `message`.
    #[must_use]
    pub fn to_json(&self) -> serde_json::Value {
        serde_json::to_value(self).unwrap_or_default()
    }
}

impl Serialize for Verdict {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("path", &self.path.to_string_lossy())?;
        map.serialize_entry("good", &self.outcome.is_ok())?;
        map.serialize_entry("judged_at", &self.judged_at.time())?;
        map.serialize_entry("judged_by", self.judged_at.word())?;
        match &self.outcome {
            Ok(seen) => map.serialize_entry("record", seen)?,
            Err(failure) => {
                map.serialize_entry("code", failure.code())?;
                if let Some(file) = failure.file() {
                    map.serialize_entry("file", file)?;
                }
                map.serialize_entry("message", &failure.to_string())?;
            }
        }
        map.end()
    }
}
