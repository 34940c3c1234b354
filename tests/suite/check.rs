//! Deliberate faults: `tests/scripts/invalid` holds a file for each, laid over the demo lot in memory, with what
//! `check` must find written at its head.
//!
//! `expect: CODE LINE:COL` names a place in the file that is laid over; `CODE @TEXT+N` the place N characters behind
//! the first such text, `@^TEXT` at the start of a line; `CODE xN` N faults at any place. `over: NAME` says which file
//! of the lot the body takes the place of. With `swap: TEXT` and `for: TEXT` the body is that file with the first text
//! swapped for the second, and places count from there. `drop: NAME` takes a file or folder out; `pad: N` adds blanks;
//! `fit: KEY` measures the pages, and what has that key does not fit on those of one unit.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock};

use sendoff::check::{self, Overflow, Report};
use sendoff::script::{Bundle, Scripts};
use sendoff::source::{Fault, Severity, SourceFile};

mod command;
mod grade;
mod hazards;
mod pictures;
mod speaking;
mod units;

/// Findings that are notes; route.doubling is one when it is short. All others are faults.
const NOTES: [&str; 9] = [
    "guide.unreached",
    "message.unused",
    "picture.missing",
    "picture.unused",
    "place.outside",
    "place.station",
    "step.lines",
    "unit.not-known",
    "unit.unusual",
];

pub(crate) const KITE: &str = "walkthroughs/topics/kite.ron";
pub(crate) const KITE_WORDS: &str = "i18n/en-US/kite.ftl";

const KITE_GUIDE: &str = "walkthroughs/guides/trouble-kite.ron";

pub(crate) type Files = BTreeMap<String, Arc<[u8]>>;

fn scripts() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/scripts")
}

