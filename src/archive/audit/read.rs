//! Reading and judging every file, on all cores.

use std::cell::RefCell;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::vec::IntoIter;

use jiff::Timestamp;

use super::{Finding, Link, Problem, Said};
use crate::archive::receipts::Receipt;
use crate::archive::scratch::{Noted, Scratch};
use crate::archive::{Archive, ArchiveFault, QUARANTINE, RECORDS, judge, place_of};
use crate::ports::DiskFault;
use crate::record::seal::RecordId;
use crate::record::verify::{Failure, Seen};

/// Folders within folders; the archive itself has three.
const MAX_DEPTH: usize = 16;
/// How many files one thread takes at a time.
const SHARE: usize = 16;

/// Goes through all files below `records/`, whatever their names, folder by folder.
struct Files<'a> {
    archive: &'a Archive,
    /// Folders that are gone through, each within the one before it, with the names that are left.
    open: Vec<(String, IntoIter<String>)>,
}

impl<'a> Files<'a> {
    fn of(archive: &'a Archive) -> Result<Self, DiskFault> {
        let names = archive.store().list(RECORDS)?.into_iter();
        Ok(Self { archive, open: vec![(RECORDS.to_owned(), names)] })
    }

    fn next(&mut self) -> Result<Option<String>, DiskFault> {
        while let Some((folder, names)) = self.open.last_mut() {
            let Some(name) = names.next() else {
                self.open.pop();
                continue;
            };
            let path = format!("{folder}/{name}");
            if self.open.len() > MAX_DEPTH || !self.archive.store().is_folder(&path) {
                return Ok(Some(path));
            }
            let names = self.archive.store().list(&path)?.into_iter();
            self.open.push((path, names));
        }
        Ok(None)
    }
}

/// About how many files there are: what has the name of a record is not looked at.
pub(super) fn count(archive: &Archive) -> Result<usize, DiskFault> {
    let mut count = 0;
    for year in archive.store().list(RECORDS)? {
        let year = format!("{RECORDS}/{year}");
        for month in archive.store().list(&year)? {
            count += archive.store().list(&format!("{year}/{month}")).map_or(1, |names| names.len());
        }
    }
    Ok(count)
}

/// What all threads share.
struct Shared<'a> {
    archive: &'a Archive,
    now: Timestamp,
    files: Mutex<Files<'a>>,
    book: Mutex<Book<'a>>,
    done: AtomicUsize,
}

/// What was found.
struct Book<'a> {
    scratch: &'a mut Scratch,
    findings: Vec<Finding>,
    fault: Option<ArchiveFault>,
}

fn hold<T>(what: &Mutex<T>) -> MutexGuard<'_, T> {
    what.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Judges all files and sets down what they are; the answer is what can be told of a file alone, and how many there are.
/// How far it is is told by this thread alone.
pub(super) fn all(
    archive: &Archive,
    scratch: &mut Scratch,
    now: Timestamp,
    told: &mut dyn FnMut(usize, usize),
) -> Result<(Vec<Finding>, usize), ArchiveFault> {
    let of = count(archive)?;
    let book = Book { scratch, findings: Vec::new(), fault: None };
    let shared = Shared {
        archive,
        now,
        files: Mutex::new(Files::of(archive)?),
        book: Mutex::new(book),
        done: AtomicUsize::new(0),
    };
    std::thread::scope(|scope| {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        for _ in 1..cores {
            scope.spawn(|| while shared.share() {});
        }
        while shared.share() {
            let done = shared.done.load(Ordering::Relaxed);
            told(done, of.max(done));
        }
    });
    let Shared { book, done, .. } = shared;
    let book = book.into_inner().unwrap_or_else(PoisonError::into_inner);
    book.fault.map_or(Ok((book.findings, done.into_inner())), Err)
}

