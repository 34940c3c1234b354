//! Kinds of damage, each planted in an otherwise good archive: an audit finds exactly it, and whoever takes in the
//! damaged files gets everything else. Then all of them at once among many records.

mod hand;
mod inside;
mod outside;
mod table;

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Instant;

use jiff::{SignedDuration, Timestamp};
use sendoff::archive::Archive;
use sendoff::archive::audit::{Report, audit};
use sendoff::archive::chains::Chain;
use sendoff::archive::import::{Plan, Summary, import};
use sendoff::ports::Disk;
use sendoff::ports::fake::MemoryDisk;
use sendoff::record::seal::RecordId;
use sendoff::words::{Reader, Words};

use super::hasty::Hasty;
use super::many::{Made, START, Tablet, fill_sticks, put};
use super::support::with_disk;
use crate::seal::time;
use hand::{Hand, Planted};
use table::{Import, Row, TABLE};

/// When the damage is looked for; the records were sealed from spring 2023 to spring 2026.
pub const LATER: &str = "2026-08-01T12:00:00Z";
/// Tablets with a chain of six records, and with one record.
const CHAINS: u8 = 14;
const SINGLES: u8 = 6;
pub const LINKS: u32 = 6;
/// Records of the large archive, unless the environment says otherwise.
const MANY: u32 = 10_000;

/// An archive in the folder `office`, in which all is well.
pub struct Scene {
    pub disk: Arc<dyn Disk>,
    pub root: PathBuf,
    pub tablets: Arc<Vec<Tablet>>,
    pub made: Arc<Vec<Made>>,
}

impl Scene {
    /// Makes records of three busy tablets and many quiet ones, and takes them in by the half-year.
    pub fn new(disk: Arc<dyn Disk>, root: &Path, bulk: u32) -> Self {
        let busy = (1..=3).map(|n| Tablet::new(&format!("b{n}"), n, bulk / 3));
        let chains = (1..=CHAINS).map(|n| Tablet::new(&format!("c{n}"), 20 + n, LINKS));
        let singles = (1..=SINGLES).map(|n| Tablet::new(&format!("s{n}"), 40 + n, 1));
        let mut tablets: Vec<Tablet> = busy.chain(chains).chain(singles).collect();
        let start = Instant::now();
        let made = fill_sticks(&disk, root, &mut tablets);
        let sealed = start.elapsed();
        let list: String = tablets.iter().map(|tablet| tablet.line() + "\n").collect();
        put(disk.as_ref(), &root.join("list"), list.as_bytes());
        let scene = Self { disk, root: root.to_owned(), tablets: Arc::new(tablets), made: Arc::new(made) };
        let start = Instant::now();
        scene.take_sticks();
        eprintln!("{} records: sealed in {sealed:?}, taken in in {:?}", scene.made.len(), start.elapsed());
        scene
    }

    fn take_sticks(&self) {
        for half in 0..7_i64 {
            let stick = self.root.join(format!("stick/{half}"));
            if self.disk.is_dir(&stick) {
                let at = time(START) + SignedDuration::from_hours((half + 1) * 183 * 24);
                let summary = self.take("office", &stick, "list", at);
                assert!(summary.is_good() && summary.chains.is_empty(), "{summary:?}");
            }
        }
    }

    /// Takes a folder into an archive of this name, which trusts the tablets of a list.
    fn take(&self, archive: &str, from: &Path, list: &str, at: Timestamp) -> Summary {
        let ports = with_disk(Arc::clone(&self.disk), &at.to_string());
        let mut archive = Archive::open_or_create(&ports, &self.root.join(archive)).unwrap();
        archive.adopt(self.disk.as_ref(), &self.root.join(list)).unwrap();
        let paths = [from.to_owned()];
        import(&archive, Plan { paths: &paths, rehearsals: false }, &ports, &mut |_| {}).unwrap()
    }

    pub fn office(&self) -> PathBuf {
        self.root.join("office")
    }

    pub fn archive(&self, name: &str) -> Archive {
        Archive::open(Arc::clone(&self.disk), &self.root.join(name)).unwrap()
    }

    fn audit(&self, name: &str) -> Report {
        audit(&self.archive(name), time(LATER), &mut |_, _| {}).unwrap()
    }
}

