//! Sections of a new data sheet: what was said, what is not fitted, and stand-ins for what a plate says.

use super::args::{Battery, Cook, Fridge, Fuel, Heat, Heater, Kind, Propane, Step, Toilet};
use super::sheet::Draft;
use super::wish::Wish;

/// What the writer of the sheet had to choose without being told.
const LOOK: &str = "LOOK: chosen without a look at the unit.";

/// Writes all sections.
pub(super) fn all(d: &mut Draft, w: &Wish<'_>) {
    body(d, w);
    people(d, w);
    wheels(d, w);
    supply(d, w);
    battery(d, w);
    gas(d, w);
    water(d, w);
    road(d, w);
    fees(d, w);
}

fn body(d: &mut Draft, w: &Wish<'_>) {
    let typed = |text: &Option<String>| text.as_deref().unwrap_or_default().trim().to_owned();
    let (length, width, height) = (typed(&w.args.length), typed(&w.args.width), typed(&w.args.height));
    let body = if w.is_trailer() { format!("?\"{} in\"", w.body()) } else { format!("\"{length}\"") };
    let (mirrors, wheelbase) = if w.is_trailer() {
        ("NotFitted".to_owned(), "NotFitted".to_owned())
    } else {
        (
            format!("?\"{} in\"", libm::ceil(w.width) + 18.0),
            format!("?\"{} in\"", libm::floor(w.length * 0.6)),
        )
    };
    let overhang = libm::floor(w.body() * if w.is_trailer() { 0.38 } else { 0.26 });
    d.section(
        "size",
        "`length` is overall. `margin` is added before a sign may be passed: the lot decides.",
        &format!(
            "(\n        length: \"{length}\", body_length: {body}, width: \"{width}\", mirrors: {mirrors}, height: \"{height}\",\n        \
             wheelbase: {wheelbase}, rear_overhang: ?\"{overhang} in\", turn_radius: ?\"{} in\", cut_in: ?\"{} in\", margin: \"6 in\",\n    )",
            libm::floor(w.length * 0.85).max(overhang),
            libm::floor(w.length * 0.15),
        ),
    );
    let highest = if w.fitted.roof_air > 0 { "RoofAir" } else { "RoofVent" };
    d.section("roof", &format!("{LOOK} Is there a ladder?"), &format!("(highest: {highest}, ladder: false)"));
    let (occc, ccc) =
        if w.is_trailer() { ("NotFitted", "?\"1500 lb\"") } else { ("?\"2500 lb\"", "NotFitted") };
    d.section(
        "weight",
        "Plates and scales. `occc` stands on the label of a motorhome, `ccc` on that of a trailer. `kit` is what is lent.",
        &format!(
            "(\n        gvwr: ?\"14500 lb\", uvw: ?\"12000 lb\", occc: {occc}, ccc: {ccc},\n        \
             gawr_front: ?\"5500 lb\", gawr_rear: ?\"9500 lb\", gcwr: NotFitted, kit: \"0 lb\",\n    )"
        ),
    );
}

fn people(d: &mut Draft, w: &Wish<'_>) {
    let f = w.fitted;
    let stand_in = |count: Option<u16>, usual: u16| match count {
        Some(count) => count.to_string(),
        None => format!("?{usual}"),
    };
    let belts = if w.is_trailer() { "NotFitted".to_owned() } else { stand_in(f.belts, 2) };
    let remark = format!("{LOOK} `bunk_limit` is what a bunk may carry, where there is one.");
    let beds = stand_in(f.beds, 2);
    d.section("berths", &remark, &format!("(belts: {belts}, beds: {beds}, bunk_limit: NotFitted)"));
    let kind = if w.kind == Kind::ClassB { "Sliding" } else { "Hinged" };
    d.section("door", LOOK, &format!("(kind: {kind}, screen: false)"));
    let step = f.step.unwrap_or(if w.kind == Kind::ClassB { Step::Fixed } else { Step::Fold });
    let remark = if f.step.is_some() { String::new() } else { format!("{LOOK} Electric, Fold or Fixed.") };
    d.section("step", &remark, &format!("(kind: {}, limit: ?\"300 lb\")", step.ron()));
    let gas = if f.propane.is_some() { "?\"2030-01\"" } else { "NotFitted" };
    let sill = f.sill.as_ref().map_or_else(|| "?\"60 in\"".to_owned(), |sill| format!("\"{}\"", sill.trim()));
    d.section(
        "safety",
        &format!("{LOOK} Count extinguishers and alarms. Dates stand on the devices. Cautions hang on `sill`: measure it soon."),
        &format!(
            "(\n        extinguishers: 1, extinguisher_rating: ?\"10-B:C\", smoke_alarms: 1, co_alarms: 1,\n        \
             co_replace_by: ?\"2030-01\", propane_replace_by: {gas}, smoke_replace_by: ?\"2030-01\", sill: {sill},\n    )"
        ),
    );
    let awning =
        f.awning.map(|a| format!("(kind: {}, lights: false, length: ?\"8 ft\", reach: ?\"7 ft\")", a.ron()));
    d.perhaps("awning", LOOK, awning);
}

