//! Whatever happens in whatever order.

use std::collections::BTreeMap;

use jiff::civil::date;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use sendoff::figures::{HookUp, On, Person as Traveler, Start, Trip};
use sendoff::walk::{
    Answer, AnswerOf, Carried, CopyChoice, Decision, Entry, Event, Follow, Ink, Lapse, Licence, LocalTime,
    Missing, NotRead, NotShown, Outcome, Person, PersonId, Phase, Refused, Shown, Swap, Walk, Who,
};

use super::support::*;
use super::trip;

fn anyone() -> impl Strategy<Value = PersonId> {
    (0_u8..6).prop_map(PersonId)
}

fn who() -> impl Strategy<Value = Who> {
    prop_oneof![Just(Who::Agent), anyone().prop_map(Who::Person)]
}

fn note() -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), Just("x".to_owned()), Just("\u{0}".to_owned()), Just("ö".repeat(501))]
}

fn page() -> impl Strategy<Value = Shown> {
    prop_oneof![4 => Just(shown("ab")), 2 => Just(shown("cd")), 1 => Just(shown("!"))]
}

fn decision() -> impl Strategy<Value = Decision> {
    select(vec![Decision::HandOver, Decision::KeepUnit])
}

fn id_of(known: &'static [&'static str]) -> impl Strategy<Value = String> {
    prop_oneof![9 => select(known).prop_map(String::from), 1 => "[a-z]{0,3}"]
}

fn someone() -> impl Strategy<Value = Person> {
    let names = select(vec!["", "Ann", "Bo", "Cy", "Dee"]);
    let ages = select(vec![0_u8, 9, 17, 18, 41, 121]);
    (anyone(), names, ages, any::<bool>()).prop_map(|(id, name, age, driver)| person(id, name, age, driver))
}

fn party() -> impl Strategy<Value = Vec<Person>> {
    prop_oneof![
        2 => vec(someone(), 0..4),
        2 => Just(people()),
        1 => Just(people().into_iter().take(1).collect()),
        1 => Just(people().into_iter().skip(1).collect()),
        1 => Just(people().into_iter().chain([person(PersonId(4), "Dee", 28, true)]).collect()),
    ]
}

fn planned() -> impl Strategy<Value = Event> {
    let level = select(vec!["0", "7/8", "9/8"]).prop_map(|text| text.parse().ok());
    let loads = select(vec!["tv", "", "\u{0}"]).prop_map(|load| On { load: load.into(), settled: false });
    let hook_up = select(vec![0_usize, 2, 365, 366]).prop_map(|nights| vec![HookUp::Power; nights]);
    let weights = vec(proptest::option::of(select(vec!["180 lb", "60 kg"])), 0..5);
    (hook_up, vec(loads, 0..3), weights, level, vec(any::<u16>(), 0..4)).prop_map(
        |(hook_up, on, weights, fresh, fill)| {
            let weight = |text: Option<&str>| text.and_then(|text| text.parse().ok());
            let people = weights.into_iter().map(|w| Traveler { age: 30, weight: weight(w) }).collect();
            let start = Start { fresh, ..Start::default() };
            trip::plan(&Trip { hook_up, on, people, start, fill, ..Trip::default() })
        },
    )
}

fn opening_event() -> impl Strategy<Value = Event> {
    let licence = (anyone(), 2025_i16..2030).prop_map(|(person, year)| {
        let expiry = date(year, 5, 31);
        Event::LicenceSeen { person, licence: Licence { class: "C".into(), country: "US".into(), expiry } }
    });
    let booking = (0_u16..400, 2026_i16..2029, -900_i16..900).prop_map(|(nights, year, offset_minutes)| {
        let due_back = LocalTime { local: date(year, 7, 8).at(10, 0, 0, 0), offset_minutes };
        Event::BookingSet { reference: String::new(), nights, due_back }
    });
    prop_oneof![
        select(vec!["K4", "M2", ""]).prop_map(|code| Event::AgentOn { code: code.into() }),
        (select(vec!["en-US", "es", "?"]), select(vec!["us", "metric", "x"]))
            .prop_map(|(l, m)| { Event::ReaderSet { language: l.into(), measures: m.into() } }),
        party().prop_map(|people| Event::PartySet { people }),
        licence,
        vec(anyone(), 0..5).prop_map(|people| Event::PresentSet { people }),
        any::<bool>().prop_map(|first_time| Event::ExperienceSet { first_time }),
        note().prop_map(|role| Event::TranslatorSet { role }),
        booking,
        planned(),
        Just(Event::Opened),
        Just(began()),
    ]
}

