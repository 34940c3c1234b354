//! What is told of a record that was found.

use jiff::Timestamp;
use rusqlite::Row;

use super::{IndexFault, Part};
use crate::record::seal::{Digest, Kind};

/// A record that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hit {
    /// Its id.
    pub id: String,
    /// Its file, relative to the archive.
    pub path: String,
    /// Its digest, if it verified.
    pub digest: Option<Digest>,
    /// What is wrong with it, if it did not verify when it was indexed: the code of the failure.
    pub fault: Option<String>,
    /// Its kind, if it verified.
    pub kind: Option<Kind>,
    /// When it was sealed, if it verified.
    pub sealed: Option<Timestamp>,
    /// Offset of local time from UTC in minutes, east positive.
    pub offset_minutes: i16,
    /// When the office received it.
    pub received: Option<Timestamp>,
    /// Unit id.
    pub unit: String,
    /// Name of the unit in the reader's language.
    pub unit_name: String,
    /// Booking reference.
    pub booking: String,
    /// The first name of the party.
    pub renter: String,
    /// Staff codes, joined.
    pub agents: String,
    /// Language tag of the renter.
    pub language: String,
    /// Refusals that stand.
    pub refused: u32,
    /// Steps that were not shown.
    pub not_shown: u32,
}

/// The columns of a hit.
pub(super) const HIT: &str = "SELECT id, path, digest, fault, kind, sealed, offset_minutes, received, unit, unit_name, booking, renter,
    agents, language, refused, not_shown FROM records";

pub(super) fn by_id(index: &Part, id: &str) -> Result<Option<Hit>, IndexFault> {
    let mut load = index.connection().prepare_cached(&format!("{HIT} WHERE id = ?1"))?;
    let mut rows = load.query_map([id], hit)?;
    Ok(rows.next().transpose()?)
}

pub(super) fn hit(row: &Row<'_>) -> Result<Hit, rusqlite::Error> {
    let seconds = |at: i64| Timestamp::from_second(at).ok();
    let digest: Option<[u8; 32]> = row.get(2)?;
    Ok(Hit {
        id: row.get(0)?,
        path: row.get(1)?,
        digest: digest.map(Digest::from_bytes),
        fault: row.get(3)?,
        kind: row.get::<_, Option<String>>(4)?.and_then(|kind| kind.parse().ok()),
        sealed: row.get::<_, Option<i64>>(5)?.and_then(seconds),
        offset_minutes: row.get(6)?,
        received: Some(row.get::<_, i64>(7)?.saturating_neg()).filter(|at| *at != 0).and_then(seconds),
        unit: row.get(8)?,
        unit_name: row.get(9)?,
        booking: row.get(10)?,
        renter: row.get(11)?,
        agents: row.get(12)?,
        language: row.get(13)?,
        refused: row.get(14)?,
        not_shown: row.get(15)?,
    })
}
