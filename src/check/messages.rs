//! Messages: there, used, and with values for every variable.

use std::collections::BTreeSet;

use crate::source::{Fault, Place, nearest};
use crate::words::SOURCE_LANGUAGE;

use super::Check;

/// Messages that something uses.
pub(super) type Used = BTreeSet<String>;

/// Files whose messages belong to the program, not to scripts; a test of the program holds them.
const PROGRAM_FILES: [&str; 3] = ["/kiosk", "/record", "/format"];

impl Check<'_> {
    /// Notes that a message is used from `place`, and that it is there.
    pub(super) fn message(&mut self, key: &str, place: &Place) -> bool {
        let _ = self.used.insert(key.to_owned());
        let found = self.scripts.words.has(SOURCE_LANGUAGE, key);
        if !found {
            let known = self.scripts.words.all_keys(SOURCE_LANGUAGE);
            let hint = nearest(key, known.iter().map(String::as_str)).map_or_else(
                || format!("write `{key} = ...` in i18n/{SOURCE_LANGUAGE}"),
                |near| format!("did you mean `{near}`? Or write it in i18n/{SOURCE_LANGUAGE}"),
            );
            self.fault("message.unknown", place.clone(), format!("there is no message `{key}`"), hint);
        }
        for other in self.scripts.words.references(SOURCE_LANGUAGE, key) {
            let _ = self.used.insert(other);
        }
        found
    }

    /// Messages that nothing uses.
    pub(super) fn unused_messages(&mut self) {
        let words = &self.scripts.words;
        let all = words.all_keys(SOURCE_LANGUAGE);
        for key in all.difference(&self.used) {
            let Some(place) = words.place_of(SOURCE_LANGUAGE, key) else { continue };
            if PROGRAM_FILES.iter().any(|f| place.file.contains(f)) || is_spare(key) {
                continue;
            }
            let what = format!("nothing uses `{key}`");
            let hint = "take it out, or correct the name where it should be used";
            self.faults.push(Fault::note("message.unused", place, what, hint));
        }
    }
}

/// Families of messages that may be there without a use: common questions, reasons, places of other units.
fn is_spare(key: &str) -> bool {
    ["question-", "why-", "place-", "station-", "kind-", "choice-", "axle-"].iter().any(|p| key.starts_with(p))
}
