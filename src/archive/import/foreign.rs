//! Receipts that come with a stand-alone copy: believed if an office signed them that this archive trusts.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::{ArchiveFault, Receipt, Receipts};
use crate::archive::RECEIPTS;
use crate::archive::receipts::LOG_CAP;
use crate::ports::Disk;
use crate::record::keys::{CHECKPOINT, PublicKey, SealFile};
use crate::record::receipt::signature_of;
use crate::record::seal::RecordId;

const SIGNATURE_CAP: u64 = 4096;

/// The receipts of a copy.
#[derive(Debug, Default)]
pub(super) struct Foreign {
    pub(super) receipts: Receipts,
    /// Where each record came from, by its id.
    sources: BTreeMap<Box<str>, Box<str>>,
    /// Whether there are logs at all: then it is a copy, and no tablet waits for a receipt beside it.
    pub(super) is_copy: bool,
    /// Logs that are not believed, and why.
    pub(super) refused: Vec<(PathBuf, String)>,
}

impl Foreign {
    /// Reads what lies in `receipts/` below a path.
    pub(super) fn read(disk: &dyn Disk, path: &Path, offices: &[PublicKey]) -> Result<Self, ArchiveFault> {
        let mut all = Self::default();
        let folder = path.join(RECEIPTS);
        if !disk.is_dir(&folder) {
            return Ok(all);
        }
        for name in disk.list(&folder)?.into_iter().filter(|name| name.ends_with(".log")) {
            all.is_copy = true;
            let log = folder.join(&name);
            match believed(disk, &log, offices) {
                Ok(bytes) => all.add(&name, &bytes),
                Err(why) => all.refused.push((log, why)),
            }
        }
        Ok(all)
    }

    fn add(&mut self, name: &str, bytes: &[u8]) {
        self.receipts.add_log(name, bytes);
        for line in String::from_utf8_lossy(bytes).lines() {
            let mut parts = line.splitn(4, ' ').skip(2);
            if let (Some(id), Some(source)) = (parts.next(), parts.next()) {
                self.sources.insert(id.into(), source.into());
            }
        }
    }

    /// Where a record came from, if this is the receipt that it was filed under.
    pub(super) fn source(&self, id: &RecordId, receipt: Receipt) -> Option<&str> {
        let own = self.receipts.of(id).is_some_and(|own| own == receipt);
        self.sources.get(id.to_string().as_str()).filter(|_| own).map(AsRef::as_ref)
    }
}

fn believed(disk: &dyn Disk, log: &Path, offices: &[PublicKey]) -> Result<Vec<u8>, String> {
    let bytes = disk.read(log, LOG_CAP).map_err(|fault| fault.to_string())?;
    let signature = disk.read(&signature_of(log), SIGNATURE_CAP).map_err(|fault| fault.to_string())?;
    let seal = SealFile::parse(&signature).map_err(|fault| fault.to_string())?;
    if !seal.is_sha256() || !seal.holds(CHECKPOINT, &bytes) {
        return Err("its signature does not fit it".to_owned());
    }
    if offices.contains(seal.public()) {
        Ok(bytes)
    } else {
        Err(format!("it is signed by {}, which is no office's key here", seal.public().fingerprint()))
    }
}
