//! The text of a record taken apart, so that it can be drawn with letters of any width: sections, and in them
//! labelled values, rows with a value at their end, paragraphs. It is the sealed text, every word of it.

use crate::record::text::COLUMNS;
use crate::record::text::width::of as columns;

/// Column in which the value of a labelled line begins.
const VALUE: usize = 24;
/// How many lines of a section are drawn at once.
pub const PART: usize = 60;

/// A section of the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Section {
    /// Its head.
    pub title: String,
    /// What stands below its head in the same frame: notices of a demo or rehearsal.
    pub notice: String,
    /// What it says.
    pub lines: Vec<Line>,
}

/// What stands together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Line {
    /// A label and its value.
    Field(String, String),
    /// Words with a value at the right edge, so deep in.
    Row(usize, String, String),
    /// A paragraph, so deep in, with a mark before it.
    Para(usize, String, String),
    /// Room before what follows.
    Gap,
}

/// Takes a text apart.
#[must_use]
pub fn sections(text: &str) -> Vec<Section> {
    let mut sections: Vec<Section> = Vec::new();
    let mut lines = text.lines().peekable();
    while let Some(line) = lines.next() {
        if !is_rule(line) {
            if let Some(section) = sections.last_mut() {
                add(&mut section.lines, line);
            }
            continue;
        }
        // The head ends with the next rule.
        let mut head: Vec<&str> = Vec::new();
        while let Some(line) = lines.next_if(|line| !is_rule(line)) {
            head.push(line);
        }
        let _ = lines.next();
        let title = head.first().map(|line| line.trim().to_owned()).unwrap_or_default();
        let mut notice = String::new();
        for line in head.iter().skip(1).map(|line| line.trim()) {
            let last = notice.lines().last().unwrap_or_default();
            let wrapped = columns(last) + 1 + columns(line.split(' ').next().unwrap_or_default()) > COLUMNS;
            if !notice.is_empty() {
                notice.push(if wrapped { ' ' } else { '\n' });
            }
            notice.push_str(line);
        }
        sections.push(Section { title, notice, lines: Vec::new() });
    }
    for section in &mut sections {
        while section.lines.last() == Some(&Line::Gap) {
            let _ = section.lines.pop();
        }
    }
    sections
}

fn is_rule(line: &str) -> bool {
    line.len() == COLUMNS && (line.bytes().all(|b| b == b'-') || line.bytes().all(|b| b == b'='))
}

/// Adds a line of the text to what it belongs to.
fn add(lines: &mut Vec<Line>, line: &str) {
    let words = line.trim();
    let depth = line.chars().take_while(|c| *c == ' ').count();
    if words.is_empty() {
        if !matches!(lines.last(), None | Some(Line::Gap)) {
            lines.push(Line::Gap);
        }
        return;
    }
    if let Some((left, right)) = row(words) {
        // The words of a row that did not fit on one line.
        if let Some(Line::Para(before, mark, text)) = lines.last()
            && mark.is_empty()
            && depth == before + 2
        {
            let (at, left) = (*before, format!("{text} {left}"));
            let _ = lines.pop();
            lines.push(Line::Row(at, left, right));
            return;
        }
        lines.push(Line::Row(depth, left, right));
        return;
    }
    if let Some((label, value)) = field(line, depth) {
        lines.push(Line::Field(label, value));
        return;
    }
    match lines.last_mut() {
        Some(Line::Field(_, value)) if depth == VALUE => {
            value.push(' ');
            value.push_str(words);
        }
        Some(Line::Para(at, mark, text)) if goes_on(*at, mark, text, depth, words) => {
            text.push(' ');
            text.push_str(words);
        }
        _ => {
            let (mark, text) = numbered(words);
            lines.push(Line::Para(depth, mark.to_owned(), text.to_owned()));
        }
    }
}

/// Whether a line goes on with a paragraph: it stands where its lines stand, and its first word did not fit on the
/// line before.
fn goes_on(at: usize, mark: &str, text: &str, depth: usize, words: &str) -> bool {
    let inner = at + columns(mark);
    if depth != inner || !marked(words).0.is_empty() {
        return false;
    }
    let room = COLUMNS.saturating_sub(inner);
    let first = words.split(' ').next().unwrap_or_default();
    last_line(text, room) + 1 + columns(first) > room
}

/// How long the last line of a paragraph is when it is wrapped to so many columns.
fn last_line(text: &str, room: usize) -> usize {
    let mut used = 0;
    for word in text.split(' ') {
        let long = columns(word);
        used = if used == 0 || used + 1 + long > room { long } else { used + 1 + long };
    }
    used
}

/// A mark before a paragraph, and the paragraph.
fn marked(words: &str) -> (&str, &str) {
    for mark in ["* ", "> ", "[ ] ", "[x] ", "- "] {
        if let Some(rest) = words.strip_prefix(mark) {
            return (words.get(..mark.len()).unwrap_or_default(), rest);
        }
    }
    let digits = words.bytes().take_while(u8::is_ascii_digit).count();
    let number = words.get(digits..).filter(|_| digits > 0 && digits < 3).and_then(|r| r.strip_prefix(". "));
    match number {
        Some(rest) => (words.get(..digits + 2).unwrap_or_default(), rest),
        None => ("", words),
    }
}

/// As [`marked`], or a bare number before a paragraph, as before a mark on the unit.
fn numbered(words: &str) -> (&str, &str) {
    let digits = words.bytes().take_while(u8::is_ascii_digit).count();
    match (marked(words), words.split_at_checked(digits + 1)) {
        (("", _), Some((number, rest))) if (1..3).contains(&digits) && number.ends_with(' ') => {
            (number, rest)
        }
        (found, _) => found,
    }
}

/// The two ends of a row with dots between them.
fn row(words: &str) -> Option<(String, String)> {
    let at = words.find(" ..")?;
    let (left, rest) = words.split_at_checked(at)?;
    let right = rest.trim_start().trim_start_matches('.');
    let right = right.strip_prefix(' ')?;
    Some((left.to_owned(), right.to_owned())).filter(|(left, right)| !left.is_empty() && !right.is_empty())
}

/// A label and the value beside it.
fn field(line: &str, depth: usize) -> Option<(String, String)> {
    if depth != 2 {
        return None;
    }
    let mut used = 0;
    let mut cut = None;
    for (at, c) in line.char_indices() {
        if used == VALUE {
            cut = Some(at);
            break;
        }
        used += columns(c.encode_utf8(&mut [0; 4]));
    }
    let (label, value) = line.split_at_checked(cut?)?;
    let apart = label.ends_with(' ') && !value.starts_with(' ');
    // A word space may fall on that column by chance; a label is padded by two or has only one word space before it.
    let label = label.trim_end_matches(' ');
    let padded = columns(label) + 2 <= VALUE || columns(label) + 1 == VALUE && !label.trim().contains(' ');
    (apart && padded && !label.trim().is_empty() && marked(label.trim()).0.is_empty())
        .then(|| (label.trim().to_owned(), value.trim_end().to_owned()))
}
