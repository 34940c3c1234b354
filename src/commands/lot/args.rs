//! Arguments of `lot`.

use std::path::PathBuf;

use clap::{Args, Subcommand, ValueEnum};

use crate::commands::Places;

/// Arguments of `lot`.
#[derive(Debug, Args)]
pub struct LotArgs {
    #[arg(skip)]
    pub(in crate::commands) places: Places,
    /// What to do
    #[command(subcommand)]
    pub action: LotAction,
}

/// What to do with a lot folder.
#[derive(Debug, Subcommand)]
pub enum LotAction {
    /// Write a lot folder to start one's own from
    #[command(after_help = "Example:\n  sendoff lot new ~/lot --name 'Our Lot'")]
    New {
        /// Folder to write; it must be empty or not be there
        #[arg(value_name = "DIR")]
        dir: PathBuf,
        /// Name of the lot, as renters see it
        #[arg(long, value_name = "NAME", default_value = "Our Lot")]
        name: String,
    },
    /// Write the data sheet of a unit; what you do not give is left open until somebody reads it from a plate
    #[command(after_help = "\
Examples:
  sendoff lot add-unit --lot ~/lot --id harrier --kind class-a --fuel diesel \\
    --length '34 ft' --width '101 in' --height '12 ft 4 in' --cord '50 A' --slide-outs 2
  sendoff lot add-unit --lot ~/lot --id harrier-2 --copy harrier

Measures are written with their unit: '34 ft', '12 ft 4 in', '101 in', '50 A', '8000 W', '10.4 m'.")]
    AddUnit(Box<UnitArgs>),
}

/// Arguments of `lot add-unit`.
#[derive(Debug, Args)]
pub struct UnitArgs {
    /// Short name of the unit: small letters, digits and dashes
    #[arg(long, value_name = "ID")]
    pub id: String,
    /// Start from the data sheet of another unit: one of this lot, or wren, plover, heron
    #[arg(long, value_name = "UNIT", conflicts_with_all = ["kind", "length", "width", "height"])]
    pub copy: Option<String>,
    /// Kind of vehicle
    #[arg(long, value_enum, required_unless_present = "copy")]
    pub kind: Option<Kind>,
    /// Overall length, tongue and bumpers included, as '34 ft'
    #[arg(long, value_name = "LENGTH", required_unless_present = "copy", allow_hyphen_values = true)]
    pub length: Option<String>,
    /// Width of the body without mirrors, as '101 in'
    #[arg(long, value_name = "WIDTH", required_unless_present = "copy", allow_hyphen_values = true)]
    pub width: Option<String>,
    /// Height with everything on the roof, as '12 ft 4 in'
    #[arg(long, value_name = "HEIGHT", required_unless_present = "copy", allow_hyphen_values = true)]
    pub height: Option<String>,
    /// Name as renters see it; made from the id when absent
    #[arg(long, value_name = "NAME")]
    pub name: Option<String>,
    /// Code painted on it; made from the id when absent
    #[arg(long, value_name = "CODE")]
    pub code: Option<String>,
    /// Model year
    #[arg(long, value_name = "YEAR", value_parser = count)]
    pub year: Option<u16>,
    /// Side of the entry door, nose up
    #[arg(long, value_enum, default_value_t = Curb::Right)]
    pub curb: Curb,
    #[command(flatten)]
    pub fitted: FittedArgs,
}

