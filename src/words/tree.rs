//! Walking the tree of a parsed message.

use fluent_syntax::ast::{Expression, InlineExpression, Pattern, PatternElement, VariantKey};

/// What a pattern is made of, one piece at a time.
pub(super) enum Piece<'a> {
    /// `$name`, to be printed.
    Variable(&'a str),
    /// `$name`, to choose a variant by; without a value the default is chosen.
    Selector(&'a str),
    /// `id` or `id.attribute`.
    Message(&'a str, Option<&'a str>),
    /// `-id`, possibly with an attribute in a selector, and the names of the values handed to it.
    Term(&'a str, Vec<&'a str>),
    /// `NAME(...)`.
    Function(&'a str),
    /// A number in a placeable, in a variant, or as an argument.
    Number(&'a str),
    /// A number behind the name of an option, as `minimumFractionDigits: 2`.
    Option(&'a str),
}

/// Every piece of a pattern in the order of the text. Depth is held by [`super::load`], which refuses entries
/// with more brackets than a person would write.
pub(super) fn pieces<'a>(pattern: &'a Pattern<&'a str>, found: &mut dyn FnMut(Piece<'a>)) {
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            expression_pieces(expression, found);
        }
    }
}

fn expression_pieces<'a>(expression: &'a Expression<&'a str>, found: &mut dyn FnMut(Piece<'a>)) {
    match expression {
        Expression::Inline(inline) => inline_pieces(inline, found),
        Expression::Select { selector, variants } => {
            match selector {
                InlineExpression::VariableReference { id } => found(Piece::Selector(id.name)),
                other => inline_pieces(other, found),
            }
            for variant in variants {
                if let VariantKey::NumberLiteral { value } = &variant.key {
                    found(Piece::Number(value));
                }
                pieces(&variant.value, found);
            }
        }
    }
}

fn inline_pieces<'a>(inline: &'a InlineExpression<&'a str>, found: &mut dyn FnMut(Piece<'a>)) {
    let arguments = match inline {
        InlineExpression::VariableReference { id } => {
            found(Piece::Variable(id.name));
            None
        }
        InlineExpression::MessageReference { id, attribute } => {
            found(Piece::Message(id.name, attribute.as_ref().map(|attribute| attribute.name)));
            None
        }
        InlineExpression::TermReference { id, arguments, .. } => {
            let named = arguments.iter().flat_map(|arguments| &arguments.named).map(|named| named.name.name);
            found(Piece::Term(id.name, named.collect()));
            arguments.as_ref()
        }
        InlineExpression::FunctionReference { id, arguments } => {
            found(Piece::Function(id.name));
            Some(arguments)
        }
        InlineExpression::NumberLiteral { value } => {
            found(Piece::Number(value));
            None
        }
        InlineExpression::Placeable { expression } => {
            expression_pieces(expression, found);
            None
        }
        InlineExpression::StringLiteral { .. } => None,
    };
    let Some(arguments) = arguments else { return };
    for positional in &arguments.positional {
        inline_pieces(positional, found);
    }
    for named in &arguments.named {
        match &named.value {
            InlineExpression::NumberLiteral { value } => found(Piece::Option(value)),
            other => inline_pieces(other, found),
        }
    }
}

/// Where a slice of a text begins in it, in bytes.
pub(super) fn offset_in(text: &str, slice: &str) -> usize {
    (slice.as_ptr() as usize).saturating_sub(text.as_ptr() as usize).min(text.len())
}
