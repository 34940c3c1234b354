//! Figures on the Walk, through the kiosk's own door: cards on their step, and how each is known.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "tests may fail loudly")]

use iced::keyboard::{Key, key::Named};
use sendoff::figures::{Cord, On, Slope, Trip, Wind};
use sendoff::kiosk;
use sendoff::kiosk::screen;
use sendoff::kiosk::screen::walk::{Message, SheetKind};
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::walk::{Event, NotRead};

use super::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup, opened};

/// Every step of the Wren with a figure that shows, and the figures that do.
const SHOWN: [(&str, &[&str]); 16] = [
    ("storage-bays", &["payload_left"]),
    ("lp-supply", &["propane_days", "propane_hours"]),
    ("tires-pressure", &["tire_add_air", "tire_flat"]),
    ("grey-black-dump", &["toilet_days", "grey_days"]),
    ("fresh-tank-fill", &["fresh_days", "fill_minutes", "water_weight"]),
    ("shore-cord-adapters", &["loads_fit"]),
    ("generator-care", &["generator_dial", "generator_watts"]),
    ("house-battery-switch", &["battery_nights", "state_of_charge"]),
    ("generator-run-switch", &["generator_watts", "loads_fit"]),
    ("water-pump", &["fresh_days"]),
    ("water-heater-tank-switch", &["heat_up_minutes"]),
    ("cooktop-oven", &["propane_hours"]),
    ("fridge-absorption", &["propane_days"]),
    ("toilet-use", &["toilet_days"]),
    ("breaker-panel-gfci", &["loads_fit"]),
    ("height-clearance", &["clearance_min_sign"]),
];

fn send(kiosk: &mut Kiosk, message: Message) {
    kiosk.message(kiosk::Message::Screen(screen::Message::Walk(message)));
}

fn go(kiosk: &mut Kiosk, step: &str) {
    let index = kiosk.walk().route().steps.iter().position(|s| s.id == step);
    send(kiosk, Message::StepChosen(index.unwrap_or_else(|| panic!("no step {step}"))));
}

/// A walk for the Wren that has just begun, with this plan of the trip.
fn planned(plan: impl FnOnce(&mut Trip)) -> Kiosk {
    let mut trip = Trip::default();
    plan(&mut trip);
    let mut events = opened("en-US", "us");
    events.push(Event::TripPlanned { trip: Box::new(trip) });
    Setup::new().resume("wren", &events)
}

fn begun() -> Kiosk {
    Setup::new().resume("wren", &opened("en-US", "us"))
}

fn title(kiosk: &Kiosk, figure: &str) -> String {
    kiosk.say(&format!("figure-{figure}"))
}

/// The page around a step holds these words and not those.
fn titles(kiosk: &mut Kiosk, step: &str) -> Vec<String> {
    go(kiosk, step);
    let seen = kiosk.look();
    let known = sendoff::figures::ids().map(|id| (id.to_owned(), title(kiosk, id)));
    known.filter(|(_, title)| seen.texts.iter().any(|t| t.text == *title)).map(|(id, _)| id).collect()
}

#[test]
fn figures_stand_on_the_step_they_belong_to() {
    let mut kiosk = begun();
    for (step, figures) in SHOWN {
        let mut expected: Vec<&str> = figures.to_vec();
        let mut found = titles(&mut kiosk, step);
        expected.sort_unstable();
        found.sort();
        assert_eq!(found, expected, "{step}");
    }
    assert!(titles(&mut kiosk, "keys").is_empty());
    kiosk.no_notice();
}

/// Three people who use 5 gal a day, 1.5 of it for the toilet, and a grey tank of 35 gal: 35 / 10.5 days, down.
#[test]
fn a_card_tells_the_value_and_what_it_rests_on() {
    let mut kiosk = begun();
    go(&mut kiosk, "grey-black-dump");
    for words in ["FIGURES", "Days of room for grey water", "3.3\u{a0}days", "for 3 people"] {
        kiosk.expect(words);
    }
}

#[test]
fn a_card_tells_it_in_the_measures_of_the_renter() {
    let mut kiosk = Setup::new().resume("wren", &opened("en-US", "metric"));
    go(&mut kiosk, "height-clearance");
    // 135 in and 6 in, up to the centimeter: 3.59 m (1 in = 2.54 cm).
    assert!(kiosk.look().texts.iter().any(|t| t.text.starts_with("3.59\u{a0}m")));
}

