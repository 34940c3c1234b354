//! What the index keeps of a record, taken from its form by pure functions.

use std::collections::BTreeSet;

use jiff::Timestamp;

use super::words;
use crate::record::form::{
    self, Amendment, AnswerState, Handoff, Outcome, ReadingOutcome, Record, Refusal, Said, SignatureDone,
    StepOutcome,
};
use crate::record::seal::{Digest, Kind, RecordId};

/// How a caution was answered, as one asks for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Answered {
    /// One tap after reading.
    Read,
    /// Press and hold.
    Hold,
    /// Two taps, after holds that were too short.
    TwoTaps,
    /// A demonstration was passed.
    Demonstrate,
    /// Somebody would not confirm it.
    Refused,
    /// It was shown, and nobody answered; only in a record *not handed over*.
    Waiting,
    /// It was not shown.
    NotShown,
}

impl Answered {
    /// All of them.
    pub const ALL: [Self; 7] = [
        Self::Read,
        Self::Hold,
        Self::TwoTaps,
        Self::Demonstrate,
        Self::Refused,
        Self::Waiting,
        Self::NotShown,
    ];

    /// Its text form.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Hold => "hold",
            Self::TwoTaps => "two-taps",
            Self::Demonstrate => "demonstrate",
            Self::Refused => "refused",
            Self::Waiting => "waiting",
            Self::NotShown => "not-shown",
        }
    }
}

