//! The hand that damages: what it can reach, what it takes next, what it says it did.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::path::PathBuf;

use sendoff::archive::chains::Chain;
use sendoff::record::seal::{Kind, RecordId};

use super::{LINKS, SINGLES, Scene};
use crate::archive::many::{Made, Tablet, put};
use crate::seal::Payload;
use crate::verify::pack;

/// What was done, and what is to be seen of it.
#[derive(Debug, Default)]
pub struct Planted {
    /// The place of each finding of an audit.
    pub places: Vec<String>,
    /// Files that an import refuses.
    pub refused: Vec<String>,
    /// Records that are then not in the archive that took in the files.
    pub gone: Vec<RecordId>,
    /// Records that are there beside those that were made.
    pub more: Vec<RecordId>,
    /// Second copies of records.
    pub copies: usize,
    /// What the words of the finding name.
    pub names: &'static str,
}

impl Planted {
    /// A file that is damaged where it lies.
    pub fn file(made: &Made) -> Self {
        let place = made.place();
        let (refused, gone) = (vec![place.clone()], vec![made.id.clone()]);
        Self { places: vec![place], refused, gone, ..Self::default() }
    }

    /// The same, and the file of the record that is named.
    pub fn named(made: &Made, names: &'static str) -> Self {
        Self { names, ..Self::file(made) }
    }

    /// Something that is seen at a place, and does not keep the file from being taken in.
    pub fn seen(place: impl Into<String>) -> Self {
        Self { places: vec![place.into()], ..Self::default() }
    }
}

/// Never takes the same record twice, so that all kinds of damage can be done to one archive.
pub struct Hand<'a> {
    pub scene: &'a Scene,
    bulk: Vec<&'a Made>,
    chains: u8,
    singles: u8,
    /// Logs in which a line was changed or taken out, and logs that were begun by hand.
    pub logs: RefCell<BTreeSet<(&'static str, String)>>,
}

impl<'a> Hand<'a> {
    pub fn new(scene: &'a Scene) -> Self {
        let handoffs =
            scene.made.iter().filter(|m| m.id.tablet().starts_with('b') && m.kind == Kind::Handoff);
        let handoffs: Vec<&Made> = handoffs.collect();
        // From all three years and tablets.
        let step = handoffs.len() / 7;
        let mut bulk: Vec<(usize, usize)> = (0..handoffs.len()).map(|at| (at % step, at)).collect();
        bulk.sort_unstable();
        let bulk = bulk.into_iter().rev().map(|(_, at)| handoffs[at]).collect();
        Self { scene, bulk, chains: 0, singles: 0, logs: RefCell::default() }
    }

    /// A handoff record among many.
    pub fn record(&mut self) -> &'a Made {
        self.bulk.pop().unwrap()
    }

    /// All records of a short chain, and its tablet.
    pub fn chain(&mut self) -> (&'a Tablet, Vec<&'a Made>) {
        self.chains += 1;
        self.of(&format!("c{}", self.chains))
    }

    /// The only record of a tablet.
    pub fn single(&mut self) -> &'a Made {
        self.singles += 1;
        assert!(self.singles <= SINGLES);
        self.of(&format!("s{}", self.singles)).1[0]
    }

    fn of(&self, tablet: &str) -> (&'a Tablet, Vec<&'a Made>) {
        let made: Vec<&Made> = self.scene.made.iter().filter(|made| made.id.tablet() == tablet).collect();
        assert!(made.len() == 1 || made.len() == LINKS as usize);
        (self.tablet(made[0]), made)
    }

    pub fn tablet(&self, made: &Made) -> &'a Tablet {
        self.scene.tablets.iter().find(|tablet| tablet.name == made.id.tablet()).unwrap()
    }

    pub fn path(&self, place: &str) -> PathBuf {
        self.scene.office().join(place)
    }

    pub fn read(&self, place: &str) -> Vec<u8> {
        self.scene.disk.read(&self.path(place), 1 << 24).unwrap()
    }

    pub fn put(&self, place: &str, bytes: &[u8]) {
        put(self.scene.disk.as_ref(), &self.path(place), bytes);
    }

    pub fn remove(&self, place: &str) {
        self.scene.disk.remove(&self.path(place)).unwrap();
    }

    /// Changes the files of a record and packs them again.
    pub fn repack(&self, made: &Made, change: impl FnOnce(&mut Payload)) {
        let bytes = self.read(&made.place());
        let root = format!("{}/", made.id);
        let entries = sendoff::record::zip::read(&bytes).unwrap();
        let name = |name: &str| name.strip_prefix(&root).unwrap().to_owned();
        let mut files: Payload = entries.iter().map(|e| (name(e.name), e.bytes.to_vec())).collect();
        change(&mut files);
        self.put(&made.place(), &pack(&made.id.to_string(), &files));
    }

    /// Changes the line of a record's receipt.
    pub fn log(&self, made: &Made, change: impl Fn(&str) -> String) {
        let id = format!(" {} ", made.id);
        for name in self.scene.disk.list(&self.path("receipts")).unwrap() {
            let log = format!("receipts/{name}");
            let text = String::from_utf8(self.read(&log)).unwrap();
            if text.contains(&id) {
                let lines = text.split_inclusive('\n');
                let changed = lines.map(|l| if l.contains(&id) { change(l) } else { l.to_owned() });
                let changed = changed.collect::<String>();
                assert_ne!(changed, text);
                self.put(&log, changed.as_bytes());
                self.logs.borrow_mut().insert(("receipt-log", log));
                return;
            }
        }
        panic!("no receipt of {id}");
    }

    /// Takes record and receipt away.
    pub fn lose(&self, made: &Made) {
        self.remove(&made.place());
        self.log(made, |_| String::new());
    }

    /// Adds a record that was never received, with a receipt if it is to look as if it had been.
    pub fn add(&self, made: &Made, zip: &[u8], receipt: bool) {
        self.put(&made.place(), zip);
        if receipt {
            let log = "receipts/2026-07.log";
            let exists =
                self.scene.disk.list(&self.path("receipts")).unwrap().contains(&"2026-07.log".to_owned());
            let before = if exists { self.read(log) } else { Vec::new() };
            let line = format!("2026-07-01T12:00:00Z {} {} by hand\n", made.digest, made.id);
            self.put(log, &[before, line.into_bytes()].concat());
            self.logs.borrow_mut().insert(("receipt-unsigned", log.to_owned()));
        }
    }

    /// Changes the line of a tablet in the list of those that are trusted.
    pub fn trust(&self, tablet: &str, change: impl Fn(&str) -> String) {
        let list = "trust/allowed_signers";
        let text = String::from_utf8(self.read(list)).unwrap();
        let name = format!("{tablet} ");
        let lines = text.split_inclusive('\n');
        let changed = lines.map(|l| if l.starts_with(&name) { change(l) } else { l.to_owned() });
        self.put(list, changed.collect::<String>().as_bytes());
    }
}

/// The name of a record's chain.
pub fn chain_of(made: &Made) -> String {
    Chain::of(&made.id).to_string()
}
