use super::support::*;
use sendoff::walk::{CopyChoice, Decision, Event, Ink, Missing, Outcome, Phase, Refused, Signature, Who};

#[test]
fn a_whole_walk_is_handed_over() {
    let mut walk = said();
    assert_eq!(walk.missing_to_sign(), []);
    assert_eq!(walk.outcome(), Outcome::Open);
    assert_eq!(
        walk.missing_to_seal(),
        [
            Missing::Signature { by: Who::Person(ANN) },
            Missing::Signature { by: Who::Person(BO) },
            Missing::Signature { by: Who::Agent },
            Missing::CopyOffered,
            Missing::CopyChoice
        ]
    );
    all(&mut walk, signing());
    assert_eq!(walk.phase(), Phase::SealBegun);
    assert_eq!(walk.outcome(), Outcome::HandedOver);
    assert_eq!(walk.seal().map(|s| s.value.number), Some(7));
    assert_eq!(walk.events(), whole().len());
    for event in opening().into_iter().chain(round()).chain(signing()).chain([stop(), reopen(), began()]) {
        assert_eq!(why_not(&mut walk, event), Refused::SealBegun);
    }
}

/// Handbook A.13: 'signed before the walk to save time' is what goes wrong.
#[test]
fn nobody_signs_before_all_is_said() {
    let events: Vec<Event> = opening().into_iter().chain(round()).collect();
    let optional = |e: &Event| matches!(e, Event::MarkPlaced { .. });
    for left_out in round().into_iter().filter(|e| !optional(e)) {
        let rest = events.iter().filter(|e| **e != left_out).cloned();
        let mut walk = after([]);
        for event in rest {
            // What builds upon the event that is left out is refused; that is fine here.
            drop(happen(&mut walk, event));
        }
        for by in [Who::Agent, Who::Person(ANN)] {
            let refused = why_not(&mut walk, signed(by));
            assert!(matches!(refused, Refused::NotReadyToSign(_)), "without {left_out:?}: {refused:?}");
        }
    }
}

#[test]
fn after_the_first_signature_nothing_else_may_change() {
    let mut walk = said();
    all(&mut walk, [signed(Who::Person(ANN))]);
    assert_eq!(walk.phase(), Phase::Signing);
    let by = Refused::SigningBegun(Who::Person(ANN));
    let alone = Event::PresentSet { people: vec![ANN] };
    let facts =
        opening().into_iter().filter(|e| !matches!(e, Event::AgentOn { .. } | Event::PresentSet { .. }));
    for event in facts.chain(round()).chain([alone]) {
        assert_eq!(why_not(&mut walk, event), by);
    }
    assert_eq!(why_not(&mut walk, signed(Who::Person(ANN))), Refused::AlreadySigned(Who::Person(ANN)));
    // The next shift may close it, as long as the agent has not signed.
    all(&mut walk, [Event::AgentOn { code: "M2".into() }, signed(Who::Agent)]);
    let late = why_not(&mut walk, Event::AgentOn { code: "K4".into() });
    assert_eq!(late, Refused::SigningBegun(Who::Agent));
    // The way back: what was signed counts no more.
    all(&mut walk, [reopen(), mark(2)]);
    assert_eq!(walk.phase(), Phase::Walking);
    assert_eq!((walk.signatures().len(), walk.withdrawn().len()), (0, 2));
    assert_eq!(why_not(&mut walk, reopen()), Refused::NothingToReopen);
    all(&mut walk, signing());
    assert_eq!(walk.outcome(), Outcome::HandedOver);
}

#[test]
fn every_driver_signs_or_refuses_and_the_agent_decides() {
    let refuse = |by, decision| Event::SignatureRefused { by, reason: "too much to read".into(), decision };
    let mut walk = said();
    assert_eq!(why_not(&mut walk, signed(Who::Person(CY))), Refused::TooYoung { person: CY });
    assert_eq!(why_not(&mut walk, refuse(CY, Decision::HandOver)), Refused::TooYoung { person: CY });
    all(&mut walk, [refuse(BO, Decision::KeepUnit), signed(Who::Person(ANN)), signed(Who::Agent)]);
    assert_eq!(walk.phase(), Phase::Signing);
    let kept = Missing::SignatureKept { by: BO };
    assert_eq!(walk.missing_to_seal(), [kept, Missing::CopyOffered, Missing::CopyChoice]);
    assert!(matches!(why_not(&mut walk, Event::CopyOffered), Refused::CopyTooEarly(_)));
    assert_eq!(why_not(&mut walk, refuse(BO, Decision::KeepUnit)), Refused::AlreadySo);
    all(&mut walk, [refuse(BO, Decision::HandOver)]);
    assert_eq!(why_not(&mut walk, refuse(ANN, Decision::HandOver)), Refused::AlreadySigned(Who::Person(ANN)));
    all(&mut walk, [Event::CopyOffered, Event::CopyChosen { choice: CopyChoice::Declined }, seal()]);
    let bo = walk.signature(Who::Person(BO)).map(|s| &s.value);
    assert!(matches!(bo, Some(Signature::Refused { decision: Decision::HandOver, .. })));
}

#[test]
fn a_driver_who_comes_late_still_signs() {
    let mut walk = said();
    all(&mut walk, [Event::PresentSet { people: vec![ANN] }, signed(Who::Person(ANN))]);
    assert_eq!(why_not(&mut walk, signed(Who::Person(BO))), Refused::NotPresent { person: BO });
    all(&mut walk, [Event::PresentSet { people: vec![ANN, BO] }, signed(Who::Person(BO))]);
    assert_eq!(walk.missing_to_seal().first(), Some(&Missing::Signature { by: Who::Agent }));
}

