//! The index of an archive on a disk, kept in step with its files; the commands that use it.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use sendoff::archive::import::{Plan, import};
use sendoff::archive::index::keep::{self, Kept, Stale};
use sendoff::archive::index::{Index, IndexFault, Query};
use sendoff::archive::{Archive, INDEX};
use sendoff::ports::Ports;
use sendoff::ports::system::{self, SystemDisk};
use sendoff::record::form;
use sendoff::record::keys::allowed_signers_line;
use sendoff::record::seal::{Digest, Kind, Sealing, record_id, seal};

use super::lot::{BASE, handoff, sealed};
use crate::archive::support::with_disk;
use crate::commands::run_with;
use crate::record::support::{Led, Ways};
use crate::seal::{t2, time};

/// An office with a stick in front of it.
struct Office {
    dir: tempfile::TempDir,
    previous: Option<Digest>,
    sealed: u32,
}

impl Office {
    fn new() -> Self {
        let dir = tempfile::tempdir().unwrap();
        fs::create_dir(dir.path().join("stick")).unwrap();
        let line = allowed_signers_line(t2().public(), "t2", time("2026-01-01T00:00:00Z"));
        fs::write(dir.path().join("signers"), line + "\n").unwrap();
        Self { dir, previous: None, sealed: 0 }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.dir.path().join(name)
    }

    fn ports() -> Ports {
        Ports { clock: system::ports().clock, ..with_disk(Arc::new(SystemDisk), "2026-08-01T12:00:00Z") }
    }

    /// Seals the next `count` records and takes them in.
    fn take(&mut self, count: u32) {
        let mut payload = Led::whole(Ways::default()).contents().unwrap().payload;
        for n in self.sealed..self.sealed + count {
            let mut record = handoff(n);
            record.head.id = record_id("t2", t2().public(), n + 1);
            record.head.previous = self.previous;
            payload.insert("data/record.json".into(), form::write(&record).unwrap());
            let sealing = Sealing {
                tablet: "t2",
                number: n + 1,
                previous: self.previous,
                kind: Kind::Handoff,
                organization: &BASE.lot.name,
                sealed: sealed(n),
            };
            let record = seal(&sealing, &payload, &t2()).unwrap();
            self.previous = Some(record.digest);
            fs::write(self.path("stick").join(format!("{}.zip", record.id)), record.zip).unwrap();
        }
        self.sealed += count;
        let ports = Self::ports();
        let mut archive = Archive::open_or_create(&ports, &self.path("office")).unwrap();
        archive.adopt(&SystemDisk, &self.path("signers")).unwrap();
        let paths = [self.path("stick")];
        let summary =
            import(&archive, Plan { paths: &paths, rehearsals: false }, &ports, &mut |_| {}).unwrap();
        assert!(summary.is_good(), "{:?}", summary.bad);
    }

    fn archive(&self) -> Archive {
        Archive::open(Arc::new(SystemDisk), &self.path("office")).unwrap()
    }

    fn open(&self) -> (Index, Kept) {
        keep::open(&self.archive(), &Self::ports(), &mut |_, _| {}).unwrap()
    }

    fn index_file(&self) -> PathBuf {
        self.path("office").join(INDEX)
    }

    fn files(&self) -> Vec<PathBuf> {
        let mut files = Vec::new();
        let mut dirs = vec![self.path("office").join("records")];
        while let Some(dir) = dirs.pop() {
            for entry in fs::read_dir(dir).unwrap() {
                let path = entry.unwrap().path();
                if path.is_dir() { dirs.push(path) } else { files.push(path) }
            }
        }
        files.sort();
        files
    }

    fn run(&self, args: &[&str]) -> (u8, String, String) {
        let office = self.path("office");
        let args: Vec<&str> = args.iter().copied().chain(["--archive", office.to_str().unwrap()]).collect();
        let ran = run_with(&Self::ports(), &args);
        (ran.code, ran.out, ran.err)
    }
}

/// Everything the index says about what it finds.
fn said(index: &Index) -> String {
    let words = ["", "robin", "ffmann", "awning", "vent gas müller", "b2"];
    let page = |w: &&str| format!("{:?}", index.search(&Query::words(w), None, 100).unwrap());
    words.iter().map(page).collect::<Vec<_>>().join("\n")
}

