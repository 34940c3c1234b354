//! The table of measures: symbol, dimension, exact factor.
//!
//! Factors: NIST SP 811 (2008), appendix B, which defines the inch, the pound, the US gallon (231 cubic inches),
//! the imperial gallon and the International Table BTU exactly.

use serde::{Deserialize, Serialize};

/// What kind of thing a measure measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Dimension {
    /// Length and distance; SI unit meter.
    Length,
    /// Mass; kilogram.
    Mass,
    /// Volume; cubic meter.
    Volume,
    /// Pressure; pascal.
    Pressure,
    /// Speed; meter per second.
    Speed,
    /// Power; watt.
    Power,
    /// Electric current; ampere.
    Current,
    /// Voltage; volt.
    Voltage,
    /// Electric charge; coulomb.
    Charge,
    /// Energy; joule.
    Energy,
    /// Temperature; kelvin.
    Temperature,
    /// Time; second.
    Time,
    /// A share of a whole; 1.
    Ratio,
    /// Volume per time; cubic meter per second.
    VolumeRate,
    /// Torque; newton meter.
    Torque,
    /// Angle; radian.
    Angle,
    /// Distance per volume of fuel; meter per cubic meter.
    Economy,
    /// Mass per volume; kilogram per cubic meter.
    Density,
    /// Energy per mass; joule per kilogram.
    SpecificEnergy,
    /// Acceleration; meter per second squared.
    Acceleration,
}

impl Dimension {
    /// How a fault names the dimension, with its article.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Mass => "a weight",
            Self::Volume => "a volume",
            Self::Pressure => "a pressure",
            Self::Speed => "a speed",
            Self::Power => "a power",
            Self::Current => "a current",
            Self::Voltage => "a voltage",
            Self::Charge => "a charge",
            Self::Energy => "an energy",
            Self::Temperature => "a temperature",
            Self::Time => "a time",
            Self::Ratio => "a share of a whole",
            Self::VolumeRate => "a flow",
            Self::Torque => "a torque",
            Self::Angle => "an angle",
            Self::Economy => "a fuel economy",
            Self::Density => "a density",
            Self::SpecificEnergy => "an energy by weight",
            Self::Acceleration => "an acceleration",
        }
    }

    /// A value as one would author it, for hints.
    #[must_use]
    pub const fn example(self) -> &'static str {
        match self {
            Self::Length => "11 ft 3 in",
            Self::Mass => "2819 lb",
            Self::Volume => "40 gal",
            Self::Pressure => "75 psi",
            Self::Speed => "65 mph",
            Self::Power => "1560 W",
            Self::Current => "30 A",
            Self::Voltage => "12.7 V",
            Self::Charge => "160 Ah",
            Self::Energy => "5120 Wh",
            Self::Temperature => "28 °F",
            Self::Time => "10 h",
            Self::Ratio => "35 %",
            Self::VolumeRate => "0.5 gal/h",
            Self::Torque => "140 lb-ft",
            Self::Angle => "3 deg",
            Self::Economy => "9 mpg",
            Self::Density => "8.34 lb/gal",
            Self::SpecificEnergy => "21548 BTU/lb",
            Self::Acceleration => "11.2 ft/s2",
        }
    }
}

/// Which gallon `gal` means in a lot folder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Gallon {
    /// 3.785411784 liters.
    #[default]
    Us,
    /// 4.54609 liters.
    Imperial,
}

/// How a number of a measure becomes a number of the SI unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Scale {
    /// SI = number × factor.
    Linear(f64),
    /// SI = (number + shift) × factor.
    Shifted { factor: f64, shift: f64 },
    /// SI = factor ÷ number.
    Inverse(f64),
    /// Depends on which gallon the lot means.
    LotGallon { us: Measure, imperial: Measure },
}

macro_rules! measures {
    ($($variant:ident: $dimension:ident, $symbol:literal, $name:literal, [$($accepted:literal),*], [$($hinted:literal),*], $scale:expr;)+) => {
        /// A unit of measure. (`unit` is the vehicle.)
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        pub enum Measure { $(#[doc = concat!($name, ", written `", $symbol, "`.")] $variant,)+ }

        impl Measure {
            /// Every measure, in the order of the table.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// What it measures.
            #[must_use]
            pub const fn dimension(self) -> Dimension { match self { $(Self::$variant => Dimension::$dimension,)+ } }

            /// How it is authored, and how figures and records write it: `gal`, `°F`, `lb-ft`.
            #[must_use]
            pub const fn symbol(self) -> &'static str { match self { $(Self::$variant => $symbol,)+ } }

            /// Its name in plain words.
            #[must_use]
            pub const fn name(self) -> &'static str { match self { $(Self::$variant => $name,)+ } }

            /// Other spellings that are understood.
            pub(crate) const fn accepted(self) -> &'static [&'static str] { match self { $(Self::$variant => &[$($accepted),*],)+ } }

            /// Spellings that are refused, but whose writer clearly meant this measure.
            pub(crate) const fn hinted(self) -> &'static [&'static str] { match self { $(Self::$variant => &[$($hinted),*],)+ } }

            pub(crate) const fn scale(self) -> Scale { match self { $(Self::$variant => $scale,)+ } }
        }
    };
}

