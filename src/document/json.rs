//! JSON into the tree. Every value is lent out of the text as it stands, so every place is known.

use std::fmt;

use serde::Deserializer as _;
use serde::de::{MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

use super::text::is_unseen;
use super::yaml::check_keys;
use super::{At, Content, DEEPEST, Found, Node, place};

/// Reads one value.
pub(super) fn read(text: &str) -> Result<Node, Vec<Found>> {
    let raw: &RawValue =
        serde_json::from_str(text).map_err(|error| vec![syntax(text, 0, text, &error)])?;
    let mut tree = Tree {
        text,
        next: 0,
        found: Vec::new(),
        broken: false,
    };
    let root = tree.node(raw, 0);
    if tree.found.is_empty() {
        Ok(root)
    } else {
        Err(tree.found)
    }
}

struct Tree<'t> {
    text: &'t str,
    next: u32,
    found: Vec<Found>,
    /// Nested too deep: the rest isn't looked at.
    broken: bool,
}

/// The values inside a list or map, as they stand.
enum Inside<'t> {
    List(Vec<&'t RawValue>),
    Map(Vec<(&'t RawValue, &'t RawValue)>),
}

impl<'t> Tree<'t> {
    fn node(&mut self, raw: &'t RawValue, depth: usize) -> Node {
        let number = self.next;
        self.next += 1;
        let source = raw.get();
        let start = source.as_ptr() as usize - self.text.as_ptr() as usize;
        let mut span = (start as u32, (start + source.len()) as u32);
        let content = match source.as_bytes().first() {
            Some(b'n') => Content::Null,
            Some(b'"') => {
                if !source.contains('\\') {
                    span = (span.0 + 1, span.1 - 1);
                }
                Content::Scalar(self.string(source, span))
            }
            Some(b'[' | b'{') => {
                span.1 = span.0 + 1;
                self.nested(source, start, span, depth)
            }
            _ => Content::Scalar(source.into()),
        };
        Node {
            content,
            number,
            span: Some(span),
        }
    }

    fn string(&mut self, source: &str, span: (u32, u32)) -> Box<str> {
        let at = At::Bytes(span.0 as usize, span.1 as usize);
        let text: String = match serde_json::from_str(source) {
            Ok(text) => text,
            Err(error) => {
                let message = format!("broken JSON: {}", cause(&error));
                self.found.push(Found::new(at, "syntax", message));
                return "".into();
            }
        };
        let unseen = text
            .chars()
            .find(|&c| is_unseen(c) && !matches!(c, '\n' | '\t' | '\r'));
        if let Some(c) = unseen {
            let message = format!("control character U+{:04X} in a text", u32::from(c));
            self.found
                .push(Found::new(at, "control-character", message));
        }
        text.into()
    }

    fn nested(&mut self, source: &'t str, start: usize, span: (u32, u32), depth: usize) -> Content {
        if self.broken {
            return Content::Null;
        }
        if depth >= DEEPEST {
            self.broken = true;
            let at = At::Bytes(span.0 as usize, span.1 as usize);
            let message = format!("lists and maps are nested deeper than {DEEPEST}");
            self.found.push(Found::new(at, "too-deep", message));
            return Content::Null;
        }
        match serde_json::Deserializer::from_str(source).deserialize_any(Open) {
            Ok(Inside::List(items)) => Content::List(
                items
                    .into_iter()
                    .map(|item| self.node(item, depth + 1))
                    .collect(),
            ),
            Ok(Inside::Map(pairs)) => {
                let map: Vec<(Node, Node)> = pairs
                    .into_iter()
                    .map(|(key, value)| (self.node(key, depth + 1), self.node(value, depth + 1)))
                    .collect();
                check_keys(&map, |key, code, message| {
                    self.found
                        .push(Found::new(At::Node(key.number, key.span), code, message));
                });
                Content::Map(map)
            }
            Err(error) => {
                self.found.push(syntax(self.text, start, source, &error));
                Content::Null
            }
        }
    }
}

struct Open;

impl<'t> Visitor<'t> for Open {
    type Value = Inside<'t>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a list or a map")
    }

    fn visit_seq<A: SeqAccess<'t>>(self, mut access: A) -> Result<Inside<'t>, A::Error> {
        let mut items = Vec::new();
        while let Some(item) = access.next_element()? {
            items.push(item);
        }
        Ok(Inside::List(items))
    }

    fn visit_map<A: MapAccess<'t>>(self, mut access: A) -> Result<Inside<'t>, A::Error> {
        let mut pairs = Vec::new();
        while let Some(pair) = access.next_entry()? {
            pairs.push(pair);
        }
        Ok(Inside::Map(pairs))
    }
}

/// The message without the place at its end.
fn cause(error: &serde_json::Error) -> String {
    let message = error.to_string();
    match message.rsplit_once(" at line ") {
        Some((cause, _)) => cause.to_lowercase(),
        None => message,
    }
}

/// A fault of syntax in the part `source` of the text, which begins at `start`.
fn syntax(text: &str, start: usize, source: &str, error: &serde_json::Error) -> Found {
    // `serde_json` counts lines by `\n` only and columns in bytes.
    let line = source
        .split_inclusive('\n')
        .take(error.line().saturating_sub(1));
    let before: usize = line.map(str::len).sum();
    let at = place::floor(text, start + before + error.column().saturating_sub(1));
    let message = cause(error);
    let found = Found::new(
        At::Bytes(at, at + 1),
        "syntax",
        format!("broken JSON: {message}"),
    );
    let is_closing = text.get(at..).is_some_and(|rest| rest.starts_with('}'));
    if message.contains("trailing comma") || (message.contains("key must be") && is_closing) {
        return found.help("delete the comma before the closing bracket");
    }
    if message.contains("key must be a string") {
        return found.help("put double quotes around the key");
    }
    if message.contains("trailing characters") {
        return found.help("keep one value a file");
    }
    found
}
