//! Opens the window, or says why it cannot be opened and what to do.

use std::path::Path;
use std::sync::Arc;

use super::context::Settings;
use super::run::World;
use super::{guard, program, staff_reader, theme};
use crate::ports::Ports;
use crate::script::Bundle;
use crate::tablet::{TabletFault, usable};

/// Why the kiosk did not start, or ended.
#[derive(Debug, thiserror::Error)]
pub enum StartFault {
    /// There is no display, or something that a window needs is missing.
    #[error("{0}")]
    NoWindow(String),
    /// Scripts, settings or key cannot be used.
    #[error(transparent)]
    Tablet(#[from] TabletFault),
    /// The window system ended it.
    #[error("the window cannot be opened: {0}; `sendoff rehearse` needs none")]
    Window(String),
}

/// Opens the kiosk and stays until it is closed.
///
/// # Errors
/// See [`StartFault`].
pub fn start(
    ports: &Ports,
    bundle: Bundle,
    data: &Path,
    environment: &[(&'static str, String)],
) -> Result<(), StartFault> {
    guard::window(environment, |path| ports.disk.read(path, 0).is_ok_and(|_| true) || exists(ports, path))
        .map_err(|why| StartFault::NoWindow(why.to_string()))?;
    let lot = Arc::new(usable(bundle)?);
    let world = Arc::new(World::open(ports.clone(), data.to_owned(), false)?);
    theme::fonts::prepare();
    let settings = Settings::new(staff_reader(&lot));
    program(world, lot, settings).run().map_err(|e| StartFault::Window(e.to_string()))
}

/// Whether a file is there, whatever its size.
fn exists(ports: &Ports, path: &Path) -> bool {
    matches!(ports.disk.read(path, 0), Err(crate::ports::DiskFault::TooLarge { .. }))
}
