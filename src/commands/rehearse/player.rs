//! Plays actions as events of a walk, on a clock of its own.

use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

use jiff::{SignedDuration, Timestamp};

use crate::journal::{Keeper, ProposeFault};
use crate::measure::{Measure, System};
use crate::ports::Clock;
use crate::record::text::consent_text;
use crate::script::{Scripts, Speaker};
use crate::tablet::{Finished, SealStop, Tablet, TabletFault};
use crate::walk::{
    Answer, Demonstrating, Event, Helped, Licence, LocalTime, Mark, Person, PersonId, PlanPoint, Shown, Walk,
    Who,
};
use crate::words::Reader;

use super::action::{Action, By};
use super::plausible;

/// How long a try takes, in milliseconds.
const DEMONSTRATION_MS: u32 = 25_000;

/// Why playing stopped.
#[derive(Debug, thiserror::Error)]
pub enum PlayFault {
    /// The tablet cannot work.
    #[error(transparent)]
    Tablet(#[from] TabletFault),
    /// An action could not be done.
    #[error("action {number}, {action}: {why}")]
    Action {
        /// Number of the action, from 1.
        number: usize,
        /// The action.
        action: String,
        /// Why.
        why: String,
    },
    /// The walk could not be sealed.
    #[error(transparent)]
    Seal(#[from] SealStop),
    /// The folder belongs to a real tablet.
    #[error("{} is the data folder of a tablet; rehearse in a folder of its own", .0.display())]
    NotForRehearsal(PathBuf),
    /// The unit's words cannot be said.
    #[error("the lot has no unit `{0}`")]
    NoUnit(String),
}

/// A clock that moves only when it is told to.
#[derive(Debug, Clone)]
pub struct PlayClock(Arc<Mutex<Timestamp>>);

#[derive(Debug)]
struct Port(PlayClock);

impl Clock for Port {
    fn now(&self) -> Timestamp {
        self.0.now()
    }
}

impl PlayClock {
    /// A clock that stands at `start`.
    #[must_use]
    pub fn new(start: Timestamp) -> Self {
        Self(Arc::new(Mutex::new(start)))
    }

    /// The same clock as a port.
    #[must_use]
    pub fn port(&self) -> Arc<dyn Clock> {
        Arc::new(Port(self.clone()))
    }

    /// Where it stands.
    #[must_use]
    pub fn now(&self) -> Timestamp {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Moves it on.
    pub fn pass(&self, milliseconds: i64) {
        let mut now = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        *now = now.checked_add(SignedDuration::from_millis(milliseconds)).unwrap_or(*now);
    }
}

/// Leads one walk by a list of actions.
#[derive(Debug)]
pub struct Player<'a> {
    tablet: &'a Tablet,
    scripts: &'a Scripts,
    unit: String,
    keeper: Keeper,
    clock: PlayClock,
}

impl<'a> Player<'a> {
    /// Begins a rehearsal of a unit.
    ///
    /// # Errors
    /// No such unit, or the disk refuses.
    pub fn begin(
        tablet: &'a Tablet,
        scripts: &'a Scripts,
        unit: &str,
        clock: PlayClock,
    ) -> Result<Self, PlayFault> {
        let keeper = tablet.begin(scripts, unit, true)?;
        Ok(Self { tablet, scripts, unit: unit.to_owned(), keeper, clock })
    }

    /// The walk as it stands.
    #[must_use]
    pub fn walk(&self) -> &Walk {
        self.keeper.walk()
    }

    /// Plays actions in order; gives the sealed record when they end with it.
    ///
    /// # Errors
    /// An action is refused: it says which and why.
    pub fn play(&mut self, actions: &[Action]) -> Result<Option<Finished>, PlayFault> {
        for (index, action) in actions.iter().enumerate() {
            let done = match action {
                Action::Seal => return Ok(Some(self.tablet.seal(&mut self.keeper, self.scripts)?)),
                Action::Rest => self.rest(),
                other => self.one(other),
            };
            done.map_err(|why| PlayFault::Action { number: index + 1, action: format!("{action:?}"), why })?;
        }
        Ok(None)
    }

    /// Does everything that is still missing for handing over, in the order of the route.
    fn rest(&mut self) -> Result<(), String> {
        for action in plausible::opening(self.walk()) {
            self.one(&action)?;
        }
        let stops = self.walk().route().stops.clone();
        for stop in stops {
            for action in plausible::stop(self.walk(), self.scripts, &stop) {
                self.one(&action)?;
            }
        }
        for action in plausible::closing(self.walk()) {
            self.one(&action)?;
        }
        Ok(())
    }

    fn propose(&mut self, milliseconds: i64, event: Event) -> Result<(), String> {
        self.clock.pass(milliseconds);
        let entry = self.tablet.entry(self.scripts, event);
        self.keeper.propose(&entry).map_err(|fault: ProposeFault| fault.to_string())
    }

    fn speaker(&self) -> Result<Speaker<'a>, String> {
        let reader = self.walk().reader().map_or_else(Reader::default, |r| {
            let system = match r.value.measures.as_str() {
                "metric" => System::Metric,
                "uk" => System::Uk,
                _ => System::Us,
            };
            Reader::new(&r.value.language, system)
        });
        Speaker::new(self.scripts, &self.unit, reader)
            .map(|speaker| speaker.with_trip(self.walk().trip()))
            .ok_or_else(|| PlayFault::NoUnit(self.unit.clone()).to_string())
    }

    fn language(&self) -> String {
        self.walk().reader().map_or_else(|| Reader::default().lang, |r| r.value.language.clone())
    }

    /// The words of a caution as they are on its page, its version, and how long they take to read.
    fn shown(&self, caution: &str) -> Result<(Shown, u16, u32), String> {
        let speaker = self.speaker()?;
        let (_, found) = self
            .walk()
            .route()
            .caution(caution)
            .ok_or_else(|| format!("the route has no caution `{caution}`"))?;
        let text = speaker.caution(found);
        let words = [&text.hazard, &text.harm, &text.avoid]
            .iter()
            .map(|t| t.split_whitespace().count())
            .sum::<usize>();
        // A third of a second a word: 180 words a minute.
        let looked = u32::try_from(words).unwrap_or(0).saturating_mul(334).saturating_add(1_500);
        Ok((Shown { text: text.digest(), language: speaker.reader().lang.clone() }, found.version, looked))
    }

    fn one(&mut self, action: &Action) -> Result<(), String> {
        match action {
            Action::Wait(time) => {
                let seconds = time.quantity().to(Measure::Second).unwrap_or(0.0);
                let whole = crate::measure::rounded(seconds * 1000.0, 0, crate::measure::Rounding::Up);
                self.clock.pass(whole.and_then(|m| i64::try_from(m).ok()).unwrap_or(0));
                Ok(())
            }
            Action::Answer { caution, by, how } => {
                if *how == Answer::Demonstrate {
                    self.demonstrate(caution, PersonId(*by))?;
                }
                let (shown, version, looked_ms) = self.shown(caution)?;
                let event = Event::CautionAnswered {
                    caution: caution.clone(),
                    version,
                    by: PersonId(*by),
                    how: *how,
                    shown,
                    looked_ms,
                };
                self.propose(i64::from(looked_ms), event)
            }
            Action::Refuse { caution, by, reason, decision } => {
                let (shown, version, _) = self.shown(caution)?;
                let event = Event::CautionRefused {
                    caution: caution.clone(),
                    version,
                    by: PersonId(*by),
                    reason: reason.clone(),
                    decision: *decision,
                    shown,
                };
                self.propose(20_000, event)
            }
            Action::Consent { by, given } => {
                let speaker = self.speaker()?;
                let (_, text) = consent_text(&speaker);
                let shown = Shown { text, language: speaker.reader().lang.clone() };
                self.propose(30_000, Event::ConsentAnswered { by: PersonId(*by), given: *given, shown })
            }
            Action::Show(step) => {
                let minutes = self.walk().route().step(step).map_or(1, |s| i64::from(s.minutes));
                let event = Event::StepShown { step: step.clone(), language: self.language() };
                self.propose(minutes * 45_000, event)
            }
            other => {
                let event = self.plain(other)?;
                self.propose(8_000, event)
            }
        }
    }

    /// Does every part of the demonstrations of a caution. The first try of the walk is a wrong one, so that a
    /// record shows what becomes of it.
    fn demonstrate(&mut self, caution: &str, by: PersonId) -> Result<(), String> {
        loop {
            let speaker = self.speaker()?;
            let walk = self.walk();
            let Some((_, found)) = walk.route().caution(caution) else { return Ok(()) };
            let event = match walk.demonstrating(found, by) {
                Demonstrating::None | Demonstrating::Passed => return Ok(()),
                Demonstrating::Help(due) => Event::DemonstrationHelped(Helped {
                    caution: caution.to_owned(),
                    demonstration: due.demonstration.id.clone(),
                    part: due.part.id.clone(),
                    person: by,
                }),
                Demonstrating::Due(due) => {
                    let all = walk.route().steps.iter().flat_map(|s| &s.cautions);
                    let first = all.into_iter().all(|c| walk.attempts(&c.id).is_empty());
                    let wrong = due.part.wrong_answer().filter(|_| first);
                    let answer = wrong
                        .or_else(|| due.part.model_answer())
                        .ok_or_else(|| format!("`{}` has no right answer", due.part.id))?;
                    Event::DemonstrationTried(due.tried(&speaker, caution, (by, answer), DEMONSTRATION_MS))
                }
            };
            self.propose(i64::from(DEMONSTRATION_MS), event)?;
        }
    }

    /// Actions that are one event each, without words of a page.
    fn plain(&self, action: &Action) -> Result<Event, String> {
        Ok(match action {
            Action::Agent(code) => Event::AgentOn { code: code.clone() },
            Action::Reader { language, measures } => {
                Event::ReaderSet { language: language.clone(), measures: measures.clone() }
            }
            Action::Party(people) => Event::PartySet {
                people: (1..)
                    .zip(people)
                    .map(|(id, p)| Person {
                        id: PersonId(id),
                        name: p.name.clone(),
                        age: p.age,
                        driver: p.driver,
                    })
                    .collect(),
            },
            Action::Licence { person, class, country, expiry } => Event::LicenceSeen {
                person: PersonId(*person),
                licence: Licence {
                    class: class.clone(),
                    country: country.clone(),
                    expiry: expiry
                        .parse()
                        .map_err(|e| format!("`{expiry}` is no date ({e}); write 2030-05-01"))?,
                },
            },
            Action::Present(people) => {
                Event::PresentSet { people: people.iter().copied().map(PersonId).collect() }
            }
            Action::FirstTime(first_time) => Event::ExperienceSet { first_time: *first_time },
            Action::Translator(role) => Event::TranslatorSet { role: role.clone() },
            Action::Booking { reference, nights, due_back } => {
                let local = due_back
                    .parse()
                    .map_err(|e| format!("`{due_back}` is no time ({e}); write 2026-07-29T10:00"))?;
                let offset_minutes = self.scripts.offset_minutes(self.clock.now());
                let due_back = LocalTime { local, offset_minutes };
                Event::BookingSet { reference: reference.clone(), nights: *nights, due_back }
            }
            Action::Trip(trip) => Event::TripPlanned { trip: trip.clone() },
            Action::Open => Event::Opened,
            other => return self.on_the_way(other),
        })
    }

    /// As [`Player::plain`], for what happens after the opening.
    fn on_the_way(&self, action: &Action) -> Result<Event, String> {
        Ok(match action {
            Action::NotShown { step, reason, note } => {
                Event::StepNotShown { step: step.clone(), reason: *reason, note: note.clone() }
            }
            Action::Question { step, caution, text, answered } => Event::QuestionNoted {
                step: step.clone(),
                caution: caution.clone(),
                text: text.clone(),
                answered: *answered,
            },
            Action::Read { reading, value } => Event::ReadingTaken {
                reading: reading.clone(),
                value: value.clone(),
                measure: plausible::measure_of(self.walk(), reading),
            },
            Action::NotRead { reading, reason, note } => {
                Event::ReadingNotTaken { reading: reading.clone(), reason: *reason, note: note.clone() }
            }
            Action::Count { tag, count, note } => {
                Event::ItemCounted { tag: tag.clone(), count: *count, note: note.clone() }
            }
            Action::Mark { x, y, kind, size, note, by } => Event::MarkPlaced {
                mark: Mark {
                    number: self.walk().next_mark().ok_or("there is no room for another mark")?,
                    at: PlanPoint { x: tenths(x)?, y: tenths(y)? },
                    kind: *kind,
                    size: *size,
                    note: note.clone(),
                    by: who(*by),
                },
            },
            Action::Leaving { item, good } => Event::LeavingChecked { item: item.clone(), good: *good },
            Action::Sign(by) => Event::Signed { by: who(*by), ink: plausible::ink(*by) },
            Action::RefuseToSign { by, reason, decision } => {
                Event::SignatureRefused { by: PersonId(*by), reason: reason.clone(), decision: *decision }
            }
            Action::OfferCopy => Event::CopyOffered,
            Action::Copy(choice) => Event::CopyChosen { choice: *choice },
            Action::Stop(reason) => Event::HandoverStopped { reason: reason.clone(), by: Who::Agent },
            _ => return Err("this action is no single event".to_owned()),
        })
    }
}

fn who(by: By) -> Who {
    match by {
        By::Agent => Who::Agent,
        By::Person(id) => Who::Person(PersonId(id)),
    }
}

/// A length in tenths of an inch, to the nearest.
fn tenths(length: &crate::measure::Length) -> Result<i32, String> {
    length
        .quantity()
        .to(Measure::Inch)
        .and_then(|inches| crate::measure::rounded(inches * 10.0, 0, crate::measure::Rounding::Nearest))
        .and_then(|n| i32::try_from(n).ok())
        .ok_or_else(|| format!("`{length}` is no place on the plan"))
}
