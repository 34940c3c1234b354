//! The audit: every byte read again, on all cores; everything that is wrong told; nothing changed.

mod read;
mod said;

use std::collections::{BTreeMap, BTreeSet};

use jiff::Timestamp;

use super::chains::{self, Chain, Link, Said};
use super::marks::{self, Mark};
use super::receipts::{LogFault, Receipt, Receipts, marked};
use super::{Archive, ArchiveFault, MARKS, place_of, trust};
use crate::record::seal::{Digest, RecordId};
use crate::record::verify::Failure;

/// What is wrong, or worth knowing.
#[derive(Debug, Clone, PartialEq)]
pub enum Problem {
    /// A record does not verify.
    Record(Failure),
    /// A file that cannot be read.
    Unreadable(String),
    /// A file that is no record and has not the name of one.
    Stray,
    /// A good record under a name or in a folder that is not its own.
    WrongPlace {
        /// Where it belongs.
        right: String,
    },
    /// A second copy of a record that lies where it belongs.
    Duplicate {
        /// Where that is.
        of: String,
    },
    /// A good record that was never received.
    NoReceipt,
    /// A good record, but another one was received under its number.
    NotReceived {
        /// Whether that one is here as well.
        here: bool,
    },
    /// A record was received and is not there.
    Missing {
        /// When it was received.
        at: Timestamp,
    },
    /// A log of receipts is damaged.
    Log(LogFault),
    /// A log of receipts is not what the office signed.
    LogChanged,
    /// A log has lines that the office has not signed yet. A remark.
    LogUnsigned,
    /// A mark does not hold.
    Mark(String),
    /// A chain has no mark.
    NoMark,
    /// A chain is not whole.
    Chain(chains::Problem),
    /// Something waits in quarantine. A remark.
    Quarantined,
}

impl Problem {
    /// The code, which stays the same in all versions.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Record(failure) => failure.code(),
            Self::Unreadable(_) => "unreadable",
            Self::Stray => "stray-file",
            Self::WrongPlace { .. } => "wrong-place",
            Self::Duplicate { .. } => "duplicate",
            Self::NoReceipt => "no-receipt",
            Self::NotReceived { .. } => "not-received",
            Self::Missing { .. } => "record-missing",
            Self::Log(LogFault::Torn { .. }) => "receipt-torn",
            Self::Log(_) | Self::LogChanged => "receipt-log",
            Self::LogUnsigned => "receipt-unsigned",
            Self::Mark(_) => "mark-bad",
            Self::NoMark => "mark-missing",
            Self::Chain(problem) => problem.code(),
            Self::Quarantined => "quarantined",
        }
    }

    /// Whether it is worth knowing and nothing is wrong.
    #[must_use]
    pub const fn is_remark(&self) -> bool {
        match self {
            Self::Chain(problem) => problem.is_remark(),
            Self::Log(fault) => matches!(fault, LogFault::Torn { .. }),
            Self::Quarantined | Self::LogUnsigned => true,
            _ => false,
        }
    }
}

/// One thing that was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// The file in the archive, the record, or the chain.
    pub place: String,
    /// The chain, where it is about one.
    pub chain: Option<Chain>,
    /// What it is.
    pub problem: Problem,
}

impl Finding {
    /// What a chain shows.
    pub(super) fn of_chain(chain: Chain, problem: chains::Problem) -> Self {
        Self { place: chain.to_string(), chain: Some(chain), problem: Problem::Chain(problem) }
    }
}

/// All that an audit found.
#[derive(Debug, Clone, Default)]
pub struct Report {
    /// Files that were read.
    pub files: usize,
    /// Records that are good, each counted once.
    pub good: usize,
    /// What was found, by place.
    pub findings: Vec<Finding>,
}

impl Report {
    /// Whether all holds. Remarks do not count.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.findings.iter().all(|finding| finding.problem.is_remark())
    }
}

/// Reads the whole archive again. `told` hears how many files are read, of how many.
///
/// # Errors
/// The disk refuses a list, or the threads cannot be had. What single files hide is told in the report.
pub fn audit(
    archive: &Archive,
    now: Timestamp,
    told: &mut dyn FnMut(usize, usize),
) -> Result<Report, ArchiveFault> {
    let receipts = archive.receipts()?;
    let files = read::files(archive)?;
    let read = read::all(archive, &receipts, &files, now, told);
    let mut work = Work {
        receipts: &receipts,
        findings: Vec::new(),
        links: Vec::new(),
        good: BTreeMap::new(),
        instead: Vec::new(),
    };
    for fault in receipts.faults() {
        work.find(log_of(fault).to_owned(), Problem::Log(fault.clone()));
    }
    work.logs(archive)?;
    work.records(&files, &read);
    work.received(&files, &read);
    for (name, seen) in read::quarantine(archive, &receipts, now)? {
        work.links.extend(seen.as_ref().map(|seen| Link {
            id: seen.id.clone(),
            digest: seen.digest,
            said: Some(Said { previous: seen.previous, sealed: seen.sealed }),
        }));
        work.find(name, Problem::Quarantined);
    }
    let marks = work.marks(archive)?;
    for (chain, problem) in chains::check(&work.links, &marks) {
        work.findings.push(Finding::of_chain(chain, problem));
    }
    let mut findings = work.findings;
    // Of equal places the order stays: first the file, then its chain.
    findings.sort_by(|a, b| a.place.cmp(&b.place));
    Ok(Report { files: files.len(), good: work.good.len(), findings })
}

