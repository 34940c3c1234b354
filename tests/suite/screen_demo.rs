//! The renter's demonstrations: done by pointer, by finger and by keyboard, rightly and wrongly.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests may fail loudly"
)]

use std::collections::BTreeSet;
use std::time::{Duration, Instant};

use iced::Point;
use iced::keyboard::{Key, key::Named};
use iced::mouse::{Event as Mouse, ScrollDelta};
use sendoff::kiosk::Message;
use sendoff::kiosk::screen::{self, caution, walk};
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::kiosk::ui::HoldEvent;
use sendoff::route::{Answers, Caution, Route};
use sendoff::script::demo::{Task, Try};
use sendoff::walk::{Answer, Attempt, Demonstrating, Event, PersonId, Response, Shown};

use crate::kiosk_support::{Kiosk, PSEUDO, Press, SIZES, Setup, how, lot, opened};

const ANN: PersonId = PersonId(1);
const BO: PersonId = PersonId(2);
const UNITS: [&str; 3] = ["wren", "plover", "heron"];

fn route(unit: &str) -> Route {
    sendoff::route::build(&lot(), unit).unwrap()
}

/// All steps shown, and every caution answered but those with demonstrations that are wanted.
fn events(unit: &str, language: &str, wanted: impl Fn(&Caution) -> bool) -> Vec<Event> {
    let route = route(unit);
    let mut events = opened(language, "us");
    let shown = |text: &str| Shown { text: text.repeat(32), language: language.into() };
    for step in &route.steps {
        events.push(Event::StepShown { step: step.id.clone(), language: language.into() });
        for caution in step.cautions.iter().filter(|c| !wanted(c)) {
            let by: &[PersonId] = if caution.who == Answers::EachDriver { &[ANN, BO] } else { &[ANN] };
            events.extend(by.iter().map(|by| Event::CautionAnswered {
                caution: caution.id.clone(),
                version: caution.version,
                by: *by,
                how: how(caution),
                shown: shown("ab"),
                looked_ms: 4000,
            }));
        }
    }
    events
}

fn is_demonstrated(caution: &Caution) -> bool {
    !caution.demonstrations.is_empty()
}

/// How things are pressed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Hand {
    Mouse,
    Finger,
    Keys,
}

/// A kiosk at the demonstrations of a stop.
struct Page {
    kiosk: Kiosk,
    now: Instant,
    hand: Hand,
}

impl Page {
    /// The page of the first caution of a unit that asks for this demonstration.
    fn of(setup: Setup, unit: &str, demonstration: &str) -> Self {
        let wanted = |c: &Caution| c.demonstrations.iter().any(|d| d == demonstration);
        let language = setup.staff.clone();
        let mut page = Self::at(setup.resume(unit, &events(unit, &language, wanted)));
        page.enter(wanted);
        page
    }

    fn at(kiosk: Kiosk) -> Self {
        Self { kiosk, now: Instant::now(), hand: Hand::Mouse }
    }

    /// Opens the pages of the first stop with such a caution.
    fn enter(&mut self, wanted: impl Fn(&Caution) -> bool) {
        let route = self.kiosk.walk().route().clone();
        let step = route.steps.iter().position(|s| s.cautions.iter().any(&wanted)).unwrap();
        self.stop(&route, route.stop_of(step).unwrap());
    }

