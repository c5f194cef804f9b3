//! A profile while it is being read: what was found and where, what isn't known, what to ask.

use std::collections::{BTreeMap, BTreeSet};

use super::Question;
use super::answer::Shape;
use super::table::answer;
use crate::document::{Content, Document, Faults, Node, Reader, clean};
use crate::notation::Notation;

/// The longest free text (a name, a layout, a complaint) that is taken, in characters.
const LONGEST_TEXT: usize = 200;

/// Words for "I was asked and don't know".
const UNKNOWN_WORDS: &[&str] = &["unknown", "not_known", "don't_know", "?"];

/// A value and where it was written.
#[derive(Clone, Copy)]
pub(super) struct Found<'d> {
    pub(super) value: i64,
    pub(super) node: &'d Node,
}

/// The notes taken while one profile is read.
pub(super) struct Sheet<'d> {
    pub(super) reader: Reader<'d>,
    pub(super) found: BTreeMap<&'static str, Found<'d>>,
    pub(super) unknown: BTreeSet<&'static str>,
    pub(super) questions: Vec<Question>,
}

/// A key of a map and the answer it gives.
pub(super) type Key = (&'static str, &'static str);

impl<'d> Sheet<'d> {
    pub(super) fn new(document: &'d Document) -> Self {
        Sheet {
            reader: Reader::new(document),
            found: BTreeMap::new(),
            unknown: BTreeSet::new(),
            questions: Vec::new(),
        }
    }

    /// The value found for an answer, if any.
    pub(super) fn value(&self, name: &str) -> Option<i64> {
        self.found.get(name).map(|found| found.value)
    }