use Scale::{Inverse, Linear, Shifted};

const FOOT: f64 = 0.3048;
const MILE: f64 = 1609.344;
const POUND: f64 = 0.453_592_37;
const LITER: f64 = 0.001;
const US_GALLON: f64 = 0.003_785_411_784;
const IMPERIAL_GALLON: f64 = 0.004_546_09;
const BTU: f64 = 1_055.055_852_62;
/// Pound-force in newtons: the pound times standard gravity.
const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// Exact ratio of facts in pascal: pound-force over square inch.
const PSI: f64 = 8_896_443_230_521.0 / 1_290_320_000.0;
const HOUR: f64 = 3600.0;
const DAY: f64 = 86_400.0;

const fn lot(us: Measure, imperial: Measure) -> Scale {
    Scale::LotGallon { us, imperial }
}

measures! {
    Inch: Length, "in", "inch", [], ["inch", "inches", "ins"], Linear(0.0254);
    Foot: Length, "ft", "foot", [], ["foot", "feet"], Linear(FOOT);
    FootInch: Length, "ft in", "feet and inches", [], [], Linear(0.0254);
    Mile: Length, "mi", "mile", ["mile", "miles"], [], Linear(MILE);
    Millimeter: Length, "mm", "millimeter", [], ["millimeter", "millimeters"], Linear(0.001);
    Centimeter: Length, "cm", "centimeter", [], ["centimeter", "centimeters"], Linear(0.01);
    Meter: Length, "m", "meter", [], ["meter", "meters", "metre", "metres"], Linear(1.0);
    Kilometer: Length, "km", "kilometer", [], ["kilometer", "kilometers", "kms"], Linear(1000.0);
    Ounce: Mass, "oz", "ounce", [], ["ounce", "ounces"], Linear(POUND / 16.0);
    Pound: Mass, "lb", "pound", [], ["lbs", "pound", "pounds"], Linear(POUND);
    Gram: Mass, "g", "gram", [], ["gram", "grams"], Linear(0.001);
    Kilogram: Mass, "kg", "kilogram", [], ["kgs", "kilo", "kilos", "kilogram", "kilograms"], Linear(1.0);
    GallonLot: Volume, "gal", "gallon of the lot", [], ["gallon", "gallons", "gals"], lot(Measure::GallonUs, Measure::GallonImperial);
    GallonUs: Volume, "US gal", "US gallon", [], ["us gallon", "us gallons"], Linear(US_GALLON);
    GallonImperial: Volume, "imp gal", "imperial gallon", [], ["imperial gallon", "imperial gallons", "uk gal"], Linear(IMPERIAL_GALLON);
    Quart: Volume, "qt", "US quart", [], ["quart", "quarts"], Linear(US_GALLON / 4.0);
    Liter: Volume, "L", "liter", ["l"], ["liter", "liters", "litre", "litres", "ltr"], Linear(LITER);
    CubicFoot: Volume, "cu ft", "cubic foot", ["ft3"], ["cubic foot", "cubic feet"], Linear(FOOT * FOOT * FOOT);
    Psi: Pressure, "psi", "pound per square inch", [], ["pounds per square inch"], Linear(PSI);
    Kilopascal: Pressure, "kPa", "kilopascal", [], ["kilopascal", "kilopascals"], Linear(1000.0);
    Bar: Pressure, "bar", "bar", [], ["bars"], Linear(100_000.0);
    Millibar: Pressure, "mbar", "millibar", [], ["millibar", "millibars"], Linear(100.0);
    Mph: Speed, "mph", "mile per hour", ["mi/h"], ["miles per hour"], Linear(0.44704);
    Kmh: Speed, "km/h", "kilometer per hour", [], ["kph", "kmh", "km per hour"], Linear(1000.0 / HOUR);
    MeterPerSecond: Speed, "m/s", "meter per second", [], ["meters per second"], Linear(1.0);
    Knot: Speed, "kn", "knot", [], ["kt", "kts", "knot", "knots"], Linear(1852.0 / HOUR);
    Watt: Power, "W", "watt", [], ["watt", "watts"], Linear(1.0);
    Kilowatt: Power, "kW", "kilowatt", [], ["kilowatt", "kilowatts"], Linear(1000.0);
    BtuPerHour: Power, "BTU/h", "BTU per hour", [], ["btuh", "btu/hr", "btu per hour"], Linear(BTU / HOUR);
    Ampere: Current, "A", "ampere", [], ["amp", "amps", "ampere", "amperes"], Linear(1.0);
    Volt: Voltage, "V", "volt", [], ["volt", "volts", "vdc", "vac"], Linear(1.0);
    AmpereHour: Charge, "Ah", "ampere-hour", [], ["amp hours", "amp-hours"], Linear(HOUR);
    WattHour: Energy, "Wh", "watt-hour", [], ["watt hours", "watt-hours"], Linear(HOUR);
    KilowattHour: Energy, "kWh", "kilowatt-hour", [], ["kilowatt hours"], Linear(1000.0 * HOUR);
    BtuEnergy: Energy, "BTU", "BTU", [], ["btus"], Linear(BTU);
    Fahrenheit: Temperature, "°F", "degree Fahrenheit", [], ["f", "degf", "deg f", "fahrenheit", "degrees fahrenheit"], Shifted { factor: 5.0 / 9.0, shift: 459.67 };
    Celsius: Temperature, "°C", "degree Celsius", [], ["c", "degc", "deg c", "celsius", "degrees celsius"], Shifted { factor: 1.0, shift: 273.15 };
    Second: Time, "s", "second", [], ["sec", "secs", "second", "seconds"], Linear(1.0);
    Minute: Time, "min", "minute", [], ["mins", "minute", "minutes"], Linear(60.0);
    Hour: Time, "h", "hour", [], ["hr", "hrs", "hour", "hours"], Linear(HOUR);
    Day: Time, "d", "day", ["day", "days"], [], Linear(DAY);
    Percent: Ratio, "%", "percent", [], ["pct", "percent", "per cent"], Linear(0.01);
    Fraction: Ratio, "", "share of a whole", [], [], Linear(1.0);
    GallonLotPerMinute: VolumeRate, "gal/min", "gallon of the lot per minute", ["gpm"], ["gallons per minute"], lot(Measure::GallonUsPerMinute, Measure::GallonImperialPerMinute);
    GallonUsPerMinute: VolumeRate, "US gal/min", "US gallon per minute", ["US gpm"], [], Linear(US_GALLON / 60.0);
    GallonImperialPerMinute: VolumeRate, "imp gal/min", "imperial gallon per minute", ["imp gpm"], [], Linear(IMPERIAL_GALLON / 60.0);
    GallonLotPerHour: VolumeRate, "gal/h", "gallon of the lot per hour", ["gph"], ["gal/hr", "gallons per hour"], lot(Measure::GallonUsPerHour, Measure::GallonImperialPerHour);
    GallonUsPerHour: VolumeRate, "US gal/h", "US gallon per hour", ["US gph"], [], Linear(US_GALLON / HOUR);
    GallonImperialPerHour: VolumeRate, "imp gal/h", "imperial gallon per hour", ["imp gph"], [], Linear(IMPERIAL_GALLON / HOUR);
    GallonLotPerDay: VolumeRate, "gal/d", "gallon of the lot per day", ["gal/day"], ["gallons per day"], lot(Measure::GallonUsPerDay, Measure::GallonImperialPerDay);
    GallonUsPerDay: VolumeRate, "US gal/d", "US gallon per day", ["US gal/day"], [], Linear(US_GALLON / DAY);
    GallonImperialPerDay: VolumeRate, "imp gal/d", "imperial gallon per day", ["imp gal/day"], [], Linear(IMPERIAL_GALLON / DAY);
    LiterPerMinute: VolumeRate, "L/min", "liter per minute", ["l/min"], ["lpm"], Linear(LITER / 60.0);
    LiterPerHour: VolumeRate, "L/h", "liter per hour", ["l/h"], ["lph"], Linear(LITER / HOUR);
    LiterPerDay: VolumeRate, "L/d", "liter per day", ["L/day", "l/d", "l/day"], [], Linear(LITER / DAY);
    PoundFoot: Torque, "lb-ft", "pound-foot", ["lb·ft", "lbf·ft"], ["ft-lb", "ft-lbs", "ft lb", "lbft", "lb ft"], Linear(POUND_FORCE * FOOT);
    NewtonMeter: Torque, "N·m", "newton meter", ["N m", "Nm"], [], Linear(1.0);
    Degree: Angle, "°", "degree", ["deg"], ["degree", "degrees"], Linear(core::f64::consts::PI / 180.0);
    MpgLot: Economy, "mpg", "mile per gallon of the lot", [], ["miles per gallon"], lot(Measure::MpgUs, Measure::MpgImperial);
    MpgUs: Economy, "US mpg", "mile per US gallon", ["mpg US"], [], Linear(MILE / US_GALLON);
    MpgImperial: Economy, "imp mpg", "mile per imperial gallon", ["mpg imp"], [], Linear(MILE / IMPERIAL_GALLON);
    LiterPer100Km: Economy, "L/100 km", "liter per 100 kilometers", ["L/100km", "l/100 km", "l/100km"], [], Inverse(100_000.0 / LITER);
    PoundPerGallonLot: Density, "lb/gal", "pound per gallon of the lot", [], ["lbs/gal", "pounds per gallon"], lot(Measure::PoundPerGallonUs, Measure::PoundPerGallonImperial);
    PoundPerGallonUs: Density, "lb/US gal", "pound per US gallon", [], [], Linear(POUND / US_GALLON);
    PoundPerGallonImperial: Density, "lb/imp gal", "pound per imperial gallon", [], [], Linear(POUND / IMPERIAL_GALLON);
    KilogramPerLiter: Density, "kg/L", "kilogram per liter", ["kg/l"], [], Linear(1.0 / LITER);
    BtuPerPound: SpecificEnergy, "BTU/lb", "BTU per pound", [], ["btu per pound"], Linear(2326.0);
    KilojoulePerKilogram: SpecificEnergy, "kJ/kg", "kilojoule per kilogram", [], [], Linear(1000.0);
    FootPerSecondSquared: Acceleration, "ft/s2", "foot per second squared", ["ft/s²"], [], Linear(FOOT);
    MeterPerSecondSquared: Acceleration, "m/s2", "meter per second squared", ["m/s²"], [], Linear(1.0);
}