fn answer_event() -> impl Strategy<Value = Event> {
    let how = select(vec![Answer::Read, Answer::Hold, Answer::TwoTaps, Answer::Demonstrate]);
    let answer = (id_of(&CAUTIONS), 1_u16..4, anyone(), how, page(), any::<u32>()).prop_map(
        |(caution, version, by, how, shown, looked_ms)| Event::CautionAnswered {
            caution,
            version,
            by,
            how,
            shown,
            looked_ms,
        },
    );
    let refusal = (id_of(&CAUTIONS), 1_u16..4, anyone(), note(), decision(), page()).prop_map(
        |(caution, version, by, reason, decision, shown)| Event::CautionRefused {
            caution,
            version,
            by,
            reason,
            decision,
            shown,
        },
    );
    prop_oneof![3 => answer, 1 => refusal]
}

fn round_event() -> impl Strategy<Value = Event> {
    let reasons = select(vec![NotShown::Weather, NotShown::Declined, NotShown::NoTime]);
    let value = select(vec!["12.7", "7/8", "full", "999", ""]);
    prop_oneof![
        3 => (id_of(&STEPS), select(vec!["en-US", "es", ""]))
            .prop_map(|(step, l)| Event::StepShown { step, language: l.into() }),
        1 => (id_of(&STEPS), reasons, note())
            .prop_map(|(step, reason, note)| Event::StepNotShown { step, reason, note }),
        1 => (id_of(&STEPS), proptest::option::of(id_of(&CAUTIONS)), note(), any::<bool>())
            .prop_map(|(step, caution, text, answered)| Event::QuestionNoted { step, caution, text, answered }),
        6 => answer_event(),
        2 => (id_of(&READINGS), value, select(vec!["", "V"])).prop_map(|(reading, value, m)| {
            Event::ReadingTaken { reading, value: value.into(), measure: m.into() }
        }),
        1 => (id_of(&READINGS), note()).prop_map(|(reading, note)| {
            Event::ReadingNotTaken { reading, reason: NotRead::Broken, note }
        }),
        1 => (id_of(&["W01", "W02"]), any::<u16>(), note())
            .prop_map(|(tag, count, note)| Event::ItemCounted { tag, count, note }),
        1 => (0_u16..5).prop_map(mark),
        1 => (0_u16..5).prop_map(|number| Event::MarkRemoved { number }),
        1 => (id_of(&["cord", "step"]), any::<bool>())
            .prop_map(|(item, good)| Event::LeavingChecked { item, good }),
    ]
}

fn closing_event() -> impl Strategy<Value = Event> {
    let inks = vec(vec(any::<(i16, i16)>(), 0..4), 0..4);
    let sign = (who(), any::<u16>(), inks)
        .prop_map(|(by, height, strokes)| Event::Signed { by, ink: Ink { height, strokes } });
    prop_oneof![
        2 => (anyone(), any::<bool>(), page())
            .prop_map(|(by, given, shown)| Event::ConsentAnswered { by, given, shown }),
        2 => who().prop_map(signed),
        1 => sign,
        1 => (anyone(), note(), decision())
            .prop_map(|(by, reason, decision)| Event::SignatureRefused { by, reason, decision }),
        1 => note().prop_map(|reason| Event::ClosingReopened { reason }),
        1 => Just(Event::CopyOffered),
        1 => select(vec![CopyChoice::Slip, CopyChoice::Declined]).prop_map(|choice| Event::CopyChosen { choice }),
        1 => (note(), who()).prop_map(|(reason, by)| Event::HandoverStopped { reason, by }),
        1 => (0_u32..3, proptest::option::of(Just("0f".repeat(32))))
            .prop_map(|(number, previous)| Event::SealBegun { number, previous }),
    ]
}

fn swap_event() -> impl Strategy<Value = Event> {
    let answers = vec((id_of(&CAUTIONS), anyone()), 0..4)
        .prop_map(|all| all.into_iter().map(|(caution, by)| AnswerOf { caution, by }).collect::<Vec<_>>());
    let lapse = (answers, vec(anyone(), 0..2))
        .prop_map(|(answers, consents)| Event::AnswersLapsed(Lapse { answers, consents }));
    let how = select(vec![Answer::Read, Answer::Hold, Answer::Demonstrate]);
    let carried =
        (id_of(&CAUTIONS), 1_u16..4, anyone(), how, page()).prop_map(|(caution, version, by, how, shown)| {
            Carried { caution, version, by, how, shown, looked_ms: 9, at: at(-9), offset_minutes: 0 }
        });
    let other = || select(vec!["t2-000001", "t2-000002", "?"]).prop_map(str::to_owned);
    let follow = (other(), vec(carried, 0..3))
        .prop_map(|(walk, answers)| Event::UnitFollowed(Follow { walk, unit: "heron".into(), answers }));
    let swap = (other(), note())
        .prop_map(|(walk, reason)| Event::UnitSwapped(Swap { walk, unit: "heron".into(), reason }));
    prop_oneof![4 => lapse, 1 => follow, 1 => swap]
}

