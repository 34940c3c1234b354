//! What changes in the middle of a walk: an answer stands while its words are the same, else it is asked again.

use sendoff::walk::{
    Answer, AnswerOf, AnswerState, Carried, Decision, Event, Follow, Lapse, Missing, MustAnswer, Outcome,
    PersonId, Phase, Refused, Swap, Walk, Who,
};

use super::support::{
    ANN, BO, CY, all, answer, at, consent, happen, licence, opened, opening, people, person, refusal, reopen,
    route, said, shown, signed, step_shown, why_not,
};

fn lapse(answers: &[(&str, PersonId)]) -> Event {
    let answers = answers.iter().map(|(c, by)| AnswerOf { caution: (*c).into(), by: *by }).collect();
    Event::AnswersLapsed(Lapse { answers, consents: Vec::new() })
}

/// Digest of a page, as [`shown`] has it.
fn page(text: &str) -> String {
    text.repeat(32)
}

fn carried(caution: &str, by: PersonId) -> Carried {
    Carried {
        caution: caution.into(),
        version: 2,
        by,
        how: Answer::Hold,
        shown: shown("ab"),
        looked_ms: 2400,
        at: at(-60),
        offset_minutes: -240,
    }
}

fn follow(answers: Vec<Carried>) -> Event {
    Event::UnitFollowed(Follow { walk: "t2-000000".into(), unit: "heron".into(), answers })
}

fn swap(walk: &str) -> Event {
    Event::UnitSwapped(Swap { walk: walk.into(), unit: "heron".into(), reason: "Swapped for Heron.".into() })
}

fn opening_without_end() -> Walk {
    let events = opening().into_iter().filter(|e| !matches!(e, Event::Opened));
    super::support::after(events)
}

#[test]
fn an_answer_whose_words_changed_is_asked_again_and_kept() {
    let mut walk = said();
    assert!(walk.missing_to_sign().is_empty());
    // The first reads otherwise now, the others do not.
    let text = |c: &sendoff::route::Caution| page(if c.id == "driving-1" { "ee" } else { "ab" });
    let event = walk.lapses(None, text, &page("cd")).expect("something lapses");
    assert_eq!(event, lapse(&[("driving-1", ANN), ("driving-1", BO)]));
    all(&mut walk, [event]);
    let waiting = walk.answer_state("driving-1").unwrap();
    assert_eq!(waiting, AnswerState::Waiting(MustAnswer::Drivers(vec![ANN, BO])));
    assert_eq!(walk.response("driving-1", ANN), None);
    assert_eq!(walk.response_history("driving-1", ANN).len(), 1, "what was said is kept");
    assert!(walk.lapsed("driving-1", ANN, 0).is_some());
    let lacks = |m: &Missing| matches!(m, Missing::Answer { caution, .. } if caution == "driving-1");
    assert_eq!(walk.missing_to_sign().iter().filter(|m| lacks(m)).count(), 2);
    assert!(walk.missing_to_sign().iter().all(lacks));
    all(&mut walk, [answer("driving-1", ANN), answer("driving-1", BO)]);
    assert!(walk.missing_to_sign().is_empty());
    assert_eq!(walk.lapsed("driving-1", ANN, 1), None);
    assert_eq!(walk.lapses(None, |_| page("ab"), &page("cd")), None, "all stand");
}

#[test]
fn refusals_and_consent_lapse_too_and_of_one_person_alone_where_one_is_meant() {
    let mut walk = opened();
    all(&mut walk, [step_shown("driving"), refusal("driving-1", ANN, Decision::KeepUnit)]);
    all(&mut walk, [answer("driving-1", BO), consent(ANN), consent(BO)]);
    let event = walk.lapses(Some(ANN), |_| page("ee"), &page("ee")).unwrap();
    let Event::AnswersLapsed(one) = &event else { panic!("{event:?}") };
    assert_eq!((one.answers.len(), one.consents.as_slice()), (1, [ANN].as_slice()));
    all(&mut walk, [event]);
    let waiting = walk.answer_state("driving-1").unwrap();
    assert_eq!(waiting, AnswerState::Waiting(MustAnswer::Drivers(vec![ANN])), "it is not kept any more");
    assert_eq!(walk.consents().map(|(id, _)| id).collect::<Vec<_>>(), [BO]);
}

