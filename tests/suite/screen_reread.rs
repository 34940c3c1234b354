//! Reread: the renter alone with the tablet. Everything is reached by hand, nothing is kept, and only staff leave.

mod alone;

use std::collections::BTreeSet;

use sendoff::kiosk::screen::reread::{At, Message as Told, Page, Place};
use sendoff::kiosk::screen::{self, Screen, reread};
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::kiosk::{self, staff_reader};
use sendoff::route::build;
use sendoff::script::{End, Signal, Speaker};

use crate::kiosk_support::{Kiosk, PSEUDO, SIZES, Seen, Setup, lot};

const UNITS: [&str; 3] = ["wren", "plover", "heron"];

fn tell(kiosk: &mut Kiosk, message: Told) {
    kiosk.message(kiosk::Message::Screen(screen::Message::Reread(message)));
}

fn state(kiosk: &Kiosk) -> &reread::State {
    match kiosk.screen() {
        Screen::Reread(state) => state,
        other => panic!("another screen: {other:?}"),
    }
}

/// The cover of a unit.
fn cover(setup: Setup, unit: &str) -> Kiosk {
    let mut kiosk = setup.boot();
    let chosen = screen::yard::Message::RereadChosen(unit.into());
    kiosk.message(kiosk::Message::Screen(screen::Message::Yard(chosen)));
    assert_eq!((state(&kiosk).unit(), state(&kiosk).page()), (unit, &Page::Cover));
    kiosk
}

/// Plan and list of a unit.
fn home(setup: Setup, unit: &str) -> Kiosk {
    let mut kiosk = cover(setup, unit);
    tell(&mut kiosk, Told::PageChosen(Page::Home));
    kiosk
}

fn speaker(unit: &str) -> Speaker<'static> {
    static LOT: std::sync::OnceLock<std::sync::Arc<sendoff::script::Scripts>> = std::sync::OnceLock::new();
    let lot = LOT.get_or_init(lot);
    Speaker::new(lot, unit, staff_reader(lot)).expect("a unit")
}

/// Whether these words are in sight, all of them, without scrolling.
fn whole(seen: &Seen, words: &str) -> bool {
    let placed = seen.texts.iter().find(|t| t.text == words).expect("on the page");
    placed.visible.is_some_and(|v| (v.height - placed.bounds.height).abs() < 0.5)
}

/// Everything on the disk.
fn disk(kiosk: &Kiosk) -> Vec<(std::path::PathBuf, Vec<u8>)> {
    kiosk.setup.disk.files()
}

/// At night, frightened: two taps from the cover at most, and the page says what to do.
#[test]
fn whoever_smells_gas_is_at_the_right_page_in_two_taps() {
    for size in SIZES {
        let setup = || Setup::new().theme(Theme::Dusk).size(size).text(TextSize::Largest);
        let speaker = speaker("wren");
        let title = speaker.say("guide-trouble-lp-smell");
        let out = speaker.say("caution-trouble-lp-smell-h1.avoid");
        // One tap: it stands on the cover, in sight without scrolling.
        let mut kiosk = cover(setup(), "wren");
        let seen = kiosk.look();
        assert!(whole(&seen, &title), "{size:?}");
        kiosk.touch(&title);
        assert_eq!(state(&kiosk).place().map(|p| p.guide.as_str()), Some("trouble-lp-smell"));
        kiosk.expect(&out);
        // Two taps: who taps to read first finds the emergency card, which says the same.
        let mut kiosk = cover(setup(), "wren");
        kiosk.touch(&kiosk.say("reread-cover-tap"));
        kiosk.touch(&kiosk.say("emergency"));
        let seen = kiosk.look();
        assert!(seen.contains("Touch no switch") && seen.contains("300\u{a0}ft"), "{:#?}", seen.words());
        // Carbon monoxide and fire are as near.
        let mut kiosk = cover(setup(), "plover");
        kiosk.touch(&speaker.say("guide-trouble-co-alarm"));
        assert_eq!(state(&kiosk).place().map(|p| p.guide.as_str()), Some("trouble-co-alarm"));
        let mut kiosk = cover(setup(), "plover");
        kiosk.touch(&kiosk.say("reread-cover-fire"));
        kiosk.expect(&kiosk.say("emergency-fire-do"));
    }
}

