//! The one place where effects meet the world.

mod writing;

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use iced::Task;
use jiff::Timestamp;

use super::effect::{Done, Effect, OpenSummary, TakenWalk, YardList};
use super::office::{Answer, Desk};
use super::screen::walk::picture;
use super::{Message, edit, lapse, preferences};
use crate::journal::{Keeper, OpenWalk, Resumed, Writer};
use crate::ports::{Access, DiskFault, Held, Ports};
use crate::record::zip;
use crate::script::Scripts;
use crate::tablet::clock::{self, News, Timekeeper};
use crate::tablet::staff::{Change, Cost, Credential, Staff, StaffBook};
use crate::tablet::{Tablet, TabletFault, pace, room};
use crate::walk::{Event, Swap, Walk};
use writing::{look_at_clock, propose, seal};

/// The world of one kiosk: ports, the tablet, and the writer of the open walk.
#[derive(Debug)]
pub struct World {
    ports: Ports,
    data: PathBuf,
    tablet: Mutex<Option<Tablet>>,
    open: Mutex<Option<OpenDesk>>,
    timekeeper: Mutex<Timekeeper>,
    /// Number of the settings that were kept last.
    kept: Mutex<u64>,
    staff: Mutex<StaffBook>,
    /// The office's archive, where this kiosk has one.
    office: Option<Desk>,
    /// Held for as long as the kiosk runs.
    _lock: Box<dyn Held>,
    /// Whether effects are done at once, without threads: headless frames and tests.
    pub inline: bool,
}

/// The open walk's writer and scripts.
#[derive(Debug)]
struct OpenDesk {
    writer: Writer,
    scripts: Arc<Scripts>,
}

/// A lock whose holder cannot leave half a change behind.
fn locked<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

impl World {
    /// The world of a data folder.
    ///
    /// # Errors
    /// Settings or key of the tablet cannot be read.
    pub fn open(ports: Ports, data: PathBuf, inline: bool) -> Result<Self, TabletFault> {
        let lock = Tablet::take_folder(&ports, &data)?;
        let tablet = Tablet::open(&ports, &data)?;
        let world = Self {
            staff: Mutex::new(StaffBook::open(&ports, &data, Cost::USUAL)),
            ports,
            data,
            tablet: Mutex::new(tablet),
            open: Mutex::new(None),
            timekeeper: Mutex::default(),
            kept: Mutex::new(0),
            inline,
            office: None,
            _lock: lock,
        };
        // The first look has nothing to hold the clock against.
        drop(world.news());
        Ok(world)
    }

    /// With the archive of the office.
    #[must_use]
    pub fn with_archive(self, dir: Option<PathBuf>) -> Self {
        let office = dir.map(|dir| Desk::new(self.ports.clone(), dir, self.inline));
        Self { office, ..self }
    }

    /// The office's archive, where this kiosk has one.
    #[must_use]
    pub fn office(&self) -> Option<&Desk> {
        self.office.as_ref()
    }

    /// The tablet, once it has a name.
    #[must_use]
    pub fn tablet(&self) -> Option<Tablet> {
        locked(&self.tablet).clone()
    }

    /// Who works with the tablet, or why that cannot be told.
    ///
    /// # Errors
    /// Their file cannot be used.
    pub fn staff(&self) -> Result<Staff, String> {
        locked(&self.staff).staff().map_err(|e| e.to_string())
    }

    /// Now.
    #[must_use]
    pub fn now(&self) -> Timestamp {
        self.ports.clock.now()
    }

    /// Time that goes on by itself, whatever is done to the clock.
    #[must_use]
    pub fn running(&self) -> Duration {
        let since = || Duration::try_from(self.now().as_duration()).unwrap_or_default();
        self.ports.clock.running().unwrap_or_else(since)
    }

    /// Looks whether the clock was set since the last look.
    fn news(&self) -> News {
        locked(&self.timekeeper).look(self.ports.clock.as_ref())
    }

