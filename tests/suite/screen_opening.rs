//! The Opening, driven by what is on the screen: what is kept, what holds the way, what can be taken up again.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests may fail loudly"
)]

use jiff::civil::date;
use sendoff::kiosk::Message;
use sendoff::kiosk::screen::{self, Screen, yard};
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::walk::{Missing, Outcome, PersonId, Phase, Who};

use crate::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup, opening, party};

const ANN: PersonId = PersonId(1);
const STEPS: [&str; 5] = [
    "opening-step-trip",
    "opening-step-party",
    "opening-step-licenses",
    "opening-step-plan",
    "opening-step-ready",
];

fn at_opening(kiosk: &Kiosk) -> bool {
    matches!(kiosk.screen(), Screen::Opening(_))
}

fn person(kiosk: &mut Kiosk, place: usize, name: &str, age: &str) {
    kiosk.fill(&format!("opening-name-{place}"), name);
    kiosk.fill(&format!("opening-age-{place}"), age);
}

fn licence(kiosk: &mut Kiosk, place: usize, (year, month, day): (&str, &str, &str)) {
    let fields = [("class", "B"), ("country", "Norway"), ("year", year), ("month", month), ("day", day)];
    for (field, text) in fields {
        kiosk.fill(&format!("opening-{field}-{place}"), text);
    }
}

fn trip(kiosk: &mut Kiosk) {
    kiosk.fill("opening-agent", "JM");
    kiosk.click("Kilometers and liters");
    kiosk.fill("opening-booking", "Q-1183");
    kiosk.click("5");
    kiosk.click("Next");
}

/// A whole opening by clicks; the names as they are typed are cleaned.
#[test]
fn a_whole_opening_is_kept_as_it_was_said() {
    let mut kiosk = Setup::new().begin("wren");
    trip(&mut kiosk);
    kiosk.no_notice();
    person(&mut kiosk, 1, "  Ann   Marlow ", "41");
    kiosk.click("Drives");
    kiosk.click("One more person");
    person(&mut kiosk, 2, "Bo Marlow", "39");
    kiosk.click_nth("Drives", 1);
    kiosk.click("One more person");
    person(&mut kiosk, 3, "Cy", "9");
    kiosk.click("Next");
    licence(&mut kiosk, 1, ("2029", "5", "31"));
    licence(&mut kiosk, 2, ("28", "1", "15"));
    kiosk.click("Ann Marlow");
    // The first is the title of the license.
    kiosk.click_nth("Ann Marlow", 1);
    kiosk.click_nth("Bo Marlow", 1);
    kiosk.click("Next");
    kiosk.expect("How will the trip go?");
    kiosk.click("Next");
    kiosk.no_notice();
    assert!(!kiosk.shows("Start the walk"), "nobody said yet whether it is their first time");
    kiosk.click("First time");
    kiosk.click("Travel companion");
    kiosk.expect("Nothing is missing.");
    let before = kiosk.walk().events();
    kiosk.click("Start the walk");
    kiosk.no_notice();
    let walk = kiosk.walk();
    assert_eq!(walk.events(), before + 3, "first time, translator, opened");
    assert_eq!(walk.phase(), Phase::Walking);
    assert!(matches!(kiosk.screen(), Screen::Walk(_)));
    let walk = kiosk.walk();
    assert_eq!(walk.agent(), Some("JM"));
    let reader = &walk.reader().unwrap().value;
    assert_eq!((reader.language.as_str(), reader.measures.as_str()), ("en-US", "metric"));
    let booking = &walk.booking().unwrap().value;
    assert_eq!((booking.reference.as_str(), booking.nights), ("Q-1183", 5));
    // July 24, and five nights on; US mountain daylight time is UTC-6.
    assert_eq!(booking.due_back.local, date(2026, 7, 29).at(10, 0, 0, 0));
    assert_eq!(booking.due_back.offset_minutes, -360);
    assert_eq!(walk.people(), party());
    assert_eq!(walk.licence(PersonId(2)).unwrap().value.expiry, date(2028, 1, 15));
    assert_eq!(walk.present().unwrap().value, [PersonId(1), PersonId(2)]);
    assert!(walk.first_time().unwrap().value);
    assert_eq!(walk.translator().unwrap().value, "travel companion");
}

