//! The Office screen: who comes in, what is found, how one goes through it by finger and by keyboard.

pub mod support;

use std::path::Path;

use iced::Event;
use iced::keyboard::{Key, key::Named};
use iced::mouse;
use sendoff::kiosk::screen::Screen;
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::ports::fake::MemoryDisk;

use crate::archive::support::OFFICE;
use crate::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup};
use crate::screen_staff::staffed;
use support::{archive, open};

fn ids(kiosk: &mut Kiosk) -> Vec<String> {
    let seen = kiosk.look();
    let number = |text: &&str| text.starts_with("t2-") && text.len() == 16;
    seen.words().into_iter().filter(number).map(|id| id[10..].to_owned()).collect()
}

fn press(kiosk: &mut Kiosk, key: Named) {
    kiosk.key(Key::Named(key), None);
}

#[test]
fn there_is_no_office_where_no_archive_is_named() {
    let mut kiosk = Setup::new().disk(&archive(12)).boot();
    let office = kiosk.say("yard-office");
    assert!(!kiosk.shows(&office));
}

#[test]
fn the_newest_records_stand_first_each_with_its_verdict_in_words() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    assert_eq!(ids(&mut kiosk)[..3], ["000012", "000011", "000010"]);
    kiosk.expect("12 records");
    kiosk.expect(&kiosk.say("office-good"));
    kiosk.no_notice();
}

#[test]
fn one_finds_as_one_types_and_what_is_not_there_is_said_with_the_way_out() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    kiosk.fill("office-words", "mul");
    assert_eq!(ids(&mut kiosk), ["000001"]);
    kiosk.expect("One record");
    kiosk.fill("office-words", "mulxqz");
    kiosk.expect(&kiosk.say("office-nothing"));
    let seen = kiosk.look();
    let clear = kiosk.say("office-clear");
    assert!(seen.words().iter().filter(|text| **text == clear).count() >= 1);
    kiosk.touch(&clear);
    assert_eq!(ids(&mut kiosk)[0], "000012");
}

#[test]
fn heads_sort_and_turn_the_order_round() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    kiosk.touch(&kiosk.say("office-col-sealed"));
    assert_eq!(ids(&mut kiosk)[..2], ["000001", "000002"]);
    kiosk.touch(&kiosk.say("office-col-sealed"));
    assert_eq!(ids(&mut kiosk)[..2], ["000012", "000011"]);
    kiosk.touch(&kiosk.say("office-col-renter"));
    assert!(kiosk.look().contains("Dale Robin") || kiosk.look().contains("Élodie"), "A comes first");
}

#[test]
fn filters_narrow_what_is_found_and_each_can_be_let_go() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    kiosk.touch(&kiosk.say("office-filters"));
    kiosk.touch(&kiosk.say("unit-plover"));
    kiosk.expect("Show 3 records");
    kiosk.fill("office-from", "2026-05-0");
    kiosk.expect(&kiosk.say("office-filter-no-day"));
    kiosk.fill("office-from", "2026-05-05");
    kiosk.click_id("office-filters-done");
    assert_eq!(ids(&mut kiosk), ["000012", "000007"]);
    kiosk.touch(&kiosk.say("unit-plover"));
    assert!(ids(&mut kiosk).len() > 3);
}

#[test]
fn the_keyboard_goes_to_both_ends_and_only_what_is_near_is_loaded() {
    let mut kiosk = open(Setup::new().disk(&archive(130)));
    kiosk.expect("130 records");
    let shown = ids(&mut kiosk).len();
    assert!((4..20).contains(&shown), "{shown}");
    press(&mut kiosk, Named::End);
    assert_eq!(ids(&mut kiosk).last().unwrap(), "000001");
    press(&mut kiosk, Named::PageUp);
    assert!(!ids(&mut kiosk).contains(&"000001".to_owned()), "a page further up");
    press(&mut kiosk, Named::Home);
    assert_eq!(ids(&mut kiosk)[0], "000130");
    for _ in 0..shown {
        press(&mut kiosk, Named::ArrowDown);
    }
    assert_eq!(ids(&mut kiosk)[0], "000129", "the chosen row stays in sight");
    for _ in 0..40 {
        press(&mut kiosk, Named::PageDown);
    }
    assert_eq!(ids(&mut kiosk).last().unwrap(), "000001", "through all pages to the last row");
    for _ in 0..40 {
        press(&mut kiosk, Named::PageUp);
    }
    assert_eq!(ids(&mut kiosk)[0], "000130");
}

