//! Settings of the lot: the same for all its units.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::measure::{Gallon, Length, Mass, Ratio, Speed, Time, Volume};
use crate::source::At;

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
        /// Wind, steady or gusting, at which it comes in.
        wind_limit: Speed,
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
    }
    /// What a walk should not exceed.
    Limits {
        /// Reading and demonstration time of a whole walk.
        reading: Time,
        /// How often the tablet changes hands.
        hand_overs: u16,
    }
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
    /// Limits of a walk.
    pub limits: At<Limits>,
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
    /// Section that must be fitted for it to be asked; always asked when absent.
    #[serde(default)]
    pub needs: Option<At<String>>,
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
}
