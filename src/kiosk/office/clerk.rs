//! Who reads the archive.

use std::path::PathBuf;
use std::sync::Arc;

use super::{Answer, Ask, Ready, Remark};
use crate::archive::index::keep::{self, Kept};
use crate::archive::index::{Index, IndexFault, Query};
use crate::archive::{Archive, Receipts};
use crate::kiosk::run::World;
use crate::ports::Ports;

/// Beyond this, what words and filters find is not counted: it would take longer than finding it.
const COUNTED: u64 = 1_000;
/// Rows of a page.
pub(in crate::kiosk) const PAGE: usize = 50;
/// How often it is told how far the index is: a line for every record would take longer than reading it.
const TOLD: usize = 50;

/// The archive, and its index while it is open.
#[derive(Debug)]
pub(super) struct Clerk {
    pub(super) ports: Ports,
    pub(super) dir: PathBuf,
    pub(super) open: Option<Open>,
}

/// The archive while it is open.
#[derive(Debug)]
pub(super) struct Open {
    pub(super) archive: Archive,
    index: Index,
    pub(super) receipts: Receipts,
}

/// Where answers go.
pub(super) type Tell<'t> = &'t mut dyn FnMut(Answer);

impl Clerk {
    pub(super) const fn new(ports: Ports, dir: PathBuf) -> Self {
        Self { ports, dir, open: None }
    }

    /// Answers a question.
    pub(super) fn answer(&mut self, world: &World, ask: Ask, tell: Tell<'_>) {
        match ask {
            Ask::Open => {
                let opened = self.open(tell).map_err(|why| why.to_string());
                tell(Answer::Opened(opened));
            }
            Ask::Find { ticket, query, after } => {
                let page = self.search(tell, |index| index.search(&query, after.as_ref(), PAGE));
                tell(Answer::Found { ticket, page });
            }
            Ask::Count { list, query } => {
                let count = self.search(tell, |index| count(index, &query));
                // The rows have told already why nothing can be found.
                if let Ok(count) = count {
                    tell(Answer::Counted { list, count });
                }
            }
            Ask::Read { id, path } => {
                let result = self.read(&id, path.as_deref()).map(Box::new);
                tell(Answer::Read { id, result });
            }
            Ask::Places => {
                let volumes = || self.ports.disk.volumes();
                tell(Answer::Places(world.tablet().map_or_else(volumes, |tablet| tablet.places())));
            }
            Ask::TakeIn(place) => {
                let result = self.take_in(&place, tell);
                tell(Answer::Took { place, result });
            }
            Ask::Quarantine => tell(Answer::Quarantine(self.quarantine())),
            Ask::Export { id, path, what, to } => {
                tell(Answer::Exported(self.export((&id, &path), what, &to)));
            }
        }
    }

    fn open(&mut self, tell: Tell<'_>) -> Result<Ready, String> {
        self.open = None;
        let archive = Archive::open(Arc::clone(&self.ports.disk), &self.dir).map_err(|f| f.to_string())?;
        let opened = keep::open(&archive, &self.ports, &mut |done, of| indexing(tell, done, of));
        self.take_up(archive, opened)
    }

    pub(super) fn take_up(
        &mut self,
        archive: Archive,
        opened: Result<(Index, Kept), IndexFault>,
    ) -> Result<Ready, String> {
        let (index, kept) = opened.map_err(|fault| fault.to_string())?;
        let records = index.len().map_err(|fault| fault.to_string())?;
        let remark = match kept {
            Kept::AsItWas | Kept::Added(_) => None,
            // The first time there was none, which is no news.
            Kept::Remade { why: keep::Stale::Fault(IndexFault::Missing), .. } => None,
            Kept::Remade { why, .. } => Some(Remark::Remade { why: why.to_string() }),
            Kept::InMemory { why } => Some(Remark::Unkept { why: why.to_string() }),
            Kept::Behind { why, missing } => Some(Remark::Behind { why: why.to_string(), missing }),
        };
        let receipts = archive.receipts().map_err(|fault| fault.to_string())?;
        let quarantined = archive.quarantined().map_err(|fault| fault.to_string())?;
        self.open = Some(Open { archive, index, receipts });
        Ok(Ready { dir: self.dir.clone(), records, quarantined, remark })
    }

    /// The archive, once it is open.
    pub(super) fn opened(&self) -> Result<&Open, String> {
        self.open.as_ref().ok_or_else(|| "the archive is not open".to_owned())
    }

    /// Asks the index; one that makes no sense is made anew, once.
    fn search<T>(
        &mut self,
        tell: Tell<'_>,
        find: impl Fn(&Index) -> Result<T, IndexFault>,
    ) -> Result<T, String> {
        if self.open.is_none() {
            let _ = self.open(tell)?;
        }
        let Some(Open { archive, index, .. }) = &self.open else { return Err(String::new()) };
        match find(index) {
            Err(fault) if fault.can_be_remade() => {}
            other => return other.map_err(|fault| fault.to_string()),
        }
        let archive = archive.clone();
        let made = keep::rebuild(&archive, &self.ports, &mut |done, of| indexing(tell, done, of));
        let ready = self.take_up(archive, made)?;
        tell(Answer::Opened(Ok(ready)));
        let Some(Open { index, .. }) = &self.open else { return Err(String::new()) };
        find(index).map_err(|fault| fault.to_string())
    }
}

fn indexing(tell: Tell<'_>, done: usize, of: usize) {
    if done.is_multiple_of(TOLD) {
        tell(Answer::Indexing { done, of: of.max(done) });
    }
}

/// How many records a query finds. All of them are counted at once.
fn count(index: &Index, query: &Query) -> Result<crate::archive::index::Count, IndexFault> {
    if *query == (Query { sort: query.sort, reversed: query.reversed, ..Query::default() }) {
        return Ok(crate::archive::index::Count::Exactly(index.len()?));
    }
    index.count(query, COUNTED)
}
