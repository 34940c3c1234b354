//! Figures of a trip in the words of steps, and why cautions do without.

use std::sync::Arc;

use sendoff::figures::{HookUp, Person, Trip};
use sendoff::measure::System;
use sendoff::script::{Bundle, Scripts, Speaker};
use sendoff::words::Reader;

use super::{Files, KITE_WORDS, lot, text_of};

/// The lot with the kite's words changed.
fn scripts(changes: &[(&str, &str)]) -> Scripts {
    let mut files: Files = lot();
    let mut text = text_of(&files, KITE_WORDS);
    for (swap, by) in changes {
        assert!(text.contains(swap), "{swap}");
        text = text.replacen(swap, by, 1);
    }
    let _ = files.insert(KITE_WORDS.into(), Arc::from(text.into_bytes()));
    Scripts::load(Arc::new(Bundle::new(files, false))).0.expect("a lot")
}

fn trip() -> Trip {
    let people = vec![Person { age: 40, weight: None }; 2];
    Trip { nights: 3, people, hook_up: vec![HookUp::None; 3], ..Trip::default() }
}

fn speaker(scripts: &Scripts) -> Speaker<'_> {
    Speaker::new(scripts, "wren", Reader::new("en-US", System::Us)).expect("Wren is on the lot")
}

#[test]
fn a_line_says_the_figures_of_the_trip() {
    let scripts = scripts(&[("at { $awning_wind_limit }", "and fresh water lasts { $fresh_days }")]);
    let said = |trip: Option<Trip>| speaker(&scripts).with_trip(trip).say("know-kite-wind");
    assert!(speaker(&scripts).try_say("know-kite-wind").is_err(), "no figure of a trip without a trip");
    assert!(speaker(&scripts).with_trip(Some(trip())).try_say("know-kite-wind").is_ok());
    let usual = said(Some(trip()));
    assert!(usual.contains("fresh water lasts ") && !usual.contains('⟨'), "{usual}");
    let party = vec![Person { age: 40, weight: None }; 4];
    assert_ne!(usual, said(Some(Trip { people: party, ..trip() })), "more people, fewer days");
}

/// A plan may leave a gap that nobody can see when the lot is checked: the line says so instead of a hole.
#[test]
fn a_figure_that_this_trip_does_not_give_says_why() {
    let scripts = scripts(&[("at { $awning_wind_limit }", "and fresh water lasts { $fresh_days }")]);
    let mut odd = trip();
    odd.people.clear();
    let said = speaker(&scripts).with_trip(Some(odd)).say("know-kite-wind");
    assert!(said.contains("cannot be computed: people is missing"), "{said}");
}

/// The following gap has a value without a trip, and another one for a faster trip.
#[test]
fn a_caution_reads_the_same_whatever_is_planned() {
    let gap = "Keep { $following_gap } apart.";
    let scripts = scripts(&[("Show the string.", gap), ("A kite can touch a wire.", gap)]);
    let route = sendoff::route::build(&scripts, "wren").expect("Wren is on the lot");
    let (_, caution) = route.caution("kite-1").expect("the kite has a caution");
    let slow = speaker(&scripts);
    let fast = slow.clone().with_trip(Some(Trip { speed: "30 mph".parse().ok(), ..trip() }));
    assert_ne!(slow.say("show-kite-string"), fast.say("show-kite-string"));
    assert_eq!(slow.caution(caution), fast.caution(caution));
    assert_eq!(fast.caution(caution).hazard, slow.say("show-kite-string"));
    assert_eq!(fast.say_steady("show-kite-string"), slow.say("show-kite-string"));
}
