//! Taking in: what is filed where, what is refused and why, and that it happens once.

use std::path::{Path, PathBuf};

use sendoff::archive::import::{Outcome, Plan, import};
use sendoff::archive::{Archive, ArchiveFault};
use sendoff::commands::{COULD_NOT_RUN, FINDINGS, GOOD};
use sendoff::ports::Disk;
use sendoff::ports::system::SystemDisk;
use sendoff::record::seal::Kind;
use sendoff::record::zip;

use super::support::{
    NOON, OFFICE, SIGNERS, STICK, chain, inside, office, on_stick, ports, record, stick, take, text,
    with_disk,
};
use crate::commands::run_with;
use crate::seal::{key, put_all, t2};

#[test]
fn records_are_filed_by_month_with_a_receipt_each() {
    let records = chain(&t2(), 3);
    let disk = stick(&records, &[&t2()]);
    let summary = take(&disk, NOON);
    let expected: Vec<String> = records.iter().map(|r| format!("records/2026/06/{}.zip", r.id)).collect();
    assert_eq!(summary.new.iter().map(|f| f.path.clone()).collect::<Vec<_>>(), expected);
    assert_eq!((summary.known, summary.bad.len(), summary.is_good()), (0, 0, true));
    let filed = inside(&disk, "records/");
    assert_eq!(filed.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>(), expected);
    assert!(filed.iter().zip(&records).all(|((_, bytes), record)| *bytes == record.zip));
    let lines: String =
        records.iter().map(|r| format!("{NOON} {} {} {STICK}/{}.zip\n", r.digest, r.id, r.id)).collect();
    assert_eq!(text(&disk, "/office/receipts/2026-06.log"), lines);
    // The originals are as they were.
    assert!(records.iter().all(|r| disk.read(&on_stick(r), 1 << 20).unwrap() == r.zip));
}

#[test]
fn the_same_stick_again_changes_nothing() {
    let records = chain(&t2(), 3);
    let disk = stick(&records, &[&t2()]);
    take(&disk, NOON);
    let before = disk.files();
    let again = take(&disk, "2026-06-14T12:00:00Z");
    assert_eq!((again.new.len(), again.known, again.bad.len(), again.receipts.len()), (0, 3, 0, 0));
    assert_eq!(disk.files(), before);
}

#[test]
fn a_record_keeps_its_first_time_of_receipt() {
    let records = chain(&t2(), 2);
    let disk = stick(&records[..1], &[&t2()]);
    take(&disk, NOON);
    // The tablet is retired as of the 14th; one record was received before, the other comes too late.
    let list = text(&disk, "/office/trust/allowed_signers").replace(
        "valid-after=\"20260601000000Z\"",
        "valid-after=\"20260601000000Z\",valid-before=\"20260614000000Z\"",
    );
    disk.plant(Path::new("/office/trust/allowed_signers"), list.as_bytes());
    disk.plant(&on_stick(&records[1]), &records[1].zip);
    let archive = Archive::open(ports(&disk, NOON).disk, Path::new(OFFICE)).unwrap();
    let paths = [PathBuf::from(STICK)];
    let plan = Plan { paths: &paths, rehearsals: false };
    let summary = import(&archive, plan, &ports(&disk, "2026-06-20T12:00:00Z"), &mut |_| {}).unwrap();
    assert_eq!((summary.new.len(), summary.known, summary.bad.len()), (0, 1, 1));
    assert_eq!(summary.bad[0].1.code, "not-valid-at-that-time");
}

