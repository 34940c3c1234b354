//! The closing, from what is missing to the sealed record, and the shorter way when the unit stays.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests may fail loudly"
)]

use iced::Point;
use sendoff::kiosk::Message;
use sendoff::kiosk::screen::closing::Page;
use sendoff::kiosk::screen::{self, Screen, walk};
use sendoff::record::text::consent_text;
use sendoff::route::{Answers, Caution, Route, Scale, Step};
use sendoff::script::Speaker;
use sendoff::walk::{
    CopyChoice, Decision, Event, Ink, Mark, MarkKind, MarkSize, NotShown, Outcome, PersonId, Phase,
    PlanPoint, Shown, Signature, Who,
};
use sendoff::{measure::System, words::Reader};

use crate::kiosk_support::{Kiosk, Setup, how, lot, opened};
mod fits;
mod turned;
const ANN: PersonId = PersonId(1);
const BO: PersonId = PersonId(2);

fn route() -> Route {
    sendoff::route::build(&lot(), "wren").unwrap()
}

/// The renter's words.
fn say(language: &str, key: &str) -> String {
    let lot = lot();
    Speaker::new(&lot, "wren", Reader::new(language, System::Us)).unwrap().say(key)
}

fn answers(step: &Step, language: &str) -> Vec<Event> {
    let lot = lot();
    let speaker = Speaker::new(&lot, "wren", Reader::new(language, System::Us)).unwrap();
    let answer = |c: &Caution, by: PersonId| Event::CautionAnswered {
        caution: c.id.clone(),
        version: c.version,
        by,
        how: how(c),
        shown: Shown { text: speaker.caution(c).digest(), language: language.into() },
        looked_ms: 4000,
    };
    let who = |c: &Caution| if c.who == Answers::EachDriver { vec![ANN, BO] } else { vec![ANN] };
    step.cautions
        .iter()
        .flat_map(|c| who(c).into_iter().map(|by| answer(c, by)).collect::<Vec<_>>())
        .collect()
}

fn readings(step: &Step) -> Vec<Event> {
    let value = |scale: &Scale| match scale {
        Scale::Number { measure, min, .. } => (min.to_string(), measure.clone()),
        Scale::Parts(parts) => (format!("{}/{parts}", parts - 1), String::new()),
        Scale::Choice(all) => (all[0].clone(), String::new()),
    };
    let taken = |r: &sendoff::route::Reading| {
        let (value, measure) = value(&r.scale);
        Event::ReadingTaken { reading: r.id.clone(), value, measure }
    };
    step.readings.iter().map(taken).collect()
}

/// A whole walk but for consent and signatures. One step is left out, one caution refused, one question asked,
/// one mark placed.
pub(super) fn whole(language: &str) -> Vec<Event> {
    let route = route();
    let mut events = opened(language, "us");
    let left_out = left_out(&route);
    for step in &route.steps {
        let (id, language) = (step.id.clone(), language.to_owned());
        events.push(if step.id == left_out {
            Event::StepNotShown { step: id, reason: NotShown::Weather, note: "gusts".into() }
        } else {
            Event::StepShown { step: id, language }
        });
    }
    for step in &route.steps {
        if step.id != left_out {
            events.extend(answers(step, events_language(&events)));
        }
        events.extend(readings(step));
        events
            .extend(step.leaving.iter().map(|item| Event::LeavingChecked { item: item.clone(), good: true }));
    }
    let counted = |i: &sendoff::route::Item| Event::ItemCounted {
        tag: i.tag.clone(),
        count: i.count,
        note: String::new(),
    };
    events.extend(route.items.iter().map(counted));
    let at = PlanPoint { x: 490, y: 1200 };
    let (kind, size, note) = (MarkKind::Scratch, MarkSize::Hand, "below the window".to_owned());
    events.push(Event::MarkPlaced { mark: Mark { number: 1, at, kind, size, note, by: Who::Agent } });
    let step = route.steps[0].id.clone();
    events.push(Event::QuestionNoted {
        step,
        caution: None,
        text: "Which key is it?".into(),
        answered: true,
    });
    events
}

fn events_language(events: &[Event]) -> &str {
    let language = events.iter().find_map(|e| match e {
        Event::ReaderSet { language, .. } => Some(language.as_str()),
        _ => None,
    });
    language.expect("the opening sets it")
}

