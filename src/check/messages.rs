//! Messages: there, and used.

use std::collections::BTreeSet;

use crate::source::{Place, nearest};
use crate::words::SOURCE_LANGUAGE;

use super::Check;

/// Messages that something uses.
pub(super) type Used = BTreeSet<String>;

/// Files whose messages belong to the program, not to scripts; a test of the program holds them.
const PROGRAM_FILES: [&str; 3] = ["/kiosk", "/record", "/format"];

impl Check<'_> {
    /// Notes that a message is used from `place`, and that it is there.
    pub(super) fn message(&mut self, key: String, place: impl FnOnce() -> Place) {
        if self.used.contains(&key) {
            return;
        }
        let words = &self.scripts.words;
        if !words.has(SOURCE_LANGUAGE, &key) {
            if !self.lost.may_say(&key) {
                self.unknown_message(&key, place());
            }
            return;
        }
        self.used.extend(words.references(SOURCE_LANGUAGE, &key));
        let _ = self.used.insert(key);
    }

    fn unknown_message(&mut self, key: &str, place: Place) {
        let known = self.scripts.words.all_keys(SOURCE_LANGUAGE);
        let hint = nearest(key, known.iter().map(String::as_str)).map_or_else(
            || format!("write `{key} = ...` in i18n/{SOURCE_LANGUAGE}"),
            |near| format!("did you mean `{near}`? Or write it in i18n/{SOURCE_LANGUAGE}"),
        );
        self.fault("message.unknown", place, format!("there is no message `{key}`"), hint);
    }

    /// Messages that nothing uses.
    pub(super) fn unused_messages(&mut self) {
        if self.lost.any_form() {
            return;
        }
        let words = &self.scripts.words;
        for key in words.all_keys(SOURCE_LANGUAGE) {
            if self.used.contains(&key) || is_spare(&key) {
                continue;
            }
            let Some(place) = words.place_of(SOURCE_LANGUAGE, &key) else { continue };
            if PROGRAM_FILES.iter().any(|f| place.file.contains(f)) {
                continue;
            }
            let what = format!("nothing uses `{key}`");
            self.note("message.unused", place, what, "take it out, or correct the name where it should be used");
        }
    }
}

/// Families of messages that may be there without a use: common questions, reasons, places of other units.
fn is_spare(key: &str) -> bool {
    ["question-", "why-", "place-", "station-", "kind-", "choice-", "axle-"].iter().any(|p| key.starts_with(p))
}
