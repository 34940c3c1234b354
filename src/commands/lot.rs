//! `sendoff lot`: starts a lot folder of one's own and adds units to it. What is there is never overwritten.

mod args;
mod copy;
mod lists;
mod new;
mod places;
mod sections;
mod sheet;
mod unit;
mod wish;
mod words;

use std::path::Path;

pub use args::LotArgs;

use super::{COULD_NOT_RUN, Console, GOOD};
use crate::ports::{Access, Disk, Ports};
use args::LotAction;

/// Why nothing was written: the text says what to do.
type Refusal = String;

pub(super) fn run(args: &LotArgs, ports: &Ports, console: &mut Console) -> u8 {
    let disk = ports.disk.as_ref();
    let done = match &args.action {
        LotAction::New { dir, name } => new::run(disk, dir, name, console),
        LotAction::AddUnit(wanted) => match args.places.lot.as_deref() {
            Some(lot) => unit::run(disk, lot, wanted, console),
            None => {
                Err("say which lot gets the unit: --lot DIR (`sendoff lot new DIR` starts one)".to_owned())
            }
        },
    };
    match done {
        Ok(()) => GOOD,
        Err(why) => {
            console.complain(why);
            COULD_NOT_RUN
        }
    }
}

/// Writes a file that must not be there yet, and its folder.
fn write(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> Result<(), Refusal> {
    if let Some(folder) = path.parent() {
        disk.make_dir(folder).map_err(|e| e.to_string())?;
    }
    disk.put_new(path, bytes, Access::Usual).map_err(|e| e.to_string())
}
