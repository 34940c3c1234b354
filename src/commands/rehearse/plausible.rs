//! What a rehearsal does when it is told nothing: a plausible party, readings, answers and ink.

use rust_decimal::Decimal;

use crate::figures::{HookUp, Trip};
use crate::measure::Measure;
use crate::route::{Ask, Reading, Scale, Stop};
use crate::script::Scripts;
use crate::walk::{Answer, AnswerState, CopyChoice, Ink, MustAnswer, Phase, StepState, Walk};

use super::action::{Action, By, Traveler};

/// What is missing of the opening.
pub(super) fn opening(walk: &Walk) -> Vec<Action> {
    if walk.phase() != Phase::Opening {
        return Vec::new();
    }
    let mut actions = Vec::new();
    let mut unless = |done: bool, action: Action| {
        if !done {
            actions.push(action);
        }
    };
    unless(walk.agent().is_some(), Action::Agent("A7".into()));
    unless(walk.reader().is_some(), Action::Reader { language: "en-US".into(), measures: "us".into() });
    let due =
        walk.began().at.checked_add(jiff::SignedDuration::from_hours(5 * 24)).unwrap_or(walk.began().at);
    let due_back = format!("{}T10:00", due.strftime("%Y-%m-%d"));
    unless(walk.booking().is_some(), Action::Booking { reference: "MW-1042".into(), nights: 5, due_back });
    let person = |name: &str, age, driver| Traveler { name: name.into(), age, driver };
    let party = vec![person("Robin Vale", 41, true), person("Sam Vale", 39, true), person("", 8, false)];
    let expiry = due.checked_add(jiff::SignedDuration::from_hours(24 * 365)).unwrap_or(due);
    let licence = |person| Action::Licence {
        person,
        class: "C".into(),
        country: "US".into(),
        expiry: expiry.strftime("%Y-%m-%d").to_string(),
    };
    if walk.people().is_empty() {
        unless(false, Action::Party(party));
        unless(false, licence(1));
        unless(false, licence(2));
        unless(walk.present().is_some(), Action::Present(vec![1, 2, 3]));
    } else {
        for driver in walk.drivers() {
            unless(walk.licence(driver.id).is_some(), licence(driver.id.0));
        }
        unless(walk.present().is_some(), Action::Present(walk.people().iter().map(|p| p.id.0).collect()));
    }
    unless(walk.planned().is_some(), Action::Trip(Box::new(trip())));
    unless(walk.first_time().is_some(), Action::FirstTime(true));
    unless(walk.translator().is_some(), Action::Translator(String::new()));
    unless(false, Action::Open);
    actions
}

/// A plausible plan: power on the first night, then none; bags, and a cool night.
fn trip() -> Trip {
    Trip {
        hook_up: vec![HookUp::Power],
        bags: "250 lb".parse().ok(),
        coldest: "48 °F".parse().ok(),
        ..Trip::default()
    }
}

/// What is missing at a stop: its steps, readings, items, leaving check, then its cautions.
pub(super) fn stop(walk: &Walk, scripts: &Scripts, stop: &Stop) -> Vec<Action> {
    let mut actions = Vec::new();
    let steps = walk.route().steps.get(stop.steps.clone()).unwrap_or_default();
    for step in steps {
        if matches!(walk.step_state(&step.id), StepState::Open) {
            actions.push(Action::Show(step.id.clone()));
        }
        for reading in step.readings.iter().filter(|r| walk.reading(&r.id).is_none()) {
            actions.push(Action::Read { reading: reading.id.clone(), value: value(walk, scripts, reading) });
        }
        if step.kit {
            for item in walk.route().items.iter().filter(|i| walk.item(&i.tag).is_none()) {
                actions.push(Action::Count { tag: item.tag.clone(), count: item.count, note: String::new() });
            }
        }
        for line in step.leaving.iter().filter(|l| walk.leaving(l).is_none()) {
            actions.push(Action::Leaving { item: line.clone(), good: true });
        }
    }
    for step in steps {
        let left_out = matches!(walk.step_state(&step.id), StepState::NotShown { .. });
        for caution in &step.cautions {
            if left_out && caution.signal != crate::route::Signal::Danger {
                continue;
            }
            let how = match caution.ask {
                Ask::Read => Answer::Read,
                Ask::Demonstrate if !caution.demonstrations.is_empty() => Answer::Demonstrate,
                Ask::Hold | Ask::Demonstrate => Answer::Hold,
            };
            for by in must_answer(walk, &caution.id) {
                actions.push(Action::Answer { caution: caution.id.clone(), by, how });
            }
        }
    }
    actions
}

