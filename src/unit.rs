//! One vehicle of the lot: its data sheet, the lot's settings, and the facts both give.
//!
//! *Not fitted*, zero and missing are three things: equipment the unit does not have is written `NotFitted`,
//! a missing section or field is a fault, and nothing is ever guessed.

mod condition;
mod derate;
mod equipment;
mod facts;
mod kinds;
mod lot;
mod section;
mod sheet;
mod station;
mod terms;

pub use condition::When;
pub use derate::{Between, Derate, DerateRow, HeatLoss};
pub use equipment::*;
pub use facts::{Fact, FactKind, Facts, Lists, Origin, Value, catalogue, rounding_of};
pub use kinds::*;
pub use lot::{Assumed, LeavingLine, Lot, MoneyRounding};
pub use section::Fitted;
pub use sheet::{
    Axle, Change, Exit, KitLine, Load, NightLoad, PlaceEntry, PlaceRef, Room, Seat, Sheet, Slide,
};
pub use station::Station;
pub use terms::*;
