//! Verdicts: whom the office trusts, at which time, in which chain; and the stock tools beside us.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "helpers of tests may fail loudly"
)]

use std::path::{Path, PathBuf};

use sendoff::ports::fake::MemoryDisk;
use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Access, Disk};
use sendoff::record::bag;
use sendoff::record::keys::{NAMESPACE, TabletKey, allowed_signers_line};
use sendoff::record::seal::{Digest, Sealed, record_id, seal};
use sendoff::record::signers::Signers;
use sendoff::record::verify::{Failure, Input, JudgedAt, Seen, Verdict, verify, verify_paths};
use sendoff::record::zip::{self, Entry};

use crate::seal::{
    Payload, chain_of, files, has, key, payload, put_all, run, sample, sealing, t2, time, unpack, words,
};

pub const RECEIVED: &str = "2026-06-12T18:00:00Z";

/// The office trusts `t2` from the first of June 2026 on.
pub fn office() -> Signers {
    Signers::parse(&allowed_signers_line(t2().public(), "t2", time("2026-06-01T00:00:00Z"))).unwrap()
}

pub fn judge(bytes: &[u8], signers: &Signers) -> Result<Seen, Failure> {
    verify(Input::Zip(bytes), signers, JudgedAt::Received(time(RECEIVED)))
}

/// Packs files as a record is packed: tag files first, then the payload by name.
pub fn pack(root: &str, files: &Payload) -> Vec<u8> {
    let tags = bag::TAG_FILES.into_iter().filter(|name| files.contains_key(*name));
    let rest = files.keys().map(String::as_str).filter(|name| !bag::TAG_FILES.contains(name));
    let names: Vec<(String, &[u8])> =
        tags.chain(rest).map(|name| (format!("{root}/{name}"), files[name].as_slice())).collect();
    let entries: Vec<Entry<'_>> = names.iter().map(|(name, bytes)| Entry { name, bytes }).collect();
    zip::write(&entries).unwrap()
}

/// Computes manifests and seal anew over whatever `files` holds: what someone with a key can do.
pub fn reseal(files: &mut Payload, key: &TabletKey) {
    let digests = |files: &Payload, names: &[&str]| {
        bag::manifest(names.iter().map(|name| (*name, Digest::of(&files[*name]))))
    };
    let data: Vec<&str> = files.keys().map(String::as_str).filter(|name| name.starts_with("data/")).collect();
    let manifest = digests(files, &data);
    files.insert(bag::MANIFEST_FILE.to_owned(), manifest.into_bytes());
    let not_listed = |name: &&str| !name.starts_with("data/") && !bag::TAG_FILES[3..].contains(name);
    let tags: Vec<&str> = files.keys().map(String::as_str).filter(not_listed).collect();
    let list = digests(files, &tags);
    let seal = key.sign(NAMESPACE, list.as_bytes()).unwrap();
    files.insert(bag::TAG_MANIFEST_FILE.to_owned(), list.into_bytes());
    files.insert(bag::SEAL_FILE.to_owned(), seal.into_bytes());
}

fn replace(files: &mut Payload, name: &str, from: &str, to: &str) {
    let text = String::from_utf8(files[name].clone()).unwrap();
    assert!(text.contains(from), "{text}");
    files.insert(name.to_owned(), text.replace(from, to).into_bytes());
}

fn code(result: &Result<Seen, Failure>) -> &'static str {
    result.as_ref().map_or_else(Failure::code, |_| "good")
}

#[test]
fn a_record_of_a_known_tablet_is_good() {
    let sealed = sample(1, None);
    let seen = judge(&sealed.zip, &office()).unwrap();
    assert_eq!((&seen.id, seen.digest, seen.number, seen.previous), (&sealed.id, sealed.digest, 1, None));
    assert_eq!((seen.tablet.as_str(), seen.organization.as_str()), ("t2", "Juniper Flat Motorhome Hire"));
    assert_eq!(seen.key, *t2().public());
}

