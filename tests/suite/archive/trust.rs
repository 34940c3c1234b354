//! Whom the office trusts: changed one tablet at a time, and confirmed by the stock `ssh-keygen`.

use std::path::Path;
use std::sync::Arc;

use sendoff::archive::Archive;
use sendoff::commands::{COULD_NOT_RUN, FINDINGS, GOOD};
use sendoff::ports::system::SystemDisk;
use sendoff::record::bag;
use sendoff::record::keys::NAMESPACE;

use super::support::{NOON, chain, ports, signers, stick, text, with_disk};
use crate::commands::run_with;
use crate::seal::{files, has, key, run, t2, words};

const LIST: &str = "/office/trust/allowed_signers";

#[test]
fn tablets_are_trusted_retired_and_distrusted_one_at_a_time() {
    let disk = stick(&[], &[]);
    let world = ports(&disk, NOON);
    let keys = |args: &[&str]| run_with(&world, &[&["keys"], args, &["--archive", "/office"]].concat());
    assert_eq!(keys(&["list"]).code, COULD_NOT_RUN);
    let office = keys(&["office"]);
    assert_eq!((office.code, office.out.starts_with("ssh-ed25519 ")), (GOOD, true), "{}", office.err);
    assert_eq!(keys(&["office"]).out, office.out, "a key that is there stays");
    let (t2_line, t3_line) = (signers(&[&t2()]), signers(&[&key(3, "t3")]));
    assert_eq!(keys(&["trust", t2_line.trim()]).code, GOOD);
    assert_eq!(keys(&["trust", t3_line.trim()]).code, GOOD);
    let before = text(&disk, LIST);
    let retired = keys(&["retire", "t2", "--at", "2026-07-01T00:00:00Z"]);
    assert_eq!(retired.out, format!("retired     t2 {}\n", t2().fingerprint()));
    let after = text(&disk, LIST);
    let expected = before.replacen(
        "valid-after=\"20260601000000Z\" ",
        "valid-after=\"20260601000000Z\",valid-before=\"20260701000000Z\" ",
        1,
    );
    assert_eq!(after, expected);
    // Earlier is possible, later is not: what was refused does not come back by itself.
    assert_eq!(keys(&["retire", "t2", "--at", "2026-07-02T00:00:00Z"]).code, FINDINGS);
    assert_eq!(keys(&["retire", "t2", "--at", "2026-06-20T00:00:00Z"]).code, GOOD);
    assert_eq!(keys(&["retire", "t2", "--at", "2026-05-20T00:00:00Z"]).code, FINDINGS);
    assert_eq!(keys(&["distrust", "t3"]).code, GOOD);
    assert_eq!(keys(&["distrust", "t3"]).out, "t3 is distrusted already\n");
    assert_eq!(keys(&["distrust", "t4"]).code, FINDINGS);
    let listed = keys(&["list"]).out;
    let words: Vec<&str> = listed.lines().filter_map(|line| line.split_whitespace().next()).collect();
    assert_eq!(words, ["office", "retired", "distrusted"]);
    let json: serde_json::Value = serde_json::from_str(&keys(&["list", "--format", "json"]).out).unwrap();
    assert_eq!(json[1]["valid_before"], "2026-06-20T00:00:00Z");
}

#[test]
fn what_would_trust_too_much_is_refused() {
    let disk = stick(&[], &[]);
    let mut archive = Archive::open_or_create(&ports(&disk, NOON), Path::new("/office")).unwrap();
    let line = signers(&[&t2()]);
    let line = line.trim();
    archive.trust(line).unwrap();
    let before = text(&disk, LIST);
    let other = signers(&[&key(3, "t3")]);
    for bad in [
        line.to_owned(),
        t2().public().to_openssh("t2"),
        other.replace(" namespaces=\"record@sendoff\",", " "),
        other.replace("record@sendoff", "record@sendoff,checkpoint@sendoff"),
        other.replace("record@sendoff", "checkpoint@sendoff"),
        other.replacen("t3", "office", 1),
        other.replacen("t3", "*", 1),
        other.replace("00Z\"", "00\""),
        format!("{other}{}", signers(&[&key(4, "t4")])),
        String::new(),
        "# nothing".to_owned(),
    ] {
        archive.trust(bad.trim()).unwrap_err();
    }
    assert_eq!(text(&disk, LIST), before);
    archive.distrust("t2").unwrap();
    let again = archive.trust(line).unwrap_err();
    assert!(again.to_string().contains("distrusted"), "{again}");
}

/// A lost tablet: its record from before stays good for OpenSSH as well, at the time of its receipt.
#[test]
fn stock_ssh_keygen_agrees_about_a_retired_tablet() {
    if !has("ssh-keygen", &[]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let world = with_disk(Arc::new(SystemDisk), NOON);
    let mut archive = Archive::open_or_create(&world, &dir.path().join("archive")).unwrap();
    archive.trust(signers(&[&t2()]).trim()).unwrap();
    archive.retire("t2", "2026-06-14T00:00:00Z".parse().unwrap()).unwrap();
    let record = chain(&t2(), 1).remove(0);
    let mut inside = files(&record);
    std::fs::write(dir.path().join("seal.sshsig"), &inside[bag::SEAL_FILE]).unwrap();
    let message = inside.remove(bag::TAG_MANIFEST_FILE).unwrap();
    let stock = |at: &str, more: &[&str]| {
        let at = format!("verify-time={at}");
        let list = "archive/trust/allowed_signers";
        let args = ["-Y", "verify", "-f", list, "-I", "t2", "-n", NAMESPACE, "-s", "seal.sshsig", "-O", &at];
        run(dir.path(), "ssh-keygen", &[&args[..], more].concat(), &message)
    };
    let good = stock("20260613120000Z", &[]);
    assert!(good.status.success(), "{}", words(&good));
    assert!(!stock("20260614000001Z", &[]).status.success());
    assert!(!stock("20260531235959Z", &[]).status.success());
    archive.distrust("t2").unwrap();
    assert!(!stock("20260613120000Z", &["-r", "archive/trust/distrusted"]).status.success());
}
