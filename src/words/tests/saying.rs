//! Saying messages.

use super::super::format;
use super::super::{Args, NAME_LENGTH, PSEUDO_LANGUAGE, Reader, SayFault, Words, clean_name};
use super::{FORMAT, load, sound};
use crate::measure::System;
use rust_decimal::Decimal;

const ENGLISH: &str = "\
hello = Hello, { $name }.
only-here = Only in English.
bays = { $count ->
    [0] No bays
    [one] One bay
   *[other] { $count } bays
}
caution = A step left out hits curbs.
    .harm = It bends.
-company = The lot
close = { -company } says { hello }
";

const POLISH: &str = "\
hello = Cześć, { $name }.
bays = { $count ->
    [one] jeden schowek
    [few] { $count } schowki
   *[many] { $count } schowków
}
broken = { $nobody }
";

fn words() -> Words {
    sound(&[("i18n/en-US/a.ftl", ENGLISH), ("i18n/pl/a.ftl", POLISH)])
}

fn polish() -> Reader {
    Reader::new("pl", System::Metric)
}

#[test]
fn plurals_follow_the_language() {
    let words = words();
    let say = |reader: &Reader, count: i64| words.say(reader, "bays", &Args::new().number("count", count));
    let english = Reader::default();
    assert_eq!(say(&english, 0), "No bays");
    assert_eq!(say(&english, 1), "One bay");
    assert_eq!(say(&english, 2), "2 bays");
    // Unicode CLDR, plural rules of Polish: 1 one; 2-4, 22 few; 5, 12 many.
    assert_eq!(say(&polish(), 1), "jeden schowek");
    assert_eq!(say(&polish(), 3), "3 schowki");
    assert_eq!(say(&polish(), 12), "12 schowków");
    assert_eq!(say(&polish(), 22), "22 schowki");
}

#[test]
fn numbers_select_by_value_however_they_were_written() {
    let words = words();
    let say = |count: &str| {
        words.say(&Reader::default(), "bays", &Args::new().number("count", count.parse::<Decimal>().unwrap()))
    };
    assert_eq!(say("0.0"), "No bays");
    assert_eq!(say("1.00"), "One bay");
    assert_eq!(say("1.5"), "1.5 bays");
    assert_eq!(say("-3"), "-3 bays");
    // Far beyond what plural rules can take.
    assert_eq!(say("79228162514264337593543950335"), "79228162514264337593543950335 bays");
    assert_eq!(say("0.0000000000000000000000000001"), "No bays");
    assert_eq!(say("999999999999.999999"), "1000000000000 bays");
}

#[test]
fn what_a_language_lacks_comes_from_the_source_then_as_its_key() {
    let words = words();
    let say = |lang: &str, key: &str| {
        words.say(&Reader::new(lang, System::Us), key, &Args::new().text("name", "Zoë"))
    };
    assert_eq!(say("pl", "hello"), "Cześć, Zoë.");
    assert_eq!(say("pl-PL", "hello"), "Cześć, Zoë.", "a region falls back to its language");
    assert_eq!(say("pl", "only-here"), "Only in English.");
    assert_eq!(say("xx", "only-here"), "Only in English.");
    assert_eq!(say("", "hello"), "Hello, Zoë.");
    assert_eq!(say("pl", "nowhere"), "⟨nowhere⟩");
    assert_eq!(say("en-US", "caution.harm"), "It bends.");
    assert_eq!(say("en-US", "caution.avoid"), "⟨caution.avoid⟩");
    assert_eq!(say("en-US", "-company"), "⟨-company⟩", "a term is no message");
    assert_eq!(say("en-US", "close"), "The lot says Hello, Zoë.");
}

#[test]
fn a_spoiled_translation_gives_way_to_a_sound_source() {
    let (words, _) = load(&[("i18n/en-US/a.ftl", "broken = Fine.\n"), ("i18n/pl/a.ftl", POLISH)]);
    assert_eq!(words.say(&polish(), "broken", &Args::new()), "Fine.");
    assert_eq!(
        words.say(&polish(), "bays", &Args::new()),
        "{$count} schowków",
        "nowhere sound: better a hole than nothing"
    );
}

#[test]
fn trying_names_everything_that_is_missing() {
    let (words, _) = load(&[(
        "i18n/en-US/a.ftl",
        "two = { $a } { $b } { gone } { -gone } { GONE() }\nround = { about }\nabout = { round }\n",
    )]);
    let faults = words.try_say(&Reader::default(), "two", &Args::new().text("b", "b")).unwrap_err();
    let key = || "two".to_owned();
    let reference = |name: &str| SayFault::NoReference { key: key(), reference: name.to_owned() };
    assert_eq!(
        faults,
        [
            SayFault::NoVariable { key: key(), variable: "a".into() },
            reference("`gone`"),
            reference("`-gone`"),
            reference("GONE()"),
        ]
    );
    let faults = words.try_say(&Reader::default(), "round", &Args::new()).unwrap_err();
    assert_eq!(faults, [SayFault::Cyclic { key: "round".into() }]);
    let faults = words.try_say(&polish(), "two", &Args::new()).unwrap_err();
    assert_eq!(faults, [SayFault::NoMessage { lang: "pl".into(), key: "two".into() }]);
    assert!(!words.say(&Reader::default(), "round", &Args::new()).is_empty());
}

