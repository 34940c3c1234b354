//! The trip, and the figures for it, as of the closing.

use super::{BuildFault, Pages};
use crate::figures::{self, Detail, explain, form::Details, say_projection};
use crate::measure::{Measure, Quantity};
use crate::record::form::{
    Figure, FigureInput, FigureSays, FigureState, FigureValue, Plan, Planned, Time, Trip,
};
use crate::unit::Facts;
use crate::walk::Walk;

/// What was planned, and what figures are computed from.
pub(super) fn trip(walk: &Walk) -> Result<Option<Trip>, BuildFault> {
    let plan = |timed: &crate::walk::Timed<figures::Trip>| {
        Ok::<_, BuildFault>(Planned { at: Time::from(timed), plan: Plan::of(&timed.value)? })
    };
    let planned = walk.planned().map(plan).transpose()?;
    let counted = walk.trip().map(|trip| Plan::of(&trip)).transpose()?;
    Ok((planned.is_some() || counted.is_some()).then_some(Trip { planned, counted }))
}

/// All figures, for the trip where there is one.
pub(super) fn figures(walk: &Walk, facts: &Facts, pages: &Pages<'_>) -> Vec<Figure> {
    let all = match walk.trip() {
        Some(trip) => figures::of_trip(facts, &trip),
        None => figures::of_unit(facts),
    };
    all.iter().map(|found| figure(found, &facts.lists().currency, pages)).collect()
}

fn figure(figure: &figures::Figure, currency: &str, pages: &Pages<'_>) -> Figure {
    let outcome = |index: usize| figure.outcomes.get(index);
    Figure {
        id: figure.id.to_owned(),
        state: match &figure.state {
            figures::State::Ok => FigureState::Ok,
            figures::State::Missing(fact) => FigureState::Missing { fact: fact.clone() },
            figures::State::NotFitted => FigureState::NotFitted,
        },
        verdict: figure.verdict.map(str::to_owned),
        values: figure.values.iter().enumerate().map(|(at, v)| value(outcome(at), v)).collect(),
        rounding: figure.rounding.into(),
        inputs: figure.inputs.iter().map(input).collect(),
        formula: figure.formula.clone(),
        source: figure.source.to_owned(),
        notes: figure.notes.iter().map(|note| note.key.to_owned()).collect(),
        says: says(figure, pages),
        details: Details::of(&figure.detail, currency),
    }
}

/// The figure in the reader's words and measures.
fn says(figure: &figures::Figure, pages: &Pages<'_>) -> FigureSays {
    let (words, reader) = pages.words();
    let told = explain(words, reader, figure);
    let lines = match &figure.detail {
        Detail::Projection(projection) => {
            let said = say_projection(words, reader, projection);
            let courses = said.courses.into_iter().map(|(_, text)| text);
            courses.chain(said.unknown).chain(said.helps).collect()
        }
        Detail::None | Detail::Loads(_) | Detail::Bill(_) => Vec::new(),
    };
    FigureSays {
        title: told.title,
        value: told.value,
        formula: told.formula,
        rounding: told.rounding,
        source: told.source,
        caveat: told.caveat,
        caution: told.caution,
        lines,
    }
}

/// Feet and inches are one decimal number of inches.
fn decimal(measure: Measure) -> Measure {
    if measure == Measure::FootInch { Measure::Inch } else { measure }
}

fn symbol(measure: Measure) -> String {
    if measure == Measure::Fraction { String::new() } else { decimal(measure).symbol().to_owned() }
}

fn value(outcome: Option<&figures::Outcome>, value: &Quantity) -> FigureValue {
    FigureValue {
        of: outcome.and_then(|outcome| outcome.of.clone()),
        value: value.amount().to_string(),
        measure: symbol(value.measure()),
        counted: outcome.and_then(|outcome| outcome.counted).map(str::to_owned),
    }
}

fn input(input: &figures::Input) -> FigureInput {
    FigureInput {
        name: input.name.clone(),
        value: input.value.clone(),
        measure: input.quantity.map_or_else(String::new, |q| symbol(q.measure())),
        from: input.from.to_owned(),
    }
}
