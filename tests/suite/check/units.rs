//! Data sheets whose facts contradict each other: each rule fires where a newcomer slips, and nowhere else.

use super::{WREN, changed, checked, lot, new_faults};

const PLOVER: &str = "walkthroughs/units/plover.ron";
const HERON: &str = "walkthroughs/units/heron.ron";

/// A slip: the sheet, the text that is swapped and the text for it, and the start of what is found where.
type Slip = (&'static str, &'static str, &'static str, &'static str);

/// Measures of the body.
const BODY: [Slip; 14] = [
    (HERON, "body_length: \"288 in\"", "body_length: \"340 in\"", "the body is longer"),
    (WREN, "mirrors: \"116 in\"", "mirrors: \"98 in\"", "the unit is narrower over the mirrors"),
    (WREN, "track: \"77 in\"", "track: \"100 in\"", "the wheels stand further apart"),
    (WREN, "wheelbase: \"190 in\"", "wheelbase: \"220 in\"", "the axles lie outside"),
    (
        HERON,
        "rear_overhang: \"114 in\", turn_radius: \"240 in\"",
        "rear_overhang: \"289 in\", turn_radius: \"300 in\"",
        "the axles lie outside",
    ),
    (WREN, "turn_radius: \"270 in\"", "turn_radius: \"90 in\"", "the corner turns"),
    (WREN, "cut_in: \"60 in\"", "cut_in: \"280 in\"", "the wheels cut in"),
    (WREN, "sill: \"62 in\"", "sill: \"162 in\"", "the exit window is higher"),
    (PLOVER, "highest: RoofVent", "highest: RoofAir", "a roof air conditioner stands highest"),
    (
        PLOVER,
        "awning: (kind: Crank, length: \"10 ft\"",
        "awning: (kind: Crank, length: \"20 ft\"",
        "the awning is longer",
    ),
    (WREN, "lights: false", "lights: false, wind_class: 4", "there are no wind classes above 3"),
    (
        HERON,
        "from: \"156 in\", to: \"256 in\"",
        "from: \"256 in\", to: \"156 in\"",
        "the slide-out ends before",
    ),
    (
        HERON,
        "from: \"156 in\", to: \"256 in\"",
        "from: \"156 in\", to: \"356 in\"",
        "the slide-out reaches past",
    ),
    (
        WREN,
        "exits: [(place: \"entry-door\"), (place: \"bed-exit\"), (place: \"bunk-exit\")]",
        "exits: []",
        "the unit has no way out",
    ),
];

