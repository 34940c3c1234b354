//! Random input to a kiosk in memory. From wherever it leads, somebody who knows the PIN comes back to the Yard.

use std::time::Instant;

use iced::keyboard::{Key, key::Named};
use iced::mouse::{self, Button, ScrollDelta};
use iced::{Event, Point};
use sendoff::kiosk::Message;
use sendoff::kiosk::gate::{self, Purpose};
use sendoff::kiosk::screen::Screen;

use super::dice::{Dice, seed};
use super::scene::{SCENES, enter, pass_gate, setup};
use crate::display::say;
use crate::finger::{Does, Finger, drag, tell};
use crate::handoff::Hands as _;
use crate::kiosk_support::{Kiosk, Press, SIZES};

/// How many actions a scene gets before somebody wants to go home.
const ACTIONS: usize = 60;
/// How many steps the way home may have: a whole stop of cautions may lie on it.
const STEPS: usize = 120;
/// Keys by name.
const NAMED: [Named; 12] = [
    Named::Escape,
    Named::Tab,
    Named::Enter,
    Named::Space,
    Named::Backspace,
    Named::ArrowDown,
    Named::ArrowUp,
    Named::ArrowLeft,
    Named::ArrowRight,
    Named::Home,
    Named::End,
    Named::F4,
];

#[test]
fn from_wherever_random_input_leads_there_is_a_way_home() {
    let seed = seed();
    for (number, scene) in (0..).zip(SCENES) {
        let mut dice = Dice::new(seed.wrapping_add(number));
        let mut finger = Finger::new(setup(scene, &mut dice).boot(), tap as fn(&mut Kiosk, Point, Instant));
        enter(&mut finger, scene);
        let mut hand = Hand { finger, done: Vec::new() };
        for _ in 0..ACTIONS {
            hand.act(&mut dice);
            assert!(!hand.finger.kiosk.app.exits(), "it ended: SENDOFF_SEED={seed} {scene}: {:?}", hand.done);
        }
        if let Err(why) = hand.home() {
            say(&format!("{scene}: SENDOFF_SEED={seed}: {:#?}", hand.done));
            panic!("no way home from {scene}: {why}; SENDOFF_SEED={seed}");
        }
    }
}

/// A hand on a kiosk.
struct Hand {
    finger: Finger<fn(&mut Kiosk, Point, Instant)>,
    done: Vec<String>,
}

impl Hand {
    fn wait(&mut self, milliseconds: u64) {
        self.finger.wait(milliseconds);
    }

    fn escape(&mut self) {
        self.finger.kiosk.key(Key::Named(Named::Escape), None);
        self.wait(50);
    }

    fn point(&self, dice: &mut Dice) -> Point {
        let (width, height) = self.finger.kiosk.setup.size;
        Point::new(dice.below(width as usize) as f32, dice.below(height as usize) as f32)
    }

    /// A point of something that can be pressed, or any.
    fn target(&mut self, dice: &mut Dice) -> Point {
        let seen: Vec<_> = self.finger.kiosk.look().pressable.into_iter().filter_map(|p| p.visible).collect();
        if seen.is_empty() || dice.below(4) == 0 {
            return self.point(dice);
        }
        seen[dice.below(seen.len())].center()
    }

