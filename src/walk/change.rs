//! What an event that was accepted changes.

use super::Walk;
use super::demo::Attempt;
use super::event::{Entry, Event, PersonId, Who};
use super::state::{
    Began, Booking, ClockJump, Closing, Consent, Count, Question, Reader, ReadingState, Reopened, Response,
    Seal, Signature, StepState, Stopped, Timed, Withdrawn,
};

impl Began {
    /// The beginning, if the event is one.
    pub(super) fn from_event(event: &Event) -> Option<Self> {
        let Event::Began { walk, unit, scripts, tablet, rehearsal, demo } = event else { return None };
        Some(Self {
            walk: walk.clone(),
            unit: unit.clone(),
            scripts: scripts.clone(),
            tablet: tablet.clone(),
            rehearsal: *rehearsal,
            demo: *demo,
        })
    }
}

impl Walk {
    /// Applies an entry that [`Walk::accepts`].
    pub(super) fn change(&mut self, entry: &Entry) {
        self.events = self.events.saturating_add(1);
        self.times.take(&self.route, self.opened.is_some(), self.last_at, entry);
        if let Event::ClockJumped { from, to } = entry.event {
            self.clock_jumps.push(Timed::at(entry, ClockJump { from, to }));
        }
        if entry.at < self.last_at {
            self.clock_steps_back = self.clock_steps_back.saturating_add(1);
        }
        self.last_at = entry.at;
        self.change_opening(entry);
        self.change_walking(entry);
        self.change_closing(entry);
        self.change_swap(entry);
    }

    fn change_opening(&mut self, entry: &Entry) {
        match &entry.event {
            Event::AgentOn { code } => self.agents.push(Timed::at(entry, code.clone())),
            Event::ReaderSet { language, measures } => {
                let reader = Reader { language: language.clone(), measures: measures.clone() };
                self.reader = Some(Timed::at(entry, reader));
            }
            Event::PartySet { people } => self.parties.push(Timed::at(entry, people.clone())),
            Event::LicenceSeen { person, licence } => {
                self.licences.insert(*person, Timed::at(entry, licence.clone()));
            }
            Event::PresentSet { people } => {
                let mut people = people.clone();
                people.sort_unstable();
                self.present = Some(Timed::at(entry, people));
            }
            Event::ExperienceSet { first_time } => self.experience = Some(Timed::at(entry, *first_time)),
            Event::TranslatorSet { role } => self.translator = Some(Timed::at(entry, role.clone())),
            Event::BookingSet { reference, nights, due_back } => {
                let (reference, due_back) = (reference.clone(), due_back.clone());
                self.booking = Some(Timed::at(entry, Booking { reference, nights: *nights, due_back }));
            }
            Event::TripPlanned { trip } => self.planned = Some(Timed::at(entry, (**trip).clone())),
            Event::Opened => self.opened = Some(Timed::at(entry, ())),
            _ => {}
        }
    }

    fn change_walking(&mut self, entry: &Entry) {
        match &entry.event {
            Event::StepShown { step, language } => {
                let state = self.shown_now(language);
                self.push_step(step, Timed::at(entry, state));
            }
            Event::StepNotShown { step, reason, note } => {
                let state = StepState::NotShown { reason: *reason, note: note.clone() };
                self.push_step(step, Timed::at(entry, state));
            }
            Event::QuestionNoted { step, caution, text, answered } => {
                let (step, caution, text) = (step.clone(), caution.clone(), text.clone());
                self.questions.push(Timed::at(entry, Question { step, caution, text, answered: *answered }));
            }
            Event::CautionAnswered { caution, by, how, shown, looked_ms, .. } => {
                let said = Response::Answered { how: *how, shown: shown.clone(), looked_ms: *looked_ms };
                self.push_response(caution, *by, Timed::at(entry, said));
            }
            Event::CautionRefused { caution, by, reason, decision, shown, .. } => {
                let (reason, shown) = (reason.clone(), shown.clone());
                let said = Response::Refused { reason, decision: *decision, shown };
                self.push_response(caution, *by, Timed::at(entry, said));
            }
            Event::DemonstrationTried(tried) => {
                self.push_attempt(&tried.caution, Timed::at(entry, Attempt::Tried(tried.clone())));
            }
            Event::DemonstrationHelped(helped) => {
                self.push_attempt(&helped.caution, Timed::at(entry, Attempt::Helped(helped.clone())));
            }
            Event::ReadingTaken { reading, value, measure } => {
                let state = ReadingState::Taken { value: value.clone(), measure: measure.clone() };
                self.readings.insert(reading.clone(), Timed::at(entry, state));
            }
            Event::ReadingNotTaken { reading, reason, note } => {
                let state = ReadingState::NotTaken { reason: *reason, note: note.clone() };
                self.readings.insert(reading.clone(), Timed::at(entry, state));
            }
            Event::ItemCounted { tag, count, note } => {
                let count = Count { count: *count, note: note.clone() };
                self.items.insert(tag.clone(), Timed::at(entry, count));
            }
            Event::MarkPlaced { mark } => {
                self.marks.insert(mark.number, Timed::at(entry, mark.clone()));
            }
            Event::MarkRemoved { number } => {
                if let Some(mark) = self.marks.remove(number) {
                    self.removed.insert(*number, (mark, entry.at));
                }
            }
            Event::LeavingChecked { item, good } => {
                self.leaving.insert(item.clone(), Timed::at(entry, *good));
            }
            _ => {}
        }
    }

