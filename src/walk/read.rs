//! What screens and record read from a walk.

use jiff::Timestamp;
use jiff::civil::Date;

use super::event::{CopyChoice, Licence, Mark, Person, PersonId, Who};
use super::missing::Missing;
use super::state::{
    AnswerState, Began, Booking, ClockJump, Consent, Count, Outcome, Peg, Phase, Question, Reader,
    ReadingState, Reopened, Seal, Signature, StepState, Stopped, Tally, Timed, Withdrawn,
};
use super::times::Times;
use super::{ADULT, Walk};
use crate::route::Route;

static OPEN: StepState = StepState::Open;

impl Walk {
    /// The route it follows.
    #[must_use]
    pub fn route(&self) -> &Route {
        &self.route
    }

    /// How it began.
    #[must_use]
    pub fn began(&self) -> &Timed<Began> {
        &self.began
    }

    /// Id of the walk.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.began.value.walk
    }

    /// Where it stands.
    #[must_use]
    pub fn phase(&self) -> Phase {
        if self.seal.is_some() {
            Phase::SealBegun
        } else if self.closing.stopped.is_some() {
            Phase::Stopped
        } else if !self.closing.signatures.is_empty() {
            Phase::Signing
        } else if self.opened.is_some() {
            Phase::Walking
        } else {
            Phase::Opening
        }
    }

    /// Staff codes in the order in which agents took the walk on, the present one last.
    #[must_use]
    pub fn agents(&self) -> &[Timed<String>] {
        &self.agents
    }

    /// Staff code of the agent on duty.
    #[must_use]
    pub fn agent(&self) -> Option<&str> {
        self.agents.last().map(|a| a.value.as_str())
    }

    /// Language and measures of the renter.
    #[must_use]
    pub fn reader(&self) -> Option<&Timed<Reader>> {
        self.reader.as_ref()
    }

    /// Everybody who travels, as entered last.
    #[must_use]
    pub fn people(&self) -> &[Person] {
        self.parties.last().map_or(&[], |p| p.value.as_slice())
    }

    /// The party as entered and corrected, oldest first.
    #[must_use]
    pub fn party_history(&self) -> &[Timed<Vec<Person>>] {
        &self.parties
    }

    /// Somebody who travels.
    #[must_use]
    pub fn person(&self, id: PersonId) -> Option<&Person> {
        self.people().iter().find(|p| p.id == id)
    }

    /// Somebody who travels or was once entered as one who does, as last entered.
    #[must_use]
    pub fn person_ever(&self, id: PersonId) -> Option<&Person> {
        self.parties.iter().rev().find_map(|party| party.value.iter().find(|p| p.id == id))
    }

    /// A number nobody of this walk has had, for the next person; none when all are used up.
    #[must_use]
    pub fn next_person(&self) -> Option<PersonId> {
        let last = self.parties.iter().flat_map(|party| &party.value).map(|p| p.id.0).max();
        last.unwrap_or(0).checked_add(1).map(PersonId)
    }

    /// Who drives or tows.
    pub fn drivers(&self) -> impl Iterator<Item = &Person> {
        self.people().iter().filter(|p| p.driver)
    }

    /// Who is 18 or older.
    pub fn adults(&self) -> impl Iterator<Item = &Person> {
        self.people().iter().filter(|p| p.age >= ADULT)
    }

    /// What was seen of somebody's licence.
    #[must_use]
    pub fn licence(&self, person: PersonId) -> Option<&Timed<Licence>> {
        self.licences.get(&person)
    }

    /// Whether somebody travels and is present.
    #[must_use]
    pub fn is_present(&self, person: PersonId) -> bool {
        self.present.as_ref().is_some_and(|p| p.value.contains(&person)) && self.person(person).is_some()
    }

    /// Who is present, and when that was said.
    #[must_use]
    pub fn present(&self) -> Option<&Timed<Vec<PersonId>>> {
        self.present.as_ref()
    }

    /// Whether the renter uses a unit like this for the first time.
    #[must_use]
    pub fn first_time(&self) -> Option<&Timed<bool>> {
        self.experience.as_ref()
    }

    /// Who translated, by role; empty when it was said that nobody does.
    #[must_use]
    pub fn translator(&self) -> Option<&Timed<String>> {
        self.translator.as_ref()
    }

    /// Booking and trip.
    #[must_use]
    pub fn booking(&self) -> Option<&Timed<Booking>> {
        self.booking.as_ref()
    }

    /// Day the unit is due back.
    pub(super) fn due_back_date(&self) -> Option<Date> {
        self.booking.as_ref().map(|b| b.value.due_back.local.date())
    }

    /// When the walk round the unit began.
    #[must_use]
    pub fn opened(&self) -> Option<&Timed<()>> {
        self.opened.as_ref()
    }

    /// What became of a step so far.
    #[must_use]
    pub fn step_state(&self, step: &str) -> &StepState {
        self.step_history(step).last().map_or(&OPEN, |s| &s.value)
    }

    /// All that was said of a step, oldest first; the last one counts.
    #[must_use]
    pub fn step_history(&self, step: &str) -> &[Timed<StepState>] {
        self.steps.get(step).map_or(&[], Vec::as_slice)
    }

    /// Questions in the order they were asked.
    #[must_use]
    pub fn questions(&self) -> &[Timed<Question>] {
        &self.questions
    }

    /// What became of a reading.
    #[must_use]
    pub fn reading(&self, reading: &str) -> Option<&Timed<ReadingState>> {
        self.readings.get(reading)
    }

    /// How many of a loaned item go with the unit.
    #[must_use]
    pub fn item(&self, tag: &str) -> Option<&Timed<Count>> {
        self.items.get(tag)
    }

    /// Condition marks that stand, by number.
    pub fn marks(&self) -> impl Iterator<Item = &Timed<Mark>> {
        self.marks.values()
    }

    /// Condition marks that were taken back, by number: the mark as placed, and when it was taken back.
    pub fn marks_removed(&self) -> impl Iterator<Item = (&Timed<Mark>, Timestamp)> {
        self.removed.values().map(|(mark, at)| (mark, *at))
    }

    /// A free number for the next mark; none when all are used up.
    #[must_use]
    pub fn next_mark(&self) -> Option<u16> {
        let used = self.marks.keys().chain(self.removed.keys()).max().copied();
        used.unwrap_or(0).checked_add(1)
    }

    /// Whether a line of the leaving check is as it must be, if it was looked at.
    #[must_use]
    pub fn leaving(&self, item: &str) -> Option<&Timed<bool>> {
        self.leaving.get(item)
    }

    /// Answers about an electronic record, by person.
    pub fn consents(&self) -> impl Iterator<Item = (PersonId, &Timed<Consent>)> {
        self.consents.iter().map(|(id, c)| (*id, c))
    }

    /// The signature of somebody, or their refusal.
    #[must_use]
    pub fn signature(&self, by: Who) -> Option<&Timed<Signature>> {
        self.closing.signatures.iter().find(|(who, _)| *who == by).map(|(_, s)| s)
    }

    /// Signatures and refusals in the order they were given.
    #[must_use]
    pub fn signatures(&self) -> &[(Who, Timed<Signature>)] {
        &self.closing.signatures
    }

    /// Signatures that no longer count, oldest first.
    #[must_use]
    pub fn withdrawn(&self) -> &[Withdrawn] {
        &self.withdrawn
    }

    /// Closings that were taken back, oldest first.
    #[must_use]
    pub fn reopened(&self) -> &[Timed<Reopened>] {
        &self.reopened
    }

    pub(super) fn agent_signed(&self) -> bool {
        self.signature(Who::Agent).is_some_and(|s| matches!(s.value, Signature::Signed { .. }))
    }

    /// When a copy was offered.
    #[must_use]
    pub fn copy_offered(&self) -> Option<&Timed<()>> {
        self.closing.copy_offered.as_ref()
    }

    /// How the renter takes the copy.
    #[must_use]
    pub fn copy(&self) -> Option<&Timed<CopyChoice>> {
        self.closing.copy.as_ref()
    }

    /// Why the unit is not handed over, if it is not.
    #[must_use]
    pub fn stopped(&self) -> Option<&Timed<Stopped>> {
        self.closing.stopped.as_ref()
    }

    /// Place of the record in the chain, once the seal has begun.
    #[must_use]
    pub fn seal(&self) -> Option<&Timed<Seal>> {
        self.seal.as_ref()
    }

    /// Whether the unit goes out.
    #[must_use]
    pub fn outcome(&self) -> Outcome {
        match (&self.closing.stopped, &self.seal) {
            (Some(stopped), _) => Outcome::NotHandedOver(stopped.clone()),
            (None, Some(_)) => Outcome::HandedOver,
            (None, None) => Outcome::Open,
        }
    }

    /// How many events it holds.
    #[must_use]
    pub fn events(&self) -> usize {
        self.events
    }

    /// When the last event happened, by the tablet's clock.
    #[must_use]
    pub fn last_at(&self) -> Timestamp {
        self.last_at
    }

    /// How often the tablet's clock stepped back between two events.
    #[must_use]
    pub fn clock_steps_back(&self) -> usize {
        self.clock_steps_back
    }

    /// Jumps of the tablet's clock during the walk, oldest first.
    #[must_use]
    pub fn clock_jumps(&self) -> &[Timed<ClockJump>] {
        &self.clock_jumps
    }

    /// Where the time went.
    #[must_use]
    pub const fn times(&self) -> &Times {
        &self.times
    }

    /// Position of the first step that is neither shown nor left out.
    #[must_use]
    pub fn next_step(&self) -> Option<usize> {
        self.next_step_after(0)
    }

    /// As [`Walk::next_step`], from a position on, and from the start again when none is open behind it.
    #[must_use]
    pub fn next_step_after(&self, from: usize) -> Option<usize> {
        let open = |(_, s): &(usize, &crate::route::Step)| *self.step_state(&s.id) == StepState::Open;
        let steps = || self.route.steps.iter().enumerate();
        steps().skip(from).find(open).or_else(|| steps().find(open)).map(|(i, _)| i)
    }

    /// How the stop at this position in the route stands; none beyond the end.
    #[must_use]
    pub fn peg(&self, stop: usize) -> Option<Peg> {
        let stop = self.route.stops.get(stop)?;
        let steps = || self.route.steps.iter().enumerate().filter(|(i, _)| stop.steps.contains(i));
        let states = || steps().map(|(_, s)| self.step_state(&s.id));
        let missing: Vec<Missing> = steps().flat_map(|(i, _)| self.missing_at(i)).collect();
        Some(if states().all(|s| *s == StepState::Open) {
            Peg::Open
        } else if states().any(|s| *s == StepState::Open) {
            Peg::PartDone
        } else if missing.iter().any(|m| matches!(m, Missing::Answer { .. } | Missing::AnswerKept { .. })) {
            Peg::Unanswered
        } else if !missing.is_empty() {
            Peg::PartDone
        } else if states().all(|s| matches!(s, StepState::NotShown { .. })) {
            Peg::Skipped
        } else {
            Peg::Done
        })
    }

    /// Steps that are shown or left out, of all.
    #[must_use]
    pub fn steps_settled(&self) -> Tally {
        let all = self.route.steps.len();
        let done = self.route.steps.iter().filter(|s| *self.step_state(&s.id) != StepState::Open).count();
        Tally { done, all }
    }

    /// Cautions that need no more answers, of those that need any.
    #[must_use]
    pub fn cautions_settled(&self) -> Tally {
        let mut tally = Tally::default();
        for step in &self.route.steps {
            for caution in &step.cautions {
                match self.answer_state_of(step, caution) {
                    AnswerState::NotDue => {}
                    AnswerState::Waiting(_) | AnswerState::Kept(_) => tally.all += 1,
                    AnswerState::Answered | AnswerState::Refused(_) => {
                        tally.all += 1;
                        tally.done += 1;
                    }
                }
            }
        }
        tally
    }

    /// Readings that are taken or given a reason, of all.
    #[must_use]
    pub fn readings_settled(&self) -> Tally {
        let readings = || self.route.steps.iter().flat_map(|s| &s.readings);
        Tally {
            done: readings().filter(|r| self.readings.contains_key(&r.id)).count(),
            all: readings().count(),
        }
    }

    /// Loaned items that are counted, of all.
    #[must_use]
    pub fn items_settled(&self) -> Tally {
        let items = &self.route.items;
        Tally { done: items.iter().filter(|i| self.items.contains_key(&i.tag)).count(), all: items.len() }
    }
}