/// The same files on a disk of their own.
fn copy(of: &Scene, disk: &MemoryDisk) -> Scene {
    let copy = MemoryDisk::new();
    for (path, bytes) in disk.files().into_iter().filter(|(path, _)| path.starts_with(of.office())) {
        copy.plant(&path, &bytes);
    }
    let (tablets, made) = (Arc::clone(&of.tablets), Arc::clone(&of.made));
    Scene { disk: Arc::new(copy), root: of.root.clone(), tablets, made }
}

fn words() -> Words {
    let files = sendoff::script::EMBEDDED.iter().filter(|(name, _)| name.ends_with("/archive.ftl"));
    let files: Vec<sendoff::source::SourceFile> = files
        .map(|(name, bytes)| sendoff::source::SourceFile::new(name, std::str::from_utf8(bytes).unwrap()))
        .collect();
    Words::load(&files).0
}

/// Logs in which something was changed by hand, and what is said of them.
type Logs = BTreeSet<(&'static str, String)>;
type Found = Vec<(String, String)>;

/// Code and place of what was found, sorted.
fn found(report: &Report) -> Found {
    let mut found: Found =
        report.findings.iter().map(|f| (f.problem.code().to_owned(), f.place.clone())).collect();
    found.sort();
    // One log can be damaged in several ways.
    found.dedup_by(|a, b| a == b && a.0 == "receipt-log");
    found
}

/// The audit finds what was planted and nothing else, and says so in words.
fn check_audit(scene: &Scene, planted: &[(&Row, Planted)], logs: &Logs) {
    let report = scene.audit("office");
    let expected = planted.iter().flat_map(|(row, planted)| {
        assert_eq!(row.audit.len(), planted.places.len(), "{}", row.damage);
        row.audit.iter().map(|code| (*code).to_owned()).zip(planted.places.iter().cloned())
    });
    let logs = logs.iter().map(|(code, log)| ((*code).to_owned(), log.clone()));
    let mut expected: Found = expected.chain(logs).collect();
    expected.sort();
    let names: Vec<&str> = planted.iter().map(|(row, _)| row.damage).collect();
    assert_eq!(found(&report), expected, "{names:?}");
    let words = words();
    for (row, planted) in planted {
        let said = report.findings.iter().filter(|f| planted.places.contains(&f.place));
        let said: String = said.map(|f| f.say(&words, &Reader::default())).collect();
        assert!(said.contains(planted.names) && !said.contains("archive-"), "{}: {said}", row.damage);
    }
}

/// Numbers of each chain that are not there, though later ones are: a gap for each run of them.
fn gaps(present: &BTreeSet<String>) -> Found {
    let mut chains: BTreeMap<String, BTreeSet<u32>> = BTreeMap::new();
    for id in present {
        let id: RecordId = id.parse().unwrap();
        chains.entry(Chain::of(&id).to_string()).or_default().insert(id.number());
    }
    let mut gaps = Vec::new();
    for (chain, numbers) in chains {
        let begins = |n: &u32| !numbers.contains(n) && (*n == 1 || numbers.contains(&(n - 1)));
        let count = (1..*numbers.last().unwrap()).filter(begins).count();
        gaps.extend(std::iter::repeat_n(("chain-gap".to_owned(), chain), count));
    }
    gaps
}

/// Whoever takes in the damaged files refuses the damaged ones, for the right reason, and gets all others.
fn check_import(scene: &Scene, planted: &[(&Row, Planted)]) {
    let names: Vec<&str> = planted.iter().map(|(row, _)| row.damage).collect();
    let records = scene.office().join("records");
    let before: BTreeMap<String, Vec<u8>> = match planted {
        [_] => files(scene, "office", "records"),
        _ => BTreeMap::new(),
    };
    let summary = scene.take("fresh", &records, "office/trust/allowed_signers", time(LATER));
    let mut wanted: BTreeSet<String> = scene.made.iter().map(|made| made.id.to_string()).collect();
    let (mut bad, mut chains, mut copies) = (Vec::new(), Vec::new(), 0);
    for (row, planted) in planted {
        wanted.extend(planted.more.iter().map(ToString::to_string));
        planted.gone.iter().for_each(|id| assert!(wanted.remove(&id.to_string()), "{}", row.damage));
        copies += planted.copies;
        match row.import {
            Import::Refused(code) => bad.extend(planted.refused.iter().map(|p| (code.to_owned(), p.clone()))),
            Import::Remarked(code) => chains.push((code.to_owned(), planted.places.last().unwrap().clone())),
            Import::Comes => {}
        }
    }
    let new: BTreeSet<String> = summary.new.iter().map(|filed| filed.id.to_string()).collect();
    assert_eq!(new.symmetric_difference(&wanted).collect::<Vec<_>>(), Vec::<&String>::new(), "{names:?}");
    assert_eq!((summary.new.len(), summary.known), (wanted.len(), copies), "{names:?}");
    bad.sort();
    let place = |path: &Path| path.strip_prefix(scene.office()).unwrap().to_string_lossy().into_owned();
    let mut said: Found = summary.bad.iter().map(|(path, bad)| (bad.code.to_owned(), place(path))).collect();
    said.sort();
    assert_eq!(said, bad, "{names:?}");
    chains.extend(gaps(&wanted));
    chains.sort();
    let mut said: Found =
        summary.chains.iter().map(|f| (f.problem.code().to_owned(), f.place.clone())).collect();
    said.sort();
    assert_eq!(said, chains, "{names:?}");
    check_fresh(scene, &summary, &before);
}

/// What was taken in is what lay there; what was not lies in quarantine as it was.
fn check_fresh(scene: &Scene, summary: &Summary, before: &BTreeMap<String, Vec<u8>>) {
    let read = |path: &Path| scene.disk.read(path, 1 << 24).unwrap();
    for (path, bad) in &summary.bad {
        let kept = scene.root.join("fresh").join(bad.kept.as_ref().unwrap());
        assert_eq!(read(&kept), read(path), "{}", path.display());
    }
    let originals: BTreeSet<&Vec<u8>> = before.values().collect();
    if !originals.is_empty() {
        assert!(files(scene, "fresh", "records").values().all(|bytes| originals.contains(bytes)));
    }
    let report = scene.audit("fresh");
    let wrong = report.findings.iter().filter(|f| f.chain.is_none() && f.problem.code() != "quarantined");
    assert_eq!(wrong.collect::<Vec<_>>(), Vec::<&sendoff::archive::audit::Finding>::new());
    assert_eq!(report.good, summary.new.len());
}

/// The files below a folder of an archive, by name.
fn files(scene: &Scene, archive: &str, below: &str) -> BTreeMap<String, Vec<u8>> {
    let (mut files, mut folders) = (BTreeMap::new(), vec![scene.root.join(archive).join(below)]);
    while let Some(folder) = folders.pop() {
        for name in scene.disk.list(&folder).unwrap() {
            let path = folder.join(&name);
            if scene.disk.is_dir(&path) {
                folders.push(path);
            } else {
                files.insert(path.to_string_lossy().into_owned(), scene.disk.read(&path, 1 << 24).unwrap());
            }
        }
    }
    files
}

#[test]
fn each_kind_of_damage_is_found_and_nothing_else() {
    let disk = MemoryDisk::new();
    let scene = Scene::new(Arc::new(disk.clone()), Path::new("/world"), 24);
    check_audit(&scene, &[], &Logs::new());
    for row in &TABLE {
        let scene = copy(&scene, &disk);
        let mut hand = Hand::new(&scene);
        let planted = [(row, (row.plant)(&mut hand))];
        check_audit(&scene, &planted, &hand.logs.borrow());
        check_import(&scene, &planted);
    }
}

/// Ten thousand take half a minute; `SENDOFF_MANY_RECORDS` takes more or fewer.
#[test]
fn all_kinds_of_damage_at_once_are_found_among_many_records() {
    let many = std::env::var("SENDOFF_MANY_RECORDS").map_or(MANY, |many| many.parse().unwrap());
    let dir = tempfile::tempdir().unwrap();
    let scene = Scene::new(Arc::new(Hasty), dir.path(), many);
    std::fs::remove_dir_all(dir.path().join("stick")).unwrap();
    let start = Instant::now();
    check_audit(&scene, &[], &Logs::new());
    eprintln!("audited in {:?}", start.elapsed());
    let mut hand = Hand::new(&scene);
    let planted: Vec<(&Row, Planted)> = TABLE.iter().map(|row| (row, (row.plant)(&mut hand))).collect();
    check_audit(&scene, &planted, &hand.logs.borrow());
    let start = Instant::now();
    check_import(&scene, &planted);
    eprintln!(
        "{} kinds of damage; the rest was taken in and audited in {:?}",
        planted.len(),
        start.elapsed()
    );
}
