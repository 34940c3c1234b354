//! Tampering: each file of a record, each byte of what covers the others, and hostile archives.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "helpers of tests may fail loudly"
)]

use proptest::prelude::*;
use sendoff::record::bag;
use sendoff::record::keys::{PublicKey, SealFile, TabletKey};
use sendoff::record::seal::Digest;
use sendoff::record::signers::Signers;
use sendoff::record::verify::Failure;
use sendoff::record::zip::{self, Entry, ZipFault};

use crate::seal::{Payload, chain_of, files, has, run, sample};
use crate::verify::{judge, office, pack};

/// What must be said when this file was changed.
fn said_of_a_change(name: &str) -> &'static str {
    match name {
        "tagmanifest-sha256.txt" | "seal.sshsig" => "bad-seal",
        _ => "file-changed",
    }
}

fn refused(root: &str, files: &Payload) -> Failure {
    judge(&pack(root, files), &office()).unwrap_err()
}

#[test]
fn every_byte_of_every_file_counts() {
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    let whole = files(&sealed);
    let mut flips = 0;
    for (name, bytes) in &whole {
        for at in 0..bytes.len() {
            for bit in 0..8 {
                let mut files = whole.clone();
                files.get_mut(name).unwrap()[at] ^= 1 << bit;
                let failure = refused(&root, &files);
                assert_eq!(failure.code(), said_of_a_change(name), "{name} at {at}: {failure}");
                if failure.code() == "file-changed" {
                    assert_eq!(failure.file(), Some(name.as_str()));
                }
                flips += 1;
            }
        }
    }
    let bytes: usize = whole.values().map(Vec::len).sum();
    assert_eq!(flips, 8 * bytes);
    assert!(bytes > 1400, "{bytes}");
}

#[test]
fn a_file_that_grew_or_shrank_was_changed() {
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    for (name, bytes) in files(&sealed) {
        let mut longer = bytes.clone();
        longer.push(b'\n');
        let shorter = bytes.get(..bytes.len().saturating_sub(1)).unwrap_or_default().to_vec();
        for changed in [longer, shorter, Vec::new()] {
            if changed != bytes {
                let mut files = files(&sealed);
                files.insert(name.clone(), changed);
                let failure = refused(&root, &files);
                assert_eq!(failure.code(), said_of_a_change(&name), "{name}: {failure}");
            }
        }
    }
}

#[test]
fn a_file_removed_renamed_or_added_is_named() {
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    let whole = files(&sealed);
    for (name, bytes) in &whole {
        let mut files = whole.clone();
        files.remove(name);
        assert_eq!(refused(&root, &files), Failure::FileMissing(name.clone()));
        for new in [format!("{name}x"), format!("data/{}", name.replace('/', "-")), name.to_uppercase()] {
            let mut renamed = files.clone();
            renamed.insert(new, bytes.clone());
            assert_eq!(refused(&root, &renamed), Failure::FileMissing(name.clone()));
        }
    }
    for name in [
        "data/more.txt",
        "more.txt",
        "data/photos/more.jpg",
        "manifest-md5.txt",
        "fetch.txt",
        "seal.sshsig.bak",
    ] {
        let mut files = whole.clone();
        files.insert(name.to_owned(), Vec::new());
        assert_eq!(refused(&root, &files), Failure::FileAdded(name.to_owned()));
    }
    // Beside the folder instead of in it.
    let entries: Vec<(String, &[u8])> =
        zip::read(&sealed.zip).unwrap().iter().map(|e| (e.name.to_owned(), e.bytes)).collect();
    for name in ["more.txt", "other/more.txt", "A/bagit.txt"] {
        let mut entries: Vec<Entry<'_>> = entries.iter().map(|(name, bytes)| Entry { name, bytes }).collect();
        entries.push(Entry { name, bytes: b"" });
        let failure = judge(&zip::write(&entries).unwrap(), &office()).unwrap_err();
        assert_eq!(failure, Failure::FileAdded(name.to_owned()));
    }
}

