//! Reads RON into typed values, collecting *all* faults of a file, each with its place.
//!
//! The `ron` crate judges the syntax. Then the text is walked into a tree of located nodes, and serde reads
//! the typed value from that tree. When a node does not fit, its fault is kept, the node is left out and the
//! reading starts anew, until nothing new is found: so one slip does not hide the next.

use std::collections::BTreeSet;
use std::fmt::Display;

use serde::de::value::{StrDeserializer, U64Deserializer};
use serde::de::{self, DeserializeOwned, DeserializeSeed, IntoDeserializer, Visitor};
use serde::{Deserialize, Deserializer};

use super::node::{Field, Kind, Node, NodeId, Span};
use super::{Fault, SourceFile, nearest, scan};

/// Most faults reported for one file.
const FAULT_CAP: usize = 200;

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

impl<'de, T: Deserialize<'de>> Deserialize<'de> for At<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
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
        deserializer.deserialize_newtype_struct(AT, Pair(std::marker::PhantomData))
    }
}

/// Reads `NotFitted` as `None` and anything else as `Some`. An absent value stays a fault.
///
/// # Errors
/// The value is neither `NotFitted` nor a `T`.
pub fn read_fitted<'de, T: Deserialize<'de>, D: Deserializer<'de>>(d: D) -> Result<Option<T>, D::Error> {
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
    d.deserialize_newtype_struct(FITTED, Fits(std::marker::PhantomData))
}

/// Reads a RON file. `None` when it cannot be used; the faults say why.
#[must_use]
pub fn read<T: DeserializeOwned>(file: &SourceFile) -> (Option<T>, Vec<Fault>) {
    let tree = match syntax(file) {
        Ok(tree) => tree,
        Err(fault) => return (None, vec![*fault]),
    };
    let mut faults = Vec::new();
    let mut skip = BTreeSet::new();
    loop {
        match T::deserialize(Reader { node: &tree, skip: &skip }) {
            Ok(value) => return (faults.is_empty().then_some(value), faults),
            Err(slip) => {
                let node = slip.node.unwrap_or(tree.id);
                let span = slip.span.unwrap_or(tree.span);
                // A field that was left out for its own fault is not missing.
                let echo = slip.missing && left_out_below(&tree, node, &skip);
                if !echo {
                    faults.push(Fault::new(slip.code, file.place_at(span.start), slip.what, slip.hint));
                }
                if node == tree.id || !skip.insert(node) || faults.len() >= FAULT_CAP {
                    return (None, faults);
                }
            }
        }
    }
}

/// The tree of a file that `ron` finds sound.
fn syntax(file: &SourceFile) -> Result<Node, Box<Fault>> {
    use ron::extensions::Extensions;
    if u64::try_from(file.text.len()).unwrap_or(u64::MAX) > super::FILE_CAP {
        return Err(Box::new(Fault::new(
            "form.too-large",
            file.place_at(0),
            format!("the file holds {} bytes, more than the {} allowed", file.text.len(), super::FILE_CAP),
            "split it; one topic, unit or guide a file",
        )));
    }
    let options = ron::Options::default().with_default_extension(
        Extensions::IMPLICIT_SOME | Extensions::UNWRAP_NEWTYPES | Extensions::UNWRAP_VARIANT_NEWTYPES,
    );
    if let Err(e) = options.from_str::<de::IgnoredAny>(&file.text) {
        let place = super::Place {
            file: std::sync::Arc::clone(&file.name),
            line: u32::try_from(e.span.start.line).unwrap_or(u32::MAX),
            col: u32::try_from(e.span.start.col).unwrap_or(u32::MAX),
        };
        let (code, hint) = if matches!(e.code, ron::Error::ExceededRecursionLimit) {
            ("form.too-deep", "no form needs such nesting; look for a bracket that is opened again and again")
        } else {
            ("form.syntax", "look at this place and just before it for a missing comma, quote or bracket")
        };
        return Err(Box::new(Fault::new(code, place, e.code.to_string(), hint)));
    }
    scan::tree(&file.text).map_err(|lost| {
        Box::new(Fault::new(
            "form.syntax",
            file.place_at(lost.at),
            "this cannot be read here",
            "use plain fields, lists, maps, texts and numbers",
        ))
    })
}

