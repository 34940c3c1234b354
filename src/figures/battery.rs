//! The house battery at night, and how full it is.

use crate::measure::{Measure, Rounding};
use crate::unit::NightLoad;

use super::gas::is_cold;
use super::work::{Work, plain, quantity};
use super::{Asked, Figure, Outcome};

/// Rested voltage of a 12 V lead-acid battery and its charge in percent, at 80 °F (Battery Council International).
const LEAD_ACID: [(f64, f64); 5] =
    [(11.89, 0.0), (12.06, 25.0), (12.24, 50.0), (12.45, 75.0), (12.65, 100.0)];

/// Amp-hours that a list of 12 V loads takes, each noted as an input.
pub(super) fn budget(w: &mut Work<'_>, name: &'static str, loads: &[NightLoad], cold: bool) -> Option<f64> {
    if loads.is_empty() {
        return w.missing(name);
    }
    let mut sum = 0.0;
    for load in loads {
        let duty = if cold { load.cold_duty.or(load.duty) } else { load.duty };
        let share = match duty {
            Some(duty) => duty.quantity().to(Measure::Fraction)?,
            None => 1.0,
        };
        let part =
            load.draw.quantity().to(Measure::Ampere)? * share * load.hours.quantity().to(Measure::Hour)?;
        let id = format!("{name}.{}", load.id.value);
        if part < 0.0 || !part.is_finite() {
            return w.missing(&id);
        }
        let text = || match duty {
            Some(duty) => format!("{} × {duty} × {}", load.draw, load.hours),
            None => format!("{} × {}", load.draw, load.hours),
        };
        w.input_text(&id, text, "sheet");
        sum += part;
    }
    Some(sum)
}

/// Amp-hours of a night, the inverter's own draw included where it is left on.
pub(super) fn night_need(w: &mut Work<'_>, cold: bool) -> Option<f64> {
    let loads = &w.given.facts.lists().night;
    let mut need = budget(w, "night", loads, cold)?;
    if w.given.trip.is_some_and(|t| t.inverter_on) && w.has("inverter") {
        need += w.take("inverter.idle", Measure::Ampere)? * night_hours(loads);
    }
    w.step("night", need, Measure::AmpereHour);
    Some(need)
}

/// The longest of the night's loads tells how long the night is.
fn night_hours(loads: &[NightLoad]) -> f64 {
    loads.iter().filter_map(|l| l.hours.quantity().to(Measure::Hour)).fold(0.0, f64::max)
}

/// Amp-hours that may be used: capacity × usable part, less in frost for lead-acid, less at a high rate where the
/// sheet gives Peukert's exponent and the time of its rating.
pub(super) fn usable(w: &mut Work<'_>, cold: bool, need: f64) -> Option<f64> {
    let capacity = w.take("house.capacity", Measure::AmpereHour)?;
    let part = w.take("house.usable", Measure::Fraction)?;
    if capacity <= 0.0 || part <= 0.0 || part > 1.0 {
        return w.missing("house.capacity");
    }
    let mut there = capacity * part;
    w.tell("usable", &[("part_there", there, Measure::AmpereHour)]);
    if w.word("house.chemistry")? == "lead-acid" && cold {
        there *= w.take("assumed.cold_part", Measure::Fraction)?;
        w.tell("usable-frost", &[("part_there", there, Measure::AmpereHour)]);
    } else if cold && w.has("house.charge_above") {
        let _ = w.take("house.charge_above", Measure::Fahrenheit)?;
        w.note("no-charge-in-frost");
    }
    let hours = night_hours(&w.given.facts.lists().night);
    if w.has("house.peukert") && w.has("house.rated_over") && hours > 0.0 {
        let exponent = w.take("house.peukert", Measure::Fraction)?;
        let over = w.take("house.rated_over", Measure::Hour)?;
        if exponent < 1.0 || over <= 0.0 {
            return w.missing("house.peukert");
        }
        there *= rate_part(capacity, over, exponent, need / hours);
        let current = ("current", need / hours, Measure::Ampere);
        w.tell("usable-rate", &[current, ("part_there", there, Measure::AmpereHour)]);
    }
    w.step("there", there, Measure::AmpereHour);
    Some(there)
}

/// Part of its rated capacity that a battery gives at a current, by Peukert's law with the time of the rating:
/// t = H·(C/(I·H))^k, so that I·t/C = (C/(I·H))^(k−1). Never more than the rating.
#[must_use]
pub(super) fn rate_part(capacity: f64, over: f64, exponent: f64, current: f64) -> f64 {
    if current <= 0.0 {
        return 1.0;
    }
    libm::pow(capacity / (current * over), exponent - 1.0).min(1.0)
}

