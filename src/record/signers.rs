//! Whom the office trusts: OpenSSH's `allowed_signers` (ssh-keygen(1), ALLOWED SIGNERS), read strictly.
//!
//! The stock tool takes more than is safe here: without `namespaces=` a key may sign anything, a time without
//! `Z` means another instant in each time zone, a principal `*` is everybody. All of that is refused, with the
//! line and what to write. Whatever is accepted here means the same to `ssh-keygen -Y verify`.
//!
//! A tablet that was lost gets a `valid-before` at its last good time. One whose key is never to be trusted
//! again, not even for its old records, stands in a second file of plain public key lines,
//! which is what `ssh-keygen -Y verify -r` takes.

mod parse;

use std::collections::BTreeSet;
use std::path::Path;

use jiff::Timestamp;

use super::keys::{NAMESPACE, PublicKey};
use crate::ports::{Disk, DiskFault};

/// The file of trusted keys in an office's folder.
pub const ALLOWED_FILE: &str = "allowed_signers";
/// The file of distrusted keys beside it.
pub const DISTRUSTED_FILE: &str = "distrusted";
const FILE_CAP: u64 = 1 << 20;

/// Why a file of signers is not taken.
#[derive(Debug, Clone, thiserror::Error)]
pub enum SignersFault {
    /// A line that cannot be taken.
    #[error("line {line}: {what}. {hint}")]
    Line {
        /// The line, from 1.
        line: usize,
        /// What is wrong.
        what: String,
        /// What to write instead.
        hint: &'static str,
    },
    /// The file is not text.
    #[error("it is not UTF-8 text. Write it anew with a plain text editor")]
    NotText,
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// A fault with the file it stands in.
    #[error("{}: {fault}", path.display())]
    In {
        /// The file.
        path: std::path::PathBuf,
        /// The fault.
        fault: Box<Self>,
    },
}

/// One key that is trusted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trusted {
    /// Whose it is: the tablet's name, or `office`.
    pub tablet: String,
    /// The key.
    pub key: PublicKey,
    /// What it may sign.
    pub namespaces: Vec<String>,
    /// Nothing before this instant is trusted.
    pub valid_after: Option<Timestamp>,
    /// Nothing after this instant is trusted.
    pub valid_before: Option<Timestamp>,
    /// The line of the file, from 1.
    pub line: usize,
}

impl Trusted {
    /// Whether it may sign in a namespace.
    #[must_use]
    pub fn may(&self, namespace: &str) -> bool {
        self.namespaces.iter().any(|n| n == namespace)
    }

    /// Whether it is valid at an instant; both limits count as valid, as they do for OpenSSH.
    #[must_use]
    pub fn valid_at(&self, at: Timestamp) -> bool {
        let at = at.as_second();
        self.valid_after.is_none_or(|after| at >= after.as_second())
            && self.valid_before.is_none_or(|before| at <= before.as_second())
    }
}

/// All keys that the office knows.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Signers {
    trusted: Vec<Trusted>,
    distrusted: BTreeSet<PublicKey>,
}

impl Signers {
    /// Reads the text of an `allowed_signers` file.
    ///
    /// # Errors
    /// The first line that cannot be taken.
    pub fn parse(text: &str) -> Result<Self, SignersFault> {
        Ok(Self { trusted: parse::trusted(text)?, distrusted: BTreeSet::new() })
    }

    /// Adds the keys of a `distrusted` file: a plain public key a line.
    ///
    /// # Errors
    /// The first line that cannot be taken.
    pub fn distrust(mut self, text: &str) -> Result<Self, SignersFault> {
        self.distrusted.extend(parse::distrusted(text)?);
        Ok(self)
    }

    /// Reads an `allowed_signers` file, and the file `distrusted` beside it if there is one.
    ///
    /// # Errors
    /// A file cannot be read or taken; the fault names it.
    pub fn load(disk: &dyn Disk, path: &Path) -> Result<Self, SignersFault> {
        let within = |path: &Path| {
            let path = path.to_owned();
            |fault| SignersFault::In { path, fault: Box::new(fault) }
        };
        let text = read(disk, path)?;
        let signers = Self::parse(&text).map_err(within(path))?;
        let beside = path.with_file_name(DISTRUSTED_FILE);
        match read(disk, &beside) {
            Ok(text) => signers.distrust(&text).map_err(within(&beside)),
            Err(SignersFault::Disk(fault)) if fault.is_missing() => Ok(signers),
            Err(fault) => Err(fault),
        }
    }

    /// One key alone, trusted for records at any time: what a tablet knows of itself.
    #[must_use]
    pub fn only(key: PublicKey, tablet: &str) -> Self {
        let trusted = Trusted {
            tablet: tablet.to_owned(),
            key,
            namespaces: vec![NAMESPACE.to_owned()],
            valid_after: None,
            valid_before: None,
            line: 1,
        };
        Self { trusted: vec![trusted], distrusted: BTreeSet::new() }
    }

    /// The line of a key, unless it is not there. Look at [`Signers::is_distrusted`] too.
    #[must_use]
    pub fn find(&self, key: &PublicKey) -> Option<&Trusted> {
        self.trusted.iter().find(|trusted| trusted.key == *key)
    }

    /// Whether nothing by this key is ever to be trusted.
    #[must_use]
    pub fn is_distrusted(&self, key: &PublicKey) -> bool {
        self.distrusted.contains(key)
    }

    /// The trusted keys in the order of the file.
    #[must_use]
    pub fn trusted(&self) -> &[Trusted] {
        &self.trusted
    }

    /// The distrusted keys.
    pub fn distrusted(&self) -> impl Iterator<Item = &PublicKey> {
        self.distrusted.iter()
    }
}

fn read(disk: &dyn Disk, path: &Path) -> Result<String, SignersFault> {
    String::from_utf8(disk.read(path, FILE_CAP)?)
        .map_err(|_| SignersFault::In { path: path.to_owned(), fault: Box::new(SignersFault::NotText) })
}
