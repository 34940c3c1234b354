//! Finds the places of the values in a RON text.
//!
//! The `ron` crate judges the text first and decodes strings and numbers; what is left here is to walk over
//! brackets, commas and names of a text that is known to be sound.

use super::node::{Field, Kind, Node, NodeId, Span};

/// Why a text could not be walked: only when `ron` accepts what this walker does not know.
#[derive(Debug)]
pub(super) struct Lost {
    /// Byte where the walk stopped.
    pub(super) at: usize,
}

/// Walks a whole text.
pub(super) fn tree(text: &str) -> Result<Node, Lost> {
    let mut scan = Scan { text, at: 0, next: 0 };
    scan.blank();
    while scan.rest().starts_with("#![") {
        let end = scan.rest().find(']').ok_or(Lost { at: scan.at })?;
        scan.at += end + 1;
        scan.blank();
    }
    let node = scan.value()?;
    scan.blank();
    if scan.at == text.len() { Ok(node) } else { Err(Lost { at: scan.at }) }
}

struct Scan<'a> {
    text: &'a str,
    at: usize,
    next: NodeId,
}

impl<'a> Scan<'a> {
    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn lost<T>(&self) -> Result<T, Lost> {
        Err(Lost { at: self.at })
    }

    fn eat(&mut self, c: char) -> bool {
        let found = self.peek() == Some(c);
        if found {
            self.at += c.len_utf8();
        }
        found
    }

    fn skip_while(&mut self, keep: impl Fn(char) -> bool) {
        let rest = self.rest();
        self.at += rest.find(|c| !keep(c)).unwrap_or(rest.len());
    }

    /// Skips white space and comments; block comments nest.
    fn blank(&mut self) {
        loop {
            self.skip_while(char::is_whitespace);
            if self.rest().starts_with("//") {
                self.skip_while(|c| c != '\n');
            } else if self.rest().starts_with("/*") {
                self.block_comment();
            } else {
                return;
            }
        }
    }

    fn block_comment(&mut self) {
        let mut depth = 0_usize;
        while !self.rest().is_empty() {
            if self.rest().starts_with("/*") {
                depth += 1;
                self.at += 2;
            } else if self.rest().starts_with("*/") {
                depth = depth.saturating_sub(1);
                self.at += 2;
                if depth == 0 {
                    return;
                }
            } else {
                self.at += self.peek().map_or(0, char::len_utf8);
            }
        }
    }

    fn value(&mut self) -> Result<Node, Lost> {
        let id = self.next;
        self.next += 1;
        let start = self.at;
        let kind = match self.peek() {
            Some('[') => self.list()?,
            Some('{') => self.map()?,
            Some('(') => self.group(None)?,
            Some('"') => self.text(start)?,
            Some('\'') => self.character()?,
            Some(c) if c.is_ascii_digit() || matches!(c, '+' | '-' | '.') => self.number(),
            Some(_) if self.is_raw_string() => self.text(start)?,
            Some(c) if c.is_alphabetic() || c == '_' => self.named()?,
            _ => return self.lost(),
        };
        Ok(Node { id, span: Span { start, end: self.at }, kind })
    }

    fn is_raw_string(&self) -> bool {
        let rest = self.rest().trim_start_matches('b');
        rest.strip_prefix('r').is_some_and(|r| r.trim_start_matches('#').starts_with('"'))
            || self.rest().starts_with("b\"")
            || self.rest().starts_with("b'")
    }

    fn list(&mut self) -> Result<Kind, Lost> {
        self.at += 1;
        Ok(Kind::List(self.items(']')?))
    }

    fn items(&mut self, close: char) -> Result<Vec<Node>, Lost> {
        let mut items = Vec::new();
        loop {
            self.blank();
            if self.eat(close) {
                return Ok(items);
            }
            items.push(self.value()?);
            self.blank();
            if !self.eat(',') {
                return if self.eat(close) { Ok(items) } else { self.lost() };
            }
        }
    }

