//! Finds topics and guides of a unit by what a renter types: titles, words of everyday speech, the texts themselves.
//!
//! Letters count without accents and without case. Every word that is typed must be found, as a word or as its
//! beginning; what leads to a way out of danger comes first, then titles, then words, then texts. So as long as each
//! word is found as it is typed, one letter more never brings in a new hit. A word that is found nowhere may be off by
//! one letter, and where no place holds all words, those that hold the most are shown.

mod letters;

use std::collections::BTreeSet;

use crate::script::{End, Guide, Scripts, Speaker, Target, Way};
use crate::unit::Facts;
use crate::words::Reader;

use super::{Route, Step};
use letters::{near, words_of};

/// Most hits that are told: who sees none that fits among these types another word.
pub const MOST: usize = 24;

/// Longest query that is looked at, in characters.
const LONGEST: usize = 80;

/// Shortest word that may be off by a letter, and shortest beginning of a longer word that stands for it.
const LONG: usize = 4;

/// Most letters that a typed word may have beyond one of ours, as in 'leaking' beyond 'leak'.
const ENDING: usize = 3;

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Found {
    /// The emergency card.
    Emergency,
    /// A trouble guide, by its id.
    Guide(String),
    /// A step, by its position on the route.
    Step(usize),
}

/// Where it was found, the best last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Where {
    /// In a text.
    Text,
    /// Among the words that people use for it.
    Word,
    /// In the title.
    Title,
}

/// Something that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hit {
    /// What.
    pub what: Found,
    /// Its title.
    pub title: String,
    /// Where it was found.
    pub place: Where,
    /// The words or the line that it was found in.
    pub line: String,
    /// Whether it is about getting out of danger, and comes first.
    pub grave: bool,
}

/// All that can be found on a unit, in one language.
#[derive(Debug, Clone)]
pub struct Index {
    entries: Vec<Entry>,
    /// Words that say nothing beside others: 'how', 'the'.
    idle: BTreeSet<String>,
}

#[derive(Debug, Clone)]
struct Entry {
    what: Found,
    title: String,
    grave: bool,
    fields: Vec<Field>,
}

#[derive(Debug, Clone)]
struct Field {
    place: Where,
    line: String,
    /// The line, folded, one space between words.
    folded: String,
    words: Vec<String>,
}

impl Field {
    fn new(place: Where, line: &str) -> Self {
        let words = words_of(line);
        Self { place, line: line.to_owned(), folded: words.join(" "), words }
    }
}

/// Whether a guide is about getting out of danger: on some way through it, whatever is answered, one leaves.
#[must_use]
pub fn is_grave(guide: &Guide, facts: &Facts) -> bool {
    let leaves = |target: &Target| matches!(target.on(facts), Some(Way::End(End::Leave)));
    let reached = guide.reached(facts);
    let mut rows = guide.rows.iter().map(|r| &r.value).filter(|r| reached.contains(r.id.value.as_str()));
    rows.any(|row| leaves(&row.yes) && leaves(&row.no))
}

impl Index {
    /// Everything of a unit's route and guides, as a reader reads it; none when the lot has no such unit.
    #[must_use]
    pub fn new(scripts: &Scripts, route: &Route, reader: &Reader) -> Option<Self> {
        let speaker = Speaker::new(scripts, &route.unit, reader.clone())?;
        let facts = scripts.facts(&route.unit)?;
        let mut entries = vec![emergency(&speaker)];
        let guides = scripts.guides.values().map(|g| &g.value).filter(|g| g.fits(&facts));
        entries.extend(guides.map(|g| guide(&speaker, g, &facts)));
        entries.extend(route.steps.iter().enumerate().map(|(at, s)| step(&speaker, at, s)));
        let idle = speaker.try_say("find-idle").unwrap_or_default();
        Some(Self { entries, idle: words_of(&idle).into_iter().collect() })
    }

    /// What a query finds, the best first; nothing for an empty one.
    #[must_use]
    pub fn find(&self, query: &str) -> Vec<Hit> {
        let query: String = query.chars().take(LONGEST).collect();
        let all = words_of(&query);
        let telling: Vec<&String> = all.iter().filter(|w| !self.idle.contains(*w)).collect();
        let typed: Vec<&String> = if telling.is_empty() { all.iter().collect() } else { telling };
        if typed.is_empty() {
            return Vec::new();
        }
        let phrase = all.join(" ");
        let typed: Vec<Typed<'_>> = typed.into_iter().map(|word| self.typed(word)).collect();
        let mut found: Vec<(Rank, &Entry, Best<'_>)> =
            self.entries.iter().filter_map(|entry| ranked(entry, &typed, &phrase)).collect();
        let most = found.iter().map(|(rank, ..)| rank.words).max().unwrap_or(0);
        found.retain(|(rank, ..)| rank.words == most);
        found.sort_by(|(a, ..), (b, ..)| b.cmp(a));
        found.into_iter().take(MOST).map(|(rank, entry, best)| hit(rank, entry, &best)).collect()
    }

    /// How far a typed word may be from ours: only one that is found nowhere may be off by a letter.
    fn typed<'q>(&self, word: &'q str) -> Typed<'q> {
        let mut fields = self.entries.iter().flat_map(|e| &e.fields);
        let known = fields.any(|f| f.words.iter().any(|w| alike(w, word) > 0));
        Typed { word, loose: !known }
    }
}

/// A word of the query.
#[derive(Debug, Clone, Copy)]
struct Typed<'q> {
    word: &'q str,
    /// Whether it may be off by a letter.
    loose: bool,
}

/// What puts one hit before another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Rank {
    /// How many of the typed words are found.
    words: usize,
    /// About getting out of danger, and found by title or words alone.
    grave: bool,
    /// Sum over the typed words.
    score: u32,
}