#[test]
fn it_follows_the_archive_and_can_be_remade_from_the_files() {
    let mut office = Office::new();
    office.take(5);
    let (index, kept) = office.open();
    assert!(matches!(kept, Kept::Remade { why: Stale::Fault(IndexFault::Missing), records: 5 }), "{kept:?}");
    assert_eq!(index.len().unwrap(), 5);
    assert!(matches!(office.open().1, Kept::AsItWas));
    office.take(3);
    let (index, kept) = office.open();
    assert!(matches!(kept, Kept::Added(3)), "{kept:?}");
    assert_eq!(index.search(&Query::words("müller"), None, 9).unwrap().hits.len(), 1);
    let hit = index.search(&Query::words("MW-1006"), None, 9).unwrap().hits.remove(0);
    assert_eq!((hit.renter.as_str(), hit.fault), ("Hana Nováková", None));
    assert_eq!(office.archive().read(&hit.path).unwrap().get(..2), Some(&b"PK"[..]));
    assert_eq!((index.whole_len().unwrap(), index.added_paths().unwrap().len()), (5, 3));
    drop(index);
    // What was added is lost: it is added again.
    fs::write(office.path("office").join("index.sqlite-added"), b"junk").unwrap();
    assert!(matches!(office.open().1, Kept::Added(3)));
    // When as much lies beside as it holds, all is put together.
    office.take(3);
    let (index, kept) = office.open();
    assert!(matches!(kept, Kept::Added(3)), "{kept:?}");
    assert_eq!((index.whole_len().unwrap(), index.added_paths().unwrap().len()), (11, 0));
    assert!(matches!(office.open().1, Kept::AsItWas));
    let before = said(&index);
    let (again, kept) = keep::rebuild(&office.archive(), &Office::ports(), &mut |_, _| {}).unwrap();
    assert!(matches!(kept, Kept::Remade { why: Stale::Asked, records: 11 }), "{kept:?}");
    assert_eq!(said(&again), before);
    fs::remove_file(office.index_file()).unwrap();
    assert_eq!(said(&office.open().0), before);
}

#[test]
fn a_damaged_index_is_remade_and_says_so() {
    let mut office = Office::new();
    office.take(4);
    let before = said(&office.open().0);
    let whole = fs::read(office.index_file()).unwrap();
    let mut flipped = whole.clone();
    flipped[whole.len() / 2] ^= 4;
    let cases: [&[u8]; 4] = [&flipped, &whole[..whole.len() / 2], b"", b"junk"];
    for bytes in cases {
        fs::write(office.index_file(), bytes).unwrap();
        let (index, kept) = office.open();
        assert!(matches!(kept, Kept::Remade { why: Stale::Fault(_), records: 4 }), "{kept:?}");
        assert_eq!(said(&index), before);
        assert!(matches!(office.open().1, Kept::AsItWas));
    }
    fs::write(office.index_file(), &flipped).unwrap();
    let (code, out, err) = office.run(&["archive", "search", "muller"]);
    assert_eq!((code, out.lines().count()), (0, 3), "{out}");
    assert!(err.contains("the index is damaged: the index was made anew from 4 records"), "{err}");
    let (_, _, err) = office.run(&["archive", "search", "muller"]);
    assert_eq!(err, "");
}

#[test]
fn files_that_are_gone_or_do_not_hold_are_not_found_as_if_they_were_good() {
    let mut office = Office::new();
    office.take(4);
    drop(office.open());
    let files = office.files();
    let mut bytes = fs::read(&files[1]).unwrap();
    let at = bytes.windows(9).position(|w| w == b"Robin Val").unwrap_or(bytes.len() / 2);
    bytes[at] ^= 1;
    fs::write(&files[1], bytes).unwrap();
    fs::remove_file(&files[0]).unwrap();
    let (index, kept) = office.open();
    assert!(matches!(kept, Kept::Remade { why: Stale::Moved, records: 3 }), "{kept:?}");
    assert!(index.search(&Query::words("müller"), None, 9).unwrap().hits.is_empty());
    assert!(index.search(&Query::words("MW-1001"), None, 9).unwrap().hits.is_empty());
    let bad = index.search(&Query { good: Some(false), ..Query::default() }, None, 9).unwrap().hits;
    assert_eq!(bad.len(), 1);
    assert_eq!((bad[0].renter.as_str(), bad[0].kind), ("", None));
    assert!(bad[0].fault.is_some());
    let (_, out, _) = office.run(&["archive", "search"]);
    assert!(out.contains("DOES NOT HOLD"), "{out}");
}

