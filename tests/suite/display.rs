//! A display that nobody sees, and the kiosk's window on it.

use std::io::{Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use crate::tools::has;

/// How long the window may take to have done what was asked, before a test gives up. A machine that is busy
/// elsewhere makes it late, not idle.
pub const PATIENCE: Duration = Duration::from_secs(60);
/// Width and height of the display: a window fits upright and lying.
pub const SIDE: u32 = 1280;
/// Between two looks at a condition.
const PAUSE: Duration = Duration::from_millis(1);

/// Tools that a window cannot do without, and how to ask for them.
const TOOLS: [(&str, &[&str]); 3] = [("Xvfb", &["-help"]), ("xdotool", &[]), ("python3", &["-c", ""])];

/// Asks a window to close, as a manager of windows does.
const CLOSE: &str = "
import ctypes as c, sys
x = c.CDLL('libX11.so.6')
x.XOpenDisplay.restype = c.c_void_p
x.XInternAtom.restype = c.c_ulong
class Message(c.Structure):
    _fields_ = [('type', c.c_int), ('serial', c.c_ulong), ('sent', c.c_int), ('display', c.c_void_p),
                ('window', c.c_ulong), ('message', c.c_ulong), ('format', c.c_int), ('data', c.c_long * 5),
                ('rest', c.c_byte * 96)]
display = c.c_void_p(x.XOpenDisplay(None))
atom = lambda name: x.XInternAtom(display, name, 0)
window = int(sys.argv[1])
message = Message(33, 0, 1, None, window, atom(b'WM_PROTOCOLS'), 32)
message.data[0] = atom(b'WM_DELETE_WINDOW')
x.XSendEvent(display, c.c_ulong(window), 0, c.c_long(0), c.byref(message))
x.XSync(display, 0)
";

/// Whether everything that a window needs is there.
pub fn can_open_windows() -> bool {
    TOOLS.iter().all(|(tool, probe)| has(tool, probe))
}

/// A display that ends with the test.
pub struct Display {
    server: Child,
    name: String,
    folder: tempfile::TempDir,
}

impl Display {
    pub fn start() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let mut server = Command::new("Xvfb")
            .args(["-displayfd", "1", "-screen", "0", &format!("{SIDE}x{SIDE}x24"), "-nolisten", "tcp"])
            // Or it would begin anew, and refuse everybody meanwhile, whenever the last window has gone.
            .args(["-noreset", "-fbdir"])
            .arg(folder.path())
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
        let name = format!(":{}", String::from_utf8(number).unwrap());
        Self { server, name, folder }
    }

    /// A program that will open its window here, in pixels of the display.
    pub fn command(&self, program: impl AsRef<std::ffi::OsStr>) -> Command {
        let mut command = Command::new(program);
        command.env("DISPLAY", &self.name).env("WINIT_X11_SCALE_FACTOR", "1").stdin(Stdio::null());
        command
    }

    /// Where the server keeps what is on the display: a header, then [`Display::picture`].
    pub fn memory(&self) -> PathBuf {
        self.folder.path().join("Xvfb_screen0")
    }

    /// Runs xdotool; what it wrote, or why it could not.
    pub fn try_xdotool(&self, args: &[&str]) -> Result<String, String> {
        let out = self.command("xdotool").args(args).output().unwrap();
        let words = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
        if out.status.success() { Ok(words(&out.stdout)) } else { Err(words(&out.stderr)) }
    }

    pub fn xdotool(&self, args: &[&str]) -> String {
        self.try_xdotool(args).unwrap_or_else(|why| panic!("xdotool {args:?}: {why}"))
    }

    /// What is on the display: blue, green, red, nothing, row by row. The server keeps it in a file.
    pub fn picture(&self) -> Vec<u8> {
        let file = std::fs::read(self.memory()).unwrap();
        let pixels = (SIDE * SIDE * 4) as usize;
        file[file.len() - pixels..].to_vec()
    }

    /// Keeps what is on the display, for eyes.
    pub fn save(&self, path: &Path) {
        let rgb: Vec<u8> = self.picture().chunks_exact(4).flat_map(|p| [p[2], p[1], p[0]]).collect();
        image::save_buffer(path, &rgb, SIDE, SIDE, image::ExtendedColorType::Rgb8).unwrap();
    }
}

impl Drop for Display {
    fn drop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}

/// The kiosk in a window of its own; killed when it is dropped.
pub struct Window {
    process: Child,
    pub id: String,
    log: PathBuf,
}

impl Window {
    /// Opens the window on a data folder, and waits until it stands. What it complains of is added to a log beside
    /// the folder.
    pub fn open(display: &Display, data: &Path) -> Self {
        let mut kiosk = display.command(env!("CARGO_BIN_EXE_sendoff"));
        kiosk.args(["--windowed", "--data"]).arg(data).env("RUST_BACKTRACE", "1");
        Self::of(display, &mut kiosk, "Sendoff", &data.with_extension("log"))
    }

