//! Height, tail swing and level.

use crate::measure::{Measure, Quantity, Rounding};

use super::trip::Sign;
use super::work::{Work, plain, quantity};
use super::{Asked, COMMON_PRACTICE, Figure, State};

/// Whether a unit may pass under something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Passage {
    /// The sign says enough.
    Go,
    /// The sign says too little.
    No,
    /// There is no sign, or the limit is not known: stop, get out, look. A bridge without a sign may still be
    /// low (MUTCD 2009 §2C.27 asks for signs only below the legal height and a foot).
    Unknown,
}

impl Passage {
    /// The answer as figures spell it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Go => "yes",
            Self::No => "no",
            Self::Unknown => "unknown",
        }
    }
}

/// Judges a sign against the figure `clearance_min_sign`. Both are compared in the measure of the sign, in which
/// the limit is rounded up: whole inches on a sign in feet and inches, centimeters on one in meters.
#[must_use]
pub fn may_pass(limit: &Figure, sign: Option<&Quantity>) -> Passage {
    let Some(sign) = sign else { return Passage::Unknown };
    let needed = limit_on_sign(limit, sign);
    let own = own_measure(sign).0;
    let says = sign.to(own).and_then(crate::measure::rounding::settled);
    match (needed.map(|n| n.amount()), says) {
        (Some(needed), Some(says)) if says >= needed => Passage::Go,
        (Some(_), Some(_)) => Passage::No,
        _ => Passage::Unknown,
    }
}

/// The measure in which a sign is compared, and its decimals.
fn own_measure(sign: &Quantity) -> (Measure, u32) {
    match sign.measure() {
        Measure::Inch | Measure::Foot | Measure::FootInch => (Measure::FootInch, 0),
        _ => (Measure::Meter, 2),
    }
}

/// The figure `clearance_min_sign` as this sign would have to say it at least: whole inches on a sign in feet and
/// inches, centimeters on one in meters.
#[must_use]
pub fn limit_on_sign(limit: &Figure, sign: &Quantity) -> Option<Quantity> {
    let outcome = limit.outcomes.first().filter(|_| limit.state == State::Ok)?;
    let (own, places) = own_measure(sign);
    let number = outcome.measure.convert(outcome.exact, own)?;
    Some(Quantity::new(crate::measure::rounded(number, places, Rounding::Up)?, own))
}

/// Lowest sign to pass under: height, margin and what stands on the roof, up to the inch (handbook FIG-01). The
/// margin is common practice, no source.
pub(super) fn clearance_min_sign(asked: Asked<'_>) -> Figure {
    let mut figure = Work::run(asked, "clearance_min_sign", Rounding::Up, COMMON_PRACTICE, |w| {
        let height = w.take("size.height", Measure::Inch)?;
        let margin = w.take("size.margin", Measure::Inch)?;
        let mut sum = height + margin;
        w.say(|| format!("{} in + {} in", plain(height), plain(margin)));
        if let Some(roof) = w.given.trip.and_then(|t| quantity(t.roof)) {
            let roof = w.asked("roof", Some(roof), Measure::Inch)?;
            sum += roof;
            w.add(|| format!(" + {} in", plain(roof)));
            w.tell("formula-roof", &[]);
            w.note("roof-load");
        }
        w.put(sum, Measure::FootInch, 0)
    });
    if let Some(sign) = asked.given.trip.and_then(|t| t.sign) {
        let says = match sign {
            Sign::Says(length) => Some(*length.quantity()),
            Sign::NoSign => None,
        };
        if let Some(says) = says {
            let text = says.to_string();
            figure.inputs.push(super::Input {
                name: "trip.sign".into(),
                value: text,
                quantity: Some(says),
                from: "trip",
            });
        }
        if figure.state == State::Ok {
            figure.verdict = Some(may_pass(&figure, says.as_ref()).word());
        }
    }
    figure
}

/// How far the rear outer corner swings out at full lock: √(R² + overhang²) − R, up to the inch (handbook FIG-11;
/// geometry of a corner on a circle).
pub(super) fn tail_swing(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "tail_swing",
        Rounding::Up,
        "geometry: a corner behind the axle runs on a wider circle",
        |w| {
            let radius = w.take("size.turn_radius", Measure::Inch)?;
            let overhang = w.take("size.rear_overhang", Measure::Inch)?;
            if radius <= 0.0 {
                return w.missing("size.turn_radius");
            }
            let wider = libm::hypot(radius, overhang);
            w.step("wider", wider, Measure::Inch);
            w.say(|| {
                let (r, o) = (plain(radius), plain(overhang));
                format!("√({r}² + {o}²) in − {r} in")
            });
            w.put(wider - radius, Measure::Inch, 0)
        },
    )
}

/// Height of blocks under the low side and the low end, up to a tenth of an inch, and whether the refrigerator
/// may stand like this meanwhile (absorption refrigerators: 3° and 6°, facts of two owners' manuals).
pub(super) fn level_blocks(asked: Asked<'_>) -> Figure {
    Work::run(asked, "level_blocks", Rounding::Up, "geometry: the tangent of the slope times the base", |w| {
        let slope = w.trip()?.slope;
        let side = w.asked("slope.side", slope.map(|s| *s.side.quantity()), Measure::Degree)?;
        let along = w.asked("slope.length", slope.map(|s| *s.length.quantity()), Measure::Degree)?;
        let track = w.take("size.track", Measure::Inch)?;
        block(w, "side", side, track)?;
        if w.has("size.wheelbase") {
            let base = w.take("size.wheelbase", Measure::Inch)?;
            block(w, "length", along, base)?;
        } else {
            w.note("level-with-the-jack");
        }
        if w.has("fridge.level_side") && w.has("fridge.level_length") {
            let most_side = w.take("fridge.level_side", Measure::Degree)?;
            let most_along = w.take("fridge.level_length", Measure::Degree)?;
            let fits = libm::fabs(side) <= most_side && libm::fabs(along) <= most_along;
            w.figure.verdict = Some(if fits { "yes" } else { "no" });
            w.tell("fridge", &[]);
            if !fits {
                w.note("fridge-slope");
            }
        }
        Some(())
    })
}

fn block(w: &mut Work<'_>, of: &'static str, slope: f64, base: f64) -> Option<()> {
    let slope = libm::fabs(slope);
    if slope >= 45.0 {
        return w.missing("trip.slope");
    }
    let height = base * libm::tan(slope.to_radians());
    w.say(|| format!("{} in × tan {}°", plain(base), plain(slope)));
    w.tell_of(
        if of == "side" { "across" } else { "along" },
        Some(of),
        &[("slope", slope, Measure::Degree), ("base", base, Measure::Inch)],
    );
    w.put_of(of, height, Measure::Inch, 1)
}
