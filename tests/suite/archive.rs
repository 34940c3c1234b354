//! The office's archive: taking in, trusting, finding what is wrong, copying out.

mod audit;
mod damage;
mod export;
mod full;
mod hasty;
mod import;
mod interrupted;
mod killed;
pub mod many;
mod receipts;
mod stock;
pub mod support;
mod together;
mod trust;
