//! Demonstrations within a walk: what may happen when, and that nobody confirms without having shown it.

use std::sync::Arc;

use proptest::collection::vec;
use proptest::prelude::*;
use sendoff::route::Caution;
use sendoff::script::demo::Try;
use sendoff::walk::{Answer, Attempt, Demonstrating, Event, Helped, PersonId, Refused, Shown, Tried, Walk};

use super::{route, speaker};
use crate::walk::support::{ANN, BO, CY, began, entry, opening, refusal};

/// A walk round a unit, opened, with a minute for each event.
struct Led {
    walk: Walk,
    unit: &'static str,
    minute: i64,
}

impl Led {
    fn opened(unit: &'static str) -> Self {
        let mut began = began();
        if let Event::Began { unit: id, .. } = &mut began {
            *id = unit.into();
        }
        let walk = Walk::begin(Arc::new(route(unit)), &entry(0, began)).unwrap();
        let mut led = Self { walk, unit, minute: 0 };
        opening().into_iter().for_each(|event| led.happen(event).unwrap());
        let steps: Vec<String> = led.walk.route().steps.iter().map(|s| s.id.clone()).collect();
        for step in steps {
            led.happen(Event::StepShown { step, language: "en-US".into() }).unwrap();
        }
        led
    }

    fn happen(&mut self, event: Event) -> Result<(), Refused> {
        self.minute += 1;
        self.walk.apply(&entry(self.minute, event))
    }

    fn caution(&self, id: &str) -> Caution {
        self.walk.route().caution(id).expect("a caution of the route").1.clone()
    }

    /// A try at what is due, wrong or right.
    fn tried(&self, caution: &str, by: PersonId, right: bool) -> Option<Tried> {
        let found = self.caution(caution);
        let (Demonstrating::Due(due) | Demonstrating::Help(due)) = self.walk.demonstrating(&found, by) else {
            return None;
        };
        let answer =
            if right { due.part.model_answer() } else { due.part.wrong_answer() }.expect("an answer");
        Some(due.tried(&speaker(self.unit), caution, (by, answer), 20_000))
    }

    fn try_it(&mut self, caution: &str, by: PersonId, right: bool) -> Result<(), Refused> {
        let tried = self.tried(caution, by, right).expect("a part that is due");
        self.happen(Event::DemonstrationTried(tried))
    }

    fn help(&mut self, caution: &str, person: PersonId) -> Result<(), Refused> {
        let found = self.caution(caution);
        let (demonstration, part) = match self.walk.demonstrating(&found, person) {
            Demonstrating::Due(due) | Demonstrating::Help(due) => {
                (due.demonstration.id.clone(), due.part.id.clone())
            }
            _ => (found.demonstrations.first().cloned().unwrap_or_default(), "order".into()),
        };
        let caution = caution.to_owned();
        self.happen(Event::DemonstrationHelped(Helped { caution, demonstration, part, person }))
    }

    fn confirm(&mut self, caution: &str, by: PersonId) -> Result<(), Refused> {
        let (found, text) = (self.caution(caution), "ab".repeat(32));
        let (caution, shown) = (found.id.clone(), Shown { text, language: "en-US".into() });
        let how = Answer::Demonstrate;
        self.happen(Event::CautionAnswered {
            caution,
            version: found.version,
            by,
            how,
            shown,
            looked_ms: 5000,
        })
    }

    fn state(&self, caution: &str, by: PersonId) -> &'static str {
        match self.walk.demonstrating(&self.caution(caution), by) {
            Demonstrating::None => "none",
            Demonstrating::Due(_) => "due",
            Demonstrating::Help(_) => "help",
            Demonstrating::Passed => "passed",
        }
    }
}

const DUMP: &str = "grey-black-dump-2";

/// Handbook C: after two wrong tries the agent shows the real thing, and the renter repeats it.
#[test]
fn two_wrong_tries_bring_help_and_then_the_renter_repeats_it() {
    let mut led = Led::opened("wren");
    assert_eq!(led.state(DUMP, ANN), "due");
    assert_eq!(led.help(DUMP, ANN), Err(Refused::NoHelpDue { part: "order".into() }));
    led.try_it(DUMP, ANN, false).unwrap();
    assert_eq!((led.state(DUMP, ANN), led.state(DUMP, BO)), ("due", "due"));
    led.try_it(DUMP, ANN, false).unwrap();
    assert_eq!((led.state(DUMP, ANN), led.state(DUMP, BO)), ("help", "due"));
    assert_eq!(led.try_it(DUMP, ANN, true), Err(Refused::HelpFirst { part: "order".into() }));
    led.help(DUMP, ANN).unwrap();
    assert_eq!(led.confirm(DUMP, ANN), Err(Refused::NotDemonstrated { caution: DUMP.into() }));
    led.try_it(DUMP, ANN, true).unwrap();
    assert_eq!(led.state(DUMP, ANN), "passed");
    led.confirm(DUMP, ANN).unwrap();
    let kept: Vec<&str> = led
        .walk
        .attempts(DUMP)
        .iter()
        .map(|a| match &a.value {
            Attempt::Tried(tried) if tried.right => "right",
            Attempt::Tried(_) => "wrong",
            Attempt::Helped(_) => "helped",
        })
        .collect();
    assert_eq!(kept, ["wrong", "wrong", "helped", "right"]);
}

