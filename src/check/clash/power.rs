//! What draws 120 V or the battery's power.

use crate::unit::{CookKind, Instead, Leg, Load, NightLoad, Supply};

use super::supply::VOLTS;
use super::{Clashes, beyond};

impl Clashes<'_> {
    pub(super) fn power(&mut self) {
        let s = self.sheet;
        let has = |supply: Supply| match supply {
            Supply::Shore => s.shore.value.get().is_some(),
            Supply::Generator => s.generator.value.get().is_some(),
            Supply::Inverter => s.inverter.value.get().is_some(),
        };
        let outside = has(Supply::Shore) || has(Supply::Generator);
        let any = outside || has(Supply::Inverter);
        let hint = "give `shore`, `generator` or `inverter`, or take it out";
        self.wrong(!any && !s.loads.is_empty(), &["loads"], "nothing gives the loads 120 V", hint);
        let hint = "give `shore` or `generator`, or write `NotFitted`";
        let air = s.roof_air.value.get();
        self.wrong(
            air.is_some() && !outside,
            &["roof_air"],
            "nothing gives the roof air conditioner 120 V",
            hint,
        );
        let is = air.is_some_and(|air| air.count == 0);
        self.wrong(is, &["roof_air", "count"], "no roof air conditioner is counted", "write `NotFitted`");
        let fridge = s.outdoor_kitchen.value.get().is_some_and(|kitchen| kitchen.fridge.get().is_some());
        let hint = "give `shore`, or write `NotFitted`";
        let is = fridge && !has(Supply::Shore);
        self.wrong(
            is,
            &["outdoor_kitchen", "fridge"],
            "it runs on shore power, which the unit does not have",
            hint,
        );
        let zone = s.cook.value.get().is_some_and(|cook| cook.kind == CookKind::Induction);
        self.wrong(zone && !any, &["cook", "kind"], "nothing gives the induction zone 120 V", hint);
        for (i, load) in s.loads.iter().enumerate() {
            self.load(i, load, &has);
        }
        for (i, load) in s.night.iter().enumerate() {
            self.battery_load("night", i, load);
        }
        for (i, load) in s.day.iter().flatten().enumerate() {
            self.battery_load("day", i, load);
        }
    }

    fn load(&mut self, i: usize, load: &Load, has: &dyn Fn(Supply) -> bool) {
        let s = self.sheet;
        let number = i.to_string();
        let path = |field: &'static str| ["loads", &number, field].map(ToOwned::to_owned);
        let id = &load.id.value;
        let mut wrong = |is: bool, field: &'static str, what: String, hint: &'static str| {
            if is {
                self.found.push(super::Clash { path: path(field).to_vec(), what, hint, unusual: false });
            }
        };
        for supply in load.from.iter().flatten() {
            let what = format!("`{id}` runs from the {}, which the unit does not have", supply.word());
            wrong(!has(*supply), "from", what, "take it out of the list, or give the equipment");
        }
        let what = format!("`{id}` can run from nothing");
        let hint = "leave `from` out when any supply will do";
        wrong(load.from.as_ref().is_some_and(Vec::is_empty), "from", what, hint);
        let is = load.instead == Some(Instead::Propane) && s.propane.value.get().is_none();
        let what = format!("`{id}` can run on propane, which the unit does not have");
        wrong(is, "instead", what, "take `instead` out, or give `propane`");
        let draw = load.draw.quantity().si();
        let is = load.settled.is_some_and(|settled| beyond(settled.quantity().si(), draw));
        let what = format!("`{id}` draws more once it has settled");
        wrong(is, "settled", what, "`draw` is the most it draws, `settled` what is left of it");
        let is = load.start.is_some_and(|start| beyond(draw, start.quantity().si()));
        let what = format!("`{id}` draws less as it starts than when it runs");
        wrong(is, "start", what, "write what it draws for a moment as it starts");
        let Some(shore) = s.shore.value.get() else { return };
        let what = format!("`{id}` hangs on a second leg, which the cord does not have");
        let is = load.leg == Some(Leg::Two) && shore.legs == 1;
        wrong(is, "leg", what, "take `leg` out, or correct `shore.legs`");
        let what = format!("`{id}` hangs on the outlets and draws more than their breaker lets through");
        let on_branch = load.branch && beyond(draw, shore.branch.quantity().si() * VOLTS);
        wrong(on_branch, "draw", what, "read its label again, or take `branch` out");
        let what = format!("`{id}` draws more than the cord can carry");
        let is = !on_branch && beyond(draw, shore.cord.quantity().si() * VOLTS);
        wrong(is, "draw", what, "read its label again: watts at 120 V");
    }

    fn battery_load(&mut self, list: &'static str, i: usize, load: &NightLoad) {
        let number = i.to_string();
        let id = &load.id.value;
        for (field, part) in [("duty", load.duty), ("cold_duty", load.cold_duty)] {
            if part.is_some_and(|part| beyond(self.si(&part), 1.0)) {
                let what = format!("`{id}` runs more than all the time");
                self.wrong(true, &[list, &number, field], what, "write a part of the time, as 35 %");
            }
        }
        // A day has 86 400 s.
        if beyond(self.si(&load.hours), 86_400.0) {
            let what = format!("`{id}` runs for more than a day in one night");
            self.wrong(true, &[list, &number, "hours"], what, "write the hours of one night or one day");
        }
    }
}
