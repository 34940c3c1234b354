//! Hazards that equipment brings: each needs a caution on the route of a unit that has it.

use crate::route::Route;
use crate::script::{HazardRule, When};
use crate::source::Place;
use crate::unit::Facts;

use super::Check;

impl Check<'_> {
    /// Conditions and topics of the rules are there.
    pub(super) fn hazard_rules(&mut self) {
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
    }

    /// The route of a unit warns of what its equipment brings.
    pub(super) fn hazards(&mut self, route: &Route, facts: &Facts) {
        let Some(rules) = &self.scripts.hazards else { return };
        let applies = |when: &Option<When>| when.as_ref().is_none_or(|when| when.holds(facts));
        for rule in rules.value.iter().map(|r| &r.value).filter(|rule| applies(&rule.when)) {
            let names = |topic: &str| rule.topics.iter().any(|t| t.value == topic);
            let mut cautions = route.steps.iter().filter(|s| names(&s.topic)).flat_map(|s| &s.cautions);
            let warned = cautions.any(|c| c.hazard == rule.hazard.value && c.signal >= rule.least);
            // A topic that cannot be read may warn of it.
            let lost = rule.topics.iter().any(|t| self.lost.may_hold(&t.value));
            if !warned && !lost {
                self.uncovered(rules.place(&rule.hazard), &route.unit, rule);
            }
        }
    }

    fn uncovered(&mut self, place: Place, unit: &str, rule: &HazardRule) {
        let topics: Vec<&str> = rule.topics.iter().map(|t| t.value.as_str()).collect();
        let topics = topics.join(" or ");
        let what = format!("nothing in {topics} on the route of `{unit}` warns of {:?}", rule.hazard.value);
        let hint = format!("give {topics} a caution of {:?} or more for it", rule.least);
        self.fault("hazard.uncovered", place, what, hint);
    }
}
