//! A walk: one live handoff, as a pure state machine over its events.
//!
//! What may happen when is decided here, in [`Walk::accepts`], and nowhere else; screens ask and show the
//! reason. Nothing here reads a clock or a disk: replaying the same entries over the same route gives the same
//! walk. `limits` bounds what may be said, `rules` says what may happen when, `change` does it, `answers` and
//! `missing` derive who must still do what, `read` is what everybody else sees, `said` puts a refusal into words.

mod answers;
mod change;
mod demo;
pub mod event;
pub mod limits;
mod missing;
pub mod pace;
mod read;
mod refused;
mod rules;
mod said;
mod state;
mod swap;
mod times;
mod trip;

use std::collections::BTreeMap;
use std::sync::Arc;

use jiff::Timestamp;

pub use demo::{Attempt, Demonstrating, Due, TRIES_ALONE};
pub use event::{
    Answer, AnswerOf, Carried, CopyChoice, Decision, Entry, Event, Follow, Helped, Ink, Lapse, Licence,
    LocalTime, Mark, MarkKind, MarkSize, NotRead, NotShown, Person, PersonId, PlanPoint, Shown, Swap, Tried,
    Who,
};
pub use missing::Missing;
pub use pace::Pace;
pub use refused::Refused;
pub use said::Arg;
pub use state::{
    AnswerState, Began, Booking, ClockJump, Consent, Count, MustAnswer, Outcome, Peg, Phase, Question,
    Reader, ReadingState, Reopened, Response, Seal, Signature, StepState, Stopped, Tally, Timed, Withdrawn,
};
pub use times::Times;

use crate::figures::Trip;
use crate::route::Route;
use state::Closing;

/// Age from which somebody may answer, sign or drive, in years.
pub const ADULT: u8 = 18;

/// One live handoff in progress.
#[derive(Debug, Clone, PartialEq)]
pub struct Walk {
    route: Arc<Route>,
    began: Timed<Began>,
    agents: Vec<Timed<String>>,
    reader: Option<Timed<Reader>>,
    parties: Vec<Timed<Vec<Person>>>,
    licences: BTreeMap<PersonId, Timed<Licence>>,
    present: Option<Timed<Vec<PersonId>>>,
    experience: Option<Timed<bool>>,
    translator: Option<Timed<String>>,
    booking: Option<Timed<Booking>>,
    planned: Option<Timed<Trip>>,
    opened: Option<Timed<()>>,
    steps: BTreeMap<String, Vec<Timed<StepState>>>,
    questions: Vec<Timed<Question>>,
    responses: BTreeMap<String, BTreeMap<PersonId, Vec<Timed<Response>>>>,
    attempts: BTreeMap<String, Vec<Timed<Attempt>>>,
    readings: BTreeMap<String, Timed<ReadingState>>,
    items: BTreeMap<String, Timed<Count>>,
    marks: BTreeMap<u16, Timed<Mark>>,
    removed: BTreeMap<u16, (Timed<Mark>, Timestamp)>,
    leaving: BTreeMap<String, Timed<bool>>,
    consents: BTreeMap<PersonId, Timed<Consent>>,
    closing: Closing,
    withdrawn: Vec<Withdrawn>,
    reopened: Vec<Timed<Reopened>>,
    lapsed: swap::Lapsed,
    swapped: Option<Timed<Swap>>,
    followed: Option<Timed<Follow>>,
    seal: Option<Timed<Seal>>,
    events: usize,
    last_at: Timestamp,
    clock_steps_back: usize,
    clock_jumps: Vec<Timed<ClockJump>>,
    times: Times,
}

impl Walk {
    /// Begins a walk over a route.
    ///
    /// # Errors
    /// The entry is not a well-formed [`Event::Began`] for the unit of the route.
    pub fn begin(route: Arc<Route>, first: &Entry) -> Result<Self, Refused> {
        let began = Began::from_event(&first.event).ok_or(Refused::NotBegun)?;
        rules::beginning(&route, first, &began)?;
        Ok(Self {
            route,
            began: Timed::at(first, began),
            agents: Vec::new(),
            reader: None,
            parties: Vec::new(),
            licences: BTreeMap::new(),
            present: None,
            experience: None,
            translator: None,
            booking: None,
            planned: None,
            opened: None,
            steps: BTreeMap::new(),
            questions: Vec::new(),
            responses: BTreeMap::new(),
            attempts: BTreeMap::new(),
            readings: BTreeMap::new(),
            items: BTreeMap::new(),
            marks: BTreeMap::new(),
            removed: BTreeMap::new(),
            leaving: BTreeMap::new(),
            consents: BTreeMap::new(),
            closing: Closing::default(),
            withdrawn: Vec::new(),
            reopened: Vec::new(),
            lapsed: swap::Lapsed::new(),
            swapped: None,
            followed: None,
            seal: None,
            events: 1,
            last_at: first.at,
            clock_steps_back: 0,
            clock_jumps: Vec::new(),
            times: Times::default(),
        })
    }

    /// Applies an entry.
    ///
    /// # Errors
    /// The entry may not happen now; the walk is unchanged.
    pub fn apply(&mut self, entry: &Entry) -> Result<(), Refused> {
        self.accepts(entry)?;
        self.change(entry);
        Ok(())
    }

    /// The walk that these entries make.
    ///
    /// # Errors
    /// Position of the first entry that is refused, counted from 0, and why. No entry at all is refused at 0.
    pub fn replay<'a>(
        route: Arc<Route>,
        entries: impl IntoIterator<Item = &'a Entry>,
    ) -> Result<Self, (usize, Refused)> {
        let mut entries = entries.into_iter().enumerate();
        let (_, first) = entries.next().ok_or((0, Refused::NotBegun))?;
        let mut walk = Self::begin(route, first).map_err(|refused| (0, refused))?;
        for (index, entry) in entries {
            walk.apply(entry).map_err(|refused| (index, refused))?;
        }
        Ok(walk)
    }
}
