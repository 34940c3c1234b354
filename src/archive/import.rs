//! Taking records in: verified before filed, each exactly once, whatever stops it in between.
//!
//! For a new record the receipt is appended and synced first, then the record is filed. A crash between the two
//! leaves a receipt without a record; when the record comes again, it is filed under that receipt. What is not
//! taken goes to quarantine. The originals are only read.
//!
//! Reading and judging goes ahead on several cores. One thread files, in order, a few records at a time: a disk makes
//! many files durable nearly as fast as one.

mod ahead;
mod beside;
mod foreign;
mod one;

use std::collections::BTreeMap;
use std::convert::Infallible;
use std::path::{Path, PathBuf};

use ahead::{Ahead, Job, Source};
use foreign::Foreign;
use jiff::Timestamp;
use one::{Done, Pending};

use super::audit::Finding;
use super::chains::{Chain, Link, Said, Walker};
use super::receipts::{LogFault, Receipt, Receipts, Writer};
use super::{Archive, ArchiveFault, Filed, MARKS, RECEIPTS, marks, receipts, search, trust};
use crate::ports::{Disk, Ports};
use crate::record::keys::TabletKey;
use crate::record::receipt::{self, to_second};
use crate::record::seal::{Digest, RecordId};

/// What is to be taken in.
#[derive(Debug, Clone, Copy)]
pub struct Plan<'a> {
    /// ZIP files, unpacked bags, or folders with such in them at any depth.
    pub paths: &'a [PathBuf],
    /// Whether rehearsals are taken too. They are never evidence.
    pub rehearsals: bool,
}

/// What became of one place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome {
    /// It was filed.
    New(Filed),
    /// The archive had it already.
    Known(Filed),
    /// A rehearsal, which was left alone.
    Rehearsal,
    /// It was not taken.
    Bad(Bad),
}

/// Why something was not taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bad {
    /// A code that stays the same in all versions.
    pub code: &'static str,
    /// The reason in words.
    pub why: String,
    /// Where it lies in quarantine; nothing where it could not be read.
    pub kept: Option<String>,
}

/// How far it is.
#[derive(Debug, Clone, Copy)]
pub struct Progress<'a> {
    /// Places done.
    pub done: usize,
    /// Places in all.
    pub of: usize,
    /// The one just done.
    pub path: &'a Path,
    /// What became of it.
    pub outcome: &'a Outcome,
}

/// What an import did.
#[derive(Debug, Clone, Default)]
pub struct Summary {
    /// Records filed, in the order in which they came.
    pub new: Vec<Filed>,
    /// How many the archive had already.
    pub known: usize,
    /// Rehearsals that were left alone.
    pub rehearsals: Vec<PathBuf>,
    /// What was not taken.
    pub bad: Vec<(PathBuf, Bad)>,
    /// What the chains of the new records show. A gap may close with the next stick.
    pub chains: Vec<Finding>,
    /// Receipts that were written beside what was taken.
    pub receipts: Vec<PathBuf>,
    /// Logs of receipts in a stand-alone copy that are not believed, and why: what they tell is judged now.
    pub refused: Vec<(PathBuf, String)>,
    /// Folders in which no receipt could be written, with the reason.
    pub no_receipt: Vec<(PathBuf, String)>,
}

impl Summary {
    /// Whether everything found is in the archive.
    #[must_use]
    pub const fn is_good(&self) -> bool {
        self.bad.is_empty() && self.rehearsals.is_empty()
    }
}

/// What is in hand while records are taken in.
struct Work<'a> {
    archive: &'a Archive,
    ahead: Ahead<'a>,
    /// The archive's own receipts.
    own: Receipts,
    /// How many there were before.
    before: usize,
    writer: Writer<'a>,
    /// Good new records that are to be filed together.
    pending: Vec<Pending>,
    /// Folders whose names were made durable in this run.
    settled: Vec<String>,
    /// Numbers that are new, by chain: their marks may rise.
    touched: BTreeMap<String, (u32, RecordId)>,
    /// What the new records say of themselves, by chain.
    fresh: BTreeMap<Chain, BTreeMap<u32, Said>>,
}

