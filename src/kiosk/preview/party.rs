//! Who is led round the unit in a preview: invented people, readings and ink.

use jiff::{SignedDuration, Timestamp};
use rust_decimal::Decimal;

use crate::measure::Measure;
use crate::record::text::consent_text;
use crate::route::{Reading, Scale, Step};
use crate::script::{Scripts, Speaker};
use crate::walk::{Event, Ink, Licence, LocalTime, Person, PersonId, Shown, Walk, Who};

/// Nights of the trip.
const NIGHTS: u16 = 5;
/// The two who travel; both drive.
pub(super) const PARTY: [(PersonId, &str, u8); 2] = [(ROBIN, "Robin Vale", 41), (SAM, "Sam Vale", 39)];
pub(super) const ROBIN: PersonId = PersonId(1);
pub(super) const SAM: PersonId = PersonId(2);

/// Everything the opening asks for.
pub(super) fn opening(scripts: &Scripts, now: Timestamp, language: &str, measures: &str) -> Vec<Event> {
    let ahead = |days: i64| now.checked_add(SignedDuration::from_hours(24 * days)).unwrap_or(now);
    let offset_minutes = scripts.offset_minutes(ahead(i64::from(NIGHTS)));
    let day = |at: Timestamp| jiff::tz::Offset::UTC.to_datetime(at).date();
    let due_back = LocalTime { local: day(ahead(i64::from(NIGHTS))).at(10, 0, 0, 0), offset_minutes };
    let licence = || Licence { class: "C".to_owned(), country: "Norway".to_owned(), expiry: day(ahead(700)) };
    let people = PARTY.map(|(id, name, age)| Person { id, name: name.to_owned(), age, driver: true });
    let seen = PARTY.map(|(person, ..)| Event::LicenceSeen { person, licence: licence() });
    let mut events = vec![
        Event::AgentOn { code: "JM".to_owned() },
        Event::ReaderSet { language: language.to_owned(), measures: measures.to_owned() },
        Event::BookingSet { reference: "Q-1183".to_owned(), nights: NIGHTS, due_back },
        Event::PartySet { people: people.into() },
    ];
    events.extend(seen);
    events.push(Event::PresentSet { people: PARTY.map(|(id, ..)| id).into() });
    events.push(Event::ExperienceSet { first_time: true });
    events.push(Event::TranslatorSet { role: String::new() });
    events
}

/// Everything a step asks for.
pub(super) fn step(scripts: &Scripts, walk: &Walk, step: &Step, language: &str) -> Vec<Event> {
    let mut events = vec![Event::StepShown { step: step.id.clone(), language: language.to_owned() }];
    for reading in &step.readings {
        let (value, measure) = value(scripts, walk, reading);
        events.push(Event::ReadingTaken { reading: reading.id.clone(), value, measure });
    }
    if step.kit {
        events.extend(walk.route().items.iter().map(|item| Event::ItemCounted {
            tag: item.tag.clone(),
            count: item.count,
            note: String::new(),
        }));
    }
    events.extend(step.leaving.iter().map(|item| Event::LeavingChecked { item: item.clone(), good: true }));
    events
}

/// The consent of the first of the party.
pub(super) fn consent(speaker: &Speaker<'_>) -> Event {
    let (_, text) = consent_text(speaker);
    let shown = Shown { text, language: speaker.reader().lang.clone() };
    Event::ConsentAnswered { by: PersonId(1), given: true, shown }
}

/// All signatures.
pub(super) fn signatures() -> Vec<Event> {
    let people = PARTY.iter().map(|(id, ..)| Who::Person(*id));
    people.chain([Who::Agent]).map(|by| Event::Signed { by, ink: ink() }).collect()
}

/// A wave.
pub(super) fn ink() -> Ink {
    let wave = |i: i16| (120 + i * 18, 150 + (i * 31) % 90 - 45);
    Ink { height: 300, strokes: vec![(0..36).map(wave).collect()] }
}

/// A value within the range, and its measure: for tires what the sheet says.
fn value(scripts: &Scripts, walk: &Walk, reading: &Reading) -> (String, String) {
    let id = reading.id.as_str();
    match &reading.scale {
        // Waste tanks go out empty.
        Scale::Parts(parts) if matches!(id, "grey" | "grey-galley" | "black") => {
            (format!("0/{parts}"), String::new())
        }
        Scale::Parts(parts) => (format!("{}/{parts}", parts.saturating_sub(1)), String::new()),
        Scale::Choice(words) => (words.first().cloned().unwrap_or_default(), String::new()),
        Scale::Number { measure, step, min, max, .. } => {
            let third = *min + (*max - *min) / Decimal::from(3);
            let wanted = match measure.as_str() {
                "mi" => Decimal::from(48_213),
                "h" => Decimal::from(612),
                // A lead-acid battery that is full and has rested.
                "V" => Decimal::new(127, 1),
                "psi" => cold(scripts, walk, id).unwrap_or(third),
                _ => third,
            };
            let least = reading.bounds.least.unwrap_or(*min);
            let most = reading.bounds.most.unwrap_or(*max);
            let steps = (wanted.max(least).min(most) / *step).floor();
            ((steps * *step).normalize().to_string(), measure.clone())
        }
    }
}

/// Cold pressure of the axle a tire reading belongs to, in psi.
fn cold(scripts: &Scripts, walk: &Walk, id: &str) -> Option<Decimal> {
    let sheet = &scripts.units.get(&walk.route().unit)?.value;
    let axle = sheet.axles.iter().find(|a| id.contains(a.at.word()))?;
    let psi = axle.cold.quantity().to(Measure::Psi)?;
    crate::measure::rounded(psi, 0, crate::measure::Rounding::Nearest)
}
