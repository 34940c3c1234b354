//! Compiling the demo lot against parsing the same bytes with the bare libraries, in one run.
//!
//! Prints the ratio of the medians; the bar is 2. *Load* reads the scripts as the kiosk does at its start; *check*
//! holds them against every rule as well and says every text of every unit once.
#![allow(clippy::print_stdout, clippy::unwrap_used, reason = "a bench prints, and may stop")]

use std::sync::Arc;
use std::time::{Duration, Instant};

use fluent_bundle::FluentResource;
use sendoff::check;
use sendoff::script::{Bundle, Scripts};
use serde::de::IgnoredAny;

const ROUNDS: usize = 101;

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
}
