//! The generator: how long, how much, and its altitude dial.

use crate::measure::{Measure, Quantity, Ratio, Rounding, Temperature, decimal_to_f64, rounded};
use crate::unit::{Between, Derate, DerateRow, HeatLoss};

use super::work::{Work, plain, quantity};
use super::{Asked, COMMON_PRACTICE, Figure, Note, Step};

/// Hours of generator: tank × (level − pick-up) ÷ burn, at half and full load, down to a tenth, never below zero
/// (handbook FIG-08; the pick-up leaves the last quarter to the engine, common practice).
pub(super) fn generator_hours(asked: Asked<'_>) -> Figure {
    Work::run(asked, "generator_hours", Rounding::Down, COMMON_PRACTICE, |w| {
        w.fitted("generator")?;
        let pickup = w.take("generator.pickup", Measure::Fraction)?;
        let half = w.take("generator.burn_half", Measure::GallonUsPerHour)?;
        let full = w.take("generator.burn_full", Measure::GallonUsPerHour)?;
        let tank = w.take("engine.tank", Measure::GallonUs)?;
        let level = fuel_level(w)?;
        let usable = tank * (level - pickup).max(0.0);
        w.step("there", usable, Measure::GallonUs);
        if usable <= 0.0 {
            w.note("below-pickup");
        }
        for (of, burn, name) in
            [("half-load", half, "generator.burn_half"), ("full-load", full, "generator.burn_full")]
        {
            if burn <= 0.0 {
                return w.missing(name);
            }
            w.say(|| {
                let (t, l, p) = (plain(tank), plain(level), plain(pickup));
                format!("{t} US gal × ({l} − {p}) ÷ {} US gal/h", plain(burn))
            });
            w.put_of(of, usable / burn, Measure::Hour, 1)?;
        }
        Some(())
    })
}

/// Part of the fuel tank that is full at the start.
pub(super) fn fuel_level(w: &mut Work<'_>) -> Option<f64> {
    let level = w.given.trip.and_then(|t| quantity(t.start.fuel));
    let level = w.asked("start.fuel", level, Measure::Fraction)?;
    w.step("level", level * 100.0, Measure::Percent);
    if (0.0..=1.0).contains(&level) { Some(level) } else { w.missing("trip.start.fuel") }
}

/// Power the generator gives at a height: rated × the part its own manual leaves, down to the watt
/// (handbook FIG-09).
pub(super) fn generator_watts(asked: Asked<'_>) -> Figure {
    Work::run(asked, "generator_watts", Rounding::Down, "the rule of this generator's own manual", |w| {
        let watts = watts_there(w)?;
        w.put(watts, Measure::Watt, 0)?;
        let mains = w.take("limit.mains", Measure::Volt)?;
        if mains <= 0.0 {
            return w.missing("limit.mains");
        }
        let amperes = decimal_to_f64(rounded(watts / mains, 1, Rounding::Down)?);
        let current = Step { name: "current", exact: amperes, measure: Measure::Ampere };
        w.figure.notes.push(Note { key: "current", with: vec![current] });
        Some(())
    })
}

/// Watts of the generator at the highest place of the trip, else on the lot.
pub(super) fn watts_there(w: &mut Work<'_>) -> Option<f64> {
    w.fitted("generator")?;
    let rated = w.take("generator.rated", Measure::Watt)?;
    let part = part_there(w)?;
    w.say(|| format!("{} W × {}", plain(rated), plain(part)));
    w.step("part", part * 100.0, Measure::Percent);
    Some(rated * part)
}

/// Part of its power that the generator keeps there.
pub(super) fn part_there(w: &mut Work<'_>) -> Option<f64> {
    let highest = w.given.trip.and_then(|t| quantity(t.highest));
    let height = w.asked_or("highest", highest, "site.elevation", Measure::Meter)?;
    let Some(rule) = w.given.facts.lists().derate.as_ref() else { return w.missing("generator.derate") };
    w.input_text("generator.derate", || rule.to_string(), "sheet");
    w.step("height", Measure::Meter.convert(height, Measure::Foot)?, Measure::Foot);
    let part = match rule {
        Derate::Linear { above, loss, per, heat } => {
            let steps = steps(height, above.quantity(), per.quantity());
            lost(loss.quantity(), steps).zip(heat_part(w, heat.as_ref())).map(|(a, b)| a * b)
        }
        Derate::Step { above, loss, per, heat } => {
            let steps = steps(height, above.quantity(), per.quantity()).map(|n| libm::floor(n + 1e-9));
            lost(loss.quantity(), steps).zip(heat_part(w, heat.as_ref())).map(|(a, b)| a * b)
        }
        Derate::Table { rows, between, heat } => {
            in_table(height, rows, *between).zip(heat_part(w, heat.as_ref())).map(|(a, b)| a * b)
        }
        Derate::Grid { heights, temperatures, parts, humid } => {
            let hottest = w.given.trip.and_then(|t| quantity(t.hottest));
            let hottest = w.asked("hottest", hottest, Measure::Celsius)?;
            let heights: Vec<f64> = heights.iter().filter_map(|h| h.quantity().to(Measure::Meter)).collect();
            let warm: Vec<f64> =
                temperatures.iter().filter_map(|t| t.quantity().to(Measure::Celsius)).collect();
            let parts: Vec<Vec<f64>> = parts
                .iter()
                .map(|row| row.iter().map(|p| p.quantity().number().to_f64()).collect())
                .collect();
            let damp = w.given.trip.and_then(|t| quantity(t.humid)).and_then(|q| q.to(Measure::Percent));
            in_grid(height, hottest, (&heights, &warm, &parts)).map(|p| p - humid_loss(damp, humid))
        }
    };
    match part {
        Some(part) if part.is_finite() => Some(part.clamp(0.0, 1.0)),
        _ => w.missing("generator.derate"),
    }
}

