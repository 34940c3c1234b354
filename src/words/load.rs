//! Reading the Fluent files of a lot folder and collecting every fault with its place.

mod entries;
mod references;

use std::collections::BTreeMap;
use std::sync::Arc;

use fluent_bundle::FluentResource;
use fluent_syntax::parser::{ErrorKind, ParserError};
use unic_langid::LanguageIdentifier;

use super::language::{Language, Marks, Used};
use super::{SOURCE_LANGUAGE, Words};
use crate::source::{Fault, Place, SourceFile};

/// Largest file of words that is read, in bytes.
pub(super) const LARGEST_FILE: usize = 256 * 1024;
/// Most opening brackets of one message: more is no text, and the parser descends one call for each.
const MOST_BRACKETS: usize = 200;
/// Most faults of syntax told of one file.
const MOST_OF_FILE: usize = 100;
/// Most faults of single messages told of one language.
const MOST_OF_LANGUAGE: usize = 500;

/// Faults as they are found. What is nonsense from end to end need not be told line by line, and finding a
/// place costs a pass over its file.
struct Told {
    faults: Vec<Fault>,
    most: usize,
    untold: usize,
}

impl Told {
    const fn new(most: usize) -> Self {
        Self { faults: Vec::new(), most, untold: 0 }
    }

    fn tell(&mut self, fault: impl FnOnce() -> Fault) {
        if self.faults.len() < self.most {
            self.faults.push(fault());
        } else {
            self.untold += 1;
        }
    }

    /// In the order of files and lines.
    fn finish(mut self) -> Vec<Fault> {
        self.faults.sort_by(|one, other| one.place.cmp(&other.place));
        if let Some(last) = self.faults.last().filter(|_| self.untold > 0) {
            let what = format!("{} more faults are not listed", self.untold);
            let more = Fault::new(
                "words.many-faults",
                last.place.clone(),
                what,
                "correct the first ones and check again",
            );
            self.faults.push(more);
        }
        self.faults
    }
}

/// The languages, the source language first; the faults in the order of files and lines.
pub(super) fn languages(files: &[SourceFile]) -> (Vec<Language>, Vec<Fault>) {
    let mut faults = Vec::new();
    let mut by_tag: BTreeMap<String, (LanguageIdentifier, Vec<Used>)> = BTreeMap::new();
    let source = language_of(SOURCE_LANGUAGE).unwrap_or_default();
    by_tag.insert(SOURCE_LANGUAGE.to_owned(), (source, Vec::new()));
    let mut sorted: Vec<&SourceFile> = files.iter().collect();
    sorted.sort_by(|one, other| one.name.cmp(&other.name));
    let mut refused: Option<String> = None;
    for file in sorted {
        let folder = folder_of(file);
        let Some(id) = language_of(folder) else {
            if refused.as_deref() != Some(folder) {
                faults.push(unknown_language(file, folder));
                refused = Some(folder.to_owned());
            }
            continue;
        };
        let (known, used) = by_tag.entry(folder.to_owned()).or_default();
        *known = id;
        let mut told = Told::new(MOST_OF_FILE);
        used.extend(read(file, &mut told));
        faults.extend(told.finish());
    }
    if by_tag.get(SOURCE_LANGUAGE).is_none_or(|(_, used)| used.is_empty()) {
        faults.push(Fault::new(
            "words.no-source-language",
            Place::start(&Arc::from(format!("i18n/{SOURCE_LANGUAGE}").as_str())),
            format!(
                "there are no words in {SOURCE_LANGUAGE}, the language that every message is first written in"
            ),
            format!("add i18n/{SOURCE_LANGUAGE}/*.ftl"),
        ));
    }
    let all = assemble(by_tag, &mut faults);
    (all, faults)
}

fn assemble(
    by_tag: BTreeMap<String, (LanguageIdentifier, Vec<Used>)>,
    faults: &mut Vec<Fault>,
) -> Vec<Language> {
    let mut all: Vec<Language> = Vec::new();
    for (tag, (id, used)) in by_tag {
        let mut told = Told::new(MOST_OF_LANGUAGE);
        let index = entries::index(&tag, &used, &mut told);
        let language = Language::new(&tag, id, Arc::new(used), Arc::new(index));
        references::check(&language, &mut told);
        faults.extend(told.finish());
        all.push(language);
    }
    all.sort_by_key(|language| (language.tag != SOURCE_LANGUAGE, language.tag.clone()));
    let marks = all.first().map_or_else(Marks::default, |source| source.marks.clone());
    for language in all.iter_mut().skip(1) {
        language.read_marks(&marks);
    }
    all
}

/// The folder that a file lies in.
fn folder_of(file: &SourceFile) -> &str {
    file.name.rsplit('/').nth(1).unwrap_or_default()
}

