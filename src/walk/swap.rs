//! Changes in the middle of a walk: an answer stands while the words it was given to are the same, else it is
//! asked for again.
//!
//! Texts come in as functions that give the digest of a caution's words, so that nothing here reads scripts.

use std::collections::BTreeMap;

use super::event::{Answer, AnswerOf, Carried, Entry, Event, Follow, Lapse, PersonId, Swap};
use super::limits;
use super::rules::unknown;
use super::state::{Phase, Response, Timed};
use super::{Refused, Walk};
use crate::route::{Ask, Caution, Route};

/// Answers that stand no longer: by caution and person, how many of the first answers, and since when.
pub(super) type Lapsed = BTreeMap<String, BTreeMap<PersonId, Vec<Timed<usize>>>>;

/// Whether an answer of this kind can stand on another unit: nothing that is demonstrated there can.
fn may_be_carried(caution: &Caution, how: Answer) -> bool {
    match how {
        Answer::Demonstrate => false,
        Answer::Read => caution.ask == Ask::Read,
        Answer::Hold | Answer::TwoTaps => caution.ask != Ask::Demonstrate,
    }
}

impl Walk {
    /// How many of the first answers of a person to a caution stand no longer.
    pub(super) fn gone(&self, caution: &str, person: PersonId) -> usize {
        let lapses = self.lapsed.get(caution).and_then(|people| people.get(&person));
        lapses.and_then(|all| all.last()).map_or(0, |last| last.value)
    }

    /// Since when the answer at this place of [`Walk::response_history`] stands no longer, if it does not.
    #[must_use]
    pub fn lapsed(&self, caution: &str, person: PersonId, index: usize) -> Option<Timed<()>> {
        let lapse = self.lapsed.get(caution)?.get(&person)?.iter().find(|lapse| index < lapse.value)?;
        Some(Timed { at: lapse.at, offset_minutes: lapse.offset_minutes, value: () })
    }

    /// Whether the answer at this place of [`Walk::response_history`] was given in the walk before.
    #[must_use]
    pub fn carried(&self, caution: &str, person: PersonId, index: usize) -> bool {
        let of = |a: &Carried| a.caution == caution && a.by == person;
        index == 0 && self.followed.as_ref().is_some_and(|f| f.value.answers.iter().any(of))
    }

    /// The walk that follows this one, when the unit was swapped.
    #[must_use]
    pub fn swapped(&self) -> Option<&Timed<Swap>> {
        self.swapped.as_ref()
    }

    /// The walk that this one follows, when the unit was swapped.
    #[must_use]
    pub fn followed(&self) -> Option<&Timed<Follow>> {
        self.followed.as_ref()
    }

    /// Answers that would stand no longer where cautions and consent read so; of one person, or of all. Nothing
    /// when all stand.
    pub fn lapses(
        &self,
        of: Option<PersonId>,
        text: impl Fn(&Caution) -> String,
        consent: &str,
    ) -> Option<Event> {
        let counts = |id: PersonId| of.is_none_or(|of| of == id);
        let mut lapse = Lapse::default();
        for caution in self.route.steps.iter().flat_map(|s| &s.cautions) {
            let mut now = None;
            for (by, said) in self.responses(&caution.id).filter(|(by, _)| counts(*by)) {
                let (Response::Answered { shown, .. } | Response::Refused { shown, .. }) = &said.value;
                if *now.get_or_insert_with(|| text(caution)) != shown.text {
                    lapse.answers.push(AnswerOf { caution: caution.id.clone(), by });
                }
            }
        }
        let other = self.consents.iter().filter(|(id, c)| counts(**id) && c.value.shown.text != consent);
        lapse.consents = other.map(|(id, _)| *id).collect();
        (lapse != Lapse::default()).then_some(Event::AnswersLapsed(lapse))
    }

    /// What the opening of the next walk of this party has of this one. Whether they have used such a unit
    /// before is asked anew, since it is another unit.
    #[must_use]
    pub fn opening_again(&self) -> Vec<Event> {
        let mut events = Vec::new();
        events.extend(self.agent().map(|code| Event::AgentOn { code: code.to_owned() }));
        if let Some(reader) = &self.reader {
            let (language, measures) = (reader.value.language.clone(), reader.value.measures.clone());
            events.push(Event::ReaderSet { language, measures });
        }
        if let Some(booking) = &self.booking {
            let (reference, due_back) = (booking.value.reference.clone(), booking.value.due_back.clone());
            events.push(Event::BookingSet { reference, nights: booking.value.nights, due_back });
        }
        if !self.people().is_empty() {
            events.push(Event::PartySet { people: self.people().to_vec() });
        }
        events.extend(self.drivers().filter_map(|driver| {
            let licence = self.licences.get(&driver.id)?.value.clone();
            Some(Event::LicenceSeen { person: driver.id, licence })
        }));
        events.extend(self.present.as_ref().map(|p| Event::PresentSet { people: p.value.clone() }));
        events.extend(self.translator.as_ref().map(|t| Event::TranslatorSet { role: t.value.clone() }));
        events.extend(self.planned.as_ref().map(|p| Event::TripPlanned { trip: Box::new(p.value.clone()) }));
        events
    }