/// Equipment: what is not named is not fitted.
#[derive(Debug, Args)]
pub struct FittedArgs {
    /// What the engine burns; a motorhome needs it
    #[arg(long, value_enum)]
    pub fuel: Option<Fuel>,
    /// Seats with belts
    #[arg(long, value_name = "NUMBER", value_parser = count)]
    pub belts: Option<u16>,
    /// Sleeping places
    #[arg(long, value_name = "NUMBER", value_parser = count)]
    pub beds: Option<u16>,
    /// Entry step
    #[arg(long, value_enum)]
    pub step: Option<Step>,
    /// House battery
    #[arg(long, value_enum, default_value_t = Battery::LeadAcid)]
    pub battery: Battery,
    /// Height of the lowest exit window above the ground, as '60 in'
    #[arg(long, value_name = "HEIGHT", allow_hyphen_values = true)]
    pub sill: Option<String>,
    /// Generator on the engine's tank, with its rated power, as '8000 W'
    #[arg(long, value_name = "POWER", allow_hyphen_values = true)]
    pub generator: Option<String>,
    /// Shore cord, as '30 A' or '50 A'
    #[arg(long, value_name = "CURRENT", allow_hyphen_values = true)]
    pub cord: Option<String>,
    /// Inverter with its power, as '2000 W'
    #[arg(long, value_name = "POWER", allow_hyphen_values = true)]
    pub inverter: Option<String>,
    /// Solar panels with their power together, as '400 W'
    #[arg(long, value_name = "POWER", allow_hyphen_values = true)]
    pub solar: Option<String>,
    /// Number of slide-outs
    #[arg(long, value_name = "NUMBER", value_parser = count, default_value_t = 0)]
    pub slide_outs: u16,
    /// Propane: a tank in the frame, or cylinders
    #[arg(long, value_enum)]
    pub propane: Option<Propane>,
    /// Refrigerator
    #[arg(long, value_enum)]
    pub fridge: Option<Fridge>,
    /// Water heater
    #[arg(long, value_enum)]
    pub water_heater: Option<Heater>,
    /// Heat
    #[arg(long, value_enum)]
    pub heat: Option<Heat>,
    /// Cooktop
    #[arg(long, value_enum)]
    pub cook: Option<Cook>,
    /// Toilet: a black tank, or a cassette
    #[arg(long, value_enum)]
    pub toilet: Option<Toilet>,
    /// Number of roof air conditioners
    #[arg(long, value_name = "NUMBER", value_parser = count, default_value_t = 0)]
    pub roof_air: u16,
    /// Awning
    #[arg(long, value_enum)]
    pub awning: Option<Awning>,
}

/// A whole number.
fn count(text: &str) -> Result<u16, String> {
    text.trim().parse().map_err(|_| "write a whole number, as 2".to_owned())
}

/// Declares sets of choices and how a data sheet spells them.
macro_rules! choices {
    ($($(#[$meta:meta])* $name:ident { $($variant:ident = $ron:literal,)* })*) => {$(
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
        pub enum $name { $(#[doc = concat!("`", $ron, "` in the data sheet.")] $variant,)* }

        impl $name {
            /// As a data sheet spells it.
            #[must_use]
            pub fn ron(self) -> &'static str {
                match self { $(Self::$variant => $ron,)* }
            }
        }
    )*};
}

choices! {
    /// Kind of vehicle.
    Kind { ClassA = "ClassA", ClassB = "ClassB", ClassC = "ClassC", Trailer = "Trailer", }
    /// Side, nose up.
    Curb { Right = "Right", Left = "Left", }
    /// What the engine burns.
    Fuel { Gasoline = "Gasoline", Diesel = "Diesel", }
    /// Entry step.
    Step { Electric = "Electric", Fold = "Fold", Fixed = "Fixed", }
    /// House battery.
    Battery { LeadAcid = "LeadAcid", Lithium = "Lithium", }
    /// Propane.
    Propane { Frame = "Frame", Cylinders = "Cylinders", }
    /// Refrigerator.
    Fridge { Absorption = "Absorption", Compressor = "Compressor", Residential = "Residential", }
    /// Water heater.
    Heater { Tank = "Tank", OnDemand = "OnDemand", }
    /// Heat.
    Heat { Furnace = "Furnace", Diesel = "DieselHeater", }
    /// Cooktop.
    Cook { Propane = "Propane", Induction = "Induction", }
    /// Toilet.
    Toilet { Black = "Black", Cassette = "Cassette", }
    /// Awning.
    Awning { Electric = "Electric", Crank = "Crank", }
}
