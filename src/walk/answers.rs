//! Who must answer a caution, and who has.
//!
//! Computed anew from party and responses each time, so that a changed party changes at once who must answer.

use super::event::{Decision, PersonId};
use super::state::{AnswerState, MustAnswer, Response, StepState, Timed};
use super::{ADULT, Walk};
use crate::route::{Answers, Caution, Signal, Step};

impl Walk {
    /// Whether the caution with this id has the answers it needs; none when it is not on the route.
    #[must_use]
    pub fn answer_state(&self, caution: &str) -> Option<AnswerState> {
        self.route.caution(caution).map(|(step, caution)| self.answer_state_of(step, caution))
    }

    /// As [`Walk::answer_state`], for a caution of the route that is at hand.
    #[must_use]
    pub fn answer_state_of(&self, step: &Step, caution: &Caution) -> AnswerState {
        let kept = self.refusing(&caution.id, Decision::KeepUnit);
        if !kept.is_empty() {
            return AnswerState::Kept(kept);
        }
        if matches!(self.step_state(&step.id), StepState::NotShown { .. }) && caution.signal != Signal::Danger
        {
            return AnswerState::NotDue;
        }
        let lacking = self.lacking(caution);
        if let Some(must) = lacking {
            return AnswerState::Waiting(must);
        }
        let refused = self.refusing(&caution.id, Decision::HandOver);
        if refused.is_empty() { AnswerState::Answered } else { AnswerState::Refused(refused) }
    }

    /// Who still has to answer or refuse, if anybody.
    fn lacking(&self, caution: &Caution) -> Option<MustAnswer> {
        match caution.who {
            Answers::Party => {
                let mut adults = self.people().iter().filter(|p| p.age >= ADULT);
                let anyone = adults.any(|p| self.response(&caution.id, p.id).is_some());
                (!anyone).then_some(MustAnswer::OneAdult)
            }
            Answers::EachDriver => {
                let drivers = self.drivers().map(|p| p.id);
                let lacking: Vec<PersonId> =
                    drivers.filter(|id| self.response(&caution.id, *id).is_none()).collect();
                // Without a party there is nobody to wait for, and still nobody has answered.
                (self.people().is_empty() || !lacking.is_empty()).then_some(MustAnswer::Drivers(lacking))
            }
        }
    }

    /// People of the party whose last word on a caution is a refusal with this decision.
    fn refusing(&self, caution: &str, wanted: Decision) -> Vec<PersonId> {
        let refuses = |id: &PersonId| {
            matches!(self.response(caution, *id).map(|r| &r.value),
                Some(Response::Refused { decision, .. }) if *decision == wanted)
        };
        self.people().iter().map(|p| p.id).filter(refuses).collect()
    }

    /// The last word of a person on a caution, whether or not they still travel; none when it stands no longer.
    #[must_use]
    pub fn response(&self, caution: &str, person: PersonId) -> Option<&Timed<Response>> {
        self.response_history(caution, person).get(self.gone(caution, person)..)?.last()
    }

    /// All that a person said to a caution, oldest first; the last one counts, unless it stands no longer.
    #[must_use]
    pub fn response_history(&self, caution: &str, person: PersonId) -> &[Timed<Response>] {
        let by_person = self.responses.get(caution);
        by_person.and_then(|people| people.get(&person)).map_or(&[], Vec::as_slice)
    }

    /// The last word of everybody whose word on a caution stands, by number of the person. Ask
    /// [`Walk::person`] whether they still travel.
    pub fn responses(&self, caution: &str) -> impl Iterator<Item = (PersonId, &Timed<Response>)> {
        let (of, people) = (caution.to_owned(), self.speakers(caution));
        people.filter_map(move |id| self.response(&of, id).map(|r| (id, r)))
    }

    /// Everybody who ever spoke to a caution.
    pub fn speakers(&self, caution: &str) -> impl Iterator<Item = PersonId> {
        self.responses.get(caution).into_iter().flat_map(|people| people.keys().copied())
    }

    /// Refusals that stand, in the order of the route: caution, person, what was said.
    #[must_use]
    pub fn refusals(&self) -> Vec<(&Caution, PersonId, &Timed<Response>)> {
        let cautions = self.route.steps.iter().flat_map(|s| &s.cautions);
        let said = cautions.flat_map(|c| self.responses(&c.id).map(move |(id, r)| (c, id, r)));
        said.filter(|(_, id, r)| matches!(r.value, Response::Refused { .. }) && self.person(*id).is_some())
            .collect()
    }

    /// Positions of the cautions of a step that wait for an answer, those of DANGER steps not shown included.
    #[must_use]
    pub fn waiting_at(&self, step: &Step) -> Vec<usize> {
        let waits = |c: &Caution| matches!(self.answer_state_of(step, c), AnswerState::Waiting(_));
        step.cautions.iter().enumerate().filter(|(_, c)| waits(c)).map(|(i, _)| i).collect()
    }
}
