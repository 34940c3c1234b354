//! The trip of a walk: what was planned, with party, booking and readings as they stand.

use super::Walk;
use super::state::{ReadingState, Timed};
use crate::figures::{Person, Start, Trip};
use crate::measure::{Measure, Ratio, Voltage};

impl Walk {
    /// The trip as planned last; none when nobody has planned it.
    #[must_use]
    pub fn planned(&self) -> Option<&Timed<Trip>> {
        self.planned.as_ref()
    }

    /// The trip that figures are computed from: the plan, with the people of the party, nights and day of leaving
    /// of the booking, and levels and volts as read from the gauges. None until party and booking are known.
    ///
    /// A weight that the plan gives somebody is kept while the party has as many people as the plan.
    #[must_use]
    pub fn trip(&self) -> Option<Trip> {
        let booking = &self.booking.as_ref()?.value;
        let party = self.people();
        if party.is_empty() {
            return None;
        }
        let mut trip = self.planned.as_ref().map(|p| p.value.clone()).unwrap_or_default();
        let weights = std::mem::take(&mut trip.people);
        let weight =
            |at: usize| weights.get(at).filter(|_| weights.len() == party.len()).and_then(|p| p.weight);
        trip.people =
            party.iter().enumerate().map(|(at, p)| Person { age: p.age, weight: weight(at) }).collect();
        trip.nights = booking.nights;
        let began = &self.began;
        let minutes = jiff::SignedDuration::from_mins(i64::from(began.offset_minutes));
        let local = began.at.checked_add(minutes).unwrap_or(began.at);
        trip.leaves = Some(jiff::tz::Offset::UTC.to_datetime(local).date().to_string());
        let read = |reading: &str| self.part_read(reading);
        let start = trip.start;
        trip.start = Start {
            fresh: read("fresh").or(start.fresh),
            grey: self.fullest(&["grey", "grey-galley"]).or(start.grey),
            black: read("black").or(start.black),
            propane: read("propane-tank").or_else(|| self.full_cylinders()).or(start.propane),
            fuel: read("fuel").or(start.fuel),
        };
        trip.house_volts = self.volts_read("house-volts").or(trip.house_volts);
        trip.house_charge = self.share_read("house-charge").or(trip.house_charge);
        Some(trip)
    }

    /// A reading in volts.
    fn volts_read(&self, reading: &str) -> Option<Voltage> {
        match &self.reading(reading)?.value {
            ReadingState::Taken { value, measure } => format!("{value} {measure}").parse().ok(),
            ReadingState::NotTaken { .. } => None,
        }
    }

    /// A reading in percent.
    fn share_read(&self, reading: &str) -> Option<Ratio> {
        match &self.reading(reading)?.value {
            ReadingState::Taken { value, measure } if measure == "%" => format!("{value} %").parse().ok(),
            _ => None,
        }
    }

    /// The highest of several gauges: the tank that is full first ends the use of both.
    fn fullest(&self, readings: &[&str]) -> Option<Ratio> {
        let number = |part: &Ratio| part.quantity().to(Measure::Fraction).unwrap_or(1.0);
        let all = readings.iter().filter_map(|reading| self.part_read(reading));
        all.max_by(|a, b| number(a).total_cmp(&number(b)))
    }

    /// The part of the cylinders that are full, once each has been read. One that is part full counts as empty:
    /// nobody can tell how much is in it.
    fn full_cylinders(&self) -> Option<Ratio> {
        let steps = self.route.steps.iter().flat_map(|step| &step.readings);
        let cylinders: Vec<&str> =
            steps.map(|r| r.id.as_str()).filter(|id| id.starts_with("cylinder-")).collect();
        let mut full = 0;
        for cylinder in &cylinders {
            match &self.reading(cylinder)?.value {
                ReadingState::Taken { value, .. } => full += usize::from(value == "full"),
                ReadingState::NotTaken { .. } => return None,
            }
        }
        let part = format!("{full}/{}", cylinders.len());
        if cylinders.is_empty() { None } else { part.parse().ok() }
    }

    /// A reading of a gauge in parts of full.
    fn part_read(&self, reading: &str) -> Option<Ratio> {
        match &self.reading(reading)?.value {
            ReadingState::Taken { value, measure } if measure.is_empty() => value.parse().ok(),
            _ => None,
        }
    }
}
