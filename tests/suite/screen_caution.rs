//! The renter's pages: each answer is a person's, bound to the words on the page, and nothing else is.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests may fail loudly"
)]

mod clock;
mod fits;
mod pages;

use iced::Point;
use sendoff::kiosk::Message;
use sendoff::kiosk::screen::{self, Screen, walk};
use sendoff::kiosk::theme::TextSize;
use sendoff::measure::System;
use sendoff::route::{Answers, Ask, Route, Signal};
use sendoff::script::Speaker;
use sendoff::walk::{Answer, Decision, Event, PersonId, Phase, Response, Shown};
use sendoff::words::Reader;

use crate::kiosk_support::{PSEUDO, SIZES, Setup, lot, opened};
use pages::Pages;

const ANN: PersonId = PersonId(1);
const BO: PersonId = PersonId(2);
/// A DANGER of the generator, and a step whose page has several of the milder cautions.
const DANGER: &str = "generator-run-1";

fn route() -> Route {
    sendoff::route::build(&lot(), "wren").unwrap()
}

/// The opening, and all steps shown but not answered.
fn all_shown(language: &str) -> Vec<Event> {
    let shown = |step: String| Event::StepShown { step, language: language.into() };
    opened(language, "us").into_iter().chain(route().steps.into_iter().map(|s| shown(s.id))).collect()
}

/// [`all_shown`], and everything demonstrated that is to be: the other answers are still to be given.
fn all_demonstrated() -> Vec<Event> {
    let mut events = all_shown("en-US");
    let cautions = route().steps.into_iter().flat_map(|step| step.cautions);
    for caution in cautions.filter(|c| !c.demonstrations.is_empty()) {
        let by: &[PersonId] = if caution.who == Answers::EachDriver { &[ANN, BO] } else { &[ANN] };
        events.extend(by.iter().map(|by| Event::CautionAnswered {
            caution: caution.id.clone(),
            version: caution.version,
            by: *by,
            how: Answer::Demonstrate,
            shown: Shown { text: "ab".repeat(32), language: "en-US".into() },
            looked_ms: 4000,
        }));
    }
    events
}

fn stop_with(caution: &str) -> usize {
    let route = route();
    let step = route.steps.iter().position(|s| s.cautions.iter().any(|c| c.id == caution)).unwrap();
    route.stop_of(step).unwrap()
}

fn walk_message(message: walk::Message) -> Message {
    Message::Screen(screen::Message::Walk(message))
}

/// The words of a caution as the renter reads them.
fn words(caution: &str, language: &str) -> sendoff::script::CautionText {
    let lot = lot();
    let speaker = Speaker::new(&lot, "wren", Reader::new(language, System::Us)).unwrap();
    let route = route();
    speaker.caution(route.caution(caution).unwrap().1)
}

/// The DANGER page of the generator, with Ann chosen.
fn danger(setup: Setup) -> Pages {
    let mut pages = Pages::at(setup, &all_shown("en-US"), stop_with(DANGER));
    pages.take("Ann Marlow");
    pages.go_to(&words(DANGER, "en-US").hazard);
    pages
}

#[test]
fn nobody_answers_before_a_name_is_chosen() {
    let mut pages = Pages::at(Setup::new(), &all_shown("en-US"), stop_with(DANGER));
    pages.kiosk.expect("Who reads these pages?");
    assert!(!pages.kiosk.shows("Press and hold") && !pages.kiosk.shows("I have read this"));
    assert!(!pages.kiosk.shows("I will not confirm this"), "nobody is there yet who could refuse");
    pages.take("Ann Marlow");
    pages.kiosk.expect("This page is for Ann Marlow. Please read it yourself.");
    let left = pages.left();
    assert!(counts(&mut pages).contains(&format!(" of {left}")), "cautions are counted");
    pages.answer();
    pages.kiosk.expect("This page is for Ann Marlow.");
    assert!(pages.left() < left, "the choice is kept for the pages that follow");
}

