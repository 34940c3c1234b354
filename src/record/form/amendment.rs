//! An amendment: a sealed correction that refers to an earlier record.

use serde::{Deserialize, Serialize};

use super::closing::Signature;
use super::people::{Member, Reader};
use super::round::Caution;
use super::{Head, Program, Time};
use crate::record::seal::{Digest, RecordId};

/// The record that is amended. It stays as it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Amended {
    /// Its id.
    pub id: RecordId,
    /// Its digest.
    pub digest: Digest,
}

/// A topic that was gone through again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AmendedTopic {
    /// Topic id.
    pub id: String,
    /// Title in the reader's language.
    pub title: String,
    /// Its cautions that were answered.
    pub cautions: Vec<Caution>,
}

/// An amendment.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Amendment {
    /// Which record it is.
    #[serde(flatten)]
    pub head: Head,
    /// What wrote it.
    pub program: Program,
    /// SHA-256 of the scripts that its texts come from.
    pub scripts: Digest,
    /// What it amends.
    pub amends: Amended,
    /// The company.
    pub organization: String,
    /// Unit id.
    pub unit: String,
    /// Name of the unit in the reader's language.
    pub unit_name: String,
    /// What the renter reads in.
    pub reader: Reader,
    /// Staff code of the agent.
    pub agent: String,
    /// When it was made.
    pub at: Time,
    /// What is corrected or added, in the words of the agent.
    pub text: String,
    /// The people who take part.
    pub people: Vec<Member>,
    /// Topics that were gone through again.
    pub topics: Vec<AmendedTopic>,
    /// Signatures and refusals to sign, in the order they were given.
    pub signatures: Vec<Signature>,
}
