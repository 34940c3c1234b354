//! Finding among 100,000 records as one types, against the bare full-text query in the same run; how fast the index is
//! made, how long it takes to open, how large it is.
//!
//! The floor is the query that SQLite's full-text table must answer whatever stands around it: the same words as
//! beginnings of words, the newest fifty keys. Bars: p99 at most 1.5 times the floor, and under 20 ms.
//! Rows are made from one record that was played and sealed; number of records: the first argument that is one.
#![allow(missing_docs, reason = "a bench is a program")]
#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    clippy::unreachable,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a bench prints, reads what it made, and may stop"
)]

use std::collections::BTreeMap;
use std::hint::black_box;
use std::path::Path;
use std::sync::OnceLock;
use std::time::{Duration, Instant};

use clap::Parser as _;
use jiff::{SignedDuration, Timestamp};
use rusqlite::{Connection, OpenFlags};
use sendoff::archive::index::{Answered, Draft, Index, Query, RecordRow, Sort, Source, Verified};
use sendoff::commands::{self, Cli, Console, Task};
use sendoff::ports::system::{self, SystemDisk};
use sendoff::record::form::{self, Handoff, Record};
use sendoff::record::seal::{Digest, Kind};
use sendoff::record::zip;

const FIRST: [&str; 40] = [
    "Robin",
    "Sam",
    "Jürgen",
    "Élodie",
    "Hana",
    "Ivo",
    "Mary",
    "José",
    "Nadia",
    "Petr",
    "Zoë",
    "Ann",
    "Bo",
    "Quentin",
    "Søren",
    "Łukasz",
    "Ayşe",
    "Valentina",
    "Dale",
    "Inés",
    "Olga",
    "Alexis",
    "Mina",
    "Tomás",
    "Greta",
    "Otto",
    "Lena",
    "Pavel",
    "Rosa",
    "Emil",
    "Ida",
    "Noah",
    "Mia",
    "Karl",
    "Nora",
    "Anton",
    "Vera",
    "Oskar",
    "Lucia",
    "Max",
];
const LAST: [&str; 32] = [
    "Vale", "Müller", "Novák", "Hoffmann", "Tagg", "Peña", "Marsh", "Okoro", "Ærø", "Thorn", "Straße",
    "O'Keel", "Robinson", "Valeska", "Yıldız", "Sokolova", "Lind", "Berg", "Castel", "Dunn", "Engel",
    "Farrow", "Gale", "Holm", "Iris", "Jonas", "Keller", "Lorne", "Moss", "Nagy", "Orr", "Pike",
];
/// What a clerk types, key by key.
const TYPED: [&str; 12] = [
    "robin vale",
    "müller",
    "hoffmann karl",
    "mw-10423",
    "okoro",
    "awning",
    "vent gas",
    "gale plover",
    "sokolova 2024-05",
    "t2-5f3a9c-000777",
    "scratch above the bay",
    "zoe strasse awning",
];
const ROUNDS: usize = 7;

/// One record of a whole handoff, as it is sealed.
fn played() -> Handoff {
    static PLAYED: OnceLock<Handoff> = OnceLock::new();
    PLAYED.get_or_init(play).clone()
}

fn play() -> Handoff {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().to_str().unwrap();
    let line = ["sendoff", "rehearse", "--unit", "wren", "--at", "2026-07-24T15:00:00Z", "--out", out];
    let Task::Command(command) = Cli::try_parse_from(line).unwrap().task() else { unreachable!() };
    let mut console = Console::new(Box::new(std::io::sink()), Box::new(std::io::stderr()));
    assert_eq!(commands::run(&command, &system::ports(), &[], &mut console), commands::GOOD);
    let records = dir.path().join("records");
    let file = std::fs::read_dir(records).unwrap().next().unwrap().unwrap().path();
    let bytes = std::fs::read(file).unwrap();
    println!("one record: {} kB", bytes.len() / 1000);
    let entries = zip::read(&bytes).unwrap();
    let json = entries.iter().find(|e| e.name.ends_with("/data/record.json")).unwrap();
    let start = Instant::now();
    let record = form::read(json.bytes).unwrap();
    println!("its form read in {:?}", start.elapsed());
    let Record::Handoff(handoff) = record else { unreachable!() };
    *handoff
}

