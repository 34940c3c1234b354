//! `sendoff archive audit`: reads everything again and says what does not hold.

use serde_json::json;

use super::{AuditArgs, words};
use crate::archive::Archive;
use crate::archive::audit::{Report, audit};
use crate::commands::cli::Format;
use crate::commands::{COULD_NOT_RUN, Console, FINDINGS, GOOD};
use crate::ports::Ports;
use crate::words::{Reader, Words};

pub(super) fn run(args: &AuditArgs, ports: &Ports, console: &mut Console) -> u8 {
    let report = Archive::open(ports.disk.clone(), &args.archive).and_then(|archive| {
        audit(&archive, ports.clock.now(), &mut |done, of| console.progress(format_args!("{done} of {of}")))
    });
    console.progress("");
    let report = match report {
        Ok(report) => report,
        Err(fault) => {
            console.complain(fault);
            return COULD_NOT_RUN;
        }
    };
    let words = words();
    match args.format {
        Format::Text => text(&report, &words, console),
        Format::Json => console.say(to_json(&report, &words)),
    }
    if report.holds() { GOOD } else { FINDINGS }
}

fn text(report: &Report, words: &Words, console: &mut Console) {
    for finding in &report.findings {
        let kind = if finding.problem.is_remark() { "remark " } else { "finding" };
        let said = finding.say(words, &Reader::default());
        console.say(format!("{kind}  [{}] {said}", finding.problem.code()));
    }
    let wrong = report.findings.iter().filter(|f| !f.problem.is_remark()).count();
    let remarks = report.findings.len() - wrong;
    console.say(format!(
        "{} files read, {} good records, {wrong} findings, {remarks} remarks",
        report.files, report.good
    ));
}

fn to_json(report: &Report, words: &Words) -> serde_json::Value {
    let findings = report.findings.iter().map(|finding| {
        json!({
            "code": finding.problem.code(),
            "remark": finding.problem.is_remark(),
            "place": finding.place,
            "message": finding.say(words, &Reader::default()),
        })
    });
    json!({
        "holds": report.holds(),
        "files": report.files,
        "good": report.good,
        "findings": findings.collect::<Vec<_>>(),
    })
}
