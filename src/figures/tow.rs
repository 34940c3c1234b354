//! A trailer and the vehicle that pulls it.

use crate::measure::{Measure, Rounding};

use super::work::{Work, plain, quantity};
use super::{Asked, Figure, Outcome};

/// Whole length of the rig: tow vehicle, ball mount and trailer, up to the inch (handbook FIG-21).
pub(super) fn rig_length(asked: Asked<'_>) -> Figure {
    Work::run(asked, "rig_length", Rounding::Up, "a sum of lengths", |w| {
        w.fitted("hitch")?;
        let tow = w.trip()?.tow.unwrap_or_default();
        let car = w.asked("tow.length", quantity(tow.length), Measure::Inch)?;
        let mount = w.asked("tow.ball_mount", quantity(tow.ball_mount), Measure::Inch)?;
        let trailer = w.take("size.length", Measure::Inch)?;
        w.say(|| format!("{} in + {} in + {} in", plain(car), plain(mount), plain(trailer)));
        w.put(car + mount + trailer, Measure::FootInch, 0)
    })
}

/// Whether a vehicle may pull the trailer (handbook FIG-20): the loaded trailer and its tongue, up to the pound;
/// what the tow vehicle's sticker, its rating, the hitch and the trailer's plate leave, down to the pound. One
/// that is below zero means no.
pub(super) fn tow_check(asked: Asked<'_>) -> Figure {
    Work::run(
        asked,
        "tow_check",
        Rounding::Down,
        "49 CFR 571.110 S9.3.5 (tongue weight is cargo of the tow vehicle)",
        |w| {
            w.fitted("hitch")?;
            let tow = w.trip()?.tow.unwrap_or_default();
            let uvw = w.take("weight.uvw", Measure::Pound)?;
            let kit = w.take("weight.kit", Measure::Pound)?;
            let water = water(w)?;
            let cargo = match w.given.trip.and_then(|t| quantity(t.bags)) {
                Some(bags) => w.asked("bags", Some(bags), Measure::Pound)?,
                None => 0.0,
            };
            let loaded = uvw + water + kit + cargo;
            let tongue = loaded * w.take("hitch.tongue_part", Measure::Fraction)?;
            let sticker = w.asked("tow.payload", quantity(tow.payload), Measure::Pound)?;
            let rating = w.asked("tow.rating", quantity(tow.rating), Measure::Pound)?;
            let people = super::weight::people_weight(w)?;
            let gear = w.take("hitch.gear", Measure::Pound)?;
            let own = match quantity(tow.bags) {
                Some(bags) => w.asked("tow.bags", Some(bags), Measure::Pound)?,
                None => 0.0,
            };
            let gvwr = w.take("weight.gvwr", Measure::Pound)?;
            let tongue_most = w.take("hitch.tongue_most", Measure::Pound)?;
            let trailer_most = w.take("hitch.trailer_most", Measure::Pound)?;
            let least_rating = w.take("hitch.rating", Measure::Pound)?;
            let tow_left = sticker - people - tongue - gear - own;
            w.step("loaded", loaded, Measure::Pound);
            w.step("tongue", tongue, Measure::Pound);
            let pounds = |name, value| (name, value, Measure::Pound);
            w.tell("formula", &[pounds("cargo", cargo)]);
            w.tell("on-the-hitch", &[]);
            w.tell("tow-vehicle", &[pounds("own", own), pounds("left", tow_left)]);
            w.tell("limits", &[]);
            w.say(|| {
                let sum = [uvw, water, kit, cargo].map(plain).join(" + ");
                let less = [sticker, people, tongue, gear, own].map(plain).join(" − ");
                format!("{sum} = {} lb; {less} lb", plain(loaded))
            });
            let lefts = [
                ("tow-payload-left", tow_left),
                ("trailer-left", gvwr - loaded),
                ("tow-rating-left", rating - loaded),
                ("tow-rating-over-least", rating - least_rating),
                ("hitch-left", trailer_most - loaded),
                ("tongue-left", tongue_most - tongue),
            ];
            for (of, value, rounding) in [("loaded", loaded, Rounding::Up), ("tongue", tongue, Rounding::Up)]
                .into_iter()
                .chain(lefts.iter().map(|(of, value)| (*of, *value, Rounding::Down)))
            {
                w.put_outcome(Outcome {
                    of: Some(of.into()),
                    exact: value,
                    measure: Measure::Pound,
                    places: 0,
                    rounding,
                    counted: None,
                })?;
            }
            w.figure.verdict = Some(if lefts.iter().all(|(_, left)| *left >= 0.0) { "yes" } else { "no" });
            Some(())
        },
    )
}

fn water(w: &mut Work<'_>) -> Option<f64> {
    let fresh = super::water::fresh_at_start(w)?;
    let heater =
        if w.has("water_heater.tank") { w.take("water_heater.tank", Measure::GallonUs)? } else { 0.0 };
    let pounds = (fresh + heater) * w.take("assumed.water", Measure::PoundPerGallonUs)?;
    w.step("water", pounds, Measure::Pound);
    Some(pounds)
}
