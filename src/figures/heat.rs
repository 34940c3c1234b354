//! Hot water.

use crate::measure::{Measure, Rounding};

use super::work::{Work, plain, quantity};
use super::{Asked, COMMON_PRACTICE, Figure};

/// BTU an hour for a degree Fahrenheit and a gallon a minute: 60 minutes of 8.34 lb, as the trade rounds it.
const PER_GALLON_A_MINUTE: f64 = 500.0;

/// Heat a full tank needs, in BTU.
fn tank_heat(w: &mut Work<'_>) -> Option<f64> {
    let tank = w.take("water_heater.tank", Measure::GallonUs)?;
    let density = w.take("assumed.water", Measure::PoundPerGallonUs)?;
    let set = w.take("water_heater.set", Measure::Fahrenheit)?;
    let inlet = inlet(w)?;
    let heat = tank * density * (set - inlet).max(0.0);
    w.step("cold", inlet, Measure::Fahrenheit);
    w.step("heat", heat, Measure::BtuEnergy);
    Some(heat)
}

fn inlet(w: &mut Work<'_>) -> Option<f64> {
    let inlet = w.given.trip.and_then(|t| quantity(t.inlet));
    w.asked_or("inlet", inlet, "assumed.inlet", Measure::Fahrenheit)
}

/// Energy in watt-hours that one electric heating of the tank takes.
pub(super) fn electric_heat(w: &mut Work<'_>) -> Option<f64> {
    let heat = tank_heat(w)?;
    Measure::BtuEnergy.convert(heat, Measure::WattHour)
}

/// Minutes to heat the tank, up to the minute, by each way it can be heated (handbook FIG-18): water × rise ÷ heat
/// an hour; propane gives the part that the lot assumes, electricity all of it.
pub(super) fn heat_up_minutes(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "heat_up_minutes",
        Rounding::Up,
        "heat = weight × rise (a BTU heats 1 lb by 1 °F)",
        |w| {
            w.fitted("water_heater")?;
            w.fitted("water_heater.tank")?;
            let heat = tank_heat(w)?;
            let mut power = Vec::new();
            if w.has("water_heater.propane") {
                let gas = w.take("water_heater.propane", Measure::BtuPerHour)?;
                let part = w.take("assumed.heater_tank_part", Measure::Fraction)?;
                power.push(("propane", gas * part));
            }
            if w.has("water_heater.electric") {
                let watts = w.take("water_heater.electric", Measure::Watt)?;
                power.push(("electric", Measure::Watt.convert(watts, Measure::BtuPerHour)?));
            }
            if let [(_, gas), (_, electric)] = power.as_slice() {
                power.push(("both", gas + electric));
            }
            if power.is_empty() || power.iter().any(|(_, power)| *power <= 0.0) {
                return w.missing("water_heater.propane");
            }
            for (of, power) in power {
                w.say(|| format!("{} BTU ÷ {} BTU/h × 60", plain(heat), plain(power)));
                w.put_of(of, heat / power * 60.0, Measure::Minute, 0)?;
            }
            Some(())
        },
    )
}

/// Temperature of the water from an on-demand heater, down to the degree, not above what it is set to
/// (handbook FIG-19). Below its least flow it does not light, and the water stays as cold as it came.
pub(super) fn outlet_temperature(asked: Asked<'_>) -> Figure {
    Work::run(asked, "outlet_temperature", Rounding::Down, COMMON_PRACTICE, |w| {
        w.fitted("water_heater")?;
        if w.word("water_heater.kind")? != "on-demand" {
            return w.not_fitted();
        }
        let gas = w.take("water_heater.propane", Measure::BtuPerHour)?;
        let part = w.take("assumed.heater_flow_part", Measure::Fraction)?;
        let set = w.take("water_heater.set", Measure::Fahrenheit)?;
        let flow = w.given.trip.and_then(|t| quantity(t.shower));
        let flow = w.asked_or("shower", flow, "assumed.shower_flow", Measure::GallonUsPerMinute)?;
        let inlet = inlet(w)?;
        if flow <= 0.0 {
            return w.missing("trip.shower");
        }
        if w.has("water_heater.least_flow") {
            let least = w.take("water_heater.least_flow", Measure::GallonUsPerMinute)?;
            if flow < least {
                w.note("does-not-light");
                w.tell(
                    "stays-cold",
                    &[("flow", flow, Measure::GallonUsPerMinute), ("cold", inlet, Measure::Fahrenheit)],
                );
                w.say(|| {
                    format!("{} °F: {} US gal/min is below {}", plain(inlet), plain(flow), plain(least))
                });
                return w.put(inlet, Measure::Fahrenheit, 0);
            }
        }
        let rise = gas * part / (PER_GALLON_A_MINUTE * flow);
        w.say(|| {
            let (i, g, p, f) = (plain(inlet), plain(gas), plain(part), plain(flow));
            format!("{i} °F + {g} × {p} ÷ ({PER_GALLON_A_MINUTE} × {f}) °F, not above {} °F", plain(set))
        });
        w.tell(
            "formula",
            &[
                ("flow", flow, Measure::GallonUsPerMinute),
                ("cold", inlet, Measure::Fahrenheit),
                ("outlet", inlet + rise, Measure::Fahrenheit),
            ],
        );
        // A heater never cools: water that comes in warmer than it is set to passes as it is.
        w.put((inlet + rise).min(set.max(inlet)), Measure::Fahrenheit, 0)
    })
}
