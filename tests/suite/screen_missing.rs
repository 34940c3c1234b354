//! What is not as it should be and what is still missing are said in words where they matter: on the step, on its
//! sheets, in the Closing, in the record.

use sendoff::kiosk::screen::walk::{Draft, Message, SheetKind};
use sendoff::kiosk::screen::{self, Screen};
use sendoff::kiosk::{self};
use sendoff::walk::{Event, PersonId};

use super::kiosk_support::{Kiosk, SIZES, Setup, opened};
use super::screen_closing::{back, closing, consent, sign, whole};

fn send(kiosk: &mut Kiosk, message: Message) {
    kiosk.message(kiosk::Message::Screen(screen::Message::Walk(message)));
}

fn at(step: &str, more: Vec<Event>) -> Kiosk {
    at_size(step, more, Setup::new())
}

fn at_size(step: &str, more: Vec<Event>, setup: Setup) -> Kiosk {
    let mut kiosk = setup.resume("wren", &[opened("en-US", "us"), more].concat());
    let index = kiosk.walk().route().steps.iter().position(|s| s.id == step).expect("a step of the Wren");
    send(&mut kiosk, Message::StepChosen(index));
    kiosk
}

fn volts(value: &str) -> Event {
    Event::ReadingTaken { reading: "house-volts".into(), value: value.into(), measure: "V".into() }
}

/// The Wren's battery is to be charged below 12.2 V: handbook E.1.7, `house_v_low`.
const LOW: &str = "11.6\u{a0}V is below the least of 12.2\u{a0}V.";
const CHARGE: &str = "Agent: Charge it before the unit goes out, or find out what drains it.";

#[test]
fn a_reading_below_its_bound_is_marked_as_it_is_typed_and_once_it_is_kept() {
    let mut kiosk = at("house-battery-switch", Vec::new());
    kiosk.click("House battery");
    kiosk.fill("walk-reading-1", "12.2");
    assert!(!kiosk.shows(LOW) && !kiosk.shows(CHARGE), "the bound itself is right");
    kiosk.fill("walk-reading-1", "11.6");
    kiosk.expect(LOW);
    kiosk.expect(CHARGE);
    kiosk.click("Keep the reading");
    kiosk.expect(LOW);
    kiosk.expect(CHARGE);
    kiosk.no_notice();
}

/// The front tires are set to 75 psi cold, and air is added below 90 % of that: handbook E.1.4, FIG-22.
#[test]
fn a_tire_is_held_against_the_figure_of_its_axle() {
    let mut kiosk = at("tires-pressure", Vec::new());
    kiosk.click("Tires, front");
    kiosk.fill("walk-reading-1", "67");
    kiosk.fill("walk-reading-2", "72");
    kiosk.expect("67\u{a0}psi is below the least of 68\u{a0}psi.");
    assert!(!kiosk.look().words().iter().any(|w| w.starts_with("72\u{a0}psi is")));
}

#[test]
fn a_sheet_says_what_it_lacks_where_its_button_will_be() {
    let mut kiosk = at("tires-pressure", Vec::new());
    kiosk.click("Tires, front");
    let all = "Fill in all 3, or say why one could not be read. Then the button to keep them stands here.";
    kiosk.expect(all);
    kiosk.fill("walk-reading-1", "7");
    kiosk.expect("Put right what is marked above. Then the button to keep it stands here.");
    kiosk.fill("walk-reading-1", "75");
    kiosk.expect("Keep the reading");
    assert!(!kiosk.shows(all));
    for (kind, lacks) in [
        (SheetKind::NotShown, "Choose why. Then the button to leave the step out stands here."),
        (SheetKind::Stop, "Write the reason. Then the button that ends the walk stands here."),
    ] {
        send(&mut kiosk, Message::SheetAsked(kind));
        kiosk.expect(lacks);
    }
    send(&mut kiosk, Message::SheetAsked(SheetKind::NotShown));
    send(&mut kiosk, Message::Draft(Draft::NotShown(sendoff::walk::NotShown::NoTime)));
    kiosk.expect("Add the remark. Then the button to leave the step out stands here.");
}

