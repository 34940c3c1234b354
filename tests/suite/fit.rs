//! Whether every page fits, measured by layout.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use sendoff::kiosk::headless::{Sample, measured, overflows};
use sendoff::kiosk::scripts;
use sendoff::script::{Bundle, Scripts};
use sendoff::words::PSEUDO_LANGUAGE;

/// Combinations of size, text size and theme a page is measured in.
const EACH: usize = 5;

/// The demo lot with one text of a file changed.
fn lot_with(file: &str, old: &str, new: &str) -> Arc<Scripts> {
    let demo = Bundle::demo();
    let mut files: BTreeMap<String, Arc<[u8]>> =
        demo.names().map(|n| (n.to_owned(), Arc::clone(demo.get(n).unwrap()))).collect();
    let text = String::from_utf8(files[file].to_vec()).unwrap();
    assert!(text.contains(old), "{file} does not hold `{old}`");
    files.insert(file.to_owned(), Arc::from(text.replacen(old, new, 1).into_bytes()));
    scripts(Bundle::new(files, false)).unwrap()
}

/// By what the combinations are shuffled: fixed where properties are, drawn afresh elsewhere.
fn seed() -> u64 {
    use std::hash::{BuildHasher as _, Hasher as _};
    let fixed = std::env::var("PROPTEST_RNG_SEED").ok().and_then(|seed| seed.parse().ok());
    fixed.unwrap_or_else(|| std::hash::RandomState::new().build_hasher().finish() % 1_000_000)
}

/// Every page of every unit in the languages of the lot and in the one that is longer than any. Of the 27
/// combinations of size, text size and theme each page gets some in turn, or all with `SENDOFF_EVERY=1`.
///
/// A stretched word that is torn where its place is too narrow is counted and said, no more: it stays readable, and
/// no language stretches every word.
#[test]
fn every_page_of_the_demo_lot_fits() {
    use std::io::Write as _;
    let lot = scripts(Bundle::demo()).unwrap();
    let sample = if std::env::var("SENDOFF_EVERY").is_ok_and(|every| every == "1") {
        Sample::Every
    } else {
        Sample::Dealt { seed: seed(), each: EACH }
    };
    let languages: BTreeSet<&str> =
        lot.lot.value.languages.iter().map(String::as_str).chain([PSEUDO_LANGUAGE]).collect();
    let (mut all, mut pages, mut layouts, mut stretched) = (Vec::new(), 0, 0, 0);
    for unit in lot.units.keys() {
        for language in &languages {
            let out = measured(&lot, unit, language, sample);
            (pages, layouts) = (pages + out.pages, layouts + out.layouts);
            let (may, not): (Vec<_>, Vec<_>) = out
                .found
                .into_iter()
                .partition(|(_, what)| *language == PSEUDO_LANGUAGE && what.ends_with("and is broken"));
            stretched += may.len();
            all.extend(not.into_iter().map(|(step, what)| format!("{unit} {language}, {step}: {what}")));
        }
    }
    let how = match sample {
        Sample::Dealt { seed, each } => format!(
            "{each} of 27 combinations a page, shuffled by {seed} (again: PROPTEST_RNG_SEED={seed}; all: \
             SENDOFF_EVERY=1)"
        ),
        _ => "all 27 combinations a page".to_owned(),
    };
    // Past the capture of the test harness: what was not looked at must be known.
    let _ = writeln!(
        std::io::stderr(),
        "fit: {layouts} layouts of {pages} pages in {languages:?}: {how}; {stretched} faults of stretched words"
    );
    assert!(pages > 600 && layouts >= pages * EACH, "{pages} pages, {layouts} layouts");
    assert!(all.is_empty(), "{} faults:\n{}", all.len(), all.join("\n"));
}

#[test]
fn a_word_that_is_wider_than_its_page_is_found_wherever_it_stands() {
    let long = "w".repeat(300);
    let file = "i18n/en-US/topic-keys.ftl";
    for (old, place) in [
        ("step-keys = The key ring", "step-keys = "),
        ("show-keys-count = Count", "show-keys-count = Count "),
    ] {
        let lot = lot_with(file, old, &format!("{place}{long}"));
        let found = overflows(&lot, "wren");
        let mut told = found.iter().filter(|(step, what)| step == "keys" && what.contains("wwwwww"));
        assert!(told.next().is_some(), "{old}: {found:#?}");
    }
}

#[test]
fn a_walk_that_cannot_go_on_is_told_with_its_step() {
    let lot = scripts(Bundle::demo()).unwrap();
    let found = overflows(&lot, "nowhere");
    assert!(found.len() == 1 && found[0].1.contains("nowhere"), "{found:?}");
}
