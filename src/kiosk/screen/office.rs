//! Office: finds records in the archive as one types, opens them, trusts or doubts them. Staff of the office alone come
//! here.
//!
//! The screen holds what is asked and the rows that are shown. The archive is read by `kiosk::office`, off this thread.

mod brief;
mod cautions;
mod details;
mod export;
mod filters;
mod list;
mod places;
mod quarantine;
pub mod sheet;
mod table;
mod take_in;
mod view;

use std::path::PathBuf;

use super::Action;
use crate::archive::index::{Query, Sort};
use crate::kiosk::context::Ctx;
use crate::kiosk::office::{Answer, Ask, End, Opened, Ready, Ticket, What};
use crate::kiosk::ui::{Element, RowsEvent};

use details::Record;
pub use export::Export;
pub use filters::{Change, Filters, Which};
use list::Found;
pub use places::Places;
use quarantine::Apart;
pub use take_in::TakeIn;

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
#[derive(Debug, Default)]
enum Page {
    /// What was found.
    #[default]
    List,
    /// What to find.
    Filters,
    /// A record is being opened.
    Reading(String),
    /// The file of a record cannot be read, and why.
    Gone(String, String),
    /// A record.
    Record(Box<Record>),
    /// A record is copied out.
    Export(Box<Record>, Export),
    /// Records are taken in.
    TakeIn(TakeIn),
    /// What was not taken.
    Quarantine(Apart),
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
    places: Places,
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
    /// A record is to be opened, by its id.
    RecordChosen(String),
    /// A section of the open record.
    SectionChosen(usize),
    /// The next part of a long section, or the one before.
    PartTurned(bool),
    /// The open record is to be copied out.
    ExportAsked,
    /// What of it.
    WhatChosen(What),
    /// Records are to be taken in.
    TakeInAsked,
    /// Places are to be looked for once more.
    PlacesAsked,
    /// What is in quarantine is to be shown.
    QuarantineAsked,
    /// A file in quarantine, by its place in the list.
    KeptChosen(usize),
    /// That file is to be taken in once more.
    KeptAgain,
    /// From this place, or to it.
    PlaceChosen(PathBuf),
    /// What is typed for a folder.
    FolderTyped(String),
    /// From the typed folder, or to it.
    FolderGiven,
    /// To the Yard.
    YardAsked,
}

impl State {
    /// The screen as it opens; `list` is the number of its first list. `taking` is what was last told of records that
    /// are being taken in, or what became of them while nobody was here.
    #[must_use]
    pub fn new(list: u64, taking: Option<Answer>) -> Self {
        let page = taking.and_then(TakeIn::of).map_or(Page::List, Page::TakeIn);
        Self {
            next: list,
            stage: Stage::Opening(0, 0),
            page,
            words: String::new(),
            filters: Filters::default(),
            sort: None,
            reversed: false,
            shown: None,
            coming: None,
            trouble: None,
            places: Places::default(),
            fits: FITS,
        }
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        match message {
            Message::Typed(words) => self.words = words,
            Message::Cleared => self.words.clear(),
            Message::SortChosen(sort) => {
                self.reversed = self.sort() == sort && sort != Sort::Best && !self.reversed;
                self.sort = Some(sort);
            }
            Message::Filter(change) => {
                let before = self.query();
                self.filters.change(change, ctx);
                if self.query() == before {
                    return Action::None;
                }
            }
            Message::FilterRemoved(which) => self.filters.remove(which, ctx),
            Message::FiltersCleared => self.filters = Filters::default(),
            Message::Rows(event, fits) => return self.rows(event, fits),
            other => return self.go(other),
        }
        self.find(End::First)
    }

    /// Goes from page to page.
    fn go(&mut self, message: Message) -> Action {
        match message {
            Message::FiltersAsked => self.page = Page::Filters,
            Message::Back => self.back(),
            Message::Again => {
                self.stage = Stage::Opening(0, 0);
                self.trouble = None;
                return Action::Office(vec![Ask::Open]);
            }
            Message::RecordChosen(id) => return self.read(id, None),
            Message::SectionChosen(at) => {
                if let Page::Record(record) = &mut self.page {
                    record.show(at);
                }
            }
            Message::PartTurned(on) => {
                if let Page::Record(record) = &mut self.page {
                    record.turn(on);
                }
            }
            Message::ExportAsked => {
                if let Page::Record(record) = std::mem::take(&mut self.page) {
                    let export = Export::new(record.opened.held.is_ok());
                    self.page = Page::Export(record, export);
                    return self.look_for_places();
                }
            }
            Message::WhatChosen(what) => {
                if let Page::Export(_, export) = &mut self.page {
                    (export.what, export.result) = (what, None);
                }
            }
            Message::TakeInAsked => {
                self.page = Page::TakeIn(TakeIn::Where);
                return self.look_for_places();
            }
            Message::PlacesAsked => return self.look_for_places(),
            Message::QuarantineAsked => {
                self.page = Page::Quarantine(Apart::default());
                return Action::Office(vec![Ask::Quarantine]);
            }
            Message::KeptChosen(at) => {
                if let Page::Quarantine(apart) = &mut self.page {
                    apart.open = Some(at);
                }
            }
            Message::KeptAgain => return self.again(),
            Message::PlaceChosen(place) => return self.place(place),
            Message::FolderTyped(folder) => self.places.typed = folder,
            Message::FolderGiven => {
                if let Some(folder) = self.places.folder() {
                    return self.place(folder);
                }
            }
            Message::YardAsked => return Action::ToYard,
            _ => {}
        }
        Action::None
    }