#[test]
fn the_stock_tools_confirm_it_without_us() {
    let dir = tempfile::tempdir().unwrap();
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    SystemDisk.put_new(&dir.path().join(format!("{root}.zip")), &sealed.zip, Access::Usual).unwrap();
    if has("python3", &["--version"]) {
        // Python's reader sees the same files and check sums, and unpacks them for the tools below.
        let script = "import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; \
                      z.extractall(); print('\\n'.join(z.namelist()))";
        let out = run(dir.path(), "python3", &["-c", script, &format!("{root}.zip")], b"");
        let names: Vec<String> =
            zip::read(&sealed.zip).unwrap().iter().map(|e| format!("{}\n", e.name)).collect();
        assert_eq!(words(&out), names.concat());
    } else {
        unpack(&sealed, dir.path());
    }
    let bag = dir.path().join(&root);
    let line = allowed_signers_line(t2().public(), "t2", time("2026-06-01T00:00:00Z"));
    SystemDisk
        .put_new(&dir.path().join("allowed_signers"), format!("{line}\n").as_bytes(), Access::Usual)
        .unwrap();
    if has("sha256sum", &["--version"]) {
        let args = ["--check", "--strict", "--quiet", "tagmanifest-sha256.txt", "manifest-sha256.txt"];
        let out = run(&bag, "sha256sum", &args, b"");
        assert!(out.status.success() && words(&out).is_empty(), "{}", words(&out));
        let out = run(&bag, "sha256sum", &["tagmanifest-sha256.txt"], b"");
        assert!(words(&out).starts_with(&sealed.digest.to_string()));
    }
    if has("ssh-keygen", &[]) {
        let message = files(&sealed).remove(bag::TAG_MANIFEST_FILE).unwrap();
        let stock = |tablet: &str, extra: &[&str], message: &[u8]| {
            let mut args = vec![
                "-Y",
                "verify",
                "-f",
                "../allowed_signers",
                "-I",
                tablet,
                "-n",
                NAMESPACE,
                "-s",
                "seal.sshsig",
            ];
            args.extend(extra);
            run(&bag, "ssh-keygen", &args, message)
        };
        let out = stock("t2", &["-O", "verify-time=20260612180000Z"], &message);
        let expected =
            format!("Good \"{NAMESPACE}\" signature for t2 with ED25519 key {}\n", t2().fingerprint());
        assert_eq!(words(&out), expected);
        assert!(!stock("t3", &[], &message).status.success());
        assert!(!stock("t2", &["-O", "verify-time=20260531180000Z"], &message).status.success());
        assert!(!stock("t2", &[], &message[1..]).status.success());
        let lost = format!("{}\n", t2().public().to_openssh("t2"));
        SystemDisk.put_new(&dir.path().join("distrusted"), lost.as_bytes(), Access::Usual).unwrap();
        assert!(!stock("t2", &["-r", "../distrusted"], &message).status.success());
    }
}

#[test]
fn the_key_decides_and_the_office_decides_about_the_key() {
    let sealed = sample(1, None);
    let public = t2().public().to_openssh("t2");
    let nobody = judge(&sealed.zip, &Signers::default()).unwrap_err();
    let told = format!(
        "the seal holds, but the office does not know tablet t2 with the key {}: its key is not listed",
        t2().fingerprint()
    );
    assert_eq!((nobody.code(), nobody.to_string()), ("unknown-tablet", told));
    let other = Signers::only(*t2().public(), "t3");
    assert!(judge(&sealed.zip, &other).unwrap_err().to_string().contains("listed as that of t3"));
    let office_only = Signers::parse(&format!("t2 namespaces=\"checkpoint@sendoff\" {public}")).unwrap();
    assert!(judge(&sealed.zip, &office_only).unwrap_err().to_string().contains("not for record@sendoff"));
    let distrusted = office().distrust(&public).unwrap();
    assert_eq!(judge(&sealed.zip, &distrusted).unwrap_err().code(), "distrusted");
    // Distrust needs no line among the trusted.
    let distrusted = Signers::default().distrust(&public).unwrap();
    assert_eq!(judge(&sealed.zip, &distrusted).unwrap_err().code(), "distrusted");
}

