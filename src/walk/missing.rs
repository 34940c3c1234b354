//! What is still missing, all of it at once, for the screens to list.

use jiff::civil::Date;

use super::event::{Decision, PersonId, Who};
use super::state::{AnswerState, MustAnswer, Phase, ReadingState, Signature, StepState};
use super::{ADULT, Walk};

/// One thing that is missing before a walk can open, be signed or be sealed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Missing {
    /// No agent.
    #[error("no agent has taken the walk on")]
    Agent,
    /// No language and measures.
    #[error("language and measures of the renter are not set")]
    Reader,
    /// No party.
    #[error("the party is not entered")]
    Party,
    /// A driver's licence was not seen.
    #[error("licence of driver {} not seen", person.0)]
    Licence {
        /// The driver.
        person: PersonId,
    },
    /// A licence ends before the unit is due back.
    #[error("licence of driver {} ends on {expiry}, before the unit is due back on {until}", person.0)]
    LicenceTooShort {
        /// The driver.
        person: PersonId,
        /// Its last day.
        expiry: Date,
        /// Day the unit is due back.
        until: Date,
    },
    /// No adult is present.
    #[error("no adult of the party is marked as present")]
    Present,
    /// First time or not is not said.
    #[error("it is not said whether the renter has used a unit like this before")]
    Experience,
    /// No booking.
    #[error("booking and trip are not entered")]
    Booking,
    /// The opening is not closed.
    #[error("the walk round the unit has not begun")]
    Opened,
    /// A step is neither shown nor left out.
    #[error("step {step} is neither shown nor left out with a reason")]
    Step {
        /// The step.
        step: String,
    },
    /// A caution lacks an answer.
    #[error("caution {caution} is not answered{}", by.map_or_else(String::new, |p| format!(" by driver {}", p.0)))]
    Answer {
        /// The caution.
        caution: String,
        /// Its step.
        step: String,
        /// The driver who must; none when any adult will do.
        by: Option<PersonId>,
    },
    /// A caution was refused and the agent decided to keep the unit.
    #[error("person {} refused caution {caution}, and the unit was to be kept", by.0)]
    AnswerKept {
        /// The caution.
        caution: String,
        /// Its step.
        step: String,
        /// Who refused.
        by: PersonId,
    },
    /// A reading was neither taken nor given a reason.
    #[error("reading {reading} is neither taken nor given a reason")]
    Reading {
        /// The reading.
        reading: String,
        /// Its step.
        step: String,
    },
    /// An item was not counted.
    #[error("item {tag} is not counted")]
    Item {
        /// Its tag.
        tag: String,
    },
    /// A line of the leaving check was not looked at.
    #[error("{item} of the leaving check is not looked at")]
    Leaving {
        /// The line.
        item: String,
        /// Its step.
        step: String,
    },
    /// A line of the leaving check is not as it must be.
    #[error("{item} of the leaving check is not as it must be")]
    LeavingNotGood {
        /// The line.
        item: String,
        /// Its step.
        step: String,
    },
    /// Consent to an electronic record was not answered.
    #[error("no adult has answered about the electronic record")]
    Consent,
    /// Somebody has not signed.
    #[error("{} has not signed", who(*by))]
    Signature {
        /// Who.
        by: Who,
    },
    /// Somebody would not sign and the agent decided to keep the unit.
    #[error("person {} would not sign, and the unit was to be kept", by.0)]
    SignatureKept {
        /// Who.
        by: PersonId,
    },
    /// No copy was offered.
    #[error("no copy was offered")]
    CopyOffered,
    /// The renter has not chosen how to take the copy.
    #[error("it is not said how the renter takes the copy")]
    CopyChoice,
}

/// Who it is, in English.
pub(super) fn who(by: Who) -> String {
    match by {
        Who::Agent => "the agent".to_owned(),
        Who::Person(id) => format!("person {}", id.0),
    }
}

