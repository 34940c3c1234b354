//! From a walk to `record.json`.

use sendoff::measure::System;
use sendoff::record::build::{BuildFault, build};
use sendoff::record::form::{
    Asks, FactValue, How, Outcome, ReadingOutcome, Refusal, Said, SignatureDone, StepOutcome, Who as Whom,
};
use sendoff::record::seal::Kind;
use sendoff::walk::{Event, Shown, Walk, Who};

use super::support::{Led, ROBIN, SAM, SCRIPTS, Ways, head, route};

#[test]
fn same_events_scripts_and_head_give_the_same_bytes() {
    let contents = Led::whole(Ways::default()).contents().unwrap();
    assert_eq!(contents, Led::whole(Ways::default()).contents().unwrap());
    let names: Vec<&str> = contents.payload.keys().map(String::as_str).collect();
    let expected =
        ["data/ink-1.svg", "data/ink-2.svg", "data/ink-3.svg", "data/record.json", "data/record.txt"];
    assert_eq!(names, expected);
    assert!(contents.payload["data/record.json"].ends_with(b"}\n"));
}

#[test]
fn it_holds_what_happened() {
    let led = Led::whole(Ways::default());
    let record = led.record();
    assert!(matches!(record.outcome, Outcome::HandedOver { .. }));
    assert_eq!(record.walk.events as usize, led.walk.events());
    assert_eq!(record.route.steps.len(), route().steps.len());
    for step in &record.route.steps {
        let shown = matches!(step.outcome, StepOutcome::Shown { .. });
        assert_eq!((shown, shown), (led.shown(&step.id), !step.texts.is_empty()), "{}", step.id);
    }
    let odometer = record.readings.iter().find(|r| r.id == "odometer").unwrap();
    assert!(
        matches!(&odometer.outcome, ReadingOutcome::Taken { value, measure, .. } if value == "48213.4" && measure == "mi")
    );
    let broken = record.readings.iter().find(|r| r.id == "gen-hours").unwrap();
    assert!(matches!(&broken.outcome, ReadingOutcome::NotTaken { note, .. } if note == "Display is dark."));
    // Handbook E.5: four camp chairs at 35.00 each.
    let chairs = record.items.iter().find(|i| i.tag == "W12").unwrap();
    assert_eq!((chairs.counted.as_ref().unwrap().count, chairs.price.to_string().as_str()), (4, "35.00"));
    assert_eq!((record.marks[0].x, record.marks[0].y), (490, 2620));
    assert_eq!(record.party.people.iter().filter(|p| p.driver && p.licence.is_some()).count(), 2);
    assert!(!record.party.people[2].present);
    let inks: Vec<(Whom, &str)> = record
        .signatures
        .iter()
        .filter_map(|s| match &s.done {
            SignatureDone::Signed { ink } => Some((s.by, ink.as_str())),
            _ => None,
        })
        .collect();
    let person = |number| Whom::Person { number };
    assert_eq!(
        inks,
        [(person(1), "data/ink-1.svg"), (person(2), "data/ink-2.svg"), (Whom::Agent, "data/ink-3.svg")]
    );
}

#[test]
fn it_holds_all_facts_of_the_unit_as_authored() {
    let record = Led::whole(Ways::default()).record();
    let facts = SCRIPTS.facts("wren").unwrap();
    assert_eq!(record.facts.len(), facts.iter().count());
    let fact = |name: &str| &record.facts.iter().find(|f| f.name == name).unwrap().value;
    let quantity =
        |value: &str, measure: &str| FactValue::Quantity { value: value.into(), measure: measure.into() };
    // Handbook E.1 for Wren; `gal` of the lot is written out.
    assert_eq!(*fact("water.fresh"), quantity("40 US gal", "US gal"));
    assert_eq!(*fact("size.height"), quantity("135 in", "in"));
    assert_eq!(*fact("generator.pickup"), quantity("1/4", ""));
    assert_eq!(*fact("charges.tax"), quantity("7.5 %", "%"));
    assert!(matches!(fact("fees.deposit"), FactValue::Money { value } if value.to_string() == "1500.00"));
    assert_eq!(*fact("waste.cassette"), FactValue::NotFitted);
    assert!(record.not_fitted.contains(&"solar".to_owned()));
    assert!(!record.not_fitted.contains(&"generator".to_owned()));
    let sign = record.figures.iter().find(|f| f.id == "clearance_min_sign").unwrap();
    // Handbook FIG-01: 135 in + 6 in.
    assert_eq!((sign.values[0].value.as_str(), sign.values[0].measure.as_str()), ("141", "in"));
    assert_eq!(record.lot.currency, "USD");
}

