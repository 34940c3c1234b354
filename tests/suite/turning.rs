//! A tablet that is turned, and cards that come and go, change nothing of what is open: page, scroll, cards, ink,
//! half-typed words.

use sendoff::kiosk::Message;
use sendoff::kiosk::screen::{self, Screen, walk};

use crate::kiosk_support::{Kiosk, SIZES, Setup, opened};

const WIDE: (f32, f32) = SIZES[0];
const HIGH: (f32, f32) = SIZES[2];

fn walking() -> Kiosk {
    Setup::new().resume("wren", &opened("en-US", "us"))
}

/// All words that are there, in any order: the layouts differ in theirs.
fn words(kiosk: &mut Kiosk) -> Vec<String> {
    let mut words: Vec<String> = kiosk.look().words().into_iter().map(str::to_owned).collect();
    words.sort();
    words
}

/// Turns the tablet and back, looking at it each time.
fn turn_and_back(kiosk: &mut Kiosk) {
    for size in [HIGH, WIDE, HIGH, WIDE] {
        kiosk.resize(size);
        kiosk.tick(std::time::Instant::now());
        drop(kiosk.look());
    }
}

#[test]
fn every_screen_is_the_same_after_turning() {
    let mut screens: Vec<(&str, Kiosk)> =
        vec![("yard", Setup::new().boot()), ("opening", Setup::new().begin("wren")), ("walk", walking())];
    let mut kiosk = walking();
    for _ in 0..40 {
        if matches!(kiosk.screen(), Screen::Caution(_)) {
            break;
        }
        kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::Onward)));
    }
    screens.push(("caution", kiosk));
    for (name, kiosk) in &mut screens {
        // What is below the edge of the window is known after the first frame.
        kiosk.tick(std::time::Instant::now());
        let before = words(kiosk);
        turn_and_back(kiosk);
        assert_eq!(words(kiosk), before, "{name}");
        kiosk.resize(HIGH);
        assert_eq!(kiosk.look().faults(), Vec::<String>::new(), "{name}");
    }
}

#[test]
fn half_typed_words_and_an_open_card_survive_turning() {
    let mut kiosk = walking();
    kiosk.click(&kiosk.say("walk-not-shown"));
    let card = words(&mut kiosk);
    turn_and_back(&mut kiosk);
    assert_eq!(words(&mut kiosk), card, "the card is still open");
    let mut kiosk = Setup::new().begin("wren");
    kiosk.fill("opening-agent", "J");
    kiosk.resize(HIGH);
    assert_eq!(kiosk.field("opening-agent"), "J");
    kiosk.resize(WIDE);
    assert_eq!(kiosk.field("opening-agent"), "J");
}

/// How far the page is scrolled: where a text of it shows.
fn place_of(kiosk: &mut Kiosk, text: &str) -> Option<f32> {
    kiosk.look().texts.iter().find(|t| t.text == text).and_then(|t| t.visible).map(|v| v.y)
}

#[test]
fn a_card_that_comes_and_goes_leaves_the_page_where_it_was_scrolled_to() {
    let mut kiosk = Setup::new().size(HIGH).boot();
    let last = kiosk.look().texts.last().unwrap().text.clone();
    let _ = kiosk.reach(&last, 0);
    let before = place_of(&mut kiosk, &last);
    assert!(before.is_some(), "scrolled to its end");
    for message in [Message::EmergencyToggled, Message::CloseAsked] {
        kiosk.message(message);
        drop(kiosk.look());
        kiosk.key(iced::keyboard::Key::Named(iced::keyboard::key::Named::Escape), None);
        assert_eq!(place_of(&mut kiosk, &last), before);
    }
    kiosk.setup.clock.pass(130);
    kiosk.message(Message::WatchDue);
    drop(kiosk.look());
    kiosk.message(Message::Touched);
    assert_eq!(place_of(&mut kiosk, &last), before, "dimmed and woken");
    kiosk.resize((800.0, 1000.0));
    drop(kiosk.look());
    kiosk.resize(HIGH);
    assert_eq!(place_of(&mut kiosk, &last), before, "turned and back");
}

#[test]
fn a_power_cut_at_any_moment_loses_nothing_that_was_shown_as_done() {
    use sendoff::journal::open_walks;
    use sendoff::ports::fake::MemoryDisk;

    let disk = MemoryDisk::new();
    let mut kiosk = Setup::new().disk(&disk).resume("wren", &opened("en-US", "us"));
    let mut cuts = 0;
    for seed in 0..10_u64 {
        if matches!(kiosk.screen(), Screen::Caution(_)) {
            kiosk = Setup::new().disk(&disk).boot();
            kiosk.click(&kiosk.say("yard-go-on"));
        }
        let step = usize::try_from(seed).unwrap() % kiosk.walk().route().steps.len();
        kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::StepChosen(step))));
        kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::Onward)));
        let shown = kiosk.walk().events();
        for cut in [disk.after_worst_power_cut(), disk.after_power_cut(seed)] {
            let open = open_walks(&cut, std::path::Path::new("/data")).unwrap();
            let read = open[0].read.as_ref().unwrap();
            assert_eq!((read.entries.len(), read.damage.is_none()), (shown, true), "{seed}");
            cuts += 1;
        }
    }
    assert!(kiosk.walk().events() > 15 && cuts == 20);
}

/// Opens the page of a step of the Wren.
fn step(kiosk: &mut Kiosk, id: &str) {
    let index = kiosk.walk().route().steps.iter().position(|s| s.id == id).unwrap();
    kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::StepChosen(index))));
    kiosk.tick(std::time::Instant::now());
}

#[test]
fn a_step_stays_where_it_was_scrolled_to_when_the_tablet_is_turned() {
    for size in [HIGH, WIDE] {
        let mut kiosk = Setup::new().size(size).resume("wren", &opened("en-US", "us"));
        step(&mut kiosk, "leaving-check");
        let last = kiosk.say("leaving-chocks");
        assert_eq!(place_of(&mut kiosk, &last), None, "it lies below the edge");
        let _ = kiosk.reach(&last, 0);
        kiosk.tick(std::time::Instant::now());
        let before = place_of(&mut kiosk, &last).unwrap();
        turn_and_back(&mut kiosk);
        kiosk.resize(size);
        kiosk.tick(std::time::Instant::now());
        let after = place_of(&mut kiosk, &last).unwrap();
        // Within less than a line: what is kept is a part of the way.
        assert!((after - before).abs() < 8.0, "{size:?}: {before} became {after}");
    }
}

#[test]
fn the_next_step_begins_at_its_top() {
    let mut kiosk = Setup::new().size(HIGH).resume("wren", &opened("en-US", "us"));
    step(&mut kiosk, "leaving-check");
    let last = kiosk.say("leaving-chocks");
    let _ = kiosk.reach(&last, 0);
    kiosk.tick(std::time::Instant::now());
    step(&mut kiosk, "loaned-kit");
    let title = kiosk.say("step-loaned-kit");
    assert!(place_of(&mut kiosk, &title).is_some(), "the title is in sight");
}