impl Missing {
    /// Every key there is, for the check that each has its words.
    pub const KEYS: &[&str] = &[
        "missing-agent",
        "missing-reader",
        "missing-party",
        "missing-licence",
        "missing-licence-too-short",
        "missing-present",
        "missing-experience",
        "missing-booking",
        "missing-opened",
        "missing-step",
        "missing-answer",
        "missing-answer-driver",
        "missing-answer-kept",
        "missing-reading",
        "missing-item",
        "missing-leaving",
        "missing-leaving-not-good",
        "missing-consent",
        "missing-signature-agent",
        "missing-signature-person",
        "missing-signature-kept",
        "missing-copy-offered",
        "missing-copy-choice",
    ];

    /// Key of its words, the same for ever.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            Self::Agent => "missing-agent",
            Self::Reader => "missing-reader",
            Self::Party => "missing-party",
            Self::Licence { .. } => "missing-licence",
            Self::LicenceTooShort { .. } => "missing-licence-too-short",
            Self::Present => "missing-present",
            Self::Experience => "missing-experience",
            Self::Booking => "missing-booking",
            Self::Opened => "missing-opened",
            Self::Step { .. } => "missing-step",
            Self::Answer { by: None, .. } => "missing-answer",
            Self::Answer { by: Some(_), .. } => "missing-answer-driver",
            Self::AnswerKept { .. } => "missing-answer-kept",
            Self::Reading { .. } => "missing-reading",
            Self::Item { .. } => "missing-item",
            Self::Leaving { .. } => "missing-leaving",
            Self::LeavingNotGood { .. } => "missing-leaving-not-good",
            Self::Consent => "missing-consent",
            Self::Signature { by: Who::Agent } => "missing-signature-agent",
            Self::Signature { by: Who::Person(_) } => "missing-signature-person",
            Self::SignatureKept { .. } => "missing-signature-kept",
            Self::CopyOffered => "missing-copy-offered",
            Self::CopyChoice => "missing-copy-choice",
        }
    }

    /// The person it waits for, if it waits for one.
    #[must_use]
    pub fn person(&self) -> Option<PersonId> {
        match self {
            Self::Licence { person } | Self::LicenceTooShort { person, .. } => Some(*person),
            Self::Answer { by, .. } => *by,
            Self::AnswerKept { by, .. } | Self::SignatureKept { by } => Some(*by),
            Self::Signature { by: Who::Person(id) } => Some(*id),
            _ => None,
        }
    }

    /// The step where it can be made good, if it belongs to one.
    #[must_use]
    pub fn step(&self) -> Option<&str> {
        match self {
            Self::Step { step }
            | Self::Answer { step, .. }
            | Self::AnswerKept { step, .. }
            | Self::Reading { step, .. }
            | Self::Leaving { step, .. }
            | Self::LeavingNotGood { step, .. } => Some(step),
            _ => None,
        }
    }
}

impl Walk {
    /// What is missing before the walk round the unit may begin. Stays of use later, since a changed party may
    /// need a licence that nobody has looked at.
    #[must_use]
    pub fn missing_to_open(&self) -> Vec<Missing> {
        let mut missing = Vec::new();
        let mut need = |there: bool, what: Missing| {
            if !there {
                missing.push(what);
            }
        };
        need(!self.agents.is_empty(), Missing::Agent);
        need(self.reader.is_some(), Missing::Reader);
        need(!self.parties.is_empty(), Missing::Party);
        for driver in self.drivers() {
            let person = driver.id;
            match self.licences.get(&person) {
                None => need(false, Missing::Licence { person }),
                Some(seen) => {
                    let expiry = seen.value.expiry;
                    if let Some(until) = self.due_back_date() {
                        need(expiry >= until, Missing::LicenceTooShort { person, expiry, until });
                    }
                }
            }
        }
        need(self.people().iter().any(|p| p.age >= ADULT && self.is_present(p.id)), Missing::Present);
        need(self.experience.is_some(), Missing::Experience);
        need(self.booking.is_some(), Missing::Booking);
        missing
    }

    /// What is missing before anybody may sign that the unit is handed over.
    #[must_use]
    pub fn missing_to_sign(&self) -> Vec<Missing> {
        let mut missing = self.missing_to_open();
        if self.opened.is_none() {
            missing.push(Missing::Opened);
        }
        for index in 0..self.route.steps.len() {
            missing.extend(self.missing_at(index));
        }
        for item in &self.route.items {
            if !self.items.contains_key(&item.tag) {
                missing.push(Missing::Item { tag: item.tag.clone() });
            }
        }
        if !self.people().iter().any(|p| p.age >= ADULT && self.consents.contains_key(&p.id)) {
            missing.push(Missing::Consent);
        }
        missing
    }

