//! The Office screen: who comes in, what is found, how one goes through it by finger and by keyboard.

mod kept;
pub mod support;

use std::path::Path;

use iced::Event;
use iced::keyboard::{Key, key::Named};
use iced::mouse;
use sendoff::kiosk::screen::Screen;
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::ports::Disk as _;
use sendoff::ports::fake::MemoryDisk;

use crate::archive::support::OFFICE;
use crate::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup};
use crate::record::support::{Led, Ways};
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

/// The page of the record in the first row.
fn opened(disk: &MemoryDisk) -> Kiosk {
    let mut kiosk = open(Setup::new().disk(disk));
    let at = kiosk.reach("t2-e00f63-000012", 0);
    kiosk.finger_down(at);
    kiosk.finger_up(at);
    kiosk
}

#[test]
fn a_record_is_judged_anew_and_shows_its_file_its_chain_and_its_handwriting() {
    let mut kiosk = opened(&archive(12));
    for key in
        ["office-good", "office-file", "office-brief", "office-ink", "office-chain", "office-seal-means"]
    {
        kiosk.expect(&kiosk.say(key));
    }
    kiosk.expect("records/2026/05/t2-e00f63-000012.zip");
    kiosk.expect("data/ink-1.svg");
    assert!(
        kiosk.look().contains("t2-e00f63-000011 goes on")
            || kiosk.look().contains("goes on from t2-e00f63-000011")
    );
    kiosk.expect(&kiosk.say("office-chain-last"));
    kiosk.renders();
    kiosk.click_id("office-record-before");
    kiosk.expect("records/2026/05/t2-e00f63-000011.zip");
    assert!(kiosk.look().contains("t2-e00f63-000012 goes on from it"));
    press(&mut kiosk, Named::Escape);
    assert_eq!(ids(&mut kiosk)[0], "000012", "back to the list");
}

#[test]
fn the_keyboard_opens_the_chosen_row_from_the_search_and_from_the_table() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    kiosk.fill("office-words", "awning");
    press(&mut kiosk, Named::ArrowDown);
    press(&mut kiosk, Named::Enter);
    kiosk.expect("records/2026/05/t2-e00f63-000011.zip");
    press(&mut kiosk, Named::Escape);
    press(&mut kiosk, Named::Tab);
    while kiosk.look().focused.is_none_or(|placed| placed.bounds.height < 200.0) {
        press(&mut kiosk, Named::Tab);
    }
    press(&mut kiosk, Named::ArrowDown);
    press(&mut kiosk, Named::Enter);
    kiosk.expect("records/2026/05/t2-e00f63-000010.zip");
}

#[test]
fn the_whole_text_is_there_section_by_section() {
    let mut kiosk = opened(&archive(12));
    kiosk.touch("Signatures");
    assert!(kiosk.look().contains("Robin Vale (1) signed"));
    kiosk.expect("data/ink-2.svg");
    kiosk.touch("What was lent, and what each costs if it is lost");
    assert!(kiosk.look().contains("W01"));
    kiosk.touch("Not shown");
    assert!(kiosk.look().contains("Awning"));
}

#[test]
fn of_a_record_that_was_changed_nothing_is_shown_but_why() {
    let disk = archive(12);
    let (path, mut bytes) =
        disk.files().into_iter().find(|(path, _)| path.to_string_lossy().ends_with("-000012.zip")).unwrap();
    let mut kiosk = open(Setup::new().disk(&disk));
    // It was good when the list was made.
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    disk.plant(&path, &bytes);
    let at = kiosk.reach("t2-e00f63-000012", 0);
    kiosk.click_at(at);
    kiosk.expect(&kiosk.say("office-bad"));
    kiosk.expect(&kiosk.say("office-broken-what"));
    assert!(!kiosk.look().contains("Hana") && !kiosk.shows(&kiosk.say("office-brief")));
    kiosk.click_id("office-export");
    assert!(!kiosk.shows(&kiosk.say("office-export-text")), "there is no text to copy");
}

#[test]
fn a_file_that_vanished_is_said_with_the_way_out() {
    let disk = archive(12);
    let (path, bytes) =
        disk.files().into_iter().find(|(path, _)| path.to_string_lossy().ends_with("-000012.zip")).unwrap();
    let mut kiosk = open(Setup::new().disk(&disk));
    disk.remove(&path).unwrap();
    let at = kiosk.reach("t2-e00f63-000012", 0);
    kiosk.click_at(at);
    assert!(kiosk.look().contains("cannot be opened"));
    disk.plant(&path, &bytes);
    kiosk.touch(&kiosk.say("office-again"));
    kiosk.expect(&kiosk.say("office-good"));
}

#[test]
fn a_record_and_its_text_are_copied_out_and_nothing_is_replaced() {
    let disk = archive(12);
    disk.plant(Path::new("/media/stick/holiday.txt"), b"mine");
    let mut kiosk = opened(&disk);
    kiosk.click_id("office-export");
    kiosk.touch("Copy to stick");
    kiosk.expect(&kiosk.say("office-export-done"));
    let stored = disk.read(Path::new("/media/stick/t2-e00f63-000012.zip"), 1 << 24).unwrap();
    let filed = Path::new(OFFICE).join("records/2026/05/t2-e00f63-000012.zip");
    assert_eq!(stored, disk.read(&filed, 1 << 24).unwrap());
    kiosk.touch(&kiosk.say("office-export-text"));
    kiosk.touch("Copy to stick");
    let text = disk.read(Path::new("/media/stick/t2-e00f63-000012.txt"), 1 << 24).unwrap();
    assert!(String::from_utf8(text).unwrap().contains("HANDOFF RECORD"));
    // Another file of that name stays.
    disk.plant(Path::new("/media/stick/t2-e00f63-000012.txt"), b"mine");
    kiosk.touch("Copy to stick");
    kiosk.expect(&kiosk.say("office-export-not"));
    assert_eq!(disk.read(Path::new("/media/stick/t2-e00f63-000012.txt"), 64).unwrap(), b"mine");
    kiosk.fill("office-folder", "/no/such/folder");
    kiosk.click_id("office-folder-go");
    assert!(kiosk.look().contains("/no/such/folder is not a folder"));
}