/// What drives, what is towed, what that costs.
const ROAD: [Slip; 24] = [
    (WREN, "towing: false", "towing: NotFitted", "nothing says whether it may tow"),
    (WREN, "wheelbase: \"190 in\"", "wheelbase: NotFitted", "a motorhome has two axles"),
    (WREN, "mirrors: \"116 in\"", "mirrors: NotFitted", "a motorhome has mirrors"),
    (HERON, "towing: NotFitted", "towing: true", "a trailer tows nothing"),
    (
        HERON,
        "engine_charger: NotFitted",
        "engine_charger: (current: \"40 A\")",
        "a trailer has no engine that could charge",
    ),
    (HERON, "(at: First, cold", "(at: Front, cold", "a unit of this kind has no such axle"),
    (WREN, "cold: \"80 psi\", wheels: 4", "cold: \"80 psi\", wheels: 3", "an axle has as many wheels"),
    (
        WREN,
        "axles: [(at: Front, cold: \"75 psi\", wheels: 2), (at: Rear, cold: \"80 psi\", wheels: 4)]",
        "axles: []",
        "the unit has no axle",
    ),
    (HERON, "driving: (speed: \"60 mph\"", "driving: (speed: \"70 mph\"", "it may be driven faster"),
    (WREN, "gust: \"40 mph\"", "gust: \"20 mph\"", "it may drive in less gust"),
    (WREN, "follow: \"26 ft\"", "follow: \"20 ft\"", "the gap is reckoned"),
    (HERON, "trailer_most: \"10000 lb\"", "trailer_most: \"7000 lb\"", "the hitch may not pull"),
    (HERON, "tongue_most: \"1000 lb\"", "tongue_most: \"700 lb\"", "the hitch may not carry"),
    (HERON, "tongue_part: \"12.5 %\"", "tongue_part: \"125 %\"", "more than the whole trailer"),
    (HERON, "rating: \"8500 lb\"", "rating: \"7000 lb\"", "a vehicle may pull it"),
    (WREN, "gcwr: \"22000 lb\"", "gcwr: \"14000 lb\"", "with a trailer it may weigh less"),
    (HERON, "mile: NotFitted", "mile: \"0.42\"", "a fee is asked for an engine"),
    (PLOVER, "generator_hour: NotFitted", "generator_hour: \"4.00\"", "a fee is asked for a generator"),
    (PLOVER, "propane_quarter: NotFitted", "propane_quarter: \"18.00\"", "a fee is asked for propane,"),
    (
        WREN,
        "propane_cylinder: NotFitted",
        "propane_cylinder: \"28.00\"",
        "a fee is asked for propane cylinders",
    ),
    (
        PLOVER,
        "black: NotFitted, cassette: \"75.00\"",
        "black: \"95.00\", cassette: \"75.00\"",
        "a fee is asked for a black tank",
    ),
    (
        WREN,
        "cassette: NotFitted, grey: \"45.00\"",
        "cassette: \"75.00\", grey: \"45.00\"",
        "a fee is asked for a cassette",
    ),
    (WREN, "griddle: NotFitted", "griddle: \"35.00\"", "a fee is asked for a kitchen outside"),
    (HERON, "generator_night: NotFitted", "generator_night: \"3 h\"", "a fee is asked for a generator"),
];

/// Where power comes from.
const SUPPLY: [Slip; 21] = [
    (WREN, "burn_full: \"0.7 gal/h\"", "burn_full: \"0.4 gal/h\"", "it burns less at full load"),
    (WREN, "derate: Linear", "peak: \"3000 W\", derate: Linear", "it gives less for a moment"),
    (WREN, "pickup: \"1/4\"", "pickup: \"4/4\"", "it never gets fuel"),
    (WREN, "usable: \"50 %\"", "usable: \"150 %\"", "a battery gives some"),
    (WREN, "usable: \"50 %\"", "usable: \"0 %\"", "a battery gives some"),
    (WREN, "capacity: \"160 Ah\"", "capacity: \"0 Ah\"", "the battery holds nothing"),
    (WREN, "low: \"12.2 V\"", "low: \"12.8 V\"", "the battery is to be charged"),
    (WREN, "stop: \"12.0 V\"", "stop: \"12.3 V\"", "loads go off before"),
    (WREN, "usable: \"50 %\"", "usable: \"50 %\", peukert: \"0.9\"", "the battery gives more the faster"),
    (PLOVER, "charge_above: \"32 °F\"", "charge_above: NotFitted", "a lithium battery that takes"),
    (
        WREN,
        "settled: \"240 W\"),\n    engine_charger",
        "settled: \"980 W\"),\n    engine_charger",
        "it draws more for a full battery",
    ),
    (WREN, "exhaust_fluid: NotFitted", "exhaust_fluid: \"5 gal\"", "an engine that burns gasoline"),
    (WREN, "reserve: \"1/8\"", "reserve: \"8/8\"", "nothing of the tank may be used"),
    (PLOVER, "peak: \"4000 W\"", "peak: \"1000 W\"", "it gives less for a moment"),
    (PLOVER, "efficiency: \"90 %\"", "efficiency: \"110 %\"", "more comes out than goes in"),
    (WREN, "legs: 1", "legs: 3", "no cord has so many legs"),
    (WREN, "power: \"3600 W\"", "power: \"3700 W\"", "the cord cannot carry so much"),
    (HERON, "legs: 2", "legs: 1", "the cord cannot carry so much"),
    (WREN, "branch: \"15 A\"", "branch: \"50 A\"", "the breaker of the outlets"),
    (
        PLOVER,
        "shore: (cord: \"30 A\", length: \"25 ft\", power: \"3600 W\", legs: 1, branch: \"15 A\")",
        "shore: NotFitted",
        "nothing gives the charger",
    ),
    (HERON, "legs: 2", "legs: 1", "`air-bed` hangs on a second leg"),
];

