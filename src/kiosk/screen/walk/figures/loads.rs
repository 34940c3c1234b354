//! What runs together on a supply, in words.

use crate::figures::loads::{Fit, Remedy};
use crate::words::{Args, Reader, Words, format};

/// What is to be said of a supply.
pub(super) struct Said {
    /// Which rules are broken.
    pub breaks: Vec<String>,
    /// What to switch off.
    pub remedies: Vec<String>,
    /// What is always on.
    pub always: String,
    /// What runs together.
    pub sets: Vec<String>,
}

/// Most sets and remedies that are told: a renter reads a few.
const TOLD: usize = 6;

/// What was found out about a supply, in words.
pub(super) fn said(words: &Words, reader: &Reader, fit: &Fit) -> Said {
    let load = |id: &String| {
        words.try_say(reader, &format!("load-{id}"), &Args::new()).unwrap_or_else(|_| id.clone())
    };
    let list = |ids: &[String]| format::list(words, reader, &ids.iter().map(load).collect::<Vec<_>>());
    let remedy = |remedy: &Remedy| {
        let part = |key: &str, ids: &[String]| {
            (!ids.is_empty()).then(|| words.say(reader, key, &Args::new().text("what", list(ids))))
        };
        let parts = [part("fits-off", &remedy.off), part("fits-propane", &remedy.on_propane)];
        format::list(words, reader, &parts.into_iter().flatten().collect::<Vec<_>>())
    };
    let broken = fit.breaks.iter();
    Said {
        breaks: broken
            .map(|b| words.say(reader, &format!("fits-break-{}", b.rule.word()), &Args::new()))
            .collect(),
        remedies: fit.remedies.iter().take(TOLD).map(remedy).collect(),
        always: list(&fit.always),
        sets: fit.sets.iter().take(TOLD).map(|set| list(set)).collect(),
    }
}
