//! A lot folder that is edited while the kiosk runs.

use std::path::Path;
use std::sync::Arc;

use sendoff::kiosk::edit::Edit;
use sendoff::kiosk::headless::Driver;
use sendoff::kiosk::screen::{self, Screen, yard};
use sendoff::kiosk::theme::fonts;
use sendoff::kiosk::{App, Message, Settings, World, program_with, scripts, staff_reader};
use sendoff::ports::system;
use sendoff::script::Bundle;
use sendoff::tablet::Tablet;

const KEYS: &str = "i18n/en-US/topic-keys.ftl";
const TITLE: &str = "step-keys = The key ring";
const WREN: &str = "walkthroughs/units/wren.ron";

/// A lot folder and a data folder on the disk.
struct Desk {
    lot: tempfile::TempDir,
    data: tempfile::TempDir,
}

impl Desk {
    /// The demo lot as a company's own.
    fn new() -> Self {
        let desk = Self { lot: tempfile::tempdir().unwrap(), data: tempfile::tempdir().unwrap() };
        let demo = Bundle::demo();
        for name in demo.names() {
            let path = desk.lot.path().join(name);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, demo.get(name).unwrap()).unwrap();
        }
        let _ = Tablet::first_start(&system::ports(), desk.data.path(), "t2").unwrap();
        desk
    }

    fn change(&self, file: &str, old: &str, new: &str) {
        let path = self.lot.path().join(file);
        let text = std::fs::read_to_string(&path).unwrap();
        assert!(text.contains(old), "{file} does not hold `{old}`");
        std::fs::write(path, text.replacen(old, new, 1)).unwrap();
    }

    /// Lets `act` lead a kiosk that watches the folder.
    fn lead(&self, act: impl FnOnce(&mut dyn Led)) {
        let _ = fonts::only_bundled();
        let ports = system::ports();
        let bundle = Bundle::read(ports.disk.as_ref(), self.lot.path()).unwrap();
        let lot = scripts(bundle).unwrap();
        let world = Arc::new(World::open(ports, self.data.path().to_owned(), true).unwrap());
        let settings = Settings::new(staff_reader(&lot));
        let edit = Edit::watch(&lot, self.lot.path().to_owned());
        let program = program_with(world, lot, settings, edit);
        act(&mut Driver::open(&program, (1280, 800)).unwrap());
    }
}

/// A kiosk, whatever its exact type.
trait Led {
    fn app(&self) -> &App;
    fn tell(&mut self, message: Message);
    fn words(&mut self) -> Vec<String>;

    /// A second passes.
    fn tick(&mut self) {
        self.tell(Message::LotAsked);
    }

    fn begin(&mut self, unit: &str) {
        self.tell(Message::Screen(screen::Message::Yard(yard::Message::UnitChosen(unit.into()))));
    }

    fn shows(&mut self, part: &str) -> bool {
        self.words().iter().any(|w| w.contains(part))
    }

    fn expect(&mut self, part: &str) {
        let words = self.words();
        assert!(words.iter().any(|w| w.contains(part)), "`{part}` is not among {words:#?}");
    }

    /// The title of a step of the open walk, as it is led.
    fn title(&self) -> String {
        let hall = self.app().hall().unwrap();
        let reader = staff_reader(&hall.scripts);
        hall.scripts.words.say(&reader, "step-keys", &sendoff::words::Args::new())
    }
}

impl<P: iced::Program<State = App, Message = Message>> Led for Driver<'_, P> {
    fn app(&self) -> &App {
        self.state()
    }

    fn tell(&mut self, message: Message) {
        self.message(message).unwrap();
    }

    fn words(&mut self) -> Vec<String> {
        self.texts().into_iter().map(|t| t.text).collect()
    }
}

#[test]
fn a_changed_file_is_led_from_by_new_walks_and_an_open_walk_keeps_its_own() {
    let desk = Desk::new();
    desk.lead(|kiosk| {
        kiosk.begin("wren");
        assert_eq!(kiosk.title(), "The key ring");
        desk.change(KEYS, TITLE, "step-keys = All the keys");
        kiosk.tick();
        assert_eq!(kiosk.title(), "The key ring", "the open walk keeps the scripts it began with");
        assert!(matches!(kiosk.app().screen(), Screen::Opening(_)), "and its page");
        kiosk.tell(Message::Screen(screen::Message::Opening(screen::opening::Message::YardAsked)));
        kiosk.expect("led from older scripts");
        kiosk.begin("wren");
        assert_eq!(kiosk.title(), "All the keys");
        assert_eq!(kiosk.app().notice(), None);
    });
}

