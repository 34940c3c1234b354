use super::support::*;
use jiff::civil::date;
use sendoff::walk::{
    AnswerState, Entry, Event, Licence, LocalTime, Missing, MustAnswer, Person, PersonId, Phase, Refused,
    Walk, Who,
};

#[test]
fn a_walk_starts_with_its_beginning() {
    let begin = |event| Walk::begin(route(), &entry(0, event));
    assert_eq!(begin(Event::Opened), Err(Refused::NotBegun));
    let changed = |change: fn(&mut String, &mut String, &mut String, &mut String)| {
        let mut event = began();
        if let Event::Began { walk, unit, scripts, tablet, .. } = &mut event {
            change(walk, unit, scripts, tablet);
        }
        begin(event)
    };
    assert!(matches!(changed(|_, unit, _, _| *unit = "heron".into()), Err(Refused::OtherUnit { .. })));
    assert!(matches!(changed(|walk, _, _, _| *walk = "../x".into()), Err(Refused::Form { .. })));
    assert!(matches!(changed(|_, _, scripts, _| *scripts = "5c".into()), Err(Refused::Form { .. })));
    assert!(matches!(changed(|_, _, _, tablet| tablet.clear()), Err(Refused::Empty { .. })));
    assert_eq!(Walk::replay(route(), &[]), Err((0, Refused::NotBegun)));
    let twice = entries([began(), began()]);
    assert_eq!(Walk::replay(route(), &twice), Err((1, Refused::BeganTwice)));
}

#[test]
fn all_that_is_missing_is_said_at_once() {
    let mut walk = after([]);
    let missing = walk.missing_to_open();
    assert_eq!(
        missing,
        [
            Missing::Agent,
            Missing::Reader,
            Missing::Party,
            Missing::Present,
            Missing::Experience,
            Missing::Booking
        ]
    );
    assert_eq!(why_not(&mut walk, Event::Opened), Refused::OpeningIncomplete(missing));
    all(
        &mut walk,
        opening().into_iter().filter(|e| !matches!(e, Event::LicenceSeen { person: BO, .. } | Event::Opened)),
    );
    let refused = why_not(&mut walk, Event::Opened);
    assert_eq!(refused.to_string(), "the opening is not complete: licence of driver 2 not seen");
    assert_eq!(refused.missing(), [Missing::Licence { person: BO }]);
    all(&mut walk, [licence(BO), Event::Opened]);
    assert_eq!(walk.phase(), Phase::Walking);
    assert_eq!(why_not(&mut walk, Event::Opened), Refused::AlreadyOpened);
}

#[test]
fn nothing_round_the_unit_before_it_is_open() {
    let mut walk = after(opening().into_iter().take(9));
    for event in round() {
        assert_eq!(why_not(&mut walk, event), Refused::NotOpened);
    }
    for event in signing() {
        let refused = why_not(&mut walk, event);
        assert!(refused.missing().contains(&Missing::Opened), "{refused:?}");
    }
}

#[test]
fn a_party_is_of_people() {
    let mut walk = after([]);
    let mut refuse = |people: Vec<Person>| why_not(&mut walk, Event::PartySet { people });
    assert!(matches!(refuse(vec![]), Refused::Range { min: 1, max: 12, .. }));
    let many = (1..=13).map(|n| person(PersonId(n), "Al", 30, true)).collect();
    assert!(matches!(refuse(many), Refused::Range { min: 1, max: 12, .. }));
    assert_eq!(refuse(vec![person(ANN, "", 30, true)]), Refused::Empty { field: "name" });
    assert!(matches!(refuse(vec![person(ANN, &"x".repeat(81), 30, true)]), Refused::TooLong { max: 80, .. }));
    assert!(matches!(refuse(vec![person(ANN, "Ann", 121, true)]), Refused::Range { field: "age", .. }));
    assert!(matches!(refuse(vec![person(PersonId(0), "Ann", 30, true)]), Refused::Range { .. }));
    let twice = vec![person(ANN, "Ann", 30, true), person(ANN, "Bo", 30, true)];
    assert_eq!(refuse(twice), Refused::PersonTwice { person: ANN });
    assert_eq!(refuse(vec![person(ANN, "Ann", 17, true)]), Refused::DriverTooYoung { person: ANN });
    assert_eq!(refuse(vec![person(ANN, "Ann", 17, false)]), Refused::NoAdult);
    assert_eq!(refuse(vec![person(ANN, "Ann", 18, false)]), Refused::NoDriver);
    all(
        &mut walk,
        [Event::PartySet { people: vec![person(ANN, "Ann", 18, true), person(BO, "", 0, false)] }],
    );
}

