//! Sets of words that can stand in a data sheet.

use super::section::words;

words! {
    /// What kind of vehicle it is.
    UnitKind {
        /// Motorhome on a cutaway van with a bed over the cab.
        ClassC = "class-c",
        /// Campervan.
        ClassB = "class-b",
        /// Travel trailer.
        Trailer = "trailer",
    }
    /// Which side of the unit, nose up, is the curb side.
    Side {
        /// The left side.
        Left = "left",
        /// The right side.
        Right = "right",
    }
    /// What stands highest on the roof.
    RoofTop {
        /// Cover of a roof air conditioner.
        RoofAir = "roof-air",
        /// Closed lid of a roof vent.
        RoofVent = "roof-vent",
    }
    /// Kind of entry step.
    StepKind {
        /// Comes out with the door.
        Electric = "electric",
        /// Unfolded by hand.
        Fold = "fold",
        /// Does not move.
        Fixed = "fixed",
    }
    /// Kind of entry door.
    DoorKind {
        /// Swings.
        Hinged = "hinged",
        /// Slides.
        Sliding = "sliding",
    }
    /// Kind of awning.
    AwningKind {
        /// Motor and switch.
        Electric = "electric",
        /// Hand crank and legs.
        Crank = "crank",
    }
    /// Chemistry of the house battery.
    Chemistry {
        /// Lead and acid.
        LeadAcid = "lead-acid",
        /// Lithium iron phosphate.
        Lithium = "lithium",
    }
    /// Kind of propane supply.
    PropaneKind {
        /// A fixed tank in the frame.
        Frame = "frame",
        /// Cylinders with a change-over.
        Cylinders = "cylinders",
    }
    /// Kind of water heater.
    HeaterKind {
        /// Keeps a tank hot.
        Tank = "tank",
        /// Heats while water flows.
        OnDemand = "on-demand",
    }
    /// Kind of refrigerator.
    FridgeKind {
        /// Heat driven: propane or 120 V.
        Absorption = "absorption",
        /// 12 V compressor.
        Compressor = "compressor",
    }
    /// What the cooktop burns or draws.
    CookKind {
        /// Propane burners.
        Propane = "propane",
        /// Induction zone.
        Induction = "induction",
    }
    /// Fuel of the engine.
    FuelKind {
        /// Gasoline.
        Gasoline = "gasoline",
        /// Diesel.
        Diesel = "diesel",
    }
    /// What keeps the tanks from freezing.
    TankHeat {
        /// A duct of the furnace.
        FurnaceDuct = "furnace-duct",
        /// Nothing.
        None = "none",
    }
    /// Kind of furniture drawn on the plan.
    RoomKind {
        /// Bed.
        Bed = "bed",
        /// Bunk or over-cab bed.
        Bunk = "bunk",
        /// Table with benches.
        Dinette = "dinette",
        /// Sofa.
        Sofa = "sofa",
        /// Kitchen.
        Galley = "galley",
        /// Toilet and shower.
        Bath = "bath",
        /// Wardrobe or cupboard.
        Wardrobe = "wardrobe",
        /// Cab seats.
        Cab = "cab",
    }
    /// Which way a seat faces.
    Faces {
        /// Forward.
        Forward = "forward",
        /// Rearward.
        Rearward = "rearward",
        /// Sideways.
        Sideways = "sideways",
    }
    /// Which wheels an axle carries.
    AxleAt {
        /// Steered axle.
        Front = "front",
        /// Rear axle.
        Rear = "rear",
        /// First axle of a trailer.
        First = "first",
        /// Second axle of a trailer.
        Second = "second",
    }
    /// What a 120 V load can run from.
    Supply {
        /// Post.
        Shore = "shore",
        /// Generator.
        Generator = "generator",
        /// Inverter.
        Inverter = "inverter",
    }
    /// What a 120 V load can run on instead.
    Instead {
        /// Propane.
        Propane = "propane",
    }
    /// What tax is reckoned on.
    TaxOn {
        /// Once, on the taxed sum of the bill.
        Bill = "bill",
        /// On each taxed line.
        Line = "line",
    }
    /// Which outlets branch or leg a load hangs on.
    Leg {
        /// First leg.
        One = "one",
        /// Second leg.
        Two = "two",
    }
}
