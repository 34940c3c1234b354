//! A RON text as a tree whose nodes know where they stand.

use std::borrow::Cow;

/// Index of a node in its tree.
pub(super) type NodeId = usize;

/// A value with its place.
#[derive(Debug)]
pub(super) struct Node<'a> {
    /// Number within the tree, in reading order.
    pub(super) id: NodeId,
    /// Its first byte in the file.
    pub(super) at: usize,
    /// What it is.
    pub(super) kind: Kind<'a>,
}

/// A field of a struct, with the place of its name.
#[derive(Debug)]
pub(super) struct Field<'a> {
    /// Name.
    pub(super) name: &'a str,
    /// First byte of the name in the file.
    pub(super) at: usize,
    /// Value.
    pub(super) value: Node<'a>,
}

/// What a node is.
#[derive(Debug)]
pub(super) enum Kind<'a> {
    /// A bare word: a unit struct, a unit variant, `true`, `None`.
    Word(&'a str),
    /// A string, decoded.
    Text(Cow<'a, str>),
    /// A number as written.
    Number(&'a str),
    /// `[...]`
    List(Vec<Node<'a>>),
    /// `(a, b)` or `Name(a, b)`
    Tuple(Option<&'a str>, Vec<Node<'a>>),
    /// `(a: 1)` or `Name(a: 1)`
    Struct(Option<&'a str>, Vec<Field<'a>>),
    /// `{ key: value }`
    Map(Vec<(Node<'a>, Node<'a>)>),
}

impl Kind<'_> {
    /// The kind in words, for messages.
    pub(super) fn words(&self) -> String {
        match self {
            Self::Word(w) => format!("the word `{w}`"),
            Self::Text(t) => format!("the text {t:?}"),
            Self::Number(n) => format!("the number {n}"),
            Self::List(_) => "a list".into(),
            Self::Tuple(None, _) => "a tuple".into(),
            Self::Struct(None, _) => "a group of fields".into(),
            Self::Tuple(Some(name), _) | Self::Struct(Some(name), _) => format!("`{name}(...)`"),
            Self::Map(_) => "a map".into(),
        }
    }
}

impl<'a> Node<'a> {
    /// The nodes directly inside.
    pub(super) fn parts(&self) -> Vec<&Self> {
        match &self.kind {
            Kind::List(items) | Kind::Tuple(_, items) => items.iter().collect(),
            Kind::Struct(_, fields) => fields.iter().map(|f| &f.value).collect(),
            Kind::Map(entries) => entries.iter().flat_map(|(k, v)| [k, v]).collect(),
            Kind::Word(_) | Kind::Text(_) | Kind::Number(_) => Vec::new(),
        }
    }

    /// The node inside with this id. Ids count in reading order, so each level leads to one part alone.
    pub(super) fn find(&self, id: NodeId) -> Option<&Self> {
        let mut node = self;
        while node.id != id {
            node = node.parts().into_iter().rev().find(|p| p.id <= id)?;
        }
        Some(node)
    }

    /// What stands under a name: a field, the value of a key, or an item by its number.
    pub(super) fn get(&self, name: &str) -> Option<&Self> {
        match &self.kind {
            Kind::Struct(_, fields) => fields.iter().find(|f| f.name == name).map(|f| &f.value),
            Kind::Map(entries) => {
                entries.iter().find(|(k, _)| matches!(&k.kind, Kind::Text(t) if t == name)).map(|(_, v)| v)
            }
            Kind::List(items) | Kind::Tuple(_, items) => items.get(name.parse::<usize>().ok()?),
            Kind::Word(_) | Kind::Text(_) | Kind::Number(_) => None,
        }
    }
}
