//! The walk through its public door: what may happen when, and what is missing.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::print_stdout,
    reason = "helpers of tests may fail loudly"
)]

mod closing;
mod opening;
mod properties;
mod round;
pub mod support;
mod swap;
mod times;
pub mod trip;
