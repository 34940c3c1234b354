//! Ends a walk: seals its record, reads it back, advances the chain, retires the journal.

use std::collections::BTreeSet;
use std::path::PathBuf;

use crate::journal::{Keeper, ProposeFault};
use crate::ports::{Access, DiskFault};
use crate::record::build::{self, BuildFault, SealingHead};
use crate::record::chain::{self, ChainFault};
use crate::record::seal::{self, Digest, Kind, RecordId, SealFault, Sealing, StoreFault};
use crate::script::Scripts;
use crate::walk::{Event, Outcome, Phase};
use crate::words::Args;

use super::Tablet;

/// A record that was sealed and read back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finished {
    /// Its id.
    pub id: RecordId,
    /// Its digest.
    pub digest: Digest,
    /// Where it lies.
    pub path: PathBuf,
}

/// Why sealing stopped. The journal still stands; sealing goes on from it at the next start.
#[derive(Debug, thiserror::Error)]
pub enum SealStop {
    /// The walk may not be sealed yet.
    #[error(transparent)]
    Propose(#[from] ProposeFault),
    /// The next number cannot be told.
    #[error(transparent)]
    Chain(#[from] ChainFault),
    /// The contents cannot be made.
    #[error(transparent)]
    Build(#[from] BuildFault),
    /// The record cannot be sealed.
    #[error(transparent)]
    Seal(#[from] SealFault),
    /// The record cannot be kept.
    #[error(transparent)]
    Store(#[from] StoreFault),
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// Nothing is decided yet.
    #[error("it is not decided whether the unit goes out; finish the closing first")]
    NotDecided,
    /// The walk says it is being sealed, but has no number.
    #[error("the walk has no number for its record; seal it again")]
    NoNumber,
}

impl Tablet {
    /// Seals a walk, or goes on with a sealing that was begun. The journal goes only when the record was read
    /// back and the chain stands at it.
    ///
    /// # Errors
    /// See [`SealStop`]; nothing is lost.
    pub fn seal(&self, keeper: &mut Keeper, scripts: &Scripts) -> Result<Finished, SealStop> {
        let disk = self.ports.disk.as_ref();
        if keeper.walk().phase() != Phase::SealBegun {
            let next = chain::next(disk, &self.dir, &self.key)?;
            let event = Event::SealBegun {
                number: next.number,
                previous: next.previous.map(|digest| digest.to_string()),
            };
            keeper.propose(&self.entry(scripts, event))?;
        }
        let walk = keeper.walk();
        let seal = walk.seal().ok_or(SealStop::NoNumber)?;
        let kind = match (walk.began().value.rehearsal, walk.outcome()) {
            (_, Outcome::Open) => return Err(SealStop::NotDecided),
            (true, _) => Kind::Rehearsal,
            (false, Outcome::HandedOver) => Kind::Handoff,
            (false, Outcome::NotHandedOver(_)) => Kind::NotHandedOver,
        };
        let previous = seal.value.previous.as_deref().and_then(|hex| hex.parse().ok());
        let id = seal::record_id(&self.name, self.key.public(), seal.value.number);
        let head = SealingHead {
            id: id.to_string(),
            tablet: self.name.clone(),
            number: seal.value.number,
            previous,
            sealed: seal.at,
            kind,
        };
        let contents = build::build(walk, scripts, &head)?;
        let reader = crate::words::Reader::default();
        let organization = scripts.words.say(&reader, &scripts.lot.value.name.value, &Args::new());
        let sealing = Sealing {
            tablet: &self.name,
            number: head.number,
            previous,
            kind,
            organization: &organization,
            sealed: head.sealed,
        };
        let sealed = seal::seal(&sealing, &contents.payload, &self.key)?;
        let path = seal::store(disk, &self.dir.join(chain::RECORDS), &sealed)?;
        chain::advance(disk, &self.dir, &sealed)?;
        if kind != Kind::Rehearsal {
            self.to_outbox(&sealed.id, &sealed.digest)?;
        }
        if kind == Kind::Handoff {
            // A help for the next walk; this one does not depend on it.
            drop(super::pace::learn(disk, &self.dir, keeper.walk()));
        }
        disk.remove(keeper.journal().path())?;
        self.drop_unused_scripts()?;
        Ok(Finished { id: sealed.id, digest: sealed.digest, path })
    }

    /// Notes that no archive has confirmed the record yet.
    fn to_outbox(&self, id: &RecordId, digest: &Digest) -> Result<(), DiskFault> {
        let folder = self.dir.join("outbox");
        self.ports.disk.make_dir(&folder)?;
        let line = format!("{digest}\n");
        self.ports.disk.replace(&folder.join(id.to_string()), line.as_bytes(), Access::Usual)
    }

    /// Records that no archive has confirmed yet.
    ///
    /// # Errors
    /// The folder cannot be read.
    pub fn outbox(&self) -> Result<Vec<String>, DiskFault> {
        self.ports.disk.list(&self.dir.join("outbox"))
    }

    /// Removes kept scripts that no open walk needs.
    fn drop_unused_scripts(&self) -> Result<(), DiskFault> {
        let needed: BTreeSet<String> =
            self.open_walks()?.iter().filter_map(|w| w.scripts().map(str::to_owned)).collect();
        // A journal that cannot be read may need any of them.
        if self.open_walks()?.iter().any(|w| w.scripts().is_none()) {
            return Ok(());
        }
        let root = self.dir.join("scripts");
        for digest in self.ports.disk.list(&root)? {
            if !needed.contains(&digest) {
                self.remove_tree(&root.join(&digest))?;
            }
        }
        Ok(())
    }

    /// Removes the files of kept scripts; their names are those a bundle has.
    fn remove_tree(&self, dir: &std::path::Path) -> Result<(), DiskFault> {
        for name in self.ports.disk.list(dir)? {
            let path = dir.join(&name);
            if self.ports.disk.is_dir(&path) {
                self.remove_tree(&path)?;
            } else {
                self.ports.disk.remove(&path)?;
            }
        }
        self.ports.disk.remove_dir(dir)
    }
}
