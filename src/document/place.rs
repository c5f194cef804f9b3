//! Where something stands in a text.

use std::fmt;
use std::sync::{Arc, OnceLock};

/// The most characters of a line that a place carries.
const LONGEST_LINE: usize = 160;

/// A stretch of one line of a file.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// The file, as it was named.
    pub file: Arc<str>,
    /// The line, from 1.
    pub line: u32,
    /// The first character in the line, from 1.
    pub column: u32,
    /// How many characters, never past the end of the line; 0 at its end.
    pub length: u32,
    /// The line itself; of a very long line only the part around the place.
    pub source: Arc<str>,
    /// How many characters of the line come before `source`; 0 unless the line is very long.
    pub skipped: u32,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}:{}", self.file, self.line, self.column)
    }
}

/// A text with its name, able to tell line and column of any byte.
#[derive(Debug)]
pub(super) struct Text {
    name: Arc<str>,
    text: Box<str>,
    /// Byte where each line starts.
    starts: OnceLock<Vec<usize>>,
}

impl Text {
    pub(super) fn new(name: Arc<str>, text: Box<str>) -> Text {
        Text {
            name,
            text,
            starts: OnceLock::new(),
        }
    }

    pub(super) fn name(&self) -> &str {
        &self.name
    }

    pub(super) fn as_str(&self) -> &str {
        &self.text
    }

    /// The place of the bytes from `start` to `end`, cut at the end of the first line.
    pub(super) fn place(&self, start: usize, end: usize) -> Place {
        let start = floor(&self.text, start);
        let starts = self.starts.get_or_init(|| line_starts(&self.text));
        let line = starts.partition_point(|&s| s <= start).max(1);
        let from = starts.get(line - 1).copied().unwrap_or(0);
        let to = starts.get(line).copied().unwrap_or(self.text.len());
        let whole = self
            .text
            .get(from..to)
            .unwrap_or("")
            .trim_end_matches(['\n', '\r']);
        let inside = (start - from).min(whole.len());
        let until = floor(whole, end.saturating_sub(from)).max(inside);
        let before = count(whole.get(..inside).unwrap_or(""));
        let length = count(whole.get(inside..until).unwrap_or(""));
        let skipped = if count(whole) > LONGEST_LINE {
            before.saturating_sub(LONGEST_LINE / 4)
        } else {
            0
        };
        // Shown on terminals: an escape must not act there. A tab stays, so that the marks stand under the text.
        let harmless = |c| {
            if c != '\t' && super::text::is_unseen(c) {
                '\u{FFFD}'
            } else {
                c
            }
        };
        let source: String = whole
            .chars()
            .skip(skipped)
            .take(LONGEST_LINE)
            .map(harmless)
            .collect();
        Place {
            file: Arc::clone(&self.name),
            line: line as u32,
            column: before as u32 + 1,
            length: length as u32,
            source: source.into(),
            skipped: skipped as u32,
        }
    }
}

fn count(text: &str) -> usize {
    text.chars().count()
}

/// The nearest start of a character at or before `at`.
pub(super) fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// Lines end at `\n`, `\r\n` or a lone `\r`, as YAML has it.
pub(super) fn line_starts(text: &str) -> Vec<usize> {
    let bytes = text.as_bytes();
    let mut starts = vec![0];
    for (i, &byte) in bytes.iter().enumerate() {
        let ends = byte == b'\n' || (byte == b'\r' && bytes.get(i + 1) != Some(&b'\n'));
        if ends {
            starts.push(i + 1);
        }
    }
    starts
}
