//! From a touch to its frame, on each screen, at 1280×800 with software rendering: a whole handoff with a finger in
//! memory, and the pages that do not lie on its way.

use std::collections::BTreeMap;
use std::time::Instant;

use iced::Point;
use sendoff::kiosk::screen::Screen;

use crate::finger::{Does, Finger, touch};
use crate::handoff::{Hands, lead};
use crate::kiosk_support::taken::Taken;
use crate::kiosk_support::{Kiosk, Setup};
use crate::{median, p99};

/// Longest wait from a touch to its frame on the Walk, in milliseconds.
const BAR: f64 = 16.0;
/// How often something beside the way is touched.
const ROUNDS: usize = 100;

/// Prints the wait on each screen.
pub fn touches() {
    let mut times: BTreeMap<&'static str, Vec<f64>> = BTreeMap::new();
    let mut worst: Vec<(Taken, &'static str, String)> = Vec::new();
    let mut finger = Finger::new(Setup::new().keys().boot(), |kiosk: &mut Kiosk, at: Point, now: Instant| {
        let screen = name(kiosk.screen());
        let what = at_point(kiosk, at);
        // Pressing shows what is pressed; lifting does it.
        for does in [Does::Press, Does::Lift] {
            let taken = kiosk.touch_to_frame(&touch(1, does, at), now);
            times.entry(screen).or_default().push(taken.all());
            worst.push((taken, screen, format!("{does:?} {what}")));
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
    tell_worst(worst);
    for (screen, times) in times {
        let bar = if screen == "Walk" { format!(" (bar: p99 {BAR} ms)") } else { String::new() };
        let (count, p50, p99) = (times.len(), median(times.clone()), p99(times));
        println!("touch to frame, {screen}: p50 {p50:.1} ms, p99 {p99:.1} ms of {count}{bar}");
    }
}

/// The words that lie under a finger.
fn at_point(kiosk: &mut Kiosk, at: Point) -> String {
    let texts = kiosk.look().texts;
    let under = texts.iter().rev().find(|text| text.visible.is_some_and(|seen| seen.contains(at)));
    under.map_or_else(|| format!("{at:?}"), |text| text.text.clone())
}

/// Prints as many of the slowest touches as `SENDOFF_BENCH_WORST` says.
fn tell_worst(mut all: Vec<(Taken, &'static str, String)>) {
    let count = std::env::var("SENDOFF_BENCH_WORST").ok().and_then(|s| s.parse().ok()).unwrap_or(0);
    all.sort_by(|a, b| b.0.all().total_cmp(&a.0.all()));
    for (Taken { answer, page, draw, pixels }, screen, what) in all.into_iter().take(count) {
        println!(
            "answer {answer:.1}, page {page:.1}, draw {draw:.1}, pixels {pixels:.1} ms: {screen}, {what}"
        );
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
