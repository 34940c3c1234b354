//! Bags in folders, read through the disk port: every file, bounded in number, size and depth.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use crate::ports::{Disk, DiskFault};
use crate::record::{bag, zip};

/// Folders within folders, as `records/<yyyy>/<mm>`.
pub(super) const MAX_DEPTH: usize = 16;
/// Links can make a folder hold itself in many ways.
const MAX_FOLDERS: usize = 100_000;

/// An unpacked bag.
#[derive(Debug)]
pub struct Bag {
    /// Name of its folder, where the path says it.
    pub name: Option<String>,
    /// Its files by their names inside the folder, with `/` between the parts.
    pub files: BTreeMap<String, Vec<u8>>,
}

/// Why a folder cannot be read as a bag.
#[derive(Debug, Clone, thiserror::Error)]
pub enum FolderFault {
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// More than a record may have.
    #[error("{} holds more than a record: at most {} files, {} bytes and {MAX_DEPTH} folders deep", dir.display(), zip::MAX_ENTRIES, zip::MAX_BYTES)]
    TooMuch {
        /// The folder.
        dir: PathBuf,
    },
}

/// Reads all files of a folder.
///
/// # Errors
/// See [`FolderFault`].
pub fn read(disk: &dyn Disk, dir: &Path) -> Result<Bag, FolderFault> {
    let too_much = || FolderFault::TooMuch { dir: dir.to_owned() };
    let mut files = BTreeMap::new();
    let mut room = zip::MAX_BYTES;
    let mut open = vec![(dir.to_owned(), String::new(), 0)];
    while let Some((folder, prefix, depth)) = open.pop() {
        for name in disk.list(&folder)? {
            let (path, inside) = (folder.join(&name), format!("{prefix}{name}"));
            if disk.is_dir(&path) {
                if depth == MAX_DEPTH || open.len() == zip::MAX_ENTRIES {
                    return Err(too_much());
                }
                open.push((path, format!("{inside}/"), depth + 1));
                continue;
            }
            let bytes = match disk.read(&path, room) {
                Err(DiskFault::TooLarge { .. }) => return Err(too_much()),
                other => other?,
            };
            room = room.saturating_sub(bytes.len() as u64);
            files.insert(inside, bytes);
            if files.len() > zip::MAX_ENTRIES {
                return Err(too_much());
            }
        }
    }
    Ok(Bag { name: dir.file_name().map(|name| name.to_string_lossy().into_owned()), files })
}

/// Something to be judged.
#[derive(Debug)]
pub(super) enum Place {
    Zip(PathBuf),
    Bag(PathBuf),
    TooDeep(PathBuf),
}

/// What a path given by hand holds. The error is in words for a verdict.
pub(super) fn find(disk: &dyn Disk, given: &Path) -> Result<Vec<Place>, String> {
    if !disk.is_dir(given) {
        return Ok(vec![Place::Zip(given.to_owned())]);
    }
    let mut places = Vec::new();
    let mut room = MAX_FOLDERS;
    search(disk, given, 0, &mut room, &mut places)?;
    if places.is_empty() { Err("the folder holds neither records nor a bag".to_owned()) } else { Ok(places) }
}

fn search(
    disk: &dyn Disk,
    dir: &Path,
    depth: usize,
    room: &mut usize,
    places: &mut Vec<Place>,
) -> Result<(), String> {
    *room = room.checked_sub(1).ok_or_else(|| format!("there are more than {MAX_FOLDERS} folders in it"))?;
    let names = disk.list(dir).map_err(|fault| fault.to_string())?;
    // A bag that lost its declaration is still a bag that was tampered with.
    if names.iter().any(|name| bag::TAG_FILES.contains(&name.as_str())) {
        places.push(Place::Bag(dir.to_owned()));
        return Ok(());
    }
    for name in names.iter().filter(|name| !name.starts_with('.')) {
        let path = dir.join(name);
        if !disk.is_dir(&path) {
            if path.extension().is_some_and(|end| end.eq_ignore_ascii_case("zip")) {
                places.push(Place::Zip(path));
            }
        } else if depth == MAX_DEPTH {
            places.push(Place::TooDeep(path));
        } else {
            search(disk, &path, depth + 1, room, places)?;
        }
    }
    Ok(())
}