/// How many steps the height lies above the first.
fn steps(height: f64, above: &Quantity, per: &Quantity) -> Option<f64> {
    let (above, per) = (above.to(Measure::Meter)?, per.to(Measure::Meter)?);
    (per > 0.0).then(|| (height - above).max(0.0) / per)
}

fn lost(loss: &Quantity, steps: Option<f64>) -> Option<f64> {
    Some((1.0 - loss.to(Measure::Fraction)? * steps?).max(0.0))
}

/// What is left in the heat. Where the rule knows heat, the trip must say how hot it gets.
fn heat_part(w: &mut Work<'_>, heat: Option<&HeatLoss>) -> Option<f64> {
    let Some(heat) = heat else { return Some(1.0) };
    let hottest = w.given.trip.and_then(|t| quantity(t.hottest));
    let hottest = w.asked("hottest", hottest, Measure::Celsius)?;
    let above = heat.above.quantity().to(Measure::Celsius)?;
    let per = difference(&heat.per)?;
    let loss = heat.loss.quantity().to(Measure::Fraction)?;
    (per > 0.0).then(|| (1.0 - loss * (hottest - above).max(0.0) / per).max(0.0))
}

/// A difference of temperatures in degrees Celsius.
fn difference(step: &Temperature) -> Option<f64> {
    let number = step.quantity().number().to_f64();
    match step.quantity().measure() {
        Measure::Celsius => Some(number),
        Measure::Fahrenheit => Some(number * 5.0 / 9.0),
        _ => None,
    }
}

/// The part of a table. Below the first row nothing is lost; above the last nothing is known.
fn in_table(height: f64, rows: &[DerateRow], between: Between) -> Option<f64> {
    let row = |row: &DerateRow| {
        Some((row.at.quantity().to(Measure::Meter)?, row.part.quantity().to(Measure::Fraction)?))
    };
    let rows: Vec<(f64, f64)> = rows.iter().map(row).collect::<Option<_>>()?;
    let sorted = rows.windows(2).all(|pair| matches!(pair, [a, b] if a.0 < b.0));
    let last = rows.last()?;
    if !sorted || height > last.0 + 1e-6 {
        return None;
    }
    let reached = rows.iter().rev().find(|row| row.0 <= height + 1e-6);
    let Some(reached) = reached else {
        return match between {
            Between::Next => rows.first().map(|row| row.1.min(1.0)),
            _ => Some(1.0),
        };
    };
    let next = rows.iter().find(|row| row.0 > height + 1e-6).unwrap_or(reached);
    Some(match between {
        Between::Reached => reached.1,
        Between::Next if libm::fabs(reached.0 - height) <= 1e-6 => reached.1,
        Between::Next => next.1,
        Between::Straight if next.0 > reached.0 => {
            reached.1 + (next.1 - reached.1) * (height - reached.0) / (next.0 - reached.0)
        }
        Between::Straight => reached.1,
    })
}

/// The lower part where height and heat lie between rows and columns; outside the table nothing is known, except
/// below its first row and column, where the first counts.
fn in_grid(height: f64, heat: f64, (heights, warm, parts): (&[f64], &[f64], &[Vec<f64>])) -> Option<f64> {
    let at = |all: &[f64], value: f64| all.iter().position(|edge| *edge >= value - 1e-6);
    let (row, column) = (at(heights, height)?, at(warm, heat)?);
    let cell = |r: usize, c: usize| parts.get(r).and_then(|row| row.get(c)).copied();
    cell(row, column)
}

/// What humid air takes away; the most of the table where the humidity is not told.
fn humid_loss(damp: Option<f64>, humid: &[(Ratio, Ratio)]) -> f64 {
    let reached = |from: &Ratio| {
        damp.is_none_or(|damp| from.quantity().to(Measure::Percent).is_some_and(|from| damp >= from - 1e-9))
    };
    let all = humid.iter().filter(|(from, _)| reached(from));
    all.map(|(_, loss)| loss.quantity().number().to_f64()).fold(0.0, f64::max)
}

/// Height that each number of an altitude dial stands for.
const FEET_A_NUMBER: f64 = 1000.0;

/// Number of the altitude dial: thousands of feet, to the nearest step, within the dial (handbook B17). It goes
/// back to 0 at sea level (common practice, no source).
pub(super) fn generator_dial(asked: Asked<'_>) -> Figure {
    Work::run(asked, "generator_dial", Rounding::Nearest, COMMON_PRACTICE, |w| {
        w.fitted("generator")?;
        let top = w.take("generator.dial_top", Measure::Fraction)?;
        let highest = w.given.trip.and_then(|t| quantity(t.highest));
        let height = w.asked_or("highest", highest, "site.elevation", Measure::Foot)?;
        w.say(|| format!("{} ft ÷ {FEET_A_NUMBER}, not above {}", plain(height), plain(top)));
        w.step("height", height, Measure::Foot);
        w.step("each", FEET_A_NUMBER, Measure::Foot);
        w.put((height / FEET_A_NUMBER).clamp(0.0, top), Measure::Fraction, 0)
    })
}
