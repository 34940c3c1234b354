//! The office's own key: it signs receipts and high-water marks, never records.

use std::path::Path;

use super::{ArchiveFault, Store, trust};
use crate::ports::Ports;
use crate::record::keys::{self, KeyFault, TabletKey};

/// The private key.
pub const OFFICE: &str = "keys/office";
/// The public key: what a tablet is given, so that it believes the office's receipts.
pub const OFFICE_PUBLIC: &str = "keys/office.pub";
const KEY_CAP: u64 = 64 << 10;

/// Makes the key where there is none, and lists it among the signers.
pub(super) fn ensure(ports: &Ports, store: &dyn Store, dir: &Path) -> Result<TabletKey, ArchiveFault> {
    let key = match load(store) {
        Ok(key) => key,
        Err(ArchiveFault::Key(KeyFault::Disk(fault))) if fault.is_missing() => {
            let path = OFFICE.split('/').fold(dir.to_owned(), |path, part| path.join(part));
            keys::create_as(ports.disk.as_ref(), ports.entropy.as_ref(), &path, trust::OFFICE_NAME, None)?
        }
        Err(fault) => return Err(fault),
    };
    // A crash may have come between the two files of a key.
    match store.create(
        OFFICE_PUBLIC,
        format!("{}\n", key.public().to_openssh(trust::OFFICE_NAME)).as_bytes(),
        crate::ports::Access::Usual,
    ) {
        Ok(()) | Err(crate::ports::DiskFault::Exists { .. }) => {}
        Err(fault) => return Err(fault.into()),
    }
    trust::list_office(store, key.public())?;
    Ok(key)
}

pub(super) fn load(store: &dyn Store) -> Result<TabletKey, ArchiveFault> {
    let bytes = store.read(OFFICE, KEY_CAP).map_err(KeyFault::from)?;
    Ok(TabletKey::from_openssh(&bytes, None)?)
}
