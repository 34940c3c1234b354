//! `sendoff archive`: takes records in, proves them, copies them out.

mod args;
mod import;

pub use args::{ArchiveAction, ArchiveArgs, ImportArgs};

use super::Console;
use crate::ports::Ports;

pub(super) fn run(args: &ArchiveArgs, ports: &Ports, console: &mut Console) -> u8 {
    match &args.action {
        ArchiveAction::Import(import) => import::run(import, ports, console),
    }
}
