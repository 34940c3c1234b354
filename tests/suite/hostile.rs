//! Hostile lots: whatever a folder holds, reading it ends, in bounded memory, with faults that have a place.

use std::path::Path;
use std::sync::Arc;

use proptest::prelude::*;

use sendoff::check::{self, Report};
use sendoff::ports::system::SystemDisk;
use sendoff::script::{Bundle, BundleFault};
use sendoff::source::{Fault, SourceFile, read};

use crate::check::{KITE, KITE_WORDS, LOT, WREN, checked, found, lot, text_of};

const DEEP: usize = 100_000;
const MIB: usize = 1024 * 1024;

/// The lot with one file of these bytes, and what is told of that file.
fn laid(name: &str, content: &[u8]) -> (Report, Vec<Fault>) {
    let mut files = lot();
    let _ = files.insert(name.into(), Arc::from(content));
    let report = checked(files);
    let own = report.faults.iter().filter(|f| f.place.file.as_ref() == name).cloned().collect();
    (report, own)
}

fn codes(name: &str, content: impl AsRef<[u8]>) -> Vec<&'static str> {
    laid(name, content.as_ref()).1.iter().map(|f| f.code).collect()
}

#[test]
fn nesting_bombs_are_refused() {
    let bombs = [
        ("lists", "[".repeat(DEEP), "form.too-deep"),
        ("closed lists", "[".repeat(DEEP) + &"]".repeat(DEEP), "form.too-deep"),
        ("tuples", "(".repeat(DEEP), "form.too-deep"),
        ("named", "A(".repeat(DEEP), "form.too-deep"),
        ("fields", "(a:".repeat(DEEP), "form.too-deep"),
        ("maps", "{1:".repeat(DEEP), "form.too-deep"),
        ("options", "Some(".repeat(DEEP), "form.syntax"),
        ("in a field", format!("(id: {}", "[(".repeat(DEEP)), "form.too-deep"),
        ("comments", "/*".repeat(DEEP), "form.syntax"),
        ("closed comments", "/*".repeat(DEEP) + &"*/".repeat(DEEP), "form.syntax"),
        ("attributes", "#![enable(".repeat(DEEP), "form.syntax"),
        ("quotes", "\"".repeat(DEEP), "form.syntax"),
        ("raw quotes", format!("r{}\"", "#".repeat(DEEP)), "form.syntax"),
        ("closing", ")".repeat(DEEP), "form.syntax"),
        ("backslashes", format!("\"{}", "\\".repeat(DEEP)), "form.syntax"),
        ("signs", "-".repeat(DEEP), "form.syntax"),
    ];
    for (name, text, code) in &bombs {
        assert_eq!(codes(KITE, text), [*code], "{name}");
    }
}

#[test]
fn conditions_nest_no_deeper_than_forms_may() {
    let when = |depth: usize| {
        let nest = format!("{}Fitted(\"awning\"){}", "Not(".repeat(depth), ")".repeat(depth));
        found(&[(KITE, "when: Fitted(\"awning\")", &format!("when: {nest}"))])
    };
    assert_eq!(when(50), Vec::<&str>::new());
    assert_eq!(when(70), ["form.too-deep"]);
}

#[test]
fn bombs_of_words_are_refused() {
    for (name, text) in [
        ("placeables", format!("kite = {}", "{".repeat(DEEP))),
        ("calls", format!("kite = {{ {}", "NUMBER(".repeat(DEEP / 8))),
        ("selectors", format!("kite = {}", "{ $a -> *[b] ".repeat(DEEP / 16))),
        ("attributes", format!("kite = x\n{}", " .a = b\n".repeat(DEEP / 16))),
        ("names", "kite = x\n".repeat(DEEP / 16)),
        ("comments", "#".repeat(DEEP)),
        ("junk", "=\n".repeat(DEEP / 2)),
    ] {
        let (_, own) = laid("i18n/en-US/bomb.ftl", text.as_bytes());
        assert!(own.len() <= 1_002, "{name}: {} faults", own.len());
        assert!(
            own.iter()
                .all(|f| f.code.starts_with("words.")
                    || ["message.unused", "lot.many-findings"].contains(&f.code)),
            "{name}: {:?}",
            own.first()
        );
    }
}

/// Files as large as they may be, of each kind of token: read once or a few times, never once for each fault.
#[test]
fn large_files_of_nonsense_end() {
    let fill = |part: &str| part.repeat((MIB - 64) / part.len());
    let bodies = [
        ("items", format!("(id: \"kite\", who: Party, steps: [{}])", fill("7,"))),
        ("fields", format!("({})", fill("a:1,"))),
        ("unknown fields", format!("(id: \"kite\", who: Party, {})", fill("b:(),"))),
        ("entries", format!("{{{}}}", fill("\"k\":1,"))),
        ("steps", format!("(id: \"kite\", who: Party, steps: [{}])", fill("(id:1),"))),
        ("comment", format!("/*{}*/", fill("/* */"))),
        ("text", format!("\"{}\"", fill("\\n"))),
        ("raw text", format!("r##\"{}\"##", fill("\"#"))),
        ("digits", fill("9")),
        ("name", fill("x")),
        ("blanks", fill(" ")),
    ];
    for (name, body) in &bodies {
        let (_, own) = laid(KITE, body.as_bytes());
        assert!((1..=201).contains(&own.len()), "{name}: {} faults", own.len());
        let longest = own.iter().map(|f| f.what.len() + f.hint.len()).max().unwrap_or(0);
        assert!(longest < 4_000, "{name}: a fault of {longest} bytes");
    }
}

