//! The command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

use super::archive::ArchiveArgs;
use super::lot::LotArgs;

/// Leads a motorhome handoff and seals a signed record of it. Without a command it opens the kiosk.
#[derive(Debug, Parser)]
#[command(
    version,
    after_help = "\
Examples:
  sendoff                                  the kiosk with the demo lot
  sendoff --lot ~/lot --data ~/tablet      the kiosk with a lot of your own
  sendoff --windowed                       the same in a window, for a desk
  sendoff --archive ~/archive --windowed   the same at the office, where records are found and taken in
  sendoff --lot ~/lot --edit               the same, reading the scripts anew whenever they change
  sendoff check --lot ~/lot                everything that is wrong with the scripts
  sendoff rehearse --unit wren --out play     a whole handoff without a display
  sendoff verify record.zip --signers allowed_signers

Exit codes: 0 good, 1 findings or failed verification, 2 could not run."
)]
pub struct Cli {
    #[command(flatten)]
    places: Places,
    /// Read the lot folder anew whenever it changes, and show its faults on the screen; needs `--lot`
    #[arg(long, requires = "lot")]
    edit: bool,
    /// Archive of the office: the Yard then leads to the Office screen
    #[arg(long, value_name = "DIR")]
    archive: Option<PathBuf>,
    /// Open in a window of its own, for a desk, instead of filling the screen
    #[arg(long)]
    windowed: bool,
    #[command(subcommand)]
    command: Option<Command>,
}

/// Where scripts and data lie.
#[derive(Debug, Clone, Default, Args)]
pub struct Places {
    /// Lot folder, which holds `walkthroughs` and `i18n`; the demo lot when absent
    #[arg(long, value_name = "DIR", global = true)]
    pub lot: Option<PathBuf>,
    /// Data folder of this tablet; the user's data folder when absent
    #[arg(long, value_name = "DIR", global = true)]
    pub data: Option<PathBuf>,
}

/// What was asked for.
#[derive(Debug)]
pub enum Task {
    /// Open the window.
    Kiosk {
        /// Where scripts and data lie.
        places: Places,
        /// The office's archive, where this kiosk has one.
        archive: Option<PathBuf>,
        /// Whether the lot folder is read anew whenever it changes.
        edit: bool,
        /// Whether the rest of the screen is left to others.
        windowed: bool,
    },
    /// Run a command.
    Command(Command),
}

impl Cli {
    /// What was asked for; the folders go with the command.
    #[must_use]
    pub fn task(self) -> Task {
        let Self { places, edit, archive, windowed, command } = self;
        match command {
            None => Task::Kiosk { places, archive, edit, windowed },
            Some(mut command) => {
                match &mut command {
                    Command::Check(args) => args.places = places,
                    Command::Figures(args) => args.places = places,
                    Command::Preview(args) => args.places = places,
                    Command::Rehearse(args) => args.places = places,
                    Command::Verify(_) | Command::Archive(_) => {}
                    Command::Keys(args) => args.places = places,
                    Command::Lot(args) => args.places = places,
                }
                Task::Command(command)
            }
        }
    }
}

/// A command.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Find everything that is wrong with the scripts of a lot
    #[command(after_help = "Examples:\n  sendoff check\n  sendoff check --lot ~/lot --format json")]
    Check(CheckArgs),
    /// Print the figures of a unit, with what each came from
    #[command(after_help = "\
Examples:
  sendoff figures --unit wren
  sendoff figures --unit wren --trip trip.ron --format json")]
    Figures(FiguresArgs),
    /// Draw every page of a unit as a picture, without a display
    #[command(after_help = "\
Examples:
  sendoff preview --unit wren --out pages
  sendoff preview --unit wren --size 800x1280 --theme dusk --text largest --out pages
  sendoff preview --lot ~/lot --unit wren --lang en-XA --out pages

The pictures are named in walking order; `contact-sheet.png` shows them together.")]
    Preview(PreviewArgs),
    /// Play a whole handoff without a display and seal it as a rehearsal
    #[command(after_help = "\
Examples:
  sendoff rehearse --unit wren --out play
  sendoff rehearse --unit wren --out play --at 2026-07-24T15:00:00Z --script walk.ron

