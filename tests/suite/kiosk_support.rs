//! A kiosk in memory for tests of its screens: booted without a window, driven by what is on the screen,
//! rendered by the same program code as the window.
#![allow(
    dead_code,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "helpers of tests may fail loudly, and not every test uses every one"
)]

#[path = "kiosk_support/demo.rs"]
mod demo;
#[path = "kiosk_support/look.rs"]
mod look;
#[path = "kiosk_support/opening.rs"]
mod opening;
#[path = "kiosk_support/taken.rs"]
pub mod taken;

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};

use iced::advanced::clipboard;
use iced::advanced::renderer::Headless as _;
use iced::advanced::widget::Operation;
use iced::keyboard::{self, Key, key::Named};
use iced::{Event, Pixels, Point, Size, mouse, touch, window};
use iced_runtime::user_interface::{Cache, UserInterface};
use jiff::Timestamp;
use sendoff::kiosk::screen::{self, Screen, yard};
use sendoff::kiosk::theme::{Hand, TextSize, Theme, fonts};
use sendoff::kiosk::{App, Message, Settings, World, scripts, staff_reader};
use sendoff::ports::fake::{FixedEntropy, MemoryDisk, SetClock};
use sendoff::ports::{Clock, Ports};
use sendoff::script::{Bundle, Scripts};
use sendoff::tablet::Tablet;
use sendoff::walk::{Answer, Event as Happened, Walk};
use sendoff::words::Reader;

pub use demo::{Press, how};
pub use look::{Placed, Seen};
pub use opening::{opened, opening, party};

/// The sizes that every page must fit: landscape, large landscape, portrait.
pub const SIZES: [(f32, f32); 3] = [(1280.0, 800.0), (1920.0, 1200.0), (800.0, 1280.0)];
/// The language with accents and 40 % more length.
pub const PSEUDO: &str = "en-XA";
/// When every test happens: a Friday morning on the lot.
pub const NOW: &str = "2026-07-24T15:10:00Z";
const DATA: &str = "/data";

/// The demo lot, read once for all tests.
pub fn lot() -> Arc<Scripts> {
    static LOT: OnceLock<Arc<Scripts>> = OnceLock::new();
    Arc::clone(LOT.get_or_init(|| scripts(Bundle::demo()).expect("the demo lot has no faults")))
}

/// The letters are shared by all renderers of a process: one test at a time lays out and draws.
fn one_at_a_time() -> MutexGuard<'static, ()> {
    static LETTERS: Mutex<()> = Mutex::new(());
    static LOADED: OnceLock<usize> = OnceLock::new();
    let guard = LETTERS.lock().unwrap_or_else(PoisonError::into_inner);
    LOADED.get_or_init(fonts::only_bundled);
    guard
}

/// What a kiosk is booted with.
#[derive(Debug, Clone)]
pub struct Setup {
    pub size: (f32, f32),
    pub staff: String,
    pub theme: Theme,
    pub text: TextSize,
    /// Whether our own keys come up for text fields.
    pub keys: bool,
    /// Whether the left hand presses.
    pub left: bool,
    pub disk: MemoryDisk,
    pub clock: HandClock,
    pub lot: Arc<Scripts>,
    /// The office's archive.
    pub archive: Option<PathBuf>,
}

/// A clock that stands still until a hand moves it. Clones are the same clock.
#[derive(Debug, Clone)]
pub struct HandClock(pub SetClock);

impl HandClock {
    pub fn new() -> Self {
        Self(SetClock::new(NOW.parse().unwrap()))
    }

    /// Lets time pass; less than none sets the clock back.
    pub fn pass(&self, seconds: i64) {
        match u64::try_from(seconds) {
            Ok(seconds) => self.0.pass(std::time::Duration::from_secs(seconds)),
            Err(_) => self.0.set(self.0.now() + jiff::SignedDuration::from_secs(seconds)),
        }
    }
}

impl Clock for HandClock {
    fn now(&self) -> Timestamp {
        self.0.now()
    }

    fn running(&self) -> Option<std::time::Duration> {
        self.0.running()
    }

    fn zone(&self) -> Option<String> {
        self.0.zone()
    }
}

impl Setup {
    /// Landscape, US English, paper, usual text, no keys on the screen, an empty disk.
    pub fn new() -> Self {
        Self {
            size: SIZES[0],
            staff: "en-US".into(),
            theme: Theme::Paper,
            text: TextSize::Usual,
            keys: false,
            left: false,
            disk: MemoryDisk::new(),
            clock: HandClock::new(),
            lot: lot(),
            archive: None,
        }
    }

