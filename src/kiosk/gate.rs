//! The gate: what staff alone may do asks for a PIN here, and nowhere else.
//!
//! While nobody has a PIN, a hold of three seconds does, and the page says so. A file of PINs that cannot be
//! read opens nothing.

mod open;
mod view;

use std::time::Duration;

use jiff::Timestamp;

use super::ui::{HoldEvent, PinKey};
use crate::tablet::staff::{Credential, Pin, Role, Staff, Tried};

/// How long the hold is that stands in for a PIN.
pub const HOLD: Duration = Duration::from_secs(3);
/// How often seconds are counted down.
pub const SECOND: Duration = Duration::from_secs(1);

/// What the gate is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Purpose {
    /// Close the window.
    Close,
    /// Take the cover off a tablet that was left alone.
    Unlock,
    /// Leave the pages that a renter reads alone.
    Leave,
    /// Change how this tablet looks, speaks and is held.
    Settings,
    /// Say who works here.
    Staff,
    /// Sign on.
    SignOn,
    /// Begin a walk for a unit, as whoever signs on.
    Begin(String),
    /// Go on with a walk, as whoever signs on.
    GoOn(String),
    /// Take the open walk over.
    TakeOver,
    /// Say that a key is that of the office.
    Office(crate::record::keys::PublicKey),
    /// Look into the office's archive.
    Archive,
}

impl Purpose {
    /// The key of its words: a title, and a line with `.line`.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        match self {
            Self::Close => "gate-close",
            Self::Unlock => "gate-unlock",
            Self::Leave => "gate-leave",
            Self::Settings => "gate-settings",
            Self::Staff => "gate-staff",
            Self::SignOn => "gate-sign-on",
            Self::Begin(_) => "gate-begin",
            Self::GoOn(_) => "gate-go-on",
            Self::TakeOver => "gate-take-over",
            Self::Office(_) => "gate-office",
            Self::Archive => "gate-archive",
        }
    }

    /// Whether somebody in this role may go through.
    #[must_use]
    pub fn lets(&self, role: Role) -> bool {
        *self != Self::Archive || role == Role::Office
    }
}

/// Who went through: somebody with a PIN, or whoever held on while nobody has one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Passed {
    /// Code and role of who typed the PIN.
    pub by: Option<(String, Role)>,
}

/// Whether a try went wrong or is on its way.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Stage {
    Asking,
    Checking,
    Wrong,
    Unchecked(String),
}

/// The gate while it is asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gate {
    purpose: Purpose,
    who: Option<String>,
    pin: Pin,
    stage: Stage,
    short: bool,
}

/// What happened at the gate.
#[derive(Debug, Clone)]
pub enum Message {
    /// Somebody says who they are.
    WhoChosen(String),
    /// A key.
    Key(PinKey),
    /// What stands in for a PIN.
    Held(HoldEvent),
    /// A second of waiting has passed.
    Ticked,
    /// It is put away.
    Left,
    /// The emergency card is wanted.
    EmergencyAsked,
}

/// What the gate asks for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Asks {
    /// Nothing.
    Nothing,
    /// Put it away.
    Close,
    /// Try this.
    Try(Credential),
    /// Somebody goes through.
    Through(Passed),
    /// The clock was set back.
    Clock,
}

impl Gate {
    /// The gate as it is asked for something; `duty` is who most likely stands before it.
    #[must_use]
    pub fn new(purpose: Purpose, staff: &Staff, duty: Option<&str>) -> Self {
        let mut may = staff.people().iter().filter(|m| purpose.lets(m.role));
        let known = duty.and_then(|code| staff.member(code)).filter(|m| purpose.lets(m.role));
        let only = may.next().filter(|_| may.next().is_none());
        let who = known.or(only).map(|m| m.code.clone());
        Self { purpose, who, pin: Pin::default(), stage: Stage::Asking, short: false }
    }

    /// What it is asked for.
    #[must_use]
    pub const fn purpose(&self) -> &Purpose {
        &self.purpose
    }

    /// Whether it counts seconds down.
    #[must_use]
    pub fn waits(&self, staff: &Staff, now: Timestamp) -> bool {
        self.stage != Stage::Checking && self.who.as_ref().is_some_and(|who| staff.wait(who, now) > 0)
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, staff: &Staff, now: Timestamp) -> Asks {
        match message {
            // One try at a time, and its answer is waited for.
            Message::Left | Message::WhoChosen(_) if self.stage == Stage::Checking => Asks::Nothing,
            Message::Left => Asks::Close,
            // The kiosk shows the card; the gate stays.
            Message::EmergencyAsked => Asks::Nothing,
            Message::Held(HoldEvent::Done) if staff.is_empty() => Asks::Through(Passed { by: None }),
            Message::Held(_) => {
                self.short = true;
                Asks::Nothing
            }
            Message::WhoChosen(code)
                if staff.member(&code).is_some_and(|member| !self.purpose.lets(member.role)) =>
            {
                Asks::Nothing
            }
            Message::WhoChosen(code) => {
                self.who = Some(code);
                self.pin = Pin::default();
                self.stage = Stage::Asking;
                Asks::Nothing
            }
            Message::Key(key) => self.key(key, staff, now),
            Message::Ticked => {
                if staff.clone().clock_set_back(now) {
                    Asks::Clock
                } else {
                    Asks::Nothing
                }
            }
        }
    }

    fn key(&mut self, key: PinKey, staff: &Staff, now: Timestamp) -> Asks {
        let Some(who) = self.who.clone() else { return Asks::Nothing };
        if self.stage == Stage::Checking || staff.wait(&who, now) > 0 {
            return Asks::Nothing;
        }
        match key {
            PinKey::Digit(digit) => self.pin.push(digit),
            PinKey::Back => self.pin.pop(),
            PinKey::End if self.pin.is_whole() => {
                self.stage = Stage::Checking;
                return Asks::Try(Credential { code: who, pin: std::mem::take(&mut self.pin) });
            }
            PinKey::End => return Asks::Nothing,
        }
        self.stage = Stage::Asking;
        Asks::Nothing
    }

    /// Takes in what came of a try.
    pub fn tried(&mut self, code: &str, tried: Tried, staff: &Staff) -> Asks {
        // An answer that nobody waits for any more opens nothing.
        if self.stage != Stage::Checking || self.who.as_deref() != Some(code) {
            return Asks::Nothing;
        }
        self.stage = match tried {
            Tried::Right => {
                let by = staff.member(code).map(|m| (m.code.clone(), m.role));
                // Whoever was made an agent meanwhile is told no more than that.
                if by.as_ref().is_some_and(|(_, role)| !self.purpose.lets(*role)) {
                    return Asks::Close;
                }
                return Asks::Through(Passed { by });
            }
            Tried::Wrong => Stage::Wrong,
            Tried::Wait(_) => Stage::Asking,
            Tried::Unchecked(why) => Stage::Unchecked(why),
        };
        Asks::Nothing
    }
}
