//! The stand-alone copy: records, receipts, signers and chain heads in a folder, with a text that says how to verify
//! all of it without Sendoff. Taken in by an empty archive, it gives the same archive.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use super::chains::Chain;
use super::receipts::LOG_CAP;
use super::{
    ALLOWED, Archive, ArchiveFault, DISTRUSTED, Filed, Folder, MARKS, RECEIPTS, Receipts, Store, cores, judge,
};
use crate::ports::Disk;
use crate::record::keys::CHECKPOINT;
use crate::record::receipt::SIGNATURE;
use crate::record::seal::RecordId;

/// The text that says what the copy is and how to verify it.
pub const README: &str = "README.txt";
/// The last record of each chain.
pub const HEADS: &str = "chains.txt";
const README_TEXT: &str = include_str!("export/README.txt");
const LIST_CAP: u64 = 1 << 20;
/// Records that are written together, and how many bytes they may have.
const TOGETHER: usize = 32;
const TOGETHER_BYTES: usize = 32 << 20;

/// What was copied.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Exported {
    /// Records copied.
    pub new: usize,
    /// Records that the copy had already.
    pub known: usize,
    /// Records that were left out, and why.
    pub left: Vec<(String, String)>,
}

/// Copies an archive into a folder. A copy that was begun is gone on with; one of an earlier day grows.
/// Only records that hold, with their receipts, are copied.
///
/// # Errors
/// The office's key cannot be used, a file of the copy says otherwise, or a disk refuses.
pub fn export(
    archive: &Archive,
    disk: Arc<dyn Disk>,
    dir: &Path,
    now: jiff::Timestamp,
    told: &mut dyn FnMut(usize),
) -> Result<Exported, ArchiveFault> {
    let office = archive.office_key()?;
    disk.make_dir(dir)?;
    let copy = Folder::new(disk, dir);
    let receipts = archive.receipts()?;
    let mut done = Exported::default();
    let mut waiting = Vec::new();
    for folder in archive.folders()? {
        let judge = |filed: &Filed| (filed.path.clone(), to_copy(archive, &copy, &receipts, filed, now));
        cores::each(&archive.filed_in(&folder)?, judge, &mut |(path, found)| -> Result<(), ArchiveFault> {
            match found {
                Found::Left(why) => done.left.push((path, why)),
                Found::Known => done.known += 1,
                Found::New(bytes) => waiting.push((path, bytes)),
            }
            let held: usize = waiting.iter().map(|(_, bytes)| bytes.len()).sum();
            if waiting.len() >= TOGETHER || held >= TOGETHER_BYTES {
                put_all(&copy, &mut waiting, &mut done)?;
            }
            told(done.new + done.known + done.left.len());
            Ok(())
        })?;
    }
    done.left.sort();
    put_all(&copy, &mut waiting, &mut done)?;
    for name in archive.store().list(RECEIPTS)?.into_iter().filter(|name| name.ends_with(".log")) {
        let log = format!("{RECEIPTS}/{name}");
        let bytes = archive.store().read(&log, LOG_CAP)?;
        let whole = bytes.iter().rposition(|b| *b == b'\n').map_or(0, |at| at + 1);
        let bytes = bytes.get(..whole).unwrap_or_default();
        // Signed, so that another archive believes the times in it.
        copy.replace(&log, bytes)?;
        copy.replace(&format!("{log}{SIGNATURE}"), office.sign(CHECKPOINT, bytes)?.as_bytes())?;
    }
    for name in archive.store().list(MARKS)? {
        let mark = format!("{MARKS}/{name}");
        copy.replace(&mark, &archive.store().read(&mark, LIST_CAP)?)?;
    }
    for list in [ALLOWED, DISTRUSTED] {
        let bytes = match archive.store().read(list, LIST_CAP) {
            Err(fault) if fault.is_missing() => Vec::new(),
            other => other?,
        };
        copy.replace(list, &bytes)?;
    }
    copy.replace(HEADS, heads(&receipts).as_bytes())?;
    copy.replace(README, README_TEXT.as_bytes())?;
    Ok(done)
}

/// Copies what waits.
fn put_all(
    copy: &Folder,
    waiting: &mut Vec<(String, Vec<u8>)>,
    done: &mut Exported,
) -> Result<(), ArchiveFault> {
    let files: Vec<(&str, &[u8])> =
        waiting.iter().map(|(path, bytes)| (path.as_str(), bytes.as_slice())).collect();
    copy.create_all(&files)?;
    done.new += waiting.len();
    waiting.clear();
    Ok(())
}

/// What is to be done with a record.
enum Found {
    /// It does not hold, and why.
    Left(String),
    /// The copy has it.
    Known,
    /// It is to be copied.
    New(Vec<u8>),
}

/// Looks whether a record holds and is not in the copy yet.
fn to_copy(
    archive: &Archive,
    copy: &Folder,
    receipts: &Receipts,
    filed: &Filed,
    now: jiff::Timestamp,
) -> Found {
    let bytes = match archive.read(&filed.path) {
        Ok(bytes) => bytes,
        Err(fault) => return Found::Left(fault.to_string()),
    };
    match judge::judge(&bytes, Some(&filed.id), archive.signers(), &|id| receipts.of(id), now).1 {
        Err(failure) => return Found::Left(failure.to_string()),
        Ok(seen) if receipts.of(&seen.id).is_none_or(|receipt| receipt.digest != seen.digest) => {
            return Found::Left("no receipt says when it came".to_owned());
        }
        Ok(_) => {}
    }
    if copy.read(&filed.path, bytes.len() as u64).is_ok_and(|there| there == bytes) {
        return Found::Known;
    }
    Found::New(bytes)
}

/// A line a chain: its last record, digest, time of receipt.
fn heads(receipts: &Receipts) -> String {
    let mut last: BTreeMap<Chain, RecordId> = BTreeMap::new();
    for (id, _) in receipts.all() {
        let head = last.entry(Chain::of(&id)).or_insert_with(|| id.clone());
        if head.number() < id.number() {
            *head = id;
        }
    }
    let line = |id: &RecordId| {
        let receipt = receipts.of(id)?;
        Some(format!("{id} {} {}\n", receipt.digest, receipt.at))
    };
    last.values().filter_map(line).collect()
}
