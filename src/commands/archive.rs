//! `sendoff archive`: takes records in, proves them, copies them out.

mod args;
mod audit;
mod export;
mod import;
mod search;
mod table;

pub use args::{
    ArchiveAction, ArchiveArgs, AuditArgs, ExportArgs, ImportArgs, ListFormat, RebuildArgs, SearchArgs,
};

use super::Console;
use crate::ports::Ports;
use crate::script::EMBEDDED;
use crate::source::SourceFile;
use crate::words::Words;

pub(super) fn run(args: &ArchiveArgs, ports: &Ports, console: &mut Console) -> u8 {
    match &args.action {
        ArchiveAction::Import(import) => import::run(import, ports, console),
        ArchiveAction::Search(search) => search::run(search, ports, console),
        ArchiveAction::Rebuild(rebuild) => search::rebuild(rebuild, ports, console),
        ArchiveAction::Export(export) => export::run(export, ports, console),
        ArchiveAction::Audit(audit) => audit::run(audit, ports, console),
    }
}

/// The words of this program itself: an archive has no lot of its own.
fn words() -> Words {
    let named =
        EMBEDDED.iter().filter(|(name, _)| name.ends_with("/archive.ftl") || name.ends_with("/format.ftl"));
    let files: Vec<SourceFile> = named
        .filter_map(|(name, bytes)| Some(SourceFile::new(name, std::str::from_utf8(bytes).ok()?)))
        .collect();
    Words::load(&files).0
}
