//! Sections of the data sheet that are terms of the lot: driving limits, fees and allowances of one unit.

use crate::measure::{Length, Money, Speed, Time};

use super::section::{Fitted, sections};

sections! {
    /// Driving limits of the lot for this unit.
    Driving {
        /// Most speed.
        speed: Speed,
        /// Steady wind above which it stays parked.
        wind: Speed,
        /// The same for gusts.
        gust: Speed,
        /// Length that counts for the gap to the car ahead.
        follow: Length,
        /// Whether the renter may tow with it; `NotFitted` where it is towed itself.
        towing: Fitted<bool>,
    }
    /// Fees and allowances.
    Fees {
        /// A night.
        night: Money,
        /// Deposit.
        deposit: Money,
        /// Miles a night that cost nothing more.
        miles_night: Fitted<u16>,
        /// Each mile more.
        mile: Fitted<Money>,
        /// Generator hours a night that cost nothing more.
        generator_night: Fitted<Time>,
        /// Each generator hour more.
        generator_hour: Fitted<Money>,
        /// Fuel the lot fills in, each gallon.
        fuel_gallon: Fitted<Money>,
        /// Service charge when fuel is missing.
        fuel_service: Fitted<Money>,
        /// Each missing quarter of propane.
        propane_quarter: Fitted<Money>,
        /// Each empty propane cylinder.
        propane_cylinder: Fitted<Money>,
        /// Black tank not emptied.
        black: Fitted<Money>,
        /// Cassette not emptied.
        cassette: Fitted<Money>,
        /// Each grey tank not emptied.
        grey: Money,
        /// Cleaning.
        clean: Money,
        /// Cleaning of the outdoor griddle.
        griddle: Fitted<Money>,
        /// Smoking inside.
        smoke: Money,
        /// A pet that was told.
        pet: Fitted<Money>,
        /// A pet that was not told.
        pet_hidden: Money,
        /// Each started hour late.
        late_hour: Money,
    }
}
