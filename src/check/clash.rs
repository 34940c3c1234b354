//! Facts of a data sheet that cannot all be true of one unit: what is left behind when a sheet is copied and changed.
//!
//! Each rule holds two facts of the sheet against each other; where a number comes from outside, its source stands
//! beside it. `unit.unusual` is a note: it may be so, but it is rarer than a slip.

mod body;
mod gas;
mod power;
mod road;
mod supply;
mod water;

use crate::measure::{Dim, Gallon, Of};
use crate::script::From;
use crate::source::place_of;
use crate::unit::Sheet;

use super::Check;

/// What is lost in turning measures into others.
const DUST: f64 = 1e-9;

/// One contradiction.
struct Clash {
    /// Where it stands in the sheet.
    path: Vec<String>,
    what: String,
    hint: &'static str,
    /// Only unusual.
    unusual: bool,
}

/// The contradictions of one sheet.
struct Clashes<'a> {
    sheet: &'a Sheet,
    gallon: Gallon,
    found: Vec<Clash>,
}

impl Check<'_> {
    /// No two facts of the sheet contradict each other.
    pub(super) fn contradictions(&mut self, sheet: &From<Sheet>) {
        let gallon = self.scripts.lot.value.gallon;
        let mut clashes = Clashes { sheet: &sheet.value, gallon, found: Vec::new() };
        clashes.body();
        clashes.road();
        clashes.supply();
        clashes.power();
        clashes.gas();
        clashes.water();
        for clash in clashes.found {
            let path: Vec<&str> = clash.path.iter().map(String::as_str).collect();
            let place = place_of(&sheet.file, &path);
            if clash.unusual {
                self.note("unit.unusual", place, clash.what, clash.hint);
            } else {
                self.fault("unit.contradiction", place, clash.what, clash.hint);
            }
        }
    }
}

impl Clashes<'_> {
    /// Keeps a contradiction where there is one.
    fn wrong(&mut self, is: bool, path: &[&str], what: impl Into<String>, hint: &'static str) {
        if is {
            let path = path.iter().map(ToString::to_string).collect();
            self.found.push(Clash { path, what: what.into(), hint, unusual: false });
        }
    }

    /// Keeps what is rarer than a slip.
    fn unusual(&mut self, is: bool, path: &[&str], what: impl Into<String>, hint: &'static str) {
        if is {
            let path = path.iter().map(ToString::to_string).collect();
            self.found.push(Clash { path, what: what.into(), hint, unusual: true });
        }
    }

    /// The value in SI, gallons as the lot means them.
    fn si<D: Dim>(&self, of: &Of<D>) -> f64 {
        of.quantity().resolve(self.gallon).si()
    }

    /// Whether one is more than the other.
    fn more<D: Dim>(&self, one: &Of<D>, other: &Of<D>) -> bool {
        beyond(self.si(one), self.si(other))
    }
}

/// Whether a number is above another by more than converting loses.
fn beyond(one: f64, other: f64) -> bool {
    one > other + DUST * libm::fabs(other)
}
