//! In which measures a reader sees a quantity.

use serde::{Deserialize, Serialize};

use super::{Dimension, Measure, Quantity};

/// The measures of a reader: those of the signs, gauges and pumps where they drive.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
pub enum System {
    /// Feet, pounds, US gallons, °F; metric in brackets.
    #[default]
    Us,
    /// Metric, but miles, psi and imperial gallons where the road has them.
    Uk,
    /// Metric.
    Metric,
}

/// One measure in which a quantity is shown, with the decimals that a converted number gets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shown {
    /// The measure.
    pub measure: Measure,
    /// Decimals of a number that had to be converted.
    pub places: u32,
}

/// From here up a length in inches is read as feet and inches.
const TALL_INCHES: f64 = 72.0;

/// The measures in which a reader sees a quantity: the first, then the one in brackets if there is one.
#[must_use]
pub fn shown_in(quantity: &Quantity, system: System) -> Vec<Measure> {
    let authored = quantity.measure();
    if !authored.is_resolved() {
        return vec![authored];
    }
    match quantity.dimension() {
        Dimension::Length => length(quantity, system),
        Dimension::VolumeRate => flow(authored, system),
        _ => simple(authored, system),
    }
}

/// The same with the decimals that each converted number gets.
#[must_use]
pub fn shown_with_places(quantity: &Quantity, system: System) -> Vec<Shown> {
    let places =
        |measure| quantity.to(measure).map_or(0, |value| usual_places(quantity.measure(), measure, value));
    shown_in(quantity, system).into_iter().map(|measure| Shown { measure, places: places(measure) }).collect()
}

fn by_system(system: System, us: &[Measure], uk: &[Measure], metric: &[Measure]) -> Vec<Measure> {
    match system {
        System::Us => us.to_vec(),
        System::Uk => uk.to_vec(),
        System::Metric => metric.to_vec(),
    }
}

fn length(quantity: &Quantity, system: System) -> Vec<Measure> {
    use Measure::{Centimeter, Foot, FootInch, Inch, Kilometer, Meter, Mile};
    let inches = quantity.to(Inch).map_or(0.0, f64::abs);
    match quantity.measure() {
        Mile | Kilometer => by_system(system, &[Mile, Kilometer], &[Mile], &[Kilometer]),
        Foot => by_system(system, &[Foot, Meter], &[Meter, Foot], &[Meter]),
        FootInch | Meter => by_system(system, &[FootInch, Meter], &[Meter, FootInch], &[Meter]),
        _ if inches >= TALL_INCHES => by_system(system, &[FootInch, Meter], &[Meter, FootInch], &[Meter]),
        _ => by_system(system, &[Inch, Centimeter], &[Centimeter, Inch], &[Centimeter]),
    }
}

fn flow(authored: Measure, system: System) -> Vec<Measure> {
    use Measure::{
        GallonImperialPerDay, GallonImperialPerMinute, GallonUsPerDay, GallonUsPerHour, GallonUsPerMinute,
        LiterPerDay, LiterPerHour, LiterPerMinute,
    };
    let (us, metric) = match authored {
        GallonUsPerMinute | GallonImperialPerMinute | LiterPerMinute => (GallonUsPerMinute, LiterPerMinute),
        GallonUsPerDay | GallonImperialPerDay | LiterPerDay => (GallonUsPerDay, LiterPerDay),
        _ => (GallonUsPerHour, LiterPerHour),
    };
    by_system(system, &[us, metric], &[metric], &[metric])
}

fn simple(authored: Measure, system: System) -> Vec<Measure> {
    use Measure as M;
    match authored {
        M::Pound | M::Kilogram => by_system(system, &[M::Pound, M::Kilogram], &[M::Kilogram], &[M::Kilogram]),
        M::Ounce | M::Gram => by_system(system, &[M::Ounce, M::Gram], &[M::Gram], &[M::Gram]),
        M::GallonUs | M::GallonImperial | M::Liter => {
            by_system(system, &[M::GallonUs, M::Liter], &[M::Liter, M::GallonImperial], &[M::Liter])
        }
        M::Quart => by_system(system, &[M::Quart, M::Liter], &[M::Liter], &[M::Liter]),
        M::CubicFoot => by_system(system, &[M::CubicFoot, M::Liter], &[M::Liter], &[M::Liter]),
        M::Psi | M::Kilopascal | M::Bar => {
            by_system(system, &[M::Psi, M::Kilopascal], &[M::Psi, M::Bar], &[M::Kilopascal])
        }
        M::Mph | M::Kmh | M::MeterPerSecond | M::Knot => {
            by_system(system, &[M::Mph, M::Kmh], &[M::Mph], &[M::Kmh])
        }
        M::BtuPerHour => by_system(system, &[M::BtuPerHour, M::Kilowatt], &[M::Kilowatt], &[M::Kilowatt]),
        M::BtuEnergy => {
            by_system(system, &[M::BtuEnergy, M::KilowattHour], &[M::KilowattHour], &[M::KilowattHour])
        }
        M::Fahrenheit | M::Celsius => {
            by_system(system, &[M::Fahrenheit, M::Celsius], &[M::Celsius], &[M::Celsius])
        }
        M::MpgUs | M::MpgImperial | M::LiterPer100Km => {
            by_system(system, &[M::MpgUs, M::LiterPer100Km], &[M::MpgImperial], &[M::LiterPer100Km])
        }
        // For the shop both, everywhere.
        M::PoundFoot | M::NewtonMeter => by_system(
            system,
            &[M::PoundFoot, M::NewtonMeter],
            &[M::NewtonMeter, M::PoundFoot],
            &[M::NewtonMeter, M::PoundFoot],
        ),
        M::PoundPerGallonUs | M::PoundPerGallonImperial | M::KilogramPerLiter => by_system(
            system,
            &[M::PoundPerGallonUs, M::KilogramPerLiter],
            &[M::KilogramPerLiter],
            &[M::KilogramPerLiter],
        ),
        M::BtuPerPound | M::KilojoulePerKilogram => {
            by_system(system, &[M::BtuPerPound], &[M::KilojoulePerKilogram], &[M::KilojoulePerKilogram])
        }
        M::FootPerSecondSquared | M::MeterPerSecondSquared => by_system(
            system,
            &[M::FootPerSecondSquared, M::MeterPerSecondSquared],
            &[M::MeterPerSecondSquared],
            &[M::MeterPerSecondSquared],
        ),
        same => vec![same],
    }
}

/// Decimals of a converted number: what a gauge or a tape shows.
fn usual_places(authored: Measure, shown: Measure, value: f64) -> u32 {
    use Measure as M;
    let small = value.abs() < 10.0;
    match shown {
        M::Meter if authored == M::Foot => u32::from(value.abs() < 30.0),
        M::Meter | M::PoundPerGallonUs | M::KilogramPerLiter => 2,
        M::Bar | M::Kilowatt | M::KilowattHour | M::LiterPer100Km | M::MpgUs | M::MpgImperial => 1,
        M::FootInch | M::Fahrenheit | M::Celsius | M::Kilopascal | M::Psi | M::Mph | M::Kmh => 0,
        _ => u32::from(small),
    }
}