#[test]
fn validity_is_judged_at_receipt_or_now_and_the_verdict_says_which() {
    let sealed = sample(1, None);
    let public = t2().public().to_openssh("t2");
    let window = "valid-after=\"20260601Z\",valid-before=\"20260701Z\"";
    let signers = Signers::parse(&format!("t2 namespaces=\"record@sendoff\",{window} {public}")).unwrap();
    let disk = MemoryDisk::new();
    let path = PathBuf::from("/in/a.zip");
    disk.plant(&path, &sealed.zip);
    let at = |received: Option<&str>, now: &str| {
        verify_paths(&disk, std::slice::from_ref(&path), &signers, received.map(time), time(now)).remove(0)
    };
    let late = at(None, "2026-08-01T00:00:00Z");
    assert_eq!(late.judged_at, JudgedAt::Now(time("2026-08-01T00:00:00Z")));
    assert_eq!(
        late.outcome.unwrap_err().to_string(),
        "the seal holds, but tablet t2 was valid only until 2026-07-01T00:00:00Z, and this was judged at 2026-08-01T00:00:00Z"
    );
    let in_time = at(Some(RECEIVED), "2026-08-01T00:00:00Z");
    assert_eq!((in_time.judged_at, in_time.outcome.is_ok()), (JudgedAt::Received(time(RECEIVED)), true));
    let early = at(Some("2026-05-31T23:59:59Z"), RECEIVED).outcome.unwrap_err();
    assert_eq!(early.code(), "not-valid-at-that-time");
    assert!(early.to_string().contains("is valid only from 2026-06-01T00:00:00Z"), "{early}");
}

#[test]
fn someone_with_another_key_gets_nowhere() {
    let evil = key(66, "t3");
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    // Everything computed anew, with a key that nobody knows; the id is still that of t2's key.
    let mut forged = files(&sealed);
    forged.insert("data/record.txt".to_owned(), b"nothing was said\n".to_vec());
    let size: usize = forged.iter().filter(|(n, _)| n.starts_with("data/")).map(|(_, b)| b.len()).sum();
    let octets: usize = payload(&sealed.id).values().map(Vec::len).sum();
    replace(&mut forged, "bag-info.txt", &format!("{octets}.5"), &format!("{size}.5"));
    reseal(&mut forged, &evil);
    assert_eq!(code(&judge(&pack(&root, &forged), &office())), "not-a-record");
    // A whole new record that says to be t2's: by an unknown key, and by that of another good tablet.
    let id = record_id("t2", evil.public(), 1);
    let new = seal(&sealing(1, None), &payload(&id), &evil).unwrap();
    assert_eq!(code(&judge(&new.zip, &office())), "unknown-tablet");
    let both = format!(
        "{}\n{}\n",
        allowed_signers_line(t2().public(), "t2", time("2026-06-01T00:00:00Z")),
        allowed_signers_line(evil.public(), "t3", time("2026-06-01T00:00:00Z"))
    );
    assert_eq!(code(&judge(&new.zip, &Signers::parse(&both).unwrap())), "unknown-tablet");
}

