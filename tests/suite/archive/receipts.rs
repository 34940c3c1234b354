//! Receipts: stock tools confirm them, and none but the office's is believed.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use sendoff::archive::import::{Plan, import};
use sendoff::archive::{Archive, OFFICE_PUBLIC};
use sendoff::ports::Disk;
use sendoff::ports::system::SystemDisk;
use sendoff::record::keys::{CHECKPOINT, NAMESPACE, PublicKey};
use sendoff::record::receipt::{self, Line, Receipt, ReceiptFault};

use super::support::{NOON, STICK, chain, office, signers, stick, take, text, with_disk};
use crate::seal::{has, key, run, t2, time, words};

fn some_lines() -> Vec<Line> {
    let line =
        |r: &sendoff::record::seal::Sealed| Line { id: r.id.clone(), digest: r.digest, at: time(NOON) };
    chain(&t2(), 2).iter().map(line).collect()
}

#[test]
fn a_receipt_lies_beside_what_was_taken_and_is_believed() {
    let records = chain(&t2(), 2);
    let disk = stick(&records, &[&t2()]);
    let summary = take(&disk, NOON);
    assert_eq!(summary.receipts, [Path::new(STICK).join("sendoff-receipt-20260613T120000Z.txt")]);
    let office_key = PublicKey::from_openssh(&text(&disk, &format!("/office/{OFFICE_PUBLIC}"))).unwrap();
    assert_eq!(office_key, *office(&disk, NOON).office_key().unwrap().public());
    let found = receipt::find(&disk, Path::new(STICK), &[office_key]).unwrap();
    let believed = found[0].receipt.as_ref().unwrap();
    assert_eq!(believed.lines, some_lines());
    // A tablet that knows another office does not believe it.
    let other = receipt::find(&disk, Path::new(STICK), &[*key(5, "office").public()]).unwrap();
    assert!(matches!(other[0].receipt, Err(ReceiptFault::UnknownOffice { .. })));
    // A line more, and the signature does not hold.
    let path = &summary.receipts[0];
    let more =
        format!("{}{NOON} {} t2-000000-000009\n", text(&disk, path.to_str().unwrap()), records[0].digest);
    disk.plant(path, more.as_bytes());
    let changed = receipt::find(&disk, Path::new(STICK), &[office_key]).unwrap();
    assert!(matches!(changed[0].receipt, Err(ReceiptFault::Signature { .. })));
}

#[test]
fn only_one_spelling_is_a_receipt_and_only_one_namespace() {
    let office = key(5, "office");
    let whole = Receipt { office: *office.public(), written: time(NOON), lines: some_lines() };
    let read = |text: &str| {
        let signature = office.sign(CHECKPOINT, text.as_bytes()).unwrap();
        Receipt::read(text.as_bytes(), signature.as_bytes(), &[*office.public()])
    };
    assert_eq!(read(&whole.text()).unwrap(), whole);
    let changes = [
        ("format 1", "format 2"),
        ("Records: 2", "Records: 3"),
        ("Written: 2026", "Written: 2O26"),
        ("12:00:00Z t", "12:00:00+00:00 t"),
        ("\n\n", "\n"),
        ("Office: SHA256:", "Office: sha256:"),
        ("-000002\n", "-000002"),
    ];
    for (from, to) in changes.into_iter().filter(|(from, _)| whole.text().contains(from)) {
        assert!(matches!(read(&whole.text().replace(from, to)), Err(ReceiptFault::Form { .. })), "{from}");
    }
    let text = whole.text();
    let seal = office.sign(NAMESPACE, text.as_bytes()).unwrap();
    let fault = Receipt::read(text.as_bytes(), seal.as_bytes(), &[*office.public()]);
    assert!(matches!(fault, Err(ReceiptFault::Signature { .. })), "a seal of a record is no receipt");
    assert_eq!(receipt::signer(text.as_bytes(), seal.as_bytes()), None);
}

