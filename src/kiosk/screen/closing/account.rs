//! What was done, in lines: shown, not shown, answered, asked, read, marked. And what was refused.

use super::Show;
use crate::measure::Quantity;
use crate::route::{Off, Reading, Scale};
use crate::unit::rounding_of;
use crate::walk::{
    Decision, Mark, MarkKind, MarkSize, NotRead, NotShown, PersonId, ReadingState, Response, Signature,
    StepState, Tally, Who,
};
use crate::words::Args;
use crate::words::format::{self, Places};

/// A part of the account: its title and its lines, left and right.
pub(super) struct Part {
    pub title: String,
    pub lines: Vec<(String, String)>,
}

/// Refusals to confirm and to sign: what, and what the agent decided.
pub(super) fn refusals(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let walk = &show.hall.walk;
    let line = |by: PersonId, what: String, reason: &str, decision: Decision| {
        let args = Args::new().text("name", show.name(by)).text("what", what).text("reason", reason);
        let decided = show.say(match decision {
            Decision::HandOver => "take-handed-over",
            Decision::KeepUnit => "take-kept",
        });
        (show.say_with("take-refused-line", args), decided)
    };
    let mut lines = Vec::new();
    for (caution, by, said) in walk.refusals() {
        if let Response::Refused { reason, decision, .. } = &said.value {
            lines.push(line(by, show.speaker.caution(caution).title, reason, *decision));
        }
    }
    for (who, signature) in walk.signatures() {
        if let (Who::Person(by), Signature::Refused { reason, decision }) = (who, &signature.value) {
            lines.push(line(*by, show.say("sign-refuse"), reason, *decision));
        }
    }
    lines
}

/// What was done today, in parts.
pub(super) fn happened(show: &Show<'_, '_>) -> Vec<Part> {
    let mut parts = vec![done(show)];
    let not_shown = not_shown(show);
    if !not_shown.is_empty() {
        parts.push(Part { title: show.say("take-not-shown"), lines: not_shown });
    }
    parts.push(Part {
        title: show.say("take-questions"),
        lines: or_none(questions(show), show, "take-question-none"),
    });
    let readings = readings(show);
    if !readings.is_empty() {
        parts.push(Part { title: show.say("take-readings"), lines: readings });
    }
    parts.push(Part { title: show.say("take-marks"), lines: or_none(marks(show), show, "take-marks-none") });
    parts
}

fn or_none(lines: Vec<(String, String)>, show: &Show<'_, '_>, none: &str) -> Vec<(String, String)> {
    if lines.is_empty() { vec![(show.say(none), String::new())] } else { lines }
}

fn done(show: &Show<'_, '_>) -> Part {
    let walk = &show.hall.walk;
    let steps = &walk.route().steps;
    let shown = steps.iter().filter(|s| matches!(walk.step_state(&s.id), StepState::Shown { .. })).count();
    let of = |tally: Tally| {
        let number = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
        let args = Args::new().number("done", number(tally.done)).number("all", number(tally.all));
        show.say_with("take-of", args)
    };
    let lines = vec![
        (show.say("take-shown"), of(Tally { done: shown, all: steps.len() })),
        (show.say("take-cautions"), of(walk.cautions_settled())),
    ];
    Part { title: show.say("take-happened"), lines }
}

fn not_shown(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let walk = &show.hall.walk;
    let line = |step: &crate::route::Step| {
        let StepState::NotShown { reason, note } = walk.step_state(&step.id) else { return None };
        let reason = show.say_with("reason", Args::new().text("reason", why(*reason)));
        Some((show.speaker.step(step).title, noted(show, reason, note)))
    };
    walk.route().steps.iter().filter_map(line).collect()
}

/// A line with what was noted to it.
fn noted(show: &Show<'_, '_>, line: String, note: &str) -> String {
    if note.trim().is_empty() {
        return line;
    }
    show.say_with("take-note", Args::new().text("line", line).text("note", note))
}

fn questions(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let line = |question: &crate::walk::Question| {
        let text = if question.text.trim().is_empty() {
            let step = show.speaker.say(&format!("step-{}", question.step));
            show.say_with("take-question-at", Args::new().text("step", step))
        } else {
            question.text.clone()
        };
        let key = if question.answered { "take-question-answered" } else { "take-question-open" };
        (text, show.say(key))
    };
    show.hall.walk.questions().iter().map(|q| line(&q.value)).collect()
}

