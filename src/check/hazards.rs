//! Hazards that equipment brings: each needs a caution on the route of a unit that has it.

use crate::route::Route;
use crate::script::When;
use crate::unit::Facts;

use super::Check;

impl<'a> Check<'a> {
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
    pub(super) fn hazards(&mut self, unit: &'a str, route: &Route, facts: &Facts) {
        let Some(rules) = &self.scripts.hazards else { return };
        let applies = |when: &Option<When>| when.as_ref().is_none_or(|when| when.holds(facts));
        let rules = rules.value.iter().map(|r| &r.value).enumerate();
        for (number, rule) in rules.filter(|(_, rule)| applies(&rule.when)) {
            let names = |topic: &str| rule.topics.iter().any(|t| t.value == topic);
            let mut cautions = route.steps.iter().filter(|s| names(&s.topic)).flat_map(|s| &s.cautions);
            let warned = cautions.any(|c| c.hazard == rule.hazard.value && c.signal >= rule.least);
            // A topic that cannot be read may warn of it.
            let lost = rule.topics.iter().any(|t| self.lost.may_hold(&t.value));
            if !warned && !lost {
                self.uncovered.entry(number).or_default().push(unit);
            }
        }
    }

    /// Each rule that units break is told once.
    pub(super) fn uncovered(&mut self) {
        let Some(rules) = &self.scripts.hazards else { return };
        for (number, units) in std::mem::take(&mut self.uncovered) {
            let Some(rule) = rules.value.get(number).map(|r| &r.value) else { continue };
            let topics: Vec<&str> = rule.topics.iter().map(|t| t.value.as_str()).collect();
            let topics = topics.join(" or ");
            let named: Vec<String> = units.iter().take(3).map(|unit| format!("`{unit}`")).collect();
            let more = match units.len().saturating_sub(3) {
                0 => String::new(),
                more => format!(" and {more} more"),
            };
            let (hazard, units) = (rule.hazard.value, named.join(", "));
            let what = format!("nothing in {topics} warns of {hazard:?} on the route of {units}{more}");
            let hint = format!("give {topics} a caution of {:?} or more for it", rule.least);
            self.fault("hazard.uncovered", rules.place(&rule.hazard), what, hint);
        }
    }
}
