//! Settings: each holds at once, is kept, and stands after a restart.

use std::path::Path;

use sendoff::kiosk::gate;
use sendoff::kiosk::preferences;
use sendoff::kiosk::screen::{self, Screen, settings, yard};
use sendoff::kiosk::theme::{Hand, TextSize, Theme};
use sendoff::kiosk::ui::{HoldEvent, Layout};
use sendoff::kiosk::{Message, Settings};
use sendoff::measure::System;
use sendoff::ports::fake::{MemoryDisk, Operation};

use super::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup, opened};

/// Whether settings are as they were chosen.
type Holds = fn(&Settings) -> bool;

const FILE: &str = "/data/settings.ron";

/// The page of settings, opened from the Yard through the gate.
fn open(setup: Setup) -> Kiosk {
    let mut kiosk = setup.boot();
    let words = kiosk.say("yard-settings");
    kiosk.touch(&words);
    assert!(matches!(kiosk.screen(), Screen::Yard(_)), "the gate is asked first");
    kiosk.message(Message::Gate(gate::Message::Held(HoldEvent::Done)));
    assert!(matches!(kiosk.screen(), Screen::Settings(_)));
    kiosk
}

fn kept(disk: &MemoryDisk) -> Option<String> {
    let files = disk.files();
    let found = files.iter().find(|(path, _)| path == Path::new(FILE));
    found.map(|(_, bytes)| String::from_utf8(bytes.clone()).unwrap())
}

#[test]
fn every_choice_holds_at_once_and_after_a_restart() {
    let disk = MemoryDisk::new();
    let mut kiosk = open(Setup::new().disk(&disk));
    let choices: [(&str, Holds); 8] = [
        ("settings-theme-daylight", |s| s.theme == Theme::Daylight),
        ("settings-text-large", |s| s.text == TextSize::Large),
        ("settings-hand-left", |s| s.hand == Hand::Left),
        ("settings-motion-off", |s| s.still),
        ("settings-keys-de", |s| s.layout == Some(Layout::De)),
        ("settings-keys-reader", |s| s.layout.is_none()),
        ("settings-keys-fr", |s| s.layout == Some(Layout::FrCa)),
        ("settings-text-largest", |s| s.text == TextSize::Largest),
    ];
    for (key, holds) in choices {
        let words = kiosk.say(key);
        // Some words stand on the strip above as well: the page has the last.
        let nth = kiosk.look().texts.iter().filter(|t| t.text == words).count() - 1;
        kiosk.click_nth(&words, nth);
        assert!(holds(kiosk.app.settings()), "{key}");
    }
    kiosk.click("Kilometers and liters");
    assert_eq!(kiosk.app.settings().staff.system, System::Metric);
    let settings = kiosk.app.settings().clone();
    drop(kiosk);
    let again = Setup::new().disk(&disk).boot();
    again.no_notice();
    assert_eq!(*again.app.settings(), settings);
}

#[test]
fn the_size_of_everything_stays_within_its_bounds() {
    let mut kiosk = open(Setup::new());
    let send = |kiosk: &mut Kiosk, message| {
        kiosk.message(Message::Screen(screen::Message::Settings(message)));
    };
    for (asked, percent) in [(110, 110), (900, 150), (0, 80), (100, 100)] {
        send(&mut kiosk, settings::Message::Scale(asked));
        assert_eq!(preferences::percent(kiosk.app.settings()), percent);
        let words = format!("{percent} %");
        kiosk.expect(&words);
    }
    send(&mut kiosk, settings::Message::Scale(150));
    let large = kiosk.look().pressable.iter().map(|t| t.bounds.height).fold(0.0, f32::max);
    send(&mut kiosk, settings::Message::Usual);
    let usual = kiosk.look().pressable.iter().map(|t| t.bounds.height).fold(0.0, f32::max);
    assert!((large / usual - 1.5).abs() < 0.02, "{large} over {usual}");
}

#[test]
fn the_strip_above_every_staff_page_keeps_its_choice_too() {
    let disk = MemoryDisk::new();
    let mut kiosk = Setup::new().disk(&disk).boot();
    kiosk.touch("For the sun");
    kiosk.touch("Text size");
    drop(kiosk);
    let again = Setup::new().disk(&disk).boot();
    assert_eq!((again.app.settings().theme, again.app.settings().text), (Theme::Daylight, TextSize::Large));
}

