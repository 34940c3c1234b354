//! The chains of records, one for each key of each tablet: what is missing, what stands there twice, what does not
//! follow. Pure: links in, what is wrong out. Of a chain only its last link is kept, so that it may be of any length.

use std::collections::{BTreeMap, BTreeSet};

use jiff::Timestamp;

use super::marks::Mark;
use crate::record::seal::{Digest, RecordId};

/// A record as a link of its chain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Link {
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

/// Adds a link to those of its number. Copies of one record count once.
pub fn join(links: &mut Vec<Link>, link: Link) {
    match links.iter_mut().find(|other| other.digest == link.digest) {
        Some(other) if other.said.is_none() => *other = link,
        Some(_) => {}
        None => links.push(link),
    }
}

/// A link that follows none of those of the number before it.
#[derive(Debug, Clone)]
struct Loose {
    chain: Chain,
    number: u32,
    follows: Digest,
    /// Whether there is a record of the number before it.
    beside: bool,
}

/// The chain that is just looked at.
#[derive(Debug)]
struct Current {
    chain: Chain,
    last: u32,
    /// The links of the last number.
    links: Vec<Link>,
    /// When the last record was sealed of which that is known.
    sealed: Option<Timestamp>,
    /// When the first one was.
    began: Option<Timestamp>,
}

/// Tells which number a record of a chain has, by its digest.
pub type NumberOf<'a, E> = &'a mut dyn FnMut(&Chain, &Digest) -> Result<Option<u32>, E>;

/// Looks at chains, number by number.
#[derive(Debug)]
pub struct Walker<'m> {
    marks: &'m [Mark],
    found: BTreeSet<(Chain, Problem)>,
    current: Option<Current>,
    began: BTreeMap<Chain, Option<Timestamp>>,
    loose: Vec<Loose>,
}

impl<'m> Walker<'m> {
    /// Nothing was looked at yet.
    #[must_use]
    pub const fn new(marks: &'m [Mark]) -> Self {
        Self { marks, found: BTreeSet::new(), current: None, began: BTreeMap::new(), loose: Vec::new() }
    }

    /// Takes all links of a number, joined. They come chain by chain, and by rising numbers.
    pub fn take(&mut self, chain: &Chain, number: u32, links: Vec<Link>) {
        if self.current.as_ref().is_none_or(|current| current.chain != *chain) {
            self.close();
            let (chain, links) = (chain.clone(), Vec::new());
            self.current = Some(Current { chain, last: 0, links, sealed: None, began: None });
        }
        let Some(current) = &mut self.current else { return };
        let mut problems = Vec::new();
        check_number(current, number, &links, &mut problems);
        for said in links.iter().filter_map(|link| link.said) {
            let Some(follows) = said.previous else { continue };
            let beside = current.last > 0 && current.last + 1 == number;
            if !beside || current.links.iter().all(|before| before.digest != follows) {
                self.loose.push(Loose { chain: chain.clone(), number, follows, beside });
            }
        }
        for mark in self.marks.iter().filter(|mark| mark.id.number() == number && is_of(mark, chain)) {
            if links.iter().all(|link| link.digest != mark.digest) {
                problems.push(Problem::Swapped { number });
            }
        }
        let sealed = links.iter().filter_map(|link| link.said.map(|said| said.sealed)).min();
        if let (Some(before), Some(sealed)) = (current.sealed, sealed)
            && sealed < before
        {
            problems.push(Problem::Clock { number, sealed, before });
        }
        current.began = current.began.or_else(|| links.iter().find_map(|link| Some(link.said?.sealed)));
        current.sealed = sealed.or(current.sealed);
        (current.last, current.links) = (number, links);
        self.found.extend(problems.into_iter().map(|problem| (chain.clone(), problem)));
    }

    /// Ends the chain that is looked at.
    fn close(&mut self) {
        let Some(Current { chain, last, began, .. }) = self.current.take() else { return };
        for mark in self.marks.iter().filter(|mark| is_of(mark, &chain)) {
            let seen = mark.id.number();
            if last < seen {
                self.found.insert((chain.clone(), Problem::Cut { last, seen }));
            }
        }
        self.began.insert(chain, began);
    }

    /// What was found. `number_of` is asked for links that do not follow the number before theirs.
    ///
    /// # Errors
    /// What `number_of` says.
    pub fn end<E>(mut self, number_of: NumberOf<'_, E>) -> Result<Vec<(Chain, Problem)>, E> {
        self.close();
        for mark in self.marks {
            let chain = Chain::of(&mark.id);
            if !self.began.contains_key(&chain) {
                self.found.insert((chain, Problem::Cut { last: 0, seen: mark.id.number() }));
            }
        }
        for Loose { chain, number, follows, beside } in std::mem::take(&mut self.loose) {
            let problem = match number_of(&chain, &follows)? {
                Some(follows) if follows + 1 == number => continue,
                Some(follows) => Problem::Order { number, follows },
                None if beside => Problem::Twin { number },
                // What it follows is missing, which is told as a gap.
                None => continue,
            };
            self.found.insert((chain, problem));
        }
        self.new_keys();
        Ok(self.found.into_iter().collect())
    }

    /// Chains of one tablet in the order in which they began; all but the first are new keys.
    fn new_keys(&mut self) {
        let mut tablets: BTreeMap<&str, Vec<(Option<Timestamp>, &Chain)>> = BTreeMap::new();
        for (chain, began) in &self.began {
            tablets.entry(&chain.tablet).or_default().push((*began, chain));
        }
        for mut keys in tablets.into_values() {
            keys.sort();
            for pair in keys.windows(2) {
                if let [(_, before), (_, chain)] = pair {
                    self.found.insert(((*chain).clone(), Problem::NewKey { before: before.key.clone() }));
                }
            }
        }
    }
}

fn is_of(mark: &Mark, chain: &Chain) -> bool {
    mark.id.tablet() == chain.tablet && mark.id.key() == chain.key
}

fn check_number(current: &Current, number: u32, links: &[Link], problems: &mut Vec<Problem>) {
    let next = current.last + 1;
    if next < number {
        problems.push(Problem::Gap { from: next, to: number - 1 });
    }
    if links.len() > 1 {
        let follows: BTreeSet<Option<Option<Digest>>> =
            links.iter().map(|link| link.said.map(|said| said.previous)).collect();
        // Where one of them cannot be read, nobody can say which it is; a copied tablet is the usual case.
        let reused = follows.len() == links.len() && !follows.contains(&None);
        problems.push(if reused { Problem::Reused { number } } else { Problem::Fork { number } });
    }
}
