//! The program is killed while it takes records in, makes the index, or copies the archive, again and again; run once
//! more, everything is there exactly once.
//!
//! `SENDOFF_SEED` repeats a run as far as time lets it, `SENDOFF_KILLS` says how many kills there are of each.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::SystemTime;

use sendoff::ports::Disk;
use sendoff::ports::system::SystemDisk;

use super::many::{Made, Tablet, booking, fill_sticks};

const KILLS: usize = 20;

/// An office on a real disk, with a stick in front of it.
pub struct Office {
    folder: tempfile::TempDir,
    pub made: Vec<Made>,
    random: u64,
}

/// What a run of the program left.
pub struct Ran {
    pub code: i32,
    pub out: String,
    pub err: String,
}

type Files = BTreeMap<PathBuf, Vec<u8>>;

/// The files below a folder, hidden ones aside: such are what a kill leaves of a file that had no name yet.
pub fn tree(dir: &Path) -> Files {
    let (mut files, mut folders) = (Files::new(), vec![dir.to_owned()]);
    while let Some(folder) = folders.pop() {
        for name in SystemDisk.list(&folder).unwrap().into_iter().filter(|name| !name.starts_with('.')) {
            let path = folder.join(name);
            if path.is_dir() {
                folders.push(path);
            } else {
                files.insert(path.strip_prefix(dir).unwrap().to_owned(), std::fs::read(&path).unwrap());
            }
        }
    }
    files
}

fn count(dir: &Path) -> usize {
    let Ok(entries) = std::fs::read_dir(dir) else { return 0 };
    let inside = |entry: std::fs::DirEntry| match entry.path() {
        path if path.is_dir() => count(&path),
        path => usize::from(path.extension().is_some_and(|end| end == "zip")),
    };
    entries.flatten().map(inside).sum()
}

impl Office {
    pub fn new(records: u32) -> Self {
        let named = std::env::var("SENDOFF_SEED").ok().and_then(|seed| seed.parse().ok());
        let now = || SystemTime::now().duration_since(SystemTime::UNIX_EPOCH).unwrap().as_nanos() as u64;
        let random = named.unwrap_or_else(now);
        eprintln!("SENDOFF_SEED={random}");
        let dir = tempfile::tempdir().unwrap();
        let mut tablets = [Tablet::new("k1", 31, records / 2), Tablet::new("k2", 32, records.div_ceil(2))];
        let disk: Arc<dyn Disk> = Arc::new(SystemDisk);
        let made = fill_sticks(&disk, dir.path(), &mut tablets);
        let list: String = tablets.iter().map(|tablet| tablet.line() + "\n").collect();
        std::fs::write(dir.path().join("list"), list).unwrap();
        Self { folder: dir, made, random }
    }

    /// A number below `end` (splitmix64).
    fn dice(&mut self, end: usize) -> usize {
        self.random = self.random.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.random;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % end as u64) as usize
    }

    pub fn dir(&self) -> &Path {
        self.folder.path()
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.dir().join(name)
    }

    /// The program; paths are from the folder of all this.
    fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_sendoff"));
        command.arg("archive").args(args).current_dir(self.dir()).stdin(Stdio::null());
        command
    }

    pub fn run(&self, args: &[&str]) -> Ran {
        let out = self.command(args).output().unwrap();
        let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
        Ran { code: out.status.code().unwrap_or(-1), out: text(&out.stdout), err: text(&out.stderr) }
    }

    pub fn import(&self, archive: &str) -> Ran {
        self.run(&["import", "stick", "--archive", archive, "--signers", "list"])
    }

    /// Starts the program and kills it once something is so, and a little later. Whether it was killed in the middle.
    fn kill(&mut self, args: &[&str], reached: &dyn Fn() -> bool) -> bool {
        let spins = self.dice(60_000);
        let mut child = self.command(args).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        while !reached() && child.try_wait().unwrap().is_none() {
            std::thread::yield_now();
        }
        for spin in 0..spins {
            std::hint::black_box(spin);
        }
        child.kill().unwrap();
        let code = child.wait().unwrap().code();
        assert!(code.is_none_or(|code| code == 0), "{args:?} ended with {code:?}");
        code.is_none()
    }

    /// Every record lies there once, as it was sealed; nothing is wrong; it is found as it should be.
    pub fn check(&self, archive: &str) {
        let files = tree(&self.path(archive).join("records"));
        let stick = tree(&self.path("stick"));
        let sealed: BTreeMap<_, _> =
            stick.iter().filter(|(path, _)| path.extension().is_some_and(|end| end == "zip")).collect();
        assert_eq!((files.len(), sealed.len()), (self.made.len(), self.made.len()));
        for made in &self.made {
            let place = made.place().strip_prefix("records/").unwrap().to_owned();
            let on_stick = sealed.iter().find(|(path, _)| path.ends_with(format!("{}.zip", made.id)));
            assert!(files[Path::new(&place)] == **on_stick.unwrap().1, "{place}");
        }
        let audit = self.run(&["audit", "--archive", archive]);
        let all = self.made.len();
        let said = format!("{all} files read, {all} good records, 0 findings, 0 remarks\n");
        assert_eq!((audit.code, audit.out), (0, said));
        self.check_search(archive);
    }

    /// Each record is found by its booking, all by nothing, and it is the same list as that of an index in memory.
    pub fn check_search(&self, archive: &str) {
        let all = self.run(&["search", "--limit", "1000", "--format", "csv", "--archive", archive]);
        assert_eq!((all.code, all.out.lines().count()), (0, self.made.len() + 1), "{}", all.err);
        let found = |id: &Made| all.out.lines().filter(|line| line.contains(&id.id.to_string())).count();
        assert!(self.made.iter().all(|made| found(made) == 1), "{}", all.out);
        let some = &self.made[self.made.len() / 3];
        let one = self.run(&["search", &booking(&some.id), "--format", "json", "--archive", archive]);
        let json: serde_json::Value = serde_json::from_str(&one.out).unwrap();
        assert_eq!((one.code, &json["records"][0]["id"]), (0, &some.id.to_string().into()), "{}", one.out);
    }
}

