//! Source files: what a text editor leaves behind, places, and the faults of single texts.

use serde::Deserialize;

use sendoff::source::{At, Severity, SourceFile, nearest, place_of, read};

#[derive(Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
struct Form {
    name: At<String>,
    number: i16,
    #[serde(default, alias = "share?")]
    share: Option<f64>,
    pair: (u8, u8),
    kind: Kind,
}

#[derive(Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
enum Kind {
    Plain,
    One(String),
    Two(u8, u8),
    Fields {
        a: u8,
        #[serde(default, alias = "b?")]
        b: u8,
    },
}

const GOOD: &str = "(name: \"n\", number: -3, share: 0.5, pair: (1, 2), kind: Plain)";

fn told(text: &str) -> Vec<String> {
    let (value, faults) = read::<Form>(&SourceFile::new("f.ron", text));
    assert_eq!(value.is_none(), !faults.is_empty(), "a form with faults is not used");
    assert!(faults.iter().all(|f| f.severity == Severity::Fault && !f.what.is_empty() && !f.hint.is_empty()));
    faults.iter().map(|f| format!("{} {}:{}", f.code, f.place.line, f.place.col)).collect()
}

fn swapped(swap: &str, by: &str) -> Vec<String> {
    assert!(GOOD.contains(swap), "no `{swap}`");
    told(&GOOD.replacen(swap, by, 1))
}

#[test]
fn forms_are_read() {
    let (value, faults) = read::<Form>(&SourceFile::new("f.ron", GOOD));
    assert!(faults.is_empty());
    let name = At { at: 7, value: "n".to_owned() };
    assert_eq!(value, Some(Form { name, number: -3, share: Some(0.5), pair: (1, 2), kind: Kind::Plain }));
    for good in ["One(\"x\")", "Two(1, 2)", "Fields(a: 1)", "Fields(a: 1, b: 2)"] {
        assert_eq!(swapped("Plain", good), Vec::<String>::new(), "{good}");
    }
    assert_eq!(swapped("share: 0.5, ", ""), Vec::<String>::new());
    assert_eq!(swapped("0.5", "None"), Vec::<String>::new());
    assert_eq!(swapped("(1, 2)", "[1, 2]"), Vec::<String>::new());
}

#[test]
fn each_kind_of_slip_has_its_place() {
    let cases = [
        ("\"n\"", "n", "form.wrong-kind 1:8"),
        ("\"n\"", "7", "form.wrong-kind 1:8"),
        ("\"n\"", "None", "form.wrong-kind 1:8"),
        ("\"n\"", "['x']", "form.syntax 1:9"),
        ("-3", "3.5", "form.wrong-kind 1:21"),
        ("-3", "40000", "form.wrong-kind 1:21"),
        ("-3", "99999999999999999999999", "form.wrong-kind 1:21"),
        ("0.5", "NaN", "form.not-a-number 1:32"),
        ("0.5", "-inf", "form.not-a-number 1:32"),
        ("0.5", "1e999", "form.not-a-number 1:32"),
        ("0.5", "\"half\"", "form.wrong-kind 1:32"),
        ("(1, 2)", "(1, 2, 3)", "form.wrong-kind 1:43"),
        ("(1, 2)", "(1, 256)", "form.wrong-kind 1:47"),
        ("(1, 2)", "1", "form.wrong-kind 1:43"),
        ("Plain", "Plane", "form.unknown-word 1:57"),
        ("Plain", "Plain()", "form.wrong-kind 1:57"),
        ("Plain", "One", "form.wrong-kind 1:57"),
        ("Plain", "One(7)", "form.wrong-kind 1:61"),
        ("Plain", "Two(1)", "form.wrong-kind 1:57"),
        ("Plain", "Two(1, -2)", "form.wrong-kind 1:64"),
        ("Plain", "Fields(a: 1, c: 2)", "form.unknown-field 1:70"),
        ("Plain", "Fields(b: 1)", "form.missing-field 1:57"),
        ("Plain", "Fields(a: 1, a: 2)", "form.duplicate 1:70"),
        ("Plain", "\"Plain\"", "form.wrong-kind 1:57"),
        ("name", "nome", "form.unknown-field 1:2"),
        ("number: -3", "number: -3, number: 4", "form.duplicate 1:25"),
        ("number: -3, ", "", "form.missing-field 1:1"),
        ("share:", "share?:", "form.syntax 1:30"),
    ];
    for (swap, by, wanted) in cases {
        assert_eq!(swapped(swap, by), [wanted], "{swap} -> {by}");
    }
}

