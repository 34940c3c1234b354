//! What drives, what is towed, and what that costs.

use crate::measure::Mass;
use crate::unit::{AxleAt, UnitKind};

use super::{Clashes, beyond};

impl Clashes<'_> {
    pub(super) fn road(&mut self) {
        match self.sheet.kind {
            UnitKind::Trailer => self.trailer(),
            UnitKind::ClassC | UnitKind::ClassB => self.motorized(),
        }
        self.wheels();
        self.hitch();
        self.loaded();
        self.fees();
    }

    fn trailer(&mut self) {
        let s = self.sheet;
        let hint = "write `NotFitted`, or correct `kind`";
        self.wrong(s.engine.value.get().is_some(), &["engine"], "a trailer has no engine", hint);
        self.wrong(
            s.hitch.value.get().is_none(),
            &["hitch"],
            "a trailer without a hitch cannot be towed",
            "give `hitch` with its weights and its ball, or correct `kind`",
        );
        let is = s.berths.value.belts.get().is_some();
        self.wrong(is, &["berths", "belts"], "nobody rides in a trailer, but it has belts", hint);
        let is = s.driving.value.towing.get().is_some();
        self.wrong(is, &["driving", "towing"], "a trailer tows nothing", hint);
        let is = s.engine_charger.value.get().is_some();
        self.wrong(is, &["engine_charger"], "a trailer has no engine that could charge", hint);
    }

    fn motorized(&mut self) {
        let s = self.sheet;
        let hint = "copy the section from a unit of this kind and change it, or correct `kind`";
        self.wrong(s.engine.value.get().is_none(), &["engine"], "a motorhome has an engine", hint);
        self.wrong(
            s.hitch.value.get().is_some(),
            &["hitch"],
            "`hitch` is the coupling of a trailer",
            "write `NotFitted`; whether a motorhome may tow is `driving.towing`",
        );
        let is = s.driving.value.towing.get().is_none();
        self.wrong(is, &["driving", "towing"], "nothing says whether it may tow", "write true or false");
        let size = &s.size.value;
        let hint = "measure it: the route on the road needs it";
        self.wrong(size.wheelbase.get().is_none(), &["size", "wheelbase"], "a motorhome has two axles", hint);
        self.wrong(size.mirrors.get().is_none(), &["size", "mirrors"], "a motorhome has mirrors", hint);
        // Told as `unit.belts` where seats have belts.
        let is = s.berths.value.belts.get().is_none() && !s.seats.iter().any(|seat| seat.belt);
        self.wrong(is, &["berths", "belts"], "nobody can drive it: no seat has a belt", "list its seats");
    }

    /// Axles are named after what they are on, and tires are not driven faster than they may.
    fn wheels(&mut self) {
        let s = self.sheet;
        let is_trailer = s.kind == UnitKind::Trailer;
        for (i, axle) in s.axles.iter().enumerate() {
            let of_trailer = matches!(axle.at, AxleAt::First | AxleAt::Second);
            let hint = "Front and Rear of a motorhome, First and Second of a trailer";
            let path = ["axles", &i.to_string(), "at"];
            self.wrong(of_trailer != is_trailer, &path, "a unit of this kind has no such axle", hint);
            let is = axle.wheels == 0 || axle.wheels % 2 == 1;
            let path = ["axles", &i.to_string(), "wheels"];
            self.wrong(is, &path, "an axle has as many wheels left as right", "count both sides");
        }
        self.wrong(s.axles.is_empty(), &["axles"], "the unit has no axle", "list each with its pressure");
        let wheels = &s.wheels.value;
        let driving = &s.driving.value;
        let is = wheels.speed.get().is_some_and(|most| self.more(&driving.speed, most));
        let hint = "the lot's limit is not above that of the tires";
        self.wrong(is, &["driving", "speed"], "it may be driven faster than its tires allow", hint);
        let is = self.more(&driving.wind, &driving.gust);
        let hint = "`wind` is the steady wind, `gust` the gusts in it";
        self.wrong(is, &["driving", "gust"], "it may drive in less gust than steady wind", hint);
        let is = self.more(&s.size.value.length, &driving.follow);
        let hint = "count the whole rig, with what pulls it";
        self.wrong(is, &["driving", "follow"], "the gap is reckoned for less than the unit is long", hint);
    }

    fn hitch(&mut self) {
        let s = self.sheet;
        let Some(hitch) = s.hitch.value.get() else { return };
        let gvwr = &s.weight.value.gvwr;
        let hint = "read the label of the hitch again: the weakest part counts";
        let is = self.more(gvwr, &hitch.trailer_most);
        self.wrong(is, &["hitch", "trailer_most"], "the hitch may not pull the loaded trailer", hint);
        let is = self.more(&hitch.tongue_dry, &hitch.tongue_most);
        self.wrong(is, &["hitch", "tongue_most"], "the hitch may not carry the empty trailer's tongue", hint);
        let is = beyond(self.si(&hitch.tongue_part), 1.0);
        self.wrong(
            is,
            &["hitch", "tongue_part"],
            "more than the whole trailer rests on the tongue",
            "write a part of its weight, as 12 %",
        );
        let is = self.more(gvwr, &hitch.rating);
        let hint = "whatever pulls it must be rated for the loaded trailer";
        self.wrong(is, &["hitch", "rating"], "a vehicle may pull it that is rated for less", hint);
    }

    /// What is lent fits in what it may carry.
    fn loaded(&mut self) {
        let w = &self.sheet.weight.value;
        let plate = w.occc.get().or_else(|| w.ccc.get()).copied();
        let is = plate.is_some_and(|plate: Mass| self.more(&w.kit, &plate));
        let hint = "weigh the items again, or lend less";
        self.wrong(is, &["weight", "kit"], "the loaned items alone are more than the unit may carry", hint);
        let is = w.gcwr.get().is_some_and(|gcwr| self.more(&w.gvwr, gcwr));
        let hint = "GCWR is vehicle and trailer together";
        self.wrong(is, &["weight", "gcwr"], "with a trailer it may weigh less than without", hint);
    }

    /// A fee is for something the unit has.
    fn fees(&mut self) {
        let s = self.sheet;
        let f = &s.fees.value;
        let waste = &s.waste.value;
        let (engine, generator) = (s.engine.value.get().is_some(), s.generator.value.get().is_some());
        let propane = s.propane.value.get();
        let cylinders = propane.is_some_and(|p| p.kind == crate::unit::PropaneKind::Cylinders);
        let all = [
            ("miles_night", f.miles_night.get().is_some(), engine, "an engine"),
            ("mile", f.mile.get().is_some(), engine, "an engine"),
            ("fuel_gallon", f.fuel_gallon.get().is_some(), engine, "an engine"),
            ("fuel_service", f.fuel_service.get().is_some(), engine, "an engine"),
            ("generator_night", f.generator_night.get().is_some(), generator, "a generator"),
            ("generator_hour", f.generator_hour.get().is_some(), generator, "a generator"),
            ("propane_quarter", f.propane_quarter.get().is_some(), propane.is_some(), "propane"),
            ("propane_cylinder", f.propane_cylinder.get().is_some(), cylinders, "propane cylinders"),
            ("black", f.black.get().is_some(), waste.black.get().is_some(), "a black tank"),
            ("cassette", f.cassette.get().is_some(), waste.cassette.get().is_some(), "a cassette"),
            (
                "griddle",
                f.griddle.get().is_some(),
                s.outdoor_kitchen.value.get().is_some(),
                "a kitchen outside",
            ),
        ];
        for (field, asked, there, thing) in all {
            let what = || format!("a fee is asked for {thing}, which the unit does not have");
            if asked && !there {
                self.wrong(true, &["fees", field], what(), "write `NotFitted`, or give the equipment");
            }
        }
    }
}