    /// That a walk over `route` follows this one: with the answers of people who travel, given to words that are
    /// the same there. What was demonstrated is demonstrated again, on the other unit.
    pub fn follow(&self, route: &Route, text: impl Fn(&Caution, &str) -> Option<String>) -> Event {
        let mut answers = Vec::new();
        for caution in route.steps.iter().flat_map(|s| &s.cautions) {
            let here = self.route.caution(&caution.id).filter(|(_, c)| c.version == caution.version);
            if here.is_none() {
                continue;
            }
            for (by, said) in self.responses(&caution.id).filter(|(by, _)| self.person(*by).is_some()) {
                let Response::Answered { how, shown, looked_ms } = &said.value else { continue };
                if may_be_carried(caution, *how)
                    && text(caution, &shown.language).as_ref() == Some(&shown.text)
                {
                    answers.push(Carried {
                        caution: caution.id.clone(),
                        version: caution.version,
                        by,
                        how: *how,
                        shown: shown.clone(),
                        looked_ms: *looked_ms,
                        at: said.at,
                        offset_minutes: said.offset_minutes,
                    });
                }
            }
        }
        let (walk, unit) = (self.id().to_owned(), self.route.unit.clone());
        Event::UnitFollowed(Follow { walk, unit, answers })
    }

    pub(super) fn accepts_swap(&self, event: &Event) -> Result<(), Refused> {
        match event {
            Event::AnswersLapsed(lapse) => {
                self.still_changing()?;
                let standing = |a: &AnswerOf| self.response(&a.caution, a.by).is_some();
                let all = lapse.answers.iter().all(standing)
                    && lapse.consents.iter().all(|id| self.consents.contains_key(id));
                if all && *lapse != Lapse::default() { Ok(()) } else { Err(Refused::AlreadySo) }
            }
            Event::UnitSwapped(swap) => {
                self.still_changing()?;
                limits::id("id of the walk", &swap.walk)?;
                limits::id("id of the unit", &swap.unit)?;
                if swap.walk == self.id() {
                    return Err(Refused::AlreadySo);
                }
                self.accepts_stop(&swap.reason, super::Who::Agent)
            }
            Event::UnitFollowed(follow) => self.accepts_follow(follow),
            _ => Ok(()),
        }
    }

    fn accepts_follow(&self, follow: &Follow) -> Result<(), Refused> {
        if self.phase() != Phase::Opening {
            return Err(Refused::AlreadyOpened);
        }
        limits::id("id of the walk", &follow.walk)?;
        limits::id("id of the unit", &follow.unit)?;
        if self.followed.is_some() || follow.walk == self.id() {
            return Err(Refused::AlreadySo);
        }
        let mut seen = std::collections::BTreeSet::new();
        for carried in &follow.answers {
            let (id, by) = (&carried.caution, carried.by);
            let (_, caution) = self.route.caution(id).ok_or_else(|| unknown("caution", id))?;
            let (version, shown) = (caution.version, carried.version);
            if version != shown {
                return Err(Refused::OtherVersion { caution: id.clone(), version, shown });
            }
            limits::shown(&carried.shown)?;
            limits::offset(carried.offset_minutes)?;
            self.adult(by)?;
            if !may_be_carried(caution, carried.how) {
                return Err(Refused::TooWeak { caution: id.clone() });
            }
            if !seen.insert((id, by)) {
                return Err(Refused::AlreadyAnswered { caution: id.clone(), person: by });
            }
        }
        Ok(())
    }

    pub(super) fn change_swap(&mut self, entry: &Entry) {
        match &entry.event {
            Event::AnswersLapsed(lapse) => {
                for AnswerOf { caution, by } in &lapse.answers {
                    let said = self.response_history(caution, *by).len();
                    let people = self.lapsed.entry(caution.clone()).or_default();
                    people.entry(*by).or_default().push(Timed::at(entry, said));
                }
                for id in &lapse.consents {
                    self.consents.remove(id);
                }
            }
            Event::UnitSwapped(swap) => {
                self.stop(entry, &swap.reason, super::Who::Agent);
                self.swapped = Some(Timed::at(entry, swap.clone()));
            }
            Event::UnitFollowed(follow) => {
                for carried in &follow.answers {
                    let Carried { how, shown, looked_ms, .. } = carried.clone();
                    let value = Response::Answered { how, shown, looked_ms };
                    let said = Timed { at: carried.at, offset_minutes: carried.offset_minutes, value };
                    self.push_response(&carried.caution, carried.by, said);
                }
                self.followed = Some(Timed::at(entry, follow.clone()));
            }
            _ => {}
        }
    }
}
