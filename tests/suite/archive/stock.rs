//! Every kind of sealed record is confirmed by outside tools: the reference validator of the bag, OpenSSH, and a
//! validator of the schema.

use std::collections::BTreeMap;

use sendoff::record::bag;
use sendoff::record::form;
use sendoff::record::keys::NAMESPACE;
use sendoff::record::seal::Kind;
use sendoff::record::zip;

use super::many::{Made, Tablet, WHOLE};
use crate::seal::{Payload, has, put_all, run, time, words};

const SAMPLE: u32 = 50;
/// PyPI `bagit` and `jsonschema`, one line for each bag.
const SCRIPT: &str = "\
import bagit, json, jsonschema, sys
schema = jsonschema.Draft202012Validator(json.load(open('schema.json')))
for name in sys.stdin.read().split():
    bagit.Bag(name).validate()
    schema.validate(json.load(open(name + '/data/record.json')))
    print('valid', name)
";

/// Records of all kinds there are: a chain of fifty, two rehearsals, and one of the size of a real one.
fn records() -> Vec<(Made, Vec<u8>)> {
    let mut tablet = Tablet::new("o1", 51, SAMPLE);
    let mut records: Vec<(Made, Vec<u8>)> = (0..SAMPLE).map(|_| tablet.next()).collect();
    let practice = Tablet::new("o2", 52, 2);
    let first = practice.seal(1, None, Kind::Rehearsal, time("2026-05-04T09:00:00Z"));
    let second = practice.seal(2, Some(&first.0), Kind::Rehearsal, time("2026-05-05T09:00:00Z"));
    let last = records[49].0.clone();
    let whole = tablet.seal(WHOLE, Some(&last), Kind::Handoff, time("2026-05-06T09:00:00Z"));
    records.extend([first, second, whole]);
    let mut kinds: BTreeMap<Kind, usize> = BTreeMap::new();
    records.iter().for_each(|(made, _)| *kinds.entry(made.kind).or_default() += 1);
    let all = [Kind::Handoff, Kind::NotHandedOver, Kind::Amendment, Kind::Rehearsal];
    assert!(all.iter().all(|kind| kinds[kind] >= 2), "{kinds:?}");
    records
}

#[test]
fn stock_tools_confirm_every_kind_of_record() {
    if !(has("ssh-keygen", &[]) && has("python3", &["-c", "import bagit, jsonschema"])) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let signers = format!("{}\n{}\n", Tablet::new("o1", 51, 1).line(), Tablet::new("o2", 52, 1).line());
    std::fs::write(dir.path().join("allowed_signers"), signers).unwrap();
    std::fs::write(dir.path().join("schema.json"), form::SCHEMA).unwrap();
    let records = records();
    let mut names = String::new();
    for (made, bytes) in &records {
        let root = format!("{}/", made.id);
        let entries = zip::read(bytes).unwrap();
        let name = |name: &str| name.strip_prefix(&root).unwrap().to_owned();
        let files: Payload = entries.iter().map(|e| (name(e.name), e.bytes.to_vec())).collect();
        put_all(&dir.path().join(made.id.to_string()), &files);
        let seal = format!("{}/{}", made.id, bag::SEAL_FILE);
        let args = ["-Y", "verify", "-f", "allowed_signers", "-I", made.id.tablet(), "-n", NAMESPACE];
        let args = [&args[..], &["-s", &seal, "-O", "verify-time=20260601000000Z"]].concat();
        let out = run(dir.path(), "ssh-keygen", &args, &files[bag::TAG_MANIFEST_FILE]);
        assert!(out.status.success(), "{}: {}", made.id, words(&out));
        names += &format!("{}\n", made.id);
    }
    let out = run(dir.path(), "python3", &["-c", SCRIPT], names.as_bytes());
    let said = words(&out);
    assert!(out.status.success(), "{said}");
    assert_eq!(said.lines().filter(|line| line.starts_with("valid ")).count(), records.len(), "{said}");
}
