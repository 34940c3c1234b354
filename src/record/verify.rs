//! Judging records: is each what its tablet sealed, is that tablet trusted, is the chain whole.
//!
//! Every byte of a record is accounted for: the seal covers the tag manifest, the tag manifest covers the tag
//! files, one of which is the manifest, the manifest covers the payload; nothing else may be there, and each of
//! these files has one spelling only.
//!
//! A verdict names one failure, the first of this order:
//!
//! 1. the bytes are no record at all ([`Failure::NotARecord`]);
//! 2. a tag file is missing ([`Failure::FileMissing`]), the seal does not hold ([`Failure::BadSeal`]);
//! 3. a file was changed, then one is missing, then one was added; within each by name. A renamed file is thus
//!    *missing*: its old name is what the seal speaks of;
//! 4. names and numbers disagree ([`Failure::NotARecord`]);
//! 5. the tablet is distrusted, unknown, or was not valid at that time;
//! 6. it is whole and trusted, but in a newer format ([`Failure::NewerFormat`]);
//! 7. the chain of the records given together ([`Failure::ChainFork`], [`Failure::ChainGap`]).

mod chain;
pub(super) mod folder;
mod head;
mod inside;
mod verdict;

pub use verdict::{Failure, JudgedAt, Seen, Verdict};

use std::path::{Path, PathBuf};

use jiff::Timestamp;

use super::bag;
use super::keys::PublicKey;
use super::seal::{Kind, RecordId};
use super::signers::Signers;
use super::zip;
use crate::ports::Disk;
use inside::{Files, Judged};

/// What is given to be judged.
#[derive(Debug, Clone, Copy)]
pub enum Input<'a> {
    /// The bytes of a ZIP file.
    Zip(&'a [u8]),
    /// A bag that was unpacked into a folder.
    Folder(&'a dyn Disk, &'a Path),
}

impl Input<'_> {
    fn judge(&self, trust: Trust<'_>) -> Judged {
        match self {
            Self::Zip(bytes) => match zip::read(bytes) {
                Ok(entries) => inside::judge(&Files::of_zip(&entries), trust),
                Err(fault) => {
                    Judged::failed(Failure::NotARecord(format!("not a ZIP file as we write it: {fault}")))
                }
            },
            Self::Folder(disk, dir) => match folder::read(*disk, dir) {
                Ok(bag) => inside::judge(&Files::of_folder(&bag), trust),
                Err(fault) => Judged::failed(Failure::NotARecord(fault.to_string())),
            },
        }
    }
}

/// Whom to trust, and at which time.
#[derive(Debug, Clone, Copy)]
struct Trust<'a> {
    signers: &'a Signers,
    at: Timestamp,
}

/// Judges one record by itself.
///
/// # Errors
/// The first failure, in the order of the [module](self).
pub fn verify(input: Input<'_>, signers: &Signers, at: JudgedAt) -> Result<Seen, Failure> {
    input.judge(Trust { signers, at: at.time() }).into_result()
}

/// The id that a ZIP file says it has; nothing is verified.
#[must_use]
pub fn said_id(bytes: &[u8]) -> Option<RecordId> {
    said(bytes, "External-Identifier: ")?.parse().ok()
}

/// The kind of record that a ZIP file says it is; nothing is verified.
#[must_use]
pub fn said_kind(bytes: &[u8]) -> Option<Kind> {
    said(bytes, "Sendoff-Kind: ")?.parse().ok()
}

/// What a line of `bag-info.txt` says, in a file that looks as if it were a record.
fn said<'a>(bytes: &'a [u8], label: &str) -> Option<&'a str> {
    let info = zip::peek(bytes, bag::INFO_FILE)?;
    std::str::from_utf8(info).ok()?.lines().find_map(|line| line.strip_prefix(label))
}

/// Packs an unpacked bag as a record is packed, so that it is judged and kept like any other.
///
/// # Errors
/// The folder cannot be read, or holds what no record holds.
pub fn pack_folder(disk: &dyn Disk, dir: &Path) -> Result<Vec<u8>, Failure> {
    let not = |why: String| Failure::NotARecord(why);
    let bag = folder::read(disk, dir).map_err(|fault| not(fault.to_string()))?;
    let root = bag.name.clone().unwrap_or_default();
    let tags = bag::TAG_FILES.into_iter().filter_map(|name| bag.files.get_key_value(name));
    let rest = bag.files.iter().filter(|(name, _)| !bag::TAG_FILES.contains(&name.as_str()));
    let files: Vec<(String, &[u8])> =
        tags.chain(rest).map(|(name, bytes)| (format!("{root}/{name}"), bytes.as_slice())).collect();
    let entries: Vec<zip::Entry<'_>> = files.iter().map(|(name, bytes)| zip::Entry { name, bytes }).collect();
    zip::write(&entries).map_err(|fault| not(fault.to_string()))
}

/// Whether a ZIP file is a whole record sealed by this key: what a tablet asks of its own, at any time.
///
/// # Errors
/// The first failure, in the order of the [module](self).
pub(super) fn own(bytes: &[u8], key: &PublicKey, tablet: &str) -> Result<Seen, Failure> {
    let signers = Signers::only(*key, tablet);
    Input::Zip(bytes).judge(Trust { signers: &signers, at: Timestamp::UNIX_EPOCH }).into_result()
}

/// Judges files and folders, and the chains of the records among them.
///
/// A path may be a ZIP file, an unpacked bag, or a folder with such in it at any depth (other files in it are
/// passed over). Validity is judged at `received` if it is given, otherwise at `now`.
/// The verdicts come in the order of the paths, those of a folder sorted by name.
#[must_use]
pub fn verify_paths(
    disk: &dyn Disk,
    paths: &[PathBuf],
    signers: &Signers,
    received: Option<Timestamp>,
    now: Timestamp,
) -> Vec<Verdict> {
    let at = received.map_or(JudgedAt::Now(now), JudgedAt::Received);
    let trust = Trust { signers, at: at.time() };
    let mut judged: Vec<(PathBuf, Judged)> = Vec::new();
    for given in paths {
        match folder::find(disk, given) {
            Ok(found) => {
                judged.extend(found.into_iter().map(|place| judge_place(disk, place, trust)));
            }
            Err(reason) => judged.push((given.clone(), Judged::failed(Failure::NotARecord(reason)))),
        }
    }
    chain::check(&mut judged);
    let verdict =
        |(path, judged): (PathBuf, Judged)| Verdict { path, outcome: judged.into_result(), judged_at: at };
    judged.into_iter().map(verdict).collect()
}

fn judge_place(disk: &dyn Disk, place: folder::Place, trust: Trust<'_>) -> (PathBuf, Judged) {
    match place {
        folder::Place::Bag(dir) => {
            let judged = Input::Folder(disk, &dir).judge(trust);
            (dir, judged)
        }
        folder::Place::Zip(path) => {
            let judged = match disk.read(&path, zip::MAX_BYTES) {
                Ok(bytes) => Input::Zip(&bytes).judge(trust),
                Err(fault) => Judged::failed(Failure::NotARecord(fault.to_string())),
            };
            (path, judged)
        }
        folder::Place::TooDeep(dir) => {
            let reason =
                format!("folders lie more than {} deep here; give this one by itself", folder::MAX_DEPTH);
            (dir, Judged::failed(Failure::NotARecord(reason)))
        }
    }
}
