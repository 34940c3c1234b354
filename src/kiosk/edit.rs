//! A lot folder that is being edited: it is looked at every second, read when it has changed, and held against
//! every rule. What loads is used for new walks; what does not leaves the last good scripts in use. A unit whose
//! scripts have a fault begins no new walk.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use super::effect::Effect;
use super::screen::{Action, Screen};
use super::{App, shape};
use crate::check;
use crate::ports::Disk;
use crate::route::{self, Route};
use crate::script::{Bundle, Scripts};
use crate::source::{Fault, Place, Severity};

/// How long between two looks.
pub const PAUSE: Duration = Duration::from_secs(1);
/// Folders of a lot that are looked at.
const FOLDERS: [&str; 3] = ["walkthroughs", "i18n", "assets/pictures"];
/// Deepest folder that is looked into, as for reading.
const DEPTH: usize = 6;
/// Largest file whose content is looked at where the disk knows no times.
const LOOKED_AT: u64 = 16 * 1024 * 1024;

/// What is wrong with a lot, and with which of its units.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Faults {
    /// All of it, in the order of places.
    pub all: Vec<Fault>,
    /// Whether what is in the folder cannot be used, so that the last good scripts still are.
    pub kept: bool,
    /// How many concern a unit.
    units: BTreeMap<String, usize>,
}

impl Faults {
    /// How many faults concern a unit: with any, no new walk begins.
    #[must_use]
    pub fn of(&self, unit: &str) -> usize {
        self.units.get(unit).copied().unwrap_or(0)
    }

    /// Holds scripts that can be read against every rule.
    #[must_use]
    pub fn find(scripts: &Scripts) -> Self {
        let all = faults_of(&scripts.bundle);
        let units = scripts.units.keys().map(|unit| {
            let route = route::build(scripts, unit);
            let count = all.iter().filter(|f| concerns(&f.place.file, unit, route.as_ref())).count();
            (unit.clone(), count)
        });
        let units = units.filter(|(_, count)| *count > 0).collect();
        Self { all, kept: false, units }
    }
}

fn faults_of(bundle: &Arc<Bundle>) -> Vec<Fault> {
    let found = check::lot(Arc::clone(bundle)).faults;
    found.into_iter().filter(|f| f.severity == Severity::Fault).collect()
}

/// Whether what is in a file is part of a unit's walk. Of what is not known to be apart, it is.
fn concerns(file: &str, unit: &str, route: Option<&Route>) -> bool {
    let name = file.rsplit('/').next().unwrap_or_default();
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    let shows = |topic: &str| route.is_none_or(|r| r.steps.iter().any(|s| s.topic == topic));
    if file.starts_with("walkthroughs/guides/") {
        return false;
    }
    if file.starts_with("walkthroughs/units/") {
        return stem == unit;
    }
    if file.starts_with("walkthroughs/topics/") {
        return shows(stem);
    }
    if file.starts_with("assets/pictures/") {
        return route.is_none_or(|r| r.steps.iter().any(|s| s.picture.as_deref() == Some(stem)));
    }
    if file.starts_with("i18n/") {
        if stem.starts_with("guide-") {
            return false;
        }
        if let Some(topic) = stem.strip_prefix("topic-") {
            return shows(topic);
        }
        if let Some(other) = stem.strip_prefix("unit-") {
            return other == unit;
        }
    }
    true
}

/// What a look into the folder found.
#[derive(Debug, Clone)]
pub struct Found {
    /// What the folder looks like.
    seen: u32,
    /// The scripts, when they load.
    scripts: Option<Arc<Scripts>>,
    faults: Faults,
}

/// The watch over a lot folder.
#[derive(Debug, Clone, Default)]
pub struct Edit {
    /// What is wrong with the lot.
    pub faults: Faults,
    dir: Option<PathBuf>,
    seen: Option<u32>,
    /// Whether a look is under way.
    looking: bool,
}

impl Edit {
    /// A lot that is not watched, and what is wrong with it. The program's own has no faults.
    #[must_use]
    pub fn still(scripts: &Scripts) -> Self {
        let demo = scripts.bundle.is_demo();
        let faults = if demo { Faults::default() } else { Faults::find(scripts) };
        Self { faults, ..Self::default() }
    }

    /// A lot folder that is watched.
    #[must_use]
    pub fn watch(scripts: &Scripts, dir: PathBuf) -> Self {
        Self { dir: Some(dir), ..Self::still(scripts) }
    }

    /// Whether a folder is watched.
    #[must_use]
    pub const fn is_watching(&self) -> bool {
        self.dir.is_some()
    }

    /// The next look, unless one is under way.
    pub(super) fn ask(&mut self) -> Option<Effect> {
        let dir = self.dir.clone()?;
        if std::mem::replace(&mut self.looking, true) {
            return None;
        }
        Some(Effect::ReadLot { dir, seen: self.seen })
    }

