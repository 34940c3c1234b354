//! One test binary: behavior through the public door.
#![allow(missing_docs, reason = "tests are read by their names")]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::print_stderr,
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a test may fail loudly, and holds the library against the plain world"
)]

mod archive;
mod bagit;
mod check;
mod commands;
mod crash;
mod deeds;
mod demonstrations;
mod display;
mod edit;
mod equipment;
mod figures;
mod find;
mod finger;
mod finger_walk;
mod fit;
mod gate;
mod guides;
mod handoff;
mod hostile;
mod journal;
mod keys;
mod kiosk_support;
mod lacking;
mod lot;
mod manners;
mod outbox;
mod pair;
mod photos;
mod plot;
mod preview;
mod random;
mod record;
mod route;
mod schema;
mod screen_caution;
mod screen_changes;
mod screen_closing;
mod screen_demo;
mod screen_figures;
mod screen_missing;
mod screen_office;
mod screen_opening;
mod screen_plan;
mod screen_reread;
mod screen_settings;
mod screen_staff;
mod screen_unit_plan;
mod screen_units;
mod screen_walk;
mod screen_yard;
mod seal;
mod search;
mod sheet;
mod slip;
mod source;
mod staff;
mod tamper;
mod tidy;
mod tools;
mod turning;
mod vectors;
mod verify;
mod walk;
mod watch;
mod window;