#[test]
fn variables_are_followed_through_messages_and_stop_at_terms() {
    let (words, faults) = load(&[(
        "i18n/en-US/a.ftl",
        "a = { b } { $x } { -t(case: \"n\") }\nb = { c.more } { $y ->\n    [one] { $z }\n   *[other] { NUMBER($n, minimumFractionDigits: 1) }\n }\n\
         c = text\n    .more = { $more }\n-t = { $case ->\n    [n] { d }\n   *[other] x\n }\nd = { $inside }\n",
    )]);
    assert_eq!(faults.iter().map(|fault| fault.code).collect::<Vec<_>>(), ["words.term-value"]);
    let set = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect();
    assert_eq!(words.variables("en-US", "a"), set(&["more", "n", "x", "y", "z"]));
    assert_eq!(words.references("en-US", "a"), set(&["-t", "b", "c.more", "d"]));
    assert_eq!(words.variables("en-US", "c"), set(&[]));
    assert_eq!(words.variables("fr", "a"), set(&[]));
    assert_eq!(words.all_keys("en-US"), set(&["a", "b", "c", "c.more", "d"]));
}

/// The rule of the pseudo-language: text grows by 40 % of its characters, values do not change.
#[test]
fn the_pseudo_language_is_longer_by_two_fifths() {
    let words = sound(&[("i18n/en-US/format.ftl", FORMAT), ("i18n/en-US/a.ftl", ENGLISH)]);
    let pseudo = Reader::new(PSEUDO_LANGUAGE, System::Us);
    assert!(Words::is_pseudo(PSEUDO_LANGUAGE) && !Words::is_pseudo("en-US"));
    for key in ["only-here", "caution", "caution.harm"] {
        let plain = words.say(&Reader::default(), key, &Args::new());
        let long = words.say(&pseudo, key, &Args::new());
        let (short, long_length) = (plain.chars().count(), long.chars().count());
        assert!(long_length * 5 >= short * 7, "{plain}: {long}");
        assert!(long_length * 5 < short * 7 + 5, "{plain}: {long}");
        assert!(!long.contains(['e', 'i', 'n']), "{long}");
        assert_eq!(plain.split(' ').count(), long.split(' ').count(), "{long}");
    }
    let hello = words.say(&pseudo, "hello", &Args::new().text("name", "Zoe"));
    assert!(hello.contains("Zoe") && !hello.contains("Hello"), "{hello}");
    assert!(words.has(PSEUDO_LANGUAGE, "hello"));
    assert_eq!(words.languages(), ["en-US"]);
    // Marks of numbers are no words.
    assert_eq!(format::number(&words, &pseudo, Decimal::new(281_950, 2)), "2,819.50");
}

#[test]
fn words_travel_between_threads() {
    let words = words();
    let other = words.clone();
    let said = std::thread::spawn(move || other.say(&polish(), "bays", &Args::new().number("count", 2)))
        .join()
        .unwrap();
    assert_eq!(said, words.say(&polish(), "bays", &Args::new().number("count", 2)));
    assert_eq!(format!("{words:?}"), r#"Words(["en-US", "pl"])"#);
}

#[test]
fn names_hide_nothing() {
    assert_eq!(clean_name("  Ana \t\n María  "), "Ana María");
    assert_eq!(clean_name("\u{FEFF}Jo\u{202E}hn\u{200F} \u{2066}Q\u{2069}\u{0007}\u{0000}"), "John Q");
    assert_eq!(clean_name("A\u{200B}\u{00AD}\u{2060}\u{E0041}b"), "Ab");
    // The joiner that spells some Persian names stays.
    assert_eq!(clean_name("\u{0639}\u{200C}\u{0628}"), "\u{0639}\u{200C}\u{0628}");
    assert_eq!(clean_name("\u{2028}x\u{2029}y\u{85}z"), "x y z");
    assert_eq!(clean_name(&"é".repeat(200)).chars().count(), NAME_LENGTH);
    assert_eq!(clean_name(&format!("{} b", "a".repeat(NAME_LENGTH - 1))).chars().count(), NAME_LENGTH - 1);
    assert_eq!(clean_name("\u{202E}\u{FEFF} "), "");
}
