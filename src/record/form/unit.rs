//! The unit and the lot as they were.

use serde::{Deserialize, Serialize};

use super::{Gallon, MoneyRounding, Origin};
use crate::measure::Money;

/// What a walk should not exceed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Limits {
    /// Reading and demonstration time of a whole walk, with its measure.
    pub reading: String,
    /// How often the tablet changes hands.
    pub hand_overs: u16,
}

/// The lot's settings that are no facts of a unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Lot {
    /// The company.
    pub name: String,
    /// The place.
    pub place: String,
    /// POSIX time zone.
    pub zone: String,
    /// Which gallon `gal` means.
    pub gallon: Gallon,
    /// Currency of every sum of the record (ISO 4217).
    pub currency: String,
    /// Rounding of sums.
    pub rounding: MoneyRounding,
    /// Measures offered.
    pub measures: Vec<String>,
    /// Languages offered.
    pub languages: Vec<String>,
    /// Youngest age of a driver.
    pub youngest_driver: u8,
    /// Limits of a walk.
    pub limits: Limits,
}

/// A named spot of the unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Place {
    /// Id.
    pub id: String,
    /// Station.
    pub station: String,
    /// From the middle of the nose: right with the nose up, then back, with their measures.
    pub at: Option<[String; 2]>,
    /// Where it is, in words, in the reader's language.
    pub says: String,
}

/// The tires of an axle.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Axle {
    /// Which axle.
    pub at: String,
    /// Cold pressure with its measure.
    pub cold: String,
    /// Number of wheels.
    pub wheels: u16,
}

/// Furniture on the plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Room {
    /// What it is.
    pub kind: String,
    /// Front corner, as the point of a place.
    pub from: [String; 2],
    /// Rear corner.
    pub to: [String; 2],
}

/// A slide-out room.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slide {
    /// Side it moves out to, nose up.
    pub side: String,
    /// Front edge from the nose.
    pub from: String,
    /// Rear edge from the nose.
    pub to: String,
    /// How far it moves out.
    pub reach: String,
}

/// A seat for driving.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Seat {
    /// Id.
    pub id: String,
    /// Whether it has a belt.
    pub belt: bool,
    /// Which way it faces.
    pub faces: String,
    /// Whether a child seat's top strap can be hooked in.
    pub tether: bool,
    /// Whether an airbag is in front of it.
    pub airbag: bool,
}

/// Something that runs on 120 V.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Load {
    /// Id.
    pub id: String,
    /// Power it draws.
    pub draw: String,
    /// Power once it has settled.
    pub settled: Option<String>,
    /// Whether it may run three hours or more.
    pub long: bool,
    /// Leg of a 120/240 V cord.
    pub leg: Option<String>,
    /// Whether it hangs on the outlets branch.
    pub branch: bool,
    /// Power it draws for a moment as it starts.
    pub start: Option<String>,
    /// Supplies it can run from; all where not given.
    pub from: Option<Vec<String>>,
    /// What it can run on instead.
    pub instead: Option<String>,
}

/// Something the house battery feeds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NightLoad {
    /// Id.
    pub id: String,
    /// Current.
    pub draw: String,
    /// Part of the time it runs.
    pub duty: Option<String>,
    /// The same in the cold.
    pub cold_duty: Option<String>,
    /// How long.
    pub hours: String,
}

/// Power a generator loses in the heat.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct HeatLoss {
    /// Temperature up to which nothing is lost.
    pub above: String,
    /// Part lost for each step.
    pub loss: String,
    /// Size of a step.
    pub per: String,
}

/// A row of a table of a generator's power.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DerateRow {
    /// Height above the sea.
    pub at: String,
    /// Part of the rated power that is left.
    pub part: String,
}

