//! Hazards that equipment brings: each is warned of on the route of the unit that has it.

use std::sync::Arc;

use sendoff::check::Report;
use sendoff::route;
use sendoff::script::{Bundle, Hazard, Scripts, Signal};

use super::{WREN, changed, checked, lot, text_of};

fn demo() -> Scripts {
    Scripts::load(Arc::new(Bundle::demo())).0.expect("the demo lot can be read")
}

/// Where hazards are that nothing warns of.
fn uncovered(report: &Report) -> Vec<(u32, u32)> {
    let faults = report.faults.iter().filter(|f| f.code == "hazard.uncovered");
    faults.map(|f| (f.place.line, f.place.col)).collect()
}

#[test]
fn every_rule_is_kept_and_every_rule_can_be_broken() {
    let scripts = demo();
    let rules = scripts.hazards.as_ref().expect("the demo lot has rules");
    assert!(rules.value.len() > 60, "{} rules", rules.value.len());
    assert_eq!(uncovered(&checked(lot())), []);
    for rule in &rules.value {
        let hazard = format!("hazard: {:?},", rule.value.hazard.value);
        let other = if rule.value.hazard.value == Hazard::Wear { "hazard: Cold," } else { "hazard: Wear," };
        let mut files = lot();
        for topic in &rule.value.topics {
            let name = format!("walkthroughs/topics/{}.ron", topic.value);
            let text = text_of(&files, &name).replace(&hazard, other);
            let _ = files.insert(name, Arc::from(text.into_bytes()));
        }
        let place = rules.place(&rule.value.hazard);
        let found = uncovered(&checked(files));
        assert!(found.contains(&(place.line, place.col)), "the rule at {place} asks for nothing");
    }
}

/// Topics that warn of what people do, and not of equipment.
const CONDUCT: [&str; 3] = ["accident-steps", "campsite-manners", "pets-smoking"];

#[test]
fn every_topic_with_a_grave_caution_is_asked_for() {
    let scripts = demo();
    let rules = &scripts.hazards.as_ref().expect("the demo lot has rules").value;
    let mut wrong = Vec::new();
    for (id, topic) in &scripts.topics {
        let cautions = topic.value.steps.iter().flat_map(|s| &s.value.cautions);
        let grave = cautions.map(|c| c.value.signal).any(|signal| signal >= Signal::Warning);
        let asked = rules.iter().any(|rule| rule.value.topics.iter().any(|t| t.value == *id));
        if grave && asked == CONDUCT.contains(&id.as_str()) {
            wrong.push(id);
        }
    }
    assert!(wrong.is_empty(), "{wrong:?}");
}

/// Whether a topic on the route of a unit warns of a hazard.
fn warned(scripts: &Scripts, unit: &str, topics: &[&str], hazard: Hazard) -> bool {
    let route = route::build(scripts, unit).expect("a unit of the demo lot");
    let steps = route.steps.iter().filter(|s| topics.contains(&s.topic.as_str()));
    steps.flat_map(|s| &s.cautions).any(|c| c.hazard == hazard)
}

/// Common practice, no source: city water bypasses the pump, and a regulator stays on the hose.
#[test]
fn every_unit_with_a_city_inlet_is_warned_of_its_pressure() {
    let scripts = demo();
    let inlets: Vec<&String> = scripts
        .units
        .iter()
        .filter(|(_, s)| s.value.places.contains_key("city-inlet"))
        .map(|(id, _)| id)
        .collect();
    assert_eq!(inlets.len(), scripts.units.len(), "every demo unit has an inlet");
    for unit in inlets {
        assert!(warned(&scripts, unit, &["city-water-regulator"], Hazard::Water), "{unit}");
    }
}

/// Common practice, no source: the roof is for maintenance only.
#[test]
fn every_unit_with_a_ladder_is_warned_of_the_roof() {
    let scripts = demo();
    let ladders = scripts.units.iter().filter(|(_, s)| s.value.roof.value.ladder);
    let ladders: Vec<&String> = ladders.map(|(id, _)| id).collect();
    assert_eq!(ladders, ["wren"]);
    assert!(warned(&scripts, "wren", &["roof-ladder"], Hazard::Fall));
}

/// Common practice, no source: bay locks of many units share one key, so nothing of value lies behind them.
#[test]
fn every_unit_is_warned_of_theft_from_its_bays() {
    let scripts = demo();
    for unit in scripts.units.keys() {
        assert!(warned(&scripts, unit, &["keys", "storage-bays"], Hazard::Theft), "{unit}");
    }
}

/// Common practice, no source: the furnace's outside grille is hot, and nothing is laid over it.
#[test]
fn every_unit_with_a_furnace_is_warned_of_its_grille() {
    let scripts = demo();
    let furnaces = scripts.units.iter().filter(|(_, s)| s.value.furnace.value.get().is_some());
    let furnaces: Vec<&String> = furnaces.map(|(id, _)| id).collect();
    assert_eq!(furnaces, ["heron", "wren"]);
    for unit in furnaces {
        assert!(warned(&scripts, unit, &["furnace-lp"], Hazard::Fire), "{unit}");
    }
}

#[test]
fn equipment_that_is_added_brings_its_hazard() {
    // An inverter in a sheet, and its topic without its caution.
    let inverter = "inverter: (power: \"2000 W\", idle: \"1.5 A\", efficiency: \"90 %\"),";
    let topic = "walkthroughs/topics/inverter.ron";
    let shock = "hazard: Shock, harm: Death, answer: Hold";
    let report = changed(&[
        (WREN, "inverter: NotFitted,", inverter),
        (topic, shock, "hazard: Wear, harm: Death, answer: Hold"),
    ]);
    let whats: Vec<&str> =
        report.faults.iter().filter(|f| f.code == "hazard.uncovered").map(|f| f.what.as_str()).collect();
    assert!(whats.iter().any(|what| what.contains("`wren`") && what.contains("Shock")), "{whats:?}");
}