/// Confirmed by OpenSSH's own `ssh-keygen`, with the archive's list of signers as it stands.
#[test]
fn stock_ssh_keygen_confirms_receipts_and_marks() {
    if !has("ssh-keygen", &[]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let world = with_disk(Arc::new(SystemDisk), NOON);
    let stick = dir.path().join("stick");
    std::fs::create_dir(&stick).unwrap();
    for record in chain(&t2(), 2) {
        std::fs::write(stick.join(format!("{}.zip", record.id)), record.zip).unwrap();
    }
    std::fs::write(dir.path().join("list"), signers(&[&t2()])).unwrap();
    let mut archive = Archive::open_or_create(&world, &dir.path().join("archive")).unwrap();
    archive.adopt(&SystemDisk, &dir.path().join("list")).unwrap();
    let paths = [stick.clone()];
    let summary = import(&archive, Plan { paths: &paths, rehearsals: false }, &world, &mut |_| {}).unwrap();
    let receipt = summary.receipts[0].clone();
    let verify = |signature: &Path, message: &[u8]| {
        let args =
            ["-Y", "verify", "-f", "archive/trust/allowed_signers", "-I", "office", "-n", CHECKPOINT, "-s"];
        let args = [&args[..], &[signature.to_str().unwrap()]].concat();
        run(dir.path(), "ssh-keygen", &args, message)
    };
    let message = SystemDisk.read(&receipt, 1 << 16).unwrap();
    let out = verify(&receipt::signature_of(&receipt), &message);
    assert!(words(&out).starts_with("Good \"checkpoint@sendoff\" signature for office"), "{}", words(&out));
    assert!(!verify(&receipt::signature_of(&receipt), &message[1..]).status.success());
    let mark: PathBuf = dir.path().join(format!("archive/marks/t2-{}", t2().public().short()));
    let mark = std::fs::read_to_string(mark).unwrap();
    let (said, signature) = mark.split_at(mark.find("-----BEGIN").unwrap());
    std::fs::write(dir.path().join("mark.sig"), signature).unwrap();
    let out = verify(Path::new("mark.sig"), said.as_bytes());
    assert!(out.status.success(), "{}", words(&out));
    assert!(said.contains("-000002\n"), "{said}");
}

#[cfg(unix)]
#[test]
fn a_stick_that_cannot_be_written_to_is_taken_in_all_the_same() {
    // The disk says no where a read-only stick would.
    let records = chain(&t2(), 1);
    let disk = stick(&records, &[&t2()]);
    take(&disk, NOON);
    let archive = office(&disk, NOON);
    let paths = [PathBuf::from("/given")];
    disk.plant(Path::new("/given/x.zip"), &records[0].zip);
    let sealed_off = ReadOnly { inner: disk.clone(), below: PathBuf::from("/given") };
    let world = with_disk(Arc::new(sealed_off), NOON);
    let summary = import(&archive, Plan { paths: &paths, rehearsals: false }, &world, &mut |_| {}).unwrap();
    assert_eq!((summary.known, summary.receipts.len(), summary.no_receipt.len()), (1, 0, 1));
    assert!(summary.is_good());
}

/// A disk of which one folder cannot be written to.
#[derive(Debug)]
struct ReadOnly {
    inner: sendoff::ports::fake::MemoryDisk,
    below: PathBuf,
}

type Answer<T> = Result<T, sendoff::ports::DiskFault>;

impl ReadOnly {
    fn refuse(&self, path: &Path) -> Answer<()> {
        if !path.starts_with(&self.below) {
            return Ok(());
        }
        let source = Arc::new(std::io::Error::from(std::io::ErrorKind::ReadOnlyFilesystem));
        Err(sendoff::ports::DiskFault::Io { action: "create", path: path.to_owned(), source })
    }
}

impl Disk for ReadOnly {
    fn read(&self, path: &Path, cap: u64) -> Answer<Vec<u8>> {
        self.inner.read(path, cap)
    }
    fn list(&self, dir: &Path) -> Answer<Vec<String>> {
        self.inner.list(dir)
    }
    fn is_dir(&self, path: &Path) -> bool {
        self.inner.is_dir(path)
    }
    fn make_dir(&self, dir: &Path) -> Answer<()> {
        self.inner.make_dir(dir)
    }
    fn put_new(&self, path: &Path, bytes: &[u8], access: sendoff::ports::Access) -> Answer<()> {
        self.refuse(path)?;
        self.inner.put_new(path, bytes, access)
    }
    fn replace(&self, path: &Path, bytes: &[u8], access: sendoff::ports::Access) -> Answer<()> {
        self.refuse(path)?;
        self.inner.replace(path, bytes, access)
    }
    fn settle(&self, dir: &Path) -> Answer<()> {
        self.inner.settle(dir)
    }
    fn append(&self, path: &Path) -> Answer<Box<dyn sendoff::ports::Appender>> {
        self.inner.append(path)
    }
    fn rename(&self, from: &Path, to: &Path) -> Answer<()> {
        self.inner.rename(from, to)
    }
    fn lock(&self, path: &Path) -> Answer<Option<Box<dyn sendoff::ports::Held>>> {
        self.inner.lock(path)
    }
    fn remove(&self, path: &Path) -> Answer<()> {
        self.inner.remove(path)
    }
    fn remove_dir(&self, dir: &Path) -> Answer<()> {
        self.inner.remove_dir(dir)
    }
}
