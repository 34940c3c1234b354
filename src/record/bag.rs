//! The files of a record as a BagIt bag (RFC 8493): what is written, and the same read back strictly.
//!
//! Each tag file of a record follows from few values, so it is read by taking those values out and writing the
//! file anew: what does not give the same bytes is refused, and no second spelling exists.
//! [`judge()`] is the other reader: it judges any bag, ours or not, by the rules of the RFC.

mod contents;
mod fault;
mod hash;
mod judge;
mod listing;
mod text;
mod unzip;

pub use contents::Files;
pub use fault::BagFault;
pub use judge::{judge, judge_path};

use std::collections::BTreeMap;

use jiff::Timestamp;
use jiff::tz::TimeZone;

use super::seal::{Digest, Kind, RecordId};

/// The declaration, byte for byte.
pub const BAGIT: &str = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
/// Name of the declaration.
pub const BAGIT_FILE: &str = "bagit.txt";
/// Name of the file that says what bag this is.
pub const INFO_FILE: &str = "bag-info.txt";
/// Name of the list of the payload's digests.
pub const MANIFEST_FILE: &str = "manifest-sha256.txt";
/// Name of the list of the tag files' digests: the file that is signed.
pub const TAG_MANIFEST_FILE: &str = "tagmanifest-sha256.txt";
/// Name of the signature.
pub const SEAL_FILE: &str = "seal.sshsig";
/// Name of the payload file that says everything.
pub const RECORD_FILE: &str = "data/record.json";
/// The tag files in the order in which they stand in a record.
pub const TAG_FILES: [&str; 5] = [BAGIT_FILE, INFO_FILE, MANIFEST_FILE, TAG_MANIFEST_FILE, SEAL_FILE];
/// The format of records that this program writes.
pub const FORMAT: u32 = 1;

const MAX_ORGANIZATION: usize = 200;

/// Why a tag file is not what a record's would be.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TagFault {
    /// A name that cannot stand in a line of `bag-info.txt`.
    #[error(
        "{value:?} cannot be written as Source-Organization: use 1 to {MAX_ORGANIZATION} characters in one line, without spaces at its ends"
    )]
    Organization {
        /// The value.
        value: String,
    },
    /// A field of `bag-info.txt` that is missing, unreadable or not in its place.
    #[error("bag-info.txt: {field} is missing, not in its place, or cannot be read")]
    Field {
        /// Its label.
        field: &'static str,
    },
    /// `bag-info.txt` says something in two ways that disagree, or more than it should.
    #[error("bag-info.txt is not written as a record's is")]
    Info,
    /// A manifest that is not lines of digest, two spaces, name, in the order of the names.
    #[error("line {line} of the manifest is not a digest, two spaces and a name, in the order of the names")]
    Manifest {
        /// The line, from 1.
        line: usize,
    },
}

/// What `bag-info.txt` says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Info {
    /// Who handed the unit over.
    pub organization: String,
    /// The record's id, with tablet and number in it.
    pub id: RecordId,
    /// Bytes of the payload.
    pub octets: u64,
    /// Files of the payload.
    pub streams: u64,
    /// What kind of record it is.
    pub kind: Kind,
    /// Digest of the record before it, none for the first.
    pub previous: Option<Digest>,
    /// When it was sealed, by the tablet's clock.
    pub sealed: Timestamp,
}

impl Info {
    /// The ten lines.
    #[must_use]
    pub fn text(&self) -> String {
        let day = TimeZone::UTC.to_datetime(self.sealed).date();
        let previous = self.previous.map_or_else(|| "none".to_owned(), |digest| digest.to_string());
        let fields = [
            ("Source-Organization", self.organization.clone()),
            ("External-Identifier", self.id.to_string()),
            ("Bagging-Date", day.to_string()),
            ("Payload-Oxum", format!("{}.{}", self.octets, self.streams)),
            ("Sendoff-Format", FORMAT.to_string()),
            ("Sendoff-Kind", self.kind.to_string()),
            ("Sendoff-Tablet", self.id.tablet().to_owned()),
            ("Sendoff-Number", self.id.number().to_string()),
            ("Sendoff-Previous", previous),
            ("Sendoff-Sealed", self.sealed.to_string()),
        ];
        fields.iter().map(|(label, value)| format!("{label}: {value}\n")).collect()
    }

