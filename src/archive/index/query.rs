//! What is asked of the index.

use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;

use super::row::{Answered, Tag};
use crate::record::seal::Kind;

/// In which order records come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Sort {
    /// Names, bookings and ids first, then what else fits; newest first among what fits alike.
    #[default]
    Best,
    /// By when they were sealed, newest first.
    Sealed,
    /// By when the office received them, newest first.
    Received,
    /// By the renter's name.
    Renter,
    /// By unit.
    Unit,
}

/// A question to the index. An empty one lists everything.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Query {
    /// Words, each of which must be found by its beginning.
    pub words: String,
    /// Unit id.
    pub unit: Option<String>,
    /// First day, as the clock on the wall showed it when the record was sealed.
    pub from: Option<Date>,
    /// Last day.
    pub to: Option<Date>,
    /// Caution id.
    pub caution: Option<String>,
    /// How that caution was answered; how any was where none is named.
    pub answer: Option<Answered>,
    /// Kind of record.
    pub kind: Option<Kind>,
    /// Staff code of an agent.
    pub agent: Option<String>,
    /// Language tag of the renter.
    pub language: Option<String>,
    /// Tag of an item that went with the unit.
    pub item: Option<String>,
    /// Only records that did not verify when they were indexed, or only such that did.
    pub good: Option<bool>,
    /// The order.
    pub sort: Sort,
    /// The other way round; not for [`Sort::Best`].
    pub reversed: bool,
}

impl Query {
    /// A question by words alone.
    #[must_use]
    pub fn words(words: &str) -> Self {
        Self { words: words.to_owned(), ..Self::default() }
    }

    /// Keys of the tags that a record must have.
    pub(super) fn tags(&self) -> Vec<String> {
        let mut tags = Vec::new();
        let mut add = |tag: Option<Tag<'_>>| tags.extend(tag.map(|t| t.key()));
        add(self.unit.as_deref().map(Tag::Unit));
        add(self.kind.map(Tag::Kind));
        add(self.agent.as_deref().map(Tag::Agent));
        add(self.language.as_deref().map(Tag::Language));
        add(self.item.as_deref().map(Tag::Item));
        add(self.good.map(Tag::Good));
        add(match (self.caution.as_deref(), self.answer) {
            (Some(id), Some(how)) => Some(Tag::CautionAnswer(id, how)),
            (Some(id), None) => Some(Tag::Caution(id)),
            (None, Some(how)) => Some(Tag::Answer(how)),
            (None, None) => None,
        });
        tags
    }

    /// The smallest and the largest key of the days that are asked for.
    pub(super) fn keys(&self) -> (i64, i64) {
        let seconds =
            |date: Date| TimeZone::UTC.to_timestamp(date.at(0, 0, 0, 0)).map_or(0, Timestamp::as_second);
        let least = self
            .to
            .and_then(|to| to.tomorrow().ok())
            .map_or(0, |after| super::file::first_key_after(seconds(after)).saturating_add(1));
        let most = self.from.map_or(i64::MAX, |from| super::file::first_key_after(seconds(from)));
        (least, most)
    }
}
