//! Water and what may still be loaded.

use crate::measure::{Measure, Quantity, Rounding};

use super::work::{Work, plain, quantity};
use super::{Asked, Figure};

/// Water on board in pounds: fresh tank at its level and water heater.
fn water(w: &mut Work<'_>) -> Option<f64> {
    let fresh = w.take("water.fresh", Measure::GallonUs)?;
    let level = w.given.trip.and_then(|t| quantity(t.start.fresh));
    let level = w.level("start.fresh", level, "assumed.start_fresh")?;
    let heater =
        if w.has("water_heater.tank") { w.take("water_heater.tank", Measure::GallonUs)? } else { 0.0 };
    let density = w.take("assumed.water", Measure::PoundPerGallonUs)?;
    let pounds = (fresh * level + heater) * density;
    w.step("water", pounds, Measure::Pound);
    w.step("gallons", fresh * level, Measure::GallonUs);
    w.step("heater", heater, Measure::GallonUs);
    Some(pounds)
}

/// Weight of the water on board: (fresh tank × level + heater) × weight of a gallon, up to the pound
/// (handbook FIG-03; 49 CFR 571.110 S9.3.4 prints 8.3 lb and 1 kg/L, which differ: the lot picks one).
pub(super) fn water_weight(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "water_weight",
        Rounding::Up,
        "49 CFR 571.110 S9.3.4(e), with the lot's weight of water",
        |w| {
            let pounds = water(w)?;
            w.say(|| format!("(fresh tank × level + heater) × weight of water = {} lb", plain(pounds)));
            w.put(pounds, Measure::Pound, 0)
        },
    )
}

/// Weight of the people in pounds, and how many.
pub(super) fn people_weight(w: &mut Work<'_>) -> Option<f64> {
    let people = &w.trip()?.people;
    let count = people.len();
    w.input("trip.people", Quantity::new(rust_decimal::Decimal::from(count), Measure::Fraction), "trip");
    let usual = people.iter().filter(|p| p.weight.is_none()).count();
    let mut sum = 0.0;
    if usual > 0 {
        let each = w.take("people.weight", Measure::Pound)?;
        sum += each * f64::from(u32::try_from(usual).unwrap_or(u32::MAX));
    }
    for weight in people.iter().filter_map(|p| p.weight) {
        sum += w.asked("people.weight", Some(*weight.quantity()), Measure::Pound)?;
    }
    w.step("people", sum, Measure::Pound);
    Some(sum)
}

/// What may still be loaded, down to the pound (handbook FIG-02; 49 CFR 575.6(a)(5) and 571.110: propane is
/// inside the unloaded weight and is never taken off again, water and people are cargo; on a trailer nobody
/// rides). Below zero it is overloaded.
pub(super) fn payload_left(asked: Asked<'_>) -> Figure {
    Work::run(asked, "payload_left", Rounding::Down, "49 CFR 575.6(a)(5)(i) and 571.110 S9.3", |w| {
        let motorized = w.has("weight.occc");
        let plate = if motorized { "weight.occc" } else { "weight.ccc" };
        if !w.has(plate) {
            return w.missing("weight.occc");
        }
        let capacity = w.take(plate, Measure::Pound)?;
        w.say(|| format!("{} lb", plain(capacity)));
        let mut left = capacity;
        w.step("capacity", capacity, Measure::Pound);
        if motorized {
            let people = people_weight(w)?;
            w.add(|| format!(" − {} lb people", plain(people)));
            left -= people;
        } else {
            w.note("nobody-rides");
            w.step("people", 0.0, Measure::Pound);
        }
        let water = water(w)?;
        let kit = w.take("weight.kit", Measure::Pound)?;
        left -= water + kit;
        w.add(|| format!(" − {} lb water − {} lb kit", plain(water), plain(kit)));
        if let Some(bags) = w.given.trip.and_then(|t| quantity(t.bags)) {
            let bags = w.asked("bags", Some(bags), Measure::Pound)?;
            w.add(|| format!(" − {} lb bags", plain(bags)));
            left -= bags;
            w.step("bags", bags, Measure::Pound);
        } else {
            w.step("bags", 0.0, Measure::Pound);
        }
        if left < 0.0 {
            w.note("overloaded");
        }
        w.put(left, Measure::Pound, 0)
    })
}
