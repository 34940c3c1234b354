//! Where random input begins: each page of the kiosk that staff can have left open.

use jiff::{SignedDuration, Timestamp};
use sendoff::ports::Clock as _;
use sendoff::ports::fake::MemoryDisk;
use sendoff::tablet::staff::{Cost, Pin, PinHash};
use sendoff::walk::Event;

pub use super::dice::Dice;
use crate::handoff::Hands;
use crate::kiosk_support::{Setup, opened, opening};
use crate::screen_closing::whole;

/// The PIN that is set: longer than chance finds.
pub const PIN: &str = "90015073";
/// Where a round may begin.
pub const SCENES: [&str; 8] =
    ["yard", "opening", "walk", "cautions", "readings", "closing", "reread", "gate"];

/// What may have happened before, and then the disk it is on: two of staff have a PIN.
pub fn setup(scene: &str, dice: &mut Dice) -> Setup {
    let disk = MemoryDisk::new();
    let setup = Setup::new().keys().disk(&disk);
    setup.clock.pass(Timestamp::now().duration_since(setup.clock.now()).as_secs());
    let unit = ["wren", "heron", "plover"][dice.below(3)];
    match scene {
        "opening" => {
            let all = opening("en-US", "us");
            let some = all[..dice.below(all.len() + 1)].to_vec();
            drop(setup.clone().resume(unit, &as_of_now(some)));
        }
        "walk" | "cautions" | "readings" => {
            let all = whole("en-US");
            // The first is the end of the opening; behind it as much as chance wants.
            let opened = opened("en-US", "us").len();
            let some = all[..opened + dice.below(all.len() - opened)].to_vec();
            drop(setup.clone().resume("wren", &as_of_now(some)));
        }
        "closing" => drop(setup.clone().resume("wren", &as_of_now(whole("en-US")))),
        _ => {}
    }
    let hash = PinHash::make(&Pin::of(PIN).unwrap(), Cost::FLOOR, &[7; 32]).unwrap().phc();
    let person =
        |code: &str, role: &str| format!("(code: \"{code}\", role: {role}, pin: \"{hash}\", tries: 0)");
    let staff = format!("(people: [{}, {}])", person("JM", "Office"), person("K4", "Agent"));
    disk.plant(std::path::Path::new("/data/staff.ron"), staff.as_bytes());
    setup
}

/// What happened, with days that lie ahead from today.
fn as_of_now(events: Vec<Event>) -> Vec<Event> {
    let ahead = |days: i64| {
        let at = Timestamp::now() + SignedDuration::from_hours(24 * days);
        jiff::tz::Offset::UTC.to_datetime(at).date()
    };
    let event = |event| match event {
        Event::BookingSet { reference, nights, mut due_back } => {
            due_back.local = ahead(i64::from(nights)).at(10, 0, 0, 0);
            Event::BookingSet { reference, nights, due_back }
        }
        Event::LicenceSeen { person, mut licence } => {
            licence.expiry = ahead(700);
            Event::LicenceSeen { person, licence }
        }
        other => other,
    };
    events.into_iter().map(event).collect()
}

/// Signs on where staff must, and opens the page of a scene.
pub fn enter(hands: &mut impl Hands, scene: &str) {
    match scene {
        "opening" | "walk" | "cautions" | "readings" | "closing" => {
            hands.press("Go on");
            pass_gate(hands);
        }
        "reread" => {
            let again = hands.kiosk().say("reread-open");
            hands.press(&again);
        }
        "gate" => hands.press_id("yard-staff"),
        _ => {}
    }
    let seen: Vec<String> = hands.kiosk().look().words().into_iter().map(str::to_owned).collect();
    // The tablet is handed over where a stop ends; items are counted where they lie.
    let way = match scene {
        "cautions" => seen.iter().find(|w| w.starts_with("Give the tablet to the renter: ")),
        "readings" => seen.iter().find(|w| w.ends_with(" as listed")),
        _ => None,
    };
    if let Some(way) = way {
        hands.press(way);
    }
}

/// Passes the gate that is asked.
pub fn pass_gate(hands: &mut impl Hands) {
    hands.press_last("JM");
    for digit in PIN.chars() {
        hands.press_last(&digit.to_string());
    }
    let end = hands.kiosk().say("gate-end");
    hands.press_last(&end);
    let kiosk = hands.kiosk();
    assert!(kiosk.app.gate().is_none(), "{:#?}", kiosk.look().words());
}
