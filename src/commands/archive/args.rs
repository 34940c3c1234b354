//! The command line of `sendoff archive`.

use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Subcommand, ValueEnum};
use jiff::civil::Date;

use crate::archive::index::Answered;
use crate::commands::cli::Format;
use crate::record::seal::Kind;

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
    /// Find records by renter, unit, booking, agent, date, caution, or any word in them
    #[command(after_help = "\
Examples:
  sendoff archive search muller --archive ~/archive
  sendoff archive search robin awning --unit wren --from 2026-06-01 --archive ~/archive
  sendoff archive search --answer refused --format csv --archive ~/archive
  sendoff archive search '\"hot water\"' --caution water-heater-1 --archive ~/archive

Each word is found by its beginning, without accents; what stands between quotation marks is found as it stands.
Names, bookings and ids come first, then what was noted, then the cautions and steps that were shown. Without words
the newest records are listed.")]
    Search(SearchArgs),
    /// Make the index for searching anew from the records themselves
    Rebuild(RebuildArgs),
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
    /// Folder of the archive; with `--signers` it is made where there is none
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

/// How a list of records is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, ValueEnum)]
pub enum ListFormat {
    /// For people.
    #[default]
    Table,
    /// For programs.
    Json,
    /// For spreadsheets.
    Csv,
}

/// Arguments of `archive search`.
#[derive(Debug, Args)]
pub struct SearchArgs {
    /// Words to find
    #[arg(value_name = "QUERY")]
    pub query: Vec<String>,
    /// Folder of the archive
    #[arg(long, value_name = "DIR")]
    pub archive: PathBuf,
    /// Only records of this unit
    #[arg(long, value_name = "UNIT")]
    pub unit: Option<String>,
    /// Only records sealed on this day or later, local time
    #[arg(long, value_name = "DATE")]
    pub from: Option<Date>,
    /// Only records sealed on this day or earlier, local time
    #[arg(long, value_name = "DATE")]
    pub to: Option<Date>,
    /// Only records with this caution
    #[arg(long, value_name = "ID")]
    pub caution: Option<String>,
    /// How the caution was answered; without --caution, any caution
    #[arg(long, value_name = "ANSWER", value_parser = answers())]
    pub answer: Option<Answered>,
    /// Kind of record
    #[arg(long, value_name = "KIND", value_parser = kinds())]
    pub kind: Option<Kind>,
    /// Only records of this agent, by staff code
    #[arg(long, value_name = "CODE")]
    pub agent: Option<String>,
    /// Only records of renters who read this language
    #[arg(long, value_name = "LANG")]
    pub language: Option<String>,
    /// Only records of rentals that took this item, by its tag
    #[arg(long, value_name = "TAG")]
    pub item: Option<String>,
    /// The most records to list
    #[arg(long, value_name = "N", default_value_t = 50)]
    pub limit: usize,
    /// How to write the result
    #[arg(long, value_enum, default_value_t)]
    pub format: ListFormat,
}

/// Arguments of `archive rebuild`.
#[derive(Debug, Args)]
pub struct RebuildArgs {
    /// Folder of the archive
    #[arg(long, value_name = "DIR")]
    pub archive: PathBuf,
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

fn answers() -> impl TypedValueParser<Value = Answered> {
    PossibleValuesParser::new(Answered::ALL.map(Answered::as_str)).try_map(|text| {
        Answered::ALL.into_iter().find(|answer| answer.as_str() == text).ok_or("there is no such answer")
    })
}

fn kinds() -> impl TypedValueParser<Value = Kind> {
    PossibleValuesParser::new(Kind::ALL.map(Kind::as_str)).try_map(|text| text.parse::<Kind>())
}
