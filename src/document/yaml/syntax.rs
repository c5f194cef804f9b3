//! What `serde_yaml` says when it gives up, in words that help.

use super::{Stop, mark_of};
use crate::document::place::{floor, line_starts};
use crate::document::text::quote;
use crate::document::{At, DEEPEST, Found};

/// Finds the bytes of the places that messages tell. It goes on from the place before, as places come in order and a line may
/// be as long as the text.
#[derive(Debug)]
pub(super) struct Cursor {
    lines: Vec<usize>,
    line: usize,
    column: usize,
    byte: usize,
}

impl Cursor {
    pub(super) fn new(text: &str) -> Cursor {
        Cursor {
            lines: line_starts(text),
            line: 1,
            column: 1,
            byte: 0,
        }
    }

    /// The byte told by the end of a message, ` at line 3 column 5`. An error without it lies at the start.
    pub(super) fn index_in(&mut self, message: &str, text: &str) -> usize {
        let told = message.rsplit_once(" at line ").and_then(|(_, told)| {
            let (line, column) = told.split_once(" column ")?;
            Some((line.parse::<usize>().ok()?, column.parse::<usize>().ok()?))
        });
        let Some((line, column)) = told else { return 0 };
        if line != self.line || column < self.column {
            self.line = line;
            self.column = 1;
            self.byte = line
                .checked_sub(1)
                .and_then(|line| self.lines.get(line).copied())
                .unwrap_or(text.len());
        }
        let rest = text.get(self.byte..).unwrap_or("");
        let mut signs = rest.char_indices();
        let skipped = signs
            .nth(column - self.column)
            .map_or(rest.len(), |(at, _)| at);
        self.byte += skipped;
        self.column = column;
        self.byte
    }
}

/// How many brackets may stand open. Far more than lists and maps may be nested, as brackets in texts are counted too.
const MOST_OPEN: usize = 1000;

/// Brackets nested so deep that the parser would take minutes over them; told without parsing.
pub(super) fn far_too_deep(text: &str) -> Option<Found> {
    let mut open: usize = 0;
    let mut deepest = 0;
    for (at, byte) in text.bytes().enumerate() {
        match byte {
            b'[' | b'{' => {
                open += 1;
                if open == DEEPEST + 1 {
                    deepest = at;
                }
            }
            b']' | b'}' => open = open.saturating_sub(1),
            _ => {}
        }
        if open > MOST_OPEN {
            return Some(too_deep(At::Bytes(deepest, deepest + 1)));
        }
    }
    None
}

fn too_deep(at: At) -> Found {
    let message = format!("lists and maps are nested deeper than {DEEPEST}");
    Found::new(at, "too-deep", message)
}

/// The fault that broke the reading off.
pub(super) fn explain(text: &str, stop: Option<Stop>, error: Option<&serde_yaml::Error>) -> Found {
    let index = error.and_then(|e| e.location()).map_or(0, |l| l.index());
    let at = At::Bytes(
        floor(text, index),
        super::end_of_scalar(text, floor(text, index)),
    );
    match stop {
        Some(Stop::TooDeep) => {
            return too_deep(at);
        }
        Some(Stop::Tag(tag)) => {
            return Found::new(
                at,
                "tag",
                format!("the tag {} isn't allowed", quote(&format!("!{tag}"))),
            )
            .help("put quotes around a text that begins with `!`");
        }
        Some(Stop::Bomb) => {
            return Found::new(at, "alias", "aliases multiply the file")
                .help("write the values out");
        }
        None => {}
    }
    let message = error.map(ToString::to_string).unwrap_or_default();
    if message.contains("more than one document") {
        return several(text);
    }
    if message.contains("recursion limit") {
        return too_deep(at);
    }
    if message.contains("unknown anchor") || message.contains("repetition limit") {
        return Found::new(at, "alias", "aliases aren't allowed")
            .help("write the value out; put quotes around a text that begins with `*`");
    }
    let (problem, context) = match message.split_once(" at line ") {
        Some((problem, rest)) => (problem, rest.split_once(", ").map(|(_, context)| context)),
        None => (message.as_str(), None),
    };
    let mut words = format!("broken YAML: {problem}");
    if let Some(context) = context {
        words = format!("{words} {context}");
    }
    let found = Found::new(at, "syntax", crate::document::clean(&words));
    match remedy(problem, text, floor(text, index)) {
        Some(help) => found.help(help),
        None => found,
    }
}

fn remedy(problem: &str, text: &str, at: usize) -> Option<&'static str> {
    let (before, rest) = text.split_at_checked(at)?;
    if rest.starts_with('\t') {
        return Some("indent with spaces, not with tabs");
    }
    if problem.contains("mapping values are not allowed") {
        return Some(
            "put quotes around a text that holds `: `, and indent the keys of one map alike",
        );
    }
    if problem.contains("cannot start any token") {
        return Some("put quotes around a text that begins with a sign");
    }
    // What goes on after a closed bracket or quote was meant as a text.
    let line = before
        .rsplit(['\n', '\r'])
        .next()
        .unwrap_or("")
        .trim_start();
    let value = line.split_once(": ").map_or(line, |(_, value)| value);
    match value.trim_start_matches(['-', ' ']).chars().next() {
        Some('{' | '[') => return Some("put quotes around a text that begins with `{` or `[`"),
        Some('"' | '\'') => return Some("nothing may follow the closing quote of a text"),
        _ => {}
    }
    if problem.contains("',' or") || problem.contains("expected node content") {
        return Some("put quotes around a text that begins with `{` or `[`");
    }
    if problem.contains("did not find expected") || problem.contains("could not find expected") {
        return Some("indent the keys of one map alike; a text in quotes ends at the second quote");
    }
    None
}

/// Two documents in one file: the fault lies where the second begins.
fn several(text: &str) -> Found {
    let mut at = 0;
    for (line, start) in lines(text) {
        if start > 0 && (line == "---" || line.starts_with("--- ")) {
            at = start;
            // A marker above the first value only opens the first document.
            if mark_of_first(text).is_some_and(|first| start > first) {
                break;
            }
        }
    }
    Found::new(
        At::Bytes(at, at + 3),
        "several-documents",
        "a second document begins in this file",
    )
    .help("keep one document a file")
}

fn mark_of_first(text: &str) -> Option<usize> {
    mark_of(text, 0)
}

fn lines(text: &str) -> impl Iterator<Item = (&str, usize)> {
    line_starts(text).into_iter().map(|start| {
        (
            text.get(start..).unwrap_or("").lines().next().unwrap_or(""),
            start,
        )
    })
}
