//! Conditions on equipment.

use serde::Deserialize;

use crate::measure::Quantity;
use crate::source::At;

use super::facts::{Facts, Value};

/// A condition. It speaks of equipment, never of a unit's name.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub enum When {
    /// The section, or the field as `waste.black`, is fitted.
    Fitted(At<String>),
    /// The fact is this word, flag or count.
    Is(At<String>, At<String>),
    /// The fact is more than this quantity.
    Over(At<String>, At<Quantity>),
    /// Not so.
    Not(Box<Self>),
    /// All of them.
    All(Vec<Self>),
    /// At least one of them.
    Any(Vec<Self>),
}

impl When {
    /// Whether it holds for a unit. Equipment that is not fitted makes `Is` and `Over` false. What hangs on a fact that
    /// is not known does not hold, and neither does its opposite.
    #[must_use]
    pub fn holds(&self, facts: &Facts) -> bool {
        self.judge(facts) == Some(true)
    }

    /// Whether it holds; none where a fact that is not known decides.
    fn judge(&self, facts: &Facts) -> Option<bool> {
        match self {
            Self::Is(name, _) | Self::Over(name, _) if facts.is_not_known(&name.value) => None,
            Self::Fitted(name) => Some(facts.is_fitted(&name.value) == Some(true)),
            Self::Is(name, word) => Some(match facts.get(&name.value).map(|f| &f.value) {
                Some(Value::Word(given)) => *given == word.value,
                Some(Value::Code(given)) => *given == word.value,
                Some(Value::Flag(given)) => given.to_string() == word.value,
                Some(Value::Count(given)) => given.to_string() == word.value,
                _ => false,
            }),
            Self::Over(name, limit) => Some(facts.quantity(&name.value).is_some_and(|q| {
                q.to(limit.value.measure()).is_some_and(|n| n > limit.value.number().to_f64())
            })),
            Self::Not(inner) => inner.judge(facts).map(|holds| !holds),
            Self::All(all) => together(all, facts, false),
            Self::Any(any) => together(any, facts, true),
        }
    }

    /// All conditions inside it, itself included.
    #[must_use]
    pub fn flat(&self) -> Vec<&Self> {
        let mut all = vec![self];
        match self {
            Self::Not(inner) => all.extend(inner.flat()),
            Self::All(parts) | Self::Any(parts) => all.extend(parts.iter().flat_map(Self::flat)),
            Self::Fitted(_) | Self::Is(..) | Self::Over(..) => {}
        }
        all
    }
}

/// `decisive` as soon as one part is; none as soon as a part is not known; else the opposite.
fn together(parts: &[When], facts: &Facts, decisive: bool) -> Option<bool> {
    let judged: Vec<Option<bool>> = parts.iter().map(|part| part.judge(facts)).collect();
    if judged.contains(&Some(decisive)) {
        return Some(decisive);
    }
    (!judged.contains(&None)).then_some(!decisive)
}
