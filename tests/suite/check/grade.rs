//! The reading grade against published counts, and the counter of syllables against a list of words.

use sendoff::check::grade::{Counts, syllables};
use sendoff::source::Fault;

use super::{KITE_WORDS, LOT, changed, found};

fn grade(words: u32, sentences: u32, syllables: u32) -> f64 {
    Counts { words, sentences, syllables }.grade().expect("a text with words")
}

fn near(one: f64, other: f64, by: f64) -> bool {
    (one - other).abs() <= by
}

#[test]
fn the_formula_gives_the_published_grades() {
    // Published: a word of one syllable a sentence is the least there is, -3.40.
    assert!(near(grade(1, 1, 1), -3.40, 0.001));
    // Published: 5.7 words a sentence, 1.02 syllables a word, -1.3; -1.331 with all digits.
    assert!(near(grade(570, 100, 581), -1.331, 0.05), "{}", grade(570, 100, 581));
    assert!(near(grade(5_700, 1_000, 5_814), -1.331, 0.001), "5814 syllables of 5700 words are 1.02 each");
    // 13 words with 24 syllables in one sentence: 11.3 as published (from memory), 11.265 with all digits.
    assert!(near(grade(13, 1, 24), 11.265, 0.001));
    // "The cat sat on the mat.": 6 words, 6 syllables, -1.45.
    assert!(near(grade(6, 1, 6), -1.45, 0.001));
    assert_eq!(Counts::default().grade(), None, "no words, no grade");
}

#[test]
fn words_and_sentences_are_counted() {
    let cat = Counts::of("The cat sat on the mat.");
    assert_eq!(cat, Counts { words: 6, sentences: 1, syllables: 6 });
    assert_eq!(Counts::of("Stop! Wait. Is it 3.5 gal? (Yes.) Go on").sentences, 5);
    assert_eq!(Counts::of("press-and-hold \u{2013} now").words, 2, "a dash between blanks is no word");
    assert_eq!(Counts::of("one/two").words, 2);
    assert_eq!(Counts::of("12,500 5/8").syllables, 3, "a number is a word of one syllable");
    assert_eq!(Counts::of("  ").grade(), None);
}

/// Syllables as dictionaries part the words; from memory.
const WORDS: [(&str, u32); 97] = [
    ("a", 1),
    ("able", 2),
    ("accident", 3),
    ("adapter", 3),
    ("alarm", 2),
    ("already", 3),
    ("always", 2),
    ("appliance", 3),
    ("area", 3),
    ("awning", 2),
    ("battery", 3),
    ("before", 2),
    ("being", 2),
    ("boxes", 2),
    ("breaker", 2),
    ("bridge", 1),
    ("bridges", 2),
    ("burned", 1),
    ("cable", 2),
    ("cables", 2),
    ("camera", 3),
    ("carbon", 2),
    ("careful", 2),
    ("cassette", 2),
    ("closely", 2),
    ("coupler", 2),
    ("cylinder", 3),
    ("diesel", 2),
    ("doesn't", 2),
    ("don't", 1),
    ("drying", 2),
    ("electric", 3),
    ("emergency", 4),
    ("engine", 2),
    ("everyone", 3),
    ("explosion", 3),
    ("extinguisher", 4),
    ("fire", 1),
    ("fireplace", 2),
    ("freezes", 2),
    ("fridge", 1),
    ("fuel", 2),
    ("furnace", 2),
    ("gasoline", 3),
    ("generator", 4),
    ("going", 2),
    ("handle", 2),
    ("heated", 2),
    ("heavier", 3),
    ("household", 2),
    ("idea", 3),
    ("inverter", 3),
    ("isn't", 2),
    ("keys", 1),
    ("kitchen", 2),
    ("ladder", 2),
    ("leaving", 2),
    ("locked", 1),
    ("mirror", 2),
    ("monoxide", 3),
    ("motorhome", 3),
    ("nation", 2),
    ("needed", 2),
    ("outside", 2),
    ("people", 2),
    ("period", 3),
    ("propane", 2),
    ("pulled", 1),
    ("quiet", 2),
    ("radio", 3),
    ("refrigerator", 5),
    ("region", 2),
    ("regulator", 4),
    ("safely", 2),
    ("safety", 2),
    ("sewage", 2),
    ("someone", 2),
    ("something", 2),
    ("special", 2),
    ("spring", 1),
    ("stabilizer", 4),
    ("table", 2),
    ("tables", 2),
    ("temperature", 4),
    ("the", 1),
    ("there", 1),
    ("tires", 1),
    ("trailer", 2),
    ("trouble", 2),
    ("used", 1),
    ("valve", 1),
    ("valves", 1),
    ("vehicle", 3),
    ("video", 3),
    ("water", 2),
    ("wheels", 1),
    ("yes", 1),
];

#[test]
fn syllables_of_a_list_of_words() {
    let wrong: Vec<String> = WORDS
        .iter()
        .filter(|(word, count)| syllables(word) != *count)
        .map(|(word, count)| format!("{word}: {} for {count}", syllables(word)))
        .collect();
    assert!(wrong.is_empty(), "{wrong:?}");
    assert_eq!(syllables("press-and-hold"), 3);
    assert_eq!(syllables("80"), 1);
    assert_eq!(syllables("\u{201C}Tires,\u{201D}"), 1);
}

const HARD: &str =
    "Hold it with both hands until your partner has taken the tail and has counted slowly to three.";

#[test]
fn the_lot_says_how_hard_a_text_may_be() {
    let told = |grade: &str| {
        let by = format!("hand_overs: 30{grade}");
        let report = changed(&[(LOT, "hand_overs: 30", &by), (KITE_WORDS, "Two hands hold it.", HARD)]);
        let in_kite = |f: &&Fault| f.code == "text.grade" && f.place.file.as_ref() == KITE_WORDS;
        report.faults.iter().find(in_kite).cloned()
    };
    assert_eq!(told(""), None, "grade 8 where the lot does not say");
    let fault = told(", grade: 3").expect("a text above grade 3");
    assert!(fault.what.starts_with("what `kite` says reads at grade "), "{}", fault.what);
    assert!(fault.hint.contains("the longest has 18 words"), "{}", fault.hint);
}

#[test]
fn a_value_that_is_filled_in_is_one_word() {
    // The place is said as several words on the page, and would make the sentence longer.
    let stow =
        "It is kept { $place_awning }, and { $place_awning }, and { $place_awning }, and { $place_awning }.";
    assert_eq!(found(&[(KITE_WORDS, "It is kept { $place_awning }.", stow)]), Vec::<&str>::new());
}
