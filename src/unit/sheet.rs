//! The data sheet of a unit as people write it.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::measure::{Current, Length, Mass, Money, Power, Pressure, Ratio, Time};
use crate::source::At;

use super::equipment::{
    Awning, Berths, Charger, Cook, DieselHeater, Door, Engine, EngineCharger, EntryStep, Fridge, Frost,
    Furnace, Generator, Hitch, House, Inverter, OutdoorKitchen, OutsideOutlet, Propane, Roof, RoofAir,
    Safety, Shore, Size, Solar, Waste, Water, WaterHeater, Weight, Wheels,
};
use super::kinds::{AxleAt, Faces, Instead, Leg, RoomKind, Side, Supply, UnitKind};
use super::section::Fitted;
use super::station::Station;
use super::terms::{Driving, Fees};

/// A named spot of the unit.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlaceEntry {
    /// Region.
    pub station: Station,
    /// Point from the middle of the body's nose: right with the nose up, then back; a tongue lies ahead of it, below
    /// zero. Absent at the desk or on the road.
    #[serde(default, alias = "at?")]
    pub at: Option<(Length, Length)>,
    /// Message that says where it is, when `place-<id>` does not fit this unit.
    #[serde(default, alias = "words?")]
    pub words: Option<At<String>>,
}

/// A reference to a place of the same sheet.
pub type PlaceRef = At<String>;

/// Furniture on the plan: a rectangle from its front corner to its rear corner.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Room {
    /// What it is.
    pub kind: RoomKind,
    /// Front corner: right of the middle, then back from the nose.
    pub from: (Length, Length),
    /// Rear corner.
    pub to: (Length, Length),
}

/// A slide-out room.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Slide {
    /// Side it moves out to.
    pub side: Side,
    /// Front edge from the nose.
    pub from: Length,
    /// Rear edge from the nose.
    pub to: Length,
    /// How far it moves out.
    pub reach: Length,
}

/// A seat for driving.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seat {
    /// Id.
    pub id: String,
    /// Whether it has a belt.
    pub belt: bool,
    /// Which way it faces.
    pub faces: Faces,
    /// Whether a child seat's top strap can be hooked in.
    pub tether: bool,
    /// Whether an airbag is in front of it.
    pub airbag: bool,
    /// Its middle, as points of places are given; the plan shows no seat without one.
    #[serde(default, alias = "at?")]
    pub at: Option<(Length, Length)>,
}

/// The tires of an axle.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Axle {
    /// Which axle.
    pub at: AxleAt,
    /// Cold pressure.
    pub cold: Pressure,
    /// Number of wheels.
    pub wheels: u16,
}

/// A way out in a fire.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exit {
    /// Place of the exit.
    pub place: PlaceRef,
    /// Message that names it, when `exit-<place>` does not fit this unit.
    #[serde(default, alias = "words?")]
    pub words: Option<At<String>>,
}

impl Exit {
    /// Key of the message that names it.
    #[must_use]
    pub fn key(&self) -> String {
        self.words.as_ref().map_or_else(|| format!("exit-{}", self.place.value), |w| w.value.clone())
    }
}

/// Something that runs on 120 V.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Load {
    /// Id; its words are `load-<id>`.
    pub id: At<String>,
    /// Power it draws.
    pub draw: Power,
    /// Power once it has settled.
    #[serde(default, alias = "settled?")]
    pub settled: Option<Power>,
    /// Whether it may run three hours or more.
    #[serde(default, alias = "long?")]
    pub long: bool,
    /// Leg of a 120/240 V cord.
    #[serde(default, alias = "leg?")]
    pub leg: Option<Leg>,
    /// Whether it hangs on the outlets branch.
    #[serde(default, alias = "branch?")]
    pub branch: bool,
    /// Power it draws for a moment as it starts, where it is known.
    #[serde(default, alias = "start?")]
    pub start: Option<Power>,
    /// Supplies it can run from; all where not given.
    #[serde(default, alias = "from?")]
    pub from: Option<Vec<Supply>>,
    /// What it can run on instead of 120 V.
    #[serde(default, alias = "instead?")]
    pub instead: Option<Instead>,
}

/// Something the house battery feeds at night.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NightLoad {
    /// Id; its words are `load-<id>`.
    pub id: At<String>,
    /// Current.
    pub draw: Current,
    /// Part of the time it runs.
    #[serde(default, alias = "duty?")]
    pub duty: Option<Ratio>,
    /// The same in the cold.
    #[serde(default, alias = "cold_duty?")]
    pub cold_duty: Option<Ratio>,
    /// How long.
    pub hours: Time,
}