    /// The window with a title that a program opens.
    pub fn of(display: &Display, program: &mut Command, title: &str, log: &Path) -> Self {
        let complaints = std::fs::OpenOptions::new().create(true).append(true).open(log).unwrap();
        let process = program.stdout(Stdio::null()).stderr(complaints).spawn().unwrap();
        let mut window = Self { process, id: String::new(), log: log.to_owned() };
        let until = Instant::now() + PATIENCE;
        while window.id.is_empty() {
            assert!(window.lives(), "the program did not start: {}", window.complaints());
            assert!(Instant::now() < until, "there is no window: {}", window.complaints());
            let found = display.try_xdotool(&["search", "--onlyvisible", "--name", &format!("^{title}$")]);
            window.id = found.ok().and_then(|all| all.lines().last().map(str::to_owned)).unwrap_or_default();
            pause();
        }
        // Without a window manager nobody else gives the window its keys.
        let _ = display.xdotool(&["windowfocus", "--sync", &window.id]);
        window.rest(display);
        window
    }

    /// The number of its process.
    pub fn process(&self) -> u32 {
        self.process.id()
    }

    /// Whether the program runs.
    pub fn lives(&mut self) -> bool {
        self.process.try_wait().unwrap().is_none()
    }

    /// Waits until the program has ended, and says whether it ended well.
    pub fn ended_well(&mut self) -> bool {
        let until = Instant::now() + PATIENCE;
        while self.lives() && Instant::now() < until {
            pause();
        }
        self.process.try_wait().unwrap().is_some_and(|status| status.success())
    }

    pub fn kill(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
    }

    /// What it wrote where errors go.
    pub fn complaints(&self) -> String {
        std::fs::read_to_string(&self.log).unwrap_or_default()
    }

    /// Memory that it holds, in KiB.
    pub fn memory(&self) -> u64 {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.process())).unwrap();
        let line = status.lines().find_map(|l| l.strip_prefix("VmRSS:")).unwrap();
        line.trim().trim_end_matches(" kB").parse().unwrap()
    }

    /// Asks it to close, as a manager of windows does.
    pub fn ask_to_close(&self, display: &Display) {
        let asked = display.command("python3").args(["-c", CLOSE, &self.id]).output().unwrap();
        assert!(asked.status.success(), "{}", String::from_utf8_lossy(&asked.stderr));
    }

    /// Turns the window to another size.
    pub fn resize(&mut self, display: &Display, width: u32, height: u32) {
        let (width, height) = (width.to_string(), height.to_string());
        let _ = display.xdotool(&["windowsize", &self.id, &width, &height]);
        self.rest(display);
        // A window that moved by itself as it opened may have let go of its keys.
        let _ = display.xdotool(&["windowfocus", "--sync", &self.id]);
        self.rest(display);
    }

    /// Waits until neither program nor server has anything left to do, and says whether that came. What was put in
    /// has been taken in by then, and what came of it is kept and drawn.
    ///
    /// Whoever has input waiting runs or waits for its turn. So, when no thread ran between two looks and each slept
    /// in both, there was a moment between them when all slept and nothing was on its way.
    pub fn rest(&mut self, display: &Display) -> bool {
        let until = Instant::now() + PATIENCE;
        let mut last = None;
        while self.lives() {
            let now = ran(&[display.server.id(), self.process()]);
            if now.is_some() && now == last {
                return true;
            }
            if Instant::now() > until {
                return false;
            }
            last = now;
            pause();
        }
        true
    }
}

impl Drop for Window {
    fn drop(&mut self) {
        // After a failure as well nothing may stay behind.
        self.kill();
    }
}

fn pause() {
    std::thread::park_timeout(PAUSE);
}

/// How often each thread of these programs has run; none while one of them does or waits for its turn.
fn ran(programs: &[u32]) -> Option<Vec<String>> {
    let mut all = Vec::new();
    for program in programs {
        for thread in std::fs::read_dir(format!("/proc/{program}/task")).ok()?.flatten() {
            // A thread may end meanwhile; then the next look is another one.
            let status = std::fs::read_to_string(thread.path().join("status")).ok()?;
            let of = |name: &str| status.lines().find(|line| line.starts_with(name)).map(str::to_owned);
            if !of("State:")?.trim_start_matches("State:").trim().starts_with('S') {
                return None;
            }
            all.push(format!("{:?}", (thread.file_name(), of("voluntary"), of("nonvoluntary"))));
        }
    }
    Some(all)
}

/// Says something where it is seen without a failure.
pub fn say(words: &str) {
    std::io::stderr().write_all(format!("{words}\n").as_bytes()).unwrap();
}