/// What draws it.
const POWER: [Slip; 17] = [
    (PLOVER, "from: [Shore]", "from: [Shore, Generator]", "`charger` runs from the generator"),
    (
        WREN,
        "(id: \"microwave\", draw: \"1500 W\")",
        "(id: \"microwave\", draw: \"1500 W\", from: [Inverter])",
        "`microwave` runs from the inverter",
    ),
    (PLOVER, "from: [Shore]", "from: []", "`charger` can run from nothing"),
    (
        PLOVER,
        "(id: \"water-heater\", draw: \"800 W\", long: true)",
        "(id: \"water-heater\", draw: \"800 W\", long: true, instead: Propane)",
        "`water-heater` can run on propane",
    ),
    (
        WREN,
        "draw: \"960 W\", settled: \"240 W\"",
        "draw: \"960 W\", settled: \"990 W\"",
        "`charger` draws more once",
    ),
    (
        WREN,
        "(id: \"microwave\", draw: \"1500 W\")",
        "(id: \"microwave\", draw: \"1500 W\", start: \"150 W\")",
        "`microwave` draws less as it starts",
    ),
    (
        WREN,
        "(id: \"tv\", draw: \"100 W\", long: true)",
        "(id: \"tv\", draw: \"100 W\", long: true, leg: Two)",
        "`tv` hangs on a second leg",
    ),
    (
        WREN,
        "draw: \"1500 W\", branch: true",
        "draw: \"1900 W\", branch: true",
        "`hair-dryer` hangs on the outlets",
    ),
    (
        WREN,
        "(id: \"microwave\", draw: \"1500 W\")",
        "(id: \"microwave\", draw: \"15000 W\")",
        "`microwave` draws more than the cord",
    ),
    (WREN, "duty: \"35 %\"", "duty: \"135 %\"", "`heat-fan` runs more than all the time"),
    (WREN, "hours: \"0.3 h\"", "hours: \"30 h\"", "`pump` runs for more than a day"),
    (
        PLOVER,
        "draw: \"1.5 A\", hours: \"4 h\"),\n    ],\n    kit",
        "draw: \"1.5 A\", hours: \"40 h\"),\n    ],\n    kit",
        "`vent-fan` runs for more",
    ),
    (HERON, "roof_air: (count: 2)", "roof_air: (count: 0)", "no roof air conditioner is counted"),
    (
        HERON,
        "shore: (cord: \"50 A\", length: \"30 ft\", power: \"12000 W\", legs: 2, branch: \"20 A\")",
        "shore: NotFitted",
        "it runs on shore power",
    ),
    (
        HERON,
        "shore: (cord: \"50 A\", length: \"30 ft\", power: \"12000 W\", legs: 2, branch: \"20 A\")",
        "shore: NotFitted",
        "nothing gives the roof air",
    ),
    (
        HERON,
        "shore: (cord: \"50 A\", length: \"30 ft\", power: \"12000 W\", legs: 2, branch: \"20 A\")",
        "shore: NotFitted",
        "nothing gives the loads",
    ),
    (HERON, "cook: (kind: Propane", "cook: (kind: Induction", ""),
];