fn log_of(fault: &LogFault) -> &str {
    match fault {
        LogFault::Line { log, .. }
        | LogFault::Twice { log, .. }
        | LogFault::Torn { log }
        | LogFault::Stray { log } => log,
    }
}

struct Work<'a> {
    receipts: &'a Receipts,
    findings: Vec<Finding>,
    links: Vec<Link>,
    /// Good records and where the first copy lies.
    good: BTreeMap<Digest, usize>,
    /// Good records that have the number of another one that was received, and where they lie.
    instead: Vec<(String, RecordId)>,
}

impl Work<'_> {
    fn find(&mut self, place: String, problem: Problem) {
        self.findings.push(Finding { place, chain: None, problem });
    }

    /// Logs that are not what the office signed. One that is damaged to look at is told already.
    fn logs(&mut self, archive: &Archive) -> Result<(), ArchiveFault> {
        let before = std::mem::take(&mut self.findings);
        for (place, problem) in marked::check(archive.store(), &trust::offices(archive.signers()))? {
            let mut told = before.iter().filter(|finding| finding.place == place);
            if !told.any(|finding| problem.is_remark() || !finding.problem.is_remark()) {
                self.find(place, problem);
            }
        }
        self.findings.splice(0..0, before);
        Ok(())
    }

    /// What each file of `records/` is.
    fn records(&mut self, files: &[String], read: &[read::Outcome]) {
        let places: BTreeMap<&str, usize> =
            files.iter().enumerate().map(|(at, file)| (file.as_str(), at)).collect();
        let holds = |place: &str, digest: &Digest| {
            let there = places.get(place).and_then(|at| read.get(*at));
            matches!(there, Some(read::Outcome::Good { digest: other, .. }) if other == digest)
        };
        for (at, (file, outcome)) in files.iter().zip(read).enumerate() {
            match outcome {
                read::Outcome::Unreadable(why) => self.find(file.clone(), Problem::Unreadable(why.clone())),
                read::Outcome::Failed(Failure::NotARecord(_)) if named(file).is_none() => {
                    self.find(file.clone(), Problem::Stray);
                }
                read::Outcome::Failed(failure) => self.find(file.clone(), Problem::Record(failure.clone())),
                read::Outcome::Good { id, digest, said } => {
                    let right = place_of(id, said.sealed);
                    if right != *file {
                        let twice = holds(&right, digest);
                        self.find(
                            file.clone(),
                            if twice {
                                Problem::Duplicate { of: right }
                            } else {
                                Problem::WrongPlace { right }
                            },
                        );
                    }
                    match self.receipts.of(id) {
                        None => self.find(file.clone(), Problem::NoReceipt),
                        Some(receipt) if receipt.digest != *digest => {
                            self.instead.push((file.clone(), id.clone()));
                        }
                        Some(_) => {}
                    }
                    self.good.entry(*digest).or_insert(at);
                    self.links.push(Link { id: id.clone(), digest: *digest, said: Some(*said) });
                }
            }
        }
    }

    /// What was received is there, be it damaged; it is a link of its chain in any case, unless another record
    /// lies in its place: whether that one is the right link is told by the record behind it.
    fn received(&mut self, files: &[String], read: &[read::Outcome]) {
        let damaged: BTreeSet<RecordId> = files
            .iter()
            .zip(read)
            .filter(|(_, outcome)| !matches!(outcome, read::Outcome::Good { .. }))
            .filter_map(|(file, _)| named(file))
            .collect();
        let instead = std::mem::take(&mut self.instead);
        let replaced: BTreeSet<&RecordId> = instead.iter().map(|(_, id)| id).collect();
        for (id, Receipt { at, digest }) in self.receipts.all() {
            if self.good.contains_key(&digest) {
                continue;
            }
            if !damaged.contains(&id) {
                if replaced.contains(&id) {
                    continue;
                }
                self.find(id.to_string(), Problem::Missing { at });
            }
            self.links.push(Link { id, digest, said: None });
        }
        for (file, id) in instead {
            let received = self.receipts.of(&id);
            let here = damaged.contains(&id) || received.is_some_and(|r| self.good.contains_key(&r.digest));
            self.find(file, Problem::NotReceived { here });
        }
    }

    /// The marks that hold; what is wrong with the others.
    fn marks(&mut self, archive: &Archive) -> Result<Vec<Mark>, ArchiveFault> {
        let offices = trust::offices(archive.signers());
        let store = archive.store();
        let mut all = Vec::new();
        let mut named: BTreeSet<String> = BTreeSet::new();
        for name in store.list(MARKS)? {
            let name = format!("{MARKS}/{name}");
            match marks::read(store, &name, &offices)? {
                Ok(mark) => all.extend(mark),
                Err(why) => self.find(name.clone(), Problem::Mark(why)),
            }
            named.insert(name);
        }
        let bare: BTreeSet<Chain> = self.receipts.all().map(|(id, _)| Chain::of(&id)).collect();
        for chain in bare.into_iter().filter(|chain| !named.contains(&format!("{MARKS}/{chain}"))) {
            self.findings.push(Finding {
                place: chain.to_string(),
                chain: Some(chain),
                problem: Problem::NoMark,
            });
        }
        Ok(all)
    }
}

/// The id that the name of a file speaks of.
fn named(file: &str) -> Option<RecordId> {
    file.rsplit('/').next()?.strip_suffix(".zip")?.parse().ok()
}
