//! A finger on a kiosk in memory: it presses, moves and lifts, as a touch screen tells of it.

use std::time::{Duration, Instant};

use iced::touch::{self, Finger as Id};
use iced::{Event, Point};

use crate::handoff::Hands;
use crate::kiosk_support::{Kiosk, Placed};

/// How long a hold is held, in milliseconds: the ring closes in 1200.
const HELD: u64 = 1500;

/// How long the page takes to follow, in milliseconds of its own time.
const SETTLES: u64 = 150;

/// A finger, and how it taps, told of the time on the glass.
pub struct Finger<T> {
    pub kiosk: Kiosk,
    pub now: Instant,
    tap: T,
}

/// A finger comes down, moves, or is lifted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Does {
    Press,
    Move,
    Lift,
}

/// A finger, as the glass tells of it.
pub fn touch(finger: u64, does: Does, position: Point) -> Event {
    let id = Id(finger);
    Event::Touch(match does {
        Does::Press => touch::Event::FingerPressed { id, position },
        Does::Move => touch::Event::FingerMoved { id, position },
        Does::Lift => touch::Event::FingerLifted { id, position },
    })
}

/// Tells a kiosk of a finger.
pub fn tell(kiosk: &mut Kiosk, finger: u64, does: Does, position: Point) {
    kiosk.send(touch(finger, does, position));
}

/// Drags a finger along a way, told of at each point.
pub fn drag(kiosk: &mut Kiosk, finger: u64, way: &[Point]) {
    tell(kiosk, finger, Does::Press, way[0]);
    for point in &way[1..] {
        tell(kiosk, finger, Does::Move, *point);
    }
    tell(kiosk, finger, Does::Lift, *way.last().unwrap());
}

impl<T: FnMut(&mut Kiosk, Point, Instant)> Finger<T> {
    pub fn new(kiosk: Kiosk, tap: T) -> Self {
        Self { kiosk, now: Instant::now(), tap }
    }

    /// Lets time pass on the glass; on the wall a second.
    pub fn wait(&mut self, milliseconds: u64) {
        self.kiosk.setup.clock.pass(1);
        for _ in 0..milliseconds.div_ceil(50) {
            self.now += Duration::from_millis(50);
            self.kiosk.tick(self.now);
        }
    }

    fn tap_at(&mut self, at: Point) {
        (self.tap)(&mut self.kiosk, at, self.now);
        self.wait(SETTLES);
    }

    /// Where something can be pressed, after a finger has dragged it into sight.
    fn reach(&mut self, what: &str, find: impl Fn(&mut Kiosk) -> Option<Placed>) -> Point {
        for turn in 0..40 {
            let Some(placed) = find(&mut self.kiosk) else {
                panic!("`{what}` is not among {:#?}", self.kiosk.look().words())
            };
            match placed.visible {
                Some(visible) if visible.height > placed.bounds.height * 0.8 => return visible.center(),
                // Where hardly a line is in sight, strokes of one length pass over it.
                _ if turn > 30 => self.kiosk.reveal(&placed),
                _ => self.scroll(&placed),
            }
        }
        panic!("`{what}` does not come into sight");
    }

    fn reach_id(&mut self, id: &str) -> Point {
        self.reach(id, |kiosk| {
            kiosk.look().focusable.into_iter().find(|(name, _)| name == id).map(|(_, placed)| placed)
        })
    }

    /// Drags what something lies in so that it comes nearer.
    fn scroll(&mut self, toward: &Placed) {
        let middle = toward.around.center();
        let by = (toward.around.height / 8.0).min(60.0);
        self.drag_page(middle, if toward.at.center_y() > middle.y { -by } else { by });
    }

    fn drag_page(&mut self, from: Point, by: f32) {
        let way: Vec<Point> = (0_u8..4).map(|i| Point::new(from.x, from.y + by * f32::from(i))).collect();
        drag(&mut self.kiosk, 1, &way);
        self.wait(SETTLES);
    }

    /// Types one letter on our own keys: in capitals or on the other layer where it stands there.
    fn letter(&mut self, letter: char) {
        let key = letter.to_string();
        for _ in 0..4 {
            let seen = self.kiosk.look();
            let there = |key: &str| seen.texts.iter().any(|t| t.text == key);
            let (upper, lower) = (letter.to_uppercase().to_string(), letter.to_lowercase().to_string());
            let other = if letter.is_uppercase() { lower } else { upper };
            if letter == ' ' {
                return self.key_of_last_row(3);
            }
            if there(&key) {
                return self.press_last(&key);
            }
            if letter.is_alphabetic() && there(&other) {
                self.key_of_last_row(0);
            } else {
                self.key_of_last_row(1);
            }
        }
        panic!("no key for `{letter}` among {:#?}", self.kiosk.look().words());
    }

    /// Keys without words stand in the last row: Shift, the other layer, the next language, the space.
    fn key_of_last_row(&mut self, nth: usize) {
        let seen = self.kiosk.look();
        let layer = seen.texts.iter().rfind(|t| ["?#é", "abc"].contains(&t.text.as_str()));
        let Some(row) = layer.and_then(|t| t.visible).map(|v| v.center_y()) else {
            panic!("our keys are not up: {:#?}", self.kiosk.look().words())
        };
        let keys = seen.pressable.iter().filter_map(|p| p.visible);
        let mut keys: Vec<_> = keys.filter(|k| k.y < row && row < k.y + k.height).collect();
        keys.sort_by(|a, b| a.x.total_cmp(&b.x));
        self.tap_at(keys[nth].center());
    }
}

impl<T: FnMut(&mut Kiosk, Point, Instant)> Hands for Finger<T> {
    fn kiosk(&mut self) -> &mut Kiosk {
        &mut self.kiosk
    }

    fn press_nth(&mut self, words: &str, nth: usize) {
        let at = self
            .reach(words, |kiosk| kiosk.look().texts.into_iter().filter(|text| text.text == words).nth(nth));
        self.tap_at(at);
    }

    fn press_at(&mut self, at: Point) {
        self.tap_at(at);
    }

    fn press_id(&mut self, id: &str) {
        let at = self.reach_id(id);
        self.tap_at(at);
    }

    fn fill(&mut self, id: &str, text: &str) {
        self.press_id(id);
        for letter in text.chars() {
            self.letter(letter);
        }
        self.press_last("Done");
    }

    fn read_to_the_end(&mut self) {
        let (width, height) = self.kiosk.setup.size;
        for _ in 0..8 {
            self.drag_page(Point::new((width / 2.0).round(), (height * 0.6).round()), -100.0);
        }
        self.kiosk.setup.clock.pass(2);
        self.wait(1100);
    }

    fn hold(&mut self, id: &str) {
        let at = self.reach_id(id);
        tell(&mut self.kiosk, 1, Does::Press, at);
        self.wait(HELD);
        tell(&mut self.kiosk, 1, Does::Lift, at);
        self.wait(SETTLES);
    }

    fn sign(&mut self, words: &str) {
        let at = self.reach(words, |kiosk| kiosk.look().texts.into_iter().find(|text| text.text == words));
        let way: Vec<Point> = (0_u8..24)
            .map(|i| Point::new(at.x + f32::from(i) * 12.0, at.y - if i % 2 == 0 { 150.0 } else { 96.0 }))
            .collect();
        drag(&mut self.kiosk, 1, &way);
        self.wait(SETTLES);
    }

    fn seal(&mut self, words: &str) {
        self.press(words);
    }
}
