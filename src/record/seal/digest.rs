//! SHA-256 (FIPS 180-4), the only hash of a record.

use std::fmt;
use std::str::FromStr;

use sha2::{Digest as _, Sha256};

/// A SHA-256 digest. As text: 64 lower-case hex digits.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest([u8; 32]);

/// A text that is no digest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("a digest is 64 of 0-9 and a-f, without spaces")]
pub struct DigestFault;

impl Digest {
    /// The digest of bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// The digest of bytes that come piece by piece.
    #[must_use]
    pub fn begin() -> Running {
        Running(Sha256::new())
    }

    /// A digest known already.
    #[must_use]
    pub const fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// Its 32 bytes.
    #[must_use]
    pub const fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }
}

/// The digest of what has come so far.
#[derive(Debug, Clone)]
pub struct Running(Sha256);

impl Running {
    /// Takes the next bytes.
    pub fn add(&mut self, bytes: &[u8]) {
        self.0.update(bytes);
    }

    /// The digest of all that came.
    #[must_use]
    pub fn end(&self) -> Digest {
        Digest(self.0.clone().finalize().into())
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&hex(&self.0))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Digest {
    type Err = DigestFault;

    fn from_str(text: &str) -> Result<Self, DigestFault> {
        let digits = text.as_bytes();
        if digits.len() != 64 {
            return Err(DigestFault);
        }
        let mut bytes = [0; 32];
        for (byte, pair) in bytes.iter_mut().zip(digits.chunks_exact(2)) {
            *byte =
                pair.iter().try_fold(0, |sum, digit| Some(sum << 4 | nibble(*digit)?)).ok_or(DigestFault)?;
        }
        Ok(Self(bytes))
    }
}

const fn nibble(digit: u8) -> Option<u8> {
    match digit {
        b'0'..=b'9' => Some(digit - b'0'),
        b'a'..=b'f' => Some(digit - b'a' + 10),
        _ => None,
    }
}

/// Lower-case hex of any bytes.
pub(in crate::record) fn hex(bytes: &[u8]) -> String {
    let digit = |n: u8| char::from(if n < 10 { b'0' + n } else { b'a' + n - 10 });
    bytes.iter().flat_map(|b| [digit(b >> 4), digit(b & 15)]).collect()
}

impl serde::Serialize for Digest {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Digest {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        <std::borrow::Cow<'de, str>>::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}