fn wheels(d: &mut Draft, w: &Wish<'_>) {
    d.section(
        "wheels",
        &format!("{LOOK} `pointers` on the nuts? How many chocks go with it? `recheck`: the lot decides."),
        "(\n        size: ?\"225/75R16\", spare: ?\"80 psi\", torque: ?\"120 lb-ft\", recheck: [\"50 mi\"], pointers: false,\n        \
         chocks: NotFitted, speed: NotFitted,\n    )",
    );
    let engine = w.fitted.fuel.map(|fuel| {
        let (grade, fluid) = match fuel {
            Fuel::Gasoline => ("?\"87 AKI\"", "NotFitted"),
            Fuel::Diesel => ("\"ultra-low sulfur diesel\"", "?\"5 gal\""),
        };
        format!(
            "(\n        fuel: {}, grade: {grade}, tank: ?\"40 gal\", exhaust_fluid: {fluid}, economy: ?\"8 mpg\",\n        \
             reserve: \"1/8\", battery_full: \"12.7 V\", boost_switch: false,\n    )",
            fuel.ron()
        )
    });
    d.perhaps(
        "engine",
        &format!("{LOOK} Is there a boost switch? An old diesel has no exhaust fluid."),
        engine,
    );
    let generator = w.fitted.generator.as_ref().map(|rated| {
        format!(
            "(\n        rated: \"{}\", breaker: ?\"30 A\", burn_half: ?\"0.5 gal/h\", burn_full: ?\"0.9 gal/h\", pickup: ?\"1/4\",\n        \
             clear: \"20 ft\", prime: ?\"15 s\", crank: ?\"10 s\", warm_up: ?\"2 min\", cool_down: ?\"3 min\",\n        \
             oil_check: ?\"8 h\", oil: ?\"15W-40\", oil_fill: ?\"2 qt\", dial_top: NotFitted,\n        \
             derate: ?Linear(above: \"500 ft\", loss: \"3.5 %\", per: \"1000 ft\"),\n    )",
            rated.trim()
        )
    });
    d.perhaps(
        "generator",
        "It draws from the engine's tank. `clear` is the free space its exhaust needs.",
        generator,
    );
}

fn supply(d: &mut Draft, w: &Wish<'_>) {
    let f = w.fitted;
    let outside = w.cord.is_some() || f.generator.is_some();
    d.perhaps("charger", "", outside.then(|| "(bulk: ?\"960 W\", settled: ?\"240 W\")".to_owned()));
    d.perhaps("engine_charger", "", None);
    d.perhaps("solar", "", f.solar.as_ref().map(|power| format!("(power: \"{}\")", power.trim())));
    let inverter = f.inverter.as_ref();
    let inverter =
        inverter.map(|p| format!("(power: \"{}\", idle: ?\"2 A\", efficiency: ?\"90 %\")", p.trim()));
    d.perhaps("inverter", "", inverter);
    let shore = w.cord.zip(f.cord.as_ref()).map(|(amperes, cord)| {
        // A four-blade cord of 50 A has two legs (NEC 551.44).
        let legs = if amperes > 40.0 { 2.0 } else { 1.0 };
        let (watts, branch) = (amperes * 120.0 * legs, amperes.min(15.0));
        format!(
            "(cord: \"{}\", length: ?\"25 ft\", power: \"{watts} W\", legs: {legs}, branch: ?\"{branch} A\")",
            cord.trim()
        )
    });
    d.perhaps("shore", "`power` is amperes times 120 V, for each leg; a cord of 50 A has two.", shore);
    d.perhaps("outside_outlet", "", None);
    d.perhaps("outdoor_kitchen", "", None);
    d.perhaps("roof_air", "", (f.roof_air > 0).then(|| format!("(count: {})", f.roof_air)));
}