#[test]
fn two_changes_are_told_in_order() {
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    let mut files = files(&sealed);
    files.insert("more.txt".to_owned(), Vec::new());
    assert_eq!(refused(&root, &files).code(), "file-added");
    files.remove("data/ink-1.svg");
    assert_eq!(refused(&root, &files).code(), "file-missing");
    files.insert("data/record.txt".to_owned(), Vec::new());
    assert_eq!(refused(&root, &files).code(), "file-changed");
    files.insert("bag-info.txt".to_owned(), b"x".to_vec());
    assert_eq!(refused(&root, &files), Failure::FileChanged("bag-info.txt".to_owned()));
    files.insert("tagmanifest-sha256.txt".to_owned(), b"x".to_vec());
    assert_eq!(refused(&root, &files).code(), "bad-seal");
}

#[test]
fn parts_of_two_records_do_not_mix() {
    let records = chain_of(2);
    let (first, second) = (files(&records[0]), files(&records[1]));
    let root = records[1].id.to_string();
    for name in second.keys().filter(|name| second.get(*name) != first.get(*name)) {
        let mut mixed = second.clone();
        mixed.insert(name.clone(), first[name].clone());
        assert_eq!(refused(&root, &mixed).code(), said_of_a_change(name), "{name}");
    }
    // All of the first in the folder of the second.
    assert_eq!(refused(&root, &first).code(), "not-a-record");
    // Manifests computed anew without the key.
    let mut forged = second.clone();
    forged.insert("data/record.txt".to_owned(), b"other\n".to_vec());
    let list = String::from_utf8(forged["manifest-sha256.txt"].clone()).unwrap();
    let list = list
        .replace(&Digest::of(&second["data/record.txt"]).to_string(), &Digest::of(b"other\n").to_string());
    let tags = String::from_utf8(forged["tagmanifest-sha256.txt"].clone()).unwrap();
    let old = Digest::of(&second["manifest-sha256.txt"]).to_string();
    let tags = tags.replace(&old, &Digest::of(list.as_bytes()).to_string());
    forged.insert("manifest-sha256.txt".to_owned(), list.into_bytes());
    forged.insert("tagmanifest-sha256.txt".to_owned(), tags.into_bytes());
    assert_eq!(refused(&root, &forged).code(), "bad-seal");
}

#[test]
fn the_archive_itself_has_one_layout() {
    let sealed = sample(1, None);
    for len in 0..sealed.zip.len() {
        assert_eq!(judge(&sealed.zip[..len], &office()).unwrap_err().code(), "not-a-record", "{len} bytes");
    }
    for at in 0..sealed.zip.len() {
        let mut bytes = sealed.zip.clone();
        bytes[at] ^= 1 << (at % 8);
        judge(&bytes, &office()).unwrap_err();
    }
    for extra in [&b"\0"[..], b"PK", &sealed.zip] {
        let longer = [&sealed.zip, extra].concat();
        let before = [extra, &sealed.zip].concat();
        for bytes in [longer, before] {
            assert_eq!(judge(&bytes, &office()).unwrap_err().code(), "not-a-record");
        }
    }
    // The same files in another order.
    let mut entries = zip::read(&sealed.zip).unwrap();
    entries.swap(0, 1);
    let failure = judge(&zip::write(&entries).unwrap(), &office()).unwrap_err();
    assert!(failure.to_string().contains("order"), "{failure}");
}