#[test]
fn all_slips_of_a_text_are_told() {
    let text = "(nome: \"n\",\n number: \"x\",\n pair: (1, 999),\n kind: Fields(a: -1, b: 3, b: 4),\n)";
    let wanted = [
        "form.unknown-field 1:2",
        "form.wrong-kind 2:10",
        "form.wrong-kind 3:12",
        "form.wrong-kind 4:18",
        "form.duplicate 4:28",
    ];
    let mut found = told(text);
    found.sort_by_key(|line| wanted.iter().position(|w| w == line));
    assert_eq!(found, wanted);
    assert_eq!(told("()"), ["form.missing-field 1:1"; 4], "each field by its own name");
}

#[test]
fn editors_may_leave_marks_and_line_ends() {
    let bom = format!("\u{feff}{GOOD}");
    assert_eq!(told(&bom), Vec::<String>::new());
    // A mark that is left does not shift the columns of the first line.
    assert_eq!(told(&bom.replacen("-3", "x", 1)), ["form.wrong-kind 1:21"]);
    let lines = "(\n name: \"n\",\n number: x,\n pair: (1, 2),\n kind: Plain,\n)\n";
    assert_eq!(told(lines), ["form.wrong-kind 3:10"]);
    assert_eq!(told(&lines.replace('\n', "\r\n")), ["form.wrong-kind 3:10"], "CRLF counts as one line end");
    assert_eq!(told(&lines.replace("x", "4").replace('\n', "\r\n")), Vec::<String>::new());
    assert_eq!(told(&format!("{bom}\u{feff}")), ["form.syntax 1:63"], "a second mark is none");
    let file = SourceFile::new("f", "a\r\nb\r\n");
    assert_eq!(file.line(2), Some("b"));
    assert_eq!(file.line(0), None);
    assert_eq!(file.line(4), None);
}

#[test]
fn empty_texts_are_told_as_such() {
    for empty in ["", " ", "\n\n", "\u{feff}", "// nothing", "/* nothing\n */"] {
        assert_eq!(told(empty), ["form.syntax 1:1"], "{empty:?}");
    }
}

#[test]
fn places_are_found_by_their_path() {
    let file = SourceFile::new("f.ron", "(\n a: [1, (b: 2)],\n c: {\"k\": Name(d: 3)},\n)");
    let at = |path: &[&str]| {
        let place = place_of(&file, path);
        (place.line, place.col)
    };
    assert_eq!(at(&["a", "1", "b"]), (2, 13));
    assert_eq!(at(&["c", "k", "d"]), (3, 19));
    assert_eq!(at(&["c", "x", "d"]), (3, 5), "as far as the path leads");
    assert_eq!(at(&[]), (1, 1));
    assert_eq!(place_of(&SourceFile::new("f", "(("), &["a"]).to_string(), "f:1:1");
}

#[test]
fn what_a_file_holds_is_quoted_not_copied() {
    let long = "x".repeat(100_000);
    let (_, faults) =
        read::<Form>(&SourceFile::new("f.ron", &GOOD.replacen("-3", &format!("\"{long}\""), 1)));
    assert!(faults[0].what.chars().count() <= 301, "{}", faults[0].what.len());
    let (_, faults) = read::<Form>(&SourceFile::new("f.ron", &GOOD.replacen("name", &long, 1)));
    assert!(faults.iter().all(|f| f.what.chars().count() <= 301));
    assert_eq!(nearest(&long, ["x"]), None);
}
