//! Places of a new data sheet: each where such a thing usually is, until somebody measures it.

use super::args::{Heat, Heater, Toilet};
use super::wish::Wish;

/// A place: id, station, part of half the width to the curb side, part of the length.
type Spot = (&'static str, &'static str, f64, f64);

/// What every unit has.
const ALWAYS: [Spot; 25] = [
    ("entry-door", "CurbMid", 1.0, 0.38),
    ("battery-box", "CurbMid", 1.0, 0.43),
    ("tires-rear-curb", "CurbRear", 1.0, 0.70),
    ("chocks", "CurbRear", 1.0, 0.72),
    ("bay-curb", "CurbRear", 1.0, 0.84),
    ("spare", "Rear", 0.3, 1.0),
    ("rear-camera", "Rear", 0.0, 1.0),
    ("rear-ladder", "Rear", -0.3, 1.0),
    ("hose-tube", "Rear", -0.6, 1.0),
    ("sewer-valves", "StreetRear", -1.0, 0.87),
    ("fresh-fill", "StreetMid", -1.0, 0.65),
    ("city-inlet", "StreetMid", -1.0, 0.62),
    ("extinguisher", "Entry", 0.85, 0.35),
    ("disconnect", "Entry", 0.8, 0.36),
    ("keys-hook", "Entry", 0.8, 0.41),
    ("control-panel", "Galley", -0.4, 0.48),
    ("smoke-alarm", "Galley", 0.0, 0.52),
    ("galley", "Galley", -0.6, 0.54),
    ("roof-vent", "Galley", 0.0, 0.56),
    ("spare-fuses", "Galley", -0.5, 0.57),
    ("living", "Living", -0.5, 0.37),
    ("gfci", "Bath", 0.45, 0.68),
    ("bath", "Bath", 0.7, 0.70),
    ("breaker-panel", "Bed", -0.25, 0.77),
    ("co-alarm", "Bed", 0.4, 0.86),
];

/// Places of equipment, and whether the unit has it.
fn perhaps(w: &Wish<'_>) -> Vec<(bool, Spot)> {
    let f = w.fitted;
    let (gas, engine) = (f.propane.is_some(), f.fuel.is_some());
    let generator = f.generator.is_some();
    let diesel_heat = f.heat == Some(Heat::Diesel);
    vec![
        (f.awning.is_some(), ("awning", "CurbMid", 1.0, 0.48)),
        (gas, ("lp-valve", "CurbMid", 1.0, 0.60)),
        (f.heat == Some(Heat::Furnace), ("furnace-exhaust", "CurbMid", 1.0, 0.63)),
        (diesel_heat, ("heater-exhaust", "CurbMid", 1.0, 0.63)),
        (f.toilet == Some(Toilet::Cassette), ("cassette-door", "CurbRear", 1.0, 0.78)),
        (f.cord.is_some(), ("cord-hatch", "StreetMid", -1.0, 0.56)),
        (f.slide_outs > 0, ("slide", "StreetMid", -1.0, 0.50)),
        (f.water_heater.is_some(), ("water-heater", "StreetMid", -1.0, 0.47)),
        (generator, ("generator", "StreetMid", -1.0, 0.40)),
        (generator, ("generator-exhaust", "StreetMid", -1.0, 0.38)),
        (engine, ("fuel-cap", "StreetFront", -1.0, 0.30)),
        (f.fuel == Some(super::args::Fuel::Diesel), ("fluid-cap", "StreetFront", -1.0, 0.28)),
        (engine, ("jump-posts", "Front", 0.2, 0.02)),
        (f.awning.is_some(), ("awning-switch", "Entry", 0.8, 0.42)),
        (generator, ("generator-switch", "Entry", 0.75, 0.42)),
        (f.slide_outs > 0, ("slide-switch", "Entry", 0.78, 0.43)),
        (f.water_heater == Some(Heater::Tank), ("water-heater-switch", "Galley", -0.42, 0.49)),
        (gas, ("lp-detector", "Galley", -0.45, 0.51)),
        (f.cook.is_some(), ("cooktop", "Galley", -0.65, 0.53)),
        (f.inverter.is_some(), ("inverter-panel", "Galley", -0.5, 0.58)),
        (f.fridge.is_some(), ("fridge", "Galley", -0.65, 0.61)),
        (f.roof_air > 0, ("roof-air", "Living", 0.0, 0.40)),
        (f.heat == Some(Heat::Furnace), ("thermostat", "Living", -0.4, 0.45)),
        (diesel_heat, ("heater-panel", "Living", -0.4, 0.45)),
        (f.toilet.is_some(), ("toilet", "Bath", 0.75, 0.72)),
        (true, ("bed", "Bed", -0.3, 0.76)),
        (f.solar.is_some(), ("solar-panel", "Bed", -0.6, 0.80)),
        (true, ("bed-exit", "Bed", 0.94, 0.91)),
        (engine, ("jump-pack", "Cab", 0.4, 0.20)),
        (!w.is_trailer(), ("dash", "Cab", -0.35, 0.14)),
        (!w.is_trailer(), ("cab", "Cab", 0.0, 0.20)),
    ]
}