#[test]
fn the_emergency_card_is_one_tap_away_on_every_page_and_speaks_of_the_unit() {
    for unit in UNITS {
        let speaker = speaker(unit);
        for page in every_page(unit) {
            let mut kiosk = home(Setup::new(), unit);
            tell(&mut kiosk, Told::PageChosen(page.clone()));
            kiosk.click(&kiosk.say("emergency"));
            let phones = &lot().lot.value.phone.value;
            for words in [&phones.emergency, &phones.road] {
                assert!(
                    kiosk.look().texts.iter().any(|t| &t.text == words && t.visible.is_some()),
                    "{page:?}"
                );
            }
            for key in ["emergency-fire-do", "emergency-co-do", "emergency-where"] {
                kiosk.expect(&kiosk.say(key));
            }
            let exits = speaker.try_say("emergency-exits").expect("exits");
            kiosk.expect(&exits);
            let valve = speaker.try_say("emergency-shut-off");
            assert_eq!(valve.is_ok(), unit != "plover", "Plover burns no propane");
            if let Ok(valve) = valve {
                kiosk.expect(&valve);
            }
            kiosk.click(&kiosk.say("emergency-close"));
            assert_eq!(state(&kiosk).page(), &page);
        }
    }
}

/// A page of each kind, as a unit has it.
fn every_page(unit: &str) -> Vec<Page> {
    let lot = lot();
    let first = |id: &str| Place::first(&lot, unit, id).expect("a guide");
    let hazard = first("trouble-co-alarm");
    let row = hazard.read(&lot, unit).expect("a row");
    let end = Place { at: At::End(End::Leave), ..row.clone() };
    let mut pages = vec![
        Page::Home,
        Page::Topic("keys-door".into()),
        Page::Cautions,
        Page::Guides,
        Page::Numbers,
        Page::Guide(hazard),
        Page::Guide(row),
        Page::Guide(end),
    ];
    pages.push(Page::Topic("leaving-check".into()));
    pages
}

/// Each topic of each unit, opened from its row or its peg, says all of its words and all of its cautions.
#[test]
fn every_topic_is_reached_and_says_everything() {
    let lot = lot();
    for unit in UNITS {
        let route = build(&lot, unit).expect("a unit");
        let speaker = speaker(unit);
        let mut kiosk = home(Setup::new(), unit);
        let mut reached = BTreeSet::new();
        for stop in &route.stops {
            tell(&mut kiosk, Told::ZoneChosen(stop.zone));
            tell(&mut kiosk, Told::PegPressed(stop.number));
            for step in &route.steps[stop.steps.clone()] {
                let text = speaker.step(step);
                kiosk.click(&text.title);
                assert_eq!(state(&kiosk).page(), &Page::Topic(step.id.clone()), "{unit}");
                let seen = kiosk.look();
                let words: BTreeSet<&str> = seen.words().into_iter().collect();
                for line in text.know.iter().chain(&text.show).chain(&text.notes) {
                    assert!(words.contains(line.as_str()), "{unit} {}: {line}", step.id);
                }
                for caution in &step.cautions {
                    let said = speaker.caution(caution);
                    for line in [&said.signal, &said.hazard, &said.harm, &said.avoid] {
                        assert!(words.contains(line.as_str()), "{unit} {}: {line}", caution.id);
                    }
                }
                let _ = reached.insert(step.id.clone());
                kiosk.click(&kiosk.say("reread-back"));
                assert_eq!(state(&kiosk).page(), &Page::Home);
            }
        }
        assert_eq!(reached.len(), route.steps.len(), "{unit}");
    }
}

#[test]
fn a_tap_on_a_peg_lists_its_stop() {
    let mut kiosk = home(Setup::new(), "wren");
    let speaker = speaker("wren");
    let bays = speaker.say("step-storage-bays");
    let door = speaker.say("step-keys-door");
    kiosk.expect(&door);
    // The pegs are the round targets inside the plan; each lists one stop, and all can be listed again.
    let pegs: Vec<_> = kiosk
        .look()
        .pressable
        .iter()
        .filter(|p| p.bounds.x + p.bounds.width < 354.0 && (p.bounds.width - p.bounds.height).abs() < 1.0)
        .map(|p| p.bounds.center())
        .collect();
    assert!(pegs.len() >= 5, "{pegs:?}");
    let mut seen = false;
    for at in pegs {
        kiosk.click_at(at);
        let shown = kiosk.look();
        let listed = [&bays, &door].map(|t| shown.texts.iter().any(|p| &p.text == t));
        assert_ne!(listed, [true, true], "one stop alone");
        seen |= listed == [true, false];
        kiosk.click(&kiosk.say("reread-all-here"));
    }
    assert!(seen, "the stop with the storage bays");
}

