//! The way round the unit: steps, cautions, answers.

use std::collections::BTreeMap;

use super::{BuildFault, Pages, digest};
use crate::record::form::{
    AnswerState, Caution, CautionText, MustAnswer, Response, Route, Said, Step, StepOutcome, StepText,
    StopRef, Time,
};
use crate::route::{self, Answers};
use crate::walk::{self, PersonId, StepState, Timed, Walk};

pub(super) fn route(walk: &Walk, pages: &mut Pages<'_>) -> Result<Route, BuildFault> {
    let route = walk.route();
    let steps = route.steps.iter().enumerate().map(|(index, found)| step(walk, pages, index, found));
    Ok(Route { meters: route.meters, minutes: route.minutes, steps: steps.collect::<Result<_, _>>()? })
}

fn step(walk: &Walk, pages: &mut Pages<'_>, index: usize, step: &route::Step) -> Result<Step, BuildFault> {
    let route = walk.route();
    let stop = route.stop_of(index).and_then(|at| route.stops.get(at));
    let (last, earlier) = match walk.step_history(&step.id) {
        [earlier @ .., last] => (outcome(last), earlier),
        [] => (StepOutcome::Open, [].as_slice()),
    };
    let cautions =
        step.cautions.iter().map(|found| caution(walk, pages, step, found)).collect::<Result<_, _>>()?;
    Ok(Step {
        id: step.id.clone(),
        topic: step.topic.clone(),
        title: pages.say(&format!("step-{}", step.id)),
        stop: stop.map_or(StopRef { zone: route::Zone::Desk.into(), number: 0 }, |stop| StopRef {
            zone: stop.zone.into(),
            number: stop.number,
        }),
        station: step.station.word().to_owned(),
        place: step.place.clone(),
        minutes: step.minutes,
        took_s: super::seconds(walk.times().step(&step.id)),
        picture: step.picture.clone(),
        outcome: last,
        earlier: earlier.iter().map(outcome).collect(),
        texts: texts(walk, pages, step)?,
        figures: step.figures.clone(),
        readings: step.readings.iter().map(|reading| reading.id.clone()).collect(),
        kit: step.kit,
        leaving: step.leaving.clone(),
        cautions,
    })
}

fn outcome(state: &Timed<StepState>) -> StepOutcome {
    let at = Time::from(state);
    match &state.value {
        StepState::Open => StepOutcome::Open,
        StepState::Shown { language, measures } => {
            StepOutcome::Shown { language: language.clone(), measures: measures.clone(), at }
        }
        StepState::NotShown { reason, note } => {
            StepOutcome::NotShown { reason: (*reason).into(), note: note.clone(), at }
        }
    }
}

/// The page of a step, once for each language and measures it was shown in.
fn texts(walk: &Walk, pages: &mut Pages<'_>, step: &route::Step) -> Result<Vec<StepText>, BuildFault> {
    let mut texts: Vec<StepText> = Vec::new();
    for state in walk.step_history(&step.id) {
        if let StepState::Shown { language, measures } = &state.value
            && !texts.iter().any(|text| text.language == *language && text.measures == *measures)
        {
            texts.push(pages.step(step, language, measures)?);
        }
    }
    Ok(texts)
}

/// Something a person said to a caution.
pub(in crate::record) type Answer<'a> = (PersonId, &'a Timed<walk::Response>);

fn caution(
    walk: &Walk,
    pages: &mut Pages<'_>,
    step: &route::Step,
    caution: &route::Caution,
) -> Result<Caution, BuildFault> {
    let ever = walk.speakers(&caution.id);
    let mut said: Vec<Answer<'_>> = ever
        .flat_map(|id| walk.response_history(&caution.id, id).iter().map(move |response| (id, response)))
        .collect();
    said.sort_by_key(|(id, response)| (response.at, *id));
    let drivers: Vec<u8> = walk.drivers().map(|driver| driver.id.0).collect();
    let state = match walk.answer_state_of(step, caution) {
        walk::AnswerState::NotDue => AnswerState::NotDue,
        walk::AnswerState::Waiting(_) => AnswerState::Waiting,
        walk::AnswerState::Answered => AnswerState::Answered,
        walk::AnswerState::Refused(people) => AnswerState::Refused { people: numbers(&people) },
        walk::AnswerState::Kept(people) => AnswerState::Kept { people: numbers(&people) },
    };
    let mut form = caution_form(pages, caution, &drivers, state, &said)?;
    let mut spoken: BTreeMap<u8, usize> = BTreeMap::new();
    for response in &mut form.responses {
        let (by, index) = (PersonId(response.by), spoken.entry(response.by).or_default());
        response.lapsed = walk.lapsed(&caution.id, by, *index).map(|since| Time::from(&since));
        response.carried = walk.carried(&caution.id, by, *index);
        response.counts &= response.lapsed.is_none();
        *index += 1;
    }
    form.demonstrations = super::demo::demonstrated(walk, pages, caution)?;
    Ok(form)
}

fn numbers(people: &[PersonId]) -> Vec<u8> {
    people.iter().map(|id| id.0).collect()
}

/// A caution with what was said to it, each bound to its text.
pub(in crate::record) fn caution_form(
    pages: &mut Pages<'_>,
    caution: &route::Caution,
    drivers: &[u8],
    state: AnswerState,
    said: &[Answer<'_>],
) -> Result<Caution, BuildFault> {
    let mut texts: Vec<CautionText> = Vec::new();
    let mut responses = Vec::new();
    for (index, (by, response)) in said.iter().enumerate() {
        let (walk::Response::Answered { shown, .. } | walk::Response::Refused { shown, .. }) =
            &response.value;
        let wanted = digest(&shown.text)?;
        let reading_ms =
            match texts.iter().find(|text| text.digest == wanted && text.language == shown.language) {
                Some(text) => text.reading_ms,
                None => {
                    let text = pages.caution(caution, shown)?.ok_or_else(|| BuildFault::CautionChanged {
                        caution: caution.id.clone(),
                        by: by.0,
                        language: shown.language.clone(),
                    })?;
                    let reading_ms = text.reading_ms;
                    texts.push(text);
                    reading_ms
                }
            };
        let counts = !said.iter().skip(index + 1).any(|(later, _)| later == by);
        let (by, at) = (by.0, Time::from(*response));
        let said = words(&response.value, reading_ms);
        responses.push(Response { by, at, counts, lapsed: None, carried: false, text: wanted, said });
    }
    Ok(Caution {
        id: caution.id.clone(),
        version: caution.version,
        title: pages.title(caution),
        signal: caution.signal.into(),
        hazard: caution.hazard.into(),
        harm: caution.harm.into(),
        asks: caution.ask.into(),
        must: match caution.who {
            Answers::Party => MustAnswer::OneAdult,
            Answers::EachDriver => MustAnswer::EachDriver { people: drivers.to_vec() },
        },
        state,
        texts,
        demonstrations: Vec::new(),
        responses,
    })
}

fn words(response: &walk::Response, reading_ms: u32) -> Said {
    match response {
        walk::Response::Answered { how, looked_ms, .. } => {
            let looked_ms = *looked_ms;
            Said::Confirmed { how: (*how).into(), looked_ms, too_fast: looked_ms < reading_ms }
        }
        walk::Response::Refused { reason, decision, .. } => {
            Said::Refused { reason: reason.clone(), decision: (*decision).into() }
        }
    }
}
