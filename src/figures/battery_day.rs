//! The house battery by day and night: sun, 120 V jobs, days off grid.

use crate::measure::{Measure, Rounding, rounded};

use super::battery::{budget, night_need, usable};
use super::gas::is_cold;
use super::heat::electric_heat;
use super::work::{Work, plain, quantity};
use super::{Asked, COMMON_PRACTICE, Figure, Outcome};

/// Amp-hours of a sunny day: panels × sun × part ÷ volts, before rounding.
pub(super) fn sun(w: &mut Work<'_>) -> Option<f64> {
    w.fitted("solar")?;
    let watts = w.take("solar.power", Measure::Watt)?;
    let hours = w.given.trip.and_then(|t| quantity(t.sun));
    let hours = w.asked_or("sun", hours, "assumed.sun", Measure::Hour)?;
    let part = w.take("assumed.solar_part", Measure::Fraction)?;
    let volts = volts(w)?;
    w.step("full_sun", hours, Measure::Hour);
    w.say(|| {
        let (s, h, p, v) = (plain(watts), plain(hours), plain(part), plain(volts));
        format!("{s} W × {h} h × {p} ÷ {v} V")
    });
    Some(watts * hours * part / volts)
}

fn volts(w: &mut Work<'_>) -> Option<f64> {
    let volts = w.take("assumed.battery_volts", Measure::Volt)?;
    if volts > 0.0 { Some(volts) } else { w.missing("assumed.battery_volts") }
}

/// Amp-hours that the panels give in a day, down to the amp-hour (handbook FIG-17).
pub(super) fn solar_ah(asked: Asked<'_>) -> Figure {
    Work::run(asked, "solar_ah", Rounding::Down, COMMON_PRACTICE, |w| {
        let sun = sun(w)?;
        w.put(sun, Measure::AmpereHour, 0)
    })
}

/// A whole number in a direction, as a figure shows it.
pub(super) fn shown(value: f64, places: u32, rounding: Rounding) -> Option<f64> {
    rounded(value, places, rounding).map(crate::measure::decimal_to_f64)
}

/// What a day's 120 V jobs take from the battery, in amp-hours up to a tenth each: cooking on an induction zone
/// and one heating of a tank that has no gas.
pub(super) fn jobs(w: &mut Work<'_>) -> Option<Vec<(&'static str, f64)>> {
    w.fitted("inverter")?;
    let part = w.take("inverter.efficiency", Measure::Fraction)?;
    let volts = volts(w)?;
    if part <= 0.0 || part > 1.0 {
        return w.missing("inverter.efficiency");
    }
    let mut all = Vec::new();
    if w.has("cook") && w.word("cook.kind")? == "induction" {
        let zone = w.given.facts.lists().loads.iter().find(|l| l.id.value == "induction");
        let Some(zone) = zone else {
            let name = if w.given.facts.is_not_known("loads") { "loads" } else { "loads.induction" };
            return w.missing(name);
        };
        let draw = *zone.draw.quantity();
        w.input("loads.induction", draw, "sheet");
        let hours = w.take("assumed.cooking_time", Measure::Hour)?;
        let watts = draw.to(Measure::Watt)?;
        w.say(|| format!("{} W × {} h ÷ {} ÷ {} V", plain(watts), plain(hours), plain(part), plain(volts)));
        all.push(("cooking", watts * hours));
    }
    if w.has("water_heater.electric") && !w.has("water_heater.propane") && w.has("water_heater.tank") {
        let energy = electric_heat(w)?;
        w.say(|| format!("{} Wh ÷ {} ÷ {} V", plain(energy), plain(part), plain(volts)));
        all.push(("hot-water", energy));
    }
    all.into_iter().map(|(of, energy)| Some((of, shown(energy / part / volts, 1, Rounding::Up)?))).collect()
}