#[test]
fn an_open_walk_goes_on_from_its_own_scripts_after_the_folder_has_changed() {
    let desk = Desk::new();
    desk.lead(|kiosk| kiosk.begin("wren"));
    desk.change(KEYS, TITLE, "step-keys = All the keys");
    desk.lead(|kiosk| {
        kiosk.expect("led from older scripts");
        let Screen::Yard(_) = kiosk.app().screen() else { panic!("the Yard") };
        let walk = Tablet::open(&system::ports(), desk.data.path()).unwrap().unwrap().open_walks().unwrap();
        kiosk.tell(Message::Screen(screen::Message::Yard(yard::Message::WalkChosen(walk[0].id.clone()))));
        assert_eq!(kiosk.title(), "The key ring");
    });
}

#[test]
fn what_cannot_be_read_is_shown_with_its_place_and_the_last_good_scripts_stay() {
    let desk = Desk::new();
    desk.lead(|kiosk| {
        desk.change(KEYS, TITLE, "step-keys = All the keys");
        kiosk.tick();
        desk.change(WREN, "solar: NotFitted,", "solar: NotFited,");
        let line = place_of(&desk.lot.path().join(WREN), "solar: NotFited");
        kiosk.tick();
        kiosk.expect(&format!("{WREN}:{line}:"));
        kiosk.expect("The last good scripts stay in use.");
        kiosk.expect("One fault in the scripts");
        kiosk.begin("wren");
        assert_eq!(kiosk.title(), "All the keys", "the last good scripts are used");
        kiosk.expect(&format!("{WREN}:{line}:"));
        desk.change(WREN, "solar: NotFited,", "solar: NotFitted,");
        kiosk.tick();
        assert!(!kiosk.shows(WREN), "what was mended is no longer shown");
    });
}

/// Line of a text in a file, from 1.
fn place_of(path: &Path, part: &str) -> usize {
    let text = std::fs::read_to_string(path).unwrap();
    text.lines().position(|l| l.contains(part)).unwrap() + 1
}

#[test]
fn a_unit_whose_scripts_have_a_fault_begins_no_new_walk_and_the_others_do() {
    let desk = Desk::new();
    desk.lead(|kiosk| {
        // Loads, but no rule lets it pass: a place that the sheet does not know.
        desk.change(
            WREN,
            "changes: [",
            "changes: [Drop(step: \"no-such-step\", reason: \"wren-no-shower\"), ",
        );
        kiosk.tick();
        kiosk.expect(&format!("{WREN}:"));
        kiosk.expect("A unit with a fault begins no new walk.");
        kiosk.expect("No new walk: its scripts have");
        kiosk.begin("wren");
        assert!(kiosk.app().hall().is_none());
        assert!(kiosk.app().notice().unwrap().text.contains("No new walk"));
        kiosk.begin("heron");
        assert_eq!(kiosk.app().hall().unwrap().walk.route().unit, "heron");
    });
}

#[test]
fn a_folder_that_is_gone_stops_nothing() {
    let desk = Desk::new();
    desk.lead(|kiosk| {
        let away = desk.lot.path().join("walkthroughs");
        let kept = desk.lot.path().join("kept");
        std::fs::rename(&away, &kept).unwrap();
        kiosk.tick();
        kiosk.expect("The last good scripts stay in use.");
        std::fs::rename(&kept, &away).unwrap();
        kiosk.tick();
        kiosk.begin("wren");
        assert_eq!(kiosk.title(), "The key ring");
        assert!(!kiosk.shows("The last good scripts stay in use."));
    });
}

#[test]
fn a_company_lot_with_a_fault_is_known_from_the_start_without_watching() {
    let desk = Desk::new();
    desk.change(WREN, "changes: [", "changes: [Drop(step: \"no-such-step\", reason: \"wren-no-shower\"), ");
    let lot = scripts(Bundle::read(system::ports().disk.as_ref(), desk.lot.path()).unwrap()).unwrap();
    let edit = Edit::still(&lot);
    assert!(edit.faults.of("wren") > 0 && edit.faults.of("heron") == 0, "{:?}", edit.faults);
    assert!(!edit.is_watching());
}
