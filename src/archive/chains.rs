//! The chains of records, one for each key of each tablet: what is missing, what stands there twice, what does not
//! follow. Pure: links in, what is wrong out.

use std::collections::{BTreeMap, BTreeSet};

use jiff::Timestamp;

use super::marks::Mark;
use crate::record::seal::{Digest, RecordId};

/// A record as a link of its chain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Link {
    /// Its id, in which tablet, key and number stand.
    pub id: RecordId,
    /// Its digest.
    pub digest: Digest,
    /// What its outside says, where it could be read: a record that is damaged or gone is known by its receipt.
    pub said: Option<Said>,
}

/// What the outside of a record says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Said {
    /// The digest of the record that it follows.
    pub previous: Option<Digest>,
    /// When it was sealed, by the tablet's clock.
    pub sealed: Timestamp,
}

/// The chain of a tablet's key, as `t2-5f3a9c`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Chain {
    /// The tablet.
    pub tablet: String,
    /// The key's part of its record ids.
    pub key: String,
}

impl Chain {
    /// The chain to which a record belongs.
    #[must_use]
    pub fn of(id: &RecordId) -> Self {
        Self { tablet: id.tablet().to_owned(), key: id.key().to_owned() }
    }
}

impl std::fmt::Display for Chain {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}-{}", self.tablet, self.key)
    }
}

/// What a chain shows.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Problem {
    /// Records are missing: a tablet skips no number.
    Gap {
        /// The first number that is missing.
        from: u32,
        /// The last number that is missing.
        to: u32,
    },
    /// Two records follow the same record: the tablet was copied, or set back to an earlier state.
    Fork {
        /// The number that both have.
        number: u32,
    },
    /// Two records have the same number and follow different ones.
    Reused {
        /// The number.
        number: u32,
    },
    /// A record follows one that is not the one before it.
    Order {
        /// Its number.
        number: u32,
        /// The number of the record that it follows.
        follows: u32,
    },
    /// A record follows another record than the one that the office has under the number before it.
    Twin {
        /// Its number.
        number: u32,
    },
    /// The office has seen records behind the last one that is here.
    Cut {
        /// The last number that is here; 0 if none is.
        last: u32,
        /// The last number that the office has seen.
        seen: u32,
    },
    /// The last record that the office has seen is not the one that is here under its number.
    Swapped {
        /// The number.
        number: u32,
    },
    /// The tablet has begun anew with another key. A remark.
    NewKey {
        /// The key before it.
        before: String,
    },
    /// The tablet's clock was set back between two records. A remark.
    Clock {
        /// Number of the later record.
        number: u32,
        /// When that one was sealed.
        sealed: Timestamp,
        /// When the one before it was sealed.
        before: Timestamp,
    },
}

impl Problem {
    /// The code, which stays the same in all versions.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Gap { .. } => "chain-gap",
            Self::Fork { .. } => "chain-fork",
            Self::Reused { .. } => "chain-number-reused",
            Self::Order { .. } => "chain-order",
            Self::Twin { .. } => "chain-twin",
            Self::Cut { .. } => "chain-cut",
            Self::Swapped { .. } => "chain-swapped",
            Self::NewKey { .. } => "chain-new-key",
            Self::Clock { .. } => "chain-clock",
        }
    }

    /// Whether it is worth knowing and nothing is wrong.
    #[must_use]
    pub const fn is_remark(&self) -> bool {
        matches!(self, Self::NewKey { .. } | Self::Clock { .. })
    }
}

/// Looks at all chains at once. Copies of one record count once.
#[must_use]
pub fn check(links: &[Link], marks: &[Mark]) -> Vec<(Chain, Problem)> {
    let mut chains: BTreeMap<Chain, BTreeMap<u32, Vec<&Link>>> = BTreeMap::new();
    for link in links {
        let records = chains.entry(Chain::of(&link.id)).or_default().entry(link.id.number()).or_default();
        match records.iter_mut().find(|other| other.digest == link.digest) {
            Some(other) if other.said.is_none() => *other = link,
            Some(_) => {}
            None => records.push(link),
        }
    }
    let mut found = Vec::new();
    for (chain, numbers) in &chains {
        let mut problems = BTreeSet::new();
        check_numbers(numbers, &mut problems);
        check_links(numbers, &mut problems);
        found.extend(problems.into_iter().map(|problem| (chain.clone(), problem)));
    }
    check_marks(&chains, marks, &mut found);
    new_keys(&chains, &mut found);
    found.sort();
    found
}

