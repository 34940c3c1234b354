//! Cautions with their full text and answers; what was shown at each step.

use super::opening::decision;
use super::page::Page;
use crate::record::form::{
    AnswerState, Asks, Caution, CautionText, Handoff, How, Reader, Response, Said, Signal, StepOutcome,
    StepText, Who,
};
use crate::words::Args;

pub(super) fn cautions(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-cautions");
    let text = page.say("record-cautions-how");
    page.para(2, &text);
    for step in record.route.steps.iter().filter(|step| !step.cautions.is_empty()) {
        page.blank();
        page.para(0, &step.title);
        for one in &step.cautions {
            caution(page, one);
        }
    }
}

pub(super) fn caution(page: &mut Page<'_>, caution: &Caution) {
    let signal = match caution.signal {
        Signal::Unknown => String::new(),
        signal => page.say(&format!("signal-{}", signal.as_str())),
    };
    let args = Args::new()
        .text("signal", signal)
        .text("title", caution.title.as_str())
        .text("id", caution.id.as_str())
        .number("version", caution.version);
    let text = page.say_with("record-caution", &args);
    page.para(2, &text);
    for text in &caution.texts {
        caution_text(page, text, caution.texts.len() > 1);
    }
    match caution.state {
        AnswerState::NotDue if caution.responses.is_empty() => {
            let text = page.say("record-answer-not-due");
            page.para(4, &text);
        }
        AnswerState::Waiting => {
            let text = page.say("record-answer-waiting");
            page.para(4, &text);
        }
        _ => {}
    }
    for part in &caution.demonstrations {
        super::demo::demonstrated(page, part);
    }
    for response in &caution.responses {
        answer(page, caution, response);
    }
}

fn caution_text(page: &mut Page<'_>, text: &CautionText, several: bool) {
    if several || text.language != page.reader.lang {
        let args = Args::new().text("language", text.language.as_str());
        let head = page.say_with("record-shown-in", &args);
        page.para(4, &head);
    }
    for part in [&text.hazard, &text.harm, &text.avoid] {
        page.para(4, part);
    }
}

fn answer(page: &mut Page<'_>, caution: &Caution, response: &Response) {
    let args = Args::new().text("who", page.person(response.by)).text("time", page.time(&response.at));
    let mut text = match &response.said {
        Said::Confirmed { how, looked_ms, too_fast } => {
            let done = page.say(&format!("record-how-{}", how.as_str()));
            let args = args.text("how", done).text("looked", page.seconds(*looked_ms));
            let mut text = page.say_with("record-answered", &args);
            let reading = caution.texts.iter().find(|t| t.digest == response.text).map(|t| t.reading_ms);
            if let (true, Some(reading_ms)) = (*too_fast, reading) {
                let args = Args::new().text("reading", page.seconds(reading_ms));
                text = format!("{text} {}", page.say_with("record-too-fast", &args));
            }
            if caution.asks == Asks::Demonstrate && *how != How::Demonstrate {
                text = format!("{text} {}", page.say("record-asked-demonstrate"));
            }
            text
        }
        Said::Refused { reason, decision: decided } => {
            let text = page.say_with("record-answer-refused", &args.text("reason", reason.as_str()));
            format!("{text} {}", decision(page, *decided))
        }
        Said::Unknown => page.say("record-unknown"),
    };
    if response.carried {
        text = format!("{text} {}", page.say("record-answer-carried"));
    }
    if let Some(since) = &response.lapsed {
        let args = Args::new().text("time", page.time(since));
        text = format!("{text} {}", page.say_with("record-answer-lapsed", &args));
    } else if !response.counts {
        text = format!("{text} {}", page.say("record-answer-replaced"));
    }
    page.hang(4, "> ", &text);
}

pub(super) fn steps(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-shown");
    let text = page.say("record-shown-figures");
    page.para(2, &text);
    for step in &record.route.steps {
        let StepOutcome::Shown { at, .. } = &step.outcome else { continue };
        page.blank();
        let args = Args::new().text("title", step.title.as_str()).text("time", page.time(at));
        let took = page.measured(&step.took_s.to_string(), "s");
        let args = args.text("took", took);
        // Where one agent led all of it, the head of the record says so.
        let text = if record.agents.len() > 1 {
            page.say_with("record-step-shown-by", &args.text("who", page.who(Who::Agent, at)))
        } else {
            page.say_with("record-step-shown", &args)
        };
        page.para(2, &text);
        for text in &step.texts {
            step_text(page, text, &record.reader, step.texts.len() > 1);
        }
    }
}

fn step_text(page: &mut Page<'_>, text: &StepText, reader: &Reader, several: bool) {
    if several || text.language != reader.language || text.measures != reader.measures {
        let measures = page.say_or(&format!("record-measures-{}", text.measures), &text.measures);
        let args = Args::new().text("language", text.language.as_str()).text("measures", measures);
        let head = page.say_with("record-shown-in-measures", &args);
        page.para(4, &head);
    }
    for (key, lines) in [
        ("record-step-show", &text.show),
        ("record-step-know", &text.know),
        ("record-step-notes", &text.notes),
    ] {
        if lines.is_empty() {
            continue;
        }
        let head = page.say(key);
        page.para(4, &head);
        for line in lines {
            page.hang(4, "- ", line);
        }
    }
}