#[test]
fn a_tap_tells_how_it_is_known_and_back() {
    let mut kiosk = begun();
    go(&mut kiosk, "grey-black-dump");
    kiosk.touch("3.3\u{a0}days");
    for words in ["HOW WE KNOW", "FROM WHAT", "grey tank", "data sheet", "Source: common practice, no source"]
    {
        kiosk.expect(words);
    }
    kiosk.click("Back to the step");
    assert!(!kiosk.shows("HOW WE KNOW"));
    kiosk.expect("3.3\u{a0}days");
    kiosk.click("3.3\u{a0}days");
    kiosk.expect("HOW WE KNOW");
    kiosk.key(Key::Named(Named::Escape), None);
    assert!(!kiosk.shows("HOW WE KNOW"));
    kiosk.no_notice();
}

#[test]
fn what_a_reading_lacks_leads_to_the_reading_and_is_computed_after_it() {
    let mut kiosk = begun();
    go(&mut kiosk, "generator-fuel-pickup");
    kiosk.expect("cannot be computed: fuel at the start is missing");
    kiosk.touch("Take the reading: Fuel gauge");
    kiosk.expect("Read it together");
    kiosk.touch("6/8");
    kiosk.click("Keep the reading");
    assert!(!kiosk.look().contains("cannot be computed"));
    // 55 gal from 3/4 down to the pick-up at 1/4: 27.5 gal at 0.5 and 0.7 gal an hour.
    for words in
        ["at half load", "55.0\u{a0}h", "at full load", "39.2\u{a0}h", "fuel at the start: 6/8, as read"]
    {
        kiosk.expect(words);
    }
    kiosk.no_notice();
}

#[test]
fn a_reading_of_another_step_leads_there() {
    let mut kiosk = begun();
    go(&mut kiosk, "house-battery-switch");
    kiosk.touch("Take the reading: House battery");
    kiosk.expect("Read it together");
    kiosk.fill("walk-reading-1", "12.7");
    kiosk.click("Keep the reading");
    kiosk.expect("Charge of the house battery");
    // The table of Battery Council International: 12.65 V and above is full.
    kiosk.expect("100\u{a0}%");
    kiosk.expect("rested voltage: 12.7\u{a0}V, as read");
}

#[test]
fn what_nobody_can_read_shows_nothing() {
    let reading = "fuel".to_owned();
    let not = Event::ReadingNotTaken { reading, reason: NotRead::Broken, note: String::new() };
    let events: Vec<Event> = opened("en-US", "us").into_iter().chain([not]).collect();
    let mut kiosk = Setup::new().resume("wren", &events);
    assert!(titles(&mut kiosk, "generator-fuel-pickup").is_empty());
    assert!(!kiosk.shows("FIGURES"));
}

#[test]
fn what_is_known_only_on_the_road_shows_once_it_is_planned() {
    let mut kiosk = begun();
    for (step, id) in [
        ("awning", "awning_verdict"),
        ("fridge-absorption", "level_blocks"),
        ("shore-cord-adapters", "voltage_drop"),
    ] {
        assert!(!titles(&mut kiosk, step).contains(&id.to_owned()), "{id}");
    }
    assert!(!kiosk.shows("FIGURES") || !kiosk.look().contains("cannot be computed"));
    let mut kiosk = planned(|trip| {
        trip.wind = Some(Wind { speed: Some("18 mph".parse().unwrap()), ..Wind::default() });
        trip.slope = Some(Slope { length: "1 °".parse().unwrap(), side: "2 °".parse().unwrap() });
        let cord = Cord { length: "50 ft".parse().unwrap(), gauge: "10".into(), current: None, volts: None };
        trip.cord = Some(cord);
    });
    for (step, id) in [
        ("awning", "awning_verdict"),
        ("fridge-absorption", "level_blocks"),
        ("shore-cord-adapters", "voltage_drop"),
    ] {
        assert!(titles(&mut kiosk, step).contains(&id.to_owned()), "{id}");
    }
}

#[test]
fn what_is_not_fitted_never_shows() {
    let mut kiosk = begun();
    // The Wren has no inverter, so jobs on the battery cost nothing: they cannot be done.
    let route = kiosk.walk().route();
    assert!(route.step("water-heater-tank-switch").unwrap().figures.contains(&"battery_cost".to_owned()));
    assert!(!titles(&mut kiosk, "water-heater-tank-switch").contains(&"battery_cost".to_owned()));
    assert!(!kiosk.look().contains("not fitted"));
}

#[test]
fn a_plan_changes_what_a_card_rests_on() {
    let mut kiosk = planned(|trip| trip.highest = Some("8900 ft".parse().unwrap()));
    go(&mut kiosk, "generator-care");
    // 4,000 W less 3.5 % for each of the 8.4 thousand feet above 500 ft.
    kiosk.expect("2,824\u{a0}W");
    assert!(kiosk.look().contains("highest place: 8,900\u{a0}ft"));
}