#[test]
fn only_what_stands_can_lapse() {
    let mut walk = opened();
    all(&mut walk, [step_shown("lp-supply"), answer("lp-supply-1", ANN)]);
    assert_eq!(why_not(&mut walk, lapse(&[])), Refused::AlreadySo);
    assert_eq!(why_not(&mut walk, lapse(&[("lp-supply-1", BO)])), Refused::AlreadySo);
    assert_eq!(why_not(&mut walk, lapse(&[("nothing", ANN)])), Refused::AlreadySo);
    all(&mut walk, [lapse(&[("lp-supply-1", ANN)])]);
    assert_eq!(why_not(&mut walk, lapse(&[("lp-supply-1", ANN)])), Refused::AlreadySo);
    let mut walk = said();
    all(&mut walk, [signed(Who::Person(ANN))]);
    assert!(matches!(why_not(&mut walk, lapse(&[("lp-supply-1", ANN)])), Refused::SigningBegun(_)));
}

#[test]
fn a_new_driver_answers_what_each_driver_must_and_the_rest_stands() {
    let dee = PersonId(4);
    let mut walk = said();
    let mut party = people();
    party.retain(|p| p.id != BO);
    party.push(person(dee, "Dee", 28, true));
    all(&mut walk, [Event::PartySet { people: party }, licence(dee)]);
    let missing = walk.missing_to_sign();
    let by_dee = |m: &Missing| matches!(m, Missing::Answer { by: Some(id), .. } if *id == dee);
    assert_eq!(missing.iter().filter(|m| by_dee(m)).count(), 2, "{missing:?}");
    // Bo alone had answered this one for the party.
    let again =
        |m: &Missing| matches!(m, Missing::Answer { caution, by: None, .. } if caution == "lp-supply-2");
    assert!(missing.iter().any(again), "{missing:?}");
    assert_eq!(missing.len(), 3, "{missing:?}");
    // Whoever is not here cannot answer.
    assert!(matches!(why_not(&mut walk, answer("driving-1", dee)), Refused::NotPresent { .. }));
    all(&mut walk, [Event::PresentSet { people: vec![ANN, CY, dee] }]);
    all(&mut walk, [answer("driving-1", dee), answer("driving-2", dee), answer("lp-supply-2", dee)]);
    assert!(walk.missing_to_sign().is_empty());
}

#[test]
fn a_swap_ends_the_walk_as_not_handed_over_and_says_where_it_goes_on() {
    let mut walk = said();
    assert_eq!(why_not(&mut walk, swap("t2-000001")), Refused::AlreadySo, "not for itself");
    all(&mut walk, [swap("t2-000002")]);
    assert_eq!(walk.phase(), Phase::Stopped);
    assert!(matches!(walk.outcome(), Outcome::NotHandedOver(s) if s.value.reason == "Swapped for Heron."));
    assert_eq!(walk.swapped().unwrap().value.walk, "t2-000002");
    assert!(matches!(why_not(&mut walk, swap("t2-000003")), Refused::Stopped));
    // The agent thinks better of it: the walk goes on, and follows nothing.
    let mut back = walk.clone();
    all(&mut back, [reopen()]);
    assert_eq!((back.phase(), back.swapped()), (Phase::Walking, None));
    all(&mut walk, [signed(Who::Agent)]);
    assert!(walk.missing_to_seal().is_empty());

    let mut nobody = super::support::after([]);
    assert!(matches!(why_not(&mut nobody, swap("t2-000002")), Refused::StopTooEarly(_)));
    let mut signing = said();
    all(&mut signing, [signed(Who::Person(ANN))]);
    assert!(matches!(why_not(&mut signing, swap("t2-000002")), Refused::SigningBegun(_)));
}