/// Takes records in.
///
/// # Errors
/// No tablet is trusted, a path is not there, the receipts cannot be relied on, or the disk refuses: then what was
/// filed stays filed, and the same import can be run again.
pub fn import(
    archive: &Archive,
    plan: Plan<'_>,
    ports: &Ports,
    told: &mut dyn FnMut(Progress<'_>),
) -> Result<Summary, ArchiveFault> {
    archive.need_tablets()?;
    let disk = ports.disk.as_ref();
    if let Some(path) = plan.paths.iter().find(|path| !is_there(disk, path)) {
        return Err(ArchiveFault::NoSuchPath(path.clone()));
    }
    let _held = archive.take_lock()?;
    let office = archive.office_key()?;
    let known = archive.receipts()?;
    // A torn end is what a crash leaves; anything else means that times of receipt may be lost.
    if let Some(fault) = known.faults().iter().find(|fault| !matches!(fault, LogFault::Torn { .. })) {
        return Err(ArchiveFault::Receipts { fault: fault.clone() });
    }
    for folder in ["", RECEIPTS] {
        archive.store().settle(folder)?;
    }
    let mut summary = Summary::default();
    let (sources, jobs) = found(archive, plan, disk, &mut summary)?;
    let now = to_second(ports.clock.now());
    let ahead = Ahead { archive, disk, known: &known, sources: &sources, rehearsals: plan.rehearsals, now };
    let mut work = Work {
        archive,
        ahead,
        own: known.clone(),
        before: known.len(),
        writer: Writer::new(archive.store()),
        pending: Vec::new(),
        settled: Vec::new(),
        touched: BTreeMap::new(),
        fresh: BTreeMap::new(),
    };
    let mut books = Books { summary, done: 0, jobs: &jobs, sources: &sources, lines: BTreeMap::new() };
    ahead.each(&jobs, &mut |job, read| {
        for done in work.take(job, read)? {
            books.note(done, told);
        }
        Ok(())
    })?;
    for done in work.flush()? {
        books.note(done, told);
    }
    let Books { mut summary, lines, .. } = books;
    for (folder, lines) in lines {
        // No tablet waits for a receipt in the archive itself.
        if !folder.starts_with(archive.dir()) {
            beside::write(&work, folder, lines, &office, &mut summary);
        }
    }
    summary.chains = work.chains();
    receipts::marked::set(archive.store(), &office, &trust::offices(archive.signers()))?;
    work.raise_marks(&office)?;
    Ok(summary)
}

/// All places below the paths, and what belongs to each path.
fn found(
    archive: &Archive,
    plan: Plan<'_>,
    disk: &dyn Disk,
    summary: &mut Summary,
) -> Result<(Vec<Source>, Vec<Job>), ArchiveFault> {
    let (mut sources, mut jobs) = (Vec::new(), Vec::new());
    for path in plan.paths {
        let mut foreign = Foreign::read(disk, path, &trust::offices(archive.signers()))?;
        summary.refused.append(&mut foreign.refused);
        search::each(disk, path, &mut |place| -> Result<(), ArchiveFault> {
            jobs.push(Job { at: jobs.len(), place, source: sources.len() });
            Ok(())
        })?;
        let folder = if disk.is_dir(path) { path.as_path() } else { path.parent().unwrap_or(path) };
        sources.push(Source { foreign, folder: folder.to_owned() });
    }
    Ok((sources, jobs))
}

/// What became of the places so far.
struct Books<'a> {
    summary: Summary,
    done: usize,
    jobs: &'a [Job],
    sources: &'a [Source],
    /// Lines of the receipts that go beside what was taken, by folder.
    lines: BTreeMap<&'a Path, Vec<receipt::Line>>,
}