    /// The settings that were kept; none before the first.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn settings(&self) -> Result<Option<String>, DiskFault> {
        match self.ports.disk.read(&self.data.join(preferences::FILE), preferences::CAP) {
            Ok(bytes) => Ok(Some(String::from_utf8_lossy(&bytes).into_owned())),
            Err(fault) if fault.is_missing() => Ok(None),
            Err(fault) => Err(fault),
        }
    }

    /// Keeps settings, unless later ones are kept already.
    fn keep_settings(&self, text: &str, serial: u64) -> Result<(), String> {
        let mut kept = locked(&self.kept);
        if serial < *kept {
            return Ok(());
        }
        *kept = serial;
        let path = self.data.join(preferences::FILE);
        self.ports.disk.replace(&path, text.as_bytes(), Access::Usual).map_err(|e| e.to_string())
    }

    pub(super) fn named(&self) -> Result<Tablet, String> {
        self.tablet().ok_or_else(|| "this tablet has no name yet; start the kiosk again".to_owned())
    }

    /// Makes a keeper the open walk.
    fn take(
        &self,
        keeper: Keeper,
        scripts: Arc<Scripts>,
        notice: Option<String>,
    ) -> Result<TakenWalk, String> {
        let walk = Arc::clone(keeper.walk());
        let writer = Writer::spawn(keeper).map_err(|e| format!("the journal has no thread: {e}"))?;
        *locked(&self.open) = Some(OpenDesk { writer, scripts: Arc::clone(&scripts) });
        let pace = Arc::new(pace::load(self.ports.disk.as_ref(), &self.data));
        Ok(TakenWalk { walk, scripts, pace, notice })
    }
}

/// Effects as tasks, one after the other.
pub(super) fn tasks(world: &Arc<World>, lot: &Arc<Scripts>, effects: Vec<Effect>) -> Task<Message> {
    effects.into_iter().fold(Task::none(), |before, effect| {
        let (world, lot) = (Arc::clone(world), Arc::clone(lot));
        if let (Effect::Office(ask), Some(desk)) = (&effect, world.office()) {
            let answers = desk.ask(&world, ask.clone());
            return before.chain(Task::run(answers, |answer| Message::Done(Done::Office(Box::new(answer)))));
        }
        before.chain(Task::future(async move { Message::Done(perform(&world, &lot, effect)) }))
    })
}

/// Does one effect at once, with all that it brings: for a world without threads.
pub(super) fn perform_all(world: &World, lot: &Arc<Scripts>, effect: Effect) -> Vec<Done> {
    match (effect, world.office()) {
        (Effect::Office(ask), Some(desk)) => {
            desk.answers(world, ask).into_iter().map(|answer| Done::Office(Box::new(answer))).collect()
        }
        (effect, _) => vec![perform(world, lot, effect)],
    }
}

/// Does one effect. Runs off the thread of the screens, except in a world without threads.
pub(super) fn perform(world: &World, lot: &Arc<Scripts>, effect: Effect) -> Done {
    match effect {
        Effect::FirstStart(name) => Done::Started(first_start(world, &name)),
        Effect::ListWalks => Done::Listed(list(world)),
        Effect::ReadLot { dir, seen } => Done::LotRead(edit::look(world.ports.disk.as_ref(), &dir, seen)),
        Effect::Decode { bundle, photo } => {
            Done::Decoded { picture: picture::decode(&bundle, &photo), photo }
        }
        Effect::Begin(unit) => match room::look(world.ports.disk.as_ref(), &world.data) {
            room if room.for_a_walk() => Done::Taken(begin(world, lot, &unit)),
            room => Done::NoRoom(room),
        },
        Effect::Resume(id) => Done::Taken(resume(world, &id)),
        Effect::Propose(events) => Done::Proposed(propose(world, events)),
        Effect::LookAtClock => Done::Looked(look_at_clock(world)),
        Effect::Swap { walk, unit, reason } => match room::look(world.ports.disk.as_ref(), &world.data) {
            room if room.for_a_walk() => Done::Swapped(swap(world, lot, &walk, (&unit, &reason))),
            room => Done::NoRoom(room),
        },
        Effect::KeepSettings { text, serial } => Done::SettingsKept(world.keep_settings(&text, serial)),
        Effect::Seal => Done::Sealed(seal(world)),
        Effect::SaveCopy { record, to } => Done::Copied(copy(world, &record, &to)),
        Effect::HandIn(ask) => super::hand_in::perform(world, ask),
        // Where there is an archive, its clerk has answered.
        Effect::Office(_) => Done::Office(Box::new(Answer::Opened(Err(String::new())))),
        Effect::TryPin(who) => try_pin(world, who),
        Effect::Staff(change) => change_staff(world, &change),
    }
}

