use super::support::*;
use sendoff::walk::{
    Answer, AnswerState, Decision, Event, Missing, MustAnswer, NotRead, NotShown, Pace, Peg, PersonId,
    Refused, Response, StepState, Tally, Who,
};

fn answered(caution: &str, by: PersonId, how: Answer, text: &str) -> Event {
    let (caution, shown) = (caution.to_owned(), shown(text));
    Event::CautionAnswered { caution, version: 2, by, how, shown, looked_ms: 900 }
}

#[test]
fn a_caution_waits_for_its_step() {
    let mut walk = opened();
    for caution in CAUTIONS {
        let refused = why_not(&mut walk, answer(caution, ANN));
        assert!(matches!(refused, Refused::StepFirst { .. }), "{refused:?}");
    }
    assert!(matches!(why_not(&mut walk, answer("awning-9", ANN)), Refused::Unknown { what: "caution", .. }));
    all(&mut walk, [step_shown("lp-supply"), answer("lp-supply-1", ANN)]);
    assert_eq!(walk.answer_state("lp-supply-1"), Some(AnswerState::Answered));
    assert_eq!(walk.answer_state("nothing"), None);
}

#[test]
fn a_danger_counts_even_when_its_step_is_left_out() {
    let mut walk = opened();
    all(&mut walk, [not_shown("lp-supply", NotShown::Weather), not_shown("driving", NotShown::Known)]);
    assert_eq!(walk.answer_state("lp-supply-2"), Some(AnswerState::NotDue));
    let waiting = |who| Some(AnswerState::Waiting(who));
    assert_eq!(walk.answer_state("lp-supply-1"), waiting(MustAnswer::OneAdult));
    assert_eq!(walk.answer_state("driving-1"), waiting(MustAnswer::Drivers(vec![ANN, BO])));
    assert!(matches!(why_not(&mut walk, answer("lp-supply-2", ANN)), Refused::StepFirst { .. }));
    assert_eq!(walk.peg(1), Some(Peg::Unanswered));
    all(&mut walk, [answer("lp-supply-1", ANN), answer("driving-1", ANN), answer("driving-1", BO)]);
    assert_eq!(walk.peg(1), Some(Peg::Skipped));
    // Shown later after all: then its milder cautions are due as well.
    all(&mut walk, [step_shown("lp-supply")]);
    assert_eq!(walk.answer_state("lp-supply-2"), waiting(MustAnswer::OneAdult));
    assert_eq!(walk.step_history("lp-supply").len(), 2);
    let refused = why_not(&mut walk, not_shown("lp-supply", NotShown::Weather));
    assert_eq!(refused, Refused::CautionsAnswered { step: "lp-supply".into() });
}

#[test]
fn only_an_adult_who_is_here_may_answer() {
    let mut walk = opened();
    all(&mut walk, [step_shown("lp-supply"), step_shown("driving")]);
    assert_eq!(why_not(&mut walk, answer("lp-supply-1", CY)), Refused::TooYoung { person: CY });
    let nobody = PersonId(7);
    assert_eq!(why_not(&mut walk, answer("lp-supply-1", nobody)), Refused::NotInParty { person: nobody });
    all(&mut walk, [Event::PresentSet { people: vec![ANN] }]);
    assert_eq!(why_not(&mut walk, answer("lp-supply-1", BO)), Refused::NotPresent { person: BO });
    let mut party = people();
    party[0].driver = false;
    all(&mut walk, [Event::PartySet { people: party }]);
    assert_eq!(why_not(&mut walk, answer("driving-1", ANN)), Refused::NotADriver { person: ANN });
    all(&mut walk, [answer("lp-supply-1", ANN)]);
}

#[test]
fn each_driver_answers() {
    let mut walk = opened();
    all(&mut walk, [step_shown("driving"), answer("driving-1", BO)]);
    let left = AnswerState::Waiting(MustAnswer::Drivers(vec![ANN]));
    assert_eq!(walk.answer_state("driving-1"), Some(left));
    all(&mut walk, [answer("driving-1", ANN)]);
    assert_eq!(walk.answer_state("driving-1"), Some(AnswerState::Answered));
}

#[test]
fn a_tap_is_enough_only_where_a_tap_is_asked() {
    use Answer::{Demonstrate, Hold, Read, TwoTaps};
    // Caution, and which of read, hold, two taps, demonstrate is accepted.
    let table = [
        ("awning-1", [true; 4]),
        ("lp-supply-1", [false, true, true, true]),
        ("awning-2", [false, true, true, true]),
    ];
    for (caution, accepted) in table {
        for (how, accepted) in [Read, Hold, TwoTaps, Demonstrate].into_iter().zip(accepted) {
            let mut walk = opened();
            all(&mut walk, [step_shown("lp-supply"), step_shown("awning")]);
            let said = happen(&mut walk, answered(caution, ANN, how, "ab"));
            let too_weak = Err(Refused::TooWeak { caution: caution.into() });
            assert_eq!(said, if accepted { Ok(()) } else { too_weak }, "{caution} {how:?}");
        }
    }
}

