//! The sealed record: what happened in a walk, in a form that anyone can read and verify for years.
//!
//! One record is one BagIt bag in one ZIP file, signed with the tablet's OpenSSH key. The seal proves which
//! tablet sealed what and that nothing changed since; it does not prove who held the pen.

pub mod amend;
pub mod bag;
pub mod build;
pub mod chain;
pub mod form;
pub mod ink;
pub mod keys;
pub mod receipt;
pub mod seal;
pub mod signers;
pub mod text;
pub mod verify;
pub mod zip;
