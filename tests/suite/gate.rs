//! The gate as a machine: whatever is pressed in whatever order.

use std::sync::LazyLock;

use proptest::prelude::*;
use sendoff::kiosk::gate::{self, Asks, Gate, Purpose};
use sendoff::kiosk::ui::{HoldEvent, PinKey};
use sendoff::tablet::staff::{Staff, Tried};

use crate::kiosk_support::{NOW, Setup};
use crate::screen_staff::staffed;

#[derive(Debug, Clone)]
enum Step {
    Who(bool),
    Key(char),
    Back,
    End,
    Held,
    Left,
    Tick,
    Emergency,
    Answer(u8, bool),
    Pass(u16),
}

fn gate_step() -> impl Strategy<Value = Step> {
    prop_oneof![
        1 => any::<bool>().prop_map(Step::Who),
        5 => proptest::sample::select("0123456789".chars().collect::<Vec<_>>()).prop_map(Step::Key),
        1 => Just(Step::Back),
        3 => Just(Step::End),
        1 => Just(Step::Held),
        1 => Just(Step::Left),
        1 => Just(Step::Tick),
        1 => Just(Step::Emergency),
        3 => (0_u8..4, any::<bool>()).prop_map(|(what, who)| Step::Answer(what, who)),
        1 => (0_u16..1000).prop_map(Step::Pass),
    ]
}

/// `JM` of the office and the agent `K4`, read once.
fn people() -> Staff {
    static PEOPLE: LazyLock<Staff> =
        LazyLock::new(|| Setup::new().disk(&staffed()).boot().app.staff().unwrap().clone());
    PEOPLE.clone()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is pressed in whatever order: where somebody has a PIN, nobody goes through but whoever tried one
    /// last, once that was found right; and nobody tries while they must wait.
    #[test]
    fn the_gate_opens_for_a_right_pin_alone(steps in proptest::collection::vec(gate_step(), 0..80)) {
        let mut staff = people();
        let mut now: jiff::Timestamp = NOW.parse().unwrap();
        let mut gate = Gate::new(Purpose::Close, &staff, None);
        let mut asked: Option<String> = None;
        for step in steps {
            let code = |first: bool| if first { "JM" } else { "K4" };
            let asks = match step {
                Step::Who(first) => gate.update(gate::Message::WhoChosen(code(first).into()), &staff, now),
                Step::Key(digit) => gate.update(gate::Message::Key(PinKey::Digit(digit)), &staff, now),
                Step::Back => gate.update(gate::Message::Key(PinKey::Back), &staff, now),
                Step::End => gate.update(gate::Message::Key(PinKey::End), &staff, now),
                Step::Held => gate.update(gate::Message::Held(HoldEvent::Done), &staff, now),
                Step::Left => gate.update(gate::Message::Left, &staff, now),
                Step::Tick => gate.update(gate::Message::Ticked, &staff, now),
                Step::Emergency => gate.update(gate::Message::EmergencyAsked, &staff, now),
                Step::Pass(seconds) => {
                    now += jiff::SignedDuration::from_secs(seconds.into());
                    Asks::Nothing
                }
                Step::Answer(what, first) => {
                    let code = code(first);
                    let (tried, right) = match what {
                        0 => (Tried::Right, true),
                        1 => (Tried::Wrong, false),
                        2 => (Tried::Wait(5), false),
                        _ => (Tried::Unchecked("no memory".into()), false),
                    };
                    let asks = gate.tried(code, tried, &staff);
                    let awaited = asked.as_deref() == Some(code);
                    prop_assert_eq!(matches!(asks, Asks::Through(_)), right && awaited);
                    if awaited {
                        asked = None;
                    }
                    if matches!(asks, Asks::Through(_)) {
                        staff.passed(code);
                        // The kiosk puts the gate away; it is asked anew.
                        gate = Gate::new(Purpose::Close, &staff, None);
                        continue;
                    }
                    asks
                }
            };
            match asks {
                Asks::Through(_) => prop_assert!(false, "through without an answer"),
                Asks::Try(who) => {
                    prop_assert!(asked.is_none(), "one try at a time");
                    prop_assert!(who.pin.is_whole() && staff.wait(&who.code, now) == 0);
                    prop_assert!(staff.count_try(&who.code, now).is_ok());
                    asked = Some(who.code);
                }
                Asks::Nothing | Asks::Close | Asks::Clock => {}
            }
        }
    }
}
