//! Verifying a record against its floor: SHA-256 of the bytes and one Ed25519 signature, in the same run.
#![allow(missing_docs, clippy::expect_used, clippy::print_stdout, reason = "a bench may stop loudly")]

use std::collections::BTreeMap;
use std::time::{Duration, Instant};

use sendoff::record::bag;
use sendoff::record::keys::{NAMESPACE, SealFile, TabletKey};
use sendoff::record::seal::{self, Digest, Kind, Sealing};
use sendoff::record::signers::Signers;
use sendoff::record::verify::{Input, JudgedAt, verify};
use sendoff::record::zip;

const ROUNDS: u32 = 400;
/// Size of a full record of a handoff, in bytes.
const PAYLOAD: usize = 300_000;

fn time(mut work: impl FnMut()) -> Duration {
    let start = Instant::now();
    for _ in 0..ROUNDS {
        work();
    }
    start.elapsed() / ROUNDS
}

fn main() {
    let key = TabletKey::generate([7; 32], "t2").expect("a key");
    let sealed_at = "2026-07-24T15:00:00Z".parse().expect("a time");
    let id = seal::record_id("t2", key.public(), 1);
    let head = format!("{{\"schema\":\"1.0\",\"id\":\"{id}\",\"tablet\":\"t2\",\"number\":1,\"filler\":\"");
    let record = format!("{head}{}\"}}", "x".repeat(PAYLOAD));
    let payload = BTreeMap::from([(bag::RECORD_FILE.to_owned(), record.into_bytes())]);
    let sealing = Sealing {
        tablet: "t2",
        number: 1,
        previous: None,
        kind: Kind::Handoff,
        organization: "Bench",
        sealed: sealed_at,
    };
    let sealed = seal::seal(&sealing, &payload, &key).expect("a record");
    let signers = Signers::only(*key.public(), "t2");
    let whole = time(|| {
        let _ = verify(Input::Zip(&sealed.zip), &signers, JudgedAt::Now(sealed_at)).expect("it is good");
    });
    let entries = zip::read(&sealed.zip).expect("a ZIP");
    let bytes = |end: &str| entries.iter().find(|e| e.name.ends_with(end)).expect("a file").bytes;
    let (list, signature) = (bytes("/tagmanifest-sha256.txt"), bytes("/seal.sshsig"));
    let floor = time(|| {
        let digest = Digest::of(std::hint::black_box(&sealed.zip));
        let seal = SealFile::parse(signature).expect("a seal");
        assert!(seal.holds(NAMESPACE, list) && digest != sealed.digest);
    });
    let ratio = whole.as_secs_f64() / floor.as_secs_f64();
    println!("verify {whole:?}, floor {floor:?}, ratio {ratio:.2} (bar 1.15)");
}
