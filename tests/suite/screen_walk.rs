//! The Walk, through the kiosk's own door: what is pressed and typed there is what the walk keeps.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "tests may fail loudly")]

use sendoff::kiosk;
use sendoff::kiosk::screen::walk::{Draft, Message, SheetKind};
use sendoff::kiosk::screen::{self, Screen};
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::route::Zone;
use sendoff::walk::{
    Event, MarkKind, MarkSize, NotRead, NotShown, Phase, ReadingState, StepState, Walk, Who,
};

use super::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup, opened};

/// A walk for the Wren that has just begun.
fn begun(setup: Setup) -> Kiosk {
    setup.resume("wren", &opened("en-US", "us"))
}

fn shown(step: &str) -> Event {
    Event::StepShown { step: step.into(), language: "en-US".into() }
}

/// The walk with these steps shown.
fn with_shown(setup: Setup, steps: &[&str]) -> Kiosk {
    let events: Vec<Event> =
        opened("en-US", "us").into_iter().chain(steps.iter().map(|s| shown(s))).collect();
    setup.resume("wren", &events)
}

fn send(kiosk: &mut Kiosk, message: Message) {
    kiosk.message(kiosk::Message::Screen(screen::Message::Walk(message)));
}

/// Goes to a step as a tap in the list of all steps does.
fn go(kiosk: &mut Kiosk, step: &str) {
    let index = index_of(kiosk.walk(), step);
    send(kiosk, Message::StepChosen(index));
}

fn index_of(walk: &Walk, step: &str) -> usize {
    walk.route().steps.iter().position(|s| s.id == step).unwrap_or_else(|| panic!("no step {step}"))
}

fn is_shown(kiosk: &Kiosk, step: &str) -> bool {
    matches!(kiosk.walk().step_state(step), StepState::Shown { .. })
}

#[test]
fn a_walk_that_is_taken_up_again_opens_at_its_first_open_step() {
    let mut kiosk = begun(Setup::new());
    kiosk.expect("The key ring");
    let mut kiosk = with_shown(Setup::new(), &["keys", "keys-door"]);
    kiosk.expect("Pets and smoking");
    kiosk.no_notice();
}

#[test]
fn the_primary_button_shows_the_step_and_goes_on_by_mouse_and_by_finger() {
    let mut kiosk = begun(Setup::new());
    kiosk.click("Shown. Next: Pets and smoking");
    assert!(is_shown(&kiosk, "keys"));
    kiosk.touch("Shown. Next: Giving it back");
    assert!(is_shown(&kiosk, "pets-smoking"));
    kiosk.expect("Giving it back");
    kiosk.no_notice();
}

#[test]
fn a_step_is_said_to_be_shown_in_the_language_of_the_renter() {
    let mut kiosk = Setup::new().resume("wren", &opened(PSEUDO, "metric"));
    kiosk.click("Shown. Next: Pets and smoking");
    assert_eq!(
        *kiosk.walk().step_state("keys"),
        StepState::Shown { language: PSEUDO.into(), measures: "metric".into() }
    );
}

#[test]
fn going_back_says_nothing_and_a_step_is_not_shown_twice() {
    let mut kiosk = with_shown(Setup::new(), &["keys"]);
    let events = kiosk.walk().events();
    kiosk.click("Back");
    kiosk.expect("The key ring");
    kiosk.click("Next: Pets and smoking");
    assert_eq!(kiosk.walk().events(), events);
}

