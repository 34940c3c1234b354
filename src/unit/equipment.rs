//! Sections of the data sheet: equipment and measures of one unit.

use crate::measure::{
    Angle, Charge, Current, Economy, Length, Mass, Power, Pressure, Ratio, Speed, Temperature, Time, Torque,
    Voltage, Volume, VolumeRate,
};

use super::derate::Derate;
use super::kinds::{
    AwningKind, Chemistry, CookKind, DoorKind, FridgeKind, FuelKind, HeaterKind, PropaneKind, RoofTop,
    StepKind, TankHeat,
};
use super::section::{Fitted, sections};

sections! {
    /// Outer measures.
    Size {
        /// Overall length, tongue included.
        length: Length,
        /// Length of the body.
        body_length: Length,
        /// Width of the body.
        width: Length,
        /// Width over the mirrors.
        mirrors: Fitted<Length>,
        /// Overall height.
        height: Length,
        /// Distance between the axles.
        wheelbase: Fitted<Length>,
        /// Part behind the rear axle, or behind the middle of the axles.
        rear_overhang: Length,
        /// Radius of the rear outer corner at full lock.
        turn_radius: Length,
        /// How far the rear wheels cut in.
        cut_in: Length,
        /// What is added to the height before a sign may be passed.
        margin: Length,
        /// Distance between the middles of the left and right tires of the rear axle; needed to level it.
        #[serde(alias = "track?")]
        track: Option<Length>,
    }
    /// Roof, seen from the ground.
    Roof {
        /// What stands highest on it.
        highest: RoofTop,
        /// Whether a ladder leads up to it.
        ladder: bool,
    }
    /// Weights as the plates give them.
    Weight {
        /// Most the loaded unit may weigh.
        gvwr: Mass,
        /// Weight empty, with full fuel and full propane, without water.
        uvw: Mass,
        /// Occupant and cargo carrying capacity, read from the plate of a motorized unit.
        occc: Fitted<Mass>,
        /// Cargo carrying capacity, read from the plate of a trailer.
        ccc: Fitted<Mass>,
        /// Most the front axle, or axle 1, may carry.
        gawr_front: Mass,
        /// Most the rear axle, or axle 2, may carry.
        gawr_rear: Mass,
        /// Most vehicle and trailer may weigh together.
        gcwr: Fitted<Mass>,
        /// Weight of the loaned kit.
        kit: Mass,
    }
    /// People it carries and sleeps.
    Berths {
        /// Seats with belts; `NotFitted` where nobody may ride.
        belts: Fitted<u16>,
        /// Sleeping places.
        beds: u16,
        /// Most the bunk may carry.
        bunk_limit: Fitted<Mass>,
    }
    /// Entry step.
    EntryStep {
        /// Kind.
        kind: StepKind,
        /// Most it may carry.
        limit: Mass,
    }
    /// Entry door.
    Door {
        /// Kind.
        kind: DoorKind,
        /// Whether it has a screen.
        screen: bool,
    }
    /// Alarms and extinguishers.
    Safety {
        /// Number of extinguishers.
        extinguishers: u16,
        /// Rating printed on them.
        extinguisher_rating: String,
        /// Number of smoke alarms.
        smoke_alarms: u16,
        /// Number of carbon monoxide alarms.
        co_alarms: u16,
        /// Year and month by which the carbon monoxide alarm is replaced, as `2028-05`.
        co_replace_by: String,
        /// The same for the propane detector.
        propane_replace_by: Fitted<String>,
        /// The same for the smoke alarm.
        smoke_replace_by: String,
        /// Height of the lowest exit window above the ground.
        sill: Length,
    }
    /// Awning.
    Awning {
        /// Kind.
        kind: AwningKind,
        /// Length along the unit.
        length: Length,
        /// How far it reaches out.
        reach: Length,
        /// Whether it has lights.
        lights: bool,
        /// Wind at which it comes in; the lot's where not given.
        #[serde(alias = "wind_limit?")]
        wind_limit: Option<Speed>,
        /// Wind class of EN 13561, where the maker states one.
        #[serde(alias = "wind_class?")]
        wind_class: Option<u16>,
    }
    /// Wheels without the axles.
    Wheels {
        /// Size printed on the tires.
        size: String,
        /// Cold pressure of the spare.
        spare: Pressure,
        /// Torque of the wheel nuts.
        torque: Torque,
        /// Distances at which the nuts are checked after a wheel was off.
        recheck: Vec<Length>,
        /// Whether each nut has a pointer that shows when it turns.
        pointers: bool,
        /// Wheel chocks that go with it.
        chocks: Fitted<u16>,
        /// Most speed the tires allow, where they are the limit.
        speed: Fitted<Speed>,
    }
    /// Engine and fuel.
    Engine {
        /// Fuel.
        fuel: FuelKind,
        /// Grade printed on the cap.
        grade: String,
        /// Fuel tank.
        tank: Volume,
        /// Exhaust fluid tank.
        exhaust_fluid: Fitted<Volume>,
        /// Distance per volume of fuel.
        economy: Economy,
        /// Part of the tank that is not counted on.
        reserve: Ratio,
        /// Rested voltage of the full starter battery.
        battery_full: Voltage,
        /// Whether it has a boost switch to the house battery.
        boost_switch: bool,
    }
    /// Generator.
    Generator {
        /// Rated power at sea level.
        rated: Power,
        /// Its breaker.
        breaker: Current,
        /// Fuel an hour at half load.
        burn_half: VolumeRate,
        /// Fuel an hour at full load.
        burn_full: VolumeRate,
        /// Part of the tank below which it gets no fuel.
        pickup: Ratio,
        /// Free space the exhaust needs.
        clear: Length,
        /// How long the prime side of the switch is held.
        prime: Time,
        /// Longest cranking at a time.
        crank: Time,
        /// Running without load after the start.
        warm_up: Time,
        /// Running without load before the stop.
        cool_down: Time,
        /// Running time after which the oil is checked.
        oil_check: Time,
        /// Oil grade.
        oil: String,
        /// Oil it takes from empty.
        oil_fill: Volume,
        /// Highest number of the altitude dial, thousands of feet; `NotFitted` without a dial.
        dial_top: Fitted<u16>,
        /// How it loses power with height, as its own manual says.
        derate: Derate,
        /// Power it gives for a moment while a motor starts, at sea level; as much as rated where not given.
        #[serde(alias = "peak?")]
        peak: Option<Power>,
    }
    /// House battery.
    House {
        /// Chemistry.
        chemistry: Chemistry,
        /// Capacity.
        capacity: Charge,
        /// Part of it that may be used.
        usable: Ratio,
        /// Time in which it gives its whole capacity, as `20 h`, where the maker states it.
        #[serde(alias = "rated_over?")]
        rated_over: Option<Time>,
        /// Peukert's exponent, where the maker states it.
        #[serde(alias = "peukert?")]
        peukert: Option<Ratio>,
        /// Rested voltage when full.
        full: Voltage,
        /// Rested voltage at which to charge today.
        low: Voltage,
        /// Voltage at which loads go off at once.
        stop: Voltage,
        /// Temperature below which it takes no charge.
        charge_above: Fitted<Temperature>,
    }
    /// Charger from 120 V.
    Charger {
        /// Power while it charges.
        bulk: Power,
        /// Power when the battery is full.
        settled: Power,
    }
    /// Charger from the engine.
    EngineCharger {
        /// Current.
        current: Current,
    }
    /// Solar panels.
    Solar {
        /// Power of the panels.
        power: Power,
    }
    /// Inverter.
    Inverter {
        /// Continuous power.
        power: Power,
        /// Power it gives for a moment while a motor starts.
        #[serde(alias = "peak?")]
        peak: Option<Power>,
        /// Current drawn with nothing on.
        idle: Current,
        /// Part of the battery's power that comes out.
        efficiency: Ratio,
    }
    /// Shore power.
    Shore {
        /// What the cord can carry, each leg.
        cord: Current,
        /// Length of the cord.
        length: Length,
        /// Power it can carry in all.
        power: Power,
        /// Number of legs: 1, or 2 for a 120/240 V cord.
        legs: u16,
        /// Breaker of the outlets branch.
        branch: Current,
    }
    /// Outlet and TV point outside.
    OutsideOutlet {
        /// Whether a TV bracket is beside it.
        tv: bool,
    }
    /// Kitchen outside, behind a hatch.
    OutdoorKitchen {
        /// Power of its refrigerator, which runs on shore power alone.
        fridge: Fitted<Power>,
    }
    /// Roof air conditioner.
    RoofAir {
        /// How many.
        count: u16,
    }
    /// Propane supply.
    Propane {
        /// Kind.
        kind: PropaneKind,
        /// Propane on board when full: the 80 % mark is full.
        full: Mass,
        /// How many cylinders hold it, where it is in cylinders.
        #[serde(alias = "cylinders?")]
        cylinders: Option<u16>,
        /// Weight of water that the shell holds in all, stamped on it as WC.
        #[serde(alias = "water_capacity?")]
        water_capacity: Option<Mass>,
    }
    /// Propane furnace.
    Furnace {
        /// Gas burned.
        input: Power,
        /// Current of its fan.
        fan: Current,
    }
    /// Diesel air heater.
    DieselHeater {
        /// Heat.
        output: Power,
        /// Fuel an hour, average.
        burn: VolumeRate,
        /// Fuel an hour at the lowest setting.
        burn_low: VolumeRate,
        /// Fuel an hour at the highest setting.
        burn_high: VolumeRate,
        /// Part of the tank below which it gets no fuel.
        pickup: Ratio,
        /// How long its fan runs on after it was switched off.
        rest: Time,
    }
    /// Water heater.
    WaterHeater {
        /// Kind.
        kind: HeaterKind,
        /// Tank; `NotFitted` when it heats on demand.
        tank: Fitted<Volume>,
        /// Gas burned.
        propane: Fitted<Power>,
        /// Electric power.
        electric: Fitted<Power>,
        /// Temperature it is set to.
        set: Temperature,
        /// Flow below which an on-demand heater does not light.
        #[serde(alias = "least_flow?")]
        least_flow: Option<VolumeRate>,
    }
    /// Refrigerator.
    Fridge {
        /// Kind.
        kind: FridgeKind,
        /// Space inside.
        space: Volume,
        /// Current it draws from the battery on average, day and night.
        average: Fitted<Current>,
        /// Gas burned.
        propane: Fitted<Power>,
        /// Slope it allows nose to tail.
        level_length: Fitted<Angle>,
        /// Slope it allows side to side.
        level_side: Fitted<Angle>,
    }
    /// Cooktop.
    Cook {
        /// Kind.
        kind: CookKind,
        /// Number of burners or zones.
        burners: u16,
        /// Whether there is an oven.
        oven: bool,
        /// Heat of the biggest burner.
        big: Fitted<Power>,
    }
    /// Water.
    Water {
        /// Fresh-water tank.
        fresh: Volume,
        /// Pressure the loaned regulator is set to.
        regulator: Pressure,
        /// Most the pipes may be given.
        most: Pressure,
        /// Whether an outside shower is fitted.
        outside_shower: bool,
    }
    /// Waste tanks.
    Waste {
        /// Grey tank, or the bath's where there are two.
        grey: Volume,
        /// Second grey tank.
        grey_galley: Fitted<Volume>,
        /// Black tank.
        black: Fitted<Volume>,
        /// Toilet cassette.
        cassette: Fitted<Volume>,
        /// What is in the cassette when its lamp comes on.
        cassette_lamp: Fitted<Volume>,
        /// Weight of the full cassette.
        cassette_full: Fitted<Mass>,
        /// Longest the tank rinse may run.
        rinse: Fitted<Time>,
    }
    /// Frost.
    Frost {
        /// Below this the pipes are drained.
        dry_below: Temperature,
        /// What keeps the tanks warm.
        tanks: TankHeat,
    }
    /// What couples a trailer to the vehicle that pulls it.
    Hitch {
        /// Weight of the empty trailer's tongue.
        tongue_dry: Mass,
        /// Part of the loaded trailer's weight that rests on the tongue.
        tongue_part: Ratio,
        /// Most the hitch may carry on the tongue.
        tongue_most: Mass,
        /// Most the hitch may pull.
        trailer_most: Mass,
        /// Diameter of the ball.
        ball: Length,
        /// Weight of hitch and mirrors on the tow vehicle.
        gear: Mass,
        /// Least tow rating of the vehicle that may pull it.
        rating: Mass,
    }
}
