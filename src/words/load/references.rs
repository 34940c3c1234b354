//! References to nowhere, functions that do not exist, messages that contain themselves.

use std::collections::{BTreeMap, BTreeSet};

use fluent_syntax::ast::Pattern;

use super::super::language::{Language, Used};
use super::super::tree::{Piece, pieces};
use super::Told;
use super::entries::Named;
use crate::source::Fault;

/// The references of each text: what it refers to, and the slice that names it.
type Graph<'a> = BTreeMap<String, (&'a Used, Vec<(String, &'a str)>)>;

pub(super) fn check(language: &Language, told: &mut Told) {
    let mut graph = Graph::new();
    for (id, (file, entry)) in language.index.iter() {
        let Some(used) = language.files.get(*file) else { continue };
        let Some(named) = used.resource.get_entry(*entry).and_then(Named::of) else { continue };
        if let Some(value) = named.value {
            collect(language, used, (id, None), value, &mut graph, told);
        }
        for attribute in named.attributes {
            collect(language, used, (id, Some(attribute.id.name)), &attribute.value, &mut graph, told);
        }
    }
    cycles(&graph, told);
}

fn collect<'a>(
    language: &Language,
    used: &'a Used,
    (id, attribute): (&str, Option<&str>),
    pattern: &'a Pattern<&'a str>,
    graph: &mut Graph<'a>,
    told: &mut Told,
) {
    let key = || attribute.map_or_else(|| id.to_owned(), |attribute| format!("{id}.{attribute}"));
    let mut refers = Vec::new();
    pieces(pattern, &mut |piece| {
        let (slice, to, exists) = match piece {
            Piece::Message(to, attribute) => {
                let key = attribute.map_or_else(|| to.to_owned(), |attribute| format!("{to}.{attribute}"));
                let exists = language.pattern(&key).is_some();
                (to, key, exists)
            }
            Piece::Term(to, handed) => {
                let key = format!("-{to}");
                let exists = language.index.contains_key(&key);
                holes(language, used, to, &handed, told);
                (to, key, exists)
            }
            Piece::Function(name) => (name, format!("{name}()"), name == "NUMBER"),
            _ => return,
        };
        if !exists {
            told.tell(|| {
                Fault::new(
                    "words.reference",
                    used.place(slice),
                    format!("`{}` refers to `{to}`, which does not exist in {}", key(), language.tag),
                    "write it, or correct the name",
                )
            });
        }
        refers.push((to, slice));
    });
    if !refers.is_empty() {
        graph.insert(key(), (used, refers));
    }
}

/// A term has only the values that are handed to it; the formatter prints the name of another and says nothing.
fn holes(language: &Language, used: &Used, term: &str, handed: &[&str], told: &mut Told) {
    let Some(pattern) = language.pattern(&format!("-{term}")) else { return };
    pieces(pattern, &mut |piece| match piece {
        Piece::Variable(name) if !handed.contains(&name) => told.tell(|| {
            Fault::new(
                "words.term-value",
                used.place(term),
                format!("`-{term}` prints ${name}, which is not handed to it here"),
                format!("write `-{term}({name}: \"...\")`, or make a message of the term"),
            )
        }),
        Piece::Message(to, _) if !language.uses(to).variables.is_empty() => told.tell(|| {
            Fault::new(
                "words.term-value",
                used.place(term),
                format!("`-{term}` contains the message `{to}`, whose values do not reach into a term"),
                "make a message of the term",
            )
        }),
        _ => {}
    });
}

/// Goes down every reference once; one that leads back to a text that is still open closes a circle.
fn cycles(graph: &Graph<'_>, told: &mut Told) {
    let mut done: BTreeSet<&str> = BTreeSet::new();
    for root in graph.keys() {
        let mut open: BTreeSet<&str> = BTreeSet::new();
        let mut path: Vec<(&str, usize)> = vec![(root, 0)];
        while let Some((key, next)) = path.pop() {
            if done.contains(key) {
                continue;
            }
            open.insert(key);
            let Some((used, refers)) = graph.get(key) else {
                open.remove(key);
                continue;
            };
            let Some((to, slice)) = refers.get(next) else {
                open.remove(key);
                done.insert(key);
                continue;
            };
            path.push((key, next + 1));
            if open.contains(to.as_str()) {
                told.tell(|| {
                    Fault::new(
                        "words.cycle",
                        used.place(slice),
                        format!("`{key}` refers to `{to}`, which contains `{key}`"),
                        "take one of the references out",
                    )
                });
            } else {
                path.push((to, 0));
            }
        }
    }
}