    /// Takes in what was found; gives scripts that are new and can be used.
    pub(super) fn take(&mut self, found: Option<Found>) -> Option<Arc<Scripts>> {
        self.looking = false;
        let Found { seen, scripts, faults } = found?;
        self.seen = Some(seen);
        let Faults { all, kept, units } = faults;
        // Of units of the last good scripts nothing new is known when others cannot be read.
        let units = if kept { std::mem::take(&mut self.faults.units) } else { units };
        self.faults = Faults { all, kept, units };
        scripts
    }
}

/// Looks into a lot folder, and reads it when it does not look as it did.
pub(super) fn look(disk: &dyn Disk, dir: &Path, before: Option<u32>) -> Option<Found> {
    let mut sum = crc32fast::Hasher::new();
    for folder in FOLDERS {
        look_into(disk, &dir.join(folder), 0, &mut sum);
    }
    let seen = sum.finalize();
    if before == Some(seen) {
        return None;
    }
    let unread =
        |all| Found { seen, scripts: None, faults: Faults { all, kept: true, units: BTreeMap::new() } };
    let bundle = match Bundle::read(disk, dir) {
        Ok(bundle) => Arc::new(bundle),
        Err(fault) => {
            let place = Place::start(&Arc::from(dir.display().to_string()));
            let hint = "put it right; the folder is looked at every second";
            return Some(unread(vec![Fault::new("lot.unreadable", place, fault.to_string(), hint)]));
        }
    };
    let (scripts, faults) = Scripts::load(Arc::clone(&bundle));
    match scripts.filter(|_| faults.is_empty()) {
        Some(scripts) => {
            let faults = Faults::find(&scripts);
            Some(Found { seen, scripts: Some(Arc::new(scripts)), faults })
        }
        None => Some(unread(faults_of(&bundle))),
    }
}

/// Sums up names, lengths and times of files; their content where the disk knows no times.
fn look_into(disk: &dyn Disk, folder: &Path, depth: usize, sum: &mut crc32fast::Hasher) {
    let Ok(names) = disk.list(folder) else { return };
    for name in names.iter().filter(|n| !n.starts_with('.')) {
        let path = folder.join(name);
        if disk.is_dir(&path) {
            if depth < DEPTH {
                look_into(disk, &path, depth + 1, sum);
            }
            continue;
        }
        sum.update(path.to_string_lossy().as_bytes());
        match disk.stamp(&path) {
            Some((length, changed)) => {
                sum.update(&length.to_le_bytes());
                sum.update(&changed.to_le_bytes());
            }
            None => sum.update(&disk.read(&path, LOOKED_AT).unwrap_or_default()),
        }
    }
}

impl App {
    /// Takes in what the lot folder holds now. An open walk keeps the scripts it began with.
    pub(super) fn lot_read(&mut self, found: Option<Found>) -> Vec<Effect> {
        let found = self.edit.take(found);
        if let Some(scripts) = found.filter(|s| s.bundle.digest() != self.lot.bundle.digest()) {
            self.shapes = shape::all(&scripts);
            self.lot = scripts;
            self.idle_of();
            // Cards of the Yard are made anew; what is on the way there needs no second list.
            if matches!(self.screen, Screen::Yard(_)) {
                return vec![Effect::ListWalks];
            }
            if let Screen::Reread(state) = &mut self.screen
                && !state.renew(&self.lot)
            {
                return self.act(Action::ToYard);
            }
        }
        Vec::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_concerns_the_units_that_show_what_it_is_in() {
        assert!(concerns("walkthroughs/units/wren.ron", "wren", None));
        assert!(!concerns("walkthroughs/units/heron.ron", "wren", None));
        assert!(!concerns("walkthroughs/guides/trouble-heat.ron", "wren", None));
        assert!(!concerns("i18n/en-US/guide-trouble-heat.ftl", "wren", None));
        assert!(concerns("walkthroughs/lot.ron", "wren", None));
        assert!(concerns("i18n/en-US/kiosk.ftl", "wren", None));
        let (scripts, _) = Scripts::load(Arc::new(Bundle::demo()));
        let route = route::build(&scripts.unwrap(), "wren").unwrap();
        let shown = route.steps[0].topic.clone();
        assert!(concerns(&format!("walkthroughs/topics/{shown}.ron"), "wren", Some(&route)));
        assert!(concerns(&format!("i18n/en-US/topic-{shown}.ftl"), "wren", Some(&route)));
        assert!(!concerns("i18n/en-US/topic-not-on-the-route.ftl", "wren", Some(&route)));
        let picture = route.steps.iter().find_map(|s| s.picture.clone()).unwrap();
        assert!(concerns(&format!("assets/pictures/{picture}.jpg"), "wren", Some(&route)));
        assert!(!concerns("assets/pictures/nowhere.jpg", "wren", Some(&route)));
    }
}
