//! The cases before outside tools: the Python package `bagit` of the Library of Congress, and ZIP files that
//! stock `zip` makes of them.

use std::collections::BTreeMap;

use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Access, Disk};
use sendoff::record::bag::{BagFault, judge_path};

use super::{Case, accepted, refused};
use crate::seal::{has, run, sample, unpack, words};

#[test]
fn bagit_of_the_library_of_congress_accepts_a_record() {
    if !has("python3", &["-c", "import bagit"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let sealed = sample(1, None);
    unpack(&sealed, dir.path());
    let out = run(dir.path(), "python3", &["-m", "bagit", "--validate", &sealed.id.to_string()], b"");
    assert!(out.status.success(), "{}", words(&out));
    let record = dir.path().join(sealed.id.to_string()).join("data/record.txt");
    SystemDisk.replace(&record, b"other", Access::Usual).unwrap();
    let out = run(dir.path(), "python3", &["-m", "bagit", "--validate", &sealed.id.to_string()], b"");
    assert!(!out.status.success());
}

/// Each case with what we say of it.
fn all() -> Vec<(Case, &'static str)> {
    let valid = accepted::all().into_iter().map(|case| (case, "valid"));
    valid.chain(refused::all().into_iter().map(|case| (case, "invalid"))).collect()
}

/// Every case, judged by `bagit` 1.9.0 too: it differs just where the cases say so, and where they say so it does.
#[test]
fn bagit_agrees_but_for_what_is_noted() {
    if !has("python3", &["-c", "import bagit"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let cases = all();
    for (at, (case, _)) in cases.iter().enumerate() {
        case.bag.put(&dir.path().join(at.to_string()));
    }
    let script = "import bagit, logging, sys\n\
        logging.disable(logging.CRITICAL)\n\
        for n in range(int(sys.argv[1])):\n\
        \x20   try:\n\
        \x20       bagit.Bag(str(n)).validate(); print(n, 'valid')\n\
        \x20   except Exception as e: print(n, 'invalid')\n";
    let out = run(dir.path(), "python3", &["-c", script, &cases.len().to_string()], b"");
    let said = words(&out);
    let said: BTreeMap<usize, &str> = said
        .lines()
        .filter_map(|line| line.split_once(' '))
        .map(|(n, word)| (n.parse().unwrap(), word))
        .collect();
    let differ: Vec<String> = cases
        .iter()
        .enumerate()
        .filter(|(at, (case, ours))| said.get(at) != Some(&case.differs.map_or(*ours, |d| d.says)))
        .map(|(at, (case, ours))| format!("{}: bagit says {:?}, we say {ours}", case.name, said.get(&at)))
        .collect();
    assert!(differ.is_empty(), "{differ:#?}");
    let noted = cases.iter().filter_map(|(case, _)| case.differs);
    assert!(noted.clone().count() > 30 && noted.into_iter().all(|d| d.section.contains('.')));
}

/// Each case as a folder and as stock `zip` packs it: the verdict is that of the bag in memory.
#[test]
fn folders_and_zip_files_get_the_verdict_of_their_files() {
    let dir = tempfile::tempdir().unwrap();
    let zip = has("zip", &["-v"]);
    for (at, (case, _)) in all().iter().enumerate() {
        let said = case.bag.judge();
        let bag = dir.path().join(at.to_string());
        case.bag.put(&bag);
        assert_eq!(judge_path(&SystemDisk, &bag), said, "{}", case.name);
        if !zip {
            continue;
        }
        let name = format!("{at}.zip");
        let out = run(dir.path(), "zip", &["-q", "-r", &name, &at.to_string()], b"");
        assert!(out.status.success(), "{}: {}", case.name, words(&out));
        let packed = judge_path(&SystemDisk, &dir.path().join(name));
        assert_eq!(
            packed.map_err(|f: BagFault| f.to_string()),
            said.map_err(|f| f.to_string()),
            "{}",
            case.name
        );
    }
}
