//! Demonstrations: every try as it was on the page.

use super::{BuildFault, Pages, digest};
use crate::record::form::{Attempt, Demonstrated, Did, Time, Try};
use crate::route::Caution;
use crate::script::demo::Part;
use crate::walk::{self, Tried, Walk};

/// The parts of the demonstrations of a caution in which anything happened.
pub(super) fn demonstrated(
    walk: &Walk,
    pages: &mut Pages<'_>,
    caution: &Caution,
) -> Result<Vec<Demonstrated>, BuildFault> {
    let mut all = Vec::new();
    for demonstration in walk.demonstrations(caution) {
        for part in &demonstration.parts {
            let mut attempts = Vec::new();
            for attempt in walk.attempts(&caution.id) {
                let at = Time::from(attempt);
                match &attempt.value {
                    walk::Attempt::Tried(t) if t.demonstration == demonstration.id && t.part == part.id => {
                        attempts.push(Attempt { by: t.by.0, at, did: tried(pages, part, t)? });
                    }
                    walk::Attempt::Helped(h) if h.demonstration == demonstration.id && h.part == part.id => {
                        attempts.push(Attempt { by: h.person.0, at, did: Did::Helped });
                    }
                    _ => {}
                }
            }
            if !attempts.is_empty() {
                all.push(Demonstrated {
                    demonstration: demonstration.id.clone(),
                    part: part.id.clone(),
                    question: pages.said(&part.prompt),
                    attempts,
                });
            }
        }
    }
    Ok(all)
}

fn tried(pages: &mut Pages<'_>, part: &Part, tried: &Tried) -> Result<Did, BuildFault> {
    let changed = || BuildFault::CautionChanged {
        caution: tried.caution.clone(),
        by: tried.by.0,
        language: tried.shown.language.clone(),
    };
    let page = digest(&tried.shown.text)?;
    let speaker = pages.page_of(part, tried)?.ok_or_else(changed)?;
    let text = speaker.demonstration(part, &tried.order);
    let reply = part.judge(&tried.answer).reply().map(|said| speaker.reply(said));
    if reply.as_ref().map(|(_, digest)| digest) != tried.reply.as_ref().map(|shown| &shown.text) {
        return Err(changed());
    }
    Ok(Did::Tried(Box::new(Try {
        right: tried.right,
        page,
        language: tried.shown.language.clone(),
        question: text.prompt,
        order: text.items.into_iter().map(|item| item.text).collect(),
        places: text.places.into_iter().map(|place| place.text).collect(),
        answer: speaker.answer(part, &tried.answer),
        reply: reply.map(|(text, _)| text),
        looked_ms: tried.looked_ms,
    })))
}
