//! The plan of a trip, driven by what is on the screen: what is kept, what comes of it, where everything lies.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests may fail loudly"
)]

use std::sync::{Arc, OnceLock};

use jiff::civil::date;
use sendoff::figures::{HookUp, Person, Start, Tow, Trip, Use};
use sendoff::kiosk::scripts;
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::script::{Bundle, Scripts};
use sendoff::walk::{Event, LocalTime};

use crate::kiosk_support::{Kiosk, PSEUDO, Placed, SIZES, Setup, opening};

/// The demo lot, which has a trailer beside its motorhomes.
fn lot_with_heron() -> Arc<Scripts> {
    static LOT: OnceLock<Arc<Scripts>> = OnceLock::new();
    Arc::clone(LOT.get_or_init(|| scripts(Bundle::demo()).expect("no faults")))
}

/// [`opening`] for so many nights.
fn booked(language: &str, measures: &str, nights: u16) -> Vec<Event> {
    let due = date(2026, 7, 24).checked_add(jiff::Span::new().days(i64::from(nights))).unwrap();
    let due_back = LocalTime { local: due.at(10, 0, 0, 0), offset_minutes: -360 };
    let mut events = opening(language, measures);
    for event in &mut events {
        if let Event::BookingSet { nights: n, due_back: due, .. } = event {
            (*n, *due) = (nights, due_back.clone());
        }
    }
    events
}

fn at_plan(setup: Setup, unit: &str, events: &[Event]) -> Kiosk {
    let mut kiosk = setup.resume(unit, events);
    let step = kiosk.say("opening-step-plan");
    kiosk.click(&step);
    kiosk
}

/// What lies beside a question.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Beside {
    Less,
    More,
    /// What takes the answer back: the last of them.
    Back,
}
use Beside::{Back, Less, More};

fn press(kiosk: &mut Kiosk, question: &str, which: Beside, times: usize) {
    for _ in 0..times {
        // Figures may have the same name; the question stands before them.
        let at = kiosk.reach(question, 0);
        let seen = kiosk.look();
        let asked = seen.texts.iter().find(|t| t.text == question).unwrap();
        let row = |placed: &&Placed| {
            let near = placed.visible.is_some_and(|v| (v.center_y() - at.y).abs() < 30.0);
            placed.scroll == asked.scroll && near
        };
        let value = seen.texts.iter().filter(row).map(|t| t.bounds.center_x()).fold(0.0, f32::max);
        let (mut before, mut after): (Vec<_>, Vec<_>) =
            seen.pressable.iter().filter(row).partition(|p| p.bounds.center_x() < value);
        after.sort_by(|a, b| a.bounds.x.total_cmp(&b.bounds.x));
        let found = match which {
            Less => before.pop(),
            More => after.first().copied(),
            Back => after.pop(),
        };
        let at = found.unwrap_or_else(|| panic!("{question}: no {which:?}")).visible.unwrap().center();
        kiosk.click_at(at);
    }
}

fn people() -> Vec<Person> {
    [41, 39, 9].map(|age| Person { age, weight: None }).into()
}

/// Every control once; the event holds these values and nothing else.
#[test]
fn a_plan_by_clicks_is_kept_as_it_was_said() {
    let mut kiosk = at_plan(Setup::new(), "wren", &booked("en-US", "us", 5));
    kiosk.expect("The house battery runs out first: on Saturday.");
    // Of each word the first is for all nights, the others for one night each.
    kiosk.click_nth("Full", 0);
    kiosk.click_nth("Nothing", 3);
    kiosk.click_nth("Power, water", 5);
    kiosk.click("With care");
    press(&mut kiosk, "Bags and food", More, 4);
    press(&mut kiosk, "Coldest night", More, 1);
    press(&mut kiosk, "Coldest night", Less, 2);
    press(&mut kiosk, "Highest place", More, 8);
    press(&mut kiosk, "Generator a day", More, 2);
    press(&mut kiosk, "Propane", Less, 2);
    press(&mut kiosk, "Fuel", Less, 1);
    kiosk.expect("9,000\u{a0}ft");
    // Told and taken back: the lot's own word again.
    press(&mut kiosk, "Fresh water", Less, 3);
    kiosk.expect("5/8");
    press(&mut kiosk, "Fresh water", Back, 1);
    assert!(!kiosk.shows("5/8"));
    let before = kiosk.walk().events();
    kiosk.click("Next");
    kiosk.no_notice();
    let walk = kiosk.walk();
    assert_eq!(walk.events(), before + 1);
    let trip = Trip {
        nights: 5,
        people: people(),
        leaves: Some("2026-07-24".into()),
        hook_up: vec![HookUp::Full, HookUp::Full, HookUp::None, HookUp::Full, HookUp::Water],
        water: Use::Careful,
        highest: Some("9000 ft".parse().unwrap()),
        coldest: Some("30 °F".parse().unwrap()),
        bags: Some("200 lb".parse().unwrap()),
        generator_run: Some("2 h".parse().unwrap()),
        start: Start {
            propane: Some("3/4".parse().unwrap()),
            fuel: Some("7/8".parse().unwrap()),
            ..Start::default()
        },
        ..Trip::default()
    };
    assert_eq!(walk.planned().unwrap().value, trip);
    assert_eq!(walk.trip().unwrap(), trip);
    // The last page says it in a line.
    kiosk.expect("Ready for the walk?");
    assert!(kiosk.look().contains("4 nights with hook-ups, one without."), "{:#?}", kiosk.look().words());
    // It is there again, and left as it is says nothing new.
    kiosk.click("Plan");
    kiosk.expect("9,000\u{a0}ft");
    kiosk.click("Next");
    assert_eq!(kiosk.walk().events(), before + 1);
}

