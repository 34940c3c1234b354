//! The command line of `sendoff archive`.

use std::path::PathBuf;

use clap::{Args, Subcommand};

use crate::commands::cli::Format;

/// Arguments of `archive`.
#[derive(Debug, Args)]
pub struct ArchiveArgs {
    /// What to do
    #[command(subcommand)]
    pub action: ArchiveAction,
}

/// What to do with an archive.
#[derive(Debug, Subcommand)]
pub enum ArchiveAction {
    /// Take records in: verified before they are filed, each exactly once
    Import(ImportArgs),
}

/// Arguments of `archive import`.
#[derive(Debug, Args)]
pub struct ImportArgs {
    /// Records: ZIP files, unpacked bags, or folders and sticks with either
    #[arg(required = true, value_name = "PATH")]
    pub paths: Vec<PathBuf>,
    /// Folder of the archive; it is made where there is none
    #[arg(long, value_name = "DIR")]
    pub archive: PathBuf,
    /// OpenSSH `allowed_signers` with the tablets; needed once, the archive keeps it
    #[arg(long, value_name = "FILE")]
    pub signers: Option<PathBuf>,
    /// Take rehearsals too; they are never evidence
    #[arg(long)]
    pub rehearsals: bool,
    /// How to write the result
    #[arg(long, value_enum, default_value_t)]
    pub format: Format,
}
