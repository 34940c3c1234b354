//! How long a page had been whole when it was answered.

use std::path::Path;
use std::sync::Arc;

use jiff::SignedDuration;
use sendoff::kiosk::screen::caution::Message as Said;
use sendoff::kiosk::screen::{self, walk, yard};
use sendoff::kiosk::ui::HoldEvent;
use sendoff::kiosk::{App, Message, Settings, World, staff_reader};
use sendoff::ports::Ports;
use sendoff::ports::fake::{FixedEntropy, MemoryDisk, StepClock};
use sendoff::tablet::Tablet;
use sendoff::walk::Response;

use super::{ANN, Answers, Ask, Signal, all_shown, route};
use crate::kiosk_support::{NOW, lot};

#[test]
fn the_time_a_page_was_whole_is_noted() {
    let start = NOW.parse().unwrap();
    // Every look at this clock is a second later than the one before.
    let clock = StepClock::new(start, SignedDuration::from_secs(1));
    let disk = Arc::new(MemoryDisk::new());
    let ports = Ports { disk, clock: Arc::new(clock), entropy: Arc::new(FixedEntropy([7; 32])) };
    let data = Path::new("/data");
    let (tablet, lot) = (Tablet::first_start(&ports, data, "t2").unwrap(), lot());
    let mut keeper = tablet.begin(&lot, "wren", false).unwrap();
    for event in all_shown("en-US") {
        keeper.propose(&tablet.entry(&lot, event)).unwrap();
    }
    let id = keeper.walk().id().to_owned();
    drop(keeper);
    let world = World::open(ports, data.to_owned(), true).unwrap();
    let settings = Settings::new(staff_reader(&lot));
    let (mut app, _) = App::new(Arc::new(world), lot, settings);
    let mut say = |message: screen::Message| drop(app.update(Message::Screen(message)));
    say(screen::Message::Yard(yard::Message::WalkChosen(id)));
    say(screen::Message::Walk(walk::Message::StepChosen(held_first())));
    say(screen::Message::Walk(walk::Message::Onward));
    say(screen::Message::Caution(Said::PersonChosen(ANN)));
    say(screen::Message::Caution(Said::Held(HoldEvent::Done)));
    say(screen::Message::Caution(Said::SeenWhole(2)));
    say(screen::Message::Caution(Said::SeenWhole(2)));
    say(screen::Message::Caution(Said::Held(HoldEvent::TooShort)));
    say(screen::Message::Caution(Said::Held(HoldEvent::Done)));
    let walk = &app.hall().unwrap().walk;
    let all = walk.route().steps.iter().flat_map(|s| &s.cautions);
    let said: Vec<_> = all.filter_map(|c| walk.response(&c.id, ANN)).collect();
    assert_eq!(said.len(), 1, "a hold before the page was whole is none");
    match &said[0].value {
        Response::Answered { looked_ms, .. } => {
            assert_eq!(*looked_ms, 3000, "three looks at the clock later");
        }
        Response::Refused { .. } => panic!("{said:?}"),
    }
}

/// The last step of a stop whose first page is held by whoever answers it.
fn held_first() -> usize {
    let route = route();
    let held = |step: &sendoff::route::Step| {
        let own = step.cautions.iter().filter(|c| c.signal >= Signal::Warning || c.ask != Ask::Read);
        let gravest = own.rev().max_by_key(|c| c.signal);
        gravest.is_some_and(|c| c.ask == Ask::Hold && c.who == Answers::Party)
    };
    let first = |stop: &sendoff::route::Stop| {
        route.steps[stop.steps.clone()].iter().find(|s| !s.cautions.is_empty()).is_some_and(held)
    };
    route.stops.iter().find(|stop| first(stop)).expect("a stop begins with a hold").steps.end - 1
}
