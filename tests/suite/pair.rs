//! A real window and a kiosk in memory that get the same input.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use iced::mouse::{self, Button, ScrollDelta};
use iced::{Event, Point};
use jiff::Timestamp;
use sendoff::kiosk::Message;
use sendoff::ports::fake::MemoryDisk;
use sendoff::ports::{Access, Clock as _, Disk as _};

use crate::display::{Display, PATIENCE, Window};
use crate::handoff::Hands;
use crate::kiosk_support::{Kiosk, Placed, Setup};

/// How long a hold is held, in seconds: the ring closes in 1.2.
const HELD: &str = "1.5";

/// Where the bar of a scroll is pressed, from its top to its end.
const PLACES: u8 = 24;

/// Both of them.
pub struct Pair {
    pub mirror: Kiosk,
    now: Instant,
    folder: tempfile::TempDir,
    pub display: Display,
    pub window: Window,
}

impl Pair {
    /// Opens the window at the Yard of tablet `t2`, with whatever is on the disk of the setup.
    pub fn open(setup: &Setup) -> Self {
        let (disk, clock, size) = (setup.disk.clone(), setup.clock.clone(), setup.size);
        clock.pass(Timestamp::now().duration_since(clock.now()).as_secs());
        let mirror = Setup { clock, ..Setup::new().keys().disk(&disk).size(size) }.boot();
        let folder = tempfile::tempdir().unwrap();
        export(&mirror.setup, folder.path());
        let display = Display::start();
        let window = Window::open(&display, &folder.path().join("data"));
        let mut pair = Self { mirror, now: Instant::now(), folder, display, window };
        pair.turn(size);
        pair
    }

    /// The folder in which the window has its data.
    pub fn data(&self) -> &Path {
        self.folder.path()
    }

    fn xdotool(&self, args: &[&str]) {
        let _ = self.display.xdotool(args);
    }

    /// Turns both to another size.
    pub fn turn(&mut self, (width, height): (f32, f32)) {
        self.window.resize(&self.display, width as u32, height as u32);
        self.mirror.resize((width, height));
        let resized = iced::window::Event::Resized(iced::Size::new(width, height));
        self.mirror.send(Event::Window(resized));
        self.in_step();
    }

    /// Runs a command of the program on the data folder.
    pub fn sendoff(&self, args: &[&str]) -> String {
        let out = Command::new(env!("CARGO_BIN_EXE_sendoff"))
            .args(args)
            .arg("--data")
            .arg(self.folder.path().join("data"))
            .output()
            .unwrap();
        assert!(out.status.success(), "{args:?}: {}", String::from_utf8_lossy(&out.stderr));
        String::from_utf8(out.stdout).unwrap()
    }

    /// Waits until the window's journal holds as many events as the kiosk in memory.
    fn in_step(&mut self) {
        self.tick();
        // The window has taken the input in by the time it rests.
        self.at_rest();
        assert!(self.window.lives(), "the window has ended: {}", self.window.complaints());
        let Some(hall) = self.mirror.app.hall() else { return };
        if matches!(self.mirror.screen(), sendoff::kiosk::screen::Screen::Sealed(_)) {
            return;
        }
        let wanted = hall.walk.events();
        let until = Instant::now() + PATIENCE;
        loop {
            let kept = self.events_kept();
            if kept == wanted {
                return self.at_rest();
            }
            assert!(kept < wanted, "the window has {kept} events, {wanted} were wanted; {}", self.state());
            assert!(Instant::now() < until, "the window has {kept} of {wanted} events; {}", self.state());
            self.at_rest();
        }
    }

    fn at_rest(&mut self) {
        let rests = self.window.rest(&self.display);
        assert!(rests, "the window never rests; {}", self.state());
    }

    /// What the kiosk in memory shows, for a failure; the window's picture is kept.
    fn state(&mut self) -> String {
        let kept = std::env::temp_dir().join("sendoff-window.png");
        self.display.save(&kept);
        let last: Vec<String> = self.journal().lines().rev().take(4).map(str::to_owned).collect();
        let words = self.mirror.look();
        format!("picture in {}, last events {last:#?}, expected: {:#?}", kept.display(), words.words())
    }

    fn events_kept(&self) -> usize {
        self.journal().lines().count()
    }

    fn journal(&self) -> String {
        let walks = self.folder.path().join("data/walks");
        let Ok(entries) = std::fs::read_dir(walks) else { return String::new() };
        let journal =
            entries.flatten().map(|e| e.path()).find(|p| p.extension().is_some_and(|e| e == "journal"));
        journal.and_then(|path| std::fs::read_to_string(path).ok()).unwrap_or_default()
    }

