//! The content of a record through its public door: what is said in it, in which texts, and that it can be sealed.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "helpers of tests may fail loudly"
)]

pub mod amending;
mod building;
pub mod changes;
mod reading;
mod sealed;
pub mod support;
mod texts;
mod trips;
