//! Walks over a RON text once and keeps where every value stands.
//!
//! It knows the plain part of RON that forms are written in, and takes nothing that the `ron` crate would refuse;
//! a test holds both against each other. What it does not know, it leaves to that crate to judge.

use std::borrow::Cow;

use super::node::{Field, Kind, Node, NodeId};

/// Deepest nesting of brackets.
const DEEPEST: usize = 60;

/// Why a text could not be walked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Lost {
    /// Byte where the walk stopped.
    pub(super) at: usize,
    /// Whether it stopped for too many brackets inside each other.
    pub(super) too_deep: bool,
}

impl Lost {
    const fn at(at: usize) -> Self {
        Self { at, too_deep: false }
    }
}

/// Walks a whole text; with it how many nodes the tree has.
pub(super) fn tree(text: &str) -> Result<(Node<'_>, usize), Lost> {
    let mut scan = Scan { text, at: 0, next: 0, depth: 0 };
    scan.blank()?;
    let node = scan.value()?;
    scan.blank()?;
    if scan.at == text.len() { Ok((node, scan.next)) } else { scan.lost() }
}

/// Whether a text holds nothing but white space and comments.
pub(super) fn is_blank(text: &str) -> bool {
    let mut scan = Scan { text, at: 0, next: 0, depth: 0 };
    scan.blank().is_ok() && scan.at == text.len()
}

struct Scan<'a> {
    text: &'a str,
    at: usize,
    next: NodeId,
    depth: usize,
}

const fn is_name(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || byte == b'_'
}

