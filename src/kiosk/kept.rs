//! What the kiosk does with its settings: takes them up, follows them, keeps them.

use super::{App, Effect, Settings, preferences};
use crate::words::Args;

impl App {
    /// Uses settings from now on, and keeps them.
    pub(super) fn set(&mut self, settings: Settings) -> Vec<Effect> {
        self.settings = settings;
        self.changed += 1;
        vec![Effect::KeepSettings { text: preferences::write(&self.settings), serial: self.changed }]
    }

    /// Takes up the settings that were kept; what cannot be read is told and left as it is.
    pub(super) fn take_settings(&mut self) {
        let read = match self.world.settings() {
            Ok(None) => return,
            Ok(Some(text)) => preferences::read(&text, &self.settings, &self.lot.lot.value)
                .map_err(|fault| format!("{}: {}; {}", fault.place, fault.what, fault.hint)),
            Err(fault) => Err(fault.to_string()),
        };
        match read {
            Ok(settings) => self.settings = settings,
            Err(why) => self.tell(self.say("settings-not-read", Args::new().text("why", why)), false),
        }
    }

    /// The settings of this kiosk.
    #[must_use]
    pub fn settings(&self) -> &Settings {
        &self.settings
    }
}
