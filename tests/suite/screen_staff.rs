//! The gate, by pointer, finger and keyboard: what opens it, what does not, and that there is no way round it.

use std::path::Path;
use std::time::{Duration, Instant};

use iced::keyboard::{Key, key::Named};
use sendoff::kiosk::Message;
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::ports::fake::MemoryDisk;
use sendoff::words::Args;

use crate::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup};
use crate::staff::two;

/// A disk whose tablet knows `JM` of the office, PIN 4711, and the agent `K4`, PIN 8080.
pub fn staffed() -> MemoryDisk {
    let disk = MemoryDisk::new();
    disk.plant(Path::new("/data/staff.ron"), two().as_bytes());
    disk
}

fn counted(kiosk: &Kiosk, key: &str, count: u64) -> String {
    let lot = &kiosk.setup.lot;
    let reader = sendoff::kiosk::staff_reader(lot);
    lot.words.say(&reader, key, &Args::new().number("count", count))
}

/// The gate that the window's wish to close leads to.
fn closing(setup: Setup) -> Kiosk {
    let mut kiosk = setup.boot();
    kiosk.message(Message::CloseAsked);
    kiosk.expect(&kiosk.say("gate-close"));
    kiosk
}

fn type_in(kiosk: &mut Kiosk, digits: &str) {
    for digit in digits.chars() {
        kiosk.click(&digit.to_string());
    }
}

/// Lets the hold that has the finger or the key run for so long.
fn run_on(kiosk: &mut Kiosk, from: Instant, milliseconds: u64) -> Instant {
    let mut now = from;
    for _ in 0..milliseconds / 50 {
        now += Duration::from_millis(50);
        kiosk.tick(now);
    }
    now
}

#[test]
fn without_a_pin_a_hold_of_three_seconds_closes_and_says_that_none_is_set() {
    let mut kiosk = closing(Setup::new());
    kiosk.expect(&kiosk.say("gate-no-pin"));
    let now = Instant::now();
    kiosk.tick(now);
    let at = kiosk.reach(&kiosk.say("gate-hold"), 0);
    kiosk.finger_down(at);
    let now = run_on(&mut kiosk, now, 2500);
    kiosk.finger_up(at);
    assert!(!kiosk.app.exits(), "too short");
    kiosk.expect(&kiosk.say("gate-hold-longer"));
    let at = kiosk.reach(&kiosk.say("gate-hold-longer"), 0);
    kiosk.finger_down(at);
    run_on(&mut kiosk, now, 3200);
    assert!(kiosk.app.exits());
}

#[test]
fn with_a_pin_there_is_no_hold_and_nothing_else_closes() {
    let mut kiosk = closing(Setup::new().disk(&staffed()));
    assert!(!kiosk.shows(&kiosk.say("gate-hold")));
    kiosk.message(Message::Gate(sendoff::kiosk::gate::Message::Held(sendoff::kiosk::ui::HoldEvent::Done)));
    // Asking again and again is no way out either.
    kiosk.message(Message::CloseAsked);
    kiosk.key(Key::Named(Named::Escape), None);
    assert!(!kiosk.app.exits());
    assert!(kiosk.app.gate().is_none(), "Escape goes back to where one was");
    assert!(!kiosk.shows(&kiosk.say("gate-close")));
}

#[test]
fn the_right_pin_closes_by_pointer() {
    let mut kiosk = closing(Setup::new().disk(&staffed()));
    kiosk.click("K4");
    type_in(&mut kiosk, "8081");
    kiosk.click(&kiosk.say("gate-end"));
    kiosk.expect(&kiosk.say("gate-wrong"));
    assert!(!kiosk.app.exits());
    // The PIN of somebody else is wrong as well.
    type_in(&mut kiosk, "4711");
    kiosk.click(&kiosk.say("gate-end"));
    kiosk.expect(&kiosk.say("gate-wrong"));
    type_in(&mut kiosk, "8080");
    kiosk.click(&kiosk.say("gate-end"));
    assert!(kiosk.app.exits());
}

#[test]
fn the_right_pin_closes_by_finger() {
    let mut kiosk = closing(Setup::new().disk(&staffed()));
    kiosk.touch("JM");
    for digit in ["4", "7", "1", "1"] {
        kiosk.touch(digit);
    }
    kiosk.touch(&kiosk.say("gate-end"));
    assert!(kiosk.app.exits());
}