/// The same for files that can be read, and whose every word is wrong.
#[test]
fn large_files_of_wrong_words_end() {
    let step = |lines: String| {
        format!("(id: \"kite\", who: Party, steps: [(id: \"kite\", place: \"awning\", minutes: 1, {lines})])")
    };
    let all = |part: &dyn Fn(usize) -> String| (0..30_000).map(part).collect::<String>();
    let bodies = [
        ("lines", step(format!("show: [{}]", all(&|i| format!("\"line-{i}\",\n"))))),
        ("readings", step(format!("readings: [{}]", all(&|i| format!("\"reading-{i}\","))))),
        ("waits", step(format!("after: [{}]", all(&|i| format!("\"step-{i}\","))))),
        ("conditions", step(format!("when: Any([{}])", all(&|i| format!("Fitted(\"fact-{i}\"),\n"))))),
    ];
    for (name, body) in &bodies {
        assert!(body.len() < MIB, "{name}");
        let (report, own) = laid(KITE, body.as_bytes());
        assert!((900..=1_002).contains(&own.len()), "{name}: {} faults", own.len());
        assert!(report.faults.iter().any(|f| f.code == "lot.many-findings"), "{name}");
    }
}

#[test]
fn the_limit_of_a_file_is_exact() {
    let padded = |len: usize| {
        let mut text = text_of(&lot(), KITE);
        text.push_str(&" ".repeat(len - text.len()));
        codes(KITE, text)
    };
    assert_eq!(padded(MIB), Vec::<&str>::new());
    assert_eq!(padded(MIB + 1), ["form.too-large"]);
}

#[test]
fn bytes_that_are_no_text_are_told_where_they_stand() {
    for (bytes, line, col) in [
        (&b"(id: \"k\xc3\x28\")"[..], 1, 8),
        (b"// a\n\xff", 2, 1),
        (b"// \xc3\xa9\n// \xed\xa0\x80", 2, 4),
        (b"\xfe\xff\x00(", 1, 1),
        (b"(\xe2\x82", 1, 2),
    ] {
        let (_, own) = laid(KITE, bytes);
        let told: Vec<_> = own.iter().map(|f| (f.code, f.place.line, f.place.col)).collect();
        assert_eq!(told, [("form.not-utf8", line, col)], "{bytes:?}");
    }
    assert_eq!(codes(KITE_WORDS, b"kite = \xff"), ["form.not-utf8"]);
    assert_eq!(codes(KITE, ""), ["form.syntax"], "an empty file");
    assert_eq!(codes(KITE, "\0"), ["form.syntax"]);
    assert_eq!(codes(WREN, ""), ["form.syntax"]);
    assert_eq!(codes(LOT, ""), ["form.syntax"]);
}

#[test]
fn a_lot_of_nothing_says_what_it_lacks() {
    let report = check::lot(Arc::new(Bundle::new(std::collections::BTreeMap::new(), false)));
    let mut told: Vec<&str> = report.faults.iter().map(|f| f.code).collect();
    told.sort_unstable();
    told.dedup();
    assert_eq!(told, ["lot.missing-file", "lot.no-unit", "words.no-source-language"]);
    assert!(report.scripts.is_none() && !report.is_clean());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    /// Bytes changed anywhere in the lot: no crash, and a lot with faults is not led from as if it had none.
    #[test]
    fn slips_of_any_kind_are_survived(
        name in prop::sample::select(vec![KITE, KITE_WORDS, LOT, WREN, "walkthroughs/readings.ron"]),
        slips in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>(), 0_u8..3), 1..6),
    ) {
        let mut bytes = text_of(&lot(), name).into_bytes();
        for (at, byte, kind) in slips {
            let at = at.index(bytes.len());
            match kind {
                0 => bytes[at] = byte,
                1 => bytes.insert(at, byte),
                _ => { let _ = bytes.remove(at); }
            }
        }
        let (report, _) = laid(name, &bytes);
        let report_has_places = report.faults.iter().all(|f| f.place.line >= 1 && f.place.col >= 1);
        prop_assert!(report_has_places);
        if let Some(scripts) = &report.scripts {
            for unit in scripts.units.keys() {
                let route = sendoff::route::build(scripts, unit);
                prop_assert!(route.is_some());
            }
        }
    }

    #[test]
    fn any_text_is_read_to_an_end(text in "\\PC*") {
        let (value, faults) = read::<sendoff::unit::Sheet>(&SourceFile::new("f.ron", &text));
        prop_assert!(value.is_none() && !faults.is_empty());
    }
}

// ---- Folders on a disk.