/// A step that may be left out: its cautions are no DANGER.
fn left_out(route: &Route) -> String {
    let mild = |s: &&Step| s.cautions.iter().all(|c| c.signal != sendoff::route::Signal::Danger);
    let plain = |s: &&Step| mild(s) && s.readings.is_empty() && s.leaving.is_empty() && !s.kit;
    route.steps.iter().rfind(plain).expect("a step without DANGER").id.clone()
}

pub(super) fn closing(setup: Setup, events: &[Event]) -> Kiosk {
    let mut kiosk = setup.resume("wren", events);
    if !matches!(kiosk.screen(), Screen::Closing(_)) {
        kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::ClosingAsked)));
    }
    kiosk
}

fn page(kiosk: &Kiosk) -> Page {
    match kiosk.screen() {
        Screen::Closing(state) => state.page(),
        other => panic!("not the closing: {other:?}"),
    }
}

/// A stroke across the middle of the pad.
pub(super) fn write(kiosk: &mut Kiosk) {
    let (width, height) = kiosk.setup.size;
    let at = |part: f32| Point::new(width * (0.2 + 0.5 * part), height * (0.6 + 0.04 * (part * 9.0).sin()));
    kiosk.finger_down(at(0.0));
    for step in 1..=20u8 {
        let position = at(f32::from(step) / 20.0);
        let id = iced::touch::Finger(1);
        kiosk.send(iced::Event::Touch(iced::touch::Event::FingerMoved { id, position }));
    }
    kiosk.finger_up(at(1.0));
}

pub(super) fn sign(kiosk: &mut Kiosk) {
    write(kiosk);
    kiosk.click("Done");
    kiosk.no_notice();
}

pub(super) fn consent(kiosk: &mut Kiosk) {
    kiosk.click("On a screen");
    kiosk.click("Go on to sign");
    kiosk.no_notice();
}

/// From the agent's card over the list to the page of consent.
pub(super) fn to_consent(kiosk: &mut Kiosk) {
    kiosk.click("I am Ann Marlow");
    kiosk.click("Go on to sign");
}

/// Holds what is called so by its id as long as the agent's ring takes.
pub(super) fn hold(kiosk: &mut Kiosk, id: &str) {
    let mut now = std::time::Instant::now();
    kiosk.tick(now);
    let at = kiosk.place_of(id);
    kiosk.finger_down(at);
    for _ in 0..20 {
        kiosk.tick(now);
        now += std::time::Duration::from_millis(50);
    }
    kiosk.finger_up(at);
    kiosk.no_notice();
}

/// The agent takes the tablet back.
pub(super) fn back(kiosk: &mut Kiosk) {
    kiosk.expect("Please give the tablet back to the agent.");
    hold(kiosk, "closing-agent");
}

fn signed(kiosk: &Kiosk, who: Who) -> Option<Ink> {
    match &kiosk.walk().signature(who)?.value {
        Signature::Signed { ink } => Some(ink.clone()),
        Signature::Refused { .. } => None,
    }
}

#[test]
fn what_is_missing_leads_to_where_it_is_made_good() {
    let route = route();
    let step = route.steps.iter().find(|s| !s.readings.is_empty()).unwrap();
    let gone = step.readings[0].id.clone();
    let mut events = whole("en-US");
    events.retain(|e| !matches!(e, Event::ReadingTaken { reading, .. } if *reading == gone));
    let mut kiosk = closing(Setup::new(), &events);
    kiosk.expect("One thing is missing");
    assert!(!kiosk.shows("Go on to sign"), "nobody signs before all is said");
    let line = format!("{}: not read", say("en-US", &format!("reading-{gone}")));
    kiosk.click(&line);
    assert!(matches!(kiosk.screen(), Screen::Walk(_)));
    kiosk.expect(&say("en-US", &format!("step-{}", step.id)));
}

#[test]
fn what_the_opening_lacks_leads_there() {
    let mut events = whole("en-US");
    // A third driver who came late: nobody has seen a licence of theirs.
    let mut people = crate::kiosk_support::party();
    people[2].age = 30;
    people[2].driver = true;
    events.push(Event::PartySet { people });
    let mut kiosk = closing(Setup::new(), &events);
    kiosk.click("Cy: licence not seen");
    assert!(matches!(kiosk.screen(), Screen::Opening(_)));
}

