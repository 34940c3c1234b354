//! Records of newer programs are read or refused politely.

use sendoff::record::form::{ReadFault, Record, Said, SignatureDone, StepOutcome, read};
use serde_json::{Value, json};

use super::support::{Led, Ways};

fn record() -> Value {
    serde_json::from_slice(&Led::whole(Ways::default()).files().0).unwrap()
}

fn reading(value: &Value) -> Result<Record, ReadFault> {
    read(&serde_json::to_vec(value).unwrap())
}

#[test]
fn what_a_newer_minor_version_adds_is_passed_over() {
    let mut value = record();
    value["schema"] = json!("1.7");
    value["weather"] = json!({"rain": true});
    value["route"]["steps"][0]["mood"] = json!("calm");
    value["route"]["steps"][0]["outcome"] = json!({"is": "sung", "song": 3});
    value["signatures"][0]["did"] = json!("thumbprint");
    value["marks"][0]["kind"] = json!("moss");
    let response = "/route/steps";
    let steps = value.pointer_mut(response).unwrap().as_array_mut().unwrap();
    let caution = steps.iter_mut().find_map(|s| s["cautions"].as_array_mut()?.first_mut()).unwrap();
    caution["responses"][0]["said"] = json!("whistled");
    let Record::Handoff(read) = reading(&value).unwrap() else { panic!() };
    assert_eq!(read.head.schema.to_string(), "1.7");
    assert_eq!(read.route.steps[0].outcome, StepOutcome::Unknown);
    assert_eq!(read.signatures[0].done, SignatureDone::Unknown);
    assert_eq!(read.marks[0].kind.as_str(), "unknown");
    let said = read.route.steps.iter().flat_map(|s| &s.cautions).flat_map(|c| &c.responses).map(|r| &r.said);
    assert_eq!(said.filter(|s| **s == Said::Unknown).count(), 1);
}

#[test]
fn a_newer_major_version_and_other_files_are_refused_politely() {
    let mut value = record();
    value["schema"] = json!("2.0");
    // Whatever else it holds is not looked at.
    value["walk"] = json!(17);
    let fault = reading(&value).unwrap_err();
    assert!(matches!(fault, ReadFault::Newer { found } if found.major == 2), "{fault}");
    assert!(fault.to_string().contains("use a newer one"), "{fault}");
    value["format"] = json!("shopping-list");
    assert!(matches!(reading(&value), Err(ReadFault::Other { .. })));
    assert!(matches!(read(b"{}"), Err(ReadFault::Form(_))));
    assert!(matches!(read(b"\xff"), Err(ReadFault::Form(_))));
}

#[test]
fn what_is_written_reads_back_as_it_was() {
    let (bytes, _) = Led::whole(Ways::default()).files();
    let Record::Handoff(record) = read(&bytes).unwrap() else { panic!() };
    assert_eq!(sendoff::record::form::write(&*record).unwrap(), bytes);
}
