//! YAML into the tree, and the places of its nodes.
//!
//! `serde_yaml` tells the place only of an error. A string that stands in the text as it reads is lent out of the text, so its
//! place is known; for any other node the text is walked again with an error raised on purpose where the place is wanted.

use std::fmt;

use serde::de::{DeserializeSeed, EnumAccess, Error, MapAccess, SeqAccess, Visitor};

use super::text::{is_unseen, quote};
use super::{At, Content, DEEPEST, Found, MOST_FOUND, Node};

mod extent;
mod refused;
mod syntax;

pub(super) use extent::{block_start, end_of, end_of_scalar};

/// Reads one document.
pub(super) fn read(text: &str) -> Result<Node, Vec<Found>> {
    if let Some(found) = syntax::far_too_deep(text) {
        return Err(vec![found]);
    }
    let mut walk = Walk::new(text, Purpose::Tree);
    let result = walk.run();
    let root = match (walk.stop.take(), result) {
        (None, Ok(root)) => root,
        (stop, result) => {
            let error = result.err();
            return Err(vec![syntax::explain(text, stop, error.as_ref())]);
        }
    };
    if let Some(found) = refused::find(text, &root, walk.next) {
        return Err(vec![found]);
    }
    if walk.found.is_empty() {
        Ok(root)
    } else {
        Err(walk.found)
    }
}

/// The byte at which each scalar begins, by its number; lists and maps have none. Empty if the text can't be read.
pub(super) fn scalar_marks(text: &str) -> Vec<Option<usize>> {
    let mut walk = Walk::new(text, Purpose::Marks(syntax::Cursor::new(text)));
    let _ = walk.run();
    walk.marks
}

/// The byte at which any one node begins.
pub(super) fn mark_of(text: &str, number: u32) -> Option<usize> {
    let mut walk = Walk::new(text, Purpose::Find(number));
    let error = walk.run().err()?;
    Some(error.location()?.index())
}

/// Why a text is walked.
#[derive(Debug)]
enum Purpose {
    /// To build the tree.
    Tree,
    /// To tell the place of every scalar; holds how far they are told.
    Marks(syntax::Cursor),
    /// To fail at the node of this number.
    Find(u32),
}

/// Why a walk was broken off.
#[derive(Debug)]
enum Stop {
    TooDeep,
    Tag(String),
    Bomb,
}

#[derive(Debug)]
struct Walk<'t> {
    text: &'t str,
    purpose: Purpose,
    next: u32,
    found: Vec<Found>,
    stop: Option<Stop>,
    marks: Vec<Option<usize>>,
    /// Whether the error on its way was raised to learn the place of a scalar.
    marking: bool,
}

impl<'t> Walk<'t> {
    fn new(text: &'t str, purpose: Purpose) -> Self {
        Walk {
            text,
            purpose,
            next: 0,
            found: Vec::new(),
            stop: None,
            marks: Vec::new(),
            marking: false,
        }
    }

    fn run(&mut self) -> Result<Node, serde_yaml::Error> {
        let deserializer = serde_yaml::Deserializer::from_str(self.text);
        Seed {
            walk: self,
            depth: 0,
        }
        .deserialize(deserializer)
    }

    /// Bytes of a string lent out of the text.
    fn span(&self, lent: &str) -> Option<(u32, u32)> {
        let start = (lent.as_ptr() as usize).checked_sub(self.text.as_ptr() as usize)?;
        let end = start.checked_add(lent.len())?;
        (end <= self.text.len()).then_some((start as u32, end as u32))
    }

    fn fault(&mut self, node: &Node, code: &'static str, message: String) {
        if self.found.len() < MOST_FOUND {
            let at = At::Node(node.number, node.span);
            self.found.push(Found::new(at, code, message));
        }
    }
}

/// Reads one node; the next in document order.
struct Seed<'w, 't> {
    walk: &'w mut Walk<'t>,
    depth: usize,
}

impl<'de> DeserializeSeed<'de> for Seed<'_, '_> {
    type Value = Node;

    fn deserialize<D: serde::Deserializer<'de>>(self, deserializer: D) -> Result<Node, D::Error> {
        let Seed { walk, depth } = self;
        let number = walk.next;
        walk.next += 1;
        // Every node takes at least a third of a byte, unless aliases multiply them.
        if number as usize > walk.text.len().saturating_mul(3) + 8 {
            walk.stop = Some(Stop::Bomb);
        }
        let node = NodeVisitor {
            walk: &mut *walk,
            number,
            depth,
        };
        let result = deserializer.deserialize_any(node);
        if let Purpose::Marks(cursor) = &mut walk.purpose {
            let mark = match &result {
                Err(error) if walk.marking => Some(cursor.index_in(&error.to_string(), walk.text)),
                _ => None,
            };
            let at = number as usize;
            if walk.marks.len() <= at {
                walk.marks.resize(at + 1, None);
            }
            if let (Some(mark), Some(place)) = (mark, walk.marks.get_mut(at)) {
                *place = Some(mark);
                walk.marking = false;
                return Ok(node_of(number, Content::Null, None));
            }
        }
        result
    }
}

