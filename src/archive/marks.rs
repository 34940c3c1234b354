//! High-water marks: the last record that the office has seen of each chain, signed by the office. A chain cannot
//! show by itself that its end was cut off; a mark does.
//!
//! A mark is one file, its text and then the signature over it:
//!
//! ```text
//! Sendoff high-water mark, format 1
//! Record: t2-5f3a9c-000123
//! Digest: 9f86d081...0f00a08
//! Received: 2026-06-12T18:00:00Z
//! -----BEGIN SSH SIGNATURE-----
//! ```

use jiff::Timestamp;

use super::{MARKS, Store};
use crate::ports::DiskFault;
use crate::record::keys::{CHECKPOINT, PublicKey, SealFile, TabletKey};
use crate::record::receipt::{ReceiptFault, whole_second};
use crate::record::seal::{Digest, RecordId};

const CAP: u64 = 8192;
const HEAD: &str = "Sendoff high-water mark, format 1\n";
const BEGIN: &str = "-----BEGIN SSH SIGNATURE-----";

/// The last record seen of a chain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mark {
    /// Its id, in which tablet and key stand.
    pub id: RecordId,
    /// Its digest.
    pub digest: Digest,
    /// When it was received.
    pub at: Timestamp,
}

impl Mark {
    fn text(&self) -> String {
        format!("{HEAD}Record: {}\nDigest: {}\nReceived: {}\n", self.id, self.digest, self.at)
    }

    fn parse(text: &str) -> Option<Self> {
        let mut lines = text.strip_prefix(HEAD)?.lines();
        let id = lines.next()?.strip_prefix("Record: ")?.parse().ok()?;
        let digest = lines.next()?.strip_prefix("Digest: ")?.parse().ok()?;
        let at = whole_second(lines.next()?.strip_prefix("Received: ")?)?;
        let mark = Self { id, digest, at };
        (mark.text() == text).then_some(mark)
    }
}

/// The name of the mark of a record's chain.
pub(super) fn name_of(id: &RecordId) -> String {
    format!("{MARKS}/{}-{}", id.tablet(), id.key())
}

/// Reads a mark. `Ok(None)` when there is none; the text of an error says what is wrong with it.
pub(super) fn read(
    store: &dyn Store,
    name: &str,
    offices: &[PublicKey],
) -> Result<Result<Option<Mark>, String>, DiskFault> {
    Ok(match signed(store, name, offices)? {
        Signed::None => Ok(None),
        Signed::Bad(why) => Err(why),
        Signed::Text(text) => of_chain(name, &text).map(Some),
    })
}

fn of_chain(name: &str, text: &str) -> Result<Mark, String> {
    let mark = Mark::parse(text).ok_or("its text is not that of a mark")?;
    if name_of(&mark.id) == name { Ok(mark) } else { Err("it is the mark of another chain".to_owned()) }
}

/// A file that holds a text and the office's signature over it.
pub(super) enum Signed {
    /// There is none.
    None,
    /// The text, if the signature holds.
    Text(String),
    /// What is wrong with it.
    Bad(String),
}

/// Reads a text that the office signed.
pub(super) fn signed(store: &dyn Store, name: &str, offices: &[PublicKey]) -> Result<Signed, DiskFault> {
    let bytes = match store.read(name, CAP) {
        Ok(bytes) => bytes,
        Err(fault) if fault.is_missing() => return Ok(Signed::None),
        Err(DiskFault::TooLarge { .. }) => return Ok(Signed::Bad("it is too large for a mark".to_owned())),
        Err(fault) => return Err(fault),
    };
    Ok(judge(&bytes, offices).map_or_else(Signed::Bad, Signed::Text))
}

fn judge(bytes: &[u8], offices: &[PublicKey]) -> Result<String, String> {
    let text = std::str::from_utf8(bytes).map_err(|_| "it is not text".to_owned())?;
    let at = text.find(BEGIN).ok_or("it has no signature")?;
    let (text, signature) = text.split_at_checked(at).ok_or("it has no signature")?;
    let seal = SealFile::parse(signature.as_bytes()).map_err(|fault| fault.to_string())?;
    if !seal.is_sha256() || !seal.holds(CHECKPOINT, text.as_bytes()) {
        return Err("its signature does not fit its text".to_owned());
    }
    if !offices.contains(seal.public()) {
        return Err(format!(
            "it is signed by {}, which is not the office's key",
            seal.public().fingerprint()
        ));
    }
    Ok(text.to_owned())
}

/// Writes a text with the office's signature behind it.
pub(super) fn sign(
    store: &dyn Store,
    name: &str,
    text: &str,
    office: &TabletKey,
) -> Result<(), ReceiptFault> {
    let signature = office.sign(CHECKPOINT, text.as_bytes())?;
    Ok(store.replace(name, format!("{text}{signature}").as_bytes())?)
}

/// Sets a mark. The caller has seen that it does not go back.
pub(super) fn set(store: &dyn Store, mark: &Mark, office: &TabletKey) -> Result<(), ReceiptFault> {
    sign(store, &name_of(&mark.id), &mark.text(), office)
}