/// Record `n`: other people, booking, unit, day; a few refuse or are not shown something.
fn row(n: usize, record: &mut Record) -> RecordRow {
    let mix = n.wrapping_mul(2_654_435_761) >> 7;
    let Record::Handoff(one) = record else { unreachable!() };
    let first: Timestamp = "2023-03-01T16:00:00Z".parse().unwrap();
    let sealed = first + SignedDuration::from_secs(i64::try_from(n).unwrap() * 1_100);
    let units = ["wren", "plover", "heron", "dunlin", "siskin", "tern", "rail", "crake", "ruff", "smew"];
    one.unit.id = units[mix % 10].to_owned();
    one.unit.name = one.unit.id.clone();
    let names = [
        format!("{} {}", FIRST[mix % 40], LAST[mix / 40 % 32]),
        format!("{} {}", FIRST[mix / 7 % 40], LAST[mix / 11 % 32]),
    ];
    for (person, name) in one.party.people.iter_mut().zip(names) {
        person.name = name;
    }
    if let Some(booking) = &mut one.opening.booking {
        booking.reference = format!("MW-{}", 10_000 + n);
    }
    // Each unit has texts of its own, since figures stand in them.
    for caution in one.route.steps.iter_mut().flat_map(|s| &mut s.cautions) {
        for text in &mut caution.texts {
            let harm = text.harm.split(" (").next().unwrap().to_owned();
            text.harm = format!("{harm} ({})", one.unit.id);
        }
    }
    one.agents[0].code = format!("A{}", mix % 25);
    let id = format!("t2-5f3a9c-{:06}", n + 1);
    let source = Source {
        path: format!("records/{}/{id}.zip", sealed.strftime("%Y/%m")),
        id: id.parse().unwrap(),
        received: Some(sealed + SignedDuration::from_hours(30)),
    };
    let verified = Verified { digest: Digest::of(&n.to_le_bytes()), kind: Kind::Handoff, sealed };
    RecordRow::good(source, verified, Some(record))
}

fn make(path: &Path, count: usize) -> Index {
    let mut record = Record::Handoff(Box::new(played()));
    let start = Instant::now();
    let mut taking = Duration::ZERO;
    let mut draft = Draft::new(&SystemDisk, path).unwrap();
    for n in 0..count {
        let one = Instant::now();
        let row = row(n, &mut record);
        taking += one.elapsed();
        draft.add(row).unwrap();
    }
    let index = draft.finish(&SystemDisk, path).unwrap();
    let writing = start.elapsed().saturating_sub(taking);
    let each = |time: Duration| f64::from(u32::try_from(count).unwrap()) / time.as_secs_f64();
    println!(
        "index of {count} records: rows taken from forms {:.0}/s, written {:.0}/s",
        each(taking),
        each(writing)
    );
    println!("size {} MB", std::fs::metadata(path).unwrap().len() / 1_000_000);
    index
}

/// Median and 99th percentile.
fn spread(times: &mut [Duration]) -> (Duration, Duration) {
    times.sort_unstable();
    (times[times.len() / 2], times[times.len() * 99 / 100])
}

/// The bare query: words as beginnings, in one table, newest fifty keys.
fn bare(connection: &Connection, words: &str) -> usize {
    let each: Vec<String> = words.split_whitespace().map(|w| format!("\"{w}\"*")).collect();
    let mut query = connection
        .prepare_cached("SELECT rowid FROM found WHERE found MATCH ?1 ORDER BY rowid LIMIT 50")
        .unwrap();
    query.query_map([each.join(" AND ")], |row| row.get::<_, i64>(0)).unwrap().count()
}

/// The bare query in the order that the full-text table itself gives: by how often and how near words stand.
fn by_rank(connection: &Connection, words: &str) -> usize {
    let each: Vec<String> = words.split_whitespace().map(|w| format!("\"{w}\"*")).collect();
    let mut query = connection
        .prepare_cached("SELECT rowid FROM found WHERE found MATCH ?1 ORDER BY rank LIMIT 50")
        .unwrap();
    query.query_map([each.join(" AND ")], |row| row.get::<_, i64>(0)).unwrap().count()
}

/// The fastest of all rounds for one keystroke, so that what else the machine does is left out.
#[derive(Debug, Clone, Copy)]
struct Fastest {
    ours: Duration,
    bare: Duration,
    /// Whether the bare query finds as much: if not, the words stand in texts that it does not know.
    alike: bool,
}

