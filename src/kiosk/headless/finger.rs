//! What hands do: click, touch, drag, hold, type.

use std::time::Duration;

use iced::keyboard::{self, Key, key::Named};
use iced::mouse::{self, Button, ScrollDelta};
use iced::touch::{self, Finger};
use iced::{Event, Point, Program};

use super::{Driver, HeadlessFault};

/// The finger that is used where none is named.
const FIRST: Finger = Finger(1);

impl<P: Program> Driver<'_, P> {
    /// Clicks on the text that is exactly this.
    ///
    /// # Errors
    /// The text cannot be seen, or a task hangs.
    pub fn click(&mut self, text: &str) -> Result<(), HeadlessFault> {
        let at = self.must_find(text)?;
        self.click_at(at)
    }

    /// Clicks at a place.
    ///
    /// # Errors
    /// A task hangs.
    pub fn click_at(&mut self, at: Point) -> Result<(), HeadlessFault> {
        self.mouse_down(at)?;
        self.mouse_up()
    }

    /// Moves the mouse to a place and presses its left button.
    ///
    /// # Errors
    /// A task hangs.
    pub fn mouse_down(&mut self, at: Point) -> Result<(), HeadlessFault> {
        self.mouse_to(at)?;
        self.send(&[Event::Mouse(mouse::Event::ButtonPressed(Button::Left))])
    }

    /// Moves the mouse.
    ///
    /// # Errors
    /// A task hangs.
    pub fn mouse_to(&mut self, position: Point) -> Result<(), HeadlessFault> {
        self.send(&[Event::Mouse(mouse::Event::CursorMoved { position })])
    }

    /// Lets the left button go.
    ///
    /// # Errors
    /// A task hangs.
    pub fn mouse_up(&mut self) -> Result<(), HeadlessFault> {
        self.send(&[Event::Mouse(mouse::Event::ButtonReleased(Button::Left))])
    }

    /// Touches the text that is exactly this.
    ///
    /// # Errors
    /// The text cannot be seen, or a task hangs.
    pub fn touch(&mut self, text: &str) -> Result<(), HeadlessFault> {
        let at = self.must_find(text)?;
        self.touch_at(at)
    }

    /// Touches a place.
    ///
    /// # Errors
    /// A task hangs.
    pub fn touch_at(&mut self, at: Point) -> Result<(), HeadlessFault> {
        self.finger_down(FIRST.0, at)?;
        self.finger_up(FIRST.0, at)
    }

    /// Puts a finger down.
    ///
    /// # Errors
    /// A task hangs.
    pub fn finger_down(&mut self, finger: u64, position: Point) -> Result<(), HeadlessFault> {
        self.send(&[Event::Touch(touch::Event::FingerPressed { id: Finger(finger), position })])
    }

    /// Moves a finger that is down.
    ///
    /// # Errors
    /// A task hangs.
    pub fn finger_to(&mut self, finger: u64, position: Point) -> Result<(), HeadlessFault> {
        self.send(&[Event::Touch(touch::Event::FingerMoved { id: Finger(finger), position })])
    }

    /// Lifts a finger.
    ///
    /// # Errors
    /// A task hangs.
    pub fn finger_up(&mut self, finger: u64, position: Point) -> Result<(), HeadlessFault> {
        self.send(&[Event::Touch(touch::Event::FingerLifted { id: Finger(finger), position })])
    }

    /// Drags one finger from a place to another in ten steps.
    ///
    /// # Errors
    /// A task hangs.
    pub fn drag(&mut self, from: Point, to: Point) -> Result<(), HeadlessFault> {
        self.finger_down(FIRST.0, from)?;
        for step in 1..=10u8 {
            let part = f32::from(step) / 10.0;
            let at = Point::new(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part);
            self.finger_to(FIRST.0, at)?;
        }
        self.finger_up(FIRST.0, to)
    }

    /// Holds a finger on the text that is exactly this.
    ///
    /// # Errors
    /// The text cannot be seen, or a task hangs.
    pub fn hold(&mut self, text: &str, time: Duration) -> Result<(), HeadlessFault> {
        let at = self.must_find(text)?;
        self.finger_down(FIRST.0, at)?;
        self.wait(time)?;
        self.finger_up(FIRST.0, at)
    }

    /// Turns the wheel over a place; positive lines go down.
    ///
    /// # Errors
    /// A task hangs.
    pub fn wheel(&mut self, at: Point, lines: f32) -> Result<(), HeadlessFault> {
        self.mouse_to(at)?;
        let delta = ScrollDelta::Lines { x: 0.0, y: -lines };
        self.send(&[Event::Mouse(mouse::Event::WheelScrolled { delta })])
    }

    /// Scrolls what lies under `within` down until a text can be seen.
    ///
    /// # Errors
    /// The text does not come, or a task hangs.
    pub fn scroll_to(&mut self, text: &str, within: Point) -> Result<Point, HeadlessFault> {
        for _ in 0..200 {
            if let Some(at) = self.find(text) {
                return Ok(at);
            }
            self.wheel(within, 1.0)?;
        }
        self.must_find(text)
    }

    /// Types letters.
    ///
    /// # Errors
    /// A task hangs.
    pub fn type_text(&mut self, text: &str) -> Result<(), HeadlessFault> {
        for letter in text.chars() {
            let letter = letter.to_string();
            self.send(&[pressed(Key::Character(letter.as_str().into()), Some(&letter), false)])?;
            self.send(&[released(Key::Character(letter.as_str().into()))])?;
        }
        Ok(())
    }

    /// Presses and lets go a key that has a name, as Tab.
    ///
    /// # Errors
    /// A task hangs.
    pub fn key(&mut self, named: Named) -> Result<(), HeadlessFault> {
        self.key_down(named)?;
        self.key_up(named)
    }

    /// Presses a key that has a name.
    ///
    /// # Errors
    /// A task hangs.
    pub fn key_down(&mut self, named: Named) -> Result<(), HeadlessFault> {
        self.send(&[pressed(Key::Named(named), None, false)])
    }

    /// Presses and lets go a key with Shift.
    ///
    /// # Errors
    /// A task hangs.
    pub fn key_shifted(&mut self, named: Named) -> Result<(), HeadlessFault> {
        self.send(&[pressed(Key::Named(named), None, true)])?;
        self.key_up(named)
    }

    /// Lets a key go.
    ///
    /// # Errors
    /// A task hangs.
    pub fn key_up(&mut self, named: Named) -> Result<(), HeadlessFault> {
        self.send(&[released(Key::Named(named))])
    }
}

fn pressed(key: Key, text: Option<&str>, shift: bool) -> Event {
    Event::Keyboard(keyboard::Event::KeyPressed {
        key: key.clone(),
        modified_key: key,
        physical_key: keyboard::key::Physical::Unidentified(keyboard::key::NativeCode::Unidentified),
        location: keyboard::Location::Standard,
        modifiers: if shift { keyboard::Modifiers::SHIFT } else { keyboard::Modifiers::empty() },
        text: text.map(Into::into),
        repeat: false,
    })
}

fn released(key: Key) -> Event {
    Event::Keyboard(keyboard::Event::KeyReleased {
        key: key.clone(),
        modified_key: key,
        physical_key: keyboard::key::Physical::Unidentified(keyboard::key::NativeCode::Unidentified),
        location: keyboard::Location::Standard,
        modifiers: keyboard::Modifiers::empty(),
    })
}
