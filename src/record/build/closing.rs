//! Readings, items, marks, leaving check, consent, signatures, copy, outcome.

use super::{BuildFault, Pages, digest, ink_file};
use crate::record::form::{
    Consent, ConsentText, Copied, CopyTaken, Item, ItemCounted, LeavingChecked, LeavingLine, Mark, Outcome,
    Question, Reading, ReadingOutcome, Refusal, Reopened, Scale, Signature, SignatureDone, Time, UndoneStop,
    Withdrawn,
};
use crate::route;
use crate::walk::{self, ReadingState, Response, Timed, Walk, Who};

pub(super) fn outcome(walk: &Walk) -> Result<Outcome, BuildFault> {
    match (walk.outcome(), walk.seal()) {
        (walk::Outcome::HandedOver, Some(seal)) => Ok(Outcome::HandedOver { at: Time::from(seal) }),
        (walk::Outcome::NotHandedOver(stopped), _) => Ok(Outcome::NotHandedOver {
            reason: stopped.value.reason.clone(),
            by: stopped.value.by.into(),
            at: Time::from(&stopped),
        }),
        _ => Err(BuildFault::NotDecided),
    }
}

/// Refusals that stand: of cautions in the order of the route, then of signatures.
pub(super) fn refusals(walk: &Walk) -> Vec<Refusal> {
    let cautions = walk.refusals().into_iter().filter_map(|(caution, by, said)| match &said.value {
        Response::Refused { reason, decision, .. } => Some(Refusal::Caution {
            caution: caution.id.clone(),
            version: caution.version,
            by: by.0,
            reason: reason.clone(),
            decision: (*decision).into(),
            at: Time::from(said),
        }),
        Response::Answered { .. } => None,
    });
    let signatures = walk.signatures().iter().filter_map(|(who, given)| match (who, &given.value) {
        (Who::Person(by), walk::Signature::Refused { reason, decision }) => Some(Refusal::Signature {
            by: by.0,
            reason: reason.clone(),
            decision: (*decision).into(),
            at: Time::from(given),
        }),
        _ => None,
    });
    cautions.chain(signatures).collect()
}

pub(super) fn questions(walk: &Walk) -> Vec<Question> {
    let question = |asked: &Timed<walk::Question>| Question {
        step: asked.value.step.clone(),
        caution: asked.value.caution.clone(),
        text: asked.value.text.clone(),
        answered: asked.value.answered,
        at: Time::from(asked),
    };
    walk.questions().iter().map(question).collect()
}

pub(super) fn readings(walk: &Walk, pages: &Pages<'_>) -> Vec<Reading> {
    let mut readings = Vec::new();
    for step in &walk.route().steps {
        for reading in &step.readings {
            readings.push(Reading {
                id: reading.id.clone(),
                step: step.id.clone(),
                name: pages.say(&format!("reading-{}", reading.id)),
                scale: scale(&reading.scale),
                least: reading.bounds.least.map(|bound| bound.to_string()),
                most: reading.bounds.most.map(|bound| bound.to_string()),
                outcome: walk.reading(&reading.id).map_or(ReadingOutcome::Open, reading_outcome),
            });
        }
    }
    readings
}

fn scale(scale: &route::Scale) -> Scale {
    match scale {
        route::Scale::Number { measure, step, min, max, .. } => Scale::Number {
            measure: measure.clone(),
            step: step.to_string(),
            min: min.to_string(),
            max: max.to_string(),
        },
        route::Scale::Parts(parts) => Scale::Parts { parts: *parts },
        route::Scale::Choice(choices) => Scale::Choice { choices: choices.clone() },
    }
}

fn reading_outcome(state: &Timed<ReadingState>) -> ReadingOutcome {
    let at = Time::from(state);
    match &state.value {
        ReadingState::Taken { value, measure } => {
            ReadingOutcome::Taken { value: value.clone(), measure: measure.clone(), at }
        }
        ReadingState::NotTaken { reason, note } => {
            ReadingOutcome::NotTaken { reason: (*reason).into(), note: note.clone(), at }
        }
    }
}

pub(super) fn items(walk: &Walk, pages: &Pages<'_>) -> Vec<Item> {
    let item = |item: &route::Item| Item {
        tag: item.tag.clone(),
        name: pages.say(&item.words),
        lent: item.count,
        price: item.price,
        counted: walk.item(&item.tag).map(|count| ItemCounted {
            count: count.value.count,
            note: count.value.note.clone(),
            at: Time::from(count),
        }),
    };
    walk.route().items.iter().map(item).collect()
}