#[test]
fn what_does_not_verify_goes_to_quarantine_with_its_reason() {
    let records = chain(&t2(), 2);
    let stranger = record(&key(9, "t9"), 1, None, Kind::Handoff, "2026-06-12T09:00:00Z");
    let disk = stick(&[records[0].clone(), stranger.clone()], &[&t2()]);
    let mut damaged = records[1].zip.clone();
    let at = zip::read(&damaged)
        .unwrap()
        .iter()
        .find(|e| e.name.ends_with("record.txt"))
        .map(|e| e.bytes.as_ptr() as usize - damaged.as_ptr() as usize);
    damaged[at.unwrap()] ^= 1;
    disk.plant(&on_stick(&records[1]), &damaged);
    disk.plant(Path::new("/stick/photos/holiday.zip"), b"PK\x05\x06 no record");
    disk.plant(Path::new("/stick/letter.txt"), b"not looked at");
    let summary = take(&disk, NOON);
    assert_eq!((summary.new.len(), summary.bad.len()), (1, 3));
    let codes: Vec<&str> = summary.bad.iter().map(|(_, bad)| bad.code).collect();
    assert_eq!(codes, ["not-a-record", "not-a-record", "unknown-tablet"]);
    for (path, bad) in &summary.bad {
        let kept = bad.kept.clone().unwrap();
        let original = disk.read(path, 1 << 20).unwrap();
        assert_eq!(disk.read(&Path::new(OFFICE).join(&kept), 1 << 20).unwrap(), original);
        let why = text(&disk, &format!("{OFFICE}/{}", kept.replace(".zip", ".txt")));
        assert!(why.contains(&bad.why) && why.contains(&path.display().to_string()), "{why}");
    }
    let before = inside(&disk, "quarantine/").len();
    take(&disk, NOON);
    assert_eq!((before, inside(&disk, "quarantine/").len()), (6, 6));
    // Once the office trusts that tablet, what lies in quarantine can be imported.
    let list = super::support::signers(&[&t2(), &key(9, "t9")]);
    let office_line = text(&disk, "/office/trust/allowed_signers");
    let office_line = office_line.lines().find(|line| line.starts_with("office ")).unwrap();
    disk.plant(Path::new("/office/trust/allowed_signers"), format!("{list}{office_line}\n").as_bytes());
    let archive = Archive::open(ports(&disk, NOON).disk, Path::new(OFFICE)).unwrap();
    let paths = [PathBuf::from("/office/quarantine")];
    let plan = Plan { paths: &paths, rehearsals: false };
    let summary = import(&archive, plan, &ports(&disk, NOON), &mut |_| {}).unwrap();
    assert_eq!((summary.new.len(), summary.bad.len()), (1, 2));
    assert_eq!(summary.new[0].id, stranger.id);
    assert_eq!(inside(&disk, "quarantine/").len(), 6, "what waits there is not put there again");
}

#[test]
fn numbers_that_did_not_come_in_are_told_until_they_do() {
    let records = chain(&t2(), 4);
    let disk = stick(&[records[0].clone(), records[3].clone()], &[&t2()]);
    let codes = |summary: &sendoff::archive::import::Summary| -> Vec<&str> {
        summary.chains.iter().map(|finding| finding.problem.code()).collect()
    };
    let summary = take(&disk, NOON);
    assert_eq!((codes(&summary), summary.is_good()), (vec!["chain-gap"], true));
    for record in &records {
        disk.plant(&on_stick(record), &record.zip);
    }
    let summary = take(&disk, NOON);
    assert_eq!((summary.new.len(), codes(&summary)), (2, vec![]));
}

#[test]
fn a_number_used_twice_is_kept_apart() {
    let first = record(&t2(), 1, None, Kind::Handoff, "2026-06-12T09:00:00Z");
    let twin = record(&t2(), 1, None, Kind::Handoff, "2026-07-12T09:00:00Z");
    let disk = stick(std::slice::from_ref(&first), &[&t2()]);
    take(&disk, NOON);
    disk.plant(&on_stick(&twin), &twin.zip);
    let summary = take(&disk, "2026-07-13T12:00:00Z");
    assert_eq!(summary.bad[0].1.code, "number-used-twice");
    assert_eq!(inside(&disk, "records/").len(), 1);
}

#[test]
fn a_changed_file_in_the_archive_is_noticed_and_left() {
    let records = chain(&t2(), 1);
    let disk = stick(&records, &[&t2()]);
    let filed = take(&disk, NOON).new.remove(0);
    disk.plant(&Path::new(OFFICE).join(&filed.path), b"gone bad");
    let summary = take(&disk, NOON);
    assert_eq!(summary.bad[0].1.code, "archive-differs");
    assert_eq!(inside(&disk, "records/")[0].1, b"gone bad");
    assert_eq!(inside(&disk, "quarantine/").len(), 2);
}

#[test]
fn rehearsals_come_in_only_when_told() {
    let played = record(&t2(), 1, None, Kind::Rehearsal, "2026-06-12T09:00:00Z");
    let disk = stick(std::slice::from_ref(&played), &[&t2()]);
    let summary = take(&disk, NOON);
    assert_eq!((summary.rehearsals.len(), summary.new.len(), summary.is_good()), (1, 0, false));
    assert!(inside(&disk, "records/").is_empty() && inside(&disk, "quarantine/").is_empty());
    let paths = [PathBuf::from(STICK)];
    let plan = Plan { paths: &paths, rehearsals: true };
    let summary = import(&office(&disk, NOON), plan, &ports(&disk, NOON), &mut |_| {}).unwrap();
    assert_eq!(summary.new.len(), 1);
}