    fn act(&mut self, dice: &mut Dice) {
        let at = self.target(dice);
        let kind = dice.below(12);
        self.done.push(format!("{kind} at {at:?}"));
        match kind {
            0..=4 => self.finger.kiosk.click_at(at),
            5 => {
                let other = self.point(dice);
                for does in [Does::Press, Does::Lift] {
                    tell(&mut self.finger.kiosk, 1, does, at);
                    tell(&mut self.finger.kiosk, 2, does, other);
                }
            }
            6 => {
                let mut way = vec![at];
                way.extend((0..5).map(|_| self.point(dice)));
                drag(&mut self.finger.kiosk, 1, &way);
            }
            7 => {
                self.finger.kiosk.send(Event::Mouse(mouse::Event::CursorMoved { position: at }));
                let y = [-40.0, -3.0, 2.0, 40.0][dice.below(4)];
                self.finger.kiosk.send(Event::Mouse(mouse::Event::WheelScrolled {
                    delta: ScrollDelta::Lines { x: 0.0, y },
                }));
            }
            8 => self.finger.kiosk.key(Key::Named(NAMED[dice.below(NAMED.len())]), None),
            9 => {
                let letter = ["a", "7", "0", " ", ".", "é"][dice.below(6)];
                self.finger.kiosk.key(Key::Character(letter.into()), Some(letter));
            }
            10 => {
                self.finger.kiosk.send(Event::Mouse(mouse::Event::CursorMoved { position: at }));
                self.finger.kiosk.send(Event::Mouse(mouse::Event::ButtonPressed(Button::Left)));
                self.wait([300, 1600, 3300][dice.below(3)]);
                self.finger.kiosk.send(Event::Mouse(mouse::Event::ButtonReleased(Button::Left)));
            }
            _ => match dice.below(3) {
                0 => self.finger.kiosk.message(Message::CloseAsked),
                1 => self
                    .finger
                    .kiosk
                    .resize([SIZES[0], SIZES[1], SIZES[2], (320.0, 240.0), (1.0, 1.0)][dice.below(5)]),
                _ => self.finger.kiosk.setup.clock.pass(40),
            },
        }
        self.wait(50);
    }

    /// The first of these that is there is pressed.
    fn press_any(&mut self, keys: &[&str]) -> bool {
        let words: Vec<String> = keys.iter().map(|key| self.finger.kiosk.say(key)).collect();
        let seen = self.finger.kiosk.look();
        let found = words.into_iter().find(|w| seen.texts.iter().any(|t| t.text == *w));
        if let Some(words) = &found {
            let nth = seen.texts.iter().filter(|t| t.text == *words).count() - 1;
            self.finger.kiosk.click_nth(words, nth);
            self.wait(50);
        }
        found.is_some()
    }

    /// Goes to the Yard as somebody who works here would.
    fn home(&mut self) -> Result<(), String> {
        self.finger.kiosk.resize(SIZES[0]);
        self.wait(50);
        let mut stuck = 0;
        for _ in 0..STEPS {
            self.press_any(&["emergency-close"]);
            // The gate of pages for a renter alone is on the way; any other is put away.
            if self.finger.kiosk.app.gate().is_some_and(|gate| *gate.purpose() == Purpose::Leave) {
                // Whoever tried wrong PINs waits; then the right one opens.
                self.finger.kiosk.setup.clock.pass(24 * 3600);
                self.finger.kiosk.message(Message::Gate(gate::Message::Ticked));
                self.wait(50);
                pass_gate(&mut self.finger);
                continue;
            }
            self.escape();
            let went = match self.finger.kiosk.screen() {
                Screen::Yard(_) => return Ok(()),
                Screen::Opening(_) => {
                    // What is not saved is asked about; Escape would answer.
                    self.press_any(&["opening-yard"]) | self.press_any(&["opening-leave-go"])
                }
                Screen::Walk(_) => self.leave_walk(),
                Screen::Closing(_) => self.leave_closing(),
                Screen::Sealed(_) => self.press_any(&["sealed-done"]),
                Screen::Staff(_) => self.press_any(&["staff-to-yard", "gate-back"]),
                Screen::Office(_) => {
                    self.press_any(&["office-back", "office-filters-done", "office-to-yard"])
                }
                Screen::Settings(_) => self.press_any(&["settings-done"]),
                Screen::Reread(_) => self.leave_reread(),
                Screen::Caution(_) => self.answer(),
                Screen::Waiting | Screen::First(_) => false,
            };
            // The first Escape may only put our keys away.
            stuck = if went { 0 } else { stuck + 1 };
            if stuck > 3 {
                break;
            }
        }
        let notice = self.finger.kiosk.app.notice().cloned();
        Err(format!("{:#?} {notice:?}", self.finger.kiosk.look().words()))
    }

