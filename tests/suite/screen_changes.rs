//! Changes in the middle of a walk, by what is on the screen: another language, another party, another unit.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "tests may fail loudly")]

use std::path::Path;
use std::sync::Arc;

use sendoff::kiosk::screen::walk::{Draft, Message as Walking, SheetKind};
use sendoff::kiosk::screen::{self, Screen};
use sendoff::kiosk::theme::TextSize;
use sendoff::kiosk::{self, Message};
use sendoff::measure::System;
use sendoff::ports::Ports;
use sendoff::ports::fake::{FixedClock, FixedEntropy, MemoryDisk, Operation};
use sendoff::route::{Answers, Ask, Caution, Route};
use sendoff::script::Speaker;
use sendoff::tablet::Tablet;
use sendoff::walk::{AnswerState, Event, Missing, PersonId, Phase, Response, Shown, Walk};
use sendoff::words::{Args, Reader};

use crate::kiosk_support::{Kiosk, NOW, PSEUDO, SIZES, Setup, how, lot, opened, party};

const ANN: PersonId = PersonId(1);
const BO: PersonId = PersonId(2);

fn route(unit: &str) -> Route {
    sendoff::route::build(&lot(), unit).unwrap()
}

/// What a caution of a unit reads, as a digest.
fn digest(unit: &str, caution: &Caution, language: &str, system: System) -> String {
    let lot = lot();
    let speaker = Speaker::new(&lot, unit, Reader::new(language, system)).unwrap();
    speaker.caution(caution).digest()
}

/// A walk for the Wren in which every caution is answered, by a hold.
fn answered(language: &str) -> Vec<Event> {
    let mut events = opened(language, "us");
    for step in &route("wren").steps {
        events.push(Event::StepShown { step: step.id.clone(), language: language.into() });
        for caution in &step.cautions {
            let drivers: &[PersonId] = if caution.who == Answers::EachDriver { &[ANN, BO] } else { &[ANN] };
            events.extend(drivers.iter().map(|by| Event::CautionAnswered {
                caution: caution.id.clone(),
                version: caution.version,
                by: *by,
                how: how(caution),
                shown: Shown {
                    text: digest("wren", caution, language, System::Us),
                    language: language.into(),
                },
                looked_ms: 60_000,
            }));
        }
    }
    events
}

fn walking(kiosk: &mut Kiosk, message: Walking) {
    kiosk.message(Message::Screen(screen::Message::Walk(message)));
}

/// The whole walk as a list, with what can be changed.
fn overview(kiosk: &mut Kiosk) {
    walking(kiosk, Walking::SheetAsked(SheetKind::Overview));
}

fn cautions(walk: &Walk) -> Vec<Caution> {
    walk.route().steps.iter().flat_map(|s| s.cautions.clone()).collect()
}

fn unanswered(walk: &Walk) -> Vec<String> {
    let waits = |c: &Caution| matches!(walk.answer_state(&c.id), Some(AnswerState::Waiting(_)));
    cautions(walk).into_iter().filter(waits).map(|c| c.id).collect()
}

fn counted(kiosk: &Kiosk, key: &str, count: usize) -> String {
    let lot = &kiosk.setup.lot;
    lot.words.say(&kiosk::staff_reader(lot), key, &Args::new().number("count", count as u64))
}

#[test]
fn with_other_measures_only_answers_that_name_measures_are_asked_again() {
    let mut kiosk = Setup::new().resume("wren", &answered("en-US"));
    assert!(unanswered(kiosk.walk()).is_empty());
    let events = kiosk.walk().events();
    overview(&mut kiosk);
    kiosk.click(&kiosk.say("walk-to-opening"));
    kiosk.click(&kiosk.say("opening-step-trip"));
    assert_eq!(kiosk.walk().events(), events, "looking changes nothing");
    kiosk.click("Kilometers and liters");
    let other =
        |c: &Caution| digest("wren", c, "en-US", System::Us) != digest("wren", c, "en-US", System::Metric);
    let changed: Vec<Caution> = cautions(kiosk.walk()).into_iter().filter(other).collect();
    let answers: usize = changed.iter().map(|c| if c.who == Answers::EachDriver { 2 } else { 1 }).sum();
    assert!(answers > 3 && changed.len() < 60, "{answers}");
    kiosk.expect(&counted(&kiosk, "opening-asked-again", answers));
    kiosk.click(&kiosk.say("opening-to-walk"));
    kiosk.no_notice();
    assert!(matches!(kiosk.screen(), Screen::Walk(_)), "{:?}", kiosk.screen());
    let ids: Vec<String> = changed.into_iter().map(|c| c.id).collect();
    assert_eq!(unanswered(kiosk.walk()), ids);
    assert_eq!(kiosk.walk().reader().unwrap().value.measures, "metric");
}

