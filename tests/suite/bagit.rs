//! The judge of any bag, against RFC 8493, the cases of the Library of Congress' conformance suite
//! (`bagit-conformance-suite`, public domain; rebuilt here from their names and descriptions), and the reference
//! validator of the same house, the Python package `bagit`.
//!
//! Each case is one bag with one thing in it. It is judged in memory, in a folder, and in a ZIP file that stock
//! `zip` made; where `bagit` is known to judge otherwise, the case names the section of the RFC that is followed.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "helpers of tests may fail loudly"
)]

mod accepted;
mod folders;
mod hostile;
mod outside;
mod refused;
mod zipped;

use std::path::Path;

use sendoff::ports::Disk;
use sendoff::ports::fake::MemoryDisk;
use sendoff::ports::system::SystemDisk;
use sendoff::record::bag::{BagFault, judge, judge_path};
use sendoff::record::seal::Digest;

use crate::seal::{Payload, files, put_all, sample};

/// SHA-512 of `hello` and a line end: the manifest of the suite's v1.0 `basicBag`.
const HELLO_512: &str = "e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629";
/// SHA-256 of the same (by `sha256sum`).
const HELLO: &str = "5891b5b522d5df086d0ff0b110fbd9d21bb4fc7163af34d08286a2e846f6be03";
/// SHA-224 of the same (by `sha224sum`).
const HELLO_224: &str = "2d6d67d91d0badcdd06cbbba1fe11538a68a37ec9c2e26457ceff12b";
/// SHA-384 of the same (by `sha384sum`).
const HELLO_384: &str =
    "1d0f284efe3edea4b9ca3bd514fa134b17eae361ccc7a1eefeff801b9bd6604e01f21f6bf249ef030599f0c218f2ba8c";
/// SHA-1 of the same (by `sha1sum`).
const HELLO_1: &str = "f572d396fae9206628714fb2ce00f72e94f2258f";
/// MD5 of the same (by `md5sum`).
const HELLO_MD5: &str = "b1946ac92492d2347c6235b4d2611184";
/// SHA-256 of nothing (FIPS 180-4).
const NOTHING: &str = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

/// A bag by its files.
#[derive(Debug, Clone, Default)]
struct Bag(Payload);

impl Bag {
    /// `data/hello.txt` under a SHA-256 manifest.
    fn of(version: &str) -> Self {
        Self::default()
            .with("bagit.txt", &format!("BagIt-Version: {version}\nTag-File-Character-Encoding: UTF-8\n"))
            .with("data/hello.txt", "hello\n")
            .with("manifest-sha256.txt", &format!("{HELLO}  data/hello.txt\n"))
    }

    fn with(self, name: &str, text: &str) -> Self {
        self.bytes(name, text.as_bytes())
    }

    fn bytes(mut self, name: &str, bytes: &[u8]) -> Self {
        self.0.insert(name.to_owned(), bytes.to_vec());
        self
    }

    fn without(mut self, name: &str) -> Self {
        assert!(self.0.remove(name).is_some());
        self
    }

    /// Another payload file with the content of the first, listed under `path`.
    fn listing(self, name: &str, path: &str) -> Self {
        self.with(name, "hello\n").and(HELLO, path)
    }

    /// One more line in the manifest.
    fn and(mut self, digest: &str, path: &str) -> Self {
        let manifest = self.0.get_mut("manifest-sha256.txt").unwrap();
        manifest.extend_from_slice(format!("{digest}  {path}\n").as_bytes());
        self
    }

    /// Another text as manifest.
    fn manifest(self, text: &str) -> Self {
        self.with("manifest-sha256.txt", text)
    }

    /// Another manifest beside the one that is there.
    fn second(self, digest: &str, path: &str) -> Self {
        self.with("manifest-sha512.txt", &format!("{digest}  {path}\n"))
    }

    fn info(self, text: &str) -> Self {
        self.with("bag-info.txt", text)
    }

    fn fetch(self, text: &str) -> Self {
        self.with("fetch.txt", text)
    }

    /// A tag manifest of all tag files, and more lines behind it.
    fn tagged(self, more: &str) -> Self {
        let list = format!("{}{more}", tag_manifest(&self));
        self.with("tagmanifest-sha256.txt", &list)
    }