#[test]
fn nobody_gets_the_number_of_one_who_left() {
    let mut walk = opened();
    let set = |people: Vec<Person>| Event::PartySet { people };
    let (ann, bo) = (person(ANN, "Ann", 41, true), person(BO, "Bo", 39, true));
    all(&mut walk, [set(vec![ann.clone()])]);
    let other = person(BO, "Dee", 39, true);
    let taken = Refused::NumberTaken { person: BO, name: "Bo".into() };
    assert_eq!(why_not(&mut walk, set(vec![ann.clone(), other])), taken);
    all(&mut walk, [set(vec![ann.clone(), bo])]);
    // A slip of the pen may be corrected; another person may not slip in.
    all(&mut walk, [set(vec![ann.clone(), person(BO, "Boh", 39, true)])]);
    let exchanged = why_not(&mut walk, set(vec![ann, person(BO, "Eve", 22, true)]));
    assert_eq!(exchanged, Refused::Exchanged { person: BO, name: "Boh".into() });
    assert_eq!(walk.next_person(), Some(PersonId(4)));
    assert_eq!(walk.party_history().len(), 4);
    assert_eq!(walk.person_ever(CY).map(|p| p.name.as_str()), Some("Cy"));
    assert_eq!(walk.person(CY), None);
}

#[test]
fn a_licence_must_last_the_trip() {
    let mut walk = after(opening().into_iter().take(3));
    let seen = |person, y, m, d| {
        let licence = Licence { class: "C".into(), country: "US".into(), expiry: date(y, m, d) };
        Event::LicenceSeen { person, licence }
    };
    assert_eq!(why_not(&mut walk, licence(CY)), Refused::NotADriver { person: CY });
    assert_eq!(why_not(&mut walk, licence(PersonId(9))), Refused::NotInParty { person: PersonId(9) });
    let refused = why_not(&mut walk, seen(ANN, 2026, 7, 2));
    let (expiry, today) = (date(2026, 7, 2), date(2026, 7, 3));
    assert_eq!(refused, Refused::LicenceExpired { person: ANN, expiry, today });
    // Good to the last day; too short only once the day of return is known.
    all(&mut walk, [seen(ANN, 2026, 7, 3), booking()]);
    let (expiry, until) = (date(2026, 7, 3), date(2026, 7, 8));
    let short = Missing::LicenceTooShort { person: ANN, expiry, until };
    assert!(walk.missing_to_open().contains(&short));
    let refused = why_not(&mut walk, seen(BO, 2026, 7, 7));
    assert!(matches!(refused, Refused::LicenceTooShort { person: BO, .. }));
    all(&mut walk, [seen(ANN, 2026, 7, 8)]);
    assert!(!walk.missing_to_open().iter().any(|m| matches!(m, Missing::LicenceTooShort { .. })));
}

/// 02:00 UTC on the fourth is still the third four hours west of Greenwich.
#[test]
fn today_is_the_date_on_the_wall() {
    let mut walk = after(opening().into_iter().take(3));
    let licence = Licence { class: "C".into(), country: "US".into(), expiry: date(2026, 7, 3) };
    let event = Event::LicenceSeen { person: ANN, licence };
    let mut seen = Entry { at: "2026-07-04T02:00:00Z".parse().unwrap(), offset_minutes: 0, event };
    assert!(matches!(walk.apply(&seen), Err(Refused::LicenceExpired { .. })));
    seen.offset_minutes = -240;
    assert_eq!(walk.apply(&seen), Ok(()));
    seen.offset_minutes = 900;
    assert!(matches!(walk.apply(&seen), Err(Refused::Range { .. })));
}

