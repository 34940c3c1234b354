//! A plausible walk of Wren through real events, led from the demo lot.

use std::sync::{Arc, LazyLock};

use jiff::civil::date;
use jiff::{SignedDuration, Timestamp};
use sendoff::measure::System;
use sendoff::record::build::{BuildFault, Contents, SealingHead, build};
use sendoff::record::form::{Handoff, Record, read};
use sendoff::record::seal::{Digest, Kind, record_id};
use sendoff::record::text::consent_text;
use sendoff::route::{self, Answers, Ask, Route, Scale, Signal};
use sendoff::script::{Bundle, Scripts, Speaker};
use sendoff::walk::{
    Answer, CopyChoice, Decision, Demonstrating, Entry, Event, Ink, Licence, LocalTime, Mark, MarkKind,
    MarkSize, NotRead, NotShown, Person, PersonId, PlanPoint, Shown, StepState, Walk, Who,
};
use sendoff::words::Reader;

use crate::walk::trip::{plan, trip};

pub const ROBIN: PersonId = PersonId(1);
pub const SAM: PersonId = PersonId(2);
pub const NUMBER: u32 = 123;

/// The demo lot; its words do not change while the tests run.
pub static SCRIPTS: LazyLock<Scripts> = LazyLock::new(|| {
    let (scripts, _) = Scripts::load(Arc::new(Bundle::demo()));
    scripts.expect("the demo lot can be led from")
});

pub fn route() -> Arc<Route> {
    Arc::new(route::build(&SCRIPTS, "wren").expect("Wren is on the lot"))
}

pub fn ink() -> Ink {
    Ink {
        height: 300,
        strokes: vec![
            vec![(100, 200), (180, 60), (260, 210), (341, 90)],
            vec![(400, 140), (700, 150)],
            vec![(720, 90)],
        ],
    }
}

/// What may go otherwise than usual.
#[derive(Debug, Clone)]
pub struct Ways {
    pub language: &'static str,
    pub system: System,
    /// A step that is left not shown, because of weather.
    pub left_out: Option<&'static str>,
    /// A caution that Sam refuses.
    pub refused: Option<&'static str>,
    /// A reading whose gauge does not work.
    pub broken: Option<&'static str>,
    /// A caution that is confirmed at once.
    pub hurried: Option<&'static str>,
    pub rehearsal: bool,
    /// Whether the trip is planned.
    pub planned: bool,
}

impl Default for Ways {
    fn default() -> Self {
        Self {
            language: "en-US",
            system: System::Us,
            left_out: Some("awning"),
            refused: None,
            broken: Some("gen-hours"),
            hurried: None,
            rehearsal: false,
            planned: true,
        }
    }
}

/// A plan as a clerk may make it.
pub const PLAN: &str = r#"(
    nights: 0, people: [], hook_up: [Power, None, None], use: Careful, coldest: "40 °F", bags: "250 lb",
    start: (propane: "3/4"), supply: Post("30 A"), on: [(load: "air-front"), (load: "tv")], fill: [4],
)"#;

/// A walk that is being led.
pub struct Led {
    pub walk: Walk,
    pub ways: Ways,
    speaker: Speaker<'static>,
    now: Timestamp,
}

pub fn measures(system: System) -> &'static str {
    match system {
        System::Us => "us",
        System::Uk => "uk",
        System::Metric => "metric",
    }
}

pub fn speaker(language: &str, system: System) -> Speaker<'static> {
    Speaker::new(&SCRIPTS, "wren", Reader::new(language, system)).unwrap()
}

impl Led {
    pub fn begin(ways: Ways) -> Self {
        let now: Timestamp = "2026-07-24T20:00:00Z".parse().unwrap();
        let event = Event::Began {
            walk: "t2-w-000123".into(),
            unit: "wren".into(),
            scripts: SCRIPTS.bundle.digest().into(),
            tablet: "t2".into(),
            rehearsal: ways.rehearsal,
            demo: true,
        };
        let walk = Walk::begin(route(), &Entry { at: now, offset_minutes: -360, event }).unwrap();
        let speaker = speaker(ways.language, ways.system);
        Self { walk, ways, speaker, now }
    }

