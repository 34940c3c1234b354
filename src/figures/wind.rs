//! Wind and the awning.

use crate::measure::{Measure, Quantity, Rounding};

use super::work::{Work, plain};
use super::{Asked, COMMON_PRACTICE, Figure};

/// Knots, miles and kilometers an hour, tenths of a meter a second.
type Row = (u16, u16, u16, u16);

/// Lower edges of the Beaufort forces in whole knots, miles and kilometers an hour, and in tenths of a meter a
/// second (WMO). Each column is its own: none is derived from another.
const FORCES: [Row; 13] = [
    (0, 0, 0, 0),
    (1, 1, 1, 3),
    (4, 4, 6, 16),
    (7, 8, 12, 34),
    (11, 13, 20, 55),
    (17, 19, 29, 80),
    (22, 25, 39, 108),
    (28, 32, 50, 139),
    (34, 39, 62, 172),
    (41, 47, 75, 208),
    (48, 55, 89, 245),
    (56, 64, 103, 285),
    (64, 73, 118, 327),
];
/// Wind at which an awning comes in when neither sheet nor lot says: 10 mph, common practice, no source.
const PRACTICE: i64 = 10;

/// A force of the Beaufort scale, 0 to 12.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Beaufort(u8);

impl Beaufort {
    /// The force of this number; none above 12.
    #[must_use]
    pub const fn new(force: u8) -> Option<Self> {
        if force <= 12 { Some(Self(force)) } else { None }
    }

    /// Its number.
    #[must_use]
    pub const fn force(self) -> u8 {
        self.0
    }

    /// The wind up to which it is this force, in meters a second; none for 12, which has no end.
    #[must_use]
    pub fn upper(self) -> Option<f64> {
        let next = FORCES.get(usize::from(self.0) + 1)?;
        Some((f64::from(next.3) - 1.0) / 10.0)
    }
}

/// The force of a wind, in the column of the measure it is told in; none for what is no speed.
#[must_use]
pub fn beaufort(wind: &Quantity) -> Option<Beaufort> {
    let number = match wind.measure() {
        measure @ (Measure::Knot | Measure::Mph | Measure::Kmh) => wind.to(measure)?,
        _ => wind.to(Measure::MeterPerSecond)? * 10.0,
    };
    let column = |row: &Row| match wind.measure() {
        Measure::Knot => row.0,
        Measure::Mph => row.1,
        Measure::Kmh => row.2,
        _ => row.3,
    };
    if !number.is_finite() || number < 0.0 {
        return None;
    }
    let whole = libm::floor(number + 0.5);
    let force = FORCES.iter().rposition(|row| f64::from(column(row)) <= whole)?;
    Beaufort::new(u8::try_from(force).ok()?)
}

/// Middle of a force in meters a second at 10 m height: 0.836·B^1.5 (1946, from memory; a geoscience reference
/// prints 0.837).
#[must_use]
pub fn beaufort_of(force: f64) -> f64 {
    0.836 * libm::pow(force.max(0.0), 1.5)
}

/// Wind up to which an awning of a wind class may be out, in meters a second (EN 13561: class 0 below force 3,
/// then up to force 4, 5, 6).
#[must_use]
fn class_limit(class: f64) -> Option<f64> {
    match class {
        c if c < 0.5 => Some(3.3),
        c if c < 1.5 => Some(7.9),
        c if c < 2.5 => Some(10.7),
        c if c < 3.5 => Some(13.8),
        _ => None,
    }
}

/// The limit in miles an hour: of sheet or lot, of the awning's class if that is lower, else common practice.
fn limit(w: &mut Work<'_>) -> Option<f64> {
    let told =
        if w.has("awning.wind_limit") { Some(w.take("awning.wind_limit", Measure::Mph)?) } else { None };
    let class = if w.has("awning.wind_class") {
        let class = w.take("awning.wind_class", Measure::Fraction)?;
        let Some(limit) = class_limit(class) else { return w.missing("awning.wind_class") };
        Measure::MeterPerSecond.convert(limit, Measure::Mph)
    } else {
        None
    };
    Some(match (told, class) {
        (Some(told), Some(class)) => told.min(class),
        (Some(limit), None) | (None, Some(limit)) => limit,
        (None, None) => {
            let practice = Quantity::new(rust_decimal::Decimal::from(PRACTICE), Measure::Mph);
            w.input("awning.wind_limit", practice, "assumed");
            practice.to(Measure::Mph)?
        }
    })
}