/// Page by page: what was shown as done is there after the power went, and the page after it is open.
#[test]
fn a_crash_loses_nothing_that_was_shown_as_done() {
    let setup = Setup::new();
    let mut kiosk = setup.clone().begin("wren");
    trip(&mut kiosk);
    let id = kiosk.walk().id().to_owned();
    let left = kiosk.setup.disk.after_worst_power_cut();
    drop(kiosk);
    let mut kiosk = setup.disk(&left).boot();
    kiosk.message(Message::Screen(screen::Message::Yard(yard::Message::WalkChosen(id))));
    kiosk.no_notice();
    kiosk.expect("Who travels?");
    kiosk.click("Trip");
    assert_eq!(kiosk.field("opening-agent"), "JM");
    assert_eq!(kiosk.field("opening-booking"), "Q-1183");
    kiosk.expect("5 nights");
    kiosk.expect("Wed, Jul\u{a0}29, 2026");
}

#[test]
fn pages_that_were_not_touched_propose_nothing() {
    let mut kiosk = Setup::new().resume("wren", &opening("en-US", "us"));
    let before = kiosk.walk().events();
    for page in ["Trip", "Party", "Licenses", "Plan", "Ready", "Trip"] {
        kiosk.click(page);
    }
    for _ in 0..4 {
        kiosk.click("Next");
    }
    kiosk.expect("Nothing is missing.");
    assert_eq!(kiosk.walk().events(), before);
    kiosk.no_notice();
}

#[test]
fn the_fields_are_filled_from_the_walk() {
    let mut kiosk = Setup::new().resume("wren", &opening("en-US", "us"));
    kiosk.expect("Ready for the walk?");
    kiosk.expect("5 nights, due back Wed, Jul\u{a0}29, 2026, 10:00\u{a0}AM. Booking Q-1183");
    kiosk.click("Party");
    assert_eq!(kiosk.field("opening-name-2"), "Bo Marlow");
    assert_eq!(kiosk.field("opening-age-3"), "9");
    kiosk.click("Licenses");
    let date = ["year", "month", "day"].map(|part| kiosk.field(&format!("opening-{part}-1")));
    assert_eq!(date, ["2029", "5", "31"]);
}

#[test]
fn what_is_typed_and_wrong_holds_the_way_onward_and_not_the_way_back() {
    let mut kiosk = Setup::new().resume("wren", &opening("en-US", "us")[..3]);
    kiosk.expect("Who travels?");
    person(&mut kiosk, 1, "Ann Marlow", "forty");
    kiosk.click("Next");
    kiosk.expect("The age is a number of years. Correct it.");
    assert!(kiosk.walk().people().is_empty());
    kiosk.click("Back");
    kiosk.expect("Which trip?");
    kiosk.click("Next");
    assert_eq!(kiosk.field("opening-age-1"), "forty", "going back keeps everything");
    kiosk.click("Next");
    kiosk.fill("opening-age-1", "40");
    assert!(!kiosk.shows("The age is a number of years. Correct it."), "corrected");
    kiosk.click("Next");
    kiosk.expect("Tick who drives. Drivers here are 25 or older. If nobody is, do not hand over.");
    kiosk.click("Drives");
    kiosk.click("Next");
    kiosk.expect("Licenses, and who is here");
    assert_eq!(kiosk.walk().people().len(), 1);
}

/// The lot hires to drivers of 25 and older: handbook A.04.
#[test]
fn a_younger_driver_is_told_and_cannot_be_set() {
    let mut kiosk = Setup::new().resume("wren", &opening("en-US", "us"));
    kiosk.click("Party");
    kiosk.fill("opening-age-2", "24");
    assert_eq!(kiosk.look().texts.iter().filter(|t| t.text == "Drives").count(), 1);
    assert_eq!(kiosk.look().texts.iter().filter(|t| t.text == "Drivers here are 25 or older").count(), 2);
    kiosk.click("Next");
    assert_eq!(kiosk.walk().drivers().map(|d| d.id).collect::<Vec<_>>(), [ANN]);
    kiosk.click("Party");
    kiosk.fill("opening-age-2", "25");
    assert_eq!(kiosk.look().texts.iter().filter(|t| t.text == "Drives").count(), 2);
}

