//! What was not taken: kept byte for byte beside a text that says why. Nothing here is ever removed.

use std::path::Path;

use jiff::Timestamp;

use super::{QUARANTINE, Store};
use crate::ports::{Access, DiskFault};
use crate::record::seal::Digest;

const NAME_MAX: usize = 80;

/// Keeps bytes and reason. The same bytes under the same name are kept once.
///
/// The answer is the name in the archive.
pub(super) fn keep(
    store: &dyn Store,
    from: &Path,
    bytes: &[u8],
    why: &str,
    code: &str,
    at: Timestamp,
) -> Result<String, DiskFault> {
    let stem = from.file_stem().map_or_else(String::new, |stem| stem.to_string_lossy().into_owned());
    let plain = |c: char| if c.is_ascii_alphanumeric() || "._-".contains(c) { c } else { '_' };
    let stem: String = stem.trim_start_matches('.').chars().map(plain).take(NAME_MAX).collect();
    let digest = Digest::of(bytes).to_string();
    let short: String = digest.chars().take(8).collect();
    let name = format!("{QUARANTINE}/{stem}-{short}");
    // The text goes first, so that no file lies there without its reason.
    let text = format!(
        "This file was not taken into the archive.\n\nReason: {why}\nCode: {code}\nCame from: {}\nLooked at: {at}\nSHA-256: {digest}\n\n\
         The original was left where it is. Once the reason is gone, import the file again.\n",
        from.display()
    );
    store.replace(&format!("{name}.txt"), text.as_bytes())?;
    let zip = format!("{name}.zip");
    match store.create(&zip, bytes, Access::Usual) {
        Ok(()) | Err(DiskFault::Exists { .. }) => Ok(zip),
        Err(fault) => Err(fault),
    }
}
