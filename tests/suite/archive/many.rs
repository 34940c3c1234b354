//! Makes many sealed records fast: several tablets and agents, languages, three years. Each is filled from a record
//! that was really led and built, and sealed with the real code and a throw-away key.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock};

use jiff::{SignedDuration, Timestamp};
use sendoff::ports::{Access, Disk};
use sendoff::record::form::{self, Record};
use sendoff::record::keys::{TabletKey, allowed_signers_line};
use sendoff::record::seal::{Digest, Kind, RecordId, Sealed, Sealing, record_id, seal};
use sendoff::record::text::render;
use sendoff::walk::{Event, Who};

use crate::record::amending;
use crate::record::support::{Led, NUMBER, SCRIPTS, Ways, ink, previous};
use crate::seal::{Payload, key, t2, time};
use crate::search::lot::NAMES;

const AGENTS: [&str; 7] = ["A7", "B2", "C11", "D4", "E9", "F30", "G5"];
const LANGUAGES: [&str; 5] = ["en-US", "de-DE", "es-MX", "fr-CA", "ja-JP"];
/// One record in so many has the size of a real one; the others tell of a few steps only.
pub const WHOLE: u32 = 200;
/// The first record of every tablet, and how long the last is after it.
pub const START: &str = "2023-03-01T15:00:00Z";
const SECONDS: i64 = 3 * 365 * 86_400;

/// What differs from record to record, as it stands in the record that all are made from.
static SLOTS: LazyLock<Vec<String>> = LazyLock::new(|| {
    let (before, amended) = (previous(), Digest::of(b"the record it amends"));
    vec![
        record_id("t2", t2().public(), NUMBER).to_string(),
        "t2-w-000123".into(),
        "\"tablet\": \"t2\"".into(),
        format!("\"number\": {NUMBER}"),
        format!("\"previous\": \"{before}\""),
        before.to_string(),
        "2026-07-24T22:10:00Z".into(),
        "Robin Vale".into(),
        "Sam Vale".into(),
        "MW-1042".into(),
        "en-US".into(),
        "\"code\": \"A7\"".into(),
        "\"agent\": \"A7\"".into(),
        "t2-5f3a9c-000122".into(),
        amended.to_string(),
    ]
});

enum Piece {
    Text(String),
    Slot(usize),
}

/// A payload with gaps.
struct Template(BTreeMap<String, Vec<Piece>>);

impl Template {
    fn new(payload: &Payload) -> Self {
        let text = |bytes: &Vec<u8>| cut(std::str::from_utf8(bytes).unwrap());
        Self(payload.iter().map(|(name, bytes)| (name.clone(), text(bytes))).collect())
    }

    fn fill(&self, values: &[String]) -> Payload {
        let filled = |(name, pieces): (&String, &Vec<Piece>)| {
            let mut bytes = Vec::new();
            for piece in pieces {
                match piece {
                    Piece::Text(text) => bytes.extend_from_slice(text.as_bytes()),
                    Piece::Slot(slot) if name.ends_with(".json") && (7..10).contains(slot) => {
                        let quoted = serde_json::to_string(&values[*slot]).unwrap();
                        bytes.extend_from_slice(quoted.trim_matches('"').as_bytes());
                    }
                    Piece::Slot(slot) => bytes.extend_from_slice(values[*slot].as_bytes()),
                }
            }
            (name.clone(), bytes)
        };
        self.0.iter().map(filled).collect()
    }
}

fn cut(text: &str) -> Vec<Piece> {
    let slots = SLOTS.iter().enumerate();
    let mut found: Vec<(usize, usize)> =
        slots.flat_map(|(slot, needle)| text.match_indices(needle).map(move |(at, _)| (at, slot))).collect();
    found.sort_unstable();
    let (mut pieces, mut done) = (Vec::new(), 0);
    for (at, slot) in found.into_iter().filter(|(at, slot)| !(*slot == 5 && text[..*at].ends_with('"'))) {
        pieces.push(Piece::Text(text[done..at].to_owned()));
        pieces.push(Piece::Slot(slot));
        done = at + SLOTS[slot].len();
    }
    pieces.push(Piece::Text(text[done..].to_owned()));
    pieces
}

