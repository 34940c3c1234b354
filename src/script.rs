//! The scripts of a lot: topics, data sheets, readings and words, loaded as a whole.
//!
//! [`Scripts::load`] collects every fault of every file; nothing half-read is ever led from. An open walk
//! keeps the [`Bundle`] it began with, known by its digest.

mod bound;
mod bundle;
pub mod demo;
mod form;
mod guide;
mod hazards;
mod kinds;
mod step;
mod text;
mod values;

use std::collections::BTreeMap;
use std::sync::Arc;

pub use bound::{Bound, Bounds, Off};
pub use bundle::{Bundle, BundleFault, EMBEDDED};
pub use demo::{DemoForm, Demonstration};
pub use form::{CautionForm, Guarded, LineForm, Priority, ReadingRef, StepForm, Topic, fitting};
pub use guide::{Branch, End, Guide, GuideRow, Target, Way};
pub use hazards::HazardRule;
pub use kinds::{Answers, Ask, Harm, Hazard, Scale, Signal};
pub use step::{Caution, Key, Reading, Step};
pub use text::{CautionText, Speaker, StepText};

use crate::source::{At, Fault, Place, SourceFile, read};
pub use crate::unit::When;
use crate::unit::{Facts, Lot, Sheet};
use crate::words::Words;

/// A typed value with the file it was read from, for places.
#[derive(Debug, Clone)]
pub struct From<T> {
    /// Its file.
    pub file: SourceFile,
    /// The value.
    pub value: T,
}

impl<T> From<T> {
    /// The place of something that was read from this file.
    #[must_use]
    pub fn place<U>(&self, at: &At<U>) -> Place {
        self.file.place_at(at.at)
    }
}

/// All scripts of a lot.
#[derive(Debug)]
pub struct Scripts {
    /// The files they were read from.
    pub bundle: Arc<Bundle>,
    /// Settings of the lot.
    pub lot: From<Lot>,
    /// Topics by id.
    pub topics: BTreeMap<String, From<Topic>>,
    /// Data sheets by id.
    pub units: BTreeMap<String, From<Sheet>>,
    /// Readings by id.
    pub readings: BTreeMap<String, Scale>,
    /// Trouble guides by id.
    pub guides: BTreeMap<String, From<Guide>>,
    /// Demonstrations by id.
    pub demonstrations: BTreeMap<String, From<DemoForm>>,
    /// Which equipment brings which hazards; a lot need not say.
    pub hazards: Option<From<Vec<At<HazardRule>>>>,
    /// Words of all languages.
    pub words: Words,
}

impl Scripts {
    /// Reads all scripts of a bundle. Without faults they can be led from; with faults, `check` says which.
    #[must_use]
    pub fn load(bundle: Arc<Bundle>) -> (Option<Self>, Vec<Fault>) {
        let mut gathered = Gathered::read(bundle);
        let faults = gathered.take_faults();
        (gathered.scripts(), faults)
    }

    /// The facts of a unit, if it is on the lot.
    #[must_use]
    pub fn facts(&self, unit: &str) -> Option<Facts> {
        self.units.get(unit).map(|sheet| Facts::new(&sheet.value, &self.lot.value))
    }
}

/// Name of the lot file.
pub(crate) const LOT: &str = "walkthroughs/lot.ron";
/// Name of the file with the readings.
pub(crate) const READINGS: &str = "walkthroughs/readings.ron";
/// Name of the file that says which equipment brings which hazards.
pub(crate) const HAZARDS: &str = "walkthroughs/hazards.ron";
/// Folder of the guides.
const GUIDES: &str = "walkthroughs/guides/";
/// Folder of the demonstrations.
const DEMONSTRATIONS: &str = "walkthroughs/demonstrations/";
/// Folder of the topics.
const TOPICS: &str = "walkthroughs/topics/";
/// Folder of the data sheets.
const UNITS: &str = "walkthroughs/units/";

/// What could be read of a lot.
#[derive(Debug)]
pub(crate) struct Gathered {
    bundle: Arc<Bundle>,
    forms: Forms,
    words: Words,
}

/// What could be read of the forms, and the faults found so far.
#[derive(Debug, Default)]
struct Forms {
    lot: Option<From<Lot>>,
    readings: Option<BTreeMap<String, Scale>>,
    topics: BTreeMap<String, From<Topic>>,
    units: BTreeMap<String, From<Sheet>>,
    guides: BTreeMap<String, From<Guide>>,
    demonstrations: BTreeMap<String, From<DemoForm>>,
    hazards: Option<From<Vec<At<HazardRule>>>>,
    faults: Vec<Fault>,
}

impl Gathered {
    /// Reads every file of a bundle.
    pub(crate) fn read(bundle: Arc<Bundle>) -> Self {
        let mut forms = Forms::default();
        let texts = bundle.texts(&mut forms.faults);
        let (files, other): (Vec<SourceFile>, Vec<SourceFile>) =
            texts.into_iter().partition(|f| f.name.ends_with(".ron"));
        // Forms and words know nothing of each other, and a tablet has more than one core.
        let loaded = std::thread::scope(|scope| {
            let thread = std::thread::Builder::new().spawn_scoped(scope, || Words::load(&other));
            files.iter().for_each(|file| forms.read(file));
            thread.ok().and_then(|thread| thread.join().ok())
        });
        let (words, faults) = loaded.unwrap_or_else(|| Words::load(&other));
        forms.faults.extend(faults);
        for name in [LOT, READINGS].into_iter().filter(|name| !bundle.has(name)) {
            let place = Place::start(&Arc::from(name));
            let hint = "copy the demo lot's and change it";
            forms.faults.push(Fault::new("lot.missing-file", place, "the lot folder has no such file", hint));
        }
        forms.faults.extend(not_read(&bundle));
        Self { bundle, forms, words }
    }

