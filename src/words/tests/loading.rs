//! Loading: every fault, each at its place.

use proptest::prelude::*;

use super::super::{Args, Reader};
use super::{FORMAT, load, sound};
use crate::source::Fault;

fn told(faults: &[Fault]) -> Vec<String> {
    faults.iter().map(|fault| format!("{} {}", fault.place, fault.code)).collect()
}

#[test]
fn all_faults_are_found_at_once_and_where_they_are() {
    let (words, faults) = load(&[
        (
            "i18n/en-US/b.ftl",
            "good = Ünïque\n\nb@d = x\nhello = again\npick = { $n ->\n    [one] one\n}\nwater = Fill ünder 40 gal only\n",
        ),
        ("i18n/en-US/a.ftl", "hello = Hello\n    .tip = one\n    .tip = two\nto = { nowhere } { -brand }\n"),
        ("i18n/enUS/a.ftl", "x = y\n"),
        ("i18n/enUS/b.ftl", "x = y\n"),
        ("i18n/en_GB/a.ftl", "x = y\n"),
        ("i18n/en-XA/a.ftl", "x = y\n"),
    ]);
    assert_eq!(
        told(&faults),
        [
            "i18n/en-US/b.ftl:3:2 words.syntax",
            "i18n/en-US/b.ftl:7:1 words.syntax",
            "i18n/en-XA/a.ftl:1:1 words.language",
            "i18n/enUS/a.ftl:1:1 words.language",
            "i18n/en_GB/a.ftl:1:1 words.language",
            "i18n/en-US/a.ftl:3:6 words.duplicate",
            "i18n/en-US/a.ftl:4:8 words.reference",
            "i18n/en-US/a.ftl:4:21 words.reference",
            "i18n/en-US/b.ftl:4:1 words.duplicate",
            "i18n/en-US/b.ftl:8:20 words.typed-measure",
        ]
    );
    assert!(faults.iter().all(|fault| !fault.what.is_empty() && !fault.hint.is_empty()));
    let twice = faults.iter().find(|fault| fault.what.contains("`hello`")).unwrap();
    assert!(twice.what.contains("i18n/en-US/a.ftl:1:1"), "{}", twice.what);
    let folder = faults.iter().find(|fault| fault.what.contains("en_GB")).unwrap();
    assert!(folder.hint.contains("`en-GB`"), "{}", folder.hint);
    // What is sound is said all the same; of two messages the first.
    assert_eq!(words.say(&Reader::default(), "good", &Args::new()), "Ünïque");
    assert_eq!(words.say(&Reader::default(), "hello", &Args::new()), "Hello");
}

#[test]
fn measures_and_sums_typed_into_text_are_found() {
    for (text, found) in [
        ("Keep 20 ft away", "20 ft"),
        ("Keep 20\u{A0}ft away", "20 ft"),
        ("at 35% open", "35 %"),
        ("below 32 °F", "32 °"),
        ("a 12-volt outlet", "12 volt"),
        ("about 3,600 W in all", "3,600 W"),
        ("1/4 in thick", "1/4 in"),
        ("6 in above the floor", "6 in"),
        ("It costs $45.00", "45.00 $"),
        ("It costs 45 dollars", "45 dollars"),
        ("It costs USD 45", "45 USD"),
        ("wait 10 seconds", "10 seconds"),
        ("wait 10 Minutes", "10 Minutes"),
        ("at 65 mph.", "65 mph"),
        ("use 2 US gal", "2 US gal"),
        ("{ 40 } gal", "40 gal"),
        ("{ \"40\" } gal", "40 gal"),
        ("{ $n ->\n    [one] 1 lb\n   *[other] more\n }", "1 lb"),
        ("first 40\n    gal later", "40 gal"),
        ("bajo 10 metros", "10 metros"),
    ] {
        let (_, faults) = load(&[("i18n/en-US/a.ftl", &format!("m = {text}\n"))]);
        assert_eq!(faults.len(), 1, "{text}: {faults:?}");
        assert_eq!(faults[0].code, "words.typed-measure", "{text}");
        assert!(faults[0].what.ends_with(found), "{text}: {}", faults[0].what);
    }
}

#[test]
fn digits_without_a_measure_are_no_fault() {
    let text = "\
# keep 20 ft away
people = For 2 people
list = Line 2 in the list
step = Step 3 of 4: all 3 breakers
call = Dial 911 in an emergency
class = Class B25 V
given = { $limit } or less
version = Form 7
outlet = 2 outlets, 30 amber lamps
";
    sound(&[("i18n/en-US/a.ftl", text)]);
}