#[test]
fn handing_over_says_how_much_is_missing_first() {
    let route = sendoff::route::build(&super::kiosk_support::lot(), "wren").expect("the Wren");
    let stop =
        route.stops.iter().find(|s| route.steps[s.steps.clone()].iter().any(|s| s.kit)).expect("a stop");
    let steps = &route.steps[stop.steps.clone()];
    let (last, before) = steps.split_last().expect("steps");
    let shown = |s: &sendoff::route::Step| Event::StepShown { step: s.id.clone(), language: "en-US".into() };
    let mut events: Vec<Event> = before.iter().map(shown).collect();
    let mut kiosk = at(&last.id, events.clone());
    let missing = route.items.len() + steps.iter().map(|s| s.readings.len() + s.leaving.len()).sum::<usize>();
    let cautions: usize = steps.iter().map(|s| s.cautions.len()).sum();
    kiosk.expect(&format!("Give the tablet to the renter: {cautions} cautions. {missing} are still to do."));
    events.extend(route.items.iter().map(|i| Event::ItemCounted {
        tag: i.tag.clone(),
        count: i.count,
        note: String::new(),
    }));
    events.push(volts("12.7"));
    let mut kiosk = at(&last.id, events);
    kiosk.expect(&format!("Give the tablet to the renter: {cautions} cautions"));
}

#[test]
fn the_closing_marks_a_reading_out_of_bounds_before_anybody_signs() {
    let mut events = whole("en-US");
    events.push(volts("11.6"));
    let mut kiosk = closing(Setup::new(), &events);
    kiosk.click("I am Ann Marlow");
    kiosk.expect("Not as it should be");
    kiosk.expect(&format!("House battery: {LOW}"));
    kiosk.expect(CHARGE);
    events.push(volts("12.7"));
    let mut kiosk = closing(Setup::new(), &events);
    kiosk.click("I am Ann Marlow");
    assert!(!kiosk.shows(&format!("House battery: {LOW}")), "the last reading counts");
}

#[test]
fn each_page_of_the_closing_says_who_has_the_tablet_and_what_it_waits_for() {
    let mut kiosk = closing(Setup::new(), &opened("en-US", "us"));
    kiosk.expect("THE TABLET IS WITH THE AGENT");
    kiosk.expect("Make good what is missing above. Then the way on to sign stands here.");
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    kiosk.expect("Please give the tablet to the renter.");
    kiosk.click("I am Ann Marlow");
    kiosk.expect("THE TABLET IS WITH Ann Marlow");
    kiosk.click("Go on to sign");
    kiosk.expect("Choose a screen or paper. Then you can go on to sign.");
    consent(&mut kiosk);
    kiosk.expect("Still to sign after that: Bo Marlow and the agent.");
    sign(&mut kiosk);
    kiosk.click("I am Bo Marlow");
    kiosk.expect("THE TABLET IS WITH Bo Marlow");
    kiosk.expect("Still to sign after that: the agent.");
    sign(&mut kiosk);
    kiosk.expect("Choose one of these three. Then the agent seals the record.");
    kiosk.click("None now");
    back(&mut kiosk);
    kiosk.expect("THE TABLET IS WITH THE AGENT");
    sign(&mut kiosk);
    kiosk.expect("THE TABLET IS WITH THE AGENT");
    kiosk.expect("Seal the record");
    assert!(matches!(kiosk.screen(), Screen::Closing(_)));
    assert!(kiosk.walk().signature(sendoff::walk::Who::Person(PersonId(2))).is_some());
}

#[test]
fn frames_of_what_is_missing() {
    let Some(dir) = std::env::var_os("SENDOFF_FRAMES").map(|d| d.to_string_lossy().into_owned()) else {
        return;
    };
    for (name, size) in [("land", SIZES[0]), ("wide", SIZES[1]), ("port", SIZES[2])] {
        let setup = || Setup::new().size(size);
        let mut kiosk = at_size("house-battery-switch", vec![volts("11.6")], setup());
        kiosk.save(&format!("{dir}/low-{name}.png"));
        send(&mut kiosk, Message::SheetAsked(SheetKind::Readings));
        kiosk.save(&format!("{dir}/low-sheet-{name}.png"));
        let mut kiosk = closing(setup(), &[whole("en-US"), vec![volts("11.6")]].concat());
        kiosk.click("I am Ann Marlow");
        kiosk.save(&format!("{dir}/take-low-{name}.png"));
        let mut kiosk = closing(setup(), &opened("en-US", "us"));
        kiosk.save(&format!("{dir}/take-missing-{name}.png"));
        let mut kiosk = at_size("loaned-kit", Vec::new(), setup());
        send(&mut kiosk, Message::SheetAsked(SheetKind::Item("W12".into())));
        kiosk.save(&format!("{dir}/item-{name}.png"));
    }
}
