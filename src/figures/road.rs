//! On the road: gap, stopping, range.

use rust_decimal::Decimal;

use crate::measure::{Measure, Rounding, decimal_to_f64, rounded_to_step};

use super::generator::fuel_level;
use super::work::{Work, plain, quantity};
use super::{Asked, COMMON_PRACTICE, Figure, Note, Step};

/// Mile an hour times second, in feet, as the design manual rounds it.
const FEET_PER_MPH_SECOND: f64 = 1.47;
/// Factor of the braking distance in feet, as the design manual rounds it.
const BRAKING_FACTOR: f64 = 1.075;
/// Standard gravity in feet per second squared, as the grade formula uses it.
const GRAVITY: f64 = 32.2;
/// Factor of the grade formula.
const GRADE_FACTOR: f64 = 30.0;

/// Speed of the trip, else the unit's limit, in miles an hour.
fn speed(w: &mut Work<'_>) -> Option<f64> {
    let speed = w.given.trip.and_then(|t| quantity(t.speed));
    w.asked_or("speed", speed, "driving.speed", Measure::Mph)
}

/// Seconds to the car ahead: a second for each ten feet, rounded up, and one more above 40 mph (handbook FIG-12;
/// commercial-driver handbook).
pub(super) fn following_gap(asked: Asked<'_>) -> Figure {
    Work::run(asked, "following_gap", Rounding::Up, "commercial-driver handbook", |w| {
        let tow = w.given.trip.and_then(|t| t.tow);
        let length = if let (true, Some(tow)) =
            (w.has("hitch"), tow.filter(|t| t.length.is_some() && t.ball_mount.is_some()))
        {
            let car = w.asked("tow.length", quantity(tow.length), Measure::Foot)?;
            let mount = w.asked("tow.ball_mount", quantity(tow.ball_mount), Measure::Foot)?;
            car + mount + w.take("size.length", Measure::Foot)?
        } else {
            w.take("driving.follow", Measure::Foot)?
        };
        let per = w.take("assumed.gap_per", Measure::Foot)?;
        let fast = w.take("assumed.gap_fast", Measure::Mph)?;
        let speed = speed(w)?;
        if per <= 0.0 {
            return w.missing("assumed.gap_per");
        }
        let more = if speed > fast + 1e-9 { 1.0 } else { 0.0 };
        w.say(|| format!("{} ft ÷ {} ft, up, + {more} s", plain(length), plain(per)));
        w.step("length", length, Measure::Foot);
        w.step("more", more, Measure::Second);
        w.put(libm::ceil(length / per - 1e-9) + more, Measure::Second, 0)
    })
}

/// Distance to stop, up to the foot: 1.47·V·t + 1.075·V²/a on the level (TxDOT Roadway Design Manual 4.11.1;
/// AASHTO), and V²/(30·(a/32.2 + grade)) for the braking on a grade. Also the value of the design table, which is
/// rounded up to five feet.
pub(super) fn stopping_distance(asked: Asked<'_>) -> Figure {
    Work::run(asked, "stopping_distance", Rounding::Up, "TxDOT Roadway Design Manual 4.11.1; AASHTO", |w| {
        let speed = speed(w)?;
        let reaction = w.take("assumed.reaction", Measure::Second)?;
        let braking = w.take("assumed.braking", Measure::FootPerSecondSquared)?;
        let grade = w.given.trip.and_then(|t| quantity(t.grade));
        let grade = if grade.is_some() { w.asked("grade", grade, Measure::Fraction)? } else { 0.0 };
        if braking <= 0.0 {
            return w.missing("assumed.braking");
        }
        let rolling = FEET_PER_MPH_SECOND * speed * reaction;
        let level = BRAKING_FACTOR * speed * speed / braking;
        let hold = braking / GRAVITY + grade;
        if hold <= 0.0 {
            // Steeper than the brakes can hold.
            return w.missing("trip.grade");
        }
        let sloped = speed * speed / (GRADE_FACTOR * hold);
        let brake = if grade < 0.0 {
            sloped.max(level)
        } else if grade > 0.0 {
            sloped.min(level)
        } else {
            level
        };
        w.say(|| {
            let (v, t) = (plain(speed), plain(reaction));
            format!("{FEET_PER_MPH_SECOND} × {v} × {t} + {} ft of braking", plain(brake))
        });
        w.tell("formula", &[("driven", speed, Measure::Mph)]);
        if grade.abs() > 0.0 {
            w.tell("on-a-grade", &[]);
        }
        w.step("rolling", rolling, Measure::Foot);
        w.step("braking", brake, Measure::Foot);
        let table = rounded_to_step(rolling + brake, Decimal::from(5), Rounding::Up)?;
        let table = Step { name: "table", exact: decimal_to_f64(table), measure: Measure::Foot };
        w.figure.notes.push(Note { key: "design-table", with: vec![table] });
        w.put(rolling + brake, Measure::Foot, 0)
    })
}

/// How far the fuel takes one, down to the mile: tank × (level − reserve) × economy, never below zero
/// (handbook FIG-23).
pub(super) fn fuel_range(asked: Asked<'_>) -> Figure {
    Work::run(asked, "fuel_range", Rounding::Down, COMMON_PRACTICE, |w| {
        w.fitted("engine")?;
        let tank = w.take("engine.tank", Measure::GallonUs)?;
        let reserve = w.take("engine.reserve", Measure::Fraction)?;
        let economy = w.take("engine.economy", Measure::MpgUs)?;
        let level = fuel_level(w)?;
        let usable = (level - reserve).max(0.0);
        if !economy.is_finite() {
            return w.missing("engine.economy");
        }
        w.say(|| {
            format!(
                "{} US gal × ({} − {}) × {} US mpg",
                plain(tank),
                plain(level),
                plain(reserve),
                plain(economy)
            )
        });
        w.step("there", tank * usable, Measure::GallonUs);
        w.put(tank * usable * economy, Measure::Mile, 0)
    })
}

/// Hours of the diesel heater, down to the hour: tank × (level − pick-up) ÷ burn (handbook FIG-24).
pub(super) fn heater_hours(asked: Asked<'_>) -> Figure {
    Work::run(asked, "heater_hours", Rounding::Down, COMMON_PRACTICE, |w| {
        w.fitted("diesel_heater")?;
        let pickup = w.take("diesel_heater.pickup", Measure::Fraction)?;
        let burn = w.take("diesel_heater.burn", Measure::GallonUsPerHour)?;
        let tank = w.take("engine.tank", Measure::GallonUs)?;
        let level = fuel_level(w)?;
        if burn <= 0.0 {
            return w.missing("diesel_heater.burn");
        }
        let usable = tank * (level - pickup).max(0.0);
        w.say(|| {
            format!(
                "{} US gal × ({} − {}) ÷ {} US gal/h",
                plain(tank),
                plain(level),
                plain(pickup),
                plain(burn)
            )
        });
        w.step("there", usable, Measure::GallonUs);
        w.put(usable / burn, Measure::Hour, 0)
    })
}