#[test]
fn the_search_is_typed_by_hand_and_leads_on() {
    let mut kiosk = home(Setup::new(), "wren");
    let speaker = speaker("wren");
    kiosk.fill("reread-search", "tiolet");
    let (use_it, trouble) = (speaker.say("step-toilet-use"), speaker.say("guide-trouble-toilet-tank"));
    kiosk.expect(&trouble);
    kiosk.click(&use_it);
    assert_eq!(state(&kiosk).page(), &Page::Topic("toilet-use".into()));
    kiosk.click(&kiosk.say("reread-back"));
    assert_eq!(kiosk.field("reread-search"), "tiolet", "back returns exactly");
    kiosk.fill("reread-search", "fire");
    let card = kiosk.say("find-emergency.title");
    kiosk.click(&card);
    kiosk.expect(&kiosk.say("emergency-title"));
    kiosk.click(&kiosk.say("emergency-close"));
    kiosk.click(&kiosk.say("reread-clear"));
    kiosk.expect(&kiosk.say("reread-wrong"));
    kiosk.fill("reread-search", "xqzjw");
    let seen = kiosk.look();
    assert!(seen.contains("555-0187"), "whoever finds nothing can call: {:?}", seen.words());
}

#[test]
fn our_own_keys_come_up_for_the_search_and_leave_room_for_what_is_found() {
    for size in SIZES {
        let mut kiosk = home(Setup::new().keys().size(size).text(TextSize::Largest), "wren");
        kiosk.click_id("reread-search");
        // While nothing is typed yet, the ways out of trouble stay in sight above the keys.
        let seen = kiosk.look();
        assert!(whole(&seen, &kiosk.say("reread-wrong")), "{size:?}");
        assert!(seen.faults().is_empty(), "{size:?}: {:#?}", seen.faults());
        for letter in ["g", "a", "s"] {
            kiosk.click(letter);
        }
        assert_eq!(kiosk.field("reread-search"), "gas");
        let title = speaker("wren").say("guide-trouble-lp-smell");
        let seen = kiosk.look();
        assert!(whole(&seen, &title), "{size:?}");
        assert!(seen.faults().is_empty(), "{size:?}: {:#?}", seen.faults());
    }
}

/// Every guide of every unit is walked by taps to every end; each answer back again is the very page before.
#[test]
fn every_guide_is_walked_to_every_end() {
    let lot = lot();
    let mut ends = BTreeSet::new();
    for unit in UNITS {
        let facts = lot.facts(unit).expect("a unit");
        let mut kiosk = home(Setup::new(), unit);
        let before = disk(&kiosk);
        for guide in lot.guides.values().map(|g| &g.value).filter(|g| g.fits(&facts)) {
            let id = &guide.id.value;
            tell(&mut kiosk, Told::PageChosen(Page::Guides));
            kiosk.click(&speaker(unit).say(&format!("guide-{id}")));
            let hazards: Vec<_> = guide.hazards(&facts).collect();
            assert!(!hazards.is_empty(), "{id} warns of nothing");
            for (at, hazard) in hazards.iter().enumerate() {
                assert_eq!(state(&kiosk).place().expect("a guide").at, At::Hazard(at), "{unit} {id}");
                let said = speaker(unit).say(&format!("caution-{}", hazard.id.value));
                kiosk.expect(&said);
                assert!(hazard.signal >= Signal::Notice);
                kiosk.click_id("reread-go-on");
            }
            let mut seen = BTreeSet::new();
            walk_on(&mut kiosk, id, &mut seen, &mut ends);
            assert_eq!(seen.len(), guide.reached(&facts).len(), "{unit} {id}: {seen:?}");
            tell(&mut kiosk, Told::HomePressed);
        }
        assert_eq!(before, disk(&kiosk), "nothing is kept");
    }
    assert_eq!(ends.len(), 4, "{ends:?}");
}

/// Walks both answers of the question that is open, and comes back to it.
fn walk_on(kiosk: &mut Kiosk, guide: &str, seen: &mut BTreeSet<String>, ends: &mut BTreeSet<&'static str>) {
    let here = state(kiosk).page().clone();
    let place = state(kiosk).place().expect("a guide").clone();
    match &place.at {
        At::Row(row) => {
            if !seen.insert(row.clone()) {
                return;
            }
            for id in ["reread-yes", "reread-no"] {
                kiosk.click_id(id);
                assert_ne!(state(kiosk).page(), &here, "{guide} {row}: the answer leads on");
                if state(kiosk).place().expect("a guide").guide == guide {
                    walk_on(kiosk, guide, seen, ends);
                } else {
                    assert!(state(kiosk).place().expect("a guide").is_hazard(), "another guide warns first");
                }
                kiosk.click_id("reread-back");
                assert_eq!(state(kiosk).page(), &here, "back returns exactly");
            }
        }
        At::End(end) => {
            let _ = ends.insert(end.word());
            kiosk.expect(&kiosk.say(&format!("guide-end-{}", end.word())));
            if *end != End::Fixed {
                let phones = &lot().lot.value.phone.value;
                kiosk.expect(&phones.road);
            }
        }
        At::Hazard(_) => panic!("a hazard behind a question"),
    }
}

