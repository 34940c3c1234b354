//! What `figures --format json` prints.

use serde::Serialize;

use super::Telling;
use crate::figures::{Detail, Figure, Outcome, State, explain, loads, projection, say_help, say_projection};
use crate::measure::{Measure, Quantity, Rounding};

/// All figures of a unit.
#[derive(Serialize)]
pub(super) struct Printed {
    unit: String,
    trip: Option<String>,
    figures: Vec<PrintedFigure>,
}

/// A value, or several.
#[derive(Serialize)]
#[serde(untagged)]
enum Text {
    One(String),
    Many(Vec<String>),
}

/// A figure. `value` is a decimal string in `measure`, a list of such strings, or the word of a figure that
/// answers yes or no; `parts` says what each number of a list is of.
#[derive(Serialize)]
struct PrintedFigure {
    id: &'static str,
    value: Option<Text>,
    measure: Option<Text>,
    state: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    missing: Option<Missing>,
    #[serde(skip_serializing_if = "Option::is_none")]
    verdict: Option<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    parts: Vec<Part>,
    inputs: Vec<PrintedInput>,
    formula: String,
    working: String,
    rounding: &'static str,
    source: String,
    caveat: String,
    caution: String,
    title: String,
    text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    fits: Option<PrintedFit>,
    #[serde(skip_serializing_if = "Option::is_none")]
    projection: Option<PrintedProjection>,
    #[serde(skip_serializing_if = "Option::is_none")]
    bill: Option<PrintedBill>,
}

#[derive(Serialize)]
struct Missing {
    fact: String,
    place: Option<String>,
}

#[derive(Serialize)]
struct Part {
    of: String,
    value: String,
    measure: String,
    rounding: &'static str,
}

#[derive(Serialize)]
struct PrintedInput {
    name: String,
    value: String,
    measure: String,
    from: &'static str,
}

#[derive(Serialize)]
struct PrintedFit {
    supply: &'static str,
    on: Vec<String>,
    breaks: Vec<PrintedBreak>,
    remedies: Vec<PrintedRemedy>,
    always: Vec<String>,
    sets: Vec<Vec<String>>,
}

#[derive(Serialize)]
struct PrintedBreak {
    rule: &'static str,
    sum: String,
    limit: String,
    measure: &'static str,
    text: String,
}

#[derive(Serialize)]
struct PrintedRemedy {
    off: Vec<String>,
    on_propane: Vec<String>,
    text: String,
}

#[derive(Serialize)]
struct PrintedProjection {
    nights: u16,
    first: Option<&'static str>,
    /// What runs out first, in words.
    text: String,
    courses: Vec<PrintedCourse>,
    unknown: Vec<PrintedUnknown>,
    helps: Vec<PrintedHelp>,
}

#[derive(Serialize)]
struct PrintedCourse {
    resource: &'static str,
    whole: String,
    measure: String,
    ends: Option<String>,
    text: String,
    /// Day and part left, to four decimals.
    points: Vec<(String, String)>,
}

#[derive(Serialize)]
struct PrintedUnknown {
    resource: &'static str,
    missing: String,
    place: Option<String>,
    text: String,
}

#[derive(Serialize)]
struct PrintedHelp {
    action: &'static str,
    day: Option<u16>,
    hours: Option<u8>,
    resource: &'static str,
    before: String,
    after: Option<String>,
    text: String,
}

#[derive(Serialize)]
struct PrintedBill {
    lines: Vec<PrintedLine>,
    taxed: String,
    tax: String,
    total: String,
    deposit: Option<String>,
    back: Option<String>,
    currency: String,
}

#[derive(Serialize)]
struct PrintedLine {
    id: String,
    count: String,
    price: String,
    amount: String,
    taxed: bool,
}

