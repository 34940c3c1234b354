//! Two windows, looked at from outside: the kiosk's, and an empty one of the toolkit.

use std::fs::File;
use std::os::unix::fs::FileExt as _;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use crate::display::{Display, SIDE, Window};
use crate::handoff::lead;
use crate::kiosk_support::Setup;
use crate::pair::Pair;
use crate::{EMPTY, median};

/// How often each window is opened.
const STARTS: usize = 9;
/// Longest start, as a multiple of the empty window's.
const START_BAR: f64 = 1.25;
/// Most memory that the kiosk holds beyond the empty window, in MB.
const MEMORY_BAR: f64 = 60.0;
/// Bytes of a pixel.
const PIXEL: u64 = 4;

/// An empty window of the toolkit, as large as the kiosk's, until it is killed.
pub fn empty_window() {
    fn update(_state: &mut (), _message: ()) {}
    fn view(_state: &()) -> iced::Element<'_, ()> {
        iced::widget::Space::new().into()
    }
    let window = iced::window::Settings {
        size: iced::Size::new(1280.0, 800.0),
        exit_on_close_request: false,
        ..iced::window::Settings::default()
    };
    iced::application(|| (), update, view).title("Empty").window(window).run().unwrap();
}

fn empty(display: &Display) -> Command {
    let mut command = display.command(std::env::current_exe().unwrap());
    command.env(EMPTY, "1");
    command
}

fn kiosk(display: &Display, data: &Path) -> Command {
    let mut command = display.command(env!("CARGO_BIN_EXE_sendoff"));
    command.arg("--windowed").arg("--data").arg(data);
    command
}

/// A data folder whose tablet has its name.
fn data(folder: &Path) -> std::path::PathBuf {
    let data = folder.join("data");
    let mut keys = Command::new(env!("CARGO_BIN_EXE_sendoff"));
    let made = keys.args(["keys", "new", "--name", "t2", "--data"]).arg(&data).output().unwrap();
    assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
    data
}

/// From the start of the program to the first pixel that it draws.
pub fn first_frames() {
    let display = Display::start();
    let folder = tempfile::tempdir().unwrap();
    let data = data(folder.path());
    let screen = File::open(display.memory()).unwrap();
    let page = first_page(&display, &screen, &data);
    let (mut floor, mut ours, mut usable) = (Vec::new(), Vec::new(), Vec::new());
    // In turn, so that whatever else the machine does falls on both.
    for _ in 0..STARTS {
        floor.push(first_frame(&screen, &mut empty(&display), None).0);
        let (first, whole) = first_frame(&screen, &mut kiosk(&display, &data), Some(&page));
        ours.push(first);
        usable.push(whole);
    }
    let (floor, ours, usable) = (median(floor), median(ours), median(usable));
    println!(
        "exec to first frame: kiosk {ours:.1} ms, empty window {floor:.1} ms, ratio {:.2} (bar {START_BAR})",
        ours / floor
    );
    println!("exec to first page that can be used: kiosk {usable:.1} ms");
}

/// A line through the head of the window: the controls that are always within reach.
fn head_line(screen: &File) -> Vec<u8> {
    let pixels = u64::from(SIDE * SIDE) * PIXEL;
    let head = screen.metadata().unwrap().len() - pixels;
    let mut bytes = vec![0; 1280 * PIXEL as usize];
    screen.read_exact_at(&mut bytes, head + u64::from(40 * SIDE) * PIXEL).unwrap();
    bytes
}

/// What stands there once the kiosk can be used.
fn first_page(display: &Display, screen: &File, data: &Path) -> Vec<u8> {
    let folder = tempfile::tempdir().unwrap();
    let _window = Window::of(display, &mut kiosk(display, data), "Sendoff", &folder.path().join("log"));
    std::thread::sleep(Duration::from_secs(2));
    let page = head_line(screen);
    assert!(page.iter().any(|byte| *byte != page[0]), "there is no page");
    page
}

/// When the first pixel is drawn, and when this page stands.
fn first_frame(screen: &File, program: &mut Command, page: Option<&[u8]>) -> (f64, f64) {
    let pixels = u64::from(SIDE * SIDE) * PIXEL;
    let head = screen.metadata().unwrap().len() - pixels;
    // A few pixels in the middle of the window.
    let at = head + u64::from(400 * SIDE + 640) * PIXEL;
    let black = || {
        let mut bytes = [0; 16];
        screen.read_exact_at(&mut bytes, at).unwrap();
        bytes.iter().all(|byte| *byte == 0)
    };
    while !black() {
        std::thread::yield_now();
    }
    let start = Instant::now();
    let mut child = program.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
    while black() {
        assert!(start.elapsed() < Duration::from_secs(60), "there is no frame");
        std::thread::yield_now();
    }
    let first = start.elapsed().as_secs_f64() * 1000.0;
    while page.is_some_and(|page| head_line(screen) != page) {
        assert!(start.elapsed() < Duration::from_secs(60), "there is no page");
        std::thread::yield_now();
    }
    let whole = start.elapsed().as_secs_f64() * 1000.0;
    child.kill().unwrap();
    child.wait().unwrap();
    (first, whole)
}

/// What a window holds after a whole handoff by pointer.
pub fn memory() {
    let mut pair = Pair::open(&Setup::new());
    lead(&mut pair, |pair, pages| {
        // The kiosk in memory takes over the walk that the window keeps: cards stand in an order of each walk.
        if pages == 0 {
            pair.kill_and_go_on();
        }
    });
    let ours = pair.window.memory();
    let folder = tempfile::tempdir().unwrap();
    let window = Window::of(&pair.display, &mut empty(&pair.display), "Empty", &folder.path().join("log"));
    let floor = window.memory();
    let megabytes = |kib: u64| kib as f64 * 1024.0 / 1e6;
    let (ours, floor) = (megabytes(ours), megabytes(floor));
    println!(
        "memory after a whole handoff: kiosk {ours:.0} MB, empty window {floor:.0} MB, {:+.0} MB (bar +{MEMORY_BAR:.0} MB)",
        ours - floor
    );
}

/// Work in a minute in which nobody touches anything.
pub fn idle() {
    let seconds = std::env::var("SENDOFF_BENCH_IDLE").ok().and_then(|s| s.parse().ok()).unwrap_or(60);
    let folder = tempfile::tempdir().unwrap();
    let data = data(folder.path());
    let log = folder.path().join("log");
    let (one, other) = (Display::start(), Display::start());
    let ours = Window::of(&one, &mut kiosk(&one, &data), "Sendoff", &log);
    let floor = Window::of(&other, &mut empty(&other), "Empty", &log);
    let before = (ticks(&ours), ticks(&floor));
    std::thread::sleep(Duration::from_secs(seconds));
    let (ours, floor) = (ticks(&ours) - before.0, ticks(&floor) - before.1);
    println!(
        "{seconds} s at rest: kiosk {} ms of processor, empty window {} ms (bar: no more)",
        ours * 10,
        floor * 10
    );
}

/// Processor time of a program, in hundredths of a second.
fn ticks(window: &Window) -> u64 {
    let stat = std::fs::read_to_string(format!("/proc/{}/stat", window.process())).unwrap();
    // Behind the name in brackets, user and system time are the 12th and 13th.
    let fields: Vec<&str> = stat.rsplit_once(')').unwrap().1.split_whitespace().collect();
    fields[11].parse::<u64>().unwrap() + fields[12].parse::<u64>().unwrap()
}
