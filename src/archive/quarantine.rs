//! What was not taken: kept byte for byte beside a text that says why. Nothing here is ever removed.

use std::path::Path;

use jiff::Timestamp;

use super::{Archive, QUARANTINE, Receipts, Store};
use crate::ports::{Access, DiskFault};
use crate::record::seal::Digest;
use crate::record::verify::Seen;

const NAME_MAX: usize = 80;
/// The longest text about a file.
const TEXT_CAP: u64 = 64 << 10;

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

/// A file that was not taken, as the text beside it tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Where it lies in the archive.
    pub path: String,
    /// Why, in words; empty where the text beside it is gone.
    pub why: String,
    /// The code of the reason.
    pub code: String,
    /// Where it came from.
    pub from: String,
    /// When it was looked at.
    pub at: Option<Timestamp>,
    /// The digest of the file.
    pub digest: String,
    /// Whether the record in it has been filed since.
    pub filed: bool,
}

impl Archive {
    /// How many files wait in quarantine, or have waited there: none is ever removed.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn quarantined(&self) -> Result<usize, DiskFault> {
        Ok(zips(self.store())?.count())
    }

    /// The files in quarantine with their reasons, the newest first and at most so many.
    ///
    /// # Errors
    /// The disk refuses a list.
    pub fn quarantine(
        &self,
        receipts: &Receipts,
        now: Timestamp,
        most: usize,
    ) -> Result<Vec<Kept>, DiskFault> {
        let mut all: Vec<Kept> = zips(self.store())?.map(|path| told(self.store(), path)).collect();
        all.sort_by(|a, b| b.at.cmp(&a.at).then_with(|| a.path.cmp(&b.path)));
        all.truncate(most);
        for one in &mut all {
            let Ok(bytes) = self.read(&one.path) else { continue };
            let seen = self.verify(&bytes, receipts, now).1.ok();
            let is_it = |seen: Seen| receipts.of(&seen.id).is_some_and(|own| own.digest == seen.digest);
            one.filed = seen.is_some_and(is_it);
        }
        Ok(all)
    }
}

fn zips(store: &dyn Store) -> Result<impl Iterator<Item = String> + use<>, DiskFault> {
    let names = store.list(QUARANTINE)?.into_iter().filter(|name| name.ends_with(".zip"));
    Ok(names.map(|name| format!("{QUARANTINE}/{name}")))
}

/// What the text beside a file says.
fn told(store: &dyn Store, path: String) -> Kept {
    let text = path.strip_suffix(".zip").map(|stem| format!("{stem}.txt"));
    let text = text.and_then(|name| store.read(&name, TEXT_CAP).ok()).unwrap_or_default();
    let text = String::from_utf8_lossy(&text);
    let line = |head: &str| text.lines().find_map(|line| line.strip_prefix(head)).unwrap_or_default();
    Kept {
        why: line("Reason: ").to_owned(),
        code: line("Code: ").to_owned(),
        from: line("Came from: ").to_owned(),
        at: line("Looked at: ").parse().ok(),
        digest: line("SHA-256: ").to_owned(),
        filed: false,
        path,
    }
}
