//! What changed in the middle of a walk, as its record tells it.

use sendoff::measure::System;
use sendoff::record::form::Outcome;
use sendoff::route::{Answers, Ask, Caution};
use sendoff::walk::{Answer, AnswerOf, Carried, Event, Follow, Lapse, Shown, Swap, Who};

use super::support::{Led, ROBIN, SAM, Ways, ink, route, speaker};

fn digest(caution: &Caution, system: System) -> String {
    speaker("en-US", system).caution(caution).digest()
}

/// The first caution for the whole party, answered by a hold, of which this is true.
fn caution(fits: impl Fn(&Caution) -> bool) -> Caution {
    let route = route();
    let party = |c: &&Caution| c.who == Answers::Party && c.ask == Ask::Hold;
    route.steps.iter().flat_map(|s| &s.cautions).filter(party).find(|c| fits(c)).unwrap().clone()
}

fn page(caution: &Caution, system: System) -> Shown {
    Shown { text: digest(caution, system), language: "en-US".into() }
}

/// Follows a walk for another unit, in which Sam had answered; then the renter wants to read in metric measures.
pub fn changed() -> Led {
    let same = caution(|c| digest(c, System::Us) == digest(c, System::Metric));
    let other = caution(|c| digest(c, System::Us) != digest(c, System::Metric));
    let mut led = Led::begin(Ways { left_out: None, ..Ways::default() });
    led.before_open();
    let carried = Carried {
        caution: same.id.clone(),
        version: same.version,
        by: SAM,
        how: Answer::Hold,
        shown: page(&same, System::Us),
        looked_ms: 60_000,
        at: "2026-07-24T19:00:00Z".parse().unwrap(),
        offset_minutes: -360,
    };
    let follow = Follow { walk: "t2-w-000122".into(), unit: "heron".into(), answers: vec![carried] };
    led.say(Event::UnitFollowed(follow));
    led.say(Event::Opened);
    led.round();
    let by_robin = |c: &Caution| AnswerOf { caution: c.id.clone(), by: ROBIN };
    led.say(Event::AnswersLapsed(Lapse { answers: vec![by_robin(&other)], consents: Vec::new() }));
    led.say(Event::ReaderSet { language: "en-US".into(), measures: "metric".into() });
    led.say(Event::CautionAnswered {
        caution: other.id.clone(),
        version: other.version,
        by: ROBIN,
        how: Answer::Hold,
        shown: page(&other, System::Metric),
        looked_ms: 60_000,
    });
    led.consent();
    led.sign();
    led.begin_seal();
    led
}

/// Swapped for another unit after the round.
pub fn swapped() -> Led {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.round();
    let reason = "Swapped for Heron. More beds.".to_owned();
    led.say(Event::UnitSwapped(Swap { walk: "t2-w-000124".into(), unit: "heron".into(), reason }));
    led.say(Event::Signed { by: Who::Agent, ink: ink() });
    led.begin_seal();
    led
}

#[test]
fn the_record_tells_which_answers_were_carried_over_and_which_were_asked_again() {
    let led = changed();
    let record = led.record();
    let follows = record.follows.as_ref().unwrap();
    assert_eq!((follows.walk.as_str(), follows.unit.as_str()), ("t2-w-000122", "heron"));
    let of = |id: &str| {
        record.route.steps.iter().flat_map(|s| &s.cautions).find(|c| c.id == id).unwrap().responses.clone()
    };
    let carried = of(&caution(|c| digest(c, System::Us) == digest(c, System::Metric)).id);
    assert!(carried[0].carried && carried[0].counts && carried[0].by == SAM.0, "{carried:?}");
    let other = caution(|c| digest(c, System::Us) != digest(c, System::Metric));
    let asked: Vec<(bool, bool, String)> =
        of(&other.id).iter().map(|r| (r.counts, r.lapsed.is_some(), r.text.to_string())).collect();
    let [us, metric] = [System::Us, System::Metric].map(|s| digest(&other, s));
    assert_eq!(asked, [(false, true, us), (true, false, metric)]);
    let plain: usize = record.route.steps.iter().flat_map(|s| &s.cautions).map(|c| c.responses.len()).sum();
    let told = |text: &str, part: &str| text.matches(part).count();
    // Lines wrap; words do not.
    let text: String = led.files().1.split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(told(&text, "Given in the walk before, to the same words."), 1, "of {plain}");
    assert_eq!(told(&text, "It stands no longer since"), 1);
    assert!(text.contains("Follows Heron, walk t2-w-000122"), "{}", &text[..1200]);
}

#[test]
fn the_record_of_a_swapped_unit_says_where_the_handoff_went_on() {
    let led = swapped();
    let record = led.record();
    let swapped = record.swapped.as_ref().unwrap();
    assert_eq!((swapped.walk.as_str(), swapped.unit.as_str()), ("t2-w-000124", "heron"));
    assert!(
        matches!(&record.outcome, Outcome::NotHandedOver { reason, .. } if reason.starts_with("Swapped"))
    );
    let text: String = led.files().1.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("Swapped for Heron, walk t2-w-000124"), "{}", &text[..1200]);
}

/// What version 1.2 adds is not in a record of which it is not true, nor in one of version 1.1.
#[test]
fn a_walk_without_changes_tells_of_none() {
    let json = String::from_utf8(Led::whole(Ways::default()).files().0).unwrap();
    for field in ["\"swapped\"", "\"follows\"", "\"lapsed\"", "\"carried\""] {
        assert!(!json.contains(field), "{field}");
    }
    let older = json.replacen("\"schema\": \"1.2\"", "\"schema\": \"1.1\"", 1);
    assert_ne!(older, json);
    assert!(sendoff::record::form::read(older.as_bytes()).is_ok());
}

/// A shift changes in the middle: the record says who led what.
#[test]
fn the_record_says_which_agent_led_which_step() {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.say(Event::StepShown { step: "keys".into(), language: "en-US".into() });
    led.say(Event::AgentOn { code: "B2".into() });
    led.say(Event::StepShown { step: "pets-smoking".into(), language: "en-US".into() });
    led.say(Event::HandoverStopped { reason: "Storm warning.".into(), by: Who::Agent });
    led.say(Event::Signed { by: Who::Agent, ink: ink() });
    led.begin_seal();
    let text: String = led.files().1.split_whitespace().collect::<Vec<_>>().join(" ");
    let after = |title: &str| {
        let at = text.rfind(&format!("{title}, shown")).unwrap_or_else(|| panic!("{title}"));
        text[at..].chars().take(120).collect::<String>()
    };
    assert!(after("The key ring").contains("led by Agent A7"), "{}", after("The key ring"));
    assert!(after("Pets and smoking").contains("led by Agent B2"), "{}", after("Pets and smoking"));
    assert!(text.contains("Decided by Agent B2"), "who stops it is on duty");
    let alone = Led::whole(Ways::default()).files().1;
    assert!(!alone.contains("led by"), "of one agent it is said once");
}