/// Where an entry was found best.
struct Best<'e> {
    score: u32,
    field: &'e Field,
}

fn emergency(speaker: &Speaker<'_>) -> Entry {
    let title = speaker.say("find-emergency.title");
    let mut fields = vec![Field::new(Where::Title, &title)];
    fields.extend(listed(speaker, "find-emergency"));
    Entry { what: Found::Emergency, title, grave: true, fields }
}

fn guide(speaker: &Speaker<'_>, guide: &Guide, facts: &Facts) -> Entry {
    let id = &guide.id.value;
    let title = speaker.say(&format!("guide-{id}"));
    let mut fields = vec![Field::new(Where::Title, &title)];
    fields.extend(listed(speaker, &format!("guide-{id}.find")));
    let reached = guide.reached(facts);
    for row in reached {
        for part in ["", ".ask"] {
            let said = speaker.try_say(&format!("row-{id}-{row}{part}"));
            fields.extend(said.ok().map(|line| Field::new(Where::Text, &line)));
        }
    }
    Entry { what: Found::Guide(id.clone()), title, grave: is_grave(guide, facts), fields }
}

fn step(speaker: &Speaker<'_>, at: usize, step: &Step) -> Entry {
    let text = speaker.step(step);
    let mut fields = vec![Field::new(Where::Title, &text.title)];
    fields.extend(listed(speaker, &format!("find-{}", step.topic)));
    let lines = text.know.iter().chain(&text.show).chain(&text.notes);
    fields.extend(lines.map(|line| Field::new(Where::Text, line)));
    for caution in &step.cautions {
        let said = speaker.caution(caution);
        let lines = [&said.title, &said.hazard, &said.harm, &said.avoid];
        fields.extend(lines.map(|line| Field::new(Where::Text, line)));
    }
    Entry { what: Found::Step(at), title: text.title, grave: false, fields }
}

/// Words that people use, as a message lists them; a lot need not.
fn listed(speaker: &Speaker<'_>, key: &str) -> Vec<Field> {
    let said = speaker.try_say(key).unwrap_or_default();
    said.split(',').map(str::trim).filter(|w| !w.is_empty()).map(|w| Field::new(Where::Word, w)).collect()
}

/// How much one of our words is like a typed one: 4 the same, 3 begins so, 2 is its beginning, 0 not at all.
fn alike(ours: &str, typed: &str) -> u32 {
    if ours == typed {
        4
    } else if ours.starts_with(typed) {
        3
    } else if ours.len() >= LONG && typed.starts_with(ours) && typed.len() <= ours.len() + ENDING {
        2
    } else {
        0
    }
}

/// How well a typed word is found in a field.
fn in_field(field: &Field, typed: Typed<'_>) -> u32 {
    let like = |ours: &String| match alike(ours, typed.word) {
        0 if typed.loose && typed.word.chars().count() >= LONG && near(ours, typed.word) => 1,
        found => found,
    };
    let found = field.words.iter().map(like).max().unwrap_or(0);
    match found {
        0 => 0,
        // 'window' is hardly meant where 'wind' stands: a title that is found so tells less than a word.
        1 | 2 => base(field.place) / 2 + found,
        _ => base(field.place) + 2 * found,
    }
}

const fn base(place: Where) -> u32 {
    match place {
        Where::Title => 30,
        Where::Word => 20,
        Where::Text => 5,
    }
}

/// The best field for a typed word.
fn best<'e>(entry: &'e Entry, typed: Typed<'_>) -> Option<Best<'e>> {
    let scored = entry.fields.iter().map(|field| Best { score: in_field(field, typed), field });
    scored.filter(|b| b.score > 0).reduce(|a, b| if b.score > a.score { b } else { a })
}

fn ranked<'e>(entry: &'e Entry, typed: &[Typed<'_>], phrase: &str) -> Option<(Rank, &'e Entry, Best<'e>)> {
    let found: Vec<Best<'e>> = typed.iter().filter_map(|word| best(entry, *word)).collect();
    let words = found.len();
    let score: u32 = found.iter().map(|b| b.score).sum();
    let by_name = words == typed.len() && found.iter().all(|b| b.field.place > Where::Text);
    let whole = entry.fields.iter().filter_map(|f| phrased(f, phrase).map(|score| Best { score, field: f }));
    let whole = whole.reduce(|a, b| if b.score > a.score { b } else { a });
    let bonus = whole.as_ref().map_or(0, |w| w.score);
    // The line that holds them all tells more than one that holds a word of them.
    let best = found.into_iter().reduce(|a, b| if b.score > a.score { b } else { a })?;
    let best = whole.filter(|w| typed.len() > 1 || w.field.place >= best.field.place).unwrap_or(best);
    Some((Rank { words, grave: entry.grave && by_name, score: score + bonus }, entry, best))
}

/// What the words count as they stand together.
fn phrased(field: &Field, phrase: &str) -> Option<u32> {
    let how = if field.folded == phrase {
        3
    } else if field.folded.starts_with(phrase) {
        2
    } else if phrase.contains(' ') && field.folded.contains(phrase) {
        1
    } else {
        return None;
    };
    // A word must not come before a title by this alone.
    Some(match field.place {
        Where::Title => 5 * how,
        Where::Word => 2 * how,
        Where::Text => 1,
    })
}

fn hit(rank: Rank, entry: &Entry, best: &Best<'_>) -> Hit {
    Hit {
        what: entry.what.clone(),
        title: entry.title.clone(),
        place: best.field.place,
        line: best.field.line.clone(),
        grave: rank.grave,
    }
}
