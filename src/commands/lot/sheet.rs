//! The text of a data sheet in the making.

use crate::check::where_to_read;

/// Text so far, and the facts that it gives only a stand-in for.
#[derive(Debug)]
pub(super) struct Draft {
    pub(super) text: String,
    pub(super) not_known: Vec<String>,
}

impl Draft {
    /// A sheet that begins with this.
    pub(super) fn new(head: &str) -> Self {
        Self { text: head.to_owned(), not_known: Vec::new() }
    }

    /// Writes a section. A `?` before a value marks it as a stand-in.
    pub(super) fn section(&mut self, name: &str, remark: &str, body: &str) {
        self.remark(remark);
        self.text.push_str(&format!("    {name}: "));
        let mut said = String::new();
        for (at, piece) in body.split('?').enumerate() {
            if at > 0 {
                let before = said.trim_end().trim_end_matches(':');
                let from =
                    before.rfind(|c: char| !(c.is_ascii_alphanumeric() || c == '_')).map_or(0, |i| i + 1);
                let field = before.get(from..).unwrap_or_default();
                self.not_known.push(format!("{name}.{field}"));
            }
            said.push_str(piece);
        }
        self.text.push_str(&said);
        self.text.push_str(",\n");
    }

    /// Writes equipment, or that it is not fitted.
    pub(super) fn perhaps(&mut self, name: &str, remark: &str, body: Option<String>) {
        match body {
            Some(body) => self.section(name, remark, &body),
            None => self.section(name, "", "NotFitted"),
        }
    }

    /// Writes a list, an item a line.
    pub(super) fn list(&mut self, name: &str, remark: &str, items: &[String]) {
        self.remark(remark);
        self.text.push_str(&format!("    {name}: ["));
        for item in items {
            self.text.push_str(&format!("\n        {item},"));
        }
        self.text.push_str(if items.is_empty() { "],\n" } else { "\n    ],\n" });
    }

    /// Writes a remark above what follows; none when it is empty.
    pub(super) fn remark(&mut self, remark: &str) {
        for line in remark.lines() {
            self.text.push_str(&format!("    // {line}\n"));
        }
    }

    /// Writes which values are stand-ins, each with where it is read.
    pub(super) fn close(&mut self) {
        self.remark(
            "Values above that are only stand-ins: nothing is computed from them, and texts say so.\n\
             Read each, correct it above, then take its line out.",
        );
        self.text.push_str("    not_known: [");
        for name in &self.not_known {
            self.text.push_str(&format!("\n        \"{name}\", // {}", where_to_read(name)));
        }
        self.text.push_str(if self.not_known.is_empty() { "],\n" } else { "\n    ],\n" });
    }
}
