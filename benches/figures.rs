//! All figures of a unit with a trip of 14 nights, and all sets of 20 appliances on one supply, each against the
//! bare arithmetic, in one run. Prints the ratios of the medians; the bar is 5, and a millisecond for the figures.
#![allow(clippy::print_stdout, clippy::unwrap_used, reason = "a bench prints, and may stop")]

use std::hint::black_box;
use std::sync::Arc;
use std::time::{Duration, Instant};

use sendoff::figures::loads::{Item, Limits, count_fitting};
use sendoff::figures::{self, Trip};
use sendoff::script::{Bundle, Scripts};
use sendoff::source::{SourceFile, read};

const ROUNDS: usize = 101;
const TRIP: &str = r#"(nights: 14, people: [(age: 41), (age: 39), (age: 12), (age: 9)],
    hook_up: [Full, None, None, Full, None, None, Full, None, None, Full, None, None, None, Full], use: Careful,
    highest: "8900 ft", coldest: "28 °F", bags: "200 lb", start: (fresh: "1", propane: "3/4", fuel: "7/8"))"#;

fn timed<T>(work: impl FnOnce() -> T) -> Duration {
    let start = Instant::now();
    let kept = black_box(work());
    let took = start.elapsed();
    drop(kept);
    took
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap()
}

/// The floor: the same numbers with their formulas typed in, five courses of 14 days, no rounding, no words.
fn bare(people: f64, level: f64) -> [f64; 16] {
    let (mut fresh, mut grey, mut black, mut battery, mut propane) = (40.0, 35.0, 30.0, 80.0, 41.0 * level);
    let mut first = 14.0_f64;
    for day in 0..14_u32 {
        let full = day % 3 == 0;
        for (left, need) in [
            (&mut fresh, 3.0 * people),
            (&mut grey, 2.1 * people),
            (&mut black, 1.2 * people),
            (&mut battery, 66.2),
            (&mut propane, 10.9),
        ] {
            if full {
                continue;
            }
            if *left < need {
                first = first.min(f64::from(day) + *left / need);
            }
            *left = (*left - need).max(0.0);
        }
    }
    let stop = 1.47 * 65.0 * 2.5 + 1.075 * 65.0 * 65.0 / 11.2;
    let tires = [75.0 * 0.9, 80.0 * 0.9, 75.0 * 0.8, 80.0 * 0.8];
    [
        135.0 + 6.0,
        2819.0 - 170.0 * people - 46.0 * 8.34 - 168.0 - 200.0,
        46.0 * 8.34,
        40.0 / (3.0 * people),
        35.0 / (2.1 * people),
        30.0 / (1.2 * people),
        64.0 / 66.2,
        41.0 * level * 21_548.0 / 30_000.0,
        41.0 * level * 21_548.0 / 235_950.0,
        55.0 * 0.625 / 0.5,
        4000.0 * (1.0 - 0.035 * 8.4),
        270.0_f64.hypot(94.0) - 270.0,
        stop,
        55.0 * 0.75 * 9.0,
        first,
        tires.iter().sum(),
    ]
}

/// The floor: every set of twenty sums, each added up.
fn bare_sets(watts: &[f64], limit: f64) -> u64 {
    (0..1_u32 << watts.len())
        .map(|mask| {
            let sum: f64 =
                watts.iter().enumerate().map(|(at, w)| if mask >> at & 1 == 1 { *w } else { 0.0 }).sum();
            u64::from(sum <= limit)
        })
        .sum()
}

fn main() {
    let (scripts, _) = Scripts::load(Arc::new(Bundle::demo()));
    let facts = scripts.unwrap().facts("wren").unwrap();
    let trip = read::<Trip>(&SourceFile::new("trip.ron", TRIP)).0.unwrap();
    let (mut floor, mut ours) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        // The floor is too short for the clock alone.
        floor
            .push(timed(|| (0..1000).map(|_| bare(black_box(4.0), black_box(0.75))[14]).sum::<f64>()) / 1000);
        ours.push(timed(|| figures::of_trip(black_box(&facts), black_box(&trip))));
    }
    let (floor, ours) = (median(floor), median(ours));
    println!(
        "all figures {ours:?}, bare {floor:?}, ratio {:.1} (bar 5)",
        ours.as_secs_f64() / floor.as_secs_f64()
    );

    let watts: Vec<f64> = (0..20_u32).map(|at| f64::from(at * 137 % 900 + 60)).collect();
    let item = |(at, watts): (usize, &f64)| Item {
        id: at.to_string(),
        watts: *watts,
        long: at % 3 == 0,
        leg: None,
        branch: at % 2 == 0,
        start: None,
        allowed: true,
        propane: false,
    };
    let items: Vec<Item> = watts.iter().enumerate().map(item).collect();
    let limits = Limits {
        legs: 1,
        each: 3600.0,
        long: Some(2880.0),
        branch: Some((1800.0, 1440.0)),
        surge: None,
        post: true,
    };
    let (mut floor, mut ours) = (Vec::new(), Vec::new());
    for _ in 0..11 {
        floor.push(timed(|| bare_sets(black_box(&watts), black_box(3600.0))));
        ours.push(timed(|| count_fitting(black_box(&items), black_box(&limits))));
    }
    let (floor, ours) = (median(floor), median(ours));
    println!(
        "sets of 20 {ours:?}, bare {floor:?}, ratio {:.2} (bar 5)",
        ours.as_secs_f64() / floor.as_secs_f64()
    );
}
