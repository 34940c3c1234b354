//! What the clerk does with records: opens them, takes them in, copies them out.

use std::path::{Path, PathBuf};

use super::clerk::{Clerk, Open, Tell};
use super::record::{self, Opened};
use super::{Answer, What};
use crate::archive::import::{Outcome, Plan, Summary, import};
use crate::archive::index::keep;
use crate::archive::{Archive, Kept, Receipts};
use crate::ports::{Access, DiskFault};
use crate::record::zip;

/// Most files in quarantine that are looked at: each is judged anew.
const QUARANTINED: usize = 200;

impl Clerk {
    /// Opens a record; without a path it is looked for.
    pub(super) fn read(&self, id: &str, path: Option<&str>) -> Result<Opened, String> {
        let Open { archive, receipts, .. } = self.opened()?;
        let found;
        let path = if let Some(path) = path {
            path
        } else {
            let id = id.parse().map_err(|fault: crate::record::seal::RecordIdFault| fault.to_string())?;
            found = archive.find(&id).map_err(|fault| fault.to_string())?;
            found.as_ref().map(|filed| filed.path.as_str()).ok_or("its file is not there")?
        };
        record::open(archive, receipts, self.ports.clock.now(), (id, path))
    }

    /// Takes records in, then brings the index in step.
    pub(super) fn take_in(&mut self, place: &Path, tell: Tell<'_>) -> Result<Box<Summary>, String> {
        // The list of tablets may have changed since.
        let archive =
            Archive::open(std::sync::Arc::clone(&self.ports.disk), &self.dir).map_err(|f| f.to_string())?;
        let paths = [place.to_owned()];
        let (mut new, mut bad) = (0, 0);
        let taken = import(&archive, Plan { paths: &paths, rehearsals: false }, &self.ports, &mut |now| {
            match now.outcome {
                Outcome::New(_) => new += 1,
                Outcome::Bad(_) => bad += 1,
                Outcome::Known(_) | Outcome::Rehearsal => {}
            }
            tell(Answer::Taking { done: now.done, of: now.of });
        });
        // What was filed before it stopped is filed.
        let open = self.open.take();
        drop(open);
        let opened = keep::open(&archive, &self.ports, &mut |done, of| {
            tell(Answer::Taking { done, of: of.max(done) });
        });
        let ready = self.take_up(archive, opened);
        tell(Answer::Opened(ready));
        taken.map(Box::new).map_err(|fault| fault.to_string())
    }

    /// What is in quarantine.
    pub(super) fn quarantine(&self) -> Result<Vec<Kept>, String> {
        let Open { archive, receipts, .. } = self.opened()?;
        archive.quarantine(receipts, self.ports.clock.now(), QUARANTINED).map_err(|fault| fault.to_string())
    }

    /// Copies a record out and reads the copy back. What is there already is never replaced.
    pub(super) fn export(&self, (id, path): (&str, &str), what: What, to: &Path) -> Result<PathBuf, String> {
        let Open { archive, receipts, .. } = self.opened()?;
        let disk = self.ports.disk.as_ref();
        let (name, bytes) = match what {
            What::Sealed => (format!("{id}.zip"), archive.read(path).map_err(|fault| fault.to_string())?),
            What::Text => (format!("{id}.txt"), text(archive, receipts, self, (id, path))?),
        };
        if !disk.is_dir(to) {
            return Err(format!("{} is not a folder that is there", to.display()));
        }
        let file = to.join(name);
        match disk.put_new(&file, &bytes, Access::Usual) {
            Ok(()) | Err(DiskFault::Exists { .. }) => {}
            Err(fault) => return Err(fault.to_string()),
        }
        let back = disk.read(&file, zip::MAX_BYTES).map_err(|fault| fault.to_string())?;
        if back == bytes {
            Ok(file)
        } else {
            Err(format!(
                "{} is there already and is something else, or does not read back as it was written",
                file.display()
            ))
        }
    }
}

/// The text of a record that verifies.
fn text(
    archive: &Archive,
    receipts: &Receipts,
    clerk: &Clerk,
    which: (&str, &str),
) -> Result<Vec<u8>, String> {
    let opened = record::open(archive, receipts, clerk.ports.clock.now(), which)?;
    opened.held.map(|held| held.text.into_bytes()).map_err(|broken| broken.why)
}
