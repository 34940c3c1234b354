//! Which caution records are looked for by: whoever looks knows some of its words, seldom its name.

use crate::kiosk::context::Ctx;
use crate::script::Speaker;

/// Most cautions that are offered at once.
const OFFERED: usize = 4;

/// A caution of the scripts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Offer {
    pub(super) id: String,
    /// Its first line, as one of the units has it.
    pub(super) words: String,
}

/// Cautions in whose name or first line all that is typed stands.
pub(super) fn offers(ctx: &Ctx<'_>, typed: &str) -> Vec<Offer> {
    let typed = typed.to_lowercase();
    let wanted: Vec<&str> = typed.split_whitespace().collect();
    if wanted.is_empty() {
        return Vec::new();
    }
    let speakers: Vec<Speaker<'_>> = ctx.scripts.units.keys().filter_map(|unit| ctx.staff(unit)).collect();
    let said = |id: &str| {
        let key = format!("caution-{id}");
        // What one unit lacks a value for, another has.
        speakers.iter().find_map(|speaker| speaker.try_say(&key).ok())
    };
    let topics = ctx.scripts.topics.values().flat_map(|topic| &topic.value.steps);
    let all = topics.flat_map(|step| &step.value.cautions).map(|caution| caution.value.id.value.as_str());
    let offer = |id: &str| {
        let words = said(id).unwrap_or_default();
        let lower = words.to_lowercase();
        let fits = wanted.iter().all(|word| id.contains(word) || lower.contains(word));
        fits.then(|| Offer { id: id.to_owned(), words })
    };
    all.filter_map(offer).take(OFFERED).collect()
}

/// A name of a caution that was typed as it is; older records may hold one that no script has any more.
pub(super) fn named(typed: &str) -> Option<String> {
    let typed = typed.trim();
    let plain = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
    (typed.contains('-') && typed.bytes().all(plain)).then(|| typed.to_owned())
}
