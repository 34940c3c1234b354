//! A compiler for scripts: finds everything that is wrong with a lot at once.
//!
//! [`lot()`] loads a bundle and holds it against every rule; each finding has a code, a place and a way out. What
//! cannot be known since a file cannot be read is not told: one slip gives one fault.

mod bound;
mod clash;
mod condition;
mod delivered;
mod demonstration;
mod fit;
pub mod grade;
mod guide;
mod hazards;
mod known;
mod lost;
mod lot;
mod messages;
mod picture;
mod places;
mod reading;
mod route;
mod topic;
mod unit;
mod weights;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::script::{Bundle, From, Gathered, Scripts, StepForm, Topic};
use crate::source::{Fault, Place, Severity, SourceFile, nearest};
use crate::unit::{FactKind, catalogue};

pub use fit::{Fit, Overflow};
pub use known::where_to_read;
use lost::Lost;

/// What was found out about a lot.
#[derive(Debug)]
pub struct Report {
    /// The scripts, when they could be read.
    pub scripts: Option<Scripts>,
    /// Everything found, sorted by place.
    pub faults: Vec<Fault>,
    /// How long each unit's walk takes.
    pub walks: Vec<WalkLength>,
}

impl Report {
    /// Whether nothing worse than a note was found.
    #[must_use]
    pub fn is_clean(&self) -> bool {
        self.faults.iter().all(|f| f.severity == Severity::Note)
    }
}

/// Length of one unit's walk.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct WalkLength {
    /// Unit id.
    pub unit: String,
    /// Steps.
    pub steps: usize,
    /// Stops.
    pub stops: usize,
    /// Cautions.
    pub cautions: usize,
    /// Minutes of the steps.
    pub minutes: u32,
    /// Meters walked.
    pub meters: u32,
    /// Seconds to read the renter's words at 180 words a minute, 2 s a hold, 60 s a demonstration.
    pub reading_seconds: u32,
    /// How often the tablet changes hands.
    pub hand_overs: usize,
}

/// Checks a lot.
#[must_use]
pub fn lot(bundle: Arc<Bundle>) -> Report {
    lot_with(bundle, None)
}

/// Checks a lot, and whether its pages hold what stands on them, as `fit` measures them. A lot in which anything
/// else cannot be read is not measured.
#[must_use]
pub fn lot_with(bundle: Arc<Bundle>, fit: Option<&Fit<'_>>) -> Report {
    let mut gathered = Gathered::read(bundle);
    let mut faults = gathered.take_faults();
    let lost = Lost::of(&gathered, &faults);
    let whole = !lost.lot && !lost.readings;
    let scripts = gathered.scripts_with_stand_ins();
    let mut walks = Vec::new();
    if let Some(scripts) = &scripts {
        let mut check = Check::new(scripts, lost);
        check.all(&mut walks);
        if let Some(fit) = fit.filter(|_| whole) {
            check.pages(fit);
        }
        faults.append(&mut check.faults);
    }
    faults.sort_by(|a, b| (&a.place, a.code, &a.what).cmp(&(&b.place, b.code, &b.what)));
    faults.dedup();
    Report { scripts: scripts.filter(|_| whole), faults, walks }
}

