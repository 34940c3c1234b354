//! Factors and conversions.

use proptest::prelude::*;
use rust_decimal::Decimal;

use super::super::{
    Dimension, Gallon, Mass, Measure, Quantity, Rounding, System, Temperature, Volume, rounded, shown_in,
};

fn near(found: f64, wanted: f64) -> bool {
    (found - wanted).abs() <= wanted.abs() * 1e-12 + 1e-12
}

/// NIST SP 811 (2008), appendix B.8 and B.9, exact definitions; the digits of psi, inch of height and knot by
/// arithmetic from them.
#[test]
fn factors_are_those_of_nist() {
    use Measure as M;
    let table: &[(M, M, f64)] = &[
        (M::GallonUs, M::Liter, 3.785_411_784),
        (M::GallonImperial, M::Liter, 4.546_09),
        (M::Quart, M::Liter, 0.946_352_946),
        (M::Pound, M::Kilogram, 0.453_592_37),
        (M::Foot, M::Meter, 0.3048),
        (M::Inch, M::Meter, 0.0254),
        (M::Mile, M::Meter, 1609.344),
        (M::Mph, M::MeterPerSecond, 0.44704),
        (M::Mph, M::Kmh, 1.609_344),
        (M::Knot, M::Kmh, 1.852),
        (M::Psi, M::Kilopascal, 6.894_757_293_168_361),
        (M::BtuEnergy, M::KilowattHour, 1.055_055_852_62 / 3600.0),
        (M::BtuPerPound, M::KilojoulePerKilogram, 2.326),
        (M::KilowattHour, M::BtuEnergy, 3_412.141_633),
        (M::Bar, M::Kilopascal, 100.0),
        (M::CubicFoot, M::Liter, 28.316_846_592),
        (M::Ounce, M::Gram, 28.349_523_125),
        // B.8: pound-force foot, seven digits.
        (M::PoundFoot, M::NewtonMeter, 1.355_818),
        (M::PoundPerGallonUs, M::KilogramPerLiter, 0.119_826_4),
    ];
    for (from, to, factor) in table {
        let found = from.convert(1.0, *to).unwrap();
        let digits =
            if matches!(from, M::PoundFoot | M::PoundPerGallonUs | M::KilowattHour) { 1e-6 } else { 1e-12 };
        assert!((found / factor - 1.0).abs() < digits, "{from:?} to {to:?}: {found}");
    }
}

/// NIST SP 811, B.8: (°F − 32) / 1.8.
#[test]
fn degrees_convert_at_the_fixed_points() {
    for (fahrenheit, celsius) in [
        (-40.0, -40.0),
        (0.0, -17.777_777_777_8),
        (32.0, 0.0),
        (59.0, 15.0),
        (68.0, 20.0),
        (100.0, 37.777_777_777_8),
        (212.0, 100.0),
    ] {
        let found = Measure::Fahrenheit.convert(fahrenheit, Measure::Celsius).unwrap();
        assert!((found - celsius).abs() < 1e-9, "{fahrenheit} °F: {found}");
        let back = Measure::Celsius.convert(found, Measure::Fahrenheit).unwrap();
        assert!((back - fahrenheit).abs() < 1e-9, "{found} °C: {back}");
    }
    let freezing = Quantity::parse("32 °F").unwrap();
    assert!(near(freezing.si(), 273.15));
    // The noise of a value in kelvin must not turn 0 °C up into 1 °C.
    assert_eq!(rounded(Measure::Celsius.of_si(freezing.si()), 0, Rounding::Up), Some(Decimal::ZERO));
    assert_eq!(
        freezing.to(Measure::Celsius).map(|value| rounded(value, 0, Rounding::Up)),
        Some(Some(Decimal::ZERO))
    );
}

/// 235.214583 divided by mpg, from NIST factors: 100 km × 3.785411784 L ÷ 1.609344 km.
#[test]
fn fuel_economy_turns_over() {
    let found = Measure::MpgUs.convert(9.0, Measure::LiterPer100Km).unwrap();
    assert!(near(found, 378.541_178_4 / 1.609_344 / 9.0), "{found}");
    let back = Measure::LiterPer100Km.convert(found, Measure::MpgUs).unwrap();
    assert!(near(back, 9.0));
    assert!(Measure::LiterPer100Km.is_inverse() && !Measure::MpgUs.is_inverse());
}

#[test]
fn gallons_of_the_lot_convert_to_nothing_until_resolved() {
    let tank = Quantity::parse("40 gal").unwrap();
    assert!(tank.si().is_nan());
    assert_eq!(tank.to(Measure::Liter), None);
    assert_eq!(shown_in(&tank, System::Metric), vec![Measure::GallonLot]);
    assert!(near(tank.resolve(Gallon::Us).to(Measure::Liter).unwrap(), 151.416_471_36));
    assert!(near(tank.resolve(Gallon::Imperial).to(Measure::Liter).unwrap(), 181.8436));
    let typed: Volume = "40 gal".parse().unwrap();
    assert_eq!(typed.resolve(Gallon::Imperial).quantity().to_string(), "40 imp gal");
    for measure in Measure::ALL {
        for gallon in [Gallon::Us, Gallon::Imperial] {
            let resolved = measure.resolve(gallon);
            assert!(resolved.is_resolved());
            assert_eq!(resolved.dimension(), measure.dimension());
        }
    }
}

