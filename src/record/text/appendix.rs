//! Figures and facts as they were, and how to verify the record with stock tools.

use super::page::Page;
use crate::record::form::{FactValue, Figure, FigureState, Handoff, Head};
use crate::record::keys::NAMESPACE;
use crate::record::{bag, seal::RecordId};
use crate::words::{Args, format};

/// All figures, as of the closing: what they are and came from, or why there is none.
pub(super) fn figures(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-figures");
    let text = page.say("record-figures-when");
    page.para(2, &text);
    for figure in record.figures.iter().filter(|figure| figure.state != FigureState::NotFitted) {
        one(page, figure);
    }
    let absent = record.figures.iter().filter(|figure| figure.state == FigureState::NotFitted);
    let titles: Vec<String> = absent.map(|figure| figure.says.title.clone()).collect();
    if !titles.is_empty() {
        let args = Args::new().text("figures", format::list(page.words, &page.reader, &titles));
        let text = page.say_with("record-figures-not-fitted", &args);
        page.blank();
        page.para(2, &text);
    }
}

fn one(page: &mut Page<'_>, figure: &Figure) {
    let says = &figure.says;
    page.blank();
    let args = Args::new().text("title", says.title.as_str()).text("value", says.value.as_str());
    let text = page.say_with("record-figure", &args);
    page.para(2, &text);
    if figure.state == FigureState::Ok {
        page.para(4, &says.formula);
        let args = Args::new().text("rounding", says.rounding.as_str()).text("source", says.source.as_str());
        let text = page.say_with("record-figure-source", &args);
        page.para(4, &text);
    }
    for line in &says.lines {
        page.hang(4, "- ", line);
    }
    for text in [&says.caveat, &says.caution].into_iter().filter(|text| !text.is_empty()) {
        page.para(4, text);
    }
}

pub(super) fn facts(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-facts");
    let text = page.say("record-facts-how");
    page.para(2, &text);
    page.blank();
    for fact in &record.facts {
        page.para(2, &format!("{} = {} ({})", fact.name, value(&fact.value), fact.from.as_str()));
    }
    for section in &record.not_fitted {
        page.para(2, &format!("{section} = not-fitted (sheet)"));
    }
    for name in &record.unit.not_known {
        page.para(2, &format!("{name} = not-known (sheet)"));
    }
}

fn value(fact: &FactValue) -> String {
    match fact {
        FactValue::Quantity { value, .. } | FactValue::Word { value } | FactValue::Code { value } => {
            value.clone()
        }
        FactValue::Count { value } => value.to_string(),
        FactValue::Flag { value } => value.to_string(),
        FactValue::Money { value } => value.to_string(),
        FactValue::List { values } => values.iter().map(value).collect::<Vec<_>>().join("; "),
        FactValue::NotFitted => "not-fitted".to_owned(),
        FactValue::Unknown => "unknown".to_owned(),
    }
}

/// The commands that verify a record of this id with stock tools, one a line.
pub(super) fn commands(id: &RecordId) -> Vec<String> {
    let tablet = id.tablet();
    vec![
        format!("unzip {id}.zip"),
        format!("cd {id}"),
        format!("sha256sum -c {}", bag::TAG_MANIFEST_FILE),
        format!("sha256sum -c {}", bag::MANIFEST_FILE),
        format!("ssh-keygen -Y verify -f ../allowed_signers -I {tablet} \\"),
        format!("  -n {NAMESPACE} -s {} < {}", bag::SEAL_FILE, bag::TAG_MANIFEST_FILE),
    ]
}

pub(super) fn verify(page: &mut Page<'_>, head: &Head) {
    page.section("record-verify");
    let text = page.say_with("record-verify-how", &Args::new().text("tablet", head.tablet.as_str()));
    page.para(2, &text);
    page.blank();
    for command in commands(&head.id) {
        page.line(&format!("    {command}"));
    }
    page.blank();
    for key in ["record-verify-good", "record-verify-means"] {
        let text = page.say(key);
        page.para(2, &text);
    }
}
