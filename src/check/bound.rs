//! Bounds of readings: a quantity of the measure that is read, within what can be read.

use crate::figures;
use crate::measure::{Dimension, Quantity};
use crate::script::{Bound, Bounds, READINGS, Scale};
use crate::source::place_of;
use crate::unit::{FactKind, Facts};

use super::{Check, file_of};

/// What a figure that gives a value for each axle is named.
const BY_AXLE: &str = "tire_";

impl Check<'_> {
    /// The bounds of a reading, and what staff are to do beyond them. Whether it has sound ones.
    pub(super) fn bounds(&mut self, id: &str, scale: &Scale) -> bool {
        let Scale::Number { measure, least, most, .. } = scale else { return false };
        let Ok(read_in) = Quantity::parse(&format!("1 {measure}")) else { return false };
        let file = file_of(self.scripts, READINGS);
        let mut sound = true;
        for (field, bound, part) in [("least", least, "below"), ("most", most, "above")] {
            let Some(bound) = bound else { continue };
            let place = || place_of(&file, &[id, field]);
            self.message(format!("reading-{id}.{part}"), place);
            let Some(wrong) = self.wrong(bound, read_in.dimension()) else { continue };
            sound = false;
            let what = format!("the bound `{field}` of `{id}` {wrong}");
            let hint = "give Value(\"12.2 V\"), Fact(\"house.low\") or Figure(\"tire_add_air\", Front)";
            self.fault("reading.bound", place(), what, hint);
        }
        sound && (least.is_some() || most.is_some())
    }

    /// Why a bound is none for what is read; nothing when it is one.
    fn wrong(&self, bound: &Bound, dimension: Dimension) -> Option<String> {
        let other = || format!("is no {}", dimension.name());
        match bound {
            Bound::Value(text) => match Quantity::parse(text) {
                Ok(quantity) if quantity.dimension() == dimension => None,
                Ok(_) => Some(other()),
                Err(fault) => Some(format!("cannot be read: {fault}")),
            },
            Bound::Fact(name) => match self.known.0.get(name) {
                Some(FactKind::Quantity(of)) if *of == dimension => None,
                Some(_) => Some(other()),
                None => Some(format!("names `{name}`, which is no fact")),
            },
            Bound::Figure(name, _) if !figures::ids().any(|known| known == name) => {
                Some(format!("names `{name}`, which is no figure"))
            }
            Bound::Figure(name, _) if !name.starts_with(BY_AXLE) => {
                Some(format!("names `{name}`, which has no value for each axle"))
            }
            Bound::Figure(..) => (dimension != Dimension::Pressure).then(other),
        }
    }

    /// On every unit of the lot something can be read that is right.
    pub(super) fn bounds_leave_room(&mut self, bounded: &[&str]) {
        let scripts = self.scripts;
        for sheet in scripts.units.values().filter(|_| !bounded.is_empty()) {
            let unit = &sheet.value.id.value;
            let facts = Facts::new(&sheet.value, &scripts.lot.value);
            for id in bounded {
                let Some(scale @ Scale::Number { min, max, .. }) = scripts.readings.get(*id) else {
                    continue;
                };
                let Bounds { least, most } = Bounds::of(scale, &facts);
                let (low, high) = (least.unwrap_or(*min), most.unwrap_or(*max));
                if low >= *min && low <= high && high <= *max {
                    continue;
                }
                let what = format!("on `{unit}` nothing that `{id}` can read is right: {low} to {high}");
                let place = place_of(&file_of(scripts, READINGS), &[id]);
                self.fault_once(
                    "reading.bound",
                    place,
                    what,
                    "keep the bounds within the range of the scale",
                );
            }
        }
    }
}
