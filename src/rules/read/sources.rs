//! Reading sources, and naming them.

use super::{Reading, unknown};
use crate::document::{Fields, Node, Reader};
use crate::rules::source::{Source, Strength};

impl<'d> Reading<'d> {
    /// The `sources` of a file: a map from key to what it is.
    pub(super) fn read_sources(&mut self, reader: &mut Reader<'d>, node: Option<&'d Node>) {
        let Some(node) = node else { return };
        let Some(mut fields) = reader.fields(node, "the sources") else {
            return;
        };
        for (key, value) in fields.rest() {
            let Some(name) = key.text() else { continue };
            if Strength::ALL
                .iter()
                .any(|strength| strength.words() == name)
            {
                let message = format!("`{name}` is a strength and no key");
                reader.fault(key, "bad-id", message);
                continue;
            }
            let source = read_stated(reader, name, value);
            if self.sources.contains_key(name) {
                reader.fault(
                    key,
                    "repeated-source",
                    format!("there is a source `{name}` already"),
                );
                continue;
            }
            self.sources.insert(name.to_owned(), source);
        }
        fields.close(reader);
    }

    /// The `source` that a rule or an assumption names, with its own `section` if it gives one.
    pub(super) fn read_source(
        &self,
        reader: &mut Reader<'d>,
        fields: &mut Fields<'d>,
    ) -> Option<Source> {
        let named = fields
            .require("source", reader)
            .and_then(|node| self.source_named(reader, node));
        let section = optional(reader, fields, "section");
        let mut source = named?;
        source.section = section.or(source.section);
        Some(source)
    }

    /// The source of this name.
    pub(super) fn source_named(&self, reader: &mut Reader<'d>, node: &'d Node) -> Option<Source> {
        let name = reader.text(node, "a source")?;
        if let Some(strength) = Source::PLAIN
            .into_iter()
            .find(|strength| strength.words() == name)
        {
            return Some(Source::plain(strength));
        }
        let Some(source) = self.sources.get(name) else {
            let mut names: Vec<&str> = self.sources.keys().map(String::as_str).collect();
            names.extend(Source::PLAIN.map(Strength::words));
            unknown(
                reader,
                node,
                "unknown-source",
                &format!("there is no source `{name}`"),
                name,
                names,
            );
            return None;
        };
        source.clone()
    }
}

fn read_stated<'d>(reader: &mut Reader<'d>, key: &str, node: &'d Node) -> Option<Source> {
    let mut fields = reader.fields(node, "a source")?;
    let title = fields
        .require("title", reader)
        .and_then(|node| reader.text(node, "a title"));
    let author = optional(reader, &mut fields, "author");
    let year = optional(reader, &mut fields, "year");
    let section = optional(reader, &mut fields, "section");
    let at = optional(reader, &mut fields, "where");
    let words = Strength::ALL.map(Strength::words);
    let strength = fields.require("strength", reader);
    let strength = strength.and_then(|node| reader.choice(node, "a strength", &words));
    fields.close(reader);
    let strength = *Strength::ALL.get(strength?)?;
    Some(Source {
        key: key.to_owned(),
        title: title?.to_owned(),
        author,
        year,
        section,
        at,
        strength,
    })
}

/// A line of text that may be missing.
fn optional<'d>(
    reader: &mut Reader<'d>,
    fields: &mut Fields<'d>,
    key: &'static str,
) -> Option<String> {
    let node = fields.take(key)?;
    reader.text(node, key).map(str::to_owned)
}