    /// Lets the kiosk in memory draw until all that came into sight has told so.
    fn tick(&mut self) {
        for _ in 0..3 {
            self.mirror.tick(self.now);
        }
    }

    fn wait(&mut self, milliseconds: u64) {
        self.now += Duration::from_millis(milliseconds);
        self.tick();
    }

    fn move_to(&mut self, at: Point) {
        self.mirror.send(Event::Mouse(mouse::Event::CursorMoved { position: at }));
        self.xdotool(&["mousemove", &at.x.round().to_string(), &at.y.round().to_string()]);
    }

    /// Where these words can be pressed, after the wheel has brought them into sight.
    fn reach(&mut self, words: &str, nth: usize) -> Point {
        for turn in 0..=PLACES {
            let seen = self.mirror.look();
            let found = seen.texts.iter().filter(|t| t.text == words).nth(nth).cloned();
            let placed =
                found.unwrap_or_else(|| panic!("`{words}` ({nth}) is not among {:#?}", seen.words()));
            match placed.visible {
                Some(visible) if visible.height > placed.bounds.height * 0.8 => return visible.center(),
                _ => self.scroll(&placed, turn),
            }
        }
        panic!("`{words}` does not come into sight");
    }

    /// Where what is called so by its id can be pressed.
    fn reach_id(&mut self, id: &str) -> Point {
        for turn in 0..=PLACES {
            let seen = self.mirror.look();
            let placed = seen.focusable.iter().find(|(name, _)| name == id).map(|(_, placed)| placed.clone());
            let placed = placed.unwrap_or_else(|| panic!("nothing is called `{id}`: {:#?}", seen.words()));
            match placed.visible {
                Some(visible) if visible.height > placed.bounds.height * 0.8 => return visible.center(),
                _ => self.scroll(&placed, turn),
            }
        }
        panic!("`{id}` does not come into sight");
    }

    /// Brings something nearer: at first by the wheel, to the end of the scroll that it lies in, where both stand
    /// alike whatever one notch is worth to a server of windows; then by the bar of the scroll, place by place.
    fn scroll(&mut self, toward: &Placed, turn: u8) {
        let around = toward.around;
        if turn == 0 {
            self.move_to(Point::new(around.center_x().round(), around.center_y().round()));
            self.turn_wheel(toward.at.center_y() > around.center_y(), 40);
            return self.at_rest();
        }
        let down = around.height * (f32::from(turn) - 0.5) / f32::from(PLACES);
        self.click_at(Point::new(around.x + around.width - 5.0, around.y + down));
    }

    fn turn_wheel(&mut self, down: bool, notches: u32) {
        let delta = ScrollDelta::Lines { x: 0.0, y: if down { -1.0 } else { 1.0 } };
        for _ in 0..notches {
            self.mirror.send(Event::Mouse(mouse::Event::WheelScrolled { delta }));
        }
        let button = if down { "5" } else { "4" };
        self.xdotool(&["click", "--repeat", &notches.to_string(), "--delay", "4", button]);
        self.tick();
    }

    pub fn click(&mut self, words: &str) {
        self.press(words);
    }

    fn click_at(&mut self, at: Point) {
        let at = Point::new(at.x.round(), at.y.round());
        self.mirror.click_at(at);
        self.xdotool(&["mousemove", &at.x.to_string(), &at.y.to_string(), "click", "1"]);
        self.in_step();
    }

    /// Asks both to close, as a manager of windows does.
    pub fn ask_to_close(&mut self) {
        self.mirror.message(Message::CloseAsked);
        self.window.ask_to_close(&self.display);
        self.in_step();
    }

    /// The last press there is: these words, where they stand last.
    pub fn press_at_the_end(&mut self, words: &str) {
        let there = self.mirror.look().texts.iter().filter(|text| text.text == words).count();
        let at = self.reach(words, there - 1);
        self.mirror.click_at(at);
        self.xdotool(&["mousemove", &at.x.round().to_string(), &at.y.round().to_string(), "click", "1"]);
    }

    /// Kills the window, opens it again and goes on with the walk. The kiosk in memory goes on with what the window
    /// has kept: cards of a demonstration stand in an order of each walk.
    pub fn kill_and_go_on(&mut self) {
        self.window.kill();
        let data = self.folder.path().join("data");
        let disk = MemoryDisk::new();
        import(&data, Path::new("/data"), &disk);
        self.window = Window::open(&self.display, &data);
        let setup = self.mirror.setup.clone();
        let size = setup.size;
        setup.clock.pass(Timestamp::now().duration_since(setup.clock.now()).as_secs());
        self.mirror = setup.disk(&disk).boot();
        self.turn(size);
        self.click("Go on");
    }

