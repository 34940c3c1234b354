//! What one tablet keeps: its name and key, open walks, kept scripts, sealed records.
//!
//! All of it lies in the data folder. A walk that was begun is found again after any crash, and one whose
//! sealing was begun is sealed to the same bytes.

pub mod clock;
pub mod outbox;
pub mod pace;
pub mod room;
mod sealing;
pub mod staff;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use jiff::Timestamp;
use serde::Deserialize;

use crate::journal::{self, Keeper, OpenWalk, ProposeFault, ResumeFault, Resumed};
use crate::ports::{Access, DiskFault, Held, Ports};
use crate::record::chain;
use crate::record::keys::{self, KeyFault, TabletKey};
use crate::script::{Bundle, BundleFault, Scripts};
use crate::source::{At, SourceFile, read};
use crate::walk::{Entry, Event, Phase};

pub use sealing::{Finished, SealStop};

/// Folder of the key in a data folder.
pub const KEYS: &str = "keys";
/// File with the tablet's settings.
const SETTINGS: &str = "tablet.ron";
/// File that the process which owns the folder holds locked.
const LOCK: &str = "lock";
const SETTINGS_CAP: u64 = 64 * 1024;

/// Why a tablet cannot work with its data folder.
#[derive(Debug, Clone, thiserror::Error)]
pub enum TabletFault {
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// The key cannot be made or read.
    #[error(transparent)]
    Key(#[from] KeyFault),
    /// The settings file cannot be used.
    #[error("{place}: {what}; {hint}")]
    Settings {
        /// Where, with file, line and column.
        place: String,
        /// What is wrong.
        what: String,
        /// The way out.
        hint: String,
    },
    /// Scripts of a walk are gone or changed.
    #[error(transparent)]
    Scripts(#[from] BundleFault),
    /// Scripts have faults, so that no walk can be led from them.
    #[error("the scripts have {count} faults, the first at {first}; run `sendoff check`")]
    Faulty {
        /// How many.
        count: usize,
        /// Place and words of the first.
        first: String,
    },
    /// The lot has no such unit.
    #[error("the lot has no unit `{unit}`; it has {known}")]
    NoUnit {
        /// The unit asked for.
        unit: String,
        /// Those there are.
        known: String,
    },
    /// The first event could not be kept.
    #[error(transparent)]
    Begin(#[from] ProposeFault),
    /// An open walk cannot go on.
    #[error(transparent)]
    Resume(#[from] ResumeFault),
    /// Another process works with the data folder.
    #[error("another Sendoff is open on {}; close it first, or name another folder with --data", .0.display())]
    InUse(PathBuf),
    /// A journal does not say how it began.
    #[error("{} does not say which walk it is; it was left as it is", .0.display())]
    NoBeginning(PathBuf),
}

/// Settings of the tablet.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Settings {
    name: At<String>,
    made: At<String>,
    /// Folder of the office to which records can be handed in beside sticks.
    #[serde(default)]
    hand_in: Option<At<String>>,
}

/// A tablet with its key.
#[derive(Debug, Clone)]
pub struct Tablet {
    ports: Ports,
    dir: PathBuf,
    name: String,
    made: Timestamp,
    key: Arc<TabletKey>,
    hand_in: Option<PathBuf>,
}

/// A walk to go on with, and the scripts it began with.
#[derive(Debug)]
pub struct Taken {
    /// Walk and journal.
    pub resumed: Resumed,
    /// Its scripts.
    pub scripts: Arc<Scripts>,
}

impl Tablet {
    /// The tablet of a data folder; `None` on the first start, when it has no name yet.
    ///
    /// # Errors
    /// Settings or key cannot be read.
    pub fn open(ports: &Ports, dir: &Path) -> Result<Option<Self>, TabletFault> {
        let bytes = match ports.disk.read(&dir.join(SETTINGS), SETTINGS_CAP) {
            Ok(bytes) => bytes,
            Err(fault) if fault.is_missing() => return Ok(None),
            Err(fault) => return Err(fault.into()),
        };
        let file = SourceFile::new(SETTINGS, &String::from_utf8_lossy(&bytes));
        let (settings, faults) = read::<Settings>(&file);
        if let Some(fault) = faults.into_iter().next() {
            return Err(TabletFault::Settings {
                place: dir.join(fault.place.to_string()).display().to_string(),
                what: fault.what,
                hint: fault.hint,
            });
        }
        let Some(settings) = settings else { return Ok(None) };
        let made: Timestamp = settings.made.value.parse().map_err(|_| TabletFault::Settings {
            place: dir.join(file.place_at(settings.made.at).to_string()).display().to_string(),
            what: "this is no time".into(),
            hint: "write it as 2026-01-31T12:00:00Z".into(),
        })?;
        let key = keys::load(ports.disk.as_ref(), &dir.join(KEYS), None)?;
        Ok(Some(Self {
            ports: ports.clone(),
            dir: dir.to_owned(),
            name: settings.name.value,
            made,
            key: Arc::new(key),
            hand_in: settings.hand_in.map(|folder| PathBuf::from(folder.value)),
        }))
    }

    /// Gives a tablet its name and makes its key. A key that stands there is never overwritten.
    ///
    /// # Errors
    /// The name is not allowed, there is a key already, or the disk refuses.
    pub fn first_start(ports: &Ports, dir: &Path, name: &str) -> Result<Self, TabletFault> {
        keys::check_tablet_name(name)?;
        ports.disk.make_dir(dir)?;
        let made = whole_second(ports.clock.now());
        let key = keys::create(ports.disk.as_ref(), ports.entropy.as_ref(), &dir.join(KEYS), name, None)?;
        let settings = format!("(\n    name: {name:?},\n    made: \"{made}\",\n)\n");
        ports.disk.put_new(&dir.join(SETTINGS), settings.as_bytes(), Access::Usual)?;
        Ok(Self {
            ports: ports.clone(),
            dir: dir.to_owned(),
            name: name.to_owned(),
            made,
            key: Arc::new(key),
            hand_in: None,
        })
    }

    /// Takes the data folder for this process: one at a time may write walks and records.
    ///
    /// # Errors
    /// Another process has it, or the disk refuses.
    pub fn take_folder(ports: &Ports, dir: &Path) -> Result<Box<dyn Held>, TabletFault> {
        ports.disk.make_dir(dir)?;
        ports.disk.lock(&dir.join(LOCK))?.ok_or_else(|| TabletFault::InUse(dir.to_owned()))
    }

    /// Name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Key.
    #[must_use]
    pub fn key(&self) -> &TabletKey {
        &self.key
    }

    /// The line for the office's `allowed_signers`.
    #[must_use]
    pub fn signers_line(&self) -> String {
        keys::allowed_signers_line(self.key.public(), &self.name, self.made)
    }

    /// Data folder.
    #[must_use]
    pub fn dir(&self) -> &Path {
        &self.dir
    }

    /// An event with the time of the tablet's clock and the lot's offset from UTC.
    #[must_use]
    pub fn entry(&self, scripts: &Scripts, event: Event) -> Entry {
        let at = self.ports.clock.now();
        Entry { at, offset_minutes: scripts.offset_minutes(at), event }
    }

    /// Begins a walk: keeps its scripts, then its first event.
    ///
    /// # Errors
    /// No such unit, or the disk refuses.
    pub fn begin(&self, scripts: &Scripts, unit: &str, rehearsal: bool) -> Result<Keeper, TabletFault> {
        let route = crate::route::build(scripts, unit).ok_or_else(|| TabletFault::NoUnit {
            unit: unit.to_owned(),
            known: scripts.units.keys().cloned().collect::<Vec<_>>().join(", "),
        })?;
        scripts.bundle.keep(self.ports.disk.as_ref(), &self.dir)?;
        let now = self.ports.clock.now();
        let id = self.new_walk_id(unit, now)?;
        let event = Event::Began {
            walk: id.clone(),
            unit: unit.to_owned(),
            scripts: scripts.bundle.digest().to_owned(),
            tablet: self.name.clone(),
            rehearsal,
            demo: scripts.bundle.is_demo(),
        };
        let path = journal::journal_path(&self.dir, &id);
        if let Some(folder) = path.parent() {
            self.ports.disk.make_dir(folder)?;
        }
        let first = Entry { at: now, offset_minutes: scripts.offset_minutes(now), event };
        let mut keeper = Keeper::begin(self.ports.disk.as_ref(), &path, Arc::new(route), &first)?;
        if !rehearsal {
            let sealed = chain::last_sealed(self.ports.disk.as_ref(), &self.dir, &self.key);
            self.tell_behind(&mut keeper, scripts, sealed)?;
        }
        Ok(keeper)
    }

    /// Lets a walk tell that the clock says less than it did when something was last written: what is sealed from it
    /// is not dated back without a word.
    fn tell_behind(
        &self,
        keeper: &mut Keeper,
        scripts: &Scripts,
        written: Option<Timestamp>,
    ) -> Result<(), ProposeFault> {
        let now = self.ports.clock.now();
        let Some(jump) = written.and_then(|at| clock::behind(at, now)) else { return Ok(()) };
        keeper.propose(&self.entry(scripts, Event::ClockJumped { from: jump.from, to: jump.to }))
    }

    /// When something was last kept on this tablet, by its clock: in an open walk or a sealed record.
    #[must_use]
    pub fn last_kept(&self) -> Option<Timestamp> {
        let walks = self.open_walks().unwrap_or_default();
        let sealed = chain::last_sealed(self.ports.disk.as_ref(), &self.dir, &self.key);
        walks.iter().filter_map(OpenWalk::last_at).chain(sealed).max()
    }

    /// `wren-20260724-151000`, with a number behind it when that is taken.
    fn new_walk_id(&self, unit: &str, now: Timestamp) -> Result<String, DiskFault> {
        let taken = self.ports.disk.list(&self.dir.join("walks"))?;
        let base = format!("{unit}-{}", now.strftime("%Y%m%d-%H%M%S"));
        let mut id = base.clone();
        let mut number = 2_u32;
        while taken.iter().any(|name| name.starts_with(&format!("{id}."))) {
            id = format!("{base}-{number}");
            number += 1;
        }
        Ok(id)
    }

    /// Walks that were begun and not sealed.
    ///
    /// # Errors
    /// The folder cannot be read.
    pub fn open_walks(&self) -> Result<Vec<OpenWalk>, DiskFault> {
        journal::open_walks(self.ports.disk.as_ref(), &self.dir)
    }

    /// Goes on with an open walk where its journal stands, with the scripts it began with.
    ///
    /// # Errors
    /// Its journal or scripts cannot be used; they are left as they are.
    pub fn resume(&self, open: OpenWalk) -> Result<Taken, TabletFault> {
        let recovered = open.read.map_err(ResumeFault::from)?;
        let Some(Event::Began { unit, scripts, demo, .. }) = recovered.entries.first().map(|e| &e.event)
        else {
            return Err(TabletFault::NoBeginning(open.path));
        };
        let (unit, digest, demo) = (unit.clone(), scripts.clone(), *demo);
        let bundle = Bundle::kept(self.ports.disk.as_ref(), &self.dir, &digest, demo)?;
        let scripts = Arc::new(usable(bundle)?);
        let route = crate::route::build(&scripts, &unit).ok_or_else(|| TabletFault::NoUnit {
            unit,
            known: scripts.units.keys().cloned().collect::<Vec<_>>().join(", "),
        })?;
        let mut resumed = Keeper::resume_from(self.ports.disk.as_ref(), recovered, Arc::new(route))?;
        let walk = resumed.keeper.walk();
        if walk.phase() != Phase::SealBegun {
            let last = walk.last_at();
            self.tell_behind(&mut resumed.keeper, &scripts, Some(last))?;
        }
        Ok(Taken { resumed, scripts })
    }
}

/// The scripts of a bundle, when nothing is wrong with them.
///
/// # Errors
/// They have faults.
pub fn usable(bundle: Bundle) -> Result<Scripts, TabletFault> {
    let (scripts, faults) = Scripts::load(Arc::new(bundle));
    match (scripts, faults.first()) {
        (Some(scripts), None) => Ok(scripts),
        (_, first) => Err(TabletFault::Faulty {
            count: faults.len(),
            first: first.map_or_else(String::new, |f| format!("{}: {}", f.place, f.what)),
        }),
    }
}

/// The same time without parts of a second, as `allowed_signers` has it.
fn whole_second(at: Timestamp) -> Timestamp {
    Timestamp::from_second(at.as_second()).unwrap_or(at)
}
