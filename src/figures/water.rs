//! How long water and waste tanks last.

use crate::measure::{Measure, Quantity, Rounding};

use super::work::{Work, plain, quantity};
use super::{Asked, COMMON_PRACTICE, Figure, Use};

/// Fresh tanks that are usual, in US gallons; a mid-size motorhome has about 40 (common practice, no source).
const USUAL_TANK: std::ops::RangeInclusive<f64> = 20.0..=100.0;

/// Water that the party uses a day, in US gallons.
pub(super) struct DailyUse {
    /// All of it.
    pub(super) all: f64,
    /// What runs into the grey tanks.
    pub(super) grey: f64,
    /// What goes into the toilet tank.
    pub(super) toilet: f64,
    /// Whether the unit has a toilet tank at all.
    pub(super) has_toilet: bool,
}

/// Works out the daily use; a careful party flushes less in the same ratio (handbook FIG-05).
pub(super) fn daily_use(w: &mut Work<'_>) -> Option<DailyUse> {
    let trip = w.trip()?;
    let people = trip.people.len();
    w.input("trip.people", Quantity::new(rust_decimal::Decimal::from(people), Measure::Fraction), "trip");
    if people == 0 {
        return w.missing("trip.people");
    }
    let people = f64::from(u32::try_from(people).unwrap_or(u32::MAX));
    let normal = w.take("people.use_normal", Measure::GallonUs)?;
    let each = match (quantity(trip.use_each), trip.water) {
        (Some(each), _) => w.asked("use_each", Some(each), Measure::GallonUs)?,
        (None, Use::Careful) => w.take("people.use_careful", Measure::GallonUs)?,
        (None, Use::Normal) => normal,
    };
    if normal <= 0.0 || each <= 0.0 {
        return w.missing("people.use_normal");
    }
    let (black, cassette) = (w.has("waste.black"), w.has("waste.cassette"));
    let flush = if black {
        w.take("people.flush_tank", Measure::GallonUs)? * each / normal
    } else if cassette {
        w.take("people.flush_cassette", Measure::GallonUs)? * each / normal
    } else {
        0.0
    };
    let waste = w.take("people.waste", Measure::GallonUs)?;
    w.step("use", each, Measure::GallonUs);
    w.step("flush", flush, Measure::GallonUs);
    Some(DailyUse {
        all: people * each,
        grey: people * (each - flush),
        toilet: people * (flush + waste),
        has_toilet: black || cassette,
    })
}

/// Fresh water at the start in US gallons.
pub(super) fn fresh_at_start(w: &mut Work<'_>) -> Option<f64> {
    let fresh = w.take("water.fresh", Measure::GallonUs)?;
    let level = w.given.trip.and_then(|t| quantity(t.start.fresh));
    Some(fresh * w.level("start.fresh", level, "assumed.start_fresh")?)
}

/// All grey tanks together, in US gallons.
pub(super) fn grey_tanks(w: &mut Work<'_>) -> Option<f64> {
    let first = w.take("waste.grey", Measure::GallonUs)?;
    let second =
        if w.has("waste.grey_galley") { w.take("waste.grey_galley", Measure::GallonUs)? } else { 0.0 };
    Some(first + second)
}

/// The toilet tank in US gallons.
pub(super) fn toilet_tank(w: &mut Work<'_>) -> Option<f64> {
    let name = if w.has("waste.black") { "waste.black" } else { "waste.cassette" };
    w.take(name, Measure::GallonUs)
}

/// Part of a waste tank that is free at the start.
pub(super) fn free_at_start(w: &mut Work<'_>, name: &str, level: Option<Quantity>) -> Option<f64> {
    Some(1.0 - w.level(name, level, "assumed.start_waste")?)
}

/// Days of fresh water: tank × level ÷ (people × use), down to a tenth (handbook FIG-04).
pub(super) fn fresh_days(asked: Asked<'_>) -> Figure {
    Work::run(asked, "fresh_days", Rounding::Down, COMMON_PRACTICE, |w| {
        let daily = daily_use(w)?;
        let fresh = fresh_at_start(w)?;
        w.say(|| format!("{} US gal ÷ {} US gal a day", plain(fresh), plain(daily.all)));
        if let Some(tank) = w.given.facts.quantity("water.fresh").and_then(|q| q.to(Measure::GallonUs))
            && !USUAL_TANK.contains(&tank)
        {
            w.note("unusual-tank");
        }
        w.step("there", fresh, Measure::GallonUs);
        w.step("daily", daily.all, Measure::GallonUs);
        w.put(fresh / daily.all, Measure::Day, 1)
    })
}