#[test]
fn no_number_has_decimals() {
    fn whole(value: &serde_json::Value, path: &str) {
        match value {
            serde_json::Value::Number(n) => assert!(n.is_i64() || n.is_u64(), "{path}: {n}"),
            serde_json::Value::Array(all) => {
                for (i, one) in all.iter().enumerate() {
                    whole(one, &format!("{path}/{i}"));
                }
            }
            serde_json::Value::Object(all) => {
                for (name, one) in all {
                    whole(one, &format!("{path}/{name}"));
                }
            }
            _ => {}
        }
    }
    let (json, _) = Led::whole(Ways::default()).files();
    whole(&serde_json::from_slice(&json).unwrap(), "");
}

#[test]
fn an_answer_is_noted_with_how_it_was_asked_and_whether_it_was_too_fast() {
    let hurried = SCRIPTS.topics["lp-supply"].value.steps[0].value.cautions[0].value.id.value.as_str();
    let ways = Ways { hurried: Some(hurried), ..Ways::default() };
    let record = Led::whole(ways).record();
    let mut demonstrations = 0;
    for caution in record.route.steps.iter().flat_map(|s| &s.cautions) {
        for response in &caution.responses {
            let Said::Confirmed { how, looked_ms, too_fast } = &response.said else { panic!("{response:?}") };
            let text = caution.texts.iter().find(|t| t.digest == response.text).unwrap();
            assert_eq!(
                (*too_fast, *looked_ms < text.reading_ms),
                (caution.id == hurried, *too_fast),
                "{}",
                caution.id
            );
            // 180 words a minute: a third of a second each.
            let words = [&text.hazard, &text.harm, &text.avoid]
                .iter()
                .map(|t| t.split_whitespace().count())
                .sum::<usize>();
            assert_eq!(text.reading_ms, u32::try_from((words * 1000).div_ceil(3)).unwrap());
            if caution.asks == Asks::Demonstrate {
                demonstrations += 1;
                assert_eq!(*how, How::Demonstrate);
            }
        }
    }
    assert!(demonstrations > 0, "the demo lot asks for demonstrations");
}

#[test]
fn a_text_that_was_not_shown_is_never_sealed() {
    let mut led = Led::begin(Ways { left_out: None, ..Ways::default() });
    led.open();
    led.round();
    let (_, caution) =
        route().steps.iter().find_map(|s| s.cautions.first().map(|c| (s.clone(), c.clone()))).unwrap();
    let shown = Shown { text: "ab".repeat(32), language: "en-US".into() };
    led.say(Event::CautionAnswered {
        caution: caution.id.clone(),
        version: caution.version,
        by: ROBIN,
        how: sendoff::walk::Answer::Hold,
        shown: shown.clone(),
        looked_ms: 9_000,
    });
    led.say(Event::ConsentAnswered { by: ROBIN, given: true, shown });
    led.sign();
    led.begin_seal();
    // The consent is looked at first.
    assert!(matches!(led.contents(), Err(BuildFault::ConsentChanged { by: 1, .. })));
    let mut led = Led::begin(Ways::default());
    led.open();
    led.round();
    let shown = Shown { text: "ab".repeat(32), language: "en-US".into() };
    let (id, version) = (caution.id.clone(), caution.version);
    let how = sendoff::walk::Answer::Hold;
    led.say(Event::CautionAnswered { caution: id, version, by: ROBIN, how, shown, looked_ms: 9_000 });
    led.consent();
    led.sign();
    led.begin_seal();
    assert!(
        matches!(led.contents(), Err(BuildFault::CautionChanged { caution: id, by: 1, .. }) if id == caution.id)
    );
}

#[test]
fn an_answer_keeps_the_measures_it_was_read_in() {
    let mut led = Led::begin(Ways { system: System::Metric, ..Ways::default() });
    led.open();
    led.round();
    led.say(Event::ReaderSet { language: "en-US".into(), measures: "us".into() });
    led.consent();
    led.sign();
    led.begin_seal();
    let record = led.record();
    let texts: Vec<_> = record.route.steps.iter().flat_map(|s| &s.cautions).flat_map(|c| &c.texts).collect();
    assert!(texts.iter().any(|t| t.measures == "metric"), "some caution has a value in it");
    for (caution, text) in
        record.route.steps.iter().flat_map(|s| &s.cautions).flat_map(|c| c.texts.iter().map(move |t| (c, t)))
    {
        let system = if text.measures == "metric" { System::Metric } else { System::Us };
        let (_, found) = led.walk.route().caution(&caution.id).unwrap();
        let said = super::support::speaker("en-US", system).caution(found);
        assert_eq!((&said.hazard, &said.avoid), (&text.hazard, &text.avoid), "{}", caution.id);
    }
}