    /// The faults found so far; they are told once.
    pub(crate) fn take_faults(&mut self) -> Vec<Fault> {
        std::mem::take(&mut self.forms.faults)
    }

    /// Whether the lot file and the readings could be read.
    pub(crate) fn has_lot_and_readings(&self) -> (bool, bool) {
        (self.forms.lot.is_some(), self.forms.readings.is_some())
    }

    /// The text of a file, as far as it is text.
    pub(crate) fn text_of(&self, name: &str) -> String {
        let bytes = self.bundle.get(name).map(AsRef::as_ref).unwrap_or_default();
        String::from_utf8_lossy(bytes).into_owned()
    }

    /// The scripts, if the lot and its readings could be read.
    pub(crate) fn scripts(self) -> Option<Scripts> {
        let Self { bundle, forms, words } = self;
        let Forms { lot, readings, topics, units, guides, demonstrations, hazards, .. } = forms;
        let (lot, readings) = (lot?, readings?);
        Some(Scripts { bundle, lot, topics, units, readings, guides, demonstrations, hazards, words })
    }

    /// The scripts with the lot file of the demo lot, or with no readings, where the lot's own cannot be read: so
    /// that the rest can be checked.
    pub(crate) fn scripts_with_stand_ins(mut self) -> Option<Scripts> {
        if self.forms.lot.is_none() {
            let (name, bytes) = EMBEDDED.iter().find(|(name, _)| *name == LOT)?;
            let file = SourceFile::new(name, std::str::from_utf8(bytes).ok()?);
            self.forms.lot = read(&file).0.map(|value| From { file, value });
        }
        let _ = self.forms.readings.get_or_insert_default();
        self.scripts()
    }
}

/// Files that look like scripts or words and are neither, by the ends of their names.
fn not_read(bundle: &Bundle) -> impl Iterator<Item = Fault> + '_ {
    let ends = |name: &str| match name.split('/').next() {
        Some("walkthroughs") => Some(".ron"),
        Some("i18n") => Some(".ftl"),
        _ => None,
    };
    bundle.names().filter_map(move |name| {
        let end = ends(name).filter(|end| !name.ends_with(end))?;
        let hint = format!("if it should be read, give it a name that ends in `{end}`; else take it out");
        Some(Fault::note("lot.unknown-file", Place::start(&Arc::from(name)), "nothing reads this file", hint))
    })
}

impl Forms {
    fn read(&mut self, file: &SourceFile) {
        match file.name.as_ref() {
            LOT => self.lot = self.take(file),
            READINGS => self.readings = self.take(file).map(|readings| readings.value),
            name if name.starts_with(TOPICS) => {
                if let Some(topic) = self.take::<Topic>(file) {
                    named_as_file(&topic.value.id, file, &mut self.faults);
                    let _ = self.topics.insert(topic.value.id.value.clone(), topic);
                }
            }
            name if name.starts_with(UNITS) => {
                if let Some(sheet) = self.take::<Sheet>(file) {
                    named_as_file(&sheet.value.id, file, &mut self.faults);
                    let _ = self.units.insert(sheet.value.id.value.clone(), sheet);
                }
            }
            HAZARDS => self.hazards = self.take(file),
            name if name.starts_with(GUIDES) => {
                if let Some(guide) = self.take::<Guide>(file) {
                    named_as_file(&guide.value.id, file, &mut self.faults);
                    let _ = self.guides.insert(guide.value.id.value.clone(), guide);
                }
            }
            name if name.starts_with(DEMONSTRATIONS) => {
                if let Some(demo) = self.take::<DemoForm>(file) {
                    named_as_file(&demo.value.id, file, &mut self.faults);
                    let _ = self.demonstrations.insert(demo.value.id.value.clone(), demo);
                }
            }
            _ => self.faults.push(Fault::new(
                "lot.unknown-file",
                Place::start(&file.name),
                "nothing reads this file",
                "scripts are `lot.ron`, `readings.ron`, `hazards.ron`, `topics/*.ron`, `demonstrations/*.ron`, `units/*.ron` and `guides/*.ron`",
            )),
        }
    }

    fn take<T: serde::de::DeserializeOwned>(&mut self, file: &SourceFile) -> Option<From<T>> {
        let (value, found) = read(file);
        self.faults.extend(found);
        value.map(|value| From { file: file.clone(), value })
    }
}

/// A file is named as what it holds, so that people find it and no id is given twice.
fn named_as_file(id: &At<String>, file: &SourceFile, faults: &mut Vec<Fault>) {
    let stem = file.name.rsplit('/').next().and_then(|n| n.strip_suffix(".ron")).unwrap_or_default();
    if stem != id.value {
        faults.push(Fault::new(
            "form.id-and-file",
            file.place_at(id.at),
            format!("the id is `{}`, the file is `{stem}.ron`", id.value),
            "give both the same name",
        ));
    }
}

impl Scripts {
    /// The lot's offset from UTC at a time, in minutes, east positive. A zone that cannot be read counts as
    /// UTC; `check` reports it.
    #[must_use]
    pub fn offset_minutes(&self, at: jiff::Timestamp) -> i16 {
        let Ok(zone) = jiff::tz::TimeZone::posix(&self.lot.value.zone.value) else { return 0 };
        i16::try_from(zone.to_offset(at).seconds() / 60).unwrap_or(0)
    }
}