/// The figures follow the draft at once; the walk holds nothing of it before the page is left.
#[test]
fn the_answer_follows_every_press() {
    let mut kiosk = at_plan(Setup::new(), "wren", &booked("en-US", "us", 5));
    // Three people of 170 lb, 40 gal and a heater of 6 gal of water, kit of 168 lb: handbook FIG-02.
    kiosk.expect("1,757\u{a0}lb (796\u{a0}kg)");
    press(&mut kiosk, "Bags and food", More, 1);
    kiosk.expect("1,707\u{a0}lb (774\u{a0}kg)");
    assert!(kiosk.look().contains("fuel at the start is missing"));
    kiosk.click_nth("Full", 0);
    press(&mut kiosk, "Fuel", More, 1);
    kiosk.expect("Nothing runs out on this trip.");
    assert!(!kiosk.look().contains("fuel at the start is missing"));
    assert!(kiosk.walk().planned().is_none());
    // How it was worked out is one press away.
    assert!(!kiosk.look().contains("Source: 49 CFR 575.6"));
    kiosk.click("What you may still load");
    assert!(kiosk.look().contains("Source: 49 CFR 575.6"));
}

#[test]
fn going_on_without_a_word_proposes_nothing() {
    let mut kiosk = at_plan(Setup::new(), "wren", &booked("en-US", "us", 5));
    let before = kiosk.walk().events();
    kiosk.click("Next");
    kiosk.expect("Ready for the walk?");
    assert!(!kiosk.look().contains("hook-up"));
    kiosk.click("Start the walk");
    assert_eq!(kiosk.walk().events(), before + 1, "opened, and nothing else");
    assert!(kiosk.walk().planned().is_none());
}

/// Told and taken back is the same as never told.
#[test]
fn what_was_taken_back_proposes_nothing() {
    let mut kiosk = at_plan(Setup::new(), "wren", &booked("en-US", "us", 5));
    let before = kiosk.walk().events();
    press(&mut kiosk, "Bags and food", More, 1);
    press(&mut kiosk, "Bags and food", Less, 1);
    press(&mut kiosk, "Coldest night", More, 1);
    press(&mut kiosk, "Coldest night", Back, 1);
    kiosk.click("With care");
    kiosk.click("As at home");
    kiosk.click("Next");
    assert_eq!(kiosk.walk().events(), before);
}

#[test]
fn without_party_and_nights_it_says_what_comes_first() {
    let mut kiosk = Setup::new().begin("wren");
    kiosk.click("Plan");
    kiosk.expect("First enter");
    kiosk.click("The party");
    kiosk.expect("Who travels?");
    assert_eq!(kiosk.walk().planned(), None);
}

/// A plan follows a booking that is changed after it.
#[test]
fn a_longer_booking_has_more_nights_to_plan() {
    let mut kiosk = at_plan(Setup::new(), "wren", &booked("en-US", "us", 5));
    kiosk.click_nth("Power", 0);
    kiosk.click("Trip");
    kiosk.click("7");
    kiosk.click("Plan");
    let nothing = |kiosk: &mut Kiosk| kiosk.look().texts.iter().filter(|t| t.text == "Nothing").count();
    assert_eq!(nothing(&mut kiosk), 8, "all nights, and seven of them");
    kiosk.click("Ready");
    assert!(kiosk.look().contains("5 nights with hook-ups, 2 without."));
}

/// Fourteen nights: by week, and each night where it is asked for.
#[test]
fn many_nights_are_set_by_week_and_one_by_one() {
    let mut kiosk = at_plan(Setup::new(), "wren", &booked("en-US", "us", 14));
    kiosk.expect("Fri 24 to Thu 30");
    kiosk.expect("Fri 31 to Thu 6");
    kiosk.click_nth("Power", 2);
    kiosk.click_nth("Each night", 1);
    // All nights, the first week, the second week, then its nights.
    kiosk.click_nth("Full", 3);
    kiosk.click("The week as one");
    kiosk.click("Next");
    let mut nights = vec![HookUp::None; 7];
    nights.push(HookUp::Full);
    nights.extend([HookUp::Power; 6]);
    assert_eq!(kiosk.walk().planned().unwrap().value.hook_up, nights);
}