impl Measure {
    /// The number of this measure for a value in the SI unit of its dimension (kelvin, meter, cubic meter ...).
    /// Not a number while it is a gallon of the lot.
    #[must_use]
    pub fn of_si(self, si: f64) -> f64 {
        match self.scale() {
            Linear(factor) => si / factor,
            // A kelvin value carries noise of its own size; degrees near zero must not inherit it.
            Shifted { factor, shift } => libm::rint((si / factor - shift) * 1e9) / 1e9,
            Inverse(factor) => factor / si,
            Scale::LotGallon { .. } => f64::NAN,
        }
    }

    /// The value in the SI unit of its dimension for a number of this measure.
    /// Not a number while it is a gallon of the lot.
    #[must_use]
    pub fn to_si(self, number: f64) -> f64 {
        match self.scale() {
            Linear(factor) => number * factor,
            Shifted { factor, shift } => (number + shift) * factor,
            Inverse(factor) => factor / number,
            Scale::LotGallon { .. } => f64::NAN,
        }
    }

    /// The number of `other` for a number of this measure; none when the dimensions differ or a gallon of the
    /// lot has not been resolved.
    #[must_use]
    pub fn convert(self, number: f64, other: Self) -> Option<f64> {
        if self == other {
            return Some(number);
        }
        if self.dimension() != other.dimension() || !self.is_resolved() || !other.is_resolved() {
            return None;
        }
        Some(match (self, other) {
            // Not by way of kelvin: 32 °F is 0 °C, not 5.7e-14.
            (Self::Fahrenheit, Self::Celsius) => (number - 32.0) * 5.0 / 9.0,
            (Self::Celsius, Self::Fahrenheit) => number * 9.0 / 5.0 + 32.0,
            _ => other.of_si(self.to_si(number)),
        })
    }

    /// The same measure once it is known which gallon the lot means.
    #[must_use]
    pub const fn resolve(self, gallon: Gallon) -> Self {
        match (self.scale(), gallon) {
            (Scale::LotGallon { us, .. }, Gallon::Us) => us,
            (Scale::LotGallon { imperial, .. }, Gallon::Imperial) => imperial,
            _ => self,
        }
    }

    /// False while it speaks of a gallon without saying which.
    #[must_use]
    pub const fn is_resolved(self) -> bool {
        !matches!(self.scale(), Scale::LotGallon { .. })
    }

    /// Whether more of it is less of the thing, as with L/100 km beside mpg.
    #[must_use]
    pub const fn is_inverse(self) -> bool {
        matches!(self.scale(), Inverse(_))
    }
}