#[test]
fn parts_come_in_sequence_and_all_of_them() {
    let mut led = Led::opened("wren");
    let dial = "generator-care-2";
    let mut parts = Vec::new();
    while let Some(tried) = led.tried(dial, BO, true) {
        parts.push(tried.part.clone());
        assert_eq!(led.confirm(dial, BO), Err(Refused::NotDemonstrated { caution: dial.into() }));
        led.happen(Event::DemonstrationTried(tried)).unwrap();
    }
    assert_eq!(parts, ["marrow", "cinder", "sallow"]);
    led.confirm(dial, BO).unwrap();
    // One caution may ask for two demonstrations.
    let cord = "shore-cord-adapters-1";
    led.try_it(cord, ANN, true).unwrap();
    assert_eq!(led.tried(cord, ANN, true).map(|t| t.demonstration), Some("which-plug".into()));
}

#[test]
fn each_driver_shows_it_alone() {
    let mut led = Led::opened("wren");
    let pass = "height-clearance-1";
    while led.state(pass, ANN) == "due" {
        led.try_it(pass, ANN, true).unwrap();
    }
    led.confirm(pass, ANN).unwrap();
    assert_eq!(led.confirm(pass, BO), Err(Refused::NotDemonstrated { caution: pass.into() }));
    let child = led.tried(pass, BO, true).map(|t| Tried { by: CY, ..t }).expect("a try");
    assert_eq!(led.happen(Event::DemonstrationTried(child)), Err(Refused::TooYoung { person: CY }));
    assert_eq!(led.state(pass, BO), "due");
}

#[test]
fn a_refusal_stands_in_for_a_demonstration() {
    let mut led = Led::opened("heron");
    let version = led.caution("hitch-coupling-1").version;
    let mut refused = refusal("hitch-coupling-1", ANN, sendoff::walk::Decision::HandOver);
    if let Event::CautionRefused { version: of, .. } = &mut refused {
        *of = version;
    }
    led.happen(refused).unwrap();
    assert!(led.walk.response("hitch-coupling-1", ANN).is_some());
}

/// The walk judges again: a try is kept as what it is.
#[test]
fn a_try_that_is_not_what_it_says_is_refused() {
    let mut led = Led::opened("wren");
    let wrong = led.tried(DUMP, ANN, false).expect("a try");
    let other = || Err(Refused::OtherPart { part: "order".into() });
    let reply = wrong.reply.clone();
    for odd in [
        Tried { right: true, ..wrong.clone() },
        Tried { reply: None, ..wrong.clone() },
        Tried { part: "another".into(), ..wrong.clone() },
        Tried { demonstration: "co-alarm".into(), ..wrong.clone() },
        Tried { order: vec!["gloves".into()], ..wrong.clone() },
        Tried { answer: Try::Number(3), reply: reply.clone(), ..wrong.clone() },
        Tried { answer: Try::Cards(vec!["gloves".into(), "gloves".into()]), ..wrong.clone() },
    ] {
        assert_eq!(led.happen(Event::DemonstrationTried(odd.clone())), other(), "{odd:?}");
    }
    let none = Tried { caution: "awning-2".into(), ..wrong.clone() };
    let said = led.happen(Event::DemonstrationTried(none));
    assert_eq!(said, Err(Refused::NoDemonstration { caution: "awning-2".into() }));
    led.happen(Event::DemonstrationTried(wrong)).unwrap();
}

/// What the walk keeps stands the same after a restart, and the page with it.
#[test]
fn events_of_a_demonstration_are_read_back_as_they_were() {
    let led = Led::opened("heron");
    for (caution, right) in [("hitch-coupling-1", false), ("height-clearance-1", true), (DUMP, true)] {
        let tried = led.tried(caution, ANN, right).expect("a try");
        let event = Event::DemonstrationTried(tried.clone());
        let text = serde_json::to_string(&event).unwrap();
        assert_eq!(serde_json::from_str::<Event>(&text).unwrap(), event, "{text}");
        assert!(!text.contains('.') || !text.contains("e-"), "no floats: {text}");
        assert_eq!(led.tried(caution, ANN, right), Some(tried), "the same page each time it is asked");
    }
    let (caution, part) = (DUMP.to_owned(), "order".to_owned());
    let helped = Helped { caution, demonstration: "dump-order-two".into(), part, person: BO };
    let event = Event::DemonstrationHelped(helped);
    let text = serde_json::to_string(&event).unwrap();
    assert_eq!(serde_json::from_str::<Event>(&text).unwrap(), event, "{text}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Whatever is proposed: nobody has confirmed by demonstration what they did not pass, and nobody tries a third
    /// time alone.
    #[test]
    fn nobody_confirms_without_having_shown_it(moves in vec((0..4_usize, 0..2_usize, 0..3_usize), 1..40)) {
        let mut led = Led::opened("wren");
        let cautions = [DUMP, "generator-care-2", "seat-belts-1"];
        for (what, who, which) in moves {
            let (by, caution) = ([ANN, BO][who], cautions[which]);
            let before = led.state(caution, by);
            match what {
                0 | 1 => if let Some(tried) = led.tried(caution, by, what == 1) {
                    let said = led.happen(Event::DemonstrationTried(tried));
                    prop_assert_eq!(said.is_ok(), before == "due");
                },
                2 => prop_assert_eq!(led.help(caution, by).is_ok(), before == "help"),
                _ => {
                    let said = led.confirm(caution, by);
                    prop_assert!(said.is_err() || before == "passed");
                }
            }
            for caution in cautions {
                for by in [ANN, BO] {
                    let confirmed = led.walk.response(caution, by).is_some();
                    prop_assert!(!confirmed || led.state(caution, by) == "passed");
                }
            }
        }
    }
}
