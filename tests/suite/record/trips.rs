//! The trip in a record, and the figures for it.

use sendoff::figures::{self, Given};
use sendoff::measure::System;
use sendoff::record::form::{Figure, FigureState, Handoff, Outcome, Record, StepOutcome, read};
use sendoff::walk::{Event, Who};
use serde_json::{Value, json};

use super::support::{Led, PLAN, SCRIPTS, Ways, ink, speaker};
use crate::walk::trip::{EVERYTHING, plan, trip};

fn figure<'a>(record: &'a Handoff, id: &str) -> &'a Figure {
    record.figures.iter().find(|f| f.id == id).unwrap_or_else(|| panic!("no figure {id}"))
}

#[test]
fn it_holds_the_plan_as_made_and_what_was_counted() {
    let led = Led::whole(Ways::default());
    let record = led.record();
    let held = record.trip.as_ref().unwrap();
    let planned = held.planned.as_ref().unwrap();
    assert_eq!(planned.plan.trip(), Some(trip(PLAN)));
    assert_eq!(planned.at.utc, led.walk.planned().unwrap().at);
    let counted = held.counted.as_ref().unwrap();
    assert_eq!(counted.trip(), led.walk.trip());
    // Party and booking of the walk, gauges as read: two thirds of fresh water, seven eighths of fuel.
    assert_eq!((counted.0["nights"].as_u64(), counted.0["people"].as_array().unwrap().len()), (Some(5), 3));
    let start = json!({"fresh": "2/3", "grey": "2/3", "black": "2/3", "propane": "3/4", "fuel": "7/8"});
    assert_eq!(counted.0["start"], start);
    assert_eq!((&counted.0["bags"], &counted.0["house_volts"]), (&json!("250 lb"), &json!("14.8 V")));
    assert_eq!(counted.0.get("wind"), None, "what nobody told is left out");
}

#[test]
fn its_figures_are_those_of_the_trip_as_of_the_closing() {
    let led = Led::whole(Ways::default());
    let record = led.record();
    let facts = SCRIPTS.facts("wren").unwrap();
    let trip = led.walk.trip().unwrap();
    assert_eq!(record.figures.len(), figures::ids().count());
    for found in &record.figures {
        let wanted = figures::one(&found.id, Given { facts: &facts, trip: Some(&trip) }).unwrap();
        let amounts: Vec<String> = wanted.values.iter().map(|v| v.amount().to_string()).collect();
        let written: Vec<&str> = found.values.iter().map(|v| v.value.as_str()).collect();
        assert_eq!(written, amounts, "{}", found.id);
        assert_eq!(found.verdict.as_deref(), wanted.verdict, "{}", found.id);
        assert!(
            !found.says.title.is_empty() && !found.says.value.contains('⟨'),
            "{}: {:?}",
            found.id,
            found.says
        );
    }
    let fresh = figure(&record, "fresh_days");
    let level = fresh.inputs.iter().find(|i| i.name == "trip.start.fresh").unwrap();
    assert_eq!((level.value.as_str(), level.from.as_str()), ("2/3", "reading"));
    // Handbook E.1 for Wren: 40 US gal of fresh water; E.4: read in thirds.
    let tank = fresh.inputs.iter().find(|i| i.name == "water.fresh").unwrap();
    assert_eq!((tank.value.as_str(), tank.measure.as_str()), ("40 US gal", "US gal"));
    let days = trip.people.len();
    assert_eq!((days, fresh.values[0].measure.as_str()), (3, "d"));
}