pub(super) fn marks(walk: &Walk) -> Vec<Mark> {
    let mark = |placed: &Timed<walk::Mark>, removed| Mark {
        number: placed.value.number,
        x: placed.value.at.x,
        y: placed.value.at.y,
        kind: placed.value.kind.into(),
        size: placed.value.size.into(),
        note: placed.value.note.clone(),
        by: placed.value.by.into(),
        at: Time::from(placed),
        removed,
    };
    let standing = walk.marks().map(|placed| mark(placed, None));
    let mut marks: Vec<Mark> =
        standing.chain(walk.marks_removed().map(|(placed, at)| mark(placed, Some(at)))).collect();
    marks.sort_by_key(|mark| mark.number);
    marks
}

pub(super) fn leaving(walk: &Walk, pages: &Pages<'_>) -> Vec<LeavingLine> {
    let lines = walk.route().steps.iter().flat_map(|step| step.leaving.iter().map(move |id| (step, id)));
    lines
        .map(|(step, id)| LeavingLine {
            id: id.clone(),
            step: step.id.clone(),
            name: pages.say(&format!("leaving-{id}")),
            checked: walk
                .leaving(id)
                .map(|checked| LeavingChecked { good: checked.value, at: Time::from(checked) }),
        })
        .collect()
}

/// Answers about an electronic record, and the texts they are bound to.
pub(super) fn consents(
    walk: &Walk,
    pages: &mut Pages<'_>,
) -> Result<(Vec<ConsentText>, Vec<Consent>), BuildFault> {
    let mut texts: Vec<ConsentText> = Vec::new();
    let mut consents = Vec::new();
    for (by, said) in walk.consents() {
        let shown = &said.value.shown;
        let text = digest(&shown.text)?;
        if !texts.iter().any(|known| known.digest == text && known.language == shown.language) {
            let changed = || BuildFault::ConsentChanged { by: by.0, language: shown.language.clone() };
            texts.push(pages.consent(shown)?.ok_or_else(changed)?);
        }
        consents.push(Consent { by: by.0, given: said.value.given, text, at: Time::from(said) });
    }
    Ok((texts, consents))
}

/// Signatures in the order they were given; those with ink are numbered from 1.
pub(in crate::record) fn signatures(given: &[(Who, Timed<walk::Signature>)]) -> Vec<Signature> {
    let mut inks = 0;
    let mut signature = |(who, given): &(Who, Timed<walk::Signature>)| Signature {
        by: (*who).into(),
        at: Time::from(given),
        done: match &given.value {
            walk::Signature::Signed { .. } => {
                inks += 1;
                SignatureDone::Signed { ink: ink_file(inks) }
            }
            walk::Signature::Refused { reason, decision } => {
                SignatureDone::Refused { reason: reason.clone(), decision: (*decision).into() }
            }
        },
    };
    given.iter().map(&mut signature).collect()
}

pub(super) fn withdrawn(walk: &Walk) -> Vec<Withdrawn> {
    let withdrawn = |withdrawn: &walk::Withdrawn| Withdrawn {
        by: withdrawn.by.into(),
        signed: matches!(withdrawn.signature.value, walk::Signature::Signed { .. }),
        at: Time::from(&withdrawn.signature),
        withdrawn: withdrawn.withdrawn,
        reason: withdrawn.reason.clone(),
    };
    walk.withdrawn().iter().map(withdrawn).collect()
}

pub(super) fn reopened(walk: &Walk) -> Vec<Reopened> {
    let stop = |stopped: &Timed<walk::Stopped>| UndoneStop {
        reason: stopped.value.reason.clone(),
        by: stopped.value.by.into(),
        at: Time::from(stopped),
    };
    let reopened = |reopened: &Timed<walk::Reopened>| Reopened {
        at: Time::from(reopened),
        reason: reopened.value.reason.clone(),
        stopped: reopened.value.stopped.as_ref().map(stop),
    };
    walk.reopened().iter().map(reopened).collect()
}

pub(super) fn copy(walk: &Walk) -> CopyTaken {
    CopyTaken {
        offered: walk.copy_offered().map(Time::from),
        chosen: walk.copy().map(|copy| Copied { choice: copy.value.into(), at: Time::from(copy) }),
    }
}