fn try_pin(world: &World, who: Credential) -> Done {
    let tried = locked(&world.staff).try_pin(&who);
    Done::PinTried { code: who.code, tried, staff: world.staff() }
}

fn change_staff(world: &World, change: &Change) -> Done {
    let result = locked(&world.staff).change(change).map_err(|e| e.to_string());
    Done::StaffChanged { result, staff: world.staff() }
}

fn first_start(world: &World, name: &str) -> Result<String, String> {
    let tablet = Tablet::first_start(&world.ports, &world.data, name).map_err(|e| e.to_string())?;
    let fingerprint = tablet.key().fingerprint();
    *locked(&world.tablet) = Some(tablet);
    Ok(fingerprint)
}

pub(super) fn list(world: &World) -> Result<YardList, String> {
    let tablet = world.named()?;
    // The writer of a walk that was left has written everything before it ends.
    *locked(&world.open) = None;
    let mut walks = Vec::new();
    for open in tablet.open_walks().map_err(|e| e.to_string())? {
        match finish_seal(&tablet, open) {
            Ok(Some(summary)) => walks.push(summary),
            Ok(None) => {}
            Err(why) => return Err(why),
        }
    }
    walks.sort_by_key(|w| std::cmp::Reverse(w.last));
    let waiting = tablet.outbox().map_err(|e| e.to_string())?.len();
    Ok(YardList {
        walks,
        waiting,
        tablet: tablet.name().to_owned(),
        room: room::look(world.ports.disk.as_ref(), &world.data),
        behind: tablet.last_kept().and_then(|at| clock::behind(at, world.now())),
        news: world.news(),
        pace: pace::load(world.ports.disk.as_ref(), &world.data),
    })
}

/// Seals a walk whose sealing was begun; sums up any other.
fn finish_seal(tablet: &Tablet, open: OpenWalk) -> Result<Option<OpenSummary>, String> {
    let begun = open
        .read
        .as_ref()
        .is_ok_and(|r| r.entries.last().is_some_and(|e| matches!(e.event, Event::SealBegun { .. })));
    if !begun {
        return Ok(Some(summary(&open, None)));
    }
    let shown = summary(&open, None);
    match tablet.resume(open) {
        Ok(mut taken) => match tablet.seal(&mut taken.resumed.keeper, &taken.scripts) {
            Ok(_) => Ok(None),
            Err(stop) => Ok(Some(OpenSummary { trouble: Some(stop.to_string()), ..shown })),
        },
        Err(fault) => Ok(Some(OpenSummary { trouble: Some(fault.to_string()), ..shown })),
    }
}

fn summary(open: &OpenWalk, trouble: Option<String>) -> OpenSummary {
    let (events, damage) = match &open.read {
        Ok(read) => (read.entries.len(), read.damage.as_ref().map(ToString::to_string)),
        Err(fault) => (0, Some(fault.to_string())),
    };
    OpenSummary {
        id: open.id.clone(),
        unit: open.unit().map(str::to_owned),
        agent: open.agent().map(str::to_owned),
        renter: open.people().iter().find(|p| p.driver).map(|p| p.name.clone()),
        scripts: open.read.as_ref().ok().and_then(|r| match r.entries.first().map(|e| &e.event) {
            Some(Event::Began { scripts, .. }) => Some(scripts.clone()),
            _ => None,
        }),
        ended: ended(open),
        events,
        last: open.last_at(),
        trouble: trouble.or(damage),
    }
}

