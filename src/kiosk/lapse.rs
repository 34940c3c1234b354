//! Answers in the middle of a walk whose words change: held against the words as they would read now.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::hall::{Hall, system_of};
use crate::record::text::consent_text;
use crate::route::Caution;
use crate::script::{Scripts, Speaker};
use crate::walk::{Event, Lapse, PersonId, Walk};
use crate::words::Reader;

/// What must be said before these events, if they set another language or other measures: which answers stand no
/// longer, of one person or of all.
#[must_use]
pub fn before(hall: &Hall, events: &[Event], of: Option<PersonId>) -> Option<Event> {
    let (language, measures) = events.iter().find_map(|event| match event {
        Event::ReaderSet { language, measures } => Some((language, measures)),
        _ => None,
    })?;
    let reader = Reader::new(language, system_of(measures));
    let speaker = Speaker::new(&hall.scripts, &hall.walk.route().unit, reader)?;
    let (_, consent) = consent_text(&speaker);
    hall.walk.lapses(of, |caution| speaker.caution(caution).digest(), &consent)
}

/// How many answers would be asked for again in this language and these measures.
#[must_use]
pub fn count(hall: &Hall, language: &str, measures: &str) -> usize {
    let (language, measures) = (language.to_owned(), measures.to_owned());
    match before(hall, &[Event::ReaderSet { language, measures }], None) {
        Some(Event::AnswersLapsed(Lapse { answers, consents })) => answers.len() + consents.len(),
        _ => 0,
    }
}

/// That a walk for another unit follows `walk`, with the answers that stand there.
#[must_use]
pub fn follow(walk: &Walk, scripts: &Scripts, to: &Walk) -> Event {
    let measures = walk.reader().map_or("us", |r| r.value.measures.as_str());
    let speakers: RefCell<BTreeMap<String, Option<Speaker<'_>>>> = RefCell::default();
    let text = |caution: &Caution, language: &str| {
        let mut speakers = speakers.borrow_mut();
        let speaker = speakers.entry(language.to_owned()).or_insert_with(|| {
            Speaker::new(scripts, &to.route().unit, Reader::new(language, system_of(measures)))
        });
        speaker.as_ref().map(|speaker| speaker.caution(caution).digest())
    };
    walk.follow(to.route(), text)
}
