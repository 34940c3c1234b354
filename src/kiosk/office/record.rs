//! A record of the archive as it is opened: judged again, with what it says and its place in the chain.

use jiff::Timestamp;

use crate::archive::{Archive, Receipts};
use crate::record::bag::RECORD_FILE;
use crate::record::form::{self, Record};
use crate::record::ink;
use crate::record::seal::RecordId;
use crate::record::verify::{JudgedAt, Seen};
use crate::record::zip;
use crate::walk::Ink;

/// The text of a record in its bag.
const TEXT_FILE: &str = "data/record.txt";

/// A record that was opened.
#[derive(Debug, Clone, PartialEq)]
pub struct Opened {
    /// Its id, from its name.
    pub id: String,
    /// Its file, relative to the archive.
    pub path: String,
    /// How many bytes it has.
    pub bytes: usize,
    /// When the office received it.
    pub received: Option<Timestamp>,
    /// At what time it was judged.
    pub judged: JudgedAt,
    /// What it says, or why it is not believed.
    pub held: Result<Box<Held>, Broken>,
}

/// A record that verified.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// What stands on its outside.
    pub seen: Seen,
    /// What it says; none where only a newer program can read it.
    pub record: Option<Record>,
    /// Its text.
    pub text: String,
    /// Handwriting in it, by the name of its file in the bag.
    pub ink: Vec<(String, Ink)>,
    /// The record before it.
    pub before: Before,
    /// The record after it.
    pub after: After,
}

/// Why a record is not believed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    /// The code, which stays the same in all versions.
    pub code: &'static str,
    /// In words.
    pub why: String,
}

/// What comes before a record in the chain of its tablet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Before {
    /// Nothing: it is the first.
    First,
    /// The record that it names is here.
    Follows(RecordId),
    /// The record that it names is not here.
    Missing(u32),
    /// Another record has the number before it.
    Other(RecordId),
}

/// What comes after a record in the chain of its tablet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum After {
    /// Nothing that the office has received.
    Nothing,
    /// The next record is here and names this one.
    Follows(RecordId),
    /// The next record is here and names another one.
    Other(RecordId),
    /// The next number was never received, though this later one was.
    Missing(RecordId),
}

/// Opens a record: reads its file, judges it, takes out what it says.
///
/// # Errors
/// The file cannot be read.
pub(super) fn open(
    archive: &Archive,
    receipts: &Receipts,
    now: Timestamp,
    (id, path): (&str, &str),
) -> Result<Opened, String> {
    let bytes = archive.read(path).map_err(|fault| fault.to_string())?;
    let (judged, verdict) = archive.verify(&bytes, receipts, now);
    let named: Option<RecordId> = id.parse().ok();
    let received = named.as_ref().and_then(|id| receipts.of(id)).map(|receipt| receipt.at);
    let held = match verdict {
        Err(failure) => Err(Broken { code: failure.code(), why: failure.to_string() }),
        Ok(seen) if Some(&seen.id) != named.as_ref() => {
            Err(Broken { code: "wrong-place", why: format!("the file holds the record {}", seen.id) })
        }
        Ok(seen) => Ok(Box::new(held(archive, receipts, now, &bytes, seen))),
    };
    Ok(Opened { id: id.to_owned(), path: path.to_owned(), bytes: bytes.len(), received, judged, held })
}

fn held(archive: &Archive, receipts: &Receipts, now: Timestamp, bytes: &[u8], seen: Seen) -> Held {
    let entries = zip::read(bytes).unwrap_or_default();
    let folder = format!("{}/", seen.id);
    let files = || entries.iter().filter_map(|entry| Some((entry.name.strip_prefix(&folder)?, entry.bytes)));
    let file = |name: &str| files().find(|(found, _)| *found == name).map(|(_, bytes)| bytes);
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let ink = files()
        .filter(|(name, _)| name.ends_with(".svg"))
        .filter_map(|(name, bytes)| Some((name.to_owned(), ink::read(&text(bytes))?)))
        .collect();
    Held {
        record: file(RECORD_FILE).and_then(|bytes| form::read(bytes).ok()),
        text: file(TEXT_FILE).map(text).unwrap_or_default(),
        ink,
        before: before(receipts, &seen),
        after: after(archive, receipts, now, &seen),
        seen,
    }
}

/// Ids and numbers of the chain that a record belongs to.
fn chain<'r>(
    receipts: &'r Receipts,
    seen: &'r Seen,
) -> impl Iterator<Item = (RecordId, crate::archive::Receipt)> + 'r {
    receipts.all().filter(|(id, _)| id.tablet() == seen.id.tablet() && id.key() == seen.id.key())
}

fn before(receipts: &Receipts, seen: &Seen) -> Before {
    let Some(previous) = seen.previous else { return Before::First };
    let number = seen.number.saturating_sub(1);
    match chain(receipts, seen).find(|(id, _)| id.number() == number) {
        None => Before::Missing(number),
        Some((id, receipt)) if receipt.digest == previous => Before::Follows(id),
        Some((id, _)) => Before::Other(id),
    }
}

fn after(archive: &Archive, receipts: &Receipts, now: Timestamp, seen: &Seen) -> After {
    let later = chain(receipts, seen).map(|(id, _)| id).filter(|id| id.number() > seen.number);
    let Some(next) = later.min_by_key(RecordId::number) else { return After::Nothing };
    if next.number() != seen.number.saturating_add(1) {
        return After::Missing(next);
    }
    let names = || {
        let filed = archive.find(&next).ok()??;
        let bytes = archive.read(&filed.path).ok()?;
        archive.verify(&bytes, receipts, now).1.ok().map(|seen| seen.previous)
    };
    match names() {
        // One that does not hold says nothing about this one.
        None => After::Other(next),
        Some(previous) if previous == Some(seen.digest) => After::Follows(next),
        Some(_) => After::Other(next),
    }
}