fn readings(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let walk = &show.hall.walk;
    let line = |reading: &Reading| {
        let said = match &walk.reading(&reading.id)?.value {
            ReadingState::Taken { value, measure } => taken(show, reading, value, measure),
            ReadingState::NotTaken { reason, note } => {
                let reason = show.say_with("not-read", Args::new().text("reason", why_not_read(*reason)));
                noted(show, reason, note)
            }
        };
        Some((show.speaker.say(&format!("reading-{}", reading.id)), said))
    };
    walk.route().steps.iter().flat_map(|s| &s.readings).filter_map(line).collect()
}

/// A value as it was read, in the reader's measures.
fn taken(show: &Show<'_, '_>, reading: &Reading, value: &str, measure: &str) -> String {
    match &reading.scale {
        Scale::Number { .. } => {
            let (words, reader) = (&show.ctx.scripts.words, show.speaker.reader());
            let rounding = rounding_of(&reading.id);
            Quantity::parse(&format!("{value} {measure}")).map_or_else(
                |_| format!("{value} {measure}"),
                |quantity| format::quantity(words, reader, &quantity, rounding, Places::AsWritten),
            )
        }
        Scale::Parts(_) => value.to_owned(),
        Scale::Choice(_) => show.speaker.say(&format!("choice-{value}")),
    }
}

/// Readings out of their bounds: what is read, and what the agent is to do.
pub(super) fn off(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let walk = &show.hall.walk;
    let line = |reading: &Reading| {
        let ReadingState::Taken { value, measure } = &walk.reading(&reading.id)?.value else { return None };
        let (key, part, bound) = match reading.off(value)? {
            Off::Below(least) => ("take-off-below", "below", least),
            Off::Above(most) => ("take-off-above", "above", most),
        };
        let args = Args::new()
            .text("reading", show.speaker.say(&format!("reading-{}", reading.id)))
            .text("value", taken(show, reading, value, measure))
            .text("bound", taken(show, reading, &bound.to_string(), measure));
        let to_do = show.speaker.say(&format!("reading-{}.{part}", reading.id));
        Some((show.say_with(key, args), show.say_with("take-off-agent", Args::new().text("what", to_do))))
    };
    walk.route().steps.iter().flat_map(|s| &s.readings).filter_map(line).collect()
}

fn marks(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let line = |mark: &Mark| {
        let kind = show.say_with("mark-kind", Args::new().text("kind", kind(mark.kind)));
        let args = Args::new().number("number", u64::from(mark.number)).text("kind", kind);
        let size = show.say_with("mark-size", Args::new().text("size", size(mark.size)));
        (noted(show, show.say_with("take-mark", args), &mark.note), size)
    };
    show.hall.walk.marks().map(|m| line(&m.value)).collect()
}

const fn why(reason: NotShown) -> &'static str {
    match reason {
        NotShown::Weather => "weather",
        NotShown::Declined => "declined",
        NotShown::Known => "known",
        NotShown::OutOfOrder => "out-of-order",
        NotShown::NoTime => "no-time",
    }
}

const fn why_not_read(reason: NotRead) -> &'static str {
    match reason {
        NotRead::Broken => "broken",
        NotRead::Unreachable => "unreachable",
        NotRead::WrongMoment => "wrong-moment",
    }
}

const fn kind(kind: MarkKind) -> &'static str {
    match kind {
        MarkKind::Scratch => "scratch",
        MarkKind::Dent => "dent",
        MarkKind::Chip => "chip",
        MarkKind::Crack => "crack",
        MarkKind::Stain => "stain",
        MarkKind::Tear => "tear",
        MarkKind::Missing => "missing",
        MarkKind::WorksBadly => "works-badly",
    }
}

const fn size(size: MarkSize) -> &'static str {
    match size {
        MarkSize::Coin => "coin",
        MarkSize::Hand => "hand",
        MarkSize::Arm => "arm",
        MarkSize::Larger => "larger",
    }
}
