//! Office: finds records in the archive as one types, opens them, trusts or doubts them. Staff of the office alone come
//! here.
//!
//! The screen holds what is asked and the rows that are shown. The archive is read by `kiosk::office`, off this thread.

mod filters;
mod list;
mod table;
mod view;

use super::Action;
use crate::archive::index::{Query, Sort};
use crate::kiosk::context::Ctx;
use crate::kiosk::office::{Answer, Ask, End, Ready};
use crate::kiosk::ui::{Element, RowsEvent};

pub use filters::{Change, Filters, Which};
use list::Found;

/// Rows that are asked for before it is known how many fit.
const FITS: usize = 20;

/// How far the archive is open.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Stage {
    /// It is being opened; so many records of so many are in the index.
    Opening(usize, usize),
    /// It cannot be read, and why.
    Shut(String),
    /// It is open.
    Open(Ready),
}

/// A page of the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Page {
    /// What was found.
    #[default]
    List,
    /// What to find.
    Filters,
}

/// State of the screen.
#[derive(Debug)]
pub struct State {
    /// Number of the next list.
    next: u64,
    stage: Stage,
    page: Page,
    words: String,
    filters: Filters,
    /// The order that was asked for; none: what fits best, or the newest first.
    sort: Option<Sort>,
    reversed: bool,
    shown: Option<Found>,
    /// What was asked last and has not come yet.
    coming: Option<Found>,
    /// Why nothing could be found.
    trouble: Option<String>,
    fits: usize,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// Words to find.
    Typed(String),
    /// No words.
    Cleared,
    /// Another order, or the same the other way round.
    SortChosen(Sort),
    /// Something on the table that shows so many rows.
    Rows(RowsEvent, usize),
    /// Filters are to be set.
    FiltersAsked,
    /// Another filter.
    Filter(Change),
    /// A filter is to go.
    FilterRemoved(Which),
    /// All filters are to go.
    FiltersCleared,
    /// Back to the list.
    Back,
    /// The archive is to be opened once more.
    Again,
    /// To the Yard.
    YardAsked,
}

impl State {
    /// The screen as it opens; `list` is the number of its first list.
    #[must_use]
    pub fn new(list: u64) -> Self {
        Self {
            next: list,
            stage: Stage::Opening(0, 0),
            page: Page::List,
            words: String::new(),
            filters: Filters::default(),
            sort: None,
            reversed: false,
            shown: None,
            coming: None,
            trouble: None,
            fits: FITS,
        }
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, _ctx: &Ctx<'_>) -> Action {
        match message {
            Message::Typed(words) => {
                self.words = words;
                self.find(End::First)
            }
            Message::Cleared => {
                self.words.clear();
                self.find(End::First)
            }
            Message::SortChosen(sort) => {
                self.reversed = self.sort() == sort && sort != Sort::Best && !self.reversed;
                self.sort = Some(sort);
                self.find(End::First)
            }
            Message::Rows(event, fits) => self.rows(event, fits),
            Message::FiltersAsked => {
                self.page = Page::Filters;
                Action::None
            }
            Message::Filter(change) => {
                let before = self.query();
                self.filters.change(change);
                if self.query() == before { Action::None } else { self.find(End::First) }
            }
            Message::FilterRemoved(which) => {
                self.filters.remove(which);
                self.find(End::First)
            }
            Message::FiltersCleared => {
                self.filters = Filters::default();
                self.find(End::First)
            }
            Message::Back => {
                self.page = Page::List;
                Action::None
            }
            Message::Again => {
                self.stage = Stage::Opening(0, 0);
                self.trouble = None;
                Action::Office(vec![Ask::Open])
            }
            Message::YardAsked => Action::ToYard,
        }
    }

    /// The order that holds.
    fn sort(&self) -> Sort {
        let usual = if self.words.trim().is_empty() { Sort::Sealed } else { Sort::Best };
        self.sort.filter(|sort| *sort != Sort::Best || usual == Sort::Best).unwrap_or(usual)
    }