/// What an answer asks for beside the next question stands on the next page, and only there.
#[test]
fn what_is_to_be_said_of_an_answer_stands_on_the_next_page() {
    let mut kiosk = home(Setup::new(), "wren");
    tell(&mut kiosk, Told::GuideChosen("trouble-lp-smell".into()));
    kiosk.click_id("reread-go-on");
    for id in ["reread-no", "reread-no", "reread-no"] {
        kiosk.click_id(id);
    }
    let advice = speaker("wren").say("row-trouble-lp-smell-away.no");
    kiosk.expect(&advice);
    kiosk.click_id("reread-yes");
    assert!(!kiosk.shows(&advice));
}

#[test]
fn numbers_are_those_of_the_unit_and_of_no_trip() {
    let mut kiosk = home(Setup::new(), "heron");
    tell(&mut kiosk, Told::PageChosen(Page::Numbers));
    let seen = kiosk.look();
    // Data sheet of Heron: height 132 in, fresh 44 gal, tires 65 psi.
    for words in ["11\u{a0}ft 0\u{a0}in", "44\u{a0}gal", "65\u{a0}psi"] {
        let plain = |s: &str| s.replace(['\u{a0}', '\u{202f}'], " ");
        assert!(
            seen.texts.iter().any(|t| plain(&t.text).contains(&plain(words))),
            "{words}: {:#?}",
            seen.words()
        );
    }
    // No engine, no generator, no solar: nothing is said of them.
    for key in ["reread-number-fuel.label", "reread-number-generator.label", "reread-number-inverter.label"] {
        assert!(!seen.texts.iter().any(|t| t.text == kiosk.say(key)), "{key}");
    }
    // In other measures, the same.
    tell(&mut kiosk, Told::MeasuresChosen(sendoff::measure::System::Metric));
    assert!(kiosk.look().contains("3.36"), "132 in are 3.353 m, rounded up: {:#?}", kiosk.look().words());
}

#[test]
fn a_lot_that_changes_meanwhile_is_taken_in() {
    let mut kiosk = home(Setup::new(), "wren");
    tell(&mut kiosk, Told::GuideChosen("no-such-guide".into()));
    assert_eq!(state(&kiosk).page(), &Page::Home);
    tell(&mut kiosk, Told::PageChosen(Page::Topic("no-such-step".into())));
    kiosk.renders();
    tell(&mut kiosk, Told::Answered(true));
    tell(&mut kiosk, Told::HazardRead);
    assert_eq!(state(&kiosk).page(), &Page::Topic("no-such-step".into()));
}

/// Every page of each kind at three sizes, in three themes, three text sizes and two languages.
#[test]
fn every_page_fits() {
    let mut faults = Vec::new();
    for (at, size) in SIZES.into_iter().enumerate() {
        for text in [TextSize::Usual, TextSize::Large, TextSize::Largest] {
            let themes = [Theme::Paper, Theme::Daylight, Theme::Dusk];
            for (theme, staff) in themes.into_iter().flat_map(|t| [(t, "en-US"), (t, PSEUDO)]) {
                let unit = UNITS[at];
                let mut kiosk = cover(Setup::new().size(size).text(text).theme(theme).staff(staff), unit);
                let mut survey = |kiosk: &mut Kiosk, page: &str| {
                    let found = kiosk.look().faults();
                    let told = found.into_iter();
                    faults.extend(told.map(|f| format!("{unit} {size:?} {text:?} {staff} {page}: {f}")));
                };
                survey(&mut kiosk, "cover");
                for page in every_page(unit) {
                    tell(&mut kiosk, Told::PageChosen(page.clone()));
                    survey(&mut kiosk, &format!("{page:?}"));
                }
                tell(&mut kiosk, Told::HomePressed);
                for query in ["gas", "xqzjw"] {
                    tell(&mut kiosk, Told::QueryChanged(query.into()));
                    survey(&mut kiosk, query);
                }
                tell(&mut kiosk, Told::EmergencyPressed);
                survey(&mut kiosk, "emergency");
                kiosk.renders();
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}
