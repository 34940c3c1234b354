//! One thing that does not fit, on its way up through serde.

use std::fmt::Display;

use serde::de;

use super::super::nearest;
use super::super::node::{Field, Node, NodeId};

/// One thing that does not fit.
#[derive(Debug)]
pub struct Slip {
    pub(super) code: &'static str,
    pub(super) what: String,
    pub(super) hint: String,
    /// The node that is left out when the reading starts anew, and the first byte of what is wrong.
    pub(super) place: Option<(NodeId, usize)>,
    /// Whether something was not there: perhaps only because it was left out.
    pub(super) lacks: bool,
    /// The fields of the group that are missing.
    pub(super) lacking: Option<Vec<&'static str>>,
}

impl Slip {
    pub(super) fn new(code: &'static str, what: String, hint: String) -> Self {
        Self { code, what, hint, place: None, lacks: false, lacking: None }
    }

    /// Gives the slip its place unless it has one.
    pub(super) fn at(mut self, node: &Node<'_>) -> Self {
        let _ = self.place.get_or_insert((node.id, node.at));
        self
    }

    /// Gives the slip the place of a field's name unless it has one.
    pub(super) fn at_field(mut self, field: &Field<'_>) -> Self {
        let _ = self.place.get_or_insert((field.value.id, field.at));
        self
    }

    /// A part that was left out for its own fault, wanted again.
    pub(super) fn left_out(node: &Node<'_>) -> Self {
        let mut slip = Self::new("form.wrong-kind", "a value is missing".into(), "write it".into()).at(node);
        slip.lacks = true;
        slip
    }

    /// A group of fields that ends with something missing: finds all that are missing, if no value of it slipped.
    pub(super) fn with_lacking(mut self, given: &[Field<'_>], known: &'static [&'static str]) -> Self {
        let Some(first) = self.lacking_first().filter(|_| self.place.is_none()) else { return self };
        if known.is_empty() {
            self.lacking = None;
            return self;
        }
        // A field whose name is misspelled is told as such, and is not missing as well.
        let is_given = |name: &str| {
            given
                .iter()
                .any(|f| f.name == name || !known.contains(&f.name) && near(f.name, known) == Some(name))
        };
        let may_be_absent = |name: &str| known.iter().any(|k| k.strip_suffix('?') == Some(name));
        let from = known.iter().position(|k| *k == first).unwrap_or(known.len());
        let rest = known.iter().skip(from).copied();
        let lacking = rest.filter(|k| !k.ends_with('?') && !is_given(k) && !may_be_absent(k)).collect();
        self.lacking = Some(lacking);
        self
    }

    fn lacking_first(&self) -> Option<&'static str> {
        self.lacking.as_ref()?.first().copied()
    }
}

impl Display for Slip {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.what)
    }
}

impl std::error::Error for Slip {}

/// `a`, `b`, `c` for hints.
pub(super) fn listed(names: &[&str]) -> String {
    let names = names.iter().filter(|n| !n.ends_with('?'));
    names.map(|n| format!("`{n}`")).collect::<Vec<_>>().join(", ")
}

/// The known name that a wrong one is near to.
fn near(word: &str, known: &'static [&'static str]) -> Option<&'static str> {
    nearest(word, known.iter().copied().filter(|n| !n.ends_with('?')))
}

/// 'did you mean' when a name is near, else all that are known.
fn suggest(word: &str, known: &'static [&'static str]) -> String {
    match near(word, known) {
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
        let hint = format!(
            "add `{field}: ...`; in a data sheet, equipment that the unit does not have is `NotFitted`"
        );
        let mut slip = Self::new("form.missing-field", format!("`{field}` is missing"), hint);
        slip.lacks = true;
        slip.lacking = Some(vec![field]);
        slip
    }

    fn duplicate_field(field: &'static str) -> Self {
        Self::new("form.duplicate", format!("`{field}` is given twice"), "keep one of them".into())
    }

    fn invalid_type(_: de::Unexpected<'_>, expected: &dyn de::Expected) -> Self {
        Self::new("form.wrong-kind", String::new(), format!("write {expected}"))
    }

    fn invalid_length(len: usize, expected: &dyn de::Expected) -> Self {
        let mut slip =
            Self::new("form.wrong-kind", format!("{len} values are given"), format!("write {expected}"));
        slip.lacks = true;
        slip
    }
}
