//! What a tablet on a counter must do beside its pages.

use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

use jiff::Timestamp;
use sendoff::kiosk::screen::{self, Screen, walk};
use sendoff::kiosk::ui::HoldEvent;
use sendoff::kiosk::watch::Shade;
use sendoff::kiosk::{Message, World, gate, scripts};
use sendoff::ports::Clock as _;
use sendoff::ports::fake::{MemoryDisk, SetClock};
use sendoff::script::Bundle;
use sendoff::tablet::room::{RESERVE, SPARE_BYTES};
use sendoff::tablet::{Tablet, TabletFault};
use sendoff::walk::Event;

use crate::kiosk_support::{HandClock, Kiosk, NOW, PSEUDO, SIZES, Setup, opened};
use crate::screen_closing::{closing, consent, to_consent, whole, write};

const DATA: &str = "/data";

fn minutes(count: u64) -> Duration {
    Duration::from_secs(count * 60)
}

fn now() -> Timestamp {
    NOW.parse().unwrap()
}

/// Lets nobody touch the tablet for so long; the timer runs off as it would.
fn leave_alone(kiosk: &mut Kiosk, time: Duration) {
    kiosk.setup.clock.0.pass(time);
    kiosk.message(Message::WatchDue);
}

/// Says that the step that is open was shown.
fn show(kiosk: &mut Kiosk) {
    kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::Onward)));
}

fn walking() -> Kiosk {
    Setup::new().resume("wren", &opened("en-US", "us"))
}

#[test]
fn it_dims_after_the_lots_time_and_a_touch_wakes_it_and_does_nothing_else() {
    let mut kiosk = walking();
    let button = kiosk.reach(&kiosk.say("emergency"), 0);
    leave_alone(&mut kiosk, minutes(2));
    assert_eq!(kiosk.app.shade(), Shade::Dim);
    kiosk.click_at(button);
    assert_eq!(kiosk.app.shade(), Shade::Awake);
    assert!(!kiosk.shows(&kiosk.say("emergency-first")), "the touch that wakes presses nothing");
    kiosk.click_at(button);
    kiosk.expect(&kiosk.say("emergency-first"));
}

#[test]
fn a_touch_alone_draws_nothing_anew_and_what_changes_the_page_draws_all() {
    let mut kiosk = walking();
    let ground = |kiosk: &Kiosk| kiosk.app.ground(&kiosk.app.toolkit_theme()).background_color;
    let mut last = ground(&kiosk);
    let mut anew = |kiosk: &Kiosk| std::mem::replace(&mut last, ground(kiosk)) != ground(kiosk);
    kiosk.message(Message::Touched);
    assert!(!anew(&kiosk), "a page that stays is drawn anew");
    kiosk.message(Message::TextSizeAsked);
    assert!(anew(&kiosk), "larger letters");
    leave_alone(&mut kiosk, minutes(2));
    assert!(anew(&kiosk), "a page that dims");
    kiosk.message(Message::Touched);
    assert!(anew(&kiosk), "a page that wakes");
}

#[test]
fn the_cover_shows_nothing_of_anybody() {
    let mut kiosk = walking();
    let title = kiosk.look().words().join(" ");
    leave_alone(&mut kiosk, minutes(10));
    assert_eq!(kiosk.app.shade(), Shade::Locked);
    let seen = kiosk.look().words().join(" ");
    assert!(!seen.contains("Marlow") && !seen.contains("Wren"), "{seen}");
    assert_ne!(seen, title);
    kiosk.click(&kiosk.say("cover-go-on"));
    assert_eq!(kiosk.app.shade(), Shade::Locked, "staff alone take it off");
    kiosk.expect(&kiosk.say("gate-no-pin"));
    pass_gate(&mut kiosk);
    assert_eq!(kiosk.look().words().join(" "), title, "the same page");
    kiosk.no_notice();
}