#[test]
fn a_refusal_stands_with_reason_and_decision() {
    let caution = "height-clearance-1";
    let record = Led::whole(Ways { refused: Some(caution), ..Ways::default() }).record();
    let [Refusal::Caution { caution: id, by, reason, .. }] = record.refusals.as_slice() else {
        panic!("{:?}", record.refusals)
    };
    assert_eq!((id.as_str(), *by, reason.as_str()), (caution, SAM.0, "Wants to read it at home first."));
}

#[test]
fn a_walk_that_was_stopped_at_the_desk_can_be_sealed() {
    let mut led = Led::begin(Ways::default());
    led.say(Event::AgentOn { code: "A7".into() });
    led.say(Event::PartySet {
        people: vec![sendoff::walk::Person { id: ROBIN, name: "Robin Vale".into(), age: 41, driver: true }],
    });
    led.say(Event::HandoverStopped { reason: "Licence left at home.".into(), by: Who::Agent });
    led.say(Event::Signed { by: Who::Agent, ink: super::support::ink() });
    led.begin_seal();
    let record = led.record();
    assert!(
        matches!(&record.outcome, Outcome::NotHandedOver { reason, .. } if reason == "Licence left at home.")
    );
    assert_eq!(record.reader.language, "en-US");
    assert!(record.reader.at.is_none());
    assert!(record.route.steps.iter().all(|s| s.outcome == StepOutcome::Open && s.texts.is_empty()));
    let (_, text) = led.files();
    assert!(text.contains("RECORD: NOT HANDED OVER"));
}

#[test]
fn withdrawn_signatures_are_told_and_do_not_count() {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.round();
    led.consent();
    led.say(Event::Signed { by: Who::Person(ROBIN), ink: super::support::ink() });
    led.say(Event::ClosingReopened { reason: "One chair too many.".into() });
    led.sign();
    led.begin_seal();
    let record = led.record();
    assert_eq!((record.withdrawn.len(), record.signatures.len()), (1, 3));
    assert!(record.withdrawn[0].signed);
    assert_eq!(record.withdrawn[0].reason, "One chair too many.");
    assert_eq!((record.reopened.len(), record.reopened[0].reason.as_str()), (1, "One chair too many."));
    let text: Vec<String> = led.files().1.split_whitespace().map(str::to_owned).collect();
    assert_eq!(text.join(" ").matches("Reason: One chair too many.").count(), 2);
}

#[test]
fn head_walk_and_scripts_must_fit() {
    let led = Led::whole(Ways::default());
    let built = |change: &dyn Fn(&mut sendoff::record::build::SealingHead)| {
        let mut head = head(Kind::Handoff);
        change(&mut head);
        build(&led.walk, &SCRIPTS, &head)
    };
    assert!(matches!(built(&|h| h.kind = Kind::NotHandedOver), Err(BuildFault::Kind { .. })));
    assert!(matches!(built(&|h| h.kind = Kind::Rehearsal), Err(BuildFault::Kind { .. })));
    assert!(matches!(built(&|h| h.number = 124), Err(BuildFault::Place)));
    assert!(matches!(built(&|h| h.previous = None), Err(BuildFault::Place)));
    assert!(matches!(built(&|h| h.id = "t9-000000-000123".into()), Err(BuildFault::Id { .. })));
    let (other, _) = sendoff::script::Scripts::load(std::sync::Arc::new(changed_bundle()));
    assert!(matches!(
        build(&led.walk, &other.unwrap(), &head(Kind::Handoff)),
        Err(BuildFault::OtherScripts { .. })
    ));
    let mut open = Led::begin(Ways::default());
    open.open();
    assert!(matches!(open.contents(), Err(BuildFault::NotDecided)));
    let _: &Walk = &open.walk;
}

/// The demo lot with one more comment in a file.
fn changed_bundle() -> sendoff::script::Bundle {
    let names: Vec<String> = SCRIPTS.bundle.names().map(str::to_owned).collect();
    let files = names.into_iter().map(|name| {
        let mut bytes = SCRIPTS.bundle.get(&name).unwrap().to_vec();
        if name.ends_with("lot.ron") {
            bytes.extend_from_slice(b"// changed\n");
        }
        (name, std::sync::Arc::from(bytes))
    });
    sendoff::script::Bundle::new(files.collect(), true)
}