#[test]
fn a_wheel_and_a_finger_move_the_rows() {
    let mut kiosk = open(Setup::new().disk(&archive(130)));
    let at = kiosk.place_of("office-rows");
    kiosk.send(Event::Mouse(mouse::Event::CursorMoved { position: at }));
    let delta = mouse::ScrollDelta::Lines { x: 0.0, y: -3.0 };
    kiosk.send(Event::Mouse(mouse::Event::WheelScrolled { delta }));
    assert_eq!(ids(&mut kiosk)[0], "000127");
    kiosk.finger_down(at);
    for step in 1..=8 {
        let position = iced::Point::new(at.x, at.y - 20.0 * step as f32);
        kiosk.send(Event::Touch(iced::touch::Event::FingerMoved { id: iced::touch::Finger(1), position }));
    }
    kiosk.finger_up(iced::Point::new(at.x, at.y - 160.0));
    assert_eq!(ids(&mut kiosk)[0], "000125", "160 px are two rows");
}

#[test]
fn agents_do_not_come_in_with_their_pin() {
    let disk = archive(12);
    for (path, bytes) in staffed().files() {
        disk.plant(&path, &bytes);
    }
    let mut kiosk = Setup::new().disk(&disk).archive(OFFICE).boot();
    kiosk.click_id("yard-office");
    assert!(!kiosk.shows("K4"), "only staff of the office are asked");
    kiosk.message(sendoff::kiosk::Message::Gate(sendoff::kiosk::gate::Message::WhoChosen("K4".into())));
    for digit in "8080".chars() {
        kiosk.click(&digit.to_string());
    }
    kiosk.click(&kiosk.say("gate-end"));
    assert!(matches!(kiosk.screen(), Screen::Yard(_)));
    kiosk.expect(&kiosk.say("gate-wrong"));
    for digit in "4711".chars() {
        kiosk.click(&digit.to_string());
    }
    kiosk.click(&kiosk.say("gate-end"));
    assert!(matches!(kiosk.screen(), Screen::Office(_)));
}

#[test]
fn an_archive_that_is_gone_is_said_and_can_be_tried_again() {
    let mut kiosk = Setup::new().disk(&MemoryDisk::new());
    kiosk.archive = Some(OFFICE.into());
    let mut kiosk = open(kiosk);
    kiosk.expect(&kiosk.say("office-shut"));
    for (path, bytes) in archive(12).files() {
        kiosk.setup.disk.plant(&path, &bytes);
    }
    kiosk.touch(&kiosk.say("office-again"));
    assert_eq!(ids(&mut kiosk)[0], "000012");
}

#[test]
fn a_record_that_was_changed_is_shown_as_not_verified() {
    let disk = archive(12);
    let (path, mut bytes) =
        disk.files().into_iter().find(|(path, _)| path.to_string_lossy().ends_with("-000012.zip")).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    disk.plant(Path::new(&path), &bytes);
    let mut kiosk = open(Setup::new().disk(&disk));
    kiosk.expect(&kiosk.say("office-bad"));
    // Nothing of what it says is shown, but which it is and what is wrong.
    let rows = ids(&mut kiosk).len();
    assert!(kiosk.look().words().iter().filter(|text| text.starts_with("MW-")).count() < rows);
}

#[test]
fn the_pages_fit_every_size() {
    for size in SIZES {
        for text in TextSize::ALL {
            for staff in ["en-US", PSEUDO] {
                let mut kiosk = open(Setup::new().size(size).text(text).staff(staff).disk(&archive(12)));
                let faults = kiosk.look().faults();
                assert_eq!(faults, Vec::<String>::new(), "list {size:?} {text:?} {staff}");
                kiosk.click_id("office-filters");
                let faults = kiosk.look().faults();
                assert_eq!(faults, Vec::<String>::new(), "filters {size:?} {text:?} {staff}");
            }
        }
    }
    for theme in Theme::ALL {
        open(Setup::new().theme(theme).disk(&archive(12))).renders();
    }
}
