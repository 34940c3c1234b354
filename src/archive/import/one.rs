//! One place: read, judged, filed or kept apart.

use std::path::Path;

use super::{Bad, Outcome, Receipt, Work, confirmed};
use crate::archive::chains::Said;
use crate::archive::search::Place;
use crate::archive::{ArchiveFault, Filed, QUARANTINE, judge, marks, place_of, quarantine};
use crate::ports::{Access, DiskFault};
use crate::record::receipt::Line;
use crate::record::seal::{Kind, RecordId};
use crate::record::verify::{self, Seen};
use crate::record::zip;

type Taken = (Outcome, Option<Line>);

impl Work<'_> {
    /// Takes one place in. A fault of the archive's own disk stops everything; one of the source does not.
    pub(super) fn take(&mut self, place: &Place) -> Result<Taken, ArchiveFault> {
        let bytes = match place {
            Place::Closed(_, why) => return Ok(unread("unreadable", why.clone())),
            Place::Zip(path) => match self.disk.read(path, zip::MAX_BYTES) {
                Ok(bytes) => bytes,
                Err(fault @ DiskFault::TooLarge { .. }) => {
                    return Ok(unread("not-a-record", format!("{fault}, more than a record can have")));
                }
                Err(fault) => return Ok(unread("unreadable", fault.to_string())),
            },
            Place::Bag(dir) => match verify::pack_folder(self.disk, dir) {
                Ok(bytes) => bytes,
                Err(failure) => return Ok(unread(failure.code(), failure.to_string())),
            },
        };
        let path = place.path();
        if !self.rehearsals && verify::said_kind(&bytes) == Some(Kind::Rehearsal) {
            return Ok((Outcome::Rehearsal, None));
        }
        let named: Option<RecordId> = path.file_stem().and_then(|stem| stem.to_string_lossy().parse().ok());
        let (at, judged) = judge::judge(
            &bytes,
            named.as_ref(),
            self.archive.signers(),
            &[&self.own, &self.foreign.receipts],
            self.now,
        );
        match judged {
            Err(failure) => self.refuse(path, &bytes, failure.code(), failure.to_string()),
            Ok(seen) => {
                let receipt = Receipt { at: at.time(), digest: seen.digest };
                self.file(path, &bytes, &seen, receipt)
            }
        }
    }

    fn refuse(
        &self,
        path: &Path,
        bytes: &[u8],
        code: &'static str,
        why: String,
    ) -> Result<Taken, ArchiveFault> {
        // What waits in quarantine already is not put there again.
        let waits =
            path.strip_prefix(self.archive.dir()).ok().map(|p| p.to_string_lossy().replace('\\', "/"));
        if let Some(kept) = waits.filter(|name| name.starts_with(QUARANTINE)) {
            return Ok((Outcome::Bad(Bad { code, why, kept: Some(kept) }), None));
        }
        let kept = quarantine::keep(self.archive.store(), path, bytes, &why, code, self.now)?;
        Ok((Outcome::Bad(Bad { code, why, kept: Some(kept) }), None))
    }

    fn file(
        &mut self,
        path: &Path,
        bytes: &[u8],
        seen: &Seen,
        receipt: Receipt,
    ) -> Result<Taken, ArchiveFault> {
        let place = place_of(&seen.id, seen.sealed);
        let own = self.own.of(&seen.id);
        if own.is_some_and(|own| own.digest != seen.digest) {
            let why = format!(
                "the archive has another record {}: one tablet's number was used twice. Both are kept; ask how the tablet was restored or copied",
                seen.id
            );
            return self.refuse(path, bytes, "number-used-twice", why);
        }
        let filed = Filed { id: seen.id.clone(), path: place };
        let line = Some(confirmed(&seen.id, seen.digest, receipt.at));
        let stands = match self.archive.read(&filed.path) {
            Ok(own) => Some(own == bytes),
            Err(fault) if fault.is_missing() => None,
            Err(DiskFault::TooLarge { .. }) => Some(false),
            Err(fault) => return Err(fault.into()),
        };
        if stands == Some(false) {
            let why = format!(
                "this copy is whole, but {} in the archive differs from it: that one was changed. Keep this copy, and audit the archive",
                filed.path
            );
            return self.refuse(path, bytes, "archive-differs", why);
        }
        self.touch(&seen.id);
        if let Some(own) = own {
            self.writer.keep(own)?;
        } else {
            let path = path.display().to_string();
            let source = self.foreign.source(&seen.id, receipt).unwrap_or(&path);
            self.writer.append(&seen.id, receipt, source)?;
            self.own.insert(&seen.id, receipt);
        }
        if stands.is_some() {
            self.settle(&filed.path)?;
            return Ok((Outcome::Known(filed), line));
        }
        self.archive.store().create(&filed.path, bytes, Access::Usual)?;
        self.settle(&filed.path)?;
        let said = Said { previous: seen.previous, sealed: seen.sealed };
        self.fresh.entry(marks::name_of(&seen.id)).or_default().insert(seen.number, said);
        Ok((Outcome::New(filed), line))
    }
}

fn unread(code: &'static str, why: String) -> Taken {
    (Outcome::Bad(Bad { code, why, kept: None }), None)
}
