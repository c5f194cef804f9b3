//! How far the nodes of a YAML text reach, as far as one line shows.

use crate::document::{Content, Node};

/// Where a node ends that begins at `start`: for lists and maps the end of their first word, as that is what is underlined.
pub(in crate::document) fn end_of(text: &str, start: usize, node: &Node) -> usize {
    let first = match &node.content {
        Content::Map(pairs) => pairs.first().map(|(key, _)| key),
        _ => None,
    };
    match first.and_then(|key| key.span) {
        Some((from, to)) if from as usize == start => to as usize,
        _ => end_of_scalar(text, start),
    }
}

/// Where a scalar ends that begins at `start`, as far as one line shows.
pub(in crate::document) fn end_of_scalar(text: &str, start: usize) -> usize {
    let line = text.get(start..).unwrap_or("");
    let line = line.split(['\n', '\r']).next().unwrap_or("");
    let mut signs = line.chars();
    let length = match (signs.next(), signs.next()) {
        (Some('{' | '[' | '|' | '>'), _) => 1,
        (Some('-' | '?'), None | Some(' ' | '\t')) => 1,
        (Some(mark @ ('"' | '\'')), _) => quoted(line, mark),
        _ => word(line),
    };
    start + length
}

/// The length of a text in quotes, both included. Inside, a backslash hides a double quote and a single quote is doubled.
fn quoted(line: &str, mark: char) -> usize {
    let mut signs = line.char_indices().skip(1).peekable();
    while let Some((at, sign)) = signs.next() {
        let hides = sign == '\\' && mark == '"';
        let doubled = mark == '\'' && signs.peek().is_some_and(|&(_, next)| next == mark);
        if hides || (sign == mark && doubled) {
            signs.next();
        } else if sign == mark {
            return at + 1;
        }
    }
    line.len()
}

fn word(line: &str) -> usize {
    let ends = |c: char| matches!(c, ' ' | '\t' | ',' | ']' | '}' | ':' | '#');
    let mut signs = line.char_indices();
    match signs.next() {
        None | Some((_, ' ' | '\t' | ',' | ']' | '}' | '#')) => 0,
        Some(_) => signs
            .find(|&(_, c)| ends(c))
            .map_or(line.len(), |(at, _)| at),
    }
}

/// Where a map begins whose first key stands in the text as it reads at `key`, if that is plain to see: only indents and the
/// dashes of lists come before it in its line, and nothing just above could have opened a map in braces.
pub(in crate::document) fn block_start(text: &str, key: usize) -> Option<usize> {
    let before = text.get(..key)?;
    let start = key - usize::from(before.ends_with(['"', '\'']));
    let before = text.get(..start)?;
    let line = before.rfind(['\n', '\r']).map_or(0, |at| at + 1);
    let lead = before.get(line..)?;
    let above = before.get(..line)?;
    let above = above.trim_end();
    let above = above.get(above.rfind(['\n', '\r']).map_or(0, |at| at + 1)..)?;
    let is_plain = lead.split(' ').all(|part| part.is_empty() || part == "-");
    let is_open = above.contains(['{', '?', '&', '!']) || above.trim_start().starts_with('#');
    (is_plain && !is_open).then_some(start)
}