fn any_event() -> impl Strategy<Value = Event> {
    prop_oneof![4 => opening_event(), 8 => round_event(), 4 => closing_event(), 1 => swap_event()]
}

/// A good walk of some length, so that chance starts from every depth.
fn start() -> impl Strategy<Value = Vec<Event>> {
    let events: Vec<Event> = opening().into_iter().chain(round()).chain(signing()).collect();
    (0..=events.len()).prop_map(move |length| events[..length].to_vec())
}

/// What must be true of the DANGER cautions, told from the accepted events alone and from no code of the walk.
#[derive(Debug, Default)]
struct Model {
    people: Vec<Person>,
    last: BTreeMap<(String, PersonId), Option<Decision>>,
    stopped: bool,
}

impl Model {
    fn note(&mut self, event: &Event) {
        match event {
            Event::PartySet { people } => self.people.clone_from(people),
            Event::CautionAnswered { caution, by, .. } => {
                self.last.insert((caution.clone(), *by), None);
            }
            Event::CautionRefused { caution, by, decision, .. } => {
                self.last.insert((caution.clone(), *by), Some(*decision));
            }
            Event::AnswersLapsed(lapse) => {
                for AnswerOf { caution, by } in &lapse.answers {
                    self.last.remove(&(caution.clone(), *by));
                }
            }
            Event::UnitFollowed(follow) => {
                self.last.extend(follow.answers.iter().map(|a| ((a.caution.clone(), a.by), None)));
            }
            Event::HandoverStopped { .. } | Event::UnitSwapped(_) => self.stopped = true,
            Event::ClosingReopened { .. } => self.stopped = false,
            _ => {}
        }
    }

    /// Whether every DANGER caution has an answer, or a refusal under which the unit goes out, of all who must.
    fn dangers_answered(&self) -> bool {
        let said = |caution: &str, id: PersonId| self.last.get(&(caution.to_owned(), id));
        let kept = |caution: &str| {
            self.people.iter().any(|p| said(caution, p.id) == Some(&Some(Decision::KeepUnit)))
        };
        DANGERS.iter().all(|(caution, each_driver)| {
            let enough = if *each_driver {
                self.people.iter().any(|p| p.driver)
                    && self.people.iter().filter(|p| p.driver).all(|p| said(caution, p.id).is_some())
            } else {
                self.people.iter().any(|p| p.age >= 18 && said(caution, p.id).is_some())
            };
            enough && !kept(caution)
        })
    }

    fn check(&self, walk: &Walk) {
        if !self.stopped && walk.missing_to_seal().is_empty() {
            assert!(self.dangers_answered(), "may be handed over, but {self:?}");
        }
        if walk.phase() == Phase::SealBegun && !self.stopped {
            assert_eq!(walk.outcome(), Outcome::HandedOver);
            assert!(self.dangers_answered(), "handed over, but {self:?}");
        }
    }
}

/// Proposes an event and checks the model; whether it was accepted.
fn propose(walk: &mut Walk, model: &mut Model, log: &mut Vec<Entry>, event: Event) -> Result<(), Refused> {
    let entry = entry(i64::try_from(log.len()).unwrap(), event);
    let accepted = walk.accepts(&entry);
    let before = walk.clone();
    assert_eq!(walk.apply(&entry), accepted);
    match &accepted {
        Ok(()) => {
            model.note(&entry.event);
            log.push(entry);
        }
        Err(refused) => {
            assert_eq!(*walk, before, "refused and yet changed");
            assert!(refused.key().starts_with("refused-") && !refused.to_string().is_empty());
        }
    }
    model.check(walk);
    accepted
}

fn begin() -> (Walk, Model, Vec<Entry>) {
    let first = entry(0, began());
    (Walk::begin(route(), &first).unwrap(), Model::default(), vec![first])
}

