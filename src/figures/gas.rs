//! Propane.

use crate::measure::{Measure, Rounding};

use super::work::{Work, plain, quantity};
use super::{Asked, Figure};

/// Source of the heat content.
const HEAT: &str = "published table of LP-gas properties: 21,548 BTU/lb after vaporising";

/// Filling densities by specific gravity at 60 °F: percent of the weight of water the shell holds
/// (29 CFR 1910.110 Table H-27, above ground, up to 1,200 gal).
const FILLING: [(f64, f64); 4] = [(0.496, 41.0), (0.504, 42.0), (0.511, 43.0), (0.520, 44.0)];
/// Specific gravity of commercial propane at 60 °F.
const GRAVITY: f64 = 0.504;

/// Most pounds of gas of a specific gravity that a shell may hold; none outside the rows of the table.
#[must_use]
pub fn most_fill(water_pounds: f64, gravity: f64) -> Option<f64> {
    let (_, percent) = FILLING.iter().rev().find(|(from, _)| gravity >= *from)?;
    (gravity < 0.5275).then_some(water_pounds * percent / 100.0)
}

/// Heat of the propane on board, in BTU: full × level × heat of a pound. Full is the 80 % mark, which the sheet's
/// `full` already means.
fn heat_there(w: &mut Work<'_>) -> Option<f64> {
    w.fitted("propane")?;
    let full = w.take("propane.full", Measure::Pound)?;
    if w.has("propane.water_capacity") {
        let water = w.take("propane.water_capacity", Measure::Pound)?;
        // Cylinders are sold by the whole pound; more than that cannot be a legal filling.
        if most_fill(water, GRAVITY).is_none_or(|most| full > libm::ceil(most)) {
            return w.missing("propane.full");
        }
    }
    let level = w.given.trip.and_then(|t| quantity(t.start.propane));
    let level = w.level("start.propane", level, "assumed.start_propane")?;
    let heat = w.take("assumed.propane_heat", Measure::BtuPerPound)?;
    w.step("there", full * level, Measure::Pound);
    w.step("heat", full * level * heat, Measure::BtuEnergy);
    Some(full * level * heat)
}

/// Whether the coldest night counts as frost; what is not told does not.
pub(super) fn is_cold(w: &mut Work<'_>) -> Option<bool> {
    let Some(coldest) = w.given.trip.and_then(|t| quantity(t.coldest)) else {
        w.note("no-frost-told");
        return Some(false);
    };
    let coldest = w.asked("coldest", Some(coldest), Measure::Fahrenheit)?;
    let cold = w.take("assumed.cold_at", Measure::Fahrenheit)?;
    Some(coldest <= cold + 1e-9)
}

/// Part of the night that the furnace burns.
fn heat_duty(w: &mut Work<'_>) -> Option<f64> {
    let name = if is_cold(w)? { "assumed.heat_duty_cold" } else { "assumed.heat_duty" };
    w.take(name, Measure::Fraction)
}

/// Hours of the furnace alone: with the flame on all the time, and as long as it usually burns (handbook FIG-07),
/// down to a tenth; for cylinders also the hours of one.
pub(super) fn propane_hours(asked: Asked<'_>) -> Figure {
    Work::run(asked, "propane_hours", Rounding::Down, HEAT, |w| {
        w.fitted("propane")?;
        w.fitted("furnace")?;
        let heat = heat_there(w)?;
        let burn = w.take("furnace.input", Measure::BtuPerHour)?;
        let duty = heat_duty(w)?;
        if burn <= 0.0 || duty <= 0.0 {
            return w.missing("furnace.input");
        }
        let all = heat / burn;
        w.say(|| format!("{} BTU ÷ {} BTU/h", plain(heat), plain(burn)));
        w.put_of("flame-on", all, Measure::Hour, 1)?;
        w.say(|| format!("{} h ÷ {}", plain(all), plain(duty)));
        w.put_of("as-usual", all / duty, Measure::Hour, 1)?;
        if w.has("propane.cylinders") {
            let count = w.take("propane.cylinders", Measure::Fraction)?;
            if count < 1.0 {
                return w.missing("propane.cylinders");
            }
            w.say(|| format!("{} h ÷ {} cylinders", plain(all), plain(count)));
            w.put_of("each-cylinder", all / count, Measure::Hour, 1)?;
        }
        Some(())
    })
}

/// Propane burned in a day, in BTU, by what burns it.
pub(super) struct DailyGas {
    /// Furnace and cooking: always gas.
    pub(super) always: f64,
    /// Water heater.
    pub(super) water: f64,
    /// Refrigerator, when it runs on gas.
    pub(super) fridge: f64,
}

impl DailyGas {
    /// All of it.
    pub(super) fn sum(&self) -> f64 {
        self.always + self.water + self.fridge
    }
}

/// What the unit's equipment burns in a day with heating.
pub(super) fn daily_gas(w: &mut Work<'_>) -> Option<DailyGas> {
    let furnace = if w.has("furnace") {
        let input = w.take("furnace.input", Measure::BtuPerHour)?;
        let hours = w.take("assumed.heat_time", Measure::Hour)?;
        input * hours * heat_duty(w)?
    } else {
        0.0
    };
    let fridge =
        if w.has("fridge.propane") { w.take("fridge.propane", Measure::BtuPerHour)? * 24.0 } else { 0.0 };
    let water = if w.has("water_heater.propane") {
        let burn = w.take("water_heater.propane", Measure::BtuPerHour)?;
        let tank = w.word("water_heater.kind")? == "tank";
        let name = if tank { "assumed.heater_tank_time" } else { "assumed.heater_flow_time" };
        burn * w.take(name, Measure::Hour)?
    } else {
        0.0
    };
    let cooking = if w.has("cook") && w.word("cook.kind")? == "propane" {
        w.take("assumed.cooking", Measure::BtuEnergy)?
    } else {
        0.0
    };
    for (name, part) in
        [("furnace", furnace), ("fridge", fridge), ("water_heater", water), ("cooking", cooking)]
    {
        w.step(name, part, Measure::BtuEnergy);
    }
    Some(DailyGas { always: furnace + cooking, water, fridge })
}

/// Days of propane with heating: heat on board ÷ (furnace + refrigerator + water + cooking), down to a tenth
/// (handbook FIG-07).
pub(super) fn propane_days(asked: Asked<'_>) -> Figure {
    Work::run(asked, "propane_days", Rounding::Down, HEAT, |w| {
        let heat = heat_there(w)?;
        let gas = daily_gas(w)?;
        if gas.sum() <= 0.0 {
            return w.not_fitted();
        }
        w.say(|| {
            format!(
                "{} BTU ÷ ({} + {} + {}) BTU a day",
                plain(heat),
                plain(gas.always),
                plain(gas.water),
                plain(gas.fridge)
            )
        });
        w.step("daily", gas.sum(), Measure::BtuEnergy);
        w.put(heat / gas.sum(), Measure::Day, 1)
    })
}
