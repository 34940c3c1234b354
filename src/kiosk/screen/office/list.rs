//! The rows of what was found, of which only some are held: pages around those that are shown. They are counted from
//! the first row, or from the last one once somebody has gone to the end.

use std::collections::{BTreeMap, BTreeSet};

use crate::archive::index::{Count, Cursor, Hit, Page, Query, Sort};
use crate::kiosk::office::{Ask, End, PAGE, Ticket};
use crate::kiosk::ui::RowStep;

/// Pages on either side of the shown one that are held.
const KEPT: usize = 3;

/// Rows of one query.
#[derive(Debug)]
pub struct Found {
    list: u64,
    query: Query,
    end: End,
    pages: BTreeMap<usize, Vec<Hit>>,
    /// Where each page begins, as far as that is known; the first at the beginning.
    starts: Vec<Option<Cursor>>,
    asked: BTreeSet<usize>,
    /// How many rows there are, once the last page has come.
    len: Option<usize>,
    /// How many the archive has counted.
    pub count: Option<Count>,
    /// The first row that is shown, counted from `end`.
    top: usize,
    /// The chosen row, counted from `end`.
    chosen: usize,
}

impl Found {
    /// What a query finds; nothing has come of it yet.
    #[must_use]
    pub fn new(list: u64, query: Query, end: End) -> Self {
        Self {
            list,
            query,
            end,
            pages: BTreeMap::new(),
            starts: vec![None],
            asked: BTreeSet::new(),
            len: None,
            count: None,
            top: 0,
            chosen: 0,
        }
    }

    /// Its number.
    #[must_use]
    pub const fn list(&self) -> u64 {
        self.list
    }

    /// The query.
    #[must_use]
    pub const fn query(&self) -> &Query {
        &self.query
    }

    /// From which end its rows are counted.
    #[must_use]
    pub const fn end(&self) -> End {
        self.end
    }

    /// Asks for how many there are.
    #[must_use]
    pub fn count_ask(&self) -> Ask {
        Ask::Count { list: self.list, query: self.query.clone() }
    }

    /// Rows that have come, as far as they follow each other.
    fn known(&self) -> usize {
        self.len.unwrap_or_else(|| self.starts.len().saturating_sub(1) * PAGE)
    }

