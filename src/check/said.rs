//! What is known of messages, so that each is looked into once for all units.

use std::collections::{BTreeMap, BTreeSet};

use crate::script::Speaker;
use crate::words::{SOURCE_LANGUAGE, Words};

/// What a message asks for, and how long it is where it asks for nothing.
#[derive(Debug)]
struct Message {
    variables: BTreeSet<String>,
    length: Option<usize>,
}

/// Messages looked into so far, by key.
#[derive(Debug, Default)]
pub(super) struct Said(BTreeMap<String, Message>);

impl Said {
    fn message(&mut self, words: &Words, key: &str) -> &mut Message {
        self.0
            .entry(key.to_owned())
            .or_insert_with(|| Message { variables: words.variables(SOURCE_LANGUAGE, key), length: None })
    }

    /// Whether everything that a message asks for passes a test.
    pub(super) fn asks_only(&mut self, words: &Words, key: &str, has: impl FnMut(&String) -> bool) -> bool {
        self.message(words, key).variables.iter().all(has)
    }

    /// How many words a reader reads.
    pub(super) fn length(&mut self, words: &Words, speaker: &Speaker<'_>, key: &str) -> usize {
        let message = self.message(words, key);
        if let Some(length) = message.length {
            return length;
        }
        let length = speaker.say(key).split_whitespace().count();
        if message.variables.is_empty() {
            message.length = Some(length);
        }
        length
    }
}