/// The holder of the key is bound to the form as well: what it seals otherwise is no record.
#[test]
fn a_record_sealed_otherwise_is_none() {
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    let attempt = |change: &dyn Fn(&mut Payload)| {
        let mut files = files(&sealed);
        change(&mut files);
        reseal(&mut files, &t2());
        judge(&pack(&root, &files), &office()).map(|_| ()).unwrap_err()
    };
    let info = |from: &'static str, to: &'static str| {
        attempt(&move |f: &mut Payload| replace(f, "bag-info.txt", from, to))
    };
    let cases = [
        attempt(&|f| replace(f, "bagit.txt", "1.0", "0.97")),
        info("Sendoff-Kind: handoff", "Sendoff-Kind: gift"),
        info("Sendoff-Tablet: t2", "Sendoff-Tablet: t3"),
        info("Sendoff-Number: 1", "Sendoff-Number: 01"),
        info("Sendoff-Number: 1", "Sendoff-Number: 2"),
        info("Sendoff-Previous: none", "Sendoff-Previous: None"),
        info("Sendoff-Format: 1", "Sendoff-Format: 0"),
        info("Sendoff-Format: 1\n", ""),
        info("Bagging-Date: 2026-06-12", "Bagging-Date: 2026-06-13"),
        info("17:21:07Z", "17:21:07.000Z"),
        info("Juniper Flat", "Juniper\n  Flat"),
        info("Payload-Oxum: ", "Payload-Oxum: 1"),
        info("Sendoff-Sealed", "Extra: x\nSendoff-Sealed"),
        info("External-Identifier: t2", "External-Identifier: t9"),
        attempt(&|f| drop(f.insert("note.txt".to_owned(), Vec::new()))),
        attempt(&|f| drop(f.remove("data/record.json"))),
        attempt(&|f| replace(f, "data/record.json", "\"number\": 1", "\"number\": 2")),
    ];
    for (at, failure) in cases.iter().enumerate() {
        assert_eq!(failure.code(), "not-a-record", "case {at}: {failure}");
    }
    let folder = judge(&pack("t2-000000-000001", &files(&sealed)), &office()).unwrap_err();
    assert!(folder.to_string().contains("folder is named"), "{folder}");
}

#[test]
fn a_newer_format_is_told_politely_and_only_when_the_rest_is_whole() {
    let sealed = sample(1, None);
    let root = sealed.id.to_string();
    let mut newer = files(&sealed);
    replace(&mut newer, "bag-info.txt", "Sendoff-Format: 1\n", "Sendoff-Format: 2\nSendoff-Mood: sunny\n");
    newer.insert("more.txt".to_owned(), b"a tag file of the future\n".to_vec());
    reseal(&mut newer, &t2());
    let failure = judge(&pack(&root, &newer), &office()).unwrap_err();
    assert_eq!(failure, Failure::NewerFormat { what: "Sendoff-Format", found: 2, known: 1 });
    assert!(failure.to_string().contains("nothing was changed"), "{failure}");
    let unknown = judge(&pack(&root, &newer), &Signers::default());
    assert_eq!(code(&unknown), "unknown-tablet");
    newer.insert("data/record.txt".to_owned(), b"other\n".to_vec());
    assert_eq!(
        judge(&pack(&root, &newer), &office()),
        Err(Failure::FileChanged("data/record.txt".to_owned()))
    );

    let mut schema = files(&sealed);
    replace(&mut schema, "data/record.json", "\"1.0\"", "\"2.7\"");
    reseal(&mut schema, &t2());
    let failure = judge(&pack(&root, &schema), &office()).unwrap_err();
    assert_eq!(
        (failure.code(), failure.to_string().contains("record.json, 2")),
        ("newer-format", true),
        "{failure}"
    );
    replace(&mut schema, "data/record.json", "\"2.7\"", "\"1.9\"");
    reseal(&mut schema, &t2());
    assert_eq!(code(&judge(&pack(&root, &schema), &office())), "good");
}

