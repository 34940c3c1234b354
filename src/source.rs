//! Source files of a lot folder, places in them, and the faults found there.
//!
//! [`form`] reads RON into typed values and keeps where each stands, so that whoever finds a fault later can
//! name its line and column.

pub mod form;
mod jpeg;
mod node;
mod scan;

use std::sync::Arc;

use serde::Serialize;

pub use form::{At, place_of, read};
pub use jpeg::jpeg_is_whole;

/// Largest script or words file that is read, in bytes.
pub const FILE_CAP: u64 = 1024 * 1024;
/// Longest text of a fault, in characters: what a file holds is quoted, not copied.
const TEXT_CAP: usize = 300;
/// Longest word that is held against known ones, in bytes.
const WORD_CAP: usize = 64;

/// A place in a source file. Lines and columns count from 1, columns in characters.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Place {
    /// Name of the file relative to the lot folder, with `/` between parts.
    pub file: Arc<str>,
    /// Line.
    pub line: u32,
    /// Column.
    pub col: u32,
}

impl Place {
    /// The start of a file.
    #[must_use]
    pub fn start(file: &Arc<str>) -> Self {
        Self { file: Arc::clone(file), line: 1, col: 1 }
    }
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}:{}:{}", self.file, self.line, self.col)
    }
}

/// How much a fault matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// The scripts must not be used like this.
    Fault,
    /// Worth a look; the scripts can be used.
    Note,
}

/// Something found wrong in a source file, with its place and the way out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Fault {
    /// How much it matters.
    pub severity: Severity,
    /// Stable code, as `form.unknown-field`.
    pub code: &'static str,
    /// Where.
    #[serde(flatten)]
    pub place: Place,
    /// What is wrong.
    pub what: String,
    /// What to do about it.
    pub hint: String,
}

impl Fault {
    /// A fault.
    pub fn new(code: &'static str, place: Place, what: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { severity: Severity::Fault, code, place, what: cut(what.into()), hint: cut(hint.into()) }
    }

    /// A note: worth a look, no hindrance.
    pub fn note(code: &'static str, place: Place, what: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { severity: Severity::Note, ..Self::new(code, place, what, hint) }
    }
}

/// A text of a fault, cut when it is too long to be read.
fn cut(text: String) -> String {
    match text.char_indices().nth(TEXT_CAP) {
        Some((end, _)) => format!("{}…", text.get(..end).unwrap_or_default()),
        None => text,
    }
}

/// A file that is too large to be read.
pub(crate) fn too_large(place: Place) -> Fault {
    let what = format!("the file is larger than the {FILE_CAP} bytes allowed");
    Fault::new("form.too-large", place, what, "split it; one topic, unit or guide a file")
}

/// A text file of the lot folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SourceFile {
    /// Name relative to the lot folder, with `/` between parts.
    pub name: Arc<str>,
    /// Content.
    pub text: Arc<str>,
}

impl SourceFile {
    /// A file from its name and content; a byte order mark is dropped.
    #[must_use]
    pub fn new(name: &str, text: &str) -> Self {
        Self { name: Arc::from(name), text: Arc::from(text.strip_prefix('\u{feff}').unwrap_or(text)) }
    }

    /// The place of a byte offset; offsets past the end name the end.
    #[must_use]
    pub fn place_at(&self, byte: usize) -> Place {
        let mut end = byte.min(self.text.len());
        while !self.text.is_char_boundary(end) {
            end -= 1;
        }
        let before = self.text.get(..end).unwrap_or_default();
        let line_start = before.rfind('\n').map_or(0, |i| i + 1);
        let line = before.bytes().filter(|b| *b == b'\n').count() + 1;
        let col = before.get(line_start..).unwrap_or_default().chars().count() + 1;
        let clamp = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        Place { file: Arc::clone(&self.name), line: clamp(line), col: clamp(col) }
    }

    /// The text of a line, counted from 1.
    #[must_use]
    pub fn line(&self, number: u32) -> Option<&str> {
        self.text.lines().nth(usize::try_from(number).ok()?.checked_sub(1)?)
    }
}

/// The nearest of `known` to `word` by edit distance, if it is near enough to be a slip.
#[must_use]
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    if word.len() > WORD_CAP {
        return None;
    }
    let length = word.chars().count();
    let limit = length.div_ceil(3);
    known
        .into_iter()
        .filter(|k| k.chars().count().abs_diff(length) <= limit)
        .map(|k| (distance(word, k), k))
        .filter(|(d, _)| *d <= limit)
        .min_by_key(|(d, _)| *d)
        .map(|(_, k)| k)
}

/// Levenshtein distance in characters.
fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.chars().enumerate() {
        let mut left = i + 1;
        let mut next = vec![left];
        for (cb, pair) in b.iter().zip(row.windows(2)) {
            let (diagonal, above) = (pair.first().copied().unwrap_or(0), pair.get(1).copied().unwrap_or(0));
            left = (diagonal + usize::from(ca != *cb)).min(above + 1).min(left + 1);
            next.push(left);
        }
        row = next;
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_count_characters() {
        let file = SourceFile::new("a.ron", "é = 1\nxyß!\n");
        assert_eq!(file.place_at(0).to_string(), "a.ron:1:1");
        assert_eq!(file.place_at(2).to_string(), "a.ron:1:2", "é is two bytes and one character");
        assert_eq!(file.place_at(11).to_string(), "a.ron:2:4");
        assert_eq!(file.place_at(999).to_string(), "a.ron:3:1");
    }

    #[test]
    fn distances_are_levenshtein() {
        // The textbook pair: kitten -> sitting takes 3 edits (from memory).
        assert_eq!(distance("kitten", "sitting"), 3);
        assert_eq!(nearest("lenght", ["width", "length"]), Some("length"));
        assert_eq!(nearest("colour", ["width", "length"]), None);
    }
}
