//! The scripts of a lot: topics, data sheets, readings and words, loaded as a whole.
//!
//! [`Scripts::load`] collects every fault of every file; nothing half-read is ever led from. An open walk
//! keeps the [`Bundle`] it began with, known by its digest.

mod bundle;
mod condition;
mod form;
mod kinds;
mod text;

use std::collections::BTreeMap;
use std::sync::Arc;

pub use bundle::{Bundle, BundleFault, EMBEDDED};
pub use condition::When;
pub use form::{CautionForm, Guarded, LineForm, Priority, ReadingRef, StepForm, Topic};
pub use kinds::{Answers, Ask, Harm, Hazard, Scale, Signal};
pub use text::{CautionText, Speaker, StepText};

use crate::source::{At, Fault, Place, SourceFile, read};
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
    /// Words of all languages.
    pub words: Words,
}

impl Scripts {
    /// Reads all scripts of a bundle. Without faults they can be led from; with faults, `check` says which.
    #[must_use]
    pub fn load(bundle: Arc<Bundle>) -> (Option<Self>, Vec<Fault>) {
        let mut faults = Vec::new();
        let texts = bundle.texts(&mut faults);
        let mut lot = None;
        let mut readings = None;
        let mut topics = BTreeMap::new();
        let mut units = BTreeMap::new();
        for file in texts.iter().filter(|f| f.name.ends_with(".ron")) {
            match file.name.as_ref() {
                "walkthroughs/lot.ron" => lot = take(file, &mut faults),
                "walkthroughs/readings.ron" => readings = take::<BTreeMap<String, Scale>>(file, &mut faults),
                name if name.starts_with("walkthroughs/topics/") => {
                    if let Some(topic) = take::<Topic>(file, &mut faults) {
                        named_as_file(&topic.value.id, &topic.file, &mut faults);
                        let _ = topics.insert(topic.value.id.value.clone(), topic);
                    }
                }
                name if name.starts_with("walkthroughs/units/") => {
                    if let Some(sheet) = take::<Sheet>(file, &mut faults) {
                        named_as_file(&sheet.value.id, &sheet.file, &mut faults);
                        let _ = units.insert(sheet.value.id.value.clone(), sheet);
                    }
                }
                _ => faults.push(Fault::new(
                    "lot.unknown-file",
                    Place::start(&file.name),
                    "nothing reads this file",
                    "scripts are `lot.ron`, `readings.ron`, `topics/*.ron` and `units/*.ron`",
                )),
            }
        }
        let ftl: Vec<SourceFile> = texts.iter().filter(|f| f.name.ends_with(".ftl")).cloned().collect();
        let (words, word_faults) = Words::load(&ftl);
        faults.extend(word_faults);
        for (name, found) in [("walkthroughs/lot.ron", lot.is_some()), ("walkthroughs/readings.ron", readings.is_some())]
        {
            if !found && !bundle.has(name) {
                faults.push(Fault::new(
                    "lot.missing-file",
                    Place { file: Arc::from(name), line: 1, col: 1 },
                    "the lot folder has no such file",
                    "copy the demo lot's and change it",
                ));
            }
        }
        let scripts = match (lot, readings) {
            (Some(lot), Some(readings)) => {
                Some(Self { bundle, lot, topics, units, readings: readings.value, words })
            }
            _ => None,
        };
        (scripts, faults)
    }

    /// The facts of a unit, if it is on the lot.
    #[must_use]
    pub fn facts(&self, unit: &str) -> Option<Facts> {
        self.units.get(unit).map(|sheet| Facts::new(&sheet.value, &self.lot.value))
    }
}

fn take<T: serde::de::DeserializeOwned>(file: &SourceFile, faults: &mut Vec<Fault>) -> Option<From<T>> {
    let (value, found) = read(file);
    faults.extend(found);
    value.map(|value| From { file: file.clone(), value })
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