/// A number of a quantity and the symbol of its measure; feet and inches are inches.
fn told(q: &Quantity) -> (String, String) {
    let measure = match q.measure() {
        Measure::FootInch => "in",
        measure => measure.symbol(),
    };
    (q.amount().to_string(), measure.to_owned())
}

fn decimal(value: f64, places: u32, rounding: Rounding) -> String {
    crate::measure::rounded(value, places, rounding).map_or_else(String::new, |n| n.to_string())
}

const fn word(rounding: Rounding) -> &'static str {
    match rounding {
        Rounding::Down => "down",
        Rounding::Up => "up",
        Rounding::Nearest => "nearest",
        Rounding::Exact => "exact",
    }
}

impl Telling<'_> {
    pub(super) fn json(&self, all: &[Figure]) -> Printed {
        Printed {
            unit: self.unit.to_owned(),
            trip: self.trip.map(|file| file.name.to_string()),
            figures: all.iter().map(|figure| self.figure(figure)).collect(),
        }
    }

    fn figure(&self, figure: &Figure) -> PrintedFigure {
        let explained = explain(&self.words, &self.reader, figure);
        let parts: Vec<Part> = figure.outcomes.iter().filter_map(|outcome| self.part(outcome)).collect();
        let (value, measure) = self.value_of(figure, &parts);
        let (fits, projection, bill) = self.details(&figure.detail);
        PrintedFigure {
            id: figure.id,
            value,
            measure,
            state: match figure.state {
                State::Ok => "ok",
                State::Missing(_) => "missing",
                State::NotFitted => "not-fitted",
            },
            missing: match &figure.state {
                State::Missing(fact) => {
                    Some(Missing { fact: fact.clone(), place: self.place(fact).map(|p| p.to_string()) })
                }
                _ => None,
            },
            verdict: figure.verdict,
            parts: if parts.iter().any(|part| !part.of.is_empty()) || figure.verdict.is_some() {
                parts
            } else {
                Vec::new()
            },
            inputs: figure.inputs.iter().map(input).collect(),
            formula: explained.formula,
            working: figure.formula.clone(),
            rounding: word(figure.rounding),
            source: explained.source,
            caveat: explained.caveat,
            caution: explained.caution,
            title: explained.title,
            text: self.value(figure),
            fits,
            projection,
            bill,
        }
    }

    fn part(&self, outcome: &Outcome) -> Option<Part> {
        let (value, measure) = told(&outcome.shown(self.reader.system)?);
        let measure = outcome.counted.map_or(measure, str::to_owned);
        let of = outcome.of.clone().unwrap_or_default();
        Some(Part { of, value, measure, rounding: word(outcome.rounding) })
    }

    fn value_of(&self, figure: &Figure, parts: &[Part]) -> (Option<Text>, Option<Text>) {
        if figure.state != State::Ok {
            return (None, None);
        }
        let answers = matches!(figure.id, "awning_verdict" | "loads_fit");
        if let (true, Some(verdict)) = (answers, figure.verdict) {
            return (Some(Text::One(verdict.to_owned())), Some(Text::One(String::new())));
        }
        if let Detail::Bill(bill) = &figure.detail {
            let currency = self.facts.lists().currency.clone();
            return (Some(Text::One(bill.total.to_string())), Some(Text::One(currency)));
        }
        match parts {
            [] => (figure.verdict.map(|v| Text::One(v.to_owned())), Some(Text::One(String::new()))),
            [one] => (Some(Text::One(one.value.clone())), Some(Text::One(one.measure.clone()))),
            [first, ..] => {
                let values = parts.iter().map(|p| p.value.clone()).collect();
                let same = parts.iter().all(|p| p.measure == first.measure);
                let measure = if same {
                    Text::One(first.measure.clone())
                } else {
                    Text::Many(parts.iter().map(|p| p.measure.clone()).collect())
                };
                (Some(Text::Many(values)), Some(measure))
            }
        }
    }

    fn details(
        &self,
        detail: &Detail,
    ) -> (Option<PrintedFit>, Option<PrintedProjection>, Option<PrintedBill>) {
        match detail {
            Detail::None => (None, None, None),
            Detail::Loads(fit) => (Some(self.printed_fit(fit)), None, None),
            Detail::Projection(projection) => (None, Some(self.printed_projection(projection)), None),
            Detail::Bill(bill) => {
                let line = |l: &crate::figures::bill::Line| PrintedLine {
                    id: l.id.clone(),
                    count: l.count.normalize().to_string(),
                    price: l.price.to_string(),
                    amount: l.amount.to_string(),
                    taxed: l.taxed,
                };
                let printed = PrintedBill {
                    lines: bill.lines.iter().map(line).collect(),
                    taxed: bill.taxed.to_string(),
                    tax: bill.tax.to_string(),
                    total: bill.total.to_string(),
                    deposit: bill.deposit.map(|d| d.to_string()),
                    back: bill.back.map(|d| d.to_string()),
                    currency: self.facts.lists().currency.clone(),
                };
                (None, None, Some(printed))
            }
        }
    }

    fn printed_fit(&self, fit: &loads::Fit) -> PrintedFit {
        let watts = |value: f64| decimal(value, 0, Rounding::Nearest);
        let broken = |b: &loads::Break| PrintedBreak {
            rule: b.rule.word(),
            sum: watts(b.sum),
            limit: watts(b.limit),
            measure: "W",
            text: self.broken(b),
        };
        let remedy = |r: &loads::Remedy| PrintedRemedy {
            off: r.off.clone(),
            on_propane: r.on_propane.clone(),
            text: self.remedy(r),
        };
        PrintedFit {
            supply: fit.supply,
            on: fit.on.clone(),
            breaks: fit.breaks.iter().map(broken).collect(),
            remedies: fit.remedies.iter().map(remedy).collect(),
            always: fit.always.clone(),
            sets: fit.sets.clone(),
        }
    }

    fn printed_projection(&self, projection: &projection::Projection) -> PrintedProjection {
        let said = say_projection(&self.words, &self.reader, projection);
        let course = |(c, (_, text)): (&projection::Course, (projection::Resource, String))| PrintedCourse {
            resource: c.resource.word(),
            whole: decimal(c.whole, 1, Rounding::Nearest),
            measure: c.measure.symbol().to_owned(),
            ends: c.ends.map(|end| decimal(end, 1, Rounding::Down)),
            text,
            points: c
                .points
                .iter()
                .map(|p| (decimal(p.day, 4, Rounding::Nearest), decimal(p.left, 4, Rounding::Nearest)))
                .collect(),
        };
        let help = |h: &crate::figures::Help| PrintedHelp {
            action: h.action.word(),
            day: h.action.day(),
            hours: h.action.hours(),
            resource: h.resource.word(),
            before: decimal(h.before, 1, Rounding::Down),
            after: h.after.map(|end| decimal(end, 1, Rounding::Down)),
            text: say_help(&self.words, &self.reader, projection, h),
        };
        let unknown =
            |((resource, missing), text): (&(projection::Resource, String), String)| PrintedUnknown {
                resource: resource.word(),
                missing: missing.clone(),
                place: self.place(missing).map(|p| p.to_string()),
                text,
            };
        PrintedProjection {
            nights: projection.nights,
            first: projection.first().map(|(resource, _)| resource.word()),
            text: said.first,
            courses: projection.courses.iter().zip(said.courses).map(course).collect(),
            unknown: projection.unknown.iter().zip(said.unknown).map(unknown).collect(),
            helps: projection.helps.iter().map(help).collect(),
        }
    }
}

fn input(input: &crate::figures::Input) -> PrintedInput {
    let (value, measure) = input.quantity.as_ref().map_or_else(|| (input.value.clone(), String::new()), told);
    PrintedInput { name: input.name.clone(), value, measure, from: input.from }
}
