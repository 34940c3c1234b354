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
    /// Read every byte again and say what does not hold; nothing is changed
    Audit(AuditArgs),
    /// Copy the archive into a folder that anyone can verify with stock tools
    Export(ExportArgs),
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

/// Arguments of `archive audit`.
#[derive(Debug, Args)]
pub struct AuditArgs {
    /// Folder of the archive
    #[arg(long, value_name = "DIR")]
    pub archive: PathBuf,
    /// How to write the result
    #[arg(long, value_enum, default_value_t)]
    pub format: Format,
}

/// Arguments of `archive export`.
#[derive(Debug, Args)]
pub struct ExportArgs {
    /// Folder for the copy; one that was begun is gone on with
    #[arg(value_name = "DIR")]
    pub dir: PathBuf,
    /// Folder of the archive
    #[arg(long, value_name = "DIR")]
    pub archive: PathBuf,
}
