//! The pieces of a written profile: keys with their values, on lines of their own or in braces.

use std::fmt::Write as _;

use super::answer::{Answer, Shape};
use super::table::answer;
use crate::notation::Notation;

/// What stands for "asked, and not known".
pub(super) const UNKNOWN: &str = "unknown";
/// What the reader takes for something else than a text where it stands bare.
const NOT_BARE: [&str; 4] = ["null", "true", "false", UNKNOWN];

/// A key and what stands behind it.
pub(super) type Pair = (&'static str, String);

/// The text as it grows.
#[derive(Default)]
pub(super) struct Page {
    pub(super) text: String,
}

impl Page {
    fn line(&mut self, depth: usize, key: &str, value: &str) {
        // Writing into a text never fails.
        let _ = writeln!(self.text, "{:depth$}{key}: {value}", "", depth = depth * 2);
    }

    pub(super) fn lines(&mut self, pairs: impl IntoIterator<Item = Pair>) {
        for (key, value) in pairs {
            self.line(0, key, &value);
        }
    }

    pub(super) fn map(&mut self, key: &str, pairs: Vec<Pair>) {
        if !pairs.is_empty() {
            self.line(0, key, &flow(pairs));
        }
    }

    pub(super) fn open(&mut self, key: &str) {
        let _ = writeln!(self.text, "{key}:");
    }

    pub(super) fn inside(&mut self, pairs: impl IntoIterator<Item = Pair>) {
        for (key, value) in pairs {
            self.line(1, key, &value);
        }
    }

    pub(super) fn inside_map(&mut self, key: &str, pairs: Vec<Pair>) {
        if !pairs.is_empty() {
            self.line(1, key, &flow(pairs));
        }
    }

    pub(super) fn list(&mut self, depth: usize, key: &str, items: Vec<Vec<Pair>>) {
        if items.is_empty() {
            return;
        }
        let _ = writeln!(self.text, "{:depth$}{key}:", "", depth = depth * 2);
        for item in items {
            let _ = writeln!(
                self.text,
                "{:depth$}- {}",
                "",
                flow(item),
                depth = depth * 2 + 2
            );
        }
    }
}

/// `{ key: value, … }` on one line.
pub(super) fn flow(pairs: Vec<Pair>) -> String {
    if pairs.is_empty() {
        return "{}".to_owned();
    }
    let pairs: Vec<String> = pairs
        .into_iter()
        .map(|(key, value)| format!("{key}: {value}"))
        .collect();
    format!("{{ {} }}", pairs.join(", "))
}

pub(super) fn word(words: &[&str], index: i64) -> String {
    let word = usize::try_from(index).ok().and_then(|i| words.get(i));
    word.map_or_else(|| UNKNOWN.to_owned(), |word| (*word).to_owned())
}

/// A number as its notation writes it; with a comma in it, it needs quotes.
pub(super) fn number(notation: Notation, value: i64) -> String {
    let text = notation.write(value);
    if text.contains([',', '%']) {
        return format!("\"{text}\"");
    }
    text
}

/// The value of an answer as it is written.
pub(super) fn shown(name: &str, value: i64) -> String {
    match answer(name).map(Answer::shape) {
        Some(Shape::Number { notation, .. }) => number(notation, value),
        Some(Shape::Choice(words)) => word(words, value),
        Some(Shape::Flag) => if value == 0 { "no" } else { "yes" }.to_owned(),
        Some(Shape::Set(_)) if value == 0 => "none".to_owned(),
        Some(Shape::Set(words)) => {
            let members = words.iter().enumerate();
            let members = members.filter(|(bit, _)| value >> bit & 1 == 1);
            let members: Vec<&str> = members.map(|(_, word)| *word).collect();
            format!("[{}]", members.join(", "))
        }
        None => UNKNOWN.to_owned(),
    }
}

/// Somebody's text: bare where that can't be taken for anything else, otherwise in quotes.
pub(super) fn bare(text: &str) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, ' ' | '_' | '\'' | '.' | '-');
    let is_plain = text.starts_with(|c: char| c.is_ascii_alphabetic())
        && text.chars().all(plain)
        && !NOT_BARE.contains(&text.to_lowercase().as_str());
    if is_plain {
        return text.to_owned();
    }
    let mut quoted = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => {
                quoted.push('\\');
                quoted.push(c);
            }
            // Not allowed to stand in a document.
            '\u{FFFE}' | '\u{FFFF}' => {
                let _ = write!(quoted, "\\u{:04X}", u32::from(c));
            }
            c => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}
