//! Weights and seats of a data sheet: what the plates say must add up.

use crate::measure::{Mass, Measure, Quantity};
use crate::script::From;
use crate::source::place_of;
use crate::unit::{Sheet, UnitKind};

use super::Check;
use super::known::{is_stand_in, leans_on_stand_in};

/// What one occupant is reckoned with, in pounds (49 CFR 567.4(g)(3)).
const OCCUPANT_POUNDS: f64 = 150.0;
/// What is lost in turning pounds into kilograms and back.
const DUST: f64 = 1e-9;

fn pounds(mass: &Mass) -> Option<f64> {
    mass.quantity().to(Measure::Pound)
}

impl Check<'_> {
    /// The plate of a motorized unit gives OCCC, that of a trailer CCC; GVWR less UVW agrees with it within one
    /// pound, or one kilogram where the plate is read in kilograms, since UVW holds full propane (49 CFR 571.110
    /// S4.3, S9.3; 571.120 S10.4).
    pub(super) fn capacity(&mut self, sheet: &From<Sheet>) {
        let w = &sheet.value.weight.value;
        let (name, plate, other_name, other) = match sheet.value.kind {
            UnitKind::Trailer => ("ccc", w.ccc.get(), "occc", w.occc.get()),
            UnitKind::ClassA | UnitKind::ClassC | UnitKind::ClassB => {
                ("occc", w.occc.get(), "ccc", w.ccc.get())
            }
        };
        let place = |field: &str| place_of(&sheet.file, &["weight", field]);
        let hint = "read it from the plate: `occc` of a motorized unit, `ccc` of a trailer; the other is `NotFitted`";
        if other.is_some() {
            let what = format!("a unit of this kind has no `{other_name}`");
            self.fault("unit.capacity", place(other_name), what, hint);
        }
        let Some(plate) = plate else {
            self.fault("unit.capacity", place(name), format!("`{name}` is not given"), hint);
            return;
        };
        let (Some(gvwr), Some(uvw), Some(said)) = (pounds(&w.gvwr), pounds(&w.uvw), pounds(plate)) else {
            return;
        };
        let step = match plate.quantity().measure() {
            Measure::Kilogram => {
                Quantity::parse("1 kg").ok().and_then(|q| q.to(Measure::Pound)).unwrap_or(1.0)
            }
            _ => 1.0,
        };
        let left = gvwr - uvw;
        let stand_in = leans_on_stand_in(&sheet.value, &["weight", name]);
        if !stand_in && libm::fabs(left - said) > step + DUST {
            let what = format!("the plate says {said:.1} lb, GVWR less UVW is {left:.1} lb");
            let hint = "read plate and weighing slip again; propane is inside UVW, water is cargo";
            self.fault("unit.capacity", place(name), what, hint);
        }
        if sheet.value.kind != UnitKind::Trailer {
            self.axles(sheet, gvwr);
            if !is_stand_in(&sheet.value, "weight.occc") {
                self.occupants(sheet, said);
            }
        }
    }

    /// The axles of a motorized unit carry at least its GVWR (49 CFR 571.110 S9.1, 571.120 S10.1).
    fn axles(&mut self, sheet: &From<Sheet>, gvwr: f64) {
        let w = &sheet.value.weight.value;
        let (Some(front), Some(rear)) = (pounds(&w.gawr_front), pounds(&w.gawr_rear)) else { return };
        let stand_in = leans_on_stand_in(&sheet.value, &["weight", "gawr_front"]);
        if !stand_in && front + rear < gvwr - DUST {
            let what =
                format!("both axles may carry {:.1} lb, less than the GVWR of {gvwr:.1} lb", front + rear);
            let place = place_of(&sheet.file, &["weight", "gawr_front"]);
            self.fault("unit.axles", place, what, "read the plate again");
        }
    }

    /// As many belts as seats with one, and not more than the unit may carry people (interpretation 08-003469drn
    /// to 49 CFR 571.110).
    fn occupants(&mut self, sheet: &From<Sheet>, capacity: f64) {
        let belts = sheet.value.seats.iter().filter(|s| s.belt).count();
        let weight = f64::from(u32::try_from(belts).unwrap_or(u32::MAX)) * OCCUPANT_POUNDS;
        if weight > capacity + DUST {
            let what =
                format!("{belts} people of 150 lb weigh {weight:.0} lb, the plate says {capacity:.1} lb");
            let place = place_of(&sheet.file, &["seats"]);
            self.fault("unit.occupants", place, what, "read the plate again, or take belts out of use");
        }
    }

    /// `berths.belts` counts the seats with a belt.
    pub(super) fn belts(&mut self, sheet: &From<Sheet>) {
        let seats = sheet.value.seats.iter().filter(|s| s.belt).count();
        let belts = sheet.value.berths.value.belts.get().copied().map_or(0, usize::from);
        if seats != belts && !is_stand_in(&sheet.value, "berths.belts") {
            let what = format!("`belts` counts {belts}, but {seats} seats have one");
            let place = place_of(&sheet.file, &["berths", "belts"]);
            self.fault(
                "unit.belts",
                place,
                what,
                "count the seats with `belt: true`; without one `belts` is NotFitted",
            );
        }
    }

    /// Tags stand once, and the weights of what goes in the unit add up to `weight.kit` (handbook H.6).
    pub(super) fn kit(&mut self, sheet: &From<Sheet>) {
        let lines = &sheet.value.kit;
        for line in lines {
            self.message(format!("item-{}", line.item.value), || sheet.place(&line.item));
        }
        let place = |at: usize| place_of(&sheet.file, &["kit", &at.to_string(), "tag"]);
        self.once(lines.iter().map(|l| l.tag.value.as_str()), place, "give each item its own tag");
        let sum: f64 = lines.iter().filter(|l| !l.on_tow).filter_map(|l| pounds(&l.weight)).sum();
        if let Some(kit) = pounds(&sheet.value.weight.value.kit)
            && libm::fabs(sum - kit) > 0.01
            && !is_stand_in(&sheet.value, "weight.kit")
        {
            let what = format!("the items weigh {sum:.2} lb together, `kit` says {kit:.2} lb");
            let place = place_of(&sheet.file, &["weight", "kit"]);
            self.fault("unit.kit-weight", place, what, "weigh again and correct one of them");
        }
    }
}
