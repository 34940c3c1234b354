//! The name of a record: tablet, key and running number; no clock and no chance in it.

use std::fmt;
use std::str::FromStr;

use crate::record::keys::{PublicKey, check_tablet_name};

/// The last running number that six digits can say.
pub const MAX_NUMBER: u32 = 999_999;

/// `<tablet>-<six hex digits of the key>-<number, six digits>`, as `t2-5f3a9c-000123`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct RecordId {
    tablet: String,
    key: String,
    number: u32,
}

/// A text that is no record id.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{text:?} is not a record id such as t2-5f3a9c-000123")]
pub struct RecordIdFault {
    /// The text.
    pub text: String,
}

/// The id of record `number` that `tablet` seals with a key: see [`PublicKey::short`] for what is hashed.
#[must_use]
pub fn record_id(tablet: &str, public: &PublicKey, number: u32) -> RecordId {
    RecordId { tablet: tablet.to_owned(), key: public.short(), number }
}

impl RecordId {
    /// The tablet's name.
    #[must_use]
    pub fn tablet(&self) -> &str {
        &self.tablet
    }

    /// The six hex digits of the key.
    #[must_use]
    pub fn key(&self) -> &str {
        &self.key
    }

    /// The running number, from 1.
    #[must_use]
    pub const fn number(&self) -> u32 {
        self.number
    }
}

impl fmt::Display for RecordId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}-{:06}", self.tablet, self.key, self.number)
    }
}

impl FromStr for RecordId {
    type Err = RecordIdFault;

    fn from_str(text: &str) -> Result<Self, RecordIdFault> {
        let read = || {
            let mut parts = text.rsplitn(3, '-');
            let (number, key, tablet) = (parts.next()?, parts.next()?, parts.next()?);
            let digits = number.len() == 6 && number.bytes().all(|b| b.is_ascii_digit());
            let hex = key.len() == 6 && key.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
            check_tablet_name(tablet).ok().filter(|()| digits && hex)?;
            let number = number.parse().ok().filter(|n| *n > 0)?;
            Some(Self { tablet: tablet.to_owned(), key: key.to_owned(), number })
        };
        read().ok_or_else(|| RecordIdFault { text: text.chars().take(80).collect() })
    }
}

impl serde::Serialize for RecordId {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for RecordId {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        <std::borrow::Cow<'de, str>>::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}