/// A loaned item.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KitLine {
    /// Tag.
    pub tag: At<String>,
    /// Item; its words are `item-<item>`.
    pub item: At<String>,
    /// How many.
    pub count: u16,
    /// Replacement price of each.
    pub price: Money,
    /// Weight of all together.
    pub weight: Mass,
    /// Whether it goes on the vehicle that pulls, and not in the unit.
    #[serde(default, alias = "on_tow?")]
    pub on_tow: bool,
}

/// What is special about this unit.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Change {
    /// A step is left out.
    Drop {
        /// Step id.
        step: At<String>,
        /// Message that says why.
        reason: At<String>,
    },
    /// Something is shown in a step that other units do not have.
    Add {
        /// Step id.
        step: At<String>,
        /// Message.
        words: At<String>,
    },
    /// A line of a step is said otherwise on this unit.
    Replace {
        /// Key of the line, as `show-awning-tilt`.
        line: At<String>,
        /// Message.
        words: At<String>,
    },
    /// A step has another picture on this unit.
    Picture {
        /// Step id.
        step: At<String>,
        /// Picture.
        picture: At<String>,
    },
    /// A remark is added to a step.
    Note {
        /// Step id.
        step: At<String>,
        /// Message.
        words: At<String>,
    },
    /// Equipment is out of order: the message replaces what staff show in every step of the topic.
    Fault {
        /// Topic id.
        topic: At<String>,
        /// Message.
        words: At<String>,
    },
}

/// The data sheet of one unit.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// Id of the unit.
    pub id: At<String>,
    /// Code painted on it.
    pub code: String,
    /// Kind of vehicle.
    pub kind: UnitKind,
    /// Model year.
    pub year: u16,
    /// Which side is the curb side, nose up.
    pub curb: Side,
    /// Outer measures.
    pub size: At<Size>,
    /// Roof.
    pub roof: At<Roof>,
    /// Weights.
    pub weight: At<Weight>,
    /// People.
    pub berths: At<Berths>,
    /// Entry door.
    pub door: At<Door>,
    /// Entry step.
    pub step: At<Fitted<EntryStep>>,
    /// Alarms, extinguishers, exits.
    pub safety: At<Safety>,
    /// Awning.
    pub awning: At<Fitted<Awning>>,
    /// Wheels.
    pub wheels: At<Wheels>,
    /// Engine.
    pub engine: At<Fitted<Engine>>,
    /// Generator.
    pub generator: At<Fitted<Generator>>,
    /// House battery.
    pub house: At<House>,
    /// Charger from 120 V.
    pub charger: At<Fitted<Charger>>,
    /// Charger from the engine.
    pub engine_charger: At<Fitted<EngineCharger>>,
    /// Solar panels.
    pub solar: At<Fitted<Solar>>,
    /// Inverter.
    pub inverter: At<Fitted<Inverter>>,
    /// Shore power.
    pub shore: At<Fitted<Shore>>,
    /// Outlet outside.
    pub outside_outlet: At<Fitted<OutsideOutlet>>,
    /// Kitchen outside.
    pub outdoor_kitchen: At<Fitted<OutdoorKitchen>>,
    /// Roof air conditioner.
    pub roof_air: At<Fitted<RoofAir>>,
    /// Propane.
    pub propane: At<Fitted<Propane>>,
    /// Furnace.
    pub furnace: At<Fitted<Furnace>>,
    /// Diesel heater.
    pub diesel_heater: At<Fitted<DieselHeater>>,
    /// Water heater.
    pub water_heater: At<Fitted<WaterHeater>>,
    /// Refrigerator.
    pub fridge: At<Fitted<Fridge>>,
    /// Cooktop.
    pub cook: At<Fitted<Cook>>,
    /// Water.
    pub water: At<Water>,
    /// Waste.
    pub waste: At<Waste>,
    /// Frost.
    pub frost: At<Frost>,
    /// Coupling of a trailer.
    pub hitch: At<Fitted<Hitch>>,
    /// Driving limits.
    pub driving: At<Driving>,
    /// Fees.
    pub fees: At<Fees>,
    /// Places by id.
    pub places: BTreeMap<String, At<PlaceEntry>>,
    /// Ways out.
    pub exits: Vec<Exit>,
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
    /// Loads of a night.
    pub night: Vec<NightLoad>,
    /// 12 V loads of the day, where they are known.
    #[serde(default, alias = "day?")]
    pub day: Option<Vec<NightLoad>>,
    /// Loaned items.
    pub kit: Vec<KitLine>,
    /// What is special.
    pub changes: Vec<At<Change>>,
    /// Facts, and lists of this sheet, whose values are only stand-ins: nobody has read or measured them yet.
    #[serde(default, alias = "not_known?")]
    pub not_known: Vec<At<String>>,
}