#[test]
fn in_another_language_every_answer_is_asked_again_and_back_again_each_stands_anew() {
    // The walk began in a language that the lot does not offer; the lot's own is one tap away.
    let mut kiosk = Setup::new().resume("wren", &answered(PSEUDO));
    overview(&mut kiosk);
    kiosk.click(&kiosk.say("walk-to-opening"));
    kiosk.click(&kiosk.say("opening-step-trip"));
    kiosk.click("English");
    kiosk.click(&kiosk.say("opening-to-walk"));
    kiosk.no_notice();
    let all: Vec<String> = cautions(kiosk.walk()).into_iter().map(|c| c.id).collect();
    assert_eq!(unanswered(kiosk.walk()), all);
}

#[test]
fn a_person_who_turns_the_page_to_another_language_is_asked_again_and_nobody_else() {
    let mut events = answered(PSEUDO);
    // The last caution that each driver answers is still open for Bo.
    let last = cautions_of_drivers().pop().unwrap();
    events.retain(
        |e| !matches!(e, Event::CautionAnswered { caution, by, .. } if *caution == last.id && *by == BO),
    );
    let mut kiosk = Setup::new().resume("wren", &events);
    let step = kiosk.walk().route().caution(&last.id).unwrap().0.id.clone();
    let index = kiosk.walk().route().steps.iter().position(|s| s.id == step).unwrap();
    let stop = kiosk.walk().route().stop_of(index).unwrap();
    let end = kiosk.walk().route().stops[stop].steps.end - 1;
    walking(&mut kiosk, Walking::StepChosen(end));
    walking(&mut kiosk, Walking::Onward);
    assert!(matches!(kiosk.screen(), Screen::Caution(_)));
    kiosk.click_id("caution-language");
    kiosk.no_notice();
    let walk = kiosk.walk();
    assert_eq!(walk.reader().unwrap().value.language, "en-US");
    for caution in cautions(walk) {
        assert!(walk.response(&caution.id, ANN).is_some(), "{}: Ann read it in her language", caution.id);
        assert!(walk.response(&caution.id, BO).is_none(), "{}", caution.id);
    }
}

fn cautions_of_drivers() -> Vec<Caution> {
    let route = route("wren");
    let all = route.steps.iter().flat_map(|s| s.cautions.clone());
    all.filter(|c| c.who == Answers::EachDriver && c.ask != Ask::Demonstrate).collect()
}

#[test]
fn a_driver_who_joins_has_to_answer_and_to_show_a_license() {
    let mut kiosk = Setup::new().resume("wren", &answered("en-US"));
    overview(&mut kiosk);
    kiosk.click(&kiosk.say("walk-to-opening"));
    kiosk.click(&kiosk.say("opening-step-party"));
    kiosk.click("One more person");
    kiosk.fill("opening-name-4", "Dee Hale");
    kiosk.fill("opening-age-4", "33");
    kiosk.click_nth("Drives", 2);
    kiosk.click(&kiosk.say("opening-to-walk"));
    kiosk.no_notice();
    let walk = kiosk.walk();
    assert_eq!((walk.phase(), walk.people().len()), (Phase::Walking, 4));
    let dee = PersonId(4);
    let missing = walk.missing_to_sign();
    assert!(missing.contains(&Missing::Licence { person: dee }));
    let drivers: Vec<String> =
        cautions(walk).into_iter().filter(|c| c.who == Answers::EachDriver).map(|c| c.id).collect();
    assert_eq!(unanswered(walk), drivers);
    assert!(missing.iter().all(|m| !matches!(m, Missing::Answer { by: Some(id), .. } if *id != dee)));
}

