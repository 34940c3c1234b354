//! Data sheets: weights that add up, places and words that are there.

use crate::measure::{Mass, Measure};
use crate::script::From;
use crate::source::{At, Place, nearest};
use crate::unit::{Change, Sheet};

use super::{Check, twice};

impl Check<'_> {
    pub(super) fn units(&mut self) {
        let scripts = self.scripts;
        let lot = &scripts.lot;
        for name in [&lot.value.name, &lot.value.place] {
            self.message(&name.value, &lot.place(name));
        }
        for line in &lot.value.leaving {
            self.message(&format!("leaving-{}", line.value.id.value), &lot.place(&line.value.id));
        }
        for sheet in scripts.units.values() {
            self.capacity(sheet);
            self.kit(sheet);
            self.places(sheet);
            self.unit_words(sheet);
            self.changes(sheet);
        }
        if scripts.units.is_empty() {
            let at = Place::start(&lot.file.name);
            self.fault("lot.no-unit", at, "the lot has no unit", "write a data sheet in walkthroughs/units");
        }
    }

    /// OCCC and CCC stand on the plate; GVWR less UVW must agree within 1 lb, since UVW holds full propane
    /// (49 CFR 571.110, 575.6).
    fn capacity(&mut self, sheet: &From<Sheet>) {
        let weight = &sheet.value.weight;
        let pounds = |m: &Mass| m.quantity().to(Measure::Pound);
        let at = sheet.place(weight);
        let w = &weight.value;
        let plate = w.occc.get().or(w.ccc.get());
        let Some(plate) = plate else {
            let what = "neither `occc` nor `ccc` is given";
            self.fault("unit.capacity", at, what, "read it from the plate: `occc` of a motorized unit, `ccc` of a trailer");
            return;
        };
        if let (Some(gvwr), Some(uvw), Some(plate)) = (pounds(&w.gvwr), pounds(&w.uvw), pounds(plate)) {
            let left = gvwr - uvw;
            if libm::fabs(left - plate) > 1.0 + 1e-9 {
                let what = format!("the plate says {plate} lb, GVWR less UVW is {left} lb");
                self.fault("unit.capacity", at, what, "read plate and weighing slip again; propane is inside UVW");
            }
        }
    }

    /// Tags stand once, and the weights add up to `weight.kit` (handbook H.6).
    fn kit(&mut self, sheet: &From<Sheet>) {
        for line in &sheet.value.kit {
            self.message(&format!("item-{}", line.item.value), &sheet.place(&line.item));
        }
        let tags = sheet.value.kit.iter().map(|l| (&l.tag.value, sheet.place(&l.tag)));
        for (tag, first, place) in twice(tags) {
            let what = format!("the tag `{tag}` is given twice; the other stands at {first}");
            self.fault("id.duplicate", place, what, "give each item its own tag");
        }
        let sum: f64 = sheet.value.kit.iter().filter_map(|l| l.weight.quantity().to(Measure::Pound)).sum();
        if let Some(kit) = sheet.value.weight.value.kit.quantity().to(Measure::Pound)
            && libm::fabs(sum - kit) > 0.01
        {
            let what = format!("the items weigh {sum} lb together, `kit` says {kit} lb");
            self.fault("unit.kit-weight", sheet.place(&sheet.value.weight), what, "weigh again and correct one of them");
        }
    }

    /// References name places of the sheet, and each place has words.
    fn places(&mut self, sheet: &From<Sheet>) {
        for (id, entry) in &sheet.value.places {
            let key = entry.value.words.as_ref().map_or_else(|| format!("place-{id}"), |w| w.value.clone());
            let at = entry.value.words.as_ref().map_or_else(|| sheet.place(entry), |w| sheet.place(w));
            self.message(&key, &at);
            self.message(&format!("station-{}", entry.value.station.word()), &at);
        }
        for exit in &sheet.value.exits {
            self.place_ref(sheet, &exit.place);
            self.message(&format!("exit-{}", exit.place.value), &sheet.place(&exit.place));
        }
    }

    fn place_ref(&mut self, sheet: &From<Sheet>, place: &At<String>) {
        if sheet.value.places.contains_key(&place.value) {
            return;
        }
        let known = sheet.value.places.keys().map(String::as_str);
        let hint = nearest(&place.value, known)
            .map_or_else(|| "add it to `places`".into(), |near| format!("did you mean `{near}`?"));
        self.fault("place.unknown", sheet.place(place), format!("the unit has no place `{}`", place.value), hint);
    }

    fn unit_words(&mut self, sheet: &From<Sheet>) {
        let at = sheet.place(&sheet.value.id);
        self.message(&format!("unit-{}", sheet.value.id.value), &at);
        self.message(&format!("unit-{}.kind", sheet.value.id.value), &at);
        for id in sheet.value.loads.iter().map(|l| &l.id).chain(sheet.value.night.iter().map(|l| &l.id)) {
            self.message(&format!("load-{}", id.value), &sheet.place(id));
        }
        for axle in &sheet.value.axles {
            self.message(&format!("axle-{}", axle.at.word()), &at);
        }
    }

    /// Changes name steps and topics of the lot.
    fn changes(&mut self, sheet: &From<Sheet>) {
        let topics = &self.scripts.topics;
        for change in &sheet.value.changes {
            let (id, words, known) = match &change.value {
                Change::Drop { step, reason } => (step, reason, is_step(topics, &step.value)),
                Change::Note { step, words } => (step, words, is_step(topics, &step.value)),
                Change::Fault { topic, words } => (topic, words, topics.contains_key(&topic.value)),
            };
            if !known {
                let what = format!("the lot has no `{}`", id.value);
                self.fault("change.unknown", sheet.place(id), what, "name a step or topic of the lot");
            }
            self.message(&words.value, &sheet.place(words));
        }
    }
}

fn is_step(topics: &std::collections::BTreeMap<String, From<crate::script::Topic>>, id: &str) -> bool {
    topics.values().flat_map(|t| &t.value.steps).any(|s| s.value.id.value == id)
}
