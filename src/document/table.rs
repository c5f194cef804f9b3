//! CSV into the tree: a list of maps, one a record, keyed by the first line.

use super::{At, Content, Found, Node};

/// Reads all records.
pub(super) fn read(text: &str) -> Result<Node, Vec<Found>> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(text.as_bytes());
    let mut tree = Tree {
        text,
        next: 1,
        found: Vec::new(),
    };
    let mut header: Option<Vec<Cell>> = None;
    let mut rows = Vec::new();
    let mut record = csv::StringRecord::new();
    loop {
        match reader.read_record(&mut record) {
            Ok(true) => {}
            Ok(false) => break,
            Err(error) => {
                let at = error.position().map_or(0, |p| p.byte() as usize);
                let message = format!("broken CSV: {}", error.to_string().to_lowercase());
                tree.found
                    .push(Found::new(At::Bytes(at, at + 1), "syntax", message));
                break;
            }
        }
        let start = record.position().map_or(0, |p| p.byte() as usize);
        let cells = tree.cells(&record, start);
        match &header {
            None => {
                tree.check_header(&cells);
                header = Some(cells);
            }
            Some(header) => rows.extend(tree.row(header, cells)),
        }
    }
    if tree.found.is_empty() {
        Ok(Node {
            content: Content::List(rows),
            number: 0,
            span: Some((0, 0)),
        })
    } else {
        Err(tree.found)
    }
}

/// A cell without space around it, and its bytes.
struct Cell {
    text: Box<str>,
    span: (u32, u32),
}

struct Tree<'t> {
    text: &'t str,
    next: u32,
    found: Vec<Found>,
}

impl Tree<'_> {
    fn cells(&mut self, record: &csv::StringRecord, start: usize) -> Vec<Cell> {
        let mut spans = Spans {
            text: self.text,
            at: start,
        };
        spans.skip_empty_lines();
        let mut cells = Vec::with_capacity(record.len());
        for cell in record {
            let (start, end, closed) = spans.next();
            if !closed {
                let at = At::Bytes(start.saturating_sub(1), start);
                let found = Found::new(at, "syntax", "broken CSV: a quote is never closed");
                self.found.push(found);
            }
            let text = cell.trim();
            // What stands in the file as it reads is marked itself, without space around it.
            let raw = self.text.get(start..end).unwrap_or("");
            let lead = raw.len() - raw.trim_start().len();
            let span = if raw.trim() == text {
                (start + lead, start + lead + text.len())
            } else {
                (start, end)
            };
            cells.push(Cell {
                text: text.into(),
                span: (span.0 as u32, span.1 as u32),
            });
        }
        cells
    }

    fn check_header(&mut self, cells: &[Cell]) {
        let mut seen = std::collections::HashSet::new();
        for cell in cells {
            let at = At::Bytes(cell.span.0 as usize, cell.span.1 as usize);
            if cell.text.is_empty() {
                self.found
                    .push(Found::new(at, "bad-key", "a column has no name"));
            } else if !seen.insert(&cell.text) {
                let shown = super::text::quote(&cell.text);
                let message = format!("the column {shown} is there already");
                self.found.push(Found::new(at, "repeated-key", message));
            }
        }
    }

    fn row(&mut self, header: &[Cell], cells: Vec<Cell>) -> Option<Node> {
        let first = cells.first()?;
        let start = first.span;
        // A line of nothing but commas is what spreadsheets leave of a deleted row.
        if cells.iter().all(|cell| cell.text.is_empty()) {
            return None;
        }
        if cells.len() != header.len() {
            let at = At::Bytes(start.0 as usize, start.1 as usize);
            let cell = if cells.len() == 1 { "cell" } else { "cells" };
            let message = format!(
                "{} {cell} where the first line has {}",
                cells.len(),
                header.len()
            );
            let help = "put double quotes around a cell that holds a comma";
            self.found
                .push(Found::new(at, "wrong-number-of-cells", message).help(help));
            return None;
        }
        let number = self.take_number();
        let mut pairs = Vec::with_capacity(cells.len());
        for (name, cell) in header.iter().zip(cells) {
            let key = Node {
                content: Content::Scalar(name.text.clone()),
                number: self.take_number(),
                span: Some(name.span),
            };
            let content = if cell.text.is_empty() {
                Content::Null
            } else {
                Content::Scalar(cell.text)
            };
            let value = Node {
                content,
                number: self.take_number(),
                span: Some(cell.span),
            };
            pairs.push((key, value));
        }
        Some(Node {
            content: Content::Map(pairs),
            number,
            span: Some(start),
        })
    }

    fn take_number(&mut self) -> u32 {
        self.next += 1;
        self.next - 1
    }
}

/// Walks over the cells of one record in step with the `csv` crate: a quote counts only at the start of a cell.
struct Spans<'t> {
    text: &'t str,
    at: usize,
}

impl Spans<'_> {
    fn byte(&self, at: usize) -> Option<u8> {
        self.text.as_bytes().get(at).copied()
    }

    fn skip_empty_lines(&mut self) {
        while matches!(self.byte(self.at), Some(b'\n' | b'\r')) {
            self.at += 1;
        }
    }

    /// Bytes of the next cell, without quotes around it, and whether its quote is closed.
    fn next(&mut self) -> (usize, usize, bool) {
        let quoted = self.byte(self.at) == Some(b'"');
        let start = if quoted { self.at + 1 } else { self.at };
        let mut at = start;
        let mut inside = quoted;
        let mut closed_at = None;
        loop {
            match self.byte(at) {
                None => break,
                Some(b'"') if inside && self.byte(at + 1) == Some(b'"') => at += 1,
                Some(b'"') if inside => {
                    inside = false;
                    closed_at = Some(at);
                }
                Some(b',' | b'\n' | b'\r') if !inside => break,
                Some(_) => {}
            }
            at += 1;
        }
        self.at = at + 1;
        let end = match closed_at {
            Some(closed) if closed + 1 == at => closed,
            _ => at,
        };
        (start, end.min(self.text.len()).max(start), !inside)
    }
}
