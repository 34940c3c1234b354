//! Rules of the closing: signatures, copy, stop, seal.

use super::super::event::{Decision, Entry, Event, PersonId, Who};
use super::super::limits::{self, NOTE_MAX};
use super::super::state::{Phase, Signature};
use super::super::{Missing, Refused, Walk};
use super::news;

impl Walk {
    pub(super) fn accepts_closing(&self, entry: &Entry) -> Result<(), Refused> {
        match &entry.event {
            Event::Signed { by, ink } => {
                if let Who::Person(person) = by {
                    self.adult_present(*person)?;
                }
                limits::ink(ink)?;
                self.may_sign(*by)
            }
            Event::SignatureRefused { by, reason, decision } => {
                self.adult(*by)?;
                limits::words("reason", reason, NOTE_MAX)?;
                self.may_sign(Who::Person(*by))?;
                self.new_refusal(*by, reason, *decision)
            }
            Event::ClosingReopened { reason } => {
                limits::words("reason", reason, NOTE_MAX)?;
                match self.phase() {
                    Phase::Signing | Phase::Stopped => Ok(()),
                    _ => Err(Refused::NothingToReopen),
                }
            }
            Event::CopyOffered => {
                self.may_copy()?;
                news(self.closing.copy_offered.is_none())
            }
            Event::CopyChosen { choice } => {
                self.may_copy()?;
                if self.closing.copy_offered.is_none() {
                    return Err(Refused::CopyNotOffered);
                }
                news(self.closing.copy.as_ref().map(|c| c.value) != Some(*choice))
            }
            Event::HandoverStopped { reason, by } => self.accepts_stop(reason, *by),
            Event::SealBegun { number, previous } => {
                limits::range("running number", i64::from(*number), 1, 999_999)?;
                if let Some(previous) = previous {
                    limits::digest("digest of the record before", previous)?;
                }
                let missing = self.missing_to_seal();
                if missing.is_empty() { Ok(()) } else { Err(Refused::SealIncomplete(missing)) }
            }
            _ => Ok(()),
        }
    }

    /// Nobody signs 'to save time' before all is said; in a stopped walk whoever wishes may sign at once.
    fn may_sign(&self, by: Who) -> Result<(), Refused> {
        if self.signature(by).is_some_and(|s| matches!(s.value, Signature::Signed { .. })) {
            return Err(Refused::AlreadySigned(by));
        }
        if self.phase() == Phase::Stopped {
            return Ok(());
        }
        let missing = self.missing_to_sign();
        if missing.is_empty() { Ok(()) } else { Err(Refused::NotReadyToSign(missing)) }
    }

    fn new_refusal(&self, by: PersonId, reason: &str, decision: Decision) -> Result<(), Refused> {
        let is = self.signature(Who::Person(by)).map(|s| &s.value);
        news(!is.is_some_and(
            |s| matches!(s, Signature::Refused { reason: r, decision: d } if r == reason && *d == decision),
        ))
    }

    /// The copy comes when all drivers have answered, so that the tablet need not come back for it once the agent has
    /// it; or when the handover was stopped and the agent has signed.
    fn may_copy(&self) -> Result<(), Refused> {
        let mut missing = self.missing_to_seal();
        let stopped = self.phase() == Phase::Stopped;
        missing.retain(|m| match m {
            Missing::CopyOffered | Missing::CopyChoice => false,
            Missing::Signature { by: Who::Agent } => stopped,
            _ => true,
        });
        if missing.is_empty() { Ok(()) } else { Err(Refused::CopyTooEarly(missing)) }
    }

    pub(in crate::walk) fn accepts_stop(&self, reason: &str, by: Who) -> Result<(), Refused> {
        if self.closing.stopped.is_some() {
            return Err(Refused::Stopped);
        }
        let mut missing = self.missing_to_open();
        missing.retain(|m| matches!(m, Missing::Agent | Missing::Party));
        if !missing.is_empty() {
            return Err(Refused::StopTooEarly(missing));
        }
        limits::words("reason", reason, NOTE_MAX)?;
        match by {
            Who::Agent => Ok(()),
            Who::Person(person) => self.adult(person),
        }
    }
}