fn swap(kiosk: &mut Kiosk, unit: &str) {
    overview(kiosk);
    kiosk.click(&kiosk.say("walk-swap"));
    kiosk.click(&kiosk.say(&format!("unit-{unit}")));
    kiosk.fill("walk-note", "More beds.");
    let lot = &kiosk.setup.lot;
    let args = Args::new().text("unit", kiosk.say(&format!("unit-{unit}")));
    let keep = lot.words.say(&kiosk::staff_reader(lot), "swap-keep", &args);
    kiosk.click(&keep);
}

#[test]
fn another_unit_goes_on_with_the_party_and_with_the_answers_to_the_same_words() {
    let mut kiosk = Setup::new().resume("wren", &answered("en-US"));
    let first = kiosk.walk().clone();
    swap(&mut kiosk, "plover");
    let walk = kiosk.walk();
    assert_eq!(walk.route().unit, "plover");
    assert_eq!((walk.people(), walk.agent()), (party().as_slice(), Some("JM")));
    assert_eq!(walk.missing_to_open(), [Missing::Experience]);
    let follows = &walk.followed().unwrap().value;
    assert_eq!((follows.walk.as_str(), follows.unit.as_str()), (first.id(), "wren"));
    let mut stand = 0;
    for caution in cautions(walk) {
        let same = digest("plover", &caution, "en-US", System::Us);
        for by in [ANN, BO] {
            let before = match first.response(&caution.id, by).map(|r| &r.value) {
                Some(Response::Answered { shown, .. }) => shown.text == same,
                _ => false,
            };
            let expected = before && caution.ask != Ask::Demonstrate;
            assert_eq!(walk.response(&caution.id, by).is_some(), expected, "{} by {by:?}", caution.id);
            stand += usize::from(expected);
        }
    }
    assert!(stand > 10, "{stand}");
    let told = kiosk.app.notice().unwrap().text.clone();
    assert!(told.contains(&stand.to_string()), "{told}");

    // The walk that ended waits in the Yard, and is signed as not handed over.
    kiosk.click(&kiosk.say("notice-close"));
    kiosk.click("First time");
    kiosk.click(&kiosk.say("opening-start"));
    assert_eq!(kiosk.walk().steps_settled().done, 0, "every step is shown on this unit");
    walking(&mut kiosk, Walking::YardAsked);
    let go_on = kiosk.say("yard-go-on");
    let open = kiosk.look().texts.iter().filter(|t| t.text == go_on).count();
    assert_eq!(open, 2);
    kiosk.expect(&kiosk.say("yard-open-ended"));
    let message = screen::yard::Message::WalkChosen(first.id().to_owned());
    kiosk.message(Message::Screen(screen::Message::Yard(message)));
    assert_eq!(kiosk.walk().phase(), Phase::Stopped);
    assert_eq!(kiosk.walk().stopped().unwrap().value.reason, "Swapped for Plover. More beds.");
    assert!(matches!(kiosk.screen(), Screen::Closing(_)));
}

/// The disk fails, or the power goes, at every write of a swap: no walk ever points at one that is not there.
#[test]
fn a_swap_that_is_cut_short_leaves_no_walk_that_points_nowhere() {
    let mut done = 0;
    for nth in 1..200 {
        let mut kiosk = Setup::new().resume("wren", &opened("en-US", "us"));
        walking(&mut kiosk, Walking::SheetAsked(SheetKind::Swap));
        walking(&mut kiosk, Walking::Draft(Draft::Unit("heron".into())));
        kiosk.setup.disk.fail_from(Operation::Sync, nth);
        walking(&mut kiosk, Walking::SheetKept);
        let whole = kiosk.walk().route().unit == "heron";
        if !whole {
            assert!(kiosk.app.notice().is_some(), "{nth}: nothing was told");
            assert!(!kiosk.app.hall().unwrap().saving, "{nth}: it hangs");
        }
        let disk = kiosk.setup.disk.after_worst_power_cut();
        disk.heal();
        check_links(&disk, nth, whole);
        done += u32::from(whole);
        if done > 1 {
            return;
        }
    }
    panic!("a swap takes more than 200 syncs, or never comes to its end");
}