/// Whether a direct part of the node `id` was left out already.
fn left_out_below(node: &Node, id: NodeId, skip: &BTreeSet<NodeId>) -> bool {
    let parts: Vec<&Node> = match &node.kind {
        Kind::List(items) | Kind::Tuple(_, items) => items.iter().collect(),
        Kind::Struct(_, fields) => fields.iter().map(|f| &f.value).collect(),
        Kind::Map(entries) => entries.iter().flat_map(|(k, v)| [k, v]).collect(),
        _ => Vec::new(),
    };
    if node.id == id {
        return parts.iter().any(|p| skip.contains(&p.id));
    }
    parts.into_iter().any(|p| left_out_below(p, id, skip))
}

/// One thing that does not fit, on its way up to [`read`].
#[derive(Debug)]
pub struct Slip {
    code: &'static str,
    what: String,
    hint: String,
    node: Option<NodeId>,
    span: Option<Span>,
    missing: bool,
}

impl Slip {
    fn new(code: &'static str, what: String, hint: String) -> Self {
        Self { code, what, hint, node: None, span: None, missing: false }
    }

    /// Gives the slip its place unless it has one.
    fn at(mut self, node: &Node) -> Self {
        if self.node.is_none() {
            self.node = Some(node.id);
            self.span = Some(node.span);
        }
        self
    }

    /// Gives the slip the place of a field's name unless it has one.
    fn at_field(mut self, field: &Field) -> Self {
        if self.node.is_none() {
            self.node = Some(field.value.id);
            self.span = Some(field.span);
        }
        self
    }
}

impl Display for Slip {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.what)
    }
}

impl std::error::Error for Slip {}

/// `a`, `b`, `c` for hints.
fn listed(names: &[&str]) -> String {
    names.iter().map(|n| format!("`{n}`")).collect::<Vec<_>>().join(", ")
}

/// 'did you mean' when a name is near, else all that are known.
fn suggest(word: &str, known: &'static [&'static str]) -> String {
    match nearest(word, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("known here: {}", listed(known)),
    }
}

impl de::Error for Slip {
    fn custom<T: Display>(message: T) -> Self {
        let text = message.to_string();
        let (what, hint) = text.split_once("; ").unwrap_or((&text, "correct the value"));
        Self::new("form.value", what.into(), hint.into())
    }

    fn unknown_field(field: &str, expected: &'static [&'static str]) -> Self {
        Self::new("form.unknown-field", format!("there is no field `{field}` here"), suggest(field, expected))
    }

    fn unknown_variant(variant: &str, expected: &'static [&'static str]) -> Self {
        Self::new("form.unknown-word", format!("`{variant}` is not known here"), suggest(variant, expected))
    }

    fn missing_field(field: &'static str) -> Self {
        let mut slip = Self::new(
            "form.missing-field",
            format!("`{field}` is missing"),
            format!("add `{field}: ...`; equipment the unit does not have is written `NotFitted`"),
        );
        slip.missing = true;
        slip
    }

    fn duplicate_field(field: &'static str) -> Self {
        Self::new("form.duplicate", format!("`{field}` is given twice"), "keep one of them".into())
    }

    fn invalid_type(_: de::Unexpected<'_>, expected: &dyn de::Expected) -> Self {
        Self::new("form.wrong-kind", String::new(), format!("write {expected}"))
    }

    fn invalid_length(len: usize, expected: &dyn de::Expected) -> Self {
        Self::new("form.wrong-kind", format!("{len} values are given"), format!("write {expected}"))
    }
}

/// Reads one node of the tree.
struct Reader<'a> {
    node: &'a Node,
    skip: &'a BTreeSet<NodeId>,
}

impl<'a> Reader<'a> {
    /// Locates a slip here, and says what stands here when the kind is wrong.
    fn here(&self, mut slip: Slip) -> Slip {
        if slip.code == "form.wrong-kind" && slip.what.is_empty() {
            slip.what = format!("{} does not fit here", self.node.kind.words());
        }
        slip.at(self.node)
    }

    fn on(&self, node: &'a Node) -> Self {
        Reader { node, skip: self.skip }
    }

