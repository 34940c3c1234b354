//! Hands the tablet to a renter who is alone with it, and speaks to whoever holds it.

use super::effect::Effect;
use super::screen::{self, Action, Screen};
use super::{App, hall, ui};
use crate::words::{Args, Reader};

impl App {
    /// Hands the tablet to a renter who is alone: what was known of a walk and of people is put away before.
    pub(super) fn reread(&mut self, unit: &str, reader: Reader) -> Vec<Effect> {
        self.hall = None;
        self.notice = None;
        match screen::reread::State::new(&self.lot, unit, reader) {
            Some(state) => {
                self.screen = Screen::Reread(state);
                Vec::new()
            }
            // The lot was changed meanwhile, and the unit is gone.
            None => self.act(Action::ToYard),
        }
    }

    /// Our own keys speak the language of whoever reads the open page.
    pub(super) fn typed(&self) -> Option<ui::Typed> {
        let walk = || self.screen.is_renters().then(|| self.hall.as_ref()?.walk.reader()).flatten();
        let reader = match &self.screen {
            Screen::Reread(state) => state.reader().clone(),
            _ => walk().map_or_else(
                || self.settings.staff.clone(),
                |r| Reader::new(&r.value.language, hall::system_of(&r.value.measures)),
            ),
        };
        let done = self.scripts().words.say(&reader, "key-done", &Args::new());
        let layout = self.settings.layout.unwrap_or_else(|| ui::Layout::of(&reader.lang));
        self.settings.keys.then_some(ui::Typed { done, layout })
    }
}
