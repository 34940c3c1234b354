//! A small route, a whole walk over it, and what helps to go on from anywhere.

use std::sync::Arc;

use jiff::civil::date;
use jiff::{SignedDuration, Timestamp};
use rust_decimal::Decimal;
use sendoff::measure::Money;
use sendoff::route::{
    Answers, Ask, Bounds, Caution, Harm, Hazard, Item, Reading, Route, Scale, Signal, Step, Stop, Zone,
};
use sendoff::unit::Station;
use sendoff::walk::{
    Answer, CopyChoice, Decision, Entry, Event, Ink, Licence, LocalTime, Mark, MarkKind, MarkSize, Missing,
    NotRead, NotShown, Person, PersonId, PlanPoint, Refused, Shown, Walk, Who,
};

/// The DANGER cautions of the route, and whether each driver must answer.
pub const DANGERS: [(&str, bool); 2] = [("lp-supply-1", false), ("driving-1", true)];
pub const CAUTIONS: [&str; 6] =
    ["lp-supply-1", "lp-supply-2", "driving-1", "driving-2", "awning-1", "awning-2"];
pub const STEPS: [&str; 5] = ["keys", "lp-supply", "driving", "awning", "leaving"];
pub const READINGS: [&str; 3] = ["house-v", "fuel", "lp-cyl-a"];
pub const ANN: PersonId = PersonId(1);
pub const BO: PersonId = PersonId(2);
pub const CY: PersonId = PersonId(3);

fn caution(id: &str, signal: Signal, ask: Ask, who: Answers) -> Caution {
    let (hazard, harm) = (Hazard::Fire, Harm::Death);
    Caution { id: id.into(), version: 2, signal, hazard, harm, ask, who, demonstrations: Vec::new() }
}

fn step(id: &str, cautions: Vec<Caution>) -> Step {
    Step {
        id: id.into(),
        topic: id.into(),
        place: id.into(),
        station: Station::CurbMid,
        at: None,
        minutes: 2,
        picture: None,
        show: Vec::new(),
        know: Vec::new(),
        figures: Vec::new(),
        readings: Vec::new(),
        cautions,
        notes: Vec::new(),
        kit: false,
        leaving: Vec::new(),
    }
}

fn readings() -> Vec<Reading> {
    let of = |s: &str| Decimal::from_str_exact(s).unwrap();
    let volts = Scale::Number {
        measure: "V".into(),
        step: of("0.1"),
        min: of("10.0"),
        max: of("14.8"),
        least: None,
        most: None,
    };
    let words = ["full", "part", "empty"].map(String::from).to_vec();
    let scales = [volts, Scale::Parts(8), Scale::Choice(words)];
    READINGS
        .iter()
        .zip(scales)
        .map(|(id, scale)| Reading { id: (*id).into(), scale, bounds: Bounds::default() })
        .collect()
}

/// Five steps at four stops: two DANGER cautions, one of them for each driver; readings of every kind; two items;
/// two lines of the leaving check.
pub fn route() -> Arc<Route> {
    use Answers::{EachDriver, Party};
    let mut keys = step("keys", vec![]);
    keys.kit = true;
    let lp = step(
        "lp-supply",
        vec![
            caution("lp-supply-1", Signal::Danger, Ask::Hold, Party),
            caution("lp-supply-2", Signal::Warning, Ask::Hold, Party),
        ],
    );
    let driving = step(
        "driving",
        vec![
            caution("driving-1", Signal::Danger, Ask::Hold, EachDriver),
            caution("driving-2", Signal::Notice, Ask::Read, EachDriver),
        ],
    );
    let mut awning = step(
        "awning",
        vec![
            caution("awning-1", Signal::Notice, Ask::Read, Party),
            caution("awning-2", Signal::Warning, Ask::Demonstrate, Party),
        ],
    );
    awning.readings = readings();
    let mut leaving = step("leaving", vec![]);
    leaving.leaving = vec!["cord".into(), "step".into()];
    let stop = |number, zone, steps| Stop { number, zone, at: None, steps };
    let item = |tag: &str, count| Item { tag: tag.into(), words: tag.into(), count, price: Money::ZERO };
    Arc::new(Route {
        unit: "wren".into(),
        steps: vec![keys, lp, driving, awning, leaving],
        stops: vec![
            stop(1, Zone::Desk, 0..1),
            stop(1, Zone::Outside, 1..3),
            stop(2, Zone::Outside, 3..4),
            stop(1, Zone::Leaving, 4..5),
        ],
        demonstrations: std::collections::BTreeMap::new(),
        items: vec![item("W01", 1), item("W02", 2)],
        meters: 20,
        minutes: 10,
        doublings: Vec::new(),
    })
}