/// Holds on for as long as the gate wants while nobody has a PIN.
fn pass_gate(kiosk: &mut Kiosk) {
    kiosk.message(Message::Gate(gate::Message::Held(HoldEvent::Done)));
}

#[test]
fn a_renter_who_was_reading_takes_the_cover_off() {
    let mut kiosk = walking();
    for _ in 0..40 {
        if matches!(kiosk.screen(), Screen::Caution(_)) {
            break;
        }
        show(&mut kiosk);
    }
    leave_alone(&mut kiosk, minutes(10));
    assert_eq!(kiosk.app.shade(), Shade::Locked);
    kiosk.click(&kiosk.say("cover-go-on"));
    assert_eq!(kiosk.app.shade(), Shade::Awake);
    assert!(matches!(kiosk.screen(), Screen::Caution(_)));
}

#[test]
fn a_yard_without_names_needs_no_pin() {
    let mut kiosk = Setup::new().boot();
    leave_alone(&mut kiosk, minutes(10));
    kiosk.click(&kiosk.say("cover-go-on"));
    assert_eq!(kiosk.app.shade(), Shade::Awake);
}

#[test]
fn the_emergency_card_opens_over_the_cover() {
    let mut kiosk = walking();
    leave_alone(&mut kiosk, minutes(10));
    kiosk.click(&kiosk.say("emergency"));
    kiosk.expect(&kiosk.say("emergency-first"));
    assert_eq!(kiosk.app.shade(), Shade::Locked);
}

#[test]
fn what_was_typed_and_where_it_was_scrolled_is_there_after_the_cover() {
    let mut kiosk = Setup::new().begin("wren");
    kiosk.fill("opening-agent", "JM");
    leave_alone(&mut kiosk, minutes(10));
    pass_through(&mut kiosk);
    assert_eq!(kiosk.field("opening-agent"), "JM");
}

#[test]
fn a_signature_that_was_begun_is_there_after_the_cover() {
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    to_consent(&mut kiosk);
    consent(&mut kiosk);
    write(&mut kiosk);
    let page = kiosk.look().words().join(" ");
    leave_alone(&mut kiosk, minutes(10));
    assert!(!kiosk.look().words().join(" ").contains("Marlow"));
    pass_through(&mut kiosk);
    assert_eq!(kiosk.look().words().join(" "), page, "the same page, with the ink");
    kiosk.click("Done");
    kiosk.expect("Please pass the tablet to Bo Marlow.");
    kiosk.no_notice();
}

fn pass_through(kiosk: &mut Kiosk) {
    kiosk.click(&kiosk.say("cover-go-on"));
    pass_gate(kiosk);
    assert_eq!(kiosk.app.shade(), Shade::Awake);
}

#[test]
fn the_cover_fits_every_size_and_language() {
    for (size, staff) in SIZES.into_iter().flat_map(|size| [(size, "en-US"), (size, PSEUDO)]) {
        let mut kiosk = Setup::new().size(size).staff(staff).resume("wren", &opened("en-US", "us"));
        leave_alone(&mut kiosk, minutes(10));
        assert_eq!(kiosk.look().faults(), Vec::<String>::new(), "{size:?} {staff}");
    }
}

#[test]
fn a_lot_may_set_its_own_times_and_need_not() {
    let swapped = |to: &str| {
        let demo = Bundle::demo();
        let files = demo.names().map(|name| {
            let bytes = demo.get(name).unwrap();
            let text = String::from_utf8_lossy(bytes);
            let line = "    idle: (dim: \"2 min\", lock: \"10 min\"),\n";
            let bytes =
                if name.ends_with("lot.ron") { text.replace(line, to).into_bytes() } else { bytes.to_vec() };
            (name.to_owned(), Arc::from(bytes))
        });
        scripts(Bundle::new(files.collect(), false)).unwrap()
    };
    let own = swapped("    idle: (dim: \"20 s\", lock: \"1 min\"),\n");
    let mut kiosk = Setup::new().lot(own).boot();
    leave_alone(&mut kiosk, Duration::from_secs(20));
    assert_eq!(kiosk.app.shade(), Shade::Dim);
    leave_alone(&mut kiosk, Duration::from_secs(40));
    assert_eq!(kiosk.app.shade(), Shade::Locked);
    let mut kiosk = Setup::new().lot(swapped("")).boot();
    leave_alone(&mut kiosk, minutes(2));
    assert_eq!(kiosk.app.shade(), Shade::Dim);
}