    fn number<T: std::str::FromStr + DeserializeOwned>(&self, what: &str) -> Result<T, Slip> {
        let Kind::Number(raw) = &self.node.kind else {
            return Err(self.wrong(what));
        };
        ron::from_str(raw).map_err(|_| {
            self.here(Slip::new("form.wrong-kind", format!("{raw} does not fit here"), format!("write {what}")))
        })
    }

    fn wrong(&self, what: &str) -> Slip {
        self.here(Slip::new("form.wrong-kind", String::new(), format!("write {what}")))
    }

    fn items(&self, items: &'a [Node]) -> Items<'a> {
        Items { items: items.iter(), skip: self.skip }
    }
}

/// Reads integers of every width through the two widest.
macro_rules! integers {
    ($($name:ident $visit:ident $ty:ty, $words:literal;)*) => {$(
        fn $name<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
            let n = self.number::<$ty>($words)?;
            visitor.$visit(n).map_err(|e| self.here(e))
        }
    )*};
}

impl<'de> Deserializer<'de> for Reader<'_> {
    type Error = Slip;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Text(t) => visitor.visit_str(t).map_err(|e| self.here(e)),
            Kind::Word(w) if w == "true" || w == "false" => {
                visitor.visit_bool(w == "true").map_err(|e| self.here(e))
            }
            Kind::Word(w) => visitor.visit_str(w).map_err(|e| self.here(e)),
            Kind::Number(raw) if raw.parse::<u64>().is_ok() => self.deserialize_u64(visitor),
            Kind::Number(raw) if raw.parse::<i64>().is_ok() => self.deserialize_i64(visitor),
            Kind::Number(_) => self.deserialize_f64(visitor),
            Kind::Other => Err(self.wrong("a text in double quotes")),
            Kind::List(items) | Kind::Tuple(_, items) => {
                visitor.visit_seq(self.items(items)).map_err(|e| self.here(e))
            }
            Kind::Struct(_, fields) => visitor.visit_map(Fields::new(fields, self.skip)).map_err(|e| self.here(e)),
            Kind::Map(_) => self.deserialize_map(visitor),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word(w) if w == "true" || w == "false" => visitor.visit_bool(w == "true"),
            _ => Err(self.wrong("true or false")),
        }
    }

    integers! {
        deserialize_u8 visit_u8 u8, "a whole number from 0 to 255";
        deserialize_u16 visit_u16 u16, "a whole number from 0 to 65535";
        deserialize_u32 visit_u32 u32, "a whole number";
        deserialize_u64 visit_u64 u64, "a whole number";
        deserialize_i8 visit_i8 i8, "a whole number";
        deserialize_i16 visit_i16 i16, "a whole number";
        deserialize_i32 visit_i32 i32, "a whole number";
        deserialize_i64 visit_i64 i64, "a whole number";
    }

    fn deserialize_f32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        self.deserialize_f64(visitor)
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        let n = self.number::<f64>("a number")?;
        if n.is_finite() {
            visitor.visit_f64(n).map_err(|e| self.here(e))
        } else {
            Err(self.here(Slip::new(
                "form.not-a-number",
                "NaN and infinity are not values".into(),
                "write a finite number".into(),
            )))
        }
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Text(t) => visitor.visit_str(t).map_err(|e| self.here(e)),
            _ => Err(self.wrong("a text in double quotes")),
        }
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        self.deserialize_str(visitor)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word(w) if w == "None" => visitor.visit_none(),
            Kind::Tuple(Some(name), items) if name == "Some" => match items.as_slice() {
                [item] => visitor.visit_some(self.on(item)),
                _ => Err(self.wrong("one value")),
            },
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match (name, &self.node.kind) {
            (AT, _) => visitor.visit_seq(Located { step: 0, reader: self }),
            (FITTED, Kind::Word(w)) if w == "NotFitted" => visitor.visit_unit(),
            _ => visitor.visit_newtype_struct(self),
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::List(items) => visitor.visit_seq(self.items(items)).map_err(|e| self.here(e)),
            _ => Err(self.wrong("a list: [ ... ]")),
        }
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Tuple(None, items) | Kind::List(items) if items.len() == len => {
                visitor.visit_seq(self.items(items)).map_err(|e| self.here(e))
            }
            _ => Err(self.wrong(&format!("a tuple of {len} values: (a, b)"))),
        }
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        len: usize,
        visitor: V,
    ) -> Result<V::Value, Slip> {
        self.deserialize_tuple(len, visitor)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Map(entries) => {
                let mut seen = BTreeSet::new();
                for (key, _) in entries.iter().filter(|(_, v)| !self.skip.contains(&v.id)) {
                    if let Kind::Text(t) = &key.kind
                        && !seen.insert(t)
                    {
                        let mut slip =
                            Slip::new("form.duplicate", format!("the key {t:?} is given twice"), "keep one of them".into());
                        slip.span = Some(key.span);
                        slip.node = entries.iter().rfind(|(k, _)| k.id == key.id).map(|(_, v)| v.id);
                        return Err(slip);
                    }
                }
                visitor.visit_map(Entries { entries: entries.iter(), skip: self.skip, value: None })
                    .map_err(|e| self.here(e))
            }
            _ => Err(self.wrong("a map: { \"key\": value }")),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Struct(given, fields) if given.as_deref().is_none_or(|g| g == name) => {
                visitor.visit_map(Fields::new(fields, self.skip)).map_err(|e| self.here(e))
            }
            Kind::Tuple(None, items) if items.is_empty() => {
                visitor.visit_map(Fields::new(&[], self.skip)).map_err(|e| self.here(e))
            }
            _ => Err(self.wrong("a group of fields: (name: value, ...)")),
        }
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        let node = self.node;
        match &node.kind {
            Kind::Word(_) | Kind::Tuple(Some(_), _) | Kind::Struct(Some(_), _) => {
                visitor.visit_enum(Variant { reader: Reader { node, skip: self.skip } }).map_err(|e| self.here(e))
            }
            _ => Err(self.wrong(&format!("one of {}", listed(variants)))),
        }
    }

    fn deserialize_identifier<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        self.deserialize_any(visitor)
    }

    fn deserialize_unit<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Tuple(None, items) if items.is_empty() => visitor.visit_unit(),
            _ => Err(self.wrong("()")),
        }
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(self, name: &'static str, v: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word(w) if w == name => v.visit_unit(),
            _ => Err(self.wrong(name)),
        }
    }

    serde::forward_to_deserialize_any! { char bytes byte_buf ignored_any i128 u128 }
}