    fn change_closing(&mut self, entry: &Entry) {
        match &entry.event {
            Event::ConsentAnswered { by, given, shown } => {
                let consent = Consent { given: *given, shown: shown.clone() };
                self.consents.insert(*by, Timed::at(entry, consent));
            }
            Event::Signed { by, ink } => {
                self.sign(*by, Timed::at(entry, Signature::Signed { ink: ink.clone() }));
            }
            Event::SignatureRefused { by, reason, decision } => {
                let refused = Signature::Refused { reason: reason.clone(), decision: *decision };
                self.sign(Who::Person(*by), Timed::at(entry, refused));
            }
            Event::CopyOffered => self.closing.copy_offered = Some(Timed::at(entry, ())),
            Event::CopyChosen { choice } => self.closing.copy = Some(Timed::at(entry, *choice)),
            Event::ClosingReopened { reason } => {
                let stopped = self.closing.stopped.clone();
                self.withdraw(entry, reason);
                // A stop that is taken back takes the swap with it.
                self.swapped = None;
                self.reopened.push(Timed::at(entry, Reopened { reason: reason.clone(), stopped }));
            }
            Event::HandoverStopped { reason, by } => {
                self.stop(entry, reason, *by);
            }
            Event::SealBegun { number, previous } => {
                self.seal = Some(Timed::at(entry, Seal { number: *number, previous: previous.clone() }));
            }
            _ => {}
        }
    }

    /// A step that is shown now, in the measures of now.
    pub(super) fn shown_now(&self, language: &str) -> StepState {
        let measures = self.reader.as_ref().map_or_else(String::new, |r| r.value.measures.clone());
        StepState::Shown { language: language.to_owned(), measures }
    }

    fn push_step(&mut self, step: &str, state: Timed<StepState>) {
        self.steps.entry(step.to_owned()).or_default().push(state);
    }

    /// The handover stops: what was signed counts no more.
    pub(super) fn stop(&mut self, entry: &Entry, reason: &str, by: Who) {
        self.withdraw(entry, reason);
        let stopped = Stopped { reason: reason.to_owned(), by };
        self.closing.stopped = Some(Timed::at(entry, stopped));
    }

    pub(super) fn push_response(&mut self, caution: &str, by: PersonId, said: Timed<Response>) {
        let people = self.responses.entry(caution.to_owned()).or_default();
        people.entry(by).or_default().push(said);
    }

    fn push_attempt(&mut self, caution: &str, attempt: Timed<Attempt>) {
        self.attempts.entry(caution.to_owned()).or_default().push(attempt);
    }

    fn sign(&mut self, by: Who, signature: Timed<Signature>) {
        self.closing.signatures.retain(|(who, _)| *who != by);
        self.closing.signatures.push((by, signature));
    }

    /// What was signed is no longer what stands: signatures are kept, but count no more.
    fn withdraw(&mut self, entry: &Entry, reason: &str) {
        let closing = std::mem::take(&mut self.closing);
        let Closing { signatures, .. } = closing;
        self.withdrawn.extend(signatures.into_iter().map(|(by, signature)| Withdrawn {
            by,
            signature,
            withdrawn: entry.at,
            reason: reason.to_owned(),
        }));
    }
}
