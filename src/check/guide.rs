//! Guides: hazards first, no row leads nowhere, none loops back, none is unreachable, each path ends
//! (handbook H.9), every text said with each unit's values.

use std::collections::{BTreeMap, BTreeSet};

use crate::script::{From, Guide, GuideRow, Target, Way};
use crate::source::{At, Place};
use crate::unit::Facts;
use crate::words::SOURCE_LANGUAGE;

use super::Check;
use super::route::{Speakers, Text};

/// Parts of a hazard of a guide.
const HAZARD_PARTS: [&str; 4] = ["", ".title", ".harm", ".avoid"];

/// Rows that some unit comes to, by guide.
pub(super) type Reached<'a> = BTreeMap<&'a str, BTreeSet<&'a str>>;

impl<'a> Check<'a> {
    pub(super) fn guides(&mut self) {
        let scripts = self.scripts;
        for guide in scripts.guides.values() {
            if self.is_full() {
                return;
            }
            self.guide_form(guide);
            self.guide_links(guide);
        }
    }

    /// The guides that are for a unit, as it has them.
    pub(super) fn guides_on(
        &mut self,
        unit: &str,
        facts: &Facts,
        speakers: &mut Speakers<'_>,
        all: &mut Reached<'a>,
    ) {
        let scripts = self.scripts;
        for (id, guide) in scripts.guides.iter().filter(|(_, guide)| guide.value.fits(facts)) {
            let reached = guide.value.reached(facts);
            self.guide_on(guide, unit, facts, &reached);
            if guide.value.first(facts).is_some() {
                self.say_guide(guide, unit, facts, speakers, &reached);
            }
            all.entry(id).or_default().extend(reached);
        }
    }

    /// What can be told without a unit.
    fn guide_form(&mut self, guide: &From<Guide>) {
        let id = &guide.value.id;
        let at = || guide.place(id);
        self.shape(&id.value, at);
        for part in ["", ".stop", ".find"] {
            self.message(format!("guide-{}{part}", id.value), at);
        }
        self.perhaps(format!("guide-{}.note", id.value));
        self.condition(guide, guide.value.when.as_ref());
        if guide.value.hazards.is_empty() {
            let hint = "name at least one: whoever looks for a fault is near it";
            self.fault("guide.no-hazard", at(), format!("`{}` warns of nothing", id.value), hint);
        }
        for hazard in &guide.value.hazards {
            self.caution(guide, &hazard.value);
            let name = &hazard.value.id;
            if !name.value.starts_with(&format!("{}-h", id.value)) {
                let what = format!("the hazard `{}` is not named after its guide", name.value);
                let hint = format!("name it `{}-h1`, `-h2` ...", id.value);
                self.fault("id.foreign", guide.place(name), what, hint);
            }
        }
        if guide.value.rows.is_empty() {
            let what = format!("`{}` has no row", id.value);
            self.fault("guide.no-row", at(), what, "write at least one row");
        }
        for row in guide.value.rows.iter().map(|r| &r.value) {
            self.row_form(guide, row);
        }
    }

    fn row_form(&mut self, guide: &From<Guide>, row: &GuideRow) {
        self.shape(&row.id.value, || guide.place(&row.id));
        let key = row_key(guide, row);
        self.message(format!("{key}.ask"), || guide.place(&row.id));
        for part in ["", ".yes", ".no"] {
            self.perhaps(format!("{key}{part}"));
        }
        self.condition(guide, row.when.as_ref());
        for target in [&row.yes, &row.no] {
            for when in target.flat().1 {
                self.condition(guide, Some(when));
            }
        }
    }

    /// A message that may be there.
    pub(super) fn perhaps(&mut self, key: String) {
        if self.scripts.words.has(SOURCE_LANGUAGE, &key) {
            self.used.extend(self.scripts.words.references(SOURCE_LANGUAGE, &key));
            let _ = self.used.insert(key);
        }
    }

    /// Rows and guides that are led to exist; rows have each their own id.
    fn guide_links(&mut self, guide: &From<Guide>) {
        let rows: Vec<&At<String>> = guide.value.rows.iter().map(|r| &r.value.id).collect();
        let place =
            |at: usize| rows.get(at).map_or_else(|| guide.place(&guide.value.id), |id| guide.place(id));
        self.once(rows.iter().map(|id| id.value.as_str()), place, "give each row its own id");
        for row in guide.value.rows.iter().map(|r| &r.value) {
            for target in row.yes.flat().0.into_iter().chain(row.no.flat().0) {
                match target {
                    Target::Row(id) if guide.value.row(&id.value).is_none() => {
                        let hint = self.hint(
                            &id.value,
                            rows.iter().map(|r| r.value.as_str()),
                            "name a row of this guide",
                        );
                        let what = format!("`{}` has no row `{}`", guide.value.id.value, id.value);
                        self.fault("guide.unknown-row", guide.place(id), what, hint);
                    }
                    Target::Guide(id) if !self.scripts.guides.contains_key(&id.value) => {
                        let known = self.scripts.guides.keys().map(String::as_str);
                        let hint = self.hint(&id.value, known, "name a file of walkthroughs/guides");
                        let what = format!("there is no guide `{}`", id.value);
                        self.fault("guide.unknown", guide.place(id), what, hint);
                    }
                    _ => {}
                }
            }
        }
    }

