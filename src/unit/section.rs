//! Sections of a data sheet: one declaration gives the typed struct, its RON form and its facts.

use serde::{Deserialize, Deserializer};

use crate::measure::{Dim, Money, Of};

use super::facts::{FactKind, Value};

/// Equipment or a value that a unit may do without: `NotFitted` in the sheet. Never the same as missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fitted<T> {
    /// The unit does not have it.
    NotFitted,
    /// It is there.
    Is(T),
}

impl<T> Fitted<T> {
    /// The value, if it is fitted.
    pub fn get(&self) -> Option<&T> {
        match self {
            Self::NotFitted => None,
            Self::Is(value) => Some(value),
        }
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Fitted<T> {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        Ok(crate::source::form::read_fitted(d)?.map_or(Self::NotFitted, Self::Is))
    }
}

/// A type that can stand as a fact.
pub(super) trait AsFact {
    /// Kind of the fact.
    const KIND: FactKind;
    /// The value; `None` when the sheet leaves it to the lot.
    fn fact(&self) -> Option<Value>;
}

impl<D: Dim> AsFact for Of<D> {
    const KIND: FactKind = FactKind::Quantity(D::DIMENSION);
    fn fact(&self) -> Option<Value> {
        Some(Value::Quantity(*self.quantity()))
    }
}

impl AsFact for Money {
    const KIND: FactKind = FactKind::Money;
    fn fact(&self) -> Option<Value> {
        Some(Value::Money(*self))
    }
}

impl AsFact for u16 {
    const KIND: FactKind = FactKind::Count;
    fn fact(&self) -> Option<Value> {
        Some(Value::Count(*self))
    }
}

impl AsFact for bool {
    const KIND: FactKind = FactKind::Flag;
    fn fact(&self) -> Option<Value> {
        Some(Value::Flag(*self))
    }
}

/// A code that is printed as it stands: a tire size, a rating, a phone number.
impl AsFact for String {
    const KIND: FactKind = FactKind::Code;
    fn fact(&self) -> Option<Value> {
        Some(Value::Code(self.clone()))
    }
}

impl<T: AsFact> AsFact for Vec<T> {
    const KIND: FactKind = FactKind::List;
    fn fact(&self) -> Option<Value> {
        Some(Value::List(self.iter().filter_map(AsFact::fact).collect()))
    }
}

impl<T: AsFact> AsFact for Fitted<T> {
    const KIND: FactKind = T::KIND;
    fn fact(&self) -> Option<Value> {
        match self {
            Self::NotFitted => Some(Value::NotFitted),
            Self::Is(value) => value.fact(),
        }
    }
}

impl<T: AsFact> AsFact for Option<T> {
    const KIND: FactKind = T::KIND;
    fn fact(&self) -> Option<Value> {
        self.as_ref().and_then(AsFact::fact)
    }
}

/// A section of a sheet or of the lot.
pub(super) trait Section {
    /// Adds its facts, named `key.field`.
    fn facts(&self, key: &str, put: &mut dyn FnMut(String, Value));
    /// Adds the names and kinds of all facts it can give.
    fn catalogue(key: &str, put: &mut dyn FnMut(String, FactKind));
}

/// Declares sections: struct, form and facts from one list of fields.
macro_rules! sections {
    ($($(#[$meta:meta])* $name:ident { $($(#[$fmeta:meta])* $field:ident: $ty:ty,)* })*) => {$(
        $(#[$meta])*
        #[derive(Debug, Clone, PartialEq, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name { $($(#[$fmeta])* pub $field: $ty,)* }

        impl $crate::unit::section::Section for $name {
            fn facts(&self, key: &str, put: &mut dyn FnMut(String, $crate::unit::facts::Value)) {
                $(if let Some(value) = $crate::unit::section::AsFact::fact(&self.$field) {
                    put(format!("{key}.{}", stringify!($field)), value);
                })*
            }
            fn catalogue(key: &str, put: &mut dyn FnMut(String, $crate::unit::facts::FactKind)) {
                $(put(format!("{key}.{}", stringify!($field)),
                    <$ty as $crate::unit::section::AsFact>::KIND);)*
            }
        }
    )*};
}

/// Declares a set of words that can stand in a sheet, and their facts in kebab case.
macro_rules! words {
    ($($(#[$meta:meta])* $name:ident { $($(#[$vmeta:meta])* $variant:ident = $text:literal,)* })*) => {$(
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, serde::Deserialize)]
        pub enum $name { $($(#[$vmeta])* $variant,)* }

        impl $name {
            /// The word as facts, keys of messages and records spell it.
            #[must_use]
            pub fn word(self) -> &'static str {
                match self { $(Self::$variant => $text,)* }
            }
        }

        impl $crate::unit::section::AsFact for $name {
            const KIND: $crate::unit::facts::FactKind =
                $crate::unit::facts::FactKind::Word(&[$($text),*]);
            fn fact(&self) -> Option<$crate::unit::facts::Value> {
                Some($crate::unit::facts::Value::Word(self.word()))
            }
        }
    )*};
}

pub(super) use {sections, words};