/// A tag as it is written: two or three letters, perhaps a script, perhaps a region.
fn language_of(folder: &str) -> Option<LanguageIdentifier> {
    let id: LanguageIdentifier = folder.parse().ok()?;
    let letters = id.language.as_str().len();
    (id == folder && (2..=3).contains(&letters) && !Words::is_pseudo(folder) && !id.language.is_empty())
        .then_some(id)
}

fn unknown_language(file: &SourceFile, folder: &str) -> Fault {
    let place = Place::start(&file.name);
    if Words::is_pseudo(folder) {
        return Fault::new(
            "words.language",
            place,
            format!("`{folder}` is made by the program from {SOURCE_LANGUAGE}"),
            "take the folder away",
        );
    }
    let hint = match folder.parse::<LanguageIdentifier>() {
        Ok(id) if (2..=3).contains(&id.language.as_str().len()) => format!("rename the folder to `{id}`"),
        _ => "name the folder by a language tag, as `es` or `en-GB`".to_owned(),
    };
    Fault::new("words.language", place, format!("`{folder}` is not the tag of a language"), hint)
}

/// Parses a file; none when it must not be used at all.
fn read(file: &SourceFile, told: &mut Told) -> Option<Used> {
    if file.text.len() > LARGEST_FILE {
        told.tell(|| {
            Fault::new(
                "words.too-large",
                Place::start(&file.name),
                format!("the file has {} bytes; {LARGEST_FILE} are the most that is read", file.text.len()),
                "split it into several files of the same folder",
            )
        });
        return None;
    }
    let text = file.text.strip_prefix('\u{FEFF}').unwrap_or(&file.text);
    let skipped = file.text.len() - text.len();
    if let Some(at) = too_many_brackets(text) {
        told.tell(|| {
            Fault::new(
                "words.too-deep",
                file.place_at(skipped + at),
                format!("one message opens more than {MOST_BRACKETS} brackets; the file is left out"),
                "cut the message into several",
            )
        });
        return None;
    }
    let (resource, errors) = match FluentResource::try_new(text.to_owned()) {
        Ok(resource) => (resource, Vec::new()),
        Err((resource, errors)) => (resource, errors),
    };
    for error in &errors {
        told.tell(|| syntax(file, skipped, error));
    }
    let used = Used { file: file.clone(), skipped, resource: Arc::new(resource) };
    entries::numbers_are_sound(&used, told).then_some(used)
}

/// Where one message has more opening brackets than allowed: as many in a row and no entry begins among them.
/// Counts without understanding, so that nothing hidden in quotes gets the parser deeper than that.
fn too_many_brackets(text: &str) -> Option<usize> {
    // Few files have so many brackets in all.
    if text.bytes().filter(|byte| matches!(byte, b'{' | b'(')).count() <= MOST_BRACKETS {
        return None;
    }
    let opening = |(at, byte): (usize, u8)| matches!(byte, b'{' | b'(').then_some(at);
    let brackets: Vec<usize> = text.bytes().enumerate().filter_map(opening).collect();
    let over = brackets.get(MOST_BRACKETS..).unwrap_or_default();
    brackets.iter().zip(over).find_map(|(first, last)| {
        let between = text.get(*first..*last).unwrap_or_default();
        let begins = between.split('\n').skip(1).any(begins_entry);
        (!begins).then_some(*last)
    })
}

/// `id =`, `-id =` or a comment at the start of a line, none of which can stand inside brackets.
fn begins_entry(line: &str) -> bool {
    if line.starts_with('#') {
        return true;
    }
    let line = line.strip_prefix('-').unwrap_or(line);
    let id = line.trim_start_matches(|c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_'));
    line.starts_with(|c: char| c.is_ascii_alphabetic()) && id.trim_start_matches(' ').starts_with('=')
}

fn syntax(file: &SourceFile, skipped: usize, error: &ParserError) -> Fault {
    let hint = match &error.kind {
        ErrorKind::MissingDefaultVariant => "mark the variant for everything else with `*`, as in `*[other]`",
        ErrorKind::MultipleDefaultVariants => "leave `*` at one variant only",
        ErrorKind::ExpectedToken('=') => "a message is `name = text`; lines that go on are indented",
        ErrorKind::ExpectedToken('}') | ErrorKind::UnbalancedClosingBrace => "each `{` needs its `}`",
        ErrorKind::UnterminatedStringLiteral => "close the quotes on the same line",
        ErrorKind::ExpectedMessageField { .. } | ErrorKind::ExpectedTermField { .. } => {
            "write a text after the `=`"
        }
        ErrorKind::ForbiddenCallee => "functions have names in capitals, as `NUMBER`",
        _ => "see projectfluent.org/fluent/guide for how messages are written",
    };
    Fault::new("words.syntax", file.place_at(skipped + error.pos.start), error.kind.to_string(), hint)
}