/// The renter's measures, whatever staff read in.
#[test]
fn it_is_asked_in_the_measures_of_the_renter() {
    let mut kiosk = at_plan(Setup::new(), "wren", &booked("en-US", "metric", 5));
    press(&mut kiosk, "Highest place", More, 3);
    press(&mut kiosk, "Coldest night", Less, 1);
    press(&mut kiosk, "Bags and food", More, 2);
    kiosk.click("Next");
    let trip = &kiosk.walk().planned().unwrap().value;
    // The lot lies at 5,200 ft, 1,585 m.
    assert_eq!(trip.highest.unwrap().to_string(), "1800 m");
    assert_eq!(trip.coldest.unwrap().to_string(), "2 °C");
    assert_eq!(trip.bags.unwrap().to_string(), "40 kg");
}

fn heron(setup: Setup, nights: u16) -> Kiosk {
    let language = setup.staff.clone();
    at_plan(setup.lot(lot_with_heron()), "heron", &booked(&language, "us", nights))
}

/// A trailer asks what pulls it; what cannot be holds the way onward and not the way back.
#[test]
fn a_trailer_asks_for_its_tow_vehicle() {
    let mut kiosk = heron(Setup::new(), 5);
    for absent in ["Highest place", "Generator a day", "Driving a day", "Fuel", "Sun a day"] {
        assert!(!kiosk.shows(absent), "{absent}");
    }
    kiosk.expect("cannot be computed: payload on its sticker is missing");
    kiosk.fill("opening-tow-payload", "1437");
    kiosk.fill("opening-tow-rating", "9x00");
    kiosk.fill("opening-tow-length", "19");
    kiosk.click("Next");
    kiosk.expect("That is no number. Use digits alone.");
    kiosk.expect("That cannot be. It is from 90 to 400 inches.");
    assert!(kiosk.walk().planned().is_none());
    kiosk.fill("opening-tow-rating", "9500");
    assert!(!kiosk.shows("That is no number. Use digits alone."), "corrected");
    kiosk.fill("opening-tow-length", "232");
    kiosk.fill("opening-tow-mount", "12");
    press(&mut kiosk, "Bags in the vehicle", More, 2);
    // 232 in, 12 in and Heron's 332 in are 576 in; meters are rounded up.
    kiosk.expect("48\u{a0}ft\u{a0}0\u{a0}in (14.64\u{a0}m)");
    assert!(kiosk.look().contains("this vehicle must not pull it"), "a payload of 1,437 lb is too little");
    kiosk.click("Next");
    kiosk.no_notice();
    let tow = Tow {
        payload: Some("1437 lb".parse().unwrap()),
        rating: Some("9500 lb".parse().unwrap()),
        length: Some("232 in".parse().unwrap()),
        ball_mount: Some("12 in".parse().unwrap()),
        bags: Some("100 lb".parse().unwrap()),
    };
    let planned = &kiosk.walk().planned().unwrap().value;
    assert_eq!(planned, &Trip { tow: Some(tow), ..booked_trip() });
}

fn booked_trip() -> Trip {
    Trip { nights: 5, people: people(), leaves: Some("2026-07-24".into()), ..Trip::default() }
}

/// To the Yard with a fault: what is right is kept, what is wrong is asked about first.
#[test]
fn leaving_keeps_what_is_right() {
    let mut kiosk = heron(Setup::new(), 5);
    kiosk.fill("opening-tow-payload", "1437");
    kiosk.fill("opening-tow-rating", "1");
    kiosk.click("Go to the Yard");
    kiosk.expect("Something here is not saved");
    let id = kiosk.walk().id().to_owned();
    kiosk.click("Leave without it");
    let yard = sendoff::kiosk::screen::yard::Message::WalkChosen(id);
    kiosk.message(sendoff::kiosk::Message::Screen(sendoff::kiosk::screen::Message::Yard(yard)));
    let tow = kiosk.walk().planned().unwrap().value.tow.unwrap();
    assert_eq!((tow.payload.unwrap().to_string(), tow.rating), ("1437 lb".to_owned(), None));
}

/// Nothing is cut off, squeezed, laid over other text or too small for a finger: every size, every text size, with
/// 40 % more length, five and fourteen nights, told and untold, with and without a hitch.
#[test]
fn the_plan_fits_everywhere() {
    for (n, size) in SIZES.into_iter().enumerate() {
        for text in [TextSize::Usual, TextSize::Large, TextSize::Largest] {
            for language in ["en-US", PSEUDO] {
                let theme = [Theme::Paper, Theme::Daylight, Theme::Dusk][n];
                let setup = || Setup::new().size(size).text(text).theme(theme).staff(language);
                let what = format!("{size:?} {text:?} {language}");
                let mut kiosk = at_plan(setup(), "wren", &booked(language, "us", 14));
                fits(&mut kiosk, &what);
                let each = kiosk.say("opening-plan-week-open");
                kiosk.click(&each);
                kiosk.renders();
                fits(&mut kiosk, &format!("{what}, a week open"));
                let next = kiosk.say("opening-next");
                let mut kiosk = heron(setup(), 5);
                kiosk.fill("opening-tow-payload", "7");
                kiosk.click(&next);
                fits(&mut kiosk, &format!("{what}, trailer with a fault"));
            }
        }
    }
}

fn fits(kiosk: &mut Kiosk, what: &str) {
    let faults = kiosk.look().faults();
    assert!(faults.is_empty(), "{what}: {faults:#?}");
}
