//! The walks that are open on this tablet.

use std::path::{Path, PathBuf};

use jiff::Timestamp;

use super::{JournalFault, Recovered, recover};
use crate::ports::{Disk, DiskFault};
use crate::walk::{Event, Person};

/// Ending of a journal's name.
const ENDING: &str = ".journal";

/// Where the journal of a walk lies in a data folder.
#[must_use]
pub fn journal_path(data: &Path, walk: &str) -> PathBuf {
    data.join("walks").join(format!("{walk}{ENDING}"))
}

/// A walk that was begun and not yet sealed.
#[derive(Debug, Clone)]
pub struct OpenWalk {
    /// Its id, as its file is named.
    pub id: String,
    /// Its journal.
    pub path: PathBuf,
    /// What could be read of it, or why nothing could.
    pub read: Result<Recovered, JournalFault>,
}

impl OpenWalk {
    fn events(&self) -> impl DoubleEndedIterator<Item = &Event> {
        self.read.iter().flat_map(|r| &r.entries).map(|e| &e.event)
    }

    /// Unit it is for.
    #[must_use]
    pub fn unit(&self) -> Option<&str> {
        self.events().find_map(|e| if let Event::Began { unit, .. } = e { Some(unit.as_str()) } else { None })
    }

    /// Digest of the scripts it began with, 64 hex digits.
    #[must_use]
    pub fn scripts(&self) -> Option<&str> {
        self.events()
            .find_map(|e| if let Event::Began { scripts, .. } = e { Some(scripts.as_str()) } else { None })
    }

    /// Staff code of the agent who took it on last.
    #[must_use]
    pub fn agent(&self) -> Option<&str> {
        self.events()
            .rev()
            .find_map(|e| if let Event::AgentOn { code } = e { Some(code.as_str()) } else { None })
    }

    /// The party as entered last; empty before it was entered.
    #[must_use]
    pub fn people(&self) -> &[Person] {
        let entered = self
            .events()
            .rev()
            .find_map(|e| if let Event::PartySet { people } = e { Some(people.as_slice()) } else { None });
        entered.unwrap_or(&[])
    }

    /// When it began, by the tablet's clock.
    #[must_use]
    pub fn began_at(&self) -> Option<Timestamp> {
        self.read.as_ref().ok()?.entries.first().map(|e| e.at)
    }

    /// When something last happened in it, by the tablet's clock.
    #[must_use]
    pub fn last_at(&self) -> Option<Timestamp> {
        self.read.as_ref().ok()?.entries.last().map(|e| e.at)
    }

    /// Whether its seal had begun: the record must be finished with the number that was given.
    #[must_use]
    pub fn seal_begun(&self) -> bool {
        matches!(self.events().next_back(), Some(Event::SealBegun { .. }))
    }
}

/// The open walks of a data folder, by id. A journal that cannot be read is listed with the reason.
///
/// # Errors
/// The folder of walks cannot be read.
pub fn open_walks(disk: &dyn Disk, data: &Path) -> Result<Vec<OpenWalk>, DiskFault> {
    let names = disk.list(&data.join("walks"))?;
    let ids = names.iter().filter_map(|name| name.strip_suffix(ENDING));
    let open = ids.map(|id| {
        let path = journal_path(data, id);
        OpenWalk { id: id.to_owned(), read: recover(disk, &path), path }
    });
    Ok(open.collect())
}