/// Handbook A.23.8: a half signature is no signature.
#[test]
fn a_dot_is_no_signature() {
    let mut walk = said();
    let dot = Ink { height: 300, strokes: vec![vec![(5, 5)]] };
    assert_eq!(why_not(&mut walk, Event::Signed { by: Who::Agent, ink: dot }), Refused::Dot);
    assert_eq!(walk.phase(), Phase::Walking);
}

#[test]
fn the_copy_comes_last() {
    let mut walk = said();
    let choose = |choice| Event::CopyChosen { choice };
    assert!(matches!(why_not(&mut walk, Event::CopyOffered), Refused::CopyTooEarly(_)));
    // The agent may sign before it or after it: the last driver chooses while they have the tablet.
    let mut early = said();
    all(&mut early, signing().into_iter().take(2));
    all(&mut early, [Event::CopyOffered, choose(CopyChoice::Slip), signed(Who::Agent)]);
    assert_eq!(early.missing_to_seal(), []);
    all(&mut walk, signing().into_iter().take(3));
    assert_eq!(why_not(&mut walk, choose(CopyChoice::Slip)), Refused::CopyNotOffered);
    let refused = why_not(&mut walk, seal());
    assert_eq!(refused.missing(), [Missing::CopyOffered, Missing::CopyChoice]);
    all(&mut walk, [Event::CopyOffered, choose(CopyChoice::Slip), choose(CopyChoice::Stick)]);
    assert_eq!(why_not(&mut walk, choose(CopyChoice::Stick)), Refused::AlreadySo);
    assert_eq!(walk.copy().map(|c| c.value), Some(CopyChoice::Stick));
    let bad = Event::SealBegun { number: 8, previous: Some("xyz".into()) };
    assert!(matches!(why_not(&mut walk, bad), Refused::Form { .. }));
    let zero = Event::SealBegun { number: 0, previous: None };
    assert!(matches!(why_not(&mut walk, zero), Refused::Range { .. }));
    all(&mut walk, [Event::SealBegun { number: 1, previous: None }]);
}

/// Handbook A.04: it must be possible to stop here and record why.
#[test]
fn a_handover_can_be_stopped_at_any_point() {
    let events: Vec<Event> = opening().into_iter().chain(round()).chain(signing()).collect();
    for length in 0..events.len() {
        let mut walk = after(events.iter().take(length).cloned());
        if length < 3 {
            let refused = why_not(&mut walk, stop());
            assert!(matches!(refused, Refused::StopTooEarly(_)), "{refused:?}");
            continue;
        }
        let had = walk.signatures().len();
        all(&mut walk, [stop()]);
        assert_eq!((walk.phase(), walk.withdrawn().len()), (Phase::Stopped, had));
        assert_eq!(why_not(&mut walk, stop()), Refused::Stopped);
        assert_eq!(walk.missing_to_seal(), [Missing::Signature { by: Who::Agent }]);
        assert!(matches!(why_not(&mut walk, seal()), Refused::SealIncomplete(_)));
        let facts = opening().into_iter().skip(1).filter(|e| !matches!(e, Event::PresentSet { .. }));
        for event in facts.chain(round()) {
            assert_eq!(why_not(&mut walk, event), Refused::Stopped);
        }
        all(&mut walk, [signed(Who::Agent)]);
        if length % 2 == 0 {
            all(&mut walk, [Event::CopyOffered, Event::CopyChosen { choice: CopyChoice::Stick }]);
        }
        all(&mut walk, [seal()]);
        assert!(matches!(walk.outcome(), Outcome::NotHandedOver(s) if s.value.reason == "brake lights out"));
    }
}

#[test]
fn a_stop_by_mistake_can_be_taken_back() {
    let mut walk = said();
    all(&mut walk, [stop(), signed(Who::Agent), reopen()]);
    assert_eq!((walk.phase(), walk.stopped()), (Phase::Walking, None));
    assert_eq!(walk.withdrawn().len(), 1);
    all(&mut walk, signing());
    assert_eq!(walk.outcome(), Outcome::HandedOver);
}

#[test]
fn a_renter_may_stop_a_child_may_not() {
    let mut walk = opened();
    let by = |who| Event::HandoverStopped { reason: "changed their mind".into(), by: who };
    assert_eq!(why_not(&mut walk, by(Who::Person(CY))), Refused::TooYoung { person: CY });
    all(&mut walk, [by(Who::Person(BO))]);
    // Whoever wishes may sign a stopped handover, present or not said.
    all(&mut walk, [signed(Who::Person(BO)), signed(Who::Agent), seal()]);
}

#[test]
fn consent_is_answered_by_an_adult() {
    let mut walk = opened();
    assert_eq!(why_not(&mut walk, consent(CY)), Refused::TooYoung { person: CY });
    let paper = Event::ConsentAnswered { by: BO, given: false, shown: shown("cd") };
    all(&mut walk, [consent(BO), paper.clone()]);
    assert_eq!(why_not(&mut walk, paper), Refused::AlreadySo);
    assert_eq!(walk.consents().map(|(id, c)| (id, c.value.given)).collect::<Vec<_>>(), [(BO, false)]);
    assert!(!walk.missing_to_sign().contains(&Missing::Consent), "paper asked for is an answer");
}