    /// What is asked.
    fn query(&self) -> Query {
        let mut query = Query::words(self.words.trim());
        self.filters.fill(&mut query);
        query.sort = self.sort();
        query.reversed = self.reversed && query.sort != Sort::Best;
        query
    }

    /// Asks for a list. What is shown stays until its first rows come.
    fn find(&mut self, end: End) -> Action {
        if !matches!(self.stage, Stage::Open(_)) {
            return Action::None;
        }
        let mut found = Found::new(self.next, self.query(), end);
        self.next += 1;
        let asks = found.wanted(1);
        self.coming = Some(found);
        Action::Office(asks)
    }

    fn rows(&mut self, event: RowsEvent, fits: usize) -> Action {
        self.fits = fits;
        let Some(shown) = &mut self.shown else { return Action::None };
        match event {
            RowsEvent::Pressed(at) => {
                if let Some(at) = shown.shown(fits).get(at) {
                    shown.choose(*at);
                }
            }
            RowsEvent::Opened => {}
            RowsEvent::Step(step) => {
                if !shown.step(step, fits) {
                    let end = if shown.end() == End::First { End::Last } else { End::First };
                    return self.find(end);
                }
            }
            RowsEvent::Moved(by) => shown.moved(by, fits),
        }
        self.wanted()
    }

    /// Asks for the rows around those that are shown.
    fn wanted(&mut self) -> Action {
        let asks = self.shown.as_mut().map_or_else(Vec::new, |shown| shown.wanted(self.fits));
        Action::Office(asks)
    }

    /// Takes in what the archive says.
    pub fn answered(&mut self, answer: Answer, _ctx: &Ctx<'_>) -> Action {
        match answer {
            Answer::Indexing { done, of } => {
                self.stage = Stage::Opening(done, of);
                Action::None
            }
            Answer::Opened(Ok(ready)) => {
                self.stage = Stage::Open(ready);
                self.find(End::First)
            }
            Answer::Opened(Err(why)) => {
                self.stage = Stage::Shut(why);
                Action::None
            }
            Answer::Found { ticket, page } => match page {
                Ok(page) => self.found(ticket, page),
                Err(why) => {
                    let awaited = [&self.coming, &self.shown];
                    if awaited.into_iter().flatten().any(|found| found.list() == ticket.list) {
                        self.trouble = Some(why);
                    }
                    Action::None
                }
            },
            Answer::Counted { list, count } => {
                if let Some(shown) = self.shown.as_mut().filter(|shown| shown.list() == list) {
                    shown.count = Some(count);
                }
                Action::None
            }
        }
    }

    fn found(&mut self, ticket: crate::kiosk::office::Ticket, page: crate::archive::index::Page) -> Action {
        if self.coming.as_ref().is_some_and(|coming| coming.list() == ticket.list) {
            let before = self.shown.take();
            self.shown = self.coming.take();
            self.trouble = None;
            let Some(shown) = &mut self.shown else { return Action::None };
            let _ = shown.take(ticket, page);
            // The other end of the same list has as many rows.
            let known =
                before.filter(|before| before.query() == shown.query()).and_then(|before| before.count);
            shown.count = known;
            let mut asks = shown.wanted(self.fits);
            if known.is_none() {
                asks.push(shown.count_ask());
            }
            return Action::Office(asks);
        }
        if let Some(shown) = &mut self.shown
            && shown.take(ticket, page)
        {
            return self.wanted();
        }
        Action::None
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        match (&self.stage, self.page) {
            (Stage::Opening(done, of), _) => view::opening(ctx, *done, *of),
            (Stage::Shut(why), _) => view::shut(ctx, why),
            (Stage::Open(ready), Page::List) => self.list_page(ctx, ready),
            (Stage::Open(_), Page::Filters) => self.filters_page(ctx),
        }
    }
}
