//! Demonstrations, try by try.

use super::page::Page;
use crate::record::form::{Attempt, Demonstrated, Did, Try};
use crate::words::Args;

pub(super) fn demonstrated(page: &mut Page<'_>, part: &Demonstrated) {
    let text = page.say_with("record-demo", &Args::new().text("question", part.question.as_str()));
    page.para(4, &text);
    let mut people: Vec<u8> = part.attempts.iter().map(|a| a.by).collect();
    people.sort_unstable();
    people.dedup();
    for by in people {
        let tries = part.attempts.iter().filter(|a| a.by == by && matches!(a.did, Did::Tried(_))).count();
        let tries = page.count(u32::try_from(tries).unwrap_or(u32::MAX));
        let text = page
            .say_with("record-demo-tries", &Args::new().text("who", page.person(by)).text("tries", tries));
        page.hang(4, "  ", &text);
    }
    for attempt in &part.attempts {
        attempted(page, attempt, &part.question);
    }
}

fn attempted(page: &mut Page<'_>, attempt: &Attempt, question: &str) {
    let args = Args::new().text("who", page.person(attempt.by)).text("time", page.time(&attempt.at));
    match &attempt.did {
        Did::Tried(tried) => {
            let key = if tried.right { "record-demo-right" } else { "record-demo-wrong" };
            let text = page.say_with(key, &args.text("looked", page.seconds(tried.looked_ms)));
            page.hang(4, "> ", &text);
            for text in of_try(page, tried, question) {
                page.hang(6, "- ", &text);
            }
        }
        Did::Helped => {
            let text = page.say_with("record-demo-helped", &args);
            page.hang(4, "> ", &text);
        }
        Did::Unknown => {
            let text = page.say("record-unknown");
            page.hang(4, "> ", &text);
        }
    }
}

fn of_try(page: &Page<'_>, tried: &Try, question: &str) -> Vec<String> {
    let one = |key: &str, text: &str| page.say_with(key, &Args::new().text("text", text));
    let list = |key: &str, all: &[String]| (!all.is_empty()).then(|| one(key, &all.join("; ")));
    let other = (tried.question != question).then(|| one("record-demo-question", &tried.question));
    let order = list("record-demo-order", &tried.order);
    let answer = list("record-demo-answer", &tried.answer);
    let reply = tried.reply.as_ref().map(|reply| one("record-demo-reply", reply));
    other.into_iter().chain(order).chain(answer).chain(reply).collect()
}