    fn stop(&mut self, route: &Route, stop: usize) {
        let last = route.stops[stop].steps.end - 1;
        self.kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::StepChosen(last))));
        self.kiosk.message(Message::Screen(screen::Message::Walk(walk::Message::Onward)));
        self.settle();
        self.choose();
    }

    fn settle(&mut self) {
        for _ in 0..3 {
            self.kiosk.tick(self.now);
        }
    }

    /// Ann answers where somebody has to be chosen; the page is read to its end.
    fn choose(&mut self) {
        if let Some(take) = self.kiosk.next_turn() {
            self.press(&take);
        }
        let (width, height) = self.kiosk.setup.size;
        let position = Point::new(width / 2.0, height / 2.0);
        self.kiosk.send(iced::Event::Mouse(Mouse::CursorMoved { position }));
        let delta = ScrollDelta::Lines { x: 0.0, y: -300.0 };
        self.kiosk.send(iced::Event::Mouse(Mouse::WheelScrolled { delta }));
        self.settle();
        self.now += Duration::from_millis(1100);
        self.settle();
    }

    fn press(&mut self, press: &Press) {
        if self.hand == Hand::Keys {
            self.kiosk.tab_to(press);
            // The clock of the page may be ahead of the one by which Tab went on.
            self.settle();
            self.kiosk.key(Key::Named(Named::Enter), None);
            self.settle();
            if matches!(press, Press::Hold(_)) {
                self.held();
                self.kiosk.key_up(Key::Named(Named::Enter));
                self.settle();
            }
            return;
        }
        let at = match press {
            Press::Words(words, nth) => self.kiosk.reach(words, *nth),
            Press::Id(id) | Press::Hold(id) => self.kiosk.place_of(id),
        };
        if matches!(press, Press::Hold(_)) {
            self.kiosk.finger_down(at);
            self.settle();
            self.held();
            self.kiosk.finger_up(at);
            return self.settle();
        }
        match self.hand {
            Hand::Finger => {
                self.kiosk.finger_down(at);
                self.kiosk.finger_up(at);
            }
            Hand::Mouse | Hand::Keys => self.kiosk.click_at(at),
        }
        self.settle();
    }

    /// Time passes until a ring has closed.
    fn held(&mut self) {
        for _ in 0..3 {
            self.now += Duration::from_millis(500);
            self.settle();
        }
    }

    /// Opens the task of the page.
    fn begin(&mut self) {
        self.press(&Press::Id("caution-show"));
    }

    /// One try, right or wrong.
    fn attempt(&mut self, wrong: bool) {
        for press in self.kiosk.presses(wrong) {
            self.press(&press);
        }
    }

    fn due(&self) -> (String, String, usize, bool) {
        let (caution, by) = self.kiosk.asked().expect("a caution is open");
        match self.kiosk.walk().demonstrating(&caution, by) {
            Demonstrating::Due(d) => (d.demonstration.id.clone(), d.part.id.clone(), d.tries, false),
            Demonstrating::Help(d) => (d.demonstration.id.clone(), d.part.id.clone(), d.tries, true),
            other => panic!("nothing is due: {other:?}"),
        }
    }

    fn is_open(&self) -> bool {
        self.kiosk.asked().is_some_and(|(caution, _)| is_demonstrated(&caution))
    }

    /// Does all demonstrations of the stop, each part wrongly first where that is wanted.
    fn do_all(&mut self, wrong_first: bool) {
        for _ in 0..400 {
            if !self.is_open() {
                // A page with another demonstration may wait for a name.
                self.choose();
                if !self.is_open() {
                    return;
                }
            }
            let ids: Vec<String> = self.kiosk.look().focusable.into_iter().map(|(id, _)| id).collect();
            if !ids.iter().any(|id| id == "demo-words" || id == "demo-go-on" || id == "demo-helped") {
                self.choose();
                self.begin();
                continue;
            }
            let open = self.kiosk.asked();
            let fresh = open.as_ref().is_some_and(|(caution, by)| {
                matches!(self.kiosk.walk().demonstrating(caution, *by), Demonstrating::Due(d) if d.tries == 0)
            });
            self.attempt(wrong_first && fresh);
            self.kiosk.no_notice();
        }
        panic!("the demonstrations do not end: {:#?}", self.kiosk.look().words());
    }
}

/// Every stop of a unit at which something is demonstrated, done one after the other.
fn all_of(unit: &str, hand: Hand, wrong_first: bool) -> Kiosk {
    let kiosk = Setup::new().resume(unit, &events(unit, "en-US", is_demonstrated));
    let mut page = Page::at(kiosk);
    page.hand = hand;
    let route = route(unit);
    let stops: BTreeSet<usize> = (0..route.steps.len())
        .filter(|step| route.steps[*step].cautions.iter().any(is_demonstrated))
        .map(|step| route.stop_of(step).unwrap())
        .collect();
    for stop in stops {
        page.stop(&route, stop);
        page.do_all(wrong_first);
        // The agent has the tablet again.
        let back = caution::Message::GivenBack(HoldEvent::Done);
        page.kiosk.message(Message::Screen(screen::Message::Caution(back)));
    }
    page.kiosk
}

/// Every demonstration was passed by whoever must, and answered as such.
fn all_passed(kiosk: &Kiosk, wrong_first: bool) {
    let walk = kiosk.walk();
    let mut seen = 0;
    for caution in walk.route().steps.iter().flat_map(|s| &s.cautions).filter(|c| is_demonstrated(c)) {
        let by: &[PersonId] = if caution.who == Answers::EachDriver { &[ANN, BO] } else { &[ANN] };
        for by in by {
            assert!(walk.has_demonstrated(caution, *by), "{} {by:?}", caution.id);
            match walk.response(&caution.id, *by).map(|r| &r.value) {
                Some(Response::Answered { how, shown, .. }) => {
                    assert_eq!(*how, Answer::Demonstrate);
                    assert_eq!(shown.text, kiosk.renter().caution(caution).digest());
                }
                other => panic!("{}: {other:?}", caution.id),
            }
        }
        for attempt in walk.attempts(&caution.id) {
            let Attempt::Tried(tried) = &attempt.value else { panic!("{}: help was needed", caution.id) };
            let part = walk.route().demonstrations[&tried.demonstration].part(&tried.part).unwrap().clone();
            let verdict = part.judge(&tried.answer);
            assert_eq!(tried.right, verdict.is_right());
            assert_eq!(tried.shown.text, kiosk.renter().demonstration(&part, &tried.order).digest());
            let said = verdict.reply().map(|said| kiosk.renter().reply(said).1);
            assert_eq!(tried.reply.as_ref().map(|r| r.text.clone()), said);
            seen += usize::from(!tried.right);
        }
    }
    assert_eq!(seen > 0, wrong_first);
}

