//! The office's archive: taking in, trusting, finding what is wrong, copying out.

mod audit;
mod export;
mod import;
mod interrupted;
mod receipts;
pub mod support;
mod trust;