/// The handoff told with a few steps only, so that ten thousand of them fit on a disk.
fn short(payload: &Payload) -> Payload {
    let Record::Handoff(mut record) = form::read(&payload["data/record.json"]).unwrap() else { panic!() };
    record.route.steps.truncate(2);
    record.figures.truncate(1);
    record.facts.truncate(5);
    record.readings.truncate(2);
    record.items.truncate(2);
    record.leaving.truncate(1);
    record.unit.places.truncate(1);
    record.unit.loads.truncate(1);
    record.unit.night.truncate(1);
    record.unit.seats.truncate(1);
    record.unit.rooms.truncate(1);
    let json = form::write(&*record).unwrap();
    let text = render(&Record::Handoff(record), &SCRIPTS.words).into_bytes();
    let mut short = payload.clone();
    short.extend([("data/record.json".into(), json), ("data/record.txt".into(), text)]);
    short
}

/// A walk that ended at the desk.
fn stopped() -> Led {
    let mut led = Led::begin(Ways::default());
    led.before_open();
    led.say(Event::HandoverStopped { reason: "Licence left at home.".into(), by: Who::Agent });
    led.say(Event::Signed { by: Who::Agent, ink: ink() });
    led.begin_seal();
    led
}

static TEMPLATES: LazyLock<BTreeMap<&'static str, Template>> = LazyLock::new(|| {
    let led = |ways| Led::whole(ways).contents().unwrap().payload;
    let whole = led(Ways::default());
    let refused = led(Ways { refused: Some("lp-supply-2"), left_out: None, ..Ways::default() });
    let payloads = [
        ("short", short(&whole)),
        ("short-refused", short(&refused)),
        ("whole", whole),
        ("stopped", short(&stopped().contents().unwrap().payload)),
        ("rehearsal", led(Ways { rehearsal: true, ..Ways::default() })),
        ("amendment", amending::contents(&amending::amending()).unwrap().payload),
    ];
    payloads.iter().map(|(name, payload)| (*name, Template::new(payload))).collect()
});

/// A sealed record, without its bytes.
#[derive(Debug, Clone)]
pub struct Made {
    pub id: RecordId,
    pub digest: Digest,
    pub kind: Kind,
    pub sealed: Timestamp,
}

impl Made {
    /// Where it lies in an archive.
    pub fn place(&self) -> String {
        sendoff::archive::place_of(&self.id, self.sealed)
    }
}

/// A tablet that seals a chain of records spread over three years.
pub struct Tablet {
    pub name: String,
    pub key: TabletKey,
    pub count: u32,
    last: Option<Made>,
}

impl Tablet {
    pub fn new(name: &str, seed: u8, count: u32) -> Self {
        Self { name: name.to_owned(), key: key(seed, name), count, last: None }
    }

    /// Its line in the list of tablets.
    pub fn line(&self) -> String {
        allowed_signers_line(self.key.public(), &self.name, time("2023-01-01T00:00:00Z"))
    }

    /// The next record of its chain.
    pub fn next(&mut self) -> (Made, Vec<u8>) {
        let number = self.last.as_ref().map_or(1, |last| last.id.number() + 1);
        let kind = match number % 20 {
            7 => Kind::NotHandedOver,
            13 => Kind::Amendment,
            _ => Kind::Handoff,
        };
        let after = SECONDS * i64::from(number) / i64::from(self.count + 1);
        let offset = i64::from(self.name.bytes().map(u32::from).sum::<u32>() % 600) * 60;
        let sealed = time(START) + SignedDuration::from_secs(after + offset);
        let (made, zip) = self.seal(number, self.last.as_ref(), kind, sealed);
        self.last = Some(made.clone());
        (made, zip)
    }

    /// Any record by its key, behind any other.
    pub fn seal(&self, number: u32, before: Option<&Made>, kind: Kind, sealed: Timestamp) -> (Made, Vec<u8>) {
        let id = record_id(&self.name, self.key.public(), number);
        let payload = template(number, kind).fill(&values(&id, before, sealed));
        let what = Sealing {
            tablet: &self.name,
            number,
            previous: before.map(|made| made.digest),
            kind,
            organization: "Quillfeather Motorhome Hire",
            sealed,
        };
        let Sealed { id, zip, digest } = seal(&what, &payload, &self.key).unwrap();
        (Made { id, digest, kind, sealed }, zip)
    }
}

fn template(number: u32, kind: Kind) -> &'static Template {
    let name = match kind {
        Kind::Handoff if number.is_multiple_of(WHOLE) => "whole",
        Kind::Handoff if number % 10 == 4 => "short-refused",
        Kind::NotHandedOver => "stopped",
        Kind::Amendment => "amendment",
        Kind::Rehearsal => "rehearsal",
        Kind::Handoff | Kind::CheckIn => "short",
    };
    &TEMPLATES[name]
}

