//! Cards to put in order, as a unit asks for them.

use super::form::OrderForm;
use super::on::Unit;
use super::{Early, Order};

impl OrderForm {
    /// The cards that the unit has, with the rules among them.
    pub(super) fn on(&self, unit: &Unit<'_>) -> Order {
        let used = self.cards.iter().filter(|c| unit.has(c.when.as_ref())).map(|c| &c.name.value);
        let used: Vec<&String> = used.collect();
        let out: Vec<_> = self.out.iter().filter(|o| unit.has(o.when.as_ref())).collect();
        let cards = used.iter().copied().chain(out.iter().map(|o| &o.card.value));
        let mut before = Vec::new();
        for list in &self.before {
            let there: Vec<&String> = list.iter().map(|c| &c.value).filter(|id| used.contains(id)).collect();
            for (at, first) in there.iter().enumerate() {
                before.extend(there.iter().skip(at + 1).map(|then| ((*first).clone(), (*then).clone())));
            }
        }
        Order {
            cards: cards.map(|id| unit.card(id)).collect(),
            out: out.iter().map(|o| (o.card.value.clone(), unit.say(&o.say))).collect(),
            before,
            early: self
                .early
                .iter()
                .filter(|e| used.contains(&&e.before.value))
                .map(|e| Early {
                    card: e.card.value.clone(),
                    before: e.before.value.clone(),
                    say: unit.say(&e.say),
                })
                .collect(),
            missing: self.missing.iter().map(|m| (m.card.value.clone(), unit.say(&m.say))).collect(),
            otherwise: unit.say(&self.otherwise),
        }
    }
}
