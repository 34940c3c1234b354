//! Reads typed values from the nodes of a tree.
#![allow(clippy::result_large_err, reason = "serde wants the fault itself, and faults are few")]

use std::collections::BTreeSet;
use std::str::FromStr;

use serde::Deserializer;
use serde::de::Visitor;

use super::super::node::{Field, Kind, Node, NodeId};
use super::access::{Entries, Fields, Items, Located, Variant};
use super::slip::{Slip, listed};
use super::{AT, FITTED};

/// Reads one node of the tree.
#[derive(Clone, Copy)]
pub(super) struct Reader<'a> {
    pub(super) node: &'a Node<'a>,
    /// Nodes that are left out, since their faults are told.
    pub(super) skip: &'a BTreeSet<NodeId>,
    /// Whether the name of a variant has been read already, so that its fields stand alone.
    bare: bool,
}

impl<'a> Reader<'a> {
    pub(super) fn new(node: &'a Node<'a>, skip: &'a BTreeSet<NodeId>) -> Self {
        Self { node, skip, bare: false }
    }

    pub(super) fn bare(self) -> Self {
        Self { bare: true, ..self }
    }

    pub(super) fn on(self, node: &'a Node<'a>) -> Self {
        Self::new(node, self.skip)
    }

    pub(super) fn is_left_out(&self, node: &Node<'_>) -> bool {
        !self.skip.is_empty() && self.skip.contains(&node.id)
    }

    /// Locates a slip here, and says what stands here when the kind is wrong.
    pub(super) fn here(&self, mut slip: Slip) -> Slip {
        if slip.what.is_empty() {
            slip.what = format!("{} does not fit here", self.node.kind.words());
        }
        slip.at(self.node)
    }

    pub(super) fn wrong(&self, what: &str) -> Slip {
        if matches!(self.node.kind, Kind::Word("NotFitted")) {
            let given = "every unit has this, so that `NotFitted` does not fit here".to_owned();
            return self.here(Slip::new("form.not-fitted", given, format!("write {what}")));
        }
        self.here(Slip::new("form.wrong-kind", String::new(), format!("write {what}")))
    }

    pub(super) fn items(&self, items: &'a [Node<'a>]) -> Items<'a> {
        Items { items: items.iter(), reader: *self }
    }

    fn number<T: FromStr>(&self, what: &str) -> Result<T, Slip> {
        match &self.node.kind {
            Kind::Number(raw) => raw.parse().map_err(|_| self.wrong(what)),
            _ => Err(self.wrong(what)),
        }
    }

    /// The fields of a group, each once.
    pub(super) fn fields<V: Visitor<'a>>(
        &self,
        fields: &'a [Field<'a>],
        known: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        let mut seen = BTreeSet::new();
        for field in fields.iter().filter(|f| !self.is_left_out(&f.value)) {
            if !seen.insert(field.name) {
                let what = format!("`{}` is given twice", field.name);
                return Err(Slip::new("form.duplicate", what, "keep one of them".into()).at_field(field));
            }
        }
        visitor
            .visit_map(Fields { fields: fields.iter(), reader: *self, value: None })
            .map_err(|e| self.here(e.with_lacking(fields, known)))
    }

    /// The entries of a map, each key once.
    fn entries<V: Visitor<'a>>(
        &self,
        entries: &'a [(Node<'a>, Node<'a>)],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        let mut seen = BTreeSet::new();
        for (key, value) in entries.iter().filter(|(_, v)| !self.is_left_out(v)) {
            if let Kind::Text(text) = &key.kind
                && !seen.insert(text)
            {
                let what = format!("the key {text:?} is given twice");
                let mut slip = Slip::new("form.duplicate", what, "keep one of them".into());
                slip.place = Some((value.id, key.at));
                return Err(slip);
            }
        }
        visitor
            .visit_map(Entries { entries: entries.iter(), reader: *self, value: None })
            .map_err(|e| self.here(e))
    }
}

/// Reads whole numbers of every width.
macro_rules! integers {
    ($($name:ident $visit:ident $ty:ty, $words:literal;)*) => {$(
        fn $name<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
            let n = self.number::<$ty>($words)?;
            visitor.$visit(n).map_err(|e| self.here(e))
        }
    )*};
}

