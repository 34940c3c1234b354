//! Reads RON into typed values, collecting *all* faults of a file, each with its place.
//!
//! The text is walked into a tree of located nodes, and serde reads the typed value from that tree. When a node
//! does not fit, its fault is kept, the node is left out and the reading starts anew, until nothing new is found:
//! so one slip does not hide the next. A text that cannot be walked is judged by the `ron` crate.
//!
//! A field that may be absent also bears the name with a `?`, as in `#[serde(default, alias = "when?")]`, which
//! nobody can write in RON. So the reader knows which of the absent fields are missing, and names them all at once.

mod access;
mod reader;
mod slip;

use std::collections::BTreeSet;

use serde::de::{self, DeserializeOwned, Visitor};
use serde::{Deserialize, Deserializer};

use super::node::{Node, NodeId};
use super::{Fault, Place, SourceFile, scan};
use reader::Reader;
use slip::Slip;

/// Most faults reported for one file.
const FAULT_CAP: usize = 200;
/// Most nodes read for one file, all readings together: a large file of nonsense is not read 200 times.
const WORK_CAP: usize = 5_000_000;

/// A value and the byte where it stands in its file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct At<T> {
    /// Byte offset of the value.
    pub at: usize,
    /// The value.
    pub value: T,
}

/// The name by which [`At`] asks the reader for a place.
const AT: &str = "$sendoff::At";
/// The name by which a form asks whether something is `NotFitted`; see [`read_fitted`].
const FITTED: &str = "$sendoff::Fitted";

struct Pair<T>(std::marker::PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Pair<T> {
    type Value = At<T>;

    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("a value")
    }

    fn visit_seq<A: de::SeqAccess<'de>>(self, mut seq: A) -> Result<At<T>, A::Error> {
        let at = seq.next_element::<u64>()?.unwrap_or(0);
        let value = seq.next_element()?.ok_or_else(|| de::Error::custom("no value"))?;
        Ok(At { at: usize::try_from(at).unwrap_or(usize::MAX), value })
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for At<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_newtype_struct(AT, Pair(std::marker::PhantomData))
    }
}

struct Fits<T>(std::marker::PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Fits<T> {
    type Value = Option<T>;

    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("`NotFitted` or a value")
    }

    fn visit_unit<E: de::Error>(self) -> Result<Option<T>, E> {
        Ok(None)
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, d: D) -> Result<Option<T>, D::Error> {
        T::deserialize(d).map(Some)
    }
}

/// Reads `NotFitted` as `None` and anything else as `Some`. An absent value stays a fault.
///
/// # Errors
/// The value is neither `NotFitted` nor a `T`.
pub fn read_fitted<'de, T: Deserialize<'de>, D: Deserializer<'de>>(d: D) -> Result<Option<T>, D::Error> {
    d.deserialize_newtype_struct(FITTED, Fits(std::marker::PhantomData))
}

/// Reads a RON file. `None` when it cannot be used; the faults say why.
#[must_use]
pub fn read<T: DeserializeOwned>(file: &SourceFile) -> (Option<T>, Vec<Fault>) {
    let (tree, nodes) = match tree(file) {
        Ok(found) => found,
        Err(fault) => return (None, vec![*fault]),
    };
    let mut faults = Vec::new();
    let mut skip = BTreeSet::new();
    let mut work = 0_usize;
    loop {
        let slip = match T::deserialize(Reader::new(&tree, &skip)) {
            Ok(value) => return (faults.is_empty().then_some(value), faults),
            Err(slip) => slip,
        };
        work = work.saturating_add(nodes);
        let node = slip.place.map_or(tree.id, |(node, _)| node);
        tell(file, &tree, &skip, slip, &mut faults);
        if faults.len() >= FAULT_CAP || work >= WORK_CAP {
            let place = faults.last().map_or_else(|| Place::start(&file.name), |f| f.place.clone());
            let what = format!("{} faults are enough for one file; there may be more", faults.len());
            faults.push(Fault::new(
                "form.many-faults",
                place,
                what,
                "correct the first ones and check again",
            ));
            return (None, faults);
        }
        if node == tree.id || !skip.insert(node) {
            return (None, faults);
        }
    }
}

