//! Faults in single messages: written twice, measures typed in, numbers that cannot be formatted.

use std::collections::BTreeMap;

use fluent_syntax::ast::{Attribute, Entry, Pattern};

use super::super::language::Used;
use super::super::tree::{Piece, pieces};
use super::super::typed::typed_measures;
use super::Told;
use crate::source::Fault;

/// Names of measures may hold a number, as in liters per 100 kilometers.
const MEASURE_NAMES: &str = "measure-";
/// Most digits of a number in a message: plural rules fail on more.
const MOST_DIGITS: usize = 15;
/// Largest number of an option such as `minimumFractionDigits`.
const LARGEST_OPTION: u32 = 9;

/// The id as it is indexed, the name as it stands in the text, the text, the attributes.
pub(super) struct Named<'a> {
    pub(super) id: String,
    pub(super) name: &'a str,
    pub(super) value: Option<&'a Pattern<&'a str>>,
    pub(super) attributes: &'a [Attribute<&'a str>],
}

impl<'a> Named<'a> {
    pub(super) fn of(entry: &'a Entry<&'a str>) -> Option<Self> {
        match entry {
            Entry::Message(message) => Some(Self {
                id: message.id.name.to_owned(),
                name: message.id.name,
                value: message.value.as_ref(),
                attributes: &message.attributes,
            }),
            Entry::Term(term) => Some(Self {
                id: format!("-{}", term.id.name),
                name: term.id.name,
                value: Some(&term.value),
                attributes: &term.attributes,
            }),
            _ => None,
        }
    }

    fn patterns(&self) -> impl Iterator<Item = &'a Pattern<&'a str>> {
        self.value.into_iter().chain(self.attributes.iter().map(|attribute| &attribute.value))
    }
}

/// Where each message stands. Faults: a message or attribute that is written twice, a measure typed in.
pub(super) fn index(tag: &str, files: &[Used], told: &mut Told) -> BTreeMap<String, (usize, usize)> {
    let mut index: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    for (file_at, used) in files.iter().enumerate() {
        for (entry_at, entry) in used.resource.entries().enumerate() {
            let Some(named) = Named::of(entry) else { continue };
            typed(used, &named, told);
            attributes(used, &named, told);
            if let Some((other, first)) = index.get(&named.id) {
                let place = files
                    .get(*other)
                    .and_then(|other| Some(other.place(Named::of(other.resource.get_entry(*first)?)?.name)));
                told.tell(|| {
                    Fault::new(
                        "words.duplicate",
                        used.place(named.name),
                        format!(
                            "`{}` is written twice in {tag}; the first stands at {}",
                            named.id,
                            place.map_or_else(String::new, |place| place.to_string())
                        ),
                        "keep one of them; the first is used until then",
                    )
                });
                continue;
            }
            index.insert(named.id, (file_at, entry_at));
        }
    }
    index
}

fn attributes(used: &Used, named: &Named<'_>, told: &mut Told) {
    if named.attributes.len() < 2 {
        return;
    }
    let mut seen: BTreeMap<&str, &str> = BTreeMap::new();
    for attribute in named.attributes {
        let name = attribute.id.name;
        if let Some(first) = seen.get(name) {
            told.tell(|| {
                Fault::new(
                    "words.duplicate",
                    used.place(name),
                    format!(
                        "`{}.{name}` is written twice; the first stands at {}",
                        named.id,
                        used.place(first)
                    ),
                    "keep one of them",
                )
            });
        } else {
            seen.insert(name, name);
        }
    }
}

fn typed(used: &Used, named: &Named<'_>, told: &mut Told) {
    if named.id.starts_with(MEASURE_NAMES) {
        return;
    }
    for pattern in named.patterns() {
        typed_measures(used.resource.source(), pattern, &mut |offset, found| {
            told.tell(|| {
                Fault::new(
                    "words.typed-measure",
                    used.file.place_at(used.skipped + offset),
                    format!("`{}` has a measured value or a sum typed into its text: {found}", named.id),
                    "write the value in lot.ron or the data sheet and use its variable here",
                )
            });
        });
    }
}

/// Finds numbers that would stop the formatter. A file with such a number is not used.
pub(super) fn numbers_are_sound(used: &Used, told: &mut Told) -> bool {
    let mut all_sound = true;
    for named in used.resource.entries().filter_map(Named::of) {
        for pattern in named.patterns() {
            pieces(pattern, &mut |piece| {
                let (number, sound) = match piece {
                    Piece::Number(number) => {
                        (number, number.bytes().filter(u8::is_ascii_digit).count() <= MOST_DIGITS)
                    }
                    Piece::Option(number) => {
                        (number, number.parse::<u32>().is_ok_and(|value| value <= LARGEST_OPTION))
                    }
                    _ => return,
                };
                if !sound {
                    all_sound = false;
                    told.tell(|| {
                        Fault::new(
                            "words.number",
                            used.place(number),
                            format!(
                                "`{}` holds a number that cannot be formatted; the file is left out",
                                named.id
                            ),
                            "write a number of at most 15 digits, for an option a whole one up to 9",
                        )
                    });
                }
            });
        }
    }
    all_sound
}
