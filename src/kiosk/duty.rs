//! Who is on duty: walks are begun, gone on with and taken over by whoever signed on.
//!
//! While nobody has a PIN, agents type their code at the Opening, as before.

use std::sync::Arc;

use super::effect::{Effect, TakenWalk};
use super::gate::Purpose;
use super::screen::{Action, Screen, counted, staff as page};
use super::{App, Hall};
use crate::tablet::staff::Staff;
use crate::walk::{Entry, Event};
use crate::words::Args;

impl App {
    /// Whether agents sign on with a PIN.
    fn signs_on(&self) -> bool {
        self.staff().is_some_and(|staff| !staff.is_empty())
    }

    /// Begins a walk, once somebody is on duty.
    pub(super) fn begin_on_duty(&mut self, unit: String) -> Vec<Effect> {
        if self.signs_on() && self.duty.is_none() {
            return self.ask_gate(Purpose::Begin(unit));
        }
        vec![Effect::Begin(unit)]
    }

    /// Goes on with a walk; whoever takes it over from somebody else says who they are.
    pub(super) fn resume_on_duty(&mut self, walk: String, agent: Option<&str>) -> Vec<Effect> {
        let other = agent.is_some_and(|agent| self.duty.as_deref() != Some(agent));
        if self.signs_on() && (self.duty.is_none() || other) {
            return self.ask_gate(Purpose::GoOn(walk));
        }
        vec![Effect::Resume(walk)]
    }

    /// Writes down that whoever is on duty leads the open walk, if that is news and may still be.
    pub(super) fn agent_on_duty(&mut self) -> Vec<Effect> {
        let (Some(code), Some(hall)) = (self.duty.clone(), &self.hall) else { return Vec::new() };
        let (at, event) = (self.world.now(), Event::AgentOn { code });
        let entry = Entry { at, offset_minutes: hall.scripts.offset_minutes(at), event };
        if hall.walk.accepts(&entry).is_err() {
            return Vec::new();
        }
        self.act(Action::Propose(vec![entry.event]))
    }

    /// Ends the open walk for one for another unit.
    pub(super) fn swap(&mut self, unit: String, reason: String) -> Vec<Effect> {
        let faults = self.edit.faults.of(&unit);
        if faults > 0 {
            self.tell(counted(&self.any_ctx(), "yard-unit-faulty", faults), false);
            return Vec::new();
        }
        let Some(hall) = &mut self.hall else { return Vec::new() };
        hall.saving = true;
        vec![Effect::Swap { walk: Arc::clone(&hall.walk), unit, reason }]
    }

    /// Takes in the walk that follows.
    pub(super) fn swapped(&mut self, result: Result<TakenWalk, String>) -> Vec<Effect> {
        let before = self.hall.as_ref().map(|hall| hall.walk.route().unit.clone()).unwrap_or_default();
        let next = match result {
            Ok(taken) => Hall::new(taken.walk, taken.scripts),
            Err(why) => {
                if let Some(hall) = &mut self.hall {
                    hall.saving = false;
                }
                self.tell(why, false);
                return Vec::new();
            }
        };
        let Some(next) = next else { return Vec::new() };
        let stand = next.walk.followed().map_or(0, |f| f.value.answers.len());
        self.screen = Screen::at(&next);
        self.hall = Some(next);
        let args = Args::new()
            .text("unit", self.say(&format!("unit-{before}"), Args::new()))
            .number("count", u64::try_from(stand).unwrap_or(u64::MAX));
        self.tell(self.say("swap-done", args), false);
        Vec::new()
    }

    /// Takes in what became of a change of who works here.
    pub(super) fn staff_changed(
        &mut self,
        result: Result<(), String>,
        staff: Result<Staff, String>,
    ) -> Vec<Effect> {
        self.staff = staff;
        // Whoever was removed is no longer on duty.
        let known = |code: &String| self.staff().is_some_and(|staff| staff.member(code).is_some());
        if !self.duty.as_ref().is_some_and(known) {
            self.duty = None;
        }
        match (&mut self.screen, result) {
            (Screen::Staff(state), result) => {
                let staff = self.staff.as_ref().ok();
                if let page::After::Leave = state.changed(result, staff) {
                    return self.act(Action::ToYard);
                }
            }
            (_, Err(why)) => self.tell(why, false),
            (_, Ok(())) => {}
        }
        Vec::new()
    }
}