The last line names the record. The key and `allowed_signers` are made beside it; a rehearsal is never evidence.")]
    Rehearse(RehearseArgs),
    /// Judge sealed records
    #[command(after_help = "\
Examples:
  sendoff verify record.zip --signers allowed_signers
  sendoff verify ~/archive/records --signers allowed_signers --format json
  sendoff verify record.zip --signers allowed_signers --received 2026-07-24T18:00:00Z
  sendoff verify bag/ --bag-only")]
    Verify(VerifyArgs),
    /// Keys of this tablet, and whom the office trusts
    #[command(after_help = "\
Examples:
  sendoff keys new --name t2
  sendoff keys public
  sendoff keys office --archive ~/archive
  sendoff keys trust \"$(cat t2.line)\" --archive ~/archive
  sendoff keys retire t2 --at 2026-07-24T15:00:00Z --archive ~/archive
  sendoff keys list --archive ~/archive

`new` and `public` are for a tablet, the others for the office's archive.")]
    Keys(KeysArgs),
    /// Take sealed records in and keep them for years
    #[command(after_help = "\
Examples:
  sendoff archive import /media/stick --archive ~/archive --signers allowed_signers
  sendoff archive import records/ --archive ~/archive --format json
  sendoff archive audit --archive ~/archive
  sendoff archive export /media/disk/copy --archive ~/archive

The first import makes the archive and the key of the office. Only what verifies is filed; what does not goes to
its quarantine with the reason. The same import can be run again at any time.")]
    Archive(ArchiveArgs),
    /// Start a lot folder of your own, and add units to it
    #[command(after_help = "\
Examples:
  sendoff lot new ~/lot --name 'Our Lot'
  sendoff lot add-unit --lot ~/lot --id harrier --kind class-c --fuel gasoline \\
    --length '28 ft' --width '99 in' --height '11 ft 3 in'
  sendoff lot add-unit --lot ~/lot --id harrier-2 --copy harrier")]
    Lot(LotArgs),
}

/// How a result is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, ValueEnum)]
pub enum Format {
    /// For people.
    #[default]
    Text,
    /// For programs.
    Json,
}

/// Arguments of `check`.
#[derive(Debug, Args)]
pub struct CheckArgs {
    #[arg(skip)]
    pub(super) places: Places,
    /// How to write the result
    #[arg(long, value_enum, default_value_t)]
    pub format: Format,
    /// Measure every page of every unit as well, which takes its time
    #[arg(long)]
    pub fit: bool,
}

/// Measures in which figures are told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Measures {
    /// Feet, pounds, US gallons.
    Us,
    /// Metric with miles and psi.
    Uk,
    /// Metric.
    Metric,
}

/// Arguments of `figures`.
#[derive(Debug, Args)]
pub struct FiguresArgs {
    #[arg(skip)]
    pub(super) places: Places,
    /// Unit whose figures to print
    #[arg(long, value_name = "UNIT")]
    pub unit: String,
    /// Trip to plan with (RON)
    #[arg(long, value_name = "FILE")]
    pub trip: Option<PathBuf>,
    /// Measures; the lot's usual ones when absent
    #[arg(long, value_enum)]
    pub measures: Option<Measures>,
    /// How to write the result
    #[arg(long, value_enum, default_value_t)]
    pub format: Format,
}

/// Palette of a preview.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, ValueEnum)]
pub enum PreviewTheme {
    /// Warm paper and dark ink.
    #[default]
    Paper,
    /// White and black, for the sun.
    Daylight,
    /// Dark, for evenings.
    Dusk,
}

/// Text size of a preview.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, ValueEnum)]
pub enum PreviewText {
    /// As written.
    #[default]
    Usual,
    /// A fifth larger.
    Large,
    /// Two fifths larger.
    Largest,
}

