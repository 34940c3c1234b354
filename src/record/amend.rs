//! Amendments: a sealed correction that refers to an earlier record. Nothing that is sealed is ever edited.

use std::collections::BTreeMap;

use super::build::{
    Answer, BuildFault, Contents, Pages, SealingHead, TEXT_FILE, caution_form, digest, ink_file, member,
    reader_of_lot, signatures,
};
use super::form::{
    self, Amended, AmendedTopic, Amendment, AnswerState, Caution, Head, Program, Reader, Record, Time,
};
use super::seal::{Digest, Kind, RecordId};
use super::{bag, ink, text};
use crate::route::Route;
use crate::script::Scripts;
use crate::walk::{self, Decision, Person, PersonId, Response, Signature, Timed, Who};

/// An answer to a caution that was given for the amendment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// The caution.
    pub caution: String,
    /// Who.
    pub by: PersonId,
    /// What they said, and when.
    pub said: Timed<Response>,
}

/// What an amendment says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Amending {
    /// The record it refers to.
    pub of: RecordId,
    /// Its digest.
    pub digest: Digest,
    /// What is corrected or added, and why; the time is that of the amendment.
    pub text: Timed<String>,
    /// Staff code of the agent.
    pub agent: String,
    /// What the renter reads in; the lot's usual when it is not said.
    pub reader: Option<walk::Reader>,
    /// The people who take part, with the numbers they have in the record.
    pub people: Vec<Person>,
    /// Answers to cautions, in the order they were given.
    pub answers: Vec<Answered>,
    /// Signatures and refusals to sign, in the order they were given.
    pub signatures: Vec<(Who, Timed<Signature>)>,
}

/// Makes the payload of an amendment. Same words, scripts and head: same bytes.
///
/// # Errors
/// See [`BuildFault`]: it says nothing, speaks of a caution that the route does not have, or a text is not what
/// was shown.
pub fn build(
    amending: &Amending,
    route: &Route,
    scripts: &Scripts,
    sealing: &SealingHead,
) -> Result<Contents, BuildFault> {
    let record = amendment(amending, route, scripts, sealing)?;
    let inks = amending.signatures.iter().filter_map(|(_, given)| match &given.value {
        Signature::Signed { ink } => Some(ink),
        Signature::Refused { .. } => None,
    });
    let mut payload: BTreeMap<String, Vec<u8>> =
        (1..).zip(inks).map(|(n, ink)| (ink_file(n), ink::svg(ink).into_bytes())).collect();
    payload.insert(bag::RECORD_FILE.to_owned(), form::write(&record)?);
    let page = text::render(&Record::Amendment(Box::new(record)), &scripts.words);
    payload.insert(TEXT_FILE.to_owned(), page.into_bytes());
    Ok(Contents { payload })
}

/// What `record.json` says of an amendment.
///
/// # Errors
/// As [`build`].
pub fn amendment(
    amending: &Amending,
    route: &Route,
    scripts: &Scripts,
    sealing: &SealingHead,
) -> Result<Amendment, BuildFault> {
    if sealing.kind != Kind::Amendment {
        return Err(BuildFault::Kind { kind: sealing.kind });
    }
    if amending.text.value.trim().is_empty() {
        return Err(BuildFault::Empty);
    }
    let reader = amending.reader.as_ref().map_or_else(
        || reader_of_lot(scripts),
        |set| Reader { language: set.language.clone(), measures: set.measures.clone(), at: None },
    );
    let mut pages = Pages::new(scripts, &route.unit, &reader, None)?;
    let head: Head = sealing.head(scripts.bundle.is_demo())?;
    Ok(Amendment {
        head,
        program: Program::this(),
        scripts: digest(scripts.bundle.digest())?,
        amends: Amended { id: amending.of.clone(), digest: amending.digest },
        organization: pages.say(&scripts.lot.value.name.value),
        unit: route.unit.clone(),
        unit_name: pages.say(&format!("unit-{}", route.unit)),
        agent: amending.agent.clone(),
        at: Time::from(&amending.text),
        text: amending.text.value.clone(),
        people: amending.people.iter().map(member).collect(),
        topics: topics(amending, route, &mut pages)?,
        signatures: signatures(&amending.signatures),
        reader,
    })
}

/// The cautions that were answered, by topic in the order of the route.
fn topics(
    amending: &Amending,
    route: &Route,
    pages: &mut Pages<'_>,
) -> Result<Vec<AmendedTopic>, BuildFault> {
    for answer in &amending.answers {
        let unknown = |what, id: String| BuildFault::Unknown { what, id };
        route.caution(&answer.caution).ok_or_else(|| unknown("caution", answer.caution.clone()))?;
        if !amending.people.iter().any(|person| person.id == answer.by) {
            return Err(unknown("person", answer.by.0.to_string()));
        }
    }
    let mut topics: Vec<AmendedTopic> = Vec::new();
    for step in &route.steps {
        let cautions = step.cautions.iter().map(|caution| answered(amending, caution, pages));
        let cautions: Vec<Caution> = cautions.filter_map(Result::transpose).collect::<Result<_, _>>()?;
        if cautions.is_empty() {
            continue;
        }
        match topics.iter_mut().find(|topic| topic.id == step.topic) {
            Some(topic) => topic.cautions.extend(cautions),
            None => {
                let title = pages.say(&format!("topic-{}", step.topic));
                topics.push(AmendedTopic { id: step.topic.clone(), title, cautions });
            }
        }
    }
    Ok(topics)
}

/// A caution with the answers the amendment gives it; none when it gives none.
fn answered(
    amending: &Amending,
    caution: &crate::route::Caution,
    pages: &mut Pages<'_>,
) -> Result<Option<Caution>, BuildFault> {
    let mine = amending.answers.iter().filter(|answer| answer.caution == caution.id);
    let said: Vec<Answer<'_>> = mine.map(|answer| (answer.by, &answer.said)).collect();
    if said.is_empty() {
        return Ok(None);
    }
    let drivers: Vec<u8> = amending.people.iter().filter(|p| p.driver).map(|p| p.id.0).collect();
    let kept = refusing(&said, Decision::KeepUnit);
    let refused = refusing(&said, Decision::HandOver);
    let state = match (kept.is_empty(), refused.is_empty()) {
        (false, _) => AnswerState::Kept { people: kept },
        (true, false) => AnswerState::Refused { people: refused },
        (true, true) => AnswerState::Answered,
    };
    caution_form(pages, caution, &drivers, state, &said).map(Some)
}

/// Those whose last word is a refusal with this decision.
fn refusing(said: &[Answer<'_>], wanted: Decision) -> Vec<u8> {
    let is_last = |index: usize, by: PersonId| !said.iter().skip(index + 1).any(|(later, _)| *later == by);
    let refuses = |said: &Response| matches!(said, Response::Refused { decision, .. } if *decision == wanted);
    let mine =
        said.iter().enumerate().filter(|(index, (by, said))| is_last(*index, *by) && refuses(&said.value));
    mine.map(|(_, (by, _))| by.0).collect()
}
