//! Opens the window, or says why it cannot be opened and what to do.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::context::Settings;
use super::edit::Edit;
use super::run::World;
use super::{guard, program_with, staff_reader, theme};
use crate::archive::{Archive, ArchiveFault};
use crate::ports::{DiskFault, Ports};
use crate::script::Bundle;
use crate::tablet::{TabletFault, usable};

/// The loader's list of libraries.
const LOADER_CACHE: &str = "/etc/ld.so.cache";
/// Largest such list that is read, in bytes.
const LOADER_CACHE_CAP: u64 = 16 * 1024 * 1024;

/// Why the kiosk did not start, or ended.
#[derive(Debug, thiserror::Error)]
pub enum StartFault {
    /// There is no display, something that a window needs is missing, or the window ended.
    #[error(transparent)]
    Window(#[from] guard::StartFault),
    /// Scripts, settings or key cannot be used.
    #[error(transparent)]
    Tablet(#[from] TabletFault),
    /// The archive that was named cannot be used.
    #[error(transparent)]
    Archive(#[from] ArchiveFault),
}

/// Folders that the kiosk works in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Folders {
    /// What this tablet keeps.
    pub data: PathBuf,
    /// The office's archive, where this kiosk has one.
    pub archive: Option<PathBuf>,
}

/// Opens the kiosk and stays until it is closed. `edit` is the lot folder when it is to be read anew whenever it
/// changes; `windowed` leaves the rest of the screen to others.
///
/// # Errors
/// See [`StartFault`].
pub fn start(
    ports: &Ports,
    bundle: Bundle,
    folders: Folders,
    (edit, windowed): (Option<&Path>, bool),
    environment: &[(&'static str, String)],
) -> Result<(), StartFault> {
    let of = |name: &str| environment.iter().find(|(n, _)| *n == name).map(|(_, v)| v.as_str());
    let libraries = guard::Libraries {
        cache: ports.disk.read(Path::new(LOADER_CACHE), LOADER_CACHE_CAP).ok(),
        path: of("LD_LIBRARY_PATH").map(str::to_owned),
    };
    guard::start(of("DISPLAY"), of("WAYLAND_DISPLAY"), |name| {
        libraries.has(name, |path| exists(ports, path))
    })?;
    let Folders { data, archive } = folders;
    // A path that was mistyped is told before there is a window.
    if let Some(dir) = &archive {
        let _ = Archive::open(Arc::clone(&ports.disk), dir)?;
    }
    let lot = std::thread::scope(|scope| {
        // The machine's fonts take about as long to find as the lot to read.
        let fonts = std::thread::Builder::new().spawn_scoped(scope, theme::fonts::prepare);
        let lot = usable(bundle);
        if fonts.is_err() {
            theme::fonts::prepare();
        }
        lot
    })?;
    let lot = Arc::new(lot);
    let world = Arc::new(World::open(ports.clone(), data, false)?.with_archive(archive));
    let settings = Settings { full_screen: !windowed, ..Settings::new(staff_reader(&lot)) };
    let edit = match edit {
        Some(dir) => Edit::watch(&lot, dir.to_owned()),
        None => Edit::still(&lot),
    };
    Ok(guard::run(|| program_with(world, lot, settings, edit).run())?)
}

/// Whether a file or folder is there.
fn exists(ports: &Ports, path: &Path) -> bool {
    ports.disk.is_dir(path) || matches!(ports.disk.read(path, 0), Ok(_) | Err(DiskFault::TooLarge { .. }))
}
