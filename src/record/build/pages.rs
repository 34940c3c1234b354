//! Says texts again, as they were on the page.

use std::collections::BTreeMap;

use super::{BuildFault, digest};
use crate::figures::Trip;
use crate::measure::System;
use crate::record::form;
use crate::record::text::consent_text;
use crate::route;
use crate::script::demo::{self, Part};
use crate::script::{CautionText, Scripts, Speaker};
use crate::walk::{Shown, Tried};
use crate::words::{Args, Reader, Words};

/// Reading speed of a renter, in words a minute (the design's; also what `check` counts with).
const WORDS_A_MINUTE: u32 = 180;
const SYSTEMS: [System; 3] = [System::Us, System::Uk, System::Metric];

/// The measures as events and records spell them.
fn word(system: System) -> &'static str {
    match system {
        System::Us => "us",
        System::Uk => "uk",
        System::Metric => "metric",
    }
}

/// The measures that a word of an event names; the usual ones when it names none.
pub(in crate::record) fn system_of(measures: &str) -> System {
    SYSTEMS.into_iter().find(|system| word(*system) == measures).unwrap_or_default()
}

/// Who reads, as the words door wants it.
pub(in crate::record) fn reader(reader: &form::Reader) -> Reader {
    Reader::new(&reader.language, system_of(&reader.measures))
}

/// How long texts take to read, in milliseconds, rounded up.
pub(in crate::record) fn reading_ms(texts: &[&str]) -> u32 {
    let words: usize = texts.iter().map(|text| text.split_whitespace().count()).sum();
    let words = u32::try_from(words).unwrap_or(u32::MAX);
    words.saturating_mul(60_000).div_ceil(WORDS_A_MINUTE)
}

/// Says texts for one unit, in any language and measures.
pub(in crate::record) struct Pages<'a> {
    scripts: &'a Scripts,
    unit: &'a str,
    own: Speaker<'a>,
    trip: Option<Trip>,
    others: BTreeMap<Reader, Speaker<'a>>,
}

impl<'a> Pages<'a> {
    pub(in crate::record) fn new(
        scripts: &'a Scripts,
        unit: &'a str,
        own: &form::Reader,
        trip: Option<Trip>,
    ) -> Result<Self, BuildFault> {
        let own = Speaker::new(scripts, unit, reader(own))
            .ok_or_else(|| BuildFault::NoUnit { unit: unit.to_owned() })?
            .with_trip(trip.clone());
        Ok(Self { scripts, unit, own, trip, others: BTreeMap::new() })
    }

    /// A message in the reader's language.
    pub(in crate::record) fn say(&self, key: &str) -> String {
        self.own.say(key)
    }

    /// All words, and who reads.
    pub(super) fn words(&self) -> (&Words, &Reader) {
        (&self.scripts.words, self.own.reader())
    }

    /// A message of the lot, in the reader's language.
    pub(super) fn say_plain(&self, key: &str) -> String {
        self.scripts.words.say(self.own.reader(), key, &Args::new())
    }

    /// The title of a caution in the reader's language.
    pub(super) fn title(&self, caution: &route::Caution) -> String {
        self.own.say_steady(&format!("caution-{}.title", caution.id))
    }

    /// The page of a step in a language and measures; the reader's measures when none are named.
    pub(super) fn step(
        &mut self,
        step: &route::Step,
        language: &str,
        measures: &str,
    ) -> Result<form::StepText, BuildFault> {
        let system = if measures.is_empty() { self.own.reader().system } else { system_of(measures) };
        let text = self.speaker(language, system)?.step(step);
        Ok(form::StepText {
            language: language.to_owned(),
            measures: word(system).to_owned(),
            title: text.title,
            show: text.show,
            know: text.know,
            notes: text.notes,
        })
    }

    /// The text of a caution that an answer is bound to; none when no measures give that text.
    pub(super) fn caution(
        &mut self,
        caution: &route::Caution,
        shown: &Shown,
    ) -> Result<Option<form::CautionText>, BuildFault> {
        for system in self.systems() {
            let text = self.speaker(&shown.language, system)?.caution(caution);
            if text.digest() == shown.text {
                return Ok(Some(caution_text(text, &shown.language, system, digest(&shown.text)?)));
            }
        }
        Ok(None)
    }

    /// Who says the page of a demonstration as a try is bound to it; none when it reads otherwise now.
    pub(super) fn page_of(&mut self, part: &Part, tried: &Tried) -> Result<Option<Speaker<'a>>, BuildFault> {
        for system in self.systems() {
            let speaker = self.speaker(&tried.shown.language, system)?;
            if speaker.demonstration(part, &tried.order).digest() == tried.shown.text {
                return Ok(Some(speaker.clone()));
            }
        }
        Ok(None)
    }

    /// A message of a demonstration in the reader's language.
    pub(super) fn said(&self, said: &demo::Said) -> String {
        self.own.said(said)
    }

    /// The text of the consent that an answer is bound to; none when it reads otherwise now.
    pub(super) fn consent(&mut self, shown: &Shown) -> Result<Option<form::ConsentText>, BuildFault> {
        for system in self.systems() {
            let (lines, text) = consent_text(self.speaker(&shown.language, system)?);
            if text == shown.text {
                let language = shown.language.clone();
                return Ok(Some(form::ConsentText { digest: digest(&text)?, language, lines }));
            }
        }
        Ok(None)
    }

    /// All measures, the reader's first, then those the lot offers: an answer tells its language only, and its
    /// digest the measures.
    fn systems(&self) -> Vec<System> {
        let offered = self.scripts.lot.value.measures.iter().map(|measures| system_of(measures));
        let mut systems: Vec<System> = Vec::new();
        for system in std::iter::once(self.own.reader().system).chain(offered).chain(SYSTEMS) {
            if !systems.contains(&system) {
                systems.push(system);
            }
        }
        systems
    }

    fn speaker(&mut self, language: &str, system: System) -> Result<&Speaker<'a>, BuildFault> {
        let reader = Reader::new(language, system);
        if reader == *self.own.reader() {
            return Ok(&self.own);
        }
        if !self.others.contains_key(&reader) {
            let speaker = Speaker::new(self.scripts, self.unit, reader.clone())
                .ok_or_else(|| BuildFault::NoUnit { unit: self.unit.to_owned() })?
                .with_trip(self.trip.clone());
            self.others.insert(reader.clone(), speaker);
        }
        self.others.get(&reader).ok_or_else(|| BuildFault::NoUnit { unit: self.unit.to_owned() })
    }
}

fn caution_text(
    text: CautionText,
    language: &str,
    system: System,
    digest: crate::record::seal::Digest,
) -> form::CautionText {
    let reading_ms = reading_ms(&[&text.hazard, &text.harm, &text.avoid]);
    let CautionText { title, signal, hazard, harm, avoid } = text;
    let (language, measures) = (language.to_owned(), word(system).to_owned());
    form::CautionText { digest, language, measures, title, signal, hazard, harm, avoid, reading_ms }
}
