//! A real window and a kiosk in memory that get the same input.

use std::io::Read as _;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use iced::mouse::{self, Button, ScrollDelta};
use iced::{Event, Point};
use sendoff::ports::fake::MemoryDisk;
use sendoff::ports::{Access, Disk as _};

use crate::kiosk_support::{Kiosk, Setup};

/// How long the window may take to have done what was asked, before the test gives up.
const PATIENCE: Duration = Duration::from_secs(30);
/// How long a hold is held, in seconds: the ring closes in 1.2.
const HELD: &str = "1.5";

/// Both of them.
pub struct Pair {
    pub mirror: Kiosk,
    now: Instant,
    folder: tempfile::TempDir,
    server: Child,
    display: String,
    window: Child,
    window_id: String,
}

impl Pair {
    /// Opens the window at the Yard of tablet `t2`.
    pub fn open() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let mut server = Command::new("Xvfb")
            .args(["-displayfd", "1", "-screen", "0", "1280x800x24", "-nolisten", "tcp"])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut number = Vec::new();
        let mut out = server.stdout.take().unwrap();
        let mut byte = [0];
        while out.read(&mut byte).unwrap() == 1 && byte[0] != b'\n' {
            number.push(byte[0]);
        }
        let display = format!(":{}", String::from_utf8(number).unwrap());
        let data = folder.path().join("data");
        let made = Command::new(env!("CARGO_BIN_EXE_sendoff"))
            .args(["keys", "new", "--name", "t2", "--data"])
            .arg(&data)
            .output()
            .unwrap();
        assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
        let window = launch(&display, &data);
        let mut pair = Self {
            mirror: Setup::new().keys().boot(),
            now: Instant::now(),
            folder,
            server,
            display,
            window,
            window_id: String::new(),
        };
        pair.find_window();
        pair
    }

    /// The data folder of the window.
    pub fn data(&self) -> &Path {
        self.folder.path()
    }

    fn find_window(&mut self) {
        let found = self.xdotool(&["search", "--sync", "--onlyvisible", "--name", "^Sendoff$"]);
        self.window_id = found.lines().last().expect("a window").to_owned();
        let id = self.window_id.clone();
        // Without a window manager nobody else gives the window its keys.
        let _ = self.xdotool(&["windowfocus", "--sync", &id]);
        self.look();
    }

    fn xdotool(&self, args: &[&str]) -> String {
        let out = Command::new("xdotool").env("DISPLAY", &self.display).args(args).output().unwrap();
        assert!(out.status.success(), "xdotool {args:?}: {}", String::from_utf8_lossy(&out.stderr));
        String::from_utf8(out.stdout).unwrap()
    }

    /// Takes a picture of the window: it has drawn by then.
    fn look(&self) {
        let taken = Command::new("import")
            .env("DISPLAY", &self.display)
            .args(["-window", "root", "-depth", "8"])
            .arg(self.folder.path().join("shot.rgb"))
            .status()
            .unwrap();
        assert!(taken.success());
    }

    /// Takes pictures until two in a row are the same and the window did nothing between them: what was kept has
    /// reached the screen, and a press counts. A machine that is busy elsewhere makes it late, not idle.
    fn at_rest(&self) {
        let until = Instant::now() + PATIENCE;
        let mut last = None;
        loop {
            self.look();
            let picture = std::fs::read(self.folder.path().join("shot.rgb")).unwrap();
            let now = self.worked().map(|worked| (worked, picture));
            if (now.is_some() && now == last) || Instant::now() > until {
                return;
            }
            last = now;
        }
    }

    /// Processor time of each thread of the window; none while one of them runs or waits for its turn.
    fn worked(&self) -> Option<Vec<String>> {
        let threads = std::fs::read_dir(format!("/proc/{}/task", self.window.id())).unwrap();
        let stats = threads.flatten().filter_map(|t| std::fs::read_to_string(t.path().join("stat")).ok());
        let mut all = Vec::new();
        for stat in stats {
            // Behind the name in brackets: state first, then user and system time as the 12th and 13th.
            let fields: Vec<&str> = stat.rsplit_once(')').unwrap().1.split_whitespace().collect();
            if fields[0] == "R" {
                return None;
            }
            all.push(format!("{} {} {}", stat.split(' ').next().unwrap(), fields[11], fields[12]));
        }
        Some(all)
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
            self.look();
        }
    }

    /// What the kiosk in memory shows, for a failure; the window's picture is kept.
    fn state(&mut self) -> String {
        let kept = std::env::temp_dir().join("sendoff-window.png");
        let taken = Command::new("import")
            .env("DISPLAY", &self.display)
            .args(["-window", "root"])
            .arg(&kept)
            .status();
        assert!(taken.unwrap().success());
        format!("picture in {}, expected: {:#?}", kept.display(), self.mirror.look().words())
    }

    fn events_kept(&self) -> usize {
        let walks = self.folder.path().join("data/walks");
        let Ok(entries) = std::fs::read_dir(walks) else { return 0 };
        let journal =
            entries.flatten().map(|e| e.path()).find(|p| p.extension().is_some_and(|e| e == "journal"));
        journal.and_then(|path| std::fs::read_to_string(path).ok()).map_or(0, |text| text.lines().count())
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
        let _ = self.xdotool(&["mousemove", &at.x.round().to_string(), &at.y.round().to_string()]);
    }

    /// Where these words can be pressed, after the wheel has brought them into sight.
    fn reach(&mut self, words: &str, nth: usize) -> Point {
        for turn in 0..60 {
            let seen = self.mirror.look();
            let found = seen.texts.iter().filter(|t| t.text == words).nth(nth).cloned();
            let placed =
                found.unwrap_or_else(|| panic!("`{words}` ({nth}) is not among {:#?}", seen.words()));
            match placed.visible {
                Some(visible) if visible.height > placed.bounds.height * 0.8 => return visible.center(),
                _ => self.wheel(placed.bounds.center(), turn == 0),
            }
        }
        panic!("`{words}` does not come into sight");
    }

    /// Turns the wheel toward a point above or below: to the end first, where both stand alike whatever one notch
    /// is worth to a server of windows, then notch by notch.
    fn wheel(&mut self, toward: Point, to_the_end: bool) {
        let down = toward.y > 400.0;
        let x = toward.x.clamp(40.0, 1240.0);
        self.move_to(Point::new(x, 380.0));
        let y = if down { -1.0 } else { 1.0 };
        let notches = if to_the_end { 40 } else { 1 };
        for _ in 0..notches {
            let delta = ScrollDelta::Lines { x: 0.0, y };
            self.mirror.send(Event::Mouse(mouse::Event::WheelScrolled { delta }));
        }
        let button = if down { "5" } else { "4" };
        let _ = self.xdotool(&["click", "--repeat", &notches.to_string(), "--delay", "4", button]);
        self.tick();
        self.at_rest();
    }

    pub fn click(&mut self, words: &str) {
        self.click_nth(words, 0);
    }

    pub fn click_nth(&mut self, words: &str, nth: usize) {
        let at = self.reach(words, nth);
        self.click_at(at);
    }

    /// The last click: after it there is no journal to wait for, but a record.
    pub fn click_last(&mut self, words: &str) {
        self.click(words);
        let until = Instant::now() + PATIENCE;
        while self.records().is_empty() {
            assert!(Instant::now() < until, "no record; {}", self.state());
            self.look();
        }
    }

    pub fn click_id(&mut self, id: &str) {
        for turn in 0..60 {
            let seen = self.mirror.look();
            let placed = seen.focusable.iter().find(|(name, _)| name == id).map(|(_, placed)| placed.clone());
            let placed = placed.unwrap_or_else(|| panic!("nothing is called `{id}`"));
            match placed.visible {
                Some(visible) if visible.height > placed.bounds.height * 0.8 => {
                    return self.click_at(visible.center());
                }
                _ => self.wheel(placed.bounds.center(), turn == 0),
            }
        }
        panic!("`{id}` does not come into sight");
    }

    fn click_at(&mut self, at: Point) {
        let at = Point::new(at.x.round(), at.y.round());
        self.mirror.click_at(at);
        let _ = self.xdotool(&["mousemove", &at.x.to_string(), &at.y.to_string(), "click", "1"]);
        self.in_step();
    }

    /// Types into an empty text field.
    pub fn fill(&mut self, id: &str, text: &str) {
        self.click_id(id);
        for letter in text.chars() {
            let letter = letter.to_string();
            self.mirror.key(iced::keyboard::Key::Character(letter.as_str().into()), Some(&letter));
        }
        let _ = self.xdotool(&["type", "--delay", "12", text]);
        self.in_step();
        // Our own keys are up; their last one puts them away.
        if self.mirror.shows("Done") {
            self.click("Done");
        }
    }

    /// Turns the wheel to the end of the page.
    pub fn read_to_the_end(&mut self) {
        self.move_to(Point::new(700.0, 400.0));
        for _ in 0..12 {
            let delta = ScrollDelta::Lines { x: 0.0, y: -1.0 };
            self.mirror.send(Event::Mouse(mouse::Event::WheelScrolled { delta }));
        }
        let _ = self.xdotool(&["click", "--repeat", "12", "--delay", "4", "5"]);
        self.wait(1100);
        // The page must have been whole for a second before a DANGER can be held; the time is the page's own.
        let _ = self.xdotool(&["sleep", "1.2"]);
        self.look();
    }

    /// Presses and holds until the ring closes.
    pub fn hold(&mut self, words: &str) {
        let at = self.reach(words, 0);
        self.move_to(at);
        self.mirror.send(Event::Mouse(mouse::Event::ButtonPressed(Button::Left)));
        self.tick();
        self.wait(1500);
        let _ = self.xdotool(&["mousedown", "1", "sleep", HELD, "mouseup", "1"]);
        self.mirror.send(Event::Mouse(mouse::Event::ButtonReleased(Button::Left)));
        self.in_step();
    }

    /// Draws a few strokes around the words on the pad.
    pub fn sign(&mut self, words: &str) {
        let at = self.reach(words, 0);
        let path: Vec<Point> = (0..24_u8)
            .map(|i| {
                let (i, up) = (f32::from(i), if i % 2 == 0 { -30.0 } else { 24.0 });
                Point::new(at.x + i * 15.0, at.y - 120.0 + up)
            })
            .collect();
        self.move_to(path[0]);
        self.mirror.send(Event::Mouse(mouse::Event::ButtonPressed(Button::Left)));
        let _ = self.xdotool(&["mousedown", "1"]);
        for point in &path[1..] {
            self.move_to(*point);
        }
        self.mirror.send(Event::Mouse(mouse::Event::ButtonReleased(Button::Left)));
        let _ = self.xdotool(&["mouseup", "1"]);
        self.in_step();
    }

    /// Kills the window, opens it again and goes on with the walk; the kiosk in memory does the same by hand.
    pub fn kill_and_go_on(&mut self) {
        self.window.kill().unwrap();
        let _ = self.window.wait().unwrap();
        // It goes on with what the window has kept: cards of a demonstration stand in an order of each walk.
        let setup = Setup::new().keys();
        copy(&self.folder.path().join("data"), Path::new("/data"), &setup.disk);
        self.window = launch(&self.display, &self.folder.path().join("data"));
        self.find_window();
        setup.clock.0.set(jiff::Timestamp::now());
        self.mirror = setup.boot();
        self.tick();
        self.click("Go on");
    }

    fn records(&self) -> Vec<PathBuf> {
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

    /// Ends window and server.
    pub fn close(mut self) {
        self.window.kill().unwrap();
        self.server.kill().unwrap();
        let _ = (self.window.wait().unwrap(), self.server.wait().unwrap());
    }
}

impl Drop for Pair {
    fn drop(&mut self) {
        // After a failure as well nothing may stay behind.
        let _ = (self.window.kill(), self.server.kill());
    }
}

fn launch(display: &str, data: &Path) -> Child {
    Command::new(env!("CARGO_BIN_EXE_sendoff"))
        .arg("--data")
        .arg(data)
        .env("DISPLAY", display)
        .env("WINIT_X11_SCALE_FACTOR", "1")
        .stdin(Stdio::null())
        .spawn()
        .unwrap()
}

/// Copies a folder with all that is in it to a disk in memory.
fn copy(from: &Path, to: &Path, disk: &MemoryDisk) {
    disk.make_dir(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap().flatten() {
        let name = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &name, disk);
        } else {
            disk.replace(&name, &std::fs::read(entry.path()).unwrap(), Access::Owner).unwrap();
        }
    }
}
