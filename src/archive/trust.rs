//! Whom the archive trusts: `trust/allowed_signers`, as OpenSSH has it, and `trust/distrusted` beside it.
//! Tablets seal records; the office signs receipts and marks.

mod change;

pub use change::{Known, Standing};

use std::path::Path;

use super::{Archive, ArchiveFault, Store};
use crate::ports::Disk;
use crate::record::keys::{CHECKPOINT, NAMESPACE, PublicKey};
use crate::record::signers::{Signers, SignersFault, Trusted};

/// The list of tablets.
pub const ALLOWED: &str = "trust/allowed_signers";
/// The list of keys by which nothing is ever to be trusted.
pub const DISTRUSTED: &str = "trust/distrusted";
/// Whose the office's key is.
pub const OFFICE_NAME: &str = "office";
const CAP: u64 = 1 << 20;

/// Reads the lists; missing ones are empty.
pub(super) fn load(store: &dyn Store) -> Result<Signers, ArchiveFault> {
    let signers = Signers::parse(&text(store, ALLOWED)?).map_err(|fault| within(ALLOWED, fault))?;
    Ok(signers.distrust(&text(store, DISTRUSTED)?).map_err(|fault| within(DISTRUSTED, fault))?)
}

fn within(name: &str, fault: SignersFault) -> SignersFault {
    SignersFault::In { path: name.into(), fault: Box::new(fault) }
}

fn text(store: &dyn Store, name: &str) -> Result<String, ArchiveFault> {
    match store.read(name, CAP) {
        Ok(bytes) => Ok(String::from_utf8(bytes).map_err(|_| within(name, SignersFault::NotText))?),
        Err(fault) if fault.is_missing() => Ok(String::new()),
        Err(fault) => Err(fault.into()),
    }
}

/// Adds a line behind the others.
fn add_line(store: &dyn Store, name: &str, line: &str) -> Result<(), ArchiveFault> {
    let mut text = text(store, name)?;
    if !text.is_empty() && !text.ends_with('\n') {
        text.push('\n');
    }
    text.push_str(line);
    text.push('\n');
    Ok(store.replace(name, text.as_bytes())?)
}

/// Lists the office's key, unless it is there.
pub(super) fn list_office(store: &dyn Store, key: &PublicKey) -> Result<(), ArchiveFault> {
    if load(store)?.find(key).is_some() {
        return Ok(());
    }
    let line = format!("{OFFICE_NAME} namespaces=\"{CHECKPOINT}\" {}", key.to_openssh(OFFICE_NAME));
    add_line(store, ALLOWED, &line)
}

/// The keys that may sign receipts and marks.
pub(super) fn offices(signers: &Signers) -> Vec<PublicKey> {
    let may = |t: &&Trusted| t.tablet == OFFICE_NAME && t.may(CHECKPOINT) && !signers.is_distrusted(&t.key);
    signers.trusted().iter().filter(may).map(|t| t.key).collect()
}

fn has_tablets(signers: &Signers) -> bool {
    signers.trusted().iter().any(|t| t.may(NAMESPACE))
}

impl Archive {
    /// Takes a list of tablets as the archive's own while it has none. Later the same list may be named again;
    /// one that says otherwise is refused, since whom to trust is changed one tablet at a time.
    ///
    /// # Errors
    /// The list cannot be used, or says otherwise than the archive's own.
    pub fn adopt(&mut self, disk: &dyn Disk, path: &Path) -> Result<(), ArchiveFault> {
        let given = Signers::load(disk, path)?;
        if has_tablets(&self.signers) {
            let same = |t: &&Trusted| {
                self.signers.find(&t.key).is_some_and(|own| Trusted { line: t.line, ..own.clone() } == **t)
            };
            let other = given.trusted().iter().find(|t| t.may(NAMESPACE) && !same(t));
            return other.map_or(Ok(()), |t| {
                Err(ArchiveFault::OtherSigners { path: path.to_owned(), tablet: t.tablet.clone() })
            });
        }
        let _held = self.take_lock()?;
        let store = self.store();
        let own = text(store, ALLOWED)?;
        let listed = self.signers.clone();
        let mut lines = String::new();
        for line in String::from_utf8_lossy(&disk.read(path, CAP)?).lines() {
            // The office's own line may stand in both.
            let known = Signers::parse(line)
                .is_ok_and(|one| one.trusted().iter().any(|t| listed.find(&t.key).is_some()));
            if !known {
                lines.push_str(line);
                lines.push('\n');
            }
        }
        store.replace(ALLOWED, format!("{lines}{own}").as_bytes())?;
        let lost: Vec<String> = given.distrusted().map(|key| format!("{}\n", key.to_openssh(""))).collect();
        if !lost.is_empty() {
            store.replace(DISTRUSTED, lost.concat().as_bytes())?;
        }
        self.signers = load(self.store())?;
        Ok(())
    }

    /// Whether a tablet is trusted at all.
    ///
    /// # Errors
    /// [`ArchiveFault::NoTablets`].
    pub fn need_tablets(&self) -> Result<(), ArchiveFault> {
        if has_tablets(&self.signers) { Ok(()) } else { Err(ArchiveFault::NoTablets) }
    }
}