    fn map(&mut self) -> Result<Kind, Lost> {
        self.at += 1;
        let mut entries = Vec::new();
        loop {
            self.blank();
            if self.eat('}') {
                return Ok(Kind::Map(entries));
            }
            let key = self.value()?;
            self.blank();
            if !self.eat(':') {
                return self.lost();
            }
            self.blank();
            entries.push((key, self.value()?));
            self.blank();
            if !self.eat(',') {
                return if self.eat('}') { Ok(Kind::Map(entries)) } else { self.lost() };
            }
        }
    }

    /// `( ... )` with or without field names, after an optional name.
    fn group(&mut self, name: Option<String>) -> Result<Kind, Lost> {
        self.at += 1;
        self.blank();
        if self.field_name().is_none() {
            return Ok(Kind::Tuple(name, self.items(')')?));
        }
        let mut fields = Vec::new();
        loop {
            self.blank();
            if self.eat(')') {
                return Ok(Kind::Struct(name, fields));
            }
            let start = self.at;
            let (field, len) = self.field_name().ok_or(Lost { at: start })?;
            self.at += len;
            let span = Span { start, end: self.at };
            self.blank();
            if !self.eat(':') {
                return self.lost();
            }
            self.blank();
            fields.push(Field { name: field, span, value: self.value()? });
            self.blank();
            if !self.eat(',') {
                return if self.eat(')') { Ok(Kind::Struct(name, fields)) } else { self.lost() };
            }
        }
    }

    /// The name at the cursor when a single colon follows it, and its length in bytes.
    fn field_name(&self) -> Option<(String, usize)> {
        let (name, len) = self.name();
        if name.is_empty() {
            return None;
        }
        let mut after = Scan { text: self.text, at: self.at + len, next: 0 };
        after.blank();
        after.eat(':').then(|| (name.to_owned(), len))
    }

    /// The identifier at the cursor without a raw prefix, and its length with it.
    fn name(&self) -> (&'a str, usize) {
        let rest = self.rest();
        let (raw, body) = rest.strip_prefix("r#").map_or((0, rest), |b| (2, b));
        let end = body
            .find(|c: char| !(c.is_alphanumeric() || c == '_' || (raw > 0 && matches!(c, '.' | '-' | '+'))))
            .unwrap_or(body.len());
        (body.get(..end).unwrap_or_default(), raw + end)
    }

    fn named(&mut self) -> Result<Kind, Lost> {
        let (name, len) = self.name();
        self.at += len;
        if name.is_empty() {
            return self.lost();
        }
        if matches!(name, "inf" | "NaN") {
            return Ok(Kind::Number(name.into()));
        }
        let after = self.at;
        self.blank();
        if self.peek() == Some('(') {
            return self.group(Some(name.into()));
        }
        self.at = after;
        Ok(Kind::Word(name.into()))
    }

    fn number(&mut self) -> Kind {
        let start = self.at;
        self.skip_while(|c| c.is_alphanumeric() || matches!(c, '+' | '-' | '.' | '_'));
        Kind::Number(self.text.get(start..self.at).unwrap_or_default().into())
    }

    fn character(&mut self) -> Result<Kind, Lost> {
        self.at += 1;
        while let Some(c) = self.peek() {
            self.at += c.len_utf8();
            match c {
                '\\' => self.at += self.peek().map_or(0, char::len_utf8),
                '\'' => return Ok(Kind::Other),
                _ => {}
            }
        }
        self.lost()
    }

    fn text(&mut self, start: usize) -> Result<Kind, Lost> {
        self.skip_while(|c| c == 'b');
        if self.peek() == Some('\'') {
            return self.character();
        }
        let raw = self.eat('r');
        let hashes_from = self.at;
        if raw {
            self.skip_while(|c| c == '#');
        }
        let close = format!("\"{}", self.text.get(hashes_from..self.at).unwrap_or_default());
        if !self.eat('"') {
            return self.lost();
        }
        loop {
            if self.rest().starts_with(&close) {
                self.at += close.len();
                break;
            }
            match self.peek() {
                Some('\\') if !raw => self.at += 1 + self.rest().chars().nth(1).map_or(0, char::len_utf8),
                Some(c) => self.at += c.len_utf8(),
                None => return self.lost(),
            }
        }
        let slice = self.text.get(start..self.at).unwrap_or_default();
        Ok(ron::from_str::<String>(slice).map_or(Kind::Other, Kind::Text))
    }
}
