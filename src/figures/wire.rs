//! Voltage lost in a cord.

use crate::measure::{Measure, Rounding};

use super::trip::SupplyAt;
use super::work::{Work, plain, quantity};
use super::{Asked, Figure, Outcome};

/// Milliohms of 1000 ft of uncoated stranded copper at 75 °C by wire size: NEC chapter 9, table 8.
const MILLIOHMS: [(&str, f64); 15] = [
    ("18", 7950.0),
    ("16", 4990.0),
    ("14", 3140.0),
    ("12", 1980.0),
    ("10", 1240.0),
    ("8", 778.0),
    ("6", 491.0),
    ("4", 308.0),
    ("3", 245.0),
    ("2", 194.0),
    ("1", 154.0),
    ("1/0", 122.0),
    ("2/0", 96.7),
    ("3/0", 76.6),
    ("4/0", 60.8),
];

/// Current of a household outlet, up to which a cord looks like any other, in amperes.
const HOUSEHOLD: f64 = 16.0;

/// Ohms of 1000 ft of copper wire of this size (AWG); none for a size the table does not have.
#[must_use]
pub fn resistance(gauge: &str) -> Option<f64> {
    MILLIOHMS.iter().find(|(size, _)| *size == gauge.trim()).map(|(_, milliohms)| milliohms / 1000.0)
}

/// Voltage lost in an extension cord: 2 × length × ohms × current, up to a hundredth of a volt and a tenth of a
/// percent. More than the lot's limit (NEC 210.19 recommends 3 % of a branch) means no.
pub(super) fn voltage_drop(asked: Asked<'_>) -> Figure {
    Work::run(asked, "voltage_drop", Rounding::Up, "NEC chapter 9, table 8; 210.19 informational note", |w| {
        let trip = w.trip()?;
        let Some(cord) = &trip.cord else { return w.missing("trip.cord") };
        let length = w.asked("cord.length", Some(*cord.length.quantity()), Measure::Foot)?;
        w.input_text("trip.cord.gauge", || cord.gauge.clone(), "trip");
        let Some(ohms) = resistance(&cord.gauge) else { return w.missing("trip.cord.gauge") };
        let volts = w.asked_or("cord.volts", quantity(cord.volts), "limit.mains", Measure::Volt)?;
        let current = if cord.current.is_some() {
            w.asked("cord.current", quantity(cord.current), Measure::Ampere)?
        } else {
            // What the outlet may give for hours, and the unit's own cord takes: the cord must stand it.
            let breaker = match trip.supply {
                Some(SupplyAt::Post(post)) => {
                    let post = w.asked("supply", Some(*post.quantity()), Measure::Ampere)?;
                    if w.has("shore") { post.min(w.take("shore.cord", Measure::Ampere)?) } else { post }
                }
                _ => w.take("limit.outlet_small", Measure::Ampere)?,
            };
            breaker * w.take("assumed.long_part", Measure::Fraction)?
        };
        if volts <= 0.0 {
            return w.missing("trip.cord.volts");
        }
        let most = w.take("assumed.drop_most", Measure::Percent)?;
        let drop = 2.0 * length * ohms / 1000.0 * current;
        let share = drop / volts * 100.0;
        w.say(|| format!("2 × {} ft × {ohms} Ω ÷ 1000 ft × {} A", plain(length), plain(current)));
        w.step("both_ways", 2.0 * length, Measure::Foot);
        w.step("volts", volts, Measure::Volt);
        w.step("current", current, Measure::Ampere);
        w.put_outcome(Outcome {
            of: Some("drop".into()),
            exact: drop,
            measure: Measure::Volt,
            places: 2,
            rounding: Rounding::Up,
            counted: None,
        })?;
        w.say(|| format!("÷ {} V", plain(volts)));
        w.put_of("share", share, Measure::Percent, 1)?;
        let fits = share <= most + 1e-9;
        w.figure.verdict = Some(if fits { "yes" } else { "no" });
        if !fits {
            // The longest cord of this wire that loses no more than it may.
            let longest = if drop > 0.0 { length * most / share } else { length };
            w.note_with("cord-too-thin", &[("longest", longest, Measure::Foot)]);
            if current <= HOUSEHOLD + 1e-9 {
                w.note("long-thin-cord");
            }
        }
        Some(())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NEC chapter 9, table 8 (2011), as an electrical-design course prints it.
    #[test]
    fn ohms_are_those_of_stranded_copper() {
        // A page labels the solid wire's 1.93 as stranded.
        for (size, ohms) in
            [("18", 7.95), ("16", 4.99), ("12", 1.98), ("10", 1.24), ("2", 0.194), ("4/0", 0.0608)]
        {
            let got = resistance(size).expect("a size of the table");
            assert!(libm::fabs(got - ohms) < 1e-12, "{size}: {got}");
        }
        assert_eq!(resistance("13"), None);
    }
}
