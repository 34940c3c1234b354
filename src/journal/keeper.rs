//! A walk and its journal, held together: checked, saved, then applied.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::{Cut, Damage, Journal, JournalFault, Recovered, recover};
use crate::ports::Disk;
use crate::route::Route;
use crate::walk::{Entry, Refused, Walk};

/// Why a proposed event did not happen.
#[derive(Debug, Clone, thiserror::Error)]
pub enum ProposeFault {
    /// The walk does not accept it now. Nothing was changed.
    #[error(transparent)]
    Refused(#[from] Refused),
    /// It could not be saved.
    #[error(transparent)]
    Journal(#[from] JournalFault),
}

/// Why a walk could not go on from its journal.
#[derive(Debug, Clone, thiserror::Error)]
pub enum ResumeFault {
    /// The journal could not be read or made ready.
    #[error(transparent)]
    Journal(#[from] JournalFault),
    /// An event of the journal is refused over this route.
    #[error(
        "event {event} of the journal is refused ({refused}): open it with the scripts and the version of the program it began with"
    )]
    Refused {
        /// The event, counted from 1.
        event: usize,
        /// Why.
        refused: Refused,
    },
}

/// A walk that goes on.
#[derive(Debug)]
pub struct Resumed {
    /// The walk and its journal.
    pub keeper: Keeper,
    /// A torn tail that was cut off.
    pub cut: Option<Cut>,
    /// Damage after which nothing was taken over.
    pub damage: Option<Damage>,
    /// Copy of the file as it was, if more than an unfinished line was wrong with it.
    pub kept: Option<PathBuf>,
}

/// A walk and its journal. The synchronous core of [`super::Writer`].
#[derive(Debug)]
pub struct Keeper {
    walk: Arc<Walk>,
    journal: Journal,
}

impl Keeper {
    /// Begins a walk and its journal.
    ///
    /// # Errors
    /// The first event is refused, or could not be saved; then there is no journal.
    pub fn begin(
        disk: &dyn Disk,
        path: &Path,
        route: Arc<Route>,
        first: &Entry,
    ) -> Result<Self, ProposeFault> {
        let walk = Arc::new(Walk::begin(route, first)?);
        Ok(Self { walk, journal: Journal::create(disk, path, first)? })
    }

    /// Goes on with a walk where its journal stands.
    ///
    /// # Errors
    /// The journal cannot be read, does not fit the route, or cannot be made ready; it then still stands.
    pub fn resume(disk: &dyn Disk, path: &Path, route: Arc<Route>) -> Result<Resumed, ResumeFault> {
        let recovered = recover(disk, path)?;
        Self::resume_from(disk, recovered, route)
    }

    /// As [`Keeper::resume`], from what was already read.
    ///
    /// # Errors
    /// As [`Keeper::resume`].
    pub fn resume_from(disk: &dyn Disk, read: Recovered, route: Arc<Route>) -> Result<Resumed, ResumeFault> {
        if read.entries.is_empty() {
            return Err(JournalFault::Nothing { path: read.path }.into());
        }
        let walk = Walk::replay(route, &read.entries)
            .map_err(|(index, refused)| ResumeFault::Refused { event: index.saturating_add(1), refused })?;
        let (journal, kept) = Journal::resume(disk, &read)?;
        let keeper = Self { walk: Arc::new(walk), journal };
        Ok(Resumed { keeper, cut: read.cut, damage: read.damage, kept })
    }

    /// Checks an event, saves it and applies it. When this returns the event has happened for good.
    ///
    /// # Errors
    /// The event is refused, or could not be saved; the walk is unchanged.
    pub fn propose(&mut self, entry: &Entry) -> Result<(), ProposeFault> {
        self.walk.accepts(entry)?;
        self.journal.append(entry)?;
        // Screens may hold the walk as it was: theirs stays, this one goes on.
        Arc::make_mut(&mut self.walk).apply(entry)?;
        Ok(())
    }

    /// The walk as it stands.
    #[must_use]
    pub fn walk(&self) -> &Arc<Walk> {
        &self.walk
    }

    /// Its journal.
    #[must_use]
    pub fn journal(&self) -> &Journal {
        &self.journal
    }

    /// The walk, and its journal to retire once the record is sealed.
    #[must_use]
    pub fn into_parts(self) -> (Arc<Walk>, Journal) {
        (self.walk, self.journal)
    }
}
