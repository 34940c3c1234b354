//! Keeps the index in step with the archive: what was filed since is added, and what cannot be trusted is made anew
//! from the files alone.

use std::collections::BTreeSet;

use jiff::Timestamp;

use super::{Draft, Index, IndexFault, RecordRow, Source, Verified};
use crate::archive::{Archive, Filed, INDEX, Receipts, cores};
use crate::ports::Ports;
use crate::record::bag::RECORD_FILE;
use crate::record::form;
use crate::record::seal::RecordId;
use crate::record::zip;

/// Records that may lie beside the large file, if it holds as many, before all is put together: writing them anew takes
/// a moment, and putting together takes as long as copying everything.
const BESIDE: u64 = 2_000;
/// A folder that was changed so short a time ago may change again without it being seen, in nanoseconds.
const UNSETTLED: u128 = 2_000_000_000;

/// What was done so that the index can be used.
#[derive(Debug)]
pub enum Kept {
    /// Nothing: it holds what the archive holds.
    AsItWas,
    /// So many new records were added.
    Added(usize),
    /// It was made anew from so many files, since it could not be used.
    Remade {
        /// What was wrong with it.
        why: Stale,
        /// Records it holds now.
        records: usize,
    },
    /// It holds everything, but could not be kept for the next time.
    InMemory {
        /// Why.
        why: IndexFault,
    },
    /// It could not be brought up to date: so many records are not in it.
    Behind {
        /// Why.
        why: IndexFault,
        /// How many are missing.
        missing: usize,
    },
}

/// Why an index had to be made anew.
#[derive(Debug, thiserror::Error)]
pub enum Stale {
    /// It could not be used.
    #[error(transparent)]
    Fault(IndexFault),
    /// Files that it knew are no longer where they were.
    #[error("files of the archive were moved or are gone")]
    Moved,
    /// Somebody asked for it.
    #[error("it was asked for")]
    Asked,
}

/// How far it is: records done, and how many receipts there are.
pub type Progress<'a> = &'a mut dyn FnMut(usize, usize);

/// Opens the index of an archive, in step with its files.
///
/// # Errors
/// The archive cannot be read.
pub fn open(archive: &Archive, ports: &Ports, progress: Progress<'_>) -> Result<(Index, Kept), IndexFault> {
    let why = match Index::open(ports.disk.as_ref(), &archive.dir().join(INDEX)) {
        Ok(index) => match News::of(&index, archive, ports) {
            Ok(Some(news)) if news.is_empty() => return Ok((index, Kept::AsItWas)),
            Ok(Some(news)) => return add(index, &news, archive, ports, progress),
            Ok(None) => Stale::Moved,
            Err(fault) if fault.can_be_remade() => Stale::Fault(fault),
            Err(fault) => return Err(fault),
        },
        Err(fault) if fault.can_be_remade() => Stale::Fault(fault),
        Err(fault) => return Err(fault),
    };
    make(why, archive, ports, progress)
}

/// Makes the index anew from the files and receipts alone.
///
/// # Errors
/// The archive cannot be read.
pub fn rebuild(
    archive: &Archive,
    ports: &Ports,
    progress: Progress<'_>,
) -> Result<(Index, Kept), IndexFault> {
    make(Stale::Asked, archive, ports, progress)
}

fn make(
    why: Stale,
    archive: &Archive,
    ports: &Ports,
    progress: Progress<'_>,
) -> Result<(Index, Kept), IndexFault> {
    let path = archive.dir().join(INDEX);
    match Draft::new(ports.disk.as_ref(), &path).and_then(|draft| fill(draft, archive, ports, progress)) {
        Ok((index, records)) => Ok((index, Kept::Remade { why, records })),
        // A fault of the archive itself comes again; one of the file of the index does not.
        Err(why) => {
            let (index, _) = fill(Draft::in_memory()?, archive, ports, progress)?;
            Ok((index, Kept::InMemory { why }))
        }
    }
}

fn fill(
    mut draft: Draft,
    archive: &Archive,
    ports: &Ports,
    progress: Progress<'_>,
) -> Result<(Index, usize), IndexFault> {
    let receipts = archive.receipts()?;
    let (all, now) = (receipts.len(), ports.clock.now());
    let mut done = 0;
    for folder in archive.folders()? {
        let stamp = stamp(archive, &folder, ports);
        let filed = archive.filed_in(&folder)?;
        add_rows(&mut draft, archive, &filed, &receipts, now, &mut |count| progress(done + count, all))?;
        done += filed.len();
        draft.folder(&folder, &stamp)?;
    }
    Ok((draft.finish(ports.disk.as_ref(), &archive.dir().join(INDEX))?, done))
}

