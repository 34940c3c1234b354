//! Nobody attends it: only staff leave, nothing is kept, nobody is known, and the cover comes back.

use std::path::Path;
use std::time::{Duration, Instant};

use iced::Event;
use iced::keyboard::{Key, key::Named};
use iced::mouse;
use sendoff::kiosk;
use sendoff::kiosk::screen::reread::{IDLE, Message as Told, Page};
use sendoff::kiosk::screen::{self, Screen};
use sendoff::ports::fake::MemoryDisk;

use super::{cover, disk, every_page, home, state, tell};
use crate::kiosk_support::{Kiosk, Setup, lot, opened};
use crate::screen_closing;

#[test]
fn from_the_yard_each_unit_opens_and_the_way_back_is_staffs() {
    let mut kiosk = Setup::new().boot();
    let open = kiosk.say("reread-open");
    for (nth, unit) in lot().units.keys().enumerate() {
        kiosk.click_nth(&open, nth);
        assert_eq!(state(&kiosk).unit(), unit);
        kiosk.expect(&kiosk.say("reread-cover-tap"));
        kiosk.click(&kiosk.say("reread-staff"));
        // Nobody has a PIN here, and the gate says so.
        kiosk.expect(&kiosk.say("gate-no-pin"));
        kiosk.key(Key::Named(Named::Escape), None);
        assert!(matches!(kiosk.screen(), Screen::Reread(_)), "Escape goes back to the page");
        kiosk.click(&kiosk.say("reread-staff"));
        hold(&mut kiosk, Duration::from_millis(1500));
        assert!(matches!(kiosk.screen(), Screen::Reread(_)), "a short hold leaves nothing");
        hold(&mut kiosk, Duration::from_millis(3200));
        assert!(matches!(kiosk.screen(), Screen::Yard(_)), "{:?}", kiosk.screen());
    }
}

#[test]
fn with_a_pin_only_the_pin_leaves() {
    let disk = MemoryDisk::new();
    disk.plant(Path::new("/data/staff.ron"), crate::staff::two().as_bytes());
    let mut kiosk = cover(Setup::new().disk(&disk), "wren");
    kiosk.click(&kiosk.say("reread-staff"));
    assert!(!kiosk.shows(&kiosk.say("gate-no-pin")));
    for pin in ["0000", "8080"] {
        if kiosk.shows("K4") {
            kiosk.click("K4");
        }
        for digit in pin.chars() {
            kiosk.click(&digit.to_string());
        }
        kiosk.click(&kiosk.say("gate-end"));
        assert_eq!(matches!(kiosk.screen(), Screen::Yard(_)), pin == "8080", "{:?}", kiosk.look().words());
    }
}

/// At the end of a handoff the renter may read at once: in their language and measures, of their unit, and the
/// record stays as it was sealed.
#[test]
fn from_the_sealed_page_the_renter_reads_their_unit_in_their_measures() {
    let mut kiosk = screen_closing::closing(Setup::new(), &screen_closing::whole("en-US"));
    let measures = kiosk.walk().reader().map(|r| r.value.measures.clone());
    screen_closing::to_consent(&mut kiosk);
    screen_closing::consent(&mut kiosk);
    screen_closing::sign(&mut kiosk);
    kiosk.click("I am Bo Marlow");
    screen_closing::sign(&mut kiosk);
    kiosk.click("None now");
    screen_closing::back(&mut kiosk);
    screen_closing::sign(&mut kiosk);
    kiosk.click("Seal the record");
    let before = disk(&kiosk);
    kiosk.click(&kiosk.say("reread-open-renter"));
    assert_eq!((state(&kiosk).unit(), state(&kiosk).page()), ("wren", &Page::Cover));
    assert_eq!(measures.as_deref(), Some("us"));
    assert_eq!(state(&kiosk).reader().system, sendoff::measure::System::Us);
    assert!(kiosk.app.hall().is_none() && !kiosk.look().contains("Marlow"));
    assert_eq!(before, disk(&kiosk));
}

#[test]
fn nothing_of_a_walk_and_nobody_is_known_there() {
    let mut kiosk = Setup::new().resume("wren", &opened("en-US", "metric"));
    let reader = kiosk.walk().reader().cloned();
    assert!(reader.is_some());
    kiosk.message(kiosk::Message::Screen(screen::Message::Walk(screen::walk::Message::YardAsked)));
    let chosen = screen::yard::Message::RereadChosen("wren".into());
    kiosk.message(kiosk::Message::Screen(screen::Message::Yard(chosen)));
    assert!(kiosk.app.hall().is_none());
    let before = disk(&kiosk);
    for page in every_page("wren") {
        tell(&mut kiosk, Told::PageChosen(page.clone()));
        let seen = kiosk.look();
        for name in ["Marlow", "Ann", "Q-1183", "JM"] {
            assert!(!seen.contains(name), "{page:?} shows {name}: {:#?}", seen.words());
        }
    }
    assert_eq!(before, disk(&kiosk), "nothing is kept");
    // Pages of a walk are not to be had from here.
    kiosk.message(kiosk::Message::Screen(screen::Message::Walk(screen::walk::Message::Onward)));
    assert!(matches!(kiosk.screen(), Screen::Reread(_)));
}

#[test]
fn after_idling_the_cover_is_back_and_nothing_of_the_reading_is_left() {
    let mut kiosk = home(Setup::new(), "wren");
    kiosk.fill("reread-search", "toilet");
    tell(&mut kiosk, Told::PageChosen(Page::Topic("toilet-use".into())));
    let start = Instant::now() + Duration::from_secs(1);
    kiosk.tick(start);
    // Somebody touches it a second before the time is over: it stays for as long again.
    kiosk.tick(start + IDLE - Duration::from_secs(1));
    kiosk.send(Event::Mouse(mouse::Event::CursorMoved { position: iced::Point::new(5.0, 5.0) }));
    kiosk.tick(start + IDLE);
    kiosk.tick(start + IDLE + IDLE - Duration::from_secs(1));
    assert_eq!(state(&kiosk).page(), &Page::Topic("toilet-use".into()));
    kiosk.tick(start + IDLE + IDLE);
    assert_eq!(state(&kiosk).page(), &Page::Cover);
    kiosk.click(&kiosk.say("reread-cover-tap"));
    assert_eq!(kiosk.field("reread-search"), kiosk.say("reread-search"), "empty");
}

#[test]
fn the_way_out_is_no_page_further_back() {
    let mut kiosk = home(Setup::new(), "wren");
    for _ in 0..5 {
        tell(&mut kiosk, Told::BackPressed);
    }
    assert_eq!(state(&kiosk).page(), &Page::Cover);
    kiosk.key(Key::Named(Named::Escape), None);
    kiosk.message(kiosk::Message::CloseAsked);
    assert!(!kiosk.app.exits() && matches!(kiosk.screen(), Screen::Reread(_)));
}

/// Holds what stands in for a PIN for so long.
fn hold(kiosk: &mut Kiosk, long: Duration) {
    let words = ["gate-hold", "gate-hold-longer"].map(|key| kiosk.say(key));
    let word = words.into_iter().find(|w| kiosk.shows(w)).expect("the hold");
    let mut now = Instant::now();
    kiosk.tick(now);
    let at = kiosk.reach(&word, 0);
    kiosk.finger_down(at);
    let end = now + long;
    while now < end {
        now += Duration::from_millis(50);
        kiosk.tick(now);
    }
    kiosk.finger_up(at);
}