    /// The same under another declaration.
    fn declared(text: &str) -> Self {
        Self::of("1.0").with("bagit.txt", text)
    }

    /// `data/hello.txt` in the manifest of another algorithm alone.
    fn hashed(self, name: &str, digest: &str) -> Self {
        let manifest = format!("{digest}  data/hello.txt\n");
        self.without("manifest-sha256.txt").with(&format!("manifest-{name}.txt"), &manifest)
    }

    /// Writes the bag as a folder; the payload folder is there even if nothing is in it.
    fn put(&self, dir: &Path) {
        put_all(dir, &self.0);
        SystemDisk.make_dir(&dir.join("data")).unwrap();
    }

    fn judge(&self) -> Result<Vec<String>, BagFault> {
        judge(&self.0.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect())
    }
}

fn tag_manifest(bag: &Bag) -> String {
    let tags = bag.0.iter().filter(|(name, _)| !name.starts_with("data/"));
    tags.map(|(name, bytes)| format!("{}  {name}\n", Digest::of(bytes))).collect()
}

/// Where `bagit` 1.9.0 judges otherwise than we do.
#[derive(Debug, Clone, Copy)]
struct Differs {
    /// What it says.
    says: &'static str,
    /// The section of RFC 8493 that we follow, or of the draft.
    section: &'static str,
}

/// One bag with one thing in it.
#[derive(Debug, Clone)]
struct Case {
    name: String,
    bag: Bag,
    differs: Option<Differs>,
}

/// Cases on which `bagit` agrees, for each version named.
fn agreed(versions: &[&str], cases: impl Fn(Bag) -> Vec<(&'static str, Bag)>) -> Vec<Case> {
    let of = |v: &&str| {
        let all = cases(Bag::of(v)).into_iter();
        all.map(|(name, bag)| Case { name: format!("{v} {name}"), bag, differs: None }).collect::<Vec<_>>()
    };
    versions.iter().flat_map(of).collect()
}

/// Cases on which `bagit` says `says`: name, section that we follow, bag.
fn differing(says: &'static str, cases: Vec<(&'static str, &'static str, Bag)>) -> Vec<Case> {
    let case = |(name, section, bag): (&str, &'static str, Bag)| Case {
        name: name.to_owned(),
        bag,
        differs: Some(Differs { says, section }),
    };
    cases.into_iter().map(case).collect()
}

const BOTH: [&str; 2] = ["0.97", "1.0"];

#[test]
fn valid_bags_are_accepted() {
    for Case { name, bag, .. } in accepted::all() {
        assert!(bag.judge().is_ok(), "{name}: {:?}", bag.judge());
    }
}

#[test]
fn invalid_bags_are_refused_with_a_reason() {
    for Case { name, bag, .. } in refused::all() {
        let fault = bag.judge().expect_err(&name);
        assert!(!fault.cannot_judge(), "{name}: {fault}");
        assert!(fault.to_string().len() > 15, "{name}: {fault}");
    }
}

/// No case is there twice, so that none of them hides another.
#[test]
fn every_case_has_a_name_of_its_own() {
    let mut names: Vec<String> =
        accepted::all().into_iter().chain(refused::all()).map(|case| case.name).collect();
    let count = names.len();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), count);
    assert!(count > 150, "{count}");
}

#[test]
fn what_is_not_known_here_is_said_to_be_so() {
    let other =
        |text: &str| Bag::of("1.0").without("manifest-sha256.txt").with("manifest-whirlpool.txt", text);
    let bag = other("00ff  data/hello.txt\n");
    let fault = bag.judge().unwrap_err();
    assert!(fault.cannot_judge());
    assert_eq!(fault.to_string(), "cannot judge: the manifest algorithm whirlpool is not known here");
    // What is wrong with such a bag is still told.
    assert!(matches!(bag.clone().with("data/more", "").judge(), Err(BagFault::NotListed { .. })));
    assert!(matches!(bag.with("bag-info.txt", "Payload-Oxum: 1.1\n").judge(), Err(BagFault::Oxum { .. })));
    assert!(other("00ff  ../x\n").judge().is_err_and(|f| !f.cannot_judge()));
    for text in [
        "BagIt-Version: 2.0\nTag-File-Character-Encoding: UTF-8\n",
        "BagIt-Version: 1.0\nTag-File-Character-Encoding: KOI8-R\n",
    ] {
        assert!(Bag::declared(text).judge().unwrap_err().cannot_judge(), "{text}");
    }
}

