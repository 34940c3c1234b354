//! What the gate opens.

use super::{Asks, Gate, Message, Passed, Purpose};
use crate::kiosk::App;
use crate::kiosk::effect::Effect;
use crate::kiosk::hand_in::Ask;
use crate::kiosk::screen::{Action, Screen, settings, staff};
use crate::tablet::staff::{Change, Staff, Tried};

impl App {
    /// Asks for a PIN before something. A gate that is asked already stays as it is.
    pub(in crate::kiosk) fn ask_gate(&mut self, purpose: Purpose) -> Vec<Effect> {
        if self.gate.is_none() {
            let nobody = Staff::default();
            let staff = self.staff.as_ref().unwrap_or(&nobody);
            self.gate = Some(Gate::new(purpose, staff, self.duty.as_deref()));
        }
        Vec::new()
    }

    /// Who works here; nothing opens while that cannot be told.
    #[must_use]
    pub fn staff(&self) -> Option<&Staff> {
        self.staff.as_ref().ok()
    }

    /// Whether the kiosk is to end.
    #[must_use]
    pub const fn exits(&self) -> bool {
        self.exits
    }

    /// The gate, while it is asked.
    #[must_use]
    pub const fn gate(&self) -> Option<&Gate> {
        self.gate.as_ref()
    }

    /// Whether the gate counts seconds down.
    pub(in crate::kiosk) fn gate_waits(&self) -> bool {
        let Some((gate, staff)) = self.gate.as_ref().zip(self.staff()) else { return false };
        gate.waits(staff, self.world.now())
    }

    pub(in crate::kiosk) fn gate_message(&mut self, message: Message) -> Vec<Effect> {
        let now = self.world.now();
        if matches!(message, Message::EmergencyAsked) {
            self.emergency = true;
        }
        let Some(gate) = &mut self.gate else { return Vec::new() };
        let Ok(staff) = &self.staff else {
            // There is nothing to do at a gate that cannot open but to go.
            if matches!(message, Message::Left) {
                self.gate = None;
            }
            return Vec::new();
        };
        let asks = gate.update(message, staff, now);
        self.gate_asks(asks)
    }

    pub(in crate::kiosk) fn pin_tried(&mut self, code: &str, tried: Tried) -> Vec<Effect> {
        let (Some(gate), Ok(staff)) = (&mut self.gate, &self.staff) else { return Vec::new() };
        let asks = gate.tried(code, tried, staff);
        self.gate_asks(asks)
    }

    fn gate_asks(&mut self, asks: Asks) -> Vec<Effect> {
        match asks {
            Asks::Nothing => Vec::new(),
            Asks::Close => {
                self.gate = None;
                Vec::new()
            }
            Asks::Try(who) => vec![Effect::TryPin(who)],
            Asks::Clock => vec![Effect::Staff(Change::Clock)],
            Asks::Through(passed) => match self.gate.take() {
                Some(gate) => self.through(gate.purpose().clone(), &passed),
                None => Vec::new(),
            },
        }
    }

    /// Does what the gate was asked for.
    fn through(&mut self, purpose: Purpose, passed: &Passed) -> Vec<Effect> {
        let who = || passed.by.as_ref().map(|(code, _)| code.clone());
        match purpose {
            Purpose::Close => {
                self.exits = true;
                Vec::new()
            }
            Purpose::Unlock => {
                let mut effects = self.unlock();
                // The tablet is for every agent; what the office left open is not.
                let office = passed.by.as_ref().is_none_or(|(_, role)| Purpose::Archive.lets(*role));
                if matches!(self.screen, Screen::Office(_)) && !office {
                    effects.extend(self.act(Action::ToYard));
                }
                effects
            }
            Purpose::Leave => self.act(Action::ToYard),
            Purpose::Settings => self.act(Action::open(Screen::Settings(settings::State))),
            Purpose::Staff => self.act(Action::open(Screen::Staff(staff::State::new(passed.by.clone())))),
            Purpose::SignOn => {
                self.duty = who();
                Vec::new()
            }
            Purpose::Begin(unit) => {
                self.duty = who();
                vec![Effect::Begin(unit)]
            }
            Purpose::GoOn(walk) => {
                self.duty = who();
                vec![Effect::Resume(walk)]
            }
            Purpose::Archive => self.open_office(),
            Purpose::Office(key) => vec![Effect::HandIn(Ask::Know(key))],
            Purpose::TakeOver => {
                self.duty = who();
                self.agent_on_duty()
            }
        }
    }
}