/// Noon in summer, and a minute more for each entry.
pub fn at(minute: i64) -> Timestamp {
    let start: Timestamp = "2026-07-03T16:00:00Z".parse().unwrap();
    start.checked_add(SignedDuration::from_mins(minute)).unwrap()
}

pub fn entry(minute: i64, event: Event) -> Entry {
    Entry { at: at(minute), offset_minutes: -240, event }
}

pub fn began() -> Event {
    Event::Began {
        walk: "t2-000001".into(),
        unit: "wren".into(),
        scripts: "5c".repeat(32),
        tablet: "t2".into(),
        rehearsal: false,
        demo: false,
    }
}

pub fn person(id: PersonId, name: &str, age: u8, driver: bool) -> Person {
    Person { id, name: name.into(), age, driver }
}

/// Two drivers and a child.
pub fn people() -> Vec<Person> {
    vec![person(ANN, "Ann", 41, true), person(BO, "Bo", 39, true), person(CY, "Cy", 9, false)]
}

pub fn licence(person: PersonId) -> Event {
    let licence = Licence { class: "C".into(), country: "US".into(), expiry: date(2028, 5, 31) };
    Event::LicenceSeen { person, licence }
}

pub fn booking() -> Event {
    let due_back = LocalTime { local: date(2026, 7, 8).at(10, 0, 0, 0), offset_minutes: -240 };
    Event::BookingSet { reference: "B-17".into(), nights: 5, due_back }
}

pub fn shown(text: &str) -> Shown {
    Shown { text: text.repeat(32), language: "en-US".into() }
}

pub fn answer(caution: &str, by: PersonId) -> Event {
    let (caution, how) = (caution.to_owned(), Answer::Hold);
    Event::CautionAnswered { caution, version: 2, by, how, shown: shown("ab"), looked_ms: 2400 }
}

pub fn refusal(caution: &str, by: PersonId, decision: Decision) -> Event {
    let (caution, reason) = (caution.to_owned(), "did not say".to_owned());
    Event::CautionRefused { caution, version: 2, by, reason, decision, shown: shown("ab") }
}

pub fn step_shown(step: &str) -> Event {
    Event::StepShown { step: step.into(), language: "en-US".into() }
}

pub fn not_shown(step: &str, reason: NotShown) -> Event {
    Event::StepNotShown { step: step.into(), reason, note: "rain".into() }
}

pub fn reading(id: &str, value: &str) -> Event {
    let measure = if id == "house-v" { "V" } else { "" };
    Event::ReadingTaken { reading: id.into(), value: value.into(), measure: measure.into() }
}

pub fn counted(tag: &str, count: u16) -> Event {
    Event::ItemCounted { tag: tag.into(), count, note: String::new() }
}

pub fn leaving(item: &str, good: bool) -> Event {
    Event::LeavingChecked { item: item.into(), good }
}

pub fn consent(by: PersonId) -> Event {
    Event::ConsentAnswered { by, given: true, shown: shown("cd") }
}

pub fn ink() -> Ink {
    Ink { height: 300, strokes: vec![vec![(20, 200), (300, 90), (410, 220)], vec![(500, 150), (900, 140)]] }
}

pub fn signed(by: Who) -> Event {
    Event::Signed { by, ink: ink() }
}

pub fn seal() -> Event {
    Event::SealBegun { number: 7, previous: Some("0f".repeat(32)) }
}

pub fn stop() -> Event {
    Event::HandoverStopped { reason: "brake lights out".into(), by: Who::Agent }
}

pub fn reopen() -> Event {
    Event::ClosingReopened { reason: "a mark was forgotten".into() }
}

pub fn mark(number: u16) -> Event {
    let (kind, size) = (MarkKind::Scratch, MarkSize::Coin);
    let at = PlanPoint { x: 495, y: 2900 };
    Event::MarkPlaced { mark: Mark { number, at, kind, size, note: "old".into(), by: Who::Agent } }
}

pub fn opening() -> Vec<Event> {
    vec![
        Event::AgentOn { code: "K4".into() },
        Event::ReaderSet { language: "en-US".into(), measures: "us".into() },
        Event::PartySet { people: people() },
        licence(ANN),
        licence(BO),
        Event::PresentSet { people: vec![ANN, BO, CY] },
        Event::ExperienceSet { first_time: true },
        Event::TranslatorSet { role: String::new() },
        booking(),
        Event::Opened,
    ]
}