/// Place, then value.
struct Located<'a> {
    step: u8,
    reader: Reader<'a>,
}

impl<'de> de::SeqAccess<'de> for Located<'_> {
    type Error = Slip;
    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Slip> {
        self.step += 1;
        match self.step {
            1 => {
                let start = u64::try_from(self.reader.node.span.start).unwrap_or(u64::MAX);
                seed.deserialize(U64Deserializer::<Slip>::new(start)).map(Some)
            }
            2 => seed
                .deserialize(Reader { node: self.reader.node, skip: self.reader.skip })
                .map(Some)
                .map_err(|e| self.reader.here(e)),
            _ => Ok(None),
        }
    }
}

/// The items of a list that were not left out.
struct Items<'a> {
    items: std::slice::Iter<'a, Node>,
    skip: &'a BTreeSet<NodeId>,
}

impl<'de> de::SeqAccess<'de> for Items<'_> {
    type Error = Slip;
    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Slip> {
        let skip = self.skip;
        match self.items.find(|n| !skip.contains(&n.id)) {
            Some(node) => {
                let reader = Reader { node, skip };
                seed.deserialize(Reader { node, skip }).map(Some).map_err(|e| reader.here(e))
            }
            None => Ok(None),
        }
    }
}

/// The fields of a struct that were not left out.
struct Fields<'a> {
    fields: std::slice::Iter<'a, Field>,
    skip: &'a BTreeSet<NodeId>,
    value: Option<&'a Field>,
}

impl<'a> Fields<'a> {
    fn new(fields: &'a [Field], skip: &'a BTreeSet<NodeId>) -> Self {
        Self { fields: fields.iter(), skip, value: None }
    }
}