#[test]
fn an_answer_is_bound_to_the_page() {
    let mut walk = opened();
    all(&mut walk, [step_shown("awning"), answered("awning-1", ANN, Answer::Read, "ab")]);
    let again = why_not(&mut walk, answered("awning-1", ANN, Answer::Hold, "ab"));
    assert_eq!(again, Refused::AlreadyAnswered { caution: "awning-1".into(), person: ANN });
    assert!(again.already());
    // Another page: the new answer counts, the old one is kept.
    all(&mut walk, [answered("awning-1", ANN, Answer::Read, "cd")]);
    let texts: Vec<String> = walk
        .response_history("awning-1", ANN)
        .iter()
        .map(|r| match &r.value {
            Response::Answered { shown, .. } | Response::Refused { shown, .. } => shown.text[..2].to_owned(),
        })
        .collect();
    assert_eq!(texts, ["ab", "cd"]);
    let mut other = answered("awning-2", ANN, Answer::Hold, "ab");
    if let Event::CautionAnswered { version, .. } = &mut other {
        *version = 1;
    }
    assert!(matches!(why_not(&mut walk, other), Refused::OtherVersion { version: 2, shown: 1, .. }));
    let bad = why_not(&mut walk, answered("awning-2", ANN, Answer::Hold, "AB"));
    assert!(matches!(bad, Refused::Form { .. }));
}

#[test]
fn a_refusal_stands_in_as_the_agent_decides() {
    let mut walk = opened();
    all(&mut walk, [step_shown("lp-supply"), refusal("lp-supply-1", ANN, Decision::HandOver)]);
    assert_eq!(walk.answer_state("lp-supply-1"), Some(AnswerState::Refused(vec![ANN])));
    let again = why_not(&mut walk, refusal("lp-supply-1", ANN, Decision::HandOver));
    assert!(again.already());
    all(&mut walk, [refusal("lp-supply-1", BO, Decision::KeepUnit)]);
    assert_eq!(walk.answer_state("lp-supply-1"), Some(AnswerState::Kept(vec![BO])));
    let kept = Missing::AnswerKept { caution: "lp-supply-1".into(), step: "lp-supply".into(), by: BO };
    assert!(walk.missing_to_seal().contains(&kept));
    assert_eq!(walk.refusals().len(), 2);
    // They think again.
    all(&mut walk, [answer("lp-supply-1", BO), answer("lp-supply-1", ANN)]);
    assert_eq!(walk.answer_state("lp-supply-1"), Some(AnswerState::Answered));
    // And may take it back.
    all(&mut walk, [refusal("lp-supply-1", BO, Decision::HandOver)]);
    assert_eq!(walk.answer_state("lp-supply-1"), Some(AnswerState::Refused(vec![BO])));
    assert_eq!(walk.response_history("lp-supply-1", BO).len(), 3);
    let mut silent = refusal("lp-supply-2", ANN, Decision::HandOver);
    if let Event::CautionRefused { reason, .. } = &mut silent {
        reason.clear();
    }
    assert_eq!(why_not(&mut walk, silent), Refused::Empty { field: "reason" });
}

#[test]
fn a_step_is_shown_or_left_out_with_a_reason() {
    let mut walk = opened();
    let no_time = |note: &str| {
        let (reason, note) = (NotShown::NoTime, note.to_owned());
        Event::StepNotShown { step: "awning".into(), reason, note }
    };
    assert_eq!(why_not(&mut walk, no_time(" ")), Refused::NeedsNote);
    all(&mut walk, [no_time("next handoff waits")]);
    assert_eq!(why_not(&mut walk, no_time("next handoff waits")), Refused::AlreadySo);
    all(&mut walk, [not_shown("awning", NotShown::Weather), step_shown("awning")]);
    assert_eq!(why_not(&mut walk, step_shown("awning")), Refused::AlreadySo);
    all(&mut walk, [Event::StepShown { step: "awning".into(), language: "es".into() }]);
    assert_eq!(*walk.step_state("awning"), StepState::Shown { language: "es".into(), measures: "us".into() });
    // Nothing of it was answered, so it can still be left out.
    all(&mut walk, [not_shown("awning", NotShown::OutOfOrder)]);
    assert!(matches!(why_not(&mut walk, step_shown("roof")), Refused::Unknown { what: "step", .. }));
}