impl Books<'_> {
    fn note(&mut self, done: Done, told: &mut dyn FnMut(Progress<'_>)) {
        let Some(job) = self.jobs.get(done.job) else { return };
        self.done += 1;
        let path = job.place.path();
        told(Progress { done: self.done, of: self.jobs.len(), path, outcome: &done.outcome });
        // No tablet waits for a receipt beside a copy.
        if let Some(source) = self.sources.get(job.source).filter(|source| !source.foreign.is_copy) {
            self.lines.entry(&source.folder).or_default().extend(done.line);
        }
        match done.outcome {
            Outcome::New(filed) => self.summary.new.push(filed),
            Outcome::Known(_) => self.summary.known += 1,
            Outcome::Rehearsal => self.summary.rehearsals.push(path.to_owned()),
            Outcome::Bad(bad) => self.summary.bad.push((path.to_owned(), bad)),
        }
    }
}

fn is_there(disk: &dyn Disk, path: &Path) -> bool {
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned());
    let parent = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
    disk.is_dir(path)
        || name.is_some_and(|name| disk.list(parent).is_ok_and(|names| names.binary_search(&name).is_ok()))
}

impl Work<'_> {
    /// Sets the marks of all chains that grew.
    fn raise_marks(&mut self, office: &TabletKey) -> Result<(), ArchiveFault> {
        let store = self.archive.store();
        let offices = trust::offices(self.archive.signers());
        for (_, id) in std::mem::take(&mut self.touched).into_values() {
            let Some(Receipt { at, digest }) = self.own.of(&id) else { continue };
            let stands = marks::read(store, &marks::name_of(&id), &offices)?;
            // A mark that does not hold is left for the audit to find.
            let rises = stands.is_ok_and(|mark| mark.is_none_or(|mark| mark.id.number() < id.number()));
            if rises {
                marks::set(store, &marks::Mark { id, digest, at }, office)?;
            }
        }
        store.settle(MARKS)?;
        Ok(())
    }

    /// What the chains of the new records show, as far as receipts and the new records tell.
    fn chains(&self) -> Vec<Finding> {
        let mut walker = Walker::new(&[]);
        for (chain, fresh) in &self.fresh {
            for (number, receipt) in self.own.of_chain(&chain.tablet, &chain.key) {
                let link = Link { digest: receipt.digest, said: fresh.get(&number).copied() };
                walker.take(chain, number, vec![link]);
            }
        }
        let mut known: BTreeMap<&Chain, BTreeMap<Digest, u32>> = BTreeMap::new();
        let mut number_of = |chain: &Chain, digest: &Digest| -> Result<Option<u32>, Infallible> {
            let numbers =
                || self.own.of_chain(&chain.tablet, &chain.key).map(|(number, r)| (r.digest, number));
            let Some((chain, _)) = self.fresh.get_key_value(chain) else { return Ok(None) };
            Ok(known.entry(chain).or_insert_with(|| numbers().collect()).get(digest).copied())
        };
        let Ok(found) = walker.end(&mut number_of);
        found.into_iter().map(|(chain, problem)| Finding::of_chain(chain, problem)).collect()
    }

    fn touch(&mut self, id: &RecordId) {
        let highest = self.touched.entry(marks::name_of(id)).or_insert_with(|| (id.number(), id.clone()));
        if highest.0 < id.number() {
            *highest = (id.number(), id.clone());
        }
    }

    /// Makes the names of a folder and of those above it durable, once a run: an earlier run may have failed at
    /// just that.
    fn settle(&mut self, path: &str) -> Result<(), ArchiveFault> {
        let mut folder = path;
        while let Some((above, _)) = folder.rsplit_once('/') {
            folder = above;
            if !self.settled.iter().any(|done| done == folder) {
                self.archive.store().settle(folder)?;
                self.settled.push(folder.to_owned());
            }
        }
        Ok(())
    }
}

/// A line of the receipt that goes beside what was taken.
fn confirmed(id: &RecordId, digest: Digest, at: Timestamp) -> receipt::Line {
    receipt::Line { id: id.clone(), digest, at }
}