/// Arguments of `preview`.
#[derive(Debug, Args)]
pub struct PreviewArgs {
    #[arg(skip)]
    pub(super) places: Places,
    /// Unit whose pages to draw
    #[arg(long, value_name = "UNIT")]
    pub unit: String,
    /// Language of the pages; the lot's usual one when absent, `en-XA` for accents and more length
    #[arg(long, value_name = "LANG")]
    pub lang: Option<String>,
    /// Size of the window in pixels
    #[arg(long, value_name = "WxH", default_value = "1280x800")]
    pub size: String,
    /// Palette
    #[arg(long, value_enum, default_value_t)]
    pub theme: PreviewTheme,
    /// Text size
    #[arg(long, value_enum, default_value_t)]
    pub text: PreviewText,
    /// Folder for the pictures
    #[arg(long, value_name = "DIR")]
    pub out: PathBuf,
}

/// Arguments of `rehearse`.
#[derive(Debug, Args)]
pub struct RehearseArgs {
    #[arg(skip)]
    pub(super) places: Places,
    /// Unit to hand over
    #[arg(long, value_name = "UNIT")]
    pub unit: String,
    /// Folder for key, signers and record
    #[arg(long, value_name = "DIR")]
    pub out: PathBuf,
    /// Start of the walk, in UTC, as 2026-07-24T15:00:00Z; now when absent
    #[arg(long, value_name = "TIME")]
    pub at: Option<jiff::Timestamp>,
    /// List of actions to play (RON); the whole handoff when absent
    #[arg(long, value_name = "FILE")]
    pub script: Option<PathBuf>,
}

/// Arguments of `verify`.
#[derive(Debug, Args)]
pub struct VerifyArgs {
    /// Records: ZIP files, unpacked bags, or folders of either
    #[arg(required = true, value_name = "PATH")]
    pub paths: Vec<PathBuf>,
    /// OpenSSH `allowed_signers` of the office
    #[arg(long, value_name = "FILE")]
    pub signers: Option<PathBuf>,
    /// When the office received the records; validity is judged at this time, now when absent
    #[arg(long, value_name = "TIME")]
    pub received: Option<jiff::Timestamp>,
    /// Judge the BagIt layer alone (RFC 8493): no seal, no chain
    #[arg(long)]
    pub bag_only: bool,
    /// How to write the result
    #[arg(long, value_enum, default_value_t)]
    pub format: Format,
}

/// Arguments of `keys`.
#[derive(Debug, Args)]
pub struct KeysArgs {
    #[arg(skip)]
    pub(super) places: Places,
    /// What to do
    #[command(subcommand)]
    pub action: KeysAction,
}

/// What to do with keys.
#[derive(Debug, Subcommand)]
pub enum KeysAction {
    /// Name this tablet and make its key; a key that is there is never overwritten
    New {
        /// Name of the tablet: small letters, digits and dashes
        #[arg(long, value_name = "NAME", default_value = "demo")]
        name: String,
    },
    /// Print the `allowed_signers` line for the office
    Public,
    /// Make the office's own key where there is none, and print its public half for the tablets
    Office(OfArchive),
    /// Trust a tablet, by the line that `sendoff keys public` prints on it
    Trust {
        /// The line, in quotes
        #[arg(value_name = "LINE")]
        line: String,
        /// The archive
        #[command(flatten)]
        archive: OfArchive,
    },
    /// Retire a tablet: what the office received until then stays good, nothing later is taken
    Retire {
        /// Its name
        #[arg(value_name = "TABLET")]
        tablet: String,
        /// The last good time, in UTC, as 2026-07-24T15:00:00Z
        #[arg(long, value_name = "TIME")]
        at: jiff::Timestamp,
        /// The archive
        #[command(flatten)]
        archive: OfArchive,
    },
    /// Distrust a tablet: nothing that it sealed counts any more, whenever it was received
    Distrust {
        /// Its name
        #[arg(value_name = "TABLET")]
        tablet: String,
        /// The archive
        #[command(flatten)]
        archive: OfArchive,
    },
    /// List the keys that the archive knows
    List {
        /// The archive
        #[command(flatten)]
        archive: OfArchive,
        /// How to write the result
        #[arg(long, value_enum, default_value_t)]
        format: Format,
    },
}

/// The archive that a command is about.
#[derive(Debug, Args)]
pub struct OfArchive {
    /// Folder of the archive
    #[arg(long = "archive", value_name = "DIR")]
    pub dir: PathBuf,
}