    /// Whether it is known that there is nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len == Some(0)
    }

    /// The row at a place.
    #[must_use]
    pub fn row(&self, at: usize) -> Option<&Hit> {
        self.pages.get(&(at / PAGE))?.get(at % PAGE)
    }

    /// The chosen row.
    #[must_use]
    pub fn chosen(&self) -> Option<&Hit> {
        self.row(self.chosen)
    }

    /// Where the row that is shown first begins so that as many rows are shown as fit.
    fn first(&self, fits: usize) -> usize {
        let fits = fits.max(1);
        let last = self.len.map_or(usize::MAX, |len| len.saturating_sub(fits));
        // The window may have changed its size since.
        let least = (self.chosen + 1).saturating_sub(fits);
        self.top.clamp(least, self.chosen.max(least)).min(last)
    }

    /// Places of the rows that are shown, from the upper to the lower.
    #[must_use]
    pub fn shown(&self, fits: usize) -> Vec<usize> {
        let first = self.first(fits);
        let places = first..first.saturating_add(fits).min(self.len.unwrap_or_else(|| self.known()));
        match self.end {
            End::First => places.collect(),
            End::Last => places.rev().collect(),
        }
    }

    /// Whether a place is the chosen one.
    #[must_use]
    pub const fn is_chosen(&self, at: usize) -> bool {
        self.chosen == at
    }

    /// Where in all rows those lie that are shown: from which part to which, 0 to 1. None where all are shown, or it
    /// is not known how many there are.
    #[must_use]
    pub fn span(&self, fits: usize) -> Option<(f32, f32)> {
        let all = match (self.len, self.count) {
            (Some(len), _) => len,
            (None, Some(Count::Exactly(all))) => usize::try_from(all).ok()?,
            _ => return None,
        };
        if all <= fits {
            return None;
        }
        let part = |rows: usize| rows as f32 / all as f32;
        let (from, to) = (part(self.first(fits)), part((self.first(fits) + fits).min(all)));
        Some(match self.end {
            End::First => (from, to),
            End::Last => (1.0 - to, 1.0 - from),
        })
    }

    /// Whether there are rows above and below those that are shown.
    #[must_use]
    pub fn beyond(&self, fits: usize) -> (bool, bool) {
        let first = self.first(fits);
        let more = self.len.is_none_or(|len| first + fits < len);
        match self.end {
            End::First => (first > 0, more),
            End::Last => (more, first > 0),
        }
    }

    /// Chooses a shown row.
    pub fn choose(&mut self, at: usize) {
        self.chosen = at;
    }

    /// Moves by rows: more is further down. The chosen row stays among those that are shown.
    pub fn moved(&mut self, by: i32, fits: usize) {
        let by = match self.end {
            End::First => i64::from(by),
            End::Last => -i64::from(by),
        };
        let last = self.known().saturating_sub(fits.max(1));
        self.top = add(self.first(fits), by).min(last);
        self.chosen = self.chosen.clamp(self.top, self.top + fits.max(1) - 1);
        self.within();
    }

    /// Chooses another row. False when the other end of the list is needed for it.
    pub fn step(&mut self, step: RowStep, fits: usize) -> bool {
        let page = i64::try_from(fits.max(2) - 1).unwrap_or(1);
        let by = match step {
            RowStep::Up => -1,
            RowStep::Down => 1,
            RowStep::PageUp => -page,
            RowStep::PageDown => page,
            RowStep::First | RowStep::Last => {
                let here = match self.end {
                    End::First => RowStep::First,
                    End::Last => RowStep::Last,
                };
                if step != here && self.len.is_none() && self.can_turn() {
                    return false;
                }
                self.top = if step == here { 0 } else { self.known().saturating_sub(fits.max(1)) };
                self.chosen = if step == here { 0 } else { self.known().saturating_sub(1) };
                return true;
            }
        };
        let by = if self.end == End::First { by } else { -by };
        let first = self.first(fits);
        self.chosen = add(self.chosen, by);
        self.within();
        // A page turns as a whole, so that the chosen row stays where the eye is.
        let turns = matches!(step, RowStep::PageUp | RowStep::PageDown);
        let top = if turns { add(first, by).min(self.known().saturating_sub(fits.max(1))) } else { first };
        let least = (self.chosen + 1).saturating_sub(fits.max(1));
        self.top = top.clamp(least, self.chosen);
        true
    }

    fn within(&mut self) {
        self.chosen = self.chosen.min(self.known().saturating_sub(1));
    }

    /// Whether the list can be asked for from its other end. What fits best has no other end.
    fn can_turn(&self) -> bool {
        self.query.sort != Sort::Best
    }

    /// Takes rows in. False when they are not of this list.
    pub fn take(&mut self, ticket: Ticket, page: Page) -> bool {
        if ticket.list != self.list {
            return false;
        }
        let _ = self.asked.remove(&ticket.page);
        match page.next {
            None => self.len = Some(ticket.page * PAGE + page.hits.len()),
            Some(next) if self.starts.len() == ticket.page + 1 => self.starts.push(Some(next)),
            Some(_) => {}
        }
        let _ = self.pages.insert(ticket.page, page.hits);
        true
    }

    /// What must be asked so that the rows around those that are shown are there; what lies far away is let go.
    pub fn wanted(&mut self, fits: usize) -> Vec<Ask> {
        let first = self.first(fits) / PAGE;
        let last = (self.first(fits) + 2 * fits.max(1)) / PAGE;
        let (least, most) = (first.saturating_sub(KEPT), last + KEPT);
        self.pages.retain(|page, _| (least..=most).contains(page));
        let mut asks = Vec::new();
        for page in first.saturating_sub(1)..=last {
            let Some(after) = self.starts.get(page) else { break };
            let beyond = self.len.is_some_and(|len| page > 0 && page * PAGE >= len);
            if beyond || self.pages.contains_key(&page) || !self.asked.insert(page) {
                continue;
            }
            let mut query = self.query.clone();
            query.reversed ^= self.end == End::Last;
            let ticket = Ticket { list: self.list, page };
            asks.push(Ask::Find { ticket, query, after: after.clone() });
        }
        asks
    }
}

fn add(at: usize, by: i64) -> usize {
    let way = usize::try_from(by.unsigned_abs()).unwrap_or(usize::MAX);
    if by < 0 { at.saturating_sub(way) } else { at.saturating_add(way) }
}