    /// Reads what [`Info::text`] writes, and nothing else.
    ///
    /// # Errors
    /// The field that is wrong, or [`TagFault::Info`] when each field can be read but the whole is not as we
    /// write it.
    pub fn parse(text: &str) -> Result<Self, TagFault> {
        let fields: BTreeMap<&str, &str> = text.lines().filter_map(|line| line.split_once(": ")).collect();
        let field = |field: &'static str| fields.get(field).copied().ok_or(TagFault::Field { field });
        let unread = |field: &'static str| TagFault::Field { field };
        let (octets, streams) =
            field("Payload-Oxum")?.split_once('.').ok_or_else(|| unread("Payload-Oxum"))?;
        let previous = match field("Sendoff-Previous")? {
            "none" => None,
            hex => Some(hex.parse().map_err(|_| unread("Sendoff-Previous"))?),
        };
        let info = Self {
            organization: field("Source-Organization")?.to_owned(),
            id: field("External-Identifier")?.parse().map_err(|_| unread("External-Identifier"))?,
            octets: octets.parse().map_err(|_| unread("Payload-Oxum"))?,
            streams: streams.parse().map_err(|_| unread("Payload-Oxum"))?,
            kind: field("Sendoff-Kind")?.parse().map_err(|_| unread("Sendoff-Kind"))?,
            previous,
            sealed: field("Sendoff-Sealed")?.parse().map_err(|_| unread("Sendoff-Sealed"))?,
        };
        check_organization(&info.organization)?;
        if info.text() == text { Ok(info) } else { Err(TagFault::Info) }
    }
}

/// The format that a `bag-info.txt` says it has.
#[must_use]
pub fn format_of(info: &str) -> Option<u32> {
    info.lines().find_map(|line| line.strip_prefix("Sendoff-Format: "))?.parse().ok()
}

/// Whether a name can stand in `bag-info.txt`: one line for every reader, no control characters.
///
/// # Errors
/// [`TagFault::Organization`].
pub fn check_organization(name: &str) -> Result<(), TagFault> {
    // Some readers break lines at the two Unicode separators too.
    let breaks = |c: char| c.is_control() || matches!(c, '\u{2028}' | '\u{2029}');
    let count = name.chars().count();
    if (1..=MAX_ORGANIZATION).contains(&count) && name.trim() == name && !name.contains(breaks) {
        Ok(())
    } else {
        Err(TagFault::Organization { value: name.chars().take(MAX_ORGANIZATION).collect() })
    }
}

/// A manifest as `sha256sum` writes it: digest, two spaces, name. The names come sorted by their bytes.
#[must_use]
pub fn manifest<'a>(files: impl IntoIterator<Item = (&'a str, Digest)>) -> String {
    files.into_iter().map(|(name, digest)| format!("{digest}  {name}\n")).collect()
}

/// Reads what [`manifest`] writes, and nothing else: names sorted by their bytes, none twice.
///
/// # Errors
/// [`TagFault::Manifest`] with the line.
pub fn parse_manifest(text: &str) -> Result<Vec<(&str, Digest)>, TagFault> {
    let mut entries: Vec<(&str, Digest)> = Vec::new();
    for (at, line) in text.split_inclusive('\n').enumerate() {
        let fault = TagFault::Manifest { line: at + 1 };
        let entry = line.strip_suffix('\n').and_then(|line| line.split_at_checked(64));
        let entry =
            entry.and_then(|(hex, rest)| Some((rest.strip_prefix("  ")?, hex.parse::<Digest>().ok()?)));
        let (name, digest) = entry.ok_or_else(|| fault.clone())?;
        if entries.last().is_some_and(|(before, _)| *before >= name) || name.contains('\r') {
            return Err(fault);
        }
        entries.push((name, digest));
    }
    Ok(entries)
}
