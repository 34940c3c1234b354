//! Whether every page fits, measured by layout.

use std::collections::BTreeMap;
use std::sync::Arc;

use sendoff::kiosk::headless::overflows;
use sendoff::kiosk::scripts;
use sendoff::script::{Bundle, Scripts};

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

#[test]
fn every_page_of_the_demo_lot_fits() {
    let lot = scripts(Bundle::demo()).unwrap();
    let mut all = Vec::new();
    for unit in lot.units.keys() {
        let began = std::time::Instant::now();
        all.extend(overflows(&lot, unit).into_iter().map(|(step, what)| format!("{unit}, {step}: {what}")));
        eprintln!("{unit}: {:?}", began.elapsed());
    }
    assert!(all.is_empty(), "{} pages do not fit:\n{}", all.len(), all.join("\n"));
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