#[test]
fn the_last_step_of_a_stop_hands_the_tablet_over() {
    let walk = begun(Setup::new());
    let route = walk.walk().route();
    let first = route.stops.iter().find(|s| s.zone == Zone::Outside).unwrap();
    let steps: Vec<String> = route.steps[..first.steps.end].iter().map(|s| s.id.clone()).collect();
    let cautions: usize = route.steps[first.steps.clone()].iter().map(|s| s.cautions.len()).sum();
    let (last, before) = steps.split_last().unwrap();
    let before: Vec<&str> = before.iter().map(String::as_str).collect();
    let mut kiosk = with_shown(Setup::new(), &before);
    // Items and readings of the stop are still missing, and the button says so.
    let onward = format!("Give the tablet to the renter: {cautions} cautions. ");
    let seen: Vec<String> = kiosk.look().words().into_iter().map(str::to_owned).collect();
    let onward = seen.iter().find(|w| w.starts_with(&onward)).unwrap();
    kiosk.click(onward);
    assert!(is_shown(&kiosk, last));
    assert!(matches!(kiosk.screen(), Screen::Caution(_)));
    kiosk.no_notice();
}

#[test]
fn a_stop_whose_steps_were_not_all_shown_leads_to_the_open_one_first() {
    let mut kiosk = with_shown(Setup::new(), &["keys"]);
    go(&mut kiosk, "awning");
    kiosk.click("Shown. Next: Entry door and steps");
    kiosk.expect("Entry door and steps");
}

#[test]
fn behind_the_last_open_step_lies_the_closing() {
    let kiosk = begun(Setup::new());
    let ids: Vec<String> = kiosk.walk().route().steps.iter().map(|s| s.id.clone()).collect();
    let out = ids.iter().map(|id| Event::StepNotShown {
        step: id.clone(),
        reason: NotShown::Known,
        note: String::new(),
    });
    let all_out: Vec<Event> = opened("en-US", "us").into_iter().chain(out).collect();
    let mut kiosk = Setup::new().resume("wren", &all_out);
    go(&mut kiosk, "leaving-check");
    // It does not look ready while the check itself is not done.
    let seen = kiosk.look();
    let onward = seen.words().into_iter().find(|w| w.starts_with("To the closing. ")).unwrap().to_owned();
    kiosk.click(&onward);
    assert!(matches!(kiosk.screen(), Screen::Closing(_)));
}

#[test]
fn a_peg_leads_to_its_stop() {
    let mut kiosk = begun(Setup::new());
    send(&mut kiosk, Message::PegPressed(2));
    kiosk.expect("Outside · 2 of 7");
    kiosk.click("Inside");
    send(&mut kiosk, Message::PegPressed(1));
    kiosk.expect("Fire extinguisher");
    kiosk.expect("Inside · 1 of 7");
}

#[test]
fn a_tap_where_a_peg_is_drawn_leads_to_its_stop() {
    let mut kiosk = begun(Setup::new());
    let seen = kiosk.look();
    // Pegs are the only targets that are 56 px both ways.
    let is_peg = |size: iced::Size| (size.width - 56.0).abs() < 0.01 && (size.height - 56.0).abs() < 0.01;
    let pegs: Vec<_> = seen.pressable.iter().filter(|p| is_peg(p.bounds.size())).collect();
    assert_eq!(pegs.len(), 7);
    let lowest = pegs.iter().max_by(|a, b| a.bounds.y.total_cmp(&b.bounds.y)).unwrap();
    let at = lowest.bounds.center();
    kiosk.finger_down(at);
    kiosk.finger_up(at);
    // The stop behind the unit: its sewer hose (handbook 0.2, the loop).
    kiosk.expect("Outside · 4 of 7");
}

#[test]
fn a_step_is_left_out_with_a_reason() {
    let desk = ["keys", "pets-smoking", "return-rules", "return-rules-fees"];
    let door = ["entry-door-steps", "keys-door", "loaned-kit", "house-battery-box"];
    let mut kiosk = with_shown(Setup::new(), &[desk, door].concat());
    kiosk.expect("Awning");
    kiosk.click("Not shown...");
    assert!(!kiosk.shows("Leave it out"), "nothing can be kept before a reason is given");
    kiosk.touch("The weather: wind, rain, ice, darkness");
    kiosk.click("Leave it out");
    let reason = NotShown::Weather;
    assert_eq!(*kiosk.walk().step_state("awning"), StepState::NotShown { reason, note: String::new() });
    // The stop is settled: its cautions come next. Those of the awning are left out with it.
    assert!(matches!(kiosk.screen(), Screen::Caution(_)));
    kiosk.no_notice();
}

