//! Pages that do not hold what stands on them. Whoever draws the pages measures them and hands the result in.

use crate::script::Scripts;
use crate::source::Place;
use crate::words::SOURCE_LANGUAGE;

use super::Check;

/// Something that does not fit on its page.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Overflow {
    /// Id of the step, or key of the message.
    pub key: String,
    /// What does not fit, and by how much.
    pub what: String,
}

/// Measures the pages of one unit.
pub type Fit<'f> = dyn Fn(&Scripts, &str) -> Vec<Overflow> + 'f;

impl Check<'_> {
    /// Pages of all units hold what stands on them.
    pub(super) fn pages(&mut self, fit: &Fit<'_>) {
        let scripts = self.scripts;
        for unit in scripts.units.keys() {
            let mut all = fit(scripts, unit);
            all.sort();
            for Overflow { key, what } in all {
                let place = self.page_place(&key);
                let what = format!("`{key}` on `{unit}`: {what}");
                self.fault("page.overflow", place, what, "shorten the words, or split the step");
            }
        }
    }

    fn page_place(&self, key: &str) -> Place {
        let scripts = self.scripts;
        let step = self.steps.get(key).copied();
        let of_step = step.map(|(topic, step)| topic.place(&step.id));
        let of_words = || scripts.words.place_of(SOURCE_LANGUAGE, key);
        of_step.or_else(of_words).unwrap_or_else(|| Place::start(&scripts.lot.file.name))
    }
}
