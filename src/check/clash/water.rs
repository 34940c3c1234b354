//! Water and waste.

use crate::measure::Quantity;

use super::{Clashes, beyond};

/// Fresh water that a motorhome carries: from and to. Common practice, no source.
const FRESH: [&str; 2] = ["20 US gal", "100 US gal"];

impl Clashes<'_> {
    pub(super) fn water(&mut self) {
        let s = self.sheet;
        let (water, waste) = (&s.water.value, &s.waste.value);
        let is = self.more(&water.regulator, &water.most);
        let hint = "set the regulator below what the pipes may be given";
        self.wrong(
            is,
            &["water", "regulator"],
            "the regulator lets through more than the pipes may have",
            hint,
        );
        let [least, most] = FRESH.map(|text| Quantity::parse(text).map_or(f64::NAN, |q| q.si()));
        let fresh = self.si(&water.fresh);
        let is = beyond(fresh, most) || beyond(least, fresh);
        let hint = "read the tank's label again; check gallons against liters";
        self.unusual(is, &["water", "fresh"], "few motorhomes carry so much or so little fresh water", hint);
        let (black, cassette) = (waste.black.get().is_some(), waste.cassette.get());
        let hint = "write `NotFitted`, or give `black`";
        let is = waste.rinse.get().is_some() && !black;
        self.wrong(is, &["waste", "rinse"], "a rinse for a black tank, which the unit does not have", hint);
        let hint = "a toilet empties into one of them; write `NotFitted` for the other";
        let is = black && cassette.is_some();
        self.wrong(is, &["waste", "cassette"], "the unit has a black tank and a cassette", hint);
        let hint = "give the cassette all three facts, or none";
        let is = waste.cassette_lamp.get().is_some() != cassette.is_some();
        self.wrong(is, &["waste", "cassette_lamp"], "cassette and lamp do not belong together", hint);
        let is = waste.cassette_full.get().is_some() != cassette.is_some();
        self.wrong(is, &["waste", "cassette_full"], "cassette and weight do not belong together", hint);
        let lamp = waste.cassette_lamp.get();
        let is = cassette.zip(lamp).is_some_and(|(cassette, lamp)| self.more(lamp, cassette));
        let hint = "the lamp comes on before the cassette is full";
        self.wrong(
            is,
            &["waste", "cassette_lamp"],
            "the lamp comes on after the cassette has run over",
            hint,
        );
    }
}
