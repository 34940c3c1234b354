//! Amendments: they refer to a record, and are sealed and verified on the same path.

use jiff::Timestamp;
use sendoff::measure::System;
use sendoff::record::amend::{Amending, Answered, build};
use sendoff::record::build::{BuildFault, Contents};
use sendoff::record::form::{AnswerState, Record, read};
use sendoff::record::seal::{Digest, Kind};
use sendoff::record::signers::Signers;
use sendoff::record::verify::{Input, JudgedAt, verify};
use sendoff::walk::{self, Answer, Decision, Person, Response, Shown, Signature, Timed, Who};

use super::sealed::{follow, sealed};
use super::support::{ROBIN, SCRIPTS, head, ink, route, speaker};
use crate::seal::t2;

fn timed<T>(value: T) -> Timed<T> {
    Timed { at: "2026-07-25T16:00:00Z".parse::<Timestamp>().unwrap(), offset_minutes: -360, value }
}

/// The first caution of a topic.
fn caution(topic: &str) -> sendoff::route::Caution {
    let route = route();
    let found = route.steps.iter().find(|s| s.topic == topic && !s.cautions.is_empty()).unwrap();
    found.cautions[0].clone()
}

/// The awning, which was not shown in the wind, is gone through a day later.
pub fn amending() -> Amending {
    let caution = caution("awning");
    let shown =
        Shown { text: speaker("en-US", System::Us).caution(&caution).digest(), language: "en-US".into() };
    let said = Response::Answered { how: Answer::Hold, shown, looked_ms: 61_000 };
    Amending {
        of: "t2-5f3a9c-000122".parse().unwrap(),
        digest: Digest::of(b"the record it amends"),
        text: timed("The awning was shown a day later, in still air.".into()),
        agent: "A7".into(),
        reader: Some(walk::Reader { language: "en-US".into(), measures: "us".into() }),
        people: vec![Person { id: ROBIN, name: "Robin Vale".into(), age: 41, driver: true }],
        answers: vec![Answered { caution: caution.id, by: ROBIN, said: timed(said) }],
        signatures: vec![
            (Who::Person(ROBIN), timed(Signature::Signed { ink: ink() })),
            (Who::Agent, timed(Signature::Signed { ink: ink() })),
        ],
    }
}

pub fn contents(amending: &Amending) -> Result<Contents, BuildFault> {
    build(amending, &route(), &SCRIPTS, &head(Kind::Amendment))
}

#[test]
fn an_amendment_is_sealed_and_verified_like_any_record() {
    let contents = contents(&amending()).unwrap();
    let sealed = sealed(&contents, Kind::Amendment);
    let at = JudgedAt::Now("2026-08-01T00:00:00Z".parse().unwrap());
    let seen = verify(Input::Zip(&sealed.zip), &Signers::only(*t2().public(), "t2"), at).unwrap();
    assert_eq!(seen.digest, sealed.digest);
    let text = std::str::from_utf8(&contents.payload["data/record.txt"]).unwrap();
    follow(&sealed, text);
    let Record::Amendment(record) = read(&contents.payload["data/record.json"]).unwrap() else { panic!() };
    assert_eq!(record.amends.id.to_string(), "t2-5f3a9c-000122");
    assert_eq!(record.amends.digest, Digest::of(b"the record it amends"));
    assert_eq!(record.topics.len(), 1);
    let caution = &record.topics[0].cautions[0];
    assert_eq!(
        (&caution.state, caution.texts.len(), caution.responses.len()),
        (&AnswerState::Answered, 1, 1)
    );
    assert_eq!(contents, self::contents(&amending()).unwrap());
}

#[test]
fn its_text_says_what_it_amends() {
    let contents = contents(&amending()).unwrap();
    let text = String::from_utf8(contents.payload["data/record.txt"].clone()).unwrap();
    for wanted in
        ["AMENDMENT", "t2-5f3a9c-000122", "in still air.", "Robin Vale (1) pressed and held", "DEMO:"]
    {
        assert!(text.contains(wanted), "{wanted}:\n{text}");
    }
    assert!(text.lines().all(|l| l.chars().count() <= 72));
    assert!(!text.contains('⟨'), "{text}");
}

#[test]
fn its_text_neither_turns_nor_hides_a_line() {
    let mut turned = amending();
    turned.text.value = "\u{202E}redrum \u{1B}[2J\u{2028}x".into();
    let contents = contents(&turned).unwrap();
    let text = String::from_utf8(contents.payload["data/record.txt"].clone()).unwrap();
    assert!(text.contains("  \u{FFFD}redrum \u{FFFD}[2J\u{FFFD}x\n"));
    assert!(!text.contains(['\u{202E}', '\u{1B}', '\u{2028}']));
}

#[test]
fn the_last_word_of_each_counts() {
    let mut twice = amending();
    let Response::Answered { shown, .. } = twice.answers[0].said.value.clone() else { panic!() };
    for (decision, state) in [
        (Decision::HandOver, AnswerState::Refused { people: vec![1] }),
        (Decision::KeepUnit, AnswerState::Kept { people: vec![1] }),
    ] {
        let said = Response::Refused { reason: "Too windy.".into(), decision, shown: shown.clone() };
        twice.answers.push(Answered { said: timed(said), ..twice.answers[0].clone() });
        let Record::Amendment(record) = read(&contents(&twice).unwrap().payload["data/record.json"]).unwrap()
        else {
            panic!()
        };
        let caution = &record.topics[0].cautions[0];
        assert_eq!(caution.state, state);
        assert_eq!(caution.responses.iter().filter(|r| r.counts).count(), 1);
        assert!(caution.responses.last().unwrap().counts);
    }
}

#[test]
fn it_seals_nothing_that_was_not_said_or_shown() {
    let mut empty = amending();
    empty.text.value = " \n".into();
    assert!(matches!(contents(&empty), Err(BuildFault::Empty)));
    let mut unknown = amending();
    unknown.answers[0].caution = "moon-1".into();
    assert!(matches!(contents(&unknown), Err(BuildFault::Unknown { what: "caution", .. })));
    let mut stranger = amending();
    stranger.people.clear();
    assert!(matches!(contents(&stranger), Err(BuildFault::Unknown { what: "person", .. })));
    let mut changed = amending();
    if let Response::Answered { shown, .. } = &mut changed.answers[0].said.value {
        shown.text = "cd".repeat(32);
    }
    assert!(matches!(contents(&changed), Err(BuildFault::CautionChanged { .. })));
    let handoff = build(&amending(), &route(), &SCRIPTS, &head(Kind::Handoff));
    assert!(matches!(handoff, Err(BuildFault::Kind { kind: Kind::Handoff })));
}
