//! The JSON Schema of `record.json`, judged by the Python package `jsonschema`: what is written follows it, and
//! what must not be written does not.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests may fail loudly"
)]

use sendoff::record::form::SCHEMA;
use sendoff::walk::{Event, Who};
use serde_json::{Value, json};

use crate::record::amending;
use crate::record::support::{Led, Ways, ink};
use crate::seal::{has, run, words};
use crate::walk::trip::{EVERYTHING, plan, trip};

/// Reads `{"schema", "records": [...]}`; prints the number of errors of each record, and the first of them.
const SCRIPT: &str = "import sys,json,jsonschema\n\
    t=json.load(sys.stdin)\n\
    j=jsonschema.Draft202012Validator\n\
    j.check_schema(t['schema'])\n\
    v=j(t['schema'])\n\
    r=[]\n\
    for x in t['records']:\n\
    \x20   e=list(v.iter_errors(x))\n\
    \x20   b=jsonschema.exceptions.best_match(e)\n\
    \x20   r.append([len(e), '' if b is None else str(list(b.absolute_path))+' '+b.message[:200]])\n\
    print(json.dumps(r))";

/// What the validator says of each record; none without it.
fn judge(records: &[Value]) -> Option<Vec<(u64, String)>> {
    if !has("python3", &["-c", "import jsonschema"]) {
        return None;
    }
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    let task = json!({"schema": schema, "records": records});
    let out = run(std::path::Path::new("."), "python3", &["-c", SCRIPT], &serde_json::to_vec(&task).unwrap());
    assert!(out.status.success(), "{}", words(&out));
    Some(serde_json::from_slice(&out.stdout).unwrap())
}

fn json_of(led: &Led) -> Value {
    serde_json::from_slice(&led.files().0).unwrap()
}

fn whole() -> Value {
    json_of(&Led::whole(Ways::default()))
}

fn amendment() -> Value {
    let contents = amending::contents(&amending::amending()).unwrap();
    serde_json::from_slice(&contents.payload["data/record.json"]).unwrap()
}

/// Stopped half way, with nearly everything open.
fn stopped() -> Led {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.say(Event::HandoverStopped { reason: "Storm warning.".into(), by: Who::Agent });
    led.say(Event::Signed { by: Who::Agent, ink: ink() });
    led.begin_seal();
    led
}

/// Planned with all a trip file can say, taken back twice, stopped once.
fn everything() -> Led {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.say(plan(&trip(EVERYTHING)));
    led.round();
    led.consent();
    led.say(Event::Signed { by: Who::Agent, ink: ink() });
    led.say(Event::ClosingReopened { reason: "A mark was forgotten.".into() });
    led.say(Event::HandoverStopped { reason: "Brake lights out.".into(), by: Who::Agent });
    led.say(Event::ClosingReopened { reason: "They were mended.".into() });
    led.sign();
    led.begin_seal();
    led
}

#[test]
fn every_kind_of_record_follows_the_schema() {
    let refused = Ways { refused: Some("height-clearance-1"), hurried: Some("keys-1"), ..Ways::default() };
    let records = [
        whole(),
        json_of(&Led::whole(refused)),
        json_of(&Led::whole(Ways { rehearsal: true, left_out: None, language: "en-XA", ..Ways::default() })),
        json_of(&stopped()),
        json_of(&everything()),
        json_of(&crate::record::changes::changed()),
        json_of(&crate::record::changes::swapped()),
        json_of(&Led::whole(Ways { planned: false, ..Ways::default() })),
        amendment(),
    ];
    let Some(verdicts) = judge(&records) else { return };
    for (errors, first) in verdicts {
        assert_eq!(errors, 0, "{first}");
    }
}

#[test]
fn what_must_not_be_written_does_not_follow_the_schema() {
    type Change = (&'static str, fn(&mut Value));
    let changes: [Change; 21] = [
        ("a field is missing", |v| drop(v.as_object_mut().unwrap().remove("outcome"))),
        ("a field too many", |v| v["mood"] = json!("calm")),
        ("a field too many deep down", |v| v["party"]["people"][0]["licence"]["number"] = json!("D123")),
        ("a float", |v| v["marks"][0]["x"] = json!(49.5)),
        ("a float as time", |v| v["walk"]["began"]["offset_minutes"] = json!(-360.5)),
        ("a wrong word", |v| v["marks"][0]["kind"] = json!("moss")),
        ("an unknown word", |v| v["route"]["steps"][0]["outcome"] = json!({"is": "unknown"})),
        ("an unknown kind", |v| v["kind"] = json!("letter")),
        ("a digest too short", |v| v["scripts"] = json!("abcd")),
        ("a digest in capitals", |v| v["scripts"] = json!("A".repeat(64))),
        ("money without cents", |v| v["items"][0]["price"] = json!("45")),
        ("money as a number", |v| v["items"][0]["price"] = json!(45)),
        ("another schema", |v| v["schema"] = json!("1.0")),
        ("a time without Z", |v| v["sealed"] = json!("2026-07-24T22:10:00+00:00")),
        ("an ink elsewhere", |v| v["signatures"][0]["ink"] = json!("../ink.svg")),
        ("a bare number of the plan", |v| v["trip"]["counted"]["bags"] = json!(250)),
        ("a field of the plan too many", |v| v["trip"]["planned"]["plan"]["mood"] = json!("calm")),
        ("a figure in binary", |v| v["figures"][0]["values"][0]["value"] = json!(141.0)),
        ("a figure without words", |v| drop(v["figures"][0].as_object_mut().unwrap().remove("says"))),
        ("a step shown in no measures", |v| {
            let steps = v["route"]["steps"].as_array_mut().unwrap();
            let shown = steps.iter_mut().find(|s| s["outcome"]["is"] == "shown").unwrap();
            shown["outcome"]["measures"] = json!("");
        }),
        ("null for a text", |v| v["agents"][0]["code"] = Value::Null),
    ];
    let good = whole();
    let records: Vec<Value> = changes
        .iter()
        .map(|(_, change)| {
            let mut record = good.clone();
            change(&mut record);
            record
        })
        .collect();
    let mut letter = amendment();
    letter["text"] = json!("");
    let records: Vec<Value> = records.into_iter().chain([letter]).collect();
    let Some(verdicts) = judge(&records) else { return };
    let names = changes.iter().map(|(name, _)| *name).chain(["an amendment that says nothing"]);
    for (name, (errors, _)) in names.zip(verdicts) {
        assert!(errors > 0, "{name} was let through");
    }
}

/// Without the validator: it is JSON, names its draft, and leaves no object open.
#[test]
fn the_schema_closes_every_object() {
    fn closed(value: &Value, path: &str) {
        if let Value::Object(all) = value {
            if all.contains_key("properties") && all.get("type") == Some(&json!("object")) {
                assert_eq!(all.get("additionalProperties"), Some(&json!(false)), "{path}");
            }
            for (name, one) in all {
                closed(one, &format!("{path}/{name}"));
            }
        } else if let Value::Array(all) = value {
            all.iter().for_each(|one| closed(one, path));
        }
    }
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    closed(&schema, "");
    assert!(!SCHEMA.contains("\"type\": \"number\""), "whole numbers only");
}