    /// Another lot than the demo lot.
    pub fn lot(self, lot: Arc<Scripts>) -> Self {
        Self { lot, ..self }
    }

    pub fn size(self, size: (f32, f32)) -> Self {
        Self { size, ..self }
    }

    pub fn staff(self, language: &str) -> Self {
        Self { staff: language.to_owned(), ..self }
    }

    pub fn theme(self, theme: Theme) -> Self {
        Self { theme, ..self }
    }

    pub fn text(self, text: TextSize) -> Self {
        Self { text, ..self }
    }

    pub fn left(self) -> Self {
        Self { left: true, ..self }
    }

    pub fn keys(self) -> Self {
        Self { keys: true, ..self }
    }

    pub fn archive(self, dir: &str) -> Self {
        Self { archive: Some(dir.into()), ..self }
    }

    pub fn disk(self, disk: &MemoryDisk) -> Self {
        Self { disk: disk.clone(), ..self }
    }

    pub fn ports(&self) -> Ports {
        Ports {
            disk: Arc::new(self.disk.clone()),
            clock: Arc::new(self.clock.clone()),
            entropy: Arc::new(FixedEntropy([7; 32])),
        }
    }

    fn tablet(&self) -> Tablet {
        let ports = self.ports();
        let known = Tablet::open(&ports, Path::new(DATA)).unwrap();
        known.unwrap_or_else(|| Tablet::first_start(&ports, Path::new(DATA), "t2").unwrap())
    }

    /// The kiosk of tablet `t2` with the demo lot, at the Yard.
    pub fn boot(self) -> Kiosk {
        let _ = self.tablet();
        let world = World::open(self.ports(), PathBuf::from(DATA), true).unwrap();
        let world = world.with_archive(self.archive.clone());
        let lot = Arc::clone(&self.lot);
        let staff = Reader::new(&self.staff, staff_reader(&lot).system);
        let hand = if self.left { Hand::Left } else { Hand::Right };
        let settings =
            Settings { theme: self.theme, text: self.text, keys: self.keys, hand, ..Settings::new(staff) };
        let (app, _) = App::new(Arc::new(world), lot, settings);
        Kiosk::new(app, self)
    }

    /// The kiosk at the Opening of a new walk for a unit.
    pub fn begin(self, unit: &str) -> Kiosk {
        let mut kiosk = self.boot();
        kiosk.message(Message::Screen(screen::Message::Yard(yard::Message::UnitChosen(unit.into()))));
        kiosk.walk();
        kiosk
    }

    /// The kiosk where a walk for a unit stands after these events, taken up again from its journal.
    pub fn resume(self, unit: &str, events: &[Happened]) -> Kiosk {
        let (tablet, lot) = (self.tablet(), Arc::clone(&self.lot));
        let mut keeper = tablet.begin(&lot, unit, false).unwrap();
        for event in events {
            if let Happened::CautionAnswered { caution, by, how: Answer::Demonstrate, shown, .. } = event {
                while let Some(tried) = demo::due(&lot, keeper.walk(), caution, *by, &shown.language) {
                    keeper.propose(&tablet.entry(&lot, tried)).unwrap();
                }
            }
            keeper.propose(&tablet.entry(&lot, event.clone())).unwrap_or_else(|e| panic!("{event:?}: {e}"));
        }
        let id = keeper.walk().id().to_owned();
        drop(keeper);
        let mut kiosk = self.boot();
        kiosk.message(Message::Screen(screen::Message::Yard(yard::Message::WalkChosen(id))));
        kiosk.walk();
        kiosk
    }
}

/// A kiosk without a window.
pub struct Kiosk {
    pub app: App,
    pub setup: Setup,
    renderer: iced::Renderer,
    cache: Option<Cache>,
    cursor: mouse::Cursor,
}

impl Kiosk {
    fn new(app: App, setup: Setup) -> Self {
        let _one = one_at_a_time();
        let new = <iced::Renderer as iced::advanced::renderer::Headless>::new(
            fonts::REGULAR,
            Pixels(16.0),
            Some("tiny-skia"),
        );
        // It never waits, so that one poll is enough.
        let mut context = std::task::Context::from_waker(std::task::Waker::noop());
        let std::task::Poll::Ready(Some(renderer)) = std::pin::pin!(new).poll(&mut context) else {
            panic!("no renderer without a window")
        };
        Self { app, setup, renderer, cache: Some(Cache::default()), cursor: mouse::Cursor::Unavailable }
    }