/// A lot folder on the disk with the demo lot in it.
fn folder() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    let demo = Bundle::demo();
    for name in demo.names() {
        let path = dir.path().join(name);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(path, demo.get(name).expect("a file")).expect("a file");
    }
    dir
}

fn bundle(dir: &Path) -> Result<Bundle, BundleFault> {
    Bundle::read(&SystemDisk, dir)
}

/// Most memory that this process has held, in bytes; none where the system does not say.
fn peak() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|l| l.starts_with("VmHWM:"))?;
    line.split_whitespace().nth(1)?.parse::<u64>().ok().map(|kib| kib * 1024)
}

/// A gigabyte of nothing, which takes no room on the disk.
fn sparse(path: &Path) {
    let file = std::fs::File::create(path).expect("a file");
    file.set_len(1024 * 1024 * 1024).expect("a sparse file");
}

#[test]
fn a_gigabyte_is_refused_in_little_memory() {
    let dir = folder();
    sparse(&dir.path().join("walkthroughs/topics/awning.ron"));
    sparse(&dir.path().join("i18n/en-US/units.ftl"));
    let report = check::lot(Arc::new(bundle(dir.path()).expect("a lot")));
    let told: Vec<String> =
        report.faults.iter().filter(|f| f.code == "form.too-large").map(|f| f.place.to_string()).collect();
    assert_eq!(told, ["i18n/en-US/units.ftl:1:1", "walkthroughs/topics/awning.ron:1:1"]);
    // The words that are lost with the file are not told one by one.
    assert!(report.faults.iter().all(|f| f.code != "message.unknown"));

    sparse(&dir.path().join("assets/pictures/keys.svg"));
    let fault = bundle(dir.path()).expect_err("a picture of a gigabyte");
    assert!(matches!(fault, BundleFault::Disk(_)) && fault.to_string().contains("keys.svg"), "{fault}");
    match peak() {
        Some(bytes) => assert!(bytes < 900 * 1024 * 1024, "{bytes} bytes were held"),
        None => crate::check::skipped("/proc/self/status"),
    }
}

#[test]
fn folders_that_are_no_lot_are_refused() {
    let dir = tempfile::tempdir().expect("a folder");
    let fault = bundle(dir.path()).expect_err("an empty folder");
    assert!(matches!(fault, BundleFault::NoLot(_)) && fault.to_string().contains("walkthroughs"), "{fault}");
    let fault = bundle(&dir.path().join("nowhere")).expect_err("no folder");
    assert!(matches!(fault, BundleFault::NoLot(_)), "{fault}");
}

#[test]
fn folders_of_too_many_files_are_refused() {
    let dir = folder();
    let pictures = dir.path().join("assets/pictures");
    for number in 0..5_001 {
        std::fs::write(pictures.join(format!("{number}.svg")), "").expect("a file");
    }
    let fault = bundle(dir.path()).expect_err("too many files");
    assert!(matches!(fault, BundleFault::TooMany(_)), "{fault}");
}

#[test]
fn files_that_are_too_large_together_are_refused() {
    let dir = folder();
    let pictures = dir.path().join("assets/pictures");
    for number in 0..17 {
        let file = std::fs::File::create(pictures.join(format!("{number}.jpg"))).expect("a file");
        file.set_len(16 * 1024 * 1024).expect("a sparse file");
    }
    let fault = bundle(dir.path()).expect_err("272 MiB");
    assert!(matches!(fault, BundleFault::TooLarge(_)), "{fault}");
}

#[cfg(unix)]
#[test]
fn links_and_pipes_do_not_hold_anybody_up() {
    let dir = folder();
    let topics = dir.path().join("walkthroughs/topics");
    // Three links from a folder to itself would be looked into 3^6 times and more.
    for name in ["a", "b", "c"] {
        std::os::unix::fs::symlink(&topics, topics.join(name)).expect("a link");
    }
    let fault = bundle(dir.path()).expect_err("folders that lead back to themselves");
    assert!(matches!(fault, BundleFault::TooMany(_) | BundleFault::TooDeep(_)), "{fault}");

    let dir = folder();
    std::os::unix::fs::symlink("/dev/zero", dir.path().join("walkthroughs/topics/zero.ron")).expect("a link");
    let fault = bundle(dir.path()).expect_err("a device is no script");
    assert!(fault.to_string().contains("zero.ron"), "{fault}");
}

#[test]
fn a_lot_of_the_disk_is_the_lot_of_the_program() {
    let dir = folder();
    let read = bundle(dir.path()).expect("a lot");
    assert_eq!(read.digest(), Bundle::demo().digest());
    assert!(!read.is_demo());
    // What an editor leaves behind is not read.
    std::fs::write(dir.path().join("walkthroughs/topics/.awning.ron.swp"), "x").expect("a file");
    assert_eq!(bundle(dir.path()).expect("a lot").digest(), Bundle::demo().digest());
    std::fs::write(dir.path().join("walkthroughs/topics/awning.ron~"), "x").expect("a file");
    assert!(check::lot(Arc::new(bundle(dir.path()).expect("a lot"))).is_clean());
}