fn typing(index: &Index, connection: &Connection) {
    let begun = |text: &str| -> Vec<String> {
        let all: Vec<char> = text.chars().collect();
        (1..=all.len()).map(|n| all[..n].iter().collect()).collect()
    };
    let keys: Vec<String> = TYPED.iter().flat_map(|text| begun(text)).collect();
    let (mut floor, mut ranked, mut ours) = (Vec::new(), Vec::new(), Vec::new());
    let mut fastest: BTreeMap<&str, Fastest> = BTreeMap::new();
    for round in 0..ROUNDS {
        for words in &keys {
            let query = Query::words(words);
            let start = Instant::now();
            let hits = black_box(index.search(&query, None, 50).unwrap()).hits.len();
            let took = start.elapsed();
            let start = Instant::now();
            let found = black_box(bare(connection, words));
            let bare = start.elapsed();
            // By rank everything is read; once is enough.
            let start = Instant::now();
            if round == 1 {
                black_box(by_rank(connection, words));
                ranked.push(start.elapsed());
            }
            // The first round fills the caches.
            if round > 0 {
                ours.push(took);
                floor.push(bare);
                let new = Fastest { ours: took, bare, alike: found == hits };
                let best = fastest.entry(words).or_insert(new);
                *best = Fastest { ours: best.ours.min(took), bare: best.bare.min(bare), ..new };
            }
        }
    }
    let (p50, p99) = spread(&mut ours);
    let (bare50, bare99) = spread(&mut floor);
    let (rank50, rank99) = spread(&mut ranked);
    println!("{} keystrokes: p50 {p50:?}, p99 {p99:?} (bar 20 ms)", ours.len());
    println!(
        "bare query, newest first: p50 {bare50:?}, p99 {bare99:?}; by rank: p50 {rank50:?}, p99 {rank99:?}"
    );
    let ratio = |a: Duration, b: Duration| a.as_secs_f64() / b.as_secs_f64();
    println!(
        "p99 ratio {:.2} to newest first, {:.2} to by rank (bar 1.5)",
        ratio(p99, bare99),
        ratio(p99, rank99)
    );
    let alike = || fastest.values().filter(|one| one.alike);
    let (_, p99) = spread(&mut alike().map(|one| one.ours).collect::<Vec<_>>());
    let (_, bare99) = spread(&mut alike().map(|one| one.bare).collect::<Vec<_>>());
    println!(
        "the {} that the bare query answers too, fastest of {} rounds: p99 {p99:?}, bare {bare99:?}, ratio {:.2}",
        alike().count(),
        ROUNDS - 1,
        ratio(p99, bare99)
    );
    let mut slow: Vec<(&str, Fastest)> = fastest.into_iter().collect();
    slow.sort_by_key(|(_, one)| std::cmp::Reverse(one.ours));
    for (words, one) in slow.iter().take(8) {
        println!(
            "  {words:?}: {:?}, bare {:?}{}",
            one.ours,
            one.bare,
            if one.alike { "" } else { ", finds less" }
        );
    }
}

fn others(index: &Index) {
    let some = |text: &str| Some(text.to_owned());
    let queries = [
        ("nothing asked", Query::default()),
        ("unit", Query { unit: some("smew"), ..Query::default() }),
        ("refused", Query { answer: Some(Answered::Refused), ..Query::default() }),
        ("by renter", Query { sort: Sort::Renter, ..Query::default() }),
        ("awning by renter", Query { sort: Sort::Renter, ..Query::words("awning") }),
        ("okoro by unit", Query { sort: Sort::Unit, ..Query::words("okoro") }),
        ("no such word", Query::words("xyzzyx")),
        ("the", Query::words("the")),
    ];
    for (name, query) in queries {
        let mut times = Vec::new();
        let mut counting = Vec::new();
        for _ in 0..ROUNDS {
            let start = Instant::now();
            black_box(index.search(&query, None, 50).unwrap());
            times.push(start.elapsed());
            let start = Instant::now();
            black_box(index.count(&query, 1_000).unwrap());
            counting.push(start.elapsed());
        }
        println!("{name}: page {:?}, counted to 1,000 {:?}", spread(&mut times).0, spread(&mut counting).0);
    }
    let start = Instant::now();
    let (mut pages, mut after) = (0, None);
    while pages < 200 {
        let page = index.search(&Query::words("awning"), after.as_ref(), 50).unwrap();
        pages += 1;
        after = page.next;
        if after.is_none() {
            break;
        }
    }
    println!("{pages} pages one after another: {:?} each", start.elapsed() / pages);
}

fn main() {
    let count = std::env::args().find_map(|arg| arg.parse().ok()).unwrap_or(100_000);
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("index.sqlite");
    let index = make(&path, count);
    let bare = Connection::open_with_flags(&path, OpenFlags::SQLITE_OPEN_READ_ONLY).unwrap();
    bare.execute_batch("PRAGMA cache_size = -32768").unwrap();
    typing(&index, &bare);
    others(&index);
    drop(index);
    let start = Instant::now();
    let index = Index::open(&SystemDisk, &path).unwrap();
    let opened = start.elapsed();
    black_box(index.search(&Query::words("vale"), None, 50).unwrap());
    println!(
        "opened, and every byte of it read, in {opened:?}; first answer {:?} later",
        start.elapsed() - opened
    );
    let (index, few) = add(index, &path, count, 20);
    let (index, _) = add(index, &path, count + 20, 1_940);
    let (index, many) = add(index, &path, count + 1_960, 20);
    println!("20 records added in {few:?}; beside 1,960 that were added before in {many:?}");
    typing(&index, &bare);
}

/// Adds records from the `from`th on; their rows are made before the clock starts.
fn add(index: Index, path: &Path, from: usize, count: usize) -> (Index, Duration) {
    let mut record = Record::Handoff(Box::new(played()));
    let rows: Vec<RecordRow> = (from..from + count).map(|n| row(n, &mut record)).collect();
    let start = Instant::now();
    let mut draft = Draft::of(&index, &SystemDisk, path).unwrap();
    drop(index);
    rows.into_iter().for_each(|row| draft.add(row).unwrap());
    let index = draft.finish(&SystemDisk, path).unwrap();
    (index, start.elapsed())
}
