//! Tests of what is said. Sources are named beside the values they give.

mod formats;
mod loading;
mod saying;

use super::Words;
use crate::source::{Fault, SourceFile};

/// The messages that the door for numbers needs, as they ship.
const FORMAT: &str = include_str!("../../i18n/en-US/format.ftl");

fn file(name: &str, text: &str) -> SourceFile {
    SourceFile { name: name.into(), text: text.into() }
}

fn load(files: &[(&str, &str)]) -> (Words, Vec<Fault>) {
    let files: Vec<SourceFile> = files.iter().map(|(name, text)| file(name, text)).collect();
    Words::load(&files)
}

/// Words of files that have no fault.
fn sound(files: &[(&str, &str)]) -> Words {
    let (words, faults) = load(files);
    assert_eq!(faults, []);
    words
}
