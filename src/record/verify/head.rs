//! The first fields of `record.json`: which schema it follows and which record it is.

use std::fmt;

use serde::de::{Deserialize, DeserializeSeed, Deserializer, IgnoredAny, MapAccess, Visitor};

/// The newest major version of the schema that is known here.
pub(super) const SCHEMA: u32 = 1;

/// `schema` (`"1"` or `"1.0"`: the major version counts), `id`, `tablet` and `number` of a `record.json`.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Head {
    pub(super) major: u32,
    pub(super) id: String,
    pub(super) tablet: String,
    pub(super) number: u32,
}

/// What was read so far. The rest of the file is not looked at once it is complete: a record's digests say
/// already that nothing in it was changed, and parsing all of it would cost more than hashing it.
#[derive(Debug, Default)]
struct Found {
    schema: Option<String>,
    id: Option<String>,
    tablet: Option<String>,
    number: Option<u32>,
}

impl Head {
    pub(super) fn read(json: &[u8]) -> Result<Self, String> {
        let mut found = Found::default();
        let end = Fields(&mut found).deserialize(&mut serde_json::Deserializer::from_slice(json));
        let Found { schema, id, tablet, number } = found;
        let missing = |name: &str| match &end {
            Err(fault) => format!("{fault}"),
            Ok(()) => format!("it has no {name}"),
        };
        let schema = schema.ok_or_else(|| missing("schema"))?;
        let major = schema.split('.').next().and_then(|major| major.parse().ok());
        Ok(Self {
            major: major.ok_or_else(|| format!("its schema {schema:?} is not a version such as 1.0"))?,
            id: id.ok_or_else(|| missing("id"))?,
            tablet: tablet.ok_or_else(|| missing("tablet"))?,
            number: number.ok_or_else(|| missing("number"))?,
        })
    }
}

struct Fields<'a>(&'a mut Found);

impl<'de> DeserializeSeed<'de> for Fields<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<(), D::Error> {
        deserializer.deserialize_map(self)
    }
}

impl<'de> Visitor<'de> for Fields<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object that begins with schema, id, tablet and number")
    }

    fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<(), M::Error> {
        let found = self.0;
        while let Some(name) = map.next_key::<Name>()? {
            match name.0.as_str() {
                "schema" => found.schema = Some(map.next_value()?),
                "id" => found.id = Some(map.next_value()?),
                "tablet" => found.tablet = Some(map.next_value()?),
                "number" => found.number = Some(map.next_value()?),
                _ => {
                    let _: IgnoredAny = map.next_value()?;
                }
            }
            let Found { schema, id, tablet, number } = &*found;
            if schema.is_some() && id.is_some() && tablet.is_some() && number.is_some() {
                break;
            }
        }
        Ok(())
    }
}

/// A key of the object.
struct Name(String);

impl<'de> Deserialize<'de> for Name {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer).map(Self)
    }
}