#[test]
fn an_unpacked_record_is_judged_like_a_packed_one() {
    let dir = tempfile::tempdir().unwrap();
    let sealed = sample(1, None);
    unpack(&sealed, dir.path());
    let bag = dir.path().join(sealed.id.to_string());
    let at = JudgedAt::Received(time(RECEIVED));
    let judge = |path: &Path| verify(Input::Folder(&SystemDisk, path), &office(), at);
    assert_eq!(judge(&bag).unwrap().digest, sealed.digest);
    SystemDisk.put_new(&bag.join("data/.DS_Store"), b"", Access::Usual).unwrap();
    assert_eq!(judge(&bag), Err(Failure::FileAdded("data/.DS_Store".to_owned())));
    SystemDisk.remove(&bag.join("data/.DS_Store")).unwrap();
    SystemDisk.replace(&bag.join("data/record.txt"), b"other\n", Access::Usual).unwrap();
    assert_eq!(judge(&bag), Err(Failure::FileChanged("data/record.txt".to_owned())));
    SystemDisk.remove(&bag.join("data/record.txt")).unwrap();
    assert_eq!(judge(&bag), Err(Failure::FileMissing("data/record.txt".to_owned())));
    let renamed = dir.path().join("renamed");
    put_all(&renamed, &files(&sealed));
    assert_eq!(code(&judge(&renamed)), "not-a-record");
    assert_eq!(code(&judge(&dir.path().join("nothing"))), "not-a-record");
}

/// Judges what lies in `/in`, record by record.
fn codes(disk: &MemoryDisk) -> Vec<(String, &'static str)> {
    let verdicts =
        verify_paths(disk, &[PathBuf::from("/in")], &office(), Some(time(RECEIVED)), time(RECEIVED));
    let name = |v: &Verdict| v.path.strip_prefix("/in").unwrap_or(&v.path).display().to_string();
    verdicts.iter().map(|v| (name(v), code(&v.outcome))).collect()
}

fn laid_out(records: &[(&str, &Sealed)]) -> MemoryDisk {
    let disk = MemoryDisk::new();
    for (name, sealed) in records {
        disk.plant(&Path::new("/in").join(name), &sealed.zip);
    }
    disk
}

#[test]
fn a_folder_is_searched_to_its_depths() {
    let records = chain_of(3);
    let disk = laid_out(&[("2026/06/a.zip", &records[0]), ("2026/07/b.ZIP", &records[1])]);
    for (name, bytes) in files(&records[2]) {
        disk.plant(&Path::new("/in/c").join(records[2].id.to_string()).join(name), &bytes);
    }
    disk.plant(Path::new("/in/readme.txt"), b"not a record, and does not look like one");
    disk.plant(Path::new("/in/.x.zip"), b"half written");
    disk.plant(Path::new("/in/z.zip"), b"no record");
    let bag = format!("c/{}", records[2].id);
    let expected =
        [("2026/06/a.zip", "good"), ("2026/07/b.ZIP", "good"), (&bag, "good"), ("z.zip", "not-a-record")];
    assert_eq!(codes(&disk), expected.map(|(name, code)| (name.to_owned(), code)));
    let deep = MemoryDisk::new();
    deep.plant(&Path::new("/in").join("x/".repeat(17)).join("a.zip"), &records[0].zip);
    assert_eq!(codes(&deep), [(["x"; 17].join("/"), "not-a-record")]);
    let empty = MemoryDisk::new();
    empty.make_dir(Path::new("/in")).unwrap();
    assert_eq!(codes(&empty), [(String::new(), "not-a-record")]);
    assert_eq!(codes(&MemoryDisk::new()), [(String::new(), "not-a-record")]);
}

