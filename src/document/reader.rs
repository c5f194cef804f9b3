//! Walking a tree and collecting what is wrong with it.

use itertools::Itertools;

use super::fault::MOST_SHOWN;
use super::text::{did_you_mean, is_unseen, quote};
use super::{Content, Document, Fault, Faults, Node};

/// The most faults kept before they are sorted by place; further ones are only counted.
const MOST_KEPT: usize = 1000;

/// Reads values out of one document and collects every fault it meets.
#[derive(Debug)]
pub struct Reader<'d> {
    document: &'d Document,
    /// Places are worked out at the end, and only for the faults that are shown.
    faults: Vec<(Node, Fault)>,
    left_out: usize,
}

impl<'d> Reader<'d> {
    /// A reader of this document.
    pub fn new(document: &'d Document) -> Self {
        Reader {
            document,
            faults: Vec::new(),
            left_out: 0,
        }
    }

    /// The document that is read.
    pub fn document(&self) -> &'d Document {
        self.document
    }

    /// Whether a fault was met so far.
    pub fn has_faults(&self) -> bool {
        !self.faults.is_empty()
    }

    /// Notes a fault at a node of the document.
    pub fn fault(&mut self, node: &Node, code: &'static str, message: impl Into<String>) {
        self.note(node, Fault::new(code, message));
    }

    /// Notes a fault with a remedy.
    pub fn fault_with_help(
        &mut self,
        node: &Node,
        code: &'static str,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.note(node, Fault::new(code, message).with_help(help));
    }

    fn note(&mut self, node: &Node, fault: Fault) {
        // The records of a table share the names in its first line, and so would repeat what is wrong with a name.
        let is_same = |(other, same): &(Node, Fault)| other.span == node.span && *same == fault;
        if node.span.is_some() && self.faults.iter().any(is_same) {
            return;
        }
        if self.faults.len() == MOST_KEPT {
            self.left_out += 1;
            return;
        }
        self.faults.push((outline(node), fault));
    }

    /// The fields of a map; anything else is a fault `shape`.
    pub fn fields(&mut self, node: &'d Node, what: &str) -> Option<Fields<'d>> {
        match node.content() {
            Content::Map(pairs) => Some(Fields {
                node,
                pairs,
                taken: vec![false; pairs.len()],
                known: Vec::new(),
            }),
            _ => self.wrong_shape(node, what, "a map of keys and values"),
        }
    }

    /// The items of a list; anything else is a fault `shape`.
    pub fn list(&mut self, node: &'d Node, what: &str) -> Option<&'d [Node]> {
        match node.content() {
            Content::List(items) => Some(items),
            _ => self.wrong_shape(node, what, "a list"),
        }
    }

    /// A text of one line, without space around it. Anything else is a fault `shape` or `control-character`.
    pub fn text(&mut self, node: &'d Node, what: &str) -> Option<&'d str> {
        let Some(text) = node.text() else {
            return self.wrong_shape(node, what, "a text");
        };
        let text = text.trim();
        if text.is_empty() {
            self.fault(node, "shape", format!("{what} is empty"));
            return None;
        }
        if text.contains(['\n', '\r']) {
            let message = format!("{what} has more than one line");
            self.fault_with_help(
                node,
                "shape",
                message,
                "write it in one line, or begin it with `>`",
            );
            return None;
        }
        if let Some(c) = text.chars().find(|&c| is_unseen(c)) {
            let message = format!("{what} has the control character U+{:04X}", u32::from(c));
            self.fault(node, "control-character", message);
            return None;
        }
        Some(text)
    }

    /// `true` or `false`, also `yes` or `no`.
    pub fn flag(&mut self, node: &'d Node, what: &str) -> Option<bool> {
        match self.choice(node, what, &["yes", "no", "true", "false"])? {
            0 | 2 => Some(true),
            _ => Some(false),
        }
    }

    /// The index of one of some names; anything else is a fault `unknown-value`.
    pub fn choice(&mut self, node: &'d Node, what: &str, names: &[&str]) -> Option<usize> {
        let text = self.text(node, what)?;
        let found = names.iter().position(|&name| name == text);
        if found.is_none() {
            let expected = one_of(names);
            let message = format!(
                "unknown value {} for {what}; expected {expected}",
                quote(text)
            );
            self.suggest(node, "unknown-value", message, text, names);
        }
        found
    }

    /// A value read by a function that tells what it expected instead, as in `expected a weight such as 12 lb`; its refusal is a
    /// fault `bad-value`.
    pub fn value<T>(
        &mut self,
        node: &'d Node,
        what: &str,
        read: impl FnOnce(&str) -> Result<T, String>,
    ) -> Option<T> {
        let text = self.text(node, what)?;
        match read(text) {
            Ok(value) => Some(value),
            Err(expected) => {
                let expected = expected.strip_prefix("expected ").unwrap_or(&expected);
                let message = format!("bad value {} for {what}; expected {expected}", quote(text));
                self.fault(node, "bad-value", message);
                None
            }
        }
    }

    /// A text of whole sentences: it must end in `.`, `!` or `?`, else it is a fault `cut-short`. So a text that ` #` cut off or that
    /// became a map isn't taken for a reason.
    pub fn sentence(&mut self, node: &'d Node, what: &str) -> Option<&'d str> {
        if matches!(node.content(), Content::Map(_) | Content::List(_)) {
            let message = format!("{what} must be a text, found {}", node.shape());
            let help = "put quotes around a text that begins with `{` or `[` or holds `: `";
            self.fault_with_help(node, "shape", message, help);
            return None;
        }
        let text = self.text(node, what)?;
        let bare = text.trim_end_matches(['"', '\'', '”', '’', ')']);
        if !bare.ends_with(['.', '!', '?']) {
            let message = format!("{what} must end in `.`, `!` or `?`");
            let help = "` #` begins a comment and cuts a text short; put quotes around it";
            self.fault_with_help(node, "cut-short", message, help);
            return None;
        }
        Some(text)
    }

    /// `Ok` if no fault was met.
    ///
    /// # Errors
    /// All faults met, in order of place.
    pub fn finish(mut self) -> Result<(), Faults> {
        self.faults.sort_by_key(|(node, _)| node.number);
        let mut all = Faults::new();
        all.leave_out(self.left_out + self.faults.len().saturating_sub(MOST_SHOWN));
        for (node, fault) in self.faults.into_iter().take(MOST_SHOWN) {
            all.push(fault.at(self.document.place(&node)));
        }
        all.into_result()
    }

    fn wrong_shape<T>(&mut self, node: &Node, what: &str, wanted: &str) -> Option<T> {
        let message = format!("{what} must be {wanted}, found {}", node.shape());
        self.fault(node, "shape", message);
        None
    }

    fn suggest(
        &mut self,
        node: &Node,
        code: &'static str,
        message: String,
        word: &str,
        names: &[&str],
    ) {
        let fault = Fault::new(code, message);
        let fault = match did_you_mean(word, names.iter().copied()) {
            Some(help) => fault.with_help(help),
            None => fault,
        };
        self.note(node, fault);
    }
}

/// A node without what it holds, enough to find its place again.
fn outline(node: &Node) -> Node {
    let content = match &node.content {
        Content::Null => Content::Null,
        Content::Scalar(_) => Content::Scalar("".into()),
        Content::List(_) => Content::List(Vec::new()),
        // The first key is where a map in a block begins.
        Content::Map(pairs) => {
            let first = pairs.first();
            Content::Map(
                first
                    .map(|(key, _)| (outline(key), outline(key)))
                    .into_iter()
                    .collect(),
            )
        }
    };
    Node {
        content,
        number: node.number,
        span: node.span,
    }
}

/// "a, b or c".
fn one_of(names: &[&str]) -> String {
    match names {
        [] => "nothing".to_owned(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} or {last}", first.iter().join(", ")),
    }
}

/// The fields of one map, taken one by one.
#[derive(Debug)]
pub struct Fields<'d> {
    node: &'d Node,
    pairs: &'d [(Node, Node)],
    taken: Vec<bool>,
    known: Vec<&'static str>,
}

impl<'d> Fields<'d> {
    /// The value of a key, if it is there; a key with nothing after it gives the empty node. The key counts as valid from now
    /// on.
    pub fn take(&mut self, key: &'static str) -> Option<&'d Node> {
        if !self.known.contains(&key) {
            self.known.push(key);
        }
        let at = self.pairs.iter().position(|(k, _)| k.text() == Some(key))?;
        if let Some(taken) = self.taken.get_mut(at) {
            *taken = true;
        }
        self.pairs.get(at).map(|(_, value)| value)
    }

    /// The value of a key that must be there; if not, it is a fault `missing` at the map.
    pub fn require(&mut self, key: &'static str, reader: &mut Reader<'d>) -> Option<&'d Node> {
        let value = self.take(key);
        if value.is_none() {
            reader.fault(self.node, "missing", format!("`{key}` is missing"));
        }
        value
    }

    /// Every pair not taken yet, for maps whose keys are free; they count as taken.
    pub fn rest(&mut self) -> Vec<(&'d Node, &'d Node)> {
        let mut rest = Vec::new();
        for ((key, value), taken) in self.pairs.iter().zip(&mut self.taken) {
            if !std::mem::replace(taken, true) {
                rest.push((key, value));
            }
        }
        rest
    }

    /// The map itself.
    pub fn node(&self) -> &'d Node {
        self.node
    }

    /// Ends the reading of this map: every key not taken is a fault `unknown-key`.
    pub fn close(self, reader: &mut Reader<'d>) {
        for ((key, _), taken) in self.pairs.iter().zip(&self.taken) {
            if !taken {
                let word = key.text().unwrap_or("");
                let message = format!("unknown key {}", quote(word));
                reader.suggest(key, "unknown-key", message, word, &self.known);
            }
        }
    }
}
