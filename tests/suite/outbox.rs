//! The outbox of a tablet: *exported* is not *archived*, and only the office's receipt says so.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use sendoff::archive::Archive;
use sendoff::archive::import::{Plan, import};
use sendoff::ports::fake::{MemoryDisk, OPERATIONS};
use sendoff::ports::{Disk, Ports};
use sendoff::record::seal::{Kind, Sealed};
use sendoff::tablet::Tablet;
use sendoff::tablet::outbox::{HandInFault, HandedIn};

use crate::archive::support::{ports, record};
use crate::seal::key;

const DATA: &str = "/data";
const STICK: &str = "/media/office";
const NOON: &str = "2026-06-13T12:00:00Z";

/// A tablet with sealed records that wait.
pub fn tablet(disk: &MemoryDisk, count: u32) -> (Tablet, Vec<Sealed>) {
    // The key that the fixed randomness of these tests gives.
    let world = ports(disk, "2026-06-01T00:00:00Z");
    let tablet = match Tablet::open(&world, Path::new(DATA)).unwrap() {
        Some(tablet) => tablet,
        None => Tablet::first_start(&world, Path::new(DATA), "t2").unwrap(),
    };
    let own = key(77, "t2");
    assert_eq!(own.public(), tablet.key().public());
    let mut records: Vec<Sealed> = Vec::new();
    for number in 1..=count {
        let previous = records.last().map(|r| r.digest);
        let sealed = record(&own, number, previous, Kind::Handoff, "2026-06-12T09:00:00Z");
        disk.plant(&Path::new(DATA).join(format!("records/{}.zip", sealed.id)), &sealed.zip);
        disk.plant(
            &Path::new(DATA).join(format!("outbox/{}", sealed.id)),
            format!("{}\n", sealed.digest).as_bytes(),
        );
        records.push(sealed);
    }
    disk.make_dir(Path::new(STICK)).unwrap();
    (tablet, records)
}

/// An office whose randomness is another.
fn office_ports(disk: &MemoryDisk) -> Ports {
    Ports { entropy: Arc::new(sendoff::ports::fake::FixedEntropy([78; 32])), ..ports(disk, NOON) }
}

fn office(disk: &MemoryDisk, tablet: &Tablet) -> Archive {
    let mut archive = Archive::open_or_create(&office_ports(disk), Path::new("/office")).unwrap();
    let _ = archive.trust(&tablet.signers_line());
    archive
}

/// The office takes the stick in, which leaves its receipt there.
pub fn office_takes(disk: &MemoryDisk, tablet: &Tablet) -> Archive {
    let archive = office(disk, tablet);
    let paths = [PathBuf::from(STICK)];
    let summary =
        import(&archive, Plan { paths: &paths, rehearsals: false }, &office_ports(disk), &mut |_| {})
            .unwrap();
    assert!(summary.is_good(), "{summary:?}");
    archive
}

#[test]
fn records_wait_until_the_office_confirms_them() {
    let disk = MemoryDisk::new();
    let (tablet, records) = tablet(&disk, 2);
    assert_eq!(tablet.waiting().unwrap().len(), 2);
    let done = tablet.hand_in(Path::new(STICK)).unwrap();
    assert_eq!(done, HandedIn { exported: 2, ..HandedIn::default() });
    for record in &records {
        let copy = Path::new(STICK).join(format!("sendoff-records/{}.zip", record.id));
        assert_eq!(disk.read(&copy, 1 << 20).unwrap(), record.zip);
    }
    assert_eq!(tablet.waiting().unwrap().len(), 2, "exported is not archived");
    // The receipt comes back; nobody has said yet whose key that is.
    let archive = office_takes(&disk, &tablet);
    let office_key = *archive.office_key().unwrap().public();
    let done = tablet.hand_in(Path::new(STICK)).unwrap();
    assert_eq!((done.archived, done.exported, done.unknown), (0, 2, Some(office_key)));
    tablet.know_office(&office_key).unwrap();
    let done = tablet.hand_in(Path::new(STICK)).unwrap();
    assert_eq!(done, HandedIn { archived: 2, ..HandedIn::default() });
    assert_eq!(tablet.waiting().unwrap(), []);
    // The records themselves stay on the tablet.
    assert_eq!(disk.list(&Path::new(DATA).join("records")).unwrap().len(), 2);
}

#[test]
fn no_other_key_is_believed_once_the_office_is_known() {
    let disk = MemoryDisk::new();
    let (tablet, _) = tablet(&disk, 1);
    tablet.know_office(key(5, "office").public()).unwrap();
    tablet.know_office(key(5, "office").public()).unwrap();
    assert!(matches!(tablet.know_office(key(6, "office").public()), Err(HandInFault::KnownOffice)));
    tablet.hand_in(Path::new(STICK)).unwrap();
    office_takes(&disk, &tablet);
    let done = tablet.hand_in(Path::new(STICK)).unwrap();
    assert_eq!((done.archived, done.unknown, done.refused.len()), (0, None, 1));
    assert!(done.refused[0].1.contains("not the key of the office"), "{done:?}");
    assert_eq!(tablet.waiting().unwrap().len(), 1);
}

#[test]
fn a_receipt_counts_for_the_digests_in_it_alone() {
    let disk = MemoryDisk::new();
    let (one, _) = tablet(&disk, 1);
    one.hand_in(Path::new(STICK)).unwrap();
    let archive = office_takes(&disk, &one);
    one.know_office(archive.office_key().unwrap().public()).unwrap();
    // Another record of that id, as after a restored backup, and a second record.
    let (one, records) = tablet(&disk, 2);
    let outbox = Path::new(DATA).join(format!("outbox/{}", records[0].id));
    disk.plant(&outbox, format!("{}\n", records[1].digest).as_bytes());
    let fault = one.hand_in(Path::new(STICK)).unwrap_err();
    assert!(matches!(fault, HandInFault::Own { .. }), "{fault}");
    assert_eq!(one.waiting().unwrap().len(), 2);
}

#[test]
fn what_is_not_whole_or_not_free_is_told_and_nothing_is_struck_off() {
    let disk = MemoryDisk::new();
    let (tablet, records) = tablet(&disk, 1);
    let copy = Path::new(STICK).join(format!("sendoff-records/{}.zip", records[0].id));
    disk.plant(&copy, b"something else");
    assert!(matches!(tablet.hand_in(Path::new(STICK)), Err(HandInFault::Other(path)) if path == copy));
    disk.plant(&Path::new(DATA).join(format!("records/{}.zip", records[0].id)), &records[0].zip[1..]);
    let fault = tablet.hand_in(Path::new("/media/other")).unwrap_err();
    assert!(fault.to_string().contains("does not hold"), "{fault}");
    assert_eq!(tablet.waiting().unwrap().len(), 1);
}

#[test]
fn whatever_fails_nothing_leaves_the_outbox_unconfirmed() {
    for operation in OPERATIONS {
        for nth in 1..30 {
            let disk = MemoryDisk::new();
            let (tablet, records) = tablet(&disk, 2);
            disk.fail(operation, nth);
            let done = tablet.hand_in(Path::new(STICK));
            disk.heal();
            assert_eq!(tablet.waiting().unwrap().len(), 2);
            if done.is_ok() {
                let left = disk.after_worst_power_cut();
                for record in &records {
                    let copy = Path::new(STICK).join(format!("sendoff-records/{}.zip", record.id));
                    assert_eq!(left.read(&copy, 1 << 20).unwrap(), record.zip, "{operation:?} {nth}");
                }
            }
            tablet.hand_in(Path::new(STICK)).unwrap();
        }
    }
}