#[test]
fn the_right_pin_closes_by_keyboard() {
    let mut kiosk = closing(Setup::new().disk(&staffed()));
    kiosk.tick(Instant::now());
    // Tab to the second code, and Enter.
    kiosk.key(Key::Named(Named::Tab), None);
    kiosk.key(Key::Named(Named::Tab), None);
    kiosk.tick(Instant::now());
    kiosk.key(Key::Named(Named::Enter), None);
    let type_key = |kiosk: &mut Kiosk, letter: &str| kiosk.key(Key::Character(letter.into()), Some(letter));
    for letter in ["9", "x", "8"] {
        type_key(&mut kiosk, letter);
    }
    for _ in 0..3 {
        kiosk.key(Key::Named(Named::Backspace), None);
    }
    for letter in ["8", "0", "8"] {
        type_key(&mut kiosk, letter);
    }
    kiosk.key(Key::Named(Named::Enter), None);
    assert!(!kiosk.app.exits(), "three digits are no PIN");
    type_key(&mut kiosk, "0");
    kiosk.click(&kiosk.say("emergency"));
    kiosk.expect(&kiosk.say("emergency-title"));
    kiosk.click(&kiosk.say("emergency-close"));
    kiosk.expect(&kiosk.say("gate-close"));
    kiosk.key(Key::Named(Named::Enter), None);
    assert!(kiosk.app.exits());
}

#[test]
fn a_wait_is_counted_down_in_words_and_outlives_a_restart() {
    let setup = Setup::new().disk(&staffed());
    let mut kiosk = closing(setup.clone());
    kiosk.click("K4");
    for _ in 0..3 {
        type_in(&mut kiosk, "0000");
        kiosk.click(&kiosk.say("gate-end"));
    }
    let wait = |kiosk: &Kiosk, seconds| counted(kiosk, "gate-wait", seconds);
    kiosk.expect(&wait(&kiosk, 5));
    assert!(!kiosk.shows("7"), "no keys while one waits");
    kiosk.setup.clock.pass(2);
    kiosk.message(Message::Gate(sendoff::kiosk::gate::Message::Ticked));
    kiosk.expect(&wait(&kiosk, 3));
    let mut kiosk = closing(setup.clone());
    kiosk.click("K4");
    kiosk.expect(&wait(&kiosk, 3));
    // The clock is set back: the whole wait, which ends.
    setup.clock.pass(-3600);
    kiosk.message(Message::Gate(sendoff::kiosk::gate::Message::Ticked));
    kiosk.expect(&wait(&kiosk, 5));
    setup.clock.pass(5);
    kiosk.message(Message::Gate(sendoff::kiosk::gate::Message::Ticked));
    type_in(&mut kiosk, "8080");
    kiosk.click(&kiosk.say("gate-end"));
    assert!(kiosk.app.exits());
}

#[test]
fn a_file_of_pins_that_cannot_be_read_is_told_and_opens_nothing() {
    let disk = MemoryDisk::new();
    disk.plant(Path::new("/data/staff.ron"), b"(people: [");
    let mut kiosk = Setup::new().disk(&disk).boot();
    let notice = kiosk.app.notice().expect("staff are told").text.clone();
    assert!(notice.contains("staff.ron:1:"), "{notice}");
    kiosk.message(Message::CloseAsked);
    kiosk.expect(&kiosk.say("gate-shut"));
    assert!(!kiosk.shows(&kiosk.say("gate-hold")) && !kiosk.shows("7"));
    kiosk.message(Message::Gate(sendoff::kiosk::gate::Message::Held(sendoff::kiosk::ui::HoldEvent::Done)));
    assert!(!kiosk.app.exits());
    kiosk.click(&kiosk.say("gate-back"));
    assert!(kiosk.app.gate().is_none());
}

