//! What a person waits for at the kiosk, and what it takes from the tablet, beside an empty window of the toolkit:
//! from the start to the first frame, from a touch to its frame on each screen, memory after a whole handoff, and
//! work in a minute in which nobody touches it.
//!
//! Both windows stand on displays that nobody sees and are looked at from outside, so that both are measured alike.
//! Prints medians, ratios and bars; asserts nothing about time. `SENDOFF_BENCH_IDLE` says how many seconds the idle
//! minute has.
#![allow(
    missing_docs,
    dead_code,
    unused_imports,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a bench may stop loudly, measures the plain world and prints; it uses a part of what tests share"
)]

#[path = "../tests/suite/display.rs"]
mod display;
#[path = "../tests/suite/finger.rs"]
mod finger;
#[path = "../tests/suite/handoff.rs"]
mod handoff;
#[path = "kiosk/inside.rs"]
mod inside;
#[path = "../tests/suite/kiosk_support.rs"]
mod kiosk_support;
#[path = "kiosk/outside.rs"]
mod outside;
#[path = "../tests/suite/pair.rs"]
mod pair;
#[path = "../tests/suite/tools.rs"]
mod tools;

/// Set for the child that shows an empty window, which is this bench again.
const EMPTY: &str = "SENDOFF_BENCH_EMPTY";

fn main() {
    if std::env::var_os(EMPTY).is_some() {
        return outside::empty_window();
    }
    inside::touches();
    if display::can_open_windows() {
        outside::first_frames();
        outside::memory();
        outside::idle();
    }
}

/// The value in the middle.
fn median(mut all: Vec<f64>) -> f64 {
    all.sort_by(f64::total_cmp);
    all[all.len() / 2]
}

/// The value that 99 of 100 do not exceed.
fn p99(mut all: Vec<f64>) -> f64 {
    all.sort_by(f64::total_cmp);
    all[(all.len() * 99).div_ceil(100).max(1) - 1]
}
