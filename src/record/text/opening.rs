//! Title, refusals, what was not shown, party, unit.

use super::page::Page;
use crate::measure::Quantity;
use crate::record::form::{
    AnswerState, Caution, Decision, Durations, FactValue, Handoff, Outcome, Person, Refusal, Step,
    StepOutcome,
};
use crate::unit::rounding_of;
use crate::words::Args;
use crate::words::format::{self, Places};

/// Facts that stand in the section of the unit.
const MEASURES: [&str; 6] =
    ["size.length", "size.height", "size.mirrors", "weight.gvwr", "weight.occc", "weight.ccc"];

pub(super) fn title(page: &mut Page<'_>, record: &Handoff) {
    page.rule('=');
    let key = match record.outcome {
        Outcome::NotHandedOver { .. } => "record-title-not-handed-over",
        Outcome::HandedOver { .. } | Outcome::Unknown => "record-title-handoff",
    };
    let title = page.say(key);
    page.para(0, &title);
    page.para(0, &format!("{}, {}", record.lot.name, record.lot.place));
    page.notice();
    page.rule('=');
    let head = &record.head;
    page.field("record-id", &head.id.to_string());
    let unit = &record.unit;
    let kind = page.say_or(&format!("kind-{}", unit.kind), &unit.kind);
    page.field("record-unit", &format!("{} ({}), {kind}, {}", unit.name, unit.code, unit.year));
    outcome(page, &record.outcome);
    other_walks(page, record);
    page.field("record-sealed", &page.time_with_offset(head.sealed));
    page.field("record-began", &page.time(&record.walk.began));
    let previous = head.previous.map_or_else(|| page.say("record-first"), |digest| digest.to_string());
    page.field("record-previous", &previous);
    page.field("record-scripts", &record.scripts.to_string());
    let reader = &record.reader;
    let measures = page.say_or(&format!("record-measures-{}", reader.measures), &reader.measures);
    page.field("record-language", &format!("{}, {measures}", reader.language));
    page.field("record-program", &format!("{} {}", record.program.name, record.program.version));
    page.blank();
    let text = page.say("record-times");
    page.para(2, &text);
    if record.walk.clock_steps_back > 0 {
        let args = Args::new().number("count", record.walk.clock_steps_back);
        let text = page.say_with("record-clock", &args);
        page.para(2, &text);
    }
    for jump in &record.walk.clock_jumps {
        let args = Args::new().text("from", page.time_utc(jump.from)).text("to", page.time_utc(jump.to));
        let text = page.say_with("record-clock-jump", &args);
        page.para(2, &text);
    }
    if let Some(took) = record.walk.durations {
        durations(page, took);
    }
}

/// How long it took, and how long the renter had the tablet. Whole minutes, from half of one on rounded up.
fn durations(page: &mut Page<'_>, took: Durations) {
    let minutes = |page: &Page<'_>, seconds: u32| page.minutes((seconds.saturating_add(30)) / 60);
    let args = Args::new()
        .text("worked", minutes(page, took.worked_s))
        .text("opening", minutes(page, took.opening_s))
        .text("closing", minutes(page, took.closing_s))
        .text("renter", minutes(page, took.with_renter_s))
        .number("count", took.hand_overs);
    let text = page.say_with("record-took", &args);
    page.para(2, &text);
    if took.paused_s > 0 {
        let text = page.say_with("record-paused", &Args::new().text("paused", minutes(page, took.paused_s)));
        page.para(2, &text);
    }
}

/// The walks for other units that this one came of, or became.
fn other_walks(page: &mut Page<'_>, record: &Handoff) {
    for (key, other) in [("record-swapped", &record.swapped), ("record-follows", &record.follows)] {
        let Some(other) = other else { continue };
        let args = Args::new()
            .text("unit", page.say_or(&format!("unit-{}", other.unit), &other.unit))
            .text("walk", other.walk.as_str())
            .text("time", page.time(&other.at));
        let text = page.say_with("record-other-walk", &args);
        page.field(key, &text);
    }
}

fn outcome(page: &mut Page<'_>, outcome: &Outcome) {
    match outcome {
        Outcome::HandedOver { .. } => page.field("record-outcome", &page.say("record-handed-over")),
        Outcome::NotHandedOver { reason, by, at } => {
            let args = Args::new().text("who", page.who(*by, at)).text("time", page.time(at));
            page.field("record-outcome", &page.say_with("record-not-handed-over", &args));
            page.field("record-reason", reason);
        }
        Outcome::Unknown => page.field("record-outcome", &page.say("record-unknown")),
    }
}

pub(super) fn decision(page: &Page<'_>, decision: Decision) -> String {
    page.say(&format!("record-decision-{}", decision.as_str()))
}

/// All cautions of the route with their steps.
fn cautions(record: &Handoff) -> impl Iterator<Item = (&Step, &Caution)> {
    record.route.steps.iter().flat_map(|step| step.cautions.iter().map(move |caution| (step, caution)))
}