/// Nights the house battery lasts: usable amp-hours ÷ those of a night, down to a tenth (handbook FIG-06;
/// usable parts 50 % lead-acid, 80 to 90 % lithium).
pub(super) fn battery_nights(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "battery_nights",
        Rounding::Down,
        "amp-hours there over amp-hours needed; Peukert's law",
        |w| {
            let cold = is_cold(w)?;
            let need = night_need(w, cold)?;
            let there = usable(w, cold, need)?;
            if need <= 0.0 {
                return w.missing("night");
            }
            w.say(|| format!("{} Ah ÷ {} Ah", plain(there), plain(need)));
            w.tell("formula", &[]);
            w.put_outcome(Outcome {
                of: None,
                exact: there / need,
                measure: Measure::Fraction,
                places: 1,
                rounding: Rounding::Down,
                counted: Some("nights"),
            })
        },
    )
}

/// Charge of the house battery from its rested voltage (lead-acid: table of Battery Council International, on the
/// straight line between its rows), or from its panel, down to the percent. The voltage of a lithium battery says
/// too little.
pub(super) fn state_of_charge(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "state_of_charge",
        Rounding::Down,
        "Battery Council International, 80 °F, rested",
        |w| {
            let trip = w.trip()?;
            if let Some(charge) = quantity(trip.house_charge) {
                let charge = w.level("house_charge", Some(charge), "trip.house_charge")?;
                w.say(|| format!("{} %, as the panel shows", plain(charge * 100.0)));
                w.tell("by-panel", &[]);
                return w.put(charge * 100.0, Measure::Percent, 0);
            }
            if w.word("house.chemistry")? != "lead-acid" {
                w.note("lithium-voltage");
                return w.missing("trip.house_charge");
            }
            let volts = w.asked("house_volts", quantity(trip.house_volts), Measure::Volt)?;
            if !(9.0..=16.0).contains(&volts) {
                return w.missing("trip.house_volts");
            }
            if volts > 13.0 {
                w.note("still-charging");
            }
            w.say(|| format!("{} V in the table", plain(volts)));
            let (full, empty) = ends_of_table();
            w.tell("formula", &[("full", full, Measure::Volt), ("empty", empty, Measure::Volt)]);
            if let Some((below, above)) = rows_around(volts) {
                w.tell(
                    "between",
                    &[
                        ("below_volts", below.0, Measure::Volt),
                        ("below_charge", below.1, Measure::Percent),
                        ("above_volts", above.0, Measure::Volt),
                        ("above_charge", above.1, Measure::Percent),
                    ],
                );
            }
            w.put(charge_at(volts), Measure::Percent, 0)
        },
    )
}

/// A row of the table: volts and percent.
type Row = (f64, f64);

/// The rows between which a voltage lies; none outside the table.
fn rows_around(volts: f64) -> Option<(Row, Row)> {
    LEAD_ACID.windows(2).find_map(|pair| match pair {
        [below, above] if volts >= below.0 && volts <= above.0 => Some((*below, *above)),
        _ => None,
    })
}

/// Volts of a full and of an empty battery.
fn ends_of_table() -> (f64, f64) {
    let [(empty, _), .., (full, _)] = LEAD_ACID;
    (full, empty)
}

fn charge_at(volts: f64) -> f64 {
    match rows_around(volts) {
        Some(((v0, c0), (v1, c1))) => c0 + (c1 - c0) * (volts - v0) / (v1 - v0),
        None if volts < ends_of_table().1 => 0.0,
        None => 100.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hours(capacity: f64, over: f64, k: f64, current: f64) -> f64 {
        capacity * rate_part(capacity, over, k, current) / current
    }

    /// Worked values of an article on Peukert's equation: 100 Ah over 20 h.
    #[test]
    fn peukert_counts_the_time_of_the_rating() {
        for (k, current, expected) in
            [(1.2, 5.0, 20.0), (1.2, 10.0, 8.7055), (1.05, 10.0, 9.6594), (1.0, 10.0, 10.0)]
        {
            let got = hours(100.0, 20.0, k, current);
            assert!(libm::fabs(got - expected) < 0.0001, "k {k}, {current} A: {got}");
        }
        // 250 Ah over 20 h, 20 A, exponent 1.3: 10.856 h. The form for a 1 A rating gives 5.09 h, half of it.
        let got = hours(250.0, 20.0, 1.3, 20.0);
        assert!(libm::fabs(got - 10.856) < 0.001, "{got}");
    }

    /// The form for a rating at 1 A is the same law with the time in which 1 A empties it: 100, 1.2, 5 A: 14.4956 h
    /// (electrotechnik.net).
    #[test]
    fn a_rating_at_one_ampere_is_a_rating_over_its_hours() {
        let got = 100.0 * libm::pow(100.0 / (5.0 * 100.0), 0.2) / 5.0;
        assert!(libm::fabs(got - 14.4956) < 0.0001, "{got}");
        assert!(libm::fabs(hours(100.0, 100.0, 1.2, 5.0) - 14.4956) < 0.0001);
    }

    /// Battery Council International table.
    #[test]
    fn rested_volts_tell_the_charge() {
        for (volts, charge) in LEAD_ACID {
            assert!(libm::fabs(charge_at(volts) - charge) < 1e-9, "{volts} V");
        }
        assert!(charge_at(11.0).abs() < 1e-9 && (charge_at(12.9) - 100.0).abs() < 1e-9);
    }
}