/// Propane, and what burns.
const GAS: [Slip; 26] = [
    (WREN, "propane: (kind: Frame, full: \"41 lb\")", "propane: NotFitted", "it burns propane"),
    (PLOVER, "cook: (kind: Induction", "cook: (kind: Propane", "it burns propane"),
    (PLOVER, "furnace: NotFitted", "furnace: (input: \"30000 BTU/h\", fan: \"7.0 A\")", "it burns propane"),
    (
        PLOVER,
        "propane: NotFitted, electric: \"800 W\"",
        "propane: \"8800 BTU/h\", electric: \"800 W\"",
        "it burns propane",
    ),
    (
        PLOVER,
        "average: \"1.8 A\", propane: NotFitted",
        "average: \"1.8 A\", propane: \"1500 BTU/h\"",
        "a compressor burns no propane",
    ),
    (
        WREN,
        "furnace: (input: \"30000 BTU/h\", fan: \"7.0 A\")",
        "furnace: NotFitted",
        "a duct of the furnace",
    ),
    (HERON, "cylinders: 2, ", "", "nothing says how many cylinders"),
    (
        WREN,
        "kind: Frame, full: \"41 lb\"",
        "kind: Frame, full: \"41 lb\", cylinders: 2",
        "a tank in the frame has no cylinders",
    ),
    // 47.6 lb of water hold 19.99 lb of propane (49 CFR 173.315): half of what stands in the sheet.
    (HERON, "water_capacity: \"95.2 lb\"", "water_capacity: \"47.6 lb\"", "more propane than the shell"),
    (
        WREN,
        "propane_replace_by: \"2027-05\"",
        "propane_replace_by: NotFitted",
        "nothing warns of leaking propane",
    ),
    (PLOVER, "propane_replace_by: NotFitted", "propane_replace_by: \"2027-05\"", "a detector for propane"),
    (WREN, "co_alarms: 1", "co_alarms: 0", "no alarm warns of carbon monoxide"),
    (WREN, "smoke_alarms: 1", "smoke_alarms: 0", "no alarm warns of smoke"),
    (WREN, "extinguishers: 1", "extinguishers: 0", "there is no fire extinguisher"),
    (PLOVER, "fuel: Diesel", "fuel: Gasoline", "the heater has no tank of diesel"),
    (PLOVER, "burn_low: \"0.03 gal/h\"", "burn_low: \"0.06 gal/h\"", "the average does not lie"),
    (PLOVER, "burn_high: \"0.07 gal/h\"", "burn_high: \"0.04 gal/h\"", "the average does not lie"),
    (PLOVER, "pickup: \"1/4\"", "pickup: \"1\"", "it never gets fuel"),
    (WREN, "kind: Tank, tank: \"6 gal\"", "kind: Tank, tank: NotFitted", "kind and tank do not belong"),
    (
        HERON,
        "kind: OnDemand, tank: NotFitted",
        "kind: OnDemand, tank: \"6 gal\"",
        "kind and tank do not belong",
    ),
    (PLOVER, "electric: \"800 W\"", "electric: NotFitted", "nothing heats the water"),
    (
        WREN,
        "set: \"140 °F\"",
        "set: \"140 °F\", least_flow: \"0.6 gal/min\"",
        "a tank is heated without a flow",
    ),
    (PLOVER, "average: \"1.8 A\"", "average: NotFitted", "a compressor draws current"),
    (WREN, "burners: 3", "burners: 0", "a cooktop has a burner"),
    (PLOVER, "tanks: None", "tanks: FurnaceDuct", "a duct of the furnace"),
    (
        WREN,
        "kind: Frame, full: \"41 lb\"",
        "kind: Cylinders, full: \"41 lb\"",
        "nothing says how many cylinders",
    ),
];