/// Wren has six seats with a belt: handbook E.3.
#[test]
fn heads_are_counted_against_belts() {
    let mut kiosk = Setup::new().resume("wren", &opening("en-US", "us"));
    kiosk.click("Party");
    kiosk.expect("Everybody, children too. The unit has 6 seats with a belt.");
    let told = "More people than the 6 seats with a belt. Somebody must travel another way.";
    for place in 4..=7 {
        assert!(!kiosk.shows(told));
        kiosk.click("One more person");
        person(&mut kiosk, place, "Di", "12");
    }
    kiosk.expect(told);
}

#[test]
fn a_license_that_ended_is_refused_with_a_way_out() {
    let mut kiosk = Setup::new().resume("wren", &opening("en-US", "us")[..4]);
    kiosk.expect("Licenses, and who is here");
    licence(&mut kiosk, 1, ("2026", "7", "23"));
    kiosk.click("Next");
    kiosk.expect("It ended on Jul\u{a0}23, 2026. Another driver, another license, or do not hand over.");
    assert!(kiosk.walk().licence(ANN).is_none());
    licence(&mut kiosk, 1, ("2026", "7", "28"));
    kiosk.click("Next");
    kiosk.expect(
        "It ends on Jul\u{a0}28, 2026, before the unit is due back on Jul\u{a0}29, 2026. \
         Another driver, a shorter trip, or do not hand over.",
    );
    licence(&mut kiosk, 1, ("2026", "2", "30"));
    kiosk.click("Next");
    kiosk.expect("There is no such day. Look at the license again.");
    licence(&mut kiosk, 1, ("2026", "7", "29"));
    kiosk.click("Next");
    kiosk.click("Next");
    kiosk.expect("Ready for the walk?");
    // What is missing leads to where it can be made good.
    kiosk.click("The license of Bo Marlow");
    kiosk.expect("Licenses, and who is here");
    assert!(kiosk.walk().missing_to_open().contains(&Missing::Licence { person: PersonId(2) }));
}

#[test]
fn not_handed_over_is_kept_with_its_reason_and_leads_to_the_closing() {
    let mut kiosk = Setup::new().resume("wren", &opening("en-US", "us")[..4]);
    // Something wrong on the page does not hold it.
    kiosk.fill("opening-class-1", "B");
    kiosk.click("Do not hand over");
    kiosk.expect("Do not hand over?");
    kiosk.click("Stop the handoff");
    kiosk.expect("Say why.");
    kiosk.click("No valid license");
    assert_eq!(kiosk.field("opening-reason"), "No valid license");
    kiosk.fill("opening-reason", "License ended last week");
    kiosk.click("Ann Marlow");
    kiosk.click("Stop the handoff");
    kiosk.no_notice();
    let Outcome::NotHandedOver(stopped) = kiosk.walk().outcome() else { panic!("not stopped") };
    assert_eq!(stopped.value.reason, "License ended last week");
    assert_eq!(stopped.value.by, Who::Person(ANN));
    assert!(matches!(kiosk.screen(), Screen::Closing(_)));
}

/// A party whose only driver is too young can be refused, and is kept with who was to drive.
#[test]
fn a_party_without_a_driver_can_be_refused() {
    let mut kiosk = Setup::new().begin("wren");
    kiosk.click("Do not hand over");
    assert!(!kiosk.shows("Stop the handoff"), "nobody stops it yet");
    kiosk.click("Your staff code");
    kiosk.fill("opening-agent", "JM");
    kiosk.click("Next");
    person(&mut kiosk, 1, "Ann Marlow", "22");
    kiosk.click("Next");
    kiosk.expect("Who travels?");
    kiosk.click("Do not hand over");
    kiosk.click("Driver too young");
    kiosk.click("Stop the handoff");
    kiosk.expect("Say who was to drive.");
    // Who was to drive stands before who decided.
    kiosk.click("Ann Marlow");
    kiosk.click("Stop the handoff");
    kiosk.no_notice();
    assert_eq!(kiosk.walk().phase(), Phase::Stopped);
    assert!(kiosk.walk().people()[0].driver);
    assert!(matches!(kiosk.screen(), Screen::Closing(_)));
}