/// The line that says which caution of how many is on the page.
fn counts(pages: &mut Pages) -> String {
    let seen = pages.kiosk.look();
    seen.words().into_iter().find(|w| w.starts_with("Caution")).unwrap_or_default().to_owned()
}

#[test]
fn whoever_has_the_tablet_by_mistake_lets_it_go() {
    let mut pages = danger(Setup::new());
    pages.click("I am not Ann Marlow");
    pages.kiosk.expect("Who reads these pages?");
    pages.take("Bo Marlow");
    pages.go_to(&words(DANGER, "en-US").hazard);
    pages.wait(1100);
    pages.hold(1300);
    let _ = pages.answered(DANGER, BO);
    assert_eq!(pages.walk().response(DANGER, ANN), None);
}

#[test]
fn a_hold_is_bound_to_the_words_on_the_page() {
    let mut pages = danger(Setup::new());
    let text = words(DANGER, "en-US");
    for part in [&text.signal, &text.hazard, &text.harm, &text.avoid] {
        pages.kiosk.expect(part);
    }
    pages.wait(1100);
    pages.hold(1300);
    let (how, digest, language) = pages.answered(DANGER, ANN);
    assert_eq!((how, digest, language.as_str()), (Answer::Hold, text.digest(), "en-US"));
    pages.kiosk.no_notice();
}

#[test]
fn the_target_of_a_danger_is_not_live_before_the_page_was_whole_for_a_second() {
    let mut pages = danger(Setup::new());
    let at = pages.hold_at();
    pages.kiosk.finger_down(at);
    pages.settle();
    pages.wait(900);
    pages.wait(1500);
    pages.kiosk.finger_up(at);
    assert_eq!(pages.walk().response(DANGER, ANN), None, "pressed too early, held ever so long");
    pages.settle();
    pages.hold(1300);
    let _ = pages.answered(DANGER, ANN);
}

#[test]
fn the_target_of_a_danger_never_lies_where_the_last_tap_was() {
    for size in SIZES {
        for right in [false, true] {
            let mut pages = Pages::at(Setup::new().size(size), &all_demonstrated(), stop_with(DANGER));
            pages.take("Ann Marlow");
            let danger = words(DANGER, "en-US").hazard;
            for _ in 0..40 {
                if pages.kiosk.shows(&danger) {
                    break;
                }
                // The answer to the page before is given by messages, so that the last tap is where we say.
                let x = size.0 * if right { 0.8 } else { 0.2 };
                pages.scroll_down();
                pages.wait(1100);
                pages.kiosk.finger_down(Point::new(x, size.1 * 0.02));
                pages.kiosk.finger_up(Point::new(x, size.1 * 0.02));
                answer_by_message(&mut pages);
            }
            let middle = size.0 / 2.0;
            assert_eq!(pages.hold_at().x < middle, right, "{size:?}, last tap at the right: {right}");
        }
    }
}

fn answer_by_message(pages: &mut Pages) {
    use sendoff::kiosk::screen::caution::Message as Said;
    use sendoff::kiosk::ui::HoldEvent;
    let say = |message: Said| Message::Screen(screen::Message::Caution(message));
    let read = pages.kiosk.shows("I have read this") || pages.kiosk.shows("I have read all of this");
    pages.kiosk.message(say(if read { Said::ReadPressed } else { Said::Held(HoldEvent::Done) }));
    pages.settle();
}

#[test]
fn after_two_short_holds_two_taps_do() {
    let mut pages = danger(Setup::new());
    pages.wait(1100);
    pages.hold(300);
    pages.kiosk.expect("A little longer");
    assert_eq!(pages.walk().response(DANGER, ANN), None);
    let held = pages.hold_at();
    pages.hold(300);
    pages.kiosk.expect("Two taps will do");
    let places = |pages: &mut Pages| -> Vec<Point> {
        let ids = ["caution-tap-one", "caution-tap-two"];
        let seen = pages.kiosk.look();
        seen.focusable
            .iter()
            .filter(|(id, _)| ids.contains(&id.as_str()))
            .map(|(_, p)| p.bounds.center())
            .collect()
    };
    let first = places(&mut pages);
    assert_eq!(first.len(), 1, "one after the other");
    assert!(first[0].distance(held) > 200.0, "the first lies away from where the hold was");
    pages.kiosk.click_id("caution-tap-one");
    let second = places(&mut pages);
    assert!(second.len() == 1 && second[0].distance(first[0]) > 200.0, "{first:?} {second:?}");
    assert_eq!(pages.walk().response(DANGER, ANN), None);
    pages.kiosk.click_id("caution-tap-two");
    assert_eq!(pages.answered(DANGER, ANN).0, Answer::TwoTaps);
}