/// Whether the handover was stopped, and the stop not taken back.
fn ended(open: &OpenWalk) -> bool {
    let events = open.read.iter().flat_map(|read| &read.entries).map(|entry| &entry.event);
    events.fold(false, |ended, event| match event {
        Event::HandoverStopped { .. } | Event::UnitSwapped(_) => true,
        Event::ClosingReopened { .. } => false,
        _ => ended,
    })
}

fn begin(world: &World, lot: &Arc<Scripts>, unit: &str) -> Result<TakenWalk, String> {
    let keeper = world.named()?.begin(lot, unit, false).map_err(|e| e.to_string())?;
    world.take(keeper, Arc::clone(lot), None)
}

fn resume(world: &World, id: &str) -> Result<TakenWalk, String> {
    let tablet = world.named()?;
    let open = tablet
        .open_walks()
        .map_err(|e| e.to_string())?
        .into_iter()
        .find(|w| w.id == id)
        .ok_or_else(|| format!("the walk {id} is no longer open"))?;
    let taken = tablet.resume(open).map_err(|e| e.to_string())?;
    let Resumed { keeper, cut, damage, kept } = taken.resumed;
    let mut lines: Vec<String> = Vec::new();
    lines.extend(damage.map(|d| d.to_string()));
    // One unfinished line is what a power cut leaves; it was never shown as done.
    lines.extend(
        cut.filter(|c| c.whole_lines)
            .map(|c| format!("{} bytes at the end of the journal were cut off.", c.bytes)),
    );
    lines.extend(kept.map(|k| format!("The journal as it was is kept as {}.", k.display())));
    let notice = (!lines.is_empty()).then(|| lines.join(" "));
    world.take(keeper, taken.scripts, notice)
}

/// Begins the walk for the other unit first, so that whatever happens in between, no walk points at one that is
/// not there.
fn swap(
    world: &World,
    lot: &Arc<Scripts>,
    walk: &Walk,
    (unit, reason): (&str, &str),
) -> Result<TakenWalk, String> {
    let tablet = world.named()?;
    let gone = || "no walk is open; go back to the Yard".to_owned();
    let scripts = Arc::clone(&locked(&world.open).as_ref().ok_or_else(gone)?.scripts);
    let ends = |next: &str| {
        let (next, unit, reason) = (next.to_owned(), unit.to_owned(), reason.to_owned());
        tablet.entry(&scripts, Event::UnitSwapped(Swap { walk: next, unit, reason }))
    };
    walk.accepts(&ends("next")).map_err(|e| e.to_string())?;
    let mut keeper = tablet.begin(lot, unit, walk.began().value.rehearsal).map_err(|e| e.to_string())?;
    for event in walk.opening_again() {
        let entry = tablet.entry(lot, event);
        // What may not be said of this unit is asked anew.
        if keeper.walk().accepts(&entry).is_ok() {
            keeper.propose(&entry).map_err(|e| e.to_string())?;
        }
    }
    let follows = lapse::follow(walk, lot, keeper.walk());
    keeper.propose(&tablet.entry(lot, follows)).map_err(|e| e.to_string())?;
    let answer = {
        let open = locked(&world.open);
        open.as_ref().ok_or_else(gone)?.writer.ask(ends(keeper.walk().id())).recv()
    };
    answer.map_err(|_| gone())?.map_err(|e| e.to_string())?;
    world.take(keeper, Arc::clone(lot), None)
}

/// Writes a copy of a sealed record and reads it back.
fn copy(world: &World, record: &Path, to: &Path) -> Result<PathBuf, String> {
    let disk = world.ports.disk.as_ref();
    let bytes = disk.read(record, zip::MAX_BYTES).map_err(|e| e.to_string())?;
    let name = record.file_name().ok_or("the record has no name")?;
    let path = to.join(name);
    disk.replace(&path, &bytes, Access::Usual).map_err(|e| e.to_string())?;
    let back = disk.read(&path, zip::MAX_BYTES).map_err(|e| e.to_string())?;
    if back == bytes {
        Ok(path)
    } else {
        Err(format!("{} does not read back as it was written", path.display()))
    }
}