#[test]
fn no_time_needs_words() {
    let mut kiosk = begun(Setup::new());
    kiosk.click("Not shown...");
    kiosk.click("There is no time");
    kiosk.expect("Please say why there is no time.");
    assert!(!kiosk.shows("Leave it out"));
    kiosk.fill("walk-note", "late bus");
    kiosk.click("Leave it out");
    let (reason, note) = (NotShown::NoTime, "late bus".to_owned());
    assert_eq!(*kiosk.walk().step_state("keys"), StepState::NotShown { reason, note });
    go(&mut kiosk, "keys");
    kiosk.expect("This step was left out");
    kiosk.click("It was shown after all");
    assert!(is_shown(&kiosk, "keys"));
}

#[test]
fn a_question_is_noted_and_stands_on_the_page() {
    let mut kiosk = begun(Setup::new());
    kiosk.click("Question");
    kiosk.click("Can I copy the key?");
    kiosk.expect("No. Call the lot at 555-0142.");
    kiosk.click("Not answered");
    kiosk.click("Note the question");
    let asked = &kiosk.walk().questions()[0].value;
    assert_eq!(
        (asked.step.as_str(), asked.text.as_str(), asked.answered),
        ("keys", "Can I copy the key?", false)
    );
    kiosk.expect("Asked, not answered: Can I copy the key?");
    kiosk.no_notice();
}

#[test]
fn a_gauge_is_read_with_taps() {
    let mut kiosk = begun(Setup::new());
    go(&mut kiosk, "lp-supply");
    kiosk.expect("not read yet");
    kiosk.touch("Propane gauge");
    kiosk.touch("3/4");
    kiosk.click("Keep the reading");
    let taken = ReadingState::Taken { value: "3/4".into(), measure: String::new() };
    assert_eq!(kiosk.walk().reading("propane-tank").unwrap().value, taken);
    kiosk.expect("3/4");
    assert!(!kiosk.shows("Read it together"), "the sheet is put away");
    kiosk.no_notice();
}

#[test]
fn a_number_is_typed_and_one_out_of_range_cannot_be_kept() {
    let mut kiosk = begun(Setup::new());
    go(&mut kiosk, "tires-pressure");
    kiosk.click("Tires, front");
    kiosk.fill("walk-reading-1", "7");
    // Sane range of a tire: handbook E.4.
    kiosk.expect("From 20\u{a0}psi to 100\u{a0}psi, in steps of 1\u{a0}psi.");
    assert!(!kiosk.shows("Keep the reading"));
    kiosk.fill("walk-reading-1", "75");
    kiosk.fill("walk-reading-2", "80");
    kiosk.click("Keep 2 readings");
    let taken = |value: &str| ReadingState::Taken { value: value.into(), measure: "psi".into() };
    assert_eq!(kiosk.walk().reading("tire-front").unwrap().value, taken("75"));
    assert_eq!(kiosk.walk().reading("tire-rear-outer").unwrap().value, taken("80"));
    kiosk.expect("75\u{a0}psi");
    kiosk.no_notice();
}

#[test]
fn what_could_not_be_read_gets_a_reason() {
    let mut kiosk = begun(Setup::new());
    go(&mut kiosk, "lp-supply");
    kiosk.click("Propane gauge");
    kiosk.click("It could not be read...");
    assert!(!kiosk.shows("Keep the reading"));
    kiosk.click("The gauge does not work");
    kiosk.click("Keep the reading");
    let state = ReadingState::NotTaken { reason: NotRead::Broken, note: String::new() };
    assert_eq!(kiosk.walk().reading("propane-tank").unwrap().value, state);
}