    fn leave_walk(&mut self) -> bool {
        if self.press_any(&["walk-to-yard"]) {
            return true;
        }
        // What says how much time is left leads to the whole walk.
        let seen = self.finger.kiosk.look();
        let Some(left) = seen.texts.iter().find(|t| t.text.ends_with(" left")) else { return false };
        let words = left.text.clone();
        self.finger.kiosk.click(&words);
        self.wait(50);
        self.press_any(&["walk-to-yard"])
    }

    fn leave_closing(&mut self) -> bool {
        if self.finger.kiosk.look().focusable.iter().any(|(id, _)| id == "closing-agent") {
            self.finger.hold("closing-agent");
            return true;
        }
        if self.press_any(&["closing-take-back"]) {
            return true;
        }
        if self.press_any(&["closing-reopen"]) {
            let fields = self.finger.kiosk.look().focusable;
            if let Some((id, _)) = fields.iter().find(|(id, _)| id.contains("reason")) {
                self.finger.kiosk.fill(id, "A reading");
                self.finger.kiosk.key(Key::Named(Named::Tab), None);
                // Our keys step aside with the next frame, and the button moves.
                self.wait(50);
            }
            return self.press_any(&["closing-reopen-done"]);
        }
        self.press_any(&[
            "caution-page-turn-agent",
            "closing-take-go-on",
            "closing-stopped-to-copy",
            "closing-sign-read-again",
            "closing-seal",
        ])
    }

    fn leave_reread(&mut self) -> bool {
        // While something is searched for, what was found has the room of the foot.
        let seen = self.finger.kiosk.look();
        if seen.focusable.iter().any(|(id, _)| id == "reread-clear") {
            self.finger.kiosk.click_id("reread-clear");
            self.wait(50);
        }
        self.press_any(&["reread-staff"])
            || self.press_any(&["reread-cover-tap", "reread-home", "reread-back"])
    }

    /// Answers one page of cautions, or gives the tablet back.
    fn answer(&mut self) -> bool {
        if let Some(Press::Words(take, _)) = self.finger.kiosk.next_turn() {
            self.finger.kiosk.click(&take);
            self.wait(50);
            return true;
        }
        self.finger
            .kiosk
            .send(Event::Mouse(mouse::Event::CursorMoved { position: Point::new(640.0, 400.0) }));
        self.finger.kiosk.send(Event::Mouse(mouse::Event::WheelScrolled {
            delta: ScrollDelta::Lines { x: 0.0, y: -60.0 },
        }));
        self.wait(1200);
        if self.press_any(&["caution-page-read", "caution-page-read-all"]) {
            return true;
        }
        let presses = self.finger.kiosk.presses(false);
        for press in &presses {
            match press {
                Press::Words(words, nth) => self.finger.press_nth(words, *nth),
                Press::Id(id) => self.finger.press_id(id),
                Press::Hold(id) => self.finger.hold(id),
            }
        }
        if !presses.is_empty() {
            return true;
        }
        // After two holds that were too short two taps are asked for.
        for tap in ["caution-tap-one", "caution-tap-two"] {
            if self.finger.kiosk.look().focusable.iter().any(|(id, _)| id == tap) {
                self.finger.press_id(tap);
                return true;
            }
        }
        let seen = self.finger.kiosk.look();
        // The renter holds on a page, the agent to have the tablet again.
        let held = |id: &str| id == "caution-hold" || id == "caution-agent";
        let Some((_, hold)) = seen.focusable.iter().find(|(id, _)| held(id)) else { return false };
        let Some(at) = hold.visible.map(|v| v.center()) else { return false };
        self.finger.kiosk.send(Event::Mouse(mouse::Event::CursorMoved { position: at }));
        self.finger.kiosk.send(Event::Mouse(mouse::Event::ButtonPressed(Button::Left)));
        self.wait(1600);
        self.finger.kiosk.send(Event::Mouse(mouse::Event::ButtonReleased(Button::Left)));
        self.wait(50);
        true
    }
}

fn tap(kiosk: &mut Kiosk, at: Point, _now: Instant) {
    tell(kiosk, 1, Does::Press, at);
    tell(kiosk, 1, Does::Lift, at);
}