    /// The open walk as it stands on disk.
    pub fn walk(&self) -> &Walk {
        &self.app.hall().unwrap_or_else(|| panic!("no walk is open: {:?}", self.app.notice())).walk
    }

    pub fn screen(&self) -> &Screen {
        self.app.screen()
    }

    /// Fails when staff are told of something that went wrong.
    pub fn no_notice(&self) {
        assert_eq!(self.app.notice(), None);
    }

    /// Gives the kiosk a message, as a control would.
    pub fn message(&mut self, message: Message) {
        let _ = self.app.update(message);
    }

    /// Turns the window to another size.
    pub fn resize(&mut self, size: (f32, f32)) {
        self.setup.size = size;
    }

    fn with<R>(
        &mut self,
        act: impl FnOnce(
            &mut UserInterface<'_, Message, iced::Theme, iced::Renderer>,
            &mut iced::Renderer,
            mouse::Cursor,
        ) -> R,
    ) -> R {
        let _one = one_at_a_time();
        let size = Size::new(self.setup.size.0, self.setup.size.1);
        let cache = self.cache.take().unwrap_or_default();
        let mut interface = UserInterface::build(self.app.view(), size, cache, &mut self.renderer);
        let result = act(&mut interface, &mut self.renderer, self.cursor);
        self.cache = Some(interface.into_cache());
        result
    }

    /// Sends one event to the window and takes in what comes of it.
    pub fn send(&mut self, event: Event) {
        let at = match &event {
            Event::Mouse(mouse::Event::CursorMoved { position })
            | Event::Touch(
                touch::Event::FingerPressed { position, .. }
                | touch::Event::FingerMoved { position, .. }
                | touch::Event::FingerLifted { position, .. },
            ) => Some(*position),
            _ => None,
        };
        if let Some(at) = at {
            self.cursor = mouse::Cursor::Available(at);
        }
        let mut messages = Vec::new();
        self.with(|interface, renderer, cursor| {
            let _ = interface.update(&[event], cursor, renderer, &mut clipboard::Null, &mut messages);
        });
        for message in messages {
            self.message(message);
        }
    }

    /// Lets time pass to `now`: holds, blinking, what comes into view.
    pub fn tick(&mut self, now: std::time::Instant) {
        self.send(Event::Window(window::Event::RedrawRequested(now)));
    }

    fn operate(&mut self, operation: &mut dyn Operation) {
        self.with(|interface, renderer, _| interface.operate(renderer, operation));
    }

    /// Everything on the screen.
    pub fn look(&mut self) -> Seen {
        let mut look = look::Look::new(self.setup.size);
        self.operate(&mut look);
        look.seen
    }

    /// Whether these very words are on the screen, be it scrolled away.
    pub fn shows(&mut self, words: &str) -> bool {
        self.look().texts.iter().any(|t| t.text == words)
    }

    /// Fails unless these very words are on the screen.
    pub fn expect(&mut self, words: &str) {
        let seen = self.look();
        assert!(seen.texts.iter().any(|t| t.text == words), "`{words}` is not among {:#?}", seen.words());
    }

    /// What staff read under a key.
    pub fn say(&self, key: &str) -> String {
        let lot = &self.setup.lot;
        let reader = Reader::new(&self.setup.staff, staff_reader(lot).system);
        lot.words.say(&reader, key, &sendoff::words::Args::new())
    }

    /// What stands in a text field, or its placeholder.
    pub fn field(&mut self, id: &str) -> String {
        self.named(id).text
    }

    /// Where these words can be pressed: scrolled into view. Of several, the first is 0.
    pub fn reach(&mut self, words: &str, nth: usize) -> Point {
        let found = |seen: &Seen| seen.texts.iter().filter(|t| t.text == words).nth(nth).cloned();
        let seen = self.look();
        let placed =
            found(&seen).unwrap_or_else(|| panic!("`{words}` ({nth}) is not among {:#?}", seen.words()));
        self.reveal(&placed);
        let placed = found(&self.look()).expect("still there after scrolling");
        placed.visible.unwrap_or_else(|| panic!("`{words}` cannot be seen: {placed:?}")).center()
    }

    /// Scrolls something into sight.
    pub fn reveal(&mut self, placed: &Placed) {
        if let Some(scroll) = placed.scroll {
            self.operate(&mut look::Reveal::new(scroll, placed.bounds));
        }
    }

    /// Clicks these words with the mouse.
    pub fn click(&mut self, words: &str) {
        self.click_nth(words, 0);
    }

