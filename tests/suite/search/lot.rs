//! Forty records of an invented lot, as rows for an index, from one record that was really made.

use std::sync::{LazyLock, Mutex, MutexGuard, PoisonError};

use jiff::{SignedDuration, Timestamp};
use sendoff::archive::index::{Draft, Index, RecordRow, Source, Verified};
use sendoff::ports::fake::MemoryDisk;
use sendoff::record::form::{Handoff, Person, Record, Said, StepOutcome};
use sendoff::record::seal::{Digest, Kind};

use crate::record::support::{Led, Ways};

/// Two people each: who hires, and who comes along.
pub const NAMES: [(&str, &str); 20] = [
    ("Jürgen Müller", "Anna Müller"),
    ("Robin Vale", "Sam Vale"),
    ("Valentina Robinson", ""),
    ("王小明", "李娜"),
    ("Søren Ærø", "Łukasz Þorn"),
    ("Élodie D'Arbois", "Zoë Straße"),
    ("Hana Nováková", "Petr Novák"),
    ("佐藤 花子", "さとう"),
    ("Mary-Jane O'Keel", "Ann"),
    ("Ivo Hoffmann", ""),
    ("R. Tagg", "Bo Li"),
    ("Nguyễn Văn An", ""),
    ("Αλέξης Γεωργίου", ""),
    ("Ольга Соколова", ""),
    ("김민준", ""),
    ("José Peña", "Inés Peña"),
    ("Robina Valeska", ""),
    ("Quentin \"Q\" Marsh", ""),
    ("Dale Robin", "Vale Okoro"),
    ("Ayşe Yıldız", "İpek Yıldız"),
];

pub static BASE: LazyLock<Handoff> = LazyLock::new(|| Led::whole(Ways::default()).record());
static REFUSED: LazyLock<Handoff> =
    LazyLock::new(|| Led::whole(Ways { refused: Some("lp-supply-2"), ..Ways::default() }).record());

/// When record `n` was sealed: one a day, at nine in the evening on the wall, six hours behind UTC.
pub fn sealed(n: u32) -> Timestamp {
    let first: Timestamp = "2026-05-02T03:00:00Z".parse().unwrap();
    first.checked_add(SignedDuration::from_hours(24 * i64::from(n))).unwrap()
}

pub fn source(n: u32) -> Source {
    let id = format!("t2-5f3a9c-{:06}", n + 1);
    let month = sealed(n).strftime("%Y/%m").to_string();
    // They came in three lots, the last ones first.
    let days = i64::from((2 - n % 3) * 10 + 60);
    Source {
        path: format!("records/{month}/{id}.zip"),
        id: id.parse().unwrap(),
        received: Some(sealed(0).checked_add(SignedDuration::from_hours(24 * days)).unwrap()),
    }
}

/// Record `n` of the lot, from 0.
pub fn handoff(n: u32) -> Handoff {
    let mut record = if n % 10 == 4 { REFUSED.clone() } else { BASE.clone() };
    let (first, second) = NAMES[n as usize % NAMES.len()];
    let person = |number, name: &str| Person {
        number,
        name: name.into(),
        age: 40,
        driver: true,
        present: true,
        licence: None,
    };
    record.party.people = vec![person(1, first), person(2, second)];
    record.head.id = source(n).id;
    record.head.number = n + 1;
    record.head.sealed = sealed(n);
    record.opening.booking.as_mut().unwrap().reference = format!("MW-{}", 1000 + n);
    record.agents[0].code = if n.is_multiple_of(2) { "A7" } else { "B2" }.into();
    if n % 5 == 1 {
        record.unit.id = "plover".into();
        record.unit.name = "Plover".into();
    }
    if n % 4 == 3 {
        record.reader.language = "de-DE".into();
    }
    if n == 12 {
        record.marks[0].note = "Scrape beside the kingfisher decal.".into();
        record.questions[0].text = "Who pays for a lost gas cap?".into();
        record.items[0].counted.as_mut().unwrap().count = 0;
    }
    record
}

pub fn verified(n: u32, kind: Kind) -> Verified {
    Verified { digest: Digest::of(&n.to_le_bytes()), kind, sealed: sealed(n) }
}

pub fn row(n: u32) -> RecordRow {
    match n {
        37 => RecordRow::bad(source(n), "file-changed"),
        // Of a newer program: its outside is known and nothing else.
        38 => RecordRow::good(source(n), verified(n, Kind::CheckIn), None),
        _ => {
            let record = Record::Handoff(Box::new(handoff(n)));
            let kind = if n == 39 { Kind::Rehearsal } else { Kind::Handoff };
            RecordRow::good(source(n), verified(n, kind), Some(&record))
        }
    }
}

/// An index in memory of the records `all`, added in that order.
pub fn index(all: impl IntoIterator<Item = u32>) -> Index {
    let mut draft = Draft::in_memory().unwrap();
    for n in all {
        draft.add(row(n)).unwrap();
    }
    draft.finish(&MemoryDisk::default(), "nowhere".as_ref()).unwrap()
}

static INDEX: LazyLock<Mutex<Index>> = LazyLock::new(|| Mutex::new(index(0..40)));

/// The index of all forty, added oldest first.
pub fn the_index() -> MutexGuard<'static, Index> {
    INDEX.lock().unwrap_or_else(PoisonError::into_inner)
}

/// The caution that was refused, and one of the step that was not shown.
pub fn cautions() -> (String, String) {
    let refused = REFUSED
        .route
        .steps
        .iter()
        .flat_map(|s| &s.cautions)
        .find(|c| c.responses.iter().any(|r| matches!(r.said, Said::Refused { .. })))
        .map(|c| c.id.clone());
    let unseen = BASE
        .route
        .steps
        .iter()
        .filter(|s| matches!(s.outcome, StepOutcome::NotShown { .. }))
        .flat_map(|s| &s.cautions)
        .find(|c| c.responses.is_empty())
        .map(|c| c.id.clone());
    (refused.unwrap(), unseen.unwrap())
}
