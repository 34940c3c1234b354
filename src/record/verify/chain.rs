//! The records of one call that belong to the same key, as a chain.

use std::collections::BTreeMap;
use std::path::PathBuf;

use super::inside::Judged;
use super::verdict::{Failure, Seen};
use crate::record::keys::PublicKey;
use crate::record::seal::Digest;

type Chains = BTreeMap<PublicKey, BTreeMap<u32, Vec<(usize, Seen)>>>;

/// Marks forks and gaps at the records that show them, unless these failed already.
///
/// Records whose payload failed still count as links: their outside is sealed, and what lies behind them is
/// not missing anything. A copy given twice is no fork. A gap is told at the record behind it.
pub(super) fn check(judged: &mut [(PathBuf, Judged)]) {
    let mut chains = Chains::new();
    for (at, (_, one)) in judged.iter().enumerate() {
        if let Some(seen) = &one.seen {
            chains.entry(seen.key).or_default().entry(seen.number).or_default().push((at, seen.clone()));
        }
    }
    for chain in chains.values() {
        let mut before: Option<(u32, Option<Digest>)> = None;
        for (number, records) in chain {
            let same =
                records.iter().all(|(_, seen)| Some(seen.digest) == records.first().map(|r| r.1.digest));
            for (at, seen) in records {
                let failure = if same { link(seen, before) } else { Some(fork(seen)) };
                if let Some((_, one)) = judged.get_mut(*at)
                    && one.failure.is_none()
                {
                    one.failure = failure;
                }
            }
            // Behind a fork nobody can say which of the two is followed.
            before = Some((*number, records.first().filter(|_| same).map(|(_, seen)| seen.digest)));
        }
    }
}

fn fork(seen: &Seen) -> Failure {
    let why = format!("two different records have the number {}", seen.number);
    Failure::ChainFork { id: seen.id.clone(), why }
}

fn link(seen: &Seen, before: Option<(u32, Option<Digest>)>) -> Option<Failure> {
    let (number, digest) = before?;
    let from = number + 1;
    if from < seen.number {
        return Some(Failure::ChainGap { id: seen.id.clone(), from, to: seen.number - 1 });
    }
    if digest.is_some() && digest != seen.previous {
        let why = format!("it does not follow the record number {number} that was given with it");
        return Some(Failure::ChainFork { id: seen.id.clone(), why });
    }
    None
}