#[test]
fn the_milder_cautions_of_a_step_share_an_answer_but_not_a_line() {
    let route = route();
    let read = |c: &&sendoff::route::Caution| c.signal <= Signal::Caution && c.ask == Ask::Read;
    let party = |s: &&sendoff::route::Step| s.cautions.iter().all(|c| c.who == Answers::Party);
    let step = route.steps.iter().filter(party).find(|s| s.cautions.iter().filter(read).count() > 1).unwrap();
    let milder: Vec<&str> = step.cautions.iter().filter(read).map(|c| c.id.as_str()).collect();
    let mut pages = Pages::at(Setup::new(), &all_shown("en-US"), stop_with(milder[0]));
    pages.take("Ann Marlow");
    pages.go_to(&words(milder[0], "en-US").hazard);
    for caution in &milder {
        pages.kiosk.expect(&words(caution, "en-US").hazard);
    }
    pages.click("I have read all of this");
    for caution in milder {
        let (how, digest, _) = pages.answered(caution, ANN);
        assert_eq!((how, digest), (Answer::Read, words(caution, "en-US").digest()));
    }
}

#[test]
fn a_question_is_noted_and_the_page_stays() {
    let mut pages = danger(Setup::new());
    let at = pages.opened();
    pages.click("I have a question");
    pages.kiosk.fill("caution-question-words", "How far is that");
    pages.click("Not answered yet");
    let asked = pages.walk().questions().last().unwrap().value.clone();
    assert_eq!(
        (asked.caution.as_deref(), asked.text.as_str(), asked.answered),
        (Some(DANGER), "How far is that", false)
    );
    assert_eq!(pages.opened(), at);
    pages.click("I have a question");
    pages.click("It was answered");
    let asked = pages.walk().questions().last().unwrap().value.clone();
    assert_eq!((asked.text.as_str(), asked.answered), ("", true), "the mere fact will do");
}

#[test]
fn a_refusal_has_the_renters_reason_and_the_agents_decision() {
    for (button, wanted) in
        [("Hand over all the same", Decision::HandOver), ("Keep the unit here", Decision::KeepUnit)]
    {
        let mut pages = danger(Setup::new());
        pages.click("I will not confirm this");
        assert!(!pages.kiosk.shows("Give the tablet to the agent"), "first the reason");
        pages.kiosk.fill("caution-reason", "I do not trust it");
        pages.click("Give the tablet to the agent");
        pages.kiosk.expect("Reason: I do not trust it");
        assert!(!pages.kiosk.shows("Save, as the agent"), "first the decision");
        pages.click(button);
        assert_eq!(pages.walk().response(DANGER, ANN), None, "a tap decides nothing");
        pages.hold_on("caution-decide", 900);
        match pages.walk().response(DANGER, ANN).map(|r| &r.value) {
            Some(Response::Refused { reason, decision, shown }) => {
                assert_eq!((reason.as_str(), *decision), ("I do not trust it", wanted));
                assert_eq!(shown.text, words(DANGER, "en-US").digest());
            }
            other => panic!("{other:?}"),
        }
        pages.kiosk.no_notice();
        pages.kiosk.expect("Reason: I do not trust it");
        pages.kiosk.expect(&format!("Decision of the agent: {button}"));
        pages.click("Go on");
        while !pages.is_over() {
            pages.answer();
        }
        let kept = "The unit is to stay here. The closing shows what can be done.";
        assert_eq!(pages.kiosk.shows(kept), wanted == Decision::KeepUnit);
    }
}

