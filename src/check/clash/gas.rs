//! Propane, what burns it, and what warns of it.

use crate::unit::{CookKind, FridgeKind, FuelKind, HeaterKind, PropaneKind, TankHeat};

use super::{Clashes, beyond};

/// Most propane in a cylinder by the weight of water it holds: filling density, 49 CFR 173.315 and 29 CFR 1910.110
/// Table H-27 for specific gravity 0.504 to 0.510.
const FILL: f64 = 0.42;
/// What weighing may be off.
const SLACK: f64 = 1.01;

impl Clashes<'_> {
    pub(super) fn gas(&mut self) {
        let s = self.sheet;
        let has = s.propane.value.get().is_some();
        let cook = s.cook.value.get().is_some_and(|cook| cook.kind == CookKind::Propane);
        let heater = s.water_heater.value.get().is_some_and(|heater| heater.propane.get().is_some());
        let fridge = s.fridge.value.get().is_some_and(|fridge| fridge.propane.get().is_some());
        let hint = "give `propane`, or write what it runs on here";
        let burns = "it burns propane, which the unit does not have";
        self.wrong(!has && s.furnace.value.get().is_some(), &["furnace"], burns, hint);
        self.wrong(!has && cook, &["cook", "kind"], burns, hint);
        self.wrong(!has && heater, &["water_heater", "propane"], burns, hint);
        self.wrong(!has && fridge, &["fridge", "propane"], burns, hint);
        self.propane();
        self.alarms();
        self.diesel();
        self.heater();
        self.fridge();
        let is = s.cook.value.get().is_some_and(|cook| cook.burners == 0);
        self.wrong(
            is,
            &["cook", "burners"],
            "a cooktop has a burner or a zone",
            "write `NotFitted` for `cook`",
        );
        let is = s.frost.value.tanks == TankHeat::FurnaceDuct && s.furnace.value.get().is_none();
        let hint = "give `furnace`, or write `None`";
        self.wrong(
            is,
            &["frost", "tanks"],
            "a duct of the furnace warms the tanks, but none is fitted",
            hint,
        );
    }

    fn propane(&mut self) {
        let Some(propane) = self.sheet.propane.value.get() else { return };
        let in_cylinders = propane.kind == PropaneKind::Cylinders;
        let hint = "count the cylinders, or write `Frame` for a tank in the frame";
        let is = in_cylinders && propane.cylinders.is_none_or(|count| count == 0);
        self.wrong(is, &["propane", "kind"], "nothing says how many cylinders there are", hint);
        let is = !in_cylinders && propane.cylinders.is_some();
        self.wrong(is, &["propane", "cylinders"], "a tank in the frame has no cylinders", hint);
        let is = propane
            .water_capacity
            .is_some_and(|water| beyond(self.si(&propane.full), self.si(&water) * FILL * SLACK));
        let hint = "propane in pounds is 42 % of the WC stamped on the shell; of several, of all together";
        self.wrong(is, &["propane", "full"], "more propane than the shell may hold", hint);
    }

    /// What burns is warned of.
    fn alarms(&mut self) {
        let s = self.sheet;
        let safety = &s.safety.value;
        let (propane, detector) =
            (s.propane.value.get().is_some(), safety.propane_replace_by.get().is_some());
        let path = ["safety", "propane_replace_by"];
        let hint = "a unit with propane has a detector; read the date on it";
        self.wrong(propane && !detector, &path, "nothing warns of leaking propane", hint);
        let hint = "write `NotFitted`, or give `propane`";
        self.wrong(detector && !propane, &path, "a detector for propane, which the unit does not have", hint);
        let hint = "count them again; without one the unit must not leave the lot";
        let all = [
            ("co_alarms", safety.co_alarms, "no alarm warns of carbon monoxide"),
            ("smoke_alarms", safety.smoke_alarms, "no alarm warns of smoke"),
            ("extinguishers", safety.extinguishers, "there is no fire extinguisher"),
        ];
        for (field, count, what) in all {
            self.wrong(count == 0, &["safety", field], what, hint);
        }
    }

    fn diesel(&mut self) {
        let s = self.sheet;
        let Some(heater) = s.diesel_heater.value.get() else { return };
        let diesel = s.engine.value.get().is_some_and(|engine| engine.fuel == FuelKind::Diesel);
        let hint = "write `NotFitted`, or correct `engine.fuel`";
        self.wrong(!diesel, &["diesel_heater"], "the heater has no tank of diesel to draw from", hint);
        let hint = "`burn_low` is the least, `burn_high` the most, `burn` the average";
        let is = self.more(&heater.burn_low, &heater.burn) || self.more(&heater.burn, &heater.burn_high);
        self.wrong(is, &["diesel_heater", "burn"], "the average does not lie between least and most", hint);
        let is = !beyond(1.0, self.si(&heater.pickup));
        let hint = "write the part of the tank that is left for driving, as 1/4";
        self.wrong(is, &["diesel_heater", "pickup"], "it never gets fuel, even from a full tank", hint);
    }

    fn heater(&mut self) {
        let Some(heater) = self.sheet.water_heater.value.get() else { return };
        let (has_tank, is_tank) = (heater.tank.get().is_some(), heater.kind == HeaterKind::Tank);
        let hint = "`Tank` with its volume, or `OnDemand` with `tank: NotFitted`";
        self.wrong(
            has_tank != is_tank,
            &["water_heater", "tank"],
            "kind and tank do not belong together",
            hint,
        );
        let is = heater.propane.get().is_none() && heater.electric.get().is_none();
        let hint = "give `propane`, `electric` or both";
        self.wrong(is, &["water_heater"], "nothing heats the water", hint);
        let is = is_tank && heater.least_flow.is_some();
        let hint = "take `least_flow` out, or write `OnDemand`";
        self.wrong(is, &["water_heater", "least_flow"], "a tank is heated without a flow", hint);
    }

    fn fridge(&mut self) {
        let Some(fridge) = self.sheet.fridge.value.get() else { return };
        let is = fridge.kind != FridgeKind::Absorption && fridge.propane.get().is_some();
        let hint = "write `NotFitted`, or `Absorption`";
        self.wrong(is, &["fridge", "propane"], "a compressor burns no propane", hint);
        let is = fridge.kind == FridgeKind::Compressor && fridge.average.get().is_none();
        let hint = "write the current it draws on average";
        self.wrong(is, &["fridge", "average"], "a compressor draws current from the battery", hint);
        let s = self.sheet;
        let mains = s.shore.value.get().is_some()
            || s.generator.value.get().is_some()
            || s.inverter.value.get().is_some();
        let hint = "give `shore`, `generator` or `inverter`, or another kind";
        let is = fridge.kind == FridgeKind::Residential && !mains;
        self.wrong(is, &["fridge", "kind"], "nothing gives the household refrigerator 120 V", hint);
        let is = fridge.kind == FridgeKind::Residential && !s.loads.iter().any(|l| l.id.value == "fridge");
        let hint = "add it to `loads` with its watts: `(id: \"fridge\", draw: \"...\", long: true)`";
        self.wrong(
            is,
            &["fridge", "kind"],
            "a household refrigerator runs on 120 V, but `loads` has none",
            hint,
        );
    }
}