    pub fn click_nth(&mut self, words: &str, nth: usize) {
        let at = self.reach(words, nth);
        self.click_at(at);
    }

    pub fn click_at(&mut self, at: Point) {
        self.send(Event::Mouse(mouse::Event::CursorMoved { position: at }));
        self.send(Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)));
        self.send(Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left)));
    }

    /// Taps these words with a finger.
    pub fn touch(&mut self, words: &str) {
        let at = self.reach(words, 0);
        self.finger_down(at);
        self.finger_up(at);
    }

    pub fn finger_down(&mut self, position: Point) {
        self.send(Event::Touch(touch::Event::FingerPressed { id: touch::Finger(1), position }));
    }

    pub fn finger_up(&mut self, position: Point) {
        self.send(Event::Touch(touch::Event::FingerLifted { id: touch::Finger(1), position }));
    }

    /// Clicks the control that can be pressed and is called so by its id.
    pub fn click_id(&mut self, id: &str) {
        let at = self.place_of(id);
        self.click_at(at);
    }

    /// Where the control that is called so by its id can be pressed.
    pub fn place_of(&mut self, id: &str) -> Point {
        let placed = self.named(id);
        self.reveal(&placed);
        self.named(id).visible.unwrap_or_else(|| panic!("`{id}` cannot be seen")).center()
    }

    fn named(&mut self, id: &str) -> Placed {
        let seen = self.look();
        let found = seen.focusable.iter().find(|(found, _)| found == id).map(|(_, placed)| placed.clone());
        found.unwrap_or_else(|| panic!("nothing is called `{id}`"))
    }

    /// Clicks a text field, puts this into it in place of what stood there.
    pub fn fill(&mut self, id: &str, text: &str) {
        self.click_id(id);
        self.operate(&mut look::SelectAll::new(id));
        self.key(Key::Named(Named::Backspace), None);
        for letter in text.chars() {
            let letter = letter.to_string();
            self.key(Key::Character(letter.as_str().into()), Some(&letter));
        }
    }

    /// Lets a key go.
    pub fn key_up(&mut self, key: Key) {
        self.send(Event::Keyboard(keyboard::Event::KeyReleased {
            key: key.clone(),
            modified_key: key,
            physical_key: keyboard::key::Physical::Unidentified(keyboard::key::NativeCode::Unidentified),
            location: keyboard::Location::Standard,
            modifiers: keyboard::Modifiers::default(),
        }));
    }

    /// Presses a key.
    pub fn key(&mut self, key: Key, text: Option<&str>) {
        self.send(Event::Keyboard(keyboard::Event::KeyPressed {
            key: key.clone(),
            modified_key: key,
            physical_key: keyboard::key::Physical::Unidentified(keyboard::key::NativeCode::Unidentified),
            location: keyboard::Location::Standard,
            modifiers: keyboard::Modifiers::default(),
            text: text.map(Into::into),
            repeat: false,
        }));
    }

    /// A frame as RGBA bytes, with its width and height.
    pub fn frame(&mut self) -> (Vec<u8>, u32, u32) {
        self.frame_at(std::time::Instant::now())
    }

    /// As [`Kiosk::frame`], at this time.
    pub fn frame_at(&mut self, now: std::time::Instant) -> (Vec<u8>, u32, u32) {
        self.tick(now);
        let theme = self.app.toolkit_theme();
        let base = iced::theme::Base::base(&theme);
        let (width, height) = (self.setup.size.0 as u32, self.setup.size.1 as u32);
        self.with(|interface, renderer, cursor| {
            let style = iced::advanced::renderer::Style { text_color: base.text_color };
            // Widgets learn only now whether they have the focus, and forget it with the interface.
            let redraw = [Event::Window(window::Event::RedrawRequested(now))];
            let _ = interface.update(&redraw, cursor, renderer, &mut clipboard::Null, &mut Vec::new());
            interface.draw(renderer, &theme, &style, cursor);
        });
        let _one = one_at_a_time();
        let rgba = self.renderer.screenshot(Size::new(width, height), 1.0, base.background_color);
        (rgba, width, height)
    }

    /// Draws a frame and fails when it is of one color.
    pub fn renders(&mut self) {
        let (rgba, ..) = self.frame();
        assert!(rgba.chunks_exact(4).any(|pixel| pixel != &rgba[..4]), "an empty frame");
    }

    /// Writes a frame as PNG, for eyes.
    pub fn save(&mut self, path: &str) {
        let (rgba, width, height) = self.frame();
        image::save_buffer(path, &rgba, width, height, image::ExtendedColorType::Rgba8).unwrap();
    }
}