#[test]
fn the_next_walk_opens_with_the_same_party_and_asks_for_experience_anew() {
    let first = said();
    let again = first.opening_again();
    assert!(!again.iter().any(|e| matches!(e, Event::ExperienceSet { .. } | Event::Opened)));
    let next = super::support::after(again);
    assert_eq!(next.people(), first.people());
    assert_eq!(next.missing_to_open(), [Missing::Experience]);
}

#[test]
fn answers_to_the_same_words_stand_in_the_next_walk() {
    let first = said();
    // One reads otherwise on the other unit; one has no words there.
    let text = |c: &sendoff::route::Caution, _: &str| match c.id.as_str() {
        "driving-1" => Some(page("ee")),
        "lp-supply-2" => None,
        _ => Some(page("ab")),
    };
    let Event::UnitFollowed(follows) = first.follow(&route(), text) else { panic!() };
    let kept: Vec<(&str, PersonId)> = follows.answers.iter().map(|a| (a.caution.as_str(), a.by)).collect();
    // `awning-2` asks for a demonstration, which is done again on the other unit.
    assert_eq!(kept, [("lp-supply-1", ANN), ("driving-2", ANN), ("driving-2", BO), ("awning-1", ANN)]);
    let mut walk = opening_without_end();
    // The walk of `said` has the same id as this one, which no two walks have.
    let event = Event::UnitFollowed(Follow { walk: "t2-000000".into(), ..follows });
    all(&mut walk, [event.clone()]);
    assert!(walk.carried("driving-2", BO, 0));
    assert_eq!(walk.answer_state("driving-2"), Some(AnswerState::Answered));
    assert!(matches!(walk.answer_state("driving-1"), Some(AnswerState::Waiting(_))));
    assert_eq!(walk.response("driving-2", BO).unwrap().at, first.response("driving-2", BO).unwrap().at);
    // Every step is shown anew.
    all(&mut walk, [Event::Opened]);
    assert_eq!(walk.steps_settled().done, 0);
    assert_eq!(why_not(&mut walk, event), Refused::AlreadyOpened);
}

#[test]
fn a_walk_follows_one_walk_and_takes_over_nothing_that_cannot_stand() {
    let mut walk = opening_without_end();
    let other = |change: &dyn Fn(&mut Carried)| {
        let mut one = carried("lp-supply-1", ANN);
        change(&mut one);
        follow(vec![one])
    };
    let refused = [
        other(&|c| c.caution = "nothing".into()),
        other(&|c| c.version = 1),
        other(&|c| c.by = CY),
        other(&|c| c.by = PersonId(9)),
        other(&|c| c.how = Answer::Read),
        other(&|c| c.how = Answer::Demonstrate),
        other(&|c| c.caution = "awning-2".into()),
        other(&|c| c.shown.text = "short".into()),
        other(&|c| c.offset_minutes = 2000),
        follow(vec![carried("lp-supply-1", ANN), carried("lp-supply-1", ANN)]),
    ];
    for event in refused {
        let _ = why_not(&mut walk, event);
    }
    all(&mut walk, [follow(vec![carried("lp-supply-1", ANN)])]);
    assert_eq!(why_not(&mut walk, follow(vec![])), Refused::AlreadySo);
    // Said again with the same words it is no news; once it lapsed, it is.
    all(&mut walk, [Event::Opened, step_shown("lp-supply")]);
    let twice = why_not(&mut walk, answer("lp-supply-1", ANN));
    assert!(matches!(twice, Refused::AlreadyAnswered { .. }));
    all(&mut walk, [lapse(&[("lp-supply-1", ANN)])]);
    happen(&mut walk, answer("lp-supply-1", ANN)).unwrap();
    assert!(walk.carried("lp-supply-1", ANN, 0) && !walk.carried("lp-supply-1", ANN, 1));
}
