//! The receipt that the office leaves beside what it took in: which records, and when.
//!
//! A tablet believes a receipt only if the office's own key signed it, and only for the digests in it.
//! The text is a file, its signature lies beside it as `<file>.sig` and is what `ssh-keygen -Y sign` writes:
//!
//! ```text
//! Sendoff receipt, format 1
//! Office: SHA256:...
//! Written: 2026-06-12T18:00:00Z
//! Records: 1
//! These records are in the archive of the office. A line each: received, digest, record.
//!
//! 2026-06-12T18:00:00Z 9f86d081...0f00a08 t2-5f3a9c-000001
//! ```

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use super::keys::{CHECKPOINT, KeyFault, PublicKey, SealFile, TabletKey};
use super::seal::{Digest, RecordId};
use crate::ports::{Access, Disk, DiskFault};

/// How the names of receipts begin.
pub const PREFIX: &str = "sendoff-receipt-";
/// How the names of receipts end.
pub const SUFFIX: &str = ".txt";
/// What is put behind a file's name for its signature.
pub const SIGNATURE: &str = ".sig";

/// A receipt for half a million records.
const CAP: u64 = 64 << 20;
const SIGNATURE_CAP: u64 = 4096;
const HEAD: &str = "Sendoff receipt, format 1";
const EXPLAINED: &str =
    "These records are in the archive of the office. A line each: received, digest, record.";

/// One record that the office has.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Line {
    /// Its id.
    pub id: RecordId,
    /// Its digest.
    pub digest: Digest,
    /// When the office received it, to the second.
    pub at: Timestamp,
}

/// What an office confirms.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Receipt {
    /// The office's key.
    pub office: PublicKey,
    /// When it was written, to the second.
    pub written: Timestamp,
    /// The records, sorted by id.
    pub lines: Vec<Line>,
}

/// Why a receipt is not believed.
#[derive(Debug, Clone, thiserror::Error)]
pub enum ReceiptFault {
    /// The text is not that of a receipt.
    #[error("line {line} is not as a receipt has it")]
    Form {
        /// The line, from 1.
        line: usize,
    },
    /// Text and signature do not fit each other.
    #[error("its signature does not hold: {why}")]
    Signature {
        /// What is wrong.
        why: String,
    },
    /// Signed by a key that is not the office's.
    #[error("it is signed by {fingerprint}, which is not the key of the office known here")]
    UnknownOffice {
        /// The key that signed it.
        fingerprint: String,
    },
    /// It could not be signed.
    #[error(transparent)]
    Key(#[from] KeyFault),
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
}

/// A receipt that lies in a folder.
#[derive(Debug, Clone)]
pub struct Found {
    /// Its text file.
    pub path: PathBuf,
    /// What it confirms, or why it is not believed.
    pub receipt: Result<Receipt, ReceiptFault>,
}

impl Receipt {
    /// Its text: one spelling only.
    #[must_use]
    pub fn text(&self) -> String {
        let mut text = format!(
            "{HEAD}\nOffice: {}\nWritten: {}\nRecords: {}\n{EXPLAINED}\n\n",
            self.office.fingerprint(),
            self.written,
            self.lines.len()
        );
        for line in &self.lines {
            text.push_str(&format!("{} {} {}\n", line.at, line.digest, line.id));
        }
        text
    }

    /// Reads text and signature, and believes them only if one of `offices` signed.
    ///
    /// # Errors
    /// See [`ReceiptFault`].
    pub fn read(text: &[u8], signature: &[u8], offices: &[PublicKey]) -> Result<Self, ReceiptFault> {
        let bad = |why: &str| ReceiptFault::Signature { why: why.to_owned() };
        let seal = SealFile::parse(signature).map_err(|fault| bad(&fault.to_string()))?;
        if !offices.contains(seal.public()) {
            return Err(ReceiptFault::UnknownOffice { fingerprint: seal.public().fingerprint() });
        }
        if !seal.is_sha256() || !seal.holds(CHECKPOINT, text) {
            return Err(bad("it does not fit the text"));
        }
        let text = std::str::from_utf8(text).map_err(|_| ReceiptFault::Form { line: 1 })?;
        Self::parse(text, *seal.public())
    }

