//! Reading and judging every file, on all cores.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

use jiff::Timestamp;

use super::Said;
use crate::archive::receipts::Receipts;
use crate::archive::{Archive, QUARANTINE, RECORDS, judge};
use crate::ports::DiskFault;
use crate::record::seal::{Digest, RecordId};
use crate::record::verify::{Failure, Seen};

/// Folders within folders; the archive itself has three.
const MAX_DEPTH: usize = 16;
/// How many files one thread takes at a time.
const SHARE: usize = 16;

/// What became of one file. Of a good record only what its chain needs is kept.
#[derive(Debug, Clone)]
pub(super) enum Outcome {
    Good { id: RecordId, digest: Digest, said: Said },
    Failed(Failure),
    Unreadable(String),
}

/// All files below `records/`, whatever their names.
pub(super) fn files(archive: &Archive) -> Result<Vec<String>, DiskFault> {
    let mut files = Vec::new();
    folder(archive, RECORDS, 0, &mut files)?;
    Ok(files)
}

fn folder(archive: &Archive, name: &str, depth: usize, files: &mut Vec<String>) -> Result<(), DiskFault> {
    for inner in archive.store().list(name)? {
        let path = format!("{name}/{inner}");
        if depth < MAX_DEPTH && archive.store().is_folder(&path) {
            folder(archive, &path, depth + 1, files)?;
        } else {
            files.push(path);
        }
    }
    Ok(())
}

/// Judges all files; the outcomes come in their order. How far it is is told by this thread alone.
pub(super) fn all(
    archive: &Archive,
    receipts: &Receipts,
    files: &[String],
    now: Timestamp,
    told: &mut dyn FnMut(usize, usize),
) -> Vec<Outcome> {
    let (next, done) = (AtomicUsize::new(0), AtomicUsize::new(0));
    let outcomes: Mutex<Vec<(usize, Vec<Outcome>)>> = Mutex::new(Vec::new());
    // Whether there was something left to do.
    let share = || {
        let from = next.fetch_add(SHARE, Ordering::Relaxed);
        let share: Vec<Outcome> =
            files.iter().skip(from).take(SHARE).map(|file| one(archive, receipts, file, now)).collect();
        let some = !share.is_empty();
        done.fetch_add(share.len(), Ordering::Relaxed);
        outcomes.lock().unwrap_or_else(PoisonError::into_inner).push((from, share));
        some
    };
    std::thread::scope(|scope| {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        for _ in 1..cores {
            scope.spawn(|| while share() {});
        }
        while share() {
            told(done.load(Ordering::Relaxed), files.len());
        }
    });
    let mut outcomes = outcomes.into_inner().unwrap_or_else(PoisonError::into_inner);
    outcomes.sort_unstable_by_key(|(from, _)| *from);
    outcomes.into_iter().flat_map(|(_, share)| share).collect()
}

fn one(archive: &Archive, receipts: &Receipts, file: &str, now: Timestamp) -> Outcome {
    let bytes = match archive.read(file) {
        Ok(bytes) => bytes,
        Err(fault @ DiskFault::TooLarge { .. }) => {
            return Outcome::Failed(Failure::NotARecord(fault.to_string()));
        }
        Err(fault) => return Outcome::Unreadable(fault.to_string()),
    };
    let named = super::named(file);
    match judge::judge(&bytes, named.as_ref(), archive.signers(), &[receipts], now).1 {
        Ok(Seen { id, digest, previous, sealed, .. }) => {
            Outcome::Good { id, digest, said: Said { previous, sealed } }
        }
        Err(failure) => Outcome::Failed(failure),
    }
}

/// What waits in quarantine and was not filed meanwhile, with what it is if it is a good record all the same.
pub(super) fn quarantine(
    archive: &Archive,
    receipts: &Receipts,
    now: Timestamp,
) -> Result<Vec<(String, Option<Seen>)>, DiskFault> {
    let mut waiting = Vec::new();
    for name in archive.store().list(QUARANTINE)?.into_iter().filter(|name| name.ends_with(".zip")) {
        let path = format!("{QUARANTINE}/{name}");
        let bytes = archive.read(&path).unwrap_or_default();
        let seen = archive.verify(&bytes, receipts, now).1.ok();
        let filed = seen
            .as_ref()
            .is_some_and(|seen| receipts.of(&seen.id).is_some_and(|receipt| receipt.digest == seen.digest));
        if !filed {
            waiting.push((path, seen));
        }
    }
    Ok(waiting)
}