#[test]
fn attributes_and_terms_are_searched_for_measures() {
    let (_, faults) = load(&[("i18n/en-US/a.ftl", "-t = 3 ft\nm = text\n    .harm = 9 V hurts\n")]);
    assert_eq!(
        told(&faults),
        ["i18n/en-US/a.ftl:1:6 words.typed-measure", "i18n/en-US/a.ftl:3:13 words.typed-measure"]
    );
}

#[test]
fn terms_have_only_what_is_handed_to_them() {
    let (words, faults) = load(&[(
        "i18n/en-US/a.ftl",
        "-t = { $x } { $case ->\n    [n] N\n   *[m] M\n }\na = { -t }\nb = { -t(x: \"ok\") }\n-u = { d }\nc = { -u }\nd = { $y }\n",
    )]);
    assert_eq!(
        told(&faults),
        ["i18n/en-US/a.ftl:5:8 words.term-value", "i18n/en-US/a.ftl:8:8 words.term-value"]
    );
    assert_eq!(words.say(&Reader::default(), "b", &Args::new()), "ok M");
}

#[test]
fn circles_are_found_where_they_close() {
    let (_, faults) =
        load(&[("i18n/en-US/a.ftl", "a = { b }\nb = { c }\nc = { a } { d }\nd = { d }\ne = { a }\n")]);
    assert_eq!(told(&faults), ["i18n/en-US/a.ftl:3:7 words.cycle", "i18n/en-US/a.ftl:4:7 words.cycle"]);
}

#[test]
fn a_byte_order_mark_and_carriage_returns_are_no_fault() {
    let words = sound(&[("i18n/en-US/a.ftl", "\u{FEFF}hello = Hello\r\nnext = Next\r\n    .tip = Tip\r\n")]);
    assert_eq!(words.say(&Reader::default(), "hello", &Args::new()), "Hello");
    assert_eq!(
        words.place_of("en-US", "next").map(|place| place.to_string()).as_deref(),
        Some("i18n/en-US/a.ftl:2:1")
    );
    assert_eq!(
        words.place_of("en-US", "next.tip").map(|place| place.to_string()).as_deref(),
        Some("i18n/en-US/a.ftl:3:6")
    );
    assert_eq!(words.place_of("en-US", "nowhere"), None);
}

#[test]
fn a_lot_without_the_source_language_is_a_fault_and_still_answers() {
    let (words, faults) = load(&[("i18n/es/a.ftl", "hola = Hola\n")]);
    assert_eq!(told(&faults), ["i18n/en-US:1:1 words.no-source-language"]);
    assert_eq!(words.languages(), ["en-US", "es"]);
    assert_eq!(words.say(&Reader::default(), "hola", &Args::new()), "⟨hola⟩");
    let (words, faults) = load(&[]);
    assert_eq!(faults.len(), 1);
    assert_eq!(words.say(&Reader::default(), "x", &Args::new()), "⟨x⟩");
}

#[test]
fn large_files_and_floods_of_faults_are_held() {
    let large = format!("a = {}\n", "x".repeat(256 * 1024));
    let (words, faults) = load(&[("i18n/en-US/a.ftl", FORMAT), ("i18n/en-US/b.ftl", &large)]);
    assert_eq!(told(&faults), ["i18n/en-US/b.ftl:1:1 words.too-large"]);
    assert!(!words.has("en-US", "a"));
    let (_, faults) = load(&[("i18n/en-US/a.ftl", &"b@d = x\n".repeat(20_000))]);
    assert!(faults.len() <= 102, "{}", faults.len());
    assert_eq!(faults.last().map(|fault| fault.code), Some("words.many-faults"));
    let twice: String = (0..10_000).map(|_| "a = 3 ft\n").collect();
    let (_, faults) = load(&[("i18n/en-US/a.ftl", &twice)]);
    assert_eq!(faults.len(), 501);
}