fn battery(d: &mut Draft, w: &Wish<'_>) {
    let (usable, full, low, stop, above) = match w.fitted.battery {
        Battery::LeadAcid => ("50 %", "12.7 V", "12.2 V", "12.0 V", "NotFitted"),
        Battery::Lithium => ("80 %", "13.4 V", "12.9 V", "12.4 V", "?\"32 °F\""),
    };
    d.section(
        "house",
        "Is it LeadAcid or Lithium? Its cautions hang on that.",
        &format!(
            "(\n        chemistry: {}, capacity: ?\"100 Ah\", usable: \"{usable}\", full: ?\"{full}\", low: ?\"{low}\", stop: ?\"{stop}\",\n        \
             charge_above: {above},\n    )",
            w.fitted.battery.ron()
        ),
    );
}

fn gas(d: &mut Draft, w: &Wish<'_>) {
    let f = w.fitted;
    let propane = f.propane.map(|kind| match kind {
        Propane::Frame => "(kind: Frame, full: ?\"40 lb\")".to_owned(),
        Propane::Cylinders => "(kind: Cylinders, full: ?\"40 lb\", cylinders: ?2)".to_owned(),
    });
    d.perhaps("propane", "`full` is what it holds at the 80 % mark.", propane);
    let furnace =
        (f.heat == Some(Heat::Furnace)).then(|| "(input: ?\"30000 BTU/h\", fan: ?\"7 A\")".to_owned());
    d.perhaps("furnace", "", furnace);
    let diesel = (f.heat == Some(Heat::Diesel)).then(|| {
        "(\n        output: ?\"7500 BTU/h\", burn: ?\"0.05 gal/h\", burn_low: ?\"0.03 gal/h\", burn_high: ?\"0.07 gal/h\",\n        \
         pickup: ?\"1/4\", rest: ?\"5 min\",\n    )"
            .to_owned()
    });
    d.perhaps("diesel_heater", "", diesel);
    let gas = f.propane.is_some();
    let electric = if w.has_mains() { "?\"1400 W\"" } else { "NotFitted" };
    let heater = f.water_heater.map(|kind| match kind {
        Heater::Tank => {
            let burns = if gas { "?\"8800 BTU/h\"" } else { "NotFitted" };
            format!("(kind: Tank, tank: ?\"6 gal\", propane: {burns}, electric: {electric}, set: ?\"120 °F\")")
        }
        Heater::OnDemand => {
            "(kind: OnDemand, tank: NotFitted, propane: ?\"42000 BTU/h\", electric: NotFitted, set: ?\"115 °F\")".to_owned()
        }
    });
    d.perhaps("water_heater", &format!("{LOOK} Does it burn propane, run on 120 V, or both?"), heater);
    let fridge = f.fridge.map(|kind| {
        let burns = if gas { "?\"1500 BTU/h\"" } else { "NotFitted" };
        let (average, burns, level) = match kind {
            Fridge::Absorption => ("NotFitted", burns, "level_length: ?\"3 °\", level_side: ?\"6 °\""),
            Fridge::Compressor => ("?\"2 A\"", "NotFitted", "level_length: NotFitted, level_side: NotFitted"),
            Fridge::Residential => ("NotFitted", "NotFitted", "level_length: NotFitted, level_side: NotFitted"),
        };
        format!("(\n        kind: {}, space: ?\"8 cu ft\", average: {average}, propane: {burns},\n        {level},\n    )", kind.ron())
    });
    d.perhaps("fridge", "", fridge);
    let cook = f.cook.map(|kind| {
        let big = if kind == Cook::Propane { "?\"9000 BTU/h\"" } else { "NotFitted" };
        format!("(kind: {}, burners: ?2, oven: false, big: {big})", kind.ron())
    });
    d.perhaps("cook", &format!("{LOOK} Is there an oven?"), cook);
}

