//! Records that no archive has confirmed yet: copied out for the office, struck off by its receipt.
//!
//! *Exported* is a weaker word than *archived*: a copy on a stick can get lost, so it leaves the outbox only when
//! a receipt signed by the office says that the record is in the archive. Which key is the office's is learned
//! once: `keys/office.pub` is put there when the tablet is set up, or staff compare its fingerprint with the
//! office. No other key is ever believed afterwards.

use std::path::{Path, PathBuf};

use super::{KEYS, Tablet};
use crate::ports::{Access, DiskFault};
use crate::record::chain::RECORDS;
use crate::record::keys::{KeyFault, PublicKey};
use crate::record::receipt::{self, ReceiptFault};
use crate::record::seal::{Digest, RecordId};
use crate::record::signers::Signers;
use crate::record::verify::{self, Failure, Input, JudgedAt};
use crate::record::zip;

/// The office's public key in a data folder, below `keys/`.
pub const OFFICE_FILE: &str = "office.pub";
/// The folder for records on a stick.
pub const ON_STICK: &str = "sendoff-records";
const OUTBOX: &str = "outbox";
const SMALL_CAP: u64 = 4096;

/// A record that no archive has confirmed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiting {
    /// Its id.
    pub id: RecordId,
    /// Its digest.
    pub digest: Digest,
}

/// What came of handing records in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct HandedIn {
    /// Records that a receipt of the office confirms: they left the outbox.
    pub archived: usize,
    /// Records that were copied out, or lay there already. They stay in the outbox.
    pub exported: usize,
    /// A receipt lies there that is signed by this key, and no key of an office is known yet.
    pub unknown: Option<PublicKey>,
    /// Receipts that were not believed, and why.
    pub refused: Vec<(PathBuf, String)>,
}

/// Why records could not be handed in. What was copied stays copied; the outbox is as it was.
#[derive(Debug, Clone, thiserror::Error)]
pub enum HandInFault {
    /// The disk or the stick refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// A record of this tablet does not hold.
    #[error(
        "record {id} of this tablet does not hold: {failure}. Tell the office, and leave the tablet as it is"
    )]
    Own {
        /// The record.
        id: RecordId,
        /// Why not.
        failure: Box<Failure>,
    },
    /// The name is taken by something else.
    #[error("{} is there already and is something else; use another folder", .0.display())]
    Other(PathBuf),
    /// What the stick gives back is not what was written.
    #[error("{} reads back otherwise than it was written: use another stick", .0.display())]
    ReadBack(PathBuf),
    /// The office's key cannot be used.
    #[error("the key of the office on this tablet: {0}")]
    Office(#[from] KeyFault),
    /// Another key of an office is known already.
    #[error("this tablet knows the key of its office already, and it is another one; nothing was changed")]
    KnownOffice,
}

impl Tablet {
    /// The records that wait, by id. What is not in the form of the outbox is passed over.
    ///
    /// # Errors
    /// The folder cannot be read.
    pub fn waiting(&self) -> Result<Vec<Waiting>, DiskFault> {
        let folder = self.dir().join(OUTBOX);
        let mut waiting = Vec::new();
        for name in self.outbox()? {
            let Ok(id) = name.parse::<RecordId>() else { continue };
            let text = self.ports.disk.read(&folder.join(&name), SMALL_CAP)?;
            if let Ok(digest) = String::from_utf8_lossy(&text).trim_end().parse() {
                waiting.push(Waiting { id, digest });
            }
        }
        Ok(waiting)
    }

    /// Where records can be handed in: the folder that the settings name, then what is plugged in.
    #[must_use]
    pub fn places(&self) -> Vec<PathBuf> {
        self.hand_in.iter().cloned().chain(self.ports.disk.volumes()).collect()
    }

    /// The key of the office, once it is known.
    ///
    /// # Errors
    /// It cannot be read or is no key.
    pub fn office(&self) -> Result<Option<PublicKey>, HandInFault> {
        let path = self.dir().join(KEYS).join(OFFICE_FILE);
        match self.ports.disk.read(&path, SMALL_CAP) {
            Ok(line) => Ok(Some(PublicKey::from_openssh(&String::from_utf8_lossy(&line))?)),
            Err(fault) if fault.is_missing() => Ok(None),
            Err(fault) => Err(fault.into()),
        }
    }

