//! Where 120 V and the battery's power come from.

use crate::unit::{Chemistry, FuelKind, UnitKind};

use super::{Clashes, beyond};

/// Volts that cords and breakers are reckoned with: NEC 220.5(A) reckons with 120 V.
pub(super) const VOLTS: f64 = 120.0;

impl Clashes<'_> {
    pub(super) fn supply(&mut self) {
        self.generator();
        self.house();
        self.chargers();
        self.inverter();
        self.shore();
    }

    fn generator(&mut self) {
        let s = self.sheet;
        let Some(generator) = s.generator.value.get() else { return };
        // A trailer with an engine is told already.
        let is = s.engine.value.get().is_none() && s.kind == UnitKind::Trailer;
        let hint = "write `NotFitted`; a generator here draws from the engine's tank";
        self.wrong(is, &["generator"], "the generator has no engine tank to draw from", hint);
        let is = self.more(&generator.burn_half, &generator.burn_full);
        let hint = "look up both in its manual";
        self.wrong(is, &["generator", "burn_full"], "it burns less at full load than at half", hint);
        let is = generator.peak.is_some_and(|peak| self.more(&generator.rated, &peak));
        self.wrong(is, &["generator", "peak"], "it gives less for a moment than all the time", hint);
        let hint = "write the part of the tank that is left for driving, as 1/4";
        let is = !beyond(1.0, self.si(&generator.pickup));
        self.wrong(is, &["generator", "pickup"], "it never gets fuel, even from a full tank", hint);
    }

    fn house(&mut self) {
        let house = &self.sheet.house.value;
        let usable = self.si(&house.usable);
        let is = beyond(usable, 1.0) || usable <= 0.0;
        let hint = "write the part that may be used, as 50 %";
        self.wrong(
            is,
            &["house", "usable"],
            "a battery gives some of what it holds, and not more than all",
            hint,
        );
        let is = self.si(&house.capacity) <= 0.0;
        self.wrong(is, &["house", "capacity"], "the battery holds nothing", "read its label: amp-hours");
        let hint = "`full` is above `low`, `low` above `stop`";
        let is = !self.more(&house.full, &house.low);
        self.wrong(is, &["house", "low"], "the battery is to be charged when it is full", hint);
        let is = !self.more(&house.low, &house.stop);
        self.wrong(is, &["house", "stop"], "loads go off before the battery is to be charged", hint);
        let is = house.peukert.is_some_and(|p| beyond(1.0, self.si(&p)));
        let hint = "Peukert's exponent is 1 for a perfect battery, more for any other";
        self.wrong(is, &["house", "peukert"], "the battery gives more the faster it is emptied", hint);
        // Common practice, no source: cells of lithium iron phosphate are not charged in frost.
        let is = house.chemistry == Chemistry::Lithium && house.charge_above.get().is_none();
        let hint = "look up the lowest temperature at which it takes a charge; `NotFitted` if it is heated";
        self.unusual(
            is,
            &["house", "charge_above"],
            "a lithium battery that takes a charge in any frost",
            hint,
        );
    }

    fn chargers(&mut self) {
        let s = self.sheet;
        if let Some(charger) = s.charger.value.get() {
            let is = self.more(&charger.settled, &charger.bulk);
            let hint = "`bulk` is while it charges, `settled` when the battery is full";
            self.wrong(
                is,
                &["charger", "settled"],
                "it draws more for a full battery than for an empty one",
                hint,
            );
            let is = s.shore.value.get().is_none() && s.generator.value.get().is_none();
            let hint = "give `shore` or `generator`, or write `NotFitted`";
            self.wrong(is, &["charger"], "nothing gives the charger 120 V", hint);
        }
        let Some(engine) = s.engine.value.get() else { return };
        let is = engine.fuel == FuelKind::Gasoline && engine.exhaust_fluid.get().is_some();
        let hint = "write `NotFitted`, or correct `fuel`";
        self.wrong(
            is,
            &["engine", "exhaust_fluid"],
            "an engine that burns gasoline takes no exhaust fluid",
            hint,
        );
        let is = !beyond(1.0, self.si(&engine.reserve));
        let hint = "write the part of the tank that is not counted on, as 1/8";
        self.wrong(is, &["engine", "reserve"], "nothing of the tank may be used", hint);
    }

    fn inverter(&mut self) {
        let Some(inverter) = self.sheet.inverter.value.get() else { return };
        let is = inverter.peak.is_some_and(|peak| self.more(&inverter.power, &peak));
        let hint = "`power` is what it gives all the time, `peak` for a moment";
        self.wrong(is, &["inverter", "peak"], "it gives less for a moment than all the time", hint);
        let part = self.si(&inverter.efficiency);
        let is = beyond(part, 1.0) || part <= 0.0;
        let hint = "write the part of the battery's power that comes out, as 90 %";
        self.wrong(is, &["inverter", "efficiency"], "more comes out than goes in, or nothing", hint);
    }

    fn shore(&mut self) {
        let Some(shore) = self.sheet.shore.value.get() else { return };
        let is = !(1..=2).contains(&shore.legs);
        let hint = "1, or 2 for a cord of 120/240 V";
        self.wrong(is, &["shore", "legs"], "no cord has so many legs", hint);
        let most = self.si(&shore.cord) * VOLTS * f64::from(shore.legs);
        let is = !is && beyond(self.si(&shore.power), most);
        let hint = "amperes of the cord times 120 V, for each leg";
        self.wrong(is, &["shore", "power"], "the cord cannot carry so much", hint);
        let is = self.more(&shore.branch, &shore.cord);
        let hint = "read the breaker of the outlets in the panel";
        self.wrong(
            is,
            &["shore", "branch"],
            "the breaker of the outlets lets through more than the cord",
            hint,
        );
    }
}
