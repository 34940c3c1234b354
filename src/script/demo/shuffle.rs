//! In which order things stand on the page: by chance to the eye, yet the same for the same walk and try.

use sha2::{Digest as _, Sha256};

use super::{Part, Task, Try};

impl Part {
    /// Order in which the items of the part stand on the page: first those that were kept from the try before, then
    /// the others, shuffled. The seed is walk, demonstration, part and the number of tries that everybody has made of
    /// this demonstration so far. Cards to put in order never stand in a right order, if there is another; and what
    /// stands there anew never stands as it did `before`, if there are two.
    #[must_use]
    pub fn order_shown(
        &self,
        walk: &str,
        demonstration: &str,
        tries: usize,
        kept: &[String],
        before: &[String],
    ) -> Vec<String> {
        let ids: Vec<String> = self.items().into_iter().map(|card| card.id.clone()).collect();
        let (stay, mut rest): (Vec<String>, Vec<String>) = ids.into_iter().partition(|id| kept.contains(id));
        let mut chance = Chance::new(&format!("{walk}\n{demonstration}\n{}\n{tries}\n", self.id));
        for last in (1..rest.len()).rev() {
            rest.swap(last, chance.below(last + 1));
        }
        let mut stay: Vec<String> = stay;
        stay.sort_by_key(|id| kept.iter().position(|other| other == id));
        let stood: Vec<&String> = before.iter().filter(|id| rest.contains(id)).collect();
        let ready = |rest: &[String]| {
            let all: Vec<String> = stay.iter().chain(rest).cloned().collect();
            matches!(self.task, Task::Order(_)) && self.judge_so_far(&Try::Cards(all)).is_none()
        };
        let turned = |by: usize| {
            let mut rest = rest.clone();
            rest.rotate_left(by);
            rest
        };
        let all = || (0..rest.len()).map(turned).filter(|rest| !ready(rest));
        let other = all().find(|rest| !stood.iter().copied().eq(rest)).or_else(|| all().next());
        let rest = other.unwrap_or_else(|| rest.clone());
        stay.extend(rest);
        stay
    }
}

/// Numbers from SHA-256 over a seed and a counter.
struct Chance {
    seed: String,
    drawn: u64,
}

impl Chance {
    fn new(seed: &str) -> Self {
        Self { seed: seed.to_owned(), drawn: 0 }
    }

    /// A number below `count`, each as likely as the others to one part in 2^50; 0 for a count of 0.
    fn below(&mut self, count: usize) -> usize {
        let digest = Sha256::digest(format!("{}{}", self.seed, self.drawn));
        self.drawn += 1;
        let number = digest.iter().take(8).fold(0_u64, |number, byte| (number << 8) | u64::from(*byte));
        let count = u64::try_from(count).unwrap_or(1).max(1);
        usize::try_from(number % count).unwrap_or(0)
    }
}
