//! The walk through its public door: what may happen when, and what is missing.

mod closing;
mod opening;
mod properties;
mod round;
pub mod support;
