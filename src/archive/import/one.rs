//! One place: judged, filed or kept apart.

use std::path::Path;

use super::ahead::{Job, Read};
use super::{Bad, Outcome, Receipt, Work, confirmed};
use crate::archive::chains::{Chain, Said};
use crate::archive::{ArchiveFault, Filed, QUARANTINE, place_of, quarantine};
use crate::ports::DiskFault;
use crate::record::receipt::Line;
use crate::record::verify::Seen;

/// Records that are filed together, and how many bytes they may have.
const TOGETHER: usize = 32;
const TOGETHER_BYTES: usize = 32 << 20;

/// What became of one place, and what the receipt beside it says.
#[derive(Debug)]
pub(super) struct Done {
    pub(super) job: usize,
    pub(super) outcome: Outcome,
    pub(super) line: Option<Line>,
}

/// A good record that waits for its receipt to be durable, and to be filed unless it lies there.
#[derive(Debug)]
pub(super) struct Pending {
    done: Done,
    filed: Filed,
    bytes: Option<Vec<u8>>,
    seen: Seen,
    /// Its receipt and where it came from; nothing where it was received before.
    receipt: Option<(Receipt, String)>,
}

impl Work<'_> {
    /// Takes one place in, at once or with those behind it; what was done meanwhile, in order. A fault of the archive's
    /// own disk stops everything; one of the source does not.
    pub(super) fn take(&mut self, job: &Job, read: Read) -> Result<Vec<Done>, ArchiveFault> {
        let (bytes, at, judged) = match read {
            Read::Unread(code, why) => {
                return self.other(job, Outcome::Bad(Bad { code, why, kept: None }), None);
            }
            Read::Rehearsal => return self.other(job, Outcome::Rehearsal, None),
            Read::Judged { bytes, at, judged } if judged.is_ok() || self.own.len() == self.before => {
                (bytes, at, judged)
            }
            // A receipt may have come in this run, with another stick.
            Read::Judged { bytes, .. } => {
                let (at, judged) = self.ahead.judge(job, &bytes, &self.own);
                (bytes, at, judged)
            }
        };
        match judged {
            Err(failure) => {
                let outcome = self.refuse(job.place.path(), &bytes, failure.code(), failure.to_string())?;
                self.other(job, outcome, None)
            }
            Ok(seen) => {
                let receipt = Receipt { at: at.time(), digest: seen.digest };
                self.file(job, bytes, seen, receipt)
            }
        }
    }

    /// What needs no waiting, behind what waits.
    fn other(&mut self, job: &Job, outcome: Outcome, line: Option<Line>) -> Result<Vec<Done>, ArchiveFault> {
        let mut done = self.flush()?;
        done.push(Done { job: job.at, outcome, line });
        Ok(done)
    }

    /// Files what waits: first all receipts are made durable, then the records.
    pub(super) fn flush(&mut self) -> Result<Vec<Done>, ArchiveFault> {
        let pending = std::mem::take(&mut self.pending);
        for one in &pending {
            match (&one.receipt, self.own.of(&one.filed.id)) {
                (Some((receipt, source)), _) => self.writer.append(&one.filed.id, *receipt, source)?,
                (None, Some(own)) => self.writer.keep(own)?,
                (None, None) => {}
            }
        }
        self.writer.sync()?;
        let files: Vec<(&str, &[u8])> =
            pending.iter().filter_map(|one| Some((one.filed.path.as_str(), one.bytes.as_deref()?))).collect();
        self.archive.store().create_all(&files)?;
        let mut done = Vec::new();
        for Pending { done: one, filed, bytes, seen, .. } in pending {
            self.settle(&filed.path)?;
            if bytes.is_some() {
                let said = Said { previous: seen.previous, sealed: seen.sealed };
                self.fresh.entry(Chain::of(&seen.id)).or_default().insert(seen.number, said);
            }
            done.push(one);
        }
        Ok(done)
    }

    fn refuse(
        &self,
        path: &Path,
        bytes: &[u8],
        code: &'static str,
        why: String,
    ) -> Result<Outcome, ArchiveFault> {
        // What waits in quarantine already is not put there again.
        let waits =
            path.strip_prefix(self.archive.dir()).ok().map(|p| p.to_string_lossy().replace('\\', "/"));
        if let Some(kept) = waits.filter(|name| name.starts_with(QUARANTINE)) {
            return Ok(Outcome::Bad(Bad { code, why, kept: Some(kept) }));
        }
        let kept = quarantine::keep(self.archive.store(), path, bytes, &why, code, self.ahead.now)?;
        Ok(Outcome::Bad(Bad { code, why, kept: Some(kept) }))
    }

    fn file(
        &mut self,
        job: &Job,
        bytes: Vec<u8>,
        seen: Seen,
        receipt: Receipt,
    ) -> Result<Vec<Done>, ArchiveFault> {
        let path = job.place.path();
        let own = self.own.of(&seen.id);
        // It may be one of those that wait.
        let mut done = if own.is_some() { self.flush()? } else { Vec::new() };
        let filed = Filed { id: seen.id.clone(), path: place_of(&seen.id, seen.sealed) };
        let stands = match self.archive.read(&filed.path) {
            Ok(own) => Some(own == bytes),
            Err(fault) if fault.is_missing() => None,
            Err(DiskFault::TooLarge { .. }) => Some(false),
            Err(fault) => return Err(fault.into()),
        };
        if let Some((code, why)) = clash(&filed, &seen, own, stands) {
            let outcome = self.refuse(path, &bytes, code, why)?;
            done.append(&mut self.other(job, outcome, None)?);
            return Ok(done);
        }
        self.touch(&seen.id);
        let line = Some(confirmed(&seen.id, seen.digest, own.map_or(receipt.at, |own| own.at)));
        let outcome =
            if stands.is_some() { Outcome::Known(filed.clone()) } else { Outcome::New(filed.clone()) };
        let received = own.is_none().then(|| (receipt, self.came_from(job, &seen, receipt)));
        if own.is_none() {
            self.own.insert(&seen.id, receipt);
        }
        self.pending.push(Pending {
            done: Done { job: job.at, outcome, line },
            filed,
            bytes: stands.is_none().then_some(bytes),
            seen,
            receipt: received,
        });
        let held: usize = self.pending.iter().filter_map(|one| one.bytes.as_ref()).map(Vec::len).sum();
        if self.pending.len() >= TOGETHER || held >= TOGETHER_BYTES {
            done.append(&mut self.flush()?);
        }
        Ok(done)
    }

    fn came_from(&self, job: &Job, seen: &Seen, receipt: Receipt) -> String {
        let foreign =
            self.ahead.sources.get(job.source).and_then(|source| source.foreign.source(&seen.id, receipt));
        foreign.map_or_else(|| job.place.path().display().to_string(), str::to_owned)
    }
}

/// Why a good record cannot be filed beside what is there.
fn clash(
    filed: &Filed,
    seen: &Seen,
    own: Option<Receipt>,
    stands: Option<bool>,
) -> Option<(&'static str, String)> {
    if own.is_some_and(|own| own.digest != seen.digest) {
        let why = format!(
            "the archive has another record {}: one tablet's number was used twice. Both are kept; ask how the tablet was restored or copied",
            seen.id
        );
        return Some(("number-used-twice", why));
    }
    (stands == Some(false)).then(|| {
        let why = format!(
            "this copy is whole, but {} in the archive differs from it: that one was changed. Keep this copy, and audit the archive",
            filed.path
        );
        ("archive-differs", why)
    })
}
