//! A RON text as a tree whose nodes know where they stand.

/// Bytes of a node in its file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Span {
    /// First byte.
    pub(super) start: usize,
    /// Byte after the last.
    pub(super) end: usize,
}

/// Index of a node in its tree.
pub(super) type NodeId = usize;

/// A value with its place.
#[derive(Debug, Clone)]
pub(super) struct Node {
    /// Number within the tree, in reading order.
    pub(super) id: NodeId,
    /// Where it stands.
    pub(super) span: Span,
    /// What it is.
    pub(super) kind: Kind,
}

/// A field of a struct, with the place of its name.
#[derive(Debug, Clone)]
pub(super) struct Field {
    /// Name.
    pub(super) name: String,
    /// Where the name stands.
    pub(super) span: Span,
    /// Value.
    pub(super) value: Node,
}

/// What a node is.
#[derive(Debug, Clone)]
pub(super) enum Kind {
    /// A bare word: a unit struct, a unit variant, `true`, `None`.
    Word(String),
    /// A string, decoded.
    Text(String),
    /// A number as written.
    Number(String),
    /// A character or byte string as written; no form uses them.
    Other,
    /// `[...]`
    List(Vec<Node>),
    /// `(a, b)` or `Name(a, b)`
    Tuple(Option<String>, Vec<Node>),
    /// `(a: 1)` or `Name(a: 1)`
    Struct(Option<String>, Vec<Field>),
    /// `{ key: value }`
    Map(Vec<(Node, Node)>),
}

impl Kind {
    /// The kind in words, for messages.
    pub(super) fn words(&self) -> String {
        match self {
            Self::Word(w) => format!("the word `{w}`"),
            Self::Text(t) => format!("the text {t:?}"),
            Self::Number(n) => format!("the number {n}"),
            Self::Other => "a character".into(),
            Self::List(_) => "a list".into(),
            Self::Tuple(name, _) => name.as_ref().map_or_else(|| "a tuple".into(), |n| format!("`{n}(...)`")),
            Self::Struct(name, _) => {
                name.as_ref().map_or_else(|| "a group of fields".into(), |n| format!("`{n}(...)`"))
            }
            Self::Map(_) => "a map".into(),
        }
    }
}