fn bytes(path: &Path) -> Vec<u8> {
    std::fs::read(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// The files of the demo lot.
pub(crate) fn demo_files() -> Files {
    let demo = Bundle::demo();
    demo.names().map(|n| (n.to_owned(), Arc::clone(demo.get(n).expect("a file of the demo lot")))).collect()
}

/// The demo lot with a topic more, in which there is no fault, and with one of its units, so that each slip is told
/// once.
pub(crate) fn lot() -> Files {
    let mut files = demo_files();
    files.retain(|name, _| !["plover", "heron"].iter().any(|other| name.contains(other)));
    let _ = files.insert(KITE.into(), Arc::from(bytes(&scripts().join("kite.ron"))));
    let _ = files.insert(KITE_WORDS.into(), Arc::from(bytes(&scripts().join("kite.ftl"))));
    let words = bytes(&scripts().join("trouble-kite.ftl"));
    let _ = files.insert("i18n/en-US/trouble-kite.ftl".into(), Arc::from(words));
    let _ = files.insert(KITE_GUIDE.into(), Arc::from(bytes(&scripts().join("trouble-kite.ron"))));
    files
}

/// What is found in the lot without a slip: notes at most.
pub(crate) static USUAL: LazyLock<Report> = LazyLock::new(|| checked(lot()));

pub(crate) fn checked(files: Files) -> Report {
    check::lot(Arc::new(Bundle::new(files, false)))
}

/// The lot with some files changed: name, text to swap, text for it; the whole text where there is nothing to swap.
pub(crate) fn changed(changes: &[(&str, &str, &str)]) -> Report {
    let mut files = lot();
    for (name, swap, by) in changes {
        let old = text_of(&files, name);
        assert!(old.contains(swap), "{name} has no `{swap}`");
        let new = if swap.is_empty() { (*by).to_owned() } else { old.replacen(swap, by, 1) };
        let _ = files.insert((*name).into(), Arc::from(new.into_bytes()));
    }
    checked(files)
}

/// The codes of what was found beyond the usual, sorted by place.
pub(crate) fn found(changes: &[(&str, &str, &str)]) -> Vec<&'static str> {
    new_faults(&changed(changes), &USUAL).iter().map(|f| f.code).collect()
}

pub(crate) fn text_of(files: &Files, name: &str) -> String {
    String::from_utf8_lossy(files.get(name).map(AsRef::as_ref).unwrap_or_default()).into_owned()
}

/// What a head of comments asks for.
#[derive(Default)]
struct Head {
    over: Option<String>,
    swap: Option<String>,
    by: Option<String>,
    drop: Option<String>,
    pad: usize,
    fit: Option<String>,
    expect: Vec<String>,
}

fn head(text: &str) -> Head {
    let mut head = Head::default();
    for line in text.trim_start_matches('\u{feff}').lines() {
        let Some(line) = line.strip_prefix("// ").or_else(|| line.strip_prefix("# ")) else { break };
        let Some((word, rest)) = line.split_once(':') else { continue };
        let rest = rest.trim_start().to_owned();
        match word {
            "over" => head.over = Some(rest),
            "swap" => head.swap = Some(rest),
            "for" => head.by = Some(rest),
            "drop" => head.drop = Some(rest),
            "pad" => head.pad = rest.parse().expect("a number"),
            "fit" => head.fit = Some(rest),
            "expect" => head.expect.push(rest),
            _ => {}
        }
    }
    head
}

/// The lot with a file laid over, the name of that file, and where the swapped text begins in it.
fn laid_over(path: &Path) -> (Files, String, Option<usize>, Head) {
    let content = bytes(path);
    let text = String::from_utf8_lossy(&content).into_owned();
    let head = head(&text);
    let usual = if path.extension().is_some_and(|e| e == "ftl") { KITE_WORDS } else { KITE };
    let over = head.over.clone().unwrap_or_else(|| usual.to_owned());
    let mut files = lot();
    let mut start = None;
    if let Some(name) = &head.drop {
        files.retain(|n, _| !n.starts_with(name.as_str()));
    } else if let Some(swap) = &head.swap {
        let old = text_of(&files, &over);
        let at =
            old.find(swap.as_str()).unwrap_or_else(|| panic!("{}: {over} has no `{swap}`", path.display()));
        let new = old.replacen(swap.as_str(), head.by.as_deref().unwrap_or_default(), 1);
        start = Some(at);
        let _ = files.insert(over.clone(), Arc::from(new.into_bytes()));
    } else {
        let mut content = content;
        content.extend(vec![b' '; head.pad]);
        let _ = files.insert(over.clone(), Arc::from(content));
    }
    (files, over, start, head)
}

/// One expected fault: its code, and its line and column if they are told.
fn expected(line: &str, text: &str, start: Option<usize>) -> (String, Vec<Option<(u32, u32)>>) {
    let (code, place) = line.split_once(' ').expect("a code and a place");
    let file = SourceFile::new("x", text);
    let at = |byte: usize| {
        let place = file.place_at(byte);
        (place.line, place.col)
    };
    let place = place.trim();
    if let Some(count) = place.strip_prefix('x') {
        return (code.into(), vec![None; count.parse().expect("a number")]);
    }
    if let Some(needle) = place.strip_prefix('@') {
        let (needle, more) = needle.rsplit_once('+').unwrap_or((needle, "0"));
        let found = match needle.strip_prefix('^') {
            Some(needle) => text.find(&format!("\n{needle}")).map(|at| at + 1),
            None => text.find(needle),
        };
        let byte =
            found.unwrap_or_else(|| panic!("no `{needle}`")) + more.parse::<usize>().expect("a number");
        return (code.into(), vec![Some(at(byte))]);
    }
    let (row, col) = place.split_once(':').expect("line:col");
    let (row, col): (u32, u32) = (row.parse().expect("a line"), col.parse().expect("a column"));
    let from = start.map_or((1, 1), at);
    let col = if row == 1 { from.1 + col - 1 } else { col };
    (code.into(), vec![Some((from.0 + row - 1, col))])
}

/// The faults of a report that the lot without the slip does not have.
fn new_faults(report: &Report, usual: &Report) -> Vec<Fault> {
    let same = |a: &Fault, b: &Fault| a.code == b.code && a.what == b.what && a.place.file == b.place.file;
    report.faults.iter().filter(|f| !usual.faults.iter().any(|u| same(f, u))).cloned().collect()
}

/// What is wrong with the findings of one file, if anything.
fn judge(path: &Path, usual: &Report) -> Option<String> {
    let (files, over, start, head) = laid_over(path);
    let text = text_of(&files, &over);
    let fit = |_: &Scripts, unit: &str| {
        let key = head.fit.clone().filter(|_| unit == "wren");
        key.map(|key| Overflow { key, what: "its last line".to_owned() }).into_iter().collect()
    };
    let report = check::lot_with(Arc::new(Bundle::new(files, false)), Some(&fit));
    let found = new_faults(&report, usual);
    let doubling = |f: &&Fault| f.code == "route.doubling";
    if let Some(odd) = found
        .iter()
        .filter(|f| !doubling(f))
        .find(|f| NOTES.contains(&f.code) != (f.severity == Severity::Note))
    {
        return Some(format!("{} is {:?}", odd.code, odd.severity));
    }
    let mut left = found.clone();
    let mut wanting = Vec::new();
    for line in &head.expect {
        let (code, places) = expected(line, &text, start);
        for place in places {
            let fits = |f: &Fault| f.code == code && place.is_none_or(|p| p == (f.place.line, f.place.col));
            match left.iter().position(fits) {
                Some(at) => drop(left.remove(at)),
                None => wanting.push(format!("{code} {place:?}")),
            }
        }
    }
    let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
    let own = name.split("--").next().unwrap_or_default().to_owned();
    let named = head.expect.iter().any(|line| line.split(' ').next() == Some(own.as_str()));
    (!wanting.is_empty() || !left.is_empty() || !named).then(|| {
        let left: Vec<String> =
            left.iter().map(|f| format!("\n    {} {}: {}", f.code, f.place, f.what)).collect();
        format!("{name}: wanting {wanting:?}, not expected: {}", left.concat())
    })
}

fn invalid() -> Vec<PathBuf> {
    let dir = scripts().join("invalid");
    let mut all: Vec<PathBuf> =
        std::fs::read_dir(dir).expect("the folder of faults").flatten().map(|e| e.path()).collect();
    all.sort();
    all
}

#[test]
fn the_demo_lot_is_clean() {
    let report = check::lot(Arc::new(Bundle::demo()));
    let faults: Vec<&Fault> = report.faults.iter().filter(|f| f.severity == Severity::Fault).collect();
    assert!(faults.is_empty(), "{faults:#?}");
    assert!(report.is_clean() && report.scripts.is_some() && !report.walks.is_empty());
}

#[test]
fn the_lot_under_the_faults_has_none() {
    let usual = check::lot(Arc::new(Bundle::demo()));
    // With one unit less, rows and pictures of the others are not come to.
    let new = new_faults(&USUAL, &usual).into_iter().filter(|f| f.severity == Severity::Fault);
    assert_eq!(new.collect::<Vec<_>>(), Vec::<Fault>::new());
}

#[test]
fn each_slip_gives_exactly_its_faults() {
    let all = invalid();
    assert!(all.len() > 80, "{} files", all.len());
    let wrong: Vec<String> = all.iter().filter_map(|path| judge(path, &USUAL)).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Codes in a Rust text: `"family.name"` in lower case, behind one of the families that `check` has.
fn codes(text: &str) -> Vec<String> {
    const FAMILIES: [&str; 22] = [
        "demo", "guide", "form", "lot", "id", "step", "picture", "caution", "fact", "reading", "unit",
        "place", "change", "message", "route", "words", "figure", "room", "topic", "hazard", "text", "page",
    ];
    let parts = text.split('"').skip(1).step_by(2);
    parts
        .filter(|part| {
            part.split_once('.').is_some_and(|(family, name)| {
                FAMILIES.contains(&family)
                    && !name.is_empty()
                    && name.bytes().all(|b| b.is_ascii_lowercase() || b == b'-')
            })
        })
        .map(ToOwned::to_owned)
        .collect()
}

fn rust_files(dir: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(dir).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            rust_files(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

#[test]
fn every_code_has_a_file() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    for part in ["source", "script", "check", "words/load"] {
        files.push(src.join(format!("{part}.rs")));
        rust_files(&src.join(part), &mut files);
    }
    let expected: Vec<String> = invalid()
        .iter()
        .flat_map(|path| head(&String::from_utf8_lossy(&bytes(path))).expect)
        .filter_map(|line| line.split(' ').next().map(ToOwned::to_owned))
        .collect();
    let mut known = 0;
    for path in files.iter().filter(|p| !p.ends_with("tests.rs")) {
        // A quotation mark as a character would shift what is inside quotes.
        let text = String::from_utf8_lossy(&bytes(path)).replace("'\"'", "").replace("b\"", "\"");
        for code in codes(&text) {
            // Named to be looked for, not told.
            if ["lot.ron", "unit.rs"].contains(&code.as_str()) {
                continue;
            }
            known += 1;
            assert!(
                expected.contains(&code),
                "{code} ({}) has no file in tests/scripts/invalid",
                path.display()
            );
        }
    }
    assert!(known > 60, "{known} codes found");
}

pub(crate) const AWNING: &str = "walkthroughs/topics/awning.ron";
pub(crate) const WREN: &str = "walkthroughs/units/wren.ron";
pub(crate) const LOT: &str = "walkthroughs/lot.ron";
const READINGS: &str = "walkthroughs/readings.ron";

#[test]
fn faults_of_all_files_are_collected_at_once() {
    let all = found(&[
        (KITE_WORDS, "Show the string.", "Show { show-kite-rope }."),
        (LOT, "zone: \"MST7MDT,M3.2.0,M11.1.0\"", "zone: \"Mountain\""),
        (READINGS, "Parts(8)", "Parts(0)"),
        (AWNING, "minutes: ", "minutes "),
        (KITE, "Shock, harm: Death", "Shock, harm: Minor"),
        (WREN, "gvwr: \"14500 lb\"", "gvwr: \"14500 psi\""),
        (WREN, "solar: NotFitted,", ""),
        (WREN, "belts: 6", "belts: \"6\""),
    ]);
    let wanted = [
        "words.reference",
        "lot.zone",
        "reading.scale",
        "form.syntax",
        "caution.signal",
        // The section that is missing stands at the start of its sheet.
        "form.missing-field",
        "form.value",
        "form.wrong-kind",
    ];
    assert_eq!(all, wanted);
}

#[test]
fn the_rest_is_checked_when_the_lot_file_cannot_be_read() {
    let all = found(&[
        (LOT, "gallon: Us", "gallon: Uz"),
        (READINGS, "{", "["),
        (KITE, "Shock, harm: Death", "Shock, harm: Minor"),
        (WREN, "belts: 6", "belts: 5"),
    ]);
    assert_eq!(all, ["form.unknown-word", "form.syntax", "caution.signal", "unit.belts"]);
    let report = changed(&[(LOT, "gallon: Us", "gallon: Uz")]);
    assert!(report.scripts.is_none() && report.walks.is_empty(), "nothing is led from a lot that stands in");
}

#[test]
fn one_slip_gives_one_fault() {
    // A topic that cannot be read: its messages, its steps and its place in other files are not told as well.
    let after = (KITE, "after: [\"kite\"]", "after: [\"awning\"]");
    assert_eq!(found(&[(AWNING, "id: \"awning\"", "id \"awning\""), after]), ["form.syntax"]);
    let dropped = (WREN, "changes: [", "changes: [Drop(step: \"awning\", reason: \"lot-name\"),");
    assert_eq!(found(&[(AWNING, "id: \"awning\"", "id \"awning\""), dropped]), ["form.syntax"]);
    // A message that cannot be read is not unknown as well.
    assert_eq!(found(&[(KITE_WORDS, "Show the string.", "{ Show the string.")]), ["words.syntax"]);
    assert_eq!(found(&[(KITE_WORDS, "", "\u{0}")]).first(), Some(&"words.syntax"));
    // A value that does not fit costs neither its group nor what stands beside it.
    assert_eq!(found(&[(WREN, "door: (kind: Hinged,", "door: (kind: Hinge,")]), ["form.unknown-word"]);
    let both = [(WREN, "door: (kind: Hinged,", "door: (knid: Hinged,"), (WREN, "solar: NotFitted,", "")];
    assert_eq!(found(&both), ["form.missing-field", "form.unknown-field"]);
    // One value of a word with two.
    assert_eq!(
        found(&[(KITE, "Over(\"awning.reach\", \"1 ft\")", "Over(\"awning.reach\", \"1 fd\")")]),
        ["form.value"]
    );
    assert_eq!(found(&[(KITE, "Fitted(\"awning\")", "Fitted(7)")]), ["form.wrong-kind"]);
}

#[test]
fn three_slips_in_one_place_are_three_faults() {
    let weight = "gvwr: \"14500 lb\", uvw: \"11681 lb\", occc: \"2819 lb\"";
    let all = found(&[(WREN, weight, "gvwr: \"1 psi\", uvw: 12")]);
    assert_eq!(all, ["form.missing-field", "form.value", "form.wrong-kind"]);
    let all = found(&[(WREN, &format!("{weight}, "), "")]);
    assert_eq!(all, ["form.missing-field"; 3], "each by its own name");
}

#[test]
fn hints_name_what_was_meant() {
    let hint = |change| {
        let report = changed(&[change]);
        new_faults(&report, &USUAL).first().map(|f| f.hint.clone()).unwrap_or_default()
    };
    assert_eq!(hint((KITE, "Fitted(\"awning\")", "Fitted(\"awming\")")), "did you mean `awning`?");
    assert_eq!(hint((KITE, "minutes: 2", "minuts: 2")), "did you mean `minutes`?");
    assert_eq!(hint((KITE, "who: Party", "who: Patry")), "did you mean `Party`?");
    assert_eq!(hint((KITE, "[\"fuel\"]", "[\"fule\"]")), "did you mean `fuel`?");
    assert!(
        hint((KITE_WORDS, "awning_wind_limit", "awning_wind_limt"))
            .starts_with("did you mean $awning_wind_limit?")
    );
    assert!(hint((KITE, "\"wind\",", "\"wind\", \"wond\",")).starts_with("did you mean `know-kite-wind`?"));
    assert!(hint((LOT, "[\"en-US\"]", "[\"en-UK\"]")).contains("en-US"));
}

/// Says that a test cannot be made here, past the capture of the test harness; a failure where tools are required.
pub(crate) fn skipped(needs: &str) {
    use std::io::Write as _;
    let _ = writeln!(std::io::stderr(), "skipped: needs {needs}");
    assert!(std::env::var("SENDOFF_REQUIRE_TOOLS").is_err(), "needs {needs}");
}
