//! Opens the window, or says why it cannot be opened and what to do.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use iced::futures::channel::oneshot::{Receiver, channel};

use super::context::Settings;
use super::edit::Edit;
use super::effect::Effect;
use super::entry::{self, Found, Reading};
use super::run::{self, World};
use super::theme::{self, Wishes};
use super::{guard, preferences, staff_reader};
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
    /// What reads it ended early.
    #[error("lot and tablet could not be read to their end; nothing was changed; start it again")]
    Reading,
}

/// Gives the files of the lot.
pub type Gather = Box<dyn FnOnce() -> Bundle + Send>;

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
    bundle: Gather,
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
    // A path that was mistyped is told before there is a window.
    if let Some(dir) = &folders.archive {
        let _ = Archive::open(Arc::clone(&ports.disk), dir)?;
    }
    let fault = entry::once(None);
    let letters = Arc::new(AtomicBool::new(false));
    let reading = Reading {
        wishes: kept_look(ports, &folders.data),
        full_screen: !windowed,
        letters: Arc::clone(&letters),
        fault: Arc::clone(&fault),
        told: None,
    };
    let found = beside(ports.clone(), bundle, folders, (edit.map(Path::to_owned), windowed), letters);
    let ended = guard::run(|| entry::program(reading, found).run());
    // Why nothing came to stand in the window matters more than how the window ended.
    entry::take(&fault).map_or(Ok(()), Err)?;
    Ok(ended?)
}

/// Reads all that the kiosk starts with, beside the window that opens meanwhile.
fn beside(
    ports: Ports,
    bundle: Gather,
    folders: Folders,
    how: (Option<PathBuf>, bool),
    letters: Arc<AtomicBool>,
) -> Receiver<Result<Found, StartFault>> {
    let (sender, receiver) = channel();
    // The machine's letters take about as long to find as the lot to read. The window and the server that shows it
    // have work enough for two cores.
    let many = std::thread::available_parallelism().is_ok_and(|cores| cores.get() > 2);
    let find = move || {
        theme::fonts::prepare();
        letters.store(true, Ordering::Release);
    };
    let work = move || {
        let other = many.then(|| std::thread::Builder::new().spawn(find.clone()));
        let found = read(&ports, bundle, folders, how);
        match other {
            Some(Ok(other)) => drop(other.join()),
            _ => find(),
        }
        // A window that was closed meanwhile waits for nothing.
        let _ = sender.send(found);
    };
    // Without a thread the sender goes, and the window tells that nothing was read.
    drop(std::thread::Builder::new().name("start".to_owned()).spawn(work));
    receiver
}

fn read(
    ports: &Ports,
    bundle: Gather,
    folders: Folders,
    (edit, windowed): (Option<PathBuf>, bool),
) -> Result<Found, StartFault> {
    let Folders { data, archive } = folders;
    let lot = Arc::new(usable(bundle())?);
    let world = Arc::new(World::open(ports.clone(), data, false)?.with_archive(archive));
    let settings = Settings { full_screen: !windowed, ..Settings::new(staff_reader(&lot)) };
    let edit = match edit {
        Some(dir) => Edit::watch(&lot, dir),
        None => Edit::still(&lot),
    };
    let listed = world.tablet().is_some().then(|| run::perform(&world, &lot, Effect::ListWalks));
    Ok(Found { world, lot, settings, edit, listed })
}

/// The look that was kept, as far as it can be told before the lot is read.
fn kept_look(ports: &Ports, data: &Path) -> Wishes {
    let text = ports.disk.read(&data.join(preferences::FILE), preferences::CAP).unwrap_or_default();
    preferences::look(&String::from_utf8_lossy(&text))
}

/// Whether a file or folder is there.
fn exists(ports: &Ports, path: &Path) -> bool {
    ports.disk.is_dir(path) || matches!(ports.disk.read(path, 0), Ok(_) | Err(DiskFault::TooLarge { .. }))
}