#[test]
fn dimensions_do_not_mix() {
    assert_eq!(Quantity::parse("40 lb").unwrap().to(Measure::Liter), None);
    assert_eq!(Quantity::parse("1 Ah").unwrap().to(Measure::Ampere), None);
}

/// The units of `uom` that [`Quantity::si`] speaks of. Its customary ones are cut to seven digits (a pound of
/// 0.4535924 kg), so numbers of a measure come from [`super::super::Of::number_of`] alone.
#[test]
fn typed_values_carry_the_si_unit() {
    use uom::si::{mass, thermodynamic_temperature, volume};
    let payload: Mass = "2819 lb".parse().unwrap();
    assert!(near(payload.si().get::<mass::kilogram>(), 1_278.676_891_03));
    assert_eq!(Mass::number_of(payload.si(), Measure::Pound).map(f64::round), Some(2819.0));
    assert_eq!(Mass::number_of(payload.si(), Measure::Liter), None);
    assert_eq!(Mass::si_of(1.0, Measure::Foot), None);
    assert!(near(Mass::si_of(1.0, Measure::Pound).unwrap().get::<mass::kilogram>(), 0.453_592_37));
    let tank: Volume = "40 US gal".parse().unwrap();
    assert!(near(tank.si().get::<volume::liter>(), 151.416_471_36));
    let warm: Temperature = "140 °F".parse().unwrap();
    assert!((warm.si().get::<thermodynamic_temperature::degree_celsius>() - 60.0).abs() < 1e-9);
}

#[test]
fn every_measure_has_its_own_symbol_and_reads_it_back() {
    for measure in Measure::ALL {
        let count = Measure::ALL.iter().filter(|other| other.symbol() == measure.symbol()).count();
        assert_eq!(count, 1, "{measure:?}");
        let quantity = Quantity::new(Decimal::from(7), *measure);
        assert_eq!(Quantity::parse(&quantity.to_string()).unwrap(), quantity, "{measure:?}");
        if measure.is_resolved() {
            let back = measure.of_si(measure.to_si(7.0));
            assert!((back - 7.0).abs() < 1e-9, "{measure:?}: {back}");
        }
    }
}

#[test]
fn every_reader_sees_every_measure_in_one_of_its_dimension() {
    for measure in Measure::ALL {
        for system in [System::Us, System::Uk, System::Metric] {
            for number in [1, 500] {
                let quantity = Quantity::new(Decimal::from(number), *measure);
                let shown = shown_in(&quantity, system);
                assert!((1..=2).contains(&shown.len()));
                assert!(shown.iter().all(|shown| shown.dimension() == measure.dimension()), "{measure:?}");
                // Handbook F.4 rule 1: never a US gallon outside North America.
                assert!(system == System::Us || shown.iter().all(|shown| !shown.symbol().contains("US gal")));
            }
        }
    }
    assert_eq!(Measure::Percent.dimension(), Dimension::Ratio);
}

proptest! {
    /// Handbook 0.6 with design §3: whole pounds taken from whole pounds by way of kilograms stay whole pounds.
    #[test]
    fn whole_pounds_never_lose_one(limit in 0_i32..30_000, taken in prop::collection::vec(0_i32..4_000, 1..8)) {
        let pounds = |number: i32| Measure::Pound.to_si(f64::from(number));
        let left = taken.iter().fold(pounds(limit), |left, weight| left - pounds(*weight));
        let wanted = Decimal::from(limit - taken.iter().sum::<i32>());
        for rounding in [Rounding::Down, Rounding::Up, Rounding::Nearest] {
            prop_assert_eq!(rounded(Measure::Pound.of_si(left), 0, rounding), Some(wanted));
        }
    }

    /// The same with inches by way of meters.
    #[test]
    fn whole_inches_never_lose_one(height in 1_i32..600, more in prop::collection::vec(-60_i32..60, 1..6)) {
        let inches = |number: i32| Measure::Inch.to_si(f64::from(number));
        let sum = more.iter().fold(inches(height), |sum, part| sum + inches(*part));
        let wanted = Decimal::from(height + more.iter().sum::<i32>());
        for rounding in [Rounding::Down, Rounding::Up] {
            prop_assert_eq!(rounded(Measure::FootInch.of_si(sum), 0, rounding), Some(wanted));
        }
    }

    #[test]
    fn conversions_lead_back(number in 0.001_f64..1e6, from in 0..Measure::ALL.len(), to in 0..Measure::ALL.len()) {
        let (from, to) = (Measure::ALL[from], Measure::ALL[to]);
        if let Some(there) = from.convert(number, to) {
            let back = to.convert(there, from).unwrap();
            prop_assert!((back - number).abs() <= number * 1e-9 + 1e-8, "{:?} {:?} {}", from, to, back);
        }
    }
}