pub(super) fn refusals(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-refusals");
    if record.refusals.is_empty() {
        let text = page.say("record-refusals-none");
        page.para(2, &text);
    }
    for refusal in &record.refusals {
        let (what, by, reason, decided, at) = match refusal {
            Refusal::Caution { caution, by, reason, decision, at, .. } => {
                let title = cautions(record).find(|(_, c)| c.id == *caution);
                let title = title.map_or_else(|| caution.clone(), |(_, c)| c.title.clone());
                let args = Args::new().text("title", title).text("id", caution.as_str());
                (page.say_with("record-refused-caution", &args), by, reason, decision, at)
            }
            Refusal::Signature { by, reason, decision, at } => {
                (page.say("record-refused-signature"), by, reason, decision, at)
            }
            Refusal::Unknown => continue,
        };
        page.hang(2, "* ", &what);
        let args = Args::new().text("who", page.person(*by)).text("time", page.time(at));
        let text = page.say_with("record-refused-by", &args);
        page.para(4, &text);
        let text = page.say_with("record-refused-reason", &Args::new().text("reason", reason.as_str()));
        page.para(4, &text);
        let text = decision(page, *decided);
        page.para(4, &text);
    }
}

/// Steps not shown and cautions not answered.
pub(super) fn not_shown(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-not-shown");
    let mut any = false;
    for step in &record.route.steps {
        let why = match &step.outcome {
            StepOutcome::NotShown { reason, note, at } => {
                let reason = page.say(&format!("record-why-{}", reason.as_str()));
                let args = Args::new().text("reason", reason).text("time", page.time(at));
                let text = page.say_with("record-left-out", &args);
                if note.is_empty() { text } else { format!("{text} {note}") }
            }
            StepOutcome::Open => page.say("record-not-reached"),
            StepOutcome::Shown { .. } | StepOutcome::Unknown => continue,
        };
        any = true;
        page.hang(2, "* ", &step.title);
        page.para(4, &why);
        for caution in step.cautions.iter().filter(|caution| caution.state == AnswerState::NotDue) {
            let text =
                page.say_with("record-caution-not-due", &Args::new().text("title", caution.title.as_str()));
            page.para(4, &text);
        }
    }
    for (step, caution) in cautions(record).filter(|(_, caution)| caution.state == AnswerState::Waiting) {
        any = true;
        let args = Args::new().text("title", caution.title.as_str()).text("step", step.title.as_str());
        let text = page.say_with("record-caution-waiting", &args);
        page.hang(2, "* ", &text);
    }
    if !any {
        let text = page.say("record-not-shown-none");
        page.para(2, &text);
    }
}

pub(super) fn party(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-party");
    for person in &record.party.people {
        party_line(page, person);
    }
    for earlier in &record.party.earlier {
        let person = |m: &crate::record::form::Member| {
            let name = if m.name.is_empty() { page.person(m.number) } else { m.name.clone() };
            let args = Args::new().text("name", name).text("age", m.age.to_string());
            page.say_with(if m.driver { "record-earlier-driver" } else { "record-earlier-person" }, &args)
        };
        let people: Vec<String> = earlier.people.iter().map(person).collect();
        let people = format::list(page.words, &page.reader, &people);
        let args = Args::new().text("time", page.time(&earlier.at)).text("people", people);
        let text = page.say_with("record-earlier-party", &args);
        page.para(2, &text);
    }
    let opening = &record.opening;
    if let Some(told) = &opening.first_time {
        let value = page.say(if told.value { "record-first-time-yes" } else { "record-first-time-no" });
        page.field("record-first-time", &value);
    }
    if let Some(told) = &opening.translator {
        let value = if told.value.is_empty() { page.say("record-nobody") } else { told.value.clone() };
        page.field("record-translator", &value);
    }
    if let Some(booking) = &opening.booking {
        if !booking.reference.is_empty() {
            page.field("record-booking", &booking.reference);
        }
        page.field("record-nights", &page.count(booking.nights));
        let due = &booking.due_back;
        let offset = jiff::tz::Offset::from_seconds(i32::from(due.offset_minutes) * 60);
        let offset = offset.unwrap_or(jiff::tz::Offset::UTC);
        let text = format::date_time_with_offset(page.words, &page.reader, due.local, offset);
        page.field("record-due-back", &text);
    }
    for agent in &record.agents {
        let args = Args::new().text("code", agent.code.as_str()).text("time", page.time(&agent.at));
        let text = page.say_with("record-agent-since", &args);
        page.field("record-agent", &text);
    }
}

fn party_line(page: &mut Page<'_>, person: &Person) {
    let args = Args::new().text("name", page.person(person.number)).text("age", person.age.to_string());
    let text = page.say_with("record-party-line", &args);
    let role = page.say(if person.driver { "record-driver" } else { "record-passenger" });
    let there = page.say(if person.present { "record-present" } else { "record-absent" });
    page.hang(2, "* ", &format!("{text}, {role}, {there}"));
    if let Some(licence) = &person.licence {
        let args = Args::new()
            .text("class", licence.class.as_str())
            .text("country", licence.country.as_str())
            .text("expiry", format::date(page.words, &page.reader, licence.expiry))
            .text("time", page.time(&licence.at));
        let text = page.say_with("record-licence", &args);
        page.para(4, &text);
    }
}

pub(super) fn unit(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-unit-section");
    page.field("record-unit", &format!("{} ({})", record.unit.name, record.unit.code));
    for name in MEASURES {
        let fact = record.facts.iter().find(|fact| fact.name == name).map(|fact| &fact.value);
        let Some(FactValue::Quantity { value, .. }) = fact else { continue };
        let text = Quantity::parse(value).map_or_else(
            |_| value.clone(),
            |q| format::quantity(page.words, &page.reader, &q, rounding_of(name), Places::AsWritten),
        );
        page.field(&format!("record-fact-{}", name.replace('.', "-")), &text);
    }
    for change in &record.unit.changes {
        use crate::record::form::Change;
        if let Change::Drop { says, .. } | Change::Note { says, .. } | Change::Fault { says, .. } = change {
            page.hang(2, "* ", says);
        }
    }
}