#[test]
fn the_account_names_everything() {
    let mut events = whole("en-US");
    let refused = route().steps.iter().flat_map(|s| s.cautions.clone()).find(|c| {
        let step = route().caution(&c.id).unwrap().0.id.clone();
        c.who == Answers::Party && step != left_out(&route())
    });
    let refused = refused.unwrap();
    let lot = lot();
    let speaker = Speaker::new(&lot, "wren", Reader::new("en-US", System::Us)).unwrap();
    events.push(Event::CautionRefused {
        caution: refused.id.clone(),
        version: refused.version,
        by: BO,
        reason: "I will not use it".into(),
        decision: Decision::HandOver,
        shown: Shown { text: speaker.caution(&refused).digest(), language: "en-US".into() },
    });
    let mut kiosk = closing(Setup::new(), &events);
    kiosk.click("I am Ann Marlow");
    let title = speaker.caution(&refused).title;
    kiosk.expect(&format!("Bo Marlow: {title}. Reason: I will not use it"));
    let first_of = |kiosk: &mut Kiosk, words: &str| {
        kiosk.look().texts.iter().find(|t| t.text == words).map(|t| t.bounds.y).unwrap()
    };
    let refusals = first_of(&mut kiosk, "What you did not confirm");
    assert!(refusals < first_of(&mut kiosk, "What was done today"), "refusals come first");
    let steps = route().steps.len();
    kiosk.expect(&format!("{} of {steps}", steps - 1));
    kiosk.expect("weather (gusts)");
    kiosk.expect("Which key is it?");
    kiosk.expect("1. Scratch (below the window)");
    // Handbook, sheet of the Wren: deposit 1,500.00, 0.42 a mile, 95.00 for a full black tank; no cassette.
    for (fee, sum) in [("deposit", "$1,500.00"), ("mile", "$0.42"), ("black", "$95.00")] {
        kiosk.expect(&say("en-US", &format!("closing-fee-{fee}")));
        kiosk.expect(sum);
    }
    assert!(!kiosk.shows("Cassette not emptied"));
}

#[test]
fn consent_is_unticked_and_bound_to_its_text() {
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    to_consent(&mut kiosk);
    assert_eq!(page(&kiosk), Page::Sign);
    let lot = lot();
    let speaker = Speaker::new(&lot, "wren", Reader::new("en-US", System::Us)).unwrap();
    let (lines, digest) = consent_text(&speaker);
    for line in &lines {
        kiosk.expect(line);
    }
    assert!(!kiosk.shows("Go on to sign"), "nothing is ticked beforehand");
    kiosk.click("On paper");
    // Somebody else chooses, and so has the tablet first.
    kiosk.click("Bo Marlow");
    assert!(!kiosk.shows("Go on to sign"), "the page is for Bo alone");
    kiosk.expect("Please pass the tablet to Bo Marlow.");
    kiosk.click("I am Bo Marlow");
    kiosk.click("Go on to sign");
    let (by, said) = kiosk.walk().consents().next().unwrap();
    assert_eq!((by, said.value.given, said.value.shown.text.clone()), (BO, false, digest.clone()));
    kiosk.click("I am Ann Marlow");
    kiosk.expect("Bo Marlow wants paper.");
    kiosk.click("Change");
    consent(&mut kiosk);
    let ann = kiosk.walk().consents().find(|(by, _)| *by == ANN).unwrap().1.clone();
    assert_eq!((ann.value.given, ann.value.shown.text), (true, digest));
}

#[test]
fn only_a_finished_signature_is_an_event() {
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    to_consent(&mut kiosk);
    consent(&mut kiosk);
    kiosk.expect("Ann Marlow, please sign");
    assert!(!kiosk.shows("Done"), "there is no ink yet");
    write(&mut kiosk);
    kiosk.expect("Done");
    assert_eq!(kiosk.walk().phase(), Phase::Walking, "half a signature is none");
    kiosk.click("Undo");
    assert!(!kiosk.shows("Done"));
    write(&mut kiosk);
    write(&mut kiosk);
    kiosk.click("Clear");
    assert!(!kiosk.shows("Done"));
    sign(&mut kiosk);
    let ink = signed(&kiosk, Who::Person(ANN)).expect("Ann has signed");
    let all: Vec<(i16, i16)> = ink.strokes.into_iter().flatten().collect();
    assert!(
        all.len() >= 15
            && all.iter().all(|(x, y)| (0..=1000).contains(x) && *y >= 0 && *y <= ink.height as i16)
    );
    assert!(!kiosk.shows("Bo Marlow, please sign"), "Ann still has the tablet");
    kiosk.click("I am Bo Marlow");
    kiosk.expect("Bo Marlow, please sign");
}