fn kills() -> usize {
    std::env::var("SENDOFF_KILLS").ok().and_then(|kills| kills.parse().ok()).unwrap_or(KILLS)
}

#[test]
fn a_killed_import_is_gone_on_with() {
    let mut office = Office::new(60);
    let (mut killed, mut archives) = (0, 0);
    while killed < kills() {
        archives += 1;
        assert!(archives < 10 * kills(), "it is never caught in the middle");
        let archive = format!("office-{archives}");
        let args = ["import", "stick", "--archive", &archive, "--signers", "list"];
        let (records, receipts) =
            (office.path(&archive).join("records"), office.path(&archive).join("receipts"));
        // Killed some times on its way; what was filed before stays.
        for _ in 0..3 {
            let before = count(&records);
            let after = before + office.dice(30);
            let by_receipts = office.dice(3) == 0;
            let lines = || tree(&receipts).values().flatten().filter(|b| **b == b'\n').count();
            let reached = || if by_receipts { lines() > after } else { count(&records) > after };
            killed += usize::from(office.kill(&args, &reached));
            assert!(count(&records) >= before);
        }
        let ran = office.import(&archive);
        assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
        let again = office.import(&archive);
        assert!(again.out.ends_with(&format!("0 new, {} known, 0 bad, 0 rehearsals\n", office.made.len())));
        office.check(&archive);
    }
    eprintln!("{killed} kills in {archives} archives");
}

/// The part of an index that is being made, whatever it will be called.
fn part(office: &Path) -> Option<std::fs::Metadata> {
    let entries = std::fs::read_dir(office).ok()?.flatten();
    let mut parts = entries.filter(|entry| {
        let name = entry.file_name().to_string_lossy().into_owned();
        name.starts_with(".index") && name.ends_with(".part")
    });
    parts.next()?.metadata().ok()
}

/// Made anew, made from nothing, or added to.
#[test]
fn a_killed_index_is_as_it_was_or_is_made_again() {
    let mut office = Office::new(60);
    let half = ["import", "stick/0", "stick/1", "stick/2", "--archive", "office", "--signers", "list"];
    assert_eq!(office.run(&half).code, 0);
    let list = ["search", "--limit", "1000", "--format", "csv", "--archive", "office"];
    assert_eq!(office.run(&list).code, 0);
    let index = office.path("office/index.sqlite");
    let of_half = std::fs::read(&index).unwrap();
    assert_eq!(office.import("office").code, 0);
    office.check("office");
    let wanted = office.run(&list).out;
    let size = std::fs::metadata(&index).unwrap().len() as usize;
    let (mut killed, mut tries) = (0, 0);
    while killed < kills() {
        tries += 1;
        assert!(tries < 10 * kills(), "it is never caught in the middle");
        let (dir, length, early) = (office.path("office"), office.dice(size * 5 / 4), office.dice(2) == 0);
        let args: &[&str] = match tries % 3 {
            0 => &["rebuild", "--archive", "office"],
            more => {
                for name in SystemDisk.list(&dir).unwrap().iter().filter(|name| name.starts_with("index.")) {
                    std::fs::remove_file(dir.join(name)).unwrap();
                }
                if more == 1 {
                    std::fs::write(&index, &of_half).unwrap();
                }
                &list
            }
        };
        let reached = || part(&dir).is_some_and(|part| early || part.len() as usize >= length);
        killed += usize::from(office.kill(args, &reached));
        assert!(office.run(&list).out == wanted, "try {tries}");
        office.check_search("office");
    }
    let ran = office.run(&["rebuild", "--archive", "office"]);
    assert_eq!((ran.code, ran.out.as_str()), (0, "the index was made anew from 60 records\n"), "{}", ran.err);
    office.check("office");
    eprintln!("{killed} kills in {tries} tries");
}

#[test]
fn a_killed_export_is_gone_on_with() {
    let mut office = Office::new(60);
    assert_eq!(office.import("office").code, 0);
    assert_eq!(office.run(&["export", "whole", "--archive", "office"]).code, 0);
    let whole = tree(&office.path("whole"));
    let (mut killed, mut copies) = (0, 0);
    while killed < kills() {
        copies += 1;
        assert!(copies < 10 * kills(), "it is never caught in the middle");
        let copy = format!("copy-{copies}");
        let records = office.path(&copy).join("records");
        for _ in 0..2 {
            let after = count(&records) + office.dice(40);
            killed += usize::from(
                office.kill(&["export", &copy, "--archive", "office"], &|| count(&records) > after),
            );
        }
        let ran = office.run(&["export", &copy, "--archive", "office"]);
        assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
        assert!(tree(&office.path(&copy)) == whole, "{copy} is not whole");
    }
    // An empty archive that takes it in holds the same.
    let list = format!("copy-{copies}/trust/allowed_signers");
    let copy = format!("copy-{copies}");
    let ran = office.run(&["import", &copy, "--archive", "again", "--signers", &list]);
    assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
    office.check("again");
    eprintln!("{killed} kills in {copies} copies");
}
