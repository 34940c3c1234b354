//! What came of a handoff, in a few lines.

use iced::Length;
use iced::widget::{container, row};

use super::Message;
use crate::kiosk::context::Ctx;
use crate::kiosk::office::Held;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element, Symbol};
use crate::record::form::{AnswerState, Handoff, Record, SignatureDone, StepOutcome};
use crate::words::{Args, format};

/// The lines; none for a record that is no handoff.
pub(super) fn of<'a>(ctx: &Ctx<'a>, held: &'a Held) -> Option<Vec<Element<'a, Message>>> {
    let Some(Record::Handoff(record)) = &held.record else { return None };
    let names: Vec<String> = record.party.people.iter().map(|person| person.name.clone()).collect();
    let names: Vec<String> = names.into_iter().filter(|name| !name.is_empty()).collect();
    let unit = if record.unit.name.is_empty() { &record.unit.id } else { &record.unit.name };
    let list = |items: &[String]| format::list(&ctx.scripts.words, &ctx.settings.staff, items);
    let agents: Vec<String> = record.agents.iter().map(|agent| agent.code.clone()).collect();
    let mut lines = vec![
        plain(ctx, "office-brief-who", list(&names)),
        plain(ctx, "office-brief-unit", unit.clone()),
        plain(ctx, "office-brief-agents", list(&agents)),
    ];
    if let Some(booking) = &record.opening.booking {
        lines.insert(2, plain(ctx, "office-brief-booking", booking.reference.clone()));
    }
    lines.extend(counts(ctx, record));
    Some(lines)
}

fn plain<'a>(ctx: &Ctx<'a>, key: &str, value: String) -> Element<'a, Message> {
    super::details::fact(ctx, ctx.say(key), value)
}

fn counts<'a>(ctx: &Ctx<'a>, record: &Handoff) -> Vec<Element<'a, Message>> {
    let steps = &record.route.steps;
    let shown = steps.iter().filter(|step| matches!(step.outcome, StepOutcome::Shown { .. })).count();
    let cautions = || steps.iter().flat_map(|step| &step.cautions);
    let due = cautions().filter(|caution| caution.state != AnswerState::NotDue).count();
    let answered = cautions().filter(|caution| caution.state == AnswerState::Answered).count();
    let lent = record.items.iter().filter(|item| item.counted.as_ref().is_some_and(|c| c.count > 0)).count();
    let signed = record.signatures.iter().filter(|s| matches!(s.done, SignatureDone::Signed { .. })).count();
    let read = record.readings.len();
    let number = |count: usize| u64::try_from(count).unwrap_or(u64::MAX);
    let line = |good: bool, key: &str, done: usize, all: usize| {
        let args = Args::new().number("done", number(done)).number("all", number(all));
        signed_line(ctx, good, ctx.say_with(key, &args))
    };
    let mut lines = vec![
        line(shown == steps.len(), "office-brief-shown", shown, steps.len()),
        line(answered == due, "office-brief-cautions", answered, due),
    ];
    let refused = record.refusals.len();
    if refused > 0 {
        lines.push(line(false, "office-brief-refused", refused, refused));
    }
    lines.push(line(true, "office-brief-readings", read, read));
    lines.push(line(true, "office-brief-lent", lent, lent));
    lines.push(line(signed > 0, "office-brief-signed", signed, signed));
    lines
}

/// A line with a sign of whether all is as it should be.
fn signed_line<'a>(ctx: &Ctx<'a>, good: bool, words: String) -> Element<'a, Message> {
    let look = &ctx.look;
    let sign = if good { Symbol::Tick } else { Symbol::Alert };
    let words = if good { ui::body(look, words) } else { ui::strong(look, words) };
    row![ui::symbol(look, sign, 24.0), container(words).width(Length::Fill)]
        .spacing(look.gap(Gap::Small))
        .align_y(iced::Alignment::Center)
        .into()
}