impl<'de> de::MapAccess<'de> for Fields<'_> {
    type Error = Slip;
    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Slip> {
        let skip = self.skip;
        let Some(field) = self.fields.find(|f| !skip.contains(&f.value.id)) else { return Ok(None) };
        self.value = Some(field);
        let name: StrDeserializer<'_, Slip> = field.name.as_str().into_deserializer();
        seed.deserialize(name).map(Some).map_err(|e| e.at_field(field))
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, Slip> {
        let field = self.value.take().ok_or_else(|| <Slip as de::Error>::custom("a value before its name"))?;
        let reader = Reader { node: &field.value, skip: self.skip };
        seed.deserialize(Reader { node: &field.value, skip: self.skip }).map_err(|e| reader.here(e))
    }
}

/// The entries of a map that were not left out.
struct Entries<'a> {
    entries: std::slice::Iter<'a, (Node, Node)>,
    skip: &'a BTreeSet<NodeId>,
    value: Option<&'a Node>,
}

impl<'de> de::MapAccess<'de> for Entries<'_> {
    type Error = Slip;
    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Slip> {
        let skip = self.skip;
        let Some((key, value)) = self.entries.find(|(_, v)| !skip.contains(&v.id)) else { return Ok(None) };
        self.value = Some(value);
        seed.deserialize(Reader { node: key, skip }).map(Some).map_err(|mut e| {
            e.span = Some(key.span);
            e.node = Some(value.id);
            e
        })
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, Slip> {
        let node = self.value.take().ok_or_else(|| <Slip as de::Error>::custom("a value before its key"))?;
        let reader = Reader { node, skip: self.skip };
        seed.deserialize(Reader { node, skip: self.skip }).map_err(|e| reader.here(e))
    }
}

/// A variant of an enum with its content.
struct Variant<'a> {
    reader: Reader<'a>,
}

impl<'de, 'a> de::EnumAccess<'de> for Variant<'a> {
    type Error = Slip;
    type Variant = Self;
    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, Self), Slip> {
        let name = match &self.reader.node.kind {
            Kind::Word(w) => w.as_str(),
            Kind::Tuple(Some(n), _) | Kind::Struct(Some(n), _) => n.as_str(),
            _ => return Err(self.reader.wrong("a word")),
        };
        let value = seed.deserialize(StrDeserializer::<Slip>::new(name)).map_err(|e| self.reader.here(e))?;
        Ok((value, self))
    }
}

impl<'de> de::VariantAccess<'de> for Variant<'_> {
    type Error = Slip;

    fn unit_variant(self) -> Result<(), Slip> {
        match &self.reader.node.kind {
            Kind::Word(_) => Ok(()),
            _ => Err(self.reader.wrong("the word alone, without brackets")),
        }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Slip> {
        match &self.reader.node.kind {
            Kind::Tuple(_, items) if items.len() == 1 => match items.first() {
                Some(item) => {
                    let inner = self.reader.on(item);
                    seed.deserialize(self.reader.on(item)).map_err(|e| inner.here(e))
                }
                None => Err(self.reader.wrong("one value in brackets")),
            },
            // `Note(max: 5)`: the fields of the content stand directly in the variant.
            Kind::Struct(_, fields) => {
                let bare = Node {
                    id: self.reader.node.id,
                    span: self.reader.node.span,
                    kind: Kind::Struct(None, fields.clone()),
                };
                seed.deserialize(Reader { node: &bare, skip: self.reader.skip }).map_err(|e| self.reader.here(e))
            }
            _ => Err(self.reader.wrong("one value in brackets")),
        }
    }

    fn tuple_variant<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, Slip> {
        match &self.reader.node.kind {
            Kind::Tuple(_, items) if items.len() == len => {
                visitor.visit_seq(self.reader.items(items)).map_err(|e| self.reader.here(e))
            }
            _ => Err(self.reader.wrong(&format!("{len} values in brackets"))),
        }
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match &self.reader.node.kind {
            Kind::Struct(_, fields) => {
                visitor.visit_map(Fields::new(fields, self.reader.skip)).map_err(|e| self.reader.here(e))
            }
            _ => Err(self.reader.wrong("fields in brackets: (name: value)")),
        }
    }
}