fn water(d: &mut Draft, w: &Wish<'_>) {
    let remark = format!("{LOOK} `regulator` is what the loaned one is set to. Is there an outside shower?");
    d.section(
        "water",
        &remark,
        "(fresh: ?\"40 gal\", regulator: ?\"45 psi\", most: ?\"60 psi\", outside_shower: false)",
    );
    let black = if w.fitted.toilet == Some(Toilet::Black) { "?\"30 gal\"" } else { "NotFitted" };
    let (cassette, lamp, full) = if w.fitted.toilet == Some(Toilet::Cassette) {
        ("?\"5 gal\"", "?\"4 gal\"", "?\"45 lb\"")
    } else {
        ("NotFitted", "NotFitted", "NotFitted")
    };
    d.section(
        "waste",
        &format!("{LOOK} Is there a second grey tank, or a rinse for the black one?"),
        &format!(
            "(\n        grey: ?\"30 gal\", grey_galley: NotFitted, black: {black}, cassette: {cassette},\n        \
             cassette_lamp: {lamp}, cassette_full: {full}, rinse: NotFitted,\n    )"
        ),
    );
    let remark =
        format!("{LOOK} Below `dry_below` the pipes are drained; nothing is known to warm the tanks.");
    d.section("frost", &remark, "(dry_below: \"32 °F\", tanks: None)");
}

fn road(d: &mut Draft, w: &Wish<'_>) {
    let hitch = w.is_trailer().then(|| {
        "(\n        tongue_dry: ?\"700 lb\", tongue_part: ?\"12.5 %\", tongue_most: ?\"1000 lb\", trailer_most: ?\"16000 lb\",\n        \
         ball: ?\"2 5/16 in\", gear: ?\"100 lb\", rating: ?\"16000 lb\",\n    )"
            .to_owned()
    });
    d.perhaps("hitch", "", hitch);
    // A trailer counts with what pulls it: 22 ft more is a stand-in.
    let feet = libm::ceil(w.length / 12.0) + if w.is_trailer() { 22.0 } else { 0.0 };
    let stand_in = if w.is_trailer() { "?" } else { "" };
    let towing = if w.is_trailer() { "NotFitted" } else { "false" };
    d.section(
        "driving",
        "YOURS: the lot's own limits. `follow` is the length that counts for the gap ahead, with what pulls it.",
        &format!("(speed: \"60 mph\", wind: \"25 mph\", gust: \"35 mph\", follow: {stand_in}\"{feet} ft\", towing: {towing})"),
    );
}

fn fees(d: &mut Draft, w: &Wish<'_>) {
    let f = w.fitted;
    let when = |is: bool, sum: &str| if is { format!("?{sum}") } else { "NotFitted".to_owned() };
    let (engine, generator) = (f.fuel.is_some(), f.generator.is_some());
    let cylinders = f.propane == Some(Propane::Cylinders);
    d.section(
        "fees",
        "YOURS: the lot's price list. Until then texts say `the sum on the price list`. HAVE IT CHECKED.\n`pet: NotFitted` says that no pets may come along.",
        &format!(
            "(\n        night: ?\"100.00\", deposit: ?\"1000.00\", miles_night: {}, mile: {}, generator_night: {},\n        \
             generator_hour: {}, fuel_gallon: {}, fuel_service: {}, propane_quarter: {},\n        \
             propane_cylinder: {}, black: {}, cassette: {}, grey: ?\"40.00\", clean: ?\"100.00\",\n        \
             griddle: NotFitted, smoke: ?\"250.00\", pet: NotFitted, pet_hidden: ?\"250.00\", late_hour: ?\"40.00\",\n    )",
            when(engine, "100"),
            when(engine, "\"0.40\""),
            when(generator, "\"3 h\""),
            when(generator, "\"4.00\""),
            when(engine, "\"6.00\""),
            when(engine, "\"20.00\""),
            when(f.propane == Some(Propane::Frame), "\"20.00\""),
            when(cylinders, "\"30.00\""),
            when(f.toilet == Some(Toilet::Black), "\"100.00\""),
            when(f.toilet == Some(Toilet::Cassette), "\"75.00\""),
        ),
    );
}