#[test]
fn a_usual_reason_is_chosen_and_their_own_words_stand_instead() {
    let mut pages = danger(Setup::new());
    pages.click("I will not confirm this");
    pages.kiosk.fill("caution-reason", "Hm");
    pages.click("I do not understand it.");
    pages.click("Give the tablet to the agent");
    pages.kiosk.expect("Reason: I do not understand it.");
    pages.click("Keep the unit here");
    pages.hold_on("caution-decide", 400);
    assert_eq!(pages.walk().response(DANGER, ANN), None, "let go too early");
    pages.hold_on("caution-decide", 900);
    let reason = pages.walk().response(DANGER, ANN).map(|r| r.value.clone());
    let Some(Response::Refused { reason, .. }) = reason else { panic!("{reason:?}") };
    assert_eq!(reason, "I do not understand it.");
    // What was saved stays when its card is put away by a key.
    pages.kiosk.key(iced::keyboard::Key::Named(iced::keyboard::key::Named::Escape), None);
    pages.settle();
    assert!(!pages.kiosk.shows("Saved"));
    assert!(!pages.kiosk.shows(&words(DANGER, "en-US").hazard), "it is not asked again on this visit");
}

#[test]
fn the_tablet_goes_back_at_the_end_of_the_stop() {
    let mut pages = Pages::at(Setup::new(), &all_shown("en-US"), stop_with(DANGER));
    pages.take("Ann Marlow");
    while !pages.is_over() {
        pages.answer();
    }
    pages.kiosk.expect("Please give the tablet back to the agent.");
    let route = route();
    let range = route.stops[stop_with(DANGER)].steps.clone();
    for step in &route.steps[range] {
        assert!(pages.walk().waiting_at(step).is_empty());
    }
    pages.click("I have the tablet again");
    pages.hold_on("caution-agent", 500);
    assert!(pages.is_over(), "a tap of the renter does nothing");
    pages.hold_on("caution-agent", 900);
    assert!(matches!(pages.kiosk.screen(), Screen::Walk(_)));
}

/// A stop where each driver answers.
fn stop_of_drivers() -> usize {
    let route = route();
    let each = |i: &usize| route.steps[*i].cautions.iter().any(|c| c.who == Answers::EachDriver);
    let step = (0..route.steps.len()).find(each).expect("the demo lot has topics for each driver");
    route.stop_of(step).unwrap()
}

/// The cautions of a stop that this one could answer.
fn of_drivers(stop: usize) -> Vec<String> {
    let route = route();
    let cautions = route.steps[route.stops[stop].steps.clone()].iter().flat_map(|s| &s.cautions);
    cautions.filter(|c| c.who == Answers::EachDriver).map(|c| c.id.clone()).collect()
}

#[test]
fn one_driver_answers_everything_then_the_tablet_goes_to_the_other() {
    let stop = stop_of_drivers();
    let mut pages = Pages::at(Setup::new(), &all_shown("en-US"), stop);
    pages.take("Ann Marlow");
    let mut names = 0;
    while pages.person() == Some(ANN) {
        names += usize::from(pages.kiosk.shows("Bo Marlow: after you"));
        pages.answer();
    }
    assert!(names > 0, "it shows who else must answer");
    let all = of_drivers(stop);
    for id in &all {
        let _ = pages.answered(id, ANN);
        assert_eq!(pages.walk().response(id, BO), None);
    }
    pages.kiosk.expect("Please pass the tablet to Bo Marlow.");
    assert!(pages.kiosk.shows("I am Bo Marlow") && !pages.kiosk.shows("I am Ann Marlow"));
    assert_eq!(pages.person(), None, "nobody stays chosen silently");
    pages.take("Bo Marlow");
    pages.kiosk.expect("Ann Marlow: answered");
    while pages.person() == Some(BO) {
        assert!(pages.kiosk.look().contains("This page is for Bo Marlow."));
        pages.answer();
    }
    for id in &all {
        let _ = pages.answered(id, BO);
    }
    assert!(pages.is_over());
}

