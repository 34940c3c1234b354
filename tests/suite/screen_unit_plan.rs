//! The plan of the unit on the Walk: where its pegs lead, and marks set and found again on it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use std::time::{Duration, Instant};

use iced::Point;
use sendoff::kiosk;
use sendoff::kiosk::plan::Floor;
use sendoff::kiosk::screen;
use sendoff::kiosk::screen::walk::Message;
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::route::Zone;
use sendoff::walk::{Event, Mark, MarkKind, MarkSize, PlanPoint, Walk, Who};

use crate::kiosk_support::{Kiosk, PSEUDO, Placed, SIZES, Setup, opened};

const UNITS: [&str; 3] = ["wren", "plover", "heron"];

fn send(kiosk: &mut Kiosk, message: Message) {
    kiosk.message(kiosk::Message::Screen(screen::Message::Walk(message)));
}

/// The first step in a zone.
fn first_in(walk: &Walk, zone: Zone) -> usize {
    walk.route().stops.iter().find(|s| s.zone == zone).unwrap().steps.start
}

/// A walk that stands at the first step outside.
fn outside(setup: Setup, unit: &str) -> Kiosk {
    let mut kiosk = setup.resume(unit, &opened("en-US", "us"));
    let step = first_in(kiosk.walk(), Zone::Outside);
    send(&mut kiosk, Message::StepChosen(step));
    kiosk
}

/// Squares of this side, as written.
fn squares(kiosk: &mut Kiosk, side: f32) -> Vec<Placed> {
    let (width, height) = kiosk.setup.size;
    let side = side * width.min(height) / 800.0;
    let square = |p: &Placed| (p.bounds.width - side).abs() < 0.5 && (p.bounds.height - side).abs() < 0.5;
    kiosk.look().pressable.into_iter().filter(|p| square(p)).collect()
}

#[test]
fn a_tap_on_each_peg_goes_to_its_stop() {
    for unit in UNITS {
        for size in [SIZES[0], SIZES[2]] {
            for (floor, zone, name) in
                [(Floor::Outside, Zone::Outside, "Outside"), (Floor::Inside, Zone::Inside, "Inside")]
            {
                let mut kiosk = outside(Setup::new().size(size), unit);
                send(&mut kiosk, Message::FloorChosen(floor));
                let stops = kiosk.walk().route().stops.iter().filter(|s| s.zone == zone).count();
                let pegs = squares(&mut kiosk, 56.0);
                assert_eq!(pegs.len(), stops, "{unit} {name}: each stop has its peg");
                let mut reached = BTreeSet::new();
                let step = first_in(kiosk.walk(), Zone::Outside);
                for peg in &pegs {
                    // In portrait the plan turns to the side one stands on: always from the same one.
                    send(&mut kiosk, Message::StepChosen(step));
                    send(&mut kiosk, Message::FloorChosen(floor));
                    kiosk.finger_down(peg.bounds.center());
                    kiosk.finger_up(peg.bounds.center());
                    let words = kiosk.look();
                    let here = words.words().into_iter().find(|w| w.starts_with(&format!("{name} · ")));
                    reached.insert(here.unwrap_or_else(|| panic!("{unit}: not {name}")).to_owned());
                }
                assert_eq!(reached.len(), stops, "{unit} at {size:?}: {reached:?}");
                kiosk.no_notice();
            }
        }
    }
}

/// Held down beside the pegs: a mark at the nearest point of the unit.
#[test]
fn a_place_held_down_gets_a_mark() {
    let mut kiosk = outside(Setup::new(), "wren");
    // The corner of the plan at the rear on the curb side, on the grass. Wren is 99 in wide and 312 in long (handbook
    // E.1.2), and its curb side is on the right.
    let at = Point::new(338.0, 610.0);
    let now = Instant::now();
    kiosk.finger_down(at);
    kiosk.tick(now);
    kiosk.tick(now + Duration::from_millis(300));
    kiosk.finger_up(at);
    kiosk.tick(now + Duration::from_secs(2));
    assert!(!kiosk.shows("What is there?"), "it was let go too early");
    let now = now + Duration::from_secs(3);
    kiosk.finger_down(at);
    kiosk.tick(now);
    kiosk.tick(now + Duration::from_millis(700));
    kiosk.finger_up(at);
    kiosk.expect("What is there?");
    kiosk.click("Scratch");
    kiosk.click("up to a hand");
    kiosk.click("Place the mark");
    let mark = kiosk.walk().marks().next().unwrap().value.clone();
    assert_eq!(mark.at, PlanPoint { x: 495, y: 3120 });
    assert_eq!(mark.kind, MarkKind::Scratch);
    kiosk.no_notice();
}