fn check_links(disk: &MemoryDisk, nth: u64, whole: bool) {
    let ports = Ports {
        disk: Arc::new(disk.clone()),
        clock: Arc::new(FixedClock(NOW.parse().unwrap())),
        entropy: Arc::new(FixedEntropy([7; 32])),
    };
    let tablet = Tablet::open(&ports, Path::new("/data")).unwrap().unwrap();
    let open = tablet.open_walks().unwrap();
    let events = |walk: &sendoff::journal::OpenWalk| -> Vec<Event> {
        walk.read
            .as_ref()
            .map_or_else(|_| Vec::new(), |r| r.entries.iter().map(|e| e.event.clone()).collect())
    };
    let mut swapped = false;
    for event in open.iter().flat_map(events) {
        if let Event::UnitSwapped(swap) = event {
            swapped = true;
            let next = open.iter().find(|w| w.id == swap.walk).unwrap_or_else(|| panic!("{nth}: {swap:?}"));
            let follows = events(next).into_iter().any(|e| matches!(e, Event::UnitFollowed(_)));
            assert!(follows, "{nth}");
        }
    }
    assert_eq!(swapped, whole, "{nth}: what was told and what is on the disk differ");
}

#[test]
fn the_pages_of_changes_fit_everywhere() {
    let mut faults = Vec::new();
    let events = answered("en-US");
    for size in SIZES {
        for text in [TextSize::Usual, TextSize::Largest] {
            for language in ["en-US", PSEUDO] {
                let setup = Setup::new().size(size).text(text).staff(language);
                let mut look = |kiosk: &mut Kiosk, state: &str| {
                    let found = kiosk.look().faults();
                    faults.extend(
                        found.into_iter().map(|f| format!("{size:?} {text:?} {language} {state}: {f}")),
                    );
                };
                let mut kiosk = setup.resume("wren", &events);
                overview(&mut kiosk);
                look(&mut kiosk, "overview");
                kiosk.click(&kiosk.say("walk-swap"));
                kiosk.click(&kiosk.say("unit-heron"));
                look(&mut kiosk, "swap");
                walking(&mut kiosk, Walking::OpeningAsked);
                look(&mut kiosk, "summary");
                kiosk.click(&kiosk.say("opening-step-trip"));
                let reader = Reader::new(language, System::Us);
                let metric = Args::new().text("system", "metric");
                kiosk.click(&lot().words.say(&reader, "opening-measures-name", &metric));
                look(&mut kiosk, "asked again");
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn frames_of_changes() {
    let Some(dir) = std::env::var_os("SENDOFF_FRAMES").map(|d| d.to_string_lossy().into_owned()) else {
        return;
    };
    let events = answered("en-US");
    for (name, size) in [("land", SIZES[0]), ("port", SIZES[2])] {
        let mut kiosk = Setup::new().size(size).resume("wren", &events);
        overview(&mut kiosk);
        kiosk.save(&format!("{dir}/overview-{name}.png"));
        kiosk.click(&kiosk.say("walk-swap"));
        kiosk.click(&kiosk.say("unit-heron"));
        kiosk.save(&format!("{dir}/swap-{name}.png"));
        walking(&mut kiosk, Walking::OpeningAsked);
        kiosk.click(&kiosk.say("opening-step-trip"));
        kiosk.click("Kilometers and liters");
        kiosk.save(&format!("{dir}/asked-{name}.png"));
        kiosk.click(&kiosk.say("opening-to-walk"));
        swap(&mut kiosk, "plover");
        kiosk.save(&format!("{dir}/swapped-{name}.png"));
    }
}
