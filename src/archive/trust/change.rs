//! Changing whom the archive trusts, one tablet at a time. Lines that are not about it stay as they are.

use std::fmt::Write as _;

use jiff::Timestamp;

use super::{ALLOWED, Archive, ArchiveFault, DISTRUSTED, OFFICE_NAME, add_line, load, text};
use crate::record::keys::{NAMESPACE, PublicKey};
use crate::record::signers::{Signers, Trusted};

/// How a key stands with the office.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// It signs receipts and marks.
    Office,
    /// It may seal records.
    Trusted,
    /// What was received after a time does not count.
    Retired,
    /// Nothing sealed by it counts.
    Distrusted,
}

impl Standing {
    /// Its word.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Office => "office",
            Self::Trusted => "trusted",
            Self::Retired => "retired",
            Self::Distrusted => "distrusted",
        }
    }
}

/// A key that the archive knows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Known {
    /// Whose it is; nothing for a key that is distrusted and listed nowhere else.
    pub tablet: Option<String>,
    /// The key.
    pub key: PublicKey,
    /// From when on it is valid.
    pub from: Option<Timestamp>,
    /// Until when it is valid.
    pub until: Option<Timestamp>,
    /// How it stands.
    pub standing: Standing,
}

impl Archive {
    /// Trusts a tablet: the line that `sendoff keys public` prints there.
    ///
    /// # Errors
    /// The line is not that of one tablet, its key is listed or distrusted already, or the disk refuses.
    pub fn trust(&mut self, line: &str) -> Result<Trusted, ArchiveFault> {
        let given = Signers::parse(line)?;
        let [tablet] = given.trusted() else {
            return refuse("give the line of one tablet, as `sendoff keys public` prints it there");
        };
        if tablet.tablet == OFFICE_NAME {
            return refuse("`office` is the name of the office itself; no tablet can have it");
        }
        if tablet.namespaces != [NAMESPACE] {
            return refuse("a tablet seals records and nothing else: write namespaces=\"record@sendoff\"");
        }
        let _held = self.take_lock()?;
        self.reload()?;
        if self.signers.is_distrusted(&tablet.key) {
            return refuse("this key is distrusted; a tablet that starts anew makes a new key");
        }
        if let Some(own) = self.signers.find(&tablet.key) {
            return refuse(&format!("this key is listed already, for {}, in line {}", own.tablet, own.line));
        }
        add_line(self.store(), ALLOWED, line.trim())?;
        self.reload()?;
        Ok(tablet.clone())
    }

    /// Retires a tablet as of a time: what was received until then stays good, what comes later is refused. A key
    /// that was retired earlier stays so. The answer tells the keys.
    ///
    /// # Errors
    /// There is no such tablet, nothing of it is valid after that time, or the disk refuses.
    pub fn retire(&mut self, tablet: &str, at: Timestamp) -> Result<Vec<PublicKey>, ArchiveFault> {
        let _held = self.take_lock()?;
        self.reload()?;
        let lines = self.lines_of(tablet)?;
        let open = |t: &&Trusted| t.valid_before.is_none_or(|before| at.as_second() < before.as_second());
        let lines: Vec<Trusted> = lines.iter().filter(open).cloned().collect();
        if lines.is_empty() {
            return refuse(&format!(
                "{tablet} was retired before that already; `sendoff keys list` tells when"
            ));
        }
        if let Some(late) = lines.iter().find(|t| t.valid_after.is_some_and(|after| at < after)) {
            let after = late.valid_after.unwrap_or(at);
            return refuse(&format!(
                "{tablet} is trusted only from {after} on; to trust none of its records use `sendoff keys distrust {tablet}`"
            ));
        }
        let mut whole = String::new();
        for (number, line) in text(self.store(), ALLOWED)?.lines().enumerate() {
            match lines.iter().find(|t| t.line == number + 1) {
                Some(trusted) => whole.push_str(&written(trusted, at)),
                None => whole.push_str(line),
            }
            whole.push('\n');
        }
        self.store().replace(ALLOWED, whole.as_bytes())?;
        self.reload()?;
        Ok(lines.into_iter().map(|t| t.key).collect())
    }

    /// Distrusts all keys of a tablet: nothing that they sealed counts any more, whenever it was received.
    ///
    /// # Errors
    /// There is no such tablet, or the disk refuses.
    pub fn distrust(&mut self, tablet: &str) -> Result<Vec<PublicKey>, ArchiveFault> {
        let _held = self.take_lock()?;
        self.reload()?;
        let lines = self.lines_of(tablet)?;
        let fresh: Vec<PublicKey> =
            lines.iter().map(|t| t.key).filter(|key| !self.signers.is_distrusted(key)).collect();
        for key in &fresh {
            add_line(self.store(), DISTRUSTED, &key.to_openssh(tablet))?;
        }
        self.reload()?;
        Ok(fresh)
    }

    /// All keys that the archive knows, in the order of the lists.
    #[must_use]
    pub fn known_keys(&self) -> Vec<Known> {
        let signers = &self.signers;
        let listed = signers.trusted().iter().map(|t| Known {
            tablet: Some(t.tablet.clone()),
            key: t.key,
            from: t.valid_after,
            until: t.valid_before,
            standing: match t {
                _ if signers.is_distrusted(&t.key) => Standing::Distrusted,
                _ if t.tablet == OFFICE_NAME => Standing::Office,
                _ if t.valid_before.is_some() => Standing::Retired,
                _ => Standing::Trusted,
            },
        });
        let lost = signers.distrusted().filter(|key| signers.find(key).is_none()).map(|key| Known {
            tablet: None,
            key: *key,
            from: None,
            until: None,
            standing: Standing::Distrusted,
        });
        listed.chain(lost).collect()
    }

    fn lines_of(&self, tablet: &str) -> Result<Vec<Trusted>, ArchiveFault> {
        let own = |t: &&Trusted| t.tablet == tablet && t.may(NAMESPACE);
        let lines: Vec<Trusted> = self.signers.trusted().iter().filter(own).cloned().collect();
        if lines.is_empty() {
            return refuse(&format!(
                "the archive knows no tablet {tablet:?}; `sendoff keys list` tells which it knows"
            ));
        }
        Ok(lines)
    }

    fn reload(&mut self) -> Result<(), ArchiveFault> {
        self.signers = load(self.store())?;
        Ok(())
    }
}

fn refuse<T>(why: &str) -> Result<T, ArchiveFault> {
    Err(ArchiveFault::Trust(why.to_owned()))
}

/// A line that is valid until a time.
fn written(trusted: &Trusted, until: Timestamp) -> String {
    let time = |at: Timestamp| at.strftime("%Y%m%d%H%M%SZ").to_string();
    let mut line = format!("{} namespaces=\"{}\"", trusted.tablet, trusted.namespaces.join(","));
    if let Some(after) = trusted.valid_after {
        let _ = write!(line, ",valid-after=\"{}\"", time(after));
    }
    let _ = write!(line, ",valid-before=\"{}\" {}", time(until), trusted.key.to_openssh(&trusted.tablet));
    line
}