fn mark(number: u16, x: i32, y: i32) -> Event {
    let (kind, size) = (MarkKind::Dent, MarkSize::Coin);
    Event::MarkPlaced {
        mark: Mark { number, at: PlanPoint { x, y }, kind, size, note: String::new(), by: Who::Agent },
    }
}

/// The list says number, kind and where; a press shows the mark on the plan, another lets it go.
#[test]
fn a_mark_of_the_list_is_found_on_the_plan() {
    let marks = [mark(1, 495, 2900), mark(2, -495, 1500), mark(3, 0, 0)];
    let events: Vec<Event> = opened("en-US", "us").into_iter().chain(marks).collect();
    let mut kiosk = Setup::new().resume("wren", &events);
    kiosk.click("Mark");
    for place in ["curb side, rear", "street side, middle", "front"] {
        kiosk.expect(&format!("Nearest: {place}"));
    }
    let plain = kiosk.frame();
    kiosk.click("Nearest: street side, middle");
    let found = kiosk.frame();
    assert!(plain != found, "nothing shows where it is");
    kiosk.click("Nearest: front");
    assert!(kiosk.frame() != found, "another mark is looked for");
    kiosk.click("Nearest: front");
    assert_eq!(kiosk.walk().marks().count(), 3);
    kiosk.no_notice();
}

/// A place without a point has a peg all the same.
#[test]
fn a_step_whose_place_has_no_point_has_a_peg() {
    use sendoff::script::Bundle;
    let file = "walkthroughs/units/wren.ron";
    let bundle = Bundle::demo();
    let sheet = String::from_utf8(bundle.get(file).unwrap().to_vec()).unwrap();
    let point = r#""fresh-fill": (station: StreetMid, at: ("#;
    assert!(sheet.contains(point), "the sheet of the demo lot has changed");
    let begin = sheet.find(point).unwrap() + r#""fresh-fill": (station: StreetMid"#.len();
    let end = begin + sheet[begin..].find("\")").unwrap() + 2;
    let without = format!("{}{}", &sheet[..begin], &sheet[end..]);
    let mut files: BTreeMap<String, Arc<[u8]>> =
        bundle.names().map(|n| (n.to_owned(), Arc::clone(bundle.get(n).unwrap()))).collect();
    files.insert(file.to_owned(), without.into_bytes().into());
    let lot = kiosk::scripts(Bundle::new(files, true)).unwrap();
    let mut kiosk = outside(Setup::new().lot(lot), "wren");
    let walk = kiosk.walk();
    let bare = walk.route().steps.iter().filter(|s| s.place == "fresh-fill" && s.at.is_none()).count();
    assert!(bare > 0, "the point is gone");
    let stops = walk.route().stops.iter().filter(|s| s.zone == Zone::Outside).count();
    assert_eq!(squares(&mut kiosk, 56.0).len(), stops);
}

/// In every size, theme and text size, with 40 % more length, nothing lies over each other or is cut.
#[test]
fn the_plan_fits_beside_the_words() {
    for (n, size) in SIZES.into_iter().enumerate() {
        for (unit, text) in UNITS.into_iter().zip([TextSize::Usual, TextSize::Large, TextSize::Largest]) {
            let theme = [Theme::Paper, Theme::Daylight, Theme::Dusk][n];
            let mut kiosk = outside(Setup::new().size(size).theme(theme).text(text).staff(PSEUDO), unit);
            for floor in [Floor::Inside, Floor::Outside] {
                send(&mut kiosk, Message::FloorChosen(floor));
                let faults = kiosk.look().faults();
                assert!(faults.is_empty(), "{unit} {size:?} {text:?} {floor:?}: {faults:#?}");
                kiosk.renders();
            }
        }
    }
}