#[test]
fn all_items_go_as_listed_in_one_tap_after_one_was_corrected() {
    let mut kiosk = begun(Setup::new());
    go(&mut kiosk, "loaned-kit");
    kiosk.click("W12 · Camp chair");
    kiosk.click("Go back");
    assert!(kiosk.walk().item("W12").is_none());
    kiosk.click("W12 · Camp chair");
    send(&mut kiosk, Message::Draft(Draft::Count(3)));
    kiosk.fill("walk-note", "one is torn");
    kiosk.click("Keep this count");
    kiosk.expect("3 of 4");
    kiosk.touch("The other 21 as listed");
    kiosk.expect("22 of 22 counted");
    let walk = kiosk.walk();
    assert_eq!(walk.items_settled().done, 22);
    assert_eq!((walk.item("W12").unwrap().value.count, walk.item("W15").unwrap().value.count), (3, 3));
    assert_eq!(walk.item("W12").unwrap().value.note, "one is torn");
    kiosk.no_notice();
}

#[test]
fn the_leaving_check_is_ticked_line_by_line() {
    let mut kiosk = begun(Setup::new());
    go(&mut kiosk, "leaving-check");
    kiosk.click_id("leaving-cord-good");
    kiosk.click_id("leaving-awning-not-good");
    assert!(kiosk.walk().leaving("cord").unwrap().value);
    assert!(!kiosk.walk().leaving("awning").unwrap().value);
    kiosk.expect("not as it must be");
    kiosk.click_id("leaving-awning-good");
    assert!(kiosk.walk().leaving("awning").unwrap().value);
    let seen = kiosk.look();
    let name = |n: &str| seen.focusable.iter().any(|(id, _)| id == n);
    assert!(
        !name("leaving-cord-good") && name("leaving-cord-not-good"),
        "what holds cannot be pressed again"
    );
    kiosk.no_notice();
}

#[test]
fn a_mark_is_placed_by_a_tap_on_the_plan_and_taken_back() {
    let mut kiosk = begun(Setup::new());
    kiosk.click("Mark");
    kiosk.expect("No marks yet.");
    // The plan lies in the panel below the title: the middle of the window is on the unit.
    kiosk.click_at(iced::Point::new(440.0, 430.0));
    kiosk.click("Dent");
    assert!(!kiosk.shows("Place the mark"));
    kiosk.click("up to a hand");
    kiosk.click("Ann Marlow");
    kiosk.fill("walk-note", "old");
    kiosk.click("Place the mark");
    let mark = kiosk.walk().marks().next().unwrap().value.clone();
    assert_eq!((mark.number, mark.kind, mark.size), (1, MarkKind::Dent, MarkSize::Hand));
    assert_eq!((mark.note.as_str(), mark.by), ("old", Who::Person(sendoff::walk::PersonId(1))));
    // On the Wren: 99 in wide, 312 in long (handbook E.1).
    assert!((-495..=495).contains(&mark.at.x) && (0..=3120).contains(&mark.at.y), "{:?}", mark.at);
    kiosk.expect("Dent, up to a hand");
    kiosk.click("Take it back");
    assert_eq!(kiosk.walk().marks().count(), 0);
    kiosk.click("Back to the step");
    kiosk.expect("The key ring");
    kiosk.no_notice();
}

#[test]
fn the_unit_can_be_kept_with_a_reason() {
    let mut kiosk = begun(Setup::new());
    send(&mut kiosk, Message::SheetAsked(SheetKind::Overview));
    kiosk.click("Do not hand over this unit...");
    assert!(!kiosk.shows("Do not hand over"));
    kiosk.fill("walk-note", "brake lights out");
    kiosk.click("Do not hand over");
    assert_eq!(kiosk.walk().phase(), Phase::Stopped);
    assert_eq!(kiosk.walk().stopped().unwrap().value.reason, "brake lights out");
    assert!(matches!(kiosk.screen(), Screen::Closing(_)));
}

