//! Lists of a new data sheet.

use super::args::{Cook, Fridge, Heat, Heater, Kind};
use super::places;
use super::sheet::Draft;
use super::wish::Wish;

/// Writes all lists.
pub(super) fn all(d: &mut Draft, w: &Wish<'_>) {
    let f = w.fitted;
    d.remark(
        "Where things are: from the middle of the nose, right with the nose up, then back. These are only usual places:\n\
         texts say `where staff show you` until you have measured them all and taken \"places\" off `not_known`.",
    );
    d.text.push_str("    places: {\n");
    for entry in places::entries(w) {
        d.text.push_str(&format!("        {entry},\n"));
    }
    d.text.push_str("    },\n");
    let exit = format!("(place: \"bed-exit\", words: \"{}-exit-bed\")", w.id);
    d.list(
        "exits",
        "LOOK: every door and window that people can get out by.",
        &["(place: \"entry-door\")".into(), exit],
    );
    let axle = |at: &str, wheels: u16| format!("(at: {at}, cold: \"65 psi\", wheels: {wheels})");
    let axles = match w.kind {
        Kind::Trailer => [axle("First", 2), axle("Second", 2)],
        Kind::ClassB => [axle("Front", 2), axle("Rear", 2)],
        Kind::ClassA | Kind::ClassC => [axle("Front", 2), axle("Rear", 4)],
    };
    d.list("axles", "Cold pressures stand on the tire placard. LOOK: count the wheels.", &axles);
    d.list("rooms", "Furniture on the plan, from its front corner to its rear one.", &places::rooms(w));
    d.list("slides", "", &slides(w));
    d.list(
        "seats",
        "LOOK: each seat with a belt. Which way does it face? Is there a hook for a child seat?",
        &seats(w),
    );
    let loads = loads(w);
    let power = if loads.is_empty() { "" } else { "What runs on 120 V, with the watts on its plate." };
    d.list("loads", power, &loads);
    d.list("night", "What the house battery feeds at night, with the amperes on its plate.", &night(w));
    d.list("kit", KIT, &[]);
    d.list("changes", "What is special about this unit, and what is out of order today; see README.md.", &[]);
    d.not_known.push("tires.cold".into());
    if f.slide_outs > 0 {
        d.not_known.push("slide_out.reach".into());
    }
    if !loads.is_empty() {
        d.not_known.push("loads".into());
    }
    d.not_known.extend(["night", "places", "rooms"].map(str::to_owned));
}

/// How a loaned item is written.
const KIT: &str = "Loaned items, each with its tag. `kit` in `weight` is what they weigh together. For example:\n\
    (tag: \"01\", item: \"key-ring\", count: 1, price: \"185.00\", weight: \"0.5 lb\"),\n\
    (tag: \"02\", item: \"water-hose\", count: 1, price: \"32.00\", weight: \"4 lb\"),\n\
    More items stand in i18n/en-US/units.ftl as `item-...`; write others beside them.";

fn slides(w: &Wish<'_>) -> Vec<String> {
    const SPOTS: [(f64, f64, f64); 4] =
        [(-1.0, 0.34, 0.62), (-1.0, 0.70, 0.96), (1.0, 0.74, 0.96), (1.0, 0.50, 0.66)];
    let slide = |(side, from, to): (f64, f64, f64)| {
        let side = if side * w.curb > 0.0 { "Right" } else { "Left" };
        let [from, to] = [from, to].map(|part| libm::floor(part * w.body()));
        format!("(side: {side}, from: \"{from} in\", to: \"{to} in\", reach: \"36 in\")")
    };
    SPOTS.into_iter().take(usize::from(w.fitted.slide_outs)).map(slide).collect()
}

fn seats(w: &Wish<'_>) -> Vec<String> {
    if w.is_trailer() {
        return Vec::new();
    }
    let id = |at: u16| match at {
        1 => "driver".to_owned(),
        2 => "passenger".to_owned(),
        more => format!("seat-{more}"),
    };
    let seat = |at| {
        let airbag = at <= 2;
        format!("(id: \"{}\", belt: true, faces: Forward, tether: false, airbag: {airbag})", id(at))
    };
    (1..=w.fitted.belts.unwrap_or(2)).map(seat).collect()
}

fn loads(w: &Wish<'_>) -> Vec<String> {
    let f = w.fitted;
    if !w.has_mains() {
        return Vec::new();
    }
    let gas = f.propane.is_some();
    let instead = if gas { ", instead: Propane" } else { "" };
    let outside = w.cord.is_some() || f.generator.is_some();
    let all = [
        (outside, "(id: \"charger\", draw: \"960 W\", settled: \"240 W\", long: true)".to_owned()),
        (f.roof_air > 0, "(id: \"air-front\", draw: \"1200 W\", long: true)".to_owned()),
        (
            f.fridge == Some(Fridge::Absorption),
            format!("(id: \"fridge\", draw: \"325 W\", long: true{instead})"),
        ),
        (f.fridge == Some(Fridge::Residential), "(id: \"fridge\", draw: \"150 W\", long: true)".to_owned()),
        (
            f.water_heater == Some(Heater::Tank),
            format!("(id: \"water-heater\", draw: \"1000 W\", long: true{instead})"),
        ),
        (f.cook == Some(Cook::Induction), "(id: \"induction\", draw: \"1200 W\")".to_owned()),
        (true, "(id: \"tv\", draw: \"100 W\", long: true)".to_owned()),
    ];
    all.into_iter().filter(|(is, _)| *is).map(|(_, line)| line).collect()
}

fn night(w: &Wish<'_>) -> Vec<String> {
    let f = w.fitted;
    let inverter = f.fridge == Some(Fridge::Residential) && f.inverter.is_some();
    let all = [
        (
            f.heat == Some(Heat::Furnace),
            "(id: \"heat-fan\", draw: \"7 A\", duty: \"35 %\", cold_duty: \"60 %\", hours: \"10 h\")",
        ),
        (f.heat == Some(Heat::Diesel), "(id: \"heat-fan\", draw: \"1.5 A\", hours: \"10 h\")"),
        (
            f.fridge == Some(Fridge::Compressor),
            "(id: \"fridge\", draw: \"4.5 A\", duty: \"40 %\", hours: \"12 h\")",
        ),
        (inverter, "(id: \"fridge\", draw: \"12 A\", duty: \"40 %\", hours: \"12 h\")"),
        (f.fridge == Some(Fridge::Absorption), "(id: \"fridge-board\", draw: \"0.5 A\", hours: \"12 h\")"),
        (true, "(id: \"lights\", draw: \"2 A\", hours: \"4 h\")"),
        (true, "(id: \"detectors\", draw: \"0.2 A\", hours: \"12 h\")"),
        (true, "(id: \"pump\", draw: \"6 A\", hours: \"0.3 h\")"),
    ];
    all.into_iter().filter(|(is, _)| *is).map(|(_, line)| line.to_owned()).collect()
}
