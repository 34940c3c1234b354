//! Lists, groups of fields, maps and variants, without the parts that were left out.

use serde::de::value::{StrDeserializer, U64Deserializer};
use serde::de::{self, DeserializeSeed, IntoDeserializer, Visitor};

use super::super::node::{Field, Kind, Node};
use super::reader::Reader;
use super::slip::Slip;

/// Place, then value.
pub(super) struct Located<'a> {
    pub(super) step: u8,
    pub(super) reader: Reader<'a>,
}

impl<'a> de::SeqAccess<'a> for Located<'a> {
    type Error = Slip;

    fn next_element_seed<T: DeserializeSeed<'a>>(&mut self, seed: T) -> Result<Option<T::Value>, Slip> {
        self.step += 1;
        match self.step {
            1 => {
                let at = u64::try_from(self.reader.node.at).unwrap_or(u64::MAX);
                seed.deserialize(U64Deserializer::<Slip>::new(at)).map(Some)
            }
            2 => seed.deserialize(self.reader).map(Some).map_err(|e| self.reader.here(e)),
            _ => Ok(None),
        }
    }
}

/// The items of a list.
pub(super) struct Items<'a> {
    pub(super) items: std::slice::Iter<'a, Node<'a>>,
    pub(super) reader: Reader<'a>,
}

impl<'a> de::SeqAccess<'a> for Items<'a> {
    type Error = Slip;

    fn next_element_seed<T: DeserializeSeed<'a>>(&mut self, seed: T) -> Result<Option<T::Value>, Slip> {
        let list = self.reader;
        let Some(node) = self.items.find(|n| !list.is_left_out(n)) else { return Ok(None) };
        let reader = list.on(node);
        seed.deserialize(reader).map(Some).map_err(|e| reader.here(e))
    }
}

/// The fields of a group.
pub(super) struct Fields<'a> {
    pub(super) fields: std::slice::Iter<'a, Field<'a>>,
    pub(super) reader: Reader<'a>,
    pub(super) value: Option<&'a Field<'a>>,
}

impl<'a> de::MapAccess<'a> for Fields<'a> {
    type Error = Slip;

    fn next_key_seed<K: DeserializeSeed<'a>>(&mut self, seed: K) -> Result<Option<K::Value>, Slip> {
        let group = self.reader;
        let Some(field) = self.fields.find(|f| !group.is_left_out(&f.value)) else { return Ok(None) };
        self.value = Some(field);
        let name: StrDeserializer<'_, Slip> = field.name.into_deserializer();
        seed.deserialize(name).map(Some).map_err(|e| e.at_field(field))
    }

    fn next_value_seed<T: DeserializeSeed<'a>>(&mut self, seed: T) -> Result<T::Value, Slip> {
        let field =
            self.value.take().ok_or_else(|| <Slip as de::Error>::custom("a value before its name"))?;
        let reader = self.reader.on(&field.value);
        seed.deserialize(reader).map_err(|e| reader.here(e))
    }
}

/// The entries of a map.
pub(super) struct Entries<'a> {
    pub(super) entries: std::slice::Iter<'a, (Node<'a>, Node<'a>)>,
    pub(super) reader: Reader<'a>,
    pub(super) value: Option<&'a Node<'a>>,
}

impl<'a> de::MapAccess<'a> for Entries<'a> {
    type Error = Slip;

    fn next_key_seed<K: DeserializeSeed<'a>>(&mut self, seed: K) -> Result<Option<K::Value>, Slip> {
        let map = self.reader;
        let Some((key, value)) = self.entries.find(|(_, v)| !map.is_left_out(v)) else { return Ok(None) };
        self.value = Some(value);
        let reader = map.on(key);
        seed.deserialize(reader).map(Some).map_err(|e| {
            let mut slip = reader.here(e);
            // The whole entry is left out with its key.
            slip.place = slip.place.map(|(_, at)| (value.id, at));
            slip
        })
    }

    fn next_value_seed<T: DeserializeSeed<'a>>(&mut self, seed: T) -> Result<T::Value, Slip> {
        let node = self.value.take().ok_or_else(|| <Slip as de::Error>::custom("a value before its key"))?;
        let reader = self.reader.on(node);
        seed.deserialize(reader).map_err(|e| reader.here(e))
    }
}

/// A variant of an enum with its content.
pub(super) struct Variant<'a> {
    pub(super) reader: Reader<'a>,
}

impl<'a> de::EnumAccess<'a> for Variant<'a> {
    type Error = Slip;
    type Variant = Self;

    fn variant_seed<V: DeserializeSeed<'a>>(self, seed: V) -> Result<(V::Value, Self), Slip> {
        let Some(name) = self.reader.variant() else { return Err(self.reader.wrong("a word")) };
        let value = seed.deserialize(StrDeserializer::<Slip>::new(name)).map_err(|e| self.reader.here(e))?;
        Ok((value, self))
    }
}

impl<'a> de::VariantAccess<'a> for Variant<'a> {
    type Error = Slip;

    fn unit_variant(self) -> Result<(), Slip> {
        match &self.reader.node.kind {
            Kind::Word(_) => Ok(()),
            _ => Err(self.reader.wrong("the word alone, without brackets")),
        }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'a>>(self, seed: T) -> Result<T::Value, Slip> {
        let reader = self.reader;
        match &reader.node.kind {
            Kind::Tuple(_, items) => {
                let inner = reader.on(reader.only(items)?);
                seed.deserialize(inner).map_err(|e| inner.here(e))
            }
            // `Note(max: 5)`: the fields of the content stand directly in the variant.
            Kind::Struct(..) => seed.deserialize(reader.bare()).map_err(|e| reader.here(e)),
            _ => Err(reader.wrong("one value in brackets")),
        }
    }

    fn tuple_variant<V: Visitor<'a>>(self, len: usize, visitor: V) -> Result<V::Value, Slip> {
        match &self.reader.node.kind {
            Kind::Tuple(_, items) if items.len() == len => {
                visitor.visit_seq(self.reader.items(items)).map_err(|e| self.reader.here(e))
            }
            _ => Err(self.reader.wrong(&format!("{len} values in brackets"))),
        }
    }

    fn struct_variant<V: Visitor<'a>>(
        self,
        known: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Slip> {
        match &self.reader.node.kind {
            Kind::Struct(_, fields) => self.reader.fields(fields, known, visitor),
            _ => Err(self.reader.wrong("fields in brackets: (name: value)")),
        }
    }
}
