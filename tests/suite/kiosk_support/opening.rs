//! What walks of the tests begin with.

use jiff::civil::{Date, date};
use sendoff::walk::{Event as Happened, Licence, LocalTime, Person, PersonId};

/// Two drivers and a child, all present, five nights: an opening that lacks nothing but its end.
pub fn opening(language: &str, measures: &str) -> Vec<Happened> {
    let (ann, bo) = (PersonId(1), PersonId(2));
    let due_back = LocalTime { local: date(2026, 7, 29).at(10, 0, 0, 0), offset_minutes: -360 };
    vec![
        Happened::AgentOn { code: "JM".into() },
        Happened::ReaderSet { language: language.into(), measures: measures.into() },
        Happened::BookingSet { reference: "Q-1183".into(), nights: 5, due_back },
        Happened::PartySet { people: party() },
        licence(ann, date(2029, 5, 31)),
        licence(bo, date(2028, 1, 15)),
        Happened::PresentSet { people: vec![ann, bo] },
        Happened::ExperienceSet { first_time: true },
        Happened::TranslatorSet { role: String::new() },
    ]
}

/// [`opening`], closed: the walk round the unit begins.
pub fn opened(language: &str, measures: &str) -> Vec<Happened> {
    opening(language, measures).into_iter().chain([Happened::Opened]).collect()
}

pub fn party() -> Vec<Person> {
    let person = |id, name: &str, age, driver| Person { id: PersonId(id), name: name.into(), age, driver };
    vec![person(1, "Ann Marlow", 41, true), person(2, "Bo Marlow", 39, true), person(3, "Cy", 9, false)]
}

pub fn licence(person: PersonId, expiry: Date) -> Happened {
    let licence = Licence { class: "B".into(), country: "Norway".into(), expiry };
    Happened::LicenceSeen { person, licence }
}
