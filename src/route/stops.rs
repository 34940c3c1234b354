//! Groups the steps of a route into stops.

use super::{Step, Stop, Zone};
use crate::unit::Station;

/// Steps nearer than this to the first of a stop belong to it, in inches: 1.5 m.
const NEAR_INCHES: f64 = 1.5 / 0.0254;

/// Where a station lies.
pub(super) fn zone(station: Station) -> Zone {
    match station {
        Station::Desk => Zone::Desk,
        Station::Tongue | Station::TowVehicle | Station::Road | Station::Card => Zone::Leaving,
        s if s.is_inside() => Zone::Inside,
        _ => Zone::Outside,
    }
}

/// Distance between two points of the plan, in the unit of the points.
pub(super) fn distance(a: (f64, f64), b: (f64, f64)) -> f64 {
    libm::hypot(a.0 - b.0, a.1 - b.1)
}

/// The stops of steps in order, numbered within their zone. The leaving check begins one: what was said of the road
/// is answered before the wheels turn.
pub(super) fn stops(steps: &[Step]) -> Vec<Stop> {
    let mut stops: Vec<Stop> = Vec::new();
    let mut first: Option<(f64, f64)> = None;
    for (index, step) in steps.iter().enumerate() {
        let zone = zone(step.station);
        let near = match (first, step.at) {
            (Some(a), Some(b)) => distance(a, b) <= NEAR_INCHES,
            (None, None) => true,
            _ => false,
        };
        match stops.last_mut() {
            Some(stop) if stop.zone == zone && near && step.leaving.is_empty() => stop.steps.end = index + 1,
            last => {
                let number = last.filter(|s| s.zone == zone).map_or(1, |s| s.number + 1);
                first = step.at;
                stops.push(Stop { number, zone, at: None, steps: index..index + 1 });
            }
        }
    }
    for stop in &mut stops {
        stop.at = middle(steps.get(stop.steps.clone()).unwrap_or_default());
    }
    stops
}

/// Mean of the points of the steps that have one.
fn middle(steps: &[Step]) -> Option<(f64, f64)> {
    let points: Vec<(f64, f64)> = steps.iter().filter_map(|s| s.at).collect();
    let count = u32::try_from(points.len()).ok().filter(|n| *n > 0).map(f64::from)?;
    let sum = points.iter().fold((0.0, 0.0), |sum, p| (sum.0 + p.0, sum.1 + p.1));
    Some((sum.0 / count, sum.1 / count))
}
