//! Tires: where air is added, where they are flat, and what a gauge shows when it is colder or higher.

use crate::measure::{Measure, Rounding};

use super::work::{Work, plain, quantity};
use super::{Asked, COMMON_PRACTICE, Figure};

/// Sea-level pressure in pascal, temperature in kelvin, lapse in kelvin per meter, exponent: ICAO standard
/// atmosphere 1993.
const SEA_LEVEL: f64 = 101_325.0;
const SEA_LEVEL_KELVIN: f64 = 288.15;
const LAPSE: f64 = 0.0065;
const EXPONENT: f64 = 5.255_88;

/// Pressure of the standard atmosphere in pascal at a geopotential height in meters, up to 11,000 m (ICAO 1993).
/// Zero only where the formula has left the troposphere for good.
#[must_use]
pub fn air_pressure(height: f64) -> f64 {
    SEA_LEVEL * libm::pow((1.0 - LAPSE * height / SEA_LEVEL_KELVIN).max(0.0), EXPONENT)
}

/// Pressure below which air is added before driving: cold × (100 % − part), up to the psi (handbook FIG-22).
pub(super) fn tire_add_air(asked: Asked<'_>) -> Figure {
    limit(asked, "tire_add_air", "tires.add_below", COMMON_PRACTICE)
}

/// Pressure below which a tire counts as flat (handbook FIG-22).
pub(super) fn tire_flat(asked: Asked<'_>) -> Figure {
    limit(asked, "tire_flat", "tires.flat_below", COMMON_PRACTICE)
}

fn limit(asked: Asked<'_>, id: &'static str, part: &str, source: &'static str) -> Figure {
    Work::run(asked, id, Rounding::Up, source, |w| {
        let below = w.take(part, Measure::Percent)?;
        if below > 100.0 {
            return w.missing(part);
        }
        by_axle(w, |w, _, psi| {
            w.say(|| format!("{} psi × (100 − {}) ÷ 100", plain(psi), plain(below)));
            Some(psi * (100.0 - below) / 100.0)
        })
    })
}

/// One value an axle; the measure is that of the placard.
fn by_axle(
    w: &mut Work<'_>,
    mut value: impl FnMut(&mut Work<'_>, &'static str, f64) -> Option<f64>,
) -> Option<()> {
    let axles = &w.given.facts.lists().axles;
    if axles.is_empty() {
        return w.missing("tires.cold");
    }
    for axle in axles {
        let cold = *axle.cold.quantity();
        w.input("tires.cold", cold, "plate");
        let Some(psi) = cold.to(Measure::Psi).filter(|psi| *psi > 0.0) else {
            return w.missing("tires.cold");
        };
        let exact = value(w, axle.at.word(), psi)?;
        w.put_of(axle.at.word(), exact, Measure::Psi, 0)?;
    }
    Some(())
}

/// Pressure that a cold tire shows at another temperature and height, to the nearest psi: (gauge + air) × T₂/T₁ −
/// air there (ideal gas; ICAO standard atmosphere). The tire's own volume is taken as fixed.
pub(super) fn tire_pressure_at(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "tire_pressure_at",
        Rounding::Nearest,
        "ideal gas law; ICAO standard atmosphere 1993",
        |w| {
            let trip = w.trip()?;
            let Some(set) = trip.tires else { return w.missing("trip.tires") };
            let t1 = w.asked("tires.set_at", Some(*set.set_at.quantity()), Measure::Celsius)? + 273.15;
            let read = quantity(set.read_at).or_else(|| quantity(trip.coldest));
            let t2 = w.asked("tires.read_at", read, Measure::Celsius)? + 273.15;
            let here = w.take("site.elevation", Measure::Meter)?;
            let there = match quantity(set.height) {
                Some(height) => w.asked("tires.height", Some(height), Measure::Meter)?,
                None => here,
            };
            let pascal = |pascal: f64| Measure::Psi.of_si(pascal);
            let (air1, air2) = (pascal(air_pressure(here)), pascal(air_pressure(there)));
            if t1 <= 0.0 || t2 <= 0.0 {
                return w.missing("trip.tires.set_at");
            }
            w.step("air_here", air1, Measure::Psi);
            w.step("air_there", air2, Measure::Psi);
            w.tell("air", &[]);
            by_axle(w, |w, axle, psi| {
                w.say(|| {
                    let (p, a, b) = (plain(psi), plain(air1), plain(air2));
                    format!("({p} + {a}) psi × {} ÷ {} − {b} psi", plain(t2), plain(t1))
                });
                let there = (psi + air1) * t2 / t1 - air2;
                w.tell_of("axle", Some(axle), &[("cold", psi, Measure::Psi)]);
                Some(there)
            })
        },
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ICAO 1993 / ISO 2533, geopotential heights; values as committed in `tests/figures/recompute.py`.
    #[test]
    fn air_is_the_standard_atmosphere() {
        for (feet, pascal) in [
            (0.0, 101_325.0),
            (1_000.0, 97_716.6),
            (2_000.0, 94_212.9),
            (5_000.0, 84_307.3),
            (8_000.0, 75_262.4),
            (10_000.0, 69_681.7),
        ] {
            let got = air_pressure(feet * 0.3048);
            assert!(libm::fabs(got - pascal) < 0.06, "{feet} ft: {got}");
        }
        // A published table prints 12.682 psia at 4,000 ft, a misprint for 12.692.
        let psia = Measure::Psi.of_si(air_pressure(1_219.2));
        assert!(libm::fabs(psia - 12.692) < 0.0006, "{psia}");
    }
}
