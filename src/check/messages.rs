//! Messages: there, and used.

use std::collections::BTreeSet;

use crate::source::Place;
use crate::words::SOURCE_LANGUAGE;

use super::{Check, GUESSES_CAP};

/// Messages that something uses.
pub(super) type Used = BTreeSet<String>;

/// Files whose messages belong to the program, not to scripts; a test of the program holds them.
const PROGRAM_FILES: [&str; 5] = ["/kiosk", "/record", "/format", "/figures", "/archive"];

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
        let write = format!("write `{key} = ...` in i18n/{SOURCE_LANGUAGE}");
        let known = if self.guesses < GUESSES_CAP {
            self.scripts.words.all_keys(SOURCE_LANGUAGE)
        } else {
            BTreeSet::new()
        };
        let other = write.clone();
        let near = self.hint(key, known.iter().map(String::as_str), other);
        let hint = if near == write { write } else { format!("{near} Else {write}") };
        self.fault("message.unknown", place, format!("there is no message `{key}`"), hint);
    }

    /// Messages that nothing uses. Those of the program's own files are left out.
    pub(super) fn unused_messages(&mut self) {
        if self.lost.any_form() || self.scripts.units.is_empty() {
            return;
        }
        let scripts = self.scripts;
        let folder = format!("i18n/{SOURCE_LANGUAGE}/");
        let own = |name: &&str| {
            name.starts_with(&folder)
                && name.ends_with(".ftl")
                && !PROGRAM_FILES.iter().any(|f| name.contains(f))
        };
        for name in scripts.bundle.names().filter(own) {
            let Some(text) = scripts.bundle.get(name).and_then(|bytes| std::str::from_utf8(bytes).ok())
            else {
                continue;
            };
            let (mut id, mut key) = ("", String::new());
            for line in text.lines() {
                if let Some(found) = named(line) {
                    id = found;
                    key.clear();
                    key.push_str(id);
                } else if let Some(attribute) = line.trim_start_matches(' ').strip_prefix('.').and_then(named)
                {
                    key.clear();
                    key.extend([id, ".", attribute]);
                } else {
                    continue;
                }
                if !self.used.contains(&key) && !is_spare(&key) {
                    self.unused_message(&key);
                }
            }
        }
    }

    fn unused_message(&mut self, key: &str) {
        if self.came_with(key) {
            return;
        }
        let words = &self.scripts.words;
        // A message without a text of its own has attributes alone.
        if !words.has(SOURCE_LANGUAGE, key) {
            return;
        }
        let Some(place) = words.place_of(SOURCE_LANGUAGE, key) else { return };
        let what = format!("nothing uses `{key}`");
        self.note("message.unused", place, what, "take it out, or correct the name where it should be used");
    }
}

/// The name of the message that a line of a file of words begins.
pub(super) fn named(line: &str) -> Option<&str> {
    let end = line.find(|c: char| !(c.is_ascii_alphanumeric() || matches!(c, '-' | '_')))?;
    line.get(..end).filter(|name| name.starts_with(|c: char| c.is_ascii_alphabetic()))
}

/// Families of messages that may be there without a use: common questions, reasons, places of other units.
fn is_spare(key: &str) -> bool {
    ["question-", "why-", "place-", "station-", "kind-", "choice-", "axle-", "seat-"]
        .iter()
        .any(|p| key.starts_with(p))
}
