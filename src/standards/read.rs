//! Reads the table of limits: every fault with its place.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use super::date::Date;
use super::read_row::{quantities, row, size};
use super::row::Row;
use super::table::{Margin, Source, Standards};
use crate::document::{Document, Faults, Format, Node, Reader};

impl Standards {
    /// The table that is built in, `rules/standards.yaml`.
    ///
    /// # Errors
    /// None in a released crate: a test reads this very table.
    pub fn builtin() -> Result<&'static Standards, Faults> {
        static TABLE: OnceLock<Result<Standards, Faults>> = OnceLock::new();
        let table = TABLE.get_or_init(|| {
            let text = include_bytes!("../../rules/standards.yaml");
            Document::parse("rules/standards.yaml", text, Format::Yaml)
                .and_then(|document| Standards::read(&document))
        });
        table.as_ref().map_err(Clone::clone)
    }

    /// Reads a table.
    ///
    /// # Errors
    /// Every fault: unknown keys, dates the calendar doesn't have, published limits without a source, two rows for the same
    /// quantity, body, days and balls.
    pub fn read(document: &Document) -> Result<Standards, Faults> {
        let mut reader = Reader::new(document);
        let table = table(document, &mut reader);
        reader.finish()?;
        table.ok_or_else(Faults::new)
    }
}

fn table<'d>(document: &'d Document, reader: &mut Reader<'d>) -> Option<Standards> {
    let mut fields = reader.fields(document.root(), "a table of limits")?;
    let known_until = fields.require("known_until", reader);
    let known_until =
        known_until.and_then(|node| reader.value(node, "the last day known", Date::read));
    let sources = fields.require("sources", reader);
    let sources = sources.map(|node| read_sources(node, reader));
    let sources = sources.unwrap_or_default();
    let margins = fields.require("margins", reader);
    let margins = margins.map(|node| read_margins(node, reader));
    let limits = fields.require("limits", reader);
    let rows = limits.map(|node| read_rows(node, &sources, reader));
    fields.close(reader);
    Some(Standards::new(
        known_until?,
        margins.unwrap_or_default(),
        sources,
        rows.unwrap_or_default(),
    ))
}

fn read_sources<'d>(node: &'d Node, reader: &mut Reader<'d>) -> BTreeMap<String, Source> {
    let mut sources = BTreeMap::new();
    let Some(mut fields) = reader.fields(node, "the sources") else {
        return sources;
    };
    for (key, value) in fields.rest() {
        let Some(mut source) = reader.fields(value, "a source") else {
            continue;
        };
        let title = source.require("title", reader);
        let title = title.and_then(|node| reader.text(node, "the title"));
        let date = source.require("date", reader);
        let date = date.and_then(|node| reader.text(node, "the date"));
        let place = source.require("where", reader);
        let place = place.and_then(|node| reader.text(node, "where it was read"));
        source.close(reader);
        if let (Some(key), Some(title), Some(date), Some(_)) = (key.text(), title, date, place) {
            let source = Source {
                title: title.to_owned(),
                date: date.to_owned(),
            };
            sources.insert(key.to_owned(), source);
        }
    }
    sources
}

fn read_margins<'d>(node: &'d Node, reader: &mut Reader<'d>) -> Vec<Margin> {
    let mut margins = Vec::new();
    for node in reader.list(node, "the margins").unwrap_or_default() {
        let Some(mut fields) = reader.fields(node, "a margin") else {
            continue;
        };
        let quantities = quantities(&mut fields, reader);
        let steps = fields.require("margin", reader);
        let steps = steps.and_then(|node| size(node, "the margin", quantities.first(), reader));
        let because = fields.require("because", reader);
        let because = because.and_then(|node| reader.sentence(node, "the reason"));
        let source = fields.require("source", reader);
        let source = source.and_then(|node| reader.choice(node, "the source", &["own choice"]));
        fields.close(reader);
        if let (Some(steps), Some(_), Some(_)) = (steps, because, source) {
            margins.push(Margin { quantities, steps });
        }
    }
    margins
}

fn read_rows<'d>(
    node: &'d Node,
    sources: &BTreeMap<String, Source>,
    reader: &mut Reader<'d>,
) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    for node in reader.list(node, "the limits").unwrap_or_default() {
        let Some(mut fields) = reader.fields(node, "a limit") else {
            continue;
        };
        let found = row(&mut fields, sources, reader);
        let id = fields.take("id").unwrap_or(node);
        fields.close(reader);
        let Some(found) = found else { continue };
        if rows.iter().any(|row| row.id == found.id) {
            let message = format!("a limit has the id `{}` already", found.id);
            reader.fault(id, "repeated", message);
        }
        let found: Vec<Row> = found.rows().collect();
        let clash = found.iter().find_map(|new| {
            let other = rows.iter().find(|row| row.overlaps(new))?;
            Some((new.quantity, other.id.clone()))
        });
        if let Some((quantity, other)) = clash {
            let message = format!(
                "`{other}` limits `{}` for the same body, days and balls already",
                quantity.word()
            );
            reader.fault_with_help(id, "overlap", message, "end the older row the day before");
        }
        rows.extend(found);
    }
    rows
}
