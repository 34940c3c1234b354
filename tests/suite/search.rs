//! Finding records through the public door of the index.

mod answers;
mod damage;
mod kept;
pub mod lot;
