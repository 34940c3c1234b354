//! Sendoff leads a motorhome handoff and seals a signed record of it.
//!
//! Data flows one way: scripts, words and a unit's data sheet become a [`route`]; a [`walk`] along it is a list
//! of events in a [`journal`]; the [`record`] is derived from them, sealed, and verified by anyone.
//! Each module may use those listed after it, never those before; a test holds the table.

pub mod commands;
pub mod kiosk;

pub mod archive;
pub mod check;
pub mod figures;
pub mod journal;
pub mod measure;
pub mod record;
pub mod route;
pub mod script;
pub mod tablet;
pub mod unit;
pub mod walk;
pub mod words;

pub mod ports;
pub mod source;