#[test]
fn it_holds_what_runs_together_how_supplies_go_and_the_bill() {
    let mut led = Led::begin(Ways::default());
    led.open();
    // Wren has no cassette and no cylinders to charge for.
    let found = EVERYTHING.replace("cassette_full: true", "cassette_full: false");
    led.say(plan(&trip(&found.replace("empty_cylinders: 1", "empty_cylinders: 0"))));
    led.round();
    led.consent();
    led.sign();
    led.begin_seal();
    let record = led.record();
    let fits = figure(&record, "loads_fit").details.fits.as_ref().unwrap();
    assert_eq!(
        (fits.supply.as_str(), fits.on.as_slice()),
        ("post", ["fridge", "air-front"].map(String::from).as_slice())
    );
    assert!(!fits.sets.is_empty());
    let course = figure(&record, "trip_projection").details.projection.as_ref().unwrap();
    assert_eq!(course.nights, 5);
    let resources: Vec<&str> = course.courses.iter().map(|c| c.resource.as_str()).collect();
    assert!(resources.contains(&"fresh") && resources.contains(&"battery"), "{resources:?}");
    assert!(course.courses.iter().all(|c| !c.whole.is_empty() && c.ends.as_deref() != Some("")));
    let total = figure(&record, "return_total");
    let bill = total.details.bill.as_ref().unwrap_or_else(|| panic!("{:?}", total.state));
    assert_eq!(bill.currency, "USD");
    // Handbook E.5: two camp chairs at 35.00 each.
    let chairs = bill.lines.iter().find(|l| l.id == "missing-W12").unwrap();
    assert_eq!(
        (chairs.count.as_str(), chairs.price.as_str(), chairs.amount.as_str()),
        ("2", "35.00", "70.00")
    );
    let text = led.files().1;
    let told = section(&text, "THE TRIP");
    for wanted in ["11 in (28 cm)", "12 ft 6 in (3.81 m)", "Refrigerator (settled)", "then none"] {
        assert!(told.contains(wanted), "{wanted} in {told}");
    }
    assert!(!text.contains('⟨'), "{:?}", text.lines().find(|l| l.contains('⟨')));
    assert!(text.lines().all(|l| l.chars().count() <= 72));
}