#[test]
fn everything_is_demonstrated_with_the_mouse() {
    for unit in UNITS {
        all_passed(&all_of(unit, Hand::Mouse, false), false);
    }
}

#[test]
fn everything_is_demonstrated_with_a_finger_each_part_wrongly_first() {
    for unit in UNITS {
        all_passed(&all_of(unit, Hand::Finger, true), true);
    }
}

#[test]
fn everything_is_demonstrated_with_keys() {
    for unit in UNITS {
        all_passed(&all_of(unit, Hand::Keys, false), false);
    }
}

#[test]
fn the_first_card_that_breaks_a_rule_ends_the_try_with_its_correction() {
    let mut page = Page::of(Setup::new(), "wren", "dump-order");
    page.begin();
    let part = route("wren").demonstrations["dump-order"].parts[0].clone();
    let Some(Try::Cards(right)) = part.model_answer() else { panic!("cards") };
    let names = |page: &Page, id: &str| {
        let text = page.kiosk.renter().demonstration(&part, &right);
        text.items.into_iter().find(|named| named.id == id).unwrap().text
    };
    for id in &right[..2] {
        let words = names(&page, id);
        page.press(&Press::Words(words, 0));
    }
    let with = |id: &String| Try::Cards(right[..2].iter().chain([id]).cloned().collect());
    let wrong = right[2..].iter().find(|id| part.judge_so_far(&with(id)).is_some()).unwrap();
    let words = names(&page, wrong);
    page.press(&Press::Words(words, 0));
    let said = part.judge_so_far(&with(wrong)).unwrap().say;
    let said = page.kiosk.renter().reply(&said).0;
    page.kiosk.expect("Not yet");
    assert!(page.kiosk.look().contains(&said), "{said}: {:#?}", page.kiosk.look().words());
    let (caution, by) = page.kiosk.asked().unwrap();
    let Demonstrating::Due(due) = page.kiosk.walk().demonstrating(&caution, by) else {
        panic!("a try is due")
    };
    assert_eq!(due.kept, right[..2], "the right start stays");
    assert!(page.kiosk.look().contains("Steps 1 to 2 stay."), "{:#?}", page.kiosk.look().words());
    assert_eq!(page.due(), ("dump-order".into(), part.id.clone(), 1, false));
    // What stays cannot be taken back; it goes on from there.
    page.attempt(false);
    page.kiosk.no_notice();
    assert!(!page.is_open() || page.due().1 != part.id);
}

#[test]
fn after_two_wrong_tries_the_agent_shows_the_real_thing() {
    let mut page = Page::of(Setup::new(), "wren", "co-alarm");
    page.begin();
    page.attempt(true);
    page.attempt(true);
    assert!(page.due().3, "{:?}", page.due());
    page.kiosk.expect("Give the tablet to the agent for a moment.");
    let before = page.kiosk.look();
    assert!(before.contains("Show Ann Marlow the real thing"), "{:#?}", before.words());
    page.press(&Press::Id("demo-helped"));
    assert!(page.due().3, "a tap, which anybody can do, does not do it");
    page.press(&Press::Hold("demo-helped"));
    let (caution, by) = page.kiosk.asked().unwrap();
    let helped = |a: &Attempt| matches!(a, Attempt::Helped(h) if h.person == by);
    assert!(page.kiosk.walk().attempts(&caution.id).iter().any(|a| helped(&a.value)));
    assert!(!page.kiosk.shows("Not yet"), "what was said before is gone");
    page.do_all(false);
    let answer = page.kiosk.walk().response(&caution.id, by).map(|r| r.value.clone());
    assert!(matches!(answer, Some(Response::Answered { how: Answer::Demonstrate, .. })), "{answer:?}");
}