#[test]
fn booking_reader_and_presence_are_checked() {
    let mut walk = after(opening().into_iter().take(2));
    let mut booking = |nights, day: i8, offset_minutes| {
        let due_back = LocalTime { local: date(2026, 7, day).at(10, 0, 0, 0), offset_minutes };
        why_not(&mut walk, Event::BookingSet { reference: String::new(), nights, due_back })
    };
    assert!(matches!(booking(0, 8, 0), Refused::Range { min: 1, max: 365, .. }));
    assert!(matches!(booking(366, 8, 0), Refused::Range { min: 1, max: 365, .. }));
    assert!(matches!(booking(1, 8, 1000), Refused::Range { .. }));
    assert!(matches!(booking(1, 2, 0), Refused::DueBackPast { .. }));
    let reader = |l: &str, m: &str| Event::ReaderSet { language: l.into(), measures: m.into() };
    assert!(matches!(why_not(&mut walk, reader("en US", "us")), Refused::Form { .. }));
    assert!(matches!(why_not(&mut walk, reader("en-US", "imperial")), Refused::Form { .. }));
    assert_eq!(why_not(&mut walk, reader("en-US", "us")), Refused::AlreadySo);
    let present = |people: &[PersonId]| Event::PresentSet { people: people.to_vec() };
    assert!(matches!(why_not(&mut walk, present(&[ANN])), Refused::Empty { .. }));
    all(&mut walk, [Event::PartySet { people: people() }]);
    assert!(matches!(why_not(&mut walk, present(&[])), Refused::Empty { .. }));
    assert_eq!(why_not(&mut walk, present(&[PersonId(9)])), Refused::NotInParty { person: PersonId(9) });
    assert_eq!(why_not(&mut walk, present(&[ANN, ANN])), Refused::PersonTwice { person: ANN });
    all(&mut walk, [present(&[CY])]);
    assert!(walk.missing_to_open().contains(&Missing::Present), "a child alone is nobody");
    all(&mut walk, [present(&[BO, ANN])]);
    assert_eq!(why_not(&mut walk, present(&[ANN, BO])), Refused::AlreadySo);
}

#[test]
fn opening_facts_may_be_corrected_round_the_unit() {
    let mut walk = said();
    assert_eq!(walk.missing_to_sign(), []);
    all(&mut walk, [Event::AgentOn { code: "M2".into() }]);
    assert_eq!(why_not(&mut walk, Event::AgentOn { code: "M2".into() }), Refused::AlreadySo);
    let codes: Vec<&str> = walk.agents().iter().map(|a| a.value.as_str()).collect();
    assert_eq!((codes, walk.agent()), (vec!["K4", "M2"], Some("M2")));
    // A third driver must be looked at and must answer; nobody else has to answer again.
    let dee = PersonId(4);
    let mut party = people();
    party.push(person(dee, "Dee", 28, true));
    all(&mut walk, [Event::PartySet { people: party }]);
    let answer_of =
        |caution: &str| Missing::Answer { caution: caution.into(), step: "driving".into(), by: Some(dee) };
    let wanted = [Missing::Licence { person: dee }, answer_of("driving-1"), answer_of("driving-2")];
    assert_eq!(walk.missing_to_sign(), wanted);
    assert_eq!(why_not(&mut walk, answer("driving-1", dee)), Refused::NotPresent { person: dee });
    // Whoever leaves takes their answers out of the count, and into it again when they come back.
    let state = |walk: &Walk, caution| walk.answer_state(caution).unwrap();
    all(&mut walk, [Event::PartySet { people: vec![person(BO, "Bo", 39, true)] }]);
    let one = AnswerState::Waiting(MustAnswer::OneAdult);
    assert_eq!(state(&walk, "lp-supply-1"), one);
    assert_eq!(state(&walk, "lp-supply-2"), AnswerState::Answered);
    assert_eq!(state(&walk, "driving-1"), AnswerState::Answered);
    assert!(walk.response("lp-supply-1", ANN).is_some(), "kept in the history");
    assert_eq!(why_not(&mut walk, signed(Who::Person(ANN))), Refused::NotInParty { person: ANN });
    all(&mut walk, [Event::PartySet { people: people() }]);
    assert_eq!(walk.missing_to_sign(), []);
}

#[test]
fn an_age_corrected_below_18_takes_the_answer_out_of_the_count() {
    let mut walk = said();
    let young = vec![person(ANN, "Ann", 17, false), person(BO, "Bo", 39, true)];
    all(&mut walk, [Event::PartySet { people: young }]);
    let waiting = AnswerState::Waiting(MustAnswer::OneAdult);
    assert_eq!(walk.answer_state("lp-supply-1"), Some(waiting));
    assert!(walk.missing_to_sign().contains(&Missing::Consent));
}

#[test]
fn a_clock_that_steps_back_is_counted_not_refused() {
    let mut walk = after(opening().into_iter().take(2));
    let back = Entry { at: at(-90), offset_minutes: -240, event: Event::PartySet { people: people() } };
    assert_eq!(walk.apply(&back), Ok(()));
    assert_eq!(walk.clock_steps_back(), 1);
    assert_eq!(walk.last_at(), at(-90));
    all(&mut walk, [licence(ANN)]);
    assert_eq!(walk.clock_steps_back(), 1);
}