/// Every state of the gate, in three sizes, three text sizes and both languages.
#[test]
fn the_gate_fits_everywhere() {
    let mut faults = Vec::new();
    for size in SIZES {
        for text in [TextSize::Usual, TextSize::Large, TextSize::Largest] {
            for language in ["en-US", PSEUDO] {
                let setup = || Setup::new().size(size).text(text).staff(language).theme(Theme::Daylight);
                let mut look = |kiosk: &mut Kiosk, state: &str| {
                    let found = kiosk.look().faults();
                    faults.extend(
                        found.into_iter().map(|f| format!("{size:?} {text:?} {language} {state}: {f}")),
                    );
                };
                let mut kiosk = closing(setup());
                look(&mut kiosk, "hold");
                let mut kiosk = closing(setup().disk(&staffed()));
                look(&mut kiosk, "who");
                kiosk.click("K4");
                type_in(&mut kiosk, "0000");
                look(&mut kiosk, "pad");
                kiosk.click(&kiosk.say("gate-end"));
                look(&mut kiosk, "wrong");
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

/// Frames for eyes: `SENDOFF_FRAMES=DIR`.
#[test]
fn frames_of_the_gate() {
    let Some(dir) = std::env::var_os("SENDOFF_FRAMES").map(|d| d.to_string_lossy().into_owned()) else {
        return;
    };
    for (name, size) in [("land", SIZES[0]), ("large", SIZES[1]), ("port", SIZES[2])] {
        closing(Setup::new().size(size)).save(&format!("{dir}/gate-hold-{name}.png"));
        let mut kiosk = closing(Setup::new().size(size).disk(&staffed()));
        kiosk.click("K4");
        type_in(&mut kiosk, "00000");
        kiosk.save(&format!("{dir}/gate-pad-{name}.png"));
        kiosk.click(&kiosk.say("gate-end"));
        kiosk.save(&format!("{dir}/gate-wrong-{name}.png"));
    }
}

/// Types a PIN into the pad that is open, and ends it with these words.
fn pin_in(kiosk: &mut Kiosk, digits: &str, end: &str) {
    type_in(kiosk, digits);
    kiosk.click(&kiosk.say(end));
}

/// Says at the gate who one is.
fn pass(kiosk: &mut Kiosk, code: &str, digits: &str) {
    kiosk.click(code);
    pin_in(kiosk, digits, "gate-end");
}

fn hold_gate(kiosk: &mut Kiosk) {
    let now = Instant::now();
    kiosk.tick(now);
    let at = kiosk.reach(&kiosk.say("gate-hold"), 0);
    kiosk.finger_down(at);
    run_on(kiosk, now, 3200);
    kiosk.finger_up(at);
}

fn staff_file(kiosk: &Kiosk) -> String {
    let files = kiosk.setup.disk.files();
    let file = files.into_iter().find(|(path, _)| path == Path::new("/data/staff.ron"));
    file.map_or_else(String::new, |(_, bytes)| String::from_utf8(bytes).unwrap())
}

#[test]
fn the_first_person_is_added_from_the_yard_and_from_then_on_a_pin_is_asked() {
    let mut kiosk = Setup::new().boot();
    kiosk.expect(&kiosk.say("yard-no-pin"));
    kiosk.click_id("yard-staff");
    hold_gate(&mut kiosk);
    kiosk.expect(&kiosk.say("staff-first-title"));
    kiosk.fill("staff-code", "J M");
    kiosk.click(&kiosk.say("staff-code-next"));
    kiosk.expect(&kiosk.say("staff-code-form"));
    kiosk.fill("staff-code", "JM");
    kiosk.click(&kiosk.say("staff-code-next"));
    pin_in(&mut kiosk, "4711", "staff-pin-next");
    pin_in(&mut kiosk, "4712", "staff-pin-keep");
    kiosk.expect(&kiosk.say("staff-pin-differs"));
    assert_eq!(staff_file(&kiosk), "");
    pin_in(&mut kiosk, "4711", "staff-pin-next");
    pin_in(&mut kiosk, "4711", "staff-pin-keep");
    kiosk.no_notice();
    assert!(staff_file(&kiosk).contains("\"JM\", role: Office"), "{}", staff_file(&kiosk));
    kiosk.expect(&kiosk.say("staff-own-pin"));
    kiosk.click(&kiosk.say("staff-to-yard"));
    kiosk.expect(&kiosk.say("yard-nobody-on"));
    kiosk.click_id("yard-staff");
    assert!(!kiosk.shows(&kiosk.say("gate-hold")));
    // The only one there is need not be chosen.
    pin_in(&mut kiosk, "4711", "gate-end");
    kiosk.expect(&kiosk.say("staff-title"));
}

#[test]
fn the_office_adds_and_removes_and_an_agent_changes_their_own_pin_alone() {
    let mut kiosk = Setup::new().disk(&staffed()).boot();
    kiosk.click_id("yard-staff");
    pass(&mut kiosk, "K4", "8080");
    kiosk.expect(&kiosk.say("staff-own-pin"));
    assert!(!kiosk.shows(&kiosk.say("staff-new-pin")) && !kiosk.shows(&kiosk.say("staff-remove")));
    assert!(!kiosk.shows(&kiosk.say("staff-add")));
    kiosk.click(&kiosk.say("staff-own-pin"));
    pin_in(&mut kiosk, "90210", "staff-pin-next");
    pin_in(&mut kiosk, "90210", "staff-pin-keep");
    kiosk.click(&kiosk.say("staff-to-yard"));
    kiosk.click_id("yard-staff");
    pass(&mut kiosk, "K4", "90210");
    kiosk.click(&kiosk.say("staff-to-yard"));

    kiosk.click_id("yard-staff");
    pass(&mut kiosk, "JM", "4711");
    // The last of the office cannot go while K4 is here.
    let removes = kiosk.look().texts.iter().filter(|t| t.text == kiosk.say("staff-remove")).count();
    assert_eq!(removes, 1);
    kiosk.click_id("staff-add");
    kiosk.fill("staff-code", "jm");
    kiosk.click(&kiosk.say("staff-code-next"));
    kiosk.expect(&kiosk.say("staff-code-taken"));
    kiosk.fill("staff-code", "P2");
    kiosk.click(&kiosk.say("staff-code-next"));
    pin_in(&mut kiosk, "1122", "staff-pin-next");
    pin_in(&mut kiosk, "1122", "staff-pin-keep");
    assert!(staff_file(&kiosk).contains("\"P2\", role: Agent"));
    kiosk.click_nth(&kiosk.say("staff-remove"), 1);
    kiosk.click(&kiosk.say("staff-remove-yes"));
    assert!(!staff_file(&kiosk).contains("P2"));
    kiosk.no_notice();
}

#[test]
fn whoever_signs_on_leads_and_another_takes_over_with_a_pin_of_their_own() {
    let mut kiosk = Setup::new().disk(&staffed()).boot();
    kiosk.click_nth(&kiosk.say("yard-start"), 0);
    kiosk.expect(&kiosk.say("gate-begin"));
    assert!(kiosk.app.hall().is_none(), "nobody leads yet");
    pass(&mut kiosk, "K4", "8080");
    assert_eq!(kiosk.walk().agent(), Some("K4"));
    assert!(kiosk.look().focusable.iter().all(|(id, _)| id != "opening-agent"), "no code is typed");
    kiosk.expect("K4");
    kiosk.click_id("opening-agent-other");
    pass(&mut kiosk, "JM", "4711");
    assert_eq!(kiosk.walk().agent(), Some("JM"));
    kiosk.click(&kiosk.say("opening-yard"));
    // JM is on duty and leads it: no PIN is asked again.
    kiosk.click(&kiosk.say("yard-go-on"));
    assert_eq!(kiosk.walk().agents().len(), 2);
    kiosk.click(&kiosk.say("opening-yard"));
    kiosk.click_id("yard-sign-off");
    kiosk.click(&kiosk.say("yard-go-on"));
    kiosk.expect(&kiosk.say("gate-go-on"));
    assert!(kiosk.app.hall().is_none());
    pass(&mut kiosk, "K4", "8080");
    let codes: Vec<String> = kiosk.walk().agents().iter().map(|a| a.value.clone()).collect();
    assert_eq!(codes, ["K4", "JM", "K4"]);
    kiosk.no_notice();
}

/// After a power cut nobody is on duty, and the walk knows who led it.
#[test]
fn two_walks_are_open_at_once_and_each_goes_on_where_it_stood() {
    let disk = staffed();
    let mut kiosk = Setup::new().disk(&disk).boot();
    kiosk.click_id("yard-sign-on");
    pass(&mut kiosk, "JM", "4711");
    kiosk.click_nth(&kiosk.say("yard-start"), 0);
    let first = kiosk.walk().id().to_owned();
    kiosk.fill("opening-booking", "Q-1");
    kiosk.click("5");
    kiosk.click(&kiosk.say("opening-yard"));
    kiosk.setup.clock.pass(60);
    kiosk.click_nth(&kiosk.say("yard-start"), 0);
    let second = kiosk.walk().id().to_owned();
    kiosk.fill("opening-booking", "Q-2");
    kiosk.click("7");
    kiosk.click(&kiosk.say("opening-yard"));
    assert_ne!(first, second);

    let disk = disk.after_worst_power_cut();
    let clock = kiosk.setup.clock.clone();
    let mut kiosk = Setup { clock, ..Setup::new() }.disk(&disk).boot();
    kiosk.expect(&kiosk.say("yard-nobody-on"));
    let reference = |kiosk: &Kiosk| kiosk.walk().booking().unwrap().value.reference.clone();
    // The one that was worked on last stands first.
    kiosk.click_nth(&kiosk.say("yard-go-on"), 0);
    pass(&mut kiosk, "JM", "4711");
    assert_eq!((kiosk.walk().id(), reference(&kiosk).as_str()), (second.as_str(), "Q-2"));
    kiosk.click(&kiosk.say("opening-yard"));
    kiosk.click_nth(&kiosk.say("yard-go-on"), 1);
    assert_eq!((kiosk.walk().id(), reference(&kiosk).as_str()), (first.as_str(), "Q-1"));
    kiosk.setup.clock.pass(600);
    kiosk.fill("opening-booking", "Q-1b");
    kiosk.click(&kiosk.say("opening-yard"));
    kiosk.click_nth(&kiosk.say("yard-go-on"), 1);
    assert_eq!((kiosk.walk().id(), reference(&kiosk).as_str()), (second.as_str(), "Q-2"));
    kiosk.no_notice();
}

/// The Yard with its people and every page of *Staff*.
#[test]
fn the_staff_pages_fit_everywhere() {
    let mut faults = Vec::new();
    for size in SIZES {
        for text in [TextSize::Usual, TextSize::Large, TextSize::Largest] {
            for language in ["en-US", PSEUDO] {
                let setup = || Setup::new().size(size).text(text).staff(language);
                let mut look = |kiosk: &mut Kiosk, state: &str| {
                    let found = kiosk.look().faults();
                    faults.extend(
                        found.into_iter().map(|f| format!("{size:?} {text:?} {language} {state}: {f}")),
                    );
                };
                let mut kiosk = setup().boot();
                look(&mut kiosk, "yard without a pin");
                let mut kiosk = setup().disk(&staffed()).boot();
                look(&mut kiosk, "yard");
                kiosk.click_id("yard-staff");
                pass(&mut kiosk, "JM", "4711");
                look(&mut kiosk, "list");
                kiosk.click_id("staff-add");
                kiosk.fill("staff-code", "jm");
                kiosk.click(&kiosk.say("staff-code-next"));
                look(&mut kiosk, "code");
                kiosk.fill("staff-code", "P2");
                kiosk.click(&kiosk.say("staff-code-next"));
                pin_in(&mut kiosk, "1234", "staff-pin-next");
                pin_in(&mut kiosk, "1235", "staff-pin-keep");
                look(&mut kiosk, "pin");
                kiosk.click_id("staff-back");
                kiosk.click(&kiosk.say("staff-remove"));
                look(&mut kiosk, "remove");
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn frames_of_staff() {
    let Some(dir) = std::env::var_os("SENDOFF_FRAMES").map(|d| d.to_string_lossy().into_owned()) else {
        return;
    };
    for (name, size) in [("land", SIZES[0]), ("large", SIZES[1]), ("port", SIZES[2])] {
        let mut kiosk = Setup::new().size(size).disk(&staffed()).boot();
        kiosk.click_id("yard-sign-on");
        pass(&mut kiosk, "JM", "4711");
        kiosk.save(&format!("{dir}/yard-{name}.png"));
        kiosk.click_id("yard-staff");
        pass(&mut kiosk, "JM", "4711");
        kiosk.save(&format!("{dir}/staff-list-{name}.png"));
        kiosk.click_id("staff-add");
        kiosk.save(&format!("{dir}/staff-add-{name}.png"));
        kiosk.fill("staff-code", "P2");
        kiosk.click(&kiosk.say("staff-code-next"));
        pin_in(&mut kiosk, "1234", "staff-pin-next");
        type_in(&mut kiosk, "123");
        kiosk.save(&format!("{dir}/staff-pin-{name}.png"));
    }
}

#[test]
fn without_a_pin_the_hold_closes_by_keyboard_too() {
    let mut kiosk = closing(Setup::new());
    let now = Instant::now();
    kiosk.tick(now);
    kiosk.key(Key::Named(Named::Tab), None);
    kiosk.tick(now);
    kiosk.key(Key::Named(Named::Space), None);
    let now = run_on(&mut kiosk, now, 2800);
    assert!(!kiosk.app.exits());
    run_on(&mut kiosk, now, 400);
    assert!(kiosk.app.exits());
}