#[test]
fn an_archive_that_cannot_be_written_can_be_searched() {
    let mut office = Office::new();
    office.take(2);
    // No file can have this name.
    fs::create_dir_all(office.index_file().join("in the way")).unwrap();
    let result = keep::open(&office.archive(), &Office::ports(), &mut |_, _| {});
    let (code, out, err) = office.run(&["archive", "search", "muller"]);
    assert!(result.is_err() && code == 2 && out.is_empty(), "{err}");
    fs::remove_dir_all(office.index_file()).unwrap();
    // The part cannot be made.
    fs::create_dir_all(office.path("office").join(format!(".{INDEX}.part/in the way"))).unwrap();
    let (index, kept) = office.open();
    assert!(matches!(kept, Kept::InMemory { .. }), "{kept:?}");
    assert_eq!(index.len().unwrap(), 2);
    assert!(!office.index_file().exists());
}

#[test]
fn the_commands_answer_in_three_forms() {
    let mut office = Office::new();
    office.take(6);
    let (code, out, _) = office.run(&["archive", "rebuild"]);
    assert_eq!((code, out.as_str()), (0, "the index was made anew from 6 records\n"));
    let (code, out, err) = office.run(&["archive", "search", "aero", "--unit", "wren"]);
    assert_eq!((code, err.as_str()), (0, ""));
    let lines: Vec<&str> = out.lines().collect();
    let [head, row, count] = lines[..] else { panic!("{out}") };
    assert!(head.starts_with("SEALED            RECORD"), "{head}");
    let wanted = [
        "2026-05-05 21:00  t2-",
        "-000005  handoff  wren  MW-1004  Søren Ærø",
        "A7",
        "1 refused, 1 not shown",
    ];
    assert!(wanted.iter().all(|w| row.contains(w)), "{row}");
    assert_eq!(count, "1 record");
    let (_, out, err) = office.run(&["archive", "search", "--limit", "2", "--format", "json"]);
    let json: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!((json["found"].as_u64(), json["more"].as_bool()), (Some(6), Some(false)));
    assert_eq!(json["records"].as_array().unwrap().len(), 2);
    assert_eq!(json["records"][0]["unit"], "wren");
    assert_eq!(json["records"][0]["booking"], "MW-1005");
    assert!(err.contains("2 of 6 records"), "{err}");
    let (_, out, _) = office.run(&["archive", "search", "--answer", "refused", "--format", "csv"]);
    let mut reader = csv::Reader::from_reader(out.as_bytes());
    let heads = reader.headers().unwrap().clone();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), 1);
    let cell = |name: &str| rows[0].get(heads.iter().position(|h| h == name).unwrap()).unwrap().to_owned();
    assert_eq!((cell("renter").as_str(), cell("sealed_utc").as_str()), ("Søren Ærø", "2026-05-06T03:00:00Z"));
    let (code, out, _) = office.run(&["archive", "search", "xyzzy"]);
    assert_eq!((code, out.as_str()), (0, "nothing was found\n"));
    let day = ["archive", "search", "--from", "2026-05-02", "--to", "2026-05-03"];
    assert!(office.run(&day).1.ends_with("2 records\n"));
    let missing = run_with(&Office::ports(), &["archive", "search", "x", "--archive", "/no/such/archive"]);
    assert_eq!(missing.code, 2);
    assert!(missing.err.contains("holds no archive"), "{}", missing.err);
    assert!(Path::new("/no/such").parent().is_some_and(|p| !p.join("such").exists()));
}
