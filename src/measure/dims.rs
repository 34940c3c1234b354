//! One marker for each dimension, which ties it to the type of `uom` that computes with it.

use uom::si::{self, f64 as typed};

use super::{Dim, Dimension};

macro_rules! dims {
    ($($(#[$doc:meta])* $marker:ident = $si:ident, $module:ident :: $base:ident;)+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $marker {}

        impl Dim for $marker {
            const DIMENSION: Dimension = Dimension::$marker;
            type Si = typed::$si;

            fn of_base(value: f64) -> Self::Si {
                typed::$si::new::<si::$module::$base>(value)
            }

            fn base(value: Self::Si) -> f64 {
                value.get::<si::$module::$base>()
            }
        }
    )+};
}

dims! {
    /// Marks lengths and distances.
    Length = Length, length::meter;
    /// Marks masses.
    Mass = Mass, mass::kilogram;
    /// Marks volumes.
    Volume = Volume, volume::cubic_meter;
    /// Marks pressures.
    Pressure = Pressure, pressure::pascal;
    /// Marks speeds.
    Speed = Velocity, velocity::meter_per_second;
    /// Marks powers.
    Power = Power, power::watt;
    /// Marks electric currents.
    Current = ElectricCurrent, electric_current::ampere;
    /// Marks voltages.
    Voltage = ElectricPotential, electric_potential::volt;
    /// Marks electric charges.
    Charge = ElectricCharge, electric_charge::coulomb;
    /// Marks energies.
    Energy = Energy, energy::joule;
    /// Marks temperatures.
    Temperature = ThermodynamicTemperature, thermodynamic_temperature::kelvin;
    /// Marks times.
    Time = Time, time::second;
    /// Marks shares of a whole.
    Ratio = Ratio, ratio::ratio;
    /// Marks flows.
    VolumeRate = VolumeRate, volume_rate::cubic_meter_per_second;
    /// Marks torques.
    Torque = Torque, torque::newton_meter;
    /// Marks angles.
    Angle = Angle, angle::radian;
    /// Marks fuel economies: meters per cubic meter, which is per square meter.
    Economy = ArealNumberDensity, areal_number_density::per_square_meter;
    /// Marks densities.
    Density = MassDensity, mass_density::kilogram_per_cubic_meter;
    /// Marks energies by mass.
    SpecificEnergy = AvailableEnergy, available_energy::joule_per_kilogram;
    /// Marks accelerations.
    Acceleration = Acceleration, acceleration::meter_per_second_squared;
}