#[test]
fn to_the_yard_and_back_keeps_the_walk_and_asks_before_losing_anything() {
    let mut kiosk = Setup::new().begin("wren");
    let id = kiosk.walk().id().to_owned();
    kiosk.fill("opening-agent", "JM");
    kiosk.click("Go to the Yard");
    assert!(matches!(kiosk.screen(), Screen::Yard(_)));
    kiosk.message(Message::Screen(screen::Message::Yard(yard::Message::WalkChosen(id.clone()))));
    assert_eq!(kiosk.walk().agent(), Some("JM"));
    kiosk.fill("opening-booking", "Q-1183");
    kiosk.click("Go to the Yard");
    kiosk.expect("Something here is not saved");
    kiosk.click("Stay and correct it");
    assert!(at_opening(&kiosk));
    kiosk.expect("Say how many nights.");
    kiosk.click("Go to the Yard");
    kiosk.click("Leave without it");
    assert!(matches!(kiosk.screen(), Screen::Yard(_)));
}

#[test]
fn nights_set_the_day_and_both_can_be_moved() {
    let mut kiosk = Setup::new().begin("wren");
    assert!(!kiosk.shows("Due back"), "no day before the nights are said");
    kiosk.click("3");
    kiosk.expect("Mon, Jul\u{a0}27, 2026");
    kiosk.expect("10:00\u{a0}AM");
    kiosk.click("7");
    kiosk.expect("7 nights");
    kiosk.expect("Fri, Jul\u{a0}31, 2026");
}

/// With our own keys: a finger, a field, letters, and the field stays in view.
#[test]
fn a_name_is_typed_on_our_own_keys() {
    let mut kiosk = Setup::new().keys().resume("wren", &opening("en-US", "us"));
    kiosk.touch("Party");
    kiosk.click_id("opening-name-3");
    for key in ["y", "a"] {
        kiosk.touch(key);
    }
    assert_eq!(kiosk.field("opening-name-3"), "Cyya");
    kiosk.touch("Done");
    assert!(!kiosk.shows("q"), "the keys are gone");
    kiosk.touch("Next");
    assert_eq!(kiosk.walk().people()[2].name, "Cyya");
}

fn every_page(mut kiosk: Kiosk, what: &str) {
    let check = |kiosk: &mut Kiosk, page: &str| {
        kiosk.renders();
        let faults = kiosk.look().faults();
        assert!(faults.is_empty(), "{what}, {page}: {faults:#?}");
    };
    for page in STEPS {
        let step = kiosk.say(page);
        kiosk.click(&step);
        check(&mut kiosk, page);
    }
    let stop = kiosk.say("opening-stop");
    kiosk.click(&stop);
    check(&mut kiosk, "stop");
}

/// Nothing is cut off, squeezed or too small for a finger, empty or filled, in every size and theme and with 40 %
/// more length.
#[test]
fn every_page_fits_everywhere() {
    for (size, theme) in SIZES.into_iter().zip([Theme::Paper, Theme::Daylight, Theme::Dusk]) {
        for language in ["en-US", PSEUDO] {
            for filled in [false, true] {
                let setup = Setup::new().size(size).theme(theme).staff(language);
                let kiosk =
                    if filled { setup.resume("wren", &opening(language, "us")) } else { setup.begin("wren") };
                every_page(kiosk, &format!("{size:?} {language} filled {filled}"));
            }
        }
    }
    for (size, language) in [(SIZES[0], PSEUDO), (SIZES[1], PSEUDO), (SIZES[2], "en-US")] {
        let setup = Setup::new().size(size).staff(language).text(TextSize::Largest);
        every_page(setup.resume("wren", &opening(language, "us")), &format!("largest, {size:?} {language}"));
    }
}