/// The place of what stands under `path`: names of fields, keys of maps, numbers of items. Of a path that leads
/// nowhere, the place as far as it leads. For faults found when the typed value no longer knows its place.
#[must_use]
pub fn place_of(file: &SourceFile, path: &[&str]) -> Place {
    let Ok((tree, _)) = scan::tree(&file.text) else { return Place::start(&file.name) };
    let mut node = &tree;
    for name in path {
        let Some(inner) = node.get(name) else { break };
        node = inner;
    }
    file.place_at(node.at)
}

/// The tree of a file that is sound, and how many nodes it has.
fn tree(file: &SourceFile) -> Result<(Node<'_>, usize), Box<Fault>> {
    if u64::try_from(file.text.len()).unwrap_or(u64::MAX) > super::FILE_CAP {
        return Err(Box::new(super::too_large(Place::start(&file.name))));
    }
    scan::tree(&file.text).map_err(|lost| Box::new(unsound(file, lost)))
}

/// Why a text cannot be walked, in the words of `ron` where it refuses the text too.
fn unsound(file: &SourceFile, lost: scan::Lost) -> Fault {
    if lost.too_deep {
        let hint = "no form needs such nesting; look for a bracket that is opened again and again";
        return Fault::new(
            "form.too-deep",
            file.place_at(lost.at),
            "too many brackets stand inside each other",
            hint,
        );
    }
    if scan::is_blank(&file.text) {
        let hint = "write the form, or take the file away";
        return Fault::new("form.syntax", Place::start(&file.name), "the file holds nothing", hint);
    }
    match ron::from_str::<de::IgnoredAny>(&file.text) {
        Ok(_) => Fault::new(
            "form.syntax",
            file.place_at(lost.at),
            "this is more of RON than forms are written in",
            "use plain names, texts, decimal numbers, lists, maps and groups of fields",
        ),
        Err(e) => {
            let place = Place {
                file: std::sync::Arc::clone(&file.name),
                line: u32::try_from(e.span.start.line).unwrap_or(u32::MAX),
                col: u32::try_from(e.span.start.col).unwrap_or(u32::MAX),
            };
            syntax(file, place, e.code.to_string())
        }
    }
}

/// What people often do to a form, told as what it is.
fn syntax(file: &SourceFile, mut place: Place, what: String) -> Fault {
    let line = file.line(place.line).unwrap_or_default();
    let at = usize::try_from(place.col).unwrap_or(1).saturating_sub(1);
    let is_blank = |text: &str| text.chars().take(at).all(char::is_whitespace);
    let blanks = line.chars().skip(at).take_while(|c| c.is_whitespace()).count();
    let first = line.chars().nth(at + blanks);
    let curly = ['\u{201c}', '\u{201d}', '\u{201e}', '\u{2018}', '\u{2019}'];
    let (what, hint) = if first.is_some_and(|c| curly.contains(&c)) {
        place.col = place.col.saturating_add(u32::try_from(blanks).unwrap_or(0));
        ("a curly quote".to_owned(), "type straight quotes: \"...\"; a word processor makes them curly")
    } else if what == "Expected float" || what == "Expected integer" {
        place.col = place.col.saturating_add(u32::try_from(blanks).unwrap_or(0));
        ("no number can be read here".to_owned(), "a text stands in double quotes: \"...\"")
    } else if what == "Expected comma" && is_blank(line) {
        (what, "put a comma at the end of the line above; or a quote or bracket is missing before this")
    } else {
        (what, "look at this place and just before it for a missing comma, quote or bracket")
    };
    Fault::new("form.syntax", place, what, hint)
}

/// Adds the faults that a slip stands for, unless it is the echo of one that was told.
fn tell(file: &SourceFile, tree: &Node<'_>, skip: &BTreeSet<NodeId>, slip: Slip, faults: &mut Vec<Fault>) {
    let (node, at) = slip.place.unwrap_or((tree.id, tree.at));
    if let Some(lacking) = &slip.lacking {
        for field in lacking {
            let missing = <Slip as de::Error>::missing_field(field);
            faults.push(Fault::new(missing.code, file.place_at(at), missing.what, missing.hint));
        }
        return;
    }
    // What was left out for its own fault is not missing.
    let node = tree.find(node).unwrap_or(tree);
    if slip.lacks && node.parts().iter().any(|p| skip.contains(&p.id)) {
        return;
    }
    faults.push(Fault::new(slip.code, file.place_at(at), slip.what, slip.hint));
}
