//! The office's archive as the kiosk asks it: questions and answers are data, and one clerk on a thread of its own
//! reads the archive, so that nothing that is typed or pressed ever waits for it.

mod clerk;
mod desk;
mod record;
mod work;

use std::path::PathBuf;

use crate::archive::Kept;
use crate::archive::import::Summary;
use crate::archive::index::{Count, Cursor, Page, Query};

pub(in crate::kiosk) use clerk::PAGE;
pub use desk::Desk;
pub use record::{After, Before, Broken, Held, Opened};

use super::App;
use super::effect::Effect;
use super::screen::{Screen, office};

/// From which end of a list rows are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// The first row is 0.
    First,
    /// The last row is 0.
    Last,
}

/// Which rows an answer brings: of which list, counted from which end, which page of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ticket {
    /// The list; no two have the same number.
    pub list: u64,
    /// The page, from 0.
    pub page: usize,
}

/// What is asked.
#[derive(Debug, Clone, PartialEq)]
pub enum Ask {
    /// Open the archive, with its index in step.
    Open,
    /// Some rows of what a query finds.
    Find {
        /// Which rows.
        ticket: Ticket,
        /// The query; the other way round for rows that are counted from the last.
        query: Query,
        /// Where the page before ended.
        after: Option<Cursor>,
    },
    /// How many records a query finds.
    Count {
        /// For which list.
        list: u64,
        /// The query.
        query: Query,
    },
    /// Open a record.
    Read {
        /// Its id.
        id: String,
        /// Its file, as far as that is known.
        path: Option<String>,
    },
    /// Where records may come from and go to.
    Places,
    /// Take records in.
    TakeIn(PathBuf),
    /// What is in quarantine.
    Quarantine,
    /// Copy a record out.
    Export {
        /// Its id.
        id: String,
        /// Its file.
        path: String,
        /// What of it.
        what: What,
        /// Where to.
        to: PathBuf,
    },
}

/// What of a record is copied out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// The sealed file, byte for byte.
    Sealed,
    /// Its text.
    Text,
}

impl Ask {
    /// Whether the answer to an earlier question is no longer wanted once this one is asked.
    fn supersedes(&self, earlier: &Self) -> bool {
        let of = |ask: &Self| match ask {
            Self::Find { ticket, .. } => Some(ticket.list),
            Self::Count { list, .. } => Some(*list),
            Self::Open
            | Self::Read { .. }
            | Self::Places
            | Self::TakeIn(_)
            | Self::Quarantine
            | Self::Export { .. } => None,
        };
        matches!((of(self), of(earlier)), (Some(later), Some(earlier)) if later > earlier)
    }
}

/// The archive as it was opened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ready {
    /// Its folder.
    pub dir: PathBuf,
    /// How many records the index holds.
    pub records: u64,
    /// How many files are in quarantine.
    pub quarantined: usize,
    /// What had to be done to the index.
    pub remark: Option<Remark>,
}

/// What one should know of the index.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Remark {
    /// It was made anew.
    Remade {
        /// Why.
        why: String,
    },
    /// It could not be kept for the next time.
    Unkept {
        /// Why.
        why: String,
    },
    /// Some records are not in it.
    Behind {
        /// Why.
        why: String,
        /// How many.
        missing: usize,
    },
}

/// What is answered.
#[derive(Debug, Clone)]
pub enum Answer {
    /// How far the index is.
    Indexing {
        /// Records done.
        done: usize,
        /// Records in all, as far as that is known.
        of: usize,
    },
    /// The archive is open, or why not.
    Opened(Result<Ready, String>),
    /// Rows, or why there are none.
    Found {
        /// Which.
        ticket: Ticket,
        /// They.
        page: Result<Page, String>,
    },
    /// How many a query finds.
    Counted {
        /// For which list.
        list: u64,
        /// So many.
        count: Count,
    },
    /// A record, or why its file cannot be read.
    Read {
        /// Its id.
        id: String,
        /// The record.
        result: Result<Box<Opened>, String>,
    },
    /// The places there are.
    Places(Vec<PathBuf>),
    /// How far taking in is.
    Taking {
        /// Places done.
        done: usize,
        /// Places in all.
        of: usize,
    },
    /// What became of what was to be taken in.
    Took {
        /// Where it came from.
        place: PathBuf,
        /// What was done, or why it stopped.
        result: Result<Box<Summary>, String>,
    },
    /// What is in quarantine, the newest first, or why that cannot be told.
    Quarantine(Result<Vec<Kept>, String>),
    /// The file that was written, or why not.
    Exported(Result<PathBuf, String>),
}

impl App {
    /// Opens the Office screen.
    pub(in crate::kiosk) fn open_office(&mut self) -> Vec<Effect> {
        let Some(desk) = self.world.office() else { return Vec::new() };
        let (list, taking) = desk.visit();
        self.screen = Screen::Office(office::State::new(list, taking));
        vec![Effect::Office(Ask::Open)]
    }

    /// Takes in what the archive says.
    pub(super) fn office_answered(&mut self, answer: Answer) -> Vec<Effect> {
        let told = matches!((&answer, &self.screen), (Answer::Took { .. }, Screen::Office(_)));
        let action = self.with_screen(|screen, ctx| screen.answered(answer, ctx));
        if let Some(desk) = self.world.office().filter(|_| told) {
            desk.told();
        }
        self.act(action)
    }
}
