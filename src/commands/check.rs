//! `sendoff check`: prints everything that is wrong with a lot.

use std::sync::Arc;

use serde::Serialize;

use super::cli::{CheckArgs, Format};
use super::{COULD_NOT_RUN, Console, FINDINGS, GOOD, bundle};
use crate::check::{self, Report, WalkLength};
use crate::ports::Ports;
use crate::script::Bundle;
use crate::source::{Fault, Severity, SourceFile};

/// What `--format json` prints.
#[derive(Serialize)]
struct Printed<'a> {
    clean: bool,
    faults: &'a [Fault],
    walks: &'a [WalkLength],
}

pub(super) fn run(args: &CheckArgs, ports: &Ports, console: &mut Console) -> u8 {
    let bundle = match bundle(ports, args.places.lot.as_deref()) {
        Ok(bundle) => Arc::new(bundle),
        Err(fault) => {
            console.complain(fault);
            return COULD_NOT_RUN;
        }
    };
    let report = check::lot(Arc::clone(&bundle));
    match args.format {
        Format::Text => text(&report, &bundle, console),
        Format::Json => {
            let printed = Printed { clean: report.is_clean(), faults: &report.faults, walks: &report.walks };
            match serde_json::to_string_pretty(&printed) {
                Ok(json) => console.say(json),
                Err(e) => {
                    console.complain(format!("the result cannot be written as JSON: {e}"));
                    return COULD_NOT_RUN;
                }
            }
        }
    }
    if report.is_clean() { GOOD } else { FINDINGS }
}

fn text(report: &Report, bundle: &Bundle, console: &mut Console) {
    for fault in &report.faults {
        let word = match fault.severity {
            Severity::Fault => "fault",
            Severity::Note => "note",
        };
        console.say(format!("{word} [{}] {}", fault.code, fault.what));
        console.say(format!("  at {}", fault.place));
        if let Some(excerpt) = excerpt(bundle, fault) {
            console.say(excerpt);
        }
        console.say(format!("  help: {}\n", fault.hint));
    }
    for walk in &report.walks {
        console.say(format!(
            "{}: {} steps at {} stops, {} cautions, {} min, {} m; {} min to read, the tablet changes hands {} times",
            walk.unit,
            walk.steps,
            walk.stops,
            walk.cautions,
            walk.minutes,
            walk.meters,
            walk.reading_seconds.div_ceil(60),
            walk.hand_overs,
        ));
    }
    let count = |severity| report.faults.iter().filter(|f| f.severity == severity).count();
    console.say(format!("{} faults, {} notes", count(Severity::Fault), count(Severity::Note)));
}

/// The line of the source with a mark under the place; long lines are cut around it.
fn excerpt(bundle: &Bundle, fault: &Fault) -> Option<String> {
    let bytes = bundle.get(&fault.place.file)?;
    let file = SourceFile::new(&fault.place.file, std::str::from_utf8(bytes).ok()?);
    let line = file.line(fault.place.line)?;
    let col = usize::try_from(fault.place.col).ok()?.saturating_sub(1);
    let from = col.saturating_sub(60);
    let shown: String = line.chars().skip(from).take(100).collect();
    let number = fault.place.line.to_string();
    let pad = " ".repeat(number.len());
    let mark = " ".repeat(col - from);
    Some(format!("  {number} | {shown}\n  {pad} | {mark}^"))
}