#[test]
fn a_try_survives_another_size_and_another_language() {
    let mut page = Page::of(Setup::new().staff(PSEUDO), "wren", "dump-order");
    page.begin();
    let presses = page.kiosk.presses(false);
    for press in &presses[..2] {
        page.press(press);
    }
    let placed = |page: &mut Page| page.kiosk.look().words().iter().any(|w| w.contains("2 of "));
    page.kiosk.resize(SIZES[2]);
    page.settle();
    let back = page.kiosk.place_of("demo-clear");
    assert!(back.x > 0.0);
    page.press(&Press::Words("English".into(), 0));
    assert!(placed(&mut page), "{:#?}", page.kiosk.look().words());
    assert!(page.kiosk.place_of("demo-words").x > 0.0, "the task is still open");
    let left = page.kiosk.presses(false).split_off(2);
    for press in left {
        page.press(&press);
    }
    page.do_all(false);
    let last = page.kiosk.walk();
    let mut cautions = last.route().steps.iter().flat_map(|s| &s.cautions);
    let caution = cautions.find(|c| c.demonstrations.iter().any(|d| d == "dump-order")).unwrap();
    let Attempt::Tried(tried) = &last.attempts(&caution.id)[0].value else { panic!("a try") };
    assert_eq!((tried.right, tried.shown.language.as_str()), (true, "en-US"));
}

#[test]
fn what_was_laid_is_taken_back_with_a_tap_and_started_over() {
    let mut page = Page::of(Setup::new(), "wren", "dump-order");
    page.begin();
    let presses = page.kiosk.presses(false);
    page.press(&presses[0]);
    assert!(page.kiosk.look().contains("1 of 9 placed"), "{:#?}", page.kiosk.look().words());
    page.press(&presses[0]);
    assert!(page.kiosk.look().contains("0 of 9 placed"));
    page.press(&presses[0]);
    page.press(&presses[1]);
    page.press(&Press::Id("demo-clear"));
    assert!(page.kiosk.look().contains("0 of 9 placed"));
    assert_eq!(page.due().2, 0, "nothing of this was a try");
    // Back to the words of the caution and here again.
    page.press(&Press::Id("demo-words"));
    let (caution, _) = page.kiosk.asked().unwrap();
    let hazard = page.kiosk.renter().caution(&caution).hazard;
    page.kiosk.expect(&hazard);
}

/// What is wrong with the page that is open.
fn faults(page: &mut Page, what: &str) -> Vec<String> {
    let seen = page.kiosk.look();
    let mut faults: Vec<String> = seen.faults().into_iter().map(|f| format!("{what}: {f}")).collect();
    if seen.contains("⟨") {
        faults.push(format!("{what}: words are missing: {:#?}", seen.words()));
    }
    if let Ok(folder) = std::env::var("SENDOFF_DEMO_PICTURES") {
        page.kiosk.save(&format!("{folder}/{}.png", what.replace(' ', "-")));
    }
    faults
}

/// Each kind of task once, with a unit that has it.
const KINDS: [(&str, &str); 9] = [
    ("wren", "dump-order"),
    ("wren", "awning-wind"),
    ("wren", "co-alarm"),
    ("wren", "which-plug"),
    ("wren", "altitude-dial"),
    ("heron", "propane-shut-off"),
    ("wren", "who-sits-where"),
    ("wren", "outlet-loads"),
    ("plover", "which-nozzle"),
];

#[test]
fn every_kind_fits_every_size() {
    let looks = [
        ("en-US", TextSize::Usual, Theme::Paper),
        (PSEUDO, TextSize::Usual, Theme::Dusk),
        (PSEUDO, TextSize::Largest, Theme::Daylight),
    ];
    let mut all = Vec::new();
    for (unit, demonstration) in KINDS {
        let mut page = Page::of(Setup::new(), unit, demonstration);
        drop(page.kiosk.look());
        for (language, text, theme) in looks {
            let setup = Setup::new().staff(language).text(text).theme(theme);
            let mut page = Page::of(setup, unit, demonstration);
            page.begin();
            for wrong in [true, false, true, true] {
                if !page.is_open() {
                    break;
                }
                for size in SIZES {
                    page.kiosk.resize(size);
                    page.settle();
                    let part = format!("{demonstration} {language} {text:?} {} {wrong}", size.0);
                    all.extend(faults(&mut page, &part));
                }
                page.kiosk.resize(SIZES[0]);
                page.settle();
                page.attempt(wrong);
            }
        }
    }
    assert!(all.is_empty(), "{all:#?}");
}

/// Every task of a demonstration is one of those with a page of its own.
#[test]
fn the_kinds_that_are_looked_at_are_all_kinds() {
    let kind = |task: &Task| std::mem::discriminant(task);
    let mut looked = Vec::new();
    for (unit, id) in KINDS {
        looked.extend(route(unit).demonstrations[id].parts.iter().map(|p| kind(&p.task)));
    }
    for unit in UNITS {
        for part in route(unit).demonstrations.values().flat_map(|d| &d.parts) {
            assert!(looked.contains(&kind(&part.task)), "{:?}", part.task);
        }
    }
}