/// What would send the parser or the formatter over the edge is refused before it gets there.
#[test]
fn hostile_messages_do_no_harm() {
    let deep = format!("good = fine\na = {}\n", "{".repeat(100_000));
    let calls = format!("a = {{ {}\n", "A(".repeat(100_000));
    let hidden = format!("a = {}\n", "{ A(\"}}}\", ".repeat(20_000));
    for text in [&deep, &calls, &hidden] {
        let (words, faults) = load(&[("i18n/en-US/a.ftl", text)]);
        assert!(faults.iter().any(|fault| fault.code == "words.too-deep"), "{faults:?}");
        assert_eq!(words.say(&Reader::default(), "a", &Args::new()), "⟨a⟩");
    }
    for text in [
        "a = { 99999999999999999999999 ->\n    [one] x\n   *[other] y\n }\n",
        "a = { $n ->\n    [99999999999999999999999] x\n   *[other] y\n }\n",
        "a = { NUMBER($n, minimumFractionDigits: 400) }\n",
        "a = { NUMBER($n, minimumFractionDigits: 99999999999) }\n",
        "a = { NUMBER($n, minimumFractionDigits: 1.5) }\n",
    ] {
        let (words, faults) = load(&[("i18n/en-US/a.ftl", text)]);
        assert_eq!(faults.first().map(|fault| fault.code), Some("words.number"), "{text}");
        assert_eq!(words.say(&Reader::default(), "a", &Args::new().number("n", 1)), "⟨a⟩");
    }
    // Each message ten times the one before: the formatter gives up in time.
    let laughs: String =
        (0..9).map(|n| format!("m{n} = {}\n", format!("{{ m{} }}", n + 1).repeat(10))).collect();
    let (words, faults) = load(&[("i18n/en-US/a.ftl", &format!("{laughs}m9 = ha\n"))]);
    assert_eq!(faults, []);
    assert!(words.try_say(&Reader::default(), "m0", &Args::new()).is_err());
    // A long chain is looked at once.
    let chain: String = (0..12_000).map(|n| format!("m{n} = {{ m{} }}\n", n + 1)).collect();
    let (words, faults) = load(&[("i18n/en-US/a.ftl", &chain)]);
    assert_eq!(told(&faults), ["i18n/en-US/a.ftl:12000:12 words.reference"]);
    assert!(words.try_say(&Reader::default(), "m0", &Args::new()).is_err());
}

/// Languages that plural rules do not know count as English does.
#[test]
fn a_language_without_plural_rules_still_counts() {
    let words = sound(&[
        ("i18n/en-US/a.ftl", "a = A\n"),
        (
            "i18n/qaa/a.ftl",
            "n = { $n ->\n    [one] one\n   *[other] many\n }\nself = { -t.a ->\n    [x] x\n   *[y] y\n }\n-t = T\n    .a = x\n",
        ),
    ]);
    let reader = Reader::new("qaa", crate::measure::System::Us);
    assert_eq!(words.say(&reader, "n", &Args::new().number("n", 1)), "one");
    assert_eq!(words.say(&reader, "self", &Args::new()), "x");
}

proptest! {
    /// Fragments of Fluent in any order: loading and saying answer, and every fault lies inside its file.
    #[test]
    fn nothing_written_makes_it_stumble(parts in prop::collection::vec(fragment(), 0..40)) {
        let text = parts.concat();
        let (words, faults) = load(&[("i18n/en-US/a.ftl", &text), ("i18n/ar/a.ftl", &text)]);
        for fault in &faults {
            let lines = u32::try_from(text.lines().count()).unwrap() + 1;
            prop_assert!(fault.place.line <= lines, "{} in {:?}", fault.place, text);
        }
        for lang in ["en-US", "ar", "en-XA", "es"] {
            let reader = Reader::new(lang, crate::measure::System::Us);
            for key in words.all_keys("en-US") {
                let args = Args::new().number("n", 3).text("x", "{$y}");
                prop_assert!(words.place_of("en-US", &key).is_some());
                let _said = words.say(&reader, &key, &args);
                let _tried = words.try_say(&reader, &key, &args);
                let _named = (words.variables(lang, &key), words.references(lang, &key));
            }
        }
    }
}

fn fragment() -> impl Strategy<Value = String> {
    let fixed = prop::sample::select(vec![
        "a",
        "b",
        "-t",
        " = ",
        "\n",
        "\r\n",
        "    ",
        "{ ",
        " }",
        "$n",
        "$x",
        " ->\n",
        "    [one] ",
        "   *[other] ",
        "[0]",
        "\"",
        ".tip",
        "NUMBER(",
        ")",
        ", ",
        "minimumFractionDigits: ",
        "9",
        "40 gal",
        "# ",
        "\\u00A0",
        "a = x\n",
        "b = { a }\n",
        "-t = { $x }\n",
        "c = { -t(x: \"1\") }\n",
        "d = { $n ->\n    [one] { b }\n   *[other] { d }\n }\n",
        "é",
        "\u{FEFF}",
        "1.5",
        ":",
        "-",
        "}}",
    ]);
    prop_oneof![9 => fixed.prop_map(str::to_owned), 1 => "\\PC{0,6}"]
}