/// How a generator loses power with height and heat.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "rule", rename_all = "kebab-case")]
pub enum Derate {
    /// So much less for each part of a height.
    Linear {
        /// Height up to which nothing is lost.
        above: String,
        /// Part of the rated power lost.
        loss: String,
        /// For each of these.
        per: String,
        /// Loss in the heat.
        heat: Option<HeatLoss>,
    },
    /// So much less for each whole step of height.
    Step {
        /// Height up to which nothing is lost.
        above: String,
        /// Part of the rated power lost.
        loss: String,
        /// For each whole one of these.
        per: String,
        /// Loss in the heat.
        heat: Option<HeatLoss>,
    },
    /// A table by height.
    Table {
        /// Rows, lowest first.
        rows: Vec<DerateRow>,
        /// What counts between two rows: `reached`, `next` or `straight`.
        between: String,
        /// Loss in the heat.
        heat: Option<HeatLoss>,
    },
    /// A table by height and temperature.
    Grid {
        /// Heights of the rows, lowest first.
        heights: Vec<String>,
        /// Temperatures of the columns, coldest first.
        temperatures: Vec<String>,
        /// Part of the rated power left, a list for each height.
        parts: Vec<Vec<String>>,
        /// Humidity and the part it takes away, driest first.
        humid: Vec<[String; 2]>,
    },
    /// A rule a newer program knows.
    #[serde(other)]
    Unknown,
}

/// What is special about this unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "change", rename_all = "kebab-case")]
pub enum Change {
    /// A step is left out.
    Drop {
        /// Step id.
        step: String,
        /// Why, in the reader's language.
        says: String,
    },
    /// Something more is shown in a step.
    Add {
        /// Step id.
        step: String,
        /// What, in the reader's language.
        says: String,
    },
    /// A line of a step is said otherwise.
    Replace {
        /// Key of the line.
        line: String,
        /// What is said.
        says: String,
    },
    /// A step has another picture.
    Picture {
        /// Step id.
        step: String,
        /// Picture.
        picture: String,
    },
    /// A remark is added to a step.
    Note {
        /// Step id.
        step: String,
        /// The remark.
        says: String,
    },
    /// Equipment is out of order.
    Fault {
        /// Topic id.
        topic: String,
        /// What is said instead.
        says: String,
    },
    /// Something a newer program knows.
    #[serde(other)]
    Unknown,
}

/// The unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Unit {
    /// Id.
    pub id: String,
    /// Code painted on it.
    pub code: String,
    /// Name in the reader's language.
    pub name: String,
    /// Kind of vehicle.
    pub kind: String,
    /// Model year.
    pub year: u16,
    /// Which side is the curb side, nose up: `left` or `right`.
    pub curb: String,
    /// Places by id.
    pub places: Vec<Place>,
    /// Places of the ways out.
    pub exits: Vec<String>,
    /// Tires by axle.
    pub axles: Vec<Axle>,
    /// Furniture.
    pub rooms: Vec<Room>,
    /// Slide-outs.
    pub slides: Vec<Slide>,
    /// Seats.
    pub seats: Vec<Seat>,
    /// 120 V loads.
    pub loads: Vec<Load>,
    /// 12 V loads of a night.
    pub night: Vec<NightLoad>,
    /// 12 V loads of the day, where they are known.
    pub day: Option<Vec<NightLoad>>,
    /// How the generator loses power.
    pub derate: Option<Derate>,
    /// What is special.
    pub changes: Vec<Change>,
    /// Facts and lists for which the sheet gave only a stand-in: nobody had read them yet.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub not_known: Vec<String>,
}

/// A fact.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Fact {
    /// Name: section and field.
    pub name: String,
    /// Where it came from.
    pub from: Origin,
    /// Its value.
    #[serde(flatten)]
    pub value: FactValue,
}

/// Value of a fact.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum FactValue {
    /// A quantity.
    Quantity {
        /// As authored, with its measure; which gallon is meant is written out.
        value: String,
        /// Symbol of the measure; empty for a plain number or fraction.
        measure: String,
    },
    /// A whole number.
    Count {
        /// The number.
        value: u16,
    },
    /// A word.
    Word {
        /// The word.
        value: String,
    },
    /// A code printed as it stands.
    Code {
        /// The code.
        value: String,
    },
    /// Yes or no.
    Flag {
        /// Yes.
        value: bool,
    },
    /// A sum in the lot's currency.
    Money {
        /// The sum.
        value: Money,
    },
    /// Several.
    List {
        /// In order.
        values: Vec<Self>,
    },
    /// The unit does not have it.
    NotFitted,
    /// A kind a newer program knows.
    #[serde(other)]
    Unknown,
}
