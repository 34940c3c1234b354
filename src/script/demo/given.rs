//! What a question takes as given: an example day, written with its measures.

use serde::Deserialize;

use crate::figures::{On, Sign, SupplyAt, Trip, Wind};
use crate::measure::{Current, Length, Quantity, Ratio, Speed};
use crate::source::At;

use super::{Carried, Said};

/// An example day. Each value is a variable of the words beside it, under its own name.
#[derive(Debug, Clone, PartialEq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Given {
    /// Height of a place, as `$highest`.
    #[serde(default, alias = "highest?")]
    pub highest: Option<Length>,
    /// Fuel gauge, as `$fuel`.
    #[serde(default, alias = "fuel?")]
    pub fuel: Option<Ratio>,
    /// Steady wind, as `$wind`.
    #[serde(default, alias = "wind?")]
    pub wind: Option<Speed>,
    /// Gusts, as `$gust`.
    #[serde(default, alias = "gust?")]
    pub gust: Option<Speed>,
    /// Whether somebody watches the awning.
    #[serde(default, alias = "watched?")]
    pub watched: Option<bool>,
    /// A sign over the road, as `$sign`; it is said as it is written.
    #[serde(default, alias = "sign?")]
    pub sign: Option<Length>,
    /// Whether there is no sign over the road.
    #[serde(default, alias = "no_sign?")]
    pub no_sign: bool,
    /// A grade, as `$grade`.
    #[serde(default, alias = "grade?")]
    pub grade: Option<Ratio>,
    /// Length of a grade, as `$way`.
    #[serde(default, alias = "way?")]
    pub way: Option<Length>,
    /// A post or outlet, as `$post`.
    #[serde(default, alias = "post?")]
    pub post: Option<Current>,
    /// Whether the inverter is what things run on.
    #[serde(default, alias = "inverter?")]
    pub inverter: bool,
    /// Loads that are on, for the sums that words use: `$sum`, `$long`, `$most`, `$most_long`.
    #[serde(default, alias = "on?")]
    pub on: Vec<At<String>>,
}

impl Given {
    /// The day as figures take it, with these loads on.
    pub(super) fn trip(&self, on: &[String]) -> Trip {
        let mut trip = Trip { highest: self.highest, grade: self.grade, ..Trip::default() };
        trip.start.fuel = self.fuel;
        if self.wind.is_some() || self.gust.is_some() || self.watched.is_some() {
            trip.wind =
                Some(Wind { speed: self.wind, gust: self.gust, watched: self.watched, ..Wind::default() });
        }
        trip.sign = match self.sign {
            Some(sign) => Some(Sign::Says(sign)),
            None => self.no_sign.then_some(Sign::NoSign),
        };
        trip.supply = match self.post {
            Some(post) => Some(SupplyAt::Post(post)),
            None => self.inverter.then_some(SupplyAt::Inverter),
        };
        trip.on = on.iter().map(|load| On { load: load.clone(), settled: false }).collect();
        trip
    }

    /// Its values as variables.
    pub(super) fn values(&self) -> Vec<(String, Carried)> {
        let measured = [
            ("highest", self.highest.map(|q| *q.quantity())),
            ("fuel", self.fuel.map(|q| *q.quantity())),
            ("wind", self.wind.map(|q| *q.quantity())),
            ("gust", self.gust.map(|q| *q.quantity())),
            ("grade", self.grade.map(|q| *q.quantity())),
            ("way", self.way.map(|q| *q.quantity())),
            ("post", self.post.map(|q| *q.quantity())),
        ];
        let carried = |(name, q): (&str, Option<Quantity>)| Some((name.to_owned(), Carried::Measured(q?)));
        let sign = self.sign.map(|q| ("sign".to_owned(), Carried::Written(*q.quantity())));
        measured.into_iter().filter_map(carried).chain(sign).collect()
    }
}

impl Said {
    /// A message with values.
    pub(super) fn new(key: String, with: Vec<(String, Carried)>) -> Self {
        Self { key, with }
    }
}
