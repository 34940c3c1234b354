//! The judge of any bag, against RFC 8493, the cases of the Library of Congress' conformance suite
//! (`bagit-conformance-suite`, public domain; rebuilt here from their names and descriptions), and the reference
//! validator of the same house, the Python package `bagit`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "helpers of tests may fail loudly"
)]

use std::collections::BTreeMap;
use std::path::Path;

use sendoff::ports::fake::MemoryDisk;
use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Access, Disk};
use sendoff::record::bag::{BagFault, judge, judge_path};
use sendoff::record::seal::Digest;

use crate::seal::{Payload, files, has, put_all, run, sample, unpack, words};

/// SHA-512 of `hello` and a line end: the manifest of the suite's v1.0 `basicBag`.
const HELLO_512: &str = "e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629";
/// SHA-256 of the same (by `sha256sum`).
const HELLO: &str = "5891b5b522d5df086d0ff0b110fbd9d21bb4fc7163af34d08286a2e846f6be03";
/// SHA-224 of the same (by `sha224sum`).
const HELLO_224: &str = "2d6d67d91d0badcdd06cbbba1fe11538a68a37ec9c2e26457ceff12b";
/// SHA-384 of the same (by `sha384sum`).
const HELLO_384: &str =
    "1d0f284efe3edea4b9ca3bd514fa134b17eae361ccc7a1eefeff801b9bd6604e01f21f6bf249ef030599f0c218f2ba8c";
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

    fn judge(&self) -> Result<Vec<String>, BagFault> {
        judge(&self.0.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect())
    }
}

fn utf16(text: &str) -> Vec<u8> {
    text.encode_utf16().flat_map(u16::to_be_bytes).collect()
}

fn tag_manifest(bag: &Bag) -> String {
    let tags = bag.0.iter().filter(|(name, _)| !name.starts_with("data/"));
    tags.map(|(name, bytes)| format!("{}  {name}\n", Digest::of(bytes))).collect()
}

fn declared(text: &str) -> Bag {
    Bag::of("1.0").with("bagit.txt", text)
}

