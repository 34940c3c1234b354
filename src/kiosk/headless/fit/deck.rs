//! In which combinations of size, text size and theme a page is measured.

use super::{SIZES, TEXTS};
use crate::kiosk::theme::Theme;

/// All combinations.
const ALL: usize = SIZES.len() * TEXTS.len() * Theme::ALL.len();

/// How combinations are chosen for each page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sample {
    /// Every size with every text size; the themes take turns, since they differ in layout only by the width of lines.
    Turns,
    /// All of them.
    Every,
    /// So many, dealt from a shuffled pack: page by page all come up equally often.
    Dealt {
        /// By what the pack is shuffled.
        seed: u64,
        /// How many a page gets.
        each: usize,
    },
}

/// One combination: positions of size, text size and theme.
pub(super) type Combination = (usize, usize, usize);

/// Deals combinations to pages.
pub(super) struct Deck {
    sample: Sample,
    pack: Vec<usize>,
    dealt: usize,
}

impl Deck {
    pub(super) fn new(sample: Sample) -> Self {
        let mut pack: Vec<usize> = (0..ALL).collect();
        if let Sample::Dealt { mut seed, .. } = sample {
            for last in (1..ALL).rev() {
                let other = (next(&mut seed) % (last as u64 + 1)) as usize;
                pack.swap(last, other);
            }
        }
        Self { sample, pack, dealt: 0 }
    }

    /// The combinations of the next page.
    pub(super) fn deal(&mut self) -> Vec<Combination> {
        let themes = Theme::ALL.len();
        let cards: Vec<usize> = match self.sample {
            Sample::Every => self.pack.clone(),
            // One more turn each page lets every theme meet every size in time.
            Sample::Turns => (0..ALL / themes).map(|n| n * themes + (n + self.dealt) % themes).collect(),
            Sample::Dealt { each, .. } => {
                let from = self.dealt * each;
                self.pack.iter().cycle().skip(from % ALL).take(each.min(ALL)).copied().collect()
            }
        };
        self.dealt += 1;
        let texts = TEXTS.len();
        cards.into_iter().map(|n| (n / themes / texts, n / themes % texts, n % themes)).collect()
    }
}

/// Splitmix64, by Sebastiano Vigna (public domain).
fn next(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    fn counted(sample: Sample, pages: usize) -> BTreeMap<Combination, usize> {
        let mut deck = Deck::new(sample);
        let mut seen = BTreeMap::new();
        for card in (0..pages).flat_map(|_| deck.deal()) {
            *seen.entry(card).or_default() += 1;
        }
        seen
    }

    #[test]
    fn every_combination_comes_up_equally_often() {
        for (sample, pages, times) in [
            (Sample::Every, 2, 2),
            (Sample::Turns, 6, 2),
            (Sample::Dealt { seed: 7, each: 6 }, 9, 2),
            (Sample::Dealt { seed: 8, each: 5 }, 54, 10),
        ] {
            let seen = counted(sample, pages);
            assert!(seen.len() == ALL && seen.values().all(|n| *n == times), "{sample:?}: {seen:?}");
        }
    }

    #[test]
    fn a_seed_deals_the_same_again_and_another_one_differently() {
        let of = |seed| Deck::new(Sample::Dealt { seed, each: 27 }).deal();
        assert_eq!(of(7), of(7));
        assert_ne!(of(7), of(8));
    }
}
