//! Hazards that equipment brings: each needs a caution on the route of a unit that has it.

use crate::script::Signal;
use crate::source::At;
use crate::unit::Facts;

use super::Check;

impl Check<'_> {
    pub(super) fn hazards(&mut self) {
        let scripts = self.scripts;
        let Some(rules) = &scripts.hazards else { return };
        for rule in &rules.value {
            self.condition(rules, rule.value.when.as_ref());
            for topic in &rule.value.topics {
                if !scripts.topics.contains_key(&topic.value) && !self.lost.may_hold(&topic.value) {
                    let known = scripts.topics.keys().map(String::as_str);
                    let hint = self.hint(&topic.value, known, "name a topic of the lot");
                    let what = format!("there is no topic `{}`", topic.value);
                    self.fault("hazard.topic", rules.place(topic), what, hint);
                }
            }
        }
        for (unit, sheet) in &scripts.units {
            let facts = Facts::new(&sheet.value, &scripts.lot.value);
            let route = crate::route::build_with(scripts, unit, &sheet.value, &facts);
            let applies = |w: &Option<crate::script::When>| w.as_ref().is_none_or(|w| w.holds(&facts));
            for rule in rules.value.iter().filter(|rule| applies(&rule.value.when)) {
                let rule = &rule.value;
                let names = |topic: &str| rule.topics.iter().any(|t| t.value == topic);
                let mut cautions = route.steps.iter().filter(|s| names(&s.topic)).flat_map(|s| &s.cautions);
                let warned = cautions.any(|c| c.hazard == rule.hazard.value && c.signal >= rule.least);
                // A topic that cannot be read may warn of it.
                let lost = rule.topics.iter().any(|t| self.lost.may_hold(&t.value));
                if !warned && !lost {
                    self.uncovered(rules.place(&rule.hazard), unit, rule.least, &rule.hazard, &rule.topics);
                }
            }
        }
    }

    fn uncovered(
        &mut self,
        place: crate::source::Place,
        unit: &str,
        least: Signal,
        hazard: &At<crate::script::Hazard>,
        topics: &[At<String>],
    ) {
        let topics: Vec<&str> = topics.iter().map(|t| t.value.as_str()).collect();
        let what = format!("nothing on the route of `{unit}` warns of {:?}", hazard.value);
        let hint = format!("give {} a caution of {least:?} or more for it", topics.join(" or "));
        self.fault("hazard.uncovered", place, what, hint);
    }
}