fn node_of(number: u32, content: Content, span: Option<(u32, u32)>) -> Node {
    Node {
        content,
        number,
        span,
    }
}

struct NodeVisitor<'w, 't> {
    walk: &'w mut Walk<'t>,
    number: u32,
    depth: usize,
}

impl NodeVisitor<'_, '_> {
    fn scalar<E: Error>(self, content: Content, span: Option<(u32, u32)>) -> Result<Node, E> {
        self.check()?;
        if matches!(self.walk.purpose, Purpose::Marks(_)) {
            self.walk.marking = true;
            return Err(E::custom("here"));
        }
        Ok(node_of(self.number, content, span))
    }

    fn number<E: Error>(self, number: impl fmt::Display) -> Result<Node, E> {
        self.scalar(Content::Scalar(number.to_string().into()), None)
    }

    /// Fails if this is the node looked for, or if the walk must end.
    fn check<E: Error>(&self) -> Result<(), E> {
        if self.walk.stop.is_some()
            || matches!(self.walk.purpose, Purpose::Find(n) if n == self.number)
        {
            return Err(E::custom("here"));
        }
        Ok(())
    }

    fn check_depth<E: Error>(&mut self) -> Result<(), E> {
        if self.depth >= DEEPEST {
            self.walk.stop = Some(Stop::TooDeep);
        }
        self.check()
    }
}

impl<'de> Visitor<'de> for NodeVisitor<'_, '_> {
    type Value = Node;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any value")
    }

    fn visit_unit<E: Error>(self) -> Result<Node, E> {
        self.scalar(Content::Null, None)
    }

    fn visit_none<E: Error>(self) -> Result<Node, E> {
        self.scalar(Content::Null, None)
    }

    fn visit_bool<E: Error>(self, value: bool) -> Result<Node, E> {
        self.number(value)
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Node, E> {
        self.number(value)
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Node, E> {
        self.number(value)
    }

    fn visit_u128<E: Error>(self, value: u128) -> Result<Node, E> {
        self.number(value)
    }

    fn visit_i128<E: Error>(self, value: i128) -> Result<Node, E> {
        self.number(value)
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Node, E> {
        self.number(value)
    }

    fn visit_borrowed_str<E: Error>(self, value: &'de str) -> Result<Node, E> {
        let span = self.walk.span(value);
        self.scalar(Content::Scalar(value.into()), span)
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<Node, E> {
        let unseen = value
            .chars()
            .find(|&c| is_unseen(c) && !matches!(c, '\n' | '\t' | '\r'));
        if let Some(c) = unseen {
            let at = At::Node(self.number, None);
            let message = format!("control character U+{:04X} in a text", u32::from(c));
            if self.walk.found.len() < MOST_FOUND {
                let found = Found::new(at, "control-character", message);
                self.walk.found.push(found);
            }
        }
        self.scalar(Content::Scalar(value.into()), None)
    }

    fn visit_seq<A: SeqAccess<'de>>(mut self, mut items: A) -> Result<Node, A::Error> {
        self.check_depth()?;
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(Seed {
            walk: &mut *self.walk,
            depth: self.depth + 1,
        })? {
            list.push(item);
        }
        Ok(node_of(self.number, Content::List(list), None))
    }

    fn visit_map<A: MapAccess<'de>>(mut self, mut entries: A) -> Result<Node, A::Error> {
        self.check_depth()?;
        let depth = self.depth + 1;
        let mut map = Vec::new();
        while let Some(key) = entries.next_key_seed(Seed {
            walk: &mut *self.walk,
            depth,
        })? {
            let value = entries.next_value_seed(Seed {
                walk: &mut *self.walk,
                depth,
            })?;
            map.push((key, value));
        }
        if matches!(self.walk.purpose, Purpose::Tree) {
            check_keys(&map, |key, code, message| {
                self.walk.fault(key, code, message)
            });
        }
        Ok(node_of(self.number, Content::Map(map), None))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, tagged: A) -> Result<Node, A::Error> {
        let (tag, _) = tagged.variant::<String>()?;
        if self.walk.stop.is_none() {
            self.walk.stop = Some(Stop::Tag(tag));
        }
        Err(A::Error::custom("here"))
    }
}

/// Finds the keys that are no plain text or stand there already.
pub(super) fn check_keys(map: &[(Node, Node)], mut fault: impl FnMut(&Node, &'static str, String)) {
    let mut seen = std::collections::HashSet::with_capacity(map.len());
    for (key, _) in map {
        match key.text() {
            Some(text) if seen.insert(text) => {}
            Some(text) => fault(
                key,
                "repeated-key",
                format!("the key {} is there already", quote(text)),
            ),
            None => fault(
                key,
                "bad-key",
                format!("a key must be a single value, found {}", key.shape()),
            ),
        }
    }
}
