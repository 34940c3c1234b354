//! All figures of a unit with a trip of 14 nights, and all sets of 20 appliances on one supply, each against the
//! bare arithmetic, in one run. Prints the ratios of the medians; the bar is 5, and a millisecond for the figures.
//!
//! The floor answers the same questions with its numbers typed in: every figure, every course, every suggestion tried
//! on its course, every set of loads added up. It looks nothing up, converts and explains nothing.
#![allow(clippy::print_stdout, clippy::unwrap_used, reason = "a bench prints, and may stop")]

use std::hint::black_box;
use std::sync::Arc;
use std::time::{Duration, Instant};

use sendoff::figures::loads::{Item, Limits, count_fitting};
use sendoff::figures::{self, Given, Trip};
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

/// A course of 14 days, full again on the days with a hook-up: when it ends.
fn bare_course(whole: f64, start: f64, need: f64, gain: f64, again: Option<u32>) -> f64 {
    let mut left = start;
    for day in 0..14_u32 {
        if Some(day) == again {
            left = whole;
        }
        let net = if day % 3 == 0 { gain } else { -need };
        if left + net < 0.0 {
            return f64::from(day) + left / need;
        }
        left = (left + net).min(whole);
    }
    14.0
}

/// Watts of the loads that the unit has beside its charger.
const WATTS: [f64; 9] = [1560.0, 325.0, 1400.0, 1500.0, 960.0, 900.0, 1500.0, 100.0, 90.0];

/// How many sets of the loads fit beside the settled charger on 30 A.
fn bare_fitting() -> f64 {
    let mut fitting = 0.0;
    for mask in 0..1_u32 << WATTS.len() {
        let (mut sum, mut long, mut branch) = (240.0, 240.0, 0.0);
        for (at, watts) in WATTS.iter().enumerate() {
            if mask >> at & 1 == 1 {
                sum += watts;
                long += if at < 3 || at == 7 { *watts } else { 0.0 };
                branch += if at > 3 { *watts } else { 0.0 };
            }
        }
        fitting += f64::from(u8::from(sum <= 3600.0 && long <= 2880.0 && branch <= 1800.0));
    }
    fitting
}

/// The floor: the same numbers with their formulas typed in; the courses, each again with each suggestion; and each
/// set of loads.
fn bare(people: f64, level: f64) -> [f64; 36] {
    let propane = 235_950.0 / 21_548.0;
    let courses = [
        (40.0, 40.0, 3.0 * people, 0.0),
        (35.0, 35.0, 2.1 * people, 0.0),
        (30.0, 30.0, 1.2 * people, 0.0),
        (64.0, 64.0, 66.2, 64.0),
        (41.0, 41.0 * level, propane, -propane * 0.8),
        (41.25, 34.4, 0.0, 0.0),
    ];
    let ends = courses.map(|(whole, start, need, gain)| bare_course(whole, start, need, gain, None));
    let mut gained = 0.0;
    for (tries, ((whole, start, need, gain), end)) in
        [1, 1, 1, 8, 2, 0].into_iter().zip(courses.into_iter().zip(ends))
    {
        for hours in 0..tries {
            let again = Some(end as u32 + 1);
            gained += bare_course(whole, start, need - f64::from(hours) * 8.0, gain, again) - end;
        }
    }
    let fitting = bare_fitting();
    let speed: f64 = 65.0;
    let tires = [75.0 * 0.9, 80.0 * 0.9, 75.0 * 0.8, 80.0 * 0.8];
    [
        135.0 + 6.0,
        2819.0 - 170.0 * people - 46.0 * 8.34 - 168.0 - 200.0,
        46.0 * 8.34,
        40.0 / (3.0 * people),
        35.0 / (2.1 * people),
        30.0 / (1.2 * people),
        0.0 / 2.5,
        64.0 / 66.2,
        41.0 * level * 21_548.0 / 30_000.0,
        41.0 * level * 21_548.0 / 30_000.0 / 0.6,
        41.0 * level * 21_548.0 / 235_950.0,
        55.0 * 0.625 / 0.5,
        55.0 * 0.625 / 0.7,
        4000.0 * (1.0 - 0.035 * 8.4),
        8.9_f64.round(),
        270.0_f64.hypot(94.0) - 270.0,
        (26.0_f64 / 10.0).ceil() + 1.0,
        1.47 * speed * 2.5 + 1.075 * speed * speed / 11.2,
        4253.4 / 6864.0 * 60.0,
        4253.4 / 4777.0 * 60.0,
        4253.4 / 11_641.0 * 60.0,
        55.0 * 0.75 * 9.0,
        tires[0],
        tires[1],
        tires[2],
        tires[3],
        ends[0],
        ends[1],
        ends[2],
        ends[3],
        ends[4],
        ends[5],
        gained,
        fitting,
        15.0,
        8.34,
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
    let (mut floor, mut ours, mut told) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        // The floor is too short for the clock alone.
        // All of its numbers are asked for, or the compiler leaves out what nobody reads.
        let floors = || {
            (0..100).for_each(|_| {
                let _ = black_box(bare(black_box(4.0), black_box(0.75)));
            });
        };
        floor.push(timed(floors) / 100);
        let given = Given { facts: black_box(&facts), trip: Some(black_box(&trip)) };
        ours.push(timed(|| figures::numbers(given)));
        told.push(timed(|| figures::of_trip(black_box(&facts), black_box(&trip))));
    }
    let (floor, ours, told) = (median(floor), median(ours), median(told));
    let ratio = |ours: Duration| ours.as_secs_f64() / floor.as_secs_f64();
    println!("all figures, numbers {ours:?}, bare {floor:?}, ratio {:.1} (bar 5)", ratio(ours));
    println!("all figures with what explains them {told:?}, ratio {:.1}", ratio(told));

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