#[test]
fn gaps_and_forks_are_told_at_the_record_that_shows_them() {
    let r = chain_of(5);
    let told = |records: &[(&str, &Sealed)]| {
        codes(&laid_out(records)).into_iter().map(|(_, code)| code).collect::<Vec<_>>()
    };
    assert_eq!(told(&[("a.zip", &r[0]), ("b.zip", &r[1]), ("c.zip", &r[2])]), ["good"; 3]);
    // The order of the paths does not matter, nor does where the chain begins.
    assert_eq!(told(&[("a.zip", &r[4]), ("b.zip", &r[3]), ("c.zip", &r[2])]), ["good"; 3]);
    assert_eq!(told(&[("a.zip", &r[3])]), ["good"]);
    assert_eq!(told(&[("a.zip", &r[0]), ("d.zip", &r[3]), ("e.zip", &r[4])]), ["good", "chain-gap", "good"]);
    // A copy is no fork.
    assert_eq!(told(&[("a.zip", &r[0]), ("b.zip", &r[1]), ("copy.zip", &r[0])]), ["good"; 3]);
    // The same number sealed twice: the chain of a tablet that was restored from a copy.
    let again = seal(
        &sendoff::record::seal::Sealing { organization: "Other Hire", ..sealing(2, Some(r[0].digest)) },
        &payload(&r[1].id),
        &t2(),
    )
    .unwrap();
    assert_eq!(
        told(&[("a.zip", &r[0]), ("b.zip", &r[1]), ("c.zip", &again)]),
        ["good", "chain-fork", "chain-fork"]
    );
    // A record that follows another one than the one given.
    assert_eq!(told(&[("a.zip", &again), ("b.zip", &r[2])]), ["good", "chain-fork"]);
    // Chains of two keys have nothing to do with each other.
    let other = key(5, "t2");
    let third = seal(&sealing(1, None), &payload(&record_id("t2", other.public(), 1)), &other).unwrap();
    assert_eq!(
        told(&[("a.zip", &r[0]), ("b.zip", &third), ("c.zip", &r[1])]),
        ["good", "unknown-tablet", "good"]
    );
    let gap = verify_paths(
        &laid_out(&[("a.zip", &r[0]), ("d.zip", &r[3])]),
        &["/in".into()],
        &office(),
        None,
        time(RECEIVED),
    );
    assert!(
        gap[1].outcome.as_ref().unwrap_err().to_string().ends_with("before it numbers 2 to 3 are missing")
    );
}

#[test]
fn a_record_whose_payload_failed_still_is_a_link() {
    let r = chain_of(3);
    let mut bad = files(&r[1]);
    bad.insert("data/record.txt".to_owned(), b"other\n".to_vec());
    let disk = laid_out(&[("a.zip", &r[0]), ("c.zip", &r[2])]);
    disk.plant(Path::new("/in/b.zip"), &pack(&r[1].id.to_string(), &bad));
    let told: Vec<&str> = codes(&disk).into_iter().map(|(_, code)| code).collect();
    assert_eq!(told, ["good", "file-changed", "good"]);
}

#[test]
fn a_verdict_has_a_json_form() {
    let r = chain_of(2);
    let mut bad = files(&r[0]);
    bad.remove("data/record.txt");
    let disk = laid_out(&[("b.zip", &r[1])]);
    disk.plant(Path::new("/in/a.zip"), &pack(&r[0].id.to_string(), &bad));
    let verdicts =
        verify_paths(&disk, &["/in".into()], &office(), Some(time(RECEIVED)), time("2027-01-01T00:00:00Z"));
    let json: Vec<serde_json::Value> = verdicts.iter().map(Verdict::to_json).collect();
    assert_eq!(
        json[0],
        serde_json::json!({
            "path": "/in/a.zip", "good": false, "judged_at": RECEIVED, "judged_by": "received",
            "code": "file-missing", "file": "data/record.txt",
            "message": "data/record.txt is missing: it was removed or renamed after the record was sealed",
        })
    );
    assert_eq!(
        json[1],
        serde_json::json!({
            "path": "/in/b.zip", "good": true, "judged_at": RECEIVED, "judged_by": "received",
            "record": {
                "id": r[1].id.to_string(), "tablet": "t2", "number": 2, "previous": r[0].digest.to_string(),
                "digest": r[1].digest.to_string(), "kind": "handoff", "organization": "Juniper Flat Motorhome Hire",
                "sealed": "2026-06-12T17:21:07Z", "fingerprint": t2().fingerprint(),
            },
        })
    );
}