fn values(id: &RecordId, before: Option<&Made>, sealed: Timestamp) -> Vec<String> {
    let mix = id.to_string().bytes().fold(7_usize, |mix, b| mix.wrapping_mul(31).wrapping_add(b.into()));
    let (first, second) = NAMES[mix % NAMES.len()];
    let agent = AGENTS[mix / 20 % AGENTS.len()];
    let digest = before.map_or_else(|| Digest::of(b"none").to_string(), |made| made.digest.to_string());
    vec![
        id.to_string(),
        format!("{}-w-{:06}", id.tablet(), id.number()),
        format!("\"tablet\": \"{}\"", id.tablet()),
        format!("\"number\": {}", id.number()),
        before
            .map_or_else(|| "\"previous\": null".into(), |made| format!("\"previous\": \"{}\"", made.digest)),
        before.map_or_else(|| "None; it is the first of this tablet.".into(), |made| made.digest.to_string()),
        sealed.to_string(),
        first.into(),
        if second.is_empty() { "Kay Lind".into() } else { second.into() },
        booking(id),
        LANGUAGES[mix / 200 % LANGUAGES.len()].into(),
        format!("\"code\": \"{agent}\""),
        format!("\"agent\": \"{agent}\""),
        before.map_or_else(|| id.to_string(), |made| made.id.to_string()),
        digest,
    ]
}

/// What the booking of a record is called.
pub fn booking(id: &RecordId) -> String {
    format!("{}-{}", id.tablet().to_uppercase(), 10_000 + id.number())
}

/// Puts bytes under a name, whatever stood there.
pub fn put(disk: &dyn Disk, path: &Path, bytes: &[u8]) {
    disk.make_dir(path.parent().unwrap()).unwrap();
    disk.replace(path, bytes, Access::Usual).unwrap();
}

/// The half-year in which a record was sealed, from 0: records come in by the half-year.
pub fn half_year(made: &Made) -> i64 {
    (made.sealed.as_second() - time(START).as_second()) / (SECONDS / 6)
}

/// Lets all tablets seal, on all cores, onto sticks `<root>/stick/<half-year>`.
pub fn fill_sticks(disk: &Arc<dyn Disk>, root: &Path, tablets: &mut [Tablet]) -> Vec<Made> {
    let one = |tablet: &mut Tablet| -> Vec<Made> {
        let sealed = (0..tablet.count).map(|_| {
            let (made, zip) = tablet.next();
            put(disk.as_ref(), &on_stick(root, &made), &zip);
            made
        });
        sealed.collect()
    };
    let queue = std::sync::Mutex::new(tablets.iter_mut().collect::<Vec<_>>());
    let made = std::sync::Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..std::thread::available_parallelism().map_or(1, usize::from) {
            scope.spawn(|| {
                loop {
                    let Some(tablet) = queue.lock().unwrap().pop() else { break };
                    let sealed = one(tablet);
                    made.lock().unwrap().extend(sealed);
                }
            });
        }
    });
    let mut made = made.into_inner().unwrap();
    made.sort_by_key(|made| made.id.to_string());
    made
}

pub fn on_stick(root: &Path, made: &Made) -> PathBuf {
    root.join(format!("stick/{}/{}.zip", half_year(made), made.id))
}

#[test]
fn made_records_are_whole_and_say_what_they_should() {
    let mut tablet = Tablet::new("b1", 21, 60);
    let mut before: Option<Made> = None;
    for number in 1..=60 {
        let (made, zip) = tablet.next();
        let entries = sendoff::record::zip::read(&zip).unwrap();
        let json = entries.iter().find(|e| e.name.ends_with("/data/record.json")).unwrap();
        let record = form::read(json.bytes).unwrap();
        let head = record.head();
        assert_eq!((head.id.to_string(), head.number, head.kind), (made.id.to_string(), number, made.kind));
        assert_eq!((head.sealed, head.previous), (made.sealed, before.as_ref().map(|made| made.digest)));
        let text = std::str::from_utf8(json.bytes).unwrap();
        let left = ["MW-1042", "t2-w-000123", "5f3a9c"].map(|old| text.contains(old));
        assert_eq!(left, [false; 3]);
        // Amendments are small as they are.
        assert!((5_000..40_000).contains(&zip.len()), "{number}: {}", zip.len());
        before = Some(made);
    }
    let (_, whole) = tablet.seal(WHOLE, before.as_ref(), Kind::Handoff, time("2026-03-01T15:00:00Z"));
    assert!(whole.len() > 400_000, "{}", whole.len());
}