    /// Back to the page before.
    fn back(&mut self) {
        self.page = match std::mem::take(&mut self.page) {
            Page::Export(record, _) => Page::Record(record),
            Page::Quarantine(apart) if apart.open.is_some() => {
                Page::Quarantine(Apart { open: None, ..apart })
            }
            Page::Quarantine(_) => Page::TakeIn(TakeIn::Where),
            _ => Page::List,
        };
    }

    fn look_for_places(&mut self) -> Action {
        self.places.found = None;
        Action::Office(vec![Ask::Places])
    }

    /// Takes in from a place, or copies to it.
    fn place(&mut self, place: PathBuf) -> Action {
        match &mut self.page {
            Page::TakeIn(take @ TakeIn::Where) => {
                *take = TakeIn::Busy { done: 0, of: 0 };
                Action::Office(vec![Ask::TakeIn(place)])
            }
            Page::Export(record, export) if !export.busy => {
                (export.busy, export.result) = (true, None);
                let Opened { id, path, .. } = &record.opened;
                let (id, path, what) = (id.clone(), path.clone(), export.what);
                Action::Office(vec![Ask::Export { id, path, what, to: place }])
            }
            _ => Action::None,
        }
    }

    fn read(&mut self, id: String, path: Option<String>) -> Action {
        self.page = Page::Reading(id.clone());
        Action::Office(vec![Ask::Read { id, path }])
    }

    /// Opens the chosen row.
    fn open_chosen(&mut self) -> Action {
        let chosen = self.shown.as_ref().and_then(Found::chosen);
        match chosen.map(|hit| (hit.id.clone(), hit.path.clone())) {
            // What is still being looked for is not what stands there.
            Some((id, path)) if self.coming.is_none() => self.read(id, Some(path)),
            _ => Action::None,
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
                    return self.open_chosen();
                }
            }
            RowsEvent::Opened => return self.open_chosen(),
            RowsEvent::Step(step) => {
                if !shown.step(step, fits) {
                    let end = if shown.end() == End::First { End::Last } else { End::First };
                    return self.find(end);
                }
            }
            RowsEvent::Laid => {}
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
                // What was counted before may have grown.
                if let Some(shown) = &mut self.shown {
                    shown.count = None;
                }
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
            other => {
                self.page_answered(other);
                Action::None
            }
        }
    }

    /// Takes in what a page waits for. What it no longer waits for is passed over.
    fn page_answered(&mut self, answer: Answer) {
        match (answer, &mut self.page) {
            (Answer::Read { id, result }, Page::Reading(awaited)) if id == *awaited => {
                self.page = match result {
                    Ok(opened) => Page::Record(Box::new(Record::new(*opened))),
                    Err(why) => Page::Gone(id, why),
                };
            }
            (Answer::Places(places), _) => self.places.found = Some(places),
            (answer @ Answer::Taking { .. }, Page::TakeIn(take @ TakeIn::Busy { .. }))
            | (answer @ Answer::Took { .. }, Page::TakeIn(take)) => {
                if let Some(now) = TakeIn::of(answer) {
                    *take = now;
                }
            }
            (Answer::Quarantine(files), Page::Quarantine(apart)) => apart.files = Some(files),
            (Answer::Exported(result), Page::Export(_, export)) => {
                (export.busy, export.result) = (false, Some(result));
            }
            _ => {}
        }
    }

    fn found(&mut self, ticket: Ticket, page: crate::archive::index::Page) -> Action {
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
        match (&self.stage, &self.page) {
            // Records that are taken in are told of to the end.
            (stage, Page::TakeIn(take)) => {
                let quarantined = if let Stage::Open(ready) = stage { ready.quarantined } else { 0 };
                self.take_in_page(ctx, take, quarantined)
            }
            (Stage::Opening(done, of), _) => view::opening(ctx, *done, *of),
            (Stage::Shut(why), _) => view::shut(ctx, why),
            (Stage::Open(ready), Page::List) => self.list_page(ctx, ready),
            (Stage::Open(_), Page::Filters) => self.filters_page(ctx),
            (Stage::Open(_), Page::Reading(id)) => view::reading(ctx, id),
            (Stage::Open(_), Page::Gone(id, why)) => view::gone(ctx, id, why),
            (Stage::Open(_), Page::Record(record)) => self.record_page(ctx, record),
            (Stage::Open(_), Page::Quarantine(apart)) => apart.view(ctx),
            (Stage::Open(_), Page::Export(_, export)) => self.export_page(ctx, export, &self.places),
        }
    }
}