/// The entries of `places`, a line each.
pub(super) fn entries(w: &Wish<'_>) -> Vec<String> {
    let half = w.width / 2.0;
    let point = |(id, station, across, along): Spot| {
        let x = libm::floor(across * half * 10.0) / 10.0 * w.curb;
        let y = libm::floor(along * w.body());
        format!("\"{id}\": (station: {station}, at: (\"{x} in\", \"{y} in\"))")
    };
    let mut all = vec!["\"desk\": (station: Desk)".to_owned()];
    all.extend(ALWAYS.into_iter().map(point));
    all.extend(perhaps(w).into_iter().filter(|(is, _)| *is).map(|(_, spot)| point(spot)));
    if w.is_trailer() {
        let back = w.tongue();
        all.push(format!("\"coupler\": (station: Tongue, at: (\"0 in\", \"-{back} in\"))"));
        all.push(format!(
            "\"breakaway\": (station: Tongue, at: (\"-4 in\", \"-{} in\"))",
            libm::floor(back * 0.8)
        ));
        all.push("\"tow-vehicle\": (station: TowVehicle)".to_owned());
        all.push(format!("\"cab\": (station: Road, words: \"{}-cab\")", w.id));
        all.push(format!("\"road\": (station: Road, words: \"{}-cab\")", w.id));
    } else {
        all.push("\"road\": (station: Road)".to_owned());
    }
    all.push("\"card\": (station: Card)".to_owned());
    all
}

/// Furniture, a line each.
pub(super) fn rooms(w: &Wish<'_>) -> Vec<String> {
    let half = w.width / 2.0 - 2.0;
    let room = |(kind, from, to): (&str, (f64, f64), (f64, f64))| {
        let xs = [from.0 * half * w.curb, to.0 * half * w.curb].map(libm::floor);
        let ys = [from.1, to.1].map(|part| libm::floor(part * w.body()));
        let [a, b] = xs;
        let (left, right) = (a.min(b), a.max(b));
        let [front, rear] = ys;
        format!("(kind: {kind}, from: (\"{left} in\", \"{front} in\"), to: (\"{right} in\", \"{rear} in\"))")
    };
    let mut all = Vec::new();
    if !w.is_trailer() {
        all.push(room(("Cab", (-0.85, 0.13), (0.85, 0.26))));
    }
    all.push(room(("Dinette", (-0.98, 0.30), (-0.25, 0.45))));
    all.push(room(("Galley", (-0.98, 0.47), (-0.45, 0.64))));
    all.push(room(("Bath", (0.3, 0.65), (0.98, 0.75))));
    all.push(room(("Bed", (-0.98, 0.77), (0.3, 0.98))));
    all
}