#[test]
fn records_are_taken_in_from_a_stick_and_what_is_bad_is_told_with_its_reason() {
    let disk = archive(12);
    let mut records = support::chain(14);
    let mut broken = records[13].zip.clone();
    let middle = broken.len() / 2;
    broken[middle] ^= 1;
    records[13].zip = broken;
    support::plant(&disk, "/media/stick/sendoff-records", &records);
    let mut kiosk = open(Setup::new().disk(&disk));
    kiosk.click_id("office-take");
    kiosk.touch("Take in from stick");
    kiosk.expect("One new record is filed.");
    kiosk.expect("12 were here already.");
    kiosk.expect("One was refused.");
    let seen = kiosk.look();
    assert!(seen.contains("quarantine/") && seen.contains("not a ZIP file"), "{:#?}", seen.words());
    kiosk.expect(&kiosk.say("office-take-receipt"));
    kiosk.click_id("office-back");
    assert_eq!(ids(&mut kiosk)[0], "000013", "it can be found at once");
    kiosk.expect("13 records");
}

#[test]
fn taking_in_that_cannot_begin_says_why() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    kiosk.click_id("office-take");
    kiosk.expect(&kiosk.say("office-places-none"));
    kiosk.fill("office-folder", "/no/such/stick");
    kiosk.click_id("office-folder-go");
    kiosk.expect(&kiosk.say("office-take-stopped"));
    assert!(kiosk.look().contains("/no/such/stick"));
    kiosk.click_id("office-back");
    assert_eq!(ids(&mut kiosk)[0], "000012");
}

/// Every word of the sealed text stands on the page, in its order.
#[test]
fn no_word_of_the_text_gets_lost_on_the_way_to_the_page() {
    use sendoff::kiosk::screen::office::sheet::{Line, sections};
    let ways = [
        Ways::default(),
        Ways { refused: Some("lp-supply-2"), left_out: Some("awning"), ..Ways::default() },
        Ways { language: "en-XA", ..Ways::default() },
    ];
    for ways in ways {
        let payload = Led::whole(ways).contents().unwrap().payload;
        let text = String::from_utf8(payload["data/record.txt"].clone()).unwrap();
        let plain = |text: &str| -> Vec<String> {
            let words =
                text.split_whitespace().filter(|w| !w.bytes().all(|b| b == b'.' || b == b'-' || b == b'='));
            words.map(str::to_owned).collect()
        };
        let mut drawn = String::new();
        for section in sections(&text) {
            drawn += &format!("{} {} ", section.title, section.notice);
            for line in &section.lines {
                drawn += &match line {
                    Line::Field(a, b) | Line::Row(_, a, b) | Line::Para(_, a, b) => format!("{a} {b} "),
                    Line::Gap => String::new(),
                };
            }
        }
        assert_eq!(plain(&drawn), plain(&text));
    }
}

#[test]
fn a_tablet_that_was_left_opens_the_office_to_staff_of_the_office_alone() {
    let disk = archive(12);
    for (path, bytes) in staffed().files() {
        disk.plant(&path, &bytes);
    }
    for (code, pin, stays) in [("JM", "4711", true), ("K4", "8080", false)] {
        let mut kiosk = Setup::new().disk(&disk).archive(OFFICE).boot();
        kiosk.click_id("yard-office");
        for digit in "4711".chars() {
            kiosk.click(&digit.to_string());
        }
        kiosk.click(&kiosk.say("gate-end"));
        assert!(matches!(kiosk.screen(), Screen::Office(_)));
        kiosk.setup.clock.pass(3600);
        kiosk.message(sendoff::kiosk::Message::WatchDue);
        assert!(!kiosk.look().contains("MW-"), "the cover hides it");
        kiosk.touch(&kiosk.say("cover-go-on"));
        kiosk.click(code);
        for digit in pin.chars() {
            kiosk.click(&digit.to_string());
        }
        kiosk.click(&kiosk.say("gate-end"));
        assert_eq!(matches!(kiosk.screen(), Screen::Office(_)), stays, "{code}");
    }
}

#[test]
fn pages_turn_by_touch_as_soon_as_it_is_known_how_many_rows_fit() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    kiosk.tick(std::time::Instant::now());
    let shown = ids(&mut kiosk);
    assert!(shown.len() < 12);
    assert!(!kiosk.shows(&kiosk.say("office-page-up")), "there is nothing above");
    kiosk.touch(&kiosk.say("office-page-down"));
    assert_eq!(ids(&mut kiosk)[0], *shown.last().unwrap(), "one row stays in sight");
    while kiosk.shows(&kiosk.say("office-page-down")) {
        kiosk.touch(&kiosk.say("office-page-down"));
    }
    assert_eq!(ids(&mut kiosk).last().unwrap(), "000001");
    kiosk.touch(&kiosk.say("office-page-up"));
    assert!(!ids(&mut kiosk).contains(&"000001".to_owned()));
}