#[test]
fn leaving_for_the_yard_keeps_the_walk_open() {
    let mut kiosk = with_shown(Setup::new(), &["keys"]);
    send(&mut kiosk, Message::SheetAsked(SheetKind::Overview));
    kiosk.click("To the Yard");
    assert!(matches!(kiosk.screen(), Screen::Yard(_)));
    kiosk.click("Go on");
    kiosk.expect("Pets and smoking");
    assert!(is_shown(&kiosk, "keys"));
}

#[test]
fn what_is_missing_at_the_stop_is_said_in_words() {
    let mut kiosk = with_shown(Setup::new(), &["lp-supply"]);
    go(&mut kiosk, "lp-supply");
    kiosk.expect("Still missing at this stop");
    kiosk.expect("Propane gauge: not read yet");
}

#[test]
fn desk_and_road_have_no_place_on_the_plan() {
    let mut kiosk = begun(Setup::new());
    kiosk.expect("At the desk");
    go(&mut kiosk, "leaving-check");
    kiosk.expect("Before leaving");
}

#[test]
fn keys_on_the_screen_leave_the_sheet_its_field() {
    for size in SIZES {
        let mut kiosk = begun(Setup::new().size(size).keys());
        go(&mut kiosk, "tires-pressure");
        send(&mut kiosk, Message::SheetAsked(SheetKind::Readings));
        kiosk.fill("walk-reading-1", "75");
        kiosk.tick(std::time::Instant::now());
        assert!(
            kiosk.look().focusable.iter().any(|(id, p)| id == "walk-reading-1" && p.visible.is_some()),
            "{size:?}"
        );
        kiosk.renders();
    }
}

/// Pages of every shape: words alone, many cautions, readings, items, the leaving check; and every sheet.
fn pages(kiosk: &mut Kiosk, fault: &mut dyn FnMut(&str, &mut Kiosk)) {
    for step in [
        "keys",
        "lp-supply",
        "tires-pressure",
        "grey-black-dump",
        "loaned-kit",
        "water-pump",
        "leaving-check",
    ] {
        go(kiosk, step);
        fault(step, kiosk);
    }
    for kind in [
        SheetKind::NotShown,
        SheetKind::Question,
        SheetKind::Readings,
        SheetKind::Marks,
        SheetKind::Item("W12".into()),
        SheetKind::Overview,
        SheetKind::Stop,
    ] {
        send(kiosk, Message::SheetAsked(kind.clone()));
        fault(&format!("{kind:?}"), kiosk);
        send(kiosk, Message::SheetClosed);
    }
}

#[test]
fn nothing_is_cut_off_at_any_size_in_any_length_of_words() {
    let mut faults = Vec::new();
    for size in SIZES {
        for language in ["en-US", PSEUDO] {
            for text in [TextSize::Usual, TextSize::Largest] {
                let mut kiosk = Setup::new()
                    .size(size)
                    .staff(language)
                    .text(text)
                    .resume("wren", &opened(language, "us"));
                pages(&mut kiosk, &mut |page, kiosk| {
                    for fault in kiosk.look().faults() {
                        faults.push(format!("{size:?} {language} {text:?} {page}: {fault}"));
                    }
                });
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn every_page_renders_at_every_size_and_in_every_theme() {
    for (size, theme) in SIZES.into_iter().zip(Theme::ALL) {
        let mut kiosk = begun(Setup::new().size(size).theme(theme));
        pages(&mut kiosk, &mut |_, kiosk| kiosk.renders());
    }
}

#[test]
fn a_tiny_window_does_no_harm() {
    for size in [(320.0, 240.0), (1.0, 1.0)] {
        let mut kiosk = begun(Setup::new().size(size));
        pages(&mut kiosk, &mut |_, kiosk| {
            let _ = kiosk.frame();
        });
    }
}