/// Name, bag, and what `bagit` says of it where it is known to differ from us.
type Case = (String, Bag, Option<&'static str>);

/// Cases on which `bagit` agrees, for each version named.
fn agreed(versions: &[&str], cases: impl Fn(Bag) -> Vec<(&'static str, Bag)>) -> Vec<Case> {
    let of = |v: &&str| {
        cases(Bag::of(v)).into_iter().map(|(name, bag)| (name.to_owned(), bag)).collect::<Vec<_>>()
    };
    let named = |v: &&str| {
        of(v).into_iter().map(|(name, bag)| (format!("{v} {name}"), bag, None)).collect::<Vec<_>>()
    };
    versions.iter().flat_map(named).collect()
}

/// Cases on which `bagit` says `differs`.
fn differing(differs: &'static str, cases: Vec<(&'static str, Bag)>) -> Vec<Case> {
    cases.into_iter().map(|(name, bag)| (name.to_owned(), bag, Some(differs))).collect()
}

const BOTH: [&str; 2] = ["0.97", "1.0"];

fn valid() -> Vec<Case> {
    let mut cases = agreed(&BOTH, valid_lists);
    cases.extend(agreed(&BOTH, valid_names));
    cases.extend(agreed(&BOTH, valid_tag_files));
    cases.extend(agreed(&["0.97"], |bag| {
        let again = format!("{HELLO}  data/hello.txt\n").repeat(2);
        vec![
            (
                "files in either manifest",
                bag.clone().with("data/two", "hello\n").second(HELLO_512, "data/two"),
            ),
            ("listed twice, same digest", bag.manifest(&again)),
        ]
    }));
    cases.extend(agreed(&["0.95"], |bag| {
        vec![("old name", bag.with("package-info.txt", "Payload-Oxum: 6.1\n"))]
    }));
    // `bagit` does not decode %25, which RFC 8493 §2.1.3 asks for, and knows the others in capitals only.
    let bag = || Bag::of("1.0");
    cases.extend(differing(
        "invalid",
        vec![
            ("percent sign in a name", bag().listing("data/50%.txt", "data/50%25.txt")),
            ("percent sign before hex", bag().listing("data/a%0Ab", "data/a%250Ab")),
            ("code in small letters", bag().listing("data/a\rb", "data/a%0db")),
        ],
    ));
    cases
}

fn valid_lists(bag: Bag) -> Vec<(&'static str, Bag)> {
    let other = |name: &str, digest: &str| {
        let manifest = format!("{digest}  data/hello.txt\n");
        bag.clone().without("manifest-sha256.txt").with(&format!("manifest-{name}.txt"), &manifest)
    };
    let line = |text: String| bag.clone().manifest(&text);
    vec![
        ("basic", bag.clone()),
        ("basic sha512", other("sha512", HELLO_512)),
        ("basic sha384", other("sha384", HELLO_384)),
        ("basic sha224", other("sha224", HELLO_224)),
        ("two manifests", bag.clone().second(HELLO_512, "data/hello.txt")),
        ("digest in capitals", line(format!("{}  data/hello.txt\n", HELLO.to_uppercase()))),
        ("tab", line(format!("{HELLO}\tdata/hello.txt\n"))),
        ("one space", line(format!("{HELLO} data/hello.txt\n"))),
        ("md5sum's star", line(format!("{HELLO} *data/hello.txt\n"))),
        ("dot slash", line(format!("{HELLO}  ./data/hello.txt\n"))),
        ("CRLF", line(format!("{HELLO}  data/hello.txt\r\n"))),
        ("no last line end", line(format!("{HELLO}  data/hello.txt"))),
        ("empty file", bag.clone().with("data/empty", "").and(NOTHING, "data/empty")),
    ]
}

fn valid_names(bag: Bag) -> Vec<(&'static str, Bag)> {
    vec![
        ("blank in a name", bag.clone().listing("data/a b.txt", "data/a b.txt")),
        ("dots in a name", bag.clone().listing("data/a..b/...", "data/a..b/...")),
        ("Unicode", bag.clone().listing("data/größe 测.txt", "data/größe 测.txt")),
        ("line feed in a name", bag.clone().listing("data/a\nb", "data/a%0Ab")),
        ("carriage return in a name", bag.listing("data/a\rb", "data/a%0Db")),
    ]
}

fn valid_tag_files(bag: Bag) -> Vec<(&'static str, Bag)> {
    let encoded = |name: &str| {
        let text = String::from_utf8(bag.0["bagit.txt"].clone()).unwrap();
        bag.clone().with("bagit.txt", &text.replace("UTF-8", name))
    };
    let wide = [&[0xfe, 0xff][..], &utf16(&format!("{HELLO}  data/hello.txt\n"))].concat();
    let folded = "Source-Organization: Juniper Flat\n  Motorhome\n\tHire\nPayload-Oxum: 6.1\nContact-Name: a: b\nContact-Name: c\n";
    let crlf = String::from_utf8(bag.0["bagit.txt"].clone()).unwrap().replace('\n', "\r\n");
    vec![
        ("tag manifest", bag.clone().tagged("")),
        ("other tag files", bag.clone().with("notes/more.txt", "x").with("seal.sshsig", "y")),
        ("folded and repeated metadata", bag.clone().info(folded)),
        ("empty metadata", bag.clone().info("")),
        ("fetched already", bag.clone().fetch("https://example.org/hello.txt 6 data/hello.txt\n")),
        ("fetched already, no length", bag.clone().fetch("https://example.org/hello.txt - data/hello.txt\n")),
        ("UTF-16", encoded("UTF-16").bytes("manifest-sha256.txt", &wide)),
        ("Latin-1", encoded("ISO-8859-1").bytes("bag-info.txt", b"Source-Organization: Caf\xe9\n")),
        ("CRLF declaration", bag.clone().with("bagit.txt", &crlf)),
    ]
}

fn invalid() -> Vec<Case> {
    let mut cases = agreed(&BOTH, invalid_contents);
    cases.extend(agreed(&BOTH, invalid_paths));
    cases.extend(agreed(&BOTH, invalid_tag_files));
    cases.extend(agreed(&["1.0"], invalid_lists));
    cases.extend(differing("valid", invalid_declarations()));
    cases.extend(differing("valid", invalid_since_1_0()));
    cases
}

fn invalid_contents(bag: Bag) -> Vec<(&'static str, Bag)> {
    let wrong = HELLO_512.replace('e', "f");
    vec![
        ("no bagit.txt", bag.clone().without("bagit.txt")),
        ("no manifest", bag.clone().without("manifest-sha256.txt")),
        ("corrupt data file", bag.clone().with("data/hello.txt", "hellO\n")),
        ("extra file", bag.clone().with("data/more.txt", "x")),
        ("missing file", bag.clone().without("data/hello.txt")),
        ("corrupt tag file", bag.clone().info("x: y\n").tagged("").info("x: z\n")),
        ("missing tag file", bag.clone().tagged(&format!("{HELLO}  notes.txt\n"))),
        ("listed twice, other digest", bag.clone().and(NOTHING, "data/hello.txt")),
        ("second manifest is wrong", bag.clone().second(&wrong, "data/hello.txt")),
        ("manifest is no text", bag.bytes("manifest-sha256.txt", b"\xff\xfe\xfd")),
    ]
}

fn invalid_paths(bag: Bag) -> Vec<(&'static str, Bag)> {
    let listed = |path: &str| bag.clone().and(HELLO, path);
    vec![
        ("dot notation", listed("../../../README.md")),
        ("dot notation behind data", listed("data/../../x")),
        ("absolute path", listed("/etc/passwd")),
        ("home folder", listed("~/.bashrc")),
        ("drive letter", listed("D:\\x")),
        ("device path", listed("\\\\?\\c:\\x")),
        ("tag manifest leads out", bag.clone().tagged(&format!("{HELLO}  ../x\n"))),
        ("fetch leads out", bag.clone().fetch("https://example.org/x 6 ../x\n")),
        ("not fetched yet", listed("data/x").fetch("https://example.org/x 6 data/x\n")),
    ]
}

fn invalid_tag_files(bag: Bag) -> Vec<(&'static str, Bag)> {
    let marked = [&b"\xef\xbb\xbf"[..], &bag.0["bagit.txt"]].concat();
    vec![
        ("BOM in bagit.txt", bag.clone().bytes("bagit.txt", &marked)),
        ("wrong size", bag.clone().info("Payload-Oxum: 7.1\n")),
        ("wrong count", bag.clone().info("Payload-Oxum: 6.2\n")),
        ("size is no number", bag.clone().info("Payload-Oxum: six.1\n")),
        ("metadata without colon", bag.info("Source-Organization\n")),
    ]
}

fn invalid_lists(bag: Bag) -> Vec<(&'static str, Bag)> {
    let line = |text: String| bag.clone().manifest(&text);
    let short: String = HELLO.chars().take(62).collect();
    vec![
        ("no version", declared("BagIt-Version: one\nTag-File-Character-Encoding: UTF-8\n")),
        ("no encoding", declared("BagIt-Version: 1.0\n")),
        ("empty bagit.txt", declared("")),
        ("a digest alone", line(format!("{HELLO}\n"))),
        ("a digest that is too short", line(format!("{short}  data/hello.txt\n"))),
        ("a digest that is none", line(format!("{}  data/hello.txt\n", HELLO.replace('5', "g")))),
        ("a tag file in the payload manifest", bag.clone().and(HELLO, "hello.txt")),
        ("listed twice, same digest", bag.clone().and(HELLO, "data/hello.txt")),
        ("fetch without an address", bag.clone().fetch("x 6 data/hello.txt\n")),
        ("tag manifest lists payload", bag.clone().tagged(&format!("{HELLO}  data/hello.txt\n"))),
    ]
}

/// Found by the suite (v1.0 and v0.97 `bagit-with-invalid-whitespace`), accepted by `bagit` 1.9.0.
fn invalid_declarations() -> Vec<(&'static str, Bag)> {
    vec![
        ("blank before the colon", declared("BagIt-Version : 1.0\nTag-File-Character-Encoding: UTF-8\n")),
        ("two blanks", declared("BagIt-Version:  1.0\nTag-File-Character-Encoding: UTF-8\n")),
        ("no blank", declared("BagIt-Version:1.0\nTag-File-Character-Encoding: UTF-8\n")),
        ("blank at the end", declared("BagIt-Version: 1.0 \nTag-File-Character-Encoding: UTF-8\n")),
        ("a third line", declared("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\nMore: x\n")),
        ("lines changed over", declared("Tag-File-Character-Encoding: UTF-8\nBagIt-Version: 1.0\n")),
        ("an empty line", declared("BagIt-Version: 1.0\n\nTag-File-Character-Encoding: UTF-8\n")),
    ]
}

/// RFC 8493 §2.1.3, §2.2 and §3 are stricter than `bagit` is.
fn invalid_since_1_0() -> Vec<(&'static str, Bag)> {
    let bag = || Bag::of("1.0");
    let lacking = tag_manifest(&bag().without("manifest-sha256.txt"));
    vec![
        ("manifests list other files", bag().with("data/two", "hello\n").second(HELLO_512, "data/two")),
        ("tag manifest without the manifest", bag().with("tagmanifest-sha256.txt", &lacking)),
        ("fetch lists what no manifest lists", bag().fetch("https://example.org/x 6 data/x\n")),
        ("fetch with an odd length", bag().fetch("https://example.org/x six data/hello.txt\n")),
        ("size told twice", bag().info("Payload-Oxum: 6.1\nPayload-Oxum: 6.1\n")),
        ("blank before a colon of the metadata", bag().info("Contact-Name : x\n")),
        ("metadata begin with a folded line", bag().info("  folded: x\n")),
    ]
}

#[test]
fn valid_bags_are_accepted() {
    for (name, bag, _) in valid() {
        assert!(bag.judge().is_ok(), "{name}: {:?}", bag.judge());
    }
}

#[test]
fn invalid_bags_are_refused_with_a_reason() {
    for (name, bag, _) in invalid() {
        let fault = bag.judge().expect_err(&name);
        assert!(!fault.cannot_judge(), "{name}: {fault}");
        assert!(fault.to_string().len() > 15, "{name}: {fault}");
    }
}

#[test]
fn what_is_not_known_here_is_said_to_be_so() {
    let md5 = |text: &str| Bag::of("1.0").without("manifest-sha256.txt").with("manifest-md5.txt", text);
    // MD5 of `hello` and a line end (by `md5sum`).
    let bag = md5("b1946ac92492d2347c6235b4d2611184  data/hello.txt\n");
    let fault = bag.judge().unwrap_err();
    assert!(fault.cannot_judge());
    assert_eq!(fault.to_string(), "cannot judge: the manifest algorithm md5 is not known here");
    // What is wrong with such a bag is still told.
    assert!(matches!(bag.clone().with("data/more", "").judge(), Err(BagFault::NotListed { .. })));
    assert!(matches!(bag.with("bag-info.txt", "Payload-Oxum: 1.1\n").judge(), Err(BagFault::Oxum { .. })));
    assert!(md5(&format!("{HELLO}  ../x\n")).judge().is_err_and(|f| !f.cannot_judge()));
    for text in [
        "BagIt-Version: 2.0\nTag-File-Character-Encoding: UTF-8\n",
        "BagIt-Version: 1.0\nTag-File-Character-Encoding: KOI8-R\n",
    ] {
        assert!(declared(text).judge().unwrap_err().cannot_judge(), "{text}");
    }
}

#[test]
fn what_does_not_travel_well_is_remarked() {
    let remarks = |bag: Bag| bag.judge().unwrap().join("; ");
    assert_eq!(remarks(Bag::of("1.0")), "");
    assert!(remarks(Bag::of("1.0").listing("data/HELLO.txt", "data/HELLO.txt")).contains("capitals only"));
    assert!(remarks(Bag::of("1.0").listing("data/Thumbs.db", "data/Thumbs.db")).contains("operating system"));
    assert!(
        remarks(Bag::of("1.0").with("manifest-sha256.txt", &format!("\u{feff}{HELLO}  data/hello.txt\n")))
            .contains("byte order mark")
    );
    assert!(
        remarks(Bag::of("1.0").with("manifest-sha256.txt", &format!("{HELLO} *data/hello.txt\n")))
            .contains("md5sum")
    );
    assert!(remarks(Bag::of("1.0").listing("data/50%.txt", "data/50%.txt")).contains("percent sign"));
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
    for (name, bytes) in files(&sealed) {
        disk.plant(&Path::new("/in/bag").join(name), &bytes);
    }
    assert_eq!(judge_path(&disk, Path::new("/in/a.zip")), Ok(Vec::new()));
    assert_eq!(judge_path(&disk, Path::new("/in/bag")), Ok(Vec::new()));
    assert!(judge_path(&disk, Path::new("/in/other.zip")).unwrap_err().cannot_judge());
    assert!(matches!(judge_path(&disk, Path::new("/in/none")), Err(BagFault::Unreadable { .. })));
    disk.plant(Path::new("/in/bag/data/more.txt"), b"");
    assert!(matches!(judge_path(&disk, Path::new("/in/bag")), Err(BagFault::NotListed { .. })));
}

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

/// Every case above, judged by `bagit` 1.9.0 too: it may differ only where we say so.
#[test]
fn bagit_agrees_but_for_what_is_noted() {
    if !has("python3", &["-c", "import bagit"]) {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let cases: Vec<(String, Bag, &str)> = valid()
        .into_iter()
        .map(|(name, bag, differs)| (name, bag, differs.unwrap_or("valid")))
        .chain(invalid().into_iter().map(|(name, bag, differs)| (name, bag, differs.unwrap_or("invalid"))))
        .collect();
    for (at, (_, bag, _)) in cases.iter().enumerate() {
        put_all(&dir.path().join(at.to_string()), &bag.0);
        SystemDisk.make_dir(&dir.path().join(at.to_string()).join("data")).unwrap();
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
        .filter(|(at, (_, _, expected))| said.get(at) != Some(expected))
        .map(|(at, (name, ..))| format!("{name}: bagit says {:?}", said.get(&at)))
        .collect();
    assert!(differ.is_empty(), "{differ:#?}");
}