    fn parse(text: &str, office: PublicKey) -> Result<Self, ReceiptFault> {
        let mut lines = Vec::new();
        let written = text.lines().nth(2).and_then(|line| whole_second(line.strip_prefix("Written: ")?));
        let written = written.ok_or(ReceiptFault::Form { line: 3 })?;
        for (at, line) in text.lines().enumerate().skip(6) {
            lines.push(parse_line(line).ok_or(ReceiptFault::Form { line: at + 1 })?);
        }
        let receipt = Self { office, written, lines };
        let again = receipt.text();
        if again == text {
            return Ok(receipt);
        }
        let differs = again.lines().zip(text.lines()).position(|(ours, theirs)| ours != theirs);
        Err(ReceiptFault::Form { line: differs.map_or(again.lines().count(), |at| at + 1) })
    }

    /// Writes it beside what it speaks of, signed, under a name that is free. Nothing is replaced.
    ///
    /// # Errors
    /// The disk refuses, as a read-only stick does.
    pub fn write(&self, disk: &dyn Disk, dir: &Path, key: &TabletKey) -> Result<PathBuf, ReceiptFault> {
        let text = self.text();
        let signature = key.sign(CHECKPOINT, text.as_bytes())?;
        let stamp = self.written.strftime("%Y%m%dT%H%M%SZ").to_string();
        let mut number = 1_u32;
        loop {
            let again = if number == 1 { String::new() } else { format!("-{number}") };
            let path = dir.join(format!("{PREFIX}{stamp}{again}{SUFFIX}"));
            match disk.put_new(&path, text.as_bytes(), Access::Usual) {
                Ok(()) => {
                    disk.put_new(&signature_of(&path), signature.as_bytes(), Access::Usual)?;
                    return Ok(path);
                }
                Err(DiskFault::Exists { .. }) if number < 100 => number += 1,
                Err(fault) => return Err(fault.into()),
            }
        }
    }
}

/// Where the signature of a file lies.
#[must_use]
pub fn signature_of(path: &Path) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(SIGNATURE);
    PathBuf::from(name)
}

/// The receipts that lie in a folder, each read or with the reason why it is not believed.
///
/// # Errors
/// The folder cannot be read.
pub fn find(disk: &dyn Disk, dir: &Path, offices: &[PublicKey]) -> Result<Vec<Found>, DiskFault> {
    let names = disk.list(dir)?;
    let named = names.iter().filter(|name| name.starts_with(PREFIX) && name.ends_with(SUFFIX));
    let read = |path: &Path| {
        let text = disk.read(path, CAP)?;
        let signature = disk.read(&signature_of(path), SIGNATURE_CAP)?;
        Receipt::read(&text, &signature, offices)
    };
    Ok(named
        .map(|name| {
            let path = dir.join(name);
            let receipt = read(&path);
            Found { path, receipt }
        })
        .collect())
}

/// The key that signed a receipt, whoever it is; for showing its fingerprint to staff.
#[must_use]
pub fn signer(text: &[u8], signature: &[u8]) -> Option<PublicKey> {
    let seal = SealFile::parse(signature).ok()?;
    (seal.is_sha256() && seal.holds(CHECKPOINT, text)).then(|| *seal.public())
}

/// The digests that receipts confirm.
#[must_use]
pub fn confirmed(receipts: &[Receipt]) -> BTreeSet<Digest> {
    receipts.iter().flat_map(|receipt| receipt.lines.iter().map(|line| line.digest)).collect()
}

fn parse_line(line: &str) -> Option<Line> {
    let mut parts = line.splitn(3, ' ');
    let (at, digest, id) = (parts.next()?, parts.next()?, parts.next()?);
    Some(Line { id: id.parse().ok()?, digest: digest.parse().ok()?, at: whole_second(at)? })
}

/// A time in the one spelling `2026-06-12T18:00:00Z`.
#[must_use]
pub fn whole_second(text: &str) -> Option<Timestamp> {
    let at: Timestamp = text.parse().ok()?;
    (at.to_string() == text && at.subsec_nanosecond() == 0).then_some(at)
}

/// The same time without parts of a second.
#[must_use]
pub fn to_second(at: Timestamp) -> Timestamp {
    Timestamp::from_second(at.as_second()).unwrap_or(at)
}