#[test]
fn other_packers_are_refused_however_honest() {
    if !has("python3", &["--version"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let sealed = sample(1, None);
    crate::seal::unpack(&sealed, dir.path());
    let script = "import sys, pathlib, zipfile\n\
        for name, how in (('stored', zipfile.ZIP_STORED), ('deflated', zipfile.ZIP_DEFLATED)):\n\
        \x20   with zipfile.ZipFile(name + '.zip', 'w', how) as z:\n\
        \x20       for p in sorted(pathlib.Path(sys.argv[1]).rglob('*')): z.write(p)\n";
    let out = run(dir.path(), "python3", &["-c", script, &sealed.id.to_string()], b"");
    assert!(out.status.success(), "{}", crate::seal::words(&out));
    for name in ["stored.zip", "deflated.zip"] {
        let bytes =
            sendoff::ports::Disk::read(&sendoff::ports::system::SystemDisk, &dir.path().join(name), 1 << 20)
                .unwrap();
        let failure = judge(&bytes, &office()).unwrap_err();
        assert!(failure.to_string().contains("not a ZIP file as we write it"), "{failure}");
    }
}

/// One entry of a ZIP that no honest tool would write.
struct Odd {
    name: Vec<u8>,
    bytes: Vec<u8>,
    flags: u16,
    method: u16,
    claimed: Option<u32>,
}

impl Odd {
    fn plain(name: &str, bytes: &[u8]) -> Self {
        Self { name: name.as_bytes().to_vec(), bytes: bytes.to_vec(), flags: 0, method: 0, claimed: None }
    }
}

/// A ZIP writer without scruples, after PKWARE's APPNOTE 6.3.
fn odd_zip(entries: &[Odd], count: u16) -> Vec<u8> {
    let (mut out, mut directory) = (Vec::new(), Vec::new());
    for entry in entries {
        let at = u32::try_from(out.len()).unwrap();
        let size = entry.claimed.unwrap_or(u32::try_from(entry.bytes.len()).unwrap());
        let mut shared = Vec::new();
        for field in [20, entry.flags, entry.method, 0, 0x21] {
            shared.extend(field.to_le_bytes());
        }
        for field in [crc32fast(&entry.bytes), size, size] {
            shared.extend(field.to_le_bytes());
        }
        shared.extend(u16::try_from(entry.name.len()).unwrap().to_le_bytes());
        shared.extend([0, 0]);
        out.extend([&b"PK\x03\x04"[..], &shared, &entry.name, &entry.bytes].concat());
        directory
            .extend([&b"PK\x01\x02\x14\x00"[..], &shared, &[0; 10], &at.to_le_bytes(), &entry.name].concat());
    }
    let (start, size) = (u32::try_from(out.len()).unwrap(), u32::try_from(directory.len()).unwrap());
    out.extend([&directory[..], b"PK\x05\x06\0\0\0\0", &count.to_le_bytes(), &count.to_le_bytes()].concat());
    out.extend([&size.to_le_bytes()[..], &start.to_le_bytes(), &[0, 0]].concat());
    out
}

/// CRC-32 (ISO 3309), bit by bit: a second implementation beside the one under test.
fn crc32fast(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!0_u32, |crc, byte| {
        (0..8).fold(
            crc ^ u32::from(*byte),
            |crc, _| if crc & 1 == 1 { crc >> 1 ^ 0xedb8_8320 } else { crc >> 1 },
        )
    })
}

#[test]
fn hostile_archives_are_refused_with_a_reason() {
    let honest = odd_zip(&[Odd::plain("a/b", b"abc"), Odd::plain("a/c", b"")], 2);
    assert_eq!(
        zip::read(&honest).unwrap(),
        [Entry { name: "a/b", bytes: b"abc" }, Entry { name: "a/c", bytes: b"" }]
    );
    let one = |entry: Odd| zip::read(&odd_zip(&[entry], 1)).map(|_| ()).unwrap_err();
    for name in ["../x", "a/../x", "/x", "a//x", "./x", "a/.", "", "C:/x", "a\\x", "~/x", "a\0b", "a/", "é"]
    {
        assert!(matches!(one(Odd::plain(name, b"")), ZipFault::Name { .. }), "{name:?}");
    }
    assert!(matches!(one(Odd::plain(&"x".repeat(201), b"")), ZipFault::Name { .. }));
    let latin = Odd { name: vec![b'a', 0xe9], ..Odd::plain("", b"") };
    assert!(matches!(one(latin), ZipFault::Field { .. }));
    // A bomb must be packed to be one; a size that is only claimed runs off the end.
    assert!(matches!(one(Odd { method: 8, ..Odd::plain("a", b"\x03\0") }), ZipFault::Field { .. }));
    assert!(matches!(
        one(Odd { claimed: Some(u32::MAX), ..Odd::plain("a", b"abc") }),
        ZipFault::Short { .. }
    ));
    assert!(matches!(one(Odd { flags: 1, ..Odd::plain("a", b"abc") }), ZipFault::Field { .. }));
    assert!(matches!(one(Odd { flags: 8, ..Odd::plain("a", b"abc") }), ZipFault::Field { .. }));
    let twice = odd_zip(&[Odd::plain("a", b"1"), Odd::plain("a", b"2")], 2);
    assert!(matches!(zip::read(&twice), Err(ZipFault::Twice { .. })));
    let hidden = odd_zip(&[Odd::plain("a", b"1"), Odd::plain("b", b"2")], 1);
    assert!(matches!(zip::read(&hidden), Err(ZipFault::Gap { .. })));
    let many: Vec<Odd> = (0..513).map(|n| Odd::plain(&format!("f{n}"), b"")).collect();
    assert_eq!(zip::read(&odd_zip(&many, 513)), Err(ZipFault::TooMany { count: 513 }));
    assert_eq!(zip::read(&odd_zip(&many[..512], 512)).unwrap().len(), 512);
    for bytes in [&b""[..], b"PK", &[0; 22], b"PK\x05\x06", &[0xff; 64]] {
        zip::read(bytes).unwrap_err();
    }
    assert_eq!(zip::read(&odd_zip(&[], 0)), Ok(Vec::new()));
    assert!(matches!(zip::read(&vec![0; (64 << 20) + 1]), Err(ZipFault::TooLarge { .. })));
}

#[test]
fn what_cannot_be_read_is_not_written() {
    let entry = |name| Entry { name, bytes: b"x" };
    assert!(matches!(zip::write(&[entry("a"), entry("a")]), Err(ZipFault::Twice { .. })));
    assert!(matches!(zip::write(&[entry("../a")]), Err(ZipFault::Name { .. })));
    let names: Vec<String> = (0..513).map(|n| n.to_string()).collect();
    let many: Vec<Entry<'_>> = names.iter().map(|name| entry(name)).collect();
    assert!(matches!(zip::write(&many), Err(ZipFault::TooMany { count: 513 })));
    let big = vec![0; 33 << 20];
    let two = [Entry { name: "a", bytes: &big }, Entry { name: "b", bytes: &big }];
    assert!(matches!(zip::write(&two), Err(ZipFault::TooLarge { .. })));
}

fn entries() -> impl Strategy<Value = Vec<(String, Vec<u8>)>> {
    let entry = ("[A-Za-z0-9_-]{1,8}(/[a-z.]{1,4}x){0,2}", prop::collection::vec(any::<u8>(), 0..40));
    prop::collection::btree_map(entry.0, entry.1, 0..6).prop_map(|map| map.into_iter().collect())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(400) })]

    #[test]
    fn what_is_written_reads_back(files in entries()) {
        let list: Vec<Entry<'_>> = files.iter().map(|(name, bytes)| Entry { name, bytes }).collect();
        let bytes = zip::write(&list).unwrap();
        prop_assert_eq!(zip::read(&bytes).unwrap(), list);
    }

    /// Whatever is read gives the same bytes when it is written: there is no second spelling.
    #[test]
    fn what_is_read_writes_back(files in entries(), changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 0..3)) {
        let list: Vec<Entry<'_>> = files.iter().map(|(name, bytes)| Entry { name, bytes }).collect();
        let mut bytes = zip::write(&list).unwrap();
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        if let Ok(read) = zip::read(&bytes) {
            prop_assert_eq!(zip::write(&read).unwrap(), bytes);
        }
    }

    #[test]
    fn random_bytes_are_no_record_and_no_reason_to_stop(bytes in prop::collection::vec(any::<u8>(), 0..600)) {
        prop_assert!(judge(&bytes, &office()).is_err());
        prop_assert!(SealFile::parse(&bytes).is_err());
        prop_assert!(TabletKey::from_openssh(&bytes, Some("x")).is_err());
        let files = [("bagit.txt", &bytes[..])].into_iter().collect();
        prop_assert!(bag::judge(&files).is_err());
    }

    #[test]
    fn a_random_change_of_a_record_is_refused(changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..8)) {
        let sealed = sample(1, None);
        let mut bytes = sealed.zip.clone();
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        prop_assert_eq!(judge(&bytes, &office()).is_ok(), bytes == sealed.zip);
    }

    #[test]
    fn odd_lists_are_no_reason_to_stop(text in "[ -~\n\t\"=,%*é]{0,120}") {
        let _ = Signers::parse(&text);
        let _ = Signers::parse(&format!("t2 {text}"));
        let _ = Signers::default().distrust(&text);
        let _ = PublicKey::from_openssh(&text);
        let _ = bag::parse_manifest(&text);
        let _ = bag::Info::parse(&text);
        let mut files: bag::Files<'_> = [("bagit.txt", bag::BAGIT.as_bytes())].into_iter().collect();
        for name in ["manifest-sha256.txt", "bag-info.txt", "fetch.txt", "tagmanifest-sha512.txt"] {
            files.insert(name, text.as_bytes());
        }
        let _ = bag::judge(&files);
    }
}