    /// Keeps a key as that of the office, after staff compared its fingerprint with the office. Once only.
    ///
    /// # Errors
    /// Another one is known already, or the disk refuses.
    pub fn know_office(&self, key: &PublicKey) -> Result<(), HandInFault> {
        match self.office()? {
            Some(own) if own == *key => return Ok(()),
            Some(_) => return Err(HandInFault::KnownOffice),
            None => {}
        }
        let path = self.dir().join(KEYS).join(OFFICE_FILE);
        let line = format!("{}\n", key.to_openssh("office"));
        Ok(self.ports.disk.put_new(&path, line.as_bytes(), Access::Usual)?)
    }

    /// Hands records in: strikes off what receipts in a folder confirm, and copies what still waits to it.
    ///
    /// # Errors
    /// See [`HandInFault`].
    pub fn hand_in(&self, to: &Path) -> Result<HandedIn, HandInFault> {
        let mut done = self.strike_off(to)?;
        let folder = to.join(ON_STICK);
        let signers = Signers::only(*self.key().public(), self.name());
        for Waiting { id, digest } in self.waiting()? {
            let name = format!("{id}.zip");
            let bytes = self.ports.disk.read(&self.dir().join(RECORDS).join(&name), zip::MAX_BYTES)?;
            let at = JudgedAt::Now(self.ports.clock.now());
            let own = match verify::verify(Input::Zip(&bytes), &signers, at) {
                Ok(seen) if seen.digest == digest && seen.id == id => Ok(()),
                Ok(seen) => Err(Failure::NotARecord(format!("it is {}", seen.id))),
                Err(failure) => Err(failure),
            };
            own.map_err(|failure| HandInFault::Own { id, failure: Box::new(failure) })?;
            self.copy_out(&folder.join(name), &bytes)?;
            done.exported += 1;
        }
        // A copy that lay there already may come from a try that failed at its last sync.
        self.ports.disk.settle(&folder)?;
        Ok(done)
    }

    fn copy_out(&self, path: &Path, bytes: &[u8]) -> Result<(), HandInFault> {
        let disk = self.ports.disk.as_ref();
        if let Some(folder) = path.parent() {
            disk.make_dir(folder)?;
        }
        let fresh = match disk.put_new(path, bytes, Access::Usual) {
            Ok(()) => true,
            Err(DiskFault::Exists { .. }) => false,
            Err(fault) => return Err(fault.into()),
        };
        let back = match disk.read(path, zip::MAX_BYTES) {
            Err(DiskFault::TooLarge { .. }) => Vec::new(),
            other => other?,
        };
        match (back == bytes, fresh) {
            (true, _) => Ok(()),
            (false, true) => Err(HandInFault::ReadBack(path.to_owned())),
            (false, false) => Err(HandInFault::Other(path.to_owned())),
        }
    }

    /// Reads the receipts in a folder and in its folder of records.
    fn strike_off(&self, from: &Path) -> Result<HandedIn, HandInFault> {
        let mut done = HandedIn::default();
        let office = self.office()?;
        let offices: Vec<PublicKey> = office.into_iter().collect();
        let waiting = self.waiting()?;
        for folder in [from.to_owned(), from.join(ON_STICK)] {
            for found in receipt::find(self.ports.disk.as_ref(), &folder, &offices)? {
                match found.receipt {
                    Ok(receipt) => {
                        for one in &waiting {
                            if receipt.lines.iter().any(|l| l.id == one.id && l.digest == one.digest) {
                                self.archived(one)?;
                            }
                        }
                    }
                    Err(ReceiptFault::UnknownOffice { .. }) if office.is_none() => {
                        done.unknown = done.unknown.or_else(|| self.signer(&found.path));
                    }
                    Err(fault) => done.refused.push((found.path, fault.to_string())),
                }
            }
        }
        done.archived = waiting.len().saturating_sub(self.waiting()?.len());
        Ok(done)
    }

    fn signer(&self, path: &Path) -> Option<PublicKey> {
        let disk = self.ports.disk.as_ref();
        let signature = disk.read(&receipt::signature_of(path), SMALL_CAP).ok()?;
        receipt::signer(&disk.read(path, zip::MAX_BYTES).ok()?, &signature)
    }

    fn archived(&self, one: &Waiting) -> Result<(), DiskFault> {
        self.ports.disk.remove(&self.dir().join(OUTBOX).join(one.id.to_string()))
    }
}
