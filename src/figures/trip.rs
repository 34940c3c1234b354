//! A trip as people write it: who goes, how long, where to, and what they ask about.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::measure::{Angle, Length, Mass, Quantity, Ratio, Speed, Temperature, Time, Voltage, VolumeRate};

/// One traveller.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// Age in years.
    pub age: u8,
    /// Weight; the lot's assumption where it is not given.
    #[serde(default, alias = "weight?")]
    pub weight: Option<Mass>,
}

/// What a night's place offers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum HookUp {
    /// Power, water and sewer.
    Full,
    /// Power and water.
    Water,
    /// Power.
    Power,
    /// Nothing.
    None,
}

impl HookUp {
    /// Whether there is 120 V.
    #[must_use]
    pub const fn has_power(self) -> bool {
        matches!(self, Self::Full | Self::Water | Self::Power)
    }

    /// Whether there is water.
    #[must_use]
    pub const fn has_water(self) -> bool {
        matches!(self, Self::Full | Self::Water)
    }
}

/// How water is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Use {
    /// As at home.
    #[default]
    Normal,
    /// With care.
    Careful,
}

/// Water of a person and day, when it is told in numbers.
pub type WaterUse = crate::measure::Volume;

/// Levels at the start, parts of full.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Start {
    /// Fresh water.
    #[serde(default, alias = "fresh?")]
    pub fresh: Option<Ratio>,
    /// Grey tanks.
    #[serde(default, alias = "grey?")]
    pub grey: Option<Ratio>,
    /// Black tank or cassette.
    #[serde(default, alias = "black?")]
    pub black: Option<Ratio>,
    /// Propane.
    #[serde(default, alias = "propane?")]
    pub propane: Option<Ratio>,
    /// Fuel.
    #[serde(default, alias = "fuel?")]
    pub fuel: Option<Ratio>,
}

/// Wind as it is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wind {
    /// Steady wind.
    #[serde(default, alias = "speed?")]
    pub speed: Option<Speed>,
    /// Gusts.
    #[serde(default, alias = "gust?")]
    pub gust: Option<Speed>,
    /// Force of the Beaufort scale.
    #[serde(default, alias = "force?")]
    pub force: Option<u8>,
    /// Whether someone is watching the awning.
    #[serde(default, alias = "watched?")]
    pub watched: Option<bool>,
    /// Whether it rains hard.
    #[serde(default, alias = "rain?")]
    pub rain: bool,
    /// Whether it is night.
    #[serde(default, alias = "night?")]
    pub night: bool,
}

/// Slope of the pitch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Slope {
    /// Nose to tail.
    pub length: Angle,
    /// Side to side.
    pub side: Angle,
}

/// What 120 V comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum SupplyAt {
    /// A post or outlet with a breaker of this current.
    Post(crate::measure::Current),
    /// The unit's own generator.
    Generator,
    /// The unit's own inverter.
    Inverter,
    /// Nothing.
    Nothing,
}

/// A load that is on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct On {
    /// Its id.
    pub load: String,
    /// Whether it has settled, as a charger on a full battery.
    #[serde(default, alias = "settled?")]
    pub settled: bool,
}

/// An extension cord.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cord {
    /// Length.
    pub length: Length,
    /// Wire size, AWG: `16`, `2/0`.
    pub gauge: String,
    /// Current; what the outlet may give for hours where it is not given.
    #[serde(default, alias = "current?")]
    pub current: Option<crate::measure::Current>,
    /// Voltage; the lot's mains where it is not given.
    #[serde(default, alias = "volts?")]
    pub volts: Option<Voltage>,
}

/// The vehicle that pulls a trailer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tow {
    /// Payload on the door sticker.
    #[serde(default, alias = "payload?")]
    pub payload: Option<Mass>,
    /// Most it may pull.
    #[serde(default, alias = "rating?")]
    pub rating: Option<Mass>,
    /// Length.
    #[serde(default, alias = "length?")]
    pub length: Option<Length>,
    /// How far the ball stands behind the bumper.
    #[serde(default, alias = "ball_mount?")]
    pub ball_mount: Option<Length>,
    /// Baggage in the tow vehicle.
    #[serde(default, alias = "bags?")]
    pub bags: Option<Mass>,
}

/// Temperatures and heights at which tires were set, and are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TireSet {
    /// Temperature when the cold pressure was set.
    pub set_at: Temperature,
    /// Temperature when it is read; the coldest of the trip where it is not given.
    #[serde(default, alias = "read_at?")]
    pub read_at: Option<Temperature>,
    /// Height when it is read; the same height where it is not given.
    #[serde(default, alias = "height?")]
    pub height: Option<Length>,
}

/// A sign over the road.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sign {
    /// It says so much.
    Says(Length),
    /// There is none.
    NoSign,
}

/// Two readings of one thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Joined<T> {
    /// At handoff.
    pub out: T,
    /// At check-in.
    pub back: T,
}

