//! Random input, as a child or a thief would give it: at the real window, and in memory, where one sees inside.
//!
//! `SENDOFF_RANDOM_SECONDS` says for how long, `SENDOFF_SEED` repeats a run.

mod dice;
mod memory;
pub mod scene;

use std::time::{Duration, Instant};

use sendoff::journal::open_walks;
use sendoff::ports::Disk as _;
use sendoff::ports::system::{SystemDisk, ports};
use sendoff::tablet::Tablet;

use crate::display::{can_open_windows, say};
use crate::pair::Pair;
use dice::Dice;
use scene::{SCENES, enter, setup};

/// How many batches of input a scene gets.
const BATCHES: u32 = 12;
/// How much memory a kiosk may ever hold, in KiB: far more than it needs, far less than a tablet has.
const MEMORY: u64 = 600 * 1024;

#[test]
fn random_input_stops_nothing_and_finds_no_way_out_of_the_window() {
    if !can_open_windows() {
        return;
    }
    let seconds = std::env::var("SENDOFF_RANDOM_SECONDS").ok().and_then(|s| s.parse().ok()).unwrap_or(10);
    let until = Instant::now() + Duration::from_secs(seconds);
    let seed = dice::seed();
    say(&format!("random input at the window: SENDOFF_SEED={seed} SENDOFF_RANDOM_SECONDS={seconds}"));
    let (mut rounds, mut actions, mut most) = (0, 0, 0);
    while rounds == 0 || Instant::now() < until {
        let mut dice = Dice::new(seed.wrapping_add(rounds));
        let scene = SCENES[dice.below(SCENES.len())];
        let mut pair = Pair::open(&setup(scene, &mut dice));
        enter(&mut pair, scene);
        let done = Round { seed, rounds, scene, done: Vec::new() }.run(pair, &mut dice, until);
        rounds += 1;
        actions += done.0;
        most = most.max(done.1);
    }
    say(&format!(
        "random input at the window: {rounds} rounds, {actions} actions, at most {} MiB",
        most / 1024
    ));
}

/// One scene, and what was done in it.
struct Round {
    seed: u64,
    rounds: u64,
    scene: &'static str,
    done: Vec<String>,
}

impl Round {
    /// Lets input rain; how many actions there were, and how much memory was held.
    fn run(mut self, mut pair: Pair, dice: &mut Dice, until: Instant) -> (usize, u64) {
        for _ in 0..BATCHES {
            self.batch(&mut pair, dice);
            self.hold(pair.window.lives(), "the program has ended", &mut pair);
            let rests = pair.window.rest(&pair.display);
            self.hold(rests, "the program never rests", &mut pair);
            let wrote = pair.window.complaints();
            self.hold(wrote.is_empty(), "the program complains", &mut pair);
            if Instant::now() > until {
                break;
            }
        }
        self.still_answers(&mut pair);
        let seen = pair.display.xdotool(&["search", "--onlyvisible", "--name", "^Sendoff$"]);
        self.hold(seen.lines().any(|id| id == pair.window.id), "the window is gone", &mut pair);
        let memory = pair.window.memory();
        self.hold(memory < MEMORY, "it holds too much memory", &mut pair);
        pair.window.kill();
        self.replays(&mut pair);
        (self.done.len(), memory)
    }

    fn hold(&self, holds: bool, what: &str, pair: &mut Pair) {
        if holds {
            return;
        }
        let picture = std::env::temp_dir().join("sendoff-random.png");
        pair.display.save(&picture);
        let last = &self.done[self.done.len().saturating_sub(60)..];
        panic!(
            "{what}: SENDOFF_SEED={} round {} ({}), picture in {}, last input: {}\nstderr: {}",
            self.seed,
            self.rounds,
            self.scene,
            picture.display(),
            last.join(" | "),
            pair.window.complaints()
        );
    }

    fn batch(&mut self, pair: &mut Pair, dice: &mut Dice) {
        let mut words: Vec<String> = Vec::new();
        for _ in 0..8 {
            let action = dice.action(&pair.window.id);
            words.extend(action.iter().cloned());
            self.done.push(action.join(" "));
        }
        let words: Vec<&str> = words.iter().map(String::as_str).collect();
        if let Err(why) = pair.display.try_xdotool(&words) {
            self.hold(pair.window.lives(), "the program has ended", pair);
            panic!("xdotool {words:?}: {why}");
        }
        if dice.below(6) == 0 {
            self.done.push("ask to close".into());
            pair.window.ask_to_close(&pair.display);
        }
    }

    /// After all is let go and Escape is pressed, the window still shows where Tab leads to.
    fn still_answers(&mut self, pair: &mut Pair) {
        let _ = pair.display.xdotool(&[
            "keyup",
            "Control_L",
            "keyup",
            "Alt_L",
            "keyup",
            "Shift_L",
            "keyup",
            "Super_L",
            "mouseup",
            "1",
            "windowfocus",
            "--sync",
            &pair.window.id,
        ]);
        pair.window.resize(&pair.display, 1280, 800);
        let _ = pair.display.xdotool(&["mousemove", "3", "797", "key", "Escape", "key", "Escape"]);
        let mut seen = Vec::new();
        for _ in 0..4 {
            let rests = pair.window.rest(&pair.display);
            self.hold(rests, "the program never rests", pair);
            seen.push(pair.display.picture());
            let _ = pair.display.xdotool(&["key", "Tab"]);
        }
        let answers = seen.windows(2).any(|two| two[0] != two[1]);
        self.hold(answers, "the window no longer answers to Tab", pair);
    }

    /// Every walk that is open goes on from its journal, with every event that is in it; every record is whole.
    fn replays(&self, pair: &mut Pair) {
        let data = pair.data().join("data");
        let tablet = Tablet::open(&ports(), &data).unwrap().expect("the tablet has its name");
        for walk in open_walks(&SystemDisk, &data).unwrap() {
            let (path, id) = (walk.path.clone(), walk.id.clone());
            let journal = SystemDisk.read(&path, 1 << 30).unwrap();
            let lines = journal.iter().filter(|byte| **byte == b'\n').count();
            let taken = tablet.resume(walk);
            self.hold(taken.is_ok(), &format!("walk {id} does not replay: {taken:?}"), pair);
            let walk = taken.unwrap().resumed.keeper.walk().clone();
            self.hold(walk.events() == lines, &format!("{} of {lines} events", walk.events()), pair);
        }
        for record in pair.records() {
            let signers = data.with_file_name("allowed_signers");
            std::fs::write(&signers, pair.sendoff(&["keys", "public"])).unwrap();
            let paths = (record.to_str().unwrap(), signers.to_str().unwrap());
            let _ = pair.sendoff(&["verify", paths.0, "--signers", paths.1]);
        }
    }
}
