//! Figures and facts as they were, and how to verify the record with stock tools.

use super::page::Page;
use crate::record::form::{FactValue, Figure, FigureState, FigureValue, Handoff, Head};
use crate::record::keys::NAMESPACE;
use crate::record::{bag, seal::RecordId};
use crate::words::Args;

/// Figures that could be computed; `record.json` tells of the others why not.
pub(super) fn figures(page: &mut Page<'_>, record: &Handoff) {
    page.section("record-figures");
    for figure in record.figures.iter().filter(|figure| figure.state == FigureState::Ok) {
        page.para(2, &format!("{} = {}", figure.id, result(figure)));
        page.para(4, &figure.formula);
        for input in &figure.inputs {
            page.para(4, &format!("{} = {} ({})", input.name, input.value, input.from));
        }
        page.para(4, &figure.source);
    }
}

/// Values with their measures, each with what it is of; then the verdict, if it is a question.
fn result(figure: &Figure) -> String {
    let value = |v: &FigureValue| {
        let of = v.of.as_ref().map_or_else(String::new, |of| format!("{of} "));
        format!("{of}{} {}", v.value, v.measure).trim_end().to_owned()
    };
    figure.values.iter().map(value).chain(figure.verdict.clone()).collect::<Vec<_>>().join("; ")
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