/// Numbers of those who still have to answer.
fn must_answer(walk: &Walk, caution: &str) -> Vec<u8> {
    match walk.answer_state(caution) {
        Some(AnswerState::Waiting(MustAnswer::Drivers(people))) => people.iter().map(|p| p.0).collect(),
        Some(AnswerState::Waiting(MustAnswer::OneAdult)) => {
            walk.adults().find(|p| walk.is_present(p.id)).map(|p| p.id.0).into_iter().collect()
        }
        _ => Vec::new(),
    }
}

/// What is missing of the closing.
pub(super) fn closing(walk: &Walk) -> Vec<Action> {
    let mut actions = Vec::new();
    let first = walk.drivers().next().map_or(1, |p| p.id.0);
    if walk.consents().next().is_none() {
        actions.push(Action::Consent { by: first, given: true });
    }
    for driver in walk.drivers().filter(|d| walk.signature(crate::walk::Who::Person(d.id)).is_none()) {
        actions.push(Action::Sign(By::Person(driver.id.0)));
    }
    if walk.signature(crate::walk::Who::Agent).is_none() {
        actions.push(Action::Sign(By::Agent));
    }
    if walk.copy_offered().is_none() {
        actions.push(Action::OfferCopy);
    }
    actions.push(Action::Copy(CopyChoice::Slip));
    actions
}

/// A plausible value: what the sheet says, else the upper third of the range.
fn value(walk: &Walk, scripts: &Scripts, reading: &Reading) -> String {
    let id = reading.id.as_str();
    match &reading.scale {
        // Waste tanks go out empty.
        Scale::Parts(parts) if matches!(id, "grey" | "black") => format!("0/{parts}"),
        Scale::Parts(parts) => format!("{}/{parts}", parts.saturating_sub(1)),
        Scale::Choice(words) => words.first().cloned().unwrap_or_default(),
        Scale::Number { measure, step, min, max, .. } => {
            let third = Decimal::from(3);
            let upper = match measure.as_str() {
                "mi" => Decimal::from(48_213),
                "h" => Decimal::from(612),
                // A lead-acid battery that is full and has rested.
                "V" => Decimal::new(127, 1).max(*min).min(*max),
                "psi" => cold(walk, scripts, id).unwrap_or(*min + (*max - *min) / third),
                _ => *min + (*max - *min) * Decimal::from(2) / third,
            };
            let right =
                upper.max(reading.bounds.least.unwrap_or(*min)).min(reading.bounds.most.unwrap_or(*max));
            let steps = (right / *step).floor();
            (steps * *step).normalize().to_string()
        }
    }
}

/// Cold pressure of the axle a tire reading belongs to, in psi.
fn cold(walk: &Walk, scripts: &Scripts, id: &str) -> Option<Decimal> {
    let sheet = &scripts.units.get(&walk.route().unit)?.value;
    let axle = sheet.axles.iter().find(|a| id.contains(a.at.word()))?;
    let psi = axle.cold.quantity().to(Measure::Psi)?;
    crate::measure::rounded(psi, 0, crate::measure::Rounding::Nearest)
}

/// Symbol of the measure a reading is read in; empty for parts and choices.
pub(super) fn measure_of(walk: &Walk, reading: &str) -> String {
    match walk.route().reading(reading).map(|r| &r.scale) {
        Some(Scale::Number { measure, .. }) => measure.clone(),
        _ => String::new(),
    }
}

/// Two strokes that look like a signature: a wave, and a line under it.
pub(super) fn ink(by: By) -> Ink {
    let seed = match by {
        By::Agent => 3,
        By::Person(id) => i16::from(id) + 4,
    };
    let wave = |i: i16| {
        let up = (i * seed * 7) % 90 - 45;
        (120 + i * 18, 150 + up)
    };
    let line = |i: i16| (100 + i * 80, 240 - i);
    Ink { height: 300, strokes: vec![(0..36).map(wave).collect(), (0..10).map(line).collect()] }
}
