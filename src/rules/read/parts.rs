//! The top-level parts of a rule file.

use crate::document::{Node, Reader};

/// A rule's id where another part of a file names it.
#[derive(Clone, Copy, Debug)]
pub(in crate::rules) struct Reference<'d> {
    pub(in crate::rules) node: &'d Node,
    pub(in crate::rules) id: &'d str,
}

/// The top-level parts of a rule file; each may be missing.
#[derive(Default)]
pub(in crate::rules) struct Parts<'d> {
    pub(super) subject: Option<&'d Node>,
    pub(super) rules: Option<&'d Node>,
    pub(super) subjects: Option<&'d Node>,
    pub(super) sources: Option<&'d Node>,
    pub(super) assumptions: Option<&'d Node>,
    pub(super) glossary: Option<&'d Node>,
    pub(super) plain_words: Option<&'d Node>,
    /// Whether anything but `subject` stands there.
    pub(super) says_something: bool,
    pub(in crate::rules) switch_off: Vec<Reference<'d>>,
    pub(in crate::rules) follow: Vec<Reference<'d>>,
}

impl<'d> Parts<'d> {
    /// Takes a file apart; `over` says that it is laid over a set.
    pub(super) fn read(reader: &mut Reader<'d>, over: bool) -> Parts<'d> {
        let root = reader.document().root();
        let Some(mut fields) = reader.fields(root, "a rule file") else {
            return Parts::default();
        };
        let mut parts = Parts {
            subject: fields.take("subject"),
            rules: fields.take("rules"),
            subjects: fields.take("subjects"),
            sources: fields.take("sources"),
            assumptions: fields.take("assumptions"),
            glossary: fields.take("glossary"),
            plain_words: fields.take("plain_words"),
            ..Parts::default()
        };
        let taken = [
            parts.rules,
            parts.subjects,
            parts.sources,
            parts.assumptions,
            parts.glossary,
            parts.plain_words,
        ];
        parts.says_something = taken.iter().any(Option::is_some);
        for key in ["switch_off", "follow"] {
            let Some(node) = fields.take(key) else {
                continue;
            };
            parts.says_something = true;
            if !over {
                reader.fault(
                    node,
                    "overlay-only",
                    format!("`{key}` belongs in a file laid over others"),
                );
            }
            let Some(items) = reader.list(node, key) else {
                continue;
            };
            for item in items {
                let Some(id) = reader.text(item, "a rule id") else {
                    continue;
                };
                let list = if key == "follow" {
                    &mut parts.follow
                } else {
                    &mut parts.switch_off
                };
                list.push(Reference { node: item, id });
            }
        }
        fields.close(reader);
        parts
    }
}
