//! What a sealed record says was done, line by line in the order of its times.

use jiff::Timestamp;
use sendoff::record::zip;
use serde_json::Value;

/// What was done and when.
type Deed = (Timestamp, String);

fn text(value: &Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), str::to_owned)
}

fn at(value: &Value) -> Timestamp {
    let time = value.get("at").unwrap_or(value);
    text(time.get("utc").unwrap_or(time)).parse().unwrap_or_else(|e| panic!("no time in {value}: {e}"))
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn number(value: &Value) -> String {
    value["number"].as_u64().map_or_else(|| "agent".to_owned(), |n| format!("person {n}"))
}

/// Everything that hands did, in order.
pub fn deeds(record: &Value) -> Vec<Deed> {
    let mut all = of_opening(record);
    for step in list(&record["route"]["steps"]) {
        let id = text(&step["id"]);
        let outcome = &step["outcome"];
        all.push((
            at(outcome),
            match outcome["is"].as_str() {
                Some("shown") => format!("shown {id}"),
                _ => format!("left out {id}: {}", text(&outcome["reason"])),
            },
        ));
        for caution in list(&step["cautions"]) {
            all.extend(list(&caution["responses"]).iter().map(of_answer));
        }
    }
    all.extend(of_round(record));
    let consents = list(&record["consents"]).iter();
    all.extend(consents.map(|c| {
        let given = if c["given"] == true { "given" } else { "paper" };
        (at(c), format!("consent {} {given}", c["by"]))
    }));
    let signatures = list(&record["signatures"]).iter();
    all.extend(signatures.map(|s| (at(s), format!("{} by {}", text(&s["did"]), number(&s["by"])))));
    let copy = &record["copy"];
    all.push((at(&copy["offered"]), "copy offered".to_owned()));
    all.push((at(&copy["chosen"]), format!("copy {}", text(&copy["chosen"]["choice"]))));
    all.push((at(&record["outcome"]), text(&record["outcome"]["is"]).replace('-', " ")));
    all.sort_by_key(|(at, _)| *at);
    all
}

fn of_opening(record: &Value) -> Vec<Deed> {
    let (opening, party, reader) = (&record["opening"], &record["party"], &record["reader"]);
    let booking = &opening["booking"];
    let mut all: Vec<Deed> =
        list(&record["agents"]).iter().map(|a| (at(a), format!("agent {}", text(&a["code"])))).collect();
    all.push((at(reader), format!("reader {} {}", text(&reader["language"]), text(&reader["measures"]))));
    let nights = &booking["nights"];
    all.push((at(booking), format!("booking {}, {nights} nights", text(&booking["reference"]))));
    for person in list(&party["people"]) {
        let drives = if person["driver"] == true { " drives" } else { "" };
        all.push((at(party), format!("party {} {}{drives}", text(&person["name"]), person["age"])));
        let paper = &person["licence"];
        if paper.is_object() {
            let words = ["class", "country", "expiry"].map(|key| text(&paper[key])).join(" ");
            all.push((at(paper), format!("license {} {words}", person["number"])));
        }
    }
    let present: Vec<String> = list(&opening["present"]["people"]).iter().map(Value::to_string).collect();
    all.push((at(&opening["present"]), format!("present {}", present.join(" "))));
    all.push((at(&opening["first_time"]), format!("first time {}", opening["first_time"]["value"])));
    let translator = &opening["translator"];
    all.push((at(translator), format!("translator `{}`", text(&translator["value"]))));
    all.push((at(&opening["opened"]), "opened".to_owned()));
    all
}

fn of_answer(response: &Value) -> Deed {
    let (by, how) = (&response["by"], text(&response["how"]));
    let said = match response["said"].as_str() {
        Some("confirmed") => format!("{by} confirms by {how}"),
        _ => format!("{by} refuses"),
    };
    (at(response), said)
}

/// What is done round the unit besides showing and answering.
fn of_round(record: &Value) -> Vec<Deed> {
    let mut all = Vec::new();
    for reading in list(&record["readings"]) {
        let outcome = &reading["outcome"];
        if outcome["is"] != "open" {
            all.push((at(outcome), format!("reading {} {}", text(&reading["id"]), text(&outcome["value"]))));
        }
    }
    for item in list(&record["items"]).iter().filter(|item| item["counted"].is_object()) {
        let counted = &item["counted"];
        all.push((at(counted), format!("item {} {}", text(&item["tag"]), counted["count"])));
    }
    for question in list(&record["questions"]) {
        let state = if question["answered"] == true { "answered" } else { "open" };
        let (step, words) = (text(&question["step"]), text(&question["text"]));
        all.push((at(question), format!("question at {step}, {state}: {words}")));
    }
    for mark in list(&record["marks"]) {
        let words = format!("mark {} {} {}", mark["number"], text(&mark["kind"]), text(&mark["size"]));
        all.push((at(mark), format!("{words} by {}", number(&mark["by"]))));
    }
    for line in list(&record["leaving"]).iter().filter(|line| line["checked"].is_object()) {
        let found = if line["checked"]["good"] == true { "good" } else { "not good" };
        all.push((at(&line["checked"]), format!("leaving {} {found}", text(&line["id"]))));
    }
    all
}

/// Lines that follow on a like one are left out: one press may answer several cautions. Readings that follow on each
/// other are put in order: one press keeps all of a step.
fn told_once(lines: impl IntoIterator<Item = String>) -> Vec<String> {
    let mut all: Vec<String> = lines.into_iter().collect();
    all.dedup();
    for run in all.chunk_by_mut(|a, b| a.starts_with("reading ") && b.starts_with("reading ")) {
        run.sort();
    }
    all
}

/// `record.json` of a sealed record.
pub fn record(bytes: &[u8]) -> Value {
    let all = zip::read(bytes).unwrap();
    let found = all.iter().find(|entry| entry.name.ends_with("/data/record.json")).unwrap();
    serde_json::from_slice(found.bytes).unwrap()
}

/// Fails unless a record tells exactly what was done, in that order, within this time. What was done `besides` stands
/// somewhere between.
pub fn agree(record: &Value, done: &[String], besides: &[String], within: (Timestamp, Timestamp)) {
    if let Some(why) = differs(record, done, besides, within) {
        panic!("{why}");
    }
}

/// How a record differs from what was done.
pub fn differs(
    record: &Value,
    done: &[String],
    besides: &[String],
    within: (Timestamp, Timestamp),
) -> Option<String> {
    let deeds = deeds(record);
    if let Some((at, line)) = deeds.iter().find(|(at, _)| !(within.0..=within.1).contains(at)) {
        return Some(format!("`{line}` was done at {at}, which is not within {within:?}"));
    }
    let mut told = told_once(deeds.into_iter().map(|(_, line)| line));
    for line in besides {
        let Some(at) = told.iter().position(|told| told == line) else {
            return Some(format!("`{line}` is not told: {told:#?}"));
        };
        told.remove(at);
    }
    let (told, done) = (told_once(told), told_once(done.to_vec()));
    let first = told.iter().zip(&done).position(|(a, b)| a != b).unwrap_or(told.len().min(done.len()));
    let around = |all: &[String]| all[first.saturating_sub(3)..(first + 6).min(all.len())].to_vec();
    (told != done).then(|| format!("line {first}: told {:#?}, done {:#?}", around(&told), around(&done)))
}
