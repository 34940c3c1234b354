//! Photos of a lot in place of its drawings.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::Arc;

use sendoff::kiosk::headless::Driver;
use sendoff::kiosk::screen::{self, Screen, walk, yard};
use sendoff::kiosk::theme::fonts;
use sendoff::kiosk::{App, Message, Settings, World, program, scripts, staff_reader};
use sendoff::ports::Ports;
use sendoff::ports::fake::{FixedClock, FixedEntropy, MemoryDisk};
use sendoff::script::{Bundle, Scripts};
use sendoff::tablet::Tablet;

use super::kiosk_support::{NOW, opened};

/// The demo lot with a photo in place of the drawing of the first step.
fn lot_with(photo: Vec<u8>) -> Arc<Scripts> {
    let demo = Bundle::demo();
    let mut files: BTreeMap<String, Arc<[u8]>> =
        demo.names().map(|n| (n.to_owned(), Arc::clone(demo.get(n).unwrap()))).collect();
    let lot = scripts(demo).unwrap();
    let route = sendoff::route::build(&lot, "wren").unwrap();
    let picture = route.steps[0].picture.clone().unwrap();
    let drawing = files.remove(&format!("assets/pictures/{picture}.svg"));
    assert!(drawing.is_some(), "the first step has a drawing");
    files.insert(format!("assets/pictures/{picture}.jpg"), Arc::from(photo));
    scripts(Bundle::new(files, false)).unwrap()
}

/// A photo of one color that nothing else on the screen wears.
fn magenta() -> Vec<u8> {
    let mut out = Vec::new();
    let plain = image::RgbImage::from_pixel(300, 200, image::Rgb([255, 0, 255]));
    image::codecs::jpeg::JpegEncoder::new_with_quality(&mut out, 90).encode_image(&plain).unwrap();
    out
}

/// How many pixels of the first step's page are magenta, and its words. Photos are decoded by a task.
fn page(photo: Vec<u8>) -> (usize, Vec<String>) {
    let _ = fonts::only_bundled();
    let lot = lot_with(photo);
    let ports = Ports {
        disk: Arc::new(MemoryDisk::new()),
        clock: Arc::new(FixedClock(NOW.parse().unwrap())),
        entropy: Arc::new(FixedEntropy([7; 32])),
    };
    let data = PathBuf::from("/data");
    let tablet = Tablet::first_start(&ports, &data, "t2").unwrap();
    let mut keeper = tablet.begin(&lot, "wren", false).unwrap();
    for event in opened("en-US", "us") {
        keeper.propose(&tablet.entry(&lot, event)).unwrap();
    }
    let id = keeper.walk().id().to_owned();
    drop(keeper);
    let world = Arc::new(World::open(ports, data, false).unwrap());
    let settings = Settings::new(staff_reader(&lot));
    let program = program(world, lot, settings);
    let mut driver = Driver::open(&program, (1280, 800)).unwrap();
    driver.message(Message::Screen(screen::Message::Yard(yard::Message::WalkChosen(id)))).unwrap();
    let app: &App = driver.state();
    assert!(matches!(app.screen(), Screen::Walk(_)), "{:?}", app.notice());
    // Going there and back is no trouble for a photo that is being decoded.
    for step in [1, 0] {
        let chosen = walk::Message::StepChosen(step);
        driver.message(Message::Screen(screen::Message::Walk(chosen))).unwrap();
    }
    let frame = driver.render();
    let count = frame.rgba.chunks_exact(4).filter(|p| p[0] > 240 && p[1] < 20 && p[2] > 240).count();
    (count, driver.texts().into_iter().map(|t| t.text).collect())
}

#[test]
fn a_photo_stands_in_the_place_of_a_drawing() {
    let (magenta, words) = page(magenta());
    assert!(magenta > 20_000, "{magenta} pixels of the photo, {words:#?}");
}

#[test]
fn a_broken_photo_shows_the_sign_and_stops_nothing() {
    let mut cut = magenta();
    cut.truncate(cut.len() / 3);
    for broken in [cut, b"no photo".to_vec(), b"<svg xmlns='http://www.w3.org/2000/svg'/>".to_vec()] {
        let (magenta, words) = page(broken);
        assert_eq!(magenta, 0);
        assert!(words.iter().any(|w| w == "The key ring"), "{words:#?}");
    }
}