#[test]
fn values_are_checked_against_the_route() {
    let mut walk = opened();
    assert!(matches!(why_not(&mut walk, reading("house-v", "127")), Refused::Reading { .. }));
    assert!(matches!(why_not(&mut walk, reading("water", "1/3")), Refused::Unknown { .. }));
    all(&mut walk, [reading("house-v", "12.7")]);
    assert_eq!(why_not(&mut walk, reading("house-v", "12.7")), Refused::AlreadySo);
    let broken =
        Event::ReadingNotTaken { reading: "fuel".into(), reason: NotRead::Broken, note: String::new() };
    all(&mut walk, [broken.clone(), reading("fuel", "6/8"), broken]);
    assert_eq!(walk.readings_not_taken().count(), 1);
    assert_eq!(walk.readings_settled(), Tally { done: 2, all: 3 });
    assert!(matches!(why_not(&mut walk, counted("H99", 1)), Refused::Unknown { what: "item", .. }));
    assert!(matches!(why_not(&mut walk, counted("W01", 1000)), Refused::Range { .. }));
    all(&mut walk, [counted("W01", 0), counted("W01", 1)]);
    assert_eq!(walk.items_settled(), Tally { done: 1, all: 2 });
    assert!(matches!(why_not(&mut walk, leaving("chocks", true)), Refused::Unknown { .. }));
    all(&mut walk, [leaving("cord", false)]);
    let wrong = Missing::LeavingNotGood { item: "cord".into(), step: "leaving".into() };
    assert!(walk.missing_to_seal().contains(&wrong));
    all(&mut walk, [leaving("cord", true)]);
    assert!(!walk.missing_to_seal().contains(&wrong));
}

#[test]
fn a_mark_keeps_its_number() {
    let mut walk = opened();
    assert_eq!(walk.next_mark(), Some(1));
    all(&mut walk, [mark(1), mark(2)]);
    assert_eq!(why_not(&mut walk, mark(2)), Refused::MarkUsed { number: 2 });
    all(&mut walk, [Event::MarkRemoved { number: 2 }]);
    assert_eq!(why_not(&mut walk, mark(2)), Refused::MarkUsed { number: 2 });
    assert_eq!(why_not(&mut walk, Event::MarkRemoved { number: 2 }), Refused::NoMark { number: 2 });
    assert_eq!(walk.next_mark(), Some(3));
    let mut far = mark(3);
    if let Event::MarkPlaced { mark } = &mut far {
        mark.at.x = i32::MAX;
    }
    assert!(matches!(why_not(&mut walk, far), Refused::Range { .. }));
    let mut wordy = mark(3);
    if let Event::MarkPlaced { mark } = &mut wordy {
        mark.note = "x".repeat(501);
    }
    assert!(matches!(why_not(&mut walk, wordy), Refused::TooLong { max: 500, .. }));
    let mut stranger = mark(3);
    if let Event::MarkPlaced { mark } = &mut stranger {
        mark.by = Who::Person(PersonId(9));
    }
    assert!(matches!(why_not(&mut walk, stranger), Refused::NotInParty { .. }));
    assert_eq!(walk.marks().count(), 1);
    assert_eq!(walk.marks_removed().map(|(m, at)| (m.value.number, at)).collect::<Vec<_>>(), [(2, at(13))]);
}

#[test]
fn a_question_belongs_to_its_step() {
    let mut walk = opened();
    let ask = |step: &str, caution: Option<&str>| Event::QuestionNoted {
        step: step.into(),
        caution: caution.map(Into::into),
        text: "How long does it run?".into(),
        answered: true,
    };
    all(&mut walk, [ask("awning", None), ask("awning", Some("awning-2")), ask("awning", None)]);
    assert!(matches!(why_not(&mut walk, ask("awning", Some("driving-1"))), Refused::OtherStep { .. }));
    assert!(matches!(why_not(&mut walk, ask("awning", Some("x"))), Refused::Unknown { what: "caution", .. }));
    assert!(matches!(why_not(&mut walk, ask("x", None)), Refused::Unknown { what: "step", .. }));
    assert_eq!(walk.questions().len(), 3);
}

#[test]
fn pegs_and_minutes_follow() {
    let mut walk = opened();
    let pegs = |walk: &sendoff::walk::Walk| (0..5).map(|i| walk.peg(i)).collect::<Vec<_>>();
    let open = Some(Peg::Open);
    assert_eq!(pegs(&walk), [open, open, open, open, None]);
    assert_eq!((walk.minutes_left(&Pace::default()), walk.next_step()), (10, Some(0)));
    all(&mut walk, [step_shown("lp-supply"), step_shown("awning")]);
    assert_eq!(pegs(&walk), [open, Some(Peg::PartDone), Some(Peg::Unanswered), open, None]);
    assert_eq!(
        (walk.minutes_left(&Pace::default()), walk.next_step(), walk.next_step_after(1)),
        (6, Some(0), Some(2))
    );
    all(&mut walk, [answer("awning-1", ANN), answer("awning-2", ANN)]);
    assert_eq!(walk.peg(2), Some(Peg::PartDone), "readings are due");
    assert_eq!(walk.cautions_settled(), Tally { done: 2, all: 6 });
    // What was said already is refused; the rest fills the gaps.
    for event in round() {
        drop(happen(&mut walk, event));
    }
    assert_eq!(walk.missing_to_sign(), []);
    let done = Some(Peg::Done);
    assert_eq!(pegs(&walk), [done, done, done, done, None]);
    assert_eq!(
        (walk.minutes_left(&Pace::default()), walk.next_step(), walk.next_step_after(3)),
        (0, None, None)
    );
    assert_eq!(walk.steps_settled(), Tally { done: 5, all: 5 });
}