#[test]
fn a_walk_is_signed_copied_and_sealed() {
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    to_consent(&mut kiosk);
    consent(&mut kiosk);
    sign(&mut kiosk);
    kiosk.click("I am Bo Marlow");
    sign(&mut kiosk);
    // The copy is chosen before the tablet goes back.
    assert_eq!(page(&kiosk), Page::Copy);
    kiosk.expect("THE TABLET IS WITH Bo Marlow");
    kiosk.click("A file on a stick");
    assert_eq!(kiosk.walk().copy().map(|c| c.value), Some(CopyChoice::Stick));
    assert!(!kiosk.shows("Agent JM, please sign"), "Bo still has the tablet");
    kiosk.click("I have the tablet again");
    assert!(!kiosk.shows("Agent JM, please sign"), "a tap is no hold");
    back(&mut kiosk);
    kiosk.expect("Agent JM, please sign");
    assert!(!kiosk.shows("I will not sign"), "the agent signs what they have shown");
    assert!(!kiosk.shows("Seal the record"), "first the signature");
    sign(&mut kiosk);
    assert_eq!(page(&kiosk), Page::Copy);
    kiosk.click("None now");
    assert_eq!(kiosk.walk().copy().map(|c| c.value), Some(CopyChoice::Declined));
    kiosk.click("Seal the record");
    kiosk.no_notice();
    let Screen::Sealed(sealed) = kiosk.screen() else { panic!("{:?}", kiosk.screen()) };
    let id = sealed.finished().id.to_string();
    kiosk.expect(&id);
    kiosk.click("Save the copy");
    assert!(!kiosk.shows("Save the copy"), "first it is said where to");
    kiosk.fill("copy-folder", "/data");
    kiosk.expect("Save the copy");
    kiosk.click("Back to the Yard");
    assert!(matches!(kiosk.screen(), Screen::Yard(_)));
}

#[test]
fn who_will_not_sign_has_a_reason_and_the_agent_decides() {
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    to_consent(&mut kiosk);
    consent(&mut kiosk);
    kiosk.click("I will not sign");
    kiosk.fill("closing-reason", "My hand is broken");
    kiosk.click("Give the tablet to the agent");
    kiosk.click("Hand over all the same");
    assert!(kiosk.walk().signature(Who::Person(ANN)).is_none(), "a choice alone decides nothing");
    hold(&mut kiosk, "closing-decide");
    kiosk.no_notice();
    match &kiosk.walk().signature(Who::Person(ANN)).unwrap().value {
        Signature::Refused { reason, decision } => {
            assert_eq!((reason.as_str(), *decision), ("My hand is broken", Decision::HandOver));
        }
        Signature::Signed { .. } => panic!("a refusal is no signature"),
    }
    // The agent has the tablet, and Bo is the next.
    kiosk.expect("Please give the tablet to Bo Marlow.");
    kiosk.click("I am Bo Marlow");
    sign(&mut kiosk);
    assert_eq!(page(&kiosk), Page::Copy, "a refusal stands in for the signature");
}

