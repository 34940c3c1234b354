//! `sendoff check`: prints everything that is wrong with a lot.

use std::sync::Arc;

use serde::Serialize;

use super::cli::{CheckArgs, Format};
use super::{COULD_NOT_RUN, Console, FINDINGS, GOOD, bundle};
use crate::check::{self, Overflow, Report, WalkLength};
use crate::ports::Ports;
use crate::script::{Bundle, Scripts};
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
    let measured = if args.fit { Scripts::load(Arc::clone(&bundle)).0.map(Arc::new) } else { None };
    let report = match &measured {
        Some(scripts) => {
            check::lot_with(Arc::clone(&bundle), Some(&|_: &Scripts, unit: &str| pages(scripts, unit)))
        }
        None => check::lot(Arc::clone(&bundle)),
    };
    if args.fit && measured.is_none() {
        console.complain("the pages were not measured: the lot cannot be read; correct its faults first");
    }
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

/// What does not fit on the pages of a unit.
fn pages(scripts: &Arc<Scripts>, unit: &str) -> Vec<Overflow> {
    let found = crate::kiosk::headless::overflows(scripts, unit).into_iter();
    found.map(|(key, what)| Overflow { key, what }).collect()
}

fn text(report: &Report, bundle: &Bundle, console: &mut Console) {
    for fault in &report.faults {
        let word = match fault.severity {
            Severity::Fault => "fault",
            Severity::Note => "note",
        };
        console.say(shown(&format!("{word} [{}] {}", fault.code, fault.what)));
        console.say(shown(&format!("  at {}", fault.place)));
        if let Some(excerpt) = excerpt(bundle, fault) {
            console.say(excerpt);
        }
        console.say(shown(&format!("  help: {}", fault.hint)));
        console.say("");
    }
    for walk in &report.walks {
        let minutes = walk.reading_seconds.div_ceil(60);
        console.say(shown(&format!("{}: {}", walk.unit, counted(walk.steps, "step"))));
        console.say(format!(
            "  at {}, {} m, {}, {} min; {minutes} min to read, the tablet changes hands {}",
            counted(walk.stops, "stop"),
            walk.meters,
            counted(walk.cautions, "caution"),
            walk.minutes,
            counted(walk.hand_overs, "time"),
        ));
    }
    if let Some(scripts) = &report.scripts {
        let (topics, guides) = (scripts.topics.len(), scripts.guides.len());
        let units = counted(scripts.units.len(), "unit");
        console.say(format!("{units}, {}, {}", counted(topics, "topic"), counted(guides, "guide")));
    }
    let count = |severity| report.faults.iter().filter(|f| f.severity == severity).count();
    console.say(format!(
        "{}, {}",
        counted(count(Severity::Fault), "fault"),
        counted(count(Severity::Note), "note")
    ));
}

fn counted(count: usize, name: &str) -> String {
    match count {
        0 => format!("no {name}s"),
        1 => format!("1 {name}"),
        _ => format!("{count} {name}s"),
    }
}

/// A text that came from a file, without what would move the cursor or turn the line round.
fn shown(text: &str) -> String {
    text.chars().map(visible).collect()
}

fn visible(c: char) -> char {
    match c {
        '\t' => ' ',
        '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}' => '\u{FFFD}',
        c if c.is_control() => '\u{FFFD}',
        c => c,
    }
}

/// Most characters of a line that are shown.
const WIDEST: usize = 100;
/// Characters shown before the place, in a long line.
const BEFORE: usize = 60;

/// The line of the source with marks under what stands at the place; long lines are cut around it.
fn excerpt(bundle: &Bundle, fault: &Fault) -> Option<String> {
    let bytes = bundle.get(&fault.place.file)?;
    let file = SourceFile::new(&fault.place.file, std::str::from_utf8(bytes).ok()?);
    let line = file.line(fault.place.line)?.trim_end();
    let col = usize::try_from(fault.place.col).ok()?.saturating_sub(1);
    let from = col.saturating_sub(BEFORE);
    let text: String = line.chars().skip(from).take(WIDEST).map(visible).collect();
    let number = fault.place.line.to_string();
    let pad = " ".repeat(number.len());
    let (before, under) =
        (" ".repeat(col - from), "^".repeat(length_at(line, col).clamp(1, WIDEST - (col - from))));
    Some(format!("  {number} | {text}\n  {pad} | {before}{under}"))
}

/// How long the word, the quoted text or the sign at a column is, in characters.
fn length_at(line: &str, col: usize) -> usize {
    let mut rest = line.chars().skip(col);
    match rest.next() {
        Some('"') => rest.position(|c| c == '"').map_or(1, |end| end + 2),
        Some(c) if c.is_alphanumeric() => {
            1 + rest.take_while(|c| c.is_alphanumeric() || matches!(c, '_' | '-' | '.')).count()
        }
        _ => 1,
    }
}