impl Shared<'_> {
    /// Takes some files; whether there was something left to do.
    fn share(&self) -> bool {
        let mut files = Vec::new();
        let listed = {
            let mut all = hold(&self.files);
            let mut take = || -> Result<(), DiskFault> {
                while files.len() < SHARE
                    && let Some(file) = all.next()?
                {
                    files.push(file);
                }
                Ok(())
            };
            take()
        };
        let outcomes: Vec<Outcome> = files.iter().map(|file| self.one(file)).collect();
        let some = !files.is_empty();
        self.done.fetch_add(files.len(), Ordering::Relaxed);
        let mut book = hold(&self.book);
        let mut noted = listed.map_err(ArchiveFault::from);
        for (file, outcome) in files.into_iter().zip(outcomes) {
            noted = noted.and_then(|()| book.note(file, outcome));
        }
        if let Err(fault) = noted {
            book.fault.get_or_insert(fault);
        }
        some && book.fault.is_none()
    }

    fn one(&self, file: &str) -> Outcome {
        let bytes = match self.archive.read(file) {
            Ok(bytes) => bytes,
            Err(fault @ DiskFault::TooLarge { .. }) => {
                return Outcome::Failed(Failure::NotARecord(fault.to_string()));
            }
            Err(fault) => return Outcome::Unreadable(fault.to_string()),
        };
        let named = super::named(file);
        let receipt_of = |id: &RecordId| hold(&self.book).receipt(id);
        match judge::judge(&bytes, named.as_ref(), self.archive.signers(), &receipt_of, self.now).1 {
            Ok(seen) => Outcome::Good(Box::new(seen)),
            Err(failure) => Outcome::Failed(failure),
        }
    }
}

/// What became of one file.
enum Outcome {
    Good(Box<Seen>),
    Failed(Failure),
    Unreadable(String),
}

impl Book<'_> {
    /// The receipt of a record. That the table refuses is told at the end.
    fn receipt(&mut self, id: &RecordId) -> Option<Receipt> {
        self.scratch.receipt(id).unwrap_or_else(|fault| {
            self.fault.get_or_insert(fault);
            None
        })
    }

    fn note(&mut self, file: String, outcome: Outcome) -> Result<(), ArchiveFault> {
        let named = super::named(&file);
        let problem = match outcome {
            Outcome::Good(seen) => {
                let right = place_of(&seen.id, seen.sealed) == file;
                let noted = Noted::Good { path: (!right).then_some(file), link: link(&seen) };
                return self.scratch.note(&seen.id, &noted);
            }
            Outcome::Unreadable(why) => Problem::Unreadable(why),
            Outcome::Failed(Failure::NotARecord(_)) if named.is_none() => Problem::Stray,
            Outcome::Failed(failure) => Problem::Record(failure),
        };
        self.findings.push(Finding { place: file, chain: None, problem });
        named.map_or(Ok(()), |id| self.scratch.note(&id, &Noted::Damaged))
    }
}

fn link(seen: &Seen) -> Link {
    Link { digest: seen.digest, said: Some(Said { previous: seen.previous, sealed: seen.sealed }) }
}

/// What waits in quarantine and was not filed meanwhile. One that is a good record all the same is a link of its chain.
pub(super) fn quarantine(
    archive: &Archive,
    scratch: &mut Scratch,
    now: Timestamp,
) -> Result<Vec<String>, ArchiveFault> {
    let mut waiting = Vec::new();
    for name in archive.store().list(QUARANTINE)?.into_iter().filter(|name| name.ends_with(".zip")) {
        let path = format!("{QUARANTINE}/{name}");
        let bytes = archive.read(&path).unwrap_or_default();
        let fault = RefCell::new(None);
        let receipt_of = |id: &RecordId| {
            scratch.receipt(id).unwrap_or_else(|why| {
                fault.replace(Some(why));
                None
            })
        };
        let seen = judge::judge(&bytes, None, archive.signers(), &receipt_of, now).1.ok();
        if let Some(why) = fault.into_inner() {
            return Err(why);
        }
        if let Some(seen) = seen {
            if scratch.receipt(&seen.id)?.is_some_and(|receipt| receipt.digest == seen.digest) {
                continue;
            }
            scratch.note(&seen.id, &Noted::Waiting { link: link(&seen) })?;
        }
        waiting.push(path);
    }
    Ok(waiting)
}
