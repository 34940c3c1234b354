//! Rules of the opening: who, which trip.

use std::collections::BTreeSet;

use super::super::event::{Entry, Event, Licence, LocalTime, Person, PersonId};
use super::super::limits::{self, NAME_MAX, PEOPLE_MAX};
use super::super::state::local_date;
use super::super::{ADULT, Refused, Walk};
use super::news;

impl Walk {
    pub(super) fn accepts_opening(&self, entry: &Entry) -> Result<(), Refused> {
        if let Event::AgentOn { code } = &entry.event {
            return self.accepts_agent(code);
        }
        if let Event::PresentSet { people } = &entry.event {
            return self.accepts_present(people);
        }
        self.still_changing()?;
        match &entry.event {
            Event::ReaderSet { language, measures } => {
                limits::language(language)?;
                if !matches!(measures.as_str(), "us" | "uk" | "metric") {
                    return Err(Refused::Form { field: "system of measures", form: "us, uk or metric" });
                }
                let is = self.reader.as_ref().map(|r| (&r.value.language, &r.value.measures));
                news(is != Some((language, measures)))
            }
            Event::PartySet { people } => self.accepts_party(people),
            Event::LicenceSeen { person, licence } => self.accepts_licence(entry, *person, licence),
            Event::ExperienceSet { first_time } => {
                news(self.experience.as_ref().map(|e| e.value) != Some(*first_time))
            }
            Event::TranslatorSet { role } => {
                limits::text("translator", role, NAME_MAX)?;
                news(self.translator.as_ref().map(|t| &t.value) != Some(role))
            }
            Event::BookingSet { reference, nights, due_back } => {
                self.accepts_booking(entry, reference, *nights, due_back)
            }
            Event::TripPlanned { trip } => {
                limits::trip(trip)?;
                news(self.planned.as_ref().map(|p| &p.value) != Some(&**trip))
            }
            _ => self.accepts_opened(),
        }
    }

    /// A shift may change until the agent has signed: the next one may have to close what this one began.
    fn accepts_agent(&self, code: &str) -> Result<(), Refused> {
        limits::name("staff code", code, 32)?;
        if self.agent_signed() {
            return Err(Refused::SigningBegun(super::super::Who::Agent));
        }
        news(self.agent() != Some(code))
    }

    fn accepts_party(&self, people: &[Person]) -> Result<(), Refused> {
        let count = i64::try_from(people.len()).unwrap_or(i64::MAX);
        limits::range("number of people", count, 1, i64::try_from(PEOPLE_MAX).unwrap_or(i64::MAX))?;
        let mut seen = BTreeSet::new();
        for person in people {
            limits::range("number of a person", i64::from(person.id.0), 1, 255)?;
            limits::range("age", i64::from(person.age), 0, 120)?;
            // A child may go without a name; whoever can answer or sign may not.
            if person.age >= ADULT || !person.name.is_empty() {
                limits::name("name", &person.name, NAME_MAX)?;
            }
            if !seen.insert(person.id) {
                return Err(Refused::PersonTwice { person: person.id });
            }
            if person.driver && person.age < ADULT {
                return Err(Refused::DriverTooYoung { person: person.id });
            }
            self.same_person(person)?;
        }
        if !people.iter().any(|p| p.age >= ADULT) {
            return Err(Refused::NoAdult);
        }
        if !people.iter().any(|p| p.driver) {
            return Err(Refused::NoDriver);
        }
        news(self.parties.last().map(|p| p.value.as_slice()) != Some(people))
    }

    /// A number keeps what its person has said, so it must not pass to somebody else: a name or an age may be
    /// corrected, but not both at once when they have answered; and nobody gets the number of one who left.
    fn same_person(&self, person: &Person) -> Result<(), Refused> {
        let id = person.id;
        let Some(before) = self.person_ever(id) else { return Ok(()) };
        let renamed = before.name != person.name;
        if renamed && self.person(id).is_none() {
            return Err(Refused::NumberTaken { person: id, name: before.name.clone() });
        }
        if renamed && before.age != person.age && self.has_spoken(id) {
            return Err(Refused::Exchanged { person: id, name: before.name.clone() });
        }
        Ok(())
    }

    fn has_spoken(&self, id: PersonId) -> bool {
        self.licences.contains_key(&id)
            || self.consents.contains_key(&id)
            || self.responses.values().any(|people| people.contains_key(&id))
    }

    fn accepts_licence(&self, entry: &Entry, person: PersonId, licence: &Licence) -> Result<(), Refused> {
        limits::name("class of the licence", &licence.class, 20)?;
        limits::name("country of the licence", &licence.country, NAME_MAX)?;
        self.in_party(person)?;
        if !self.person(person).is_some_and(|p| p.driver) {
            return Err(Refused::NotADriver { person });
        }
        let (expiry, today) = (licence.expiry, local_date(entry));
        if expiry < today {
            return Err(Refused::LicenceExpired { person, expiry, today });
        }
        match self.due_back_date() {
            Some(until) if expiry < until => return Err(Refused::LicenceTooShort { person, expiry, until }),
            _ => {}
        }
        news(self.licences.get(&person).map(|l| &l.value) != Some(licence))
    }

    /// Somebody may still come to sign when another has signed already; nobody is taken off the list then.
    fn accepts_present(&self, people: &[PersonId]) -> Result<(), Refused> {
        let stay = self.people().iter().filter(|p| self.is_present(p.id)).all(|p| people.contains(&p.id));
        if !stay {
            self.still_changing()?;
        }
        if self.people().is_empty() || people.is_empty() {
            return Err(Refused::Empty { field: "list of those present" });
        }
        let mut seen = BTreeSet::new();
        for id in people {
            self.in_party(*id)?;
            if !seen.insert(*id) {
                return Err(Refused::PersonTwice { person: *id });
            }
        }
        news(!self.present.as_ref().is_some_and(|p| p.value.iter().eq(seen.iter())))
    }

    fn accepts_booking(
        &self,
        entry: &Entry,
        reference: &str,
        nights: u16,
        due_back: &LocalTime,
    ) -> Result<(), Refused> {
        limits::text("booking reference", reference, NAME_MAX)?;
        limits::range("number of nights", i64::from(nights), 1, 365)?;
        limits::offset(due_back.offset_minutes)?;
        let (due, today) = (due_back.local.date(), local_date(entry));
        if due < today {
            return Err(Refused::DueBackPast { due, today });
        }
        news(!self.booking.as_ref().is_some_and(|b| {
            b.value.reference == reference && b.value.nights == nights && b.value.due_back == *due_back
        }))
    }

    fn accepts_opened(&self) -> Result<(), Refused> {
        if self.opened.is_some() {
            return Err(Refused::AlreadyOpened);
        }
        let missing = self.missing_to_open();
        if missing.is_empty() { Ok(()) } else { Err(Refused::OpeningIncomplete(missing)) }
    }
}