fn add(
    index: Index,
    news: &News,
    archive: &Archive,
    ports: &Ports,
    progress: Progress<'_>,
) -> Result<(Index, Kept), IndexFault> {
    let path = archive.dir().join(INDEX);
    let disk = ports.disk.as_ref();
    let mut added = || {
        let receipts = archive.receipts()?;
        let all = news.filed.len();
        let beside = index.added_paths()?;
        let many = u64::try_from(beside.len().saturating_add(all)).unwrap_or(u64::MAX);
        let together = many > BESIDE || many > index.whole_len()?;
        let mut draft =
            if together { Draft::together(&index, disk, &path)? } else { Draft::of(&index, disk, &path)? };
        let mut filed = news.filed.clone();
        if together {
            filed.extend(beside.into_iter().filter_map(Filed::at));
            for (folder, stamp) in index.folders()? {
                draft.folder(&folder, &stamp)?;
            }
        }
        add_rows(&mut draft, archive, &filed, &receipts, ports.clock.now(), &mut |count| {
            progress(count, all.max(count));
        })?;
        for (folder, stamp) in &news.stamps {
            draft.folder(folder, stamp)?;
        }
        draft.finish(disk, &path)
    };
    match added() {
        Ok(new) => Ok((new, Kept::Added(news.filed.len()))),
        Err(fault) if fault.can_be_remade() => make(Stale::Fault(fault), archive, ports, progress),
        Err(why) => Ok((index, Kept::Behind { why, missing: news.filed.len() })),
    }
}

/// What the archive holds and the index does not.
#[derive(Debug, Default)]
struct News {
    filed: Vec<Filed>,
    stamps: Vec<(String, String)>,
}

impl News {
    /// Looks into the folders that changed. `None` when something is gone that the index knew.
    fn of(index: &Index, archive: &Archive, ports: &Ports) -> Result<Option<Self>, IndexFault> {
        let known = index.folders()?;
        let now = archive.folders()?;
        if known.iter().any(|(folder, _)| !now.contains(folder)) {
            return Ok(None);
        }
        let mut news = Self::default();
        for folder in now {
            let stamp = stamp(archive, &folder, ports);
            let before = known.iter().find(|(name, _)| *name == folder);
            if before.is_some_and(|(_, old)| *old == stamp && !stamp.is_empty()) {
                continue;
            }
            let mut filed = archive.filed_in(&folder)?;
            let held: BTreeSet<String> = index.paths_in(&folder)?.into_iter().collect();
            let lie: BTreeSet<&str> = filed.iter().map(|f| f.path.as_str()).collect();
            if held.iter().any(|path| !lie.contains(path.as_str())) {
                return Ok(None);
            }
            filed.retain(|f| !held.contains(&f.path));
            news.filed.append(&mut filed);
            news.stamps.push((folder, stamp));
        }
        Ok(Some(news))
    }

    const fn is_empty(&self) -> bool {
        self.filed.is_empty()
    }
}

/// How a folder looks; empty when that may change without being seen.
fn stamp(archive: &Archive, folder: &str, ports: &Ports) -> String {
    let path = folder.split('/').fold(archive.dir().to_owned(), |path, part| path.join(part));
    let now = u128::try_from(ports.clock.now().as_nanosecond()).unwrap_or(0);
    ports
        .disk
        .stamp(&path)
        .filter(|(_, changed)| changed.saturating_add(UNSETTLED) < now)
        .map_or_else(String::new, |(len, changed)| format!("{len} {changed}"))
}

/// Reads and judges records on all cores, and adds them as they come.
fn add_rows(
    draft: &mut Draft,
    archive: &Archive,
    filed: &[Filed],
    receipts: &Receipts,
    now: Timestamp,
    done: &mut dyn FnMut(usize),
) -> Result<(), IndexFault> {
    let mut count = 0;
    cores::each(filed, |one| row(archive, one, receipts, now), &mut |row| {
        draft.add(row)?;
        count += 1;
        done(count);
        Ok(())
    })
}

/// What the index keeps of a filed record.
fn row(archive: &Archive, filed: &Filed, receipts: &Receipts, now: Timestamp) -> RecordRow {
    let received = receipts.of(&filed.id).map(|receipt| receipt.at);
    let source = Source { id: filed.id.clone(), path: filed.path.clone(), received };
    let Ok(bytes) = archive.read(&filed.path) else { return RecordRow::bad(source, "unreadable") };
    match archive.verify(&bytes, receipts, now).1 {
        Ok(seen) if seen.id == filed.id => {
            let verified = Verified { digest: seen.digest, kind: seen.kind, sealed: seen.sealed };
            RecordRow::good(source, verified, record(&bytes, &seen.id).as_ref())
        }
        Ok(_) => RecordRow::bad(source, "wrong-place"),
        Err(failure) => RecordRow::bad(source, failure.code()),
    }
}

/// What a record says; none where only a newer program can read it.
fn record(bytes: &[u8], id: &RecordId) -> Option<form::Record> {
    let name = format!("{id}/{RECORD_FILE}");
    let entries = zip::read(bytes).ok()?;
    let entry = entries.iter().find(|entry| entry.name == name)?;
    form::read(entry.bytes).ok()
}
