//! `record.txt`: the whole record as plain text for people, in the renter's language, 72 columns wide.
//!
//! What decides a dispute stands first: refusals and what was not shown. All words come from Fluent, all numbers
//! through the one door of [`crate::words::format`].

mod amendment;
mod appendix;
mod closing;
mod consent;
mod demo;
mod opening;
mod page;
mod round;
mod trip;
mod values;
pub(crate) mod width;

pub use consent::{CONSENT_POINTS, consent_text};

use super::form::{Handoff, Outcome, Record};
use crate::words::Words;
use page::Page;

/// Columns of the text.
pub const COLUMNS: usize = width::COLUMNS;

/// The record as plain text; empty for a kind that this program does not read.
#[must_use]
pub fn render(record: &Record, words: &Words) -> String {
    match record {
        Record::Handoff(record) => handoff(record, words),
        Record::Amendment(record) => amendment::render(record, words),
        Record::Other(_) => String::new(),
    }
}

fn handoff(record: &Handoff, words: &Words) -> String {
    let at = match &record.outcome {
        Outcome::HandedOver { at } | Outcome::NotHandedOver { at, .. } => *at,
        Outcome::Unknown => record.walk.began,
    };
    let members = record.party.earlier.iter().flat_map(|party| &party.people);
    let names = members
        .map(|member| (member.number, member.name.clone()))
        .chain(record.party.people.iter().map(|person| (person.number, person.name.clone())))
        .collect();
    let mut page = Page::new(words, &record.reader, at.offset_minutes, names);
    page.head(&record.head, &record.lot.currency, &record.agents);
    opening::title(&mut page, record);
    opening::refusals(&mut page, record);
    opening::not_shown(&mut page, record);
    opening::party(&mut page, record);
    opening::unit(&mut page, record);
    trip::trip(&mut page, record);
    values::readings(&mut page, record);
    values::items(&mut page, record);
    values::fees(&mut page, record);
    values::marks(&mut page, record);
    round::cautions(&mut page, record);
    closing::questions(&mut page, record);
    closing::leaving(&mut page, record);
    closing::consent(&mut page, record);
    closing::signatures(&mut page, &record.signatures, &record.withdrawn, &record.reopened);
    closing::copy(&mut page, record);
    round::steps(&mut page, record);
    appendix::figures(&mut page, record);
    appendix::facts(&mut page, record);
    appendix::verify(&mut page, &record.head);
    page.finish()
}
