//! Loads on a supply, judged by the rule of the figure `loads_fit`.

use crate::figures::loads::{Item, fits, largest_sets};
use crate::measure::{Measure, Quantity, Rounding, rounded};

use super::judge::wrong;
use super::{Carried, Said, Together, Verdict};

impl Together {
    /// Loads of these ids, with those that run in any case.
    fn on<'a>(&'a self, ids: &'a [String]) -> impl Iterator<Item = &'a Item> {
        let chosen = self.loads.iter().map(|(_, item)| item).filter(move |item| ids.contains(&item.id));
        self.always.iter().chain(chosen)
    }

    pub(super) fn judge(&self, cards: &[String]) -> Verdict {
        if cards.is_empty() {
            return wrong(&self.none, Vec::new());
        }
        if fits(self.on(cards), &self.limits) {
            return Verdict::Right;
        }
        let is_cause =
            |ids: &[String]| ids.iter().all(|id| cards.contains(id)) && !fits(self.on(ids), &self.limits);
        let cause = self.wrong.iter().find(|(ids, _)| is_cause(ids));
        let (ids, say) = cause.map_or((cards, &self.otherwise), |(ids, say)| (ids.as_slice(), say));
        let mut say = say.clone();
        say.with.extend(self.sums(ids));
        wrong(&say, Vec::new())
    }

    /// Sums of these loads, and what the supply gives, as variables.
    fn sums(&self, ids: &[String]) -> Vec<(String, Carried)> {
        sums(self.on(ids), &self.limits)
    }

    /// The largest set that fits.
    pub(super) fn largest(&self) -> Option<Vec<String>> {
        let items: Vec<Item> = self.loads.iter().map(|(_, item)| item.clone()).collect();
        largest_sets(&items, &self.always, &self.limits).into_iter().next()
    }
}

/// Sums of loads, and what their supply gives: `$sum`, `$long`, `$most`, `$most_long`.
pub(super) fn sums<'a>(
    on: impl Iterator<Item = &'a Item>,
    limits: &crate::figures::loads::Limits,
) -> Vec<(String, Carried)> {
    let (mut sum, mut long) = (0.0, 0.0);
    for item in on {
        sum += item.watts;
        if item.long {
            long += item.watts;
        }
    }
    let values =
        [("sum", Some(sum)), ("long", Some(long)), ("most", Some(limits.each)), ("most_long", limits.long)];
    values.into_iter().filter_map(|(name, value)| Some((name.to_owned(), watts(value?)?))).collect()
}

/// A power as a message carries it.
pub(super) fn watts(value: f64) -> Option<Carried> {
    let number = rounded(value, 0, Rounding::Nearest)?.normalize();
    Some(Carried::Measured(Quantity::new(number, Measure::Watt)))
}

impl Said {
    /// With more values.
    pub(super) fn and(mut self, more: Vec<(String, Carried)>) -> Self {
        self.with.extend(more);
        self
    }
}
