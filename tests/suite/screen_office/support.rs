//! An office's archive in memory with some records, and the kiosk that opens it.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use sendoff::archive::Archive;
use sendoff::archive::import::{Plan, import};
use sendoff::kiosk::Message;
use sendoff::kiosk::gate;
use sendoff::kiosk::screen::Screen;
use sendoff::kiosk::ui::HoldEvent;
use sendoff::ports::fake::MemoryDisk;
use sendoff::record::form;
use sendoff::record::keys::allowed_signers_line;
use sendoff::record::seal::{Digest, Kind, Sealed, Sealing, record_id, seal};

use crate::archive::support::{OFFICE, ports};
use crate::kiosk_support::{Kiosk, Setup};
use crate::record::support::{Led, Ways};
use crate::seal::{t2, time};
use crate::search::lot::{BASE, handoff, sealed};

/// When the office took everything in.
pub const TAKEN: &str = "2026-07-20T12:00:00Z";

/// The records of a tablet, from number 1 on.
pub fn chain(count: u32) -> Vec<Sealed> {
    let mut payload = Led::whole(Ways::default()).contents().unwrap().payload;
    let mut all: Vec<Sealed> = Vec::new();
    for n in 0..count {
        let previous: Option<Digest> = all.last().map(|record| record.digest);
        let mut record = handoff(n);
        record.head.id = record_id("t2", t2().public(), n + 1);
        record.head.previous = previous;
        payload.insert("data/record.json".into(), form::write(&record).unwrap());
        let sealing = Sealing {
            tablet: "t2",
            number: n + 1,
            previous,
            kind: Kind::Handoff,
            organization: &BASE.lot.name,
            sealed: sealed(n),
        };
        all.push(seal(&sealing, &payload, &t2()).unwrap());
    }
    all
}

/// Plants records on a stick.
pub fn plant(disk: &MemoryDisk, stick: &str, records: &[Sealed]) {
    for record in records {
        disk.plant(&Path::new(stick).join(format!("{}.zip", record.id)), &record.zip);
    }
}

type Files = Vec<(PathBuf, Vec<u8>)>;

fn made(count: u32) -> Files {
    let disk = MemoryDisk::new();
    plant(&disk, "/stick", &chain(count));
    let line = allowed_signers_line(t2().public(), "t2", time("2026-01-01T00:00:00Z"));
    disk.plant(Path::new("/signers"), format!("{line}\n").as_bytes());
    let ports = ports(&disk, TAKEN);
    let mut archive = Archive::open_or_create(&ports, Path::new(OFFICE)).unwrap();
    archive.adopt(&disk, Path::new("/signers")).unwrap();
    let paths = [PathBuf::from("/stick")];
    let summary = import(&archive, Plan { paths: &paths, rehearsals: false }, &ports, &mut |_| {}).unwrap();
    assert!(summary.is_good(), "{:?}", summary.bad);
    let files = disk.files().into_iter();
    files.filter(|(path, _)| path.starts_with(OFFICE)).collect()
}

/// A disk with an archive of so many records.
pub fn archive(count: u32) -> MemoryDisk {
    static MADE: Mutex<BTreeMap<u32, Files>> = Mutex::new(BTreeMap::new());
    let mut made_before = MADE.lock().unwrap_or_else(PoisonError::into_inner);
    let files = made_before.entry(count).or_insert_with(|| made(count));
    let disk = MemoryDisk::new();
    for (path, bytes) in files {
        disk.plant(path, bytes);
    }
    disk
}

/// The Office screen, opened from the Yard through the gate while nobody has a PIN.
pub fn open(setup: Setup) -> Kiosk {
    let mut kiosk = setup.archive(OFFICE).boot();
    kiosk.click_id("yard-office");
    assert!(matches!(kiosk.screen(), Screen::Yard(_)), "the gate is asked first");
    kiosk.message(Message::Gate(gate::Message::Held(HoldEvent::Done)));
    assert!(matches!(kiosk.screen(), Screen::Office(_)));
    kiosk
}
