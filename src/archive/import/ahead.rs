//! Reads and judges what is to be taken in, on several cores and ahead of the one who files it, in its order.

use std::path::PathBuf;
use std::sync::mpsc::sync_channel;
use std::thread;

use jiff::Timestamp;

use super::foreign::Foreign;
use super::{ArchiveFault, Receipts};
use crate::archive::search::Place;
use crate::archive::{Archive, judge};
use crate::ports::{Disk, DiskFault};
use crate::record::seal::{Kind, RecordId};
use crate::record::verify::{self, Failure, JudgedAt, Seen};
use crate::record::zip;

/// More would only wait for the disk, each with a record in its hands.
const MAX_WORKERS: usize = 4;
/// Records that may wait for the one who files, for each worker.
const AHEAD: usize = 1;

/// One of the paths that were given.
#[derive(Debug)]
pub(super) struct Source {
    /// The receipts that came with it.
    pub(super) foreign: Foreign,
    /// Where the tablets look for a receipt.
    pub(super) folder: PathBuf,
}

/// One place below such a path.
#[derive(Debug)]
pub(super) struct Job {
    pub(super) at: usize,
    pub(super) place: Place,
    pub(super) source: usize,
}

impl Job {
    /// The id that its name suggests.
    pub(super) fn named(&self) -> Option<RecordId> {
        self.place.path().file_stem().and_then(|stem| stem.to_string_lossy().parse().ok())
    }
}

/// What was found there.
#[derive(Debug)]
pub(super) enum Read {
    /// It cannot be read.
    Unread(&'static str, String),
    /// A rehearsal, which is left alone.
    Rehearsal,
    /// It was judged.
    Judged { bytes: Vec<u8>, at: JudgedAt, judged: Result<Seen, Failure> },
}

/// What is needed to read and judge.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ahead<'a> {
    pub(super) archive: &'a Archive,
    pub(super) disk: &'a dyn Disk,
    /// The receipts of the archive before anything was taken in.
    pub(super) known: &'a Receipts,
    pub(super) sources: &'a [Source],
    pub(super) rehearsals: bool,
    pub(super) now: Timestamp,
}

impl Ahead<'_> {
    /// Hands each place to `take`, in order.
    ///
    /// # Errors
    /// What `take` says; the rest is then left.
    pub(super) fn each(
        &self,
        jobs: &[Job],
        take: &mut dyn FnMut(&Job, Read) -> Result<(), ArchiveFault>,
    ) -> Result<(), ArchiveFault> {
        let workers = thread::available_parallelism().map_or(1, usize::from).min(MAX_WORKERS).min(jobs.len());
        thread::scope(|scope| {
            let mut lanes = Vec::new();
            for first in 0..workers {
                let (send, lane) = sync_channel(AHEAD);
                scope.spawn(move || {
                    for job in jobs.iter().skip(first).step_by(workers) {
                        // Nobody receives any more when filing failed.
                        if send.send(self.read(job)).is_err() {
                            break;
                        }
                    }
                });
                lanes.push(lane);
            }
            for (job, lane) in jobs.iter().zip(lanes.iter().cycle()) {
                let Ok(read) = lane.recv() else { break };
                take(job, read)?;
            }
            Ok(())
        })
    }

    fn read(&self, job: &Job) -> Read {
        let bytes = match &job.place {
            Place::Closed(_, why) => return Read::Unread("unreadable", why.clone()),
            Place::Zip(path) => match self.disk.read(path, zip::MAX_BYTES) {
                Ok(bytes) => bytes,
                Err(fault @ DiskFault::TooLarge { .. }) => {
                    return Read::Unread("not-a-record", format!("{fault}, more than a record can have"));
                }
                Err(fault) => return Read::Unread("unreadable", fault.to_string()),
            },
            Place::Bag(dir) => match verify::pack_folder(self.disk, dir) {
                Ok(bytes) => bytes,
                Err(failure) => return Read::Unread(failure.code(), failure.to_string()),
            },
        };
        if !self.rehearsals && verify::said_kind(&bytes) == Some(Kind::Rehearsal) {
            return Read::Rehearsal;
        }
        let (at, judged) = self.judge(job, &bytes, self.known);
        Read::Judged { bytes, at, judged }
    }

    /// Judges a record by these receipts of the archive and those that came with it.
    pub(super) fn judge(&self, job: &Job, bytes: &[u8], own: &Receipts) -> (JudgedAt, Result<Seen, Failure>) {
        let foreign = self.sources.get(job.source).map(|source| &source.foreign.receipts);
        let receipt_of = |id: &RecordId| own.of(id).or_else(|| foreign?.of(id));
        judge::judge(bytes, job.named().as_ref(), self.archive.signers(), &receipt_of, self.now)
    }
}