    /// What was sealed.
    pub fn records(&self) -> Vec<PathBuf> {
        let Ok(entries) = std::fs::read_dir(self.folder.path().join("data/records")) else {
            return Vec::new();
        };
        entries.flatten().map(|e| e.path()).filter(|p| p.extension().is_some_and(|e| e == "zip")).collect()
    }

    /// The one record that was sealed.
    pub fn record(&self) -> PathBuf {
        let all = self.records();
        assert_eq!(all.len(), 1, "{all:?}");
        all[0].clone()
    }
}

impl Hands for Pair {
    fn kiosk(&mut self) -> &mut Kiosk {
        &mut self.mirror
    }

    fn press_nth(&mut self, words: &str, nth: usize) {
        let at = self.reach(words, nth);
        self.click_at(at);
    }

    fn press_at(&mut self, at: Point) {
        self.click_at(at);
    }

    fn press_id(&mut self, id: &str) {
        let at = self.reach_id(id);
        self.click_at(at);
    }

    /// Types into an empty text field.
    fn fill(&mut self, id: &str, text: &str) {
        self.press_id(id);
        for letter in text.chars() {
            let letter = letter.to_string();
            self.mirror.key(iced::keyboard::Key::Character(letter.as_str().into()), Some(&letter));
        }
        self.xdotool(&["type", "--delay", "12", text]);
        self.in_step();
        // Our own keys are up; their last one puts them away.
        if self.mirror.shows("Done") {
            self.click("Done");
        }
    }

    /// Turns the wheel to the end of the page.
    fn read_to_the_end(&mut self) {
        let (width, height) = self.mirror.setup.size;
        self.move_to(Point::new((width / 2.0).round(), (height / 2.0).round()));
        self.turn_wheel(true, 16);
        self.wait(1100);
        if self.mirror.shows("DANGER") {
            // Such a page must have been whole for a second before its ring lives; the time is the page's own.
            self.xdotool(&["sleep", "1.2"]);
        }
        self.at_rest();
    }

    /// Presses and holds until the ring closes.
    fn hold(&mut self, id: &str) {
        let at = self.reach_id(id);
        self.move_to(at);
        self.mirror.send(Event::Mouse(mouse::Event::ButtonPressed(Button::Left)));
        self.tick();
        self.wait(1500);
        self.xdotool(&["mousedown", "1", "sleep", HELD, "mouseup", "1"]);
        self.mirror.send(Event::Mouse(mouse::Event::ButtonReleased(Button::Left)));
        self.in_step();
    }

    /// Draws a few strokes around the words on the pad.
    fn sign(&mut self, words: &str) {
        let at = self.reach(words, 0);
        let path: Vec<Point> = (0..24_u8)
            .map(|i| {
                let (i, up) = (f32::from(i), if i % 2 == 0 { -30.0 } else { 24.0 });
                Point::new(at.x + i * 15.0, at.y - 120.0 + up)
            })
            .collect();
        self.move_to(path[0]);
        self.mirror.send(Event::Mouse(mouse::Event::ButtonPressed(Button::Left)));
        self.xdotool(&["mousedown", "1"]);
        for point in &path[1..] {
            self.move_to(*point);
        }
        self.mirror.send(Event::Mouse(mouse::Event::ButtonReleased(Button::Left)));
        self.xdotool(&["mouseup", "1"]);
        self.in_step();
    }

    /// The last click: after it there is no journal to wait for, but a record.
    fn seal(&mut self, words: &str) {
        self.click(words);
        let until = Instant::now() + PATIENCE;
        while self.records().is_empty() {
            assert!(Instant::now() < until, "no record; {}", self.state());
            self.at_rest();
        }
    }
}

/// Writes the disk of a kiosk in memory into a folder.
fn export(setup: &Setup, folder: &Path) {
    let ports = sendoff::ports::system::ports();
    for (path, bytes) in setup.disk.files() {
        let to = folder.join(path.strip_prefix("/").unwrap());
        ports.disk.make_dir(to.parent().unwrap()).unwrap();
        let access = setup.disk.access(&path).unwrap_or(Access::Usual);
        ports.disk.put_new(&to, &bytes, access).unwrap();
    }
}

/// Reads a folder into a disk in memory.
fn import(from: &Path, to: &Path, disk: &MemoryDisk) {
    disk.make_dir(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap().flatten() {
        let name = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            import(&entry.path(), &name, disk);
        } else {
            disk.replace(&name, &std::fs::read(entry.path()).unwrap(), Access::Owner).unwrap();
        }
    }
}