pub fn round() -> Vec<Event> {
    vec![
        step_shown("keys"),
        counted("W01", 1),
        counted("W02", 2),
        step_shown("lp-supply"),
        answer("lp-supply-1", ANN),
        answer("lp-supply-2", BO),
        step_shown("driving"),
        answer("driving-1", ANN),
        answer("driving-2", ANN),
        answer("driving-1", BO),
        answer("driving-2", BO),
        step_shown("awning"),
        reading("house-v", "12.7"),
        reading("fuel", "7/8"),
        reading("lp-cyl-a", "full"),
        answer("awning-1", ANN),
        answer("awning-2", ANN),
        mark(1),
        step_shown("leaving"),
        leaving("cord", true),
        leaving("step", true),
        consent(ANN),
    ]
}

pub fn signing() -> Vec<Event> {
    vec![
        signed(Who::Person(ANN)),
        signed(Who::Person(BO)),
        signed(Who::Agent),
        Event::CopyOffered,
        Event::CopyChosen { choice: CopyChoice::Slip },
        seal(),
    ]
}

/// Entries of these events, a minute apart.
pub fn entries(events: impl IntoIterator<Item = Event>) -> Vec<Entry> {
    events.into_iter().zip(0..).map(|(event, minute)| entry(minute, event)).collect()
}

/// All entries of a walk that is handed over, the seal included.
pub fn whole() -> Vec<Entry> {
    entries([began()].into_iter().chain(opening()).chain(round()).chain(signing()))
}

/// A walk after these events.
pub fn after(events: impl IntoIterator<Item = Event>) -> Walk {
    Walk::replay(route(), &entries([began()].into_iter().chain(events))).unwrap()
}

/// A walk that is open.
pub fn opened() -> Walk {
    after(opening())
}

/// A walk in which all is said and nobody has signed.
pub fn said() -> Walk {
    after(opening().into_iter().chain(round()))
}

/// Applies an event a minute after the last one.
pub fn happen(walk: &mut Walk, event: Event) -> Result<(), Refused> {
    let at = walk.last_at().checked_add(SignedDuration::from_mins(1)).unwrap();
    walk.apply(&Entry { at, offset_minutes: -240, event })
}

/// Applies events that must be accepted.
pub fn all(walk: &mut Walk, events: impl IntoIterator<Item = Event>) {
    for event in events {
        let told = format!("{event:?}");
        happen(walk, event).unwrap_or_else(|refused| panic!("{told}: {refused}"));
    }
}

/// Why an event is refused. The walk must be as it was, and the reason must have a key and words.
pub fn why_not(walk: &mut Walk, event: Event) -> Refused {
    let before = walk.clone();
    let told = format!("{event:?}");
    let refused = happen(walk, event).expect_err(&told);
    assert_eq!(before, *walk, "{told} was refused and changed something");
    assert!(refused.key().starts_with("refused-"), "{refused:?}");
    assert!(!refused.to_string().is_empty());
    refused
}

/// What makes a missing thing good.
pub fn remedy(walk: &Walk, missing: &Missing) -> Event {
    match missing {
        Missing::Agent => Event::AgentOn { code: "K4".into() },
        Missing::Reader => Event::ReaderSet { language: "en-US".into(), measures: "us".into() },
        Missing::Party => Event::PartySet { people: people() },
        Missing::Licence { person } | Missing::LicenceTooShort { person, .. } => {
            let expiry = date(2050, 1, 1);
            let licence = Licence { class: "C".into(), country: "US".into(), expiry };
            Event::LicenceSeen { person: *person, licence }
        }
        Missing::Present => Event::PresentSet { people: walk.people().iter().map(|p| p.id).collect() },
        Missing::Experience => Event::ExperienceSet { first_time: true },
        Missing::Booking => booking(),
        Missing::Opened => Event::Opened,
        Missing::Step { step } => step_shown(step),
        Missing::Answer { caution, by, .. } => {
            let adult = walk.adults().next().map_or(ANN, |p| p.id);
            answer(caution, by.unwrap_or(adult))
        }
        Missing::AnswerKept { caution, by, .. } => answer(caution, *by),
        Missing::Reading { reading, .. } => {
            let (reading, reason, note) = (reading.clone(), NotRead::Broken, String::new());
            Event::ReadingNotTaken { reading, reason, note }
        }
        Missing::Item { tag } => counted(tag, 1),
        Missing::Leaving { item, .. } | Missing::LeavingNotGood { item, .. } => leaving(item, true),
        Missing::Consent => consent(walk.adults().next().map_or(ANN, |p| p.id)),
        Missing::Signature { by } => signed(*by),
        Missing::SignatureKept { by } => signed(Who::Person(*by)),
        Missing::CopyOffered => Event::CopyOffered,
        Missing::CopyChoice => Event::CopyChosen { choice: CopyChoice::Slip },
    }
}
