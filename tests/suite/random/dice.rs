//! Where randomness comes from, and what hands do with it.

use std::time::SystemTime;

use crate::display::SIDE;

/// Keys with whatever is held beside them.
const KEYS: [&str; 44] = [
    "Escape",
    "Tab",
    "shift+Tab",
    "Return",
    "space",
    "BackSpace",
    "Delete",
    "Left",
    "Right",
    "Up",
    "Down",
    "Home",
    "End",
    "Page_Up",
    "Page_Down",
    "Insert",
    "Menu",
    "Print",
    "Pause",
    "F1",
    "F4",
    "F11",
    "alt+F4",
    "alt+Tab",
    "alt+space",
    "alt+F2",
    "ctrl+alt+Delete",
    "ctrl+alt+BackSpace",
    "ctrl+alt+F2",
    "ctrl+alt+t",
    "super",
    "super+d",
    "ctrl+q",
    "ctrl+w",
    "ctrl+c",
    "ctrl+v",
    "ctrl+x",
    "ctrl+a",
    "ctrl+z",
    "ctrl+r",
    "plus",
    "minus",
    "XF86PowerOff",
    "XF86Back",
];
const TEXTS: [&str; 8] =
    ["0", "17", "48213.4", "Ann", "1-1", "9999999999", "'; (\"{}", "ZzzZzzZzzZzzZzzZzzZzz"];
const SIZES: [(u32, u32); 7] =
    [(1280, 800), (800, 1280), (1280, 1280), (1024, 600), (320, 240), (40, 900), (1, 1)];

/// The seed of this run: the one that is given, or the time.
pub fn seed() -> u64 {
    let given = std::env::var("SENDOFF_SEED").ok().and_then(|seed| seed.parse().ok());
    let now = || SystemTime::now().duration_since(SystemTime::UNIX_EPOCH).unwrap().as_micros();
    given.unwrap_or_else(|| u64::try_from(now()).unwrap())
}

/// A small generator (splitmix64): the same for the same seed.
#[derive(Debug, Clone)]
pub struct Dice(u64);

impl Dice {
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A number below `end`.
    pub fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        usize::try_from((z ^ (z >> 31)) % end as u64).unwrap()
    }

    /// A point of the display; more often where windows have something.
    fn point(&mut self) -> [String; 2] {
        let high = if self.below(3) == 0 { SIDE } else { 800 };
        [self.below(SIDE as usize).to_string(), self.below(high as usize).to_string()]
    }

    /// Words for xdotool.
    pub fn action(&mut self, window: &str) -> Vec<String> {
        let [x, y] = self.point();
        let words = |all: &[&str]| all.iter().map(|&word| word.to_owned()).collect::<Vec<_>>();
        let at = ["mousemove", x.as_str(), y.as_str()];
        match self.below(20) {
            0..=7 => words(&[at.as_slice(), &["click", "1"]].concat()),
            8 => words(&[at.as_slice(), &["click", "--repeat", "2", "--delay", "30", "1"]].concat()),
            9 => words(&[at.as_slice(), &["click", ["2", "3", "8", "9"][self.below(4)]]].concat()),
            10 | 11 => {
                let turns = (1 + self.below(12)).to_string();
                let button = ["4", "5", "5", "6", "7"][self.below(5)];
                words(&[at.as_slice(), &["click", "--repeat", &turns, "--delay", "2", button]].concat())
            }
            12 | 13 => self.drag(&at),
            14 => words(&[at.as_slice(), &["mousedown", "1", "sleep", "0.4", "mouseup", "1"]].concat()),
            15 => {
                let (width, height) = SIZES[self.below(SIZES.len())];
                words(&["windowsize", window, &width.to_string(), &height.to_string()])
            }
            16 => words(&["type", "--delay", "2", "--args", "1", TEXTS[self.below(TEXTS.len())]]),
            _ => words(&["key", "--delay", "2", KEYS[self.below(KEYS.len())]]),
        }
    }

    /// A stroke with the button down, that may end outside the window.
    fn drag(&mut self, at: &[&str]) -> Vec<String> {
        let mut all: Vec<String> = at.iter().map(|&word| word.to_owned()).collect();
        all.extend(["mousedown", "1"].map(str::to_owned));
        for _ in 0..3 + self.below(6) {
            all.push("mousemove".to_owned());
            all.extend(self.point());
        }
        all.extend(["mouseup", "1"].map(str::to_owned));
        all
    }
}