/// Does what is missing, one after another, leaving out what `never` says; the last event is the seal.
fn complete(walk: &mut Walk, model: &mut Model, log: &mut Vec<Entry>, never: impl Fn(&Event) -> bool) {
    for _ in 0..300 {
        let missing: Vec<Missing> = walk.missing_to_seal();
        if missing.is_empty() {
            drop(propose(walk, model, log, seal()));
            return;
        }
        let remedies = missing.iter().map(|m| remedy(walk, m)).filter(|e| !never(e));
        let accepted = remedies.collect::<Vec<_>>().into_iter().find_map(|event| {
            match propose(walk, model, log, event) {
                Ok(()) => Some(()),
                Err(Refused::NotPresent { .. }) => {
                    let people = walk.people().iter().map(|p| p.id).collect();
                    propose(walk, model, log, Event::PresentSet { people }).ok()
                }
                Err(Refused::SigningBegun(_)) => propose(walk, model, log, reopen()).ok(),
                Err(_) => None,
            }
        });
        if accepted.is_none() {
            return;
        }
    }
}

fn config() -> ProptestConfig {
    ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(config())]

    /// Never a panic; a refusal changes nothing; replaying what was accepted gives the same walk; and no order of
    /// events lets a unit go out while a DANGER caution lacks an answer.
    #[test]
    fn any_order_of_events(start in start(), chance in vec(any_event(), 0..60)) {
        let (mut walk, mut model, mut log) = begin();
        for event in start.into_iter().chain(chance) {
            drop(propose(&mut walk, &mut model, &mut log, event));
        }
        prop_assert_eq!(Walk::replay(route(), &log), Ok(walk));
    }

    /// From anywhere a walk can be brought to its end by doing what it says is missing: no dead ends.
    #[test]
    fn what_is_missing_leads_to_the_seal(start in start(), chance in vec(any_event(), 0..60)) {
        let (mut walk, mut model, mut log) = begin();
        for event in start.into_iter().chain(chance) {
            drop(propose(&mut walk, &mut model, &mut log, event));
        }
        complete(&mut walk, &mut model, &mut log, |_| false);
        prop_assert_eq!(walk.phase(), Phase::SealBegun, "{:?}", walk.missing_to_seal());
        prop_assert_eq!(Walk::replay(route(), &log), Ok(walk));
    }

    /// Everything but one DANGER caution is done by all means: the unit does not go out.
    #[test]
    fn one_danger_without_an_answer_keeps_the_unit(
        which in 0..DANGERS.len(), start in start(), chance in vec(any_event(), 0..60),
    ) {
        let (danger, _) = DANGERS[which];
        let never = |event: &Event| match event {
            Event::CautionAnswered { caution, .. } | Event::CautionRefused { caution, .. } => caution == danger,
            Event::UnitFollowed(follow) => follow.answers.iter().any(|a| a.caution == danger),
            Event::HandoverStopped { .. } | Event::UnitSwapped(_) => true,
            _ => false,
        };
        let (mut walk, mut model, mut log) = begin();
        for event in start.into_iter().chain(chance).filter(|e| !never(e)) {
            drop(propose(&mut walk, &mut model, &mut log, event));
        }
        complete(&mut walk, &mut model, &mut log, never);
        prop_assert!(walk.phase() < Phase::Signing);
        let refused = why_not(&mut walk, seal());
        let lacks = |m: &Missing| matches!(m, Missing::Answer { caution, .. } if caution == danger);
        prop_assert!(refused.missing().iter().any(lacks), "{refused:?}");
    }

    /// A journal line is JSON: every event comes back as it was.
    #[test]
    fn events_survive_their_line(event in any_event()) {
        let entry = entry(3, event);
        let line = sendoff::journal::line::encode(&entry).unwrap();
        let text = line.strip_suffix(b"\n").unwrap();
        prop_assert_eq!(sendoff::journal::line::decode(text), Ok(entry));
    }
}

/// Of a driver who has not answered it is enough that one exists.
#[test]
fn every_subset_of_drivers_answers() {
    for mask in 0_u8..8 {
        let mut walk = said_without_driving();
        let drivers = [ANN, BO, PersonId(4)];
        let said = drivers.iter().enumerate().filter(|(i, _)| mask & (1 << i) != 0);
        all(&mut walk, said.map(|(_, id)| answer("driving-1", *id)));
        assert_eq!(walk.missing_to_sign().is_empty(), mask == 7, "{mask:b}");
    }
}

fn said_without_driving() -> Walk {
    let dee = PersonId(4);
    let mut walk = opened();
    let mut party = people();
    party.push(person(dee, "Dee", 28, true));
    let present = vec![ANN, BO, dee];
    all(&mut walk, [Event::PartySet { people: party }, licence(dee), Event::PresentSet { people: present }]);
    all(
        &mut walk,
        round()
            .into_iter()
            .filter(|e| !matches!(e, Event::CautionAnswered { caution, .. } if caution == "driving-1")),
    );
    all(&mut walk, [answer("driving-2", dee)]);
    walk
}