impl<'a> Scan<'a> {
    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn peek_after(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at + 1).copied()
    }

    fn lost<T>(&self) -> Result<T, Lost> {
        Err(Lost::at(self.at))
    }

    fn eat(&mut self, byte: u8) -> bool {
        let found = self.peek() == Some(byte);
        self.at += usize::from(found);
        found
    }

    /// Skips bytes of ASCII characters and gives them back.
    fn take_while(&mut self, keep: impl Fn(u8) -> bool) -> &'a str {
        let start = self.at;
        while self.peek().is_some_and(|b| b.is_ascii() && keep(b)) {
            self.at += 1;
        }
        self.text.get(start..self.at).unwrap_or_default()
    }

    /// Skips white space and comments; block comments nest.
    fn blank(&mut self) -> Result<(), Lost> {
        loop {
            let _ = self.take_while(|b| matches!(b, b' ' | b'\t' | b'\n' | b'\r'));
            if self.peek() != Some(b'/') {
                return Ok(());
            }
            match self.peek_after() {
                Some(b'/') => self.at += self.rest().find('\n').unwrap_or_else(|| self.rest().len()),
                Some(b'*') => self.block_comment()?,
                _ => return self.lost(),
            }
        }
    }

    fn block_comment(&mut self) -> Result<(), Lost> {
        let start = self.at;
        let mut depth = 0_usize;
        while let Some(byte) = self.peek() {
            let both = (byte, self.peek_after());
            self.at += 1 + usize::from(matches!(both, (b'/', Some(b'*')) | (b'*', Some(b'/'))));
            match both {
                (b'/', Some(b'*')) => depth += 1,
                (b'*', Some(b'/')) if depth == 1 => return Ok(()),
                (b'*', Some(b'/')) => depth -= 1,
                _ => {}
            }
        }
        Err(Lost::at(start))
    }

    fn value(&mut self) -> Result<Node<'a>, Lost> {
        let (id, at) = (self.next, self.at);
        self.next += 1;
        let kind = match self.peek() {
            Some(b'[') => self.inside(|s| s.items(b']').map(Kind::List))?,
            Some(b'{') => self.inside(Self::map)?,
            Some(b'(') => self.inside(|s| s.group(None))?,
            Some(b'"') => self.text()?,
            Some(b'r') if matches!(self.peek_after(), Some(b'"' | b'#')) => self.raw_text()?,
            Some(b) if b.is_ascii_digit() || matches!(b, b'+' | b'-' | b'.') => self.number()?,
            Some(b) if b.is_ascii_alphabetic() || b == b'_' => self.named()?,
            _ => return self.lost(),
        };
        Ok(Node { id, at, kind })
    }

    /// What stands inside a bracket.
    fn inside(&mut self, read: impl FnOnce(&mut Self) -> Result<Kind<'a>, Lost>) -> Result<Kind<'a>, Lost> {
        if self.depth == DEEPEST {
            return Err(Lost { at: self.at, too_deep: true });
        }
        self.at += 1;
        self.depth += 1;
        let kind = read(self)?;
        self.depth -= 1;
        Ok(kind)
    }

    /// Whether another part follows: after a comma, and not before the closing bracket.
    fn more(&mut self, close: u8) -> Result<bool, Lost> {
        self.blank()?;
        if self.eat(close) {
            return Ok(false);
        }
        if !self.eat(b',') {
            return self.lost();
        }
        self.blank()?;
        Ok(!self.eat(close))
    }

    fn items(&mut self, close: u8) -> Result<Vec<Node<'a>>, Lost> {
        let mut items = Vec::new();
        self.blank()?;
        let mut more = !self.eat(close);
        while more {
            items.push(self.value()?);
            more = self.more(close)?;
        }
        Ok(items)
    }

    fn colon(&mut self) -> Result<(), Lost> {
        self.blank()?;
        if !self.eat(b':') {
            return self.lost();
        }
        self.blank()
    }

    fn map(&mut self) -> Result<Kind<'a>, Lost> {
        let mut entries = Vec::new();
        self.blank()?;
        let mut more = !self.eat(b'}');
        while more {
            let key = self.value()?;
            self.colon()?;
            entries.push((key, self.value()?));
            more = self.more(b'}')?;
        }
        Ok(Kind::Map(entries))
    }

    /// `( ... )` with or without names of fields, after an optional name.
    fn group(&mut self, name: Option<&'a str>) -> Result<Kind<'a>, Lost> {
        self.blank()?;
        if !self.is_field()? {
            return Ok(Kind::Tuple(name, self.items(b')')?));
        }
        let mut fields = Vec::new();
        let mut more = true;
        while more {
            let at = self.at;
            let field = self.name()?;
            self.colon()?;
            fields.push(Field { name: field, at, value: self.value()? });
            more = self.more(b')')?;
        }
        Ok(Kind::Struct(name, fields))
    }

    /// Whether a name and a colon stand here.
    fn is_field(&self) -> Result<bool, Lost> {
        let mut ahead = Scan { text: self.text, at: self.at, next: 0, depth: 0 };
        if ahead.name().is_err() {
            return Ok(false);
        }
        ahead.blank()?;
        Ok(ahead.peek() == Some(b':'))
    }

    /// A name of plain letters, digits and `_`.
    fn name(&mut self) -> Result<&'a str, Lost> {
        if !self.peek().is_some_and(|b| b.is_ascii_alphabetic() || b == b'_') {
            return self.lost();
        }
        let start = self.at;
        let name = self.take_while(is_name);
        // What else could belong to it makes it another kind of name, or a string with a prefix.
        match self.peek() {
            Some(b'"' | b'\'' | b'#' | b'.' | b'+' | b'-' | 0x80..) => Err(Lost::at(start)),
            _ => Ok(name),
        }
    }

    fn named(&mut self) -> Result<Kind<'a>, Lost> {
        let start = self.at;
        let name = self.name()?;
        match name {
            "inf" | "NaN" => return Ok(Kind::Number(name)),
            // A value is written alone.
            "Some" => return Err(Lost::at(start)),
            _ => {}
        }
        let after = self.at;
        self.blank()?;
        if self.peek() != Some(b'(') {
            self.at = after;
            return Ok(Kind::Word(name));
        }
        // These words hold nothing.
        if matches!(name, "true" | "false" | "None") || name.starts_with("inf") || name.starts_with("NaN") {
            return Err(Lost::at(start));
        }
        self.inside(|s| s.group(Some(name)))
    }

    /// A decimal number, `inf` or `NaN`, with a sign or without. Kept as written.
    fn number(&mut self) -> Result<Kind<'a>, Lost> {
        let start = self.at;
        let _ = self.eat(b'+') || self.eat(b'-');
        let word = self.rest().starts_with("inf") || self.rest().starts_with("NaN");
        let whole = if word {
            self.at += 3;
            true
        } else {
            self.digits()
        };
        match self.peek() {
            Some(b) if is_name(b) || matches!(b, b'.' | b'+' | b'-' | 0x80..) => Err(Lost::at(start)),
            _ if !whole => Err(Lost::at(start)),
            _ => Ok(Kind::Number(self.text.get(start..self.at).unwrap_or_default())),
        }
    }

    /// Digits with a point and an exponent, if it has them; false when a digit is wanting.
    fn digits(&mut self) -> bool {
        let is_digit = |b: u8| b.is_ascii_digit();
        let mut digits = self.take_while(is_digit).len();
        if self.eat(b'.') {
            digits += self.take_while(is_digit).len();
        }
        if !(self.eat(b'e') || self.eat(b'E')) {
            return digits > 0;
        }
        let _ = self.eat(b'+') || self.eat(b'-');
        digits > 0 && !self.take_while(is_digit).is_empty()
    }

    fn text(&mut self) -> Result<Kind<'a>, Lost> {
        let start = self.at;
        self.at += 1;
        loop {
            let rest = self.rest();
            let Some(found) = rest.find(['"', '\\']) else { return Err(Lost::at(start)) };
            self.at += found + 1;
            if rest.as_bytes().get(found) == Some(&b'"') {
                break;
            }
            self.at += self.rest().chars().next().map_or(0, char::len_utf8);
        }
        let whole = self.text.get(start..self.at).unwrap_or_default();
        if !whole.contains('\\') {
            let inner = self.text.get(start + 1..self.at - 1).unwrap_or_default();
            return Ok(Kind::Text(Cow::Borrowed(inner)));
        }
        match ron::from_str::<String>(whole) {
            Ok(text) => Ok(Kind::Text(Cow::Owned(text))),
            Err(_) => Err(Lost::at(start)),
        }
    }

    /// `r"..."`, `r#"..."#`: nothing in it is an escape.
    fn raw_text(&mut self) -> Result<Kind<'a>, Lost> {
        let start = self.at;
        self.at += 1;
        let hashes = self.take_while(|b| b == b'#');
        let close = format!("\"{hashes}");
        let opened = self.eat(b'"');
        match self.rest().find(&close).filter(|_| opened) {
            Some(end) => {
                let inner = self.rest().get(..end).unwrap_or_default();
                self.at += end + close.len();
                Ok(Kind::Text(Cow::Borrowed(inner)))
            }
            None => Err(Lost::at(start)),
        }
    }
}

#[cfg(test)]
mod tests;
