//! What steps take on this tablet, kept between walks.
//!
//! It is no more than a help: a file that is missing or cannot be read counts as nothing learned, and one that cannot
//! be written stops no sealing.

use std::path::Path;

use crate::ports::{Access, Disk, DiskFault};
use crate::source::{SourceFile, read};
use crate::walk::{Pace, Walk};

/// Its name in a data folder.
const FILE: &str = "pace.ron";
/// Largest that is read, in bytes: thousands of steps.
const CAP: u64 = 1 << 20;

/// What was learned so far.
#[must_use]
pub fn load(disk: &dyn Disk, data: &Path) -> Pace {
    let Ok(bytes) = disk.read(&data.join(FILE), CAP) else { return Pace::default() };
    let file = SourceFile::new(FILE, &String::from_utf8_lossy(&bytes));
    let (pace, faults) = read::<Pace>(&file);
    pace.filter(|pace| faults.is_empty() && pace.is_sound()).unwrap_or_default()
}

/// Learns from a walk that was handed over.
///
/// # Errors
/// The disk refuses; what was learned before still stands.
pub fn learn(disk: &dyn Disk, data: &Path, walk: &Walk) -> Result<(), DiskFault> {
    let mut pace = load(disk, data);
    pace.learn(walk);
    let Ok(text) = ron::ser::to_string_pretty(&pace, ron::ser::PrettyConfig::default()) else {
        return Ok(());
    };
    disk.replace(&data.join(FILE), text.as_bytes(), Access::Usual)
}