type Numbers<'a> = BTreeMap<u32, Vec<&'a Link>>;

fn check_numbers(numbers: &Numbers<'_>, problems: &mut BTreeSet<Problem>) {
    let mut next = 1;
    for (number, records) in numbers {
        if next < *number {
            problems.insert(Problem::Gap { from: next, to: number - 1 });
        }
        next = number + 1;
        if records.len() > 1 {
            let follows: BTreeSet<Option<Option<Digest>>> =
                records.iter().map(|r| r.said.map(|said| said.previous)).collect();
            // Where one of them cannot be read, nobody can say which it is; a copied tablet is the usual case.
            let reused = follows.len() == records.len() && !follows.contains(&None);
            let number = *number;
            problems.insert(if reused { Problem::Reused { number } } else { Problem::Fork { number } });
        }
    }
}

fn check_links(numbers: &Numbers<'_>, problems: &mut BTreeSet<Problem>) {
    let by_digest: BTreeMap<Digest, u32> =
        numbers.iter().flat_map(|(number, records)| records.iter().map(|r| (r.digest, *number))).collect();
    let mut before: Option<Timestamp> = None;
    for (number, records) in numbers {
        for said in records.iter().filter_map(|record| record.said) {
            let Some(previous) = said.previous else { continue };
            match by_digest.get(&previous) {
                Some(follows) if follows + 1 == *number => {}
                Some(follows) => {
                    problems.insert(Problem::Order { number: *number, follows: *follows });
                }
                None if numbers.contains_key(&(number - 1)) => {
                    problems.insert(Problem::Twin { number: *number });
                }
                // What it follows is missing, which is told as a gap.
                None => {}
            }
        }
        let sealed = records.iter().filter_map(|record| record.said.map(|said| said.sealed)).min();
        if let (Some(before), Some(sealed)) = (before, sealed)
            && sealed < before
        {
            problems.insert(Problem::Clock { number: *number, sealed, before });
        }
        before = sealed.or(before);
    }
}

fn check_marks(chains: &BTreeMap<Chain, Numbers<'_>>, marks: &[Mark], found: &mut Vec<(Chain, Problem)>) {
    for mark in marks {
        let (chain, seen) = (Chain::of(&mark.id), mark.id.number());
        let numbers = chains.get(&chain);
        let last = numbers.and_then(|n| n.keys().next_back()).copied().unwrap_or(0);
        let here = numbers.and_then(|n| n.get(&seen));
        if last < seen {
            found.push((chain, Problem::Cut { last, seen }));
        } else if here.is_some_and(|records| records.iter().all(|r| r.digest != mark.digest)) {
            found.push((chain, Problem::Swapped { number: seen }));
        }
    }
}

/// Chains of one tablet in the order in which they began; all but the first are new keys.
fn new_keys(chains: &BTreeMap<Chain, Numbers<'_>>, found: &mut Vec<(Chain, Problem)>) {
    let mut tablets: BTreeMap<&str, Vec<(Option<Timestamp>, &Chain)>> = BTreeMap::new();
    for (chain, numbers) in chains {
        let began = numbers.values().flatten().find_map(|record| record.said.map(|said| said.sealed));
        tablets.entry(&chain.tablet).or_default().push((began, chain));
    }
    for mut keys in tablets.into_values() {
        keys.sort();
        for pair in keys.windows(2) {
            if let [(_, before), (_, chain)] = pair {
                found.push(((*chain).clone(), Problem::NewKey { before: before.key.clone() }));
            }
        }
    }
}
