//! Records that were found, as a table, as CSV, as JSON.

use jiff::tz::Offset;
use serde_json::json;

use crate::archive::index::{Count, Hit};
use crate::commands::Console;
use crate::record::seal::Kind;
use crate::record::text::width;

/// The most columns that a cell of the table takes.
const WIDEST: usize = 32;
const HEAD: [&str; 8] = ["SEALED", "RECORD", "KIND", "UNIT", "BOOKING", "RENTER", "AGENT", "REMARKS"];
const CSV_HEAD: [&str; 14] = [
    "record",
    "kind",
    "sealed_utc",
    "sealed_local",
    "received_utc",
    "unit",
    "unit_name",
    "booking",
    "renter",
    "agents",
    "language",
    "refused",
    "not_shown",
    "fault",
];

/// Time of its sealing as the clock on the wall showed it.
fn local(hit: &Hit) -> String {
    let offset = Offset::from_seconds(i32::from(hit.offset_minutes) * 60).unwrap_or(Offset::UTC);
    hit.sealed.map_or_else(String::new, |at| offset.to_datetime(at).strftime("%Y-%m-%d %H:%M").to_string())
}

/// What one should look at.
fn remarks(hit: &Hit) -> String {
    if let Some(fault) = &hit.fault {
        return format!("DOES NOT HOLD: {fault}");
    }
    let some = |count: u32, word: &str| (count > 0).then(|| format!("{count} {word}"));
    let all = [some(hit.refused, "refused"), some(hit.not_shown, "not shown")];
    all.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn kind(hit: &Hit) -> &'static str {
    hit.kind.map_or("?", Kind::as_str)
}

/// A cell that neither leaves its column nor says anything to the terminal.
fn cell(text: &str) -> String {
    let mut cell = String::new();
    let mut columns = 0;
    for c in text.chars().map(|c| if hidden(c) { '\u{FFFD}' } else { c }) {
        columns += width::of_char(c);
        if columns > WIDEST - 1 {
            cell.push('…');
            break;
        }
        cell.push(c);
    }
    cell
}

fn hidden(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{2028}'..='\u{202E}' | '\u{2066}'..='\u{2069}' | '\u{200E}' | '\u{200F}' | '\u{61C}')
}

/// For people.
pub(super) fn text(hits: &[Hit], console: &mut Console) {
    if hits.is_empty() {
        return;
    }
    let row = |hit: &Hit| {
        [
            local(hit),
            hit.id.clone(),
            kind(hit).to_owned(),
            cell(&hit.unit),
            cell(&hit.booking),
            cell(&hit.renter),
            cell(&hit.agents),
            remarks(hit),
        ]
    };
    let rows: Vec<[String; 8]> =
        std::iter::once(HEAD.map(str::to_owned)).chain(hits.iter().map(row)).collect();
    let mut widths = [0; 8];
    for row in &rows {
        for (widest, cell) in widths.iter_mut().zip(row) {
            *widest = width::of(cell).max(*widest);
        }
    }
    for row in &rows {
        let mut line = String::new();
        for (cell, widest) in row.iter().zip(widths) {
            line.push_str(cell);
            line.push_str(&" ".repeat(widest.saturating_sub(width::of(cell)) + 2));
        }
        console.say(line.trim_end());
    }
}

/// A cell of CSV. What a spreadsheet would take for a formula gets an apostrophe before it.
fn safe(text: &str) -> String {
    let first = text.trim_start_matches([' ', '\u{A0}']).chars().next();
    let formula = matches!(
        first,
        Some('=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '\u{FF1D}' | '\u{FF0B}' | '\u{FF0D}' | '\u{FF20}')
    );
    if formula { format!("'{text}") } else { text.to_owned() }
}

/// For spreadsheets.
pub(super) fn csv(hits: &[Hit], console: &mut Console) {
    let mut writer = ::csv::Writer::from_writer(Vec::new());
    // Writing to memory does not fail.
    let mut line = |cells: &[String]| drop(writer.write_record(cells));
    line(&CSV_HEAD.map(str::to_owned));
    for hit in hits {
        let time = |at: Option<jiff::Timestamp>| at.map_or_else(String::new, |at| at.to_string());
        line(&[
            hit.id.clone(),
            kind(hit).to_owned(),
            time(hit.sealed),
            local(hit),
            time(hit.received),
            safe(&hit.unit),
            safe(&hit.unit_name),
            safe(&hit.booking),
            safe(&hit.renter),
            safe(&hit.agents),
            safe(&hit.language),
            hit.refused.to_string(),
            hit.not_shown.to_string(),
            hit.fault.clone().unwrap_or_default(),
        ]);
    }
    let bytes = writer.into_inner().unwrap_or_default();
    console.say(String::from_utf8_lossy(&bytes).trim_end_matches('\n'));
}

/// For programs.
pub(super) fn json(hits: &[Hit], count: Count) -> serde_json::Value {
    let (found, more) = match count {
        Count::Exactly(found) => (found, false),
        Count::MoreThan(found) => (found, true),
    };
    let records = hits.iter().map(|hit| {
        json!({
            "id": hit.id, "path": hit.path, "digest": hit.digest, "fault": hit.fault,
            "kind": hit.kind.map(Kind::as_str), "sealed": hit.sealed, "offset_minutes": hit.offset_minutes,
            "received": hit.received, "unit": hit.unit, "unit_name": hit.unit_name, "booking": hit.booking,
            "renter": hit.renter, "agents": hit.agents, "language": hit.language, "refused": hit.refused,
            "not_shown": hit.not_shown,
        })
    });
    json!({"found": found, "more": more, "records": records.collect::<Vec<_>>()})
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_is_a_formula() {
        for (text, expected) in [
            ("Vale", "Vale"),
            ("=1+1", "'=1+1"),
            (" =1+1", "' =1+1"),
            ("+1", "'+1"),
            ("-1", "'-1"),
            ("@SUM(A1)", "'@SUM(A1)"),
            ("\t=1", "'\t=1"),
            ("\r=1", "'\r=1"),
            ("\u{FF1D}1", "'\u{FF1D}1"),
            ("O'Keel-Vale", "O'Keel-Vale"),
            ("", ""),
        ] {
            assert_eq!(safe(text), expected);
        }
    }

    #[test]
    fn no_cell_leaves_its_column() {
        assert_eq!(cell("Robin Vale"), "Robin Vale");
        assert_eq!(cell("a\nb\u{1B}[2J\u{202E}c"), "a\u{FFFD}b\u{FFFD}[2J\u{FFFD}c");
        assert_eq!(width::of(&cell(&"王".repeat(40))), 31);
        assert_eq!(width::of(&cell(&"x".repeat(400))), WIDEST);
    }
}