/// Whether the awning must come in: the wind, steady or in gusts, has reached the limit, nobody watches it, it
/// rains hard, or it is night (common practice, no source). A force counts as its strongest wind; what is not told
/// counts as not watched. The value is the limit.
pub(super) fn awning_verdict(asked: Asked<'_>) -> Figure {
    Work::run(asked, "awning_verdict", Rounding::Down, COMMON_PRACTICE, |w| {
        w.fitted("awning")?;
        let limit = limit(w)?;
        let wind = w.trip()?.wind.unwrap_or_default();
        let mut strongest: Option<f64> = None;
        let told = [("wind.speed", wind.speed), ("wind.gust", wind.gust)];
        for (name, speed) in told {
            if let Some(speed) = speed {
                let mph = w.asked(name, Some(*speed.quantity()), Measure::Mph)?;
                strongest = Some(strongest.map_or(mph, |s| s.max(mph)));
            }
        }
        if let Some(force) = wind.force {
            w.input_text("trip.wind.force", || force.to_string(), "trip");
            let Some(force) = Beaufort::new(force) else { return w.missing("trip.wind.force") };
            let top = force.upper().and_then(|top| Measure::MeterPerSecond.convert(top, Measure::Mph));
            let top = top.unwrap_or(f64::MAX);
            strongest = Some(strongest.map_or(top, |s| s.max(top)));
        }
        let alone = wind.watched != Some(true);
        let must = [("not-watched", alone), ("hard-rain", wind.rain), ("at-night", wind.night)];
        for (key, holds) in must {
            if holds {
                w.note(key);
            }
        }
        let windy = match strongest {
            Some(strongest) => strongest >= limit - 1e-9,
            // Whoever must take it in anyway needs no wind for it.
            None if must.iter().any(|(_, holds)| *holds) => false,
            None => return w.missing("trip.wind.speed"),
        };
        if windy {
            w.note("too-windy");
        }
        let told = strongest.filter(|s| *s < 1e6);
        w.say(|| {
            let told = told.map_or_else(String::new, |s| format!("{} mph, ", plain(s)));
            format!("{told}limit {} mph", plain(limit))
        });
        let most = ("limit", limit, Measure::Mph);
        match (told, strongest) {
            (Some(told), _) => w.tell("formula", &[("strongest", told, Measure::Mph), most]),
            (None, Some(_)) => w.tell("hurricane", &[most]),
            (None, None) => w.tell("no-wind", &[most]),
        }
        w.put(limit, Measure::Mph, 0)?;
        let inside = windy || must.iter().any(|(_, holds)| *holds);
        w.figure.verdict = Some(if inside { "in" } else { "out" });
        Some(())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn force(text: &str) -> u8 {
        beaufort(&Quantity::parse(text).expect("a speed")).expect("a force").force()
    }

    /// WMO table; the columns are those of several weather services (see `tests/figures/README.md`).
    #[test]
    fn each_column_of_the_scale_is_read_by_itself() {
        for (text, expected) in [
            ("0 kn", 0),
            ("3 kn", 1),
            ("4 kn", 2),
            ("10 kn", 3),
            ("11 kn", 4),
            ("16 kn", 4),
            ("17 kn", 5),
            ("63 kn", 11),
            ("64 kn", 12),
            ("4 mph", 2),
            ("12 mph", 3),
            ("18 mph", 4),
            ("19 mph", 5),
            ("24 mph", 5),
            ("72 mph", 11),
            ("73 mph", 12),
            ("19 km/h", 3),
            ("20 km/h", 4),
            ("28 km/h", 4),
            ("29 km/h", 5),
            ("117 km/h", 11),
            ("118 km/h", 12),
            ("5.4 m/s", 3),
            ("5.5 m/s", 4),
            ("7.9 m/s", 4),
            ("8.0 m/s", 5),
            ("10.7 m/s", 5),
            ("13.8 m/s", 6),
            ("32.7 m/s", 12),
        ] {
            assert_eq!(force(text), expected, "{text}");
        }
    }

    /// Edges at half forces reproduce the table within 0.1 m/s; 9.5 is the published check, 24.5 m/s.
    #[test]
    fn the_formula_agrees_with_the_table() {
        assert!(libm::fabs(beaufort_of(9.5) - 24.479) < 0.001);
        for force in 1..12_u8 {
            let upper = Beaufort::new(force).and_then(Beaufort::upper).expect("below 12");
            let edge = beaufort_of(f64::from(force) + 0.5);
            assert!(libm::fabs(edge - upper) < 0.11, "{force}: {edge} against {upper}");
        }
    }

    /// EN 13561 as an awning maker's manual prints it: class 1 to 7.9, class 2 to 10.7, class 3 to 13.8 m/s.
    #[test]
    fn classes_end_with_a_force() {
        for (class, force) in [(1.0, 4), (2.0, 5), (3.0, 6)] {
            assert_eq!(class_limit(class), Beaufort::new(force).and_then(Beaufort::upper));
        }
        assert_eq!(class_limit(7.0), None);
    }
}