#[test]
fn a_clock_that_is_set_in_mid_walk_is_told_and_kept() {
    let mut kiosk = walking();
    kiosk.setup.clock.0.pass(minutes(5));
    let right = kiosk.setup.clock.now();
    kiosk.setup.clock.0.set(now());
    kiosk.message(Message::WatchDue);
    let jumps: Vec<_> = kiosk.walk().clock_jumps().iter().map(|j| (j.value.from, j.value.to)).collect();
    assert_eq!(jumps, [(right, now())]);
    let told = kiosk.app.notice().unwrap().text.clone();
    assert!(told.contains("9:15") && told.contains("9:10"), "local time of the lot: {told}");
    // Once: the next event finds nothing new.
    kiosk.message(Message::NoticeClosed);
    kiosk.message(Message::WatchDue);
    assert_eq!(kiosk.walk().clock_jumps().len(), 1);
    kiosk.no_notice();
}

#[test]
fn an_event_finds_out_that_the_clock_was_set_before_it_is_kept() {
    let mut kiosk = walking();
    kiosk.setup.clock.0.set(now() + minutes(600));
    let before = kiosk.walk().events();
    show(&mut kiosk);
    assert_eq!(kiosk.walk().events(), before + 2, "the jump, then the step");
    assert_eq!(kiosk.walk().clock_jumps().len(), 1);
}

#[test]
fn a_walk_tells_when_the_clock_went_back_while_the_tablet_was_off() {
    let disk = MemoryDisk::new();
    let setup = Setup::new().disk(&disk);
    setup.clock.0.set(now() + minutes(60));
    drop(setup.resume("wren", &opened("en-US", "us")));
    let mut kiosk = Setup::new().disk(&disk).boot();
    let told = kiosk.look().words().join(" ");
    assert!(told.contains("Set the clock right"), "{told}");
    kiosk.click(&kiosk.say("yard-go-on"));
    let jump = kiosk.walk().clock_jumps()[0].value;
    assert_eq!((jump.from, jump.to), (now() + minutes(60), now()));
}

#[test]
fn another_time_zone_is_told_and_changes_nothing() {
    let setup = Setup::new();
    setup.clock.0.set_zone("America/Denver");
    let mut kiosk = setup.resume("wren", &opened("en-US", "us"));
    let events = kiosk.walk().events();
    kiosk.setup.clock.0.set_zone("Europe/Oslo");
    kiosk.message(Message::WatchDue);
    assert!(kiosk.app.notice().unwrap().text.contains("Europe/Oslo"));
    assert_eq!(kiosk.walk().events(), events);
}

#[test]
fn a_nearly_full_disk_is_told_at_the_yard_and_a_full_one_begins_no_walk() {
    let disk = MemoryDisk::new();
    let mut kiosk = Setup::new().disk(&disk).boot();
    kiosk.expect(&kiosk.say("yard-start"));
    disk.leave_room(SPARE_BYTES / 2);
    let mut kiosk = Setup::new().disk(&disk).boot();
    kiosk.expect(&kiosk.say("room-low"));
    kiosk.expect(&kiosk.say("yard-start"));
    disk.heal();
    disk.plant(&Path::new(DATA).join(RESERVE), b"");
    disk.leave_room(SPARE_BYTES / 2);
    let mut kiosk = Setup::new().disk(&disk).boot();
    kiosk.expect(&kiosk.say("room-full"));
    assert!(!kiosk.shows(&kiosk.say("yard-start")), "no control that cannot work");
    assert_eq!(kiosk.look().faults(), Vec::<String>::new());
}

