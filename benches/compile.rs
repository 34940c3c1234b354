//! Compiling the demo lot against parsing the same bytes with the bare libraries, in one run.
//!
//! Prints the ratio of the medians; the bar is 2. *Load* reads the scripts as the kiosk does at its start; *check*
//! holds them against every rule as well and says every text of every unit once. *Grown* is a lot of many units and
//! topics, and what a half of either costs less: a quadratic check would give 4.
#![allow(clippy::print_stdout, clippy::unwrap_used, reason = "a bench prints, and may stop")]

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::sync::Arc;
use std::time::{Duration, Instant};

use fluent_bundle::FluentResource;
use sendoff::check;
use sendoff::script::{Bundle, Scripts};
use sendoff::source::Severity;
use serde::de::IgnoredAny;

const ROUNDS: usize = 101;
/// Units and topics of the grown lot.
const GROWN: (usize, usize) = (500, 300);

/// A topic that stands where there is an awning.
const TOPIC: &str = r#"(
    id: "ID", who: Party, when: Fitted("awning"),
    steps: [(
        id: "ID", place: "awning", minutes: 1, after: ["awning"],
        show: ["string", (line: "reel", when: Is("awning.kind", "electric"))],
        know: ["wind", (line: "wires", when: Over("awning.reach", "1 ft"))],
        cautions: [(id: "ID-1", version: 1, signal: Notice, hazard: Wind, harm: Property, answer: Read)],
    )],
)"#;
/// Its words.
const WORDS: &str = "topic-ID = Kite
step-ID = Flying the kite
show-ID-string = Show the string.
show-ID-reel = Show the reel.
know-ID-wind = Take it down at { $awning_wind_limit }.
know-ID-wires = Stay away from wires.
caution-ID-1 = Wind tears the kite.
    .title = Strong wind
    .harm = The cloth is lost.
    .avoid = Take it down in time.
";

/// The demo lot with copies of one unit, and with topics from a template.
fn grown(units: usize, topics: usize) -> Arc<Bundle> {
    const WREN: &str = "walkthroughs/units/wren.ron";
    let demo = Bundle::demo();
    let mut files: BTreeMap<String, Arc<[u8]>> =
        demo.names().map(|n| (n.to_owned(), Arc::clone(demo.get(n).unwrap()))).collect();
    let mut put = |name: String, text: String| drop(files.insert(name, Arc::from(text.into_bytes())));
    let text = |name: &str| String::from_utf8(demo.get(name).unwrap().to_vec()).unwrap();
    let (sheet, mut words) = (text(WREN), String::new());
    for n in 0..units {
        let id = format!("copy-{n}");
        put(
            format!("walkthroughs/units/{id}.ron"),
            sheet.replacen("id: \"wren\"", &format!("id: \"{id}\""), 1),
        );
        writeln!(words, "unit-{id} = Copy\n    .kind = Motorhome").unwrap();
    }
    put("i18n/en-US/copies.ftl".into(), words);
    for n in 0..topics {
        let id = format!("kite-{n}");
        put(format!("walkthroughs/topics/{id}.ron"), TOPIC.replace("ID", &id));
        put(format!("i18n/en-US/topic-{id}.ftl"), WORDS.replace("ID", &id));
    }
    let lot = text("walkthroughs/lot.ron");
    put("walkthroughs/lot.ron".into(), lot.replacen("reading: \"90 min\"", "reading: \"900 min\"", 1));
    Arc::new(Bundle::new(files, false))
}

fn grow() {
    let (units, topics) = GROWN;
    let check = |units, topics| {
        let bundle = grown(units, topics);
        let load = timed(|| Scripts::load(Arc::clone(&bundle)));
        let start = Instant::now();
        let report = check::lot(bundle);
        let whole = start.elapsed();
        let fault = report.faults.iter().find(|f| f.severity == Severity::Fault);
        assert!(fault.is_none(), "{fault:?}");
        println!("{units} units, {topics} topics: load {load:?}, check {whole:?}");
        whole.as_secs_f64()
    };
    let whole = check(units, topics);
    println!("twice the units: ratio {:.2}", whole / check(units / 2, topics));
    println!("twice the topics: ratio {:.2}", whole / check(units, topics / 2));
}

/// The floor: RON read for its syntax alone, Fluent parsed, nothing kept.
fn bare(texts: &[(String, String)]) {
    for (name, text) in texts {
        if name.ends_with(".ron") {
            let _: IgnoredAny = ron::from_str(text).unwrap();
        } else {
            let _: FluentResource = FluentResource::try_new(text.clone()).unwrap();
        }
    }
}

fn timed<T>(work: impl FnOnce() -> T) -> Duration {
    let start = Instant::now();
    let kept = std::hint::black_box(work());
    let took = start.elapsed();
    drop(kept);
    took
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap()
}

fn main() {
    let bundle = Arc::new(Bundle::demo());
    let texts: Vec<(String, String)> = bundle
        .names()
        .filter(|n| n.ends_with(".ron") || n.ends_with(".ftl"))
        .map(|n| (n.to_owned(), String::from_utf8(bundle.get(n).unwrap().to_vec()).unwrap()))
        .collect();
    let bytes: usize = texts.iter().map(|(_, text)| text.len()).sum();
    let (mut floor, mut load, mut whole) = (Vec::new(), Vec::new(), Vec::new());
    // In turn, so that whatever else the machine does falls on all three.
    for _ in 0..ROUNDS {
        floor.push(timed(|| bare(&texts)));
        load.push(timed(|| Scripts::load(Arc::clone(&bundle))));
        whole.push(timed(|| check::lot(Arc::clone(&bundle))));
    }
    let (floor, load, whole) = (median(floor), median(load), median(whole));
    let ratio = |time: Duration| time.as_secs_f64() / floor.as_secs_f64();
    println!("{} files, {bytes} bytes: bare parse {floor:?}", texts.len());
    println!("load {load:?}, ratio {:.2} (bar 2)", ratio(load));
    println!("check {whole:?}, ratio {:.2} (bar 2)", ratio(whole));
    grow();
}