#[test]
fn a_unit_that_is_to_stay_can_still_be_signed_for_or_stopped() {
    let mut events = whole("en-US");
    let mut kiosk = closing(Setup::new(), &events);
    to_consent(&mut kiosk);
    consent(&mut kiosk);
    kiosk.click("I will not sign");
    kiosk.fill("closing-reason", "Not today");
    kiosk.click("Give the tablet to the agent");
    kiosk.click("Keep the unit here");
    hold(&mut kiosk, "closing-decide");
    kiosk.expect("This is not decided yet");
    // They think better of it.
    kiosk.click("Ann Marlow");
    kiosk.click("I am Ann Marlow");
    sign(&mut kiosk);
    assert!(signed(&kiosk, Who::Person(ANN)).is_some());
    assert!(!kiosk.shows("This is not decided yet"));
    // Or the unit stays.
    let (_, text) = {
        let lot = lot();
        consent_text(&Speaker::new(&lot, "wren", Reader::new("en-US", System::Us)).unwrap())
    };
    events.push(Event::ConsentAnswered {
        by: ANN,
        given: true,
        shown: Shown { text, language: "en-US".into() },
    });
    let (reason, decision) = ("Not today".to_owned(), Decision::KeepUnit);
    events.push(Event::SignatureRefused { by: ANN, reason, decision });
    let mut kiosk = closing(Setup::new(), &events);
    kiosk.click("Do not hand over");
    kiosk.fill("closing-reason", "The renter will not sign");
    kiosk.click("The unit stays here");
    kiosk.no_notice();
    assert_eq!(kiosk.walk().phase(), Phase::Stopped);
}

#[test]
fn a_unit_that_is_not_handed_over_is_signed_and_sealed_with_its_reason() {
    let mut kiosk = closing(Setup::new(), &opened("en-US", "us"));
    kiosk.click("Do not hand over");
    assert!(!kiosk.shows("The unit stays here"), "first the reason");
    kiosk.fill("closing-reason", "The brakes pull to the left");
    kiosk.click("Ann Marlow");
    kiosk.click("The unit stays here");
    match kiosk.walk().outcome() {
        Outcome::NotHandedOver(stopped) => {
            assert_eq!(
                (stopped.value.reason.as_str(), stopped.value.by),
                ("The brakes pull to the left", Who::Person(ANN))
            );
        }
        other => panic!("{other:?}"),
    }
    kiosk.expect("The brakes pull to the left");
    kiosk.expect("Agent JM, please sign");
    // There is a way back.
    kiosk.click("Correct something");
    kiosk.fill("closing-reason", "They were adjusted");
    kiosk.click("Reopen the closing");
    assert_eq!((kiosk.walk().phase(), page(&kiosk)), (Phase::Walking, Page::Take));
    kiosk.click("Do not hand over");
    kiosk.fill("closing-reason", "They pull again");
    kiosk.click("The unit stays here");
    sign(&mut kiosk);
    assert_eq!(page(&kiosk), Page::Copy);
    kiosk.expect("They pull again");
    kiosk.click("Seal the record");
    kiosk.no_notice();
    assert!(matches!(kiosk.screen(), Screen::Sealed(_)));
}

#[test]
fn reopening_makes_the_signatures_void() {
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    to_consent(&mut kiosk);
    consent(&mut kiosk);
    sign(&mut kiosk);
    // What only the agent may do waits for the agent.
    kiosk.click("I am Bo Marlow");
    assert!(!kiosk.shows("Correct something"));
    kiosk.click("Give the tablet to the agent");
    back(&mut kiosk);
    kiosk.click("Correct something");
    kiosk.fill("closing-reason", "Wrong odometer");
    kiosk.click("Reopen the closing");
    kiosk.no_notice();
    assert_eq!((page(&kiosk), kiosk.walk().phase()), (Page::Take, Phase::Walking));
    assert_eq!(kiosk.walk().withdrawn().len(), 1);
    kiosk.click("Back to the walk");
    assert!(matches!(kiosk.screen(), Screen::Walk(_)));
}

#[test]
fn somebody_who_comes_late_is_marked_as_here_and_signs() {
    let mut events = whole("en-US");
    events.push(Event::PresentSet { people: vec![ANN] });
    let mut kiosk = closing(Setup::new(), &events);
    to_consent(&mut kiosk);
    kiosk.click("On a screen");
    assert!(!kiosk.shows("WHO CHOOSES"), "there is but one who can");
    kiosk.click("Go on to sign");
    sign(&mut kiosk);
    back(&mut kiosk);
    sign(&mut kiosk);
    kiosk.expect("Bo Marlow is not marked as present.");
    kiosk.click("Bo Marlow is here now");
    kiosk.no_notice();
    kiosk.click("I am Bo Marlow");
    sign(&mut kiosk);
    assert!(signed(&kiosk, Who::Person(BO)).is_some());
    assert_eq!(page(&kiosk), Page::Copy);
}
