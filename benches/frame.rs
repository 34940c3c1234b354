//! From a touch to the next frame on the Walk at 1280×800, software rendering: what a person waits for.
#![allow(
    missing_docs,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a bench may stop loudly"
)]

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};

use sendoff::kiosk::headless::Driver;
use sendoff::kiosk::{Settings, World, program, screen, scripts, staff_reader, theme};
use sendoff::ports::Ports;
use sendoff::ports::fake::{FixedClock, FixedEntropy, MemoryDisk};
use sendoff::script::Bundle;
use sendoff::tablet::Tablet;
use sendoff::walk::{Event, LocalTime, Person, PersonId};

const ROUNDS: usize = 300;
/// Longest wait from a touch to its frame, in milliseconds.
const BAR: f64 = 16.0;

/// A walk of Wren whose opening is closed.
fn opened(tablet: &Tablet, lot: &sendoff::script::Scripts) -> String {
    let mut keeper = tablet.begin(lot, "wren", false).expect("a walk");
    let due_back = LocalTime { local: "2026-07-29T10:00".parse().expect("a time"), offset_minutes: -360 };
    let driver = PersonId(1);
    let licence = sendoff::walk::Licence {
        class: "B".into(),
        country: "Norway".into(),
        expiry: "2031-05-31".parse().expect("a day"),
    };
    for event in [
        Event::AgentOn { code: "JM".into() },
        Event::ReaderSet { language: "en-US".into(), measures: "us".into() },
        Event::BookingSet { reference: String::new(), nights: 5, due_back },
        Event::PartySet {
            people: vec![Person { id: driver, name: "Ann Marlow".into(), age: 41, driver: true }],
        },
        Event::LicenceSeen { person: driver, licence },
        Event::PresentSet { people: vec![driver] },
        Event::ExperienceSet { first_time: true },
        Event::TranslatorSet { role: String::new() },
        Event::Opened,
    ] {
        keeper.propose(&tablet.entry(lot, event)).expect("it is accepted");
    }
    keeper.walk().id().to_owned()
}

fn main() {
    let ports = Ports {
        disk: Arc::new(MemoryDisk::new()),
        clock: Arc::new(FixedClock("2026-07-24T15:10:00Z".parse().expect("a time"))),
        entropy: Arc::new(FixedEntropy([7; 32])),
    };
    theme::fonts::prepare();
    let lot = scripts(Bundle::demo()).expect("the demo lot has no faults");
    let tablet = Tablet::first_start(&ports, Path::new("/data"), "t2").expect("a tablet");
    let walk = opened(&tablet, &lot);
    let world = Arc::new(World::open(ports, PathBuf::from("/data"), true).expect("a world"));
    let kiosk = program(world, Arc::clone(&lot), Settings::new(staff_reader(&lot)));
    let mut driver = Driver::open(&kiosk, (1280, 800)).expect("a renderer");
    let yard = screen::yard::Message::WalkChosen(walk);
    driver.message(sendoff::kiosk::Message::Screen(screen::Message::Yard(yard))).expect("the walk opens");
    let mut times: Vec<Duration> = Vec::with_capacity(ROUNDS);
    for round in 0..ROUNDS {
        // Inside and outside in turn: the plan is drawn anew each time.
        let label = if round % 2 == 0 { "Inside" } else { "Outside" };
        let at = driver.find(label).expect("the floors can be chosen");
        let start = Instant::now();
        driver.touch_at(at).expect("a touch");
        let frame = driver.render();
        times.push(start.elapsed());
        assert_eq!((frame.width, frame.height), (1280, 800));
    }
    times.sort_unstable();
    let at = |part: usize| times.get(times.len() * part / 100).expect("a time").as_secs_f64() * 1000.0;
    println!("touch to frame: median {:.1} ms, p99 {:.1} ms (bar {BAR} ms)", at(50), at(99));
}