#[test]
fn the_trip_shows_its_plot_and_its_sentences() {
    let mut kiosk = begun();
    go(&mut kiosk, "leaving-check");
    kiosk.touch("The house battery runs out first: on Saturday.");
    for words in ["Fri", "Tue", "House battery", "to Saturday", "all left", "none left"] {
        kiosk.expect(words);
    }
    kiosk.expect("Fresh water lasts to Sunday.");
    kiosk.expect("WHAT HELPS");
    kiosk.renders();
}

#[test]
fn loads_tell_what_runs_together_and_what_to_switch_off() {
    let mut kiosk = begun();
    go(&mut kiosk, "breaker-panel-gfci");
    kiosk.click("3,600\u{a0}W");
    kiosk.expect("WHAT RUNS TOGETHER");
    assert!(kiosk.look().texts.iter().any(|t| t.text.starts_with("Roof air conditioner, ")));
    assert!(!kiosk.shows("HOW IT IS WORKED OUT"), "nothing is on, so there is no sum");
    let on = |load: &str| On { load: load.into(), settled: false };
    let mut kiosk = planned(|trip| trip.on = vec![on("air-front"), on("microwave"), on("water-heater")]);
    go(&mut kiosk, "breaker-panel-gfci");
    send(&mut kiosk, Message::SheetAsked(SheetKind::Figure("loads_fit".into())));
    kiosk.expect("WHY NOT");
    kiosk.expect("all together are too much");
    assert!(kiosk.look().contains("switch off "));
}

/// Pages with figures of every kind, and how each is known.
fn pages(kiosk: &mut Kiosk, see: &mut dyn FnMut(&str, &mut Kiosk)) {
    let more: [(&str, &[&str]); 3] = [
        ("generator-fuel-pickup", &[]),
        ("leaving-check", &["trip_projection"]),
        ("awning", &["awning_verdict"]),
    ];
    for (step, figures) in SHOWN.into_iter().chain(more) {
        go(kiosk, step);
        see(step, kiosk);
        for figure in figures {
            send(kiosk, Message::SheetAsked(SheetKind::Figure((*figure).into())));
            see(&format!("{step}, {figure}"), kiosk);
            send(kiosk, Message::SheetClosed);
        }
    }
}

/// A trip with something to say on every page.
fn full(language: &str) -> Vec<Event> {
    let trip = Trip {
        wind: Some(Wind { speed: Some("18 mph".parse().unwrap()), ..Wind::default() }),
        highest: Some("8900 ft".parse().unwrap()),
        ..Trip::default()
    };
    opened(language, "us").into_iter().chain([Event::TripPlanned { trip: Box::new(trip) }]).collect()
}

#[test]
fn nothing_is_cut_off_at_any_size_in_any_length_of_words() {
    let mut faults = Vec::new();
    for size in SIZES {
        for language in ["en-US", PSEUDO] {
            for text in [TextSize::Usual, TextSize::Large, TextSize::Largest] {
                let setup = Setup::new().size(size).staff(language).text(text);
                let mut kiosk = setup.resume("wren", &full(language));
                pages(&mut kiosk, &mut |page, kiosk| {
                    for fault in kiosk.look().faults() {
                        faults.push(format!("{size:?} {language} {text:?} {page}: {fault}"));
                    }
                });
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn cards_are_high_enough_for_a_finger() {
    for size in SIZES {
        let mut kiosk = Setup::new().size(size).resume("wren", &opened("en-US", "us"));
        go(&mut kiosk, "grey-black-dump");
        let at = kiosk.reach("3.3\u{a0}days", 0);
        let seen = kiosk.look();
        let card = seen.pressable.iter().filter(|p| p.visible.is_some_and(|v| v.contains(at)));
        let lowest = card.map(|p| p.bounds.height).fold(f32::INFINITY, f32::min);
        let least = 64.0 * size.0.min(size.1) / 800.0;
        assert!(lowest >= least - 0.1 && lowest < 400.0, "{size:?}: {lowest}");
    }
}

#[test]
fn every_page_renders_at_every_size_and_in_every_theme() {
    for (size, theme) in SIZES.into_iter().zip(Theme::ALL) {
        let mut kiosk = Setup::new().size(size).theme(theme).resume("wren", &full("en-US"));
        pages(&mut kiosk, &mut |_, kiosk| kiosk.renders());
    }
}