/// Water and waste.
const WATER: [Slip; 8] = [
    (WREN, "regulator: \"45 psi\"", "regulator: \"65 psi\"", "the regulator lets through more"),
    (WREN, "fresh: \"40 gal\"", "fresh: \"400 gal\"", "few motorhomes carry"),
    (WREN, "fresh: \"40 gal\"", "fresh: \"40 L\"", "few motorhomes carry"),
    (PLOVER, "rinse: NotFitted", "rinse: \"3 min\"", "a rinse for a black tank"),
    (
        PLOVER,
        "black: NotFitted, cassette: \"4.7 gal\"",
        "black: \"30 gal\", cassette: \"4.7 gal\"",
        "the unit has a black tank and a cassette",
    ),
    (PLOVER, "cassette_lamp: \"4 gal\"", "cassette_lamp: NotFitted", "cassette and lamp"),
    (PLOVER, "cassette_full: \"48 lb\"", "cassette_full: NotFitted", "cassette and weight"),
    (PLOVER, "cassette_lamp: \"4 gal\"", "cassette_lamp: \"5 gal\"", "the lamp comes on after"),
];

#[test]
fn facts_that_contradict_each_other_are_told() {
    let usual = checked(lot());
    let mut wrong = Vec::new();
    let all = BODY.iter().chain(&ROAD).chain(&SUPPLY).chain(&POWER).chain(&GAS).chain(&WATER);
    for (sheet, swap, by, what) in all {
        let found = new_faults(&changed(&[(sheet, swap, by)]), &usual);
        let clashes = found.iter().filter(|f| ["unit.contradiction", "unit.unusual"].contains(&f.code));
        let told: Vec<&str> = clashes.map(|f| f.what.as_str()).collect();
        let right = if what.is_empty() { told.is_empty() } else { told.iter().any(|t| t.starts_with(what)) };
        if !right {
            wrong.push(format!("{swap} -> {by}: {told:?} for {what}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// A whole kind that is wrong gives what each part contradicts, each at its own place.
#[test]
fn a_sheet_of_the_wrong_kind_says_what_to_correct() {
    let usual = checked(lot());
    let whats = |sheet, swap, by| -> Vec<String> {
        let found = new_faults(&changed(&[(sheet, swap, by)]), &usual);
        let clashes = found.iter().filter(|f| f.code == "unit.contradiction");
        clashes.map(|f| f.what.clone()).collect()
    };
    let trailer = whats(WREN, "kind: ClassC", "kind: Trailer");
    for what in [
        "a trailer has no engine",
        "a trailer without a hitch",
        "nobody rides in a trailer",
        "a trailer tows",
    ] {
        assert!(trailer.iter().any(|t| t.starts_with(what)), "{what}: {trailer:?}");
    }
    let motorhome = whats(HERON, "kind: Trailer", "kind: ClassC");
    for what in ["a motorhome has an engine", "`hitch` is the coupling", "nobody can drive it"] {
        assert!(motorhome.iter().any(|t| t.starts_with(what)), "{what}: {motorhome:?}");
    }
    let generator = "generator: (
        rated: \"4000 W\", breaker: \"30 A\", burn_half: \"0.5 gal/h\", burn_full: \"0.7 gal/h\", pickup: \"1/4\",
        clear: \"20 ft\", prime: \"15 s\", crank: \"10 s\", warm_up: \"2 min\", cool_down: \"3 min\", oil_check: \"8 h\",
        oil: \"SAE 10W-30\", oil_fill: \"1.6 qt\", dial_top: 10,
        derate: Linear(above: \"500 ft\", loss: \"3.5 %\", per: \"1000 ft\"),
    )";
    let fitted = whats(HERON, "generator: NotFitted", generator);
    assert_eq!(fitted, ["the generator has no engine tank to draw from"]);
}

/// A slip of one kind does not hide behind the loaned items.
#[test]
fn loaned_items_weigh_less_than_the_unit_may_carry() {
    let usual = checked(lot());
    let slips = [(WREN, "uvw: \"11681 lb\", occc: \"2819 lb\"", "uvw: \"14400 lb\", occc: \"100 lb\"")];
    let found = new_faults(&changed(&slips), &usual);
    assert!(found.iter().any(|f| f.what.starts_with("the loaned items alone")), "{found:?}");
}