/// From a heading to the next, on one line.
fn section(text: &str, head: &str) -> String {
    let start = text.find(&format!("\n{head}")).unwrap_or_else(|| panic!("no {head}"));
    let after = start + text[start..].find(&"-".repeat(72)).unwrap() + 72;
    let end = text[after..].find(&"-".repeat(72)).map_or(text.len(), |at| after + at);
    text[start..end].split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_text_tells_the_trip_and_each_figure_in_the_renters_measures() {
    let (_, text) = Led::whole(Ways { system: System::Metric, ..Ways::default() }).files();
    let told = section(&text, "THE TRIP");
    let wanted = [
        "Planned 24 Jul 2026",
        "Hook-ups, night by night power, none, none, and then none",
        "Water use",
        "with care",
        "Bags and food",
        "113 kg",
        "Coldest night",
        "4 °C",
        "Roof air conditioner and TV",
        "a post of 30 A",
    ];
    for wanted in wanted {
        let told = told.replace('.', "").split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(told.contains(wanted), "{wanted} in {told}");
    }
    let told = section(&text, "FIGURES");
    assert!(told.contains("AS OF THE CLOSING"), "{told}");
    assert!(told.contains("kg"), "{told}");
    assert!(told.contains("cannot be computed: "), "a figure that nobody asked about says why: {told}");
    assert!(told.contains("common practice, no source"), "{told}");
}

#[test]
fn without_a_plan_it_says_so_and_counts_on_nothing() {
    let led = Led::whole(Ways { planned: false, ..Ways::default() });
    let record = led.record();
    let held = record.trip.as_ref().unwrap();
    assert_eq!(held.planned, None);
    assert_eq!(held.counted.as_ref().unwrap().trip(), led.walk.trip());
    assert_eq!(figure(&record, "fresh_days").state, FigureState::Ok);
    assert!(section(&led.files().1, "THE TRIP").contains("Nobody planned this trip."));
}

#[test]
fn a_walk_without_a_party_has_no_figures_of_a_trip() {
    let mut led = Led::begin(Ways::default());
    led.say(Event::AgentOn { code: "A7".into() });
    led.say(Event::PartySet {
        people: vec![sendoff::walk::Person {
            id: super::support::ROBIN,
            name: "Robin Vale".into(),
            age: 41,
            driver: true,
        }],
    });
    led.say(Event::HandoverStopped { reason: "No booking.".into(), by: Who::Agent });
    led.say(Event::Signed { by: Who::Agent, ink: ink() });
    led.begin_seal();
    let record = led.record();
    assert!(matches!(record.outcome, Outcome::NotHandedOver { .. }));
    assert_eq!(record.trip, None);
    assert_eq!(figure(&record, "fresh_days").state, FigureState::Missing { fact: "trip".into() });
    let (_, text) = led.files();
    assert!(section(&text, "THE TRIP").contains("Party or booking was not known"), "{text}");
    let figures = section(&text, "FIGURES");
    assert!(figures.contains("cannot be computed: the trip is missing"), "{figures}");
}

/// A step shown in metric measures and shown again in others stands in both; each text in its own.
#[test]
fn a_step_stands_in_the_measures_it_was_shown_in() {
    let mut led = Led::begin(Ways { system: System::Metric, ..Ways::default() });
    led.open();
    led.round();
    led.say(Event::ReaderSet { language: "en-US".into(), measures: "us".into() });
    let again = "height-clearance";
    led.say(Event::StepShown { step: again.into(), language: "en-US".into() });
    led.consent();
    led.sign();
    led.begin_seal();
    let record = led.record();
    let trip = led.walk.trip();
    for step in &record.route.steps {
        let StepOutcome::Shown { measures, .. } = &step.outcome else { continue };
        let wanted: &[&str] = if step.id == again { &["metric", "us"] } else { &["metric"] };
        assert_eq!(measures, wanted[wanted.len() - 1], "{}", step.id);
        let all: Vec<&str> = step.texts.iter().map(|t| t.measures.as_str()).collect();
        assert_eq!(all, wanted, "{}", step.id);
        let found = led.walk.route().step(&step.id).unwrap();
        for text in &step.texts {
            let system = if text.measures == "metric" { System::Metric } else { System::Us };
            let said = speaker("en-US", system).with_trip(trip.clone()).step(found);
            assert_eq!((&said.show, &said.know), (&text.show, &text.know), "{}", step.id);
        }
    }
    let (_, text) = led.files();
    let shown = &text[text.find("WHAT WAS SHOWN").unwrap()..];
    assert!(shown.contains("Shown in en-US, metric measures:"), "{shown}");
}

#[test]
fn a_stop_that_was_taken_back_stands_in_the_record() {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.round();
    led.consent();
    led.say(Event::HandoverStopped { reason: "Brake lights out.".into(), by: Who::Agent });
    led.say(Event::ClosingReopened { reason: "They were mended.".into() });
    led.sign();
    led.begin_seal();
    let record = led.record();
    let stop = record.reopened[0].stopped.as_ref().unwrap();
    assert_eq!(
        (stop.reason.as_str(), record.reopened[0].reason.as_str()),
        ("Brake lights out.", "They were mended.")
    );
    let (_, text) = led.files();
    let signatures = section(&text, "SIGNATURES");
    assert!(
        signatures.contains("They were mended.") && signatures.contains("Brake lights out."),
        "{signatures}"
    );
}

/// What version 1.1 adds is not in a record of version 1.0, which is read all the same.
#[test]
fn a_record_of_version_1_0_is_still_read() {
    let mut value: Value = serde_json::from_slice(&Led::whole(Ways::default()).files().0).unwrap();
    value["schema"] = json!("1.0");
    let record = value.as_object_mut().unwrap();
    assert!(record.remove("trip").is_some() && record.remove("reopened").is_some());
    for figure in value["figures"].as_array_mut().unwrap() {
        let figure = figure.as_object_mut().unwrap();
        for added in ["says", "fits", "projection", "bill"] {
            drop(figure.remove(added));
        }
        for input in figure["inputs"].as_array_mut().unwrap() {
            drop(input.as_object_mut().unwrap().remove("measure"));
        }
        for value in figure["values"].as_array_mut().unwrap() {
            drop(value.as_object_mut().unwrap().remove("counted"));
        }
    }
    for step in value["route"]["steps"].as_array_mut().unwrap() {
        drop(step["outcome"].as_object_mut().unwrap().remove("measures"));
    }
    let Record::Handoff(record) = read(&serde_json::to_vec(&value).unwrap()).unwrap() else { panic!() };
    assert_eq!((record.trip, record.reopened.len()), (None, 0));
    assert!(record.figures.iter().all(|f| f.says.title.is_empty()));
}
