//! Settings of the lot: the same for all its units.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::measure::{
    Acceleration, Density, Energy, Gallon, Length, Mass, Ratio, SpecificEnergy, Speed, Temperature, Time,
    Voltage, Volume, VolumeRate,
};
use crate::source::At;

use super::condition::When;
use super::kinds::TaxOn;
use super::section::sections;

sections! {
    /// Phone numbers, printed as they stand.
    Phones {
        /// By day.
        day: String,
        /// Road help at any hour.
        road: String,
        /// Emergency number of the region.
        emergency: String,
    }
    /// Night quiet, 24 h local time as `22:00`.
    Quiet {
        /// From.
        from: String,
        /// To.
        to: String,
    }
    /// The yard.
    Site {
        /// Height above the sea.
        elevation: Length,
    }
    /// Awning rule of the lot.
    AwningRule {
        /// Wind, steady or gusting, at which it comes in; common practice where not given.
        #[serde(alias = "wind_limit?")]
        wind_limit: Option<Speed>,
    }
    /// What is assumed of people when the renter says nothing else.
    People {
        /// Weight of a person.
        weight: Mass,
        /// Water a person uses a day.
        use_normal: Volume,
        /// Water a careful person uses a day.
        use_careful: Volume,
        /// Part of it that flushes into a black tank.
        flush_tank: Volume,
        /// Part of it that flushes into a cassette.
        flush_cassette: Volume,
        /// What else goes into the toilet tank a day.
        waste: Volume,
    }
    /// Tire rules of the lot.
    TireRule {
        /// Part below the cold pressure at which air is added before driving.
        add_below: Ratio,
        /// Part below the cold pressure at which the tire counts as flat.
        flat_below: Ratio,
    }
    /// Charges that are the same for all units.
    Charges {
        /// Time after the due hour that costs nothing.
        late_grace: Time,
        /// Tax on services.
        tax: Ratio,
        /// What tax is reckoned on; the bill where not given.
        #[serde(alias = "tax_on?")]
        tax_on: Option<TaxOn>,
    }
    /// What figures assume where nobody says otherwise; each is shown as an assumption.
    Assumed {
        /// Weight of water by volume.
        water: Density,
        /// Fresh water at the start, part of the tank.
        start_fresh: Ratio,
        /// Propane at the start, part of full.
        start_propane: Ratio,
        /// Waste in each tank at the start, part of it.
        start_waste: Ratio,
        /// Flow of a tap that fills the tank.
        tap_flow: VolumeRate,
        /// Flow of a shower.
        shower_flow: VolumeRate,
        /// Temperature of the water that comes in.
        inlet: Temperature,
        /// Heat of burned propane by weight.
        propane_heat: SpecificEnergy,
        /// How long a night is heated.
        heat_time: Time,
        /// Part of that time the furnace burns.
        heat_duty: Ratio,
        /// The same in frost.
        heat_duty_cold: Ratio,
        /// How long a tank heater burns a day.
        heater_tank_time: Time,
        /// How long an on-demand heater burns a day.
        heater_flow_time: Time,
        /// Part of its gas that a tank heater turns into warm water.
        heater_tank_part: Ratio,
        /// The same of an on-demand heater.
        heater_flow_part: Ratio,
        /// Gas burned for cooking a day.
        cooking: Energy,
        /// How long an induction zone is on a day.
        cooking_time: Time,
        /// At this temperature and below it counts as frost.
        cold_at: Temperature,
        /// Part of its capacity that a lead-acid battery keeps in frost.
        cold_part: Ratio,
        /// Voltage at which amp-hours are reckoned into watt-hours.
        battery_volts: Voltage,
        /// Hours of full sun.
        sun: Time,
        /// Part of the panels' power that reaches the battery.
        solar_part: Ratio,
        /// Part of the charger's power that reaches the battery.
        charger_part: Ratio,
        /// Part of a breaker that may be drawn for three hours or more.
        long_part: Ratio,
        /// Part of the inverter's power that is planned with.
        inverter_part: Ratio,
        /// Most voltage drop of a cord.
        drop_most: Ratio,
        /// Length of rig for each second of gap.
        gap_per: Length,
        /// Speed above which a second is added.
        gap_fast: Speed,
        /// Time before the brakes take hold.
        reaction: Time,
        /// Braking that can be relied on.
        braking: Acceleration,
    }
    /// What a walk should not exceed.
    Limits {
        /// Reading and demonstration time of a whole walk.
        reading: Time,
        /// How often the tablet changes hands.
        hand_overs: u16,
        /// Highest reading grade of texts for renters; 8 where not given.
        #[serde(alias = "grade?")]
        grade: Option<u16>,
    }
}

/// When nobody touches the tablet.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Idle {
    /// After this it dims.
    pub dim: Time,
    /// After this a cover locks it.
    pub lock: Time,
}

/// How sums are rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum MoneyRounding {
    /// Half away from zero, once per line and once for the tax.
    HalfUp,
    /// Half to the even cent.
    HalfEven,
}

/// The lot file.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lot {
    /// Message with the company's name.
    pub name: At<String>,
    /// Message with the place.
    pub place: At<String>,
    /// POSIX time zone, as `MST7MDT,M3.2.0,M11.1.0`.
    pub zone: At<String>,
    /// Which gallon `gal` means.
    pub gallon: Gallon,
    /// Currency code of ISO 4217.
    pub currency: String,
    /// Rounding of sums.
    pub rounding: MoneyRounding,
    /// Measures offered, `us`, `uk`, `metric`; the first is the usual one.
    pub measures: Vec<String>,
    /// Languages offered; the first is the usual one.
    pub languages: Vec<String>,
    /// Youngest age of a driver.
    pub youngest_driver: u8,
    /// Phones.
    pub phone: At<Phones>,
    /// Night quiet.
    pub quiet: At<Quiet>,
    /// Yard.
    pub site: At<Site>,
    /// Awning rule.
    pub awning: At<AwningRule>,
    /// Assumptions about people.
    pub people: At<People>,
    /// Tire rules.
    pub tires: At<TireRule>,
    /// Charges.
    pub charges: At<Charges>,
    /// What figures assume.
    pub assumed: At<Assumed>,
    /// Limits of a walk.
    pub limits: At<Limits>,
    /// When a tablet dims and locks; after 2 and 10 minutes where not given.
    #[serde(default, alias = "idle?")]
    pub idle: Option<At<Idle>>,
    /// Constants of the trade that texts use, as `limit.<name>`.
    pub constants: BTreeMap<String, At<crate::measure::Quantity>>,
    /// Lines of the leaving check, with their conditions.
    pub leaving: Vec<At<LeavingLine>>,
}

/// A line of the leaving check.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LeavingLine {
    /// Id; its words are `leaving-<id>`.
    pub id: At<String>,
    /// Equipment it needs; always asked when absent.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
}

/// Adds names and kinds of the facts a lot gives.
pub(super) fn catalogue(put: &mut dyn FnMut(String, super::facts::FactKind)) {
    use super::section::Section as _;
    Phones::catalogue("phone", put);
    Quiet::catalogue("quiet", put);
    Site::catalogue("site", put);
    AwningRule::catalogue("awning", put);
    People::catalogue("people", put);
    TireRule::catalogue("tires", put);
    Charges::catalogue("charges", put);
    Assumed::catalogue("assumed", put);
}
