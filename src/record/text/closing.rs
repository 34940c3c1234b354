//! Questions, leaving check, consent, signatures, copy.

use super::opening::decision;
use super::page::Page;
use crate::record::form::{Handoff, Reopened, Signature, SignatureDone, Withdrawn};
use crate::words::Args;

pub(super) fn questions(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-questions");
    if record.questions.is_empty() {
        let text = page.say("record-questions-none");
        page.para(2, &text);
    }
    for question in &record.questions {
        let step = record.route.steps.iter().find(|step| step.id == question.step);
        let cautions = || step.into_iter().flat_map(|step| &step.cautions);
        let about = match &question.caution {
            Some(id) => cautions().find(|caution| caution.id == *id).map(|caution| caution.title.as_str()),
            None => step.map(|step| step.title.as_str()),
        };
        let text = if question.text.is_empty() {
            page.say("record-question-no-words")
        } else {
            question.text.clone()
        };
        page.hang(2, "* ", &text);
        let args =
            Args::new().text("about", about.unwrap_or(&question.step)).text("time", page.time(&question.at));
        let key = if question.answered { "record-question-answered" } else { "record-question-open" };
        let text = page.say_with(key, &args);
        page.para(4, &text);
    }
}

pub(super) fn leaving(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-leaving");
    for line in &record.leaving {
        let key = match line.checked.as_ref().map(|checked| checked.good) {
            Some(true) => "record-leaving-good",
            Some(false) => "record-leaving-bad",
            None => "record-leaving-open",
        };
        page.row(2, &line.name, &page.say(key));
    }
}

pub(super) fn consent(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-consent");
    for text in &record.consent_texts {
        if record.consent_texts.len() > 1 || text.language != page.reader.lang {
            let args = Args::new().text("language", text.language.as_str());
            let head = page.say_with("record-shown-in", &args);
            page.para(2, &head);
        }
        let last = text.lines.len().saturating_sub(1);
        for (index, line) in text.lines.iter().enumerate() {
            match index {
                0 => page.para(2, line),
                _ if index == last => page.hang(2, "[ ] ", line),
                _ => page.hang(2, &format!("{index}. "), line),
            }
        }
        page.blank();
    }
    if record.consents.is_empty() {
        let text = page.say("record-consent-none");
        page.para(2, &text);
    }
    for consent in &record.consents {
        let args = Args::new().text("who", page.person(consent.by)).text("time", page.time(&consent.at));
        let key = if consent.given { "record-consent-given" } else { "record-consent-paper" };
        let text = page.say_with(key, &args);
        page.hang(2, "> ", &text);
    }
}

pub(super) fn signatures(
    page: &mut Page<'_>,
    signatures: &[Signature],
    withdrawn: &[Withdrawn],
    opened_again: &[Reopened],
) {
    page.section("record-signatures");
    for signature in signatures {
        let args = Args::new()
            .text("who", page.who(signature.by, &signature.at))
            .text("time", page.time(&signature.at));
        let text = match &signature.done {
            SignatureDone::Signed { ink } => page.say_with("record-signed", &args.text("file", ink.as_str())),
            SignatureDone::Refused { reason, decision: decided } => {
                let text = page.say_with("record-not-signed", &args.text("reason", reason.as_str()));
                format!("{text} {}", decision(page, *decided))
            }
            SignatureDone::Unknown => page.say("record-unknown"),
        };
        page.hang(2, "> ", &text);
    }
    for gone in withdrawn {
        let args = Args::new()
            .text("who", page.who(gone.by, &gone.at))
            .text("time", page.time(&gone.at))
            .text("withdrawn", page.time_utc(gone.withdrawn))
            .text("reason", gone.reason.as_str());
        let key = if gone.signed { "record-withdrawn" } else { "record-withdrawn-refusal" };
        let text = page.say_with(key, &args);
        page.hang(2, "> ", &text);
    }
    reopened(page, opened_again);
    page.blank();
    let text = page.say("record-signatures-mean");
    page.para(2, &text);
}

/// Closings that were taken back, and why.
fn reopened(page: &mut Page<'_>, reopened: &[Reopened]) {
    for opened in reopened {
        let args = Args::new().text("time", page.time(&opened.at)).text("reason", opened.reason.as_str());
        let text = page.say_with("record-reopened", &args);
        page.hang(2, "> ", &text);
        if let Some(stop) = &opened.stopped {
            let args = Args::new()
                .text("who", page.who(stop.by, &stop.at))
                .text("time", page.time(&stop.at))
                .text("reason", stop.reason.as_str());
            let text = page.say_with("record-stop-undone", &args);
            page.para(4, &text);
        }
    }
}

pub(super) fn copy(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-copy");
    let offered = record.copy.offered.as_ref();
    let text = match offered {
        Some(at) => page.say_with("record-copy-offered", &Args::new().text("time", page.time(at))),
        None => page.say("record-copy-not-offered"),
    };
    page.para(2, &text);
    if let Some(chosen) = &record.copy.chosen {
        let args = Args::new().text("time", page.time(&chosen.at));
        let text = page.say_with(&format!("record-copy-{}", chosen.choice.as_str()), &args);
        page.para(2, &text);
    }
}