#[test]
fn the_agent_takes_the_tablet_when_the_other_driver_is_not_there() {
    let mut pages = Pages::at(Setup::new(), &all_shown("en-US"), stop_of_drivers());
    pages.take("Ann Marlow");
    while pages.person() == Some(ANN) {
        pages.answer();
    }
    pages.click("Give the tablet to the agent");
    pages.kiosk.expect("Still to answer: Bo Marlow.");
    pages.hold_on("caution-agent", 900);
    assert!(matches!(pages.kiosk.screen(), Screen::Walk(_)));
}

#[test]
fn a_driver_who_is_away_is_named_at_the_end() {
    let mut events = all_shown("en-US");
    events.push(Event::PresentSet { people: vec![ANN] });
    let mut pages = Pages::at(Setup::new(), &events, stop_of_drivers());
    while !pages.is_over() {
        pages.answer();
    }
    pages.kiosk.expect("Still to answer: Bo Marlow.");
    assert_eq!(pages.walk().phase(), Phase::Walking);
}

#[test]
fn another_language_is_one_tap_away_and_the_answer_is_bound_to_it() {
    // The renter reads the pseudo-language, which the lot does not offer: the chip leads to the one it does.
    let mut pages = Pages::at(Setup::new(), &all_shown(PSEUDO), stop_with(DANGER));
    pages.take("Ann Marlow");
    let first = route()
        .steps
        .iter()
        .flat_map(|s| s.cautions.clone())
        .find(|c| pages.kiosk.shows(&words(&c.id, PSEUDO).hazard));
    let first = first.expect("a caution is on the page");
    pages.click("English");
    assert_eq!(pages.walk().reader().unwrap().value.language, "en-US");
    pages.kiosk.expect(&words(&first.id, "en-US").hazard);
    assert!(!pages.kiosk.shows("English"), "nothing else is offered");
    pages.language = "en-US".into();
    pages.answer();
    let (_, digest, language) = pages.answered(&first.id, ANN);
    assert_eq!((digest, language.as_str()), (words(&first.id, "en-US").digest(), "en-US"));
}

#[test]
fn a_long_page_is_answered_only_when_its_end_was_in_sight() {
    let setup = Setup::new().size(SIZES[2]).text(TextSize::Largest);
    let mut pages = Pages::at(setup, &all_shown(PSEUDO), stop_with(DANGER));
    pages.take("Ann Marlow");
    let danger = words(DANGER, PSEUDO);
    pages.go_to(&danger.hazard);
    let hold = say(PSEUDO, "caution-page-hold");
    assert!(!pages.kiosk.shows(&hold), "its end is below the edge");
    pages.kiosk.expect(&say(PSEUDO, "caution-page-more-below"));
    pages.scroll_down();
    pages.kiosk.expect(&hold);
}

#[test]
fn a_walk_that_was_left_at_the_renters_pages_goes_on_from_there() {
    let route = route();
    let waits = |step: &usize| !route.steps[*step].cautions.is_empty();
    let stop = route.stops.iter().find(|stop| stop.steps.clone().any(|step| waits(&step))).unwrap();
    let shown = route.steps[..stop.steps.end].iter();
    let shown = shown.map(|s| Event::StepShown { step: s.id.clone(), language: "en-US".into() });
    let events: Vec<Event> = opened("en-US", "us").into_iter().chain(shown).collect();
    let mut kiosk = Setup::new().resume("wren", &events);
    match kiosk.screen() {
        Screen::Walk(state) => assert_eq!(state.position(), stop.steps.end - 1),
        other => panic!("{other:?}"),
    }
    assert!(kiosk.look().words().iter().any(|words| words.starts_with("Give the tablet to the renter: ")));
}

/// The renter's words.
fn say(language: &str, key: &str) -> String {
    let lot = lot();
    Speaker::new(&lot, "wren", Reader::new(language, System::Us)).unwrap().say(key)
}