impl<'a> Deserializer<'a> for Reader<'a> {
    type Error = Slip;

    fn deserialize_any<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word("true" | "false") => self.deserialize_bool(visitor),
            Kind::Word(text) => visitor.visit_str(text).map_err(|e| self.here(e)),
            Kind::Text(text) => visitor.visit_str(text).map_err(|e| self.here(e)),
            Kind::Number(raw) if raw.parse::<u64>().is_ok() => self.deserialize_u64(visitor),
            Kind::Number(raw) if raw.parse::<i64>().is_ok() => self.deserialize_i64(visitor),
            Kind::Number(_) => self.deserialize_f64(visitor),
            Kind::List(items) | Kind::Tuple(_, items) => {
                visitor.visit_seq(self.items(items)).map_err(|e| self.here(e))
            }
            Kind::Struct(_, fields) => self.fields(fields, &[], visitor),
            Kind::Map(entries) => self.entries(entries, visitor),
        }
    }

    fn deserialize_bool<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word("true") => visitor.visit_bool(true).map_err(|e| self.here(e)),
            Kind::Word("false") => visitor.visit_bool(false).map_err(|e| self.here(e)),
            _ => Err(self.wrong("true or false")),
        }
    }

    integers! {
        deserialize_u8 visit_u8 u8, "a whole number from 0 to 255";
        deserialize_u16 visit_u16 u16, "a whole number from 0 to 65535";
        deserialize_u32 visit_u32 u32, "a whole number";
        deserialize_u64 visit_u64 u64, "a whole number";
        deserialize_i8 visit_i8 i8, "a whole number from -128 to 127";
        deserialize_i16 visit_i16 i16, "a whole number from -32768 to 32767";
        deserialize_i32 visit_i32 i32, "a whole number";
        deserialize_i64 visit_i64 i64, "a whole number";
    }

    fn deserialize_f32<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        self.deserialize_f64(visitor)
    }

    fn deserialize_f64<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        let n = self.number::<f64>("a number")?;
        if n.is_finite() {
            return visitor.visit_f64(n).map_err(|e| self.here(e));
        }
        let what = format!("{} is no value", self.node.kind.words());
        Err(self.here(Slip::new("form.not-a-number", what, "write a finite number".into())))
    }

    fn deserialize_str<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Text(text) => visitor.visit_str(text).map_err(|e| self.here(e)),
            // Quantities are texts; a number that is none is told as such.
            Kind::Number(raw) if raw.parse::<f64>().is_ok_and(|n| !n.is_finite()) => {
                self.deserialize_f64(visitor)
            }
            _ => Err(self.wrong("a text in double quotes")),
        }
    }

    fn deserialize_string<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        self.deserialize_str(visitor)
    }

    fn deserialize_option<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word("None") => visitor.visit_none().map_err(|e| self.here(e)),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'a>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match (name, &self.node.kind) {
            (AT, _) => visitor.visit_seq(Located { step: 0, reader: self }),
            (FITTED, Kind::Word("NotFitted")) => visitor.visit_unit().map_err(|e| self.here(e)),
            _ => visitor.visit_newtype_struct(self),
        }
    }

    fn deserialize_seq<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::List(items) => visitor.visit_seq(self.items(items)).map_err(|e| self.here(e)),
            _ => Err(self.wrong("a list: [ ... ]")),
        }
    }

    fn deserialize_tuple<V: Visitor<'a>>(self, len: usize, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Tuple(None, items) | Kind::List(items) if items.len() == len => {
                visitor.visit_seq(self.items(items)).map_err(|e| self.here(e))
            }
            _ => Err(self.wrong(&format!("{len} values: (a, b)"))),
        }
    }

    fn deserialize_tuple_struct<V: Visitor<'a>>(
        self,
        _: &'static str,
        len: usize,
        visitor: V,
    ) -> Result<V::Value, Slip> {
        self.deserialize_tuple(len, visitor)
    }

    fn deserialize_map<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Map(entries) => self.entries(entries, visitor),
            _ => Err(self.wrong("a map: { \"key\": value }")),
        }
    }

    fn deserialize_struct<V: Visitor<'a>>(
        self,
        name: &'static str,
        known: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Struct(given, fields) if self.bare || given.is_none_or(|g| g == name) => {
                self.fields(fields, known, visitor)
            }
            Kind::Tuple(None, items) if items.is_empty() => self.fields(&[], known, visitor),
            _ => Err(self.wrong("a group of fields: (name: value, ...)")),
        }
    }

    fn deserialize_enum<V: Visitor<'a>>(
        self,
        _: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word(_) | Kind::Tuple(Some(_), _) | Kind::Struct(Some(_), _) => {
                visitor.visit_enum(Variant { reader: self }).map_err(|e| self.here(e))
            }
            _ => Err(self.wrong(&format!("one of {}", listed(variants)))),
        }
    }

    fn deserialize_identifier<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        self.deserialize_any(visitor)
    }

    fn deserialize_unit<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Tuple(None, items) if items.is_empty() => visitor.visit_unit().map_err(|e| self.here(e)),
            _ => Err(self.wrong("()")),
        }
    }

    fn deserialize_unit_struct<V: Visitor<'a>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match &self.node.kind {
            Kind::Word(w) if *w == name => visitor.visit_unit().map_err(|e| self.here(e)),
            _ => Err(self.wrong(name)),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Slip> {
        visitor.visit_unit()
    }

    serde::forward_to_deserialize_any! { <V: Visitor<'a>> char bytes byte_buf i128 u128 }
}

impl Reader<'_> {
    /// The name of the variant that stands here.
    pub(super) fn variant(&self) -> Option<&str> {
        match &self.node.kind {
            Kind::Word(name) | Kind::Tuple(Some(name), _) | Kind::Struct(Some(name), _) => Some(name),
            _ => None,
        }
    }

    /// The one value that a variant holds, unless it was left out.
    pub(super) fn only<'b>(&self, items: &'b [Node<'b>]) -> Result<&'b Node<'b>, Slip> {
        match items {
            [item] if self.is_left_out(item) => Err(Slip::left_out(self.node)),
            [item] => Ok(item),
            _ => Err(self.wrong("one value in brackets")),
        }
    }
}
