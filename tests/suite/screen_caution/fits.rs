//! Every page of the renter, and all that may lie over one, fits every size.

use sendoff::kiosk::theme::{TextSize, Theme};

use super::{DANGER, PSEUDO, SIZES, Setup, all_shown, pages::Pages, say, stop_of_drivers, stop_with, words};

/// Languages, text sizes and themes in which pages are looked at.
const LOOKS: [(&str, TextSize, Theme); 4] = [
    ("en-US", TextSize::Usual, Theme::Paper),
    ("en-US", TextSize::Largest, Theme::Daylight),
    (PSEUDO, TextSize::Usual, Theme::Dusk),
    (PSEUDO, TextSize::Largest, Theme::Paper),
];

/// Fails when something of the page is cut off, lies over something else or is too small.
fn fits(pages: &mut Pages, what: &str) {
    let seen = pages.kiosk.look();
    assert!(!seen.contains("⟨"), "{what}: words are missing: {:#?}", seen.words());
    let (faults, size) = (seen.faults(), pages.kiosk.setup.size);
    if let Ok(folder) = std::env::var("SENDOFF_CAUTION_PICTURES") {
        let (look, width) = (pages.kiosk.setup.theme, size.0);
        pages.kiosk.save(&format!("{folder}/{}-{look:?}-{width}.png", what.replace(' ', "-")));
    }
    assert!(faults.is_empty(), "{what} at {size:?}: {faults:#?}");
    pages.kiosk.renders();
    // A frame is drawn at the time of the machine; what waits goes by the time of the pages.
    pages.settle();
}

#[test]
fn every_page_fits_every_size() {
    for size in SIZES {
        for (language, text, theme) in LOOKS {
            let setup = Setup::new().size(size).staff(language).text(text).theme(theme);
            let mut pages = Pages::at(setup, &all_shown(language), stop_with(DANGER));
            fits(&mut pages, &format!("take in {language}, {text:?}"));
            pages.take("Ann Marlow");
            while !pages.is_over() {
                let what = format!("page {} in {language}, {text:?}", pages.opened());
                fits(&mut pages, &what);
                pages.answer();
            }
            fits(&mut pages, &format!("end in {language}, {text:?}"));
        }
    }
}

#[test]
fn the_card_between_two_drivers_fits_every_size() {
    let mut pages = Pages::at(Setup::new(), &all_shown("en-US"), stop_of_drivers());
    pages.take("Ann Marlow");
    while pages.person().is_some() {
        pages.answer();
    }
    for size in SIZES {
        pages.kiosk.resize(size);
        fits(&mut pages, "pass in en-US");
    }
}

#[test]
fn a_question_and_all_of_a_refusal_fit_every_size() {
    for size in SIZES {
        for (language, text, theme) in LOOKS {
            let setup = Setup::new().size(size).staff(language).text(text).theme(theme);
            let mut pages = Pages::at(setup, &all_shown(language), stop_with(DANGER));
            pages.take("Ann Marlow");
            pages.go_to(&words(DANGER, language).hazard);
            let named = |part: &str| format!("{part} in {language}, {text:?}");
            let words = |key: &str| say(language, &format!("caution-page-{key}"));
            pages.kiosk.click_id("caution-question");
            fits(&mut pages, &named("question"));
            pages.click(&words("question-back"));
            pages.kiosk.click_id("caution-refuse");
            fits(&mut pages, &named("refusal"));
            pages.click(&words("refuse-unclear"));
            fits(&mut pages, &named("refusal with a reason"));
            pages.kiosk.click_id("caution-give");
            fits(&mut pages, &named("refusal for the agent"));
            pages.click(&words("keep"));
            fits(&mut pages, &named("refusal decided"));
            pages.hold_on("caution-decide", 900);
            fits(&mut pages, &named("refusal saved"));
            pages.kiosk.click_id("caution-saved");
            assert!(!pages.kiosk.shows(&words("saved")));
        }
    }
}
