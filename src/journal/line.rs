//! One line of a journal.
//!
//! `j1 <length> <crc> <json>` and a line feed: `j1` names the format; the length of the JSON in bytes, seven
//! decimal digits; its CRC-32 (the one of gzip and PNG), eight hex digits; one [`Entry`] as JSON, which holds no
//! line feed.

use crate::walk::Entry;

use super::JournalFault;

/// Most bytes of a line, its line feed included.
pub const LINE_CAP: usize = 1 << 20;

/// Why bytes are not a line.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LineFault {
    /// It does not start as a line does.
    #[error("it does not start with 'j1', a length and a checksum")]
    Head,
    /// It is longer than a line may be.
    #[error("it is longer than {LINE_CAP} bytes")]
    TooLong,
    /// It has another length than it says.
    #[error("it says {said} bytes and holds {found}")]
    Length {
        /// Bytes of JSON according to its head.
        said: usize,
        /// Bytes of JSON there are.
        found: usize,
    },
    /// Its bytes are not those that were written.
    #[error("its checksum is {found:08x}, it should be {said:08x}")]
    Checksum {
        /// CRC-32 according to its head.
        said: u32,
        /// CRC-32 of its bytes.
        found: u32,
    },
    /// Its bytes are those that were written, but no event this version knows.
    #[error("it is whole, but no event this version of the program knows ({0})")]
    Event(String),
}

impl LineFault {
    /// Whether the line is whole: written to the end, and unchanged since.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        matches!(self, Self::Event(_))
    }
}

/// The line of an entry, with its line feed.
///
/// # Errors
/// It would be longer than [`LINE_CAP`].
pub fn encode(entry: &Entry) -> Result<Vec<u8>, JournalFault> {
    let json = serde_json::to_vec(entry).map_err(|e| JournalFault::Encode(e.to_string()))?;
    let mut line = format!("j1 {:07} {:08x} ", json.len(), crc32fast::hash(&json)).into_bytes();
    line.extend(json);
    line.push(b'\n');
    if line.len() > LINE_CAP { Err(JournalFault::TooLong { len: line.len() }) } else { Ok(line) }
}

/// The entry of a line, given without its line feed.
///
/// # Errors
/// What is wrong with it.
pub fn decode(line: &[u8]) -> Result<Entry, LineFault> {
    if line.len() >= LINE_CAP {
        return Err(LineFault::TooLong);
    }
    let (said, crc, json) = split(line).ok_or(LineFault::Head)?;
    if json.len() != said {
        return Err(LineFault::Length { said, found: json.len() });
    }
    let found = crc32fast::hash(json);
    if found != crc {
        return Err(LineFault::Checksum { said: crc, found });
    }
    serde_json::from_slice(json).map_err(|e| LineFault::Event(e.to_string()))
}

/// Length, checksum and JSON.
fn split(line: &[u8]) -> Option<(usize, u32, &[u8])> {
    let rest = line.strip_prefix(b"j1 ")?;
    let (length, rest) = rest.split_at_checked(7)?;
    let (crc, json) = rest.strip_prefix(b" ")?.split_at_checked(8)?;
    // Only what is written this way: no sign, no capitals.
    let digits = length.iter().all(u8::is_ascii_digit);
    let hex = crc.iter().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
    let length = std::str::from_utf8(length).ok()?.parse().ok()?;
    let crc = u32::from_str_radix(std::str::from_utf8(crc).ok()?, 16).ok()?;
    if digits && hex { Some((length, crc, json.strip_prefix(b" ")?)) } else { None }
}
