//! Aliases, anchors and tags: what `serde_yaml` follows silently and this reader refuses.

use crate::document::{At, Content, Found, Node};

use super::{mark_of, scalar_marks};

/// How many lists and maps are looked at for an anchor before the search ends. An anchor that nothing refers to is harmless.
const MOST_WALKS: usize = 64;

/// The first alias, anchor or tag of a text that reads as this tree of so many nodes.
pub(super) fn find(text: &str, root: &Node, nodes: u32) -> Option<Found> {
    if !text.contains(['&', '*', '!']) {
        return None;
    }
    let mut strings = Vec::new();
    lent(root, &mut strings);
    strings.sort_unstable();
    let mut candidates = candidates(text);
    candidates.retain(|&(at, _)| !is_inside(&strings, at));
    if candidates.is_empty() {
        return None;
    }
    let nulls = empty(root, nodes);
    // The numbers of the scalars and where they begin, in order.
    let marks: Vec<(usize, usize)> = scalar_marks(text)
        .into_iter()
        .enumerate()
        .filter_map(|(number, mark)| Some((number, mark?)))
        .collect();
    // An alias brings a place from further up, so places stop growing.
    let broken = marks.windows(2).find_map(|pair| match pair {
        [(_, last), (number, mark)] => {
            let null = nulls.get(*number).copied().unwrap_or(false);
            (mark < last || (mark == last && !null)).then_some(*last)
        }
        _ => None,
    });
    if let Some(last) = broken {
        let star = candidates
            .iter()
            .find(|&&(at, sign)| at >= last && sign == b'*');
        return Some(refuse(text, star.map_or(last, |&(at, _)| at)));
    }
    let mut walks = 0;
    for (at, sign) in candidates {
        if sign == b'*' {
            continue;
        }
        let next = marks.partition_point(|&(_, mark)| mark < at);
        if marks.get(next).is_some_and(|&(_, mark)| mark == at) {
            return Some(refuse(text, at));
        }
        // Between the scalars before and after it, only lists and maps can begin.
        let before = next.checked_sub(1).and_then(|i| marks.get(i));
        let from = before.map_or(0, |&(number, _)| number + 1);
        let to = marks
            .get(next)
            .map_or(nodes as usize, |&(number, _)| number);
        for number in from..to {
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

/// Where `&name`, `*name` or `!tag` stand as a word of their own, outside lines of comment; with their sign.
fn candidates(text: &str) -> Vec<(usize, u8)> {
    let mut candidates = Vec::new();
    let mut before = b'\n';
    let mut is_lead = true;
    let mut is_comment = false;
    let mut bytes = text.bytes().enumerate().peekable();
    while let Some((at, byte)) = bytes.next() {
        match byte {
            b'\n' | b'\r' => (is_lead, is_comment) = (true, false),
            b' ' | b'\t' => {}
            _ => {
                is_comment |= is_lead && byte == b'#';
                is_lead = false;
            }
        }
        let starts = b" \t\r\n[{,:".contains(&before);
        let ends = bytes
            .peek()
            .is_none_or(|(_, next)| b" \t\r\n".contains(next));
        // A lone `!` is a tag; the others need a name.
        let word = match byte {
            b'&' | b'*' => starts && !ends,
            b'!' => starts,
            _ => false,
        };
        if word && !is_comment {
            candidates.push((at, byte));
        }
        before = byte;
    }
    candidates
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