    pub fn say_after(&mut self, seconds: i64, event: Event) {
        self.now = self.now.checked_add(SignedDuration::from_secs(seconds)).unwrap();
        let entry = Entry { at: self.now, offset_minutes: -360, event };
        self.walk.apply(&entry).unwrap_or_else(|refused| panic!("{refused}: {entry:?}"));
    }

    pub fn say(&mut self, event: Event) {
        self.say_after(20, event);
    }

    pub fn open(&mut self) {
        self.before_open();
        self.say(Event::Opened);
    }

    /// The opening, but for its end.
    pub fn before_open(&mut self) {
        let person = |id, name: &str, age, driver| Person { id, name: name.into(), age, driver };
        self.say(Event::AgentOn { code: "A7".into() });
        let (language, measures) = (self.ways.language.into(), measures(self.ways.system).into());
        self.say(Event::ReaderSet { language, measures });
        self.say(Event::PartySet {
            people: vec![
                person(ROBIN, "Robin Vale", 41, true),
                person(SAM, "Sam Vale", 39, true),
                person(PersonId(3), "", 8, false),
            ],
        });
        for person in [ROBIN, SAM] {
            let licence = Licence { class: "C".into(), country: "US".into(), expiry: date(2029, 5, 31) };
            self.say(Event::LicenceSeen { person, licence });
        }
        self.say(Event::PresentSet { people: vec![ROBIN, SAM] });
        self.say(Event::ExperienceSet { first_time: true });
        self.say(Event::TranslatorSet { role: String::new() });
        let due_back = LocalTime { local: date(2026, 7, 29).at(10, 0, 0, 0), offset_minutes: -360 };
        self.say(Event::BookingSet { reference: "MW-1042".into(), nights: 5, due_back });
        if self.ways.planned {
            self.say(plan(&trip(PLAN)));
        }
    }

    fn read(&mut self, id: &str, scale: &Scale) {
        let reading = id.to_owned();
        if self.ways.broken == Some(id) {
            let (reason, note) = (NotRead::Broken, "Display is dark.".into());
            return self.say(Event::ReadingNotTaken { reading, reason, note });
        }
        let (value, measure) = match scale {
            Scale::Number { measure, .. } if measure == "mi" => ("48213.4".to_owned(), measure.clone()),
            Scale::Number { measure, max, .. } => (max.to_string(), measure.clone()),
            Scale::Parts(parts) => (format!("{}/{parts}", parts - 1), String::new()),
            Scale::Choice(words) => (words[0].clone(), String::new()),
        };
        self.say(Event::ReadingTaken { reading, value, measure });
    }

    /// Answers a caution as it is on the page.
    pub fn answer(&mut self, caution: &route::Caution, by: PersonId) {
        let text = self.speaker.caution(caution);
        let shown = Shown { text: text.digest(), language: self.ways.language.into() };
        let (id, version) = (caution.id.clone(), caution.version);
        if self.ways.refused == Some(id.as_str()) && by == SAM {
            let (reason, decision) = ("Wants to read it at home first.".into(), Decision::HandOver);
            return self.say(Event::CautionRefused { caution: id, version, by, reason, decision, shown });
        }
        let how = match caution.ask {
            Ask::Read => Answer::Read,
            Ask::Demonstrate if !caution.demonstrations.is_empty() => Answer::Demonstrate,
            Ask::Hold | Ask::Demonstrate => Answer::Hold,
        };
        let looked_ms = if self.ways.hurried == Some(id.as_str()) { 900 } else { 60_000 };
        if how == Answer::Demonstrate {
            self.demonstrate(caution, by);
        }
        self.say(Event::CautionAnswered { caution: id, version, by, how, shown, looked_ms });
    }

    /// Does rightly what a caution asks to be demonstrated.
    fn demonstrate(&mut self, caution: &route::Caution, by: PersonId) {
        loop {
            let tried = {
                let Demonstrating::Due(due) = self.walk.demonstrating(caution, by) else { return };
                let answer = due.part.model_answer().unwrap();
                due.tried(&self.speaker, &caution.id, (by, answer), 9_000)
            };
            self.say(Event::DemonstrationTried(tried));
        }
    }

