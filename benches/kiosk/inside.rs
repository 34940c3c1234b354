//! From a touch to its frame, on each screen, at 1280×800 with software rendering: a whole handoff with a finger in
//! memory, and the pages that do not lie on its way.

use std::collections::BTreeMap;
use std::time::Instant;

use iced::Point;
use sendoff::kiosk::screen::Screen;

use crate::finger::{Does, Finger, tell};
use crate::handoff::{Hands, lead};
use crate::kiosk_support::{Kiosk, Setup};
use crate::{median, p99};

/// Longest wait from a touch to its frame on the Walk, in milliseconds.
const BAR: f64 = 16.0;
/// How often something beside the way is touched.
const ROUNDS: usize = 100;

/// Prints the wait on each screen.
pub fn touches() {
    let mut times: BTreeMap<&'static str, Vec<f64>> = BTreeMap::new();
    let mut finger = Finger::new(Setup::new().keys().boot(), |kiosk: &mut Kiosk, at: Point, now: Instant| {
        let all = times.entry(name(kiosk.screen())).or_default();
        // Pressing shows what is pressed; lifting does it.
        for does in [Does::Press, Does::Lift] {
            let start = Instant::now();
            tell(kiosk, 1, does, at);
            let (frame, width, height) = kiosk.frame_at(now);
            all.push(start.elapsed().as_secs_f64() * 1000.0);
            assert_eq!(frame.len(), (width * height * 4) as usize);
        }
    });
    lead(&mut finger, |finger, pages| {
        // The plan of both floors, drawn anew each time.
        if pages % 8 == 0 && finger.kiosk.shows("Inside") {
            in_turn(finger, &["Inside", "Outside"], 20);
        }
    });
    finger.press("Back to the Yard");
    in_turn(&mut finger, &["Emergency", "Close the card"], ROUNDS);
    finger.press("Read again");
    finger.press("Tap to read");
    in_turn(&mut finger, &["Inside", "Outside"], ROUNDS);
    drop(finger);
    for (screen, times) in times {
        let bar = if screen == "Walk" { format!(" (bar: p99 {BAR} ms)") } else { String::new() };
        let (count, p50, p99) = (times.len(), median(times.clone()), p99(times));
        println!("touch to frame, {screen}: p50 {p50:.1} ms, p99 {p99:.1} ms of {count}{bar}");
    }
}

/// Touches this in turn, where it stands.
fn in_turn(hands: &mut impl Hands, words: &[&str], rounds: usize) {
    for round in 0..rounds {
        hands.press_last(words[round % words.len()]);
    }
}

const fn name(screen: &Screen) -> &'static str {
    match screen {
        Screen::Waiting | Screen::First(_) => "Start",
        Screen::Yard(_) => "Yard",
        Screen::Opening(_) => "Opening",
        Screen::Walk(_) => "Walk",
        Screen::Caution(_) => "the renter's pages",
        Screen::Closing(_) => "Closing",
        Screen::Sealed(_) => "Sealed",
        Screen::Reread(_) => "Reread",
        Screen::Staff(_) => "Staff",
        _ => "other",
    }
}