#[test]
fn a_broken_file_is_told_and_left_as_it_is_until_something_is_chosen() {
    for broken in ["(theme: \"neon\")", "(theme: ", "\u{0}\u{0}", "(scale: 100000)"] {
        let disk = MemoryDisk::new();
        drop(Setup::new().disk(&disk).boot());
        disk.plant(Path::new(FILE), broken.as_bytes());
        let mut kiosk = Setup::new().disk(&disk).boot();
        let notice = kiosk.app.notice().unwrap_or_else(|| panic!("`{broken}` is not told")).text.clone();
        assert!(notice.contains("settings.ron:1:"), "{notice}");
        assert_eq!(kiosk.app.settings().theme, Theme::Paper);
        assert_eq!(kept(&disk).as_deref(), Some(broken));
        kiosk.touch("For the sun");
        drop(kiosk);
        let again = Setup::new().disk(&disk).boot();
        again.no_notice();
        assert_eq!(again.app.settings().theme, Theme::Daylight);
    }
}

#[test]
fn a_disk_that_refuses_is_told_and_the_choice_holds_for_now() {
    let disk = MemoryDisk::new();
    let mut kiosk = open(Setup::new().disk(&disk));
    disk.fail_from(Operation::Write, 1);
    kiosk.touch("Left");
    assert_eq!(kiosk.app.settings().hand, Hand::Left);
    let notice = kiosk.app.notice().expect("it is told").text.clone();
    assert!(notice.contains("could not be saved"), "{notice}");
    assert_eq!(kept(&disk), None);
}

/// What stands beside the words at the right hand stands at the left hand on the other side, as far from its edge.
#[test]
fn the_plan_and_the_foot_of_the_walk_change_sides_for_the_left_hand() {
    for size in [SIZES[0], SIZES[1]] {
        let walk = |setup: Setup| setup.size(size).resume("wren", &opened("en-US", "us"));
        let mut right = walk(Setup::new());
        let mut left = walk(Setup::new().left());
        // The foot, and pegs and floors of the plan: all that lies in the side panel or at the bottom.
        let foot = size.1 - 110.0 * size.1 / 800.0;
        let of = |kiosk: &mut Kiosk, mirrored: bool| {
            let mut all: Vec<(i32, i32, i32)> = kiosk
                .look()
                .pressable
                .iter()
                .map(|t| t.bounds)
                .filter(|b| b.y > foot)
                .filter(|b| {
                    let x = if mirrored { size.0 - b.x - b.width } else { b.x };
                    x > 400.0 * size.1 / 800.0
                })
                .map(|b| {
                    let x = if mirrored { size.0 - b.x - b.width } else { b.x };
                    (x.round() as i32, b.y.round() as i32, b.width.round() as i32)
                })
                .collect();
            all.sort_unstable();
            all
        };
        let foot_right = of(&mut right, false);
        assert!(foot_right.len() >= 3, "{foot_right:?}");
        assert_eq!(foot_right, of(&mut left, true), "at {size:?}");
        let primary = |kiosk: &mut Kiosk| {
            let words = kiosk.look().texts.iter().find(|t| t.text.starts_with("Shown.")).unwrap().bounds;
            words.center_x()
        };
        assert!(primary(&mut right) > size.0 / 2.0 && primary(&mut left) < size.0 / 2.0);
        let picture = |kiosk: &mut Kiosk| {
            let title = kiosk.look().texts.iter().find(|t| t.text == "The key ring").unwrap().bounds;
            title.x
        };
        assert!(picture(&mut right) > 300.0 && picture(&mut left) < 100.0, "the plan gives way");
    }
}

#[test]
fn the_page_fits_every_size() {
    for size in SIZES {
        for text in TextSize::ALL {
            for staff in ["en-US", PSEUDO] {
                let mut kiosk = Setup::new().size(size).text(text).staff(staff).boot();
                kiosk.message(Message::Screen(screen::Message::Yard(yard::Message::SettingsAsked)));
                kiosk.message(Message::Gate(gate::Message::Held(HoldEvent::Done)));
                assert!(matches!(kiosk.screen(), Screen::Settings(_)));
                let faults = kiosk.look().faults();
                assert_eq!(faults, Vec::<String>::new(), "{size:?} {text:?} {staff}");
            }
        }
    }
}
