//! Quantities that carry their measure: parsed as they are authored, typed by dimension, converted with exact
//! factors, rounded in the safe direction.
//!
//! A data sheet says `"40 gal"`, `"11 ft 3 in"`, `"1/4"`. [`Quantity`] keeps what was written, [`Of`] holds a
//! quantity of one dimension, [`rounding`] is the one door through which a computed value becomes a number that
//! is shown, and [`System`] says in which measures a reader sees it.

pub mod dims;
mod money;
mod parse;
mod quantity;
pub mod rounding;
mod spelling;
mod system;
mod table;
#[cfg(test)]
mod tests;
mod typed;

pub use money::{Money, MoneyFault};
pub use parse::ParseFault;
pub(crate) use quantity::decimal_to_f64;
pub use quantity::{Number, Quantity};
pub use rounding::{Rounding, rounded, rounded_decimal, rounded_to_step};
pub use system::{Shown, System, shown_in, shown_with_places};
pub use table::{Dimension, Gallon, Measure};
pub use typed::{Dim, Of};

/// A length or a distance.
pub type Length = Of<dims::Length>;
/// A mass; the sheets say weight.
pub type Mass = Of<dims::Mass>;
/// A volume of liquid or of space.
pub type Volume = Of<dims::Volume>;
/// A pressure.
pub type Pressure = Of<dims::Pressure>;
/// A speed, of a vehicle or of the wind.
pub type Speed = Of<dims::Speed>;
/// A power, electric or of burned gas.
pub type Power = Of<dims::Power>;
/// An electric current.
pub type Current = Of<dims::Current>;
/// A voltage.
pub type Voltage = Of<dims::Voltage>;
/// An electric charge, as the capacity of a battery.
pub type Charge = Of<dims::Charge>;
/// An amount of energy.
pub type Energy = Of<dims::Energy>;
/// A temperature; never a difference of two.
pub type Temperature = Of<dims::Temperature>;
/// A length of time.
pub type Time = Of<dims::Time>;
/// A share of a whole: `1/4`, `35 %`, `1`.
pub type Ratio = Of<dims::Ratio>;
/// A volume for each length of time.
pub type VolumeRate = Of<dims::VolumeRate>;
/// A torque.
pub type Torque = Of<dims::Torque>;
/// An angle.
pub type Angle = Of<dims::Angle>;
/// Distance for each volume of fuel.
pub type Economy = Of<dims::Economy>;
/// Mass for each volume.
pub type Density = Of<dims::Density>;
/// Energy for each mass.
pub type SpecificEnergy = Of<dims::SpecificEnergy>;
/// A change of speed for each length of time.
pub type Acceleration = Of<dims::Acceleration>;
