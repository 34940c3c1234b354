//! Who: agents, reader, party, opening.

use super::seconds;
use crate::record::form::{
    AgentOn, Booking, ClockJump, DueBack, Durations, EarlierParty, Licence, Member, Opening, Party, Person,
    Present, Reader, Time, Told,
};
use crate::script::Scripts;
use crate::walk::{self, Timed, Walk};

/// What the renter reads in; the lot's usual language and measures when nobody said.
pub(super) fn reader(walk: &Walk, scripts: &Scripts) -> Reader {
    walk.reader().map_or_else(
        || reader_of_lot(scripts),
        |set| Reader {
            language: set.value.language.clone(),
            measures: set.value.measures.clone(),
            at: Some(Time::from(set)),
        },
    )
}

/// The lot's usual language and measures.
pub(in crate::record) fn reader_of_lot(scripts: &Scripts) -> Reader {
    let lot = &scripts.lot.value;
    let first = |all: &[String], usual: &str| all.first().map_or_else(|| usual.to_owned(), Clone::clone);
    Reader { language: first(&lot.languages, "en-US"), measures: first(&lot.measures, "us"), at: None }
}

/// Jumps of the tablet's clock.
pub(super) fn clock_jumps(walk: &Walk) -> Vec<ClockJump> {
    let jumps = walk.clock_jumps().iter();
    jumps.map(|j| ClockJump { at: Time::from(j), from: j.value.from, to: j.value.to }).collect()
}

/// Where the time went.
pub(super) fn durations(walk: &Walk) -> Durations {
    let times = walk.times();
    Durations {
        worked_s: seconds(times.worked()),
        opening_s: seconds(times.opening),
        closing_s: seconds(times.closing),
        paused_s: seconds(times.paused),
        with_renter_s: seconds(times.with_renter),
        hand_overs: times.hand_overs,
    }
}

pub(super) fn agents(walk: &Walk) -> Vec<AgentOn> {
    walk.agents().iter().map(|agent| AgentOn { code: agent.value.clone(), at: Time::from(agent) }).collect()
}

/// Somebody without licence and presence.
pub(in crate::record) fn member(person: &walk::Person) -> Member {
    Member { number: person.id.0, name: person.name.clone(), age: person.age, driver: person.driver }
}

pub(super) fn party(walk: &Walk) -> Party {
    let person = |person: &walk::Person| Person {
        number: person.id.0,
        name: person.name.clone(),
        age: person.age,
        driver: person.driver,
        present: walk.is_present(person.id),
        licence: walk.licence(person.id).map(|seen| Licence {
            class: seen.value.class.clone(),
            country: seen.value.country.clone(),
            expiry: seen.value.expiry,
            at: Time::from(seen),
        }),
    };
    let (last, earlier) = match walk.party_history() {
        [earlier @ .., last] => (Some(last), earlier),
        [] => (None, [].as_slice()),
    };
    let before = |party: &Timed<Vec<walk::Person>>| EarlierParty {
        at: Time::from(party),
        people: party.value.iter().map(member).collect(),
    };
    Party {
        people: walk.people().iter().map(person).collect(),
        at: last.map(Time::from),
        earlier: earlier.iter().map(before).collect(),
    }
}

fn told<T: Clone>(said: &Timed<T>) -> Told<T> {
    Told { value: said.value.clone(), at: Time::from(said) }
}

pub(super) fn opening(walk: &Walk) -> Opening {
    Opening {
        present: walk.present().map(|present| Present {
            people: present.value.iter().map(|id| id.0).collect(),
            at: Time::from(present),
        }),
        first_time: walk.first_time().map(told),
        translator: walk.translator().map(told),
        booking: walk.booking().map(|booking| Booking {
            reference: booking.value.reference.clone(),
            nights: booking.value.nights,
            due_back: DueBack {
                local: booking.value.due_back.local,
                offset_minutes: booking.value.due_back.offset_minutes,
            },
            at: Time::from(booking),
        }),
        opened: walk.opened().map(Time::from),
    }
}