/// Days until the grey tanks are full: tanks ÷ (people × (use − flush)), down to a tenth (handbook FIG-05).
pub(super) fn grey_days(asked: Asked<'_>) -> Figure {
    Work::run(asked, "grey_days", Rounding::Down, COMMON_PRACTICE, |w| {
        let daily = daily_use(w)?;
        let tanks = grey_tanks(w)?;
        let level = w.given.trip.and_then(|t| quantity(t.start.grey));
        let free = free_at_start(w, "start.grey", level)?;
        if daily.grey <= 0.0 {
            return w.missing("people.use_normal");
        }
        w.say(|| format!("{} US gal ÷ {} US gal a day", plain(tanks * free), plain(daily.grey)));
        w.step("there", tanks * free, Measure::GallonUs);
        w.step("daily", daily.grey, Measure::GallonUs);
        w.put(tanks * free / daily.grey, Measure::Day, 1)
    })
}

/// Days until the toilet tank is full: tank ÷ (people × (flush + waste)), down to a tenth (handbook FIG-05).
pub(super) fn toilet_days(asked: Asked<'_>) -> Figure {
    Work::run(asked, "toilet_days", Rounding::Down, COMMON_PRACTICE, |w| {
        if !w.has("waste.black") && !w.has("waste.cassette") {
            return w.not_fitted();
        }
        let daily = daily_use(w)?;
        let tank = toilet_tank(w)?;
        let level = w.given.trip.and_then(|t| quantity(t.start.black));
        let free = free_at_start(w, "start.black", level)?;
        if daily.toilet <= 0.0 {
            return w.missing("people.waste");
        }
        w.say(|| format!("{} US gal ÷ {} US gal a day", plain(tank * free), plain(daily.toilet)));
        w.step("there", tank * free, Measure::GallonUs);
        w.step("daily", daily.toilet, Measure::GallonUs);
        w.put(tank * free / daily.toilet, Measure::Day, 1)
    })
}

/// Minutes to fill the fresh tank, up to the minute: what is missing ÷ the flow of the tap. A gallon in so many
/// seconds gives the flow (60 ÷ seconds, state leaflets on water use; EPA bucket test).
pub(super) fn fill_minutes(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "fill_minutes",
        Rounding::Up,
        "EPA WaterSense bucket test: flow is volume over time",
        |w| {
            let tank = w.take("water.fresh", Measure::GallonUs)?;
            let there = w.given.trip.and_then(|t| quantity(t.start.fresh));
            let level = match there {
                Some(level) => w.level("start.fresh", Some(level), "assumed.start_fresh")?,
                // Without a level the whole tank is filled: that is what the minutes are asked for.
                None => 0.0,
            };
            let bucket = w.given.trip.and_then(|t| quantity(t.bucket));
            let flow = if bucket.is_some() {
                let seconds = w.asked("bucket", bucket, Measure::Second)?;
                let gallon = match w.given.facts.lists().gallon {
                    crate::measure::Gallon::Us => Measure::GallonUs,
                    crate::measure::Gallon::Imperial => Measure::GallonImperial,
                };
                gallon.convert(1.0, Measure::GallonUs)? * 60.0 / seconds
            } else {
                let tap = w.given.trip.and_then(|t| quantity(t.tap));
                w.asked_or("tap", tap, "assumed.tap_flow", Measure::GallonUsPerMinute)?
            };
            if flow <= 0.0 || !flow.is_finite() {
                return w.missing("trip.tap");
            }
            let missing = tank * (1.0 - level);
            w.say(|| format!("{} US gal ÷ {} US gal/min", plain(missing), plain(flow)));
            w.step("there", missing, Measure::GallonUs);
            w.step("flow", flow, Measure::GallonUsPerMinute);
            w.put(missing / flow, Measure::Minute, 0)
        },
    )
}
