//! What may happen when.
//!
//! Opening facts may be set and corrected until the first signature. The walk round the unit needs the opening.
//! The first signature, or refusal to sign, needs all that was to be said; from then on nothing but signatures,
//! copy, stop and seal may follow, so that what was signed is what stands. (Two exceptions that change nothing
//! of it: somebody comes who has yet to sign; another agent takes over before the agent has signed.) The way back
//! is [`Event::ClosingReopened`]: it makes the signatures void. A stopped handover is signed by the agent and
//! sealed, or reopened. Once the seal has begun, nothing may follow.

mod closing;
mod opening;
mod round;

use super::event::{Entry, Event, PersonId};
use super::limits;
use super::state::{Began, Phase};
use super::{ADULT, Refused, Walk};
use crate::route::Route;

/// Whether an entry may begin a walk over the route.
pub(super) fn beginning(route: &Route, first: &Entry, began: &Began) -> Result<(), Refused> {
    limits::offset(first.offset_minutes)?;
    limits::id("id of the walk", &began.walk)?;
    limits::digest("digest of the scripts", &began.scripts)?;
    limits::name("name of the tablet", &began.tablet, 40)?;
    if began.unit == route.unit {
        Ok(())
    } else {
        Err(Refused::OtherUnit { unit: began.unit.clone(), route: route.unit.clone() })
    }
}

/// An id that the route does not have.
pub(super) fn unknown(what: &'static str, id: &str) -> Refused {
    Refused::Unknown { what, id: id.chars().take(80).collect() }
}

/// Refuses what would change nothing.
fn news(is_news: bool) -> Result<(), Refused> {
    if is_news { Ok(()) } else { Err(Refused::AlreadySo) }
}

impl Walk {
    /// Whether an entry may happen now.
    ///
    /// # Errors
    /// Why not, and the way out.
    pub fn accepts(&self, entry: &Entry) -> Result<(), Refused> {
        limits::offset(entry.offset_minutes)?;
        if self.seal.is_some() {
            return Err(Refused::SealBegun);
        }
        match &entry.event {
            // It changes nothing of what was said or signed, and so may come at any time.
            Event::ClockJumped { from, to } => news(from != to),
            Event::Began { .. } => Err(Refused::BeganTwice),
            Event::AgentOn { .. }
            | Event::ReaderSet { .. }
            | Event::PartySet { .. }
            | Event::LicenceSeen { .. }
            | Event::PresentSet { .. }
            | Event::ExperienceSet { .. }
            | Event::TranslatorSet { .. }
            | Event::BookingSet { .. }
            | Event::TripPlanned { .. }
            | Event::Opened => self.accepts_opening(entry),
            Event::StepShown { .. }
            | Event::StepNotShown { .. }
            | Event::QuestionNoted { .. }
            | Event::CautionAnswered { .. }
            | Event::CautionRefused { .. }
            | Event::DemonstrationTried(_)
            | Event::DemonstrationHelped(_)
            | Event::ReadingTaken { .. }
            | Event::ReadingNotTaken { .. }
            | Event::ItemCounted { .. }
            | Event::MarkPlaced { .. }
            | Event::MarkRemoved { .. }
            | Event::LeavingChecked { .. }
            | Event::ConsentAnswered { .. } => self.accepts_round(entry),
            Event::AnswersLapsed(_) | Event::UnitSwapped(_) | Event::UnitFollowed(_) => {
                self.accepts_swap(&entry.event)
            }
            Event::Signed { .. }
            | Event::SignatureRefused { .. }
            | Event::ClosingReopened { .. }
            | Event::CopyOffered
            | Event::CopyChosen { .. }
            | Event::HandoverStopped { .. }
            | Event::SealBegun { .. } => self.accepts_closing(entry),
        }
    }

    /// Refuses once somebody has signed or the handover was stopped.
    pub(super) fn still_changing(&self) -> Result<(), Refused> {
        if self.events >= limits::EVENTS_MAX {
            return Err(Refused::TooMany { max: limits::EVENTS_MAX });
        }
        match self.phase() {
            Phase::Opening | Phase::Walking => Ok(()),
            Phase::Signing => {
                let first = self.closing.signatures.first();
                first.map_or(Ok(()), |(who, _)| Err(Refused::SigningBegun(*who)))
            }
            Phase::Stopped => Err(Refused::Stopped),
            Phase::SealBegun => Err(Refused::SealBegun),
        }
    }

    fn in_party(&self, person: PersonId) -> Result<(), Refused> {
        if self.person(person).is_some() { Ok(()) } else { Err(Refused::NotInParty { person }) }
    }

    /// An adult who travels.
    pub(super) fn adult(&self, person: PersonId) -> Result<(), Refused> {
        let found = self.person(person).ok_or(Refused::NotInParty { person })?;
        if found.age >= ADULT { Ok(()) } else { Err(Refused::TooYoung { person }) }
    }

    /// An adult who travels and is here.
    fn adult_present(&self, person: PersonId) -> Result<(), Refused> {
        self.adult(person)?;
        if self.is_present(person) { Ok(()) } else { Err(Refused::NotPresent { person }) }
    }
}
