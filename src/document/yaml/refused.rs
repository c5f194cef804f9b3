//! Aliases, anchors and tags: what `serde_yaml` follows silently and this reader refuses.

use crate::document::{At, Content, Found, Node};

use super::{mark_of, scalar_marks};

/// How many lists and maps are looked at for an anchor before the search ends. An anchor that nothing refers to is harmless.
const MOST_WALKS: usize = 64;

/// The first alias, anchor or tag of a text that reads as this tree of so many nodes.
pub(super) fn find(text: &str, root: &Node, nodes: u32) -> Option<Found> {
    let mut strings = Vec::new();
    lent(root, &mut strings);
    let candidates: Vec<usize> = candidates(text)
        .filter(|&at| !is_inside(&strings, at))
        .collect();
    if candidates.is_empty() {
        return None;
    }
    let mut marks = scalar_marks(text);
    marks.resize(nodes as usize, None);
    let nulls = empty(root, nodes);
    // An alias brings a place from further up, so places stop growing.
    let mut last = None;
    let mut aliased = None;
    for (number, mark) in marks.iter().enumerate() {
        let Some(mark) = mark else { continue };
        let null = nulls.get(number).copied().unwrap_or(false);
        if last.is_some_and(|last| *mark < last || (*mark == last && !null)) {
            aliased = last;
            break;
        }
        last = Some(*mark);
    }
    if let Some(last) = aliased {
        let star = |&&at: &&usize| at >= last && text.get(at..).is_some_and(|t| t.starts_with('*'));
        let at = candidates.iter().find(star).copied().unwrap_or(last);
        return Some(refuse(text, at));
    }
    let mut walks = 0;
    for &at in &candidates {
        let first = text.get(at..).and_then(|t| t.chars().next());
        if first == Some('*') {
            continue;
        }
        if marks.contains(&Some(at)) {
            return Some(refuse(text, at));
        }
        // Between the scalars before and after it, only lists and maps can begin.
        let before = marks.iter().rposition(|m| m.is_some_and(|m| m < at));
        let after = marks.iter().position(|m| m.is_some_and(|m| m > at));
        for number in before.map_or(0, |n| n + 1)..after.unwrap_or(marks.len()) {
            walks += 1;
            if walks > MOST_WALKS {
                return None;
            }
            if mark_of(text, number as u32) == Some(at) {
                return Some(refuse(text, at));
            }
        }
    }
    None
}

fn refuse(text: &str, at: usize) -> Found {
    let rest = text.get(at..).unwrap_or("");
    let end = rest.find(char::is_whitespace).unwrap_or(rest.len());
    let word = rest
        .get(..end)
        .unwrap_or("")
        .trim_end_matches([',', ']', '}']);
    let (code, what) = match rest.chars().next() {
        Some('&') => ("anchor", "anchor"),
        Some('!') => ("tag", "tag"),
        _ => ("alias", "alias"),
    };
    let shown = crate::document::text::quote(word);
    Found::new(
        At::Bytes(at, at + word.len()),
        code,
        format!("the {what} {shown} isn't allowed"),
    )
    .help("write the value out; put quotes around a text that begins with `&`, `*` or `!`")
}

/// Places where `&name`, `*name` or `!tag` stand as a word of their own, outside lines of comment.
fn candidates(text: &str) -> impl Iterator<Item = usize> {
    let bytes = text.as_bytes();
    bytes.iter().enumerate().filter_map(move |(at, byte)| {
        if !matches!(byte, b'&' | b'*' | b'!') {
            return None;
        }
        let before = at.checked_sub(1).and_then(|i| bytes.get(i));
        let starts = before.is_none_or(|b| b" \t\r\n[{,:".contains(b));
        let ends = bytes.get(at + 1).is_none_or(|b| b" \t\r\n".contains(b));
        // A lone `!` is a tag; the others need a name.
        let word = starts && (!ends || *byte == b'!');
        (word && !is_comment(text, at)).then_some(at)
    })
}

fn is_comment(text: &str, at: usize) -> bool {
    let before = text.get(..at).unwrap_or("");
    let line = before.rfind(['\n', '\r']).map_or(0, |i| i + 1);
    before
        .get(line..)
        .unwrap_or("")
        .trim_start()
        .starts_with('#')
}

/// Spans of the strings that stand in the text as they read, in order.
fn lent(node: &Node, spans: &mut Vec<(usize, usize)>) {
    if let Some((start, end)) = node.span {
        spans.push((start as usize, end as usize));
    }
    each_child(node, &mut |child| lent(child, spans));
}

fn is_inside(spans: &[(usize, usize)], at: usize) -> bool {
    let next = spans.partition_point(|&(start, _)| start <= at);
    let before = next.checked_sub(1).and_then(|i| spans.get(i));
    before.is_some_and(|&(_, end)| at < end)
}

fn empty(root: &Node, nodes: u32) -> Vec<bool> {
    fn mark(node: &Node, nulls: &mut Vec<bool>) {
        if let Some(null) = nulls.get_mut(node.number as usize) {
            *null = node.is_null();
        }
        each_child(node, &mut |child| mark(child, nulls));
    }
    let mut nulls = vec![false; nodes as usize];
    mark(root, &mut nulls);
    nulls
}

fn each_child(node: &Node, visit: &mut impl FnMut(&Node)) {
    match &node.content {
        Content::List(items) => items.iter().for_each(visit),
        Content::Map(pairs) => pairs.iter().for_each(|(key, value)| {
            visit(key);
            visit(value);
        }),
        _ => {}
    }
}