#[test]
fn a_disk_that_fills_up_at_the_yard_refuses_the_walk_in_words() {
    let disk = MemoryDisk::new();
    let mut kiosk = Setup::new().disk(&disk).boot();
    disk.make_read_only();
    kiosk.click(&kiosk.say("yard-start"));
    assert!(kiosk.app.hall().is_none());
    let told = &kiosk.app.notice().unwrap().text;
    assert!(told.contains("read-only") && told.contains("another tablet"), "{told}");
}

#[test]
fn a_walk_goes_on_when_the_disk_fills_up_under_it() {
    let disk = MemoryDisk::new();
    let mut kiosk = Setup::new().disk(&disk).resume("wren", &opened("en-US", "us"));
    let before = kiosk.walk().events();
    disk.leave_room(10);
    show(&mut kiosk);
    assert_eq!(kiosk.walk().events(), before + 1);
    assert_eq!(kiosk.app.notice().unwrap().text, kiosk.say("room-freed"));
    assert!(!disk.files().iter().any(|(path, _)| path.ends_with(RESERVE)));
    // What was kept is on the disk, power cut or not.
    let after = disk.after_worst_power_cut();
    after.heal();
    let mut kiosk = Setup::new().disk(&after).boot();
    kiosk.click(&kiosk.say("yard-go-on"));
    assert_eq!(kiosk.walk().events(), before + 1);
}

#[test]
fn a_walk_stops_where_even_the_reserve_does_not_help() {
    let disk = MemoryDisk::new();
    let mut kiosk = Setup::new().disk(&disk).resume("wren", &opened("en-US", "us"));
    let before = kiosk.walk().events();
    disk.make_read_only();
    show(&mut kiosk);
    assert_eq!(kiosk.walk().events(), before);
    assert!(kiosk.app.notice().unwrap().stops);
}

#[test]
fn one_process_has_a_data_folder() {
    let dir = tempfile::tempdir().unwrap();
    let ports = sendoff::ports::system::ports();
    let first = World::open(ports.clone(), dir.path().to_owned(), true).unwrap();
    let second = World::open(ports.clone(), dir.path().to_owned(), true);
    let fault = second.err().unwrap();
    assert!(matches!(fault, TabletFault::InUse(_)));
    let words = fault.to_string();
    assert!(words.contains("another Sendoff is open") && words.contains("--data"), "{words}");
    drop(first);
    drop(World::open(ports, dir.path().to_owned(), true).unwrap());
}

#[test]
fn a_record_is_not_dated_back_without_a_word() {
    let disk = MemoryDisk::new();
    let clock = HandClock(SetClock::new(now() + minutes(60)));
    let setup = Setup { clock, ..Setup::new().disk(&disk) };
    let (tablet, lot) = (Tablet::open(&setup.ports(), Path::new(DATA)), crate::kiosk_support::lot());
    let tablet = tablet
        .unwrap()
        .unwrap_or_else(|| Tablet::first_start(&setup.ports(), Path::new(DATA), "t2").unwrap());
    let mut keeper = tablet.begin(&lot, "wren", false).unwrap();
    let say =
        |keeper: &mut sendoff::journal::Keeper, event| keeper.propose(&tablet.entry(&lot, event)).unwrap();
    for event in opened("en-US", "us") {
        say(&mut keeper, event);
    }
    say(&mut keeper, Event::HandoverStopped { reason: "Storm.".into(), by: sendoff::walk::Who::Agent });
    say(&mut keeper, Event::Signed { by: sendoff::walk::Who::Agent, ink: crate::record::support::ink() });
    drop(tablet.seal(&mut keeper, &lot).unwrap());
    // An hour back, and another walk.
    setup.clock.0.set(now());
    let kiosk = setup.begin("wren");
    let jump = kiosk.walk().clock_jumps()[0].value;
    assert_eq!((jump.from, jump.to), (now() + minutes(60), now()));
}