    /// Goes round the unit: shows, reads, counts, asks.
    pub fn round(&mut self) {
        let route = route();
        for step in &route.steps {
            let (id, language) = (step.id.clone(), self.ways.language.to_owned());
            let left_out = self.ways.left_out == Some(id.as_str());
            let event = if left_out {
                Event::StepNotShown {
                    step: id,
                    reason: NotShown::Weather,
                    note: "Gusts over the yard.".into(),
                }
            } else {
                Event::StepShown { step: id, language }
            };
            self.say_after(60, event);
            for reading in &step.readings {
                self.read(&reading.id, &reading.scale);
            }
            if step.kit {
                for item in &route.items {
                    let (tag, count, note) = (item.tag.clone(), item.count, String::new());
                    self.say(Event::ItemCounted { tag, count, note });
                }
            }
            for item in &step.leaving {
                self.say(Event::LeavingChecked { item: item.clone(), good: true });
            }
            for caution in &step.cautions {
                if left_out && caution.signal != Signal::Danger {
                    continue;
                }
                let refused = self.ways.refused == Some(caution.id.as_str());
                if caution.who == Answers::EachDriver || !refused {
                    self.answer(caution, ROBIN);
                }
                if caution.who == Answers::EachDriver || refused {
                    self.answer(caution, SAM);
                }
            }
        }
        let at = PlanPoint { x: 490, y: 2620 };
        let (kind, size, note) = (MarkKind::Scratch, MarkSize::Hand, "Above the bay door.".into());
        self.say(Event::MarkPlaced {
            mark: Mark { number: 1, at, kind, size, note, by: Who::Person(ROBIN) },
        });
        let (step, text) = ("keys".to_owned(), "What if we lose a key?".to_owned());
        self.say(Event::QuestionNoted { step, caution: None, text, answered: true });
    }

    pub fn consent(&mut self) {
        let (_, text) = consent_text(&self.speaker);
        let shown = Shown { text, language: self.ways.language.into() };
        self.say(Event::ConsentAnswered { by: ROBIN, given: true, shown });
    }

    pub fn sign(&mut self) {
        for by in [Who::Person(ROBIN), Who::Person(SAM), Who::Agent] {
            self.say(Event::Signed { by, ink: ink() });
        }
        self.say(Event::CopyOffered);
        self.say(Event::CopyChosen { choice: CopyChoice::Slip });
    }

    pub fn begin_seal(&mut self) {
        self.say(Event::SealBegun { number: NUMBER, previous: Some(previous().to_string()) });
    }

    /// The whole walk, up to its seal.
    pub fn whole(ways: Ways) -> Self {
        let mut led = Self::begin(ways);
        led.open();
        led.round();
        led.consent();
        led.sign();
        led.begin_seal();
        led
    }

    pub fn kind(&self) -> Kind {
        match (self.ways.rehearsal, self.walk.stopped()) {
            (true, _) => Kind::Rehearsal,
            (false, None) => Kind::Handoff,
            (false, Some(_)) => Kind::NotHandedOver,
        }
    }

    pub fn contents(&self) -> Result<Contents, BuildFault> {
        build(&self.walk, &SCRIPTS, &head(self.kind()))
    }

    /// `record.json` and `record.txt`.
    pub fn files(&self) -> (Vec<u8>, String) {
        let mut contents = self.contents().unwrap();
        let text = contents.payload.remove("data/record.txt").unwrap();
        (contents.payload.remove("data/record.json").unwrap(), String::from_utf8(text).unwrap())
    }

    pub fn record(&self) -> Handoff {
        match read(&self.files().0).unwrap() {
            Record::Handoff(record) => *record,
            other => panic!("{other:?}"),
        }
    }

    /// Whether a step stands as shown.
    pub fn shown(&self, step: &str) -> bool {
        matches!(self.walk.step_state(step), StepState::Shown { .. })
    }
}

/// Digest of the record before.
pub fn previous() -> Digest {
    Digest::of(b"the record before")
}

/// What the record carries on its outside: tablet t2 with the key of the other record tests.
pub fn head(kind: Kind) -> SealingHead {
    SealingHead {
        id: record_id("t2", crate::seal::t2().public(), NUMBER).to_string(),
        tablet: "t2".into(),
        number: NUMBER,
        previous: Some(previous()),
        sealed: "2026-07-24T22:10:00Z".parse().unwrap(),
        kind,
    }
}
