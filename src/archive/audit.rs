//! The audit: every byte read again, on all cores; everything that is wrong told; nothing changed.

mod read;
mod said;

use std::collections::BTreeSet;

use jiff::Timestamp;

use super::chains::{self, Chain, Link, Said, Walker};
use super::marks::{self, Mark};
use super::receipts::{self, Line, Lines, LogFault, Receipt, marked};
use super::scratch::{Group, Noted, Scratch};
use super::{Archive, ArchiveFault, MARKS, place_of, trust};
use crate::record::seal::RecordId;
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
    let mut work = Work { scratch: Scratch::new()?, findings: Vec::new(), received: Vec::new() };
    work.receipts(archive)?;
    work.logs(archive)?;
    let (mut found, files) = read::all(archive, &mut work.scratch, now, told)?;
    work.findings.append(&mut found);
    for name in read::quarantine(archive, &mut work.scratch, now)? {
        work.find(name, Problem::Quarantined);
    }
    let marks = work.marks(archive)?;
    let good = work.chains(&marks)?;
    let mut findings = work.findings;
    // Of equal places the order stays: first the file, then its chain.
    findings.sort_by(|a, b| a.place.cmp(&b.place));
    Ok(Report { files, good, findings })
}

fn log_of(fault: &LogFault) -> &str {
    match fault {
        LogFault::Line { log, .. }
        | LogFault::Twice { log, .. }
        | LogFault::Torn { log }
        | LogFault::Stray { log } => log,
    }
}

struct Work {
    scratch: Scratch,
    findings: Vec<Finding>,
    /// Chains of which something was received.
    received: Vec<Chain>,
}

impl Work {
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

    /// Sets down all receipts, and tells what is wrong with their logs.
    fn receipts(&mut self, archive: &Archive) -> Result<(), ArchiveFault> {
        for log in receipts::logs(archive.store())? {
            let log = match log {
                Ok(log) => log,
                Err(fault) => {
                    self.log(fault);
                    continue;
                }
            };
            let mut noted = Ok(());
            let mut each = |line: Line| match line.said {
                Ok(_) if noted.is_err() => {}
                Ok((id, receipt)) => match self.scratch.receive(&id, receipt) {
                    Ok(true) => {}
                    Ok(false) => self.log(LogFault::Twice { log: log.clone(), line: line.at, id }),
                    Err(fault) => noted = Err(fault),
                },
                Err(fault) => self.log(fault),
            };
            let mut lines = Lines::of(&log);
            archive.store().stream(&log, 0..u64::MAX, &mut |piece| lines.add(piece, &mut each))?;
            lines.end(&mut each);
            noted?;
        }
        self.received = self.scratch.chains().to_vec();
        Ok(())
    }

    fn log(&mut self, fault: LogFault) {
        self.find(log_of(&fault).to_owned(), Problem::Log(fault));
    }

    /// Goes through all that was read, number by number: where files lie, whether they were received, what their chains
    /// show. The answer is how many records are good, each counted once.
    fn chains(&mut self, marks: &[Mark]) -> Result<usize, ArchiveFault> {
        let (scratch, findings) = (&self.scratch, &mut self.findings);
        let (mut walker, mut good) = (Walker::new(marks), 0);
        scratch.each(&mut |group| {
            let (id, judged) = (group.id.clone(), judged(scratch, group)?);
            good += judged.good;
            findings.extend(judged.findings);
            if !judged.links.is_empty() {
                walker.take(&Chain::of(&id), id.number(), judged.links);
            }
            Ok(())
        })?;
        let found = walker.end(&mut |chain, digest| scratch.number_of(chain, digest))?;
        findings.extend(found.into_iter().map(|(chain, problem)| Finding::of_chain(chain, problem)));
        Ok(good)
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
        let received = std::mem::take(&mut self.received);
        for chain in received.into_iter().filter(|chain| !named.contains(&format!("{MARKS}/{chain}"))) {
            self.findings.push(Finding {
                place: chain.to_string(),
                chain: Some(chain),
                problem: Problem::NoMark,
            });
        }
        Ok(all)
    }
}

/// What is known of one number of a chain once its files and its receipt lie side by side.
#[derive(Default)]
struct Judged {
    good: usize,
    findings: Vec<Finding>,
    links: Vec<Link>,
}

fn judged(scratch: &Scratch, group: Group) -> Result<Judged, ArchiveFault> {
    let Group { id, receipt, noted } = group;
    let mut judged = Judged::default();
    let mut find = |place: String, problem| judged.findings.push(Finding { place, chain: None, problem });
    let damaged = noted.iter().any(|noted| matches!(noted, Noted::Damaged));
    let good = || {
        noted.iter().filter_map(|noted| match noted {
            Noted::Good { path, link } => Some((path, *link, link.said?.sealed)),
            Noted::Damaged | Noted::Waiting { .. } => None,
        })
    };
    // Good files that have the number of another record that was received.
    let mut instead = Vec::new();
    for (path, link, sealed) in good() {
        let right = place_of(&id, sealed);
        let file = path.clone().unwrap_or_else(|| right.clone());
        if path.is_some() {
            let twice = good().any(|(path, other, _)| path.is_none() && other.digest == link.digest);
            let problem =
                if twice { Problem::Duplicate { of: right } } else { Problem::WrongPlace { right } };
            find(file.clone(), problem);
        }
        match receipt {
            None => find(file, Problem::NoReceipt),
            Some(receipt) if receipt.digest != link.digest => instead.push(file),
            Some(_) => {}
        }
        judged.good += usize::from(judged.links.iter().all(|other| other.digest != link.digest));
        chains::join(&mut judged.links, link);
    }
    for noted in &noted {
        if let Noted::Waiting { link } = noted {
            chains::join(&mut judged.links, *link);
        }
    }
    let Some(Receipt { at, digest }) = receipt else { return Ok(judged) };
    // What was received is there, be it damaged; it is a link of its chain in any case, unless another record lies in
    // its place: whether that one is the right link is told by the record behind it.
    let here = good().any(|(_, link, _)| link.digest == digest) || scratch.has_good(&digest)?;
    if !here && (damaged || instead.is_empty()) {
        if !damaged {
            find(id.to_string(), Problem::Missing { at });
        }
        chains::join(&mut judged.links, Link { digest, said: None });
        scratch.lose(&id, &digest)?;
    }
    for file in instead {
        find(file, Problem::NotReceived { here: here || damaged });
    }
    Ok(judged)
}

/// The id that the name of a file speaks of.
fn named(file: &str) -> Option<RecordId> {
    file.rsplit('/').next()?.strip_suffix(".zip")?.parse().ok()
}
