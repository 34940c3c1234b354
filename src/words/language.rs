//! One language: its files, its messages, its rules for numbers.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentError, FluentResource};
use fluent_syntax::ast::{Attribute, Entry, Pattern};
use unic_langid::LanguageIdentifier;

use super::tree::{Piece, offset_in, pieces};
use super::{Args, pseudo};
use crate::source::{Place, SourceFile};

/// A Fluent file that is in use.
#[derive(Debug, Clone)]
pub(super) struct Used {
    pub(super) file: SourceFile,
    /// Bytes of the file before the text that was parsed: a byte order mark.
    pub(super) skipped: usize,
    pub(super) resource: Arc<FluentResource>,
}

impl Used {
    /// The place of a slice of the parsed text.
    pub(super) fn place(&self, slice: &str) -> Place {
        self.file.place_at(self.skipped + offset_in(self.resource.source(), slice))
    }
}

/// How a language writes numbers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Marks {
    pub(crate) decimal: String,
    pub(crate) group: String,
    pub(crate) minus: String,
}

impl Default for Marks {
    fn default() -> Self {
        Self { decimal: ".".to_owned(), group: ",".to_owned(), minus: "\u{2212}".to_owned() }
    }
}

/// What a message uses, its own and through references.
#[derive(Debug, Default)]
pub(super) struct Uses {
    pub(super) variables: BTreeSet<String>,
    pub(super) references: BTreeSet<String>,
}

pub(super) struct Language {
    pub(super) tag: String,
    pub(super) marks: Marks,
    pub(super) files: Arc<Vec<Used>>,
    /// Messages by id and terms by `-id`: file and entry.
    pub(super) index: Arc<BTreeMap<String, (usize, usize)>>,
    bundle: FluentBundle<Arc<FluentResource>>,
}

impl Language {
    pub(super) fn new(
        tag: &str,
        id: LanguageIdentifier,
        files: Arc<Vec<Used>>,
        index: Arc<BTreeMap<String, (usize, usize)>>,
    ) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![id]);
        // The marks would show as boxes and spoil search and comparison.
        bundle.set_use_isolating(false);
        for used in files.iter() {
            // The first of two messages stays; the loader has named both.
            let _already_named = bundle.add_resource(Arc::clone(&used.resource));
        }
        // Fails only when a function is there already, which a new bundle has not.
        let _new = bundle.add_builtins();
        let mut language = Self { tag: tag.to_owned(), marks: Marks::default(), files, index, bundle };
        language.read_marks(&Marks::default());
        language
    }

    /// The messages of the source language, stretched.
    pub(super) fn pseudo(tag: &str, source: Option<&Self>) -> Self {
        let (files, index) =
            source.map(|source| (Arc::clone(&source.files), Arc::clone(&source.index))).unwrap_or_default();
        let mut language = Self::new(tag, tag.parse().unwrap_or_default(), files, index);
        language.bundle.set_transform(Some(pseudo::stretched));
        language.marks = source.map(|source| source.marks.clone()).unwrap_or_default();
        language
    }

    /// Takes the marks from the messages `number-...`, else from another language.
    pub(super) fn read_marks(&mut self, other: &Marks) {
        let mark = |key: &str, other: &str| {
            self.format(key, &Args::new())
                .filter(|(_, faults)| faults.is_empty())
                .map_or_else(|| other.to_owned(), |(text, _)| text)
        };
        self.marks = Marks {
            decimal: mark("number-decimal", &other.decimal),
            group: mark("number-group", &other.group),
            minus: mark("number-minus", &other.minus),
        };
    }

    fn entry(&self, id: &str) -> Option<(&Used, &Entry<&str>)> {
        let (file, entry) = self.index.get(id)?;
        let used = self.files.get(*file)?;
        used.resource.get_entry(*entry).map(|entry| (used, entry))
    }

    /// The text of `id`, `id.attribute` or `-id`.
    pub(super) fn pattern(&self, key: &str) -> Option<&Pattern<&str>> {
        let (id, attribute) = split(key);
        match (self.entry(id)?.1, attribute) {
            (Entry::Message(message), None) => message.value.as_ref(),
            (Entry::Term(term), None) => Some(&term.value),
            (Entry::Message(message), Some(name)) => {
                attribute_of(&message.attributes, name).map(|found| &found.value)
            }
            (Entry::Term(term), Some(name)) => attribute_of(&term.attributes, name).map(|found| &found.value),
            _ => None,
        }
    }

    pub(super) fn place_of(&self, key: &str) -> Option<Place> {
        let (id, attribute) = split(key);
        let (used, entry) = self.entry(id)?;
        let (own, attributes) = match entry {
            Entry::Message(message) => (message.id.name, &message.attributes),
            Entry::Term(term) => (term.id.name, &term.attributes),
            _ => return None,
        };
        let name = match attribute {
            None => own,
            Some(name) => attribute_of(attributes, name)?.id.name,
        };
        Some(used.place(name))
    }

    /// Messages with a text, and attributes.
    pub(super) fn keys(&self) -> BTreeSet<String> {
        let mut keys = BTreeSet::new();
        for id in self.index.keys() {
            if let Some((_, Entry::Message(message))) = self.entry(id) {
                if message.value.is_some() {
                    keys.insert(id.clone());
                }
                keys.extend(message.attributes.iter().map(|attribute| format!("{id}.{}", attribute.id.name)));
            }
        }
        keys
    }

    /// Follows references from a message, once each.
    pub(super) fn uses(&self, key: &str) -> Uses {
        let mut uses = Uses::default();
        let mut open = vec![(key.to_owned(), true)];
        while let Some((key, own_values)) = open.pop() {
            let Some(pattern) = self.pattern(&key) else { continue };
            pieces(pattern, &mut |piece| match piece {
                Piece::Variable(name) | Piece::Selector(name) if own_values => {
                    uses.variables.insert(name.to_owned());
                }
                Piece::Message(id, attribute) => {
                    let to = attribute.map_or_else(|| id.to_owned(), |attribute| format!("{id}.{attribute}"));
                    if uses.references.insert(to.clone()) {
                        open.push((to, own_values));
                    }
                }
                Piece::Term(id, _) => {
                    let to = format!("-{id}");
                    if uses.references.insert(to.clone()) {
                        open.push((to, false));
                    }
                }
                _ => {}
            });
        }
        uses
    }

    /// The text filled in, and what was missing; none when there is no such message.
    pub(super) fn format(&self, key: &str, args: &Args) -> Option<(String, Vec<FluentError>)> {
        let pattern = self.pattern(key).filter(|_| !key.starts_with('-'))?;
        let mut faults = Vec::new();
        let args = args.fluent();
        let text = self.bundle.format_pattern(pattern, Some(&args), &mut faults).into_owned();
        Some((text, faults))
    }
}

fn split(key: &str) -> (&str, Option<&str>) {
    key.split_once('.').map_or((key, None), |(id, attribute)| (id, Some(attribute)))
}

fn attribute_of<'a>(attributes: &'a [Attribute<&'a str>], name: &str) -> Option<&'a Attribute<&'a str>> {
    attributes.iter().find(|attribute| attribute.id.name == name)
}
