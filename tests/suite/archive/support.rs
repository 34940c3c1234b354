//! Offices, tablets and sticks for the tests of the archive.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use jiff::Timestamp;
use sendoff::archive::Archive;
use sendoff::archive::import::{Plan, Summary, import};
use sendoff::ports::fake::{FixedClock, FixedEntropy, MemoryDisk};
use sendoff::ports::{Disk, Ports};
use sendoff::record::keys::{TabletKey, allowed_signers_line};
use sendoff::record::seal::{Digest, Kind, Sealed, Sealing, record_id, seal};

use crate::seal::{payload, time};

pub const OFFICE: &str = "/office";
pub const STICK: &str = "/stick";
pub const SIGNERS: &str = "/given/allowed_signers";
pub const NOON: &str = "2026-06-13T12:00:00Z";

/// The world of an office at a time.
pub fn ports(disk: &MemoryDisk, at: &str) -> Ports {
    with_disk(Arc::new(disk.clone()), at)
}

pub fn with_disk(disk: Arc<dyn Disk>, at: &str) -> Ports {
    Ports { disk, clock: Arc::new(FixedClock(time(at))), entropy: Arc::new(FixedEntropy([77; 32])) }
}

/// A record of any tablet.
pub fn record(key: &TabletKey, number: u32, previous: Option<Digest>, kind: Kind, sealed: &str) -> Sealed {
    let tablet = key.comment();
    let id = record_id(&tablet, key.public(), number);
    let what = Sealing {
        tablet: &tablet,
        number,
        previous,
        kind,
        organization: "Juniper Flat Motorhome Hire",
        sealed: time(sealed),
    };
    seal(&what, &payload(&id), key).unwrap()
}

/// A chain that begins on the 12th of June 2026 and goes on by a record an hour.
pub fn chain(key: &TabletKey, count: u32) -> Vec<Sealed> {
    let start: Timestamp = time("2026-06-12T08:00:00Z");
    let mut all: Vec<Sealed> = Vec::new();
    for number in 1..=count {
        let previous = all.last().map(|record| record.digest);
        let at = start + jiff::SignedDuration::from_hours(i64::from(number));
        all.push(record(key, number, previous, Kind::Handoff, &at.to_string()));
    }
    all
}

/// The list of tablets that the office gives: each trusted from the first of June on.
pub fn signers(keys: &[&TabletKey]) -> String {
    let line =
        |key: &&TabletKey| allowed_signers_line(key.public(), &key.comment(), time("2026-06-01T00:00:00Z"));
    keys.iter().map(|key| line(key) + "\n").collect()
}

/// A disk with a stick full of records and a list of tablets.
pub fn stick(records: &[Sealed], trusted: &[&TabletKey]) -> MemoryDisk {
    let disk = MemoryDisk::new();
    for record in records {
        disk.plant(&on_stick(record), &record.zip);
    }
    disk.plant(Path::new(SIGNERS), signers(trusted).as_bytes());
    disk
}

pub fn on_stick(record: &Sealed) -> PathBuf {
    Path::new(STICK).join(format!("{}.zip", record.id))
}

/// Opens the office's archive, or makes it with the list that was given.
pub fn office(disk: &MemoryDisk, at: &str) -> Archive {
    let ports = ports(disk, at);
    let mut archive = Archive::open_or_create(&ports, Path::new(OFFICE)).unwrap();
    archive.adopt(disk, Path::new(SIGNERS)).unwrap();
    archive
}

/// Takes the stick in.
pub fn take(disk: &MemoryDisk, at: &str) -> Summary {
    let archive = office(disk, at);
    let paths = [PathBuf::from(STICK)];
    import(&archive, Plan { paths: &paths, rehearsals: false }, &ports(disk, at), &mut |_| {}).unwrap()
}

/// The files of the archive whose names begin so, by their names in it.
pub fn inside(disk: &MemoryDisk, prefix: &str) -> Vec<(String, Vec<u8>)> {
    let name = |path: &Path| path.strip_prefix(OFFICE).ok().map(|p| p.to_string_lossy().into_owned());
    let named = disk.files().into_iter().filter_map(|(path, bytes)| Some((name(&path)?, bytes)));
    named.filter(|(name, _)| name.starts_with(prefix)).collect()
}

pub fn text(disk: &MemoryDisk, path: &str) -> String {
    String::from_utf8(disk.read(Path::new(path), 1 << 20).unwrap()).unwrap()
}