/// Something that records have in common, for the filters of a query.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Tag<'a> {
    Unit(&'a str),
    Kind(Kind),
    Agent(&'a str),
    Language(&'a str),
    Item(&'a str),
    Tablet(&'a str),
    Answer(Answered),
    Caution(&'a str),
    CautionAnswer(&'a str, Answered),
    /// Whether it verified when it was indexed.
    Good(bool),
}

impl Tag<'_> {
    /// Its name in the index; case does not count.
    pub(super) fn key(&self) -> String {
        let low = |kind: &str, text: &str| format!("{kind}:{}", text.to_lowercase());
        match self {
            Self::Unit(id) => low("unit", id),
            Self::Kind(kind) => low("kind", kind.as_str()),
            Self::Agent(code) => low("agent", code),
            Self::Language(tag) => low("language", tag),
            Self::Item(tag) => low("item", tag),
            Self::Tablet(name) => low("tablet", name),
            Self::Answer(how) => low("answer", how.as_str()),
            Self::Caution(id) => low("caution", id),
            Self::CautionAnswer(id, how) => low("caution", &format!("{id}={}", how.as_str())),
            Self::Good(good) => low("good", if *good { "yes" } else { "no" }),
        }
    }
}

/// Where a record lies and when it came.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// Its id, from its name.
    pub id: RecordId,
    /// Its file, relative to the archive.
    pub path: String,
    /// When the office received it; none when no receipt says so.
    pub received: Option<Timestamp>,
}

/// What verification said of a record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verified {
    /// Its digest.
    pub digest: Digest,
    /// Its kind.
    pub kind: Kind,
    /// When it was sealed, by the clock of its tablet.
    pub sealed: Timestamp,
}

/// Tags and texts that come together in many records, such as those of one step. The index stores each group once.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Group {
    /// Keys of tags.
    pub(super) tags: BTreeSet<String>,
    pub(super) texts: BTreeSet<String>,
}

/// What the index keeps of one record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecordRow {
    pub(super) source: Source,
    /// Nothing of a record that did not verify is kept but why.
    pub(super) verified: Result<Verified, String>,
    /// Offset of local time from UTC in minutes, east positive.
    pub(super) offset_minutes: i16,
    pub(super) unit: String,
    pub(super) unit_name: String,
    pub(super) booking: String,
    pub(super) names: Vec<String>,
    pub(super) agents: Vec<String>,
    pub(super) language: String,
    pub(super) refused: usize,
    pub(super) not_shown: usize,
    /// What people typed, and values that were read.
    pub(super) notes: Vec<String>,
    pub(super) groups: Vec<Group>,
    /// What is being gathered.
    group: Group,
}

impl RecordRow {
    /// A record that did not verify: that it lies there and what is wrong with it, nothing of what it says.
    #[must_use]
    pub fn bad(source: Source, fault: &str) -> Self {
        Self::empty(source, Err(fault.to_owned()))
    }

    /// A record that verified, with what it says; none of that where only a newer program can read it.
    #[must_use]
    pub fn good(source: Source, verified: Verified, record: Option<&Record>) -> Self {
        let mut row = Self::empty(source, Ok(verified));
        match record {
            Some(Record::Handoff(handoff)) => row.take_handoff(handoff),
            Some(Record::Amendment(amendment)) => row.take_amendment(amendment),
            Some(Record::Other(_)) | None => {}
        }
        row
    }

    fn empty(source: Source, verified: Result<Verified, String>) -> Self {
        let kind = verified.as_ref().ok().map(|v| Tag::Kind(v.kind));
        let tags = [Some(Tag::Good(verified.is_ok())), Some(Tag::Tablet(source.id.tablet())), kind];
        let groups = tags.into_iter().flatten().map(|tag| alone(&tag)).collect();
        Self {
            source,
            verified,
            offset_minutes: 0,
            unit: String::new(),
            unit_name: String::new(),
            booking: String::new(),
            names: Vec::new(),
            agents: Vec::new(),
            language: String::new(),
            refused: 0,
            not_shown: 0,
            notes: Vec::new(),
            groups,
            group: Group::default(),
        }
    }

    /// Id of the record.
    #[must_use]
    pub const fn id(&self) -> &RecordId {
        &self.source.id
    }

    /// The moment it is sorted by: its sealing, else its receipt, in seconds as the clock on the wall showed it.
    pub(super) fn wall_seconds(&self) -> i64 {
        let at = self.verified.as_ref().ok().map(|v| v.sealed).or(self.source.received);
        at.map_or(0, |at| at.as_second().saturating_add(i64::from(self.offset_minutes) * 60))
    }

    /// Day and time of day of its sealing on the wall, as text, so that a date can be typed.
    fn day(&self) -> String {
        Timestamp::from_second(self.wall_seconds())
            .map(|at| at.strftime("%Y-%m-%d").to_string())
            .unwrap_or_default()
    }

    /// Words by which one knows which record it is.
    pub(super) fn which(&self) -> String {
        let id = &self.source.id;
        words::apart([self.booking.as_str(), &id.to_string(), &id.number().to_string()])
    }

    /// Who takes part.
    pub(super) fn who(&self) -> String {
        words::apart(self.names.iter().map(String::as_str))
    }

    /// Who takes part, and which record it is.
    pub(super) fn head(&self) -> String {
        words::together(&self.who(), &self.which())
    }

    /// Names and booking as they stand, for parts of words.
    pub(super) fn parts(&self) -> String {
        words::apart_folded(self.names.iter().map(String::as_str).chain([self.booking.as_str()]))
    }

    /// What else is said of it in a few words.
    pub(super) fn other(&self) -> String {
        let kind = self.verified.as_ref().map_or("", |v| v.kind.as_str());
        let day = self.day();
        let few = [self.unit.as_str(), &self.unit_name, &self.language, kind, &day];
        words::apart(few.into_iter().chain(self.agents.iter().map(String::as_str)))
    }

    /// What people typed.
    pub(super) fn noted(&self) -> String {
        words::apart(self.notes.iter().map(String::as_str))
    }

    /// A tag that comes with others.
    fn tag(&mut self, tag: &Tag<'_>) {
        self.group.tags.insert(tag.key());
    }

    /// A tag of the record as a whole.
    fn tag_alone(&mut self, tag: &Tag<'_>) {
        let group = alone(tag);
        if !self.groups.contains(&group) {
            self.groups.push(group);
        }
    }

    fn text(&mut self, parts: &[&str]) {
        self.group.texts.insert(words::apart(parts.iter().copied()));
    }

    /// What was gathered is a group.
    fn close(&mut self) {
        self.groups.push(std::mem::take(&mut self.group));
    }

    fn note(&mut self, note: &str) {
        if !note.trim().is_empty() {
            self.notes.push(note.to_owned());
        }
    }

    fn agent(&mut self, code: &str) {
        if !self.agents.iter().any(|known| known == code) {
            self.tag_alone(&Tag::Agent(code));
            self.agents.push(code.to_owned());
        }
    }

    fn take_handoff(&mut self, record: &Handoff) {
        self.offset_minutes = record.walk.began.offset_minutes;
        self.unit.clone_from(&record.unit.id);
        self.unit_name.clone_from(&record.unit.name);
        self.tag_alone(&Tag::Unit(&record.unit.id));
        self.language.clone_from(&record.reader.language);
        self.tag_alone(&Tag::Language(&record.reader.language));
        for agent in &record.agents {
            self.agent(&agent.code);
        }
        if let Some(booking) = &record.opening.booking {
            self.booking.clone_from(&booking.reference);
        }
        self.take_people(record);
        for step in &record.route.steps {
            self.take_step(step);
        }
        self.take_refusals(record);
        self.take_things(record);
    }

    fn take_people(&mut self, record: &Handoff) {
        let people = record.party.people.iter().map(|p| &p.name);
        self.names.extend(people.filter(|n| !n.trim().is_empty()).cloned());
        for member in record.party.earlier.iter().flat_map(|party| &party.people) {
            if !self.names.contains(&member.name) {
                self.note(&member.name);
            }
        }
        if let Some(translator) = &record.opening.translator {
            self.note(&translator.value);
        }
        if let Outcome::NotHandedOver { reason, .. } = &record.outcome {
            self.note(reason);
        }
        for question in &record.questions {
            self.note(&question.text);
        }
        for reopened in &record.reopened {
            self.note(&reopened.reason);
        }
    }

    fn take_step(&mut self, step: &form::Step) {
        self.text(&[&step.id, &step.title]);
        for text in &step.texts {
            if text.title != step.title {
                self.text(&[&step.id, &text.title]);
            }
            // Figures of a trip stand in them: without numbers they are the same in many records, and stored once.
            let lines = [&text.show, &text.know, &text.notes].into_iter().flatten();
            let lines: Vec<String> = lines.map(|line| words::without_numbers(line)).collect();
            self.text(&lines.iter().map(String::as_str).collect::<Vec<_>>());
        }
        let shown = matches!(step.outcome, StepOutcome::Shown { .. });
        if let StepOutcome::NotShown { note, .. } = &step.outcome {
            self.not_shown += 1;
            self.note(note);
        }
        for caution in &step.cautions {
            self.take_caution(caution, shown);
        }
        self.close();
    }

    fn take_caution(&mut self, caution: &form::Caution, step_shown: bool) {
        let mut answers: BTreeSet<Answered> =
            caution.responses.iter().filter(|r| r.counts).filter_map(|r| answered(&r.said)).collect();
        if caution.responses.is_empty() {
            answers.insert(if step_shown { Answered::Waiting } else { Answered::NotShown });
        } else if matches!(caution.state, AnswerState::Waiting) {
            answers.insert(Answered::Waiting);
        }
        self.tag(&Tag::Caution(&caution.id));
        for how in answers {
            self.tag_alone(&Tag::Answer(how));
            self.tag(&Tag::CautionAnswer(&caution.id, how));
        }
        if caution.texts.is_empty() {
            self.text(&[&caution.id, &caution.title]);
        }
        for text in &caution.texts {
            self.text(&[&caution.id, &text.title, &text.signal, &text.hazard, &text.harm, &text.avoid]);
        }
        // The reason of one who confirmed it in the end stands nowhere else.
        for response in caution.responses.iter().filter(|r| !r.counts) {
            if let Said::Refused { reason, .. } = &response.said {
                self.note(reason);
            }
        }
    }

    fn take_refusals(&mut self, record: &Handoff) {
        self.refused = record.refusals.len();
        for refusal in &record.refusals {
            match refusal {
                Refusal::Caution { reason, .. } | Refusal::Signature { reason, .. } => self.note(reason),
                Refusal::Unknown => {}
            }
        }
    }

    fn take_things(&mut self, record: &Handoff) {
        for reading in &record.readings {
            self.text(&[&reading.id, &reading.name]);
            match &reading.outcome {
                ReadingOutcome::Taken { value, measure, .. } => self.note(&format!("{value} {measure}")),
                ReadingOutcome::NotTaken { note, .. } => self.note(note),
                ReadingOutcome::Open | ReadingOutcome::Unknown => {}
            }
        }
        for item in &record.items {
            self.text(&[&item.tag, &item.name]);
            if let Some(counted) = &item.counted {
                if counted.count > 0 {
                    self.tag(&Tag::Item(&item.tag));
                }
                self.note(&counted.note);
            }
        }
        self.close();
        for mark in record.marks.iter().filter(|mark| mark.removed.is_none()) {
            self.note(&format!("{} {}", mark.kind.as_str(), mark.note));
        }
    }

    fn take_amendment(&mut self, record: &Amendment) {
        self.offset_minutes = record.at.offset_minutes;
        self.unit.clone_from(&record.unit);
        self.unit_name.clone_from(&record.unit_name);
        self.tag_alone(&Tag::Unit(&record.unit));
        self.language.clone_from(&record.reader.language);
        self.tag_alone(&Tag::Language(&record.reader.language));
        self.agent(&record.agent);
        self.names.extend(record.people.iter().map(|p| p.name.clone()).filter(|n| !n.trim().is_empty()));
        self.note(&record.text);
        self.note(&record.amends.id.to_string());
        for topic in &record.topics {
            self.text(&[&topic.id, &topic.title]);
            for caution in &topic.cautions {
                self.take_caution(caution, true);
            }
            self.close();
        }
        for signature in &record.signatures {
            if let SignatureDone::Refused { reason, .. } = &signature.done {
                self.refused += 1;
                self.note(reason);
            }
        }
    }
}

fn alone(tag: &Tag<'_>) -> Group {
    Group { tags: BTreeSet::from([tag.key()]), texts: BTreeSet::new() }
}

const fn answered(said: &Said) -> Option<Answered> {
    use form::How;
    Some(match said {
        Said::Refused { .. } => Answered::Refused,
        Said::Confirmed { how: How::Read, .. } => Answered::Read,
        Said::Confirmed { how: How::Hold, .. } => Answered::Hold,
        Said::Confirmed { how: How::TwoTaps, .. } => Answered::TwoTaps,
        Said::Confirmed { how: How::Demonstrate, .. } => Answered::Demonstrate,
        Said::Confirmed { how: How::Unknown, .. } | Said::Unknown => return None,
    })
}