    /// The guide as one unit has it.
    fn guide_on(&mut self, guide: &From<Guide>, unit: &str, facts: &Facts, reached: &BTreeSet<&str>) {
        let form = &guide.value;
        if form.rows.is_empty() {
            return;
        }
        if form.first(facts).is_none() {
            let what = format!("`{}` has no row for `{unit}`", form.id.value);
            let hint = "give a row to begin with, or the guide a condition";
            self.fault_once("guide.no-row", guide.place(&form.id), what, hint);
            return;
        }
        for row in form.rows.iter().map(|r| &r.value).filter(|r| reached.contains(r.id.value.as_str())) {
            if row.when.as_ref().is_some_and(|w| !w.holds(facts)) {
                let what = format!("`{unit}` comes to row `{}`, which is not for it", row.id.value);
                let hint =
                    "lead it elsewhere with `By([(when: ..., to: ...), ...])`, or correct the condition";
                self.fault_once("guide.not-here", guide.place(&row.id), what, hint);
            }
            for (target, word) in [(&row.yes, "yes"), (&row.no, "no")] {
                self.way_on(guide, row, word, target.on(facts), unit, facts);
            }
        }
        self.loops(guide, unit, facts);
    }

    fn way_on(
        &mut self,
        guide: &From<Guide>,
        row: &GuideRow,
        answer: &str,
        way: Option<Way<'_>>,
        unit: &str,
        facts: &Facts,
    ) {
        match way {
            None => {
                let what = format!("`{answer}` of row `{}` leads nowhere on `{unit}`", row.id.value);
                let hint = "let the last branch have no condition";
                self.fault_once("guide.no-way", guide.place(&row.id), what, hint);
            }
            Some(Way::Guide(id)) => {
                let here = self.scripts.guides.get(&id.value).is_none_or(|g| g.value.fits(facts));
                if !here {
                    let what = format!("`{unit}` is led to the guide `{}`, which is not for it", id.value);
                    let hint = "lead it elsewhere with `By([(when: ..., to: ...), ...])`";
                    self.fault_once("guide.not-here", guide.place(id), what, hint);
                }
            }
            Some(Way::Row(_) | Way::End(_)) => {}
        }
    }

    /// No row can be come to twice on one path.
    fn loops(&mut self, guide: &From<Guide>, unit: &str, facts: &Facts) {
        let form = &guide.value;
        let next = |row: &str| -> Vec<&At<String>> {
            let row = form.row(row).map(|(_, row)| row);
            let targets = row.into_iter().flat_map(|row| [&row.yes, &row.no]);
            let rows = targets.filter_map(|t| match t.on(facts) {
                Some(Way::Row(id)) => Some(id),
                _ => None,
            });
            rows.collect()
        };
        // 0 not seen, 1 on the path, 2 done.
        let mut state: BTreeMap<&str, u8> = BTreeMap::new();
        let Some(first) = form.first(facts) else { return };
        let mut stack: Vec<(&str, bool)> = vec![(first.id.value.as_str(), false)];
        while let Some((row, done)) = stack.pop() {
            if done {
                let _ = state.insert(row, 2);
                continue;
            }
            if state.get(row).copied().unwrap_or(0) != 0 {
                continue;
            }
            let _ = state.insert(row, 1);
            stack.push((row, true));
            for id in next(row) {
                match state.get(id.value.as_str()).copied().unwrap_or(0) {
                    1 => {
                        let what = format!("row `{row}` leads back to `{}` on `{unit}`", id.value);
                        let hint = "nobody tries the same twice: call, wait or go on";
                        self.fault_once("guide.circle", guide.place(id), what, hint);
                    }
                    0 => {
                        if let Some((_, row)) = form.row(&id.value) {
                            stack.push((row.id.value.as_str(), false));
                        }
                    }
                    _ => {}
                }
            }
        }
    }

    /// Rows that no unit comes to. Where no unit of the lot has the equipment, or one cannot be read, nobody can
    /// tell.
    pub(super) fn unreached(&mut self, all: &Reached<'_>) {
        if self.lost.any_form() {
            return;
        }
        let scripts = self.scripts;
        for (id, reached) in all.iter().filter(|(_, reached)| !reached.is_empty()) {
            let Some(guide) = scripts.guides.get(*id) else { continue };
            if self.came_as_it_is(&guide.file.name) {
                continue;
            }
            for row in guide.value.rows.iter().map(|r| &r.value) {
                if !reached.contains(row.id.value.as_str()) {
                    let what = format!("no unit of the lot comes to row `{}`", row.id.value);
                    let hint = "lead to it, or take it out; it may be for a unit that is not here yet";
                    self.note("guide.unreached", guide.place(&row.id), what, hint);
                }
            }
        }
    }

    fn say_guide(
        &mut self,
        guide: &From<Guide>,
        unit: &str,
        facts: &Facts,
        speakers: &mut Speakers<'_>,
        reached: &BTreeSet<&str>,
    ) {
        let scripts = self.scripts;
        let id = &guide.value.id.value;
        let mut keys: Vec<String> =
            ["", ".stop", ".find", ".note"].iter().map(|part| format!("guide-{id}{part}")).collect();
        for hazard in guide.value.hazards(facts) {
            keys.extend(HAZARD_PARTS.iter().map(|part| format!("caution-{}{part}", hazard.id.value)));
        }
        for row in guide.value.rows.iter().map(|r| &r.value).filter(|r| reached.contains(r.id.value.as_str()))
        {
            let key = row_key(guide, row);
            keys.extend(["", ".ask", ".yes", ".no"].iter().map(|part| format!("{key}{part}")));
        }
        for key in keys.iter().filter(|key| scripts.words.has(SOURCE_LANGUAGE, key)) {
            self.say_key(speakers, Text::Caution, |_| Some(Place::start(&guide.file.name)), unit, key);
        }
    }
}

fn row_key(guide: &From<Guide>, row: &GuideRow) -> String {
    format!("row-{}-{}", guide.value.id.value, row.id.value)
}
