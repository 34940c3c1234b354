//! What figures hold beyond numbers, in a form that can be written down and read for years: decimals are text, and
//! everything that is named is named by its word.

use serde::{Deserialize, Serialize};

use crate::measure::{Measure, Rounding, rounded};

use super::{Detail, bill, loads, projection};

/// What a figure holds beyond numbers; one of them, or none.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Details {
    /// What runs together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fits: Option<Fit>,
    /// How supplies go, day by day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub projection: Option<Projection>,
    /// A return bill.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bill: Option<Bill>,
}

/// What runs together on a supply.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Fit {
    /// `post`, `generator`, `inverter` or `nothing`.
    pub supply: String,
    /// Loads that were asked about.
    pub on: Vec<String>,
    /// Rules that they break together.
    pub breaks: Vec<Break>,
    /// What to switch off, or run on propane, so that they do not.
    pub remedies: Vec<Remedy>,
    /// Loads that come on by themselves.
    pub always: Vec<String>,
    /// The largest sets that run together beside them.
    pub sets: Vec<Vec<String>>,
}

/// A rule that is broken.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Break {
    /// Which.
    pub rule: String,
    /// What the loads take.
    pub sum: String,
    /// What there is.
    pub limit: String,
    /// Symbol of the measure of both.
    pub measure: String,
}

/// A way out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Remedy {
    /// Loads to switch off.
    pub off: Vec<String>,
    /// Loads to run on propane.
    pub on_propane: Vec<String>,
}

/// How supplies go.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Projection {
    /// Nights of the trip.
    pub nights: u16,
    /// What runs out first; none when all lasts.
    pub first: Option<String>,
    /// Supplies that could be computed.
    pub courses: Vec<Course>,
    /// Supplies that could not.
    pub unknown: Vec<Unknown>,
    /// What makes something last longer.
    pub helps: Vec<Help>,
}

/// How one supply goes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Course {
    /// Which.
    pub resource: String,
    /// The whole, in `measure`.
    pub whole: String,
    /// Symbol of the measure.
    pub measure: String,
    /// Days since the handoff after which it runs out; none when it lasts.
    pub ends: Option<String>,
}

/// A supply that could not be computed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Unknown {
    /// Which.
    pub resource: String,
    /// The fact that was missing.
    pub missing: String,
}

/// Something that helps.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Help {
    /// What is done.
    pub action: String,
    /// On which day, from 1, if it has one.
    pub day: Option<u16>,
    /// How many hours a day, if it has any.
    pub hours: Option<u8>,
    /// What lasts longer.
    pub resource: String,
    /// Days it lasts without.
    pub before: String,
    /// Days it lasts with it; none when it then lasts the whole trip.
    pub after: Option<String>,
}

/// A return bill, in the currency named.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bill {
    /// Its lines.
    pub lines: Vec<Line>,
    /// Sum of the taxed lines.
    pub taxed: String,
    /// Tax.
    pub tax: String,
    /// All together.
    pub total: String,
    /// Deposit held, where it is known.
    pub deposit: Option<String>,
    /// What goes back to the renter; below zero the renter owes it.
    pub back: Option<String>,
    /// ISO 4217 code.
    pub currency: String,
}

/// A line of the bill.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// What it is for.
    pub id: String,
    /// How many.
    pub count: String,
    /// Price of each.
    pub price: String,
    /// The sum, rounded.
    pub amount: String,
    /// Whether it is taxed.
    pub taxed: bool,
}

impl Details {
    /// What a figure holds, written down; sums are in `currency`.
    #[must_use]
    pub fn of(detail: &Detail, currency: &str) -> Self {
        match detail {
            Detail::None => Self::default(),
            Detail::Loads(found) => Self { fits: Some(fit(found)), ..Self::default() },
            Detail::Projection(found) => Self { projection: Some(projection(found)), ..Self::default() },
            Detail::Bill(found) => Self { bill: Some(bill(found, currency)), ..Self::default() },
        }
    }
}

/// A computed number as text; none where it is no number.
fn decimal(value: f64, places: u32, rounding: Rounding) -> String {
    rounded(value, places, rounding).map_or_else(String::new, |number| number.to_string())
}

/// Days, down to the tenth: nothing is said to last longer than it does.
fn days(value: f64) -> String {
    decimal(value, 1, Rounding::Down)
}

fn fit(fit: &loads::Fit) -> Fit {
    let watts = |value: f64| decimal(value, 0, Rounding::Nearest);
    let breaks = fit.breaks.iter().map(|broken| Break {
        rule: broken.rule.word().to_owned(),
        sum: watts(broken.sum),
        limit: watts(broken.limit),
        measure: Measure::Watt.symbol().to_owned(),
    });
    let remedies = fit.remedies.iter();
    Fit {
        supply: fit.supply.to_owned(),
        on: fit.on.clone(),
        breaks: breaks.collect(),
        remedies: remedies.map(|r| Remedy { off: r.off.clone(), on_propane: r.on_propane.clone() }).collect(),
        always: fit.always.clone(),
        sets: fit.sets.clone(),
    }
}

fn projection(projection: &projection::Projection) -> Projection {
    let courses = projection.courses.iter().map(|course| Course {
        resource: course.resource.word().to_owned(),
        whole: decimal(course.whole, 1, Rounding::Nearest),
        measure: course.measure.symbol().to_owned(),
        ends: course.ends.map(days),
    });
    let unknown = projection.unknown.iter();
    let helps = projection.helps.iter().map(|help| Help {
        action: help.action.word().to_owned(),
        day: help.action.day(),
        hours: help.action.hours(),
        resource: help.resource.word().to_owned(),
        before: days(help.before),
        after: help.after.map(days),
    });
    Projection {
        nights: projection.nights,
        first: projection.first().map(|(resource, _)| resource.word().to_owned()),
        courses: courses.collect(),
        unknown: unknown
            .map(|(resource, missing)| Unknown {
                resource: resource.word().to_owned(),
                missing: missing.clone(),
            })
            .collect(),
        helps: helps.collect(),
    }
}

fn bill(bill: &bill::Bill, currency: &str) -> Bill {
    let lines = bill.lines.iter().map(|line| Line {
        id: line.id.clone(),
        count: line.count.normalize().to_string(),
        price: line.price.to_string(),
        amount: line.amount.to_string(),
        taxed: line.taxed,
    });
    Bill {
        lines: lines.collect(),
        taxed: bill.taxed.to_string(),
        tax: bill.tax.to_string(),
        total: bill.total.to_string(),
        deposit: bill.deposit.map(|sum| sum.to_string()),
        back: bill.back.map(|sum| sum.to_string()),
        currency: currency.to_owned(),
    }
}
