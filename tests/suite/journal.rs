//! The journal through its public door: lines, recovery, faults, writer.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::print_stdout,
    reason = "helpers of tests may fail loudly"
)]

mod faults;
mod recovery;
mod writer;