#[test]
fn nothing_is_taken_while_nobody_is_trusted_or_the_receipts_are_damaged() {
    let records = chain(&t2(), 1);
    let disk = stick(&records, &[&t2()]);
    let paths = [PathBuf::from(STICK)];
    let plan = Plan { paths: &paths, rehearsals: false };
    let bare = Archive::open_or_create(&ports(&disk, NOON), Path::new(OFFICE)).unwrap();
    let fault = import(&bare, plan, &ports(&disk, NOON), &mut |_| {}).unwrap_err();
    assert!(matches!(fault, ArchiveFault::NoTablets));
    let archive = office(&disk, NOON);
    let missing = [PathBuf::from("/nowhere")];
    let fault =
        import(&archive, Plan { paths: &missing, rehearsals: false }, &ports(&disk, NOON), &mut |_| {});
    assert!(matches!(fault, Err(ArchiveFault::NoSuchPath(_))));
    disk.plant(Path::new("/office/receipts/2026-05.log"), b"once upon a time\n");
    let fault = import(&archive, plan, &ports(&disk, NOON), &mut |_| {}).unwrap_err();
    assert!(fault.to_string().contains("2026-05.log, line 1"), "{fault}");
    assert!(inside(&disk, "records/").is_empty());
}

#[test]
fn another_list_of_tablets_does_not_slip_in() {
    let disk = stick(&chain(&t2(), 1), &[&t2()]);
    let mut archive = office(&disk, NOON);
    let other = super::support::signers(&[&t2(), &key(9, "t9")]);
    disk.plant(Path::new(SIGNERS), other.as_bytes());
    let fault = archive.adopt(&disk, Path::new(SIGNERS)).unwrap_err();
    assert!(fault.to_string().contains("says otherwise about t9"), "{fault}");
}

#[test]
fn unpacked_bags_are_taken_as_the_records_they_are() {
    let dir = tempfile::tempdir().unwrap();
    let records = chain(&t2(), 1);
    let root = dir.path().join("stick").join(records[0].id.to_string());
    put_all(&root, &crate::seal::files(&records[0]));
    let list = dir.path().join("allowed_signers");
    std::fs::write(&list, super::support::signers(&[&t2()])).unwrap();
    let world = with_disk(std::sync::Arc::new(SystemDisk), NOON);
    let (stick, archive) = (dir.path().join("stick"), dir.path().join("archive"));
    let args = ["archive", "import", stick.to_str().unwrap(), "--archive", archive.to_str().unwrap()];
    let none = run_with(&world, &args);
    assert_eq!((none.code, none.err.contains("holds no archive")), (COULD_NOT_RUN, true), "{}", none.err);
    assert!(!archive.exists(), "a path that was mistyped makes no archive");
    let with_list = [&args[..], &["--signers", list.to_str().unwrap()]].concat();
    // Nor does one that leads to a folder of something else.
    std::fs::create_dir(&archive).unwrap();
    std::fs::write(archive.join("holiday.txt"), b"mine").unwrap();
    let other = run_with(&world, &with_list);
    assert_eq!((other.code, other.err.contains("holiday.txt")), (COULD_NOT_RUN, true), "{}", other.err);
    std::fs::remove_file(archive.join("holiday.txt")).unwrap();
    let taken = run_with(&world, &with_list);
    assert_eq!(taken.code, GOOD, "{}{}", taken.out, taken.err);
    assert!(taken.err.contains("a new archive was made in"), "{}", taken.err);
    assert!(taken.out.contains("1 new, 0 known, 0 bad"), "{}", taken.out);
    let filed = archive.join(format!("records/2026/06/{}.zip", records[0].id));
    assert_eq!(std::fs::read(filed).unwrap(), records[0].zip);
    std::fs::write(stick.join("empty.zip"), b"").unwrap();
    let again = run_with(&world, &[&args[..], &["--format", "json"]].concat());
    assert_eq!(again.code, FINDINGS, "{}", again.err);
    let said: serde_json::Value = serde_json::from_str(&again.out).unwrap();
    assert_eq!((&said["known"], &said["new"], &said["bad"]), (&1.into(), &0.into(), &1.into()));
    assert_eq!(said["quarantined"][0]["code"], "not-a-record");
}

#[test]
fn how_far_it_is_is_told_for_every_place() {
    let disk = stick(&chain(&t2(), 3), &[&t2()]);
    let archive = office(&disk, NOON);
    let paths = [PathBuf::from(STICK)];
    let mut told = Vec::new();
    import(&archive, Plan { paths: &paths, rehearsals: false }, &ports(&disk, NOON), &mut |now| {
        told.push((now.done, now.of, matches!(now.outcome, Outcome::New(_))));
    })
    .unwrap();
    assert_eq!(told, [(1, 3, true), (2, 3, true), (3, 3, true)]);
}
