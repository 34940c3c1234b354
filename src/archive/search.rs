//! Finding what looks like records below a path: ZIP files, and bags that were unpacked.

use std::path::{Path, PathBuf};

use crate::ports::Disk;
use crate::record::bag;

/// Folders within folders.
const MAX_DEPTH: usize = 16;

/// Something that may be a record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Place {
    /// A ZIP file.
    Zip(PathBuf),
    /// An unpacked bag.
    Bag(PathBuf),
    /// A folder that cannot be looked through, and why.
    Closed(PathBuf, String),
}

impl Place {
    pub(super) fn path(&self) -> &Path {
        match self {
            Self::Zip(path) | Self::Bag(path) | Self::Closed(path, _) => path,
        }
    }
}

/// Goes through what lies at a path, in the order of names. A file is taken for a ZIP file whatever its name;
/// in folders only those named `.zip` are. Hidden names are passed over.
pub(super) fn each<E>(
    disk: &dyn Disk,
    given: &Path,
    found: &mut dyn FnMut(Place) -> Result<(), E>,
) -> Result<(), E> {
    if disk.is_dir(given) { folder(disk, given, 0, found) } else { found(Place::Zip(given.to_owned())) }
}

fn folder<E>(
    disk: &dyn Disk,
    dir: &Path,
    depth: usize,
    found: &mut dyn FnMut(Place) -> Result<(), E>,
) -> Result<(), E> {
    let names = match disk.list(dir) {
        Ok(names) => names,
        Err(fault) => return found(Place::Closed(dir.to_owned(), fault.to_string())),
    };
    // A bag that lost its declaration is still a bag that was tampered with.
    if names.iter().any(|name| bag::TAG_FILES.contains(&name.as_str())) {
        return found(Place::Bag(dir.to_owned()));
    }
    for name in names.iter().filter(|name| !name.starts_with('.')) {
        let path = dir.join(name);
        if !disk.is_dir(&path) {
            if path.extension().is_some_and(|end| end.eq_ignore_ascii_case("zip")) {
                found(Place::Zip(path))?;
            }
        } else if depth == MAX_DEPTH {
            let why = format!("folders lie more than {MAX_DEPTH} deep here; give this one by itself");
            found(Place::Closed(path, why))?;
        } else {
            folder(disk, &path, depth + 1, found)?;
        }
    }
    Ok(())
}