    /// The value and the place of an answer, if any.
    pub(super) fn found(&self, name: &str) -> Option<Found<'d>> {
        self.found.get(name).copied()
    }

    /// Both answers, if both were given.
    pub(super) fn both(&self, one: &str, other: &str) -> Option<(Found<'d>, Found<'d>)> {
        Some((self.found(one)?, self.found(other)?))
    }

    /// The line a node stands on.
    pub(super) fn line(&self, node: &Node) -> u32 {
        self.reader.document().place(node).line
    }

    /// Something to ask the bowler before going on.
    pub(super) fn ask(&mut self, about: &'static str, text: impl Into<String>) {
        self.questions.push(Question {
            about,
            text: text.into(),
        });
    }

    /// A fault at the second of two places that can't both be right.
    pub(super) fn contradict(&mut self, node: &Node, message: impl Into<String>, help: &str) {
        self.reader
            .fault_with_help(node, "contradiction", message, help);
    }

    /// Reads the keys of a map that give one answer each.
    pub(super) fn keys(&mut self, fields: &mut crate::document::Fields<'d>, keys: &[Key]) {
        for &(key, name) in keys {
            if let Some(node) = fields.take(key) {
                self.answer(name, node);
            }
        }
    }

    /// Reads a whole map of single answers. `unknown` in place of the map makes all of them not known.
    pub(super) fn group(&mut self, node: &'d Node, what: &str, keys: &[Key]) {
        let names = keys.iter().map(|&(_, name)| name);
        if self.nothing(node, names) {
            return;
        }
        if let Some(mut fields) = self.reader.fields(node, what) {
            self.keys(&mut fields, keys);
            fields.close(&mut self.reader);
        }
    }

    /// Whether the node says nothing: left empty, or `unknown`, which is remembered for the names.
    pub(super) fn nothing(
        &mut self,
        node: &Node,
        names: impl IntoIterator<Item = &'static str>,
    ) -> bool {
        if node.is_null() {
            return true;
        }
        if !is_unknown(node) {
            return false;
        }
        self.unknown.extend(names);
        true
    }

    /// Reads one answer by its row of the table and keeps it.
    pub(super) fn answer(&mut self, name: &'static str, node: &'d Node) {
        if let Some(value) = self.read(name, node) {
            self.found.insert(name, Found { value, node });
        }
    }

    /// Reads one answer by its row of the table without keeping it.
    pub(super) fn read(&mut self, name: &'static str, node: &'d Node) -> Option<i64> {
        let called = answer(name)?.called();
        self.read_as(name, called, node)
    }

    /// Reads what one row of the table describes, under another name in faults.
    pub(super) fn read_as(
        &mut self,
        name: &'static str,
        called: &str,
        node: &'d Node,
    ) -> Option<i64> {
        if self.nothing(node, [name]) {
            return None;
        }
        match answer(name)?.shape() {
            Shape::Number {
                notation,
                lowest,
                highest,
                usual,
            } => {
                let value = self
                    .reader
                    .value(node, called, |text| notation.read(text))?;
                if value < lowest || value > highest {
                    self.out_of_range(node, called, notation, value, (lowest, highest));
                    return None;
                }
                if value < usual.0 || value > usual.1 {
                    self.ask(name, unusual(called, notation, value));
                }
                Some(value)
            }
            Shape::Choice(words) => self.word(node, called, words),
            Shape::Flag => self.reader.flag(node, called).map(i64::from),
            Shape::Set(words) => self.set(node, called, words),
        }
    }

    /// A number that no rule asks for, in steps, inside a range.
    pub(super) fn number(
        &mut self,
        node: &'d Node,
        called: &str,
        notation: Notation,
        range: std::ops::RangeInclusive<i64>,
    ) -> Option<i64> {
        if self.nothing(node, []) {
            return None;
        }
        let value = self
            .reader
            .value(node, called, |text| notation.read(text))?;
        if range.contains(&value) {
            return Some(value);
        }
        self.out_of_range(
            node,
            called,
            notation,
            value,
            (*range.start(), *range.end()),
        );
        None
    }

    pub(super) fn out_of_range(
        &mut self,
        node: &Node,
        called: &str,
        notation: Notation,
        value: i64,
        (lowest, highest): (i64, i64),
    ) {
        let (least, most) = (notation.write(lowest), notation.write(highest));
        let message = format!("{called} can't be {}", notation.write(value));
        let help = format!("it lies between {least} and {most}");
        self.reader
            .fault_with_help(node, "out-of-range", message, help);
    }

    /// One of some words; `one hand`, `one-hand` and `one_hand` are the same.
    pub(super) fn word(&mut self, node: &'d Node, what: &str, words: &[&str]) -> Option<i64> {
        let plain = node.text().map(normal);
        let index = words
            .iter()
            .position(|word| plain.as_deref() == Some(*word));
        let index = index.or_else(|| self.reader.choice(node, what, words))?;
        i64::try_from(index).ok()
    }

    /// Some words, as a list, as one word alone, or as `none`.
    fn set(&mut self, node: &'d Node, what: &str, words: &[&str]) -> Option<i64> {
        if let Some(text) = node.text() {
            if normal(text) == "none" {
                return Some(0);
            }
            return self.word(node, what, words).map(|index| 1 << index);
        }
        let mut bits = 0_i64;
        let mut whole = true;
        for item in self.reader.list(node, what)? {
            match self.word(item, what, words) {
                Some(index) if bits & (1 << index) != 0 => {
                    let text = clean(item.text().unwrap_or_default());
                    self.reader.fault(
                        item,
                        "repeated",
                        format!("`{text}` is named twice in {what}"),
                    );
                    whole = false;
                }
                Some(index) => bits |= 1 << index,
                None => whole = false,
            }
        }
        whole.then_some(bits)
    }

    /// A free text for people, made harmless; an empty one or `unknown` is none.
    pub(super) fn words(&mut self, node: &'d Node, what: &str) -> Option<String> {
        if node.is_null() || is_unknown(node) {
            return None;
        }
        let Some(text) = node.text() else {
            // Only to report that this is no text.
            self.reader.text(node, what)?;
            return None;
        };
        if text.chars().count() > LONGEST_TEXT {
            let message = format!("{what} is longer than {LONGEST_TEXT} characters");
            self.reader.fault(node, "too-long", message);
            return None;
        }
        let text = clean(text.trim());
        (!text.is_empty()).then_some(text)
    }

    /// Ends the reading: all faults, or the values by name.
    pub(super) fn finish(self) -> Result<Notes, Faults> {
        let values = self
            .found
            .iter()
            .map(|(name, found)| (*name, found.value))
            .collect();
        self.reader.finish()?;
        Ok(Notes {
            values,
            unknown: self.unknown,
            questions: self.questions,
        })
    }
}

/// What is kept of a sheet without faults.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub(super) struct Notes {
    pub(super) values: BTreeMap<&'static str, i64>,
    pub(super) unknown: BTreeSet<&'static str>,
    pub(super) questions: Vec<Question>,
}

/// Whether the node is a word for "asked, and not known".
pub(super) fn is_unknown(node: &Node) -> bool {
    matches!(node.content(), Content::Scalar(text) if UNKNOWN_WORDS.contains(&normal(text).as_str()))
}

fn normal(text: &str) -> String {
    text.trim().to_lowercase().replace([' ', '-'], "_")
}

fn unusual(called: &str, notation: Notation, value: i64) -> String {
    format!(
        "Please check {called}: {} is unusual.",
        notation.write(value)
    )
}