/// One run over loaded scripts.
struct Check<'a> {
    scripts: &'a Scripts,
    lost: Lost,
    used: messages::Used,
    /// Texts that were graded.
    texts: reading::Texts,
    /// Steps by id, with their topic.
    steps: BTreeMap<&'a str, (&'a From<Topic>, &'a StepForm)>,
    /// Kinds of English that the lot has.
    english: Vec<String>,
    /// What was told of one unit, and is not told of the others.
    told: BTreeSet<(&'static str, Place)>,
    /// Rules of hazards, by number, with the units that break them.
    uncovered: BTreeMap<usize, Vec<&'a str>>,
    /// How many words messages without values have.
    lengths: BTreeMap<String, usize>,
    /// All facts that a sheet or lot can give, and all sections.
    known: (BTreeMap<String, FactKind>, Vec<&'static str>),
    faults: Vec<Fault>,
    /// How often a word was held against the known ones.
    guesses: usize,
    /// How many of the faults are notes on what is not known.
    open: usize,
}

/// Most findings beyond those of reading; a lot with more is nonsense from end to end.
const FINDINGS_CAP: usize = 1_000;
/// Most words that are held against all known ones, which takes its time.
const GUESSES_CAP: usize = 100;

impl<'a> Check<'a> {
    fn new(scripts: &'a Scripts, lost: Lost) -> Self {
        Self {
            scripts,
            lost,
            used: messages::Used::default(),
            texts: reading::Texts::default(),
            steps: steps_of(scripts),
            english: english_of(scripts),
            told: BTreeSet::new(),
            uncovered: BTreeMap::new(),
            lengths: BTreeMap::new(),
            known: catalogue(),
            faults: Vec::new(),
            guesses: 0,
            open: 0,
        }
    }

    fn all(&mut self, walks: &mut Vec<WalkLength>) {
        self.readings();
        self.topics();
        self.units();
        self.texts();
        if !self.lost.lot {
            self.lot();
            self.hazard_rules();
            self.guides();
            self.demonstrations();
            *walks = self.routes();
        }
        self.pictures();
        self.unused_messages();
    }

    fn fault(&mut self, code: &'static str, place: Place, what: impl Into<String>, hint: impl Into<String>) {
        self.find(Fault::new(code, place, what, hint));
    }

    fn note(&mut self, code: &'static str, place: Place, what: impl Into<String>, hint: impl Into<String>) {
        self.find(Fault::note(code, place, what, hint));
    }

    /// A fault that each unit has on its own is told for the first of them.
    fn fault_once(&mut self, code: &'static str, place: Place, what: String, hint: &str) {
        if self.told.insert((code, place.clone())) {
            self.fault(code, place, what, hint);
        }
    }

    fn find(&mut self, fault: Fault) {
        if self.counted() == FINDINGS_CAP {
            let what = format!("{FINDINGS_CAP} findings are enough; there are more");
            let hint = "correct the first ones and check again";
            self.faults.push(Fault::new("lot.many-findings", fault.place.clone(), what, hint));
        }
        if !self.is_full() {
            self.faults.push(fault);
        }
    }

    /// Whether more has been found than anybody reads.
    fn is_full(&self) -> bool {
        self.counted() > FINDINGS_CAP
    }

    /// Findings that count: a fleet of new units may have any number of values that nobody has read yet.
    fn counted(&self) -> usize {
        self.faults.len().saturating_sub(self.open)
    }

    /// 'did you mean' when a known word is near, else another hint.
    fn hint<'n>(
        &mut self,
        word: &str,
        known: impl IntoIterator<Item = &'n str>,
        other: impl Into<String>,
    ) -> String {
        self.guesses += 1;
        if self.guesses > GUESSES_CAP {
            return other.into();
        }
        nearest(word, known).map_or_else(|| other.into(), |near| format!("did you mean `{near}`?"))
    }

    /// Names that stand twice in one list.
    fn once<'n>(&mut self, all: impl Iterator<Item = &'n str>, place: impl Fn(usize) -> Place, hint: &str) {
        for (name, first, second) in twice(all) {
            if self.is_full() {
                return;
            }
            let what = format!("`{name}` is given twice; the other stands at {}", place(first));
            self.fault("id.duplicate", place(second), what, hint);
        }
    }

    /// An id is spelled so that it can be part of the name of a message and of a file.
    fn shape(&mut self, id: &str, place: impl FnOnce() -> Place) {
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if !(id.starts_with(|c: char| c.is_ascii_lowercase()) && id.chars().all(plain)) {
            let what = format!("`{id}` cannot be an id");
            self.fault("id.shape", place(), what, "use small letters, digits and dashes, a letter first");
        }
    }
}

/// All steps by id; of two with one id the first.
fn steps_of(scripts: &Scripts) -> BTreeMap<&str, (&From<Topic>, &StepForm)> {
    let mut all = BTreeMap::new();
    for topic in scripts.topics.values() {
        for step in topic.value.steps.iter().map(|s| &s.value) {
            let _ = all.entry(step.id.value.as_str()).or_insert((topic, step));
        }
    }
    all
}

/// Tags of the languages that are a kind of English.
fn english_of(scripts: &Scripts) -> Vec<String> {
    let all = scripts.words.languages().into_iter();
    all.filter(|tag| tag == "en" || tag.starts_with("en-")).collect()
}

/// The file of this name as text; empty when there is none.
fn file_of(scripts: &Scripts, name: &str) -> SourceFile {
    let bytes = scripts.bundle.get(name).map(AsRef::as_ref).unwrap_or_default();
    SourceFile::new(name, &String::from_utf8_lossy(bytes))
}

/// Names that stand twice, with the positions of both.
fn twice<'n>(all: impl Iterator<Item = &'n str>) -> Vec<(&'n str, usize, usize)> {
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    let mut found = Vec::new();
    for (at, name) in all.enumerate() {
        match seen.get(name) {
            Some(first) => found.push((name, *first, at)),
            None => {
                let _ = seen.insert(name, at);
            }
        }
    }
    found
}