/// What 120 V jobs take from the battery: W × h ÷ efficiency ÷ volts, up to a tenth of an amp-hour
/// (handbook FIG-26).
pub(super) fn battery_cost(asked: Asked<'_>) -> Figure {
    Work::run(asked, "battery_cost", Rounding::Up, "energy over voltage and efficiency", |w| {
        let jobs = jobs(w)?;
        if jobs.is_empty() {
            return w.not_fitted();
        }
        for (of, cost) in jobs {
            w.tell_of(of, Some(of), &[]);
            w.put_of(of, cost, Measure::AmpereHour, 1)?;
        }
        Some(())
    })
}

/// A day off grid, in amp-hours.
pub(super) struct Day {
    /// What may be used of the battery.
    pub(super) there: f64,
    /// What night, day and jobs take.
    pub(super) need: f64,
    /// What sun, driving and generator give.
    pub(super) gain: f64,
}

/// Works out a day off grid. Without the sheet's day loads the day counts as nothing, which is said.
pub(super) fn off_grid(w: &mut Work<'_>) -> Option<Day> {
    let cold = is_cold(w)?;
    let night = night_need(w, cold)?;
    let there = usable(w, cold, night)?;
    let day = match &w.given.facts.lists().day {
        Some(loads) => budget(w, "day", loads, cold)?,
        None => {
            w.note("day-not-counted");
            0.0
        }
    };
    w.step("day", day, Measure::AmpereHour);
    let jobs: f64 = if w.has("inverter") { jobs(w)?.iter().map(|(_, cost)| cost).sum() } else { 0.0 };
    w.step("jobs", jobs, Measure::AmpereHour);
    let solar = if w.has("solar") { shown(sun(w)?, 0, Rounding::Down)? } else { 0.0 };
    w.step("solar", solar, Measure::AmpereHour);
    let driving = match w.given.trip.and_then(|t| quantity(t.driving)) {
        Some(hours) if w.has("engine_charger") => {
            let hours = w.asked("driving", Some(hours), Measure::Hour)?;
            hours * w.take("engine_charger.current", Measure::Ampere)?
        }
        _ => 0.0,
    };
    w.step("driving", driving, Measure::AmpereHour);
    let generator = match w.given.trip.and_then(|t| quantity(t.generator_run)) {
        Some(hours) if w.has("generator") && w.has("charger") => {
            let hours = w.asked("generator_run", Some(hours), Measure::Hour)?;
            hours * charge_current(w)?
        }
        _ => 0.0,
    };
    w.step("generator", generator, Measure::AmpereHour);
    Some(Day { there, need: night + day + jobs, gain: solar + driving + generator })
}

/// Amperes that the 120 V charger puts into the battery.
pub(super) fn charge_current(w: &mut Work<'_>) -> Option<f64> {
    let watts = w.take("charger.bulk", Measure::Watt)?;
    let part = w.take("assumed.charger_part", Measure::Fraction)?;
    Some(watts * part / volts(w)?)
}

/// Days off grid: usable amp-hours ÷ what a day takes more than it gives, down to a tenth (handbook E.3). Only for
/// units whose sheet says what runs by day.
pub(super) fn battery_days(asked: Asked<'_>) -> Figure {
    Work::run(asked, "battery_days", Rounding::Down, "amp-hours there over amp-hours short", |w| {
        if w.given.facts.lists().day.is_none() {
            return w.missing("day");
        }
        let day = off_grid(w)?;
        let short = day.need - day.gain;
        w.figure.formula.clear();
        w.figure.sentences.clear();
        w.tell("formula", &[]);
        w.say(|| format!("{} Ah ÷ ({} − {}) Ah", plain(day.there), plain(day.need), plain(day.gain)));
        w.step("need", day.need, Measure::AmpereHour);
        w.step("gain", day.gain, Measure::AmpereHour);
        w.step("short", short.max(0.0), Measure::AmpereHour);
        if short <= 0.0 {
            // It never runs out: no number of days would be true.
            w.figure.verdict = Some("lasts");
            w.figure.sentences.clear();
            w.tell("keeps-up", &[]);
            w.note("keeps-up");
            return Some(());
        }
        w.put_outcome(Outcome {
            of: None,
            exact: day.there / short,
            measure: Measure::Day,
            places: 1,
            rounding: Rounding::Down,
            counted: None,
        })
    })
}
