//! The commands: everything Sendoff does without its window.
//!
//! Each writes to the [`Console`] it is given and returns an exit code: [`GOOD`], [`FINDINGS`] when something
//! is wrong with what was looked at, [`COULD_NOT_RUN`] when nothing could be looked at.

mod archive;
mod check;
mod cli;
mod figures;
mod keys;
mod lot;
mod preview;
pub mod rehearse;
mod verify;

use std::fmt::Display;
use std::io::{IsTerminal as _, Write};
use std::path::{Path, PathBuf};

pub use cli::{Cli, Command, Places, Task};

use crate::archive::{Archive, ArchiveFault};
use crate::ports::Ports;
use crate::script::{Bundle, BundleFault};

/// All is well.
pub const GOOD: u8 = 0;
/// Something is wrong with what was looked at.
pub const FINDINGS: u8 = 1;
/// The command could not run.
pub const COULD_NOT_RUN: u8 = 2;

/// Where a command writes.
pub struct Console {
    out: Box<dyn Write>,
    err: Box<dyn Write>,
    /// Whether someone watches: only then is it told how far a long command is.
    watched: bool,
}

impl std::fmt::Debug for Console {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Console")
    }
}

impl Console {
    /// The streams of the process.
    #[must_use]
    pub fn system() -> Self {
        let watched = std::io::stderr().is_terminal();
        Self { out: Box::new(std::io::stdout()), err: Box::new(std::io::stderr()), watched }
    }

    /// Streams of the caller's choice.
    #[must_use]
    pub fn new(out: Box<dyn Write>, err: Box<dyn Write>) -> Self {
        Self { out, err, watched: false }
    }

    /// Writes a line of the result. A reader that has gone away is no fault.
    pub fn say(&mut self, line: impl Display) {
        let _ = writeln!(self.out, "{line}");
    }

    /// Writes a line about how far it is, beside the result.
    pub fn tell(&mut self, line: impl Display) {
        let _ = writeln!(self.err, "{line}");
    }

    /// Says on the last line how far it is, if someone watches; an empty text wipes the line.
    pub fn progress(&mut self, text: impl Display) {
        if self.watched {
            let _ = write!(self.err, "\r{text}\u{1b}[K");
            let _ = self.err.flush();
        }
    }

    /// Writes a line about what went wrong.
    pub fn complain(&mut self, line: impl Display) {
        let _ = writeln!(self.err, "sendoff: {line}");
    }
}

/// What a command needs to know of the environment: names and values.
pub type Environment = [(&'static str, String)];

/// Runs a command.
pub fn run(command: &Command, ports: &Ports, environment: &Environment, console: &mut Console) -> u8 {
    match command {
        Command::Check(args) => check::run(args, ports, console),
        Command::Figures(args) => figures::run(args, ports, console),
        Command::Preview(args) => preview::run(args, ports, console),
        Command::Rehearse(args) => rehearse::run(args, ports, console),
        Command::Verify(args) => verify::run(args, ports, console),
        Command::Keys(args) => keys::run(args, ports, environment, console),
        Command::Archive(args) => archive::run(args, ports, console),
        Command::Lot(args) => lot::run(args, ports, console),
    }
}

/// The scripts of a lot folder, or of the demo lot when none is named.
///
/// # Errors
/// The folder holds no lot or cannot be read.
pub fn bundle(ports: &Ports, lot: Option<&Path>) -> Result<Bundle, BundleFault> {
    lot.map_or_else(|| Ok(Bundle::demo()), |dir| Bundle::read(ports.disk.as_ref(), dir))
}

/// The archive in a folder, or a new one, which is told.
fn archive_at(ports: &Ports, dir: &Path, console: &mut Console) -> Result<Archive, ArchiveFault> {
    let new = !Archive::is_at(ports.disk.as_ref(), dir);
    let archive = Archive::open_or_create(ports, dir)?;
    if new {
        console.tell(format!("a new archive was made in {}", dir.display()));
    }
    Ok(archive)
}

/// The data folder: the one named, else the user's.
///
/// # Errors
/// None is named, and the environment names no home; the text says what to do.
pub fn data_folder(named: Option<&Path>, environment: &Environment) -> Result<PathBuf, String> {
    let of = |name: &str| environment.iter().find(|(n, _)| *n == name).map(|(_, v)| PathBuf::from(v));
    named
        .map(Path::to_owned)
        .or_else(|| of("XDG_DATA_HOME").map(|d| d.join("sendoff")))
        .or_else(|| of("HOME").map(|d| d.join(".local/share/sendoff")))
        .ok_or_else(|| "there is no home folder to keep data in; name one with --data DIR".to_owned())
}
