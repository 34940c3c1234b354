use std::path::{Path, PathBuf};
use std::sync::{Arc, mpsc};

use sendoff::journal::{JournalFault, Keeper, ProposeFault, Writer, journal_path, recover};
use sendoff::ports::Disk;
use sendoff::ports::fake::{MemoryDisk, Operation};
use sendoff::walk::{Event, Phase, Refused};

use crate::walk::support::{entry, route, whole};

fn path() -> PathBuf {
    journal_path(Path::new("/data"), "t2-000001")
}

fn begin() -> (MemoryDisk, Writer) {
    let disk = MemoryDisk::new();
    disk.make_dir(Path::new("/data/walks")).unwrap();
    let keeper = Keeper::begin(&disk, &path(), route(), &whole()[0]).unwrap();
    (disk, Writer::spawn(keeper).unwrap())
}

#[test]
fn proposals_queue_and_are_answered_in_order() {
    let (disk, writer) = begin();
    let (sender, answers) = mpsc::channel();
    for (number, entry) in (2..).zip(&whole()[1..]) {
        let sender = sender.clone();
        writer.propose(entry.clone(), move |answered| sender.send((number, answered)).unwrap());
    }
    drop(sender);
    let mut walk = None;
    for number in 2..=whole().len() {
        let (answered, now) = answers.recv().unwrap();
        assert_eq!(answered, number);
        let now = now.unwrap();
        assert_eq!(now.events(), number, "the walk as it was just after this event");
        walk = Some(now);
    }
    assert_eq!(walk.unwrap().phase(), Phase::SealBegun);
    let keeper = writer.finish().unwrap();
    assert_eq!(keeper.walk().events(), whole().len());
    assert_eq!(recover(&disk, &path()).unwrap().entries, whole());
}

#[test]
fn a_refusal_is_answered_and_nothing_is_written() {
    let (disk, writer) = begin();
    let before = disk.count(Operation::Write);
    let refused = writer.ask(entry(1, Event::Opened)).recv().unwrap().unwrap_err();
    assert!(matches!(refused, ProposeFault::Refused(Refused::OpeningIncomplete(_))), "{refused}");
    assert_eq!(disk.count(Operation::Write), before);
    let walk = writer.ask(whole()[1].clone()).recv().unwrap().unwrap();
    assert_eq!(walk.agent(), Some("K4"));
    // A screen that still holds the walk keeps it as it was.
    let later = writer.ask(whole()[2].clone()).recv().unwrap().unwrap();
    assert_eq!((walk.events(), later.events()), (2, 3));
    assert!(!Arc::ptr_eq(&walk, &later));
}

#[test]
fn after_a_fault_every_proposal_is_told() {
    let (disk, writer) = begin();
    disk.fail(Operation::Sync, 3);
    let answers: Vec<_> = whole()[1..].iter().map(|e| writer.ask(e.clone())).collect();
    let answers: Vec<_> = answers.into_iter().map(|a| a.recv().unwrap()).collect();
    assert!(answers[..2].iter().all(Result::is_ok));
    let disk_fault = |a: &Result<_, ProposeFault>| {
        matches!(a, Err(ProposeFault::Journal(JournalFault::Disk { safe: 3, .. })))
    };
    assert!(disk_fault(&answers[2]));
    // The walk stands at event 3, so what follows is either refused or told that nothing more can be saved.
    assert!(answers[3..].iter().all(Result::is_err));
    let poisoned = |a: &Result<_, ProposeFault>| {
        matches!(a, Err(ProposeFault::Journal(JournalFault::Poisoned { safe: 3 })))
    };
    assert!(answers[3..].iter().any(poisoned));
    assert!(writer.finish().unwrap().journal().is_poisoned());
}

#[test]
fn what_was_proposed_is_written_before_the_writer_ends() {
    let (disk, writer) = begin();
    for entry in &whole()[1..] {
        writer.propose(entry.clone(), |answered| drop(answered.unwrap()));
    }
    drop(writer);
    assert_eq!(recover(&disk.after_worst_power_cut(), &path()).unwrap().entries, whole());
}