/// What was found when the unit came back.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Returned {
    /// Odometer, miles as shown.
    #[serde(default, alias = "odometer?")]
    pub odometer: Option<Joined<Decimal>>,
    /// Generator hours as shown.
    #[serde(default, alias = "generator?")]
    pub generator: Option<Joined<Decimal>>,
    /// Fuel gauge.
    #[serde(default, alias = "fuel?")]
    pub fuel: Option<Joined<Quantity>>,
    /// Propane gauge of a tank.
    #[serde(default, alias = "propane?")]
    pub propane: Option<Joined<Quantity>>,
    /// Cylinders that came back empty.
    #[serde(default, alias = "empty_cylinders?")]
    pub empty_cylinders: u16,
    /// Whether the black tank was not emptied.
    #[serde(default, alias = "black_full?")]
    pub black_full: bool,
    /// Whether the cassette was not emptied.
    #[serde(default, alias = "cassette_full?")]
    pub cassette_full: bool,
    /// Grey tanks that were not emptied.
    #[serde(default, alias = "grey_full?")]
    pub grey_full: u16,
    /// How late it came back.
    #[serde(default, alias = "late?")]
    pub late: Option<Time>,
    /// Tags of items that are missing, as often as they are.
    #[serde(default, alias = "missing?")]
    pub missing: Vec<String>,
    /// Whether it must be cleaned.
    #[serde(default, alias = "dirty?")]
    pub dirty: bool,
    /// Whether someone smoked inside.
    #[serde(default, alias = "smoked?")]
    pub smoked: bool,
    /// Whether a pet travelled that was told.
    #[serde(default, alias = "pet?")]
    pub pet: bool,
    /// Whether a pet travelled that was not told.
    #[serde(default, alias = "pet_hidden?")]
    pub pet_hidden: bool,
}

/// A trip.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Trip {
    /// Nights.
    pub nights: u16,
    /// Who travels.
    pub people: Vec<Person>,
    /// What each night's place offers; nothing where the list ends.
    #[serde(default, alias = "hook_up?")]
    pub hook_up: Vec<HookUp>,
    /// How water is used.
    #[serde(default, rename = "use", alias = "use?")]
    pub water: Use,
    /// Water of a person and day, when it is known better.
    #[serde(default, alias = "use_each?")]
    pub use_each: Option<WaterUse>,
    /// Day of leaving, as `2026-07-24`, to name days of the week.
    #[serde(default, alias = "leaves?")]
    pub leaves: Option<String>,
    /// Highest place.
    #[serde(default, alias = "highest?")]
    pub highest: Option<Length>,
    /// Coldest night.
    #[serde(default, alias = "coldest?")]
    pub coldest: Option<Temperature>,
    /// Hottest day.
    #[serde(default, alias = "hottest?")]
    pub hottest: Option<Temperature>,
    /// Relative humidity.
    #[serde(default, alias = "humid?")]
    pub humid: Option<Ratio>,
    /// Hours of full sun a day.
    #[serde(default, alias = "sun?")]
    pub sun: Option<Time>,
    /// Weight of bags, food and all else that is brought.
    #[serde(default, alias = "bags?")]
    pub bags: Option<Mass>,
    /// Levels at the start.
    #[serde(default, alias = "start?")]
    pub start: Start,
    /// Height of what is put on the roof.
    #[serde(default, alias = "roof?")]
    pub roof: Option<Length>,
    /// A sign over the road.
    #[serde(default, alias = "sign?")]
    pub sign: Option<Sign>,
    /// Wind.
    #[serde(default, alias = "wind?")]
    pub wind: Option<Wind>,
    /// Slope of the pitch.
    #[serde(default, alias = "slope?")]
    pub slope: Option<Slope>,
    /// Speed on the road; the unit's limit where it is not given.
    #[serde(default, alias = "speed?")]
    pub speed: Option<Speed>,
    /// Grade of the road, below zero downhill.
    #[serde(default, alias = "grade?")]
    pub grade: Option<Ratio>,
    /// Temperature of the water that comes in.
    #[serde(default, alias = "inlet?")]
    pub inlet: Option<Temperature>,
    /// Flow of the tap that fills the tank.
    #[serde(default, alias = "tap?")]
    pub tap: Option<VolumeRate>,
    /// Time in which the tap fills one gallon of the lot; wins over `tap`.
    #[serde(default, alias = "bucket?")]
    pub bucket: Option<Time>,
    /// Flow of the shower.
    #[serde(default, alias = "shower?")]
    pub shower: Option<VolumeRate>,
    /// What 120 V comes from.
    #[serde(default, alias = "supply?")]
    pub supply: Option<SupplyAt>,
    /// What is on.
    #[serde(default, alias = "on?")]
    pub on: Vec<On>,
    /// Extension cord.
    #[serde(default, alias = "cord?")]
    pub cord: Option<Cord>,
    /// Vehicle that pulls.
    #[serde(default, alias = "tow?")]
    pub tow: Option<Tow>,
    /// How tires were set.
    #[serde(default, alias = "tires?")]
    pub tires: Option<TireSet>,
    /// Rested voltage of the house battery.
    #[serde(default, alias = "house_volts?")]
    pub house_volts: Option<Voltage>,
    /// Charge of the house battery as its panel shows it.
    #[serde(default, alias = "house_charge?")]
    pub house_charge: Option<Ratio>,
    /// Whether the inverter is left on at night.
    #[serde(default, alias = "inverter_on?")]
    pub inverter_on: bool,
    /// Generator running a day.
    #[serde(default, alias = "generator_run?")]
    pub generator_run: Option<Time>,
    /// Driving a day.
    #[serde(default, alias = "driving?")]
    pub driving: Option<Time>,
    /// Days on which the fresh tank is filled, counted from 1.
    #[serde(default, alias = "fill?")]
    pub fill: Vec<u16>,
    /// Days on which the waste tanks are emptied, counted from 1.
    #[serde(default, alias = "empty?")]
    pub empty: Vec<u16>,
    /// Days on which propane is refilled, counted from 1.
    #[serde(default, alias = "refill?")]
    pub refill: Vec<u16>,
    /// Days on which the fuel tank is filled, counted from 1.
    #[serde(default, alias = "refuel?")]
    pub refuel: Vec<u16>,
    /// What was found at check-in.
    #[serde(default, alias = "returned?")]
    pub returned: Option<Returned>,
}