    /// What is missing of the step at this position in the route: its showing, answers, readings and lines of
    /// the leaving check. Empty beyond the end.
    #[must_use]
    pub fn missing_at(&self, index: usize) -> Vec<Missing> {
        let mut missing = Vec::new();
        let Some(step) = self.route.steps.get(index) else { return missing };
        if matches!(self.step_state(&step.id), StepState::Open) {
            missing.push(Missing::Step { step: step.id.clone() });
        }
        for caution in &step.cautions {
            let lacks = |by| Missing::Answer { caution: caution.id.clone(), step: step.id.clone(), by };
            match self.answer_state_of(step, caution) {
                AnswerState::Waiting(MustAnswer::OneAdult) => missing.push(lacks(None)),
                AnswerState::Waiting(MustAnswer::Drivers(drivers)) => {
                    missing.extend(drivers.into_iter().map(|id| lacks(Some(id))));
                }
                AnswerState::Kept(people) => missing.extend(people.into_iter().map(|by| {
                    Missing::AnswerKept { caution: caution.id.clone(), step: step.id.clone(), by }
                })),
                AnswerState::NotDue | AnswerState::Answered | AnswerState::Refused(_) => {}
            }
        }
        for reading in &step.readings {
            if !self.readings.contains_key(&reading.id) {
                missing.push(Missing::Reading { reading: reading.id.clone(), step: step.id.clone() });
            }
        }
        for item in &step.leaving {
            let (item, step) = (item.clone(), step.id.clone());
            match self.leaving.get(&item).map(|t| t.value) {
                None => missing.push(Missing::Leaving { item, step }),
                Some(false) => missing.push(Missing::LeavingNotGood { item, step }),
                Some(true) => {}
            }
        }
        missing
    }

    /// What is missing before the walk may be sealed: as *handed over*, or, once the handover was stopped, as
    /// *not handed over*, which needs the agent's signature alone. Empty once the seal has begun.
    #[must_use]
    pub fn missing_to_seal(&self) -> Vec<Missing> {
        let agent = Missing::Signature { by: Who::Agent };
        match self.phase() {
            Phase::SealBegun => return Vec::new(),
            Phase::Stopped => return if self.agent_signed() { Vec::new() } else { vec![agent] },
            Phase::Opening | Phase::Walking | Phase::Signing => {}
        }
        let mut missing = self.missing_to_sign();
        for driver in self.drivers() {
            let by = driver.id;
            match self.signature(Who::Person(by)).map(|s| &s.value) {
                None => missing.push(Missing::Signature { by: Who::Person(by) }),
                Some(Signature::Refused { decision: Decision::KeepUnit, .. }) => {
                    missing.push(Missing::SignatureKept { by });
                }
                Some(Signature::Signed { .. } | Signature::Refused { .. }) => {}
            }
        }
        // An adult who need not sign can still say no, and the agent can still decide to keep the unit.
        for (who, signature) in &self.closing.signatures {
            if let (Who::Person(by), Signature::Refused { decision: Decision::KeepUnit, .. }) =
                (*who, &signature.value)
                && self.person(by).is_some_and(|p| !p.driver)
            {
                missing.push(Missing::SignatureKept { by });
            }
        }
        if !self.agent_signed() {
            missing.push(agent);
        }
        if self.closing.copy_offered.is_none() {
            missing.push(Missing::CopyOffered);
        }
        if self.closing.copy.is_none() {
            missing.push(Missing::CopyChoice);
        }
        missing
    }

    /// Readings that could not be taken, with their reasons, in the order of the route.
    pub fn readings_not_taken(&self) -> impl Iterator<Item = (&str, &ReadingState)> {
        let readings = self.route.steps.iter().flat_map(|s| &s.readings);
        readings
            .filter_map(|r| self.readings.get(&r.id).map(|t| (r.id.as_str(), &t.value)))
            .filter(|(_, state)| matches!(state, ReadingState::NotTaken { .. }))
    }
}