/// What is allowed but does not travel well, or what strict readers refuse, is told beside the verdict.
#[test]
fn what_does_not_travel_well_is_remarked() {
    let bag = || Bag::of("1.0");
    let line = |text: String| bag().manifest(&text);
    let told: [(Bag, &str); 16] = [
        (bag().listing("data/HELLO.txt", "data/HELLO.txt"), "capitals only"),
        (bag().listing("data/Thumbs.db", "data/Thumbs.db"), "operating system"),
        (Bag::of("0.97").manifest(&format!("\u{feff}{HELLO}  data/hello.txt\n")), "byte order mark"),
        (line(format!("{HELLO} *data/hello.txt\n")), "md5sum"),
        (line(format!("\\{HELLO}  data/hello.txt\n")), "backslash"),
        (bag().listing("data/50%.txt", "data/50%.txt"), "percent sign"),
        (line(format!("{HELLO}  ./data/hello.txt\n")), "which means data/hello.txt"),
        (line(format!("{HELLO}  data/hello.txt")), "last line"),
        (line(format!("\n{HELLO}  data/hello.txt\n")), "empty line"),
        (bag().info("Contact-Name:\n"), "without a value"),
        (bag().listing("data/u\u{301}", "data/\u{fa}"), "composes"),
        (bag().listing("data/u\u{301}", "data/u\u{301}"), "apart from their letters"),
        (bag().listing("data/u\u{301}", "data/u\u{301}").listing("data/\u{fa}", "data/\u{fa}"), "look alike"),
        (bag().listing("data/nul.txt", "data/nul.txt"), "some systems cannot keep"),
        (bag().listing("data/COM3", "data/COM3"), "some systems cannot keep"),
        (bag().listing("data/a:b", "data/a:b"), "some systems cannot keep"),
    ];
    assert_eq!(bag().judge(), Ok(Vec::new()));
    for (bag, words) in told {
        let remarks = bag.judge().unwrap().join("; ");
        assert!(remarks.contains(words), "{words}: {remarks}");
    }
}

#[test]
fn a_record_is_a_valid_bag_and_a_forged_one_too() {
    let bag = Bag(files(&sample(1, None)));
    assert_eq!(bag.judge(), Ok(Vec::new()));
    // That is why the judge is a second opinion only: nothing here needs the key.
    let forged = bag.clone().without("seal.sshsig").without("tagmanifest-sha256.txt").with("note.txt", "x");
    assert_eq!(forged.judge(), Ok(Vec::new()));
    for name in bag.0.keys().filter(|name| *name != "seal.sshsig") {
        let mut changed = bag.0[name].clone();
        changed.push(b'x');
        let fault = bag.clone().bytes(name, &changed).judge();
        assert!(fault.is_err() || name == "tagmanifest-sha256.txt", "{name}");
    }
}

#[test]
fn folders_and_files_are_judged_alike() {
    let disk = MemoryDisk::new();
    let sealed = sample(1, None);
    disk.plant(Path::new("/in/a.zip"), &sealed.zip);
    disk.plant(Path::new("/in/other.zip"), b"PK\x03\x04");
    disk.plant(Path::new("/in/empty.zip"), b"");
    for (name, bytes) in files(&sealed) {
        disk.plant(&Path::new("/in/bag").join(name), &bytes);
    }
    assert_eq!(judge_path(&disk, Path::new("/in/a.zip")), Ok(Vec::new()));
    assert_eq!(judge_path(&disk, Path::new("/in/bag")), Ok(Vec::new()));
    for name in ["/in/other.zip", "/in/empty.zip"] {
        assert!(matches!(judge_path(&disk, Path::new(name)), Err(BagFault::Zip { .. })), "{name}");
    }
    assert!(matches!(judge_path(&disk, Path::new("/in/none")), Err(BagFault::Unreadable { .. })));
    disk.plant(Path::new("/in/bag/data/more.txt"), b"");
    assert!(matches!(judge_path(&disk, Path::new("/in/bag")), Err(BagFault::NotListed { .. })));
}
