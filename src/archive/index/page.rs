//! Some of what was found: where a page ends, and which of two records comes first.

use std::cmp::Ordering;

use rusqlite::types::Value;

use super::hit::Hit;
use super::query::{Query, Sort};

/// Where a page ended, for asking for the next one of the same query.
#[derive(Debug, Clone, PartialEq)]
pub struct Cursor {
    pub(super) tier: Tier,
    pub(super) sorted: Value,
    pub(super) key: i64,
}

/// Some records, in order.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// The records.
    pub hits: Vec<Hit>,
    /// Where to go on; none when there is no more.
    pub next: Option<Cursor>,
}

/// How many records a query finds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Count {
    /// So many.
    Exactly(u64),
    /// More than so many; the rest was not counted.
    MoreThan(u64),
}

/// How well a record fits the words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Tier {
    /// All words stand in names, booking or id, as whole words.
    Whole,
    /// As beginnings of words.
    Begun,
    /// Within names or booking.
    Inside,
    /// In what else is said of this record.
    Said,
    /// In texts that it shares with others.
    Shared,
}

impl Tier {
    pub(super) const ALL: [Self; 5] = [Self::Whole, Self::Begun, Self::Inside, Self::Said, Self::Shared];
}

impl Cursor {
    /// Which of two records comes first; those of two parts are merged by it.
    pub(super) fn order(&self, other: &Self, query: &Query) -> Ordering {
        let order = self
            .tier
            .cmp(&other.tier)
            .then(compare(&self.sorted, &other.sorted))
            .then(self.key.cmp(&other.key));
        if query.reversed && query.sort != Sort::Best { order.reverse() } else { order }
    }
}

/// The order in which SQLite has the values of one column.
fn compare(a: &Value, b: &Value) -> Ordering {
    match (a, b) {
        (Value::Integer(a), Value::Integer(b)) => a.cmp(b),
        (Value::Text(a), Value::Text(b)) => a.as_bytes().cmp(b.as_bytes()),
        _ => Ordering::Equal,
    }
}
